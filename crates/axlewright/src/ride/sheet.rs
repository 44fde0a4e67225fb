use super::{OnRoad, QuarterCar, RoadClass, RoadSurface};
use crate::Result;
use crate::base::document::Value;
use crate::base::section::{
    Finding, Line, Margin, Rule, Section, by, choice, derived, fields, gives, line, model, rule, same, step,
    words,
};
use crate::units::{
    Acceleration, Damping, Length, LinearStiffness, Mass, Quantity, Ratio, RoadRoughness, Velocity,
};

words!(RoadClass { A = "a", B = "b", C = "c", D = "d", E = "e", F = "f", G = "g", H = "h" });
fields!(RoadSurface { road_class });
fields!(QuarterCar { sprung_mass, unsprung_mass, wheel_rate, wheel_damping, tyre_rate, tyre_damping });
fields!(WheelOnRoad {
    roughness,
    road_speed,
    sprung_mass,
    unsprung_mass,
    wheel_rate,
    wheel_damping,
    tyre_rate,
});

/// Waves between which ISO 8608 gives its classes (from memory), in metres.
const WAVES: [f64; 2] = [0.35, 91.0];

/// One wheel on a road.
struct WheelOnRoad {
    roughness: RoadRoughness,
    road_speed: Velocity,
    sprung_mass: Value<Mass>,
    unsprung_mass: Value<Mass>,
    wheel_rate: Value<LinearStiffness>,
    wheel_damping: Value<Damping>,
    tyre_rate: Value<LinearStiffness>,
}

impl WheelOnRoad {
    fn ride(&self) -> Result<OnRoad> {
        let wheel = QuarterCar {
            sprung_mass: self.sprung_mass.clone(),
            unsprung_mass: self.unsprung_mass.clone(),
            wheel_rate: self.wheel_rate.clone(),
            wheel_damping: self.wheel_damping.clone(),
            tyre_rate: self.tyre_rate.clone(),
            tyre_damping: None,
        };
        let [shortest, longest] = WAVES.map(Length::from_si);
        wheel.on_road(self.roughness, self.road_speed, shortest, longest)
    }
}

const RIDE: Rule = rule! {
    "axle" WheelOnRoad::ride, WheelOnRoad
    takes {
        roughness = "use.roughness", road_speed = "use.road_speed", sprung_mass,
        unsprung_mass = "axle.wheel_unsprung_mass", wheel_rate, wheel_damping = "axle.damper.at_wheel",
        tyre_rate = "axle.tyre.rate",
    }
    gives OnRoad { weighted_acceleration, tyre_load_share, suspension_travel }
    says "ride.QuarterCar on the road, waves from 0.35 m to 91 m",
        "ISO 8608:2016 and ISO 8041-1:2017 (Wk), from memory; quadrature of the response"
};
const ROUGHNESS: Rule = rule! {
    "use" RoadSurface::roughness, RoadSurface
    takes { road_class = "use.road" }
    says "G of the class, see ride.RoadSurface", "ISO 8608:2016, annex C, from memory"
};

const LINES: [Line; 14] = [
    choice("use.road", RoadClass::WORDS, "class of the road by ISO 8608; c is a worn country road"),
    derived("use.roughness", RoadRoughness::KIND, "of the road: density of its height at 0.1 cycles a metre")
        .by(&[by(&ROUGHNESS)]),
    line("use.road_speed", Velocity::KIND, "at which that road is driven")
        .within(0.01, 200.0, "common practice, no source: vehicles drive between 10 mm/s and 200 m/s")
        .by(&[same(&["use.cruise_speed"], "nothing else is written").usual()]),
    derived(
        "axle.ride_acceleration",
        Acceleration::KIND,
        "root mean square of the body over the wheel, weighted with Wk",
    )
    .by(&[gives(&RIDE, "weighted_acceleration")]),
    derived(
        "axle.tyre_load_share",
        Ratio::KIND,
        "root mean square of the tyre's load about its static one, over that",
    )
    .by(&[gives(&RIDE, "tyre_load_share")]),
    derived("axle.road_travel", Length::KIND, "root mean square of the wheel's travel on that road")
        .by(&[gives(&RIDE, "suspension_travel")]),
    derived(
        "vehicle.flat_ride_cycles",
        Ratio::KIND,
        "cycles of the front after a bump at the cruise speed until both ends move together",
    )
    .by(&[step(
        "ride.flat_ride_cycles",
        &["front.ride_frequency", "rear.ride_frequency", "vehicle.wheelbase", "use.cruise_speed"],
    )]),
    line("wanted.ride_acceleration", Acceleration::KIND, "greatest weighted acceleration").above(
        0.0,
        1000.0,
        "common practice, no source: nobody bears 100 g",
    ),
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
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.road_holding",
            question: "Does the tyre keep enough of its load on that road?",
            margin: Margin::AtMost { value: "axle.tyre_load_share", most: "wanted.tyre_load_share" },
            wanted: "wanted.tyre_load_margin",
            rests_on: &[],
            about: &[],
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
            about: &[],
            caution: "",
        },
    ],
    models: &[
        model! {
            "axle.quarter_car" "ride.QuarterCar" QuarterCar in "axle"
            {
                sprung_mass, unsprung_mass = "axle.wheel_unsprung_mass", wheel_rate,
                wheel_damping = "axle.damper.at_wheel", tyre_rate = "axle.tyre.rate",
            }
        },
        model! { "use.road" "ride.RoadSurface" RoadSurface in "use" { road_class = "use.road" } },
    ],
    ..Section::EMPTY
};
