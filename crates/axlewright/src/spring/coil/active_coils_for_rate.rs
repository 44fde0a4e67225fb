use crate::units::{Length, LinearStiffness, Ratio, Stress};
use crate::{Result, valid};

/// Active coils with which a helical compression spring has the wanted rate.
///
/// # Formula
/// `n = G d^4 / (8 D^3 k)`
///
/// # Parameters
/// - `spring_rate` — `k`, the rate that is wanted, or that was measured, along the spring's own axis
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `shear_modulus` — `G` of the wire; 78.5 GPa for hot-coiled and 81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)
///
/// # Returns
/// The coils that deflect, parts of a coil included; closed ends add about two more.
///
/// # Valid for
/// - `1 <= spring_rate <= 1000000000`
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `10000000000 <= shear_modulus <= 200000000000`
///
/// The inverse of `coil_rate`, with its limits. Fewer coils are stiffer and have less travel before they bind.
///
/// # Source
/// EN 13906-1:2013, rate of cold-coiled cylindrical springs, solved for the coils; Shigley's Mechanical Engineering Design, ch. 10, spring rate
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let coils = spring::active_coils_for_rate(
///     LinearStiffness::of::<N_mm>(55.0), Length::of::<mm>(14.0), Length::of::<mm>(100.0), Stress::of::<GPa>(78.5),
/// )?;
/// assert_eq!(format!("{:.2}", coils.in_::<one>()), "6.85");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A stiffer or thinner spring is more highly stressed, and stores enough energy to kill: check `coil_shear_stress` at solid length, `minimum_gap_clearance` and `buckling_deflection` before it is made.
/// A coil is cut off by the maker only: heat takes the temper, and a cut end has no seat.
#[inline]
pub fn active_coils_for_rate(
    spring_rate: LinearStiffness,
    wire_diameter: Length,
    mean_diameter: Length,
    shear_modulus: Stress,
) -> Result<Ratio> {
    valid! {
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        shear_modulus: 10e9 <= .. <= 200e9 ; "plausibility limit: metals of springs lie between 10 GPa and 200 GPa";
    }
    let (d, diameter) = (wire_diameter, mean_diameter);
    let softening = (8.0 * diameter * diameter * diameter).raw() * spring_rate;
    Ok(Ratio::from_raw(shear_modulus.raw() * d * d * d * d / softening))
}
