//! A row as it went, for the book.

use super::run::subject;
use axlewright::Result as Answer;
use axlewright::base::text;
use axlewright_tests::rows::number;
use axlewright_tests::{Found, Results};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Inputs in coherent SI: numbers of a function's arguments, quantities of a model's document.
fn given(row: &Value) -> BTreeMap<String, f64> {
    fn collect(name: &str, value: &Value, into: &mut BTreeMap<String, f64>) {
        let below = |key: &str| if name.is_empty() { key.to_owned() } else { format!("{name}.{key}") };
        match value {
            Value::Object(fields) => fields.iter().for_each(|(key, value)| collect(&below(key), value, into)),
            Value::String(written) => {
                if let Ok(reading) = text::read(written) {
                    into.insert(name.to_owned(), reading.si);
                }
            }
            Value::Number(number) => {
                into.insert(name.to_owned(), number.as_f64().unwrap());
            }
            _ => {}
        }
    }
    let mut found = BTreeMap::new();
    if row.get("function").is_some() {
        let inputs = row["inputs"].as_object().unwrap();
        found.extend(inputs.iter().map(|(name, input)| (name.clone(), number(input))));
    } else {
        collect("", &row["inputs"], &mut found);
        collect("", &row["arguments"], &mut found);
    }
    found
}

/// A row as it went, for the book: each number that was expected, what the core found, and how far off that is.
pub fn measured(row: &Value, answer: &Answer<Results>) -> Value {
    // A number that the row's tolerance does not tell from zero has no relative error.
    let nothing = row["tolerance"]["abs"].as_f64().unwrap_or(0.0);
    let numbers = answer.iter().flatten().filter_map(|(name, found)| match found {
        Found::Number(found) => Some((*name, *found, row["expected"].get(*name)?.as_f64()?)),
        Found::Word(_) => None,
    });
    let numbers: Vec<Value> = numbers
        .map(|(name, found, wanted)| {
            let error = (found - wanted).abs();
            json!({ "result": name, "expected": wanted, "found": found, "error": error,
                "relative": (wanted.abs() > nothing).then_some(error / wanted.abs()) })
        })
        .collect();
    let refused = row["expected"].get("error").is_some();
    json!({ "id": row["id"], "of": if row.get("unit").is_some() { "units" } else { subject(row) },
        "method": row["method"], "provenance": row["provenance"], "confidence": row["confidence"],
        "source": row["source"], "refused": refused, "numbers": numbers,
        "given": if refused { BTreeMap::new() } else { given(row) } })
}
