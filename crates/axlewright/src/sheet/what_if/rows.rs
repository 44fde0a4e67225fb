//! The rows of a what-if: computed in blocks, on several threads, and joined to a table.
#![expect(clippy::indexing_slicing, reason = "one slot and one column an axis, in the order of the axes")]

use super::super::applies::Asked;
use super::super::assess::is_doubted;
use super::super::contradiction::Doubter;
use super::super::graph::{FindingInfo, Graph, Slot};
use super::super::margin::{graded, margin};
use super::super::plan::Block;
use super::super::{Sheet, Text, Written};
use super::output::{Output, held};
use super::{Axis, Progress, WhatIf};
use crate::base::section::Content;
use crate::base::table::{Column, MOST_REFUSED, Table, Values, no_memory, too_many_refused, within_memory};
use crate::{Error, Result, Verdict, cannot};
use std::borrow::Cow;
use std::collections::HashMap;
use std::ops::Range;
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::Duration;

/// Lines in doubt in the rows of a block, by the words and markings of a row.
type Doubts = HashMap<Vec<u64>, Doubt>;

/// Rows that differ in numbers alone: the lines in doubt, by those numbers.
struct Doubt {
    doubter: Doubter,
    known: HashMap<Vec<u64>, Vec<Slot>>,
}

/// Rows that are computed together; small enough for the cache, large enough to forget the cost of a call.
const BLOCK: usize = 1024;
/// Advice for a table that is too large.
const IN_PIECES: &str = "ask for its rows piece by piece: `WhatIf::table` takes a range of rows, `axw_what_if_table` takes `first` and `count`, and a sweep in Python has \
                         `batches`, `partitions` and `to_parquet`";
/// Fewer rows than this are not worth a thread.
const SERIAL: usize = 4 * BLOCK;
/// Most threads, however many are asked for.
const MOST_THREADS: usize = 256;

/// Rows to compute, and where their outputs go.
struct Job<'a> {
    rows: Range<usize>,
    changed: Vec<&'a mut [f64]>,
    numbers: Vec<&'a mut [f64]>,
    codes: Vec<&'a mut [i32]>,
}

impl WhatIf {
    /// The rows of a range as a table: a column for each line that changes, one for each output. On so many threads, none
    /// meaning as many as there are processors. Nothing where `progress` stopped it.
    ///
    /// A row in which a value or a call was refused has its reason; the outputs that do not follow from it keep their values. More rows than fit into
    /// [`MOST_BYTES`](crate::base::table::MOST_BYTES) are refused before anything is allocated, and a table with more refused rows than
    /// [`MOST_REFUSED`]: ask for the rows range by range. There may be any number of them in all.
    pub fn table(
        &self,
        rows: Range<usize>,
        threads: Option<usize>,
        progress: Progress<'_>,
    ) -> Result<Option<Table>> {
        self.table_with(rows, threads, MOST_REFUSED, progress)
    }

