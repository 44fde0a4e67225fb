//! Record batches one after another, each made when it is asked for.
use super::arrow::{Array, Schema, Stream};
use super::batch::{ArrowColumns, whole};
use crate::interpreter::attached;
use pyo3::exceptions::{PyKeyboardInterrupt, PyRuntimeError};
use pyo3::ffi;
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyList};
use std::ffi::{CString, c_char, c_int};

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
        attached(|py| {
            let columns: ArrowColumns<'_> = self.columns.bind(py).extract()?;
            Ok(whole(self.rows, &columns)?.0)
        })
        .ok_or_else(gone)?
    }
    fn next(&mut self) -> PyResult<Option<Array>> {
        Ok(self.array.take())
    }
}

/// A table as a stream of one batch, in a capsule.
#[pyfunction(name = "_arrow_stream")]
pub fn arrow_stream<'py>(
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

/// Reason for the end of a stream whose interpreter ends.
const GONE: &str = "the Python interpreter has ended";

pub fn gone() -> PyErr {
    PyRuntimeError::new_err(GONE)
}

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
            let words = attached(|py| {
                if error.is_instance_of::<PyKeyboardInterrupt>(py) {
                    interrupt_again(py);
                }
                error.value(py).to_string().replace('\0', " ")
            });
            open.error = CString::new(words.unwrap_or_else(|| GONE.to_owned())).unwrap_or_default();
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
