//! Known lines of a sheet, their origin and their values: for one sheet, or for many rows of changed lines at once.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::graph::{Calls, Graph, Slot, StepInfo};
use super::room::MOST_RESULTS;
use crate::base::section::rule::Given;
use crate::base::section::{Content, How};
use crate::base::stop::go_on;
use crate::{Error, Result};

/// Origin of the value of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Origin {
    /// Nobody wrote it and it does not follow from what is known.
    Missing,
    Written,
    /// By the step of this number.
    Step(u8),
    Assumed,
}

/// A call, and the lines that it fills.
#[derive(Clone)]
pub(super) struct Node {
    step: &'static StepInfo,
    /// The choice and the line to which it points, where that does not change.
    picked: Option<[Slot; 2]>,
    /// Place among the results, and the line that takes it.
    first: (usize, Slot),
    more: Vec<(usize, Slot)>,
}

/// Calls, in order, that fill the wanted lines of a sheet.
#[derive(Clone)]
pub(super) struct Plan {
    pub origins: Vec<Origin>,
    pub nodes: Vec<Node>,
    /// Place of the word of each choice that does not change.
    words: Vec<(Slot, usize)>,
    /// Readings that were dropped, where to leave them out would say that there is no such part.
    lost: Vec<Slot>,
}

/// Reasons for lines without a value although their inputs are known.
pub(super) type Refusals = Vec<(Slot, Error)>;

impl Plan {
    /// A plan for these lines of a sheet, to which the lines that `change` are written too.
    pub fn new(sheet: &Sheet, changes: impl Fn(Slot) -> bool, wanted: impl Iterator<Item = Slot>) -> Plan {
        let graph = Graph::get();
        let is_choice = |slot: Slot| matches!(graph.info(slot).line.content, Content::Choice(_));
        let chosen = sheet.values.iter().filter(|(slot, _)| is_choice(**slot) && !changes(**slot));
        let words = chosen.map(|(slot, written)| (*slot, written.si as usize)).collect();
        let mut written: Vec<bool> = (0..graph.slots.len()).map(|slot| changes(slot as Slot)).collect();
        sheet.values.keys().for_each(|slot| written[usize::from(*slot)] = true);
        sheet.absent().for_each(|(slot, _)| written[usize::from(slot)] = true);
        let nodes = Vec::with_capacity(graph.slots.len());
        let lost = sheet.lost();
        let origins = vec![None; graph.slots.len()];
        let (shared, ready) = (vec![None; graph.shared], vec![None; graph.shared]);
        let mut planner = Planner { graph, written, words, lost, origins, nodes, shared, ready };
        for slot in wanted {
            planner.visit(slot);
        }
        let origins = planner.origins.into_iter().map(|origin| origin.unwrap_or(Origin::Missing)).collect();
        Plan { origins, nodes: planner.nodes, words: planner.words, lost: planner.lost }
    }

    /// A plan for every line of a sheet.
    pub fn whole(sheet: &Sheet) -> Plan {
        Plan::of_all(sheet, |_| false)
    }

    /// A plan for every line of a sheet, to which the lines that `change` are written too.
    fn of_all(sheet: &Sheet, changes: impl Fn(Slot) -> bool) -> Plan {
        Plan::new(sheet, changes, 0..Graph::get().slots.len() as Slot)
    }

    /// The written lines that would make a line known that this plan does not know: one for a few lines has not asked for all others.
    pub fn lacks(&self, sheet: &Sheet, changes: impl Fn(Slot) -> bool, slot: Slot) -> Vec<Slot> {
        if self.is_known(slot) { vec![] } else { Plan::of_all(sheet, changes).needs(slot) }
    }

    pub fn is_known(&self, slot: Slot) -> bool {
        self.origins[usize::from(slot)] != Origin::Missing
    }

