//! Models: what is built once from keywords or a document, then asked. A model of the core stands behind one handle;
//! the class that people see is Python.
use crate::array::{Value, brief};
use crate::call::{Kernels, shown};
use crate::error::{guard, raise};
use crate::pint;
use crate::quantity::{Quantity, take};
use axlewright::base::text::{read, read_as};
use axlewright::units::{Kind, Quantity as Typed, Unit};
use axlewright::{Error, Model, Result as Answer};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyCFunction, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};
use serde_json::{Map, Number, Value as Json, json};
use std::any::Any;
use std::cell::RefCell;
use std::collections::HashMap;
use std::ffi::CString;
use std::sync::{Arc, LazyLock};

/// A model of the core, checked when it was built; it never changes.
#[pyclass(frozen, module = "axlewright._native", name = "Handle")]
pub struct Handle {
    model: Arc<dyn Any + Send + Sync>,
    fields: Fields,
}

/// The units of the fields of a model, looked for when a result is first shown in one.
type Fields = Arc<LazyLock<Vec<Given>, Box<dyn FnOnce() -> Vec<Given> + Send>>>;

/// What a method was called with, after the handle, and then the fields of the model.
pub struct Arguments<'a, 'py> {
    all: &'a Bound<'py, PyTuple>,
    given: RefCell<Vec<Given>>,
    fields: &'a Fields,
}

/// The unit in which an argument was given, or a field, which has no name here.
#[derive(Clone, Copy)]
pub struct Given {
    pub name: &'static str,
    pub kind: &'static Kind,
    pub unit: Option<&'static Unit>,
}

impl<'py> Arguments<'_, 'py> {
    fn get(&self, place: usize) -> PyResult<Bound<'py, PyAny>> {
        self.all.get_item(place + 1)
    }
    fn py(&self) -> Python<'py> {
        self.all.py()
    }
    fn take<Q: Typed>(&self, place: usize, name: &'static str) -> PyResult<Value> {
        let (value, unit) = take(&self.get(place)?, name, Q::KIND)?;
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
    pub fn parts<const N: usize>(&self, parts: [Py<PyAny>; N]) -> PyResult<Py<PyAny>> {
        Ok(PyTuple::new(self.py(), parts)?.into_any().unbind())
    }
    /// A table; a column that carries an argument's name is shown in that one's unit.
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

fn callable(
    kernels: &Kernels<'_>,
    name: &'static str,
    entry: impl Fn(&Bound<'_, PyTuple>) -> PyResult<Py<PyAny>> + Send + Sync + 'static,
) -> PyResult<()> {
    // Python keeps the name for as long as the function lives.
    let c_name: &'static CString = Box::leak(Box::new(CString::new(name)?));
    let entry = move |arguments: &Bound<'_, PyTuple>, _keywords: Option<&Bound<'_, PyDict>>| {
        guard(name, || entry(arguments))
    };
    let made = PyCFunction::new_closure(kernels.functions.py(), Some(c_name), None, entry)?;
    kernels.functions.set_item(name, made)
}

/// The units of the fields of a document: of those whose kind is known, and of every other text in it that is a
/// quantity by itself. The coherent SI unit says nothing where a shop uses another one: it stands wherever the unit of a
/// field is not known.
fn units(document: &Json, kinds: &HashMap<String, &'static Kind>) -> Vec<Given> {
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
        match (kinds.get(name).copied(), field) {
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

impl Kernels<'_> {
    /// A model: `new` makes a handle from JSON or TOML text, the kinds of its fields and whether a refusal should name a
    /// line of the text; `to_json` writes it.
    pub fn model<M>(&self, new: &'static str, to_json: &'static str) -> PyResult<()>
    where
        M: Model + serde::Serialize + serde::de::DeserializeOwned + Send + Sync + 'static,
    {
        callable(self, new, move |arguments| {
            let py = arguments.py();
            let (text, kinds, lines): (String, HashMap<String, String>, bool) = arguments.extract()?;
            let model = M::from_text(&text).map_err(|error| match error {
                Error::Document { key, message, .. } if !lines => {
                    raise(py, Error::Document { line: 0, key, message })
                }
                other => raise(py, other),
            })?;
            let model = Arc::new(model);
            let written = model.clone();
            let fields = move || {
                let named = |(name, kind): (String, String)| Some((name, Kind::named(&kind)?));
                let kinds = kinds.into_iter().filter_map(named).collect();
                serde_json::to_value(&*written).map(|document| units(&document, &kinds)).unwrap_or_default()
            };
            let fields: Fields = Arc::new(LazyLock::new(Box::new(fields)));
            Ok(Py::new(py, Handle { model, fields })?.into_any())
        })?;
        self.method::<M>(to_json, |model, call| Ok(call.word(&call.answer(model.to_json())?)))
    }

    /// A method of a model.
    pub fn method<M: 'static>(
        &self,
        name: &'static str,
        method: fn(&M, &Arguments<'_, '_>) -> PyResult<Py<PyAny>>,
    ) -> PyResult<()> {
        callable(self, name, move |arguments| {
            let handle = arguments.get_item(0)?.cast_into::<Handle>()?;
            let handle = handle.get();
            let Some(model) = handle.model.downcast_ref::<M>() else {
                return Err(PyTypeError::new_err(format!("{name}: this is another model")));
            };
            method(model, &Arguments { all: arguments, given: RefCell::default(), fields: &handle.fields })
        })
    }
}

/// The keyword arguments of a model as the JSON text that the core decodes: quantities as they were written, `None`
/// left out, everything else as it is. `kinds` says what the fields are that hold one quantity.
#[pyfunction(name = "_document")]
fn document(keywords: &Bound<'_, PyDict>, kinds: &Bound<'_, PyDict>) -> PyResult<String> {
    let plain = keywords.copy()?;
    for (name, kind) in kinds {
        let Some(value) = plain.get_item(&name)? else { continue };
        if pint::is_pint(&value)? {
            let kind: String = kind.extract()?;
            let kind = Kind::named(&kind)
                .ok_or_else(|| PyValueError::new_err(format!("there is no quantity {kind}")))?;
            let (value, _) = take(&value, name.cast::<PyString>()?.to_str()?, kind)?;
            let written = PyDict::new(keywords.py());
            written.set_item("value", value.to_python(keywords.py()))?;
            written.set_item("unit", kind.units[0].symbol)?;
            plain.set_item(name, written)?;
        }
    }
    Ok(object(&plain, "", 0)?.to_string())
}

/// A field of a model as it stands in the document, as the quantity that it is: a tolerance is left out.
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
    m.add_function(wrap_pyfunction!(document, m)?)
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
