//! A lever of a live axle's anti-roll bar on its drop link: how far it turns, and where its ends stand.

use super::axle_linkage::Pose;
use super::axle_parts::{AxleBar, Mount};
use super::linkage::{Hinge, reach, side};
use super::parts::refused;
use super::vector::{Vector, vector};
use crate::Result;

/// Shorter than this a lever is none.
pub(super) const LEAST_LEVER: f64 = 0.001;
/// Sine of the least angle between a link and the lever that it turns.
const LEAST_SINE: f64 = 0.001;

/// Of the right side from what is drawn on the left.
pub(super) fn mirrored(at: Vector) -> Vector {
    vector(at.x, -at.y, at.z)
}
/// Of the left side.
pub(super) fn drawn(at: Vector) -> Vector {
    at
}

/// A lever of the bar: its hinge and the eye of its drop link in the axes of body and axle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lever {
    pub(super) hinge: Hinge,
    carried_by: Mount,
    /// On what does not carry the bar; on the axle from its middle.
    eye: Vector,
    length: f64,
    side: f64,
}

impl Lever {
    pub(super) fn new(bar: &AxleBar, middle: Vector, mirror: fn(Vector) -> Vector) -> Result<Lever> {
        let fault = |key: &str, message: &str| Err(refused(key, message.to_owned()));
        let [eye, end, pivot] =
            [&bar.link_eye, &bar.lever_end, &bar.lever_pivot].map(|point| mirror(point.vector()));
        let from = match bar.carried_by {
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
            return fault("anti_roll_bar", "its drop link is in line with the lever at ride height: locked");
        }
        let side = side(hinge.foot, hinge.axis, hinge.outward, eye - from);
        let eye = match bar.carried_by {
            Mount::Body => eye - middle,
            Mount::Axle => eye,
        };
        Ok(Lever { hinge, carried_by: bar.carried_by, eye, length, side })
    }

    /// The eye of its drop link, from what carries the bar, and the lever's direction there; none where the drop link does not reach.
    fn stands(&self, pose: &Pose) -> Option<[Vector; 2]> {
        let (hinge, frame) = (&self.hinge, &pose.frame);
        let eye = match self.carried_by {
            Mount::Body => frame.middle + frame.direction(self.eye),
            Mount::Axle => frame.direction_here(self.eye - frame.middle),
        };
        let outward = reach(hinge.foot, hinge.axis, hinge.radius, eye, self.length, self.side).known()?;
        Some([eye, outward])
    }

    /// Eye of the drop link, end of the lever, and where that stands on the bar, in the body's axes.
    pub(super) fn points(&self, pose: &Pose) -> Option<[Vector; 3]> {
        let ([eye, outward], foot) = (self.stands(pose)?, self.hinge.foot);
        let points = [eye, foot + outward * self.hinge.radius, foot];
        Some(match self.carried_by {
            Mount::Body => points,
            Mount::Axle => points.map(|point| pose.frame.middle + pose.frame.direction(point)),
        })
    }

    /// Turn from ride height, and its derivatives along heave and roll; none where the drop link does not reach.
    pub(super) fn turn(&self, pose: &Pose) -> Option<(f64, [f64; 2])> {
        let (hinge, frame) = (&self.hinge, &pose.frame);
        let [eye, outward] = self.stands(pose)?;
        let rates = [&pose.heave, &pose.roll].map(|twist| match self.carried_by {
            Mount::Body => twist.point(frame.direction(self.eye)).rate,
            Mount::Axle => frame.direction_here(-twist.point(self.eye - frame.middle).rate),
        });
        let link = eye - hinge.foot - outward * hinge.radius;
        let turning = hinge.axis.cross(outward) * hinge.radius;
        let turned = hinge.axis.dot(hinge.outward.cross(outward)).atan2(hinge.outward.dot(outward));
        Some((turned, rates.map(|rate| link.dot(rate) / link.dot(turning))))
    }
}
