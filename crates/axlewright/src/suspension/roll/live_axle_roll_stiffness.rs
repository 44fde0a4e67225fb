use super::pair::pair;
use crate::units::{Length, LinearStiffness, RotationalStiffness};
use crate::{Result, valid};

/// Roll stiffness that the springs give a live axle: their base counts, not the track.
///
/// # Formula
/// `K = k t^2 / 2`
///
/// # Parameters
/// - `spring_rate` — `k`, rate of one spring in vertical travel of its seat on the axle
/// - `spring_base` — `t`, distance between the two spring seats on the axle, less than the track
///
/// # Returns
/// Moment over roll angle.
///
/// # Valid for
/// - `1 <= spring_rate <= 1000000000`
/// - `0.01 <= spring_base <= 100`
///
/// Two springs alike that stand upright or have their lean in the rate. Leaf springs twist in roll and add to it; links that bind do, too.
///
/// # Source
/// Opposite travels of the seats of half the base times the roll angle; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6, solid axle (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let stiffness = suspension::live_axle_roll_stiffness(LinearStiffness::of::<N_mm>(38.0), Length::of::<mm>(1010.0))?;
/// assert_eq!(format!("{:.0} N·m/deg", stiffness.in_::<Nm_deg>()), "338 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn live_axle_roll_stiffness(
    spring_rate: LinearStiffness,
    spring_base: Length,
) -> Result<RotationalStiffness> {
    valid! {
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs and tyres lie between 1 N/m and 1 GN/m";
        spring_base: 0.01 <= .. <= 100 ; "definition: a distance between springs, of a road vehicle";
    }
    Ok(pair(spring_rate, spring_base))
}
