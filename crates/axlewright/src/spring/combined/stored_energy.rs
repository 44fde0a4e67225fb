use crate::units::{Energy, Length, LinearStiffness, energy};
use crate::{Result, valid};

/// Energy that a linear spring holds at a deflection.
///
/// # Formula
/// `U = k x^2 / 2`
///
/// # Parameters
/// - `spring_rate` — `k`, the rate of the spring along its own axis
/// - `deflection` — `x`, deflection from the free length: with the preload, not only the travel of the wheel
///
/// # Returns
/// The energy that is set free when the spring is let go.
///
/// # Valid for
/// - `1 <= spring_rate <= 1000000000`
/// - `0 <= deflection <= 100`
///
/// Linear from its free length on; a progressive spring holds more than its first rate says and less than its last one.
///
/// # Source
/// Work of a linear force along the travel (Hooke's law)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let energy = spring::stored_energy(LinearStiffness::of::<N_mm>(60.0), Length::of::<mm>(150.0))?;
/// assert_eq!(format!("{:.0} J", energy.in_::<J>()), "675 J"); // a mass of 69 kg dropped from one metre
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// This energy is enough to kill. Compress, hold and release a spring only with a compressor made for it, in sound order, and stand out of its line.
#[inline]
pub fn stored_energy(spring_rate: LinearStiffness, deflection: Length) -> Result<Energy> {
    valid! {
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        deflection: 0 <= .. <= 100 ; "definition: a coil spring between seats is only shortened; none by 100 m";
    }
    Ok(energy(0.5 * spring_rate * deflection, deflection))
}
