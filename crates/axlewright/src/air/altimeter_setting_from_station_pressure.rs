use super::standard_atmosphere::{pressure, pressure_altitude};
use crate::base::text::said;
use crate::units::{AbsolutePressure, Length};
use crate::{Result, cannot, valid};

/// Pressure reduced to sea level, as a weather report would give it, from the pressure of the air at a place.
///
/// # Formula
/// `q = p_ISA(H_ISA(p) - H)`: the standard atmosphere followed down from the place to sea level; `p_ISA` is `air::standard_pressure` and `H_ISA` its
/// inverse `air::pressure_altitude`
///
/// # Parameters
/// - `station_pressure` — `p`, absolute pressure of the air as measured there
/// - `geopotential_altitude` — `H`, altitude of the place, above mean sea level
///
/// # Returns
/// The altimeter setting (QNH), for comparing a workshop's barometer with an airfield's report. Caps, gauges and boiling depend on the station pressure instead.
///
/// # Valid for
/// - `25000 <= station_pressure <= 120000`
/// - `-500 <= geopotential_altitude <= 8000`
///
/// The inverse of `station_pressure_from_altimeter_setting`, with its limits. A result outside 80 kPa to 110 kPa is refused: the two arguments then belong
/// to different places. The US definition takes 0.3 hPa off the station pressure first (from memory).
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
/// let barometer = AbsolutePressure::of::<hPa_absolute>(840.0);
/// let setting = air::altimeter_setting_from_station_pressure(barometer, Length::of::<ft>(5000.0))?;
/// assert_eq!(format!("{:.1} hPa absolute", setting.in_::<hPa_absolute>()), "1009.7 hPa absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn altimeter_setting_from_station_pressure(
    station_pressure: AbsolutePressure,
    geopotential_altitude: Length,
) -> Result<AbsolutePressure> {
    valid! {
        station_pressure: 25000 <= .. <= 120000 ; "the station pressures that the limits of the altimeter setting and of the altitude allow";
        geopotential_altitude: (-500) <= .. <= 8000 ; "plausibility limit: no road lies outside, and all is below the tropopause";
    }
    let altimeter_setting = AbsolutePressure::from_si(pressure(
        pressure_altitude(station_pressure.si()) - geopotential_altitude.si(),
    ));
    if !(80e3..=110e3).contains(&altimeter_setting.si()) {
        let at_sea_level = said(altimeter_setting);
        return Err(cannot!(
            station_pressure, geopotential_altitude;
            "gives {at_sea_level} at sea level, where 870 hPa to 1085 hPa are on record, from memory: they belong to two places"
        ));
    }
    Ok(altimeter_setting)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::air::station_pressure_from_altimeter_setting;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(q in 8.001e4f64..1.099e5, h in -500.0f64..8000.0) {
            let (setting, place) = (AbsolutePressure::from_si(q), Length::from_si(h));
            let there = station_pressure_from_altimeter_setting(setting, place).unwrap();
            assert_relative_eq!(altimeter_setting_from_station_pressure(there, place).unwrap().si(), q, max_relative = 1e-12);
        }
    }
}
