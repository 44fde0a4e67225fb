//! `cargo xtask docs`: the book. Its sources are written into `target/docs/source`: the committed pages of `docs`, and the pages from
//! the catalogue, the rows and the last benchmark. Sphinx makes `target/docs/book` of them, and its links are checked.

mod reference;
mod trust;

use crate::install::Python;
use crate::stages::{Stages, cargo, target};
use crate::{bench, generate};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use surface::{Api, System, one_line, read};

pub fn run(root: &Path) -> Result<(), String> {
    let mut stages = Stages::default();
    let python = stages.run("virtual environment", || Python::new(root, "venv-docs", &["demo", "docs"]))?;
    stages.run("wheel", || python.install_wheel(root))?;
    stages.run("reference rows (Rust)", || {
        cargo(root)
            .args([
                "test",
                "--quiet",
                "--package",
                "axlewright-tests",
                "--test",
                "rows",
                "the_core_meets_every_row",
            ])
            .run()
    })?;
    let book = stages.run("book", || build(root, &python))?;
    stages.print();
    println!("\nThe book: {}", book.join("index.html").display());
    Ok(())
}

/// Builds the book. The wheel is installed, and the rows have run.
pub fn build(root: &Path, python: &Python) -> Result<PathBuf, String> {
    let out = target(root).join("docs");
    let (source, book) = (out.join("source"), out.join("book"));
    if out.exists() {
        std::fs::remove_dir_all(&out).map_err(|error| error.to_string())?;
    }
    let api = Api::read(&surface::core_sources())?;
    generate::build(root, &api)?;
    for page in pages(root, &api)? {
        page.write(&source)?;
    }
    let settings = root.join("docs/book");
    python.python(root).path(&settings.join("drawings.py")).path(&source.join("drawings")).run()?;
    python
        .python(root)
        .args(["-m", "sphinx", "--builder", "html", "--fail-on-warning", "--keep-going", "--nitpicky"])
        .args(["--quiet", "--conf-dir"])
        .path(&settings)
        .path(&source)
        .path(&book)
        .run()?;
    python
        .python(root)
        .path(&settings.join("check.py"))
        .path(&book)
        .path(&generate::catalogue(root))
        .run()?;
    Ok(book)
}

/// A file of the book's sources: a page to finish, or another file to copy.
struct Page {
    path: String,
    content: Content,
}

enum Content {
    Text(String),
    Copy(PathBuf),
}

impl Page {
    fn new(path: impl Into<String>, text: String) -> Page {
        Page { path: path.into(), content: Content::Text(text) }
    }
    fn write(&self, source: &Path) -> Result<(), String> {
        let path = source.join(&self.path);
        let folder = path.parent().ok_or("a page without a folder")?;
        std::fs::create_dir_all(folder).map_err(|error| error.to_string())?;
        let done = match &self.content {
            Content::Text(text) => std::fs::write(&path, text),
            Content::Copy(from) => std::fs::copy(from, &path).map(drop),
        };
        done.map_err(|error| format!("{}: {error}", path.display()))
    }
}

/// All sources of Sphinx except the drawings.
fn pages(root: &Path, api: &Api) -> Result<Vec<Page>, String> {
    let docs = root.join("docs");
    let rows = trust::Rows::read(&target(root).join("tmp/rows-measured.json"))?;
    let linked = |text: &str| link(root, api, text);
    let mut pages = Vec::new();
    for name in ["units", "sheet", "sources", "c", "changelog"] {
        pages.push(Page::new(format!("{name}.md"), linked(&read(&docs.join(format!("{name}.md")))?)?));
    }
    pages.push(Page { path: "catalogue.json".into(), content: Content::Copy(generate::catalogue(root)) });
    pages.push(Page::new("schema.json", sheet(root, "schema")?));
    let names: Vec<String> = api.systems.iter().map(|system| format!("systems/{}", system.name)).collect();
    pages.push(Page::new(
        "index.md",
        linked(&read(&docs.join("README.md"))?)?
            + &contents(api)
            + &toctree("The job", &["job".into(), "sheet".into(), "lines".into(), "units".into()])
            + &toctree("Systems", &names)
            + &toctree("Trust", &["trust".into(), "sources".into(), "cautions".into(), "bench".into()])
            + &toctree("More", &["reference/index".into(), "c".into(), "changelog".into()]),
    ));
    pages.push(Page::new("job.md", linked(&job(&read(&root.join("README.md"))?)?)?));
    for system in &api.systems {
        let written = linked(&read(&docs.join(page_of(&system.name)))?)?;
        let executed = if written.contains("{code-cell}") {
            "---\nfile_format: mystnb\nkernelspec:\n  name: python3\n---\n\n"
        } else {
            ""
        };
        let follows = reference::of_system(api, system);
        let of = subjects(api).into_iter().filter(|name| name.starts_with(&format!("{}.", system.name)));
        let short = |name: &str| name[system.name.len() + 1..].to_owned();
        let below: Vec<String> = of.map(|name| format!("{} </reference/{name}>", short(&name))).collect();
        pages.push(Page::new(
            page_of(&system.name),
            format!("{executed}{written}\n{}{}", linked(&follows)?, toctree("", &below)),
        ));
    }
    for function in &api.functions {
        let page = reference::function(function) + &rows.of(api, &function.path());
        pages.push(Page::new(format!("reference/{}.md", function.path()), linked(&page)?));
    }
    for model in &api.models {
        let name = format!("{}.{}", model.system, model.name);
        let page = reference::model(model) + &rows.of(api, &name);
        pages.push(Page::new(format!("reference/{name}.md"), linked(&page)?));
    }
    pages.push(Page::new("reference/index.md", linked(&reference::index(api))?));
    pages.push(Page::new("trust.md", linked(&rows.page(api))?));
    pages.push(Page::new("cautions.md", linked(&cautions(api))?));
    pages.push(Page::new("bench.md", bench_page(&read(&root.join(bench::RESULT))?)?));
    pages.push(Page::new("lines.md", sheet(root, "lines")?));
    for link in outside(root)? {
        pages.push(Page { content: Content::Copy(root.join(&link)), path: format!("repository/{link}") });
    }
    Ok(pages)
}

