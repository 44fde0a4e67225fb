//! Coolant, cap and pressure decay test are judged on the safe side.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::cooling::{Coolant, Liquid, Mix, PressureDecay, StrengthBy, Trapped};
use axlewright::sheet::Assessment;
use axlewright::units::{GaugePressure, Ratio, Stress, Temperature, Volume};
use axlewright::{Value, Verdict, fluid};
use axlewright_tests::assessed::{demo, lacks, sheet, value, verdict_word};

type Lines<'a> = [(&'a str, &'a str)];

const COOLANT: [(&str, &str); 9] = [
    ("coolant.liquid", "ethylene_glycol"),
    ("coolant.mass_fraction", "50 %"),
    ("coolant.hottest", "105 °C"),
    ("use.station_pressure", "100 kPa absolute"),
    ("use.coldest_air", "-25 °C"),
    ("cap.rating", "16 psi gauge"),
    ("cap.rating_tolerance", "1 psi"),
    ("cap.gauge_error", "0.5 psi"),
    ("cap.holding_pressure", "16 psi gauge"),
];

fn assessed(base: &Lines<'_>, lines: &Lines<'_>) -> Assessment {
    let mut all: Vec<(&str, &str)> = base.to_vec();
    for (path, text) in lines {
        all.retain(|(known, _)| known != path);
        if !text.is_empty() {
            all.push((path, text));
        }
    }
    sheet(&all).assess()
}

