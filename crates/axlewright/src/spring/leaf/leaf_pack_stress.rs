use crate::base::table::record;
use crate::base::valid::whole;
use crate::units::{Force, Length, Ratio, Stress};
use crate::{Result, valid};

record! {
    /// Bending stress in the leaves of a pack.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct LeafPackStress {
        /// In the full-length leaves, at the clamp: the peak.
        pub full_length_stress: Stress,
        /// In the graduated leaves, two thirds of it; without meaning where there are none.
        pub graduated_stress: Stress,
    }
}

/// Bending stress in the leaves of a semi-elliptic leaf spring under a load at its middle.
///
/// # Formula
/// `sigma_f = 9 F L / (2 w t^2 (3 n_f + 2 n_g))`, `sigma_g = 2 sigma_f / 3`
///
/// # Parameters
/// - `load` — `F`, load at the middle, carried by the spring
/// - `leaf_width` — `w`, width of every leaf
/// - `leaf_thickness` — `t`, thickness of every leaf
/// - `span` — `L`, length from eye to eye, minus the length that the clamp of the axle holds stiff
/// - `full_length_leaves` — `n_f`, whole: leaves that reach from eye to eye, the main leaf among them
/// - `graduated_leaves` — `n_g`, whole: leaves that get shorter step by step
///
/// # Returns
/// See the fields of [`LeafPackStress`].
///
/// # Valid for
/// - `-100000000 <= load <= 100000000`
/// - `0.001 <= leaf_width <= 1`
/// - `0.0001 <= leaf_thickness <= 0.1`
/// - `0.01 <= span <= 10`
/// - `1 <= full_length_leaves <= 100`
/// - `0 <= graduated_leaves <= 100`
///
/// `full_length_leaves` and `graduated_leaves` are whole numbers. A symmetric semi-elliptic spring with the axle in its middle, leaves of one section, steps that follow a triangle. The full-length leaves are one beam and the graduated ones another, which deflect alike at the eyes; leaves that touch all along are stiffer by up to a twentieth. No friction: it makes small movements much stiffer. Deflections small against the span; shackle and camber left aside. Leaves that were given different curvature (nip) share differently: the main leaf is relieved. What braking and drive wind into the spring comes on top.
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
/// let on = spring::leaf_pack_stress(
///     Force::of::<N>(6500.0), Length::of::<mm>(60.0), Length::of::<mm>(7.0), Length::of::<mm>(1180.0), Ratio::of::<one>(2.0), Ratio::of::<one>(5.0),
/// )?;
/// assert_eq!(format!("{:.0} MPa", on.full_length_stress.in_::<MPa>()), "734 MPa");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A leaf spring under load stores enough energy to kill, and a broken main leaf lets the axle go. Local codes and licensed practice come first.
#[inline]
pub fn leaf_pack_stress(
    load: Force,
    leaf_width: Length,
    leaf_thickness: Length,
    span: Length,
    full_length_leaves: Ratio,
    graduated_leaves: Ratio,
) -> Result<LeafPackStress> {
    valid! {
        load: (-1e8) <= .. <= 1e8 ; "plausibility limit: no spring of a road vehicle carries 100 MN";
        leaf_width: 0.001 <= .. <= 1 ; "plausibility limit: leaves are between 1 mm and 1 m wide";
        leaf_thickness: 0.0001 <= .. <= 0.1 ; "plausibility limit: leaves are between 0.1 mm and 100 mm thick";
        span: 0.01 <= .. <= 10 ; "plausibility limit: leaf springs are between 10 mm and 10 m long";
        full_length_leaves: 1 <= .. <= 100 ; "definition: the main leaf carries the eyes; plausibility limit: at most 100";
        graduated_leaves: 0 <= .. <= 100 ; "definition: a count; plausibility limit: at most 100";
    }
    whole("full_length_leaves", full_length_leaves)?;
    whole("graduated_leaves", graduated_leaves)?;
    let leaves = 3.0 * full_length_leaves + 2.0 * graduated_leaves;
    let full_length_stress = 4.5 * load * (span / leaf_thickness) / (leaf_width * leaf_thickness * leaves);
    Ok(LeafPackStress { full_length_stress, graduated_stress: full_length_stress * 2.0 / 3.0 })
}
