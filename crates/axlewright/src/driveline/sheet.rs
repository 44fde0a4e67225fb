use crate::Result;
use crate::base::section::{Finding, Line, Margin, Section, choice, derived, line, own, step};
use crate::units::{AngularVelocity, Force, Length, Quantity, Ratio, Torque, Velocity};

const KINDS: &[&str] = &["continuous", "peak", "yield", "ultimate"];
const SIDES: &[&str] = &["input", "output"];

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

fn first(of: &[f64]) -> Result<f64> {
    Ok(of[0])
}

/// The last that is written.
fn last(of: &[f64]) -> Result<f64> {
    Ok(of.iter().copied().filter(|of| !of.is_nan()).fold(f64::NAN, |_, of| of))
}

fn product(of: &[f64]) -> Result<f64> {
    Ok(of.iter().product())
}

/// Of the wheels that are driven: the front ones, or the rear ones.
fn driven(of: &[f64]) -> Result<f64> {
    let [which, front, rear] = [of[0], of[1], of[2]];
    Ok(if which == 0.0 { front } else { rear })
}

/// Half each behind an open differential; all of it through one shaft where it locks.
fn share(of: &[f64]) -> Result<f64> {
    Ok(if of[0] == 0.0 { 0.5 } else { 1.0 })
}

/// Torque on the rated side: the steady one against a continuous rating, that of a dropped clutch against the others.
fn on_rated_side(of: &[f64]) -> Result<f64> {
    let [side, kind] = [of[0], of[1]];
    let (steady, dropped) = if side == 0.0 { (of[2], of[4]) } else { (of[3], of[5]) };
    by_kind(kind, steady, dropped)
}

/// The same for a part whose two sides carry the same torque.
fn on_part(of: &[f64]) -> Result<f64> {
    by_kind(of[0], of[1], of[2])
}

fn by_kind(kind: f64, steady: f64, dropped: f64) -> Result<f64> {
    Ok(if kind == 0.0 { steady } else { dropped })
}

const DROPPED: &str = "a rating that is not continuous is held against a dropped clutch, which needs clutch.capacity and clutch.shock_factor";
const POWER: &str = "balance of power through a geared train, see driveline.TorquePath";
const BREAKS: &str = "A part that breaks can lock a wheel or drop a shaft on the road; ratings of the makers, local codes and licensed practice come first.";

