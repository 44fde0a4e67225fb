use crate::units::Mass;
use crate::{Result, valid};

/// Sprung mass: scale reading less unsprung mass.
///
/// # Formula
/// `m_s = m - m_u`
///
/// # Parameters
/// - `scale_mass` — `m`, scale reading of the wheel, the axle or the vehicle
/// - `unsprung_mass` — `m_u`, unsprung mass of the same wheel, axle or vehicle: wheels, tyres, hubs, brakes, a live axle, and half of each arm, link, spring, damper and shaft
///
/// # Returns
/// The sprung mass.
///
/// # Valid for
/// - `0.001 <= scale_mass <= 4000000`
/// - `0 <= unsprung_mass <= 4000000`
/// - `scale_mass > unsprung_mass`
///
/// A part that is hinged at both ends counts half to either side: a convention that suits slender parts. A spring swings with a third of its mass at most.
///
/// # Source
/// Definition: SAE J670 and ISO 8855, sprung and unsprung mass (from memory); half of a link: common practice, no source
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{mass, units::*};
/// let on_springs = mass::sprung_mass(Mass::of::<kg>(612.0), Mass::of::<kg>(67.0))?;
/// assert_eq!(format!("{:.0} kg", on_springs.in_::<kg>()), "545 kg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn sprung_mass(scale_mass: Mass, unsprung_mass: Mass) -> Result<Mass> {
    valid! {
        scale_mass: 0.001 <= .. <= 4e6 ; "plausibility limit: no vehicle weighs 4000 t";
        unsprung_mass: 0 <= .. <= 4e6 ; "definition: a mass is not negative";
        scale_mass > unsprung_mass ; "definition: some of it is sprung";
    }
    Ok(scale_mass - unsprung_mass)
}
