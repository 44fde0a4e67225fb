//! Missing lines are asked for by name.

use axlewright_tests::assessed::{assessed, lacks, value};

#[test]
fn a_choice_that_nobody_made_is_asked_for_with_what_it_asks_for() {
    let text = lacks(&assessed("wagtail", &[("coolant.liquid", "")]), "coolant.boiling");
    assert!(text.starts_with("needs coolant.liquid to answer"), "{text}");
    // What people read off a part is asked for as such, not by what it could be computed from.
    let text = lacks(&assessed("wagtail", &[("rear.spring.minimum_gap", "")]), "rear.coil_bind");
    assert!(text.starts_with("needs rear.spring.minimum_gap to answer"), "{text}");
    // EN 13906-1: 1.5 n (0.0015 D² / d + 0.1 d) of cold wire that works.
    let gap = value(&assessed("wagtail", &[]), "front.spring.minimum_gap");
    assert!((gap / (1.5 * 6.4 * (0.0015 * 0.066 * 0.066 / 0.009 + 0.1 * 0.009)) - 1.0).abs() < 1e-12);
}
