//! Rows of cells by position: kept until the last models that use it are records.

use super::{Column, Table, Values, code, within_memory};
use crate::base::error::{Error, Result};
use crate::base::units::{Kind, Quantity};
use std::borrow::Cow;

/// The columns of a table that is filled row by row.
#[derive(Debug, Clone, Default)]
pub(crate) struct Columns {
    columns: Vec<Column>,
}

impl Columns {
    /// No column yet.
    pub(crate) fn new() -> Self {
        Self::default()
    }
    /// Adds a column of quantities.
    pub(crate) fn quantity<Q: Quantity>(self, name: &'static str) -> Self {
        self.and(name, Some(Q::KIND), Values::F64(Vec::new()))
    }
    /// Adds a column of words.
    pub(crate) fn words(self, name: &'static str) -> Self {
        self.and(name, None, Values::Category { codes: Vec::new(), labels: Vec::new() })
    }
    fn and(mut self, name: &'static str, kind: Option<&'static Kind>, values: Values) -> Self {
        self.columns.push(Column { name: Cow::Borrowed(name), kind, values });
        self
    }
    /// Begins a table over these lists, each value with every other. Refused before anything is allocated if it takes more than [`MOST_BYTES`](super::MOST_BYTES).
    pub(crate) fn over(mut self, lists: &[usize]) -> Result<Rows> {
        let own: usize = self.columns.iter().map(|column| column.values.bytes_a_row()).sum();
        let rows = within_memory(lists, own, "ask for fewer values at a time")?;
        if self.columns.iter_mut().any(|column| column.values.reserve(rows).is_err()) {
            return Err(Error::NoSolution { message: format!("no memory for a table of {rows} rows") });
        }
        Ok(Rows { table: Table { columns: self.columns, ..Table::default() } })
    }
}

/// Fills a table row by row; a refused row gets its reason and nothing else. See [`Columns::over`].
#[derive(Debug, Clone)]
pub(crate) struct Rows {
    table: Table,
}

/// One cell to write.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Cell<'a> {
    /// A number in coherent SI.
    Number(f64),
    /// A word.
    Word(&'a str),
}

impl<Q: Quantity> From<Q> for Cell<'_> {
    fn from(quantity: Q) -> Self {
        Cell::Number(quantity.si())
    }
}

impl Rows {
    /// Adds a row: the inputs, which are always kept, then the outputs or the reason why there are none.
    pub(crate) fn push(&mut self, inputs: &[Cell<'_>], outputs: Result<&[Cell<'_>]>) {
        let count = self.table.columns.len();
        let (given, found) = self.table.columns.split_at_mut(inputs.len().min(count));
        for (column, cell) in given.iter_mut().zip(inputs) {
            column.values.push(cell);
        }
        let (outputs, reason) = match outputs {
            Ok(outputs) => (outputs, None),
            Err(reason) => (&[][..], Some(reason)),
        };
        let (known, unknown) = found.split_at_mut(outputs.len().min(found.len()));
        for (column, cell) in known.iter_mut().zip(outputs) {
            column.values.push(cell);
        }
        for column in unknown {
            column.values.push_nothing();
        }
        self.end_row(reason);
    }
    fn end_row(&mut self, reason: Option<Error>) {
        if let Some(reason) = reason {
            self.table.refused.push((self.table.rows, reason));
        }
        self.table.rows += 1;
    }
    /// The finished table.
    pub(crate) fn finish(self) -> Table {
        self.table
    }
}

impl Values {
    #[inline(always)]
    fn push(&mut self, cell: &Cell<'_>) {
        // Nearly all of them.
        match (self, cell) {
            (Values::F64(values), Cell::Number(value)) => values.push(*value),
            (values, cell) => values.push_other(cell),
        }
    }
    fn push_other(&mut self, cell: &Cell<'_>) {
        match (self, cell) {
            (Values::Category { codes, labels }, Cell::Word(word)) => codes.push(code(labels, word)),
            (values, _) => values.push_nothing(),
        }
    }
}
