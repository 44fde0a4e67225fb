//! Verdicts of the caller's own margins, by the rule of the build sheet. A margin that is NaN is not known, and neither is what it meets.

use crate::caller::put;
use crate::entries::verdict_number;
use crate::guard::guard;
use crate::status::Failure;
use axlewright::Verdict;
use axlewright::base::error::{Error, Relation};
use axlewright::units::{Quantity, Ratio};

/// Verdict `AXW_VERDICT_...` of a ratio, capacity over demand: short below 1, tight below `wanted`, not known if either is NaN.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_verdict_of_ratio(margin: f64, wanted: f64, verdict: *mut i32) -> i32 {
    guard(|| {
        let on = Verdict::of_ratio(Ratio::from_si(margin), Ratio::from_si(wanted));
        unsafe { put(verdict, verdict_number(on)) };
        Ok(())
    })
}

/// Verdict `AXW_VERDICT_...` of a difference, capacity less demand, both arguments in one unit: short below 0, tight below `wanted`, not
/// known if either is NaN.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_verdict_of_difference(margin: f64, wanted: f64, verdict: *mut i32) -> i32 {
    guard(|| {
        // The rule is the same in any unit, so plain numbers serve.
        let on = Verdict::of_difference(Ratio::from_si(margin), Ratio::from_si(wanted));
        unsafe { put(verdict, verdict_number(on)) };
        Ok(())
    })
}

static BAND: Relation =
    Relation { argument: "high", other: "low", source: "definition: a band goes from low to high" };

/// Verdict `AXW_VERDICT_...` of a place in the band from `low` to `high`, all arguments in one unit: short outside, tight nearer to an
/// edge than `wanted`, not known if `place` or `wanted` is NaN. An edge may be infinite; `high` must be greater than `low`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn axw_verdict_of_place(
    place: f64,
    low: f64,
    high: f64,
    wanted: f64,
    verdict: *mut i32,
) -> i32 {
    guard(|| {
        for (name, edge) in [("low", low), ("high", high)] {
            if edge.is_nan() {
                return Err(Failure::OutOfRange(format!(
                    "{name} = NaN is not an edge of a band; valid: any number"
                )));
            }
        }
        if low >= high {
            let kind = Ratio::KIND;
            return Err(Error::Contradiction { relation: &BAND, value: high, other: low, kind }.into());
        }
        let of = Ratio::from_si;
        let on = Verdict::of_place(of(place), (of(low), of(high)), of(wanted));
        unsafe { put(verdict, verdict_number(on)) };
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use crate::entries::axw_verdict_word;
    use std::ffi::CStr;

    #[test]
    fn the_words_of_a_verdict_are_those_of_the_core() {
        for (code, verdict) in (0..).zip(axlewright::Verdict::ALL) {
            assert_eq!(unsafe { CStr::from_ptr(axw_verdict_word(code)) }.to_str(), Ok(verdict.word()));
        }
        assert!(axw_verdict_word(axlewright::Verdict::ALL.len() as i32).is_null());
    }
}
