//! The document of a model: made from keywords, and read for the units in it.
use crate::array::{Value, brief};
use crate::error::{is_of_others, letters};
use crate::quantity::{Quantity, pint, take};
use axlewright::base::text::{read, read_as, shortened};
use axlewright::units::{Kind, Unit};
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};
use serde_json::{Map, Number, Value as Json, json};
use std::fmt::{self, Display, Formatter};

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

/// Unit of a given argument, or of a field, which has no name here.
#[derive(Clone, Copy)]
pub struct Given {
    pub name: &'static str,
    pub kind: &'static Kind,
    pub unit: Option<&'static Unit>,
}

/// Units of the fields of a document: of those with a known kind, and of every other text in it that is a
/// quantity by itself. The coherent SI unit is ignored if a shop uses another one: it is written for every field whose unit
/// is not known.
pub fn units(document: &Json, fields: &[Field]) -> Vec<Given> {
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

/// The keyword arguments of a model as the document that the core decodes: quantities as they were written, `None` left out, all others unchanged. Numbers
/// that are not finite are listed with their paths: the document cannot be one of text then.
pub fn document(keywords: &Bound<'_, PyDict>, fields: &[Field]) -> PyResult<(Json, Vec<NotFinite>)> {
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
    let mut others = Vec::new();
    let made = object(keywords, &Path::Root, 0, &mut others)?;
    Ok((made, others))
}

/// A number that is not finite, and its place in the document.
pub struct NotFinite {
    pub path: Vec<String>,
    pub number: f64,
    pub is_si: bool,
}

/// Levels of lists and dicts in a document: far more than any model has, far fewer than the stack holds.
const DEEPEST: usize = 32;

/// Place in a document.
enum Path<'a> {
    Root,
    Key(&'a Path<'a>, &'a str),
    Place(&'a Path<'a>, usize),
}

impl Path<'_> {
    fn steps(&self) -> Vec<String> {
        match self {
            Path::Root => Vec::new(),
            Path::Key(around, key) => [around.steps(), vec![(*key).to_owned()]].concat(),
            Path::Place(around, place) => [around.steps(), vec![place.to_string()]].concat(),
        }
    }
}

/// For a message: each key is shortened.
impl Display for Path<'_> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            Path::Root => Ok(()),
            Path::Key(Path::Root, key) => f.write_str(&shortened(key)),
            Path::Key(around, key) => write!(f, "{around}.{}", shortened(key)),
            Path::Place(around, place) => write!(f, "{around}[{place}]"),
        }
    }
}

fn object(
    dict: &Bound<'_, PyDict>,
    path: &Path<'_>,
    depth: usize,
    others: &mut Vec<NotFinite>,
) -> PyResult<Json> {
    let mut made = Map::new();
    // A copy: a value may change the dict while it is read.
    for (key, value) in dict.copy()? {
        let Ok(key) = key.cast::<PyString>() else {
            return Err(PyTypeError::new_err(format!("{path}: the key {} is not text", brief(&key))));
        };
        if value.is_none() {
            continue;
        }
        let key = letters(key)?;
        made.insert(key.to_owned(), json(&value, &Path::Key(path, key), depth + 1, others)?);
    }
    Ok(Json::Object(made))
}

fn json(x: &Bound<'_, PyAny>, path: &Path<'_>, depth: usize, others: &mut Vec<NotFinite>) -> PyResult<Json> {
    let py = x.py();
    if depth > DEEPEST {
        return Err(PyValueError::new_err(format!(
            "{}... lies deeper than {DEEPEST} levels of lists and dicts",
            path.to_string().chars().take(40).collect::<String>()
        )));
    }
    if let Ok(words) = x.cast::<PyString>() {
        return Ok(Json::String(letters(words)?.to_owned()));
    }
    if let Ok(quantity) = x.cast::<Quantity>() {
        let quantity = quantity.get();
        let Value::Number(si) = quantity.value else { return list(x, path, depth, others) };
        if !si.is_finite() {
            return Ok(not_finite(si, true, path, others));
        }
        let written = quantity.words(py);
        return Ok(match read_as(&written, quantity.kind) {
            Ok(reading) if reading.si == si => Json::String(written),
            _ => json!({"value": si, "unit": quantity.kind.units[0].symbol}),
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
    if let Ok(whole) = x.cast::<PyInt>() {
        return match whole.extract::<i64>() {
            Ok(whole) => Ok(Json::Number(Number::from(whole))),
            Err(_) => {
                let number = whole.extract::<f64>();
                let number = number.map_err(|_| {
                    PyValueError::new_err(format!("{path} = {} is too large to compute with", brief(x)))
                })?;
                Ok(plain(number, path, others))
            }
        };
    }
    if x.is_instance_of::<PyFloat>() {
        return Ok(plain(x.extract()?, path, others));
    }
    if let Ok(dict) = x.cast::<PyDict>() {
        return object(dict, path, depth, others);
    }
    if x.is_instance_of::<PyList>() || x.is_instance_of::<PyTuple>() || x.hasattr("__array_interface__")? {
        return list(x, path, depth, others);
    }
    if x.hasattr("to_json")? {
        let text: String = x.call_method0("to_json")?.extract()?;
        return serde_json::from_str(&text)
            .map_err(|error| PyValueError::new_err(format!("{path}: {error}")));
    }
    match Value::plain(x) {
        Ok(Value::Number(number)) => return Ok(plain(number, path, others)),
        Err(error) if is_of_others(py, &error) => return Err(error),
        _ => {}
    }
    Err(PyTypeError::new_err(format!(
        "{path} = {} is neither a quantity, a number, text, a list nor a dict",
        brief(x)
    )))
}

fn list(x: &Bound<'_, PyAny>, path: &Path<'_>, depth: usize, others: &mut Vec<NotFinite>) -> PyResult<Json> {
    let elements = x.try_iter()?.enumerate().map(|(i, element)| {
        if i % 4096 == 4095 {
            x.py().check_signals()?;
        }
        json(&element?, &Path::Place(path, i), depth + 1, others)
    });
    elements.collect::<PyResult<Vec<_>>>().map(Json::Array)
}

/// A number in a document.
fn plain(number: f64, path: &Path<'_>, others: &mut Vec<NotFinite>) -> Json {
    match Number::from_f64(number) {
        Some(number) => Json::Number(number),
        None => not_finite(number, false, path, others),
    }
}

/// Lists a number that is not finite; in the document a zero keeps its place.
fn not_finite(number: f64, is_si: bool, path: &Path<'_>, others: &mut Vec<NotFinite>) -> Json {
    others.push(NotFinite { path: path.steps(), number, is_si });
    Json::from(0)
}
