//! Lines of a sheet over lists of values, and any outputs: as one table, or piece by piece.
#![expect(clippy::indexing_slicing, reason = "one slot and one column an axis, in the order of the axes")]

use super::applies::{Applies, Asked};
use super::assess::is_doubted;
use super::contradiction::{doubted, may_contradict};
use super::dropped::{by_sweep, paths};
use super::graph::{FindingInfo, Graph, MarginSlots, Slot};
use super::margin::{graded, margin, margin_kind, value_kind};
use super::plan::{Block, Plan, Refusals};
use super::{Sheet, writable};
use crate::base::document::Tree;
use crate::base::section::Content;
use crate::base::table::{Column, Table, Values, within_memory};
use crate::base::text;
use crate::units::Kind;
use crate::{Error, Result, Verdict, cannot};
use std::borrow::Cow;
use std::ops::Range;
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::Duration;

/// Lines that change together, and what they change to.
#[derive(Debug, Clone)]
pub struct Axis {
    slots: Vec<Slot>,
    /// The values of each line.
    columns: Vec<Series>,
    /// Words or markings of a column that has no quantity.
    labels: Vec<Vec<String>>,
    /// Numbers of the markings of a column.
    decoded: Vec<Vec<Vec<f64>>>,
    /// True if the line does not allow some of its values.
    refuses: bool,
}

/// The values of one line of an axis, in coherent SI.
#[derive(Debug, Clone)]
enum Series {
    /// One by one.
    Listed(Vec<f64>),
    /// At equal steps. Each is computed where a row asks for it, so that a long range takes no memory.
    Range { from: f64, to: f64, count: usize },
}

impl Series {
    fn len(&self) -> usize {
        match self {
            Series::Listed(values) => values.len(),
            Series::Range { count, .. } => *count,
        }
    }

    fn at(&self, place: usize) -> f64 {
        match self {
            Series::Listed(values) => values[place],
            Series::Range { to, count, .. } if place + 1 == *count => *to,
            Series::Range { from, to, count } => from + (to - from) * (place as f64 / (count - 1) as f64),
        }
    }

    /// Adds the values of these places to a column.
    fn extend(&self, column: &mut Vec<f64>, places: Range<usize>) {
        match self {
            Series::Listed(values) => column.extend_from_slice(&values[places]),
            Series::Range { .. } => column.extend(places.map(|place| self.at(place))),
        }
    }
}

impl Axis {
    /// One line over values as a document writes them.
    pub fn texts(path: &str, values: &[&str]) -> Result<Axis> {
        let rows: Vec<Vec<&str>> = values.iter().map(|value| vec![*value]).collect();
        Axis::entries(&[path], &rows)
    }

    /// Several lines that change together, an entry of a catalogue a row.
    pub fn entries(paths: &[&str], rows: &[Vec<&str>]) -> Result<Axis> {
        let graph = Graph::get();
        let mut axis = Axis::empty(paths)?;
        let mut columns = vec![vec![]; paths.len()];
        for (number, row) in rows.iter().enumerate() {
            if row.len() != paths.len() {
                let message = format!(
                    "entry {number} has {} values, not one for each of {} lines",
                    row.len(),
                    paths.len()
                );
                return Err(Error::document(paths.first().copied().unwrap_or(""), message));
            }
            for (place, text) in row.iter().enumerate() {
                let slot = axis.slots[place];
                let is_quantity = graph.info(slot).kind().is_some();
                let written = super::written(slot, &super::spot_of(slot, text))?;
                let si = match graph.info(slot).line.content {
                    Content::Marking(_) => {
                        axis.decoded[place].push(written.decoded);
                        axis.decoded[place].len() as f64
                    }
                    _ => written.si,
                };
                if !is_quantity {
                    axis.labels[place].push((*text).to_owned());
                }
                columns[place].push(si);
            }
        }
        axis.columns = columns.into_iter().map(Series::Listed).collect();
        Ok(axis)
    }

