use crate::units::{AngularVelocity, Length, Quantity, Ratio, Velocity};
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
/// - `0 <= engine_speed`
/// - `0.01 <= gear_ratio <= 1000`
/// - `0.01 <= final_drive <= 100`
/// - `0.01 <= rolling_radius <= 10`
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
        engine_speed: 0 <= .. ; "definition: a speed of rotation counted without direction";
        gear_ratio: 0.01 <= .. <= 1000 ; "common practice, no source: gears between 1:100 and a crawl of 1000:1, counted without direction";
        final_drive: 0.01 <= .. <= 100 ; "common practice, no source: axles between 1:100 and 100:1, counted without direction";
        rolling_radius: 0.01 <= .. <= 10 ; "common practice, no source: wheels between 20 mm and 20 m across";
    }
    Ok(Velocity::from_si(engine_speed.si() * rolling_radius.si() / (gear_ratio.si() * final_drive.si())))
}
