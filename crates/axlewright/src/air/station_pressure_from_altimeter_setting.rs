use super::standard_atmosphere::{pressure, pressure_altitude};
use crate::units::{AbsolutePressure, Length};
use crate::{Result, valid};

/// Pressure of the air at a place, from the pressure that a weather report reduced to sea level.
///
/// # Formula
/// `p = p_ISA(H + H_ISA(q))`: an altimeter set to `q` shows `H` where the pressure is `p`. `p_ISA` is the pressure of the standard
/// atmosphere below 11 km (`air::standard_pressure`), `H_ISA(q) = 288.15 / 0.0065 (1 - (q / 101325)^(R 0.0065 / g))` its inverse
///
/// # Parameters
/// - `altimeter_setting` — `q`, pressure reduced to sea level by the standard atmosphere (QNH), as airfields report it
/// - `geopotential_altitude` — `H`, altitude of the place, above mean sea level
///
/// # Returns
/// The station pressure, on which caps, gauges and boiling depend.
///
/// # Valid for
/// - `80000 <= altimeter_setting <= 110000`
/// - `-500 <= geopotential_altitude <= 8000`
///
/// Not for a sea-level pressure that was reduced with the measured temperature. At 1500 m that one is off by about 0.06 % for each
/// kelvin between the day and the standard atmosphere. The US definition takes 0.3 hPa off the station pressure first (from memory);
/// the result is too low by that much there.
///
/// # Source
/// Definition of the altimeter setting QNH (ICAO Doc 8896; from memory) on the US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let reported = AbsolutePressure::of::<inHg_absolute>(30.10);
/// let pressure = air::station_pressure_from_altimeter_setting(reported, Length::of::<ft>(5000.0))?;
/// assert_eq!(format!("{:.2} psi absolute", pressure.in_::<psi_absolute>()), "12.30 psi absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn station_pressure_from_altimeter_setting(
    altimeter_setting: AbsolutePressure,
    geopotential_altitude: Length,
) -> Result<AbsolutePressure> {
    valid! {
        altimeter_setting: 80000 <= .. <= 110000 ; "sea-level pressures on record lie between 870 hPa and 1085 hPa, from memory";
        geopotential_altitude: (-500) <= .. <= 8000 ; "plausibility limit: no road lies outside, and all is below the tropopause";
    }
    Ok(AbsolutePressure::from_si(pressure(
        geopotential_altitude.si() + pressure_altitude(altimeter_setting.si()),
    )))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::air::standard_pressure;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn at_sea_level_it_is_the_setting(q in 8e4f64..1.1e5) {
            let there = station_pressure_from_altimeter_setting(AbsolutePressure::from_si(q), Length::from_si(0.0));
            prop_assert!((there.unwrap().si() / q - 1.0).abs() < 1e-14);
        }
        #[test]
        fn on_a_standard_day_it_is_the_standard_pressure(h in -500.0f64..8000.0) {
            let h = Length::from_si(h);
            let there = station_pressure_from_altimeter_setting(AbsolutePressure::from_si(101_325.0), h).unwrap();
            prop_assert_eq!(there, standard_pressure(h).unwrap());
        }
    }
}
