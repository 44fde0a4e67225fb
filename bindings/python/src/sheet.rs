//! The build sheet: handles of the core behind the classes of `axlewright.sheet`. Long work releases the interpreter, reports its progress
//! and answers an interrupt.
use crate::array::{Value, brief};
use crate::error::{guard, raise};
use crate::quantity::{Quantity, take};
use crate::table::{self, Array, Schema, Source, batch, batch_capsules, schema_capsule, stream};
use axlewright::base::text::{System, read_as};
use axlewright::sheet::{self as core, Answer, Axis, Choice, Requirement};
use axlewright::units::{Kind, Mass, Quantity as _, Unit};
use axlewright::{Table, Verdict};
use numpy::{PyArray1, PyArrayMethods};
use pyo3::exceptions::{PyKeyError, PyKeyboardInterrupt, PyTypeError, PyValueError};
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyString, PyTuple};
use std::ops::Range;
use std::sync::Arc;
use std::time::{Duration, Instant};

/// The unit of a shop.
fn unit_of(kind: &'static Kind, system: System) -> &'static Unit {
    let name = match system {
        System::Metric => kind.metric,
        System::Us => kind.us,
    };
    kind.unit(name).unwrap_or(&kind.units[0])
}

fn system(name: &str) -> PyResult<System> {
    match name {
        "metric" => Ok(System::Metric),
        "us" => Ok(System::Us),
        other => {
            Err(PyValueError::new_err(format!("system = {other:?} is not known; it is \"metric\" or \"us\"")))
        }
    }
}

/// A quantity, a plain number for a ratio, or nothing if it is not known.
fn known(py: Python<'_>, si: f64, kind: &'static Kind, unit: &'static Unit) -> PyResult<Option<Py<PyAny>>> {
    if si.is_nan() {
        return Ok(None);
    }
    Quantity::result(py, Value::Number(si), kind, unit).map(Some)
}

fn kind_of(py: Python<'_>, path: &str) -> PyResult<Option<&'static Kind>> {
    core::Sheet::kind(path).map_err(|error| raise(py, error))
}

/// A value of a line as a document writes it: text unchanged, a quantity so that it is read to the same bits.
fn text(path: &str, value: &Bound<'_, PyAny>) -> PyResult<String> {
    let py = value.py();
    if let Ok(words) = value.cast::<PyString>() {
        return Ok(words.to_str()?.to_owned());
    }
    let Some(kind) = kind_of(py, path)? else {
        return Err(PyTypeError::new_err(format!("{path} = {} is not text", brief(value))));
    };
    let (taken, unit) = take(value, path, kind)?;
    let Value::Number(si) = taken else {
        return Err(PyTypeError::new_err(format!("{path} is one value here, not an array")));
    };
    if !si.is_finite() {
        return Err(PyValueError::new_err(format!("{path} = {si} is not a finite number")));
    }
    let coherent = &kind.units[0];
    for unit in [unit.unwrap_or(coherent), coherent] {
        let words = Quantity { value: Value::Number(si), kind, unit }.words(py);
        if read_as(&words, kind).is_ok_and(|reading| reading.si == si) {
            return Ok(words);
        }
    }
    Err(PyValueError::new_err(format!(
        "{path} = {} has no text that is read to the same number",
        brief(value)
    )))
}

/// Progress of long work: reports to a callable and checks the interpreter's signals now and then.
struct Watch<'a> {
    callback: Option<&'a Py<PyAny>>,
    last: Instant,
    failed: Option<PyErr>,
}

impl<'a> Watch<'a> {
    const EVERY: Duration = Duration::from_millis(20);

    fn new(callback: Option<&'a Py<PyAny>>) -> Self {
        Watch { callback, last: Instant::now(), failed: None }
    }

    /// True to go on.
    fn tell(&mut self, done: usize) -> bool {
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
    fn answer<T>(self, py: Python<'_>, computed: axlewright::Result<Option<T>>) -> PyResult<T> {
        if let Some(error) = self.failed {
            return Err(error);
        }
        let stopped = || PyValueError::new_err("stopped");
        computed.map_err(|error| raise(py, error))?.ok_or_else(stopped)
    }
}

/// A build sheet of the core.
#[pyclass(frozen, module = "axlewright._native", name = "SheetHandle")]
pub struct SheetHandle {
    sheet: core::Sheet,
}

/// Each written line that is a quantity: path, kind and unit.
fn written_units(sheet: &core::Sheet) -> Vec<(&'static str, &'static Kind, &'static Unit)> {
    let unit = |path: &'static str| {
        let kind = core::Sheet::kind(path).ok()??;
        let reading = read_as(&sheet.get(path).ok()??, kind).ok()?;
        Some((path, kind, reading.unit))
    };
    sheet.paths().filter_map(unit).collect()
}

/// The shop's system whose units are used on more written lines.
fn system_of(units: &[(&'static str, &'static Kind, &'static Unit)]) -> System {
    let of = |name: fn(&Kind) -> &'static str| {
        let written =
            units.iter().filter(|(_, kind, unit)| kind.us != kind.metric && unit.name == name(kind));
        written.count()
    };
    if of(|kind| kind.us) > of(|kind| kind.metric) { System::Us } else { System::Metric }
}

type Changes<'py> = Vec<(String, Bound<'py, PyAny>)>;
/// Paths, payload and unit of an axis.
type AxisForm<'py> = (Vec<String>, Bound<'py, PyAny>, Option<String>);

