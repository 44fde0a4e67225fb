//! The lines of every system as one graph: made once, from the constants that the systems export.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

mod build;
#[cfg(test)]
mod tests;

pub(super) use build::axles;

use crate::base::section::{Combine, Content, Finding, Holds, Line, Rule};
use crate::base::work::Entry;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;

/// Number of a line of the graph.
pub(super) type Slot = u16;

/// Every line and finding, places written out.
pub(super) struct Graph {
    /// Lines as they are declared, each with its system and with what systems above add to it.
    pub lines: Vec<(&'static str, &'static Line)>,
    pub slots: Vec<SlotInfo>,
    pub findings: Vec<FindingInfo>,
    by_path: BTreeMap<&'static str, Slot>,
    /// Lines under the names that they had.
    renamed: BTreeMap<&'static str, Slot>,
    /// Old words of a choice, and the words for which they stand.
    old_words: BTreeMap<Slot, &'static [(&'static str, &'static str)]>,
    pub models: Vec<ModelInfo>,
    /// Number of calls with several results.
    pub shared: usize,
    /// Tables and lists of a document: every path above a line.
    folders: BTreeSet<&'static str>,
    /// Faults in the systems' sections: lines that are missing, or there twice. The tests hold it empty.
    faults: Vec<String>,
}

/// A line, its places written out.
pub(super) struct SlotInfo {
    pub path: &'static str,
    pub line: &'static Line,
    pub steps: Vec<StepInfo>,
    /// Lines of the parts on which it was measured.
    pub measured_on: Vec<Slot>,
    /// Lines that describe the same part.
    pub beside: Vec<Slot>,
}

pub(super) struct StepInfo {
    pub call: Calls,
    pub inputs: Vec<Slot>,
    /// Which inputs may be missing, in order.
    pub optional: Vec<bool>,
    /// Number of lines that each input of a rule takes.
    pub counts: Vec<u16>,
    /// Number of the call, which it shares with the other steps that take a result of the same call; none of a call with one result.
    pub shared: Option<u16>,
    /// Allowed difference of a written line from it.
    pub leeway: f64,
    /// True if a written line is held against it although an optional input is assumed.
    pub assumed_too: bool,
    /// Message where the result is not a number although the inputs are known.
    pub lacking: &'static str,
    /// How a written line stands to it.
    pub holds: Holds,
}

impl StepInfo {
    /// True if a line that is not written may follow by it.
    pub fn fills(&self) -> bool {
        self.holds == Holds::Equal
    }
}

