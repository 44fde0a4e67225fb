//! A double wishbone on the build sheet: its points as lines, and what follows from them.

use super::wheel_position::{Independent, Parts, Ready};
use super::{AntiRollBar, Arm, Axle, Carrier, CoilOver, DoubleWishbone, JointLimits, Point, TieRod, Wheel};
use crate::base::document::{Stated, Value};
use crate::base::section::{Line, Several, Step, choice, joined, line, one_of, paths};
use crate::units::{Angle, Length, Quantity};
use crate::{Error, Result};

pub(super) const fn coordinate(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(
        -100.0,
        100.0,
        "common practice, no source: no vehicle is 100 m long",
    )
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
        "common practice, no source: wheels stand and point within 45 deg",
    )
}

pub(super) const fn joint(path: &'static str, meaning: &'static str) -> Line {
    line(path, Angle::KIND, meaning).within(
        0.0,
        1.6,
        "common practice, no source: no joint leans more than a right angle",
    )
}

pub(super) use point as point_lines;

/// Arms, tie rod and wheel: 29 lines.
pub(super) const POINTS: [Line; 29] = joined(&[
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
        lean("axle.wheel.camber", "of the wheel at ride height, positive with its top outboard"),
        lean("axle.wheel.toe", "of one wheel at ride height, positive with its front inboard"),
    ],
]);

pub(super) const EYES: [Line; 7] = joined(&[
    &point!("axle.coil_over.body_eye", "upper eye of the coil-over, on the body"),
    &point!("axle.coil_over.lower_eye", "lower eye of the coil-over, at ride height"),
    &[choice(
        "axle.coil_over.carried_by",
        CARRIERS,
        "what carries the lower eye of the coil-over where wheels are independent",
    )],
]);

pub(super) const BAR: [Line; 10] = joined(&[
    &point!("axle.anti_roll_bar.link_eye", "eye of the bar's drop link on what carries it, at ride height"),
    &point!("axle.anti_roll_bar.lever_end", "end of the bar's lever, at ride height"),
    &point!("axle.anti_roll_bar.lever_pivot", "any point of the axis about which the bar turns"),
    &[choice(
        "axle.anti_roll_bar.carried_by",
        CARRIERS,
        "what carries the eye of the bar's drop link where wheels are independent",
    )],
]);

pub(super) const JOINTS: [Line; 4] = [
    joint("axle.joint_limits.upper_ball", "lean that the upper ball joint allows, from ride height"),
    joint("axle.joint_limits.lower_ball", "lean that the lower ball joint allows, from ride height"),
    joint("axle.joint_limits.tie_rod_outer", "lean that the outer joint of the tie rod allows"),
    joint("axle.joint_limits.tie_rod_inner", "lean that the inner joint of the tie rod allows"),
];

/// Everything that is measured of it.
pub(super) const MEASURED: [Line; 50] = joined(&[&POINTS, &EYES, &BAR, &JOINTS]);

const CARRIERS: &[&str] = &["lower_arm", "upper_arm", "upright"];

// What each step takes: the points, what hangs on them, then other lines.
/// The bar where there is one, in the order of its lines.
pub(super) const MAY_BE_BAR: &[&str] = &[
    "?axle.anti_roll_bar.link_eye.x",
    "?axle.anti_roll_bar.link_eye.y",
    "?axle.anti_roll_bar.link_eye.z",
    "?axle.anti_roll_bar.lever_end.x",
    "?axle.anti_roll_bar.lever_end.y",
    "?axle.anti_roll_bar.lever_end.z",
    "?axle.anti_roll_bar.lever_pivot.x",
    "?axle.anti_roll_bar.lever_pivot.y",
    "?axle.anti_roll_bar.lever_pivot.z",
    "?axle.anti_roll_bar.carried_by",
];
const LINKED: [&str; 39] = paths(&[&POINTS], MAY_BE_BAR);
const STANDING: [&str; 30] = paths(&[&POINTS], &["axle.tyre.loaded_radius"]);
const EYED: [&str; 36] = paths(&[&POINTS, &EYES], &[]);
const BARRED: [&str; 39] = paths(&[&POINTS, &BAR], &[]);
const ON_DAMPER: [&str; 39] = paths(
    &[&POINTS, &EYES],
    &["axle.damper.mounting", "axle.damper.open_length", "axle.damper.closed_length"],
);
const ON_SPRING: [&str; 37] = paths(&[&POINTS, &EYES], &["axle.spring.shortest_between_eyes"]);
const LEANING: [&str; 36] =
    paths(&[&POINTS, &JOINTS], &["axle.rack_travel", "axle.bump_left", "axle.droop_left"]);

