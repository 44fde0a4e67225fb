//! Bad input is refused by name.

use super::*;

#[test]
fn what_cannot_be_is_refused_by_name() {
    let far = |place: usize, to: [f64; 2]| {
        let mut points = ARCHED;
        points[place] = to;
        axle(points)
    };
    let mut bare = axle(ARCHED);
    (bare.spring, bare.leaf.leaves) = (None, None);
    let mut driven = axle(ARCHED);
    driven.braking = None;
    let mut inboard = axle(ARCHED);
    inboard.braking.as_mut().unwrap().place = Some(BrakePlace::Inboard);
    let mut right = axle(ARCHED);
    right.leaf.seat.y = length(-0.52);
    let mut twice = helped(Mount::Body);
    twice.damper = axle(ARCHED).damper;
    let mut short = helped(Mount::Body);
    short.coil_over.as_mut().unwrap().axle_eye = short.coil_over.as_ref().unwrap().body_eye.clone();
    let mut locked = helped(Mount::Axle);
    locked.anti_roll_bar.as_mut().unwrap().lever_pivot = place([0.184, 0.47, 0.3]);
    let mut bent = helped(Mount::Axle);
    bent.anti_roll_bar.as_mut().unwrap().lever_end = place([-0.02, 0.4, 0.4101]);
    let mut light = axle(ARCHED);
    light.leaf.load = Value::new(Force::from_si(0.0));
    for (wrong, key) in [
        (far(0, [f64::NAN, 0.5]), "leaf.fixed_eye: x = NaN"),
        (far(3, [0.7, 0.475]), "leaf.seat: it must lie between"),
        (far(0, [0.07, 0.48]), "leaf.fixed_eye: from the seat"),
        (far(2, ARCHED[1]), "leaf.shackle_pivot: it is nearer"),
        (far(2, [-0.81, 0.57]), "leaf.shackle_pivot: the shackle lines up"),
        (bare, "spring.rate: missing"),
        (driven, "drive_share: it needs `braking`"),
        (inboard, "braking.place: a live axle carries its brakes"),
        (right, "leaf.seat: a left spring"),
        (twice, "coil_over.damper: there is a `damper` beside it"),
        (short, "coil_over: its eyes are nearer"),
        (locked, "anti_roll_bar: its drop link lines up"),
        (bent, "anti_roll_bar.lever_end: it is nearer"),
        (light, "leaf: load = 0 N"),
    ] {
        let message = wrong.check().unwrap_err().to_string();
        assert!(message.starts_with(key), "{message}");
        assert!(wrong.at(metres(0.0), radians(0.0)).is_err() && wrong.travel_range(radians(0.0)).is_err());
    }
}

#[test]
fn where_a_drop_link_does_not_reach_it_says_so() {
    let mut model = helped(Mount::Body);
    model.anti_roll_bar.as_mut().unwrap().lever_pivot = place([-0.02, 0.4, 0.53]);
    let message = model.at(metres(0.1), radians(0.0)).unwrap_err().to_string();
    assert!(message.contains("drop link of the anti_roll_bar"), "{message}");
    let points = model.points(&[metres(0.1)], &[radians(0.0)]).unwrap();
    assert_eq!(points.reason(0).unwrap().to_string(), message);
}

#[test]
fn beyond_its_range_the_refusal_says_what_ends_it_and_where() {
    let mut seen = Vec::new();
    let mut short = ARCHED;
    short[2] = [-0.69, 0.61];
    for points in [ARCHED, FLAT, short] {
        let model = axle(points);
        for roll in [-0.05, 0.0, 0.05] {
            let range = model.travel_range(radians(roll)).unwrap();
            for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                assert!(model.at(metres(limit * (1.0 - 1e-6)), radians(roll)).is_ok());
                let error = model.at(metres(limit * (1.0 + 1e-6)), radians(roll)).unwrap_err();
                let message = error.to_string();
                let crate::Error::NoSolution(why) = error else { panic!("{message}") };
                let nearest = (why.lower - limit).abs().min((why.upper - limit).abs());
                assert!(message.contains(&end) && nearest < 1e-6, "{message}");
                seen.push(end);
            }
        }
    }
    assert!(seen.iter().any(|end| end == "shackle"), "{seen:?}");
}

#[test]
fn a_table_keeps_the_reason_of_a_refused_row_and_equals_single_calls() {
    let model = axle(ARCHED);
    let table = model.table(&[-0.03, 0.05, 0.9].map(metres), &[-0.02, 0.0].map(radians)).unwrap();
    assert_eq!(table.rows(), 6);
    assert!(table.reason(4).is_some() && table.numbers("axle_steer").unwrap()[4].is_nan());
    let one = model.at(metres(0.05), radians(-0.02)).unwrap();
    for (name, value) in [
        ("axle_steer", one.axle_steer.si()),
        ("wheel_rate", one.wheel_rate.si()),
        ("right_bump_remaining", one.right_bump_remaining.si()),
    ] {
        assert_eq!(table.numbers(name).unwrap()[2].to_bits(), value.to_bits(), "{name}");
    }
}
