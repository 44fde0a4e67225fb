//! Models, built once from keywords or a document and then asked. One handle holds a model of the core;
//! the public class is Python.
mod arguments;
mod document;

use crate::array::Value;
use crate::call::MOST;
use crate::error::{guard, raise};
use crate::interpreter::released;
use crate::keywords::{Call, Keyword, body, last, method};
use crate::quantity::Quantity;
use arguments::Fields;
use axlewright::base::document::Document;
use axlewright::base::error::NoSolution;
use axlewright::base::text::{read_as, shortened};
use axlewright::units::{Kind, Ratio};
use axlewright::{Error, Model, Result as Answer};
use document::{document, units};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use pyo3::{ffi, intern};
use std::any::Any;
use std::cell::RefCell;
use std::sync::{Arc, LazyLock};

pub use arguments::Arguments;
pub use document::Field;

/// A model of the core, checked when it was built; it never changes.
#[pyclass(frozen, module = "axlewright._native", name = "Handle")]
pub struct Handle {
    model: Shared,
    json: fn(&Shared) -> Answer<String>,
    fields: Fields,
    is_large: bool,
}

/// Bytes of a document from which on an answer of its model may take long.
const LARGE: usize = 10_000;

type Shared = Arc<dyn Any + Send + Sync>;

/// A model of the core, with the description of its class.
pub trait Described: 'static {
    type Model: Model + serde::Serialize + serde::de::DeserializeOwned + Send + Sync + 'static;
    /// System and name: `spring.Stack`.
    const NAME: &'static str;
    const DOC: &'static str;
    /// Signature of the class.
    const INIT: &'static str;
    const FIELDS: &'static [Field];
    const KEYWORDS: &'static [Keyword];
}

/// A method of a model.
pub trait Method: 'static {
    type Model: 'static;
    /// System, class and name: `spring.Stack.at_length`.
    const NAME: &'static str;
    /// Signature and docs.
    const DOC: &'static str;
    const KEYWORDS: &'static [Keyword];
    fn call(model: &Self::Model, call: &Arguments<'_, '_>) -> PyResult<Py<PyAny>>;
}