/// The committed page of a system, below `docs`.
pub fn page_of(system: &str) -> String {
    format!("systems/{system}.md")
}

/// `spring.wheel_rate`, `spring.Corner`: subjects with a page in the reference, in the order of the catalogue.
pub fn subjects(api: &Api) -> Vec<String> {
    let models = api.models.iter().map(|model| format!("{}.{}", model.system, model.name));
    api.functions.iter().map(|function| function.path()).chain(models).collect()
}

fn toctree(caption: &str, pages: &[String]) -> String {
    format!("\n```{{toctree}}\n:hidden:\n:caption: {caption}\n\n{}\n```\n", pages.join("\n"))
        .replace(":caption: \n", "")
}

/// Systems, and pages that only the built book has.
fn contents(api: &Api) -> String {
    let line = |system: &System| {
        let covers = one_line(system.doc.split("\n\n").next().unwrap_or_default());
        format!("- [{covers}](/systems/{}.md)\n", system.name)
    };
    let systems: String = api.systems.iter().map(line).collect();
    format!(
        "\n## Systems\n\n{systems}\n## Made by the build\n\n- [The job](/job.md): what the library is for.\n\
         - [How far to trust it](/trust.md): measured errors of every function and model.\n\
         - [Cautions](/cautions.md): where the work can hurt someone.\n- [The bench](/bench.md): what a call costs.\n\
         - [Reference](/reference/index.md): everything by its name.\n\
         - [`catalogue.json`](/catalogue.json): every function, model and quantity as data; a program with forms can be made of it.\n\
         - [`schema.json`](/schema.json): JSON Schema (draft 2020-12) of the build sheet; an editor that reads it completes keys and choices. \
         `python -m axlewright schema` prints it, too.\n"
    )
}

/// The README up to its examples, and the sections on the scope of the library.
fn job(readme: &str) -> Result<String, String> {
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
fn cautions(api: &Api) -> String {
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

/// Description of the build sheet by the core.
fn sheet(root: &Path, what: &str) -> Result<String, String> {
    cargo(root)
        .args(["run", "--quiet", "--package", "axlewright-tests", "--bin", "describe_sheet", "--", what])
        .output()
}

/// The last benchmark as a table.
fn bench_page(result: &str) -> Result<String, String> {
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

/// Files of the repository outside `docs` to which its pages link.
fn outside(root: &Path) -> Result<BTreeSet<String>, String> {
    let mut found = BTreeSet::new();
    for name in ["README", "units", "sheet", "sources", "c", "changelog"] {
        let text = read(&root.join(format!("docs/{name}.md")))?;
        found.extend(text.split("](../").skip(1).filter_map(|rest| Some(rest.split_once(')')?.0.to_owned())));
    }
    Ok(found)
}

/// Text with links: a name of the catalogue in code leads to its page, a file outside `docs` to its copy, a page of the book
/// to its place. A name of a system that is not in the catalogue is an error.
fn link(root: &Path, api: &Api, text: &str) -> Result<String, String> {
    let names: BTreeSet<String> = subjects(api).into_iter().collect();
    let mut out = String::new();
    let mut fenced = false;
    for line in text.lines() {
        let fence = line.trim_start().starts_with("```");
        fenced ^= fence;
        if fenced || fence || line.starts_with("# ") {
            out.push_str(line);
        } else {
            // Odd pieces are code.
            for (place, piece) in line.split('`').enumerate() {
                let called = piece.replace("::", ".");
                let inside = place % 2 == 1;
                let linked = out.ends_with('[');
                if inside && !linked && names.contains(&called) {
                    out.push_str(&format!("[`{called}`](/reference/{called}.md)"));
                } else if inside {
                    refuse_stale(api, &names, &called)?;
                    out.push_str(&format!("`{piece}`"));
                } else {
                    out.push_str(&piece.replace("](../", "](/repository/"));
                }
            }
        }
        out.push('\n');
    }
    for place in out.split("](/repository/").skip(1) {
        let path = place.split_once(')').map_or(place, |(path, _)| path);
        if !root.join(path).is_file() {
            return Err(format!("a page links to {path}, which is not there"));
        }
    }
    Ok(out)
}

fn refuse_stale(api: &Api, names: &BTreeSet<String>, called: &str) -> Result<(), String> {
    let plain = |name: &str| name.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '_');
    let Some((system, name)) = called.split_once('.') else { return Ok(()) };
    let of_system = api.systems.iter().any(|known| known.name == system);
    if of_system && plain(name) && !names.contains(called) {
        return Err(format!("a page names `{called}`, which is not in the catalogue"));
    }
    Ok(())
}
