use super::double_wishbone_lines as wishbone;
use super::strut_lines as strut;
use super::{RollAxle, RollBalance};
use crate::Result;
use crate::base::document::Value;
use crate::base::section::{
    Finding, Line, Margin, Section, Several, Step, choice, derived, difference, first, joined, line, one_of,
    own, pick, sum,
};
use crate::units::{Angle, Length, LinearStiffness, Quantity, Ratio, RollGradient, RotationalStiffness};

const fn angle(path: &'static str, meaning: &'static str) -> Line {
    line(path, Angle::KIND, meaning).within(
        -1.6,
        1.6,
        "common practice, no source: no such angle is greater than a right one",
    )
}

const fn eyes(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        100.0,
        "common practice, no source: parts are no longer than 100 m",
    )
}

const fn height(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(0.0, 100.0, "definition: above the ground")
}

const fn rack(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(
        0.0,
        10.0,
        "definition: to either side; common practice, no source: no rack moves 10 m",
    )
}

const fn share(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(-1.0, 1.0, "definition: a difference of shares")
}

const DEFINED: &str = "definition: lengths along the coil-over, between its eyes";

/// What a linkage does at ride height, whichever it is; another kind of linkage is another step.
const AT_RIDE: &[Line] = &[
    angle("axle.bump_steer", "change of toe of one wheel over 25 mm of bump, positive where it toes in")
        .first_hand()
        .by(&[wishbone::at_ride(1), strut::at_ride(1)]),
    angle("axle.camber_change", "change of camber over 25 mm of bump")
        .first_hand()
        .by(&[wishbone::at_ride(0), strut::at_ride(0)]),
    derived("axle.caster", Angle::KIND, "positive with the upper end of the steering axis to the rear")
        .by(&[wishbone::at_ride(2), strut::at_ride(2)]),
    derived(
        "axle.kingpin_inclination",
        Angle::KIND,
        "positive with the upper end of the steering axis inboard",
    )
    .by(&[wishbone::at_ride(3), strut::at_ride(3)]),
    derived("axle.scrub_radius", Length::KIND, "from the steering axis outboard to the contact point")
        .by(&[wishbone::at_ride(4), strut::at_ride(4)]),
    derived("axle.mechanical_trail", Length::KIND, "from the contact point forward to the steering axis")
        .by(&[wishbone::at_ride(5), strut::at_ride(5)]),
    line("axle.roll_centre_height", Length::KIND, "above the ground, at ride height; negative below it")
        .within(
            -10.0,
            10.0,
            "common practice, no source: roll centres that matter lie within 10 m of the ground",
        )
        .first_hand()
        .by(&[wishbone::at_ride(6), strut::at_ride(6)]),
    derived(
        "axle.side_view_angle",
        Angle::KIND,
        "forward lean of the contact point's path in bump, brake held",
    )
    .by(&[wishbone::at_ride(7), strut::at_ride(7)]),
    derived("axle.linkage_motion_ratio", Ratio::KIND, "of the coil-over, as the linkage has it")
        .by(&[wishbone::of_coil_over(0), strut::of_leg(0)]),
    derived(
        "axle.linkage_ratio_gradient",
        crate::units::RatioPerLength::KIND,
        "change of that motion ratio along the travel of the wheel",
    )
    .by(&[wishbone::of_coil_over(1), strut::of_leg(1)]),
    derived("axle.linkage_eye_length", Length::KIND, "between the eyes of the coil-over at ride height")
        .by(&[wishbone::of_coil_over(2), strut::of_leg(2)]),
];

