//! Each row is complete, and every function has one.

use crate::run::gates;
use axlewright_tests::FUNCTIONS;
use axlewright_tests::rows::{rows, words};
use std::collections::BTreeSet;
use std::path::Path;

const PROVENANCES: [&str; 7] = [
    "published",
    "library",
    "independent script",
    "own equations",
    "definition",
    "memory",
    "common practice",
];

/// Rows whose numbers a script of this repository gives; the source of such a row begins with the script.
const SCRIPTED: [&str; 2] = ["independent script", "own equations"];

/// A tolerance that is wider than this share of the number is no evidence: such a row is compared only.
const WIDEST: f64 = 0.1;

const KEYS: [&str; 13] = [
    "id",
    "function",
    "model",
    "unit",
    "method",
    "arguments",
    "inputs",
    "expected",
    "tolerance",
    "source",
    "provenance",
    "confidence",
    "note",
];

#[test]
fn every_function_has_a_reference_row_and_a_refusal() {
    let rows = rows();
    for entry in FUNCTIONS {
        let of = || rows.iter().filter(|row| words(row, "function") == Some(entry.name) && gates(row));
        let answered = of().filter(|row| row["expected"].get("error").is_none()).count();
        assert!(answered > 0, "{} has no reference row that gates", entry.name);
        assert!(of().count() > answered, "{} has no row that must be refused", entry.name);
    }
}

#[test]
fn rows_say_what_they_are() {
    let mut ids = BTreeSet::new();
    for row in rows() {
        let id = words(&row, "id").unwrap();
        assert!(ids.insert(id.to_owned()), "{id} twice");
        for key in row.as_object().unwrap().keys() {
            assert!(KEYS.contains(&key.as_str()), "{id}: {key}");
        }
        assert_eq!(
            ["function", "model", "unit"].iter().filter(|key| row.get(**key).is_some()).count(),
            1,
            "{id}"
        );
        assert!(PROVENANCES.contains(&words(&row, "provenance").unwrap()), "{id}");
        assert!(["high", "medium", "low"].contains(&words(&row, "confidence").unwrap()), "{id}");
        let source = words(&row, "source").unwrap();
        assert!(source.len() > 5, "{id}");
        // What was typed from memory is not published, and what our own code gave is no library's.
        for (provenance, is_not) in [("published", "from memory"), ("library", "(own code)")] {
            assert!(words(&row, "provenance") != Some(provenance) || !source.contains(is_not), "{id}");
        }
        let expected = row["expected"].as_object().unwrap();
        assert!(!expected.is_empty(), "{id}");
        assert_eq!(expected.contains_key("error"), row.get("tolerance").is_none(), "{id}");
    }
    assert!(!ids.is_empty());
}

/// `tests/scripts/check.py` runs the script that a source begins with, and compares its numbers with the row.
#[test]
fn rows_of_a_script_name_it() {
    for row in rows() {
        let (id, source) = (words(&row, "id").unwrap(), words(&row, "source").unwrap());
        let named = source.strip_prefix("tests/scripts/").and_then(|rest| rest.split_once(".py: "));
        let scripted = SCRIPTED.contains(&words(&row, "provenance").unwrap());
        assert_eq!(scripted, named.is_some(), "{id}: {source}");
        if let Some((script, _)) = named {
            let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("scripts/{script}.py"));
            assert!(file.is_file(), "{id}: there is no {}", file.display());
        }
    }
}

/// A row that decides has a number that its tolerance tells from others; where it tells it from nothing, the number is 0.
#[test]
fn tolerances_are_narrow_enough_to_decide() {
    for row in rows().iter().filter(|row| row["tolerance"].is_object()) {
        let id = words(row, "id").unwrap();
        let (abs, rel) = (row["tolerance"]["abs"].as_f64(), row["tolerance"]["rel"].as_f64());
        for (name, number) in row["expected"].as_object().unwrap() {
            let Some(number) = number.as_f64().filter(|number| *number != 0.0) else { continue };
            if let Some(abs) = abs {
                assert!(number.abs() >= abs, "{id}: {name} = {number:e} is below its tolerance: write 0");
            }
            let share = rel.unwrap_or(abs.unwrap_or(0.0) / number.abs());
            assert!(!gates(row) || share <= WIDEST, "{id}: {name} within {share}: confidence is low");
        }
    }
}
