#![expect(clippy::indexing_slicing, reason = "a count of words of the same text")]

use crate::base::document::Model;
use crate::base::table::{Filling, Table, record};
use crate::base::text::refusal;
use crate::tyre::load_capacity;
use crate::units::{Length, Mass, Ratio, TurnsPerDistance, Velocity, km_h};
use crate::{Error, Result, valid};
use core::f64::consts::PI;

/// Rim code to metres: an inch a code.
const INCH: f64 = 0.0254;

/// Rolling circumference over free diameter: radial and diagonal construction.
/// ETRTO / UN Regulation 30 theoretical rolling circumference, from memory.
const RADIAL: f64 = 3.05;
const DIAGONAL: f64 = 2.99;

/// Rolling radius of a new radial tyre of a free diameter, by the convention.
pub(super) fn radial_rolling_radius(free_diameter: Length) -> Length {
    free_diameter * (RADIAL / (2.0 * PI))
}

/// A tyre by the marking on its wall: `225/70R15C 112/110R`, `P235/75R15`, `LT265/70R17/E`, `275/40ZR18 (99Y)`, `31x10.50R15LT`, `6.00-16`.
///
/// # Formula
/// metric: `H = S A`, `D = d + 2 H`; inch flotation: `D` and `S` as marked; old numeric: as metric, with the `A` of its series; `C = 3.05 D` radial, `2.99 D` diagonal
///
/// # Fields
/// - `marking` — the size as it is written on the wall; load index and speed symbol may follow
///
/// # Valid for
/// Sections of 50 mm to 500 mm, aspect ratios of 20 to 110, rims of code 8 to 30, flotation diameters of 15 in to 60 in.
/// Anything else is taken for a typing error. Words behind load index and speed symbol are passed over: `TL`, `TT`, `TUBELESS`, `M+S`,
/// `3PMSF`, `XL`, `REINFORCED`. So are the letter of a load range (`/E`) and the class in front (`P`, `LT`, `ST`, `HL`, `T`): the load
/// index already counts them. A `T` tyre is a temporary spare. Loaded and effective rolling radius depend on
/// load and pressure; the factor on the free diameter is a convention.
///
/// An old numeric marking, width in inches with two decimals, does not give its height. `A` is that of the series, and the diameter is good to about 2 %, so measure.
/// Rim 20 (`6.50-20`): 1.08. Rim 16 to 19 (`6.00-16`, `7.50-16LT`): 1.03. Rim 10 to 15, decimals in tens but not .00 or .50 (`5.60-15`, `6.40-13`): 0.95; decimals that end in 5
/// (`7.75-14`): 0.82; .00 or .50 on a rim up to 14 (`7.00-13`): 0.88; .00 or .50 with `LT` or `C` on 15: 1.03. Metric without a ratio (`185R14C`): 0.80.
/// A width in whole inches, 8 to 13, on a rim of code 22.5 or 24.5 (`11R22.5`): 0.86.
/// A marking is refused if two series meet (`6.00-15`, `7.00-14LT`) or the width is outside 3.00 to 9.00.
///
/// # Source
/// ISO 4000-1 (size designation and dimensions; 25.4 mm a rim code); rolling circumference: ETRTO Standards Manual and UN Regulation 30, from memory; ratios of the old
/// numeric series: common practice, no source, chosen by the diameters in the tables of UN Regulations 30 and 54 as remembered; speed symbols: ISO 4000-1, from memory
///
/// # Caution
/// A tyre of another size than the approved one changes braking, clearance, load capacity and the speedometer; load index and speed symbol
/// must suit the vehicle, and local codes decide.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tyre {
    /// Size as it is written on the wall; load index and speed symbol may follow.
    pub marking: String,
}

record! {
    /// Dimensions of a new, unloaded tyre on its measuring rim.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Dimensions {
        /// Nominal section width.
        pub section_width: Length,
        /// Height of the wall, rim to tread.
        pub section_height: Length,
        /// Nominal rim diameter.
        pub rim_diameter: Length,
        /// Free diameter: outer diameter of the unloaded tyre.
        pub free_diameter: Length,
        /// Half the free diameter.
        pub free_radius: Length,
        /// Outer circumference.
        pub free_circumference: Length,
        /// Turns along a distance on the free circumference.
        pub free_turns: TurnsPerDistance,
    }
}