/// Where the travel ends, and what the joints have left there.
const ENDS: &[Line] = &[
    eyes("axle.damper.open_length", "of the damper between its eyes, fully open"),
    eyes("axle.damper.closed_length", "of the damper between its eyes, fully closed"),
    derived(
        "axle.spring.seat_offset",
        Length::KIND,
        "between the eyes of the coil-over less between its seats",
    )
    .by(&[own("L_e - L", DEFINED, difference, &["axle.linkage_eye_length", "axle.spring.ride_length"])]),
    derived(
        "axle.spring.shortest_between_eyes",
        Length::KIND,
        "between the eyes where the spring has its least gaps",
    )
    .by(&[own(
        "L_c + s + seat offset",
        DEFINED,
        sum,
        &["axle.spring.shortest", "axle.spring.seat_offset"],
    )]),
    derived(
        "axle.damper.droop_end",
        Length::KIND,
        "travel of the wheel at which the damper is open, negative in droop",
    )
    .by(&[wishbone::of_damper(0), strut::of_damper(0)]),
    derived("axle.damper.bump_end", Length::KIND, "travel of the wheel at which the damper is closed")
        .by(&[wishbone::of_damper(1), strut::of_damper(1)]),
    derived(
        "axle.spring.bump_end",
        Length::KIND,
        "travel of the wheel at which the spring has its least gaps",
    )
    .by(&[wishbone::of_spring(), strut::of_spring()]),
    derived("axle.linkage_droop", Length::KIND, "travel in droop at which the linkage itself locks")
        .by(&[wishbone::of_range(0), strut::of_range(0)]),
    derived("axle.linkage_bump", Length::KIND, "travel in bump at which the linkage itself locks")
        .by(&[wishbone::of_range(1), strut::of_range(1)]),
    line("axle.linkage_left", Length::KIND, "of the linkage's own travel where something else ends it")
        .within(-100.0, 100.0, "common practice, no source: no wheel travels 100 m")
        .first_hand()
        .by(&[own(
            "the lesser of what is left in bump and in droop",
            "definition: travel left is the least of what ends it",
            least_left,
            &["axle.linkage_bump", "axle.bump_left", "axle.linkage_droop", "axle.droop_left"],
        )]),
    rack("front.rack_travel", "of the rack to either side, from its middle to lock"),
    rack("rear.rack_travel", "of the rear rack to either side, where the rear wheels are steered")
        .or(0.0, "a rear axle that is not steered"),
    angle("axle.joint_left", "of the lean of the first joint at its limit, over travel and lock")
        .first_hand()
        .by(&[wishbone::of_joints(), strut::of_joints()]),
];

/// Braking on the linkage.
const ANTI: &[Line] = &[
    line("axle.brake_share", Ratio::KIND, "of the whole braking force, that the axle has").within(
        0.0,
        1.0,
        "definition: a share",
    ),
    derived(
        "axle.linkage_anti_dive",
        Ratio::KIND,
        "of the linkage, as if it were at the front; outboard brakes",
    )
    .by(&[wishbone::of_braking()]),
    derived("front.anti_dive", Ratio::KIND, "share of the dive of the front that its linkage holds")
        .by(&[own("d", ANTI_PITCH, first, &["front.linkage_anti_dive"])]),
    derived("rear.anti_lift", Ratio::KIND, "share of the lift of the rear that its linkage holds")
        .by(&[own("-d", ANTI_PITCH, negative, &["rear.linkage_anti_dive"])]),
];

const ANTI_PITCH: &str = "see suspension.DoubleWishbone, brake_anti_pitch";

fn negative(of: &[f64]) -> Result<f64> {
    Ok(-of[0])
}

fn least_left(of: &[f64]) -> Result<f64> {
    Ok((of[0] - of[1]).min(of[2] - of[3]))
}

