use crate::units::Torque;
use crate::{Result, valid};

/// Differential between the two shafts of an axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Differential {
    /// No lock, and no friction of note.
    Open,
    /// Slip-limiting, by whatever means.
    LimitedSlip,
    /// Locked, a lockable one included.
    Locked,
}

impl Differential {
    /// Share of the axle's torque, and of the grip of the whole axle's load, that one shaft may carry. The two wheels of an open differential have the
    /// same torque. Behind any other one wheel may hang: the other then bears the axle's whole load, and its shaft carries all that this load holds.
    pub(crate) const fn shaft_share(self) -> f64 {
        match self {
            Differential::Open => 0.5,
            Differential::LimitedSlip | Differential::Locked => 1.0,
        }
    }

    /// Torque of one shaft: the share of what engine or grip lets the axle have.
    fn shaft_torque(self, axle_torque: Torque, axle_grip_torque: Torque) -> Torque {
        let torque = if axle_torque < axle_grip_torque { axle_torque } else { axle_grip_torque };
        torque * self.shaft_share()
    }
}

/// Highest torque of one axle shaft behind an open differential.
///
/// # Formula
/// `T_s = min(T_a, T_g) / 2`
///
/// # Parameters
/// - `axle_torque` — `T_a`, torque of both shafts together: engine torque through all ratios and losses
/// - `axle_grip_torque` — `T_g`, grip torque of the axle's whole load, with a high bound of grip: `grip_torque`
///
/// # Returns
/// Torque of each of the two shafts in a steady pull: half each.
///
/// # Valid for
/// - `0 <= axle_torque <= 1000000000`
/// - `0 <= axle_grip_torque <= 1000000000`
///
/// A differential without lock or friction of note. The wheel with less grip bounds both shafts, so unequal wheel loads only lower the torque. A dropped clutch adds the inertia of what spins.
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
/// let grip = driveline::grip_torque(Force::of::<kN>(24.0), Ratio::of::<one>(0.9), Length::of::<mm>(370.0))?;
/// let shaft = driveline::axle_shaft_torque_open(Torque::of::<Nm>(9500.0), grip)?;
/// assert_eq!(format!("{:.0} N·m", shaft.in_::<Nm>()), "3996 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A shaft that breaks can lock a wheel or come out of its housing on the road; ratings, local codes and licensed practice come first.
///
/// # Revision
/// 2
#[inline]
pub fn axle_shaft_torque_open(axle_torque: Torque, axle_grip_torque: Torque) -> Result<Torque> {
    valid! {
        axle_torque: 0 <= .. <= 1e9 ; "definition: driving, not driven; plausibility limit: at most 1 GN·m";
        axle_grip_torque: 0 <= .. <= 1e9 ; "definition: counted without direction; plausibility limit: at most 1 GN·m";
    }
    Ok(Differential::Open.shaft_torque(axle_torque, axle_grip_torque))
}

/// Highest torque of one axle shaft behind a locked or slip-limiting differential.
///
/// # Formula
/// `T_s = min(T_a, T_g)`
///
/// # Parameters
/// - `axle_torque` — `T_a`, torque of both shafts together: engine torque through all ratios and losses
/// - `axle_grip_torque` — `T_g`, grip torque of the axle's whole load, with a high bound of grip: `grip_torque`
///
/// # Returns
/// Torque of this shaft in a steady pull while the other wheel hangs in the air: all of the axle's torque, up to the grip of the axle's whole load, which this wheel then bears.
///
/// # Valid for
/// - `0 <= axle_torque <= 1000000000`
/// - `0 <= axle_grip_torque <= 1000000000`
///
/// A slip-limiting differential passes on less than all. Without its maker's figure, and for a differential of unknown kind, take it for locked. A dropped clutch adds the inertia of what spins.
///
/// # Source
/// Balance of moments on a solid axle, and of forces on an axle with one wheel in the air
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{driveline, units::*};
/// let grip = driveline::grip_torque(Force::of::<kN>(24.0), Ratio::of::<one>(0.9), Length::of::<mm>(370.0))?;
/// let shaft = driveline::axle_shaft_torque_locked(Torque::of::<Nm>(9500.0), grip)?;
/// assert_eq!(format!("{:.0} N·m", shaft.in_::<Nm>()), "7992 N·m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A shaft that breaks can lock a wheel or come out of its housing on the road; ratings, local codes and licensed practice come first.
///
/// # Revision
/// 2
#[inline]
pub fn axle_shaft_torque_locked(axle_torque: Torque, axle_grip_torque: Torque) -> Result<Torque> {
    valid! {
        axle_torque: 0 <= .. <= 1e9 ; "definition: driving, not driven; plausibility limit: at most 1 GN·m";
        axle_grip_torque: 0 <= .. <= 1e9 ; "definition: counted without direction; plausibility limit: at most 1 GN·m";
    }
    Ok(Differential::Locked.shaft_torque(axle_torque, axle_grip_torque))
}
