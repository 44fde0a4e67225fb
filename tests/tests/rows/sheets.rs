//! Example sheets that rows put in.

use axlewright::Model;
use axlewright::cooling::{Mix, PressureDecay};
use axlewright::driveline::Gearbox;
use axlewright::spring::{Corner, Stack};
use axlewright::suspension::{LiveAxle, Strut};
use axlewright::tyre::WheelChange;
use axlewright_tests::rows::{rows, words};

/// A sheet of the examples is the model that a row puts in.
#[test]
fn the_sheets_answer_as_their_rows() {
    let rows = rows();
    macro_rules! same {
        ($model:ident, $sheet:literal, $id:literal) => {{
            let sheet = include_str!(concat!("../../../examples/sheets/", $sheet, ".toml"));
            let row = rows.iter().find(|row| words(row, "id") == Some($id)).unwrap();
            let from_row = $model::from_text(&row["inputs"].to_string()).unwrap();
            assert_eq!($model::from_text(sheet).unwrap(), from_row);
        }};
    }
    same!(Corner, "dunlin_front_spring", "corner-van-bump-stop");
    same!(Stack, "wagtail_stack", "stack-roadster-first");
    same!(PressureDecay, "wagtail_pressure_decay", "pressure-decay-roadster-meets");
    same!(Mix, "dunlin_mix", "mix-van-raise");
    same!(WheelChange, "dunlin_wheel_change", "wheel-change-van");
    same!(Strut, "wagtail_rear_strut", "strut-roadster-+40");
    same!(LiveAxle, "dunlin_rear_axle", "live-axle-dunlin-+0-+50");
    same!(Gearbox, "dray_gearbox", "gearbox-hauler-gap");
}
