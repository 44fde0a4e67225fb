use crate::units::{Length, Stress, Torque};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Peak shear stress in a round torsion bar, at its surface.
///
/// # Formula
/// `tau = 16 T D / (pi (D^4 - d^4))`
///
/// # Parameters
/// - `torque` — `T`, that twists the bar
/// - `inner_diameter` — `d`, bore of the bar; nothing for a solid one
/// - `outer_diameter` — `D`, outer diameter of the bar where it twists
///
/// # Returns
/// Shear stress at the surface, with the sign of the torque.
///
/// # Valid for
/// - `-1000000000 <= torque <= 1000000000`
/// - `0 <= inner_diameter <= 1`
/// - `0.001 <= outer_diameter <= 1`
/// - `outer_diameter > inner_diameter`
///
/// A straight round bar, elastic, without presetting: a bar that is preset in one direction bears more in it and less in the other. Bending and the notch of a spline come on top.
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
/// let stress = spring::torsion_bar_stress(Torque::of::<Nm>(1500.0), Length::of::<mm>(0.0), Length::of::<mm>(24.0))?;
/// assert_eq!(format!("{:.0} MPa", stress.in_::<MPa>()), "553 MPa");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A twisted bar stores enough energy to kill; unload it before a lever or a link comes off. Local codes and licensed practice come first.
#[inline]
pub fn torsion_bar_stress(torque: Torque, inner_diameter: Length, outer_diameter: Length) -> Result<Stress> {
    valid! {
        torque: (-1e9) <= .. <= 1e9 ; "plausibility limit: no bar of a road vehicle bears 1 GN·m";
        inner_diameter: 0 <= .. <= 1 ; "definition: a bore is not negative";
        outer_diameter: 0.001 <= .. <= 1 ; "plausibility limit: bars are between 1 mm and 1 m thick";
        outer_diameter > inner_diameter ; "definition: a tube has a wall";
    }
    let (outer, bore) = (outer_diameter.si(), inner_diameter.si());
    let (squares, wall) = (outer * outer + bore * bore, (outer - bore) * (outer + bore));
    Ok(Stress::from_si(16.0 * torque.si() * outer / (PI * (squares * wall))))
}
