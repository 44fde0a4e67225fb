use super::also::ALSO;
use super::classes::{DRAWN, READINGS, WAYS};
use super::independent::double_wishbone_lines as wishbone;
use super::independent::strut_lines as strut;
use super::inputs::{Suspension, Wheels};
use super::leaf_axle::lines as leaf;
use super::leaf_axle::rules as on_leaves;
use super::live_axle::lines as live;
use super::live_axle::rules as on_links;
use super::roll::rules::{
    ANTI_DIVE, ANTI_SQUAT, BALANCE, BAR_WHEEL_RATE, BESIDE_LEAVES, BIND_FORCE, BIND_SHARE, BRAKE_ANTI_LIFT,
    DRAWN_WHEELS, DRIVE_ANTI_LIFT, FRONT_DRIVE_SHARE, GRIP_LOST, HIGHEST_GRIP, JOINT_REMAINING, LIMITS,
    LINKAGE_REMAINING, NO_ANGLE, NO_FORCE, NO_LENGTH, REAR_BRAKE_SHARE, REAR_DRIVE_SHARE, ROLL_STOPS_TOLD,
    TIP_TOLD, WHEEL_LIFT_TOLD, WHEELS,
};
use super::roll::steer_rules::{
    FRONT_ROLL_SLOPE, FRONT_ROLL_UNDERSTEER, REAR_ROLL_SLOPE, REAR_ROLL_UNDERSTEER, ROLL_STEER_MARGIN, SQUAT,
    SQUAT_EXTREMES, SQUAT_MARGIN, SQUAT_SLOPE, STEER_APART, TOE_BY_SLOPE, TOE_CHANGE, TOE_MARGIN,
};
use super::{BrakePlace, DoubleWishbone, Strut};
use crate::base::section::{
    About, Finding, Line, Margin, Section, by, choice, derived, difference_of, gives, joined, line, measured,
    model, negative_of, pick, renamed, same, told,
};
use crate::units::{
    Acceleration, Angle, Force, Length, LinearStiffness, Quantity, Ratio, RollGradient, RotationalStiffness,
};

const fn angle(path: &'static str, meaning: &'static str) -> Line {
    line(path, Angle::KIND, meaning).within(
        -1.6,
        1.6,
        "plausibility limit: no such angle is greater than a right one",
    )
}

const fn rack(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(
        0.0,
        10.0,
        "definition: to either side; plausibility limit: no rack moves 10 m",
    )
}

const fn share(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(-1.0, 1.0, "definition: a difference of shares")
}

/// Results of any linkage at ride height; another kind of linkage is another step.
const AT_RIDE: &[Line] = &[
    angle("axle.bump_steer", "change of toe of the left wheel over 25 mm of bump, positive where it toes in")
        .first_hand()
        .by(&[
            gives(&wishbone::AT_RIDE, "bump_steer"),
            gives(&strut::AT_RIDE, "bump_steer"),
            gives(&on_links::AT_RIDE, "bump_steer"),
            gives(&on_leaves::AT_RIDE, "bump_steer"),
        ]),
    angle("axle.camber_change", "change of camber over 25 mm of bump")
        .first_hand()
        .by(&[gives(&wishbone::AT_RIDE, "camber_change"), gives(&strut::AT_RIDE, "camber_change")]),
    derived(
        "axle.caster",
        Angle::KIND,
        "caster angle, positive with the upper end of the steering axis to the rear",
    )
    .by(&[gives(&wishbone::AT_RIDE, "caster"), gives(&strut::AT_RIDE, "caster")]),
    derived(
        "axle.kingpin_inclination",
        Angle::KIND,
        "kingpin inclination, positive with the upper end of the steering axis inboard",
    )
    .by(&[gives(&wishbone::AT_RIDE, "kingpin_inclination"), gives(&strut::AT_RIDE, "kingpin_inclination")]),
    derived(
        "axle.scrub_radius",
        Length::KIND,
        "distance from the steering axis outboard to the contact point, on the ground",
    )
    .by(&[gives(&wishbone::AT_RIDE, "scrub_radius"), gives(&strut::AT_RIDE, "scrub_radius")]),
    derived(
        "axle.mechanical_trail",
        Length::KIND,
        "distance from the contact point forward to the steering axis, on the ground",
    )
    .by(&[gives(&wishbone::AT_RIDE, "mechanical_trail"), gives(&strut::AT_RIDE, "mechanical_trail")]),
    line(
        "axle.roll_centre_height",
        Length::KIND,
        "height of the roll centre above the ground, at ride height; negative below it",
    )
    .how("draw the linkage, or construct it on paper from measured pivots")
    .within(-10.0, 10.0, "plausibility limit: roll centres that matter lie within 10 m of the ground")
    .first_hand()
    .by(&[
        gives(&wishbone::AT_RIDE, "roll_centre_height"),
        gives(&strut::AT_RIDE, "roll_centre_height"),
        gives(&on_links::AT_RIDE, "roll_centre_height"),
        gives(&on_leaves::ON_GROUND, "roll_centre_height"),
    ]),
    derived(
        "axle.side_view_angle",
        Angle::KIND,
        "forward lean of the contact point's path in bump, brake held",
    )
    .by(&[
        gives(&wishbone::AT_RIDE, "side_view_angle"),
        gives(&strut::AT_RIDE, "side_view_angle"),
        gives(&on_links::AT_RIDE, "side_view_angle"),
        gives(&on_leaves::ON_GROUND, "side_view_angle"),
    ]),
    derived("axle.wheel_path_angle", Angle::KIND, "forward lean of the path of the wheel's centre in bump")
        .by(&[gives(&wishbone::AT_RIDE, "wheel_path_angle"), gives(&strut::AT_RIDE, "wheel_path_angle")]),
    derived("axle.linkage_motion_ratio", Ratio::KIND, "motion ratio of the coil-over in the linkage").by(&[
        gives(&wishbone::COIL_OVER, "motion_ratio"),
        gives(&strut::LEG, "motion_ratio"),
        gives(&on_links::COIL_OVER, "motion_ratio"),
    ]),
    derived(
        "axle.linkage_ratio_gradient",
        crate::units::RatioPerLength::KIND,
        "change of that motion ratio along the travel of the wheel",
    )
    .by(&[
        gives(&wishbone::COIL_OVER, "ratio_gradient"),
        gives(&strut::LEG, "ratio_gradient"),
        gives(&on_links::COIL_OVER, "ratio_gradient"),
    ]),
    derived(
        "axle.linkage_right_motion_ratio",
        Ratio::KIND,
        "motion ratio of the right coil-over of a live axle on links",
    )
    .by(&[gives(&on_links::COIL_OVER, "right_motion_ratio")]),
    derived(
        "axle.linkage_right_ratio_gradient",
        crate::units::RatioPerLength::KIND,
        "change of that motion ratio along the travel of the wheel",
    )
    .by(&[gives(&on_links::COIL_OVER, "right_ratio_gradient")]),
    derived(
        "axle.linkage_eye_length",
        Length::KIND,
        "length between the eyes of the coil-over at ride height",
    )
    .by(&[
        gives(&wishbone::COIL_OVER, "eye_length"),
        gives(&strut::LEG, "eye_length"),
        gives(&on_links::COIL_OVER, "eye_length"),
    ]),
];

