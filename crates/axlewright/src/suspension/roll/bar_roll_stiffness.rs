use super::pair::pair;
use crate::units::{Length, LinearStiffness, Ratio, RotationalStiffness};
use crate::{Result, valid};

/// Roll stiffness that an anti-roll bar gives an axle.
///
/// # Formula
/// `K = k r^2 t^2 / 2`
///
/// # Parameters
/// - `bar_rate` — `k`, force at either end of the bar over travel of that end, the other end travelling as far the other way; see spring.anti_roll_bar_rate
/// - `bar_motion_ratio` — `r`, travel of the end of the bar's arm over travel of the wheel, in roll: on a live axle the distance between the links over the track
/// - `track` — `t`, distance between the tyre centres
///
/// # Returns
/// Moment over roll angle; add it to that of the springs.
///
/// # Valid for
/// - `0 <= bar_rate <= 1000000000`
/// - `0.01 <= bar_motion_ratio <= 1.5`
/// - `0.01 <= track <= 100`
///
/// Links that stand square to the arms. Bushes that give are springs in series with the bar.
///
/// # Source
/// Opposite wheel travels of `t / 2` times the roll angle, virtual work; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let stiffness = suspension::bar_roll_stiffness(LinearStiffness::of::<N_mm>(82.5), Ratio::of::<one>(0.6), Length::of::<mm>(1540.0))?;
/// assert_eq!(format!("{:.0} N·m/deg", stiffness.in_::<Nm_deg>()), "615 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn bar_roll_stiffness(
    bar_rate: LinearStiffness,
    bar_motion_ratio: Ratio,
    track: Length,
) -> Result<RotationalStiffness> {
    valid! {
        bar_rate: 0 <= .. <= 1e9 ; "definition: a rate is not negative";
        bar_motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: below it no bar works, above 1.5 it is a percentage or an inverted ratio";
        track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
    }
    Ok(pair(bar_rate * bar_motion_ratio * bar_motion_ratio, track))
}
