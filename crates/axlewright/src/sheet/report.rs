//! Sheets and assessments as text: TOML, JSON, plain reports, two cases side by side.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]
#![expect(clippy::string_slice, reason = "cut beside a character of one byte that was found there")]

use super::applies::Asked;
use super::assess::{Answer, Assessment, WorkStep};
use super::brief::Report;
use super::contradiction::Contradiction;
use super::graph::{Graph, MarginSlots, Slot};
use super::margin::value_kind;
use super::{Sheet, Text, quoted};
use crate::Verdict;
use crate::base::document::NONE;
use crate::base::section::Content;
use crate::base::text::{System, is_hidden, print, printable};
use crate::base::work::Entry;
use crate::units::Kind;
use serde_json::{Map, Value, json};

/// The lines of a sheet as nested tables and lists, by name.
pub(super) fn nested(sheet: &Sheet) -> Map<String, Value> {
    let mut root = Map::new();
    for (slot, written) in &sheet.values {
        let value = match &written.text {
            Text::Quoted(text) => Value::from(text.clone()),
            Text::Number(number) => Value::from(*number),
        };
        place(&mut root, Graph::get().info(*slot).path, value);
    }
    for path in &sheet.none {
        place(&mut root, path, Value::from(NONE));
    }
    root
}

/// Puts a value at a path such as `engine.curve[2].torque`; the places of a list come in order.
fn place(table: &mut Map<String, Value>, path: &str, value: Value) {
    let end = path.find(['.', '[']).unwrap_or(path.len());
    let (key, rest) = path.split_at(end);
    if rest.is_empty() {
        table.insert(key.to_owned(), value);
    } else if let Some(rest) = rest.strip_prefix('.') {
        let inner = table.entry(key).or_insert_with(|| Value::Object(Map::new()));
        if let Value::Object(inner) = inner {
            place(inner, rest, value);
        }
    } else if let Some((_, rest)) = rest.split_once(']') {
        let number: usize = path[end + 1..].split(']').next().and_then(|text| text.parse().ok()).unwrap_or(0);
        let list = table.entry(key).or_insert_with(|| Value::Array(vec![]));
        let Value::Array(list) = list else { return };
        match rest.strip_prefix('.') {
            None => list.push(value),
            Some(rest) => {
                while list.len() <= number {
                    list.push(Value::Object(Map::new()));
                }
                if let Some(Value::Object(inner)) = list.get_mut(number) {
                    place(inner, rest, value);
                }
            }
        }
    }
}

/// Tables as TOML: the keys of each table first, then the tables in it.
pub(super) fn toml_tables(table: &Map<String, Value>, folder: &mut Vec<String>, out: &mut String) {
    let plain = |value: &Value| !value.is_object();
    let mut keys = table.iter().filter(|(_, value)| plain(value)).peekable();
    if keys.peek().is_some() && !folder.is_empty() {
        out.push_str(&format!("\n[{}]\n", folder.join(".")));
    }
    for (key, value) in keys {
        match value {
            Value::Array(items) if items.iter().any(Value::is_object) => {
                out.push_str(&format!("{key} = [\n"));
                items.iter().for_each(|item| out.push_str(&format!("    {},\n", toml_value(item))));
                out.push_str("]\n");
            }
            value => out.push_str(&format!("{key} = {}\n", toml_value(value))),
        }
    }
    for (key, value) in table {
        if let Value::Object(inner) = value {
            folder.push(key.clone());
            toml_tables(inner, folder, out);
            folder.pop();
        }
    }
}

fn toml_value(value: &Value) -> String {
    match value {
        Value::String(text) => quoted(text),
        Value::Array(items) => format!("[{}]", items.iter().map(toml_value).collect::<Vec<_>>().join(", ")),
        Value::Object(table) => {
            let pairs: Vec<String> =
                table.iter().map(|(key, value)| format!("{key} = {}", toml_value(value))).collect();
            format!("{{ {} }}", pairs.join(", "))
        }
        other => other.to_string(),
    }
}

impl Sheet {
    /// The text of a line, if it is written.
    pub(super) fn text_of(&self, slot: Slot) -> Option<String> {
        self.values.get(&slot).map(|written| written.text.to_string())
    }

    /// Name of this content: the first 128 bits of the SHA-256 of its JSON, in hexadecimal digits.
    pub fn hash(&self) -> String {
        use sha2::Digest;
        let digest = sha2::Sha256::digest(self.to_json().as_bytes());
        digest.iter().take(16).map(|byte| format!("{byte:02x}")).collect()
    }
}

/// A number in a shop's unit, or that it is not known.
fn shown(si: f64, kind: &'static Kind, system: System) -> String {
    if si.is_nan() { "not known".to_owned() } else { print(si, kind, system) }
}

/// The line of a value: a word of a choice, a quantity.
fn said(slot: Slot, si: f64, system: System) -> String {
    match Graph::get().info(slot).line.content {
        Content::Choice(words) => words.get(si as usize).map_or(String::new(), |word| (*word).to_owned()),
        Content::Marking(_) => "marking".to_owned(),
        Content::Quantity(kind) => shown(si, kind, system),
    }
}

