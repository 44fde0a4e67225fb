use super::{Dimensions, Tyre, speedometer_error, track_change, wheel_backspacing, wheel_offset};
use crate::base::document::{Model, Stated, Value};
use crate::base::numeric::hypot;
use crate::base::table::{Filling, Table, record};
use crate::base::text::said;
use crate::base::verdict::less;
use crate::units::{Angle, Length, Ratio};
use crate::{Error, Result, valid};

/// Growth of the section over the growth of the rim's width.
/// Common practice, no source: a rim half an inch wider makes the tyre 5 mm wider.
const SECTION_GROWTH: f64 = 0.4;

/// A tyre may be wider than its marking by so much of its section, and higher by so much of the height of its section: radial, diagonal. UN
/// Regulation 30, from memory.
const MORE: [(f64, f64); 2] = [(0.04, 0.04), (0.06, 0.08)];

/// It may be narrower by so much of its section (ETRTO Standards Manual, from memory), and lower by so much of the height of its section (UN Regulation
/// 30, from memory).
const LESS: (f64, f64) = (0.04, 0.03);

/// Loss of the radius of a tyre before that may be worn: from 8 mm of tread to 1.6 mm. From memory of tyres for cars.
const WEAR: f64 = 0.0064;

/// Width of the rim on which a tyre is measured over its section, by the aspect ratio upwards. From memory of the ETRTO Standards Manual.
const MEASURED_ON: [(f64, f64); 5] = [(0.75, 0.70), (0.60, 0.75), (0.50, 0.80), (0.45, 0.85), (0.0, 0.90)];

/// Rim width over section width on which a tyre is made to sit, from the aspect ratio upwards: least and most. From memory of the tables of the
/// ETRTO Standards Manual.
const FITS: [(f64, f64, f64); 2] = [(0.5, 0.65, 0.9), (0.0, 0.75, 1.05)];

