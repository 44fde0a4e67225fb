//! The joints of a wheel's linkage in space, as a table.

use super::prepared::{Ends, PreparedLinkage, Upper};
use super::range::{Reach, Reaches};
use crate::Result;
use crate::base::table::Table;
use crate::suspension::kinematics::outline::{Outline, outlines};
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::parts::{Arm, Carrier};
use crate::units::Length;

impl PreparedLinkage<'_> {
    pub(super) fn points(&self, travel: &[Length], rack_travel: &[Length]) -> Result<Table> {
        let mut reaches = Reaches::new(&self.linkage);
        outlines(["travel", "rack_travel"], (travel, rack_travel), |travel, rack| {
            self.outline(reaches.with(rack.si()), travel)
        })
    }

    fn outline(&self, reach: &mut Reach<'_>, travel: Length) -> Result<Outline<'static>> {
        let (parts, pose) = (&self.parts, self.reached(reach, travel)?);
        let arm = |arm: &Arm, ball: Vector| {
            let (front, rear) = (arm.front_pivot.vector(), arm.rear_pivot.vector());
            vec![("front pivot", front), ("ball joint", ball), ("rear pivot", rear)]
        };
        let lower = pose.lower_ball;
        let inner = parts.tie_rod.inner.vector() + vector(0.0, reach.rack, 0.0);
        let outer = inner + pose.tie_rod;
        let mut outline = Outline::new();
        let above = match parts.upper {
            Upper::Arm(upper) => {
                let apart = upper.ball_joint.vector() - parts.lower_arm.ball_joint.vector();
                let ball = lower + pose.steering_axis * apart.norm();
                outline.push(("upper arm", arm(upper, ball)));
                ("upper ball joint", ball)
            }
            Upper::Strut(_, end) => {
                let here = self.linkage.here(Carrier::Upright, end.vector());
                ("lower end of the leg", pose.upright.point(here).at)
            }
        };
        outline.push(("lower arm", arm(parts.lower_arm, lower)));
        outline.push(("upright", vec![("lower ball joint", lower), above, ("tie rod", outer)]));
        outline.push(("tie rod", vec![("inner", inner), ("outer", outer)]));
        let between = |on: &Ends, names: [&'static str; 2]| {
            vec![(names[0], on.body), (names[1], pose.body(on.carrier).point(on.lower).at)]
        };
        if let (Some(on), Some(eyes)) = (&parts.coil_over, &self.eyes) {
            match parts.upper {
                Upper::Arm(_) => outline.push(("coil-over", between(eyes, ["body eye", "lower eye"]))),
                Upper::Strut(..) => outline.push(("leg", between(eyes, ["top mount", "lower end"]))),
            }
            if on.spring_seats.is_some()
                && let Some(seats) = &self.seats
            {
                outline.push(("coil", between(seats, ["body seat", "lower seat"])));
            }
        }
        if let (Some(bar), Some((eye, end))) = (parts.anti_roll_bar, self.linkage.drop_link(&pose)) {
            let pivot = bar.lever_pivot.vector();
            let pivot = vector(pivot.x, end.y, pivot.z);
            outline
                .push(("anti-roll bar", vec![("link eye", eye), ("lever end", end), ("lever pivot", pivot)]));
        }
        let contact = self.contact(&pose).1;
        outline.push(("wheel", vec![("centre", pose.wheel.at), ("contact", contact)]));
        Ok(outline)
    }
}
