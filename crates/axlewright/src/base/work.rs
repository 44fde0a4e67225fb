//! The work behind an answer: a function as data, and its formula with the numbers put in.
#![expect(
    clippy::indexing_slicing,
    reason = "a block is never longer than its room, and a list of inputs is checked against the entry"
)]

use super::error::{Error, Result};
use super::text::{self, System};
use super::units::Kind;
use core::array::from_fn;

/// One function of the core: its description, and its call on plain numbers in coherent SI.
#[derive(Debug)]
pub struct Entry {
    /// `spring.wheel_rate`
    pub path: &'static str,
    /// Its result, in one sentence.
    pub summary: &'static str,
    /// The formula; symbols and equations between backticks.
    pub formula: &'static str,
    /// Limits in coherent SI, a line each, and other conditions.
    pub valid_for: &'static str,
    /// Source of the formula.
    pub source: &'static str,
    /// Caution for work that can hurt someone; empty without one.
    pub caution: &'static str,
    /// Revision, raised when a published coefficient changes.
    pub revision: u32,
    /// Its arguments, in order.
    pub inputs: &'static [Slot],
    /// Its results, in order.
    pub outputs: &'static [Slot],
    /// One call. Outputs stay untouched if it is refused.
    pub call: fn(&[f64], &mut [f64]) -> Result<()>,
    /// Many rows at once; a refused row is NaN and reported.
    pub batch: Batch,
}

/// Inputs, outputs, and the receiver of refused rows.
pub type Batch = fn(&[&[f64]], &mut [&mut [f64]], &mut dyn FnMut(usize, Error)) -> Result<()>;

/// One argument or result.
#[derive(Debug)]
pub struct Slot {
    /// `spring_rate`
    pub name: &'static str,
    /// Symbol in the formula; empty for a result without one.
    pub symbol: &'static str,
    /// The kind of quantity.
    pub kind: &'static Kind,
    /// Meaning.
    pub meaning: &'static str,
    /// Range of an argument.
    pub range: Span,
}

/// Range of an argument, in coherent SI; every argument lies within 1e30 besides.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Span {
    /// Lower bound.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub lower: Option<f64>,
    /// True if the lower bound itself is refused.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "std::ops::Not::not"))]
    pub lower_open: bool,
    /// Upper bound.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub upper: Option<f64>,
    /// True if the upper bound itself is refused.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "std::ops::Not::not"))]
    pub upper_open: bool,
    /// Arguments that it must exceed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "<[_]>::is_empty"))]
    pub exceeds: &'static [&'static str],
    /// True for a count.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "std::ops::Not::not"))]
    pub whole: bool,
}

impl Span {
    /// The range of anything without bounds of its own.
    pub const ANY: Span =
        Span { lower: None, lower_open: false, upper: None, upper_open: false, exceeds: &[], whole: false };
}

/// A call with its answer and all the steps to it.
#[derive(Debug, Clone)]
pub struct Work {
    entry: &'static Entry,
    inputs: Vec<f64>,
    written: Vec<Option<String>>,
    results: Vec<f64>,
}

impl Entry {
    /// Calls the function and keeps the work.
    pub fn work(&'static self, inputs: &[f64]) -> Result<Work> {
        let mut results = vec![0.0; self.outputs.len()];
        (self.call)(inputs, &mut results)?;
        Ok(Work { entry: self, inputs: inputs.to_vec(), written: vec![None; inputs.len()], results })
    }

    /// The formula with texts in place of its arguments' symbols, in brackets; nothing if a symbol is not in it.
    pub fn put_in(&self, texts: &[String]) -> Option<String> {
        let mut found = vec![false; self.inputs.len()];
        let mut out = String::with_capacity(2 * self.formula.len());
        for (place, part) in self.formula.split('`').enumerate() {
            if place % 2 == 0 {
                out.push_str(part);
                continue;
            }
            let mut left = part;
            let mut before = ' ';
            while let Some(next) = left.chars().next() {
                match self.symbol_at(before, left).and_then(|i| Some((i, texts.get(i)?))) {
                    Some((i, text)) => {
                        let symbol = self.inputs[i].symbol;
                        left = left.strip_prefix(symbol).unwrap_or(left);
                        let bracketed = before == '(' && left.starts_with(')');
                        out.push_str(&if bracketed { text.clone() } else { format!("({text})") });
                        found[i] = true;
                        before = symbol.chars().next_back().unwrap_or(next);
                    }
                    None => {
                        out.push(next);
                        left = left.strip_prefix(next).unwrap_or("");
                        before = next;
                    }
                }
            }
        }
        found.iter().all(|found| *found).then_some(out)
    }

