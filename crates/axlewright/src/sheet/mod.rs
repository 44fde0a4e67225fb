//! The build sheet: one document with every measurement, rating and part of a vehicle, and what follows from it.
//!
//! A [`Sheet`] is read from TOML or JSON text in which every quantity is text with its unit, and may have a tolerance:
//! `rate = "225 lbf/in +/- 3 %"`. Its lines are those that the systems export beside their formulas (`spring::SHEET`); a
//! line that is not written follows from others by functions of the catalogue, or is assumed and said to be, or is missing and
//! said to be. Nothing is guessed.
//!
//! - [`Sheet::assess`]: findings, each with value, limit, margin, verdict, what it rests on and its work
//! - [`Sheet::what_if`]: lines over lists of values, any outputs, as a table
//! - [`Assessment::sensitivity`], [`Assessment::chances`]: which tolerance matters, and whether a verdict turns
//! - [`choose`]: parts of a price list that meet requirements at the least cost or mass
//! - [`Sheet::model`]: a model that the sheet holds, ready to draw or to ask
//! - [`schema`]: the JSON Schema of this document, for editors
//!
//! Left out: what no system exports yet.

mod applies;
mod assess;
mod brief;
mod choose;
mod contradiction;
mod describe;
mod dropped;
mod generated;
mod glossary;
mod graph;
mod keys;
#[cfg(test)]
mod layers;
mod margin;
mod models;
mod plan;
mod price_list;
mod report;
mod room;
mod schema;
mod sensitivity;
mod serde;
mod shop;
mod starter;
mod tables;
mod uncertainty;
mod what_if;
mod worst;

pub use crate::base::text::System;
pub use assess::{Answer, Assessment, Assumption, Missing};
pub use brief::{COLUMNS, Next, Report};
pub use choose::{Choice, Chosen, MOST_CHOICES, Requirement, Worse, choose};
pub use contradiction::Contradiction;
pub use describe::{describe, questions};
pub use glossary::{Answers, TABLES, TableOf, Term, glossary, terms, terms_about, terms_named};
pub use keys::keys;
pub use models::{Elsewhere, SheetModel, models};
pub use price_list::{Candidate, PriceList};
pub use schema::schema;
pub use sensitivity::{Chance, MOST_SAMPLES, Sensitivity};
pub use shop::Units;
pub use starter::{DEMOS, QUESTIONS, Question, offered, starter};
pub use what_if::{Axis, Progress, WhatIf};

use crate::base::document::{
    Collector, Document, LONGEST_TEXT, NONE, PARTS, Spot, Tree, bare, too_long, wanted,
};
use crate::base::error::LEAST_MAGNITUDE;
use crate::base::section::{Class, Content, Finding, Line, Section};
use crate::base::text::{self, Tolerance, did_you_mean, nearest, shortened, unknown_key};
use crate::units::Kind;
use crate::{Error, Result};
use graph::{Graph, Slot};
use std::collections::{BTreeMap, BTreeSet};

/// Version of the document that this library reads and writes.
pub const VERSION: u32 = 1;

/// Key for the lines whose reading was taken on a part that was replaced.
const MEASURE_AGAIN: &str = "measure_again";

/// A build sheet.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sheet {
    name: String,
    notes: String,
    values: BTreeMap<Slot, Written>,
    /// Lines and tables of which the sheet says that there is none.
    none: BTreeSet<&'static str>,
    /// Old keys that were read.
    renamed: BTreeSet<(String, &'static str)>,
    /// Lines whose reading was taken on a part that was replaced, until somebody writes them.
    dropped: BTreeSet<Slot>,
}

/// Content of one line.
#[derive(Debug, Clone)]
struct Written {
    /// In coherent SI, the place of a word among the choices, or zero for a marking.
    si: f64,
    /// As it was written.
    text: Text,
    tolerance: Option<Tolerance>,
    /// Numbers of a marking.
    decoded: Vec<f64>,
}

impl PartialEq for Written {
    /// The numbers of a marking follow from its text, and what it does not say is no number.
    fn eq(&self, other: &Written) -> bool {
        (self.si, &self.text, self.tolerance) == (other.si, &other.text, other.tolerance)
    }
}