fn word(lines: &Lines<'_>, finding: &str) -> &'static str {
    verdict_word(&assessed(&COOLANT, lines), finding)
}

const PSI: f64 = 6_894.757_293_168;

#[test]
fn an_untested_cap_clears_no_boiling() {
    assert_eq!(word(&[], "coolant.boiling"), "meets");
    let untested = assessed(&COOLANT, &[("cap.holding_pressure", "")]);
    assert_eq!(verdict_word(&untested, "coolant.boiling"), "tight");
    assert!(
        untested
            .assumed()
            .iter()
            .any(|one| one.path == "cap.untested" && one.ground.contains("cap.holding_pressure"))
    );
    // The rating less its tolerance at most.
    assert!((value(&untested, "coolant.header_pressure") / PSI - 15.0).abs() < 1e-9);
    for missing in ["cap.gauge_error", "cap.rating_tolerance"] {
        assert_eq!(word(&[(missing, "")], "coolant.boiling"), "tight", "{missing}");
    }
    // Too hot is too hot, untested or not.
    assert_eq!(
        word(&[("cap.holding_pressure", ""), ("coolant.hottest", "140 °C")], "coolant.boiling"),
        "short"
    );
    // A system that is open to the air has no cap to test.
    let open = [
        ("cap.rating", ""),
        ("cap.rating_tolerance", ""),
        ("cap.gauge_error", ""),
        ("cap.holding_pressure", ""),
        ("cap", "none"),
        ("coolant.header_pressure", "0 Pa gauge"),
        ("coolant.hottest", "90 °C"),
    ];
    assert_eq!(word(&open, "coolant.boiling"), "meets");
    // The inlet of the pump hangs on the same cap.
    let pump = [("coolant.pump_inlet_temperature", "100 °C"), ("coolant.suction_loss", "20 kPa")];
    assert_eq!(word(&pump, "coolant.pump_inlet"), "meets");
    assert_eq!(word(&[&pump[..], &[("cap.holding_pressure", "")]].concat(), "coolant.pump_inlet"), "tight");
}

#[test]
fn an_opening_that_is_too_low_counts_without_error_or_tolerance() {
    let bare = [("cap.holding_pressure", ""), ("cap.gauge_error", ""), ("cap.rating_tolerance", "")];
    for (opening, keeps) in [("10 psi gauge", 10.0), ("4 psi gauge", 4.0), ("17 psi gauge", 16.0)] {
        let on = assessed(&COOLANT, &[&bare[..], &[("cap.opening_pressure", opening)]].concat());
        assert!((value(&on, "coolant.kept_pressure") / PSI - keeps).abs() < 1e-9, "{opening}");
        assert_eq!(verdict_word(&on, "coolant.boiling"), "tight", "{opening}");
    }
    let with_error = [("cap.holding_pressure", ""), ("cap.opening_pressure", "10 psi gauge")];
    assert!((value(&assessed(&COOLANT, &with_error), "coolant.kept_pressure") / PSI - 9.5).abs() < 1e-9);
}

#[test]
fn the_header_tank_counts_with_the_least_that_the_cap_keeps() {
    let tank = [
        ("coolant.volume", "10 L"),
        ("coolant.fill_temperature", "20 °C"),
        ("coolant.mean_temperature", "90 °C"),
        ("header.air_temperature", "80 °C"),
        ("header.air_volume", "9 L"),
    ];
    assert_eq!(word(&tank, "header.air"), "meets");
    let untested = [&tank[..], &[("cap.holding_pressure", "")]].concat();
    assert_eq!(word(&untested, "header.air"), "tight");
    let needs = |lines: &Lines<'_>| value(&assessed(&COOLANT, lines), "header.least_air_volume");
    let leaking = [&tank[..], &[("cap.holding_pressure", "12 psi gauge")]].concat();
    assert!(needs(&untested) >= needs(&tank) && needs(&leaking) > needs(&untested));
}

#[test]
fn a_pressure_above_the_rating_of_the_cap_is_refused() {
    for (pressure, known) in
        [("15 psi gauge", true), ("16 psi gauge", true), ("16.5 psi gauge", false), ("25 psi gauge", false)]
    {
        let on = assessed(&COOLANT, &[("coolant.header_pressure", pressure)]);
        assert_eq!(verdict_word(&on, "coolant.boiling") == "meets", known, "{pressure}");
        if !known {
            assert!(
                lacks(&on, "coolant.boiling").contains("more than the rating of the cap"),
                "{}",
                lacks(&on, "coolant.boiling")
            );
        }
    }
}

#[test]
fn the_bound_of_the_mixture_comes_off_freezing_and_boiling() {
    // Ethylene glycol, 50 % by mass: the curve says -36.0 °C, and 2.6 K warmer is possible; 3 K are wanted.
    let freezing = |air: &str| word(&[("use.coldest_air", air)], "coolant.freezing");
    assert_eq!([freezing("-30 °C"), freezing("-32 °C"), freezing("-34 °C")], ["meets", "tight", "short"]);
    for (liquid, share, freezes, boils) in [
        ("ethylene_glycol", "60 %", 3.3, 0.8),
        ("ethylene_glycol", "30 %", 0.6, 0.8),
        ("propylene_glycol", "50 %", 1.81, 6.1),
        ("propylene_glycol", "25 %", 1.81, 3.05),
        ("water", "0 %", 0.0, 0.0),
    ] {
        let on = assessed(&COOLANT, &[("coolant.liquid", liquid), ("coolant.mass_fraction", share)]);
        assert!((value(&on, "coolant.freezing_bound") - freezes).abs() < 1e-9, "{liquid} {share}");
        assert!((value(&on, "coolant.boiling_bound") - boils).abs() < 1e-9, "{liquid} {share}");
        let left = value(&on, "coolant.boiling_temperature") - boils - value(&on, "coolant.hottest");
        assert!((on.answer("coolant.boiling").unwrap().margin - left).abs() < 1e-9, "{liquid} {share}");
    }
    // Propylene glycol: 125.6 °C less 6.1 K.
    let propylene = |hottest| {
        word(&[("coolant.liquid", "propylene_glycol"), ("coolant.hottest", hottest)], "coolant.boiling")
    };
    assert_eq!([propylene("105 °C"), propylene("112 °C"), propylene("123 °C")], ["meets", "tight", "short"]);
}

#[test]
fn the_models_of_the_coolant_take_the_bound_off_too() {
    let coolant = |liquid, share: f64| Coolant {
        liquid,
        volume_share: None,
        concentrate: None,
        mass_fraction: Some(Value::new(Ratio::from_si(share))),
        cap: Value::new(GaugePressure::from_si(100e3)),
        cap_holds: None,
        altitude: None,
        station_pressure: Some(Value::parse("100 kPa absolute").unwrap()),
        hottest: Value::parse("105 °C").unwrap(),
    };
    for (liquid, share, bound) in
        [(Liquid::PropyleneGlycol, 0.5, 6.1), (Liquid::EthyleneGlycol, 0.5, 0.8), (Liquid::Water, 0.0, 0.0)]
    {
        let on = coolant(liquid, share).margin().unwrap();
        let left = on.boiling_temperature.si() - Temperature::from_si(378.15).si() - bound;
        assert!((on.margin.si() - left).abs() < 1e-9, "{liquid:?}");
    }
    let mix = Mix {
        liquid: Liquid::PropyleneGlycol,
        system_volume: Value::parse("10 L").unwrap(),
        concentrate: Value::parse("95 %").unwrap(),
        freezing_temperature: None,
        strength: Some(Value::parse("50 %").unwrap()),
        strength_by: Some(StrengthBy::Mass),
        present_strength: None,
        cap: Value::parse("100 kPa gauge").unwrap(),
        cap_holds: None,
        altitude: None,
        station_pressure: Some(Value::parse("100 kPa absolute").unwrap()),
        fill_temperature: Value::parse("20 °C").unwrap(),
        mean_temperature: Value::parse("90 °C").unwrap(),
        hottest: Value::parse("105 °C").unwrap(),
    };
    let fill = mix.fresh_fill().unwrap();
    assert!(
        (fill.margin.si() - coolant(Liquid::PropyleneGlycol, 0.5).margin().unwrap().margin.si()).abs() < 1e-9
    );
}

fn decay(later: f64, from: f64, to: f64) -> PressureDecay {
    let celsius = |at: f64| Value::new(Temperature::from_si(at + 273.15));
    PressureDecay {
        trapped: Trapped::Gas,
        gauge_pressure: Value::new(GaugePressure::from_si(100e3)),
        later_gauge_pressure: Value::new(GaugePressure::from_si(later)),
        temperature: celsius(from),
        later_temperature: celsius(to),
        station_pressure: Value::parse("100 kPa absolute").unwrap(),
        gauge_error: Some(Value::new(Stress::from_si(0.0))),
        allowed_loss: Value::new(Stress::from_si(0.0)),
        gas_volume: None,
        coolant_volume: None,
        liquid: None,
        mass_fraction: None,
    }
}

/// Damp gas: the vapour of water rises from 3.17 kPa at 25 °C to 9.59 kPa at 45 °C and 19.95 kPa at 60 °C (IAPWS-IF97).
#[test]
fn the_vapour_of_damp_gas_hides_no_leak() {
    for (to, hidden) in [(45.0, 6.21e3), (60.0, 16.4e3), (25.0, 0.0), (10.0, 0.0)] {
        let ratio = (to + 273.15) / 298.15;
        let dry = 200e3 * ratio - 100e3;
        let least = decay(0.0, 25.0, to).findings().unwrap().least_pressure.si();
        assert!((least - dry - hidden).abs() < 50.0, "{to}: {}", least - dry);
        // A reading that dry gas alone would clear does not.
        let graded = |later| {
            Verdict::of_difference(decay(later, 25.0, to).findings().unwrap().margin, Stress::from_si(0.0))
        };
        assert_eq!(graded(dry + 1.0), if hidden > 0.0 { Verdict::Short } else { Verdict::Meets }, "{to}");
        assert_eq!(graded(dry + hidden + 100.0), Verdict::Meets, "{to}");
    }
    let saturated =
        |at: f64| fluid::water_saturation_pressure(Temperature::from_si(at + 273.15)).unwrap().si();
    let most = saturated(45.0) - saturated(25.0) * 318.15 / 298.15;
    assert!(
        (decay(0.0, 25.0, 45.0).findings().unwrap().least_pressure.si()
            - (200e3 * 318.15 / 298.15 - 100e3)
            - most)
            .abs()
            < 1e-6
    );
}

#[test]
fn the_gauge_counts_twice_in_a_pressure_decay_test() {
    let with = |error: f64| PressureDecay {
        gauge_error: Some(Value::new(Stress::from_si(error))),
        ..decay(99e3, 20.0, 20.0)
    };
    let least = |error: f64| with(error).findings().unwrap().least_pressure.si();
    assert!((least(1e3) - least(0.0) - 2e3).abs() < 1e-9);
}

#[test]
fn the_gauge_counts_against_what_was_pumped() {
    let pumped = |lines: &Lines<'_>| {
        let base = [
            ("leak_test.gauge_pressure", "20 psi gauge"),
            ("cap.weakest_component", "20 psi gauge"),
            ("cap.gauge_error", "1 psi"),
        ];
        verdict_word(&assessed(&base, lines), "leak_test.pumped")
    };
    assert_eq!(pumped(&[]), "short");
    assert_eq!(pumped(&[("cap.gauge_error", "")]), "not known");
    assert_eq!(pumped(&[("cap.gauge_error", ""), ("leak_test.gauge_pressure", "21 psi gauge")]), "short");
    assert_eq!(
        pumped(&[
            ("leak_test.gauge_pressure", "18 psi gauge"),
            ("leak_test.later_gauge_pressure", "20 psi gauge")
        ]),
        "short"
    );
    assert_eq!(pumped(&[("leak_test.gauge_pressure", "18.5 psi gauge")]), "meets");
}

