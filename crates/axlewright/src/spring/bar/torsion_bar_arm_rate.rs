use crate::units::{Angle, Length, LinearStiffness, RotationalStiffness, Torque};
use crate::{Result, valid};

/// Vertical rate at the end of a torsion bar's arm, with what the leaning arm adds.
///
/// # Formula
/// `k = (K + T tan(b)) / (R cos(b))^2`
///
/// # Parameters
/// - `torsional_rate` — `K`, torque over twist of the whole bar, end to end
/// - `arm_length` — `R`, length of the arm, from the axis of the bar to its end
/// - `arm_angle` — `b`, angle of the arm above the horizontal, positive if its end is higher than the bar
/// - `torque` — `T`, torque in the bar there, positive if it presses the end of the arm down
///
/// # Returns
/// Tangent rate: vertical force over vertical travel at the end of the arm. Negative where the arm folds: nothing brings it back there.
///
/// # Valid for
/// - `0.001 <= torsional_rate <= 1000000000`
/// - `0.001 <= arm_length <= 100`
/// - `-1.4 <= arm_angle <= 1.4`
/// - `-1000000000 <= torque <= 1000000000`
///
/// A stiff arm square to the bar, moved by a vertical force. From there to the wheel the motion ratio of what lies between counts with its square.
///
/// # Source
/// Derivative of the vertical force `T / (R cos(b))` over the travel `R sin(b)`; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 21 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{spring, units::*};
/// let rate = spring::torsion_bar_arm_rate(
///     RotationalStiffness::of::<Nm_deg>(45.0), Length::of::<mm>(350.0), Angle::of::<deg>(-10.0), Torque::of::<Nm>(1100.0),
/// )?;
/// assert_eq!(format!("{:.1} N/mm", rate.in_::<N_mm>()), "20.1 N/mm");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A twisted bar stores enough energy to kill; unload it before a lever or a link comes off. Local codes and licensed practice come first.
#[inline]
pub fn torsion_bar_arm_rate(
    torsional_rate: RotationalStiffness,
    arm_length: Length,
    arm_angle: Angle,
    torque: Torque,
) -> Result<LinearStiffness> {
    valid! {
        torsional_rate: 0.001 <= .. <= 1e9 ; "plausibility limit: bars lie between 1 mN·m/rad and 1 GN·m/rad";
        arm_length: 0.001 <= .. <= 100 ; "plausibility limit: arms are between 1 mm and 100 m long";
        arm_angle: (-1.4) <= .. <= 1.4 ; "plausibility limit: beyond 80 degrees an arm is no lever";
        torque: (-1e9) <= .. <= 1e9 ; "plausibility limit: no bar of a road vehicle bears 1 GN·m";
    }
    let lever = arm_length.si() * arm_angle.si().cos();
    let turned = torsional_rate.si() + torque.si() * arm_angle.si().tan();
    Ok(LinearStiffness::from_si(turned / (lever * lever)))
}
