//! A double wishbone on the build sheet: its points as lines, and what follows from them.

use super::stages::{
    AtLock, BetweenStops, InRoll, OnDamper, OnSpring, OverWanted, StrokeAtRide, TravelEachWay, TravelEnds,
    WithBar, at_ride, bar_motion_ratio, stroke,
};
use crate::base::section::{Line, Rule, choice, fields, joined, line, rule};
use crate::suspension::kinematics::over_travel::{PathOverTravel, RollSteerOverTravel, ToeOverTravel};
use crate::suspension::{Carrier, DoubleWishbone, WheelPosition};
use crate::units::{Angle, Length, Quantity};

pub(in crate::suspension) const fn coordinate(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(-100.0, 100.0, "plausibility limit: no vehicle is 100 m long")
}

/// The three lines of a point.
macro_rules! point {
    ($path:literal, $what:literal) => {
        [
            coordinate(concat!($path, ".x"), concat!($what, ": forward")),
            coordinate(concat!($path, ".y"), concat!($what, ": left of the centre plane")),
            coordinate(concat!($path, ".z"), concat!($what, ": up")),
        ]
    };
}

const fn lean(path: &'static str, meaning: &'static str) -> Line {
    line(path, Angle::KIND, meaning).within(
        -0.8,
        0.8,
        "plausibility limit: wheels stand and point within 45 deg",
    )
}

pub(in crate::suspension) const fn joint(path: &'static str, meaning: &'static str) -> Line {
    line(path, Angle::KIND, meaning).within(
        0.0,
        1.6,
        "plausibility limit: no joint leans more than a right angle",
    )
}

pub(in crate::suspension) use point as point_lines;

/// Arms, tie rod and wheel: 29 lines.
const POINTS: [Line; 29] = joined(&[
    &point!("axle.upper_arm.front_pivot", "front pivot of the upper arm, at ride height"),
    &point!("axle.upper_arm.rear_pivot", "rear pivot of the upper arm, at ride height"),
    &point!("axle.upper_arm.ball_joint", "upper ball joint, at ride height"),
    &point!("axle.lower_arm.front_pivot", "front pivot of the lower arm, at ride height"),
    &point!("axle.lower_arm.rear_pivot", "rear pivot of the lower arm, at ride height"),
    &point!("axle.lower_arm.ball_joint", "lower ball joint, at ride height"),
    &point!("axle.tie_rod.inner", "inner end of the tie rod, the rack in its middle"),
    &point!("axle.tie_rod.outer", "outer end of the tie rod, at ride height"),
    &point!("axle.wheel.centre", "centre of the wheel, at ride height"),
    &[
        lean("axle.wheel.camber", "camber of the wheel at ride height, positive with its top outboard"),
        lean("axle.wheel.toe", "toe of one wheel at ride height, positive with its front inboard"),
    ],
]);

const EYES: [Line; 7] = joined(&[
    &point!("axle.coil_over.body_eye", "upper eye of the coil-over, on the body"),
    &point!("axle.coil_over.lower_eye", "lower eye of the coil-over, at ride height"),
    &[choice(
        "axle.coil_over.carried_by",
        Carrier::WORDS,
        "carrier of the coil-over's lower eye, for independent wheels",
    )],
]);

const BAR: [Line; 10] = joined(&[
    &point!("axle.anti_roll_bar.link_eye", "eye of the bar's drop link on what carries it, at ride height"),
    &point!("axle.anti_roll_bar.lever_end", "end of the bar's lever, at ride height"),
    &point!("axle.anti_roll_bar.lever_pivot", "any point of the axis about which the bar turns"),
    &[choice(
        "axle.anti_roll_bar.carried_by",
        Carrier::WORDS,
        "carrier of the eye of the bar's drop link, for independent wheels",
    )],
]);

const JOINTS: [Line; 4] = [
    joint("axle.joint_limits.upper_ball", "lean that the upper ball joint allows, from ride height"),
    joint("axle.joint_limits.lower_ball", "lean that the lower ball joint allows, from ride height"),
    joint("axle.joint_limits.tie_rod_outer", "lean that the outer joint of the tie rod allows"),
    joint("axle.joint_limits.tie_rod_inner", "lean that the inner joint of the tie rod allows"),
];

/// Everything that is measured of it.
pub(in crate::suspension) const MEASURED: [Line; 50] = joined(&[&POINTS, &EYES, &BAR, &JOINTS]);

pub(in crate::suspension) const SOURCE: &str = "vector kinematics of rigid bodies";

