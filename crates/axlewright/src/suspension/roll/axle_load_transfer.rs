use crate::base::table::record;
use crate::units::{Acceleration, Angle, Force, Length, Mass, RotationalStiffness};
use crate::{Result, valid};

record! {
    /// Load that the outer wheel of an axle gains in a turn.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct AxleLoadTransfer {
        /// By the unsprung mass itself: at once, whatever the springs are.
        pub unsprung_transfer: Force,
        /// By the links, through the roll centre: at once; negative where it lies below the ground.
        pub geometric_transfer: Force,
        /// By springs, bar and tyres: as the body rolls.
        pub elastic_transfer: Force,
        /// All of it: what the outer wheel gains and the inner wheel loses.
        pub load_transfer: Force,
    }
}

/// Load that the outer wheel of an axle gains in a turn, by the way it takes.
///
/// # Formula
/// `F_u = m_u a_y z_u / t`, `F_g = m_a a_y z / t`, `F_e = K phi / t`, `F = F_u + F_g + F_e`
///
/// # Parameters
/// - `unsprung_mass` — `m_u`, unsprung mass of the axle, both wheels together
/// - `unsprung_height` — `z_u`, height of its centre of gravity above the ground: the loaded radius, nearly
/// - `axle_sprung_mass` — `m_a`, sprung mass that the axle carries: scale reading of the axle less its unsprung mass
/// - `roll_centre_height` — `z`, height of the roll centre of the axle above the ground; negative below it
/// - `roll_stiffness` — `K`, roll stiffness of the axle to the ground: springs, bar and tyres
/// - `roll_angle` — `phi`, roll angle of the body to the ground, positive out of the turn: `roll_gradient` times the acceleration
/// - `track` — `t`, distance between the tyre centres
/// - `lateral_acceleration` — `a_y`, towards the inside of the turn
///
/// # Returns
/// See the fields of [`AxleLoadTransfer`].
///
/// # Valid for
/// - `0 <= unsprung_mass <= 1000000`
/// - `0 <= unsprung_height <= 100`
/// - `0 <= axle_sprung_mass <= 1000000`
/// - `-10 <= roll_centre_height <= 10`
/// - `0 <= roll_stiffness <= 1000000000000`
/// - `-1.6 <= roll_angle <= 1.6`
/// - `0.01 <= track <= 100`
/// - `0 <= lateral_acceleration <= 1000`
///
/// A steady turn on a level road, small angles, both wheels on the ground: the inner wheel lifts where the transfer is more than half of the axle's load. A stiff frame.
///
/// # Source
/// Moments about the roll centre and the ground; Milliken and Milliken, Race Car Vehicle Dynamics (1995), ch. 18, and Dixon, Tires, Suspension and Handling (1996), ch. 5 (from memory)
///
/// # Errors
/// [`Error::OutOfRange`](crate::Error::OutOfRange)
///
/// # Example
/// ```
/// use axlewright::{suspension, units::*};
/// let on = suspension::axle_load_transfer(
///     Mass::of::<kg>(134.0), Length::of::<mm>(340.0), Mass::of::<kg>(1089.0), Length::of::<mm>(60.0),
///     RotationalStiffness::of::<Nm_deg>(996.0), Angle::of::<deg>(4.1), Length::of::<mm>(1540.0), Acceleration::of::<gn>(0.5),
/// )?;
/// assert_eq!(format!("{:.0} N, of it {:.0} N elastic", on.load_transfer.in_::<N>(), on.elastic_transfer.in_::<N>()), "3005 N, of it 2652 N elastic");
/// # Ok::<(), axlewright::Error>(())
/// ```
///
/// # Caution
/// A wheel that lifts is the step before a rollover. Local codes and licensed practice come first.
#[inline]
pub fn axle_load_transfer(
    unsprung_mass: Mass,
    unsprung_height: Length,
    axle_sprung_mass: Mass,
    roll_centre_height: Length,
    roll_stiffness: RotationalStiffness,
    roll_angle: Angle,
    track: Length,
    lateral_acceleration: Acceleration,
) -> Result<AxleLoadTransfer> {
    valid! {
        unsprung_mass: 0 <= .. <= 1e6 ; "definition: a mass is not negative; no axle weighs 1000 t";
        unsprung_height: 0 <= .. <= 100 ; "definition: above the ground; no road vehicle is 100 m high";
        axle_sprung_mass: 0 <= .. <= 1e6 ; "definition: a mass is not negative; no axle carries 1000 t";
        roll_centre_height: (-10) <= .. <= 10 ; "plausibility limit: roll centres that matter lie within 10 m of the ground";
        roll_stiffness: 0 <= .. <= 1e12 ; "definition: a stiffness is not negative; none reaches 1 TN·m/rad";
        roll_angle: (-1.6) <= .. <= 1.6 ; "definition: beyond a right angle it lies on its side";
        track: 0.01 <= .. <= 100 ; "definition: a distance between wheels, of a road vehicle";
        lateral_acceleration: 0 <= .. <= 1000 ; "plausibility limit: no road vehicle turns with 100 g0";
    }
    let unsprung_transfer = unsprung_mass * lateral_acceleration * (unsprung_height / track);
    let geometric_transfer = axle_sprung_mass * lateral_acceleration * (roll_centre_height / track);
    let elastic_transfer = Force::from_si(roll_stiffness.si() * roll_angle.si() / track.si());
    let load_transfer = unsprung_transfer + geometric_transfer + elastic_transfer;
    Ok(AxleLoadTransfer { unsprung_transfer, geometric_transfer, elastic_transfer, load_transfer })
}
