//! Tolerances: propagation against closed forms (JCGM 100:2008, equation 10 and 5.1.6), chances against exact probabilities.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use approx::assert_relative_eq;
use axlewright::Verdict;
use axlewright::sheet::{Assessment, Axis, MOST_SAMPLES, Sheet};
use axlewright_tests::sheets::DUNLIN;

/// A sheet of these lines.
fn of(lines: &[(&str, &str)]) -> Assessment {
    let mut sheet = Sheet::new("");
    lines.iter().for_each(|(path, text)| sheet.set(path, text).unwrap_or_else(|error| panic!("{error}")));
    sheet.assess()
}

/// A bound is rectangular: its standard deviation is its half-width over √3 (JCGM 100:2008, 4.3.7).
fn rectangular(half: f64) -> f64 {
    half / 3.0_f64.sqrt()
}

#[test]
fn a_sum_and_a_quotient_propagate_by_their_derivatives() {
    // margin = C / (m1 + m2): u = C / m² √(u1² + u2²).
    let on = of(&[
        ("scales.left_front", "600 kg +/- 2 kg"),
        ("scales.right_front", "590 kg +/- 3 kg sd"),
        ("front.mass_rating", "1400 kg"),
    ]);
    let answer = *on.answer("front.load").unwrap();
    let slope = 1400.0 / (1190.0_f64 * 1190.0);
    let expected = slope * (rectangular(2.0).powi(2) + 3.0_f64.powi(2)).sqrt();
    // A central difference of 1/m is off by (t/m)².
    assert_relative_eq!(answer.uncertainty, expected, max_relative = 1e-5);
    let ranked = on.sensitivity(&answer);
    assert_eq!(
        ranked.iter().map(|one| one.path).collect::<Vec<_>>(),
        ["scales.right_front", "scales.left_front"]
    );
    assert_relative_eq!(ranked[0].margin_change, -slope * 3.0, max_relative = 1e-5);
    assert_relative_eq!(ranked[1].margin_change, -slope * 2.0, max_relative = 1e-5);
    // The change is that of the margin, and says so.
    assert_eq!(
        ranked[0].text(&answer, axlewright::base::text::System::Metric),
        "scales.right_front +3 kg: margin of front.load -0.002966, 87 % of its variance"
    );
    let table = on.sensitivity_table(&answer);
    assert_eq!(table.word("finding", 1), Some("front.load"));
    assert_eq!(table.numbers("margin_change").map(<[f64]>::len), Some(2));
    let total = 9.0 + 4.0 / 3.0;
    assert_relative_eq!(ranked[0].share, 9.0 / total, max_relative = 1e-5);
    assert_relative_eq!(ranked[1].share, 4.0 / 3.0 / total, max_relative = 1e-5);
}

#[test]
fn relative_variances_of_a_product_add() {
    // margin = R / (T i e), steady, in first gear: (u/margin)² = Σ (u_x / x)² (JCGM 100:2008, 5.1.6).
    let on = of(&[
        ("engine.peak_torque", "360 N·m +/- 3 N·m sd"),
        ("gearbox.ratios[0]", "4.7 +/- 0.02 sd"),
        ("gearbox.efficiency", "0.97 +/- 0.005 sd"),
        ("propeller_shaft.torque_rating", "2000 N·m +/- 1 % sd"),
        ("propeller_shaft.rating_kind", "continuous"),
        ("converter", "none"),
    ]);
    let answer = *on.answer("propeller_shaft.strength").unwrap();
    let margin = 2000.0 / (360.0 * 4.7 * 0.97);
    assert_relative_eq!(answer.margin, margin, max_relative = 1e-14);
    let shares = [3.0 / 360.0, 0.02 / 4.7, 0.005 / 0.97, 0.01_f64];
    let expected = margin * shares.iter().map(|share| share * share).sum::<f64>().sqrt();
    assert_relative_eq!(answer.uncertainty, expected, max_relative = 1e-4);
    let order: Vec<&str> = on.sensitivity(&answer).iter().map(|one| one.path).collect();
    assert_eq!(
        order,
        ["propeller_shaft.torque_rating", "engine.peak_torque", "gearbox.efficiency", "gearbox.ratios[0]"]
    );
}

