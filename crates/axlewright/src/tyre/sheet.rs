use super::Tyre;
use crate::Result;
use crate::base::section::{
    Finding, Line, Margin, Section, choice, derived, half, joined, line, marking, own, part, pick, step,
};
use crate::units::{
    Force, Length, LinearStiffness, Mass, Quantity, Ratio, STANDARD_GRAVITY, TurnsPerDistance, Velocity,
};

fn decode(text: &str) -> Result<Vec<f64>> {
    Tyre::new(text)?.numbers()
}

/// What a marking says: the second input, after the marking itself.
fn marked(of: &[f64]) -> Result<f64> {
    Ok(of[1])
}

/// The rule of a radial tyre where the marking is of one, else the one that goes by the loaded radius.
fn rolling(of: &[f64]) -> Result<f64> {
    let [radial, other] = [of[1], of[2]];
    Ok(if radial.is_nan() { other } else { radial })
}

fn weight(of: &[f64]) -> Result<f64> {
    Ok(of[0] * STANDARD_GRAVITY / 2.0)
}

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        10.0,
        "common practice, no source: tyres are smaller than 10 m",
    )
}

const MARKING: &str = "the marking on the tyre's wall";

const SIZE: &[Line] = &[
    marking("axle.tyre.size", decode, "marking on the tyre's wall, such as 235/70R16 106T"),
    length("axle.tyre.free_diameter", "of the tyre, inflated and not loaded").by(&[part(
        0,
        &["axle.tyre.size"],
    )
    .usual()]),
    length("axle.tyre.section_width", "of the tyre").by(&[part(1, &["axle.tyre.size"]).usual()]),
    length("axle.tyre.free_radius", "of the tyre, inflated and not loaded").by(&[own(
        "r_0 = D / 2",
        "definition: half the diameter",
        half,
        &["axle.tyre.free_diameter"],
    )]),
];

const RADII: &[Line] = &[
    line("axle.tyre.rate", LinearStiffness::KIND, "vertical rate of the tyre at its pressure and load").within(
        1.0,
        1e9,
        "common practice, no source: rates lie between 1 N/m and 1 GN/m",
    ),
    derived("axle.tyre.load", Force::KIND, "on the ground under one tyre, the two of its axle alike").by(&[own(
        "F = m g / 2",
        "definition: both wheels of the axle alike; standard gravity: 3rd CGPM",
        weight,
        &["axle.axle_mass"],
    )]),
    length("axle.tyre.loaded_radius", "from the wheel's centre to the ground, loaded: force acts on it").by(&[
        step("tyre.loaded_radius", &["axle.tyre.free_diameter", "axle.tyre.load", "axle.tyre.rate"]).usual(),
    ]),
    line("axle.tyre.rolling_turns", TurnsPerDistance::KIND, "turns along a distance, as counted or as its maker says")
        .above(0.0, 1000.0, "common practice, no source: a tyre turns less than a thousand times a metre"),
    derived("axle.tyre.radial_radius", Length::KIND, "on which a new tyre rolls, if its marking is that of a radial one: C = 3.05 D, see tyre.Tyre")
        .by(&[part(2, &["axle.tyre.size"])]),
    derived("axle.tyre.diagonal_radius", Length::KIND, "on which a diagonal tyre rolls")
        .by(&[step("tyre.rolling_radius", &["axle.tyre.free_diameter", "axle.tyre.loaded_radius"])]),
    length("axle.tyre.effective_radius", "distance that a turn rolls, over 2 pi: speed goes by it").by(&[
        step("tyre.rolling_radius_from_turns", &["axle.tyre.rolling_turns"]),
        own(
            "the radial rule where the marking is that of a radial tyre, else by the loaded radius",
            "ETRTO Standards Manual and UN Regulation 30, from memory; Jazar, Vehicle Dynamics (2008), sec. 3.1, from memory",
            rolling,
            &["axle.tyre.size", "?axle.tyre.radial_radius", "?axle.tyre.diagonal_radius"],
        )
        .lacking("a diagonal tyre needs tyre.loaded_radius, or tyre.rate and the axle's mass, or tyre.rolling_turns")
        .usual(),
    ]),
];