    /// The argument whose whole symbol stands at the start of the text.
    fn symbol_at(&self, before: char, text: &str) -> Option<usize> {
        let is_part = |c: char| c.is_alphanumeric() || c == '_';
        let stands = |slot: &Slot| {
            let after = text.strip_prefix(slot.symbol);
            !slot.symbol.is_empty() && after.is_some_and(|after| !after.starts_with(is_part))
        };
        if is_part(before) { None } else { self.inputs.iter().position(stands) }
    }
}

impl Work {
    /// The function.
    pub fn entry(&self) -> &'static Entry {
        self.entry
    }
    /// The arguments in coherent SI, in order.
    pub fn inputs(&self) -> &[f64] {
        &self.inputs
    }
    /// The results in coherent SI, in order.
    pub fn results(&self) -> &[f64] {
        &self.results
    }

    /// This work with the arguments as somebody wrote them, `225 lbf/in`; the texts are shown, never read.
    pub fn as_written(mut self, texts: impl IntoIterator<Item = Option<String>>) -> Work {
        for (written, text) in self.written.iter_mut().zip(texts) {
            *written = text;
        }
        self
    }

    /// The formula with the numbers in place of the symbols. They are in coherent SI, in which every formula holds as it
    /// is written, its constants included.
    pub fn with_numbers(&self) -> Option<String> {
        let numbers: Vec<String> = self
            .entry
            .inputs
            .iter()
            .zip(&self.inputs)
            .map(|(slot, si)| text::print_si(*si, slot.kind))
            .collect();
        self.entry.put_in(&numbers)
    }

    /// The work as plain text, in the units of a shop and in coherent SI.
    pub fn text(&self, system: System) -> String {
        let entry = self.entry;
        let line = |slot: &Slot, si: f64, written: Option<&String>| {
            let symbol = if slot.symbol.is_empty() { String::new() } else { format!("{} = ", slot.symbol) };
            let (shop, coherent) = (text::print(si, slot.kind, system), text::print_si(si, slot.kind));
            let written = written.filter(|text| **text != shop);
            let mut also: Vec<String> = written.map(|text| format!("written {text}")).into_iter().collect();
            if coherent != shop {
                also.push(coherent);
            }
            let also = if also.is_empty() { String::new() } else { format!(" ({})", also.join("; ")) };
            format!("{symbol}{} = {shop}{also}", slot.name)
        };
        let inputs = entry.inputs.iter().zip(&self.inputs).zip(&self.written);
        let inputs: Vec<String> = inputs.map(|((slot, si), text)| line(slot, *si, text.as_ref())).collect();
        let results = entry.outputs.iter().zip(&self.results);
        let results: Vec<String> = results.map(|(slot, si)| line(slot, *si, None)).collect();
        let sections = [
            ("Formula", entry.formula.replace('`', "")),
            ("Arguments", inputs.join("\n")),
            ("With the numbers, in SI", self.with_numbers().unwrap_or_default()),
            ("Result", results.join("\n")),
            ("Valid for (SI)", entry.valid_for.replace('`', "")),
            ("Source", entry.source.to_owned()),
            ("Caution", entry.caution.to_owned()),
        ];
        let mut out = format!("{}\n{}\n", entry.path, entry.summary);
        for (heading, text) in sections.iter().filter(|(_, text)| !text.is_empty()) {
            out.push_str(&format!("\n{heading}\n"));
            for line in text.lines() {
                let indent = if line.is_empty() { "" } else { "    " };
                out.push_str(&format!("{indent}{line}\n"));
            }
        }
        out.push_str(&format!("\naxlewright {}, revision {} of this function\n", VERSION, entry.revision));
        out
    }

    /// The work as JSON text: shown values are in the units of a shop, `si` in coherent SI.
    #[cfg(feature = "serde")]
    pub fn to_json(&self, system: System) -> Result<String> {
        #[derive(serde::Serialize)]
        struct Line<'a> {
            symbol: &'a str,
            name: &'a str,
            kind: &'a str,
            meaning: &'a str,
            si: f64,
            unit: &'a str,
            shown: String,
            #[serde(skip_serializing_if = "Option::is_none")]
            written: Option<&'a str>,
        }
        #[derive(serde::Serialize)]
        struct Page<'a> {
            library: &'a str,
            version: &'a str,
            function: &'a str,
            revision: u32,
            summary: &'a str,
            formula: &'a str,
            inputs: Vec<Line<'a>>,
            #[serde(skip_serializing_if = "Option::is_none")]
            with_numbers: Option<String>,
            results: Vec<Line<'a>>,
            valid_for: &'a str,
            source: &'a str,
            caution: &'a str,
        }
        fn line<'a>(slot: &'a Slot, si: f64, written: Option<&'a str>, system: System) -> Line<'a> {
            let shown = text::print(si, slot.kind, system);
            let (symbol, name, kind, meaning) = (slot.symbol, slot.name, slot.kind.name, slot.meaning);
            Line { symbol, name, kind, meaning, si, unit: slot.kind.si, shown, written }
        }
        let entry = self.entry;
        let inputs = entry.inputs.iter().zip(&self.inputs).zip(&self.written);
        let results = entry.outputs.iter().zip(&self.results);
        let page = Page {
            library: "axlewright",
            version: VERSION,
            function: entry.path,
            revision: entry.revision,
            summary: entry.summary,
            formula: entry.formula,
            inputs: inputs.map(|((slot, si), text)| line(slot, *si, text.as_deref(), system)).collect(),
            with_numbers: self.with_numbers(),
            results: results.map(|(slot, si)| line(slot, *si, None, system)).collect(),
            valid_for: entry.valid_for,
            source: entry.source,
            caution: entry.caution,
        };
        serde_json::to_string_pretty(&page).map_err(|error| crate::cannot!("no JSON of this work: {error}"))
    }
}

