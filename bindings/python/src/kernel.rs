//! A function of the core as both forms in Python take it: `call` with quantities, `ufunc` with arrays of plain numbers.
use crate::keywords::Keyword;
use axlewright::Result;
use axlewright::units::Kind;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::PyTuple;

/// A function of the core on plain doubles: one to eight quantities in, one or more out.
pub trait Kernel<const I: usize, const O: usize>: 'static {
    /// System and name: `spring.wheel_rate`.
    const NAME: &'static str;
    /// Docs of the ufunc.
    const DOC: &'static str;
    /// Signature and docs of the function that takes quantities.
    const FRONT: &'static str;
    /// Arguments of that function: those of the core, and `invalid`.
    const KEYWORDS: &'static [Keyword];
    /// Name and kind of each argument.
    const PARAMETERS: [(&'static str, &'static Kind); I];
    /// Name and kind of each result.
    const RESULTS: [(&'static str, &'static Kind); O];
    /// The named tuple that holds several results.
    fn class() -> Option<&'static Class> {
        None
    }
    /// The core's function.
    fn call(arguments: [f64; I]) -> Result<[f64; O]>;
}

/// A named tuple of the Python package, looked up when the first result is made.
pub struct Class {
    module: &'static str,
    name: &'static str,
    found: PyOnceLock<Py<PyAny>>,
}

impl Class {
    pub const fn new(module: &'static str, name: &'static str) -> Class {
        Class { module, name, found: PyOnceLock::new() }
    }
    /// A result of this class.
    pub fn made(&self, parts: Bound<'_, PyTuple>) -> PyResult<Py<PyAny>> {
        let py = parts.py();
        let find = || PyResult::Ok(py.import(self.module)?.getattr(self.name)?.unbind());
        self.found.get_or_try_init(py, find)?.call1(py, parts)
    }
}
