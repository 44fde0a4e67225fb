use crate::units::{Ratio, Torque};
use crate::{Result, valid};

/// Total torque at the driven wheels from the torque of the engine.
///
/// # Formula
/// `T_w = T i_g i_f e`
///
/// # Parameters
/// - `engine_torque` — `T`, torque at the crankshaft, driving
/// - `gear_ratio` — `i_g`, engine speed over propeller-shaft speed in this gear, transfer case included
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed
/// - `driveline_efficiency` — `e`, power at the wheels over power at the crankshaft
///
/// # Returns
/// The sum over the driven wheels, before the grip of the tyres limits it.
///
/// # Valid for
/// - `0 <= engine_torque <= 1000000`
/// - `0.1 <= gear_ratio <= 30`
/// - `0.1 <= final_drive <= 30`
/// - `0.3 <= driveline_efficiency <= 1`
///
/// Driving only: if the wheels drive the engine, the losses act the other way.
///
/// # Source
/// Balance of power through a geared train
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let torque = driveline::wheel_torque(
///     Torque::of::<Nm>(360.0), Ratio::of::<one>(4.2), Ratio::of::<one>(4.1), Ratio::of::<percent>(90.0),
/// )?;
/// assert_eq!(format!("{:.0} N·m", torque.in_::<Nm>()), "5579 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A part that is too weak for its share of this torque can break; it can lock a wheel or drop a shaft on the road. Ratings, local codes and licensed practice come first.
#[inline]
pub fn wheel_torque(
    engine_torque: Torque,
    gear_ratio: Ratio,
    final_drive: Ratio,
    driveline_efficiency: Ratio,
) -> Result<Torque> {
    valid! {
        engine_torque: 0 <= .. <= 1e6 ; "definition: driving, not driven; plausibility limit: at most 1 MN·m";
        gear_ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point";
        final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
        driveline_efficiency: 0.3 <= .. <= 1 ; "definition: no driveline gives more power than it takes; plausibility limit: three parts of 70 % together";
    }
    Ok(engine_torque * gear_ratio.si() * final_drive.si() * driveline_efficiency.si())
}
