use crate::base::text::said;
use crate::units::{
    AbsolutePressure, GaugePressure, Ratio, Stress, Temperature, TemperatureDifference, absolute,
    temperature_difference,
};
use crate::{Result, cannot, fluid, valid};
use core::ops::RangeInclusive;

/// Pressure at the inlet of the pump.
#[inline]
fn inlet(
    header_pressure: GaugePressure,
    suction_loss: Stress,
    station_pressure: AbsolutePressure,
    boils: RangeInclusive<f64>,
) -> Result<AbsolutePressure> {
    let inlet =
        AbsolutePressure::from_si(absolute(header_pressure, station_pressure).si() - suction_loss.si());
    if boils.contains(&inlet.si()) {
        return Ok(inlet);
    }
    let (left, [least, most]) =
        (said(inlet), [boils.start(), boils.end()].map(|si| said(AbsolutePressure::from_si(*si))));
    Err(cannot!(
        suction_loss, header_pressure, station_pressure;
        "leaves {left} at the inlet, and the boiling of this coolant is known from {least} to {most}"
    ))
}

/// Pressures under which the boiling temperature of water is known (Pa): from its triple point to its critical point.
const WATER: RangeInclusive<f64> = 611.213..=22.064e6;
/// Pressures over which the mixture model was compared with others (Pa).
const MIX: RangeInclusive<f64> = 10e3..=500e3;

