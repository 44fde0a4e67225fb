//! A live axle on leaf springs on the build sheet: its springs and dampers as lines, and what follows from them.

use super::double_wishbone_lines::{BAR, SOURCE, coordinate, point, point_lines, travelled, value};
use super::leaf_axle::locked;
use super::live_axle_lines::{APART, BEARINGS, BESIDE_LEAVES, bar_of, chained, fill, known};
use super::parts::refused;
use super::wheel_position::BUMP;
use super::{Axle, AxleDamper, LeafAxle, LeafForm, LeafSpring, Leaves, Point, Wheel};
use crate::Result;
use crate::base::document::Stated;
use crate::base::section::{
    Line, Several, Step, choice, derived, first, greatest, joined, line, one_of, own, paths,
};
use crate::units::{
    Angle, Force, Length, LinearStiffness, Quantity, Ratio, RotationalStiffness, STANDARD_GRAVITY, Stress,
    Torque,
};

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        10.0,
        "common practice, no source: no leaf spring is 10 m long",
    )
}

const fn count(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.0,
        100.0,
        "definition: a number of leaves; common practice, no source: at most 100",
    )
}

const PLACED: [Line; 12] = joined(&[
    &point_lines!("axle.leaf.fixed_eye", "eye of the leaf spring on the body"),
    &point_lines!("axle.leaf.shackle_eye", "eye of the leaf spring on its shackle, at ride height"),
    &point_lines!("axle.leaf.shackle_pivot", "pivot of the shackle on the body"),
    &point_lines!(
        "axle.leaf.seat",
        "where the centre bolt crosses the main leaf, at ride height; of the spring's points the one whose place to the side counts"
    ),
]);

const SPRING: [Line; 10] = [
    line(
        "axle.leaf.seat_angle",
        Angle::KIND,
        "of the seat at ride height, positive with its front up; level where it is left out",
    )
    .within(-0.5, 0.5, "common practice, no source: seats stand level within 29 deg"),
    line(
        "axle.leaf.clamped_length",
        Length::KIND,
        "of the spring that the seat holds stiff, over both halves",
    )
    .within(0.0, 10.0, "definition: a length; common practice, no source: at most 10 m"),
    line(
        "axle.leaf.eye_offset",
        Length::KIND,
        "of the eyes' centres above the middle of the main leaf; nothing where it is left out",
    )
    .within(-0.2, 0.2, "common practice, no source: eyes stand within 200 mm of their leaf"),
    choice(
        "axle.leaf.form",
        &["uniform_strength", "uniform_section"],
        "a stepped pack or a tapered leaf; a single leaf or all leaves full length",
    ),
    line("axle.leaf.load", Force::KIND, "carried by one leaf spring at ride height")
        .within(1.0, 1e8, "common practice, no source: springs of road vehicles carry between 1 N and 100 MN")
        .by(&[own("m g", "standard gravity: 3rd CGPM", weight, &["axle.sprung_mass"])]),
    length("axle.leaf.width", "of every leaf"),
    length("axle.leaf.thickness", "of every leaf"),
    count("axle.leaf.full_length_leaves", "leaves that reach from eye to eye"),
    count("axle.leaf.graduated_leaves", "leaves that get shorter step by step"),
    line(
        "axle.leaf.bump_clearance",
        Length::KIND,
        "above each spring's seat to its bump stop, or to what it hits first, at ride height",
    )
    .within(
        0.0,
        10.0,
        "definition: a clearance at ride height; common practice, no source: at most 10 m",
    ),
];

const DAMPER: [Line; 6] = joined(&[
    &point_lines!("axle.damper.body_eye", "eye on the body of a damper that stands apart on a live axle"),
    &point_lines!("axle.damper.axle_eye", "its eye on the axle, at ride height"),
]);

/// Everything that is measured of it.
pub(super) const MEASURED: [Line; 28] = joined(&[&PLACED, &SPRING, &DAMPER]);

