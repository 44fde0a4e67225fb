use crate::units::{Length, RoadRoughness};
use crate::{Result, valid};

/// Spectral density of a road's height at a wavelength, from its roughness.
///
/// # Formula
/// `G_d = G (n_0 / n)^2` with `n = 1 / lambda` and `n_0 = 0.1 cycles/m`
///
/// # Parameters
/// - `roughness` — `G`, one-sided density at 0.1 cycles a metre
/// - `wavelength` — `lambda`, length of one cycle along the road
///
/// # Returns
/// The one-sided density of height over spatial frequency.
///
/// # Valid for
/// - `0 <= roughness <= 1`
/// - `0.000001 <= wavelength <= 1000000`
///
/// Waviness 2, as ISO 8608 takes for its classes, and waves of about 0.35 m to 91 m, the range of those classes.
///
/// # Source
/// ISO 8608:2016, fitted displacement density with exponent 2 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{ride, units::*};
/// let density = ride::road_displacement_density(RoadRoughness::of::<cm3_cycle>(256.0), Length::of::<m>(2.0))?;
/// assert_eq!(format!("{:.2} cm³/cycle", density.in_::<cm3_cycle>()), "10.24 cm³/cycle");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn road_displacement_density(roughness: RoadRoughness, wavelength: Length) -> Result<RoadRoughness> {
    valid! {
        roughness: 0 <= .. <= 1 ; "definition: a density is not negative; plausibility limit: the roughest class of ISO 8608 has a quarter of a cubic metre";
        wavelength: 0.000001 <= .. <= 1000000 ; "plausibility limit: waves lie between 1 µm and 1000 km";
    }
    let waves = wavelength.si() / 10.0;
    Ok(RoadRoughness::from_si(roughness.si() * (waves * waves)))
}
