use super::freezing::{ETHYLENE, PROPYLENE};
use crate::base::numeric::root;
use crate::units::{Ratio, Temperature};
use crate::{Result, valid};

/// Least share of ethylene glycol with which a mix stays free of ice down to a temperature.
///
/// # Formula
/// `T = sum over i of c_i (w - 0.308462)^i`, i from 0 to 5, solved for `w`
///
/// # Parameters
/// - `freezing_temperature` — `T`, temperature at which the first ice may form
///
/// # Returns
/// The mass of glycol over the mass of the mix; shops mix by volume, which is less.
///
/// # Valid for
/// - `221.95 <= freezing_temperature <= 273.15`
///
/// The curve falls all along this range, so there is one answer. Beyond 60 % it has a minimum and a second branch, which
/// is refused. It reads less glycol than the ASHRAE (2001) tables, by 1.4 % of the mix at -20 °C and 1.9 % at -30 °C: keep that
/// as margin.
///
/// # Source
/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; coefficients as carried by the open CoolProp library 8.0.0; solved by Brent's method
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let on = fluid::ethylene_glycol_mass_fraction_for_freezing(Temperature::of::<degC>(-30.0))?;
/// assert_eq!(format!("{:.1} %", on.in_::<percent>()), "45.4 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_mass_fraction_for_freezing(freezing_temperature: Temperature) -> Result<Ratio> {
    valid! {
        freezing_temperature: 221.95 <= .. <= 273.15 ; "Melinder (IIR 2010): from the mix of 60 % to water, before the minimum of the curve";
    }
    let t = freezing_temperature.si();
    root("mass fraction", |w| ETHYLENE.at(w) - t, 0.0, 0.6, 0.0).map(Ratio::from_si)
}

/// Least share of propylene glycol with which a mix stays free of ice down to a temperature.
///
/// # Formula
/// `T = sum over i of c_i (w - 0.307031)^i`, i from 0 to 5, solved for `w`
///
/// # Parameters
/// - `freezing_temperature` — `T`, temperature at which the first ice may form
///
/// # Returns
/// The mass of glycol over the mass of the mix; shops mix by volume, which is less.
///
/// # Valid for
/// - `223.15 <= freezing_temperature <= 273.12`
///
/// The curve falls all along this range, so there is one answer. Beyond 60 % it has a minimum and a second branch, which
/// is refused. The ASHRAE (2001) tables, by mass, ask for less and agree within 1 % of the mix.
///
/// # Source
/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; coefficients as carried by the open CoolProp library 8.0.0; solved by Brent's method
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let on = fluid::propylene_glycol_mass_fraction_for_freezing(Temperature::of::<degC>(-30.0))?;
/// assert_eq!(format!("{:.1} %", on.in_::<percent>()), "48.4 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_mass_fraction_for_freezing(freezing_temperature: Temperature) -> Result<Ratio> {
    valid! {
        freezing_temperature: 223.15 <= .. <= 273.12 ; "Melinder (IIR 2010): from the mix of 60 % to water, before the minimum of the curve";
    }
    let t = freezing_temperature.si();
    root("mass fraction", |w| PROPYLENE.at(w) - t, 0.0, 0.6, 0.0).map(Ratio::from_si)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluid::{ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature};
    use proptest::prelude::*;

    #[test]
    fn both_ends_have_an_answer() {
        for t in [221.95, 273.15].map(Temperature::from_si) {
            assert!(ethylene_glycol_mass_fraction_for_freezing(t).is_ok());
        }
        for t in [223.15, 273.12].map(Temperature::from_si) {
            assert!(propylene_glycol_mass_fraction_for_freezing(t).is_ok());
        }
    }

    proptest! {
        #[test]
        fn forth_and_back(t in 223.15f64..273.12) {
            let wanted = Temperature::from_si(t);
            let e = ethylene_glycol_mass_fraction_for_freezing(wanted).and_then(ethylene_glycol_freezing_temperature);
            let p = propylene_glycol_mass_fraction_for_freezing(wanted).and_then(propylene_glycol_freezing_temperature);
            prop_assert!((e.unwrap().si() - t).abs() < 1e-11 && (p.unwrap().si() - t).abs() < 1e-11);
        }
    }
}
