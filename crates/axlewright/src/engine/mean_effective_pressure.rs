use crate::units::{Stress, Torque, Volume};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Mean effective pressure of a four-stroke engine at a torque.
///
/// # Formula
/// `p_m = 4 pi T / V`
///
/// # Parameters
/// - `torque` — `T`, torque at the crankshaft; negative when the engine is driven
/// - `displacement` — `V`, swept volume of all cylinders together
///
/// # Returns
/// The constant pressure difference on the pistons that would do the same work. It is the *brake* mean effective pressure for a torque measured on a brake.
/// A driven engine gives a negative value, for its friction and pumping.
///
/// # Valid for
/// - `-1000000000 <= torque <= 1000000000`
/// - `0.00000001 <= displacement <= 1000`
///
/// One working stroke in two turns of the crankshaft.
///
/// # Source
/// Work of a cycle over the swept volume; Heywood, Internal Combustion Engine Fundamentals (1988), ch. 2 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let pressure = engine::mean_effective_pressure_four_stroke(Torque::of::<Nm>(360.0), Volume::of::<L>(2.5))?;
/// assert_eq!(format!("{:.1} bar", pressure.in_::<bar>()), "18.1 bar");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn mean_effective_pressure_four_stroke(torque: Torque, displacement: Volume) -> Result<Stress> {
    valid! {
        torque: (-1e9) <= .. <= 1e9 ; "plausibility limit: no engine gives more than 1 GN·m";
        displacement: 1e-8 <= .. <= 1000 ; "plausibility limit: engines lie between 0.01 mL and 1000 m³";
    }
    Ok(Stress::from_si(4.0 * PI * torque.si() / displacement.si()))
}

/// Mean effective pressure of a two-stroke engine at a torque.
///
/// # Formula
/// `p_m = 2 pi T / V`
///
/// # Parameters
/// - `torque` — `T`, torque at the crankshaft; negative when the engine is driven
/// - `displacement` — `V`, swept volume of all cylinders together
///
/// # Returns
/// The constant pressure difference on the pistons that would do the same work. It is the *brake* mean effective pressure for a torque measured on a brake.
/// A driven engine gives a negative value, for its friction and pumping.
///
/// # Valid for
/// - `-1000000000 <= torque <= 1000000000`
/// - `0.00000001 <= displacement <= 1000`
///
/// One working stroke a turn of the crankshaft.
///
/// # Source
/// Work of a cycle over the swept volume; Heywood, Internal Combustion Engine Fundamentals (1988), ch. 2 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let pressure = engine::mean_effective_pressure_two_stroke(Torque::of::<Nm>(90.0), Volume::of::<L>(0.5))?;
/// assert_eq!(format!("{:.1} bar", pressure.in_::<bar>()), "11.3 bar");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn mean_effective_pressure_two_stroke(torque: Torque, displacement: Volume) -> Result<Stress> {
    valid! {
        torque: (-1e9) <= .. <= 1e9 ; "plausibility limit: no engine gives more than 1 GN·m";
        displacement: 1e-8 <= .. <= 1000 ; "plausibility limit: engines lie between 0.01 mL and 1000 m³";
    }
    Ok(Stress::from_si(2.0 * PI * torque.si() / displacement.si()))
}