    /// The values before any call: written, assumed, else NaN.
    pub fn start(&self, sheet: &Sheet) -> Vec<f64> {
        let mut values = vec![f64::NAN; self.origins.len()];
        for (slot, origin) in self.origins.iter().enumerate() {
            if *origin == Origin::Assumed {
                values[slot] = Graph::get().slots[slot].line.assumed.map_or(f64::NAN, |(si, _)| si);
            }
        }
        let written = sheet.values.iter().map(|(slot, written)| (usize::from(*slot), written.si));
        let absent = sheet.absent().map(|(slot, si)| (usize::from(slot), si));
        for (slot, si) in written.chain(absent).filter(|(slot, _)| self.origins[*slot] == Origin::Written) {
            values[slot] = si;
        }
        values
    }

    /// Calls everything once.
    pub fn run(&self, sheet: &Sheet, values: &mut [f64], refusals: &mut Refusals) {
        for node in &self.nodes {
            node.run(sheet, values, refusals);
        }
    }

    /// The nodes that change when one of these lines does, in order.
    pub fn affected(&self, changed: impl Fn(Slot) -> bool) -> Vec<bool> {
        let mut dirty: Vec<bool> = (0..self.origins.len()).map(|slot| changed(slot as Slot)).collect();
        self.nodes
            .iter()
            .map(|node| {
                let hit = node.inputs().iter().any(|input| dirty[usize::from(*input)]);
                if hit {
                    node.outputs().for_each(|(_, slot)| dirty[usize::from(slot)] = true);
                }
                hit
            })
            .collect()
    }

    /// The first reached line among those that the call behind a line fills: a refusal is noted on that one.
    pub fn filled(&self, slot: Slot, reached: &[Slot]) -> Option<Slot> {
        let mut outputs = self.node_of(slot)?.outputs().map(|(_, slot)| slot);
        outputs.find(|slot| reached.contains(slot))
    }

    /// The line whose value the rules behind another line lack.
    pub fn lacked(&self, slot: Slot, error: &Error) -> Option<Slot> {
        let Error::Missing { argument, .. } = error else { return None };
        let steps = Graph::get().info(slot).steps.iter();
        steps
            .filter(|step| step.fills())
            .filter_map(|step| {
                let Calls::Rule(rule, _) = step.call else { return None };
                let place = rule.inputs.iter().position(|taken| taken.name == *argument)?;
                let first: usize = step.counts.iter().take(place).map(|count| usize::from(*count)).sum();
                step.inputs.get(first).copied()
            })
            .next()
    }

    /// Lines that rest on what is written alone.
    pub fn sure(&self) -> Vec<bool> {
        let mut sure: Vec<bool> = self.origins.iter().map(|origin| *origin == Origin::Written).collect();
        for node in &self.nodes {
            let rests = node.inputs().iter().all(|input| sure[usize::from(*input)] || !self.is_known(*input));
            node.outputs().for_each(|(_, slot)| sure[usize::from(slot)] = rests);
        }
        sure
    }

    /// A call that a written line makes needless, where all that it takes is sure.
    pub fn beside(&self, slot: Slot, step: &'static StepInfo, sure: &[bool]) -> Option<Node> {
        let picked = picked(&self.words, step);
        if picked.is_none() && matches!(step.call, Calls::Pick) {
            return None;
        }
        let place = match step.call {
            Calls::Function(_, place) | Calls::Rule(_, place) => place,
            _ => 0,
        };
        let node = Node { step, picked, first: (place, slot), more: vec![] };
        let mut inputs = node.inputs().iter().zip(&step.optional);
        let all = inputs.all(|(input, optional)| {
            let assumed = step.assumed_too && self.origins[usize::from(*input)] == Origin::Assumed;
            let missing = !self.is_known(*input) && !self.lost.contains(input);
            sure[usize::from(*input)] || (*optional && (missing || assumed))
        });
        all.then_some(node)
    }

    /// The node that fills a line.
    pub fn node_of(&self, slot: Slot) -> Option<&Node> {
        self.nodes.iter().find(|node| node.outputs().any(|(_, output)| output == slot))
    }

