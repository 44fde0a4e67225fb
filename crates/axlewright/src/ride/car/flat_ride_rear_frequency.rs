use crate::units::{Frequency, Length, Ratio, Velocity};
use crate::{Result, cannot, valid};

/// Rear frequency at which the pitching ends after a number of cycles of the front.
///
/// # Formula
/// `f_r = n f_f / (n - f_f t)` with `t = L / v`
///
/// # Parameters
/// - `front_frequency` — `f_f`, frequency of the body on the front axle
/// - `wheelbase` — `L`, front to rear axle
/// - `speed` — `v`, speed of the vehicle
/// - `cycles` — `n`, cycles of the front since it met the bump, until both ends move together
///
/// # Returns
/// Frequency of the body on the rear axle, higher than that of the front.
///
/// # Valid for
/// - `0.001 <= front_frequency <= 1000`
/// - `0.01 <= wheelbase <= 100`
/// - `0.01 <= speed <= 200`
/// - `0.01 <= cycles <= 1000`
///
/// The two ends swing independently (dynamic index near 1), without damping. The front makes `f_f t` cycles before the rear meets the bump; `n` must be more.
///
/// # Source
/// Common practice after Olley: the rear swings faster and catches up (Gillespie, Fundamentals of Vehicle Dynamics, chapter 5; Milliken, Chassis Design; from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let rear = ride::flat_ride_rear_frequency(
///     Frequency::of::<Hz>(1.2), Length::of::<m>(2.9), Velocity::of::<km_h>(90.0), Ratio::of::<one>(1.0),
/// )?;
/// assert_eq!(format!("{:.2} Hz", rear.in_::<Hz>()), "1.39 Hz");
/// # Ok::<(), axlewright::Error>(())
/// ```
pub fn flat_ride_rear_frequency(
    front_frequency: Frequency,
    wheelbase: Length,
    speed: Velocity,
    cycles: Ratio,
) -> Result<Frequency> {
    valid! {
        front_frequency: 0.001 <= .. <= 1000 ; "plausibility limit: bodies swing between 1 mHz and 1 kHz";
        wheelbase: 0.01 <= .. <= 100 ; "plausibility limit: wheelbases lie between 10 mm and 100 m";
        speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s";
        cycles: 0.01 <= .. <= 1000 ; "plausibility limit: more than 1000 is a typing error";
    }
    let before = front_frequency * (wheelbase / speed);
    if cycles <= before {
        return Err(cannot!(
            cycles > before; "is too few: the front makes more before the rear meets the bump"
        ));
    }
    Ok(front_frequency * (cycles / (cycles - before)))
}
