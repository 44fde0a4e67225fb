use super::travel::{AtWheel, Bind, Bump, BumpClear, Carried, DroopClear, Lever, Mounting};
use crate::base::document::{Model, Stated, Value};
use crate::base::table::{Filling, Table, record};
use crate::spring::{natural_frequency, static_deflection, wheel_rate};
use crate::units::{Angle, Force, Frequency, Length, LinearStiffness, Mass, Ratio};
use crate::{Error, Result, valid};

/// A catalogue spring on a corner of the vehicle, with the damper and the bump stop that end the wheel's travel.
///
/// # Formula
/// `L = L_0 - (m g - F_g r_d) / (r k)` at ride height; sag `z = (L_d - L) / r`; remaining bump = the least of `(L - L_c - s) / r`, `h / r_d - z` and
/// `b - z`, and `c / max(r, 1)`; clear bump and droop: the least of that and of joint, hose and tyre, whose clearances in bump shrink by `-z` if `z < 0`; coil-bind margin `L_d - h r / r_d - L_c - s`; captive margin `L_0 - L_d`; wheel rate `k r^2`
///
/// # Fields
/// - `rate` — `k`, rate of the spring along its own axis, by its maker
/// - `free_length` — `L_0`, length of the unloaded spring
/// - `solid_length` — `L_c`, block length: every coil touching
/// - `minimum_gap` — `s`, sum of the gaps that must stay open between the coils, by the spring's maker (EN 13906-1)
/// - `motion_ratio` — `r`, shortening of the spring over travel of the wheel, measured along the spring and constant over the travel
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass, loaded as it will be
/// - `droop_length` — `L_d`, length between the spring's seats with the wheel hanging on the fully open damper, and the adjuster in its final place
/// - `damper_stroke` — `h`, stroke of the damper: length fully open minus length fully closed, bump rubbers on its rod not counted
/// - `damper_motion_ratio` — `r_d`, shortening of the damper over travel of the wheel, measured along the damper; it may be missing on a coil-over, which has that of the spring
/// - `damper_mounting` — `coil_over` if spring and damper have one axis, or `apart`; if it is left out, `apart` holds, and the damper needs a ratio of its own
/// - `gas_force` — `F_g`, force with which the gas opens the damper at ride height; `"none"` without gas; if it is left out, no gas is counted, and `droop_open` says so
/// - `bump_stop_travel` — `b`, travel of the wheel from full droop until the bump stop is touched, measured with the spring out; `"none"` if there is no bump stop; if it is left out, no bump stop is counted, and `bump_open` says so
/// - `bump_clearance` — `c`, height above the spring's seat to its bump stop, or to what it hits first, at ride height; the seat rises with the wheel, or with the spring if `r` is above 1
/// - `joint_bump_clearance` — travel of the wheel in bump, from ride height, until a joint is at its limit; `"none"` if no joint is before the stop
/// - `hose_bump_clearance` — travel of the wheel in bump, from ride height, until a hose, cable or shaft is at its limit; `"none"` if none is before the stop
/// - `tyre_clearance` — travel of the wheel in bump, from ride height, until a tyre touches, at any lock; `"none"` if none does before the stop
/// - `joint_droop_clearance` — travel of the wheel in droop, from ride height, until a joint is at its limit; `"none"` if no joint is before the open damper
/// - `hose_droop_clearance` — travel of the wheel in droop, from ride height, until a hose, cable or shaft is at its limit; `"none"` if none is before the open damper
///
/// # Valid for
/// A linear spring that acts along its seats, and a motion ratio that does not change with travel: measure it over the whole travel first.
/// At full droop the damper is fully open. A joint, a hose or a tyre that ends the travel earlier counts once its clearance is written; a strap does not count.
/// Friction, bar and bush rates are neglected. If a margin is negative, lengths and
/// forces are those of a spring that nothing else stops. A bump stop compresses, so coil bind is compared with the closed damper.
///
/// # Source
/// Balance of virtual work at the wheel; lengths and gaps of a compression spring: EN 13906-1:2013 (from memory); standard gravity: 3rd CGPM
///
/// # Caution
/// A compressed spring stores enough energy to kill: use a compressor made for it. A damper is not always made to be a stop, and a spring that is loose
/// at full droop can leave its seat on the road; local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Corner {
    /// Rate of the spring along its own axis.
    pub rate: Value<LinearStiffness>,
    /// Length of the spring unloaded.
    pub free_length: Value<Length>,
    /// Length of the spring with every coil touching.
    pub solid_length: Value<Length>,
    /// Sum of the gaps that must stay open between the coils.
    pub minimum_gap: Value<Length>,
    /// Shortening of the spring over travel of the wheel.
    pub motion_ratio: Value<Ratio>,
    /// Scale reading of the wheel less its unsprung mass.
    pub sprung_mass: Value<Mass>,
    /// Length between the spring's seats with the wheel at full droop.
    pub droop_length: Value<Length>,
    /// Stroke of the damper, fully open less fully closed.
    pub damper_stroke: Value<Length>,
    /// Shortening of the damper over travel of the wheel; that of the spring where it is missing on a coil-over.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper_motion_ratio: Option<Value<Ratio>>,
    /// Place of the damper; apart from the spring if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper_mounting: Option<Mounting>,
    /// Force with which the gas opens the damper at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub gas_force: Stated<Value<Force>>,
    /// Travel of the wheel from full droop until the bump stop is touched.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub bump_stop_travel: Stated<Value<Length>>,
    /// Height above the spring's seat to its bump stop, at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bump_clearance: Option<Value<Length>>,
    /// Travel in bump, from ride height, until a joint is at its limit.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub joint_bump_clearance: Stated<Value<Length>>,
    /// Travel in bump, from ride height, until a hose, cable or shaft is at its limit.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub hose_bump_clearance: Stated<Value<Length>>,
    /// Travel in bump, from ride height, until a tyre touches, at any lock.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub tyre_clearance: Stated<Value<Length>>,
    /// Travel in droop, from ride height, until a joint is at its limit.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub joint_droop_clearance: Stated<Value<Length>>,
    /// Travel in droop, from ride height, until a hose, cable or shaft is at its limit.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub hose_droop_clearance: Stated<Value<Length>>,
}

