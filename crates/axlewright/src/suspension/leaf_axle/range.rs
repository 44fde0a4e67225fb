//! End of the travel of an axle on leaf springs, found along its way instead of along its heave.
//!
//! With a shackle in line with its spring, or with springs that no longer hold the pitch, the heave stands still, and the axle moves on in pitch and in
//! the bends of its springs. On the curve of heave `z`, bend `q` of the half to the shackle and pitch `t` all of that is smooth, and the end is the root of
//! one function. Two equations hold on it: the shackle keeps its length, `C(z, q, t) = 0`, and no torque is left about the axle,
//! `E_t C_q - E_q C_t = 0`; the second derivatives of the energy `E` and of `C` give their slopes, and the product of both slopes the direction of
//! the curve. Each position stands in a plane across the direction at the one before. In roll that spring leads which goes further.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::pose::Pose;
use super::prepared::PreparedLeafAxle;
use super::spring::End;
use crate::base::numeric::root;
use crate::suspension::kinematics::jet::Jet;
use crate::suspension::kinematics::solved::solved;
use crate::suspension::kinematics::vector::{Vector, vector};

/// Longest step along the curve, in metres and radians, and how many are made at the most.
const LONGEST: f64 = 0.15;
const MOST: u32 = 200;
/// After a step of Newton's method that is shorter its square is left to go.
const SHORT: f64 = 1e-5;
/// A step of Newton's method that is longer than this share of the one before, or of the step along the curve, leads astray.
const ASTRAY: f64 = 0.5;
/// Share of a step by which the guess of its end may miss.
const MISSED: f64 = 0.05;
/// Least cosine of the turn of the curve in one step.
const STRAIGHT: f64 = 0.8;
/// Precision of the end along the curve, over the square root of that of the heave: the heave is level there.
const LEVEL: f64 = 0.03;
/// With less than this sine between it and the way of its eye a shackle is in line.
const IN_LINE: f64 = 1e-4;

/// Result of the axle's way to a heave.
pub(super) enum Went {
    There(Box<Pose>),
    Ended(f64, End),
}

/// The axle in balance somewhere on the curve.
#[derive(Clone, Copy)]
struct Spot {
    /// Heave, bend and pitch.
    at: Vector,
    /// Direction of the curve, and its change along the curve in the last step.
    along: Vector,
    bent: Vector,
    /// By how much the guess missed it.
    missed: f64,
    /// Bends of both springs.
    bends: [[f64; 2]; 2],
    /// Sine of the leading shackle.
    sine: f64,
}

/// The curve in one roll, on which the left spring leads (0) or the right one (1).
struct Curve<'a> {
    axle: &'a PreparedLeafAxle<'a>,
    roll: f64,
    lead: usize,
    /// 1 on the way up, -1 on the way down.
    way: f64,
}

/// Follows the curve from one position towards a heave at the same roll, or to the end if that comes first; none if the curve does not lead there.
pub(super) fn follow(axle: &PreparedLeafAxle<'_>, from: &Pose, heave: f64, fine: f64) -> Option<Went> {
    let way = 1.0_f64.copysign(heave - from.heave);
    let curve = Curve { axle, roll: from.roll, lead: usize::from(from.roll * way < 0.0), way };
    let bends = [&from.left, &from.right].map(|bent| [bent.fixed.value, bent.shackle.value]);
    let start = vector(from.heave, bends[curve.lead][1], from.pitch);
    let mut here = curve.spot((start, vector(way, 0.0, 0.0)), 0.0, start, bends).ok()?;
    let mut step = LONGEST;
    let tolerance = LEVEL * fine.sqrt();
    for _ in 0..MOST {
        let next = match curve.further(&here, step) {
            Ok(next) => next,
            // A failure in the shortest step is an end, unless the search itself failed.
            Err(end) if step * (here.along.x.abs() + step) <= fine => {
                return (end != End::GivenUp).then_some(Went::Ended(here.at.x, end));
            }
            Err(_) => {
                step *= 0.5;
                continue;
            }
        };
        let reached = |spot: &Spot| (spot.at.x - heave) * way >= 0.0;
        let mut last = (step, next);
        let ends = next.along.x * way <= 0.0 || next.sine <= 0.0;
        if ends {
            let (end, why) = curve.end(&here, last, tolerance)?;
            if !reached(&end.1) {
                return Some(Went::Ended(end.1.at.x, why));
            }
            last = end;
        }
        if ends || reached(&next) {
            let (_, spot) = curve.root(&here, last, 0.0, |spot| spot.at.x - heave)?;
            let there = axle.balance_near([heave, from.roll, spot.at.z], spot.bends, 0.0);
            return Some(Went::There(Box::new(there.ok()?)));
        }
        // The error of the guess grows with the cube of the step.
        let more = (MISSED * step / next.missed).sqrt().clamp(0.5, 2.0);
        (here, step) = (next, LONGEST.min(more * step));
    }
    None
}

