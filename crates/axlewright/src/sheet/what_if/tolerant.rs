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
use crate::sheet::plan::{Block, Node, Plan};
use crate::sheet::uncertainty::tolerances;
use crate::sheet::worst::{Moved, Selection, Worst, corner, rise, selections};

/// Lines with a tolerance on which a verdict rests, and the calls that follow from them.
#[derive(Default)]
pub(super) struct Tolerant {
    lines: Vec<Line>,
    nodes: Vec<Node>,
    /// Verdicts that follow from each node.
    serves: Vec<Vec<usize>>,
    /// Nodes that follow from each line.
    hits: Vec<Vec<usize>>,
    verdicts: Vec<Judged>,
}

/// A verdict that follows from lines with a tolerance.
struct Judged {
    /// Place among the outputs.
    output: usize,
    finding: &'static FindingInfo,
    /// Lines from which the margin follows.
    lines: Vec<usize>,
    /// Selection of each line by which alone the margin follows from it.
    behind: Vec<Option<Selection>>,
    /// Lines from which the wanted margin follows.
    wishes: Vec<usize>,
}

/// A line with a tolerance.
struct Line {
    slot: Slot,
    ends: Ends,
}

/// Ends of a tolerance.
enum Ends {
    /// Ends that are the same in every row.
    Fixed([f64; 2]),
    /// Ends at each value of an axis: the axis and its column.
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
        let asked: Vec<Slot> =
            verdicts.iter().flat_map(|(_, finding)| finding.slots().chain([finding.wanted])).collect();
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
        let from = |slots: &[Slot]| -> Vec<usize> {
            let any = |line: &usize| slots.iter().any(|slot| moved[*line].contains(slot));
            (0..lines.len()).filter(any).collect()
        };
        let slots: Vec<Slot> = lines.iter().map(|line| line.slot).collect();
        let behind = selections(plan, &slots, verdicts.iter().map(|(_, finding)| *finding));
        let verdicts = verdicts.into_iter().zip(behind).map(|((output, finding), behind)| Judged {
            output,
            finding,
            behind,
            lines: from(&finding.slots().collect::<Vec<Slot>>()),
            wishes: from(&[finding.wanted]),
        });
        let verdicts: Vec<Judged> =
            verdicts.filter(|judged| !judged.lines.is_empty() || !judged.wishes.is_empty()).collect();
        let mut serves = vec![vec![]; kept.len()];
        for (place, Judged { finding, .. }) in verdicts.iter().enumerate() {
            let reached = plan.rests_on(&finding.slots().chain([finding.wanted]).collect::<Vec<Slot>>());
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
        let turns = |judged: &Judged, row: usize| {
            let plain = graded(judged.finding, |slot| block.at(slot, row));
            matches!(plain, Verdict::Meets | Verdict::Tight)
        };
        let turns: Vec<bool> =
            self.verdicts.iter().map(|judged| rows.clone().any(|row| turns(judged, row))).collect();
        let runs = |hit: &usize| self.serves[*hit].iter().any(|place| turns[*place]);
        let turning = || self.verdicts.iter().enumerate().filter(|(place, _)| turns[*place]);
        let column = |block: &Block<'_>, slot: Slot| -> Vec<f64> {
            rows.clone().map(|row| block.at(slot, row)).collect()
        };
        let mut worst: Vec<Vec<Worst>> = vec![vec![]; self.verdicts.len()];
        let mut wanted: Vec<Vec<f64>> = vec![vec![]; self.verdicts.len()];
        for (place, Judged { finding, .. }) in turning() {
            worst[place] = margins(block, finding).into_iter().map(Worst::of).collect();
            wanted[place] = column(block, finding.wanted);
        }
        let mut moved: Vec<Vec<Moved>> = self.verdicts.iter().map(|_| vec![]).collect();
        for (number, line) in self.lines.iter().enumerate() {
            let of = |lines: fn(&Judged) -> &Vec<usize>| -> Vec<usize> {
                turning()
                    .filter(|(_, judged)| lines(judged).contains(&number))
                    .map(|(place, _)| place)
                    .collect()
            };
            let (of, wishes) = (of(|judged| &judged.lines), of(|judged| &judged.wishes));
            if of.is_empty() && wishes.is_empty() {
                continue;
            }
            let ends = [0, 1].map(|end| line.ends.of(axes, end, &along));
            let hits: Vec<usize> = self.hits[number].iter().copied().filter(runs).collect();
            let before = self.kept(block, &[line.slot], &hits);
            let found = ends.clone().map(|end| {
                self.set(sheet, block, &[(line.slot, end)], &hits);
                let margins: Vec<Vec<f64>> =
                    of.iter().map(|place| margins(block, self.verdicts[*place].finding)).collect();
                let wanted: Vec<Vec<f64>> =
                    wishes.iter().map(|place| column(block, self.verdicts[*place].finding.wanted)).collect();
                (margins, wanted)
            });
            restore(block, before);
            let [(low, low_wanted), (high, high_wanted)] = found;
            for ((place, low), high) in of.into_iter().zip(low).zip(high) {
                let behind = self.verdicts[place].behind[number];
                let counted = rows.clone().map(|row| worst[place][row].count([low[row], high[row]], behind));
                moved[place].push(Moved {
                    slot: line.slot,
                    worse: counted.collect(),
                    here: block.column(line.slot).to_vec(),
                    ends: ends.clone(),
                });
            }
            for ((place, low), high) in wishes.into_iter().zip(low_wanted).zip(high_wanted) {
                let here = column(block, self.verdicts[place].finding.wanted);
                for row in rows.clone() {
                    wanted[place][row] += rise(here[row], [low[row], high[row]]);
                }
            }
        }
        for (place, Judged { output, finding, lines, .. }) in turning() {
            let mut hits: Vec<usize> = lines.iter().flat_map(|line| &self.hits[*line]).copied().collect();
            hits.sort_unstable();
            hits.dedup();
            hits.retain(|hit| self.serves[*hit].contains(&place));
            let slots: Vec<Slot> = lines.iter().map(|line| self.lines[*line].slot).collect();
            let before = self.kept(block, &slots, &hits);
            let at_corner = corner(&moved[place], rows.len(), true, |columns, _| {
                self.set(sheet, block, columns, &hits);
                margins(block, finding)
            });
            restore(block, before);
            let verdict = |(row, corner): (usize, Option<f64>)| {
                let worst = &worst[place][row];
                worst.verdict(finding, worst.margin(corner), wanted[place][row])
            };
            found[*output] = Some(at_corner.into_iter().enumerate().map(verdict).collect());
        }
        found
    }

    /// The columns of lines, and of what follows from them.
    fn kept(&self, block: &Block<'_>, lines: &[Slot], hits: &[usize]) -> Vec<(Slot, Vec<f64>)> {
        let follow = hits.iter().flat_map(|hit| self.nodes[*hit].outputs().map(|(_, slot)| slot));
        lines.iter().copied().chain(follow).map(|slot| (slot, block.column(slot).to_vec())).collect()
    }

    /// Moves lines, and computes those of the calls `hits` that follow from the lines that were elsewhere.
    fn set(&self, sheet: &Sheet, block: &mut Block<'_>, lines: &[(Slot, Vec<f64>)], hits: &[usize]) {
        let mut runs = vec![false; self.nodes.len()];
        for (slot, column) in lines {
            // What stands still in all rows is computed once.
            let still = column.iter().all(|value| value.to_bits() == column[0].to_bits());
            let column = if still { &column[..1] } else { column };
            if block.column(*slot) != column {
                block.set(*slot, column.to_vec());
                let line = self.lines.iter().position(|line| line.slot == *slot);
                line.iter().flat_map(|line| &self.hits[*line]).for_each(|hit| runs[*hit] = true);
            }
        }
        for node in hits.iter().filter(|hit| runs[**hit]).map(|hit| &self.nodes[*hit]) {
            node.run_block(sheet, block, &mut |_, _, _| {});
        }
    }
}

fn restore(block: &mut Block<'_>, before: Vec<(Slot, Vec<f64>)>) {
    before.into_iter().for_each(|(slot, column)| block.set(slot, column));
}
