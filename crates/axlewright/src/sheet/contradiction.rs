//! Lines that are written although they follow from other written lines, and differ from what follows.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::graph::{Calls, Graph, Slot, SlotInfo, StepInfo};
use super::margin::{difference, value_kind};
use super::plan::{Node, Plan};
use super::uncertainty::reach;
use crate::base::section::Holds;
use crate::units::Kind;

/// A written line that contradicts other written lines.
#[derive(Debug, Clone)]
pub struct Contradiction {
    /// The line.
    pub path: &'static str,
    /// The written value, in coherent SI.
    pub written: f64,
    /// The value that follows from the others, or the bound of the line, in coherent SI.
    pub follows: f64,
    /// Kind of what the others give: empty for the value of the line, `at most` or `at least` for a bound of it.
    pub bound: &'static str,
    /// Allowed difference: the tolerances of all of them together, a bound as it is and a standard deviation twice; 1 % of the written
    /// value for a line without one.
    pub allowed: f64,
    /// Kind of what is written and what follows.
    pub kind: &'static Kind,
    /// Function or step of that value.
    pub by: &'static str,
    /// The written lines from which it follows.
    pub from: Vec<&'static str>,
    /// The line and those lines: one of them is wrong.
    pub(super) doubted: Vec<Slot>,
}

impl Contradiction {
    /// Kind of a difference of both.
    pub fn allowed_kind(&self) -> &'static Kind {
        difference(self.kind)
    }
}

/// Uncertainty of a line without a tolerance, as a share of its value.
const PLAIN: f64 = 0.01;
/// Rounding of what follows.
const NOISE: f64 = 1e-9;

/// The contradictions of a sheet whose lines have these values.
pub(super) fn contradictions(sheet: &Sheet, plan: &Plan, values: &[f64]) -> Vec<Contradiction> {
    let graph = Graph::get();
    let sure = plan.sure();
    let found = sheet.values.iter().filter_map(|(slot, written)| {
        let info = graph.info(*slot);
        let mut ways = info.steps.iter().filter(|step| step.leeway.is_finite());
        ways.find_map(|step| {
            let node = plan.beside(*slot, step, &sure)?;
            let (times, share, bound) = match step.holds {
                Holds::Equal => (1.0, 0.0, ""),
                Holds::Near(share) => (1.0, share, ""),
                Holds::AtMost(times) => (times, 0.0, "at most"),
                Holds::AtLeast(times) => (times, 0.0, "at least"),
            };
            let follows = times * node.value(sheet, values);
            let leeway = step.leeway + share * follows.abs();
            let plain = if leeway > 0.0 { 0.0 } else { PLAIN * written.si.abs() };
            let own = written.tolerance.map_or(plain, reach) + leeway;
            let apart = match step.holds {
                Holds::Equal | Holds::Near(_) => (written.si - follows).abs(),
                Holds::AtMost(_) => written.si - follows,
                Holds::AtLeast(_) => follows - written.si,
            };
            // Most lines agree within their own; only where they do not are the tolerances of the others asked for.
            if follows.is_nan() || apart <= own + NOISE * written.si.abs().max(follows.abs()) {
                return None;
            }
            let mut from = plan.rests_on(node.inputs());
            from.retain(|slot| sheet.values.contains_key(slot));
            let allowed = own + times * spread(sheet, plan, values, &node, &from);
            let numbers = [written.si, follows, allowed];
            (apart > allowed).then(|| told(*slot, info, (step, bound), numbers, from))
        })
    });
    found.collect()
}

/// True if lines of a sheet contradict each other, or may do so once these change: only then is each row examined by itself.
pub(super) fn may_contradict(sheet: &Sheet, changes: impl Fn(Slot) -> bool) -> bool {
    let graph = Graph::get();
    let all = 0..graph.slots.len() as Slot;
    let plan = Plan::new(sheet, &changes, all.clone());
    let sure = plan.sure();
    let mut moves: Vec<bool> = all.clone().map(&changes).collect();
    for (node, hit) in plan.nodes.iter().zip(plan.affected(&changes)) {
        node.outputs().for_each(|(_, slot)| moves[usize::from(slot)] |= hit);
    }
    let moved = |slot: Slot, step: &'static StepInfo| {
        changes(slot) || step.inputs.iter().any(|input| moves[usize::from(*input)])
    };
    let may = all.filter(|slot| sheet.values.contains_key(slot) || changes(*slot)).any(|slot| {
        let mut steps = graph.info(slot).steps.iter();
        steps.any(|step| {
            // A choice that changes may point to any line.
            let picks = matches!(step.call, Calls::Pick);
            step.leeway.is_finite()
                && moved(slot, step)
                && (picks || plan.beside(slot, step, &sure).is_some())
        })
    });
    may || !doubted(sheet).1.is_empty()
}

