//! Price lists: the examples damaged, and lists of random parts; each is chosen from, also in another order.

use super::documents::damaged;
use super::requirements::{composed, outputs};
use super::sheets::examples;
use super::{Attack, Calls, Case, Tally};
use crate::catalogue::Random;
use crate::offers::exact_dunlin;
use crate::sheets::{text, writable};
use axlewright::base::section::Line;
use axlewright::sheet::{Choice, Chosen, PriceList, Requirement, Sheet, choose};
use std::collections::BTreeSet;

/// Most combinations that are listed; lists with more are not compared one by one.
const LISTED: usize = 3000;

pub fn attack(of: &Attack, lists: u64) -> Tally {
    let (texts, lines, outputs) = (examples("csv"), writable(), outputs());
    let sheet = exact_dunlin().unwrap();
    of.run("lists", lists, |_, random| {
        let mut calls = Calls::default();
        let csv = match random.below(3) {
            0 => made(&lines, random),
            1 => some_rows(random.of_these::<String>(&texts), random),
            _ => damaged(&some_rows(random.of_these::<String>(&texts), random), random),
        };
        let Some(list) = calls.count(PriceList::from_csv(&csv))? else { return Ok(calls) };
        let requirements: Vec<Requirement> = (0..random.below(4))
            .filter_map(|_| Requirement::parse(&composed(&outputs, random)).ok())
            .collect();
        chosen(&sheet, list, &requirements, calls, random)
            .map_err(|why| format!("{why}; requirements {requirements:?}; list {csv}"))
    })
}

/// Some of the rows of a list, in their order.
fn some_rows(text: &str, random: &mut Random) -> String {
    let keep = random.share();
    let rows = text.lines().enumerate().filter(|(at, _)| *at == 0 || random.share() < keep);
    rows.map(|(_, row)| row).collect::<Vec<_>>().join("\n")
}

/// A list of random parts: a few kinds, each with a few lines of the sheet.
fn made(lines: &[(String, &'static Line)], random: &mut Random) -> String {
    let heads: Vec<(String, &Line)> =
        (0..1 + random.below(4)).map(|_| random.of_these(lines).clone()).collect();
    let names: Vec<&str> = heads.iter().map(|(path, _)| path.as_str()).collect();
    let mut csv = format!("part,kind,cost,mass,{}\n", names.join(","));
    for part in 0..1 + random.below(12) {
        let place = random.below(heads.len());
        let cost = random.of_these(&["10", "10.10", "0", "1e12", "-1", "NaN", "0.1", "1e-7", "999999.99"]);
        let cell = |at: usize, random: &mut Random| match (at == place, random.once_in(40)) {
            (true, _) => text(heads[at].1, random),
            (false, true) => "none".to_owned(),
            _ => String::new(),
        };
        let cells: Vec<String> = (0..heads.len()).map(|at| cell(at, random)).collect();
        csv.push_str(&format!("p{part},k{place},{cost},{} kg,{}\n", random.below(50), cells.join(",")));
    }
    csv
}

fn chosen(
    sheet: &Sheet,
    mut list: PriceList,
    requirements: &[Requirement],
    mut calls: Calls,
    random: &mut Random,
) -> Case {
    let ask = |list: &PriceList| choose(sheet, list, requirements, LISTED, &mut |_| true);
    let first = calls.count(ask(&list))?.map(|found| said(&found, &list));
    if let Some(found) = &first {
        found
            .1
            .iter()
            .try_for_each(|cost| if cost.is_finite() { Ok(()) } else { Err(format!("cost {cost}")) })?;
    }
    random.shuffle(&mut list.parts);
    let other = calls.count(ask(&list))?.map(|found| said(&found, &list));
    if first == other { Ok(calls) } else { Err(format!("chosen {first:?}, in another order {other:?}")) }
}

/// What a choice says, whatever the order of the list: the parts of each combination, costs and masses of the best, the parts that are rejected.
type Said = (BTreeSet<Vec<String>>, Vec<f64>, BTreeSet<String>, BTreeSet<String>);

fn said(of: &Chosen, list: &PriceList) -> Said {
    let part = |place: &usize| format!("{} {}", list.parts[*place].kind, list.parts[*place].part);
    let combination = |choice: &Choice| {
        let mut parts: Vec<String> = choice.parts.iter().map(part).collect();
        parts.sort();
        parts
    };
    // Beyond the listed ones, which combinations are listed depends on the order.
    let feasible = if of.more { BTreeSet::new() } else { of.feasible.iter().map(combination).collect() };
    let best = of.cheapest.iter().chain(&of.lightest).chain(&of.front);
    let numbers = best.flat_map(|choice| [choice.cost, choice.mass.si()]).collect();
    let rejected = of.rejected.iter().map(|(place, _)| part(place)).collect();
    (feasible, numbers, rejected, of.kinds.iter().cloned().collect())
}
