//! Influence of each tolerance on a finding, and the chance that its verdict turns within the tolerances.
#![expect(
    clippy::indexing_slicing,
    reason = "a slot is a place in the one graph, and every list here is as long as it; a verdict is a place in the list of verdicts"
)]

use super::assess::{Answer, Assessment, is_doubted};
use super::graph::{Graph, Slot};
use super::margin::{difference, is_no_change, margin, value_kind, verdict};
use super::plan::{Block, at};
use super::shop::Shop;
use super::uncertainty::{Spread, changes, tolerances};
use super::what_if::{Progress, held};
use crate::base::text::{Form, System};
use crate::units::Kind;
use crate::{Error, Result, Verdict};

/// Effect of one tolerance on a margin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sensitivity {
    /// The written line.
    pub path: &'static str,
    /// Its tolerance: half the width of the band or the standard deviation, in coherent SI.
    pub tolerance: f64,
    /// Kind of the tolerance.
    pub kind: &'static Kind,
    /// Change of the margin per one tolerance, in the coherent SI unit of the margin; with its sign.
    pub margin_change: f64,
    /// Its share of the variance of the margin, to first order.
    pub share: f64,
}

impl Sensitivity {
    /// It in words, with the finding whose margin it moves: `front.spring.rate +12 lbf/in: margin of front.frequency -0.0168 Hz, 62 % of its
    /// variance`.
    pub fn text(&self, answer: &Answer, system: System) -> String {
        let graph = Graph::get();
        let shop = Shop::of(system);
        let line = graph.slot(self.path).map(|slot| graph.info(slot).line);
        let of = graph.finding(answer.path).map(|at| graph.info(held(&graph.findings[at])).line);
        let signed = |si: f64, kind: &'static Kind, line| match si.is_nan() {
            true => "not known".to_owned(),
            false => format!("{}{}", if si < 0.0 { "" } else { "+" }, shop.say_to(si, kind, line, 4)),
        };
        let share = match self.share.is_nan() {
            true => "its share of the variance is not known".to_owned(),
            false if self.share < 0.005 => "under 1 % of its variance".to_owned(),
            false => format!("{:.0} % of its variance", 100.0 * self.share),
        };
        format!(
            "{} {}: margin of {} {}, {share}",
            self.path,
            signed(self.tolerance, self.kind, line),
            answer.path,
            signed(self.margin_change, answer.margin_kind, of)
        )
    }
}

/// Certainty of a verdict within the tolerances.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chance {
    /// The finding.
    pub path: &'static str,
    /// Verdict of the written values without their tolerances.
    pub verdict: Verdict,
    /// Share of the samples that have another verdict.
    pub turns: f64,
    /// Share that meets, is tight, is short, is not known, does not apply.
    pub shares: [f64; Verdict::ALL.len()],
    /// Mean of the margin over the samples in which it is known, in coherent SI.
    pub mean: f64,
    /// Standard deviation of the margin over them.
    pub deviation: f64,
}

/// Samples that are computed together: enough that a step costs little more than its formulas, and so few that an interrupt need not
/// wait where each sample moves the linkages of two axles.
const BLOCK: usize = 128;

impl Assessment {
    /// The written lines with a tolerance that move the margin of an answer, the one that matters most first: the change of the margin
    /// when the line goes up by one tolerance, from a central difference over both sides.
    pub fn sensitivity(&self, answer: &Answer) -> Vec<Sensitivity> {
        let graph = Graph::get();
        let asked = answer.verdict != Verdict::DoesNotApply;
        let Some(finding) = graph.finding(answer.path).filter(|_| asked) else { return vec![] };
        let spread: Vec<Spread> = tolerances(&self.sheet).collect();
        let mut found = Vec::new();
        changes(&self.sheet, &self.plan, &self.values, &spread, |line, of| {
            if of.finding == finding && of.half != 0.0 {
                let Spread { slot, step: [low, high], share, .. } = spread[line];
                let written = self.sheet.values.get(&slot).and_then(|written| written.tolerance);
                let tolerance = written.map_or(f64::NAN, |tolerance| tolerance.si);
                let change = of.half * tolerance / ((high - low) / 2.0);
                let share = (of.half * share) * (of.half * share);
                let kind = difference(value_kind(slot));
                found.push(Sensitivity {
                    path: graph.info(slot).path,
                    tolerance,
                    kind,
                    margin_change: change,
                    share,
                });
            }
        });
        // A change that is not known, because both sides are refused, comes first; then no share is known.
        found.sort_by(|one, two| two.share.abs().total_cmp(&one.share.abs()));
        let total: f64 = found.iter().map(|one| one.share).sum();
        found.iter_mut().for_each(|one| one.share /= total);
        found.retain(|one| !is_no_change(one.margin_change, answer.margin));
        found
    }

    /// The chance that each verdict turns within the tolerances: inputs independent, a bound rectangular, a standard deviation normal; so
    /// many samples from a seed, the same samples for the same seed on every machine. At most [`MOST_SAMPLES`] at once.
    pub fn chances(&self, samples: usize, seed: u64) -> Result<Vec<Chance>> {
        Ok(self.chances_told(samples, seed, &mut |_| true)?.unwrap_or_default())
    }

