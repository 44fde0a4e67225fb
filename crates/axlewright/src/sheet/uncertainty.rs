//! Tolerances of written lines: the uncertainty of a margin (JCGM 100:2008), and the margin with all of them counted against it.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::graph::{FindingInfo, Graph, Slot};
use super::margin::{margin, nearer, remaining, verdict};
use super::plan::Plan;
use crate::Verdict;
use crate::base::text::{Form, Tolerance};

/// A written line with a tolerance.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spread {
    pub slot: Slot,
    /// Values to which one tolerance reaches: half the width of the band, or one standard deviation.
    pub step: [f64; 2],
    /// Values that count against a finding: the ends of the band, or two standard deviations.
    pub ends: [f64; 2],
    /// Standard uncertainty of the line as a share of one tolerance.
    pub share: f64,
}

/// Effect of one tolerance on one margin.
pub(super) struct Change {
    pub finding: usize,
    /// Half the change of the margin over one tolerance either way; one side only where the other is refused.
    pub half: f64,
    /// Margin at both ends that count; not a number where something is refused there.
    pub ends: [f64; 2],
}

/// Effect of each of these lines on the margins if it alone changes by its tolerance.
pub(super) fn changes(
    sheet: &Sheet,
    plan: &Plan,
    values: &[f64],
    moved: &[Spread],
    mut tell: impl FnMut(usize, Change),
) {
    let graph = Graph::get();
    // Only what a finding asks for is called.
    let mut wanted = vec![false; values.len()];
    graph.findings.iter().flat_map(FindingInfo::slots).for_each(|slot| wanted[usize::from(slot)] = true);
    let mut asked: Vec<bool> = plan
        .nodes
        .iter()
        .rev()
        .map(|node| {
            let asked = node.outputs().any(|(_, slot)| wanted[usize::from(slot)]);
            if asked {
                node.inputs().iter().for_each(|input| wanted[usize::from(*input)] = true);
            }
            asked
        })
        .collect();
    asked.reverse();
    // 64 lines at a time: bit `i` of a mask says that something follows from the line `i`.
    for (batch, lines) in moved.chunks(64).enumerate() {
        let mut masks = vec![0_u64; values.len()];
        lines.iter().enumerate().for_each(|(bit, line)| masks[usize::from(line.slot)] |= 1 << bit);
        let nodes: Vec<u64> = plan
            .nodes
            .iter()
            .zip(&asked)
            .map(|(node, asked)| {
                let mask = node.inputs().iter().fold(0, |mask, input| mask | masks[usize::from(*input)]);
                node.outputs().for_each(|(_, slot)| masks[usize::from(slot)] |= mask);
                if *asked { mask } else { 0 }
            })
            .collect();
        let findings: Vec<u64> = graph
            .findings
            .iter()
            .map(|finding| finding.slots().fold(0, |mask, slot| mask | masks[usize::from(slot)]))
            .collect();
        let (mut above, mut below) = (values.to_vec(), values.to_vec());
        let mut refusals = Vec::new();
        for (bit, Spread { slot, step, ends, .. }) in lines.iter().enumerate() {
            let at = usize::from(*slot);
            let follows = || plan.nodes.iter().zip(&nodes).filter(|(_, mask)| *mask >> bit & 1 == 1);
            let mut moved = |[low, high]: [f64; 2], above: &mut Vec<f64>, below: &mut Vec<f64>| {
                (above[at], below[at]) = (high, low);
                for (node, _) in follows() {
                    node.run(sheet, above, &mut refusals);
                    node.run(sheet, below, &mut refusals);
                }
            };
            let touched = || findings.iter().enumerate().filter(|(_, mask)| *mask >> bit & 1 == 1);
            let at_ends = |above: &[f64], below: &[f64]| -> Vec<[f64; 2]> {
                let margin =
                    |finding: &FindingInfo, at: &[f64]| margin(finding, |slot| at[usize::from(slot)]);
                touched()
                    .map(|(finding, _)| [below, above].map(|at| margin(&graph.findings[finding], at)))
                    .collect()
            };
            let mut counted = None;
            if step != ends {
                moved(*ends, &mut above, &mut below);
                counted = Some(at_ends(&above, &below));
            }
            moved(*step, &mut above, &mut below);
            let at_step = at_ends(&above, &below);
            for (place, (finding, _)) in touched().enumerate() {
                let of = &graph.findings[finding];
                let edge = nearer(of.margin, |slot| values[usize::from(slot)]);
                let to_edge = |values: &[f64], known: f64| match known.is_nan() {
                    true => f64::NAN,
                    false => remaining(edge, |slot| values[usize::from(slot)]),
                };
                let (down, up) = (to_edge(&below, at_step[place][0]), to_edge(&above, at_step[place][1]));
                let here = || to_edge(values, margin(of, |slot| values[usize::from(slot)]));
                let half = match (up.is_nan(), down.is_nan()) {
                    (false, false) => (up - down) / 2.0,
                    (false, true) => up - here(),
                    (true, false) => here() - down,
                    (true, true) => f64::NAN,
                };
                let ends = counted.as_ref().unwrap_or(&at_step)[place];
                tell(64 * batch + bit, Change { finding, half, ends });
            }
            let lines = core::iter::once(*slot)
                .chain(follows().flat_map(|(node, _)| node.outputs().map(|(_, slot)| slot)));
            for slot in lines.map(usize::from) {
                (above[slot], below[slot]) = (values[slot], values[slot]);
            }
        }
    }
}

/// Ends of a tolerance: a bound as it is, a standard deviation twice, but no further than the range of the line.
pub(super) fn ends(slot: Slot, si: f64, tolerance: Tolerance) -> [f64; 2] {
    within(slot, si, reach(tolerance))
}

