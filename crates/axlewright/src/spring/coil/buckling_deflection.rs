use crate::base::text::said;
use crate::units::{Length, Ratio, Stress};
use crate::{Error, Result, cannot, valid};
use core::f64::consts::PI;

/// Deflection from its free length at which a compression spring buckles.
///
/// # Formula
/// `y = L_0 C_1 (1 - sqrt(1 - C_2 / lambda^2))` with `lambda = nu L_0 / D`, `C_1 = E / (2 (E - G))`, `C_2 = 2 pi^2 (E - G) / (2 G + E)`
///
/// # Parameters
/// - `free_length` — `L_0`, length of the spring unloaded
/// - `mean_diameter` — `D`, the diameter of the coil between wire centres (outside diameter less wire)
/// - `end_fixity` — `nu`, how the ends are held: 0.5 both on flat parallel seats, 0.707 one on a flat seat and one pivoted, 1 both pivoted, 2 one on a flat seat and the other free to move sideways and to tilt
/// - `elastic_modulus` — `E` of the wire; 206 GPa for spring steel (EN 13906-1, from memory)
/// - `shear_modulus` — `G` of the wire; 78.5 GPa for hot-coiled and 81.5 GPa for cold-drawn spring steel (EN 13906-1, from memory)
///
/// # Returns
/// The critical deflection. A spring that reaches its solid length before it is safe from buckling, guided or not.
///
/// # Valid for
/// - `0.0001 <= free_length <= 100`
/// - `0.00001 <= mean_diameter <= 10`
/// - `0.5 <= end_fixity <= 2`
/// - `10000000000 <= elastic_modulus <= 500000000000`
/// - `10000000000 <= shear_modulus <= 200000000000`
/// - `elastic_modulus > shear_modulus`
///
/// Cylindrical spring of round wire, load on its axis, no rod or sleeve. A spring shorter than `pi D / nu sqrt(2 (E - G) / (2 G + E))`, for steel 2.6 `D / nu`,
/// never buckles: then there is no such deflection and the call is refused with that length. The wire is an isotropic metal, whose Poisson's ratio
/// is not negative: `elastic_modulus` is at least twice `shear_modulus`; below that the formula gives more than the length of the spring.
///
/// # Source
/// Shigley's Mechanical Engineering Design, eq. 10-10 to 10-12 and Table 10-2; EN 13906-1:2013 has the same formula (from memory);
/// E = 2 G (1 + Poisson's ratio) of an isotropic solid: Timoshenko and Goodier, Theory of Elasticity (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::Contradiction`](crate::Error::Contradiction),
/// [`Error::NoSolution`](crate::Error::NoSolution) where the spring never buckles, or the moduli are of no isotropic metal
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let deflection = spring::buckling_deflection(
///     Length::of::<mm>(350.0), Length::of::<mm>(63.0), Ratio::of::<one>(0.5), Stress::of::<GPa>(206.0), Stress::of::<GPa>(78.5),
/// )?;
/// assert_eq!(format!("{:.1} mm", deflection.in_::<mm>()), "192.7 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A spring that buckles can leave its seats with all its energy. Guide a long one on a rod or in a sleeve, and keep it captive at full droop.
#[inline]
pub fn buckling_deflection(
    free_length: Length,
    mean_diameter: Length,
    end_fixity: Ratio,
    elastic_modulus: Stress,
    shear_modulus: Stress,
) -> Result<Length> {
    valid! {
        free_length: 0.0001 <= .. <= 100 ; "plausibility limit: springs are between 0.1 mm and 100 m long";
        mean_diameter: 0.00001 <= .. <= 10 ; "plausibility limit: no coil is narrower than 10 µm or wider than 10 m";
        end_fixity: 0.5 <= .. <= 2 ; "Shigley, Table 10-2: from both ends on flat seats to one end free";
        elastic_modulus: 10e9 <= .. <= 500e9 ; "plausibility limit: metals of springs lie between 10 GPa and 500 GPa";
        shear_modulus: 10e9 <= .. <= 200e9 ; "plausibility limit: metals of springs lie between 10 GPa and 200 GPa";
        elastic_modulus > shear_modulus ; "definition: E = 2 G (1 + Poisson's ratio)";
    }
    let (e, g) = (elastic_modulus, shear_modulus);
    if e < 2.0 * g {
        return Err(no_metal(e, g));
    }
    let slenderness = end_fixity * free_length / mean_diameter;
    let bending: Ratio = PI * PI * e / ((2.0 * g + e) * slenderness * slenderness);
    let rest = 1.0 - (2.0 * bending * (e - g) / e).si();
    if rest < 0.0 {
        return Err(never(free_length, free_length * (1.0 - rest).sqrt()));
    }
    // C_1 (1 - sqrt(1 - C_2 / lambda^2)), with the root in the denominator so that a slender spring loses no digits.
    Ok(free_length * bending / (1.0 + rest.sqrt()))
}

#[cold]
fn no_metal(elastic_modulus: Stress, shear_modulus: Stress) -> Error {
    let least = shear_modulus * 2.0;
    cannot!(
        elastic_modulus >= least, shear_modulus;
        "is less than twice shear_modulus: no isotropic metal has such moduli (E = 2 G (1 + Poisson's ratio), and Poisson's ratio is not negative)"
    )
}

#[cold]
fn never(free_length: Length, limit: Length) -> Error {
    let limit = said(limit);
    cannot!(free_length; "is too short to buckle: only a spring longer than {limit} can (Shigley, eq. 10-11)")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{GPa, one};
    use proptest::prelude::*;

    fn deflection(length: f64, diameter: f64, fixity: f64) -> Result<Length> {
        let (e, g) = (Stress::of::<GPa>(206.0), Stress::of::<GPa>(78.5));
        let [length, diameter] = [length, diameter].map(Length::from_si);
        buckling_deflection(length, diameter, Ratio::of::<one>(fixity), e, g)
    }

    #[test]
    fn a_short_spring_never_buckles_and_the_refusal_says_so() {
        let refusal = deflection(0.3, 0.063, 0.5).unwrap_err();
        assert!(matches!(refusal, Error::NoSolution { .. }));
        assert_eq!(
            refusal.to_string(),
            "free_length = 300 mm (11.81 in) is too short to buckle: only a spring longer than 331.8 mm (13.06 in) can (Shigley, eq. 10-11)"
        );
    }

    #[test]
    fn moduli_of_no_isotropic_metal_are_refused_by_both_names() {
        let of = |e, g| {
            let [e, g] = [e, g].map(Stress::of::<GPa>);
            let [length, diameter] = [1.0, 0.05].map(Length::from_si);
            buckling_deflection(length, diameter, Ratio::of::<one>(1.0), e, g)
        };
        let refusal = of(156.9, 78.5).unwrap_err();
        assert!(matches!(refusal, Error::NoSolution { .. }));
        let refusal = refusal.to_string();
        assert!(refusal.contains("elastic_modulus = ") && refusal.contains("shear_modulus = "), "{refusal}");
        assert!(of(157.0, 78.5).is_ok());
    }

    proptest! {
        /// The largest deflection is `C_1 L_0`, and `C_1 <= 1` just where `E >= 2 G`.
        #[test]
        fn never_more_than_the_length_of_the_spring(slender in 3.0f64..100.0, g in 10.0f64..150.0, poisson in 0.0f64..0.5) {
            let e = 2.0 * g * (1.0 + poisson);
            let [e, g] = [e, g].map(Stress::of::<GPa>);
            let found = buckling_deflection(Length::from_si(0.05 * slender), Length::from_si(0.05), Ratio::of::<one>(1.0), e, g);
            prop_assert!(found.is_ok_and(|found| found.si() <= 0.05 * slender));
        }

        #[test]
        fn a_longer_spring_buckles_after_a_smaller_share_of_its_length(slender in 5.3f64..1e3) {
            let share = |slender: f64| deflection(slender * 0.05, 0.05, 0.5).unwrap().si() / (slender * 0.05);
            prop_assert!(share(slender) > share(1.01 * slender));
            prop_assert!(share(slender) > 0.0 && share(slender) < 0.81);
        }
    }
}
