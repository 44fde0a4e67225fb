//! Verdicts on suspension stand only on what holds over the whole travel, at both locks and on both sides.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict::{Meets, NotKnown, Short, Tight};
use axlewright::sheet::Assessment;
use axlewright::suspension::{DoubleWishbone, LeafAxle, LiveAxle};
use axlewright::units::{Angle, Length};
use axlewright::{Model, Stated};
use axlewright_tests::assessed::{assessed, lacks, sheet, text, value, verdict};

const DEGREE: f64 = std::f64::consts::PI / 180.0;

fn measured(lines: &[(&str, &str)]) -> Assessment {
    assessed("dunlin_measured", lines)
}

/// The front of the Dunlin alone.
fn wishbone() -> DoubleWishbone {
    DoubleWishbone::from_text(&text("dunlin_front_wishbone")).unwrap()
}

fn toe(model: &DoubleWishbone, travel: f64) -> f64 {
    model.at(Length::from_si(travel), Length::from_si(0.0)).unwrap().toe.si()
}

/// A rack of the right height and the wrong width has no slope at ride height, and toes out to both ends.
#[test]
fn bump_steer_is_judged_over_the_travel_and_not_by_its_slope() {
    let (wanted, narrow) = (("wanted.bump", "80 mm"), ("front.tie_rod.inner.y", "200 mm"));
    let travel = [wanted, ("wanted.droop", "80 mm"), narrow];
    // The height of the inner end at which the slope is nothing, by bisection on the model.
    let mut model = wishbone();
    model.tie_rod.inner.y.quantity = Length::from_si(0.2);
    let (mut low, mut high) = (0.2, 0.4);
    let slope = |model: &mut DoubleWishbone, z: f64| {
        model.tie_rod.inner.z.quantity = Length::from_si(z);
        model.at(Length::from_si(0.0), Length::from_si(0.0)).unwrap().bump_steer.si()
    };
    let rising = slope(&mut model, high) > slope(&mut model, low);
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if (slope(&mut model, middle) > 0.0) == rising { high = middle } else { low = middle }
    }
    let height = format!("{} m", 0.5 * (low + high));
    slope(&mut model, 0.5 * (low + high));
    let on = measured(&[&travel[..], &[("front.tie_rod.inner.z", &height)]].concat());
    assert!(value(&on, "front.bump_steer").abs() < 1e-9, "{}", value(&on, "front.bump_steer"));
    let rest = toe(&model, 0.0);
    let ends = [0.08, -0.08].map(|travel| toe(&model, travel) - rest);
    assert!(ends.iter().all(|end| end.abs() > 0.2 * DEGREE), "{ends:?}");
    let most = if ends[0].abs() > ends[1].abs() { ends[0] } else { ends[1] };
    assert!((value(&on, "front.toe_change") - most).abs() < 1e-9);
    assert_eq!(verdict(&on, "front.bump_steer_band"), Short);
    // The bend is told apart: it is what the tie rod's length makes.
    let bend = 0.5 * (toe(&model, 0.025) + toe(&model, -0.025)) - rest;
    assert!((value(&on, "front.bump_steer_bend") - bend).abs() < 1e-12 && bend.abs() > 0.02 * DEGREE);
    // A rack that is wrong in height only is condemned too, and so is the same rack where no travel is wanted: stop to stop.
    let wrong = measured(&[wanted, ("wanted.droop", "80 mm"), ("front.tie_rod.inner.z", "330 mm")]);
    assert_eq!(verdict(&wrong, "front.bump_steer_band"), Short);
    let stops = measured(&[narrow, ("front.tie_rod.inner.z", &height)]);
    assert_eq!(verdict(&stops, "front.bump_steer_band"), Short);
    assert_eq!(value(&stops, "front.steer_bump"), value(&stops, "front.bump_compressed"));
    // Less travel wanted, and a band as wide as that: it meets.
    let ends = [0.01, -0.01].map(|travel| (toe(&model, travel) - rest).abs() / DEGREE);
    assert!(ends[0].max(ends[1]) < 0.1, "{ends:?}");
    let little =
        [("wanted.bump", "10 mm"), ("wanted.droop", "10 mm"), narrow, ("front.tie_rod.inner.z", &height)];
    assert_eq!(verdict(&measured(&little), "front.bump_steer_band"), Meets);
}

/// A slope that was read at ride height, nothing drawn: it condemns, and never clears.
#[test]
fn a_slope_that_was_read_alone_clears_nothing() {
    let read = |steer: &str| {
        sheet(&[("front.bump_steer", steer), ("wanted.bump", "50 mm"), ("wanted.droop", "50 mm")])
    };
    let slight = read("0.01 deg").assess();
    assert_eq!(verdict(&slight, "front.bump_steer_band"), Tight);
    assert!((value(&slight, "front.toe_change").abs() - 0.02 * DEGREE).abs() < 1e-12);
    assert_eq!(verdict(&read("0.06 deg").assess(), "front.bump_steer_band"), Short);
    assert_eq!(verdict(&read("-0.06 deg").assess(), "front.bump_steer_band"), Short);
    // Readings over the travel clear it.
    let mut whole = read("0.01 deg");
    whole.set("front.toe_in_over_travel", "0.03 deg").unwrap();
    assert_eq!(verdict(&whole.assess(), "front.bump_steer_band"), Tight);
    whole.set("front.toe_out_over_travel", "-0.05 deg").unwrap();
    assert_eq!(verdict(&whole.assess(), "front.bump_steer_band"), Meets);
    whole.set("front.toe_out_over_travel", "-0.12 deg").unwrap();
    assert_eq!(verdict(&whole.assess(), "front.bump_steer_band"), Short);
}

