//! The core's work behind an answer, with each argument as it was given.
use crate::array::Value;
use crate::error::{guard, letters, raise};
use crate::quantity::{Quantity, take};
use axlewright::base::text::{System, print_in, shortened};
use axlewright::catalogue;
use axlewright::units::{Quantity as _, Ratio};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyString};

/// Arguments as quantities; arguments with text as it was written; the shop's units; the work as text and as JSON.
type Shown<'py> = (Bound<'py, PyDict>, Bound<'py, PyDict>, &'static str, String, String);

/// The work of a function of this path; in the units of a US shop if one argument was given in such a unit, unless
/// `system` names another.
#[pyfunction(name = "_work")]
fn work<'py>(
    py: Python<'py>,
    function: &str,
    arguments: &Bound<'py, PyDict>,
    system: Option<&str>,
) -> PyResult<Shown<'py>> {
    guard("work", || {
        let entry = catalogue::entry(function).map_err(|error| raise(py, error))?;
        let (inputs, given) = (PyDict::new(py), PyDict::new(py));
        let (mut numbers, mut written, mut us) = (Vec::new(), Vec::new(), false);
        for slot in entry.inputs {
            let (name, kind) = (slot.name, slot.kind);
            let argument = arguments
                .get_item(name)?
                .ok_or_else(|| PyTypeError::new_err(format!("{function} needs {name}")))?;
            let (value, unit) = take(&argument, name, kind)?;
            let Value::Number(si) = value else {
                return Err(PyTypeError::new_err(format!(
                    "{name} is one value here, not an array: work shows one case"
                )));
            };
            us |= unit.is_some_and(|unit| kind.us != kind.metric && unit.name == kind.us);
            let of_kind = unit.unwrap_or(&kind.units[0]);
            let quantity = Quantity::result(py, value, kind, of_kind)?;
            inputs.set_item(name, &quantity)?;
            if let Ok(words) = argument.cast::<PyString>() {
                written.push(Some(letters(words)?.trim().to_owned()));
                given.set_item(name, words)?;
            } else {
                written.push((kind != Ratio::KIND).then(|| print_in(si, kind, of_kind)));
                given.set_item(name, quantity)?;
            }
            numbers.push(si);
        }
        let (name, system) = match system {
            None if us => ("us", System::Us),
            None | Some("metric") => ("metric", System::Metric),
            Some("us") => ("us", System::Us),
            Some(other) => {
                return Err(PyValueError::new_err(format!(
                    "system = \"{}\" is not known; it is \"metric\" or \"us\"",
                    shortened(other)
                )));
            }
        };
        let work = entry.work(&numbers).map_err(|error| raise(py, error))?.as_written(written);
        let json = work.to_json(system).map_err(|error| raise(py, error))?;
        Ok((inputs, given, name, work.text(system), json))
    })
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_function(wrap_pyfunction!(work, m)?)
}
