//! A live axle on leaf springs on the build sheet: its springs and dampers as lines, and what follows from them.

use super::rules::{AT_RIDE, BUMP_STRESS, DAMPER_RATIO, OVER_TRAVEL, RATE, STOP, WEIGHT, WOUND_STRESS};
use crate::base::section::{
    Line, ModelOf, by, choice, derived, gives, greatest_of, joined, line, model, same,
};
use crate::suspension::independent::double_wishbone_lines::{coordinate, point_lines};
use crate::suspension::roll::rules::{FRONT_DRIVES, FRONT_HOLDS, REAR_DRIVES, REAR_HOLDS};
use crate::suspension::{LeafAxle, LeafForm};
use crate::units::{
    Angle, Force, Length, LinearStiffness, Quantity, Ratio, RotationalStiffness, Stress, Torque,
};

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 10.0, "plausibility limit: no leaf spring is 10 m long")
}

const fn count(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.0,
        100.0,
        "definition: a number of leaves; plausibility limit: at most 100",
    )
}

/// The three lines of a point that stands in the plane of its spring.
macro_rules! beside_seat {
    ($path:literal, $what:literal) => {{
        let [x, y, z] = point_lines!($path, $what);
        [x, y.by(&[same(&["axle.leaf.seat.y"], IN_PLANE).usual()]), z]
    }};
}

const IN_PLANE: &str = "definition: a spring stands parallel to the centre plane";

const PLACED: [Line; 12] = joined(&[
    &beside_seat!("axle.leaf.fixed_eye", "eye of the leaf spring on the body"),
    &beside_seat!("axle.leaf.shackle_eye", "eye of the leaf spring on its shackle, at ride height"),
    &beside_seat!("axle.leaf.shackle_pivot", "pivot of the shackle on the body"),
    &point_lines!(
        "axle.leaf.seat",
        "point where the centre bolt crosses the main leaf, at ride height; of the spring's points the one whose place to the side counts"
    ),
]);

const SPRING: [Line; 10] = [
    line(
        "axle.leaf.seat_angle",
        Angle::KIND,
        "angle of the seat at ride height, positive with its front up; level if left out",
    )
    .within(-0.5, 0.5, "plausibility limit: seats stand level within 29 deg"),
    line(
        "axle.leaf.clamped_length",
        Length::KIND,
        "length of the spring that the seat clamps, over both halves",
    )
    .within(0.0, 10.0, "definition: a length; plausibility limit: at most 10 m"),
    line(
        "axle.leaf.eye_offset",
        Length::KIND,
        "height of the eyes' centres above the middle of the main leaf; zero if left out",
    )
    .within(-0.2, 0.2, "plausibility limit: eyes stand within 200 mm of their leaf"),
    choice(
        "axle.leaf.form",
        LeafForm::WORDS,
        "a stepped pack or a tapered leaf; a single leaf or all leaves full length",
    ),
    line("axle.leaf.load", Force::KIND, "carried by one leaf spring at ride height")
        .within(1.0, 1e8, "plausibility limit: springs of road vehicles carry between 1 N and 100 MN")
        .by(&[by(&WEIGHT)]),
    line("axle.leaf.leaves.elastic_modulus", Stress::KIND, "modulus of the leaves' steel")
        .within(10e9, 500e9, "plausibility limit: metals of springs lie between 10 GPa and 500 GPa")
        .by(&[same(&["axle.spring.elastic_modulus"], "definition: the leaves are the spring")]),
    length("axle.leaf.leaves.leaf_width", "width of every leaf"),
    length("axle.leaf.leaves.leaf_thickness", "thickness of every leaf"),
    count("axle.leaf.leaves.full_length_leaves", "leaves that reach from eye to eye"),
    count("axle.leaf.leaves.graduated_leaves", "leaves that get shorter step by step"),
];

const DAMPER_EYES: [Line; 6] = joined(&[
    &point_lines!("axle.damper.body_eye", "eye on the body of a damper that stands apart on a live axle"),
    &point_lines!("axle.damper.axle_eye", "its eye on the axle, at ride height"),
]);

