use super::Differential;
use crate::base::section::{
    Finding, Line, Margin, Section, choice, derived, greatest, joined, line, own, pick, product, quotient,
    step,
};
use crate::units::{AngularVelocity, Force, Length, Power, Quantity, Ratio, Torque, Velocity};
use crate::{Error, Result};

const KINDS: &[&str] = &["continuous", "peak", "yield", "ultimate"];
const SIDES: &[&str] = &["input", "output"];
const DIFFERENTIALS: [(&str, Differential); 3] = [
    ("open", Differential::Open),
    ("limited_slip", Differential::LimitedSlip),
    ("locked", Differential::Locked),
];

const fn ratio(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.01,
        1000.0,
        "common practice, no source: gears lie between 0.01 and 1000",
    )
}

const fn efficiency(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).above(0.0, 1.0, "definition: power out over power in")
}

const fn torque(path: &'static str, meaning: &'static str) -> Line {
    line(path, Torque::KIND, meaning).above(
        0.0,
        1e8,
        "common practice, no source: no driveline carries 100 MN·m",
    )
}

const fn flow(path: &'static str, meaning: &'static str) -> Line {
    derived(path, Torque::KIND, meaning)
}

const fn speed(path: &'static str, meaning: &'static str) -> Line {
    line(path, Velocity::KIND, meaning).above(
        0.0,
        300.0,
        "common practice, no source: no road vehicle is faster than 300 m/s",
    )
}

const fn coefficient(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.01,
        10.0,
        "common practice, no source: above 10 it is a percentage",
    )
}

const fn radius(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        10.0,
        "common practice, no source: tyres are smaller than 10 m",
    )
}

/// The ratios that are written, after the first of them; refused where they do not fall: strength is looked at in first gear, speed in top.
fn falling(of: &[f64]) -> Result<impl Iterator<Item = f64>> {
    let mut pairs = of[1..].windows(2).enumerate();
    if let Some((place, pair)) = pairs.find(|(_, pair)| pair[1] >= pair[0]) {
        return Err(Error::NoSolution {
            message: format!(
                "gearbox.ratios[{}] = {} is not less than gearbox.ratios[{place}] = {}: ratios fall from first gear to top",
                place + 1,
                pair[1],
                pair[0]
            ),
        });
    }
    Ok(of[1..].iter().copied().filter(|of| !of.is_nan()))
}

fn first(of: &[f64]) -> Result<f64> {
    Ok(falling(of)?.next().unwrap_or(of[0]))
}

fn last(of: &[f64]) -> Result<f64> {
    Ok(falling(of)?.last().unwrap_or(of[0]))
}

/// Torque behind a part, by its ratio and its efficiency.
fn behind(of: &[f64]) -> Result<f64> {
    Ok(of[0] * (of[1] * of[2]))
}

/// The share of one shaft, by the place of the word of its differential.
fn share(of: &[f64]) -> Result<f64> {
    Ok(DIFFERENTIALS.get(of[0] as usize).map_or(f64::NAN, |(_, differential)| differential.shaft_share()))
}

/// No loss where there is no transfer case.
fn no_transfer_case(of: &[f64]) -> Result<f64> {
    Ok(if of[0] == 1.0 { 1.0 } else { f64::NAN })
}

/// What one part sees, as `driveline.TorquePath` has it: of a continuous rating the steady torque, of the others that of a dropped clutch.
fn demand(of: &[f64]) -> Result<f64> {
    let [side, kind, rating] = [of[0], of[1], of[2]];
    let (engine, dropped, grip, inertia) = ([of[3], of[4]], [of[5], of[6]], [of[7], of[8]], of[9]);
    let on_side = |torque: [f64; 2]| torque[side as usize];
    let steady = lesser(engine, grip);
    let dropped = lesser(dropped, grip.map(|grip| grip * inertia));
    Ok(if kind == 0.0 || (dropped[0].is_nan() && on_side(steady) > rating) {
        on_side(steady)
    } else {
        on_side(dropped)
    })
}

/// The gearbox: on its input side what engine or clutch give, as in a gear so high that the tyres hold it; on its output side in the lowest gear.
fn demand_on_gearbox(of: &[f64]) -> Result<f64> {
    let [side, kind, rating, inertia] = [of[0], of[1], of[2], of[8]];
    let (input, output, grip_output) = ([of[3], of[5]], [of[4], of[6]], of[7]);
    match side {
        0.0 => demand_on_shaft(&[kind, rating, input[0], input[1], f64::NAN, f64::NAN]),
        _ => demand_on_shaft(&[kind, rating, output[0], output[1], grip_output, inertia]),
    }
}