/// What follows of it alone.
pub(super) const FOLLOWING: [Line; 12] = [
    derived("axle.leaf.rate", LinearStiffness::KIND, "of the leaf spring alone, by its leaves").by(&[of_leaves()]),
    derived("axle.leaf.wheel_rate", LinearStiffness::KIND, "tangent rate at the wheel, with what shackles and eyes make of the spring's rate")
        .by(&[at_ride(0)]),
    derived("axle.leaf.wind_up_rate", RotationalStiffness::KIND, "of both springs against a turn of the axle about its own axis")
        .by(&[at_ride(3)]),
    derived("axle.leaf.shackle_opening", Angle::KIND, "between the shackle and the line of the eyes, at ride height").by(&[at_ride(5)]),
    derived("axle.leaf.damper_ratio", Ratio::KIND, "shortening of the damper over heave of the axle").by(&[of_damper_ratio()]),
    derived("axle.leaf.stop_end", Length::KIND, "heave at which the seats touch their bump stops").by(&[of_stop()]),
    derived("axle.leaf.shackle_left", Angle::KIND, "that the shackles stay out of line with their springs at full bump and full droop, the lesser")
        .by(&[over_travel(1)]),
    derived("axle.leaf.bump_stress", Stress::KIND, "bending stress of the full-length leaves at full bump").by(&[pressed()]),
    derived("axle.leaf.stress", Stress::KIND, "the greater of the stresses at full bump and under the drive torque, where that is known").by(&[
        own("the greater of both", GREATEST, greatest, &["axle.leaf.bump_stress", "axle.leaf.wound_stress"]),
        own("at full bump", GREATEST, first, &["axle.leaf.bump_stress"]),
    ]),
    line("front.drive_torque", Torque::KIND, DRIVE_TORQUE)
        .within(0.0, 1e6, "common practice, no source: no axle of a road vehicle bears 1 MN·m")
        .by(&[driven(in_front).lacking(NOT_DRIVEN), held(in_front).lacking(NOT_DRIVEN)]),
    line("rear.drive_torque", Torque::KIND, DRIVE_TORQUE)
        .within(0.0, 1e6, "common practice, no source: no axle of a road vehicle bears 1 MN·m")
        .by(&[driven(at_rear).lacking(NOT_DRIVEN), held(at_rear).lacking(NOT_DRIVEN)]),
    derived("axle.leaf.wound_stress", Stress::KIND, "bending stress of the full-length leaves at ride height under the drive torque, forward or in reverse")
        .by(&[strained()]),
];

const GREATEST: &str = "definition: the greatest counts";
const DRIVE_TORQUE: &str = "greatest steady one at both wheels of the axle together, which winds its housing up; a dropped clutch gives more; 0 N·m where the axle is not driven";
const NOT_DRIVEN: &str =
    "driveline.driven is the other axle: write drive_torque, 0 N·m where this one is not driven too";

/// What the engine gives, or the tyres hold, at the driven axle.
const fn driven(call: fn(&[f64]) -> Result<f64>) -> Step {
    own(
        "min(T, T_g) of the driven axle",
        "balance of power through a geared train, see driveline.TorquePath",
        call,
        &["driveline.driven", "final_drive.output_torque", "?grip.torque"],
    )
    .usual()
}

/// What the tyres hold, where nothing is known of the engine.
const fn held(call: fn(&[f64]) -> Result<f64>) -> Step {
    own(
        "T_g of the driven axle",
        "balance of moments at the wheel",
        call,
        &["driveline.driven", "grip.torque"],
    )
    .usual()
}

fn in_front(of: &[f64]) -> Result<f64> {
    Ok(if of[0] == 0.0 { of[1..].iter().copied().fold(f64::NAN, f64::min) } else { f64::NAN })
}

fn at_rear(of: &[f64]) -> Result<f64> {
    Ok(if of[0] == 1.0 { of[1..].iter().copied().fold(f64::NAN, f64::min) } else { f64::NAN })
}

