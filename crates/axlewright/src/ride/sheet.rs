use super::{OnRoad, QuarterCar, RoadClass, RoadSurface};
use crate::Result;
use crate::base::document::Value;
use crate::base::section::{
    Finding, Line, Margin, Rule, Section, by, choice, derived, fields, gives, line, model, rule, same, step,
    words,
};
use crate::units::{
    Acceleration, Damping, Length, LinearStiffness, Mass, Quantity, Ratio, RoadRoughness, STANDARD_GRAVITY,
    Velocity,
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

fields!(LighterOnRoad { wheel, side_travel });
fields!(SidesTold { side_travel, margin });
fields!(RideTold { side_travel, margin });

/// Waves between which ISO 8608 gives its classes (from memory), in metres.
const WAVES: [f64; 2] = [0.35, 91.0];

/// The lighter wheel of an axle on a road.
struct LighterOnRoad {
    wheel: WheelOnRoad,
    /// Travel by which it stands further in droop than the mean of both; nothing where that is not known.
    side_travel: Option<Length>,
}

impl LighterOnRoad {
    fn ride(&self) -> Result<OnRoad> {
        let WheelOnRoad { sprung_mass, wheel_rate, .. } = &self.wheel;
        let travel = self.side_travel.map_or(0.0, Length::si);
        let lighter = sprung_mass.quantity.si() - wheel_rate.quantity.si() * travel / STANDARD_GRAVITY;
        let sprung_mass = Value::new(Mass::from_si(lighter));
        WheelOnRoad { sprung_mass, ..self.wheel.clone() }.ride()
    }
}

/// Margin that is wanted, and the difference of both sides, which must be told.
struct SidesTold {
    #[allow(dead_code, reason = "it must be there")]
    side_travel: Length,
    margin: Ratio,
}

/// Margin of the acceleration that is wanted, and the difference of both sides, which must be told.
struct RideTold {
    #[allow(dead_code, reason = "it must be there")]
    side_travel: Length,
    margin: Acceleration,
}

impl RideTold {
    fn margin(&self) -> Result<Acceleration> {
        Ok(self.margin)
    }
}

impl SidesTold {
    fn margin(&self) -> Result<Ratio> {
        Ok(self.margin)
    }
}

/// One wheel on a road.
#[derive(Clone)]
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
const LIGHTER_RIDE: Rule = rule! {
    "axle" LighterOnRoad::ride, LighterOnRoad
    takes {
        wheel.roughness = "use.roughness", wheel.road_speed = "use.road_speed", wheel.sprung_mass = "axle.sprung_mass",
        wheel.unsprung_mass = "axle.wheel_unsprung_mass", wheel.wheel_rate = "axle.wheel_rate",
        wheel.wheel_damping = "axle.damper.at_wheel", wheel.tyre_rate = "axle.tyre.rate", side_travel,
    }
    gives OnRoad { weighted_acceleration, tyre_load_share }
    says "as ride.QuarterCar on the road, of the wheel with the sprung mass m - k z_s / g: the lighter one",
        "ISO 8608:2016 and ISO 8041-1:2017 (Wk), from memory; quadrature of the response; balance of the vertical forces"
};
const SIDES_TOLD: Rule = rule! {
    "axle" SidesTold::margin, SidesTold
    takes { side_travel, margin = "wanted.tyre_load_margin" }
    says "the wanted margin, where the difference of both sides is told", "definition: what is wanted of an axle is wanted of both its wheels"
};
const RIDE_TOLD: Rule = rule! {
    "axle" RideTold::margin, RideTold
    takes { side_travel, margin = "wanted.ride_margin" }
    says "the wanted margin, where the difference of both sides is told", "definition: what is wanted of an axle is wanted of both its wheels"
};
const ROUGHNESS: Rule = rule! {
    "use" RoadSurface::roughness, RoadSurface
    takes { road_class = "use.road" }
    says "G of the class, see ride.RoadSurface", "ISO 8608:2016, annex C, from memory"
};

const LINES: [Line; 18] = [
    choice("use.road", RoadClass::WORDS, "class of the road by ISO 8608; c is a worn country road").how("a smooth, b good, c worn country road, d poor"),
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
    derived("axle.tyre_load_share", Ratio::KIND, "RMS variation of the tyre load over the static load").in_units("percent", "percent")
        .by(&[gives(&RIDE, "tyre_load_share")]),
    derived(
        "axle.lighter_tyre_load_share",
        Ratio::KIND,
        "RMS variation of the tyre load over the static load, of the lighter wheel of the axle",
    ).in_units("percent", "percent")
    .by(&[gives(&LIGHTER_RIDE, "tyre_load_share")]),
    derived(
        "axle.lighter_ride_acceleration",
        Acceleration::KIND,
        "RMS acceleration of the body over the lighter wheel of the axle, weighted with Wk",
    )
    .by(&[gives(&LIGHTER_RIDE, "weighted_acceleration")]),
    derived(
        "axle.wanted_ride",
        Acceleration::KIND,
        "margin that is wanted below the largest acceleration, where the difference of both wheels is told",
    )
    .by(&[by(&RIDE_TOLD)])
    .or(
        f64::INFINITY,
        "write the scales of both wheels, heavier_wheel or side_travel of the axle: the body over the lighter wheel shakes more, and until then comfort is no better than tight",
    ),
    derived(
        "axle.wanted_tyre_load",
        Ratio::KIND,
        "margin that is wanted below the highest variation, where the difference of both wheels is told",
    )
    .by(&[by(&SIDES_TOLD)])
    .or(
        f64::INFINITY,
        "write the scales of both wheels, heavier_wheel or side_travel of the axle: the lighter wheel holds the road less, and until then road holding is no better than tight",
    ),
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
    ).in_units("percent", "percent")
    .above(0.0, 1.0, "definition: above 1 the wheel hops")
    .or(1.0 / 3.0, "common practice, no source: the threefold comes now and then, and lifts the wheel"),
    line("wanted.tyre_load_margin", Ratio::KIND, "wanted margin of the tyre load variation below its limit").in_units("percent", "percent")
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
            margin: Margin::AtMost {
                value: "axle.lighter_ride_acceleration",
                most: "wanted.ride_acceleration",
            },
            wanted: "axle.wanted_ride",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.road_holding",
            question: "Does the tyre keep enough of its load on that road?",
            margin: Margin::AtMost { value: "axle.lighter_tyre_load_share", most: "wanted.tyre_load_share" },
            wanted: "axle.wanted_tyre_load",
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
