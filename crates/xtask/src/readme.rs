//! The README's examples: each is run, and its output must be the README's.

use crate::install::{CLibrary, Python};
use crate::stages::{Call, cargo, target};
use std::path::Path;

/// A fenced block and the `text` block that follows it.
struct Example {
    language: String,
    code: String,
    shown: String,
}

fn examples(text: &str) -> Vec<Example> {
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
    let pairs = blocks.windows(2).filter(|pair| pair[1].0 == "text");
    pairs
        .map(|pair| Example {
            language: pair[0].0.clone(),
            code: pair[0].1.clone(),
            shown: pair[1].1.clone(),
        })
        .collect()
}

/// Runs the Python, C and Rust examples of the README.
pub fn run(root: &Path, python: &Python, c: &CLibrary) -> Result<(), String> {
    let text = std::fs::read_to_string(root.join("README.md")).map_err(|error| error.to_string())?;
    let folder = target(root).join("readme");
    std::fs::create_dir_all(folder.join("rust/src")).map_err(|error| error.to_string())?;
    let mut seen = Vec::new();
    for example in examples(&text) {
        let write = |name: &str, text: &str| {
            std::fs::write(folder.join(name), text).map_err(|error| error.to_string())
        };
        let printed = match example.language.as_str() {
            "python" => {
                write("example.py", &example.code)?;
                python.python(root).path(&folder.join("example.py")).output()?
            }
            "c" => {
                write("example.c", &example.code)?;
                c.compile(root, python, &folder.join("example.c"), &folder.join("example"))?;
                Call::new(root, folder.join("example")).output()?
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
                    .output()?
            }
            _ => continue,
        };
        if printed.trim_end() != example.shown.trim_end() {
            return Err(format!(
                "the {} example prints\n{printed}\nand the README shows\n{}",
                example.language, example.shown
            ));
        }
        seen.push(example.language);
    }
    seen.sort();
    seen.dedup();
    if seen == ["c", "python", "rust"] { Ok(()) } else { Err(format!("the README has examples in {seen:?}")) }
}
