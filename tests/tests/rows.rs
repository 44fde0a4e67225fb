//! Every outside reference row through the core; what each call answered is written down, bit for bit, for the other surfaces.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::base::text;
use axlewright::catalogue::{self, ENTRIES};
use axlewright::cooling::{CapTest, Coolant, LeakDown, Mix};
use axlewright::driveline::{Gearbox, TorquePath};
use axlewright::engine::TorqueCurve;
use axlewright::mass::{PartsList, RaisedAxle};
use axlewright::ride::{FullCar, HalfCar, QuarterCar, RoadSurface, VehicleOnRoad};
use axlewright::spring::{AdjustableDamper, BumpStop, Corner, DamperCurve, ProgressiveCoil, Stack};
use axlewright::suspension::{
    DoubleWishbone, LeafAxle, LiveAxle, RollBalance, Strut, TravelRange, WheelPosition, WheelsInRoll,
};
use axlewright::tyre::{Tyre, WheelChange};
use axlewright::units::{
    AbsolutePressure, Acceleration, Angle, AngularVelocity, Energy, Force, Length, LinearStiffness, Mass,
    Ratio, RoadRoughness, RollGradient, Torque, Velocity,
};
use axlewright::{Model, Result as Answer};
use axlewright_tests::FUNCTIONS;
use axlewright_tests::rows::{arguments, entry, number, rows, words};
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

const PROVENANCES: [&str; 6] =
    ["published", "library", "independent script", "definition", "memory", "common practice"];
const KEYS: [&str; 13] = [
    "id",
    "function",
    "model",
    "unit",
    "method",
    "arguments",
    "inputs",
    "expected",
    "tolerance",
    "source",
    "provenance",
    "confidence",
    "note",
];

/// A result of a row.
#[derive(Debug)]
enum Found {
    Number(f64),
    Word(String),
}