    /// One line over numbers in coherent SI. A value that the line does not allow refuses its rows, not the sweep.
    pub fn numbers(path: &str, values: &[f64]) -> Result<Axis> {
        let mut axis = Axis::empty(&[path])?;
        if !matches!(Graph::get().info(axis.slots[0]).line.content, Content::Quantity(_)) {
            return Err(Error::document(path, "this line takes text, not numbers".to_owned()));
        }
        axis.columns = vec![Series::Listed(values.to_vec())];
        axis.refuses = (0..values.len()).any(|place| axis.refusal(place).is_some());
        Ok(axis)
    }

    /// One line from a value to another, both as a document writes them, in so many equal steps. A long range takes no memory: its values are computed row by row.
    pub fn range(path: &str, from: &str, to: &str, count: usize) -> Result<Axis> {
        let mut axis = Axis::texts(path, &[from, to])?;
        if !matches!(Graph::get().info(axis.slots[0]).line.content, Content::Quantity(_)) {
            return Err(Error::document(path, "this line takes text, which has no range".to_owned()));
        }
        let (from, to) = (axis.columns[0].at(0), axis.columns[0].at(1));
        if count < 2 {
            return Err(Error::Length {
                argument: "count",
                length: count,
                wanted: "a range has at least two values",
            });
        }
        axis.columns = vec![Series::Range { from, to, count }];
        // The values rise or fall all the way, so that the first and the last two stand for all of them.
        axis.refuses = [0, count - 2, count - 1].into_iter().any(|place| axis.refusal(place).is_some());
        Ok(axis)
    }

    /// Reason why the line does not allow the value of this place; texts were refused when they were read.
    fn refusal(&self, place: usize) -> Option<Error> {
        let info = Graph::get().info(*self.slots.first()?);
        let Content::Quantity(kind) = info.line.content else { return None };
        let value = self.columns.first()?.at(place);
        if info.line.range.allows(value) {
            return None;
        }
        let (units, bounds) = (text::shop_units(kind), [info.line.range.lower, info.line.range.upper]);
        let digits = text::digits_apart(value, &bounds, &units);
        let shown = Tree::Text(text::said_in(&[value], &units, digits));
        Some(Error::document(info.path, super::outside(&shown, info.line.range, kind)))
    }

    /// Number of values.
    pub fn len(&self) -> usize {
        self.columns.first().map_or(0, Series::len)
    }

    /// True if it has no value.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    fn empty(paths: &[&str]) -> Result<Axis> {
        let slots: Vec<Slot> = paths.iter().map(|path| writable(path)).collect::<Result<_>>()?;
        if slots.is_empty() {
            return Err(Error::Length {
                argument: "paths",
                length: 0,
                wanted: "an axis changes at least one line",
            });
        }
        let (labels, decoded) = (vec![vec![]; slots.len()], vec![vec![]; slots.len()]);
        Ok(Axis { columns: vec![], labels, decoded, refuses: false, slots })
    }
}

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
    /// True if the lines of a row may contradict each other and a safety verdict is an output.
    may_contradict: bool,
}

/// The plan of a row and the lines that are in doubt there, once somebody asked.
type Doubt = Option<(Plan, Vec<Slot>)>;