#[test]
fn sixty_per_cent_of_pure_glycol_by_volume_is_answered() {
    let strong = [
        ("coolant.mass_fraction", ""),
        ("coolant.volume_share", "60 %"),
        ("coolant.concentrate", "100 %"),
        ("use.coldest_air", "-40 °C"),
    ];
    let on = assessed(&COOLANT, &strong);
    assert!((value(&on, "coolant.mass_fraction") - 0.626).abs() < 5e-4);
    // The freezing point of 60 % by mass, less its bound, is above -51 °C and below -47 °C.
    let freezes = value(&on, "coolant.freezing_temperature") - 273.15;
    assert!((freezes + 51.2).abs() < 0.05, "{freezes}");
    assert_eq!(verdict_word(&on, "coolant.freezing"), "meets");
    let colder = [&strong[..3], &[("use.coldest_air", "-49 °C")]].concat();
    assert_eq!(word(&colder, "coolant.freezing"), "short");
    // Propylene glycol: 60.9 % by mass.
    let propylene = [&strong[..], &[("coolant.liquid", "propylene_glycol")]].concat();
    assert_eq!(word(&propylene, "coolant.freezing"), "meets");
    // Stronger mixes are refused as before.
    let beyond = assessed(&COOLANT, &[("coolant.mass_fraction", "65 %")]);
    assert_eq!(verdict_word(&beyond, "coolant.freezing"), "not known");
}

