//! Tables of the core for Python, and the Arrow C data interface, written out by hand: it is small, and stable for
//! good (Apache Arrow format specification, "The Arrow C data interface" and "The Arrow PyCapsule Interface").
use crate::array::Value;
use crate::call::shown;
use crate::model::Given;
use crate::quantity::Quantity;
use axlewright::base::table::{Table, Values};
use axlewright::units::{Kind, Unit};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyDict, PyList, PyString};
use std::collections::HashMap;
use std::ffi::{CString, c_char, c_int, c_void};
use std::ptr::{null, null_mut};

/// A core table as an `axlewright.Table`; a column that carries an argument's name is shown in that one's unit.
pub fn give<'py>(py: Python<'py>, table: &Table, given: &[Given]) -> PyResult<Bound<'py, PyAny>> {
    let columns = PyDict::new(py);
    for column in table.columns() {
        let unit = column.kind.map(|kind| {
            let same = given.iter().find(|given| given.name == column.name && given.kind == kind);
            let unit = same.and_then(|given| given.unit);
            (kind, unit.unwrap_or_else(|| shown(kind, given.iter().map(|given| (given.kind, given.unit)))))
        });
        columns.set_item(&*column.name, values(py, unit, &column.values)?)?;
    }
    let reasons = PyDict::new(py);
    for row in 0..table.rows() {
        if let Some(reason) = table.reason(row) {
            reasons.set_item(row, reason.to_string())?;
        }
    }
    py.import("axlewright._table")?.getattr("Table")?.call1((columns, reasons))
}

fn values<'py>(
    py: Python<'py>,
    unit: Option<(&'static Kind, &'static Unit)>,
    values: &Values,
) -> PyResult<Bound<'py, PyAny>> {
    Ok(match values {
        Values::F64(numbers) => {
            let array = Value::kept(PyArray1::from_slice(py, numbers).into_any())?;
            match unit {
                Some((kind, unit)) => Quantity::result(py, array, kind, unit)?.into_bound(py),
                None => array.to_python(py),
            }
        }
        Values::I64(numbers) => PyArray1::from_slice(py, numbers).into_any(),
        Values::Category { codes, labels } => {
            let labels: Vec<_> = labels.iter().map(|label| PyString::new(py, label)).collect();
            let words =
                codes.iter().map(|code| usize::try_from(*code).ok().and_then(|code| labels.get(code)));
            let options = PyDict::new(py);
            options.set_item("dtype", "object")?;
            py.import("numpy")?.call_method("array", (PyList::new(py, words)?,), Some(&options))?
        }
    })
}

#[repr(C)]
struct Schema {
    format: *const c_char,
    name: *const c_char,
    metadata: *const c_char,
    flags: i64,
    children_count: i64,
    children: *mut *mut Schema,
    dictionary: *mut Schema,
    release: Option<unsafe extern "C" fn(*mut Schema)>,
    private: *mut c_void,
}

#[repr(C)]
struct Array {
    length: i64,
    null_count: i64,
    offset: i64,
    buffer_count: i64,
    children_count: i64,
    buffers: *mut *const c_void,
    children: *mut *mut Array,
    dictionary: *mut Array,
    release: Option<unsafe extern "C" fn(*mut Array)>,
    private: *mut c_void,
}

#[repr(C)]
struct Stream {
    get_schema: unsafe extern "C" fn(*mut Stream, *mut Schema) -> c_int,
    get_next: unsafe extern "C" fn(*mut Stream, *mut Array) -> c_int,
    get_last_error: unsafe extern "C" fn(*mut Stream) -> *const c_char,
    release: Option<unsafe extern "C" fn(*mut Stream)>,
    private: *mut c_void,
}

/// What a schema or an array points into; dropped by its `release`.
struct Owned<T> {
    children: Vec<*mut T>,
    dictionary: *mut T,
    _names: Vec<CString>,
    _metadata: Vec<u8>,
    _buffers: Vec<*const c_void>,
    _data: Vec<Data>,
}

/// Memory behind a buffer.
#[expect(dead_code, reason = "held only to be dropped with the array")]
enum Data {
    Python(Py<PyAny>),
    Bytes(Vec<u8>),
    Codes(Vec<i32>),
}

macro_rules! releasable {
    ($($type:ident)+) => {$(
        impl $type {
            /// Releases what is not moved out yet; a consumer that moves it clears `release`.
            fn let_go(&mut self) {
                if let Some(release) = self.release {
                    // SAFETY: `release` is ours and was not called before, or it would be cleared.
                    unsafe { release(self) }
                }
            }
        }
        impl Drop for $type {
            fn drop(&mut self) {
                self.let_go();
            }
        }
        // SAFETY: what is behind the pointers is owned, never changed, and may be dropped by any thread.
        unsafe impl Send for $type {}
    )+};
}
releasable!(Schema Array Stream);

