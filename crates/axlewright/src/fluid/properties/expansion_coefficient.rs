use super::density::{ETHYLENE, PROPYLENE};
use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
use crate::units::{Ratio, Temperature, ThermalExpansion};
use crate::{Result, valid};

/// Thermal expansion coefficient, by volume, of a mix of water and ethylene glycol.
///
/// # Formula
/// `a = -(1 / d(w, T)) (partial d(w, T) / partial T)` with `d` of `ethylene_glycol_density`, differentiated term by term
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The growth in volume per volume and kelvin at that temperature. It rises with temperature; over a range use `ethylene_glycol_expansion`.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
///
/// Liquid only, as `ethylene_glycol_density`. The derivative of a fit is less sure than the fit. Without glycol, between 20 °C and 95 °C, it is within
/// 30 ppm/K of IAPWS-95. Near 4 °C, where the expansion of water changes sign, not even the sign is sure. The ASHRAE (2001)
/// tables of inhibited coolant lie within 100 ppm/K from 40 °C to 95 °C.
///
/// # Source
/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; coefficients as carried by the open CoolProp library 8.0.0
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let found = fluid::ethylene_glycol_expansion_coefficient(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.0} ppm/K", found.in_::<ppm_K>()), "708 ppm/K");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_expansion_coefficient(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<ThermalExpansion> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = ethylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    let (w, t) = (mass_fraction.si(), temperature.si());
    Ok(ThermalExpansion::from_si(-ETHYLENE.slope(w, t) / ETHYLENE.at(w, t)))
}

/// Thermal expansion coefficient, by volume, of a mix of water and propylene glycol.
///
/// # Formula
/// `a = -(1 / d(w, T)) (partial d(w, T) / partial T)` with `d` of `propylene_glycol_density`, differentiated term by term
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The growth in volume per volume and kelvin at that temperature. It rises with temperature; over a range use `propylene_glycol_expansion`.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
///
/// Liquid only, as `propylene_glycol_density`. The derivative of a fit is less sure than the fit. Without glycol, between 20 °C and 95 °C, it is within
/// 50 ppm/K of IAPWS-95. Near 4 °C, where the expansion of water changes sign, not even the sign is sure. The ASHRAE (2001)
/// tables of inhibited coolant lie within 80 ppm/K from 40 °C to 80 °C and up to 180 ppm/K higher at 95 °C.
///
/// # Source
/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; coefficients as carried by the open CoolProp library 8.0.0
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let found = fluid::propylene_glycol_expansion_coefficient(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.0} ppm/K", found.in_::<ppm_K>()), "788 ppm/K");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_expansion_coefficient(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<ThermalExpansion> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = propylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    let (w, t) = (mass_fraction.si(), temperature.si());
    Ok(ThermalExpansion::from_si(-PROPYLENE.slope(w, t) / PROPYLENE.at(w, t)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluid::{ethylene_glycol_expansion, propylene_glycol_expansion};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_is_the_growth_over_a_small_step(w in 0.0f64..=0.6, t in 275.0f64..372.0) {
            let (w, from, to) = (Ratio::from_si(w), Temperature::from_si(t - 0.5), Temperature::from_si(t + 0.5));
            let t = Temperature::from_si(t);
            let ethylene = ethylene_glycol_expansion(w, from, to).unwrap().si();
            let propylene = propylene_glycol_expansion(w, from, to).unwrap().si();
            prop_assert!((ethylene - ethylene_glycol_expansion_coefficient(w, t).unwrap().si()).abs() < 5e-6);
            prop_assert!((propylene - propylene_glycol_expansion_coefficient(w, t).unwrap().si()).abs() < 5e-6);
        }
    }
}
