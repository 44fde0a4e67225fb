//! Live axles against constructions by hand, against each other, and against what cannot be.

use super::bar_lever::mirrored;
use super::model::*;
use super::parts::WattRod;
use super::parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LateralRod, Mount, Pinion, Pitching, WattLinkage,
};
use super::position::*;
use super::prepared::*;
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::base::table::tests::{alone, difference};
use crate::suspension::kinematics::outline::read;
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::parts::{Axle, Wheel};
use crate::suspension::parts::{CoilSpring, Damper, Point};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn value(metres: f64) -> Value<Length> {
    Value::new(Length::from_si(metres))
}
fn metres(value: f64) -> Length {
    Length::from_si(value)
}
fn rad(value: f64) -> Angle {
    Angle::from_si(value)
}
fn point([x, y, z]: [f64; 3]) -> Point {
    Point::new(metres(x), metres(y), metres(z))
}
fn bush(stiffness: f64) -> Option<Value<LinearStiffness>> {
    (stiffness > 0.0).then(|| Value::new(LinearStiffness::from_si(stiffness)))
}
fn link(name: &str, fitted: Fitted, body: [f64; 3], axle: [f64; 3]) -> AxleLink {
    AxleLink {
        name: name.to_owned(),
        fitted,
        body: point(body),
        axle: point(axle),
        body_bush: None,
        axle_bush: None,
        body_limit: None,
        axle_limit: None,
    }
}
fn rod(body: [f64; 3], axle: [f64; 3]) -> LateralRod {
    LateralRod {
        body: point(body),
        axle: point(axle),
        body_bush: None,
        axle_bush: None,
        body_limit: None,
        axle_limit: None,
    }
}
fn straight(links: Vec<AxleLink>, lateral_rod: Option<LateralRod>) -> LiveAxle {
    LiveAxle {
        axle: Axle::Rear,
        wheel: Wheel {
            centre: point([0.0, 0.75, 0.32]),
            camber: Value::new(rad(0.0)),
            toe: Value::new(rad(0.0)),
            loaded_radius: value(0.33),
        },
        lower_links: None,
        upper_links: None,
        links,
        lateral_rod: Stated::from(lateral_rod),
        watt: Stated::Unknown,
        coil_over: Stated::Unknown,
        anti_roll_bar: Stated::Unknown,
        pinion: Some(Pinion { angle: Value::new(rad(0.0)), nose: Some(point([0.25, 0.0, 0.32])) }),
        pitching: Some(Pitching {
            drive_share: Some(Value::new(Ratio::from_si(1.0))),
            brake_share: Some(Value::new(Ratio::from_si(0.4))),
            centre_of_gravity_height: value(0.54),
            wheelbase: value(2.6),
        }),
    }
}

/// Lower and upper link, body and axle; lateral rod, body and axle.
type Points = [[f64; 3]; 6];
const FOUR: Points = [
    [0.56, 0.42, 0.3],
    [0.02, 0.46, 0.235],
    [0.42, 0.36, 0.425],
    [-0.02, 0.38, 0.455],
    [-0.1, 0.46, 0.36],
    [-0.1, -0.5, 0.335],
];
const PARALLEL: Points = [
    [0.55, 0.42, 0.22],
    [0.0, 0.42, 0.22],
    [0.55, 0.42, 0.42],
    [0.0, 0.42, 0.42],
    [-0.1, 0.48, 0.32],
    [-0.1, -0.48, 0.32],
];
/// Upper links that spread from the axle's middle to the body.
const ANGLED: Points = [
    [0.56, 0.42, 0.3],
    [0.02, 0.46, 0.235],
    [0.42, 0.42, 0.43],
    [0.03, 0.09, 0.47],
    [-0.1, 0.46, 0.36],
    [-0.1, -0.5, 0.335],
];

fn coil_over() -> AxleCoilOver {
    AxleCoilOver {
        body_eye: point([0.05, 0.4, 0.72]),
        axle_eye: point([-0.05, 0.5, 0.27]),
        spring: Some(CoilSpring {
            rate: Value::new(LinearStiffness::from_si(40_000.0)),
            free_length: value(0.40),
            solid_length: value(0.15),
            seat_offset: value(0.17),
        }),
        damper: Some(Damper {
            open_length: value(0.60),
            closed_length: value(0.36),
            gas_force: Some(Value::new(Force::from_si(150.0))),
        }),
    }
}
fn bar(bearings: Mount) -> AxleBar {
    match bearings {
        Mount::Body => AxleBar {
            bearings,
            link_eye: point([0.06, 0.5, 0.3]),
            lever_end: point([0.05, 0.5, 0.44]),
            lever_pivot: point([0.27, 0.4, 0.45]),
        },
        Mount::Axle => AxleBar {
            bearings,
            link_eye: point([0.26, 0.48, 0.47]),
            lever_end: point([0.25, 0.5, 0.31]),
            lever_pivot: point([0.05, 0.5, 0.3]),
        },
    }
}

