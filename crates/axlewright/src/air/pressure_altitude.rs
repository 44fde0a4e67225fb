use super::standard_atmosphere;
use crate::units::{AbsolutePressure, Length};
use crate::{Result, valid};

/// Altitude at which the standard atmosphere has the pressure of the surrounding air.
///
/// # Formula
/// `H = 288.15 / 0.0065 (1 - (p / 101325)^(R 0.0065 / g))` up to 11 km, then `H = 11000 + R 216.65 / g ln(p_11 / p)`
///
/// # Parameters
/// - `station_pressure` — `p`, absolute pressure of the air as measured there, not reduced to sea level
///
/// # Returns
/// The geopotential altitude at which the standard atmosphere has that pressure; the place itself may lie at another height.
///
/// # Valid for
/// - `5475 <= station_pressure <= 177600`
///
/// # Source
/// US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a and 33b, solved for the altitude
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let altitude = air::pressure_altitude(AbsolutePressure::of::<inHg_absolute>(24.90))?;
/// assert_eq!(format!("{:.0} ft", altitude.in_::<ft>()), "4996 ft");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn pressure_altitude(station_pressure: AbsolutePressure) -> Result<Length> {
    valid! {
        station_pressure: 5475 <= .. <= 177600 ; "US Standard Atmosphere 1976: from 20 km down to -5 km";
    }
    Ok(Length::from_si(standard_atmosphere::pressure_altitude(station_pressure.si())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::air::standard_pressure;
    use approx::assert_abs_diff_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(altitude in -4900.0f64..19_990.0) {
            let pressure = standard_pressure(Length::from_si(altitude)).unwrap();
            assert_abs_diff_eq!(pressure_altitude(pressure).unwrap().si(), altitude, epsilon = 1e-8);
        }
    }
}