macro_rules! release {
    ($name:ident, $type:ident) => {
        unsafe extern "C" fn $name(this: *mut $type) {
            // SAFETY: `private` was made by `Box::into_raw`, as were the children and the dictionary.
            unsafe {
                let owned = Box::from_raw((*this).private.cast::<Owned<$type>>());
                for child in owned.children.iter().copied().chain([owned.dictionary]) {
                    if !child.is_null() {
                        drop(Box::from_raw(child));
                    }
                }
                (*this).release = None;
            }
        }
    };
}
release!(release_schema, Schema);
release!(release_array, Array);

const NULLABLE: i64 = 2;

fn schema(
    format: &str,
    name: &str,
    metadata: &[(&str, &str)],
    children: Vec<Schema>,
    dictionary: Option<Schema>,
) -> PyResult<Schema> {
    let names = vec![CString::new(format)?, CString::new(name)?];
    let mut bytes = Vec::new();
    if !metadata.is_empty() {
        bytes.extend((metadata.len() as i32).to_ne_bytes());
        for text in metadata.iter().flat_map(|(key, value)| [key, value]) {
            bytes.extend((text.len() as i32).to_ne_bytes());
            bytes.extend(text.as_bytes());
        }
    }
    let mut owned = Box::new(Owned {
        children: children.into_iter().map(|child| Box::into_raw(Box::new(child))).collect(),
        dictionary: dictionary.map_or(null_mut(), |dictionary| Box::into_raw(Box::new(dictionary))),
        _names: names,
        _metadata: bytes,
        _buffers: Vec::new(),
        _data: Vec::new(),
    });
    Ok(Schema {
        format: owned._names[0].as_ptr(),
        name: owned._names[1].as_ptr(),
        metadata: if owned._metadata.is_empty() { null() } else { owned._metadata.as_ptr().cast() },
        flags: if name.is_empty() { 0 } else { NULLABLE },
        children_count: owned.children.len() as i64,
        children: owned.children.as_mut_ptr(),
        dictionary: owned.dictionary,
        release: Some(release_schema),
        private: Box::into_raw(owned).cast(),
    })
}

fn array(
    length: usize,
    nulls: usize,
    buffers: Vec<*const c_void>,
    data: Vec<Data>,
    children: Vec<Array>,
    dictionary: Option<Array>,
) -> Array {
    let mut owned = Box::new(Owned {
        children: children.into_iter().map(|child| Box::into_raw(Box::new(child))).collect(),
        dictionary: dictionary.map_or(null_mut(), |dictionary| Box::into_raw(Box::new(dictionary))),
        _names: Vec::new(),
        _metadata: Vec::new(),
        _buffers: buffers,
        _data: data,
    });
    Array {
        length: length as i64,
        null_count: nulls as i64,
        offset: 0,
        buffer_count: owned._buffers.len() as i64,
        children_count: owned.children.len() as i64,
        buffers: owned._buffers.as_mut_ptr(),
        children: owned.children.as_mut_ptr(),
        dictionary: owned.dictionary,
        release: Some(release_array),
        private: Box::into_raw(owned).cast(),
    }
}

/// One column: numbers as they lie in memory, words as a dictionary with nulls.
fn column(name: &str, x: &Bound<'_, PyAny>, unit: &str, quantity: &str) -> PyResult<(Schema, Array)> {
    if let Ok(numbers) = x.cast::<PyArray1<f64>>() {
        let about = [("unit", unit), ("quantity", quantity)];
        return Ok((schema("g", name, &about, vec![], None)?, numeric(numbers)?));
    }
    if let Ok(numbers) = x.cast::<PyArray1<i64>>() {
        return Ok((schema("l", name, &[], vec![], None)?, numeric(numbers)?));
    }
    let (mut codes, mut valid, mut nulls) = (Vec::<i32>::new(), Vec::<u8>::new(), 0);
    let (mut bytes, mut ends) = (Vec::<u8>::new(), vec![0_i32]);
    let mut places = HashMap::<String, i32>::new();
    for (row, word) in x.try_iter()?.enumerate() {
        let word = word?;
        if row % 8 == 0 {
            valid.push(0);
        }
        if word.is_none() {
            nulls += 1;
            codes.push(0);
            continue;
        }
        valid[row / 8] |= 1 << (row % 8);
        let word: String = word.extract()?;
        let next = places.len() as i32;
        codes.push(*places.entry(word).or_insert_with_key(|word| {
            bytes.extend(word.as_bytes());
            ends.push(bytes.len() as i32);
            next
        }));
    }
    let words = ends.len() - 1;
    let dictionary = array(
        words,
        0,
        vec![null(), ends.as_ptr().cast(), bytes.as_ptr().cast()],
        vec![Data::Codes(ends), Data::Bytes(bytes)],
        vec![],
        None,
    );
    let rows = codes.len();
    let validity = if nulls == 0 { null() } else { valid.as_ptr().cast() };
    let buffers = vec![validity, codes.as_ptr().cast()];
    let data = vec![Data::Bytes(valid), Data::Codes(codes)];
    let made = array(rows, nulls, buffers, data, vec![], Some(dictionary));
    Ok((schema("i", name, &[], vec![], Some(schema("u", "", &[], vec![], None)?))?, made))
}

