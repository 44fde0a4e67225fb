//! The outside reference rows, read.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use crate::{Entry, FUNCTIONS};
use serde_json::Value;
use std::path::Path;

/// Every row of `rows/`, in the order of the files' names.
pub fn rows() -> Vec<Value> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("rows");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    let files = files.iter().filter(|file| file.extension().is_some_and(|ending| ending == "json"));
    let read = |file| match serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap() {
        Value::Array(rows) => rows,
        other => panic!("{other} is no list of rows"),
    };
    files.flat_map(read).collect()
}

/// The text of a row under a key.
pub fn words<'a>(row: &'a Value, key: &str) -> Option<&'a str> {
    row.get(key).and_then(Value::as_str)
}

/// The function of this name.
pub fn entry(name: &str) -> &'static Entry {
    FUNCTIONS.iter().find(|entry| entry.name == name).unwrap_or_else(|| panic!("no function {name}"))
}

/// Arguments of the row, in the order of the parameters.
pub fn arguments(row: &Value) -> Vec<f64> {
    let entry = entry(words(row, "function").unwrap());
    let inputs = row["inputs"].as_object().unwrap();
    assert_eq!(inputs.len(), entry.parameters.len(), "{row}");
    entry.parameters.iter().map(|name| number(&inputs[*name])).collect()
}

/// A number, `"nan"`, `"inf"`, `"-inf"`, or the result of another function.
pub fn number(input: &Value) -> f64 {
    match input {
        Value::Number(number) => number.as_f64().unwrap(),
        Value::String(text) => text.parse().unwrap(),
        _ => match (entry(words(input, "function").unwrap()).call)(&arguments(input)).unwrap().as_slice() {
            [value] => *value,
            other => panic!("{input} gives {other:?}, not one number"),
        },
    }
}
