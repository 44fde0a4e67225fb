//! Applicability of questions: a question is not asked if the sheet says that the vehicle lacks the part.
//!
//! Only `none` and the word of a choice say so. A part that is merely not written is missing, and the answer is not known.

use super::Sheet;
use super::graph::{AboutChoice, AboutInfo, FindingInfo, Graph, Slot};
use crate::Verdict;
use crate::base::section::Content;

/// Statements of a sheet on the parts of a finding.
#[derive(Clone, Default)]
pub(super) struct Applies {
    parts: Vec<Part>,
}

#[derive(Clone)]
struct Part {
    about: &'static AboutInfo,
    /// Lines or tables that the sheet declares `none`, if it declares all of them so.
    none: Vec<&'static str>,
    /// A line of it that is written.
    written: Option<&'static str>,
    /// A line of another part that says that there is such a part.
    told: Option<&'static str>,
    /// True if a line is written beside which the part must be written too.
    beside: bool,
}

/// Whether a question is asked, by the sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Asked {
    /// It is asked.
    Yes,
    /// The vehicle lacks the part: the parts that are `none`, or the choice that says so.
    No(Vec<&'static str>),
    /// It is asked, but nothing clears it, and why: the sheet says both, or does not say whether there is such a part.
    Open(String),
}

impl Applies {
    /// Statements of a sheet to which the lines that `change` are added.
    pub fn new(sheet: &Sheet, finding: &'static FindingInfo, changes: impl Fn(Slot) -> bool) -> Applies {
        let part = |about: &'static AboutInfo| {
            let is_written = |slot: &&Slot| sheet.values.contains_key(slot) || changes(**slot);
            let written = about.lines.iter().find(is_written);
            let mut none: Vec<&'static str> =
                about.parts.iter().filter_map(|part| sheet.none_around(part)).collect();
            if none.len() < about.parts.len() {
                none.clear();
            }
            none.dedup();
            let tells = |slot: &&Slot| {
                changes(**slot) || sheet.values.get(slot).is_some_and(|written| written.si > 0.0)
            };
            let path = |slot: &Slot| Graph::get().info(*slot).path;
            Part {
                about,
                none,
                written: written.map(path),
                told: about.told_by.iter().find(tells).map(path),
                beside: about.beside.iter().any(|slot| is_written(&slot)),
            }
        };
        Applies { parts: finding.about.iter().map(part).collect() }
    }

    /// True if a sheet with these values says anything about the parts of a finding: most sheets say nothing, which is quickly known.
    pub fn speaks(
        sheet: &Sheet,
        finding: &FindingInfo,
        value: impl Fn(Slot) -> f64,
        is_written: impl Fn(Slot) -> bool,
    ) -> bool {
        finding.about.iter().any(|about| {
            !sheet.none.is_empty()
                || about.choice.as_ref().is_some_and(|choice| !choice.allows(value(choice.slot)))
                || about.beside.iter().any(|slot| is_written(*slot))
        })
    }

    /// Whether it is asked if the choices have these values and these lines contradict others.
    pub fn asked(&self, value: impl Fn(Slot) -> f64, is_doubted: impl Fn(Slot) -> bool) -> Asked {
        let (mut none, mut open) = (None, None);
        for part in &self.parts {
            match part.asked(&value, &is_doubted) {
                Asked::Yes => {}
                Asked::No(by) => none = none.or(Some(by)),
                Asked::Open(why) => open = open.or(Some(why)),
            }
        }
        // A contradiction comes first: the line that says `none` may be the wrong one.
        if let (None, Some(by)) = (&open, none) {
            return Asked::No(by);
        }
        open.map_or(Asked::Yes, Asked::Open)
    }
}

impl Part {
    fn asked(&self, value: impl Fn(Slot) -> f64, is_doubted: impl Fn(Slot) -> bool) -> Asked {
        if !self.about.beside.is_empty() {
            let told = !self.beside || self.written.is_some() || !self.none.is_empty();
            return if told {
                Asked::Yes
            } else {
                Asked::Open(format!("needs one of {}, or `none` of each", self.about.parts.join(", ")))
            };
        }
        let both = |why: String| Asked::Open(format!("{why}: one of the two is wrong"));
        let chosen = self.about.choice.as_ref().map(|choice| (choice, value(choice.slot)));
        let chosen = chosen.filter(|(_, word)| !word.is_nan());
        let allows = chosen.is_none_or(|(choice, word)| choice.allows(word));
        let says = || chosen.map_or(String::new(), |(choice, word)| said(choice.slot, word));
        if let (false, Some(told)) = (self.none.is_empty(), self.told) {
            return both(format!("{} is `none`, but {told} is written", self.none.join(", ")));
        }
        if !self.none.is_empty() {
            let claims = chosen.is_some_and(|(choice, _)| choice.sure && allows);
            return if claims {
                both(format!("{}, but {} is `none`", says(), self.none.join(", ")))
            } else {
                Asked::No(self.none.clone())
            };
        }
        match (chosen, self.written.or(self.told)) {
            (Some(_), Some(written)) if !allows => both(format!("{}, but {written} is written", says())),
            (Some((choice, _)), _) if !allows && is_doubted(choice.slot) => {
                both(format!("{}, which contradicts another line", says()))
            }
            (Some((choice, _)), _) if !allows => Asked::No(vec![Graph::get().info(choice.slot).path]),
            _ => Asked::Yes,
        }
    }
}

impl AboutChoice {
    /// True if this word allows such a part; any word does as long as none is written.
    fn allows(&self, word: f64) -> bool {
        word.is_nan() || self.words.contains(&(word as usize))
    }
}

impl Asked {
    /// The verdict of a finding that is graded so. Numbers that condemn a part outlive the line that says that there is none: one of the
    /// two is wrong.
    pub fn verdict(&self, graded: Verdict) -> Verdict {
        match (self, graded) {
            (_, Verdict::Short) => Verdict::Short,
            (Asked::No(_), _) => Verdict::DoesNotApply,
            (Asked::Open(_), Verdict::Meets | Verdict::Tight) => Verdict::NotKnown,
            _ => graded,
        }
    }

    /// Verdict of a finding with its tolerances counted; a part that is said to be absent is judged by its numbers without them.
    pub fn verdict_of(&self, plain: Verdict, counted: Verdict) -> Verdict {
        self.verdict(if matches!(self, Asked::No(_)) { plain } else { counted })
    }

    /// The question as it stands beside a finding that is graded so.
    pub fn beside(self, graded: Verdict) -> Asked {
        match self {
            Asked::No(by) if graded == Verdict::Short => Asked::Open(format!(
                "{} says that there is no such part, but its numbers are written: one of the two is wrong",
                by.join(", ")
            )),
            other => other,
        }
    }
}

/// `rear.suspension is double_wishbone`.
fn said(choice: Slot, word: f64) -> String {
    let info = Graph::get().info(choice);
    let words = if let Content::Choice(words) = info.line.content { words } else { &[] };
    format!("{} is `{}`", info.path, words.get(word as usize).unwrap_or(&""))
}
