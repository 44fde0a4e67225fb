use crate::base::valid::whole;
use crate::units::{Length, LinearStiffness, Ratio, Stress};
use crate::{Result, valid};

/// Rate of a semi-elliptic leaf spring at the axle in its middle.
///
/// # Formula
/// `k = 4 E w t^3 (3 n_f + 2 n_g) / (3 L^3)`
///
/// # Parameters
/// - `elastic_modulus` — `E`, elastic modulus of the steel, 206 GPa or nearly
/// - `leaf_width` — `w`, width of every leaf
/// - `leaf_thickness` — `t`, thickness of every leaf
/// - `span` — `L`, length from eye to eye, minus the length that the clamp of the axle holds stiff
/// - `full_length_leaves` — `n_f`, whole: leaves that reach from eye to eye, the main leaf among them
/// - `graduated_leaves` — `n_g`, whole: leaves that get shorter step by step
///
/// # Returns
/// Force at the middle over deflection of the middle.
///
/// # Valid for
/// - `1000000 <= elastic_modulus <= 10000000000000`
/// - `0.001 <= leaf_width <= 1`
/// - `0.0001 <= leaf_thickness <= 0.1`
/// - `0.01 <= span <= 10`
/// - `1 <= full_length_leaves <= 100`
/// - `0 <= graduated_leaves <= 100`
///
/// `full_length_leaves` and `graduated_leaves` are whole numbers. A symmetric semi-elliptic spring with the axle in its middle, leaves of one section, steps that follow a triangle. The full-length leaves are one beam and the graduated ones another, which deflect alike at the eyes; leaves that touch all along are stiffer by up to a twentieth. No friction: it makes small movements much stiffer. Deflections small against the span; shackle and camber left aside.
///
/// # Source
/// Beam theory: the graduated leaves make a triangle, the full-length leaves a rectangle, deflected alike; SAE HS-788, Manual on Design and Application of Leaf Springs, and the handbook form with 2 n_g + 3 n_f (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) for leaves that are not whole
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::leaf_pack_rate(
///     Stress::of::<GPa>(206.0), Length::of::<mm>(60.0), Length::of::<mm>(7.0), Length::of::<mm>(1180.0), Ratio::of::<one>(2.0), Ratio::of::<one>(5.0),
/// )?;
/// assert_eq!(format!("{:.1} N/mm", rate.in_::<N_mm>()), "55.0 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A leaf spring under load stores enough energy to kill, and a broken main leaf lets the axle go. Local codes and licensed practice come first.
#[inline]
pub fn leaf_pack_rate(
    elastic_modulus: Stress,
    leaf_width: Length,
    leaf_thickness: Length,
    span: Length,
    full_length_leaves: Ratio,
    graduated_leaves: Ratio,
) -> Result<LinearStiffness> {
    valid! {
        elastic_modulus: 1e6 <= .. <= 1e13 ; "plausibility limit: solids lie between 1 MPa and 10 TPa";
        leaf_width: 0.001 <= .. <= 1 ; "plausibility limit: leaves are between 1 mm and 1 m wide";
        leaf_thickness: 0.0001 <= .. <= 0.1 ; "plausibility limit: leaves are between 0.1 mm and 100 mm thick";
        span: 0.01 <= .. <= 10 ; "plausibility limit: leaf springs are between 10 mm and 10 m long";
        full_length_leaves: 1 <= .. <= 100 ; "definition: the main leaf carries the eyes; plausibility limit: at most 100";
        graduated_leaves: 0 <= .. <= 100 ; "definition: a count; plausibility limit: at most 100";
    }
    whole("full_length_leaves", full_length_leaves)?;
    whole("graduated_leaves", graduated_leaves)?;
    let slenderness = leaf_thickness / span;
    let cubed = slenderness * slenderness * slenderness;
    let leaves = 3.0 * full_length_leaves + 2.0 * graduated_leaves;
    Ok(LinearStiffness::from_raw((4.0 * elastic_modulus).raw() * leaf_width * cubed * leaves / 3.0))
}
