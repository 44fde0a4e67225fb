//! The findings of a sheet.
use super::shown::{self, kind_of, known, system};
use crate::error::{guard, raise};
use crate::interpreter::released;
use crate::watch::{Watch, watched};
use axlewright::Verdict;
use axlewright::sheet::{self as core, Answer};
use pyo3::exceptions::PyKeyError;
use pyo3::prelude::*;
use pyo3::types::PyString;

/// The findings of a sheet.
#[pyclass(frozen, module = "axlewright._native", name = "AssessmentHandle")]
pub struct AssessmentHandle {
    pub assessment: core::Assessment,
}

type Function = (&'static str, u32, &'static str);
type Numbers = Vec<Option<Py<PyAny>>>;
/// Path, system, question, form; value, low, high, margin, wanted, uncertainty, worst; verdict, caution; lines it rests on, functions, lines to
/// write; missing inputs, refusals, and both as a sentence.
type FindingForm = (
    (&'static str, &'static str, &'static str, &'static str),
    Numbers,
    (&'static str, bool, &'static str),
    (Vec<&'static str>, Vec<Function>, Vec<&'static str>),
    (Vec<&'static str>, Vec<(&'static str, String)>, String),
);

impl AssessmentHandle {
    fn answer(&self, path: &str) -> PyResult<&Answer> {
        self.assessment.answer(path).ok_or_else(|| PyKeyError::new_err(self.assessment.no_answer(path)))
    }
}

/// Form of a report.
pub fn form(
    units: Option<&str>,
    width: usize,
    all: bool,
    work: bool,
    colour: bool,
) -> PyResult<core::Report> {
    Ok(core::Report { system: units.map(system).transpose()?, width, all, work, colour })
}

/// Finding, line, its tolerance, change of the margin, share of its variance, and all of it in words.
type SensitivityForm = (&'static str, &'static str, Option<Py<PyAny>>, Option<Py<PyAny>>, f64, String);

