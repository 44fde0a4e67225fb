//! The joints of a linkage in space, as a table: what a drawing needs.

use super::linkage_range::{Reach, Reaches};
use super::parts::{Arm, Carrier};
use super::vector::{Vector, vector};
use super::wheel_position::{Ends, PreparedLinkage, Upper};
use crate::Result;
use crate::base::table::{Filling, Table, record};
use crate::units::{Length, Quantity};

/// A part, and its points in the order in which a line joins them.
pub(super) type Outline<'a> = Vec<(&'a str, Vec<(&'static str, Vector)>)>;

/// Points of a large drawing, for the memory that a table of them takes.
const POINTS: usize = 128;

record! {
    /// A point of a part, in the body's axes.
    struct Place<'a> {
        part: &'a str,
        point: &'a str,
        x: Length,
        y: Length,
        z: Length,
    }
}

/// One row a state and point, each of the first inputs with each of the second ones; a state that is refused has one row.
pub(super) fn outlines<'a, A: Quantity, B: Quantity>(
    [first, second]: [&'static str; 2],
    (firsts, seconds): (&[A], &[B]),
    mut outline: impl FnMut(A, B) -> Result<Outline<'a>>,
) -> Result<Table> {
    let mut rows = Filling::over([first, second], &[firsts.len(), seconds.len(), POINTS])?;
    for first in firsts {
        for second in seconds {
            let inputs = (*first, *second);
            match outline(*first, *second) {
                Ok(outline) => {
                    for (part, points) in &outline {
                        for (point, at) in points {
                            let [x, y, z] = [at.x, at.y, at.z].map(Length::from_si);
                            rows.push(inputs, Ok(Place { part, point, x, y, z }));
                        }
                    }
                }
                Err(error) => rows.push(inputs, Err(error)),
            }
        }
    }
    Ok(rows.finish())
}

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

/// Readings of the tests from a table of points.
#[cfg(test)]
pub(super) mod read {
    use super::{Table, Vector, vector};

    /// The points of a table of one state: part, point, place.
    pub(in super::super) fn points(table: &Table) -> Vec<(String, String, Vector)> {
        let point = |row: usize| {
            let [x, y, z] = ["x", "y", "z"].map(|name| table.numbers(name).unwrap()[row]);
            let [part, point] = ["part", "point"].map(|name| table.word(name, row).unwrap().to_owned());
            (part, point, vector(x, y, z))
        };
        (0..table.rows()).map(point).collect()
    }

    /// Position of a point.
    pub(in super::super) fn place(points: &[(String, String, Vector)], part: &str, point: &str) -> Vector {
        let found = points.iter().find(|on| on.0 == part && on.1 == point);
        found.unwrap_or_else(|| panic!("no {point} of {part}")).2
    }

    /// Mirror image of the points; the points of a part across the vehicle come from its other end.
    pub(in super::super) fn mirrored(points: &[(String, String, Vector)]) -> Vec<(String, String, Vector)> {
        let other = |name: &str| {
            if name.contains("left") { name.replace("left", "right") } else { name.replace("right", "left") }
        };
        points
            .iter()
            .map(|(part, point, at)| (other(part), other(point), vector(at.x, -at.y, at.z)))
            .collect()
    }
}