/// The worst over the travel: a slope at ride height says nothing of the ends.
const OVER_TRAVEL: &[Line] = &[
    derived("axle.told_bump", Length::KIND, "travel in bump that is wanted; up to the compressed stop where none is written")
        .by(&[same(&["wanted.bump"], WANTED_TRAVEL), same(&["axle.bump_compressed"], STOP_TO_STOP)]),
    derived("axle.told_droop", Length::KIND, "travel in droop that is wanted; down to the stop where none is written")
        .by(&[same(&["wanted.droop"], WANTED_TRAVEL), same(&["axle.droop_remaining"], STOP_TO_STOP)]),
    derived("axle.steer_bump", Length::KIND, "travel in bump over which steer and squat are judged")
        .by(&[same(&["axle.told_bump"], STOP_TO_STOP)])
        .or(0.06, "common practice, no source: 60 mm, as no travel is wanted and no stop is known"),
    derived("axle.steer_droop", Length::KIND, "travel in droop over which steer and squat are judged")
        .by(&[same(&["axle.told_droop"], STOP_TO_STOP)])
        .or(0.05, "common practice, no source: 50 mm, as no travel is wanted and no stop is known"),
    angle("axle.toe_out_over_travel", "change of toe of a wheel from ride height, the most toe-out over the wanted travel, as a negative angle")
        .by(&[gives(&wishbone::TOE, "toe_least"), gives(&strut::TOE, "toe_least"), gives(&on_links::TOE, "toe_least").assumed_too(), gives(&on_leaves::TOE, "toe_least").assumed_too()]),
    angle("axle.toe_in_over_travel", "change of toe of a wheel from ride height, the most toe-in over the wanted travel")
        .by(&[gives(&wishbone::TOE, "toe_most"), gives(&strut::TOE, "toe_most"), gives(&on_links::TOE, "toe_most").assumed_too(), gives(&on_leaves::TOE, "toe_most").assumed_too()]),
    derived("axle.bump_steer_bend", Angle::KIND, "bend of the toe curve: mean change of toe over 25 mm of bump and 25 mm of droop. The slope follows from the height of the rack, the bend from the length of the tie rod")
        .by(&[gives(&wishbone::TOE, "bend"), gives(&strut::TOE, "bend"), gives(&on_links::TOE, "bend"), gives(&on_leaves::TOE, "bend")]),
    derived("axle.toe_change", Angle::KIND, "change of toe from ride height over the wanted travel that has the least room in its band")
        .by(&[by(&TOE_BY_SLOPE), by(&TOE_CHANGE)]),
    derived("axle.toe_margin", Angle::KIND, "wanted margin of that change: the one written where the whole curve is known")
        .by(&[by(&TOE_MARGIN)])
        .or(f64::INFINITY, "draw the linkage, or write toe_out_over_travel and toe_in_over_travel of the axle, and write wanted.bump and wanted.droop or what ends the travel: a slope at ride height says nothing of the ends, and until then bump steer is no better than tight"),
    line("axle.roll_steer_least", Ratio::KIND, "least roll steer while the body leans as far as the wanted travel lets it")
        .within(-100.0, 100.0, "plausibility limit: no axle steers by a hundred times its roll")
        .by(&[gives(&wishbone::ROLL_STEER, "roll_steer_least"), gives(&strut::ROLL_STEER, "roll_steer_least"), gives(&on_links::ROLL_STEER, "roll_steer_least").assumed_too(), gives(&on_leaves::ROLL_STEER, "roll_steer_least").assumed_too()]),
    line("axle.roll_steer_most", Ratio::KIND, "largest roll steer while the body leans as far as the wanted travel lets it")
        .within(-100.0, 100.0, "plausibility limit: no axle steers by a hundred times its roll")
        .by(&[gives(&wishbone::ROLL_STEER, "roll_steer_most"), gives(&strut::ROLL_STEER, "roll_steer_most"), gives(&on_links::ROLL_STEER, "roll_steer_most").assumed_too(), gives(&on_leaves::ROLL_STEER, "roll_steer_most").assumed_too()]),
    derived("front.roll_understeer_over_travel", Ratio::KIND, "roll understeer of the front with the least room in its band, over the lean that the wanted travel lets")
        .by(&[by(&FRONT_ROLL_SLOPE), by(&FRONT_ROLL_UNDERSTEER)]),
    derived("rear.roll_understeer_over_travel", Ratio::KIND, "roll understeer of the rear with the least room in its band, over the lean that the wanted travel lets")
        .by(&[by(&REAR_ROLL_SLOPE), by(&REAR_ROLL_UNDERSTEER)]),
    derived("axle.roll_steer_margin", Ratio::KIND, "wanted margin of that: the one written where the roll steer over the lean is known")
        .by(&[by(&ROLL_STEER_MARGIN)])
        .or(f64::INFINITY, "draw the linkage, or write roll_steer_least and roll_steer_most of the axle, and write wanted.bump and wanted.droop or what ends the travel: a slope at ride height says nothing of the lean, and until then roll steer is no better than tight"),
    derived("axle.path_angle_least", Angle::KIND, "least forward lean in bump of the path of what the drive pushes, over the wanted travel")
        .by(&[gives(&wishbone::PATH, "path_least"), gives(&strut::PATH, "path_least"), gives(&on_links::PATH, "path_least"), gives(&on_leaves::PATH, "path_least")]),
    derived("axle.path_angle_most", Angle::KIND, "largest forward lean in bump of the path of what the drive pushes, over the wanted travel")
        .by(&[gives(&wishbone::PATH, "path_most"), gives(&strut::PATH, "path_most"), gives(&on_links::PATH, "path_most"), gives(&on_leaves::PATH, "path_most")]),
    line("rear.anti_squat_least", Ratio::KIND, "least share of the squat of the rear under drive that its linkage holds, over the wanted travel")
        .within(-100.0, 100.0, SHARES)
        .by(&[gives(&SQUAT_EXTREMES, "least")]),
    line("rear.anti_squat_most", Ratio::KIND, "largest share of the squat of the rear under drive that its linkage holds, over the wanted travel")
        .within(-100.0, 100.0, SHARES)
        .by(&[gives(&SQUAT_EXTREMES, "most")]),
    derived("rear.anti_squat_over_travel", Ratio::KIND, "anti-squat with the least room in its band, over the wanted travel")
        .by(&[by(&SQUAT_SLOPE), by(&SQUAT)]),
    derived("rear.anti_squat_margin", Ratio::KIND, "wanted margin of that: the one written where the anti-squat over the travel is known")
        .by(&[by(&SQUAT_MARGIN)])
        .or(f64::INFINITY, "draw the linkage, or write rear.anti_squat_least and rear.anti_squat_most, and write wanted.bump and wanted.droop or what ends the travel: a reading at ride height says nothing of the travel, and until then the squat is no better than tight"),
    line("axle.toggle_angle", Angle::KIND, "least angle between tie rod and steering arm over travel and lock: nothing at the dead centre, below zero where a lock lies beyond it")
        .within(-1.6, 1.6, "definition: an angle from a line")
        .by(&[by(&wishbone::TOGGLE), by(&strut::TOGGLE)]),
];

