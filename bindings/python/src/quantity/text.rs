//! Text of a quantity.
use super::held::Quantity;
use super::words::rounded;
use crate::array::Value;
use axlewright::base::text;
use numpy::PyUntypedArray;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyFloat};

impl Quantity {
    /// An array with its elements written by `format`; a lazy or labelled one unchanged.
    fn array_words(&self, py: Python<'_>, format: &Bound<'_, PyAny>) -> PyResult<String> {
        let numbers = self.value.in_unit(py, self.unit)?;
        if !numbers.is_instance_of::<PyUntypedArray>() {
            return self.full(py);
        }
        let formatter = PyDict::new(py);
        formatter.set_item("float_kind", format)?;
        let options = PyDict::new(py);
        options.set_item("formatter", formatter)?;
        let words = py.import("numpy")?.call_method("array2string", (numbers,), Some(&options))?;
        Ok(self.with_symbol(&words.str()?.to_string()))
    }
    /// With Python's own format of a number.
    fn with_spec(&self, py: Python<'_>, spec: &str) -> PyResult<String> {
        let made = match &self.value {
            Value::Number(si) => {
                let number = PyFloat::new(py, self.shown_number(*si));
                number.call_method1("__format__", (spec,)).map(|number| self.with_symbol(&number.to_string()))
            }
            Value::Array(_) => {
                let one = py.import("operator")?.call_method1("methodcaller", ("__format__", spec))?;
                PyFloat::new(py, 0.0)
                    .call_method1("__format__", (spec,))
                    .and_then(|_| self.array_words(py, &one))
            }
        };
        made.map_err(|error| {
            let advice = format!(
                "\"{}\" is no format of a quantity; use .2f, full, metric or us",
                text::shortened(spec)
            );
            let refused = PyValueError::new_err(advice);
            refused.set_cause(py, Some(error));
            refused
        })
    }
    /// In its own unit, rounded as a shop does.
    pub(super) fn short(&self, py: Python<'_>) -> PyResult<String> {
        match &self.value {
            Value::Number(si) => Ok(self.with_symbol(&rounded(self.unit.from_si(*si)))),
            Value::Array(_) => self.array_words(py, wrap_pyfunction!(rounded, py)?.as_any()),
        }
    }
    /// By a format of Python or of a shop's system.
    pub(super) fn formatted(&self, py: Python<'_>, spec: &str) -> PyResult<String> {
        let (system, name) = match spec {
            "" => return self.short(py),
            "full" => return self.full(py),
            "metric" => (text::System::Metric, self.kind.metric),
            "us" => (text::System::Us, self.kind.us),
            _ => return self.with_spec(py, spec),
        };
        if let Value::Number(si) = self.value {
            return Ok(text::print(si, self.kind, system));
        }
        let unit = self.kind.unit(name).unwrap_or(self.unit);
        Quantity { value: self.value.copy(py), kind: self.kind, unit }.short(py)
    }
}
