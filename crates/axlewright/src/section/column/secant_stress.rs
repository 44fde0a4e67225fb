use super::euler_load;
use crate::units::{Area, Force, Length, SecondMoment, SectionModulus, Stress};
use crate::{Result, cannot, valid};
use core::f64::consts::FRAC_PI_2;

/// Peak stress in a column whose load acts off its centroid, pinned at both ends.
///
/// # Formula
/// `s = P / A + P e / (W cos((pi / 2) sqrt(P / P_e)))` with `P_e = pi^2 E I / L^2`
///
/// # Parameters
/// - `compression` — `P`, load in compression, positive
/// - `elastic_modulus` — `E`, elastic modulus
/// - `area` — `A`, area of the section
/// - `second_moment` — `I`, second moment of the section in the plane of the eccentricity
/// - `section_modulus` — `W`, elastic section modulus about the same axis
/// - `length` — `L`, length between the centres of the joints
/// - `eccentricity` — `e`, distance of the load from the centroid of the section, the same at both ends; of a drawn bend the peak distance
///
/// # Returns
/// The stress in compression at the middle, positive. It is not proportional to the load.
///
/// # Valid for
/// - `0 <= compression <= 1000000000000`
/// - `1000000000 <= elastic_modulus <= 1000000000000`
/// - `0.00000001 <= area <= 100`
/// - `0.0000000000000001 <= second_moment <= 100`
/// - `0.000000000001 <= section_modulus <= 100`
/// - `0.001 <= length <= 100`
/// - `0 <= eccentricity <= 10`
///
/// Loads below the Euler load, elastic all through. For a drawn bend it is on the safe side.
///
/// # Source
/// Secant formula; Timoshenko and Gere, Theory of Elastic Stability, ch. 1 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for a load that is not below the Euler load
///
/// # Example
/// ```
/// use axlewright::{section, units::*};
/// let on = section::secant_stress(
///     Force::of::<kN>(20.0), Stress::of::<GPa>(205.0), Area::of::<mm2>(274.8), SecondMoment::of::<mm4>(28_620.0),
///     SectionModulus::of::<mm3_modulus>(1_802.9), Length::of::<mm>(600.0), Length::of::<mm>(10.0),
/// )?;
/// assert_eq!(format!("{:.0} MPa", on.in_::<MPa>()), "203 MPa");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A link that buckles lets go of its axle or wheel. Keep a margin of 2 and more, and have safety parts checked by a licensed engineer.
#[inline]
pub fn secant_stress(
    compression: Force,
    elastic_modulus: Stress,
    area: Area,
    second_moment: SecondMoment,
    section_modulus: SectionModulus,
    length: Length,
    eccentricity: Length,
) -> Result<Stress> {
    valid! {
        compression: 0 <= .. <= 1e12 ; "definition: compression is positive here";
        elastic_modulus: 1e9 <= .. <= 1e12 ; "plausibility limit: structural metals lie between 1 GPa and 1000 GPa";
        area: 1e-8 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        second_moment: 1e-16 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        section_modulus: 1e-12 <= .. <= 100 ; "plausibility limit: no member is thinner than 0.1 mm";
        length: 1e-3 <= .. <= 100 ; "plausibility limit: no link is shorter than 1 mm or longer than 100 m";
        eccentricity: 0 <= .. <= 10 ; "definition: a distance is not negative";
    }
    let euler = euler_load(elastic_modulus, second_moment, length)?;
    if compression >= euler {
        return Err(
            cannot!(compression < euler, second_moment, length; "is not below the Euler load: the column buckles"),
        );
    }
    let grown = eccentricity / (FRAC_PI_2 * (compression / euler).si().sqrt()).cos();
    Ok(compression / area + Stress::from_raw(compression.raw() * grown.raw() / section_modulus.raw()))
}
