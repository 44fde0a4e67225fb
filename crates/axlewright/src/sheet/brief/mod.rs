//! Report of an assessment for a person: a summary, safety first, a line a finding, no line wider than the page.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

mod detail;
mod tabular;

pub use tabular::COLUMNS;

use super::applies::Asked;
use super::assess::{Answer, Assessment};
use super::graph::{Graph, MarginSlots, Slot};
use super::margin::is_no_change;
use super::plan::Origin;
use super::shop::Shop;
use crate::Verdict;
use crate::base::section::{Content, Line};
use crate::base::text::{System, columns, printable, wrapped};
use std::collections::{BTreeMap, BTreeSet};

/// Form of a report.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Report {
    /// Units of the report; without them, those in which the sheet writes such lines.
    pub system: Option<System>,
    /// Columns of the page. A width below 20 counts as 20.
    pub width: usize,
    /// True if every computed value is listed, and every finding that is not known.
    pub all: bool,
    /// True if the work stands below each finding.
    pub work: bool,
    /// True if verdicts are coloured, by the escapes of a terminal.
    pub colour: bool,
}

impl Default for Report {
    fn default() -> Report {
        Report { system: None, width: 80, all: false, work: false, colour: false }
    }
}

/// Lines to measure next, and the findings that they answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Next {
    /// Lines that are missing.
    pub lines: Vec<&'static str>,
    /// Findings that miss nothing else.
    pub answers: Vec<&'static str>,
}

/// Findings that a line of the summary names at the most.
const MOST_NAMED: usize = 6;
/// Lines that a finding names as missing before the report only counts them.
const MOST_NEEDS: usize = 4;

/// A quantity without its unit where another one beside it has the same unit.
fn without_unit(one: &str, other: &str) -> String {
    match (one.split_once(' '), other.split_once(' ')) {
        (Some((number, unit)), Some((_, same))) if unit == same => number.to_owned(),
        _ => one.to_owned(),
    }
}

/// The names of a list, as many as may be, and the number of the others.
fn few(names: &[&str], most: usize) -> String {
    let shown = names.iter().take(most).copied().collect::<Vec<_>>().join(", ");
    if names.len() > most { format!("{shown} +{}", names.len() - most) } else { shown }
}

