use super::wahl_factor::wahl_factor;
use crate::units::{Force, Length, Stress};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Peak shear stress in the wire of a helical spring under a load, corrected for curvature after Wahl.
///
/// # Formula
/// `tau = K 8 F D / (pi d^3)` with `K` from `wahl_factor`
///
/// # Parameters
/// - `load` — `F`, along the axis of the spring
/// - `wire_diameter` — `d`, the diameter of the wire, at its thinnest where it is worn or rusted
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
///
/// # Returns
/// The shear stress at the inside of the coil.
///
/// # Valid for
/// - `0 <= load <= 1000000000`
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
///
/// Round wire, small pitch angle, load on the axis, elastic, residual stress of setting left out. Compare it with the maker's permissible
/// shear stress at solid length, and its range with the fatigue strength of the wire; EN 13906-1 has a factor of its own (see `wahl_factor`),
/// and leaves the correction away where the load is static.
///
/// # Source
/// A. M. Wahl, Mechanical Springs, 2nd ed. (1963); Shigley's Mechanical Engineering Design, ch. 10; EN 13906-1:2013 for its own rule (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let stress = spring::coil_shear_stress(Force::of::<kN>(6.0), Length::of::<mm>(14.0), Length::of::<mm>(100.0))?;
/// assert_eq!(format!("{:.0} MPa", stress.in_::<MPa>()), "673 MPa");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring that breaks drops the vehicle and throws its pieces. The permissible stress is the maker's to state, for the wire and its treatment.
#[inline]
pub fn coil_shear_stress(load: Force, wire_diameter: Length, mean_diameter: Length) -> Result<Stress> {
    valid! {
        load: 0 <= .. <= 1e9 ; "definition: a coil spring between seats only pushes; no spring carries 1 GN";
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
    }
    let (d, factor) = (wire_diameter, wahl_factor(wire_diameter, mean_diameter)?);
    Ok(Stress::from_raw((factor * 8.0 * load).raw() * mean_diameter / (PI * d * d * d)))
}
