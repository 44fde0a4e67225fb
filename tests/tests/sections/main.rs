//! What the systems' sections of the build sheet say agrees with the models that say the same, and with what a builder may read into it.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::cooling::{LeakDown, LeakDownFindings, Liquid, Trapped};
use axlewright::driveline::{self, Differential, Grip, Part, RatingKind, TorquePath};
use axlewright::sheet::{Assessment, Sheet};
use axlewright::units::{Force, Length, Ratio, Stress, Torque};
use axlewright::{Value, Verdict};

/// A sheet of these lines.
fn sheet(lines: &[(&str, &str)]) -> Sheet {
    let mut sheet = Sheet::new("");
    lines
        .iter()
        .for_each(|(path, text)| sheet.set(path, text).unwrap_or_else(|error| panic!("{path}: {error}")));
    sheet
}

fn value(assessment: &Assessment, path: &str) -> f64 {
    assessment.value(path).unwrap().unwrap_or(f64::NAN)
}

fn verdict(assessment: &Assessment, path: &str) -> &'static str {
    assessment.answer(path).unwrap_or_else(|| panic!("no finding {path}")).verdict.word()
}

fn lacks(assessment: &Assessment, path: &str) -> String {
    assessment.missing_text(assessment.answer(path).unwrap())
}

/// The demo sheet with other lines; no text takes a line out.
fn demo(name: &str, lines: &[(&str, &str)]) -> Assessment {
    let path = format!("{}/../examples/sheets/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let mut sheet = Sheet::from_text(&std::fs::read_to_string(path).unwrap()).unwrap();
    for (path, text) in lines {
        if text.is_empty() { sheet.remove(path).unwrap() } else { sheet.set(path, text).unwrap() }
    }
    sheet.assess()
}

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
    /// Of every part; a greater one is not short under the steady torque.
    rating: f64,
}