const WANTED_TRAVEL: &str = "definition: what is wanted over a travel is wanted over the wanted one";
const STOP_TO_STOP: &str = "definition: stop to stop where no travel is written";

/// Ends of the travel, and the remaining lean of the joints there.
const ENDS: &[Line] = &[
    line("axle.linkage_remaining", Length::KIND, "remaining travel of the linkage itself if another part ends it")
        .within(-100.0, 100.0, "plausibility limit: no wheel travels 100 m")
        .first_hand()
        .by(&[by(&LINKAGE_REMAINING)]),
    rack("front.rack_travel", "travel of the rack to either side, from its middle to lock"),
    rack("rear.rack_travel", "travel of the rear rack to either side, for steered rear wheels")
        .or(0.0, "a rear axle that is not steered"),
    angle("axle.joint_remaining", "remaining lean of the first joint at its limit, over travel and lock; of a shackle, until it is in line with its spring")
        .first_hand()
        .by(&[by(&wishbone::JOINT_REMAINING), by(&strut::JOINT_REMAINING), by(&JOINT_REMAINING),
        same(&["axle.leaf.shackle_remaining"], SEE_LEAF)]),
];

/// Braking on the linkage.
const ANTI: &[Line] = &[
    line("front.brake_share", Ratio::KIND, "front share of the whole braking force").within(
        0.0,
        1.0,
        "definition: a share",
    ),
    line("rear.brake_share", Ratio::KIND, "rear share of the whole braking force")
        .within(0.0, 1.0, "definition: a share")
        .by(&[by(&REAR_BRAKE_SHARE)]),
    choice("axle.brake_place", BrakePlace::WORDS, "place of the brakes: at the wheels, or on the body")
        .or(0.0, "brakes at the wheels"),
    derived("axle.braked_angle", Angle::KIND, "forward lean in bump of the path of what the brakes hold")
        .by(&[pick(&["axle.brake_place", "axle.side_view_angle", "axle.wheel_path_angle"])]),
    derived("axle.driven_angle", Angle::KIND, "forward lean in bump of the path of what the drive pushes")
        .by(&[pick(&["axle.wheels", "axle.wheel_path_angle", "axle.side_view_angle"])]),
    derived("front.anti_dive", Ratio::KIND, "share of the dive of the front that its linkage holds")
        .by(&[by(&ANTI_DIVE)]),
    derived("rear.anti_lift", Ratio::KIND, "share of the lift of the rear that its linkage holds")
        .by(&[by(&BRAKE_ANTI_LIFT)]),
];