/// Another wheel and tyre on the same hub: their place, and the effect on clearance, track, height and speedometer.
///
/// # Formula
/// half width `h` = the greater of `w / 2 + t` and `S / 2`; with `O = o - s_p`: inner gap `h_1 + O_1 - h_2 - O_2` more, outer `h_1 - O_1 - h_2 + O_2`, arch `(D_1 - D_2) / 2`; height `(D_2 - D_1) / 2`; track
/// `2 (O_1 - O_2)`; scrub radius `O_1 - O_2 - tan(a) (D_2 - D_1) / 2`; speedometer `r_1 / r_2 - 1`;
/// a gap that remains is the measured one less the most that tyre and rim come nearer in any direction between the side and the tread: `sqrt(a^2 + b^2)` of the loss `a` at the side and the growth `b` of the radius, the
/// greater of both where one is not positive; each tyre with a marking as far from it as it may be, see below
///
/// # Fields
/// - `before` — the wheel with which the clearances were measured
/// - `after` — the new wheel; each of the two has `rim_width` `w`, `flange_thickness` `t`, `offset` `o` or else `backspacing` as in `tyre::wheel_offset`, `spacer` `s_p` if there is one, and its tyre: `marking`, or else `free_diameter` `D` and `section_width` `S`; with a marking `measuring_rim_width`, the rim on which its maker measures it, lets the section follow the rim; without it, only a remaining gap counts that, from a usual measuring rim
/// - `kingpin_inclination` — `a`, inclination of the steering axis, positive if its upper end leans inwards; without it the change of the scrub radius is not a number
/// - `inner_clearance` — least gap inside of the wheel before, to strut, spring or frame, measured over full lock, bump and droop
/// - `outer_clearance` — least gap outside, to wing or bed, measured in the same way
/// - `arch_clearance` — least gap above the tyre before, in full bump; if a gap was not measured, its remaining gap is not a number
///
/// # Valid for
/// Both wheels of the axle alike, without camber, rims with both flanges alike. A change takes a tyre as wide and as high as its marking says, new and unloaded. A gap that remains
/// counts how far both may be from their markings (from memory): the new tyre 4 % wider and 4 % of its section's height higher (diagonal 6 % and 8 %), the tyre before 4 % narrower, 3 % of that height lower and worn by 6.4 mm of tread; without `measuring_rim_width` the section also follows the rim from a usual
/// measuring rim: 0.7 of the section from an aspect ratio of 75, 0.75 from 60, 0.8 from 50, 0.85 from 45, 0.9 below. A deeper tread may wear by more. Measure `free_diameter` and `section_width` of what is fitted, and nothing of this counts. One given by its
/// diameter rolls as a radial tyre does. The tyre sits as deep on the ground as before. A larger tyre turns on a longer radius
/// at full lock, and its growth counts in both gaps at the side. A new tyre with a marking is refused on a rim of less than 0.65 or more than 0.9 of its section (0.75 and 1.05 below an aspect ratio of 50, from memory). The model does not
/// check the rim of a tyre that is given by its dimensions, the clearance of the caliper, load or speed.
///
/// # Source
/// Geometry of the section; section over rim width and what is called backspacing: common practice, no source; rolling: see `tyre::Tyre`; ISO 8855 for scrub radius and steering-axis inclination (from memory)
///
/// # Caution
/// An offset that moves the wheel outwards loads wheel bearings, studs and steering beyond what they were made for; a spacer needs studs that are long enough, and a hub that centres it. Turn the wheel by hand through full lock, bump and droop before the road. Local codes limit track, spacers and tyre size, and licensed practice decides.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WheelChange {
    /// The wheel with which the clearances were measured.
    pub before: FittedWheel,
    /// The new wheel.
    pub after: FittedWheel,
    /// Kingpin inclination: angle of the steering axis, positive if its upper end leans inwards.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub kingpin_inclination: Option<Value<Angle>>,
    /// Least gap inside of the wheel before.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub inner_clearance: Option<Value<Length>>,
    /// Least gap outside of the wheel before.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub outer_clearance: Option<Value<Length>>,
    /// Least gap above the tyre before, in full bump.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub arch_clearance: Option<Value<Length>>,
}

/// A wheel with its tyre, as it is fitted.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `rim_width`, `flange_thickness`, `offset` or `backspacing`, `marking` or `free_diameter` and `section_width`, and, where there is one, `spacer`"
    )
)]
pub struct FittedWheel {
    /// Rim width, between the faces of the flanges that the beads sit against.
    pub rim_width: Value<Length>,
    /// Thickness of one rim flange.
    pub flange_thickness: Value<Length>,
    /// Offset: mounting face from the rim's middle plane, positive towards the outside of the vehicle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub offset: Option<Value<Length>>,
    /// Backspacing: from the edge of the inner flange to the mounting face.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub backspacing: Option<Value<Length>>,
    /// Thickness of a spacer between hub and wheel.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub spacer: Stated<Value<Length>>,
    /// Marking of the tyre, as on its wall.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub marking: Option<String>,
    /// Rim on which the tyre's maker measures it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub measuring_rim_width: Option<Value<Length>>,
    /// Outer diameter of the tyre.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub free_diameter: Option<Value<Length>>,
    /// Width of the tyre over its walls.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub section_width: Option<Value<Length>>,
}

record! {
    /// Effect of a change of wheel and tyre; an unknown value is not a number.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct WheelChangeFindings {
        /// Growth of the gap inside, to the widest of rim and tyre; negative if it shrinks.
        pub inner_change: Length,
        /// Remaining gap inside at full lock, with the most that both tyres may differ from their markings, and the growth of the radius; below zero the wheel may rub.
        pub inner_remaining: Length,
        /// Growth of the gap outside; negative if it shrinks.
        pub outer_change: Length,
        /// Remaining gap outside, in the same way.
        pub outer_remaining: Length,
        /// Growth of the gap above the tyre; negative if it shrinks.
        pub arch_change: Length,
        /// Remaining gap above the tyre, with the most that both tyres may differ from their markings.
        pub arch_remaining: Length,
        /// Movement of the inner flange's edge inwards, towards steering arm and joint.
        pub flange_change: Length,
        /// Growth of the distance between the tyre centres.
        pub track_change: Length,
        /// Growth of the scrub radius, positive if the tyre's centre moves outwards from the point where the steering axis meets the ground.
        pub scrub_change: Length,
        /// Rise of hub and body.
        pub height_change: Length,
        /// Reading over true speed, less 1: negative (the dangerous side) if it reads too little.
        pub speedometer_error: Ratio,
    }
}

