//! Torque along the driveline.

use axlewright::driveline::{self, Differential, Grip, Part, RatingKind, TorquePath};
use axlewright::sheet::Assessment;
use axlewright::units::{Force, Length, Ratio, Torque};
use axlewright::{Stated, Value, Verdict};
use axlewright_tests::assessed::{assessed, lacks, sheet, value, verdict_word};

/// One way to write a driveline down.
#[derive(Debug, Clone, Copy)]
struct Case {
    kind: &'static str,
    side: &'static str,
    differential: &'static str,
    grip: bool,
    inertia: bool,
    clutch: bool,
    shock: bool,
    low: bool,
    high: bool,
    /// Rating of every part; a greater one is not short under the steady torque.
    rating: f64,
}

fn cases() -> Vec<Case> {
    let kinds = ["continuous", "peak", "yield", "ultimate", ""];
    let sides = ["input", "output"];
    let differentials = ["open", "limited_slip", "locked"];
    let mut all = Vec::new();
    for (place, rating) in (0..5 * 2 * 64 * 3).zip([900.0, 6000.0, 30000.0, 6000.0].into_iter().cycle()) {
        let bit = |bit: usize| ((place / 30) >> bit) & 1 == 1;
        all.push(Case {
            kind: kinds[place / 3 % 5],
            side: sides[place / 15 % 2],
            differential: differentials[place % 3],
            grip: bit(0),
            inertia: bit(1),
            clutch: bit(2),
            shock: bit(3),
            low: bit(4),
            high: bit(5),
            rating,
        });
    }
    all
}

impl Case {
    fn assessed(self) -> Assessment {
        let rating = format!("{} N·m", self.rating);
        let mut lines = vec![
            ("engine.peak_torque", "283 N·m"),
            ("gearbox.ratios[0]", "6.37"),
            ("gearbox.reverse_ratio", "none"),
            ("gearbox.efficiency", "0.951"),
            ("gearbox.torque_rating", &rating),
            ("gearbox.rating_side", self.side),
            ("gearbox.rating_kind", self.kind),
            ("propeller_shaft.torque_rating", &rating),
            ("propeller_shaft.rating_kind", self.kind),
            ("final_drive.ratio", "4.78"),
            ("final_drive.efficiency", "0.941"),
            ("final_drive.differential", self.differential),
            ("final_drive.torque_rating", &rating),
            ("final_drive.rating_side", self.side),
            ("final_drive.rating_kind", self.kind),
            ("half_shaft.torque_rating", &rating),
            ("half_shaft.rating_kind", self.kind),
            ("driveline.driven", "rear"),
            ("rear.tyre.loaded_radius", "0.387 m"),
        ];
        let mut more = |are: bool, these: &[(&'static str, &'static str)]| {
            if are {
                lines.extend(these);
            }
        };
        more(self.low, &[("transfer_case.low_ratio", "2.03"), ("transfer_case.efficiency", "0.963")]);
        more(self.clutch, &[("clutch.capacity", "391 N·m")]);
        more(self.high, &[("clutch.high_capacity", "455 N·m")]);
        more(self.shock, &[("clutch.shock_factor", "1.9")]);
        more(
            self.grip,
            &[
                ("grip.driven_load", "24100 N"),
                ("grip.strength_coefficient", "0.93"),
                ("grip.pull_coefficient", "0.61"),
            ],
        );
        more(self.inertia, &[("grip.inertia_factor", "1.27")]);
        lines.retain(|(_, text)| !text.is_empty());
        sheet(&lines).assess()
    }
}

