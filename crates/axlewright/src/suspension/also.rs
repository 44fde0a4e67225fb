//! Additions of linkages and leaf springs to lines of springs, dampers and masses: what is drawn says the line, and a reading of the line was
//! taken on what is drawn.

use super::classes::{LEADS, LED_BY};
use super::independent::{double_wishbone_lines as wishbone, strut_lines as strut};
use super::leaf_axle::rules as on_leaves;
use super::live_axle::rules as on_links;
use super::roll::rules::{DAMPER_MOUNT, RANGE_TOLD, SPRING_MOUNT};
use crate::base::section::{About, Also, also, by, difference_of, gives, joined, same, sum_of};
use crate::spring::COIL;

const LEAF: &str = "the leaf spring as it is drawn, see suspension.LeafAxle";
const LINKAGE: &str = "the linkage as it is drawn, see suspension.DoubleWishbone";

/// Type of the suspension, and the eyes of a separate damper.
const AT_DAMPER: &[&str] = &joined::<_, 14>(&[&LED_BY, &["axle.damper.body_eye", "axle.damper.axle_eye"]]);

/// A coil spring of a suspension that has one.
const COIL_SPRUNG: &[About] =
    &[COIL.only_with("axle.suspension", &["double_wishbone", "strut", "live_axle_on_links"])];

pub(super) const ALSO: &[Also] = &[
    // The drawn wheels, all points of a sheet having one datum.
    also("vehicle.wheelbase").measured_on(&["front.wheel.centre", "rear.wheel.centre"]).by(&[difference_of(
        &["front.wheel.centre.x", "rear.wheel.centre.x"],
        "geometry: the points have one datum",
    )]),
    // A left wheel and its mirror image; camber moves the track on the ground by some millimetres.
    also("axle.track").measured_on(&["axle.wheel.centre"]).by(&[sum_of(
        &["axle.wheel.centre.y", "axle.wheel.centre.y"],
        "geometry: both sides are alike",
    )
    .about(0.02)]),
    also("axle.spring.rate").by(&[same(&["axle.leaf.rate"], LEAF)]),
    // Read by hand to a degree: at 60 deg that is 3 %.
    also("axle.spring.mount_ratio").measured_on(LEADS).by(&[by(&SPRING_MOUNT).near(0.05)]),
    also("axle.damper.mount_ratio").by(&[by(&DAMPER_MOUNT).near(0.05)]),
    also("axle.spring.angle").measured_on(LEADS),
    also("axle.spring.motion_ratio").measured_on(LEADS).by(&[same(&["axle.linkage_motion_ratio"], LINKAGE)]),
    also("axle.spring.eye_length").measured_on(LEADS).by(&[same(&["axle.linkage_eye_length"], LINKAGE)]),
    also("axle.spring.ratio_gradient")
        .measured_on(LEADS)
        .by(&[same(&["axle.linkage_ratio_gradient"], LINKAGE)]),
    also("axle.spring.right_motion_ratio").by(&[by(&on_links::RIGHT_RATIO)]),
    also("axle.spring.right_ratio_gradient").by(&[same(&["axle.linkage_right_ratio_gradient"], LINKAGE)]),
    also("axle.spring.seat_offset").by(&[difference_of(
        &["axle.linkage_eye_length", "axle.spring.ride_length"],
        "definition: lengths along the coil-over, between its eyes",
    )]),
    also("axle.spring.right_seat_offset").by(&[by(&on_links::RIGHT_SEATS)]),
    also("axle.spring.bump_end").by(&[by(&wishbone::SPRING), by(&strut::SPRING), by(&on_links::SPRING)]),
    also("axle.wheel_rate").measured_on(LEADS).by(&[same(&["axle.leaf.wheel_rate"], LEAF)]),
    also("axle.damper.motion_ratio").measured_on(AT_DAMPER).by(&[same(&["axle.leaf.damper_ratio"], LEAF)]),
    also("axle.damper.droop_end").by(&[
        gives(&wishbone::DAMPER, "droop"),
        gives(&strut::DAMPER, "droop"),
        gives(&on_links::DAMPER, "droop"),
        gives(&on_leaves::DAMPER, "droop"),
    ]),
    also("axle.damper.bump_end").by(&[
        gives(&wishbone::DAMPER, "bump"),
        gives(&strut::DAMPER, "bump"),
        gives(&on_links::DAMPER, "bump"),
        gives(&on_leaves::DAMPER, "bump"),
    ]),
    also("axle.linkage_droop").by(&[
        gives(&wishbone::RANGE, "droop"),
        gives(&strut::RANGE, "droop"),
        gives(&on_links::RANGE, "droop"),
        gives(&on_leaves::RANGE, "droop"),
    ]),
    also("axle.linkage_bump").by(&[
        gives(&wishbone::RANGE, "bump"),
        gives(&strut::RANGE, "bump"),
        gives(&on_links::RANGE, "bump"),
        gives(&on_leaves::RANGE, "bump"),
    ]),
    also("axle.linkage_told").by(&[by(&RANGE_TOLD)]),
    also("axle.bump_beyond_stop").by(&[by(&on_leaves::BEYOND_STOP)]),
    also("axle.bump_clearance").measured_on(&["axle.leaf"]),
    also("axle.bump_remaining").by(&[by(&on_leaves::BUMP_REMAINING)]),
    also("axle.wanted_spring_strength").by(&[by(&on_leaves::WOUND_TOLD)]),
    also("axle.spring.stress").by(&[same(&["axle.leaf.stress"], LEAF)]),
    also("axle.coil_bind").about(COIL_SPRUNG),
    also("axle.captive").about(COIL_SPRUNG),
    also("axle.buckling").about(COIL_SPRUNG),
];