fn four(p: Points) -> LiveAxle {
    let links = vec![link("lower", Fitted::Pair, p[0], p[1]), link("upper", Fitted::Pair, p[2], p[3])];
    let mut model = straight(links, Some(rod(p[4], p[5])));
    model.coil_over = Stated::Given(coil_over());
    model
}
fn angled(p: Points) -> LiveAxle {
    let mut model = four(p);
    model.lateral_rod = Stated::Unknown;
    model
}
/// Two lower links, one upper one, a rod: nothing is redundant.
fn three(p: Points) -> LiveAxle {
    let mut model = four(p);
    let [x, _, z] = p[2];
    let [u, _, w] = p[3];
    model.links[1] = link("upper", Fitted::Single, [x, 0.1, z], [u, 0.12, w]);
    model
}
fn watt(p: Points, carried_by: Mount, middle: f64) -> LiveAxle {
    let mut model = three(p);
    model.lateral_rod = Stated::Unknown;
    let rod = |crank, outer| WattRod {
        crank: point(crank),
        outer: point(outer),
        crank_bush: None,
        outer_bush: None,
        crank_limit: None,
        outer_limit: None,
    };
    model.watt = Stated::Given(WattLinkage {
        carried_by,
        pivot: point([-0.1, 0.0, middle]),
        upper_rod: rod([-0.1, 0.0, middle + 0.08], [-0.1, -0.45, middle + 0.08]),
        lower_rod: rod([-0.1, 0.0, middle - 0.08], [-0.1, 0.45, middle - 0.08]),
    });
    model
}
fn bushed(mut model: LiveAxle, stiffness: [f64; 3]) -> LiveAxle {
    for (link, stiffness) in model.links.iter_mut().zip(stiffness) {
        link.body_bush = bush(stiffness);
    }
    if let Stated::Given(rod) = &mut model.lateral_rod {
        rod.axle_bush = bush(stiffness[2]);
    }
    if let Stated::Given(watt) = &mut model.watt {
        watt.upper_rod.outer_bush = bush(stiffness[2]);
        watt.lower_rod.crank_bush = bush(stiffness[2]);
    }
    model
}
fn shifted(mut points: Points, shifts: &[f64]) -> Points {
    for (place, shift) in shifts.iter().enumerate() {
        points[place / 3][place % 3] += shift;
    }
    points
}

fn mirror_image(model: &LiveAxle) -> LiveAxle {
    let mut other = model.clone();
    let flip = |point: &mut Point| point.y = Value::new(-point.y.quantity);
    for link in other.links.iter_mut().filter(|link| link.fitted == Fitted::Single) {
        flip(&mut link.body);
        flip(&mut link.axle);
    }
    if let Stated::Given(rod) = &mut other.lateral_rod {
        flip(&mut rod.body);
        flip(&mut rod.axle);
    }
    if let Stated::Given(watt) = &mut other.watt {
        flip(&mut watt.pivot);
        for rod in [&mut watt.upper_rod, &mut watt.lower_rod] {
            flip(&mut rod.crank);
            flip(&mut rod.outer);
        }
    }
    other
}

fn several(shifts: &[f64], which: usize) -> LiveAxle {
    let points = shifted(FOUR, shifts);
    match which {
        0 => three(points),
        1 => angled(shifted(ANGLED, shifts)),
        2 => bushed(four(points), [3e6, 8e6, 5e6]),
        3 => bushed(four(points), [0.0, 6e6, 2e6]),
        4 => watt(points, Mount::Axle, points[4][2]),
        _ => watt(points, Mount::Body, points[5][2]),
    }
}

#[test]
fn at_ride_height_the_axle_stands_as_drawn() {
    for model in [
        four(FOUR),
        four(PARALLEL),
        angled(ANGLED),
        three(FOUR),
        watt(FOUR, Mount::Axle, 0.32),
        bushed(four(FOUR), [1e7; 3]),
    ] {
        let on = model.at(metres(0.0), rad(0.0)).unwrap();
        for (found, wanted) in [
            (on.axle_x.si(), 0.0),
            (on.lateral_shift.si(), 0.0),
            (on.axle_z.si(), 0.32),
            (on.axle_pitch.si(), 0.0),
            (on.axle_steer.si(), 0.0),
            (on.left_wheel_y.si(), 0.75),
            (on.right_wheel_y.si(), -0.75),
            (on.left_camber.si(), 0.0),
            (on.peak_lean.si(), 0.0),
            (on.bind_misfit.si(), 0.0),
        ] {
            assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
        }
    }
}

/// Positions of a parallel and of a converging four-link with a rod, by `least_squares` of scipy on the distances and a second, constructive
/// solution (independent scripts outside the project; residual below 1e-12 m): heave, roll; forward, to the left; pitch of the x axis, yaw in degrees.
#[test]
fn one_freedom_leads_where_another_solution_finds_the_axle() {
    let found = [
        (
            -0.075,
            0.11291582687359795,
            0.009233762868823827,
            0.005640358447929442,
            -3.3161032061066407,
            -0.025113940780995502,
            0.3935235104750594,
            0.544423763099742,
        ),
        (
            -0.05,
            0.05347559253561524,
            0.004848815432576958,
            0.0029574553390683263,
            -2.284453882133586,
            -0.0169019754829285,
            0.38180473636566425,
            0.5203321059605777,
        ),
        (
            0.075,
            0.01403493239038676,
            0.002273063532333303,
            0.0013545772073674022,
            4.079892141312968,
            -0.012801841372188552,
            0.3223296141744029,
            0.3978345200162429,
        ),
    ];
    // Whatever gives: at this roll nothing binds.
    for model in [four(FOUR), bushed(four(FOUR), [4e6, 6e6, 9e6]), bushed(four(FOUR), [0.0, 6e6, 0.0])] {
        for (heave, roll, forward, left, pitch, yaw, rod, eyes) in found {
            let on = model.at(metres(heave), rad(f64::to_radians(roll))).unwrap();
            for (found, wanted, within) in [
                (on.axle_x.si(), forward, 1e-9),
                (on.lateral_shift.si(), left, 1e-9),
                (-on.pinion_angle.si().to_degrees(), pitch, 1e-6),
                (on.axle_steer.si().to_degrees(), yaw, 1e-6),
                (on.lateral_rod_height.si(), rod, 1e-6),
                (on.left_eye_length.si(), eyes, 1e-8),
                (on.bind_misfit.si(), 0.0, 1e-9),
            ] {
                assert!((found - wanted).abs() < within, "{heave}: {found} {wanted}");
            }
            assert_eq!((on.freedoms, on.redundant), (1, 1));
        }
    }
    // The instant centre in side view and the anti-squat at ride height, by drawing lines; a level rod, which binds less in heave.
    let mut level = FOUR;
    level[5][2] = level[4][2];
    let on = four(level).at(metres(0.0), rad(0.0)).unwrap();
    assert_relative_eq!(on.side_view_centre_x.si(), 1.1723214285714285, max_relative = 1e-9);
    assert_relative_eq!(on.side_view_centre_height.si() - 0.01, 0.37370535714285713, max_relative = 1e-9);
    assert_relative_eq!(on.drive_anti_pitch.si(), 1.575907590759076, max_relative = 1e-9);
}