impl Curve<'_> {
    /// The position in the plane across a direction, so far from the place where it begins; from a place and bends that are near.
    fn spot(
        &self,
        (from, across): (Vector, Vector),
        length: f64,
        near: Vector,
        bends: [[f64; 2]; 2],
    ) -> Result<Spot, End> {
        let (axle, mut at, mut bends) = (self.axle, near, bends);
        let (sine, cosine) = self.roll.sin_cos();
        let [low, high] = axle.spring.shackle.range();
        let mut last = f64::INFINITY;
        for _ in 0..8 {
            solved();
            let [heave, bend, pitch] = Jet::variables([at.x, at.y, at.z]);
            let stance = axle.stance(heave, [sine, cosine].map(Jet::constant), pitch);
            let angle = pitch + axle.angle;
            let seat = stance.seats[self.lead];
            let (led, held) = axle.spring.bent(seat, angle, bend, bends[self.lead][0])?;
            let mut springs = [led; 2];
            if self.roll != 0.0 {
                let other = 1 - self.lead;
                springs[other] = axle.spring.at(stance.seats[other], angle, bends[other])?;
            }
            let energy = axle.energy([at.x, self.roll, at.z], &stance, &springs, 0.0);
            let (slopes, works) = (held.first, energy.first);
            let torque = works[2] * slopes[1] - works[1] * slopes[2];
            let [x, y, z] = [0, 1, 2].map(|by| {
                energy.by_two(2, by) * slopes[1] + works[2] * held.by_two(1, by)
                    - energy.by_two(1, by) * slopes[2]
                    - works[1] * held.by_two(2, by)
            });
            let (of_length, of_torque) = (vector(slopes[0], slopes[1], slopes[2]), vector(x, y, z));
            let along = of_length.cross(of_torque);
            let left = length - across.dot(at - from);
            let step =
                (along * left - of_torque.cross(across) * held.value - across.cross(of_length) * torque)
                    * (1.0 / across.dot(along));
            let size = step.norm();
            if size.is_nan() || size > ASTRAY * last {
                return Err(End::GivenUp);
            }
            last = size;
            at = at + step;
            if !(low..=high).contains(&at.y) {
                return Err(End::ShackleHalf);
            }
            bends = springs.map(|spring| spring.ahead([step.x, step.y, step.z]));
            if size < SHORT {
                let along = along.unit();
                let onward = 1.0_f64.copysign(along.dot(across));
                let (bent, missed) = (Vector::default(), (at - near).norm());
                return Ok(Spot { at, along: along * onward, bent, missed, bends, sine: led.sine });
            }
        }
        Err(End::GivenUp)
    }

    /// The position so far along the direction at one position, from another one that is near.
    fn next(&self, base: &Spot, near: &Spot, length: f64) -> Result<Spot, End> {
        let left = length - base.along.dot(near.at - base.at);
        let by = left / base.along.dot(near.along);
        let guess = near.at + near.along * by + near.bent * (0.5 * by * by);
        let guess = guess + base.along * (length - base.along.dot(guess - base.at));
        self.spot((base.at, base.along), length, guess, near.bends)
    }

    /// The next position, on the same curve.
    fn further(&self, here: &Spot, step: f64) -> Result<Spot, End> {
        let mut next = self.next(here, here, step)?;
        if next.along.dot(here.along) < STRAIGHT || next.missed > ASTRAY * step {
            return Err(End::GivenUp);
        }
        next.bent = (next.along - here.along) * (1.0 / step);
        Ok(next)
    }

    /// Zero of this value between one position and another: its share of the way, and the position there.
    fn root(
        &self,
        base: &Spot,
        whole: (f64, Spot),
        tolerance: f64,
        of: impl Fn(&Spot) -> f64,
    ) -> Option<(f64, Spot)> {
        let mut last = whole;
        let found = |length: f64| {
            if length == 0.0 {
                return of(base);
            }
            if length != last.0 {
                match self.next(base, &last.1, length) {
                    Ok(spot) => last = (length, spot),
                    Err(_) => return f64::NAN,
                }
            }
            of(&last.1)
        };
        let length = root("end of travel", found, 0.0, whole.0, tolerance).ok()?;
        if length != last.0 {
            last = (length, self.next(base, &last.1, length).ok()?);
        }
        Some(last)
    }

    /// The end of the way before a position: where the heave stands still, or the shackle is in line before.
    fn end(&self, here: &Spot, next: (f64, Spot), tolerance: f64) -> Option<((f64, Spot), End)> {
        let mut end = next;
        if next.1.along.x * self.way <= 0.0 {
            end = self.root(here, end, tolerance, |spot| spot.along.x)?;
        }
        if end.1.sine < -IN_LINE {
            end = self.root(here, end, tolerance, |spot| spot.sine)?;
        }
        let in_line = end.1.sine < IN_LINE;
        Some((end, if in_line { End::Shackle } else { End::Pitch }))
    }
}
