//! Uncertainty of the margins from the tolerances of written lines (JCGM 100:2008).
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it"
)]

use super::Sheet;
use super::graph::{FindingInfo, Graph, Slot};
use super::margin::{margin, nearer, remaining};
use super::plan::Plan;
use crate::base::text::Form;

/// Effect of one tolerance on one margin.
pub(super) struct Change {
    pub finding: usize,
    /// Half the change of the margin from the line's value less one tolerance to its value plus one; one side only where the other is
    /// refused.
    pub half: f64,
}

/// Effect of each of these lines on the margins if it alone changes by its tolerance.
pub(super) fn changes(
    sheet: &Sheet,
    plan: &Plan,
    values: &[f64],
    moved: &[(Slot, f64)],
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
        lines.iter().enumerate().for_each(|(bit, (slot, _))| masks[usize::from(*slot)] |= 1 << bit);
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
        for (bit, (slot, tolerance)) in lines.iter().enumerate() {
            let at = usize::from(*slot);
            (above[at], below[at]) = (values[at] + tolerance, values[at] - tolerance);
            let follows = || plan.nodes.iter().zip(&nodes).filter(|(_, mask)| *mask >> bit & 1 == 1);
            for (node, _) in follows() {
                node.run(sheet, &mut above, &mut refusals);
                node.run(sheet, &mut below, &mut refusals);
            }
            for (finding, _) in findings.iter().enumerate().filter(|(_, mask)| *mask >> bit & 1 == 1) {
                let of = &graph.findings[finding];
                let edge = nearer(of.margin, |slot| values[usize::from(slot)]);
                let margin = |values: &[f64]| match margin(of, |slot| values[usize::from(slot)]) {
                    known if known.is_nan() => f64::NAN,
                    _ => remaining(edge, |slot| values[usize::from(slot)]),
                };
                let (up, down) = (margin(&above), margin(&below));
                let half = match (up.is_nan(), down.is_nan()) {
                    (false, false) => (up - down) / 2.0,
                    (false, true) => up - margin(values),
                    (true, false) => margin(values) - down,
                    (true, true) => f64::NAN,
                };
                tell(64 * batch + bit, Change { finding, half });
            }
            let lines = core::iter::once(*slot)
                .chain(follows().flat_map(|(node, _)| node.outputs().map(|(_, slot)| slot)));
            for slot in lines.map(usize::from) {
                (above[slot], below[slot]) = (values[slot], values[slot]);
            }
        }
    }
}

/// The written lines with a tolerance, on which something rests: line, tolerance, and standard uncertainty per tolerance.
pub(super) fn tolerances(sheet: &Sheet) -> impl Iterator<Item = (Slot, f64, f64)> {
    sheet.values.iter().filter_map(|(slot, written)| {
        let tolerance = written.tolerance.filter(|tolerance| tolerance.si != 0.0)?;
        // A rectangular bound of half-width a has the standard deviation a / √3 (JCGM 100:2008, 4.3.7).
        let share = match tolerance.form {
            Form::Bound => 1.0 / 3.0_f64.sqrt(),
            Form::StandardDeviation => 1.0,
        };
        Some((*slot, tolerance.si, share))
    })
}

/// Standard uncertainty of each finding's margin: first-order propagation, inputs independent (JCGM 100:2008, equation 10).
pub(super) fn uncertainties(sheet: &Sheet, plan: &Plan, values: &[f64]) -> impl Iterator<Item = f64> {
    let mut squares = vec![0.0; Graph::get().findings.len()];
    let spread: Vec<(Slot, f64, f64)> = tolerances(sheet).collect();
    let moved: Vec<(Slot, f64)> = spread.iter().map(|(slot, tolerance, _)| (*slot, *tolerance)).collect();
    changes(sheet, plan, values, &moved, |line, change| {
        let deviation = change.half * spread[line].2;
        squares[change.finding] += deviation * deviation;
    });
    squares.into_iter().map(f64::sqrt)
}