/// Place of a wheel and its tyre.
struct Stand {
    /// Distance from the hub's face to the rim's middle plane, inwards.
    inwards: Length,
    /// Distance from the hub's face to the edge of the inner flange, inwards.
    flange: Length,
    half_width: Length,
    /// Half width if the tyre is as wide, or as narrow, as its marking lets it be.
    largest_half_width: Length,
    least_half_width: Length,
    tyre: Fitted,
}

/// A tyre by its marking or its dimensions.
struct Fitted {
    free_diameter: Length,
    rolling_radius: Length,
    section_width: Length,
    /// How far it may be from that, on its rim: nothing where it was measured.
    wider: Length,
    narrower: Length,
    /// How far the radius may be from what is written.
    higher: Length,
    lower: Length,
    /// How much of the radius may be worn off.
    worn: Length,
}

impl crate::base::Sealed for WheelChange {}
impl Model for WheelChange {
    const WISHES: &'static [[&'static str; 3]] = &[["tight_below", "", "of_difference"]];

    fn check(&self) -> Result<()> {
        self.findings().map(drop)
    }
}

record! {
    /// Effect of an offset and a rim width.
    struct AtOffset {
        inner_change: Length,
        inner_remaining: Length,
        outer_change: Length,
        outer_remaining: Length,
        flange_change: Length,
        track_change: Length,
        scrub_change: Length,
    }
}