/// Common motion of both wheels of a live axle, on links or leaf springs. Independent wheels use little of it.
const TOGETHER: &[Line] = &[
    line("axle.roll_steer", Ratio::KIND, "steer of the axle to the left over its roll against the body with the left wheel in bump: positive steers it out of a turn")
        .within(-100.0, 100.0, "plausibility limit: no axle steers by a hundred times its roll")
        .first_hand()
        .by(&[
            gives(&on_links::AT_RIDE, "roll_steer"),
            gives(&on_leaves::AT_RIDE, "roll_steer"),
            by(&STEER_APART),
        ]),
    derived("front.roll_understeer", Ratio::KIND, "roll steer of the front, positive if it steers out of the turn")
        .by(&[same(&["front.roll_steer"], UNDERSTEER)]),
    derived("rear.roll_understeer", Ratio::KIND, "roll steer of the rear, positive if it steers into the turn")
        .by(&[negative_of(&["rear.roll_steer"], UNDERSTEER)]),
    line("axle.lateral_shift", Length::KIND, "peak shift of a live axle to either side between full droop and full bump, from ride height")
        .within(0.0, 100.0, "definition: to either side")
        .first_hand()
        .by(&[gives(&on_links::OVER_TRAVEL, "lateral_shift"), gives(&on_leaves::OVER_TRAVEL, "lateral_shift"), by(&NO_LENGTH).lacking("a live axle needs lateral_shift, or the points of what holds it, bump_remaining, droop_remaining and spring_base")]),
    line("axle.pinion_angle_change", Angle::KIND, "peak turn of a live axle about its own length between full droop and full bump, from ride height: its pinion turns with it")
        .within(0.0, 1.6, "definition: to either side")
        .first_hand()
        .by(&[gives(&on_links::OVER_TRAVEL, "pinion_angle_change"), gives(&on_leaves::OVER_TRAVEL, "pinion_angle_change"), by(&NO_ANGLE).lacking("a live axle needs pinion_angle_change, or the points of what holds it, bump_remaining, droop_remaining and spring_base")]),
    derived("axle.cross_roll", Angle::KIND, "roll of a live axle with one side at its stop in bump and the other fully drooped")
        .by(&[gives(&on_links::OVER_TRAVEL, "crossed_roll")]),
    line("front.drive_share", Ratio::KIND, "share of the whole driving force at the front axle")
        .within(0.0, 1.0, "definition: a share")
        .by(&[by(&FRONT_DRIVE_SHARE).usual()]),
    line("rear.drive_share", Ratio::KIND, "share of the whole driving force at the rear axle")
        .within(0.0, 1.0, "definition: a share")
        .by(&[by(&REAR_DRIVE_SHARE).usual()]),
    line("front.drive_anti_lift", Ratio::KIND, "share of the lift of the front under drive that its linkage holds")
        .within(-100.0, 100.0, SHARES)
        .first_hand()
        .by(&[by(&DRIVE_ANTI_LIFT)]),
    line("rear.anti_squat", Ratio::KIND, "share of the squat of the rear under drive that its linkage holds")
        .within(-100.0, 100.0, SHARES)
        .first_hand()
        .by(&[by(&ANTI_SQUAT)]),
];

/// Forces of the links of a live axle against each other.
const BIND: &[Line] = &[
    derived("axle.freedoms", Ratio::KIND, "freedoms of a live axle on its links at ride height: 2 if it heaves and rolls freely, 1 if it does so only together")
        .by(&[gives(&on_links::FREE, "freedoms")]),
    derived("axle.redundant_links", Ratio::KIND, "links more than a live axle that heaves and rolls leaves room for")
        .by(&[gives(&on_links::FREE, "redundant")]),
    derived("axle.bind_roll_stiffness", RotationalStiffness::KIND, "roll stiffness of links that bind, at ride height, in addition to that of springs and bar")
        .by(&[gives(&on_links::AT_RIDE, "bind_roll_stiffness")]),
    derived("axle.bind_misfit", Length::KIND, "distance by which the links would miss each other if their joints were rigid: the largest at full bump and droop and crossed")
        .by(&[gives(&on_links::OVER_TRAVEL, "bind_misfit")]),
    derived("axle.linkage_bind_force", Force::KIND, "peak tension or compression of a link by that, where bushes give")
        .by(&[gives(&on_links::OVER_TRAVEL, "bind_force")]),
    derived("axle.least_joint_remaining", Angle::KIND, "remaining lean of the first joint of the links at its limit, at full bump and droop and crossed")
        .by(&[gives(&on_links::OVER_TRAVEL, "joint_remaining")]),
    line("axle.bind_force", Force::KIND, "peak tension or compression of a link that binds, over travel and crossed")
        .within(0.0, 1e9, "definition: to either side")
        .first_hand()
        .by(&[
            by(&BIND_FORCE),
            by(&BESIDE_LEAVES),
            by(&NO_FORCE).lacking("a live axle needs bind_force, or the points of what holds it, bump_remaining, droop_remaining and spring_base"),
        ]),
    line("axle.wind_up_angle", Angle::KIND, "turn of a live axle's housing under its drive torque at ride height, by which its front rises")
        .within(0.0, 1.6, "definition: by how much its front rises")
        .first_hand()
        .by(&[by(&on_leaves::WIND_UP), by(&NO_ANGLE).lacking("a live axle needs wind_up_angle, or the points of its leaf springs, their rate, tyre and drive_torque")]),
    line("axle.allowed_link_force", Force::KIND, "force that a link, its joints and its brackets bear for their whole life")
        .above(0.0, 1e9, "plausibility limit: no link bears 1 GN"),
    derived("axle.bind_share", Ratio::KIND, "share of the links' allowed force that binding takes").in_units("percent", "percent")
        .by(&[by(&BIND_SHARE)]),
    derived("axle.joints_without_limit", Ratio::KIND, "kinds of joint in the links of a live axle whose limit is not written")
        .by(&[gives(&on_links::OVER_TRAVEL, "joints_without_limit")]),
];

const SEE_LEAF: &str = "see suspension.LeafAxle";
const UNDERSTEER: &str = "definition: a front that steers out of a turn, or a rear into it, understeers";
const SHARES: &str = "plausibility limit: no linkage holds a hundred times what there is";

