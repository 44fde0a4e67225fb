//! Arguments of functions and of `Quantity`: quantities, texts, lists of these, and quantities of the units library.
use super::held::{Quantity, RATIO, Unit};
use super::pint;
use super::product::instead;
use super::words::{a, how_to_write, written};
use crate::array::{Value, brief};
use crate::error::{TextError, is_of_others, letters, raise_in};
use axlewright::base::text;
use axlewright::units::{self, Kind};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyFloat, PyList, PyString, PyTuple};

/// Reads one quantity; a tolerance is refused.
pub fn read(words: &str, wanted: Option<&'static Kind>) -> axlewright::Result<Quantity> {
    let reading = match wanted {
        Some(kind) => text::read_as(words, kind),
        None => text::read(words),
    }?;
    match reading.tolerance {
        None => Ok(Quantity { value: Value::Number(reading.si), kind: reading.kind, unit: reading.unit }),
        Some(_) => Err(axlewright::Error::Text {
            text: words.to_owned(),
            message: "a tolerance has no place here; write the value alone".to_owned(),
        }),
    }
}

/// The first element of a list or tuple, if it carries a unit.
pub fn first_with_unit<'py>(x: &Bound<'py, PyAny>) -> PyResult<Option<Bound<'py, PyAny>>> {
    if !(x.is_instance_of::<PyList>() || x.is_instance_of::<PyTuple>()) || x.len()? == 0 {
        return Ok(None);
    }
    let first = x.get_item(0)?;
    Ok((first.is_instance_of::<Quantity>() || first.is_instance_of::<PyString>()).then_some(first))
}

/// Takes an argument of a function: a quantity of its kind, text, a list of these, a quantity of the units library;
/// a bare number only for a ratio. Returns coherent SI and the unit in which it was given.
#[inline]
pub fn take(
    x: &Bound<'_, PyAny>,
    argument: &str,
    kind: &'static Kind,
) -> PyResult<(Value, Option<&'static units::Unit>)> {
    if let Ok(quantity) = x.cast_exact::<Quantity>() {
        let quantity = quantity.get();
        if quantity.kind == kind {
            return Ok((quantity.value.copy(x.py()), Some(quantity.unit)));
        }
    } else if kind == RATIO
        && let Ok(number) = x.cast_exact::<PyFloat>()
    {
        return Ok((Value::Number(number.value()), None));
    }
    take_slow(x, argument, kind)
}

fn take_slow(
    x: &Bound<'_, PyAny>,
    argument: &str,
    kind: &'static Kind,
) -> PyResult<(Value, Option<&'static units::Unit>)> {
    let py = x.py();
    if let Ok(words) = x.cast::<PyString>() {
        let words =
            letters(words).map_err(|error| TextError::new_err(format!("{argument}: {}", error.value(py))))?;
        let quantity = read(words, Some(kind)).map_err(|error| raise_in(py, argument, error))?;
        return Ok((quantity.value, Some(quantity.unit)));
    }
    if let Ok(quantity) = x.cast::<Quantity>() {
        let other = quantity.get();
        return Err(PyTypeError::new_err(format!(
            "{argument} = {} is {}; {} is wanted{}",
            other.words(py),
            a(other.kind),
            a(kind),
            match instead(other.unit, kind) {
                Some(unit) => {
                    let number = match other.value {
                        Value::Number(si) => written(other.shown_number(si)),
                        Value::Array(_) => "array".to_owned(),
                    };
                    format!(": write {}({number})", unit.name)
                }
                None => format!(", for example {}", how_to_write(kind, "300")),
            }
        )));
    }
    if first_with_unit(x)?.is_some() {
        let mut unit = None;
        let mut numbers = Vec::new();
        for (place, element) in x.try_iter()?.enumerate() {
            if place % 4096 == 4095 {
                py.check_signals()?;
            }
            let (value, given) = take(&element?, argument, kind)?;
            let Value::Number(number) = value else {
                return Err(PyTypeError::new_err(format!(
                    "{argument}: a list of quantities holds one in each place"
                )));
            };
            unit = unit.or(given);
            numbers.push(number);
        }
        return Ok((Value::kept(numpy::PyArray1::from_vec(py, numbers).into_any())?, unit));
    }
    if pint::is_pint(x)? {
        return Ok((Value::plain(&pint::take(x, argument, kind)?)?, None));
    }
    if x.is_instance_of::<Unit>() {
        return Err(PyTypeError::new_err(format!(
            "{argument} is a unit without a number; write {}",
            how_to_write(kind, "300")
        )));
    }
    let value = Value::plain(x).map_err(|error| {
        if is_of_others(py, &error) {
            return error;
        }
        // An object of the caller may say anything.
        let mut sentence = error.value(py).to_string();
        if sentence.len() > 10 * text::QUOTED {
            sentence = text::shortened(&sentence);
        }
        let refused = PyTypeError::new_err(format!("{argument}: {sentence}; {} is wanted", a(kind)));
        refused.set_cause(py, Some(error));
        refused
    })?;
    if kind == RATIO {
        return Ok((value, None));
    }
    let number = match value {
        Value::Number(number) => format!("{number}"),
        Value::Array(_) => "array".to_owned(),
    };
    Err(PyTypeError::new_err(format!(
        "{argument} = {} has no unit and {} is wanted; write for example {}",
        brief(x),
        a(kind),
        match number.as_str() {
            "array" => {
                let unit = kind.unit(kind.metric).unwrap_or(&kind.units[0]);
                format!("{}(array)", unit.name)
            }
            number => how_to_write(kind, number),
        }
    )))
}
