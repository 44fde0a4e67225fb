use super::*;
use crate::units::{Nm, one};

fn part(name: &str, ratio: f64, rating: Option<(f64, Option<Side>, Option<RatingKind>)>) -> Part {
    Part {
        name: name.to_owned(),
        ratio: (ratio != 1.0).then(|| Value::new(Ratio::of::<one>(ratio))),
        least_ratio: None,
        peak_ratio: (ratio != 1.0).then(|| Value::new(Ratio::of::<one>(ratio))),
        efficiency: Some(Value::new(Ratio::of::<one>(1.0))),
        differential: None,
        share: None,
        torque_rating: rating.map(|(torque, ..)| Value::new(Torque::of::<Nm>(torque))),
        rating_side: rating.and_then(|(_, side, _)| side),
        rating_kind: rating.and_then(|(.., kind)| kind),
    }
}

fn path(parts: Vec<Part>, shock: Option<f64>) -> TorquePath {
    TorquePath {
        engine_torque: Value::new(Torque::of::<Nm>(100.0)),
        clutch_capacity: Some(Value::new(Torque::of::<Nm>(120.0))),
        clutch_high_capacity: Some(Value::new(Torque::of::<Nm>(120.0))),
        stall_ratio: Stated::Unknown,
        shock_factor: shock.map(|s| Value::new(Ratio::of::<one>(s))),
        grip: None,
        parts,
    }
}

#[test]
fn the_rated_side_decides() {
    let continuous = Some(RatingKind::Continuous);
    for (side, margin) in [(Side::Input, 3.0), (Side::Output, 1.0)] {
        let weakest = path(vec![part("gearbox", 3.0, Some((300.0, Some(side), continuous)))], Some(2.0))
            .weakest()
            .unwrap();
        assert_eq!((weakest.margin.si(), weakest.not_known), (margin, 0));
    }
}

#[test]
fn what_a_rating_does_not_say_is_not_known() {
    let parts = vec![
        part("no side", 3.0, Some((300.0, None, Some(RatingKind::Continuous)))),
        part("no rating", 1.0, None),
        part("peak", 1.0, Some((900.0, None, Some(RatingKind::Peak)))),
    ];
    let without = path(parts.clone(), None);
    let table = without.parts_table().unwrap();
    for row in 0..3 {
        assert!(table.numbers("margin").unwrap()[row].is_nan());
        assert!(table.word("why", row).is_some_and(|why| !why.is_empty()));
    }
    assert!(without.weakest().unwrap_err().to_string().contains("none of the 3 parts"));
    let weakest = path(parts, Some(2.0)).weakest().unwrap();
    assert_eq!((weakest.part.as_str(), weakest.margin.si(), weakest.not_known), ("peak", 1.25, 2));
}

#[test]
fn a_dropped_clutch_is_bounded_by_its_capacity_not_by_the_engine() {
    // Clutch 500 N·m, engine 360 N·m, first gear 4.7 at 97 %, shock 2: 500 * 2 * 4.7 * 0.97 = 4559 N·m.
    let mut gearbox = part("gearbox", 4.7, None);
    gearbox.efficiency = Some(Value::new(Ratio::of::<one>(0.97)));
    let shaft = part("shaft", 1.0, Some((4000.0, None, Some(RatingKind::Peak))));
    let mut path = path(vec![gearbox, shaft], Some(2.0));
    path.engine_torque = Value::new(Torque::of::<Nm>(360.0));
    path.clutch_capacity = Some(Value::new(Torque::of::<Nm>(500.0)));
    path.clutch_high_capacity = None;
    let weakest = path.weakest().unwrap();
    assert!((weakest.torque.si() - 4559.0).abs() < 1e-9 && weakest.margin.si() < 1.0);
    path.clutch_capacity = None;
    let table = path.parts_table().unwrap();
    assert!(table.word("why", 1).is_some_and(|why| why.contains("clutch_capacity")));
}