/// Results of the same scripts: five parallel and equal links leave two freedoms, and fit in roll, too.
#[test]
fn parallel_and_equal_links_leave_two_freedoms() {
    let model = four(PARALLEL);
    for (heave, roll, forward, left, pitch) in [
        (0.0, 0.0, 0.0, 0.0, 0.0),
        (-0.075, 0.0, 0.005145607275278767, 0.0029480041681285312, 0.0),
        (0.075, 0.0, 0.005145607275278798, 0.002948004168128458, 0.0),
        (0.0, 0.05, 0.0004237932034257648, -0.00029998466373076446, 0.0015630857221185363),
        (0.0, 0.1, 0.0016970610124784735, -0.001199755190816329, 0.012516146392402764),
    ] {
        let on = model.at(metres(heave), rad(roll)).unwrap();
        assert!(
            (on.axle_x.si() - forward).abs() < 1e-9 && (on.lateral_shift.si() - left).abs() < 1e-9,
            "{on:?}"
        );
        assert!(
            (on.pinion_angle.si().to_degrees() + pitch).abs() < 1e-6 && on.bind_misfit.si() < 1e-9,
            "{on:?}"
        );
        assert!(on.axle_steer.si().abs() < 1e-6 || roll != 0.0);
        // Once the rod has pitched a rolled axle a little, the next bit of heave binds.
        assert_eq!((on.freedoms, on.redundant), (if roll == 0.0 { 2 } else { 1 }, 1));
    }
}

/// A rod swings on its arc and leads the roll centre: the height where it crosses the centre plane (textbooks; W. F. Milliken, D. L. Milliken,
/// *Race Car Vehicle Dynamics* (1995), chapter 17, from memory).
#[test]
fn a_lateral_rod_swings_on_its_arc_and_leads_the_roll_centre() {
    let model = four(PARALLEL);
    for heave in [-0.08, -0.02, 0.03, 0.09] {
        let on = model.at(metres(heave), rad(0.0)).unwrap();
        let arc = 0.96 - f64::sqrt(0.96 * 0.96 - heave * heave - on.axle_x.si() * on.axle_x.si());
        assert_relative_eq!(on.lateral_shift.si(), arc, max_relative = 1e-10);
        // Parallel links neither steer nor turn the axle.
        assert!(on.axle_steer.si().abs() < 1e-13 && on.axle_pitch.si().abs() < 1e-13);
        let carried = (on.axle_x.si() - 0.55).hypot(heave).hypot(arc);
        assert_relative_eq!(carried, 0.55, max_relative = 1e-12);
    }
    // A rod in the plane of the axle, so that steer in roll does not touch it.
    let mut points = FOUR;
    (points[4], points[5]) = ([0.0, 0.46, 0.38], [0.0, -0.5, 0.3]);
    for model in [three(points), bushed(three(points), [1e6; 3])] {
        for heave in [-0.05, 0.0, 0.04] {
            let on = model.at(metres(heave), rad(0.0)).unwrap();
            // Beside ride height the rod leaves the transverse plane.
            let within = if heave == 0.0 { 1e-9 } else { 3e-3 };
            assert_relative_eq!(
                on.roll_centre_height.si(),
                on.lateral_rod_height.si(),
                max_relative = within
            );
        }
    }
}

/// A straight and level Watt linkage leads its pivot on a straight line: shift and roll centre are those of the pivot.
#[test]
fn a_watt_linkage_leads_its_pivot() {
    for carried_by in [Mount::Axle, Mount::Body] {
        let model = watt(FOUR, carried_by, 0.3);
        let rest = model.at(metres(0.0), rad(0.0)).unwrap();
        // The pivot stands 0.1 m behind the axle and swings a little as the axle steers in roll.
        let swing = 0.1 * rest.roll_steer.si();
        assert_relative_eq!(rest.roll_centre_height.si() - 0.01 * 0.0, 0.31 + swing, max_relative = 1e-9);
        let rod = four(FOUR).at(metres(0.06), rad(0.0)).unwrap();
        let on = model.at(metres(0.06), rad(0.0)).unwrap();
        assert!(
            on.lateral_shift.si().abs() < 0.2 * rod.lateral_shift.si().abs(),
            "{}",
            on.lateral_shift.si()
        );
        assert_eq!((on.freedoms, on.redundant), (2, 0));
    }
    let mut over = watt(FOUR, Mount::Axle, 0.3);
    over.links = four(FOUR).links;
    let on = bushed(over, [5e6; 3]).at(metres(0.03), rad(0.05)).unwrap();
    assert!(on.redundant == 1 && on.freedoms == 1 && on.bind_force.si() > 1.0);
}

/// Anti-squat as the share of the line from the contact point to the height of the centre of gravity over the other axle
/// (T. D. Gillespie, *Fundamentals of Vehicle Dynamics* (1992), chapter 7; from memory).
#[test]
fn anti_squat_is_read_off_the_line_to_the_centre_of_gravity() {
    for upper in [0.38, 0.41, 0.45] {
        let mut points = FOUR;
        (points[2][2], points[5][2]) = (upper, points[4][2]);
        let on = four(points).at(metres(0.0), rad(0.0)).unwrap();
        let slope = on.side_view_centre_height.si() / on.side_view_centre_x.si();
        assert_relative_eq!(on.drive_anti_pitch.si(), slope / (0.54 / 2.6), max_relative = 1e-10);
        assert_relative_eq!(on.brake_anti_pitch.si(), 0.4 * on.drive_anti_pitch.si(), max_relative = 1e-12);
        let line = |at: f64, from: [f64; 3], to: [f64; 3]| {
            from[2] + (at - from[0]) * (to[2] - from[2]) / (to[0] - from[0])
        };
        let x = on.side_view_centre_x.si();
        let crossing = line(x, points[0], points[1]);
        assert_relative_eq!(crossing, line(x, points[2], points[3]), max_relative = 1e-9);
        assert_relative_eq!(crossing + 0.01, on.side_view_centre_height.si(), max_relative = 1e-9);
    }
}