#[pymethods]
impl AssessmentHandle {
    /// The findings; numbers in the units of the sheet.
    fn findings(&self, py: Python<'_>) -> PyResult<Vec<FindingForm>> {
        guard("Assessment", || {
            let units = self.assessment.units(None);
            let grounds = |answer: &Answer| {
                let functions = self.assessment.functions(answer).into_iter();
                let functions = functions.map(|entry| (entry.path, entry.revision, entry.source)).collect();
                let lacking = if answer.verdict == Verdict::NotKnown {
                    let missing = self.assessment.missing(answer);
                    (missing.needs, missing.refused, self.assessment.missing_text(answer))
                } else {
                    Default::default()
                };
                let write = self.assessment.to_write(answer);
                ((self.assessment.rests_on(answer), functions, write), lacking)
            };
            let answers = self.assessment.answers();
            let grounds: Vec<_> = watched(py, || Ok(answers.iter().map(grounds).collect()))?;
            let give = |(answer, (grounds, lacking)): (&Answer, _)| {
                let (kind, margin) = (answer.kind, answer.margin_kind);
                let numbers = [
                    (answer.value, kind),
                    (answer.low, kind),
                    (answer.high, kind),
                    (answer.margin, margin),
                    (answer.wanted, margin),
                    (answer.uncertainty, margin),
                    (answer.worst, margin),
                ];
                let numbers =
                    numbers.into_iter().map(|(si, kind)| known(py, si, kind, units.of_answer(answer, kind)));
                Ok((
                    (answer.path, answer.system, answer.question, answer.form),
                    numbers.collect::<PyResult<Numbers>>()?,
                    (answer.verdict.word(), answer.is_safety(), answer.caution),
                    grounds,
                    lacking,
                ))
            };
            answers.iter().zip(grounds).map(give).collect()
        })
    }
    /// Message for a name that no finding has.
    fn no_finding(&self, path: &str) -> String {
        self.assessment.no_answer(path)
    }
    fn severity(&self) -> u8 {
        self.assessment.severity()
    }
    fn stamp(&self) -> PyResult<String> {
        guard("Assessment", || Ok(self.assessment.stamp()))
    }
    /// The report; without units in those of the sheet.
    #[pyo3(signature = (units, width, all, work, colour))]
    fn report(
        &self,
        py: Python<'_>,
        units: Option<&str>,
        width: usize,
        all: bool,
        work: bool,
        colour: bool,
    ) -> PyResult<String> {
        guard("Assessment", || {
            let report = form(units, width, all, work, colour)?;
            watched(py, || Ok(self.assessment.report(&report)))
        })
    }
    /// The findings of a name, with their work.
    #[pyo3(signature = (name, units, width, colour))]
    fn report_on(
        &self,
        py: Python<'_>,
        name: &str,
        units: Option<&str>,
        width: usize,
        colour: bool,
    ) -> PyResult<String> {
        guard("Assessment", || {
            let report = form(units, width, false, false, colour)?;
            watched(py, || self.assessment.report_on(name, &report))
        })
    }
    /// The findings as a table: `markdown` or `csv`.
    fn table(&self, py: Python<'_>, format: &str, units: Option<&str>) -> PyResult<String> {
        guard("Assessment", || {
            let report = form(units, 80, false, false, false)?;
            watched(py, || {
                Ok(match format {
                    "csv" => self.assessment.to_csv(&report),
                    _ => self.assessment.to_markdown(&report),
                })
            })
        })
    }
    /// Lines to measure next, each group with the findings that it answers.
    fn measure_next(&self, py: Python<'_>) -> PyResult<Vec<(Vec<&'static str>, Vec<&'static str>)>> {
        guard("Assessment", || {
            let next = watched(py, || Ok(self.assessment.measure_next()))?;
            Ok(next.into_iter().map(|next| (next.lines, next.answers)).collect())
        })
    }
    fn to_json(&self, py: Python<'_>) -> PyResult<String> {
        guard("Assessment", || watched(py, || Ok(self.assessment.to_json())))
    }
    fn work(&self, py: Python<'_>, path: &str, units: &str) -> PyResult<String> {
        guard("Assessment", || {
            let (answer, of) = (self.answer(path)?, system(units)?);
            watched(py, || Ok(self.assessment.work(answer, of)))
        })
    }
    /// The findings as rows of texts, as a person reads them; the first row names the columns.
    #[pyo3(signature = (units))]
    fn rows(&self, py: Python<'_>, units: Option<&str>) -> PyResult<Vec<Vec<String>>> {
        guard("Assessment", || {
            let report = form(units, 80, false, false, false)?;
            let rows = watched(py, || Ok(self.assessment.rows(&report)))?;
            let head = core::COLUMNS.map(str::to_owned);
            Ok([head].into_iter().chain(rows).map(Vec::from).collect())
        })
    }
    /// Value of a line, written or not, in the unit of the sheet.
    fn value(&self, py: Python<'_>, path: &str) -> PyResult<Option<Py<PyAny>>> {
        guard("Assessment", || {
            let Some(kind) = kind_of(py, path)? else {
                let words = self.assessment.sheet().get(path).map_err(|error| raise(py, error))?;
                return Ok(words.map(|words| PyString::new(py, &words).into_any().unbind()));
            };
            let si = self.assessment.value(path).map_err(|error| raise(py, error))?;
            si.map_or(Ok(None), |si| known(py, si, kind, self.assessment.units(None).of_line(path, kind)))
        })
    }
    #[expect(clippy::type_complexity, reason = "path, value and ground, said once")]
    fn assumed(&self, py: Python<'_>) -> PyResult<Vec<(&'static str, Option<Py<PyAny>>, &'static str)>> {
        guard("Assessment", || {
            let units = self.assessment.units(None);
            let assumed = self.assessment.assumed().into_iter();
            let give = |one: core::Assumption| {
                Ok((one.path, known(py, one.si, one.kind, units.of_line(one.path, one.kind))?, one.ground))
            };
            assumed.map(give).collect()
        })
    }
    /// Path, written value, computed value, allowed difference, the function and lines of the computed value; and all of it in words.
    #[expect(clippy::type_complexity, reason = "a row of three groups, said once")]
    fn contradictions(
        &self,
        py: Python<'_>,
        system: &str,
    ) -> PyResult<Vec<(&'static str, [Option<Py<PyAny>>; 3], (&'static str, Vec<&'static str>, String))>>
    {
        guard("Assessment", || {
            let (units, of) = (self.assessment.units(None), shown::system(system)?);
            let give = |found: &core::Contradiction| {
                let unit = |kind| units.of_line(found.path, kind);
                let (kind, apart) = (found.kind, found.allowed_kind());
                let numbers = [
                    known(py, found.written, kind, unit(kind))?,
                    known(py, found.follows, kind, unit(kind))?,
                    known(py, found.allowed, apart, unit(apart))?,
                ];
                Ok((found.path, numbers, (found.by, found.from.clone(), found.text(of))))
            };
            self.assessment.contradictions().iter().map(give).collect()
        })
    }
    /// The tolerances that move the margin of a finding, the largest first.
    fn sensitivity(&self, py: Python<'_>, path: &str, system: &str) -> PyResult<Vec<SensitivityForm>> {
        guard("Assessment", || {
            let (of, answer) = (shown::system(system)?, self.answer(path)?);
            let units = self.assessment.units(None);
            let kind = answer.margin_kind;
            let rows = watched(py, || Ok(self.assessment.sensitivity(answer)))?.into_iter();
            let give = |one: core::Sensitivity| {
                let tolerance = known(py, one.tolerance, one.kind, units.of_line(one.path, one.kind))?;
                let change = known(py, one.margin_change, kind, units.of_answer(answer, kind))?;
                Ok((answer.path, one.path, tolerance, change, one.share, one.text(answer, of)))
            };
            rows.map(give).collect()
        })
    }
    /// Path, verdict, share that turns, shares, mean and deviation.
    #[pyo3(signature = (samples, seed, progress=None))]
    #[expect(clippy::type_complexity, reason = "a row of six, said once")]
    fn chances(
        &self,
        py: Python<'_>,
        samples: usize,
        seed: u64,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Vec<(&'static str, &'static str, f64, [f64; 5], Option<Py<PyAny>>, Option<Py<PyAny>>)>>
    {
        guard("Assessment", || {
            let units = self.assessment.units(None);
            let mut watch = Watch::new(progress.as_ref());
            let told =
                released(py, || self.assessment.chances_told(samples, seed, &mut |done| watch.tell(done)));
            let chances = watch.answer(py, told)?;
            let give = |(one, answer): (core::Chance, &Answer)| {
                let kind = answer.margin_kind;
                let unit = units.of_answer(answer, kind);
                let (mean, deviation) =
                    (known(py, one.mean, kind, unit)?, known(py, one.deviation, kind, unit)?);
                Ok((one.path, one.verdict.word(), one.turns, one.shares, mean, deviation))
            };
            chances.into_iter().zip(self.assessment.answers()).map(give).collect()
        })
    }
}
