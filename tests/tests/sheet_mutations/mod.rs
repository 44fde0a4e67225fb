//! Ten thousand seeded mutations of documents. Each carries the oracle of what was done to it: what breaks a document is refused at its
//! line, by its key and, for a slip of the pen, with the nearest key; what does not break it changes no bit of the assessment. Nothing panics.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

mod breaking;
mod case;
mod harmless;
mod judge;

use self::breaking::BREAKING;
use self::case::{Case, Oracle};
use self::harmless::HARMLESS;
use self::judge::{bits, judged};
use axlewright::base::section::Line;
use axlewright::sheet::Sheet;
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{DUNLIN, writable};
use std::collections::BTreeMap;

const MUTATIONS: usize = 10_000;

#[test]
fn a_breaking_mutation_is_refused_at_its_line_and_a_harmless_one_changes_nothing() {
    let mut whole = Sheet::from_text(DUNLIN).unwrap();
    // An assessment is the quicker the fewer tolerances there are: a few will do.
    for path in whole.paths().skip(8).collect::<Vec<_>>() {
        let text = whole.get(path).unwrap().unwrap();
        if !path.starts_with("rear.") {
            whole.set(path, text.split(" +/- ").next().unwrap()).unwrap();
        }
    }
    let all: BTreeMap<String, &'static Line> = writable().into_iter().collect();
    let lines: Vec<(String, String, &'static Line)> =
        whole.paths().map(|path| (path.to_owned(), whole.get(path).unwrap().unwrap(), all[path])).collect();
    let mut random = Random::of("mutations");
    let mut counts: BTreeMap<(bool, &str), usize> = BTreeMap::new();
    let (mut done, mut wrong) = (0, Vec::new());
    let of_whole = bits(&whole.assess());
    while done < MUTATIONS {
        // Some sheets are shorter than the whole one; the places of a list stay.
        let keep = *random.of_these(&[1, 3, 10]);
        let mut short = lines.clone();
        short.retain(|(path, _, _)| path.contains('[') || keep == 1 || !random.once_in(keep));
        random.shuffle(&mut short);
        short.sort_by_key(|(path, _, _)| {
            path.contains('[').then(|| lines.iter().position(|(known, _, _)| known == path))
        });
        let json = random.once_in(2);
        let mut case = Case { random: &mut random, json, lines: short };
        let (what, mutated) = if case.random.once_in(8) {
            let what = *case.random.of_these(&HARMLESS);
            (what, case.harmless(what))
        } else if case.random.once_in(40) {
            ("no table", case.breaking("no table"))
        } else {
            let what = *case.random.of_these(&BREAKING);
            (what, case.breaking(what))
        };
        let Some(mutated) = mutated else { continue };
        let expected = if case.lines.len() == lines.len() {
            of_whole.clone()
        } else if matches!(mutated.oracle, Oracle::Harmless) {
            let plain = Sheet::from_text(&case.write(&case.node()).text).unwrap();
            bits(&plain.assess())
        } else {
            vec![]
        };
        done += 1;
        *counts.entry((json, what)).or_default() += 1;
        if let Err(why) = judged(&mutated, &expected) {
            wrong.push((format!("{what}, {}: {why}", if json { "JSON" } else { "TOML" }), mutated.text));
        }
    }
    let format_only = ["comments", "all on one line", "keys with dots", "literal strings"];
    for what in BREAKING.iter().chain(&HARMLESS).chain(&["no table"]) {
        for json in [false, true] {
            let count = counts.get(&(json, what)).copied().unwrap_or(0);
            assert!(count >= 20 || format_only.contains(what), "{what} was done {count} times");
        }
    }
    let mut of_each: BTreeMap<String, usize> = BTreeMap::new();
    for (why, _) in &wrong {
        *of_each.entry(why.split(": ").next().unwrap().to_owned()).or_default() += 1;
    }
    let mut shown: Vec<&String> = wrong.iter().map(|(why, _)| why).collect();
    shown.sort();
    shown
        .dedup_by_key(|why| why.split(": ").take(2).collect::<String>().chars().take(60).collect::<String>());
    let shown: Vec<String> = shown.iter().take(60).map(|why| why.chars().take(300).collect()).collect();
    assert!(wrong.is_empty(), "{} of {done}: {of_each:#?}\n{}", wrong.len(), shown.join("\n"));
}