record! {
    /// Rolling of a tyre under its load.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Rolling {
        /// Effective rolling radius: distance per turn over 2 pi.
        pub rolling_radius: Length,
        /// Distance per turn.
        pub rolling_circumference: Length,
        /// Turns along a distance.
        pub rolling_turns: TurnsPerDistance,
    }
}

/// Words at the end of a marking that change neither size nor load nor speed: without or with a tube, for mud and snow, extra load.
const REMARKS: [&str; 9] = ["TL", "TT", "TUBELESS", "M+S", "M&S", "M/S", "3PMSF", "XL", "REINFORCED"];

/// Bytes of the longest marking that is read.
const LONGEST: usize = 60;

/// The numbers of a size.
struct Marking {
    /// Nominal section width (m).
    section_width: f64,
    /// Section height over width.
    aspect: f64,
    /// Rim diameter (m).
    rim: f64,
    radial: bool,
}

/// Load indices and speed symbol after the size.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
struct Service {
    /// Load index for a single tyre.
    single: Option<f64>,
    /// Load index for each of two tyres on one end of an axle.
    dual: Option<f64>,
    /// Speed of the symbol (km/h).
    speed: Option<f64>,
}

impl Marking {
    fn free_diameter(&self) -> f64 {
        self.rim + 2.0 * self.section_width * self.aspect
    }
}

/// Numbers of a marking; not a number if the marking does not give it.
#[cfg(feature = "sheet")]
pub(super) struct Marked {
    pub(super) free_diameter: Length,
    pub(super) section_width: Length,
    /// Rolling radius of a new radial tyre.
    pub(super) radial_radius: Length,
    /// Load index for a single tyre.
    pub(super) load_index: Ratio,
    /// Speed of the symbol.
    pub(super) speed: Velocity,
}

impl crate::base::Sealed for Tyre {}
impl Model for Tyre {
    fn check(&self) -> Result<()> {
        self.read().map(drop)
    }
}

record! {
    /// Error of a speedometer that is set for the new tyre.
    struct Overread {
        overread: Ratio,
    }
}

impl Tyre {
    /// A tyre from its marking.
    pub fn new(marking: &str) -> Result<Self> {
        Self { marking: marking.to_owned() }.checked()
    }

