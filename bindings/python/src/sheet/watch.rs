//! Progress of long work.
use crate::error::raise;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use std::time::{Duration, Instant};

/// Progress of long work: reports to a callable and checks the interpreter's signals now and then.
pub struct Watch<'a> {
    callback: Option<&'a Py<PyAny>>,
    last: Instant,
    failed: Option<PyErr>,
}

impl<'a> Watch<'a> {
    const EVERY: Duration = Duration::from_millis(20);

    pub fn new(callback: Option<&'a Py<PyAny>>) -> Self {
        Watch { callback, last: Instant::now(), failed: None }
    }

    /// True to go on.
    pub fn tell(&mut self, done: usize) -> bool {
        if self.failed.is_some() {
            return false;
        }
        if self.last.elapsed() < Watch::EVERY {
            return true;
        }
        let told = Python::attach(|py| {
            py.check_signals()?;
            self.callback.map_or(Ok(()), |callback| callback.call1(py, (done,)).map(drop))
        });
        self.last = Instant::now();
        self.failed = told.err();
        self.failed.is_none()
    }

    /// The result, or the reason for the stop.
    pub fn answer<T>(self, py: Python<'_>, computed: axlewright::Result<Option<T>>) -> PyResult<T> {
        if let Some(error) = self.failed {
            return Err(error);
        }
        let stopped = || PyValueError::new_err("stopped");
        computed.map_err(|error| raise(py, error))?.ok_or_else(stopped)
    }
}