/// A value less and plus a reach, but no further than the range of its line.
fn within(slot: Slot, si: f64, reach: f64) -> [f64; 2] {
    let range = Graph::get().info(slot).line.range;
    // The end itself of a range may be outside of it.
    let least = if range.lower_open { range.lower + (si - range.lower) * 1e-6 } else { range.lower };
    [(si - reach).max(least), (si + reach).min(range.upper)]
}

/// Half the width of what a tolerance allows.
pub(super) fn reach(tolerance: Tolerance) -> f64 {
    match tolerance.form {
        Form::Bound => tolerance.si,
        Form::StandardDeviation => 2.0 * tolerance.si,
    }
}

/// The written lines with a tolerance.
pub(super) fn tolerances(sheet: &Sheet) -> impl Iterator<Item = Spread> {
    sheet.values.iter().filter_map(|(slot, written)| {
        let tolerance = written.tolerance.filter(|tolerance| tolerance.si != 0.0)?;
        // A rectangular bound of half-width a has the standard deviation a / √3 (JCGM 100:2008, 4.3.7).
        let share = match tolerance.form {
            Form::Bound => 1.0 / 3.0_f64.sqrt(),
            Form::StandardDeviation => 1.0,
        };
        let step = within(*slot, written.si, tolerance.si);
        Some(Spread { slot: *slot, step, ends: ends(*slot, written.si, tolerance), share })
    })
}

/// Margin with every tolerance counted against it, as it is gathered line by line.
#[derive(Debug, Clone)]
pub(super) struct Worst {
    margin: f64,
    loss: f64,
    /// True if something is refused within a tolerance.
    refused: bool,
}

impl Worst {
    pub fn of(margin: f64) -> Worst {
        Worst { margin, loss: 0.0, refused: false }
    }

    /// Counts a tolerance with these margins at its ends; tells which of them is worse, if one is.
    pub fn count(&mut self, [low, high]: [f64; 2]) -> Option<usize> {
        if low.is_nan() || high.is_nan() {
            self.refused = true;
            return None;
        }
        let loss = self.margin - low.min(high);
        // Also false where an infinite margin stays infinite.
        (loss > 0.0).then(|| {
            self.loss += loss;
            usize::from(high < low)
        })
    }

    /// The margin with all losses together, or at the corner where every line stands at its worse end, if that is less; not a number where
    /// something is refused within a tolerance.
    pub fn margin(&self, corner: Option<f64>) -> f64 {
        let together = self.margin - self.loss;
        match corner {
            _ if self.refused => f64::NAN,
            Some(corner) if corner < together || corner.is_nan() => corner,
            _ => together,
        }
    }

    /// Rounding of the margin that is counted with the losses.
    fn noise(&self) -> f64 {
        1e-12 * (self.margin.abs() + self.loss)
    }

    /// The verdict at this margin, never better than at the margin without tolerances; no better than tight where something is refused.
    pub fn verdict(&self, finding: &FindingInfo, worst: f64, wanted: f64) -> Verdict {
        let plain = verdict(finding, self.margin, wanted);
        if self.loss == 0.0 && !self.refused {
            return plain;
        }
        match plain {
            Verdict::Meets | Verdict::Tight if worst.is_nan() => Verdict::Tight,
            Verdict::Meets | Verdict::Tight => verdict(finding, worst + self.noise(), wanted),
            other => other,
        }
    }
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
    let mut corners: Vec<Vec<(Slot, f64)>> = vec![vec![]; worst.len()];
    changes(sheet, plan, values, &spread, |line, change| {
        let Spread { slot, ends, share, .. } = spread[line];
        let deviation = change.half * share;
        squares[change.finding] += deviation * deviation;
        if let Some(end) = worst[change.finding].count(change.ends) {
            corners[change.finding].push((slot, ends[end]));
        }
    });
    let wanted = |finding: &FindingInfo| highest(sheet, finding.wanted, value(finding.wanted));
    let counted = graph.findings.iter().zip(worst).zip(squares).zip(corners);
    counted
        .map(|(((finding, worst), square), corner)| {
            let corner = (corner.len() > 1).then(|| at_corner(sheet, plan, values, finding, &corner));
            let margin = worst.margin(corner);
            let verdict = worst.verdict(finding, margin, wanted(finding));
            Counted { uncertainty: f64::sqrt(square), worst: margin, verdict }
        })
        .collect()
}

/// The highest value that the tolerance of a line allows.
pub(super) fn highest(sheet: &Sheet, slot: Slot, value: f64) -> f64 {
    let written = sheet.values.get(&slot).filter(|written| written.si == value);
    let tolerance = written.and_then(|written| written.tolerance);
    tolerance.map_or(value, |tolerance| ends(slot, value, tolerance)[1])
}

/// The margin of a finding with these lines at these values.
fn at_corner(
    sheet: &Sheet,
    plan: &Plan,
    values: &[f64],
    finding: &FindingInfo,
    corner: &[(Slot, f64)],
) -> f64 {
    let asked: Vec<Slot> = finding.slots().collect();
    let mut reached = vec![false; values.len()];
    plan.rests_on(&asked).into_iter().for_each(|slot| reached[usize::from(slot)] = true);
    let mut values = values.to_vec();
    corner.iter().for_each(|(slot, value)| values[usize::from(*slot)] = *value);
    let moves = plan.affected(|slot| corner.iter().any(|(moved, _)| *moved == slot));
    for (node, moves) in plan.nodes.iter().zip(moves) {
        if moves && node.outputs().any(|(_, slot)| reached[usize::from(slot)]) {
            node.run(sheet, &mut values, &mut Vec::new());
        }
    }
    margin(finding, |slot| values[usize::from(slot)])
}