// What each step takes: where the springs are, their leaves, load and rate, what hangs on them, then other lines.
const DRAWN: [&str; 21] = [
    "axle.wheel.centre.x",
    "axle.wheel.centre.z",
    "axle.leaf.fixed_eye.x",
    "?axle.leaf.fixed_eye.y",
    "axle.leaf.fixed_eye.z",
    "axle.leaf.shackle_eye.x",
    "?axle.leaf.shackle_eye.y",
    "axle.leaf.shackle_eye.z",
    "axle.leaf.shackle_pivot.x",
    "?axle.leaf.shackle_pivot.y",
    "axle.leaf.shackle_pivot.z",
    "axle.leaf.seat.x",
    "axle.leaf.seat.y",
    "axle.leaf.seat.z",
    "?axle.leaf.seat_angle",
    "axle.leaf.clamped_length",
    "?axle.leaf.eye_offset",
    "axle.leaf.form",
    "?axle.wheels",
    "?axle.lower_links.body.x",
    "?axle.upper_links.body.x",
];
const ACROSS: [&str; 2] = ["?axle.lateral_rod.body.x", "?axle.watt.pivot.x"];
const LEAVES: [&str; 5] = [
    "axle.spring.elastic_modulus",
    "axle.leaf.width",
    "axle.leaf.thickness",
    "axle.leaf.full_length_leaves",
    "axle.leaf.graduated_leaves",
];
const SPRUNG: [&str; 23] = chained(&[&DRAWN, &["axle.leaf.load", "axle.spring.rate"]]);
const EYES: [&str; 6] = [
    "axle.damper.body_eye.x",
    "axle.damper.body_eye.y",
    "axle.damper.body_eye.z",
    "axle.damper.axle_eye.x",
    "axle.damper.axle_eye.y",
    "axle.damper.axle_eye.z",
];
const GROUND: [&str; 2] = ["axle.tyre.loaded_radius", "?axle.wheel.camber"];
const OF_LEAVES: [&str; 26] = chained(&[&DRAWN, &LEAVES]);
const GROUNDED: [&str; 25] = chained(&[&SPRUNG, &GROUND]);
const HELD: [&str; 27] = chained(&[&GROUNDED, &ACROSS]);
const DAMPED: [&str; 29] = chained(&[&SPRUNG, &EYES]);
const STROKED: [&str; 31] = chained(&[&DAMPED, &["axle.damper.open_length", "axle.damper.closed_length"]]);
const STOPPED: [&str; 24] = chained(&[&SPRUNG, &["axle.leaf.bump_clearance"]]);
const OVER_TRAVEL: [&str; 27] = chained(&[&SPRUNG, &ACROSS, &["axle.bump_left", "axle.droop_left"]]);
const BARRED: [&str; 32] =
    chained(&[&DRAWN, &["axle.wheel.centre.y"], &paths::<10>(&[BAR.split_at(9).0, &BEARINGS], &[])]);
const PRESSED: [&str; 29] = chained(&[&SPRUNG, &LEAVES, &["axle.bump_left"]]);
const WOUND: [&str; 26] = chained(&[&GROUNDED, &["axle.drive_torque"]]);
const STRAINED: [&str; 31] = chained(&[&GROUNDED, &LEAVES, &["axle.drive_torque"]]);

/// Rate of the spring alone by its leaves.
pub(super) const fn of_leaves() -> Step {
    const FORMULA: &str = "suspension.LeafAxle of its leaves, see spring.leaf_pack_rate";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: rate }, &OF_LEAVES)
}

/// Wheel rate, roll steer, roll base, wind-up rate, bump steer and opening of the shackle at ride height.
pub(super) const fn at_ride(place: usize) -> Step {
    const FORMULA: &str = "suspension.LeafAxle at ride height";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: at_rest }, &SPRUNG)
}

/// Roll centre and side-view angle over the ground.
pub(super) const fn on_ground(place: usize) -> Step {
    const FORMULA: &str = "suspension.LeafAxle on the ground at ride height";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: over_ground }, &HELD)
}

/// Motion ratio of the damper in heave.
pub(super) const fn of_damper_ratio() -> Step {
    const FORMULA: &str = "suspension.LeafAxle at ride height: r_d = -dL/dz";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: damper_ratio }, &DAMPED)
}

/// Ratio of the anti-roll bar in roll, which asks for no load.
pub(super) const fn of_bar() -> Step {
    const FORMULA: &str =
        "suspension.LeafAxle at ride height: travel of the levers' ends over travel of the wheels, in roll";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: bar }, &BARRED)
}

/// Travel at which the damper is open, and at which it is closed.
pub(super) const fn of_damper(place: usize) -> Step {
    const FORMULA: &str = "suspension.LeafAxle: heave z where L(z) is the length of the damper";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: damper }, &STROKED)
}

/// Travel at which the seats touch their bump stops.
pub(super) const fn of_stop() -> Step {
    const FORMULA: &str = "suspension.LeafAxle: heave z where left_bump_remaining is nothing";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: stop }, &STOPPED)
}

/// How far the springs go in droop and bump.
pub(super) const fn of_range(place: usize) -> Step {
    one_of(
        place,
        Several { formula: "suspension.LeafAxle.travel_range, to 0.01 mm", source: SOURCE, call: range },
        &SPRUNG,
    )
}

/// At full bump and full droop: the greatest change of the pinion's angle, what the shackles have left until they are in line, and the shift sideways.
pub(super) const fn over_travel(place: usize) -> Step {
    const FORMULA: &str = "suspension.LeafAxle at full bump and droop, the worse of both";
    one_of(place, Several { formula: FORMULA, source: SOURCE, call: ends }, &OVER_TRAVEL)
}

