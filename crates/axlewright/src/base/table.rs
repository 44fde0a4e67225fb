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
        let (outputs, reason) = match outputs {
            Ok(outputs) => (outputs, None),
            Err(error) => (&[][..], Some(error)),
        };
        let mut cells = inputs.iter().chain(outputs);
        for column in &mut self.table.columns {
            column.values.push(cells.next().copied());
        }
        if let Some(reason) = reason {
            self.table.refused.push((self.table.rows, reason));
        }
        self.table.rows += 1;
    }
    /// The finished table.
    pub fn finish(self) -> Table {
        self.table
    }
}

impl Values {
    fn push(&mut self, cell: Option<Cell<'_>>) {
        match (self, cell) {
            (Values::F64(values), Some(Cell::Number(value))) => values.push(value),
            (Values::F64(values), _) => values.push(f64::NAN),
            (Values::I64(values), Some(Cell::Whole(value))) => values.push(value),
            (Values::I64(values), _) => values.push(0),
            (Values::Category { codes, labels }, Some(Cell::Word(word))) => {
                let place = labels.iter().position(|label| label == word).unwrap_or_else(|| {
                    labels.push(word.to_owned());
                    labels.len() - 1
                });
                codes.push(i32::try_from(place).unwrap_or(-1));
            }
            (Values::Category { codes, .. }, _) => codes.push(-1),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Quantity, mm};

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
