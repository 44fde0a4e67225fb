//! `cargo xtask docs`: reference pages from the catalogue, and the core's own documentation, into `target/docs`.

use crate::api::{Api, Content, Function, Model, Output, Shape};
use crate::stages::{cargo, target};
use axlewright::units::Kind;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

pub fn run(root: &Path) -> Result<(), String> {
    let api = Api::read(root)?;
    let out = target(root).join("docs");
    let reference = out.join("reference");
    std::fs::create_dir_all(&reference).map_err(|error| error.to_string())?;
    let write = |path: &Path, text: &str| {
        std::fs::write(path, text).map_err(|error| format!("{}: {error}", path.display()))
    };
    for page in std::fs::read_dir(root.join("docs")).map_err(|error| error.to_string())? {
        let page = page.map_err(|error| error.to_string())?.path();
        let name = page.file_name().ok_or("a page without a name")?;
        std::fs::copy(&page, out.join(name)).map_err(|error| error.to_string())?;
    }
    let mut index = String::from("# Reference\n");
    for system in &api.systems {
        index.push_str(&format!("\n## {}\n\n{}\n\n", system.name, system.doc.trim()));
        for function in api.functions.iter().filter(|function| function.system == system.name) {
            index.push_str(&format!("- [`{0}`]({0}.md): {1}\n", function.path(), function.docs.summary));
            write(&reference.join(format!("{}.md", function.path())), &function_page(function))?;
        }
        for model in api.models.iter().filter(|model| model.system == system.name) {
            let name = format!("{}.{}", model.system, model.name);
            index.push_str(&format!("- [`{name}`]({name}.md): {}\n", model.docs.summary));
            write(&reference.join(format!("{name}.md")), &model_page(model))?;
        }
    }
    write(&reference.join("README.md"), &index)?;
    write(&out.join("rows.md"), &rows_page(root)?)?;
    cargo(root)
        .args(["doc", "--quiet", "--no-deps", "--package", "axlewright", "--features", "sheet"])
        .run()?;
    println!("{} pages in {}", api.functions.len() + api.models.len(), reference.display());
    Ok(())
}

/// How many outside rows each function, model and unit has, by provenance.
fn rows_page(root: &Path) -> Result<String, String> {
    let mut counts: BTreeMap<String, BTreeMap<String, usize>> = BTreeMap::new();
    let mut kinds = BTreeSet::new();
    let folder = root.join("tests/rows");
    for file in std::fs::read_dir(&folder).map_err(|error| error.to_string())? {
        let path = file.map_err(|error| error.to_string())?.path();
        let text = std::fs::read_to_string(&path).map_err(|error| error.to_string())?;
        let rows: Vec<serde_json::Value> =
            serde_json::from_str(&text).map_err(|error| format!("{}: {error}", path.display()))?;
        for row in rows {
            let of = ["function", "model"].iter().find_map(|key| row[*key].as_str()).unwrap_or("units");
            let provenance = row["provenance"].as_str().unwrap_or("unknown");
            kinds.insert(provenance.to_owned());
            *counts.entry(of.to_owned()).or_default().entry(provenance.to_owned()).or_default() += 1;
        }
    }
    let heads: Vec<&str> = kinds.iter().map(String::as_str).collect();
    let mut page =
        format!("# Outside rows\n\n| of | {} |\n|---|{}\n", heads.join(" | "), "---:|".repeat(heads.len()));
    for (name, by) in &counts {
        let cells: Vec<String> =
            kinds.iter().map(|kind| by.get(kind).map_or(String::new(), usize::to_string)).collect();
        page.push_str(&format!("| `{name}` | {} |\n", cells.join(" | ")));
    }
    Ok(page)
}

fn what(kind: &str) -> String {
    Kind::named(kind).map_or_else(String::new, |kind| format!("{}, {}", kind.words, kind.si))
}

fn output(output: &Output) -> String {
    match &output.content {
        Content::Quantity(kind) => what(kind),
        Content::Choice(name) => name.to_lowercase(),
        Content::Text => "text".into(),
        Content::Whole => "whole number".into(),
        Content::Table => "table".into(),
    }
}

fn body(function: &Function) -> String {
    let docs = &function.docs;
    let mut page = format!("{}\n", docs.summary);
    if !docs.formula.is_empty() {
        page.push_str(&format!("\n**Formula.** {}\n", docs.formula));
    }
    if !function.parameters.is_empty() {
        page.push_str("\n| argument | quantity | meaning | range (SI) |\n|---|---|---|---|\n");
        for p in &function.parameters {
            let list = if p.list { " (several)" } else { "" };
            let limit = p.limit.as_deref().unwrap_or("");
            page.push_str(&format!("| `{}` | {}{list} | {} | {limit} |\n", p.name, what(&p.kind), p.meaning));
        }
    }
    page.push_str("\n| result | quantity | meaning |\n|---|---|---|\n");
    for result in &function.results {
        page.push_str(&format!("| `{}` | {} | {} |\n", result.name, output(result), result.meaning));
    }
    for (heading, text) in
        [("Valid for", &docs.valid_for), ("Source", &docs.source), ("Caution", &docs.caution)]
    {
        if !text.is_empty() {
            page.push_str(&format!("\n**{heading}.**\n\n{text}\n"));
        }
    }
    if !docs.example.is_empty() {
        let example: Vec<&str> = docs.example.lines().filter(|line| !line.starts_with("# ")).collect();
        let example = example.join("\n").replacen("```\n", "```rust\n", 1);
        page.push_str(&format!("\n**Example (Rust).**\n\n{example}\n"));
    }
    page
}

fn function_page(function: &Function) -> String {
    format!("# {}\n\n{}\nRevision {}.\n", function.path(), body(function), function.docs.revision)
}

fn model_page(model: &Model) -> String {
    let docs = &model.docs;
    let mut page =
        format!("# {}.{}\n\n{}\n\n**Formula.** {}\n", model.system, model.name, docs.summary, docs.formula);
    page.push_str("\n| field | what | meaning |\n|---|---|---|\n");
    for field in &model.fields {
        let shape = match &field.shape {
            Shape::Quantity(kind) => what(kind),
            Shape::Choice(_) => "choice".into(),
            Shape::Text => "text".into(),
            Shape::List(_) => "list".into(),
            Shape::Fields(_) => "table".into(),
        };
        let optional = if field.optional { " (optional)" } else { "" };
        page.push_str(&format!("| `{}` | {shape}{optional} | {} |\n", field.name, field.meaning));
    }
    for (heading, text) in
        [("Valid for", &docs.valid_for), ("Source", &docs.source), ("Caution", &docs.caution)]
    {
        if !text.is_empty() {
            page.push_str(&format!("\n**{heading}.**\n\n{text}\n"));
        }
    }
    for method in &model.methods {
        page.push_str(&format!("\n## {}\n\n{}", method.name, body(method)));
    }
    page
}