    /// Dimensions of the new, unloaded tyre.
    ///
    /// # Returns
    /// See the fields of [`Dimensions`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{tyre::Tyre, units::*};
    /// let size = Tyre::new("275/40R18")?.dimensions()?;
    /// assert_eq!(format!("{:.1} mm", size.free_diameter.in_::<mm>()), "677.2 mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn dimensions(&self) -> Result<Dimensions> {
        let (marking, _) = self.read()?;
        let diameter = marking.free_diameter();
        let metres = Length::from_si;
        Ok(Dimensions {
            section_width: metres(marking.section_width),
            section_height: metres(marking.section_width * marking.aspect),
            rim_diameter: metres(marking.rim),
            free_diameter: metres(diameter),
            free_radius: metres(diameter / 2.0),
            free_circumference: metres(PI * diameter),
            free_turns: TurnsPerDistance::from_si(1.0 / (PI * diameter)),
        })
    }

    /// True for a radial tyre.
    pub(super) fn is_radial(&self) -> Result<bool> {
        Ok(self.read()?.0.radial)
    }

    /// Effective rolling radius of the tyre, less the worn tread.
    ///
    /// # Parameters
    /// - `tread_worn` — depth of worn tread, zero for a new tyre
    ///
    /// # Returns
    /// See the fields of [`Rolling`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{tyre::Tyre, units::*};
    /// let rolling = Tyre::new("225/70R15")?.rolling(Length::of::<mm>(0.0))?;
    /// assert_eq!(format!("{:.1} mm", rolling.rolling_radius.in_::<mm>()), "337.9 mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn rolling(&self, tread_worn: Length) -> Result<Rolling> {
        valid! {
            tread_worn: 0 <= .. <= 0.03 ; "plausibility limit: no road tyre has more tread than 30 mm";
        }
        let (marking, _) = self.read()?;
        let factor = if marking.radial { RADIAL } else { DIAGONAL };
        let circumference = factor * (marking.free_diameter() - 2.0 * tread_worn.si());
        Ok(Rolling {
            rolling_radius: Length::from_si(circumference / (2.0 * PI)),
            rolling_circumference: Length::from_si(circumference),
            rolling_turns: TurnsPerDistance::from_si(1.0 / circumference),
        })
    }

    /// Rolling of the tyre as its tread wears.
    ///
    /// # Parameters
    /// - `tread_worn` — depths of worn tread
    ///
    /// # Returns
    /// One row for each depth: `tread_worn`, the results of `rolling`: `...`, and `overread`, the share by which a
    /// speedometer set for the new tyre reads too much.
    pub fn wear_table(&self, tread_worn: &[Length]) -> Result<Table> {
        let new = self.rolling(Length::from_si(0.0))?;
        let mut rows = Filling::over(["tread_worn"], &[tread_worn.len()])?;
        for worn in tread_worn {
            let on = self.rolling(*worn).map(|rolling| {
                let overread =
                    new.rolling_circumference / rolling.rolling_circumference - Ratio::from_si(1.0);
                (rolling, Overread { overread })
            });
            rows.push((*worn,), on)?;
        }
        rows.finish()
    }

    /// Load capacity of this tyre as a single tyre, by the load index after the size.
    ///
    /// # Returns
    /// The mass that it may carry at its reference pressure, up to its speed symbol. Refused if no load index is written.
    ///
    /// # Example
    /// ```
    /// use axlewright::{tyre::Tyre, units::*};
    /// let load = Tyre::new("LT235/85R16 120/116Q")?.single_load()?;
    /// assert_eq!(format!("{:.0} kg", load.in_::<kg>()), "1400 kg");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn single_load(&self) -> Result<Mass> {
        let service = self.read()?.1;
        let missing = "no load index stands after the size, as in 235/70R16 106T";
        load_capacity(Ratio::from_si(service.single.ok_or_else(|| self.refuse(missing))?))
    }

    /// Load capacity of each of two such tyres on one end of an axle, by the second load index.
    ///
    /// # Returns
    /// The mass that each of the two may carry. Refused if no second load index is written.
    ///
    /// # Example
    /// ```
    /// use axlewright::{tyre::Tyre, units::*};
    /// let load = Tyre::new("LT235/85R16 120/116Q")?.dual_load()?;
    /// assert_eq!(format!("{:.0} kg", load.in_::<kg>()), "1250 kg");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn dual_load(&self) -> Result<Mass> {
        let service = self.read()?.1;
        let missing =
            "no load index for two on one end of an axle stands after the size, as in LT235/85R16 120/116Q";
        load_capacity(Ratio::from_si(service.dual.ok_or_else(|| self.refuse(missing))?))
    }

    /// Speed up to which the tyre carries its load, by the speed symbol after the size.
    ///
    /// # Returns
    /// The speed of the symbol. `(Y)` in brackets promises more than these 300 km/h, and the maker says how much. Refused if no symbol is written.
    ///
    /// # Example
    /// ```
    /// use axlewright::{tyre::Tyre, units::*};
    /// let speed = Tyre::new("235/70R16 106T")?.rated_speed()?;
    /// assert_eq!(format!("{:.0} km/h", speed.in_::<km_h>()), "190 km/h");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn rated_speed(&self) -> Result<Velocity> {
        let service = self.read()?.1;
        let missing = "no speed symbol stands after the size, as in 235/70R16 106T";
        Ok(Velocity::of::<km_h>(service.speed.ok_or_else(|| self.refuse(missing))?))
    }

    /// Numbers of the marking for the build sheet.
    #[cfg(feature = "sheet")]
    pub(super) fn marked(&self) -> Result<Marked> {
        let (marking, service) = self.read()?;
        let unknown = f64::NAN;
        let radius = if marking.radial {
            self.rolling(Length::from_si(0.0))?.rolling_radius
        } else {
            Length::from_si(unknown)
        };
        Ok(Marked {
            free_diameter: Length::from_si(marking.free_diameter()),
            section_width: Length::from_si(marking.section_width),
            radial_radius: radius,
            load_index: Ratio::from_si(service.single.unwrap_or(unknown)),
            speed: service.speed.map_or(Velocity::from_si(unknown), Velocity::of::<km_h>),
        })
    }

    fn refuse(&self, message: &str) -> Error {
        refusal(&self.marking, message.to_owned())
    }

    fn read(&self) -> Result<(Marking, Service)> {
        let text = self.marking.trim();
        let refuse = |message: &str| self.refuse(message);
        if text.len() > LONGEST {
            return Err(refuse(
                "more than 60 characters are no tyre marking; write it as on the wall, such as 225/70R15C",
            ));
        }
        let upper = text.replace('×', "x").to_ascii_uppercase();
        if !upper.is_ascii() {
            return Err(refuse("a tyre marking has plain letters and digits only"));
        }
        // The size may contain spaces, so every head of the words is tried.
        let words: Vec<&str> = upper.split_whitespace().collect();
        // What stands behind load index and speed symbol says nothing of size, load or speed.
        let told = words.iter().rposition(|word| !REMARKS.contains(word)).map_or(0, |last| last + 1);
        let words = &words[..told];
        let sizes = (1..=words.len()).filter_map(|count| {
            let size = words[..count].concat();
            let marking =
                metric(&size).or_else(|| flotation(&size)).map(Ok).or_else(|| old_numeric(&size))?;
            Some((marking, service(&words[count..].concat())))
        });
        let mut sizes: Vec<_> = sizes.collect();
        sizes.sort_by_key(|(marking, service)| (service.is_none(), marking.is_err()));
        let (marking, service) = match sizes.into_iter().next() {
            Some((Ok(marking), Some(service))) => (marking, service),
            Some((Err(message), _)) => return Err(refuse(message)),
            Some((Ok(_), None)) => {
                return Err(refuse(
                    "after the size only a load index and speed symbol may stand, such as 112/110R or (99Y)",
                ));
            }
            None => {
                return Err(refuse(
                    "not a tyre size; write it as on the wall, such as 225/70R15C, LT265/70R17, 31x10.50R15LT or 6.00-16",
                ));
            }
        };
        let diameter = marking.free_diameter();
        let bounds = [
            ("section width", marking.section_width * 1000.0, 50.0, 500.0, "mm"),
            ("aspect ratio", marking.aspect * 100.0, 20.0, 110.0, "%"),
            ("rim", marking.rim / INCH, 8.0, 30.0, "code"),
            ("free diameter", diameter / INCH, 15.0, 60.0, "in"),
        ];
        for (what, value, low, high, unit) in bounds {
            if !(low..=high).contains(&value) {
                let shown = (value * 1e3).round() / 1e3;
                return Err(refuse(&format!("{what} {shown} {unit} is outside {low} to {high} {unit}")));
            }
        }
        Ok((marking, service))
    }
}