/// Stress of the leaves at full bump.
pub(super) const fn pressed() -> Step {
    const FORMULA: &str = "suspension.LeafAxle at full bump: left_leaf_stress";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: bump_stress }, &PRESSED)
}

/// Turn of the housing under the drive torque at ride height.
pub(super) const fn wound() -> Step {
    const FORMULA: &str = "suspension.LeafAxle.wind_up at ride height";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: turn }, &WOUND)
}

/// Stress of the leaves under the drive torque at ride height.
pub(super) const fn strained() -> Step {
    const FORMULA: &str =
        "suspension.LeafAxle.wind_up at ride height, torque forward and in reverse: the greater leaf_stress";
    one_of(0, Several { formula: FORMULA, source: SOURCE, call: wound_stress }, &STRAINED)
}

fn weight(of: &[f64]) -> Result<f64> {
    Ok(of[0] * STANDARD_GRAVITY)
}

/// Where the springs are, in the order of the lines, under 1 N on 1 N/m, the wheel of 1 m: what does not stand on the ground does not ask.
fn drawn(points: &[f64]) -> Result<LeafAxle> {
    if points[18] == 0.0 {
        return Err(refused("wheels", APART.to_owned()));
    }
    alone(&points[19..21])?;
    let side = |at: usize| if points[at].is_nan() { points[12] } else { points[at] };
    let beside = |at: usize| Point::new(metres(points[at]), metres(side(at + 1)), metres(points[at + 2]));
    Ok(LeafAxle {
        axle: Axle::Rear,
        wheel: Wheel {
            centre: Point::new(metres(points[0]), metres(points[12]), metres(points[1])),
            camber: value(0.0),
            toe: value(0.0),
            loaded_radius: value(1.0),
        },
        spring: LeafSpring {
            fixed_eye: beside(2),
            shackle_eye: beside(5),
            shackle_pivot: beside(8),
            seat: point(points, 11),
            seat_angle: known(points[14]),
            clamped_length: value(points[15]),
            eye_offset: known(points[16]),
            form: if points[17] == 0.0 { LeafForm::UniformStrength } else { LeafForm::UniformSection },
            load: value(1.0),
            rate: None,
            leaves: None,
        },
        damper: None,
        coil_over: Stated::Unknown,
        anti_roll_bar: Stated::Unknown,
        bump_clearance: None,
        pinion_angle: None,
        braking: None,
        drive_share: None,
    })
}

/// Refuses what else leads the axle.
fn alone(others: &[f64]) -> Result<()> {
    if others.iter().all(|other| other.is_nan()) {
        Ok(())
    } else {
        Err(refused("leaf", BESIDE_LEAVES.to_owned()))
    }
}

/// Of springs that hold the axle upright by themselves, in N/m.
const STIFF: f64 = 1e5;

/// Where the springs end is asked for to so many metres: finer would only take longer.
const FINE: f64 = 1e-5;

fn metres(si: f64) -> Length {
    Length::from_si(si)
}

fn leaves(of: &[f64], at: usize) -> Leaves {
    Leaves {
        elastic_modulus: value(of[at]),
        leaf_width: value(of[at + 1]),
        leaf_thickness: value(of[at + 2]),
        full_length_leaves: value(of[at + 3]),
        graduated_leaves: value(of[at + 4]),
    }
}

fn rate(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = drawn(of)?;
    model.spring.leaves = Some(leaves(of, 21));
    results[0] = model.ready()?.rate().si();
    Ok(())
}

fn sprung(of: &[f64]) -> Result<LeafAxle> {
    let mut model = drawn(of)?;
    model.spring.load = value(of[21]);
    model.spring.rate = Some(value(of[22]));
    Ok(model)
}

fn grounded(of: &[f64]) -> Result<LeafAxle> {
    let mut model = sprung(of)?;
    model.wheel.loaded_radius = value(of[23]);
    model.wheel.camber = value(if of[24].is_nan() { 0.0 } else { of[24] });
    Ok(model)
}

fn level() -> Angle {
    Angle::from_si(0.0)
}

