//! A lever of a live axle's anti-roll bar on its drop link: how far it turns, and where its ends stand.

use super::parts::{AxleBar, Mount};
use crate::base::text::said;
use crate::suspension::independent::linkage::{Hinge, reach, side};
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::units::{Angle, Length};
use crate::{Error, Result, cannot};

/// Shorter than this a lever is none.
pub(super) const LEAST_LEVER: f64 = 0.001;
/// Sine of the least angle between a link and the lever that it turns.
const LEAST_SINE: f64 = 0.001;

/// Point on the right side, from its drawing on the left.
pub(in crate::suspension) fn mirrored(at: Vector) -> Vector {
    vector(at.x, -at.y, at.z)
}
/// Point on the left side.
pub(in crate::suspension) fn drawn(at: Vector) -> Vector {
    at
}

/// A lever of the bar: its hinge and the eye of its drop link in the axes of body and axle.
#[derive(Debug, Clone, Copy)]
pub(in crate::suspension) struct Lever {
    pub(in crate::suspension) hinge: Hinge,
    pub(in crate::suspension) carried_by: Mount,
    /// On what does not carry the bar; on the axle from its middle.
    pub(in crate::suspension) eye: Vector,
    length: f64,
    side: f64,
}

impl Lever {
    pub(in crate::suspension) fn new(
        bar: &AxleBar,
        middle: Vector,
        mirror: fn(Vector) -> Vector,
    ) -> Result<Lever> {
        let fault = |key: &str, message: &str| Err(Error::document(key, message));
        let [eye, end, pivot] =
            [&bar.link_eye, &bar.lever_end, &bar.lever_pivot].map(|point| mirror(point.vector()));
        let from = match bar.bearings {
            Mount::Body => Vector::default(),
            Mount::Axle => middle,
        };
        let hinge = Hinge::new(pivot - from, vector(0.0, 1.0, 0.0), end - from);
        if hinge.radius < LEAST_LEVER {
            return fault(
                "anti_roll_bar.lever_end",
                "it is nearer than 1 mm to the bar's axis: it has no lever",
            );
        }
        let (link, turning) = (eye - end, hinge.axis.cross(hinge.outward));
        let length = link.norm();
        if length < LEAST_LEVER {
            return fault("anti_roll_bar", "its drop link is shorter than 1 mm");
        }
        if link.dot(turning).abs() < LEAST_SINE * length {
            return fault("anti_roll_bar", "its drop link lines up with the lever at ride height and locks");
        }
        let side = side(hinge.foot, hinge.axis, hinge.outward, eye - from);
        let eye = match bar.bearings {
            Mount::Body => eye - middle,
            Mount::Axle => eye,
        };
        Ok(Lever { hinge, carried_by: bar.bearings, eye, length, side })
    }

    /// Direction of the lever where the eye of its drop link stands here, seen from what carries the bar; none where the drop link does not reach.
    fn outward(&self, eye: Vector) -> Option<Vector> {
        let hinge = &self.hinge;
        reach(hinge.foot, hinge.axis, hinge.radius, eye, self.length, self.side).known()
    }

    /// Clearance from the dead centre, the square of the sine between drop link and lever: negative where the drop link does not reach.
    pub(super) fn clearance(&self, eye: Vector) -> f64 {
        let hinge = &self.hinge;
        let off = hinge.foot - eye;
        let across = off - hinge.axis * off.dot(hinge.axis);
        let (square, radius) = (self.length * self.length, hinge.radius);
        let along = (square - radius * radius - off.square()) / (2.0 * radius);
        (across.square() - along * along) / square
    }

    /// Eye of the drop link, end of the lever, and where that stands on the bar, seen from what carries it.
    pub(in crate::suspension) fn points(&self, eye: Vector) -> Option<[Vector; 3]> {
        let foot = self.hinge.foot;
        Some([eye, foot + self.outward(eye)? * self.hinge.radius, foot])
    }

    /// Turn from ride height, and its derivatives where those of the eye are these, along heave and roll; none where the drop link does not reach.
    pub(in crate::suspension) fn turn(&self, (eye, rates): (Vector, [Vector; 2])) -> Option<(f64, [f64; 2])> {
        let hinge = &self.hinge;
        let outward = self.outward(eye)?;
        let link = eye - hinge.foot - outward * hinge.radius;
        let turning = hinge.axis.cross(outward) * hinge.radius;
        let turned = hinge.axis.dot(hinge.outward.cross(outward)).atan2(hinge.outward.dot(outward));
        Some((turned, rates.map(|rate| link.dot(rate) / link.dot(turning))))
    }
}

/// The bar from the eye of its left drop link to that of the right one.
pub(in crate::suspension) fn across(left: [Vector; 3], right: [Vector; 3]) -> Vec<(&'static str, Vector)> {
    let names = [
        "left link eye",
        "left lever end",
        "left lever pivot",
        "right lever pivot",
        "right lever end",
        "right link eye",
    ];
    names.into_iter().zip(left.into_iter().chain(right.into_iter().rev())).collect()
}

/// The refusal of a place to which a drop link does not reach, with how far on the way there it does.
pub(in crate::suspension) fn out_of_reach(
    heave: Length,
    roll: Angle,
    reaches: impl Fn(Length, Angle) -> bool,
) -> Error {
    let (mut good, mut bad) = (0.0, 1.0);
    for _ in 0..40 {
        let middle = 0.5 * (good + bad);
        if reaches(heave * middle, roll * middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    let (at_heave, at_roll) = (said(heave * good), said(roll * good));
    cannot!(
        heave, roll;
        "cannot be reached: on the way there, at {at_heave} and {at_roll}, the drop link of the anti_roll_bar lines up with its lever"
    )
}
