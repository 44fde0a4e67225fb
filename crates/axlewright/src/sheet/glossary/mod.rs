//! Trade words and the names of this library: the table, line, finding or function that answers a word of the trade, or that nothing does yet.

mod not_covered;
mod tables;
mod terms;

use not_covered::NOT_COVERED;
pub use tables::{TABLES, TableOf};
use terms::TERMS;

/// A thing of the trade under every name that it has there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    /// Its names, the usual one first, in lower case and singular.
    pub names: &'static [&'static str],
    /// Place of its answer.
    pub answers: Answers,
    /// Meaning of it in one sentence, or the reason why nothing answers it.
    pub says: &'static str,
}

/// Place where a thing of the trade is answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answers {
    /// Tables, lines and findings of the build sheet; `axle.` stands for `front.` and `rear.`.
    Sheet(&'static [&'static str]),
    /// Functions or models beside the sheet: `tyre.wheel_backspacing`.
    Beside(&'static [&'static str]),
    /// Nothing in this version.
    NotCovered,
}

/// A word as the glossary compares it: lower case, words apart by one space.
fn plain(word: &str) -> String {
    let apart = |c: char| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { ' ' };
    let word: String = word.chars().filter(|c| *c != '\'').map(apart).collect();
    word.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A word without the ending of its plural.
fn singular(word: &str) -> &str {
    match word.strip_suffix("es") {
        Some(stem)
            if stem.ends_with("sh")
                || stem.ends_with("ch")
                || stem.ends_with('x')
                || stem.ends_with("ss") =>
        {
            stem
        }
        _ if word.ends_with("ss") => word,
        _ => word.strip_suffix('s').unwrap_or(word),
    }
}

/// Every thing of the trade that this library knows by name: system by system, then what no system covers yet.
pub fn terms() -> impl Iterator<Item = &'static Term> {
    TERMS.iter().chain(NOT_COVERED)
}

/// The terms of exactly this name, whatever its case, its hyphens and its plural.
///
/// ```
/// use axlewright::sheet::{Answers, terms_named};
/// let rod: Vec<_> = terms_named("track bar").collect();
/// assert!(matches!(rod[0].answers, Answers::Sheet(paths) if paths == ["axle.lateral_rod"]));
/// assert!(terms_named("Brakes").any(|term| term.answers == Answers::NotCovered));
/// ```
pub fn terms_named(word: &str) -> impl Iterator<Item = &'static Term> {
    let plain = plain(word);
    let joined = plain.replace(' ', "");
    terms().filter(move |term| {
        term.names.iter().any(|name| {
            *name == plain
                || *name == singular(&plain)
                || name.replace([' ', '-'], "") == singular(&joined)
                || self::plain(name) == plain
        })
    })
}

/// The terms that a word may mean: those of this name, otherwise those with it in a name.
pub fn terms_about(word: &str) -> Vec<&'static Term> {
    let exact: Vec<&Term> = terms_named(word).collect();
    let plain = plain(word);
    if !exact.is_empty() || plain.is_empty() {
        return exact;
    }
    let whole = |name: &&'static str| {
        let (name, wanted) = (name.replace('-', " "), singular(&plain));
        name.split(' ').any(|part| part == wanted || part == plain)
            || (wanted.contains(' ') && name.contains(wanted))
    };
    terms().filter(|term| term.names.iter().any(whole)).collect()
}

/// The path of an axle's thing at both ends, or at the one that is given: `axle.lateral_rod` is `front.lateral_rod`.
pub(super) fn at(path: &str, end: Option<&str>) -> String {
    match (path.strip_prefix("axle"), end) {
        (Some(rest), Some(end)) => format!("{end}{rest}"),
        (Some(rest), None) => format!("front{rest}` or `rear{rest}"),
        (None, _) => path.to_owned(),
    }
}

impl Term {
    /// Place of its answer, in words: `lateral rod: [rear.lateral_rod]`.
    pub fn place(&self, end: Option<&str>) -> String {
        match self.answers {
            Answers::Sheet(paths) => {
                paths.iter().map(|path| format!("`{}`", at(path, end))).collect::<Vec<_>>().join(", ")
            }
            Answers::Beside(paths) => {
                format!(
                    "function {}",
                    paths.iter().map(|path| format!("`{path}`")).collect::<Vec<_>>().join(", ")
                )
            }
            Answers::NotCovered => "not covered yet".to_owned(),
        }
    }
}

/// Message for a key that the sheet does not have, if the trade has that word.
pub(super) fn for_key(folder: &str, key: &str) -> Option<String> {
    let term = terms_named(key).next()?;
    let end = folder.split('.').next().filter(|first| ["front", "rear"].contains(first));
    let what = if folder.is_empty() { "table" } else { "key" };
    let tables: Vec<String> = tables::top().map(|table| format!("`{table}`")).collect();
    let listed = if folder.is_empty() { format!("; tables: {}", tables.join(", ")) } else { String::new() };
    Some(match term.answers {
        Answers::NotCovered => format!("this version has no {what} `{key}`: {}{listed}", term.says),
        Answers::Sheet(_) | Answers::Beside(_) => {
            format!("there is no {what} `{key}` here: see {} ({}){listed}", term.place(end), term.says)
        }
    })
}

fn sorted(terms: &'static [Term]) -> Vec<&'static Term> {
    let mut terms: Vec<&Term> = terms.iter().collect();
    terms.sort_by_key(|term| term.names.first());
    terms
}

/// The page of the book: trade words and the names of this library side by side.
pub fn glossary() -> String {
    let mut page = String::from(
        "# Glossary\n\nTrade words, and where this library answers them. `front.` in a path also stands for `rear.`. A message on an unknown key of a \
         sheet uses this list, and so does `axlewright keys WORD`.\n\n| word of the trade | here | meaning |\n|---|---|---|\n",
    );
    for term in sorted(TERMS) {
        page.push_str(&format!(
            "| {} | {} | {} |\n",
            term.names.join(", "),
            term.place(Some("front")),
            term.says
        ));
    }
    page.push_str("\n## Not covered yet\n\n| word of the trade | what is missing |\n|---|---|\n");
    for term in sorted(NOT_COVERED) {
        page.push_str(&format!("| {} | {} |\n", term.names.join(", "), term.says));
    }
    page
}
