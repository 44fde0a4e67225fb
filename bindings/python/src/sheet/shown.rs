//! Kinds of the lines, and the units in which a sheet and its answers are shown.
use crate::array::Value;
use crate::error::raise;
use crate::quantity::Quantity;
use axlewright::base::text::{System, read_as, shortened};
use axlewright::sheet as core;
use axlewright::units::{Kind, Unit};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

/// The unit of a shop.
pub fn unit_of(kind: &'static Kind, system: System) -> &'static Unit {
    let name = match system {
        System::Metric => kind.metric,
        System::Us => kind.us,
    };
    kind.unit(name).unwrap_or(&kind.units[0])
}

pub fn system(name: &str) -> PyResult<System> {
    match name {
        "metric" => Ok(System::Metric),
        "us" => Ok(System::Us),
        other => Err(PyValueError::new_err(format!(
            "system = \"{}\" is not known; it is \"metric\" or \"us\"",
            shortened(other)
        ))),
    }
}

/// A quantity, a plain number for a ratio, or nothing if it is not known. Without a unit it is shown in coherent SI.
pub fn known(
    py: Python<'_>,
    si: f64,
    kind: &'static Kind,
    unit: Option<&'static Unit>,
) -> PyResult<Option<Py<PyAny>>> {
    if si.is_nan() {
        return Ok(None);
    }
    let unit = unit.unwrap_or(&kind.units[0]);
    Quantity::result(py, Value::Number(si), kind, unit).map(Some)
}

pub fn kind_of(py: Python<'_>, path: &str) -> PyResult<Option<&'static Kind>> {
    core::Sheet::kind(path).map_err(|error| raise(py, error))
}

/// Each written line that is a quantity: path, kind and unit.
pub fn written_units(sheet: &core::Sheet) -> Vec<(&'static str, &'static Kind, &'static Unit)> {
    let unit = |path: &'static str| {
        let kind = core::Sheet::kind(path).ok()??;
        let reading = read_as(&sheet.get(path).ok()??, kind).ok()?;
        Some((path, kind, reading.unit))
    };
    sheet.paths().filter_map(unit).collect()
}