/// A field, the line from which it comes, and its origin: written, computed or assumed.
type Origin = (String, &'static str, &'static str);

#[pymethods]
impl SheetHandle {
    #[staticmethod]
    fn from_text(py: Python<'_>, text: &str) -> PyResult<Self> {
        guard("Sheet", || {
            let sheet = core::Sheet::from_text(text).map_err(|error| raise(py, error))?;
            Ok(SheetHandle { sheet })
        })
    }
    fn name(&self) -> &str {
        self.sheet.name()
    }
    fn to_toml(&self) -> PyResult<String> {
        guard("Sheet", || Ok(self.sheet.to_toml()))
    }
    fn to_json(&self) -> PyResult<String> {
        guard("Sheet", || Ok(self.sheet.to_json()))
    }
    fn hash(&self) -> PyResult<String> {
        guard("Sheet", || Ok(self.sheet.hash()))
    }
    fn system(&self) -> PyResult<&'static str> {
        guard("Sheet", || {
            Ok(match system_of(&written_units(&self.sheet)) {
                System::Metric => "metric",
                System::Us => "us",
            })
        })
    }
    fn paths(&self) -> Vec<&'static str> {
        self.sheet.paths().collect()
    }
    fn text(&self, py: Python<'_>, path: &str) -> PyResult<Option<String>> {
        guard("Sheet", || self.sheet.get(path).map_err(|error| raise(py, error)))
    }
    /// Value of a written line: a quantity, or its text.
    fn value(&self, py: Python<'_>, path: &str) -> PyResult<Option<Py<PyAny>>> {
        guard("Sheet", || {
            let Some(words) = self.sheet.get(path).map_err(|error| raise(py, error))? else {
                return Ok(None);
            };
            let kind = if words == "none" { None } else { kind_of(py, path)? };
            let Some(kind) = kind else {
                return Ok(Some(PyString::new(py, &words).into_any().unbind()));
            };
            let reading = read_as(&words, kind).map_err(|error| raise(py, error))?;
            known(py, reading.si, kind, reading.unit)
        })
    }
    /// The sheet with some lines changed; `None` removes a line.
    fn with_lines(&self, py: Python<'_>, changes: Changes<'_>) -> PyResult<Self> {
        guard("Sheet", || {
            let mut sheet = self.sheet.clone();
            for (path, value) in changes {
                let changed = if value.is_none() {
                    sheet.remove(&path)
                } else {
                    sheet.set(&path, &text(&path, &value)?)
                };
                changed.map_err(|error| raise(py, error))?;
            }
            Ok(SheetHandle { sheet })
        })
    }
    /// The sheet with other parts.
    fn fit(&self, py: Python<'_>, lines: Vec<(String, String)>) -> PyResult<SheetHandle> {
        guard("Sheet.fit", || {
            let mut sheet = self.sheet.clone();
            let lines: Vec<(&str, &str)> = lines.iter().map(|(path, text)| (&**path, &**text)).collect();
            sheet.fit(&lines).map_err(|error| raise(py, error))?;
            Ok(SheetHandle { sheet })
        })
    }
    /// Type and document of a model that the sheet holds, and the fields that come from elsewhere.
    fn model(&self, py: Python<'_>, path: &str) -> PyResult<(&'static str, String, Vec<Origin>)> {
        guard("Sheet.model", || {
            let model = self.sheet.model(path).map_err(|error| raise(py, error))?;
            let elsewhere = model.elsewhere.iter().map(|on| (on.field.clone(), on.line, on.origin)).collect();
            Ok((model.model, model.to_json(), elsewhere))
        })
    }
    /// Remarks on the document: keys that were read under an old name, and readings that were dropped.
    fn remarks(&self) -> Vec<String> {
        self.sheet.remarks()
    }
    fn assess(&self) -> PyResult<AssessmentHandle> {
        guard("Sheet.assess", || Ok(AssessmentHandle { assessment: self.sheet.assess() }))
    }
    fn what_if(
        &self,
        py: Python<'_>,
        axes: Vec<AxisForm<'_>>,
        grid: bool,
        outputs: Vec<String>,
    ) -> PyResult<WhatIfHandle> {
        guard("Sheet.what_if", || {
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
            let written = written_units(&self.sheet);
            let system = system_of(&written);
            units.extend(written.into_iter().map(|(path, kind, unit)| (path.to_owned(), kind, unit)));
            let outputs: Vec<&str> = outputs.iter().map(String::as_str).collect();
            let what_if = self.sheet.what_if(made, !grid, &outputs).map_err(|error| raise(py, error))?;
            Ok(WhatIfHandle { what_if, lengths, units: Arc::new(Units { lines: units, system }) })
        })
    }
    fn choose(
        &self,
        py: Python<'_>,
        prices: &PriceListHandle,
        requirements: Vec<String>,
        limit: usize,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Chosen> {
        guard("Sheet.choose", || {
            let requirements: Vec<Requirement> = requirements
                .iter()
                .map(|text| Requirement::parse(text).map_err(|error| raise(py, error)))
                .collect::<PyResult<_>>()?;
            let mut watch = Watch::new(progress.as_ref());
            let chosen = py.detach(|| {
                let mut tell = |done| watch.tell(done);
                core::choose(&self.sheet, &prices.list, &requirements, limit, &mut tell)
            });
            let chosen = watch.answer(py, chosen.map(Some))?;
            let unit = unit_of(Mass::KIND, system_of(&written_units(&self.sheet)));
            let give = |choice: Choice| -> PyResult<ChoiceForm> {
                let mass = Quantity::result(py, Value::Number(choice.mass.si()), Mass::KIND, unit)?;
                Ok((choice.parts, choice.cost, mass))
            };
            let all = |choices: Vec<Choice>| choices.into_iter().map(give).collect::<PyResult<Vec<_>>>();
            Ok((
                chosen.kinds,
                all(chosen.feasible)?,
                chosen.more,
                all(chosen.front)?,
                chosen.rejected,
                chosen.not_known,
                chosen.dropped,
                chosen.evaluated,
            ))
        })
    }
}

