//! Models, built once from keywords or a document and then asked. One handle holds a model of the core;
//! the public class is Python.
use crate::array::{Value, brief};
use crate::call::{MOST, shown};
use crate::error::{guard, raise};
use crate::kernel::Class;
use crate::keywords::{Call, Keyword, Place, body, last, method};
use crate::pint;
use crate::quantity::{Quantity, take};
use crate::system::listed;
use axlewright::base::text::{read, read_as};
use axlewright::units::{Kind, Quantity as Typed, Unit};
use axlewright::{Error, Model, Result as Answer};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};
use pyo3::{ffi, intern};
use serde_json::{Map, Number, Value as Json, json};
use std::any::Any;
use std::cell::RefCell;
use std::sync::{Arc, LazyLock};

/// A model of the core, checked when it was built; it never changes.
#[pyclass(frozen, module = "axlewright._native", name = "Handle")]
pub struct Handle {
    model: Shared,
    json: fn(&Shared) -> Answer<String>,
    fields: Fields,
}

type Shared = Arc<dyn Any + Send + Sync>;

/// Units of the fields of a model, looked up when a result is first shown in one.
type Fields = Arc<LazyLock<Vec<Given>, Box<dyn FnOnce() -> Vec<Given> + Send>>>;

/// Arguments of a method, after the handle, and the fields of the model.
pub struct Arguments<'a, 'py> {
    py: Python<'py>,
    all: &'a [Place<'a, 'py>],
    given: RefCell<Vec<Given>>,
    fields: &'a Fields,
}

/// Unit of a given argument, or of a field, which has no name here.
#[derive(Clone, Copy)]
pub struct Given {
    pub name: &'static str,
    pub kind: &'static Kind,
    pub unit: Option<&'static Unit>,
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
    /// The core's answer, or its refusal as an exception.
    pub fn answer<T>(&self, answer: Answer<T>) -> PyResult<T> {
        answer.map_err(|error| raise(self.py(), error))
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

/// Units of the fields of a document: of those with a known kind, and of every other text in it that is a
/// quantity by itself. The coherent SI unit is ignored if a shop uses another one: it is written for every field whose unit
/// is not known.
fn units(document: &Json, fields: &[Field]) -> Vec<Given> {
    let mut given: Vec<Given> = Vec::new();
    let mut add = |kind: &'static Kind, unit: &'static Unit| {
        let says = unit.name != kind.units[0].name || unit.name == kind.metric;
        if says && !given.iter().any(|given| given.kind == kind && given.unit == Some(unit)) {
            given.push(Given { name: "", kind, unit: Some(unit) });
        }
    };
    fn walk(document: &Json, add: &mut impl FnMut(&'static Kind, &'static Unit)) {
        match document {
            Json::String(words) => {
                if let Ok(reading) = read(words) {
                    add(reading.kind, reading.unit);
                }
            }
            Json::Array(elements) => elements.iter().for_each(|element| walk(element, add)),
            Json::Object(fields) => fields.values().for_each(|field| walk(field, add)),
            _ => {}
        }
    }
    for (name, field) in document.as_object().into_iter().flatten() {
        match (kind_of(fields, name), field) {
            (Some(kind), Json::String(words)) => {
                if let Ok(reading) = read_as(words, kind) {
                    add(kind, reading.unit);
                }
            }
            (Some(_), _) => {}
            (None, field) => walk(field, &mut add),
        }
    }
    given
}

/// A field of a model.
pub struct Field {
    pub name: &'static str,
    /// Kind of quantity of a field that holds one.
    pub kind: Option<&'static Kind>,
    pub doc: &'static str,
}

fn kind_of(fields: &[Field], name: &str) -> Option<&'static Kind> {
    fields.iter().find(|field| field.name == name)?.kind
}

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
    /// Reads JSON or TOML text; a refusal names a line of the text only with `lines`.
    pub read: fn(Python<'_>, &str, bool) -> PyResult<Handle>,
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

fn read_model<D: Described>(py: Python<'_>, text: &str, lines: bool) -> PyResult<Handle> {
    let model = D::Model::from_text(text).map_err(|error| match error {
        Error::Document(faults) if !lines => raise(py, Error::Document(faults.without_places())),
        other => raise(py, other),
    })?;
    let model = Arc::new(model);
    let written = model.clone();
    let fields = move || {
        serde_json::to_value(&*written).map(|document| units(&document, D::FIELDS)).unwrap_or_default()
    };
    let json = |model: &Shared| match model.downcast_ref::<D::Model>() {
        Some(model) => model.to_json(),
        None => Ok(String::new()),
    };
    Ok(Handle { model, json, fields: Arc::new(LazyLock::new(Box::new(fields))) })
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
        let handle = Py::new(py, read_model::<D>(py, &document(&keywords, D::FIELDS)?, false)?)?;
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
        M::call(model, &Arguments { py, all: &places, given: RefCell::default(), fields: &handle.fields })
    })
}

/// A model from JSON or TOML text.
#[pyfunction(name = "_model")]
fn model(py: Python<'_>, name: &str, text: &str) -> PyResult<Handle> {
    guard(name, || (listed(name)?.read)(py, text, true))
}

/// A model as JSON, each value as it was written.
#[pyfunction(name = "_json")]
fn model_json(py: Python<'_>, handle: &Bound<'_, Handle>) -> PyResult<String> {
    let handle = handle.get();
    guard("to_json", || (handle.json)(&handle.model).map_err(|error| raise(py, error)))
}

