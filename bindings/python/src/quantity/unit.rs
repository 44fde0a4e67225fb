//! Methods of the class `Unit`.
use super::held::{Quantity, Unit};
use super::product::refuse_composed;
use super::words::{PRIORITY, alias};
use crate::array::{Operation, Value, brief};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::PyType;
use std::hash::{DefaultHasher, Hash, Hasher};

impl Unit {
    fn no_algebra<T>(&self) -> PyResult<T> {
        Err(PyTypeError::new_err(format!(
            "{} is a unit by itself: a number or an array times a unit is a quantity, and wider algebra belongs to a \
             units library (see to_pint)",
            self.unit.name
        )))
    }
}

#[pymethods]
impl Unit {
    /// Short name: `lbf_in`.
    #[getter]
    fn name(&self) -> &'static str {
        self.unit.name
    }
    /// Printed symbol: `lbf/in`.
    #[getter]
    fn symbol(&self) -> &'static str {
        self.unit.symbol
    }
    /// Kind of quantity: `LinearStiffness`.
    #[getter]
    fn kind(&self) -> &'static str {
        self.kind.name
    }
    fn __call__(&self, value: &Bound<'_, PyAny>) -> PyResult<Quantity> {
        if value.is_instance_of::<Quantity>() {
            return Err(PyTypeError::new_err(format!(
                "{} has its unit already; see Quantity.to",
                brief(value)
            )));
        }
        self.apply(value.py(), Value::labelled(value, self.unit, self.kind)?)
    }
    fn __mul__(slf: &Bound<'_, Self>, value: &Bound<'_, PyAny>) -> PyResult<Quantity> {
        if value.is_instance_of::<Unit>() || value.is_instance_of::<Quantity>() {
            return refuse_composed(slf, Operation::Multiply, value)
                .map_or_else(|| slf.get().no_algebra(), Err);
        }
        slf.get().__rmul__(value)
    }
    fn __rmul__(&self, value: &Bound<'_, PyAny>) -> PyResult<Quantity> {
        if self.unit.offset != 0.0 {
            let name = self.unit.name;
            return Err(PyTypeError::new_err(format!(
                "{name} counts from a zero of its own, so nothing is a multiple of it: write {name}({value}) for a \
                 temperature, or {value} * delta_{name} for a difference",
                value = brief(value),
            )));
        }
        self.apply(value.py(), Value::labelled(value, self.unit, self.kind)?)
    }
    fn __truediv__(slf: &Bound<'_, Self>, other: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        refuse_composed(slf, Operation::Divide, other).map_or_else(|| slf.get().no_algebra(), Err)
    }
    fn __rtruediv__(&self, _other: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        self.no_algebra()
    }
    fn __pow__(&self, _other: &Bound<'_, PyAny>, _modulus: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        self.no_algebra()
    }
    fn __eq__(&self, other: &Bound<'_, PyAny>) -> bool {
        other.cast::<Unit>().is_ok_and(|other| {
            let other = other.get();
            self.kind == other.kind && self.unit.name == other.unit.name
        })
    }
    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        (self.kind.name, self.unit.name).hash(&mut hasher);
        hasher.finish()
    }
    fn __repr__(&self) -> String {
        format!("<unit {} of {}: {:?}>", self.unit.name, self.kind.words, self.unit.symbol)
    }
    fn __reduce__<'py>(
        &self,
        py: Python<'py>,
    ) -> PyResult<(Bound<'py, PyAny>, (&'static str, &'static str))> {
        let find = py.import("axlewright._native")?.getattr("_unit")?;
        Ok((find, (self.kind.name, self.unit.name)))
    }
    /// `Unit[Mass]`, for annotations.
    #[classmethod]
    fn __class_getitem__<'py>(
        class: &Bound<'py, PyType>,
        kind: &Bound<'py, PyAny>,
    ) -> PyResult<Bound<'py, PyAny>> {
        alias(class, kind)
    }
    /// pandas, too.
    #[classattr]
    fn __pandas_priority__() -> i32 {
        PRIORITY
    }
    /// NumPy leaves arithmetic with a unit to the unit.
    #[classattr]
    fn __array_ufunc__(py: Python<'_>) -> Py<PyAny> {
        py.None()
    }
}
