//! Bad input is refused by name.

use super::*;

#[test]
fn no_link_has_the_name_of_another_part() {
    let named = |name: &str, fitted: Fitted| {
        let mut model = three(FOUR);
        model.links[1].name = name.to_owned();
        model.links[1].fitted = fitted;
        model
    };
    let drawn = LiveAxle { anti_roll_bar: Stated::Given(bar(Mount::Body)), ..watt(FOUR, Mount::Body, 0.32) };
    for model in [&drawn, &three(FOUR)] {
        let table = model.points(&[metres(0.0)], &[rad(0.0)]).unwrap();
        let own = ["lower left", "lower right", "upper"];
        let parts = (0..table.rows()).filter_map(|row| table.word("part", row));
        assert!(parts.filter(|part| !own.contains(part)).all(|part| OTHER_PARTS.contains(&part)));
    }
    for name in OTHER_PARTS.into_iter().chain(["lower left", "lower right"]) {
        let message = named(name, Fitted::Single).check().unwrap_err().to_string();
        assert_eq!(
            message,
            format!("links[1]: name: {name} is the name of another part: give the link one of its own")
        );
    }
    for name in ["wheel", "coil-over"] {
        let message = named(name, Fitted::Pair).check().unwrap_err().to_string();
        assert!(message.starts_with(&format!("links[1]: name: {name} left is the name")), "{message}");
        assert!(named(name, Fitted::Single).check().is_ok());
    }
    assert!(named("axle", Fitted::Pair).check().is_ok());
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    let with = |change: &dyn Fn(&mut LiveAxle)| {
        let mut model = four(FOUR);
        change(&mut model);
        model
    };
    let nan = point([f64::NAN, 0.0, 0.0]);
    for (wrong, key) in [
        (with(&|on| on.links[1].axle = nan.clone()), "links[1].axle: x = NaN"),
        (with(&|on| on.links[1].name = "lower".to_owned()), "links[1]: name: two links are called lower"),
        (with(&|on| on.links[0].name = " ".to_owned()), "links[0]: name is empty"),
        (with(&|on| on.links[0].axle = point([0.0, -0.4, 0.2])), "links[0]: axle: a pair"),
        (
            with(&|on| on.links[0].body_bush = Some(Value::new(LinearStiffness::from_si(0.5)))),
            "links[0].body_bush: stiffness = 0.5",
        ),
        (
            with(&|on| {
                on.links.pop();
            }),
            "links: 2 links",
        ),
        (
            with(&|on| {
                on.links[1].fitted = Fitted::Single;
                on.lateral_rod = Stated::Unknown;
            }),
            "links: three links do not hold the axle sideways",
        ),
        (with(&|on| on.watt = watt(FOUR, Mount::Axle, 0.3).watt), "watt: a lateral rod holds"),
        (with(&|on| on.links[0].body = on.links[0].axle.clone()), "lower left: it is shorter than 1 mm"),
        (
            with(&|on| on.coil_over = Stated::Given(AxleCoilOver { axle_eye: nan.clone(), ..coil_over() })),
            "coil_over.axle_eye: x = NaN",
        ),
        (
            with(&|on| {
                on.anti_roll_bar =
                    Stated::Given(AxleBar { lever_end: point([0.27, 0.4, 0.45]), ..bar(Mount::Body) })
            }),
            "anti_roll_bar.lever_end",
        ),
        (
            angled(PARALLEL),
            "links: all links lie in parallel planes along the vehicle and nothing holds the axle sideways",
        ),
        (
            with(&|on| {
                on.links[1].body = point([0.56, 0.42, 0.3]);
                on.links[1].axle = point([0.02, 0.46, 0.235]);
            }),
            "links: nothing keeps the axle from turning about its own length",
        ),
        (
            LiveAxle { lateral_rod: Stated::Given(rod([0.3, 0.4, 0.3], [-0.2, 0.4, 0.3])), ..four(PARALLEL) },
            "links: all links lie in parallel planes",
        ),
    ] {
        let message = wrong.check().unwrap_err().to_string();
        assert!(message.starts_with(key), "{message}");
        assert!(wrong.at(metres(0.0), rad(0.0)).is_err() && wrong.travel_range(rad(0.0)).is_err());
    }
}

#[test]
fn beyond_its_range_the_refusal_says_which_link_and_how_far() {
    for model in
        [angled(ANGLED), three(FOUR), watt(FOUR, Mount::Body, 0.32), four(FOUR), bushed(four(FOUR), [5e6; 3])]
    {
        for roll in [0.0, 0.05] {
            let range = model.travel_range(rad(roll)).unwrap();
            assert!(range.droop.si() < -0.15 && range.bump.si() > 0.15, "{range:?}");
            for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                assert!(model.at(metres(limit * (1.0 - 1e-3)), rad(roll)).is_ok(), "{limit}");
                let error = model.at(metres(limit * (1.0 + 1e-3)), rad(roll)).unwrap_err();
                let message = error.to_string();
                let crate::Error::NoSolution(why) = error else { panic!("{message}") };
                let nearest = (why.lower - limit).abs().min((why.upper - limit).abs());
                assert!(
                    message.contains(&format!("cannot be reached: {end} is over-extended")) && nearest < 1e-6,
                    "{message}"
                );
            }
        }
    }
    for (roll, side) in [(-0.95, "-54.4"), (0.95, "54.4")] {
        let message = four(FOUR).at(metres(0.0), rad(roll)).unwrap_err().to_string();
        assert!(
            message.starts_with(&format!("roll = {side}")) && message.contains("over-extended"),
            "{message}"
        );
    }
    // A drop link that is too short for the travel.
    let mut model = four(FOUR);
    model.anti_roll_bar =
        Stated::Given(AxleBar { lever_pivot: point([0.09, 0.4, 0.45]), ..bar(Mount::Body) });
    let message = model.at(metres(0.14), rad(0.0)).unwrap_err().to_string();
    assert!(
        message.contains("drop link of the anti_roll_bar") && message.contains("on the way there, at "),
        "{message}"
    );
}