/// Roll steer and anti-squat as their slopes at ride height say, and over the travel.
#[test]
fn roll_steer_and_squat_are_judged_over_the_travel() {
    let on = measured(&[("wanted.bump", "60 mm"), ("wanted.droop", "60 mm")]);
    let model = {
        let mut model = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
        let pitching = model.pitching.as_mut().unwrap();
        pitching.centre_of_gravity_height.quantity =
            Length::from_si(value(&on, "vehicle.centre_of_gravity_height"));
        model.wheel.loaded_radius.quantity = Length::from_si(value(&on, "rear.tyre.loaded_radius"));
        model
    };
    let at = |heave: f64, roll: f64| model.at(Length::from_si(heave), Angle::from_si(roll)).unwrap();
    let roll = (0.06_f64 / 0.76).asin();
    let rest = at(0.0, 0.0);
    let steer = [roll, -roll].map(|roll| (at(0.0, roll).axle_steer.si() - rest.axle_steer.si()) / roll);
    let (least, most) = (value(&on, "rear.roll_steer_least"), value(&on, "rear.roll_steer_most"));
    for steer in steer {
        assert!(steer >= least - 1e-12 && steer <= most + 1e-12, "{least} {steer} {most}");
    }
    let squat = [0.06, -0.06].map(|heave| at(heave, 0.0).drive_anti_pitch.si());
    let (least, most) = (value(&on, "rear.anti_squat_least"), value(&on, "rear.anti_squat_most"));
    assert!((least - squat[0].min(squat[1])).abs() < 1e-9 && (most - squat[0].max(squat[1])).abs() < 1e-9);
    assert!(most - least > 0.1);
    // A band in which ride height lies, and full bump or droop does not.
    let here = value(&on, "rear.anti_squat");
    let band = [format!("{}", here - 0.08), format!("{}", here + 0.08)];
    let narrow = measured(&[
        ("wanted.bump", "60 mm"),
        ("wanted.droop", "60 mm"),
        ("wanted.anti_squat_low", &band[0]),
        ("wanted.anti_squat_high", &band[1]),
    ]);
    assert_eq!(verdict(&narrow, "rear.squat"), Short);
    let still = measured(&[
        ("wanted.bump", "1 mm"),
        ("wanted.droop", "1 mm"),
        ("wanted.anti_squat_low", &band[0]),
        ("wanted.anti_squat_high", &band[1]),
    ]);
    assert_eq!(verdict(&still, "rear.squat"), Meets);
    // A share that was read at ride height is never better than tight.
    let read = [("rear.anti_squat", "50 %"), ("rear.roll_steer", "0.02")];
    assert_eq!(verdict(&sheet(&read[..1]).assess(), "rear.squat"), Tight);
    assert_eq!(verdict(&sheet(&read[1..]).assess(), "rear.roll_steer_band"), Tight);
    assert_eq!(verdict(&sheet(&[("rear.roll_steer", "0.5")]).assess(), "rear.roll_steer_band"), Short);
}

/// The range of the linkage is the least over the rack; a lock that is not reached leaves none.
#[test]
fn the_range_counts_both_locks() {
    let at = |rack: &str| measured(&[("front.rack_travel", rack)]);
    let model = wishbone();
    let range = |rack: f64| model.travel_range(Length::from_si(rack));
    // As far as the steering turns at all: the greatest rack travel that the model does not refuse.
    let (mut good, mut bad) = (0.0, 0.3);
    for _ in 0..40 {
        let middle = 0.5 * (good + bad);
        if range(middle).is_ok() && range(-middle).is_ok() { good = middle } else { bad = middle }
    }
    let beyond = at(&format!("{} m", good + 0.002));
    assert_eq!(verdict(&beyond, "front.linkage_range"), Short);
    assert_eq!(verdict(&beyond, "front.toggle"), Short);
    assert_eq!(value(&beyond, "front.linkage_bump"), 0.0);
    let near = at(&format!("{} m", good - 0.001));
    assert!(value(&near, "front.toggle_angle") < 15.0 * DEGREE);
    assert_ne!(verdict(&near, "front.toggle"), Meets);
    // Not known: how far the rack goes.
    let missing = at("");
    assert_eq!(verdict(&missing, "front.linkage_range"), NotKnown);
    assert_eq!(verdict(&missing, "front.toggle"), NotKnown);
    assert!(lacks(&missing, "front.toggle").contains("front.rack_travel"));
    // The demo's own rack.
    let on = at("70 mm");
    let least = [0.0, 0.035, -0.035, 0.07, -0.07]
        .map(|rack| range(rack).map(|on| on.bump.si()).unwrap())
        .into_iter()
        .fold(f64::INFINITY, f64::min);
    assert!((value(&on, "front.linkage_bump") - least).abs() < 1e-12);
    assert_eq!(verdict(&on, "front.linkage_range"), Meets);
    assert!(on.answer("front.toggle").unwrap().is_safety());
}

/// The nose of a front axle points to the rear: turned nose down there where a rear one is turned nose up.
#[test]
fn the_pinion_of_a_front_axle_turns_the_other_way() {
    let rear = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
    let mut front = rear.clone();
    front.axle = axlewright::suspension::Axle::Front;
    (front.pinion, front.anti_roll_bar) = (None, axlewright::Stated::Unknown);
    let mut rear = rear;
    (rear.pinion, rear.anti_roll_bar) = (None, axlewright::Stated::Unknown);
    for heave in [0.08, 0.04, -0.05] {
        let at = |model: &LiveAxle| model.at(Length::from_si(heave), Angle::from_si(0.0)).unwrap();
        let (one, other) = (at(&front), at(&rear));
        assert!(one.pinion_angle_change.si().abs() > 1e-3);
        assert!((one.pinion_angle_change.si() + other.pinion_angle_change.si()).abs() < 1e-12);
        // A front axle's nose rises as its front goes down.
        assert!((one.pinion_angle_change.si() - one.axle_pitch.si()).abs() < 1e-9);
    }
}