    /// The chances, with the number of finished samples given to `progress`. Nothing if it stopped the run.
    pub fn chances_told(
        &self,
        samples: usize,
        seed: u64,
        progress: Progress<'_>,
    ) -> Result<Option<Vec<Chance>>> {
        if samples == 0 {
            return Err(Error::Length {
                argument: "samples",
                length: 0,
                wanted: "at least one sample is wanted",
            });
        }
        if samples > MOST_SAMPLES {
            return Err(Error::Length {
                argument: "samples",
                length: samples,
                wanted: "one call draws at most 10,000,000 samples: for more, take the mean of calls with other seeds",
            });
        }
        let graph = Graph::get();
        let spread: Vec<(Slot, f64, Form)> = self
            .sheet
            .values
            .iter()
            .filter_map(|(slot, written)| {
                written.tolerance.map(|tolerance| (*slot, tolerance.si, tolerance.form))
            })
            .collect();
        let hit = self.plan.affected(|slot| spread.iter().any(|(other, ..)| *other == slot));
        let nodes: Vec<_> =
            self.plan.nodes.iter().zip(hit).filter(|(_, hit)| *hit).map(|(node, _)| node).collect();
        let mut random = Random(seed);
        let mut block = Block::new(&self.values, &[]);
        let mut tallies = vec![Tally::default(); graph.findings.len()];
        let doubted: Vec<Slot> =
            self.contradictions.iter().flat_map(|found| found.doubted.iter().copied()).collect();
        let in_doubt: Vec<bool> =
            graph.findings.iter().map(|finding| is_doubted(&self.plan, finding, &doubted)).collect();
        let mut left = samples;
        while left > 0 {
            let rows = left.min(BLOCK);
            left -= rows;
            block.rows = rows;
            let mut columns: Vec<Vec<f64>> = spread.iter().map(|_| block.empty(0)).collect();
            for _ in 0..rows {
                for ((slot, tolerance, form), column) in spread.iter().zip(&mut columns) {
                    let step = match form {
                        Form::Bound => 2.0 * random.uniform() - 1.0,
                        Form::StandardDeviation => random.normal(),
                    };
                    column.push(self.values[usize::from(*slot)] + tolerance * step);
                }
            }
            for ((slot, ..), column) in spread.iter().zip(columns) {
                block.set(*slot, column);
            }
            for node in &nodes {
                node.run_block(&self.sheet, &mut block, &mut |_, _, _| {});
            }
            let findings = graph.findings.iter().zip(&self.asked).zip(&in_doubt);
            for (((finding, asked), in_doubt), tally) in findings.zip(&mut tallies) {
                for row in 0..rows {
                    let margin = margin(finding, |slot| block.at(slot, row));
                    let graded = verdict(finding, margin, at(block.column(finding.wanted), row));
                    let graded = if graded == Verdict::Meets && *in_doubt { Verdict::Tight } else { graded };
                    let on = asked.verdict(graded);
                    tally.add(if on == Verdict::DoesNotApply { f64::NAN } else { margin }, on);
                }
            }
            if !progress(samples - left) {
                return Ok(None);
            }
        }
        let mut chances = Vec::new();
        for (place, (answer, tally)) in self.answers().iter().zip(tallies).enumerate() {
            let plain = verdict(&graph.findings[place], answer.margin, answer.wanted);
            let plain = if plain == Verdict::Meets && in_doubt[place] { Verdict::Tight } else { plain };
            chances.push(tally.chance(answer.path, self.asked[place].verdict(plain), samples));
        }
        Ok(Some(chances))
    }
}

/// Most samples of one call of [`Assessment::chances`]: they give each share to 0.03 % (two standard deviations).
pub const MOST_SAMPLES: usize = 10_000_000;

/// Sums over the samples of one finding.
#[derive(Clone, Default)]
struct Tally {
    counts: [usize; Verdict::ALL.len()],
    known: f64,
    mean: f64,
    squares: f64,
}

impl Tally {
    /// Mean and squares by Welford's recurrence.
    fn add(&mut self, margin: f64, verdict: Verdict) {
        self.counts[verdict as usize] += 1;
        if margin.is_finite() {
            self.known += 1.0;
            let before = margin - self.mean;
            self.mean += before / self.known;
            self.squares += before * (margin - self.mean);
        }
    }

    fn chance(&self, path: &'static str, verdict: Verdict, samples: usize) -> Chance {
        let shares = self.counts.map(|count| count as f64 / samples as f64);
        let unknown = self.known == 0.0;
        Chance {
            path,
            verdict,
            turns: 1.0 - shares[verdict as usize],
            shares,
            mean: if unknown { f64::NAN } else { self.mean },
            deviation: if self.known < 2.0 { f64::NAN } else { (self.squares / (self.known - 1.0)).sqrt() },
        }
    }
}

/// SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): a few lines that never change, so that a seed means the same samples for ever.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// From 0 to below 1, in steps of 2⁻⁵³.
    fn uniform(&mut self) -> f64 {
        (self.next() >> 11) as f64 * (1.0 / (1_u64 << 53) as f64)
    }

    /// Standard normal (Box and Muller 1958).
    fn normal(&mut self) -> f64 {
        let (one, two) = (1.0 - self.uniform(), self.uniform());
        (-2.0 * one.ln()).sqrt() * (core::f64::consts::TAU * two).cos()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_generator_is_the_published_one() {
        // First outputs of SplitMix64 for the seed 1234567 (reference implementation by S. Vigna, from memory).
        let mut random = Random(1_234_567);
        assert_eq!([random.next(), random.next()], [6_457_827_717_110_365_317, 3_203_168_211_198_807_973]);
    }
}
