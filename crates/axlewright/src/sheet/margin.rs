//! The margin of a finding, its kind, and its verdict.

use super::graph::{FindingInfo, Graph, MarginSlots, Slot};
use crate::Verdict;
use crate::base::verdict::{less, over};
use crate::units::{Kind, Quantity, Stress, TemperatureDifference};

/// Share of a number's own size below which its change is rounding: of sums, of differences, of solutions that are found in steps.
const ROUNDING: f64 = 1e-12;

/// True if a change is no more than the rounding of what changes.
pub(super) fn is_no_change(change: f64, size: f64) -> bool {
    size.is_finite() && change.abs() <= ROUNDING * size.abs()
}

/// The margin of a finding on these values.
pub(super) fn margin(finding: &FindingInfo, value: impl Fn(Slot) -> f64) -> f64 {
    if finding.rests_on.iter().any(|slot| value(*slot).is_nan()) {
        return f64::NAN;
    }
    remaining(finding.margin, value)
}

/// Remaining amount to a limit.
pub(super) fn remaining(margin: MarginSlots, value: impl Fn(Slot) -> f64) -> f64 {
    match margin {
        MarginSlots::Ratio { capacity, demand } => over(value(capacity), value(demand)),
        MarginSlots::Remaining { value: of } => value(of),
        MarginSlots::AtLeast { value: of, least } => less(value(of), value(least)),
        MarginSlots::AtMost { value: of, most } => less(value(most), value(of)),
        MarginSlots::Band { value: of, low, high } => {
            let (above, below) = (less(value(of), value(low)), less(value(high), value(of)));
            // `min` would drop a NaN.
            if above <= below || above.is_nan() { above } else { below }
        }
    }
}

/// The nearer edge of a band, as the limit of a propagation to first order: beyond its middle the margin bends.
pub(super) fn nearer(margin: MarginSlots, value: impl Fn(Slot) -> f64) -> MarginSlots {
    match margin {
        MarginSlots::Band { value: of, low, high } => {
            let nearer_low = less(value(of), value(low)) <= less(value(high), value(of));
            if nearer_low {
                MarginSlots::AtLeast { value: of, least: low }
            } else {
                MarginSlots::AtMost { value: of, most: high }
            }
        }
        other => other,
    }
}

/// The verdict of a margin. What fails is short also where the wanted margin is not known.
pub(super) fn verdict(finding: &FindingInfo, margin: f64, wanted: f64) -> Verdict {
    let limit = if matches!(finding.margin, MarginSlots::Ratio { .. }) { 1.0 } else { 0.0 };
    if wanted.is_nan() && margin < limit {
        return Verdict::Short;
    }
    Verdict::grade(margin, limit, wanted)
}

/// The verdict of a finding on these values, before it is asked whether the question applies.
pub(super) fn graded(finding: &FindingInfo, value: impl Fn(Slot) -> f64 + Copy) -> Verdict {
    verdict(finding, margin(finding, value), value(finding.wanted))
}

/// The kind of a difference of two quantities of a kind.
pub(super) fn difference(kind: &'static Kind) -> &'static Kind {
    match kind.name {
        "Temperature" => TemperatureDifference::KIND,
        "GaugePressure" | "AbsolutePressure" => &PRESSURE_DIFFERENCE,
        _ => kind,
    }
}

/// A stress is printed in megapascals, a difference of two pressures as the pressures are.
static PRESSURE_DIFFERENCE: Kind = Kind { metric: "kPa", ..*Stress::KIND };

/// Kind of the margin of a finding.
pub(super) fn margin_kind(finding: &FindingInfo) -> &'static Kind {
    match finding.margin {
        MarginSlots::Ratio { .. } => crate::units::Ratio::KIND,
        MarginSlots::Remaining { value }
        | MarginSlots::AtLeast { value, .. }
        | MarginSlots::AtMost { value, .. }
        | MarginSlots::Band { value, .. } => difference(value_kind(value)),
    }
}

pub(super) fn value_kind(slot: Slot) -> &'static Kind {
    Graph::get().info(slot).kind().unwrap_or(crate::units::Ratio::KIND)
}