#[derive(Debug, Clone, PartialEq)]
enum Text {
    Quoted(String),
    /// A pure number without quotes.
    Number(f64),
}

impl std::fmt::Display for Text {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Text::Quoted(text) => f.write_str(text),
            Text::Number(number) => write!(f, "{number}"),
        }
    }
}

/// Every line that the systems declare, lowest layer first: its system, its path with the axles written out and `[]` for the places
/// of a list, and what stands on it, with what systems above add to it.
pub fn lines() -> impl Iterator<Item = (&'static str, String, &'static Line)> {
    Graph::get().lines.iter().flat_map(|(system, line)| {
        graph::axles(line.path).into_iter().map(|(_, path)| (*system, path, *line))
    })
}

/// Every finding that the systems declare, in the order of an assessment: its system, its path with the axles written out, and what it asks.
pub fn findings() -> impl Iterator<Item = (&'static str, String, &'static Finding)> {
    let of = |(system, section): &'static (&'static str, &'static Section)| {
        let paths = |finding: &'static Finding| {
            graph::axles(finding.path).into_iter().map(move |(_, path)| (path, finding))
        };
        section.findings.iter().flat_map(paths).map(|(path, finding)| (*system, path, finding))
    };
    generated::SECTIONS.iter().flat_map(of)
}

impl Sheet {
    /// An empty sheet.
    pub fn new(name: &str) -> Sheet {
        Sheet { name: name.to_owned(), ..Sheet::default() }
    }

    /// Reads JSON (text that begins with `{`) or TOML. Unknown keys are refused, missing ones are not; a refusal tells all faults.
    pub fn from_text(text: &str) -> Result<Sheet> {
        let (document, broken) = Document::read(text)?;
        Sheet::of(&document, broken)
    }

    /// The sheet of a document that was read before, or that a program filled.
    pub fn from_document(document: &Document) -> Result<Sheet> {
        Sheet::of(document, vec![])
    }

    fn of(document: &Document, broken: Vec<(usize, Error)>) -> Result<Sheet> {
        let mut faults = Collector::new(&document.source, broken);
        let mut sheet = Sheet::default();
        match &document.root.value {
            Tree::Table(entries) if !faults.is_lost() => {
                entries.iter().for_each(|(key, spot)| sheet.read_top(key, spot, &mut faults));
            }
            _ => {}
        }
        // A line that was written since was measured again.
        let mut dropped = std::mem::take(&mut sheet.dropped);
        dropped.retain(|slot| {
            !sheet.values.contains_key(slot) && sheet.none_around(Graph::get().info(*slot).path).is_none()
        });
        sheet.dropped = dropped;
        faults.finish()?;
        Ok(sheet)
    }

    fn read_top(&mut self, key: &str, spot: &Spot, faults: &mut Collector<'_>) {
        match (key, &spot.value) {
            ("version", Tree::Number(version) | Tree::Si(version)) if *version == f64::from(VERSION) => {}
            ("version", other) => {
                let message =
                    format!("this library reads version {VERSION} of a sheet, not {}", other.words());
                faults.add(spot.at, Error::document("version", message));
            }
            ("name", Tree::Text(name)) => self.name = name.clone(),
            ("notes", Tree::Text(notes)) => self.notes = notes.clone(),
            ("name" | "notes", other) => {
                faults.add(spot.at, Error::document(key, format!("expected text, not {}", other.words())));
            }
            (MEASURE_AGAIN, Tree::List(paths)) => {
                paths.iter().for_each(|spot| self.read_dropped(spot, faults));
            }
            (MEASURE_AGAIN, other) => {
                let message = format!("expected a list of lines, not {}", other.words());
                faults.add(spot.at, Error::document(key, message));
            }
            _ => self.read("", key, spot, faults),
        }
    }

