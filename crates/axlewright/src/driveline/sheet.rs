#![expect(clippy::indexing_slicing, reason = "a field of a listed part gives its type alone")]

use super::Differential;
use super::rules::*;
use super::torque::rating::{RatingKind, Side, Wanted};
use super::torque::torque_path::TorquePath;
use crate::base::section::{
    About, Also, Finding, Line, Margin, ModelOf, Rule, Section, Step, also, by, choice, derived, gives,
    greatest_of, joined, least_of, line, model, pick, product_of, quotient_of, renamed, rule, same, step,
    sum_of,
};
use crate::engine::{CURVE, Written};
use crate::tyre::STANDS;
use crate::units::{AngularVelocity, Force, Length, Power, Quantity, Ratio, Torque, Velocity};

const fn ratio(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.1,
        30.0,
        "plausibility limit: gears and axles lie between 0.1 and 30; 410 is 4.10 without its point",
    )
}

const fn efficiency(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.7,
        1.0,
        "definition: power out over power in; plausibility limit: at full torque, worm gears lose most, less than 30 %",
    )
}

const fn torque(path: &'static str, meaning: &'static str) -> Line {
    line(path, Torque::KIND, meaning).above(0.0, 1e8, "plausibility limit: no driveline carries 100 MN·m")
}

const fn flow(path: &'static str, meaning: &'static str) -> Line {
    derived(path, Torque::KIND, meaning)
}

const fn speed(path: &'static str, meaning: &'static str) -> Line {
    line(path, Velocity::KIND, meaning).above(
        0.0,
        200.0,
        "plausibility limit: no road vehicle is faster than 200 m/s",
    )
}

const fn coefficient(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(0.01, 10.0, "plausibility limit: above 10 it is a percentage")
}

const fn radius(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 10.0, "plausibility limit: tyres are smaller than 10 m")
}

const fn diameter(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 10.0, "plausibility limit: clutches are smaller than 10 m")
}

const SLIPS: &str = "A slipping clutch heats, and a hot or oily one holds less; a disc or a flywheel that bursts cuts through its housing: use parts rated for the speed. \
                     Makers' ratings, local codes and licensed practice come first.";
const BREAKS: &str = "A part that breaks can lock a wheel or drop a shaft on the road; ratings of the makers, local codes and licensed practice come first.";

/// Parts on which driven wheels are measured.
const TYRES: &[&str] = &["driveline.driven", "front.tyre", "rear.tyre"];

/// Share by which a capacity may lie beyond what the sizes of the clutch give: clamp load and friction scatter (common practice, no source).
const SCATTER: f64 = 0.1;

/// Hot and worn in: the least that the clutch holds.
const fn least_capacity() -> Step {
    step(
        "driveline.clutch_capacity_uniform_wear",
        &[
            "clutch.clamp_load",
            "clutch.friction",
            "clutch.outer_diameter",
            "clutch.inner_diameter",
            "clutch.faces",
        ],
    )
}

/// Cold and new: the most that it holds.
const fn highest_capacity() -> Step {
    step(
        "driveline.clutch_capacity_uniform_pressure",
        &[
            "clutch.clamp_load",
            "clutch.high_friction",
            "clutch.outer_diameter",
            "clutch.inner_diameter",
            "clutch.faces",
        ],
    )
}

