//! The lines of every system as one graph: made once, from the constants that the systems export.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]
#![expect(clippy::string_slice, reason = "cut beside a character of one byte that was found there")]

use super::generated::SECTIONS;
use crate::base::section::rule::{Need, Shape, below};
use crate::base::section::{
    About, Also, Call, Class, Combine, Content, Finding, Line, Margin, ModelOf, Renamed, Rule, Step,
};
use crate::base::work::Entry;
use crate::catalogue;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::ops::Bound;
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
    renamed: HashMap<&'static str, Slot>,
    /// Old words of a choice, and the words for which they stand.
    old_words: HashMap<Slot, &'static [(&'static str, &'static str)]>,
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
    /// Message where the result is not a number although the inputs are known.
    pub lacking: &'static str,
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

const AXLES: [&str; 2] = ["front", "rear"];

/// The paths for which one stands: `axle` is both axles.
pub(super) fn axles(path: &str) -> Vec<(Option<&'static str>, String)> {
    match path.strip_prefix("axle.") {
        Some(rest) => AXLES.iter().map(|axle| (Some(*axle), format!("{axle}.{rest}"))).collect(),
        None => vec![(None, path.to_owned())],
    }
}

/// A path said inside a line or finding of an axle.
fn within(path: &str, axle: Option<&str>) -> String {
    match (path.strip_prefix("axle"), axle) {
        (Some(rest), Some(axle)) if rest.is_empty() || rest.starts_with('.') => format!("{axle}{rest}"),
        _ => path.to_owned(),
    }
}