#[test]
fn growth_above_100_degrees_is_an_extrapolation_that_is_told() {
    let header = |mean: &'static str| {
        let lines = [
            ("coolant.volume", "10 L"),
            ("coolant.fill_temperature", "20 °C"),
            ("coolant.mean_temperature", mean),
            ("header.air_volume", "3 L"),
            ("header.air_temperature", "100 °C"),
        ];
        assessed(&COOLANT, &lines)
    };
    let (warm, hot, beyond) = (header("95 °C"), header("115 °C"), header("130 °C"));
    // 6.49 % from 20 °C to 115 °C, 4.89 % to 95 °C.
    assert!((value(&hot, "coolant.expansion_volume") / 0.01 - 0.0649).abs() < 1e-4);
    assert!((value(&warm, "coolant.expansion_volume") / 0.01 - 0.0489).abs() < 1e-4);
    for on in [&warm, &hot] {
        assert_ne!(verdict_word(on, "header.air"), "not known");
        let told = on.assumed();
        let told = told.iter().find(|one| one.path == "coolant.growth_limit").unwrap();
        assert!(told.ground.contains("extrapolated") && told.si == 398.15, "{told:?}");
    }
    assert_eq!(verdict_word(&beyond, "header.air"), "not known");
    let why = beyond.missing_text(beyond.answer("header.air").unwrap());
    assert!(why.contains("is more than growth is computed for; allowed: at most 125 °C"), "{why}");
    let data = [
        ("coolant.growth_limit", "100 °C"),
        ("coolant.volume", "10 L"),
        ("coolant.mean_temperature", "115 °C"),
    ];
    let kept = assessed(&COOLANT, &[&data[..], &[("coolant.fill_temperature", "20 °C")]].concat());
    assert!(kept.value("coolant.expansion_volume").unwrap().is_none());
}

