//! Constraints of an axle: the lengths of its links, and the wrenches of links that deflect.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::frame::{
    COORDINATES, CRANK, Coordinates, Each, Ends, FORWARD, Frame, Links, Many, PITCH, ROLL, UP, X, Y, YAW, Z,
};
use super::twist::{Along, Paths, Twist, turned};
use crate::suspension::kinematics::vector::Vector;

/// The links where they stand now.
#[derive(Debug, Clone, Copy)]
pub(super) struct Held {
    /// From the axle's middle to the end there.
    pub(super) arm: Many,
    /// The part of that which is the crank's, on the axle or on the body.
    arm_crank: Many,
    body_crank: Many,
    /// From the body to the axle.
    pub(super) along: Many,
    pub(super) length: Each,
    /// By how much each is longer than drawn.
    pub(super) stretch: Each,
    /// Derivatives of the lengths, by each coordinate.
    pub(super) row: [Each; COORDINATES],
}

impl Held {
    #[inline(always)]
    pub(super) fn new(links: &Links, frame: &Frame) -> Held {
        let Ends { arm, arm_crank, body_crank, between } = frame.ends(links);
        let length = between.dot(between).map(f64::sqrt);
        let along = between * length.map(|length| 1.0 / length);
        // Moment of a unit of force in the link about the axle's middle.
        let moment = arm.cross(along);
        let about = |axis: Vector| moment.dot(Many::all(axis));
        let (pitch, roll) = (about(frame.pitch_axis()), about(frame.roll_axis));
        let mut row = [along.x, along.y, moment.z, pitch, Each::ZERO, along.z, roll];
        if frame.crank.is_some() {
            let on_axle = Many::all(frame.crank_axis()).cross(arm_crank);
            row[CRANK] = along.dot(on_axle - Many::all(FORWARD).cross(body_crank));
        }
        Held { arm, arm_crank, body_crank, along, length, stretch: length - links.length, row }
    }

    /// Motion of the links along a path.
    #[inline(always)]
    pub(super) fn moving(&self, twist: &Twist, frame: &Frame) -> Moving {
        let mut on = Moving {
            arm: Paths::turned(self.arm, twist.spin, twist.spin_rate),
            arm_crank: Paths::ZERO,
            body_crank: Paths::ZERO,
            between: Paths::ZERO,
        };
        let (mut velocity, mut acceleration) = (Many::all(twist.velocity), Many::all(twist.acceleration));
        if frame.crank.is_some() {
            let axis = twist.along(frame.crank_axis());
            let (turn, second) = (twist.rates[CRANK], twist.seconds[CRANK]);
            let spin = twist.spin + axis.at * turn;
            let spin_rate = twist.spin_rate + axis.rate * turn + axis.at * second;
            on.arm_crank = Paths::turned(self.arm_crank, spin, spin_rate);
            let rigid = Paths::turned(self.arm - self.arm_crank, twist.spin, twist.spin_rate);
            on.arm.rate = rigid.rate + on.arm_crank.rate;
            on.arm.second = rigid.second + on.arm_crank.second;
            on.body_crank = Paths::turned(self.body_crank, FORWARD * turn, FORWARD * second);
            velocity = velocity - on.body_crank.rate;
            acceleration = acceleration - on.body_crank.second;
        }
        on.between = Paths {
            at: self.along * self.length,
            rate: velocity + on.arm.rate,
            second: acceleration + on.arm.second,
        };
        on
    }

    /// First and second derivatives of the lengths along a path.
    #[inline(always)]
    pub(super) fn lengthening(&self, between: &Paths) -> [Each; 2] {
        let rate = self.along.dot(between.rate);
        let over = self.length.map(|length| 1.0 / length);
        let bend = (between.rate.dot(between.rate) - rate * rate) * over;
        [rate, bend + self.along.dot(between.second)]
    }
}

/// Motion of the links along a path.
#[derive(Debug, Clone, Copy)]
pub(super) struct Moving {
    arm: Paths,
    arm_crank: Paths,
    body_crank: Paths,
    pub(in crate::suspension) between: Paths,
}

/// Second derivatives of half the squares of the links' lengths, each times its force over its length, by two coordinates.
///
/// With the arm `r` of a link, `b` between its ends and `p = b - r`: `1`, `a x r` and `(a' . r) (a . p) - (a' . a) (r . p)` for two shifts, a shift and a turn about `a`, and
/// turns about `a'` and about `a` within it; so that sums over the links suffice.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bends {
    sum: f64,
    arms: Vector,
    /// Products of arm and `p`, a column for each component of `p`.
    products: [Vector; 3],
    /// Motion of the crank with each coordinate.
    crank: Coordinates,
}

