//! Tables of the core for Python, and the Arrow C data interface, written out by hand: it is small and
//! stable (Apache Arrow format specification, "The Arrow C data interface" and "The Arrow PyCapsule Interface").
use crate::array::Value;
use crate::quantity::Quantity;
use axlewright::base::table::{Table, Values};
use axlewright::units::{Kind, Unit};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::{PyKeyError, PyKeyboardInterrupt, PyTypeError};
use pyo3::ffi;
use pyo3::prelude::*;
use pyo3::sync::{MutexExt, PyOnceLock};
use pyo3::types::{PyCapsule, PyDict, PyIterator, PyList, PyString};
use std::borrow::Cow;
use std::collections::HashMap;
use std::ffi::{CString, c_char, c_int, c_void};
use std::ptr::{null, null_mut};
use std::sync::{Arc, Mutex, PoisonError};

/// The unit in which a column of this name and kind is shown.
type Shown = Box<dyn Fn(&str, &'static Kind) -> &'static Unit + Send + Sync>;

/// Columns of a core table by their names. A column becomes Python's when first asked for; its numbers are not copied.
#[pyclass(frozen, mapping, module = "axlewright._native", name = "Columns")]
pub struct Columns {
    columns: Vec<(Cow<'static, str>, Option<&'static Kind>, Mutex<Held>)>,
    rows: usize,
    shown: Shown,
}

/// State of a column.
enum Held {
    Core(Values),
    Python(Py<PyAny>),
}

#[pymethods]
impl Columns {
    /// Number of rows.
    #[getter]
    fn rows(&self) -> usize {
        self.rows
    }
    fn __len__(&self) -> usize {
        self.columns.len()
    }
    fn __iter__<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyIterator>> {
        PyList::new(py, self.columns.iter().map(|(name, ..)| name))?.try_iter()
    }
    fn __getitem__(&self, name: &Bound<'_, PyAny>) -> PyResult<Py<PyAny>> {
        let py = name.py();
        let missing = || PyKeyError::new_err(name.clone().unbind());
        let wanted = name.cast::<PyString>().map_err(|_| missing())?.to_str()?;
        let found = self.columns.iter().find(|(column, ..)| column == wanted);
        let (column, kind, held) = found.ok_or_else(missing)?;
        let mut held = held.lock_py_attached(py).unwrap_or_else(PoisonError::into_inner);
        if let Held::Core(core) = &mut *held {
            let unit = kind.map(|kind| (kind, (self.shown)(column, kind)));
            let core = std::mem::replace(core, Values::F64(Vec::new()));
            *held = Held::Python(values(py, unit, core)?.unbind());
        }
        match &*held {
            Held::Python(column) => Ok(column.clone_ref(py)),
            Held::Core(_) => Err(missing()),
        }
    }
}

/// A core table as an `axlewright.Table`; `shown` gives the unit of each column of quantities.
pub fn give(
    py: Python<'_>,
    table: Table,
    shown: impl Fn(&str, &'static Kind) -> &'static Unit + Send + Sync + 'static,
) -> PyResult<Bound<'_, PyAny>> {
    let rows = table.rows();
    let (columns, refused) = table.into_parts();
    let columns =
        columns.into_iter().map(|column| (column.name, column.kind, Mutex::new(Held::Core(column.values))));
    let columns = Columns { columns: columns.collect(), rows, shown: Box::new(shown) };
    let reasons = PyDict::new(py);
    for (row, reason) in refused {
        reasons.set_item(row, reason.to_string())?;
    }
    static MAKE: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    let make = MAKE.get_or_try_init(py, || {
        Ok::<_, PyErr>(py.import("axlewright._table")?.getattr("Table")?.getattr("_of_core")?.unbind())
    })?;
    make.bind(py).call1((columns, reasons))
}

fn values<'py>(
    py: Python<'py>,
    unit: Option<(&'static Kind, &'static Unit)>,
    values: Values,
) -> PyResult<Bound<'py, PyAny>> {
    Ok(match values {
        Values::F64(numbers) => {
            let array = Value::kept(PyArray1::from_vec(py, numbers).into_any())?;
            match unit {
                Some((kind, unit)) => Quantity::result(py, array, kind, unit)?.into_bound(py),
                None => array.to_python(py),
            }
        }
        Values::I64(numbers) => Value::kept(PyArray1::from_vec(py, numbers).into_any())?.to_python(py),
        Values::Category { codes, labels } => {
            // The code -1 takes the last of the words, which is None.
            let words = labels.iter().map(|label| PyString::new(py, label).into_any());
            let words = PyList::new(py, words.chain([py.None().into_bound(py)]).collect::<Vec<_>>())?;
            let options = PyDict::new(py);
            options.set_item("dtype", "object")?;
            let words = py.import("numpy")?.call_method("array", (words,), Some(&options))?;
            Value::kept(words.call_method1("take", (PyArray1::from_vec(py, codes),))?)?.to_python(py)
        }
    })
}

