//! `Unit` and `Quantity`: a number or an array with its kind, held in coherent SI, and the unit to show it in.
use super::words::{a, written};
use crate::array::Value;
use axlewright::units::{self, Kind, Quantity as _, Ratio};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;

pub const RATIO: &Kind = Ratio::KIND;

/// A unit: `300 * lbf_in`, `lbf_in([250, 300])`, `lbf_in(anything)`.
#[pyclass(frozen, module = "axlewright", name = "Unit")]
pub struct Unit {
    pub unit: &'static units::Unit,
    pub kind: &'static Kind,
}

impl Unit {
    pub(super) fn apply(&self, py: Python<'_>, value: Value) -> PyResult<Quantity> {
        Ok(Quantity { value: value.in_si(py, self.unit)?, kind: self.kind, unit: self.unit })
    }
}

/// A quantity: `Q("300 lbf/in")`, `Q(300, "lbf/in")`, `300 * lbf_in`. It never changes.
#[pyclass(frozen, module = "axlewright", name = "Quantity")]
pub struct Quantity {
    /// Value in coherent SI.
    pub value: Value,
    pub kind: &'static Kind,
    /// Unit in which it was given, and in which it is shown.
    pub unit: &'static units::Unit,
}

impl Quantity {
    /// A function's result: a plain number or array for a ratio, a quantity for everything else.
    #[inline]
    pub fn result(
        py: Python<'_>,
        value: Value,
        kind: &'static Kind,
        unit: &'static units::Unit,
    ) -> PyResult<Py<PyAny>> {
        if kind == RATIO {
            return Ok(value.to_python(py).unbind());
        }
        Ok(Py::new(py, Quantity { value, kind, unit })?.into_any())
    }
    pub(super) fn like(&self, value: Value) -> Self {
        Quantity { value, kind: self.kind, unit: self.unit }
    }
    pub(super) fn is_ratio(&self) -> bool {
        self.kind == RATIO
    }
    /// The shortest number that, read in the unit, gives this value again.
    pub(super) fn shown_number(&self, si: f64) -> f64 {
        let exact = self.unit.from_si(si);
        // The rounding noise of a scale with its own zero does not shrink with the number.
        let decimals = (0..=12).filter(|_| self.unit.offset != 0.0).map(|digits| format!("{exact:.digits$}"));
        let digits = (0..=16).map(|digits| format!("{exact:.digits$e}"));
        decimals
            .chain(digits)
            .filter_map(|short| Some(short.parse::<f64>().ok()? + 0.0))
            .find(|short| self.unit.to_si(*short) == si)
            .unwrap_or(exact)
    }
    pub(super) fn with_symbol(&self, number: &str) -> String {
        if self.unit.symbol.is_empty() { number.to_owned() } else { format!("{number} {}", self.unit.symbol) }
    }
    pub(super) fn array<'py>(&self, py: Python<'py>) -> PyResult<&Bound<'py, PyAny>> {
        match &self.value {
            Value::Array(array) => Ok(array.bind(py)),
            Value::Number(_) => {
                Err(PyTypeError::new_err(format!("{} is one quantity, not an array", self.words(py))))
            }
        }
    }
    /// In its own unit, with every digit.
    pub fn full(&self, py: Python<'_>) -> PyResult<String> {
        let number = match &self.value {
            Value::Number(si) => written(self.shown_number(*si)),
            Value::Array(_) => self.value.in_unit(py, self.unit)?.str()?.to_string(),
        };
        Ok(self.with_symbol(&number))
    }
    /// Text as shown, with every digit.
    pub fn words(&self, py: Python<'_>) -> String {
        self.full(py).unwrap_or_else(|_| a(self.kind))
    }
}
