use crate::units::{Length, LinearStiffness, RotationalStiffness};
use crate::{Result, valid};

/// Rate of an anti-roll bar at the ends of its arms while they move in opposite directions.
///
/// # Formula
/// `k = 2 K / R^2`
///
/// # Parameters
/// - `torsional_rate` — `K`, torque over twist of the whole bar, end to end
/// - `arm_length` — `R`, length of each arm, square to the axis of the bar, from that axis to its link
///
/// # Returns
/// Force at either end over travel of that end, the other end travelling as far the other way. While both move alike the bar gives nothing.
///
/// # Valid for
/// - `0.001 <= torsional_rate <= 1000000000`
/// - `0.001 <= arm_length <= 100`
///
/// Stiff arms and links, bar free to turn in its bearings. Arms that bend and bushes that give are springs in series with it: `spring::series_rate`.
///
/// # Source
/// Twist of `2 z / R` for travels of `z` and `-z`, moment of the end force about the axis; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 16 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::anti_roll_bar_rate(RotationalStiffness::of::<Nm_deg>(45.0), Length::of::<mm>(250.0))?;
/// assert_eq!(format!("{:.1} N/mm", rate.in_::<N_mm>()), "82.5 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A twisted bar stores enough energy to kill; unload it before a lever or a link comes off. Local codes and licensed practice come first.
#[inline]
pub fn anti_roll_bar_rate(
    torsional_rate: RotationalStiffness,
    arm_length: Length,
) -> Result<LinearStiffness> {
    valid! {
        torsional_rate: 0.001 <= .. <= 1e9 ; "plausibility limit: bars lie between 1 mN·m/rad and 1 GN·m/rad";
        arm_length: 0.001 <= .. <= 100 ; "plausibility limit: arms are between 1 mm and 100 m long";
    }
    Ok(LinearStiffness::from_si(2.0 * torsional_rate.si() / (arm_length.si() * arm_length.si())))
}
