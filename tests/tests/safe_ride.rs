//! Road holding is judged on the safe side: the lighter wheel of an axle holds the road less.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict::{Meets, Short, Tight};
use axlewright::ride::QuarterCar;
use axlewright::sheet::{Assessment, Sheet};
use axlewright::units::{Length, Mass, RoadRoughness, Velocity};
use axlewright::{Value, Verdict};
use axlewright_tests::assessed::{demo, sheet, value, verdict, verdict_word};

/// An axle of 600 kg, 100 kg of it unsprung.
fn axle(lines: &[(&str, &str)]) -> Sheet {
    let mut sheet = sheet(&[
        ("front.unsprung_mass", "100 kg"),
        ("front.spring.rate", "40 N/mm"),
        ("front.spring.motion_ratio", "0.8"),
        ("front.damper.rate", "3 N·s/mm"),
        ("front.damper.mounting", "coil_over"),
        ("front.tyre.rate", "220 N/mm"),
        ("use.road", "c"),
        ("use.road_speed", "80 km/h"),
    ]);
    for (path, text) in lines {
        sheet.set(path, text).unwrap_or_else(|error| panic!("{path}: {error}"));
    }
    sheet
}

fn holding(on: &Assessment) -> Verdict {
    verdict(on, "front.road_holding")
}

/// The share of one wheel of this sprung mass, by the model on the road of the sheet.
fn share(on: &Assessment, sheet: &Sheet, sprung_mass: f64) -> f64 {
    let mut wheel = sheet.model("front.quarter_car").unwrap().read::<QuarterCar>().unwrap();
    wheel.sprung_mass = Value::new(Mass::from_si(sprung_mass));
    let roughness = RoadRoughness::from_si(value(on, "use.roughness"));
    let speed = Velocity::from_si(value(on, "use.road_speed"));
    let [shortest, longest] = [0.35, 91.0].map(Length::from_si);
    wheel.on_road(roughness, speed, shortest, longest).unwrap().tyre_load_share.si()
}

#[test]
fn the_lighter_wheel_of_an_axle_holds_the_road_less() {
    let scales = |left: &'static str, right: &'static str, most: &'static str| {
        axle(&[
            ("scales.left_front", left),
            ("scales.right_front", right),
            ("wanted.tyre_load_share", most),
            ("wanted.tyre_load_margin", "0"),
        ])
    };
    let found = |left, right, lighter: f64| {
        let sheet = scales(left, right, "0.33");
        let on = sheet.assess();
        let here = value(&on, "front.lighter_tyre_load_share");
        assert!((here / share(&on, &sheet, lighter) - 1.0).abs() < 1e-9, "{left} {right}: {here}");
        assert!((value(&on, "front.tyre_load_share") / share(&on, &sheet, 250.0) - 1.0).abs() < 1e-9);
        here
    };
    let alike = found("300 kg", "300 kg", 250.0);
    let (left, right) = (found("380 kg", "220 kg", 170.0), found("220 kg", "380 kg", 170.0));
    assert!(left == right && left > 1.2 * alike, "{alike} {left}");
    // A limit between the mean and the lighter wheel.
    let most: &'static str = Box::leak(format!("{}", 0.5 * (alike + left)).into_boxed_str());
    let judged = |left, right| holding(&scales(left, right, most).assess());
    assert_eq!([judged("300 kg", "300 kg"), judged("310 kg", "290 kg")], [Meets; 2]);
    assert_eq!([judged("380 kg", "220 kg"), judged("220 kg", "380 kg")], [Short; 2]);
}

#[test]
fn road_holding_needs_the_weight_of_both_sides() {
    let whole = |more: &[(&str, &str)]| {
        let base = [("front.axle_mass", "600 kg"), ("wanted.tyre_load_share", "0.5")];
        holding(&axle(&[&base[..], more].concat()).assess())
    };
    assert_eq!(whole(&[]), Tight);
    assert_eq!(whole(&[("front.heavier_wheel", "310 kg")]), Meets);
    assert_eq!(whole(&[("front.side_travel", "0 mm")]), Meets);
    assert_eq!(whole(&[("front.side_travel", "0 mm"), ("wanted.tyre_load_share", "0.02")]), Short);
    let unweighed = axle(&[("front.axle_mass", "600 kg")]).assess();
    assert!(unweighed.assumed().iter().any(|one| one.ground.contains("heavier_wheel")));
}

/// Before: comfort was judged with half of the axle's mass on each wheel, and met over a lighter wheel that shakes more than is wanted.
#[test]
fn the_body_over_the_lighter_wheel_is_judged() {
    let with = |left: &str, right: &str, wanted: &str| {
        // Without tolerances.
        let lines = [
            ("scales.left_front", left),
            ("scales.right_front", right),
            ("wanted.ride_acceleration", wanted),
            ("front.unsprung_mass", "110 kg"),
            ("front.spring.rate", "550 lbf/in"),
            ("front.damper.rate", "7.5 N·s/mm"),
            ("front.tyre.rate", "240 N/mm"),
        ];
        demo("dunlin_measured", &lines).assess()
    };
    let even = value(&with("605 kg", "605 kg", "1 m/s2"), "front.lighter_ride_acceleration");
    assert_eq!(even, value(&with("605 kg", "605 kg", "1 m/s2"), "front.ride_acceleration"));
    // 60 kg from one wheel to the other.
    let wished = format!("{} m/s2", even * 1.03);
    for (left, right, word) in [
        ("605 kg", "605 kg", "meets"),
        ("665 kg", "545 kg", "short"),
        ("545 kg", "665 kg", "short"),
        ("645 kg", "565 kg", "short"),
    ] {
        assert_eq!(verdict_word(&with(left, right, &wished), "front.comfort"), word, "{left} {right}");
    }
    // Weighed as a whole, the axle may have a lighter wheel.
    let whole = [
        ("scales.left_front", ""),
        ("scales.right_front", ""),
        ("front.axle_mass", "1210 kg"),
        ("wanted.ride_acceleration", "5 m/s2"),
    ];
    let whole = demo("dunlin_measured", &whole).assess();
    assert_eq!(verdict_word(&whole, "front.comfort"), "tight");
}