#[test]
fn two_parts_are_no_share_of_a_coolant() {
    let share = |text: &str| Some(Value::parse(text).unwrap());
    let coolant = |volume_share: &str| Coolant {
        liquid: Liquid::EthyleneGlycol,
        volume_share: share(volume_share),
        concentrate: share("100 %"),
        mass_fraction: None,
        cap: Value::parse("15 psi gauge").unwrap(),
        cap_holds: None,
        altitude: Some(Value::parse("0 m").unwrap()),
        station_pressure: None,
        hottest: Value::parse("105 °C").unwrap(),
    };
    for text in ["1:1", "1 to 1", "1.0 : 1.0"] {
        let refused = coolant(text).freezing_temperature().unwrap_err().to_string();
        assert!(refused.starts_with("volume_share: ") && refused.contains("writes two parts"), "{refused}");
    }
    let half = coolant("50 %").freezing_temperature().unwrap();
    assert_eq!(coolant("1/2").freezing_temperature(), Ok(half));
}

/// The coolant is hot enough to tell 15 psi from 6 psi.
#[test]
fn a_written_pressure_is_no_more_than_a_tested_cap_keeps() {
    let on = |holding, opening, header| {
        let lines = [
            ("coolant.hottest", "118 °C"),
            ("wanted.boiling", "5 K"),
            ("cap.holding_pressure", holding),
            ("cap.opening_pressure", opening),
            ("coolant.header_pressure", header),
        ];
        assessed(&COOLANT, &lines)
    };
    for (holding, opening, header, keeps, verdict) in [
        // The gauge reads up to 0.5 psi too much.
        ("5 psi gauge", "6 psi gauge", "15 psi gauge", 4.5, "short"),
        ("", "6 psi gauge", "15 psi gauge", 5.5, "short"),
        ("12 psi gauge", "", "15 psi gauge", 11.5, "tight"),
        ("16 psi gauge", "16.4 psi gauge", "15 psi gauge", 15.0, "meets"),
        ("16 psi gauge", "", "15 psi gauge", 15.0, "meets"),
    ] {
        let on = on(holding, opening, header);
        let kept = value(&on, "coolant.kept_pressure") / PSI;
        assert!((kept - keeps).abs() < 1e-9, "{holding} {opening}: {kept}");
        assert_eq!(verdict_word(&on, "coolant.boiling"), verdict, "{holding} {opening}");
        let told = on.contradictions().iter().any(|found| found.path == "coolant.header_pressure");
        assert_eq!(told, verdict != "meets", "{holding} {opening}");
    }
}

#[test]
fn without_a_cap_no_pressure_is_kept() {
    let on = |header, hottest| {
        let lines = [
            ("cap.rating", ""),
            ("cap.rating_tolerance", ""),
            ("cap.gauge_error", ""),
            ("cap.holding_pressure", ""),
            ("cap", "none"),
            ("coolant.header_pressure", header),
            ("coolant.hottest", hottest),
            ("coolant.pump_inlet_temperature", hottest),
            ("coolant.suction_loss", "0 Pa"),
        ];
        assessed(&COOLANT, &lines)
    };
    for (header, hottest, verdict) in [
        ("15 psi gauge", "110 °C", "short"),
        ("15 psi gauge", "90 °C", "tight"),
        ("3 psi gauge", "110 °C", "short"),
        ("0 psi gauge", "110 °C", "short"),
        ("0 psi gauge", "90 °C", "meets"),
    ] {
        let on = on(header, hottest);
        assert_eq!(value(&on, "coolant.kept_pressure"), 0.0, "{header}");
        for finding in ["coolant.boiling", "coolant.pump_inlet"] {
            assert_eq!(verdict_word(&on, finding), verdict, "{finding} {header} {hottest}");
        }
    }
}

