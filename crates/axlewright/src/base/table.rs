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

/// Most memory that the columns of one table may take, in bytes: 4 GiB. A larger table is refused before anything is allocated.
pub const MOST_BYTES: u64 = 4 << 30;

/// Number of rows of a table over these lists, each value with every other. Refused if that many rows take more than [`MOST_BYTES`]; `instead` says what
/// to ask for then.
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
    Err(Error::NoSolution {
        message: format!(
            "a table of {rows} rows{grid} of {bytes_a_row} bytes each takes {:.1} GiB, and one table at most {:.0} GiB: {instead}",
            gibibytes(bytes),
            gibibytes(u128::from(MOST_BYTES))
        ),
    })
}

/// The columns of a table that is filled row by row.
#[derive(Debug, Clone, Default)]
pub struct Columns {
    columns: Vec<Column>,
    /// Bytes that a row takes in columns that are filled beside these.
    beside: usize,
}

impl Columns {
    /// No column yet.
    pub fn new() -> Self {
        Self::default()
    }
    /// Adds a column of quantities.
    pub fn quantity<Q: Quantity>(self, name: &'static str) -> Self {
        self.and(name, Some(Q::KIND), Values::F64(Vec::new()))
    }
    /// Adds a column of whole numbers.
    pub fn whole(self, name: &'static str) -> Self {
        self.and(name, None, Values::I64(Vec::new()))
    }
    /// Adds a column of words.
    pub fn words(self, name: &'static str) -> Self {
        self.and(name, None, Values::Category { codes: Vec::new(), labels: Vec::new() })
    }
    fn and(mut self, name: &'static str, kind: Option<&'static Kind>, values: Values) -> Self {
        self.columns.push(Column { name: Cow::Borrowed(name), kind, values });
        self
    }
    /// Counts the memory of columns that are filled beside these.
    pub(crate) fn beside(mut self, columns: &[Column]) -> Self {
        self.beside += columns.iter().map(|column| column.values.bytes_a_row()).sum::<usize>();
        self
    }
    /// Begins a table over these lists, each value with every other. Refused before anything is allocated if it takes more than [`MOST_BYTES`].
    pub fn over(mut self, lists: &[usize]) -> Result<Rows> {
        let own: usize = self.columns.iter().map(|column| column.values.bytes_a_row()).sum();
        let rows = within_memory(lists, own + self.beside, "ask for fewer values at a time")?;
        if self.columns.iter_mut().any(|column| column.values.reserve(rows).is_err()) {
            return Err(Error::NoSolution { message: format!("no memory for a table of {rows} rows") });
        }
        Ok(Rows { table: Table { columns: self.columns, ..Table::default() } })
    }
}

/// Fills a table row by row; a refused row gets its reason and nothing else. See [`Columns::over`].
#[derive(Debug, Clone)]
pub struct Rows {
    table: Table,
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
    /// Bytes that one row takes.
    pub(crate) const fn bytes_a_row(&self) -> usize {
        match self {
            Values::F64(_) | Values::I64(_) => 8,
            Values::Category { .. } => 4,
        }
    }
    fn reserve(&mut self, rows: usize) -> core::result::Result<(), std::collections::TryReserveError> {
        match self {
            Values::F64(values) => values.try_reserve_exact(rows),
            Values::I64(values) => values.try_reserve_exact(rows),
            Values::Category { codes, .. } => codes.try_reserve_exact(rows),
        }
    }
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
    use crate::units::{Length, mm};

    #[test]
    fn rows_of_numbers_are_those_that_cells_give_across_blocks() {
        let columns = || {
            let columns =
                Columns::new().words("state").quantity::<Length>("travel").quantity::<Length>("rise");
            columns.words("joint").over(&[2 * WAITING + 3]).unwrap()
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
        let columns = Columns::new().quantity::<Length>("travel").words("verdict").whole("turn");
        let mut rows = columns.over(&[2]).unwrap();
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

    /// 8 bytes of a number and 4 of a word a row: 357 913 941 rows fill 4 GiB but for 4 bytes.
    #[test]
    fn a_table_that_is_too_large_is_refused_before_it_is_made() {
        let columns = || Columns::new().quantity::<Length>("travel").words("verdict");
        assert_eq!(within_memory(&[357_913_941], 12, ""), Ok(357_913_941));
        for (lists, by) in [
            (&[357_913_942][..], "a table of 357913942 rows of 12 bytes each takes 4.0 GiB"),
            (&[20_000, 20_000], "a table of 400000000 rows (20000 x 20000) of 12 bytes each takes 4.5 GiB"),
            (
                &[usize::MAX, usize::MAX, usize::MAX],
                "a table of 340282366920938463463374607431768211455 rows",
            ),
        ] {
            let refusal = columns().over(lists).unwrap_err().to_string();
            assert!(refusal.starts_with(by), "{refusal}");
            assert!(refusal.contains("one table at most 4 GiB: ask for fewer values at a time"), "{refusal}");
        }
        // Columns that are filled beside count, too; no values give no rows, whatever the other lists.
        let (beside, _) = columns().over(&[0, usize::MAX, usize::MAX]).unwrap().finish().into_parts();
        assert!(columns().beside(&beside).over(&[357_913_941]).is_err());
    }
}