/// Lines that may come to doubt together once these change: a written line, and what it is compared with.
pub(super) fn may_doubt(sheet: &Sheet, changes: impl Fn(Slot) -> bool) -> Vec<Vec<Slot>> {
    let graph = Graph::get();
    let all = 0..graph.slots.len() as Slot;
    let plan = Plan::new(sheet, &changes, all.clone());
    let sure = plan.sure();
    let written = all.filter(|slot| sheet.values.contains_key(slot) || changes(*slot));
    let together = written.flat_map(|slot| {
        let ways = graph.info(slot).steps.iter().filter(|step| step.leeway.is_finite());
        let compared = ways.filter_map(|step| match plan.beside(slot, step, &sure) {
            Some(node) => Some(plan.rests_on(node.inputs())),
            // A choice that changes may point to any line.
            None if matches!(step.call, Calls::Pick) => Some(plan.rests_on(&step.inputs)),
            None => None,
        });
        compared.map(|lines| [&lines[..], &[slot]].concat()).collect::<Vec<_>>()
    });
    together.collect()
}

/// The plan of a sheet, and the lines that are in doubt because they contradict each other.
pub(super) fn doubted(sheet: &Sheet) -> (Plan, Vec<Slot>) {
    let mut doubter = Doubter::new(sheet.clone());
    let found = doubter.with(core::iter::empty());
    (doubter.plan, found)
}

/// Finds the lines in doubt of sheets that differ only in numbers of the same written lines.
pub(super) struct Doubter {
    sheet: Sheet,
    pub plan: Plan,
    /// Calls behind what a written line is compared with: a linkage takes long.
    nodes: Vec<usize>,
}

impl Doubter {
    pub fn new(sheet: Sheet) -> Doubter {
        let plan = Plan::whole(&sheet);
        let (graph, sure) = (Graph::get(), plan.sure());
        let mut asked = Vec::new();
        for slot in sheet.values.keys() {
            let ways = graph.info(*slot).steps.iter().filter(|step| step.leeway.is_finite());
            let compared = ways.filter_map(|step| plan.beside(*slot, step, &sure));
            compared.for_each(|node| asked.extend(node.inputs()));
        }
        let reached = plan.rests_on(&asked);
        let fills = |node: &Node| node.outputs().any(|(_, slot)| reached.contains(&slot));
        let nodes = plan.nodes.iter().enumerate().filter(|(_, node)| fills(node)).map(|(place, _)| place);
        Doubter { nodes: nodes.collect(), sheet, plan }
    }

    /// The lines in doubt with these numbers, which have no tolerance.
    pub fn with(&mut self, numbers: impl Iterator<Item = (Slot, f64)>) -> Vec<Slot> {
        for (slot, si) in numbers {
            if let Some(written) = self.sheet.values.get_mut(&slot) {
                (written.si, written.tolerance) = (si, None);
            }
        }
        let mut values = self.plan.start(&self.sheet);
        for place in &self.nodes {
            self.plan.nodes[*place].run(&self.sheet, &mut values, &mut Vec::new());
        }
        let found = contradictions(&self.sheet, &self.plan, &values);
        found.into_iter().flat_map(|found| found.doubted).collect()
    }
}

fn told(
    slot: Slot,
    info: &SlotInfo,
    (step, bound): (&StepInfo, &'static str),
    [written, follows, allowed]: [f64; 3],
    from: Vec<Slot>,
) -> Contradiction {
    let graph = Graph::get();
    let by = match step.call {
        Calls::Function(entry, _) => entry.path,
        Calls::Combine(combine) => combine.how.formula(),
        Calls::Rule(rule, _) => rule.formula,
        Calls::Part(_) => "the marking",
        Calls::Pick => "the choice",
    };
    let paths = from.iter().map(|slot| graph.info(*slot).path).collect();
    let mut doubted = from;
    doubted.push(slot);
    Contradiction {
        path: info.path,
        written,
        follows,
        bound,
        allowed,
        kind: value_kind(slot),
        by,
        from: paths,
        doubted,
    }
}

/// Change of the result of a call if every tolerance of these lines is used up in the same direction.
fn spread(sheet: &Sheet, plan: &Plan, values: &[f64], node: &Node, from: &[Slot]) -> f64 {
    let mut sum = 0.0;
    for line in from {
        let tolerance = sheet.values.get(line).and_then(|written| written.tolerance).map_or(0.0, reach);
        if tolerance == 0.0 {
            continue;
        }
        let affected = plan.affected(|slot| slot == *line);
        let moved = |by: f64| {
            let mut values = values.to_vec();
            values[usize::from(*line)] += by;
            for (node, _) in plan.nodes.iter().zip(&affected).filter(|(_, hit)| **hit) {
                node.run(sheet, &mut values, &mut Vec::new());
            }
            node.value(sheet, &values)
        };
        let half = (moved(tolerance) - moved(-tolerance)).abs() / 2.0;
        if !half.is_nan() {
            sum += half;
        }
    }
    sum
}