/// The clutch.
const CLUTCH: &[Line] = &[
    line("clutch.clamp_load", Force::KIND, "clamp load of the cover").above(
        0.0,
        1e7,
        "plausibility limit: covers press with less than 10 MN",
    ),
    line("clutch.friction", Ratio::KIND, "coefficient of friction of the facings, hot").above(
        0.0,
        2.0,
        "plausibility limit: facings hold less than twice what presses them",
    ),
    diameter("clutch.outer_diameter", "outer diameter of the facings"),
    diameter("clutch.inner_diameter", "inner diameter of the facings"),
    line("clutch.faces", Ratio::KIND, "number of friction faces: 2 for one plate").within(
        1.0,
        100.0,
        "definition: a clutch has a face",
    ),
    line("clutch.high_friction", Ratio::KIND, "coefficient of friction of the facings at its highest: static, cold")
        .above(0.0, 2.0, "plausibility limit: facings hold less than twice what presses them"),
    torque("clutch.capacity", "torque that the clutch surely holds before it slips: hot, worn in").how("the clutch maker's rating, hot")
        .first_hand()
        .by(&[least_capacity().usual(), least_capacity().at_most(1.0 + SCATTER)]),
    torque("clutch.high_capacity", "torque that the clutch holds at most: cold, new, not yet slipping; a dropped clutch passes it on")
        .first_hand()
        .by(&[highest_capacity().usual(), highest_capacity().at_least(1.0 - SCATTER)]),
    line(
        "clutch.shock_factor",
        Ratio::KIND,
        "factor on the torque behind a dropped clutch; 2 if it is applied suddenly and undamped",
    )
    .within(
        1.0,
        10.0,
        "plausibility limit: a shock adds to the torque, and a factor above 10 is a typing error",
    ),
    derived("clutch.capacity_reserve", Ratio::KIND, "factor on the margin that is wanted of a part: 1 where the highest capacity of the clutch is known")
        .by(&[by(&HIGH_CAPACITY_TOLD), by(&STALL_TOLD)])
        .or(f64::INFINITY, "write clutch.high_capacity: until then a dropped clutch may pass on more than clutch.capacity, and no rating that counts a shock is better than tight"),
];

/// The torque converter, and what comes out of it or of the clutch.
const CONVERTER: &[Line] = &[
    line("converter.stall_ratio", Ratio::KIND, "torque behind the converter at stall over that of the engine").how("the converter maker's data sheet")
        .within(1.0, 10.0, "definition: a converter does not reduce the torque; plausibility limit: at most 10")
        .if_none(rule::NONE),
    line("converter.shock_factor", Ratio::KIND, "factor on the torque behind the converter when a gear is engaged; 2 if it is applied suddenly and undamped")
        .within(1.0, 10.0, "plausibility limit: a shock adds to the torque, and a factor above 10 is a typing error"),
    derived("driveline.coupling_ratio", Ratio::KIND, "torque behind clutch or converter over that of the engine").by(&[by(&COUPLING_RATIO)]),
    flow("driveline.input_torque", "torque behind clutch or converter, engine as the limit").by(&[by(&INPUT_TORQUE)]),
    derived("driveline.shock_factor", Ratio::KIND, "factor of a dropped clutch, or of a converter with which a gear is engaged")
        .by(&[by(&SHOCK)]),
    flow("driveline.dropped_torque", "torque behind a dropped clutch, or a converter with which a gear is engaged").by(&[by(&DROPPED_TORQUE)]),
    derived("driveline.shock_reserve", Ratio::KIND, "factor on the margin that is wanted of a part: 1 where the shock is known, without limit where it is not")
        .by(&[by(&SHOCK_TOLD), by(&HIGH_SHOCK_TOLD), by(&CONVERTER_SHOCK_TOLD)])
        .or(f64::INFINITY, "write clutch.shock_factor with clutch.high_capacity, or converter.shock_factor with converter.stall_ratio: until then no rating is better than tight, unless the grip with grip.inertia_factor bounds the shock"),
];

const AT_REST: &str = "definition: a dropped clutch meets the load at rest before the body moves";

