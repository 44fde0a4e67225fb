use crate::units::{AngularVelocity, Length, Ratio, Velocity};
use crate::{Result, valid};

/// Road speed at an engine speed in a gear.
///
/// # Formula
/// `v = w r / (i_g i_f)`
///
/// # Parameters
/// - `engine_speed` — `w`
/// - `gear_ratio` — `i_g`, engine speed over propeller-shaft speed in this gear, transfer case included
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed
/// - `rolling_radius` — `r`, effective rolling radius of the driven tyre (distance per turn over 2 pi), not the loaded radius
///
/// # Returns
/// The road speed without slip.
///
/// # Valid for
/// - `0 <= engine_speed <= 100000`
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
/// let speed = driveline::road_speed(
///     AngularVelocity::of::<rpm>(6000.0), Ratio::of::<one>(1.0), Ratio::of::<one>(3.73), Length::of::<mm>(316.0),
/// )?;
/// assert_eq!(format!("{:.1} mph", speed.in_::<mph>()), "119.1 mph");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn road_speed(
    engine_speed: AngularVelocity,
    gear_ratio: Ratio,
    final_drive: Ratio,
    rolling_radius: Length,
) -> Result<Velocity> {
    valid! {
        engine_speed: 0 <= .. <= 100e3 ; "definition: counted without direction; plausibility limit: no engine turns faster than 950,000 rpm";
        gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
        rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok(Velocity::from_si(engine_speed.si() * rolling_radius.si() / (gear_ratio.si() * final_drive.si())))
}
