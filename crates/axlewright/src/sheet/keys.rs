//! Tables and lines of a sheet as a person looks for them: by a word of the trade.

use super::glossary::{self, Answers, TABLES, Term};
use super::shop::Shop;
use super::{findings, lines};
use crate::base::section::{Content, Line};
use crate::base::text::wrapped;
use crate::base::text::{System, shortened};

/// Most lines that are listed for one word.
const MOST_LINES: usize = 40;

/// The tables of a sheet, a line each; or the terms, lines and findings that a word of the trade finds, each line with its meaning, unit and
/// range. No line is wider than this many columns.
///
/// ```
/// use axlewright::base::text::System;
/// let told = axlewright::sheet::keys(Some("panhard rod"), System::Metric, 80);
/// assert!(told.contains("front.lateral_rod"));
/// assert!(axlewright::sheet::keys(Some("brakes"), System::Metric, 80).contains("not covered yet"));
/// ```
pub fn keys(word: Option<&str>, system: System, width: usize) -> String {
    match word.filter(|word| !word.trim().is_empty()) {
        None => tables(width),
        Some(word) => found(word.trim(), system, width),
    }
}

fn tables(width: usize) -> String {
    let mut out = String::from("Tables of a build sheet (front. stands for rear., too):\n");
    let wide = TABLES.iter().map(|table| glossary::at(table.path, Some("front")).len()).max().unwrap_or(0);
    for table in TABLES {
        let path = glossary::at(table.path, Some("front"));
        out.push_str(&wrapped(&format!("  {path:<wide$}  "), wide + 4, table.holds, width));
    }
    out.push_str(&wrapped(
        "",
        0,
        "Give a word for its lines: a table, a part or a measure, such as `axlewright keys shock`.",
        width,
    ));
    out
}

/// A line and its path at the front; the points of a linkage stand once for x, y and z.
struct Found {
    path: String,
    line: &'static Line,
    is_point: bool,
}

/// The lines that may be written, the front standing for both ends.
fn all() -> Vec<Found> {
    let mut all: Vec<Found> = Vec::new();
    for (_, path, line) in lines() {
        if path.starts_with("rear.") && line.path.starts_with("axle.") {
            continue;
        }
        let point =
            path.strip_suffix(".x").or_else(|| path.strip_suffix(".y")).or_else(|| path.strip_suffix(".z"));
        match point {
            None => all.push(Found { path, line, is_point: false }),
            Some(point) if all.iter().any(|found| found.path == point) => {}
            Some(point) => all.push(Found { path: point.to_owned(), line, is_point: true }),
        }
    }
    all
}

fn found(word: &str, system: System, width: usize) -> String {
    let terms = glossary::terms_about(word);
    let mut out = String::new();
    for term in &terms {
        out.push_str(&said(term, width));
    }
    let paths: Vec<String> = terms
        .iter()
        .flat_map(|term| match term.answers {
            Answers::Sheet(paths) => paths,
            _ => &[],
        })
        .map(|path| glossary::at(path, Some("front")))
        .collect();
    let inside = |path: &str, of: &str| {
        path.strip_prefix(of).is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
    };
    let plain = word.trim_start_matches("rear.").to_lowercase();
    let named = |path: &str, meaning: &str| {
        let spaced = plain.replace(['_', '-'], " ");
        let words: Vec<&str> = spaced.split_whitespace().collect();
        let text = format!("{} {}", path.replace(['_', '.'], " "), meaning).to_lowercase();
        !words.is_empty() && words.iter().all(|word| text.contains(*word))
    };
    let matches = |path: &str, meaning: &str| {
        inside(path, &plain)
            || inside(path, &format!("front.{plain}"))
            || if paths.is_empty() {
                terms.is_empty() && named(path, meaning)
            } else {
                paths.iter().any(|of| inside(path, of))
            }
    };
    let listed: Vec<Found> =
        all().into_iter().filter(|found| matches(&found.path, found.line.meaning)).collect();
    // Written lines come first; a computed one is worth a line if there is little else.
    let written = listed.iter().filter(|found| found.line.written);
    let computed = listed.iter().filter(|found| !found.line.written);
    let shown: Vec<&Found> = written.chain(computed).take(MOST_LINES).collect();
    let shop = Shop::of(system);
    for found in &shown {
        out.push_str(&described(found, &shop, width));
    }
    if listed.len() > shown.len() {
        out.push_str(&wrapped(
            "",
            0,
            &format!("{} more lines: use a narrower word", listed.len() - shown.len()),
            width,
        ));
    }
    for (_, path, finding) in findings() {
        let front = !path.starts_with("rear.");
        if front && matches(&path, finding.question) {
            out.push_str(&wrapped(&format!("finding {path}  "), 4, finding.question, width));
        }
    }
    if out.is_empty() {
        let known = glossary::terms().flat_map(|term| term.names.iter().copied());
        let near = crate::base::text::did_you_mean(&plain, known);
        let none =
            format!("nothing here is called `{}`{near}; `axlewright keys` lists the tables", shortened(word));
        out.push_str(&wrapped("", 0, &none, width));
    }
    out
}

fn said(term: &Term, width: usize) -> String {
    let (first, others) = term.names.split_first().unwrap_or((&"", &[]));
    let others = if others.is_empty() { String::new() } else { format!(" ({})", others.join(", ")) };
    let place = term.place(None);
    let text = match term.answers {
        Answers::NotCovered => format!("{first}{others}: {}", term.says),
        _ => format!("{first}{others}: {}; see {place}", term.says),
    };
    wrapped("", 2, &text, width)
}

fn described(found: &Found, shop: &Shop, width: usize) -> String {
    let line = found.line;
    let meaning = if found.is_point {
        line.meaning.rsplit_once(": ").map_or(line.meaning, |(point, _)| point)
    } else {
        line.meaning
    };
    let mut out = wrapped("", 4, &found.path, width);
    out.push_str(&wrapped("    ", 4, meaning, width));
    let written = match line.content {
        Content::Choice(words) => format!("one of: {}", words.join(", ")),
        Content::Marking(_) => "a marking, as text".to_owned(),
        Content::Quantity(kind) if found.is_point => {
            format!(
                "a table {{ x, y, z }} in {}: forward, left and up from one datum",
                shop.symbol(kind, Some(line))
            )
        }
        Content::Quantity(kind) => {
            format!("{}{}", shop.unit_words(kind, Some(line)), shop.range_words(line, kind))
        }
    };
    let written = if line.written { written } else { format!("computed: {written}") };
    out.push_str(&wrapped("    ", 4, &written, width));
    if !line.how.is_empty() {
        out.push_str(&wrapped("    how: ", 4, line.how, width));
    }
    out
}