/// Lines on the grip of the tyres.
const GRIP: &[Line] = &[
    radius("grip.loaded_radius", "loaded radius of the driven wheels, from centre to ground: the force acts on it")
        .measured_on(TYRES)
        .by(&[
            pick(&["driveline.driven", "front.tyre.loaded_radius", "rear.tyre.loaded_radius"]),
            pick(&["driveline.driven", "front.tyre.free_radius", "rear.tyre.free_radius"]).at_least(STANDS),
            pick(&["driveline.driven", "front.tyre.free_radius", "rear.tyre.free_radius"]).at_most(1.0),
        ]),
    line("grip.driven_load", Force::KIND, "load on the ground under all driven wheels, with the transfer that the same launch causes; not below their load at rest, which a dropped clutch meets before the body moves")
        .within(1.0, 10e6, "plausibility limit: driven wheels bear between 1 N and 10 MN")
        .measured_on(&[])
        .by(&[same(&["grip.load_at_rest"], AT_REST).at_least(1.0)]),
    derived("grip.wheel_at_rest", Force::KIND, "load of one driven wheel at rest, the two of its axle alike; of the lighter axle where nobody says which is driven")
        .by(&[
            pick(&["driveline.driven", "front.tyre.load", "rear.tyre.load"]),
            least_of(&["front.tyre.load", "rear.tyre.load"], "definition: one axle is driven at the least"),
        ]),
    derived("grip.load_at_rest", Force::KIND, "load of both driven wheels of an axle at rest")
        .by(&[sum_of(&["grip.wheel_at_rest", "grip.wheel_at_rest"], "definition: both wheels of an axle")]),
    coefficient("grip.strength_coefficient", "a high bound of grip: for what a part must bear").how("common practice, no source: 0.9 for road tyres, 1.2 and more for race tyres"),
    coefficient("grip.pull_coefficient", "a mean of grip: for what the vehicle gets to the ground").how("common practice, no source: 0.7 on dry road"),
    line("grip.inertia_factor", Ratio::KIND, "factor by which the inertia between part and ground lets a dropped clutch exceed the grip; without it grip bounds the steady torque only")
        .within(1.0, 10.0, "definition: inertia adds to the grip; plausibility limit: a factor above 10 is a typing error"),
    derived("grip.high_coefficient", Ratio::KIND, "the high bound, not below the mean").by(&[by(&HIGH_GRIP)]),
    flow("grip.torque", "peak torque that the tyres hold, at the driven wheels together")
        .by(&[step("driveline.grip_torque", &["grip.driven_load", "grip.high_coefficient", "grip.loaded_radius"])]),
    flow("grip.pull_torque", "mean torque that the tyres hold, at the driven wheels together")
        .by(&[step("driveline.grip_torque", &["grip.driven_load", "grip.pull_coefficient", "grip.loaded_radius"])]),
];

/// The gearbox. Behind it strength is looked at in its lowest gear, reverse among them: there every torque is largest.
const GEARBOX: &[Line] = &[
    ratio("gearbox.ratios[]", "ratios of the gears, first to top").list(12),
    ratio("gearbox.reverse_ratio", "ratio of reverse gear").if_none(0.0),
    derived("gearbox.reverse_reserve", Ratio::KIND, "factor on the margin that is wanted of a part behind the gearbox: 1 where reverse is known")
        .by(&[by(&REVERSE_TOLD)])
        .or(f64::INFINITY, "write gearbox.reverse_ratio, or \"none\" if there is no reverse: reverse may be the lowest gear, and until then no part behind the gearbox is better than tight, unless the grip bounds its torque"),
    line("gearbox.no_reserve", Ratio::KIND, "factor on the margin that is wanted before the gearbox: no gear counts there")
        .within(1.0, 1.0, "definition: no gear stands before the gearbox")
        .or(1.0, "no gear stands before the gearbox"),
    ratio("gearbox.first_ratio", "ratio of first gear").by(&[by(&FIRST_RATIO)]),
    ratio("gearbox.top_ratio", "ratio of top gear").by(&[by(&TOP_RATIO)]),
    derived("gearbox.lowest_ratio", Ratio::KIND, "ratio of the lowest gear, first or reverse").by(&[
        greatest_of(&["gearbox.first_ratio", "?gearbox.reverse_ratio", "?gearbox.ratios[*]"], "definition"),
    ]),
    derived("gearbox.peak_ratio", Ratio::KIND, "ratio of the lowest gear, once reverse is known, too").by(&[
        greatest_of(&["gearbox.first_ratio", "gearbox.reverse_ratio", "?gearbox.ratios[*]"], "definition"),
    ]),
    efficiency("gearbox.efficiency", "power out over power in, in the lowest gear").in_units("percent", "percent").how("common practice, no source: 95 % to 98 % for a manual gearbox in one gear"),
    torque("gearbox.torque_rating", "torque rating of the gearbox, by its maker").how("the maker's data sheet; note whether it counts at the input and what kind it is"),
    choice("gearbox.rating_side", Side::WORDS, "side on which the rating counts"),
    choice("gearbox.rating_kind", RatingKind::WORDS, "kind of the rating"),
    flow("gearbox.output_torque", "torque behind the gearbox in the lowest gear, engine as the limit").by(&[by(&GEARBOX_OUTPUT)]),
    flow("gearbox.dropped_output", "torque behind the gearbox in the lowest gear, of a dropped clutch").by(&[by(&GEARBOX_DROPPED)]),
    flow(
        "gearbox.grip_output",
        "torque behind the gearbox that the tyres hold with the transfer case in high range",
    )
    .by(&[quotient_of(
        &["final_drive.grip_input", "transfer_case.efficiency"],
        "balance of power through a geared train; the efficiency of the low range, which is the lesser",
    )]),
    flow(
        "gearbox.demand",
        "torque on the rated side: in any gear on its input, in the lowest gear and high range on its output",
    )
    .by(&[gives(&ON_GEARBOX, "demand")]),
    derived("gearbox.wanted_strength", Ratio::KIND, WANTED_OF_KIND).by(&[gives(&ON_GEARBOX, "wanted")]),
];

