//! Answers of a sheet: every finding with its value, its limit, its margin and its verdict.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::applies::{Applies, Asked};
use super::contradiction::{Contradiction, contradictions};
use super::graph::{FindingInfo, Graph, MarginSlots, Slot};
use super::margin::{margin, margin_kind, value_kind, verdict};
use super::plan::{Origin, Plan, Refusals};
use super::worst::counted;
use crate::base::text::{did_you_mean, shortened};
use crate::base::work::Work;
use crate::units::Kind;
use crate::{Error, Result, Verdict};

/// The findings of one sheet.
#[derive(Clone)]
pub struct Assessment {
    pub(super) sheet: Sheet,
    pub(super) plan: Plan,
    pub(super) values: Vec<f64>,
    pub(super) refusals: Refusals,
    answers: Vec<Answer>,
    /// Whether each of them is asked.
    pub(super) asked: Vec<Asked>,
    pub(super) contradictions: Vec<Contradiction>,
}

/// The answer to one question.
#[derive(Debug, Clone, Copy)]
pub struct Answer {
    /// Its name: `front.coil_bind`.
    pub path: &'static str,
    /// The system that asks.
    pub system: &'static str,
    /// The question.
    pub question: &'static str,
    /// Value that is held against the limit, in coherent SI; NaN if not known.
    pub value: f64,
    /// The least that is allowed; NaN where there is no least, or it is not known.
    pub low: f64,
    /// The largest value that is allowed; NaN where there is no upper limit, or it is not known.
    pub high: f64,
    /// Kind of value and limits.
    pub kind: &'static Kind,
    /// `ratio`, `difference` or `place in a band`.
    pub form: &'static str,
    /// The margin, in coherent SI; NaN where it is not known.
    pub margin: f64,
    /// The margin that is wanted.
    pub wanted: f64,
    /// Kind of the margins.
    pub margin_kind: &'static Kind,
    /// Verdict on the margin.
    pub verdict: Verdict,
    /// Standard uncertainty of the margin from the tolerances, to first order; NaN where the margin is not known.
    pub uncertainty: f64,
    /// The margin with every tolerance counted against it: each as far as its bound reaches, or two standard deviations. The verdict is taken
    /// there. NaN where the margin is not known, or where something cannot be computed within a tolerance.
    pub worst: f64,
    /// Caution for a finding that can hurt someone; empty for others.
    pub caution: &'static str,
}

/// Missing inputs of a finding.
#[derive(Debug, Clone, PartialEq)]
pub struct Missing {
    /// Lines that would have to be written.
    pub needs: Vec<&'static str>,
    /// Lines that stay empty although what they follow from is known, and why.
    pub refused: Vec<(&'static str, String)>,
}

/// A value that nobody wrote.
#[derive(Debug, Clone, Copy)]
pub struct Assumption {
    /// The line.
    pub path: &'static str,
    /// The value in coherent SI.
    pub si: f64,
    /// Its kind.
    pub kind: &'static Kind,
    /// On what ground.
    pub ground: &'static str,
}

/// One step of the work behind a finding.
pub(super) enum WorkStep {
    Function(Work),
    Own { line: Slot, formula: &'static str, source: &'static str, inputs: Vec<Slot> },
    Part { line: Slot, marking: Slot },
    Pick { line: Slot, inputs: Vec<Slot> },
}

impl Answer {
    /// True if it can hurt someone.
    pub fn is_safety(&self) -> bool {
        !self.caution.is_empty()
    }

    /// Severity: 0 meets, 1 tight, 2 short. A finding that is not known counts as tight if it can hurt someone, otherwise 0; one that does
    /// not apply counts 0.
    pub fn severity(&self) -> u8 {
        match self.verdict {
            Verdict::Meets | Verdict::DoesNotApply => 0,
            Verdict::Tight => 1,
            Verdict::Short => 2,
            Verdict::NotKnown => u8::from(self.is_safety()),
        }
    }

