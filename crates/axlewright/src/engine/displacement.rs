use crate::base::valid::whole;
use crate::units::{Length, Ratio, Volume};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Displacement of a piston engine.
///
/// # Formula
/// `V = pi d^2 s z / 4`
///
/// # Parameters
/// - `bore` — `d`
/// - `stroke` — `s`, travel of the piston: twice the crank's throw if the bore's axis meets the crankshaft's
/// - `cylinders` — `z`, whole
///
/// # Returns
/// The swept volume of all cylinders together, without the clearance volume.
///
/// # Valid for
/// - `0.001 <= bore <= 10`
/// - `0.001 <= stroke <= 10`
/// - `1 <= cylinders <= 100`
///
/// `cylinders` is a whole number.
///
/// # Source
/// Volume of a cylinder; Heywood, Internal Combustion Engine Fundamentals (1988), ch. 2 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for cylinders that are not whole
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let volume = engine::displacement(Length::of::<mm>(92.0), Length::of::<mm>(94.0), Ratio::of::<one>(4.0))?;
/// assert_eq!(format!("{:.3} L", volume.in_::<L>()), "2.500 L");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn displacement(bore: Length, stroke: Length, cylinders: Ratio) -> Result<Volume> {
    valid! {
        bore: 0.001 <= .. <= 10 ; "plausibility limit: engines are bored between 1 mm and 10 m";
        stroke: 0.001 <= .. <= 10 ; "plausibility limit: pistons travel between 1 mm and 10 m";
        cylinders: 1 <= .. <= 100 ; "definition: one cylinder at least; plausibility limit: at most 100";
    }
    whole("cylinders", cylinders)?;
    Ok(PI / 4.0 * bore * bore * stroke * cylinders)
}