/// Gives a class its `__init__` and its methods.
#[pyfunction(name = "_adopt")]
fn adopt(class: &Bound<'_, PyAny>, name: &str) -> PyResult<()> {
    let listed = listed(name)?;
    (listed.init)(class)?;
    listed.methods.iter().try_for_each(|add| add(class))
}

/// The keyword arguments of a model as the JSON text that the core decodes: quantities as they were written, `None`
/// left out, all others unchanged.
fn document(keywords: &Bound<'_, PyDict>, fields: &[Field]) -> PyResult<String> {
    let py = keywords.py();
    for field in fields {
        let (name, Some(kind)) = (field.name, field.kind) else { continue };
        let Some(value) = keywords.get_item(name)? else { continue };
        if pint::is_pint(&value)? {
            let (value, _) = take(&value, name, kind)?;
            let written = PyDict::new(py);
            written.set_item("value", value.to_python(py))?;
            written.set_item("unit", kind.units[0].symbol)?;
            keywords.set_item(name, written)?;
        }
    }
    Ok(object(keywords, "", 0)?.to_string())
}

/// A field of a model in the document, as a quantity: a tolerance is left out.
#[pyfunction(name = "_field")]
fn field(py: Python<'_>, words: &str, kind: &str) -> PyResult<Py<PyAny>> {
    let kind =
        Kind::named(kind).ok_or_else(|| PyValueError::new_err(format!("there is no quantity {kind}")))?;
    let reading = read_as(words, kind).map_err(|error| raise(py, error))?;
    Quantity::result(py, Value::Number(reading.si), kind, reading.unit)
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<Handle>()?;
    m.add_function(wrap_pyfunction!(field, m)?)?;
    m.add_function(wrap_pyfunction!(model, m)?)?;
    m.add_function(wrap_pyfunction!(model_json, m)?)?;
    m.add_function(wrap_pyfunction!(adopt, m)?)
}

/// Levels of lists and dicts in a document: far more than any model has, far fewer than the stack holds.
const DEEPEST: usize = 32;

fn object(dict: &Bound<'_, PyDict>, path: &str, depth: usize) -> PyResult<Json> {
    let mut made = Map::new();
    for (key, value) in dict {
        let Ok(key) = key.cast::<PyString>() else {
            return Err(PyTypeError::new_err(format!("{path}: the key {} is not text", brief(&key))));
        };
        if value.is_none() {
            continue;
        }
        let key = key.to_str()?;
        let path = if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") };
        made.insert(key.to_owned(), json(&value, &path, depth + 1)?);
    }
    Ok(Json::Object(made))
}

fn json(x: &Bound<'_, PyAny>, path: &str, depth: usize) -> PyResult<Json> {
    let py = x.py();
    if depth > DEEPEST {
        return Err(PyValueError::new_err(format!(
            "{}... lies deeper than {DEEPEST} levels of lists and dicts",
            path.chars().take(40).collect::<String>()
        )));
    }
    if let Ok(words) = x.cast::<PyString>() {
        return Ok(Json::String(words.to_str()?.to_owned()));
    }
    if let Ok(quantity) = x.cast::<Quantity>() {
        let quantity = quantity.get();
        let Value::Number(si) = quantity.value else { return list(x, path, depth) };
        let plain = number(si, path)?;
        let written = quantity.words(py);
        return Ok(match read_as(&written, quantity.kind) {
            Ok(reading) if reading.si == si => Json::String(written),
            _ => json!({"value": plain, "unit": quantity.kind.units[0].symbol}),
        });
    }
    if pint::is_pint(x)? {
        return Err(PyTypeError::new_err(format!(
            "{path} = {} stands where the kind that is wanted is not known; write it as text or as a Quantity",
            brief(x)
        )));
    }
    if x.is_instance_of::<PyBool>() {
        return Ok(Json::Bool(x.extract()?));
    }
    if x.is_instance_of::<PyInt>() {
        return Ok(Json::Number(Number::from(x.extract::<i64>()?)));
    }
    if x.is_instance_of::<PyFloat>() {
        return number(x.extract()?, path);
    }
    if let Ok(dict) = x.cast::<PyDict>() {
        return object(dict, path, depth);
    }
    if x.is_instance_of::<PyList>() || x.is_instance_of::<PyTuple>() || x.hasattr("__array_interface__")? {
        return list(x, path, depth);
    }
    if x.hasattr("to_json")? {
        let text: String = x.call_method0("to_json")?.extract()?;
        return serde_json::from_str(&text)
            .map_err(|error| PyValueError::new_err(format!("{path}: {error}")));
    }
    if let Ok(Value::Number(plain)) = Value::plain(x) {
        return number(plain, path);
    }
    Err(PyTypeError::new_err(format!(
        "{path} = {} is neither a quantity, a number, text, a list nor a dict",
        brief(x)
    )))
}

fn list(x: &Bound<'_, PyAny>, path: &str, depth: usize) -> PyResult<Json> {
    let elements =
        x.try_iter()?.enumerate().map(|(i, element)| json(&element?, &format!("{path}[{i}]"), depth + 1));
    elements.collect::<PyResult<Vec<_>>>().map(Json::Array)
}

fn number(x: f64, path: &str) -> PyResult<Json> {
    let number = Number::from_f64(x);
    number
        .map(Json::Number)
        .ok_or_else(|| PyValueError::new_err(format!("{path} = {x} is not a finite number")))
}
