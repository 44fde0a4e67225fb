use crate::base::numeric::hypot;
use crate::units::Ratio;
use crate::{Result, valid};

/// Amplitude of a mass on a spring and damper over the amplitude of their foot.
///
/// # Formula
/// `T = sqrt((1 + (2 zeta r)^2) / ((1 - r^2)^2 + (2 zeta r)^2))`
///
/// # Parameters
/// - `frequency_ratio` — `r`, frequency of the motion over the undamped natural frequency
/// - `damping_ratio` — `zeta`, damping ratio of the mass on its spring
///
/// # Returns
/// Amplitude of the mass over that of the foot. It is 1 at a ratio of the square root of 2, with any damping; more below, less above.
///
/// # Valid for
/// - `0 <= frequency_ratio <= 1000000`
/// - `0.000001 <= damping_ratio <= 1000`
///
/// # Source
/// Den Hartog, Mechanical Vibrations, steady vibration of a mass whose support moves (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let passed = ride::transmissibility(Ratio::of::<one>(3.0), Ratio::of::<one>(0.3))?;
/// assert_eq!(format!("{:.1} %", passed.in_::<percent>()), "25.1 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn transmissibility(frequency_ratio: Ratio, damping_ratio: Ratio) -> Result<Ratio> {
    valid! {
        frequency_ratio: 0 <= .. <= 1000000 ; "definition: a frequency is not negative; plausibility limit: above 1e6 it is a typing error";
        damping_ratio: 0.000001 <= .. <= 1000 ; "definition: without damping the resonance has no bound; plausibility limit: above 1000 it is a typing error";
    }
    let (r, zeta) = (frequency_ratio.si(), damping_ratio.si());
    let damped = 2.0 * zeta * r;
    let spring = (1.0 - r) * (1.0 + r);
    Ok(Ratio::from_si(hypot(1.0, damped) / hypot(spring, damped)))
}