enum Output {
    Line { name: &'static str, slot: Slot },
    Value { name: String, finding: &'static FindingInfo },
    Margin { name: String, finding: &'static FindingInfo },
    Verdict { name: String, finding: &'static FindingInfo },
}

/// Receives the number of finished rows; an answer of `false` stops the run.
pub type Progress<'a> = &'a mut dyn FnMut(usize) -> bool;

/// Rows that are computed together; small enough for the cache, large enough to forget the cost of a call.
const BLOCK: usize = 1024;
/// Advice for a table that is too large.
const IN_PIECES: &str = "ask for its rows piece by piece: `WhatIf::table` takes a range of rows, `axw_what_if_table` takes `first` and `count`, and a sweep in Python has \
                         `batches`, `partitions` and `to_parquet`";
/// Fewer rows than this are not worth a thread.
const SERIAL: usize = 4 * BLOCK;

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
        let follow = follow.collect();
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
                .flat_map(|slot| lacks(&plan, &constant, &refusals, &moving, slot))
                .chain(open)
                .collect();
            (!why.is_empty()).then(|| (output.name().into_owned(), why.join("; ")))
        });
        let not_known = not_known.collect();
        let graded = outputs.iter().any(|output| {
            let safety =
                matches!(output, Output::Verdict { finding, .. } if !finding.finding.caution.is_empty());
            safety || output.choices().next().is_some()
        });
        let may_contradict = graded && may_contradict(sheet, changes);
        Ok(WhatIf {
            may_contradict,
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

    /// Number of rows.
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// The rows of a range as a table: a column for each line that changes, one for each output. On so many threads, none
    /// meaning as many as there are processors. Nothing where `progress` stopped it.
    ///
    /// A row in which a value or a call was refused has its reason; the outputs that do not follow from it keep their values. More rows than fit into
    /// [`MOST_BYTES`](crate::base::table::MOST_BYTES) are refused before anything is allocated: ask for them range by range.
    pub fn table(
        &self,
        rows: Range<usize>,
        threads: Option<usize>,
        progress: Progress<'_>,
    ) -> Result<Option<Table>> {
        if rows.start > rows.end || rows.end > self.rows {
            return Err(cannot!("rows {} to {} are asked of {}", rows.start, rows.end, self.rows));
        }
        let count = within_memory(&[rows.len()], self.bytes_a_row(), IN_PIECES)?;
        let mut changed: Vec<Vec<f64>> = self.changed_quantities().map(|_| vec![0.0; count]).collect();
        let mut numbers: Vec<Vec<f64>> =
            self.outputs.iter().filter(|o| o.is_number()).map(|_| vec![0.0; count]).collect();
        let mut codes: Vec<Vec<i32>> =
            self.outputs.iter().filter(|o| !o.is_number()).map(|_| vec![0; count]).collect();
        let mut jobs = Vec::new();
        {
            let mut changed: Vec<_> = changed.iter_mut().map(|column| column.chunks_mut(BLOCK)).collect();
            let mut numbers: Vec<_> = numbers.iter_mut().map(|column| column.chunks_mut(BLOCK)).collect();
            let mut codes: Vec<_> = codes.iter_mut().map(|column| column.chunks_mut(BLOCK)).collect();
            for start in rows.clone().step_by(BLOCK) {
                jobs.push(Job {
                    rows: start..(start + BLOCK).min(rows.end),
                    changed: changed.iter_mut().filter_map(Iterator::next).collect(),
                    numbers: numbers.iter_mut().filter_map(Iterator::next).collect(),
                    codes: codes.iter_mut().filter_map(Iterator::next).collect(),
                });
            }
        }
        let processors = || std::thread::available_parallelism().map_or(1, usize::from);
        let threads =
            if count <= SERIAL { 1 } else { threads.unwrap_or_else(processors).clamp(1, jobs.len().max(1)) };
        let Some(mut refused) = self.run(jobs, threads, progress) else { return Ok(None) };
        refused.sort_by_key(|(row, _)| *row);
        refused.dedup_by_key(|(row, _)| *row);
        refused.iter_mut().for_each(|(row, _)| *row -= rows.start);
        let mut columns = self.inputs(&rows, changed);
        let (mut numbers, mut codes) = (numbers.into_iter(), codes.into_iter());
        for output in &self.outputs {
            let values = if output.is_number() {
                Values::F64(numbers.next().unwrap_or_default())
            } else {
                let labels = Verdict::ALL.map(|verdict| verdict.word().to_owned()).to_vec();
                Values::Category { codes: codes.next().unwrap_or_default(), labels }
            };
            columns.push(Column { name: output.name(), kind: output.kind(), values });
        }
        Ok(Some(Table::of(columns, count, refused)))
    }

    /// Bytes that the columns of a table take a row.
    fn bytes_a_row(&self) -> usize {
        let changed = self.axes.iter().flat_map(|axis| &axis.slots);
        let inputs = changed.map(|slot| if Graph::get().info(*slot).kind().is_some() { 8 } else { 4 });
        let outputs = self.outputs.iter().map(|output| if output.is_number() { 8 } else { 4 });
        inputs.chain(outputs).sum()
    }

    /// All rows as one table.
    pub fn whole(&self) -> Result<Table> {
        Ok(self.table(0..self.rows, None, &mut |_| true)?.unwrap_or_default())
    }

    fn run(&self, jobs: Vec<Job<'_>>, threads: usize, progress: Progress<'_>) -> Option<Vec<(usize, Error)>> {
        if threads == 1 {
            let mut block = Block::new(&self.constant, &self.markings);
            let (mut refused, mut done) = (Vec::new(), 0);
            for job in jobs {
                done += job.rows.len();
                self.block(job, &mut block, &mut refused);
                if !progress(done) {
                    return None;
                }
            }
            return Some(refused);
        }
        let (stop, done) = (AtomicBool::new(false), AtomicUsize::new(0));
        let (jobs, refused) = (Mutex::new(jobs.into_iter()), Mutex::new(Vec::new()));
        let next = || jobs.lock().ok().and_then(|mut jobs| jobs.next());
        std::thread::scope(|scope| {
            let work = || {
                let mut block = Block::new(&self.constant, &self.markings);
                let mut own = Vec::new();
                while !stop.load(Ordering::Relaxed) {
                    let Some(job) = next() else { break };
                    let rows = job.rows.len();
                    self.block(job, &mut block, &mut own);
                    done.fetch_add(rows, Ordering::Relaxed);
                }
                if let Ok(mut refused) = refused.lock() {
                    refused.append(&mut own);
                }
            };
            let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
            // It is asked once at least, however soon the workers are done.
            loop {
                std::thread::park_timeout(Duration::from_micros(500));
                let finished = workers.iter().all(|worker| worker.is_finished());
                if !progress(done.load(Ordering::Relaxed)) {
                    stop.store(true, Ordering::Relaxed);
                    break;
                }
                if finished {
                    break;
                }
            }
        });
        let stopped = stop.into_inner();
        (!stopped).then(|| refused.into_inner().unwrap_or_default())
    }

    /// Fills the rows of one job.
    fn block(&self, job: Job<'_>, block: &mut Block<'_>, refused: &mut Vec<(usize, Error)>) {
        let Job { rows, changed, mut numbers, mut codes } = job;
        block.rows = rows.len();
        let spoilt = self.fill(&rows, block, refused);
        for (slot, out) in self.changed_quantities().zip(changed) {
            spread(block.column(slot), out);
        }
        for node in &self.nodes {
            node.run_block(&self.sheet, block, &mut |row, slot, error| {
                refused.push((rows.start + row, at_line(slot, &error)));
            });
        }
        let (mut numbers, mut codes) = (numbers.iter_mut(), codes.iter_mut());
        let mut doubts: Vec<Doubt> = if self.may_contradict { vec![None; rows.len()] } else { vec![] };
        for (number, output) in self.outputs.iter().enumerate() {
            let spoilt = || spoilt.iter().filter(|(_, axis)| self.follow[*axis][number]).map(|(row, _)| *row);
            match output {
                Output::Line { slot, .. } => {
                    if let Some(out) = numbers.next() {
                        spread(block.column(*slot), out);
                        spoilt().for_each(|row| out[row] = f64::NAN);
                    }
                }
                Output::Value { finding, .. } => {
                    if let Some(out) = numbers.next() {
                        spread(block.column(held(finding)), out);
                        self.strike(number, finding, block, &mut doubts, out);
                        spoilt().for_each(|row| out[row] = f64::NAN);
                    }
                }
                Output::Margin { finding, .. } => {
                    if let Some(out) = numbers.next() {
                        for (row, out) in out.iter_mut().enumerate() {
                            *out = margin(finding, |slot| block.at(slot, row));
                        }
                        self.strike(number, finding, block, &mut doubts, out);
                        spoilt().for_each(|row| out[row] = f64::NAN);
                    }
                }
                Output::Verdict { finding, .. } => {
                    if let Some(out) = codes.next() {
                        for (row, out) in out.iter_mut().enumerate() {
                            let mut on = graded(finding, |slot| block.at(slot, row));
                            if self.may_contradict && on == Verdict::Meets {
                                let known = doubts[row].get_or_insert_with(|| self.doubted(block, row));
                                if is_doubted(&known.0, finding, &known.1) {
                                    on = Verdict::Tight;
                                }
                            }
                            let asked = self.is_asked(number, block, row, &mut doubts);
                            *out = asked.verdict(on) as i32;
                        }
                        spoilt().for_each(|row| out[row] = Verdict::NotKnown as i32);
                    }
                }
            }
        }
    }

    /// True if the finding of an output is asked in a row.
    fn is_asked(&self, output: usize, block: &Block<'_>, row: usize, doubts: &mut [Doubt]) -> Cow<'_, Asked> {
        if let Some(asked) = &self.asked[output] {
            return Cow::Borrowed(asked);
        }
        let asked = |doubted: &[Slot]| {
            self.applies[output].asked(|slot| block.at(slot, row), |slot| doubted.contains(&slot))
        };
        let first = asked(&[]);
        Cow::Owned(if self.may_contradict && matches!(first, Asked::No(_)) {
            asked(&doubts[row].get_or_insert_with(|| self.doubted(block, row)).1)
        } else {
            first
        })
    }

    /// Takes the numbers of an output out of the rows to which its finding does not apply.
    fn strike(
        &self,
        output: usize,
        finding: &FindingInfo,
        block: &Block<'_>,
        doubts: &mut [Doubt],
        out: &mut [f64],
    ) {
        for (row, out) in out.iter_mut().enumerate() {
            match self.is_asked(output, block, row, doubts).as_ref() {
                asked @ Asked::No(_)
                    if asked.verdict(graded(finding, |slot| block.at(slot, row)))
                        == Verdict::DoesNotApply =>
                {
                    *out = f64::NAN;
                }
                Asked::No(_) => {}
                _ if self.asked[output].is_some() => return,
                _ => {}
            }
        }
    }

    /// The lines of a row that are in doubt, and the plan of that row.
    fn doubted(&self, block: &Block<'_>, row: usize) -> (Plan, Vec<Slot>) {
        let mut sheet = self.sheet.clone();
        for slot in self.axes.iter().flat_map(|axis| &axis.slots) {
            let mut si = block.at(*slot, row);
            let mut decoded = vec![];
            if let Content::Marking(_) = Graph::get().info(*slot).line.content {
                decoded = self.markings.get((si as usize).saturating_sub(1)).cloned().unwrap_or_default();
                si = 0.0;
            }
            let text = super::Text::Number(si);
            sheet.values.insert(*slot, super::Written { si, text, tolerance: None, decoded });
        }
        doubted(&sheet)
    }

    /// The columns of the lines that change, for some rows; one value where it is the same in all of them. Gives the rows, counted from
    /// the first, in which the value of an axis is refused, and the axis.
    fn fill(
        &self,
        rows: &Range<usize>,
        block: &mut Block<'_>,
        refused: &mut Vec<(usize, Error)>,
    ) -> Vec<(usize, usize)> {
        let mut spoilt = Vec::new();
        let mut stride = if self.side_by_side { 1 } else { self.rows };
        for (number, axis) in self.axes.iter().enumerate() {
            if !self.side_by_side {
                stride /= axis.len();
            }
            let same = rows.start / stride == (rows.end - 1) / stride;
            for (slot, values) in axis.slots.iter().zip(&axis.columns) {
                let mut column = block.empty(0);
                let wanted = if same { 1 } else { rows.len() };
                let some = |column: &mut Vec<f64>, places| values.extend(column, places);
                extend(&mut column, values.len(), some, rows.start, wanted, stride);
                block.set(*slot, column);
            }
            if axis.refuses {
                for row in rows.clone() {
                    if let Some(error) = axis.refusal((row / stride) % axis.len()) {
                        refused.push((row, error));
                        spoilt.push((row - rows.start, number));
                    }
                }
            }
        }
        spoilt
    }

    /// The lines that change and are quantities.
    fn changed_quantities(&self) -> impl Iterator<Item = Slot> {
        let slots = self.axes.iter().flat_map(|axis| axis.slots.iter().copied());
        slots.filter(|slot| Graph::get().info(*slot).kind().is_some())
    }

    /// The lines that change as columns of a table; the numbers of the quantities among them are there.
    fn inputs(&self, rows: &Range<usize>, changed: Vec<Vec<f64>>) -> Vec<Column> {
        let graph = Graph::get();
        let mut columns = Vec::new();
        let mut changed = changed.into_iter();
        let mut stride = if self.side_by_side { 1 } else { self.rows };
        for axis in &self.axes {
            if !self.side_by_side {
                stride /= axis.len().max(1);
            }
            for (place, slot) in axis.slots.iter().enumerate() {
                let info = graph.info(*slot);
                let values = if info.kind().is_some() {
                    Values::F64(changed.next().unwrap_or_default())
                } else {
                    let mut labels = axis.labels[place].clone();
                    labels.sort_unstable();
                    labels.dedup();
                    let code = |text: &String| labels.binary_search(text).map_or(-1, |code| code as i32);
                    let of_value: Vec<i32> = axis.labels[place].iter().map(code).collect();
                    let mut codes = Vec::with_capacity(rows.len());
                    let some = |codes: &mut Vec<i32>, places| codes.extend_from_slice(&of_value[places]);
                    extend(&mut codes, of_value.len(), some, rows.start, rows.len(), stride);
                    Values::Category { codes, labels }
                };
                columns.push(Column { name: Cow::Borrowed(info.path), kind: info.kind(), values });
            }
        }
        columns
    }
}

/// The values of an axis in so many rows from one on, each in as many rows as the stride before the next. `some` adds those of some places.
fn extend<T: Copy>(
    column: &mut Vec<T>,
    length: usize,
    some: impl Fn(&mut Vec<T>, Range<usize>),
    from: usize,
    count: usize,
    stride: usize,
) {
    let mut row = from;
    while row < from + count && length > 0 {
        let place = (row / stride) % length;
        let left = from + count - row;
        let run = if stride == 1 {
            let run = left.min(length - place);
            some(column, place..place + run);
            run
        } else {
            let run = left.min(stride - row % stride);
            some(column, place..place + 1);
            if let Some(value) = column.last().copied() {
                column.resize(column.len() + run - 1, value);
            }
            run
        };
        row += run;
    }
}

/// Rows to compute, and where their outputs go.
struct Job<'a> {
    rows: Range<usize>,
    changed: Vec<&'a mut [f64]>,
    numbers: Vec<&'a mut [f64]>,
    codes: Vec<&'a mut [i32]>,
}

/// Inputs that an output lacks in every row; a line that is computed row by row lacks nothing in all of them.
fn lacks(plan: &Plan, constant: &[f64], refusals: &Refusals, moving: &[Slot], slot: Slot) -> Vec<String> {
    let graph = Graph::get();
    let needs = plan.needs(slot).into_iter().map(|slot| format!("needs {}", graph.info(slot).path));
    let reached = plan.rests_on(&[slot]);
    let refused = refusals.iter().filter_map(|(slot, error)| Some((plan.filled(*slot, &reached)?, error)));
    let refused = refused.map(|(slot, error)| format!("{}: {error}", graph.info(slot).path));
    let lacking = plan
        .lacking(constant, &reached)
        .filter(|(slot, _)| !moving.contains(slot))
        .map(|(slot, lacking)| format!("{}: {lacking}", graph.info(slot).path));
    needs.chain(refused).chain(lacking).collect()
}

fn spread(column: &[f64], out: &mut [f64]) {
    match column {
        [one] => out.fill(*one),
        column => out.copy_from_slice(column),
    }
}

/// The refusal of a call, by the line that stays empty.
fn at_line(slot: Slot, error: &Error) -> Error {
    Error::document(Graph::get().info(slot).path, error.to_string())
}

/// The line that a finding holds against its limit.
fn held(finding: &FindingInfo) -> Slot {
    match finding.margin {
        MarginSlots::Ratio { demand, .. } => demand,
        MarginSlots::Remaining { value }
        | MarginSlots::AtLeast { value, .. }
        | MarginSlots::AtMost { value, .. }
        | MarginSlots::Band { value, .. } => value,
    }
}

impl Output {
    fn margin(finding: &'static FindingInfo) -> Output {
        Output::Margin { name: format!("{}.margin", finding.path), finding }
    }

    fn verdict(finding: &'static FindingInfo) -> Output {
        Output::Verdict { name: format!("{}.verdict", finding.path), finding }
    }

    fn read(path: &str) -> Result<Output> {
        let graph = Graph::get();
        if let Some(slot) = graph.slot(path) {
            let info = graph.info(slot);
            if info.kind().is_none() {
                return Err(Error::document(
                    path,
                    "this line is no quantity: it cannot be an output".to_owned(),
                ));
            }
            return Ok(Output::Line { name: info.path, slot });
        }
        if let Some((name, what)) = path.rsplit_once('.')
            && let Some(finding) = graph.finding(name).map(|at| &graph.findings[at])
        {
            match what {
                "value" => return Ok(Output::Value { name: path.to_owned(), finding }),
                "margin" => return Ok(Output::margin(finding)),
                "verdict" => return Ok(Output::verdict(finding)),
                _ => {}
            }
        }
        let findings: Vec<String> = graph
            .findings
            .iter()
            .flat_map(|finding| ["value", "margin", "verdict"].map(|what| format!("{}.{what}", finding.path)))
            .collect();
        let known = graph.slots.iter().map(|slot| slot.path).chain(findings.iter().map(String::as_str));
        let near = text::did_you_mean(path, known);
        let message = format!("neither a line nor a finding with `.value`, `.margin` or `.verdict`{near}");
        Err(Error::document(text::shortened(path), message))
    }

    fn slots(&self) -> Vec<Slot> {
        match self {
            Output::Line { slot, .. } => vec![*slot],
            Output::Value { finding, .. } => vec![held(finding)],
            Output::Margin { finding, .. } => finding.slots().collect(),
            Output::Verdict { finding, .. } => finding.slots().chain([finding.wanted]).collect(),
        }
    }

    /// The finding of which it is a part.
    fn finding(&self) -> Option<&'static FindingInfo> {
        match self {
            Output::Line { .. } => None,
            Output::Value { finding, .. }
            | Output::Margin { finding, .. }
            | Output::Verdict { finding, .. } => Some(finding),
        }
    }

    /// The choices that decide whether that is asked.
    fn choices(&self) -> impl Iterator<Item = Slot> {
        self.finding().into_iter().flat_map(FindingInfo::choices)
    }

    fn is_number(&self) -> bool {
        !matches!(self, Output::Verdict { .. })
    }

    fn name(&self) -> Cow<'static, str> {
        match self {
            Output::Line { name, .. } => Cow::Borrowed(name),
            Output::Value { name, .. } | Output::Margin { name, .. } | Output::Verdict { name, .. } => {
                Cow::Owned(name.clone())
            }
        }
    }

    fn kind(&self) -> Option<&'static Kind> {
        match self {
            Output::Line { slot, .. } => Some(value_kind(*slot)),
            Output::Value { finding, .. } => Some(value_kind(held(finding))),
            Output::Margin { finding, .. } => Some(margin_kind(finding)),
            Output::Verdict { .. } => None,
        }
    }
}

/// The lines on which an output rests directly, and its finding if it is of one.
pub(super) fn slots_of(output: &str) -> Result<(Vec<Slot>, Option<&'static FindingInfo>)> {
    let read = Output::read(output)?;
    Ok((read.slots(), read.finding()))
}

/// The kind of an output that is a number.
pub(super) fn kind_of(output: &str) -> Result<&'static Kind> {
    let read = Output::read(output)?;
    read.kind().ok_or_else(|| {
        Error::document(output, "a verdict is a word: write `= meets` or `= tight`".to_owned())
    })
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
