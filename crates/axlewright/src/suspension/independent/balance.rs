//! Balance of an upright on its arms: the equations, and what each arm gives to the body.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::linkage::Body;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::parts::{Arm, Carrier};
use nalgebra::{SMatrix, SVector};

/// A force and the point at which it acts.
#[derive(Clone, Copy)]
pub(super) struct Load {
    pub(super) at: Vector,
    pub(super) force: Vector,
}

/// Unknown numbers: two joints of three each, the tie rod, and what carries the wheel.
pub(super) const UNKNOWN: usize = 8;
/// Place of the tie rod among them, and of what carries the wheel.
pub(super) const ROD: usize = 6;
pub(super) const SPRING: usize = 7;

/// An arm at one position.
pub(super) struct Turned<'a> {
    pub(super) body: &'a Body,
    pub(super) arm: &'a Arm,
    pub(super) ball: Vector,
    pub(super) carrier: Carrier,
}

/// Forces of an arm on the body, in its legs, and its bending.
#[derive(Default)]
pub(super) struct Borne {
    pub(super) legs: [f64; 2],
    pub(super) pivots: [Vector; 2],
    pub(super) bending: f64,
}

impl Turned<'_> {
    /// Moment of a load about the axis of the arm.
    fn moment(&self, load: Load) -> f64 {
        self.body.axis().dot((load.at - self.body.foot()).cross(load.force))
    }

    /// How far out from the axis of the arm a point lies.
    fn out(&self, at: Vector) -> f64 {
        self.body.outward().dot(at - self.body.foot())
    }

    /// Forces on the pivots of the arm under all that acts on it. Along the axis, the legs share as a truss does; what a load between the ends
    /// adds along the axis is halved.
    pub(super) fn borne(&self, loads: &[Load]) -> Borne {
        let pivots = [&self.arm.front_pivot, &self.arm.rear_pivot].map(|pivot| pivot.vector());
        let across = pivots[1] - pivots[0];
        let (axis, outward) = (across.unit(), self.body.outward());
        let sum =
            |of: &dyn Fn(&Load) -> Vector| loads.iter().fold(Vector::default(), |sum, load| sum + of(load));
        let force = sum(&|load| load.force);
        let moment = sum(&|load| (load.at - pivots[0]).cross(load.force));
        // Forces of the body on the arm, square to the axis.
        let rear = axis.cross(moment) * (1.0 / across.norm());
        let front = -(force - axis * force.dot(axis)) - rear;
        let reach = self.out(self.ball);
        let legs = pivots.map(|pivot| pivot - self.ball);
        let mut along =
            [(front, 0), (rear, 1)].map(|(on, place)| -on.dot(outward) * legs[place].dot(axis) / reach);
        let missing = -force.dot(axis) - along[0] - along[1];
        for on in &mut along {
            *on += 0.5 * missing;
        }
        let on_arm = [front + axis * along[0], rear + axis * along[1]];
        Borne {
            legs: [0, 1].map(|place| on_arm[place].dot(legs[place].unit())),
            pivots: on_arm.map(|on| -on),
            bending: self.bending(loads),
        }
    }

    /// Peak moment about a line along the axis through a point at which something acts, of all that acts further out.
    fn bending(&self, loads: &[Load]) -> f64 {
        let axis = self.body.axis();
        let at = |cut: &Load| {
            let further = loads.iter().filter(|load| self.out(load.at) > self.out(cut.at));
            further.map(|load| axis.dot((load.at - cut.at).cross(load.force))).sum::<f64>().abs()
        };
        loads.iter().map(at).fold(0.0, f64::max)
    }
}

/// Equations of the balance: force and moment of the upright about its lower ball joint, then moment of each arm about its axis.
pub(super) struct Balance<'a> {
    pub(super) origin: Vector,
    pub(super) arms: [Option<Turned<'a>>; 2],
    pub(super) left: SMatrix<f64, UNKNOWN, UNKNOWN>,
    pub(super) right: SVector<f64, UNKNOWN>,
}

impl Balance<'_> {
    /// Rows of the force `load` on a part.
    fn rows(&self, carrier: Carrier, load: Load) -> [f64; UNKNOWN] {
        let mut rows = [0.0; UNKNOWN];
        if carrier == Carrier::Upright {
            let moment = (load.at - self.origin).cross(load.force);
            rows[..6].copy_from_slice(&[
                load.force.x,
                load.force.y,
                load.force.z,
                moment.x,
                moment.y,
                moment.z,
            ]);
        }
        for (place, arm) in self.arms.iter().enumerate() {
            if let Some(arm) = arm.as_ref().filter(|arm| arm.carrier == carrier) {
                rows[6 + place] = arm.moment(load);
            }
        }
        rows
    }

    /// Adds a known force on a part.
    pub(super) fn known(&mut self, carrier: Carrier, load: Load) {
        for (row, on) in self.rows(carrier, load).into_iter().enumerate() {
            self.right[row] -= on;
        }
    }

    /// Adds an unknown force on a part.
    pub(super) fn unknown(&mut self, place: usize, carrier: Carrier, load: Load) {
        for (row, on) in self.rows(carrier, load).into_iter().enumerate() {
            self.left[(row, place)] += on;
        }
    }

    /// Adds a joint between the upright and a part: three unknown forces on the upright, their opposites on the part.
    pub(super) fn joint(&mut self, first: usize, other: Option<Carrier>, at: Vector) {
        let axes = [vector(1.0, 0.0, 0.0), vector(0.0, 1.0, 0.0), vector(0.0, 0.0, 1.0)];
        for (place, force) in axes.into_iter().enumerate() {
            self.unknown(first + place, Carrier::Upright, Load { at, force });
            if let Some(other) = other {
                self.unknown(first + place, other, Load { at, force: -force });
            }
        }
    }
}
