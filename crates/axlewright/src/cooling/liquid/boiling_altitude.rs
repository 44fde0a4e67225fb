use crate::base::text::said;
use crate::units::{AbsolutePressure, GaugePressure, Length, Ratio, Temperature};
use crate::{Error, Result, air, cannot, fluid, valid};

/// Height at which the air and the cap together hold the boiling pressure.
#[inline]
fn height(boiling_pressure: AbsolutePressure, cap_pressure: GaugePressure) -> Result<Length> {
    // The air of the standard atmosphere (Pa) at 20 km above sea level, which is 19.94 km of geopotential altitude, and at -5 km of that.
    const AIR: core::ops::RangeInclusive<f64> = 5530.0..=177_600.0;
    let air = boiling_pressure.si() - cap_pressure.si();
    if !AIR.contains(&air) {
        return Err(nowhere(air < *AIR.start(), boiling_pressure, cap_pressure));
    }
    air::geometric_altitude(air::pressure_altitude(AbsolutePressure::from_si(air))?)
}

#[cold]
fn nowhere(too_thin: bool, boiling_pressure: AbsolutePressure, cap_pressure: GaugePressure) -> Error {
    let boiling = said(boiling_pressure);
    let where_to =
        if too_thin { "does not boil anywhere up to 20 km" } else { "boils everywhere down to -5 km" };
    cannot!(cap_pressure; "has no height of boiling: a coolant that boils under {boiling} {where_to}")
}

