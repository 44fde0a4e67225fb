use crate::base::numeric::sine_cosine;
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio};
use crate::{Result, valid};
use core::f64::consts::FRAC_PI_2;

/// Wheel rate of a loaded, inclined spring: fixed upper eye, lower eye moving straight up with the wheel's travel.
///
/// # Formula
/// `k_w = r^2 (k cos^2 a - F sin^2 a / L)`
///
/// # Parameters
/// - `spring_rate` — `k`, the rate of the spring along its own axis
/// - `motion_ratio` — `r`, travel of the lower eye over travel of the wheel, taken as constant
/// - `angle_from_measured_travel` — `a`, angle between the spring's axis and the travel of the lower eye
/// - `spring_force` — `F`, force in the spring at this position, compression positive
/// - `spring_length` — `L`, eye to eye at this position
///
/// # Returns
/// The tangent rate at the wheel; it can be negative where the spring lies flat under load.
///
/// # Valid for
/// - `0 < spring_rate <= 1000000000000`
/// - `0 < motion_ratio <= 1.5`
/// - `-1.5707963267948966 <= angle_from_measured_travel <= 1.5707963267948966`
/// - `0 <= spring_force <= 1000000000`
/// - `0.001 <= spring_length <= 100`
///
/// # Source
/// Derivative of the vertical force of a pin-ended spring (own derivation from virtual work)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::inclined_tangent_rate(
///     LinearStiffness::of::<N_mm>(40.0), Ratio::of::<one>(1.0), Angle::of::<deg>(45.0), Force::of::<kN>(4.0), Length::of::<mm>(350.0),
/// )?;
/// assert_eq!(format!("{:.2} N/mm", rate.in_::<N_mm>()), "14.29 N/mm"); // 29 % below the 20 N/mm of k cos^2 a
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn inclined_tangent_rate(
    spring_rate: LinearStiffness,
    motion_ratio: Ratio,
    angle_from_measured_travel: Angle,
    spring_force: Force,
    spring_length: Length,
) -> Result<LinearStiffness> {
    valid! {
        spring_rate: 0 < .. <= 1e12 ; "plausibility limit: stiffer than 1 GN/mm is no spring";
        motion_ratio: 0 < .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
        angle_from_measured_travel: (-FRAC_PI_2) <= .. <= FRAC_PI_2 ; "definition: at most square to the travel";
        spring_force: 0 <= .. <= 1e9 ; "plausibility limit: a coil spring between seats only pushes, with less than 1 GN";
        spring_length: 0.001 <= .. <= 100 ; "plausibility limit: springs between 1 mm and 100 m long";
    }
    let (sine, cosine) = sine_cosine(angle_from_measured_travel.si());
    let along = spring_rate * cosine * cosine - spring_force * sine * sine / spring_length;
    Ok(motion_ratio * motion_ratio * along)
}
