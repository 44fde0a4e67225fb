//! Measured lines of linkages and roll, with the parts on which they are measured. Coordinates are measured on the vehicle, and the rest is a maker's rating.

use crate::base::section::joined;

/// Tables of what leads the wheels, as it is drawn.
pub(super) const LED_BY: [&str; 12] = [
    "axle.suspension",
    "axle.upper_arm",
    "axle.lower_arm",
    "axle.tie_rod",
    "axle.leg",
    "axle.wheel",
    "axle.coil_over",
    "axle.lower_links",
    "axle.upper_links",
    "axle.lateral_rod",
    "axle.watt",
    "axle.leaf",
];
pub(super) const LEADS: &[&str] = &LED_BY;
/// Linkage, its joints, and the stops between which it travels.
const OVER_TRAVEL: &[&str] = &joined::<_, 16>(&[
    &LED_BY,
    &["axle.joint_limits", "axle.damper", "axle.bump_stop_travel", "axle.spring"],
]);
const LEAF: &[&str] = &["axle.leaf"];
const BAR: &[&str] = &["axle.anti_roll_bar"];
/// Bar on what carries its drop link.
const BAR_ON_LINKAGE: &[&str] = &joined::<_, 13>(&[&LED_BY, BAR]);

/// How a point of a drawn linkage is measured.
pub(super) const DRAWN: &str = "vehicle at ride height on a level floor: drop a plumb line from the centre of the joint to the floor and mark it; tape from the datum forward (x), from the centre line to the left (y), and from the floor up (z)";

/// How some lines are measured.
pub(super) const WAYS: [(&str, &str); 3] = [
    (
        "axle.wheel.camber",
        "angle gauge against the rim, or plumb line past both edges of the rim, at ride height on a level floor, wheels straight",
    ),
    (
        "axle.wheel.toe",
        "strings parallel to the centre line on both sides: the difference of the distances to the front and rear edge of the rim, over the rim's diameter",
    ),
    ("axle.leaf.clamped_length", "tape along the main leaf between the outer edges of the U-bolts"),
];

/// Lines or tables that are measured, and on what.
pub(super) const READINGS: [(&str, &[&str]); 29] = [
    ("axle.leaf.seat_angle", &[]),
    ("axle.leaf.clamped_length", &[]),
    ("axle.leaf.load", &[]),
    ("axle.leaf.shackle_eye", LEAF),
    ("axle.leaf.seat", LEAF),
    ("axle.anti_roll_bar.lever_end", BAR),
    ("axle.anti_roll_bar.motion_ratio", BAR_ON_LINKAGE),
    ("axle.wheel.camber", &[]),
    ("axle.wheel.toe", &[]),
    ("axle.bump_steer", LEADS),
    ("axle.camber_change", LEADS),
    ("axle.roll_centre_height", LEADS),
    ("axle.roll_steer", LEADS),
    ("axle.spring_base", LEADS),
    ("axle.wind_up_angle", LEADS),
    ("front.drive_anti_lift", LEADS),
    ("rear.anti_squat", LEADS),
    ("axle.linkage_remaining", OVER_TRAVEL),
    ("axle.joint_remaining", OVER_TRAVEL),
    ("axle.toe_out_over_travel", LEADS),
    ("axle.toe_in_over_travel", LEADS),
    ("axle.roll_steer_least", LEADS),
    ("axle.roll_steer_most", LEADS),
    ("rear.anti_squat_least", LEADS),
    ("rear.anti_squat_most", LEADS),
    ("axle.toggle_angle", OVER_TRAVEL),
    ("axle.lateral_shift", OVER_TRAVEL),
    ("axle.pinion_angle_change", OVER_TRAVEL),
    ("axle.bind_force", OVER_TRAVEL),
];