#[test]
fn gas_alone_holds_no_coolant() {
    let on = |trapped, coolant, later| {
        let lines = [
            ("use.station_pressure", "100 kPa absolute"),
            ("cap.gauge_error", "0.5 psi"),
            ("leak_test.trapped", trapped),
            ("leak_test.gas_volume", "0.4 L"),
            ("leak_test.coolant_volume", coolant),
            ("leak_test.temperature", "18 °C"),
            ("leak_test.later_temperature", "30 °C"),
            ("leak_test.gauge_pressure", "14 psi gauge"),
            ("leak_test.later_gauge_pressure", later),
            ("leak_test.allowed_loss", "1 psi"),
        ];
        verdict_word(&assessed(&[], &lines), "leak_test.tight")
    };
    for (coolant, later, verdict) in [
        ("9.5 L", "17 psi gauge", "tight"),
        ("0.1 L", "17 psi gauge", "tight"),
        ("9.5 L", "12 psi gauge", "short"),
        ("0 L", "17 psi gauge", "meets"),
        ("", "17 psi gauge", "meets"),
    ] {
        assert_eq!(on("gas", coolant, later), verdict, "{coolant} {later}");
    }
    // Over coolant that grows, the same reading is a leak: water takes 2.4 % of 0.4 L for each degree or so.
    let water = |later| {
        let lines = [
            ("use.station_pressure", "100 kPa absolute"),
            ("cap.gauge_error", "0.5 psi"),
            ("coolant.liquid", "water"),
            ("leak_test.trapped", "gas_over_coolant"),
            ("leak_test.gas_volume", "0.4 L"),
            ("leak_test.coolant_volume", "9.5 L"),
            ("leak_test.temperature", "18 °C"),
            ("leak_test.later_temperature", "30 °C"),
            ("leak_test.gauge_pressure", "14 psi gauge"),
            ("leak_test.later_gauge_pressure", later),
            ("leak_test.allowed_loss", "1 psi"),
        ];
        verdict_word(&assessed(&[], &lines), "leak_test.tight")
    };
    assert_eq!([water("17 psi gauge"), water("19 psi gauge")], ["short", "meets"]);
}

#[test]
fn the_model_of_the_test_takes_no_coolant_beside_gas_alone() {
    let test = |trapped, litres: f64| PressureDecay {
        trapped,
        gauge_pressure: Value::parse("14 psi gauge").unwrap(),
        later_gauge_pressure: Value::parse("14 psi gauge").unwrap(),
        temperature: Value::parse("18 °C").unwrap(),
        later_temperature: Value::parse("18 °C").unwrap(),
        station_pressure: Value::parse("100 kPa absolute").unwrap(),
        gauge_error: None,
        allowed_loss: Value::parse("1 psi").unwrap(),
        gas_volume: None,
        coolant_volume: Some(Value::new(Volume::from_si(1e-3 * litres))),
        liquid: None,
        mass_fraction: None,
    };
    for litres in [9.5, 0.1] {
        let refused = test(Trapped::Gas, litres).findings().unwrap_err().to_string();
        assert!(refused.starts_with("coolant_volume: ") && refused.contains("gas_over_coolant"), "{refused}");
    }
    assert!(test(Trapped::Gas, 0.0).findings().is_ok());
    assert!(test(Trapped::GasOverCoolant, 9.5).findings().is_ok());
}

/// What somebody wrote of the pressure under the cap is no more than the tested cap surely keeps.
#[test]
fn a_pressure_under_the_cap_counts_the_error_of_the_test() {
    for (header, error, kept) in [
        ("16 psi gauge", "0.5 psi", 15.5),
        ("16 psi gauge", "2 psi", 14.0),
        ("15.8 psi gauge", "0.5 psi", 15.5),
        ("15 psi gauge", "0.5 psi", 15.0),
        ("3 psi gauge", "2 psi", 3.0),
    ] {
        let on = assessed(&COOLANT, &[("coolant.header_pressure", header), ("cap.gauge_error", error)]);
        assert!((value(&on, "coolant.kept_pressure") / PSI - kept).abs() < 1e-9, "{header} {error}");
        // As without that line, but for a pressure that is less.
        let without = value(&assessed(&COOLANT, &[("cap.gauge_error", error)]), "coolant.boils_at_least");
        let with = value(&on, "coolant.boils_at_least");
        assert!(if kept < 14.0 || header.starts_with("15 ") { with < without } else { with == without });
    }
    let hottest = |header| {
        word(
            &[
                ("coolant.header_pressure", header),
                ("cap.gauge_error", "2 psi"),
                ("coolant.hottest", "117.5 °C"),
            ],
            "coolant.boiling",
        )
    };
    assert_eq!([hottest(""), hottest("16 psi gauge")], ["tight"; 2]);
    assert_eq!(word(&[("coolant.header_pressure", "16 psi gauge")], "coolant.boiling"), "meets");
}

