use super::{QuarterCar, RoadClass, RoadSurface};
use crate::Result;
use crate::base::document::Value;
use crate::base::section::{
    Finding, Line, Margin, Section, Several, Step, choice, derived, first, line, one_of, own, step,
};
use crate::units::{
    Acceleration, Damping, Length, LinearStiffness, Mass, Quantity, Ratio, RoadRoughness, Velocity,
};

const CLASSES: [RoadClass; 8] = [
    RoadClass::A,
    RoadClass::B,
    RoadClass::C,
    RoadClass::D,
    RoadClass::E,
    RoadClass::F,
    RoadClass::G,
    RoadClass::H,
];

fn roughness(of: &[f64]) -> Result<f64> {
    let road_class = CLASSES.get(of[0] as usize).copied().unwrap_or(RoadClass::H);
    Ok(RoadSurface { road_class }.roughness()?.si())
}

/// Waves between which ISO 8608 gives its classes (from memory).
const WAVES: [f64; 2] = [0.35, 91.0];

fn on_road(of: &[f64], results: &mut [f64]) -> Result<()> {
    let corner = QuarterCar {
        sprung_mass: Value::new(Mass::from_si(of[2])),
        unsprung_mass: Value::new(Mass::from_si(of[3] / 2.0)),
        wheel_rate: Value::new(LinearStiffness::from_si(of[4])),
        wheel_damping: Value::new(Damping::from_si(of[5])),
        tyre_rate: Value::new(LinearStiffness::from_si(of[6])),
        tyre_damping: None,
    };
    let [shortest, longest] = WAVES.map(Length::from_si);
    let on = corner.on_road(RoadRoughness::from_si(of[0]), Velocity::from_si(of[1]), shortest, longest)?;
    let found = [on.weighted_acceleration.si(), on.tyre_load_share.si(), on.suspension_travel.si()];
    results.iter_mut().zip(found).for_each(|(result, found)| *result = found);
    Ok(())
}

const fn corner(place: usize) -> Step {
    one_of(
        place,
        Several {
            formula: "ride.QuarterCar on the road, waves from 0.35 m to 91 m",
            source: "ISO 8608:2016 and ISO 8041-1:2017 (Wk), from memory; quadrature of the response",
            call: on_road,
        },
        &[
            "use.roughness",
            "use.road_speed",
            "axle.sprung_mass",
            "axle.unsprung_mass",
            "axle.wheel_rate",
            "axle.damper.at_wheel",
            "axle.tyre.rate",
        ],
    )
}

const LINES: [Line; 14] = [
    choice(
        "use.road",
        &["a", "b", "c", "d", "e", "f", "g", "h"],
        "class of the road by ISO 8608; c is a worn country road",
    ),
    derived("use.roughness", RoadRoughness::KIND, "of the road: density of its height at 0.1 cycles a metre")
        .by(&[own(
            "G of the class, see ride.RoadSurface",
            "ISO 8608:2016, annex C, from memory",
            roughness,
            &["use.road"],
        )]),
    line("use.road_speed", Velocity::KIND, "at which that road is driven")
        .within(0.01, 200.0, "common practice, no source: vehicles drive between 10 mm/s and 200 m/s")
        .by(&[own("the cruise speed", "nothing else is written", first, &["use.cruise_speed"]).usual()]),
    derived(
        "axle.ride_acceleration",
        Acceleration::KIND,
        "root mean square of the body over the wheel, weighted with Wk",
    )
    .by(&[corner(0)]),
    derived(
        "axle.tyre_load_share",
        Ratio::KIND,
        "root mean square of the tyre's load about its static one, over that",
    )
    .by(&[corner(1)]),
    derived("axle.road_travel", Length::KIND, "root mean square of the wheel's travel on that road")
        .by(&[corner(2)]),
    derived(
        "vehicle.flat_ride_cycles",
        Ratio::KIND,
        "cycles of the front after a bump at the cruise speed until both ends move together",
    )
    .by(&[step(
        "ride.flat_ride_cycles",
        &["front.ride_frequency", "rear.ride_frequency", "vehicle.wheelbase", "use.cruise_speed"],
    )]),
    line("wanted.ride_acceleration", Acceleration::KIND, "greatest weighted acceleration")
        .above(0.0, 1000.0, "common practice, no source: nobody bears 100 g")
        .or(0.63, "ISO 2631-1:1997, C.2.3, from memory: up to 0.63 m/s² is at most a little uncomfortable"),
    line("wanted.ride_margin", Acceleration::KIND, "how far below that it is wanted")
        .within(0.0, 1000.0, "definition: a margin is not negative")
        .or(0.0, "nothing beyond the limit itself"),
    line(
        "wanted.tyre_load_share",
        Ratio::KIND,
        "greatest share of the tyre's static load by which it varies, root mean square",
    )
    .above(0.0, 1.0, "definition: beyond it the wheel hops")
    .or(1.0 / 3.0, "common practice, no source: the threefold comes now and then, and lifts the wheel"),
    line("wanted.tyre_load_margin", Ratio::KIND, "how far below that it is wanted")
        .within(0.0, 1.0, "definition: a margin is not negative")
        .or(0.05, "common practice, no source: roads are rougher than their class"),
    line("wanted.flat_ride_low", Ratio::KIND, "least cycles until both ends move together")
        .within(0.0, 100.0, "definition: cycles are counted from the bump on")
        .or(0.75, "common practice, no source: sooner, and the rear is far quicker than the front"),
    line("wanted.flat_ride_high", Ratio::KIND, "most cycles until both ends move together")
        .within(0.0, 100.0, "definition: cycles are counted from the bump on")
        .or(
            1.75,
            "common practice after Olley, from memory: about one to one and a half, a quarter beside it",
        ),
    line("wanted.flat_ride_margin", Ratio::KIND, "how far inside its band that is wanted")
        .within(0.0, 100.0, "definition: a margin is not negative")
        .or(0.0, "nothing beyond the band itself"),
];

const HOLD: &str = "A tyre whose load varies holds the road less: brake and steer with that in mind, and try it where there is room; local codes and \
                    licensed practice come first.";

/// What the sheet says of ride.
pub const SHEET: Section = Section {
    lines: &LINES,
    findings: &[
        Finding {
            path: "axle.comfort",
            question: "Does the body shake no more over this wheel than is wanted?",
            margin: Margin::AtMost { value: "axle.ride_acceleration", most: "wanted.ride_acceleration" },
            wanted: "wanted.ride_margin",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "axle.road_holding",
            question: "Does the tyre keep enough of its load on that road?",
            margin: Margin::AtMost { value: "axle.tyre_load_share", most: "wanted.tyre_load_share" },
            wanted: "wanted.tyre_load_margin",
            rests_on: &[],
            caution: HOLD,
        },
        Finding {
            path: "vehicle.flat_ride",
            question: "Do both ends move together soon after a bump at the cruise speed?",
            margin: Margin::Band {
                value: "vehicle.flat_ride_cycles",
                low: "wanted.flat_ride_low",
                high: "wanted.flat_ride_high",
            },
            wanted: "wanted.flat_ride_margin",
            rests_on: &[],
            caution: "",
        },
    ],
};