/// With one stiffness in every link the bushes give where rigid links miss, and by as much as the force over the stiffness.
#[test]
fn misfit_at_rigid_joints_is_bush_force_over_stiffness() {
    for (model, heave, roll) in
        [(four(FOUR), 0.05, 0.06), (four(FOUR), -0.03, -0.04), (four(ANGLED), 0.02, 0.03)]
    {
        let rigid = model.at(metres(heave), rad(roll)).unwrap();
        assert!(
            rigid.bind_force.si().is_nan()
                && rigid.bind_moment.si().is_nan()
                && rigid.bind_roll_stiffness.si().is_nan()
        );
        assert!(rigid.bind_misfit.si() > 1e-5, "{}", rigid.bind_misfit.si());
        for stiffness in [1e6, 8e6] {
            let model = bushed(model.clone(), [stiffness; 3]);
            let on = model.at(metres(heave), rad(roll)).unwrap();
            assert_relative_eq!(on.bind_misfit.si(), rigid.bind_misfit.si(), max_relative = 1e-9);
            assert_relative_eq!(
                on.lateral_shift.si(),
                rigid.lateral_shift.si(),
                max_relative = 1e-9,
                epsilon = 1e-12
            );
            assert_eq!(on.bind_link, rigid.bind_link);
            let ready = model.prepare().unwrap();
            let pose = ready.linkage.at(heave, roll).unwrap();
            let stretches = &pose.held.stretch.0[..ready.linkage.links.len()];
            let missed: f64 = stretches.iter().map(|stretch| stretch * stretch).sum();
            assert_relative_eq!(missed.sqrt(), rigid.bind_misfit.si(), max_relative = 1e-9);
            let most = stretches.iter().fold(0.0, |most: f64, stretch| most.max(stretch.abs()));
            assert_relative_eq!(on.bind_force.si() / stiffness, most, max_relative = 1e-9);
        }
    }
}

#[test]
fn rigid_links_beside_bushes_keep_their_length() {
    let model = bushed(four(FOUR), [0.0, 3e6, 0.0]);
    let ready = model.prepare().unwrap();
    let pose = ready.linkage.at(0.04, 0.05).unwrap();
    for (place, stretch) in pose.held.stretch.0.iter().enumerate().take(5) {
        assert_eq!(stretch.abs() < 1e-12, ready.linkage.links[place].give == 0.0, "{place} {}", stretch);
    }
    // As stiff bushes in their place do, nearly.
    let (on, near) = (
        model.at(metres(0.04), rad(0.05)).unwrap(),
        bushed(four(FOUR), [1e11, 3e6, 1e11]).at(metres(0.04), rad(0.05)).unwrap(),
    );
    assert_relative_eq!(on.bind_force.si(), near.bind_force.si(), max_relative = 1e-3);
    assert_relative_eq!(on.bind_roll_stiffness.si(), near.bind_roll_stiffness.si(), max_relative = 1e-3);
}

/// Every axle with a bar on the body and on itself.
fn drawable() -> impl Iterator<Item = LiveAxle> {
    (0..12).map(|which| {
        let mut model = several(&[0.0; 18], which / 2);
        model.coil_over = Stated::Given(coil_over());
        model.anti_roll_bar = Stated::Given(bar([Mount::Body, Mount::Axle][which % 2]));
        model.wheel.camber = Value::new(rad(-0.02));
        model
    })
}

#[test]
fn at_ride_height_the_points_are_those_that_were_given() {
    for model in drawable() {
        let points = read::points(&model.points(&[metres(0.0)], &[rad(0.0)]).unwrap());
        let mut given = vec![
            ("axle".to_owned(), "left end", &model.wheel.centre, true),
            ("wheel left".to_owned(), "centre", &model.wheel.centre, true),
        ];
        for link in &model.links {
            let pair = link.fitted == Fitted::Pair;
            let name = if pair { format!("{} left", link.name) } else { link.name.clone() };
            given.push((name.clone(), "body", &link.body, pair));
            given.push((name, "axle", &link.axle, pair));
        }
        let single = |part: &str, point, at| (part.to_owned(), point, at, false);
        if let Stated::Given(rod) = &model.lateral_rod {
            given
                .extend([single("lateral rod", "body", &rod.body), single("lateral rod", "axle", &rod.axle)]);
        }
        if let Stated::Given(watt) = &model.watt {
            for (name, end, rod) in
                [("upper rod", "upper end", &watt.upper_rod), ("lower rod", "lower end", &watt.lower_rod)]
            {
                given.extend([
                    single(name, "crank", &rod.crank),
                    single(name, "outer", &rod.outer),
                    single("bell crank", end, &rod.crank),
                ]);
            }
            given.push(single("bell crank", "pivot", &watt.pivot));
        }
        let (coil_over, bar) = (model.coil_over.as_ref().unwrap(), model.anti_roll_bar.as_ref().unwrap());
        given.push(("coil-over left".to_owned(), "body eye", &coil_over.body_eye, true));
        given.push(("coil-over left".to_owned(), "axle eye", &coil_over.axle_eye, true));
        given.push(("anti-roll bar".to_owned(), "left link eye", &bar.link_eye, true));
        given.push(("anti-roll bar".to_owned(), "left lever end", &bar.lever_end, true));
        given.push(single("pinion", "nose", model.pinion.as_ref().unwrap().nose.as_ref().unwrap()));
        let mut said = given.len();
        for (part, point, at, pair) in given {
            let (drawn, other) = (at.vector(), mirrored(at.vector()));
            assert!((read::place(&points, &part, point) - drawn).norm() < 1e-12, "{part}, {point}");
            if pair {
                let (part, point) = (part.replace("left", "right"), point.replace("left", "right"));
                assert!((read::place(&points, &part, &point) - other).norm() < 1e-12, "{part}, {point}");
                said += 1;
            }
        }
        // Points that were not given: contact points, the bar's levers on it, the pinion's foot.
        assert_eq!(points.len(), said + 2 + 2 + 1);
        let (foot, pivot) =
            (read::place(&points, "anti-roll bar", "left lever pivot"), bar.lever_pivot.vector());
        assert!((foot.x - pivot.x).hypot(foot.z - pivot.z) < 1e-12);
        let (nose, foot) = (read::place(&points, "pinion", "nose"), read::place(&points, "pinion", "foot"));
        assert!((nose - foot - vector(0.25, 0.0, 0.0)).norm() < 1e-12);
    }
}

