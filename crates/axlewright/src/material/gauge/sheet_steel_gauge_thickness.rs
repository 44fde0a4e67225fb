use super::listed;
use crate::base::valid::whole;
use crate::units::{Length, Ratio};
use crate::{Result, valid};

/// Manufacturers' Standard Gauge, 3 to 30, in 0.0001 in (from memory).
const SHEET_STEEL: &[u16] = &[
    2391, 2242, 2092, 1943, 1793, 1644, 1495, 1345, 1196, 1046, 897, 747, 673, 598, 538, 478, 418, 359, 329,
    299, 269, 239, 209, 179, 164, 149, 135, 120,
];

/// Thickness of uncoated sheet steel from its gauge number.
///
/// # Formula
/// `t = w(N) / 41.82`, in inches, from the weight of the gauge in lb/ft²: a table, rounded to 0.0001 in
///
/// # Parameters
/// - `number` — `N`, gauge number, a whole one
///
/// # Returns
/// The nominal thickness. Mills roll to a tolerance around it: measure the sheet.
///
/// # Valid for
/// - `3 <= number <= 30`
///
/// Carbon steel sheet, hot or cold rolled. Zinc adds to it. The same number means another thickness in tube, in aluminium and in stainless sheet.
///
/// # Source
/// Manufacturers' Standard Gauge for sheet steel (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for a number that is not whole
///
/// # Example
/// ```
/// use axlewright::{material, units::*};
/// let wall = material::sheet_steel_gauge_thickness(Ratio::of::<one>(10.0))?;
/// assert_eq!(format!("{:.3} mm", wall.in_::<mm>()), "3.416 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn sheet_steel_gauge_thickness(number: Ratio) -> Result<Length> {
    valid! { number: 3 <= .. <= 30 ; "the table of the sheet steel gauge has these numbers"; }
    whole("number", number)?;
    listed(3, SHEET_STEEL, number)
}
