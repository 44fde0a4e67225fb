//! A seeded, bounded attack on the whole library. The targets come from the lists that the core and the generator keep, so that a new function,
//! model, line or example is attacked too.
//!
//! Each case has random numbers of its own, from the seed, the target and the number of the case. A finding names that number:
//! `cargo run -p axlewright-tests --bin attack -- sheets 1 --seed 7 --from 123` runs that case alone.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

mod documents;
mod drawings;
mod functions;
pub mod models;
mod numbers;
mod price_lists;
mod requirements;
mod sheets;
mod texts;

use crate::catalogue::Random;
use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Mutex;

/// Every target: its name, what its count counts, and its attack.
pub const TARGETS: [Target; 7] = [
    Target { name: "functions", counts: "calls", run: functions::attack },
    Target { name: "models", counts: "calls a model", run: models::attack },
    Target { name: "sheets", counts: "sheets", run: sheets::attack },
    Target { name: "lists", counts: "price lists", run: price_lists::attack },
    Target { name: "requirements", counts: "requirements", run: requirements::attack },
    Target { name: "drawings", counts: "drawings a linkage", run: drawings::attack },
    Target { name: "texts", counts: "texts", run: texts::attack },
];

/// One kind of target.
#[derive(Debug)]
pub struct Target {
    /// Its name.
    pub name: &'static str,
    /// What is counted.
    pub counts: &'static str,
    /// The attack, so many times.
    pub run: fn(&Attack, u64) -> Tally,
}

/// Where the random numbers come from.
#[derive(Debug, Clone, Copy)]
pub struct Attack {
    /// The seed.
    pub seed: u64,
    /// Number of the first case.
    pub from: u64,
}

/// Calls of one case that were answered and refused; or the invariant that failed.
pub type Case = Result<Calls, String>;

/// Calls and how they ended.
#[derive(Debug, Default, Clone, Copy)]
pub struct Calls {
    /// Answered calls.
    pub answered: u64,
    /// Refused calls.
    pub refused: u64,
}

impl Calls {
    /// Counts an answer, and gives the result that there is.
    fn count<T>(&mut self, answer: axlewright::Result<T>) -> Result<Option<T>, String> {
        match answer {
            Ok(found) => {
                self.answered += 1;
                Ok(Some(found))
            }
            Err(error) => {
                self.refused += 1;
                let sentence = error.to_string();
                let fair = !sentence.trim().is_empty() && sentence.len() < LONGEST_SENTENCE;
                if fair { Ok(None) } else { Err(format!("a refusal of {} bytes", sentence.len())) }
            }
        }
    }
}

/// Bytes of the longest refusal: 25 faults with a line of text each.
const LONGEST_SENTENCE: usize = 40_000;

/// Outcome of an attack.
#[derive(Debug, Default)]
pub struct Tally {
    /// Calls that were answered and refused.
    pub calls: Calls,
    /// Panics.
    pub crashes: u64,
    /// Cases in which an invariant failed.
    pub broken: u64,
    /// The first of each sort of crash and broken invariant.
    pub findings: Vec<String>,
}

/// Most findings that are kept.
const FINDINGS: usize = 40;

/// What the last panic said, and where.
static PANIC: Mutex<String> = Mutex::new(String::new());

impl Attack {
    /// Runs so many cases, each with its number.
    fn run(&self, target: &str, cases: u64, mut case: impl FnMut(u64, &mut Random) -> Case) -> Tally {
        let hook = std::panic::take_hook();
        std::panic::set_hook(Box::new(|panic| *PANIC.lock().unwrap() = panic.to_string()));
        let (root, mut tally) = (Random::of(&format!("{target} {}", self.seed)), Tally::default());
        let mut sorts = Vec::new();
        for number in self.from..self.from + cases {
            let outcome = catch_unwind(AssertUnwindSafe(|| case(number, &mut root.at(number))));
            let said = match outcome {
                Ok(Ok(calls)) => {
                    tally.calls.answered += calls.answered;
                    tally.calls.refused += calls.refused;
                    continue;
                }
                Ok(Err(why)) => {
                    tally.broken += 1;
                    why
                }
                Err(payload) => {
                    tally.crashes += 1;
                    format!("crash: {}", words(&payload))
                }
            };
            let sort: String = said.chars().filter(|c| !c.is_ascii_digit()).take(48).collect();
            if !sorts.contains(&sort) && sorts.len() < FINDINGS {
                sorts.push(sort);
                tally.findings.push(format!("case {number}: {said}"));
            }
        }
        std::panic::set_hook(hook);
        tally
    }
}

fn words(payload: &Box<dyn Any + Send>) -> String {
    let told = PANIC.lock().unwrap().clone();
    let said =
        payload.downcast_ref::<String>().map(String::as_str).or(payload.downcast_ref::<&str>().copied());
    if told.is_empty() { said.unwrap_or("no message").to_owned() } else { told.replace('\n', " ") }
}

impl Tally {
    /// A line for the table: calls, answered, refused, crashes, broken invariants and the first finding, with tabs between.
    pub fn line(&self) -> String {
        let Calls { answered, refused } = self.calls;
        let stopped = self.crashes + self.broken;
        let first = self.findings.first().map_or("none", String::as_str).replace(['\t', '\n', '|'], " ");
        let first: String = first.chars().take(160).collect();
        format!(
            "{}\t{answered}\t{refused}\t{}\t{}\t{first}",
            answered + refused + stopped,
            self.crashes,
            self.broken
        )
    }
}
