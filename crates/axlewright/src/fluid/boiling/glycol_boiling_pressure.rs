use super::glycol_boiling::{ETHYLENE, PROPYLENE};
use crate::base::text::said;
use crate::units::{AbsolutePressure, Ratio, Temperature};
use crate::{Result, cannot, valid};

/// The boiling pressure, if the mixture model was compared with others there.
#[inline]
fn compared(
    boiling_pressure: AbsolutePressure,
    temperature: Temperature,
    mass_fraction: Ratio,
) -> Result<AbsolutePressure> {
    if (10e3..=500e3).contains(&boiling_pressure.si()) {
        return Ok(boiling_pressure);
    }
    let under = said(boiling_pressure);
    Err(cannot!(
        temperature, mass_fraction;
        "is reached by boiling under {under}: the mixture model was compared with others from 10 kPa to 500 kPa"
    ))
}

/// Absolute pressure under which a mix of water and ethylene glycol begins to boil at a temperature.
///
/// # Formula
/// `p = x_w p_w(T) + x_g p_g(T)` (Raoult); `p_w` of IAPWS-IF97 region 4, `p_g = exp(C1 + C2/T + C3 ln T + C4 T^6)`,
/// `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`, `M_g` = 62.06784 g/mol, `M_w` = 18.01528 g/mol
///
/// # Parameters
/// - `temperature` — `T`
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
///
/// # Returns
/// The bubble pressure: at a lower pressure the mix boils.
///
/// # Valid for
/// - `273.15 <= temperature <= 533.15`
/// - `0 <= mass_fraction <= 1`
///
/// The result lies between 10 kPa and 500 kPa, the range over which the mixture model was compared with others; outside it is
/// refused. An ideal solution without inhibitors. From 100 °C to 127 °C and up to 60 % activity models ask for up to 1.1 % more
/// (UNIFAC) and 0.8 % less (Dortmund UNIFAC).
///
/// # Source
/// Raoult's law; water: IAPWS R7-97(2012); glycol: DIPPR equation 101, Perry's Chemical Engineers' Handbook, 8th ed., Table 2-8, coefficients as carried by the open chemicals library 1.5.2
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let pressure = fluid::ethylene_glycol_boiling_pressure(Temperature::of::<degC>(120.0), Ratio::of::<percent>(50.0))?;
/// assert_eq!(format!("{:.1} kPa absolute", pressure.in_::<kPa_absolute>()), "155.2 kPa absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, and never pump one above its weakest component. Hot metal boils coolant
/// earlier than its mean temperature says.
#[inline]
pub fn ethylene_glycol_boiling_pressure(
    temperature: Temperature,
    mass_fraction: Ratio,
) -> Result<AbsolutePressure> {
    valid! {
        temperature: 273.15 <= .. <= 533.15 ; "range of the boiling temperatures of the mixture model";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
    }
    let boiling_pressure =
        AbsolutePressure::from_si(ETHYLENE.boiling_pressure(temperature.si(), mass_fraction.si()));
    compared(boiling_pressure, temperature, mass_fraction)
}

/// Absolute pressure under which a mix of water and propylene glycol begins to boil at a temperature.
///
/// # Formula
/// `p = x_w p_w(T) + x_g p_g(T)` (Raoult); `p_w` of IAPWS-IF97 region 4, `p_g = exp(C1 + C2/T + C3 ln T + C4 T^2)`,
/// `x_w = 1 - x_g`, `x_g = w / M_g / (w / M_g + (1 - w) / M_w)`, `M_g` = 76.09442 g/mol, `M_w` = 18.01528 g/mol
///
/// # Parameters
/// - `temperature` — `T`
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; shops mix by volume, which is less
///
/// # Returns
/// The bubble pressure: at a lower pressure the mix boils.
///
/// # Valid for
/// - `273.15 <= temperature <= 533.15`
/// - `0 <= mass_fraction <= 1`
///
/// The result lies between 10 kPa and 500 kPa, the range over which the mixture model was compared with others; outside it is
/// refused. An ideal solution without inhibitors, and less sure than for ethylene glycol. From 100 °C to 127 °C activity models
/// ask for more pressure: at 50 % by 10 % (UNIFAC) and 18 % (Dortmund UNIFAC), at 60 % by 14 % and 26 %, and by more with more
/// glycol. Keep the gap as margin.
///
/// # Source
/// Raoult's law; water: IAPWS R7-97(2012); glycol: DIPPR equation 101, Perry's Chemical Engineers' Handbook, 8th ed., Table 2-8, coefficients as carried by the open chemicals library 1.5.2
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let pressure = fluid::propylene_glycol_boiling_pressure(Temperature::of::<degC>(120.0), Ratio::of::<percent>(50.0))?;
/// assert_eq!(format!("{:.1} kPa absolute", pressure.in_::<kPa_absolute>()), "162.2 kPa absolute");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// Hot pressurised coolant scalds: never open a hot system, and never pump one above its weakest component. Hot metal boils coolant
/// earlier than its mean temperature says.
#[inline]
pub fn propylene_glycol_boiling_pressure(
    temperature: Temperature,
    mass_fraction: Ratio,
) -> Result<AbsolutePressure> {
    valid! {
        temperature: 273.15 <= .. <= 533.15 ; "range of the boiling temperatures of the mixture model";
        mass_fraction: 0 <= .. <= 1 ; "definition: a fraction of the whole";
    }
    let boiling_pressure =
        AbsolutePressure::from_si(PROPYLENE.boiling_pressure(temperature.si(), mass_fraction.si()));
    compared(boiling_pressure, temperature, mass_fraction)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluid::{ethylene_glycol_boiling_temperature, propylene_glycol_boiling_temperature};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(p in 10_001.0f64..499_999.0, w in 0.0f64..=1.0) {
            let (pressure, w) = (AbsolutePressure::from_si(p), Ratio::from_si(w));
            let e = ethylene_glycol_boiling_pressure(ethylene_glycol_boiling_temperature(pressure, w).unwrap(), w);
            let g = propylene_glycol_boiling_pressure(propylene_glycol_boiling_temperature(pressure, w).unwrap(), w);
            prop_assert!((e.unwrap().si() / p - 1.0).abs() < 1e-11 && (g.unwrap().si() / p - 1.0).abs() < 1e-11);
        }
    }
}