/// Adds one method to the class of a model.
type Add = fn(&Bound<'_, PyAny>) -> PyResult<()>;

/// A model in the table of its system.
pub struct Listed {
    pub name: &'static str,
    pub doc: &'static str,
    pub fields: &'static [Field],
    /// Reads JSON or TOML text.
    pub read: fn(Python<'_>, &str) -> PyResult<Handle>,
    /// Gives the class its constructor from keywords.
    pub init: fn(&Bound<'_, PyAny>) -> PyResult<()>,
    /// Gives the class its methods.
    pub methods: &'static [Add],
}

impl Listed {
    pub const fn new<D: Described>(methods: &'static [Add]) -> Listed {
        let init = |class: &Bound<'_, PyAny>| method(class, "__init__", D::INIT, init::<D>);
        Listed { name: D::NAME, doc: D::DOC, fields: D::FIELDS, read: read_model::<D>, init, methods }
    }
}

/// Gives a class one method.
pub fn method_of<M: Method>(class: &Bound<'_, PyAny>) -> PyResult<()> {
    const { assert!(M::KEYWORDS.len() <= MOST) };
    method(class, last(M::NAME), M::DOC, entry::<M>)
}

fn read_model<D: Described>(py: Python<'_>, text: &str) -> PyResult<Handle> {
    let model = released(py, || D::Model::from_text(text)).map_err(|error| raise(py, error))?;
    Ok(handle::<D>(model, text.len() > LARGE))
}

/// The model of keywords. A number that is not finite is refused by the model, by its name and limit, or here.
fn of_keywords<D: Described>(py: Python<'_>, keywords: &Bound<'_, PyDict>) -> PyResult<Handle> {
    let (json, others) = document(keywords, D::FIELDS)?;
    let text = json.to_string();
    let made = released(py, || {
        let mut document = Document::from_text(&text)?;
        for other in &others {
            document.put(&other.path, other.number, other.is_si);
        }
        let model = D::Model::from_document(&document)?;
        match others.first() {
            None => Ok(model),
            Some(other) => {
                let refusal = NoSolution::new("is not a finite number");
                let name = other.path.join(".");
                Err(Error::no_solution(refusal.of(shortened(&name), Ratio::from_si(other.number))))
            }
        }
    });
    let model = made.map_err(|error| match error {
        Error::Document(faults) => raise(py, Error::Document(faults.without_places())),
        other => raise(py, other),
    })?;
    Ok(handle::<D>(model, text.len() > LARGE))
}

fn handle<D: Described>(model: D::Model, is_large: bool) -> Handle {
    let model = Arc::new(model);
    let written = model.clone();
    let fields = move || {
        serde_json::to_value(&*written).map(|document| units(&document, D::FIELDS)).unwrap_or_default()
    };
    let json = |model: &Shared| match model.downcast_ref::<D::Model>() {
        Some(model) => model.to_json(),
        None => Ok(String::new()),
    };
    Handle { model, json, fields: Arc::new(LazyLock::new(Box::new(fields))), is_large }
}

/// `Stack(...)`: the document of the keywords, read.
unsafe extern "C" fn init<D: Described>(
    this: *mut ffi::PyObject,
    arguments: *const *mut ffi::PyObject,
    count: ffi::Py_ssize_t,
    names: *mut ffi::PyObject,
) -> *mut ffi::PyObject {
    body(D::NAME, |py| {
        // SAFETY: Python passes live objects.
        let (this, call) = unsafe { (Borrowed::from_ptr(py, this), Call::new(py, arguments, count, names)) };
        let mut places = vec![None; D::KEYWORDS.len()];
        call.sort(last(D::NAME), D::KEYWORDS, &mut places)?;
        let keywords = PyDict::new(py);
        for (keyword, value) in D::KEYWORDS.iter().zip(places) {
            if let Some(value) = value {
                keywords.set_item(keyword.name, value)?;
            }
        }
        let handle = Py::new(py, of_keywords::<D>(py, &keywords)?)?;
        // SAFETY: live objects; the class forbids only to set it a second time.
        let set = unsafe {
            let name = intern!(py, "_handle").as_ptr();
            ffi::PyObject_GenericSetAttr(this.as_ptr(), name, handle.as_ptr())
        };
        if set == 0 { Ok(py.None()) } else { Err(PyErr::fetch(py)) }
    })
}

unsafe extern "C" fn entry<M: Method>(
    this: *mut ffi::PyObject,
    arguments: *const *mut ffi::PyObject,
    count: ffi::Py_ssize_t,
    names: *mut ffi::PyObject,
) -> *mut ffi::PyObject {
    body(M::NAME, |py| {
        // SAFETY: Python passes live objects.
        let (this, call) = unsafe { (Borrowed::from_ptr(py, this), Call::new(py, arguments, count, names)) };
        let mut places = [None; MOST];
        call.sort(M::NAME.split_once('.').map_or(M::NAME, |(_, name)| name), M::KEYWORDS, &mut places)?;
        let handle = this.getattr(intern!(py, "_handle"))?.cast_into::<Handle>()?;
        let handle = handle.get();
        let Some(model) = handle.model.downcast_ref::<M::Model>() else {
            return Err(PyTypeError::new_err(format!("{}: this is another model", M::NAME)));
        };
        let (fields, is_large) = (&handle.fields, handle.is_large);
        M::call(model, &Arguments { py, all: &places, given: RefCell::default(), fields, is_large })
    })
}

/// A model as JSON, each value as it was written.
#[pyfunction(name = "_json")]
fn model_json(py: Python<'_>, handle: &Bound<'_, Handle>) -> PyResult<String> {
    let handle = handle.get();
    guard("to_json", || released(py, || (handle.json)(&handle.model)).map_err(|error| raise(py, error)))
}

/// A field of a model in the document, as a quantity: a tolerance is left out.
#[pyfunction(name = "_field")]
fn field(py: Python<'_>, words: &str, kind: &str) -> PyResult<Py<PyAny>> {
    let kind = Kind::named(kind)
        .ok_or_else(|| PyValueError::new_err(format!("there is no quantity {}", shortened(kind))))?;
    let reading = read_as(words, kind).map_err(|error| raise(py, error))?;
    Quantity::result(py, Value::Number(reading.si), kind, reading.unit)
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<Handle>()?;
    m.add_function(wrap_pyfunction!(field, m)?)?;
    m.add_function(wrap_pyfunction!(model_json, m)?)
}