record! {
    /// A corner standing at ride height.
    #[derive(Debug, Clone, PartialEq)]
    pub struct AtRideHeight {
        /// Compressive force in the spring.
        pub spring_force: Force,
        /// Length of the spring.
        pub spring_length: Length,
        /// Travel of the wheel from full droop to ride height.
        pub sag: Length,
        /// Travel of the wheel in bump until something ends it.
        pub bump_remaining: Length,
        /// Part that ends the bump travel.
        pub ends_first: String,
        /// Along the spring, between the closed damper and the minimum gap of the coils.
        pub bind_margin: Length,
        /// Compression of the spring at full droop.
        pub captive_margin: Length,
        /// Rate at the wheel.
        pub wheel_rate: LinearStiffness,
        /// Undamped natural frequency of the sprung mass.
        pub frequency: Frequency,
        /// Missing fields that could still take from the droop travel; empty if none is missing.
        pub droop_open: String,
        /// Missing fields that could still take from the bump travel; empty if none is missing.
        pub bump_open: String,
        /// Travel of the wheel in bump until spring, damper, stop, joint, hose or tyre ends it.
        pub bump_clear: Length,
        /// Travel of the wheel in droop until damper, joint or hose ends it.
        pub droop_clear: Length,
        /// Part that ends `bump_clear`.
        pub bump_clear_ends: String,
        /// Part that ends `droop_clear`.
        pub droop_clear_ends: String,
    }
}

/// Share by which two readings of one ratio may differ.
const APART: f64 = 0.01;
const TWO_AXES: &str = "a coil-over has one axis, but damper_motion_ratio differs from motion_ratio";

type Clearance = Stated<Value<Length>>;

fn is_unknown(clearance: &Clearance) -> bool {
    matches!(clearance, Stated::Unknown)
}

