//! A strut on the build sheet: its leg as lines, and what follows from it. Arm, tie rod and wheel are lines of the double wishbone.

use super::double_wishbone_lines::{
    BAR, JOINTS, MAY_BE_BAR, POINTS, SOURCE, anti_roll_bar, bar_ratio, coordinate, damper_ends, joint,
    least_joint, locks, point, point_lines, spring_end, standing, stroke, value,
};
use super::wheel_position::Independent;
use super::{Arm, Axle, JointLimits, Strut, StrutLeg, TieRod, Wheel};
use crate::Result;
use crate::base::document::Stated;
use crate::base::section::{Line, Several, Step, joined, one_of, paths};

const LEG: [Line; 6] = joined(&[
    &point_lines!("axle.leg.top_mount", "top mount of the strut, on the body"),
    &point_lines!("axle.leg.lower_end", "any lower point of the strut's axis on the upright, at ride height"),
]);
const TOP: [Line; 1] =
    [joint("axle.joint_limits.top_mount", "lean that the top mount of the strut allows, from ride height")];

/// Everything that is measured of it alone.
pub(super) const MEASURED: [Line; 7] = joined(&[&LEG, &TOP]);

// Lower arm, tie rod and wheel without the upper arm, then the leg.
const SHARED: &[Line] = POINTS.split_at(9).1;
const LINKED: [&str; 26] = paths(&[SHARED, &LEG], &[]);
const STANDING: [&str; 27] = paths(&[SHARED, &LEG], &["axle.tyre.loaded_radius"]);
const ON_DAMPER: [&str; 28] =
    paths(&[SHARED, &LEG], &["axle.damper.open_length", "axle.damper.closed_length"]);
const ON_SPRING: [&str; 27] = paths(&[SHARED, &LEG], &["axle.spring.shortest_between_eyes"]);
const BARRED: [&str; 36] = paths(&[SHARED, &LEG, &BAR], &[]);
const RANGED: [&str; 36] = paths(&[SHARED, &LEG], MAY_BE_BAR);
const LEANING: [&str; 33] = paths(
    &[SHARED, &LEG, &TOP, JOINTS.split_at(1).1],
    &["axle.rack_travel", "axle.bump_left", "axle.droop_left"],
);

/// As `double_wishbone_lines::at_ride`.
pub(super) const fn at_ride(place: usize) -> Step {
    one_of(
        place,
        Several { formula: "suspension.Strut at ride height", source: SOURCE, call: at_rest },
        &STANDING,
    )
}

/// Motion ratio of the anti-roll bar.
pub(super) const fn of_bar() -> Step {
    const FORMULA: &str =
        "suspension.Strut at ride height: travel of the lever's end over travel of the wheel";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: bar }, &BARRED)
}

/// Motion ratio of the leg, how it changes with travel, and its length, at ride height.
pub(super) const fn of_leg(place: usize) -> Step {
    const FORMULA: &str = "suspension.Strut at ride height: r = -dL/dz";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: leg }, &LINKED)
}

/// Travel at which the damper in the leg is open, and at which it is closed.
pub(super) const fn of_damper(place: usize) -> Step {
    const FORMULA: &str = "suspension.Strut: travel z where L(z) is the length of the damper";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: damper }, &ON_DAMPER)
}

/// Travel at which the spring has its least gaps.
pub(super) const fn of_spring() -> Step {
    const FORMULA: &str =
        "suspension.Strut: travel z where L(z) is the least length, or where the linkage locks before";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: spring }, &ON_SPRING)
}

/// What is left of the first joint over the travel, at every end of the rack's.
pub(super) const fn of_joints() -> Step {
    const FORMULA: &str =
        "suspension.Strut at full bump and droop, rack in its middle and at both ends: the least";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: joints }, &LEANING)
}

/// How far the linkage goes in droop and bump before it locks, with the rack in its middle.
pub(super) const fn of_range(place: usize) -> Step {
    one_of(place, Several { formula: "suspension.Strut.travel_range", source: SOURCE, call: range }, &RANGED)
}

/// The linkage of these points, in the order of their lines, its wheel of 1 m.
fn drawn(points: &[f64]) -> Strut {
    Strut {
        axle: Axle::Front,
        lower_arm: Arm {
            front_pivot: point(points, 0),
            rear_pivot: point(points, 3),
            ball_joint: point(points, 6),
        },
        tie_rod: TieRod { inner: point(points, 9), outer: point(points, 12) },
        wheel: Wheel {
            centre: point(points, 15),
            camber: value(points[18]),
            toe: value(points[19]),
            loaded_radius: value(1.0),
        },
        leg: StrutLeg {
            top_mount: point(points, 20),
            lower_end: point(points, 23),
            spring: None,
            spring_seats: None,
            damper: None,
        },
        torsion_bar: Stated::Unknown,
        anti_roll_bar: Stated::Unknown,
        braking: None,
        driving: None,
        joint_limits: None,
    }
}

fn at_rest(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = drawn(of);
    model.wheel.loaded_radius = value(of[26]);
    standing(model.parts(), results)
}

fn leg(of: &[f64], results: &mut [f64]) -> Result<()> {
    stroke(drawn(of).parts(), results)
}

fn damper(of: &[f64], results: &mut [f64]) -> Result<()> {
    damper_ends(drawn(of).parts(), [of[26], of[27]], results)
}

fn spring(of: &[f64], results: &mut [f64]) -> Result<()> {
    spring_end(drawn(of).parts(), of[26], results)
}

fn joints(of: &[f64], results: &mut [f64]) -> Result<()> {
    let limit = |at: usize| Some(value(of[26 + at]));
    let limits = JointLimits {
        upper_ball: None,
        top_mount: limit(0),
        lower_ball: limit(1),
        tie_rod_outer: limit(2),
        tie_rod_inner: limit(3),
    };
    let model = Strut { joint_limits: Some(limits), ..drawn(of) };
    least_joint(model.parts(), of[30], [of[31], of[32]], results)
}

/// With the bar, whose drop link may lock it too.
fn on_bar(of: &[f64]) -> Strut {
    Strut { anti_roll_bar: Stated::Given(anti_roll_bar(&of[26..])), ..drawn(of) }
}

fn bar(of: &[f64], results: &mut [f64]) -> Result<()> {
    bar_ratio(on_bar(of).parts(), results)
}

fn range(of: &[f64], results: &mut [f64]) -> Result<()> {
    let with_bar = of[26..].iter().all(|known| !known.is_nan());
    let model = if with_bar { on_bar(of) } else { drawn(of) };
    locks(model.parts(), results)
}
