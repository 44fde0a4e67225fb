use crate::units::{AngularVelocity, Power, Torque};
use crate::{Result, valid};

/// Torque at a power and a speed.
///
/// # Formula
/// `T = P / w`
///
/// # Parameters
/// - `power` — `P`; negative when the engine is driven
/// - `engine_speed` — `w`
///
/// # Returns
/// The torque, with the sign of the power.
///
/// # Valid for
/// - `power finite`
/// - `0 < engine_speed`
///
/// # Source
/// Definition of mechanical power
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let torque = engine::torque(Power::of::<hp_mechanical>(200.0), AngularVelocity::of::<rpm>(5252.0))?;
/// assert_eq!(format!("{:.0} ft·lbf", torque.in_::<ft_lbf>()), "200 ft·lbf");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn torque(power: Power, engine_speed: AngularVelocity) -> Result<Torque> {
    valid! {
        power: .. ; "definition";
        engine_speed: 0 < .. ; "definition: no torque follows from a power at rest";
    }
    Ok(Torque::from_si(power.si() / engine_speed.si()))
}
