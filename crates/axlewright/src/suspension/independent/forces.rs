//! Forces in the parts of an independent wheel's linkage while a load acts on its tyre.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::balance::{Balance, Borne, Load, ROD, SPRING, Turned};
use super::linkage::Pose;
use super::prepared::{Ends, PreparedLinkage, Upper};
use crate::base::table::record;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::parts::Carrier;
use crate::units::{Force, Length, Torque};
use crate::{Error, Result, cannot, valid};
use nalgebra::{SMatrix, SVector};

record! {
    /// Forces in the linkage of one wheel, in the body's axes; a result that is not known, or of a part that is not there, is not a number.
    #[derive(Debug, Clone, PartialEq)]
    pub struct WheelForces {
        /// Leg of the upper arm to its front pivot, tension positive.
        pub upper_front_leg: Force,
        /// Leg of the upper arm to its rear pivot, tension positive.
        pub upper_rear_leg: Force,
        /// Leg of the lower arm to its front pivot, tension positive.
        pub lower_front_leg: Force,
        /// Leg of the lower arm to its rear pivot, tension positive.
        pub lower_rear_leg: Force,
        /// Tie rod, tension positive.
        pub tie_rod: Force,
        /// Coil-over along its eyes, compression positive: damper and stop, and the coil if it has no seats of its own; of a strut, the leg along its axis.
        pub coil_over: Force,
        /// Coil on seats of its own, compression positive.
        pub coil: Force,
        /// Torque in the torsion bar, positive if it carries the vehicle.
        pub torsion_bar_torque: Torque,
        /// Force of the upright on the upper joint, forward; the joint is the ball joint of the arm, or the top mount.
        pub upper_joint_x: Force,
        /// Force of the upright on the upper joint, to the left.
        pub upper_joint_y: Force,
        /// Force of the upright on the upper joint, up.
        pub upper_joint_z: Force,
        /// Force of the upright on the ball joint of the lower arm, forward.
        pub lower_joint_x: Force,
        /// Force of the upright on the ball joint of the lower arm, to the left.
        pub lower_joint_y: Force,
        /// Force of the upright on the ball joint of the lower arm, up.
        pub lower_joint_z: Force,
        /// Force on the body at the front pivot of the upper arm, forward.
        pub upper_front_pivot_x: Force,
        /// Force on the body at the front pivot of the upper arm, to the left.
        pub upper_front_pivot_y: Force,
        /// Force on the body at the front pivot of the upper arm, up.
        pub upper_front_pivot_z: Force,
        /// Force on the body at the rear pivot of the upper arm, forward.
        pub upper_rear_pivot_x: Force,
        /// Force on the body at the rear pivot of the upper arm, to the left.
        pub upper_rear_pivot_y: Force,
        /// Force on the body at the rear pivot of the upper arm, up.
        pub upper_rear_pivot_z: Force,
        /// Force on the body at the front pivot of the lower arm, forward.
        pub lower_front_pivot_x: Force,
        /// Force on the body at the front pivot of the lower arm, to the left.
        pub lower_front_pivot_y: Force,
        /// Force on the body at the front pivot of the lower arm, up.
        pub lower_front_pivot_z: Force,
        /// Force on the body at the rear pivot of the lower arm, forward.
        pub lower_rear_pivot_x: Force,
        /// Force on the body at the rear pivot of the lower arm, to the left.
        pub lower_rear_pivot_y: Force,
        /// Force on the body at the rear pivot of the lower arm, up.
        pub lower_rear_pivot_z: Force,
        /// Force on the rack at the inner joint of the tie rod, forward.
        pub rack_x: Force,
        /// Force on the rack at the inner joint of the tie rod, to the left.
        pub rack_y: Force,
        /// Force on the rack at the inner joint of the tie rod, up.
        pub rack_z: Force,
        /// Force on the body at the eye of the coil-over, forward; that of a strut is at its top mount.
        pub body_eye_x: Force,
        /// Force on the body at the eye of the coil-over, to the left.
        pub body_eye_y: Force,
        /// Force on the body at the eye of the coil-over, up.
        pub body_eye_z: Force,
        /// Force on the body at the seat of a coil that has seats of its own, forward.
        pub body_seat_x: Force,
        /// Force on the body at the seat of a coil that has seats of its own, to the left.
        pub body_seat_y: Force,
        /// Force on the body at the seat of a coil that has seats of its own, up.
        pub body_seat_z: Force,
        /// Peak bending moment of the upper arm across its axis, between its ball joint and a spring, damper or drop link that it carries; zero without one.
        pub upper_arm_bending: Torque,
        /// Peak bending moment of the lower arm across its axis, in the same way.
        pub lower_arm_bending: Torque,
        /// Side force of the strut's rod at the top mount, square to its axis.
        pub leg_side_force: Force,
        /// Bending moment of the strut's leg at its lower end from that side force.
        pub leg_bending: Torque,
    }
}

