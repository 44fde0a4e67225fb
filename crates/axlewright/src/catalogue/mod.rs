//! Functions of all compiled systems, by path.
//!
#![cfg_attr(feature = "spring", doc = "```")]
#![cfg_attr(not(feature = "spring"), doc = "```ignore")]
//! use axlewright::{base::text::System, catalogue, units::*};
//! let rate = LinearStiffness::of::<lbf_in>(300.0).si();
//! let angle = Angle::of::<deg>(20.0).si();
//! let work = catalogue::work(
//!     "spring.wheel_rate",
//!     &[("spring_rate", rate), ("motion_ratio", 0.75), ("angle_from_measured_travel", angle)],
//! )?;
//! assert!(work.text(System::Us).contains("k_w = wheel_rate = 149 lbf/in"));
//! # Ok::<(), axlewright::Error>(())
//! ```
#![expect(clippy::indexing_slicing, reason = "a place that the search in the same list found")]

/// Declares functions: the feature of the system; `system.name`, the name of its call on plain numbers, its revision; summary, formula, limits, source, caution; an
/// argument with its range a line; a result a line, with a point where it is a field of a struct.
macro_rules! functions {
    // The last of one or two names, as text.
    (@last $name:ident) => {
        stringify!($name)
    };
    (@last $name:ident $last:ident) => {
        stringify!($last)
    };
    ($(
        #[$gate:meta]
        $system:ident.$name:ident $call:ident revision $revision:literal {
            $summary:literal $formula:literal $valid_for:literal $source:literal $caution:literal
            $($input:ident: $kind:ident $symbol:literal $meaning:literal $range:expr;)+
            $(-> $(.$result:ident)? $of:ident $sign:literal $what:literal)+
        }
    )+) => {
        /// Functions of all compiled systems, sorted by path.
        pub static ENTRIES: &[Entry] = &[$(#[$gate] Entry {
            path: concat!(stringify!($system), ".", stringify!($name)),
            summary: $summary,
            formula: $formula,
            valid_for: $valid_for,
            source: $source,
            caution: $caution,
            revision: $revision,
            inputs: &[$(Slot { name: stringify!($input), symbol: $symbol, kind: $kind::KIND, meaning: $meaning, range: $range }),+],
            outputs: &[$(Slot { name: functions!(@last $name $($result)?), symbol: $sign, kind: $of::KIND, meaning: $what, range: Span::ANY }),+],
            call: |x, y| one_row(x, y, $call),
            batch: |x, y, refused| rows(x, y, refused, $call),
        }),+];
        $(
            #[$gate]
            #[inline(always)]
            fn $call([$($input),+]: [f64; [$($symbol),+].len()]) -> Result<[f64; [$($what),+].len()]> {
                crate::$system::$name($($kind::from_si($input)),+).map(|on| [$(on$(.$result)?.si()),+])
            }
        )+
    };
}

#[cfg_attr(not(feature = "systems"), allow(unused_imports))]
mod generated;
pub use generated::{ENTRIES, MODELS};

#[cfg(feature = "serde")]
pub(crate) mod describe;
mod model;
pub use model::{Content, Field, FieldContent, Method, OfModel, Output};

use crate::Result;
use crate::base::text::{distance, refusal};
use crate::base::work::{Entry, Slot, Work};

/// The function of a path such as `spring.wheel_rate`.
pub fn entry(path: &str) -> Result<&'static Entry> {
    ENTRIES
        .binary_search_by(|entry| entry.path.cmp(path))
        .map(|place| &ENTRIES[place])
        .map_err(|_| refusal(path, unknown(path)))
}

/// The model of a path such as `spring.Corner`.
pub fn model(path: &str) -> Result<&'static OfModel> {
    MODELS.binary_search_by(|model| model.path.cmp(path)).map(|place| &MODELS[place]).map_err(|_| {
        let names: Vec<&str> = MODELS.iter().map(|model| model.path).collect();
        refusal(path, format!("there is no model of this path; there are {}", names.join(", ")))
    })
}

/// Calls the function of this path on its arguments by name, in coherent SI, and keeps the work.
pub fn work(path: &str, arguments_si: &[(&str, f64)]) -> Result<Work> {
    let entry = entry(path)?;
    let is_argument = |name: &str| entry.inputs.iter().any(|slot| slot.name == name);
    if let Some((other, _)) = arguments_si.iter().find(|(given, _)| !is_argument(given)) {
        let names: Vec<&str> = entry.inputs.iter().map(|slot| slot.name).collect();
        return Err(refusal(other, format!("is no argument of {path}, which takes {}", names.join(", "))));
    }
    let one = |slot: &Slot| {
        let given: Vec<f64> =
            arguments_si.iter().filter(|(given, _)| *given == slot.name).map(|(_, si)| *si).collect();
        match given[..] {
            [si] => Ok(si),
            _ => {
                let times = given.len();
                Err(refusal(slot.name, format!("is given {times} times to {path}, which takes it once")))
            }
        }
    };
    entry.work(&entry.inputs.iter().map(one).collect::<Result<Vec<f64>>>()?)
}

/// The paths nearest to an unknown one; its own name counts if no system was named.
fn unknown(path: &str) -> String {
    const FEW: usize = 3;
    let asked: String = path.chars().take(80).collect::<String>().to_lowercase();
    let unlike = |entry: &&Entry| {
        let name = entry.path.rsplit('.').next().unwrap_or(entry.path);
        distance(&asked, entry.path).min(distance(&asked, name))
    };
    let mut entries: Vec<&Entry> = ENTRIES.iter().collect();
    entries.sort_by_cached_key(unlike);
    let near: Vec<String> = entries.iter().take(FEW).map(|entry| format!("`{}`", entry.path)).collect();
    format!("there is no function of this path; the nearest are {}", near.join(", "))
}

#[cfg(test)]
#[cfg(feature = "spring")]
mod tests {
    use super::*;

    #[test]
    fn paths_are_sorted_and_found() {
        assert!(ENTRIES.is_sorted_by(|a, b| a.path < b.path));
        for listed in ENTRIES {
            assert_eq!(entry(listed.path).unwrap().path, listed.path);
        }
    }

    #[test]
    fn arguments_are_taken_by_name() {
        let path = "spring.wheel_rate";
        let given = [("angle_from_measured_travel", 0.0), ("spring_rate", 50e3), ("motion_ratio", 0.5)];
        assert_eq!(work(path, &given).unwrap().results(), [12500.0]);
        for (given, sentence) in [
            (&given[1..], "`angle_from_measured_travel`: is given 0 times"),
            (&[given[0], given[1], given[2], given[0]], "`angle_from_measured_travel`: is given 2 times"),
            (&[given[0], given[1], given[2], ("rate", 1.0)], "`rate`: is no argument of spring.wheel_rate"),
        ] {
            let refusal = work(path, given).unwrap_err().to_string();
            assert!(refusal.contains(sentence), "{refusal}");
        }
    }

    #[test]
    fn an_unknown_path_names_the_nearest() {
        for asked in ["spring.wheelrate", "wheel_rate", "Spring.Wheel_Rate", "brake.wheel_rate"] {
            let refusal = entry(asked).unwrap_err().to_string();
            assert!(refusal.contains(asked) && refusal.contains("`spring.wheel_rate`"), "{refusal}");
        }
    }
}
