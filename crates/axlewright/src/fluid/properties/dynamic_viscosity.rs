use super::melinder::Surface;
use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
use crate::units::{DynamicViscosity, Ratio, Temperature};
use crate::{Result, valid};

/// Melinder (IIR 2010), as the open CoolProp library 8.0.0 carries it (logarithm of Pa·s).
const ETHYLENE: Surface = Surface {
    fraction: 0.308_462,
    temperature: 304.878,
    c0: [-6.437_255, 2.471, 0.033_28, 1.659, 3.089, -18.65],
    c1: [-0.025_5, -0.011_71, 0.010_86, 0.003_157, 0.018_31],
    c2: [0.000_178_2, 0.000_105_2, 0.000_105_1, 0.000_406_3],
    c3: [-7.669e-7, -1.634e-6, -6.475e-6],
};
/// Melinder (IIR 2010), as above.
const PROPYLENE: Surface = Surface {
    fraction: 0.307_031,
    temperature: 305.858_3,
    c0: [-6.224_055, 3.328, 0.545_3, -3.9, -1.587, 35.64],
    c1: [-0.030_45, -0.039_84, -0.000_86, 0.105_4, 0.044_75],
    c2: [0.000_252_5, 0.000_433_2, -0.000_159_3, -0.001_589],
    c3: [-1.399e-6, -1.86e-6, -4.465e-7],
};

/// Dynamic viscosity of a mix of water and ethylene glycol.
///
/// # Formula
/// `mu = exp(sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j)` in Pa·s, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 52.7 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The dynamic viscosity: shear stress per velocity gradient.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 14 %, on the thin side, of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 13 % less to 4 % more above 0 °C and up to 19 % less near -33 °C; a second fit from
/// Melinder's book lies within 5 %. Without glycol it is within 1.8 % of the IAPWS formulation.
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
/// let found = fluid::ethylene_glycol_dynamic_viscosity(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.2} mPa·s", found.in_::<mPa_s>()), "0.97 mPa·s");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_dynamic_viscosity(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<DynamicViscosity> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = ethylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(DynamicViscosity::from_si(ETHYLENE.at(mass_fraction.si(), temperature.si()).exp()))
}

/// Dynamic viscosity of a mix of water and propylene glycol.
///
/// # Formula
/// `mu = exp(sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j)` in Pa·s, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 50.9 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The dynamic viscosity: shear stress per velocity gradient.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 11 %, on the thin side, of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 8 % less to 6 % more above 0 °C and up to 28 % less near -33 °C; a second fit from
/// Melinder's book reads up to 14 % more near -38 °C. Without glycol it is within 1.2 % of the IAPWS formulation.
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
/// let found = fluid::propylene_glycol_dynamic_viscosity(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.2} mPa·s", found.in_::<mPa_s>()), "1.09 mPa·s");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_dynamic_viscosity(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<DynamicViscosity> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = propylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(DynamicViscosity::from_si(PROPYLENE.at(mass_fraction.si(), temperature.si()).exp()))
}