impl Answer {
    /// The limit in words: `at most 400 N·m`.
    pub fn limit_text(&self, system: System) -> String {
        let show = |si| shown(si, self.kind, system);
        match self.form {
            "place in a band" => format!("{} to {}", show(self.low), show(self.high)),
            _ if self.is_at_least() => format!("at least {}", show(self.low)),
            _ => format!("at most {}", show(self.high)),
        }
    }

    fn is_at_least(&self) -> bool {
        let graph = Graph::get();
        let margin = graph.finding(self.path).map(|at| graph.findings[at].margin);
        matches!(margin, Some(MarginSlots::AtLeast { .. } | MarginSlots::Remaining { .. }))
    }

    /// The margin and what is wanted: `1.34 (wanted 1.25)`.
    pub fn margin_text(&self, system: System) -> String {
        let show = |si| shown(si, self.margin_kind, system);
        let spread = if self.uncertainty > 0.0 {
            format!(" ± {} (1 standard uncertainty)", show(self.uncertainty))
        } else if self.uncertainty.is_nan() && !self.margin.is_nan() {
            " ± not known".to_owned()
        } else {
            String::new()
        };
        // The verdict stands on this number.
        let worst = match self.worst {
            worst if worst < self.margin => format!(", at worst {}", show(worst)),
            worst if worst.is_nan() && !self.margin.is_nan() => {
                ", at worst not known (a tolerance reaches beyond what can be computed)".to_owned()
            }
            _ => String::new(),
        };
        let wanted = match self.wanted.is_infinite() {
            true => "no margin is enough yet, see what is assumed".to_owned(),
            false => format!("wanted {}", show(self.wanted)),
        };
        format!("{}{spread}{worst}, {wanted}", show(self.margin))
    }
}

impl Contradiction {
    /// It in one sentence.
    pub fn text(&self, system: System) -> String {
        let slot = Graph::get().slot(self.path);
        let show = |si: f64| slot.map_or_else(String::new, |slot| said(slot, si, system));
        let from = match self.from.as_slice() {
            [first, .., last] if self.from.len() > 4 => {
                format!("{first} to {last}, {} lines", self.from.len())
            }
            few => few.join(", "),
        };
        let is_word = slot.is_some_and(|slot| Graph::get().info(slot).kind().is_none());
        let apart = match is_word {
            true => String::new(),
            false => {
                format!("; they may lie {} apart", shown(self.allowed, self.allowed_kind(), system))
            }
        };
        let bound = if self.bound.is_empty() { String::new() } else { format!("{} ", self.bound) };
        format!(
            "{} is written as {}, but {bound}{} follows from {from} ({}){apart}",
            self.path,
            show(self.written),
            show(self.follows),
            self.by
        )
    }
}

impl Assessment {
    /// The library that made it, and the hash of the sheet.
    pub fn stamp(&self) -> String {
        format!("axlewright {}, sheet {}", env!("CARGO_PKG_VERSION"), self.sheet.hash())
    }

    /// The report at 80 columns, in the units of a shop; the work is shown on request. [`Assessment::report`] has more forms.
    pub fn to_text(&self, system: System, with_work: bool) -> String {
        self.report(&Report { system: Some(system), work: with_work, ..Report::default() })
    }

    /// Missing inputs of an answer, in one sentence.
    pub fn missing_text(&self, answer: &Answer) -> String {
        let missing = self.missing(answer);
        let mut said = Vec::new();
        if let Some(Asked::Open(why)) = self.is_asked(answer) {
            said.push(why.clone());
        }
        if !missing.needs.is_empty() {
            said.push(format!("needs {} to answer \"{}\"", missing.needs.join(", "), answer.question));
        }
        let mut none: Vec<&str> =
            missing.needs.iter().filter_map(|path| self.sheet.none_around(path)).collect();
        none.dedup();
        said.extend(
            none.iter()
                .map(|part| format!("the sheet says that there is no {part}, which still counts as missing")),
        );
        said.extend(missing.refused.iter().map(|(path, why)| format!("{path} has no value: {why}")));
        if said.is_empty() {
            said.push(format!("\"{}\" has no answer", answer.question));
        }
        said.join("; ")
    }

    /// The work behind an answer: each formula, the numbers put in with their units, the result and the source.
    pub fn work(&self, answer: &Answer, system: System) -> String {
        let graph = Graph::get();
        let show = |slot: Slot| {
            let value = said(slot, self.values[usize::from(slot)], system);
            let text = self.sheet.text_of(slot).unwrap_or(value);
            format!("{} = {}", graph.info(slot).path, printable(&text))
        };
        let mut out = String::new();
        for step in self.work_steps(answer) {
            match step {
                WorkStep::Function(work) => out.push_str(&format!("{}\n", work.text(system).trim_end())),
                WorkStep::Own { line, formula, source, inputs } => {
                    let value = said(line, self.values[usize::from(line)], system);
                    out.push_str(&format!("{} = {value}\n  {formula}\n", graph.info(line).path));
                    inputs.iter().for_each(|input| out.push_str(&format!("  {}\n", show(*input))));
                    out.push_str(&format!("  source: {source}\n"));
                }
                WorkStep::Pick { line, inputs } => {
                    let value = said(line, self.values[usize::from(line)], system);
                    out.push_str(&format!("{} = {value}\n", graph.info(line).path));
                    inputs.iter().for_each(|input| out.push_str(&format!("  {}\n", show(*input))));
                }
                WorkStep::Part { line, marking } => {
                    let value = said(line, self.values[usize::from(line)], system);
                    out.push_str(&format!("{} = {value}\n  {}\n", graph.info(line).path, show(marking)));
                }
            }
        }
        out
    }

