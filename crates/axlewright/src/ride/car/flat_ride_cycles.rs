use crate::units::{Frequency, Length, Ratio, Velocity};
use crate::{Result, valid};

/// Cycles of the front from a bump until front and rear move together and the pitching ends.
///
/// # Formula
/// `n = f_f f_r t / (f_r - f_f)` with `t = L / v`
///
/// # Parameters
/// - `front_frequency` — `f_f`, frequency of the body on the front axle
/// - `rear_frequency` — `f_r`, frequency of the body on the rear axle, higher than that of the front
/// - `wheelbase` — `L`, front to rear axle
/// - `speed` — `v`, speed of the vehicle
///
/// # Returns
/// Cycles of the front since it met the bump. One to one and a half is a flat ride; far more never feels like one.
///
/// # Valid for
/// - `0.001 <= front_frequency <= 1000`
/// - `0.001 <= rear_frequency <= 1000`
/// - `rear_frequency > front_frequency`
/// - `0.01 <= wheelbase <= 100`
/// - `0.01 <= speed <= 200`
///
/// The two ends swing independently (dynamic index near 1), without damping.
///
/// # Source
/// Common practice after Olley: the rear swings faster and catches up (Gillespie, Fundamentals of Vehicle Dynamics, chapter 5; Milliken, Chassis Design; from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let cycles = ride::flat_ride_cycles(
///     Frequency::of::<Hz>(1.2), Frequency::of::<Hz>(1.4), Length::of::<m>(2.9), Velocity::of::<km_h>(90.0),
/// )?;
/// assert_eq!(format!("{:.2}", cycles.in_::<one>()), "0.97");
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn flat_ride_cycles(
    front_frequency: Frequency,
    rear_frequency: Frequency,
    wheelbase: Length,
    speed: Velocity,
) -> Result<Ratio> {
    valid! {
        front_frequency: 0.001 <= .. <= 1000 ; "plausibility limit: bodies swing between 1 mHz and 1 kHz";
        rear_frequency: 0.001 <= .. <= 1000 ; "plausibility limit: bodies swing between 1 mHz and 1 kHz";
        rear_frequency > front_frequency ; "definition: a rear with no higher frequency never catches up";
        wheelbase: 0.01 <= .. <= 100 ; "plausibility limit: wheelbases lie between 10 mm and 100 m";
        speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s";
    }
    let both = front_frequency.raw() * rear_frequency;
    Ok(Ratio::from_raw(both * (wheelbase / speed) / (rear_frequency - front_frequency)))
}