/// The transfer case, in low range where it has one.
const TRANSFER_CASE: &[Line] = &[
    line("transfer_case.low_ratio", Ratio::KIND, "ratio of the low range")
        .within(1.0, 30.0, "definition: a low range is no faster than the high one, which drives straight through; plausibility limit: at most 30")
        .if_none(1.0),
    derived("transfer_case.lower_ratio", Ratio::KIND, "ratio of the low range, or straight through")
        .by(&[same(&["transfer_case.low_ratio"], "definition")])
        .or(1.0, "no low range where none is written; while transfer_case.efficiency is written, nothing in it is better than tight until transfer_case.low_ratio is a ratio or none"),
    derived("transfer_case.peak_ratio", Ratio::KIND, "ratio of the low range, once it is known; straight through where there is no transfer case")
        .by(&[same(&["transfer_case.low_ratio"], "definition"), by(&STRAIGHT)]),
    derived("transfer_case.range_reserve", Ratio::KIND, "factor on the margin that is wanted of a part behind the transfer case: 1 where its low range is known, or where there is no transfer case")
        .by(&[by(&RANGE_TOLD)]),
    derived("driveline.gear_reserve", Ratio::KIND, "factor on the margin that is wanted of a part behind gearbox and transfer case: 1 where reverse and low range are known")
        .by(&[product_of(&["gearbox.reverse_reserve", "transfer_case.range_reserve"], "definition")]),
    line("transfer_case.least_ratio", Ratio::KIND, "ratio of the high range, which drives straight through")
        .within(1.0, 1.0, "definition: straight through")
        .or(1.0, "the high range drives straight through"),
    efficiency("transfer_case.efficiency", "power out over power in, in low range").in_units("percent", "percent")
        .by(&[by(&NO_LOW_RANGE).usual()]),
    flow("transfer_case.output_torque", "torque behind the transfer case in the lowest gear, engine as the limit")
        .by(&[by(&TRANSFER_OUTPUT)]),
    flow("transfer_case.dropped_output", "torque behind the transfer case in the lowest gear, of a dropped clutch")
        .by(&[by(&TRANSFER_DROPPED)]),
];

