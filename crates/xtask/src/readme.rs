//! The examples of the READMEs: each is run, and its output must be the README's. The C programs of the C page are run, too.

use crate::install::{CLibrary, Python};
use crate::stages::{Call, cargo, target};
use std::path::Path;

/// A fenced block and the `text` block that follows it.
struct Example {
    language: String,
    code: String,
    shown: String,
}

/// Fenced blocks: language and code.
fn blocks(text: &str) -> Vec<(String, String)> {
    let mut blocks: Vec<(String, String)> = Vec::new();
    let mut open: Option<(String, String)> = None;
    for line in text.lines() {
        match (&mut open, line.strip_prefix("```")) {
            (None, Some(language)) => open = Some((language.trim().to_owned(), String::new())),
            (Some(_), Some("")) => blocks.extend(open.take()),
            (Some((_, code)), _) => {
                code.push_str(line);
                code.push('\n');
            }
            (None, None) => {}
        }
    }
    blocks
}

fn examples(text: &str) -> Vec<Example> {
    let blocks = blocks(text);
    let pairs = blocks.windows(2).filter(|pair| pair[1].0 == "text");
    pairs
        .map(|pair| Example {
            language: pair[0].0.clone(),
            code: pair[0].1.clone(),
            shown: pair[1].1.clone(),
        })
        .collect()
}

/// Pages whose examples print what stands below them.
const PAGES: [&str; 3] = ["README.md", "bindings/python/README.md", "crates/axlewright/README.md"];

/// Runs the Python, C and Rust examples of the READMEs, and the C programs of the C page.
pub fn run(root: &Path, python: &Python, c: &CLibrary) -> Result<(), String> {
    let folder = target(root).join("readme");
    std::fs::create_dir_all(folder.join("rust/src")).map_err(|error| error.to_string())?;
    let mut seen = Vec::new();
    for page in PAGES {
        let text = surface::read(&root.join(page))?;
        let found = examples(&text);
        if found.is_empty() {
            return Err(format!("{page} has no example"));
        }
        for example in found {
            let printed =
                run_one(root, &folder, python, c, &example).map_err(|error| format!("{page}: {error}"))?;
            if printed.trim_end() != example.shown.trim_end() {
                return Err(format!(
                    "the {} example of {page} prints\n{printed}\nand the page shows\n{}",
                    example.language, example.shown
                ));
            }
            seen.push(example.language);
        }
    }
    seen.sort();
    seen.dedup();
    if seen != ["c", "python", "rust"] {
        return Err(format!("the READMEs have examples in {seen:?}"));
    }
    let page = surface::read(&root.join("docs/c.md"))?;
    for (_, code) in blocks(&page).into_iter().filter(|(language, _)| language == "c") {
        let example = Example { language: "c".into(), code, shown: String::new() };
        run_one(root, &folder, python, c, &example).map_err(|error| format!("docs/c.md: {error}"))?;
    }
    Ok(())
}

/// Runs an example and returns what it prints.
fn run_one(
    root: &Path,
    folder: &Path,
    python: &Python,
    c: &CLibrary,
    example: &Example,
) -> Result<String, String> {
    let write =
        |name: &str, text: &str| std::fs::write(folder.join(name), text).map_err(|error| error.to_string());
    match example.language.as_str() {
        "python" => {
            write("example.py", &example.code)?;
            python.python(root).path(&folder.join("example.py")).output()
        }
        "c" => {
            write("example.c", &example.code)?;
            c.compile(root, python, &folder.join("example.c"), &folder.join("example"))?;
            Call::new(root, folder.join("example")).output()
        }
        "rust" => {
            write("rust/src/main.rs", &example.code)?;
            let core = root.join("crates/axlewright");
            let manifest = format!(
                "[package]\nname = \"readme\"\nedition = \"2024\"\n\n[workspace]\n\n[dependencies]\naxlewright = {{ path = {core:?} }}\n"
            );
            write("rust/Cargo.toml", &manifest)?;
            std::fs::copy(root.join("Cargo.lock"), folder.join("rust/Cargo.lock"))
                .map_err(|error| error.to_string())?;
            cargo(root)
                .args(["run", "--quiet", "--manifest-path"])
                .path(&folder.join("rust/Cargo.toml"))
                .output()
        }
        other => Err(format!("an example in {other:?} is not run here")),
    }
}