/// `225/70R15C`, `P235/75R15`, `LT265/70R17`, `275/40ZR18`, `175/80D13`, `165/80-13`.
fn metric(size: &str) -> Option<Marking> {
    let size = without_class(size);
    let (width, rest) = size.split_once('/')?;
    let (aspect, rest) = number(rest, 3)?;
    let (radial, rest) = construction(rest)?;
    let rim = rim(rest)?;
    let width = whole(width, 3)?;
    Some(Marking { section_width: width / 1000.0, aspect: aspect / 100.0, rim, radial })
}

/// The size without the class in front.
fn without_class(size: &str) -> &str {
    ["LT", "ST", "HL", "P", "T"].iter().find_map(|class| size.strip_prefix(class)).unwrap_or(size)
}

/// `31X10.50R15LT`, `35X12.50-16`: diameter, width and rim in inches.
fn flotation(size: &str) -> Option<Marking> {
    let (diameter, rest) = without_class(size).split_once('X')?;
    let (diameter, after) = number(diameter, 5)?;
    let (width, rest) = number(rest, 5)?;
    let (radial, rest) = construction(rest)?;
    let rim = rim(rest)?;
    let (diameter, width) = (diameter * INCH, width * INCH);
    (after.is_empty() && width > 0.0).then(|| Marking {
        section_width: width,
        aspect: (diameter - rim) / (2.0 * width),
        rim,
        radial,
    })
}

/// True for a radial tyre, and the remaining text.
fn construction(text: &str) -> Option<(bool, &str)> {
    let radial =
        text.strip_prefix("ZR").or_else(|| text.strip_prefix("RF")).or_else(|| text.strip_prefix('R'));
    match radial {
        Some(rest) => Some((true, rest)),
        None => text.strip_prefix(['D', 'B', '-']).map(|rest| (false, rest)),
    }
}

/// Rim diameter (m) with an optional class letter behind it, and the letter of a load range behind a stroke: `17/E`.
fn rim(text: &str) -> Option<f64> {
    let (code, class) = number(text, 4)?;
    let class = match class.rsplit_once('/') {
        Some((class, range)) if matches!(range.as_bytes(), [b'A'..=b'N']) && class != "M" => class,
        _ => class,
    };
    matches!(class, "" | "C" | "LT" | "XL" | "CP" | "M/C").then_some(code * INCH)
}