#[test]
fn a_square_root_halves_what_stands_under_it() {
    // f = r √(k / m) / 2π: (u/f)² = (u_r / r)² + (u_k / 2k)² + (u_m / 2m)². The margin is the place above the lower edge.
    let on = of(&[
        ("front.spring.rate", "96 N/mm +/- 2 % sd"),
        ("front.spring.motion_ratio", "0.6 +/- 0.003 sd"),
        ("front.sprung_mass", "550 kg +/- 6 kg"),
        ("front.wanted.frequency_low", "1.2 Hz"),
        ("front.wanted.frequency_high", "1.6 Hz"),
    ]);
    let answer = *on.answer("front.frequency").unwrap();
    let frequency = 0.6 * (96_000.0_f64 / 550.0).sqrt() / std::f64::consts::TAU;
    assert_relative_eq!(answer.value, frequency, max_relative = 1e-14);
    let shares = [0.003 / 0.6, 0.02 / 2.0, rectangular(6.0) / (2.0 * 550.0)];
    let expected = frequency * shares.iter().map(|share| share * share).sum::<f64>().sqrt();
    assert_relative_eq!(answer.uncertainty, expected, max_relative = 1e-4);
    let ranked = on.sensitivity(&answer);
    let signs: Vec<(&str, bool)> = ranked.iter().map(|one| (one.path, one.margin_change > 0.0)).collect();
    assert_eq!(
        signs,
        [("front.spring.rate", true), ("front.spring.motion_ratio", true), ("front.sprung_mass", false)]
    );
    assert_relative_eq!(ranked.iter().map(|one| one.share).sum::<f64>(), 1.0, max_relative = 1e-14);
    // Tolerances that do not reach a finding are not named.
    assert!(on.sensitivity(on.answer("rear.frequency").unwrap()).is_empty());
}

/// The four lines of the bench test of a cap: margin = (p_h - e) - (p_r - t), linear with slopes 1, -1, -1, 1.
fn cap(holding: &str, rating: &str) -> Assessment {
    of(&[
        ("cap.holding_pressure", holding),
        ("cap.rating", rating),
        ("cap.gauge_error", "2 kPa"),
        ("cap.rating_tolerance", "8 kPa"),
        ("wanted.cap", "3 kPa"),
    ])
}

#[test]
fn a_linear_margin_is_exact() {
    let on = cap("101 kPa gauge +/- 5 kPa", "103 kPa gauge +/- 2 kPa sd");
    let answer = *on.answer("cap.holds").unwrap();
    assert_relative_eq!(answer.margin, 4000.0, max_relative = 1e-10);
    assert_relative_eq!(answer.uncertainty, (25e6 / 3.0 + 4e6_f64).sqrt(), max_relative = 1e-10);
    let ranked = on.sensitivity(&answer);
    assert_relative_eq!(ranked[0].margin_change, 5000.0, max_relative = 1e-10);
    assert_relative_eq!(ranked[1].margin_change, -2000.0, max_relative = 1e-10);
}

/// Standard normal distribution function, by Simpson's rule over its density (no table, no library).
fn normal_below(x: f64) -> f64 {
    let (low, steps) = (-10.0, 20_000);
    let step = (x - low) / f64::from(steps);
    let density = |x: f64| (-x * x / 2.0).exp() / std::f64::consts::TAU.sqrt();
    let weight = |at: i32| {
        if at == 0 || at == steps {
            1.0
        } else if at % 2 == 1 {
            4.0
        } else {
            2.0
        }
    };
    (0..=steps).map(|at| weight(at) * density(low + step * f64::from(at))).sum::<f64>() * step / 3.0
}

const SAMPLES: usize = 200_000;

/// Shares of meets, tight and short against exact probabilities, within five standard errors.
fn shares_are(on: &Assessment, exact: [f64; 3], mean: f64, deviation: f64) {
    let chance = *on.chances(SAMPLES, 7).unwrap().iter().find(|chance| chance.path == "cap.holds").unwrap();
    for (share, exact) in chance.shares.iter().zip(exact) {
        let error = (exact * (1.0 - exact) / SAMPLES as f64).sqrt();
        assert!((share - exact).abs() <= 5.0 * error, "{share} {exact} ± {error}");
    }
    assert_eq!(chance.shares[3], 0.0);
    assert_relative_eq!(chance.turns, 1.0 - chance.shares[chance.verdict as usize], max_relative = 1e-15);
    assert!((chance.mean - mean).abs() <= 5.0 * deviation / (SAMPLES as f64).sqrt(), "{}", chance.mean);
    assert_relative_eq!(chance.deviation, deviation, max_relative = 0.01);
}

