use crate::base::document::Model;
use crate::base::table::{Cell, Rows, Table};
use crate::units::{Length, Quantity, Ratio, TurnsPerDistance};
use crate::{Error, Result, valid};
use core::f64::consts::PI;

/// Rim code to metres: an inch a code.
const INCH: f64 = 0.0254;

/// Rolling circumference over free diameter: radial and diagonal construction.
/// ETRTO / UN Regulation 30 theoretical rolling circumference, from memory.
const RADIAL: f64 = 3.05;
const DIAGONAL: f64 = 2.99;

/// A tyre by the marking on its wall: `225/70R15C 112/110R`, `P235/75R15`, `LT265/70R17`, `275/40ZR18 (99Y)`, `31x10.50R15LT`.
///
/// # Formula
/// metric: `H = S A`, `D = d + 2 H`; inch flotation: `D` and `S` as marked; `C = 3.05 D` radial, `2.99 D` diagonal
///
/// # Fields
/// - `marking` — the size as it stands on the wall; load index and speed symbol may follow
///
/// # Valid for
/// Sections of 50 mm to 500 mm, aspect ratios of 20 to 110, rims of code 8 to 30, flotation diameters of 15 in to 60 in.
/// Anything else is taken for a slip of the pen. Old numeric markings are not read. Loaded and effective rolling radius depend on
/// load and pressure; the factor on the free diameter is a convention.
///
/// # Source
/// ISO 4000-1 (size designation and dimensions; 25.4 mm a rim code); rolling circumference: ETRTO Standards Manual and UN Regulation 30, from memory
///
/// # Caution
/// A tyre of another size than the approved one changes braking, clearance, load capacity and the speedometer; load index and speed symbol
/// must suit the vehicle, and local codes decide.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tyre {
    /// The size as it stands on the wall; load index and speed symbol may follow.
    pub marking: String,
}

/// Dimensions of a new, unloaded tyre on its measuring rim.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dimensions {
    /// Nominal section width.
    pub section_width: Length,
    /// Height of the wall, rim to tread.
    pub section_height: Length,
    /// Nominal rim diameter.
    pub rim_diameter: Length,
    /// Outer diameter.
    pub free_diameter: Length,
    /// Half of the outer diameter.
    pub free_radius: Length,
    /// Outer circumference, pi times the free diameter.
    pub free_circumference: Length,
    /// Turns along a distance if it rolled on its free circumference.
    pub free_turns: TurnsPerDistance,
}

/// How a tyre rolls under its load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rolling {
    /// Effective rolling radius: distance per turn over 2 pi.
    pub rolling_radius: Length,
    /// Distance per turn.
    pub rolling_circumference: Length,
    /// Turns along a distance.
    pub rolling_turns: TurnsPerDistance,
}

/// What a marking says.
struct Marking {
    /// In m.
    section_width: f64,
    /// Section height over width.
    aspect: f64,
    /// In m.
    rim: f64,
    radial: bool,
}

impl Marking {
    fn free_diameter(&self) -> f64 {
        self.rim + 2.0 * self.section_width * self.aspect
    }
}

