use crate::units::{Frequency, LinearStiffness, Mass};
use crate::{Result, valid};
use core::f64::consts::TAU;

/// Undamped natural frequency of the sprung mass on its spring.
///
/// # Formula
/// `f = sqrt(k / m) / (2 pi)`
///
/// # Parameters
/// - `tangent_rate` — `k`, tangent rate at ride height: at the wheel, or with the tyre in series (say which one it was)
/// - `sprung_mass` — `m`, the scale reading of the wheel less its unsprung mass
///
/// # Returns
/// The frequency in cycles per time.
///
/// # Valid for
/// - `0 < tangent_rate`
/// - `0 < sprung_mass`
///
/// One mass on one linear spring, without damping.
///
/// # Source
/// Simple harmonic motion; Shigley's Mechanical Engineering Design, ch. 10 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let frequency = spring::natural_frequency(LinearStiffness::of::<lbf_in>(150.0), Mass::of::<lb>(750.0))?;
/// assert_eq!(format!("{:.2} Hz", frequency.in_::<Hz>()), "1.40 Hz");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn natural_frequency(tangent_rate: LinearStiffness, sprung_mass: Mass) -> Result<Frequency> {
    valid! {
        tangent_rate: 0 < .. ; "definition: only a positive rate brings the mass back";
        sprung_mass: 0 < .. ; "definition: a mass is positive";
    }
    Ok(Frequency::from_raw((tangent_rate.raw() / sprung_mass).sqrt()) / TAU)
}