#[test]
fn chances_are_those_of_exact_distributions() {
    // One bound: the margin is uniform on 4 ± 5 kPa. Short below 0: 1/10; tight below 3: 3/10; meets: 6/10.
    shares_are(
        &cap("101 kPa gauge +/- 5 kPa", "103 kPa gauge"),
        [0.6, 0.3, 0.1],
        4000.0,
        rectangular(5000.0),
    );
    // Two bounds alike: triangular on 4 ± 10 kPa. Below 0: (6/10)²/2; below 3: (9/10)²/2.
    let triangular = |below: f64| (below / 10.0) * (below / 10.0) / 2.0;
    let (short, tight) = (triangular(6.0), triangular(9.0) - triangular(6.0));
    let both = cap("101 kPa gauge +/- 5 kPa", "103 kPa gauge +/- 5 kPa");
    shares_are(&both, [1.0 - short - tight, tight, short], 4000.0, 2.0_f64.sqrt() * rectangular(5000.0));
    // One standard deviation: normal.
    let (short, tight) = (normal_below(-4.0 / 2.5), normal_below(-1.0 / 2.5) - normal_below(-4.0 / 2.5));
    let normal = cap("101 kPa gauge +/- 2.5 kPa sd", "103 kPa gauge");
    shares_are(&normal, [1.0 - short - tight, tight, short], 4000.0, 2500.0);
    // Φ(-1.6) = 0.0548, Φ(-0.4) = 0.3446 (printed tables of the normal distribution, from memory).
    assert!((short - 0.0548).abs() < 5e-5 && (short + tight - 0.3446).abs() < 5e-5);
}

#[test]
fn a_seed_gives_the_same_chances_again_and_another_seed_others() {
    let on = Sheet::from_text(DUNLIN).unwrap().assess();
    let all = |seed| format!("{:?}", on.chances(3000, seed).unwrap());
    assert_eq!(all(1), all(1));
    assert_ne!(all(1), all(2));
    // The first samples do not depend on how many follow: what 1024 rows a block hide would show here.
    let shares =
        |samples| on.chances(samples, 5).unwrap().iter().map(|chance| chance.shares).collect::<Vec<_>>();
    let counts = |samples: usize| -> Vec<[i64; 5]> {
        shares(samples).iter().map(|of| of.map(|share| (share * samples as f64).round() as i64)).collect()
    };
    for (fewer, more) in [(1023, 1024), (1024, 1025), (2000, 2001)] {
        for (few, many) in counts(fewer).iter().zip(counts(more)) {
            let step: Vec<i64> = few.iter().zip(many).map(|(few, many)| many - few).collect();
            assert!(step.iter().sum::<i64>() == 1 && step.iter().all(|one| *one >= 0), "{step:?}");
        }
    }
    assert!(on.chances(0, 1).is_err());
    for many in [MOST_SAMPLES + 1, usize::MAX] {
        assert_eq!(
            on.chances(many, 1).unwrap_err().to_string(),
            format!(
                "samples has {many} entries; one call draws at most 10,000,000 samples: for more, take the mean of calls with other seeds"
            )
        );
    }
    assert_eq!(MOST_SAMPLES, 10_000_000);
    // A verdict that rests on no tolerance never turns.
    let still = on.chances(100, 3).unwrap();
    let pistons = still.iter().find(|chance| chance.path == "engine.pistons").unwrap();
    assert_eq!((pistons.turns, pistons.deviation), (0.0, 0.0));
}

