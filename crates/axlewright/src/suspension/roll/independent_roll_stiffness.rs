use super::pair::pair;
use crate::units::{Length, LinearStiffness, RotationalStiffness};
use crate::{Result, valid};

/// Roll stiffness that the springs of independently sprung wheels give an axle.
///
/// # Formula
/// `K = k t^2 / 2`
///
/// # Parameters
/// - `wheel_rate` — `k`, tangent rate of one wheel at ride height, without tyre and bar
/// - `track` — `t`, distance between the tyre centres
///
/// # Returns
/// Moment over roll angle.
///
/// # Valid for
/// - `1 <= wheel_rate <= 1000000000`
/// - `0.01 <= track <= 100`
///
/// Two wheels alike, no bar. Springs that are joined from side to side, such as one transverse leaf, give something else.
///
/// # Source
/// Opposite wheel travels of `t / 2` times the roll angle; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6, and Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let stiffness = suspension::independent_roll_stiffness(LinearStiffness::of::<N_mm>(28.4), Length::of::<mm>(1540.0))?;
/// assert_eq!(format!("{:.0} N·m/deg", stiffness.in_::<Nm_deg>()), "588 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn independent_roll_stiffness(wheel_rate: LinearStiffness, track: Length) -> Result<RotationalStiffness> {
    valid! {
        wheel_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs and tyres lie between 1 N/m and 1 GN/m";
        track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
    }
    Ok(pair(wheel_rate, track))
}