    /// Reads the path of a line whose reading was dropped.
    fn read_dropped(&mut self, spot: &Spot, faults: &mut Collector<'_>) {
        let Tree::Text(path) = &spot.value else {
            let message = format!("expected the path of a line, not {}", spot.value.words());
            return faults.add(spot.at, Error::document(MEASURE_AGAIN, message));
        };
        match line_of(path) {
            Ok(slot) => drop(self.dropped.insert(slot)),
            Err(error) => faults.add(spot.at, error),
        }
    }

    /// Remarks on the document: keys that were read under an old name, and readings that were dropped with the part on which they were taken.
    pub fn remarks(&self) -> Vec<String> {
        let renamed = self.renamed.iter().map(|(old, new)| format!("{old} is now {new}"));
        let dropped = self.dropped.iter().map(|slot| {
            let info = Graph::get().info(*slot);
            let path = info.path;
            match info.line.class {
                Some(Class::Measurement(_)) => {
                    format!(
                        "{path} was measured on a part that was replaced, and is left out: measure it again"
                    )
                }
                _ => format!(
                    "{path} describes a part that was replaced, and is left out: write it of the new part"
                ),
            }
        });
        renamed.chain(dropped).collect()
    }

    /// Name of the sheet.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Writes a line as a document would: `"225 lbf/in +/- 3 %"`. `"none"` says of a line or a table that there is no such part: a
    /// finding about that part does not apply then, and for any other it counts as missing.
    pub fn set(&mut self, path: &str, text: &str) -> Result<()> {
        let choice = Graph::get().slot(path).is_some_and(|slot| chooses(slot, text));
        if text == NONE && !choice {
            return self.set_none(path);
        }
        self.put(path, |slot| spot_of(slot, text))
    }

