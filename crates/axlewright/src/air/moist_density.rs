use super::standard_atmosphere::GAS;
use crate::units::{AbsolutePressure, Density, Temperature};
use crate::{Result, valid};

/// Specific gas constant of water vapour (J/(kg·K)): 8.314462618 J/(mol·K) over 0.01801528 kg/mol.
const VAPOUR_GAS: f64 = 8.314_462_618 / 0.018_015_28;

/// Density of moist air.
///
/// # Formula
/// `d = (p - e) / (R T) + e / (R_v T)` with `R` = 287.053 J/(kg·K) and `R_v` = 461.523 J/(kg·K)
///
/// # Parameters
/// - `station_pressure` — `p`, absolute pressure of the air as measured there, vapour included, not reduced to sea level
/// - `temperature` — `T`
/// - `vapour_pressure` — `e`, partial pressure of the water vapour: `fluid::water_saturation_pressure` at the dew point; 0 for dry air
///
/// # Returns
/// The mass of air and vapour over their volume; moist air is lighter than dry.
///
/// # Valid for
/// - `10000 <= station_pressure <= 200000`
/// - `200 <= temperature <= 400`
/// - `0 <= vapour_pressure <= 9000`
///
/// An ideal mixture: real air is denser by 0.03 % to 0.07 % near sea level. The vapour pressure must not exceed saturation at the
/// temperature; this is not checked. Mist is not counted.
///
/// # Source
/// Dalton's law and the ideal gas law; gas constants: US Standard Atmosphere 1976, CODATA 2018
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let vapour = AbsolutePressure::of::<kPa_absolute>(2.986); // at a dew point of 24 °C: `fluid::water_saturation_pressure`
/// let density = air::moist_density(AbsolutePressure::of::<kPa_absolute>(101.325), Temperature::of::<degC>(35.0), vapour)?;
/// assert_eq!(format!("{:.3} kg/m³", density.in_::<kg_m3>()), "1.133 kg/m³");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn moist_density(
    station_pressure: AbsolutePressure,
    temperature: Temperature,
    vapour_pressure: AbsolutePressure,
) -> Result<Density> {
    valid! {
        station_pressure: 10000 <= .. <= 200000 ; "range over which an ideal gas serves";
        temperature: 200 <= .. <= 400 ; "range over which an ideal gas serves";
        vapour_pressure: 0 <= .. <= 9000 ; "saturation at nearly 44 °C: no weather has such a dew point";
    }
    let (p, t, e) = (station_pressure.si(), temperature.si(), vapour_pressure.si());
    Ok(Density::from_si((p - e) / (GAS * t) + e / (VAPOUR_GAS * t)))
}
