//! Springs.

use axlewright::units::{Force, Length, Ratio};
use axlewright_tests::assessed::{assessed, lacks, value, verdict_word};

#[test]
fn a_spring_buckles_only_where_it_is_long_and_free() {
    let margin = |lines: &[(&str, &str)]| assessed("wagtail", lines).answer("front.buckling").unwrap().margin;
    let shortened = value(&assessed("wagtail", &[]), "front.spring.largest_compression");
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
fn an_inclined_spring_turns_as_it_travels() {
    let inclined = |angle: &str, length: &str| {
        let lines = [
            ("front.spring.motion_ratio", ""),
            ("front.spring.mount_ratio", "0.8"),
            ("front.spring.angle", angle),
            ("front.spring.eye_length", length),
        ];
        assessed("dunlin", if length.is_empty() { &lines[..3] } else { &lines })
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
    assert_eq!(verdict_word(&on, "front.frequency"), "not known");
    assert!(lacks(&on, "front.frequency").contains("spring.eye_length"), "{}", lacks(&on, "front.frequency"));
    assert_eq!(value(&inclined("0 deg", ""), "front.spring.ratio_gradient"), 0.0);
}

#[test]
fn a_spring_longer_at_its_block_than_free_is_refused() {
    let on = assessed("dunlin", &[("front.spring.free_length", "150 mm")]);
    for finding in ["front.buckling", "front.spring_strength"] {
        assert_eq!(verdict_word(&on, finding), "not known");
        assert!(
            lacks(&on, finding).contains("spring.free_length = 150 mm (5.906 in)"),
            "{}",
            lacks(&on, finding)
        );
    }
}

#[test]
fn a_body_that_stands_at_full_droop_has_no_more_than_all_of_the_travel() {
    // 270 mm at full droop less 180 mm with the least gaps, over 0.60: the coils end it before the damper's 110 mm / 0.60.
    let on =
        assessed("dunlin", &[("front.spring.rate", "5000 lbf/in"), ("front.spring.droop_length", "270 mm")]);
    assert!(value(&on, "front.droop_remaining") < 0.0);
    assert!(
        (value(&on, "front.bump_remaining") - 0.150).abs() < 1e-12,
        "{}",
        value(&on, "front.bump_remaining")
    );
}
