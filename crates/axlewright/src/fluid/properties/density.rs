use super::melinder::Surface;
use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
use crate::units::{Density, Ratio, Temperature};
use crate::{Result, valid};

/// Melinder (IIR 2010), as the open CoolProp library 8.0.0 carries it (kg/m³).
pub(super) const ETHYLENE: Surface = Surface {
    fraction: 0.308_462,
    temperature: 304.878,
    c0: [1_034.0, 131.1, 0.749, -106.2, -96.23, 489.1],
    c1: [-0.478_1, -0.687_6, 0.785_5, 1.229, -7.211],
    c2: [-0.002_692, 0.004_805, -0.003_995, -0.011_53],
    c3: [4.725e-6, 1.69e-6, 4.982e-5],
};
/// Melinder (IIR 2010), as above.
pub(super) const PROPYLENE: Surface = Surface {
    fraction: 0.307_031,
    temperature: 305.858_3,
    c0: [1_018.0, 76.04, -24.98, -155.0, -113.1, 234.2],
    c1: [-0.540_6, -0.945, 0.27, 2.829, -2.221],
    c2: [-0.002_666, 0.005_541, -0.004_018, -0.007_175],
    c3: [1.347e-5, -1.343e-5, 3.376e-5],
};

/// Density of a mix of water and ethylene glycol.
///
/// # Formula
/// `d = sum over i and j of c_ij (T - 304.878)^i (w - 0.308462)^j`, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 52.7 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The density: mass over volume.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `221.95 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 0.14 % of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 0.2 % to 1.1 % more above 0 °C and within 0.5 % below; a second fit from Melinder's book
/// lies within 0.2 %. Without glycol it is up to 0.1 % below IAPWS-95.
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
/// let found = fluid::ethylene_glycol_density(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.1} kg/m³", found.in_::<kg_m3>()), "1026.4 kg/m³");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_density(mass_fraction: Ratio, temperature: Temperature) -> Result<Density> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 221.95 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = ethylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(Density::from_si(ETHYLENE.at(mass_fraction.si(), temperature.si())))
}

/// Density of a mix of water and propylene glycol.
///
/// # Formula
/// `d = sum over i and j of c_ij (T - 305.8583)^i (w - 0.307031)^j`, i from 0 to 3, j from 0 to 5 - i
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 50.9 % by mass)
/// - `temperature` — `T`, temperature of the mix, above its freezing temperature
///
/// # Returns
/// The density: mass over volume.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
/// - `223.15 <= temperature <= 398.15`
///
/// Liquid only: a temperature at or below freezing is refused. Above 100 °C and above 60 % the data end, and the polynomial is
/// carried on, to 125 °C and 63 %: an extrapolation. Without glycol it is there within 0.38 % of IAPWS-95. Pure glycol, no inhibitors. From 20 % to 60 %, the ASHRAE (2001) tables of inhibited coolant,
/// converted from volume to mass, give from 0.1 % to 0.8 % more above 0 °C and within 0.6 % below; a second fit from Melinder's book
/// lies within 0.1 %. Without glycol it is within 0.1 % of IAPWS-95.
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
/// let found = fluid::propylene_glycol_density(Ratio::of::<percent>(50.0), Temperature::of::<degC>(80.0))?;
/// assert_eq!(format!("{:.1} kg/m³", found.in_::<kg_m3>()), "994.9 kg/m³");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_density(mass_fraction: Ratio, temperature: Temperature) -> Result<Density> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, carried on to 63 %: 60 % by volume of pure glycol";
        temperature: 223.15 <= .. <= 398.15 ; "Melinder (IIR 2010): from the freezing of the strongest mix to 100 °C, carried on to 125 °C";
    }
    let freezing_temperature = propylene_glycol_freezing_temperature(mass_fraction)?;
    valid! { temperature > freezing_temperature ; "the data are of the liquid"; }
    Ok(Density::from_si(PROPYLENE.at(mass_fraction.si(), temperature.si())))
}
