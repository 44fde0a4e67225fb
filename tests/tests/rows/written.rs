//! Each row is complete, and every function has one.

use super::run::gates;
use axlewright_tests::FUNCTIONS;
use axlewright_tests::rows::{rows, words};
use serde_json::{Value, json};
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
        assert!(
            answered > 0,
            "{} has no reference row with an answer and more than low confidence: add one to tests/rows",
            entry.name
        );
        assert!(
            of().count() > answered,
            "{} has no row that must be refused: add one with \"expected\": {{\"error\": true, \"argument\": \"...\"}}",
            entry.name
        );
    }
}

/// The fault of a row, if it has one: what is wrong, and what may stand there.
fn fault(row: &Value) -> Option<String> {
    let one_of = |key: &str, allowed: &[&str]| match words(row, key) {
        Some(word) if allowed.contains(&word) => None,
        word => Some(format!("`{key}` is {word:?}; it may be {allowed:?}")),
    };
    if let Some(other) = row.as_object()?.keys().find(|key| !KEYS.contains(&key.as_str())) {
        return Some(format!("a row has no `{other}`; it may have {KEYS:?}"));
    }
    let subjects = ["function", "model", "unit"].iter().filter(|key| row.get(**key).is_some()).count();
    if subjects != 1 {
        return Some("it names one of `function`, `model` and `unit`, and no more".to_owned());
    }
    if let Some(fault) =
        one_of("provenance", &PROVENANCES).or_else(|| one_of("confidence", &["high", "medium", "low"]))
    {
        return Some(fault);
    }
    let Some(source) = words(row, "source").filter(|source| source.len() > 5) else {
        return Some("`source` does not say from where the numbers come".to_owned());
    };
    // What was typed from memory is not published, and what our own code gave is no library's.
    for (provenance, is_not) in [("published", "from memory"), ("library", "(own code)")] {
        if words(row, "provenance") == Some(provenance) && source.contains(is_not) {
            return Some(format!("a source {is_not:?} has not the provenance {provenance:?}"));
        }
    }
    let Some(expected) = row["expected"].as_object().filter(|expected| !expected.is_empty()) else {
        return Some("`expected` holds no result and no `error`".to_owned());
    };
    match (expected.contains_key("error"), row.get("tolerance").is_some()) {
        (true, true) => Some("a row that must be refused has no `tolerance`".to_owned()),
        (false, false) => Some("it lacks its `tolerance`, such as {\"rel\": 1e-12}".to_owned()),
        _ => None,
    }
}

#[test]
fn rows_say_what_they_are() {
    let mut ids = BTreeSet::new();
    let mut faults = Vec::new();
    for row in rows() {
        let id = words(&row, "id").unwrap_or_else(|| panic!("a row without an `id`: {row}"));
        if !ids.insert(id.to_owned()) {
            faults.push(format!("{id}: another row has this `id`"));
        }
        faults.extend(fault(&row).map(|fault| format!("{id}: {fault}")));
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(!ids.is_empty());
    let good = json!({ "id": "a", "function": "f.g", "expected": { "value": 1 }, "tolerance": { "rel": 1e-9 },
        "source": "definition", "provenance": "definition", "confidence": "high" });
    assert_eq!(fault(&good), None);
    let changes = [
        ("colour", json!("red"), "`colour`"),
        ("model", json!("f.G"), "no more"),
        ("provenance", json!("hearsay"), "hearsay"),
        ("confidence", json!(null), "`confidence`"),
        ("source", json!(""), "`source`"),
        ("expected", json!({}), "`expected`"),
        ("expected", json!({ "error": true }), "no `tolerance`"),
    ];
    for (key, value, word) in changes {
        let mut row = good.clone();
        row[key] = value;
        assert!(fault(&row).is_some_and(|fault| fault.contains(word)), "{row}");
    }
}

/// `tests/scripts/check.py` runs the script that a source begins with, and compares its numbers with the row.
#[test]
fn rows_of_a_script_name_it() {
    for row in rows() {
        let (id, source) = (words(&row, "id").unwrap(), words(&row, "source").unwrap());
        let named = source.strip_prefix("tests/scripts/").and_then(|rest| rest.split_once(".py: "));
        let scripted = SCRIPTED.contains(&words(&row, "provenance").unwrap());
        assert!(
            scripted == named.is_some(),
            "{id}: if the provenance is one of {SCRIPTED:?}, and only then, the source begins with the script, as in \
             \"tests/scripts/routes/spring.py: ...\"; it is {source:?}"
        );
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
