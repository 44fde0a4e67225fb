use crate::units::{Length, Mass, RollGradient, RotationalStiffness, STANDARD_GRAVITY};
use crate::{Result, valid};

/// Roll stiffness of both axles together that gives the wanted roll gradient.
///
/// # Formula
/// `K = m_s h_1 (g + 1 / G)`
///
/// # Parameters
/// - `sprung_mass` — `m_s`, sprung mass of the whole vehicle
/// - `roll_arm` — `h_1`, height of the centre of gravity of the sprung mass over the roll axis
/// - `roll_gradient` — `G`, wanted roll angle over lateral acceleration, body to ground
///
/// # Returns
/// Front and rear axle to the ground together: springs, bars and tyres.
///
/// # Valid for
/// - `0.001 <= sprung_mass <= 1000000`
/// - `0 <= roll_arm <= 100`
/// - `0.000001 <= roll_gradient <= 1`
///
/// Inverse of `suspension::roll_gradient`.
///
/// # Source
/// Moments about the roll axis; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6, roll rate (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let stiffness = suspension::roll_stiffness_for_gradient(Mass::of::<kg>(2070.0), Length::of::<mm>(568.0), RollGradient::of::<deg_gn>(6.0))?;
/// assert_eq!(format!("{:.0} N·m/deg", stiffness.in_::<Nm_deg>()), "2123 N·m/deg");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn roll_stiffness_for_gradient(
    sprung_mass: Mass,
    roll_arm: Length,
    roll_gradient: RollGradient,
) -> Result<RotationalStiffness> {
    valid! {
        sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: no vehicle weighs 1000 t";
        roll_arm: 0 <= .. <= 100 ; "definition: below the axis the body leans into the turn, which is another matter";
        roll_gradient: 0.000001 <= .. <= 1 ; "plausibility limit: between 0.0006 deg/g and 560 deg/g";
    }
    Ok(RotationalStiffness::from_si(
        sprung_mass.si() * roll_arm.si() * (STANDARD_GRAVITY + 1.0 / roll_gradient.si()),
    ))
}
