//! Coordinates of a rigid axle, its axes, and the ends of its links there.

use crate::suspension::kinematics::lanes::{Lanes, Vectors};
use crate::suspension::kinematics::vector::{Vector, vector};
use core::array::from_fn;

/// Places of the coordinates: four that are free, the crank's turn, then heave and roll.
pub(super) const X: usize = 0;

pub(in crate::suspension) const Y: usize = 1;

pub(in crate::suspension) const YAW: usize = 2;

pub(super) const PITCH: usize = 3;

pub(in crate::suspension) const CRANK: usize = 4;

pub(in crate::suspension) const Z: usize = 5;

pub(in crate::suspension) const ROLL: usize = 6;

pub(super) const COORDINATES: usize = 7;

/// Four links and the two rods of a Watt linkage.
pub(in crate::suspension) const MOST: usize = 6;

pub(super) type Coordinates = [f64; COORDINATES];

/// One value for each link.
pub(in crate::suspension) type Each = Lanes<MOST>;

pub(in crate::suspension) type Many = Vectors<MOST>;

pub(super) const FORWARD: Vector = vector(1.0, 0.0, 0.0);

pub(super) const UP: Vector = vector(0.0, 0.0, 1.0);

/// A link: its ends at ride height, that on the axle from the axle's middle. An end on a bell crank is the crank's pivot and what stands off it.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::suspension) struct Link {
    pub(in crate::suspension) axle: Vector,
    pub(in crate::suspension) axle_crank: Vector,
    pub(super) body: Vector,
    pub(super) body_crank: Vector,
    /// Compliance of its bushes in series (m/N).
    pub(super) give: f64,
}

impl Link {
    /// From the body to the axle at ride height.
    pub(super) fn drawn(&self, middle: Vector) -> Vector {
        middle + self.axle + self.axle_crank - self.body - self.body_crank
    }
}

/// From the axle's middle to the links' ends on it, what of that is the crank's, the same on the body, and from the body to the axle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ends {
    pub(in crate::suspension) arm: Many,
    pub(in crate::suspension) arm_crank: Many,
    pub(in crate::suspension) body_crank: Many,
    pub(in crate::suspension) between: Many,
}

/// Orientation of the axle, and the axes of its angles.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Frame {
    pub(super) middle: Vector,
    columns: [Vector; 3],
    pub(in crate::suspension) roll_axis: Vector,
    /// Sine and cosine of the crank's turn, where there is a crank.
    pub(in crate::suspension) crank: Option<(f64, f64)>,
}

impl Frame {
    /// `rolled` are sine and cosine of the roll, which is given.
    #[inline]
    pub(super) fn new(at: &Coordinates, rolled: (f64, f64), cranked: bool) -> Frame {
        let ((ys, yc), (ps, pc), (rs, rc)) = (at[YAW].sin_cos(), at[PITCH].sin_cos(), rolled);
        Frame {
            middle: vector(at[X], at[Y], at[Z]),
            columns: [
                vector(yc * pc - ys * ps * rs, ys * pc + yc * ps * rs, -ps * rc),
                vector(-ys * rc, yc * rc, rs),
                vector(yc * ps + ys * pc * rs, ys * ps - yc * pc * rs, pc * rc),
            ],
            roll_axis: vector(yc, ys, 0.0),
            crank: cranked.then(|| at[CRANK].sin_cos()),
        }
    }

    /// A direction of the axle in the body's axes.
    pub(super) fn direction(&self, here: Vector) -> Vector {
        let [a, b, c] = self.columns;
        a * here.x + b * here.y + c * here.z
    }

    /// A direction of the body in the axle's axes.
    pub(super) fn direction_here(&self, along: Vector) -> Vector {
        let [a, b, c] = self.columns;
        vector(along.dot(a), along.dot(b), along.dot(c))
    }

    pub(super) fn pitch_axis(&self) -> Vector {
        self.columns[1]
    }

    /// About which a crank turns that the axle carries.
    pub(super) fn crank_axis(&self) -> Vector {
        self.columns[0]
    }

    /// A direction of a crank turned back to ride height.
    pub(in crate::suspension) fn crank_at_rest(&self, on: Vector) -> Vector {
        let (sine, cosine) = self.crank.unwrap_or((0.0, 1.0));
        vector(on.x, on.y * cosine + on.z * sine, on.z * cosine - on.y * sine)
    }

    #[inline(always)]
    pub(super) fn directions<const L: usize>(&self, here: Vectors<L>) -> Vectors<L> {
        let [a, b, c] = self.columns.map(Vectors::all);
        a * here.x + b * here.y + c * here.z
    }

    /// Positions of the link ends.
    #[inline(always)]
    pub(super) fn ends(&self, links: &Links) -> Ends {
        let mut ends = Ends {
            arm: self.directions(links.axle),
            arm_crank: Many::ZERO,
            body_crank: Many::ZERO,
            between: Many::ZERO,
        };
        let mut body = links.body;
        if let Some((sine, cosine)) = self.crank {
            let swung = |v: Many| Many { x: v.x, y: v.y * cosine - v.z * sine, z: v.y * sine + v.z * cosine };
            ends.arm_crank = self.directions(swung(links.axle_crank));
            ends.body_crank = swung(links.body_crank);
            ends.arm = ends.arm + ends.arm_crank;
            body = body + ends.body_crank;
        }
        ends.between = Many::all(self.middle) + ends.arm - body;
        ends
    }
}

/// The links of a linkage; where there is none a rod from below to the axle's middle, which nothing looks at.
#[derive(Debug, Clone, Copy)]
pub(in crate::suspension) struct Links {
    pub(super) axle: Many,
    pub(super) axle_crank: Many,
    pub(super) body: Many,
    pub(super) body_crank: Many,
    pub(super) length: Each,
}

impl Links {
    pub(super) fn new(links: &[Link], middle: Vector) -> Links {
        let none = Link { body: middle - UP, ..Link::default() };
        let of = |lane: usize| links.get(lane).unwrap_or(&none);
        Links {
            axle: Many::of(|lane| of(lane).axle),
            axle_crank: Many::of(|lane| of(lane).axle_crank),
            body: Many::of(|lane| of(lane).body),
            body_crank: Many::of(|lane| of(lane).body_crank),
            length: Lanes(from_fn(|lane| of(lane).drawn(middle).norm())),
        }
    }
}
