use crate::units::{AngularVelocity, Length, Ratio, Velocity};
use crate::{Result, valid};
use core::f64::consts::TAU;

/// Tyre diameter that gives a wanted engine speed at a road speed.
///
/// # Formula
/// `D = 2 pi v i_g i_f / (w f_r)`
///
/// # Parameters
/// - `road_speed` — `v`, the cruise
/// - `engine_speed` — `w`, wanted there
/// - `gear_ratio` — `i_g`, engine speed over propeller-shaft speed in the gear of the cruise, most often the top one, transfer case included
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed
/// - `rolling_factor` — `f_r`, rolling circumference over free diameter: 3.05 for a radial, 2.99 for a diagonal tyre (ETRTO and UN Regulation 30, from memory)
///
/// # Returns
/// The free diameter, unloaded; what is sold lies beside it, so look at `engine_speed` with the tyre that you take.
///
/// # Valid for
/// - `0.001 <= road_speed <= 200`
/// - `0.001 <= engine_speed <= 100000`
/// - `0.1 <= gear_ratio <= 30`
/// - `0.1 <= final_drive <= 30`
/// - `2 <= rolling_factor <= 3.2`
///
/// # Source
/// Kinematics of rolling; ETRTO Standards Manual and UN Regulation 30 for the factor (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let diameter = driveline::tyre_diameter_for_cruise(
///     Velocity::of::<mph>(65.0), AngularVelocity::of::<rpm>(2300.0), Ratio::of::<one>(0.72), Ratio::of::<one>(4.1), Ratio::of::<one>(3.05),
/// )?;
/// assert_eq!(format!("{:.1} in", diameter.in_::<inch>()), "28.9 in");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A larger tyre changes braking, steering, clearance and the speedometer; its load index must suit the axle, and local codes limit it.
#[inline]
pub fn tyre_diameter_for_cruise(
    road_speed: Velocity,
    engine_speed: AngularVelocity,
    gear_ratio: Ratio,
    final_drive: Ratio,
    rolling_factor: Ratio,
) -> Result<Length> {
    valid! {
        road_speed: 0.001 <= .. <= 200 ; "plausibility limit: a cruise lies between 1 mm/s and 200 m/s";
        engine_speed: 0.001 <= .. <= 100e3 ; "plausibility limit: an engine turns between 0.01 rpm and 950,000 rpm";
        gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
        rolling_factor: 2 <= .. <= 3.2 ; "definition: about pi; plausibility limit: a tyre pressed flat to two thirds still rolls on twice its diameter";
    }
    let rolling_circumference =
        TAU * road_speed.si() * gear_ratio.si() * final_drive.si() / engine_speed.si();
    Ok(Length::from_si(rolling_circumference / rolling_factor.si()))
}
