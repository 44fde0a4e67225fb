//! Calls by keyword: native functions and methods that take keyword arguments only.
use crate::error::{guard, letters};
use axlewright::base::text::{did_you_mean, shortened};
use pyo3::exceptions::{PyDeprecationWarning, PyTypeError};
use pyo3::ffi;
use pyo3::prelude::*;
use pyo3::types::{PyString, PyTuple};
use std::ffi::CString;

/// An argument of a native function.
pub struct Keyword {
    pub name: &'static str,
    pub optional: bool,
    /// The name that it had before, which still answers, with a warning.
    pub former: Option<&'static str>,
}

/// Arguments that Python passes to a native function.
pub struct Call<'a, 'py> {
    py: Python<'py>,
    values: *const *mut ffi::PyObject,
    positional: usize,
    names: Option<Borrowed<'a, 'py, PyTuple>>,
}

/// Place of an argument; empty if it was not given.
pub type Place<'a, 'py> = Option<Borrowed<'a, 'py, PyAny>>;

impl<'a, 'py> Call<'a, 'py> {
    /// # Safety
    /// The arguments are those of a native function that takes keywords, and live as long as the call.
    pub unsafe fn new(
        py: Python<'py>,
        values: *const *mut ffi::PyObject,
        positional: ffi::Py_ssize_t,
        names: *mut ffi::PyObject,
    ) -> Call<'a, 'py> {
        // SAFETY: a tuple of the names, or null; the caller vouches for it.
        let names = unsafe { Borrowed::from_ptr_or_opt(py, names).map(|names| names.cast_unchecked()) };
        Call { py, values, positional: positional as usize, names }
    }

    /// Puts each value in the place of its name.
    pub fn sort(&self, function: &str, keywords: &[Keyword], places: &mut [Place<'a, 'py>]) -> PyResult<()> {
        if self.positional > 0 {
            let names: Vec<String> = keywords.iter().map(|keyword| format!("{}=...", keyword.name)).collect();
            return Err(PyTypeError::new_err(format!(
                "{function}() takes no positional arguments: write {}",
                names.join(", ")
            )));
        }
        for (k, name) in self.names.iter().flat_map(|names| names.iter_borrowed()).enumerate() {
            let name = name.cast::<PyString>()?;
            let name = letters(&name)?;
            // Most calls name the arguments in their order.
            let place = match keywords.get(k) {
                Some(keyword) if keyword.name == name => Some(k),
                _ => keywords.iter().position(|keyword| keyword.name == name),
            };
            let place = match place {
                None => former(self.py, function, keywords, name)?,
                there => there,
            };
            let Some(place) = place.and_then(|place| places.get_mut(place)) else {
                let known = keywords.iter().map(|keyword| keyword.name);
                let near = match did_you_mean(name, known.clone()) {
                    none if none.is_empty() => format!("; it takes {}", known.collect::<Vec<_>>().join(", ")),
                    near => near.replace('`', "'"),
                };
                let name = shortened(name);
                let wrong = format!("{function}() got an unexpected keyword argument '{name}'{near}");
                return Err(PyTypeError::new_err(wrong));
            };
            if place.is_some() {
                let wrong = format!("{function}() got '{name}' under its old name, too");
                return Err(PyTypeError::new_err(wrong));
            }
            // SAFETY: Python passes one live object a name, after the positional ones.
            *place = Some(unsafe { Borrowed::from_ptr(self.py, *self.values.add(k)) });
        }
        let given = keywords.iter().zip(places.iter());
        let missing = given.filter(|(keyword, place)| !keyword.optional && place.is_none());
        let missing: Vec<String> = missing.map(|(keyword, _)| format!("'{}'", keyword.name)).collect();
        match &missing[..] {
            [] => Ok(()),
            [only] => Err(refused(function, "", only)),
            [others @ .., last] => {
                let comma = if others.len() > 1 { "," } else { "" };
                Err(refused(function, "s", &format!("{}{comma} and {last}", others.join(", "))))
            }
        }
    }
}

