//! A strut on the build sheet: its leg as lines, and what follows from it. Arm, tie rod and wheel are lines of the double wishbone.

use super::double_wishbone_lines::{SOURCE, coordinate, joint, point_lines};
use super::stages::{
    AtLock, BetweenStops, InRoll, OnDamper, OnSpring, OverWanted, StrokeAtRide, TravelEachWay, TravelEnds,
    WithBar, at_ride, bar_motion_ratio, stroke,
};
use crate::base::section::{Line, Rule, fields, joined, rule};
use crate::suspension::kinematics::over_travel::{PathOverTravel, RollSteerOverTravel, ToeOverTravel};
use crate::suspension::{Strut, WheelPosition};

const ENDS: [Line; 6] = joined(&[
    &point_lines!("axle.leg.top_mount", "top mount of the strut, on the body"),
    &point_lines!("axle.leg.lower_end", "any lower point of the strut's axis on the upright, at ride height"),
]);
const TOP: [Line; 1] =
    [joint("axle.joint_limits.top_mount", "lean that the top mount of the strut allows, from ride height")];

/// Everything that is measured of it alone.
pub(in crate::suspension) const MEASURED: [Line; 7] = joined(&[&ENDS, &TOP]);

/// Camber and toe over bump, steering axis, roll centre and side view.
pub(in crate::suspension) const AT_RIDE: Rule = rule! {
    "axle" at_ride, Strut
    takes { lower_arm, tie_rod, wheel, leg, wheel.loaded_radius = "axle.tyre.loaded_radius" }
    gives WheelPosition {
        camber_change, bump_steer, caster, kingpin_inclination, scrub_radius, mechanical_trail, roll_centre_height,
        side_view_angle, wheel_path_angle,
    }
    says "suspension.Strut at ride height", SOURCE
};
pub(in crate::suspension) const LEG: Rule = rule! {
    "axle" stroke, Strut
    takes { lower_arm, tie_rod, wheel, leg }
    gives StrokeAtRide { motion_ratio, ratio_gradient, eye_length }
    says "suspension.Strut at ride height: r = -dL/dz", SOURCE
};
pub(in crate::suspension) const BAR_RATIO: Rule = rule! {
    "axle" bar_motion_ratio, Strut
    takes { lower_arm, tie_rod, wheel, leg }
    needs { anti_roll_bar }
    says "suspension.Strut at ride height: travel of the lever's end over travel of the wheel", SOURCE
};
/// Travel at which the linkage locks, the drop link of its bar too: the least over the rack.
pub(in crate::suspension) const RANGE: Rule = rule! {
    "axle" Barred::range, Barred
    takes { linkage = "axle", anti_roll_bar, rack_travel }
    gives TravelEachWay { droop, bump }
    says "suspension.Strut.travel_range, rack in its middle, half way and at both locks: the least", SOURCE
};

type Barred = WithBar<Strut>;
type Damped = OnDamper<Strut>;
type Sprung = OnSpring<Strut>;
type Stopped = BetweenStops<Strut>;
type Travelled = OverWanted<Strut>;
type Leaning = InRoll<Strut>;
type Locked = AtLock<Strut>;
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
    says "suspension.Strut over the travel that is wanted: toe less toe at ride height", SOURCE
};
pub(in crate::suspension) const ROLL_STEER: Rule = rule! {
    "axle" Leaning::steer, Leaning
    takes { linkage = "axle", bump_steer, roll_steer, track, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives RollSteerOverTravel { roll_steer_least, roll_steer_most }
    says "suspension.Strut with z to one side and -z to the other: -(toe(z) - toe(-z)) t / (4 z)", SOURCE
};
pub(in crate::suspension) const PATH: Rule = rule! {
    "axle" Travelled::path, Travelled
    takes { linkage = "axle", bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives PathOverTravel { path_least, path_most }
    says "suspension.Strut over the travel that is wanted: wheel_path_angle", SOURCE
};
pub(in crate::suspension) const TOGGLE: Rule = rule! {
    "axle" Locked::toggle_angle, Locked
    takes { linkage = "axle", rack_travel, bump_remaining = "axle.bump_compressed", droop_remaining }
    says "suspension.Strut: sine from the triple product of steering axis, arm and rod, over travel and lock: the least", SOURCE
};
pub(in crate::suspension) const DAMPER: Rule = rule! {
    "axle.damper" Damped::ends, Damped
    takes { linkage = "axle", open_length, closed_length }
    gives TravelEnds { droop, bump }
    says "suspension.Strut: travel z where L(z) is the length of the damper", SOURCE
};
pub(in crate::suspension) const SPRING: Rule = rule! {
    "axle.spring" Sprung::end, Sprung
    takes { linkage = "axle", shortest = "axle.spring.shortest_between_eyes" }
    says "suspension.Strut: travel z where L(z) is the least length, or where the linkage locks before", SOURCE
};
pub(in crate::suspension) const JOINT_REMAINING: Rule = rule! {
    "axle" Stopped::joint_remaining, Stopped
    takes { linkage = "axle", rack_travel, bump_remaining = "axle.bump_compressed", droop_remaining }
    needs { joint_limits.top_mount, joint_limits.lower_ball, joint_limits.tie_rod_outer, joint_limits.tie_rod_inner }
    says "suspension.Strut at full bump and droop, rack in its middle and at both ends: the least", SOURCE
};
