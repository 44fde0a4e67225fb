use crate::units::{Acceleration, Force, Length, Mass};
use crate::{Result, valid};

/// Load that the outer wheels gain and the inner wheels lose in a turn, both axles together.
///
/// # Formula
/// `F = m a_y h / t`
///
/// # Parameters
/// - `total_mass` — `m`, mass of the whole vehicle as it stands: all scale readings together
/// - `centre_height` — `h`, height of the centre of gravity above the ground
/// - `track` — `t`, distance between the tyre centres, mean of both axles
/// - `lateral_acceleration` — `a_y`, towards the left, as in a left turn
///
/// # Returns
/// Load gained by the right wheels, all of them together; negative in a right turn, in which the left wheels gain it. The suspension decides how the axles share it.
///
/// # Valid for
/// - `0.001 <= total_mass <= 4000000`
/// - `0 <= centre_height <= 100`
/// - `0.01 <= track <= 100`
/// - `-1000 <= lateral_acceleration <= 1000`
///
/// A steady turn on a level road with all wheels on the ground. Body roll is neglected: it moves the centre of gravity outwards and adds some percent. Both axles have the same track; otherwise use the mean of both.
///
/// # Source
/// Equilibrium of the accelerated body; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let moved = mass::lateral_load_transfer(
///     Mass::of::<kg>(2400.0), Length::of::<mm>(720.0), Length::of::<mm>(1530.0), Acceleration::of::<gn>(0.5),
/// )?;
/// assert_eq!(format!("{:.0} N", moved.in_::<N>()), "5538 N");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A vehicle whose inner wheels lift is about to roll over. A high vehicle does so before its tyres slide. Local codes and licensed practice come first.
#[inline]
pub fn lateral_load_transfer(
    total_mass: Mass,
    centre_height: Length,
    track: Length,
    lateral_acceleration: Acceleration,
) -> Result<Force> {
    valid! {
        total_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        centre_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
        lateral_acceleration: (-1000) <= .. <= 1000 ; "plausibility limit: no road vehicle accelerates with 100 g0";
    }
    Ok(total_mass * lateral_acceleration * (centre_height / track))
}
