//! The core's refusals as Python exceptions. The sentence is the core's; only the name of an argument may be put before it.
use crate::array::brief;
use axlewright::Error;
use pyo3::create_exception;
use pyo3::exceptions::{PyException, PyMemoryError, PyRuntimeError, PyValueError};
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyString, PyTuple};
use pyo3::{PyTypeInfo, ffi};
use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};

create_exception!(axlewright, Refusal, PyException, "Base of every refusal of this library.");

/// An exception that is both a refusal of this library, `axlewright.Error`, and a `ValueError`.
macro_rules! refusal {
    ($name:ident, $path:literal, $doc:literal) => {
        pub struct $name;

        impl $name {
            pub fn new_err(sentence: String) -> PyErr {
                PyErr::new::<$name, String>(sentence)
            }
        }

        // SAFETY: a class of exceptions, which lives for ever.
        unsafe impl PyTypeInfo for $name {
            fn type_object_raw(py: Python<'_>) -> *mut ffi::PyTypeObject {
                static CLASS: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
                let made = CLASS.get_or_init(py, || {
                    let bases = (py.get_type::<Refusal>(), py.get_type::<PyValueError>());
                    let bases = bases.into_pyobject(py).map_or(std::ptr::null_mut(), Bound::into_ptr);
                    // SAFETY: a name with its module, a text, and a tuple of classes of exceptions; the class keeps its bases.
                    unsafe {
                        let made = ffi::PyErr_NewExceptionWithDoc(
                            $path.as_ptr(),
                            $doc.as_ptr(),
                            bases,
                            std::ptr::null_mut(),
                        );
                        Bound::from_owned_ptr(py, made).unbind()
                    }
                });
                made.as_ptr().cast()
            }
        }
    };
}

refusal!(DomainError, c"axlewright.DomainError", c"A value outside what a function is valid for.");
refusal!(
    TextError,
    c"axlewright.TextError",
    c"Text that is not a quantity, or is of another kind than expected."
);
refusal!(DocumentError, c"axlewright.DocumentError", c"A document that cannot be read.");

/// One fault of a document.
#[pyclass(frozen, get_all, module = "axlewright", name = "Fault")]
pub struct Fault {
    line: Option<usize>,
    column: Option<usize>,
    key: String,
    message: String,
}

#[pymethods]
impl Fault {
    fn __repr__(&self) -> String {
        let Fault { line, column, key, message } = self;
        let place = |place: &Option<usize>| place.map_or("None".to_owned(), |place| place.to_string());
        let (line, column) = (place(line), place(column));
        format!("Fault(line={line}, column={column}, key={key:?}, message={message:?})")
    }
}

/// The faults of a document as Python holds them.
fn faults(py: Python<'_>, all: &[axlewright::base::document::Fault]) -> PyResult<Py<PyTuple>> {
    let known = |place: usize| (place > 0).then_some(place);
    let one = |fault: &axlewright::base::document::Fault| {
        let (line, column) = (known(fault.line), known(fault.column));
        Py::new(py, Fault { line, column, key: fault.key.clone(), message: fault.message.clone() })
    };
    let all = all.iter().map(one).collect::<PyResult<Vec<_>>>()?;
    Ok(PyTuple::new(py, all)?.unbind())
}

/// Attributes of every `DomainError`; `None` if they do not apply.
const ATTRIBUTES: [&str; 8] = ["argument", "value", "lower", "upper", "unit", "source", "index", "number"];

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    let py = m.py();
    let (domain, text, document) =
        (py.get_type::<DomainError>(), py.get_type::<TextError>(), py.get_type::<DocumentError>());
    for name in ATTRIBUTES {
        domain.setattr(name, py.None())?;
    }
    text.setattr("text", py.None())?;
    for class in [&domain, &text, &document] {
        class.setattr("faults", PyTuple::empty(py))?;
    }
    document.setattr("line", py.None())?;
    document.setattr("key", py.None())?;
    document.setattr("file", py.None())?;
    m.add_class::<Fault>()?;
    let base = py.get_type::<Refusal>();
    base.setattr("__name__", "Error")?;
    base.setattr("__qualname__", "Error")?;
    m.add("Error", base)?;
    m.add("DomainError", domain)?;
    m.add("TextError", text)?;
    m.add("DocumentError", document)
}

/// The letters of a text; half of a character, which Python allows, is refused.
pub fn letters<'a>(text: &'a Bound<'_, PyString>) -> PyResult<&'a str> {
    let refused = |_| TextError::new_err(format!("{} is no text: it holds half of a character", brief(text)));
    text.to_str().map_err(refused)
}

/// True for an interrupt, an exit or the end of memory: it is no fault of an argument, and goes on as it is.
pub fn is_of_others(py: Python<'_>, error: &PyErr) -> bool {
    !error.is_instance_of::<PyException>(py) || error.is_instance_of::<PyMemoryError>(py)
}