/// Place of the argument that had this name before, with a warning.
fn former(py: Python<'_>, function: &str, keywords: &[Keyword], name: &str) -> PyResult<Option<usize>> {
    let Some(place) = keywords.iter().position(|keyword| keyword.former == Some(name)) else {
        return Ok(None);
    };
    let new = keywords.get(place).map_or("", |keyword| keyword.name);
    let message = CString::new(format!("the argument {name} of {function}() is called {new} now"))?;
    PyErr::warn(py, &py.get_type::<PyDeprecationWarning>(), &message, 1)?;
    Ok(Some(place))
}

fn refused(function: &str, plural: &str, names: &str) -> PyErr {
    let count = names.matches('\'').count() / 2;
    PyTypeError::new_err(format!(
        "{function}() missing {count} required keyword-only argument{plural}: {names}"
    ))
}

/// The body of a native function: a fault inside becomes an exception.
pub fn body(name: &str, call: impl FnOnce(Python<'_>) -> PyResult<Py<PyAny>>) -> *mut ffi::PyObject {
    let mut call = Some(call);
    let mut run = |py: Python<'_>| {
        let answer = guard(name, || match call.take() {
            Some(call) => call(py),
            None => Ok(py.None()),
        });
        match answer {
            Ok(result) => result.into_ptr(),
            Err(error) => {
                error.restore(py);
                std::ptr::null_mut()
            }
        }
    };
    let made = Python::try_attach(&mut run);
    // SAFETY: Python calls a native function only where it is attached, also from `__del__` while the interpreter is taken down.
    made.unwrap_or_else(|| run(unsafe { Python::assume_attached() }))
}

/// A definition that Python keeps for the life of the process: it is leaked, one for each function. `doc` begins with the signature.
fn definition(
    name: &str,
    doc: &str,
    entry: ffi::PyCFunctionFastWithKeywords,
) -> PyResult<*mut ffi::PyMethodDef> {
    Ok(Box::leak(Box::new(ffi::PyMethodDef {
        ml_name: CString::new(name)?.into_raw(),
        ml_meth: ffi::PyMethodDefPointer { PyCFunctionFastWithKeywords: entry },
        ml_flags: ffi::METH_FASTCALL | ffi::METH_KEYWORDS,
        ml_doc: CString::new(doc)?.into_raw(),
    })))
}

/// The last part of `spring.wheel_rate`.
pub fn last(path: &str) -> &str {
    path.rsplit('.').next().unwrap_or(path)
}

/// A function of the module `axlewright.<system>`.
pub fn function<'py>(
    py: Python<'py>,
    path: &str,
    doc: &str,
    entry: ffi::PyCFunctionFastWithKeywords,
) -> PyResult<Bound<'py, PyAny>> {
    let system = path.split('.').next().unwrap_or_default();
    let module = PyString::new(py, &format!("axlewright.{system}"));
    let definition = definition(last(path), doc, entry)?;
    // SAFETY: the definition lives for ever.
    unsafe {
        let made = ffi::PyCFunction_NewEx(definition, std::ptr::null_mut(), module.as_ptr());
        Bound::from_owned_ptr_or_err(py, made)
    }
}

/// Gives a class a method.
pub fn method(
    class: &Bound<'_, PyAny>,
    name: &str,
    doc: &str,
    entry: ffi::PyCFunctionFastWithKeywords,
) -> PyResult<()> {
    let class_type = class.cast::<pyo3::types::PyType>()?;
    let definition = definition(name, doc, entry)?;
    // SAFETY: the definition lives for ever; Python checks that a method is called on an object of the class.
    let made = unsafe {
        let made = ffi::PyDescr_NewMethod(class_type.as_type_ptr(), definition);
        Bound::from_owned_ptr_or_err(class.py(), made)?
    };
    class.setattr(name, made)
}
