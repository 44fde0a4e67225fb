use super::mass_fraction::{ETHYLENE_GLYCOL_DENSITY, PROPYLENE_GLYCOL_DENSITY, by_volume};
use crate::units::Ratio;
use crate::{Result, valid};

/// Share of concentrate by volume that gives a wanted strength by mass, in a mix of water and ethylene glycol.
///
/// # Formula
/// `f = w d_w / (d_c (s - w) + w d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` = 1113.5 kg/m³, `d_w` = 998.207 kg/m³
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix that is wanted, as from `ethylene_glycol_mass_fraction_for_freezing`
/// - `glycol_mass_share` — `s`, glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol
///
/// # Returns
/// The volume of concentrate over the volume of all that is poured, before it is mixed.
///
/// # Valid for
/// - `0 <= mass_fraction < 1`
/// - `0 < glycol_mass_share <= 1`
/// - `glycol_mass_share > mass_fraction`
///
/// The inverse of `ethylene_glycol_mass_fraction`, with its limits. Volumes are those of the parts at 20 °C. Drain the system first: liquid that is already in it is not counted.
///
/// # Source
/// Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library 1.5.2, water IAPWS-95
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let pour = fluid::ethylene_glycol_concentrate_share(Ratio::of::<percent>(50.0), Ratio::of::<percent>(95.0))?;
/// assert_eq!(format!("{:.1} %", pour.in_::<percent>()), "50.0 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_concentrate_share(mass_fraction: Ratio, glycol_mass_share: Ratio) -> Result<Ratio> {
    valid! {
        mass_fraction: 0 <= .. < 1 ; "definition: a share of the whole";
        glycol_mass_share: 0 < .. <= 1 ; "definition: a share of the whole";
        glycol_mass_share > mass_fraction ; "no mix with water is as strong as its concentrate";
    }
    Ok(Ratio::from_si(by_volume(mass_fraction.si(), glycol_mass_share.si(), ETHYLENE_GLYCOL_DENSITY)))
}

/// Share of concentrate by volume that gives a wanted strength by mass, in a mix of water and propylene glycol.
///
/// # Formula
/// `f = w d_w / (d_c (s - w) + w d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` = 1036.1 kg/m³, `d_w` = 998.207 kg/m³
///
/// # Parameters
/// - `mass_fraction` — `w`, mass of glycol over mass of the mix that is wanted, as from `propylene_glycol_mass_fraction_for_freezing`
/// - `glycol_mass_share` — `s`, glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol
///
/// # Returns
/// The volume of concentrate over the volume of all that is poured, before it is mixed.
///
/// # Valid for
/// - `0 <= mass_fraction < 1`
/// - `0 < glycol_mass_share <= 1`
/// - `glycol_mass_share > mass_fraction`
///
/// The inverse of `propylene_glycol_mass_fraction`, with its limits. Volumes are those of the parts at 20 °C. Drain the system first: liquid that is already in it is not counted.
///
/// # Source
/// Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library 1.5.2, water IAPWS-95
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let pour = fluid::propylene_glycol_concentrate_share(Ratio::of::<percent>(50.0), Ratio::of::<percent>(95.0))?;
/// assert_eq!(format!("{:.1} %", pour.in_::<percent>()), "51.7 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_concentrate_share(mass_fraction: Ratio, glycol_mass_share: Ratio) -> Result<Ratio> {
    valid! {
        mass_fraction: 0 <= .. < 1 ; "definition: a share of the whole";
        glycol_mass_share: 0 < .. <= 1 ; "definition: a share of the whole";
        glycol_mass_share > mass_fraction ; "no mix with water is as strong as its concentrate";
    }
    Ok(Ratio::from_si(by_volume(mass_fraction.si(), glycol_mass_share.si(), PROPYLENE_GLYCOL_DENSITY)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fluid::{ethylene_glycol_mass_fraction, propylene_glycol_mass_fraction};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(f in 0.001f64..0.99, s in 0.1f64..=1.0) {
            let (poured, s) = (Ratio::from_si(f), Ratio::from_si(s));
            let ethylene = ethylene_glycol_mass_fraction(poured, s).unwrap();
            let propylene = propylene_glycol_mass_fraction(poured, s).unwrap();
            assert_relative_eq!(ethylene_glycol_concentrate_share(ethylene, s).unwrap().si(), f, max_relative = 1e-12);
            assert_relative_eq!(propylene_glycol_concentrate_share(propylene, s).unwrap().si(), f, max_relative = 1e-12);
        }
    }
}
