use super::standard_atmosphere;
use crate::units::{Density, Length};
use crate::{Result, valid};

/// Altitude at which the standard atmosphere has the density of the air around.
///
/// # Formula
/// `H = 288.15 / 0.0065 (1 - (d / d_0)^(1 / (g / (R 0.0065) - 1)))` up to 11 km, then `H = 11000 + R 216.65 / g ln(d_11 / d)`
///
/// # Parameters
/// - `density` — `d`, density of the air as it is: from its pressure, temperature and moisture by `moist_density`
///
/// # Returns
/// The geopotential altitude of that density on an average day. A naturally aspirated engine makes power as if it were there.
///
/// # Valid for
/// - `0.0881 <= density <= 1.93`
///
/// # Source
/// US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a, 33b and 42, solved for the altitude
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let density = air::moist_density(
///     AbsolutePressure::of::<hPa_absolute>(843.07), Temperature::of::<degC>(30.0), AbsolutePressure::of::<hPa_absolute>(15.0),
/// )?;
/// let altitude = air::density_altitude(density)?; // a hot day at 5000 ft
/// assert_eq!(format!("{:.0} ft", altitude.in_::<ft>()), "8019 ft");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn density_altitude(density: Density) -> Result<Length> {
    valid! {
        density: 0.0881 <= .. <= 1.93 ; "US Standard Atmosphere 1976: from 20 km down to -5 km";
    }
    Ok(Length::from_si(standard_atmosphere::density_altitude(density.si())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::air::standard_density;
    use approx::assert_abs_diff_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(altitude in -4900.0f64..19_990.0) {
            let density = standard_density(Length::from_si(altitude)).unwrap();
            assert_abs_diff_eq!(density_altitude(density).unwrap().si(), altitude, epsilon = 1e-8);
        }
    }
}
