//! Every refusal that a changed row provokes, read as a person reads it: rounded numbers, and no radian or pascal without a unit of a shop.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright_tests::rows::{arguments, entry, number, rows, words};
use axlewright_tests::{FUNCTIONS, MODELS};
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};

/// Factors that turn a value that is allowed into one that is not, or into one without an answer.
const FACTORS: [f64; 12] =
    [-1.0, 0.0, 1e-9, 1e-3, 0.123_456_789, 0.7, 1.31, 2.987_654_321, 11.1, 1e3, 1e9, f64::NAN];

/// Significant digits of the longest number in a text.
fn digits(text: &str) -> usize {
    let numbers = text.split(|c: char| !c.is_ascii_digit() && c != '.');
    let significant = |number: &str| {
        let plain: String = number.chars().filter(char::is_ascii_digit).collect();
        let whole = if number.contains('.') { plain.as_str() } else { plain.trim_end_matches('0') };
        whole.trim_start_matches('0').len()
    };
    numbers.map(significant).max().unwrap_or(0)
}

/// The core's own words: without what a person wrote, which stands between backticks or quotes, or in a line of the document.
fn own_words(message: &str) -> String {
    let lines = message.lines().filter(|line| !line.starts_with("    "));
    let own = |line: &str| {
        let mut kept = line.split(['`', '"']).step_by(2).collect::<Vec<_>>().join(" ");
        if let Some((place, rest)) = line.split_once(": ")
            && place.starts_with("line ")
        {
            kept = rest.split(['`', '"']).step_by(2).collect::<Vec<_>>().join(" ");
        }
        kept
    };
    lines.map(own).collect::<Vec<_>>().join("\n")
}

/// Reason why a person could not read this message.
fn fault(message: &str) -> Option<String> {
    let own = own_words(message);
    let has_unit =
        |unit: &str| own.split([' ', '(', ')', ',', ';']).any(|word| word.split('/').next() == Some(unit));
    let written = |unit: &str| message.lines().any(|line| line.starts_with("    ") && line.contains(unit));
    let also = |units: &[&str]| units.iter().any(|unit| own.contains(unit));
    if digits(&own) > 6 {
        return Some(format!("{} digits", digits(&own)));
    }
    if has_unit("rad") && !written("rad") && !also(&["deg", "rpm"]) {
        return Some("rad alone".to_owned());
    }
    if has_unit("Pa") && !written("Pa") && !also(&["kPa", "MPa", "GPa", "psi", "mPa"]) {
        return Some("Pa alone".to_owned());
    }
    None
}

/// Refusals, one for each sentence without its numbers.
#[derive(Default)]
struct Refusals(BTreeMap<String, String>);

impl Refusals {
    fn add(&mut self, message: String) {
        let kind: String = message.chars().filter(|c| !c.is_ascii_digit() && !".-+e".contains(*c)).collect();
        let worse = fault(&message).is_some();
        let entry = self.0.entry(kind).or_insert_with(|| message.clone());
        if worse {
            *entry = message;
        }
    }
}

/// This document with every quantity changed in turn, and every key left out in turn.
fn changed(document: &Value) -> Vec<Value> {
    fn places(at: &Value, path: &str, out: &mut Vec<String>) {
        match at {
            Value::Object(entries) => {
                for (key, value) in entries {
                    let path = format!("{path}/{key}");
                    out.push(path.clone());
                    places(value, &path, out);
                }
            }
            Value::Array(items) => {
                for (place, item) in items.iter().enumerate() {
                    let path = format!("{path}/{place}");
                    out.push(path.clone());
                    places(item, &path, out);
                }
            }
            _ => {}
        }
    }
    let mut paths = Vec::new();
    places(document, "", &mut paths);
    let mut all = Vec::new();
    for path in paths {
        let old = document.pointer(&path).unwrap().clone();
        let mut put = |value: Value| {
            let mut other = document.clone();
            *other.pointer_mut(&path).unwrap() = value;
            all.push(other);
        };
        let (size, unit) = match &old {
            Value::Number(size) => (size.as_f64(), String::new()),
            Value::String(text) => {
                let (size, unit) = text.split_once(' ').unwrap_or((text, ""));
                (size.parse().ok(), format!(" {unit}"))
            }
            _ => (None, String::new()),
        };
        if let Some(size) = size {
            for factor in FACTORS.into_iter().filter(|factor| factor.is_finite()) {
                // Written with four digits: a message may quote what a person wrote.
                let changed: f64 = format!("{:.3e}", size * factor).parse().unwrap();
                let text = format!("{changed}{unit}");
                put(if unit.is_empty() { Value::from(changed) } else { Value::from(text) });
            }
            continue;
        }
        let (around, key) = path.rsplit_once('/').unwrap();
        let mut without = document.clone();
        match without.pointer_mut(around).unwrap() {
            Value::Object(entries) => drop(entries.remove(key)),
            Value::Array(items) => drop(items.remove(key.parse().unwrap())),
            _ => {}
        }
        all.push(without);
    }
    all
}