const SERVICE: &[Line] = &[
    derived("axle.tyre.marked_index", Ratio::KIND, "load index of the marking, the tyre standing single")
        .by(&[part(3, &["axle.tyre.size"])]),
    line("axle.tyre.load_index", Ratio::KIND, "load index, the tyre standing single")
        .within(0.0, 279.0, "ISO 4000-1, from memory: load indices run from 0 to 279")
        .by(&[own(
            "load index of the marking",
            MARKING,
            marked,
            &["axle.tyre.size", "?axle.tyre.marked_index"],
        )
        .lacking("no load index stands after the size, as in 235/70R16 106T")]),
    line(
        "axle.tyre.load_capacity",
        Mass::KIND,
        "load that one tyre carries at its pressure, as its load index or its maker says",
    )
    .above(0.0, 1e6, "common practice, no source: no tyre carries 1000 t")
    .by(&[step("tyre.load_capacity", &["axle.tyre.load_index"]).usual()]),
    derived("axle.tyre.marked_speed", Velocity::KIND, "speed of the symbol of the marking")
        .by(&[part(4, &["axle.tyre.size"])]),
    line(
        "axle.tyre.rated_speed",
        Velocity::KIND,
        "speed up to which the tyre carries its load, as its speed symbol or its maker says",
    )
    .above(0.0, 300.0, "common practice, no source: no road vehicle is faster than 300 m/s")
    .by(&[own(
        "speed of the symbol",
        "ISO 4000-1, from memory",
        marked,
        &["axle.tyre.size", "?axle.tyre.marked_speed"],
    )
    .lacking("no speed symbol stands after the size, as in 235/70R16 106T")
    .usual()]),
    line("wanted.tyre_speed", Ratio::KIND, "speed of the tyre's symbol over the greatest speed")
        .within(1.0, 10.0, "definition: below 1 the tyre is too slow, not tight")
        .or(1.0, "nothing beyond the symbol itself"),
];

/// What the speedometer reads after a change of tyre, or of tyre and axle.
const SPEEDOMETER: &[Line] = &[
    marking("speedometer.tyre_size", decode, "marking of the tyre with which the speedometer was right"),
    derived("speedometer.radial_radius", Length::KIND, "on which that tyre rolls, if it is a radial one")
        .by(&[part(2, &["speedometer.tyre_size"])]),
    length("speedometer.effective_radius", "rolling radius with which the speedometer was right").by(&[own(
        "the radial rule",
        "ETRTO Standards Manual and UN Regulation 30, from memory",
        marked,
        &["speedometer.tyre_size", "?speedometer.radial_radius"],
    )
    .lacking("a diagonal tyre needs speedometer.effective_radius")
    .usual()]),
    choice(
        "speedometer.counts",
        &["wheel", "shaft"],
        "whether the speedometer counts turns of a driven wheel, or of the shaft before the axle",
    ),
    line(
        "speedometer.final_drive",
        Ratio::KIND,
        "ratio of the axle with which a speedometer that counts turns of the shaft was right",
    )
    .within(0.01, 1000.0, "common practice, no source: gears lie between 0.01 and 1000"),
    derived("speedometer.error_at_wheel", Ratio::KIND, "of one that counts turns of a wheel").by(&[step(
        "tyre.speedometer_error",
        &["speedometer.effective_radius", "driveline.effective_radius"],
    )]),
    derived("speedometer.error_at_shaft", Ratio::KIND, "of one that counts turns of the shaft").by(&[step(
        "tyre.speedometer_error_at_shaft",
        &[
            "speedometer.effective_radius",
            "driveline.effective_radius",
            "speedometer.final_drive",
            "final_drive.ratio",
        ],
    )]),
    derived(
        "speedometer.error",
        Ratio::KIND,
        "reading over true speed, less 1; the error that it had from the works comes on top",
    )
    .by(&[pick(&["speedometer.counts", "speedometer.error_at_wheel", "speedometer.error_at_shaft"])]),
    line(
        "wanted.speedometer",
        Ratio::KIND,
        "by how much the speedometer is wanted to read too much, over the true speed",
    )
    .within(0.0, 1.0, "definition: a margin is not negative")
    .or(0.0, "nothing beyond never too little"),
];

/// What the sheet says of tyres, wheels and the speedometer.
pub const SHEET: Section = Section {
    lines: &joined::<{ SIZE.len() + RADII.len() + SERVICE.len() + SPEEDOMETER.len() }>(&[
        SIZE,
        RADII,
        SERVICE,
        SPEEDOMETER,
    ]),
    findings: &[
        Finding {
            path: "axle.tyre_load",
            question: "Does the tyre carry the heavier wheel of its axle?",
            margin: Margin::Ratio { capacity: "axle.tyre.load_capacity", demand: "axle.heavier_wheel" },
            wanted: "wanted.load",
            rests_on: &[],
            caution: "An overloaded tyre overheats and bursts; load and pressure tables of its maker and local codes come first.",
        },
        Finding {
            path: "axle.tyre_speed",
            question: "Is the tyre made for the greatest speed?",
            margin: Margin::Ratio { capacity: "axle.tyre.rated_speed", demand: "use.greatest_speed" },
            wanted: "wanted.tyre_speed",
            rests_on: &[],
            caution: "A tyre driven beyond its speed symbol overheats and bursts; its maker and local codes come first.",
        },
        Finding {
            path: "speedometer.reading",
            question: "Does the speedometer never read too little?",
            margin: Margin::Left { value: "speedometer.error" },
            wanted: "wanted.speedometer",
            rests_on: &[],
            caution: "A speedometer that reads too little is forbidden in many places (UN Regulation 39, from memory: never below the \
                      true speed); have it set and checked before the road.",
        },
    ],
};