/// Version of this library, with which every work is stamped.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// Error for a list of another length.
fn count<T>(argument: &'static str, length: usize) -> impl FnOnce(T) -> Error {
    move |_| Error::Length {
        argument,
        length,
        wanted: "one is wanted for each argument or result of the function",
    }
}

/// One call of a function on plain numbers, as in [`Entry::call`].
#[inline(always)]
pub(crate) fn one_row<const I: usize, const O: usize>(
    inputs: &[f64],
    outputs: &mut [f64],
    function: impl Fn([f64; I]) -> Result<[f64; O]>,
) -> Result<()> {
    let x: &[f64; I] = inputs.try_into().map_err(count("inputs", inputs.len()))?;
    let length = outputs.len();
    let y: &mut [f64; O] = outputs.try_into().map_err(count("outputs", length))?;
    *y = function(*x)?;
    Ok(())
}

/// Rows in one block, few enough to stay in the nearest cache.
const BLOCK: usize = 128;

/// The results, or NaN for each, and whether the row was refused. A branch for errors without owned memory keeps the loop free of drops.
#[inline(always)]
fn numbers<const O: usize>(answer: Result<[f64; O]>) -> ([f64; O], bool) {
    match answer {
        Ok(results) => (results, false),
        Err(Error::OutOfRange { .. } | Error::Contradiction { .. } | Error::Length { .. }) => {
            ([f64::NAN; O], true)
        }
        Err(owning) => {
            drop(owning);
            ([f64::NAN; O], true)
        }
    }
}

