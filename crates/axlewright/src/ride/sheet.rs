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
    derived(
        "use.roughness",
        RoadRoughness::KIND,
        "roughness of the road: density of its height at 0.1 cycles a metre",
    )
    .by(&[by(&ROUGHNESS)]),
    line("use.road_speed", Velocity::KIND, "speed on that road")
        .within(0.01, 200.0, "plausibility limit: vehicles drive between 10 mm/s and 200 m/s")
        .by(&[same(&["use.cruise_speed"], "no other speed is written").usual()]),
    derived(
        "axle.ride_acceleration",
        Acceleration::KIND,
        "RMS acceleration of the body over the wheel, weighted with Wk",
    )
    .by(&[gives(&RIDE, "weighted_acceleration")]),
    derived("axle.tyre_load_share", Ratio::KIND, "RMS variation of the tyre load over the static load")
        .by(&[gives(&RIDE, "tyre_load_share")]),
    derived("axle.road_travel", Length::KIND, "RMS of the wheel's travel on that road")
        .by(&[gives(&RIDE, "suspension_travel")]),
    derived(
        "vehicle.flat_ride_cycles",
        Ratio::KIND,
        "cycles of the front from a bump at the cruise speed until both ends move together",
    )
    .by(&[step(
        "ride.flat_ride_cycles",
        &["front.ride_frequency", "rear.ride_frequency", "vehicle.wheelbase", "use.cruise_speed"],
    )]),
    line("wanted.ride_acceleration", Acceleration::KIND, "largest weighted acceleration").above(
        0.0,
        1000.0,
        "plausibility limit: nobody bears 100 g",
    ),
    line("wanted.ride_margin", Acceleration::KIND, "wanted margin of the body acceleration below its limit")
        .margin(1000.0)
        .or(0.0, "no margin beyond the limit itself"),
    line(
        "wanted.tyre_load_share",
        Ratio::KIND,
        "highest RMS variation of the tyre load over the static load",
    )
    .above(0.0, 1.0, "definition: above 1 the wheel hops")
    .or(1.0 / 3.0, "common practice, no source: the threefold comes now and then, and lifts the wheel"),
    line("wanted.tyre_load_margin", Ratio::KIND, "wanted margin of the tyre load variation below its limit")
        .margin(1.0)
        .or(0.05, "common practice, no source: roads are rougher than their class"),
    line("wanted.flat_ride_low", Ratio::KIND, "fewest cycles until both ends move together")
        .within(0.0, 100.0, "definition: cycles are counted from the bump on")
        .or(0.75, "common practice, no source: sooner, and the rear is far quicker than the front"),
    line("wanted.flat_ride_high", Ratio::KIND, "most cycles until both ends move together")
        .within(0.0, 100.0, "definition: cycles are counted from the bump on")
        .or(
            1.75,
            "common practice after Olley, from memory: about one to one and a half, a quarter beside it",
        ),
    line("wanted.flat_ride_margin", Ratio::KIND, "wanted margin of the cycles inside their band")
        .margin(100.0)
        .or(0.0, "no margin beyond the band itself"),
];

const HOLD: &str = "A tyre whose load varies holds the road less: brake and steer with that in mind, and try it where there is room; local codes and \
                    licensed practice come first.";

/// Lines and findings of the sheet on ride.
pub const SHEET: Section = Section {
    lines: &LINES,
    findings: &[
        Finding {
            path: "axle.comfort",
            question: "Does the body over this wheel stay within the wanted acceleration?",
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
            takes {
                sprung_mass, unsprung_mass = "axle.wheel_unsprung_mass", wheel_rate,
                wheel_damping = "axle.damper.at_wheel", tyre_rate = "axle.tyre.rate",
            }
        },
        model! { "use.road" "ride.RoadSurface" RoadSurface in "use" takes { road_class = "use.road" } },
    ],
    ..Section::EMPTY
};