/// The axle at ride height, as `at_ride` numbers it.
fn at_rest(of: &[f64], results: &mut [f64]) -> Result<()> {
    let model = sprung(of)?;
    let ready = model.ready()?;
    let on = ready.at(metres(0.0), level())?;
    // Of springs of the wheel rate `k` on the base `t` the roll stiffness is `k t^2 / 2`.
    let base = (2.0 * on.roll_stiffness.si() / on.wheel_rate.si()).sqrt();
    let in_bump = ready.at(metres(BUMP), level())?;
    fill(
        results,
        [
            on.wheel_rate.si(),
            on.roll_steer.si(),
            base,
            on.wind_up_rate.si(),
            // Of the left wheel, which toes out where its axle steers to the left.
            on.axle_steer.si() - in_bump.axle_steer.si(),
            on.left_shackle_opening.si(),
        ],
    );
    Ok(())
}

fn over_ground(of: &[f64], results: &mut [f64]) -> Result<()> {
    alone(&of[25..])?;
    let on = grounded(of)?.ready()?.at(metres(0.0), level())?;
    fill(results, [on.roll_centre_height.si(), on.side_view_angle.si()]);
    Ok(())
}

fn damped(of: &[f64], [open, closed]: [f64; 2]) -> Result<LeafAxle> {
    let damper = AxleDamper {
        body_eye: point(of, 23),
        axle_eye: point(of, 26),
        open_length: value(open),
        closed_length: value(closed),
    };
    Ok(LeafAxle { damper: Some(damper), ..sprung(of)? })
}

/// The ratio is the same whatever the stroke.
fn damper_ratio(of: &[f64], results: &mut [f64]) -> Result<()> {
    let on = damped(of, [2.0, 1.0])?.ready()?.at(metres(0.0), level())?;
    results[0] = on.damper_motion_ratio.si();
    Ok(())
}

fn bar(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = drawn(of)?;
    model.spring.rate = Some(value(STIFF));
    model.wheel.centre.y = value(of[21]);
    model.anti_roll_bar = Stated::Given(bar_of(&of[22..]));
    let on = model.ready()?.at(metres(0.0), level())?;
    results[0] = on.bar_motion_ratio.si();
    Ok(())
}

fn damper(of: &[f64], results: &mut [f64]) -> Result<()> {
    let model = damped(of, [of[29], of[30]])?;
    let ready = model.ready()?;
    for (result, length) in results.iter_mut().zip([of[29], of[30]]) {
        *result = ready.heave_for_damper(metres(length))?.si();
    }
    Ok(())
}

fn stop(of: &[f64], results: &mut [f64]) -> Result<()> {
    let model = LeafAxle { bump_clearance: Some(value(of[23])), ..sprung(of)? };
    results[0] = model.ready()?.heave_for_stop()?.si();
    Ok(())
}

fn range(of: &[f64], results: &mut [f64]) -> Result<()> {
    let range = sprung(of)?.ready()?.range(0.0, FINE);
    let [(droop, _), (bump, _)] = range.map_err(|end| locked(level(), end))?;
    fill(results, [-droop, bump]);
    Ok(())
}

fn ends(of: &[f64], results: &mut [f64]) -> Result<()> {
    alone(&of[23..25])?;
    let [bump, droop] = travelled([of[25], of[26]])?;
    let model = sprung(of)?;
    let ready = model.ready()?;
    let (mut change, mut left, mut shift) = (0.0_f64, f64::INFINITY, 0.0_f64);
    for heave in [bump, -droop] {
        let on = ready.at(metres(heave), level())?;
        let opening = on.left_shackle_opening.si();
        change = change.max(on.pinion_angle_change.si().abs());
        shift = shift.max(on.lateral_shift.si().abs());
        left = left.min(opening).min(core::f64::consts::PI - opening);
    }
    fill(results, [change, left, shift]);
    Ok(())
}

fn bump_stress(of: &[f64], results: &mut [f64]) -> Result<()> {
    let [bump, _] = travelled([of[28], 0.0])?;
    let mut model = sprung(of)?;
    model.spring.leaves = Some(leaves(of, 23));
    results[0] = model.ready()?.at(metres(bump), level())?.left_leaf_stress.si();
    Ok(())
}

fn turn(of: &[f64], results: &mut [f64]) -> Result<()> {
    let on = grounded(of)?.ready()?.wind_up(metres(0.0), Torque::from_si(of[25]))?;
    results[0] = on.wind_up_angle.si();
    Ok(())
}

fn wound_stress(of: &[f64], results: &mut [f64]) -> Result<()> {
    let mut model = grounded(of)?;
    model.spring.leaves = Some(leaves(of, 25));
    let ready = model.ready()?;
    for torque in [of[30], -of[30]] {
        let stress = ready.wind_up(metres(0.0), Torque::from_si(torque))?.leaf_stress.si();
        results[0] = stress.max(results[0]);
    }
    Ok(())
}
