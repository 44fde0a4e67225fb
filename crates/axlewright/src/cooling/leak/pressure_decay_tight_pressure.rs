use crate::units::{AbsolutePressure, GaugePressure, Temperature, absolute, gauge};
use crate::{Result, valid};

/// Reading of a tight system full of gas after a change of its temperature.
///
/// # Formula
/// `p_2 = (p_1 + p_a) T_2 / T_1 - p_a`
///
/// # Parameters
/// - `gauge_pressure` — `p_1`, reading at the start of the test
/// - `temperature` — `T_1`, of the gas at the start
/// - `later_temperature` — `T_2`, of the gas when it is read again
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The gauge reading that temperature alone accounts for; what is below it has leaked.
///
/// # Valid for
/// - `0 <= gauge_pressure <= 1000000`
/// - `233.15 <= temperature <= 333.15`
/// - `233.15 <= later_temperature <= 333.15`
/// - `40000 <= station_pressure <= 110000`
///
/// Gas trapped in a constant volume, dry, and the air around as before: the reading falls by as much as the barometer rises.
/// Real air differs by about 0.05 % of the absolute pressure. **Not for a system that is full of liquid**, whose pressure
/// follows the expansion of liquid, hoses and metal, nor for gas above coolant whose level moves: there the expected reading is
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
/// Compressed gas stores far more energy than liquid at the same pressure: test below the rating of the weakest component, cold, and
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
