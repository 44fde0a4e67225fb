//! Reasons why a part stands in no combination.
#![expect(
    clippy::indexing_slicing,
    reason = "bounds and requirements are numbered by their place in their own list"
)]

use super::buckets::Point;
use super::requirement::{Test, verdict_of};
use super::{Chooser, Requirement, plain};
use crate::Verdict;
use crate::base::text::{DIGITS, System, print, said_in, shop_units};
use crate::units::{Mass, Quantity};

impl Chooser<'_> {
    /// Distance of a value outside a bound, as a share of the bound.
    pub(super) fn distance(&self, bound: usize, value: f64) -> f64 {
        let of = &self.bounds[bound];
        let beyond =
            if value < of.low { (of.low - value) / of.low.abs() } else { (value - of.high) / of.high.abs() };
        if beyond.is_nan() { f64::INFINITY } else { beyond }
    }

    pub(super) fn why_not(
        &self,
        bound: usize,
        value: f64,
        reason: Option<String>,
        requirements: &[Requirement],
    ) -> String {
        let of = &self.bounds[bound];
        let shown = match of.kind {
            _ if value.is_nan() => reason.unwrap_or_else(|| "not known".to_owned()),
            Some(kind) => said_in([value], &shop_units(kind), DIGITS),
            None => verdict_of(value).map_or("", Verdict::word).to_owned(),
        };
        if let Some((now, _)) = of.now {
            return format!(
                "{} = {shown}, {} now; required: {}",
                of.output,
                now.word(),
                requirements[of.requirement].text()
            );
        }
        format!("{} = {shown}; required: {}", of.output, requirements[of.requirement].text())
    }

    pub(super) fn too_much(
        &self,
        cheapest: &Point,
        lightest: Option<&Point>,
        most: (i128, i128),
        requirements: &[Requirement],
    ) -> String {
        let text = |cost: bool| {
            requirements
                .iter()
                .find(|requirement| match requirement.test {
                    Test::Cost { .. } => cost,
                    Test::Mass { .. } => !cost,
                    _ => false,
                })
                .map_or("", Requirement::text)
        };
        if cheapest.cost > most.0 {
            return format!(
                "the cheapest combination with it costs {}; required: {}",
                plain((cheapest.cost, 0)).0,
                text(true)
            );
        }
        if let Some(point) = lightest.filter(|point| point.mass > most.1) {
            return format!(
                "the lightest combination with it weighs {}; required: {}",
                print(plain((0, point.mass)).1.si(), Mass::KIND, System::Metric),
                text(false)
            );
        }
        format!(
            "no combination with it is both cheap and light enough; required: {}, {}",
            text(true),
            text(false)
        )
    }
}