/// The axle carries what is on it; what is rigid keeps its length, and a link on bushes has the length that its forces give it.
#[test]
fn what_is_rigid_keeps_its_length_and_links_have_that_of_the_model() {
    let on_axle = |part: &str, point: &str, model: &LiveAxle| match (part, point) {
        ("axle" | "pinion", _) | (_, "axle eye" | "axle" | "centre") => true,
        ("bell crank", "pivot") => model.watt.as_ref().unwrap().carried_by == Mount::Axle,
        ("anti-roll bar", "left lever pivot") => {
            model.anti_roll_bar.as_ref().unwrap().bearings == Mount::Axle
        }
        ("anti-roll bar", "right link eye") => model.anti_roll_bar.as_ref().unwrap().bearings == Mount::Body,
        _ => false,
    };
    for model in drawable() {
        let ready = model.prepare().unwrap();
        let rest = read::points(&model.points(&[metres(0.0)], &[rad(0.0)]).unwrap());
        for (heave, roll) in [(-0.06, 0.0), (0.05, 0.0), (0.02, 0.05), (-0.03, -0.04)] {
            let points = read::points(&model.points(&[metres(heave)], &[rad(roll)]).unwrap());
            let pose = ready.linkage.at(heave, roll).unwrap();
            let on = model.at(metres(heave), rad(roll)).unwrap();
            let centre = read::place(&points, "wheel right", "centre");
            let wheel = vector(on.right_wheel_x.si(), on.right_wheel_y.si(), on.right_wheel_z.si());
            assert!((centre - wheel).norm() < 1e-12);
            let eyes = read::place(&points, "coil-over left", "body eye")
                - read::place(&points, "coil-over left", "axle eye");
            assert!((eyes.norm() - on.left_eye_length.si()).abs() < 1e-12);
            for (place, (part, point, at)) in points.iter().enumerate() {
                let (left, right) =
                    (read::place(&points, "axle", "left end"), read::place(&points, "axle", "right end"));
                let drawn = rest[place].2;
                if on_axle(part, point, &model) {
                    let (a, b) =
                        (read::place(&rest, "axle", "left end"), read::place(&rest, "axle", "right end"));
                    let off =
                        ((*at - left).norm() - (drawn - a).norm(), (*at - right).norm() - (drawn - b).norm());
                    assert!(off.0.abs() < 1e-9 && off.1.abs() < 1e-9, "{part}, {point}: {off:?}");
                }
                let Some((before, ..)) =
                    place.checked_sub(1).map(|place| &points[place]).filter(|on| on.0 == *part)
                else {
                    continue;
                };
                let found = (*at - points[place - 1].2).norm();
                let kept = (drawn - rest[place - 1].2).norm();
                let name = match part.as_str() {
                    "upper rod" => "watt.upper_rod",
                    "lower rod" => "watt.lower_rod",
                    other => other,
                };
                if before.starts_with("coil-over") {
                    assert!((found - kept).abs() > 1e-3, "{part}");
                } else if let Some(link) = ready.names.iter().position(|link| link == name) {
                    let stretch = pose.held.stretch.0[link];
                    assert!((found - kept - stretch).abs() < 1e-9, "{part}: {found} {kept} {stretch}");
                    assert!(ready.linkage.redundant() > 0 || stretch.abs() < 1e-9);
                } else {
                    assert!((found - kept).abs() < 1e-9, "{part}, {point}: {found} {kept}");
                }
            }
        }
    }
}

#[test]
fn the_points_of_a_mirror_image_are_those_of_the_other_side() {
    for model in drawable() {
        let points =
            |model: &LiveAxle, roll: f64| read::points(&model.points(&[metres(0.03)], &[rad(roll)]).unwrap());
        let image = read::mirrored(&points(&mirror_image(&model), -0.04));
        let points = points(&model, 0.04);
        assert_eq!(points.len(), image.len());
        for (part, point, at) in &points {
            let away = (read::place(&image, part, point) - *at).norm();
            assert!(away < 1e-9, "{part}, {point}: {away}");
        }
    }
}

#[test]
fn where_the_axle_does_not_go_its_points_say_why() {
    let mut model = four(FOUR);
    let table = model.points(&[0.0, 0.9].map(metres), &[0.0, 0.02].map(rad)).unwrap();
    let last = table.rows() - 1;
    assert!(table.word("part", last).is_none() && table.word("part", last - 2).is_some());
    assert!(table.reason(last).unwrap().to_string().contains("is over-extended"));
    assert_eq!(["heave", "roll"].map(|name| table.numbers(name).unwrap()[last]), [0.9, 0.02]);
    model.anti_roll_bar =
        Stated::Given(AxleBar { lever_pivot: point([0.09, 0.4, 0.45]), ..bar(Mount::Body) });
    let short = model.points(&[metres(0.14)], &[rad(0.0)]).unwrap();
    assert!(short.reason(0).unwrap().to_string().contains("drop link of the anti_roll_bar"));
}