/// `6.00-16`, `7.50-16LT`, `5.60x15`, `7.50R16C`, `185R14C`, `165SR15`, `11R22.5`; or the reason for a refusal, if the form is known.
fn old_numeric(size: &str) -> Option<core::result::Result<Marking, &'static str>> {
    let size = without_class(size);
    let marks = size.find(|c: char| !c.is_ascii_digit() && c != '.')?;
    let (width, rest) = size.split_at(marks);
    let rest = ["SR", "HR", "VR"].iter().find_map(|radial| rest.strip_prefix(radial)).map_or_else(
        || construction(rest).or_else(|| rest.strip_prefix('X').map(|rest| (false, rest))),
        |rest| Some((true, rest)),
    );
    let ((radial, rest), marked_light_truck) = (rest?, size.ends_with("LT"));
    let rim = rim(rest)?;
    let code = rim / INCH;
    if width.len() == 3 && radial {
        let section_width = whole(width, 3)? / 1000.0;
        return Some(Ok(Marking { section_width, aspect: 0.80, rim, radial }));
    }
    if width.len() <= 2 && radial && (code == 22.5 || code == 24.5) {
        let inches = whole(width, 2)?;
        if !(8.0..=13.0).contains(&inches) {
            return Some(Err("a width in whole inches is read from 8 to 13 on: measure the tyre"));
        }
        return Some(Ok(Marking { section_width: inches * INCH, aspect: 0.86, rim, radial }));
    }
    let (inches, decimals) = width.split_once('.').filter(|(_, decimals)| decimals.len() == 2)?;
    let hundredths = whole(inches, 2)? * 100.0 + whole(decimals, 2)?;
    let commercial = marked_light_truck || rest.ends_with('C');
    let (half_inches, tens) = (hundredths % 50.0 == 0.0, hundredths % 10.0 == 0.0);
    if !(300.0..=900.0).contains(&hundredths) {
        return Some(Err("an old numeric marking is read from a width of 3.00 to 9.00 on: measure the tyre"));
    }
    let aspect = if code == 20.0 {
        1.08
    } else if (16.0..20.0).contains(&code) {
        1.03
    } else if !(10.0..16.0).contains(&code) {
        return Some(Err("an old numeric marking is read for rims of code 10 to 20: measure the tyre"));
    } else if !half_inches {
        if tens { 0.95 } else { 0.82 }
    } else if code >= 15.0 && commercial {
        1.03
    } else if code < 15.0 && !marked_light_truck {
        0.88
    } else {
        return Some(Err(
            "on this rim an old numeric marking of that width does not say its height (0.88 or about 1.03 of the width): measure the tyre",
        ));
    };
    Some(Ok(Marking { section_width: hundredths / 100.0 * INCH, aspect, rim, radial }))
}

/// Empty text, `112R`, `112/110R`, `(99Y)`, `99Y XL`.
fn service(text: &str) -> Option<Service> {
    let text = text.strip_suffix("XL").map_or(text, str::trim_end);
    if text.is_empty() {
        return Some(Service::default());
    }
    let text = text.strip_prefix('(').and_then(|inner| inner.strip_suffix(')')).unwrap_or(text);
    let (indices, symbol) = text.split_at(text.find(|c: char| c.is_ascii_uppercase())?);
    let index = |text| whole(text, 3).filter(|index| *index <= 279.0);
    let (single, dual) = match indices.split_once('/') {
        Some((single, dual)) => (index(single)?, Some(index(dual)?)),
        None => (index(indices)?, None),
    };
    Some(Service { single: Some(single), dual, speed: Some(speed_of(symbol)?) })
}

/// Speed of a speed symbol (km/h). ISO 4000-1, from memory.
fn speed_of(symbol: &str) -> Option<f64> {
    if let Some(step) = symbol.strip_prefix('A').and_then(|step| whole(step, 1)) {
        return (1.0..=8.0).contains(&step).then_some(5.0 * step);
    }
    Some(match symbol {
        "B" => 50.0,
        "C" => 60.0,
        "D" => 65.0,
        "E" => 70.0,
        "F" => 80.0,
        "G" => 90.0,
        "J" => 100.0,
        "K" => 110.0,
        "L" => 120.0,
        "M" => 130.0,
        "N" => 140.0,
        "P" => 150.0,
        "Q" => 160.0,
        "R" => 170.0,
        "S" => 180.0,
        "T" => 190.0,
        "U" => 200.0,
        "H" => 210.0,
        "V" => 240.0,
        "W" => 270.0,
        "Y" => 300.0,
        _ => return None,
    })
}

