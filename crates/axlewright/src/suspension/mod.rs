//! Suspension: linkages drawn point by point, roll, and how the axles share what a turn moves.
//!
//! Axes as ISO 8855: x forward, y left, z up, fixed in the body; the origin of a drawing is where the builder puts it, on the vehicle's centre
//! plane (y = 0), and one for the whole drawing. A linkage is that of a left wheel; the right one is its mirror image in that plane, and
//! its rack travel has the other sign. Of a live axle every link is said: as a pair, whose left one is drawn, or as a single one. Of roll, heights are
//! above the ground.
//!
//! Signs, after ISO 8855 and SAE J670 (from memory), for the left wheel: travel `z` (m), of the wheel's centre against the body, positive in
//! bump; rack travel `y_r` (m), positive to the left; camber positive with the top of the wheel outboard; toe, of one wheel and as an angle,
//! positive with its front inboard (toe-in); caster positive with the upper end of the steering axis to the rear; kingpin
//! inclination positive with its upper end inboard; scrub radius positive with the contact point outboard of the steering axis; mechanical trail
//! positive with the contact point behind it, both at the ground and along the body's axes. All angles in rad. The body's roll angle is given
//! out of the turn, which is positive about x in a left turn. Roll centre: the kinematic one, at ride height, in the transverse plane through
//! the wheel centres; of an axle on a lateral rod the height of the rod is told on the centre plane. Roll gradient: body to ground, tyres included. Of a live axle: heave of its middle against the body, positive in bump; roll, the elevation of
//! the line through its wheels' centres, positive with the left wheel in bump, which is the other way than the body's roll over a level axle; steer of the axle, that line in plan, positive to the left; pitch of the axle
//! positive with its front down, pinion angle with its nose up.
//!
//! Symbols: `k` rate of a wheel, spring, bar end or tyre (N/m), `K` roll stiffness (N·m/rad), `r` motion ratio, shortening of the spring over travel (no unit), `t` track (m), `m_s` sprung and
//! `m_u` unsprung mass (kg), `z` height of a roll centre and `h_1` height of the sprung mass over the roll axis (m), `phi` roll angle (rad),
//! `a_y` lateral acceleration (m/s²), `G` roll gradient (rad·s²/m); `F` compressive force (N), `L` length between the eyes (m), `h` height of the centre
//! of gravity (m), `l` wheelbase (m).
//!
//! Left out here: bushes but for those of links that bind, friction; a frame that twists, and what moving tracks and roll centres do to the balance in roll.

#[cfg(feature = "sheet")]
mod also;
#[cfg(feature = "sheet")]
mod classes;
mod independent;
#[cfg(feature = "sheet")]
mod inputs;
mod kinematics;
mod leaf_axle;
mod live_axle;
mod parts;
mod roll;
#[cfg(feature = "sheet")]
mod sheet;
#[cfg(test)]
#[cfg(feature = "serde")]
mod tests;

pub use crate::renamed::suspension::*;
pub use independent::*;
pub use kinematics::TravelRange;
pub use leaf_axle::*;
pub use live_axle::*;
pub use parts::{
    AntiRollBar, Arm, Axle, BrakePlace, Braking, Carrier, CoilOver, CoilSpring, Damper, Driving, JointLimits,
    Point, SpringSeats, StrutLeg, TieRod, TorsionBar, Wheel,
};
pub use roll::*;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
