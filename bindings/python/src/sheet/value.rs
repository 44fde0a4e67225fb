//! Values of lines as a document writes them.
use super::shown::kind_of;
use crate::array::{Value, brief, elements};
use crate::error::{guard, is_of_others, letters};
use crate::quantity::{Quantity, take};
use axlewright::base::text::{read_as, shortened};
use axlewright::units::Kind;
use numpy::PyArray1;
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyList, PyString, PyTuple};

/// A value of a line as a document writes it: text unchanged, a quantity so that it is read to the same bits.
pub fn text(path: &str, value: &Bound<'_, PyAny>) -> PyResult<String> {
    let py = value.py();
    if let Ok(words) = value.cast::<PyString>() {
        return Ok(letters(words)?.to_owned());
    }
    let Some(kind) = kind_of(py, path)? else {
        return Err(PyTypeError::new_err(format!("{} = {} is not text", shortened(path), brief(value))));
    };
    let (taken, unit) = take(value, path, kind)?;
    let Value::Number(si) = taken else {
        return Err(PyTypeError::new_err(format!("{path} is one value here, not an array")));
    };
    if !si.is_finite() {
        return Err(PyValueError::new_err(format!("{path} = {si} is not a finite number")));
    }
    let coherent = &kind.units[0];
    for unit in [unit.unwrap_or(coherent), coherent] {
        let words = Quantity { value: Value::Number(si), kind, unit }.words(py);
        if read_as(&words, kind).is_ok_and(|reading| reading.si == si) {
            return Ok(words);
        }
    }
    Err(PyValueError::new_err(format!(
        "{path} = {} has no text that is read to the same number",
        brief(value)
    )))
}

/// A list of texts of which one at least is read with a tolerance.
fn with_tolerance(values: &Bound<'_, PyAny>, kind: &'static Kind) -> Option<Vec<String>> {
    let texts: Vec<String> = match values.cast::<PyList>() {
        Ok(list) => list.extract().ok()?,
        Err(_) => values.cast::<PyTuple>().ok()?.extract().ok()?,
    };
    let has = |text: &String| read_as(text, kind).is_ok_and(|read| read.tolerance.is_some());
    texts.iter().any(has).then_some(texts)
}

/// Values of a line for a sweep: numbers in coherent SI and their unit, or texts for a word or a marking.
#[pyfunction(name = "_sheet_values")]
pub fn values<'py>(
    py: Python<'py>,
    path: &str,
    values: &Bound<'py, PyAny>,
) -> PyResult<(Bound<'py, PyAny>, Option<&'static str>)> {
    guard("what_if", || {
        let Some(kind) = kind_of(py, path)? else {
            let wrong = || {
                PyTypeError::new_err(format!("{} = {} is no list of texts", shortened(path), brief(values)))
            };
            if values.is_instance_of::<PyString>() {
                return Err(wrong());
            }
            let texts = elements(values)
                .and_then(|all| all.iter().map(|text| text.extract()).collect::<PyResult<Vec<String>>>())
                .map_err(|error| if is_of_others(py, &error) { error } else { wrong() })?;
            let rows: Vec<(String,)> = texts.into_iter().map(|text| (text,)).collect();
            return Ok((rows.into_pyobject(py)?.into_any(), None));
        };
        // Texts with a tolerance go as they are written: the tolerance counts in their rows.
        if let Some(texts) = with_tolerance(values, kind) {
            let unit = texts.first().and_then(|text| read_as(text, kind).ok()).map(|read| read.unit.name);
            let rows: Vec<(String,)> = texts.into_iter().map(|text| (text,)).collect();
            return Ok((rows.into_pyobject(py)?.into_any(), unit));
        }
        let (taken, unit) = take(values, path, kind)?;
        let numbers = match taken {
            Value::Number(si) => PyArray1::from_vec(py, vec![si]).into_any(),
            Value::Array(array) => py.import("numpy")?.call_method1("ascontiguousarray", (array,))?,
        };
        if numbers.cast::<PyArray1<f64>>().is_err() {
            return Err(PyTypeError::new_err(format!("{path} is a list of values, not a table of them")));
        }
        Ok((numbers, unit.map(|unit| unit.name)))
    })
}

/// A value of a line as a document writes it, and the unit in which it was given.
#[pyfunction(name = "_sheet_text")]
pub fn sheet_text(
    py: Python<'_>,
    path: &str,
    value: &Bound<'_, PyAny>,
) -> PyResult<(String, Option<&'static str>)> {
    guard("what_if", || {
        let words = text(path, value)?;
        let unit = kind_of(py, path)?.and_then(|kind| read_as(&words, kind).ok());
        Ok((words, unit.map(|reading| reading.unit.name)))
    })
}