#[test]
fn what_breaks_without_a_shock_is_short() {
    let peak = |rating| {
        path(vec![part("axle", 4.0, Some((rating, Some(Side::Output), Some(RatingKind::Peak))))], None)
    };
    let weakest = peak(399.0).weakest().unwrap();
    assert_eq!((weakest.margin.si(), weakest.torque.si()), (399.0 / 400.0, 400.0));
    assert!(peak(400.0).weakest().is_err());
}

#[test]
fn a_share_stays_with_what_follows() {
    let mut shaft = part("shaft", 1.0, None);
    shaft.share = Some(Value::new(Ratio::of::<one>(0.5)));
    let table =
        path(vec![part("axle", 4.0, None), shaft, part("hub", 1.0, None)], None).parts_table().unwrap();
    assert_eq!(table.numbers("output_torque"), Some(&[400.0, 200.0, 200.0][..]));
}

/// 10 kN at 0.3 m and a coefficient of 1.2: 3600 N·m at the wheels together; the mean of 0.8 holds 2400 N·m.
fn gripping(parts: Vec<Part>, inertia_factor: Option<f64>) -> TorquePath {
    let ratio = |value| Value::new(Ratio::of::<one>(value));
    let grip = Grip {
        driven_load: Value::new(Force::from_si(10e3)),
        load_at_rest: None,
        loaded_radius: Value::new(Length::from_si(0.3)),
        strength_coefficient: Some(ratio(1.2)),
        pull_coefficient: Some(ratio(0.8)),
        inertia_factor: inertia_factor.map(ratio),
    };
    let mut path = path(parts, Some(2.0));
    path.engine_torque = Value::new(Torque::of::<Nm>(400.0));
    path.clutch_capacity = Some(Value::new(Torque::of::<Nm>(500.0)));
    path.clutch_high_capacity = None;
    TorquePath { grip: Some(grip), ..path }
}

#[test]
fn grip_holds_down_every_part_from_the_ground_up() {
    // Gearbox 4 and a transfer case at 1 or 2.5 in front of an axle of 4 at 90 %: the grip of 3600 N·m is 1000 N·m at the axle's input.
    let parts = |range| {
        let mut axle = part("axle", 4.0, None);
        axle.efficiency = Some(Value::new(Ratio::of::<one>(0.9)));
        vec![part("gearbox", 4.0, None), part("transfer case", range, None), axle]
    };
    let low = gripping(parts(2.5), None).parts_table().unwrap();
    assert_eq!(low.numbers("input_torque"), Some(&[100.0, 400.0, 1000.0][..]));
    assert_eq!(low.numbers("output_torque"), Some(&[400.0, 1000.0, 3600.0][..]));
    assert_eq!((0..3).map(|row| low.word("bound", row)).collect::<Vec<_>>(), vec![Some("grip"); 3]);
    let mut high = gripping(parts(1.0), None);
    high.engine_torque = Value::new(Torque::of::<Nm>(200.0));
    let table = high.parts_table().unwrap();
    assert_eq!(table.numbers("output_torque"), Some(&[800.0, 800.0, 2880.0][..]));
    assert_eq!(table.word("bound", 2), Some("engine"));
    // The pull takes the mean of grip: 2400 N·m, less than the 2880 N·m of the engine.
    let pull = high.pull().unwrap();
    assert_eq!((pull.wheel_torque.si(), pull.bound.as_str()), (2400.0, "grip"));
    assert!((pull.tractive_force.si() - 8000.0).abs() < 1e-9);
    high.engine_torque = Value::new(Torque::of::<Nm>(100.0));
    let pull = high.pull().unwrap();
    assert_eq!((pull.wheel_torque.si(), pull.bound.as_str()), (1440.0, "engine"));
    let mut unbounded = high.clone();
    unbounded.grip.as_mut().unwrap().strength_coefficient = None;
    let (table, pull) = (unbounded.parts_table().unwrap(), unbounded.pull().unwrap());
    assert_eq!((table.word("bound", 2), pull.wheel_torque.si()), (Some("engine"), 1440.0));
    high.grip.as_mut().unwrap().pull_coefficient = None;
    assert!(high.parts_table().is_ok());
    assert!(high.pull().unwrap_err().to_string().contains("pull_coefficient is not given"));
    high.grip = None;
    assert!(high.pull().unwrap_err().to_string().contains("grip is not given"));
}

