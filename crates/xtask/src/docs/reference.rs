//! A page for each function and model, and their part of a system's page.

use surface::{Api, Content, Field, Function, Kind, Model, Output, Shape, System, one_line, snake};

/// A kind of quantity in words, with its unit.
fn quantity(kind: &Kind) -> String {
    match kind.si.as_str() {
        "1" => kind.words.clone(),
        si => format!("{}, {si}", kind.words),
    }
}

fn output(output: &Output) -> String {
    match &output.content {
        Content::Quantity(kind) => quantity(kind),
        Content::Choice(name) => name.to_lowercase(),
        Content::Text => "text".into(),
        Content::Whole => "whole number".into(),
        Content::Table => "table".into(),
    }
}

fn formula(text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("\n{}\n", text.replace('\n', " ")) }
}

/// Common part of a function's and a method's page.
fn body(function: &Function, level: &str) -> String {
    let docs = &function.docs;
    let mut page = format!("{}\n{}", docs.summary, formula(&docs.formula));
    if !function.parameters.is_empty() {
        page.push_str("\n| argument | quantity | meaning | limits (SI) |\n|---|---|---|---|\n");
        for p in &function.parameters {
            let list = if p.list { " (several)" } else { "" };
            let limit = p.limit.as_ref().map_or(String::new(), |limit| format!("`{limit}`"));
            page.push_str(&format!(
                "| `{}` | {}{list} | {} | {limit} |\n",
                p.name,
                quantity(&p.kind),
                one_line(&p.meaning)
            ));
        }
    }
    page.push_str("\n| result | quantity | meaning |\n|---|---|---|\n");
    for result in &function.results {
        page.push_str(&format!(
            "| `{}` | {} | {} |\n",
            result.name,
            output(result),
            one_line(&result.meaning)
        ));
    }
    sections(&mut page, level, &[("Valid for", &docs.valid_for), ("Source", &docs.source)]);
    caution(&mut page, &docs.caution);
    if !docs.example.is_empty() {
        let example: Vec<&str> = docs.example.lines().filter(|line| !line.starts_with("# ")).collect();
        let example = example.join("\n").replacen("```\n", "```rust\n", 1);
        sections(&mut page, level, &[("Example in Rust", &example)]);
    }
    page
}

fn sections(page: &mut String, level: &str, of: &[(&str, &str)]) {
    for (heading, text) in of {
        if !text.is_empty() {
            page.push_str(&format!("\n{level} {heading}\n\n{text}\n"));
        }
    }
}

fn caution(page: &mut String, text: &str) {
    if !text.is_empty() {
        page.push_str(&format!("\n:::{{caution}}\n{text}\n:::\n"));
    }
}

/// The page of a function.
pub fn function(function: &Function) -> String {
    let (system, name) = (&function.system, &function.name);
    let names: Vec<&str> = function.parameters.iter().map(|p| p.name.as_str()).collect();
    let arguments = names.join(", ");
    let twin =
        if function.results.len() == 1 { format!(", `axw_{system}_{name}_value`") } else { String::new() };
    format!(
        "# {}\n\n{}\n## Calls\n\n| | |\n|---|---|\n| Rust | `axlewright::{system}::{name}({arguments})` |\n\
         | Python | `axlewright.{system}.{name}(*, {arguments})` of quantities; `axlewright.si.{system}.{name}({arguments})` of SI numbers |\n\
         | C | `axw_{system}_{name}`, `axw_{system}_{name}_n`{twin} |\n\nRevision {}.\n",
        function.path(),
        body(function, "##"),
        function.docs.revision
    )
}

