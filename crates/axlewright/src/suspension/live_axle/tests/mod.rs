//! Live axles against constructions by hand, against each other, and against what cannot be.

mod branch;
mod forces;
mod motion;
mod outline;
mod properties;
mod refusals;

use super::bar_lever::mirrored;
use super::model::*;
use super::parts::WattRod;
use super::parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LateralRod, Mount, Pinion, Pitching, WattLinkage,
};
use super::position::*;
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
