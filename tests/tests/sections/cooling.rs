//! Cap, coolant and pressure decay test.

use axlewright::cooling::{Liquid, PressureDecay, PressureDecayFindings, Trapped};
use axlewright::sheet::Assessment;
use axlewright::units::Stress;
use axlewright::{Value, Verdict};
use axlewright_tests::assessed::{assessed, lacks, sheet, value, verdict_word};

#[test]
fn a_pressure_decay_test_allows_for_the_temperature() {
    let margin = |later| {
        assessed("dray", &[("leak_test.later_temperature", later)]).answer("leak_test.tight").unwrap().margin
    };
    // Colder air accounts for a part of the fall: the same readings are more of a margin.
    assert!(margin("12 °C") < margin("10 °C") && margin("14 °C") < 0.0);
}

/// One pressure decay test, on the sheet and as the model; no error of the gauge is none that is written.
fn pressure_decay(
    lines: &[(&'static str, String)],
    glycol: bool,
) -> (Assessment, Option<PressureDecayFindings>) {
    let text = |path: &str| lines.iter().find(|(of, _)| *of == path).map(|(_, text)| text.as_str());
    let mut all: Vec<(&str, &str)> = lines.iter().map(|(path, text)| (*path, text.as_str())).collect();
    // Gas alone has no coolant beside it.
    all.retain(|(path, _)| glycol || *path != "leak_test.coolant_volume");
    all.push(("leak_test.trapped", if glycol { "gas_over_coolant" } else { "gas" }));
    let sheet = sheet(&all);
    let read = |path: &str| text(path).unwrap();
    let model = text("cap.gauge_error").map(|error| {
        let volume = |path: &str| glycol.then(|| Value::parse(read(path)).unwrap());
        PressureDecay {
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
fn the_sheet_and_the_pressure_decay_model_agree_to_the_last_bit() {
    // Meets, tight, short, and not known where the reading rose without a reason.
    let mut counts = [0; 4];
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
        let (on, model) = pressure_decay(&lines, case % 2 == 0);
        let (answer, model) = (on.answer("leak_test.tight").unwrap(), model.unwrap());
        let wanted = Stress::from_si(answer.wanted);
        let bits = |margin: f64| (!margin.is_nan()).then(|| margin.to_bits());
        assert_eq!(
            (bits(answer.margin), answer.verdict),
            (bits(model.margin.si()), Verdict::of_difference(model.margin, wanted)),
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
        pressure_decay(&lines, false).0
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
        assert_eq!(verdict_word(&on, "leak_test.tight"), word, "{later} {error:?}");
    }
    let text = lacks(&test("13.5", None), "leak_test.tight");
    assert!(text.contains("write cap.gauge_error"), "{text}");
}

#[test]
fn the_cap_for_a_margin_leaves_that_margin() {
    let plain = assessed("dunlin", &[]);
    let cap = format!("{} Pa gauge", value(&plain, "coolant.least_cap"));
    let answer = *assessed(
        "dunlin",
        &[
            ("cap.rating", &cap),
            ("cap.holding_pressure", ""),
            ("cap.opening_pressure", ""),
            ("cap.rating_tolerance", ""),
        ],
    )
    .answer("coolant.boiling")
    .unwrap();
    assert!(
        (answer.margin - value(&plain, "wanted.boiling")).abs() < 1e-6,
        "{} {}",
        answer.margin,
        answer.wanted
    );
    // At the height of boiling the margin is gone.
    let altitude = format!(
        "{} m",
        value(&assessed("wagtail", &[("cap.rating", "0.3 bar gauge")]), "coolant.boiling_altitude")
    );
    let answer = *assessed("wagtail", &[("cap.rating", "0.3 bar gauge"), ("use.altitude", &altitude)])
        .answer("coolant.boiling")
        .unwrap();
    assert!(answer.margin.abs() < 1e-6, "{}", answer.margin);
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
    let boils = |lines: &[(&str, &str)]| value(&assessed("dunlin", lines), "coolant.boiling_temperature");
    let weak = [("cap.holding_pressure", "5 psi gauge"), ("cap.opening_pressure", "")];
    let untested = [("cap.holding_pressure", ""), ("cap.opening_pressure", "")];
    let rated = [&untested[..], &[("cap.rating", "5.5 psi gauge")]].concat();
    assert!((boils(&weak) / boils(&rated) - 1.0).abs() < 1e-12, "5 psi less 0.5 psi; 5.5 psi less 1 psi");
    // One that holds more than its rating gains nothing; one that opens too early keeps no more than that.
    let strong = [("cap.holding_pressure", "20 psi gauge"), ("cap.opening_pressure", "")];
    assert_eq!(boils(&strong), boils(&[&untested[..], &[("cap.rating_tolerance", "")]].concat()));
    let early = [("cap.holding_pressure", ""), ("cap.opening_pressure", "5 psi gauge")];
    assert_eq!(boils(&early), boils(&weak));
    assert!(boils(&weak) < boils(&strong) - 10.0);
    // The tolerances of the readings use up the remaining margin.
    assert_eq!(verdict_word(&assessed("dunlin", &weak), "coolant.boiling"), "short");
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
                let on = assessed("dunlin", &lines);
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
                    assert_eq!(verdict_word(&on, "cap.holds"), "not known", "{lines:?}");
                    for finding in ["cap.opens", "cap.weakest"] {
                        assert!(
                            ["short", "not known"].contains(&verdict_word(&on, finding)),
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
                    assert_eq!(verdict_word(&on, finding), expected.word(), "{finding} {lines:?}");
                    seen.insert((finding, expected.word()));
                }
            }
        }
    }
    assert_eq!(seen.len(), 9, "{seen:?}");
}

#[test]
fn a_test_above_the_weakest_part_is_short() {
    let on = assessed(
        "dunlin",
        &[("leak_test.gauge_pressure", "40 psi gauge"), ("leak_test.later_gauge_pressure", "40 psi gauge")],
    );
    assert_eq!(verdict_word(&on, "leak_test.pumped"), "short");
    assert_eq!(verdict_word(&assessed("dunlin", &[]), "leak_test.pumped"), "meets");
    assert_eq!(
        verdict_word(&assessed("dunlin", &[("cap.weakest_component", "")]), "leak_test.pumped"),
        "not known"
    );
    // What rests on functions that carry a caution carries one.
    for finding in ["header.air", "coolant.pump_inlet", "leak_test.pumped"] {
        assert!(on.answer(finding).unwrap().is_safety(), "{finding}");
    }
}
