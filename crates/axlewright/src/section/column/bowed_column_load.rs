use super::euler_load;
use crate::units::{Area, Force, Length, SecondMoment, SectionModulus, Stress};
use crate::{Result, valid};

/// Load at which a bowed column begins to yield, pinned at both ends.
///
/// # Formula
/// `P = A s` with the lesser root of `(s_y - s) (s_e - s) = n s_e s`, `n = A e / W`, `s_e = pi^2 E I / (A L^2)`
///
/// # Parameters
/// - `elastic_modulus` — `E`, elastic modulus
/// - `yield_strength` — `s_y`, minimum yield strength
/// - `area` — `A`, area of the section
/// - `second_moment` — `I`, least second moment of the section
/// - `section_modulus` — `W`, elastic section modulus about the same axis
/// - `length` — `L`, length between the centres of the joints
/// - `bow` — `e`, distance of the middle from the straight line between the joints, unloaded; not measured: `L / 500`
///
/// # Returns
/// The load in compression, positive: the stress at the inside of the bow reaches yield.
///
/// # Valid for
/// - `1000000000 <= elastic_modulus <= 1000000000000`
/// - `1000000 <= yield_strength <= 3000000000`
/// - `0.00000001 <= area <= 100`
/// - `0.0000000000000001 <= second_moment <= 100`
/// - `0.000000000001 <= section_modulus <= 100`
/// - `0.001 <= length <= 100`
/// - `0 <= bow <= 10`
///
/// A small bow, in the shape of half a sine wave. A bend that was drawn or an offset of the joints is an eccentricity: use `secant_stress` for it.
///
/// # Source
/// Ayrton and Perry, with Robertson's use of it; `L / 500`: common practice, no source
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{section, units::*};
/// let on = section::bowed_column_load(
///     Stress::of::<GPa>(205.0), Stress::of::<MPa>(350.0), Area::of::<mm2>(274.8), SecondMoment::of::<mm4>(28_620.0),
///     SectionModulus::of::<mm3_modulus>(1_802.9), Length::of::<mm>(600.0), Length::of::<mm>(1.2),
/// )?;
/// assert_eq!(format!("{:.1} kN", on.in_::<kN>()), "72.2 kN");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A link that buckles lets go of its axle or wheel. Keep a margin of 2 and more, and have safety parts checked by a licensed engineer.
#[inline]
pub fn bowed_column_load(
    elastic_modulus: Stress,
    yield_strength: Stress,
    area: Area,
    second_moment: SecondMoment,
    section_modulus: SectionModulus,
    length: Length,
    bow: Length,
) -> Result<Force> {
    valid! {
        elastic_modulus: 1e9 <= .. <= 1e12 ; "plausibility limit: structural metals lie between 1 GPa and 1000 GPa";
        yield_strength: 1e6 <= .. <= 3e9 ; "plausibility limit: no structural metal yields below 1 MPa or above 3 GPa";
        area: 1e-8 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        second_moment: 1e-16 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        section_modulus: 1e-12 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        length: 1e-3 <= .. <= 100 ; "plausibility limit: no link is shorter than 1 mm or longer than 100 m";
        bow: 0 <= .. <= 10 ; "definition: a distance is not negative";
    }
    let critical = (euler_load(elastic_modulus, second_moment, length)? / area).si();
    let (yields, amount) = (yield_strength.si(), area.si() * bow.si() / section_modulus.si());
    let sum = yields + critical * (1.0 + amount);
    // The square below is never negative: it is (s_y - s_e)^2 for a straight column, and more with a bow.
    let root = (sum * sum - 4.0 * yields * critical).max(0.0).sqrt();
    Ok(Stress::from_si(2.0 * yields * critical / (sum + root)) * area)
}
