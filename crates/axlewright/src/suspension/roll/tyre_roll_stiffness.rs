use super::pair::pair;
use crate::units::{Length, LinearStiffness, RotationalStiffness};
use crate::{Result, valid};

/// Roll stiffness of the tyres of an axle between the ground and the wheels.
///
/// # Formula
/// `K = k t^2 / 2`
///
/// # Parameters
/// - `tyre_rate` — `k`, vertical rate of the tyre or the twin tyres of one side
/// - `track` — `t`, distance between the tyre centres
///
/// # Returns
/// Moment over roll angle.
///
/// # Valid for
/// - `1 <= tyre_rate <= 1000000000`
/// - `0.01 <= track <= 100`
///
/// Both sides are alike and on the ground. For twin tyres, the track runs between the middles of the pairs.
///
/// # Source
/// Equal and opposite deflections of both tyres: `t / 2` times the roll angle; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let stiffness = suspension::tyre_roll_stiffness(LinearStiffness::of::<N_mm>(280.0), Length::of::<mm>(1540.0))?;
/// assert_eq!(format!("{:.0} N·m/deg", stiffness.in_::<Nm_deg>()), "5795 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn tyre_roll_stiffness(tyre_rate: LinearStiffness, track: Length) -> Result<RotationalStiffness> {
    valid! {
        tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs and tyres lie between 1 N/m and 1 GN/m";
        track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
    }
    Ok(pair(tyre_rate, track))
}
