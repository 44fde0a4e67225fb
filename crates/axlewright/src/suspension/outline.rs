//! The joints of a linkage in space, as a table: what a drawing needs.

use super::vector::Vector;
use crate::Result;
use crate::base::table::{Cell, Rows, Table};
use crate::units::Length;

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
