//! The door to the units library `pint`: its quantities are converted once, here, never by its own dispatch.
use super::words::{a, how_to_write};
use crate::error::is_of_others;
use axlewright::base::text;
use axlewright::units::{
    AbsolutePressure, GaugePressure, KINDS, Kind, Quantity, Temperature, TemperatureDifference, Unit,
};
use pyo3::exceptions::{PyImportError, PyModuleNotFoundError, PyTypeError};
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
    kind.si
        .replace('·', "*")
        .replace('²', "**2")
        .replace('³', "**3")
        .replace('⁴', "**4")
        .replace('⁶', "**6")
        .replace("turn", "revolution")
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
    let units = x.getattr("units")?;
    if is_pressure(kind) {
        // Only a unit of ours says which.
        return match ours(&units)? {
            Some((known, _)) if known == kind => {
                x.call_method1("to", (known_name(kind),))?.getattr("magnitude")
            }
            Some((known, _)) => Err(refuse(&format!("is {}", a(known)))),
            None => Err(refuse("does not say whether it is gauge or absolute")),
        };
    }
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

fn is_pressure(kind: &Kind) -> bool {
    kind == GaugePressure::KIND || kind == AbsolutePressure::KIND
}

/// Name in pint of the coherent SI unit of a pressure that says whether it is gauge or absolute.
fn known_name(kind: &Kind) -> &'static str {
    kind.units[0].name
}

/// The unit of ours with the name of this unit of pint, if it is one of a gauge or an absolute pressure.
fn ours(units: &Bound<'_, PyAny>) -> PyResult<Option<(&'static Kind, &'static Unit)>> {
    let mut name = units.str()?.to_string();
    // If pint reads a name as a prefix and a unit, it writes the prefix out.
    for (long, short) in [("kiloPa_", "kPa_"), ("hectoPa_", "hPa_"), ("megaPa_", "MPa_")] {
        if let Some(rest) = name.strip_prefix(long) {
            name = format!("{short}{rest}");
        }
    }
    let pressures = [GaugePressure::KIND, AbsolutePressure::KIND];
    Ok(pressures.into_iter().find_map(|kind| Some((kind, kind.unit(&name)?))))
}

/// Kind and unit of a quantity of pint, for a place that does not say which is wanted.
pub fn unit_of(x: &Bound<'_, PyAny>) -> PyResult<(&'static Unit, &'static Kind)> {
    let units = x.getattr("units")?;
    if let Some((kind, unit)) = ours(&units)? {
        return Ok((unit, kind));
    }
    let refused = |why: String| {
        let shown = crate::array::brief(x);
        PyTypeError::new_err(format!(
            "{shown}: {why}; give a unit of this library, as in Q(x.magnitude, \"lbf/in\")"
        ))
    };
    // As pint abbreviates it: `lbf/in`, `N·m`, `m/s²`.
    let short = units.call_method1("__format__", ("~P",))?.to_string();
    let (kind, unit) = match short.as_str() {
        "" => ("Ratio", "one"),
        "delta_°C" | "Δ°C" => ("TemperatureDifference", "delta_degC"),
        "delta_°F" | "Δ°F" => ("TemperatureDifference", "delta_degF"),
        other => {
            // pint sorts the factors: `m·N/deg`.
            let other = other.replace("g_0", "g0");
            let (over, under) = other.split_once('/').unwrap_or((&other, ""));
            let turned: Vec<&str> = over.rsplit('·').collect();
            let turned = format!("{}{}{under}", turned.join("·"), if under.is_empty() { "" } else { "/" });
            let long = units.str()?.to_string();
            let named = KINDS.iter().copied().find_map(|kind| Some((kind, kind.unit(&long)?)));
            if let Some((kind, unit)) = named {
                return Ok((unit, kind));
            }
            let found = text::unit(&turned, None).or_else(|_| text::unit(&other, None));
            let (kind, unit) = found.map_err(|error| refused(error.to_string()))?;
            return Ok((unit, kind));
        }
    };
    let kind = KINDS.iter().copied().find(|known| known.name == kind);
    let found = kind.and_then(|kind| Some((kind.unit(unit)?, kind)));
    found.ok_or_else(|| refused(format!("{short} is not known here")))
}

/// A quantity of pint in the unit of this one, with this number in it; in coherent SI if pint has no such unit.
pub fn give<'py>(
    shown: &Bound<'py, PyAny>,
    si: &Bound<'py, PyAny>,
    kind: &'static Kind,
    unit: &'static Unit,
    registry: Option<&Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let py = si.py();
    let registry = match registry {
        Some(registry) => registry.clone(),
        None => {
            let pint = py.import("pint").map_err(|error| {
                match error.is_instance_of::<PyModuleNotFoundError>(py) {
                    true => PyImportError::new_err(
                        "pint is not installed, and this needs it: pip install 'axlewright[units]'",
                    ),
                    false => error,
                }
            })?;
            pint.call_method0("get_application_registry")?
        }
    };
    let made = |number: &Bound<'py, PyAny>, name: &str| registry.call_method1("Quantity", (number, name));
    if is_pressure(kind) {
        for unit in [&kind.units[0], unit] {
            if !registry.contains(unit.name)? {
                let pascals = unit.to_si(1.0);
                registry.call_method1("define", (format!("{} = {pascals:?} pascal", unit.name),))?;
            }
        }
        return made(shown, unit.name);
    }
    if kind == TemperatureDifference::KIND && unit.name == kind.units[0].name {
        // A kelvin of pint may also be a point on the scale.
        return made(shown, "delta_degC");
    }
    let plain = unit
        .symbol
        .replace('·', "*")
        .replace('²', "**2")
        .replace('³', "**3")
        .replace('⁴', "**4")
        .replace('⁶', "**6");
    for name in [unit.name, &plain] {
        // A name may mean something else there: its size decides.
        let one = made(pyo3::types::PyFloat::new(py, 1.0).as_any(), name);
        let size = one.and_then(|one| {
            one.call_method1("to", (pint_name(kind),))?.getattr("magnitude")?.extract::<f64>()
        });
        if size.is_ok_and(|size| (size - unit.to_si(1.0)).abs() <= 1e-9 * size.abs()) {
            return made(shown, name);
        }
    }
    made(si, &pint_name(kind))
}
