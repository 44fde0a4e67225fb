//! A table that does not fit into the memory allowed is refused before anything of it is allocated.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use axlewright::base::table::MOST_BYTES;
use axlewright::cooling::CapTest;
use axlewright::suspension::{DoubleWishbone, LeafAxle, LiveAxle, Strut};
use axlewright::units::{Angle, GaugePressure, Length};
use axlewright::{Model, Result, Table};
use axlewright_tests::assessed::text;

fn refused(table: Result<Table>, what: &str) {
    let sentence = table.unwrap_err().to_string();
    assert!(
        sentence.starts_with("a table of ") && sentence.contains(" (20000 x 20000"),
        "{what}: {sentence}"
    );
    assert!(
        sentence.ends_with("one table at most 4 GiB: ask for fewer values at a time"),
        "{what}: {sentence}"
    );
}

/// 400 million rows of 30 to 70 columns are 90 to 190 GB.
#[test]
fn a_linkage_over_twenty_thousand_by_twenty_thousand_positions_is_refused() {
    assert_eq!(MOST_BYTES, 4 * 1024 * 1024 * 1024);
    let (lengths, angles) = (vec![Length::from_si(0.0); 20_000], vec![Angle::from_si(0.0); 20_000]);
    let wishbone = DoubleWishbone::from_text(&text("dunlin_front_wishbone")).unwrap();
    refused(wishbone.table(&lengths, &lengths), "double wishbone");
    refused(wishbone.points(&lengths, &lengths), "points of a double wishbone");
    refused(wishbone.roll_table(&lengths, &angles, &[Length::from_si(0.0)]), "double wishbone in roll");
    let strut = Strut::from_text(&text("wagtail_rear_strut")).unwrap();
    refused(strut.table(&lengths, &lengths), "strut");
    refused(strut.points(&lengths, &lengths), "points of a strut");
    let live = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
    refused(live.table(&lengths, &angles), "live axle");
    refused(live.points(&lengths, &angles), "points of a live axle");
    let leaf = LeafAxle::from_text(&text("dray_rear_axle")).unwrap();
    refused(leaf.table(&lengths, &angles), "leaf axle");
    refused(leaf.points(&lengths, &angles), "points of a leaf axle");
}

#[test]
fn other_models_are_held_to_the_same_memory() {
    let cap = CapTest::from_text(&text("dunlin_cap_test")).unwrap();
    let (pressures, heights) =
        (vec![GaugePressure::from_si(9e4); 20_000], vec![Length::from_si(0.0); 20_000]);
    refused(cap.boiling_table(&pressures, &heights), "cap");
}

/// A drawing has no more points than the memory of a table of points is counted for.
#[test]
fn a_drawing_has_no_more_points_than_are_counted() {
    let (none, level) = ([Length::from_si(0.0)], [Angle::from_si(0.0)]);
    for (what, table) in [
        (
            "double wishbone",
            DoubleWishbone::from_text(&text("dunlin_front_wishbone")).unwrap().points(&none, &none),
        ),
        ("strut", Strut::from_text(&text("wagtail_rear_strut")).unwrap().points(&none, &none)),
        ("live axle", LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap().points(&none, &level)),
        ("leaf axle", LeafAxle::from_text(&text("dray_rear_axle")).unwrap().points(&none, &level)),
    ] {
        let rows = table.unwrap().rows();
        assert!((8..=128).contains(&rows), "{what}: {rows}");
    }
}
