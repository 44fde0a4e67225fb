//! Tables as Arrow record batches (Apache Arrow format specification, "The Arrow PyCapsule Interface").
use super::arrow::{Array, Data, Schema, array, schema};
use axlewright::base::table::{Table, Values};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::PyCapsule;
use std::collections::HashMap;
use std::ptr::null;
use std::sync::Arc;

/// The name of a column with the unit of its numbers, as many readers drop what else a schema says: `travel [m]`, and `[m]` of a column without a
/// name. A pure number has none.
fn named(name: &str, unit: &str) -> String {
    match (name, unit) {
        (name, "" | "1") => name.to_owned(),
        ("", unit) => format!("[{unit}]"),
        (name, unit) => format!("{name} [{unit}]"),
    }
}

/// One column: numbers without a copy, words as a dictionary with nulls.
fn column(name: &str, x: &Bound<'_, PyAny>, unit: &str, quantity: &str) -> PyResult<(Schema, Array)> {
    if let Ok(numbers) = x.cast::<PyArray1<f64>>() {
        let about = [("unit", unit), ("quantity", quantity)];
        return Ok((schema("g", &named(name, unit), &about, vec![], None)?, numeric(numbers)?));
    }
    if let Ok(numbers) = x.cast::<PyArray1<i64>>() {
        return Ok((schema("l", name, &[], vec![], None)?, numeric(numbers)?));
    }
    let (mut codes, mut labels) = (Vec::new(), Vec::new());
    let mut places = HashMap::<String, i32>::new();
    for (row, word) in x.try_iter()?.enumerate() {
        if row % 65_536 == 65_535 {
            x.py().check_signals()?;
        }
        let word = word?;
        if word.is_none() {
            codes.push(-1);
            continue;
        }
        let word: String = word.extract()?;
        let next = places.len() as i32;
        codes.push(*places.entry(word).or_insert_with_key(|word| {
            labels.push(word.clone());
            next
        }));
    }
    Ok((words_schema(name)?, words(codes, &labels)))
}

/// Words as a dictionary; a code of -1 is a null.
fn words(mut codes: Vec<i32>, labels: &[String]) -> Array {
    let (mut valid, mut nulls) = (vec![0_u8; codes.len().div_ceil(8)], 0);
    for (row, code) in codes.iter_mut().enumerate() {
        if *code < 0 {
            (*code, nulls) = (0, nulls + 1);
        } else {
            valid[row / 8] |= 1 << (row % 8);
        }
    }
    let (mut bytes, mut ends) = (Vec::<u8>::new(), vec![0_i32]);
    for label in labels {
        bytes.extend(label.as_bytes());
        ends.push(bytes.len() as i32);
    }
    let buffers = vec![null(), ends.as_ptr().cast(), bytes.as_ptr().cast()];
    let dictionary =
        array(labels.len(), 0, buffers, vec![Data::Codes(ends), Data::Bytes(bytes)], vec![], None);
    let validity = if nulls == 0 { null() } else { valid.as_ptr().cast() };
    let buffers = vec![validity, codes.as_ptr().cast()];
    array(codes.len(), nulls, buffers, vec![Data::Bytes(valid), Data::Codes(codes)], vec![], Some(dictionary))
}

fn words_schema(name: &str) -> PyResult<Schema> {
    schema("i", name, &[], vec![], Some(schema("u", "", &[], vec![], None)?))
}

