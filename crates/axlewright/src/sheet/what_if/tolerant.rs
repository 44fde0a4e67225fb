//! Verdicts of the rows of a what-if with every tolerance counted against the finding, as an assessment counts them.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph; one entry a line, a node or an output, in the order of its own list"
)]

use super::axis::Axis;
use super::output::Output;
use crate::Verdict;
use crate::sheet::Sheet;
use crate::sheet::graph::{FindingInfo, Slot};
use crate::sheet::margin::{graded, margin};
use crate::sheet::plan::{Block, Node, Plan, at};
use crate::sheet::uncertainty::{Worst, highest, tolerances};

/// Lines with a tolerance on which a verdict rests, and the calls that follow from them.
#[derive(Default)]
pub(super) struct Tolerant {
    lines: Vec<Line>,
    nodes: Vec<Node>,
    /// Verdicts that follow from each node.
    serves: Vec<Vec<usize>>,
    /// Nodes that follow from each line.
    hits: Vec<Vec<usize>>,
    /// Verdicts that follow from lines with a tolerance: place among the outputs, finding, and those lines.
    verdicts: Vec<(usize, &'static FindingInfo, Vec<usize>)>,
}

/// A line with a tolerance.
struct Line {
    slot: Slot,
    ends: Ends,
}

/// Ends of a tolerance.
enum Ends {
    /// The same in every row.
    Fixed([f64; 2]),
    /// Those of the values of an axis: the axis and its column.
    Along { axis: usize, column: usize },
}

impl Ends {
    /// One end: its value in each of the rows for which `along` gives the values of an axis.
    fn of(&self, axes: &[Axis], end: usize, along: &impl Fn(usize, &[f64]) -> Vec<f64>) -> Vec<f64> {
        match self {
            Ends::Fixed(ends) => vec![ends[end]],
            Ends::Along { axis, column } => {
                let values = axes[*axis].ends[*column].iter().flatten();
                along(*axis, &values.map(|ends| ends[end]).collect::<Vec<f64>>())
            }
        }
    }
}

impl Tolerant {
    /// The tolerances of the verdicts that follow from an axis, and the verdicts that follow from none, which are the same in every row.
    pub fn new(
        sheet: &Sheet,
        axes: &[Axis],
        plan: &Plan,
        outputs: &[Output],
        follow: &[Vec<bool>],
        constant: &[f64],
    ) -> (Tolerant, Vec<Option<Verdict>>) {
        let verdicts = outputs.iter().enumerate().filter_map(|(place, output)| match output {
            Output::Verdict { finding, .. } => Some((place, *finding)),
            _ => None,
        });
        let (moving, still): (Vec<_>, Vec<_>) =
            verdicts.partition(|(place, _)| follow.iter().any(|axis| axis[*place]));
        let mut block = Block::new(constant, &[]);
        block.rows = 1;
        let still = Tolerant::of(sheet, axes, plan, still).verdicts(
            sheet,
            axes,
            &mut block,
            |_, values| values.to_vec(),
            outputs.len(),
        );
        let first = |verdicts: Option<Vec<Verdict>>| verdicts.and_then(|verdicts| verdicts.first().copied());
        (Tolerant::of(sheet, axes, plan, moving), still.into_iter().map(first).collect())
    }

