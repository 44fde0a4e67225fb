//! The build sheet: handles of the core behind the classes of `axlewright.sheet`.
mod assess;
mod batch;
mod choose;
mod handle;
mod shown;
mod value;
mod what_if;

use crate::error::guard;
use pyo3::prelude::*;

/// The JSON Schema of a build sheet.
#[pyfunction(name = "_sheet_schema")]
fn sheet_schema() -> PyResult<String> {
    guard("schema", || Ok(axlewright::sheet::schema()))
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<handle::SheetHandle>()?;
    m.add_class::<what_if::WhatIfHandle>()?;
    m.add_class::<batch::Batch>()?;
    m.add_class::<assess::AssessmentHandle>()?;
    m.add_class::<choose::PriceListHandle>()?;
    m.add_function(wrap_pyfunction!(value::values, m)?)?;
    m.add_function(wrap_pyfunction!(value::sheet_text, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_schema, m)?)
}