    /// Every line on which these lines rest, themselves included, in the order in which they are reached.
    pub fn rests_on(&self, slots: &[Slot]) -> Vec<Slot> {
        let mut reached: Vec<Slot> = Vec::new();
        let mut seen = vec![false; self.origins.len()];
        let mut filled = vec![None; self.origins.len()];
        for node in &self.nodes {
            node.outputs().for_each(|(_, slot)| filled[usize::from(slot)] = Some(node));
        }
        let mut ahead: Vec<Slot> = slots.iter().rev().copied().collect();
        while let Some(slot) = ahead.pop() {
            if core::mem::replace(&mut seen[usize::from(slot)], true) {
                continue;
            }
            reached.push(slot);
            if let Some(node) = filled[usize::from(slot)] {
                ahead.extend(node.inputs().iter().rev().filter(|input| self.is_known(**input)));
            }
        }
        reached
    }

    /// Message for a step without a result although its inputs are known: the line, and the words of its system.
    pub fn lacking<'a>(
        &'a self,
        values: &'a [f64],
        reached: &'a [Slot],
    ) -> impl Iterator<Item = (Slot, &'static str)> + 'a {
        self.nodes.iter().filter_map(|node| {
            let lacking = node.step.lacking;
            let value = |slot: Slot| values[usize::from(slot)];
            let lacks = !lacking.is_empty()
                && value(node.first.1).is_nan()
                && node.gather(&mut vec![f64::NAN; node.inputs().len()], value);
            (lacks && reached.contains(&node.first.1)).then_some((node.first.1, lacking))
        })
    }

    /// The written lines that would make a missing line known: those of the step that lacks the fewest.
    pub fn needs(&self, slot: Slot) -> Vec<Slot> {
        let info = Graph::get().info(slot);
        if self.is_known(slot) {
            return vec![];
        }
        // A first-hand line is asked for itself, unless most of its inputs are there.
        let wanted = |step: &'static StepInfo| {
            let inputs = step.inputs.iter().zip(&step.optional);
            inputs.filter(|(input, optional)| !**optional || self.lost.contains(input))
        };
        let begun = |step: &&'static StepInfo| {
            let wanted = wanted(step);
            let known = wanted.clone().filter(|(input, _)| self.is_known(**input)).count();
            !info.line.first_hand || !matches!(step.call, Calls::Pick) && 2 * known > wanted.count()
        };
        let ways = info.steps.iter().filter(|step| step.fills()).filter(begun).map(|step| {
            let mut needed = Vec::new();
            if let Some(pair) = picked(&self.words, step) {
                needed.extend(self.needs(pair[1]));
            } else if matches!(step.call, Calls::Pick) {
                // The choice, and the fewest lines that any of its words asks for.
                let lines = step.inputs[1..].iter().map(|line| self.needs(*line));
                needed.extend(lines.min_by_key(Vec::len).unwrap_or_default());
                needed.extend(self.needs(step.inputs[0]));
            } else {
                wanted(step).for_each(|(input, _)| needed.extend(self.needs(*input)));
            }
            needed.sort_unstable();
            needed.dedup();
            needed
        });
        let own = info.line.written.then(|| vec![slot]);
        ways.filter(|needed| !needed.is_empty()).min_by_key(Vec::len).or(own).unwrap_or_default()
    }
}

/// The choice and the line to which it points, where the step picks by a choice that does not change.
fn picked(words: &[(Slot, usize)], step: &StepInfo) -> Option<[Slot; 2]> {
    let Calls::Pick = step.call else { return None };
    let (choice, word) = words.iter().find(|(choice, _)| *choice == step.inputs[0])?;
    Some([*choice, *step.inputs.get(word + 1)?])
}

struct Planner {
    graph: &'static Graph,
    written: Vec<bool>,
    words: Vec<(Slot, usize)>,
    lost: Vec<Slot>,
    origins: Vec<Option<Origin>>,
    nodes: Vec<Node>,
    /// Nodes of the calls with several results, by the number of the call.
    shared: Vec<Option<usize>>,
    /// Whether these calls have what they take, once it was asked.
    ready: Vec<Option<bool>>,
}

