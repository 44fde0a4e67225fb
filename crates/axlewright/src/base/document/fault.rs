//! Faults of a document, each with its place, its key and its line.

use crate::Error;
use crate::base::text::shortened;
use core::fmt;

/// Most faults that are reported at once; the reader stops there.
pub const MOST_FAULTS: usize = 25;

/// One fault of a document.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Fault {
    /// Line, counted from 1; 0 if the document was not read from text.
    pub line: usize,
    /// Column in characters, counted from 1; 0 if the document was not read from text.
    pub column: usize,
    /// Path of the key; empty if the fault is one of the whole document.
    pub key: String,
    /// Message: the fault, the allowed values and the remedy.
    pub message: String,
    /// The line of the document, shortened, and below it a caret under the place; empty without text.
    pub excerpt: String,
    /// Refusal of the value itself, with its limits, if a model refused it.
    pub cause: Option<Box<Error>>,
}

impl Fault {
    /// A fault whose place is not known yet.
    pub fn new(key: impl ToString, message: impl ToString) -> Fault {
        Fault { key: key.to_string(), message: message.to_string(), ..Fault::default() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.line > 0 {
            write!(f, "line {}, column {}: ", self.line, self.column)?;
        }
        // The refusal of a value begins with its name.
        let named = self.message.strip_prefix(&self.key).is_some_and(|rest| rest.starts_with(" = "));
        if !self.key.is_empty() && !named {
            write!(f, "{}: ", shortened(&self.key))?;
        }
        f.write_str(&self.message)?;
        if self.excerpt.is_empty() { Ok(()) } else { write!(f, "\n{}", self.excerpt) }
    }
}

/// Faults of a document, in the order of their places; at least one.
#[derive(Debug, Clone, PartialEq)]
pub struct Faults {
    list: Vec<Fault>,
    /// True if the reader stopped before the end of the document.
    pub stopped: bool,
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Faults {
        Faults { list: vec![fault], stopped: false }
    }
}

impl core::ops::Deref for Faults {
    type Target = [Fault];
    fn deref(&self) -> &[Fault] {
        &self.list
    }
}

impl Faults {
    /// These faults without lines and columns, for a document that no person wrote.
    pub fn without_places(mut self) -> Faults {
        for fault in &mut self.list {
            (fault.line, fault.column) = (0, 0);
            fault.excerpt.clear();
        }
        self
    }

    /// These faults with this path before every key.
    fn within(mut self, path: &str) -> Faults {
        for fault in &mut self.list {
            fault.key = if fault.key.is_empty() { path.to_owned() } else { format!("{path}.{}", fault.key) };
        }
        self
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, fault) in self.list.iter().enumerate() {
            write!(f, "{}{fault}", if place > 0 { "\n" } else { "" })?;
        }
        if self.stopped {
            write!(f, "\nthe reader stopped after {MOST_FAULTS} faults: there may be more")?;
        }
        Ok(())
    }
}

impl Error {
    /// A document with one fault, whose place is not known yet.
    pub fn document(key: impl ToString, message: impl ToString) -> Error {
        Error::Document(Faults::from(Fault::new(key, message)))
    }

    /// This refusal inside a part of a document: `parts[0]`.
    pub fn within(self, path: &str) -> Error {
        match self {
            Error::Document(faults) => Error::Document(faults.within(path)),
            other => {
                let fault = Fault::new(path, other.to_string());
                Error::Document(Faults::from(Fault { cause: Some(Box::new(other)), ..fault }))
            }
        }
    }
}

/// Text of a document and the starts of its lines; empty if it was not read from text.
#[cfg(feature = "serde")]
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Source {
    text: String,
    starts: Vec<usize>,
}

#[cfg(feature = "serde")]
impl Source {
    pub fn new(text: &str) -> Source {
        let starts = core::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Source { text: text.to_owned(), starts }
    }

    /// The line of an offset, counted from 1; 0 without text.
    pub fn line(&self, at: usize) -> usize {
        self.starts.partition_point(|start| *start <= at)
    }

