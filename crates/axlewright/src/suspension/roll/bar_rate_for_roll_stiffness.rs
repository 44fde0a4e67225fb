use crate::units::{Length, LinearStiffness, Ratio, RotationalStiffness};
use crate::{Result, valid};

/// Rate of the anti-roll bar that gives an axle the wanted roll stiffness.
///
/// # Formula
/// `k = 2 K / (r^2 t^2)`
///
/// # Parameters
/// - `bar_stiffness` — `K`, wanted moment over roll angle of the bar alone
/// - `bar_motion_ratio` — `r`, travel of the end of the bar's arm over travel of the wheel, in roll; on a live axle, distance between the links over the track
/// - `track` — `t`, distance between the tyre centres
///
/// # Returns
/// Force at each end of the bar over travel of that end, while the other end moves as far the opposite way. `spring.anti_roll_bar_diameter_for_rate` takes this rate.
///
/// # Valid for
/// - `0 <= bar_stiffness <= 1000000000000`
/// - `0.01 <= bar_motion_ratio <= 1.5`
/// - `0.01 <= track <= 100`
///
/// Inverse of `suspension::bar_roll_stiffness`.
///
/// # Source
/// Virtual work; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let rate = suspension::bar_rate_for_roll_stiffness(RotationalStiffness::of::<Nm_deg>(615.0), Ratio::of::<one>(0.6), Length::of::<mm>(1540.0))?;
/// assert_eq!(format!("{:.1} N/mm", rate.in_::<N_mm>()), "82.5 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn bar_rate_for_roll_stiffness(
    bar_stiffness: RotationalStiffness,
    bar_motion_ratio: Ratio,
    track: Length,
) -> Result<LinearStiffness> {
    valid! {
        bar_stiffness: 0 <= .. <= 1e12 ; "definition: a stiffness is not negative; none reaches 1 TN·m/rad";
        bar_motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: below it no bar works, above 1.5 it is a percentage or an inverted ratio";
        track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
    }
    let lever = bar_motion_ratio.si() * track.si();
    Ok(LinearStiffness::from_si(2.0 * bar_stiffness.si() / (lever * lever)))
}