impl Planner {
    fn visit(&mut self, slot: Slot) -> bool {
        if let Some(origin) = self.origins[usize::from(slot)] {
            return origin != Origin::Missing;
        }
        let info = self.graph.info(slot);
        let mut origin = Origin::Missing;
        if self.written[usize::from(slot)] {
            origin = Origin::Written;
        } else {
            for (number, step) in info.steps.iter().enumerate().filter(|(_, step)| step.fills()) {
                let known = if let Some(pair) = picked(&self.words, step) {
                    self.visit(pair[0]) && self.visit(pair[1])
                } else if matches!(step.call, Calls::Pick) {
                    // The choice changes: whichever of its lines is known.
                    let lines = step.inputs[1..].iter().filter(|line| self.visit(**line)).count();
                    self.visit(step.inputs[0]) && lines > 0
                } else {
                    self.has_inputs(step)
                };
                if known {
                    self.fill(slot, step);
                    origin = Origin::Step(number as u8);
                    break;
                }
            }
            if origin == Origin::Missing && info.line.assumed.is_some() {
                origin = Origin::Assumed;
            }
        }
        self.origins[usize::from(slot)] = Some(origin);
        origin != Origin::Missing
    }

    /// True if a call has what it takes: found once for all lines that the call fills, and first of what it cannot do without.
    fn has_inputs(&mut self, step: &'static StepInfo) -> bool {
        let call = step.shared.map(usize::from);
        if let Some(known) = call.and_then(|call| self.ready[call]) {
            return known;
        }
        let inputs = || step.inputs.iter().zip(&step.optional);
        let mut needed = inputs().filter(|(_, optional)| !**optional);
        let mut other = inputs().filter(|(_, optional)| **optional);
        let known = needed.all(|(input, _)| self.visit(*input))
            && other.all(|(input, _)| self.visit(*input) || !self.lost.contains(input));
        if let Some(call) = call {
            self.ready[call] = Some(known);
        }
        known
    }

    fn fill(&mut self, slot: Slot, step: &'static StepInfo) {
        let place = match step.call {
            Calls::Function(_, place) | Calls::Rule(_, place) => place,
            _ => 0,
        };
        if let Some(call) = step.shared {
            let node = &mut self.shared[usize::from(call)];
            if let Some(node) = node.and_then(|node| self.nodes.get_mut(node)) {
                node.more.push((place, slot));
                return;
            }
            *node = Some(self.nodes.len());
        }
        let picked = picked(&self.words, step);
        self.nodes.push(Node { step, picked, first: (place, slot), more: vec![] });
    }
}

impl Node {
    pub fn call(&self) -> Calls {
        self.step.call
    }

    /// True if it takes one of several lines, the greatest or the least.
    pub fn selects(&self) -> bool {
        matches!(self.call(), Calls::Combine(combine) if matches!(combine.how, How::Greatest | How::Least))
    }

    pub fn inputs(&self) -> &[Slot] {
        match &self.picked {
            Some(pair) => pair,
            None => &self.step.inputs,
        }
    }

    /// Place among the results, and the line that takes it.
    pub fn outputs(&self) -> impl Iterator<Item = (usize, Slot)> {
        core::iter::once(self.first).chain(self.more.iter().copied())
    }

    /// Fills the inputs in order. Whether all are there that must be.
    #[inline]
    fn gather(&self, inputs: &mut [f64], value: impl Fn(Slot) -> f64) -> bool {
        let any_line = matches!(self.step.call, Calls::Pick) && self.picked.is_none();
        let lines = self.inputs().iter().zip(&self.step.optional);
        let mut ready = true;
        for (place, ((slot, optional), input)) in lines.zip(inputs).enumerate() {
            *input = value(*slot);
            ready &= *optional || (any_line && place > 0) || !input.is_nan();
        }
        ready
    }