/// Camber and toe over bump, the steering axis, where it rolls and dives about: the linkage at ride height.
pub(super) const fn at_ride(place: usize) -> Step {
    const FORMULA: &str = "suspension.DoubleWishbone at ride height";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: at_rest }, &STANDING)
}

/// Motion ratio of the coil-over, how it changes with travel, and the length between its eyes, at ride height.
pub(super) const fn of_coil_over(place: usize) -> Step {
    const FORMULA: &str = "suspension.DoubleWishbone at ride height: r = -dL/dz";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: coil_over }, &EYED)
}

/// Motion ratio of the anti-roll bar.
pub(super) const fn of_bar() -> Step {
    const FORMULA: &str =
        "suspension.DoubleWishbone at ride height: travel of the lever's end over travel of the wheel";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: bar }, &BARRED)
}

/// Travel at which the damper of a coil-over is open, and at which it is closed.
pub(super) const fn of_damper(place: usize) -> Step {
    const FORMULA: &str = "suspension.DoubleWishbone: travel z where L(z) is the length of the damper";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: damper }, &ON_DAMPER)
}

/// Travel at which the spring has its least gaps.
pub(super) const fn of_spring() -> Step {
    const FORMULA: &str = "suspension.DoubleWishbone: travel z where L(z) is the least length, or where the linkage locks before";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: spring }, &ON_SPRING)
}

/// What is left of the first joint over the travel, at every end of the rack's.
pub(super) const fn of_joints() -> Step {
    const FORMULA: &str =
        "suspension.DoubleWishbone at full bump and droop, rack in its middle and at both ends: the least";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: joints }, &LEANING)
}

/// How far the linkage goes in droop and bump before it locks, with the rack in its middle.
pub(super) const fn of_range(place: usize) -> Step {
    const FORMULA: &str = "suspension.DoubleWishbone.travel_range";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: range }, &LINKED)
}

pub(super) const SOURCE: &str = "vector kinematics of rigid bodies";

/// The linkage of these points, in the order of their lines, its wheel of 1 m: what does not stand on the ground does not ask.
fn drawn(points: &[f64]) -> DoubleWishbone {
    let arm = |at: usize| Arm {
        front_pivot: point(points, at),
        rear_pivot: point(points, at + 3),
        ball_joint: point(points, at + 6),
    };
    DoubleWishbone {
        axle: Axle::Front,
        upper_arm: arm(0),
        lower_arm: arm(9),
        tie_rod: TieRod { inner: point(points, 18), outer: point(points, 21) },
        wheel: Wheel {
            centre: point(points, 24),
            camber: value(points[27]),
            toe: value(points[28]),
            loaded_radius: value(1.0),
        },
        coil_over: Stated::Unknown,
        torsion_bar: Stated::Unknown,
        anti_roll_bar: Stated::Unknown,
        braking: None,
        driving: None,
        joint_limits: None,
    }
}

pub(super) fn value<Q: Quantity>(si: f64) -> Value<Q> {
    Value::new(Q::from_si(si))
}

pub(super) fn point(of: &[f64], at: usize) -> Point {
    Point::new(Length::from_si(of[at]), Length::from_si(of[at + 1]), Length::from_si(of[at + 2]))
}

fn carrier(choice: f64) -> Carrier {
    match choice as usize {
        0 => Carrier::LowerArm,
        1 => Carrier::UpperArm,
        _ => Carrier::Upright,
    }
}

fn at_rest(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = drawn(of);
    model.wheel.loaded_radius = value(of[29]);
    standing(model.parts(), results)
}

/// The wheel at ride height, as `at_ride` numbers it.
pub(super) fn standing(parts: Parts<'_>, results: &mut [f64]) -> Result<()> {
    let on = Ready::new(parts)?.at_ride();
    let found = [
        on.camber_change.si(),
        on.bump_steer.si(),
        on.caster.si(),
        on.kingpin_inclination.si(),
        on.scrub_radius.si(),
        on.mechanical_trail.si(),
        on.roll_centre_height.si(),
        on.side_view_angle.si(),
        on.wheel_path_angle.si(),
    ];
    results.iter_mut().zip(found).for_each(|(result, found)| *result = found);
    Ok(())
}

fn on_coil_over(of: &[f64]) -> DoubleWishbone {
    let (body_eye, lower_eye) = (point(of, 29), point(of, 32));
    let coil_over = CoilOver {
        body_eye,
        lower_eye,
        carried_by: carrier(of[35]),
        spring: None,
        spring_seats: None,
        damper: None,
    };
    DoubleWishbone { coil_over: Stated::Given(coil_over), ..drawn(of) }
}

fn coil_over(of: &[f64], results: &mut [f64]) -> Result<()> {
    stroke(on_coil_over(of).parts(), results)
}

