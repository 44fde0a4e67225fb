use crate::units::Length;
use crate::{Result, valid};

/// Effective radius of the earth (m); US Standard Atmosphere 1976.
const EARTH_RADIUS: f64 = 6_356_766.0;

/// Geopotential altitude of a height that was surveyed.
///
/// # Formula
/// `H = R z / (R + z)` with `R` = 6356.766 km
///
/// # Parameters
/// - `geometric_altitude` — `z`, height above mean sea level, as on a map
///
/// # Returns
/// The altitude at which the standard atmosphere is tabulated.
///
/// # Valid for
/// - `-5000 <= geometric_altitude <= 20000`
///
/// # Source
/// US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 18
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let altitude = air::geopotential_altitude(Length::of::<m>(4301.0))?;
/// assert_eq!(format!("{:.1} m", altitude.in_::<m>()), "4298.1 m");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn geopotential_altitude(geometric_altitude: Length) -> Result<Length> {
    valid! {
        geometric_altitude: (-5000) <= .. <= 20000 ; "the range of the standard atmosphere in this library";
    }
    let z = geometric_altitude.si();
    Ok(Length::from_si(EARTH_RADIUS * z / (EARTH_RADIUS + z)))
}

/// Height, as a survey or a map gives it, of a geopotential altitude.
///
/// # Formula
/// `z = R H / (R - H)` with `R` = 6356.766 km
///
/// # Parameters
/// - `geopotential_altitude` — `H`, altitude at which the standard atmosphere is tabulated
///
/// # Returns
/// The height above mean sea level, as on a map.
///
/// # Valid for
/// - `-5000 <= geopotential_altitude <= 20000`
///
/// # Source
/// US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 19
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let height = air::geometric_altitude(Length::of::<m>(4298.1))?;
/// assert_eq!(format!("{:.0} m", height.in_::<m>()), "4301 m");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn geometric_altitude(geopotential_altitude: Length) -> Result<Length> {
    valid! {
        geopotential_altitude: (-5000) <= .. <= 20000 ; "the range of the standard atmosphere in this library";
    }
    let altitude = geopotential_altitude.si();
    Ok(Length::from_si(EARTH_RADIUS * altitude / (EARTH_RADIUS - altitude)))
}