fn numeric<T: numpy::Element>(numbers: &Bound<'_, PyArray1<T>>) -> PyResult<Array> {
    let read = numbers.readonly();
    let values = read.as_slice()?;
    let data = vec![Data::Python(numbers.clone().into_any().unbind())];
    Ok(array(values.len(), 0, vec![null(), values.as_ptr().cast()], data, vec![], None))
}

/// Name, values, unit and kind of quantity of each column.
type Columns<'py> = Vec<(String, Bound<'py, PyAny>, String, String)>;

fn whole(rows: usize, columns: &Columns<'_>) -> PyResult<(Schema, Array)> {
    let (mut schemas, mut arrays) = (Vec::new(), Vec::new());
    for (name, x, unit, quantity) in columns {
        let (schema, array) = column(name, x, unit, quantity)?;
        if array.length != rows as i64 {
            return Err(PyTypeError::new_err(format!("{name} has {} rows; {rows} are wanted", array.length)));
        }
        schemas.push(schema);
        arrays.push(array);
    }
    Ok((schema("+s", "", &[], schemas, None)?, array(rows, 0, vec![null()], vec![], arrays, None)))
}

/// The schema of a table as a capsule.
#[pyfunction(name = "_arrow_schema")]
fn arrow_schema<'py>(py: Python<'py>, rows: usize, columns: Columns<'py>) -> PyResult<Bound<'py, PyCapsule>> {
    PyCapsule::new_with_value(py, whole(rows, &columns)?.0, c"arrow_schema")
}

/// Schema and data of a table as two capsules.
#[pyfunction(name = "_arrow_array")]
fn arrow_array<'py>(
    py: Python<'py>,
    rows: usize,
    columns: Columns<'py>,
) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
    let (schema, array) = whole(rows, &columns)?;
    Ok((
        PyCapsule::new_with_value(py, schema, c"arrow_schema")?,
        PyCapsule::new_with_value(py, array, c"arrow_array")?,
    ))
}

/// A stream of one batch: a schema for every question, the data once.
struct Batch {
    schemas: Py<PyAny>,
    array: Option<Array>,
}

/// A table as a stream of one batch, in a capsule.
#[pyfunction(name = "_arrow_stream")]
fn arrow_stream<'py>(py: Python<'py>, rows: usize, columns: Columns<'py>) -> PyResult<Bound<'py, PyCapsule>> {
    let (_, array) = whole(rows, &columns)?;
    let again = PyList::empty(py);
    for column in &columns {
        again.append(column)?;
    }
    let batch = Batch { schemas: (rows, again).into_pyobject(py)?.into_any().unbind(), array: Some(array) };
    let stream = Stream {
        get_schema: stream_schema,
        get_next: stream_next,
        get_last_error: stream_error,
        release: Some(release_stream),
        private: Box::into_raw(Box::new(batch)).cast(),
    };
    PyCapsule::new_with_value(py, stream, c"arrow_array_stream")
}

const FAILED: c_int = 5; // EIO

unsafe extern "C" fn stream_schema(stream: *mut Stream, out: *mut Schema) -> c_int {
    // SAFETY: the consumer passes our stream and room for a schema.
    let batch = unsafe { &*(*stream).private.cast::<Batch>() };
    let made = Python::attach(|py| {
        crate::error::guard("Table", || {
            let (rows, columns): (usize, Columns<'_>) = batch.schemas.bind(py).extract()?;
            Ok(whole(rows, &columns)?.0)
        })
        .ok()
    });
    let Some(made) = made else { return FAILED };
    // SAFETY: as above; what was there before holds nothing.
    unsafe { out.write(made) };
    0
}

unsafe extern "C" fn stream_next(stream: *mut Stream, out: *mut Array) -> c_int {
    // SAFETY: the consumer passes our stream and room for an array; a released array marks the end.
    unsafe {
        let batch = &mut *(*stream).private.cast::<Batch>();
        match batch.array.take() {
            Some(array) => out.write(array),
            None => (*out).release = None,
        }
    }
    0
}

unsafe extern "C" fn stream_error(_stream: *mut Stream) -> *const c_char {
    c"the table could not be read".as_ptr()
}

unsafe extern "C" fn release_stream(stream: *mut Stream) {
    // SAFETY: `private` was made by `Box::into_raw` in `arrow_stream`.
    unsafe {
        drop(Box::from_raw((*stream).private.cast::<Batch>()));
        (*stream).release = None;
    }
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_function(wrap_pyfunction!(arrow_schema, m)?)?;
    m.add_function(wrap_pyfunction!(arrow_array, m)?)?;
    m.add_function(wrap_pyfunction!(arrow_stream, m)?)
}
