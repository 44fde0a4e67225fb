//! Roll, ride and their findings.

use axlewright::Model;
use axlewright::ride::{QuarterCar, RoadClass, RoadSurface};
use axlewright::suspension::RollBalance;
use axlewright::units::{Damping, Length, LinearStiffness, Mass, Velocity};
use axlewright::{Value, Verdict};
use axlewright_tests::assessed::{demo, lacks, value, verdict};

#[test]
fn roll_is_that_of_the_model() {
    let assessment = demo("dunlin_measured", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    // Links that bind are a bar as stiff as K = k r^2 t^2 / 2.
    let binding = |axle: &str| {
        let stiffness = assessment.value(&format!("{axle}bind_roll_stiffness")).unwrap().unwrap_or(0.0);
        let lever = of(&format!("{axle}track")) * of(&format!("{axle}anti_roll_bar.motion_ratio"));
        2.0 * stiffness / (lever * lever)
    };
    let axle = |axle: &str, live: bool| {
        let of = |path: &str| format!("{axle}.{path}");
        let base = if live {
            format!("spring_base = \"{} m\"\n", value(&assessment, &of("stiffness_base")))
        } else {
            String::new()
        };
        format!(
            "[{axle}]\ntrack = \"{} m\"\nroll_centre_height = \"{} m\"\nunsprung_mass = \"{} kg\"\nunsprung_height = \"{} m\"\n\
             spring_rate = \"{} N/m\"\n{base}tyre_rate = \"{} N/m\"\nbar_rate = \"{} N/m\"\nbar_motion_ratio = {}\n",
            value(&assessment, &of("track")),
            value(&assessment, &of("roll_centre_height")),
            value(&assessment, &of("unsprung_mass")),
            value(&assessment, &of("tyre.loaded_radius")),
            value(&assessment, &of("wheel_rate")),
            value(&assessment, &of("tyre.rate")),
            value(&assessment, &of("anti_roll_bar.rate")) + binding(&of("")),
            value(&assessment, &of("anti_roll_bar.motion_ratio")),
        )
    };
    let document = format!(
        "sprung_mass = \"{} kg\"\nsprung_height = \"{} m\"\nbehind_front_axle = \"{} m\"\nwheelbase = \"{} m\"\n{}{}",
        of("vehicle.sprung_mass"),
        of("vehicle.sprung_height"),
        of("vehicle.sprung_behind_front_axle"),
        of("vehicle.wheelbase"),
        axle("front", false),
        axle("rear", true),
    );
    let on = RollBalance::from_text(&document).unwrap().balance().unwrap();
    for (path, wanted) in [
        ("vehicle.roll_gradient", on.roll_gradient.si()),
        ("vehicle.front_transfer_share", on.front_share.si()),
        ("front.roll_stiffness", on.front_suspension_stiffness.si()),
        ("rear.roll_stiffness", on.rear_suspension_stiffness.si()),
    ] {
        assert!((of(path) / wanted - 1.0).abs() < 1e-12, "{path}: {} {wanted}", of(path));
    }
    assert!((of("vehicle.front_share_over_weight") - on.share_over_weight.si()).abs() < 1e-12);
    // A bar whose ratio nobody knows is asked for; where there is none, no ratio is.
    let bare = demo("wagtail", &[("front.anti_roll_bar.motion_ratio", "")]).assess();
    assert!(lacks(&bare, "vehicle.balance").contains("a bar needs anti_roll_bar.motion_ratio"));
    assert!(value(&demo("wagtail", &[]).assess(), "vehicle.roll_gradient") > 0.0);
}

#[test]
fn ride_is_that_of_the_model() {
    let assessment = demo("wagtail", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    let corner = QuarterCar {
        sprung_mass: Value::new(Mass::from_si(of("front.sprung_mass"))),
        unsprung_mass: Value::new(Mass::from_si(of("front.unsprung_mass") / 2.0)),
        wheel_rate: Value::new(LinearStiffness::from_si(of("front.wheel_rate"))),
        wheel_damping: Value::new(Damping::from_si(of("front.damper.at_wheel"))),
        tyre_rate: Value::new(LinearStiffness::from_si(of("front.tyre.rate"))),
        tyre_damping: None,
    };
    let road = RoadSurface { road_class: RoadClass::B }.roughness().unwrap();
    let speed = Velocity::from_si(of("use.cruise_speed"));
    let on = corner.on_road(road, speed, Length::from_si(0.35), Length::from_si(91.0)).unwrap();
    assert_eq!(of("front.ride_acceleration").to_bits(), on.weighted_acceleration.si().to_bits());
    assert_eq!(of("front.tyre_load_share").to_bits(), on.tyre_load_share.si().to_bits());
}

/// Margins to each limit against the wanted ones, written or assumed, by hand.
#[test]
fn findings_hold_these_lines_against_their_limits() {
    let assessment = demo("dunlin_measured", &[("wanted.ride_acceleration", "0.63 m/s^2")]).assess();
    let of = |path: &str| value(&assessment, path);
    let (degree, ends) =
        (std::f64::consts::PI / 180.0, |value: f64, low: f64, high: f64| (value - low).min(high - value));
    for (finding, margin) in [
        ("front.bump_steer_band", ends(of("front.toe_change"), -0.1 * degree, 0.1 * degree)),
        ("front.joints", of("front.joint_remaining")),
        ("front.linkage_range", of("front.linkage_remaining")),
        ("vehicle.roll", 8.0 * degree / 9.80665 - of("vehicle.roll_gradient")),
        ("front.comfort", 0.63 - of("front.lighter_ride_acceleration")),
        ("front.road_holding", 1.0 / 3.0 - of("front.lighter_tyre_load_share")),
        ("vehicle.flat_ride", ends(of("vehicle.flat_ride_cycles"), 0.75, 1.75)),
        ("front.damper_range", ends(of("front.damper.rate_wanted"), 4000.0, 11000.0)),
    ] {
        let answer = assessment.answer(finding).unwrap();
        let near = (answer.margin - margin).abs() <= 1e-12 * margin.abs().max(1.0);
        assert!(near, "{finding}: {} {margin}", answer.margin);
    }
    // Cycles by hand: f_f f_r (l / v) / (f_r - f_f) on the ride frequencies.
    let (front, rear) = (of("front.ride_frequency"), of("rear.ride_frequency"));
    let cycles = front * rear * (2.65 / of("use.cruise_speed")) / (rear - front);
    assert!((of("vehicle.flat_ride_cycles") / cycles - 1.0).abs() < 1e-12);
}

#[test]
fn a_damper_that_reaches_the_wanted_damping_is_said_to() {
    // c_d = 2 zeta sqrt(k m) / r^2: one damper for zeta = 0.325, the middle of the assumed band, by hand.
    let assessment = demo("dunlin_measured", &[]).assess();
    let of = |path: &str| value(&assessment, path);
    let wanted = 2.0 * 0.325 * (of("front.wheel_rate") * of("front.sprung_mass")).sqrt()
        / of("front.spring.motion_ratio").powi(2);
    assert!((of("front.damper.rate_wanted") / wanted - 1.0).abs() < 1e-12);
    assert_eq!(verdict(&assessment, "front.damper_range"), Verdict::Meets);
    let soft = demo("dunlin_measured", &[("front.damper.rate_firmest", "5 N·s/mm")]).assess();
    assert_eq!(verdict(&soft, "front.damper_range"), Verdict::Short);
}