    fn of(
        sheet: &Sheet,
        axes: &[Axis],
        plan: &Plan,
        verdicts: Vec<(usize, &'static FindingInfo)>,
    ) -> Tolerant {
        let asked: Vec<Slot> = verdicts.iter().flat_map(|(_, finding)| finding.slots()).collect();
        let mut reached = vec![false; plan.origins.len()];
        plan.rests_on(&asked).into_iter().for_each(|slot| reached[usize::from(slot)] = true);
        let swept = |slot: Slot| axes.iter().any(|axis| axis.slots.contains(&slot));
        let fixed = tolerances(sheet).filter(|spread| !swept(spread.slot));
        let fixed = fixed.map(|spread| Line { slot: spread.slot, ends: Ends::Fixed(spread.ends) });
        let along = axes.iter().enumerate().flat_map(|(place, axis)| {
            let columns = axis.ends.iter().enumerate().filter(|(_, ends)| ends.is_some());
            columns.map(move |(column, _)| Line {
                slot: axis.slots[column],
                ends: Ends::Along { axis: place, column },
            })
        });
        let lines: Vec<Line> = fixed.chain(along).filter(|line| reached[usize::from(line.slot)]).collect();
        let any = plan.affected(|slot| lines.iter().any(|line| line.slot == slot));
        let kept: Vec<usize> = (0..plan.nodes.len())
            .filter(|node| {
                any[*node] && plan.nodes[*node].outputs().any(|(_, slot)| reached[usize::from(slot)])
            })
            .collect();
        let mut moved = Vec::new();
        let hits = lines.iter().map(|line| {
            let hit = plan.affected(|slot| slot == line.slot);
            let hits: Vec<usize> = (0..kept.len()).filter(|place| hit[kept[*place]]).collect();
            let outputs = hits.iter().flat_map(|place| plan.nodes[kept[*place]].outputs());
            moved.push(outputs.map(|(_, slot)| slot).chain([line.slot]).collect::<Vec<Slot>>());
            hits
        });
        let hits = hits.collect();
        let follows = |finding: &FindingInfo| {
            let of = |line: &usize| finding.slots().any(|slot| moved[*line].contains(&slot));
            (0..lines.len()).filter(of).collect::<Vec<usize>>()
        };
        let verdicts = verdicts.into_iter().map(|(place, finding)| (place, finding, follows(finding)));
        let verdicts: Vec<_> = verdicts.filter(|(_, _, lines)| !lines.is_empty()).collect();
        let mut serves = vec![vec![]; kept.len()];
        for (place, (_, finding, _)) in verdicts.iter().enumerate() {
            let reached = plan.rests_on(&finding.slots().collect::<Vec<Slot>>());
            for (node, serves) in kept.iter().zip(&mut serves) {
                if plan.nodes[*node].outputs().any(|(_, slot)| reached.contains(&slot)) {
                    serves.push(place);
                }
            }
        }
        Tolerant {
            nodes: kept.into_iter().map(|node| plan.nodes[node].clone()).collect(),
            serves,
            hits,
            verdicts,
            lines,
        }
    }

    /// Number of lines with a tolerance that count.
    pub fn lines(&self) -> usize {
        self.lines.len()
    }

    /// The verdicts of the rows of a block; nothing of outputs that follow from no tolerance. `along` gives the values of an axis in these rows.
    pub fn verdicts(
        &self,
        sheet: &Sheet,
        axes: &[Axis],
        block: &mut Block<'_>,
        along: impl Fn(usize, &[f64]) -> Vec<f64>,
        outputs: usize,
    ) -> Vec<Option<Vec<Verdict>>> {
        let mut found = vec![None; outputs];
        if self.verdicts.is_empty() {
            return found;
        }
        let rows = 0..block.rows;
        let margins = |block: &Block<'_>, finding: &FindingInfo| -> Vec<f64> {
            rows.clone().map(|row| margin(finding, |slot| block.at(slot, row))).collect()
        };
        // A tolerance changes no other verdict than `meets` and `tight`.
        let turns: Vec<bool> = self
            .verdicts
            .iter()
            .map(|(_, finding, _)| {
                rows.clone().any(|row| {
                    matches!(graded(finding, |slot| block.at(slot, row)), Verdict::Meets | Verdict::Tight)
                })
            })
            .collect();
        let runs: Vec<bool> =
            self.serves.iter().map(|verdicts| verdicts.iter().any(|place| turns[*place])).collect();
        let turning = || self.verdicts.iter().enumerate().filter(|(place, _)| turns[*place]);
        let mut worst: Vec<Vec<Worst>> = vec![vec![]; self.verdicts.len()];
        for (place, (_, finding, _)) in turning() {
            worst[place] = margins(block, finding).into_iter().map(Worst::of).collect();
        }
        // The worse end of each line in each row, for each verdict.
        let mut corners: Vec<Vec<(usize, Vec<Option<usize>>)>> = vec![vec![]; self.verdicts.len()];
        let mut ends: Vec<[Vec<f64>; 2]> = vec![[vec![], vec![]]; self.lines.len()];
        for (number, line) in self.lines.iter().enumerate() {
            let of: Vec<usize> = turning()
                .filter(|(_, (_, _, lines))| lines.contains(&number))
                .map(|(place, _)| place)
                .collect();
            if of.is_empty() {
                continue;
            }
            ends[number] = [0, 1].map(|end| line.ends.of(axes, end, &along));
            let hits: Vec<usize> = self.hits[number].iter().copied().filter(|hit| runs[*hit]).collect();
            let at_ends: [Vec<Vec<f64>>; 2] = [0, 1].map(|end: usize| {
                let before = self.moved(sheet, block, &[(line.slot, ends[number][end].clone())], &hits);
                let found = of.iter().map(|place| margins(block, self.verdicts[*place].1)).collect();
                restore(block, before);
                found
            });
            for (among, place) in of.into_iter().enumerate() {
                let count =
                    |row: usize| worst[place][row].count([0, 1].map(|end: usize| at_ends[end][among][row]));
                corners[place].push((number, rows.clone().map(count).collect()));
            }
        }
        for (place, (output, finding, _)) in turning() {
            let corner = &corners[place];
            let several = |row: usize| corner.iter().filter(|(_, ends)| ends[row].is_some()).count() > 1;
            let at_corner = rows.clone().any(several).then(|| {
                let lines: Vec<(Slot, Vec<f64>)> = corner
                    .iter()
                    .map(|(line, worse)| {
                        let slot = self.lines[*line].slot;
                        let value = |row: usize| match worse[row] {
                            Some(end) => at(&ends[*line][end], row),
                            None => block.at(slot, row),
                        };
                        (slot, rows.clone().map(value).collect())
                    })
                    .collect();
                let mut hits: Vec<usize> = corner
                    .iter()
                    .flat_map(|(line, _)| &self.hits[*line])
                    .copied()
                    .filter(|hit| self.serves[*hit].contains(&place))
                    .collect();
                hits.sort_unstable();
                hits.dedup();
                let before = self.moved(sheet, block, &lines, &hits);
                let found = margins(block, finding);
                restore(block, before);
                found
            });
            let verdict = |row: usize| {
                let corner = at_corner.as_ref().filter(|_| several(row)).map(|margins| margins[row]);
                let worst = &worst[place][row];
                let wanted = highest(sheet, finding.wanted, block.at(finding.wanted, row));
                worst.verdict(finding, worst.margin(corner), wanted)
            };
            found[*output] = Some(rows.clone().map(verdict).collect());
        }
        found
    }

    /// Moves lines, and computes the calls that follow; tells the columns that were there before.
    fn moved(
        &self,
        sheet: &Sheet,
        block: &mut Block<'_>,
        lines: &[(Slot, Vec<f64>)],
        hits: &[usize],
    ) -> Vec<(Slot, Vec<f64>)> {
        let mut before = Vec::new();
        for (slot, column) in lines {
            before.push((*slot, block.replace(*slot, column.clone())));
        }
        for node in hits.iter().map(|hit| &self.nodes[*hit]) {
            for (_, slot) in node.outputs() {
                before.push((slot, block.replace(slot, vec![])));
            }
            node.run_block(sheet, block, &mut |_, _, _| {});
        }
        before
    }
}

fn restore(block: &mut Block<'_>, before: Vec<(Slot, Vec<f64>)>) {
    before.into_iter().for_each(|(slot, column)| block.set(slot, column));
}
