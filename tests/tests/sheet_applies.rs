//! A finding about an absent part does not apply: only `none` and the word of a choice say so. A part that is not written stays not known.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict::{DoesNotApply, Meets, NotKnown, Short, Tight};
use axlewright::sheet::{Axis, PriceList, Requirement, Sheet, choose};
use axlewright::{Table, Verdict};
use axlewright_tests::assessed::{demo, lacks, text, value, verdict};
use std::collections::BTreeSet;

const SHEETS: [&str; 4] = ["dunlin", "dunlin_measured", "wagtail", "dray"];

fn of(lines: &[(&str, &str)]) -> Sheet {
    let mut sheet = Sheet::new("");
    lines.iter().for_each(|(path, text)| sheet.set(path, text).unwrap());
    sheet
}

/// Every table of a document by its path: `front`, `front.spring`.
fn tables(sheet: &Sheet) -> BTreeSet<String> {
    let folders = |path: &str| {
        let ends: Vec<usize> =
            path.char_indices().filter(|(_, c)| matches!(c, '.' | '[')).map(|(at, _)| at).collect();
        ends.into_iter().map(|end| path[..end].to_owned()).collect::<Vec<_>>()
    };
    sheet.paths().flat_map(folders).filter(|table| !table.contains('[')).collect()
}

/// The sheet without a table.
fn without(sheet: &Sheet, table: &str) -> Sheet {
    let mut left = sheet.clone();
    let inside = |path: &&str| {
        path.strip_prefix(table).is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
    };
    let mut paths: Vec<&str> = sheet.paths().filter(inside).collect();
    // The places of a list end with the last.
    paths.reverse();
    paths.into_iter().for_each(|path| left.remove(path).unwrap());
    left
}

#[test]
fn a_table_that_is_merely_missing_never_ends_a_question_and_makes_no_answer_better() {
    let mut deleted = 0;
    for name in SHEETS {
        let sheet = Sheet::from_text(&text(name)).unwrap();
        let whole = sheet.assess();
        for table in tables(&sheet) {
            let left = without(&sheet, &table).assess();
            for (before, after) in whole.answers().iter().zip(left.answers()) {
                let names = (name, &table, before.path, before.verdict, after.verdict);
                let said = !left.rests_on(after).iter().any(|path| path.starts_with(&format!("{table}.")));
                match after.verdict {
                    DoesNotApply => assert!(before.verdict == DoesNotApply && said, "{names:?}"),
                    NotKnown => {}
                    Short | Tight | Meets => {
                        let rank = |verdict: Verdict| {
                            [Short, Tight, Meets].iter().position(|known| *known == verdict)
                        };
                        assert!(
                            rank(after.verdict) <= rank(before.verdict) && before.verdict != NotKnown,
                            "{names:?}"
                        );
                    }
                }
            }
            deleted += 1;
        }
    }
    assert!(deleted > 80, "{deleted}");
}

/// Before: `meets` for all four of a double wishbone, and a live axle on links was asked for the points of its leaf springs.
#[test]
fn an_axle_is_not_asked_for_what_it_lacks() {
    let measured = demo("dunlin_measured", &[("rear.suspension", "live_axle_on_links")]).assess();
    for finding in ["front.bind", "front.sideways", "front.pinion", "front.wind_up"] {
        let answer = measured.answer(finding).unwrap();
        assert_eq!((answer.verdict, answer.severity()), (DoesNotApply, 0), "{finding}");
        assert_eq!(measured.rests_on(answer), ["front.wheels"]);
        assert!(answer.value.is_nan() && answer.margin.is_nan() && measured.missing(answer).needs.is_empty());
        assert!(measured.sensitivity(answer).is_empty() && measured.functions(answer).is_empty());
    }
    assert_eq!(verdict(&measured, "rear.wind_up"), DoesNotApply);
    assert_eq!(verdict(&measured, "rear.bind"), Tight);
    let page = measured.to_text(axlewright::base::text::System::Metric, true);
    let (_, apart) = page.split_once("\nDOES NOT APPLY, because the sheet says so\n").unwrap();
    let apart = apart.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(apart.contains("front.wind_up: front.wheels = independent"), "{page}");
    assert!(apart.contains("rear.wind_up: rear.suspension = live_axle_on_links"), "{page}");
    let json: serde_json::Value = serde_json::from_str(&measured.to_json()).unwrap();
    let found =
        json["findings"].as_array().unwrap().iter().find(|one| one["finding"] == "front.wind_up").unwrap();
    assert_eq!((&found["verdict"], &found["margin"]), (&"does not apply".into(), &serde_json::Value::Null));
    assert_eq!(found["rests_on"], serde_json::json!(["front.wheels"]));
}