/// Height above sea level from which on water begins to boil at a temperature, under a cap.
///
/// # Formula
/// `p_ISA(z) = p_w(T) - p_cap`, solved for `z`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the hottest coolant, plus the wanted margin
/// - `cap_pressure` — `p_cap`, gauge pressure that the cap holds; 0 without one
///
/// # Returns
/// The height on an average day, as on a map: above it the coolant boils, below it not. Negative where it boils at sea level already.
///
/// # Valid for
/// - `273.15 <= temperature <= 423.15`
/// - `0 <= cap_pressure <= 350000`
///
/// The standard atmosphere from -5 km to 20 km: where the coolant boils only higher up or not at all, or everywhere, the call is refused and says which.
/// A day of low pressure brings the height down by some 300 m.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::water_saturation_pressure`; air: US Standard Atmosphere 1976
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where there is no such height
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let height = cooling::water_boiling_altitude(
///     Temperature::of::<degC>(110.0), GaugePressure::of::<kPa_gauge>(70.0),
/// )?;
/// assert_eq!(format!("{:.0} m", height.in_::<m>()), "2641 m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. The pressure comes only once the system has built it, a cap counts with what it holds, and hot metal boils
/// coolant earlier than its mean temperature says: add a margin to the temperature.
#[inline]
pub fn water_boiling_altitude(temperature: Temperature, cap_pressure: GaugePressure) -> Result<Length> {
    valid! {
        temperature: 273.15 <= .. <= 423.15 ; "the same pressures as of the mixes: up to 500 kPa absolute";
        cap_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
    }
    height(fluid::water_saturation_pressure(temperature)?, cap_pressure)
}

/// Height above sea level from which on a mix of water and ethylene glycol begins to boil at a temperature, under a cap.
///
/// # Formula
/// `p_ISA(z) = x_w p_w(T) + x_g p_g(T) - p_cap` (Raoult), solved for `z`; `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`,
/// `M_g` = 62.06784 g/mol, `M_w` = 18.01528 g/mol; `p_w` and `p_g` as in `fluid::ethylene_glycol_boiling_pressure`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the hottest coolant, plus the wanted margin
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `cap_pressure` — `p_cap`, gauge pressure that the cap holds; 0 without one
///
/// # Returns
/// The height on an average day, as on a map: above it the coolant boils, below it not. Negative where it boils at sea level already.
///
/// # Valid for
/// - `273.15 <= temperature <= 533.15`
/// - `0 <= mass_fraction <= 1`
/// - `0 <= cap_pressure <= 350000`
///
/// As `fluid::ethylene_glycol_boiling_pressure`. The standard atmosphere from -5 km to 20 km: where the coolant boils only higher up or not at all, or everywhere, the call is refused and says which.
/// A day of low pressure brings the height down by some 300 m.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::ethylene_glycol_boiling_pressure`; air: US Standard Atmosphere 1976
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where there is no such height
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let height = cooling::ethylene_glycol_boiling_altitude(
///     Temperature::of::<degC>(116.0), Ratio::of::<percent>(50.0), GaugePressure::of::<kPa_gauge>(70.0),
/// )?;
/// assert_eq!(format!("{:.0} m", height.in_::<m>()), "3415 m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. The pressure comes only once the system has built it, a cap counts with what it holds, and hot metal boils
/// coolant earlier than its mean temperature says: add a margin to the temperature.
#[inline]
pub fn ethylene_glycol_boiling_altitude(
    temperature: Temperature,
    mass_fraction: Ratio,
    cap_pressure: GaugePressure,
) -> Result<Length> {
    valid! {
        temperature: 273.15 <= .. <= 533.15 ; "range of the boiling temperatures of the mixture model";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
        cap_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
    }
    height(fluid::ethylene_glycol_boiling_pressure(temperature, mass_fraction)?, cap_pressure)
}

/// Height above sea level from which on a mix of water and propylene glycol begins to boil at a temperature, under a cap.
///
/// # Formula
/// `p_ISA(z) = x_w p_w(T) + x_g p_g(T) - p_cap` (Raoult), solved for `z`; `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`,
/// `M_g` = 76.09442 g/mol, `M_w` = 18.01528 g/mol; `p_w` and `p_g` as in `fluid::propylene_glycol_boiling_pressure`
///
/// # Parameters
/// - `temperature` — `T`, temperature of the hottest coolant, plus the wanted margin
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `cap_pressure` — `p_cap`, gauge pressure that the cap holds; 0 without one
///
/// # Returns
/// The height on an average day, as on a map: above it the coolant boils, below it not. Negative where it boils at sea level already.
///
/// # Valid for
/// - `273.15 <= temperature <= 533.15`
/// - `0 <= mass_fraction <= 1`
/// - `0 <= cap_pressure <= 350000`
///
/// As `fluid::propylene_glycol_boiling_pressure`. The standard atmosphere from -5 km to 20 km: where the coolant boils only higher up or not at all, or everywhere, the call is refused and says which.
/// A day of low pressure brings the height down by some 300 m. Propylene glycol is less sure: activity models ask for 10 % to 18 % more pressure at 50 %, which brings it down by 1 km to 3 km.
///
/// # Source
/// Definition of a gauge pressure; boiling: `fluid::propylene_glycol_boiling_pressure`; air: US Standard Atmosphere 1976
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where there is no such height
///
/// # Example
/// ```
/// use axlewright::{cooling, units::*};
/// let height = cooling::propylene_glycol_boiling_altitude(
///     Temperature::of::<degC>(116.0), Ratio::of::<percent>(50.0), GaugePressure::of::<kPa_gauge>(70.0),
/// )?;
/// assert_eq!(format!("{:.0} m", height.in_::<m>()), "2728 m");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; the maker's instructions and
/// local codes come first. The pressure comes only once the system has built it, a cap counts with what it holds, and hot metal boils
/// coolant earlier than its mean temperature says: add a margin to the temperature.
#[inline]
pub fn propylene_glycol_boiling_altitude(
    temperature: Temperature,
    mass_fraction: Ratio,
    cap_pressure: GaugePressure,
) -> Result<Length> {
    valid! {
        temperature: 273.15 <= .. <= 533.15 ; "range of the boiling temperatures of the mixture model";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
        cap_pressure: 0 <= .. <= 350000 ; "plausibility limit: no cooling system is capped above 3.5 bar";
    }
    height(fluid::propylene_glycol_boiling_pressure(temperature, mass_fraction)?, cap_pressure)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cooling::{ethylene_glycol_cap_pressure, propylene_glycol_cap_pressure, water_cap_pressure};
    use crate::units::{degC, kPa_gauge};
    use proptest::prelude::*;

    #[test]
    fn where_there_is_no_height_the_refusal_says_why() {
        let at =
            |t, cap| water_boiling_altitude(Temperature::of::<degC>(t), GaugePressure::of::<kPa_gauge>(cap));
        let (never, always) =
            (at(100.0, 150.0).unwrap_err().to_string(), at(140.0, 0.0).unwrap_err().to_string());
        assert!(
            never.contains("cap_pressure = 150 kPa gauge") && never.contains("does not boil anywhere"),
            "{never}"
        );
        assert!(always.contains("boils everywhere"), "{always}");
    }

    /// Before: a height between 20 km and 20.06 km, which the functions of air refuse.
    #[test]
    fn a_height_is_one_that_the_standard_atmosphere_has() {
        let at = |air: f64| height(AbsolutePressure::from_si(air + 9e4), GaugePressure::from_si(9e4));
        for air in [5530.0, 101_325.0, 177_600.0] {
            let found = at(air).unwrap();
            let back = air::standard_pressure(air::geopotential_altitude(found).unwrap()).unwrap();
            assert!((back.si() - air).abs() < 1e-6, "{air}");
        }
        assert!(at(5529.0).unwrap_err().to_string().contains("does not boil anywhere up to 20 km"));
        assert!(at(177_700.0).unwrap_err().to_string().contains("boils everywhere down to -5 km"));
    }

    proptest! {
        #[test]
        fn the_cap_that_is_wanted_at_that_height_is_the_cap(t in 375.0f64..395.0, w in 0.0f64..0.6, cap in 3e4f64..9e4) {
            let (t, w, cap) = (Temperature::from_si(t), Ratio::from_si(w), GaugePressure::from_si(cap));
            let station = |z: Length| air::standard_pressure(air::geopotential_altitude(z).unwrap()).unwrap();
            let back = [
                water_boiling_altitude(t, cap).ok().map(|z| water_cap_pressure(t, station(z))),
                ethylene_glycol_boiling_altitude(t, w, cap).ok().map(|z| ethylene_glycol_cap_pressure(t, w, station(z))),
                propylene_glycol_boiling_altitude(t, w, cap).ok().map(|z| propylene_glycol_cap_pressure(t, w, station(z))),
            ];
            for wanted in back.into_iter().flatten().flatten() {
                prop_assert!((wanted.si() - cap.si()).abs() < 1e-6);
            }
        }
    }
}