#[test]
fn more_than_sixty_four_tolerances_add_in_quadrature() {
    let mut sheet = Sheet::from_text(DUNLIN).unwrap();
    for path in sheet.paths().collect::<Vec<_>>() {
        let text = sheet.get(path).unwrap().unwrap();
        sheet.set(path, text.split(" +/- ").next().unwrap()).unwrap();
    }
    // Twenty-four points of a curve, not evenly spaced.
    for at in 0..24 {
        let speed = 900 + 140 * at + 3 * at * at;
        sheet.set(&format!("engine.curve[{at}].engine_speed"), &format!("{speed} rpm")).unwrap();
        sheet
            .set(&format!("engine.curve[{at}].torque"), &format!("{} N·m", 360 - (at - 11) * (at - 11)))
            .unwrap();
    }
    let plain = sheet.clone();
    let mut toleranced = Vec::new();
    for (number, path) in plain.paths().enumerate() {
        let text = plain.get(path).unwrap().unwrap();
        let number = number as f64;
        let (value, unit) = text.trim().split_once(' ').unwrap_or((&text, ""));
        let Ok(value) = value.parse::<f64>() else { continue };
        if unit.starts_with('%') || unit.contains("°") {
            continue;
        }
        let sd = if number % 3.0 == 0.0 { " sd" } else { "" };
        let unit = unit.trim_end_matches(" gauge");
        let with =
            format!("{text} +/- {} {unit}{sd}", value.abs() * 1e-4 * (1.0 + number % 5.0)).replace("  ", " ");
        let with = with.trim_end().to_owned();
        let mut alone = plain.clone();
        alone.set(path, &with).unwrap_or_else(|error| panic!("{error}"));
        sheet.set(path, &with).unwrap();
        toleranced.push((path, alone));
    }
    assert!(toleranced.len() > 100, "{}", toleranced.len());
    let on = sheet.assess();
    let mut squares = vec![0.0; on.answers().len()];
    let mut reaching = vec![vec![]; on.answers().len()];
    for (path, alone) in &toleranced {
        for (at, answer) in alone.assess().answers().iter().enumerate() {
            squares[at] += answer.uncertainty * answer.uncertainty;
            if answer.uncertainty > 1e-12 * answer.margin.abs() {
                reaching[at].push(*path);
            }
        }
    }
    for (at, answer) in on.answers().iter().enumerate().filter(|(_, answer)| !answer.margin.is_nan()) {
        assert_relative_eq!(answer.uncertainty, squares[at].sqrt(), max_relative = 1e-12);
        let mut named: Vec<&str> = on.sensitivity(answer).iter().map(|one| one.path).collect();
        named.sort_unstable();
        reaching[at].sort_unstable();
        assert_eq!(named, reaching[at], "{}", answer.path);
    }
    assert!(reaching.iter().any(|paths| paths.len() > 6));
}

/// 30 % ± 90 % of glycol is no mix at its upper end: the margin is known and the one at worst is not, which is said.
#[test]
fn a_tolerance_beyond_what_can_be_computed_is_not_passed_over() {
    let on = of(&[
        ("coolant.liquid", "ethylene_glycol"),
        ("coolant.mass_fraction", "0.3 +/- 0.9"),
        ("use.coldest_air", "-5 °C +/- 1 K"),
    ]);
    let answer = *on.answer("coolant.freezing").unwrap();
    assert!(!answer.margin.is_nan() && answer.worst.is_nan() && answer.verdict == Verdict::Tight);
    // One side is left to tell how far the mix moves the margin.
    let ranked = on.sensitivity(&answer);
    assert_eq!(
        ranked.iter().map(|one| (one.path, one.margin_change.is_nan())).collect::<Vec<_>>(),
        [("coolant.mass_fraction", false), ("use.coldest_air", false)]
    );
    let said = answer.margin_text(axlewright::base::text::System::Metric);
    assert!(said.contains("at worst not known"), "{said}");
}

/// The verdict stands on the margin with every bound counted against it: `verdict` of the finding, its margin and that one.
fn judged(lines: &[(&str, &str)], path: &str) -> (Verdict, f64, f64) {
    let on = of(lines);
    let answer = on.answer(path).unwrap();
    (answer.verdict, answer.margin, answer.worst)
}