/// The page of a model.
pub fn model(model: &Model) -> String {
    let (docs, system) = (&model.docs, &model.system);
    let mut page = format!("# {system}.{}\n\n{}\n{}", model.name, docs.summary, formula(&docs.formula));
    page.push_str("\n## Fields\n\n| field | what | meaning |\n|---|---|---|\n");
    fields(&mut page, "", &model.fields);
    sections(&mut page, "##", &[("Valid for", &docs.valid_for), ("Source", &docs.source)]);
    caution(&mut page, &docs.caution);
    for method in &model.methods {
        page.push_str(&format!("\n## Method `{}`\n\n{}", method.name, body(method, "###")));
    }
    page.push_str(&format!(
        "\n## Built from\n\nRust: `axlewright::{system}::{0}`; Python: `axlewright.{system}.{0}`; C: `axw_{system}_{1}_new`. Revision {2}.\n",
        model.name,
        snake(&model.name),
        docs.revision
    ));
    page
}

fn fields(page: &mut String, above: &str, of: &[Field]) {
    for field in of {
        let name = format!("{above}{}", field.name);
        let (shape, below) = match &field.shape {
            Shape::Quantity(kind) => (quantity(kind), None),
            Shape::Choice(_) => ("choice".into(), None),
            Shape::Text => ("text".into(), None),
            Shape::List(below) => ("list".into(), Some(&below.fields)),
            Shape::Fields(below) => ("fields".into(), Some(&below.fields)),
        };
        let optional = match (field.may_be_none, field.optional) {
            (true, _) => " (optional, or `\"none\"`)",
            (false, true) => " (optional)",
            (false, false) => "",
        };
        // In pieces: a field may have the name of a system, and is no name of the catalogue.
        let shown = name.replace('.', "`.`");
        page.push_str(&format!("| `{shown}` | {shape}{optional} | {} |\n", one_line(&field.meaning)));
        if let Some(below) = below {
            fields(page, &format!("{name}."), below);
        }
    }
}

/// End of a system's page: its symbols from the core, its functions and models with their sources.
pub fn of_system(api: &Api, system: &System) -> String {
    let mut page = String::new();
    for paragraph in system.doc.split("\n\n") {
        let paragraph = one_line(paragraph);
        if let Some((before, list)) = paragraph.split_once("Symbols: ") {
            page.push_str(&format!("## Symbols\n\n{before}\n\n{}", symbols(list)));
        }
    }
    page.push_str("\n## Functions and models\n\n| | answers | source |\n|---|---|---|\n");
    let functions = api.functions.iter().filter(|function| function.system == system.name);
    let models = api.models.iter().filter(|model| model.system == system.name);
    let functions = functions.map(|function| (function.path(), &function.docs));
    for (name, docs) in
        functions.chain(models.map(|model| (format!("{}.{}", system.name, model.name), &model.docs)))
    {
        page.push_str(&format!("| `{name}` | {} | {} |\n", one_line(&docs.summary), one_line(&docs.source)));
    }
    page
}

/// The core's list of symbols as a table: each ends with its unit in brackets; text after the last full stop stays a sentence.
fn symbols(list: &str) -> String {
    let (list, after) = list.split_once("). ").map_or((list, ""), |(list, after)| (list, after));
    let mut page = String::from("| symbol | unit |\n|---|---|\n");
    for entry in list.trim_end_matches(['.', ')']).split("), `") {
        let entry = entry.trim_start_matches('`');
        let (meaning, unit) = entry.rsplit_once(" (").unwrap_or((entry, ""));
        page.push_str(&format!("| `{meaning} | {unit} |\n"));
    }
    format!("{page}\n{after}\n")
}

/// Every function and model by its name.
pub fn index(api: &Api) -> String {
    let functions = api.functions.iter().map(|function| (function.path(), function.docs.summary.clone()));
    let models = api
        .models
        .iter()
        .map(|model| (format!("{}.{}", model.system, model.name), model.docs.summary.clone()));
    let mut all: Vec<_> = functions.chain(models).collect();
    all.sort();
    let mut page = String::from(
        "# Reference\n\nA page a function and a model, from the core's own documentation. The whole of it as data: \
         [`catalogue.json`](/catalogue.json).\n\n| | answers |\n|---|---|\n",
    );
    for (name, summary) in all {
        page.push_str(&format!("| `{name}` | {} |\n", one_line(&summary)));
    }
    page
}
