//! Parts of a price list that meet requirements: all combinations, the cheapest, the lightest, and the front between them.
//!
//! A requirement depends on a few kinds of part only: the graph of the sheet says on which. Each requirement is evaluated over those
//! kinds alone, single kinds first, and what fails is gone. The rest is bucket elimination (Dechter, Artificial Intelligence 113, 1999):
//! kinds are taken out one by one, each leaving what it costs and weighs at least for every choice of its neighbours. Nothing is
//! lost, and the work grows with the kinds that are bound to each other, not with the product of all.
#![expect(
    clippy::indexing_slicing,
    reason = "kinds, parts and requirements are numbered by their place in their own list"
)]

mod buckets;
mod reasons;
mod requirement;

pub use requirement::Requirement;

use super::applies::{Applies, Asked};
use super::contradiction::{doubted, may_doubt};
use super::dropped::{by_parts, paths};
use super::graph::{FindingInfo, Graph, MarginSlots, Slot};
use super::margin::graded;
use super::plan::Plan;
use super::what_if::{Axis, Progress, slots_of};
use super::{PriceList, Sheet, line_of};
use crate::base::table::Values;
use crate::base::text::shortened;
use crate::units::{Kind, Mass, Quantity, Ratio};
use crate::{Error, Result, Verdict, cannot};
use buckets::Point;
use requirement::{Test, rank, verdict_of};
use std::collections::{BTreeMap, BTreeSet};

/// One part of each kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Places in the price list, in the order of the kinds.
    pub parts: Vec<usize>,
    /// Cost of the parts together.
    pub cost: f64,
    /// Mass of the parts together.
    pub mass: Mass,
    /// Findings with a worse verdict than on the sheet as it is, in the order of the findings.
    pub worse: Vec<Worse>,
}

/// A finding that gets worse with other parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Worse {
    /// Its name.
    pub finding: &'static str,
    /// Verdict on the sheet as it is.
    pub now: Verdict,
    /// Verdict with the parts.
    pub then: Verdict,
}

impl Worse {
    /// It in words: `cap.holds: not known, meets now`.
    pub fn text(&self) -> String {
        format!("{}: {}, {} now", self.finding, self.then.word(), self.now.word())
    }
}

/// The possible choices.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Chosen {
    /// The kinds of part, in the order of the list.
    pub kinds: Vec<String>,
    /// Combinations that meet every requirement, in the order of the list, as many as were asked for.
    pub feasible: Vec<Choice>,
    /// True if there are more of them.
    pub more: bool,
    /// The cheapest; the lighter one of equals.
    pub cheapest: Option<Choice>,
    /// The lightest; the cheaper one of equals.
    pub lightest: Option<Choice>,
    /// Combinations to which no other is both cheaper and lighter, the cheapest first.
    pub front: Vec<Choice>,
    /// Parts that stand in no combination, and why.
    pub rejected: Vec<(usize, String)>,
    /// Requirements that bind nothing because what they ask of is not known, and what it needs.
    pub not_known: Vec<String>,
    /// Paths of written readings that count for no combination: each was taken on a part that is chosen anew.
    pub dropped: Vec<&'static str>,
    /// Number of evaluations of requirements.
    pub evaluated: usize,
}

/// Costs in millionths of the money of the list and masses in micrograms: whole numbers, whose sum is the same in any order and meets
/// a limit that is written in decimals.
fn whole(cost: f64, mass: f64) -> (i128, i128) {
    ((cost * 1e6).round() as i128, (mass * 1e9).round() as i128)
}

/// Cost and mass as numbers.
fn plain((cost, mass): (i128, i128)) -> (f64, Mass) {
    (cost as f64 / 1e6, Mass::from_si(mass as f64 / 1e9))
}

/// Largest cost and mass of one part, in kilograms.
const MOST_COST: f64 = 1e12;
const MOST_MASS: f64 = 1e6;

