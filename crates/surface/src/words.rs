//! Docs of functions and models as plain lines, for the Python module.

use crate::{Content, Function, Kind, Model, Output, Shape};

/// SI symbol of a kind in brackets.
pub fn unit(kind: &Kind) -> String {
    if kind.si == "1" { "[-]".to_owned() } else { format!("[{}]", kind.si) }
}

/// Words for an output.
pub fn output_words(output: &Output) -> String {
    match &output.content {
        Content::Quantity(kind) => format!("{} {}", kind.words, unit(kind)),
        Content::Choice(name) => name.to_lowercase(),
        Content::Text => "text".into(),
        Content::Whole => "whole number".into(),
        Content::Table => "table".into(),
    }
}

/// Docs of a function or method as plain lines. `si` chooses between plain numbers and quantities.
pub fn doc_lines(function: &Function, si: bool) -> Vec<String> {
    let line = |output: &Output| {
        let words = output_words(output);
        match &function.result_type {
            Some(_) => format!("    {} ({words}): {}", output.name, output.meaning),
            None => format!("    ({words}) {}", output.meaning),
        }
    };
    let docs = &function.docs;
    let mut lines = vec![docs.summary.clone()];
    if !docs.formula.is_empty() {
        lines.extend([String::new(), "Formula".into()]);
        lines.extend(docs.formula.lines().map(|line| format!("    {line}")));
    }
    if !function.parameters.is_empty() {
        lines.extend([String::new(), "Parameters".into()]);
        for parameter in &function.parameters {
            let unit = if si { unit(&parameter.kind) } else { format!("({})", parameter.kind.words) };
            let many = if parameter.list { ", several" } else { "" };
            lines.push(format!("    {} {unit}{many}: {}", parameter.name, parameter.meaning));
        }
    }
    lines.extend([String::new(), "Returns".into()]);
    lines.extend(function.results.iter().map(line));
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
    lines
}

/// The docs of a model as plain lines.
pub fn model_lines(model: &Model) -> Vec<String> {
    let docs = &model.docs;
    let mut lines = vec![docs.summary.clone(), String::new(), "Formula".into()];
    lines.extend(docs.formula.lines().map(|line| format!("    {line}")));
    lines.extend([String::new(), "Fields".into()]);
    for field in &model.fields {
        let what = match &field.shape {
            Shape::Quantity(kind) => kind.words.clone(),
            Shape::Choice(_) => "choice".into(),
            Shape::Text => "text".into(),
            Shape::List(_) => "list".into(),
            Shape::Fields(_) => "table".into(),
        };
        let optional = match (field.may_be_none, field.optional) {
            (true, _) => ", optional, or \"none\"",
            (false, true) => ", optional",
            (false, false) => "",
        };
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
    lines
}

/// Joins the lines of a paragraph, then breaks them at white space for comments and docstrings. A broken indented line
/// continues two spaces deeper.
pub fn flow(lines: &[String]) -> Vec<String> {
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

/// True for a line that names an argument, a result or a field, such as `    load (force): ...` or `    *result [N]: ...`.
fn is_entry(line: &str) -> bool {
    let line = line.trim_start().trim_start_matches('*');
    let name = line.split([' ', '(']).next().unwrap_or_default();
    let identifier =
        !name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase() || c == '_' || c.is_ascii_digit());
    identifier && line[name.len()..].trim_start().starts_with(['(', '['])
}
