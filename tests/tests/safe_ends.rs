//! Ends of numbers and of travel: what is nearly nothing, or without limit, clears nothing.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict;
use axlewright::base::error::{LEAST_MAGNITUDE, MOST_MAGNITUDE};
use axlewright::units::{Length, Ratio};
use axlewright_tests::assessed::{demo, sheet, value, verdict};

/// Before: 5e-324 kg on a wheel met its tyre with a margin without limit.
#[test]
fn a_line_has_the_ends_of_every_argument() {
    let refused =
        |path: &str, text: &str| axlewright::sheet::Sheet::new("").set(path, text).unwrap_err().to_string();
    for (path, text) in [
        ("scales.left_front", "5e-324 kg"),
        ("scales.left_front", "1e-31 kg"),
        ("front.tyre.load_capacity", "1e-300 kg"),
        ("engine.peak_torque", "4.9e-324 N·m"),
    ] {
        let said = refused(path, text);
        assert!(said.contains("at least 1e-30 ") && said.contains("every argument"), "{said}");
    }
    assert!(refused("scales.left_front", "0 kg").contains("above 0 kg"));
    // The control: the end itself, and what a shop writes.
    for text in ["1e-30 kg", "600 kg"] {
        axlewright::sheet::Sheet::new("").set("scales.left_front", text).unwrap();
    }
    // No line is without ends: every range is a range of arguments.
    for (_, path, line) in axlewright::sheet::lines().filter(|(_, _, line)| line.written) {
        let beyond = [MOST_MAGNITUDE * 1.001, -MOST_MAGNITUDE * 1.001, f64::INFINITY, f64::NAN];
        assert!(beyond.iter().all(|value| !line.range.allows(*value)), "{path}");
        let tiny = line.range.lower == 0.0 && line.range.lower_open;
        assert!(!tiny || !line.range.allows(LEAST_MAGNITUDE / 1.001), "{path}");
    }
}

#[test]
fn a_margin_without_limit_meets_nothing() {
    let ratio = Ratio::from_si;
    for (margin, word) in [
        (f64::INFINITY, Verdict::NotKnown),
        (f64::NAN, Verdict::NotKnown),
        (f64::NEG_INFINITY, Verdict::Short),
        (1e30, Verdict::Meets),
    ] {
        assert_eq!(Verdict::of_ratio(ratio(margin), ratio(1.25)), word, "{margin}");
        let length = Length::from_si(margin);
        assert_eq!(Verdict::of_difference(length, Length::from_si(0.1)), word, "{margin}");
    }
    assert_eq!(Verdict::of_ratio(ratio(f64::INFINITY), ratio(f64::INFINITY)), Verdict::NotKnown);
    // On a sheet: the least load that may be written leaves a margin that is a number.
    let least: Vec<(String, &str)> = ["left_front", "right_front", "left_rear", "right_rear"]
        .iter()
        .map(|wheel| (format!("scales.{wheel}"), "1e-30 kg"))
        .chain([("front.mass_rating".to_owned(), "1300 kg")])
        .collect();
    let least: Vec<(&str, &str)> = least.iter().map(|(path, text)| (path.as_str(), *text)).collect();
    assert!(sheet(&least).assess().answer("front.load").unwrap().margin.is_finite());
}

/// Before: links, joints and leaves were judged up to the touch of the bump stop, which gives way.
#[test]
fn a_bump_stop_gives_way() {
    let rear = |lines: &[(&str, &str)]| demo("dunlin_measured", lines).assess();
    let touched = rear(&[("rear.bump_stop_compression", "0 mm")]);
    assert_eq!(value(&touched, "rear.bump_compressed"), value(&touched, "rear.bump_remaining"));
    assert_eq!(verdict(&touched, "rear.pinion"), Verdict::Meets);
    let mut last = value(&touched, "rear.pinion_angle_change");
    for (gives, word) in [("1 mm", Verdict::Meets), ("15 mm", Verdict::Short), ("", Verdict::Short)] {
        let on = rear(&[("rear.bump_stop_compression", gives)]);
        assert_eq!(verdict(&on, "rear.pinion"), word, "{gives}");
        let change = value(&on, "rear.pinion_angle_change");
        assert!(change > last, "{gives}: {change}");
        last = change;
    }
    // If nobody says how far it gives, the closed damper ends it; never more than that.
    let open = rear(&[("rear.bump_stop_compression", "")]);
    assert_eq!(value(&open, "rear.bump_compressed"), value(&open, "rear.bump_beyond_stop"));
    let soft = rear(&[("rear.bump_stop_compression", "500 mm")]);
    assert_eq!(value(&soft, "rear.bump_compressed"), value(&open, "rear.bump_compressed"));
    let joints = |gives| value(&rear(&[("rear.bump_stop_compression", gives)]), "rear.joint_remaining");
    assert!(joints("0 mm") >= joints("15 mm"));
    let leaves = |gives: &str| {
        value(&demo("dray", &[("rear.bump_stop_compression", gives)]).assess(), "rear.leaf.bump_stress")
    };
    assert!(leaves("0 mm") < leaves("15 mm") && leaves("15 mm") < leaves(""));
}

/// Before: travel in bump met beside a drawn linkage whose range was not known.
#[test]
fn a_drawn_linkage_of_unknown_range_clears_no_travel() {
    let on =
        |lines: &[(&str, &str)], finding: &str| verdict(&demo("dunlin_measured", lines).assess(), finding);
    assert_eq!(on(&[], "rear.bump"), Verdict::Meets);
    for (lines, finding) in [
        (&[("rear.upper_links.body_bush", "")][..], "rear.bump"),
        (&[("rear.upper_links.axle_bush", "")], "rear.droop"),
        (&[("front.rack_travel", "")], "front.bump"),
        (&[("front.lower_arm.front_pivot.x", ""), ("front.spring.motion_ratio", "0.6")], "front.bump"),
    ] {
        let word = on(lines, finding);
        assert!(matches!(word, Verdict::NotKnown | Verdict::Tight), "{lines:?}: {}", word.word());
    }
}

/// Before: a point of a torque curve without its speed was left out, and its torque with it.
#[test]
fn a_half_written_point_of_a_curve_is_refused() {
    let on = |lines: &[(&str, &str)], finding: &str| verdict(&demo("dunlin", lines).assess(), finding);
    assert_eq!(on(&[("engine.curve[5].torque", "230 N·m")], "clutch.holds"), Verdict::Meets);
    for line in ["engine.curve[5].torque", "engine.curve[5].engine_speed"] {
        let assessed = demo("dunlin", &[(line, "")]).assess();
        assert_eq!(verdict(&assessed, "clutch.holds"), Verdict::NotKnown, "{line}");
        assert!(axlewright_tests::assessed::lacks(&assessed, "clutch.holds").contains("engine.curve[5]"));
    }
    let whole = [("engine.curve[5].torque", ""), ("engine.curve[5].engine_speed", "")];
    assert_eq!(on(&whole, "clutch.holds"), Verdict::Meets);
}