#[test]
fn no_link_has_the_name_of_another_part() {
    let named = |name: &str, fitted: Fitted| {
        let mut model = three(FOUR);
        model.links[1].name = name.to_owned();
        model.links[1].fitted = fitted;
        model
    };
    let drawn = LiveAxle { anti_roll_bar: Stated::Given(bar(Mount::Body)), ..watt(FOUR, Mount::Body, 0.32) };
    for model in [&drawn, &three(FOUR)] {
        let table = model.points(&[metres(0.0)], &[rad(0.0)]).unwrap();
        let own = ["lower left", "lower right", "upper"];
        let parts = (0..table.rows()).filter_map(|row| table.word("part", row));
        assert!(parts.filter(|part| !own.contains(part)).all(|part| OTHER_PARTS.contains(&part)));
    }
    for name in OTHER_PARTS.into_iter().chain(["lower left", "lower right"]) {
        let message = named(name, Fitted::Single).check().unwrap_err().to_string();
        assert_eq!(
            message,
            format!("links[1]: name: {name} is the name of another part: give the link one of its own")
        );
    }
    for name in ["wheel", "coil-over"] {
        let message = named(name, Fitted::Pair).check().unwrap_err().to_string();
        assert!(message.starts_with(&format!("links[1]: name: {name} left is the name")), "{message}");
        assert!(named(name, Fitted::Single).check().is_ok());
    }
    assert!(named("axle", Fitted::Pair).check().is_ok());
}

#[test]
fn what_cannot_be_is_refused_by_name() {
    let with = |change: &dyn Fn(&mut LiveAxle)| {
        let mut model = four(FOUR);
        change(&mut model);
        model
    };
    let nan = point([f64::NAN, 0.0, 0.0]);
    for (wrong, key) in [
        (with(&|on| on.links[1].axle = nan.clone()), "links[1].axle: x = NaN"),
        (with(&|on| on.links[1].name = "lower".to_owned()), "links[1]: name: two links are called lower"),
        (with(&|on| on.links[0].name = " ".to_owned()), "links[0]: name is empty"),
        (with(&|on| on.links[0].axle = point([0.0, -0.4, 0.2])), "links[0]: axle: a pair"),
        (
            with(&|on| on.links[0].body_bush = Some(Value::new(LinearStiffness::from_si(0.5)))),
            "links[0].body_bush: stiffness = 0.5",
        ),
        (
            with(&|on| {
                on.links.pop();
            }),
            "links: 2 links",
        ),
        (
            with(&|on| {
                on.links[1].fitted = Fitted::Single;
                on.lateral_rod = Stated::Unknown;
            }),
            "links: three links do not hold the axle sideways",
        ),
        (with(&|on| on.watt = watt(FOUR, Mount::Axle, 0.3).watt), "watt: a lateral rod holds"),
        (with(&|on| on.links[0].body = on.links[0].axle.clone()), "lower left: it is shorter than 1 mm"),
        (
            with(&|on| on.coil_over = Stated::Given(AxleCoilOver { axle_eye: nan.clone(), ..coil_over() })),
            "coil_over.axle_eye: x = NaN",
        ),
        (
            with(&|on| {
                on.anti_roll_bar =
                    Stated::Given(AxleBar { lever_end: point([0.27, 0.4, 0.45]), ..bar(Mount::Body) })
            }),
            "anti_roll_bar.lever_end",
        ),
        (
            angled(PARALLEL),
            "links: all links lie in parallel planes along the vehicle and nothing holds the axle sideways",
        ),
        (
            with(&|on| {
                on.links[1].body = point([0.56, 0.42, 0.3]);
                on.links[1].axle = point([0.02, 0.46, 0.235]);
            }),
            "links: nothing keeps the axle from turning about its own length",
        ),
        (
            LiveAxle { lateral_rod: Stated::Given(rod([0.3, 0.4, 0.3], [-0.2, 0.4, 0.3])), ..four(PARALLEL) },
            "links: all links lie in parallel planes",
        ),
    ] {
        let message = wrong.check().unwrap_err().to_string();
        assert!(message.starts_with(key), "{message}");
        assert!(wrong.at(metres(0.0), rad(0.0)).is_err() && wrong.travel_range(rad(0.0)).is_err());
    }
}