/// A core table as one batch that points into it. `reason` is always its last column, so that every batch of a sweep has the same
/// schema.
pub fn batch(table: &Arc<Table>) -> PyResult<(Schema, Array)> {
    let rows = table.rows();
    let kept = || vec![Data::Table(table.clone())];
    let (mut schemas, mut arrays) = (Vec::new(), Vec::new());
    for column in table.columns() {
        let (made, values) = match &column.values {
            Values::F64(x) => {
                let (unit, quantity) = column.kind.map_or(("1", "Ratio"), |kind| (kind.si, kind.name));
                let about = [("unit", unit), ("quantity", quantity)];
                let values = array(rows, 0, vec![null(), x.as_ptr().cast()], kept(), vec![], None);
                (schema("g", &named(&column.name, unit), &about, vec![], None)?, values)
            }
            Values::I64(x) => {
                let values = array(rows, 0, vec![null(), x.as_ptr().cast()], kept(), vec![], None);
                (schema("l", &column.name, &[], vec![], None)?, values)
            }
            Values::Category { codes, labels } => (words_schema(&column.name)?, words(codes.clone(), labels)),
        };
        schemas.push(made);
        arrays.push(values);
    }
    let (mut codes, mut labels) = (vec![-1; rows], Vec::new());
    let mut places = HashMap::<String, i32>::new();
    for (row, reason) in table.refused() {
        let next = places.len() as i32;
        codes[*row] = *places.entry(reason.to_string()).or_insert_with_key(|reason| {
            labels.push(reason.clone());
            next
        });
    }
    schemas.push(words_schema("reason")?);
    arrays.push(words(codes, &labels));
    Ok((schema("+s", "", &[], schemas, None)?, array(rows, 0, vec![null()], vec![], arrays, None)))
}

/// One batch as two capsules.
pub fn batch_capsules<'py>(
    py: Python<'py>,
    table: &Arc<Table>,
) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
    let (schema, array) = batch(table)?;
    Ok((
        PyCapsule::new_with_value(py, schema, c"arrow_schema")?,
        PyCapsule::new_with_value(py, array, c"arrow_array")?,
    ))
}

/// The schema of a batch as a capsule.
pub fn schema_capsule<'py>(py: Python<'py>, table: &Arc<Table>) -> PyResult<Bound<'py, PyCapsule>> {
    PyCapsule::new_with_value(py, batch(table)?.0, c"arrow_schema")
}

fn numeric<T: numpy::Element>(numbers: &Bound<'_, PyArray1<T>>) -> PyResult<Array> {
    let read = numbers.readonly();
    let values = read.as_slice()?;
    let data = vec![Data::Python(numbers.clone().into_any().unbind())];
    Ok(array(values.len(), 0, vec![null(), values.as_ptr().cast()], data, vec![], None))
}

/// Name, values, unit and kind of quantity of each column.
pub type ArrowColumns<'py> = Vec<(String, Bound<'py, PyAny>, String, String)>;

pub fn whole(rows: usize, columns: &ArrowColumns<'_>) -> PyResult<(Schema, Array)> {
    let (mut schemas, mut arrays) = (Vec::new(), Vec::new());
    for (name, x, unit, quantity) in columns {
        let (schema, array) = column(name, x, unit, quantity)?;
        if array.length != rows as i64 {
            return Err(PyTypeError::new_err(format!("{name} has {} rows; it needs {rows}", array.length)));
        }
        schemas.push(schema);
        arrays.push(array);
    }
    Ok((schema("+s", "", &[], schemas, None)?, array(rows, 0, vec![null()], vec![], arrays, None)))
}

/// Numbers in coherent SI as one column in two capsules.
pub fn column_capsules<'py>(
    x: &Bound<'py, PyAny>,
    unit: &str,
    quantity: &str,
) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
    let py = x.py();
    let (schema, array) = column("", x, unit, quantity)?;
    Ok((
        PyCapsule::new_with_value(py, schema, c"arrow_schema")?,
        PyCapsule::new_with_value(py, array, c"arrow_array")?,
    ))
}

/// The schema of a table as a capsule.
#[pyfunction(name = "_arrow_schema")]
pub fn arrow_schema<'py>(
    py: Python<'py>,
    rows: usize,
    columns: ArrowColumns<'py>,
) -> PyResult<Bound<'py, PyCapsule>> {
    PyCapsule::new_with_value(py, whole(rows, &columns)?.0, c"arrow_schema")
}

/// Schema and data of a table as two capsules.
#[pyfunction(name = "_arrow_array")]
pub fn arrow_array<'py>(
    py: Python<'py>,
    rows: usize,
    columns: ArrowColumns<'py>,
) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
    let (schema, array) = whole(rows, &columns)?;
    Ok((
        PyCapsule::new_with_value(py, schema, c"arrow_schema")?,
        PyCapsule::new_with_value(py, array, c"arrow_array")?,
    ))
}
