//! Functions that take quantities: numbers go straight to the core, arrays through the ufunc.
use crate::array::{Value, nans, ndarray};
use crate::error::{at, letters, raise};
use crate::kernel::Kernel;
use crate::keywords::{Call, Place, body, function, last};
use crate::quantity::{Quantity, take};
use crate::ufunc::ufunc_of;
use axlewright::units::{Kind, Unit};
use numpy::PyUntypedArray;
use pyo3::exceptions::{PyTypeError, PyValueError};
use pyo3::ffi;
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::types::{PyDict, PyString, PyTuple};

/// The function that takes quantities by keyword.
pub fn function_of<K: Kernel<I, O>, const I: usize, const O: usize>(py: Python<'_>) -> PyResult<Py<PyAny>> {
    const { assert!(I < MOST && K::KEYWORDS.len() == I + 1) };
    function(py, K::NAME, K::FRONT, entry::<K, I, O>).map(Bound::unbind)
}

/// Places for the arguments of a call.
pub const MOST: usize = 16;

unsafe extern "C" fn entry<K: Kernel<I, O>, const I: usize, const O: usize>(
    _module: *mut ffi::PyObject,
    arguments: *const *mut ffi::PyObject,
    count: ffi::Py_ssize_t,
    names: *mut ffi::PyObject,
) -> *mut ffi::PyObject {
    body(K::NAME, |py| {
        // SAFETY: Python passes live objects.
        let call = unsafe { Call::new(py, arguments, count, names) };
        let mut places = [None; MOST];
        call.sort(last(K::NAME), K::KEYWORDS, &mut places)?;
        let refuse = places[I].map_or(Ok(true), refuses)?;
        front::<K, I, O>(py, &places, refuse)
    })
}

fn front<'py, K: Kernel<I, O>, const I: usize, const O: usize>(
    py: Python<'py>,
    arguments: &[Place<'_, 'py>; MOST],
    refuse: bool,
) -> PyResult<Py<PyAny>> {
    let mut values = [const { Value::Number(0.0) }; I];
    let mut units = [None; I];
    for (i, argument) in arguments.iter().take(I).flatten().enumerate() {
        let (name, kind) = K::PARAMETERS[i];
        (values[i], units[i]) = take(argument, name, kind)?;
    }
    let mut numbers = [0.0; I];
    let mut array = false;
    for (number, value) in numbers.iter_mut().zip(&values) {
        match value {
            Value::Number(x) => *number = *x,
            Value::Array(_) => array = true,
        }
    }
    let results = if array {
        let made = arrays::<K, I, O>(py, &values)?;
        if refuse {
            check::<K, I, O>(py, &values, &made)?;
        }
        made
    } else {
        match K::call(numbers) {
            Ok(results) => results.map(Value::Number),
            Err(error) if refuse => return Err(raise(py, error)),
            Err(_) => [const { Value::Number(f64::NAN) }; O],
        }
    };
    let mut results = results.into_iter().zip(K::RESULTS);
    let mut next = || match results.next() {
        Some((value, (_, kind))) => {
            let given = K::PARAMETERS.iter().zip(units).map(|((_, kind), unit)| (*kind, unit));
            Quantity::result(py, value, kind, shown(kind, given))
        }
        None => Err(PyTypeError::new_err("no result")),
    };
    let Some(class) = K::class() else { return next() };
    let mut all = [const { None }; O];
    for place in &mut all {
        *place = Some(next()?);
    }
    class.made(PyTuple::new(py, all)?)
}

/// True if `invalid` asks for a refusal.
fn refuses(invalid: Borrowed<'_, '_, PyAny>) -> PyResult<bool> {
    if let Ok(words) = invalid.cast::<PyString>() {
        match letters(&words)? {
            "raise" => return Ok(true),
            "nan" => return Ok(false),
            _ => {}
        }
    }
    let given = crate::array::brief(&invalid);
    Err(PyValueError::new_err(format!("invalid = {given} is not known; it is \"raise\" or \"nan\"")))
}

/// The unit to show a result in: that of the first argument of its kind, or the shop's unit in the system of the
/// arguments.
pub fn shown(
    kind: &'static Kind,
    given: impl Iterator<Item = (&'static Kind, Option<&'static Unit>)>,
) -> &'static Unit {
    let mut us = false;
    for (of, unit) in given {
        if let Some(unit) = unit {
            if of == kind {
                return unit;
            }
            us |= of.us != of.metric && unit.name == of.us;
        }
    }
    kind.unit(if us { kind.us } else { kind.metric }).unwrap_or(&kind.units[0])
}

