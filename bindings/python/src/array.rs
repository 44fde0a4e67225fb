//! Plain numbers and arrays of numbers inside a quantity, always in float64.
use numpy::npyffi::{NpyTypes, PY_ARRAY_API};
use numpy::{PyArrayDyn, PyArrayMethods, PyUntypedArray, PyUntypedArrayMethods};
use pyo3::exceptions::{PyTypeError, PyValueError, PyZeroDivisionError};
use pyo3::ffi;
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyBool, PyBytes, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};

use axlewright::base::text;
use axlewright::units::{Kind, Unit};

/// A number, or an array of float64: a read-only ndarray, or a dask array, DataArray or Series unchanged.
pub enum Value {
    Number(f64),
    Array(Py<PyAny>),
}

#[derive(Clone, Copy)]
pub enum Operation {
    Add,
    Subtract,
    Multiply,
    Divide,
}

impl Value {
    /// A plain number or array of numbers, copied to float64. Text, truth values, masks and objects are refused.
    #[inline]
    pub fn plain(x: &Bound<'_, PyAny>) -> PyResult<Self> {
        if let Ok(x) = x.cast_exact::<PyFloat>() {
            return Ok(Value::Number(x.value()));
        }
        if let Ok(x) = x.cast_exact::<PyInt>() {
            return x.extract().map(Value::Number).map_err(|_| too_large(x));
        }
        Self::plain_slow(x)
    }

    /// As `plain`, of numbers in this unit. Data that carry a label (`attrs["units"]`, as xarray and pandas keep it) with another unit are
    /// refused; the label goes, because the quantity holds the unit.
    pub fn labelled(x: &Bound<'_, PyAny>, unit: &Unit, kind: &'static Kind) -> PyResult<Self> {
        let value = Self::plain(x)?;
        let Value::Array(array) = &value else { return Ok(value) };
        let array = array.bind(x.py());
        let Some((attrs, label)) = label(array)? else { return Ok(value) };
        let same = text::unit(&label, Some(kind)).is_ok_and(|(_, found)| found.name == unit.name);
        if !same && label != unit.name && label != unit.symbol {
            return Err(PyTypeError::new_err(format!(
                "the data say `attrs[\"units\"]` = \"{}\", not {}: take them in their own unit, or drop the label",
                text::shortened(&label),
                unit.symbol
            )));
        }
        let bare = array.call_method1("copy", (false,))?;
        let kept = attrs.copy()?;
        kept.del_item("units")?;
        bare.setattr("attrs", kept)?;
        Self::kept(bare)
    }