/// The sheet gives its path, and the path gives the sheet's numbers and verdicts to the last bit.
#[test]
fn the_sheet_and_the_torque_path_agree_to_the_last_bit() {
    let (mut known, mut unknown) = (0, 0);
    for case in cases() {
        let assessment = case.assessed();
        let path = assessment.sheet().model("torque_path").unwrap().read::<TorquePath>().unwrap();
        let table = path.parts_table().unwrap();
        for (row, line) in
            ["gearbox", "transfer_case", "propeller_shaft", "final_drive", "half_shaft"].iter().enumerate()
        {
            assert_eq!(table.word("part", row), Some(*line));
            if *line == "transfer_case" {
                continue;
            }
            let demand = table.numbers("demand").unwrap()[row];
            let found = value(&assessment, &format!("{line}.demand"));
            let margin = Ratio::from_si(table.numbers("margin").unwrap()[row]);
            let wanted = Ratio::from_si(table.numbers("wanted").unwrap()[row]);
            // The sheet alone knows which gears and ranges there are.
            let open = value(&assessment, "driveline.gear_reserve").is_infinite() && *line != "gearbox";
            let grip = table.word("demand_bound", row) == Some("grip");
            let wanted = if open && !grip { Ratio::from_si(f64::INFINITY) } else { wanted };
            let graded = Verdict::of_ratio(margin, wanted).word();
            assert_eq!(
                (found.to_bits() == demand.to_bits() || found.is_nan() && demand.is_nan(), graded),
                (true, verdict_word(&assessment, &format!("{line}.strength"))),
                "{line} of {case:?}: {found} on the sheet, {demand} on the path"
            );
            (known, unknown) = (known + usize::from(!found.is_nan()), unknown + usize::from(found.is_nan()));
        }
        if case.grip {
            let pull = path.pull().unwrap();
            assert_eq!(
                value(&assessment, "driveline.pull_torque").to_bits(),
                pull.wheel_torque.si().to_bits()
            );
            assert_eq!(
                value(&assessment, "driveline.tractive_force").to_bits(),
                pull.tractive_force.si().to_bits()
            );
        }
    }
    assert!(known > 500 && unknown > 100, "{known} known, {unknown} not");
}

/// 24 kN at 0.9 and 0.37 m hold 24000 * 0.9 * 0.37 = 7992 N·m, and the engine gives 500 * 4 * 5 = 10 000. Open: half each. Otherwise one wheel may
/// hang, and the other bears the whole load. Functions, sheet and path say so alike.
#[test]
fn one_wheel_may_hang_behind_any_differential_that_is_not_open() {
    let load = (Force::from_si(24e3), Ratio::from_si(0.9), Length::from_si(0.37));
    let grip = driveline::grip_torque(load.0, load.1, load.2).unwrap();
    let axle = Torque::from_si(10e3);
    let one = |value| Value::new(Ratio::from_si(value));
    for (word, differential, by_function, demand, margin) in [
        ("open", Differential::Open, driveline::axle_shaft_torque_open(axle, grip), 3996.0, 1.501_502),
        (
            "limited_slip",
            Differential::LimitedSlip,
            driveline::axle_shaft_torque_locked(axle, grip),
            7992.0,
            0.750_751,
        ),
        ("locked", Differential::Locked, driveline::axle_shaft_torque_locked(axle, grip), 7992.0, 0.750_751),
    ] {
        let mut lines = vec![
            ("engine.peak_torque", "500 N·m"),
            ("gearbox.ratios[0]", "4"),
            ("gearbox.efficiency", "1"),
            ("final_drive.ratio", "5"),
            ("final_drive.efficiency", "1"),
            ("final_drive.differential", word),
            ("half_shaft.torque_rating", "6000 N·m"),
            ("half_shaft.rating_kind", "continuous"),
            ("driveline.driven", "rear"),
            ("rear.tyre.loaded_radius", "370 mm"),
            ("grip.driven_load", "24 kN"),
            ("grip.strength_coefficient", "0.9"),
            ("converter", "none"),
        ];
        let on = sheet(&lines).assess();
        let answer = on.answer("half_shaft.strength").unwrap();
        assert!((answer.margin - margin).abs() < 1e-6, "{word}: {}", answer.margin);
        assert_eq!(
            verdict_word(&on, "half_shaft.strength"),
            if margin < 1.0 { "short" } else { "tight" }, // the shock is not known
            "{word}"
        );
        // Nobody said which differential: that is not known, and no better.
        lines.retain(|(path, _)| *path != "final_drive.differential");
        let without = sheet(&lines).assess();
        assert_eq!(verdict_word(&without, "half_shaft.strength"), "not known");
        assert!(lacks(&without, "half_shaft.strength").contains("final_drive.differential"));

        let part = |name: &str, ratio: Option<f64>, differential, rating: Option<f64>| Part {
            name: name.to_owned(),
            ratio: ratio.map(one),
            least_ratio: None,
            peak_ratio: ratio.map(|ratio| Value::new(Ratio::from_si(ratio))),
            efficiency: None,
            differential,
            share: None,
            torque_rating: rating.map(|rating| Value::new(Torque::from_si(rating))),
            rating_side: None,
            rating_kind: Some(RatingKind::Continuous),
        };
        let path = |differential| TorquePath {
            engine_torque: Value::new(Torque::from_si(500.0)),
            clutch_capacity: None,
            clutch_high_capacity: None,
            stall_ratio: Stated::None,
            shock_factor: None,
            grip: Some(Grip {
                driven_load: Value::new(load.0),
                load_at_rest: None,
                loaded_radius: Value::new(load.2),
                strength_coefficient: Some(Value::new(load.1)),
                pull_coefficient: Some(one(0.6)),
                inertia_factor: None,
            }),
            parts: vec![
                part("gearbox", Some(4.0), None, None),
                part("axle", Some(5.0), None, None),
                part("half shaft", None, differential, Some(6000.0)),
            ],
        };
        let of_path = path(Some(differential)).weakest().unwrap().torque.si();
        let of_sheet = value(&on, "half_shaft.demand");
        let of_function = by_function.unwrap().si();
        assert_eq!(
            [of_path, of_sheet, of_function].map(|of| (of - demand).abs() < 1e-9),
            [true; 3],
            "{word}"
        );
        assert_eq!((of_path.to_bits(), of_sheet.to_bits()), (of_sheet.to_bits(), of_function.to_bits()));
        // A path that does not say which differential counts it as locked.
        assert!((path(None).weakest().unwrap().torque.si() - 7992.0).abs() < 1e-9);
    }
}

