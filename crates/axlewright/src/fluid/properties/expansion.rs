use super::density::{ETHYLENE, PROPYLENE};
use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
use crate::units::{Ratio, Temperature};
use crate::{Result, valid};

/// Growth in volume of a mix of water and ethylene glycol between two temperatures.
///
/// # Formula
/// `b = d(w, T_1) / d(w, T_2) - 1` with `d` of `ethylene_glycol_density`
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `temperature` — `T_1`, temperature at which the volume is known
/// - `later_temperature` — `T_2`, temperature at which the volume is wanted
///
/// # Returns
/// The growth over the first volume; negative if the mix shrinks.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
/// - `221.95 <= later_temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the density is carried on, to 125 °C and
/// 63 %: an extrapolation. Without glycol it gives from 20 °C to 125 °C 0.0635 and IAPWS-95 0.0631. Pressure is left out: 1 bar is 0.005 %. Without glycol the growth from 20 °C is within 0.0008 of IAPWS-95 up to 95 °C,
/// where it is 0.038. Near 4 °C, where the expansion of water changes sign, the sign of the result is not sure. The ASHRAE (2001) tables of inhibited coolant
/// from 20 % to 60 % by volume give up to 0.0046 less from 20 °C to 95 °C, where it is 0.041 to 0.05: the result errs to more growth.
///
/// # Source
/// Conservation of mass; density: Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010, as carried by the open CoolProp library 8.0.0
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let growth = fluid::ethylene_glycol_expansion(
///     Ratio::of::<percent>(50.0), Temperature::of::<degC>(20.0), Temperature::of::<degC>(95.0),
/// )?;
/// assert_eq!(format!("{:.2} %", growth.in_::<percent>()), "4.89 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A closed system that is full of liquid bursts when it warms: leave air for the growth, and never open a hot system.
#[inline]
pub fn ethylene_glycol_expansion(
    mass_fraction: Ratio,
    temperature: Temperature,
    later_temperature: Temperature,
) -> Result<Ratio> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
        later_temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = ethylene_glycol_freezing_temperature(mass_fraction)?;
    valid! {
        temperature > freezing_temperature ; "the data are of the liquid";
        later_temperature > freezing_temperature ; "the data are of the liquid";
    }
    let density = |temperature: Temperature| ETHYLENE.at(mass_fraction.si(), temperature.si());
    Ok(Ratio::from_si(density(temperature) / density(later_temperature) - 1.0))
}

/// Growth in volume of a mix of water and propylene glycol between two temperatures.
///
/// # Formula
/// `b = d(w, T_1) / d(w, T_2) - 1` with `d` of `propylene_glycol_density`
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
/// - `temperature` — `T_1`, temperature at which the volume is known
/// - `later_temperature` — `T_2`, temperature at which the volume is wanted
///
/// # Returns
/// The growth over the first volume; negative if the mix shrinks.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
/// - `223.15 <= later_temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the density is carried on, to 125 °C and
/// 63 %: an extrapolation. Without glycol it gives from 20 °C to 125 °C 0.0592 and IAPWS-95 0.0631: too little. Pressure is left out: 1 bar is 0.005 %. Without glycol the growth from 20 °C is within 0.0004 of IAPWS-95 up to 95 °C,
/// where it is 0.038. Near 4 °C, where the expansion of water changes sign, the sign of the result is not sure. The ASHRAE (2001) tables of inhibited coolant
/// from 20 % to 60 % by volume agree within 0.003 from 20 °C to 95 °C.
///
/// # Source
/// Conservation of mass; density: Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010, as carried by the open CoolProp library 8.0.0
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let growth = fluid::propylene_glycol_expansion(
///     Ratio::of::<percent>(50.0), Temperature::of::<degC>(20.0), Temperature::of::<degC>(95.0),
/// )?;
/// assert_eq!(format!("{:.2} %", growth.in_::<percent>()), "5.69 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A closed system that is full of liquid bursts when it warms: leave air for the growth, and never open a hot system.
#[inline]
pub fn propylene_glycol_expansion(
    mass_fraction: Ratio,
    temperature: Temperature,
    later_temperature: Temperature,
) -> Result<Ratio> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
        later_temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = propylene_glycol_freezing_temperature(mass_fraction)?;
    valid! {
        temperature > freezing_temperature ; "the data are of the liquid";
        later_temperature > freezing_temperature ; "the data are of the liquid";
    }
    let density = |temperature: Temperature| PROPYLENE.at(mass_fraction.si(), temperature.si());
    Ok(Ratio::from_si(density(temperature) / density(later_temperature) - 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn there_and_back_is_nothing(w in 0.0f64..=0.6, from in 274.0f64..373.0, to in 274.0f64..373.0) {
            let (w, from, to) = (Ratio::from_si(w), Temperature::from_si(from), Temperature::from_si(to));
            for growth in [ethylene_glycol_expansion, propylene_glycol_expansion] {
                let product = (1.0 + growth(w, from, to).unwrap().si()) * (1.0 + growth(w, to, from).unwrap().si());
                prop_assert!((product - 1.0).abs() < 1e-14);
            }
        }
    }
}