/// The transfer case at 2.5, which can be shifted to 1: the gearbox counts in high range, where the grip is 1000 N·m behind it, too.
#[test]
fn a_low_range_relieves_no_part_before_it() {
    let mut axle = part("axle", 4.0, None);
    axle.efficiency = Some(Value::new(Ratio::of::<one>(0.9)));
    let rated = Some((1000.0, Some(Side::Output), Some(RatingKind::Continuous)));
    let mut case = part("transfer case", 2.5, None);
    for (least, demand) in [(None, 400.0), (Some(1.0), 1000.0)] {
        case.least_ratio = least.map(|least| Value::new(Ratio::of::<one>(least)));
        let parts = vec![part("gearbox", 4.0, rated), case.clone(), axle.clone()];
        let table = gripping(parts, None).parts_table().unwrap();
        assert_eq!(table.numbers("demand").unwrap()[0], demand);
        assert_eq!(table.numbers("output_torque"), Some(&[400.0, 1000.0, 3600.0][..]));
    }
    // An input of a part with a ratio of 1 that may be shifted is not relieved.
    let rated = Some((600.0, Some(Side::Input), Some(RatingKind::Continuous)));
    let one_to_one = Some(Value::new(Ratio::of::<one>(1.0)));
    for (least_ratio, demand) in [(None, 400.0), (one_to_one.clone(), 300.0)] {
        let direct = Part { ratio: one_to_one.clone(), least_ratio, ..part("gearbox", 1.0, rated) };
        let table = gripping(vec![direct, part("axle", 12.0, None)], None).parts_table().unwrap();
        assert_eq!(table.numbers("demand").unwrap()[0], demand);
    }
}

#[test]
fn one_shaft_behind_a_locked_axle_carries_all_that_the_whole_load_holds() {
    let path = |differential, share: Option<f64>| {
        let mut shaft = part("shaft", 1.0, Some((3000.0, None, Some(RatingKind::Continuous))));
        shaft.differential = differential;
        shaft.share = share.map(|share| Value::new(Ratio::of::<one>(share)));
        gripping(vec![part("gearbox", 1.0, None), part("axle", 12.0, None), shaft], None)
    };
    // Engine 400 * 12 = 4800 N·m; the tyres hold 3600 N·m together, and one of them all of that while the other hangs.
    for (differential, share, torque, margin) in [
        (Some(Differential::Open), None, 1800.0, 3000.0 / 1800.0),
        (Some(Differential::LimitedSlip), None, 3600.0, 3000.0 / 3600.0),
        (Some(Differential::Locked), None, 3600.0, 3000.0 / 3600.0),
        // Nobody said which: no better than locked.
        (None, None, 3600.0, 3000.0 / 3600.0),
        (None, Some(0.5), 1800.0, 3000.0 / 1800.0),
    ] {
        let table = path(differential, share).parts_table().unwrap();
        assert_eq!(table.numbers("input_torque"), Some(&[300.0, 300.0, torque][..]), "{differential:?}");
        assert_eq!(table.numbers("margin").unwrap()[2], margin);
        assert_eq!((table.word("demand_bound", 2), table.word("bound", 2)), (Some("grip"), Some("grip")));
    }
    let both = path(Some(Differential::Locked), Some(0.5)).check().unwrap_err().to_string();
    assert!(both.contains("parts[2] (shaft)") && both.contains("share and differential"), "{both}");
}