/// Frequencies of 0.6 √(96 kN/m / 550 kg) / 2π = 1.2616 Hz in a band from 1.2 Hz: 0.0616 Hz above its edge.
#[test]
fn a_tolerance_on_the_ratio_turns_the_verdict() {
    let with = |ratio: &str| {
        let lines = [
            ("front.spring.rate", "96 N/mm"),
            ("front.spring.motion_ratio", ratio),
            ("front.sprung_mass", "550 kg"),
            ("front.wanted.frequency_low", "1.2 Hz"),
            ("front.wanted.frequency_high", "1.6 Hz"),
        ];
        judged(&lines, "front.frequency")
    };
    assert_eq!(with("0.60").0, Verdict::Meets);
    // The ratio may be 0.029 less before the edge is reached.
    assert_eq!(with("0.60 +/- 0.028").0, Verdict::Meets);
    let (verdict, margin, worst) = with("0.60 +/- 0.03");
    assert_eq!(verdict, Verdict::Short);
    assert_relative_eq!(worst, (margin + 1.2) * 0.57 / 0.60 - 1.2, max_relative = 1e-9);
    // A standard deviation counts twice.
    assert_eq!(with("0.60 +/- 0.014 sd").0, Verdict::Meets);
    assert_eq!(with("0.60 +/- 0.015 sd").0, Verdict::Short);
    // As much as the value itself, clipped to the range of the line: no better than a little less.
    let [nearly, whole] = ["0.60 +/- 0.594", "0.60 +/- 0.6"].map(with);
    assert!(whole.0 == Verdict::Short && whole.2 <= nearly.2, "{nearly:?} {whole:?}");
    let refused = Sheet::new("").set("front.spring.motion_ratio", "0.60 +/- 3").unwrap_err().to_string();
    assert!(refused.contains("wider than the whole range"), "{refused}");
}

/// Capacity over torque, both at their worse end: 1.3 of 468 over 360 is 1.235 with 5 % on the capacity alone, and 1.173 with 5 % on both.
#[test]
fn two_tolerances_count_together() {
    let with = |torque: &str, capacity: &str| {
        judged(
            &[("engine.peak_torque", torque), ("clutch.capacity", capacity), ("wanted.clutch", "1.2")],
            "clutch.holds",
        )
    };
    assert_eq!(with("360 N·m", "468 N·m").0, Verdict::Meets);
    assert_eq!(with("360 N·m", "468 N·m +/- 5 %").0, Verdict::Meets);
    let (verdict, margin, worst) = with("360 N·m +/- 5 %", "468 N·m +/- 5 %");
    // One by one: 0.065 for the capacity and 1.3 - 1.3 / 1.05 for the torque; together 1.3 * 0.95 / 1.05 lies above what they leave.
    assert_relative_eq!(worst, margin - 0.065 - (1.3 - 1.3 / 1.05), max_relative = 1e-12);
    assert_eq!(verdict, Verdict::Tight);
    assert_eq!(with("360 N·m +/- 16 %", "468 N·m +/- 16 %").0, Verdict::Short);
}

/// A ratio and a mass that raise a frequency grow faster together than one by one: (0.62 / 0.60) √(550 / 510).
#[test]
fn a_corner_that_is_worse_than_the_sum_counts() {
    let square = [
        ("front.spring.rate", "96 N/mm"),
        ("front.spring.motion_ratio", "0.60 +/- 0.02"),
        ("front.sprung_mass", "550 kg +/- 40 kg"),
        ("front.wanted.frequency_low", "1.0 Hz"),
        ("front.wanted.frequency_high", "1.4 Hz"),
    ];
    let (_, margin, worst) = judged(&square, "front.frequency");
    let frequency = 1.4 - margin;
    let (ratio, mass) = (frequency * 0.62 / 0.60, frequency * (550.0_f64 / 510.0).sqrt());
    let corner = 1.4 - frequency * 0.62 / 0.60 * (550.0_f64 / 510.0).sqrt();
    assert!(corner < margin - (ratio - frequency) - (mass - frequency));
    assert_relative_eq!(worst, corner, max_relative = 1e-12);
}

/// 30 % of glycol, or up to nine tenths more or less: no mix is computed there, so that nothing clears the finding.
#[test]
fn what_is_refused_within_a_tolerance_is_no_better_than_tight() {
    let with = |fraction: &str| {
        let lines = [
            ("coolant.liquid", "ethylene_glycol"),
            ("coolant.mass_fraction", fraction),
            ("use.coldest_air", "5 °C"),
        ];
        judged(&lines, "coolant.freezing")
    };
    assert_eq!(with("0.3").0, Verdict::Meets);
    assert_eq!(with("0.3 +/- 0.05").0, Verdict::Meets);
    let (verdict, margin, worst) = with("0.3 +/- 0.5");
    assert!(verdict == Verdict::Tight && !margin.is_nan() && worst.is_nan());
}

