//! Lines that change together, and their values.
#![expect(clippy::indexing_slicing, reason = "one slot and one column an axis, in the order of the axes")]

use super::super::graph::{Graph, Slot};
use super::super::uncertainty::ends;
use super::super::{outside, spot_of, writable, written};
use crate::base::document::Tree;
use crate::base::section::Content;
use crate::base::table::no_memory;
use crate::base::text;
use crate::{Error, Result};
use std::ops::Range;

/// Lines that change together, and what they change to.
#[derive(Debug, Clone)]
pub struct Axis {
    pub(super) slots: Vec<Slot>,
    /// The values of each line.
    pub(super) columns: Vec<Series>,
    /// Words or markings of a column that has no quantity.
    pub(super) labels: Vec<Vec<String>>,
    /// Numbers of the markings of a column.
    pub(super) decoded: Vec<Vec<Vec<f64>>>,
    /// Ends of the tolerances of each line's values, if one of them has a tolerance.
    pub(super) ends: Vec<Option<Vec<[f64; 2]>>>,
    /// True if the line does not allow some of its values.
    pub(super) refuses: bool,
}

/// The values of one line of an axis, in coherent SI.
#[derive(Debug, Clone)]
pub(super) enum Series {
    /// One by one.
    Listed(Vec<f64>),
    /// At equal steps. Each is computed where a row asks for it, so that a long range takes no memory.
    Range { from: f64, to: f64, count: usize },
}

impl Series {
    pub(super) fn len(&self) -> usize {
        match self {
            Series::Listed(values) => values.len(),
            Series::Range { count, .. } => *count,
        }
    }

    pub(super) fn at(&self, place: usize) -> f64 {
        match self {
            Series::Listed(values) => values[place],
            Series::Range { to, count, .. } if place + 1 == *count => *to,
            Series::Range { from, to, count } => from + (to - from) * (place as f64 / (count - 1) as f64),
        }
    }

    /// Adds the values of these places to a column.
    pub(super) fn extend(&self, column: &mut Vec<f64>, places: Range<usize>) {
        match self {
            Series::Listed(values) => column.extend_from_slice(&values[places]),
            Series::Range { .. } => column.extend(places.map(|place| self.at(place))),
        }
    }
}

impl Axis {
    /// One line over values as a document writes them.
    pub fn texts(path: &str, values: &[&str]) -> Result<Axis> {
        let rows: Vec<Vec<&str>> = values.iter().map(|value| vec![*value]).collect();
        Axis::entries(&[path], &rows)
    }

    /// Several lines that change together, an entry of a catalogue a row.
    pub fn entries(paths: &[&str], rows: &[Vec<&str>]) -> Result<Axis> {
        let graph = Graph::get();
        let mut axis = Axis::empty(paths)?;
        let mut columns = vec![vec![]; paths.len()];
        let mut reaches = vec![vec![]; paths.len()];
        for (number, row) in rows.iter().enumerate() {
            if row.len() != paths.len() {
                let message = format!(
                    "entry {number} has {} values, not one for each of {} lines",
                    row.len(),
                    paths.len()
                );
                return Err(Error::document(paths.first().copied().unwrap_or(""), message));
            }
            for (place, text) in row.iter().enumerate() {
                let slot = axis.slots[place];
                let is_quantity = graph.info(slot).kind().is_some();
                let read = written(slot, &spot_of(slot, text)?)?;
                let si = match graph.info(slot).line.content {
                    Content::Marking(_) => {
                        axis.decoded[place].push(read.decoded);
                        axis.decoded[place].len() as f64
                    }
                    _ => read.si,
                };
                if !is_quantity {
                    axis.labels[place].push((*text).to_owned());
                }
                columns[place].push(si);
                reaches[place].push(read.tolerance.map_or([si; 2], |tolerance| ends(slot, si, tolerance)));
            }
        }
        let reaching = |ends: &Vec<[f64; 2]>| ends.iter().any(|[low, high]| low < high);
        axis.ends = reaches.into_iter().map(|ends| Some(ends).filter(reaching)).collect();
        axis.columns = columns.into_iter().map(Series::Listed).collect();
        Ok(axis)
    }

    /// One line over numbers in coherent SI. A value that the line does not allow refuses its rows, not the sweep.
    pub fn numbers(path: &str, values: &[f64]) -> Result<Axis> {
        let mut axis = Axis::empty(&[path])?;
        if !matches!(Graph::get().info(axis.slots[0]).line.content, Content::Quantity(_)) {
            return Err(Error::document(path, "this line takes text, not numbers".to_owned()));
        }
        let mut own = Vec::new();
        if own.try_reserve_exact(values.len()).is_err() {
            return Err(no_memory(
                values.len(),
                "change the line over a range, or over fewer values at a time",
            ));
        }
        own.extend_from_slice(values);
        axis.columns = vec![Series::Listed(own)];
        axis.refuses = (0..values.len()).any(|place| axis.refusal(place).is_some());
        Ok(axis)
    }

    /// One line from a value to another, both as a document writes them, in so many equal steps. A long range takes no memory: its values are computed row by row.
    pub fn range(path: &str, from: &str, to: &str, count: usize) -> Result<Axis> {
        let mut axis = Axis::texts(path, &[from, to])?;
        if !matches!(Graph::get().info(axis.slots[0]).line.content, Content::Quantity(_)) {
            return Err(Error::document(path, "this line takes text, which has no range".to_owned()));
        }
        if axis.ends.iter().any(Option::is_some) {
            let message =
                "a range has no tolerance: write its values one by one, each with its own".to_owned();
            return Err(Error::document(path, message));
        }
        let (from, to) = (axis.columns[0].at(0), axis.columns[0].at(1));
        if count < 2 {
            return Err(Error::Length {
                argument: "count",
                length: count,
                wanted: "a range has at least two values",
            });
        }
        axis.columns = vec![Series::Range { from, to, count }];
        // The values rise or fall all the way, so that the first and the last two stand for all of them.
        axis.refuses = [0, count - 2, count - 1].into_iter().any(|place| axis.refusal(place).is_some());
        Ok(axis)
    }

    /// Reason why the line does not allow the value of this place; texts were refused when they were read.
    pub(super) fn refusal(&self, place: usize) -> Option<Error> {
        let info = Graph::get().info(*self.slots.first()?);
        let Content::Quantity(kind) = info.line.content else { return None };
        let value = self.columns.first()?.at(place);
        if info.line.range.allows(value) {
            return None;
        }
        let range = info.line.range.missed_by(value);
        let (units, bounds) = (text::shop_units(kind), [range.lower, range.upper]);
        let digits = text::digits_apart(value, &bounds, &units);
        let shown = Tree::Text(text::said_in([value], &units, digits));
        Some(Error::document(info.path, outside(&shown, range, kind)))
    }

    /// Number of values.
    pub fn len(&self) -> usize {
        self.columns.first().map_or(0, Series::len)
    }

    /// True if it has no value.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    fn empty(paths: &[&str]) -> Result<Axis> {
        let slots: Vec<Slot> = paths.iter().map(|path| writable(path)).collect::<Result<_>>()?;
        if slots.is_empty() {
            return Err(Error::Length {
                argument: "paths",
                length: 0,
                wanted: "an axis changes at least one line",
            });
        }
        let (labels, decoded) = (vec![vec![]; slots.len()], vec![vec![]; slots.len()]);
        let ends = vec![None; slots.len()];
        Ok(Axis { columns: vec![], labels, decoded, ends, refuses: false, slots })
    }
}