#[test]
fn a_refusal_is_written_for_a_person() {
    let mut refusals = Refusals::default();
    for row in rows().iter().filter(|row| words(row, "function").is_some()) {
        let name = words(row, "function").unwrap();
        let (call, given) = (entry(name).call, arguments(row));
        for place in 0..given.len() {
            for factor in FACTORS {
                let mut other = given.clone();
                other[place] *= factor;
                if let Err(error) = call(&other) {
                    refusals.add(error.to_string());
                }
            }
        }
    }
    let functions = refusals.0.len();
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    let mut documents = BTreeSet::new();
    for row in rows().iter().filter(|row| words(row, "model").is_some()) {
        let name = words(row, "model").unwrap();
        let model = MODELS.iter().find(|model| model.name == name).unwrap();
        if let Some(method) = words(row, "method") {
            let method = model.methods.iter().find(|of| of.name == method).unwrap();
            let document = row["inputs"].to_string();
            let given: Vec<f64> =
                method.parameters.iter().map(|argument| number(&row["arguments"][*argument])).collect();
            for place in 0..given.len() {
                for factor in FACTORS {
                    let mut other = given.clone();
                    other[place] *= factor;
                    if let Err(error) = (method.call)(&document, &other) {
                        refusals.add(error.to_string());
                    }
                }
            }
        }
        let first = documents.insert((name, row["inputs"].to_string()));
        let times = seen.entry(name).or_default();
        if first && *times < 3 {
            *times += 1;
            for other in changed(&row["inputs"]) {
                if let Err(error) = (model.read)(&other.to_string()) {
                    refusals.add(error.to_string());
                }
            }
        }
    }
    let all: Vec<&String> = refusals.0.values().collect();
    let faults: Vec<String> =
        all.iter().filter_map(|message| fault(message).map(|why| format!("{why}: {message}"))).collect();
    println!("{} kinds of refusal, {functions} of them of functions", all.len());
    if let Some(file) = std::env::var_os("AXW_MESSAGES") {
        std::fs::write(file, all.iter().map(|message| format!("{message}\n\n")).collect::<String>()).unwrap();
    }
    assert!(FUNCTIONS.len() < functions && functions < all.len(), "{functions} of {}", all.len());
    assert!(faults.is_empty(), "{} of {}:\n{}", faults.len(), all.len(), faults.join("\n"));
}

#[test]
fn a_message_that_nobody_reads_is_found() {
    for (message, why) in [
        ("roll = 0.4363323129985824 rad: no", Some("16 digits")),
        ("roll = 0.4363 rad is too much", Some("rad alone")),
        ("speed = 0.4363 rad/s is too much", Some("rad alone")),
        ("cap = 100000 Pa gauge", Some("Pa alone")),
        ("cap = 100000 Pa gauge (100 kPa gauge, 14.5 psi gauge) at 1000000 N", None),
        ("line 1, column 9: cap = 100000 Pa gauge is too much", Some("Pa alone")),
        ("line 1, column 9: cap = 100000 Pa gauge is too much\n    cap = \"1e5 Pa gauge\"\n    ^", None),
        ("`0.4363323129985824 rad`: this is quoted", None),
        ("line 1, column 2345678: roll = 25 deg\n    roll = \"0.12345678 rad\"\n    ^", None),
    ] {
        assert_eq!(fault(message).as_deref(), why, "{message}");
    }
    let one: Map<String, Value> =
        [("a".to_owned(), Value::from("2 mm")), ("b".to_owned(), Value::from("x"))].into_iter().collect();
    let all = changed(&Value::Object(one));
    assert_eq!(all.len(), FACTORS.len());
    assert_eq!(all[0]["a"], "-2 mm");
    assert!(all.last().unwrap().get("b").is_none());
}
