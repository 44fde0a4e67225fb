use super::tangent_rate_for_frequency::tangent_rate_for_frequency;
use crate::base::numeric::sine_cosine;
use crate::units::{Angle, Frequency, LinearStiffness, Mass, Ratio};
use crate::{Result, valid};

/// Rate of the spring to order, so that the sprung mass on it swings at the wanted frequency.
///
/// # Formula
/// `k = (2 pi f)^2 m / (r^2 cos^2 a)`
///
/// # Parameters
/// - `frequency` — `f`, undamped natural frequency that is wanted, on the wheel rate: the tyre left out
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass
/// - `motion_ratio` — `r`, travel of the spring's mount over travel of the wheel
/// - `angle_from_measured_travel` — `a`, angle between the spring's axis and the direction in which the mount's travel was measured; zero if `r` was measured eye to eye along the spring
///
/// # Returns
/// The rate of the spring along its own axis.
///
/// # Valid for
/// - `0.01 <= frequency <= 100`
/// - `0.001 <= sprung_mass <= 1000000`
/// - `0.05 <= motion_ratio <= 1.5`
/// - `-1.4 <= angle_from_measured_travel <= 1.4`
///
/// The inverse of `wheel_rate` and `natural_frequency`, with their limits: the geometric term of a loaded spring that turns or changes its ratio is left out, so a
/// spring at 30 degrees swings slower than asked; check the choice with `inclined_tangent_rate`. The nearer to square the spring stands, the more its rate
/// runs away: beyond 1.4 rad (80 degrees) the call is refused, and at 90 degrees no rate is enough.
///
/// # Source
/// Virtual work on a lever and simple harmonic motion, solved for the rate of the spring; the sources of `wheel_rate` and `natural_frequency`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::spring_rate_for_frequency(
///     Frequency::of::<Hz>(1.4), Mass::of::<kg>(340.0), Ratio::of::<one>(0.75), Angle::of::<deg>(20.0),
/// )?;
/// assert_eq!(format!("{:.1} N/mm, {:.0} lbf/in", rate.in_::<N_mm>(), rate.in_::<lbf_in>()), "53.0 N/mm, 302 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn spring_rate_for_frequency(
    frequency: Frequency,
    sprung_mass: Mass,
    motion_ratio: Ratio,
    angle_from_measured_travel: Angle,
) -> Result<LinearStiffness> {
    valid! {
        frequency: 0.01 <= .. <= 100 ; "plausibility limit: a sprung mass swings between 0.01 Hz and 100 Hz";
        sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: a wheel carries between 1 g and 1000 t";
        motion_ratio: 0.05 <= .. <= 1.5 ; "plausibility limit: below 0.05 no spring works, above 1.5 it is a percentage or an inverted ratio";
        angle_from_measured_travel: (-1.4) <= .. <= 1.4 ; "own limit: near square to the travel the rate runs away, and at a right angle none is enough";
    }
    let (_, cosine) = sine_cosine(angle_from_measured_travel.si());
    let along = motion_ratio * cosine;
    Ok(tangent_rate_for_frequency(frequency, sprung_mass)? / (along * along))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spring::{natural_frequency, wheel_rate};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(f in 0.1f64..20.0, m in 1.0f64..1e5, r in 0.05f64..1.5, a in -1.4f64..1.4) {
            let (frequency, mass) = (Frequency::from_si(f), Mass::from_si(m));
            let (lever, angle) = (Ratio::from_si(r), Angle::from_si(a));
            let spring = spring_rate_for_frequency(frequency, mass, lever, angle).unwrap();
            let wheel = wheel_rate(spring, lever, angle).unwrap();
            assert_relative_eq!(natural_frequency(wheel, mass).unwrap().si(), f, max_relative = 1e-14);
        }
    }
}
