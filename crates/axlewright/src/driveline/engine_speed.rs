use crate::units::{AngularVelocity, Length, Quantity, Ratio, Velocity};
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
/// - `0 <= road_speed`
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
        road_speed: 0 <= .. ; "definition: a speed counted without direction";
        gear_ratio: 0.01 <= .. <= 1000 ; "common practice, no source: gears between 1:100 and a crawl of 1000:1, counted without direction";
        final_drive: 0.01 <= .. <= 100 ; "common practice, no source: axles between 1:100 and 100:1, counted without direction";
        rolling_radius: 0.01 <= .. <= 10 ; "common practice, no source: wheels between 20 mm and 20 m across";
    }
    Ok(AngularVelocity::from_si(road_speed.si() * gear_ratio.si() * final_drive.si() / rolling_radius.si()))
}
