//! A table: result of a model over a grid. Named columns, each with its quantity; one refused row does not
//! spoil the others.

mod filling;
mod record;
#[cfg(feature = "serde")]
mod serde;

pub(crate) use filling::Filling;
#[cfg(feature = "serde")]
pub(crate) use record::Written;
pub(crate) use record::{Field, Inputs, Lend, Record, Row, record};

use super::error::{Error, Result};
use super::units::Kind;
use crate::cannot;
use std::borrow::Cow;

/// The values of one column.
#[derive(Debug, Clone, PartialEq)]
pub enum Values {
    /// Numbers in coherent SI; NaN in a refused row.
    F64(Vec<f64>),
    /// Whole numbers; zero in a refused row.
    I64(Vec<i64>),
    /// Words: each row holds the place of its word in `labels`, or -1 in a refused row.
    Category {
        /// Place of each row's word in `labels`, or -1.
        codes: Vec<i32>,
        /// The words.
        labels: Vec<String>,
    },
}

/// One named column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Its name, unique in the table.
    pub name: Cow<'static, str>,
    /// The kind of quantity of an `F64` column.
    pub kind: Option<&'static Kind>,
    /// One value a row.
    pub values: Values,
}

/// Columns of equal length, and the reason of each refused row.
///
/// Serialized, it is `columns`, each with `name`, `unit` and `values`, and `refused`, each with `row` and `reason`. An unknown number
/// and a word of a refused row are null.
#[derive(Debug, Clone, PartialEq, Default)]
#[must_use]
pub struct Table {
    columns: Vec<Column>,
    rows: usize,
    /// The refused rows in order, each with its reason.
    refused: Vec<(usize, Error)>,
}

impl Column {
    /// This column with these numbers in coherent SI.
    pub(crate) fn with(self, numbers: Vec<f64>) -> Column {
        Column { values: Values::F64(numbers), ..self }
    }
}

impl Table {
    /// Number of rows.
    pub fn rows(&self) -> usize {
        self.rows
    }
    /// The refused rows in order, each with its reason.
    pub fn refused(&self) -> &[(usize, Error)] {
        &self.refused
    }
    /// A table from whole columns of this length, and the refused rows in order.
    pub(crate) fn of(columns: Vec<Column>, rows: usize, refused: Vec<(usize, Error)>) -> Table {
        Table { columns, rows, refused }
    }
    /// The columns in order, and the refused rows, each with its reason.
    pub fn into_parts(self) -> (Vec<Column>, Vec<(usize, Error)>) {
        (self.columns, self.refused)
    }
    /// The columns, in order.
    pub fn columns(&self) -> &[Column] {
        &self.columns
    }
    /// The column of this name.
    pub fn column(&self, name: &str) -> Option<&Column> {
        self.columns.iter().find(|column| column.name == name)
    }
    /// The numbers of a column in coherent SI, if it is a column of numbers.
    pub fn numbers(&self, name: &str) -> Option<&[f64]> {
        match &self.column(name)?.values {
            Values::F64(values) => Some(values),
            _ => None,
        }
    }
    /// The word of a column in a row.
    pub fn word(&self, name: &str, row: usize) -> Option<&str> {
        match &self.column(name)?.values {
            Values::Category { codes, labels } => {
                let code = usize::try_from(*codes.get(row)?).ok()?;
                labels.get(code).map(String::as_str)
            }
            _ => None,
        }
    }
    /// Reason for the refusal of a row.
    pub fn reason(&self, row: usize) -> Option<&Error> {
        let at = self.refused.binary_search_by_key(&row, |(row, _)| *row).ok()?;
        self.refused.get(at).map(|(_, reason)| reason)
    }
}

/// Most memory that the columns of one table may take, in bytes: 4 GiB. A larger table is refused before anything is allocated.
pub const MOST_BYTES: u64 = 4 << 30;

/// Most refused rows of one table, each with its reason, which takes a few hundred bytes beside the columns. A table with more is refused.
pub const MOST_REFUSED: usize = 5_000_000;

/// Refusal of a table in which more rows than `most` are refused; `instead` tells the user what to do then.
pub(crate) fn too_many_refused(
    most: usize,
    rows: usize,
    first: Option<&(usize, Error)>,
    instead: &str,
) -> Error {
    let first = first.map_or_else(String::new, |(row, why)| format!(" (the first is row {row}: {why})"));
    cannot!(
        "more than {most} of {rows} rows are refused{first}, and one table keeps the reasons of at most {most}: {instead}"
    )
}

/// Number of rows of a table over these lists, each value with every other. Refused if that many rows take more than [`MOST_BYTES`]; `instead` tells the
/// user what to do then.
pub(crate) fn within_memory(lists: &[usize], bytes_a_row: usize, instead: &str) -> Result<usize> {
    let rows = lists.iter().fold(1_u128, |rows, list| rows.saturating_mul(*list as u128));
    let bytes = rows.saturating_mul(bytes_a_row.max(1) as u128);
    if bytes <= u128::from(MOST_BYTES) {
        return Ok(rows as usize);
    }
    let grid = match lists {
        [] | [_] => String::new(),
        lists => format!(" ({})", lists.iter().map(usize::to_string).collect::<Vec<_>>().join(" x ")),
    };
    let gibibytes = |bytes: u128| bytes as f64 / (1_u64 << 30) as f64;
    Err(cannot!(
        "a table of {rows} rows{grid} of {bytes_a_row} bytes each takes {:.1} GiB, and one table at most {:.0} GiB: {instead}",
        gibibytes(bytes),
        gibibytes(u128::from(MOST_BYTES))
    ))
}

impl Values {
    /// Bytes that one row takes.
    pub(crate) const fn bytes_a_row(&self) -> usize {
        match self {
            Values::F64(_) | Values::I64(_) => 8,
            Values::Category { .. } => 4,
        }
    }
    pub(crate) fn reserve(
        &mut self,
        rows: usize,
    ) -> core::result::Result<(), std::collections::TryReserveError> {
        match self {
            Values::F64(values) => values.try_reserve_exact(rows),
            Values::I64(values) => values.try_reserve_exact(rows),
            Values::Category { codes, .. } => codes.try_reserve_exact(rows),
        }
    }
    fn push_nothing(&mut self) {
        match self {
            Values::F64(values) => values.push(f64::NAN),
            Values::I64(values) => values.push(0),
            Values::Category { codes, .. } => codes.push(-1),
        }
    }
}

/// Refusal of a table for whose rows this machine has no memory.
pub(crate) fn no_memory(rows: usize, instead: &str) -> Error {
    cannot!("no memory for a table of {rows} rows: {instead}")
}

/// Place of a word in the labels; a new word is added.
pub(crate) fn code(labels: &mut Vec<String>, word: &str) -> i32 {
    let place = labels.iter().position(|label| label == word).unwrap_or_else(|| {
        labels.push(word.to_owned());
        labels.len() - 1
    });
    i32::try_from(place).unwrap_or(-1)
}

#[cfg(test)]
pub(crate) mod tests;
