//! The joints of a linkage in space, as a table: what a drawing needs.

use super::parts::{Arm, Carrier};
use super::vector::{Vector, vector};
use super::wheel_position::{Ends, Ready, Upper};
use crate::Result;
use crate::base::table::{Cell, Rows, Table};
use crate::units::{Length, Quantity};

/// A part, and its points in the order in which a line joins them.
pub(super) type Outline = Vec<(&'static str, Vec<(&'static str, Vector)>)>;

/// One row a state and point; a state that is refused has one row.
pub(super) fn outlines<const N: usize>(
    inputs: [&'static str; N],
    states: impl Iterator<Item = [Length; N]>,
    outline: impl Fn([Length; N]) -> Result<Outline>,
) -> Table {
    let columns = inputs.into_iter().fold(Rows::new(), Rows::quantity::<Length>);
    let columns = columns.words("part").words("point");
    let mut rows = columns.quantity::<Length>("x").quantity::<Length>("y").quantity::<Length>("z");
    for state in states {
        let inputs = state.map(Cell::from);
        match outline(state) {
            Ok(outline) => {
                for (part, points) in &outline {
                    for (point, at) in points {
                        let [x, y, z] = [at.x, at.y, at.z].map(Cell::Number);
                        rows.push(&inputs, Ok(&[Cell::Word(part), Cell::Word(point), x, y, z]));
                    }
                }
            }
            Err(error) => rows.push(&inputs, Err(error)),
        }
    }
    rows.finish()
}

impl Ready<'_> {
    pub(super) fn points(&self, travel: &[Length], rack_travel: &[Length]) -> Table {
        let states = travel.iter().flat_map(|travel| rack_travel.iter().map(move |rack| [*travel, *rack]));
        outlines(["travel", "rack_travel"], states, |[travel, rack]| self.outline(travel, rack))
    }

    fn outline(&self, travel: Length, rack_travel: Length) -> Result<Outline> {
        let (parts, pose) = (&self.parts, self.pose(travel, rack_travel)?);
        let arm = |arm: &Arm, ball: Vector| {
            let (front, rear) = (arm.front_pivot.vector(), arm.rear_pivot.vector());
            vec![("front pivot", front), ("ball joint", ball), ("rear pivot", rear)]
        };
        let lower = pose.lower_ball;
        let inner = parts.tie_rod.inner.vector() + vector(0.0, rack_travel.si(), 0.0);
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
