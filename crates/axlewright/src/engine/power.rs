use crate::units::{AngularVelocity, Power, Torque};
use crate::{Result, valid};

/// Power at a torque and a speed.
///
/// # Formula
/// `P = T w`
///
/// # Parameters
/// - `torque` — `T`; negative when the engine is driven
/// - `engine_speed` — `w`
///
/// # Returns
/// The power, with the sign of the torque.
///
/// # Valid for
/// - `torque finite`
/// - `0 <= engine_speed`
///
/// # Source
/// Definition of mechanical power; horsepower from torque in lbf·ft over 5252 rpm follows from 33000 ft·lbf/min (NIST SP 811, App. B)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let power = engine::power(Torque::of::<Nm>(400.0), AngularVelocity::of::<rpm>(4500.0))?;
/// assert_eq!(format!("{:.1} hp", power.in_::<hp_mechanical>()), "252.8 hp");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn power(torque: Torque, engine_speed: AngularVelocity) -> Result<Power> {
    valid! {
        torque: .. ; "definition";
        engine_speed: 0 <= .. ; "definition: a speed of rotation without direction";
    }
    Ok(torque * engine_speed)
}
