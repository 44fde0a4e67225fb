//! Margins with every tolerance counted against the part.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it, or as the lines of a finding"
)]

use super::Sheet;
use super::graph::{FindingInfo, Graph, Slot};
use super::margin::{graded, margin, verdict};
use super::plan::{Plan, at};
use super::uncertainty::{Spread, changes, stretched, tolerances};
use crate::Verdict;
use std::collections::BTreeMap;

/// Margin with every tolerance counted against it, as it is gathered line by line.
#[derive(Debug, Clone)]
pub(super) struct Worst {
    margin: f64,
    loss: f64,
    /// Losses behind a greatest or least of several lines, by the one that is moved: one of them is taken, so that they do not add up.
    selected: BTreeMap<Selection, f64>,
    /// True if something is refused within a tolerance.
    refused: bool,
}

impl Worst {
    pub fn of(margin: f64) -> Worst {
        Worst { margin, loss: 0.0, selected: BTreeMap::new(), refused: false }
    }

    /// Counts a tolerance with these margins at its ends, behind this selection if behind one; tells which of them is worse, if one is.
    pub fn count(&mut self, [low, high]: [f64; 2], behind: Option<Selection>) -> Option<usize> {
        if low.is_nan() || high.is_nan() {
            self.refused = true;
            return None;
        }
        let loss = self.margin - low.min(high);
        // Also false where an infinite margin stays infinite.
        (loss > 0.0).then(|| {
            *behind.map_or(&mut self.loss, |behind| self.selected.entry(behind).or_default()) += loss;
            usize::from(high < low)
        })
    }

    /// All losses together: of a selection the greatest of those by each line that may be taken.
    fn losses(&self) -> f64 {
        let mut selected: BTreeMap<Slot, f64> = BTreeMap::new();
        for ((slot, _), loss) in &self.selected {
            let most = selected.entry(*slot).or_default();
            *most = most.max(*loss);
        }
        selected.values().fold(self.loss, |sum, loss| sum + loss)
    }

    /// The margin with all losses together, or at the [`corner`], if that is less; not a number where something is refused within a tolerance.
    pub fn margin(&self, corner: Option<f64>) -> f64 {
        let together = self.margin - self.losses();
        match corner {
            _ if self.refused => f64::NAN,
            Some(corner) if corner < together || corner.is_nan() => corner,
            _ => together,
        }
    }

    /// The verdict at this margin, never better than at the margin without tolerances; no better than tight where something is refused.
    pub fn verdict(&self, finding: &FindingInfo, worst: f64, wanted: f64) -> Verdict {
        // Rounding of the margin that is counted with the losses.
        let noise = 1e-12 * (self.margin.abs() + self.losses());
        match verdict(finding, self.margin, wanted) {
            Verdict::Meets | Verdict::Tight if worst.is_nan() => Verdict::Tight,
            Verdict::Meets | Verdict::Tight if worst < self.margin => verdict(finding, worst + noise, wanted),
            plain => plain,
        }
    }
}

/// The greatest or least of several lines by which alone a line reaches a finding, and the place of the one among them that it moves.
pub(super) type Selection = (Slot, usize);

/// For each finding and each line, the selection by which alone the line reaches it; of several the last one.
pub(super) fn selections<'a>(
    plan: &Plan,
    lines: &[Slot],
    findings: impl Iterator<Item = &'a FindingInfo> + Clone,
) -> Vec<Vec<Option<Selection>>> {
    let mut all = vec![vec![None; lines.len()]; findings.clone().count()];
    let selecting: Vec<usize> = (0..plan.nodes.len()).filter(|node| plan.nodes[*node].selects()).collect();
    for (place, line) in lines.iter().enumerate() {
        for selects in &selecting {
            // What the line moves on every other way.
            let mut moved = vec![false; plan.origins.len()];
            moved[usize::from(*line)] = true;
            let mut taken = vec![];
            for (number, node) in plan.nodes.iter().enumerate() {
                let inputs = node.inputs().iter().enumerate();
                let hits = inputs.filter(|(_, input)| moved[usize::from(**input)]).map(|(hit, _)| hit);
                if number == *selects {
                    taken = hits.collect();
                    if taken.len() != 1 {
                        break;
                    }
                } else if hits.count() > 0 {
                    node.outputs().for_each(|(_, slot)| moved[usize::from(slot)] = true);
                }
            }
            let output = plan.nodes[*selects].outputs().next();
            if let ([taken], Some((_, output))) = (&taken[..], output) {
                for (all, finding) in all.iter_mut().zip(findings.clone()) {
                    if !finding.slots().any(|slot| moved[usize::from(slot)]) {
                        all[place] = Some((output, *taken));
                    }
                }
            }
        }
    }
    all
}