/// Both axles in a turn.
const ROLL: &[Line] = &[
    choice(
        "axle.suspension",
        Suspension::WORDS,
        "type of the suspension: one of the linkages that can be drawn; leaf springs alone locate their axle",
    ),
    choice("axle.wheels", Wheels::WORDS, "kind of axle: each wheel moves by itself, or both on one axle")
        .by(&[by(&WHEELS), by(&DRAWN_WHEELS).near(0.0)]),
    line("axle.spring_base", Length::KIND, "spring base of a live axle in roll: for upright springs, between their seats").how("tape between the centres of both spring seats")
        .above(0.0, 100.0, "plausibility limit: no axle is 100 m wide")
        .first_hand()
        .by(&[gives(&on_links::COIL_OVER, "spring_base").about(0.05), gives(&on_leaves::AT_RIDE, "spring_base").about(0.05)]),
    derived("axle.stiffness_base", Length::KIND, "base on which springs of the wheel rate have the roll stiffness of a live axle: the spring base, and under the load of drawn coil-overs a little more or less")
        .by(&[by(&on_links::STIFFNESS_BASE), same(&["axle.spring_base"], "definition: springs whose load does not lean count on their base")]),
    derived("axle.roll_base", Length::KIND, "base of the springs in roll: the track, or the spring base of a live axle")
        .by(&[pick(&["axle.wheels", "axle.track", "axle.stiffness_base"])]),
    line(
        "axle.anti_roll_bar.rate",
        LinearStiffness::KIND,
        "force at either end of the bar over travel of that end, the other end travelling as far the other way; 0 N/mm where there is none",
    ).how("one end fixed, a weight on the other: twice that force over the travel")
    .within(0.0, 1e9, "definition: a rate is not negative")
    .if_none(0.0),
    line("axle.anti_roll_bar.motion_ratio", Ratio::KIND, "travel of the bar's end over travel of the wheel, in roll").how("travel of the bar's end over travel of the wheel, one wheel up and the other down")
        .within(0.01, 1.5, "plausibility limit: above 1.5 it is a percentage or an inverted ratio")
        .first_hand()
        .by(&[by(&wishbone::BAR_RATIO), by(&strut::BAR_RATIO), by(&on_links::BAR_RATIO), by(&on_leaves::BAR_RATIO)]),
    derived("axle.anti_roll_bar.wheel_rate", LinearStiffness::KIND, "rate of the bar at the wheels, in roll").by(&[by(&BAR_WHEEL_RATE)]),
    derived("vehicle.roll_gradient", RollGradient::KIND, "roll of the body to the ground over lateral acceleration, tyres included")
        .by(&[gives(&BALANCE, "roll_gradient")]),
    derived("front.roll_stiffness", RotationalStiffness::KIND, "roll stiffness of springs and bar of the front axle, and of links that bind").by(&[gives(&BALANCE, "front_suspension_stiffness")]),
    derived("rear.roll_stiffness", RotationalStiffness::KIND, "roll stiffness of springs and bar of the rear axle, and of links that bind").by(&[gives(&BALANCE, "rear_suspension_stiffness")]),
    derived("vehicle.front_transfer_share", Ratio::KIND, "share of the front axle in the load that moves to the outer wheels").in_units("percent", "percent")
        .by(&[gives(&BALANCE, "front_share")]),
    derived("vehicle.front_share_over_weight", Ratio::KIND, "front share of the load transfer, less the front share of the weight; what it says of the limit depends on the tyres")
        .by(&[gives(&BALANCE, "share_over_weight")]),
    derived("vehicle.grip_acceleration", Acceleration::KIND, "lateral acceleration that the tyres hold at most").in_units("gn", "gn")
        .by(&[by(&HIGHEST_GRIP)]),
    derived("vehicle.stop_acceleration", Acceleration::KIND, "lateral acceleration at which the body leans into the first stop").in_units("gn", "gn")
        .by(&[gives(&LIMITS, "stop")]),
    derived("vehicle.lift_acceleration", Acceleration::KIND, "least lateral acceleration at which one wheel lifts, stops counted").in_units("gn", "gn")
        .by(&[gives(&LIMITS, "lift")]),
    derived("vehicle.wanted_roll_stops", Ratio::KIND, WANTED_BESIDE_STOPS).by(&[by(&ROLL_STOPS_TOLD)]),
    derived("vehicle.wanted_wheel_lift", Ratio::KIND, WANTED_BESIDE_STOPS).by(&[by(&WHEEL_LIFT_TOLD)]),
    derived("vehicle.wanted_tip", Ratio::KIND, WANTED_BESIDE_STOPS).by(&[by(&TIP_TOLD)]),
    derived("vehicle.tip_acceleration", Acceleration::KIND, "lateral acceleration at which both wheels of a side lift, at the least").in_units("gn", "gn")
        .by(&[gives(&LIMITS, "tip")]),
    line("axle.tyre.load_sensitivity", Ratio::KIND, "share of its coefficient of grip that a tyre of the axle, or a twin pair, loses between no load and sensitivity_load, from its maker or a test")
        .above(0.0, 1.0, "definition: a share; without any loss to load every vehicle would seem balanced"),
    line("axle.tyre.sensitivity_load", Force::KIND, "load of the wheel at which load_sensitivity was measured")
        .above(0.0, 1e6, "plausibility limit: no wheel carries 1 MN"),
    derived("front.grip_loss", Ratio::KIND, "share of grip that the front loses to load and load transfer, at the mean of grip")
        .by(&[gives(&GRIP_LOST, "front")]),
    derived("rear.grip_loss", Ratio::KIND, "share of grip that the rear loses to load and load transfer, at the mean of grip")
        .by(&[gives(&GRIP_LOST, "rear")]),
    derived("vehicle.grip_balance", Ratio::KIND, "share of grip that the front loses more than the rear: above zero the vehicle runs wide at the limit").in_units("percent", "percent")
        .by(&[difference_of(&["front.grip_loss", "rear.grip_loss"], "definition: the axle that loses more runs wide")]),
];

