//! Lines that say nothing of another part: choosing a part drops what was measured on the old one and what describes it, and a sweep of a line
//! drops what follows from that line instead.

use super::Sheet;
use super::graph::{Calls, Graph, Slot, StepInfo};
use crate::Result;
use crate::base::section::Content;
use std::collections::BTreeSet;

/// Written lines that describe the parts that have these lines, or were measured on them, when each of the parts is replaced.
pub(super) fn by_parts(sheet: &Sheet, lines: &[Slot]) -> Vec<Slot> {
    let graph = Graph::get();
    // That there is none of something was read on the old part, too.
    let none = sheet.none.iter().filter_map(|path| graph.slot(path));
    let others = sheet.values.keys().copied().chain(none).filter(|slot| !lines.contains(slot));
    let is_old = |slot: &Slot| {
        let info = graph.info(*slot);
        info.measured_on.iter().chain(&info.beside).any(|on| lines.contains(on))
    };
    let mut old: Vec<Slot> = others.filter(is_old).collect();
    old.sort_unstable();
    old
}

/// Written readings of these lines, when the lines are swept: those that would follow from a swept line of the part on which they were
/// taken. A marking names a part, so that a sweep of it replaces the part.
pub(super) fn by_sweep(sheet: &Sheet, swept: &[Slot]) -> Vec<Slot> {
    let graph = Graph::get();
    let is_marking = |slot: &Slot| matches!(graph.info(*slot).line.content, Content::Marking(_));
    let markings: Vec<Slot> = swept.iter().copied().filter(is_marking).collect();
    let mut dropped = by_parts(sheet, &markings);
    dropped.retain(|slot| !swept.contains(slot));
    // A reading that stands hides what is behind it: each one that is dropped may uncover another.
    loop {
        let more = by_parts(sheet, swept).into_iter().find(|slot| {
            let on = &graph.info(*slot).measured_on;
            let of: Vec<Slot> = swept.iter().copied().filter(|slot| on.contains(slot)).collect();
            !dropped.contains(slot) && follows(sheet, &dropped, *slot, &of)
        });
        match more {
            Some(slot) => dropped.push(slot),
            None => break,
        }
    }
    dropped.sort_unstable();
    dropped
}

/// True if a line would follow from one of others by its steps, through lines that nobody wrote. An input that may be missing is no ground.
fn follows(sheet: &Sheet, dropped: &[Slot], slot: Slot, from: &[Slot]) -> bool {
    let graph = Graph::get();
    let mut seen = BTreeSet::from([slot]);
    let mut ahead = vec![slot];
    while let Some(slot) = ahead.pop() {
        let ways = graph.info(slot).steps.iter().filter(|step| step.fills());
        for input in ways.flat_map(|step| grounds(sheet, step)) {
            if from.contains(&input) {
                return true;
            }
            let stands = sheet.values.contains_key(&input) && !dropped.contains(&input);
            if !stands && seen.insert(input) {
                ahead.push(input);
            }
        }
    }
    false
}

/// Inputs on which the result of a step rests: of a choice that is written, the line to which it points.
fn grounds(sheet: &Sheet, step: &StepInfo) -> Vec<Slot> {
    if let (Calls::Pick, Some((choice, lines))) = (step.call, step.inputs.split_first())
        && let Some(word) = sheet.values.get(choice)
    {
        return lines.get(word.si as usize).into_iter().chain([choice]).copied().collect();
    }
    let all = step.inputs.iter().zip(&step.optional);
    all.filter(|(_, optional)| !**optional).map(|(input, _)| *input).collect()
}

/// Paths of lines.
pub(super) fn paths(slots: &[Slot]) -> Vec<&'static str> {
    slots.iter().map(|slot| Graph::get().info(*slot).path).collect()
}

impl Sheet {
    /// Fits other parts: writes their lines, and drops every line that describes the parts that they replace or was measured on them. Gives the paths of what
    /// was dropped; where one line is refused, nothing is written.
    pub fn fit(&mut self, lines: &[(&str, &str)]) -> Result<Vec<&'static str>> {
        let mut lines: Vec<(Slot, &str, &str)> = lines
            .iter()
            .map(|(path, text)| Ok((super::line_of(path)?, *path, *text)))
            .collect::<Result<_>>()?;
        // The places of a list are written in order.
        lines.sort_unstable_by_key(|(slot, ..)| *slot);
        let slots: Vec<Slot> = lines.iter().map(|(slot, ..)| *slot).collect();
        let dropped = by_parts(self, &slots);
        let mut fitted = self.without(&dropped);
        lines.into_iter().try_for_each(|(_, path, text)| fitted.set(path, text))?;
        *self = fitted;
        Ok(paths(&dropped))
    }

    /// The sheet without these lines.
    pub(super) fn without(&self, dropped: &[Slot]) -> Sheet {
        let mut sheet = self.clone();
        sheet.values.retain(|slot, _| !dropped.contains(slot));
        sheet.none.retain(|path| Graph::get().slot(path).is_none_or(|slot| !dropped.contains(&slot)));
        sheet.dropped.extend(dropped);
        sheet
    }

    /// Lines that were dropped and that, left out, would say that there is no such part.
    pub(super) fn lost(&self) -> Vec<Slot> {
        let says = |slot: &Slot| Graph::get().info(*slot).line.left_out_is_none;
        self.dropped.iter().copied().filter(says).collect()
    }
}
