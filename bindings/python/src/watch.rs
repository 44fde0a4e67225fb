//! Long work with the interpreter released: it reports its progress and answers an interrupt.
use crate::error::raise;
use crate::interpreter::{attached, is_shut, released};
use axlewright::base::stop::stoppable;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use std::time::{Duration, Instant};

/// Progress of long work: reports to a callable and checks the interpreter's signals now and then.
pub struct Watch<'a> {
    callback: Option<&'a Py<PyAny>>,
    last: Instant,
    failed: Option<PyErr>,
    gone: bool,
}

impl<'a> Watch<'a> {
    const EVERY: Duration = Duration::from_millis(20);

    pub fn new(callback: Option<&'a Py<PyAny>>) -> Self {
        Watch { callback, last: Instant::now(), failed: None, gone: false }
    }

    /// True to go on.
    pub fn tell(&mut self, done: usize) -> bool {
        if self.failed.is_some() || self.gone {
            return false;
        }
        if self.last.elapsed() < Watch::EVERY {
            return true;
        }
        let told = attached(|py| {
            py.check_signals()?;
            self.callback.map_or(Ok(()), |callback| callback.call1(py, (done,)).map(drop))
        });
        self.last = Instant::now();
        match told {
            None => self.gone = is_shut(),
            Some(told) => self.failed = told.err(),
        }
        self.failed.is_none() && !self.gone
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

/// The answer of work that reports no progress: it asks the core's question whether to go on.
pub fn watched<T: Send>(py: Python<'_>, work: impl FnOnce() -> axlewright::Result<T> + Send) -> PyResult<T> {
    let (computed, failed) = released(py, || {
        let watch = Rc::new(RefCell::new(Watch::new(None)));
        let asked = Rc::clone(&watch);
        let computed = stoppable(move || asked.borrow_mut().tell(0), work);
        (computed, watch.borrow_mut().failed.take())
    });
    Watch { failed, ..Watch::new(None) }.answer(py, computed)
}
