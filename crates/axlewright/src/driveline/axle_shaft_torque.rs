use crate::units::Torque;
use crate::{Result, valid};

/// Greatest torque of one axle shaft behind an open differential.
///
/// # Formula
/// `T_s = min(T_a / 2, T_g)`
///
/// # Parameters
/// - `axle_torque` — `T_a`, of both shafts together: engine torque through all ratios and losses
/// - `wheel_grip_torque` — `T_g`, beyond which the wheel with less grip slips, with a high bound of grip
///
/// # Returns
/// What each of the two shafts carries in a steady pull: half each, and neither more than the wheel with less grip holds.
///
/// # Valid for
/// - `0 <= axle_torque <= 1000000000`
/// - `0 <= wheel_grip_torque <= 1000000000`
///
/// A differential without lock or friction of note. A dropped clutch adds the inertia of what spins.
///
/// # Source
/// Balance of moments on the side gears of a bevel differential
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let shaft = driveline::axle_shaft_torque_open(Torque::of::<Nm>(5579.0), Torque::of::<Nm>(3200.0))?;
/// assert_eq!(format!("{:.1} N·m", shaft.in_::<Nm>()), "2789.5 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A shaft that breaks can lock a wheel or come out of its housing on the road; ratings, local codes and licensed practice come first.
#[inline]
pub fn axle_shaft_torque_open(axle_torque: Torque, wheel_grip_torque: Torque) -> Result<Torque> {
    valid! {
        axle_torque: 0 <= .. <= 1e9 ; "definition: driving, not driven; common practice, no source: at most 1 GN·m";
        wheel_grip_torque: 0 <= .. <= 1e9 ; "definition: counted without direction; common practice, no source: at most 1 GN·m";
    }
    let half = axle_torque / 2.0;
    Ok(if half < wheel_grip_torque { half } else { wheel_grip_torque })
}

/// Greatest torque of one axle shaft behind a locked or slip-limiting differential.
///
/// # Formula
/// `T_s = min(T_a, T_g)`
///
/// # Parameters
/// - `axle_torque` — `T_a`, of both shafts together: engine torque through all ratios and losses
/// - `wheel_grip_torque` — `T_g`, beyond which this shaft's own wheel slips, with a high bound of grip
///
/// # Returns
/// What this shaft carries in a steady pull while the other wheel hangs in the air or stands on ice: all the torque there is, up to what its own wheel holds.
///
/// # Valid for
/// - `0 <= axle_torque <= 1000000000`
/// - `0 <= wheel_grip_torque <= 1000000000`
///
/// A slip-limiting one passes on less than all; without its maker's figure take it for locked. With the other wheel in the air its load goes to this one.
///
/// # Source
/// Balance of moments on a solid axle
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let shaft = driveline::axle_shaft_torque_locked(Torque::of::<Nm>(5579.0), Torque::of::<Nm>(3200.0))?;
/// assert_eq!(format!("{:.0} N·m", shaft.in_::<Nm>()), "3200 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A shaft that breaks can lock a wheel or come out of its housing on the road; ratings, local codes and licensed practice come first.
#[inline]
pub fn axle_shaft_torque_locked(axle_torque: Torque, wheel_grip_torque: Torque) -> Result<Torque> {
    valid! {
        axle_torque: 0 <= .. <= 1e9 ; "definition: driving, not driven; common practice, no source: at most 1 GN·m";
        wheel_grip_torque: 0 <= .. <= 1e9 ; "definition: counted without direction; common practice, no source: at most 1 GN·m";
    }
    Ok(if axle_torque < wheel_grip_torque { axle_torque } else { wheel_grip_torque })
}