    /// The text of a line, counted from 1.
    fn line_text(&self, line: usize) -> &str {
        let Some(start) = line.checked_sub(1).and_then(|line| self.starts.get(line)) else { return "" };
        let end = self.starts.get(line).copied().unwrap_or(self.text.len());
        self.text.get(*start..end).unwrap_or("").trim_end_matches(['\n', '\r'])
    }

    /// Gives a fault its place.
    fn place(&self, fault: &mut Fault, at: usize) {
        fault.line = self.line(at);
        let Some(start) = fault.line.checked_sub(1).and_then(|line| self.starts.get(line)) else { return };
        let line = self.line_text(fault.line);
        let before = line.get(..at - start).unwrap_or(line).chars().count();
        fault.column = before + 1;
        fault.excerpt = excerpt(line, before);
    }
}

/// Part of a line around a character, with a caret below it.
#[cfg(feature = "serde")]
fn excerpt(line: &str, before: usize) -> String {
    const WIDE: usize = 72;
    const AHEAD: usize = 48;
    let first = before.saturating_sub(AHEAD);
    let printed = |c: char| if c == '\t' || c.is_control() { ' ' } else { c };
    let mut window: Vec<char> = line.chars().skip(first).take(WIDE).map(printed).collect();
    if first > 0
        && let Some(start) = window.first_mut()
    {
        *start = '…';
    }
    if line.chars().nth(first + WIDE).is_some()
        && let Some(end) = window.last_mut()
    {
        *end = '…';
    }
    let window: String = window.into_iter().collect();
    format!("    {}\n    {}^", window.trim_end(), " ".repeat(before - first))
}

/// Faults as they are found, each with its place.
#[cfg(feature = "serde")]
pub(crate) struct Collector<'a> {
    source: &'a Source,
    faults: Vec<(usize, Fault)>,
    /// Lines that are not TOML or JSON: every other fault may come from them.
    broken: Vec<usize>,
}

#[cfg(feature = "serde")]
impl<'a> Collector<'a> {
    /// A collector of the faults of this text, some of which are known.
    pub fn new(source: &'a Source, broken: Vec<(usize, Error)>) -> Collector<'a> {
        let mut collector = Collector { source, faults: vec![], broken: vec![] };
        for (at, error) in broken {
            collector.add(Some(at), error);
            collector.broken = collector.faults.iter().map(|(_, fault)| fault.line).collect();
        }
        collector
    }

    /// True if no more faults are reported.
    pub fn is_full(&self) -> bool {
        self.faults.len() >= MOST_FAULTS
    }

    pub fn is_empty(&self) -> bool {
        self.faults.is_empty()
    }

    /// True if the text itself has faults: a missing key may be in a part that could not be read.
    pub fn is_broken(&self) -> bool {
        !self.broken.is_empty()
    }

    /// True if nothing more can be said: the head of a table is broken, so its keys are in another table.
    pub fn is_lost(&self) -> bool {
        self.broken.iter().any(|line| self.source.line_text(*line).trim_start().starts_with('['))
    }

    /// Adds a refusal at an offset; without an offset it comes after all others.
    pub fn add(&mut self, at: Option<usize>, error: Error) {
        let faults = match error {
            Error::Document(faults) => faults.list,
            other => {
                let message = other.to_string();
                vec![Fault { message, cause: Some(Box::new(other)), ..Fault::default() }]
            }
        };
        for mut fault in faults {
            if let (0, Some(at)) = (fault.line, at) {
                self.source.place(&mut fault, at);
            }
            if !self.is_full() && !self.broken.contains(&fault.line) {
                self.faults.push((at.unwrap_or(usize::MAX), fault));
            }
        }
    }

    /// All faults, in the order of the document.
    pub fn finish(mut self) -> crate::Result<()> {
        let stopped = self.is_full();
        self.faults.sort_by_key(|(at, _)| *at);
        let list: Vec<Fault> = self.faults.into_iter().map(|(_, fault)| fault).collect();
        if list.is_empty() { Ok(()) } else { Err(Error::Document(Faults { list, stopped })) }
    }
}