    /// Writes several lines, each as `set` does; nothing for a text takes the line out. A refusal tells the faults of all of them, and leaves the
    /// sheet as it was.
    pub fn set_all<'a>(&mut self, lines: impl IntoIterator<Item = (&'a str, Option<&'a str>)>) -> Result<()> {
        let (mut next, mut faults) = (self.clone(), Vec::new());
        for (path, text) in lines {
            let changed = match text {
                Some(text) => next.set(path, text),
                None => next.remove(path),
            };
            faults.extend(changed.err());
        }
        if !faults.is_empty() {
            return Err(Error::all(faults));
        }
        *self = next;
        Ok(())
    }

    /// Writes a quantity in coherent SI; its text is the number in its SI unit. NaN, which is not known, takes the line out.
    pub fn set_si(&mut self, path: &str, si: f64) -> Result<()> {
        if si.is_nan() { self.remove(path) } else { self.put(path, |_| Ok(Spot::of(Tree::Si(si)))) }
    }

    fn put(&mut self, path: &str, spot: impl FnOnce(Slot) -> Result<Spot>) -> Result<()> {
        let slot = writable(path)?;
        let written = written(slot, &spot(slot)?)?;
        if let Some((before, _)) = neighbours(path).0.filter(|(_, known)| !self.values.contains_key(known)) {
            return Err(Error::document(path, out_of_order(&before)));
        }
        self.refuse_inside_none(path)?;
        self.none.remove(path);
        self.dropped.remove(&slot);
        self.values.insert(slot, written);
        Ok(())
    }

    fn set_none(&mut self, path: &str) -> Result<()> {
        let Some(part) = Graph::get().part(path) else {
            if !Graph::get().is_folder(path) {
                writable(path)?;
            }
            return Err(Error::document(shortened(path), NO_NONE));
        };
        let inside = |line: &&str| line.strip_prefix(part).is_some_and(|rest| rest.starts_with('.'));
        if let Some(line) = self.paths().find(inside) {
            return Err(Error::document(part, format!("{line} is written: take it out first")));
        }
        if let Some(slot) = Graph::get().slot(part) {
            self.values.remove(&slot);
        }
        let told = |slot: &Slot| {
            let path = Graph::get().info(*slot).path;
            path.strip_prefix(part).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
        };
        self.dropped.retain(|slot| !told(slot));
        self.none.insert(part);
        Ok(())
    }

    /// The lines whose value follows because the sheet says that there is no such part.
    fn absent(&self) -> impl Iterator<Item = (Slot, f64)> {
        let slots = || Graph::get().slots.iter().enumerate();
        let slots = (!self.none.is_empty()).then(slots).into_iter().flatten();
        slots.filter_map(|(slot, info)| {
            let si = info.line.absent?;
            self.none_around(info.path).map(|_| (slot as Slot, si))
        })
    }

    /// Refuses a line in a table of which the sheet says that there is none.
    fn refuse_inside_none(&self, path: &str) -> Result<()> {
        match self.none_around(path).filter(|table| *table != path) {
            None => Ok(()),
            Some(table) => {
                let message = format!("the sheet says that there is no `{table}`: take that out first");
                Err(Error::document(path, message))
            }
        }
    }

    /// The part that the sheet declares `none`, on this path or on a table around it.
    fn none_around(&self, path: &str) -> Option<&'static str> {
        self.none
            .iter()
            .copied()
            .find(|none| path.strip_prefix(none).is_some_and(|rest| rest.is_empty() || rest.starts_with('.')))
    }

    /// Takes a line out.
    pub fn remove(&mut self, path: &str) -> Result<()> {
        if self.none.remove(path) {
            return Ok(());
        }
        let slot = writable(path)?;
        if let Some((after, _)) = neighbours(path).1.filter(|(_, known)| self.values.contains_key(known)) {
            let message = format!("the places of a list end with the last: {after} is written");
            return Err(Error::document(path, message));
        }
        self.dropped.remove(&slot);
        self.values.remove(&slot);
        Ok(())
    }

    /// The text of a line, if it is written; `none` if the sheet says that there is no such part.
    pub fn get(&self, path: &str) -> Result<Option<String>> {
        if self.none.contains(path) {
            return Ok(Some(NONE.to_owned()));
        }
        let slot = writable(path)?;
        Ok(self.values.get(&slot).map(|written| written.text.to_string()))
    }

    /// The kind of quantity of a line, written or not; nothing where it is a word or a marking.
    pub fn kind(path: &str) -> Result<Option<&'static Kind>> {
        Ok(Graph::get().info(line_of(path)?).kind())
    }

    /// The shop's system whose units are used on more written lines.
    pub fn system(&self) -> text::System {
        shop::system(self)
    }

    /// The paths of the lines that are written, then those of which the sheet says that there is none.
    pub fn paths(&self) -> impl Iterator<Item = &'static str> {
        self.values.keys().map(|slot| Graph::get().info(*slot).path).chain(self.none.iter().copied())
    }

    fn read(&mut self, folder: &str, key: &str, spot: &Spot, faults: &mut Collector<'_>) {
        // A path in quotes is one key; it would stand beside the table that it means.
        if key.contains(['.', '[']) {
            let key = shortened(key);
            let message = format!("`{key}` is a path in quotes, not a key: write the tables that it names");
            return faults.add(spot.key_at, Error::document(joined(folder, &key), message));
        }
        self.read_at(folder, &joined(folder, key), spot, faults);
    }

    fn read_at(&mut self, folder: &str, path: &str, spot: &Spot, faults: &mut Collector<'_>) {
        let graph = Graph::get();
        if faults.is_full() {
            return;
        }
        // The document of a model says which end of the vehicle it is; on a sheet its table says so.
        if graph.is_end(path) {
            if spot.value != Tree::Text(folder.to_owned()) {
                let message = format!("this is the table `{folder}`: write \"{folder}\" or leave it out");
                faults.add(spot.at, Error::document(path, message));
            }
            return;
        }
        if spot.value == Tree::Text(NONE.to_owned())
            && !graph.slot(path).is_some_and(|slot| chooses(slot, NONE))
        {
            if let Some(part) = graph.part(path) {
                self.none.insert(part);
                return;
            }
            if graph.is_folder(path) || graph.slot(path).is_some() {
                return faults.add(spot.at, Error::document(path, NO_NONE));
            }
        }
        if let Some(slot) = graph.slot(path).filter(|slot| graph.info(*slot).line.written) {
            let new = graph.info(slot).path;
            if self.values.contains_key(&slot) {
                let message = format!("this is the old name of {new}, which is written, too: leave one out");
                return faults.add(spot.key_at, Error::document(path, message));
            }
            if new != path {
                self.renamed.insert((path.to_owned(), new));
            }
            match written(slot, spot) {
                Ok(written) => drop(self.values.insert(slot, written)),
                Err(error) => faults.add(spot.at, error),
            }
            return;
        }
        if !graph.is_folder(path) {
            let path = shortened(path);
            return faults.add(spot.key_at, Error::document(path.as_str(), unknown(folder, &path)));
        }
        let list = graph.is_list(path);
        match &spot.value {
            Tree::List(items) if list => {
                for (place, item) in items.iter().enumerate() {
                    let at = format!("{path}[{place}]");
                    if graph.slot(&at).is_none() && !graph.is_folder(&at) {
                        let message =
                            format!("at most {place} entries are read, and the list has {}", items.len());
                        return faults.add(item.at, Error::document(path, message));
                    }
                    self.read_at(path, &at, item, faults);
                }
            }
            Tree::Table(entries) if !list => {
                entries.iter().for_each(|(key, spot)| self.read(path, key, spot, faults));
            }
            other => {
                let wanted = if list { "a list" } else { "a table" };
                faults
                    .add(spot.at, Error::document(path, format!("expected {wanted}, not {}", other.words())));
            }
        }
    }

    /// The sheet as TOML, each value as it was written, keys by name; the same sheet gives the same bytes.
    pub fn to_toml(&self) -> String {
        let mut out = format!("version = {VERSION}\n");
        for (key, text) in [("name", &self.name), ("notes", &self.notes)] {
            if !text.is_empty() {
                out.push_str(&format!("{key} = {}\n", quoted(text)));
            }
        }
        if !self.dropped.is_empty() {
            out.push_str(&format!("{MEASURE_AGAIN} = {}\n", serde_json::Value::from(self.measure_again())));
        }
        report::toml_tables(&report::nested(self), &mut Vec::new(), &mut out);
        out
    }

    /// The sheet as JSON, each value as it was written, keys by name; the same sheet gives the same bytes.
    pub fn to_json(&self) -> String {
        let mut map = serde_json::Map::new();
        map.insert("version".to_owned(), serde_json::Value::from(VERSION));
        for (key, text) in [("name", &self.name), ("notes", &self.notes)] {
            if !text.is_empty() {
                map.insert(key.to_owned(), serde_json::Value::from(text.as_str()));
            }
        }
        if !self.dropped.is_empty() {
            map.insert(MEASURE_AGAIN.to_owned(), serde_json::Value::from(self.measure_again()));
        }
        map.extend(report::nested(self));
        serde_json::Value::Object(map).to_string()
    }

    /// The paths of lines whose reading was taken on a part that was replaced.
    fn measure_again(&self) -> Vec<&'static str> {
        dropped::paths(&self.dropped.iter().copied().collect::<Vec<_>>())
    }
}