    /// The array with the label of its unit, where it can carry one.
    pub fn with_label<'py>(array: Bound<'py, PyAny>, symbol: &str) -> PyResult<Bound<'py, PyAny>> {
        if array.is_instance_of::<PyFloat>() || array.hasattr("__array_interface__")? {
            return Ok(array);
        }
        let Ok(attrs) = array.getattr("attrs").and_then(|attrs| Ok(attrs.cast_into::<PyDict>()?)) else {
            return Ok(array);
        };
        let labelled = array.call_method1("copy", (false,))?;
        let kept = attrs.copy()?;
        kept.set_item("units", symbol)?;
        labelled.setattr("attrs", kept)?;
        Ok(labelled)
    }

    #[cold]
    fn plain_slow(x: &Bound<'_, PyAny>) -> PyResult<Self> {
        let py = x.py();
        if x.is_instance_of::<PyBool>() || x.is_instance_of::<PyString>() || x.is_instance_of::<PyBytes>() {
            return Err(not_numbers(x));
        }
        if x.is_instance_of::<PyFloat>() {
            return Ok(Value::Number(x.extract()?));
        }
        if x.is_instance_of::<PyInt>() {
            return x.extract().map(Value::Number).map_err(|_| too_large(x));
        }
        let numpy = py.import(intern!(py, "numpy"))?;
        if x.is_instance_of::<PyList>()
            || x.is_instance_of::<PyTuple>()
            || x.hasattr("__array_interface__")?
        {
            static MASKED: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
            let masked = MASKED.get_or_try_init(py, || {
                Ok::<_, PyErr>(numpy.getattr("ma")?.getattr("MaskedArray")?.unbind())
            })?;
            if x.is_instance(masked.bind(py))? {
                return Err(PyTypeError::new_err(
                    "a masked array has elements without a value; fill them first, for example with x.filled(numpy.nan)",
                ));
            }
            let array = numpy.call_method1("asarray", (x,))?;
            if !real(&array)? {
                return Err(not_numbers(x));
            }
            return Self::kept(numpy.call_method1("array", (array, "float64"))?);
        }
        if x.hasattr("dtype")? && x.hasattr("astype")? {
            return if real(x)? {
                Self::kept(x.call_method1("astype", ("float64",))?)
            } else {
                Err(not_numbers(x))
            };
        }
        if x.hasattr("__float__")? {
            return Ok(Value::Number(x.extract()?));
        }
        if x.hasattr("__array__")?
            || x.hasattr("__getitem__")? && x.hasattr("__len__")? && !x.hasattr("keys")?
        {
            return Self::plain(&numpy.call_method1("asarray", (x,))?);
        }
        Err(not_numbers(x))
    }

    /// The result of an operation on arrays, made read-only; one without axes is a number.
    pub fn kept(x: Bound<'_, PyAny>) -> PyResult<Self> {
        if x.is_instance_of::<PyFloat>() {
            return Ok(Value::Number(x.extract()?));
        }
        if let Ok(array) = x.cast::<PyUntypedArray>() {
            if array.ndim() == 0 {
                return Ok(Value::Number(array.call_method0("item")?.extract()?));
            }
            return Ok(Value::Array(locked(array)?.unbind()));
        }
        Ok(Value::Array(locked_inside(&x)?.unwrap_or(x).unbind()))
    }

    pub fn copy(&self, py: Python<'_>) -> Self {
        match self {
            Value::Number(x) => Value::Number(*x),
            Value::Array(x) => Value::Array(x.clone_ref(py)),
        }
    }

    pub fn to_python<'py>(&self, py: Python<'py>) -> Bound<'py, PyAny> {
        match self {
            Value::Number(x) => PyFloat::new(py, *x).into_any(),
            Value::Array(x) => x.bind(py).clone(),
        }
    }

    /// Element by element; a division of two numbers by zero is an error, as in Python.
    pub fn with(&self, py: Python<'_>, operation: Operation, other: &Self) -> PyResult<Self> {
        use Operation::{Add, Divide, Multiply, Subtract};
        if let (Value::Number(a), Value::Number(b)) = (self, other) {
            return match operation {
                Add => Ok(Value::Number(a + b)),
                Subtract => Ok(Value::Number(a - b)),
                Multiply => Ok(Value::Number(a * b)),
                Divide if *b == 0.0 => Err(PyZeroDivisionError::new_err("division by zero")),
                Divide => Ok(Value::Number(a / b)),
            };
        }
        let (a, b) = (self.to_python(py), other.to_python(py));
        Self::kept(match operation {
            Add => a.add(b)?,
            Subtract => a.sub(b)?,
            Multiply => a.mul(b)?,
            Divide => a.div(b)?,
        })
    }

    /// Coherent SI of a value in this unit, rounded as the core rounds it.
    pub fn in_si(self, py: Python<'_>, unit: &Unit) -> PyResult<Self> {
        match self {
            Value::Number(x) => Ok(Value::Number(unit.to_si(x))),
            Value::Array(_) => {
                let shifted =
                    if unit.offset == 0.0 { self } else { self.step(py, Operation::Add, unit.offset)? };
                shifted.step(py, Operation::Multiply, unit.numerator)?.step(
                    py,
                    Operation::Divide,
                    unit.denominator,
                )
            }
        }
    }

    /// Value in this unit of a value in coherent SI, rounded as the core rounds it; an array is new.
    pub fn in_unit<'py>(&self, py: Python<'py>, unit: &Unit) -> PyResult<Bound<'py, PyAny>> {
        match self {
            Value::Number(x) => Ok(PyFloat::new(py, unit.from_si(*x)).into_any()),
            Value::Array(x) => {
                let scaled = x.bind(py).mul(unit.denominator)?.div(unit.numerator)?;
                if unit.offset == 0.0 { Ok(scaled) } else { scaled.sub(unit.offset) }
            }
        }
    }

    fn step(self, py: Python<'_>, operation: Operation, factor: f64) -> PyResult<Self> {
        let nothing = matches!(operation, Operation::Multiply | Operation::Divide) && factor == 1.0;
        if nothing { Ok(self) } else { self.with(py, operation, &Value::Number(factor)) }
    }
}