type Results = Vec<(&'static str, Found)>;

/// What the row asks: the name of a function, or of a model or unit.
fn subject(row: &Value) -> &str {
    ["function", "model", "unit"].iter().find_map(|key| words(row, key)).unwrap()
}

fn function(row: &Value) -> Answer<Results> {
    let entry = entry(words(row, "function").unwrap());
    let found = (entry.call)(&arguments(row))?;
    assert_eq!(found.len(), entry.results.len());
    Ok(entry.results.iter().copied().zip(found.into_iter().map(Found::Number)).collect())
}

fn unit(row: &Value) -> Answer<Results> {
    let reading = text::read(words(&row["inputs"], "text").unwrap())?;
    assert_eq!(Some(reading.unit.name), words(row, "unit"));
    Ok(vec![("value", Found::Number(reading.si))])
}

macro_rules! results {
    ($from:expr, $($name:ident),+) => {{
        let from = $from;
        vec![$((stringify!($name), Found::Number(from.$name.si()))),+]
    }};
}

fn wheel_position(on: WheelPosition) -> Results {
    let first_joint = Found::Word(on.first_joint.clone());
    let mut results = results!(
        on,
        wheel_x,
        wheel_y,
        wheel_z,
        half_track,
        half_track_change,
        wheelbase_change,
        camber,
        camber_change,
        toe,
        bump_steer,
        caster,
        kingpin_inclination,
        scrub_radius,
        mechanical_trail,
        front_view_centre_y,
        front_view_centre_height,
        roll_centre_height,
        side_view_centre_x,
        side_view_centre_height,
        side_view_angle,
        wheel_path_angle,
        brake_anti_pitch,
        drive_anti_pitch,
        eye_length,
        motion_ratio,
        damper_motion_ratio,
        spring_length,
        spring_force,
        wheel_force,
        wheel_rate,
        spring_used,
        spring_left,
        damper_used,
        damper_left,
        torsion_bar_torque,
        bar_angle,
        bar_motion_ratio,
        upper_joint_angle,
        lower_ball_angle,
        tie_rod_outer_angle,
        tie_rod_inner_angle,
        joint_left
    );
    results.push(("first_joint", first_joint));
    results
}

fn wheels_in_roll(on: WheelsInRoll) -> Results {
    results!(
        on,
        left_travel,
        right_travel,
        left_camber,
        right_camber,
        left_toe,
        right_toe,
        track,
        left_slope,
        right_slope,
        roll_centre_y,
        roll_centre_height
    )
}

fn travel_range(on: TravelRange) -> Results {
    let ends = [("droop_end", &on.droop_end), ("bump_end", &on.bump_end)]
        .map(|(name, word)| (name, Found::Word(word.clone())));
    let mut results = results!(on, droop, bump);
    results.extend(ends);
    results
}

fn model(row: &Value) -> Answer<Results> {
    let document = row["inputs"].to_string();
    let argument = |name: &str| number(&row["arguments"][name]);
    let value = |quantity: f64| vec![("value", Found::Number(quantity))];
    let vehicle_on_road =
        |on_road: &dyn Fn(RoadRoughness, Velocity, Length, Length) -> Answer<VehicleOnRoad>| {
            let wave = |name| Length::from_si(argument(name));
            let (roughness, speed) =
                (RoadRoughness::from_si(argument("roughness")), Velocity::from_si(argument("speed")));
            on_road(roughness, speed, wave("shortest_wave"), wave("longest_wave")).map(|on| {
                let comfort = Found::Word(on.comfort.clone());
                let mut results = results!(
                    on,
                    body_acceleration,
                    seat_acceleration,
                    weighted_acceleration,
                    front_suspension_travel,
                    rear_suspension_travel,
                    front_tyre_load_variation,
                    rear_tyre_load_variation,
                    front_tyre_load_share,
                    rear_tyre_load_share
                );
                results.push(("comfort", comfort));
                results
            })
        };
    match (words(row, "model").unwrap(), words(row, "method")) {
        ("tyre.Tyre", method) => {
            let tyre = Tyre::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("dimensions") => tyre.dimensions().map(|on| {
                    results!(
                        on,
                        section_width,
                        section_height,
                        rim_diameter,
                        free_diameter,
                        free_radius,
                        free_circumference,
                        free_turns
                    )
                }),
                Some("rolling") => tyre
                    .rolling(Length::from_si(argument("tread_worn")))
                    .map(|on| results!(on, rolling_radius, rolling_circumference, rolling_turns)),
                Some("single_load") => tyre.single_load().map(|on| value(on.si())),
                Some("dual_load") => tyre.dual_load().map(|on| value(on.si())),
                Some("rated_speed") => tyre.rated_speed().map(|on| value(on.si())),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("tyre.WheelChange", method) => {
            let change = WheelChange::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("findings") => change.findings().map(|on| {
                    let mut results = results!(
                        on,
                        inner_change,
                        inner_left,
                        outer_change,
                        outer_left,
                        arch_change,
                        arch_left,
                        flange_change,
                        track_change,
                        scrub_change,
                        height_change,
                        speedometer_error
                    );
                    for (name, verdict) in [
                        ("inner_verdict", on.inner_verdict),
                        ("outer_verdict", on.outer_verdict),
                        ("arch_verdict", on.arch_verdict),
                    ] {
                        results.push((name, Found::Word(verdict.word().to_owned())));
                    }
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("engine.TorqueCurve", method) => {
            let curve = TorqueCurve::from_text(&document)?;
            let speed = || AngularVelocity::from_si(argument("engine_speed"));
            let share = || Ratio::from_si(argument("share_of_peak"));
            match method {
                None => Ok(vec![]),
                Some("torque") => curve.torque(speed()).map(|on| value(on.si())),
                Some("power") => curve.power(speed()).map(|on| value(on.si())),
                Some("peaks") => curve
                    .peaks()
                    .map(|on| results!(on, peak_torque, peak_torque_speed, peak_power, peak_power_speed)),
                Some("torque_band") => {
                    curve.torque_band(share()).map(|on| results!(on, lowest_speed, highest_speed))
                }
                Some("power_band") => {
                    curve.power_band(share()).map(|on| results!(on, lowest_speed, highest_speed))
                }
                Some(other) => panic!("no method {other}"),
            }
        }
        ("cooling.CapTest", method) => {
            let cap = CapTest::from_text(&document)?;
            let station_pressure = || AbsolutePressure::from_si(argument("station_pressure"));
            match method {
                None => Ok(vec![]),
                Some("findings") => cap.findings().map(|on| {
                    let mut results =
                        results!(on, holding_margin, opening_margin, component_margin, vacuum_margin);
                    for (name, verdict) in [
                        ("holding_verdict", on.holding_verdict),
                        ("opening_verdict", on.opening_verdict),
                        ("component_verdict", on.component_verdict),
                        ("vacuum_verdict", on.vacuum_verdict),
                    ] {
                        results.push((name, Found::Word(verdict.word().to_owned())));
                    }
                    results
                }),
                Some("boiling_temperature") => {
                    cap.boiling_temperature(station_pressure()).map(|on| value(on.si()))
                }
                Some("boiling_loss") => cap.boiling_loss(station_pressure()).map(|on| value(on.si())),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("cooling.Mix", method) => {
            let mix = Mix::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("fresh_fill") => mix.fresh_fill().map(|on| {
                    let mut results = results!(
                        on,
                        mass_fraction,
                        concentrate_share,
                        concentrate_volume,
                        water_volume,
                        freezing_temperature,
                        boiling_temperature,
                        margin,
                        growth
                    );
                    results.push(("verdict", Found::Word(on.verdict.word().to_owned())));
                    results
                }),
                Some("exchange") => mix.exchange().map(|on| {
                    results!(
                        on,
                        present_mass_fraction,
                        mass_fraction,
                        drained_volume,
                        concentrate_volume,
                        water_volume
                    )
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("cooling.LeakDown", method) => {
            let test = LeakDown::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("findings") => test.findings().map(|on| {
                    let mut results =
                        results!(on, tight_pressure, loss, greatest_loss, margin, leaked_air, leaked_coolant);
                    results.push(("verdict", Found::Word(on.verdict.word().to_owned())));
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("cooling.Coolant", method) => {
            let coolant = Coolant::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("margin") => coolant.margin().map(|on| {
                    let mut results =
                        results!(on, absolute_pressure, mass_fraction, boiling_temperature, margin);
                    results.push(("verdict", Found::Word(on.verdict.word().to_owned())));
                    results
                }),
                Some("freezing_temperature") => coolant.freezing_temperature().map(|on| value(on.si())),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("ride.QuarterCar", method) => {
            let car = QuarterCar::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("modes") => car.modes().map(|on| {
                    results!(
                        on,
                        body_undamped_frequency,
                        hop_undamped_frequency,
                        body_frequency,
                        body_damping_ratio,
                        hop_frequency,
                        hop_damping_ratio
                    )
                }),
                Some("on_road") => {
                    let roughness = RoadRoughness::from_si(argument("roughness"));
                    let speed = Velocity::from_si(argument("speed"));
                    let wave = |name| Length::from_si(argument(name));
                    car.on_road(roughness, speed, wave("shortest_wave"), wave("longest_wave")).map(|on| {
                        let comfort = Found::Word(on.comfort.clone());
                        let mut results = results!(
                            on,
                            body_acceleration,
                            weighted_acceleration,
                            suspension_travel,
                            tyre_load_variation,
                            tyre_load_share
                        );
                        results.push(("comfort", comfort));
                        results
                    })
                }
                Some(other) => panic!("no method {other}"),
            }
        }
        ("ride.HalfCar", method) => {
            let car = HalfCar::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("bounce_and_pitch") => car.bounce_and_pitch().map(|on| {
                    results!(
                        on,
                        bounce_frequency,
                        bounce_centre,
                        pitch_frequency,
                        pitch_centre,
                        dynamic_index
                    )
                }),
                Some("flat_ride") => car
                    .flat_ride(Velocity::from_si(argument("speed")))
                    .map(|on| results!(on, front_frequency, rear_frequency, frequency_ratio, cycles)),
                Some("on_road") => vehicle_on_road(&|roughness, speed, shortest, longest| {
                    car.on_road(roughness, speed, shortest, longest)
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("ride.FullCar", method) => {
            let car = FullCar::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("on_road") => vehicle_on_road(&|roughness, speed, shortest, longest| {
                    car.on_road(roughness, speed, shortest, longest)
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("ride.RoadSurface", method) => {
            let road = RoadSurface::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("roughness") => road.roughness().map(|on| value(on.si())),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("spring.Corner", method) => {
            let corner = Corner::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("at_ride_height") => corner.at_ride_height().map(|on| {
                    let words = [
                        ("droop_verdict", on.droop_verdict.word()),
                        ("ends_first", &on.ends_first),
                        ("bump_verdict", on.bump_verdict.word()),
                        ("bind_verdict", on.bind_verdict.word()),
                        ("captive_verdict", on.captive_verdict.word()),
                    ]
                    .map(|(name, word)| (name, Found::Word(word.to_owned())));
                    let mut results = results!(
                        on,
                        spring_force,
                        spring_length,
                        sag,
                        bump_left,
                        bind_margin,
                        captive_margin,
                        wheel_rate,
                        frequency
                    );
                    results.extend(words);
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("spring.Stack", method) => {
            let stack = Stack::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("under_load") => stack.under_load(Force::from_si(argument("load"))).map(|on| {
                    let mut results = results!(on, length, deflection, rate);
                    results.push(("closed", Found::Number(on.closed as f64)));
                    results
                }),
                Some("at_length") => stack.at_length(Length::from_si(argument("length"))).map(|on| {
                    let mut results = results!(on, load, deflection, rate);
                    results.push(("closed", Found::Number(on.closed as f64)));
                    results
                }),
                Some("closes_first") => stack.closes_first().map(|on| {
                    let spring = Found::Word(on.spring.clone());
                    let mut results = results!(on, load, deflection, length, rate_below, rate_above);
                    results.push(("spring", spring));
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("suspension.DoubleWishbone", method) => {
            let model = DoubleWishbone::from_text(&document)?;
            let length = |name: &str| Length::from_si(argument(name));
            match method {
                None => Ok(vec![]),
                Some("at") => model.at(length("travel"), length("rack_travel")).map(wheel_position),
                Some("in_roll") => {
                    let roll = Angle::from_si(argument("roll"));
                    model.in_roll(length("heave"), roll, length("rack_travel")).map(wheels_in_roll)
                }
                Some("travel_range") => model.travel_range(length("rack_travel")).map(travel_range),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("suspension.Strut", method) => {
            let model = Strut::from_text(&document)?;
            let length = |name: &str| Length::from_si(argument(name));
            match method {
                None => Ok(vec![]),
                Some("at") => model.at(length("travel"), length("rack_travel")).map(wheel_position),
                Some("in_roll") => {
                    let roll = Angle::from_si(argument("roll"));
                    model.in_roll(length("heave"), roll, length("rack_travel")).map(wheels_in_roll)
                }
                Some("travel_range") => model.travel_range(length("rack_travel")).map(travel_range),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("suspension.LeafAxle", method) => {
            let axle = LeafAxle::from_text(&document)?;
            let heave = || Length::from_si(argument("heave"));
            let roll = || Angle::from_si(argument("roll"));
            match method {
                None => Ok(vec![]),
                Some("at") => axle.at(heave(), roll()).map(|on| {
                    results!(
                        on,
                        left_wheel_x,
                        left_wheel_y,
                        left_wheel_z,
                        right_wheel_x,
                        right_wheel_y,
                        right_wheel_z,
                        wheelbase_change,
                        axle_steer,
                        roll_steer,
                        lateral_shift,
                        pinion_angle,
                        pinion_angle_change,
                        roll_centre_height,
                        side_view_centre_x,
                        side_view_centre_height,
                        side_view_angle,
                        brake_anti_pitch,
                        drive_anti_pitch,
                        wheel_rate,
                        roll_stiffness,
                        wind_up_rate,
                        left_spring_load,
                        right_spring_load,
                        left_leaf_stress,
                        right_leaf_stress,
                        left_shackle_angle,
                        right_shackle_angle,
                        left_shackle_opening,
                        right_shackle_opening,
                        left_eye_length,
                        left_motion_ratio,
                        left_roll_motion_ratio,
                        left_coil_length,
                        left_coil_force,
                        left_coil_used,
                        left_coil_remaining,
                        left_wheel_force,
                        right_eye_length,
                        right_motion_ratio,
                        right_roll_motion_ratio,
                        right_coil_length,
                        right_coil_force,
                        right_coil_used,
                        right_coil_remaining,
                        right_wheel_force,
                        bar_angle,
                        bar_twist,
                        bar_motion_ratio,
                        damper_motion_ratio,
                        left_damper_used,
                        left_damper_remaining,
                        right_damper_used,
                        right_damper_remaining,
                        left_bump_remaining,
                        right_bump_remaining
                    )
                }),
                Some("wind_up") => axle.wind_up(heave(), Torque::from_si(argument("torque"))).map(|on| {
                    results!(
                        on,
                        wind_up_angle,
                        pinion_angle,
                        wind_up_rate,
                        wheelbase_change,
                        spring_load,
                        leaf_stress
                    )
                }),
                Some("travel_range") => axle.travel_range(roll()).map(|on| {
                    let ends = [("droop_end", &on.droop_end), ("bump_end", &on.bump_end)]
                        .map(|(name, word)| (name, Found::Word(word.clone())));
                    let mut results = results!(on, droop, bump);
                    results.extend(ends);
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("suspension.LiveAxle", method) => {
            let axle = LiveAxle::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("at") => {
                    let (heave, roll) =
                        (Length::from_si(argument("heave")), Angle::from_si(argument("roll")));
                    axle.at(heave, roll).map(|on| {
                        let words = [
                            ("greatest_lean_joint", &on.greatest_lean_joint),
                            ("first_joint", &on.first_joint),
                            ("bind_link", &on.bind_link),
                        ]
                        .map(|(name, word)| (name, Found::Word(word.clone())));
                        let counts = [("freedoms", on.freedoms), ("redundant", on.redundant)]
                            .map(|(name, count)| (name, Found::Number(count as f64)));
                        let mut results = results!(
                            on,
                            axle_x,
                            lateral_shift,
                            axle_z,
                            wheelbase_change,
                            axle_steer,
                            heave_steer,
                            roll_steer,
                            axle_pitch,
                            pinion_angle,
                            pinion_angle_change,
                            pinion_x,
                            pinion_y,
                            pinion_z,
                            roll_centre_height,
                            roll_axis_angle,
                            lateral_rod_height,
                            side_view_centre_x,
                            side_view_centre_height,
                            side_view_angle,
                            drive_anti_pitch,
                            brake_anti_pitch,
                            left_wheel_x,
                            left_wheel_y,
                            left_wheel_z,
                            left_camber,
                            left_toe,
                            left_eye_length,
                            left_motion_ratio,
                            left_roll_motion_ratio,
                            left_spring_length,
                            left_spring_force,
                            left_spring_used,
                            left_spring_remaining,
                            left_damper_used,
                            left_damper_remaining,
                            left_wheel_force,
                            left_wheel_rate,
                            right_wheel_x,
                            right_wheel_y,
                            right_wheel_z,
                            right_camber,
                            right_toe,
                            right_eye_length,
                            right_motion_ratio,
                            right_roll_motion_ratio,
                            right_spring_length,
                            right_spring_force,
                            right_spring_used,
                            right_spring_remaining,
                            right_damper_used,
                            right_damper_remaining,
                            right_wheel_force,
                            right_wheel_rate,
                            roll_stiffness,
                            bar_angle,
                            bar_twist,
                            bar_motion_ratio,
                            greatest_lean,
                            joint_left,
                            lateral_rod_stretch,
                            bind_misfit,
                            bind_force,
                            bind_moment,
                            bind_roll_stiffness
                        );
                        results.extend(words);
                        results.extend(counts);
                        results
                    })
                }
                Some("travel_range") => axle.travel_range(Angle::from_si(argument("roll"))).map(|on| {
                    let ends = [("droop_end", &on.droop_end), ("bump_end", &on.bump_end)]
                        .map(|(name, word)| (name, Found::Word(word.clone())));
                    let mut results = results!(on, droop, bump);
                    results.extend(ends);
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("driveline.Gearbox", method) => {
            let gearbox = Gearbox::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("largest_gap") => gearbox.largest_gap().map(|on| {
                    let mut results = results!(on, step, engine_speed_after_shift);
                    results.push(("gear_before", Found::Number(on.gear_before as f64)));
                    results.push(("gear_after", Found::Number(on.gear_after as f64)));
                    results
                }),
                Some("for_cruise") => {
                    let road_speed = Velocity::from_si(argument("road_speed"));
                    let engine_speed = AngularVelocity::from_si(argument("engine_speed"));
                    gearbox.for_cruise(road_speed, engine_speed).map(|on| {
                        let mut results = results!(on, engine_speed_in_gear, final_drive, final_drive_in_top);
                        results.push(("gear", Found::Number(on.gear as f64)));
                        results
                    })
                }
                Some(other) => panic!("no method {other}"),
            }
        }
        ("driveline.TorquePath", method) => {
            let path = TorquePath::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("pull") => path.pull().map(|on| {
                    let bound = Found::Word(on.bound.clone());
                    let mut results = results!(on, wheel_torque, tractive_force);
                    results.push(("bound", bound));
                    results
                }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("mass.RaisedAxle", method) => {
            let weighing = RaisedAxle::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("centre") => weighing
                    .centre()
                    .map(|on| results!(on, height, standard_uncertainty, greatest_error, angle, angle_error)),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("mass.PartsList", method) => {
            let list = PartsList::from_text(&document)?;
            let of = match method {
                None => return Ok(vec![]),
                Some("total") => list.total(),
                Some("swapped") => list.swapped(),
                Some("change") => list.change(),
                Some(other) => panic!("no method {other}"),
            };
            of.map(|on| results!(on, mass, x, y, z, roll_inertia, pitch_inertia, yaw_inertia))
        }
        ("spring.BumpStop", method) => {
            let stop = BumpStop::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("at") => stop
                    .at(Length::from_si(argument("compression")))
                    .map(|on| results!(on, force, rate, energy)),
                Some("compression_for_energy") => {
                    stop.compression_for_energy(Energy::from_si(argument("energy"))).map(|on| value(on.si()))
                }
                Some(other) => panic!("no method {other}"),
            }
        }
        ("spring.ProgressiveCoil", method) => {
            let coil = ProgressiveCoil::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("at") => coil
                    .at(Length::from_si(argument("deflection")))
                    .map(|on| results!(on, force, rate, energy)),
                Some("deflection_for_force") => {
                    coil.deflection_for_force(Force::from_si(argument("force"))).map(|on| value(on.si()))
                }
                Some(other) => panic!("no method {other}"),
            }
        }
        ("spring.DamperCurve", method) => {
            let damper = DamperCurve::from_text(&document)?;
            let velocity = || Velocity::from_si(argument("velocity"));
            match method {
                None => Ok(vec![]),
                Some("force") => damper.force(velocity()).map(|on| value(on.si())),
                Some("damping") => damper.damping(velocity()).map(|on| {
                    results!(on, bump_damping, rebound_damping, mean_damping, rebound_share, cycle_damping)
                }),
                Some("ratio") => damper
                    .ratio(
                        velocity(),
                        Ratio::from_si(argument("damper_motion_ratio")),
                        LinearStiffness::from_si(argument("tangent_rate")),
                        Mass::from_si(argument("sprung_mass")),
                    )
                    .map(|on| value(on.si())),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("spring.AdjustableDamper", method) => {
            let damper = AdjustableDamper::from_text(&document)?;
            match method {
                None => Ok(vec![]),
                Some("choice") => damper
                    .choice(
                        Velocity::from_si(argument("velocity")),
                        Ratio::from_si(argument("wanted_ratio")),
                        Ratio::from_si(argument("rebound_share")),
                        Ratio::from_si(argument("damper_motion_ratio")),
                        LinearStiffness::from_si(argument("tangent_rate")),
                        Mass::from_si(argument("sprung_mass")),
                    )
                    .map(|on| {
                        let words = [
                            ("bump_setting", Found::Word(on.bump_setting.clone())),
                            ("rebound_setting", Found::Word(on.rebound_setting.clone())),
                        ];
                        let mut results = results!(
                            on,
                            bump_damping,
                            rebound_damping,
                            achieved_ratio,
                            achieved_rebound_share,
                            ratio_error
                        );
                        results.extend(words);
                        results
                    }),
                Some(other) => panic!("no method {other}"),
            }
        }
        ("suspension.RollBalance", method) => {
            let vehicle = RollBalance::from_text(&document)?;
            let gradient = || RollGradient::from_si(argument("roll_gradient"));
            let share = || Ratio::from_si(argument("front_share"));
            match method {
                None => Ok(vec![]),
                Some("balance") => vehicle.balance().map(|on| {
                    results!(
                        on,
                        roll_gradient,
                        front_suspension_stiffness,
                        rear_suspension_stiffness,
                        front_share,
                        front_weight_share,
                        share_over_weight
                    )
                }),
                Some("in_turn") => {
                    vehicle.in_turn(Acceleration::from_si(argument("lateral_acceleration"))).map(|on| {
                        results!(
                            on,
                            roll_angle,
                            front_unsprung_transfer,
                            front_geometric_transfer,
                            front_elastic_transfer,
                            front_load_transfer,
                            rear_unsprung_transfer,
                            rear_geometric_transfer,
                            rear_elastic_transfer,
                            rear_load_transfer,
                            front_share,
                            front_inner_load,
                            rear_inner_load
                        )
                    })
                }
                Some("bars_for") => vehicle.bars_for(gradient(), share()).map(|on| {
                    results!(on, front_bar_rate, rear_bar_rate, front_bar_stiffness, rear_bar_stiffness)
                }),
                Some("front_bar_for_gradient") => {
                    vehicle.front_bar_for_gradient(gradient()).map(|on| value(on.si()))
                }
                Some("rear_bar_for_gradient") => {
                    vehicle.rear_bar_for_gradient(gradient()).map(|on| value(on.si()))
                }
                Some("front_bar_for_share") => vehicle.front_bar_for_share(share()).map(|on| value(on.si())),
                Some("rear_bar_for_share") => vehicle.rear_bar_for_share(share()).map(|on| value(on.si())),
                Some(other) => panic!("no method {other}"),
            }
        }
        (other, _) => panic!("no model {other}"),
    }
}

fn run(row: &Value) -> Answer<Results> {
    match (row.get("function"), row.get("model")) {
        (Some(_), _) => function(row),
        (_, Some(_)) => model(row),
        _ => unit(row),
    }
}

/// Why the row is not met, or the greatest error over its tolerance.
fn judge(row: &Value, answer: &Answer<Results>) -> Result<f64, String> {
    let expected = row["expected"].as_object().unwrap();
    let results = match (expected.contains_key("error"), answer) {
        (true, Ok(results)) => return Err(format!("gives {results:?} and must be refused")),
        (true, Err(error)) => {
            let sentence = error.to_string();
            let argument = expected.get("argument").map_or("", |name| name.as_str().unwrap());
            return if sentence.contains(argument) && !sentence.is_empty() {
                Ok(0.0)
            } else {
                Err(format!("{sentence:?} does not name {argument}"))
            };
        }
        (false, Err(error)) => return Err(error.to_string()),
        (false, Ok(results)) => results,
    };
    let mut worst = 0.0_f64;
    for (name, wanted) in expected {
        let found = results.iter().find_map(|(known, found)| (known == name).then_some(found));
        match (found, wanted) {
            (Some(Found::Word(word)), Value::String(wanted)) if word == wanted => {}
            (Some(Found::Number(found)), Value::Number(wanted)) => {
                let wanted = wanted.as_f64().unwrap();
                let tolerance = &row["tolerance"];
                let bound = match (&tolerance["abs"], &tolerance["rel"]) {
                    (Value::Number(abs), Value::Null) => abs.as_f64().unwrap(),
                    (Value::Null, Value::Number(rel)) => rel.as_f64().unwrap() * wanted.abs(),
                    _ => panic!("tolerance {tolerance}"),
                };
                let error = (found - wanted).abs();
                if error > bound || error.is_nan() {
                    return Err(format!(
                        "{name} = {found}, expected {wanted}: off by {error:e}, allowed {bound:e}"
                    ));
                }
                if error > 0.0 {
                    worst = worst.max(error / bound);
                }
            }
            other => return Err(format!("{name}: {other:?}")),
        }
    }
    Ok(worst)
}

/// What was put in, in coherent SI: numbers of a function's arguments, quantities of a model's document.
fn given(row: &Value) -> BTreeMap<String, f64> {
    fn collect(name: &str, value: &Value, into: &mut BTreeMap<String, f64>) {
        let below = |key: &str| if name.is_empty() { key.to_owned() } else { format!("{name}.{key}") };
        match value {
            Value::Object(fields) => fields.iter().for_each(|(key, value)| collect(&below(key), value, into)),
            Value::String(written) => {
                if let Ok(reading) = text::read(written) {
                    into.insert(name.to_owned(), reading.si);
                }
            }
            Value::Number(number) => {
                into.insert(name.to_owned(), number.as_f64().unwrap());
            }
            _ => {}
        }
    }
    let mut found = BTreeMap::new();
    if row.get("function").is_some() {
        let inputs = row["inputs"].as_object().unwrap();
        found.extend(inputs.iter().map(|(name, input)| (name.clone(), number(input))));
    } else {
        collect("", &row["inputs"], &mut found);
        collect("", &row["arguments"], &mut found);
    }
    found
}

/// A row as it went, for the book: each number that was expected, what the core found, and how far off that is.
fn measured(row: &Value, answer: &Answer<Results>) -> Value {
    // A number that the row's tolerance does not tell from zero has no relative error.
    let nothing = row["tolerance"]["abs"].as_f64().unwrap_or(0.0);
    let numbers = answer.iter().flatten().filter_map(|(name, found)| match found {
        Found::Number(found) => Some((*name, *found, row["expected"].get(*name)?.as_f64()?)),
        Found::Word(_) => None,
    });
    let numbers: Vec<Value> = numbers
        .map(|(name, found, wanted)| {
            let error = (found - wanted).abs();
            json!({ "result": name, "expected": wanted, "found": found, "error": error,
                "relative": (wanted.abs() > nothing).then_some(error / wanted.abs()) })
        })
        .collect();
    let refused = row["expected"].get("error").is_some();
    json!({ "id": row["id"], "of": if row.get("unit").is_some() { "units" } else { subject(row) },
        "method": row["method"], "provenance": row["provenance"], "confidence": row["confidence"],
        "source": row["source"], "refused": refused, "numbers": numbers,
        "given": if refused { BTreeMap::new() } else { given(row) } })
}

fn gates(row: &Value) -> bool {
    words(row, "confidence") != Some("low")
}

#[derive(Default)]
struct Tally<'a> {
    rows: usize,
    worst: f64,
    provenances: BTreeMap<&'a str, usize>,
}

#[test]
fn the_core_meets_every_row() {
    let rows = rows();
    let (mut tallies, mut written, mut missed) = (BTreeMap::<&str, Tally<'_>>::new(), Map::new(), Vec::new());
    let mut book = Vec::new();
    for row in &rows {
        let id = words(row, "id").unwrap();
        let answer = run(row);
        book.push(measured(row, &answer));
        written.insert(
            id.into(),
            match &answer {
                Err(error) => json!({ "error": error.to_string() }),
                Ok(results) => results
                    .iter()
                    .map(|(name, found)| {
                        let said = match found {
                            Found::Number(value) => value.to_bits().to_string(),
                            Found::Word(word) => word.clone(),
                        };
                        ((*name).to_owned(), Value::String(said))
                    })
                    .collect(),
            },
        );
        let tally =
            tallies.entry(if row.get("unit").is_some() { "units" } else { subject(row) }).or_default();
        tally.rows += 1;
        *tally.provenances.entry(words(row, "provenance").unwrap()).or_default() += 1;
        match judge(row, &answer) {
            Ok(share) if gates(row) => tally.worst = tally.worst.max(share),
            Ok(share) => println!("low confidence, met with {share:.2} of its tolerance: {id}"),
            Err(why) if gates(row) => missed.push(format!("{id} ({}): {why}", subject(row))),
            Err(why) => println!("low confidence, not met: {id}: {why}"),
        }
    }
    println!("{:<46} {:>4}  error/tolerance  provenance", "", "rows");
    for (name, tally) in &tallies {
        let counts: Vec<String> =
            tally.provenances.iter().map(|(name, count)| format!("{count} {name}")).collect();
        println!("{name:<46} {:>4}  {:>15.3}  {}", tally.rows, tally.worst, counts.join(", "));
    }
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join("rows-rust.json");
    std::fs::write(&file, serde_json::to_string_pretty(&Value::Object(written)).unwrap()).unwrap();
    let measured = Path::new(env!("CARGO_TARGET_TMPDIR")).join("rows-measured.json");
    std::fs::write(&measured, serde_json::to_string_pretty(&book).unwrap()).unwrap();
    println!("{} rows; what the core answered stands in {}", rows.len(), file.display());
    assert!(missed.is_empty(), "{} of {} rows not met:\n{}", missed.len(), rows.len(), missed.join("\n"));
}

/// The arguments of every row of a function, refused ones included.
fn arguments_of(name: &str) -> Vec<Vec<f64>> {
    rows().iter().filter(|row| words(row, "function") == Some(name)).map(arguments).collect()
}

fn bits(values: &[f64]) -> Vec<u64> {
    values.iter().map(|value| value.to_bits()).collect()
}

/// The catalogue answers every row as the typed function does, to the last bit: one by one, all at once, and one repeated.
#[test]
fn the_catalogue_answers_every_row_as_the_function() {
    assert_eq!(ENTRIES.len(), FUNCTIONS.len());
    let mut compared = 0;
    for function in FUNCTIONS {
        let entry = catalogue::entry(function.name).unwrap();
        let names =
            |slots: &[axlewright::base::work::Slot]| slots.iter().map(|on| on.name).collect::<Vec<_>>();
        assert_eq!(names(entry.inputs), function.parameters, "{}", entry.path);
        let arguments = arguments_of(function.name);
        let (n, outs) = (arguments.len(), entry.outputs.len());
        let columns: Vec<Vec<f64>> =
            (0..entry.inputs.len()).map(|i| arguments.iter().map(|row| row[i]).collect()).collect();
        let columns: Vec<&[f64]> = columns.iter().map(Vec::as_slice).collect();
        let mut found = vec![vec![7.0; n]; outs];
        let mut refused = BTreeMap::new();
        let mut outputs: Vec<&mut [f64]> = found.iter_mut().map(Vec::as_mut_slice).collect();
        (entry.batch)(&columns, &mut outputs, &mut |row, error| {
            refused.insert(row, error.to_string());
        })
        .unwrap();
        for (row, arguments) in arguments.iter().enumerate() {
            let of_batch: Vec<f64> = found.iter().map(|column| column[row]).collect();
            let mut one = vec![7.0; outs];
            let answer = (entry.call)(arguments, &mut one);
            let constants: Vec<&[f64]> = arguments.iter().map(std::slice::from_ref).collect();
            let mut repeated = vec![vec![7.0; 3]; outs];
            let mut outputs: Vec<&mut [f64]> = repeated.iter_mut().map(Vec::as_mut_slice).collect();
            let mut again = 0;
            (entry.batch)(&constants, &mut outputs, &mut |_, _| again += 1).unwrap();
            match (function.call)(arguments) {
                Ok(wanted) => {
                    assert_eq!(answer, Ok(()), "{}", entry.path);
                    assert_eq!(bits(&one), bits(&wanted), "{}", entry.path);
                    assert_eq!(bits(&of_batch), bits(&wanted), "{}", entry.path);
                    for (column, wanted) in repeated.iter().zip(&wanted) {
                        assert_eq!(bits(column), bits(&[*wanted; 3]), "{}", entry.path);
                    }
                    assert!(!refused.contains_key(&row) && again == 0, "{}", entry.path);
                    let work = catalogue::work(entry.path, arguments).unwrap();
                    assert_eq!(bits(work.results()), bits(&wanted), "{}", entry.path);
                }
                Err(error) => {
                    assert_eq!(answer.unwrap_err().to_string(), error.to_string(), "{}", entry.path);
                    assert_eq!(one, vec![7.0; outs], "{}", entry.path);
                    assert!(of_batch.iter().all(|value| value.is_nan()), "{}", entry.path);
                    assert_eq!((refused.get(&row), again), (Some(&error.to_string()), 3), "{}", entry.path);
                }
            }
            compared += 1;
        }
    }
    println!("{compared} rows of {} functions", ENTRIES.len());
    assert!(compared > ENTRIES.len());
}

/// Every argument's symbol stands in its formula, so that the numbers can be put in; and a single result has one, too, but
/// where a standard is cited in place of a formula.
#[test]
fn every_formula_takes_its_numbers() {
    let texts = |entry: &axlewright::base::work::Entry| vec!["7 u".to_owned(); entry.inputs.len()];
    let without: Vec<&str> =
        ENTRIES.iter().filter(|on| on.put_in(&texts(on)).is_none()).map(|on| on.path).collect();
    assert_eq!(without, [""; 0]);
    let nameless: Vec<&str> = ENTRIES
        .iter()
        .filter(|on| on.outputs.len() == 1 && on.outputs[0].symbol.is_empty())
        .map(|on| on.path)
        .collect();
    assert_eq!(nameless, ["fluid.water_boiling_temperature", "fluid.water_saturation_pressure"]);
}

#[test]
fn every_function_has_an_outside_row_and_a_refusal() {
    let rows = rows();
    for entry in FUNCTIONS {
        let of = || rows.iter().filter(|row| words(row, "function") == Some(entry.name) && gates(row));
        let answered = of().filter(|row| row["expected"].get("error").is_none()).count();
        assert!(answered > 0, "{} has no outside row that gates", entry.name);
        assert!(of().count() > answered, "{} has no row that must be refused", entry.name);
    }
}

#[test]
fn rows_say_what_they_are() {
    let mut ids = BTreeSet::new();
    for row in rows() {
        let id = words(&row, "id").unwrap();
        assert!(ids.insert(id.to_owned()), "{id} twice");
        for key in row.as_object().unwrap().keys() {
            assert!(KEYS.contains(&key.as_str()), "{id}: {key}");
        }
        assert_eq!(
            ["function", "model", "unit"].iter().filter(|key| row.get(**key).is_some()).count(),
            1,
            "{id}"
        );
        assert!(PROVENANCES.contains(&words(&row, "provenance").unwrap()), "{id}");
        assert!(["high", "medium", "low"].contains(&words(&row, "confidence").unwrap()), "{id}");
        let source = words(&row, "source").unwrap();
        assert!(source.len() > 5, "{id}");
        // What was typed from memory is not published, and what our own code gave is no library's.
        for (provenance, is_not) in [("published", "from memory"), ("library", "(own code)")] {
            assert!(words(&row, "provenance") != Some(provenance) || !source.contains(is_not), "{id}");
        }
        let expected = row["expected"].as_object().unwrap();
        assert!(!expected.is_empty(), "{id}");
        assert_eq!(expected.contains_key("error"), row.get("tolerance").is_none(), "{id}");
    }
    assert!(!ids.is_empty());
}

/// A sheet of the examples is the model that a row puts in.
#[test]
fn the_sheets_answer_as_their_rows() {
    let rows = rows();
    macro_rules! same {
        ($model:ident, $sheet:literal, $id:literal) => {{
            let sheet = include_str!(concat!("../../examples/sheets/", $sheet, ".toml"));
            let row = rows.iter().find(|row| words(row, "id") == Some($id)).unwrap();
            let from_row = $model::from_text(&row["inputs"].to_string()).unwrap();
            assert_eq!($model::from_text(sheet).unwrap(), from_row);
        }};
    }
    same!(Corner, "dunlin_front_spring", "corner-van-bump-stop");
    same!(Stack, "wagtail_stack", "stack-roadster-first");
    same!(LeakDown, "wagtail_leak_down", "leak-down-roadster-meets");
    same!(Mix, "dunlin_mix", "mix-van-raise");
    same!(WheelChange, "dunlin_wheel_change", "wheel-change-van");
    same!(Strut, "wagtail_rear_strut", "strut-roadster-+40");
    same!(LiveAxle, "dunlin_rear_axle", "live-axle-dunlin-+0-+50");
    same!(Gearbox, "dray_gearbox", "gearbox-hauler-gap");
}

#[test]
fn a_row_that_is_wrong_is_not_met() {
    let mut changed = 0;
    for mut row in rows() {
        let answer = run(&row);
        if row["expected"].get("error").is_some() {
            row["expected"] = json!({ "value": 1.0 });
            assert!(answer.is_ok() || judge(&row, &answer).is_err(), "{row}");
            continue;
        }
        for name in row["expected"].as_object().unwrap().keys().cloned().collect::<Vec<_>>() {
            let Some(wanted) = row["expected"][&name].as_f64() else { continue };
            let (abs, rel) = (row["tolerance"]["abs"].as_f64(), row["tolerance"]["rel"].as_f64());
            let away = 2.5 * abs.unwrap_or_else(|| rel.unwrap() * wanted.abs()) + 1e-9 * wanted.abs() + 1e-30;
            let before = row["expected"][&name].take();
            row["expected"][&name] = json!(wanted + away);
            let up = judge(&row, &answer).is_err();
            row["expected"][&name] = json!(wanted - away);
            let down = judge(&row, &answer).is_err();
            // A low-confidence row may be off by more than its tolerance to one side.
            assert!(up && down || !gates(&row) && (up || down), "{row}");
            row["expected"][&name] = before;
            changed += 1;
        }
    }
    assert!(changed > 0);
}
