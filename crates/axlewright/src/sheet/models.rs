//! Models that a sheet holds: the document of a suspension or a cap test, ready to draw or to ask.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::graph::{FieldInfo, Graph, ModelInfo, Slot};
use super::plan::{Origin, Plan};
use crate::base::document::{Document, Field, Model, NONE};
use crate::base::section::Content;
use crate::base::text::{did_you_mean, shortened};
use crate::units::Kind;
use crate::{Error, Result};
use serde_json::{Map, Value};

/// A model with the values of a sheet.
#[derive(Debug, Clone)]
pub struct SheetModel {
    /// Name by which it is asked for: `front.suspension`.
    pub path: &'static str,
    /// Its type: `suspension.DoubleWishbone`.
    pub model: &'static str,
    /// Fields that do not stand under their own key in its table, or that nobody wrote.
    pub elsewhere: Vec<Elsewhere>,
    fields: Vec<(String, Owned)>,
}

/// A field of a model that comes from elsewhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Elsewhere {
    /// Path in the model's document.
    pub field: String,
    /// Line from which it comes.
    pub line: &'static str,
    /// Origin of the line: written, computed or assumed.
    pub origin: &'static str,
}

#[derive(Debug, Clone)]
enum Owned {
    Si(f64, &'static Kind),
    Text(String),
}

impl Owned {
    /// As a document holds it: a bare number is a ratio, another quantity is text in its SI unit.
    fn json(&self) -> Value {
        match self {
            Owned::Si(si, kind) if kind.si == "1" => Value::from(*si),
            Owned::Si(si, kind) => Value::from(format!("{si} {}", kind.units[0].symbol)),
            Owned::Text(text) => Value::from(text.as_str()),
        }
    }
}

/// The paths of all models that a sheet may hold, and their types.
pub fn models() -> impl Iterator<Item = (&'static str, &'static str)> {
    Graph::get().models.iter().map(|model| (model.path, model.model))
}

impl Sheet {
    /// The model of this path with the values of the sheet: written lines as they are written, others as they follow or are assumed.
    ///
    /// If several types of model answer to one path, such as two kinds of suspension, it is the first of which everything required is known.
    pub fn model(&self, path: &str) -> Result<SheetModel> {
        let all: Vec<&ModelInfo> = Graph::get().models.iter().filter(|model| model.path == path).collect();
        if all.is_empty() {
            let message =
                format!("there is no such model{}", did_you_mean(path, models().map(|(path, _)| path)));
            return Err(Error::document(shortened(path), message));
        }
        let slots = all.iter().flat_map(|model| model.fields.iter().map(|field| field.slot));
        let plan = Plan::new(self, |_| false, slots);
        let mut values = plan.start(self);
        plan.run(self, &mut values, &mut Vec::new());
        // What is without end is a part that is not there.
        let known = |slot: Slot| values[usize::from(slot)].is_finite();
        let lacking = |model: &ModelInfo| -> Vec<&'static str> {
            let required = model.fields.iter().filter(|field| !field.optional && !known(field.slot));
            required.map(|field| Graph::get().info(field.slot).path).collect()
        };
        let Some(model) = all.iter().copied().find(|model| lacking(model).is_empty()) else {
            let fewest =
                all.iter().map(|model| (lacking(model), model.model)).min_by_key(|(lines, _)| lines.len());
            let (lines, model) = fewest.unwrap_or_default();
            let message = format!("as a {model} it needs {}", lines.join(", "));
            return Err(Error::document(path, message));
        };
        let (mut fields, mut elsewhere) = (vec![], vec![]);
        let named = model.named.iter().map(|(field, word)| (*field, *word));
        fields.extend(named.map(|(field, word)| (field.to_owned(), Owned::Text(word.to_owned()))));
        fields.extend(model.end.map(|(field, word)| (field.to_owned(), Owned::Text(word.to_owned()))));
        // A part without end that the sheet says is not there: the model is told so, too.
        let is_none = |slot: Slot| {
            let info = Graph::get().info(slot);
            info.line.absent.is_some_and(|si| !si.is_finite()) && self.none_around(info.path).is_some()
        };
        let told = |slot: Slot| known(slot) || is_none(slot);
        let begun: Vec<usize> = model
            .fields
            .iter()
            .filter(|field| field.required && !told(field.slot))
            .filter_map(|field| field.part)
            .collect();
        let drawn =
            |field: &&FieldInfo| told(field.slot) && !field.part.is_some_and(|part| begun.contains(&part));
        for field in model.fields.iter().filter(drawn) {
            let info = Graph::get().info(field.slot);
            let written = self.values.get(&field.slot);
            let value = match (info.line.content, written) {
                _ if is_none(field.slot) => Owned::Text(NONE.to_owned()),
                (Content::Quantity(kind), None) => Owned::Si(values[usize::from(field.slot)], kind),
                (Content::Choice(words), None) => {
                    let place = values[usize::from(field.slot)] as usize;
                    Owned::Text(words.get(place).copied().unwrap_or_default().to_owned())
                }
                // A model reads the value without its tolerance.
                (Content::Quantity(kind), Some(written)) => Owned::Si(written.si, kind),
                (_, Some(written)) => Owned::Text(written.text.to_string()),
                (Content::Marking(_), None) => continue,
            };
            // Under the model's own key: in its table, at a place of its list, or at the root of the sheet.
            let own = match info.path.strip_prefix(model.table) {
                Some(rest) if rest.starts_with('[') => true,
                Some(rest) => rest.strip_prefix('.').unwrap_or(rest) == field.name,
                None => false,
            };
            let origin = match plan.origins[usize::from(field.slot)] {
                Origin::Written => "written",
                Origin::Assumed => "assumed",
                _ => "computed",
            };
            if !own || origin != "written" {
                elsewhere.push(Elsewhere { field: field.name.clone(), line: info.path, origin });
            }
            fields.push((field.name.clone(), value));
        }
        Ok(SheetModel { path: model.path, model: model.model, elsewhere, fields })
    }
}

impl SheetModel {
    /// The document of the model.
    pub fn document(&self) -> Result<Document> {
        Document::from_si(self.fields.iter().map(|(name, value)| {
            let field = match value {
                Owned::Si(si, _) => Field::Si(*si),
                Owned::Text(text) => Field::Text(text),
            };
            (name.as_str(), field)
        }))
    }

    /// The model itself.
    pub fn read<M: Model + serde::de::DeserializeOwned>(&self) -> Result<M> {
        M::from_document(&self.document()?)
    }

    /// The document of the model as JSON, each quantity as text in its SI unit.
    pub fn to_json(&self) -> String {
        let mut root = Value::Object(Map::new());
        for (path, value) in &self.fields {
            let mut at = &mut root;
            for key in path.split(['.', '[']) {
                at = match key.strip_suffix(']').map(str::parse::<usize>) {
                    Some(Ok(place)) => entry(at, place),
                    _ => field(at, key),
                };
            }
            *at = value.json();
        }
        root.to_string()
    }
}

/// The value of a key, an empty one where there is none yet.
fn field<'a>(at: &'a mut Value, key: &str) -> &'a mut Value {
    if !at.is_object() {
        *at = Value::Object(Map::new());
    }
    &mut at[key]
}

/// The value of a place of a list, empty ones before it where there are none yet.
fn entry(at: &mut Value, place: usize) -> &mut Value {
    if !at.is_array() {
        *at = Value::Array(vec![]);
    }
    if let Value::Array(list) = at {
        let length = list.len().max(place + 1);
        list.resize(length, Value::Null);
    }
    &mut at[place]
}