/// Text in quotes, as TOML and JSON both read it.
fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string().replace('\u{7f}', "\\u007f")
}

/// Message for a place of a list that is written before another.
fn out_of_order(before: &str) -> String {
    format!("the places of a list come in order: {before} is not written")
}

type Neighbour = Option<(String, Slot)>;

/// The lines before and after a place of a list.
fn neighbours(path: &str) -> (Neighbour, Neighbour) {
    let Some((list, rest)) = path.split_once('[') else { return (None, None) };
    let Some((place, rest)) = rest.split_once(']') else { return (None, None) };
    let Ok(place) = place.parse::<usize>() else { return (None, None) };
    let at = |place: usize| {
        let path = format!("{list}[{place}]{rest}");
        Graph::get().slot(&path).map(|slot| (path, slot))
    };
    (place.checked_sub(1).and_then(at), at(place + 1))
}

/// Message for "none" on a list or in one.
const NO_NONE: &str =
    "`none` stands on a line or a table, not on a list or in one; leave out what is not there";

/// True if a line is a choice that has this word.
fn chooses(slot: Slot, word: &str) -> bool {
    matches!(Graph::get().info(slot).line.content, Content::Choice(words) if words.contains(&word))
}

/// The path of a key in a folder.
fn joined(folder: &str, key: &str) -> String {
    if folder.is_empty() { key.to_owned() } else { format!("{folder}.{key}") }
}

