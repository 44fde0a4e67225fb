use crate::units::{AbsolutePressure, Density, Length, STANDARD_GRAVITY};
use crate::{Result, valid};

/// Constants of the US Standard Atmosphere 1976. ISO 2533:1975 differs only in that it rounds the gas constant to 287.05287.
const SEA_LEVEL_TEMPERATURE: f64 = 288.15;
const SEA_LEVEL_PRESSURE: f64 = 101_325.0;
const LAPSE: f64 = 0.0065;
const TROPOPAUSE: f64 = 11_000.0;
/// Specific gas constant of dry air, 8314.32 / 28.9644 J/(kg·K).
pub(super) const GAS: f64 = 8314.32 / 28.9644;

#[inline(always)]
fn temperature(altitude: f64) -> f64 {
    SEA_LEVEL_TEMPERATURE - LAPSE * altitude.min(TROPOPAUSE)
}

#[inline(always)]
pub(super) fn pressure(altitude: f64) -> f64 {
    let cooled = temperature(altitude);
    let exponent = STANDARD_GRAVITY / (GAS * LAPSE);
    let below = SEA_LEVEL_PRESSURE * (cooled / SEA_LEVEL_TEMPERATURE).powf(exponent);
    let above = altitude - TROPOPAUSE;
    if above > 0.0 { below * (-STANDARD_GRAVITY * above / (GAS * cooled)).exp() } else { below }
}

/// Altitude (m) at which the standard atmosphere has this pressure (Pa).
#[inline(always)]
pub(super) fn pressure_altitude(of: f64) -> f64 {
    let below = SEA_LEVEL_TEMPERATURE / LAPSE
        * (1.0 - (of / SEA_LEVEL_PRESSURE).powf(GAS * LAPSE / STANDARD_GRAVITY));
    if below > TROPOPAUSE {
        let cold = temperature(TROPOPAUSE);
        TROPOPAUSE + GAS * cold / STANDARD_GRAVITY * (pressure(TROPOPAUSE) / of).ln()
    } else {
        below
    }
}

/// Altitude (m) at which the standard atmosphere has this density (kg/m³).
#[inline(always)]
pub(super) fn density_altitude(of: f64) -> f64 {
    let sea_level = SEA_LEVEL_PRESSURE / (GAS * SEA_LEVEL_TEMPERATURE);
    let exponent = STANDARD_GRAVITY / (GAS * LAPSE) - 1.0;
    let below = SEA_LEVEL_TEMPERATURE / LAPSE * (1.0 - (of / sea_level).powf(1.0 / exponent));
    if below > TROPOPAUSE {
        let cold = GAS * temperature(TROPOPAUSE);
        TROPOPAUSE + cold / STANDARD_GRAVITY * (pressure(TROPOPAUSE) / (cold * of)).ln()
    } else {
        below
    }
}

/// Pressure of the standard atmosphere: the station pressure of an average day.
///
/// # Formula
/// `p = 101325 (1 - 0.0065 H / 288.15)^(g / (R 0.0065))` up to 11 km, then `p = p_11 exp(-g (H - 11000) / (R 216.65))`
///
/// # Parameters
/// - `geopotential_altitude` — `H`, above mean sea level
///
/// # Returns
/// The absolute pressure at that altitude, not the one that a weather report reduces to sea level.
///
/// # Valid for
/// - `-5000 <= geopotential_altitude <= 20000`
///
/// Weather changes the real station pressure by some 3 % around it.
///
/// # Source
/// US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 33a and 33b; ISO 2533:1975 gives the same within 3e-6 (it rounds the gas constant)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let pressure = air::standard_pressure(Length::of::<ft>(5000.0))?;
/// assert_eq!(format!("{:.2} psi absolute", pressure.in_::<psi_absolute>()), "12.23 psi absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn standard_pressure(geopotential_altitude: Length) -> Result<AbsolutePressure> {
    valid! {
        geopotential_altitude: (-5000) <= .. <= 20000 ; "US Standard Atmosphere 1976: its tables begin at -5 km; second layer ends at 20 km";
    }
    Ok(AbsolutePressure::from_si(pressure(geopotential_altitude.si())))
}

/// Density of the standard atmosphere.
///
/// # Formula
/// `d = p / (R T)` with `T = 288.15 - 0.0065 H` up to 11 km and 216.65 K above
///
/// # Parameters
/// - `geopotential_altitude` — `H`, above mean sea level
///
/// # Returns
/// The density of dry air at that altitude.
///
/// # Valid for
/// - `-5000 <= geopotential_altitude <= 20000`
///
/// # Source
/// US Standard Atmosphere 1976 (NASA-TM-X-74335), eq. 42; ISO 2533:1975 gives the same within 3e-6 (it rounds the gas constant)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{air, units::*};
/// let density = air::standard_density(Length::of::<m>(0.0))?;
/// assert_eq!(format!("{:.3} kg/m³", density.in_::<kg_m3>()), "1.225 kg/m³");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn standard_density(geopotential_altitude: Length) -> Result<Density> {
    valid! {
        geopotential_altitude: (-5000) <= .. <= 20000 ; "US Standard Atmosphere 1976: its tables begin at -5 km; second layer ends at 20 km";
    }
    let altitude = geopotential_altitude.si();
    Ok(Density::from_si(pressure(altitude) / (GAS * temperature(altitude))))
}
