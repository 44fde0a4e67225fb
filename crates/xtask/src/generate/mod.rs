//! `cargo xtask generate`: whatever follows from the core's sources. Committed is what is read as a contract: the core's catalogue, the C
//! header, the Python stubs. With `--check` a difference of these is an error, and nothing committed is written. The rest is built, into
//! `target/generated`; the sources of the bindings are made by their `build.rs`.

mod catalogue;
mod entries;
mod families;
mod header;
mod python;
mod sections;
mod signatures;

use crate::stages::target;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use surface::Api;

/// A committed file that follows from the sources.
struct File {
    path: String,
    text: String,
}

/// Writes every generated file, or says which of them differ.
pub fn run(root: &Path, check: bool) -> Result<(), String> {
    let api = Api::read(&surface::core_sources())?;
    build(root, &api)?;
    let header = header::text(&api, root)?;
    let mut files = vec![
        File {
            path: "crates/axlewright/src/catalogue/generated.rs".into(),
            text: rustfmt(&entries::source(&api)?)?,
        },
        File {
            path: "crates/axlewright/src/sheet/generated.rs".into(),
            text: rustfmt(&sections::source(&api))?,
        },
        File { path: "bindings/c/include/axlewright.h".into(), text: header.clone() },
    ];
    files.extend(python::files(&api)?);
    let mut differing = Vec::new();
    for file in &files {
        put(root, file, check, &mut differing)?;
    }
    let recorded = std::fs::read_to_string(root.join(signatures::PATH)).ok();
    let signatures = signatures::next(recorded.as_deref(), &header, env!("CARGO_PKG_VERSION"))?;
    files.push(File { path: signatures::PATH.into(), text: signatures });
    put(root, &files[files.len() - 1], check, &mut differing)?;
    refuse_strays(root, &files)?;
    if differing.is_empty() {
        println!(
            "{} generated files are in step: {} functions, {} models",
            files.len(),
            api.functions.len(),
            api.models.len()
        );
        return Ok(());
    }
    if check {
        Err(format!("out of step, run `cargo xtask generate`: {}", differing.join(", ")))
    } else {
        Ok(())
    }
}

/// The folder of what is built and not committed.
pub fn built(root: &Path) -> PathBuf {
    target(root).join("generated")
}

/// The catalogue as JSON, for the book, the tests and programs with forms.
pub fn catalogue(root: &Path) -> PathBuf {
    built(root).join("catalogue.json")
}

/// Writes what is built: the catalogue, and the list of functions for the C tests.
pub fn build(root: &Path, api: &Api) -> Result<(), String> {
    write(&catalogue(root), &catalogue::json(api))?;
    write(&built(root).join("functions.h"), &families::header(api, root)?)
}

fn write(path: &Path, text: &str) -> Result<(), String> {
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    std::fs::write(path, text).map_err(|error| format!("{}: {error}", path.display()))
}

fn put(root: &Path, file: &File, check: bool, differing: &mut Vec<String>) -> Result<(), String> {
    let path = root.join(&file.path);
    if std::fs::read_to_string(&path).is_ok_and(|now| now == file.text) {
        return Ok(());
    }
    differing.push(file.path.clone());
    if check {
        return Ok(());
    }
    println!("writes {}", file.path);
    write(&path, &file.text)
}

/// A generated file that no longer follows from anything is an error.
fn refuse_strays(root: &Path, files: &[File]) -> Result<(), String> {
    let listed = Command::new("git")
        .args(["ls-files", "--cached", "--others", "--exclude-standard"])
        .current_dir(root)
        .output()
        .map_err(|error| format!("git: {error}"))?;
    for path in String::from_utf8_lossy(&listed.stdout).lines() {
        let name = path.rsplit('/').next().unwrap_or_default();
        let is_there = root.join(path).exists() && path != crate::bench::RESULT;
        if is_there && name.starts_with("generated.") && !files.iter().any(|file| file.path == path) {
            return Err(format!("{path} follows from nothing any more: delete it"));
        }
    }
    Ok(())
}

fn rustfmt(source: &str) -> Result<String, String> {
    use std::io::Write;
    let mut child = Command::new("rustfmt")
        .args(["--edition", "2024", "--config", "max_width=110,use_small_heuristics=Max"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| format!("rustfmt: {error}"))?;
    let mut stdin = child.stdin.take().ok_or("rustfmt has no input")?;
    stdin.write_all(source.as_bytes()).map_err(|error| format!("rustfmt: {error}"))?;
    drop(stdin);
    let output = child.wait_with_output().map_err(|error| format!("rustfmt: {error}"))?;
    if !output.status.success() {
        let kept = std::env::temp_dir().join("axlewright-generated.rs");
        let _ = std::fs::write(&kept, source);
        return Err(format!("rustfmt refuses the generated source, kept in {}", kept.display()));
    }
    String::from_utf8(output.stdout).map_err(|error| error.to_string())
}