/// The axle as a model, ready to draw.
pub(in crate::suspension) const MODEL: ModelOf = model! {
    "axle.suspension" "suspension.LeafAxle" LeafAxle in "axle"
    takes {
        wheel, wheel.loaded_radius = "axle.tyre.loaded_radius",
        leaf.fixed_eye, leaf.shackle_eye, leaf.shackle_pivot, leaf.seat, leaf.seat_angle,
        leaf.clamped_length, leaf.eye_offset, leaf.form, leaf.load, leaf.leaves,
        spring.rate: LinearStiffness,
        damper, anti_roll_bar, bump_clearance,
    }
    end "axle"
};

/// Everything that is measured of it.
pub(in crate::suspension) const MEASURED: [Line; 28] = joined(&[&PLACED, &SPRING, &DAMPER_EYES]);

/// Lines that follow from the spring alone.
pub(in crate::suspension) const FOLLOWING: [Line; 12] = [
    derived("axle.leaf.rate", LinearStiffness::KIND, "rate of the leaf spring alone, by its leaves").by(&[by(&RATE)]),
    derived("axle.leaf.wheel_rate", LinearStiffness::KIND, "tangent rate at the wheel, with what shackles and eyes make of the spring's rate")
        .by(&[gives(&AT_RIDE, "wheel_rate")]),
    derived("axle.leaf.wind_up_rate", RotationalStiffness::KIND, "rate of both springs against a turn of the axle about its own axis")
        .by(&[gives(&AT_RIDE, "wind_up_rate")]),
    derived("axle.leaf.shackle_opening", Angle::KIND, "angle between the shackle and the line of the eyes, at ride height").by(&[gives(&AT_RIDE, "shackle_opening")]),
    derived("axle.leaf.damper_ratio", Ratio::KIND, "shortening of the damper over heave of the axle").by(&[by(&DAMPER_RATIO)]),
    derived("axle.leaf.stop_end", Length::KIND, "heave at which the seats touch their bump stops").by(&[by(&STOP)]),
    derived("axle.leaf.shackle_remaining", Angle::KIND, "remaining angle of the shackles from the line of their springs at full bump and full droop, the smaller one")
        .by(&[gives(&OVER_TRAVEL, "shackle_remaining")]),
    derived("axle.leaf.bump_stress", Stress::KIND, "bending stress of the full-length leaves at full bump").by(&[by(&BUMP_STRESS)]),
    derived("axle.leaf.stress", Stress::KIND, "the greater of the stresses at full bump and under the drive torque, where that is known").by(&[
        greatest_of(&["axle.leaf.bump_stress", "axle.leaf.wound_stress"], LARGEST),
        same(&["axle.leaf.bump_stress"], LARGEST),
    ]),
    line("front.drive_torque", Torque::KIND, DRIVE_TORQUE)
        .within(0.0, 1e6, "plausibility limit: no axle of a road vehicle bears 1 MN·m")
        .by(&[by(&FRONT_DRIVES).usual(), by(&FRONT_HOLDS).usual(), by(&FRONT_DRIVES).at_least(1.0)]),
    line("rear.drive_torque", Torque::KIND, DRIVE_TORQUE)
        .within(0.0, 1e6, "plausibility limit: no axle of a road vehicle bears 1 MN·m")
        .by(&[by(&REAR_DRIVES).usual(), by(&REAR_HOLDS).usual(), by(&REAR_DRIVES).at_least(1.0)]),
    derived("axle.leaf.wound_stress", Stress::KIND, "bending stress of the full-length leaves at ride height under the drive torque, forward or in reverse")
        .by(&[by(&WOUND_STRESS)]),
];

const LARGEST: &str = "definition: the largest counts";
const DRIVE_TORQUE: &str = "peak steady one at both wheels of the axle together, which winds its housing up; a dropped clutch gives more; 0 N·m where the axle is not driven";
