use crate::units::Ratio;
use crate::{Result, valid};

/// Densities at 20 °C (kg/m³): CRC Handbook as the open `chemicals` library carries it; water: IAPWS-95.
const WATER_DENSITY: f64 = 998.207;
pub(super) const ETHYLENE_GLYCOL_DENSITY: f64 = 1113.5;
pub(super) const PROPYLENE_GLYCOL_DENSITY: f64 = 1036.1;

#[inline(always)]
fn concentrate_density(glycol: f64, glycol_density: f64) -> f64 {
    1.0 / (glycol / glycol_density + (1.0 - glycol) / WATER_DENSITY)
}

#[inline(always)]
fn by_mass(share: f64, glycol: f64, glycol_density: f64) -> f64 {
    let concentrate_density = concentrate_density(glycol, glycol_density);
    let (poured, water) = (share * concentrate_density, (1.0 - share) * WATER_DENSITY);
    glycol * poured / (poured + water)
}

/// The inverse of `by_mass`: the share of concentrate by volume.
#[inline(always)]
pub(super) fn by_volume(mass_fraction: f64, glycol: f64, glycol_density: f64) -> f64 {
    let water = mass_fraction * WATER_DENSITY;
    water / (concentrate_density(glycol, glycol_density) * (glycol - mass_fraction) + water)
}

/// Glycol by mass in a mix that was measured out by volume: water and a concentrate of ethylene glycol.
///
/// # Formula
/// `w = s f d_c / (f d_c + (1 - f) d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` = 1113.5 kg/m³, `d_w` = 998.207 kg/m³
///
/// # Parameters
/// - `concentrate_volume_share` — `f`, concentrate over all that is poured, before it is mixed
/// - `glycol_mass_share` — `s`, glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol
///
/// # Returns
/// The mass of glycol over the mass of the mix, as the other functions of this system want it.
///
/// # Valid for
/// - `0 <= concentrate_volume_share <= 1`
/// - `0 < glycol_mass_share <= 1`
///
/// Volumes are those of the parts at 20 °C. The mix itself is smaller, by about 1 % with ethylene glycol and 2 % with propylene glycol
/// at half and half. All that the concentrate holds beside glycol counts as water.
///
/// # Source
/// Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library 1.5.2, water IAPWS-95
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let on = fluid::ethylene_glycol_mass_fraction(Ratio::of::<percent>(50.0), Ratio::of::<percent>(95.0))?;
/// assert_eq!(format!("{:.1} %", on.in_::<percent>()), "50.0 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn ethylene_glycol_mass_fraction(
    concentrate_volume_share: Ratio,
    glycol_mass_share: Ratio,
) -> Result<Ratio> {
    valid! {
        concentrate_volume_share: 0 <= .. <= 1 ; "definition: a share of the whole";
        glycol_mass_share: 0 < .. <= 1 ; "definition: a share of the whole";
    }
    Ok(Ratio::from_si(by_mass(
        concentrate_volume_share.si(),
        glycol_mass_share.si(),
        ETHYLENE_GLYCOL_DENSITY,
    )))
}

/// Glycol by mass in a mix that was measured out by volume: water and a concentrate of propylene glycol.
///
/// # Formula
/// `w = s f d_c / (f d_c + (1 - f) d_w)` with `1 / d_c = s / d_g + (1 - s) / d_w`, `d_g` = 1036.1 kg/m³, `d_w` = 998.207 kg/m³
///
/// # Parameters
/// - `concentrate_volume_share` — `f`, concentrate over all that is poured, before it is mixed
/// - `glycol_mass_share` — `s`, glycol in the concentrate by mass, as its data sheet says; 1 for pure glycol
///
/// # Returns
/// The mass of glycol over the mass of the mix, as the other functions of this system want it.
///
/// # Valid for
/// - `0 <= concentrate_volume_share <= 1`
/// - `0 < glycol_mass_share <= 1`
///
/// Volumes are those of the parts at 20 °C. The mix itself is smaller, by about 1 % with ethylene glycol and 2 % with propylene glycol
/// at half and half. All that the concentrate holds beside glycol counts as water.
///
/// # Source
/// Mass balance; densities at 20 °C: CRC Handbook as carried by the open chemicals library 1.5.2, water IAPWS-95
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{fluid, units::*};
/// let on = fluid::propylene_glycol_mass_fraction(Ratio::of::<percent>(50.0), Ratio::of::<percent>(95.0))?;
/// assert_eq!(format!("{:.1} %", on.in_::<percent>()), "48.3 %");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn propylene_glycol_mass_fraction(
    concentrate_volume_share: Ratio,
    glycol_mass_share: Ratio,
) -> Result<Ratio> {
    valid! {
        concentrate_volume_share: 0 <= .. <= 1 ; "definition: a share of the whole";
        glycol_mass_share: 0 < .. <= 1 ; "definition: a share of the whole";
    }
    Ok(Ratio::from_si(by_mass(
        concentrate_volume_share.si(),
        glycol_mass_share.si(),
        PROPYLENE_GLYCOL_DENSITY,
    )))
}
