use crate::units::{Acceleration, Force, Length, Mass};
use crate::{Result, valid};

/// Load that the rear axle gains and the front axle loses while the vehicle gains speed.
///
/// # Formula
/// `F = m a_x h / l`
///
/// # Parameters
/// - `total_mass` — `m`, mass of the whole vehicle as it stands: all scale readings together
/// - `centre_height` — `h`, height of the centre of gravity above the ground
/// - `wheelbase` — `l`, front to rear axle
/// - `acceleration` — `a_x`, forward, positive for gaining speed, negative for braking
///
/// # Returns
/// Load gained by the rear axle, both wheels together; negative in braking, in which the front axle gains it.
///
/// # Valid for
/// - `0.001 <= total_mass <= 4000000`
/// - `0 <= centre_height <= 100`
/// - `0.01 <= wheelbase <= 100`
/// - `-1000 <= acceleration <= 1000`
///
/// Level road, steady acceleration, both axles on the ground. Pitch, air drag and rotating parts are neglected. Springs decide how far the body pitches, not how much load moves.
///
/// # Source
/// Equilibrium of the accelerated body; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let moved = mass::longitudinal_load_transfer(
///     Mass::of::<kg>(2400.0), Length::of::<mm>(720.0), Length::of::<mm>(2650.0), Acceleration::of::<gn>(-0.8),
/// )?;
/// assert_eq!(format!("{:.0} N", moved.in_::<N>()), "-5116 N");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn longitudinal_load_transfer(
    total_mass: Mass,
    centre_height: Length,
    wheelbase: Length,
    acceleration: Acceleration,
) -> Result<Force> {
    valid! {
        total_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        centre_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        wheelbase: 0.01 <= .. <= 100 ; "definition: a distance between axles, of a road vehicle";
        acceleration: (-1000) <= .. <= 1000 ; "plausibility limit: no road vehicle accelerates with 100 g0";
    }
    Ok(total_mass * acceleration * (centre_height / wheelbase))
}
