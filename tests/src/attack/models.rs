//! Models, on the documents of their rows and on these gone wrong: single answers and tables.

use super::documents::{change, damaged, numbers};
use super::numbers::{is_allowed, is_extreme, same};
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::Random;
use crate::rows::{number, rows, words};
use crate::{Found, MODELS, Method, Modelled, Results, Tabled};
use axlewright::Table;
use axlewright::base::table::Values;
use serde_json::Value;
use std::collections::BTreeMap;
use std::io::Write;

/// Values of arguments by their names, from the rows of all models.
pub type Seen = BTreeMap<String, Vec<f64>>;

/// Documents of the models that have no reference row.
const WITHOUT_ROW: &str = include_str!("../../documents.json");

/// Documents of a model: one of each row.
pub fn documents_of(name: &str, rows: &[Value]) -> Vec<Value> {
    let own = rows.iter().filter(|row| words(row, "model") == Some(name));
    let without: Value = serde_json::from_str(WITHOUT_ROW).unwrap();
    own.map(|row| row["inputs"].clone()).chain(without.get(name).cloned()).collect()
}

/// Values that the rows give to the arguments of methods.
pub fn seen(rows: &[Value]) -> Seen {
    let mut seen = Seen::new();
    for (name, value) in rows.iter().filter_map(|row| row["arguments"].as_object()).flatten() {
        seen.entry(name.clone()).or_default().push(number(value));
    }
    seen
}

/// A value of an argument: one that the rows give or one near it, any magnitude, or any number.
pub fn argument(name: &str, seen: &Seen, random: &mut Random) -> f64 {
    match (random.below(12), seen.get(name)) {
        (0, _) => random.any_number(),
        (1, _) | (_, None) => random.of_magnitude(3.0),
        (_, Some(values)) => {
            let value = *random.of_these(values);
            random.near(value)
        }
    }
}

/// Name of the target, in its seed too.
const NAME: &str = "models";

/// So many calls a model.
pub fn attack(of: &Attack, calls: u64) -> Tally {
    let drawn = Drawn::new();
    of.run(NAME, calls * MODELS.len() as u64, |at, random| {
        let case = drawn.case(at, random)?;
        let (model, text) = (case.model, &case.text);
        let asked = match case.asked {
            Asked::Method(method) => single(model, method, text, &drawn.seen, random),
            Asked::Table(table) => tabled(model, table, text, &drawn.seen, random),
            Asked::Read => {
                let mut calls = Calls::default();
                calls.count((model.read)(text)).map(|_| calls)
            }
        };
        asked.map_err(|why| {
            format!("{}.{why}; document {}", model.name, text.chars().take(3000).collect::<String>())
        })
    })
}

/// Source from which cases are drawn.
struct Drawn {
    seen: Seen,
    /// Documents of each model.
    documents: Vec<Vec<Value>>,
}

/// One case: a document, and what its model is asked.
struct Drawing {
    model: &'static Modelled,
    text: String,
    asked: Asked,
}

