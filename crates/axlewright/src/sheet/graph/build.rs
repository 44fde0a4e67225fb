//! The graph as it is made: sections joined, paths written out, each step with its slots.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]
#![expect(clippy::string_slice, reason = "cut beside a character of one byte that was found there")]

use super::{
    AboutChoice, AboutInfo, Calls, FieldInfo, FindingInfo, Graph, MarginSlots, ModelInfo, Slot, SlotInfo,
    StepInfo,
};
use crate::base::section::rule::{Need, Shape, below};
use crate::base::section::{
    About, Also, Call, Class, Content, Finding, Line, Margin, ModelOf, Renamed, Step,
};
use crate::catalogue;
use crate::sheet::generated::SECTIONS;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::ops::Bound;

const AXLES: [&str; 2] = ["front", "rear"];

/// The paths for which one stands: `axle` is both axles.
pub(in crate::sheet) fn axles(path: &str) -> Vec<(Option<&'static str>, String)> {
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
    pub(super) fn new() -> Graph {
        let mut graph = Graph {
            lines: vec![],
            slots: vec![],
            findings: vec![],
            by_path: BTreeMap::new(),
            renamed: BTreeMap::new(),
            old_words: BTreeMap::new(),
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
        for part in SECTIONS.iter().flat_map(|(_, section)| section.parts) {
            graph.describe(part);
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
        self.slots.push(SlotInfo { path, line, steps: vec![], measured_on: vec![], beside: vec![] });
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
            assumed_too: step.assumed_too,
            lacking: step.lacking,
            holds: step.holds,
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
        let told_by = about.told_by.iter().filter_map(|path| self.known(&within(path, axle))).collect();
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
        AboutInfo { parts, lines, choice, beside, told_by }
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

    /// Lines that describe one part; lists of two systems that share a line describe the same part.
    fn describe(&mut self, part: &[&str]) {
        let each = if part.iter().any(|path| path.starts_with("axle.")) {
            AXLES.map(Some).to_vec()
        } else {
            vec![None]
        };
        for axle in each {
            let mut lines = vec![];
            for path in part.iter().map(|path| within(path, axle)) {
                let found = self.lines_in(&[&path]);
                if !found.iter().any(|slot| self.info(*slot).line.written) {
                    self.faults.push(format!("{path} is no line that describes a part"));
                }
                lines.extend(found.into_iter().filter(|slot| self.info(*slot).line.written));
            }
            let known: Vec<Slot> = lines.iter().flat_map(|slot| self.info(*slot).beside.clone()).collect();
            lines.extend(known);
            lines.sort_unstable();
            lines.dedup();
            for slot in &lines {
                self.slots[usize::from(*slot)].beside =
                    lines.iter().copied().filter(|other| other != slot).collect();
            }
        }
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
