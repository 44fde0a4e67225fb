//! A system of the vehicle, as the generated list holds it.
use crate::model::Listed;
use pyo3::prelude::*;

/// A table in the document of a model: its name, and its fields with whether they may be left out.
pub type Entry = (&'static str, &'static [(&'static str, bool)]);

/// A system of the vehicle.
pub struct System {
    pub name: &'static str,
    /// Named tuples of several results.
    pub results: &'static [Results],
    pub functions: &'static [Function],
    pub models: &'static [Listed],
    /// Tables in the documents of the models: a name, and its fields with whether they may be left out.
    pub entries: &'static [Entry],
    /// Old and new names of its items.
    pub former: &'static [(&'static str, &'static str)],
}

/// A named tuple: its name, the functions that return it, its fields with their meaning.
pub struct Results {
    pub name: &'static str,
    pub of: &'static str,
    pub fields: &'static [(&'static str, &'static str)],
    /// Old and new names of its fields.
    pub former: &'static [(&'static str, &'static str)],
}

/// A function in both forms, made when asked for.
pub struct Function {
    pub name: &'static str,
    pub function: fn(Python<'_>) -> PyResult<Py<PyAny>>,
    pub ufunc: fn(Python<'_>) -> PyResult<Py<PyAny>>,
}
