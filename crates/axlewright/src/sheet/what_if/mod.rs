//! Lines of a sheet over lists of values, and any outputs: as one table, or piece by piece.
#![expect(clippy::indexing_slicing, reason = "one slot and one column an axis, in the order of the axes")]

mod axis;
mod output;
mod rows;
mod tolerant;

pub use axis::Axis;
pub(super) use output::{held, kind_of, slots_of};

use super::Sheet;
use super::applies::{Applies, Asked};
use super::contradiction::{may_contradict, may_doubt};
use super::dropped::{by_sweep, paths};
use super::graph::{Graph, Slot};
use super::plan::{Plan, Refusals};
use super::shop::Shop;
use crate::base::text::System;
use crate::units::Unit;
use crate::{Error, Result, Verdict};
use axis::Series;
use output::Output;
use std::collections::BTreeSet;
use tolerant::Tolerant;

/// A sheet with lines over values, and the outputs that are wanted.
pub struct WhatIf {
    sheet: Sheet,
    axes: Vec<Axis>,
    /// True if the axes go side by side, row by row, rather than every value with every other.
    side_by_side: bool,
    outputs: Vec<Output>,
    rows: usize,
    constant: Vec<f64>,
    nodes: Vec<super::plan::Node>,
    /// Outputs that are known in no row, and why.
    not_known: Vec<(String, String)>,
    /// Readings of the lines that change.
    dropped: Vec<&'static str>,
    markings: Vec<Vec<f64>>,
    /// Outputs that follow from the lines of each axis.
    follow: Vec<Vec<bool>>,
    /// Statements of the sheet on the parts behind the finding of each output.
    applies: Vec<Applies>,
    /// Whether that finding is asked, if the answer is the same in all rows.
    asked: Vec<Option<Asked>>,
    /// True if the lines of a row may contradict each other and a verdict is an output.
    may_contradict: bool,
    /// Lines that change and on which it hangs.
    doubting: BTreeSet<Slot>,
    /// Lines with a tolerance that count in the verdicts that change.
    tolerant: Tolerant,
    /// The verdicts that are the same in every row, with every tolerance counted.
    still: Vec<Option<Verdict>>,
}

/// Receives the number of finished rows; an answer of `false` stops the run.
pub type Progress<'a> = &'a mut dyn FnMut(usize) -> bool;

impl Sheet {
    /// Lines over values: every value with every other, the last axis fastest, or side by side. An output is the path of a line, or
    /// of a finding followed by `.value`, `.margin` or `.verdict`; without any, the margin and verdict of every finding.
    pub fn what_if(&self, axes: Vec<Axis>, side_by_side: bool, outputs: &[&str]) -> Result<WhatIf> {
        WhatIf::new(self, axes, side_by_side, outputs)
    }
}

