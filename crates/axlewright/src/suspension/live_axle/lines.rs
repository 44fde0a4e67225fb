//! A live axle on links on the build sheet: its links as lines, and the axle as a model. Its wheel, the upper eye of its coil-over and the
//! points of its anti-roll bar are lines of the double wishbone.

use super::rules::{Limit, LinkPair};
use crate::base::section::{Line, ModelOf, Whole, choice, joined, line, model, same};
use crate::suspension::independent::double_wishbone_lines::{coordinate, joint, point_lines};
use crate::suspension::{Fitted, LateralRod, LiveAxle, Mount, WattLinkage};
use crate::units::{LinearStiffness, Quantity};

const fn bush(path: &'static str, meaning: &'static str) -> Line {
    line(path, LinearStiffness::KIND, meaning).within(
        1.0,
        1e12,
        "plausibility limit: bushes lie between 1 N/m and 1 TN/m",
    )
}

/// The points of both kinds of link.
const LINKS: [Line; 13] = joined(&[
    &point_lines!("axle.lower_links.body", "body end of the left lower link, at ride height"),
    &point_lines!("axle.lower_links.axle", "axle end of the left lower link, at ride height"),
    &point_lines!(
        "axle.upper_links.body",
        "body end of the upper link, of a pair the left one, at ride height"
    ),
    &point_lines!(
        "axle.upper_links.axle",
        "axle end of the upper link, of a pair the left one, at ride height"
    ),
    &[choice(
        "axle.upper_links.fitted",
        Fitted::WORDS,
        "number of upper links: two, the drawn one and its mirror image, or one",
    )],
]);

/// Lines of the links that may be left out.
const BUSHES: [Line; 5] = [
    choice(
        "axle.lower_links.fitted",
        Fitted::WORDS,
        "number of lower links: two or one; a pair where it is not said",
    ),
    bush(
        "axle.lower_links.body_bush",
        "stiffness along the lower link of the bush in its body end; 1 GN/m where it is rigid",
    ),
    bush("axle.lower_links.axle_bush", "stiffness along the lower link of the bush in its axle end"),
    bush(
        "axle.upper_links.body_bush",
        "stiffness along the upper link of the bush in its body end; 1 GN/m where it is rigid",
    ),
    bush("axle.upper_links.axle_bush", "stiffness along the upper link of the bush in its axle end"),
];

/// Across the vehicle: one rod, or two on a bell crank.
const ACROSS: [Line; 28] = joined(&[
    &point_lines!("axle.lateral_rod.body", "body end of the lateral rod, at ride height"),
    &point_lines!("axle.lateral_rod.axle", "axle end of the lateral rod, at ride height"),
    &[
        bush(
            "axle.lateral_rod.body_bush",
            "stiffness along the lateral rod of the bush in its body end; 1 GN/m where it is rigid",
        ),
        bush("axle.lateral_rod.axle_bush", "stiffness along the lateral rod of the bush in its axle end"),
        choice("axle.watt.carried_by", Mount::WORDS, "carrier of the bell crank of a Watt linkage"),
    ],
    &point_lines!("axle.watt.pivot", "pivot of the bell crank, whose axis lies along the vehicle"),
    &point_lines!("axle.watt.upper_rod.crank", "end of the upper rod on the bell crank, at ride height"),
    &point_lines!("axle.watt.upper_rod.outer", "other end of the upper rod, at ride height"),
    &point_lines!("axle.watt.lower_rod.crank", "end of the lower rod on the bell crank, at ride height"),
    &point_lines!("axle.watt.lower_rod.outer", "other end of the lower rod, at ride height"),
    &[
        bush(
            "axle.watt.upper_rod.crank_bush",
            "stiffness along the upper rod of the bush in its end on the crank; 1 GN/m where it is rigid",
        ),
        bush("axle.watt.upper_rod.outer_bush", "stiffness along the upper rod of the bush in its other end"),
        bush(
            "axle.watt.lower_rod.crank_bush",
            "stiffness along the lower rod of the bush in its end on the crank; 1 GN/m where it is rigid",
        ),
        bush("axle.watt.lower_rod.outer_bush", "stiffness along the lower rod of the bush in its other end"),
    ],
]);