/// The shaft to the driven axle.
const PROPELLER_SHAFT: &[Line] = &[
    torque("propeller_shaft.torque_rating", "torque rating of the propeller shaft, by its maker"),
    choice("propeller_shaft.rating_kind", RatingKind::WORDS, "kind of the rating"),
    flow("propeller_shaft.demand", "torque in it, in the lowest gear")
        .by(&[gives(&ON_PROPELLER_SHAFT, "demand")]),
    derived("propeller_shaft.wanted_strength", Ratio::KIND, WANTED_OF_KIND)
        .by(&[gives(&ON_PROPELLER_SHAFT, "wanted")]),
];

/// The driven axle.
const FINAL_DRIVE: &[Line] = &[
    ratio("final_drive.ratio", "ratio of the driven axle").how(
        "teeth of the ring over teeth of the pinion, or count turns of the shaft for one turn of both wheels",
    ),
    efficiency("final_drive.efficiency", "power out over power in")
        .in_units("percent", "percent")
        .how("common practice, no source: 94 % to 97 % for a hypoid axle"),
    choice(
        "final_drive.differential",
        Differential::WORDS,
        "differential between the two shafts; a lockable one is locked",
    ),
    torque("final_drive.torque_rating", "torque rating of the driven axle, by its maker"),
    choice("final_drive.rating_side", Side::WORDS, "side on which the rating counts"),
    choice("final_drive.rating_kind", RatingKind::WORDS, "kind of the rating"),
    flow("final_drive.output_torque", "torque at both driven wheels together, in the lowest gear")
        .by(&[by(&FINAL_OUTPUT)]),
    flow("final_drive.dropped_output", "torque at both driven wheels together, of a dropped clutch")
        .by(&[by(&FINAL_DROPPED)]),
    flow("final_drive.grip_input", "torque before the driven axle that the tyres hold").by(&[step(
        "driveline.grip_torque_upstream",
        &["grip.torque", "final_drive.ratio", "final_drive.efficiency"],
    )]),
    flow("final_drive.demand", "torque on the rated side").by(&[gives(&ON_FINAL_DRIVE, "demand")]),
    derived("final_drive.wanted_strength", Ratio::KIND, WANTED_OF_KIND)
        .by(&[gives(&ON_FINAL_DRIVE, "wanted")]),
];

/// One of the two shafts of the driven axle.
const HALF_SHAFT: &[Line] = &[
    derived("half_shaft.share", Ratio::KIND, "share of the axle's torque and grip that one shaft may carry")
        .by(&[by(&SHARE)]),
    torque("half_shaft.torque_rating", "torque rating of one half shaft, by its maker"),
    choice("half_shaft.rating_kind", RatingKind::WORDS, "kind of the rating"),
    flow("half_shaft.torque", "torque in one half shaft, in the lowest gear")
        .by(&[product_of(&["half_shaft.share", "final_drive.output_torque"], POWER)]),
    flow("half_shaft.dropped_torque", "torque in one shaft, of a dropped clutch")
        .by(&[product_of(&["half_shaft.share", "final_drive.dropped_output"], POWER)]),
    flow(
        "half_shaft.grip",
        "torque in one shaft that the tyres hold: with one wheel in the air the other bears the whole load",
    )
    .by(&[product_of(&["half_shaft.share", "grip.torque"], POWER)]),
    flow("half_shaft.demand", "torque in one shaft").by(&[gives(&ON_HALF_SHAFT, "demand")]),
    derived("half_shaft.wanted_strength", Ratio::KIND, WANTED_OF_KIND).by(&[gives(&ON_HALF_SHAFT, "wanted")]),
];

