//! Functions of all compiled systems, by path.
//!
#![cfg_attr(feature = "spring", doc = "```")]
#![cfg_attr(not(feature = "spring"), doc = "```ignore")]
//! use axlewright::{base::text::System, catalogue, units::*};
//! let inputs = [LinearStiffness::of::<lbf_in>(300.0).si(), 0.75, Angle::of::<deg>(20.0).si()];
//! let work = catalogue::work("spring.wheel_rate", &inputs)?;
//! assert!(work.text(System::Us).contains("k_w = wheel_rate = 149 lbf/in"));
//! # Ok::<(), axlewright::Error>(())
//! ```
#![expect(clippy::indexing_slicing, reason = "a place that the search in the same list found")]

/// Declares functions: the feature of the system; `system.name`, the name of its call on plain numbers, its revision; summary, formula, limits, source, caution; an
/// argument a line; a result a line, with a point where it is a field of a struct.
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
            $($input:ident: $kind:ident $symbol:literal $meaning:literal)+
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
            inputs: &[$(Slot { name: stringify!($input), symbol: $symbol, kind: $kind::KIND, meaning: $meaning }),+],
            outputs: &[$(Slot { name: functions!(@last $name $($result)?), symbol: $sign, kind: $of::KIND, meaning: $what }),+],
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
pub use generated::ENTRIES;

use crate::Result;
use crate::base::text::{distance, refusal};
use crate::base::work::{Entry, Work};

/// The function of a path such as `spring.wheel_rate`.
pub fn entry(path: &str) -> Result<&'static Entry> {
    ENTRIES
        .binary_search_by(|entry| entry.path.cmp(path))
        .map(|place| &ENTRIES[place])
        .map_err(|_| refusal(path, unknown(path)))
}

/// Calls the function of this path on numbers in coherent SI, in the order of its arguments, and keeps the work.
pub fn work(path: &str, inputs_si: &[f64]) -> Result<Work> {
    entry(path)?.work(inputs_si)
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
    fn an_unknown_path_names_the_nearest() {
        for asked in ["spring.wheelrate", "wheel_rate", "Spring.Wheel_Rate", "brake.wheel_rate"] {
            let refusal = entry(asked).unwrap_err().to_string();
            assert!(refusal.contains(asked) && refusal.contains("`spring.wheel_rate`"), "{refusal}");
        }
    }
}
