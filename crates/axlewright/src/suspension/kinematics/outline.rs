//! The joints of a linkage in space, as a table: what a drawing needs.

use super::vector::Vector;
use crate::Result;
use crate::base::table::{Filling, Table, record};
use crate::units::{Length, Quantity};

/// A part, and its points in the order in which a line joins them.
pub(in crate::suspension) type Outline<'a> = Vec<(&'a str, Vec<(&'static str, Vector)>)>;

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

/// One row for each state and point, each of the first inputs with each of the second ones; a state that is refused has one row.
pub(in crate::suspension) fn outlines<'a, A: Quantity, B: Quantity>(
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
                            rows.push(inputs, Ok(Place { part, point, x, y, z }))?;
                        }
                    }
                }
                Err(error) => rows.push(inputs, Err(error))?,
            }
        }
    }
    rows.finish()
}

/// Readings of the tests from a table of points.
#[cfg(test)]
pub(in crate::suspension) mod read {
    use super::super::vector::vector;
    use super::{Table, Vector};

    /// The points of a table of one state: part, point, place.
    pub(in crate::suspension) fn points(table: &Table) -> Vec<(String, String, Vector)> {
        let point = |row: usize| {
            let [x, y, z] = ["x", "y", "z"].map(|name| table.numbers(name).unwrap()[row]);
            let [part, point] = ["part", "point"].map(|name| table.word(name, row).unwrap().to_owned());
            (part, point, vector(x, y, z))
        };
        (0..table.rows()).map(point).collect()
    }

    /// Position of a point.
    pub(in crate::suspension) fn place(
        points: &[(String, String, Vector)],
        part: &str,
        point: &str,
    ) -> Vector {
        let found = points.iter().find(|on| on.0 == part && on.1 == point);
        found.unwrap_or_else(|| panic!("no {point} of {part}")).2
    }

    /// Mirror image of the points; the points of a part across the vehicle come from its other end.
    pub(in crate::suspension) fn mirrored(
        points: &[(String, String, Vector)],
    ) -> Vec<(String, String, Vector)> {
        let other = |name: &str| {
            if name.contains("left") { name.replace("left", "right") } else { name.replace("right", "left") }
        };
        points
            .iter()
            .map(|(part, point, at)| (other(part), other(point), vector(at.x, -at.y, at.z)))
            .collect()
    }
}
