//! Before and after: the wheel moved in its arch, another ride height, spacers.

use super::prepared::{Independent, PreparedLinkage};
use crate::base::document::Value;
use crate::base::table::{Filling, Table};
use crate::suspension::kinematics::vector::vector;
use crate::suspension::parts::{Axle, Braking};
use crate::units::{Force, Length, Torque};
use crate::{Result, valid};

/// The wheel moved in its arch.
pub(super) fn arch_move(
    model: &impl Independent,
    forward: Length,
    outboard: Length,
    up: Length,
    travel: &[Length],
) -> Result<Table> {
    PreparedLinkage::new(model.parts())?;
    valid! {
        forward: (-10) <= .. <= 10 ; "plausibility limit: no wheel is moved by 10 m";
        outboard: (-10) <= .. <= 10 ; "plausibility limit: no wheel is moved by 10 m";
        up: (-10) <= .. <= 10 ; "plausibility limit: no wheel is moved by 10 m";
    }
    let by = vector(forward.si(), outboard.si(), up.si());
    let mut after = model.clone();
    let changing = after.changing();
    let arm = changing.lower_arm;
    let mut points = changing.points;
    points.extend([&mut arm.front_pivot, &mut arm.rear_pivot, &mut arm.ball_joint]);
    points.extend([&mut changing.tie_rod.outer, &mut changing.wheel.centre]);
    points.extend(changing.anti_roll_bar.map(|bar| &mut bar.link_eye));
    for point in points {
        *point = point.moved(by);
    }
    let longer = match model.parts().axle {
        Axle::Front => forward,
        Axle::Rear => -forward,
    };
    if let Some(braking) = changing.braking {
        braking.wheelbase = Value::new(braking.wheelbase.quantity + longer);
        raise(Some(braking), -up.si());
    }
    compared(model, after, Length::from_si(0.0), travel)
}

/// The body raised or lowered on its springs.
pub(super) fn ride_height_change(model: &impl Independent, rise: Length, travel: &[Length]) -> Result<Table> {
    PreparedLinkage::new(model.parts())?;
    valid! { rise: (-10) <= .. <= 10 ; "plausibility limit: no body is raised by 10 m"; }
    let mut after = model.clone();
    raise(after.changing().braking, rise.si());
    compared(model, after, -rise, travel)
}

/// A spacer behind the wheel.
pub(super) fn spacer(model: &impl Independent, outward: Length, travel: &[Length]) -> Result<Table> {
    PreparedLinkage::new(model.parts())?;
    valid! { outward: (-1) <= .. <= 1 ; "plausibility limit: no spacer is 1 m thick"; }
    let mut after = model.clone();
    let wheel = after.changing().wheel;
    wheel.centre = wheel.centre.moved(wheel.axis() * outward.si());
    compared(model, after, Length::from_si(0.0), travel)
}

/// The centre of gravity raised.
fn raise(braking: Option<&mut Braking>, by: f64) {
    if let Some(braking) = braking {
        let height = &mut braking.centre_of_gravity_height;
        *height = Value::new(height.quantity + Length::from_si(by));
    }
}

/// The rows of two models, of which the second stands at another travel; its coil, or else its torsion bar, is set to the load of the first.
fn compared<M: Independent>(before: &M, mut after: M, standing: Length, travel: &[Length]) -> Result<Table> {
    let before = PreparedLinkage::new(before.parts())?;
    let none = Length::from_si(0.0);
    let changed = {
        let ready = PreparedLinkage::new(after.parts())?;
        ready.springs(&ready.pose(standing, none)?)
    };
    let missing = before.springs(&before.linkage.rest).wheel_force - changed.wheel_force;
    let changing = after.changing();
    if let Some(spring) = changing.spring {
        let force = Force::from_si(changed.spring_force + missing / changed.motion_ratio);
        let length = spring.free_length.quantity - force / spring.rate.quantity;
        let off = Length::from_si(changed.spring_length) - length;
        spring.seat_offset = Value::new(spring.seat_offset.quantity + off);
    } else if let Some(bar) = changing.torsion_bar {
        let torque = Torque::from_si(missing / changed.torsion_bar_ratio);
        bar.torque = Value::new(bar.torque.quantity + torque);
    }
    let after = PreparedLinkage::new(after.parts())?;
    let mut rows = Filling::over(["state", "travel"], &[2, travel.len()])?;
    let mut reaches = [&before, &after].map(|ready| ready.linkage.reach(0.0));
    for travel in travel {
        let states = [("before", &before, none), ("after", &after, standing)];
        for ((state, ready, from), reach) in states.into_iter().zip(&mut reaches) {
            let row = ready.row_at(reach, from + *travel);
            rows.push((state, *travel), row)?;
        }
    }
    rows.finish()
}
