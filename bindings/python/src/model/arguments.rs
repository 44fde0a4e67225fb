//! Arguments and answers of a method.
use super::document::Given;
use crate::array::Value;
use crate::call::shown;
use crate::error::raise;
use crate::kernel::Class;
use crate::keywords::Place;
use crate::quantity::{Quantity, take};
use crate::watch::watched;
use axlewright::Result as Answer;
use axlewright::units::{Kind, Quantity as Typed, Unit};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyInt, PyString, PyTuple};
use std::cell::RefCell;
use std::sync::{Arc, LazyLock};

/// Units of the fields of a model, looked up when a result is first shown in one.
pub type Fields = Arc<LazyLock<Vec<Given>, Box<dyn FnOnce() -> Vec<Given> + Send>>>;

/// Arguments of a method, after the handle, and the fields of the model.
pub struct Arguments<'a, 'py> {
    pub py: Python<'py>,
    pub all: &'a [Place<'a, 'py>],
    pub given: RefCell<Vec<Given>>,
    pub fields: &'a Fields,
    /// True for a model of a long document.
    pub is_large: bool,
}

impl<'py> Arguments<'_, 'py> {
    fn py(&self) -> Python<'py> {
        self.py
    }
    fn take<Q: Typed>(&self, place: usize, name: &'static str) -> PyResult<Value> {
        let given = self.all.get(place).copied().flatten();
        let given = given.ok_or_else(|| PyTypeError::new_err(format!("{name} is missing")))?;
        let (value, unit) = take(&given, name, Q::KIND)?;
        self.given.borrow_mut().push(Given { name, kind: Q::KIND, unit });
        Ok(value)
    }
    /// One quantity.
    pub fn quantity<Q: Typed>(&self, place: usize, name: &'static str) -> PyResult<Q> {
        match self.take::<Q>(place, name)? {
            Value::Number(si) => Ok(Q::from_si(si)),
            Value::Array(_) => Err(PyTypeError::new_err(format!("{name} is one value here, not an array"))),
        }
    }
    /// Quantities in a row; one alone is a list of one.
    pub fn quantities<Q: Typed>(&self, place: usize, name: &'static str) -> PyResult<Vec<Q>> {
        let x = match self.take::<Q>(place, name)? {
            Value::Number(si) => return Ok(vec![Q::from_si(si)]),
            Value::Array(x) => x.into_bound(self.py()),
        };
        let x = self.py().import("numpy")?.call_method1("asarray", (x,))?;
        let Ok(x) = x.cast_into::<PyArray1<f64>>() else {
            return Err(PyTypeError::new_err(format!("{name} is a list of values, not a table of them")));
        };
        Ok(x.readonly().as_array().iter().copied().map(Q::from_si).collect())
    }
    /// The core's answer, or its refusal as an exception. The interpreter is released where the model itself is large.
    pub fn answer<T: Send>(&self, work: impl FnOnce() -> Answer<T> + Send) -> PyResult<T> {
        if self.is_large {
            return self.worked(work);
        }
        work().map_err(|error| raise(self.py(), error))
    }
    /// The core's answer, with the interpreter released: for work that may be long.
    pub fn worked<T: Send>(&self, work: impl FnOnce() -> Answer<T> + Send) -> PyResult<T> {
        watched(self.py(), work)
    }
    /// A quantity of an answer.
    pub fn give<Q: Typed>(&self, quantity: Q) -> PyResult<Py<PyAny>> {
        let given = self.given.borrow();
        let unit = shown(Q::KIND, pairs(&given, self.fields));
        Quantity::result(self.py(), Value::Number(quantity.si()), Q::KIND, unit)
    }
    /// A word of an answer.
    pub fn word(&self, word: &str) -> Py<PyAny> {
        PyString::new(self.py(), word).into_any().unbind()
    }
    /// A count of an answer.
    pub fn count(&self, count: i64) -> Py<PyAny> {
        PyInt::new(self.py(), count).into_any().unbind()
    }
    /// An answer of several parts.
    pub fn parts<const N: usize>(&self, class: &Class, parts: [Py<PyAny>; N]) -> PyResult<Py<PyAny>> {
        class.made(PyTuple::new(self.py(), parts)?)
    }
    /// A table; a column with the name of an argument is shown in that argument's unit.
    pub fn table(&self, table: axlewright::Table) -> PyResult<Py<PyAny>> {
        let (given, fields) = (self.given.borrow().clone(), self.fields.clone());
        let made = crate::table::give(self.py(), table, move |name, kind| {
            let same = given.iter().find(|given| given.name == name && given.kind == kind);
            same.and_then(|given| given.unit).unwrap_or_else(|| shown(kind, pairs(&given, &fields)))
        })?;
        Ok(made.unbind())
    }
}

/// Kinds and units, of arguments first.
fn pairs<'a>(
    given: &'a [Given],
    fields: &'a Fields,
) -> impl Iterator<Item = (&'static Kind, Option<&'static Unit>)> + 'a {
    given.iter().chain(fields.iter()).map(|given| (given.kind, given.unit))
}
