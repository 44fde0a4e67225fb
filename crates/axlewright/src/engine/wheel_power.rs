use crate::units::{Power, Ratio};
use crate::{Result, valid};

/// Power at the wheels from power at the crankshaft.
///
/// # Formula
/// `P_w = P e`
///
/// # Parameters
/// - `crank_power` — `P`, power at the crankshaft, driving
/// - `driveline_efficiency` — `e`, power at the wheels over power at the crankshaft
///
/// # Returns
/// The power at the driven wheels.
///
/// # Valid for
/// - `0 <= crank_power <= 1000000000000`
/// - `0.3 <= driveline_efficiency <= 1`
///
/// One efficiency holds for one gear and one load, because part of the loss does not grow with power. The loss on a roller dynamometer includes the tyres' loss on the roller.
///
/// # Source
/// Definition of an efficiency
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let power = engine::wheel_power(Power::of::<kW>(150.0), Ratio::of::<percent>(85.0))?;
/// assert_eq!(format!("{:.1} kW", power.in_::<kW>()), "127.5 kW");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn wheel_power(crank_power: Power, driveline_efficiency: Ratio) -> Result<Power> {
    valid! {
        crank_power: 0 <= .. <= 1e12 ; "definition: the engine drives; plausibility limit: at most 1 TW";
        driveline_efficiency: 0.3 <= .. <= 1 ; "definition: no driveline gives more power than it takes; plausibility limit: three parts of 70 % together";
    }
    Ok(crank_power * driveline_efficiency)
}

/// Power at the crankshaft from power at the wheels.
///
/// # Formula
/// `P = P_w / e`
///
/// # Parameters
/// - `wheel_power` — `P_w`, power at the wheels, as measured: not yet corrected to standard air
/// - `driveline_efficiency` — `e`, power at the wheels over power at the crankshaft
///
/// # Returns
/// The power at the crankshaft. Correct to standard air after this step, not before.
///
/// # Valid for
/// - `0 <= wheel_power <= 1000000000000`
/// - `0.3 <= driveline_efficiency <= 1`
///
/// The result is only as good as the efficiency, which is seldom measured. An error of five percentage points in the efficiency is an error of 6 % in the power. A coast-down on the same roller is better than a figure from a table.
///
/// # Source
/// Definition of an efficiency
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let power = engine::crank_power(Power::of::<kW>(120.0), Ratio::of::<percent>(85.0))?;
/// assert_eq!(format!("{:.1} kW", power.in_::<kW>()), "141.2 kW");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn crank_power(wheel_power: Power, driveline_efficiency: Ratio) -> Result<Power> {
    valid! {
        wheel_power: 0 <= .. <= 1e12 ; "definition: the engine drives; plausibility limit: at most 1 TW";
        driveline_efficiency: 0.3 <= .. <= 1 ; "definition: no driveline gives more power than it takes; plausibility limit: three parts of 70 % together";
    }
    Ok(wheel_power / driveline_efficiency)
}