/// A line with a tolerance as one finding sees it, in one row or many; a column of one value holds in all of them.
pub(super) struct Moved {
    pub slot: Slot,
    pub here: Vec<f64>,
    pub ends: [Vec<f64>; 2],
    /// In each row, the end that leaves less margin, if one does while all other lines stay where they are.
    pub worse: Vec<Option<usize>>,
}

/// Margin in each row with all lines at their worse ends, where several have one; not a number where something is refused there.
///
/// A line may lose nothing while another part gives out first, and count all the same once several move together: [`Corner::grow`] looks for such
/// lines where `seeks` is true. `at_lines` gives the margin of each row with the lines at these values.
pub(super) fn corner(
    lines: &[Moved],
    rows: usize,
    seeks: bool,
    at_lines: impl FnMut(&[(Slot, Vec<f64>)], Stays) -> Vec<f64>,
) -> Vec<Option<f64>> {
    if lines.len() < 2 {
        return vec![None; rows];
    }
    let mut corner = Corner { lines, rows, at_lines };
    let mut worse: Chosen = lines.iter().map(|line| line.worse.clone()).collect();
    let mut now = corner.margins(&worse, true);
    if seeks && worse.iter().flatten().any(Option::is_none) {
        let (mut towards, mut there) = (worse.clone(), now.clone());
        let refused = corner.grow(&mut worse, &mut now, false);
        if worse != towards {
            corner.turn(&mut worse, &mut now);
        }
        if refused {
            corner.grow(&mut towards, &mut there, true);
            now.iter_mut()
                .zip(there)
                .filter(|(_, there)| there.is_nan())
                .for_each(|(now, there)| *now = there);
        }
    }
    let several = |row: usize| worse.iter().filter(|ends| ends[row].is_some()).count() > 1;
    (0..rows).map(|row| Some(now[row]).filter(|now| now.is_nan() || several(row))).collect()
}

/// The end at which each line stands in each row, if at one.
type Chosen = Vec<Vec<Option<usize>>>;
/// True if the lines stay where they are for what is asked next, which moves one of them.
type Stays = bool;

struct Corner<'a, F> {
    lines: &'a [Moved],
    rows: usize,
    at_lines: F,
}

