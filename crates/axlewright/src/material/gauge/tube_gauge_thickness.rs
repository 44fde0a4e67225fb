use super::listed;
use crate::base::valid::whole;
use crate::units::{Length, Ratio};
use crate::{Result, valid};

/// Birmingham wire gauge, 0 to 30, in 0.0001 in (from memory).
const TUBE: &[u16] = &[
    3400, 3000, 2840, 2590, 2380, 2200, 2030, 1800, 1650, 1480, 1340, 1200, 1090, 950, 830, 720, 650, 580,
    490, 420, 350, 320, 280, 250, 220, 200, 180, 160, 140, 130, 120,
];

/// Wall of a steel tube from its gauge number.
///
/// # Formula
/// `t = t(N)`, a table of thicknesses
///
/// # Parameters
/// - `number` — `N`, gauge number, a whole one
///
/// # Returns
/// The nominal wall. Mills draw to a tolerance around it, about a tenth: measure the tube.
///
/// # Valid for
/// - `0 <= number <= 30`
///
/// Round and shaped steel tube. The same number means another thickness in sheet steel, in aluminium and in stainless sheet.
///
/// # Source
/// Birmingham wire gauge, as ASTM A513 and A519 tube is ordered (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for a number that is not whole
///
/// # Example
/// ```
/// use axlewright::{material, units::*};
/// let wall = material::tube_gauge_thickness(Ratio::of::<one>(10.0))?;
/// assert_eq!(format!("{:.3} mm", wall.in_::<mm>()), "3.404 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn tube_gauge_thickness(number: Ratio) -> Result<Length> {
    valid! { number: 0 <= .. <= 30 ; "the table of the tube gauge has these numbers"; }
    whole("number", number)?;
    listed(0, TUBE, number)
}