/// An axle or a wheel that is moved along the vehicle has another wheelbase, and anti-squat counts that one.
#[test]
fn anti_squat_counts_the_wheelbase_after_a_move() {
    let (none, level) = (Length::from_si(0.0), Angle::from_si(0.0));
    let column = |table: axlewright::Table, name: &str| {
        let all = table.numbers(name).unwrap();
        (all[0], all[1])
    };
    for forward in [0.1, -0.2] {
        let by = Length::from_si(forward);
        // Of a rear axle that moves forward the wheelbase gets shorter; points and share stay otherwise, so the same model by hand.
        let rear = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
        let (_, after) = column(rear.axle_move(by, none, &[none]).unwrap(), "drive_anti_pitch");
        let slope = column(rear.axle_move(by, none, &[none]).unwrap(), "side_view_angle").1.tan();
        let pitching = rear.pitching.as_ref().unwrap();
        let share = pitching.drive_share.as_ref().unwrap().quantity.si();
        let base = pitching.wheelbase.quantity.si() - forward;
        let by_hand = -share * slope * base / pitching.centre_of_gravity_height.quantity.si();
        assert!((after / by_hand - 1.0).abs() < 1e-12, "{after} {by_hand}");

        let leaf = LeafAxle::from_text(&text("dray_rear_axle")).unwrap();
        let little = Length::from_si(0.2 * forward);
        let table = leaf.axle_move(little, none, &[none]).unwrap();
        let braking = leaf.braking.as_ref().unwrap();
        let base = braking.wheelbase.quantity.si() - 0.2 * forward;
        let slope = table.numbers("side_view_angle").unwrap()[1].tan();
        let by_hand =
            -braking.axle_share.quantity.si() * slope * base / braking.centre_of_gravity_height.quantity.si();
        let after = table.numbers("brake_anti_pitch").unwrap()[1];
        assert!((after / by_hand - 1.0).abs() < 1e-12, "{after} {by_hand}");

        let front = wishbone();
        let table = front.arch_move(by, none, none, &[none]).unwrap();
        let braking = front.braking.as_ref().unwrap();
        let base = braking.wheelbase.quantity.si() + forward;
        let slope = table.numbers("side_view_angle").unwrap()[1].tan();
        let by_hand =
            braking.axle_share.quantity.si() * slope * base / braking.centre_of_gravity_height.quantity.si();
        let after = table.numbers("brake_anti_pitch").unwrap()[1];
        assert!((after / by_hand - 1.0).abs() < 1e-9, "{after} {by_hand}");
    }
    // Not moved along the vehicle: the wheelbase stays.
    let rear = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
    let (before, after) = column(rear.axle_move(none, none, &[none]).unwrap(), "drive_anti_pitch");
    assert_eq!(before, after);
    assert_eq!(before, rear.at(none, level).unwrap().drive_anti_pitch.si());
}

/// Grip that each axle loses, by the sensitivity of its tyres; without it nothing is known, whatever the transfer is.
#[test]
fn balance_compares_the_grip_that_each_axle_loses() {
    let tyres = |front: &'static str, rear: &'static str, grip: &'static str| {
        measured(&[
            ("grip.pull_coefficient", grip),
            ("front.tyre.load_sensitivity", front),
            ("front.tyre.sensitivity_load", "6 kN"),
            ("rear.tyre.load_sensitivity", rear),
            ("rear.tyre.sensitivity_load", "6 kN"),
        ])
    };
    assert_eq!(verdict(&measured(&[]), "vehicle.balance"), NotKnown);
    for missing in [tyres("", "0.1", "0.5"), tyres("0.1", "", "0.5"), tyres("0.1", "0.1", "")] {
        assert_eq!(verdict(&missing, "vehicle.balance"), NotKnown);
    }
    // From the losses back to the transfers, and their share as the roll balance has it.
    let on = tyres("0.1", "0.1", "0.5");
    let transfer = |axle: &str, kilograms: f64| {
        let mean = kilograms * 9.80665 / 2.0;
        let uneven = value(&on, &format!("{axle}.grip_loss")) * 6000.0 / (0.1 * mean) - 1.0;
        uneven.sqrt() * mean
    };
    let (front, rear) = (transfer("front", 1210.0), transfer("rear", 1322.0));
    assert!((front / (front + rear) - value(&on, "vehicle.front_transfer_share")).abs() < 1e-9);
    let lost = ["front", "rear"].map(|axle| value(&on, &format!("{axle}.grip_loss")));
    assert!((value(&on, "vehicle.grip_balance") - (lost[0] - lost[1])).abs() < 1e-15);
    // The same vehicle turns with its tyres: more sensitive in front it runs wide, at the rear it spins.
    assert_eq!(verdict(&tyres("0.1", "0.08", "0.5"), "vehicle.balance"), Meets);
    assert_eq!(verdict(&tyres("0.05", "0.2", "0.5"), "vehicle.balance"), Short);
    // No answer beyond the lift of a wheel.
    assert_eq!(verdict(&tyres("0.12", "0.08", "1.9"), "vehicle.balance"), NotKnown);
}

/// A stiff bar lifts one wheel, which is no tipping; a high body tips; stops count.
#[test]
fn a_wheel_lifts_before_a_vehicle_tips() {
    let with = |lines: &[(&str, &str)]| measured(&[&[("grip.strength_coefficient", "0.6")], lines].concat());
    let on = with(&[]);
    let of = |on: &Assessment, line: &str| value(on, &format!("vehicle.{line}_acceleration"));
    for findings in ["vehicle.wheel_lift", "vehicle.tip"] {
        assert_eq!(verdict(&on, findings), Meets, "{findings} {}", on.answer(findings).unwrap().margin);
        assert_eq!(verdict(&measured(&[]), findings), NotKnown);
    }
    assert!(on.answer("vehicle.tip").unwrap().is_safety());
    // Never beyond what a rigid vehicle does: g t / (2 h).
    let rigid = 9.80665 * (1210.0 * 1.54 + 1322.0 * 1.52) / 2532.0 / 2.0 / 0.76;
    let (lift, tip) = (of(&on, "lift"), of(&on, "tip"));
    assert!(lift <= tip && tip < rigid, "{lift} {tip} {rigid}");
    // A stiff bar at the rear lifts its inner wheel earlier, and that is no tipping.
    let stiff = with(&[("rear.anti_roll_bar.rate", "1500 N/mm")]);
    assert!(of(&stiff, "lift") < 0.95 * lift, "{} {lift}", of(&stiff, "lift"));
    assert!(of(&stiff, "tip") > of(&stiff, "lift"));
    // A body of another height.
    let high = with(&[("vehicle.centre_of_gravity_height", "1300 mm")]);
    assert!(of(&high, "tip") < 0.7 * tip);
    assert_eq!(verdict(&high, "vehicle.tip"), Short);
    // A stop near ride height makes its axle rigid, which lifts its wheel earlier.
    let stopped = with(&[("rear.tyre_clearance", "5 mm")]);
    assert!(of(&stopped, "lift") < lift && of(&stopped, "stop") < of(&on, "stop"));
    assert_eq!(verdict(&stopped, "vehicle.roll_stops"), Short);
    // Little grip: the body keeps clear of its stops.
    let slow = measured(&[("grip.strength_coefficient", "0.3")]);
    assert_eq!(verdict(&slow, "vehicle.roll_stops"), Meets, "{}", of(&slow, "stop"));
}

