//! Forces of a live axle against its balance, and against the work of the loads along its motions.

use super::*;
use crate::suspension::live_axle::forces::AxleLoad;
use crate::units::Torque;

fn newtons(value: f64) -> Force {
    Force::from_si(value)
}

/// On the left and on the right: forward, to the left, up.
fn load([left, right]: [[f64; 3]; 2], heights: [f64; 2], shaft: f64) -> AxleLoad {
    AxleLoad {
        left_longitudinal_force: newtons(left[0]),
        right_longitudinal_force: newtons(right[0]),
        longitudinal_height: metres(heights[0]),
        left_lateral_force: newtons(left[1]),
        right_lateral_force: newtons(right[1]),
        lateral_height: metres(heights[1]),
        left_vertical_force: newtons(left[2]),
        right_vertical_force: newtons(right[2]),
        drop_link_force: newtons(0.0),
        shaft_torque: Torque::from_si(shaft),
    }
}

fn sprung(axle: LiveAxle) -> LiveAxle {
    LiveAxle { coil_over: Stated::Given(AxleCoilOver { spring: None, damper: None, ..coil_over() }), ..axle }
}

fn tension(axle: &LiveAxle, part: &str, on: AxleLoad) -> f64 {
    let table = axle.prepare().unwrap().forces(metres(0.0), rad(0.0), on).unwrap();
    let row = (0..table.rows()).find(|row| table.word("part", *row) == Some(part));
    table.numbers("tension").unwrap()[row.unwrap_or_else(|| panic!("no {part}"))]
}

#[test]
fn drive_at_the_ground_pushes_the_lower_links_and_pulls_the_upper_ones() {
    // Level links at 100 mm below and above the middle, the ground 330 mm below it.
    let axle = sprung(straight(pairs(&PARALLEL), Some(rod(PARALLEL[4], PARALLEL[5]))));
    let drive = load([[2000.0, 0.0, 0.0], [2000.0, 0.0, 0.0]], [0.0, 0.0], 0.0);
    let [lower, upper] = ["lower left", "upper left"].map(|part| tension(&axle, part, drive));
    // Both sides share 4 kN; the pair of forces turns about a base of 200 mm.
    let radius = 0.33;
    assert_relative_eq!(lower, -2000.0 * (0.1 + radius) / 0.2, max_relative = 1e-9);
    assert_relative_eq!(upper, 2000.0 * (radius - 0.1) / 0.2, max_relative = 1e-9);
    let rolling = load([[-2000.0, 0.0, 0.0], [-2000.0, 0.0, 0.0]], [radius, 0.0], 0.0);
    for part in ["lower left", "lower right", "upper left", "upper right"] {
        assert_relative_eq!(tension(&axle, part, rolling), 1000.0, max_relative = 1e-9);
    }
}

#[test]
fn the_torque_of_the_shaft_moves_load_from_one_wheel_to_the_other() {
    let axle = sprung(straight(pairs(&PARALLEL), Some(rod(PARALLEL[4], PARALLEL[5]))));
    let on = |shaft: f64| {
        let both = load([[0.0, 0.0, 4000.0], [0.0, 0.0, 4000.0]], [0.0, 0.0], shaft);
        ["coil-over left", "coil-over right"].map(|part| tension(&axle, part, both))
    };
    let ([left, right], [more, less]) = (on(0.0), on(500.0));
    assert_relative_eq!(left, right, max_relative = 1e-9);
    // About the forward axis it lifts the left end.
    assert!(left < -4000.0 && more < left && less > right, "{left} {right} {more} {less}");
}

fn pairs(points: &Points) -> Vec<AxleLink> {
    let bushed = |link: AxleLink| AxleLink { body_bush: bush(8e6), axle_bush: bush(8e6), ..link };
    vec![
        bushed(link("lower", Fitted::Pair, points[0], points[1])),
        bushed(link("upper", Fitted::Pair, points[2], points[3])),
    ]
}