/// Camber and toe over bump, steering axis, roll centre and side view.
pub(in crate::suspension) const AT_RIDE: Rule = rule! {
    "axle" at_ride, DoubleWishbone
    takes { upper_arm, lower_arm, tie_rod, wheel, wheel.loaded_radius = "axle.tyre.loaded_radius" }
    gives WheelPosition {
        camber_change, bump_steer, caster, kingpin_inclination, scrub_radius, mechanical_trail, roll_centre_height,
        side_view_angle, wheel_path_angle,
    }
    says "suspension.DoubleWishbone at ride height", SOURCE
};
pub(in crate::suspension) const COIL_OVER: Rule = rule! {
    "axle" stroke, DoubleWishbone
    takes { upper_arm, lower_arm, tie_rod, wheel }
    needs { coil_over }
    gives StrokeAtRide { motion_ratio, ratio_gradient, eye_length }
    says "suspension.DoubleWishbone at ride height: r = -dL/dz", SOURCE
};
pub(in crate::suspension) const BAR_RATIO: Rule = rule! {
    "axle" bar_motion_ratio, DoubleWishbone
    takes { upper_arm, lower_arm, tie_rod, wheel }
    needs { anti_roll_bar }
    says "suspension.DoubleWishbone at ride height: travel of the lever's end over travel of the wheel", SOURCE
};
/// Travel at which the linkage locks, the drop link of its bar too: the least over the rack.
pub(in crate::suspension) const RANGE: Rule = rule! {
    "axle" Barred::range, Barred
    takes { linkage = "axle", anti_roll_bar, rack_travel }
    gives TravelEachWay { droop, bump }
    says "suspension.DoubleWishbone.travel_range, rack in its middle, half way and at both locks: the least", SOURCE
};

type Barred = WithBar<DoubleWishbone>;
type Damped = OnDamper<DoubleWishbone>;
type Sprung = OnSpring<DoubleWishbone>;
type Stopped = BetweenStops<DoubleWishbone>;
type Travelled = OverWanted<DoubleWishbone>;
type Leaning = InRoll<DoubleWishbone>;
type Locked = AtLock<DoubleWishbone>;
fields!(Barred { linkage, anti_roll_bar, rack_travel });
fields!(Travelled { linkage, bump_steer, bump = "steer_bump", droop = "steer_droop" });
fields!(Leaning { linkage, bump_steer, roll_steer, track, bump = "steer_bump", droop = "steer_droop" });
fields!(Locked { linkage, rack_travel, bump_remaining, droop_remaining });
fields!(Damped { linkage, mounting, open_length, closed_length });
fields!(Sprung { linkage, shortest });
fields!(Stopped { linkage, joint_limits, rack_travel, bump_remaining, droop_remaining });

pub(in crate::suspension) const TOE: Rule = rule! {
    "axle" Travelled::toe, Travelled
    takes { linkage = "axle", bump_steer, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives ToeOverTravel { toe_least, toe_most, bend }
    says "suspension.DoubleWishbone over the travel that is wanted: toe less toe at ride height", SOURCE
};
pub(in crate::suspension) const ROLL_STEER: Rule = rule! {
    "axle" Leaning::steer, Leaning
    takes { linkage = "axle", bump_steer, roll_steer, track, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives RollSteerOverTravel { roll_steer_least, roll_steer_most }
    says "suspension.DoubleWishbone with z to one side and -z to the other: -(toe(z) - toe(-z)) t / (4 z)", SOURCE
};
pub(in crate::suspension) const PATH: Rule = rule! {
    "axle" Travelled::path, Travelled
    takes { linkage = "axle", bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives PathOverTravel { path_least, path_most }
    says "suspension.DoubleWishbone over the travel that is wanted: wheel_path_angle", SOURCE
};
pub(in crate::suspension) const TOGGLE: Rule = rule! {
    "axle" Locked::toggle_angle, Locked
    takes { linkage = "axle", rack_travel, bump_remaining = "axle.bump_compressed", droop_remaining }
    says "suspension.DoubleWishbone: sine from the triple product of steering axis, arm and rod, over travel and lock: the least", SOURCE
};
pub(in crate::suspension) const DAMPER: Rule = rule! {
    "axle.damper" Damped::ends, Damped
    takes { linkage = "axle", open_length, closed_length }
    needs { linkage.coil_over = "axle.coil_over", mounting }
    gives TravelEnds { droop, bump }
    says "suspension.DoubleWishbone: travel z where L(z) is the length of the damper", SOURCE
};
pub(in crate::suspension) const SPRING: Rule = rule! {
    "axle.spring" Sprung::end, Sprung
    takes { linkage = "axle", shortest = "axle.spring.shortest_between_eyes" }
    needs { linkage.coil_over = "axle.coil_over" }
    says "suspension.DoubleWishbone: travel z where L(z) is the least length, or where the linkage locks before", SOURCE
};
pub(in crate::suspension) const JOINT_REMAINING: Rule = rule! {
    "axle" Stopped::joint_remaining, Stopped
    takes { linkage = "axle", rack_travel, bump_remaining = "axle.bump_compressed", droop_remaining }
    needs { joint_limits.upper_ball, joint_limits.lower_ball, joint_limits.tie_rod_outer, joint_limits.tie_rod_inner }
    says "suspension.DoubleWishbone at full bump and droop, rack in its middle and at both ends: the least", SOURCE
};
