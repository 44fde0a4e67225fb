//! Lines over values: a sweep as one table, or piece by piece.
use super::batch::{Batch, Units};
use super::shown::{kind_of, written_units};
use crate::array::elements;
use crate::error::{guard, raise};
use crate::interpreter::{attached, released};
use crate::table::{self, Array, Schema, Source, batch, stream};
use crate::watch::{Watch, watched};
use axlewright::Table;
use axlewright::sheet::{self as core, Axis};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::PyKeyboardInterrupt;
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyTuple};
use std::ops::Range;
use std::sync::Arc;

/// Paths, payload and unit of an axis.
pub type AxisForm<'py> = (Vec<String>, Bound<'py, PyAny>, Option<String>);

/// An axis of the core: numbers in coherent SI, the ends and count of a span, or rows of text.
fn axis(paths: &[String], payload: &Bound<'_, PyAny>) -> PyResult<Axis> {
    let py = payload.py();
    let refuse = |error| raise(py, error);
    let first = || paths.first().map_or("", String::as_str);
    if let Ok(numbers) = payload.cast::<PyArray1<f64>>() {
        let numbers: Vec<f64> = numbers.readonly().as_array().iter().copied().collect();
        return Axis::numbers(first(), &numbers).map_err(refuse);
    }
    if payload.is_instance_of::<PyTuple>() {
        let (from, to, count): (String, String, usize) = payload.extract()?;
        return Axis::range(first(), &from, &to, count).map_err(refuse);
    }
    let row = |row: &Bound<'_, PyAny>| elements(row)?.iter().map(|cell| cell.extract()).collect();
    let rows = elements(payload)?.iter().map(row).collect::<PyResult<Vec<Vec<String>>>>()?;
    let rows: Vec<Vec<&str>> = rows.iter().map(|row| row.iter().map(String::as_str).collect()).collect();
    let paths: Vec<&str> = paths.iter().map(String::as_str).collect();
    Axis::entries(&paths, &rows).map_err(refuse)
}

/// Lines over values, and the wanted outputs.
#[pyclass(frozen, module = "axlewright._native", name = "WhatIfHandle")]
pub struct WhatIfHandle {
    what_if: core::WhatIf,
    lengths: Vec<usize>,
    units: Arc<Units>,
}

impl WhatIfHandle {
    pub fn new(
        py: Python<'_>,
        sheet: &core::Sheet,
        axes: Vec<AxisForm<'_>>,
        grid: bool,
        outputs: &[String],
    ) -> PyResult<Self> {
        let mut made = Vec::new();
        let mut units = Vec::new();
        for (paths, payload, unit) in axes {
            made.push(axis(&paths, &payload)?);
            if let [path] = &paths[..]
                && let Some(kind) = kind_of(py, path)?
                && let Some(unit) = unit.and_then(|unit| kind.unit(&unit))
            {
                units.push((path.clone(), kind, unit));
            }
        }
        let lengths = made.iter().map(Axis::len).collect();
        let written = written_units(sheet);
        let system = sheet.system();
        units.extend(written.into_iter().map(|(path, kind, unit)| (path.to_owned(), kind, unit)));
        let outputs: Vec<&str> = outputs.iter().map(String::as_str).collect();
        let what_if = watched(py, || sheet.what_if(made, !grid, &outputs))?;
        Ok(WhatIfHandle { what_if, lengths, units: Arc::new(Units { lines: units, system }) })
    }
    /// Some rows, with the interpreter released.
    fn compute(
        &self,
        py: Python<'_>,
        rows: Range<usize>,
        threads: Option<usize>,
        progress: Option<&Py<PyAny>>,
    ) -> PyResult<Table> {
        let mut watch = Watch::new(progress);
        let table = released(py, || self.what_if.table(rows, threads, &mut |done| watch.tell(done)));
        watch.answer(py, table)
    }
}

#[pymethods]
impl WhatIfHandle {
    fn rows(&self) -> usize {
        self.what_if.rows()
    }
    fn lengths(&self) -> Vec<usize> {
        self.lengths.clone()
    }
    fn not_known(&self) -> Vec<(String, String)> {
        self.what_if.not_known().to_vec()
    }
    fn dropped(&self) -> Vec<&'static str> {
        self.what_if.dropped().to_vec()
    }
    /// The unit of each column of numbers in the units of a shop.
    fn units_in(&self, system: &str) -> PyResult<Vec<(String, &'static str)>> {
        let units = self.what_if.units_in(super::shown::system(system)?);
        Ok(units.into_iter().map(|(name, unit)| (name, unit.name)).collect())
    }
    #[pyo3(signature = (start, stop, threads=None, progress=None))]
    fn batch(
        &self,
        py: Python<'_>,
        start: usize,
        stop: usize,
        threads: Option<usize>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Batch> {
        guard("Sweep", || {
            let table = Arc::new(self.compute(py, start..stop, threads, progress.as_ref())?);
            Ok(Batch { table, units: self.units.clone() })
        })
    }
    #[pyo3(signature = (start, stop, threads=None, progress=None))]
    fn table<'py>(
        &self,
        py: Python<'py>,
        start: usize,
        stop: usize,
        threads: Option<usize>,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        guard("Sweep", || self.units.give(py, self.compute(py, start..stop, threads, progress.as_ref())?))
    }
    fn stream<'py>(
        slf: Py<Self>,
        py: Python<'py>,
        start: usize,
        stop: usize,
        rows: usize,
        threads: Option<usize>,
    ) -> PyResult<Bound<'py, PyCapsule>> {
        guard("Sweep", || {
            stream(
                py,
                Box::new(Pieces {
                    of: slf,
                    left: start..stop,
                    rows: rows.max(1),
                    threads,
                    interrupted: false,
                }),
            )
        })
    }
}

/// A sweep, piece by piece.
struct Pieces {
    of: Py<WhatIfHandle>,
    left: Range<usize>,
    rows: usize,
    threads: Option<usize>,
    interrupted: bool,
}

impl Pieces {
    /// The next rows. The consumer knows only its own errors, no interrupt: it first gets no rows, and the interpreter raises the
    /// interrupt as soon as it is back. A consumer that asks again without returning to the interpreter gets the error.
    fn compute(&mut self, py: Python<'_>, rows: Range<usize>) -> PyResult<Table> {
        let answer =
            py.check_signals().and_then(|()| self.of.get().compute(py, rows.clone(), self.threads, None));
        match answer {
            Err(error) if error.is_instance_of::<PyKeyboardInterrupt>(py) && !self.interrupted => {
                self.interrupted = true;
                table::interrupt_again(py);
                self.of.get().compute(py, 0..0, None, None)
            }
            answer => {
                self.interrupted = false;
                self.left.start = if answer.is_ok() { rows.end } else { rows.start };
                answer
            }
        }
    }
}

impl Source for Pieces {
    fn schema(&mut self) -> PyResult<Schema> {
        let none = attached(|py| self.of.get().compute(py, 0..0, None, None)).ok_or_else(table::gone)?;
        Ok(batch(&Arc::new(none?))?.0)
    }
    fn next(&mut self) -> PyResult<Option<Array>> {
        if self.left.is_empty() {
            return Ok(None);
        }
        let stop = self.left.end.min(self.left.start + self.rows);
        let table = attached(|py| self.compute(py, self.left.start..stop)).ok_or_else(table::gone)?;
        Ok(Some(batch(&Arc::new(table?))?.1))
    }
}