impl WheelChange {
    /// Effect of the change on clearances, track, scrub radius, height and speedometer.
    ///
    /// # Returns
    /// See the fields of [`WheelChangeFindings`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, Verdict, tyre::*, units::*};
    /// let wheel = |rim: &str, offset: &str, marking: &str| -> axlewright::Result<FittedWheel> {
    ///     Ok(FittedWheel {
    ///         rim_width: Value::parse(rim)?, flange_thickness: Value::parse("0.5 in")?, offset: Some(Value::parse(offset)?), backspacing: None, spacer: Stated::Unknown,
    ///         marking: Some(marking.to_owned()), measuring_rim_width: None, free_diameter: None, section_width: None,
    ///     })
    /// };
    /// let change = WheelChange {
    ///     before: wheel("6 in", "45 mm", "225/70R15")?, after: wheel("7 in", "30 mm", "235/75R15")?, kingpin_inclination: None,
    ///     inner_clearance: Some(Value::parse("20 mm")?), outer_clearance: Some(Value::parse("35 mm")?), arch_clearance: None,
    /// }.checked()?;
    /// let on = change.findings()?;
    /// assert_eq!(format!("{:.0} mm in, {:.0} mm out", on.inner_change.in_::<mm>(), on.outer_change.in_::<mm>()), "10 mm in, -20 mm out");
    /// let verdict = |left| Verdict::of_difference(left, Length::of::<mm>(10.0));
    /// assert_eq!((verdict(on.outer_remaining), verdict(on.arch_remaining)), (Verdict::Short, Verdict::NotKnown)); // both by their markings: measure them
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn findings(&self) -> Result<WheelChangeFindings> {
        let tilt = match &self.kingpin_inclination {
            Some(inclination) => {
                let kingpin_inclination = inclination.quantity;
                valid! { kingpin_inclination: (-0.8) <= .. <= 0.8 ; "plausibility limit: steering axes lean by less than 0.8 rad"; }
                kingpin_inclination.si().tan()
            }
            None => f64::NAN,
        };
        let measured = |gap: &Option<Value<Length>>| gap.as_ref().map(|gap| gap.quantity);
        if let Some(inner_clearance) = measured(&self.inner_clearance) {
            valid! { inner_clearance: 0 <= .. <= 10 ; "definition: a gap is not negative; plausibility limit: at most 10 m"; }
        }
        if let Some(outer_clearance) = measured(&self.outer_clearance) {
            valid! { outer_clearance: 0 <= .. <= 10 ; "definition: a gap is not negative; plausibility limit: at most 10 m"; }
        }
        if let Some(arch_clearance) = measured(&self.arch_clearance) {
            valid! { arch_clearance: 0 <= .. <= 10 ; "definition: a gap is not negative; plausibility limit: at most 10 m"; }
        }
        let stand = |wheel: &FittedWheel, key: &str| wheel.stand().map_err(|error| error.within(key));
        let (before, after) = (stand(&self.before, "before")?, stand(&self.after, "after")?);
        self.after.fits().map_err(|error| error.within("after"))?;
        let wider = after.half_width - before.half_width;
        let further_in = after.inwards - before.inwards;
        let height_change = (after.tyre.free_diameter - before.tyre.free_diameter) / 2.0;
        let remaining = |gap: &Option<Value<Length>>, change: Length| {
            Length::from_si(measured(gap).map_or(f64::NAN, |gap| less(gap.si(), -change.si())))
        };
        let (inner_change, outer_change, arch_change) =
            (-(wider + further_in), further_in - wider, -height_change);
        let side =
            after.largest_half_width - after.half_width + (before.half_width - before.least_half_width);
        let growth = height_change + after.tyre.higher + before.tyre.lower + before.tyre.worn;
        let at_lock = |change: Length| -nearer(side - change, growth);
        Ok(WheelChangeFindings {
            inner_change,
            inner_remaining: remaining(&self.inner_clearance, at_lock(inner_change)),
            outer_change,
            outer_remaining: remaining(&self.outer_clearance, at_lock(outer_change)),
            arch_change,
            arch_remaining: remaining(&self.arch_clearance, -growth),
            flange_change: after.flange - before.flange,
            track_change: track_change(before.inwards, after.inwards)?,
            scrub_change: -further_in - height_change * tilt,
            height_change,
            speedometer_error: speedometer_error(before.tyre.rolling_radius, after.tyre.rolling_radius)?,
        })
    }

    /// Effect of the change over offsets and rim widths of the new wheel, all other values unchanged.
    ///
    /// # Parameters
    /// - `offset` — offsets, in place of the written offset or backspacing
    /// - `rim_width` — rim widths; the tyre's section follows them if `measuring_rim_width` is known
    ///
    /// # Returns
    /// One row an offset and rim width: `offset`, `rim_width`, `inner_change`, `inner_remaining`, `outer_change`, `outer_remaining`, `flange_change`, `track_change`, `scrub_change`.
    pub fn table(&self, offset: &[Length], rim_width: &[Length]) -> Result<Table> {
        let mut rows = Filling::over(["offset", "rim_width"], &[offset.len(), rim_width.len()])?;
        for offset in offset {
            for rim_width in rim_width {
                let mut changed = self.clone();
                changed.after.offset = Some(Value::new(*offset));
                changed.after.backspacing = None;
                changed.after.rim_width = Value::new(*rim_width);
                let on = changed.findings().map(|on| AtOffset {
                    inner_change: on.inner_change,
                    inner_remaining: on.inner_remaining,
                    outer_change: on.outer_change,
                    outer_remaining: on.outer_remaining,
                    flange_change: on.flange_change,
                    track_change: on.track_change,
                    scrub_change: on.scrub_change,
                });
                rows.push((*offset, *rim_width), on)?;
            }
        }
        rows.finish()
    }
}

