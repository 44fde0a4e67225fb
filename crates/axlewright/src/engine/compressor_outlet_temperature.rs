use crate::units::{Ratio, Temperature};
use crate::{Result, valid};

/// Exponent `(g - 1) / g` of air with the ratio of specific heats `g = 1.4`.
const EXPONENT: f64 = 2.0 / 7.0;

/// Temperature of the charge at the outlet of a compressor.
///
/// # Formula
/// `T_2 = T_1 (1 + (R^((g - 1) / g) - 1) / e)`, `g = 1.4`
///
/// # Parameters
/// - `inlet_temperature` — `T_1`, temperature of the air before the compressor
/// - `pressure_ratio` — `R`, absolute pressure behind the compressor over absolute pressure before it
/// - `isentropic_efficiency` — `e`, ideal temperature rise over real temperature rise, read from the compressor's map
///
/// # Returns
/// The temperature before a charge cooler.
///
/// # Valid for
/// - `150 <= inlet_temperature <= 500`
/// - `1 <= pressure_ratio <= 10`
/// - `0.1 <= isentropic_efficiency <= 1`
///
/// Dry air as a perfect gas with a constant ratio of specific heats of 1.4, no heat lost through the housing. Real specific heats rise with temperature: at a ratio
/// of 8 from 300 K the ideal rise is 3 K to 4 K less.
///
/// # Source
/// Isentropic compression and isentropic efficiency: Çengel and Boles, Thermodynamics, ch. 7 (from memory); g = 1.4: NACA Report 1135 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{engine, units::*};
/// let outlet = engine::compressor_outlet_temperature(Temperature::of::<degC>(25.0), Ratio::of::<one>(2.5), Ratio::of::<percent>(70.0))?;
/// assert_eq!(format!("{:.0} °C", outlet.in_::<degC>()), "152 °C");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Charge pipes and hoses reach this temperature: they burn skin, and a hose must be rated for temperature and pressure together.
#[inline]
pub fn compressor_outlet_temperature(
    inlet_temperature: Temperature,
    pressure_ratio: Ratio,
    isentropic_efficiency: Ratio,
) -> Result<Temperature> {
    valid! {
        inlet_temperature: 150 <= .. <= 500 ; "outside 150 K to 500 K air is no perfect gas of these specific heats";
        pressure_ratio: 1 <= .. <= 10 ; "definition: a compressor raises the pressure; plausibility limit: one stage of a vehicle stays below 10";
        isentropic_efficiency: 0.1 <= .. <= 1 ; "second law: at most 1; plausibility limit: below 0.1 it is no compressor";
    }
    let ideal_rise = pressure_ratio.si().powf(EXPONENT) - 1.0;
    Ok(Temperature::from_si(inlet_temperature.si() * (1.0 + ideal_rise / isentropic_efficiency.si())))
}