    /// The whole assessment as JSON; numbers in coherent SI.
    ///
    /// JSON has no infinite number: where no margin is enough yet, `wanted` is null, and the list `write` says what to write. A null
    /// without `write` is not known. An assumption without limit has the `value` null too, and its `ground` says what to write.
    pub fn to_json(&self) -> String {
        let number = |si: f64| if si.is_finite() { json!(si) } else { Value::Null };
        let findings: Vec<Value> = self
            .answers()
            .iter()
            .map(|answer| {
                let mut finding = json!({
                    "finding": answer.path, "system": answer.system, "question": answer.question,
                    "verdict": answer.verdict.word(), "value": number(answer.value), "low": number(answer.low),
                    "high": number(answer.high), "kind": answer.kind.name, "unit": answer.kind.si,
                    "form": answer.form, "margin": number(answer.margin), "wanted": number(answer.wanted),
                    "margin_kind": answer.margin_kind.name, "margin_unit": answer.margin_kind.si,
                    "uncertainty": number(answer.uncertainty), "worst": number(answer.worst), "safety": answer.is_safety(), "caution": answer.caution,
                    "rests_on": self.rests_on(answer),
                });
                let functions = self.functions(answer).into_iter().map(|entry| {
                    json!({"function": entry.path, "revision": entry.revision, "source": entry.source})
                });
                finding["functions"] = functions.collect();
                if answer.wanted.is_infinite() {
                    finding["write"] = json!(self.to_write(answer));
                }
                if answer.verdict == Verdict::NotKnown {
                    let missing = self.missing(answer);
                    finding["needs"] = json!(missing.needs);
                    finding["refused"] = json!(missing.refused);
                }
                finding
            })
            .collect();
        let assumed: Vec<Value> = self
            .assumed()
            .iter()
            .map(|a| json!({"line": a.path, "value": number(a.si), "kind": a.kind.name, "unit": a.kind.si, "ground": a.ground}))
            .collect();
        let contradictions: Vec<Value> = self
            .contradictions()
            .iter()
            .map(|found| {
                json!({
                    "line": found.path, "written": found.written, "follows": found.follows, "bound": found.bound, "allowed": found.allowed,
                    "kind": found.kind.name, "unit": found.kind.si, "by": found.by, "from": found.from,
                })
            })
            .collect();
        let lines: Vec<Value> = self
            .values
            .iter()
            .enumerate()
            .filter(|(_, value)| !value.is_nan())
            .map(|(slot, value)| {
                let kind = value_kind(slot as Slot);
                let info = &Graph::get().slots[slot];
                let mut line = json!({"line": info.path, "value": value, "kind": kind.name, "unit": kind.si});
                if let Content::Choice(words) = info.line.content {
                    line["word"] = json!(words.get(*value as usize));
                }
                if let Some(text) = self.sheet.text_of(slot as Slot) {
                    line["written"] = json!(text);
                }
                line
            })
            .collect();
        let whole = json!({
            "library": format!("axlewright {}", env!("CARGO_PKG_VERSION")), "sheet": self.sheet.name(),
            "hash": self.sheet.hash(), "severity": self.severity(), "findings": findings, "contradictions": contradictions,
            "assumed": assumed, "remarks": self.sheet.remarks(), "lines": lines,
        });
        printable_json(&whole.to_string())
    }

    /// The functions behind an answer, in the order in which they are called.
    pub fn functions(&self, answer: &Answer) -> Vec<&'static Entry> {
        let steps = self.work_steps(answer);
        let functions = steps.iter().filter_map(|step| match step {
            WorkStep::Function(work) => Some(work.entry()),
            _ => None,
        });
        functions.collect()
    }

    /// Two sheets side by side: every finding whose value, margin or verdict differs, at 80 columns; see [`Assessment::side_by_side`].
    pub fn compare(&self, other: &Assessment, system: System) -> String {
        let report = Report { system: Some(system), ..Report::default() };
        Assessment::side_by_side(&[("A", self), ("B", other)], &report)
    }
}

/// JSON for a terminal: a character that is no mark on paper stands only in a text, where an escape means the same.
fn printable_json(json: &str) -> String {
    let mut out = String::with_capacity(json.len());
    for c in json.chars() {
        match is_hidden(c) {
            true => {
                c.encode_utf16(&mut [0; 2]).iter().for_each(|unit| out.push_str(&format!("\\u{unit:04x}")))
            }
            false => out.push(c),
        }
    }
    out
}