/// Owner of the memory of a read-only array. It shows the memory to nobody, so that NumPy lets nobody make the array writable.
#[pyclass(frozen, module = "axlewright._native", name = "Owner")]
pub struct Owner {
    _array: Py<PyAny>,
}

/// The same numbers as an array that can never be written to; without a copy.
pub fn locked<'py>(array: &Bound<'py, PyUntypedArray>) -> PyResult<Bound<'py, PyAny>> {
    let py = array.py();
    if is_owned(array) {
        return Ok(array.clone().into_any());
    }
    let owner = Bound::new(py, Owner { _array: array.clone().into_any().unbind() })?;
    // SAFETY: a live array; the new one takes over a reference to its type of elements and one to the owner, which keeps the memory.
    unsafe {
        let of = array.as_array_ptr();
        ffi::Py_INCREF((*of).fields.descr.cast());
        let made = PY_ARRAY_API.PyArray_NewFromDescr(
            py,
            numpy::npyffi::get_type_object(py, NpyTypes::PyArray_Type),
            (*of).fields.descr,
            (*of).fields.nd,
            (*of).fields.dimensions,
            (*of).fields.strides,
            (*of).fields.data.cast(),
            0,
            std::ptr::null_mut(),
        );
        let made = Bound::from_owned_ptr_or_err(py, made)?;
        if PY_ARRAY_API.PyArray_SetBaseObject(py, made.as_ptr().cast(), owner.into_ptr()) < 0 {
            return Err(PyErr::fetch(py));
        }
        Ok(made)
    }
}

/// The same labelled data around an array that can never be written to; nothing for what is not in memory.
fn locked_inside<'py>(x: &Bound<'py, PyAny>) -> PyResult<Option<Bound<'py, PyAny>>> {
    let py = x.py();
    let array = |name| x.getattr(name).ok().and_then(|data| data.cast_into::<PyUntypedArray>().ok());
    let options = PyDict::new(py);
    if x.hasattr("variable")? {
        let Some(data) = array("data") else { return Ok(None) };
        options.set_item("data", locked(&data)?)?;
        return x.call_method("copy", (false,), Some(&options)).map(Some);
    }
    if x.hasattr("iloc")? && x.hasattr("name")? {
        let Some(data) = array("values") else { return Ok(None) };
        options.set_item("index", x.getattr("index")?)?;
        options.set_item("copy", false)?;
        let made = x.get_type().call((locked(&data)?,), Some(&options))?;
        return made.call_method1("__finalize__", (x,)).map(Some);
    }
    Ok(None)
}

/// True for a part of an array that has its owner already.
fn is_owned(array: &Bound<'_, PyUntypedArray>) -> bool {
    let mut array = array.clone();
    loop {
        // SAFETY: a live array; its base is a live object or null.
        let base =
            unsafe { Bound::from_borrowed_ptr_or_opt(array.py(), (*array.as_array_ptr()).fields.base) };
        match base.map(Bound::cast_into::<PyUntypedArray>) {
            None => return false,
            Some(Ok(base)) => array = base,
            Some(Err(base)) => return base.into_inner().is_instance_of::<Owner>(),
        }
    }
}