const WANTED_BESIDE_STOPS: &str = "margin of that acceleration that is wanted; without limit until it is told what ends the travel of both axles";

/// Lines under `wanted`.
const WANTED: &[Line] = &[
    angle(
        "wanted.bump_steer_out",
        "toe-out that a wheel may gain over the wanted travel, as a negative angle",
    )
    .or(-0.1_f64.to_radians(), "common practice, no source: a tenth of a degree"),
    angle("wanted.bump_steer_in", "toe-in that a wheel may gain over the wanted travel")
        .or(0.1_f64.to_radians(), "common practice, no source: a tenth of a degree"),
    line("wanted.bump_steer_margin", Angle::KIND, "wanted margin of the bump steer inside its band")
        .margin(1.6)
        .or(0.0, "no margin beyond the band itself"),
    line("wanted.joint_margin", Angle::KIND, "lean that is wanted left in every joint")
        .margin(1.6)
        .or(2_f64.to_radians(), "common practice, no source: 2 deg for what bends and wears"),
    line(
        "wanted.linkage_margin",
        Length::KIND,
        "travel that is wanted left in the linkage where the stops end it",
    )
    .margin(100.0)
    .or(0.01, "common practice, no source: 10 mm"),
    line(
        "wanted.toggle_angle",
        Angle::KIND,
        "angle that is wanted left between tie rod and steering arm at lock",
    )
    .margin(1.6)
    .or(15_f64.to_radians(), "common practice, no source: 15 deg from the dead centre"),
    share("wanted.roll_understeer_low", "least steer of an axle over its roll, positive to understeer")
        .or(-0.05, "common practice, no source: a twentieth of the roll to oversteer is hardly felt"),
    share("wanted.roll_understeer_high", "largest steer of an axle over its roll, positive to understeer")
        .or(0.15, "common practice, no source: beyond that bumps on one side steer the vehicle"),
    line("wanted.lateral_shift", Length::KIND, "largest shift of a live axle to either side that is borne")
        .within(0.0, 100.0, "definition: to either side")
        .or(0.01, "common practice, no source: 10 mm"),
    line("wanted.lateral_shift_margin", Length::KIND, "wanted margin of the lateral shift below its limit")
        .margin(100.0)
        .or(0.0, "no margin beyond the limit itself"),
    line(
        "wanted.pinion_angle_change",
        Angle::KIND,
        "largest turn of the pinion over travel that the propeller shaft's joints bear",
    )
    .within(0.0, 1.6, "definition: to either side")
    .or(3_f64.to_radians(), "common practice, no source: 3 deg from the angle that was set"),
    line("wanted.pinion_angle_margin", Angle::KIND, "wanted margin of the pinion's turn below its limit")
        .margin(1.6)
        .or(0.0, "no margin beyond the limit itself"),
    line("wanted.bind_share", Ratio::KIND, "largest share of what the links bear that binding may take")
        .in_units("percent", "percent")
        .above(0.0, 1.0, "definition: a part is short of what it does not bear")
        .or(1.0, "definition: all of it"),
    line("wanted.bind_margin", Ratio::KIND, "wanted margin of the binding share below its limit")
        .in_units("percent", "percent")
        .margin(1.0)
        .or(0.2, "common practice, no source: a fifth for what the links carry besides"),
    line(
        "wanted.anti_squat_low",
        Ratio::KIND,
        "least share of the squat under drive that the linkage of the rear should hold",
    )
    .in_units("percent", "percent")
    .within(-100.0, 100.0, SHARES)
    .or(0.0, "common practice, no source: a linkage that pulls the rear down is seldom wanted"),
    line(
        "wanted.anti_squat_high",
        Ratio::KIND,
        "largest share of the squat under drive that the linkage of the rear should hold",
    )
    .in_units("percent", "percent")
    .within(-100.0, 100.0, SHARES)
    .or(1.0, "common practice, no source: beyond that the rear rises under drive and the wheels hop"),
    line("wanted.wind_up", Angle::KIND, "largest turn of an axle's housing under its drive torque")
        .within(0.0, 1.6, "definition: to either side")
        .or(
            4_f64.to_radians(),
            "common practice, no source: 4 deg, which the propeller shaft's joints bear beside their own",
        ),
    line("wanted.wind_up_margin", Angle::KIND, "wanted margin of the wind-up below its limit")
        .margin(1.6)
        .or(0.0, "no margin beyond the limit itself"),
    line("wanted.roll_gradient", RollGradient::KIND, "largest roll of the body over lateral acceleration")
        .above(0.0, 1.0, "plausibility limit: no body leans more than 560 deg/g"),
    line(
        "wanted.roll_gradient_margin",
        RollGradient::KIND,
        "wanted margin of the roll gradient below its limit",
    )
    .margin(1.0)
    .or(0.0, "no margin beyond the limit itself"),
    line(
        "wanted.roll_stops",
        Ratio::KIND,
        "margin of the lateral acceleration at the first stop over the one that the tyres hold",
    )
    .within(1.0, 10.0, "definition: below 1 it is short, not tight")
    .or(1.0, "no margin beyond the stops themselves"),
    line(
        "wanted.wheel_lift",
        Ratio::KIND,
        "margin of the lateral acceleration at which a wheel lifts over the one that the tyres hold",
    )
    .within(1.0, 10.0, "definition: below 1 it is short, not tight")
    .or(1.1, "common practice, no source: a tenth over the high bound of grip"),
    line(
        "wanted.tip",
        Ratio::KIND,
        "margin of the lateral acceleration at which the vehicle tips over the one that the tyres hold",
    )
    .within(1.0, 10.0, "definition: below 1 it is short, not tight")
    .or(
        1.1,
        "common practice, no source: it slides before it tips, with a tenth over the high bound of grip",
    ),
    share(
        "wanted.grip_balance_low",
        "least share of grip that the front loses more than the rear at the limit",
    )
    .in_units("percent", "percent")
    .or(0.0, "common practice, no source: no tendency to oversteer at the limit"),
    share(
        "wanted.grip_balance_high",
        "largest share of grip that the front loses more than the rear at the limit",
    )
    .in_units("percent", "percent")
    .or(0.05, "common practice, no source: a twentieth pushes the front wide before it helps"),
];