#[test]
fn what_no_bush_decides_is_not_known() {
    let rigid = |points: &Points| {
        vec![
            link("lower", Fitted::Pair, points[0], points[1]),
            link("upper", Fitted::Pair, points[2], points[3]),
        ]
    };
    let axle = sprung(straight(rigid(&PARALLEL), Some(rod(PARALLEL[4], PARALLEL[5]))));
    let drive = load([[2000.0, 500.0, 4000.0], [2000.0, 500.0, 4000.0]], [0.0, 0.0], 0.0);
    assert!(tension(&axle, "lower left", drive).is_nan());
    let known = ["lateral rod", "coil-over left"].map(|part| tension(&axle, part, drive));
    assert!(known.iter().all(|tension| tension.abs() > 500.0), "{known:?}");
    let bare = straight(rigid(&ANGLED), None);
    let refused = bare.prepare().unwrap().forces(metres(0.0), rad(0.0), drive).unwrap_err().to_string();
    assert!(refused.contains("coil_over: nothing carries the axle"), "{refused}");
}

proptest! {
    /// The body bears what the ground gives: forces and moments; and the coil-overs do as much work in heave and in roll as the loads along the
    /// paths of their points, for links that do not bind.
    #[test]
    fn every_load_reaches_the_body_whole(
        left in prop::array::uniform3(-8e3..8e3_f64), right in prop::array::uniform3(-8e3..8e3_f64), heights in prop::array::uniform2(0.0..0.4_f64),
        shaft in -900.0..900.0_f64, heave in -0.05..0.05_f64, roll in -0.04..0.04_f64, which in 0..4_usize,
    ) {
        let across = |points: &Points| Some(rod(points[4], points[5]));
        let axle = sprung(match which {
            0 => straight(pairs(&ANGLED), None),
            1 => straight(pairs(&PARALLEL), across(&PARALLEL)),
            2 => straight(pairs(&FOUR), across(&FOUR)),
            _ => watt(FOUR, Mount::Axle, 0.35),
        });
        let (on, ready) = (load([left, right], heights, shaft), axle.prepare().unwrap());
        let (heave, roll) = (metres(heave), rad(roll));
        let table = ready.forces(heave, roll, on).unwrap();
        let places = ready.outline(heave, roll).unwrap();
        let pose = ready.pose(heave, roll).unwrap();
        let end = |part: &str| {
            let points = &places.iter().find(|(name, _)| *name == part).unwrap().1;
            let wanted = if part.ends_with("rod") && part != "lateral rod" { "outer" } else { points[0].0 };
            points.iter().find(|(name, _)| *name == wanted).unwrap().1
        };
        let mut forces = Vec::new();
        for row in 0..table.rows() {
            let [x, y, z] = ["body_x", "body_y", "body_z"].map(|name| table.numbers(name).unwrap()[row]);
            forces.push((end(table.word("part", row).unwrap()), vector(x, y, z)));
        }
        let shaft = pose.frame.direction(vector(shaft, 0.0, 0.0));
        for (place, force) in [left, right].into_iter().enumerate() {
            let [centre, _, contact] = ready.wheel(&pose, place);
            let up = centre - contact;
            let at = |height: f64| contact + up * (height / up.z);
            forces.push((at(heights[0]), vector(-force[0], 0.0, 0.0)));
            forces.push((at(heights[1]), vector(0.0, -force[1], 0.0)));
            forces.push((contact, vector(0.0, 0.0, -force[2])));
        }
        let greatest = forces.iter().map(|(_, force)| force.norm()).fold(1.0, f64::max);
        let force = forces.iter().fold(Vector::default(), |sum, (_, force)| sum + *force);
        let moment = forces.iter().fold(-shaft, |sum, (at, force)| sum + at.cross(*force));
        prop_assert!(force.norm() <= 1e-9 * greatest, "{force:?} of {greatest}");
        prop_assert!(moment.norm() <= 1e-9 * greatest, "{moment:?} of {greatest}");
    }
}
