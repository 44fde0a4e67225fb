use crate::units::{AngularVelocity, Length, Ratio, Velocity};
use crate::{Result, valid};

/// Crawl ratio: turns of the engine for one turn of the wheels in the lowest gear there is.
///
/// # Formula
/// `i_c = i_1 i_t i_f`
///
/// # Parameters
/// - `first_gear_ratio` — `i_1`, first-gear ratio of the gearbox alone, transfer case *not* included
/// - `transfer_case_ratio` — `i_t`, input speed over output speed in low range; 1 where there is none
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed; hub reductions included
///
/// # Returns
/// Engine speed over wheel speed.
///
/// # Valid for
/// - `0.1 <= first_gear_ratio <= 30`
/// - `0.1 <= transfer_case_ratio <= 30`
/// - `0.1 <= final_drive <= 30`
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
        first_gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        transfer_case_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
    }
    Ok(first_gear_ratio * transfer_case_ratio * final_drive)
}

/// Crawl ratio that gives a wanted road speed at an engine speed.
///
/// # Formula
/// `i_c = w r / v`
///
/// # Parameters
/// - `road_speed` — `v`, wanted: a walk is about 1.4 m/s
/// - `engine_speed` — `w`, there: most often the idle
/// - `rolling_radius` — `r`, effective rolling radius of the driven tyre (distance per turn over 2 pi), not the loaded radius
///
/// # Returns
/// Engine speed over wheel speed: what gearbox, transfer case and axle must give together.
///
/// # Valid for
/// - `0.001 <= road_speed <= 200`
/// - `0.001 <= engine_speed <= 100000`
/// - `0.001 <= rolling_radius <= 100`
///
/// # Source
/// Kinematics of rolling; common practice, no source, for the term
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let ratio = driveline::crawl_ratio_for_speed(Velocity::of::<km_h>(2.0), AngularVelocity::of::<rpm>(800.0), Length::of::<mm>(365.0))?;
/// assert_eq!(format!("{:.1}", ratio.in_::<one>()), "55.0");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Low range multiplies the torque in every part behind it: a shaft or an axle that is strong enough in high range can break.
#[inline]
pub fn crawl_ratio_for_speed(
    road_speed: Velocity,
    engine_speed: AngularVelocity,
    rolling_radius: Length,
) -> Result<Ratio> {
    valid! {
        road_speed: 0.001 <= .. <= 200 ; "plausibility limit: a wanted speed lies between 1 mm/s and 200 m/s";
        engine_speed: 0.001 <= .. <= 100e3 ; "plausibility limit: an engine turns between 0.01 rpm and 950,000 rpm";
        rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
    }
    Ok(Ratio::from_si(engine_speed.si() * rolling_radius.si() / road_speed.si()))
}

/// First gear that gives a wanted crawl ratio.
///
/// # Formula
/// `i_1 = i_c / (i_t i_f)`
///
/// # Parameters
/// - `crawl_ratio` — `i_c`, wanted: engine speed over wheel speed
/// - `transfer_case_ratio` — `i_t`, input speed over output speed in low range; 1 where there is none
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed; hub reductions included
///
/// # Returns
/// The ratio of the gearbox alone. Give the first gear as `transfer_case_ratio`, and it is the ratio of the transfer case.
///
/// # Valid for
/// - `0.001 <= crawl_ratio <= 1000000`
/// - `0.1 <= transfer_case_ratio <= 30`
/// - `0.1 <= final_drive <= 30`
///
/// Axles for sale have other ratios: compute `crawl_ratio` with the one that you take.
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
/// let ratio = driveline::first_gear_for_crawl(Ratio::of::<one>(55.0), Ratio::of::<one>(2.72), Ratio::of::<one>(4.1))?;
/// assert_eq!(format!("{:.2}", ratio.in_::<one>()), "4.93");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Low range multiplies the torque in every part behind it: a shaft or an axle that is strong enough in high range can break.
#[inline]
pub fn first_gear_for_crawl(
    crawl_ratio: Ratio,
    transfer_case_ratio: Ratio,
    final_drive: Ratio,
) -> Result<Ratio> {
    valid! {
        crawl_ratio: 0.001 <= .. <= 1e6 ; "plausibility limit: no driveline of a vehicle lies outside 0.001 to 1000000";
        transfer_case_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
    }
    Ok(crawl_ratio / (transfer_case_ratio * final_drive))
}