#[repr(C)]
pub struct Schema {
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
pub struct Array {
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

/// Memory behind the pointers of a schema or an array; dropped by its `release`.
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
    Table(Arc<Table>),
}

macro_rules! releasable {
    ($($type:ident)+) => {$(
        impl $type {
            /// Releases the parts that were not moved out; a consumer that moves a part clears `release`.
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
        // SAFETY: the memory behind the pointers is owned, never changed, and may be dropped by any thread.
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

/// One column: numbers without a copy, words as a dictionary with nulls.
fn column(name: &str, x: &Bound<'_, PyAny>, unit: &str, quantity: &str) -> PyResult<(Schema, Array)> {
    if let Ok(numbers) = x.cast::<PyArray1<f64>>() {
        let about = [("unit", unit), ("quantity", quantity)];
        return Ok((schema("g", name, &about, vec![], None)?, numeric(numbers)?));
    }
    if let Ok(numbers) = x.cast::<PyArray1<i64>>() {
        return Ok((schema("l", name, &[], vec![], None)?, numeric(numbers)?));
    }
    let (mut codes, mut labels) = (Vec::new(), Vec::new());
    let mut places = HashMap::<String, i32>::new();
    for word in x.try_iter()? {
        let word = word?;
        if word.is_none() {
            codes.push(-1);
            continue;
        }
        let word: String = word.extract()?;
        let next = places.len() as i32;
        codes.push(*places.entry(word).or_insert_with_key(|word| {
            labels.push(word.clone());
            next
        }));
    }
    Ok((words_schema(name)?, words(codes, &labels)))
}

/// Words as a dictionary; a code of -1 is a null.
fn words(mut codes: Vec<i32>, labels: &[String]) -> Array {
    let (mut valid, mut nulls) = (vec![0_u8; codes.len().div_ceil(8)], 0);
    for (row, code) in codes.iter_mut().enumerate() {
        if *code < 0 {
            (*code, nulls) = (0, nulls + 1);
        } else {
            valid[row / 8] |= 1 << (row % 8);
        }
    }
    let (mut bytes, mut ends) = (Vec::<u8>::new(), vec![0_i32]);
    for label in labels {
        bytes.extend(label.as_bytes());
        ends.push(bytes.len() as i32);
    }
    let buffers = vec![null(), ends.as_ptr().cast(), bytes.as_ptr().cast()];
    let dictionary =
        array(labels.len(), 0, buffers, vec![Data::Codes(ends), Data::Bytes(bytes)], vec![], None);
    let validity = if nulls == 0 { null() } else { valid.as_ptr().cast() };
    let buffers = vec![validity, codes.as_ptr().cast()];
    array(codes.len(), nulls, buffers, vec![Data::Bytes(valid), Data::Codes(codes)], vec![], Some(dictionary))
}

fn words_schema(name: &str) -> PyResult<Schema> {
    schema("i", name, &[], vec![], Some(schema("u", "", &[], vec![], None)?))
}

/// A core table as one batch that points into it. `reason` is always its last column, so that every batch of a sweep has the same
/// schema.
pub fn batch(table: &Arc<Table>) -> PyResult<(Schema, Array)> {
    let rows = table.rows();
    let kept = || vec![Data::Table(table.clone())];
    let (mut schemas, mut arrays) = (Vec::new(), Vec::new());
    for column in table.columns() {
        let (made, values) = match &column.values {
            Values::F64(x) => {
                let (unit, quantity) = column.kind.map_or(("1", "Ratio"), |kind| (kind.si, kind.name));
                let about = [("unit", unit), ("quantity", quantity)];
                let values = array(rows, 0, vec![null(), x.as_ptr().cast()], kept(), vec![], None);
                (schema("g", &column.name, &about, vec![], None)?, values)
            }
            Values::I64(x) => {
                let values = array(rows, 0, vec![null(), x.as_ptr().cast()], kept(), vec![], None);
                (schema("l", &column.name, &[], vec![], None)?, values)
            }
            Values::Category { codes, labels } => (words_schema(&column.name)?, words(codes.clone(), labels)),
        };
        schemas.push(made);
        arrays.push(values);
    }
    let (mut codes, mut labels) = (vec![-1; rows], Vec::new());
    let mut places = HashMap::<String, i32>::new();
    for (row, reason) in table.refused() {
        let next = places.len() as i32;
        codes[*row] = *places.entry(reason.to_string()).or_insert_with_key(|reason| {
            labels.push(reason.clone());
            next
        });
    }
    schemas.push(words_schema("reason")?);
    arrays.push(words(codes, &labels));
    Ok((schema("+s", "", &[], schemas, None)?, array(rows, 0, vec![null()], vec![], arrays, None)))
}

/// One batch as two capsules.
pub fn batch_capsules<'py>(
    py: Python<'py>,
    table: &Arc<Table>,
) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
    let (schema, array) = batch(table)?;
    Ok((
        PyCapsule::new_with_value(py, schema, c"arrow_schema")?,
        PyCapsule::new_with_value(py, array, c"arrow_array")?,
    ))
}

/// The schema of a batch as a capsule.
pub fn schema_capsule<'py>(py: Python<'py>, table: &Arc<Table>) -> PyResult<Bound<'py, PyCapsule>> {
    PyCapsule::new_with_value(py, batch(table)?.0, c"arrow_schema")
}

fn numeric<T: numpy::Element>(numbers: &Bound<'_, PyArray1<T>>) -> PyResult<Array> {
    let read = numbers.readonly();
    let values = read.as_slice()?;
    let data = vec![Data::Python(numbers.clone().into_any().unbind())];
    Ok(array(values.len(), 0, vec![null(), values.as_ptr().cast()], data, vec![], None))
}

/// Name, values, unit and kind of quantity of each column.
type ArrowColumns<'py> = Vec<(String, Bound<'py, PyAny>, String, String)>;