/// What the sheet says of the driveline.
pub const SHEET: Section = Section {
    lines: &[
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
        torque("clutch.capacity", "what the clutch holds before it slips").by(&[step(
            "driveline.clutch_capacity_uniform_wear",
            &["clutch.clamp_load", "clutch.friction", "clutch.outer_diameter", "clutch.inner_diameter", "clutch.faces"],
        )]),
        line("clutch.shock_factor", Ratio::KIND, "how much a dropped clutch multiplies the torque at its output; 2 where it is applied suddenly and undamped")
            .within(1.0, 10.0, "common practice, no source: a shock adds to the torque, and a factor above 10 is a slip"),
        flow("clutch.dropped_torque", "at the output of a dropped clutch").by(&[own(
            "T_d = s T_c",
            "suddenly applied load (Shigley's Mechanical Engineering Design, from memory)",
            product,
            &["clutch.shock_factor", "clutch.capacity"],
        )]),
        ratio("gearbox.ratios[]", "of the gears, first to top").list(12),
        ratio("gearbox.first_ratio", "of first gear").by(&[own("first of the ratios", "definition", first, &["gearbox.ratios[0]"])]),
        ratio("gearbox.top_ratio", "of top gear").by(&[own(
            "last of the ratios",
            "definition",
            last,
            &["gearbox.ratios[0]", "?gearbox.ratios[*]"],
        )]),
        efficiency("gearbox.efficiency", "power out over power in, in first gear"),
        torque("gearbox.torque_rating", "as its maker says"),
        choice("gearbox.rating_side", SIDES, "side on which the rating counts"),
        choice("gearbox.rating_kind", KINDS, "what the rating promises"),
        flow("gearbox.output_torque", "in first gear, engine and clutch as the limit").by(&[own(
            "T i e",
            POWER,
            product,
            &["engine.peak_torque", "gearbox.first_ratio", "gearbox.efficiency"],
        )]),
        flow("gearbox.dropped_output", "in first gear, of a dropped clutch").by(&[own(
            "T_d i e",
            POWER,
            product,
            &["clutch.dropped_torque", "gearbox.first_ratio", "gearbox.efficiency"],
        )]),
        flow("gearbox.demand", "torque on the rated side").by(&[own(
            "steady torque for a continuous rating, that of a dropped clutch for the others",
            POWER,
            on_rated_side,
            &[
                "gearbox.rating_side",
                "gearbox.rating_kind",
                "engine.peak_torque",
                "gearbox.output_torque",
                "?clutch.dropped_torque",
                "?gearbox.dropped_output",
            ],
        ).lacking(DROPPED)]),
        ratio("transfer_case.low_ratio", "of the low range"),
        torque("propeller_shaft.torque_rating", "as its maker says"),
        choice("propeller_shaft.rating_kind", KINDS, "what the rating promises"),
        flow("propeller_shaft.demand", "torque in it, in first gear").by(&[own(
            "steady torque for a continuous rating, that of a dropped clutch for the others",
            POWER,
            on_part,
            &["propeller_shaft.rating_kind", "gearbox.output_torque", "?gearbox.dropped_output"],
        ).lacking(DROPPED)]),
        ratio("final_drive.ratio", "of the driven axle"),
        efficiency("final_drive.efficiency", "power out over power in"),
        choice("final_drive.differential", &["open", "limited_slip", "locked"], "how the differential shares torque"),
        torque("final_drive.torque_rating", "as its maker says"),
        choice("final_drive.rating_side", SIDES, "side on which the rating counts"),
        choice("final_drive.rating_kind", KINDS, "what the rating promises"),
        flow("final_drive.output_torque", "at both wheels together, in first gear").by(&[own(
            "T i_a e_a",
            POWER,
            product,
            &["gearbox.output_torque", "final_drive.ratio", "final_drive.efficiency"],
        )]),
        flow("final_drive.dropped_output", "at both wheels together, of a dropped clutch").by(&[own(
            "T_d i_a e_a",
            POWER,
            product,
            &["gearbox.dropped_output", "final_drive.ratio", "final_drive.efficiency"],
        )]),
        flow("final_drive.demand", "torque on the rated side").by(&[own(
            "steady torque for a continuous rating, that of a dropped clutch for the others",
            POWER,
            on_rated_side,
            &[
                "final_drive.rating_side",
                "final_drive.rating_kind",
                "gearbox.output_torque",
                "final_drive.output_torque",
                "?gearbox.dropped_output",
                "?final_drive.dropped_output",
            ],
        ).lacking(DROPPED)]),
        derived("half_shaft.share", Ratio::KIND, "of the axle's torque that one shaft may carry").by(&[own(
            "half each if open, all of it if limited-slip or locked",
            "common practice, no source: a locked axle may stand on one wheel",
            share,
            &["final_drive.differential"],
        )]),
        torque("half_shaft.torque_rating", "as its maker says"),
        choice("half_shaft.rating_kind", KINDS, "what the rating promises"),
        flow("half_shaft.torque", "in one shaft, in first gear").by(&[own(
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
        flow("half_shaft.demand", "torque in one shaft").by(&[own(
            "steady torque for a continuous rating, that of a dropped clutch for the others",
            POWER,
            on_part,
            &["half_shaft.rating_kind", "half_shaft.torque", "?half_shaft.dropped_torque"],
        ).lacking(DROPPED)]),
        choice("driveline.driven", &["front", "rear"], "axle whose tyres set the road speed"),
        line("driveline.effective_radius", Length::KIND, "rolling radius of the driven wheels")
            .above(0.0, 10.0, "common practice, no source: tyres are smaller than 10 m")
            .by(&[own(
                "that of the driven axle",
                "definition",
                driven,
                &["driveline.driven", "?front.tyre.effective_radius", "?rear.tyre.effective_radius"],
            )
            .lacking("the driven axle needs its tyre.effective_radius")]),
        speed("use.cruise_speed", "road speed that is held for hours"),
        speed("use.greatest_speed", "road speed that is never exceeded"),
        derived("driveline.cruise_engine_speed", AngularVelocity::KIND, "engine speed at the cruise speed in top gear").by(&[step(
            "driveline.engine_speed",
            &["use.cruise_speed", "gearbox.top_ratio", "final_drive.ratio", "driveline.effective_radius"],
        )]),
        derived("driveline.greatest_engine_speed", AngularVelocity::KIND, "engine speed at the greatest speed in top gear").by(&[step(
            "driveline.engine_speed",
            &["use.greatest_speed", "gearbox.top_ratio", "final_drive.ratio", "driveline.effective_radius"],
        )]),
        derived("driveline.crawl_ratio", Ratio::KIND, "first gear, low range and axle together")
            .by(&[step("driveline.crawl_ratio", &["gearbox.first_ratio", "transfer_case.low_ratio", "final_drive.ratio"])]),
        derived("driveline.wheel_torque", Torque::KIND, "at the driven wheels in first gear, engine as the limit").by(&[step(
            "driveline.wheel_torque",
            &["engine.peak_torque", "gearbox.first_ratio", "final_drive.ratio", "driveline.efficiency"],
        )]),
        efficiency("driveline.efficiency", "of gearbox and axle together").by(&[own(
            "e e_a",
            POWER,
            product,
            &["gearbox.efficiency", "final_drive.efficiency"],
        )]),
        line("wanted.cruise_engine_speed", AngularVelocity::KIND, "greatest engine speed at the cruise speed")
            .above(0.0, 10e3, "common practice, no source: engines turn slower than 95 000 rpm"),
        line("wanted.engine_speed_margin", AngularVelocity::KIND, "how far below its limit an engine speed is wanted")
            .within(0.0, 10e3, "definition: a margin is not negative")
            .or(0.0, "nothing beyond the limit itself"),
        ratio("wanted.crawl_ratio", "least crawl ratio"),
        line("wanted.crawl_margin", Ratio::KIND, "how far above its least the crawl ratio is wanted")
            .within(0.0, 1000.0, "definition: a margin is not negative")
            .or(0.0, "nothing beyond the limit itself"),
        line("wanted.clutch", Ratio::KIND, "capacity of the clutch over the engine's torque")
            .within(1.0, 10.0, "definition: below 1 it slips")
            .or(1.2, "common practice, no source"),
        line("wanted.strength", Ratio::KIND, "rating of a part over its torque")
            .within(1.0, 100.0, "definition: below 1 a part is short, not tight")
            .or(1.25, "common practice, no source"),
    ],
    findings: &[
        Finding {
            path: "clutch.holds",
            question: "Does the clutch hold the engine?",
            margin: Margin::Ratio { capacity: "clutch.capacity", demand: "engine.peak_torque" },
            wanted: "wanted.clutch",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "gearbox.strength",
            question: "Does the gearbox carry the torque in first gear?",
            margin: Margin::Ratio { capacity: "gearbox.torque_rating", demand: "gearbox.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "propeller_shaft.strength",
            question: "Does the propeller shaft carry the torque in first gear?",
            margin: Margin::Ratio { capacity: "propeller_shaft.torque_rating", demand: "propeller_shaft.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "final_drive.strength",
            question: "Does the axle carry the torque in first gear?",
            margin: Margin::Ratio { capacity: "final_drive.torque_rating", demand: "final_drive.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "half_shaft.strength",
            question: "Does one half shaft carry the torque in first gear?",
            margin: Margin::Ratio { capacity: "half_shaft.torque_rating", demand: "half_shaft.demand" },
            wanted: "wanted.strength",
            rests_on: &[],
            caution: BREAKS,
        },
        Finding {
            path: "driveline.cruise",
            question: "Does the engine turn slowly enough at the cruise speed?",
            margin: Margin::AtMost { value: "driveline.cruise_engine_speed", most: "wanted.cruise_engine_speed" },
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