/// A lateral rod leads the rear axle sideways, so that its coil-overs have two motion ratios: both are shown, and the worse side is judged.
#[test]
fn both_sides_of_an_axle_are_judged() {
    let on = measured(&[]);
    let of = |path: &str| value(&on, path);
    let model = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
    let drawn = model.at(Length::from_si(0.0), Angle::from_si(0.0)).unwrap();
    let [left, right] = [of("rear.linkage_motion_ratio"), of("rear.linkage_right_motion_ratio")];
    assert!(
        (left - drawn.left_motion_ratio.si()).abs() < 1e-9
            && (right - drawn.right_motion_ratio.si()).abs() < 1e-9
    );
    assert!((left - right).abs() > 1e-3);
    let wheel = [of("rear.wheel_rate"), of("rear.right_wheel_rate")];
    let frequency = of("rear.natural_frequency");
    let both = [frequency, frequency * (wheel[1] / wheel[0]).sqrt()];
    let [low, high] = [both[0].min(both[1]), both[0].max(both[1])];
    // A band whose edge lies between the two sides is left by one of them, whichever edge it is.
    let edge = format!("{} Hz", 0.5 * (low + high));
    for (lines, worse) in [
        ([("rear.wanted.frequency_low", edge.as_str()), ("rear.wanted.frequency_high", "9 Hz")], low),
        ([("rear.wanted.frequency_low", "0.2 Hz"), ("rear.wanted.frequency_high", edge.as_str())], high),
    ] {
        let judged = measured(&lines);
        assert_eq!(verdict(&judged, "rear.frequency"), Short);
        assert!((value(&judged, "rear.frequency_of_worse_side") - worse).abs() < 1e-9);
    }
    let wide = measured(&[("rear.wanted.frequency_low", "0.2 Hz"), ("rear.wanted.frequency_high", "9 Hz")]);
    assert_eq!(verdict(&wide, "rear.frequency"), Meets);
    // Damping, too: the same damper on the other lever and under the other rate.
    let damping = of("rear.damping_ratio");
    let other = damping * (right / left).powi(2) * (wheel[0] / wheel[1]).sqrt();
    let edge = format!("{}", 0.5 * (damping + other));
    let judged = measured(&[("wanted.damping_low", "0.01"), ("wanted.damping_high", &edge)]);
    assert_eq!(verdict(&judged, "rear.damping"), Short);
    assert!((value(&judged, "rear.damping_of_worse_side") - damping.max(other)).abs() < 1e-9);
    // A reading on the left takes the right one with it; an independent axle has one ratio.
    let read = measured(&[("rear.spring.motion_ratio", "0.9")]);
    assert!((value(&read, "rear.spring.right_motion_ratio") - 0.9 * right / left).abs() < 1e-12);
    assert!(value(&on, "front.right_wheel_rate").is_nan());
    assert_eq!(value(&on, "front.frequency_of_worse_side"), value(&on, "front.natural_frequency"));
    // Without the load of the springs, their base in roll is that of the mean of both sides.
    let lever = |ratio: f64| ratio * 0.76;
    let (one, two) = (lever(drawn.left_roll_motion_ratio.si()), lever(drawn.right_roll_motion_ratio.si()));
    let base = (2.0 * (one * one + two * two)).sqrt() / left;
    assert!((of("rear.spring_base") - base).abs() < 1e-9, "{} {base}", of("rear.spring_base"));
}

/// The energy of the springs, as the body rolls about its roll centre, has the roll stiffness of the sheet as its second derivative.
#[test]
fn roll_stiffness_of_a_live_axle_is_that_of_its_model_about_the_roll_centre() {
    for (lines, by) in [
        (&[][..], 0.0),
        (&[("rear.coil_over.body_eye.y", "420 mm")], -0.05),
        (&[("rear.coil_over.body_eye.y", "510 mm")], 0.04),
    ] {
        let on = measured(lines);
        let of = |path: &str| value(&on, path);
        let sheet = 0.5 * of("rear.wheel_rate") * of("rear.roll_base").powi(2);
        let mut model = LiveAxle::from_text(&text("dunlin_rear_axle")).unwrap();
        let (rate, force) = (of("rear.spring.rate"), of("rear.spring.axis_force"));
        if let Stated::Given(coil_over) = &mut model.coil_over {
            coil_over.body_eye.y.quantity = Length::from_si(0.47 + by);
        }
        let at = |heave: f64, roll: f64| model.at(Length::from_si(heave), Angle::from_si(roll)).unwrap();
        let rest = at(0.0, 0.0);
        let above = rest.roll_centre_height.si() - 0.335;
        let energy = |roll: f64| {
            let on = at(above * (1.0 - roll.cos()), roll);
            [(on.left_eye_length, rest.left_eye_length), (on.right_eye_length, rest.right_eye_length)]
                .map(|(long, before)| 0.5 * (force / rate + (before - long).si()).powi(2) * rate)
                .iter()
                .sum::<f64>()
        };
        let step = 0.005;
        let wanted = (energy(step) - 2.0 * energy(0.0) + energy(-step)) / (step * step);
        assert!((sheet / wanted - 1.0).abs() < 2e-3, "{sheet} {wanted}");
    }
}

