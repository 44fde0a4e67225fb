//! Requirements on a choice, as they are written.

use crate::base::text::{refusal, value_as};
use crate::sheet::graph::Graph;
use crate::sheet::what_if::kind_of;
use crate::units::{Kind, Mass, Quantity, Ratio};
use crate::{Result, Verdict};

/// Something that must hold: a band, open at one end or not, or a verdict.
#[derive(Debug, Clone, PartialEq)]
pub struct Requirement {
    text: String,
    pub(super) test: Test,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) enum Test {
    /// Highest cost of all parts together, in the money of the list.
    Cost { most: f64 },
    /// Highest mass of all parts together, in kilograms.
    Mass { most: f64 },
    /// Every ratio that is known.
    Margins { least: f64 },
    /// An output between two values, in coherent SI.
    Between { output: String, kind: &'static Kind, low: f64, high: f64 },
    /// A finding with at least this verdict.
    Verdict { output: String, verdict: Verdict },
    /// No finding with a worse verdict than on the sheet as it is.
    NoWorse,
    /// No finding short that is not short on the sheet as it is.
    NoShort,
}

/// Characters in the longest requirement that is read.
const LONGEST: usize = 200;

/// Text of the requirement that no finding gets worse.
const NO_FINDING_WORSE: &str = "no finding worse";
/// Text of the requirement that no finding falls short.
const NO_FINDING_SHORT: &str = "no finding short";

impl Requirement {
    /// Reads `1.2 Hz <= front.natural_frequency <= 1.4 Hz`, `cost <= 7000`, `mass <= 60 kg`, `margins >= 1.3`,
    /// `front.coil_bind.verdict = meets`, `no finding worse`, `no finding short`.
    pub fn parse(text: &str) -> Result<Requirement> {
        let wrong = |message: &str| refusal(text, message.to_owned());
        if text.chars().nth(LONGEST).is_some() {
            return Err(wrong(&format!(
                "more than {LONGEST} characters are no requirement; write it like `x <= 1.4 Hz`"
            )));
        }
        if text.split_whitespace().eq(NO_FINDING_WORSE.split(' ')) {
            return Ok(Requirement::no_finding_worse());
        }
        if text.split_whitespace().eq(NO_FINDING_SHORT.split(' ')) {
            return Ok(Requirement::no_finding_short());
        }
        if let Some((output, word)) = text.split_once('=').filter(|(left, _)| !left.ends_with(['<', '>'])) {
            let (output, word) = (output.trim(), word.trim());
            let finding = output.strip_suffix(".verdict").and_then(|path| Graph::get().finding(path));
            let verdict = [Verdict::Meets, Verdict::Tight].into_iter().find(|verdict| verdict.word() == word);
            let (Some(_), Some(verdict)) = (finding, verdict) else {
                let message = match Graph::get().finding(output) {
                    Some(_) => format!("write `{output}.verdict = meets`, or `= tight` for no worse than that"),
                    None => "`=` is for the verdict of one finding, `meets` or `tight`; write a number as a limit or a band: `1.2 Hz <= x <= 1.4 Hz`".to_owned(),
                };
                return Err(wrong(&message));
            };
            return Ok(Requirement {
                text: text.to_owned(),
                test: Test::Verdict { output: output.to_owned(), verdict },
            });
        }
        let turned = text.contains(">=");
        if turned && text.contains("<=") {
            return Err(wrong("write a band in one direction: `1.2 Hz <= x <= 1.4 Hz`"));
        }
        let mut terms: Vec<&str> = text.split(if turned { ">=" } else { "<=" }).map(str::trim).collect();
        if turned {
            terms.reverse();
        }
        let is_output = |term: &str| term.starts_with(|c: char| c.is_ascii_lowercase());
        let (low, output, high) = match terms[..] {
            [low, output, high] if is_output(output) => (Some(low), output, Some(high)),
            [output, high] if is_output(output) => (None, output, Some(high)),
            [low, output] if is_output(output) => (Some(low), output, None),
            _ => return Err(wrong("write `x <= 1.4 Hz`, `x >= 1.2 Hz` or `1.2 Hz <= x <= 1.4 Hz`")),
        };
        let test = match output {
            "cost" | "mass" | "margins" => {
                let read = |term: &str| match output {
                    "cost" => {
                        let cost = term.replace(',', "").parse::<f64>().ok().filter(|cost| cost.is_finite());
                        cost.ok_or_else(|| wrong("a cost is a number"))
                    }
                    "mass" => value_as(term, Mass::KIND),
                    _ => value_as(term, Ratio::KIND),
                };
                match (output, low, high) {
                    ("cost", None, Some(most)) => Test::Cost { most: read(most)? },
                    ("mass", None, Some(most)) => Test::Mass { most: read(most)? },
                    ("margins", Some(least), None) => Test::Margins { least: read(least)? },
                    _ => return Err(wrong("write `cost <= 7000`, `mass <= 60 kg` or `margins >= 1.3`")),
                }
            }
            path => {
                let kind = kind_of(path)?;
                let read = |term: Option<&str>, open: f64| term.map_or(Ok(open), |term| value_as(term, kind));
                let (low, high) = (read(low, f64::NEG_INFINITY)?, read(high, f64::INFINITY)?);
                Test::Between { output: path.to_owned(), kind, low, high }
            }
        };
        Ok(Requirement { text: text.to_owned(), test })
    }

    /// No finding has a worse verdict than on the sheet as it is: [`is_worse`](Requirement::is_worse) says what is worse.
    pub fn no_finding_worse() -> Requirement {
        Requirement { text: NO_FINDING_WORSE.to_owned(), test: Test::NoWorse }
    }

    /// No finding is short that is not short on the sheet as it is. One that the parts leave unknown is told among those that are worse, and excludes
    /// no part.
    pub fn no_finding_short() -> Requirement {
        Requirement { text: NO_FINDING_SHORT.to_owned(), test: Test::NoShort }
    }

    /// Whether a verdict is worse than another one. From good to bad: meets and does not apply, tight, not known, short.
    pub fn is_worse(then: Verdict, now: Verdict) -> bool {
        rank(then) > rank(now)
    }

    /// As it was written.
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// Place of a verdict from good to bad.
pub(super) fn rank(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Meets | Verdict::DoesNotApply => 0,
        Verdict::Tight => 1,
        Verdict::NotKnown => 2,
        Verdict::Short => 3,
    }
}

/// Verdict of a number in a column of verdicts.
pub(super) fn verdict_of(number: f64) -> Option<Verdict> {
    Verdict::ALL.get(number as usize).copied().filter(|_| number >= 0.0)
}