/// The coil-over at ride height, as `of_coil_over` numbers it.
pub(super) fn stroke(parts: Parts<'_>, results: &mut [f64]) -> Result<()> {
    if let Some([length, motion_ratio, gradient]) = Ready::new(parts)?.stroke_at_ride() {
        (results[0], results[1], results[2]) = (motion_ratio, gradient, length);
    }
    Ok(())
}

/// The bar of its lines.
pub(super) fn anti_roll_bar(of: &[f64]) -> AntiRollBar {
    AntiRollBar {
        link_eye: point(of, 0),
        lever_end: point(of, 3),
        lever_pivot: point(of, 6),
        carried_by: carrier(of[9]),
    }
}

/// With the bar, whose drop link may lock it too.
fn on_bar(of: &[f64]) -> DoubleWishbone {
    DoubleWishbone { anti_roll_bar: Stated::Given(anti_roll_bar(&of[29..])), ..drawn(of) }
}

fn bar(of: &[f64], results: &mut [f64]) -> Result<()> {
    bar_ratio(on_bar(of).parts(), results)
}

/// Motion ratio of the bar at ride height.
pub(super) fn bar_ratio(parts: Parts<'_>, results: &mut [f64]) -> Result<()> {
    results[0] = Ready::new(parts)?.at_ride().bar_motion_ratio.si();
    Ok(())
}

fn damper(of: &[f64], results: &mut [f64]) -> Result<()> {
    if of[36] == 0.0 { damper_ends(on_coil_over(of).parts(), [of[37], of[38]], results) } else { Ok(()) }
}

/// Travel at which a damper has its open and its closed length.
pub(super) fn damper_ends(parts: Parts<'_>, [open, closed]: [f64; 2], results: &mut [f64]) -> Result<()> {
    let ready = Ready::new(parts)?;
    (results[0], results[1]) = (ready.travel_for(open)?, ready.travel_for(closed)?);
    Ok(())
}

fn spring(of: &[f64], results: &mut [f64]) -> Result<()> {
    spring_end(on_coil_over(of).parts(), of[36], results)
}

/// Travel at which the spring has its least length, or at which the linkage locks before that.
pub(super) fn spring_end(parts: Parts<'_>, shortest: f64, results: &mut [f64]) -> Result<()> {
    let ready = Ready::new(parts)?;
    results[0] = match ready.travel_for(shortest) {
        Ok(travel) => travel,
        Err(_) => ready.travel_range(Length::from_si(0.0))?.bump.si(),
    };
    Ok(())
}

fn joints(of: &[f64], results: &mut [f64]) -> Result<()> {
    let limit = |at: usize| Some(value(of[29 + at]));
    let limits = JointLimits {
        upper_ball: limit(0),
        top_mount: None,
        lower_ball: limit(1),
        tie_rod_outer: limit(2),
        tie_rod_inner: limit(3),
    };
    let model = DoubleWishbone { joint_limits: Some(limits), ..drawn(of) };
    least_joint(model.parts(), of[33], [of[34], of[35]], results)
}

/// Travel in bump and in droop, unless there is none.
pub(super) fn travelled([bump, droop]: [f64; 2]) -> Result<[f64; 2]> {
    if bump < 0.0 || droop < 0.0 {
        let message =
            format!("bump_left = {bump} m and droop_left = {droop} m: ride height is beyond the stops");
        return Err(Error::NoSolution { message });
    }
    Ok([bump, droop])
}

/// What the first joint has left at both ends of the travel, with the rack in its middle and at both ends.
pub(super) fn least_joint(parts: Parts<'_>, rack: f64, left: [f64; 2], results: &mut [f64]) -> Result<()> {
    let [bump, droop] = travelled(left)?;
    let ready = Ready::new(parts)?;
    let racks: &[f64] = if rack == 0.0 { &[0.0] } else { &[0.0, rack, -rack] };
    let mut least = f64::INFINITY;
    for travel in [bump, -droop] {
        for rack in racks {
            let on = ready.at(Length::from_si(travel), Length::from_si(*rack))?;
            least = least.min(on.joint_left.si());
        }
    }
    results[0] = least;
    Ok(())
}

fn range(of: &[f64], results: &mut [f64]) -> Result<()> {
    let with_bar = of[29..].iter().all(|known| !known.is_nan());
    let model = if with_bar { on_bar(of) } else { drawn(of) };
    locks(model.parts(), results)
}

/// Travel in droop and in bump at which a linkage locks.
pub(super) fn locks(parts: Parts<'_>, results: &mut [f64]) -> Result<()> {
    let on = Ready::new(parts)?.travel_range(Length::from_si(0.0))?;
    (results[0], results[1]) = (-on.droop.si(), on.bump.si());
    Ok(())
}