    /// The table, if no more rows than `most_refused` are refused.
    pub(super) fn table_with(
        &self,
        rows: Range<usize>,
        threads: Option<usize>,
        most_refused: usize,
        progress: Progress<'_>,
    ) -> Result<Option<Table>> {
        if rows.start > rows.end || rows.end > self.rows {
            return Err(cannot!("rows {} to {} are asked of {}", rows.start, rows.end, self.rows));
        }
        let count = within_memory(&[rows.len()], self.bytes_a_row(), IN_PIECES)?;
        if !self.has_memory(count) {
            return Err(no_memory(count, IN_PIECES));
        }
        let mut changed: Vec<Vec<f64>> = self.changed_quantities().map(|_| vec![0.0; count]).collect();
        let mut numbers: Vec<Vec<f64>> =
            self.outputs.iter().filter(|o| o.is_number()).map(|_| vec![0.0; count]).collect();
        let mut codes: Vec<Vec<i32>> =
            self.outputs.iter().filter(|o| !o.is_number()).map(|_| vec![0; count]).collect();
        // Each line with a tolerance is computed twice more: an interrupt does not wait longer for that.
        let computed = 1 + 2 * self.tolerant.lines();
        let block = (BLOCK / computed).max(16);
        let processors = || std::thread::available_parallelism().map_or(1, usize::from);
        let threads = if count.saturating_mul(computed) <= SERIAL {
            1
        } else {
            threads.unwrap_or_else(processors).clamp(1, count.div_ceil(block).clamp(1, MOST_THREADS))
        };
        let ran = {
            // A job is made when a thread takes it: those of a long table would themselves take gibibytes.
            let mut changed: Vec<_> = changed.iter_mut().map(|column| column.chunks_mut(block)).collect();
            let mut numbers: Vec<_> = numbers.iter_mut().map(|column| column.chunks_mut(block)).collect();
            let mut codes: Vec<_> = codes.iter_mut().map(|column| column.chunks_mut(block)).collect();
            let jobs = rows.clone().step_by(block).map(|start| Job {
                rows: start..(start + block).min(rows.end),
                changed: changed.iter_mut().filter_map(Iterator::next).collect(),
                numbers: numbers.iter_mut().filter_map(Iterator::next).collect(),
                codes: codes.iter_mut().filter_map(Iterator::next).collect(),
            });
            self.run(jobs, threads, most_refused, progress)
        };
        let Some(mut refused) = ran else { return Ok(None) };
        refused.sort_by_key(|(row, _)| *row);
        if refused.len() > most_refused {
            return Err(too_many_refused(most_refused, count, refused.first(), IN_PIECES));
        }
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

    /// True if the machine has the memory for the columns of so many rows. Zeroed columns, which the system gives page by page, come from `vec!`
    /// alone, and that ends the process where there is no memory.
    fn has_memory(&self, rows: usize) -> bool {
        let mut columns: Vec<u8> = Vec::new();
        let reserved = columns.try_reserve_exact(rows.saturating_mul(self.bytes_a_row())).is_ok();
        std::hint::black_box(&mut columns);
        reserved
    }

    /// Runs the jobs, and returns the refused rows; a few more than the most where there are too many. Nothing where it was stopped.
    fn run<'a>(
        &self,
        jobs: impl Iterator<Item = Job<'a>> + Send,
        threads: usize,
        most_refused: usize,
        progress: Progress<'_>,
    ) -> Option<Vec<(usize, Error)>> {
        if threads == 1 {
            let mut block = Block::new(&self.constant, &self.markings);
            let (mut refused, mut done) = (Vec::new(), 0);
            for job in jobs {
                done += job.rows.len();
                self.block(job, &mut block, &mut refused);
                if !progress(done) {
                    return None;
                }
                if refused.len() > most_refused {
                    break;
                }
            }
            return Some(refused);
        }
        let (stop, done, found) = (AtomicBool::new(false), AtomicUsize::new(0), AtomicUsize::new(0));
        let (jobs, refused) = (Mutex::new(jobs), Mutex::new(Vec::new()));
        let next = || jobs.lock().ok().and_then(|mut jobs| jobs.next());
        std::thread::scope(|scope| {
            let work = || {
                let mut block = Block::new(&self.constant, &self.markings);
                let mut own = Vec::new();
                while !stop.load(Ordering::Relaxed) {
                    let Some(job) = next() else { break };
                    let (rows, before) = (job.rows.len(), own.len());
                    self.block(job, &mut block, &mut own);
                    done.fetch_add(rows, Ordering::Relaxed);
                    let more = own.len() - before;
                    if found.fetch_add(more, Ordering::Relaxed) + more > most_refused {
                        break;
                    }
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

    /// Fills the rows of one job, and adds its refused rows, in order and each once.
    fn block(&self, job: Job<'_>, block: &mut Block<'_>, all_refused: &mut Vec<(usize, Error)>) {
        let Job { rows, changed, mut numbers, mut codes } = job;
        block.rows = rows.len();
        let mut refused = Vec::new();
        let spoilt = self.fill(&rows, block, &mut refused);
        for (slot, out) in self.changed_quantities().zip(changed) {
            spread(block.column(slot), out);
        }
        for node in &self.nodes {
            node.run_block(&self.sheet, block, &mut |row, slot, error| {
                refused.push((rows.start + row, at_line(slot, &error)));
            });
        }
        refused.sort_by_key(|(row, _)| *row);
        refused.dedup_by_key(|(row, _)| *row);
        all_refused.append(&mut refused);
        let counted = self.tolerant.verdicts(
            &self.sheet,
            &self.axes,
            block,
            |axis, values| self.along(axis, values, &rows),
            self.outputs.len(),
        );
        let (mut numbers, mut codes) = (numbers.iter_mut(), codes.iter_mut());
        let mut doubts = Doubts::new();
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
                            let plain = graded(finding, |slot| block.at(slot, row));
                            let mut on = match &counted[number] {
                                Some(verdicts) => verdicts[row],
                                None => self.still[number].unwrap_or(plain),
                            };
                            if self.may_contradict && on == Verdict::Meets {
                                let (doubter, doubted) = self.doubted(block, row, &mut doubts);
                                if is_doubted(&doubter.plan, finding, doubted) {
                                    on = Verdict::Tight;
                                }
                            }
                            let asked = self.is_asked(number, block, row, &mut doubts);
                            *out = asked.verdict_of(plain, on) as i32;
                        }
                        spoilt().for_each(|row| out[row] = Verdict::NotKnown as i32);
                    }
                }
            }
        }
    }