/// Speed and pull.
const SPEEDS: &[Line] = &[
    choice("driveline.driven", &["front", "rear"], "axle whose tyres set the road speed"),
    radius("driveline.effective_radius", "rolling radius of the driven wheels")
        .measured_on(TYRES)
        .by(&[pick(&["driveline.driven", "front.tyre.effective_radius", "rear.tyre.effective_radius"])]),
    speed("use.cruise_speed", "road speed that is held for hours"),
    derived(
        "driveline.cruise_engine_speed",
        AngularVelocity::KIND,
        "engine speed at the cruise speed in top gear",
    )
    .by(&[step(
        "driveline.engine_speed",
        &["use.cruise_speed", "gearbox.top_ratio", "final_drive.ratio", "driveline.effective_radius"],
    )]),
    derived("driveline.peak_engine_speed", AngularVelocity::KIND, "engine speed at top speed in top gear")
        .by(&[step(
            "driveline.engine_speed",
            &["use.peak_speed", "gearbox.top_ratio", "final_drive.ratio", "driveline.effective_radius"],
        )]),
    derived("driveline.crawl_ratio", Ratio::KIND, "first gear, low range and axle together").by(&[step(
        "driveline.crawl_ratio",
        &["gearbox.first_ratio", "transfer_case.lower_ratio", "final_drive.ratio"],
    )]),
    derived("driveline.crawl_speed", Velocity::KIND, "road speed at idle in first gear and low range").by(&[
        step(
            "driveline.crawl_speed",
            &[
                "engine.idle_speed",
                "gearbox.first_ratio",
                "transfer_case.lower_ratio",
                "final_drive.ratio",
                "driveline.effective_radius",
            ],
        ),
    ]),
    line("driveline.efficiency", Ratio::KIND, "efficiency of gearbox and axle together, high range")
        .in_units("percent", "percent")
        .within(
            0.3,
            1.0,
            "definition: power out over power in; plausibility limit: three parts of 70 % together",
        )
        .measured_on(&["gearbox", "final_drive"])
        .by(&[product_of(&["gearbox.efficiency", "final_drive.efficiency"], POWER)]),
    flow(
        "driveline.wheel_torque",
        "torque at the driven wheels in first gear and high range, engine as the limit",
    )
    .by(&[step(
        "driveline.wheel_torque",
        &["engine.peak_torque", "gearbox.first_ratio", "final_drive.ratio", "driveline.efficiency"],
    )]),
    flow(
        "driveline.pull_torque",
        "torque at the driven wheels in the lowest gear, engine or mean grip as the limit",
    )
    .by(&[by(&PULL)]),
    derived(
        "driveline.tractive_force",
        Force::KIND,
        "tractive force of the driven wheels together in the lowest gear",
    )
    .by(&[by(&TRACTION)]),
    derived(
        "driveline.wheel_power",
        Power::KIND,
        "power at the driven wheels in high range, from the peak power of the engine",
    )
    .by(&[step("engine.wheel_power", &["engine.peak_power", "driveline.efficiency"])]),
];

/// Lines under `wanted`.
const WANTED: &[Line] = &[
    line(
        "wanted.cruise_engine_speed",
        AngularVelocity::KIND,
        "highest wanted engine speed at the cruise speed",
    )
    .above(0.0, 10e3, "plausibility limit: engines turn slower than 95 000 rpm"),
    line(
        "wanted.engine_speed_margin",
        AngularVelocity::KIND,
        "wanted margin of an engine speed below its limit",
    )
    .margin(10e3)
    .or(0.0, "no margin beyond the limit itself"),
    speed("wanted.crawl_speed", "highest wanted road speed at idle in first gear and low range"),
    line("wanted.crawl_ratio", Ratio::KIND, "least crawl ratio")
        .within(0.01, 1000.0, "plausibility limit: no driveline is geared lower than 1000")
        .by(&[step(
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
        &["wanted.crawl_ratio", "transfer_case.lower_ratio", "final_drive.ratio"],
    )]),
    line("wanted.crawl_margin", Ratio::KIND, "wanted margin of the crawl ratio above its minimum")
        .margin(1000.0)
        .or(0.0, "no margin beyond the limit itself"),
    line("wanted.clutch", Ratio::KIND, "capacity of the clutch over the engine's torque")
        .within(1.0, 10.0, "definition: below 1 it slips")
        .or(1.2, "common practice, no source"),
    strength("wanted.strength", "rating of a part over its torque, whatever the kind of the rating")
        .or(USUAL[0], PRACTICE),
    strength(
        "wanted.yield_strength",
        "rating before a part stays bent over its torque, and not less than wanted.strength",
    )
    .or(USUAL[1], PRACTICE),
    strength(
        "wanted.ultimate_strength",
        "rating before a part breaks over its torque, and not less than wanted.strength",
    )
    .or(USUAL[2], PRACTICE),
];

