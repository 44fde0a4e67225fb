//! Findings as a table, in Markdown and with commas.

use super::{Page, Report};
use crate::Verdict;
use crate::base::text::printable;
use crate::sheet::{Answer, Assessment};

/// Columns of a table of findings.
pub const COLUMNS: [&str; 9] =
    ["finding", "verdict", "value", "limit", "margin", "at worst", "wanted", "missing", "note"];
/// Width at which nothing is broken into lines.
const WHOLE: usize = 1_000_000;

impl Assessment {
    /// The findings as rows of [`COLUMNS`], those of safety first; numbers as a person reads them.
    pub fn rows(&self, report: &Report) -> Vec<[String; 9]> {
        let shop = report.shop(self);
        let row = |answer: &Answer| {
            let answer = &self.to_what_is_told(answer);
            let line = self.value_line(answer).map(|(_, line)| line);
            let known = |si: f64, text: String| if si.is_nan() { String::new() } else { text };
            let say = |si: f64| shop.say(si, answer.kind, line);
            let part = |si: f64| known(si, shop.say(si, answer.margin_kind, line));
            let limit = match (answer.low.is_nan(), answer.high.is_nan()) {
                (false, false) => format!("{} to {}", say(answer.low), say(answer.high)),
                (false, true) => format!("at least {}", say(answer.low)),
                (true, false) => format!("at most {}", say(answer.high)),
                (true, true) => String::new(),
            };
            let applies = answer.verdict != Verdict::DoesNotApply;
            let missing = match answer.verdict {
                Verdict::NotKnown => match self.missing(answer).needs {
                    needs if needs.is_empty() => self.lacks(answer, &shop).concat(),
                    needs => needs.join(", "),
                },
                _ => String::new(),
            };
            let limit = if applies { limit } else { String::new() };
            let wanted = match answer.wanted {
                _ if !applies => String::new(),
                wanted if wanted.is_infinite() => "no margin is enough yet".to_owned(),
                wanted => part(wanted),
            };
            let doubted = answer.verdict == Verdict::Tight && !self.doubts(answer).is_empty();
            let note = if doubted { "rests on lines that contradict each other" } else { "" };
            [
                answer.path.to_owned(),
                answer.verdict.word().to_owned(),
                known(answer.value, say(answer.value)),
                limit,
                part(answer.margin),
                part(answer.worst),
                wanted,
                missing,
                note.to_owned(),
            ]
        };
        let (safety, others): (Vec<&Answer>, Vec<&Answer>) =
            self.answers().iter().partition(|answer| answer.is_safety());
        safety.into_iter().chain(others).map(row).collect()
    }

    /// The findings as a table in Markdown, those of safety first; numbers as a person reads them, no width.
    pub fn to_markdown(&self, report: &Report) -> String {
        let cell = |text: &str| printable(text).replace('|', "\\|");
        let mut out =
            format!("# {}\n\n{}\n\n{}\n", cell(self.sheet.name()), self.stamp(), self.summary(WHOLE));
        out.push_str(&format!("| {} |\n|{}\n", COLUMNS.join(" | "), "---|".repeat(COLUMNS.len())));
        for row in self.rows(report) {
            let cells: Vec<String> = row.iter().map(|text| cell(text)).collect();
            out.push_str(&format!("| {} |\n", cells.join(" | ")));
        }
        for (head, texts) in self.notes(report) {
            out.push_str(&format!("\n## {}\n\n", cell(&head)));
            texts.iter().for_each(|text| out.push_str(&format!("- {}\n", cell(text))));
        }
        out
    }

    /// Texts of a report beside the findings: each heading with its texts.
    fn notes(&self, report: &Report) -> Vec<(String, Vec<String>)> {
        let shop = report.shop(self);
        let page = Page { report: &Report { all: false, ..*report }, shop: &shop, width: WHOLE, path: 0 };
        let mut notes: Vec<(String, Vec<String>)> = Vec::new();
        for line in self.beside_findings(&page).lines().filter(|line| !line.is_empty()) {
            match (line.strip_prefix("  "), notes.last_mut()) {
                (Some(text), Some((_, texts))) => texts.push(text.to_owned()),
                _ => notes.push((line.to_owned(), vec![])),
            }
        }
        notes
    }

    /// The findings as a table with commas, those of safety first; numbers as a person reads them. What the report says beside them follows in rows without
    /// a verdict: the heading in the first cell, the text in the last one.
    pub fn to_csv(&self, report: &Report) -> String {
        let cell = |text: &str| {
            let text = printable(text);
            if text.contains([',', '"', '\n']) {
                format!("\"{}\"", text.replace('"', "\"\""))
            } else {
                text.into_owned()
            }
        };
        let line = |cells: Vec<String>| format!("{}\n", cells.join(","));
        let mut out = line(COLUMNS.iter().map(|text| cell(text)).collect());
        for row in self.rows(report) {
            out.push_str(&line(row.iter().map(|text| cell(text)).collect()));
        }
        // What is said beside the findings: a row a text, its heading in the place of the finding, no verdict.
        for (head, texts) in self.notes(report) {
            for text in texts {
                let mut cells = vec![cell(&head)];
                cells.extend((2..COLUMNS.len()).map(|_| String::new()));
                cells.push(cell(&text));
                out.push_str(&line(cells));
            }
        }
        out
    }
}