/// The wanted margin counts at its upper end.
#[test]
fn a_tolerance_on_the_wanted_margin_counts() {
    let with = |wanted: &str| {
        let lines = [
            ("cap.holding_pressure", "101 kPa gauge"),
            ("cap.rating", "103 kPa gauge"),
            ("cap.gauge_error", "2 kPa"),
            ("cap.rating_tolerance", "8 kPa"),
            ("wanted.cap", wanted),
        ];
        judged(&lines, "cap.holds").0
    };
    assert_eq!(
        ["3.9 kPa", "3.9 kPa +/- 0.05 kPa", "3.9 kPa +/- 0.2 kPa"].map(with),
        [Verdict::Meets, Verdict::Meets, Verdict::Tight]
    );
}

/// A row of a what-if is judged as the sheet with its values, its tolerances and those of the other lines.
#[test]
fn rows_count_tolerances_as_a_sheet_does() {
    let dunlin = Sheet::from_text(DUNLIN).unwrap();
    let rates = ["450 lbf/in", "550 lbf/in +/- 3 %", "700 lbf/in +/- 10 %", "550 lbf/in +/- 2 % sd"];
    let ratios = ["0.55 +/- 0.01", "0.60", "0.62 +/- 0.025"];
    let axes = || {
        vec![
            Axis::texts("front.spring.rate", &rates).unwrap(),
            Axis::texts("front.spring.motion_ratio", &ratios).unwrap(),
        ]
    };
    let what_if = dunlin.what_if(axes(), false, &[]).unwrap();
    let table = what_if.whole().unwrap();
    let (mut turned, mut judged) = (0, 0);
    for (row, (rate, ratio)) in rates.iter().flat_map(|rate| ratios.map(|ratio| (rate, ratio))).enumerate() {
        let mut with = dunlin.clone();
        what_if.dropped().iter().for_each(|path| with.remove(path).unwrap());
        with.set("front.spring.rate", rate).unwrap();
        with.set("front.spring.motion_ratio", ratio).unwrap();
        for answer in with.assess().answers() {
            let output = format!("{}.verdict", answer.path);
            assert_eq!(table.word(&output, row), Some(answer.verdict.word()), "row {row}, {output}");
            judged += 1;
            turned += usize::from(answer.worst < answer.margin);
        }
    }
    assert!(turned > 100 && judged > turned, "{turned} of {judged}");
}

/// A bump stop 6 mm away behind a tyre that touches after 1 mm: the tolerances of stop, free length and droop length add up on the stop.
fn hidden_stop(each: &str) -> Sheet {
    let mut sheet = Sheet::new("");
    let with = |value: &str| if each.is_empty() { value.to_owned() } else { format!("{value} +/- {each}") };
    // Sag: 550 kg on 100 N/mm are 53.936575 mm; 330 mm less 320 mm of free length are 10 mm more.
    let [stop, free, droop] = ["69.936575 mm", "320 mm", "330 mm"].map(with);
    for (path, text) in [
        ("scales.left_front", "600 kg"),
        ("scales.right_front", "600 kg"),
        ("front.unsprung_mass", "100 kg"),
        ("front.joint_bump_clearance", "none"),
        ("front.hose_bump_clearance", "none"),
        ("front.tyre_clearance", "1 mm"),
        ("front.bump_stop_travel", &stop),
        ("front.spring.rate", "100 N/mm"),
        ("front.spring.free_length", &free),
        ("front.spring.solid_length", "120 mm"),
        ("front.spring.minimum_gap", "10 mm"),
        ("front.spring.motion_ratio", "1"),
        ("front.spring.droop_length", &droop),
        ("front.damper.stroke", "200 mm"),
        ("front.damper.mounting", "apart"),
        ("front.damper.motion_ratio", "1"),
        ("front.damper.gas_force", "none"),
        ("wanted.bump", "1 mm"),
    ] {
        sheet.set(path, text).unwrap();
    }
    sheet
}