const LINES: usize = wishbone::MEASURED.len()
    + strut::MEASURED.len()
    + live::MEASURED.len()
    + leaf::MEASURED.len()
    + leaf::FOLLOWING.len()
    + AT_RIDE.len()
    + OVER_TRAVEL.len()
    + ENDS.len()
    + ANTI.len()
    + TOGETHER.len()
    + BIND.len()
    + ROLL.len()
    + WANTED.len();

const ON_LINKS: &str = "live_axle_on_links";
const ON_LEAVES: &str = "live_axle_on_leaf_springs";

/// An axle that leads both wheels together.
const LIVE: About =
    About::parts(&["axle.lower_links", "axle.upper_links", "axle.lateral_rod", "axle.watt", "axle.leaf"])
        .only_with("axle.wheels", &["live_axle"]);
/// Tie rods of the front, which is steered on a live axle, too.
const STEERED: About = About::parts(&["front.tie_rod"]).told_by(&["front.rack_travel"]);
/// Tie rods of rear wheels that move by themselves.
const REAR_TIE_ROD: About =
    About::parts(&["rear.tie_rod"]).only_with("rear.wheels", &["independent"]).told_by(&["rear.rack_travel"]);
/// Links and rods of such an axle.
const LINKS: About = About::parts(&["axle.lower_links", "axle.upper_links", "axle.lateral_rod", "axle.watt"])
    .only_with("axle.suspension", &[ON_LINKS])
    .surely();
/// Lateral location of an axle on links, beside the links' own angle.
const ACROSS: About =
    About::parts(&["axle.lateral_rod", "axle.watt"]).told_beside(&["axle.lower_links", "axle.upper_links"]);
/// Leaf springs of such an axle.
const LEAVES: About = About::parts(&["axle.leaf"]).only_with("axle.suspension", &[ON_LEAVES]).surely();

const LOCKED: &str = "A joint or a linkage that comes to its end before the stops do breaks or locks a wheel: check it on the vehicle over the whole \
                      travel and lock before it moves; local codes and licensed practice come first.";
const BOUND: &str = "Links that bind fatigue: their brackets crack, their bushes tear out, and an axle that comes loose steers the vehicle. Cross the axle on the \
                     vehicle, springs out, before it moves; local codes and licensed practice come first.";
const WOUND: &str = "Leaves wound up beyond what they bear break, and a broken main leaf lets the axle go; an axle that winds up hops and can throw its shaft. Local \
                     codes and licensed practice come first.";
const TIPS: &str = "A vehicle that tips kills. A kerb, a rut, a load that shifts or a slope tips it earlier than its tyres do. Never try it; local codes and \
                    licensed practice come first.";
const SPIN: &str = "A balance that moves to the rear can make a safe vehicle spin: try it where there is room. Local codes and licensed practice come \
                    first.";

/// Lines by which a leaf spring is described beside those of any spring.
const LEAVES_PART: &[&str] =
    &["axle.spring.rate", "axle.leaf.form", "axle.leaf.eye_offset", "axle.leaf.leaves"];

/// Grip of a tyre beside the other lines that describe it.
const TYRE_PART: &[&str] = &["axle.tyre.size", "axle.tyre.load_sensitivity", "axle.tyre.sensitivity_load"];

