use crate::units::{AbsolutePressure, GaugePressure, Ratio, Temperature};
use crate::{Result, air, fluid, valid};

/// Least cap pressure under which water does not boil at a temperature.
///
/// # Formula
/// `p_cap = p_w(T) - p_a` with `p_w` of IAPWS-IF97 region 4
///
/// # Parameters
/// - `temperature` — `T`, temperature of the hottest coolant, plus the wanted margin
/// - `station_pressure` — `p_a`, absolute pressure of the air as measured there, not reduced to sea level
///
/// # Returns
/// The gauge pressure that the cap must hold. Negative where there is no boiling even without a cap.
///
/// # Valid for
/// - `273.15 <= temperature <= 423.15`
/// - `40000 <= station_pressure <= 110000`
///
/// Pure water.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::water_saturation_pressure`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let cap = cooling::water_cap_pressure(Temperature::of::<degF>(250.0), AbsolutePressure::of::<atm_absolute>(1.0))?;
/// assert_eq!(format!("{:.1} psi gauge", cap.in_::<psi_gauge>()), "15.1 psi gauge");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. The pressure comes only once the system has built it, a cap counts with what it holds, and hot metal boils
/// coolant earlier than its mean temperature says: add a margin to the temperature.
#[inline]
pub fn water_cap_pressure(
    temperature: Temperature,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        temperature: 273.15 <= .. <= 423.15 ; "the same pressures as of the mixes: up to 500 kPa absolute";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    air::gauge_pressure(fluid::water_saturation_pressure(temperature)?, station_pressure)
}

/// Least cap pressure under which a mix of water and ethylene glycol does not boil at a temperature.
///
/// # Formula
/// `p_cap = x_w p_w(T) + x_g p_g(T) - p_a` (Raoult), `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`,
/// `M_g` = 62.06784 g/mol, `M_w` = 18.01528 g/mol; `p_w` and `p_g` as in `fluid::ethylene_glycol_boiling_pressure`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the hottest coolant, plus the wanted margin
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `station_pressure` — `p_a`, absolute pressure of the air as measured there, not reduced to sea level
///
/// # Returns
/// The gauge pressure that the cap must hold. Negative where there is no boiling even without a cap.
///
/// # Valid for
/// - `273.15 <= temperature <= 533.15`
/// - `0 <= mass_fraction <= 1`
/// - `40000 <= station_pressure <= 110000`
///
/// As `fluid::ethylene_glycol_boiling_pressure`, which refuses less than 10 kPa and more than 500 kPa absolute.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::ethylene_glycol_boiling_pressure`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let cap = cooling::ethylene_glycol_cap_pressure(
///     Temperature::of::<degF>(260.0), Ratio::of::<percent>(50.0), AbsolutePressure::of::<atm_absolute>(1.0),
/// )?;
/// assert_eq!(format!("{:.1} psi gauge", cap.in_::<psi_gauge>()), "13.0 psi gauge");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. The pressure comes only once the system has built it, a cap counts with what it holds, and hot metal boils
/// coolant earlier than its mean temperature says: add a margin to the temperature.
#[inline]
pub fn ethylene_glycol_cap_pressure(
    temperature: Temperature,
    mass_fraction: Ratio,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        temperature: 273.15 <= .. <= 533.15 ; "range of the boiling temperatures of the mixture model";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    air::gauge_pressure(
        fluid::ethylene_glycol_boiling_pressure(temperature, mass_fraction)?,
        station_pressure,
    )
}

/// Least cap pressure under which a mix of water and propylene glycol does not boil at a temperature.
///
/// # Formula
/// `p_cap = x_w p_w(T) + x_g p_g(T) - p_a` (Raoult), `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`,
/// `M_g` = 76.09442 g/mol, `M_w` = 18.01528 g/mol; `p_w` and `p_g` as in `fluid::propylene_glycol_boiling_pressure`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the hottest coolant, plus the wanted margin
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `station_pressure` — `p_a`, absolute pressure of the air as measured there, not reduced to sea level
///
/// # Returns
/// The gauge pressure that the cap must hold. Negative where there is no boiling even without a cap.
///
/// # Valid for
/// - `273.15 <= temperature <= 533.15`
/// - `0 <= mass_fraction <= 1`
/// - `40000 <= station_pressure <= 110000`
///
/// As `fluid::propylene_glycol_boiling_pressure`, which refuses less than 10 kPa and more than 500 kPa absolute. Propylene
/// glycol is less sure: activity models ask for 10 % to 18 % more absolute pressure at 50 %, and a cap chosen without that
/// margin may be too weak.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::propylene_glycol_boiling_pressure`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let cap = cooling::propylene_glycol_cap_pressure(
///     Temperature::of::<degF>(260.0), Ratio::of::<percent>(50.0), AbsolutePressure::of::<atm_absolute>(1.0),
/// )?;
/// assert_eq!(format!("{:.1} psi gauge", cap.in_::<psi_gauge>()), "14.3 psi gauge");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. The pressure comes only once the system has built it, a cap counts with what it holds, and hot metal boils
/// coolant earlier than its mean temperature says: add a margin to the temperature.
#[inline]
pub fn propylene_glycol_cap_pressure(
    temperature: Temperature,
    mass_fraction: Ratio,
    station_pressure: AbsolutePressure,
) -> Result<GaugePressure> {
    valid! {
        temperature: 273.15 <= .. <= 533.15 ; "range of the boiling temperatures of the mixture model";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
        station_pressure: 40000 <= .. <= 110000 ; "plausibility limit: roads lie between -400 m and 6000 m";
    }
    air::gauge_pressure(
        fluid::propylene_glycol_boiling_pressure(temperature, mass_fraction)?,
        station_pressure,
    )
}