/// Call of a step, resolved.
#[derive(Clone, Copy)]
pub(super) enum Calls {
    Function(&'static Entry, usize),
    Part(usize),
    Pick,
    Combine(&'static Combine),
    Rule(&'static Rule, usize),
}

impl FindingInfo {
    /// The lines on which its margin rests directly.
    pub fn slots(&self) -> impl Iterator<Item = Slot> {
        self.margin.slots().chain(self.rests_on.iter().copied())
    }

    /// The choices that decide whether it is asked.
    pub fn choices(&self) -> impl Iterator<Item = Slot> {
        self.about.iter().filter_map(|about| Some(about.choice.as_ref()?.slot))
    }
}

/// A finding, its places written out.
pub(super) struct FindingInfo {
    pub path: &'static str,
    pub system: &'static str,
    pub finding: &'static Finding,
    pub margin: MarginSlots,
    pub wanted: Slot,
    pub rests_on: Vec<Slot>,
    pub about: Vec<AboutInfo>,
}

/// A part that a vehicle may lack, places written out.
pub(super) struct AboutInfo {
    pub parts: Vec<&'static str>,
    /// Every line of these.
    pub lines: Vec<Slot>,
    pub choice: Option<AboutChoice>,
    /// Every line beside which one of them must be written, or all be `none`.
    pub beside: Vec<Slot>,
    /// Lines of others that say that there is such a part where they are above zero.
    pub told_by: Vec<Slot>,
}

/// A choice that decides whether there is such a part.
pub(super) struct AboutChoice {
    pub slot: Slot,
    /// Places of the words with which there may be one.
    pub words: Vec<usize>,
    pub sure: bool,
}

/// A model, its paths written out.
pub(super) struct ModelInfo {
    pub path: &'static str,
    pub model: &'static str,
    /// Table of its own fields.
    pub table: &'static str,
    /// Field that says which end of the vehicle it is, and the word.
    pub end: Option<(&'static str, &'static str)>,
    /// Fields that have a word of their own.
    pub named: &'static [(&'static str, &'static str)],
    pub fields: Vec<FieldInfo>,
}

/// A field of a model and its line.
pub(super) struct FieldInfo {
    /// Path in the model's document: `upper_arm.ball_joint.x`.
    pub name: String,
    pub slot: Slot,
    pub optional: bool,
    /// Place of its part among the parts that the model may lack: such a part is left out unless all that it requires is known.
    pub part: Option<usize>,
    /// Whether that part requires it.
    pub required: bool,
}

#[derive(Clone, Copy)]
pub(super) enum MarginSlots {
    Ratio { capacity: Slot, demand: Slot },
    Remaining { value: Slot },
    AtLeast { value: Slot, least: Slot },
    AtMost { value: Slot, most: Slot },
    Band { value: Slot, low: Slot, high: Slot },
}

impl MarginSlots {
    /// The lines that it takes.
    pub fn slots(self) -> impl Iterator<Item = Slot> {
        let (first, more) = match self {
            MarginSlots::Ratio { capacity, demand } => (capacity, [Some(demand), None]),
            MarginSlots::Remaining { value } => (value, [None, None]),
            MarginSlots::AtLeast { value, least } => (value, [Some(least), None]),
            MarginSlots::AtMost { value, most } => (value, [Some(most), None]),
            MarginSlots::Band { value, low, high } => (value, [Some(low), Some(high)]),
        };
        [Some(first), more[0], more[1]].into_iter().flatten()
    }
}

impl Graph {
    /// The graph of this library. An inconsistency of the systems' constants is found by the tests, which build it.
    pub fn get() -> &'static Graph {
        static GRAPH: OnceLock<Graph> = OnceLock::new();
        GRAPH.get_or_init(Graph::new)
    }

    pub fn slot(&self, path: &str) -> Option<Slot> {
        self.by_path.get(path).or_else(|| self.renamed.get(path)).copied()
    }

    /// The word of a choice that an old word stands for.
    pub fn word(&self, slot: Slot, word: &str) -> Option<&'static str> {
        let words = self.old_words.get(&slot)?;
        words.iter().find(|(old, _)| *old == word).map(|(_, new)| *new)
    }

    pub fn info(&self, slot: Slot) -> &SlotInfo {
        &self.slots[usize::from(slot)]
    }

    pub fn is_folder(&self, path: &str) -> bool {
        self.folders.contains(path)
    }

    /// A line that may be written, or a table of such lines, of which a sheet may say that there is none.
    pub fn part(&self, path: &str) -> Option<&'static str> {
        let line = self.slot(path).map(|slot| self.info(slot)).filter(|info| info.line.written);
        let folder = || self.folders.get(path).copied().filter(|folder| !self.is_list(folder));
        line.map(|info| info.path).or_else(folder).filter(|path| !path.contains('['))
    }

    pub fn is_list(&self, path: &str) -> bool {
        let first = format!("{path}[0]");
        self.slot(&first).is_some() || self.is_folder(&first)
    }

    /// The keys that may stand in a table of the document.
    pub fn keys_in(&self, folder: &str) -> BTreeSet<&'static str> {
        let written = self.slots.iter().filter(|slot| slot.line.written);
        written
            .filter_map(|slot| {
                let rest = match folder {
                    "" => slot.path,
                    _ => slot.path.strip_prefix(folder)?.strip_prefix('.')?,
                };
                Some(rest.split(['.', '[']).next().unwrap_or(rest))
            })
            .collect()
    }

    pub fn finding(&self, path: &str) -> Option<usize> {
        self.findings.iter().position(|finding| finding.path == path)
    }

    /// Whether a path names the end of the vehicle within the table of that end: `front.axle`.
    pub fn is_end(&self, path: &str) -> bool {
        self.models.iter().any(|model| {
            model.end.is_some_and(|(field, _)| {
                path.strip_prefix(model.table).is_some_and(|rest| rest.strip_prefix('.') == Some(field))
            })
        })
    }
}

impl SlotInfo {
    /// The kind of its quantity, if it is one.
    pub fn kind(&self) -> Option<&'static crate::units::Kind> {
        match self.line.content {
            Content::Quantity(kind) => Some(kind),
            _ => None,
        }
    }
}
