use crate::units::{AngularVelocity, Length, Ratio, Velocity};
use crate::{Result, valid};

/// Engine speed at a road speed in a gear: the cruise engine speed.
///
/// # Formula
/// `w = v i_g i_f / r`
///
/// # Parameters
/// - `road_speed` — `v`
/// - `gear_ratio` — `i_g`, engine speed over propeller-shaft speed in this gear, transfer case included
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed
/// - `rolling_radius` — `r`, effective rolling radius of the driven tyre (distance per turn over 2 pi), not the loaded radius
///
/// # Returns
/// The engine speed without slip.
///
/// # Valid for
/// - `0 <= road_speed <= 200`
/// - `0.1 <= gear_ratio <= 30`
/// - `0.1 <= final_drive <= 30`
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
/// let speed = driveline::engine_speed(
///     Velocity::of::<mph>(65.0), Ratio::of::<one>(0.72), Ratio::of::<one>(4.10), Length::of::<mm>(340.0),
/// )?;
/// assert_eq!(format!("{:.0} rpm", speed.in_::<rpm>()), "2409 rpm");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn engine_speed(
    road_speed: Velocity,
    gear_ratio: Ratio,
    final_drive: Ratio,
    rolling_radius: Length,
) -> Result<AngularVelocity> {
    valid! {
        road_speed: 0 <= .. <= 200 ; "definition: counted without direction; plausibility limit: no road vehicle is faster than 200 m/s";
        gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
        rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok(AngularVelocity::from_si(road_speed.si() * gear_ratio.si() * final_drive.si() / rolling_radius.si()))
}