    /// Takes into account whether it is asked: an answer that does not apply has no numbers.
    fn apply(&mut self, asked: &Asked, plain: Verdict) {
        self.verdict = asked.verdict_of(plain, self.verdict);
        if self.verdict == Verdict::DoesNotApply {
            (self.value, self.margin, self.uncertainty, self.worst) =
                (f64::NAN, f64::NAN, f64::NAN, f64::NAN);
        }
    }
}

impl Sheet {
    /// Walks the sheet through everything that the systems compute and ask.
    pub fn assess(&self) -> Assessment {
        let plan = Plan::whole(self);
        let mut values = plan.start(self);
        let mut refusals = Vec::new();
        plan.run(self, &mut values, &mut refusals);
        let graph = Graph::get();
        let mut answers: Vec<Answer> =
            graph.findings.iter().map(|finding| answer(finding, &values)).collect();
        for (answer, counted) in answers.iter_mut().zip(counted(self, &plan, &values)) {
            answer.verdict = counted.verdict;
            if !answer.margin.is_nan() {
                (answer.uncertainty, answer.worst) = (counted.uncertainty, counted.worst);
            }
        }
        let contradictions = contradictions(self, &plan, &values);
        let doubted: Vec<Slot> =
            contradictions.iter().flat_map(|found| found.doubted.iter().copied()).collect();
        for (answer, finding) in answers.iter_mut().zip(&graph.findings) {
            if answer.verdict == Verdict::Meets && is_doubted(&plan, finding, &doubted) {
                answer.verdict = Verdict::Tight;
            }
        }
        let asked = graph.findings.iter().zip(&answers).map(|(finding, answer)| {
            let value = |slot: Slot| values[usize::from(slot)];
            let is_written = |slot: Slot| plan.origins[usize::from(slot)] == Origin::Written;
            if !Applies::speaks(self, finding, value, is_written) {
                return Asked::Yes;
            }
            let asked = Applies::new(self, finding, |_| false).asked(value, |slot| doubted.contains(&slot));
            asked.beside(verdict(finding, answer.margin, answer.wanted))
        });
        let asked: Vec<Asked> = asked.collect();
        for ((answer, asked), finding) in answers.iter_mut().zip(&asked).zip(&graph.findings) {
            answer.apply(asked, verdict(finding, answer.margin, answer.wanted));
        }
        Assessment { sheet: self.clone(), plan, values, refusals, answers, asked, contradictions }
    }
}

/// True if a finding rests on a line that contradicts others, or on one of those: it is then no better than tight.
pub(super) fn is_doubted(plan: &Plan, finding: &FindingInfo, doubted: &[Slot]) -> bool {
    if doubted.is_empty() {
        return false;
    }
    let asked: Vec<Slot> = finding.slots().collect();
    plan.rests_on(&asked).iter().any(|slot| doubted.contains(slot))
}

fn answer(finding: &FindingInfo, values: &[f64]) -> Answer {
    let value = |slot: Slot| values[usize::from(slot)];
    let (of, low, high) = match finding.margin {
        MarginSlots::Ratio { capacity, demand } => (demand, f64::NAN, value(capacity)),
        MarginSlots::Remaining { value: of } => (of, 0.0, f64::NAN),
        MarginSlots::AtLeast { value: of, least } => (of, value(least), f64::NAN),
        MarginSlots::AtMost { value: of, most } => (of, f64::NAN, value(most)),
        MarginSlots::Band { value: of, low, high } => (of, value(low), value(high)),
    };
    let (margin, wanted) = (margin(finding, value), value(finding.wanted));
    Answer {
        path: finding.path,
        system: finding.system,
        question: finding.finding.question,
        value: value(of),
        low,
        high,
        kind: value_kind(of),
        form: match finding.margin {
            MarginSlots::Ratio { .. } => "ratio",
            MarginSlots::Remaining { .. } | MarginSlots::AtLeast { .. } | MarginSlots::AtMost { .. } => {
                "difference"
            }
            MarginSlots::Band { .. } => "place in a band",
        },
        margin,
        wanted,
        margin_kind: margin_kind(finding),
        verdict: verdict(finding, margin, wanted),
        uncertainty: if margin.is_nan() { f64::NAN } else { 0.0 },
        worst: margin,
        caution: finding.finding.caution,
    }
}

impl Assessment {
    /// The sheet that was assessed.
    pub fn sheet(&self) -> &Sheet {
        &self.sheet
    }

    /// The answers, in the order of the systems.
    pub fn answers(&self) -> &[Answer] {
        &self.answers
    }

    /// The answer of this name.
    pub fn answer(&self, path: &str) -> Option<&Answer> {
        self.answers.iter().find(|answer| answer.path == path)
    }

    /// Message for a name that no answer has.
    pub fn no_answer(&self, path: &str) -> String {
        let known = self.answers.iter().map(|answer| answer.path);
        let of_this_name: Vec<String> = known
            .clone()
            .filter(|known| known.rsplit_once('.').is_some_and(|(_, name)| name == path))
            .map(|known| format!("`{known}`"))
            .collect();
        let near = match of_this_name.as_slice() {
            [] => did_you_mean(path, known),
            some => format!("; did you mean {}?", some.join(" or ")),
        };
        format!("there is no finding `{}`{near}", shortened(path))
    }

