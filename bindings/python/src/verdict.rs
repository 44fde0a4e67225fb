//! Verdicts of the caller's own margins, by the rule of the core: numbers, or arrays element by element.
use crate::array::Value;
use crate::error::{guard, letters, raise};
use crate::quantity::{Quantity, take};
use axlewright::Verdict;
use axlewright::base::error::{Error, Relation};
use axlewright::base::text;
use axlewright::units::{Kind, Quantity as _, Ratio};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyList, PyString, PyTuple};

/// The kind of the first quantity among these, or of a text; that of plain numbers is a ratio.
fn kind_of(arguments: &[&Bound<'_, PyAny>]) -> PyResult<&'static Kind> {
    for argument in arguments {
        if let Ok(quantity) = argument.cast::<Quantity>() {
            return Ok(quantity.get().kind);
        }
    }
    for argument in arguments {
        if let Ok(words) = argument.cast::<PyString>() {
            let read = text::read(letters(words)?).map_err(|error| raise(argument.py(), error))?;
            return Ok(read.kind);
        }
    }
    Ok(Ratio::KIND)
}

/// The word, or an array of words, of these values in coherent SI.
fn graded<'py, const N: usize>(
    py: Python<'py>,
    values: [Value; N],
    rule: impl Fn([f64; N]) -> Verdict,
) -> PyResult<Bound<'py, PyAny>> {
    let mut numbers = [0.0; N];
    let mut single = true;
    for (number, value) in numbers.iter_mut().zip(&values) {
        match value {
            Value::Number(si) => *number = *si,
            Value::Array(_) => single = false,
        }
    }
    if single {
        return Ok(PyString::new(py, rule(numbers).word()).into_any());
    }
    let numpy = py.import("numpy")?;
    let given = PyTuple::new(py, values.iter().map(|value| value.to_python(py)))?;
    let arrays = numpy.getattr("broadcast_arrays")?.call1(given)?;
    let mut columns = Vec::with_capacity(N);
    for array in arrays.try_iter()? {
        columns.push(array?.call_method0("ravel")?.call_method0("tolist")?.extract::<Vec<f64>>()?);
    }
    let rows = columns.first().map_or(0, Vec::len);
    let words = (0..rows).map(|row| {
        if row % 65_536 == 65_535 {
            py.check_signals()?;
        }
        let mut at = [f64::NAN; N];
        for (number, column) in at.iter_mut().zip(&columns) {
            *number = column.get(row).copied().unwrap_or(f64::NAN);
        }
        Ok(rule(at).word())
    });
    let words = words.collect::<PyResult<Vec<_>>>()?;
    let options = PyDict::new(py);
    options.set_item("dtype", "object")?;
    let made = numpy.call_method("array", (PyList::new(py, words)?,), Some(&options))?;
    made.call_method1("reshape", (arrays.get_item(0)?.getattr("shape")?,))
}

/// Verdict of a ratio, capacity over demand: `short` below 1, `tight` below `wanted`, `not known` where either is NaN.
///
/// An array of margins gives an array of words.
#[pyfunction]
fn verdict_of_ratio<'py>(
    margin: &Bound<'py, PyAny>,
    wanted: &Bound<'py, PyAny>,
) -> PyResult<Bound<'py, PyAny>> {
    guard("verdict_of_ratio", || {
        let values = [take(margin, "margin", Ratio::KIND)?.0, take(wanted, "wanted", Ratio::KIND)?.0];
        let of = Ratio::from_si;
        graded(margin.py(), values, |[margin, wanted]| Verdict::of_ratio(of(margin), of(wanted)))
    })
}

/// Verdict of a difference, capacity less demand: `short` below nothing, `tight` below `wanted`, `not known` where either is NaN.
///
/// Both are quantities of one kind, or plain numbers in one unit. An array of margins gives an array of words.
#[pyfunction]
fn verdict_of_difference<'py>(
    margin: &Bound<'py, PyAny>,
    wanted: &Bound<'py, PyAny>,
) -> PyResult<Bound<'py, PyAny>> {
    guard("verdict_of_difference", || {
        let kind = kind_of(&[margin, wanted])?;
        let values = [take(margin, "margin", kind)?.0, take(wanted, "wanted", kind)?.0];
        // The rule is the same in any unit, so the plain numbers do.
        let of = Ratio::from_si;
        graded(margin.py(), values, |[margin, wanted]| Verdict::of_difference(of(margin), of(wanted)))
    })
}

static BAND: Relation =
    Relation { argument: "high", other: "low", source: "definition: a band goes from low to high" };

/// Verdict of a place in the band from `low` to `high`: `short` outside, `tight` nearer to an edge than `wanted`, `not known` where
/// `place` or `wanted` is NaN.
///
/// All are quantities of one kind, or plain numbers in one unit; an edge may be infinite. An array of places gives an array of words.
#[pyfunction]
fn verdict_of_place<'py>(
    place: &Bound<'py, PyAny>,
    low: &Bound<'py, PyAny>,
    high: &Bound<'py, PyAny>,
    wanted: &Bound<'py, PyAny>,
) -> PyResult<Bound<'py, PyAny>> {
    guard("verdict_of_place", || {
        let py = place.py();
        let kind = kind_of(&[place, low, high, wanted])?;
        let edge = |x: &Bound<'py, PyAny>, name: &str| match take(x, name, kind)?.0 {
            Value::Number(si) => Ok(si),
            Value::Array(_) => Err(PyTypeError::new_err(format!(
                "{name} is one value, not an array: it is an edge of the band"
            ))),
        };
        let (low, high) = (edge(low, "low")?, edge(high, "high")?);
        if low.is_nan() || high.is_nan() || low >= high {
            return Err(raise(py, Error::Contradiction { relation: &BAND, value: high, other: low, kind }));
        }
        let values = [take(place, "place", kind)?.0, take(wanted, "wanted", kind)?.0];
        let of = Ratio::from_si;
        graded(py, values, |[place, wanted]| Verdict::of_place(of(place), (of(low), of(high)), of(wanted)))
    })
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_function(wrap_pyfunction!(verdict_of_ratio, m)?)?;
    m.add_function(wrap_pyfunction!(verdict_of_difference, m)?)?;
    m.add_function(wrap_pyfunction!(verdict_of_place, m)?)
}
