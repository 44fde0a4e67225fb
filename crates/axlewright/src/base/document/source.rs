//! Faults of a document while it is read: their places in the text.

use crate::Error;
use crate::base::error::{Fault, Faults, MOST_FAULTS};
use crate::base::text::is_hidden;

/// Text of a document and the starts of its lines; empty if it was not read from text.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Source {
    text: String,
    starts: Vec<usize>,
}

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
fn excerpt(line: &str, before: usize) -> String {
    const WIDE: usize = 72;
    const AHEAD: usize = 48;
    let first = before.saturating_sub(AHEAD);
    let printed = |c: char| if is_hidden(c) { ' ' } else { c };
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
pub(crate) struct Collector<'a> {
    source: &'a Source,
    faults: Vec<(usize, Fault)>,
    /// Lines that are not TOML or JSON: every other fault may come from them.
    broken: Vec<usize>,
}

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
