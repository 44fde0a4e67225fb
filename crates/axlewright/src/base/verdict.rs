//! Verdicts: the remaining margin and its word.
//!
//! A margin is typed: a ratio (capacity over demand), a difference (capacity less demand, in the unit of the thing) or
//! a place in a band. A ratio is never taken on a scale without an absolute zero.

use super::units::{Quantity, Ratio};

/// Verdict of a finding on its limit. Never one word for the whole vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Verdict {
    /// The margin is at least the wanted one.
    Meets,
    /// The limit holds, with less margin than wanted.
    Tight,
    /// The limit does not hold.
    Short,
    /// An input of the answer is missing.
    NotKnown,
    /// The vehicle lacks the part that the question is about; only the build sheet says so.
    DoesNotApply,
}

impl Verdict {
    /// Every verdict, in the order of its number on the C surface.
    pub const ALL: [Verdict; 5] =
        [Verdict::Meets, Verdict::Tight, Verdict::Short, Verdict::NotKnown, Verdict::DoesNotApply];

    /// The word that people read.
    pub const fn word(self) -> &'static str {
        match self {
            Verdict::Meets => "meets",
            Verdict::Tight => "tight",
            Verdict::Short => "short",
            Verdict::NotKnown => "not known",
            Verdict::DoesNotApply => "does not apply",
        }
    }

    /// Verdict of a ratio margin: short below 1, tight below `wanted`.
    pub fn of_ratio(margin: Ratio, wanted: Ratio) -> Verdict {
        Verdict::grade(margin.si(), 1.0, wanted.si())
    }

    /// Verdict of a difference margin: short below zero, tight below `wanted`.
    pub fn of_difference<Q: Quantity>(margin: Q, wanted: Q) -> Verdict {
        Verdict::grade(margin.si(), 0.0, wanted.si())
    }

    /// Verdict of a place in a band, its edges included: short outside of it, tight if nearer to an edge than `wanted`.
    pub fn of_place<Q: Quantity>(place: Q, band: (Q, Q), wanted: Q) -> Verdict {
        let inside = (place.si() - band.0.si()).min(band.1.si() - place.si());
        let known = [place, band.0, band.1].iter().all(|of| !of.si().is_nan());
        if !known { Verdict::NotKnown } else { Verdict::grade(inside, 0.0, wanted.si()) }
    }

    /// A margin without limit is no answer: something that it rests on is nothing, or without limit itself.
    pub(crate) fn grade(margin: f64, limit: f64, wanted: f64) -> Verdict {
        if margin.is_nan() || wanted.is_nan() || margin == f64::INFINITY {
            Verdict::NotKnown
        } else if margin < limit {
            Verdict::Short
        } else if margin < wanted {
            Verdict::Tight
        } else {
            Verdict::Meets
        }
    }
}

/// Rounding of the inputs: a value nearer to its limit than this share of it counts as on the limit.
const NOISE: f64 = 1e-12;

/// Excess of one number over another; zero if they differ by rounding alone.
pub(crate) fn less(a: f64, b: f64) -> f64 {
    let difference = a - b;
    if difference.abs() <= NOISE * a.abs().max(b.abs()) { 0.0 } else { difference }
}

/// Capacity over demand; 1 if they differ by rounding alone.
#[cfg(feature = "sheet")]
pub(crate) fn over(capacity: f64, demand: f64) -> f64 {
    let ratio = capacity / demand;
    if (ratio - 1.0).abs() <= NOISE { 1.0 } else { ratio }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limit_itself_holds_and_the_wanted_margin_meets() {
        let ratio = Ratio::from_si;
        for (margin, verdict) in [
            (0.999, Verdict::Short),
            (1.0, Verdict::Tight),
            (1.299, Verdict::Tight),
            (1.3, Verdict::Meets),
            (f64::NAN, Verdict::NotKnown),
            (f64::INFINITY, Verdict::NotKnown),
            (f64::NEG_INFINITY, Verdict::Short),
        ] {
            assert_eq!(Verdict::of_ratio(ratio(margin), ratio(1.3)), verdict, "{margin}");
        }
    }

    #[test]
    fn a_place_in_a_band_is_short_on_either_side() {
        let hertz = crate::units::Frequency::from_si;
        for (place, verdict) in [
            (1.0, Verdict::Short),
            (1.1, Verdict::Tight),
            (1.25, Verdict::Meets),
            (1.5, Verdict::Tight),
            (1.6, Verdict::Short),
            (f64::NAN, Verdict::NotKnown),
        ] {
            assert_eq!(
                Verdict::of_place(hertz(place), (hertz(1.1), hertz(1.5)), hertz(0.05)),
                verdict,
                "{place}"
            );
        }
    }
}
