use crate::units::{Force, LinearStiffness, Ratio, RatioPerLength};
use crate::{Result, valid};

/// Wheel rate of a loaded spring whose motion ratio changes along the travel.
///
/// # Formula
/// `k_w = k r^2 + F dr/dz`
///
/// # Parameters
/// - `spring_rate` — `k`, the rate of the spring along its own axis
/// - `motion_ratio` — `r`, shortening of the spring between its eyes over travel of the wheel
/// - `spring_force` — `F`, force in the spring at this position, including the damper's gas force; compression positive
/// - `motion_ratio_gradient` — `dr/dz`, change of `r` with wheel travel, positive if `r` grows in bump
///
/// # Returns
/// The tangent rate at the wheel; it is negative if the geometric term outweighs the spring.
///
/// # Valid for
/// - `0 < spring_rate`
/// - `0 < motion_ratio <= 1.5`
/// - `0 <= spring_force`
/// - `motion_ratio_gradient finite`
///
/// # Source
/// Derivative of the wheel force `F r` with respect to travel (virtual work); SAE J670 for wheel rate as a tangent (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::wheel_tangent_rate(
///     LinearStiffness::of::<N_mm>(40.0), Ratio::of::<one>(0.8), Force::of::<kN>(4.0), RatioPerLength::of::<per_mm>(-0.001),
/// )?;
/// assert_eq!(format!("{:.2} N/mm", rate.in_::<N_mm>()), "21.60 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn wheel_tangent_rate(
    spring_rate: LinearStiffness,
    motion_ratio: Ratio,
    spring_force: Force,
    motion_ratio_gradient: RatioPerLength,
) -> Result<LinearStiffness> {
    valid! {
        spring_rate: 0 < .. ; "definition: a spring's rate is positive";
        motion_ratio: 0 < .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
        spring_force: 0 <= .. ; "definition: a coil spring between seats only pushes";
        motion_ratio_gradient: .. ; "definition";
    }
    Ok(spring_rate * motion_ratio * motion_ratio + spring_force * motion_ratio_gradient)
}
