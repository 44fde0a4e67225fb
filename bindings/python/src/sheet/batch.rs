//! Rows of a sweep, computed.
use super::shown::unit_of;
use crate::error::guard;
use crate::table::{self, batch_capsules, schema_capsule};
use axlewright::Table;
use axlewright::base::text::System;
use axlewright::units::{Kind, Unit};
use pyo3::prelude::*;
use pyo3::types::PyCapsule;
use std::sync::Arc;

/// Units in which a sweep is shown: those of the lines that change or are written, otherwise the shop's.
pub struct Units {
    pub lines: Vec<(String, &'static Kind, &'static Unit)>,
    pub system: System,
}

impl Units {
    pub fn give<'py>(self: &Arc<Self>, py: Python<'py>, table: Table) -> PyResult<Bound<'py, PyAny>> {
        let units = self.clone();
        table::give(py, table, move |name, kind| {
            let given = units.lines.iter().find(|(path, of, _)| path == name && *of == kind);
            given.map_or_else(|| unit_of(kind, units.system), |(_, _, unit)| unit)
        })
    }
}

/// Some rows of a sweep, computed: an Arrow record batch, and a table.
#[pyclass(frozen, module = "axlewright.sheet", name = "Batch")]
pub struct Batch {
    pub table: Arc<Table>,
    pub units: Arc<Units>,
}

#[pymethods]
impl Batch {
    /// Number of rows.
    #[getter]
    fn rows(&self) -> usize {
        self.table.rows()
    }
    /// The rows as a table.
    fn table<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        guard("Batch", || self.units.give(py, Table::clone(&self.table)))
    }
    /// Schema for the Arrow PyCapsule interface: coherent SI, `unit` and `quantity` in each field's metadata.
    fn __arrow_c_schema__<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyCapsule>> {
        guard("Batch", || schema_capsule(py, &self.table))
    }
    /// Schema and data for the Arrow PyCapsule interface; a request for another schema is ignored.
    #[pyo3(signature = (requested_schema=None))]
    fn __arrow_c_array__<'py>(
        &self,
        py: Python<'py>,
        requested_schema: Option<Py<PyAny>>,
    ) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
        let _ = requested_schema;
        guard("Batch", || batch_capsules(py, &self.table))
    }
}
