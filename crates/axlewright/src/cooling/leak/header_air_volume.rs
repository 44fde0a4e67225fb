use crate::units::{AbsolutePressure, GaugePressure, Temperature, Volume, absolute};
use crate::{Result, cannot, valid};

/// Air that a closed header tank needs above the cold coolant, so that the cap stays shut when the coolant has grown.
///
/// # Formula
/// `V_a = V_e p_d / (p_d - p_1 T_2 / T_1)` with `p_d = p_cap + p_a - p_v` and `p_1 = p_fill + p_a`
///
/// # Parameters
/// - `expansion_volume` — `V_e`, growth of the coolant: `ethylene_glycol_expansion_volume` or `propylene_glycol_expansion_volume`
/// - `fill_pressure` — `p_fill`, gauge pressure in the tank when it was closed cold; 0 where it was open
/// - `cap_pressure` — `p_cap`, gauge pressure at which the cap opens, its lower limit
/// - `vapour_pressure` — `p_v`, vapour pressure of the hot coolant in the tank: `fluid::ethylene_glycol_boiling_pressure` and its like
/// - `fill_temperature` — `T_1`, temperature of the air when the tank was closed
/// - `air_temperature` — `T_2`, temperature of the air above the hot coolant
/// - `station_pressure` — `p_a`, absolute pressure of the air around, as measured there, not reduced to sea level
///
/// # Returns
/// The air space, cold; the tank holds it and the coolant that is wanted in it besides.
///
/// # Valid for
/// - `0 <= expansion_volume <= 1000`
/// - `0 <= fill_pressure <= 350000`
/// - `0 <= cap_pressure <= 350000`
/// - `0 <= vapour_pressure <= 500000`
/// - `223.15 <= fill_temperature <= 373.15`
/// - `223.15 <= air_temperature <= 423.15`
/// - `40000 <= station_pressure <= 110000`
///
/// A closed tank of constant size, air that neither leaks nor dissolves; the vapour that the cold air holds is counted as air, which errs to more. Where
/// warm air and vapour alone open the cap no volume is enough, and the call is refused. A system with an overflow bottle works otherwise: there
/// the bottle takes up the growth.
///
/// # Source
/// Ideal gas law and Dalton's law
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let air = cooling::header_air_volume(
///     Volume::of::<L>(0.5), GaugePressure::of::<kPa_gauge>(0.0), GaugePressure::of::<bar_gauge>(1.0), AbsolutePressure::of::<kPa_absolute>(70.0),
///     Temperature::of::<degC>(20.0), Temperature::of::<degC>(80.0), AbsolutePressure::of::<atm_absolute>(1.0),
/// )?;
/// assert_eq!(format!("{:.1} L", air.in_::<L>()), "7.1 L");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. A tank without enough air throws coolant out hot, and is short of it when cold.
#[inline]
pub fn header_air_volume(
    expansion_volume: Volume,
    fill_pressure: GaugePressure,
    cap_pressure: GaugePressure,
    vapour_pressure: AbsolutePressure,
    fill_temperature: Temperature,
    air_temperature: Temperature,
    station_pressure: AbsolutePressure,
) -> Result<Volume> {
    valid! {
        expansion_volume: 0 <= .. <= 1000 ; "plausibility limit: no vehicle carries 1000 m³ of coolant";
        fill_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
        cap_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
        vapour_pressure: 0 <= .. <= 500000 ; "range over which the mixture model was compared with others";
        fill_temperature: 223.15 <= .. <= 373.15 ; "plausibility limit: vehicles are filled between -50 °C and 100 °C";
        air_temperature: 223.15 <= .. <= 423.15 ; "plausibility limit: coolant is used between -50 °C and 150 °C";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    let cap = absolute(cap_pressure, station_pressure).si() - vapour_pressure.si();
    let warmed =
        absolute(fill_pressure, station_pressure).si() * air_temperature.si() / fill_temperature.si();
    if cap <= warmed {
        return Err(cannot!(
            cap_pressure, fill_pressure, vapour_pressure, fill_temperature, air_temperature, station_pressure;
            "is opened by warm air and vapour alone, and no volume is enough"
        ));
    }
    Ok(expansion_volume * (cap / (cap - warmed)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn compressed_by_the_growth_the_air_reaches_the_cap(growth in 1e-4f64..2e-3, cap in 3e4f64..2e5, vapour in 0.0f64..2e4, hot in 290.0f64..340.0) {
            let (fill, air) = (GaugePressure::from_si(0.0), AbsolutePressure::from_si(1e5));
            let wanted = header_air_volume(
                Volume::from_si(growth), fill, GaugePressure::from_si(cap), AbsolutePressure::from_si(vapour),
                Temperature::from_si(290.0), Temperature::from_si(hot), air,
            );
            if let Ok(volume) = wanted {
                let squeezed = 1e5 * hot / 290.0 * volume.si() / (volume.si() - growth) + vapour;
                prop_assert!((squeezed / (cap + 1e5) - 1.0).abs() < 1e-9);
            }
        }
    }
}
