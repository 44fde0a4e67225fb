use crate::units::Ratio;
use crate::{Result, valid};

/// Crawl ratio: turns of the engine for one turn of the wheels in the lowest gear there is.
///
/// # Formula
/// `i_c = i_1 i_t i_f`
///
/// # Parameters
/// - `first_gear_ratio` — `i_1`, of the gearbox alone, transfer case *not* included
/// - `transfer_case_ratio` — `i_t`, input speed over output speed in low range; 1 where there is none
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed; hub reductions included
///
/// # Returns
/// Engine speed over wheel speed.
///
/// # Valid for
/// - `0.001 <= first_gear_ratio <= 1000`
/// - `0.001 <= transfer_case_ratio <= 1000`
/// - `0.001 <= final_drive <= 1000`
///
/// # Source
/// Kinematics of gears; common practice, no source, for the term
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let ratio = driveline::crawl_ratio(Ratio::of::<one>(4.2), Ratio::of::<one>(2.72), Ratio::of::<one>(4.1))?;
/// assert_eq!(format!("{:.1}", ratio.in_::<one>()), "46.8");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Low range multiplies the torque in every part behind it: a shaft or an axle that is strong enough in high range can break.
#[inline]
pub fn crawl_ratio(first_gear_ratio: Ratio, transfer_case_ratio: Ratio, final_drive: Ratio) -> Result<Ratio> {
    valid! {
        first_gear_ratio: 0.001 <= .. <= 1000 ; "common practice, no source: no gear of a vehicle lies outside 0.001 to 1000";
        transfer_case_ratio: 0.001 <= .. <= 1000 ; "common practice, no source: no gear of a vehicle lies outside 0.001 to 1000";
        final_drive: 0.001 <= .. <= 1000 ; "common practice, no source: no axle of a vehicle lies outside 0.001 to 1000";
    }
    Ok(first_gear_ratio * transfer_case_ratio * final_drive)
}