/// Before: the suspension ended both questions, though it was the wheels, which follow from it, that the measurements contradict.
#[test]
fn a_measurement_that_condemns_outlives_a_word_that_it_contradicts() {
    for suspension in ["double_wishbone", "strut"] {
        let on = of(&[
            ("rear.suspension", suspension),
            ("rear.bind_force", "5 kN"),
            ("rear.allowed_link_force", "1 kN"),
            ("rear.wind_up_angle", "20 deg"),
        ])
        .assess();
        for finding in ["rear.bind", "rear.wind_up"] {
            assert_eq!(verdict(&on, finding), Short, "{suspension} {finding}");
            let said = on.missing_text(on.answer(finding).unwrap());
            assert!(said.contains("which contradicts another line: one of the two is wrong"), "{said}");
        }
    }
}

/// Before: a word or `none` hid a written reading that condemns the part.
#[test]
fn a_reading_that_condemns_outlives_the_line_that_says_that_there_is_no_part() {
    let bound = |force: &'static str| {
        [("rear.bind_force", force), ("rear.allowed_link_force", "1 kN"), ("rear.wind_up_angle", "20 deg")]
    };
    for suspension in ["double_wishbone", "strut"] {
        let mut sheet = of(&bound("5 kN"));
        sheet.set("rear.suspension", suspension).unwrap();
        let on = sheet.assess();
        for finding in ["rear.bind", "rear.wind_up"] {
            assert_eq!(verdict(&on, finding), Short, "{suspension} {finding}");
            assert!(on.answer(finding).unwrap().margin.is_finite());
            let said = lacks(&on, finding);
            assert!(said.contains("one of the two is wrong"), "{said}");
        }
        // One row condemns the part; in the other the reading still contradicts the word, so that nothing is known.
        let axis = Axis::texts("rear.bind_force", &["5 kN", "0.5 kN"]).unwrap();
        let outputs = ["rear.bind.verdict", "rear.bind.margin"];
        let table = sheet.what_if(vec![axis], false, &outputs).unwrap().whole().unwrap();
        assert_eq!([0, 1].map(|row| word(&table, "rear.bind.verdict", row)), ["short", "not known"]);
        let margins = table.numbers("rear.bind.margin").unwrap();
        assert!(margins[0] < 0.0 && margins[1] > 0.0, "{margins:?}");
        sheet.set("rear.bind_force", "0.5 kN").unwrap();
        assert_eq!(verdict(&sheet.assess(), "rear.bind"), NotKnown);
        for reading in ["rear.bind_force", "rear.wind_up_angle"] {
            sheet.remove(reading).unwrap();
        }
        assert_eq!(verdict(&sheet.assess(), "rear.bind"), DoesNotApply);
    }
    let weak = [
        ("cap.rating", "1.2 bar gauge"),
        ("cap.holding_pressure", "0.7 bar gauge"),
        ("cap.gauge_error", "0.02 bar"),
        ("cap.rating_tolerance", "0.1 bar"),
        ("coolant", "none"),
    ];
    let on = of(&weak).assess();
    assert_eq!([verdict(&on, "cap.holds"), verdict(&on, "cap.vacuum")], [Short, DoesNotApply]);
    assert!(lacks(&on, "cap.holds").contains("coolant"), "{}", lacks(&on, "cap.holds"));
}