/// What a part sees whose two sides carry the same torque.
fn demand_on_shaft(of: &[f64]) -> Result<f64> {
    let [kind, rating, engine, dropped, grip, inertia] = [of[0], of[1], of[2], of[3], of[4], of[5]];
    demand(&[0.0, kind, rating, engine, engine, dropped, dropped, grip, grip, inertia])
}

/// Of two pairs of input and output torque the one with the lesser input; the one that is known.
fn lesser(torque: [f64; 2], other: [f64; 2]) -> [f64; 2] {
    if other[0] < torque[0] || torque[0].is_nan() { other } else { torque }
}

/// The high bound of grip; refused where it lies below the mean, which may be missing.
fn high_bound(of: &[f64]) -> Result<f64> {
    let [high, mean] = [of[0], of[1]];
    if mean > high {
        return Err(Error::NoSolution {
            message: format!(
                "grip.strength_coefficient = {high} is a high bound of grip and not less than grip.pull_coefficient = {mean}"
            ),
        });
    }
    Ok(high)
}

/// The lesser of what the engine gives and what the tyres hold.
fn pull(of: &[f64]) -> Result<f64> {
    let [engine, grip, mean, high] = [of[0], of[1], of[2], of[3]];
    high_bound(&[high, mean])?;
    Ok(if grip < engine { grip } else { engine })
}

const DROPPED: &str = "a rating that is not continuous is held against a dropped clutch, which needs clutch.capacity and clutch.shock_factor, or the grip with grip.inertia_factor";
const POWER: &str = "balance of power through a geared train, see driveline.TorquePath";
const DEMAND: &str = "the lesser of engine and grip for a continuous rating; for the others the lesser of the dropped clutch and the grip times the inertia factor";
const GEARBOX_DEMAND: &str = "on the input side the engine, or the dropped clutch for a rating that is not continuous; on the output side the lesser of that and the grip";
const SLIPS: &str = "A slipping clutch heats, and a hot or oily one holds less; a disc or a flywheel that bursts cuts through its housing: use parts rated for the speed. \
                     Makers' ratings, local codes and licensed practice come first.";
const BREAKS: &str = "A part that breaks can lock a wheel or drop a shaft on the road; ratings of the makers, local codes and licensed practice come first.";

/// The clutch.
const CLUTCH: &[Line] = &[
    line("clutch.clamp_load", Force::KIND, "with which the cover presses")
        .above(0.0, 1e7, "common practice, no source: covers press with less than 10 MN"),
    line("clutch.friction", Ratio::KIND, "coefficient of friction of the facings, hot")
        .above(0.0, 2.0, "common practice, no source: facings hold less than twice what presses them"),
    line("clutch.outer_diameter", Length::KIND, "of the facings")
        .above(0.0, 10.0, "common practice, no source: clutches are smaller than 10 m"),
    line("clutch.inner_diameter", Length::KIND, "of the facings")
        .above(0.0, 10.0, "common practice, no source: clutches are smaller than 10 m"),
    line("clutch.faces", Ratio::KIND, "number of friction faces: 2 for one plate")
        .within(1.0, 100.0, "definition: a clutch has a face"),
    torque("clutch.capacity", "what the clutch holds before it slips").first_hand().by(&[step(
        "driveline.clutch_capacity_uniform_wear",
        &["clutch.clamp_load", "clutch.friction", "clutch.outer_diameter", "clutch.inner_diameter", "clutch.faces"],
    )
    .usual()]),
    line("clutch.shock_factor", Ratio::KIND, "how much a dropped clutch multiplies the torque at its output; 2 where it is applied suddenly and undamped")
        .within(1.0, 10.0, "common practice, no source: a shock adds to the torque, and a factor above 10 is a slip"),
    flow("clutch.dropped_torque", "at the output of a dropped clutch").by(&[own(
        "T_d = s T_c",
        "suddenly applied load (Shigley's Mechanical Engineering Design, from memory)",
        product,
        &["clutch.shock_factor", "clutch.capacity"],
    )]),
];

