//! Words of the trade that nothing answers yet.

use super::{Answers, Term};

const fn not(names: &'static [&'static str], says: &'static str) -> Term {
    Term { names, answers: Answers::NotCovered, says }
}

/// Things of the trade that no system covers yet, and what does part of the work.
pub(super) const NOT_COVERED: &[Term] = &[
    not(
        &["brake", "braking", "brakes", "brake system", "stopping distance", "brake calculation"],
        "braking is not covered yet",
    ),
    not(&["master cylinder", "brake cylinder", "wheel cylinder"], "brake hydraulics are not covered yet"),
    not(
        &["caliper", "brake pad", "brake disc", "disc brake", "rotor", "drum brake", "brake drum"],
        "brakes are not covered yet",
    ),
    not(
        &[
            "brake bias",
            "brake balance",
            "proportioning valve",
            "brake pedal",
            "pedal ratio",
            "handbrake",
            "parking brake",
        ],
        "brake forces and their balance are not covered yet; `front.brake_share` only feeds the linkage's dive under braking",
    ),
    not(
        &[
            "steering effort",
            "steering force",
            "power steering",
            "steering box",
            "steering gear",
            "pitman arm",
            "drag link",
        ],
        "steering forces and steering gear are not covered yet",
    ),
    not(
        &["steering column", "steering shaft", "steering wheel", "steering ratio"],
        "the steering column is not covered yet",
    ),
    not(
        &["ackermann", "ackerman", "turning circle", "turning radius"],
        "steering geometry over the lock is not covered yet",
    ),
    not(
        &[
            "frame",
            "chassis",
            "frame rail",
            "ladder frame",
            "subframe",
            "monocoque",
            "tube frame",
            "space frame",
        ],
        "frames are not covered yet",
    ),
    not(
        &["torsional stiffness", "chassis stiffness", "frame stiffness", "bending stiffness"],
        "the stiffness of a frame is not covered yet",
    ),
    not(
        &["weld", "welding", "weld size", "fillet weld"],
        "welds are not covered yet; leave them to licensed practice",
    ),
    not(
        &["bracket", "tab", "gusset", "mount strength", "engine mount", "gearbox mount"],
        "brackets and mounts are not covered yet",
    ),
    not(
        &[
            "bolt",
            "fastener",
            "nut",
            "bolt torque",
            "tightening torque",
            "stud",
            "wheel nut",
            "lug nut",
            "screw",
        ],
        "the build sheet asks nothing about fasteners yet; the functions and models of the system fastener answer",
    ),
    not(
        &["roll cage", "roll hoop", "rollover structure", "seat belt", "harness", "crash"],
        "protection in a crash is not covered yet; leave it to codes and licensed practice",
    ),
    not(
        &[
            "radiator",
            "radiator size",
            "radiator core",
            "radiator area",
            "heat rejection",
            "cooling capacity",
        ],
        "the size of a radiator is not covered yet",
    ),
    not(
        &["fan", "cooling fan", "electric fan", "shroud", "ducting", "air flow"],
        "fans and the air through a radiator are not covered yet",
    ),
    not(
        &[
            "oil cooler",
            "transmission cooler",
            "intercooler",
            "charge cooler",
            "oil",
            "oil pressure",
            "lubrication",
        ],
        "oil and charge coolers are not covered yet",
    ),
    not(
        &["electrical", "wiring", "battery", "alternator", "charging", "fuse", "lighting", "lights"],
        "the electrical system is not covered yet",
    ),
    not(
        &["acceleration", "quarter mile", "0 to 60", "lap time", "gradeability", "hill climb", "performance"],
        "acceleration and gradients are not covered yet; the pull at the wheels is `driveline.tractive_force`",
    ),
    not(
        &[
            "aerodynamics",
            "drag",
            "drag coefficient",
            "downforce",
            "lift",
            "frontal area",
            "rolling resistance",
        ],
        "drag and lift are not covered yet",
    ),
    not(&["fuel", "fuel consumption", "fuel tank", "mpg", "fuel system", "range"], "fuel is not covered yet"),
    not(&["exhaust", "muffler", "silencer", "manifold", "header pipe"], "the exhaust is not covered yet"),
    not(
        &["electric motor", "ev", "battery pack", "hybrid", "inverter"],
        "electric drives are not covered yet",
    ),
    not(
        &["cornering stiffness", "slip angle", "tyre model", "grip curve"],
        "tyre forces over slip are not covered yet",
    ),
    not(&["wheel bearing", "hub", "bearing", "bearing life"], "bearings are not covered yet"),
    not(
        &["u-joint", "universal joint", "cv joint", "critical speed", "whirling", "shaft balance"],
        "joints and the whirling speed of shafts are not covered yet",
    ),
    not(
        &["gear teeth", "gear strength", "gear life"],
        "teeth of gears are not covered yet; a gearbox and an axle are judged by their ratings",
    ),
    not(
        &["ground clearance", "approach angle", "departure angle", "breakover angle"],
        "ground clearance and its angles are not covered yet",
    ),
    not(&["crane", "winch", "tow bar", "recovery point"], "winches and recovery points are not covered yet"),
    not(&["air brake", "retarder", "exhaust brake", "engine brake"], "retarders are not covered yet"),
    not(
        &[
            "de dion",
            "swing axle",
            "semi trailing arm",
            "torsion beam",
            "twist beam",
            "trailing arm suspension",
            "sliding pillar",
        ],
        "this kind of suspension cannot be drawn yet; write its motion ratio, roll centre height and clearances as measured",
    ),
];