/// Part with the least of these clearances, by the first word of its field; none if none is given.
fn nearest(clearances: &[(&'static str, &Clearance)]) -> Option<&'static str> {
    let given = clearances.iter().filter_map(|(name, on)| Some((*name, on.as_ref()?.quantity.si())));
    let (name, _) = given.min_by(|one, other| one.1.total_cmp(&other.1))?;
    name.split('_').next()
}

/// Request for the fields that are missing; empty if none is.
fn not_told(fields: impl Iterator<Item = (&'static str, bool)>) -> String {
    let missing: Vec<&str> = fields.filter(|(_, missing)| *missing).map(|(name, _)| name).collect();
    match missing.as_slice() {
        [] => String::new(),
        names => format!("write {}, or \"none\" if there is none", names.join(", ")),
    }
}

impl crate::base::Sealed for Corner {}
impl Model for Corner {
    const WISHES: &'static [[&'static str; 3]] = &[
        ["bump_tight_below", "wanted.bump", "of_difference"],
        ["droop_tight_below", "wanted.droop", "of_difference"],
        ["spring_tight_below", "wanted.spring_margin", "of_difference"],
    ];

    fn check(&self) -> Result<()> {
        let (rate, motion_ratio, sprung_mass) =
            (self.rate.quantity, self.motion_ratio.quantity, self.sprung_mass.quantity);
        let (free_length, solid_length, minimum_gap, droop_length) = (
            self.free_length.quantity,
            self.solid_length.quantity,
            self.minimum_gap.quantity,
            self.droop_length.quantity,
        );
        let (damper_stroke, damper_motion_ratio) = (self.damper_stroke.quantity, self.damper_ratio());
        let bump_stop_travel = self.bump_stop_travel.as_ref().map_or(Length::from_si(0.0), |on| on.quantity);
        let gas_force = self.gas_force.as_ref().map_or(Force::from_si(0.0), |on| on.quantity);
        let bump_clearance = self.bump_clearance.as_ref().map_or(Length::from_si(0.0), |on| on.quantity);
        if self.damper_mounting != Some(Mounting::CoilOver) && self.damper_motion_ratio.is_none() {
            let why = "a damper that stands apart has a ratio of its own; write damper_mounting = coil_over if it stands in the spring";
            return Err(Error::Missing { argument: "damper_motion_ratio", why });
        }
        let [joint_bump_clearance, hose_bump_clearance, tyre_clearance] =
            self.bump_clearances().map(|(_, on)| on.as_ref().map_or(Length::from_si(0.0), |on| on.quantity));
        let [joint_droop_clearance, hose_droop_clearance] =
            self.droop_clearances().map(|(_, on)| on.as_ref().map_or(Length::from_si(0.0), |on| on.quantity));
        valid! {
            rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
            free_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
            solid_length: 0.00001 <= .. <= 100 ; "plausibility limit: springs are between 10 µm and 100 m long when solid";
            free_length > solid_length ; "definition: a compression spring can be compressed";
            minimum_gap: 0 <= .. <= 100 ; "definition: a gap is not negative";
            motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
            sprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel carries 1000 t";
            droop_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
            droop_length > solid_length ; "definition: a spring does not fit between seats nearer than its block length";
            damper_stroke: 0.0001 <= .. <= 100 ; "plausibility limit: strokes are between 0.1 mm and 100 m";
            damper_motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
            bump_stop_travel: 0 <= .. <= 100 ; "definition: it is measured from full droop upward";
            gas_force: 0 <= .. <= 100000 ; "plausibility limit: dampers push with less than 100 kN";
            bump_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height";
            joint_bump_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height";
            hose_bump_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height";
            tyre_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height";
            joint_droop_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height";
            hose_droop_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height";
        }
        Ok(())
    }
}

impl Corner {
    /// The corner at ride height: force, length and rate of the spring, and remaining travel.
    ///
    /// # Returns
    /// - `spring_force` — compressive force in the spring: the sprung weight over the motion ratio
    /// - `spring_length` — length of the spring between its seats
    /// - `sag` — travel of the wheel from full droop to ride height, all of the remaining droop; negative where the preload holds the wheel on the open damper
    /// - `bump_remaining` — travel of the wheel in bump until something ends it; negative where it has ended below ride height
    /// - `ends_first` — what ends it: `coil bind` (the minimum gap included), `damper closed` or `bump stop`
    /// - `bind_margin` — what the spring could still shorten with the damper closed, the minimum gap kept; negative where the coils end before the damper
    /// - `captive_margin` — how much the spring is compressed at full droop; negative where it is loose
    /// - `wheel_rate` — rate of the spring at the wheel, without the tyre
    /// - `frequency` — undamped natural frequency of the sprung mass on that rate
    /// - `droop_open` — fields that are missing and could still take from the droop travel: its verdict is then no better than `tight`; empty if none is missing
    /// - `bump_open` — fields that are missing and could still take from the bump travel, in the same way
    /// - `bump_clear` — travel of the wheel in bump until anything ends it: `bump_remaining`, or a joint, hose or tyre before that
    /// - `droop_clear` — travel of the wheel in droop until anything ends it: `sag`, or a joint or hose before that
    /// - `bump_clear_ends` — what ends `bump_clear`: `joint`, `hose`, `tyre`, or else what ends `bump_remaining`
    /// - `droop_clear_ends` — what ends `droop_clear`: `joint`, `hose`, or else `damper open`
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, Verdict, spring::*, units::*};
    /// let corner = Corner {
    ///     rate: Value::parse("450 lbf/in")?, free_length: Value::parse("320 mm")?, solid_length: Value::parse("165 mm")?,
    ///     minimum_gap: Value::parse("15 mm")?, motion_ratio: Value::new(Ratio::of::<one>(0.6)), sprung_mass: Value::parse("420 kg")?,
    ///     droop_length: Value::parse("300 mm")?, damper_stroke: Value::parse("110 mm")?, damper_motion_ratio: None, damper_mounting: Some(Mounting::CoilOver),
    ///     gas_force: Stated::None, bump_stop_travel: Stated::Unknown, bump_clearance: None,
    ///     joint_bump_clearance: Stated::None, hose_bump_clearance: Stated::Given(Value::parse("65 mm")?), tyre_clearance: Stated::None,
    ///     joint_droop_clearance: Stated::None, hose_droop_clearance: Stated::None,
    /// }.checked()?;
    /// let on = corner.at_ride_height()?;
    /// assert_eq!(format!("{:.1} mm", on.sag.in_::<mm>()), "111.8 mm");
    /// assert_eq!(format!("{:.1} mm until {}", on.bump_remaining.in_::<mm>(), on.ends_first), "71.5 mm until damper closed");
    /// assert_eq!(format!("{:.1} mm until the {} ends it", on.bump_clear.in_::<mm>(), on.bump_clear_ends), "65.0 mm until the hose ends it");
    /// assert_eq!((on.droop_open.as_str(), on.bump_open.as_str()), ("", "write bump_stop_travel, or \"none\" if there is none"));
    /// assert_eq!(Verdict::of_difference(on.bind_margin, Length::of::<mm>(5.0)), Verdict::Meets);
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at_ride_height(&self) -> Result<AtRideHeight> {
        self.check()?;
        let (rate, motion_ratio, sprung_mass) =
            (self.rate.quantity, self.motion_ratio.quantity, self.sprung_mass.quantity);
        let (free_length, droop_length) = (self.free_length.quantity, self.droop_length.quantity);
        let shortest = self.solid_length.quantity + self.minimum_gap.quantity;

        let spring_force = Carried {
            sprung_mass,
            motion_ratio,
            gas_force: self.gas_force.as_ref().map(|on| on.quantity),
            damper_motion_ratio: Some(self.damper_ratio()),
        }
        .force()?;
        let spring_length = free_length - static_deflection(spring_force, rate)?;
        let lever = Lever { motion_ratio, ratio_gradient: None };
        let between = |longer, shorter| AtWheel { longer, shorter, lever }.travel();
        let sag = between(droop_length, spring_length)?;
        let stroke = self.damper_stroke.quantity;
        let damper_travel = stroke / self.damper_ratio();
        let bump = Bump {
            coil_travel: between(spring_length, shortest)?,
            damper_travel,
            droop_remaining: sag,
            bump_stop_travel: self.bump_stop_travel.as_ref().map(|travel| travel.quantity),
            bump_clearance: self.bump_clearance.as_ref().map(|on| on.quantity),
            motion_ratio: Some(motion_ratio),
        };
        let (bump_remaining, ends_first) = bump.first();
        let mounting = Some(self.damper_mounting.unwrap_or(Mounting::Apart));
        let bind = Bind {
            droop_length,
            damper_travel,
            lever,
            droop_remaining: None,
            shortest,
            mounting,
            stroke,
            seat_offset: None,
            right_seat_offset: None,
        };
        let bind_margin = bind.margin()?;
        let captive_margin = free_length - droop_length;

        let wheel_rate = wheel_rate(rate, motion_ratio, Angle::from_si(0.0))?;
        let (bump_clear, droop_clear) = (self.bump_clear(bump_remaining, sag)?, self.droop_clear(sag)?);
        let bump_end = (bump_clear < bump_remaining).then(|| nearest(&self.bump_clearances())).flatten();
        let droop_end = (droop_clear < sag).then(|| nearest(&self.droop_clearances())).flatten();
        Ok(AtRideHeight {
            spring_force,
            spring_length,
            sag,
            bump_remaining,
            ends_first: ends_first.word().to_owned(),
            bind_margin,
            captive_margin,
            wheel_rate,
            frequency: natural_frequency(wheel_rate, sprung_mass)?,
            droop_open: self.droop_open(),
            bump_open: self.bump_open(),
            bump_clear,
            droop_clear,
            bump_clear_ends: bump_end.unwrap_or(ends_first.word()).to_owned(),
            droop_clear_ends: droop_end.unwrap_or("damper open").to_owned(),
        })
    }

    /// Joint, hose and tyre in bump, by the names of their fields.
    fn bump_clearances(&self) -> [(&'static str, &Clearance); 3] {
        [
            ("joint_bump_clearance", &self.joint_bump_clearance),
            ("hose_bump_clearance", &self.hose_bump_clearance),
            ("tyre_clearance", &self.tyre_clearance),
        ]
    }

    /// Joint and hose in droop, by the names of their fields.
    fn droop_clearances(&self) -> [(&'static str, &Clearance); 2] {
        [
            ("joint_droop_clearance", &self.joint_droop_clearance),
            ("hose_droop_clearance", &self.hose_droop_clearance),
        ]
    }

    fn bump_clear(&self, bump_remaining: Length, droop_remaining: Length) -> Result<Length> {
        let [joint_bump_clearance, hose_bump_clearance, tyre_clearance] =
            self.bump_clearances().map(|(_, on)| on.as_ref().map(|on| on.quantity));
        BumpClear {
            bump_remaining,
            droop_remaining: Some(droop_remaining),
            linkage_bump: None,
            joint_bump_clearance,
            hose_bump_clearance,
            tyre_clearance,
            side_travel: None,
        }
        .remaining()
    }

    fn droop_clear(&self, droop_remaining: Length) -> Result<Length> {
        let [joint_droop_clearance, hose_droop_clearance] =
            self.droop_clearances().map(|(_, on)| on.as_ref().map(|on| on.quantity));
        DroopClear {
            droop_remaining,
            linkage_droop: None,
            joint_droop_clearance,
            hose_droop_clearance,
            side_travel: None,
        }
        .remaining()
    }

    /// Missing fields that could still take from the travel in droop.
    fn droop_open(&self) -> String {
        if matches!(self.gas_force, Stated::Given(_)) && self.has_two_axes() {
            return TWO_AXES.to_owned();
        }
        let gas = ("gas_force", matches!(self.gas_force, Stated::Unknown));
        not_told([gas].into_iter().chain(self.droop_clearances().map(|on| (on.0, is_unknown(on.1)))))
    }

    /// Missing fields that could still take from the travel in bump.
    fn bump_open(&self) -> String {
        if self.has_two_axes() {
            return TWO_AXES.to_owned();
        }
        let stop = matches!((&self.bump_stop_travel, &self.bump_clearance), (Stated::Unknown, None));
        let others = self.bump_clearances().map(|on| (on.0, is_unknown(on.1)));
        not_told([("bump_stop_travel", stop)].into_iter().chain(others))
    }

    /// True of a coil-over whose damper has another ratio than its spring: one of the two is wrong.
    fn has_two_axes(&self) -> bool {
        let (spring, damper) = (self.motion_ratio.quantity.si(), self.damper_ratio().si());
        self.damper_mounting == Some(Mounting::CoilOver) && (damper - spring).abs() > APART * spring
    }

    /// The corner at ride height over spring rates and motion ratios, everything else as it is.
    ///
    /// # Parameters
    /// - `rate` — rates of the spring
    /// - `motion_ratio` — motion ratios of the spring, and of the damper where it has none of its own
    ///
    /// # Returns
    /// One row a rate and motion ratio: `rate`, `motion_ratio`, `spring_force`, `spring_length`, `sag`, `bump_remaining`, `ends_first`,
    /// `bind_margin`, `captive_margin`, `wheel_rate`, `frequency`, `droop_open`, `bump_open`, `bump_clear`,
    /// `droop_clear`, `bump_clear_ends`, `droop_clear_ends`.
    pub fn table(&self, rate: &[LinearStiffness], motion_ratio: &[Ratio]) -> Result<Table> {
        let lists = [rate.len(), motion_ratio.len()];
        let mut rows = Filling::over(["rate", "motion_ratio"], &lists)?;
        for rate in rate {
            for motion_ratio in motion_ratio {
                let changed = Corner {
                    rate: Value::new(*rate),
                    motion_ratio: Value::new(*motion_ratio),
                    ..self.clone()
                };
                rows.push((*rate, *motion_ratio), changed.at_ride_height())?;
            }
        }
        rows.finish()
    }

    /// The damper's own motion ratio, or the spring's.
    fn damper_ratio(&self) -> Ratio {
        self.damper_motion_ratio.as_ref().map_or(self.motion_ratio.quantity, |own| own.quantity)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;
    use crate::units::{N_mm, kg, mm, one};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn length(value: f64) -> Value<Length> {
        Value::new(Length::of::<mm>(value))
    }

    /// A rate that makes the numbers round: `m g = 9806.65 N`, `F = 19613.3 N`.
    fn corner() -> Corner {
        Corner {
            rate: Value::new(LinearStiffness::of::<N_mm>(196.133)),
            free_length: length(320.0),
            solid_length: length(150.0),
            minimum_gap: length(10.0),
            motion_ratio: Value::new(Ratio::of::<one>(0.5)),
            sprung_mass: Value::new(Mass::of::<kg>(1000.0)),
            droop_length: length(300.0),
            damper_stroke: length(96.0),
            damper_motion_ratio: Some(Value::new(Ratio::of::<one>(0.4))),
            damper_mounting: None,
            gas_force: Stated::Unknown,
            bump_stop_travel: Stated::Given(length(220.0)),
            bump_clearance: None,
            joint_bump_clearance: Stated::Unknown,
            hose_bump_clearance: Stated::Unknown,
            tyre_clearance: Stated::Unknown,
            joint_droop_clearance: Stated::Unknown,
            hose_droop_clearance: Stated::Unknown,
        }
    }

    /// Against so many millimetres.
    fn graded(margin: Length, wanted: f64) -> Verdict {
        Verdict::of_difference(margin, Length::of::<mm>(wanted))
    }

    #[test]
    fn a_corner_worked_by_hand() {
        // 19613.3 N on 196.133 N/mm is 100 mm: 220 mm long, 80 mm below the 300 mm at droop, 160 mm of wheel travel.
        // Damper 96 / 0.4 = 240 mm of wheel travel, 80 remain; bump stop 220 - 160 = 60 remain; coils (220 - 160) / 0.5 = 120 remain.
        // Damper closed: 300 - 240 * 0.5 = 180 mm, 20 over 150 + 10. Wheel 196.133 * 0.25 N/mm; f = sqrt(49033.25 / 1000) / 2 pi.
        let on = corner().at_ride_height().unwrap();
        for (found, by_hand) in [
            (on.spring_length, 220.0),
            (on.sag, 160.0),
            (on.bump_remaining, 60.0),
            (on.bind_margin, 20.0),
            (on.captive_margin, 20.0),
        ] {
            assert_relative_eq!(found.in_::<mm>(), by_hand, max_relative = 1e-12);
        }
        assert_relative_eq!(on.spring_force.si(), 19613.3, max_relative = 1e-14);
        assert_relative_eq!(on.wheel_rate.si(), 49033.25, max_relative = 1e-14);
        assert_relative_eq!(on.frequency.si(), 1.114_462_530_531, max_relative = 1e-12);
        assert_eq!(on.ends_first, "bump stop");
    }

    #[test]
    fn what_ends_first_is_named_and_its_travel_follows() {
        let damper = Corner { bump_stop_travel: Stated::Unknown, ..corner() }.at_ride_height().unwrap();
        assert_eq!(
            (damper.ends_first.as_str(), graded(damper.bump_remaining, 60.0)),
            ("damper closed", Verdict::Meets)
        );
        assert_relative_eq!(damper.bump_remaining.in_::<mm>(), 80.0, max_relative = 1e-12);
        assert_eq!(graded(damper.bump_remaining, 81.0), Verdict::Tight);
        let standing =
            Corner { bump_stop_travel: Stated::Given(length(159.0)), ..corner() }.at_ride_height().unwrap();
        assert_eq!(
            (standing.ends_first.as_str(), graded(standing.bump_remaining, 60.0)),
            ("bump stop", Verdict::Short)
        );
    }

    /// A joint, a hose or a tyre that comes first ends the travel; the sheet's `bump_clear` and `droop_clear` have the same rule.
    #[test]
    fn joint_hose_and_tyre_end_the_travel_and_are_asked_for() {
        let stated = |bump: [f64; 3], droop: [f64; 2]| {
            let [joint_bump_clearance, hose_bump_clearance, tyre_clearance] =
                bump.map(|at| if at.is_nan() { Stated::None } else { Stated::Given(length(at)) });
            let [joint_droop_clearance, hose_droop_clearance] =
                droop.map(|at| if at.is_nan() { Stated::None } else { Stated::Given(length(at)) });
            let gas_force = Stated::None;
            let full = Corner { joint_bump_clearance, hose_bump_clearance, tyre_clearance, ..corner() };
            Corner { joint_droop_clearance, hose_droop_clearance, gas_force, ..full }
                .at_ride_height()
                .unwrap()
        };
        let none = f64::NAN;
        // The bump stop is 60 mm away, the open damper 160 mm.
        for (bump, droop, bump_clear, droop_clear, ends) in [
            ([none; 3], [none; 2], 60.0, 160.0, ["bump stop", "damper open"]),
            ([70.0, none, 80.0], [none, 200.0], 60.0, 160.0, ["bump stop", "damper open"]),
            ([none, none, 45.0], [90.0, none], 45.0, 90.0, ["tyre", "joint"]),
            ([50.0, 30.0, 45.0], [90.0, 75.0], 30.0, 75.0, ["hose", "hose"]),
        ] {
            let on = stated(bump, droop);
            assert_relative_eq!(on.bump_clear.in_::<mm>(), bump_clear, max_relative = 1e-12);
            assert_relative_eq!(on.droop_clear.in_::<mm>(), droop_clear, max_relative = 1e-12);
            assert_eq!((on.droop_open.as_str(), on.bump_open.as_str()), ("", ""));
            assert_eq!([on.bump_clear_ends, on.droop_clear_ends], ends);
        }
        let open = corner().at_ride_height().unwrap();
        assert!(open.bump_open.contains("joint_bump_clearance, hose_bump_clearance, tyre_clearance"));
        assert!(!open.bump_open.contains("bump_stop_travel"));
        assert!(open.droop_open.contains("gas_force, joint_droop_clearance, hose_droop_clearance"));
    }

    #[test]
    fn coils_that_bind_before_the_damper_closes_are_short() {
        let bound = Corner { damper_stroke: length(120.0), bump_stop_travel: Stated::Unknown, ..corner() };
        let on = bound.at_ride_height().unwrap();
        assert_eq!((on.ends_first.as_str(), graded(on.bind_margin, 20.0)), ("coil bind", Verdict::Short));
        assert_relative_eq!(on.bind_margin.in_::<mm>(), -10.0, max_relative = 1e-12);
        // A bump stop that is touched earlier gives way: it does not save the coils.
        let stopped =
            Corner { bump_stop_travel: Stated::Given(length(220.0)), ..bound }.at_ride_height().unwrap();
        assert_eq!(
            (stopped.ends_first.as_str(), graded(stopped.bind_margin, 20.0)),
            ("bump stop", Verdict::Short)
        );
    }

    #[test]
    fn a_spring_that_is_loose_at_droop_is_short_and_sags_as_much_more() {
        let loose = Corner { droop_length: length(321.0), ..corner() }.at_ride_height().unwrap();
        assert_eq!(graded(loose.captive_margin, 20.0), Verdict::Short);
        assert_relative_eq!(loose.captive_margin.in_::<mm>(), -1.0, max_relative = 1e-10);
        assert_relative_eq!(loose.sag.in_::<mm>(), 202.0, max_relative = 1e-12);
        let touching = Corner { droop_length: length(320.0), ..corner() }.at_ride_height().unwrap();
        assert_eq!(graded(touching.captive_margin, 20.0), Verdict::Tight);
    }

    #[test]
    fn a_preload_above_the_load_leaves_no_droop() {
        // 101 mm of preload where the load takes 100 mm: the wheel hangs on the open damper.
        let held = Corner { droop_length: length(219.0), ..corner() }.at_ride_height().unwrap();
        assert_eq!(graded(held.sag, 160.0), Verdict::Short);
        assert_relative_eq!(held.sag.in_::<mm>(), -2.0, max_relative = 1e-10);
    }

    #[test]
    fn a_coil_over_without_a_ratio_of_its_own_has_that_of_the_spring() {
        let shared = Corner {
            damper_motion_ratio: None,
            damper_mounting: Some(Mounting::CoilOver),
            bump_stop_travel: Stated::Unknown,
            ..corner()
        };
        let unsaid = Corner { damper_mounting: None, ..shared.clone() };
        assert!(unsaid.check().unwrap_err().to_string().contains("damper_motion_ratio"));
        let own = Corner { damper_motion_ratio: Some(shared.motion_ratio.clone()), ..shared.clone() };
        assert_eq!(shared.at_ride_height(), own.at_ride_height());
    }

    /// A coil-over whose damper was read to move less than its spring: the coils are held against the stroke, as they have one axis.
    #[test]
    fn a_coil_over_shortens_its_spring_by_the_whole_stroke() {
        let apart = corner().at_ride_height().unwrap();
        let one_axis = Corner { damper_mounting: Some(Mounting::CoilOver), ..corner() };
        let on = one_axis.at_ride_height().unwrap();
        // 96 mm of stroke; apart it would be 96 mm / 0.4 * 0.5 = 120 mm of the spring.
        assert_relative_eq!((on.bind_margin - apart.bind_margin).in_::<mm>(), 24.0, max_relative = 1e-9);
        let lacking =
            Corner { damper_mounting: Some(Mounting::Apart), damper_motion_ratio: None, ..corner() };
        assert!(lacking.check().unwrap_err().to_string().contains("damper_motion_ratio"));
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let full = corner();
        let wrong: [(&str, Corner); 8] = [
            ("rate", Corner { rate: Value::new(LinearStiffness::from_si(0.0)), ..full.clone() }),
            ("free_length", Corner { free_length: length(150.0), ..full.clone() }),
            ("minimum_gap", Corner { minimum_gap: length(-1.0), ..full.clone() }),
            ("motion_ratio", Corner { motion_ratio: Value::new(Ratio::of::<one>(60.0)), ..full.clone() }),
            ("sprung_mass", Corner { sprung_mass: Value::new(Mass::from_si(f64::NAN)), ..full.clone() }),
            ("droop_length", Corner { droop_length: length(150.0), ..full.clone() }),
            ("damper_stroke", Corner { damper_stroke: length(0.0), ..full.clone() }),
            ("bump_stop_travel", Corner { bump_stop_travel: Stated::Given(length(-5.0)), ..full.clone() }),
        ];
        for (field, corner) in wrong {
            let message = corner.check().unwrap_err().to_string();
            assert!(message.starts_with(field), "{message}");
            assert!(corner.at_ride_height().is_err());
        }
        assert!(full.check().is_ok());
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row() {
        let rates = [100.0, 196.133].map(LinearStiffness::of::<N_mm>);
        let table = corner().table(&rates, &[0.5, 5.0].map(Ratio::from_si)).unwrap();
        assert_eq!(table.rows(), 4);
        assert!(table.reason(3).is_some_and(|error| error.to_string().starts_with("motion_ratio = 5")));
        let sag = table.numbers("sag").unwrap();
        assert_relative_eq!(sag[2], 0.16, max_relative = 1e-12);
        assert!(sag[0] > sag[2] && sag[1].is_nan());
        assert_eq!(table.word("ends_first", 2), Some("bump stop"));
        assert!(table.numbers("bump_remaining").unwrap()[0] < 0.0);
    }

    proptest! {
        #[test]
        fn more_rate_is_less_sag_and_more_bump(rate in 5.0..500.0, more in 1.01..3.0) {
            let of = |rate: f64| {
                let rate = Value::new(LinearStiffness::of::<N_mm>(rate));
                Corner { rate, ..corner() }.at_ride_height().unwrap()
            };
            let (soft, stiff) = (of(rate), of(rate * more));
            prop_assert!(stiff.sag < soft.sag && stiff.bump_remaining > soft.bump_remaining);
            prop_assert!(stiff.frequency > soft.frequency);
        }

        #[test]
        fn the_least_limit_ends_the_travel(stroke in 1.0..200.0, stop in 0.0..400.0, gap in 0.0..80.0) {
            let one = Corner {
                damper_stroke: length(stroke), bump_stop_travel: Stated::Given(length(stop)), minimum_gap: length(gap), ..corner()
            };
            let on = one.at_ride_height().unwrap();
            let full = (on.sag + on.bump_remaining).in_::<mm>();
            // Moved to where it ends, the wheel has used up exactly the limit that is named, and none of the others.
            let used = [
                ("coil bind", 300.0 - full * 0.5 - 150.0 - gap), ("damper closed", stroke - full * 0.4), ("bump stop", stop - full),
            ];
            for (name, remaining) in used {
                prop_assert!(remaining > -1e-9, "{name} {remaining}");
                prop_assert!(name != on.ends_first || remaining < 1e-9, "{name} {remaining}");
            }
            // The coils end first without a bump stop exactly where the damper does not save them.
            let bare = Corner { bump_stop_travel: Stated::Unknown, ..one }.at_ride_height().unwrap();
            let margin = bare.bind_margin.si();
            prop_assert!(margin.abs() < 1e-12 || (bare.ends_first == "coil bind") == (margin < 0.0));
        }
    }
}
