//! The sheet itself.
use super::assess::AssessmentHandle;
use super::choose::{Chosen, PriceListHandle, choose};
use super::shown::{kind_of, known};
use super::value::text;
use super::what_if::{AxisForm, WhatIfHandle};
use crate::error::{guard, raise};
use crate::interpreter::released;
use crate::watch::watched;
use axlewright::Error;
use axlewright::base::text::{System, read_as};
use axlewright::sheet as core;
use pyo3::prelude::*;
use pyo3::types::PyString;

/// A build sheet of the core.
#[pyclass(frozen, module = "axlewright._native", name = "SheetHandle")]
pub struct SheetHandle {
    sheet: core::Sheet,
}

type Changes<'py> = Vec<(String, Bound<'py, PyAny>)>;
/// A field, the line from which it comes, and its origin: written, computed or assumed.
type Origin = (String, &'static str, &'static str);

#[pymethods]
impl SheetHandle {
    #[staticmethod]
    fn from_text(py: Python<'_>, text: &str) -> PyResult<Self> {
        guard("Sheet", || {
            let sheet = released(py, || core::Sheet::from_text(text)).map_err(|error| raise(py, error))?;
            Ok(SheetHandle { sheet })
        })
    }
    /// A document that Python made: a fault has no place in a text.
    #[staticmethod]
    fn from_document(py: Python<'_>, text: &str) -> PyResult<Self> {
        guard("Sheet", || {
            let read = released(py, || core::Sheet::from_text(text));
            let sheet = read.map_err(|error| match error {
                Error::Document(faults) => raise(py, Error::Document(faults.without_places())),
                other => raise(py, other),
            })?;
            Ok(SheetHandle { sheet })
        })
    }
    fn name(&self) -> &str {
        self.sheet.name()
    }
    fn to_toml(&self, py: Python<'_>) -> PyResult<String> {
        guard("Sheet", || Ok(released(py, || self.sheet.to_toml())))
    }
    fn to_json(&self, py: Python<'_>) -> PyResult<String> {
        guard("Sheet", || Ok(released(py, || self.sheet.to_json())))
    }
    fn hash(&self, py: Python<'_>) -> PyResult<String> {
        guard("Sheet", || Ok(released(py, || self.sheet.hash())))
    }
    fn system(&self) -> PyResult<&'static str> {
        guard("Sheet", || {
            Ok(match self.sheet.system() {
                System::Metric => "metric",
                System::Us => "us",
            })
        })
    }
    fn paths(&self) -> Vec<&'static str> {
        self.sheet.paths().collect()
    }
    fn text(&self, py: Python<'_>, path: &str) -> PyResult<Option<String>> {
        guard("Sheet", || self.sheet.get(path).map_err(|error| raise(py, error)))
    }
    /// Value of a written line: a quantity, or its text.
    fn value(&self, py: Python<'_>, path: &str) -> PyResult<Option<Py<PyAny>>> {
        guard("Sheet", || {
            let Some(words) = self.sheet.get(path).map_err(|error| raise(py, error))? else {
                return Ok(None);
            };
            let kind = if words == "none" { None } else { kind_of(py, path)? };
            let Some(kind) = kind else {
                return Ok(Some(PyString::new(py, &words).into_any().unbind()));
            };
            let reading = read_as(&words, kind).map_err(|error| raise(py, error))?;
            known(py, reading.si, kind, Some(reading.unit))
        })
    }
    /// The sheet with some lines changed; `None` removes a line.
    fn with_lines(&self, py: Python<'_>, changes: Changes<'_>) -> PyResult<Self> {
        guard("Sheet", || {
            let mut sheet = self.sheet.clone();
            let mut lines = Vec::with_capacity(changes.len());
            for (path, value) in &changes {
                let text = if value.is_none() { None } else { Some(text(path, value)?) };
                lines.push((path.as_str(), text));
            }
            let lines = lines.iter().map(|(path, text)| (*path, text.as_deref()));
            sheet.set_all(lines).map_err(|error| raise(py, error))?;
            Ok(SheetHandle { sheet })
        })
    }
    /// The sheet with other parts.
    fn fit(&self, py: Python<'_>, lines: Vec<(String, String)>) -> PyResult<SheetHandle> {
        guard("Sheet.fit", || {
            let mut sheet = self.sheet.clone();
            let lines: Vec<(&str, &str)> = lines.iter().map(|(path, text)| (&**path, &**text)).collect();
            let sheet = watched(py, move || sheet.fit(&lines).map(|_| sheet))?;
            Ok(SheetHandle { sheet })
        })
    }
    /// Type and document of a model that the sheet holds, and the fields that come from elsewhere.
    fn model(&self, py: Python<'_>, path: &str) -> PyResult<(&'static str, String, Vec<Origin>)> {
        guard("Sheet.model", || {
            let model = watched(py, || self.sheet.model(path))?;
            let elsewhere = model.elsewhere.iter().map(|on| (on.field.clone(), on.line, on.origin)).collect();
            Ok((model.model, model.to_json(), elsewhere))
        })
    }
    /// Remarks on the document: keys that were read under an old name, and readings that were dropped.
    fn remarks(&self) -> Vec<String> {
        self.sheet.remarks()
    }
    fn assess(&self, py: Python<'_>) -> PyResult<AssessmentHandle> {
        guard("Sheet.assess", || {
            let assessment = watched(py, || Ok(self.sheet.assess()))?;
            Ok(AssessmentHandle { assessment })
        })
    }
    fn what_if(
        &self,
        py: Python<'_>,
        axes: Vec<AxisForm<'_>>,
        grid: bool,
        outputs: Vec<String>,
    ) -> PyResult<WhatIfHandle> {
        guard("Sheet.what_if", || WhatIfHandle::new(py, &self.sheet, axes, grid, &outputs))
    }
    fn choose(
        &self,
        py: Python<'_>,
        prices: &PriceListHandle,
        requirements: Vec<String>,
        limit: usize,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Chosen> {
        guard("Sheet.choose", || choose(py, &self.sheet, prices, &requirements, limit, progress.as_ref()))
    }
}
