//! A price list: parts that can be bought, what each of them writes on the sheet, and what it costs and weighs.

use super::graph::Graph;
use super::{joined, spot_of};
use crate::base::document::{
    Collector, Document, LONGEST_TEXT, MOST_VALUES, Source, Spot, Tree, sized, too_long, too_many,
};
use crate::base::text::{self, shortened};
use crate::units::Mass;
use crate::{Error, Result, cannot};

/// One part of a price list.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Its name or number.
    pub part: String,
    /// Its kind; one part of each kind is chosen.
    pub kind: String,
    /// Cost, in the money of the list.
    pub cost: f64,
    /// Mass.
    pub mass: Mass,
    /// Lines of the sheet that it writes, and how.
    pub lines: Vec<(String, String)>,
}

/// Parts that can be bought.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PriceList {
    /// The parts, in the order of the list.
    pub parts: Vec<Candidate>,
}

/// Columns of a price list on a part itself.
const OWN: [&str; 4] = ["part", "kind", "cost", "mass"];

impl PriceList {
    /// Reads a table with commas: a first row with `part`, `kind`, `cost`, `mass` and paths of the sheet, then a part a row. An empty
    /// cell writes nothing.
    pub fn from_csv(text: &str) -> Result<PriceList> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        sized(text)?;
        let source = Source::new(text);
        let mut faults = Collector::new(&source, vec![]);
        let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(text.as_bytes());
        let wrong = |error: csv::Error| {
            let at = error.position().map(|at| at.byte() as usize);
            (at, Error::document("", format!("this is no row of the table: {error}")))
        };
        let heads: Vec<String> = match reader.headers() {
            Ok(heads) => heads.iter().map(str::to_owned).collect(),
            Err(error) => {
                let (at, error) = wrong(error);
                faults.add(at, error);
                vec![]
            }
        };
        for wanted in ["part", "kind", "cost"] {
            if faults.is_empty() && !heads.iter().any(|head| head == wanted) {
                faults
                    .add(Some(0), Error::document(wanted, "the first row of a price list names this column"));
            }
        }
        let mut from = 0;
        for (place, head) in heads.iter().enumerate() {
            if faults.is_full() {
                break;
            }
            from += text.get(from..).and_then(|rest| rest.find(head.as_str())).unwrap_or(0);
            if let (false, Err(error)) = (OWN.contains(&head.as_str()), super::writable(head)) {
                faults.add(Some(from), error);
            }
            if let Some(other) = heads.iter().take(place).find(|other| is_same(other, head)) {
                faults.add(Some(from), twice(head, other));
            }
            from += head.len();
        }
        let mut parts = Parts::default();
        let mut values = 0;
        let heads_are_wrong = !faults.is_empty();
        let mut records = reader.records();
        while let Some(record) = records.next() {
            if faults.is_full() || heads_are_wrong {
                break;
            }
            let record = match record {
                Ok(record) => record,
                Err(error) => {
                    let (at, error) = wrong(error);
                    faults.add(at, error);
                    continue;
                }
            };
            let start = record.position().map_or(0, |at| at.byte() as usize);
            values += record.len();
            if values > MOST_VALUES {
                faults.add(Some(start), Error::document("", too_many()));
                break;
            }
            // Each cell stands behind the one before. One with quotes in it stands otherwise in the text: then nothing is searched any more.
            let end = records.reader().position().byte() as usize;
            let mut rest = text.get(start..end);
            let mut from = start;
            let (mut cells, mut long) = (Vec::new(), None);
            for (head, cell) in heads.iter().zip(record.iter()).filter(|(_, cell)| !cell.is_empty()) {
                let found = rest.and_then(|rest| rest.find(cell));
                let at = from + found.unwrap_or(0);
                if cell.chars().nth(LONGEST_TEXT).is_some() {
                    long.get_or_insert((at, head));
                }
                let value = Tree::Text(cell.to_owned());
                cells.push((head.clone(), Spot { key_at: Some(at), at: Some(at), value }));
                rest = found.and_then(|_| text.get(at + cell.len()..end));
                from = at + found.map_or(0, |_| cell.len());
            }
            if let Some((at, key)) = long {
                faults.add(Some(at), Error::document(shortened(key), too_long()));
                continue;
            }
            parts.add(Some(start), cells, &mut faults);
        }
        faults.finish()?;
        Ok(PriceList { parts: parts.all })
    }

    /// Reads JSON or TOML: a list `parts` of tables with `part`, `kind`, `cost`, `mass`, and lines of the sheet as paths or nested tables.
    pub fn from_text(text: &str) -> Result<PriceList> {
        let (document, broken) = Document::read(text)?;
        let mut faults = Collector::new(&document.source, broken);
        let mut parts = Parts::default();
        if let (Tree::Table(entries), false) = (document.root.value, faults.is_lost()) {
            for (key, spot) in entries {
                match spot.value {
                    Tree::List(items) if key == "parts" => {
                        for item in items {
                            let (at, mut cells) = (item.key_at, Vec::new());
                            flatten("", item, &mut cells);
                            parts.add(at, cells, &mut faults);
                        }
                    }
                    _ => {
                        let message = "a price list has one list, `parts`";
                        faults.add(spot.key_at, Error::document(shortened(&key), message));
                    }
                }
            }
        }
        faults.finish()?;
        Ok(PriceList { parts: parts.all })
    }
}