/// Readings that are swapped hide a leak: a system that nobody pumps does not gain pressure.
#[test]
fn a_reading_that_rose_without_a_reason_proves_nothing() {
    let tight = |first: &str, later: &str, to: &str| {
        let test = [
            ("leak_test.trapped", "gas"),
            ("leak_test.gauge_pressure", first),
            ("leak_test.later_gauge_pressure", later),
            ("leak_test.temperature", "20 °C"),
            ("leak_test.later_temperature", to),
            ("leak_test.allowed_loss", "1.5 psi"),
        ];
        word(&test, "leak_test.tight")
    };
    assert_eq!(tight("18 psi gauge", "14 psi gauge", "20 °C"), "short");
    for (first, later, to) in [
        ("14 psi gauge", "18 psi gauge", "20 °C"),
        ("14 psi gauge", "16 psi gauge", "20 °C"),
        ("14 psi gauge", "14 psi gauge", "-10 °C"),
    ] {
        assert_eq!(tight(first, later, to), "not known", "{first} {later} {to}");
    }
    // Within the gauge's error, or as warm as that.
    for (first, later, to) in [
        ("14 psi gauge", "14 psi gauge", "20 °C"),
        ("14 psi gauge", "14.9 psi gauge", "20 °C"),
        ("14 psi gauge", "16.5 psi gauge", "40 °C"),
    ] {
        assert_eq!(tight(first, later, to), "meets", "{first} {later} {to}");
    }
}

/// Before: a coolant under an untested cap had an unmarked margin, where the sheet is at most `tight`.
#[test]
fn a_coolant_says_that_its_cap_was_not_tested() {
    let coolant = |cap: &str, holds: Option<&str>| Coolant {
        liquid: Liquid::EthyleneGlycol,
        volume_share: None,
        concentrate: None,
        mass_fraction: Some(Value::parse("50 %").unwrap()),
        cap: Value::parse(cap).unwrap(),
        cap_holds: holds.map(|holds| Value::parse(holds).unwrap()),
        altitude: Some(Value::parse("0 m").unwrap()),
        station_pressure: None,
        hottest: Value::parse("105 °C").unwrap(),
    };
    let open = |coolant: &Coolant| coolant.margin_open().unwrap().cap_open;
    let untested = coolant("100 kPa gauge", None).margin().unwrap();
    assert_eq!(open(&coolant("100 kPa gauge", None)), "the cap was not tested for what it holds");
    // Tested: no more than it holds counts, and no more than its rating.
    let tested = coolant("100 kPa gauge", Some("80 kPa gauge")).margin().unwrap();
    assert_eq!(open(&coolant("100 kPa gauge", Some("80 kPa gauge"))), "");
    assert!((untested.absolute_pressure.si() - tested.absolute_pressure.si() - 20e3).abs() < 1e-6);
    assert!(tested.margin < untested.margin);
    let more = coolant("100 kPa gauge", Some("120 kPa gauge")).margin().unwrap();
    assert_eq!(more.absolute_pressure, untested.absolute_pressure);
    // Without a cap there is nothing to test.
    assert_eq!(open(&coolant("0 kPa gauge", None)), "");
    let table = coolant("100 kPa gauge", Some("80 kPa gauge"));
    let caps =
        ["50 kPa gauge", "100 kPa gauge"].map(|cap| Value::<GaugePressure>::parse(cap).unwrap().quantity);
    let table = table
        .margin_table(&caps, &[axlewright::units::Length::from_si(0.0)], &[Ratio::from_si(0.5)])
        .unwrap();
    assert_eq!(table.word("cap_open", 1), Some("the cap was not tested for what it holds"));

    // The model of a sheet is marked where the sheet is at most tight.
    for (lines, is_open) in
        [(&[][..], false), (&[("cap.holding_pressure", "")], true), (&[("cap.rating_tolerance", "")], true)]
    {
        let sheet = demo("dunlin_measured", lines);
        let model: Coolant = sheet.model("coolant").unwrap().read::<Coolant>().unwrap();
        assert_eq!(!open(&model).is_empty(), is_open, "{lines:?}");
        let wanted = sheet.assess().answer("coolant.boiling").unwrap().wanted;
        assert_eq!(wanted.is_infinite(), is_open, "{lines:?}");
    }
}