    /// The worst of the answers: 0 meets, 1 tight, 2 short. Not a verdict of the vehicle: it is for whoever has to stop at it.
    pub fn severity(&self) -> u8 {
        self.answers.iter().map(Answer::severity).max().unwrap_or(0)
    }

    /// The value of a line in coherent SI, written or not; nothing where it is not known.
    pub fn value(&self, path: &str) -> Result<Option<f64>> {
        let slot = super::line_of(path)?;
        Ok(Some(self.values[usize::from(slot)]).filter(|value| !value.is_nan()))
    }

    /// Written lines that contradict other written lines.
    pub fn contradictions(&self) -> &[Contradiction] {
        &self.contradictions
    }

    /// Those of the contradictions on which an answer rests.
    pub fn doubts(&self, answer: &Answer) -> Vec<&Contradiction> {
        let reached = self.reached(answer);
        let rests = |found: &&Contradiction| found.doubted.iter().any(|slot| reached.contains(slot));
        self.contradictions.iter().filter(rests).collect()
    }

    /// Values that nobody wrote and on which something rests.
    pub fn assumed(&self) -> Vec<Assumption> {
        let graph = Graph::get();
        let asked: Vec<Slot> = graph
            .findings
            .iter()
            .zip(&self.answers)
            .filter(|(_, answer)| !answer.margin.is_nan())
            .flat_map(|(finding, _)| finding.slots().chain([finding.wanted]))
            .collect();
        let rests = self.plan.rests_on(&asked);
        let assumed = |slot: Slot| {
            let ground = graph.info(slot).line.assumed.filter(|_| rests.contains(&slot));
            let is = self.plan.origins[usize::from(slot)] == Origin::Assumed;
            let (si, ground) = ground.filter(|_| is)?;
            Some(Assumption { path: graph.info(slot).path, si, kind: value_kind(slot), ground })
        };
        (0..graph.slots.len() as Slot).filter_map(assumed).collect()
    }

    /// Lines to write before any margin of an answer is enough, as texts: each is the ground of an assumption without limit, such as that on a
    /// clearance that nobody wrote. Empty if the wanted margin has a limit.
    pub fn to_write(&self, answer: &Answer) -> Vec<&'static str> {
        let graph = Graph::get();
        let wanted = graph.finding(answer.path).map(|at| graph.findings[at].wanted);
        let Some(wanted) = wanted.filter(|_| answer.wanted.is_infinite()) else { return vec![] };
        let open = self.plan.rests_on(&[wanted]).into_iter().filter_map(|slot| {
            let is = self.plan.origins[usize::from(slot)] == Origin::Assumed;
            graph.info(slot).line.assumed.filter(|(si, _)| is && si.is_infinite())
        });
        open.map(|(_, ground)| ground).collect()
    }

