use crate::units::{Ratio, Temperature};
use crate::{Result, valid};

/// A polynomial in the mass fraction less a base point (K).
pub(super) struct Curve {
    base: f64,
    coefficients: [f64; 6],
}

/// Melinder (IIR 2010), as the open CoolProp library 8.0.0 carries it.
pub(super) const ETHYLENE: Curve =
    Curve { base: 0.308_462, coefficients: [257.9, -80.8, -133.4, -72.93, 100.6, 11.4] };
/// Melinder (IIR 2010), as above.
pub(super) const PROPYLENE: Curve =
    Curve { base: 0.307_031, coefficients: [259.9, -66.31, -109.4, -228.3, -340.9, 146.5] };

/// Glycol by mass of the strongest mix of the data.
const STRONGEST: f64 = 0.6;

impl Curve {
    #[inline(always)]
    pub(super) fn at(&self, mass_fraction: f64) -> f64 {
        let x = mass_fraction - self.base;
        let [c0, c1, c2, c3, c4, c5] = self.coefficients;
        c0 + x * (c1 + x * (c2 + x * (c3 + x * (c4 + x * c5))))
    }

    /// The curve, and beyond the data its value at their end.
    #[inline(always)]
    fn held(&self, mass_fraction: f64) -> f64 {
        self.at(mass_fraction.min(STRONGEST))
    }
}

/// Temperature at which a mix of water and ethylene glycol begins to freeze.
///
/// # Formula
/// `T = sum over i of c_i (w - 0.308462)^i`, i from 0 to 5, with `w` at most 0.6
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 52.7 % by mass)
///
/// # Returns
/// The start of freezing: the first ice, not slush and not the point at which a block bursts.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
///
/// The data end at 60 %, and the curve has a minimum beyond. From 60 % to 63 %, the value of 60 % holds: by the ASHRAE (2001) tables, as remembered, such a mix
/// freezes no earlier. The curve reads colder than the ASHRAE (2001) tables, by 0.6 K, 1.7 K, 2.6 K and 3.3 K at
/// 30, 40, 50 and 60 %: keep that as margin. Without glycol it gives 273.1503 K.
///
/// # Source
/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; coefficients as carried by the open CoolProp library 8.0.0
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let freezes = fluid::ethylene_glycol_freezing_temperature(Ratio::of::<percent>(50.0))?;
/// assert_eq!(format!("{:.1} °C", freezes.in_::<degC>()), "-36.0 °C");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_freezing_temperature(mass_fraction: Ratio) -> Result<Temperature> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, whose value holds to 63 %: 60 % by volume of pure glycol";
    }
    Ok(Temperature::from_si(ETHYLENE.held(mass_fraction.si())))
}

/// Temperature at which a mix of water and propylene glycol begins to freeze.
///
/// # Formula
/// `T = sum over i of c_i (w - 0.307031)^i`, i from 0 to 5, with `w` at most 0.6
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix; not the share by volume, which is smaller (50 % by volume is 50.9 % by mass)
///
/// # Returns
/// The start of freezing: the first ice, not slush and not the point at which a block bursts.
///
/// # Valid for
/// - `0 <= mass_fraction <= 0.63`
///
/// The data end at 60 %, and the curve has a minimum beyond. From 60 % to 63 %, the value of 60 % holds: by the ASHRAE (2001) tables, as remembered, such a mix
/// freezes no earlier. The curve agrees with the ASHRAE (2001) tables, by mass, within 0.2 K up to 35 % and
/// reads 0.5 K to 1.5 K warmer above; a second fit from Melinder's book lies within 1.81 K. Without glycol it gives 273.1249 K.
///
/// # Source
/// Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; coefficients as carried by the open CoolProp library 8.0.0
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let freezes = fluid::propylene_glycol_freezing_temperature(Ratio::of::<percent>(50.0))?;
/// assert_eq!(format!("{:.1} °C", freezes.in_::<degC>()), "-32.2 °C");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_freezing_temperature(mass_fraction: Ratio) -> Result<Temperature> {
    valid! {
        mass_fraction: 0 <= .. <= 0.63 ; "Melinder (IIR 2010): data to 60 %, whose value holds to 63 %: 60 % by volume of pure glycol";
    }
    Ok(Temperature::from_si(PROPYLENE.held(mass_fraction.si())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn beyond_the_data_their_end_holds() {
        for freezing in [ethylene_glycol_freezing_temperature, propylene_glycol_freezing_temperature] {
            let at = |w: f64| freezing(Ratio::from_si(w)).map(|t| t.si());
            assert_eq!(at(0.626), at(0.6));
            assert_eq!(at(0.63), at(0.6));
            assert!(at(0.6).unwrap() < at(0.599).unwrap());
            assert!(at(0.631).is_err());
        }
    }

    #[test]
    fn more_glycol_freezes_later_over_the_whole_range() {
        for curve in [ETHYLENE, PROPYLENE] {
            for i in 0..600 {
                assert!(curve.at(f64::from(i + 1) / 1000.0) < curve.at(f64::from(i) / 1000.0), "{i}");
            }
        }
    }
}
