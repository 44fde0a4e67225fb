use crate::base::numeric::sine_cosine;
use crate::units::{Angle, LinearStiffness, Ratio};
use crate::{Result, valid};
use core::f64::consts::FRAC_PI_2;

/// Wheel rate of a spring on a lever, from its motion ratio and its angle: the part that does not depend on load.
///
/// # Formula
/// `k_w = k r^2 cos^2 a`
///
/// # Parameters
/// - `spring_rate` — `k`, the rate of the spring along its own axis
/// - `motion_ratio` — `r`, travel of the spring's mount over travel of the wheel
/// - `angle_from_measured_travel` — `a`, angle between the spring's axis and the direction in which the mount's travel was measured; zero if `r` was measured eye to eye along the spring
///
/// # Returns
/// The rate at the wheel centre, for small travel around the position where `r` and `a` were measured.
///
/// # Valid for
/// - `0 < spring_rate`
/// - `0 < motion_ratio <= 1.5`
/// - `-1.5707963267948966 <= angle_from_measured_travel <= 1.5707963267948966`
///
/// Not the whole wheel rate: a loaded spring that changes its angle or its ratio along the travel adds a geometric term, given
/// by `wheel_tangent_rate` and `inclined_tangent_rate`. For 40 N/mm, 4 kN and 350 mm it is -9.5 % at 30 degrees and -29 % at
/// 45 degrees of this result. A motion ratio between 1 and 1.5 is accepted, for
/// a spring outboard of the wheel or on a rocker. It is rare, and often an inverted ratio: 0.8 turned around is 1.25. More than 1.5 is refused: it is
/// a ratio of 0.67 or less turned around, or a percentage. Use a ratio along the spring *or* an angle, never both for the same thing.
///
/// # Source
/// Virtual work on a lever; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16, installation ratio (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::wheel_rate(
///     LinearStiffness::of::<lbf_in>(300.0), Ratio::of::<one>(0.75), Angle::of::<deg>(20.0),
/// )?;
/// assert_eq!(format!("{:.1} lbf/in", rate.in_::<lbf_in>()), "149.0 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn wheel_rate(
    spring_rate: LinearStiffness,
    motion_ratio: Ratio,
    angle_from_measured_travel: Angle,
) -> Result<LinearStiffness> {
    valid! {
        spring_rate: 0 < .. ; "definition: a spring's rate is positive";
        motion_ratio: 0 < .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
        angle_from_measured_travel: (-FRAC_PI_2) <= .. <= FRAC_PI_2 ; "definition: at most square to the travel";
    }
    let (_, cosine) = sine_cosine(angle_from_measured_travel.si());
    let along = motion_ratio * cosine;
    Ok(spring_rate * along * along)
}
