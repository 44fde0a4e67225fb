//! Parts of a system that the Python package asks for at first import: its functions, and the members of its classes.
use crate::error::{guard, raise};
use crate::kernels::{FORMER_COLUMNS, SYSTEMS};
use crate::model::{Handle, Listed};
use crate::system::{Entry, System};
use axlewright::base::text::{did_you_mean, printable, shortened};
use axlewright::catalogue;
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::types::{IntoPyDict, PyDict, PyTuple};

fn found(name: &str) -> PyResult<&'static System> {
    let found = SYSTEMS.iter().find(|system| system.name == name);
    found.ok_or_else(|| PyKeyError::new_err(format!("there is no system {}", shortened(name))))
}

/// The model of this name: `spring.Stack`.
fn listed(name: &str) -> PyResult<&'static Listed> {
    let system = found(name.split('.').next().unwrap_or_default())?;
    let found = system.models.iter().find(|model| model.name == name);
    found.ok_or_else(|| PyKeyError::new_err(format!("there is no model {}", shortened(name))))
}

/// Path, docs and fields of a class; a field is its name, its kind if it holds a quantity, and its meaning.
type Model = (&'static str, &'static str, Vec<(&'static str, Option<&'static str>, &'static str)>);
/// Pairs of names: a field and its meaning, or an old and a new name.
type Pairs = Vec<(&'static str, &'static str)>;
/// Name of a named tuple, the functions that return it, its fields with their meaning, and old and new names of fields.
type Named = (&'static str, &'static str, Pairs, Pairs);

/// Named tuples of a system, functions by name, models, and the tables in the documents of models.
type Members<'py> = (Vec<Named>, Bound<'py, PyDict>, Vec<Model>, Vec<Entry>);

#[pyfunction(name = "_system")]
fn system<'py>(py: Python<'py>, name: &str) -> PyResult<Members<'py>> {
    let system = found(name)?;
    let functions = PyDict::new(py);
    for of in system.functions {
        functions.set_item(of.name, (of.function)(py)?)?;
    }
    let results = system.results.iter().map(|of| (of.name, of.of, of.fields.to_vec(), of.former.to_vec()));
    let fields = |of: &Listed| {
        of.fields.iter().map(|field| (field.name, field.kind.map(|kind| kind.name), field.doc)).collect()
    };
    let models = system.models.iter().map(|of| (of.name, of.doc, fields(of)));
    Ok((results.collect(), functions, models.collect(), system.entries.to_vec()))
}

/// Old and new names of the functions, models and named tuples of a system.
#[pyfunction(name = "_former")]
fn former(name: &str) -> PyResult<Pairs> {
    Ok(found(name)?.former.to_vec())
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

/// A model from JSON or TOML text.
#[pyfunction(name = "_model")]
fn model(py: Python<'_>, name: &str, text: &str) -> PyResult<Handle> {
    guard(name, || (listed(name)?.read)(py, text))
}

/// System and name of a function of the catalogue: the one door from a text to a function.
#[pyfunction(name = "_function")]
fn function(py: Python<'_>, path: &str) -> PyResult<(&'static str, &'static str)> {
    let entry = catalogue::entry(path).map_err(|error| raise(py, error))?;
    Ok(entry.path.split_once('.').unwrap_or(("", entry.path)))
}

/// Text of somebody else for a terminal.
#[pyfunction(name = "_printable")]
fn printed(text: &str) -> String {
    printable(text).into_owned()
}

/// Text of somebody else for a message: short, and printable.
#[pyfunction(name = "_short")]
fn short(text: &str) -> String {
    shortened(text)
}

/// The question for a misspelt name: "; did you mean 'wheel_rate'?", or nothing.
#[pyfunction(name = "_near")]
fn near(word: &str, known: Vec<String>) -> String {
    did_you_mean(word, known.iter().map(String::as_str)).replace('`', "'")
}

/// Gives a class its `__init__` and its methods.
#[pyfunction(name = "_adopt")]
fn adopt(class: &Bound<'_, PyAny>, name: &str) -> PyResult<()> {
    let listed = listed(name)?;
    (listed.init)(class)?;
    listed.methods.iter().try_for_each(|add| add(class))
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add("SYSTEMS", PyTuple::new(m.py(), SYSTEMS.iter().map(|system| system.name))?)?;
    m.add("_FORMER_COLUMNS", FORMER_COLUMNS.iter().copied().into_py_dict(m.py())?)?;
    m.add_function(wrap_pyfunction!(system, m)?)?;
    m.add_function(wrap_pyfunction!(former, m)?)?;
    m.add_function(wrap_pyfunction!(ufuncs, m)?)?;
    m.add_function(wrap_pyfunction!(model, m)?)?;
    m.add_function(wrap_pyfunction!(function, m)?)?;
    m.add_function(wrap_pyfunction!(printed, m)?)?;
    m.add_function(wrap_pyfunction!(short, m)?)?;
    m.add_function(wrap_pyfunction!(near, m)?)?;
    m.add("_MOST_BYTES", axlewright::base::document::MOST_BYTES)?;
    m.add_function(wrap_pyfunction!(adopt, m)?)
}