/// The line of a path that may be written.
fn writable(path: &str) -> Result<Slot> {
    let graph = Graph::get();
    match graph.slot(path) {
        Some(slot) if graph.info(slot).line.written => Ok(slot),
        Some(_) => Err(Error::document(path, "this line follows from others and is never written")),
        None => {
            let path = shortened(path);
            let folder = path.rsplit_once('.').map_or("", |(folder, _)| folder);
            Err(Error::document(path.as_str(), unknown(folder, &path)))
        }
    }
}

/// The line of a path, written or not.
fn line_of(path: &str) -> Result<Slot> {
    let graph = Graph::get();
    let there = || Error::document(shortened(path), no_line(path, graph.slots.iter().map(|slot| slot.path)));
    graph.slot(path).ok_or_else(there)
}

fn no_line<'a>(path: &str, known: impl Iterator<Item = &'a str>) -> String {
    format!("there is no such line{}", did_you_mean(path, known))
}

/// Message for a key that no system has.
fn unknown(folder: &str, path: &str) -> String {
    let graph = Graph::get();
    let key = path.strip_prefix(folder).map_or(path, |key| key.trim_start_matches('.'));
    if let Some(slot) = graph.slot(path) {
        return computed(key, graph.info(slot));
    }
    if let Some(told) = glossary::for_key(folder, key) {
        return told;
    }
    let mut keys = graph.keys_in(folder);
    if folder.is_empty() {
        keys.extend(["version", "name", "notes"]);
    }
    if keys.is_empty() {
        return no_line(path, graph.slots.iter().filter(|slot| slot.line.written).map(|slot| slot.path));
    }
    unknown_key(key, keys.iter().copied())
}

/// Message for a line that is only computed: by what it follows, where the glossary tells.
fn computed(key: &str, info: &graph::SlotInfo) -> String {
    let means = glossary::terms_named(key).next().map_or(info.line.meaning, |term| term.says);
    format!("this line is computed and never written: {means}")
}

/// Value at a place of the document, for this line of the sheet.
fn written(slot: Slot, spot: &Spot) -> Result<Written> {
    let info = Graph::get().info(slot);
    let refused = |message: String| Error::document(info.path, message);
    let plain = |text: &str| Text::Quoted(text.to_owned());
    match (info.line.content, &spot.value) {
        (Content::Quantity(kind), value) => {
            let (reading, text) = match value {
                Tree::Text(text) => (text::read_as(text, kind), plain(text)),
                Tree::Number(number) if kind.name == "Ratio" => {
                    // With an exponent: without one, a tiny number is longer than a text may be.
                    (text::read_as(&format!("{number:e}"), kind), Text::Number(*number))
                }
                Tree::Number(number) => return Err(refused(bare(kind, *number))),
                Tree::Si(si) => {
                    let text = text::print_in_first(*si, kind);
                    (text::read_as(&text, kind), Text::Quoted(text))
                }
                Tree::Table(_) => {
                    let text = from_table(&spot.value).map_err(refused)?;
                    (text::read_as(&text, kind), Text::Quoted(text))
                }
                other => return Err(refused(format!("expected {}, not {}", wanted(kind), other.words()))),
            };
            let range = info.line.range;
            if let Tree::Text(text) = value
                && kind.name == "Ratio"
                && range.upper <= 1.0
                && text::is_two_parts(text)
            {
                return Err(refused(text::no_share(text)));
            }
            let reading = reading.map_err(|error| refused(error.to_string()))?;
            if !range.allows(reading.si) {
                return Err(refused(outside(&spot.value, range.missed_by(reading.si), kind)));
            }
            if let Some(tolerance) = reading.tolerance
                && range.upper > range.lower
                && uncertainty::reach(tolerance) > range.upper - range.lower
            {
                return Err(refused(format!(
                    "{text} has a tolerance that is wider than the whole range of this line, {} wide ({})",
                    text::said_in(
                        [range.upper - range.lower],
                        &text::shop_units(margin::difference(kind)),
                        text::DIGITS
                    ),
                    range.source
                )));
            }
            Ok(Written { si: reading.si, text, tolerance: reading.tolerance, decoded: vec![] })
        }
        (Content::Choice(words), Tree::Text(text)) => {
            let text = Graph::get().word(slot, text).unwrap_or(text);
            match words.iter().position(|word| *word == text) {
                Some(place) => {
                    Ok(Written { si: place as f64, text: plain(text), tolerance: None, decoded: vec![] })
                }
                None => {
                    let all: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
                    let near =
                        nearest(text, words.iter().copied()).map(|near| format!("; nearest: `{near}`"));
                    let (text, near) = (shortened(text), near.unwrap_or_default());
                    Err(refused(format!("`{text}` is not a choice; choices: {}{near}", all.join(", "))))
                }
            }
        }
        (Content::Marking(marking), Tree::Text(text)) => {
            let decoded = (marking.decode)(text).map_err(|error| refused(error.to_string()))?;
            Ok(Written { si: 0.0, text: plain(text), tolerance: None, decoded })
        }
        (_, other) => Err(refused(format!("expected text, not {}", other.words()))),
    }
}

