//! A short attack on every target, with a fixed seed: the module is that of `cargo xtask attack`, which runs longer.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic")]

use axlewright_tests::attack::{Attack, TARGETS};

/// Counts of the targets: about a second each at the most.
const COUNTS: [(&str, u64); 7] = [
    ("functions", 60_000),
    ("models", 40),
    ("sheets", 16),
    ("lists", 12),
    ("requirements", 2_000),
    ("drawings", 40),
    ("texts", 4_000),
];

#[test]
fn every_target_withstands_a_short_attack() {
    assert_eq!(TARGETS.map(|target| target.name), COUNTS.map(|(name, _)| name));
    for (target, (name, count)) in TARGETS.iter().zip(COUNTS) {
        let tally = (target.run)(&Attack { seed: 1, from: 0 }, count);
        println!("{name}\t{}", tally.line());
        assert!(tally.findings.is_empty(), "{name}: {}", tally.findings.join("\n"));
        // Neither are all refused, nor all answered.
        assert!(tally.calls.answered >= count / 10 && tally.calls.refused >= count / 10, "{name}: {tally:?}");
    }
}