/// Parts, cost and mass of a combination.
type ChoiceForm = (Vec<usize>, f64, Py<PyAny>);
/// Kinds; the feasible combinations, and whether there are more; the front; the rejected parts; unknown requirements; dropped readings; evaluations.
type Chosen = (
    Vec<String>,
    Vec<ChoiceForm>,
    bool,
    Vec<ChoiceForm>,
    Vec<(usize, String)>,
    Vec<String>,
    Vec<&'static str>,
    usize,
);

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
    let rows: Vec<Vec<String>> = payload.extract()?;
    let rows: Vec<Vec<&str>> = rows.iter().map(|row| row.iter().map(String::as_str).collect()).collect();
    let paths: Vec<&str> = paths.iter().map(String::as_str).collect();
    Axis::entries(&paths, &rows).map_err(refuse)
}

/// Values of a line for a sweep: numbers in coherent SI and their unit, or texts for a word or a marking.
#[pyfunction(name = "_sheet_values")]
fn values<'py>(
    py: Python<'py>,
    path: &str,
    values: &Bound<'py, PyAny>,
) -> PyResult<(Bound<'py, PyAny>, Option<&'static str>)> {
    guard("what_if", || {
        let Some(kind) = kind_of(py, path)? else {
            let wrong = || PyTypeError::new_err(format!("{path} = {} is no list of texts", brief(values)));
            if values.is_instance_of::<PyString>() {
                return Err(wrong());
            }
            let texts: Vec<String> = values.extract().map_err(|_| wrong())?;
            let rows: Vec<(String,)> = texts.into_iter().map(|text| (text,)).collect();
            return Ok((rows.into_pyobject(py)?.into_any(), None));
        };
        let (taken, unit) = take(values, path, kind)?;
        let numbers = match taken {
            Value::Number(si) => PyArray1::from_vec(py, vec![si]).into_any(),
            Value::Array(array) => py.import("numpy")?.call_method1("ascontiguousarray", (array,))?,
        };
        if numbers.cast::<PyArray1<f64>>().is_err() {
            return Err(PyTypeError::new_err(format!("{path} is a list of values, not a table of them")));
        }
        Ok((numbers, unit.map(|unit| unit.name)))
    })
}