fn cases() -> Vec<Case> {
    let kinds = ["continuous", "peak", "yield", "ultimate"];
    let sides = ["input", "output"];
    let differentials = ["open", "limited_slip", "locked"];
    let mut all = Vec::new();
    for (place, rating) in (0..4 * 2 * 32 * 3).zip([900.0, 6000.0, 30000.0, 6000.0].into_iter().cycle()) {
        let bit = |bit: usize| ((place / 3) >> (3 + bit)) & 1 == 1;
        all.push(Case {
            kind: kinds[place / 3 % 4],
            side: sides[place / 12 % 2],
            differential: differentials[place % 3],
            grip: bit(0),
            inertia: bit(1),
            clutch: bit(2),
            shock: bit(3),
            low: bit(4),
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
            let graded = Verdict::of_ratio(margin, Ratio::from_si(1.25)).word();
            assert_eq!(
                (found.to_bits() == demand.to_bits() || found.is_nan() && demand.is_nan(), graded),
                (true, verdict(&assessment, &format!("{line}.strength"))),
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
        ];
        let on = sheet(&lines).assess();
        let answer = on.answer("half_shaft.strength").unwrap();
        assert!((answer.margin - margin).abs() < 1e-6, "{word}: {}", answer.margin);
        assert_eq!(
            verdict(&on, "half_shaft.strength"),
            if margin < 1.0 { "short" } else { "meets" },
            "{word}"
        );
        // Nobody said which differential: that is not known, and no better.
        lines.retain(|(path, _)| *path != "final_drive.differential");
        let without = sheet(&lines).assess();
        assert_eq!(verdict(&without, "half_shaft.strength"), "not known");
        assert!(lacks(&without, "half_shaft.strength").contains("final_drive.differential"));

        let part = |name: &str, ratio: Option<f64>, differential, rating: Option<f64>| Part {
            name: name.to_owned(),
            ratio: ratio.map(one),
            least_ratio: None,
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
            shock_factor: None,
            grip: Some(Grip {
                driven_load: Value::new(load.0),
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
    let assessment = demo("wagtail", &[("grip.pull_coefficient", "1.5")]);
    assert!(value(&assessment, "driveline.pull_torque").is_nan());
}

#[test]
fn reverse_counts_where_it_is_the_lowest_gear() {
    let with =
        |reverse| value(&demo("wagtail", &[("gearbox.reverse_ratio", reverse)]), "gearbox.output_torque");
    let near = |found: f64, wanted: f64| assert!((found / wanted - 1.0).abs() < 1e-12, "{found} {wanted}");
    near(with("3.48"), 150.0 * 3.48 * 0.96);
    near(with("2.9"), 150.0 * 3.17 * 0.96);
    near(with(""), 150.0 * 3.17 * 0.96);
}

#[test]
fn a_low_range_without_its_efficiency_is_not_taken_for_lossless() {
    let assessment = demo("dray", &[("transfer_case.efficiency", "")]);
    assert_eq!(verdict(&assessment, "final_drive.strength"), "not known");
    assert!(
        lacks(&assessment, "final_drive.strength").contains("a low range needs transfer_case.efficiency")
    );
}

#[test]
fn a_tyre_says_what_its_marking_says_and_no_more() {
    let assessment = demo("dunlin", &[("front.tyre.size", "235/70R16"), ("rear.tyre.effective_radius", "")]);
    for (finding, what) in [("front.tyre_load", "load index"), ("front.tyre_speed", "speed symbol")] {
        assert_eq!(verdict(&assessment, finding), "not known");
        assert!(
            lacks(&assessment, finding)
                .contains(&format!("no {what} stands after the size, as in 235/70R16 106T"))
        );
    }
    // 16 in and twice 70 % of 235 mm, times 3.05, over 2 pi.
    let radius = (16.0 * 0.0254 + 2.0 * 0.7 * 0.235) * 3.05 / core::f64::consts::TAU;
    assert!((value(&assessment, "rear.tyre.effective_radius") / radius - 1.0).abs() < 1e-15);
    // Load index 106: 950 kg, T: 190 km/h (ISO 4000-1, from memory).
    assert_eq!(value(&assessment, "rear.tyre.load_capacity"), 950.0);
    assert!((value(&assessment, "rear.tyre.rated_speed") * 3.6 - 190.0).abs() < 1e-12);
    // A diagonal tyre goes by its loaded radius, and says so where it is lacking.
    let dray = demo("dray", &[]);
    let (free, loaded) = (value(&dray, "rear.tyre.free_radius"), value(&dray, "rear.tyre.loaded_radius"));
    assert!((value(&dray, "rear.tyre.effective_radius") - (2.0 * free + loaded) / 3.0).abs() < 1e-15);
    let dray = demo("dray", &[("rear.tyre.rate", "")]);
    assert!(lacks(&dray, "driveline.cruise").contains("a diagonal tyre needs tyre.loaded_radius"));
}

#[test]
fn a_speedometer_is_asked_for_what_it_counts() {
    let error = |lines: &[(&str, &str)]| value(&demo("dray", lines), "speedometer.error");
    let radius = value(&demo("dray", &[]), "rear.tyre.effective_radius");
    assert!((error(&[]) - (0.378 * 4.78 / (radius * 4.88) - 1.0)).abs() < 1e-14);
    assert!((error(&[("speedometer.counts", "wheel")]) - (0.378 / radius - 1.0)).abs() < 1e-14);
    let lacking = demo("dray", &[("speedometer.final_drive", "")]);
    assert!(lacks(&lacking, "speedometer.reading").contains("needs speedometer.final_drive"));
}

#[test]
fn a_spring_buckles_only_where_it_is_long_and_free() {
    let margin = |lines: &[(&str, &str)]| demo("wagtail", lines).answer("front.buckling").unwrap().margin;
    let shortened = value(&demo("wagtail", &[]), "front.spring.greatest_compression");
    // 250 mm on flat seats of 66 mm is below 2.6 D / 0.5: it never buckles, and could be pressed to nothing.
    assert!((margin(&[]) - (0.25 - shortened)).abs() < 1e-15);
    let pivoted = margin(&[("front.spring.end_fixity", "1")]);
    assert!(pivoted < 0.0, "{pivoted}");
    assert!(
        (margin(&[("front.spring.end_fixity", "1"), ("front.spring.guide", "rod_or_sleeve")])
            - (0.25 - shortened))
            .abs()
            < 1e-15
    );
    // Moduli of no metal are no reason to call it safe.
    assert!(margin(&[("front.spring.elastic_modulus", "120 GPa")]).is_nan());
}

#[test]
fn a_choice_that_nobody_made_is_asked_for_with_what_it_asks_for() {
    let text = lacks(&demo("wagtail", &[("coolant.liquid", "")]), "coolant.boiling");
    assert!(text.starts_with("needs coolant.liquid to answer"), "{text}");
    // What people read off a part is asked for as such, not by what it could be computed from.
    let text = lacks(&demo("wagtail", &[("rear.spring.minimum_gap", "")]), "rear.coil_bind");
    assert!(text.starts_with("needs rear.spring.minimum_gap to answer"), "{text}");
    // EN 13906-1: 1.5 n (0.0015 D² / d + 0.1 d) of cold wire that works.
    let gap = value(&demo("wagtail", &[]), "front.spring.minimum_gap");
    assert!((gap / (1.5 * 6.4 * (0.0015 * 0.066 * 0.066 / 0.009 + 0.1 * 0.009)) - 1.0).abs() < 1e-12);
}

#[test]
fn a_leak_down_test_allows_for_the_temperature() {
    let margin = |later| {
        demo("dray", &[("leak_test.later_temperature", later)]).answer("leak_test.tight").unwrap().margin
    };
    // Colder air accounts for a part of the fall: the same readings are more of a margin.
    assert!(margin("12 °C") < margin("10 °C") && margin("14 °C") < 0.0);
}

/// One leak-down test, on the sheet and as the model; no error of the gauge is none that is written.
fn leak_down(lines: &[(&'static str, String)], glycol: bool) -> (Assessment, Option<LeakDownFindings>) {
    let text = |path: &str| lines.iter().find(|(of, _)| *of == path).map(|(_, text)| text.as_str());
    let mut all: Vec<(&str, &str)> = lines.iter().map(|(path, text)| (*path, text.as_str())).collect();
    all.push(("leak_test.trapped", if glycol { "gas_over_coolant" } else { "gas" }));
    let sheet = sheet(&all);
    let read = |path: &str| text(path).unwrap();
    let model = text("cap.gauge_error").map(|error| {
        let volume = |path: &str| glycol.then(|| Value::parse(read(path)).unwrap());
        LeakDown {
            trapped: if glycol { Trapped::GasOverCoolant } else { Trapped::Gas },
            gauge_pressure: Value::parse(read("leak_test.gauge_pressure")).unwrap(),
            later_gauge_pressure: Value::parse(read("leak_test.later_gauge_pressure")).unwrap(),
            temperature: Value::parse(read("leak_test.temperature")).unwrap(),
            later_temperature: Value::parse(read("leak_test.later_temperature")).unwrap(),
            station_pressure: Value::parse(read("use.station_pressure")).unwrap(),
            gauge_error: Some(Value::parse(error).unwrap()),
            allowed_loss: Value::parse(read("leak_test.allowed_loss")).unwrap(),
            gas_volume: volume("leak_test.gas_volume"),
            coolant_volume: volume("leak_test.coolant_volume"),
            liquid: glycol.then_some(Liquid::EthyleneGlycol),
            mass_fraction: glycol.then(|| Value::parse(read("coolant.mass_fraction")).unwrap()),
        }
        .findings()
        .unwrap()
    });
    (sheet.assess(), model)
}

#[test]
fn the_sheet_and_the_leak_down_model_agree_to_the_last_bit() {
    let mut counts = [0; 3];
    for case in 0..240 {
        // Steps that share no divisor, so that every combination comes up.
        let at =
            |from: f64, step: f64, steps: usize, stride: usize| from + step * (case * stride % steps) as f64;
        let lines = vec![
            ("leak_test.gauge_pressure", format!("{} psi gauge", at(11.0, 1.3, 7, 1))),
            ("leak_test.later_gauge_pressure", format!("{} psi gauge", at(10.3, 0.9, 11, 3))),
            ("leak_test.temperature", format!("{} °C", at(9.0, 4.7, 6, 1))),
            ("leak_test.later_temperature", format!("{} °C", at(8.0, 5.3, 5, 2))),
            ("use.station_pressure", format!("{} kPa absolute", at(83.0, 6.1, 4, 1))),
            ("cap.gauge_error", format!("{} psi", at(0.0, 0.3, 4, 3))),
            ("leak_test.allowed_loss", format!("{} psi", at(0.4, 1.1, 3, 1))),
            ("wanted.cap", format!("{} psi", at(0.0, 1.3, 2, 1))),
            ("leak_test.gas_volume", "1.3 L".to_owned()),
            ("leak_test.coolant_volume", "9.5 L".to_owned()),
            ("coolant.liquid", "ethylene_glycol".to_owned()),
            ("coolant.mass_fraction", "0.47".to_owned()),
        ];
        let (on, model) = leak_down(&lines, case % 2 == 0);
        let (answer, model) = (on.answer("leak_test.tight").unwrap(), model.unwrap());
        let wanted = Stress::from_si(answer.wanted);
        assert_eq!(
            (answer.margin.to_bits(), answer.verdict),
            (model.margin.si().to_bits(), Verdict::of_difference(model.margin, wanted)),
            "{lines:?}"
        );
        counts[answer.verdict as usize] += 1;
    }
    assert!(counts.iter().all(|count| *count >= 10), "{counts:?}");
}

/// By hand: a tight system reads 29.695949 psi * 288.15 / 298.15 - 14.695949 = 14.003993 psi; a gauge 0.5 psi off makes of a loss of 0.503993 psi
/// up to 0.5 + 0.5 * 0.966460 = 0.983230 psi more.
#[test]
fn the_error_of_the_gauge_counts_in_both_readings() {
    let test = |later: &str, error: Option<&str>| {
        let mut lines = vec![
            ("leak_test.gauge_pressure", "15 psi gauge".to_owned()),
            ("leak_test.later_gauge_pressure", format!("{later} psi gauge")),
            ("leak_test.temperature", "77 °F".to_owned()),
            ("leak_test.later_temperature", "59 °F".to_owned()),
            ("use.station_pressure", "101325 Pa absolute".to_owned()),
            ("leak_test.allowed_loss", "1 psi".to_owned()),
            ("wanted.cap", "0 psi".to_owned()),
        ];
        lines.extend(error.map(|error| ("cap.gauge_error", error.to_owned())));
        leak_down(&lines, false).0
    };
    let psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);
    for (later, error, margin, word) in [
        ("13.5", Some("0.5 psi"), -0.487_223, "short"),
        ("13.99", Some("0.5 psi"), 0.002_777, "meets"),
        ("13.5", Some("0 psi"), 0.496_007, "meets"),
        // Without the error a reading condemns, and clears nothing.
        ("12.9", None, -0.103_993, "short"),
        ("13.5", None, f64::NAN, "not known"),
    ] {
        let on = test(later, error);
        let found = on.answer("leak_test.tight").unwrap().margin / psi;
        assert!(
            (found - margin).abs() < 1e-6 || found.is_nan() && margin.is_nan(),
            "{later} {error:?}: {found}"
        );
        assert_eq!(verdict(&on, "leak_test.tight"), word, "{later} {error:?}");
    }
    let text = lacks(&test("13.5", None), "leak_test.tight");
    assert!(text.contains("write cap.gauge_error"), "{text}");
}

#[test]
fn the_cap_for_a_margin_leaves_that_margin() {
    let plain = demo("dunlin", &[]);
    let cap = format!("{} Pa gauge", value(&plain, "coolant.least_cap"));
    let answer = *demo("dunlin", &[("cap.rating", &cap), ("cap.holding_pressure", "")])
        .answer("coolant.boiling")
        .unwrap();
    assert!((answer.margin - answer.wanted).abs() < 1e-6, "{} {}", answer.margin, answer.wanted);
    // At the height of boiling the margin is gone.
    let altitude = format!(
        "{} m",
        value(&demo("wagtail", &[("cap.rating", "0.3 bar gauge")]), "coolant.boiling_altitude")
    );
    let answer = *demo("wagtail", &[("cap.rating", "0.3 bar gauge"), ("use.altitude", &altitude)])
        .answer("coolant.boiling")
        .unwrap();
    assert!(answer.margin.abs() < 1e-6, "{}", answer.margin);
}

/// Inputs of one kind may stand in a wrong order without a word: here each is put in by its name.
#[test]
fn lines_are_what_the_functions_give_of_the_lines_they_name() {
    let steps = [
        (
            "dunlin",
            "header.least_air_volume",
            "cooling.header_air_volume",
            &[
                ("expansion_volume", "coolant.expansion_volume"),
                ("fill_pressure", "header.fill_pressure"),
                ("cap_pressure", "cap.holds_at_least"),
                ("vapour_pressure", "header.vapour_pressure"),
                ("fill_temperature", "coolant.fill_temperature"),
                ("air_temperature", "header.air_temperature"),
                ("station_pressure", "use.station_pressure"),
            ][..],
        ),
        (
            "dunlin",
            "coolant.expansion_volume",
            "cooling.ethylene_glycol_expansion_volume",
            &[
                ("coolant_volume", "coolant.volume"),
                ("mass_fraction", "coolant.mass_fraction"),
                ("temperature", "coolant.fill_temperature"),
                ("later_temperature", "coolant.mean_temperature"),
            ],
        ),
        (
            "dray",
            "leak_test.tight_pressure",
            "cooling.leak_down_pressure",
            &[
                ("gauge_pressure", "leak_test.gauge_pressure"),
                ("temperature", "leak_test.temperature"),
                ("later_temperature", "leak_test.later_temperature"),
                ("station_pressure", "use.station_pressure"),
            ],
        ),
        (
            "wagtail",
            "coolant.pump_inlet_margin",
            "cooling.propylene_glycol_pump_inlet_margin",
            &[
                ("temperature", "coolant.pump_inlet_temperature"),
                ("mass_fraction", "coolant.mass_fraction"),
                ("header_pressure", "cap.holds_at_least"),
                ("suction_loss", "coolant.suction_loss"),
                ("station_pressure", "use.station_pressure"),
            ],
        ),
        (
            "dray",
            "coolant.boiling_altitude",
            "cooling.water_boiling_altitude",
            &[("temperature", "coolant.hottest"), ("cap_pressure", "coolant.header_pressure")],
        ),
        (
            "wagtail",
            "speedometer.error",
            "tyre.speedometer_error",
            &[
                ("rolling_radius_before", "speedometer.effective_radius"),
                ("rolling_radius_after", "rear.tyre.effective_radius"),
            ],
        ),
        (
            "dray",
            "speedometer.error",
            "tyre.speedometer_error_at_shaft",
            &[
                ("rolling_radius_before", "speedometer.effective_radius"),
                ("rolling_radius_after", "rear.tyre.effective_radius"),
                ("final_drive_before", "speedometer.final_drive"),
                ("final_drive_after", "final_drive.ratio"),
            ],
        ),
        (
            "dray",
            "driveline.crawl_speed",
            "driveline.crawl_speed",
            &[
                ("engine_speed", "engine.idle_speed"),
                ("first_gear_ratio", "gearbox.ratios[0]"),
                ("transfer_case_ratio", "transfer_case.low_ratio"),
                ("final_drive", "final_drive.ratio"),
                ("rolling_radius", "rear.tyre.effective_radius"),
            ],
        ),
        (
            "dunlin",
            "final_drive.for_cruise",
            "driveline.final_drive_for_cruise",
            &[
                ("road_speed", "use.cruise_speed"),
                ("engine_speed", "wanted.cruise_engine_speed"),
                ("gear_ratio", "gearbox.top_ratio"),
                ("rolling_radius", "rear.tyre.effective_radius"),
            ],
        ),
        (
            "dray",
            "gearbox.first_for_crawl",
            "driveline.first_gear_for_crawl",
            &[
                ("crawl_ratio", "wanted.crawl_ratio"),
                ("transfer_case_ratio", "transfer_case.low_ratio"),
                ("final_drive", "final_drive.ratio"),
            ],
        ),
        (
            "dunlin",
            "engine.mean_pressure",
            "engine.mean_effective_pressure_four_stroke",
            &[("torque", "engine.peak_torque"), ("displacement", "engine.displacement")],
        ),
        (
            "dunlin",
            "engine.displacement",
            "engine.displacement",
            &[("bore", "engine.bore"), ("stroke", "engine.stroke"), ("cylinders", "engine.cylinders")],
        ),
        (
            "dunlin",
            "engine.charge_temperature",
            "engine.charge_temperature",
            &[
                ("inlet_temperature", "engine.inlet_temperature"),
                ("pressure_ratio", "engine.pressure_ratio"),
                ("isentropic_efficiency", "engine.compressor_efficiency"),
            ],
        ),
        (
            "wagtail",
            "front.spring.surge_frequency",
            "spring.surge_frequency",
            &[
                ("wire_diameter", "front.spring.wire_diameter"),
                ("mean_diameter", "front.spring.mean_diameter"),
                ("active_coils", "front.spring.active_coils"),
                ("shear_modulus", "front.spring.shear_modulus"),
                ("density", "front.spring.density"),
            ],
        ),
        (
            "wagtail",
            "rear.damper.rate_low",
            "spring.damper_rate_for_ratio",
            &[
                ("damping_ratio", "wanted.damping_low"),
                ("tangent_rate", "rear.wheel_rate"),
                ("sprung_mass", "rear.sprung_mass"),
                ("damper_motion_ratio", "rear.spring.motion_ratio"),
            ],
        ),
        (
            "wagtail",
            "rear.damped_frequency",
            "spring.damped_frequency",
            &[("undamped_frequency", "rear.natural_frequency"), ("damping_ratio", "rear.damping_ratio")],
        ),
        (
            "dunlin",
            "rear.tyre.loaded_radius",
            "tyre.loaded_radius",
            &[
                ("free_diameter", "rear.tyre.free_diameter"),
                ("tyre_load", "rear.tyre.load"),
                ("tyre_rate", "rear.tyre.rate"),
            ],
        ),
    ];
    for (name, line, function, inputs) in steps {
        let assessment = demo(name, &[]);
        let entry = axlewright::catalogue::entry(function).unwrap();
        let input = |parameter: &&str| {
            let (_, line) =
                inputs.iter().find(|(named, _)| named == parameter).unwrap_or_else(|| panic!("{parameter}"));
            value(&assessment, line)
        };
        let arguments: Vec<f64> = entry.inputs.iter().map(|taken| input(&taken.name)).collect();
        let mut result = [f64::NAN];
        (entry.call)(&arguments, &mut result).unwrap_or_else(|error| panic!("{name} {line}: {error}"));
        assert_eq!(value(&assessment, line).to_bits(), result[0].to_bits(), "{name} {line}");
    }
}

#[test]
fn gears_in_a_wrong_order_do_not_make_a_part_strong() {
    let upside_down =
        [("gearbox.ratios[0]", "0.83"), ("gearbox.ratios[5]", "4.7"), ("gearbox.reverse_ratio", "")];
    let on = demo("dunlin", &upside_down);
    for finding in ["final_drive.strength", "driveline.cruise", "driveline.red_line"] {
        assert_eq!(verdict(&on, finding), "not known", "{finding}");
        assert!(
            lacks(&on, finding).contains("ratios fall from first gear to top"),
            "{}",
            lacks(&on, finding)
        );
    }
    // A first gear written beside the list does not hide the list.
    let on = demo("dunlin", &[("gearbox.first_ratio", "1"), ("gearbox.reverse_ratio", "")]);
    assert_eq!(value(&on, "gearbox.lowest_ratio"), 4.7);
}

#[test]
fn an_inclined_spring_turns_as_it_travels() {
    let inclined = |angle: &str, length: &str| {
        let lines = [
            ("front.spring.motion_ratio", ""),
            ("front.spring.mount_ratio", "0.8"),
            ("front.spring.angle", angle),
            ("front.spring.eye_length", length),
        ];
        demo("dunlin", if length.is_empty() { &lines[..3] } else { &lines })
    };
    let on = inclined("40 deg", "480 mm");
    let rate = axlewright::spring::inclined_tangent_rate(
        axlewright::units::LinearStiffness::from_si(value(&on, "front.spring.rate")),
        Ratio::from_si(0.8),
        axlewright::units::Angle::from_si(40.0_f64.to_radians()),
        Force::from_si(value(&on, "front.spring.force")),
        Length::from_si(0.48),
    )
    .unwrap();
    let wheel_rate = value(&on, "front.wheel_rate");
    assert!((wheel_rate / rate.si() - 1.0).abs() < 1e-12, "{wheel_rate} {}", rate.si());
    // Without the length between its eyes the rate is not known, rather than that of a spring that does not turn.
    let on = inclined("40 deg", "");
    assert_eq!(verdict(&on, "front.frequency"), "not known");
    assert!(lacks(&on, "front.frequency").contains("spring.eye_length"), "{}", lacks(&on, "front.frequency"));
    assert_eq!(value(&inclined("0 deg", ""), "front.spring.ratio_gradient"), 0.0);
}

#[test]
fn a_vacuum_is_not_written_as_a_pressure() {
    let mut sheet = sheet(&[]);
    for (path, text) in [
        ("cap.vacuum_opening", "5 psi gauge"),
        ("cap.vacuum_limit", "2 psi gauge"),
        ("cap.rating", "-4 psi gauge"),
        ("cap.opening_pressure", "-4 psi gauge"),
        ("cap.holding_pressure", "-4 psi gauge"),
        ("cap.weakest_component", "-4 psi gauge"),
    ] {
        let refused = sheet.set(path, text).unwrap_err().to_string();
        assert!(refused.contains(path) && refused.contains(text), "{refused}");
    }
}

#[test]
fn coolant_boils_on_what_the_cap_keeps() {
    let boils = |lines: &[(&str, &str)]| value(&demo("dunlin", lines), "coolant.boiling_temperature");
    let weak = [("cap.holding_pressure", "5 psi gauge"), ("cap.opening_pressure", "")];
    let rated = [("cap.holding_pressure", ""), ("cap.opening_pressure", ""), ("cap.rating", "4.5 psi gauge")];
    assert!((boils(&weak) / boils(&rated) - 1.0).abs() < 1e-12, "5 psi less the error of the gauge, 0.5 psi");
    // One that holds more than its rating gains nothing; one that opens too early keeps no more than that.
    let strong = [("cap.holding_pressure", "20 psi gauge"), ("cap.opening_pressure", "")];
    assert_eq!(boils(&strong), boils(&[("cap.holding_pressure", ""), ("cap.opening_pressure", "")]));
    let early = [("cap.holding_pressure", ""), ("cap.opening_pressure", "5 psi gauge")];
    assert_eq!(boils(&early), boils(&weak));
    assert!(boils(&weak) < boils(&strong) - 10.0);
    assert_eq!(verdict(&demo("dunlin", &weak), "coolant.boiling"), "tight");
}

/// As `cooling.CapTest` has it.
#[test]
fn one_reading_condemns_a_cap_and_both_clear_it() {
    use axlewright::cooling::CapTest;
    let readings = ["", "4 psi gauge", "13 psi gauge", "15 psi gauge", "17 psi gauge", "22 psi gauge"];
    let mut seen = std::collections::BTreeSet::new();
    for opening in readings {
        for holding in readings {
            for weakest in ["12 psi gauge", "16 psi gauge", "20 psi gauge"] {
                let lines = [
                    ("cap.opening_pressure", opening),
                    ("cap.holding_pressure", holding),
                    ("cap.weakest_component", weakest),
                ];
                let on = demo("dunlin", &lines);
                let read = |text: &str| (!text.is_empty()).then(|| Value::parse(text).unwrap());
                let cap = CapTest {
                    rating: Some(Value::parse("15 psi gauge").unwrap()),
                    opening_pressure: read(opening),
                    holding_pressure: read(holding),
                    gauge_error: Some(Value::parse("0.5 psi").unwrap()),
                    rating_tolerance: Some(Value::parse("1 psi").unwrap()),
                    weakest_component: read(weakest),
                    vacuum_opening: None,
                    vacuum_limit: None,
                };
                let Ok(found) = cap.findings() else {
                    // Holding above opening: neither is believed.
                    assert_eq!(verdict(&on, "cap.holds"), "not known", "{lines:?}");
                    for finding in ["cap.opens", "cap.weakest"] {
                        assert!(
                            ["short", "not known"].contains(&verdict(&on, finding)),
                            "{finding} {lines:?}"
                        );
                    }
                    continue;
                };
                for (finding, margin) in [
                    ("cap.holds", found.holding_margin),
                    ("cap.opens", found.opening_margin),
                    ("cap.weakest", found.component_margin),
                ] {
                    let expected = Verdict::of_difference(margin, Stress::from_si(0.0));
                    assert_eq!(verdict(&on, finding), expected.word(), "{finding} {lines:?}");
                    seen.insert((finding, expected.word()));
                }
            }
        }
    }
    assert_eq!(seen.len(), 9, "{seen:?}");
}

#[test]
fn a_spring_longer_at_its_block_than_free_is_refused() {
    let on = demo("dunlin", &[("front.spring.free_length", "150 mm")]);
    for finding in ["front.buckling", "front.spring_strength"] {
        assert_eq!(verdict(&on, finding), "not known");
        assert!(lacks(&on, finding).contains("spring.free_length = 0.15 m"), "{}", lacks(&on, finding));
    }
}

#[test]
fn a_body_that_stands_at_full_droop_has_no_more_than_all_of_the_travel() {
    // 270 mm at full droop less 180 mm with the least gaps, over 0.60: the coils end it before the damper's 110 mm / 0.60.
    let on = demo("dunlin", &[("front.spring.rate", "5000 lbf/in"), ("front.spring.droop_length", "270 mm")]);
    assert!(value(&on, "front.droop_left") < 0.0);
    assert!((value(&on, "front.bump_left") - 0.150).abs() < 1e-12, "{}", value(&on, "front.bump_left"));
}

#[test]
fn a_test_above_the_weakest_part_is_short() {
    let on = demo(
        "dunlin",
        &[("leak_test.gauge_pressure", "40 psi gauge"), ("leak_test.later_gauge_pressure", "40 psi gauge")],
    );
    assert_eq!(verdict(&on, "leak_test.pumped"), "short");
    assert_eq!(verdict(&demo("dunlin", &[]), "leak_test.pumped"), "meets");
    assert_eq!(verdict(&demo("dunlin", &[("cap.weakest_component", "")]), "leak_test.pumped"), "not known");
    // What rests on functions that carry a caution carries one.
    for finding in ["header.air", "coolant.pump_inlet", "leak_test.pumped"] {
        assert!(on.answer(finding).unwrap().is_safety(), "{finding}");
    }
}

#[test]
fn a_high_bound_of_grip_below_its_mean_bounds_nothing() {
    let on = demo("dray", &[("grip.strength_coefficient", "0.3")]);
    // The engine alone bounds the axle then: 280 * 7.8 * 0.95 * 2.03 * 0.96 * 4.78 * 0.94 N·m.
    let engine = 280.0 * 7.8 * 0.95 * 2.03 * 0.96 * 4.78 * 0.94;
    assert!((value(&on, "final_drive.demand") / engine - 1.0).abs() < 1e-12);
    assert_eq!(
        (verdict(&on, "final_drive.strength"), verdict(&on, "half_shaft.strength")),
        ("short", "short")
    );
}