#[test]
fn a_mean_of_grip_above_its_high_bound_is_refused() {
    let assessment = assessed("wagtail", &[("grip.pull_coefficient", "1.5")]);
    assert!(value(&assessment, "driveline.pull_torque").is_nan());
}

#[test]
fn a_high_bound_of_grip_below_its_mean_bounds_nothing() {
    let on = assessed("dray", &[("grip.strength_coefficient", "0.3")]);
    // The engine alone bounds the axle then: 280 * 7.8 * 0.95 * 2.03 * 0.96 * 4.78 * 0.94 N·m.
    let engine = 280.0 * 7.8 * 0.95 * 2.03 * 0.96 * 4.78 * 0.94;
    assert!((value(&on, "final_drive.demand") / engine - 1.0).abs() < 1e-12);
    assert_eq!(
        (verdict_word(&on, "final_drive.strength"), verdict_word(&on, "half_shaft.strength")),
        ("short", "short")
    );
}

#[test]
fn reverse_counts_where_it_is_the_lowest_gear() {
    let with =
        |reverse| value(&assessed("wagtail", &[("gearbox.reverse_ratio", reverse)]), "gearbox.output_torque");
    let near = |found: f64, wanted: f64| assert!((found / wanted - 1.0).abs() < 1e-12, "{found} {wanted}");
    near(with("3.48"), 150.0 * 3.48 * 0.96);
    near(with("2.9"), 150.0 * 3.17 * 0.96);
    near(with(""), 150.0 * 3.17 * 0.96);
}

#[test]
fn a_low_range_without_its_efficiency_is_not_taken_for_lossless() {
    let assessment = assessed("dray", &[("transfer_case.efficiency", "")]);
    assert_eq!(verdict_word(&assessment, "final_drive.strength"), "not known");
    assert!(
        lacks(&assessment, "final_drive.strength").contains("a low range needs transfer_case.efficiency")
    );
}

#[test]
fn gears_in_a_wrong_order_do_not_make_a_part_strong() {
    let upside_down =
        [("gearbox.ratios[0]", "0.83"), ("gearbox.ratios[5]", "4.7"), ("gearbox.reverse_ratio", "")];
    let on = assessed("dunlin", &upside_down);
    for finding in ["final_drive.strength", "driveline.cruise", "driveline.red_line"] {
        assert_eq!(verdict_word(&on, finding), "not known", "{finding}");
        assert!(
            lacks(&on, finding).contains("ratios fall from first gear to top"),
            "{}",
            lacks(&on, finding)
        );
    }
    // A first gear written beside the list does not hide the list.
    let on = assessed("dunlin", &[("gearbox.first_ratio", "1"), ("gearbox.reverse_ratio", "")]);
    assert_eq!(value(&on, "gearbox.lowest_ratio"), 4.7);
}