impl<F: FnMut(&[(Slot, Vec<f64>)], Stays) -> Vec<f64>> Corner<'_, F> {
    fn columns(&self, chosen: &Chosen) -> Vec<(Slot, Vec<f64>)> {
        let value = |line: &Moved, row: usize, end: Option<usize>| {
            at(end.map_or(&line.here, |end| &line.ends[end]), row)
        };
        let column = |(line, chosen): (&Moved, &Vec<Option<usize>>)| {
            (line.slot, chosen.iter().enumerate().map(|(row, end)| value(line, row, *end)).collect())
        };
        self.lines.iter().zip(chosen).map(column).collect()
    }

    fn margins(&mut self, chosen: &Chosen, stays: Stays) -> Vec<f64> {
        let columns = self.columns(chosen);
        (self.at_lines)(&columns, stays)
    }

    /// Lets further lines join, until none does; tells whether something was refused on the way.
    ///
    /// Each line is moved as many times its tolerance as there are lines: the greatest of the losses that hide behind another part is then in sight
    /// if all of them together are. The end that leaves less margin joins; where `refusals` count, so does one at which something is refused.
    fn grow(&mut self, chosen: &mut Chosen, now: &mut Vec<f64>, refusals: bool) -> bool {
        let by = self.lines.len() as f64;
        let (mut refused, mut grows) = (false, true);
        while grows {
            grows = false;
            for (place, line) in self.lines.iter().enumerate() {
                let open: Vec<usize> = (0..self.rows)
                    .filter(|row| chosen[place][*row].is_none() && !now[*row].is_nan())
                    .collect();
                if open.is_empty() {
                    continue;
                }
                let ends = [0, 1].map(|end: usize| {
                    let mut columns = self.columns(chosen);
                    for row in &open {
                        let (here, end) = (at(&line.here, *row), at(&line.ends[end], *row));
                        columns[place].1[*row] = stretched(line.slot, here, end, by);
                    }
                    (self.at_lines)(&columns, false)
                });
                let mut joins = false;
                for row in open {
                    let found = [0, 1].map(|end: usize| ends[end][row]);
                    let lost = found.iter().position(|margin| margin.is_nan());
                    refused |= lost.is_some();
                    let less = usize::from(found[1] < found[0] || found[0].is_nan());
                    let end = lost.filter(|_| refusals).or(is_less(found[less], now[row]).then_some(less));
                    chosen[place][row] = end;
                    joins |= end.is_some();
                }
                if joins {
                    *now = self.margins(chosen, true);
                    grows = true;
                }
            }
        }
        refused
    }

    /// Turns each line to its other end where that leaves less margin: an end may have been chosen while another part gave out first.
    fn turn(&mut self, chosen: &mut Chosen, now: &mut [f64]) {
        for place in 0..self.lines.len() {
            if chosen[place].iter().all(Option::is_none) {
                continue;
            }
            let mut turned = chosen.clone();
            turned[place].iter_mut().flatten().for_each(|end| *end = 1 - *end);
            let found = self.margins(&turned, false);
            for row in 0..self.rows {
                if is_less(found[row], now[row]) {
                    (chosen[place][row], now[row]) = (turned[place][row], found[row]);
                }
            }
        }
    }
}

/// True if a margin is less than another by more than rounding.
fn is_less(margin: f64, than: f64) -> bool {
    margin < than && (than.is_infinite() || than - margin > 1e-12 * than.abs())
}

/// Tolerances of all lines on one finding.
pub(super) struct Counted {
    /// Standard uncertainty of the margin: first-order propagation, inputs independent (JCGM 100:2008, equation 10).
    pub uncertainty: f64,
    /// The margin with every tolerance counted against it; not a number where something is refused within a tolerance.
    pub worst: f64,
    pub verdict: Verdict,
}

/// The tolerances of a sheet, counted for each finding.
pub(super) fn counted(sheet: &Sheet, plan: &Plan, values: &[f64]) -> Vec<Counted> {
    let graph = Graph::get();
    let value = |slot: Slot| values[usize::from(slot)];
    let spread: Vec<Spread> = tolerances(sheet).collect();
    let mut worst: Vec<Worst> =
        graph.findings.iter().map(|finding| Worst::of(margin(finding, value))).collect();
    let mut squares = vec![0.0; worst.len()];
    let mut lines: Vec<Vec<Moved>> = worst.iter().map(|_| vec![]).collect();
    let slots: Vec<Slot> = spread.iter().map(|spread| spread.slot).collect();
    let behind = selections(plan, &slots, graph.findings.iter());
    changes(sheet, plan, values, &spread, |line, change| {
        let Spread { slot, ends, share, .. } = spread[line];
        let deviation = change.half * share;
        squares[change.finding] += deviation * deviation;
        let worse = worst[change.finding].count(change.ends, behind[change.finding][line]);
        lines[change.finding].push(Moved {
            slot,
            here: vec![value(slot)],
            ends: ends.map(|end| vec![end]),
            worse: vec![worse],
        });
    });
    let states = States::new(sheet, plan, values, &spread);
    let counted = graph.findings.iter().zip(worst).zip(squares).zip(lines);
    counted
        .map(|(((finding, worst), square), lines)| {
            let known = !worst.margin.is_nan() && !worst.refused;
            // What is short is so without any tolerance.
            let seeks = graded(finding, value) != Verdict::Short;
            let corner = known.then(|| states.corner(finding, &lines, seeks)).flatten();
            let margin = worst.margin(corner);
            let verdict = worst.verdict(finding, margin, states.highest(finding.wanted, &spread));
            Counted { uncertainty: f64::sqrt(square), worst: margin, verdict }
        })
        .collect()
}