/// Parts as they are read.
#[derive(Default)]
struct Parts {
    all: Vec<Candidate>,
    /// True if the first part has a mass.
    weighed: Option<bool>,
}

impl Parts {
    /// Adds a part. Either every part has a mass, or none: one without it would pass for the lightest.
    fn add(&mut self, at: Option<usize>, cells: Vec<(String, Spot)>, faults: &mut Collector<'_>) {
        let has_mass = cells.iter().any(|(key, _)| key == "mass");
        let Some(part) = candidate(at, cells, faults) else { return };
        if *self.weighed.get_or_insert(has_mass) != has_mass {
            let message = "either every part of a price list has a mass, or none has one";
            faults.add(at, Error::document("mass", message));
        }
        self.all.push(part);
    }
}

/// True if two keys are one line, by its old name or its new one.
fn is_same(one: &str, other: &str) -> bool {
    let slot = |key: &str| Graph::get().slot(key);
    one == other || slot(one).is_some() && slot(one) == slot(other)
}

fn twice(key: &str, other: &str) -> Error {
    let message = match key == other {
        true => "this is there twice: leave one out".to_owned(),
        false => format!("this is the line {} by another name: leave one out", shortened(other)),
    };
    Error::document(shortened(key), message)
}

/// Bytes of a path beyond which nothing is read below it: no line has so long a one, and each value would carry it.
const LONGEST_PATH: usize = 200;

/// The values of a table, by their paths.
fn flatten(path: &str, spot: Spot, cells: &mut Vec<(String, Spot)>) {
    match spot.value {
        Tree::Table(entries) if path.len() <= LONGEST_PATH && Graph::get().slot(path).is_none() => {
            for (key, inner) in entries {
                flatten(&joined(path, &key), inner, cells);
            }
        }
        Tree::List(items) if path.len() <= LONGEST_PATH => {
            for (place, item) in items.into_iter().enumerate() {
                flatten(&format!("{path}[{place}]"), item, cells);
            }
        }
        value => cells.push((path.to_owned(), Spot { value, ..spot })),
    }
}

/// A part of the list; nothing if it has a fault.
fn candidate(at: Option<usize>, cells: Vec<(String, Spot)>, faults: &mut Collector<'_>) -> Option<Candidate> {
    let (mut part, mut kind, mut cost, mut mass, mut lines) = (None, None, None, Mass::from_si(0.0), vec![]);
    let mut seen: Vec<String> = Vec::new();
    let mut whole = true;
    for (key, spot) in cells {
        if faults.is_full() {
            return None;
        }
        let read = match key.as_str() {
            "part" => words(&spot).map(|text| part = Some(text)),
            "kind" => words(&spot).map(|text| kind = Some(text)),
            "cost" => money(&spot).map(|money| cost = Some(money)),
            "mass" => weight(&spot).map(|weight| mass = weight),
            path => line(path, &spot).map(|text| lines.push((path.to_owned(), text))),
        };
        if let Some(other) = seen.iter().find(|other| is_same(other, &key)) {
            whole = false;
            faults.add(spot.key_at, twice(&key, other));
        }
        seen.push(key.clone());
        if let Err(error) = read {
            whole = false;
            let error = match error {
                Error::Document(_) => error,
                other => Error::document(key, other.to_string()),
            };
            faults.add(spot.at, error);
        }
    }
    for key in ["part", "kind", "cost"] {
        if !seen.iter().any(|one| one == key) {
            whole = false;
            faults.add(at, Error::document(key, "every part of a price list has this"));
        }
    }
    let (Some(part), Some(kind), Some(cost), true) = (part, kind, cost, whole) else { return None };
    Some(Candidate { part, kind, cost, mass, lines })
}

/// A value as it would stand in a cell.
fn words(spot: &Spot) -> Result<String> {
    match &spot.value {
        Tree::Text(text) => Ok(text.clone()),
        Tree::Number(number) | Tree::Si(number) => Ok(number.to_string()),
        other => Err(cannot!("expected text or a number, not {}", other.words())),
    }
}

fn money(spot: &Spot) -> Result<f64> {
    let text = words(spot)?;
    let number = text.replace(',', "").parse::<f64>().ok().filter(|cost| cost.is_finite() && *cost >= 0.0);
    number.ok_or_else(|| {
        Error::document(
            "cost",
            format!("`{}` is no cost: write a number that is not negative", shortened(&text)),
        )
    })
}

fn weight(spot: &Spot) -> Result<Mass> {
    let mass = match &spot.value {
        Tree::Si(si) => Mass::from_si(*si),
        _ => text::parse(&words(spot)?)?,
    };
    if (0.0..=1e6).contains(&mass.si()) {
        return Ok(mass);
    }
    Err(Error::document(
        "mass",
        format!("{} is outside its range; valid: 0 to 1000 t", shortened(&words(spot)?)),
    ))
}

/// The text that a part writes on a line of the sheet.
fn line(path: &str, spot: &Spot) -> Result<String> {
    let slot = super::writable(path)?;
    let spot = match &spot.value {
        Tree::Text(text) => spot_of(slot, text)?,
        _ => spot.clone(),
    };
    Ok(super::written(slot, &spot)?.text.to_string())
}
