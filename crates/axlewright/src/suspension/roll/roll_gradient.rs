use crate::units::{Length, Mass, RollGradient, RotationalStiffness, STANDARD_GRAVITY};
use crate::{Result, cannot, valid};

/// Roll angle of the body over lateral acceleration, body to ground.
///
/// # Formula
/// `G = m_s h_1 / (K_f + K_r - m_s g h_1)`
///
/// # Parameters
/// - `sprung_mass` — `m_s`, sprung mass of the whole vehicle
/// - `roll_arm` — `h_1`, height of the centre of gravity of the sprung mass over the roll axis
/// - `front_roll_stiffness` — `K_f`, roll stiffness of the front axle to the ground: springs, bar and tyres, see `roll_stiffness_over_tyres`
/// - `rear_roll_stiffness` — `K_r`, roll stiffness of the rear axle to the ground
///
/// # Returns
/// Roll angle over lateral acceleration; the body leans out of the turn.
///
/// # Valid for
/// - `0.001 <= sprung_mass <= 1000000`
/// - `0 <= roll_arm <= 100`
/// - `0 <= front_roll_stiffness <= 1000000000000`
/// - `0 <= rear_roll_stiffness <= 1000000000000`
///
/// Small angles, a steady turn, a stiff frame. The roll of the axles on their tyres under what the roll centres carry is left out; the model `RollBalance` has it.
///
/// # Source
/// Moments about the roll axis; Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 6, roll rate (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange), [`Error::NoSolution`](crate::Error::NoSolution) where the body would fall over by its own weight
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let gradient = suspension::roll_gradient(
///     Mass::of::<kg>(2070.0), Length::of::<mm>(568.0), RotationalStiffness::of::<Nm_deg>(996.0), RotationalStiffness::of::<Nm_deg>(612.0),
/// )?;
/// assert_eq!(format!("{:.1} deg/g", gradient.in_::<deg_gn>()), "8.2 deg/g");
/// # Ok::<(), axlewright::Error>(())
/// ```
#[inline]
pub fn roll_gradient(
    sprung_mass: Mass,
    roll_arm: Length,
    front_roll_stiffness: RotationalStiffness,
    rear_roll_stiffness: RotationalStiffness,
) -> Result<RollGradient> {
    valid! {
        sprung_mass: 0.001 <= .. <= 1e6 ; "plausibility limit: no vehicle weighs 1000 t";
        roll_arm: 0 <= .. <= 100 ; "definition: below the axis the body leans into the turn, which is another matter";
        front_roll_stiffness: 0 <= .. <= 1e12 ; "definition: a stiffness is not negative; none reaches 1 TN·m/rad";
        rear_roll_stiffness: 0 <= .. <= 1e12 ; "definition: a stiffness is not negative; none reaches 1 TN·m/rad";
    }
    let overturning = sprung_mass.si() * roll_arm.si();
    let stiffness = front_roll_stiffness.si() + rear_roll_stiffness.si();
    let righting = stiffness - overturning * STANDARD_GRAVITY;
    if righting <= 1e-9 * stiffness {
        let least = RotationalStiffness::from_si(overturning * STANDARD_GRAVITY) - rear_roll_stiffness;
        return Err(cannot!(
            front_roll_stiffness > least, rear_roll_stiffness;
            "does not hold the body upright against its own weight: stiffen either axle"
        ));
    }
    Ok(RollGradient::from_si(overturning / righting))
}