/// Another vehicle than the demo's: what is said of each kind of suspension and part, and which questions end by it.
#[test]
fn one_word_or_none_ends_a_question_and_nothing_else_does() {
    for (lines, ended) in [
        (
            &[("front.suspension", "strut")][..],
            &["front.bind", "front.sideways", "front.pinion", "front.wind_up"][..],
        ),
        (&[("rear.suspension", "live_axle_on_links")], &["rear.toggle", "rear.wind_up"]),
        (
            &[("rear.suspension", "live_axle_on_leaf_springs")],
            &["rear.coil_bind", "rear.captive", "rear.buckling", "rear.toggle", "rear.bind"],
        ),
        (&[("rear.leaf", "none")], &["rear.wind_up"]),
        (&[("rear.spring", "none")], &["rear.coil_bind", "rear.captive", "rear.buckling"]),
        (&[("rear.damper.rate_softest", "none")], &["rear.damper_range"]),
        (&[("front.lower_links", "none"), ("front.upper_links", "none"), ("front.lateral_rod", "none")], &[]),
        (
            &[
                ("front.lower_links", "none"),
                ("front.upper_links", "none"),
                ("front.lateral_rod", "none"),
                ("front.watt", "none"),
            ],
            &["front.bind"],
        ),
        (&[("clutch", "none"), ("propeller_shaft", "none")], &["clutch.holds", "propeller_shaft.strength"]),
        (
            &[("coolant", "none")],
            &[
                "coolant.boiling",
                "coolant.freezing",
                "cap.holds",
                "cap.opens",
                "cap.weakest",
                "cap.vacuum",
                "coolant.pump_inlet",
                "header.air",
                "leak_test.pumped",
                "leak_test.tight",
            ],
        ),
        // That nobody tested or rated a part does not mean that there is no such part.
        (
            &[
                ("leak_test", "none"),
                ("gearbox.torque_rating", "none"),
                ("front.tyre", "none"),
                ("scales", "none"),
            ],
            &[],
        ),
        (&[], &[]),
    ] {
        let on = of(lines).assess();
        let found: Vec<&str> =
            on.answers().iter().filter(|one| one.verdict == DoesNotApply).map(|one| one.path).collect();
        assert_eq!(found, ended, "{lines:?}");
    }
}

#[test]
fn no_bar_is_a_bar_without_a_rate() {
    let lines = |bar: &'static str, text: &'static str| {
        demo(
            "wagtail",
            &[("front.anti_roll_bar.rate", ""), ("front.anti_roll_bar.motion_ratio", ""), (bar, text)],
        )
        .assess()
    };
    let (none, zero) = (lines("front.anti_roll_bar", "none"), lines("front.anti_roll_bar.rate", "0 N/mm"));
    for path in ["vehicle.roll_gradient", "vehicle.front_share_over_weight"] {
        assert_eq!(value(&none, path).to_bits(), value(&zero, path).to_bits(), "{path}");
    }
    let missing = demo("wagtail", &[("front.anti_roll_bar.rate", "")]).assess();
    assert_eq!([&none, &missing].map(|on| verdict(on, "vehicle.roll")), [Short, NotKnown]);
}