fn whole(rows: usize, columns: &ArrowColumns<'_>) -> PyResult<(Schema, Array)> {
    let (mut schemas, mut arrays) = (Vec::new(), Vec::new());
    for (name, x, unit, quantity) in columns {
        let (schema, array) = column(name, x, unit, quantity)?;
        if array.length != rows as i64 {
            return Err(PyTypeError::new_err(format!("{name} has {} rows; it needs {rows}", array.length)));
        }
        schemas.push(schema);
        arrays.push(array);
    }
    Ok((schema("+s", "", &[], schemas, None)?, array(rows, 0, vec![null()], vec![], arrays, None)))
}

/// The schema of a table as a capsule.
#[pyfunction(name = "_arrow_schema")]
fn arrow_schema<'py>(
    py: Python<'py>,
    rows: usize,
    columns: ArrowColumns<'py>,
) -> PyResult<Bound<'py, PyCapsule>> {
    PyCapsule::new_with_value(py, whole(rows, &columns)?.0, c"arrow_schema")
}

/// Schema and data of a table as two capsules.
#[pyfunction(name = "_arrow_array")]
fn arrow_array<'py>(
    py: Python<'py>,
    rows: usize,
    columns: ArrowColumns<'py>,
) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
    let (schema, array) = whole(rows, &columns)?;
    Ok((
        PyCapsule::new_with_value(py, schema, c"arrow_schema")?,
        PyCapsule::new_with_value(py, array, c"arrow_array")?,
    ))
}

/// Source of a stream. A consumer may ask from any thread, with or without the interpreter.
pub trait Source: Send {
    /// The schema of every batch, made anew for each request.
    fn schema(&mut self) -> PyResult<Schema>;
    /// The next batch; nothing at the end.
    fn next(&mut self) -> PyResult<Option<Array>>;
}