/// Combinations whose findings are compared at once.
const COMPARED: usize = 4096;

/// Rows of one requirement that are still evaluated; combinations of a few kinds that are still compared by cost and mass.
const MOST_ROWS: usize = 20_000_000;

/// Most combinations that a choice lists, and that its front holds.
pub const MOST_CHOICES: usize = 1_000_000;

/// One requirement on one output, and the kinds on which it depends.
struct Bound {
    requirement: usize,
    output: String,
    kind: Option<&'static Kind>,
    low: f64,
    high: f64,
    /// Verdict on the sheet as it is and the worst that is allowed, if it is held against the sheet as it is.
    now: Option<(Verdict, Verdict)>,
    kinds: Vec<usize>,
}

impl Bound {
    fn holds(&self, value: f64) -> bool {
        match self.now {
            Some((_, worst)) => verdict_of(value).is_some_and(|then| !Requirement::is_worse(then, worst)),
            None => value >= self.low && value <= self.high,
        }
    }
}

/// Allowed combinations of a few kinds.
struct Factor {
    kinds: Vec<usize>,
    allowed: BTreeSet<Vec<usize>>,
}

/// Parts of the list that meet every requirement on a sheet. Lists at most `limit` combinations; if it would be more than
/// [`MOST_CHOICES`], it is refused.
pub fn choose(
    sheet: &Sheet,
    list: &PriceList,
    requirements: &[Requirement],
    limit: usize,
    progress: Progress<'_>,
) -> Result<Chosen> {
    let unweighed = list.parts.iter().all(|part| part.mass.si() == 0.0);
    if let Some(by_mass) =
        requirements.iter().find(|of| matches!(of.test, Test::Mass { .. })).filter(|_| unweighed)
    {
        return Err(cannot!("`{}` cannot be decided: no part of the list has a mass", by_mass.text()));
    }
    let mut chooser = Chooser::new(sheet, list)?;
    chooser.bind(requirements)?;
    if !chooser.prune(requirements, progress)? {
        return Err(cannot!("choosing was stopped"));
    }
    let mut most = (f64::INFINITY, f64::INFINITY);
    for requirement in requirements {
        match requirement.test {
            Test::Cost { most: cost } => most.0 = f64::min(most.0, cost),
            Test::Mass { most: mass } => most.1 = f64::min(most.1, mass),
            _ => {}
        }
    }
    let mut chosen = chooser.finish(requirements, whole(most.0, most.1), limit)?;
    if !chooser.compare(&mut chosen, progress)? {
        return Err(cannot!("choosing was stopped"));
    }
    Ok(chosen)
}

struct Chooser<'a> {
    /// The sheet without the readings of parts that are chosen.
    sheet: Sheet,
    /// Verdict of each finding on the sheet as it is.
    now: Vec<Verdict>,
    dropped: Vec<&'static str>,
    list: &'a PriceList,
    kinds: Vec<String>,
    /// Places in the list of the parts of each kind.
    parts: Vec<Vec<usize>>,
    /// Lines that the parts of each kind write.
    lines: Vec<Vec<String>>,
    bounds: Vec<Bound>,
    /// Remaining parts of each kind.
    left: Vec<Vec<usize>>,
    factors: Vec<Factor>,
    why: BTreeMap<usize, String>,
    not_known: Vec<String>,
    evaluated: usize,
}

