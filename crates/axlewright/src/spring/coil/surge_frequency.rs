use super::coil_rate::coil_rate;
use crate::units::{Density, Frequency, Length, Ratio, Stress};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Lowest frequency at which the coils of a spring between two flat seats surge to and fro by themselves.
///
/// # Formula
/// `f = sqrt(k / m) / 2` with `k = G d^4 / (8 D^3 n)` and the mass of the active wire `m = pi^2 d^2 D n rho / 4`
///
/// # Parameters
/// - `wire_diameter` — `d`, the diameter of the wire
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
/// - `shear_modulus` — `G` of the wire; 78.5 GPa for hot-coiled and 81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)
/// - `density` — `rho` of the wire; 7850 kg/m³ for steel
///
/// # Returns
/// The first natural frequency of the spring itself; the next ones are twice, three times ... this.
///
/// # Valid for
/// - `0.00001 <= wire_diameter <= 1`
/// - `0.00001 <= mean_diameter <= 10`
/// - `mean_diameter > wire_diameter`
/// - `0.5 <= active_coils <= 1000`
/// - `10000000000 <= shear_modulus <= 200000000000`
/// - `500 <= density <= 25000`
///
/// Both ends in contact with plates, one of them driven; with one end free it is half of this. Shigley advises 15 to 20 times the frequency of the
/// motion, so that no harmonic of it meets the spring.
///
/// # Source
/// Shigley's Mechanical Engineering Design, eq. 10-25 (after Wolford and Smith); wave equation of a slender spring (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let frequency = spring::surge_frequency(
///     Length::of::<mm>(12.0), Length::of::<mm>(76.0), Ratio::of::<one>(8.0), Stress::of::<GPa>(78.5), Density::of::<kg_m3>(7850.0),
/// )?;
/// assert_eq!(format!("{:.1} Hz", frequency.in_::<Hz>()), "92.4 Hz");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn surge_frequency(
    wire_diameter: Length,
    mean_diameter: Length,
    active_coils: Ratio,
    shear_modulus: Stress,
    density: Density,
) -> Result<Frequency> {
    valid! {
        wire_diameter: 0.00001 <= .. <= 1 ; "plausibility limit: springs are coiled of wire between 10 µm and 1 m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
        active_coils: 0.5 <= .. <= 1000 ; "plausibility limit: a coil spring has between half a coil and 1000";
        shear_modulus: 10e9 <= .. <= 200e9 ; "plausibility limit: metals of springs lie between 10 GPa and 200 GPa";
        density: 500 <= .. <= 25e3 ; "plausibility limit: solids of springs lie between 500 kg/m³ and 25000 kg/m³";
    }
    let rate = coil_rate(wire_diameter, mean_diameter, active_coils, shear_modulus)?;
    let section = PI * wire_diameter * wire_diameter / 4.0;
    let active_mass = density.raw() * section * (PI * mean_diameter * active_coils);
    Ok(Frequency::from_raw(0.5 * (rate / active_mass).sqrt()))
}