/// A source during reading, with the reason of its last failure.
struct Open {
    source: Box<dyn Source>,
    error: CString,
}

/// A source as a stream in a capsule.
pub fn stream<'py>(py: Python<'py>, source: Box<dyn Source>) -> PyResult<Bound<'py, PyCapsule>> {
    let open = Open { source, error: CString::default() };
    let stream = Stream {
        get_schema: stream_schema,
        get_next: stream_next,
        get_last_error: stream_error,
        release: Some(release_stream),
        private: Box::into_raw(Box::new(open)).cast(),
    };
    PyCapsule::new_with_value(py, stream, c"arrow_array_stream")
}

/// A table as a source: a schema for each request, the data once.
struct Once {
    rows: usize,
    columns: Py<PyList>,
    array: Option<Array>,
}

impl Source for Once {
    fn schema(&mut self) -> PyResult<Schema> {
        Python::attach(|py| {
            let columns: ArrowColumns<'_> = self.columns.bind(py).extract()?;
            Ok(whole(self.rows, &columns)?.0)
        })
    }
    fn next(&mut self) -> PyResult<Option<Array>> {
        Ok(self.array.take())
    }
}

/// A table as a stream of one batch, in a capsule.
#[pyfunction(name = "_arrow_stream")]
fn arrow_stream<'py>(
    py: Python<'py>,
    rows: usize,
    columns: ArrowColumns<'py>,
) -> PyResult<Bound<'py, PyCapsule>> {
    let (_, array) = whole(rows, &columns)?;
    let again = PyList::empty(py);
    for column in &columns {
        again.append(column)?;
    }
    stream(py, Box::new(Once { rows, columns: again.unbind(), array: Some(array) }))
}

const FAILED: c_int = 5; // EIO

/// Makes the interpreter raise once more an interrupt that it raised here.
pub fn interrupt_again(_: Python<'_>) {
    // SAFETY: it only marks that the signal has come.
    unsafe { ffi::PyErr_SetInterrupt() }
}

/// Status of an answer. An interrupt is raised once more, for the consumer knows only its own errors.
fn status<T>(open: &mut Open, answer: PyResult<T>, give: impl FnOnce(T)) -> c_int {
    match answer {
        Ok(value) => {
            give(value);
            0
        }
        Err(error) => {
            Python::attach(|py| {
                if error.is_instance_of::<PyKeyboardInterrupt>(py) {
                    interrupt_again(py);
                }
                let words = error.value(py).to_string().replace('\0', " ");
                open.error = CString::new(words).unwrap_or_default();
            });
            FAILED
        }
    }
}

unsafe extern "C" fn stream_schema(stream: *mut Stream, out: *mut Schema) -> c_int {
    // SAFETY: the consumer passes our stream.
    let open = unsafe { &mut *(*stream).private.cast::<Open>() };
    let answer = crate::error::guard("Table", || open.source.schema());
    // SAFETY: the consumer passes memory for a schema; it held nothing before.
    status(open, answer, |made| unsafe { out.write(made) })
}

unsafe extern "C" fn stream_next(stream: *mut Stream, out: *mut Array) -> c_int {
    // SAFETY: the consumer passes our stream.
    let open = unsafe { &mut *(*stream).private.cast::<Open>() };
    let answer = crate::error::guard("Table", || open.source.next());
    // SAFETY: the consumer passes memory for an array; a released array marks the end.
    status(open, answer, |next| unsafe {
        match next {
            Some(array) => out.write(array),
            None => (*out).release = None,
        }
    })
}

unsafe extern "C" fn stream_error(stream: *mut Stream) -> *const c_char {
    // SAFETY: the consumer passes our stream; the text lives until the next call.
    unsafe { (*(*stream).private.cast::<Open>()).error.as_ptr() }
}

unsafe extern "C" fn release_stream(stream: *mut Stream) {
    // SAFETY: `private` was made by `Box::into_raw` in `stream`.
    unsafe {
        drop(Box::from_raw((*stream).private.cast::<Open>()));
        (*stream).release = None;
    }
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<Columns>()?;
    m.add_function(wrap_pyfunction!(arrow_schema, m)?)?;
    m.add_function(wrap_pyfunction!(arrow_array, m)?)?;
    m.add_function(wrap_pyfunction!(arrow_stream, m)?)
}
