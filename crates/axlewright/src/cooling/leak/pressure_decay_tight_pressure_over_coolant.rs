use crate::units::{AbsolutePressure, GaugePressure, Ratio, Temperature, Volume, absolute, gauge};
use crate::{Result, valid};

/// Reading of a tight system of coolant with air trapped above it, after a change of its temperature.
///
/// # Formula
/// `p_2 = (p_1 + p_a) T_2 / T_1 V_g / (V_g - b V) - p_a`
///
/// # Parameters
/// - `gauge_pressure` — `p_1`, reading at the start of the test
/// - `gas_volume` — `V_g`, volume of all the air trapped in the system and in the tester at the start
/// - `coolant_volume` — `V`, volume of the coolant at the start
/// - `coolant_expansion` — `b`, growth of the coolant over its volume: `fluid::ethylene_glycol_expansion` and its like; negative where it cooled
/// - `temperature` — `T_1`, temperature of the gas at the start
/// - `later_temperature` — `T_2`, temperature of the gas at the later reading
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The gauge reading that follows from the temperature alone; a lower reading shows a leak.
///
/// # Valid for
/// - `0 <= gauge_pressure <= 1000000`
/// - `0.000001 <= gas_volume <= 1000`
/// - `0 <= coolant_volume <= 1000`
/// - `-0.2 <= coolant_expansion <= 0.2`
/// - `233.15 <= temperature <= 313.15`
/// - `233.15 <= later_temperature <= 313.15`
/// - `40000 <= station_pressure <= 110000`
///
/// Ideal gas, rigid metal and hoses: real hoses expand and reduce the effect of the coolant, so a small fall does not prove a leak. The vapour counts
/// as gas: between 20 °C and 40 °C, the error of this is up to 5 kPa, below 20 °C less. If the growth of the coolant fills the space of the gas, the system is full
/// of liquid, its reading is not known, and the call is refused.
///
/// # Source
/// Ideal gas law and conservation of the coolant's mass
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{cooling, fluid, units::*};
/// let (start, later) = (Temperature::of::<degC>(25.0), Temperature::of::<degC>(15.0));
/// let reading = cooling::pressure_decay_tight_pressure_over_coolant(
///     GaugePressure::of::<psi_gauge>(15.0), Volume::of::<L>(1.0), Volume::of::<L>(11.0), Ratio::of::<percent>(-0.4),
///     start, later, AbsolutePressure::of::<atm_absolute>(1.0),
/// )?;
/// assert_eq!(format!("{:.1} psi gauge", reading.in_::<psi_gauge>()), "12.8 psi gauge");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Compressed gas stores far more energy than liquid at the same pressure. Test a cold system, below the rating of its weakest component, and
/// stand clear. The maker's instructions and local codes come first.
#[inline]
pub fn pressure_decay_tight_pressure_over_coolant(
    gauge_pressure: GaugePressure,
    gas_volume: Volume,
    coolant_volume: Volume,
    coolant_expansion: Ratio,
    temperature: Temperature,
    later_temperature: Temperature,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        gauge_pressure: 0 <= .. <= 1000000 ; "plausibility limit: no cooling or charge system is tested above 10 bar";
        gas_volume: 0.000001 <= .. <= 1000 ; "full of liquid the reading is not known; no vehicle holds 1000 m³ of gas";
        coolant_volume: 0 <= .. <= 1000 ; "plausibility limit: no vehicle carries 1000 m³ of coolant";
        coolant_expansion: (-0.2) <= .. <= 0.2 ; "no coolant grows by a fifth between -40 °C and 40 °C";
        temperature: 233.15 <= .. <= 313.15 ; "above 40 °C the vapour adds too much to the gas";
        later_temperature: 233.15 <= .. <= 313.15 ; "above 40 °C the vapour adds too much to the gas";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let coolant_growth = coolant_volume * coolant_expansion;
    valid! { gas_volume > coolant_growth ; "else the system is full of liquid, and its reading is not known"; }
    let squeezed = gas_volume / (gas_volume - coolant_growth);
    let start = absolute(gauge_pressure, station_pressure);
    let later = start.si() * later_temperature.si() / temperature.si() * squeezed.si();
    Ok(gauge(AbsolutePressure::from_si(later), station_pressure))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cooling::pressure_decay_tight_pressure;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn without_growth_it_is_the_gas_alone(p in 0.0f64..3e5, from in 240.0f64..313.0, to in 240.0f64..313.0) {
            let (p, air) = (GaugePressure::from_si(p), AbsolutePressure::from_si(1e5));
            let (from, to) = (Temperature::from_si(from), Temperature::from_si(to));
            let (gas, coolant) = (Volume::from_si(1e-3), Volume::from_si(1e-2));
            let over = pressure_decay_tight_pressure_over_coolant(p, gas, coolant, Ratio::from_si(0.0), from, to, air);
            prop_assert_eq!(over, pressure_decay_tight_pressure(p, from, to, air));
        }
    }
}
