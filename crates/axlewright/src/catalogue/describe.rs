//! Functions and models as JSON, for programs with forms.

use super::model::{Content, Field, FieldContent, Method, OfModel, Output};
use crate::base::work::{Entry, Slot};
use crate::units::Kind;
use serde_json::{Value, json};

/// Nothing but the entries that say something.
pub(crate) fn told(of: Value) -> Value {
    match of {
        Value::Object(map) => {
            let is_empty = |value: &Value| match value {
                Value::Null | Value::Bool(false) => true,
                Value::String(text) => text.is_empty(),
                _ => false,
            };
            Value::Object(map.into_iter().filter(|(_, value)| !is_empty(value)).collect())
        }
        other => other,
    }
}

/// A quantity: its kind, and its units in coherent SI and in two shops.
pub(crate) fn quantity(kind: &Kind) -> Value {
    let symbol = |name: &str| kind.unit(name).map(|unit| unit.symbol);
    json!({
        "kind": kind.name, "words": kind.words, "unit": kind.si, "metric": symbol(kind.metric), "us": symbol(kind.us),
    })
}

fn argument(slot: &Slot, is_list: bool) -> Value {
    told(json!({
        "name": slot.name, "symbol": slot.symbol, "quantity": quantity(slot.kind), "list": is_list,
        "meaning": slot.meaning, "range": slot.range,
    }))
}

fn result(slot: &Slot) -> Value {
    told(json!({
        "name": slot.name, "symbol": slot.symbol, "type": "quantity", "quantity": quantity(slot.kind),
        "meaning": slot.meaning,
    }))
}

fn output(of: &Output) -> Value {
    let (kind, quantity, words) = match &of.content {
        Content::Quantity(kind) => ("quantity", Some(quantity(kind)), None),
        Content::Choice(words) => ("choice", None, Some(*words)),
        Content::Text => ("text", None, None),
        Content::Whole => ("whole", None, None),
        Content::Table => ("table", None, None),
    };
    told(
        json!({ "name": of.name, "type": kind, "quantity": quantity, "words": words, "meaning": of.meaning }),
    )
}

fn field(of: &Field) -> Value {
    let fields = |below: &[Field]| below.iter().map(field).collect::<Vec<_>>();
    let (kind, quantity, words, below) = match &of.content {
        FieldContent::Quantity(kind) => ("quantity", Some(quantity(kind)), None, None),
        FieldContent::Choice(words) => ("choice", None, Some(*words), None),
        FieldContent::Text => ("text", None, None, None),
        FieldContent::List(below) => ("list", None, None, Some(fields(below))),
        FieldContent::Table(below) => ("table", None, None, Some(fields(below))),
    };
    told(json!({
        "name": of.name, "type": kind, "quantity": quantity, "words": words, "fields": below, "optional": of.optional,
        "may_be_none": of.may_be_none, "meaning": of.meaning,
    }))
}

fn method(of: &Method) -> Value {
    json!({
        "name": of.name, "summary": of.summary,
        "parameters": of.inputs.iter().map(|(slot, is_list)| argument(slot, *is_list)).collect::<Vec<_>>(),
        "results": of.outputs.iter().map(output).collect::<Vec<_>>(),
    })
}

impl Entry {
    /// The description as JSON: parameters with kind, units and range; results; formula, limits, source and caution.
    pub fn describe(&self) -> String {
        told(json!({
            "path": self.path, "summary": self.summary, "formula": self.formula, "valid_for": self.valid_for,
            "source": self.source, "caution": self.caution, "revision": self.revision,
            "parameters": self.inputs.iter().map(|slot| argument(slot, false)).collect::<Vec<_>>(),
            "results": self.outputs.iter().map(result).collect::<Vec<_>>(),
        }))
        .to_string()
    }
}

impl OfModel {
    /// The description as JSON: fields with kind and units; methods with their parameters and results.
    pub fn describe(&self) -> String {
        told(json!({
            "path": self.path, "summary": self.summary, "formula": self.formula, "valid_for": self.valid_for,
            "source": self.source, "caution": self.caution,
            "fields": self.fields.iter().map(field).collect::<Vec<_>>(),
            "methods": self.methods.iter().map(method).collect::<Vec<_>>(),
        }))
        .to_string()
    }
}

#[cfg(test)]
#[cfg(feature = "spring")]
mod tests {
    use super::*;
    use crate::catalogue::{ENTRIES, MODELS, entry, model};

    fn read(text: &str) -> Value {
        serde_json::from_str(text).unwrap_or(Value::Null)
    }

    #[test]
    fn a_function_is_told_with_units_and_ranges() {
        let rate = read(&entry("spring.wheel_rate").unwrap().describe());
        let ratio = &rate["parameters"][1];
        assert_eq!(ratio["name"], "motion_ratio");
        assert_eq!(ratio["range"], json!({ "lower": 0.0, "lower_open": true, "upper": 1.5 }));
        assert_eq!(rate["parameters"][0]["quantity"]["us"], "lbf/in");
        assert_eq!(rate["results"][0]["quantity"]["unit"], "N/m");
        assert!(rate.get("caution").is_none(), "an empty text is left out");
    }

    #[test]
    fn every_description_is_json_with_all_names() {
        for of in ENTRIES {
            let told = read(&of.describe());
            assert_eq!(told["path"], of.path);
            assert_eq!(told["parameters"].as_array().unwrap().len(), of.inputs.len());
        }
        for of in MODELS {
            let told = read(&of.describe());
            assert_eq!(told["methods"].as_array().unwrap().len(), of.methods.len());
            assert_eq!(told["fields"].as_array().unwrap().len(), of.fields.len());
        }
    }

    #[test]
    fn a_model_is_told_with_its_fields_and_methods() {
        let corner = read(&model("spring.Corner").unwrap().describe());
        let rate = corner["fields"].as_array().unwrap().iter().find(|field| field["name"] == "rate").unwrap();
        assert_eq!(rate["type"], "quantity");
        assert_eq!(rate["quantity"]["metric"], "N/mm");
        let methods = corner["methods"].as_array().unwrap();
        assert!(methods.iter().any(|method| method["name"] == "at_ride_height"));
        assert!(model("spring.Cornr").unwrap_err().to_string().contains("spring.Corner"));
    }
}