/// Both axles in a turn.
const ROLL: &[Line] = &[
    line("vehicle.centre_of_gravity_height", Length::KIND, "above the ground, loaded as it will be; weighed with one axle raised")
        .above(0.0, 100.0, "definition: above the ground"),
    height("axle.unsprung_height", "of the centre of what moves with the wheels, above the ground").by(&[own(
        "the loaded radius, nearly",
        "common practice, no source: hub, brake and wheel lie about the wheel's centre",
        first,
        &["axle.tyre.loaded_radius"],
    )
    .usual()]),
    height("vehicle.sprung_height", "of the centre of gravity of what the springs carry").by(&[centre(2)]),
    derived("vehicle.sprung_mass", crate::units::Mass::KIND, "what the springs carry").by(&[centre(0)]),
    derived("vehicle.sprung_behind_front_axle", Length::KIND, "distance of its centre of gravity behind the front axle")
        .by(&[centre(1)]),
    choice("axle.wheels", &["independent", "live_axle"], "whether each wheel moves by itself, or both on one axle"),
    line("axle.spring_base", Length::KIND, "of a live axle, between the seats of its springs")
        .above(0.0, 100.0, "common practice, no source: no axle is 100 m wide"),
    derived("axle.roll_base", Length::KIND, "on which the springs work in roll: the track, or the spring base of a live axle")
        .by(&[pick(&["axle.wheels", "axle.track", "axle.spring_base"])]),
    line(
        "axle.anti_roll_bar.rate",
        LinearStiffness::KIND,
        "force at either end of the bar over travel of that end, the other end travelling as far the other way; 0 N/mm where there is none",
    )
    .within(0.0, 1e9, "definition: a rate is not negative"),
    line("axle.anti_roll_bar.motion_ratio", Ratio::KIND, "travel of the bar's end over travel of the wheel, in roll")
        .within(0.01, 3.0, "common practice, no source: above 3 it is a percentage or turned upside down")
        .first_hand()
        .by(&[wishbone::of_bar()]),
    derived("axle.anti_roll_bar.wheel_rate", LinearStiffness::KIND, "of the bar at the wheels, in roll").by(&[own(
        "k r^2; nothing where there is no bar",
        "balance of virtual work",
        bar_at_wheel,
        &["axle.anti_roll_bar.rate", "?axle.anti_roll_bar.motion_ratio"],
    )
    .lacking("a bar needs anti_roll_bar.motion_ratio, or the points of its drop link and lever")]),
    derived("vehicle.roll_gradient", RollGradient::KIND, "roll of the body to the ground over lateral acceleration, tyres included")
        .by(&[balance(0)]),
    derived("front.roll_stiffness", RotationalStiffness::KIND, "of springs and bar of the front axle").by(&[balance(1)]),
    derived("rear.roll_stiffness", RotationalStiffness::KIND, "of springs and bar of the rear axle").by(&[balance(2)]),
    derived("vehicle.front_transfer_share", Ratio::KIND, "of the front axle in the load that moves to the outer wheels")
        .by(&[balance(3)]),
    derived("vehicle.front_share_over_weight", Ratio::KIND, "that share less the front share of the weight: above nothing it tends to understeer at the limit")
        .by(&[balance(4)]),
];

const fn centre(place: usize) -> Step {
    crate::base::section::result(
        place,
        "mass.sprung_centre",
        &[
            "vehicle.mass",
            "vehicle.behind_front_axle",
            "vehicle.centre_of_gravity_height",
            "vehicle.wheelbase",
            "front.unsprung_mass",
            "rear.unsprung_mass",
            "front.unsprung_height",
            "rear.unsprung_height",
        ],
    )
}

const fn balance(place: usize) -> Step {
    one_of(
        place,
        Several {
            formula: "suspension.RollBalance",
            source: "equilibrium of body and axles; Milliken and Milliken (1995), Dixon (1996), from memory",
            call: in_turn,
        },
        &[
            "vehicle.sprung_mass",
            "vehicle.sprung_height",
            "vehicle.sprung_behind_front_axle",
            "vehicle.wheelbase",
            "front.track",
            "front.roll_centre_height",
            "front.unsprung_mass",
            "front.unsprung_height",
            "front.wheel_rate",
            "front.roll_base",
            "front.tyre.rate",
            "front.anti_roll_bar.wheel_rate",
            "rear.track",
            "rear.roll_centre_height",
            "rear.unsprung_mass",
            "rear.unsprung_height",
            "rear.wheel_rate",
            "rear.roll_base",
            "rear.tyre.rate",
            "rear.anti_roll_bar.wheel_rate",
        ],
    )
}

fn bar_at_wheel(of: &[f64]) -> Result<f64> {
    let [rate, motion_ratio] = [of[0], of[1]];
    Ok(if rate == 0.0 { 0.0 } else { rate * motion_ratio * motion_ratio })
}

fn in_turn(of: &[f64], results: &mut [f64]) -> Result<()> {
    fn value<Q: Quantity>(si: f64) -> Value<Q> {
        Value::new(Q::from_si(si))
    }
    let axle = |at: usize| RollAxle {
        track: value(of[at]),
        roll_centre_height: value(of[at + 1]),
        unsprung_mass: value(of[at + 2]),
        unsprung_height: value(of[at + 3]),
        spring_rate: value(of[at + 4]),
        spring_base: Some(value(of[at + 5])),
        tyre_rate: value(of[at + 6]),
        bar_rate: Some(value(of[at + 7])),
        bar_motion_ratio: Some(value(1.0)),
    };
    let model = RollBalance {
        sprung_mass: value(of[0]),
        sprung_height: value(of[1]),
        behind_front_axle: value(of[2]),
        wheelbase: value(of[3]),
        front: axle(4),
        rear: axle(12),
    };
    let on = model.balance()?;
    let found = [
        on.roll_gradient.si(),
        on.front_suspension_stiffness.si(),
        on.rear_suspension_stiffness.si(),
        on.front_share.si(),
        on.share_over_weight.si(),
    ];
    results.iter_mut().zip(found).for_each(|(result, found)| *result = found);
    Ok(())
}