/// An array as one that can never be written to; it must not be used otherwise any more.
#[pyfunction(name = "_locked")]
fn locked_array<'py>(array: &Bound<'py, PyUntypedArray>) -> PyResult<Bound<'py, PyAny>> {
    locked(array)
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_function(wrap_pyfunction!(locked_array, m)?)
}

/// Attributes of data that carry them, and the unit that they say.
fn label<'py>(array: &Bound<'py, PyAny>) -> PyResult<Option<(Bound<'py, PyDict>, String)>> {
    if array.hasattr("__array_interface__")? {
        return Ok(None);
    }
    let Ok(attrs) = array.getattr("attrs").and_then(|attrs| Ok(attrs.cast_into::<PyDict>()?)) else {
        return Ok(None);
    };
    let label = attrs.get_item("units")?.and_then(|label| label.extract::<String>().ok());
    Ok(label.map(|label| (attrs, label)))
}

fn real(array: &Bound<'_, PyAny>) -> PyResult<bool> {
    let kind: String = array.getattr("dtype")?.getattr("kind")?.extract()?;
    Ok(matches!(kind.as_str(), "i" | "u" | "f"))
}

fn not_numbers(x: &Bound<'_, PyAny>) -> PyErr {
    PyTypeError::new_err(format!("{} is not a number or an array of numbers", brief(x)))
}

/// Refusal of a whole number beyond every float.
#[cold]
fn too_large(x: &Bound<'_, PyAny>) -> PyErr {
    PyValueError::new_err(format!("{} is too large to compute with", brief(x)))
}

/// The elements of a sequence. They are taken one by one: what it says of its length takes no memory.
pub fn elements<'py>(x: &Bound<'py, PyAny>) -> PyResult<Vec<Bound<'py, PyAny>>> {
    // SAFETY: a live object.
    if x.is_instance_of::<PyString>() || unsafe { ffi::PySequence_Check(x.as_ptr()) } == 0 {
        return Err(PyTypeError::new_err(format!("{} is no list", brief(x))));
    }
    x.try_iter()?.collect()
}

/// An object in a message: short, on one line.
pub fn brief(x: &Bound<'_, PyAny>) -> String {
    let long = 2 * text::QUOTED;
    let x = match x.cast::<PyString>() {
        // Its beginning says enough.
        Ok(words) if words.len().is_ok_and(|length| length > long) => &words
            .get_item(pyo3::types::PySlice::new(x.py(), 0, long as isize, 1))
            .unwrap_or_else(|_| x.clone()),
        _ => x,
    };
    let words = x.repr().map_or_else(|_| "an object".to_owned(), |r| r.to_string());
    let end = words.char_indices().nth(10 * text::QUOTED).map_or(words.len(), |(end, _)| end);
    let line = words[..end].split_whitespace().collect::<Vec<_>>().join(" ");
    text::shortened(&line)
}

/// The ndarray of a result: itself, or the one inside a container; nothing for a lazy array.
pub fn ndarray<'py>(x: &Bound<'py, PyAny>) -> Option<Bound<'py, PyArrayDyn<f64>>> {
    if let Ok(array) = x.cast::<PyArrayDyn<f64>>() {
        return Some(array.clone());
    }
    let held = x.getattr("data").or_else(|_| x.getattr("values")).ok()?;
    held.cast_into::<PyArrayDyn<f64>>().ok()
}

/// Flat places of the NaN elements, in logical order.
pub fn nans(array: &Bound<'_, PyArrayDyn<f64>>) -> Vec<usize> {
    let array = array.readonly();
    if let Ok(values) = array.as_slice() {
        let any = values.chunks(1024).any(|chunk| chunk.iter().fold(false, |any, x| any | x.is_nan()));
        if !any {
            return Vec::new();
        }
    }
    array.as_array().iter().enumerate().filter(|(_, x)| x.is_nan()).map(|(place, _)| place).collect()
}
