use super::melinder::Surface;
use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
use crate::units::{Ratio, SpecificHeat, Temperature};
use crate::{Result, valid};

/// Melinder (IIR 2010), as the open CoolProp library 8.0.0 carries it (J/(kg·K)).
const ETHYLENE: Surface = Surface {
    fraction: 0.308_462,
    temperature: 304.878,
    c0: [3_737.0, -1_799.0, -993.3, 2_610.0, 1_537.0, -16_180.0],
    c1: [2.93, 10.46, 3.516, -1.189, -42.72],
    c2: [-0.004_675, -0.041_47, 0.051_09, -0.164_3],
    c3: [-1.389e-5, 1.847e-5, -0.000_713_8],
};
/// Melinder (IIR 2010), as above.
const PROPYLENE: Surface = Surface {
    fraction: 0.307_031,
    temperature: 305.858_3,
    c0: [3_882.0, -1_304.0, -1_598.0, 353.9, 5_000.0, -4_959.0],
    c1: [2.699, 5.07, 0.953_4, 31.02, -71.35],
    c2: [-0.001_659, -0.004_752, 0.116_7, -0.295],
    c3: [-1.032e-5, 0.000_152_2, -0.000_487],
};

/// Specific heat of a mix of water and ethylene glycol.
///
/// # Formula
/// `c = sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j`, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 52.7 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The specific heat: heat per mass and temperature, at constant pressure.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 0.40 % of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 1.6 % less to 2.6 % more above 0 °C and up to 6.6 % more near -33 °C; a second fit
/// from Melinder's book lies within 0.9 %. Without glycol it is within 0.2 % of IAPWS-95.
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
/// let found = fluid::ethylene_glycol_specific_heat(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.2} kJ/(kg·K)", found.in_::<kJ_kgK>()), "3.58 kJ/(kg·K)");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_specific_heat(mass_fraction: Ratio, temperature: Temperature) -> Result<SpecificHeat> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = ethylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(SpecificHeat::from_si(ETHYLENE.at(mass_fraction.si(), temperature.si())))
}

/// Specific heat of a mix of water and propylene glycol.
///
/// # Formula
/// `c = sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j`, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 50.9 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The specific heat: heat per mass and temperature, at constant pressure.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 0.38 % of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give up to 0.8 % more; a second fit from Melinder's book reads up to 4.1 % more near -38 °C.
/// Without glycol it is within 0.1 % of IAPWS-95.
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
/// let found = fluid::propylene_glycol_specific_heat(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.2} kJ/(kg·K)", found.in_::<kJ_kgK>()), "3.76 kJ/(kg·K)");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_specific_heat(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<SpecificHeat> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = propylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(SpecificHeat::from_si(PROPYLENE.at(mass_fraction.si(), temperature.si())))
}