/// Additions of the systems above to the line or finding that is declared with this path, those of the highest layer first.
fn added(path: &'static str) -> impl Iterator<Item = &'static Also> {
    let also = SECTIONS.iter().rev().flat_map(|(_, section)| section.also);
    also.filter(move |also| also.path == path)
}

/// A line with what systems above add to it.
fn whole(line: &'static Line) -> &'static Line {
    if added(line.path).next().is_none() {
        return line;
    }
    let steps: Vec<Step> = added(line.path).flat_map(|also| also.steps).chain(line.steps).copied().collect();
    let class = match line.class {
        Some(Class::Measurement(parts)) => {
            let parts: Vec<_> =
                added(line.path).flat_map(|also| also.measured_on).chain(parts).copied().collect();
            Some(Class::Measurement(parts.leak()))
        }
        other => other,
    };
    Box::leak(Box::new(Line { steps: steps.leak(), class, ..*line }))
}

fn kept(path: String) -> &'static str {
    Box::leak(path.into_boxed_str())
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

    fn new() -> Graph {
        let mut graph = Graph {
            lines: vec![],
            slots: vec![],
            findings: vec![],
            by_path: BTreeMap::new(),
            renamed: HashMap::new(),
            old_words: HashMap::new(),
            models: vec![],
            shared: 0,
            folders: BTreeSet::new(),
            faults: vec![],
        };
        let mut places = Vec::new();
        for (system, section) in SECTIONS {
            for line in section.lines.iter().map(whole) {
                graph.lines.push((*system, line));
                for (axle, path) in axles(line.path) {
                    for place in 0..line.places {
                        let path = kept(path.replace("[]", &format!("[{place}]")));
                        graph.add(path, line);
                        places.push((axle, place));
                    }
                }
            }
        }
        for (at, (axle, place)) in places.into_iter().enumerate() {
            for step in graph.slots[at].line.steps {
                if let Some(step) = graph.step(step, axle, place) {
                    graph.slots[at].steps.push(step);
                }
            }
            graph.slots[at].measured_on = graph.measured_on(at);
        }
        graph.number_calls();
        for (_, section) in SECTIONS {
            section.renamed.iter().for_each(|renamed| graph.rename(renamed));
            for model in section.models {
                for (axle, path) in axles(model.path) {
                    if let Some(fields) = graph.fields(model, axle) {
                        let table = kept(within(model.table, axle));
                        let end = axle.map(|axle| (model.end, axle)).filter(|(field, _)| !field.is_empty());
                        graph.models.push(ModelInfo {
                            path: kept(path),
                            model: model.model,
                            table,
                            end,
                            named: model.named,
                            fields,
                        });
                    }
                }
            }
        }
        for (system, section) in SECTIONS {
            for finding in section.findings {
                for (axle, path) in axles(finding.path) {
                    if let Some(info) = graph.info_of(system, finding, axle, path) {
                        graph.findings.push(info);
                    }
                }
            }
        }
        SECTIONS.iter().flat_map(|(_, section)| section.also).for_each(|also| graph.check(also));
        graph
    }

    /// An addition has a line or a finding to which it adds.
    fn check(&mut self, also: &Also) {
        let line = self.slots.iter().map(|slot| slot.line).find(|line| line.path == also.path);
        let reading = line.is_some_and(|line| matches!(line.class, Some(Class::Measurement(_))));
        let finding = self.findings.iter().any(|info| info.finding.path == also.path);
        let adds = !also.steps.is_empty() || !also.measured_on.is_empty() || !also.about.is_empty();
        let suits = (also.steps.is_empty() || line.is_some())
            && (also.measured_on.is_empty() || reading)
            && (also.about.is_empty() || finding);
        if !adds || !suits {
            self.faults.push(format!("an addition to {} finds nothing to which it adds", also.path));
        }
    }

    fn add(&mut self, path: &'static str, line: &'static Line) {
        let slot = self.slots.len() as Slot;
        if self.by_path.insert(path, slot).is_some() {
            self.faults.push(format!("{path} stands twice"));
        }
        if line.written {
            let ends = path.char_indices().filter(|(_, c)| matches!(c, '.' | '[')).map(|(at, _)| at);
            self.folders.extend(ends.map(|end| &path[..end]));
            let items = path.match_indices(']').map(|(at, _)| at + 1).filter(|end| *end < path.len());
            self.folders.extend(items.map(|end| &path[..end]));
        }
        self.slots.push(SlotInfo { path, line, steps: vec![], measured_on: vec![] });
    }

    /// Whether a path names the end of the vehicle within the table of that end: `front.axle`.
    pub fn is_end(&self, path: &str) -> bool {
        self.models.iter().any(|model| {
            model.end.is_some_and(|(field, _)| {
                path.strip_prefix(model.table).is_some_and(|rest| rest.strip_prefix('.') == Some(field))
            })
        })
    }

    /// Numbers the calls with several results: the same function or rule with the same inputs is one call.
    fn number_calls(&mut self) {
        let mut calls: HashMap<(usize, Vec<Slot>), u16> = HashMap::new();
        for step in self.slots.iter_mut().flat_map(|slot| &mut slot.steps) {
            let call = match step.call {
                Calls::Function(entry, _) if entry.outputs.len() > 1 => core::ptr::from_ref(entry).addr(),
                Calls::Rule(rule, _) if rule.results.len() > 1 => rule.call as usize,
                _ => continue,
            };
            let next = calls.len() as u16;
            step.shared = Some(*calls.entry((call, step.inputs.clone())).or_insert(next));
        }
        self.shared = calls.len();
    }

    /// The fields of a model and their lines.
    fn fields(&mut self, model: &'static ModelOf, axle: Option<&str>) -> Option<Vec<FieldInfo>> {
        let (mut shape, mut fields) = (Shape::default(), vec![]);
        (model.shape)(&mut shape);
        for (input, (taken, leaves)) in model.inputs.iter().zip(&shape.inputs).enumerate() {
            let path = within(taken.path, axle);
            let whole = shape.wholes.get(input).copied().unwrap_or(false);
            let may_lack = taken.need == Need::Typed && !whole && leaves.iter().all(|leaf| leaf.optional > 0);
            for (place, entry) in self.entries(&path).iter().enumerate() {
                let name = match path.contains("[*]") {
                    true => format!("{}[{place}]", taken.name),
                    false => taken.name.to_owned(),
                };
                for leaf in leaves {
                    let (line, name) = (below(entry, &leaf.key), below(&name, &leaf.key));
                    // A list ends with its last entry that is written.
                    let around = u8::from(taken.need == Need::Needed);
                    let optional = leaf.optional > around || place > 0;
                    let (part, required) = (may_lack.then_some(input), leaf.optional == 1);
                    fields.push(FieldInfo { name, slot: self.known(&line)?, optional, part, required });
                }
            }
        }
        Some(fields)
    }

    /// Lets an old path, or every line of an old table, stand for the new one.
    fn rename(&mut self, renamed: &'static Renamed) {
        let places = if renamed.old.contains("[]") { usize::from(u8::MAX) } else { 1 };
        let at = |path: &str, place: usize| path.replace("[]", &format!("[{place}]"));
        let pairs = axles(renamed.old).into_iter().flat_map(|(axle, old)| {
            let new = within(renamed.new, axle);
            (0..places).map(move |place| (place, at(&old, place), at(&new, place)))
        });
        for (place, old, new) in pairs {
            let inside = |path: &str| path.strip_prefix(&*new).map(str::to_owned);
            let lines: Vec<(String, Slot)> = self
                .slots
                .iter()
                .enumerate()
                .filter_map(|(slot, info)| Some((inside(info.path)?, slot as Slot)))
                .filter(|(rest, _)| rest.is_empty() || rest.starts_with(['.', '[']))
                .collect();
            if lines.is_empty() && place == 0 {
                self.faults.push(format!("{old} was renamed to {new}, which is not there"));
            }
            for (rest, slot) in lines {
                let path = kept(format!("{old}{rest}"));
                let ends = path.char_indices().filter(|(_, c)| matches!(c, '.' | '[')).map(|(at, _)| at);
                self.folders.extend(ends.map(|end| &path[..end]));
                self.renamed.insert(path, slot);
                if !renamed.words.is_empty() {
                    self.old_words.insert(slot, renamed.words);
                }
            }
        }
    }

    fn step(&mut self, step: &'static Step, axle: Option<&str>, place: usize) -> Option<StepInfo> {
        let at = |path: &str| within(path, axle).replace("[]", &format!("[{place}]"));
        let (mut inputs, mut optional, mut counts) = (vec![], vec![], vec![]);
        for input in step.inputs {
            for slot in self.all(&at(input.trim_start_matches('?'))) {
                inputs.push(slot?);
                optional.push(input.starts_with('?'));
            }
        }
        if let Call::Rule(rule, _) = &step.call {
            let mut shape = Shape::default();
            (rule.shape)(&mut shape);
            for (taken, leaves) in rule.inputs.iter().zip(&shape.inputs) {
                let before = inputs.len();
                for entry in self.entries(&at(taken.path)) {
                    for leaf in leaves {
                        inputs.push(self.known(&below(&entry, &leaf.key))?);
                        optional.push(match taken.need {
                            Need::Typed => leaf.optional > 0,
                            Need::Needed => leaf.optional > 1,
                            Need::Used => true,
                        });
                    }
                }
                counts.push((inputs.len() - before) as u16);
            }
        }
        let call = match &step.call {
            Call::Function(path, place) => match catalogue::entry(path) {
                Ok(entry) => Calls::Function(entry, *place),
                Err(error) => {
                    self.faults.push(error.to_string());
                    return None;
                }
            },
            Call::Part(place) => Calls::Part(*place),
            Call::Pick => Calls::Pick,
            Call::Combine(combine) => Calls::Combine(combine),
            Call::Rule(rule, place) => Calls::Rule(rule, *place),
        };
        Some(StepInfo {
            call,
            inputs,
            optional,
            counts,
            shared: None,
            leeway: step.leeway,
            lacking: step.lacking,
        })
    }

    fn info_of(
        &mut self,
        system: &'static str,
        finding: &'static Finding,
        axle: Option<&str>,
        path: String,
    ) -> Option<FindingInfo> {
        let mut slot = |path: &str| self.known(&within(path, axle));
        let margin = match &finding.margin {
            Margin::Ratio { capacity, demand } => {
                MarginSlots::Ratio { capacity: slot(capacity)?, demand: slot(demand)? }
            }
            Margin::Remaining { value } => MarginSlots::Remaining { value: slot(value)? },
            Margin::AtLeast { value, least } => {
                MarginSlots::AtLeast { value: slot(value)?, least: slot(least)? }
            }
            Margin::AtMost { value, most } => MarginSlots::AtMost { value: slot(value)?, most: slot(most)? },
            Margin::Band { value, low, high } => {
                MarginSlots::Band { value: slot(value)?, low: slot(low)?, high: slot(high)? }
            }
        };
        let wanted = slot(finding.wanted)?;
        let rests_on = finding.rests_on.iter().map(|path| slot(path)).collect::<Option<_>>()?;
        let about = added(finding.path).flat_map(|also| also.about).chain(finding.about);
        let about = about.map(|about| self.about(about, axle)).collect();
        Some(FindingInfo { path: kept(path), system, finding, margin, wanted, rests_on, about })
    }

    fn about(&mut self, about: &'static About, axle: Option<&str>) -> AboutInfo {
        let parts = self.parts(about.parts, axle);
        let (lines, beside) = (self.lines_in(&parts), self.parts(about.beside, axle));
        let beside = self.lines_in(&beside);
        let choice = (!about.choice.is_empty()).then(|| self.known(&within(about.choice, axle))).flatten();
        let choice = choice.map(|slot| {
            let all = if let Content::Choice(all) = self.info(slot).line.content { all } else { &[] };
            let place = |word: &&str| all.iter().position(|known| known == word);
            let words: Vec<usize> = about.words.iter().filter_map(place).collect();
            if words.len() < about.words.len() {
                self.faults.push(format!("{} has not all of {:?}", about.choice, about.words));
            }
            AboutChoice { slot, words, sure: about.sure }
        });
        AboutInfo { parts, lines, choice, beside }
    }

    /// Lines that are one of these parts, or stand in it.
    fn lines_in(&self, parts: &[&str]) -> Vec<Slot> {
        let mut lines: Vec<Slot> = parts.iter().flat_map(|part| self.lines_of(part)).collect();
        lines.sort_unstable();
        lines.dedup();
        lines
    }

    /// Lines that are this part, or stand in it.
    fn lines_of<'a>(&'a self, part: &'a str) -> impl Iterator<Item = Slot> + 'a {
        let from = (Bound::Included(part), Bound::Unbounded);
        let found = self.by_path.range::<str, _>(from).map_while(move |(path, slot)| {
            let rest = path.strip_prefix(part)?;
            Some((rest.is_empty() || rest.starts_with(['.', '['])).then_some(*slot))
        });
        found.flatten()
    }

    /// Lines or tables of which a sheet may say that there is none.
    fn parts(&mut self, paths: &[&str], axle: Option<&str>) -> Vec<&'static str> {
        let mut parts = vec![];
        for path in paths.iter().map(|path| within(path, axle)) {
            match self.part(&path) {
                Some(part) => parts.push(part),
                None => self.faults.push(format!("{path} is no part of which a sheet may say `none`")),
            }
        }
        parts
    }

    /// Lines of the parts on which a line is measured; what is wanted of a part, in its table, is none of it.
    fn measured_on(&mut self, at: usize) -> Vec<Slot> {
        let SlotInfo { path, line, .. } = self.slots[at];
        let Some(Class::Measurement(parts)) = line.class else { return vec![] };
        let axle = AXLES.into_iter().find(|axle| path.split('.').next() == Some(axle));
        let mut lines = vec![];
        for part in parts.iter().map(|part| within(part, axle)) {
            let mut found = self.lines_in(&[&part]);
            if found.is_empty() {
                self.faults.push(format!("{path} is measured on {part}, which has no line"));
            }
            found.retain(|slot| {
                let info = self.info(*slot);
                let of_part = info.path == part || info.line.class != Some(Class::Wish);
                usize::from(*slot) != at && info.line.written && of_part
            });
            lines.append(&mut found);
        }
        lines.sort_unstable();
        lines.dedup();
        lines
    }

    /// The path, or the path of every place of a list for `[*]`: there are as many places as the list has lines.
    fn entries(&self, path: &str) -> Vec<String> {
        match path.split_once("[*]") {
            None => vec![path.to_owned()],
            Some((list, rest)) => {
                let places = (0..).take_while(|place| {
                    let entry = format!("{list}[{place}]");
                    self.slot(&entry).is_some() || self.folders.contains(entry.as_str())
                });
                places.map(|place| format!("{list}[{place}]{rest}")).collect()
            }
        }
    }

    /// The line of a path, or every place of it for `[*]`.
    fn all(&mut self, path: &str) -> Vec<Option<Slot>> {
        match path.split_once("[*]") {
            None => vec![self.known(path)],
            Some((list, rest)) => {
                let places = (0..).map(|place| format!("{list}[{place}]{rest}"));
                places.map_while(|path| self.slot(&path)).map(Some).collect()
            }
        }
    }

    fn known(&mut self, path: &str) -> Option<Slot> {
        let slot = self.slot(path);
        if slot.is_none() {
            self.faults.push(format!("there is no line {path}"));
        }
        slot
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::section::How;
    use crate::base::section::rule::Fits;

    #[test]
    fn the_systems_agree_on_their_lines() {
        assert_eq!(Graph::get().faults, Vec::<String>::new());
    }

    #[test]
    fn every_step_takes_and_gives_the_kinds_of_its_function() {
        let graph = Graph::get();
        for slot in &graph.slots {
            for step in &slot.steps {
                let Calls::Function(entry, place) = step.call else { continue };
                let names = (slot.path, entry.path);
                assert_eq!(
                    entry.outputs[place].kind.name,
                    slot.kind().map_or("", |kind| kind.name),
                    "{names:?}"
                );
                assert_eq!(entry.inputs.len(), step.inputs.len(), "{names:?}");
                for (input, taken) in step.inputs.iter().zip(entry.inputs) {
                    let given = graph.info(*input);
                    let kind = given.kind().map_or("", |kind| kind.name);
                    assert_eq!(kind, taken.kind.name, "{names:?}: {}", given.path);
                }
            }
        }
    }

    #[test]
    fn every_rule_takes_and_gives_what_its_lines_hold() {
        let graph = Graph::get();
        let fits = |slot: Slot| match graph.info(slot).line.content {
            Content::Quantity(kind) => Fits::Quantity(kind),
            Content::Choice(words) => Fits::Choice(words),
            Content::Marking(_) => Fits::Marking,
        };
        for slot in &graph.slots {
            for step in &slot.steps {
                let Calls::Rule(rule, place) = step.call else { continue };
                let mut shape = Shape::default();
                (rule.shape)(&mut shape);
                assert_eq!(
                    (shape.inputs.len(), shape.results.len()),
                    (rule.inputs.len(), rule.results.len())
                );
                assert_eq!(shape.results[place], fits(graph.slot(slot.path).unwrap()), "{}", slot.path);
                let mut given = step.inputs.iter();
                for ((taken, leaves), count) in rule.inputs.iter().zip(&shape.inputs).zip(&step.counts) {
                    for leaf in leaves.iter().cycle().take(usize::from(*count)) {
                        let line = *given.next().unwrap();
                        let names = (slot.path, taken.name, graph.info(line).path);
                        assert_eq!(leaf.fits, fits(line), "{names:?}");
                    }
                }
                assert_eq!(given.next(), None, "{}", slot.path);
            }
        }
    }

    /// A sum or a least is of one kind; a pressure or a temperature may have a difference added.
    #[test]
    fn every_combination_is_of_kinds_that_go_together() {
        let graph = Graph::get();
        let kind = |slot: Slot| graph.info(slot).kind().map_or("", |kind| kind.name);
        for slot in &graph.slots {
            for step in &slot.steps {
                let Calls::Combine(combine) = step.call else { continue };
                let of: Vec<&str> = step.inputs.iter().map(|input| kind(*input)).collect();
                let result = slot.kind().map_or("", |kind| kind.name);
                let offset = match result {
                    "Temperature" => "TemperatureDifference",
                    "GaugePressure" | "AbsolutePressure" => "Stress",
                    other => other,
                };
                let fits = match combine.how {
                    How::Same | How::Least | How::Greatest | How::Mean | How::Negative => {
                        of.iter().all(|of| *of == result)
                    }
                    How::Sum | How::Difference => of[0] == result && of[1..].iter().all(|of| *of == offset),
                    How::Product => {
                        of.iter().filter(|of| **of == result).count() >= 1
                            && of.iter().all(|of| *of == result || *of == "Ratio")
                    }
                    How::Quotient => {
                        of[1] == "Ratio" && of[0] == result || of[0] == of[1] && result == "Ratio"
                    }
                };
                assert!(fits, "{}: {:?} of {of:?} is no {result}", slot.path, combine.how);
            }
        }
    }

    #[test]
    fn a_pick_has_a_line_of_its_kind_for_every_word() {
        let graph = Graph::get();
        for slot in &graph.slots {
            for step in slot.steps.iter().filter(|step| matches!(step.call, Calls::Pick)) {
                let Content::Choice(words) = graph.info(step.inputs[0]).line.content else {
                    panic!("{} picks by no choice", slot.path)
                };
                assert_eq!(step.inputs.len(), words.len() + 1, "{}", slot.path);
                for line in &step.inputs[1..] {
                    assert_eq!(graph.info(*line).kind(), slot.kind(), "{}", slot.path);
                }
            }
        }
    }

    #[test]
    fn no_line_follows_from_itself() {
        fn visit(graph: &Graph, slot: Slot, path: &mut Vec<Slot>, done: &mut BTreeSet<Slot>) {
            assert!(!path.contains(&slot), "{} follows from itself", graph.info(slot).path);
            if done.contains(&slot) {
                return;
            }
            path.push(slot);
            for input in graph.info(slot).steps.iter().flat_map(|step| &step.inputs) {
                visit(graph, *input, path, done);
            }
            path.pop();
            done.insert(slot);
        }
        let (graph, mut done) = (Graph::get(), BTreeSet::new());
        for slot in 0..graph.slots.len() {
            visit(graph, slot as Slot, &mut vec![], &mut done);
        }
    }

    /// A wish under another table is one of these.
    const WISHES_ELSEWHERE: &[&str] = &["leak_test.allowed_loss"];

    #[test]
    fn every_line_that_is_written_has_a_class_that_suits_it() {
        let mut wishes_elsewhere = vec![];
        for slot in &Graph::get().slots {
            let (line, path) = (slot.line, slot.path);
            assert_eq!(line.class.is_some(), line.written, "{path}");
            assert!(line.written || !line.left_out_is_none, "{path}");
            assert_eq!(
                line.class == Some(Class::Choice),
                matches!(line.content, Content::Choice(_)),
                "{path}"
            );
            let wanted = path.split('.').any(|key| key == "wanted");
            match line.class {
                Some(Class::Wish) if !wanted && !path.starts_with("use.") => wishes_elsewhere.push(path),
                Some(Class::Wish) => {}
                _ => assert!(!wanted || line.class.is_none(), "{path} is wanted, and no wish"),
            }
            // A reading of one part has no usual value that could replace it on another part.
            let void = line.left_out_is_none && line.assumed.is_some();
            assert!(!void, "{path}");
            // A reading is not itself a marking: a marking names its part.
            let reading = matches!(line.class, Some(Class::Measurement(_)));
            assert!(!(reading && matches!(line.content, Content::Marking(_))), "{path}");
        }
        assert_eq!(wishes_elsewhere, WISHES_ELSEWHERE);
    }

    #[test]
    fn a_line_that_is_never_written_follows_from_others() {
        for slot in &Graph::get().slots {
            assert!(slot.line.written || !slot.steps.is_empty(), "{}", slot.path);
            let meaning = slot.line.meaning;
            assert!(!meaning.is_empty() && !meaning.ends_with('.'), "{}", slot.path);
        }
    }

    #[test]
    fn a_margin_compares_one_kind() {
        let graph = Graph::get();
        for finding in &graph.findings {
            let kinds: BTreeSet<&str> =
                finding.margin.slots().filter_map(|slot| Some(graph.info(slot).kind()?.name)).collect();
            assert_eq!(kinds.len(), 1, "{}: {kinds:?}", finding.path);
            let offset = ["Temperature", "GaugePressure"].iter().any(|kind| kinds.contains(kind));
            assert!(!offset || !matches!(finding.margin, MarginSlots::Ratio { .. }), "{}", finding.path);
            assert!(finding.finding.question.ends_with('?'), "{}", finding.path);
        }
    }
}