/// What the tyres hold.
const GRIP: &[Line] = &[
    radius("driveline.loaded_radius", "of the driven wheels, from centre to ground: force acts on it")
        .by(&[pick(&["driveline.driven", "front.tyre.loaded_radius", "rear.tyre.loaded_radius"])]),
    line("grip.driven_load", Force::KIND, "on the ground under all driven wheels, with the transfer that the same launch causes")
        .within(1.0, 10e6, "common practice, no source: driven wheels bear between 1 N and 10 MN"),
    coefficient("grip.strength_coefficient", "a high bound of grip: for what a part must bear"),
    coefficient("grip.pull_coefficient", "a mean of grip: for what the vehicle gets to the ground"),
    line("grip.inertia_factor", Ratio::KIND, "by how much the inertia between part and ground lets a dropped clutch exceed the grip; without it grip bounds the steady torque only")
        .within(1.0, 10.0, "definition: inertia adds to the grip; common practice, no source: a factor above 10 is a slip"),
    derived("grip.high_coefficient", Ratio::KIND, "the high bound, not below the mean").by(&[own(
        "m_high >= m",
        "definition: a high bound is not below the mean",
        high_bound,
        &["grip.strength_coefficient", "?grip.pull_coefficient"],
    )]),
    flow("grip.torque", "at the driven wheels together, that the tyres hold at most")
        .by(&[step("driveline.grip_torque", &["grip.driven_load", "grip.high_coefficient", "driveline.loaded_radius"])]),
    flow("grip.pull_torque", "at the driven wheels together, that the tyres hold on a mean")
        .by(&[step("driveline.grip_torque", &["grip.driven_load", "grip.pull_coefficient", "driveline.loaded_radius"])]),
];

/// The gearbox. Behind it strength is looked at in its lowest gear, reverse among them: there every torque is greatest.
const GEARBOX: &[Line] = &[
    ratio("gearbox.ratios[]", "of the gears, first to top").list(12),
    ratio("gearbox.reverse_ratio", "of reverse gear"),
    ratio("gearbox.first_ratio", "of first gear").by(&[own(
        "first of the ratios",
        "definition",
        first,
        &["gearbox.ratios[0]", "?gearbox.ratios[*]"],
    )]),
    ratio("gearbox.top_ratio", "of top gear").by(&[own(
        "last of the ratios",
        "definition",
        last,
        &["gearbox.ratios[0]", "?gearbox.ratios[*]"],
    )]),
    derived("gearbox.lowest_ratio", Ratio::KIND, "of the lowest gear, first or reverse").by(&[own(
        "the greatest of first gear, the list and reverse",
        "definition",
        greatest,
        &["gearbox.first_ratio", "?gearbox.reverse_ratio", "?gearbox.ratios[*]"],
    )]),
    efficiency("gearbox.efficiency", "power out over power in, in the lowest gear"),
    torque("gearbox.torque_rating", "as its maker says"),
    choice("gearbox.rating_side", SIDES, "side on which the rating counts"),
    choice("gearbox.rating_kind", KINDS, "what the rating promises"),
    flow("gearbox.output_torque", "in the lowest gear, engine as the limit").by(&[own(
        "T (i e)",
        POWER,
        behind,
        &["engine.peak_torque", "gearbox.lowest_ratio", "gearbox.efficiency"],
    )]),
    flow("gearbox.dropped_output", "in the lowest gear, of a dropped clutch").by(&[own(
        "T_d (i e)",
        POWER,
        behind,
        &["clutch.dropped_torque", "gearbox.lowest_ratio", "gearbox.efficiency"],
    )]),
    flow(
        "gearbox.grip_output",
        "behind the gearbox, that the tyres hold with the transfer case in high range",
    )
    .by(&[own(
        "T_g / e_t",
        "balance of power through a geared train; the efficiency of the low range, which is the lesser",
        quotient,
        &["final_drive.grip_input", "transfer_case.efficiency"],
    )]),
    flow(
        "gearbox.demand",
        "torque on the rated side: in any gear on its input, in the lowest gear and high range on its output",
    )
    .by(&[own(
        GEARBOX_DEMAND,
        POWER,
        demand_on_gearbox,
        &[
            "gearbox.rating_side",
            "gearbox.rating_kind",
            "?gearbox.torque_rating",
            "engine.peak_torque",
            "gearbox.output_torque",
            "?clutch.dropped_torque",
            "?gearbox.dropped_output",
            "?gearbox.grip_output",
            "?grip.inertia_factor",
        ],
    )
    .lacking(DROPPED)]),
];