/// The exception of a refusal.
pub fn raise(py: Python<'_>, error: Error) -> PyErr {
    raise_in(py, "", error)
}

/// The exception of a refusal; the sentence of text that cannot be read begins with the name of the argument.
pub fn raise_in(py: Python<'_>, argument: &str, error: Error) -> PyErr {
    let mut sentence = error.to_string();
    if !argument.is_empty() && matches!(error, Error::Text { .. }) {
        sentence.insert_str(0, &format!("{argument}: "));
    }
    if let Error::Document(all) = &error {
        let made = document_error(py, sentence, all);
        return made.unwrap_or_else(|error| error);
    }
    raise_with(py, sentence, error)
}

/// Exception of a document; of the class of its one refused value, if that is the only fault.
fn document_error(
    py: Python<'_>,
    sentence: String,
    all: &axlewright::base::document::Faults,
) -> PyResult<PyErr> {
    let made = match &all[..] {
        [axlewright::base::document::Fault { cause: Some(cause), .. }] => {
            raise_with(py, sentence, (**cause).clone())
        }
        [first, ..] => {
            let made = DocumentError::new_err(sentence);
            let value = made.value(py);
            value.setattr("line", (first.line > 0).then_some(first.line))?;
            value.setattr("key", &first.key)?;
            made
        }
        [] => DocumentError::new_err(sentence),
    };
    made.value(py).setattr("faults", faults(py, all)?)?;
    Ok(made)
}

/// The exception of a refusal, with this sentence.
fn raise_with(py: Python<'_>, sentence: String, error: Error) -> PyErr {
    let number = error.number();
    let made = match error {
        Error::Text { text, .. } => {
            let made = TextError::new_err(sentence);
            made.value(py).setattr("text", text).map(|()| made)
        }
        other => {
            let made = DomainError::new_err(sentence);
            let value = made.value(py);
            value
                .setattr("number", number)
                .and_then(|()| match other {
                    Error::OutOfRange { limit, value: x, kind } => {
                        let limit = limit.missed_by(x);
                        let fields = (limit.argument, x, limit.lower, limit.upper, kind.si, limit.source);
                        set(value, fields)
                    }
                    Error::Contradiction { relation, value: x, other, kind } => {
                        set(value, (relation.argument, x, other, f64::INFINITY, kind.si, relation.source))
                    }
                    Error::NoSolution(refusal) => match refusal.arguments.first() {
                        None => Ok(()),
                        Some(first) => {
                            value.setattr("argument", &*first.name)?;
                            value.setattr("value", first.value)?;
                            value.setattr("unit", first.kind.si)?;
                            if refusal.lower.is_finite() || refusal.upper.is_finite() {
                                value.setattr("lower", refusal.lower)?;
                                value.setattr("upper", refusal.upper)?;
                            }
                            Ok(())
                        }
                    },
                    Error::Length { argument, length, .. } => {
                        value.setattr("argument", argument)?;
                        value.setattr("value", length)
                    }
                    _ => Ok(()),
                })
                .map(|()| made)
        }
    };
    made.unwrap_or_else(|error| error)
}

fn set(value: &Bound<'_, PyAny>, fields: (&str, f64, f64, f64, &str, &str)) -> PyResult<()> {
    let (argument, x, lower, upper, unit, source) = fields;
    value.setattr("argument", argument)?;
    value.setattr("value", x)?;
    value.setattr("lower", lower)?;
    value.setattr("upper", upper)?;
    value.setattr("unit", unit)?;
    value.setattr("source", source)
}

/// Names the element of an array that was refused.
pub fn at(py: Python<'_>, error: PyErr, index: &[usize], flat: usize) -> PyErr {
    let added = PyTuple::new(py, index).and_then(|index| {
        let value = error.value(py);
        value.setattr("index", &index)?;
        value
            .call_method1("add_note", (format!("at index {index} (flat {flat}) of the broadcast arguments"),))
    });
    match added {
        Ok(_) => error,
        Err(other) => other,
    }
}

/// A fault of the library itself.
fn panicked(name: &str, payload: Box<dyn Any + Send>) -> PyErr {
    let words = payload
        .downcast_ref::<&str>()
        .copied()
        .or_else(|| payload.downcast_ref::<String>().map(String::as_str))
        .unwrap_or("no reason given");
    PyRuntimeError::new_err(format!("{name}: a fault inside axlewright, please report it: {words}"))
}

/// Runs every entry: a panic becomes a `RuntimeError`.
pub fn guard<T>(name: &str, entry: impl FnOnce() -> PyResult<T>) -> PyResult<T> {
    catch_unwind(AssertUnwindSafe(entry)).unwrap_or_else(|payload| Err(panicked(name, payload)))
}