/// A cell of a table as a document would hold it: a bare number is a ratio. A text that no document may hold is refused before it is copied.
fn spot_of(slot: Slot, text: &str) -> Result<Spot> {
    let info = Graph::get().info(slot);
    if text.chars().nth(LONGEST_TEXT).is_some() {
        return Err(Error::document(info.path, too_long()));
    }
    let is_ratio = info.kind().is_some_and(|kind| kind.name == "Ratio");
    let number = text.parse::<f64>().ok().filter(|_| is_ratio);
    Ok(Spot::of(number.map_or_else(|| Tree::Text(text.to_owned()), Tree::Number)))
}

/// `{ value = 225, unit = "lbf/in", tolerance = "3 %" }` as text.
fn from_table(tree: &Tree) -> core::result::Result<String, String> {
    let Tree::Table(entries) = tree else { return Err("expected a table".to_owned()) };
    let (mut value, mut unit, mut tolerance) = (None, None, None);
    for (key, spot) in entries {
        match (key.as_str(), &spot.value) {
            ("value", Tree::Number(number)) => value = Some(*number),
            ("unit", Tree::Text(text)) => unit = Some(text),
            ("tolerance", Tree::Text(text)) => tolerance = Some(text),
            (key, other) => {
                let key = shortened(key);
                return Err(format!(
                    "`{key}` with {} is no part of a quantity; it has `value` (a number), `unit` (text) and, if need be, \
                     `tolerance` (text)",
                    other.words()
                ));
            }
        }
    }
    let (Some(value), Some(unit)) = (value, unit) else {
        return Err(PARTS.to_owned());
    };
    Ok(match tolerance {
        None => format!("{value} {unit}"),
        Some(tolerance) => format!("{value} {unit} +/- {tolerance}"),
    })
}

fn outside(value: &Tree, range: crate::base::section::Range, kind: &'static crate::units::Kind) -> String {
    let bound = |si: f64| match si.abs() {
        LEAST_MAGNITUDE => text::print_in_first(si, kind),
        _ => text::said_in([si], &text::shop_units(kind), text::DIGITS),
    };
    let mut valid = Vec::new();
    if range.lower > f64::MIN {
        valid.push(format!("{} {}", if range.lower_open { "above" } else { "at least" }, bound(range.lower)));
    }
    if range.upper < f64::MAX {
        valid.push(format!("at most {}", bound(range.upper)));
    }
    let written = match value {
        Tree::Text(text) => text.clone(),
        Tree::Number(number) => number.to_string(),
        Tree::Si(si) => text::print_in_first(*si, kind),
        other => from_table(other).unwrap_or_default(),
    };
    format!("{written} is outside its range; valid: {} ({})", valid.join(" and "), range.source)
}

impl std::str::FromStr for Sheet {
    type Err = Error;
    fn from_str(text: &str) -> Result<Sheet> {
        Sheet::from_text(text)
    }
}
