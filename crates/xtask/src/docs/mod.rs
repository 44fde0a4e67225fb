//! `cargo xtask docs`: the book. Its sources are written into `target/docs/source`: the committed pages of `docs`, and the pages from
//! the catalogue, the rows and the last benchmark. Sphinx makes `target/docs/book` of them, and its links are checked.

mod link;
mod made;
mod reference;
mod trust;

use crate::install::Python;
use crate::stages::{Stages, cargo, target};
use crate::{attack, bench, generate};
use link::{link, outside, subjects};
use made::{bench_page, cautions, contents, job, sheet, toctree};
use std::path::{Path, PathBuf};
use surface::{Api, read};

pub use link::page_of;

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
                "all",
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
    generate::built_again(root)?;
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
    let attacked = read(&docs.join("attack.md"))? + "\n" + &read(&root.join(attack::RESULT))?;
    pages.push(Page::new("attack.md", linked(&attacked)?));
    pages.push(Page { path: "catalogue.json".into(), content: Content::Copy(generate::catalogue(root)) });
    pages.push(Page::new("schema.json", sheet(root, "schema")?));
    let names: Vec<String> = api.systems.iter().map(|system| format!("systems/{}", system.name)).collect();
    pages.push(Page::new(
        "index.md",
        linked(&read(&docs.join("README.md"))?)?
            + &contents(api)
            + &toctree(
                "The job",
                &["job".into(), "sheet".into(), "lines".into(), "glossary".into(), "units".into()],
            )
            + &toctree("Systems", &names)
            + &toctree("Trust", &["trust", "sources", "attack", "cautions", "bench"].map(String::from))
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
    let benched = bench_page(&read(&root.join(bench::RESULT))?)? + "\n" + &read(&docs.join("bench.md"))?;
    pages.push(Page::new("bench.md", linked(&benched)?));
    pages.push(Page::new("lines.md", sheet(root, "lines")?));
    pages.push(Page::new("glossary.md", sheet(root, "glossary")?));
    for link in outside(root)? {
        pages.push(Page { content: Content::Copy(root.join(&link)), path: format!("repository/{link}") });
    }
    Ok(pages)
}
