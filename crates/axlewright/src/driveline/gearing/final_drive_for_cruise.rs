use crate::units::{AngularVelocity, Length, Ratio, Velocity};
use crate::{Result, valid};

/// Final drive that gives a wanted engine speed at a road speed.
///
/// # Formula
/// `i_f = w r / (v i_g)`
///
/// # Parameters
/// - `road_speed` — `v`, the cruise
/// - `engine_speed` — `w`, wanted there
/// - `gear_ratio` — `i_g`, engine speed over propeller-shaft speed in the gear of the cruise, most often the top one, transfer case included
/// - `rolling_radius` — `r`, effective rolling radius of the driven tyre (distance per turn over 2 pi), not the loaded radius
///
/// # Returns
/// Propeller-shaft speed over wheel speed; what is sold lies beside it, so look at `engine_speed` with the ratio that you take.
///
/// # Valid for
/// - `0.001 <= road_speed <= 200`
/// - `0.001 <= engine_speed <= 100000`
/// - `0.1 <= gear_ratio <= 30`
/// - `0.001 <= rolling_radius <= 100`
///
/// # Source
/// Kinematics of rolling; ISO 8855 for the term effective rolling radius (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let ratio = driveline::final_drive_for_cruise(
///     Velocity::of::<mph>(65.0), AngularVelocity::of::<rpm>(2100.0), Ratio::of::<one>(0.72), Length::of::<mm>(340.0),
/// )?;
/// assert_eq!(format!("{:.2}", ratio.in_::<one>()), "3.57");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn final_drive_for_cruise(
    road_speed: Velocity,
    engine_speed: AngularVelocity,
    gear_ratio: Ratio,
    rolling_radius: Length,
) -> Result<Ratio> {
    valid! {
        road_speed: 0.001 <= .. <= 200 ; "plausibility limit: a cruise lies between 1 mm/s and 200 m/s";
        engine_speed: 0.001 <= .. <= 100e3 ; "plausibility limit: an engine turns between 0.01 rpm and 950,000 rpm";
        gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok(Ratio::from_si(engine_speed.si() * rolling_radius.si() / (road_speed.si() * gear_ratio.si())))
}