    /// True if the finding of an output is asked in a row.
    fn is_asked(&self, output: usize, block: &Block<'_>, row: usize, doubts: &mut Doubts) -> Cow<'_, Asked> {
        if let Some(asked) = &self.asked[output] {
            return Cow::Borrowed(asked);
        }
        let asked = |doubted: &[Slot]| {
            self.applies[output].asked(|slot| block.at(slot, row), |slot| doubted.contains(&slot))
        };
        let first = asked(&[]);
        Cow::Owned(if self.may_contradict && matches!(first, Asked::No(_)) {
            asked(self.doubted(block, row, doubts).1)
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
        doubts: &mut Doubts,
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
    fn doubted<'a>(
        &self,
        block: &Block<'_>,
        row: usize,
        doubts: &'a mut Doubts,
    ) -> (&'a Doubter, &'a [Slot]) {
        let is_number = |slot: &Slot| matches!(Graph::get().info(*slot).line.content, Content::Quantity(_));
        let words = self.axes.iter().flat_map(|axis| &axis.slots).filter(|slot| !is_number(slot));
        let words = words.map(|slot| block.at(*slot, row).to_bits()).collect();
        let doubt = doubts.entry(words).or_insert_with(|| Doubt {
            doubter: Doubter::new(self.written(block, row)),
            known: HashMap::new(),
        });
        let numbers = || self.doubting.iter().filter(|slot| is_number(slot));
        let key = numbers().map(|slot| block.at(*slot, row).to_bits()).collect();
        let Doubt { doubter, known } = doubt;
        let doubted = known
            .entry(key)
            .or_insert_with(|| doubter.with(numbers().map(|slot| (*slot, block.at(*slot, row)))));
        (doubter, doubted)
    }

    /// The sheet of a row.
    fn written(&self, block: &Block<'_>, row: usize) -> Sheet {
        let mut sheet = self.sheet.clone();
        for slot in self.axes.iter().flat_map(|axis| &axis.slots) {
            let mut si = block.at(*slot, row);
            let mut decoded = vec![];
            if let Content::Marking(_) = Graph::get().info(*slot).line.content {
                decoded = self.markings.get((si as usize).saturating_sub(1)).cloned().unwrap_or_default();
                si = 0.0;
            }
            let text = Text::Number(si);
            sheet.values.insert(*slot, Written { si, text, tolerance: None, decoded });
        }
        sheet
    }

    /// The values of an axis in these rows, one in all of them where it is the same.
    fn along(&self, axis: usize, values: &[f64], rows: &Range<usize>) -> Vec<f64> {
        let inner = self.axes.iter().skip(axis + 1).map(Axis::len).fold(1, usize::saturating_mul);
        let stride = if self.side_by_side { 1 } else { inner };
        let same = rows.start / stride == (rows.end - 1) / stride;
        let mut column = Vec::new();
        let some = |column: &mut Vec<f64>, places: Range<usize>| column.extend_from_slice(&values[places]);
        extend(&mut column, values.len(), some, rows.start, if same { 1 } else { rows.len() }, stride);
        column
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
