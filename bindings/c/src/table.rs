//! Tables on the C surface, by column. Every pointer that a table hands out is valid until `axw_table_free`.

use crate::caller::{free, handle, put, words, write};
use crate::guard::{guard, guard_or};
use crate::kept::c_text;
use crate::status::{Failure, Outcome};
use axlewright::base::table::{Column, Table, Values};
use axlewright::base::text::shortened;
use std::ffi::{CString, c_char};

/// A column of `double` in coherent SI; NaN in a refused row.
pub const AXW_COLUMN_F64: i32 = 0;
/// A column of `int64_t`; zero in a refused row.
pub const AXW_COLUMN_I64: i32 = 1;
/// A column of words: `int32_t` codes, -1 in a refused row, and a label a code.
pub const AXW_COLUMN_CATEGORY: i32 = 2;

/// A table that a model returned.
pub struct axw_table {
    table: Table,
    names: Vec<CString>,
    kinds: Vec<CString>,
    units: Vec<CString>,
    labels: Vec<Vec<CString>>,
    refused: Vec<usize>,
}

impl axw_table {
    pub(crate) fn new(table: Table) -> Box<axw_table> {
        let columns = table.columns();
        let labels = |column: &Column| match &column.values {
            Values::Category { labels, .. } => labels.iter().map(|label| c_text(label)).collect(),
            _ => Vec::new(),
        };
        Box::new(axw_table {
            names: columns.iter().map(|column| c_text(&column.name)).collect(),
            kinds: columns.iter().map(|column| c_text(column.kind.map_or("", |kind| kind.name))).collect(),
            units: columns.iter().map(|column| c_text(column.kind.map_or("", |kind| kind.si))).collect(),
            labels: columns.iter().map(labels).collect(),
            refused: table.refused().iter().map(|(row, _)| *row).collect(),
            table,
        })
    }

    fn column(&self, column: usize) -> Outcome<&Column> {
        let count = self.table.columns().len();
        let missing = || Failure::NotThere(format!("column = {column} is not there: the table has {count}"));
        self.table.columns().get(column).ok_or_else(missing)
    }
}

/// Number of rows; 0 if `table` is NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_rows(table: *const axw_table) -> usize {
    guard_or(0, || unsafe { table.as_ref() }.map_or(0, |table| table.table.rows()))
}

/// Number of columns; 0 if `table` is NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_columns(table: *const axw_table) -> usize {
    guard_or(0, || unsafe { table.as_ref() }.map_or(0, |table| table.table.columns().len()))
}

/// Name, quantity and SI unit of a column (empty for words and whole numbers), and its type `AXW_COLUMN_...`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_column(
    table: *const axw_table,
    column: usize,
    name: *mut *const c_char,
    quantity: *mut *const c_char,
    unit: *mut *const c_char,
    column_type: *mut i32,
) -> i32 {
    guard(|| {
        let table = unsafe { handle("table", table) }?;
        let values = &table.column(column)?.values;
        unsafe {
            put(name, table.names[column].as_ptr());
            put(quantity, table.kinds[column].as_ptr());
            put(unit, table.units[column].as_ptr());
            put(
                column_type,
                match values {
                    Values::F64(_) => AXW_COLUMN_F64,
                    Values::I64(_) => AXW_COLUMN_I64,
                    Values::Category { .. } => AXW_COLUMN_CATEGORY,
                },
            );
        }
        Ok(())
    })
}

/// Place of the column of this name, for every other entry.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_find(
    table: *const axw_table,
    name: *const c_char,
    column: *mut usize,
) -> i32 {
    guard(|| {
        let columns = unsafe { handle("table", table) }?.table.columns();
        let name = unsafe { words("name", name) }?;
        let place = columns.iter().position(|column| column.name == name).ok_or_else(|| {
            let names: Vec<&str> = columns.iter().map(|column| &*column.name).collect();
            let name = shortened(name);
            Failure::NotThere(format!("name = {name:?} is not there: the table has {}", names.join(", ")))
        })?;
        unsafe { put(column, place) };
        Ok(())
    })
}

fn other_type(column: usize) -> Failure {
    Failure::NotThere(format!("column = {column} is of another type; ask axw_table_column"))
}

/// The numbers of a column of type `AXW_COLUMN_F64`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_f64(
    table: *const axw_table,
    column: usize,
    values: *mut *const f64,
    length: *mut usize,
) -> i32 {
    guard(|| {
        let table = unsafe { handle("table", table) }?;
        let Values::F64(found) = &table.column(column)?.values else { return Err(other_type(column)) };
        unsafe {
            put(values, found.as_ptr());
            put(length, found.len());
        }
        Ok(())
    })
}

/// The numbers of a column of type `AXW_COLUMN_I64`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_i64(
    table: *const axw_table,
    column: usize,
    values: *mut *const i64,
    length: *mut usize,
) -> i32 {
    guard(|| {
        let table = unsafe { handle("table", table) }?;
        let Values::I64(found) = &table.column(column)?.values else { return Err(other_type(column)) };
        unsafe {
            put(values, found.as_ptr());
            put(length, found.len());
        }
        Ok(())
    })
}

/// The codes of a column of type `AXW_COLUMN_CATEGORY`, and the number of its labels.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_codes(
    table: *const axw_table,
    column: usize,
    codes: *mut *const i32,
    length: *mut usize,
    labels: *mut usize,
) -> i32 {
    guard(|| {
        let table = unsafe { handle("table", table) }?;
        let Values::Category { codes: found, labels: words } = &table.column(column)?.values else {
            return Err(other_type(column));
        };
        unsafe {
            put(codes, found.as_ptr());
            put(length, found.len());
            put(labels, words.len());
        }
        Ok(())
    })
}

/// The word of a code in a column of type `AXW_COLUMN_CATEGORY`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_label(
    table: *const axw_table,
    column: usize,
    code: i32,
    label: *mut *const c_char,
) -> i32 {
    guard(|| {
        let table = unsafe { handle("table", table) }?;
        let Values::Category { .. } = table.column(column)?.values else { return Err(other_type(column)) };
        let found = usize::try_from(code).ok().and_then(|code| table.labels[column].get(code));
        let found =
            found.ok_or_else(|| Failure::NotThere(format!("code = {code} is not in column {column}")))?;
        unsafe { put(label, found.as_ptr()) };
        Ok(())
    })
}

/// The refused rows in order, and their number; `axw_table_reason` gives the reason.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_refused(
    table: *const axw_table,
    rows: *mut *const usize,
    count: *mut usize,
) -> i32 {
    guard(|| {
        let refused = &unsafe { handle("table", table) }?.refused;
        unsafe {
            put(rows, refused.as_ptr());
            put(count, refused.len());
        }
        Ok(())
    })
}

/// Reason for the refusal of a row: copies the sentence, empty for a row with results. `needed` receives the bytes that it needs, its closing
/// NUL included; `buffer` may be NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_reason(
    table: *const axw_table,
    row: usize,
    buffer: *mut c_char,
    size: usize,
    needed: *mut usize,
) -> i32 {
    guard(|| {
        let table = &unsafe { handle("table", table) }?.table;
        if row >= table.rows() {
            return Err(Failure::NotThere(format!(
                "row = {row} is not there: the table has {}",
                table.rows()
            )));
        }
        let text = table.reason(row).map(ToString::to_string).unwrap_or_default();
        unsafe { write(&text, buffer, size, needed) }
    })
}

/// Frees a table and every pointer that it handed out; NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_table_free(table: *mut axw_table) {
    guard_or((), || unsafe { free(table) });
}