/// Forces of the ground on the tyre in the body's axes, with the heights of two of them above the ground.
#[derive(Clone, Copy)]
pub(super) struct TyreLoad {
    pub(super) longitudinal_force: Force,
    pub(super) longitudinal_height: Length,
    pub(super) lateral_force: Force,
    pub(super) lateral_height: Length,
    pub(super) vertical_force: Force,
    pub(super) drop_link_force: Force,
}

/// A part that pushes its carrier away from the body along a line.
struct Strutted {
    carrier: Carrier,
    /// Force on the carrier for a compression of 1 N.
    load: Load,
}

impl PreparedLinkage<'_> {
    /// The forces at a travel and rack travel: see [`DoubleWishbone::forces`](crate::suspension::DoubleWishbone::forces).
    pub(super) fn forces(&self, travel: Length, rack_travel: Length, on: TyreLoad) -> Result<WheelForces> {
        let (longitudinal_force, longitudinal_height) = (on.longitudinal_force, on.longitudinal_height);
        let (lateral_force, lateral_height) = (on.lateral_force, on.lateral_height);
        let (vertical_force, drop_link_force) = (on.vertical_force, on.drop_link_force);
        valid! {
            longitudinal_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            longitudinal_height: 0 <= .. <= 10 ; "definition: a height above the ground; plausibility limit: at most 10 m";
            lateral_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            lateral_height: 0 <= .. <= 10 ; "definition: a height above the ground; plausibility limit: at most 10 m";
            vertical_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            drop_link_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no link bears 100 MN";
        }
        if self.parts.coil_over.is_none() && self.parts.torsion_bar.is_none() {
            let message = "nothing carries the wheel: write it with its eyes, or `torsion_bar`";
            return Err(Error::document("coil_over", message));
        }
        let pose = self.pose(travel, rack_travel)?;
        let drop_link = match self.linkage.drop_link(&pose).zip(self.parts.anti_roll_bar) {
            Some(((eye, end), bar)) => {
                let force = (end - eye).unit() * drop_link_force.si();
                Some((bar.carried_by, Load { at: eye, force }))
            }
            None if drop_link_force.si() == 0.0 => None,
            None => return Err(cannot!(drop_link_force; "has no drop link: draw `anti_roll_bar`")),
        };
        self.balanced(&pose, rack_travel.si(), self.on_tyre(&pose, on), drop_link).ok_or_else(
            || cannot!(travel, rack_travel; "leaves the wheel without balance: a part lines up with another"),
        )
    }

    /// Forces of the ground on the upright.
    fn on_tyre(&self, pose: &Pose, on: TyreLoad) -> [Load; 3] {
        let (centre, contact) = (pose.wheel.at, self.contact(pose).1);
        let up = centre - contact;
        let at = |height: Length| contact + up * (height.si() / up.z);
        let [x, y, z] = [on.longitudinal_force, on.lateral_force, on.vertical_force].map(Force::si);
        [
            Load { at: at(on.longitudinal_height), force: vector(x, 0.0, 0.0) },
            Load { at: at(on.lateral_height), force: vector(0.0, y, 0.0) },
            Load { at: contact, force: vector(0.0, 0.0, z) },
        ]
    }

    /// The coil-over, or a coil on seats of its own, at a position.
    fn strutted(&self, ends: Option<Ends>, pose: &Pose) -> Option<Strutted> {
        let ends = ends?;
        let at = pose.body(ends.carrier).point(ends.lower).at;
        Some(Strutted { carrier: ends.carrier, load: Load { at, force: (at - ends.body).unit() } })
    }

    /// None if the equations have no solution.
    fn balanced(
        &self,
        pose: &Pose,
        rack: f64,
        ground: [Load; 3],
        drop_link: Option<(Carrier, Load)>,
    ) -> Option<WheelForces> {
        let (parts, springs) = (&self.parts, self.springs(pose));
        let top = self.linkage.upper_joint(pose);
        let lower = Turned {
            body: &pose.lower_arm,
            arm: parts.lower_arm,
            ball: pose.lower_ball,
            carrier: Carrier::LowerArm,
        };
        let upper = match parts.upper {
            Upper::Arm(arm) => {
                Some(Turned { body: &pose.upper_arm, arm, ball: top, carrier: Carrier::UpperArm })
            }
            Upper::Strut(..) => None,
        };
        let is_strut = upper.is_none();
        let eyes = self.strutted(self.eyes, pose);
        let coil = self.strutted(self.seats, pose).map(|on| {
            let force = springs.spring_force;
            (on.carrier, Load { force: on.load.force * force, ..on.load }, force)
        });
        let known = ground.map(|load| Some((Carrier::Upright, load)));
        let known = known
            .into_iter()
            .flatten()
            .chain(drop_link)
            .chain(coil.map(|(carrier, load, _)| (carrier, load)));

        let mut balance = Balance {
            origin: pose.lower_ball,
            arms: [Some(lower), upper],
            left: SMatrix::zeros(),
            right: SVector::zeros(),
        };
        balance.joint(0, (!is_strut).then_some(Carrier::UpperArm), top);
        balance.joint(3, Some(Carrier::LowerArm), pose.lower_ball);
        let (inner, rod) = (self.linkage.rack_end(rack), pose.tie_rod.unit());
        balance.unknown(ROD, Carrier::Upright, Load { at: inner + pose.tie_rod, force: -rod });
        for (carrier, load) in known.clone() {
            balance.known(carrier, load);
        }
        // What pushes the wheel down: an unknown force along the eyes, or else in the bar.
        let bar = parts.torsion_bar.map(|bar| {
            let place = usize::from(bar.turned_by == Carrier::UpperArm);
            (6 + place, -self.linkage.rest.body(bar.turned_by).bump())
        });
        match &eyes {
            Some(_) if is_strut => balance.left[(SPRING, SPRING)] = 1.0,
            Some(eyes) => balance.unknown(SPRING, eyes.carrier, eyes.load),
            None => {
                let (row, turn) = bar?;
                balance.left[(row, SPRING)] = turn;
            }
        }
        if let (Some(_), Some((row, turn))) = (&eyes, bar) {
            balance.right[row] -= turn * springs.torsion_bar_torque;
        }
        let found = balance.left.lu().solve(&balance.right)?;

        let joint = |first: usize| -vector(found[first], found[first + 1], found[first + 2]);
        let (on_upper, on_lower) = (joint(0), joint(3));
        let spring = eyes
            .as_ref()
            .filter(|_| !is_strut)
            .map(|on| (on.carrier, Load { force: on.load.force * found[SPRING], ..on.load }));
        let borne = |place: usize, force: Vector| {
            let arm = balance.arms[place].as_ref()?;
            let own = known.clone().chain(spring).filter(|(carrier, _)| *carrier == arm.carrier);
            let mut loads = [Load { at: arm.ball, force }; 4];
            let mut count = 1;
            for (slot, (_, load)) in loads.iter_mut().skip(1).zip(own) {
                *slot = load;
                count += 1;
            }
            Some(arm.borne(&loads[..count]))
        };
        let none = vector(f64::NAN, f64::NAN, f64::NAN);
        let absent = Borne { legs: [f64::NAN; 2], pivots: [none; 2], bending: f64::NAN };
        let lower = borne(0, on_lower)?;
        let upper = borne(1, on_upper).unwrap_or(absent);
        let axis = pose.upright.axis();
        let (leg, side) = if is_strut {
            (on_upper.dot(axis), on_upper - axis * on_upper.dot(axis))
        } else {
            (f64::NAN, none)
        };
        let reach = eyes.as_ref().map_or(f64::NAN, |on| (top - on.load.at).norm());
        let coil_over = match (&spring, &eyes) {
            (Some(_), _) => found[SPRING],
            (None, Some(_)) => leg,
            (None, None) => f64::NAN,
        };
        let torque = match (&eyes, bar) {
            (None, _) => found[SPRING],
            (Some(_), Some(_)) => springs.torsion_bar_torque,
            (Some(_), None) => f64::NAN,
        };
        let (force, torque_of) = (Force::from_si, Torque::from_si);
        let on_body = |load: Option<Vector>| load.map_or(none, |on| -on);
        let (eye, seat) = (on_body(spring.map(|(_, on)| on.force)), on_body(coil.map(|(_, on, _)| on.force)));
        let rack = rod * found[ROD];
        let [upper_front, upper_rear] = upper.pivots;
        let [lower_front, lower_rear] = lower.pivots;
        Some(WheelForces {
            upper_front_leg: force(upper.legs[0]),
            upper_rear_leg: force(upper.legs[1]),
            lower_front_leg: force(lower.legs[0]),
            lower_rear_leg: force(lower.legs[1]),
            tie_rod: force(found[ROD]),
            coil_over: force(coil_over),
            coil: force(coil.map_or(f64::NAN, |(.., force)| force)),
            torsion_bar_torque: torque_of(torque),
            upper_joint_x: force(on_upper.x),
            upper_joint_y: force(on_upper.y),
            upper_joint_z: force(on_upper.z),
            lower_joint_x: force(on_lower.x),
            lower_joint_y: force(on_lower.y),
            lower_joint_z: force(on_lower.z),
            upper_front_pivot_x: force(upper_front.x),
            upper_front_pivot_y: force(upper_front.y),
            upper_front_pivot_z: force(upper_front.z),
            upper_rear_pivot_x: force(upper_rear.x),
            upper_rear_pivot_y: force(upper_rear.y),
            upper_rear_pivot_z: force(upper_rear.z),
            lower_front_pivot_x: force(lower_front.x),
            lower_front_pivot_y: force(lower_front.y),
            lower_front_pivot_z: force(lower_front.z),
            lower_rear_pivot_x: force(lower_rear.x),
            lower_rear_pivot_y: force(lower_rear.y),
            lower_rear_pivot_z: force(lower_rear.z),
            rack_x: force(rack.x),
            rack_y: force(rack.y),
            rack_z: force(rack.z),
            body_eye_x: force(eye.x),
            body_eye_y: force(eye.y),
            body_eye_z: force(eye.z),
            body_seat_x: force(seat.x),
            body_seat_y: force(seat.y),
            body_seat_z: force(seat.z),
            upper_arm_bending: torque_of(upper.bending),
            lower_arm_bending: torque_of(lower.bending),
            leg_side_force: force(side.norm()),
            leg_bending: torque_of(side.norm() * reach),
        })
    }
}

#[cfg(test)]
mod tests;