enum Asked {
    Method(&'static Method),
    Table(&'static Tabled),
    Read,
}

impl Drawn {
    fn new() -> Drawn {
        let rows = rows();
        Drawn {
            seen: seen(&rows),
            documents: MODELS.iter().map(|model| documents_of(model.name, &rows)).collect(),
        }
    }

    fn case(&self, at: u64, random: &mut Random) -> Result<Drawing, String> {
        let place = at as usize % MODELS.len();
        let model = &MODELS[place];
        if self.documents[place].is_empty() {
            return Err(format!("{} has neither a reference row nor a document in WITHOUT_ROW", model.name));
        }
        let mut document = random.of_these(&self.documents[place]).clone();
        (0..*random.of_these(&[0, 0, 1, 1, 2, 5])).for_each(|_| change(&mut document, random));
        let mut text = document.to_string();
        if random.once_in(16) {
            text = damaged(&text, random);
        }
        let which = random.below(model.methods.len() + model.tables.len() + 1);
        let asked =
            match (model.methods.get(which), model.tables.get(which.wrapping_sub(model.methods.len()))) {
                (Some(method), _) => Asked::Method(method),
                (None, Some(table)) => Asked::Table(table),
                (None, None) => Asked::Read,
            };
        Ok(Drawing { model, text, asked })
    }
}

/// Writes the same cases for another surface, each with the core's answer: a line with the model, the method, the number of the refusal (0 if there is
/// none), the lists of arguments, the results and the bytes of the document, and then that document. Numbers stand as the bits of a double; a word
/// is `-`. A table gives the number of its rows and a sum over the bits of its numbers. A document ends at its first NUL, as text does in C.
pub fn write(of: &Attack, calls: u64, out: &mut impl Write) -> std::io::Result<()> {
    let (drawn, root) = (Drawn::new(), Random::of(&format!("{NAME} {}", of.seed)));
    for at in of.from..of.from + calls * MODELS.len() as u64 {
        let mut random = root.at(at);
        let Ok(case) = drawn.case(at, &mut random) else { continue };
        let text = case.text.split('\0').next().unwrap_or_default();
        let (mut lists, mut results) = (vec![], vec![]);
        let (name, outcome) = match case.asked {
            Asked::Read => ("-", (case.model.read)(text)),
            Asked::Method(method) => {
                lists =
                    arguments(method.parameters.iter().map(|name| (*name, false)), &drawn.seen, &mut random);
                let x: Vec<f64> = lists.iter().flatten().copied().collect();
                let found = (method.call)(text, &x).map(|found| {
                    results = found.iter().map(|(_, found)| shown(found)).collect();
                });
                (method.name, found)
            }
            Asked::Table(table) => {
                lists = arguments(table.parameters.iter().copied(), &drawn.seen, &mut random);
                let found = (table.call)(text, &lists).map(|found| {
                    results = vec![found.rows().to_string(), format!("{:x}", sum(&found))];
                });
                (table.name, found)
            }
        };
        write!(
            out,
            "{} {name} {} {}",
            case.model.name,
            outcome.map_or_else(|error| error.number(), |()| 0),
            lists.len()
        )?;
        for list in &lists {
            write!(out, " {}", list.len())?;
            list.iter().try_for_each(|x| write!(out, " {:x}", x.to_bits()))?;
        }
        write!(out, " {}", results.len())?;
        results.iter().try_for_each(|of| write!(out, " {of}"))?;
        writeln!(out, " {}\n{text}", text.len())?;
    }
    out.flush()
}

/// Values of arguments; a list has up to three.
fn arguments<'a>(
    of: impl Iterator<Item = (&'a str, bool)>,
    seen: &Seen,
    random: &mut Random,
) -> Vec<Vec<f64>> {
    of.map(|(name, list)| {
        let count = if list { random.below(4) } else { 1 };
        (0..count).map(|_| argument(name, seen, random)).collect()
    })
    .collect()
}

fn shown(found: &Found) -> String {
    match found {
        Found::Number(value) => format!("{:x}", bits(*value)),
        Found::Word(_) => "-".to_owned(),
    }
}

/// The bits of a number; one that is not known has no sign.
fn bits(value: f64) -> u64 {
    if value.is_nan() { f64::NAN.to_bits() } else { value.to_bits() }
}

/// The numbers of a table in one: FNV-1a over their bits (Fowler, Noll and Vo).
fn sum(table: &Table) -> u64 {
    let numbers = table.columns().iter().filter_map(|column| match &column.values {
        Values::F64(values) => Some(values),
        _ => None,
    });
    numbers
        .flatten()
        .fold(0xcbf2_9ce4_8422_2325, |sum, value| (sum ^ bits(*value)).wrapping_mul(0x0100_0000_01b3))
}

fn is_same(one: &Found, other: &Found) -> bool {
    match (one, other) {
        (Found::Number(one), Found::Number(other)) => same(*one, *other),
        (Found::Word(one), Found::Word(other)) => one == other,
        _ => false,
    }
}

fn single(model: &Modelled, method: &Method, text: &str, seen: &Seen, random: &mut Random) -> Case {
    let mut calls = Calls::default();
    let x: Vec<f64> = method.parameters.iter().map(|name| argument(name, seen, random)).collect();
    let named = |why: String| format!("{}{x:?}: {why}", method.name);
    let Some(found) = calls.count((method.call)(text, &x)).map_err(named)? else { return Ok(calls) };
    let extreme = x.iter().copied().chain(numbers(text)).any(is_extreme);
    for (name, value) in &found {
        if let Found::Number(value) = value
            && !is_allowed(*value, extreme || model.infinite.contains(name))
        {
            return Err(named(format!("{name} = {value}")));
        }
    }
    if random.once_in(8) {
        let again: Results =
            (method.call)(text, &x).map_err(|error| named(format!("refused again: {error}")))?;
        if !found.iter().zip(&again).all(|((_, one), (_, other))| is_same(one, other)) {
            return Err(named(format!("gives {found:?}, then {again:?}")));
        }
    }
    Ok(calls)
}

fn tabled(model: &Modelled, of: &Tabled, text: &str, seen: &Seen, random: &mut Random) -> Case {
    let mut calls = Calls::default();
    let x = arguments(of.parameters.iter().copied(), seen, random);
    let named = |why: String| format!("{}{x:?}: {why}", of.name);
    let Some(table) = calls.count((of.call)(text, &x)).map_err(named)? else { return Ok(calls) };
    let extreme = x.iter().flatten().copied().chain(numbers(text)).any(is_extreme);
    fair(&table, model.infinite, extreme).map_err(named)?;
    // The columns of the inputs have the names of the arguments of `at`: a row is that answer.
    let at = model.methods.iter().find(|method| method.name == "at").filter(|_| of.name == "table");
    if let (Some(at), Some(row)) = (at, (table.rows() > 0).then(|| random.below(table.rows().max(1)))) {
        let inputs: Option<Vec<f64>> =
            at.parameters.iter().map(|name| Some(table.numbers(name)?[row])).collect();
        let Some(inputs) = inputs else { return Ok(calls) };
        match (at.call)(text, &inputs) {
            Ok(found) => {
                for (name, value) in found {
                    let same = match (&value, table.numbers(name)) {
                        (Found::Number(value), Some(numbers)) => same(*value, numbers[row]),
                        (Found::Word(word), _) => table.word(name, row).is_none_or(|other| other == word),
                        _ => true,
                    };
                    if !same || table.reason(row).is_some() {
                        return Err(named(format!("row {row}, {name}: `at` gives {value:?}")));
                    }
                }
            }
            Err(error) if table.reason(row).is_none() => {
                return Err(named(format!("row {row} is answered, `at` refuses it: {error}")));
            }
            Err(_) => {}
        }
    }
    Ok(calls)
}

/// A table has as many values in each column as rows, each finite or not known, and sorted refusals. An input may be any number.
pub fn fair(table: &Table, infinite: &[&str], extreme: bool) -> Result<(), String> {
    for column in table.columns() {
        let extreme = extreme || infinite.contains(&column.name.as_ref());
        let (length, odd) = match &column.values {
            Values::F64(values) => (values.len(), values.iter().position(|x| !is_allowed(*x, extreme))),
            Values::I64(values) => (values.len(), None),
            Values::Category { codes, labels } => {
                (codes.len(), codes.iter().position(|code| *code < -1 || *code >= labels.len() as i32))
            }
        };
        if length != table.rows() || odd.is_some() {
            return Err(format!(
                "column {} has {length} of {} values, odd at {odd:?}",
                column.name,
                table.rows()
            ));
        }
    }
    let rows: Vec<usize> = table.refused().iter().map(|(row, _)| *row).collect();
    let fair = rows.is_sorted_by(|a, b| a < b) && rows.iter().all(|row| *row < table.rows());
    if fair { Ok(()) } else { Err(format!("refused rows {rows:?} of {}", table.rows())) }
}