impl Bends {
    /// `over` are the forces over the lengths.
    #[inline(always)]
    pub(super) fn new(held: &Held, frame: &Frame, over: Each) -> Bends {
        let between = held.along * held.length;
        let (arm, across) = (held.arm * over, between - held.arm);
        let once = Each::all(1.0);
        let mut crank = [0.0; COORDINATES];
        if frame.crank.is_some() {
            let axis = Many::all(frame.crank_axis());
            let on_axle = axis.cross(held.arm_crank);
            let turning = Many::all(FORWARD).cross(held.body_crank);
            let column = on_axle - turning;
            let Vector { x, y, z } = column.sum(over);
            (crank[X], crank[Y], crank[Z]) = (x, y, z);
            for (place, turn) in turns(frame) {
                let turn = Many::all(turn);
                crank[place] =
                    (turn.cross(held.arm).dot(column) + between.dot(turn.cross(on_axle))).dot(over);
            }
            let swing = axis.cross(on_axle) - Many::all(FORWARD).cross(turning);
            crank[CRANK] = (column.dot(column) + between.dot(swing)).dot(over);
        }
        Bends {
            sum: over.dot(once),
            arms: arm.sum(once),
            products: [arm.sum(across.x), arm.sum(across.y), arm.sum(across.z)],
            crank,
        }
    }

    #[inline]
    pub(super) fn whole(&self, frame: &Frame) -> [Coordinates; COORDINATES] {
        let mut whole = [[0.0; COORDINATES]; COORDINATES];
        let mut set = |j: usize, k: usize, bend: f64| (whole[j][k], whole[k][j]) = (bend, bend);
        for shift in [X, Y, Z] {
            set(shift, shift, self.sum);
        }
        let [a, b, c] = self.products;
        let trace = a.x + b.y + c.z;
        let turns = turns(frame);
        for (place, (outer, axis)) in turns.into_iter().enumerate() {
            let column = axis.cross(self.arms);
            for (shift, along) in [(X, column.x), (Y, column.y), (Z, column.z)] {
                set(shift, outer, along);
            }
            for (inner, within) in turns.into_iter().skip(place) {
                let product = axis.dot(a * within.x + b * within.y + c * within.z);
                set(outer, inner, product - axis.dot(within) * trace);
            }
        }
        if frame.crank.is_some() {
            for (place, bend) in self.crank.into_iter().enumerate() {
                set(CRANK, place, bend);
            }
        }
        whole
    }
}

/// The axes of the angles; each one turns with those before it.
fn turns(frame: &Frame) -> [(usize, Vector); 3] {
    [(YAW, UP), (ROLL, frame.roll_axis), (PITCH, frame.pitch_axis())]
}

/// Forces of links on the axle along a path: their sum, their moment about its middle, and those on a crank on the axle and on the body.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wrench {
    force: Along,
    moment: Along,
    arm_crank: Along,
    body_crank: Along,
}

impl Wrench {
    #[inline(always)]
    pub(super) fn new(forces: &Paths, on: &Moving, cranked: bool) -> Wrench {
        let crank = |arm: &Paths| if cranked { arm.cross(forces).sum() } else { Along::default() };
        Wrench {
            force: forces.sum(),
            moment: on.arm.cross(forces).sum(),
            arm_crank: crank(&on.arm_crank),
            body_crank: crank(&on.body_crank),
        }
    }

    /// Second derivatives of what it does on the free coordinates, and the first one of its moment about the roll axis.
    #[inline(always)]
    pub(super) fn on(&self, twist: &Twist, frame: &Frame) -> ([f64; 5], f64) {
        let pitch = self.moment.dot(&twist.along(frame.pitch_axis()));
        let roll = turned(frame.roll_axis, UP * twist.rates[YAW], UP * twist.seconds[YAW]);
        let crank = match frame.crank {
            Some(_) => self.arm_crank.dot(&twist.along(frame.crank_axis()))[1] - self.body_crank.second.x,
            None => 0.0,
        };
        let Vector { x, y, .. } = self.force.second;
        ([x, y, self.moment.second.z, pitch[1], crank], self.moment.dot(&roll)[0])
    }
}