impl<'a> Chooser<'a> {
    fn new(sheet: &Sheet, list: &'a PriceList) -> Result<Chooser<'a>> {
        let mut kinds: Vec<String> = Vec::new();
        let mut parts: Vec<Vec<usize>> = Vec::new();
        for (place, candidate) in list.parts.iter().enumerate() {
            for (what, value, most) in
                [("cost", candidate.cost, MOST_COST), ("mass", candidate.mass.si(), MOST_MASS)]
            {
                if !(0.0..=most).contains(&value) {
                    let unit = if what == "mass" { " kg" } else { "" };
                    let message = format!(
                        "{value}{unit} of `{}` is outside its range; valid: 0{unit} to {most}{unit}",
                        shortened(&candidate.part)
                    );
                    return Err(Error::document(what, message));
                }
            }
            match kinds.iter().position(|kind| *kind == candidate.kind) {
                Some(kind) => parts[kind].push(place),
                None => {
                    kinds.push(candidate.kind.clone());
                    parts.push(vec![place]);
                }
            }
        }
        let mut lines: Vec<Vec<String>> = Vec::new();
        for (kind, places) in parts.iter().enumerate() {
            let of = |place: usize| {
                list.parts[place].lines.iter().map(|(path, _)| path.clone()).collect::<BTreeSet<_>>()
            };
            let first = of(places[0]);
            for place in places {
                if let Some(path) = of(*place).symmetric_difference(&first).next() {
                    let message = format!(
                        "all parts of the kind `{}` write this line, or none: compare `{}` with the others",
                        shortened(&kinds[kind]),
                        shortened(&list.parts[*place].part)
                    );
                    return Err(Error::document(path, message));
                }
            }
            if let Some((path, other)) = first.iter().find_map(|path| {
                lines.iter().position(|known: &Vec<String>| known.contains(path)).map(|other| (path, other))
            }) {
                let [one, two] = [other, kind].map(|kind| shortened(&kinds[kind]));
                let message = format!("two kinds write this line: `{one}` and `{two}`");
                return Err(Error::document(path, message));
            }
            lines.push(first.into_iter().collect());
        }
        let left = parts.clone();
        let slots: Vec<Slot> = lines.iter().flatten().map(|path| line_of(path)).collect::<Result<_>>()?;
        let dropped = by_parts(sheet, &slots);
        Ok(Chooser {
            sheet: sheet.without(&dropped),
            now: sheet.assess().answers().iter().map(|answer| answer.verdict).collect(),
            dropped: paths(&dropped),
            list,
            kinds,
            parts,
            lines,
            bounds: vec![],
            left,
            factors: vec![],
            why: BTreeMap::new(),
            not_known: vec![],
            evaluated: 0,
        })
    }

    /// The requirements as bounds on single outputs, each with the kinds on which it depends.
    fn bind(&mut self, requirements: &[Requirement]) -> Result<()> {
        let graph = Graph::get();
        let mut wanted: Vec<(usize, String, Option<&'static Kind>, f64, f64)> = Vec::new();
        let mut none_worse: Vec<(usize, &'static FindingInfo, (Verdict, Verdict))> = Vec::new();
        for (number, requirement) in requirements.iter().enumerate() {
            match &requirement.test {
                Test::Cost { .. } | Test::Mass { .. } => {}
                Test::Margins { least } => {
                    for finding in &graph.findings {
                        if matches!(finding.margin, MarginSlots::Ratio { .. }) {
                            let output = format!("{}.margin", finding.path);
                            wanted.push((number, output, Some(Ratio::KIND), *least, f64::INFINITY));
                        }
                    }
                }
                Test::Between { output, kind, low, high } => {
                    wanted.push((number, output.clone(), Some(kind), *low, *high));
                }
                Test::Verdict { output, verdict } => {
                    // Verdicts are numbered in their order: meets, tight, short, not known.
                    wanted.push((number, output.clone(), None, 0.0, f64::from(*verdict as u8)));
                }
                Test::NoWorse | Test::NoShort => {
                    // What is as bad as can be gets no worse.
                    let asked = graph.findings.iter().zip(&self.now);
                    let asked = asked.filter(|(_, now)| rank(**now) < rank(Verdict::Short));
                    let worst = |now: Verdict| match requirement.test {
                        Test::NoShort => Verdict::NotKnown,
                        _ => now,
                    };
                    none_worse.extend(asked.map(|(finding, now)| (number, finding, (*now, worst(*now)))));
                }
            }
        }
        let slots: Vec<Vec<Slot>> = self
            .lines
            .iter()
            .map(|paths| paths.iter().map(|path| line_of(path)).collect())
            .collect::<Result<_>>()?;
        let changes = |slot| slots.iter().any(|slots| slots.contains(&slot));
        // A verdict rests also on what may bring its lines into doubt.
        let together = may_doubt(&self.sheet, changes);
        let doubted_with = |reached: Vec<Slot>| -> Vec<Slot> {
            let doubts = together.iter().filter(|lines| lines.iter().any(|slot| reached.contains(slot)));
            let doubts: Vec<Slot> = doubts.flatten().copied().collect();
            reached.into_iter().chain(doubts).collect()
        };
        for (requirement, output, kind, low, high) in wanted {
            let (asked, finding) = slots_of(&output)?;
            let choices = || finding.into_iter().flat_map(FindingInfo::choices);
            let plan = Plan::new(&self.sheet, changes, asked.iter().copied().chain(choices()));
            if let Some(by) = finding.and_then(|finding| self.does_not_apply(&plan, finding, changes)) {
                if !matches!(requirements[requirement].test, Test::Margins { .. }) {
                    return Err(cannot!(
                        "`{}` does not apply, because the sheet says so ({}): take the requirement out",
                        requirements[requirement].text(),
                        by.join(", ")
                    ));
                }
                continue;
            }
            if let Some(slot) = asked.iter().find(|slot| !plan.is_known(**slot)) {
                let needs = plan.lacks(&self.sheet, changes, *slot);
                let needs: Vec<&str> = needs.into_iter().map(|slot| graph.info(slot).path).collect();
                self.not_known.push(format!("{output} needs {}", needs.join(", ")));
                if !matches!(requirements[requirement].test, Test::Margins { .. }) {
                    return Err(cannot!(
                        "`{}` cannot be decided: it needs {}",
                        requirements[requirement].text(),
                        needs.join(", ")
                    ));
                }
                continue;
            }
            let asked: Vec<Slot> = asked.into_iter().chain(choices()).collect();
            let mut reached = plan.rests_on(&asked);
            if kind.is_none() {
                reached = doubted_with(reached);
            }
            let kinds = (0..slots.len())
                .filter(|kind| slots[*kind].iter().any(|slot| reached.contains(slot)))
                .collect();
            self.bounds.push(Bound { requirement, output, kind, low, high, now: None, kinds });
        }
        for (requirement, finding, now) in none_worse {
            let output = format!("{}.verdict", finding.path);
            let asked: Vec<Slot> = slots_of(&output)?.0.into_iter().chain(finding.choices()).collect();
            let plan = Plan::new(&self.sheet, changes, asked.iter().copied());
            let reached = doubted_with(plan.rests_on(&asked));
            let kinds: Vec<usize> = (0..slots.len())
                .filter(|kind| slots[*kind].iter().any(|slot| reached.contains(slot)))
                .collect();
            if kinds.is_empty() && self.dropped.is_empty() {
                continue;
            }
            self.bounds.push(Bound {
                requirement,
                output,
                kind: None,
                low: f64::NAN,
                high: f64::NAN,
                now: Some(now),
                kinds,
            });
        }
        Ok(())
    }

    /// Reason why a finding does not apply, for any choice of parts.
    fn does_not_apply(
        &self,
        plan: &Plan,
        finding: &'static FindingInfo,
        changes: impl Fn(Slot) -> bool,
    ) -> Option<Vec<&'static str>> {
        let choices: Vec<Slot> = finding.choices().collect();
        if plan.rests_on(&choices).into_iter().any(&changes) {
            return None;
        }
        let mut values = plan.start(&self.sheet);
        plan.run(&self.sheet, &mut values, &mut Vec::new());
        let applies = Applies::new(&self.sheet, finding, changes);
        let doubted = doubted(&self.sheet).1;
        let value = |slot: Slot| values[usize::from(slot)];
        match applies.asked(value, |slot| doubted.contains(&slot)).beside(graded(finding, value)) {
            Asked::No(by) => Some(by),
            _ => None,
        }
    }

    /// Evaluates the bounds over the kinds on which they depend, the fewest first. Nothing where it was stopped.
    fn prune(&mut self, requirements: &[Requirement], progress: Progress<'_>) -> Result<bool> {
        let mut groups: BTreeMap<(usize, Vec<usize>), Vec<usize>> = BTreeMap::new();
        for (place, bound) in self.bounds.iter().enumerate() {
            groups.entry((bound.kinds.len(), bound.kinds.clone())).or_default().push(place);
        }
        for ((_, kinds), bounds) in groups {
            let rows = kinds.iter().try_fold(1_usize, |rows, kind| rows.checked_mul(self.left[*kind].len()));
            let Some(rows) = rows.filter(|rows| *rows <= MOST_ROWS) else {
                let names: Vec<String> = kinds.iter().map(|kind| shortened(&self.kinds[*kind])).collect();
                let texts: Vec<&str> =
                    bounds.iter().map(|b| requirements[self.bounds[*b].requirement].text()).collect();
                return Err(cannot!(
                    "`{}` ties more than {MOST_ROWS} combinations of {} together: shorten the list, or require more of single parts",
                    texts.first().unwrap_or(&""),
                    names.join(", ")
                ));
            };
            self.evaluated += rows * bounds.len();
            let outputs: Vec<&str> = bounds.iter().map(|bound| self.bounds[*bound].output.as_str()).collect();
            let axes: Vec<Axis> = kinds.iter().map(|kind| self.axis(*kind)).collect::<Result<_>>()?;
            let what_if = self.sheet.what_if(axes, false, &outputs)?;
            let mut told = |done: usize| progress(done);
            let Some(table) = what_if.table(0..rows, None, &mut told)? else { return Ok(false) };
            let values = |bound: usize, row: usize| -> f64 {
                match table.column(&self.bounds[bound].output).map(|column| &column.values) {
                    Some(Values::F64(values)) => values[row],
                    Some(Values::Category { codes, .. }) => f64::from(codes[row]),
                    _ => f64::NAN,
                }
            };
            let fails = |row: usize| {
                bounds.iter().copied().find(|bound| !self.bounds[*bound].holds(values(*bound, row)))
            };
            let choice = |row: usize| {
                let mut rest = row;
                let mut parts = vec![0; kinds.len()];
                for (place, kind) in kinds.iter().enumerate().rev() {
                    let of = &self.left[*kind];
                    parts[place] = of[rest % of.len()];
                    rest /= of.len();
                }
                parts
            };
            if let [kind] = kinds[..] {
                let mut kept = Vec::new();
                for row in 0..rows {
                    let part = self.left[kind][row];
                    match fails(row) {
                        None => kept.push(part),
                        Some(bound) => {
                            let reason = table.reason(row).map(ToString::to_string);
                            let why = self.why_not(bound, values(bound, row), reason, requirements);
                            self.why.entry(part).or_insert(why);
                        }
                    }
                }
                self.left[kind] = kept;
            } else if kinds.is_empty() {
                if rows > 0
                    && let Some(bound) = fails(0)
                {
                    let why = self.why_not(bound, values(bound, 0), None, requirements);
                    let output = self.bounds[bound].output.as_str();
                    let needs = what_if.not_known().iter().find(|(name, _)| name == output);
                    let needs = needs.map_or(String::new(), |(_, needs)| {
                        format!(" It {}.", needs.replace("; needs ", ", "))
                    });
                    let held = match self.bounds[bound].now {
                        Some((_, Verdict::NotKnown)) | None => {
                            "Require less of it, or take it out of the requirements"
                        }
                        Some(_) => {
                            "Write that for the new parts, or require `no finding short`, which lets a finding be not known"
                        }
                    };
                    let dropped = match self.dropped.is_empty() {
                        true => String::new(),
                        false => " Readings of the parts that are replaced count no more.".to_owned(),
                    };
                    return Err(cannot!("no part of the list can mend this: {why}.{dropped}{needs} {held}."));
                }
            } else {
                let allowed: BTreeSet<Vec<usize>> =
                    (0..rows).filter(|row| fails(*row).is_none()).map(choice).collect();
                // A part that stands in none of them fails by this requirement, in its best company.
                for (place, kind) in kinds.iter().enumerate() {
                    let standing: BTreeSet<usize> = allowed.iter().map(|parts| parts[place]).collect();
                    for part in self.left[*kind].iter().filter(|part| !standing.contains(part)) {
                        let best = (0..rows)
                            .filter(|row| choice(*row)[place] == *part)
                            .filter_map(|row| {
                                Some((self.distance(fails(row)?, values(fails(row)?, row)), row))
                            })
                            .min_by(|a, b| a.0.total_cmp(&b.0));
                        if let Some((_, row)) = best
                            && let Some(bound) = fails(row)
                        {
                            let reason = table.reason(row).map(ToString::to_string);
                            let why = self.why_not(bound, values(bound, row), reason, requirements);
                            self.why.entry(*part).or_insert(format!("with every other part; at best: {why}"));
                        }
                    }
                }
                self.factors.push(Factor { kinds, allowed });
            }
        }
        Ok(true)
    }

    fn axis(&self, kind: usize) -> Result<Axis> {
        let paths: Vec<&str> = self.lines[kind].iter().map(String::as_str).collect();
        let rows: Vec<Vec<&str>> = self.left[kind]
            .iter()
            .map(|part| {
                let lines = &self.list.parts[*part].lines;
                let text = |path: &&str| {
                    lines.iter().find(|(known, _)| known == path).map_or("", |(_, text)| text.as_str())
                };
                paths.iter().map(text).collect()
            })
            .collect();
        Axis::entries(&paths, &rows)
    }

    fn weigh(&self, part: usize) -> (i128, i128) {
        let candidate = &self.list.parts[part];
        whole(candidate.cost, candidate.mass.si())
    }

    /// Says of each combination that is listed which findings are worse with it. Nothing where it was stopped.
    fn compare(&self, chosen: &mut Chosen, progress: Progress<'_>) -> Result<bool> {
        let graph = Graph::get();
        let findings: Vec<(&'static FindingInfo, Verdict)> = graph
            .findings
            .iter()
            .zip(self.now.iter().copied())
            .filter(|(_, now)| rank(*now) < rank(Verdict::Short))
            .collect();
        let outputs: Vec<String> =
            findings.iter().map(|(finding, _)| format!("{}.verdict", finding.path)).collect();
        let outputs: Vec<&str> = outputs.iter().map(String::as_str).collect();
        // The places of a list are written in order, also where they belong to different kinds.
        let mut lines: Vec<(Slot, usize, &str)> = Vec::new();
        for (kind, paths) in self.lines.iter().enumerate() {
            for path in paths {
                lines.push((line_of(path)?, kind, path));
            }
        }
        lines.sort_unstable();
        let paths: Vec<&str> = lines.iter().map(|(.., path)| *path).collect();
        if paths.is_empty() || outputs.is_empty() {
            return Ok(true);
        }
        let listed = chosen.front.iter().chain(&chosen.feasible).map(|choice| choice.parts.clone());
        let listed: Vec<Vec<usize>> = listed.collect::<BTreeSet<_>>().into_iter().collect();
        let mut worse: BTreeMap<&[usize], Vec<Worse>> = BTreeMap::new();
        for listed in listed.chunks(COMPARED) {
            let texts = |parts: &Vec<usize>| -> Vec<&str> {
                let of = |(_, kind, path): &(Slot, usize, &str)| {
                    let written = &self.list.parts[parts[*kind]].lines;
                    written.iter().find(|(known, _)| known == path).map_or("", |(_, text)| text.as_str())
                };
                lines.iter().map(of).collect()
            };
            let rows: Vec<Vec<&str>> = listed.iter().map(texts).collect();
            let what_if = self.sheet.what_if(vec![Axis::entries(&paths, &rows)?], false, &outputs)?;
            let mut told = |done: usize| progress(done);
            let Some(table) = what_if.table(0..rows.len(), None, &mut told)? else { return Ok(false) };
            for (row, parts) in listed.iter().enumerate() {
                let found = findings.iter().zip(&outputs).filter_map(|((finding, now), output)| {
                    let Values::Category { codes, .. } = &table.column(output)?.values else { return None };
                    let then = verdict_of(f64::from(*codes.get(row)?))?;
                    let is_worse = Requirement::is_worse(then, *now);
                    is_worse.then_some(Worse { finding: finding.path, now: *now, then })
                });
                worse.insert(parts, found.collect());
            }
        }
        let all = chosen.front.iter_mut().chain(&mut chosen.feasible);
        for choice in all.chain(&mut chosen.cheapest).chain(&mut chosen.lightest) {
            choice.worse = worse.get(&choice.parts[..]).cloned().unwrap_or_default();
        }
        Ok(true)
    }

    fn finish(&mut self, requirements: &[Requirement], most: (i128, i128), limit: usize) -> Result<Chosen> {
        let buckets = self.eliminate(&self.left)?;
        let mut chosen = Chosen { kinds: self.kinds.clone(), evaluated: self.evaluated, ..Chosen::default() };
        chosen.not_known = std::mem::take(&mut self.not_known);
        chosen.dropped = std::mem::take(&mut self.dropped);
        let whole = buckets.whole()?;
        let fits = |point: &&Point| point.cost <= most.0 && point.mass <= most.1;
        chosen.front = whole.iter().filter(fits).map(|point| self.choice(point)).collect();
        chosen.cheapest = chosen.front.first().cloned();
        chosen.lightest = chosen.front.last().cloned();
        buckets.list(self, most, limit, &mut chosen)?;
        // A part stands in a combination if one is left when it alone stands for its kind.
        for (kind, parts) in self.parts.iter().enumerate() {
            for part in parts {
                let why = if !self.left[kind].contains(part) {
                    self.why.get(part).cloned()
                } else {
                    let mut left = self.left.clone();
                    left[kind] = vec![*part];
                    let whole = self.eliminate(&left)?.whole()?;
                    let cheapest = whole.first();
                    match cheapest {
                        Some(_) if whole.iter().any(|point| fits(&point)) => None,
                        Some(point) => Some(self.too_much(point, whole.last(), most, requirements)),
                        None => Some(self.why.get(part).cloned().unwrap_or_else(|| {
                            "each requirement is met in some combination with it, but all of them in none"
                                .to_owned()
                        })),
                    }
                };
                if let Some(why) = why {
                    chosen.rejected.push((*part, why));
                }
            }
        }
        Ok(chosen)
    }

    fn choice(&self, point: &Point) -> Choice {
        self.choice_of(&point.parts)
    }

    /// A combination, in the order of the kinds.
    fn choice_of(&self, parts: &[(usize, usize)]) -> Choice {
        let mut sorted = parts.to_vec();
        sorted.sort_unstable();
        let parts: Vec<usize> = sorted.into_iter().map(|(_, part)| part).collect();
        let (cost, mass) = plain(self.sum(&parts));
        Choice { parts, cost, mass, worse: vec![] }
    }

    fn sum(&self, parts: &[usize]) -> (i128, i128) {
        parts.iter().map(|part| self.weigh(*part)).fold((0, 0), |a, b| (a.0 + b.0, a.1 + b.1))
    }
}