/// No line alone takes anything off the 1 mm of the tyre; all three together take 12 mm off the 6 mm of the stop.
#[test]
fn what_only_several_tolerances_together_lose_counts() {
    for (each, least, verdict) in [
        ("", 1.0, Verdict::Meets),
        ("1 mm", 1.0, Verdict::Meets),
        ("1.8 mm", 0.6, Verdict::Tight),
        ("2.5 mm", -1.5, Verdict::Short),
        ("4 mm", -6.0, Verdict::Short),
    ] {
        let sheet = hidden_stop(each);
        let answer = *sheet.assess().answer("front.bump").unwrap();
        assert_eq!(answer.verdict, verdict, "{each}");
        assert_relative_eq!(answer.worst, least * 1e-3, epsilon = 1e-12);
        // A row of a what-if is judged alike.
        let axis = Axis::texts("front.unsprung_mass", &["100 kg", "60 kg"]).unwrap();
        let table = sheet.what_if(vec![axis], false, &["front.bump.verdict"]).unwrap().whole().unwrap();
        assert_eq!(table.word("front.bump.verdict", 0), Some(verdict.word()), "{each}");
    }
}

/// Grip holds the torque of a strong engine down: neither gives way alone, and both together are more than the shaft takes.
#[test]
fn a_weaker_engine_and_less_grip_are_no_excuse_for_each_other() {
    let lines = |engine: &'static str, grip: &'static str, rating: &'static str| {
        vec![
            ("engine.peak_torque", engine),
            ("clutch.capacity", "450 N·m"),
            ("clutch.high_capacity", "500 N·m"),
            ("clutch.shock_factor", "1"),
            ("gearbox.ratios[0]", "4"),
            ("gearbox.reverse_ratio", "3.8"),
            ("gearbox.efficiency", "97 %"),
            ("transfer_case.low_ratio", "none"),
            ("propeller_shaft.torque_rating", rating),
            ("propeller_shaft.rating_kind", "continuous"),
            ("final_drive.ratio", "4"),
            ("final_drive.efficiency", "96 %"),
            ("driveline.driven", "rear"),
            ("grip.loaded_radius", "0.35 m"),
            ("grip.strength_coefficient", grip),
            ("grip.driven_load", "12 kN"),
            ("grip.inertia_factor", "1"),
            ("wanted.strength", "1"),
        ]
    };
    let judged =
        |engine, grip, rating| *of(&lines(engine, grip, rating)).answer("propeller_shaft.strength").unwrap();
    // 300 N·m in first gear are 1164 N·m, 390 N·m 1513; 1.0 of grip holds 1094 N·m, 1.5 of it 1641.
    for (rating, verdict) in
        [("1400 N·m", Verdict::Short), ("1500 N·m", Verdict::Short), ("1520 N·m", Verdict::Meets)]
    {
        let answer = judged("300 N·m +/- 30 %", "1.0 +/- 0.5", rating);
        assert_eq!(answer.verdict, verdict, "{rating}: {answer:?}");
        let corner = judged("390 N·m", "1.5", rating);
        assert_relative_eq!(answer.worst, corner.margin, max_relative = 1e-12);
    }
}

/// Half a shackle's travel and a longer damper, each within reach: both together are not.
#[test]
fn what_is_refused_only_where_several_tolerances_meet_is_tight() {
    let dray = include_str!("../../examples/sheets/dray.toml");
    let mut sheet = Sheet::from_text(dray).unwrap();
    for path in sheet.paths().map(str::to_owned).collect::<Vec<_>>() {
        let text = sheet.get(&path).unwrap().unwrap_or_default();
        if let Some((value, _)) = text.split_once(" +/- ") {
            sheet.set(&path, value).unwrap();
        }
    }
    let written = |path: &str| sheet.get(path).unwrap().unwrap();
    let (pivot, open) = (written("rear.leaf.shackle_pivot.z"), written("rear.damper.open_length"));
    let judged = |pivot: &str, open: &str| {
        let mut with = sheet.clone();
        with.set("rear.leaf.shackle_pivot.z", pivot).unwrap();
        with.set("rear.damper.open_length", open).unwrap();
        let assessment = with.assess();
        ["rear.bump_steer_band", "rear.sideways"].map(|path| assessment.answer(path).unwrap().verdict)
    };
    assert_eq!(judged(&pivot, &open), [Verdict::Meets; 2]);
    assert_eq!(judged(&format!("{pivot} +/- 1 %"), &format!("{open} +/- 1 %")), [Verdict::Meets; 2]);
    assert_eq!(judged(&format!("{pivot} +/- 8 %"), &format!("{open} +/- 2 %")), [Verdict::Tight; 2]);
}