/// The transfer case, in low range where it has one.
const TRANSFER_CASE: &[Line] = &[
    ratio("transfer_case.low_ratio", "of the low range").or(1.0, "no low range where none is written"),
    efficiency("transfer_case.efficiency", "power out over power in, in low range").by(&[own(
        "1 where there is no transfer case",
        "definition",
        no_transfer_case,
        &["transfer_case.low_ratio"],
    )
    .lacking("a low range needs transfer_case.efficiency")
    .usual()]),
    flow("transfer_case.output_torque", "in the lowest gear, engine as the limit").by(&[own(
        "T (i_t e_t)",
        POWER,
        behind,
        &["gearbox.output_torque", "transfer_case.low_ratio", "transfer_case.efficiency"],
    )]),
    flow("transfer_case.dropped_output", "in the lowest gear, of a dropped clutch").by(&[own(
        "T_d (i_t e_t)",
        POWER,
        behind,
        &["gearbox.dropped_output", "transfer_case.low_ratio", "transfer_case.efficiency"],
    )]),
];

/// The shaft to the driven axle.
const PROPELLER_SHAFT: &[Line] = &[
    torque("propeller_shaft.torque_rating", "as its maker says"),
    choice("propeller_shaft.rating_kind", KINDS, "what the rating promises"),
    flow("propeller_shaft.demand", "torque in it, in the lowest gear").by(&[own(
        DEMAND,
        POWER,
        demand_on_shaft,
        &[
            "propeller_shaft.rating_kind",
            "?propeller_shaft.torque_rating",
            "transfer_case.output_torque",
            "?transfer_case.dropped_output",
            "?final_drive.grip_input",
            "?grip.inertia_factor",
        ],
    )
    .lacking(DROPPED)]),
];

/// The driven axle.
const FINAL_DRIVE: &[Line] = &[
    ratio("final_drive.ratio", "of the driven axle"),
    efficiency("final_drive.efficiency", "power out over power in"),
    choice(
        "final_drive.differential",
        &[DIFFERENTIALS[0].0, DIFFERENTIALS[1].0, DIFFERENTIALS[2].0],
        "differential between the two shafts; a lockable one is locked",
    ),
    torque("final_drive.torque_rating", "as its maker says"),
    choice("final_drive.rating_side", SIDES, "side on which the rating counts"),
    choice("final_drive.rating_kind", KINDS, "what the rating promises"),
    flow("final_drive.output_torque", "at both wheels together, in the lowest gear").by(&[own(
        "T (i_a e_a)",
        POWER,
        behind,
        &["transfer_case.output_torque", "final_drive.ratio", "final_drive.efficiency"],
    )]),
    flow("final_drive.dropped_output", "at both wheels together, of a dropped clutch").by(&[own(
        "T_d (i_a e_a)",
        POWER,
        behind,
        &["transfer_case.dropped_output", "final_drive.ratio", "final_drive.efficiency"],
    )]),
    flow("final_drive.grip_input", "before the axle, that the tyres hold").by(&[step(
        "driveline.grip_torque_upstream",
        &["grip.torque", "final_drive.ratio", "final_drive.efficiency"],
    )]),
    flow("final_drive.demand", "torque on the rated side").by(&[own(
        DEMAND,
        POWER,
        demand,
        &[
            "final_drive.rating_side",
            "final_drive.rating_kind",
            "?final_drive.torque_rating",
            "transfer_case.output_torque",
            "final_drive.output_torque",
            "?transfer_case.dropped_output",
            "?final_drive.dropped_output",
            "?final_drive.grip_input",
            "?grip.torque",
            "?grip.inertia_factor",
        ],
    )
    .lacking(DROPPED)]),
];

/// One of the two shafts of the driven axle.
const HALF_SHAFT: &[Line] = &[
    derived("half_shaft.share", Ratio::KIND, "of the axle's torque and grip that one shaft may carry").by(&[own(
        "half each if open, all of it if limited-slip or locked",
        "balance of moments, see driveline.axle_shaft_torque_open and _locked: a locked axle may stand on one wheel",
        share,
        &["final_drive.differential"],
    )]),
    torque("half_shaft.torque_rating", "as its maker says"),
    choice("half_shaft.rating_kind", KINDS, "what the rating promises"),
    flow("half_shaft.torque", "in one shaft, in the lowest gear").by(&[own(
        "share T",
        POWER,
        product,
        &["half_shaft.share", "final_drive.output_torque"],
    )]),
    flow("half_shaft.dropped_torque", "in one shaft, of a dropped clutch").by(&[own(
        "share T_d",
        POWER,
        product,
        &["half_shaft.share", "final_drive.dropped_output"],
    )]),
    flow("half_shaft.grip", "in one shaft, that the tyres hold: with one wheel in the air the other bears the whole load").by(&[own(
        "share T_g",
        POWER,
        product,
        &["half_shaft.share", "grip.torque"],
    )]),
    flow("half_shaft.demand", "torque in one shaft").by(&[own(
        DEMAND,
        POWER,
        demand_on_shaft,
        &[
            "half_shaft.rating_kind",
            "?half_shaft.torque_rating",
            "half_shaft.torque",
            "?half_shaft.dropped_torque",
            "?half_shaft.grip",
            "?grip.inertia_factor",
        ],
    )
    .lacking(DROPPED)]),
];