fn arrays<K: Kernel<I, O>, const I: usize, const O: usize>(
    py: Python<'_>,
    values: &[Value; I],
) -> PyResult<[Value; O]> {
    let ufunc = ufunc_of::<K, I, O>(py)?;
    let quiet = PyDict::new(py);
    quiet.set_item(intern!(py, "all"), intern!(py, "ignore"))?;
    let quiet = py.import(intern!(py, "numpy"))?.call_method(intern!(py, "errstate"), (), Some(&quiet))?;
    quiet.call_method0(intern!(py, "__enter__"))?;
    let arguments = PyTuple::new(py, values.iter().map(|value| value.to_python(py)))?;
    let made = ufunc.bind(py).call1(arguments);
    quiet.call_method1(intern!(py, "__exit__"), (py.None(), py.None(), py.None()))?;
    let made = made.map_err(|error| shapes::<K, I, O>(py, values).unwrap_or(error))?;
    let mut results = [const { Value::Number(0.0) }; O];
    if O == 1 {
        results[0] = Value::kept(made)?;
        return Ok(results);
    }
    for (place, result) in results.iter_mut().zip(made.try_iter()?) {
        *place = Value::kept(result?)?;
    }
    Ok(results)
}

/// Refusal of plain arrays whose shapes do not fit together, by the names of the arguments.
fn shapes<K: Kernel<I, O>, const I: usize, const O: usize>(
    py: Python<'_>,
    values: &[Value; I],
) -> Option<PyErr> {
    let mut shapes = Vec::new();
    let mut words = Vec::new();
    for (value, (name, _)) in values.iter().zip(K::PARAMETERS) {
        if let Value::Array(array) = value {
            let shape = array.bind(py).cast::<PyUntypedArray>().ok()?.getattr("shape").ok()?;
            words.push(format!("{name} has the shape {shape}"));
            shapes.push(shape);
        }
    }
    let shapes = PyTuple::new(py, shapes).ok()?;
    let refusal = py.import("numpy").ok()?.call_method1("broadcast_shapes", shapes).err()?;
    let refused = PyValueError::new_err(format!("{}; they do not broadcast to one shape", words.join(", ")));
    refused.set_cause(py, Some(refusal));
    Some(refused)
}

/// Raises for the first element that the core refuses. A lazy array is not computed for this: its element stays NaN.
fn check<K: Kernel<I, O>, const I: usize, const O: usize>(
    py: Python<'_>,
    values: &[Value; I],
    results: &[Value; O],
) -> PyResult<()> {
    let mut places = Vec::new();
    for result in results {
        if let Value::Array(result) = result
            && let Some(array) = ndarray(result.bind(py))
        {
            places.extend(nans(&array));
        }
    }
    if places.is_empty() {
        return Ok(());
    }
    places.sort_unstable();
    places.dedup();
    let result = results[0].to_python(py);
    let shape: Vec<usize> = result.getattr("shape")?.extract()?;
    let mut spread = Vec::with_capacity(I);
    for value in values {
        spread.push(broadcast(&value.to_python(py), &result, &shape)?);
    }
    for flat in places {
        let mut numbers = [0.0; I];
        for (number, array) in numbers.iter_mut().zip(&spread) {
            *number = array.call_method1("item", (flat,))?.extract()?;
        }
        if let Err(error) = K::call(numbers) {
            let mut index = vec![0; shape.len()];
            let mut rest = flat;
            for (place, length) in index.iter_mut().zip(&shape).rev() {
                *place = rest % length;
                rest /= length;
            }
            return Err(at(py, raise(py, error), &index, flat));
        }
    }
    Ok(())
}

/// One argument in the shape of the result; a labelled array is laid along the result's axes.
fn broadcast<'py>(
    x: &Bound<'py, PyAny>,
    like: &Bound<'py, PyAny>,
    shape: &[usize],
) -> PyResult<Bound<'py, PyAny>> {
    let py = x.py();
    let laid = if x.hasattr("broadcast_like")? {
        let axes = like.getattr("dims")?.cast_into::<PyTuple>()?;
        x.call_method1("broadcast_like", (like,))?.call_method1("transpose", axes)?.getattr("values")?
    } else {
        x.clone()
    };
    py.import("numpy")?.call_method1("broadcast_to", (laid, PyTuple::new(py, shape)?))
}