const USUAL: [f64; 3] = Wanted::USUAL;
const PRACTICE: &str = "common practice, no source";
const WANTED_OF_KIND: &str = "margin that is wanted of its rating, by the kind: that of the most demanding where no kind is written, and without limit while something is missing that could raise the torque";

const fn strength(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(1.0, 100.0, "definition: below 1 a part is short, not tight")
}

const LINES: usize = CLUTCH.len()
    + CONVERTER.len()
    + GRIP.len()
    + GEARBOX.len()
    + TRANSFER_CASE.len()
    + PROPELLER_SHAFT.len()
    + FINAL_DRIVE.len()
    + HALF_SHAFT.len()
    + SPEEDS.len()
    + WANTED.len();

const AT_CRUISE: Rule = rule! {
    "engine" Written::torque, Written
    takes { at = "driveline.cruise_engine_speed", points = "engine.curve[*]", second = "engine.curve[1]" }
    says "T(w) of the curve", CURVE
};

/// Additions to lines of engine and speedometer.
const ALSO: &[Also] = &[
    also("engine.cruise_torque").by(&[by(&AT_CRUISE)]),
    also("speedometer.error_at_wheel").by(&[step(
        "tyre.speedometer_error",
        &["speedometer.effective_radius", "driveline.effective_radius"],
    )]),
    also("speedometer.error_at_shaft").by(&[step(
        "tyre.speedometer_error_at_shaft",
        &[
            "speedometer.effective_radius",
            "driveline.effective_radius",
            "speedometer.final_drive",
            "final_drive.ratio",
        ],
    )]),
];

/// The way of the torque in the lowest gear and range, its parts named as their tables.
const TORQUE_PATH: ModelOf = model! {
    "torque_path" "driveline.TorquePath" TorquePath in ""
    takes {
        engine_torque = "engine.peak_torque", clutch_capacity = "clutch.capacity",
        clutch_high_capacity = "clutch.high_capacity", shock_factor = "driveline.shock_factor",
        stall_ratio = "converter.stall_ratio", grip = "grip",
    }
    needs { parts[0].ratio = "gearbox.lowest_ratio", parts[0].efficiency = "gearbox.efficiency" }
    takes {
        parts[0].peak_ratio = "gearbox.peak_ratio", parts[0].torque_rating = "gearbox.torque_rating", parts[0].rating_side = "gearbox.rating_side",
        parts[0].rating_kind = "gearbox.rating_kind",
    }
    needs {
        parts[1].ratio = "transfer_case.lower_ratio", parts[1].least_ratio = "transfer_case.least_ratio",
        parts[1].efficiency = "transfer_case.efficiency",
    }
    takes {
        parts[1].peak_ratio = "transfer_case.peak_ratio",
        parts[2].torque_rating = "propeller_shaft.torque_rating",
        parts[2].rating_kind = "propeller_shaft.rating_kind",
    }
    needs {
        parts[3].ratio = "final_drive.ratio", parts[3].least_ratio = "final_drive.ratio",
        parts[3].peak_ratio = "final_drive.ratio", parts[3].efficiency = "final_drive.efficiency",
    }
    takes {
        parts[3].torque_rating = "final_drive.torque_rating",
        parts[3].rating_side = "final_drive.rating_side", parts[3].rating_kind = "final_drive.rating_kind",
    }
    needs { parts[4].differential = "final_drive.differential" }
    takes {
        parts[4].torque_rating = "half_shaft.torque_rating",
        parts[4].rating_kind = "half_shaft.rating_kind",
    }
    named {
        "parts[0].name" = "gearbox", "parts[1].name" = "transfer_case", "parts[2].name" = "propeller_shaft",
        "parts[3].name" = "final_drive", "parts[4].name" = "half_shaft",
    }
};

