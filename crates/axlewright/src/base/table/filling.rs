//! A table that is filled by rows.

use super::{Column, Inputs, MOST_REFUSED, Record, Row, Table, no_memory, too_many_refused, within_memory};
use crate::base::error::{Error, Result};
use crate::base::stop::go_on;

/// Fills a table by rows: the inputs `I`, which are always kept, and the results `O` or the reason for a refusal. Rows wait until
/// there is a block of them, which goes into the columns one column after the other.
#[derive(Debug)]
pub(crate) struct Filling<I, O> {
    columns: Vec<Column>,
    /// Number of input columns, which come first.
    inputs: usize,
    rows: usize,
    refused: Vec<(usize, Error)>,
    /// Most refused rows, and whether there are more.
    pub(super) most_refused: usize,
    too_many: bool,
    waiting_inputs: Vec<I>,
    waiting: Vec<O>,
}

/// Advice for a table that is too large.
const FEWER: &str = "ask for fewer values at a time";
/// Number of waiting rows: few enough to stay in the nearest cache.
const WAITING: usize = 32;

impl<I: Inputs, O: Record> Filling<I, O> {
    /// Begins a table over these lists, each value with every other. It is refused before anything is allocated if it takes more than
    /// [`MOST_BYTES`](super::MOST_BYTES).
    pub(crate) fn over(names: I::Names, lists: &[usize]) -> Result<Self> {
        Self::with(names, O::columns(), lists)
    }
}

impl<I: Inputs, O: Row> Filling<I, O> {
    /// The table with these columns of results.
    pub(crate) fn with(names: I::Names, results: Vec<Column>, lists: &[usize]) -> Result<Self> {
        let mut columns = I::columns(names);
        let inputs = columns.len();
        columns.extend(results);
        let bytes = columns.iter().map(|column| column.values.bytes_a_row()).sum();
        let rows = within_memory(lists, bytes, FEWER)?;
        if columns.iter_mut().any(|column| column.values.reserve(rows).is_err()) {
            return Err(no_memory(rows, FEWER));
        }
        let (waiting_inputs, waiting) = (Vec::with_capacity(WAITING), Vec::with_capacity(WAITING));
        let (refused, most_refused, too_many) = (Vec::new(), MOST_REFUSED, false);
        Ok(Filling { columns, inputs, rows: 0, refused, most_refused, too_many, waiting_inputs, waiting })
    }
    /// Adds a row; an error once the caller of long work wants it no more.
    #[inline]
    pub(crate) fn push(&mut self, inputs: I, results: Result<O>) -> Result<()> {
        go_on()?;
        match results {
            Ok(results) => {
                self.waiting_inputs.push(inputs);
                self.waiting.push(results);
                if self.waiting.len() == WAITING {
                    self.write();
                }
            }
            Err(reason) => self.refuse(inputs, reason),
        }
        self.rows += 1;
        Ok(())
    }
    #[cold]
    fn refuse(&mut self, inputs: I, reason: Error) {
        self.write();
        I::fill(&[inputs], &mut self.columns);
        for column in self.columns.iter_mut().skip(self.inputs) {
            column.values.push_nothing();
        }
        if self.refused.len() < self.most_refused {
            self.refused.push((self.rows, reason));
        } else {
            self.too_many = true;
        }
    }
    #[inline(never)]
    fn write(&mut self) {
        let (given, found) = self.columns.split_at_mut(self.inputs);
        I::fill(&self.waiting_inputs, given);
        O::fill(self.waiting.iter(), found);
        self.waiting_inputs.clear();
        self.waiting.clear();
    }
    /// The finished table. It is refused if too many of its rows are.
    pub(crate) fn finish(mut self) -> Result<Table> {
        self.write();
        if self.too_many {
            return Err(too_many_refused(self.most_refused, self.rows, self.refused.first(), FEWER));
        }
        Ok(Table { columns: self.columns, rows: self.rows, refused: self.refused })
    }
}
