//! A table: what a model returns over a grid. Named columns, each with its quantity; one refused row does not
//! spoil the others.

use super::error::{Error, Result};
use super::units::{Kind, Quantity};
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
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Table {
    columns: Vec<Column>,
    rows: usize,
    /// The refused rows in order, each with its reason.
    refused: Vec<(usize, Error)>,
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
    /// A table from whole columns, of the length that is said, and the refused rows in order.
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
    /// Why a row was refused.
    pub fn reason(&self, row: usize) -> Option<&Error> {
        let at = self.refused.binary_search_by_key(&row, |(row, _)| *row).ok()?;
        self.refused.get(at).map(|(_, reason)| reason)
    }
}

/// Fills a table row by row. Columns are declared first; a refused row gets its reason and nothing else.
#[derive(Debug, Clone, Default)]
pub struct Rows {
    table: Table,
    /// Rows for which each column has room.
    room: usize,
}

/// One cell to write.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cell<'a> {
    /// A number in coherent SI.
    Number(f64),
    /// A whole number.
    Whole(i64),
    /// A word.
    Word(&'a str),
}

impl<Q: Quantity> From<Q> for Cell<'_> {
    fn from(quantity: Q) -> Self {
        Cell::Number(quantity.si())
    }
}

impl Rows {
    /// A table without columns.
    pub fn new() -> Self {
        Self::default()
    }
    /// The same, with room for so many rows in each column that is added.
    pub fn with_room(rows: usize) -> Self {
        Rows { room: rows, ..Self::default() }
    }
    /// Adds a column of quantities.
    pub fn quantity<Q: Quantity>(mut self, name: &'static str) -> Self {
        self.table.columns.push(Column {
            name: Cow::Borrowed(name),
            kind: Some(Q::KIND),
            values: Values::F64(Vec::with_capacity(self.room)),
        });
        self
    }
    /// Adds a column of whole numbers.
    pub fn whole(mut self, name: &'static str) -> Self {
        self.table.columns.push(Column {
            name: Cow::Borrowed(name),
            kind: None,
            values: Values::I64(Vec::with_capacity(self.room)),
        });
        self
    }
    /// Adds a column of words.
    pub fn words(mut self, name: &'static str) -> Self {
        let values = Values::Category { codes: Vec::with_capacity(self.room), labels: Vec::new() };
        self.table.columns.push(Column { name: Cow::Borrowed(name), kind: None, values });
        self
    }
    /// Adds a row: the inputs, which are always kept, then the outputs or the reason why there are none.
    pub fn push(&mut self, inputs: &[Cell<'_>], outputs: Result<&[Cell<'_>]>) {
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
    pub fn finish(self) -> Table {
        self.table
    }
    /// The finished table, with columns that were filled beside it.
    pub(crate) fn finish_with(mut self, columns: impl IntoIterator<Item = Column>) -> Table {
        self.table.columns.extend(columns);
        self.table
    }
}

/// Fills a table whose outputs are `N` numbers and then a word. The numbers wait until there is a block of them, which goes into the
/// columns one column after the other.
#[derive(Debug, Clone)]
pub struct NumberRows<const N: usize> {
    rows: Rows,
    waiting: Vec<[f64; N]>,
}

/// Rows that wait: few enough to stay in the nearest cache.
const WAITING: usize = 32;

impl<const N: usize> NumberRows<N> {
    /// A table with these columns, of which the last are those of the outputs.
    pub fn new(rows: Rows) -> Self {
        NumberRows { rows, waiting: Vec::with_capacity(WAITING) }
    }
    /// Adds a row, as [`Rows::push`] does.
    #[inline]
    pub fn push(&mut self, inputs: &[Cell<'_>], outputs: Result<([f64; N], &str)>) {
        let (numbers, word, reason) = match outputs {
            Ok((numbers, word)) => (numbers, Some(word), None),
            Err(reason) => ([f64::NAN; N], None, Some(reason)),
        };
        let columns = &mut self.rows.table.columns;
        for (column, cell) in columns.iter_mut().zip(inputs) {
            column.values.push(cell);
        }
        if let Some(column) = columns.last_mut() {
            match word {
                Some(word) => column.values.push(&Cell::Word(word)),
                None => column.values.push_nothing(),
            }
        }
        self.rows.end_row(reason);
        self.waiting.push(numbers);
        if self.waiting.len() == WAITING {
            self.write();
        }
    }
    fn write(&mut self) {
        let columns = &mut self.rows.table.columns;
        let first = columns.len().saturating_sub(N + 1);
        for (place, column) in columns.iter_mut().skip(first).take(N).enumerate() {
            if let Values::F64(values) = &mut column.values {
                values.extend(self.waiting.iter().map(|row| row[place]));
            }
        }
        self.waiting.clear();
    }
    /// The finished table.
    pub fn finish(mut self) -> Table {
        self.write();
        self.rows.finish()
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
            (Values::I64(values), Cell::Whole(value)) => values.push(*value),
            (Values::Category { codes, labels }, Cell::Word(word)) => codes.push(code(labels, word)),
            (values, _) => values.push_nothing(),
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

/// Place of a word in the labels, which get it where it is new.
pub(crate) fn code(labels: &mut Vec<String>, word: &str) -> i32 {
    let place = labels.iter().position(|label| label == word).unwrap_or_else(|| {
        labels.push(word.to_owned());
        labels.len() - 1
    });
    i32::try_from(place).unwrap_or(-1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Quantity, mm};

    #[test]
    fn rows_of_numbers_are_those_that_cells_give_across_blocks() {
        let columns = || {
            Rows::new().words("state").quantity::<Length>("travel").quantity::<Length>("rise").words("joint")
        };
        let (mut cells, mut numbers) = (columns(), NumberRows::<2>::new(columns()));
        for row in 0..2 * WAITING + 3 {
            let (inputs, [travel, rise]) = ([Cell::Word("before")], [row as f64, -0.5 * row as f64]);
            let word = if row < WAITING { "upper" } else { "lower" };
            if row % 7 == 3 {
                let refusal = Error::NoSolution { message: format!("row {row}") };
                cells.push(&inputs, Err(refusal.clone()));
                numbers.push(&inputs, Err(refusal));
            } else {
                cells.push(&inputs, Ok(&[Cell::Number(travel), Cell::Number(rise), Cell::Word(word)]));
                numbers.push(&inputs, Ok(([travel, rise], word)));
            }
        }
        let (cells, numbers) = (cells.finish(), numbers.finish());
        assert_eq!((cells.rows(), cells.refused()), (numbers.rows(), numbers.refused()));
        for name in ["state", "joint"] {
            assert_eq!(cells.column(name), numbers.column(name));
        }
        for name in ["travel", "rise"] {
            let bits =
                |table: &Table| table.numbers(name).unwrap().iter().map(|x| x.to_bits()).collect::<Vec<_>>();
            assert_eq!(bits(&cells), bits(&numbers));
        }
    }

    #[test]
    fn a_refused_row_keeps_its_inputs_and_its_reason() {
        let mut rows = Rows::new().quantity::<Length>("travel").words("verdict").whole("turn");
        rows.push(&[Cell::from(Length::of::<mm>(10.0))], Ok(&[Cell::Word("meets"), Cell::Whole(3)]));
        let refusal = Error::NoSolution { message: "too far".to_owned() };
        rows.push(&[Cell::from(Length::of::<mm>(90.0))], Err(refusal.clone()));
        let table = rows.finish();
        assert_eq!(table.rows(), 2);
        assert_eq!(table.numbers("travel"), Some(&[0.01, 0.09][..]));
        assert_eq!(table.word("verdict", 0), Some("meets"));
        assert_eq!(table.word("verdict", 1), None);
        assert_eq!(table.reason(0), None);
        assert_eq!(table.reason(1), Some(&refusal));
        assert_eq!(table.column("turn").map(|c| &c.values), Some(&Values::I64(vec![3, 0])));
    }
}
