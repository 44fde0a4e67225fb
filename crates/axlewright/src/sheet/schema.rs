//! JSON Schema of the build sheet (draft 2020-12), for editors: keys, choices, lists, and the shape of a quantity. Reading a sheet
//! checks what the schema cannot: the meaning of each text, and its range.
#![expect(clippy::indexing_slicing, reason = "an index into a JSON object makes the key")]

use super::{MEASURE_AGAIN, VERSION, lines};
use crate::base::section::{Content, Line};
use serde_json::{Map, Value, json};

/// A digit or a fraction is in every quantity, or there is none.
const QUANTITY: &str = "^none$|[0-9¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]";

/// The JSON Schema of a build sheet, as text.
///
/// ```
/// let schema = axlewright::sheet::schema();
/// assert!(schema.contains("https://json-schema.org/draft/2020-12/schema"));
/// ```
pub fn schema() -> String {
    let mut root = entry();
    let mut put = |key: &str, value: Value| root["properties"][key] = value;
    put("version", json!({ "const": VERSION, "description": "version of the document" }));
    put("name", json!({ "type": "string", "description": "what the vehicle is called" }));
    put("notes", json!({ "type": "string", "description": "anything else that is worth knowing" }));
    put(
        MEASURE_AGAIN,
        json!({
            "type": "array", "items": { "type": "string" },
            "description": "lines whose reading was taken on a part that was replaced; write them, and the list is void",
        }),
    );
    for (_, path, line) in lines().filter(|(_, _, line)| line.written) {
        let words: Vec<&str> = path.split('.').collect();
        place(&mut root, &words, line);
    }
    let quantity = json!({
        "description": "a number with its unit, and a tolerance where it has one: \"225 lbf/in +/- 3 %\"",
        "anyOf": [{ "type": "string", "pattern": QUANTITY }, { "$ref": "#/$defs/parts" }],
    });
    let parts = json!({
        "description": "the same in parts", "type": "object", "additionalProperties": false, "required": ["value", "unit"],
        "properties": { "value": { "type": "number" }, "unit": { "type": "string" }, "tolerance": { "type": "string" } },
    });
    let ratio = json!({
        "description": "a pure number, or text such as \"62 %\" or \"4.10:1\"",
        "anyOf": [{ "type": "number" }, { "$ref": "#/$defs/quantity" }],
    });
    let head = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Build sheet",
        "description": "One document with every measurement, rating and part of a vehicle. Every line may be missing.",
        "$defs": { "quantity": quantity, "parts": parts, "ratio": ratio },
    });
    if let (Value::Object(root), Value::Object(head)) = (&mut root, head) {
        root.extend(head);
    }
    format!("{root:#}\n")
}

/// A place of a list.
fn entry() -> Value {
    json!({ "type": "object", "additionalProperties": false, "properties": Map::new() })
}

/// A table, or that there is no such part.
fn table() -> Value {
    json!({ "type": ["object", "string"], "pattern": "^none$", "additionalProperties": false, "properties": Map::new() })
}

/// Puts a line where the words of its path lead.
fn place(folder: &mut Value, words: &[&str], line: &Line) {
    let Some((word, rest)) = words.split_first() else { return };
    let key = word.trim_end_matches("[]");
    let node = &mut folder["properties"][key];
    if node.is_null() {
        let inner = match (rest.is_empty(), *word == key) {
            (true, _) => leaf(line),
            (false, true) => table(),
            (false, false) => entry(),
        };
        *node = if *word == key {
            inner
        } else {
            json!({ "type": "array", "maxItems": line.places, "items": inner })
        };
    }
    if *word == key { place(node, rest, line) } else { place(&mut node["items"], rest, line) }
}

fn leaf(line: &Line) -> Value {
    let described = |words: &str| match line.assumed {
        Some((_, ground)) => format!("{} ({words}); assumed where it is not written: {ground}", line.meaning),
        None => format!("{} ({words})", line.meaning),
    };
    match line.content {
        Content::Quantity(kind) => {
            let shape = if kind.name == "Ratio" { "ratio" } else { "quantity" };
            json!({ "description": described(kind.words), "$ref": format!("#/$defs/{shape}") })
        }
        Content::Choice(words) => {
            let mut words = words.to_vec();
            if !words.contains(&"none") {
                words.push("none");
            }
            json!({ "description": line.meaning, "enum": words })
        }
        Content::Marking(_) => json!({ "description": line.meaning, "type": "string", "minLength": 1 }),
    }
}
