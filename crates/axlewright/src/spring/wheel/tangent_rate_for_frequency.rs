use crate::units::{Frequency, LinearStiffness, Mass};
use crate::{Result, valid};
use core::f64::consts::TAU;

/// Tangent rate at the wheel that gives a sprung mass the wanted natural frequency.
///
/// # Formula
/// `k = (2 pi f)^2 m`
///
/// # Parameters
/// - `frequency` — `f`, undamped natural frequency that is wanted
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass
///
/// # Returns
/// The rate at ride height: the ride rate where the tyre is to be part of the frequency, else the wheel rate (say which one it was).
///
/// # Valid for
/// - `0.01 <= frequency <= 100`
/// - `0.001 <= sprung_mass <= 1000000`
///
/// One mass on one linear spring, without damping.
///
/// # Source
/// Simple harmonic motion, solved for the rate; Shigley's Mechanical Engineering Design, ch. 10 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::tangent_rate_for_frequency(Frequency::of::<Hz>(1.4), Mass::of::<lb>(750.0))?;
/// assert_eq!(format!("{:.1} lbf/in", rate.in_::<lbf_in>()), "150.3 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn tangent_rate_for_frequency(frequency: Frequency, sprung_mass: Mass) -> Result<LinearStiffness> {
    valid! {
        frequency: 0.01 <= .. <= 100 ; "plausibility limit: a sprung mass swings between 0.01 Hz and 100 Hz";
        sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: a wheel carries between 1 g and 1000 t";
    }
    let angular = TAU * frequency;
    Ok(LinearStiffness::from_raw(angular.raw() * angular * sprung_mass))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spring::natural_frequency;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(f in 0.01f64..100.0, m in 0.001f64..1e6) {
            let (frequency, mass) = (Frequency::from_si(f), Mass::from_si(m));
            let rate = tangent_rate_for_frequency(frequency, mass).unwrap();
            assert_relative_eq!(natural_frequency(rate, mass).unwrap().si(), f, max_relative = 1e-14);
        }
    }
}