/// A sheet that says both is asked, and nothing clears it; what condemns still does.
#[test]
fn who_says_both_is_asked() {
    let says = |lines: &[(&str, &str)], finding: &str| {
        let on = demo("dray", lines).assess();
        (verdict(&on, finding), lacks(&on, finding))
    };
    let (found, why) = says(&[("rear.suspension", "strut")], "rear.sideways");
    assert_eq!(found, Tight, "{why}");
    let links = [("rear.suspension", "live_axle_on_links")];
    assert_eq!(says(&links, "rear.wind_up").0, Short);
    let (found, why) = says(&[links[0], ("rear.drive_torque", "3000 N·m")], "rear.wind_up");
    assert_eq!(found, NotKnown);
    assert!(
        why.contains("rear.suspension is `live_axle_on_links`, but rear.leaf.fixed_eye.x is written"),
        "{why}"
    );
    let apart = demo("dunlin_measured", &[("rear.wheels", "independent")]).assess();
    assert_eq!(verdict(&apart, "rear.bind"), NotKnown);
    let clash = of(&[("front.suspension", "strut"), ("front.wheels", "live_axle")]).assess();
    assert_eq!(verdict(&clash, "front.bind"), NotKnown);
    let said: Vec<String> = clash
        .contradictions()
        .iter()
        .map(|found| found.text(axlewright::base::text::System::Metric))
        .collect();
    assert_eq!(said.len(), 1);
    assert!(
        said[0].starts_with(
            "front.wheels is written as live_axle, but independent follows from front.suspension ("
        ),
        "{said:?}"
    );
    assert!(!said[0].contains("apart"), "{said:?}");
    assert!(
        lacks(&clash, "front.bind").contains("front.suspension is `strut`, which contradicts another line")
    );
    let none = of(&[("rear.suspension", "live_axle_on_leaf_springs"), ("rear.leaf", "none")]).assess();
    assert_eq!(verdict(&none, "rear.wind_up"), NotKnown);
}

/// Before: an axle whose lateral rod was merely not drawn was told `meets` for bind, which was `tight` with it.
#[test]
fn whether_a_rod_holds_the_axle_must_be_told() {
    let rod = demo("dunlin_measured", &[]).assess();
    let sheet = without(&Sheet::from_text(&text("dunlin_measured")).unwrap(), "rear.lateral_rod");
    let open = sheet.assess();
    assert_eq!([&rod, &open].map(|on| verdict(on, "rear.bind")), [Tight, NotKnown]);
    assert!(
        lacks(&open, "rear.bind").contains("needs one of rear.lateral_rod, rear.watt, or `none` of each")
    );
    let axis = Axis::texts("rear.allowed_link_force", &["20 kN"]).unwrap();
    let sweep = sheet.what_if(vec![axis], false, &["rear.bind.verdict", "rear.bind.margin"]).unwrap();
    let [(name, why)] = sweep.not_known() else { panic!("{:?}", sweep.not_known()) };
    assert!(name == "rear.bind.verdict" && why.contains("needs one of rear.lateral_rod, rear.watt"), "{why}");
    let mut none = sheet;
    none.set("rear.lateral_rod", "none").unwrap();
    none.set("rear.watt", "none").unwrap();
    assert_eq!(verdict(&none.assess(), "rear.bind"), Meets);
}

fn word<'a>(table: &'a Table, column: &str, row: usize) -> &'a str {
    table.word(column, row).unwrap()
}

#[test]
fn a_sweep_over_a_choice_says_it_row_by_row() {
    let sheet = demo("dray", &[("rear.suspension", "live_axle_on_leaf_springs")]);
    let words = ["live_axle_on_leaf_springs", "live_axle_on_links"];
    let axis = || Axis::texts("front.suspension", &words).unwrap();
    let outputs = [
        "front.coil_bind.verdict",
        "front.wind_up.verdict",
        "rear.coil_bind.margin",
        "rear.coil_bind.verdict",
    ];
    let sweep = sheet.what_if(vec![axis()], false, &outputs).unwrap();
    let table = sweep.whole().unwrap();
    for (row, chosen) in words.into_iter().enumerate() {
        let mut one = sheet.clone();
        one.set("front.suspension", chosen).unwrap();
        let one = one.assess();
        for finding in ["front.coil_bind", "front.wind_up", "rear.coil_bind"] {
            assert_eq!(
                word(&table, &format!("{finding}.verdict"), row),
                verdict(&one, finding).word(),
                "{finding} {chosen}"
            );
        }
    }
    assert_eq!(word(&table, "front.coil_bind.verdict", 0), "does not apply");
    assert_eq!(word(&table, "front.wind_up.verdict", 1), "does not apply");
    assert!(table.numbers("rear.coil_bind.margin").unwrap().iter().all(|margin| margin.is_nan()));
    let lacking: Vec<&str> = sweep.not_known().iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(lacking, ["front.coil_bind.verdict", "front.wind_up.verdict"]);
    let mut none = sheet.clone();
    without(&none, "clutch").clone_into(&mut none);
    none.set("clutch", "none").unwrap();
    let Err(error) = none.what_if(vec![Axis::texts("clutch.capacity", &["400 N·m"]).unwrap()], false, &[])
    else {
        panic!()
    };
    assert!(error.to_string().contains("there is no `clutch`: take that out first"), "{error}");
}

