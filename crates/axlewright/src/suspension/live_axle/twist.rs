//! Movement of an axle as a rigid body, with the paths of its points.

use super::frame::{COORDINATES, Coordinates, Frame, MOST, PITCH, ROLL, UP, X, Y, YAW, Z};
use crate::suspension::kinematics::lanes::{Lanes, Vectors};
use crate::suspension::kinematics::vector::{Vector, vector};

/// A vector along a path, with its first and second derivative.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Along {
    pub(super) at: Vector,
    pub(super) rate: Vector,
    pub(super) second: Vector,
}

impl Along {
    /// First and second derivative of the product.
    pub(super) fn dot(&self, other: &Along) -> [f64; 2] {
        [
            self.rate.dot(other.at) + self.at.dot(other.rate),
            self.second.dot(other.at) + 2.0 * self.rate.dot(other.rate) + self.at.dot(other.second),
        ]
    }
}

/// Vectors along a path, as a rule of all links.
#[derive(Debug, Clone, Copy)]
pub(super) struct Paths<const L: usize = MOST> {
    pub(in crate::suspension) at: Vectors<L>,
    pub(super) rate: Vectors<L>,
    pub(super) second: Vectors<L>,
}

impl<const L: usize> Paths<L> {
    pub(super) const ZERO: Paths<L> = Paths { at: Vectors::ZERO, rate: Vectors::ZERO, second: Vectors::ZERO };

    /// Vectors that turn with a body.
    #[inline(always)]
    pub(in crate::suspension) fn turned(at: Vectors<L>, spin: Vector, spin_rate: Vector) -> Paths<L> {
        let (spin, spin_rate) = (Vectors::all(spin), Vectors::all(spin_rate));
        let rate = spin.cross(at);
        Paths { at, rate, second: spin_rate.cross(at) + spin.cross(rate) }
    }

    /// The sum of the vectors.
    #[inline(always)]
    pub(super) fn sum(&self) -> Along {
        let once = Lanes::all(1.0);
        Along { at: self.at.sum(once), rate: self.rate.sum(once), second: self.second.sum(once) }
    }

    #[inline(always)]
    pub(super) fn cross(&self, other: &Paths<L>) -> Paths<L> {
        let twice = Lanes::all(2.0);
        Paths {
            at: self.at.cross(other.at),
            rate: self.rate.cross(other.at) + self.at.cross(other.rate),
            second: self.second.cross(other.at)
                + self.rate.cross(other.rate) * twice
                + self.at.cross(other.second),
        }
    }
}

/// Motion of the axle along a path in heave or in roll.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Twist {
    pub(in crate::suspension) rates: Coordinates,
    pub(in crate::suspension) seconds: Coordinates,
    pub(super) velocity: Vector,
    pub(super) spin: Vector,
    pub(super) acceleration: Vector,
    pub(in crate::suspension) spin_rate: Vector,
}

impl Twist {
    /// Along a path on which the free coordinates go on as they do.
    #[inline]
    pub(super) fn new(frame: &Frame, rates: Coordinates) -> Twist {
        let (pitch, roll) = (frame.pitch_axis(), frame.roll_axis);
        let turn = UP * rates[YAW] + roll * rates[ROLL];
        Twist {
            rates,
            seconds: [0.0; COORDINATES],
            velocity: vector(rates[X], rates[Y], rates[Z]),
            spin: turn + pitch * rates[PITCH],
            acceleration: Vector::default(),
            spin_rate: UP.cross(roll) * (rates[YAW] * rates[ROLL]) + turn.cross(pitch) * rates[PITCH],
        }
    }

    /// This path with these second derivatives of the free coordinates.
    #[inline]
    pub(super) fn bent(mut self, frame: &Frame, seconds: Coordinates) -> Twist {
        self.seconds = seconds;
        self.acceleration = vector(seconds[X], seconds[Y], seconds[Z]);
        self.spin_rate = self.spin_rate
            + UP * seconds[YAW]
            + frame.roll_axis * seconds[ROLL]
            + frame.pitch_axis() * seconds[PITCH];
        self
    }

    pub(super) fn yaw_rate(&self) -> f64 {
        self.rates[YAW]
    }

    /// A point of the axle, which stands so far from its middle.
    pub(super) fn point(&self, arm: Vector) -> Along {
        let turning = turned(arm, self.spin, self.spin_rate);
        Along { at: arm, rate: self.velocity + turning.rate, second: self.acceleration + turning.second }
    }

    /// Several of them.
    #[inline(always)]
    pub(super) fn points<const L: usize>(&self, arms: Vectors<L>) -> Paths<L> {
        let mut paths = Paths::turned(arms, self.spin, self.spin_rate);
        paths.rate = Vectors::all(self.velocity) + paths.rate;
        paths.second = Vectors::all(self.acceleration) + paths.second;
        paths
    }

    /// A direction of the axle.
    pub(super) fn along(&self, at: Vector) -> Along {
        turned(at, self.spin, self.spin_rate)
    }
}

/// A vector that turns with a body.
pub(in crate::suspension) fn turned(at: Vector, spin: Vector, spin_rate: Vector) -> Along {
    let rate = spin.cross(at);
    Along { at, rate, second: spin_rate.cross(at) + spin.cross(rate) }
}
