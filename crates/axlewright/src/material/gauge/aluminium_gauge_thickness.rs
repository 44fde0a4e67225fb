use crate::base::valid::whole;
use crate::units::{Length, Ratio};
use crate::{Result, valid};

/// Thickness of aluminium sheet from its gauge number.
///
/// # Formula
/// `t = 0.005 in * 92^((36 - N) / 39)`
///
/// # Parameters
/// - `number` — `N`, gauge number, a whole one
///
/// # Returns
/// The nominal thickness. Mills roll to a tolerance around it: measure the sheet.
///
/// # Valid for
/// - `0 <= number <= 36`
///
/// Sheet of aluminium, brass and copper. The same number means another thickness in sheet steel, in tube and in stainless sheet.
///
/// # Source
/// Brown & Sharpe gauge, ASTM B258: 39 steps from 0.46 in to 0.005 in in a constant ratio (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for a number that is not whole
///
/// # Example
/// ```
/// use axlewright::{material, units::*};
/// let wall = material::aluminium_gauge_thickness(Ratio::of::<one>(10.0))?;
/// assert_eq!(format!("{:.3} mm", wall.in_::<mm>()), "2.588 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn aluminium_gauge_thickness(number: Ratio) -> Result<Length> {
    valid! { number: 0 <= .. <= 36 ; "no shop orders other gauges of aluminium; the series itself goes on"; }
    whole("number", number)?;
    Ok(Length::from_si(0.000_127 * 92f64.powf((36.0 - number.si()) / 39.0)))
}