/// A bind that was measured.
fn with_force(sheet: &Sheet) -> Sheet {
    let mut with = sheet.clone();
    with.set("front.bind_force", "2 kN").unwrap();
    with.set("front.allowed_link_force", "20 kN").unwrap();
    with
}

#[test]
fn a_sweep_over_choices_that_contradict_each_other_is_asked_row_by_row() {
    let sheet = of(&[("front.suspension", "strut")]);
    let words = ["independent", "live_axle"];
    let outputs = ["front.bind.verdict", "front.bind.margin", "front.bind.value"];
    for (sheet, wanted) in
        [(&sheet, ["does not apply", "not known"]), (&with_force(&sheet), ["not known"; 2])]
    {
        let axis = Axis::texts("front.wheels", &words).unwrap();
        let table = sheet.what_if(vec![axis], false, &outputs).unwrap().whole().unwrap();
        for (row, wheels) in words.into_iter().enumerate() {
            let mut one = sheet.clone();
            one.set("front.wheels", wheels).unwrap();
            let on = one.assess();
            let answer = on.answer("front.bind").unwrap();
            assert_eq!(word(&table, "front.bind.verdict", row), wanted[row]);
            assert_eq!(answer.verdict.word(), wanted[row]);
            for (output, number) in [("front.bind.margin", answer.margin), ("front.bind.value", answer.value)]
            {
                let found = table.numbers(output).unwrap()[row];
                assert!(found.to_bits() == number.to_bits() || found.is_nan() && number.is_nan(), "{output}");
            }
        }
    }
}

#[test]
fn what_does_not_apply_does_so_in_every_sample() {
    let on = demo("wagtail", &[]).assess();
    let table = on.chances_table(200, 7).unwrap();
    let at = on.answers().iter().position(|answer| answer.path == "front.wind_up").unwrap();
    assert_eq!(word(&table, "verdict", at), "does not apply");
    for (column, wanted) in [("turns", 0.0), ("meets", 0.0), ("not_known", 0.0), ("does_not_apply", 1.0)] {
        assert_eq!(table.numbers(column).unwrap()[at], wanted, "{column}");
    }
    assert!(table.numbers("mean").unwrap()[at].is_nan());
}