/// A wanted margin counts at its upper end, also where the finding takes it from a line before.
#[test]
fn the_tolerance_of_a_wish_counts_through_the_lines_between() {
    let measured = include_str!("../../examples/sheets/dunlin_measured.toml");
    for (path, exact, wide, finding) in [
        ("wanted.bump", "50 mm", "50 mm +/- 30 mm", "front.bump"),
        ("wanted.load", "1.05", "1.05 +/- 0.6", "front.tyre_load"),
        ("wanted.bump_steer_margin", "0.01 deg", "0.01 deg +/- 1 deg", "rear.bump_steer_band"),
    ] {
        let judged = |text: &str| {
            let mut sheet = Sheet::from_text(measured).unwrap();
            sheet.set(path, text).unwrap();
            let axis = Axis::texts("rear.unsprung_mass", &["180 kg +/- 10 kg"]).unwrap();
            let output = format!("{finding}.verdict");
            let table = sheet.what_if(vec![axis], false, &[&output]).unwrap().whole().unwrap();
            let verdict = sheet.assess().answer(finding).unwrap().verdict;
            assert_eq!(table.word(&output, 0), Some(verdict.word()), "{finding}");
            verdict
        };
        assert_eq!([exact, wide].map(judged), [Verdict::Meets, Verdict::Tight], "{finding}");
    }
}

/// Both wheels weigh 600 kg ± 20 kg: the heavier one weighs 620 kg at the most, and not 640 kg.
#[test]
fn the_greatest_of_several_lines_takes_the_one_that_is_moved() {
    let with = |left: &str, right: &str, carries: &str| {
        let lines = [
            ("front.tyre.size", "225/70R15 108V"),
            ("front.tyre.load_capacity", carries),
            ("front.tyre.pressure", "2.5 bar gauge"),
            ("front.tyre.rated_pressure", "2.5 bar gauge"),
            ("front.tyre.service", "as_made"),
            ("use.peak_speed", "180 km/h"),
            ("scales.left_front", left),
            ("scales.right_front", right),
            ("wanted.load", "1.05"),
        ];
        let judged = judged(&lines, "front.tyre_load");
        let mut sheet = Sheet::new("");
        lines.iter().for_each(|(path, text)| sheet.set(path, text).unwrap());
        // A row of a what-if is judged alike.
        let axis = Axis::texts("front.unsprung_mass", &["100 kg", "60 kg"]).unwrap();
        let table = sheet.what_if(vec![axis], false, &["front.tyre_load.verdict"]).unwrap().whole().unwrap();
        assert_eq!(
            table.word("front.tyre_load.verdict", 0),
            Some(judged.0.word()),
            "{left} {right} {carries}"
        );
        judged
    };
    for (left, right, carries, heaviest, verdict) in [
        ("600 kg +/- 20 kg", "600 kg +/- 20 kg", "652 kg", 620.0, Verdict::Meets),
        ("600 kg +/- 20 kg", "600 kg +/- 20 kg", "650 kg", 620.0, Verdict::Tight),
        ("600 kg +/- 20 kg", "600 kg +/- 20 kg", "619 kg", 620.0, Verdict::Short),
        ("600 kg +/- 20 kg", "590 kg +/- 40 kg", "652 kg", 630.0, Verdict::Tight),
        ("600 kg +/- 10 kg sd", "600 kg +/- 20 kg", "652 kg", 620.0, Verdict::Meets),
        ("600 kg +/- 15 kg sd", "500 kg +/- 20 kg", "652 kg", 630.0, Verdict::Tight),
    ] {
        let (found, _, worst) = with(left, right, carries);
        let carried: f64 = carries.trim_end_matches(" kg").parse().unwrap();
        assert_relative_eq!(worst, carried / heaviest, max_relative = 1e-12);
        assert_eq!(found, verdict, "{left} {right} {carries}");
    }
    // What else moves the margin is added to that.
    let (verdict, margin, worst) = with("600 kg +/- 20 kg", "600 kg +/- 20 kg", "652 kg +/- 5 kg");
    assert_relative_eq!(worst, margin - (652.0 / 600.0 - 652.0 / 620.0) - 5.0 / 600.0, max_relative = 1e-12);
    assert_eq!(verdict, Verdict::Tight);
}