/// Boiling margin of water at the inlet of the pump, the place with the lowest pressure.
///
/// # Formula
/// `m = T_boiling(p_h + p_a - dp) - T`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the coolant at the inlet of the pump
/// - `header_pressure` — `p_h`, gauge pressure where the cap sits
/// - `suction_loss` — `dp`, fall of pressure from there to the inlet at the full speed of the pump, as measured; a head of coolant above the inlet counts against it
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The margin; negative where the coolant boils there, the pump cavitates and the flow breaks down.
///
/// # Valid for
/// - `233.15 <= temperature <= 523.15`
/// - `0 <= header_pressure <= 350000`
/// - `-50000 <= suction_loss <= 350000`
/// - `40000 <= station_pressure <= 110000`
///
/// Mean pressure and temperature: the vanes lower the pressure further, by what the pump's maker calls the net positive suction head, so that cavitation begins before
/// the margin is gone. The pressure left is at least that of the triple point, or the call is refused.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::water_boiling_temperature`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let margin = cooling::water_pump_inlet_margin(
///     Temperature::of::<degC>(105.0), GaugePressure::of::<kPa_gauge>(90.0), Stress::of::<kPa>(30.0), AbsolutePressure::of::<kPa_absolute>(100.0),
/// )?;
/// assert_eq!(format!("{:.1} K", margin.in_::<delta_K>()), "8.3 K");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. A pump that cavitates stops the flow, and the engine overheats within minutes.
#[inline]
pub fn water_pump_inlet_margin(
    temperature: Temperature,
    header_pressure: GaugePressure,
    suction_loss: Stress,
    station_pressure: AbsolutePressure,
) -> Result<TemperatureDifference> {
    valid! {
        temperature: 233.15 <= .. <= 523.15 ; "plausibility limit: coolant is used between -40 °C and 250 °C";
        header_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
        suction_loss: (-50000) <= .. <= 350000 ; "plausibility limit: no inlet lies 5 m below the header, and none loses more than the cap holds";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let inlet = inlet(header_pressure, suction_loss, station_pressure, WATER)?;
    Ok(temperature_difference(fluid::water_boiling_temperature(inlet)?, temperature))
}

/// Boiling margin of a mix of water and ethylene glycol at the inlet of the pump, the place with the lowest pressure.
///
/// # Formula
/// `m = T_boiling(w, p_h + p_a - dp) - T`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the coolant at the inlet of the pump
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `header_pressure` — `p_h`, gauge pressure where the cap sits
/// - `suction_loss` — `dp`, fall of pressure from there to the inlet at the full speed of the pump, as measured; a head of coolant above the inlet counts against it
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The margin; negative where the coolant boils there, the pump cavitates and the flow breaks down.
///
/// # Valid for
/// - `233.15 <= temperature <= 523.15`
/// - `0 <= mass_fraction <= 1`
/// - `0 <= header_pressure <= 350000`
/// - `-50000 <= suction_loss <= 350000`
/// - `40000 <= station_pressure <= 110000`
///
/// Mean pressure and temperature: the vanes lower the pressure further, by what the pump's maker calls the net positive suction head, so that cavitation begins before
/// the margin is gone. The pressure left is between 10 kPa and 500 kPa, or the call is refused.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::ethylene_glycol_boiling_temperature`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let margin = cooling::ethylene_glycol_pump_inlet_margin(
///     Temperature::of::<degC>(105.0), Ratio::of::<percent>(50.0), GaugePressure::of::<kPa_gauge>(90.0), Stress::of::<kPa>(30.0), AbsolutePressure::of::<kPa_absolute>(100.0),
/// )?;
/// assert_eq!(format!("{:.1} K", margin.in_::<delta_K>()), "16.0 K");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. A pump that cavitates stops the flow, and the engine overheats within minutes.
#[inline]
pub fn ethylene_glycol_pump_inlet_margin(
    temperature: Temperature,
    mass_fraction: Ratio,
    header_pressure: GaugePressure,
    suction_loss: Stress,
    station_pressure: AbsolutePressure,
) -> Result<TemperatureDifference> {
    valid! {
        temperature: 233.15 <= .. <= 523.15 ; "plausibility limit: coolant is used between -40 °C and 250 °C";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
        header_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
        suction_loss: (-50000) <= .. <= 350000 ; "plausibility limit: no inlet lies 5 m below the header, and none loses more than the cap holds";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let inlet = inlet(header_pressure, suction_loss, station_pressure, MIX)?;
    Ok(temperature_difference(fluid::ethylene_glycol_boiling_temperature(inlet, mass_fraction)?, temperature))
}

/// Boiling margin of a mix of water and propylene glycol at the inlet of the pump, the place with the lowest pressure.
///
/// # Formula
/// `m = T_boiling(w, p_h + p_a - dp) - T`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the coolant at the inlet of the pump
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `header_pressure` — `p_h`, gauge pressure where the cap sits
/// - `suction_loss` — `dp`, fall of pressure from there to the inlet at the full speed of the pump, as measured; a head of coolant above the inlet counts against it
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The margin; negative where the coolant boils there, the pump cavitates and the flow breaks down.
///
/// # Valid for
/// - `233.15 <= temperature <= 523.15`
/// - `0 <= mass_fraction <= 1`
/// - `0 <= header_pressure <= 350000`
/// - `-50000 <= suction_loss <= 350000`
/// - `40000 <= station_pressure <= 110000`
///
/// Mean pressure and temperature: the vanes lower the pressure further, by what the pump's maker calls the net positive suction head, so that cavitation begins before
/// the margin is gone. The pressure left is between 10 kPa and 500 kPa, or the call is refused.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::propylene_glycol_boiling_temperature`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let margin = cooling::propylene_glycol_pump_inlet_margin(
///     Temperature::of::<degC>(105.0), Ratio::of::<percent>(50.0), GaugePressure::of::<kPa_gauge>(90.0), Stress::of::<kPa>(30.0), AbsolutePressure::of::<kPa_absolute>(100.0),
/// )?;
/// assert_eq!(format!("{:.1} K", margin.in_::<delta_K>()), "14.6 K");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. A pump that cavitates stops the flow, and the engine overheats within minutes.
#[inline]
pub fn propylene_glycol_pump_inlet_margin(
    temperature: Temperature,
    mass_fraction: Ratio,
    header_pressure: GaugePressure,
    suction_loss: Stress,
    station_pressure: AbsolutePressure,
) -> Result<TemperatureDifference> {
    valid! {
        temperature: 233.15 <= .. <= 523.15 ; "plausibility limit: coolant is used between -40 °C and 250 °C";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
        header_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
        suction_loss: (-50000) <= .. <= 350000 ; "plausibility limit: no inlet lies 5 m below the header, and none loses more than the cap holds";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let inlet = inlet(header_pressure, suction_loss, station_pressure, MIX)?;
    Ok(temperature_difference(
        fluid::propylene_glycol_boiling_temperature(inlet, mass_fraction)?,
        temperature,
    ))
}