#[test]
fn beyond_its_range_the_refusal_says_which_link_and_how_far() {
    for model in
        [angled(ANGLED), three(FOUR), watt(FOUR, Mount::Body, 0.32), four(FOUR), bushed(four(FOUR), [5e6; 3])]
    {
        for roll in [0.0, 0.05] {
            let range = model.travel_range(rad(roll)).unwrap();
            assert!(range.droop.si() < -0.15 && range.bump.si() > 0.15, "{range:?}");
            for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                assert!(model.at(metres(limit * (1.0 - 1e-3)), rad(roll)).is_ok(), "{limit}");
                let error = model.at(metres(limit * (1.0 + 1e-3)), rad(roll)).unwrap_err();
                let message = error.to_string();
                let crate::Error::NoSolution(why) = error else { panic!("{message}") };
                let nearest = (why.lower - limit).abs().min((why.upper - limit).abs());
                assert!(
                    message.contains(&format!("cannot be reached: {end} is over-extended")) && nearest < 1e-6,
                    "{message}"
                );
            }
        }
    }
    for (roll, side) in [(-0.95, "-54.4"), (0.95, "54.4")] {
        let message = four(FOUR).at(metres(0.0), rad(roll)).unwrap_err().to_string();
        assert!(
            message.starts_with(&format!("roll = {side}")) && message.contains("over-extended"),
            "{message}"
        );
    }
    // A drop link that is too short for the travel.
    let mut model = four(FOUR);
    model.anti_roll_bar =
        Stated::Given(AxleBar { lever_pivot: point([0.09, 0.4, 0.45]), ..bar(Mount::Body) });
    let message = model.at(metres(0.14), rad(0.0)).unwrap_err().to_string();
    assert!(
        message.contains("drop link of the anti_roll_bar") && message.contains("on the way there, at "),
        "{message}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// A row of a table is what the model says alone, to the bit, whatever the rows before it found or refused.
    #[test]
    fn a_row_is_the_position_alone_to_the_bit(
        shifts in prop::collection::vec(-0.02..0.02, 18), which in 0..6_usize, fitted in prop::collection::vec(any::<bool>(), 8),
        rows in prop::collection::vec((-0.1..0.1_f64, -0.15..0.15_f64, 0..12_usize), 4),
    ) {
        let mut model = several(&shifts, which);
        if !fitted[0] {
            model.coil_over = Stated::Unknown;
        } else if let Stated::Given(on) = &mut model.coil_over {
            if !fitted[1] {
                on.spring = None;
            }
            if !fitted[2] {
                on.damper = None;
            }
        }
        if fitted[3] {
            model.anti_roll_bar = Stated::Given(bar(if fitted[4] { Mount::Axle } else { Mount::Body }));
        }
        if !fitted[5] {
            model.pinion = None;
        }
        if !fitted[6] {
            model.pitching = None;
        }
        if fitted[7] {
            model.links[1].axle_limit = Some(Value::new(rad(0.1)));
        }
        let wild = |on: f64, kind: usize| match kind {
            0 => f64::NAN,
            1 => 11.0,
            2 => 0.9,
            _ => on,
        };
        let heaves: Vec<Length> = rows.iter().map(|(heave, _, kind)| metres(wild(*heave, *kind))).collect();
        let rolls: Vec<Angle> = rows.iter().map(|(_, roll, kind)| rad(wild(*roll, *kind * 5 % 12))).collect();
        let Ok(table) = model.table(&heaves, &rolls) else { return Ok(()) };
        let (ready, mut row) = (model.prepare().unwrap(), 0);
        for heave in &heaves {
            for roll in &rolls {
                let alone = alone(["heave", "roll"], (*heave, *roll), ready.at(*heave, *roll));
                prop_assert_eq!(difference((&table, row), (&alone, 0)), None);
                row += 1;
            }
        }
    }
}