/// Lines and findings of the sheet on linkages and roll.
pub const SHEET: Section = Section {
    lines: &told(
        measured(
            joined::<_, LINES>(&[
                &wishbone::MEASURED,
                &strut::MEASURED,
                &live::MEASURED,
                &leaf::MEASURED,
                &leaf::FOLLOWING,
                AT_RIDE,
                OVER_TRAVEL,
                ENDS,
                ANTI,
                TOGETHER,
                BIND,
                ROLL,
                WANTED,
            ]),
            &READINGS,
        ),
        &WAYS,
        DRAWN,
    ),
    findings: &[
        Finding {
            path: "axle.bump_steer_band",
            question: "Does the wheel keep its toe over bumps?",
            margin: Margin::Band {
                value: "axle.toe_change",
                low: "wanted.bump_steer_out",
                high: "wanted.bump_steer_in",
            },
            wanted: "axle.toe_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.joints",
            question: "Do joints and shackles keep within their lean over travel and lock?",
            margin: Margin::Remaining { value: "axle.joint_remaining" },
            wanted: "wanted.joint_margin",
            rests_on: &[],
            about: &[ACROSS],
            caution: LOCKED,
        },
        Finding {
            path: "axle.linkage_range",
            question: "Does the linkage go further than the stops let it?",
            margin: Margin::Remaining { value: "axle.linkage_remaining" },
            wanted: "wanted.linkage_margin",
            rests_on: &[],
            about: &[ACROSS],
            caution: LOCKED,
        },
        Finding {
            path: "front.toggle",
            question: "Does the tie rod keep clear of the line of its steering arm, to both locks and over the travel?",
            margin: Margin::Remaining { value: "front.toggle_angle" },
            wanted: "wanted.toggle_angle",
            rests_on: &[],
            about: &[STEERED],
            caution: LOCKED,
        },
        Finding {
            path: "rear.toggle",
            question: "Does the tie rod keep clear of the line of its steering arm, to both locks and over the travel?",
            margin: Margin::Remaining { value: "rear.toggle_angle" },
            wanted: "wanted.toggle_angle",
            rests_on: &[],
            about: &[REAR_TIE_ROD],
            caution: LOCKED,
        },
        Finding {
            path: "axle.bind",
            question: "Loads of driving and braking aside, do the links bear the force by which they bind, over travel and with the axle crossed?",
            margin: Margin::AtMost { value: "axle.bind_share", most: "wanted.bind_share" },
            wanted: "wanted.bind_margin",
            rests_on: &[],
            about: &[LIVE, LINKS, ACROSS],
            caution: BOUND,
        },
        Finding {
            path: "axle.roll_steer_band",
            question: "Does the axle steer no more than is wanted as the body leans?",
            margin: Margin::Band {
                value: "axle.roll_understeer_over_travel",
                low: "wanted.roll_understeer_low",
                high: "wanted.roll_understeer_high",
            },
            wanted: "axle.roll_steer_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.sideways",
            question: "Does the axle stay in its place sideways over the travel?",
            margin: Margin::AtMost { value: "axle.lateral_shift", most: "wanted.lateral_shift" },
            wanted: "wanted.lateral_shift_margin",
            rests_on: &[],
            about: &[LIVE, ACROSS],
            caution: "",
        },
        Finding {
            path: "axle.pinion",
            question: "Does the pinion keep its angle over the travel?",
            margin: Margin::AtMost { value: "axle.pinion_angle_change", most: "wanted.pinion_angle_change" },
            wanted: "wanted.pinion_angle_margin",
            rests_on: &[],
            about: &[LIVE],
            caution: "",
        },
        Finding {
            path: "rear.squat",
            question: "Does the linkage of the rear hold as much of the squat under drive as is wanted?",
            margin: Margin::Band {
                value: "rear.anti_squat_over_travel",
                low: "wanted.anti_squat_low",
                high: "wanted.anti_squat_high",
            },
            wanted: "rear.anti_squat_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.wind_up",
            question: "Do the springs hold the axle's housing against its drive torque?",
            margin: Margin::AtMost { value: "axle.wind_up_angle", most: "wanted.wind_up" },
            wanted: "wanted.wind_up_margin",
            rests_on: &[],
            about: &[LIVE, LEAVES],
            caution: WOUND,
        },
        Finding {
            path: "vehicle.roll",
            question: "Does the body lean no more than is wanted?",
            margin: Margin::AtMost { value: "vehicle.roll_gradient", most: "wanted.roll_gradient" },
            wanted: "wanted.roll_gradient_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "vehicle.roll_stops",
            question: "Does the body lean at the grip of its tyres without coming into its stops?",
            margin: Margin::Ratio {
                capacity: "vehicle.stop_acceleration",
                demand: "vehicle.grip_acceleration",
            },
            wanted: "vehicle.wanted_roll_stops",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "vehicle.wheel_lift",
            question: "Do all wheels stay on the ground at the grip of the tyres, whether or not the vehicle would tip?",
            margin: Margin::Ratio {
                capacity: "vehicle.lift_acceleration",
                demand: "vehicle.grip_acceleration",
            },
            wanted: "vehicle.wanted_wheel_lift",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "vehicle.tip",
            question: "Does the vehicle slide before it tips, kerbs and soft ground that trip it aside?",
            margin: Margin::Ratio {
                capacity: "vehicle.tip_acceleration",
                demand: "vehicle.grip_acceleration",
            },
            wanted: "vehicle.wanted_tip",
            rests_on: &[],
            about: &[],
            caution: TIPS,
        },
        Finding {
            path: "vehicle.balance",
            question: "Does the front axle lose no less grip than the rear at the limit, so that it runs wide first, and not much more?",
            margin: Margin::Band {
                value: "vehicle.grip_balance",
                low: "wanted.grip_balance_low",
                high: "wanted.grip_balance_high",
            },
            wanted: "wanted.ratio_margin",
            rests_on: &["vehicle.front_share_over_weight"],
            about: &[],
            caution: SPIN,
        },
    ],
    also: ALSO,
    parts: &[LEAVES_PART, TYRE_PART],
    models: &[
        model! {
            "axle.suspension" "suspension.DoubleWishbone" DoubleWishbone in "axle"
            takes {
                upper_arm, lower_arm, tie_rod, wheel, wheel.loaded_radius = "axle.tyre.loaded_radius", coil_over,
                anti_roll_bar, joint_limits,
            }
            end "axle"
        },
        model! {
            "axle.suspension" "suspension.Strut" Strut in "axle"
            takes {
                lower_arm, tie_rod, wheel, wheel.loaded_radius = "axle.tyre.loaded_radius", leg, anti_roll_bar,
                joint_limits,
            }
            end "axle"
        },
        live::MODEL,
        leaf::MODEL,
    ],
    renamed: &[
        renamed("axle.joint_left", "axle.joint_remaining"),
        renamed("axle.least_joint_left", "axle.least_joint_remaining"),
        renamed("axle.linkage_left", "axle.linkage_remaining"),
        renamed("axle.leaf.shackle_left", "axle.leaf.shackle_remaining"),
        renamed("axle.leaf.width", "axle.leaf.leaves.leaf_width"),
        renamed("axle.leaf.thickness", "axle.leaf.leaves.leaf_thickness"),
        renamed("axle.leaf.full_length_leaves", "axle.leaf.leaves.full_length_leaves"),
        renamed("axle.leaf.graduated_leaves", "axle.leaf.leaves.graduated_leaves"),
        renamed("axle.leaf.bump_clearance", "axle.bump_clearance"),
        renamed("axle.wheel.loaded_radius", "axle.tyre.loaded_radius"),
    ],
};