/// What is wanted.
const WANTED: &[Line] = &[
    angle("wanted.bump_steer_out", "toe-out over 25 mm of bump that is borne, as a negative angle")
        .or(-0.1_f64.to_radians(), "common practice, no source: a tenth of a degree"),
    angle("wanted.bump_steer_in", "toe-in over 25 mm of bump that is borne")
        .or(0.1_f64.to_radians(), "common practice, no source: a tenth of a degree"),
    line("wanted.bump_steer_margin", Angle::KIND, "how far inside its band the bump steer is wanted")
        .within(0.0, 1.6, "definition: a margin is not negative")
        .or(0.0, "nothing beyond the band itself"),
    line("wanted.joint_margin", Angle::KIND, "lean that is wanted left in every joint")
        .within(0.0, 1.6, "definition: a margin is not negative")
        .or(2_f64.to_radians(), "common practice, no source: 2 deg for what bends and wears"),
    line(
        "wanted.linkage_margin",
        Length::KIND,
        "travel that is wanted left in the linkage where the stops end it",
    )
    .within(0.0, 100.0, "definition: a margin is not negative")
    .or(0.01, "common practice, no source: 10 mm"),
    line("wanted.roll_gradient", RollGradient::KIND, "greatest roll of the body over lateral acceleration")
        .above(0.0, 1.0, "common practice, no source: no body leans more than 560 deg/g"),
    line("wanted.roll_gradient_margin", RollGradient::KIND, "how far below that it is wanted")
        .within(0.0, 1.0, "definition: a margin is not negative")
        .or(0.0, "nothing beyond the limit itself"),
    share(
        "wanted.front_share_low",
        "least share of the front axle in the load transfer, over its share of the weight",
    )
    .or(0.0, "common practice, no source: no tendency to oversteer at the limit, tyres alike all round"),
    share(
        "wanted.front_share_high",
        "greatest share of the front axle in the load transfer, over its share of the weight",
    )
    .or(0.1, "common practice, no source: ten points push the front wide before it helps"),
];

const LINES: usize = wishbone::MEASURED.len()
    + strut::MEASURED.len()
    + AT_RIDE.len()
    + ENDS.len()
    + ANTI.len()
    + ROLL.len()
    + WANTED.len();

const LOCKED: &str = "A joint or a linkage that comes to its end before the stops do breaks or locks a wheel: check it on the vehicle over the whole \
                      travel and lock before it moves; local codes and licensed practice come first.";
const SPIN: &str = "A balance that moves to the rear can make a safe vehicle spin: try it where there is room. Local codes and licensed practice come \
                    first.";

/// What the sheet says of linkages and roll.
pub const SHEET: Section = Section {
    lines: &joined::<LINES>(&[&wishbone::MEASURED, &strut::MEASURED, AT_RIDE, ENDS, ANTI, ROLL, WANTED]),
    findings: &[
        Finding {
            path: "axle.bump_steer_band",
            question: "Does the wheel keep its toe over bumps?",
            margin: Margin::Band {
                value: "axle.bump_steer",
                low: "wanted.bump_steer_out",
                high: "wanted.bump_steer_in",
            },
            wanted: "wanted.bump_steer_margin",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "axle.joints",
            question: "Do the ball joints and rod ends keep within their lean over travel and lock?",
            margin: Margin::Left { value: "axle.joint_left" },
            wanted: "wanted.joint_margin",
            rests_on: &[],
            caution: LOCKED,
        },
        Finding {
            path: "axle.linkage_range",
            question: "Does the linkage go further than the stops let it?",
            margin: Margin::Left { value: "axle.linkage_left" },
            wanted: "wanted.linkage_margin",
            rests_on: &[],
            caution: LOCKED,
        },
        Finding {
            path: "vehicle.roll",
            question: "Does the body lean no more than is wanted?",
            margin: Margin::AtMost { value: "vehicle.roll_gradient", most: "wanted.roll_gradient" },
            wanted: "wanted.roll_gradient_margin",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "vehicle.balance",
            question: "Does the front axle take its part of the load transfer, so that it runs wide before the rear does?",
            margin: Margin::Band {
                value: "vehicle.front_share_over_weight",
                low: "wanted.front_share_low",
                high: "wanted.front_share_high",
            },
            wanted: "wanted.ratio_margin",
            rests_on: &[],
            caution: SPIN,
        },
    ],
};
