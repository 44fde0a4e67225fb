//! Doc comments, by heading.

use crate::{Docs, Fallible};
use std::collections::BTreeMap;

/// Collapses white space, for a place with only one line.
pub fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

pub fn doc_text(attributes: &[syn::Attribute]) -> String {
    let mut text = String::new();
    for attribute in attributes.iter().filter(|attribute| attribute.path().is_ident("doc")) {
        if let syn::Meta::NameValue(syn::MetaNameValue { value: syn::Expr::Lit(literal), .. }) =
            &attribute.meta
            && let syn::Lit::Str(line) = &literal.lit
        {
            let line = line.value();
            text.push_str(line.strip_prefix(' ').unwrap_or(&line));
            text.push('\n');
        }
    }
    text
}

/// A line of a list of names with the long dash that every surface prints; a hyphen, a short dash or a colon may stand in the source.
fn dashed(line: &str) -> String {
    let is_name = |name: &&str| name.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '_');
    let named =
        line.strip_prefix("- `").and_then(|rest| rest.split_once('`')).filter(|(name, _)| is_name(name));
    let Some((name, rest)) = named else { return line.to_owned() };
    match [" - ", " – ", ": "].iter().find_map(|mark| rest.strip_prefix(mark)) {
        Some(meaning) => format!("- `{name}` — {meaning}"),
        None => line.to_owned(),
    }
}

/// Text by heading; the summary is under the empty one.
pub fn sections(text: &str) -> BTreeMap<String, String> {
    let mut sections = BTreeMap::new();
    let (mut heading, mut fenced) = (String::new(), false);
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            fenced = !fenced;
        }
        match line.strip_prefix("# ") {
            Some(next) if !fenced => heading = next.trim().to_owned(),
            _ => {
                let section: &mut String = sections.entry(heading.clone()).or_default();
                section.push_str(&if fenced { line.to_owned() } else { dashed(line) });
                section.push('\n');
            }
        }
    }
    sections.into_iter().map(|(heading, text): (String, String)| (heading, text.trim().to_owned())).collect()
}

const HEADINGS: &[&str] = &[
    "",
    "Formula",
    "Parameters",
    "Fields",
    "Returns",
    "Valid for",
    "Source",
    "Errors",
    "Example",
    "Caution",
    "Revision",
];

pub fn docs(text: &str, sections: &BTreeMap<String, String>) -> Fallible<Docs> {
    if let Some(unknown) = sections.keys().find(|heading| !HEADINGS.contains(&heading.as_str())) {
        let known: Vec<String> = HEADINGS.iter().skip(1).map(|heading| format!("`# {heading}`")).collect();
        return Err(format!("unknown heading `# {unknown}`; there are {}", known.join(", ")));
    }
    let get = |heading: &str| sections.get(heading).cloned().unwrap_or_default();
    let summary = text.lines().take_while(|line| !line.trim().is_empty()).collect::<Vec<_>>().join(" ");
    if summary.is_empty() || !summary.ends_with('.') {
        return Err("no summary that ends with a full stop".into());
    }
    let revision = match sections.get("Revision") {
        Some(number) => number.parse().map_err(|_| format!("revision {number:?} is not a number"))?,
        None => 1,
    };
    Ok(Docs {
        summary,
        formula: get("Formula"),
        returns: get("Returns"),
        valid_for: get("Valid for"),
        source: one_line(&get("Source")),
        caution: one_line(&get("Caution")),
        example: get("Example"),
        revision,
    })
}

/// Lines such as: - `name` — meaning. Indented lines below one continue its meaning.
pub fn bullets(text: &str) -> Vec<(String, String)> {
    let mut bullets: Vec<(String, String)> = Vec::new();
    let mut inside = false;
    for line in text.lines() {
        if let Some((name, meaning)) = line.strip_prefix("- `").and_then(|rest| rest.split_once("` — ")) {
            bullets.push((name.to_owned(), meaning.trim().to_owned()));
            inside = true;
        } else if inside && line.starts_with("  ") {
            if let Some((_, meaning)) = bullets.last_mut() {
                meaning.push_str(&format!(" {}", line.trim()));
            }
        } else {
            inside = false;
        }
    }
    bullets
}

/// Refusal of a name without its line in a list.
pub fn not_described(name: &str, heading: &str) -> String {
    format!("`{name}` is not described under `# {heading}`: write there the line \"- `{name}` — meaning\"")
}

/// The doc comment of a field as the meaning of a result: one line, its first letter small unless it begins a symbol, no full stop.
pub fn meaning(attributes: &[syn::Attribute]) -> String {
    let text = one_line(&doc_text(attributes));
    let text = text.strip_suffix('.').unwrap_or(&text);
    let mut letters = text.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if !second.is_uppercase() => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => text.to_owned(),
    }
}