/// A decimal number of at most `digits` characters at the head, and the remaining text.
fn number(text: &str, digits: usize) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    let (head, rest) = text.split_at(end);
    (!head.is_empty() && head.len() <= digits && !head.starts_with('.') && !head.ends_with('.'))
        .then(|| head.parse().ok().map(|value| (value, rest)))
        .flatten()
}

/// A whole number of at most `digits` digits and nothing else.
fn whole(text: &str, digits: usize) -> Option<f64> {
    (!text.is_empty() && text.len() <= digits && text.bytes().all(|b| b.is_ascii_digit()))
        .then(|| text.parse().ok())
        .flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::mm;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    #[test]
    fn reads_what_stands_on_walls() {
        for (marking, diameter) in [
            ("225/70R15C 112/110R", 696.0),
            (" P235/75R15 ", 733.5),
            ("LT265/70R17", 802.8),
            ("275/40ZR18 (99Y)", 677.2),
            ("lt265/70r17", 802.8),
            ("205/55R16 91V XL", 631.9),
            ("31x10.50R15LT", 787.4),
            ("35x12.50-15", 889.0),
            ("165/80-13", 594.2),
            ("225/70 R15 C 112/110R", 696.0),
            ("225/70 R 15 C 112/110 R", 696.0),
            ("205/55 R16 91V", 631.9),
            ("LT 265/70R17", 802.8),
            ("31×10.50 R15 LT", 787.4),
            ("LT31x10.50R15", 787.4),
            ("LT235/85R16 120/116Q", 805.9),
            ("6.00-16", 720.344),
            ("7.50-16LT 116/114 L", 798.83),
            ("5.60x15", 651.256),
            ("185 R14C 102/100R", 651.6),
            ("165SR15", 645.0),
            ("LT265/70R17/E 121/118S", 802.8),
            ("LT265/70R17/D", 802.8),
            ("31x10.50R15LT/C 109S", 787.4),
            ("195/65R15 91H TL", 634.5),
            ("195/65R15 TL", 634.5),
            ("195/65R15 91H TL M+S", 634.5),
            ("205/55R16 91V M+S", 631.9),
            ("205/55R16 91V XL M+S 3PMSF", 631.9),
            ("HL275/40R18 102Y", 677.2),
            ("HL 275/40 R18 102Y XL", 677.2),
            ("T125/70R16 96M", 581.4),
            ("T235/70R16 106M", 735.4),
            ("T 125/70R16", 581.4),
            ("11R22.5", 1052.068),
            ("11R22.5 148/145L TL", 1052.068),
            ("11R24.5", 1102.868),
            ("6.50-20", 864.616),
            ("6.00-20", 837.184),
        ] {
            let size = Tyre::new(marking).and_then(|tyre| tyre.dimensions());
            let size = size.unwrap_or_else(|error| panic!("{marking}: {error}"));
            assert_relative_eq!(size.free_diameter.in_::<mm>(), diameter, max_relative = 1e-12);
        }
    }

    #[test]
    fn refuses_slips_of_the_pen() {
        for marking in [
            "",
            " ",
            "205",
            "205/55",
            "205/55R",
            "205/0R16",
            "-205/55R16",
            "205/55R-16",
            "205/55R1６",
            "999999/99R99",
            "205/55R99",
            "20.5/55R16",
            "205/55R16 foo",
            "205/55R16 91",
            "nan/55R16",
            "205/55R16 999V",
            "205//55R16",
            "31x10.50",
            "x10.50R15",
            "31x0R15",
            "15x10.50R15",
            "205/55Q16",
            "225/45R17 ()",
            "205/55R16R16",
            "205/55R16 91Z",
            "205/55R16 91A9",
            "205/55R16 91/R",
            "205/55R16 91/88/80R",
            "205/55R16 91VV",
            "6-16",
            "6.0-16",
            "6.00-",
            "6.00-22",
            "TL",
            "M+S",
            "TL 205/55R16",
            "205/55R16 TL 91V",
            "205/55R16/Z",
            "205/55R16/EE",
            "205/55R16/",
            "14R22.5",
            "7R22.5",
            "11R22",
            "11-22.5",
            "HLT275/40R18",
            "2.50-16",
            "9.50-16",
            "6.00-15",
            "7.00-14LT",
            "155-13",
        ] {
            let refused = Tyre::new(marking);
            assert!(matches!(refused, Err(Error::Text { .. })), "{marking}: {refused:?}");
        }
    }

    /// Outer diameters (mm) of diagonal tyres in the tables of UN Regulations 30 and 54, from memory.
    #[test]
    fn the_old_series_come_within_two_per_cent_of_the_tables() {
        for (marking, diameter) in [
            ("5.20-10", 508.0),
            ("5.20-12", 558.0),
            ("5.60-13", 600.0),
            ("5.90-13", 616.0),
            ("6.40-13", 642.0),
            ("5.60-14", 626.0),
            ("5.60-15", 650.0),
            ("6.40-15", 692.0),
            ("6.70-15", 710.0),
            ("7.10-15", 724.0),
            ("7.60-15", 742.0),
            ("5.50-12", 552.0),
            ("6.00-12", 574.0),
            ("7.00-13", 644.0),
            ("7.00-14", 668.0),
            ("7.50-14", 688.0),
            ("8.00-14", 702.0),
            ("6.00-16C", 728.0),
            ("6.50-16C", 742.0),
            ("7.00-16C", 778.0),
            ("7.50-16C", 802.0),
            ("155R13", 578.0),
            ("165R13", 596.0),
            ("175R13", 608.0),
            ("185R14", 650.0),
            ("165R15", 646.0),
            ("6.50-20", 860.0),
            ("7.00-20", 892.0),
            ("7.50-20", 928.0),
            ("8.25-20", 962.0),
            ("9.00-20", 1018.0),
            ("8R22.5", 936.0),
            ("9R22.5", 970.0),
            ("10R22.5", 1018.0),
            ("11R22.5", 1050.0),
            ("12R22.5", 1084.0),
            ("13R22.5", 1124.0),
        ] {
            let found = Tyre::new(marking).unwrap().dimensions().unwrap().free_diameter.in_::<mm>();
            assert!((found / diameter - 1.0).abs() < 0.02, "{marking}: {found} mm, {diameter} mm");
        }
    }

    #[test]
    fn load_index_and_speed_symbol() {
        for (marking, single, dual, speed) in [
            ("235/70R16 106T", Some(950.0), None, Some(190.0)),
            ("LT235/85R16 120/116Q", Some(1400.0), Some(1250.0), Some(160.0)),
            ("275/40ZR18 (99Y)", Some(775.0), None, Some(300.0)),
            ("7.50-16C 122/118 A8", Some(1500.0), Some(1320.0), Some(40.0)),
            ("LT265/70R17/E 121/118S", Some(1450.0), Some(1320.0), Some(180.0)),
            ("195/65R15 91H TL", Some(615.0), None, Some(210.0)),
            ("205/55R16 91V M+S", Some(615.0), None, Some(240.0)),
            ("HL275/40R18 102Y", Some(850.0), None, Some(300.0)),
            ("T125/70R16 96M", Some(710.0), None, Some(130.0)),
            ("205/55R16", None, None, None),
        ] {
            let tyre = Tyre::new(marking).unwrap();
            assert_eq!(tyre.single_load().ok().map(|load| load.si()), single, "{marking}");
            assert_eq!(tyre.dual_load().ok().map(|load| load.si()), dual, "{marking}");
            let found = tyre.rated_speed().ok().map(|speed| speed.in_::<km_h>().round());
            assert_eq!(found, speed, "{marking}");
        }
        let refused = Tyre::new("205/55R16").unwrap().single_load().unwrap_err().to_string();
        assert!(refused.contains("205/55R16") && refused.contains("no load index"), "{refused}");
    }

    proptest! {
        #[test]
        fn no_text_brings_it_down(text in "\\PC{0,24}") {
            let _ = Tyre::new(&text);
        }
        #[test]
        fn a_worn_tyre_turns_more_often(worn in 0.001f64..0.02) {
            let tyre = Tyre::new("225/70R15").unwrap();
            let [new, old] = [0.0, worn].map(|w| tyre.rolling(Length::from_si(w)).unwrap());
            prop_assert!(old.rolling_turns > new.rolling_turns && old.rolling_radius < new.rolling_radius);
        }
    }
}