/// A value of a line as a document writes it, and the unit in which it was given.
#[pyfunction(name = "_sheet_text")]
fn sheet_text(
    py: Python<'_>,
    path: &str,
    value: &Bound<'_, PyAny>,
) -> PyResult<(String, Option<&'static str>)> {
    guard("what_if", || {
        let words = text(path, value)?;
        let unit = kind_of(py, path)?.and_then(|kind| read_as(&words, kind).ok());
        Ok((words, unit.map(|reading| reading.unit.name)))
    })
}

/// Lines over values, and the wanted outputs.
#[pyclass(frozen, module = "axlewright._native", name = "WhatIfHandle")]
pub struct WhatIfHandle {
    what_if: core::WhatIf,
    lengths: Vec<usize>,
    units: Arc<Units>,
}

/// Units in which a sweep is shown: those of the lines that change or are written, otherwise the shop's.
struct Units {
    lines: Vec<(String, &'static Kind, &'static Unit)>,
    system: System,
}

impl Units {
    fn give<'py>(self: &Arc<Self>, py: Python<'py>, table: Table) -> PyResult<Bound<'py, PyAny>> {
        let units = self.clone();
        table::give(py, table, move |name, kind| {
            let given = units.lines.iter().find(|(path, of, _)| path == name && *of == kind);
            given.map_or_else(|| unit_of(kind, units.system), |(_, _, unit)| unit)
        })
    }
}

