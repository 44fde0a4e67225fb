//! `cargo xtask generate`: whatever follows from the core's sources. With `--check` nothing is written and a difference fails.

mod c;
mod catalogue;
mod entries;
mod python;
mod rows;
mod schema;
mod sections;
mod signatures;

use crate::api::{Api, Content, Function, Model, Output, Shape};
use axlewright::units::Kind;
use std::path::Path;
use std::process::{Command, Stdio};

/// A file that follows from the sources.
struct File {
    path: String,
    text: String,
}

/// Writes every generated file, or says which of them differ.
pub fn run(root: &Path, check: bool) -> Result<(), String> {
    let api = Api::read(root)?;
    let mut files = vec![
        File { path: "bindings/c/src/generated.rs".into(), text: rustfmt(&c::source(&api)?)? },
        File { path: "bindings/c/tests/generated.h".into(), text: c::families(&api, root)? },
        File {
            path: "crates/axlewright/src/catalogue/generated.rs".into(),
            text: rustfmt(&entries::source(&api)?)?,
        },
        File {
            path: "crates/axlewright/src/sheet/generated.rs".into(),
            text: rustfmt(&sections::source(&api))?,
        },
        File { path: "docs/generated.json".into(), text: catalogue::json(&api)? },
        File { path: "docs/generated.schema.json".into(), text: schema::json()? },
        File { path: "tests/src/generated.rs".into(), text: rustfmt(&rows::source(&api)?)? },
    ];
    files.extend(python::files(&api)?);
    let mut differing = Vec::new();
    for file in &files {
        put(root, file, check, &mut differing)?;
    }
    // The header follows from the C entries, so these come first.
    let header = File { path: "bindings/c/include/axlewright.h".into(), text: c::header(root)? };
    put(root, &header, check, &mut differing)?;
    let recorded = std::fs::read_to_string(root.join(signatures::PATH)).ok();
    let signatures = signatures::next(recorded.as_deref(), &header.text, env!("CARGO_PKG_VERSION"))?;
    files.push(File { path: signatures::PATH.into(), text: signatures });
    put(root, &files[files.len() - 1], check, &mut differing)?;
    refuse_strays(root, &files)?;
    if differing.is_empty() {
        println!(
            "{} generated files are in step: {} functions, {} models",
            files.len() + 1,
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
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    std::fs::write(&path, &file.text).map_err(|error| format!("{}: {error}", path.display()))
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

/// The kind of this name; the sources were read with known kinds only.
fn kind(name: &str) -> Result<&'static Kind, String> {
    Kind::named(name).ok_or_else(|| format!("{name} is no quantity"))
}

/// SI symbol of a kind in brackets.
fn unit(name: &str) -> Result<String, String> {
    kind(name).map(|kind| if kind.si == "1" { "[-]".to_owned() } else { format!("[{}]", kind.si) })
}

/// What an output is, for people.
fn output_words(output: &Output) -> Result<String, String> {
    Ok(match &output.content {
        Content::Quantity(name) => format!("{} {}", kind(name)?.words, unit(name)?),
        Content::Choice(name) => name.to_lowercase(),
        Content::Text => "text".into(),
        Content::Whole => "whole number".into(),
        Content::Table => "table".into(),
    })
}

/// The docs of a function or method as plain lines: what both bindings show. `si` says whether plain numbers or quantities go in.
fn doc_lines(function: &Function, si: bool) -> Result<Vec<String>, String> {
    let line = |output: &Output| {
        let words = output_words(output)?;
        Ok(match &function.result_type {
            Some(_) => format!("    {} ({words}): {}", output.name, output.meaning),
            None => format!("    ({words}) {}", output.meaning),
        })
    };
    let returns = function.results.iter().map(line).collect::<Result<_, String>>()?;
    doc_lines_returning(function, si, returns)
}

/// The same with other words on what it returns.
fn doc_lines_returning(function: &Function, si: bool, returns: Vec<String>) -> Result<Vec<String>, String> {
    let docs = &function.docs;
    let mut lines = vec![docs.summary.clone()];
    if !docs.formula.is_empty() {
        lines.extend([String::new(), "Formula".into()]);
        lines.extend(docs.formula.lines().map(|line| format!("    {line}")));
    }
    if !function.parameters.is_empty() {
        lines.extend([String::new(), "Parameters".into()]);
        for parameter in &function.parameters {
            let what = kind(&parameter.kind)?;
            let unit = if si { unit(&parameter.kind)? } else { format!("({})", what.words) };
            let many = if parameter.list { ", several" } else { "" };
            lines.push(format!("    {} {unit}{many}: {}", parameter.name, parameter.meaning));
        }
    }
    lines.extend([String::new(), "Returns".into()]);
    lines.extend(returns);
    for (heading, text) in
        [("Valid for (SI)", &docs.valid_for), ("Source", &docs.source), ("Caution", &docs.caution)]
    {
        if !text.is_empty() {
            lines.extend([String::new(), heading.to_owned()]);
            lines.extend(
                text.lines().map(|line| if line.is_empty() { String::new() } else { format!("    {line}") }),
            );
        }
    }
    Ok(lines)
}

/// The docs of a model as plain lines.
fn model_lines(model: &Model) -> Result<Vec<String>, String> {
    let docs = &model.docs;
    let mut lines = vec![docs.summary.clone(), String::new(), "Formula".into()];
    lines.extend(docs.formula.lines().map(|line| format!("    {line}")));
    lines.extend([String::new(), "Fields".into()]);
    for field in &model.fields {
        let what = match &field.shape {
            Shape::Quantity(name) => kind(name)?.words.to_owned(),
            Shape::Choice(_) => "choice".into(),
            Shape::Text => "text".into(),
            Shape::List(_) => "list".into(),
            Shape::Fields(_) => "table".into(),
        };
        let optional = if field.optional { ", optional" } else { "" };
        lines.push(format!("    {} ({what}{optional}): {}", field.name, field.meaning));
    }
    for (heading, text) in
        [("Valid for", &docs.valid_for), ("Source", &docs.source), ("Caution", &docs.caution)]
    {
        if !text.is_empty() {
            lines.extend([String::new(), heading.to_owned()]);
            lines.extend(text.lines().map(|line| format!("    {line}")));
        }
    }
    Ok(lines)
}

/// Breaks lines at white space for comments and docstrings, and joins lines of one paragraph first. An indented line that is
/// broken goes on two spaces deeper.
fn flow(lines: &[String]) -> Vec<String> {
    const WIDTH: usize = 96;
    let indent_of = |line: &str| line.len() - line.trim_start().len();
    let mut joined: Vec<String> = Vec::new();
    for line in
        lines.iter().flat_map(|line| line.lines().map(str::to_owned).chain(line.is_empty().then(String::new)))
    {
        let goes_on = joined.last().is_some_and(|last| {
            let prose = |line: &str| {
                !line.trim().is_empty() && !line.trim_start().starts_with("- ") && line.starts_with("    ")
            };
            prose(last)
                && prose(&line)
                && indent_of(last) == indent_of(&line)
                && !last.trim_start().starts_with("- ")
                && !is_entry(&line)
        });
        match joined.last_mut() {
            Some(last) if goes_on => {
                last.push(' ');
                last.push_str(line.trim());
            }
            _ => joined.push(line),
        }
    }
    let mut out = Vec::new();
    for line in joined {
        let indent = &line[..indent_of(&line)];
        let mut current = String::new();
        for word in line.split_whitespace() {
            if !current.is_empty() && current.chars().count() + word.chars().count() + 1 > WIDTH {
                out.push(std::mem::take(&mut current));
            }
            if current.is_empty() {
                current.push_str(indent);
                if out.last().is_some_and(|_| !line.trim_start().starts_with(word)) && is_entry(&line) {
                    current.push_str("    ");
                }
            } else {
                current.push(' ');
            }
            current.push_str(word);
        }
        out.push(current);
    }
    out
}

/// A line that names an argument, a result or a field, such as `    load (force): ...`.
fn is_entry(line: &str) -> bool {
    let line = line.trim_start();
    let name = line.split([' ', '(']).next().unwrap_or_default();
    let identifier =
        !name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase() || c == '_' || c.is_ascii_digit());
    identifier && line[name.len()..].trim_start().starts_with(['(', '['])
}