/// Many calls of a function on plain numbers, as in [`Entry::batch`]. Each input has as many values as the outputs, or
/// one for all rows. A refused row is NaN in every output, and `refused` gets its index and reason, in order. Lengths that do
/// not fit are refused before anything is written.
#[inline(always)]
pub(crate) fn rows<const I: usize, const O: usize>(
    inputs: &[&[f64]],
    outputs: &mut [&mut [f64]],
    refused: &mut dyn FnMut(usize, Error),
    function: impl Fn([f64; I]) -> Result<[f64; O]>,
) -> Result<()> {
    let inputs: &[&[f64]; I] = inputs.try_into().map_err(count("inputs", inputs.len()))?;
    let length = outputs.len();
    let outputs: &mut [&mut [f64]; O] = outputs.try_into().map_err(count("outputs", length))?;
    let length = outputs.first().map_or(0, |output| output.len());
    if let Some(other) = outputs.iter().find(|output| output.len() != length) {
        let wanted = "every output has the same length";
        return Err(Error::Length { argument: "outputs", length: other.len(), wanted });
    }
    if let Some(other) = inputs.iter().find(|input| input.len() != length && input.len() != 1) {
        let wanted = "an input has as many values as the outputs have, or one for all rows";
        return Err(Error::Length { argument: "inputs", length: other.len(), wanted });
    }
    let mut x = [[0.0; BLOCK]; I];
    let mut y = [[0.0; BLOCK]; O];
    for (values, input) in x.iter_mut().zip(inputs) {
        if let [constant] = input {
            values.fill(*constant);
        }
    }
    for start in (0..length).step_by(BLOCK) {
        let here = start..length.min(start + BLOCK);
        for (values, input) in x.iter_mut().zip(inputs) {
            if input.len() > 1 {
                values[..here.len()].copy_from_slice(&input[here.clone()]);
            }
        }
        let count = here.len().min(BLOCK);
        let at = |j: usize| from_fn(|i| x[i][j]);
        let mut bad = 0; // counted: whether there was any does not vectorise
        for j in 0..count {
            let (results, refused) = numbers(function(at(j)));
            bad += u64::from(refused);
            for (values, result) in y.iter_mut().zip(results) {
                values[j] = result;
            }
        }
        for (output, values) in outputs.iter_mut().zip(&y) {
            output[here.clone()].copy_from_slice(&values[..here.len()]);
        }
        if bad > 0 {
            for (j, row) in here.enumerate() {
                if let Err(error) = function(at(j)) {
                    refused(row, error);
                }
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Quantity, Ratio};

    const fn slot(name: &'static str, symbol: &'static str) -> Slot {
        Slot { name, symbol, kind: Length::KIND, meaning: "", range: Span::ANY }
    }

    /// Refuses negative values.
    fn root([x, y]: [f64; 2]) -> Result<[f64; 1]> {
        let sum = x + y;
        if sum >= 0.0 { Ok([sum.sqrt()]) } else { Err(crate::cannot!("{sum}")) }
    }

    static ENTRY: Entry = Entry {
        path: "test.root",
        summary: "Root.",
        formula: "`r = sqrt(x) + x_2 dx/dz` with `x` of `f(x_2)`",
        valid_for: "",
        source: "made up",
        caution: "",
        revision: 1,
        inputs: &[slot("x", "x"), slot("other", "dx/dz")],
        outputs: &[Slot { name: "root", symbol: "r", kind: Ratio::KIND, meaning: "", range: Span::ANY }],
        call: |x, y| one_row(x, y, root),
        batch: |x, y, refused| rows(x, y, refused, root),
    };

    #[test]
    fn whole_symbols_are_replaced_and_brackets_stand_once() {
        let texts = ["2 m".to_owned(), "3 m".to_owned()];
        assert_eq!(ENTRY.put_in(&texts).unwrap(), "r = sqrt(2 m) + x_2 (3 m) with (2 m) of f(x_2)");
    }

    #[test]
    fn a_symbol_that_is_missing_leaves_the_numbers_out() {
        let entry = Entry { formula: "`r = x` of dx/dz", ..Entry { ..ENTRY } };
        assert_eq!(entry.put_in(&["2 m".to_owned(), "3 m".to_owned()]), None);
    }

    #[test]
    fn a_work_tells_what_was_put_in_and_what_came_out() {
        let work = ENTRY.work(&[9.0, 16.0]).unwrap().as_written([None, Some("16 m".to_owned())]);
        let text = work.text(System::Metric);
        for part in
            ["x = x = 9000 mm (9 m)", "other = 16000 mm (written 16 m; 16 m)", "r = root = 5\n", "made up"]
        {
            assert!(text.contains(part), "{part} is not in\n{text}");
        }
        assert!(!text.contains("Caution") && text.contains(VERSION));
    }

    #[test]
    fn rows_meet_single_calls_across_blocks() {
        let n = 3 * BLOCK + 7;
        let column: Vec<f64> = (0..n).map(|i| i as f64 - 5.0).collect();
        for constant in [0.0, 2.5] {
            let mut found = vec![0.0; n];
            let mut refused = Vec::new();
            (ENTRY.batch)(&[&column, &[constant]], &mut [&mut found], &mut |i, _| refused.push(i)).unwrap();
            for i in 0..n {
                let mut one = [7.0];
                let answer = (ENTRY.call)(&[column[i], constant], &mut one);
                assert_eq!(answer.is_err(), refused.contains(&i), "{i}");
                assert!(if answer.is_ok() { one[0] == found[i] } else { found[i].is_nan() && one[0] == 7.0 });
            }
            assert!(!refused.is_empty() && refused.is_sorted());
        }
    }

    #[test]
    fn lengths_that_do_not_fit_are_refused_and_nothing_is_written() {
        let mut out = [7.0; 3];
        let nobody = &mut |_, _| ();
        assert!((ENTRY.batch)(&[&[1.0, 2.0], &[1.0]], &mut [&mut out], nobody).is_err());
        assert!((ENTRY.batch)(&[&[1.0; 3]], &mut [&mut out], nobody).is_err());
        assert!((ENTRY.batch)(&[&[1.0; 3], &[1.0]], &mut [], nobody).is_err());
        assert!((ENTRY.call)(&[1.0], &mut out[..1]).is_err());
        assert!((ENTRY.call)(&[1.0, 2.0], &mut out).is_err());
        assert_eq!(out, [7.0; 3]);
    }
}
