//! Tables of the core for Python.
mod arrow;
mod batch;
mod stream;

use crate::array::Value;
use crate::quantity::Quantity;
use axlewright::base::table::{Table, Values};
use axlewright::units::{Kind, Unit};
use numpy::PyArray1;
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::sync::{MutexExt, PyOnceLock};
use pyo3::types::{PyDict, PyIterator, PyList, PyString};
use std::borrow::Cow;
use std::sync::{Mutex, PoisonError};

pub use arrow::{Array, Schema};
pub use batch::{batch, batch_capsules, column_capsules, schema_capsule};
pub use stream::{Source, gone, interrupt_again, stream};

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
        let wanted = name.cast::<PyString>().map_err(|_| missing())?.to_str().map_err(|_| missing())?;
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

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<Columns>()?;
    m.add_function(wrap_pyfunction!(batch::arrow_schema, m)?)?;
    m.add_function(wrap_pyfunction!(batch::arrow_array, m)?)?;
    m.add_function(wrap_pyfunction!(stream::arrow_stream, m)?)
}
