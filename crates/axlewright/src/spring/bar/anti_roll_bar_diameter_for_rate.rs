use crate::units::{Length, LinearStiffness, Stress};
use crate::{Result, valid};
use core::f64::consts::PI;

/// Diameter of the solid anti-roll bar that has the wanted rate at the ends of its arms.
///
/// # Formula
/// `D = (16 k R^2 L / (pi G))^(1/4)`
///
/// # Parameters
/// - `bar_rate` — `k`, wanted force at either end over travel of that end, the other end travelling as far the other way
/// - `arm_length` — `R`, length of each arm, square to the axis of the bar, from that axis to its link
/// - `active_length` — `L`, length of the bar that twists, between the arms
/// - `shear_modulus` — `G`, shear modulus of the steel, 79 GPa or nearly
///
/// # Returns
/// Diameter of a solid round bar; the rate rises with its fourth power, so that a millimetre on 20 mm is a fifth.
///
/// # Valid for
/// - `0.1 <= bar_rate <= 1000000000`
/// - `0.001 <= arm_length <= 100`
/// - `0.001 <= active_length <= 100`
/// - `1000000 <= shear_modulus <= 10000000000000`
///
/// Stiff arms and links: with arms that bend or soft bushes the bar has to be thicker.
///
/// # Source
/// Inverse of `spring::torsion_bar_rate` and `spring::anti_roll_bar_rate`
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let diameter = spring::anti_roll_bar_diameter_for_rate(
///     LinearStiffness::of::<N_mm>(60.0), Length::of::<mm>(250.0), Length::of::<mm>(900.0), Stress::of::<GPa>(79.3),
/// )?;
/// assert_eq!(format!("{:.1} mm", diameter.in_::<mm>()), "21.6 mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A twisted bar stores enough energy to kill; unload it before a lever or a link comes off. Local codes and licensed practice come first.
#[inline]
pub fn anti_roll_bar_diameter_for_rate(
    bar_rate: LinearStiffness,
    arm_length: Length,
    active_length: Length,
    shear_modulus: Stress,
) -> Result<Length> {
    valid! {
        bar_rate: 0.1 <= .. <= 1e9 ; "plausibility limit: bars lie between 0.1 N/m and 1 GN/m";
        arm_length: 0.001 <= .. <= 100 ; "plausibility limit: arms are between 1 mm and 100 m long";
        active_length: 0.001 <= .. <= 100 ; "plausibility limit: bars are between 1 mm and 100 m long";
        shear_modulus: 1e6 <= .. <= 1e13 ; "plausibility limit: solids lie between 1 MPa and 10 TPa";
    }
    let (rate, arm) = (bar_rate.si(), arm_length.si());
    let fourth_power = 16.0 * rate * arm * arm * active_length.si() / (PI * shear_modulus.si());
    Ok(Length::from_si(fourth_power.sqrt().sqrt()))
}
