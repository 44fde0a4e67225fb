use crate::units::{AbsolutePressure, GaugePressure, Temperature, absolute, gauge};
use crate::{Result, valid};

/// Gauge reading of a tight, gas-filled system after a change of its temperature.
///
/// # Formula
/// `p_2 = (p_1 + p_a) T_2 / T_1 - p_a`
///
/// # Parameters
/// - `gauge_pressure` — `p_1`, reading at the start of the test
/// - `temperature` — `T_1`, temperature of the gas at the start
/// - `later_temperature` — `T_2`, temperature of the gas at the later reading
/// - `station_pressure` — `p_a`, absolute pressure of the surrounding air, as measured there, not reduced to sea level
///
/// # Returns
/// The gauge reading that follows from the temperature alone; a lower reading shows a leak.
///
/// # Valid for
/// - `0 <= gauge_pressure <= 1000000`
/// - `233.15 <= temperature <= 333.15`
/// - `233.15 <= later_temperature <= 333.15`
/// - `40000 <= station_pressure <= 110000`
///
/// Dry gas trapped in a constant volume, at an unchanged station pressure. If the barometer rises, the reading falls by the same amount.
/// Real air differs by about 0.05 % of the absolute pressure. **Not for a system full of liquid**: its pressure follows from the expansion of
/// liquid, hoses and metal. Not for gas above coolant either, because the level of the coolant moves. In both cases, the expected reading is
/// not known.
///
/// # Source
/// Ideal gas law at constant volume and mass
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let reading = cooling::pressure_decay_tight_pressure(
///     GaugePressure::of::<psi_gauge>(15.0),
///     Temperature::of::<degF>(77.0), Temperature::of::<degF>(59.0),
///     AbsolutePressure::of::<psi_absolute>(14.7),
/// )?;
/// assert_eq!(format!("{:.1} psi gauge", reading.in_::<psi_gauge>()), "14.0 psi gauge");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Compressed gas stores far more energy than liquid at the same pressure. Test a cold system, below the rating of its weakest component, and
/// stand clear. The maker's instructions and local codes come first.
#[inline]
pub fn pressure_decay_tight_pressure(
    gauge_pressure: GaugePressure,
    temperature: Temperature,
    later_temperature: Temperature,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        temperature: 233.15 <= .. <= 333.15 ; "above 60 °C the vapour of what is left wet adds to the gas";
        later_temperature: 233.15 <= .. <= 333.15 ; "above 60 °C the vapour of what is left wet adds to the gas";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let start = absolute(gauge_pressure, station_pressure);
    let later = AbsolutePressure::from_si(start.si() * later_temperature.si() / temperature.si());
    Ok(gauge(later, station_pressure))
}
