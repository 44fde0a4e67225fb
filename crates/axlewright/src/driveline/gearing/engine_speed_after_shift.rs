use crate::units::{AngularVelocity, Ratio};
use crate::{Result, valid};

/// Engine speed after a shift, the road speed being what it was.
///
/// # Formula
/// `w_2 = w_1 i_2 / i_1`
///
/// # Parameters
/// - `engine_speed` — `w_1`, before the shift
/// - `gear_ratio_before` — `i_1`, input speed over output speed of the gear that is left
/// - `gear_ratio_after` — `i_2`, ratio of the gear after the shift
///
/// # Returns
/// The engine speed once the clutch has closed again: lower after a shift up, higher after a shift down.
///
/// # Valid for
/// - `0 <= engine_speed <= 100000`
/// - `0.1 <= gear_ratio_before <= 30`
/// - `0.1 <= gear_ratio_after <= 30`
///
/// The speed that the vehicle loses during the shift is not counted.
///
/// # Source
/// Kinematics of gears
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let speed = driveline::engine_speed_after_shift(
///     AngularVelocity::of::<rpm>(3800.0), Ratio::of::<one>(4.2), Ratio::of::<one>(2.5),
/// )?;
/// assert_eq!(format!("{:.0} rpm", speed.in_::<rpm>()), "2262 rpm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A shift down can turn the engine and the clutch disc faster than they hold together: compare with the red line.
#[inline]
pub fn engine_speed_after_shift(
    engine_speed: AngularVelocity,
    gear_ratio_before: Ratio,
    gear_ratio_after: Ratio,
) -> Result<AngularVelocity> {
    valid! {
        engine_speed: 0 <= .. <= 100e3 ; "definition: counted without direction; plausibility limit: no engine turns faster than 950,000 rpm";
        gear_ratio_before: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        gear_ratio_after: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
    }
    Ok(engine_speed * gear_ratio_after.si() / gear_ratio_before.si())
}
