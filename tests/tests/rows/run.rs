//! A row through the core.

use axlewright::Result as Answer;
use axlewright::base::text;
use axlewright_tests::rows::{arguments, entry, number, words};
use axlewright_tests::{Found, MODELS, Results};
use serde_json::Value;

/// Name of the function, model or unit that the row asks.
pub fn subject(row: &Value) -> &str {
    ["function", "model", "unit"].iter().find_map(|key| words(row, key)).unwrap()
}

fn function(row: &Value) -> Answer<Results> {
    let entry = entry(words(row, "function").unwrap());
    let found = (entry.call)(&arguments(row))?;
    assert_eq!(found.len(), entry.results.len());
    Ok(entry.results.iter().copied().zip(found.into_iter().map(Found::Number)).collect())
}

fn unit(row: &Value) -> Answer<Results> {
    let reading = text::read(words(&row["inputs"], "text").unwrap())?;
    assert_eq!(Some(reading.unit.name), words(row, "unit"));
    Ok(vec![("value", Found::Number(reading.si))])
}

fn model(row: &Value) -> Answer<Results> {
    let (name, document) = (words(row, "model").unwrap(), row["inputs"].to_string());
    let model = MODELS.iter().find(|model| model.name == name).unwrap_or_else(|| panic!("no model {name}"));
    let Some(asked) = words(row, "method") else { return (model.read)(&document).map(|()| vec![]) };
    let method = model.methods.iter().find(|method| method.name == asked);
    let method = method.unwrap_or_else(|| panic!("no method {asked} of {name}"));
    let arguments: Vec<f64> =
        method.parameters.iter().map(|argument| number(&row["arguments"][*argument])).collect();
    (method.call)(&document, &arguments)
}

pub fn run(row: &Value) -> Answer<Results> {
    match (row.get("function"), row.get("model")) {
        (Some(_), _) => function(row),
        (_, Some(_)) => model(row),
        _ => unit(row),
    }
}

pub fn gates(row: &Value) -> bool {
    words(row, "confidence") != Some("low")
}