    /// The results for these values, NaN where an input is missing; `refused` is told why there are none.
    #[inline]
    fn results(
        &self,
        sheet: &Sheet,
        value: impl Fn(Slot) -> f64,
        refused: impl FnOnce(Error),
    ) -> [f64; MOST_RESULTS] {
        let mut results = [f64::NAN; MOST_RESULTS];
        let call = |inputs: &mut [f64]| match self.gather(inputs, value) {
            true => self.call_with(sheet, inputs, &mut results),
            false => Ok(()),
        };
        // Most calls take few inputs; only a curve or a drawing takes many.
        let outcome = match self.inputs().len() {
            count @ ..=8 => call(&mut [f64::NAN; 8][..count]),
            count => call(&mut vec![f64::NAN; count]),
        };
        if let Err(error) = outcome {
            results = [f64::NAN; MOST_RESULTS];
            refused(error);
        }
        results
    }

    fn call_with(&self, sheet: &Sheet, inputs: &[f64], results: &mut [f64; MOST_RESULTS]) -> Result<()> {
        match self.call() {
            Calls::Function(entry, _) => (entry.call)(inputs, &mut results[..entry.outputs.len()])?,
            Calls::Combine(combine) => results[0] = combine.how.of(inputs.iter().copied()),
            Calls::Rule(rule, _) => (rule.call)(Given::new(inputs, &self.step.counts), results)?,
            Calls::Part(place) => results[0] = part(sheet, self.inputs()[0], place),
            Calls::Pick => {
                let place = if self.picked.is_some() { 1 } else { 1 + inputs[0] as usize };
                results[0] = inputs[place];
            }
        }
        Ok(())
    }

    /// Its first result for one set of values; NaN where there is none.
    pub fn value(&self, sheet: &Sheet, values: &[f64]) -> f64 {
        self.results(sheet, |slot| values[usize::from(slot)], |_| ())[self.first.0]
    }

    /// Calls it for one set of values; where an input has no value, neither has the result.
    pub fn run(&self, sheet: &Sheet, values: &mut [f64], refusals: &mut Refusals) {
        // The rest of work that nobody wants any more is skipped: its answer is dropped.
        if go_on().is_err() {
            return;
        }
        let refused = |error| refusals.push((self.first.1, error));
        let results = self.results(sheet, |slot| values[usize::from(slot)], refused);
        values[usize::from(self.first.1)] = results[self.first.0];
        for (place, slot) in &self.more {
            values[usize::from(*slot)] = results[*place];
        }
    }

