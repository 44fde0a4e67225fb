//! The demo sheets with other lines, and what an assessment says of them.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict;
use axlewright::sheet::{Assessment, Sheet};

/// The text of a document of the demo.
pub fn text(name: &str) -> String {
    let path = format!("{}/../examples/sheets/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap()
}

/// A demo sheet.
pub fn read(name: &str) -> Sheet {
    Sheet::from_text(&text(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// A demo sheet with other lines; no text takes a line out.
pub fn demo(name: &str, lines: &[(&str, &str)]) -> Sheet {
    let mut sheet = read(name);
    for (path, text) in lines {
        if text.is_empty() { sheet.remove(path).unwrap() } else { sheet.set(path, text).unwrap() }
    }
    sheet
}

/// A sheet of these lines alone.
pub fn sheet(lines: &[(&str, &str)]) -> Sheet {
    let mut sheet = Sheet::new("");
    for (path, text) in lines {
        sheet.set(path, text).unwrap_or_else(|error| panic!("{path}: {error}"));
    }
    sheet
}

/// The assessment of a demo sheet with other lines.
pub fn assessed(name: &str, lines: &[(&str, &str)]) -> Assessment {
    demo(name, lines).assess()
}

/// A line's value; not a number where it is not known.
pub fn value(assessment: &Assessment, path: &str) -> f64 {
    assessment.value(path).unwrap().unwrap_or(f64::NAN)
}

/// The verdict of a finding.
pub fn verdict(assessment: &Assessment, path: &str) -> Verdict {
    assessment.answer(path).unwrap_or_else(|| panic!("no finding {path}")).verdict
}

/// The verdict of a finding, as its word.
pub fn verdict_word(assessment: &Assessment, path: &str) -> &'static str {
    verdict(assessment, path).word()
}

/// Missing inputs of a finding, in words.
pub fn lacks(assessment: &Assessment, path: &str) -> String {
    assessment.missing_text(assessment.answer(path).unwrap())
}
