//! The door to the units library `pint`: its quantities are converted once, here, never by its own dispatch.
use super::words::{a, how_to_write};
use crate::error::is_of_others;
use axlewright::units::{
    AbsolutePressure, GaugePressure, Kind, Quantity, Temperature, TemperatureDifference,
};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyDict, PyString};

/// True for an object of `pint`; never true before somebody has imported it.
pub fn is_pint(x: &Bound<'_, PyAny>) -> PyResult<bool> {
    static MODULES: PyOnceLock<Py<PyDict>> = PyOnceLock::new();
    let py = x.py();
    let modules = MODULES.get_or_try_init(py, || {
        Ok::<_, PyErr>(py.import("sys")?.getattr("modules")?.cast_into::<PyDict>()?.unbind())
    })?;
    Ok(modules.bind(py).contains("pint")?
        && x.hasattr("magnitude")?
        && x.hasattr("units")?
        && x.hasattr("to_base_units")?)
}

/// The coherent SI unit as pint writes it: `rad*s**2/m`.
fn expression(kind: &Kind) -> String {
    kind.si.replace('·', "*").replace('²', "**2").replace('³', "**3").replace("turn", "revolution")
}

/// The plain number or array in coherent SI.
///
/// pint distinguishes neither gauge from absolute, nor a turn from a pure number. If that changes the number, it is
/// refused.
pub fn take<'py>(x: &Bound<'py, PyAny>, argument: &str, kind: &'static Kind) -> PyResult<Bound<'py, PyAny>> {
    let shown = crate::array::brief(&x.str()?.into_any());
    let refuse = |why: &str| {
        PyTypeError::new_err(format!(
            "{argument} = {shown} {why}; {} is wanted, for example {}",
            a(kind),
            how_to_write(kind, "300")
        ))
    };
    if kind == GaugePressure::KIND || kind == AbsolutePressure::KIND {
        return Err(refuse("does not say whether it is gauge or absolute"));
    }
    let units = x.getattr("units")?;
    let names: Vec<String> = match units.getattr("_units") {
        Ok(container) => container.try_iter()?.map(|name| name?.extract()).collect::<PyResult<_>>()?,
        Err(_) => vec![units.str()?.extract()?],
    };
    let has = |parts: &[&str]| names.iter().any(|name| parts.iter().any(|part| name.contains(part)));
    if kind == Temperature::KIND && (has(&["delta_"]) || names.len() != 1) {
        return Err(refuse("is a difference of temperatures"));
    }
    if kind == TemperatureDifference::KIND && names.iter().any(|name| name.starts_with("degree_")) {
        return Err(refuse("is a point on a scale"));
    }
    let angular = names
        .iter()
        .filter(|name| !name.starts_with("degree_") && !name.starts_with("delta_degree_"))
        .any(|name| {
            ["radian", "degree", "turn", "revolution", "arcmin", "arcsec"]
                .iter()
                .any(|part| name.contains(part))
        });
    let wanted = kind.si.contains("rad") || kind.si.contains("turn");
    if angular != wanted {
        return Err(refuse(if angular { "counts an angle" } else { "does not count an angle" }));
    }
    let converted = x.call_method1("to", (PyString::new(x.py(), &pint_name(kind)),));
    let refused = |error| if is_of_others(x.py(), &error) { error } else { refuse("has another dimension") };
    converted.map_err(refused)?.getattr("magnitude")
}

fn pint_name(kind: &Kind) -> String {
    if kind.si == "1" { "dimensionless".to_owned() } else { expression(kind) }
}

/// A pint quantity, in coherent SI.
pub fn give<'py>(
    si: Bound<'py, PyAny>,
    kind: &'static Kind,
    registry: Option<&Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let registry = match registry {
        Some(registry) => registry.clone(),
        None => si.py().import("pint")?.call_method0("get_application_registry")?,
    };
    registry.call_method1("Quantity", (si, pint_name(kind)))
}