/// Values of a sheet with lines moved away from where they stand.
struct States<'a> {
    sheet: &'a Sheet,
    plan: &'a Plan,
    values: &'a [f64],
    /// Calls that follow from each line with a tolerance.
    follow: Vec<(Slot, Vec<bool>)>,
}

impl<'a> States<'a> {
    fn new(sheet: &'a Sheet, plan: &'a Plan, values: &'a [f64], spread: &[Spread]) -> States<'a> {
        let follow = |spread: &Spread| (spread.slot, plan.affected(|slot| slot == spread.slot));
        States { sheet, plan, values, follow: spread.iter().map(follow).collect() }
    }

    /// True for the calls on which these lines rest.
    fn behind(&self, slots: &[Slot]) -> Vec<bool> {
        let mut reached = vec![false; self.values.len()];
        self.plan.rests_on(slots).into_iter().for_each(|slot| reached[usize::from(slot)] = true);
        let leads = |(_, slot): (usize, Slot)| reached[usize::from(slot)];
        self.plan.nodes.iter().map(|node| node.outputs().any(leads)).collect()
    }

    /// Moves lines to these values, and computes what follows from those that were elsewhere.
    fn set(&self, values: &mut [f64], lines: impl Iterator<Item = (Slot, f64)>, behind: &[bool]) {
        let mut runs = vec![false; behind.len()];
        for (slot, value) in lines {
            if values[usize::from(slot)].to_bits() != value.to_bits() {
                values[usize::from(slot)] = value;
                for (_, follow) in self.follow.iter().filter(|(moved, _)| *moved == slot) {
                    runs.iter_mut().zip(follow).for_each(|(run, follows)| *run |= follows);
                }
            }
        }
        for ((node, run), behind) in self.plan.nodes.iter().zip(runs).zip(behind) {
            if run && *behind {
                node.run(self.sheet, values, &mut Vec::new());
            }
        }
    }

    /// The margin of a finding at the [`corner`] of these lines.
    fn corner(&self, finding: &FindingInfo, lines: &[Moved], seeks: bool) -> Option<f64> {
        if lines.len() < 2 {
            return None;
        }
        let behind = self.behind(&finding.slots().collect::<Vec<Slot>>());
        let (mut base, mut values) = (self.values.to_vec(), self.values.to_vec());
        let at_lines = |columns: &[(Slot, Vec<f64>)], stays: Stays| {
            values.copy_from_slice(&base);
            self.set(&mut values, columns.iter().map(|(slot, column)| (*slot, column[0])), &behind);
            if stays {
                base.copy_from_slice(&values);
            }
            vec![margin(finding, |slot| values[usize::from(slot)])]
        };
        corner(lines, 1, seeks, at_lines)[0]
    }

    /// The highest value of a line that tolerances allow: what each of them adds, together. Without limit where one makes it unknown.
    fn highest(&self, wanted: Slot, spread: &[Spread]) -> f64 {
        let here = self.values[usize::from(wanted)];
        let fills = |follow: &[bool]| {
            self.plan
                .nodes
                .iter()
                .zip(follow)
                .any(|(node, follows)| *follows && node.outputs().any(|(_, slot)| slot == wanted))
        };
        let moved = spread.iter().zip(&self.follow);
        let moved = moved.filter(|(spread, (_, follow))| spread.slot == wanted || fills(follow));
        moved.fold(here, |most, (spread, _)| {
            let behind = self.behind(&[wanted]);
            let [low, high] = spread.ends.map(|end| {
                let mut values = self.values.to_vec();
                self.set(&mut values, core::iter::once((spread.slot, end)), &behind);
                values[usize::from(wanted)]
            });
            most + rise(here, [low, high])
        })
    }
}

/// How far the ends of a tolerance raise a wanted margin; without limit where one of them makes it unknown.
pub(super) fn rise(here: f64, [low, high]: [f64; 2]) -> f64 {
    match low.is_nan() || high.is_nan() {
        true => f64::INFINITY,
        // Nothing is more than what has no limit.
        false if here.is_infinite() => 0.0,
        false => (low.max(high) - here).max(0.0),
    }
}
