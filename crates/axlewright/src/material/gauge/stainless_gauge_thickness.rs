use crate::base::valid::whole;
use crate::units::{Length, Ratio};
use crate::{Result, cannot, valid};

/// Weight of a square foot, 3 to 30, in ounces: US Standard Gauge (from memory).
const OUNCES: &[u8] = &[
    160, 150, 140, 130, 120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12,
    11, 10, 9, 8,
];

/// Thickness of stainless steel sheet from its gauge number.
///
/// # Formula
/// `t = w(N) / 640`, in inches, from the weight of the gauge in ounces a square foot (40 lb/ft² is an inch): a table
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
/// Stainless sheet and plate. The same number means another thickness in sheet steel, in tube and in aluminium.
///
/// # Source
/// US Standard Gauge, weights of the Act of 1893 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for a number that is not whole
///
/// # Example
/// ```
/// use axlewright::{material, units::*};
/// let wall = material::stainless_gauge_thickness(Ratio::of::<one>(10.0))?;
/// assert_eq!(format!("{:.3} mm", wall.in_::<mm>()), "3.572 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn stainless_gauge_thickness(number: Ratio) -> Result<Length> {
    valid! { number: 3 <= .. <= 30 ; "the table of the stainless sheet gauge has these numbers"; }
    whole("number", number)?;
    let row = (number.si() - 3.0) as usize;
    match OUNCES.get(row) {
        Some(ounces) => Ok(Length::from_si(f64::from(*ounces) * 0.0254 / 640.0)),
        None => Err(cannot!(number; "is not in the table")),
    }
}
