//! One value of the elements of an array: largest, mean, sum, deviation.
use super::held::Quantity;
use super::ops::is_point;
use crate::array::Value;
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::PyDict;

impl Quantity {
    /// The result of a method of the array. NumPy's functions hand on where the result should stand: a quantity never changes.
    pub(super) fn reduced(
        &self,
        py: Python<'_>,
        method: &str,
        axis: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
    ) -> PyResult<Self> {
        if out.is_some() {
            return Err(PyTypeError::new_err(format!("{method}() of quantities takes only an axis")));
        }
        let options = PyDict::new(py);
        if let Some(axis) = axis {
            options.set_item("axis", axis)?;
        }
        Ok(self.like(Value::kept(self.array(py)?.call_method(method, (), Some(&options))?)?))
    }
    /// Refuses a sum of points on a scale.
    pub(super) fn adds(&self) -> PyResult<()> {
        if is_point(self.kind) {
            return Err(PyTypeError::new_err(format!(
                "two values of {} do not add; take the mean",
                self.kind.words
            )));
        }
        Ok(())
    }
    /// The standard deviation: a difference of the kind.
    pub(super) fn deviation(
        &self,
        py: Python<'_>,
        axis: Option<&Bound<'_, PyAny>>,
        out: Option<&Bound<'_, PyAny>>,
        ddof: i64,
    ) -> PyResult<Self> {
        if out.is_some() {
            return Err(PyTypeError::new_err("std() of quantities takes only an axis and ddof"));
        }
        let options = PyDict::new(py);
        options.set_item("ddof", ddof)?;
        if let Some(axis) = axis {
            options.set_item("axis", axis)?;
        }
        let value = Value::kept(self.array(py)?.call_method("std", (), Some(&options))?)?;
        let (kind, unit) = self.difference();
        Ok(Quantity { value, kind, unit })
    }
}