proptest! {
    /// Links keep their length to 1e-12 m where nothing is redundant; otherwise the forces of the bushes are in balance.
    #[test]
    fn links_keep_their_length_or_are_in_balance(
        shifts in prop::collection::vec(-0.02..0.02, 18), heave in -0.09..0.09, roll in -0.1..0.1, which in 0..6_usize,
    ) {
        let model = several(&shifts, which);
        let Ok(ready) = model.prepare() else { return Ok(()) };
        let Some(pose) = ready.linkage.at(heave, roll) else { return Ok(()) };
        let links = &ready.linkage.links;
        let middle = pose.frame.middle;
        prop_assert!((middle.z - 0.32 - heave).abs() < 1e-15);
        let across = pose.frame.direction(vector(0.0, 1.0, 0.0));
        prop_assert!((across.z.asin() - roll).abs() < 1e-12, "{} {roll}", across.z.asin());
        let mut balance = [0.0; 4];
        let stretches = &pose.held.stretch.0[..links.len()];
        for (lane, (link, stretch)) in links.iter().zip(stretches).enumerate() {
            if link.axle_crank == Vector::default() && link.body_crank == Vector::default() {
                let again = (middle + pose.frame.direction(link.axle) - link.body).norm();
                prop_assert!((again - pose.held.length.0[lane]).abs() < 1e-14);
            }
            let force = stretch / if link.give > 0.0 { link.give } else { 1.0 };
            for (sum, row) in balance.iter_mut().zip(pose.held.row) {
                *sum += force * row.0[lane];
            }
            if ready.linkage.redundant() == 0 {
                prop_assert!(stretch.abs() < 1e-12, "{}", stretch);
            }
        }
        if which == 3 {
            for (link, stretch) in links.iter().zip(stretches).filter(|(link, _)| link.give == 0.0) {
                prop_assert!(stretch.abs() < 1e-12, "{} {}", stretch, link.give);
            }
        } else if ready.linkage.redundant() == 1 {
            let most = stretches.iter().map(|stretch| stretch.abs()).fold(0.0, f64::max);
            let scale = most * links.iter().map(|link| if link.give > 0.0 { 1.0 / link.give } else { 1.0 }).fold(0.0, f64::max);
            prop_assert!(balance.iter().all(|sum| sum.abs() < 1e-7 * scale + 1e-6), "{balance:?} {scale}");
        }
    }

    /// Analytic derivatives against differences of positions; energy against forces and rates in heave and in roll.
    #[test]
    fn rates_are_derivatives(
        shifts in prop::collection::vec(-0.015..0.015, 18), heave in -0.06..0.06, roll in -0.07..0.07, which in 0..6_usize, mount in any::<bool>(),
    ) {
        let mut model = several(&shifts, which);
        model.anti_roll_bar = Stated::Given(bar(if mount { Mount::Axle } else { Mount::Body }));
        let at = |z: f64, phi: f64| model.at(metres(z), rad(phi));
        let h = 1e-4;
        let (Ok(on), Ok(low), Ok(high), Ok(right), Ok(left)) =
            (at(heave, roll), at(heave - h, roll), at(heave + h, roll), at(heave, roll - h), at(heave, roll + h)) else { return Ok(()) };
        let up = |of: fn(&AxlePosition) -> f64| (of(&high) - of(&low)) / (2.0 * h);
        let turn = |of: fn(&AxlePosition) -> f64| (of(&left) - of(&right)) / (2.0 * h);
        let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
        prop_assert!(near(up(|on| on.axle_steer.si()) * BUMP, on.heave_steer.si(), 1e-7));
        prop_assert!(near(turn(|on| on.axle_steer.si()), on.roll_steer.si(), 1e-6));
        prop_assert!(near(up(|on| on.left_eye_length.si()), -on.left_motion_ratio.si(), 1e-6));
        prop_assert!(near(up(|on| on.right_eye_length.si()), -on.right_motion_ratio.si(), 1e-6));
        let travel = turn(|on| on.left_wheel_z.si());
        prop_assert!(near(turn(|on| on.left_eye_length.si()), -on.left_roll_motion_ratio.si() * travel, 1e-6));
        let travel = travel - turn(|on| on.right_wheel_z.si());
        let lever = if mount { 0.2_f64.hypot(0.01) } else { 0.22_f64.hypot(0.01) };
        prop_assert!(near(turn(|on| on.bar_twist.si()) * lever, on.bar_motion_ratio.si() * travel, 1e-5));
        // Virtual work: the energy of coils and gas, and the wheel's forces and rates.
        let energy = |on: &AxlePosition| {
            [(on.left_spring_used.si(), on.left_eye_length.si()), (on.right_spring_used.si(), on.right_eye_length.si())]
                .iter().map(|(used, eyes)| 20_000.0 * used * used - 150.0 * eyes).sum::<f64>()
        };
        let force = on.left_wheel_force.si() + on.right_wheel_force.si();
        prop_assert!(near((energy(&high) - energy(&low)) / (2.0 * h), force, 0.01), "{force}");
        prop_assert!(near(up(|on| on.left_wheel_force.si()), on.left_wheel_rate.si(), 2.0));
        prop_assert!(near(up(|on| on.right_wheel_force.si()), on.right_wheel_rate.si(), 2.0));
        // The moment of the springs about the roll axis: base over track is in the ratio.
        let moment = |on: &AxlePosition, track: [f64; 2]| {
            let forces = [(on.left_wheel_force.si() / on.left_motion_ratio.si(), on.left_roll_motion_ratio.si(), track[0]),
                (on.right_wheel_force.si() / on.right_motion_ratio.si(), on.right_roll_motion_ratio.si(), track[1])];
            forces.iter().map(|(force, ratio, travel)| force * ratio * travel).sum::<f64>()
        };
        let tracks = |on: &AxlePosition| {
            // Height of the wheels' centres over roll: their level distance from the axle's middle.
            let (y, x) = (on.left_wheel_y.si() - on.right_wheel_y.si(), on.left_wheel_x.si() - on.right_wheel_x.si());
            [0.5 * y.hypot(x), -0.5 * y.hypot(x)]
        };
        let stiffness = (moment(&left, tracks(&left)) - moment(&right, tracks(&right))) / (2.0 * h);
        prop_assert!(near(stiffness, on.roll_stiffness.si(), 2.0), "{stiffness} {}", on.roll_stiffness.si());
        // The moment of links that bind, and its slope.
        if on.bind_force.si().is_finite() {
            let slope = turn(|on| on.bind_moment.si());
            let size = 1e-4 * (1.0 + slope.abs()) + 1e-3 * on.bind_moment.si().abs();
            prop_assert!(near(slope, on.bind_roll_stiffness.si(), size), "{slope} {}", on.bind_roll_stiffness.si());
        }
        // The contact points, held in the axle, move as their path says.
        let path = |on: &AxlePosition| (on.axle_x.si(), on.pinion_x.si(), on.pinion_z.si());
        let ((a, nose, height), (b, other, lower)) = (path(&high), path(&low));
        prop_assert!((a - b).is_finite() && (nose - other).is_finite() && (height - lower).is_finite());
    }

    /// Rigid links that are compatible keep their length to the ends of travel and roll.
    #[test]
    fn links_keep_their_length_to_the_ends_of_travel(
        shifts in prop::collection::vec(-0.05..0.05, 18), nearness in 0.0..10.0_f64, up in any::<bool>(), roll in -0.7..0.7_f64, which in 0..6_usize,
    ) {
        let model = several(&shifts, which);
        let Ok(ready) = model.prepare() else { return Ok(()) };
        let Some([low, high]) = ready.linkage.range(roll) else { return Ok(()) };
        let heave = if up { high } else { low }.place * (1.0 - 10.0_f64.powf(-nearness));
        let Some(pose) = ready.linkage.at(heave, roll) else { return Ok(()) };
        let rigid = ready.linkage.redundant() == 0;
        for (link, stretch) in ready.linkage.links.iter().zip(pose.held.stretch.0) {
            prop_assert!(stretch.abs() < 1e-10 || !rigid && (which != 3 || link.give > 0.0), "{}", stretch);
        }
    }

    /// Left and right exchanged: shift, steer and roll change their sign.
    #[test]
    fn a_mirror_image_moves_as_one(shifts in prop::collection::vec(-0.02..0.02, 18), heave in -0.07..0.07, roll in -0.08..0.08, which in 0..6_usize) {
        let model = several(&shifts, which);
        let other = mirror_image(&model);
        let (Ok(one), Ok(two)) = (model.at(metres(heave), rad(roll)), other.at(metres(heave), rad(-roll))) else { return Ok(()) };
        for (a, b) in [
            (one.axle_x, two.axle_x), (one.lateral_shift, -two.lateral_shift), (one.left_eye_length, two.right_eye_length),
            (one.roll_centre_height, two.roll_centre_height), (one.left_wheel_y, -two.right_wheel_y), (one.bind_misfit, two.bind_misfit),
        ] {
            prop_assert!((a - b).si().abs() < 1e-9, "{a:?} {b:?}");
        }
        for (a, b) in [(one.axle_steer, -two.axle_steer), (one.axle_pitch, two.axle_pitch), (one.left_camber, two.right_camber), (one.left_toe, two.right_toe)] {
            prop_assert!((a - b).si().abs() < 1e-9, "{a:?} {b:?}");
        }
        prop_assert!((one.roll_steer.si() - two.roll_steer.si()).abs() < 1e-7);
        prop_assert!((one.roll_stiffness.si() - two.roll_stiffness.si()).abs() < 1e-2);
    }
}
