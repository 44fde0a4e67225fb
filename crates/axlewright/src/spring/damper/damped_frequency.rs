use crate::units::{Frequency, Ratio};
use crate::{Result, valid};

/// Frequency at which a damped mass on its spring swings.
///
/// # Formula
/// `f_d = f sqrt(1 - zeta^2)`
///
/// # Parameters
/// - `undamped_frequency` — `f`, from `natural_frequency`
/// - `damping_ratio` — `zeta`, share of critical damping, with the same rate and mass as `f`
///
/// # Returns
/// The frequency in cycles per time, a little less than the undamped one.
///
/// # Valid for
/// - `0 < undamped_frequency <= 1000000`
/// - `0 <= damping_ratio < 1`
///
/// One mass on one linear spring and one viscous damper, left to itself. From a ratio of 1 on it creeps back without swinging, and there is no frequency.
///
/// # Source
/// Linear oscillator of one degree of freedom; ISO 2041 for the terms (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let frequency = spring::damped_frequency(Frequency::of::<Hz>(1.4), Ratio::of::<one>(0.35))?;
/// assert_eq!(format!("{:.2} Hz", frequency.in_::<Hz>()), "1.31 Hz");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn damped_frequency(undamped_frequency: Frequency, damping_ratio: Ratio) -> Result<Frequency> {
    valid! {
        undamped_frequency: 0 < .. <= 1e6 ; "definition: a mass on a spring swings; none of a vehicle at 1 MHz";
        damping_ratio: 0 <= .. < 1 ; "definition: from critical damping on nothing swings";
    }
    let ratio = damping_ratio.si();
    Ok(undamped_frequency * ((1.0 - ratio) * (1.0 + ratio)).sqrt())
}