impl WhatIfHandle {
    /// Some rows, with the interpreter released.
    fn compute(
        &self,
        py: Python<'_>,
        rows: Range<usize>,
        threads: Option<usize>,
        progress: Option<&Py<PyAny>>,
    ) -> PyResult<Table> {
        let mut watch = Watch::new(progress);
        let table = py.detach(|| self.what_if.table(rows, threads, &mut |done| watch.tell(done)));
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

/// Some rows of a sweep, computed: an Arrow record batch, and a table.
#[pyclass(frozen, module = "axlewright.sheet", name = "Batch")]
pub struct Batch {
    table: Arc<Table>,
    units: Arc<Units>,
}

#[pymethods]
impl Batch {
    /// Number of rows.
    #[getter]
    fn rows(&self) -> usize {
        self.table.rows()
    }
    /// The rows as a table.
    fn table<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        guard("Batch", || self.units.give(py, Table::clone(&self.table)))
    }
    /// Schema for the Arrow PyCapsule interface: coherent SI, `unit` and `quantity` in each field's metadata.
    fn __arrow_c_schema__<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyCapsule>> {
        guard("Batch", || schema_capsule(py, &self.table))
    }
    /// Schema and data for the Arrow PyCapsule interface; a request for another schema is ignored.
    #[pyo3(signature = (requested_schema=None))]
    fn __arrow_c_array__<'py>(
        &self,
        py: Python<'py>,
        requested_schema: Option<Py<PyAny>>,
    ) -> PyResult<(Bound<'py, PyCapsule>, Bound<'py, PyCapsule>)> {
        let _ = requested_schema;
        guard("Batch", || batch_capsules(py, &self.table))
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
        Python::attach(|py| Ok(batch(&Arc::new(self.of.get().compute(py, 0..0, None, None)?))?.0))
    }
    fn next(&mut self) -> PyResult<Option<Array>> {
        if self.left.is_empty() {
            return Ok(None);
        }
        let stop = self.left.end.min(self.left.start + self.rows);
        let table = Python::attach(|py| self.compute(py, self.left.start..stop))?;
        Ok(Some(batch(&Arc::new(table))?.1))
    }
}

/// The findings of a sheet.
#[pyclass(frozen, module = "axlewright._native", name = "AssessmentHandle")]
pub struct AssessmentHandle {
    assessment: core::Assessment,
}

type Function = (&'static str, u32, &'static str);
type Numbers = Vec<Option<Py<PyAny>>>;
/// Path, system, question, form; value, low, high, margin, wanted, uncertainty; verdict, caution; lines it rests on, functions, missing
/// inputs, refusals, and both as a sentence.
type FindingForm = (
    (&'static str, &'static str, &'static str, &'static str),
    Numbers,
    (&'static str, bool, &'static str),
    (Vec<&'static str>, Vec<Function>),
    (Vec<&'static str>, Vec<(&'static str, String)>, String),
);

impl AssessmentHandle {
    fn answer(&self, path: &str) -> PyResult<&Answer> {
        self.assessment.answer(path).ok_or_else(|| PyKeyError::new_err(format!("there is no finding {path}")))
    }
}

