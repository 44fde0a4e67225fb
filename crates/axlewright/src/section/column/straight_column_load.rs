use super::euler_load;
use crate::units::{Area, Force, Length, SecondMoment, Stress};
use crate::{Result, valid};

/// Load at which a straight column gives way, pinned at both ends: Johnson's parabola if it is stocky, Euler's load if it is slender.
///
/// # Formula
/// `P = A s_y (1 - A s_y / (4 P_e))` while `P_e >= A s_y / 2`, otherwise `P = P_e`; with `P_e = pi^2 E I / L^2`
///
/// # Parameters
/// - `elastic_modulus` — `E`, elastic modulus
/// - `yield_strength` — `s_y`, minimum yield strength
/// - `area` — `A`, area of the section
/// - `second_moment` — `I`, least second moment of the section
/// - `length` — `L`, length between the centres of the joints
///
/// # Returns
/// The load in compression, positive.
///
/// # Valid for
/// - `1000000000 <= elastic_modulus <= 1000000000000`
/// - `1000000 <= yield_strength <= 3000000000`
/// - `0.00000001 <= area <= 100`
/// - `0.0000000000000001 <= second_moment <= 100`
/// - `0.001 <= length <= 100`
///
/// Straight and loaded on its centroid: a bow or an offset takes from it, see `bowed_column_load` and `secant_stress`. No wall buckles locally.
///
/// # Source
/// J. B. Johnson's parabola, tangent to Euler's curve at half the yield strength; Shigley's Mechanical Engineering Design, ch. 4 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{section, units::*};
/// let on = section::straight_column_load(
///     Stress::of::<GPa>(205.0), Stress::of::<MPa>(350.0), Area::of::<mm2>(274.8), SecondMoment::of::<mm4>(28_620.0), Length::of::<mm>(600.0),
/// )?;
/// assert_eq!(format!("{:.1} kN", on.in_::<kN>()), "81.8 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A link that buckles lets go of its axle or wheel. Keep a margin of 2 and more, and have safety parts checked by a licensed engineer.
#[inline]
pub fn straight_column_load(
    elastic_modulus: Stress,
    yield_strength: Stress,
    area: Area,
    second_moment: SecondMoment,
    length: Length,
) -> Result<Force> {
    valid! {
        elastic_modulus: 1e9 <= .. <= 1e12 ; "plausibility limit: structural metals lie between 1 GPa and 1000 GPa";
        yield_strength: 1e6 <= .. <= 3e9 ; "plausibility limit: no structural metal yields below 1 MPa or above 3 GPa";
        area: 1e-8 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        second_moment: 1e-16 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        length: 1e-3 <= .. <= 100 ; "plausibility limit: no link is shorter than 1 mm or longer than 100 m";
    }
    let euler = euler_load(elastic_modulus, second_moment, length)?;
    let squash = yield_strength * area;
    let stocky = euler >= squash / 2.0;
    Ok(if stocky { squash * (1.0 - (squash / euler).si() / 4.0) } else { euler })
}