impl WhatIf {
    fn new(sheet: &Sheet, axes: Vec<Axis>, side_by_side: bool, outputs: &[&str]) -> Result<WhatIf> {
        let graph = Graph::get();
        let mut axes = axes;
        let mut changed: Vec<Slot> = axes.iter().flat_map(|axis| axis.slots.clone()).collect();
        changed.sort_unstable();
        if let Some(twice) = changed.windows(2).find(|pair| pair[0] == pair[1]) {
            return Err(Error::document(graph.info(twice[0]).path, "two axes change this line".to_owned()));
        }
        for path in changed.iter().map(|slot| graph.info(*slot).path) {
            let known = |slot: &Slot| sheet.values.contains_key(slot) || changed.binary_search(slot).is_ok();
            if let Some((before, _)) = super::neighbours(path).0.filter(|(_, slot)| !known(slot)) {
                return Err(Error::document(path, super::out_of_order(&before)));
            }
            sheet.refuse_inside_none(path)?;
        }
        let dropped = by_sweep(sheet, &changed);
        let sheet = &sheet.without(&dropped);
        let outputs: Vec<Output> = if outputs.is_empty() {
            graph
                .findings
                .iter()
                .flat_map(|finding| [Output::margin(finding), Output::verdict(finding)])
                .collect()
        } else {
            outputs.iter().map(|path| Output::read(path)).collect::<Result<_>>()?
        };
        let rows = if side_by_side {
            let longest = axes.iter().map(Axis::len).max().unwrap_or(1);
            if let Some(axis) = axes.iter().find(|axis| axis.len() != longest) {
                let path = graph.info(axis.slots[0]).path;
                let message = format!("{} values beside {longest} of another axis", axis.len());
                return Err(Error::document(path, message));
            }
            Some(longest)
        } else {
            axes.iter().try_fold(1_usize, |rows, axis| rows.checked_mul(axis.len()))
        };
        let rows = rows.filter(|rows| *rows <= isize::MAX as usize / 8).ok_or(Error::Length {
            argument: "axes",
            length: axes.len(),
            wanted: "their values multiply to more rows than a machine can count",
        })?;
        // The markings of all axes in one list; the value of such a line is the place in it, counted from 1.
        let mut markings = Vec::new();
        for axis in &mut axes {
            for (column, decoded) in axis.columns.iter_mut().zip(&mut axis.decoded) {
                if !decoded.is_empty()
                    && let Series::Listed(column) = column
                {
                    column.iter_mut().for_each(|place| *place += markings.len() as f64);
                    markings.append(decoded);
                }
            }
        }
        let changes = |slot| changed.binary_search(&slot).is_ok();
        let choices = outputs.iter().flat_map(Output::choices);
        let plan = Plan::new(sheet, changes, outputs.iter().flat_map(Output::slots).chain(choices));
        let mut constant = plan.start(sheet);
        // A changed line has a value in every row: none is missing while what stands still is computed.
        let hit = plan.affected(changes);
        let follow = axes.iter().map(|axis| {
            let hit = plan.affected(|slot| axis.slots.contains(&slot));
            let nodes = plan.nodes.iter().zip(hit).filter(|(_, hit)| *hit);
            let mut dirty = axis.slots.clone();
            dirty.extend(nodes.flat_map(|(node, _)| node.outputs().map(|(_, slot)| slot)));
            let follows = |output: &Output| {
                output.slots().into_iter().chain(output.choices()).any(|slot| dirty.contains(&slot))
            };
            outputs.iter().map(follows).collect()
        });
        let follow: Vec<Vec<bool>> = follow.collect();
        let mut refusals = Vec::new();
        let (mut nodes, mut still) = (Vec::new(), Vec::new());
        for (node, hit) in plan.nodes.iter().zip(hit) {
            if hit { nodes.push(node.clone()) } else { still.push(node) }
        }
        still.iter().for_each(|node| node.run(sheet, &mut constant, &mut refusals));
        let moving: Vec<Slot> = nodes.iter().flat_map(|node| node.outputs().map(|(_, slot)| slot)).collect();
        let applies: Vec<Applies> = outputs
            .iter()
            .map(|output| {
                let finding = output.finding();
                finding.map_or_else(Applies::default, |finding| Applies::new(sheet, finding, changes))
            })
            .collect();
        let asked: Vec<Option<Asked>> = outputs
            .iter()
            .zip(&applies)
            .map(|(output, applies)| {
                let stays = output.choices().all(|slot| !changes(slot) && !moving.contains(&slot));
                stays.then(|| applies.asked(|slot| constant[usize::from(slot)], |_| false))
            })
            .collect();
        let not_known = outputs.iter().zip(&asked).filter_map(|(output, asked)| {
            let open = match asked {
                Some(Asked::No(_)) => return None,
                // A number is known all the same; only the verdict is not.
                Some(Asked::Open(why)) if !output.is_number() => Some(why.clone()),
                _ => None,
            };
            let why: Vec<String> = output
                .slots()
                .into_iter()
                .flat_map(|slot| {
                    let needs = plan.lacks(sheet, changes, slot);
                    lacks(&plan, &needs, &constant, &refusals, &moving, slot)
                })
                .chain(open)
                .collect();
            (!why.is_empty()).then(|| (output.name().into_owned(), why.join("; ")))
        });
        let not_known = not_known.collect();
        let graded = outputs
            .iter()
            .any(|output| matches!(output, Output::Verdict { .. }) || output.choices().next().is_some());
        let may_contradict = graded && may_contradict(sheet, changes);
        let doubting = match may_contradict {
            true => may_doubt(sheet, changes).into_iter().flatten().filter(|slot| changes(*slot)).collect(),
            false => BTreeSet::new(),
        };
        let (tolerant, still) = Tolerant::new(sheet, &axes, &plan, &outputs, &follow, &constant);
        Ok(WhatIf {
            tolerant,
            still,
            may_contradict,
            doubting,
            asked: if may_contradict { vec![None; outputs.len()] } else { asked },
            applies,
            sheet: sheet.clone(),
            axes,
            side_by_side,
            outputs,
            rows,
            constant,
            nodes,
            not_known,
            dropped: paths(&dropped),
            markings,
            follow,
        })
    }

    /// Outputs that are known in no row: each with what it needs, or why a call that does not change is refused.
    pub fn not_known(&self) -> &[(String, String)] {
        &self.not_known
    }

    /// Paths of written readings that count in no row: each was taken of a line that changes, and is computed from it instead.
    pub fn dropped(&self) -> &[&'static str] {
        &self.dropped
    }

