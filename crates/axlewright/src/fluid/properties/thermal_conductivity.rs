use super::melinder::Surface;
use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
use crate::units::{Ratio, Temperature, ThermalConductivity};
use crate::{Result, valid};

/// Melinder (IIR 2010), as the open CoolProp library 8.0.0 carries it (W/(m·K)).
const ETHYLENE: Surface = Surface {
    fraction: 0.308_462,
    temperature: 304.878,
    c0: [0.472, -0.428_6, 0.174_7, 0.030_17, -0.132_2, 0.267_8],
    c1: [0.000_890_3, -0.001_473, 0.000_681_4, -0.002_412, 0.002_555],
    c2: [-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5],
    c3: [-2.789e-9, -1.142e-8, 2.365e-8],
};
/// Melinder (IIR 2010), as above.
const PROPYLENE: Surface = Surface {
    fraction: 0.307_031,
    temperature: 305.858_3,
    c0: [0.451_3, -0.479_5, 0.207_6, -0.090_83, -0.059_52, 0.210_4],
    c1: [0.000_795_5, -0.001_678, 0.001_563, -0.002_518, -0.003_605],
    c2: [3.482e-8, 8.941e-6, -4.615e-5, 6.543e-5],
    c3: [-5.966e-9, 1.493e-8, 9.897e-8],
};

/// Thermal conductivity of a mix of water and ethylene glycol.
///
/// # Formula
/// `k = sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j`, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 52.7 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The thermal conductivity: heat flow per area and temperature gradient.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 0.4 % of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 3.2 % less to 0.8 % more above 0 °C and up to 6.0 % less near -33 °C; a second fit
/// from Melinder's book lies within 0.3 %. Without glycol it is within 0.9 % of the IAPWS formulation.
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
/// let found = fluid::ethylene_glycol_thermal_conductivity(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.3} W/(m·K)", found.in_::<W_mK>()), "0.426 W/(m·K)");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_thermal_conductivity(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<ThermalConductivity> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = ethylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(ThermalConductivity::from_si(ETHYLENE.at(mass_fraction.si(), temperature.si())))
}

/// Thermal conductivity of a mix of water and propylene glycol.
///
/// # Formula
/// `k = sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j`, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 50.9 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The thermal conductivity: heat flow per area and temperature gradient.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 0.4 % of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 4.0 % less to 2.1 % more; a second fit from Melinder's book lies within 0.5 %. Without
/// glycol it is within 0.9 % of the IAPWS formulation.
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
/// let found = fluid::propylene_glycol_thermal_conductivity(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.3} W/(m·K)", found.in_::<W_mK>()), "0.391 W/(m·K)");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_thermal_conductivity(
    mass_fraction: Ratio,
    temperature: Temperature,
) -> Result<ThermalConductivity> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = propylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(ThermalConductivity::from_si(PROPYLENE.at(mass_fraction.si(), temperature.si())))
}
