//! The catalogue as JSON: all public items with their docs, for the book, the tests and programs with forms. It is built,
//! not committed: the core holds the same texts in `catalogue/generated.rs`.

use serde_json::{Map, Value, json};
use surface::{
    Api, Choice, Content, Docs, Field, Function, KindOf, Model, Output, Parameter, Range, Shape, System,
};

/// The whole catalogue.
pub fn json(api: &Api) -> String {
    let catalogue = json!({
        "library": "axlewright",
        "version": env!("CARGO_PKG_VERSION"),
        "kinds": all(&api.kinds, kind),
        "systems": all(&api.systems, system),
        "functions": all(&api.functions, function),
        "models": all(&api.models, model),
        "choices": all(&api.choices, choice),
    });
    format!("{catalogue:#}\n")
}

fn all<T>(of: &[T], one: impl Fn(&T) -> Value) -> Vec<Value> {
    of.iter().map(one).collect()
}

fn kind(kind: &KindOf) -> Value {
    let unit = |unit: &surface::Unit| {
        json!({
            "name": unit.name, "symbol": unit.symbol, "spellings": unit.spellings,
            "numerator": unit.numerator, "denominator": unit.denominator, "offset": unit.offset,
        })
    };
    json!({
        "name": kind.name, "words": kind.words, "si": kind.si, "metric": kind.metric, "us": kind.us,
        "units": all(&kind.units, unit),
    })
}

fn system(system: &System) -> Value {
    json!({ "name": system.name, "doc": system.doc, "has_section": system.has_section })
}

/// Docs of an item, beside its other data.
fn described(docs: &Docs, rest: Value) -> Value {
    let mut of = json!({
        "summary": docs.summary, "formula": docs.formula, "returns": docs.returns, "valid_for": docs.valid_for,
        "source": docs.source, "caution": docs.caution, "example": docs.example, "revision": docs.revision,
    });
    if let (Value::Object(of), Value::Object(rest)) = (&mut of, rest) {
        of.extend(rest);
    }
    of
}

fn function(of: &Function) -> Value {
    described(
        &of.docs,
        json!({
            "system": of.system, "name": of.name, "parameters": all(&of.parameters, parameter),
            "result_type": of.result_type, "results": all(&of.results, output),
        }),
    )
}

fn parameter(of: &Parameter) -> Value {
    json!({
        "name": of.name, "kind": of.kind.name, "list": of.list, "meaning": of.meaning, "limit": of.limit,
        "range": range(&of.range),
    })
}

/// Absent, false or empty entries are left out.
fn range(of: &Range) -> Value {
    let said = [
        ("lower", of.lower.map(Value::from)),
        ("lower_open", of.lower_open.then_some(Value::Bool(true))),
        ("upper", of.upper.map(Value::from)),
        ("upper_open", of.upper_open.then_some(Value::Bool(true))),
        ("exceeds", (!of.exceeds.is_empty()).then(|| of.exceeds.clone().into())),
        ("whole", of.whole.then_some(Value::Bool(true))),
    ];
    said.into_iter().filter_map(|(name, value)| Some((name.to_owned(), value?))).collect::<Map<_, _>>().into()
}

fn output(of: &Output) -> Value {
    let (content, name) = match &of.content {
        Content::Quantity(kind) => ("quantity", Some(kind.name.as_str())),
        Content::Choice(name) => ("choice", Some(name.as_str())),
        Content::Text => ("text", None),
        Content::Whole => ("whole", None),
        Content::Table => ("table", None),
    };
    json!({ "name": of.name, "type": content, "of": name, "meaning": of.meaning })
}

fn model(of: &Model) -> Value {
    described(
        &of.docs,
        json!({
            "system": of.system, "name": of.name, "fields": all(&of.fields, field), "methods": all(&of.methods, function),
        }),
    )
}

fn field(of: &Field) -> Value {
    let (shape, what) = match &of.shape {
        Shape::Quantity(kind) => ("quantity", Value::from(kind.name.as_str())),
        Shape::Choice(name) => ("choice", Value::from(name.as_str())),
        Shape::Text => ("text", Value::Null),
        Shape::List(below) => ("list", all(&below.fields, field).into()),
        Shape::Fields(below) => ("fields", all(&below.fields, field).into()),
    };
    json!({
        "name": of.name, "optional": of.optional, "may_be_none": of.may_be_none, "type": shape, "of": what, "meaning": of.meaning,
    })
}

fn choice(of: &Choice) -> Value {
    json!({ "name": of.name, "words": of.words })
}