    /// The unit in which a shop of this system says each column of numbers, by its name: that of the line, otherwise that of its kind.
    pub fn units_in(&self, system: System) -> Vec<(String, &'static Unit)> {
        let shop = Shop::of(system);
        let line = |slot: Slot| {
            let info = Graph::get().info(slot);
            Some((info.path.to_owned(), shop.unit(info.kind()?, Some(info.line))?))
        };
        let lines = self.axes.iter().flat_map(|axis| axis.slots.iter().copied()).filter_map(line);
        let output = |of: &Output| {
            let slot = *of.slots().first()?;
            Some((of.name().into_owned(), shop.unit(of.kind()?, Some(Graph::get().info(slot).line))?))
        };
        lines.chain(self.outputs.iter().filter_map(output)).collect()
    }

    /// Number of rows.
    pub fn rows(&self) -> usize {
        self.rows
    }
}

/// Inputs that an output lacks in every row; a line that is computed row by row lacks nothing in all of them.
fn lacks(
    plan: &Plan,
    needs: &[Slot],
    constant: &[f64],
    refusals: &Refusals,
    moving: &[Slot],
    slot: Slot,
) -> Vec<String> {
    let graph = Graph::get();
    let needs = needs.iter().map(|slot| format!("needs {}", graph.info(*slot).path));
    let reached = plan.rests_on(&[slot]);
    let refused = refusals.iter().filter_map(|(slot, error)| Some((plan.filled(*slot, &reached)?, error)));
    let refused = refused.map(|(slot, error)| format!("{}: {error}", graph.info(slot).path));
    let lacking = plan
        .lacking(constant, &reached)
        .filter(|(slot, _)| !moving.contains(slot))
        .map(|(slot, lacking)| format!("{}: {lacking}", graph.info(slot).path));
    needs.chain(refused).chain(lacking).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From -1 to 1: two of the values are no rate of a spring.
    #[test]
    fn a_value_of_a_range_that_the_line_does_not_allow_refuses_its_rows() -> Result<()> {
        let mut axis = Axis::range("front.spring.rate", "1 N/m", "3 N/m", 3)?;
        assert!(!axis.refuses);
        axis.columns = vec![Series::Range { from: -1.0, to: 1.0, count: 3 }];
        axis.refuses = true;
        let table = Sheet::new("").what_if(vec![axis], false, &["front.spring.rate"])?.whole()?;
        let reasons = [0, 1, 2].map(|row| table.reason(row).map(ToString::to_string));
        assert!(
            reasons[0]
                .as_ref()
                .is_some_and(|why| why.contains("-0.001 N/mm (-0.00571 lbf/in) is outside its range")),
            "{reasons:?}"
        );
        assert!(reasons[1].is_some() && reasons[2].is_none(), "{reasons:?}");
        Ok(())
    }

    /// Every value is below the least rate of a spring: each row has its reason, which takes more memory than its numbers.
    #[test]
    fn a_table_with_too_many_refused_rows_is_refused_on_any_number_of_threads() -> Result<()> {
        let mut axis = Axis::range("front.spring.rate", "1 N/m", "3 N/m", 100_000)?;
        axis.columns = vec![Series::Range { from: -2.0, to: -1.0, count: 100_000 }];
        axis.refuses = true;
        let what_if = Sheet::new("").what_if(vec![axis], false, &["front.spring.rate"])?;
        for threads in [1, 3, usize::MAX] {
            let table = |rows, most| what_if.table_with(rows, Some(threads), most, &mut |_| true);
            let whole = table(0..100_000, 100_000)?.unwrap_or_default();
            assert_eq!(whole.refused().len(), 100_000);
            assert!(whole.refused().is_sorted_by(|a, b| a.0 < b.0));
            let why = table(0..100_000, 50_000).unwrap_err().to_string();
            assert!(
                why.starts_with("more than 50000 of 100000 rows are refused (the first is row ")
                    && why.contains("keeps the reasons of at most 50000: ask for its rows piece by piece"),
                "{why}"
            );
            // The same rows in pieces.
            assert_eq!(table(50_000..100_000, 50_000)?.unwrap_or_default().refused().len(), 50_000);
        }
        Ok(())
    }

    #[test]
    fn what_is_computed_row_by_row_is_not_said_to_be_known_in_none() -> Result<()> {
        let mut sheet = Sheet::new("");
        sheet.set("front.spring.motion_ratio", "0.6")?;
        sheet.set("front.damper.mounting", "coil_over")?;
        let outputs = ["front.damper.motion_ratio", "front.natural_frequency"];
        let axis = Axis::texts("front.spring.motion_ratio", &["0.5", "0.7"])?;
        let what_if = sheet.what_if(vec![axis], false, &outputs)?;
        let lacking: Vec<&str> = what_if.not_known().iter().map(|(output, _)| output.as_str()).collect();
        assert_eq!(lacking, ["front.natural_frequency"]);
        assert_eq!(what_if.whole()?.numbers(outputs[0]), Some(&[0.5, 0.7][..]));
        Ok(())
    }
}
