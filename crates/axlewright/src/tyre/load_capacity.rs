#![expect(clippy::indexing_slicing, reason = "a remainder of 80 in a list of 80")]

use crate::base::valid::whole;
use crate::units::{Mass, Ratio};
use crate::{Result, valid};

/// Loads (kg) of the load indices 80 to 159: the preferred numbers of the series R80 (ISO 3), rounded as in the load-index table.
const DECADE: [f64; 80] = [
    450.0, 462.5, 475.0, 487.5, 500.0, 515.0, 530.0, 545.0, 560.0, 580.0, 600.0, 615.0, 630.0, 650.0, 670.0,
    690.0, 710.0, 730.0, 750.0, 775.0, 800.0, 825.0, 850.0, 875.0, 900.0, 925.0, 950.0, 975.0, 1000.0,
    1030.0, 1060.0, 1090.0, 1120.0, 1150.0, 1180.0, 1215.0, 1250.0, 1285.0, 1320.0, 1360.0, 1400.0, 1450.0,
    1500.0, 1550.0, 1600.0, 1650.0, 1700.0, 1750.0, 1800.0, 1850.0, 1900.0, 1950.0, 2000.0, 2060.0, 2120.0,
    2180.0, 2240.0, 2300.0, 2360.0, 2430.0, 2500.0, 2575.0, 2650.0, 2725.0, 2800.0, 2900.0, 3000.0, 3075.0,
    3150.0, 3250.0, 3350.0, 3450.0, 3550.0, 3650.0, 3750.0, 3875.0, 4000.0, 4125.0, 4250.0, 4375.0,
];

/// Load capacity of one tyre from its load index.
///
/// # Formula
/// `Q = 45 kg * 10^(n / 80)` in the preferred numbers of the load-index table; below 1000 kg three figures, rounded down
///
/// # Parameters
/// - `load_index` — `n`, whole: the number before the speed symbol; of two numbers, the first, for a single tyre
///
/// # Returns
/// The mass that one tyre may carry at its reference pressure, up to its speed symbol.
///
/// # Valid for
/// - `0 <= load_index <= 279`
///
/// `load_index` is a whole number. A tyre carries less at lower pressure, with much camber, or above a speed that the standard names (for a passenger tyre 210 km/h, from memory).
///
/// # Source
/// ISO 4000-1 and ETRTO Standards Manual, table of load indices (from memory, held against the series R80 of ISO 3)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for an index that is not whole
///
/// # Example
/// ```
/// use axlewright::{tyre, units::*};
/// let load = tyre::load_capacity(Ratio::of::<one>(112.0))?;
/// assert_eq!(format!("{:.0} kg", load.in_::<kg>()), "1120 kg");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// An overloaded or soft tyre heats and bursts. The figures on the wall and the maker's load and pressure table decide. A passenger tyre on a truck or trailer carries less (in
/// the United States by a factor of 1.10, from memory). Local codes and licensed practice come first.
#[inline]
pub fn load_capacity(load_index: Ratio) -> Result<Mass> {
    valid! {
        load_index: 0 <= .. <= 279 ; "ISO 4000-1, table of load indices, from memory";
    }
    whole("load_index", load_index)?;
    let steps = load_index.si() as usize;
    let load = DECADE[steps % 80];
    Ok(Mass::from_si(match steps / 80 {
        // Three figures: tenths below 100 kg.
        0 if load < 1000.0 => load.floor() / 10.0,
        0 => (load / 10.0).floor(),
        1 if load < 1000.0 => load.floor(),
        1 => load,
        2 => load * 10.0,
        _ => load * 100.0,
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn load(index: f64) -> f64 {
        load_capacity(Ratio::from_si(index)).unwrap().si()
    }

    /// ISO 3: the series R80 multiplies by the eightieth root of ten a step.
    #[test]
    fn keeps_to_the_geometric_rule_and_rises_with_every_index() {
        for index in 0..=279 {
            let index = f64::from(index);
            let rule = 45.0 * 10f64.powf(index / 80.0);
            assert!((load(index) / rule - 1.0).abs() < 0.02, "{index}: {} kg, {rule} kg", load(index));
            assert!(index == 0.0 || load(index) > load(index - 1.0), "{index}");
        }
    }
}
