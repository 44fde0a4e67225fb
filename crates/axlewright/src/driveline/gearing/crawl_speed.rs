use crate::units::{AngularVelocity, Length, Ratio, Velocity};
use crate::{Result, valid};

/// Crawl speed: the road speed in the lowest gear of gearbox and transfer case.
///
/// # Formula
/// `v = w r / (i_1 i_t i_f)`
///
/// # Parameters
/// - `engine_speed` — `w`, most often the idle speed of the engine
/// - `first_gear_ratio` — `i_1`, first-gear ratio of the gearbox alone, transfer case *not* included
/// - `transfer_case_ratio` — `i_t`, input speed over output speed in low range; 1 if there is no transfer case
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed; hub reductions included
/// - `rolling_radius` — `r`, effective rolling radius of the driven tyre (distance per turn over 2 pi), not the loaded radius
///
/// # Returns
/// The road speed without slip.
///
/// # Valid for
/// - `0 <= engine_speed <= 100000`
/// - `0.1 <= first_gear_ratio <= 30`
/// - `0.1 <= transfer_case_ratio <= 30`
/// - `0.1 <= final_drive <= 30`
/// - `0.001 <= rolling_radius <= 100`
///
/// # Source
/// Kinematics of gears and of rolling; for the term crawl speed, common practice, no source
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let speed = driveline::crawl_speed(
///     AngularVelocity::of::<rpm>(800.0), Ratio::of::<one>(4.2), Ratio::of::<one>(2.72), Ratio::of::<one>(4.1), Length::of::<mm>(365.0),
/// )?;
/// assert_eq!(format!("{:.2} km/h", speed.in_::<km_h>()), "2.35 km/h");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Low range multiplies the torque in every part behind it: a shaft or an axle that is strong enough in high range can break.
#[inline]
pub fn crawl_speed(
    engine_speed: AngularVelocity,
    first_gear_ratio: Ratio,
    transfer_case_ratio: Ratio,
    final_drive: Ratio,
    rolling_radius: Length,
) -> Result<Velocity> {
    valid! {
        engine_speed: 0 <= .. <= 100e3 ; "definition: counted without direction; plausibility limit: no engine turns faster than 950,000 rpm";
        first_gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        transfer_case_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
        rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    let crawl_ratio = first_gear_ratio * transfer_case_ratio * final_drive;
    Ok(Velocity::from_si(engine_speed.si() * rolling_radius.si() / crawl_ratio.si()))
}
