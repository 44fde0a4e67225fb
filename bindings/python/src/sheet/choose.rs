//! Price lists, and the parts that meet requirements.
use super::shown::unit_of;
use crate::array::Value;
use crate::error::{guard, raise};
use crate::interpreter::released;
use crate::quantity::Quantity;
use crate::watch::Watch;
use axlewright::base::text::System;
use axlewright::sheet::{self as core, Choice, Requirement};
use axlewright::units::{Mass, Quantity as _};
use pyo3::prelude::*;

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
            let list = released(py, || core::PriceList::from_csv(text)).map_err(|error| raise(py, error))?;
            Ok(PriceListHandle { list })
        })
    }
    #[staticmethod]
    fn from_text(py: Python<'_>, text: &str) -> PyResult<Self> {
        guard("PriceList", || {
            let list = released(py, || core::PriceList::from_text(text)).map_err(|error| raise(py, error))?;
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

/// Finding, verdict now and with the parts.
type WorseForm = (&'static str, &'static str, &'static str);
/// Parts, cost and mass of a combination, and the findings that are worse with it.
type ChoiceForm = (Vec<usize>, f64, Py<PyAny>, Vec<WorseForm>);
/// Kinds; the feasible combinations, and whether there are more; the front; the rejected parts; unknown requirements; dropped readings; evaluations.
pub type Chosen = (
    Vec<String>,
    Vec<ChoiceForm>,
    bool,
    Vec<ChoiceForm>,
    Vec<(usize, String)>,
    Vec<String>,
    Vec<&'static str>,
    usize,
);

/// Parts that meet every requirement on a sheet.
pub fn choose(
    py: Python<'_>,
    sheet: &core::Sheet,
    prices: &PriceListHandle,
    requirements: &[String],
    limit: usize,
    progress: Option<&Py<PyAny>>,
) -> PyResult<Chosen> {
    let requirements: Vec<Requirement> = requirements
        .iter()
        .map(|text| Requirement::parse(text).map_err(|error| raise(py, error)))
        .collect::<PyResult<_>>()?;
    let mut watch = Watch::new(progress);
    let chosen = released(py, || {
        let mut tell = |done| watch.tell(done);
        core::choose(sheet, &prices.list, &requirements, limit, &mut tell)
    });
    let chosen = watch.answer(py, chosen.map(Some))?;
    let unit = unit_of(Mass::KIND, sheet.system());
    let give = |choice: Choice| -> PyResult<ChoiceForm> {
        let mass = Quantity::result(py, Value::Number(choice.mass.si()), Mass::KIND, unit)?;
        let worse = choice.worse.iter().map(|one| (one.finding, one.now.word(), one.then.word())).collect();
        Ok((choice.parts, choice.cost, mass, worse))
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
}