/// Speed and pull.
const SPEEDS: &[Line] = &[
    choice("driveline.driven", &["front", "rear"], "axle whose tyres set the road speed"),
    radius("driveline.effective_radius", "rolling radius of the driven wheels").by(&[pick(&[
        "driveline.driven",
        "front.tyre.effective_radius",
        "rear.tyre.effective_radius",
    ])]),
    speed("use.cruise_speed", "road speed that is held for hours"),
    speed("use.greatest_speed", "road speed that is never exceeded"),
    derived(
        "driveline.cruise_engine_speed",
        AngularVelocity::KIND,
        "engine speed at the cruise speed in top gear",
    )
    .by(&[step(
        "driveline.engine_speed",
        &["use.cruise_speed", "gearbox.top_ratio", "final_drive.ratio", "driveline.effective_radius"],
    )]),
    derived(
        "driveline.greatest_engine_speed",
        AngularVelocity::KIND,
        "engine speed at the greatest speed in top gear",
    )
    .by(&[step(
        "driveline.engine_speed",
        &["use.greatest_speed", "gearbox.top_ratio", "final_drive.ratio", "driveline.effective_radius"],
    )]),
    derived("driveline.crawl_ratio", Ratio::KIND, "first gear, low range and axle together").by(&[step(
        "driveline.crawl_ratio",
        &["gearbox.first_ratio", "transfer_case.low_ratio", "final_drive.ratio"],
    )]),
    derived("driveline.crawl_speed", Velocity::KIND, "road speed at idle in first gear and low range").by(&[
        step(
            "driveline.crawl_speed",
            &[
                "engine.idle_speed",
                "gearbox.first_ratio",
                "transfer_case.low_ratio",
                "final_drive.ratio",
                "driveline.effective_radius",
            ],
        ),
    ]),
    efficiency("driveline.efficiency", "of gearbox and axle together, high range").by(&[own(
        "e e_a",
        POWER,
        product,
        &["gearbox.efficiency", "final_drive.efficiency"],
    )]),
    flow("driveline.wheel_torque", "at the driven wheels in first gear and high range, engine as the limit")
        .by(&[step(
            "driveline.wheel_torque",
            &["engine.peak_torque", "gearbox.first_ratio", "final_drive.ratio", "driveline.efficiency"],
        )]),
    flow(
        "driveline.pull_torque",
        "at the driven wheels in the lowest gear, engine or mean grip as the limit",
    )
    .by(&[own(
        "min(T, m F r_l)",
        POWER,
        pull,
        &[
            "final_drive.output_torque",
            "grip.pull_torque",
            "grip.pull_coefficient",
            "?grip.strength_coefficient",
        ],
    )]),
    derived("driveline.tractive_force", Force::KIND, "of the driven wheels together in the lowest gear").by(
        &[own(
            "T / r_l",
            "balance of moments at the wheel",
            quotient,
            &["driveline.pull_torque", "driveline.loaded_radius"],
        )],
    ),
    derived(
        "driveline.wheel_power",
        Power::KIND,
        "at the driven wheels, high range, of the engine's greatest",
    )
    .by(&[step("engine.wheel_power", &["engine.peak_power", "driveline.efficiency"])]),
];

