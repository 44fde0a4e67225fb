//! Tolerances of written lines, and what each of them alone does to the margins (JCGM 100:2008).
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::graph::{FindingInfo, Graph, Slot};
use super::margin::{margin, nearer, remaining};
use super::plan::Plan;
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

/// A value so many times as far from a line as one end of its tolerance, but no further than the range of the line.
pub(super) fn stretched(slot: Slot, here: f64, end: f64, by: f64) -> f64 {
    let [low, high] = within(slot, here, by * (end - here).abs());
    if end < here { low } else { high }
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