    /// Calls it for a block of rows; once where none of its inputs changes within the block.
    pub fn run_block(
        &self,
        sheet: &Sheet,
        block: &mut Block<'_>,
        refused: &mut dyn FnMut(usize, Slot, Error),
    ) {
        if go_on().is_err() {
            return;
        }
        let changes = self.inputs().iter().any(|input| block.column(*input).len() > 1);
        let rows = if changes { block.rows } else { 1 };
        let line = self.first.1;
        let all = block.rows;
        let mut refused = |row: usize, error: Error| match changes {
            // Nothing is wrong where a value is merely not known.
            _ if matches!(error, Error::Missing { .. }) => {}
            true => refused(row, line, error),
            false => (0..all).for_each(|row| refused(row, line, error.clone())),
        };
        if let Calls::Function(entry, _) = self.call() {
            let mut results: Vec<Vec<f64>> = entry.outputs.iter().map(|_| block.empty(rows)).collect();
            let inputs: Vec<&[f64]> = self.inputs().iter().map(|input| block.column(*input)).collect();
            let mut outputs: Vec<&mut [f64]> = results.iter_mut().map(Vec::as_mut_slice).collect();
            let mut said = |row: usize, error: Error| {
                // A row whose inputs have no value was refused before.
                if inputs.iter().all(|column| !at(column, row).is_nan()) {
                    refused(row, error);
                }
            };
            if let Err(error) = (entry.batch)(&inputs, &mut outputs, &mut said) {
                said(0, error);
            }
            for (place, column) in results.into_iter().enumerate() {
                match self.outputs().find(|(output, _)| *output == place) {
                    Some((_, slot)) => block.set(slot, column),
                    None => block.spare.push(column),
                }
            }
        } else {
            let mut columns: Vec<Vec<f64>> = self.outputs().map(|_| block.empty(rows)).collect();
            if let Calls::Combine(combine) = self.call()
                && self.inputs().len() <= 8
            {
                let given: Vec<&[f64]> = self.inputs().iter().map(|input| block.column(*input)).collect();
                let mut inputs = [f64::NAN; 8];
                for (row, result) in columns[0].iter_mut().enumerate() {
                    let mut ready = true;
                    for ((input, column), optional) in inputs.iter_mut().zip(&given).zip(&self.step.optional)
                    {
                        *input = at(column, row);
                        ready &= *optional || !input.is_nan();
                    }
                    if ready {
                        *result = combine.how.of(inputs.iter().copied().take(given.len()));
                    }
                }
                block.set(line, columns.swap_remove(0));
                return;
            }
            for row in 0..rows {
                let results = match self.changed_part(block, row) {
                    Some(number) => [number; MOST_RESULTS],
                    None => self.results(sheet, |slot| block.at(slot, row), |error| refused(row, error)),
                };
                for ((place, _), column) in self.outputs().zip(&mut columns) {
                    column[row] = results[place];
                }
            }
            for ((_, slot), column) in self.outputs().zip(columns) {
                block.set(slot, column);
            }
        }
    }

    /// The number of a marking that a sweep changes: the value of such a line is its place among the markings, counted from 1.
    fn changed_part(&self, block: &Block<'_>, row: usize) -> Option<f64> {
        let Calls::Part(place) = self.call() else { return None };
        let decoded = block.markings.get((block.at(self.inputs()[0], row) as usize).checked_sub(1)?)?;
        Some(decoded.get(place).copied().unwrap_or(f64::NAN))
    }
}

fn part(sheet: &Sheet, marking: Slot, place: usize) -> f64 {
    sheet.values.get(&marking).and_then(|written| written.decoded.get(place)).copied().unwrap_or(f64::NAN)
}

/// Values of a block of rows: a column for each line that changes, one value for the others.
pub(super) struct Block<'a> {
    pub rows: usize,
    constant: &'a [f64],
    columns: Vec<Vec<f64>>,
    /// Numbers of the markings to which a sweep changes a line.
    pub markings: &'a [Vec<f64>],
    spare: Vec<Vec<f64>>,
}

impl<'a> Block<'a> {
    pub fn new(constant: &'a [f64], markings: &'a [Vec<f64>]) -> Block<'a> {
        Block { rows: 0, constant, columns: vec![vec![]; constant.len()], markings, spare: vec![] }
    }

    pub fn set(&mut self, slot: Slot, column: Vec<f64>) {
        let before = core::mem::replace(&mut self.columns[usize::from(slot)], column);
        if before.capacity() > 0 {
            self.spare.push(before);
        }
    }

    /// A column of NaN, its memory taken from what is no longer used.
    pub fn empty(&mut self, rows: usize) -> Vec<f64> {
        let mut column = self.spare.pop().unwrap_or_default();
        column.clear();
        column.resize(rows, f64::NAN);
        column
    }

    /// The column of a line: one value where it does not change within the block.
    pub fn column(&self, slot: Slot) -> &[f64] {
        let slot = usize::from(slot);
        match self.columns[slot].as_slice() {
            [] => core::slice::from_ref(&self.constant[slot]),
            column => column,
        }
    }

    pub fn at(&self, slot: Slot, row: usize) -> f64 {
        at(self.column(slot), row)
    }
}

/// The value of a column in a row; a column of one value has it in every row.
pub(super) fn at(column: &[f64], row: usize) -> f64 {
    if column.len() == 1 { column[0] } else { column[row] }
}