/// What is wanted.
const WANTED: &[Line] = &[
    line("wanted.cruise_engine_speed", AngularVelocity::KIND, "greatest engine speed at the cruise speed")
        .above(0.0, 10e3, "common practice, no source: engines turn slower than 95 000 rpm"),
    line(
        "wanted.engine_speed_margin",
        AngularVelocity::KIND,
        "how far below its limit an engine speed is wanted",
    )
    .within(0.0, 10e3, "definition: a margin is not negative")
    .or(0.0, "nothing beyond the limit itself"),
    speed("wanted.crawl_speed", "greatest road speed at idle in first gear and low range"),
    ratio("wanted.crawl_ratio", "least crawl ratio").by(&[step(
        "driveline.crawl_ratio_for_speed",
        &["wanted.crawl_speed", "engine.idle_speed", "driveline.effective_radius"],
    )]),
    derived(
        "final_drive.for_cruise",
        Ratio::KIND,
        "ratio of the axle for the engine speed that is wanted at the cruise speed",
    )
    .by(&[step(
        "driveline.final_drive_for_cruise",
        &[
            "use.cruise_speed",
            "wanted.cruise_engine_speed",
            "gearbox.top_ratio",
            "driveline.effective_radius",
        ],
    )]),
    derived(
        "gearbox.first_for_crawl",
        Ratio::KIND,
        "ratio of first gear for the least crawl ratio that is wanted",
    )
    .by(&[step(
        "driveline.first_gear_for_crawl",
        &["wanted.crawl_ratio", "transfer_case.low_ratio", "final_drive.ratio"],
    )]),
    line("wanted.crawl_margin", Ratio::KIND, "how far above its least the crawl ratio is wanted")
        .within(0.0, 1000.0, "definition: a margin is not negative")
        .or(0.0, "nothing beyond the limit itself"),
    line("wanted.clutch", Ratio::KIND, "capacity of the clutch over the engine's torque")
        .within(1.0, 10.0, "definition: below 1 it slips")
        .or(1.2, "common practice, no source"),
    line("wanted.strength", Ratio::KIND, "rating of a part over its torque")
        .within(1.0, 100.0, "definition: below 1 a part is short, not tight")
        .or(1.25, "common practice, no source"),
];

const LINES: usize = CLUTCH.len()
    + GRIP.len()
    + GEARBOX.len()
    + TRANSFER_CASE.len()
    + PROPELLER_SHAFT.len()
    + FINAL_DRIVE.len()
    + HALF_SHAFT.len()
    + SPEEDS.len()
    + WANTED.len();

/// What the sheet says of the driveline.
pub const SHEET: Section = Section {
    lines: &joined::<LINES>(&[
        CLUTCH,
        GRIP,
        GEARBOX,
        TRANSFER_CASE,
        PROPELLER_SHAFT,
        FINAL_DRIVE,
        HALF_SHAFT,
        SPEEDS,
        WANTED,
    ]),
    findings: &[
        Finding {
            path: "clutch.holds",
            question: "Does the clutch hold the engine?",
            margin: Margin::Ratio { capacity: "clutch.capacity", demand: "engine.peak_torque" },
            wanted: "wanted.clutch",
            rests_on: &[],
            caution: SLIPS,
        },
        Finding {
            path: "gearbox.strength",
            question: "Does the gearbox carry its torque?",
            margin: Margin::Ratio { capacity: "gearbox.torque_rating", demand: "gearbox.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "propeller_shaft.strength",
            question: "Does the propeller shaft carry the torque in the lowest gear?",
            margin: Margin::Ratio {
                capacity: "propeller_shaft.torque_rating",
                demand: "propeller_shaft.demand",
            },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "final_drive.strength",
            question: "Does the axle carry the torque in the lowest gear?",
            margin: Margin::Ratio { capacity: "final_drive.torque_rating", demand: "final_drive.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "half_shaft.strength",
            question: "Does one half shaft carry the torque in the lowest gear?",
            margin: Margin::Ratio { capacity: "half_shaft.torque_rating", demand: "half_shaft.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "driveline.cruise",
            question: "Does the engine turn slowly enough at the cruise speed?",
            margin: Margin::AtMost {
                value: "driveline.cruise_engine_speed",
                most: "wanted.cruise_engine_speed",
            },
            wanted: "wanted.engine_speed_margin",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "driveline.cruise_band",
            question: "Does the engine pull well at the cruise speed?",
            margin: Margin::Band {
                value: "driveline.cruise_engine_speed",
                low: "engine.band_low",
                high: "engine.band_high",
            },
            wanted: "wanted.engine_speed_margin",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "driveline.red_line",
            question: "Does the engine stay below its red line at the greatest speed?",
            margin: Margin::AtMost { value: "driveline.greatest_engine_speed", most: "engine.red_line" },
            wanted: "wanted.engine_speed_margin",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "driveline.crawl",
            question: "Does it crawl slowly enough?",
            margin: Margin::AtLeast { value: "driveline.crawl_ratio", least: "wanted.crawl_ratio" },
            wanted: "wanted.crawl_margin",
            rests_on: &[],
            caution: "",
        },
    ],
};