#[test]
fn a_requirement_on_what_does_not_apply_is_refused() {
    let sheet = demo("wagtail", &[]);
    let parts = |lines: &str| PriceList::from_text(&format!(r#"{{"parts": [{lines}]}}"#)).unwrap();
    let springs = parts(r#"{"part": "a", "kind": "spring", "cost": 1, "front.spring.rate": "30 N/mm"}"#);
    let ask = |sheet: &Sheet, list: &PriceList, text: &str| {
        choose(sheet, list, &[Requirement::parse(text).unwrap()], 10, &mut |_| true)
    };
    for text in
        ["front.wind_up.verdict = meets", "front.wind_up.margin >= 0 deg", "front.wind_up.value <= 4 deg"]
    {
        let refused = ask(&sheet, &springs, text).unwrap_err().to_string();
        assert!(
            refused.contains("` does not apply, because the sheet says so")
                && refused.contains("front.wheels"),
            "{refused}"
        );
    }
    // Ratios of parts that the vehicle lacks bind nothing, and are not said to be missing.
    let mut none = without(&sheet, "clutch");
    none.set("clutch", "none").unwrap();
    none.set("converter", "none").unwrap();
    let chosen = ask(&none, &springs, "margins >= 0.01").unwrap();
    assert!(!chosen.not_known.iter().any(|one| one.starts_with("clutch.holds")), "{:?}", chosen.not_known);
    // A part that ends the question does not meet the requirement.
    let kinds = parts(
        r#"{"part": "strut", "kind": "axle", "cost": 1, "front.suspension": "strut", "front.wind_up_angle": "0 deg"},
           {"part": "leaves", "kind": "axle", "cost": 2, "front.suspension": "live_axle_on_leaf_springs", "front.wind_up_angle": "2 deg"}"#,
    );
    let open = demo("wagtail", &[("front.wheels", "")]);
    let chosen = ask(&open, &kinds, "front.wind_up.verdict = meets").unwrap();
    assert_eq!(chosen.cheapest.unwrap().parts, [1]);
    let [(0, why)] = &chosen.rejected[..] else { panic!("{:?}", chosen.rejected) };
    assert!(
        why.contains("front.wind_up.verdict = does not apply; required: front.wind_up.verdict = meets"),
        "{why}"
    );
}

/// Before: 90 % of the peak torque and 0.63 m/s² were assumed.
#[test]
fn a_wish_on_weak_ground_has_no_default_and_its_value_is_still_shown() {
    let on = demo("dunlin_measured", &[]).assess();
    let page = on.to_text(axlewright::base::text::System::Metric, false);
    for (finding, needs) in [
        ("driveline.cruise_band", "engine.band_share"),
        ("front.comfort", "wanted.ride_acceleration"),
        ("rear.comfort", "wanted.ride_acceleration"),
    ] {
        let answer = on.answer(finding).unwrap();
        assert_eq!((answer.verdict, answer.severity()), (NotKnown, 0), "{finding}");
        assert_eq!(on.missing(answer).needs, [needs]);
        assert!(
            answer.value.is_finite()
                && page.lines().any(|line| line.contains(finding) && line.contains("; needs ")),
            "{page}"
        );
    }
    let wished =
        demo("dunlin_measured", &[("wanted.ride_acceleration", "0.63 m/s^2"), ("engine.band_share", "90 %")])
            .assess();
    assert_eq!(
        [verdict(&wished, "front.comfort"), verdict(&wished, "driveline.cruise_band")],
        [Short, Meets]
    );
}

/// Lines in doubt hold every finding that rests on them at tight, also one without a caution; chances follow.
#[test]
fn no_finding_that_rests_on_lines_in_doubt_meets() {
    let cases = [
        ("dunlin_measured", ("rear.bump_steer", "0.001 deg"), "rear.bump_steer_band"),
        ("dunlin", ("coolant.mass_fraction", "0.6"), "coolant.freezing"),
        ("dunlin", ("rear.tyre.rolling_turns", "200 1/km"), "driveline.red_line"),
    ];
    for (name, line, finding) in cases {
        let doubted = demo(name, &[line]).assess();
        assert_eq!(verdict(&doubted, finding), Tight, "{name} {finding}");
        let chances = doubted.chances(50, 1).unwrap();
        let chance = chances.iter().find(|chance| chance.path == finding).unwrap();
        assert_eq!(chance.shares[0], 0.0, "{name} {finding}");
    }
    // What rests on other lines keeps its word.
    let doubted = demo("dunlin", &[("coolant.mass_fraction", "0.6")]).assess();
    assert_eq!(verdict(&doubted, "driveline.red_line"), Meets);
}