/// Lines and findings of the sheet on the driveline.
pub const SHEET: Section = Section {
    lines: &joined::<_, LINES>(&[
        CLUTCH,
        CONVERTER,
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
            about: &[About::parts(&["clutch"])],
            caution: SLIPS,
        },
        Finding {
            path: "gearbox.strength",
            question: "Does the gearbox carry its torque?",
            margin: Margin::Ratio { capacity: "gearbox.torque_rating", demand: "gearbox.demand" },
            wanted: "gearbox.wanted_strength",
            rests_on: &[],
            about: &[About::parts(&["gearbox"])],
            caution: BREAKS,
        },
        Finding {
            path: "propeller_shaft.strength",
            question: "Does the propeller shaft carry the torque in the lowest gear?",
            margin: Margin::Ratio {
                capacity: "propeller_shaft.torque_rating",
                demand: "propeller_shaft.demand",
            },
            wanted: "propeller_shaft.wanted_strength",
            rests_on: &[],
            about: &[About::parts(&["propeller_shaft"])],
            caution: BREAKS,
        },
        Finding {
            path: "final_drive.strength",
            question: "Does the axle carry the torque in the lowest gear?",
            margin: Margin::Ratio { capacity: "final_drive.torque_rating", demand: "final_drive.demand" },
            wanted: "final_drive.wanted_strength",
            rests_on: &[],
            about: &[About::parts(&["final_drive"])],
            caution: BREAKS,
        },
        Finding {
            path: "half_shaft.strength",
            question: "Does one half shaft carry the torque in the lowest gear?",
            margin: Margin::Ratio { capacity: "half_shaft.torque_rating", demand: "half_shaft.demand" },
            wanted: "half_shaft.wanted_strength",
            rests_on: &[],
            about: &[About::parts(&["half_shaft"])],
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
            about: &[About::parts(&["engine"])],
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
            about: &[About::parts(&["engine"])],
            caution: "",
        },
        Finding {
            path: "driveline.red_line",
            question: "Does the engine stay below its red line at top speed?",
            margin: Margin::AtMost { value: "driveline.peak_engine_speed", most: "engine.red_line" },
            wanted: "wanted.engine_speed_margin",
            rests_on: &[],
            about: &[About::parts(&["engine"])],
            caution: "",
        },
        Finding {
            path: "driveline.crawl",
            question: "Does it crawl slowly enough?",
            margin: Margin::AtLeast { value: "driveline.crawl_ratio", least: "wanted.crawl_ratio" },
            wanted: "wanted.crawl_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
    ],
    models: &[TORQUE_PATH],
    renamed: &[
        renamed("clutch.dropped_torque", "driveline.dropped_torque"),
        renamed("driveline.loaded_radius", "grip.loaded_radius"),
        renamed("driveline.greatest_engine_speed", "driveline.peak_engine_speed"),
    ],
    parts: &[
        &[
            "clutch.clamp_load",
            "clutch.friction",
            "clutch.outer_diameter",
            "clutch.inner_diameter",
            "clutch.faces",
            "clutch.high_friction",
            "clutch.capacity",
            "clutch.high_capacity",
        ],
        &[
            "gearbox.ratios",
            "gearbox.reverse_ratio",
            "gearbox.first_ratio",
            "gearbox.top_ratio",
            "gearbox.efficiency",
            "gearbox.torque_rating",
            "gearbox.rating_side",
            "gearbox.rating_kind",
        ],
        &["transfer_case.low_ratio", "transfer_case.efficiency"],
        &["propeller_shaft.torque_rating", "propeller_shaft.rating_kind"],
        &[
            "final_drive.ratio",
            "final_drive.efficiency",
            "final_drive.differential",
            "final_drive.torque_rating",
            "final_drive.rating_side",
            "final_drive.rating_kind",
        ],
        &["half_shaft.torque_rating", "half_shaft.rating_kind"],
    ],
    also: ALSO,
};