/// Most by which the edge of a tyre comes nearer to anything between its side and its tread, from the loss of gap at the side and the growth of the
/// radius.
fn nearer(side: Length, radius: Length) -> Length {
    let zero = Length::from_si(0.0);
    if side > zero && radius > zero {
        return Length::from_si(hypot(side.si(), radius.si()));
    }
    if side < radius { radius } else { side }
}

/// The rim on which a tyre of these dimensions is usually measured.
fn usual_rim(size: &Dimensions) -> Length {
    let aspect = (size.section_height / size.section_width).si() + 1e-9;
    let share = MEASURED_ON.iter().find(|(from, _)| aspect >= *from).map_or(0.7, |(_, share)| *share);
    size.section_width * share
}

impl FittedWheel {
    /// Refuses a rim on which a tyre of this marking is not made to sit.
    fn fits(&self) -> Result<()> {
        let Some(marking) = &self.marking else { return Ok(()) };
        let size = Tyre::new(marking)?.dimensions()?;
        let aspect = size.section_height / size.section_width;
        let over = self.rim_width.quantity / size.section_width;
        let Some((_, least, most)) = FITS.iter().find(|(from, ..)| aspect.si() >= *from) else {
            return Ok(());
        };
        if over.si() < *least || over.si() > *most {
            let (low, high) = (size.section_width * *least, size.section_width * *most);
            return Err(Error::document(
                "rim_width",
                format!(
                    "{} is no rim for {marking}: a tyre of this section sits on {} to {}",
                    said(self.rim_width.quantity),
                    said(low),
                    said(high)
                ),
            ));
        }
        Ok(())
    }

    fn stand(&self) -> Result<Stand> {
        let (rim_width, flange_thickness) = (self.rim_width.quantity, self.flange_thickness.quantity);
        let spacer = self.spacer.as_ref().map_or(Length::from_si(0.0), |spacer| spacer.quantity);
        valid! {
            rim_width: 0.001 <= .. <= 1 ; "plausibility limit: rims lie between 1 mm and 1 m";
            flange_thickness: 0 <= .. <= 1 ; "definition: a thickness; plausibility limit: at most 1 m";
            spacer: 0 <= .. <= 1 ; "definition: a thickness; plausibility limit: at most 1 m";
        }
        let offset = match (&self.offset, &self.backspacing) {
            (Some(offset), None) => {
                let offset = offset.quantity;
                valid! { offset: (-5) <= .. <= 5 ; "plausibility limit: at most 5 m to either side"; }
                offset
            }
            (None, Some(backspacing)) => {
                let backspacing = backspacing.quantity;
                valid! { backspacing: (-5) <= .. <= 5 ; "plausibility limit: at most 5 m to either side"; }
                wheel_offset(rim_width, flange_thickness, backspacing)?
            }
            (None, None) => return Err(Error::document("offset", "give offset or backspacing")),
            (Some(_), Some(_)) => {
                return Err(Error::document("backspacing", "give offset or backspacing, not both"));
            }
        };
        let fitted = self.tyre()?;
        let inwards = offset - spacer;
        let rim = rim_width / 2.0 + flange_thickness;
        let half = |section: Length| if section / 2.0 > rim { section / 2.0 } else { rim };
        Ok(Stand {
            inwards,
            flange: wheel_backspacing(rim_width, flange_thickness, inwards)?,
            half_width: half(fitted.section_width),
            largest_half_width: half(fitted.section_width + fitted.wider),
            least_half_width: half(fitted.section_width - fitted.narrower),
            tyre: fitted,
        })
    }

