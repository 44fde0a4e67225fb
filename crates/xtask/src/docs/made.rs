//! Pages that the build makes: contents, the job, cautions, the bench, the lines of the sheet.

use crate::bench;
use crate::stages::{Call, target};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use surface::{Api, System, one_line};

pub fn toctree(caption: &str, pages: &[String]) -> String {
    format!("\n```{{toctree}}\n:hidden:\n:caption: {caption}\n\n{}\n```\n", pages.join("\n"))
        .replace(":caption: \n", "")
}

/// Systems, and pages that only the built book has.
pub fn contents(api: &Api) -> String {
    let line = |system: &System| {
        let covers = one_line(system.doc.split("\n\n").next().unwrap_or_default());
        format!("- [{covers}](/systems/{}.md)\n", system.name)
    };
    let systems: String = api.systems.iter().map(line).collect();
    format!(
        "\n## Systems\n\n{systems}\n## Made by the build\n\n- [The job](/job.md): what the library is for.\n\
         - [How far to trust it](/trust.md): measured errors of every function and model.\n\
         - [Cautions](/cautions.md): where the work can hurt someone.\n- [The bench](/bench.md): what a call costs.\n\
         - [Glossary](/glossary.md): words of the trade, and where the library answers them.\n\
         - [Reference](/reference/index.md): everything by its name.\n\
         - [`catalogue.json`](/catalogue.json): every function, model and quantity as data; a program with forms can be made of it.\n\
         - [`schema.json`](/schema.json): JSON Schema (draft 2020-12) of the build sheet; an editor that reads it completes keys and choices. \
         `axlewright schema` prints it, too.\n"
    )
}

/// The README up to its examples, and the sections on the scope of the library.
pub fn job(readme: &str) -> Result<String, String> {
    let first = readme.split("\n```").next().unwrap_or_default();
    let first = first.split_once('\n').map_or(first, |(_, text)| text);
    let mut page = format!("# The job\n{first}\n");
    for heading in ["Three kinds of thing", "What it covers, and where it stops", "Caution"] {
        let section = readme.split("\n## ").find(|section| section.starts_with(heading));
        let section = section.ok_or_else(|| format!("the README has no section {heading:?}"))?;
        page.push_str(&format!("\n## {section}\n"));
    }
    Ok(page)
}

/// Every caution once, with its subjects.
pub fn cautions(api: &Api) -> String {
    let mut by_text: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut add = |text: &str, name: String| {
        if !text.is_empty() {
            by_text.entry(one_line(text)).or_default().insert(name);
        }
    };
    for function in &api.functions {
        add(&function.docs.caution, function.path());
    }
    for model in &api.models {
        let name = format!("{}.{}", model.system, model.name);
        add(&model.docs.caution, name.clone());
        for method in &model.methods {
            add(&method.docs.caution, name.clone());
        }
    }
    let mut page = String::from(
        "# Cautions\n\nA result of this library is one input to the judgement of somebody qualified: local codes and licensed practice come \
         first. What the functions and models say, each once:\n\n| of | caution |\n|---|---|\n",
    );
    let mut all: Vec<_> = by_text.into_iter().map(|(text, names)| (names, text)).collect();
    all.sort();
    for (names, text) in all {
        let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
        page.push_str(&format!("| {} | {text} |\n", names.join("<br>")));
    }
    page
}

/// Description of the build sheet by the core. The program was built with the test of the rows, which has run.
pub fn sheet(root: &Path, what: &str) -> Result<String, String> {
    Call::new(root, target(root).join("debug/describe_sheet")).args([what]).output()
}

/// The last benchmark as a table.
pub fn bench_page(result: &str) -> Result<String, String> {
    let result: Value =
        serde_json::from_str(result).map_err(|error| format!("{}: {error}", bench::RESULT))?;
    let text = |value: &Value| value.as_str().unwrap_or("—").to_owned();
    let number = |value: &Value| match value.as_f64() {
        None => "—".to_owned(),
        Some(x) if x.fract() == 0.0 => format!("{x:.0}"),
        Some(x) => format!("{x:.3}"),
    };
    let items = result["items"].as_array().filter(|items| !items.is_empty());
    let items = items.ok_or_else(|| format!("{} has no items", bench::RESULT))?;
    let reached = items.iter().filter(|item| item["reached"] == Value::Bool(true)).count();
    let mut page = format!(
        "# The bench\n\nWhat `cargo xtask bench` measured on {}, on this machine: {}. It had other work as well: {} processes wanted to run, on average, when the timing began. Other machines give other times; the ratios \
         are of two ways to the same answer, one after the other in the same run, and a ratio is the peer's cost over ours.\n\n\
         **{reached} of {} reach what is wanted; worst: {}.** Worst is the item whose cost is nearest to what is allowed, or furthest beyond it. \
         \"instr.\" are instructions that callgrind counted for one call, \"the same\" is the same number of them.\n\n\
         | item, peer | ours | peer | | ratio | wanted | reached |\n|---|---:|---:|---|---:|---|---|\n",
        text(&result["date"]),
        text(&result["machine"]),
        number(&result["load"]),
        items.len(),
        text(&result["worst"])
    );
    for item in items {
        page.push_str(&format!(
            "| {} | {} | {} | {} | {} | {} | {} |\n",
            text(&item["item"]),
            number(&item["ours"]),
            number(&item["peer"]),
            text(&item["unit"]),
            item["ratio"].as_f64().map_or("—".into(), |ratio| format!("{ratio:.2}")),
            text(&item["wanted"]),
            if item["reached"] == Value::Bool(true) { "yes" } else { "**no**" },
        ));
    }
    Ok(page)
}
