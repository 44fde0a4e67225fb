use super::critical_damping::critical_damping;
use crate::units::{Damping, LinearStiffness, Mass, Ratio};
use crate::{Result, valid};

/// Rate of the damper itself that gives a wheel the wanted damping ratio.
///
/// # Formula
/// `c_d = zeta 2 sqrt(k m) / r^2`
///
/// # Parameters
/// - `damping_ratio` — `zeta`, wanted share of critical damping
/// - `tangent_rate` — `k`, tangent rate at ride height: wheel rate, or ride rate with the tyre in series (say which one it was)
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass
/// - `damper_motion_ratio` — `r`, shortening of the damper, eye to eye, over travel of the wheel: the damper's own, not the spring's
///
/// # Returns
/// Force over velocity at the damper, mean of bump and rebound, gas force left out.
///
/// # Valid for
/// - `0 <= damping_ratio <= 10`
/// - `1 <= tangent_rate <= 1000000000`
/// - `0.001 <= sprung_mass <= 1000000`
/// - `0.05 <= damper_motion_ratio <= 1.5`
///
/// One mass on one linear spring, one viscous damper for a wheel; one damper for a whole axle needs twice this. The damper moves at `r` times the wheel's velocity.
///
/// # Source
/// Linear oscillator of one degree of freedom, with the virtual power of a lever; ISO 2041 for the term damping ratio (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::damper_rate_for_ratio(
///     Ratio::of::<one>(0.35), LinearStiffness::of::<N_mm>(25.0), Mass::of::<kg>(400.0), Ratio::of::<one>(0.8),
/// )?;
/// assert_eq!(format!("{:.0} N·s/m", rate.in_::<Ns_m>()), "3459 N·s/m");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn damper_rate_for_ratio(
    damping_ratio: Ratio,
    tangent_rate: LinearStiffness,
    sprung_mass: Mass,
    damper_motion_ratio: Ratio,
) -> Result<Damping> {
    valid! {
        damping_ratio: 0 <= .. <= 10 ; "plausibility limit: above 10 it is a percentage";
        tangent_rate: 1 <= .. <= 1e9 ; "definition: only a positive rate brings the mass back; springs lie between 1 N/m and 1 GN/m";
        sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: a wheel carries between 1 g and 1000 t";
        damper_motion_ratio: 0.05 <= .. <= 1.5 ; "plausibility limit: below 0.05 no damper works, above 1.5 it is a percentage or an inverted ratio";
    }
    let ratio = damper_motion_ratio.si();
    let at_wheel = damping_ratio.si() * critical_damping(tangent_rate, sprung_mass)?.si();
    Ok(Damping::from_si(at_wheel / (ratio * ratio)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spring;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(z in 0.01f64..3.0, k in 1e3f64..1e6, m in 10.0f64..1e4, r in 0.05f64..1.5) {
            let (ratio, lever) = (Ratio::from_si(z), Ratio::from_si(r));
            let (rate, mass) = (LinearStiffness::from_si(k), Mass::from_si(m));
            let damper = damper_rate_for_ratio(ratio, rate, mass, lever).unwrap();
            let at_wheel = spring::wheel_damping(damper, lever).unwrap();
            assert_relative_eq!(spring::damping_ratio(at_wheel, rate, mass).unwrap().si(), z, max_relative = 1e-14);
        }
    }
}