#[pymethods]
impl AssessmentHandle {
    fn findings(&self, py: Python<'_>, units: &str) -> PyResult<Vec<FindingForm>> {
        guard("Assessment", || {
            let of = system(units)?;
            let give = |answer: &Answer| {
                let (kind, margin) = (answer.kind, answer.margin_kind);
                let numbers = [
                    (answer.value, kind),
                    (answer.low, kind),
                    (answer.high, kind),
                    (answer.margin, margin),
                    (answer.wanted, margin),
                    (answer.uncertainty, margin),
                ];
                let numbers = numbers.into_iter().map(|(si, kind)| known(py, si, kind, unit_of(kind, of)));
                let functions = self.assessment.functions(answer).into_iter();
                let unknown = answer.verdict == Verdict::NotKnown;
                let (needs, refused, said) = if unknown {
                    let missing = self.assessment.missing(answer);
                    (missing.needs, missing.refused, self.assessment.missing_text(answer))
                } else {
                    Default::default()
                };
                Ok((
                    (answer.path, answer.system, answer.question, answer.form),
                    numbers.collect::<PyResult<Numbers>>()?,
                    (answer.verdict.word(), answer.is_safety(), answer.caution),
                    (
                        self.assessment.rests_on(answer),
                        functions.map(|entry| (entry.path, entry.revision, entry.source)).collect(),
                    ),
                    (needs, refused, said),
                ))
            };
            self.assessment.answers().iter().map(give).collect()
        })
    }
    fn severity(&self) -> u8 {
        self.assessment.severity()
    }
    fn stamp(&self) -> PyResult<String> {
        guard("Assessment", || Ok(self.assessment.stamp()))
    }
    fn text(&self, units: &str, work: bool) -> PyResult<String> {
        guard("Assessment", || Ok(self.assessment.to_text(system(units)?, work)))
    }
    fn to_json(&self) -> PyResult<String> {
        guard("Assessment", || Ok(self.assessment.to_json()))
    }
    fn work(&self, path: &str, units: &str) -> PyResult<String> {
        guard("Assessment", || Ok(self.assessment.work(self.answer(path)?, system(units)?)))
    }
    fn limit(&self, path: &str, units: &str) -> PyResult<String> {
        guard("Assessment", || Ok(self.answer(path)?.limit_text(system(units)?)))
    }
    fn margin(&self, path: &str, units: &str) -> PyResult<String> {
        guard("Assessment", || Ok(self.answer(path)?.margin_text(system(units)?)))
    }
    fn compare(&self, other: &AssessmentHandle, units: &str) -> PyResult<String> {
        guard("Assessment", || Ok(self.assessment.compare(&other.assessment, system(units)?)))
    }
    /// Value of a line, written or not.
    fn value(&self, py: Python<'_>, path: &str, units: &str) -> PyResult<Option<Py<PyAny>>> {
        guard("Assessment", || {
            let of = system(units)?;
            let Some(kind) = kind_of(py, path)? else {
                let words = self.assessment.sheet().get(path).map_err(|error| raise(py, error))?;
                return Ok(words.map(|words| PyString::new(py, &words).into_any().unbind()));
            };
            let si = self.assessment.value(path).map_err(|error| raise(py, error))?;
            si.map_or(Ok(None), |si| known(py, si, kind, unit_of(kind, of)))
        })
    }
    #[expect(clippy::type_complexity, reason = "path, value and ground, said once")]
    fn assumed(
        &self,
        py: Python<'_>,
        units: &str,
    ) -> PyResult<Vec<(&'static str, Option<Py<PyAny>>, &'static str)>> {
        guard("Assessment", || {
            let of = system(units)?;
            let assumed = self.assessment.assumed().into_iter();
            let give = |one: core::Assumption| {
                Ok((one.path, known(py, one.si, one.kind, unit_of(one.kind, of))?, one.ground))
            };
            assumed.map(give).collect()
        })
    }
    /// Path, written value, computed value, allowed difference, the function and lines of the computed value; and all of it in words.
    #[expect(clippy::type_complexity, reason = "a row of three groups, said once")]
    fn contradictions(
        &self,
        py: Python<'_>,
        units: &str,
    ) -> PyResult<Vec<(&'static str, [Option<Py<PyAny>>; 3], (&'static str, Vec<&'static str>, String))>>
    {
        guard("Assessment", || {
            let of = system(units)?;
            let give = |found: &core::Contradiction| {
                let (kind, apart) = (found.kind, found.allowed_kind());
                let numbers = [
                    known(py, found.written, kind, unit_of(kind, of))?,
                    known(py, found.follows, kind, unit_of(kind, of))?,
                    known(py, found.allowed, apart, unit_of(apart, of))?,
                ];
                Ok((found.path, numbers, (found.by, found.from.clone(), found.text(of))))
            };
            self.assessment.contradictions().iter().map(give).collect()
        })
    }
    /// Path, tolerance, change and share.
    #[expect(clippy::type_complexity, reason = "a row of four, said once")]
    fn sensitivity(
        &self,
        py: Python<'_>,
        path: &str,
        units: &str,
    ) -> PyResult<Vec<(&'static str, Option<Py<PyAny>>, Option<Py<PyAny>>, f64)>> {
        guard("Assessment", || {
            let (of, answer) = (system(units)?, self.answer(path)?);
            let kind = answer.margin_kind;
            let rows = self.assessment.sensitivity(answer).into_iter();
            let give = |one: core::Sensitivity| {
                let tolerance = known(py, one.tolerance, one.kind, unit_of(one.kind, of))?;
                Ok((one.path, tolerance, known(py, one.change, kind, unit_of(kind, of))?, one.share))
            };
            rows.map(give).collect()
        })
    }
    /// Path, verdict, share that turns, shares, mean and deviation.
    #[pyo3(signature = (samples, seed, units, progress=None))]
    #[expect(clippy::type_complexity, reason = "a row of six, said once")]
    fn chances(
        &self,
        py: Python<'_>,
        samples: usize,
        seed: u64,
        units: &str,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Vec<(&'static str, &'static str, f64, [f64; 5], Option<Py<PyAny>>, Option<Py<PyAny>>)>>
    {
        guard("Assessment", || {
            let of = system(units)?;
            let mut watch = Watch::new(progress.as_ref());
            let told =
                py.detach(|| self.assessment.chances_told(samples, seed, &mut |done| watch.tell(done)));
            let chances = watch.answer(py, told)?;
            let give = |(one, answer): (core::Chance, &Answer)| {
                let kind = answer.margin_kind;
                let unit = unit_of(kind, of);
                let (mean, deviation) =
                    (known(py, one.mean, kind, unit)?, known(py, one.deviation, kind, unit)?);
                Ok((one.path, one.verdict.word(), one.turns, one.shares, mean, deviation))
            };
            chances.into_iter().zip(self.assessment.answers()).map(give).collect()
        })
    }
}

/// Parts for sale.
#[pyclass(frozen, module = "axlewright._native", name = "PriceListHandle")]
pub struct PriceListHandle {
    list: core::PriceList,
}

#[pymethods]
impl PriceListHandle {
    #[staticmethod]
    fn from_csv(py: Python<'_>, text: &str) -> PyResult<Self> {
        guard("PriceList", || {
            let list = core::PriceList::from_csv(text).map_err(|error| raise(py, error))?;
            Ok(PriceListHandle { list })
        })
    }
    #[staticmethod]
    fn from_text(py: Python<'_>, text: &str) -> PyResult<Self> {
        guard("PriceList", || {
            let list = core::PriceList::from_text(text).map_err(|error| raise(py, error))?;
            Ok(PriceListHandle { list })
        })
    }
    /// Part, kind, cost, mass and lines.
    #[expect(clippy::type_complexity, reason = "a row of five, said once")]
    fn parts(
        &self,
        py: Python<'_>,
    ) -> PyResult<Vec<(String, String, f64, Py<PyAny>, Vec<(String, String)>)>> {
        guard("PriceList", || {
            let unit = unit_of(Mass::KIND, System::Metric);
            let give = |one: &core::Candidate| {
                let mass = Quantity::result(py, Value::Number(one.mass.si()), Mass::KIND, unit)?;
                Ok((one.part.clone(), one.kind.clone(), one.cost, mass, one.lines.clone()))
            };
            self.list.parts.iter().map(give).collect()
        })
    }
}

/// The JSON Schema of a build sheet.
#[pyfunction(name = "_sheet_schema")]
fn sheet_schema() -> PyResult<String> {
    guard("schema", || Ok(axlewright::sheet::schema()))
}

pub fn register(m: &Bound<'_, PyModule>) -> PyResult<()> {
    m.add_class::<SheetHandle>()?;
    m.add_class::<WhatIfHandle>()?;
    m.add_class::<Batch>()?;
    m.add_class::<AssessmentHandle>()?;
    m.add_class::<PriceListHandle>()?;
    m.add_function(wrap_pyfunction!(values, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_text, m)?)?;
    m.add_function(wrap_pyfunction!(sheet_schema, m)?)
}