    /// The tyre, and how far it may be from its marking.
    fn tyre(&self) -> Result<Fitted> {
        let nothing = Length::from_si(0.0);
        match (&self.marking, &self.free_diameter, &self.section_width) {
            (Some(marking), None, None) => {
                let tyre = Tyre::new(marking)?;
                let size = tyre.dimensions()?;
                let rolling = tyre.rolling(Length::from_si(0.0))?;
                let growth = match &self.measuring_rim_width {
                    Some(measuring_rim_width) => {
                        let measuring_rim_width = measuring_rim_width.quantity;
                        valid! { measuring_rim_width: 0.001 <= .. <= 1 ; "plausibility limit: rims lie between 1 mm and 1 m"; }
                        (self.rim_width.quantity - measuring_rim_width) * SECTION_GROWTH
                    }
                    None => nothing,
                };
                let section_width = size.section_width + growth;
                // What the rim may add or take, where nobody says on which the tyre is measured.
                let unsaid = match self.measuring_rim_width {
                    Some(_) => nothing,
                    None => (self.rim_width.quantity - usual_rim(&size)) * SECTION_GROWTH,
                };
                let [radial, diagonal] = MORE;
                let (wider, higher) = if tyre.is_radial()? { radial } else { diagonal };
                let (narrower, lower) = LESS;
                Ok(Fitted {
                    free_diameter: size.free_diameter,
                    rolling_radius: rolling.rolling_radius,
                    section_width,
                    wider: section_width * wider + unsaid,
                    narrower: section_width * narrower - unsaid,
                    higher: size.section_height * higher,
                    lower: size.section_height * lower,
                    worn: Length::from_si(WEAR),
                })
            }
            (None, Some(free_diameter), Some(section_width)) => {
                if self.measuring_rim_width.is_some() {
                    return Err(Error::document(
                        "measuring_rim_width",
                        "leave it out, or give a marking: section_width is measured already",
                    ));
                }
                let (free_diameter, section_width) = (free_diameter.quantity, section_width.quantity);
                valid! {
                    free_diameter: 0.01 <= .. <= 10 ; "plausibility limit: tyres lie between 10 mm and 10 m";
                    section_width: 0.001 <= .. <= 1 ; "plausibility limit: tyres are between 1 mm and 1 m wide";
                }
                Ok(Fitted {
                    free_diameter,
                    rolling_radius: super::size::radial_rolling_radius(free_diameter),
                    section_width,
                    wider: nothing,
                    narrower: nothing,
                    higher: nothing,
                    lower: nothing,
                    worn: nothing,
                })
            }
            (Some(_), ..) => {
                Err(Error::document("marking", "give marking, or free_diameter and section_width, not both"))
            }
            (None, None, _) => {
                Err(Error::document("marking", "give marking, or free_diameter and section_width"))
            }
            (None, Some(_), None) => Err(Error::document("section_width", "give it with free_diameter")),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;
    use crate::units::mm;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn length(value: f64) -> Value<Length> {
        Value::new(Length::of::<mm>(value))
    }

    /// Flanges of 10 mm.
    fn wheel(rim: f64, offset: f64, diameter: f64, section: f64) -> FittedWheel {
        FittedWheel {
            rim_width: length(rim),
            flange_thickness: length(10.0),
            offset: Some(length(offset)),
            backspacing: None,
            spacer: Stated::Unknown,
            marking: None,
            measuring_rim_width: None,
            free_diameter: Some(length(diameter)),
            section_width: Some(length(section)),
        }
    }

    fn change() -> WheelChange {
        WheelChange {
            before: wheel(150.0, 40.0, 700.0, 220.0),
            after: wheel(200.0, 25.0, 740.0, 250.0),
            kingpin_inclination: Some(Value::new(Angle::from_si(0.2))),
            inner_clearance: Some(length(20.0)),
            outer_clearance: Some(length(40.0)),
            arch_clearance: Some(length(15.0)),
        }
    }

    #[test]
    fn a_change_worked_by_hand() {
        // Half 110 to 125 mm; inside 150 to 150, outside 70 to 100; the radius takes 20 mm inside and, with the 30 mm of the side, 36.06 mm outside. Flange 75 + 10 + 40 = 125 to 100 + 10 + 25 = 135. Radius 350 to 370.
        let on = change().findings().unwrap();
        for (found, by_hand) in [
            (on.inner_change, 0.0),
            (on.inner_remaining, 0.0),
            (on.outer_change, -30.0),
            (on.outer_remaining, 40.0 - 1300.0_f64.sqrt()),
            (on.arch_change, -20.0),
            (on.arch_remaining, -5.0),
            (on.flange_change, 10.0),
            (on.track_change, 30.0),
            (on.scrub_change, 15.0 - 20.0 * 0.2f64.tan()),
            (on.height_change, 20.0),
        ] {
            assert_relative_eq!(found.in_::<mm>(), by_hand, max_relative = 1e-12, epsilon = 1e-10);
        }
        assert_relative_eq!(on.speedometer_error.si(), 70.0 / 74.0 - 1.0, max_relative = 1e-12);
        let verdict = |left, wanted| Verdict::of_difference(left, Length::of::<mm>(wanted));
        assert_eq!(
            (verdict(on.inner_remaining, 10.0), verdict(on.arch_remaining, 10.0)),
            (Verdict::Tight, Verdict::Short)
        );
        assert_eq!(
            (verdict(on.outer_remaining, 3.9), verdict(on.outer_remaining, 4.0)),
            (Verdict::Meets, Verdict::Tight)
        );
    }

    #[test]
    fn a_gap_that_is_used_up_is_nothing_but_for_rounding() {
        // 30 mm that shrink by 30 mm, on a radius as before.
        let as_high = wheel(200.0, 25.0, 700.0, 250.0);
        let on = WheelChange { after: as_high, outer_clearance: Some(length(30.0)), ..change() };
        let on = on.findings().unwrap();
        assert_eq!(on.outer_remaining.si(), 0.0);
    }

    #[test]
    fn a_rim_that_is_wider_than_its_tyre_counts() {
        let narrow = WheelChange { after: wheel(240.0, 40.0, 700.0, 220.0), ..change() }.findings().unwrap();
        assert_relative_eq!(narrow.inner_change.in_::<mm>(), -20.0, max_relative = 1e-12);
    }

    #[test]
    fn backspacing_and_spacer_are_the_offset_by_other_names() {
        let plain = change().findings().unwrap();
        // 200 / 2 + 10 + 25.
        let mut deep = change();
        (deep.after.offset, deep.after.backspacing) = (None, Some(length(135.0)));
        let mut spaced = change();
        (spaced.after.offset, spaced.after.spacer) = (Some(length(45.0)), Stated::Given(length(20.0)));
        for other in [deep, spaced] {
            let on = other.findings().unwrap();
            assert_relative_eq!(on.outer_remaining.si(), plain.outer_remaining.si(), max_relative = 1e-12);
            assert_relative_eq!(on.flange_change.si(), plain.flange_change.si(), max_relative = 1e-12);
            assert_relative_eq!(on.track_change.si(), plain.track_change.si(), max_relative = 1e-12);
        }
    }

    #[test]
    fn a_marking_is_its_dimensions_and_follows_its_rim() {
        let marked = |rim: f64, measuring: Option<f64>| FittedWheel {
            marking: Some("225/70R15".to_owned()),
            free_diameter: None,
            section_width: None,
            measuring_rim_width: measuring.map(length),
            ..wheel(rim, 40.0, 1.0, 1.0)
        };
        // 381 + 2 * 0.7 * 225 = 696 mm.
        let written =
            WheelChange { before: wheel(150.0, 40.0, 696.0, 225.0), after: marked(150.0, None), ..change() };
        let on = written.findings().unwrap();
        assert!(on.inner_change.si().abs() < 1e-15 && on.height_change.si().abs() < 1e-15);
        assert!(on.speedometer_error.si().abs() < 1e-15);
        // 25 mm more of rim: 10 mm more of tyre, 5 mm a side.
        let wider = WheelChange { after: marked(175.0, Some(150.0)), ..written }.findings().unwrap();
        assert_relative_eq!(wider.outer_change.in_::<mm>(), -5.0, max_relative = 1e-12);
    }

    #[test]
    fn what_was_not_measured_is_not_known() {
        let bare = WheelChange {
            kingpin_inclination: None,
            inner_clearance: None,
            outer_clearance: None,
            arch_clearance: None,
            ..change()
        };
        let on = bare.findings().unwrap();
        for unknown in [on.inner_remaining, on.outer_remaining, on.arch_remaining, on.scrub_change] {
            assert!(unknown.si().is_nan());
        }
        assert!(!on.inner_change.si().is_nan());
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row() {
        let (offsets, rims) =
            ([45.0, 25.0].map(Length::of::<mm>), [150.0, 200.0, -1.0].map(Length::of::<mm>));
        let table = change().table(&offsets, &rims).unwrap();
        assert_eq!(table.rows(), 6);
        let outer = table.numbers("outer_remaining").unwrap();
        // 40 mm less 30 mm or 10 mm at the side, and 20 mm of radius.
        assert_relative_eq!(outer[4], 0.04 - 0.0013_f64.sqrt(), max_relative = 1e-12);
        assert_relative_eq!(outer[1], 0.04 - 0.0005_f64.sqrt(), max_relative = 1e-12);
        assert!(
            table.reason(2).is_some_and(|error| error.to_string().starts_with("after: rim_width = -0.001"))
        );
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let full = change();
        assert!(full.check().is_ok());
        let with = |set: fn(&mut FittedWheel)| {
            let mut changed = change();
            set(&mut changed.after);
            changed
        };
        for (name, wrong) in [
            ("after: rim_width", with(|on| on.rim_width = length(f64::NAN))),
            ("after: flange_thickness", with(|on| on.flange_thickness = length(-1.0))),
            ("after: spacer", with(|on| on.spacer = Stated::Given(length(-1.0)))),
            ("after: offset = ", with(|on| on.offset = Some(length(f64::INFINITY)))),
            ("after.offset: ", with(|on| on.offset = None)),
            ("after.backspacing: ", with(|on| on.backspacing = Some(length(1.0)))),
            ("after.marking: ", with(|on| on.free_diameter = None)),
            ("after.marking: ", with(|on| on.marking = Some("225/70R15".to_owned()))),
            ("after.section_width: ", with(|on| on.section_width = None)),
            ("after.measuring_rim_width: ", with(|on| on.measuring_rim_width = Some(length(1.0)))),
            ("after: free_diameter", with(|on| on.free_diameter = Some(length(0.0)))),
            ("before: ", WheelChange { before: wheel(0.0, 0.0, 700.0, 200.0), ..full.clone() }),
            (
                "kingpin_inclination",
                WheelChange { kingpin_inclination: Some(Value::new(Angle::from_si(7.0))), ..full.clone() },
            ),
            ("inner_clearance", WheelChange { inner_clearance: Some(length(-1.0)), ..full.clone() }),
            ("outer_clearance", WheelChange { outer_clearance: Some(length(f64::NAN)), ..full.clone() }),
            ("arch_clearance", WheelChange { arch_clearance: Some(length(1e300)), ..full.clone() }),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(name), "{name} {message}");
        }
    }

    proptest! {
        #[test]
        fn there_and_back_is_no_change(rim in 100.0f64..300.0, offset in -80.0f64..80.0, diameter in 500.0f64..900.0, section in 150.0f64..350.0) {
            let there = WheelChange { after: wheel(rim, offset, diameter, section), ..change() };
            let back = WheelChange { before: there.after.clone(), after: there.before.clone(), ..change() };
            let (there, back) = (there.findings().unwrap(), back.findings().unwrap());
            for (one, other) in [
                (there.inner_change, back.inner_change), (there.outer_change, back.outer_change), (there.arch_change, back.arch_change),
                (there.flange_change, back.flange_change), (there.track_change, back.track_change), (there.scrub_change, back.scrub_change),
            ] {
                prop_assert!((one + other).si().abs() < 1e-14);
            }
            prop_assert!(((1.0 + there.speedometer_error.si()) * (1.0 + back.speedometer_error.si()) - 1.0).abs() < 1e-12);
        }
    }
}