#[test]
fn a_dropped_clutch_meets_the_grip_only_with_the_inertia_on_top() {
    let parts = || vec![part("axle", 4.0, Some((8000.0, Some(Side::Output), Some(RatingKind::Peak))))];
    // Clutch 500 * 2 * 4 = 4000 N·m; grip 3600 N·m, with a factor of 1.05 3780 N·m, with 1.5 more than the clutch passes on.
    for (factor, demand, bound) in
        [(None, 4000.0, "clutch"), (Some(1.05), 3780.0, "grip"), (Some(1.5), 4000.0, "clutch")]
    {
        let table = gripping(parts(), factor).parts_table().unwrap();
        let found = table.numbers("demand").unwrap()[0];
        assert!((found - demand).abs() < 1e-9, "{factor:?}: {found}");
        assert_eq!(table.word("demand_bound", 0), Some(bound));
    }
    // Grip alone is a bound where nothing is said of the clutch.
    let mut path = gripping(parts(), Some(1.5));
    path.clutch_capacity = None;
    assert!((path.weakest().unwrap().torque.si() - 5400.0).abs() < 1e-9);
    let mut path = gripping(parts(), None);
    path.shock_factor = None;
    assert!(path.weakest().is_err());
}

#[test]
fn a_clutch_that_slips_under_the_engine_relieves_no_part() {
    // Clutch 250 * 1 * 4 = 1000 N·m, engine 400 * 4 = 1600 N·m, grip 3600 * 1.05 N·m.
    for kind in [RatingKind::Continuous, RatingKind::Peak, RatingKind::Yield, RatingKind::Ultimate] {
        let parts = vec![part("axle", 4.0, Some((2000.0, Some(Side::Output), Some(kind))))];
        let mut path = gripping(parts, Some(1.05));
        path.clutch_capacity = Some(Value::new(Torque::from_si(250.0)));
        path.shock_factor = Some(Value::new(Ratio::of::<one>(1.0)));
        let table = path.parts_table().unwrap();
        let found = (table.numbers("demand").unwrap()[0], table.word("demand_bound", 0));
        assert_eq!(found, (1600.0, Some("engine")), "{kind:?}");
    }
}

#[test]
fn refuses_what_is_no_grip() {
    type Change = fn(&mut Grip);
    let changes: [(&str, Change); 5] = [
        ("driven_load", |grip| grip.driven_load = Value::new(Force::from_si(-1.0))),
        ("loaded_radius", |grip| grip.loaded_radius = Value::new(Length::from_si(0.0))),
        ("pull_coefficient", |grip| grip.pull_coefficient = Some(Value::new(Ratio::from_si(1.3)))),
        ("pull_coefficient", |grip| grip.pull_coefficient = Some(Value::new(Ratio::from_si(0.0)))),
        ("inertia_factor", |grip| grip.inertia_factor = Some(Value::new(Ratio::from_si(0.9)))),
    ];
    for (name, change) in changes {
        let mut path = gripping(vec![part("x", 1.0, None)], None);
        path.grip.as_mut().map(change);
        let refused = path.check().unwrap_err().to_string();
        assert!(refused.contains(name), "{name}: {refused}");
    }
}

#[test]
fn refuses_what_is_no_path() {
    assert!(path(vec![], None).check().is_err());
    for (ratio, shock) in
        [(0.0, None), (f64::NAN, None), (-1.0, None), (1.0, Some(0.5)), (1.0, Some(f64::INFINITY))]
    {
        assert!(path(vec![part("x", ratio, None)], shock).check().is_err(), "{ratio} {shock:?}");
    }
}

#[test]
fn one_bad_row_does_not_spoil_the_others() {
    let parts = vec![part("axle", 4.0, Some((1920.0, Some(Side::Output), Some(RatingKind::Yield))))];
    let torques = [50.0, -1.0].map(Torque::of::<Nm>);
    let table = path(parts, None).table(&torques, &[2.0, 4.0].map(Ratio::of::<one>)).unwrap();
    assert_eq!(table.rows(), 4);
    assert_eq!(table.numbers("margin").map(|m| m[..2].to_vec()), Some(vec![2.0, 1.0]));
    assert!(table.reason(2).is_some_and(|error| error.to_string().contains("engine_torque = -1")));
}