const LIMITS: [Line; 10] = [
    joint("axle.lower_links.body_limit", "lean that the body end of the lower link allows, from ride height"),
    joint("axle.lower_links.axle_limit", "lean that the axle end of the lower link allows, from ride height"),
    joint("axle.upper_links.body_limit", "lean that the body end of the upper link allows, from ride height"),
    joint("axle.upper_links.axle_limit", "lean that the axle end of the upper link allows, from ride height"),
    joint(
        "axle.lateral_rod.body_limit",
        "lean that the body end of the lateral rod allows, from ride height",
    ),
    joint(
        "axle.lateral_rod.axle_limit",
        "lean that the axle end of the lateral rod allows, from ride height",
    ),
    joint(
        "axle.watt.upper_rod.crank_limit",
        "lean of the upper rod against the crank that its end there allows, from ride height",
    ),
    joint(
        "axle.watt.upper_rod.outer_limit",
        "lean that the outer end of the upper rod allows, from ride height",
    ),
    joint(
        "axle.watt.lower_rod.crank_limit",
        "lean of the lower rod against the crank that its end there allows, from ride height",
    ),
    joint(
        "axle.watt.lower_rod.outer_limit",
        "lean that the outer end of the lower rod allows, from ride height",
    ),
];

const BEARINGS: [Line; 1] = [choice(
    "axle.anti_roll_bar.bearings",
    Mount::WORDS,
    "carrier of the bearings of a live axle's bar; its drop links lead to the other of the two",
)];

/// Lower eye of a coil-over on a live axle. A sheet may have it under the key of a double wishbone.
const AXLE_EYE: [Line; 3] = [
    coordinate("axle.coil_over.axle_eye.x", "eye of the coil-over on a live axle, at ride height: forward")
        .by(&[same(&["axle.coil_over.lower_eye.x"], ONE_EYE)]),
    coordinate("axle.coil_over.axle_eye.y", "the same eye: left of the centre plane")
        .by(&[same(&["axle.coil_over.lower_eye.y"], ONE_EYE)]),
    coordinate("axle.coil_over.axle_eye.z", "the same eye: up")
        .by(&[same(&["axle.coil_over.lower_eye.z"], ONE_EYE)]),
];

const ONE_EYE: &str = "definition: the lower eye stands on the axle";

/// The axle as a model, ready to draw.
pub(in crate::suspension) const MODEL: ModelOf = model! {
    "axle.suspension" "suspension.LiveAxle" LiveAxle in "axle"
    takes {
        wheel, wheel.loaded_radius = "axle.tyre.loaded_radius",
        lower_links: LinkPair, lower_links.fitted: Option<Fitted>,
        lower_links.body_limit: Limit, lower_links.axle_limit: Limit,
        upper_links: LinkPair, upper_links.fitted: Fitted,
        upper_links.body_limit: Limit, upper_links.axle_limit: Limit,
        lateral_rod: Whole<LateralRod>, lateral_rod.body_limit: Limit, lateral_rod.axle_limit: Limit,
        watt: Whole<WattLinkage>,
        watt.upper_rod.crank_limit: Limit, watt.upper_rod.outer_limit: Limit,
        watt.lower_rod.crank_limit: Limit, watt.lower_rod.outer_limit: Limit,
        coil_over, anti_roll_bar,
    }
    end "axle"
};

/// Everything that is measured of it alone.
pub(in crate::suspension) const MEASURED: [Line; 60] =
    joined(&[&LINKS, &BUSHES, &ACROSS, &LIMITS, &BEARINGS, &AXLE_EYE]);