impl Model for Tyre {
    fn check(&self) -> Result<()> {
        self.read().map(drop)
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
    /// - `section_width` — nominal section width
    /// - `section_height` — height of the wall, rim to tread
    /// - `rim_diameter` — nominal rim diameter
    /// - `free_diameter` — outer diameter
    /// - `free_radius` — half of the outer diameter
    /// - `free_circumference` — outer circumference
    /// - `free_turns` — turns along a distance on the free circumference
    ///
    /// # Example
    /// ```
    /// use axlewright::{tyre::Tyre, units::*};
    /// let size = Tyre::new("275/40R18")?.dimensions()?;
    /// assert_eq!(format!("{:.1} mm", size.free_diameter.in_::<mm>()), "677.2 mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn dimensions(&self) -> Result<Dimensions> {
        let marking = self.read()?;
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

    /// Effective rolling radius of the tyre, less the tread that is worn off.
    ///
    /// # Parameters
    /// - `tread_worn` — depth of tread worn off, nothing for a new tyre
    ///
    /// # Returns
    /// - `rolling_radius` — effective rolling radius: distance per turn over 2 pi
    /// - `rolling_circumference` — distance per turn
    /// - `rolling_turns` — turns along a distance
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
            tread_worn: 0 <= .. <= 0.03 ; "common practice, no source: no road tyre has more tread than 30 mm";
        }
        let marking = self.read()?;
        let factor = if marking.radial { RADIAL } else { DIAGONAL };
        let circumference = factor * (marking.free_diameter() - 2.0 * tread_worn.si());
        Ok(Rolling {
            rolling_radius: Length::from_si(circumference / (2.0 * PI)),
            rolling_circumference: Length::from_si(circumference),
            rolling_turns: TurnsPerDistance::from_si(1.0 / circumference),
        })
    }

    /// How the tyre rolls as its tread wears.
    ///
    /// # Parameters
    /// - `tread_worn` — depths of tread worn off
    ///
    /// # Returns
    /// One row a depth: `tread_worn`, `rolling_radius`, `rolling_circumference`, `rolling_turns`, and `overread`, the share by which a
    /// speedometer set for the new tyre reads too much.
    pub fn wear_table(&self, tread_worn: &[Length]) -> Result<Table> {
        let new = self.rolling(Length::from_si(0.0))?;
        let mut rows = Rows::new()
            .quantity::<Length>("tread_worn")
            .quantity::<Length>("rolling_radius")
            .quantity::<Length>("rolling_circumference")
            .quantity::<TurnsPerDistance>("rolling_turns")
            .quantity::<Ratio>("overread");
        for worn in tread_worn {
            let outputs = self.rolling(*worn).map(|rolling| -> [Cell<'_>; 4] {
                let overread: Ratio =
                    new.rolling_circumference / rolling.rolling_circumference - Ratio::from_si(1.0);
                [
                    Cell::from(rolling.rolling_radius),
                    Cell::from(rolling.rolling_circumference),
                    Cell::from(rolling.rolling_turns),
                    Cell::from(overread),
                ]
            });
            rows.push(&[Cell::from(*worn)], outputs.as_ref().map(|cells| &cells[..]).map_err(Clone::clone));
        }
        Ok(rows.finish())
    }

    fn read(&self) -> Result<Marking> {
        let text = self.marking.trim();
        let refuse = |message: &str| {
            let shown: String = text.chars().take(40).collect();
            Error::Text { text: shown, message: message.to_owned() }
        };
        let upper = text.replace('×', "x").to_ascii_uppercase();
        if !upper.is_ascii() {
            return Err(refuse("a tyre marking has plain letters and digits only"));
        }
        // The size may be written with spaces in it, so every head of the words is tried.
        let words: Vec<&str> = upper.split_whitespace().collect();
        let sizes = (1..=words.len()).filter_map(|count| {
            let size = words[..count].concat();
            let marking = metric(&size).or_else(|| flotation(&size))?;
            Some((marking, service_description(&words[count..].concat())))
        });
        let mut sizes: Vec<(Marking, bool)> = sizes.collect();
        sizes.sort_by_key(|(_, whole)| !whole);
        let marking = match sizes.into_iter().next() {
            Some((marking, true)) => marking,
            Some(_) => {
                return Err(refuse(
                    "after the size only a load index and speed symbol may stand, such as 112/110R or (99Y)",
                ));
            }
            None => {
                return Err(refuse(
                    "not a tyre size; write it as on the wall, such as 225/70R15C, LT265/70R17 or 31x10.50R15LT",
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
        Ok(marking)
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

/// The size without the class before it.
fn without_class(size: &str) -> &str {
    ["LT", "ST", "P"].iter().find_map(|class| size.strip_prefix(class)).unwrap_or(size)
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

/// Whether it is radial, and what follows.
fn construction(text: &str) -> Option<(bool, &str)> {
    let radial =
        text.strip_prefix("ZR").or_else(|| text.strip_prefix("RF")).or_else(|| text.strip_prefix('R'));
    match radial {
        Some(rest) => Some((true, rest)),
        None => text.strip_prefix(['D', 'B', '-']).map(|rest| (false, rest)),
    }
}

/// Rim diameter (m) with an optional class letter behind it.
fn rim(text: &str) -> Option<f64> {
    let (code, class) = number(text, 4)?;
    matches!(class, "" | "C" | "LT" | "XL" | "CP" | "M/C").then_some(code * INCH)
}

/// `112R`, `112/110R`, `(99Y)`, `99Y XL`.
fn service_description(text: &str) -> bool {
    let text = text.strip_suffix("XL").map_or(text, str::trim_end);
    if text.is_empty() {
        return true;
    }
    let text = text.strip_prefix('(').and_then(|inner| inner.strip_suffix(')')).unwrap_or(text);
    let Some(symbol) = text.chars().last() else { return false };
    let indices = &text[..text.len() - symbol.len_utf8()];
    symbol.is_ascii_uppercase()
        && indices.split('/').count() <= 2
        && indices.split('/').all(|index| whole(index, 3).is_some_and(|index| index <= 279.0))
}

/// A decimal number of at most `digits` characters at the head, and what follows.
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
        ] {
            let refused = Tyre::new(marking);
            assert!(matches!(refused, Err(Error::Text { .. })), "{marking}: {refused:?}");
        }
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
