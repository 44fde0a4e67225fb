//! One finding in full: question, numbers, tolerance, what is missing, and its work.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::{Page, Report, verdict_word};
use crate::base::text::{did_you_mean, shortened, wrapped};
use crate::sheet::graph::{Graph, Slot};
use crate::sheet::{Answer, Assessment};
use crate::{Error, Result, Verdict};

impl Assessment {
    /// The findings of this path, or whose path begins or ends with it: each with its question, numbers, tolerance, work, and what is missing.
    pub fn report_on(&self, name: &str, report: &Report) -> Result<String> {
        let begins = |path: &str| {
            path.strip_prefix(name)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with('.') || !name.contains('.'))
        };
        let exact: Vec<&Answer> = self.answers().iter().filter(|answer| answer.path == name).collect();
        let found: Vec<&Answer> = match exact.is_empty() {
            false => exact,
            true => self
                .answers()
                .iter()
                .filter(|answer| {
                    begins(answer.path)
                        || answer.path.starts_with(name)
                        || answer.path.ends_with(&format!(".{name}"))
                })
                .collect(),
        };
        if found.is_empty() || name.is_empty() {
            let known = self.answers().iter().map(|answer| answer.path);
            let near = did_you_mean(name, known);
            return Err(Error::document(
                shortened(name),
                format!(
                    "there is no finding of this name{near}{} `axlewright keys` finds one by a word of the trade",
                    if near.is_empty() { "." } else { "" }
                ),
            ));
        }
        let shop = report.shop(self);
        let width = report.width.max(20);
        let page = Page { report, shop: &shop, width, path: 0 };
        let mut out = String::new();
        for answer in &found {
            out.push_str(&self.detail(answer, &page));
            out.push('\n');
        }
        out.push_str(self.cautions(found, width).trim_start_matches('\n'));
        Ok(format!("{}\n", out.trim_end()))
    }

    fn detail(&self, answer: &Answer, page: &Page<'_>) -> String {
        let width = page.width;
        let answer = &self.to_what_is_told(answer);
        let word = verdict_word(answer.verdict, page.report.colour);
        let mut out = wrapped("", 2, &format!("{}: {word}", answer.path), width);
        let mut put = |head: &str, text: &str| out.push_str(&wrapped(&format!("  {head}"), 4, text, width));
        put("", answer.question);
        let line = self.value_line(answer).map(|(_, line)| line);
        let say = |si: f64| page.shop.say(si, answer.kind, line);
        let part = |si: f64| page.shop.say(si, answer.margin_kind, line);
        if !answer.value.is_nan() {
            let meaning = line.map_or("", |line| line.meaning);
            put("value: ", &format!("{} ({meaning})", say(answer.value)));
        }
        match (answer.low.is_nan(), answer.high.is_nan()) {
            (false, false) => put("limit: ", &format!("{} to {}", say(answer.low), say(answer.high))),
            (false, true) => put("limit: ", &format!("at least {}", say(answer.low))),
            (true, false) => put("limit: ", &format!("at most {}", say(answer.high))),
            (true, true) => {}
        }
        if !answer.margin.is_nan() {
            put("margin: ", &format!("{} ({})", part(answer.margin), answer.form));
            if answer.uncertainty > 0.0 {
                let worst = if answer.worst.is_nan() { "not known".to_owned() } else { part(answer.worst) };
                put(
                    "tolerance: ",
                    &format!(
                        "± {} (1 standard uncertainty); at worst {worst}, where the verdict stands",
                        part(answer.uncertainty)
                    ),
                );
            }
        }
        if answer.wanted.is_infinite() {
            put("wanted: ", &format!("no margin is enough yet: {}", self.to_write(answer).join("; ")));
        } else if !answer.wanted.is_nan() {
            put("wanted: ", &part(answer.wanted));
        }
        // Both sides are said if they differ.
        let graph = Graph::get();
        for slot in self.reached(answer) {
            let info = graph.info(slot);
            let twin =
                info.path.contains("right_").then(|| graph.slot(&info.path.replace("right_", ""))).flatten();
            let at = |slot: Slot| self.values[usize::from(slot)];
            if let Some(left) =
                twin.filter(|left| at(*left).is_finite() && at(slot).is_finite() && at(*left) != at(slot))
            {
                let said = |slot: Slot| page.shop.line(slot, at(slot));
                put(
                    "sides: ",
                    &format!("{} left {}, right {}", graph.info(left).path, said(left), said(slot)),
                );
            }
        }
        let doubts: Vec<&str> = self.doubts(answer).iter().map(|found| found.path).collect();
        if !doubts.is_empty() {
            put(
                "doubt: ",
                &format!(
                    "rests on lines that contradict others, so no better than tight: {}",
                    doubts.join(", ")
                ),
            );
        }
        if answer.verdict == Verdict::NotKnown {
            put("missing: ", &self.missing_text(answer));
            for path in self.missing(answer).needs.iter().take(12) {
                let graph = Graph::get();
                if let Some(line) = graph.slot(path).map(|slot| graph.info(slot).line) {
                    let how = if line.how.is_empty() { String::new() } else { format!(" ({})", line.how) };
                    put("  ", &format!("{path}: {}{how}", line.meaning));
                }
            }
        }
        if answer.verdict == Verdict::DoesNotApply {
            put("because of: ", &self.rests_on(answer).join(", "));
            return out;
        }
        let written = self.rests_on(answer).join(", ");
        if !written.is_empty() {
            put("rests on: ", &written);
        }
        let work = self.work_said(answer, page);
        if !work.is_empty() {
            out.push_str("  work:\n");
            work.iter().for_each(|line| out.push_str(line));
        }
        out
    }
}
