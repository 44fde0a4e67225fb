//! Limits in the docs, written from those in the code.

use crate::Fallible;
use crate::ranges::{constants, limits};
use syn::spanned::Spanned;
use syn::{Attribute, Block, ImplItem, Item};

/// A source with the limits of each `valid!` as a list under `# Valid for`. The prose below the list stays.
pub fn with_limits(source: &str) -> Fallible<String> {
    let file = syn::parse_file(source).map_err(|error| format!("{}: {error}", error.span().start().line))?;
    let known = constants(&file);
    let mut lines: Vec<String> = source.lines().map(str::to_owned).collect();
    // From the end, so that the places of the earlier lines stay.
    for (attributes, block) in functions(&file).into_iter().rev() {
        let enforced: Vec<String> =
            limits(block, &known)?.iter().map(|limit| format!("- `{}`", limit.text)).collect();
        if !enforced.is_empty() {
            write(&mut lines, attributes, &enforced);
        }
    }
    Ok(lines.join("\n") + "\n")
}

/// Functions and methods, in the order of the file.
fn functions(file: &syn::File) -> Vec<(&[Attribute], &Block)> {
    let mut found: Vec<(&[Attribute], &Block)> = Vec::new();
    for item in &file.items {
        match item {
            Item::Fn(item) => found.push((&item.attrs, &item.block)),
            Item::Impl(item) => found.extend(item.items.iter().filter_map(|item| match item {
                ImplItem::Fn(item) => Some((&item.attrs[..], &item.block)),
                _ => None,
            })),
            _ => {}
        }
    }
    found
}

/// Writes a list into the docs of one function: in place of the one that is there, or under a heading of its own before the source.
fn write(lines: &mut Vec<String>, attributes: &[Attribute], list: &[String]) {
    let comments = attributes.iter().filter(|attribute| attribute.path().is_ident("doc"));
    let places: Vec<usize> = comments.map(|comment| comment.span().start().line - 1).collect();
    let text = |lines: &[String], place: usize| {
        lines
            .get(place)
            .and_then(|line| line.trim_start().strip_prefix("///"))
            .map(|text| text.trim().to_owned())
    };
    let heading = |name: &str| places.iter().position(|place| text(lines, *place).as_deref() == Some(name));
    let comment = |line: &str, text: &str| {
        let indent = &line[..line.len() - line.trim_start().len()];
        format!("{indent}///{}{text}", if text.is_empty() { "" } else { " " })
    };
    if let Some(at) = heading("# Valid for") {
        let below = places.iter().skip(at + 1).map_while(|place| Some((*place, text(lines, *place)?)));
        let below: Vec<(usize, String)> = below.take_while(|(_, text)| !text.starts_with("# ")).collect();
        let is_limit = |text: &str| text.starts_with("- `") && text.ends_with('`');
        let stated: Vec<&(usize, String)> = below.iter().filter(|(_, text)| is_limit(text)).collect();
        if stated.iter().map(|(_, text)| text).eq(list) {
            return;
        }
        let mut new: Vec<String> = list.iter().map(|text| comment(&lines[places[at]], text)).collect();
        if stated.is_empty() && below.first().is_some_and(|(_, text)| !text.is_empty()) {
            new.push(comment(&lines[places[at]], ""));
        }
        for (place, _) in stated.iter().rev() {
            lines.remove(*place);
        }
        let after = places[at] + 1;
        lines.splice(after..after, new);
    } else if let Some(at) = heading("# Source") {
        let texts = ["# Valid for"].into_iter().chain(list.iter().map(String::as_str)).chain([""]);
        let new: Vec<String> = texts.map(|text| comment(&lines[places[at]], text)).collect();
        lines.splice(places[at]..places[at], new);
    }
}
