use crate::units::{Length, LinearStiffness, Ratio, Stress};
use crate::{Result, valid};

/// Rate of a helical compression spring of round wire.
///
/// # Formula
/// `k = G d^4 / (8 D^3 n)`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
/// - `shear_modulus` — `G` of the wire; 78.5 GPa for hot-coiled and 81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)
///
/// # Returns
/// The rate, which in lb/in is the load that shortens the spring by one inch.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `0 < active_coils`
/// - `10000000000 <= shear_modulus <= 200000000000`
///
/// Linear, small pitch angle, no coil touching another. The standard covers an index `D / d` of 4 to 20; the direct shear
/// that it neglects adds about 1 / (2 (D/d)^2) to the deflection, 3 % at an index of 4 (Shigley, from memory).
///
/// # Source
/// EN 13906-1:2013, rate of cold-coiled cylindrical springs; Shigley's Mechanical Engineering Design, ch. 10, spring rate
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::coil_rate(
///     Length::of::<mm>(14.0), Length::of::<mm>(100.0), Ratio::of::<one>(6.0), Stress::of::<GPa>(78.5),
/// )?;
/// assert_eq!(format!("{:.1} lbf/in", rate.in_::<lbf_in>()), "358.7 lbf/in");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A compressed spring stores enough energy to kill. Fit, compress and release it with the maker's tools and restraint.
#[inline]
pub fn coil_rate(
    wire_diameter: Length,
    mean_diameter: Length,
    active_coils: Ratio,
    shear_modulus: Stress,
) -> Result<LinearStiffness> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        active_coils: 0 < .. ; "definition: a spring has coils";
        shear_modulus: 10e9 <= .. <= 200e9 ; "plausibility limit: metals of springs lie between 10 GPa and 200 GPa";
    }
    let (d, diameter) = (wire_diameter, mean_diameter);
    let flexing = 8.0 * diameter * diameter * diameter * active_coils;
    Ok(LinearStiffness::from_raw(shear_modulus.raw() * d * d * d * d / flexing))
}