/// Names without the coordinates of a point, each once.
fn folded(names: impl Iterator<Item = &'static str>) -> Vec<&'static str> {
    let mut all: Vec<&str> = Vec::new();
    for name in names {
        let point = [".x", ".y", ".z"].into_iter().find_map(|axis| name.strip_suffix(axis)).unwrap_or(name);
        if !all.contains(&point) {
            all.push(point);
        }
    }
    all
}

/// A path beside a finding of the same end: `track` beside `front.load`.
fn beside(path: &'static str, finding: &str) -> &'static str {
    let end = |path: &str| ["front.", "rear."].into_iter().find(|end| path.starts_with(end));
    match end(finding) {
        Some(end) => path.strip_prefix(end).unwrap_or(path),
        None => path,
    }
}

/// The verdict, in colour on a terminal.
fn verdict_word(verdict: Verdict, colour: bool) -> String {
    let word = verdict.word();
    let code = match verdict {
        _ if !colour => return word.to_owned(),
        Verdict::Short => "1;31",
        Verdict::Tight => "33",
        Verdict::Meets => "32",
        _ => "2",
    };
    format!("\x1b[{code}m{word}\x1b[0m")
}

/// A verdict, what it is about, and the longest of these texts that fits into the line; a narrow page takes a second line.
fn labelled(label: &str, verdict: Verdict, texts: &[String], page: &Page<'_>) -> String {
    let word = verdict_word(verdict, page.report.colour);
    let pad = " ".repeat(9_usize.saturating_sub(columns(verdict.word())));
    let gap = " ".repeat(page.path.saturating_sub(columns(label)));
    let head = format!("  {word}{pad}  {label}{gap}  ");
    let room = page.width.saturating_sub(columns(&head));
    if let Some(text) = texts.iter().find(|text| columns(text) <= room) {
        return format!("{}\n", format!("{head}{text}").trim_end());
    }
    let full = texts.iter().find(|text| columns(text) + 6 <= page.width).or(texts.last());
    let first = wrapped(&format!("  {word}{pad}  "), 13, label, page.width);
    format!("{first}{}", wrapped("      ", 6, full.map_or("", String::as_str), page.width))
}

/// A heading after an empty line.
fn titled(title: &str, width: usize) -> String {
    format!("\n{}", wrapped("", 2, title, width))
}

/// Heading of a system in a report.
fn heading(system: &str) -> &'static str {
    match system {
        "air" => "AIR",
        "tyre" => "TYRES",
        "spring" => "SPRINGS, DAMPERS AND TRAVEL",
        "engine" => "ENGINE",
        "mass" => "MASS",
        "suspension" => "SUSPENSION AND ROLL",
        "driveline" => "DRIVELINE",
        "cooling" => "COOLING",
        "ride" => "RIDE",
        _ => "MORE",
    }
}

impl Report {
    fn shop(&self, assessment: &Assessment) -> Shop {
        Shop::for_sheet(&assessment.sheet, self.system)
    }
}

impl Assessment {
    /// The line of the value that a finding holds against its limit.
    pub(super) fn value_line(&self, answer: &Answer) -> Option<(MarginSlots, &'static Line)> {
        let graph = Graph::get();
        let margin = graph.findings[graph.finding(answer.path)?].margin;
        let slot = match margin {
            MarginSlots::Ratio { demand, .. } => demand,
            MarginSlots::Remaining { value }
            | MarginSlots::AtLeast { value, .. }
            | MarginSlots::AtMost { value, .. }
            | MarginSlots::Band { value, .. } => value,
        };
        Some((margin, graph.info(slot).line))
    }

    /// Value, limit and margin of an answer in words, from the most to the least that is said. A tolerance that decides the verdict is said in all of them.
    fn sayings(&self, answer: &Answer, shop: &Shop) -> Vec<String> {
        let Some((margin, line)) = self.value_line(answer) else { return vec![] };
        let say = |si: f64, digits: usize| shop.say_to(si, answer.kind, Some(line), digits);
        // As many digits as tell the value from the limits that it misses.
        let bounds = [answer.low, answer.high].into_iter().filter(|bound| bound.is_finite());
        let bounds: Vec<f64> = bounds.filter(|bound| *bound != answer.value).collect();
        let apart =
            |digits: &usize| bounds.iter().all(|bound| say(*bound, *digits) != say(answer.value, *digits));
        let digits = (3..=6).find(apart).unwrap_or(3);
        let value = |si: f64| say(si, digits);
        let is_band = matches!(margin, MarginSlots::Band { .. });
        let answer = &self.to_what_is_told(answer);
        // As many digits as tell the margin, and what is left of it at worst, from the marks that decide.
        let least = if matches!(margin, MarginSlots::Ratio { .. }) { 1.0 } else { 0.0 };
        let to = |si: f64, digits: usize| shop.say_to(si, answer.margin_kind, Some(line), digits);
        let marks = [least, answer.wanted].into_iter().filter(|mark| mark.is_finite());
        let marks: Vec<f64> = marks.collect();
        let told = |digits: &usize| {
            let margins = [answer.margin, answer.worst].into_iter().filter(|margin| margin.is_finite());
            margins.into_iter().all(|margin| {
                marks.iter().all(|mark| *mark == margin || to(*mark, *digits) != to(margin, *digits))
            })
        };
        let fewest = if is_band { 2 } else { 3 };
        let part_digits = (fewest..=6).find(told).unwrap_or(fewest);
        let part = |si: f64| to(si, part_digits);
        let (away, inside) = (part(answer.margin.abs()), answer.margin >= 0.0);
        let of = value(answer.value);
        let (above, below) = if inside { ("above", "below") } else { ("below", "above") };
        let (core, brief) = match margin {
            MarginSlots::Ratio { .. } => {
                let (times, capacity) = (part(answer.margin), value(answer.high));
                (
                    format!("{} of {capacity}, {times} times", without_unit(&of, &capacity)),
                    format!("{times} times"),
                )
            }
            MarginSlots::Remaining { .. } if inside => (format!("{of} left"), String::new()),
            MarginSlots::Remaining { .. } => (format!("{away} too little"), String::new()),
            MarginSlots::AtLeast { .. } => (
                format!("{of}, {away} {above} {}", value(answer.low)),
                format!("{of}, {away} {above} the limit"),
            ),
            MarginSlots::AtMost { .. } => (
                format!("{of}, {away} {below} {}", value(answer.high)),
                format!("{of}, {away} {below} the limit"),
            ),
            MarginSlots::Band { .. } => {
                let within = if inside { "inside" } else { "outside" };
                let (low, high) = (value(answer.low), value(answer.high));
                let low = without_unit(&low, &high);
                (format!("{of}, {within} {low} to {high} by {away}"), format!("{of}, {within} by {away}"))
            }
        };
        let worst = match answer.worst {
            worst if worst.is_nan() => " (at worst not known)".to_owned(),
            worst if worst < answer.margin && part(worst) != part(answer.margin) => {
                format!(" (at worst {})", part(worst))
            }
            _ => String::new(),
        };
        let doubted = answer.verdict == Verdict::Tight && !self.doubts(answer).is_empty();
        let doubt = if doubted { "; see CONTRADICTED" } else { "" };
        let wanted = match answer.wanted {
            wanted if wanted.is_infinite() && answer.verdict == Verdict::Short => String::new(),
            wanted if wanted.is_infinite() => format!("; see TO WRITE{}", doubt.replace("; see", ",")),
            wanted if wanted > least => format!(", {} wanted{doubt}", part(wanted)),
            _ => doubt.to_owned(),
        };
        let graded = |margin: f64| {
            Verdict::grade(margin, least, if answer.wanted.is_finite() { answer.wanted } else { least })
        };
        let decides = answer.worst.is_nan() || graded(answer.worst) != graded(answer.margin);
        let brief = if brief.is_empty() { core.clone() } else { brief };
        if decides {
            let mut all = vec![format!("{core}{worst}{wanted}")];
            if doubted {
                all.extend([format!("{core}{doubt}"), format!("{brief}{doubt}")]);
            } else {
                all.extend([format!("{core}{worst}"), format!("{brief}{worst}")]);
            }
            all
        } else {
            let mut all =
                vec![format!("{core}{worst}{wanted}"), format!("{core}{wanted}"), format!("{brief}{wanted}")];
            if doubted {
                all.extend([format!("{core}{doubt}"), format!("{brief}{doubt}")]);
            } else {
                all.extend([core, brief]);
            }
            all
        }
    }

    /// An answer whose margins stand on a mark that decides where they are nearer to it than anybody measures: a millionth of the value or the limits.
    fn to_what_is_told(&self, answer: &Answer) -> Answer {
        const TOLD: f64 = 1e-6;
        let (least, size) = match answer.form {
            "ratio" => (1.0, 1.0),
            _ => {
                let all = [answer.value, answer.low, answer.high].into_iter().filter(|one| one.is_finite());
                (0.0, all.map(f64::abs).fold(0.0, f64::max))
            }
        };
        let mut told = *answer;
        for margin in [&mut told.margin, &mut told.worst] {
            let mark = [least, answer.wanted].into_iter().find(|mark| (*margin - mark).abs() < TOLD * size);
            *margin = mark.unwrap_or(*margin);
        }
        told
    }

    /// The value of an answer that has no margin, before what it needs; where the limit decides which side counts, the value from which it follows.
    fn bare_value(&self, answer: &Answer, shop: &Shop) -> String {
        let Some((margin, line)) = self.value_line(answer) else { return String::new() };
        if !answer.value.is_nan() {
            return format!("{}; ", shop.say(answer.value, answer.kind, Some(line)));
        }
        let graph = Graph::get();
        let MarginSlots::Band { value, .. } = margin else { return String::new() };
        let mut inputs = graph.info(value).steps.iter().flat_map(|step| &step.inputs);
        let like = |slot: &&Slot| {
            let info = graph.info(**slot);
            info.kind() == Some(answer.kind)
                && (answer.kind.name != "Ratio" || info.path.ends_with("damping_ratio"))
                && !info.path.contains("wanted")
                && self.values[usize::from(**slot)].is_finite()
                && matches!(self.plan.origins[usize::from(**slot)], Origin::Step(_) | Origin::Written)
        };
        let known = inputs.find(like);
        known.map_or(String::new(), |slot| format!("{}; ", shop.line(*slot, self.values[usize::from(*slot)])))
    }

    /// Reason why an answer is not known, in as many lengths.
    fn lacks(&self, answer: &Answer, shop: &Shop) -> Vec<String> {
        let value = self.bare_value(answer, shop);
        let missing = self.missing(answer);
        let needs = folded(missing.needs.iter().map(|path| beside(path, answer.path)));
        if !needs.is_empty() {
            let told = |most: usize| format!("{value}needs {}", few(&needs, most));
            return [needs.len(), 3, 2, 1].into_iter().map(told).collect();
        }
        let why = match self.is_asked(answer) {
            Some(Asked::Open(why)) => why.clone(),
            _ => missing
                .refused
                .first()
                .map_or("has no answer".to_owned(), |(path, why)| format!("{path} has no value: {why}")),
        };
        vec![format!("{value}{why}")]
    }

    /// Answers to tell first: the lines that the fewest measurements would answer, the best first. Only findings that miss nothing but
    /// lines of the sheet count.
    pub fn measure_next(&self) -> Vec<Next> {
        let unknown = self.answers().iter().filter(|answer| answer.verdict == Verdict::NotKnown);
        let all: Vec<(&Answer, Vec<&'static str>)> = unknown
            .filter(|answer| !matches!(self.is_asked(answer), Some(Asked::Open(_))))
            .map(|answer| (answer, self.missing(answer)))
            .filter(|(_, missing)| !missing.needs.is_empty())
            .map(|(answer, missing)| (answer, missing.needs))
            .collect();
        let mut groups = BTreeMap::<&Vec<&'static str>, (usize, Vec<&'static str>)>::new();
        for (_, needs) in &all {
            groups.entry(needs).or_insert_with(|| {
                let answered =
                    all.iter().filter(|(_, others)| others.iter().all(|other| needs.contains(other)));
                let safety = answered.clone().filter(|(answer, _)| answer.is_safety()).count();
                (safety, answered.map(|(answer, _)| answer.path).collect())
            });
        }
        // A line that many findings miss is worth more than one of a single finding.
        let missed = |line: &&'static str| all.iter().filter(|(_, needs)| needs.contains(line)).count();
        let worth = |needs: &[&'static str], answers: usize| {
            let popular: usize = needs.iter().map(missed).sum();
            (answers as f64 + 0.1 * popular as f64) / needs.len() as f64
        };
        let mut groups: Vec<_> = groups
            .into_iter()
            .map(|(needs, (safety, answers))| (worth(needs, answers.len()), safety, needs, answers))
            .collect();
        groups.sort_by(|(worth, safe, one, _), (other, safer, two, _)| {
            other.total_cmp(worth).then(safer.cmp(safe)).then(one.cmp(two))
        });
        groups.into_iter().map(|(_, _, needs, answers)| Next { lines: needs.clone(), answers }).collect()
    }

    /// The three lines of the summary: how many meet, what is short or tight, what to measure next.
    fn summary(&self, width: usize) -> String {
        // Findings of safety first: only the first few are named.
        let of = |verdict: Verdict| -> Vec<&str> {
            let all = self.answers().iter().filter(|answer| answer.verdict == verdict);
            let (safety, others): (Vec<&Answer>, Vec<&Answer>) = all.partition(|answer| answer.is_safety());
            safety.into_iter().chain(others).map(|answer| answer.path).collect()
        };
        let asked = self.answers().len() - of(Verdict::DoesNotApply).len();
        let mut counts = format!("{} of {asked} findings meet", of(Verdict::Meets).len());
        for verdict in [Verdict::Short, Verdict::Tight, Verdict::NotKnown] {
            counts.push_str(&format!(", {} {}", of(verdict).len(), verdict.word()));
        }
        let mut out = wrapped("", 2, &format!("{counts}."), width);
        let (short, tight) = (of(Verdict::Short), of(Verdict::Tight));
        let named = match (short.is_empty(), tight.is_empty()) {
            (true, true) if of(Verdict::Meets).is_empty() => "No finding is known yet.".to_owned(),
            (true, true) => "Nothing that is known is short or tight.".to_owned(),
            (true, false) => format!("Tight: {}.", few(&tight, MOST_NAMED)),
            (false, true) => format!("Short: {}.", few(&short, MOST_NAMED)),
            (false, false) => {
                format!("Short: {}. Tight: {}.", few(&short, MOST_NAMED), few(&tight, MOST_NAMED))
            }
        };
        out.push_str(&wrapped("", 2, &named, width));
        let mut next: Vec<Next> = Vec::new();
        for one in self.measure_next() {
            if next.len() < 2
                && next.iter().all(|other| one.lines.iter().all(|line| !other.lines.contains(line)))
            {
                next.push(one);
            }
        }
        let told = |next: &Next| {
            format!("{} for {}", few(&folded(next.lines.iter().copied()), MOST_NEEDS), few(&next.answers, 3))
        };
        let told: Vec<String> = next.iter().map(told).collect();
        if !told.is_empty() {
            out.push_str(&wrapped("", 2, &format!("Measure next: {}.", told.join("; ")), width));
        }
        out
    }

    /// One finding: its verdict, path and numbers, in one line where the page is wide enough.
    fn row(&self, answer: &Answer, page: &Page<'_>) -> String {
        let texts = match answer.verdict {
            Verdict::NotKnown => self.lacks(answer, page.shop),
            _ => self.sayings(answer, page.shop),
        };
        let mut out = labelled(answer.path, answer.verdict, &texts, page);
        if page.report.work {
            for line in self.work_said(answer, page) {
                out.push_str(&line);
            }
        }
        out
    }

    /// Left and right of each line behind a finding, where the two differ as they are said.
    fn sides(&self, page: &Page<'_>) -> String {
        let graph = Graph::get();
        let known = self.answers().iter().filter(|answer| !answer.margin.is_nan());
        let reached: BTreeSet<Slot> = known.flat_map(|answer| self.reached(answer)).collect();
        let mut out = String::new();
        for right in reached {
            let path = graph.info(right).path;
            // A ratio of the drawn linkage is that of the spring, too.
            let left = graph.slot(&path.replace("right_", "")).filter(|left| *left != right);
            let Some(left) = left.filter(|_| !path.contains("linkage_")) else { continue };
            let [one, two] = [left, right].map(|slot| self.values[usize::from(slot)]);
            let [said, other] = [(left, one), (right, two)].map(|(slot, si)| page.shop.line(slot, si));
            if one.is_finite() && two.is_finite() && said != other {
                let text =
                    format!("{}: left {}, right {other}", graph.info(left).path, without_unit(&said, &other));
                out.push_str(&wrapped("  ", 4, &text, page.width));
            }
        }
        if out.is_empty() { out } else { format!("{}{out}", titled("LEFT AND RIGHT differ", page.width)) }
    }

    /// The work of an answer, wrapped.
    fn work_said(&self, answer: &Answer, page: &Page<'_>) -> Vec<String> {
        let system = page.report.system.unwrap_or_else(|| self.sheet.system());
        let indent = |line: &str| line.len() - line.trim_start().len() + 6;
        let work = self.work(answer, system);
        work.lines()
            .map(|line| wrapped(&" ".repeat(indent(line)), indent(line) + 2, line, page.width))
            .collect()
    }

    /// The report of an assessment: a summary of three lines, then the findings of safety, then those of each system, a line a finding, short ones first;
    /// what contradicts, what is assumed, and each caution once.
    pub fn report(&self, report: &Report) -> String {
        let shop = report.shop(self);
        let width = report.width.max(20);
        let longest = self.answers().iter().map(|answer| columns(answer.path)).max().unwrap_or(0);
        let page = Page { report, shop: &shop, width, path: longest.min(width / 3) };
        let mut out = String::new();
        if !self.sheet.name().is_empty() {
            out.push_str(&wrapped("", 2, &printable(self.sheet.name()), width));
        }
        out.push_str(&wrapped("", 2, &self.stamp(), width));
        out.push('\n');
        out.push_str(&self.summary(width));
        let safety = self.answers().iter().filter(|answer| answer.is_safety()).collect();
        out.push_str(&self.group("SAFETY", safety, &page));
        let mut systems: Vec<&str> = self.answers().iter().map(|answer| answer.system).collect();
        systems.dedup();
        for system in systems {
            let of = self.answers().iter().filter(|answer| answer.system == system && !answer.is_safety());
            out.push_str(&self.group(heading(system), of.collect(), &page));
        }
        out.push_str(&self.beside_findings(&page));
        out
    }

    /// All that a report says beside the findings: what does not apply, contradictions, remarks, lines to write, assumptions, cautions. Every export holds it.
    fn beside_findings(&self, page: &Page<'_>) -> String {
        let (report, width) = (page.report, page.width);
        let mut out = self.apart(page) + &self.sides(page);
        if !self.contradictions().is_empty() {
            out.push_str(&titled("CONTRADICTED, so that one of the written lines is wrong", width));
            let system = report.system.unwrap_or_else(|| self.sheet.system());
            for found in self.contradictions() {
                out.push_str(&wrapped("  ", 4, &printable(&found.text(system)), width));
            }
        }
        if !self.sheet.remarks().is_empty() {
            out.push_str(&titled("REMARK", width));
            for remark in self.sheet.remarks() {
                out.push_str(&wrapped("  ", 4, &printable(&remark.to_string()), width));
            }
        }
        if report.all {
            out.push_str(&self.computed(page));
        }
        out.push_str(&self.assumptions(page));
        out.push_str(&self.cautions(self.answers().iter().collect(), width));
        out
    }

    /// The findings of a group under its heading.
    fn group(&self, heading: &str, answers: Vec<&Answer>, page: &Page<'_>) -> String {
        let mut out = String::new();
        for verdict in [Verdict::Short, Verdict::Tight, Verdict::Meets] {
            answers
                .iter()
                .filter(|answer| answer.verdict == verdict)
                .for_each(|answer| out.push_str(&self.row(answer, page)));
        }
        let unknown: Vec<&Answer> =
            answers.into_iter().filter(|answer| answer.verdict == Verdict::NotKnown).collect();
        let mut counted = Vec::new();
        for answer in unknown {
            // A finding that is far from an answer is only named, unless it is one of safety or has a value already.
            let needs = self.missing(answer).needs;
            let far = folded(needs.into_iter()).len() > MOST_NEEDS && answer.value.is_nan();
            if far && !page.report.all {
                counted.push(answer.path);
            } else {
                out.push_str(&self.row(answer, page));
            }
        }
        if !counted.is_empty() {
            let word = verdict_word(Verdict::NotKnown, page.report.colour);
            let text = format!("{} (more than {MOST_NEEDS} lines are missing)", counted.join(", "));
            out.push_str(&wrapped(&format!("  {word}  "), 13, &text, page.width));
        }
        if out.is_empty() { out } else { format!("{}{out}", titled(heading, page.width)) }
    }

    /// Findings that do not apply, and what says so.
    fn apart(&self, page: &Page<'_>) -> String {
        let mut by = BTreeMap::<Vec<&str>, Vec<&str>>::new();
        for answer in self.answers().iter().filter(|answer| answer.verdict == Verdict::DoesNotApply) {
            by.entry(self.rests_on(answer)).or_default().push(answer.path);
        }
        if by.is_empty() {
            return String::new();
        }
        let said = |path: &&str| {
            let text = self.sheet.get(path).ok().flatten().unwrap_or_default();
            format!("{path} = {}", printable(&text))
        };
        let mut out = titled("DOES NOT APPLY, because the sheet says so", page.width);
        for (lines, findings) in by {
            let because: Vec<String> = lines.iter().map(said).collect();
            out.push_str(&wrapped(
                "  ",
                4,
                &format!("{}: {}", findings.join(", "), because.join(", ")),
                page.width,
            ));
        }
        out
    }

    /// Every computed value, by its line.
    fn computed(&self, page: &Page<'_>) -> String {
        let graph = Graph::get();
        let mut out = String::new();
        for (slot, value) in self.values.iter().enumerate() {
            let info = &graph.slots[slot];
            let follows = matches!(self.plan.origins[slot], Origin::Step(_));
            if follows && value.is_finite() && !matches!(info.line.content, Content::Marking(_)) {
                let said = page.shop.line(slot as Slot, *value);
                out.push_str(&wrapped("  ", 4, &format!("{} = {said}", info.path), page.width));
            }
        }
        if out.is_empty() { out } else { format!("{}{out}", titled("COMPUTED", page.width)) }
    }

    /// Values that nobody wrote; and lines to write before a finding can be better than tight.
    fn assumptions(&self, page: &Page<'_>) -> String {
        let mut groups = Vec::<(String, &str, Vec<&str>)>::new();
        let (mut open, mut bare) = (String::new(), String::new());
        let graph = Graph::get();
        let mut grounds = BTreeMap::<&str, Vec<&str>>::new();
        for one in self.assumed() {
            if one.si.is_infinite() {
                grounds.entry(one.ground).or_default().push(one.path);
                continue;
            }
            let line = graph.slot(one.path).map(|slot| graph.info(slot).line);
            let said = page.shop.say(one.si, one.kind, line);

            // Margins of zero are one thing, whatever their unit.
            let said = if one.si == 0.0 && one.path.starts_with("wanted.") { "0".to_owned() } else { said };
            match groups.iter_mut().find(|(value, ground, _)| *value == said && *ground == one.ground) {
                Some((.., paths)) => paths.push(one.path),
                None => groups.push((said, one.ground, vec![one.path])),
            }
        }
        for (ground, paths) in grounds {
            let of: Vec<String> = self
                .answers()
                .iter()
                .filter(|answer| answer.wanted.is_infinite() && self.to_write(answer).contains(&ground))
                .map(|answer| answer.path.to_owned())
                .collect();
            // If it holds no finding back, it is an assumption like the others.
            if of.is_empty() {
                bare.push_str(&wrapped("  ", 4, &format!("{}: {ground}", paths.join(", ")), page.width));
            } else {
                open.push_str(&wrapped("  ", 4, &format!("{}: {ground}", of.join(", ")), page.width));
            }
        }
        let mut assumed = bare;
        for (said, ground, paths) in groups {
            assumed.push_str(&wrapped(
                "  ",
                4,
                &format!("{} = {said}: {ground}", paths.join(", ")),
                page.width,
            ));
        }
        let mut out = String::new();
        if !open.is_empty() {
            out.push_str(&titled("TO WRITE, before these can be better than tight", page.width));
            out.push_str(&open);
        }
        if !assumed.is_empty() {
            out.push_str(&titled("ASSUMED, because nobody wrote it", page.width));
            out.push_str(&assumed);
        }
        out
    }

    /// Each caution once, with its findings.
    fn cautions(&self, answers: Vec<&Answer>, width: usize) -> String {
        let mut texts: Vec<(&str, Vec<&str>)> = Vec::new();

        let told = |answer: &&Answer| {
            answer.is_safety() && !matches!(answer.verdict, Verdict::DoesNotApply | Verdict::NotKnown)
        };
        for answer in answers.into_iter().filter(told) {
            match texts.iter_mut().find(|(text, _)| *text == answer.caution) {
                Some((_, paths)) => paths.push(answer.path),
                None => texts.push((answer.caution, vec![answer.path])),
            }
        }
        let mut out = String::new();
        for (text, paths) in texts {
            out.push_str(&wrapped("  ", 4, &format!("{}: {text}", paths.join(", ")), width));
        }
        if out.is_empty() { out } else { format!("{}{out}", titled("CAUTION", width)) }
    }

    /// Assessments side by side, each under its label: every finding whose value, margin (at worst, too), wanted margin or verdict differs between them, a line an assessment; then what contradicts itself.
    pub fn side_by_side(rows: &[(&str, &Assessment)], report: &Report) -> String {
        let Some(((_, first), others)) = rows.split_first() else { return String::new() };
        let (shop, width) = (report.shop(first), report.width.max(20));
        let label = rows.iter().map(|(label, _)| columns(label)).max().unwrap_or(0).min(width / 3);
        let mut out = String::new();
        // Rows of one sheet say its name once.
        let same = others.iter().all(|(_, other)| other.sheet.name() == first.sheet.name()) && rows.len() > 2;
        for (label, one) in rows.iter().take(if same { 1 } else { rows.len() }) {
            let name = printable(one.sheet.name());
            out.push_str(&wrapped("", 4, &format!("{label}: {name}, {}", one.stamp()), width));
        }
        let alike = |a: f64, b: f64| {
            a == b || (a.is_nan() && b.is_nan()) || is_no_change(a - b, a.abs().max(b.abs()))
        };
        let mut differing = 0;
        let mut told = String::new();
        for (place, answer) in first.answers().iter().enumerate() {
            let answers: Vec<(&str, &Assessment, &Answer)> = rows
                .iter()
                .filter_map(|(label, one)| Some((*label, *one, one.answers().get(place)?)))
                .collect();
            let differs = answers.iter().any(|(_, _, other)| {
                !alike(other.margin, answer.margin)
                    || !alike(other.value, answer.value)
                    || !alike(other.worst, answer.worst)
                    || !alike(other.wanted, answer.wanted)
                    || other.verdict != answer.verdict
            });
            if !differs {
                continue;
            }
            differing += 1;
            told.push_str(&titled(&format!("{}: {}", answer.path, answer.question), width));
            let page = Page { report, shop: &shop, width, path: label };
            for (label, one, answer) in answers {
                let said = match answer.verdict {
                    Verdict::DoesNotApply => vec![String::new()],
                    Verdict::NotKnown => one.lacks(answer, &shop),
                    _ => one.sayings(answer, &shop),
                };
                told.push_str(&labelled(&printable(label), answer.verdict, &said, &page));
            }
        }
        out.push_str(&wrapped(
            "",
            2,
            &format!("{differing} of {} findings differ.", first.answers().len()),
            width,
        ));
        out.push_str(&told);
        let system = report.system.unwrap_or_else(|| first.sheet.system());
        for (label, one) in rows {
            for found in one.contradictions() {
                let text = format!("{}: CONTRADICTED: {}", printable(label), printable(&found.text(system)));
                out.push_str(&wrapped("", 4, &text, width));
            }
        }
        out
    }
}

/// The page of a report.
struct Page<'a> {
    report: &'a Report,
    shop: &'a Shop,
    width: usize,
    /// Columns of the paths.
    path: usize,
}
