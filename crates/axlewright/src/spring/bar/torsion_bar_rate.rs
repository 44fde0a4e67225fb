use crate::units::{Length, RotationalStiffness, Stress};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Torque over twist of a round torsion bar, solid or bored.
///
/// # Formula
/// `K = pi G (D^4 - d^4) / (32 L)`
///
/// # Parameters
/// - `shear_modulus` — `G`, shear modulus of the steel, 79 GPa or nearly
/// - `inner_diameter` — `d`, bore of the bar; nothing for a solid one
/// - `outer_diameter` — `D`, outer diameter of the bar where it twists
/// - `active_length` — `L`, that twists: between the splines or bearings that hold it, with what the ends add
///
/// # Returns
/// Torque over the angle between the ends.
///
/// # Valid for
/// - `1000000 <= shear_modulus <= 10000000000000`
/// - `0 <= inner_diameter <= 1`
/// - `0.001 <= outer_diameter <= 1`
/// - `outer_diameter > inner_diameter`
/// - `0.001 <= active_length <= 100`
///
/// A straight round bar of one diameter, elastic. Splines and tapers at the ends twist a little, too: the active length is longer than the plain one.
///
/// # Source
/// Saint-Venant torsion of a circular section; Shigley's Mechanical Engineering Design, ch. 3, torsion (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::torsion_bar_rate(Stress::of::<GPa>(79.3), Length::of::<mm>(0.0), Length::of::<mm>(24.0), Length::of::<mm>(1000.0))?;
/// assert_eq!(format!("{:.1} N·m/deg", rate.in_::<Nm_deg>()), "45.1 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A twisted bar stores enough energy to kill; unload it before a lever or a link comes off. Local codes and licensed practice come first.
#[inline]
pub fn torsion_bar_rate(
    shear_modulus: Stress,
    inner_diameter: Length,
    outer_diameter: Length,
    active_length: Length,
) -> Result<RotationalStiffness> {
    valid! {
        shear_modulus: 1e6 <= .. <= 1e13 ; "plausibility limit: solids lie between 1 MPa and 10 TPa";
        inner_diameter: 0 <= .. <= 1 ; "definition: a bore is not negative";
        outer_diameter: 0.001 <= .. <= 1 ; "plausibility limit: bars are between 1 mm and 1 m thick";
        outer_diameter > inner_diameter ; "definition: a tube has a wall";
        active_length: 0.001 <= .. <= 100 ; "plausibility limit: bars are between 1 mm and 100 m long";
    }
    let (outer, bore) = (outer_diameter.si(), inner_diameter.si());
    let (squares, wall) = (outer * outer + bore * bore, (outer - bore) * (outer + bore));
    Ok(RotationalStiffness::from_si(PI * shear_modulus.si() * (squares * wall) / (32.0 * active_length.si())))
}
