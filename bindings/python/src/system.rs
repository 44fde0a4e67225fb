//! Parts of a system that the Python package asks for at first import: its functions, and the members of its classes.
use crate::kernels::SYSTEMS;
use crate::model::Listed;
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyTuple};

/// A system of the vehicle.
pub struct System {
    pub name: &'static str,
    /// Named tuples of several results.
    pub results: &'static [Results],
    pub functions: &'static [Function],
    pub models: &'static [Listed],
}

/// A named tuple: its name, the functions that return it, its fields with their meaning.
pub struct Results {
    pub name: &'static str,
    pub of: &'static str,
    pub fields: &'static [(&'static str, &'static str)],
}

/// A function in both forms, made when asked for.
pub struct Function {
    pub name: &'static str,
    pub function: fn(Python<'_>) -> PyResult<Py<PyAny>>,
    pub ufunc: fn(Python<'_>) -> PyResult<Py<PyAny>>,
}

fn found(name: &str) -> PyResult<&'static System> {
    let found = SYSTEMS.iter().find(|system| system.name == name);
    found.ok_or_else(|| PyKeyError::new_err(format!("there is no system {name}")))
}

/// The model of this name: `spring.Stack`.
pub fn listed(name: &str) -> PyResult<&'static Listed> {
    let system = found(name.split('.').next().unwrap_or_default())?;
    let found = system.models.iter().find(|model| model.name == name);
    found.ok_or_else(|| PyKeyError::new_err(format!("there is no model {name}")))
}

/// Path, docs and fields of a class; a field is its name, its kind if it holds a quantity, and its meaning.
type Model = (&'static str, &'static str, Vec<(&'static str, Option<&'static str>, &'static str)>);
/// Name of a named tuple, the functions that return it, its fields with their meaning.
type Named = (&'static str, &'static str, Vec<(&'static str, &'static str)>);

/// A system: named tuples, functions by name, models.
#[pyfunction(name = "_system")]
fn system<'py>(py: Python<'py>, name: &str) -> PyResult<(Vec<Named>, Bound<'py, PyDict>, Vec<Model>)> {
    let system = found(name)?;
    let functions = PyDict::new(py);
    for of in system.functions {
        functions.set_item(of.name, (of.function)(py)?)?;
    }
    let results = system.results.iter().map(|of| (of.name, of.of, of.fields.to_vec()));
    let fields = |of: &Listed| {
        of.fields.iter().map(|field| (field.name, field.kind.map(|kind| kind.name), field.doc)).collect()
    };
    let models = system.models.iter().map(|of| (of.name, of.doc, fields(of)));
    Ok((results.collect(), functions, models.collect()))
}

/// The ufuncs of a system, each by its name.
#[pyfunction(name = "_ufuncs")]
fn ufuncs<'py>(py: Python<'py>, name: &str) -> PyResult<Bound<'py, PyDict>> {
    let system = found(name)?;
    let ufuncs = PyDict::new(py);
    for of in system.functions {
        ufuncs.set_item(of.name, (of.ufunc)(py)?)?;
    }
    Ok(ufuncs)
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add("SYSTEMS", PyTuple::new(m.py(), SYSTEMS.iter().map(|system| system.name))?)?;
    m.add_function(wrap_pyfunction!(system, m)?)?;
    m.add_function(wrap_pyfunction!(ufuncs, m)?)
}
