//! The build sheet: handles of the core behind the classes of `axlewright.sheet`.
mod assess;
mod batch;
mod choose;
mod handle;
mod shown;
mod value;
mod what_if;

use crate::error::{guard, raise};
use crate::watch::watched;
use pyo3::prelude::*;

/// The JSON Schema of a build sheet.
#[pyfunction(name = "_sheet_schema")]
fn sheet_schema() -> PyResult<String> {
    guard("schema", || Ok(axlewright::sheet::schema()))
}

/// Tables of a sheet, or the lines that a word of the trade finds.
#[pyfunction(name = "_sheet_keys")]
#[pyo3(signature = (word, units, width))]
fn sheet_keys(word: Option<&str>, units: &str, width: usize) -> PyResult<String> {
    guard("keys", || Ok(axlewright::sheet::keys(word, shown::system(units)?, width)))
}

/// Assessments side by side, each under its label: the findings that differ.
#[pyfunction(name = "_sheet_compare")]
fn sheet_compare(
    py: Python<'_>,
    rows: Vec<(String, PyRef<'_, assess::AssessmentHandle>)>,
    units: Option<&str>,
    width: usize,
    colour: bool,
) -> PyResult<String> {
    guard("compare", || {
        let report = assess::form(units, width, false, false, colour)?;
        let rows: Vec<_> = rows.iter().map(|(label, one)| (label.as_str(), &one.assessment)).collect();
        watched(py, || Ok(axlewright::sheet::Assessment::side_by_side(&rows, &report)))
    })
}

/// A new sheet to fill in, by the answers to the questions.
#[pyfunction(name = "_sheet_starter")]
fn sheet_starter(py: Python<'_>, answers: Vec<(String, String)>, name: &str) -> PyResult<String> {
    guard("new", || {
        let answers: Vec<_> = answers.iter().map(|(key, word)| (key.as_str(), word.as_str())).collect();
        axlewright::sheet::starter(name, &answers).map_err(|error| raise(py, error))
    })
}

type Questions = Vec<(&'static str, &'static str, Vec<(&'static str, &'static str)>)>;

/// The questions of a new sheet: name, question, and the answers with what they say.
#[pyfunction(name = "_sheet_questions")]
fn sheet_questions() -> Questions {
    let all = axlewright::sheet::QUESTIONS.iter();
    all.map(|question| (question.key, question.asks, question.choices.to_vec())).collect()
}

/// A demo sheet.
#[pyfunction(name = "_sheet_demo")]
fn sheet_demo(name: &str) -> Option<&'static str> {
    axlewright::sheet::DEMOS.iter().find(|(known, _)| *known == name).map(|(_, text)| *text)
}

/// A text after a head, in lines of this width.
#[pyfunction(name = "_wrapped")]
fn wrapped(head: &str, indent: usize, text: &str, width: usize) -> String {
    axlewright::base::text::wrapped(head, indent, text, width)
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<handle::SheetHandle>()?;
    m.add_class::<what_if::WhatIfHandle>()?;
    m.add_class::<batch::Batch>()?;
    m.add_class::<assess::AssessmentHandle>()?;
    m.add_class::<choose::PriceListHandle>()?;
    m.add_function(wrap_pyfunction!(value::values, m)?)?;
    m.add_function(wrap_pyfunction!(value::sheet_text, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_schema, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_keys, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_compare, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_starter, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_questions, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_demo, m)?)?;
    m.add_function(wrap_pyfunction!(wrapped, m)?)
}
