//! A live axle on links on the build sheet: its links as lines, and what follows from them. Its wheel, the eyes of its coil-over and the
//! points of its anti-roll bar are lines of the double wishbone.

use super::double_wishbone_lines::{coordinate, joint, point_lines};
use super::{Fitted, Mount};
use crate::base::section::{Line, choice, joined, line};
use crate::units::{LinearStiffness, Quantity};

const fn bush(path: &'static str, meaning: &'static str) -> Line {
    line(path, LinearStiffness::KIND, meaning).within(
        1.0,
        1e12,
        "common practice, no source: bushes lie between 1 N/m and 1 TN/m; leave out what is rigid",
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
        "whether there are two upper links, the drawn one and its mirror image, or one",
    )],
]);

/// What may be left out of them.
const BUSHES: [Line; 5] = [
    choice(
        "axle.lower_links.fitted",
        Fitted::WORDS,
        "whether there are two lower links or one; a pair where it is not said",
    ),
    bush(
        "axle.lower_links.body_bush",
        "stiffness along the lower link of the bush in its body end; leave out what is rigid",
    ),
    bush("axle.lower_links.axle_bush", "the same in its axle end"),
    bush(
        "axle.upper_links.body_bush",
        "stiffness along the upper link of the bush in its body end; leave out what is rigid",
    ),
    bush("axle.upper_links.axle_bush", "the same in its axle end"),
];

/// Across the vehicle: one rod, or two on a bell crank.
const ACROSS: [Line; 28] = joined(&[
    &point_lines!("axle.lateral_rod.body", "body end of the lateral rod, at ride height"),
    &point_lines!("axle.lateral_rod.axle", "axle end of the lateral rod, at ride height"),
    &[
        bush(
            "axle.lateral_rod.body_bush",
            "stiffness along the lateral rod of the bush in its body end; leave out what is rigid",
        ),
        bush("axle.lateral_rod.axle_bush", "the same in its axle end"),
        choice("axle.watt.carried_by", Mount::WORDS, "what carries the bell crank of a Watt linkage"),
    ],
    &point_lines!("axle.watt.pivot", "pivot of the bell crank, whose axis lies along the vehicle"),
    &point_lines!("axle.watt.upper_rod.crank", "end of the upper rod on the bell crank, at ride height"),
    &point_lines!("axle.watt.upper_rod.outer", "other end of the upper rod, at ride height"),
    &point_lines!("axle.watt.lower_rod.crank", "end of the lower rod on the bell crank, at ride height"),
    &point_lines!("axle.watt.lower_rod.outer", "other end of the lower rod, at ride height"),
    &[
        bush(
            "axle.watt.upper_rod.crank_bush",
            "stiffness along the upper rod of the bush in its end on the crank; leave out what is rigid",
        ),
        bush("axle.watt.upper_rod.outer_bush", "the same in its other end"),
        bush(
            "axle.watt.lower_rod.crank_bush",
            "stiffness along the lower rod of the bush in its end on the crank; leave out what is rigid",
        ),
        bush("axle.watt.lower_rod.outer_bush", "the same in its other end"),
    ],
]);

const LIMITS: [Line; 10] = [
    joint("axle.lower_links.body_limit", "lean that the body end of the lower link allows, from ride height"),
    joint("axle.lower_links.axle_limit", "the same of its axle end"),
    joint("axle.upper_links.body_limit", "lean that the body end of the upper link allows, from ride height"),
    joint("axle.upper_links.axle_limit", "the same of its axle end"),
    joint(
        "axle.lateral_rod.body_limit",
        "lean that the body end of the lateral rod allows, from ride height",
    ),
    joint("axle.lateral_rod.axle_limit", "the same of its axle end"),
    joint(
        "axle.watt.upper_rod.crank_limit",
        "lean of the upper rod against the crank that its end there allows, from ride height",
    ),
    joint("axle.watt.upper_rod.outer_limit", "the same of its other end"),
    joint(
        "axle.watt.lower_rod.crank_limit",
        "lean of the lower rod against the crank that its end there allows, from ride height",
    ),
    joint("axle.watt.lower_rod.outer_limit", "the same of its other end"),
];

const BEARINGS: [Line; 1] = [choice(
    "axle.anti_roll_bar.bearings",
    Mount::WORDS,
    "what carries the bearings of a live axle's bar; its drop links lead to the other of the two",
)];

/// Everything that is measured of it alone.
pub(super) const MEASURED: [Line; 57] = joined(&[&LINKS, &BUSHES, &ACROSS, &LIMITS, &BEARINGS]);
