//! Findings as a table, in Markdown and with commas.

use super::Report;
use crate::Verdict;
use crate::base::text::printable;
use crate::sheet::{Answer, Assessment};

/// Columns of a table of findings.
pub const COLUMNS: [&str; 8] =
    ["finding", "verdict", "value", "limit", "margin", "at worst", "wanted", "missing"];

impl Assessment {
    /// The findings as rows of [`COLUMNS`], those of safety first; numbers as a person reads them.
    pub fn rows(&self, report: &Report) -> Vec<[String; 8]> {
        let shop = report.shop(self);
        let row = |answer: &Answer| {
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
            [
                answer.path.to_owned(),
                answer.verdict.word().to_owned(),
                known(answer.value, say(answer.value)),
                limit,
                part(answer.margin),
                part(answer.worst),
                wanted,
                missing,
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
            format!("# {}\n\n{}\n\n{}\n", cell(self.sheet.name()), self.stamp(), self.summary(10_000));
        out.push_str(&format!("| {} |\n|{}\n", COLUMNS.join(" | "), "---|".repeat(COLUMNS.len())));
        for row in self.rows(report) {
            let cells: Vec<String> = row.iter().map(|text| cell(text)).collect();
            out.push_str(&format!("| {} |\n", cells.join(" | ")));
        }
        for (head, text) in
            [("", self.cautions(self.answers().iter().collect(), 10_000)), ("", self.contradicted())]
        {
            for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
                out.push_str(&format!("\n{head}{}\n", cell(line)));
            }
        }
        out
    }

    fn contradicted(&self) -> String {
        let system = self.sheet.system();
        self.contradictions().iter().map(|found| format!("CONTRADICTED: {}\n", found.text(system))).collect()
    }

    /// The findings as a table with commas, those of safety first; numbers as a person reads them.
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
        out
    }
}
