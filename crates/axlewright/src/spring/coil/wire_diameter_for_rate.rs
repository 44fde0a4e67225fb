use crate::units::{Length, LinearStiffness, Ratio, Stress};
use crate::{Result, valid};

/// Wire from which a helical compression spring gets the wanted rate.
///
/// # Formula
/// `d = (8 D^3 n k / G)^(1/4)`
///
/// # Parameters
/// - `spring_rate` — `k`, the rate that is wanted, along the spring's own axis
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less `d`)
/// - `active_coils` — `n`, the coils that deflect: total coils less the dead ones at the ends
/// - `shear_modulus` — `G` of the wire; 78.5 GPa for hot-coiled and 81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)
///
/// # Returns
/// The diameter of the round wire; 1 % of wire is 4 % of rate.
///
/// # Valid for
/// - `1 <= spring_rate <= 1000000000`
/// - `0.00001 <= mean_diameter <= 10`
/// - `0.1 <= active_coils <= 1000`
/// - `10000000000 <= shear_modulus <= 200000000000`
///
/// The inverse of `coil_rate`, with its limits; refused where the wire would be as thick as the coil. The mean diameter is held: with the
/// inside or outside diameter held instead, set `D` again from the result and repeat.
///
/// # Source
/// EN 13906-1:2013, rate of cold-coiled cylindrical springs, solved for the wire; Shigley's Mechanical Engineering Design, ch. 10, spring rate
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let wire = spring::wire_diameter_for_rate(
///     LinearStiffness::of::<N_mm>(60.0), Length::of::<mm>(100.0), Ratio::of::<one>(6.0), Stress::of::<GPa>(78.5),
/// )?;
/// assert_eq!(format!("{:.2} mm", wire.in_::<mm>()), "13.84 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A stiffer or thinner spring is more highly stressed, and stores enough energy to kill: check `coil_shear_stress` at solid length, `minimum_gap_clearance` and `buckling_deflection` before it is made.
#[inline]
pub fn wire_diameter_for_rate(
    spring_rate: LinearStiffness,
    mean_diameter: Length,
    active_coils: Ratio,
    shear_modulus: Stress,
) -> Result<Length> {
    valid! {
        spring_rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        active_coils: 0.1 <= .. <= 1000 ; "plausibility limit: coil springs have between a tenth of a coil and 1000 active ones";
        shear_modulus: 10e9 <= .. <= 200e9 ; "plausibility limit: metals of springs lie between 10 GPa and 200 GPa";
    }
    let diameter = mean_diameter;
    let area = 8.0 * diameter * active_coils * spring_rate / shear_modulus * diameter; // d^4 / D
    let wire_diameter = Length::from_si((area.si() * diameter.si()).sqrt().sqrt());
    valid! {
        mean_diameter > wire_diameter ; "definition: the coil is wider than its wire";
    }
    Ok(wire_diameter)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spring::{active_coils_for_rate, coil_rate};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn forth_and_back(k in 1e3f64..1e6, mean in 0.02f64..0.3, n in 1.0f64..30.0) {
            let (rate, mean, coils) = (LinearStiffness::from_si(k), Length::from_si(mean), Ratio::from_si(n));
            let modulus = Stress::from_si(78.5e9);
            if let Ok(wire) = wire_diameter_for_rate(rate, mean, coils, modulus) {
                assert_relative_eq!(coil_rate(wire, mean, coils, modulus).unwrap().si(), k, max_relative = 1e-13);
                assert_relative_eq!(active_coils_for_rate(rate, wire, mean, modulus).unwrap().si(), n, max_relative = 1e-13);
            }
        }
    }
}