    /// The lines on which an answer rests: those that were written or assumed. If it does not apply, what says so: the parts that are
    /// `none`, or the choice.
    pub fn rests_on(&self, answer: &Answer) -> Vec<&'static str> {
        let graph = Graph::get();
        if let Some(Asked::No(by)) = self.is_asked(answer) {
            let slots: Vec<Slot> = by.iter().filter_map(|path| graph.slot(path)).collect();
            let reached = self.plan.rests_on(&slots);
            let written = reached.iter().filter(|slot| self.sheet.values.contains_key(slot));
            let none = by.iter().copied().filter(|path| self.sheet.none.contains(path));
            return none.chain(written.map(|slot| graph.info(*slot).path)).collect();
        }
        let leaves = self.reached(answer).into_iter().filter(|slot| {
            matches!(self.plan.origins[usize::from(*slot)], Origin::Written | Origin::Assumed)
        });
        leaves.map(|slot| graph.info(slot).path).collect()
    }

    /// Missing inputs of an answer that is not known.
    pub fn missing(&self, answer: &Answer) -> Missing {
        let graph = Graph::get();
        let mut needs: Vec<Slot> =
            self.slots(answer).into_iter().flat_map(|slot| self.plan.needs(slot)).collect();
        let reached = self.reached(answer);
        needs.extend(
            self.refusals
                .iter()
                .filter_map(|(slot, error)| {
                    let line = self.plan.filled(*slot, &reached)?;
                    self.plan.lacked(line, error)
                })
                .flat_map(|line| self.plan.needs(line)),
        );
        needs.sort_unstable();
        needs.dedup();
        let refused = self.refusals.iter();
        let refused = refused.filter_map(|(slot, error)| Some((self.plan.filled(*slot, &reached)?, error)));
        let lacking = self.plan.lacking(&self.values, &reached);
        Missing {
            needs: needs.into_iter().map(|slot| graph.info(slot).path).collect(),
            refused: refused
                .map(|(slot, error)| {
                    let line = self.plan.lacked(slot, error).map(|line| graph.info(line));
                    let sentence = match (error, line) {
                        (Error::Missing { why, .. }, Some(info)) if info.line.written => {
                            format!("{why}: write {}", info.path)
                        }
                        (Error::Missing { why, .. }, _) => (*why).to_owned(),
                        _ => error.to_string(),
                    };
                    (graph.info(slot).path, sentence)
                })
                .chain(lacking.map(|(slot, lacking)| (graph.info(slot).path, lacking.to_owned())))
                .collect(),
        }
    }

    /// Whether a finding is asked.
    pub(super) fn is_asked(&self, answer: &Answer) -> Option<&Asked> {
        self.asked.get(Graph::get().finding(answer.path)?)
    }

    /// The lines that a finding holds against each other; none if it does not apply.
    fn slots(&self, answer: &Answer) -> Vec<Slot> {
        if answer.verdict == Verdict::DoesNotApply {
            return vec![];
        }
        let graph = Graph::get();
        let finding = graph.finding(answer.path).map(|at| &graph.findings[at]);
        finding.map_or_else(Vec::new, |finding| finding.slots().chain([finding.wanted]).collect())
    }

    pub(super) fn reached(&self, answer: &Answer) -> Vec<Slot> {
        self.plan.rests_on(&self.slots(answer))
    }

    /// The calls behind an answer, in order.
    pub(super) fn work_steps(&self, answer: &Answer) -> Vec<WorkStep> {
        let reached = self.reached(answer);
        let nodes =
            self.plan.nodes.iter().filter(|node| node.outputs().any(|(_, slot)| reached.contains(&slot)));
        nodes.filter_map(|node| self.work_of(node)).collect()
    }

    fn work_of(&self, node: &super::plan::Node) -> Option<WorkStep> {
        use super::graph::Calls;
        let (_, line) = node.outputs().next()?;
        Some(match node.call() {
            Calls::Function(entry, _) => {
                let inputs: Vec<f64> =
                    node.inputs().iter().map(|input| self.values[usize::from(*input)]).collect();
                let written = node.inputs().iter().map(|input| self.sheet.text_of(*input));
                WorkStep::Function(entry.work(&inputs).ok()?.as_written(written))
            }
            Calls::Combine(combine) => self.glue(node, line, combine.how.formula(), combine.source),
            Calls::Rule(rule, _) => self.glue(node, line, rule.formula, rule.source),
            Calls::Part(_) => WorkStep::Part { line, marking: node.inputs()[0] },
            Calls::Pick => WorkStep::Pick { line, inputs: node.inputs().to_vec() },
        })
    }

    fn glue(
        &self,
        node: &super::plan::Node,
        line: Slot,
        formula: &'static str,
        source: &'static str,
    ) -> WorkStep {
        let mut inputs: Vec<Slot> = Vec::new();
        for input in node.inputs() {
            if self.plan.is_known(*input) && !inputs.contains(input) {
                inputs.push(*input);
            }
        }
        WorkStep::Own { line, formula, source, inputs }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn in_the_middle_of_a_band_a_tolerance_still_counts() -> Result<()> {
        let mut sheet = Sheet::new("");
        for scale in ["left_front", "right_front", "left_rear", "right_rear"] {
            sheet.set(&format!("scales.{scale}"), "600 kg")?;
        }
        sheet.set("scales.right_front", "600 kg +/- 12 kg")?;
        for (line, text) in
            [("vehicle.wheelbase", "2.5 m"), ("front.track", "1.5 m"), ("rear.track", "1.5 m")]
        {
            sheet.set(line, text)?;
        }
        let assessment = sheet.assess();
        let known = assessment.answer("vehicle.diagonal").map(|answer| (answer.margin, answer.uncertainty));
        // d((m2 + m3) / m) / dm2 = (m - m2 - m3) / m², and 12 / √3 is one standard deviation.
        let wanted = 0.5 / 2400.0 * 12.0 / 3.0_f64.sqrt();
        assert!(
            known.is_some_and(|(margin, u)| (margin - 0.01).abs() < 1e-12 && (u / wanted - 1.0).abs() < 1e-4)
        );
        Ok(())
    }
}