/// The Wagtail on stiff springs, low and with much grip, its weight on these wheels; no tolerances.
fn stiff_wagtail(scales: [&'static str; 4], more: &[(&'static str, &'static str)]) -> Assessment {
    let [left_front, right_front, left_rear, right_rear] = scales;
    let lines = [
        ("grip.strength_coefficient", "1.15"),
        ("grip.pull_coefficient", "0.7"),
        ("vehicle.centre_of_gravity_height", "460 mm"),
        ("front.spring.rate", "400 lbf/in"),
        ("rear.spring.rate", "500 lbf/in"),
        ("front.anti_roll_bar.rate", "400 N/mm"),
        ("rear.anti_roll_bar.rate", "400 N/mm"),
        ("rear.anti_roll_bar.motion_ratio", "0.5"),
        ("front.unsprung_mass", "60 kg"),
        ("rear.unsprung_mass", "75 kg"),
        ("front.bump_stop_travel", "none"),
        ("rear.bump_stop_travel", "none"),
        ("front.damper.gas_force", "none"),
        ("rear.damper.gas_force", "none"),
        ("front.joint_bump_clearance", "none"),
        ("front.hose_bump_clearance", "none"),
        ("front.tyre_clearance", "none"),
        ("front.joint_droop_clearance", "none"),
        ("front.hose_droop_clearance", "none"),
        ("rear.joint_bump_clearance", "none"),
        ("rear.hose_bump_clearance", "none"),
        ("rear.tyre_clearance", "none"),
        ("rear.joint_droop_clearance", "none"),
        ("rear.hose_droop_clearance", "none"),
        ("scales.left_front", left_front),
        ("scales.right_front", right_front),
        ("scales.left_rear", left_rear),
        ("scales.right_rear", right_rear),
    ];
    assessed("wagtail", &[&lines[..], more].concat())
}

/// A centre of gravity beside the centreline: the wheels of the lighter side lift earlier, and the vehicle tips to the heavier side earlier.
#[test]
fn a_centre_of_gravity_beside_the_centreline_counts() {
    let of = |on: &Assessment, line: &str| value(on, &format!("vehicle.{line}_acceleration"));
    let even = stiff_wagtail(["149 kg", "149 kg", "186 kg", "186 kg"], &[]);
    let left = stiff_wagtail(["171 kg", "127 kg", "213.5 kg", "158.5 kg"], &[]);
    let right = stiff_wagtail(["127 kg", "171 kg", "158.5 kg", "213.5 kg"], &[]);
    // Whichever side it is.
    for line in ["stop", "lift", "tip"] {
        assert!(
            (of(&left, line) - of(&right, line)).abs() < 1e-9,
            "{line}: {} {}",
            of(&left, line),
            of(&right, line)
        );
    }
    // No stop counts: each axle lifts its wheel where its transfer takes the load of the light wheel. Both axles have lost the same share.
    assert!((of(&left, "lift") / of(&even, "lift") - 2.0 * 127.0 / 298.0).abs() < 1e-3);
    // A rigid vehicle tips at (t / 2 - |y|) g / h; lean lowers that.
    let offset = ((171.0 - 127.0) * 1.350 / 2.0 + (213.5 - 158.5) * 1.360 / 2.0) / 670.0;
    assert!((value(&left, "vehicle.left_of_centreline") - offset).abs() < 1e-9);
    let rigid = |offset: f64| ((298.0 * 1.350 + 372.0 * 1.360) / 670.0 / 2.0 - offset) * 9.80665 / 0.46;
    assert!(of(&left, "tip") <= rigid(offset) && of(&even, "tip") <= rigid(0.0));
    assert!((of(&even, "tip") - of(&left, "tip")) / (rigid(0.0) - rigid(offset)) > 0.8);
    for finding in ["vehicle.wheel_lift", "vehicle.tip"] {
        let margins = [&even, &left].map(|on| on.answer(finding).unwrap().margin);
        let verdicts = [&even, &left].map(|on| verdict(on, finding));
        assert!(margins[1] < 1.1, "{finding} {margins:?}");
        assert_eq!(verdicts[0], Meets, "{finding}");
        assert_ne!(verdicts[1], Meets, "{finding}");
    }
    // A variation: only the rear stands to one side.
    let rear = stiff_wagtail(["149 kg", "149 kg", "213.5 kg", "158.5 kg"], &[]);
    assert!(of(&rear, "lift") < of(&even, "lift") && of(&rear, "tip") < of(&even, "tip"));
    // Opposite wheels heavy: one wheel lifts earlier, and the vehicle tips hardly earlier.
    let crossed = stiff_wagtail(["171 kg", "127 kg", "158.5 kg", "213.5 kg"], &[]);
    assert!(of(&crossed, "lift") < 0.9 * of(&even, "lift"));
    assert!(of(&crossed, "tip") > of(&left, "tip"));
}

/// Travel ends where the linkage ends, whatever spring and damper leave.
#[test]
fn travel_ends_where_the_linkage_ends() {
    // The drop link of the bar locks in droop before the damper is open.
    let locked = measured(&[
        ("front.anti_roll_bar.lever_end.z", "300 mm"),
        ("front.anti_roll_bar.lever_pivot.z", "300 mm"),
        ("wanted.droop", "100 mm"),
    ]);
    let end = value(&locked, "front.linkage_droop");
    assert!(end < 0.1 && end < value(&locked, "front.droop_remaining"), "{end}");
    assert!(value(&locked, "front.droop_clear") <= end);
    assert_eq!(verdict(&locked, "front.droop"), Tight);
    // A damper that opens further than the drawn linkage goes.
    let long = [
        ("front.damper.open_length", "600 mm"),
        ("front.spring.free_length", "440 mm"),
        ("front.bump_stop_travel", "400 mm"),
        ("front.hose_droop_clearance", "none"),
        ("wanted.droop", "200 mm"),
    ];
    let long = measured(&long);
    let end = value(&long, "front.linkage_droop");
    assert!(value(&long, "front.droop_clear") <= end && end < value(&long, "front.droop_remaining"));
    assert_ne!(verdict(&long, "front.droop"), Meets);
    // What is left of the linkage itself stays the same question, and a linkage that goes further ends nothing.
    let on = measured(&[]);
    assert_eq!(verdict(&on, "front.linkage_range"), Meets);
    for (axle, way) in [("front", "bump"), ("rear", "bump"), ("front", "droop"), ("rear", "droop")] {
        let of = |line: &str| value(&on, &format!("{axle}.{line}"));
        assert!(of(&format!("linkage_{way}")) > of(&format!("{way}_remaining")), "{axle} {way}");
        assert!(of(&format!("{way}_clear")) <= of(&format!("{way}_remaining")));
        assert_eq!(verdict(&on, &format!("{axle}.{way}")), Meets);
    }
}

/// The measured Dunlin with its rear axle in front, too, 2650 mm further forward.
fn live_front(lines: &[(&str, &str)]) -> Assessment {
    let text = text("dunlin_measured");
    let (head, rest) = text.split_once("[front]\n").unwrap();
    let (_, rest) = rest.split_once("[rear]\n").unwrap();
    let (rear, rest) = rest.split_once("[speedometer]\n").unwrap();
    let mut front = String::new();
    for line in rear.lines() {
        match line.split_once("x = \"").map(|(name, rest)| (name, rest.split_once(" mm").unwrap())) {
            Some((name, (x, rest))) => {
                let x = x.parse::<i32>().unwrap() + 2650;
                front.push_str(&format!("{name}x = \"{x} mm{rest}\n"));
            }
            None => {
                front.push_str(&format!("{}\n", line.replace("[rear.", "[front.").replace("36 %", "64 %")))
            }
        }
    }
    let whole = format!("{head}[front]\n{front}[rear]\n{rear}[speedometer]\n{rest}");
    let mut sheet = axlewright::sheet::Sheet::from_text(&whole).unwrap();
    for (path, text) in lines {
        if text.is_empty() { sheet.remove(path).unwrap() } else { sheet.set(path, text).unwrap() }
    }
    sheet.assess()
}

/// A steered live axle is turned by its drag link as it moves: its own motion clears neither bump steer nor roll steer.
#[test]
fn a_steered_live_axle_is_not_cleared_by_its_own_motion() {
    let steer = ["front.bump_steer_band", "front.roll_steer_band"];
    // Not steered it stands as the rear one does.
    let fixed = live_front(&[("front.rack_travel", "0 mm")]);
    assert_eq!(steer.map(|finding| verdict(&fixed, finding)), [Meets, Meets]);
    assert!((value(&fixed, "front.toe_change").abs() - value(&fixed, "rear.toe_change").abs()).abs() < 1e-9);
    for lines in [
        &[("front.rack_travel", "70 mm")][..],
        &[("front.rack_travel", "0 mm"), ("front.tie_rod.outer.y", "700 mm")],
        &[("front.rack_travel", "0 mm"), ("front.tie_rod.inner.y", "200 mm")],
        &[],
    ] {
        let on = live_front(lines);
        assert_eq!(steer.map(|finding| verdict(&on, finding)), [NotKnown, NotKnown], "{lines:?}");
        assert_eq!(verdict(&on, "front.toggle"), NotKnown, "{lines:?}");
        let why = lacks(&on, "front.bump_steer_band");
        match lines {
            [] => assert!(why.contains("write front.rack_travel"), "{why}"),
            _ => assert!(why.contains("drag link") && why.contains("toe_out_over_travel"), "{why}"),
        }
        // The rear one is not steered.
        assert_eq!(verdict(&on, "rear.bump_steer_band"), Meets, "{lines:?}");
        assert_eq!(verdict(&on, "rear.roll_steer_band"), Meets, "{lines:?}");
    }
    let rear = live_front(&[("rear.rack_travel", "30 mm")]);
    assert_eq!(verdict(&rear, "rear.bump_steer_band"), NotKnown);
    // Measured on the vehicle with its steering: that clears it, and condemns it.
    let read = |toe: &str| {
        let lines = [
            ("front.rack_travel", "70 mm"),
            ("front.toe_out_over_travel", "-0.04 deg"),
            ("front.toe_in_over_travel", toe),
            ("front.roll_steer_least", "-0.01"),
            ("front.roll_steer_most", "0.05"),
            ("front.toggle_angle", "30 deg"),
        ];
        live_front(&lines)
    };
    assert_eq!(steer.map(|finding| verdict(&read("0.05 deg"), finding)), [Meets, Meets]);
    assert_eq!(verdict(&read("0.05 deg"), "front.toggle"), Meets);
    assert_eq!(verdict(&read("0.8 deg"), "front.bump_steer_band"), Short);
}

/// Steer and squat that were judged over an assumed travel are no better than tight.
#[test]
fn an_assumed_travel_clears_no_steer() {
    let (tight, out) = (("wanted.bump_steer_out", "-0.05 deg"), ("rear.damper.open_length", ""));
    assert_eq!(verdict(&measured(&[tight]), "rear.bump_steer_band"), Short);
    for (lines, expected) in [
        (&[out][..], Tight),
        (&[tight, out], Tight),
        // The stop in bump is not known: nor is the travel.
        (&[("rear.spring.solid_length", "")], Tight),
        (&[out, ("wanted.droop", "50 mm")], Tight),
        (&[out, ("wanted.droop", "50 mm"), ("wanted.bump", "60 mm")], Meets),
        (&[], Meets),
    ] {
        let on = measured(lines);
        assert_eq!(verdict(&on, "rear.bump_steer_band"), expected, "{lines:?}");
        assert_eq!(verdict(&on, "rear.roll_steer_band"), expected, "{lines:?}");
        if expected == Tight {
            let write = on.to_write(on.answer("rear.bump_steer_band").unwrap());
            assert!(write.iter().any(|one| one.contains("wanted.droop")), "{write:?}");
        }
    }
}

/// Tyres that lose nothing to their load would call every vehicle balanced.
#[test]
fn a_tyre_without_load_sensitivity_is_refused() {
    let mut sheet = sheet(&[("front.tyre.load_sensitivity", "0.001")]);
    for (text, key) in [("0", "front"), ("0 %", "rear"), ("-0.1", "rear")] {
        let refused = sheet.set(&format!("{key}.tyre.load_sensitivity"), text).unwrap_err().to_string();
        assert!(refused.contains("load_sensitivity"), "{refused}");
    }
}

/// Readings at a mount beside a drawing, and a wheel rate beside spring and ratio: where they differ, one is wrong.
#[test]
fn readings_beside_a_drawing_are_held_against_it() {
    let paths = |on: &Assessment| on.contradictions().iter().map(|one| one.path).collect::<Vec<_>>();
    let drawn = value(&measured(&[]), "front.spring.motion_ratio");
    let at = |ratio: f64| {
        let ratio = format!("{ratio}");
        measured(&[("front.spring.mount_ratio", &ratio), ("front.spring.angle", "60 deg")])
    };
    let on = at(0.9);
    assert_eq!(paths(&on), ["front.spring.mount_ratio"]);
    let found = &on.contradictions()[0];
    assert!((found.follows - drawn / 60_f64.to_radians().cos()).abs() < 1e-12);
    assert_eq!([verdict(&on, "front.frequency"), verdict(&measured(&[]), "front.frequency")], [Tight, Meets]);
    // Which of the two counts does not change.
    assert_eq!(value(&on, "front.spring.motion_ratio"), drawn);
    // A variation: at 20 deg, a tenth off. And a reading that is right within its reading.
    let ratio = format!("{}", 1.1 * drawn / 20_f64.to_radians().cos());
    let off = measured(&[("front.spring.mount_ratio", &ratio), ("front.spring.angle", "20 deg")]);
    assert_eq!(verdict(&off, "front.bump"), Tight);
    let ratio = format!("{:.2}", drawn / 20_f64.to_radians().cos());
    let right = measured(&[("front.spring.mount_ratio", &ratio), ("front.spring.angle", "20 deg")]);
    assert_eq!((paths(&right).len(), verdict(&right, "front.frequency")), (0, Meets));
    // The damper of a leaf-sprung axle, drawn too.
    let drawn = value(&assessed("dray", &[]), "rear.damper.motion_ratio");
    let damper = |ratio: f64| {
        let ratio = format!("{ratio}");
        assessed("dray", &[("rear.damper.mount_ratio", &ratio), ("rear.damper.angle", "30 deg")])
    };
    assert!(drawn > 0.0);
    let along = 30_f64.to_radians().cos();
    assert_eq!(paths(&damper(1.2 * drawn / along)), ["rear.damper.mount_ratio"]);
    assert_eq!(paths(&damper(drawn / along)), [""; 0]);

    // 250 lbf/in at 0.75 give 24.6 N/mm, whatever is assumed of the ratio's change over the travel.
    let rate =
        |rate: &str| assessed("wagtail", &[("rear.wheel_rate", rate), ("wanted.frequency_ratio_high", "2")]);
    for wrong in ["61 N/mm", "12 N/mm", "35 N/mm"] {
        let on = rate(wrong);
        assert_eq!(paths(&on), ["rear.wheel_rate"], "{wrong}");
        assert_ne!(verdict(&on, "vehicle.frequency_pair"), Meets, "{wrong}");
    }
    let near = rate("27 N/mm");
    assert_eq!((paths(&near).len(), verdict(&near, "vehicle.frequency_pair")), (0, Meets));
    // Nothing follows from that way where the line is not written.
    let open = assessed("wagtail", &[]);
    assert!((value(&open, "rear.wheel_rate") / (250.0 * 175.126835 * 0.75 * 0.75) - 1.0).abs() < 1e-6);
    assert_eq!(paths(&open), [""; 0]);
}

/// A live axle on drawn wishbones: one of the two is wrong.
#[test]
fn wheels_and_what_is_drawn_of_them_agree() {
    let on = measured(&[("front.wheels", "live_axle"), ("front.spring_base", "1000 mm")]);
    assert_eq!(on.contradictions().iter().map(|one| one.path).collect::<Vec<_>>(), ["front.wheels"]);
    for finding in ["vehicle.roll", "front.bump", "front.joints", "front.toggle", "front.roll_steer_band"] {
        assert_ne!(verdict(&on, finding), Meets, "{finding}");
    }
    // Said by the type of the suspension; and right.
    let named = [("front.suspension", "live_axle_on_links"), ("front.spring_base", "1000 mm")];
    let named = measured(&named);
    assert!(named.contradictions().iter().any(|one| one.path == "front.wheels"));
    let right = measured(&[("front.wheels", "independent"), ("front.suspension", "double_wishbone")]);
    assert!(right.contradictions().is_empty());
    assert_eq!(verdict(&right, "vehicle.roll"), Meets);
    assert_eq!(verdict(&right, "front.toggle"), Meets);
}

/// A dray whose rear axle has an anti-roll bar with a drop link that hangs so far below its lever.
fn barred(hangs: &str) -> Assessment {
    assessed(
        "dray",
        &[
            ("rear.anti_roll_bar.rate", "20 N/mm"),
            ("rear.anti_roll_bar.bearings", "body"),
            ("rear.anti_roll_bar.link_eye.x", "-3300 mm"),
            ("rear.anti_roll_bar.link_eye.y", "400 mm"),
            ("rear.anti_roll_bar.link_eye.z", hangs),
            ("rear.anti_roll_bar.lever_end.x", "-3300 mm"),
            ("rear.anti_roll_bar.lever_end.y", "400 mm"),
            ("rear.anti_roll_bar.lever_end.z", "600 mm"),
            ("rear.anti_roll_bar.lever_pivot.x", "-3100 mm"),
            ("rear.anti_roll_bar.lever_pivot.y", "400 mm"),
            ("rear.anti_roll_bar.lever_pivot.z", "600 mm"),
        ],
    )
}

/// Levers of 200 mm with short drop links: the link lines up with the lever long before the shackles do.
#[test]
fn the_drop_link_of_a_bar_ends_the_travel_of_leaf_springs() {
    let free = assessed("dray", &[]);
    assert_eq!(verdict(&free, "rear.linkage_range"), Meets);
    for (hangs, link, locks) in [("560 mm", 40.0, true), ("580 mm", 20.0, true), ("400 mm", 200.0, false)] {
        let on = barred(hangs);
        let [droop, bump] = ["rear.linkage_droop", "rear.linkage_bump"].map(|line| value(&on, line));
        // Straight up and down, the eye is at most 200 mm and the link from the pivot: it goes a little further fore and aft.
        let reach = ((200.0_f64 + link).powi(2) - 200.0_f64.powi(2)).sqrt() - link;
        if locks {
            assert!((droop * 1e3 / reach - 1.0).abs() < 0.12, "{hangs}: {droop} {reach}");
            assert!(droop < value(&free, "rear.droop_remaining"), "{hangs}");
        } else {
            assert!(droop > value(&free, "rear.droop_remaining"));
        }
        assert!(bump <= value(&free, "rear.linkage_bump"));
        assert_eq!(verdict(&on, "rear.linkage_range"), if locks { Short } else { Meets }, "{hangs}");
        let clear = value(&on, "rear.droop_clear") < value(&free, "rear.droop_clear") - 0.01;
        assert_eq!(clear, locks, "{hangs}");
    }
    // A bar that is only begun leaves the range open.
    assert_eq!(verdict(&barred(""), "rear.linkage_range"), NotKnown);
    // The model ends there, too, and refuses a place beyond it.
    let mut model = LeafAxle::from_text(&text("dray_rear_axle")).unwrap();
    let point = |x: f64, z: f64| {
        axlewright::suspension::Point::new(Length::from_si(x), Length::from_si(0.4), Length::from_si(z))
    };
    model.anti_roll_bar = Stated::Given(axlewright::suspension::AxleBar {
        bearings: axlewright::suspension::Mount::Body,
        link_eye: point(-3.3, 0.56),
        lever_end: point(-3.3, 0.6),
        lever_pivot: point(-3.1, 0.6),
    });
    let level = Angle::from_si(0.0);
    let range = model.travel_range(level).unwrap();
    assert_eq!(range.droop_end, "anti-roll bar");
    for (beyond, reached) in [(0.001, false), (-0.001, true)] {
        let there = range.droop - Length::from_si(beyond);
        assert_eq!(model.at(there, level).is_ok(), reached, "{beyond}");
    }
}

/// A rear axle with the travel of a rack is steered, whatever else is left out.
#[test]
fn a_rack_says_that_an_axle_is_steered() {
    let toggle = |lines: &[(&str, &str)]| verdict(&measured(lines), "rear.toggle");
    assert_eq!(toggle(&[]), axlewright::Verdict::DoesNotApply);
    assert_eq!(toggle(&[("rear.rack_travel", "0 mm")]), axlewright::Verdict::DoesNotApply);
    assert_eq!(toggle(&[("rear.rack_travel", "30 mm")]), NotKnown);
    assert_eq!(toggle(&[("rear.rack_travel", "1 mm")]), NotKnown);
    // A tie rod that is said to be none beside a rack.
    let front = |lines: &[(&str, &str)]| {
        let base = [("front.wheels", "independent"), ("front.tie_rod", "none")];
        verdict(&sheet(&[&base[..], lines].concat()).assess(), "front.toggle")
    };
    assert_eq!(front(&[]), axlewright::Verdict::DoesNotApply);
    assert_eq!(front(&[("front.rack_travel", "60 mm")]), NotKnown);
}

/// The right spring of an axle that a rod leads sideways carries by its own motion ratio, and stands on seats of its own.
#[test]
fn the_other_coil_over_has_its_own_seats() {
    for rod in ["370 mm", "330 mm"] {
        let on = measured(&[("rear.lateral_rod.axle.z", rod)]);
        let of = |line: &str| value(&on, line);
        let [left, right] = ["rear.spring.motion_ratio", "rear.spring.right_motion_ratio"].map(of);
        let weight = of("rear.sprung_mass") * 9.80665;
        let length = |ratio: f64| of("rear.spring.free_length") - weight / ratio / of("rear.spring.rate");
        // Both have the same length between their eyes at ride height.
        let offset = of("rear.linkage_eye_length") - length(right);
        assert!((of("rear.spring.right_seat_offset") - offset).abs() < 1e-12, "{rod}");
        assert!((offset - of("rear.spring.seat_offset")).abs() > 1e-4, "{rod}");
        // Coil bind and preload of the side that has less of each.
        let open = of("rear.damper.open_length");
        let seats = [of("rear.spring.seat_offset"), offset].map(|offset| open - offset);
        let (near, far) = (seats[0].min(seats[1]), seats[0].max(seats[1]));
        let bind = near - of("rear.damper.stroke") - of("rear.spring.shortest");
        assert!((of("rear.spring.bind_margin") - bind).abs() < 1e-12, "{rod}");
        let captive = of("rear.spring.free_length") - far;
        assert!((of("rear.spring.captive_margin") - captive).abs() < 1e-12, "{rod}");
        assert!(right != left);
    }
    // Independent wheels are mirror images.
    assert!(value(&measured(&[]), "front.spring.right_seat_offset").is_nan());
}

/// What ends the travel ends the lean: until it is told, no lean is cleared.
#[test]
fn a_lean_needs_the_stops_of_both_axles() {
    let findings = ["vehicle.roll_stops", "vehicle.wheel_lift", "vehicle.tip"];
    let whole = [
        ("grip.strength_coefficient", "0.8"),
        ("wanted.wheel_lift", "1"),
        ("vehicle.centre_of_gravity_height", "660 mm +/- 10 mm"),
    ];
    let of = |lines: &[(&str, &str)]| {
        let on = measured(&[&whole[..], lines].concat());
        findings.map(|finding| verdict(&on, finding))
    };
    assert_eq!(of(&[]), [Meets; 3]);
    for line in [
        "front.bump_stop_travel",
        "front.tyre_clearance",
        "front.damper.gas_force",
        "rear.hose_droop_clearance",
        "rear.joint_bump_clearance",
    ] {
        assert_eq!(of(&[(line, "")]), [Tight; 3], "{line}");
        let on = measured(&[&whole[..], &[(line, "")]].concat());
        let write = on.to_write(on.answer("vehicle.roll_stops").unwrap());
        assert!(!write.is_empty(), "{line}");
    }
    assert_eq!(of(&[("front.bump_stop_travel", "none")]), [Meets; 3]);
    // What tips, tips.
    let high = of(&[("front.bump_stop_travel", ""), ("vehicle.centre_of_gravity_height", "1.4 m")]);
    assert_eq!(high[2], Short);
}

/// The drive torque bends the leaves, too: without it nothing clears them.
#[test]
fn leaves_need_their_drive_torque() {
    let strength = |lines: &[(&str, &str)]| {
        let strong = [("wanted.spring_strength", "1"), ("rear.spring.allowed_stress", "2000 MPa")];
        verdict(&assessed("dray", &[&strong[..], lines].concat()), "rear.spring_strength")
    };
    let none = [("driveline.driven", "")];
    let told = |torque: &'static str| [&none[..], &[("rear.drive_torque", torque)]].concat();
    assert_eq!(strength(&none), NotKnown);
    assert_eq!(strength(&told("0 N·m")), Meets);
    assert_eq!(strength(&told("1000 N·m")), Meets);
    assert_eq!(strength(&told("20000 N·m")), Short);
    assert_eq!(strength(&[&none[..], &[("rear.spring.allowed_stress", "300 MPa")]].concat()), Short);
}
