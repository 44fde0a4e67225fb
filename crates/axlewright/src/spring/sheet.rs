use super::Corner;
use super::rules::*;
use super::wheel::travel::Mounting;
use crate::base::section::{
    About, Finding, Line, Margin, Section, by, choice, derived, difference_of, joined, line, mean_of, model,
    negative_of, pick, quotient_of, renamed, same, step, sum_of,
};
use crate::units::{
    Damping, Density, Energy, Force, Frequency, Length, LinearStiffness, Quantity, Ratio, RatioPerLength,
    Stress,
};

const fn rate(path: &'static str, meaning: &'static str) -> Line {
    line(path, LinearStiffness::KIND, meaning).within(
        1.0,
        1e9,
        "plausibility limit: rates lie between 1 N/m and 1 GN/m",
    )
}

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 100.0, "plausibility limit: parts are no longer than 100 m")
}

const fn ratio(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.01,
        1.5,
        "plausibility limit: above 1.5 it is a percentage or an inverted ratio",
    )
}

const fn wanted(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).within(
        0.0,
        100.0,
        "definition: a margin that is wanted is not negative",
    )
}

const fn clearance(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning)
        .within(0.0, 10.0, "definition: a clearance at ride height; plausibility limit: at most 10 m")
        .measured_on(&["axle.spring"])
        .left_out_is_none()
        .if_none(f64::INFINITY)
}

const fn side_travel(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning)
        .within(0.0, 10.0, "definition: to either side; plausibility limit: no wheel stands 10 m off")
        .measured_on(&["scales", "axle.spring"])
}

const fn damping(path: &'static str, meaning: &'static str) -> Line {
    line(path, Damping::KIND, meaning).above(
        0.0,
        1e7,
        "plausibility limit: dampers give less than 10 kN·s/mm",
    )
}

const fn band(path: &'static str, meaning: &'static str) -> Line {
    line(path, Frequency::KIND, meaning).above(
        0.0,
        1000.0,
        "plausibility limit: bodies move slower than 1 kHz",
    )
}

const fn modulus(path: &'static str, meaning: &'static str) -> Line {
    line(path, Stress::KIND, meaning).within(
        10e9,
        500e9,
        "plausibility limit: metals of springs lie between 10 GPa and 500 GPa",
    )
}

/// Measurements at the spring's mount.
const AT_SPRING: &[&str] = &["axle.spring.mount_ratio", "axle.spring.angle", "axle.spring.eye_length"];
/// The spring itself.
const SPRUNG: &[&str] = &["axle.spring"];
/// The open damper ends droop, whichever spring stands on it.
const DAMPERS: &[&str] = &["axle.damper"];

const DRAWN: &str = "the suspension as it is drawn";
const LOOSE: &str = "A compressed spring stores enough energy to kill: use a compressor made for it. One that is loose at full droop can leave its \
                     seat on the road; local codes and licensed practice come first.";
const BOUND: &str = "A damper is not always made to be a stop, and a spring that binds can break it or its mounts; local codes and licensed \
                     practice come first.";

const WIRE: &[&str] = &["axle.spring.wire_diameter", "axle.spring.mean_diameter", "axle.spring.active_coils"];

/// The spring by itself.
const SPRING: &[Line] = &[
    rate(
        "axle.spring.rate",
        "rate of the spring along its own axis, from its maker; for a leaf spring, load over deflection of its seat, as on a spring tester",
    ).how("spring tester: force at two lengths in the working range; difference of force over difference of length")
    .first_hand(),
    length("axle.spring.free_length", "length of the unloaded spring").how("rule on the loose spring"),
    length("axle.spring.solid_length", "block length: every coil touching").how("wire diameter times all coils for ground ends, or press it until it is solid"),
    length(
        "axle.spring.droop_length",
        "length between the spring's seats with the wheel at full droop on its fully open damper",
    ).how("wheel hanging on the open damper; rule between the seats")
    .measured_on(DAMPERS)
    .first_hand()
    .by(&[by(&OPEN_DAMPER)]),
    length("axle.spring.wire_diameter", "diameter of the wire").how("caliper on the bare wire, paint off"),
    length("axle.spring.mean_diameter", "mean diameter of the coil, between the wire's centres").how("caliper over the coil, less one wire diameter"),
    line(
        "axle.spring.allowed_stress",
        Stress::KIND,
        "stress that the spring bears, with its maker's fatigue and set in mind: shear in the wire of a coil, bending of leaves",
    ).how("ask the spring's maker")
    .above(0.0, 1e10, "plausibility limit: steels bear less than 10 GPa"),
    line(
        "axle.spring.active_coils",
        Ratio::KIND,
        "coils that deflect: all coils less the dead ones at the ends",
    ).how("count from the end of one dead coil to the other")
    .within(
        0.1,
        1000.0,
        "plausibility limit: coil springs have between a tenth of a coil and 1000 active ones",
    ),
    choice(
        "axle.spring.coiling",
        &["cold", "hot"],
        "process of coiling: thin wire cold, most thick wire hot",
    ),
    derived("axle.spring.gap_if_cold", Length::KIND, "least sum of gaps of a cold-coiled spring that works")
        .by(&[step("spring.minimum_gap_cold_dynamic", WIRE)]),
    derived("axle.spring.gap_if_hot", Length::KIND, "least sum of gaps of a hot-coiled spring that works")
        .by(&[step("spring.minimum_gap_hot_dynamic", WIRE)]),
    line(
        "axle.spring.minimum_gap",
        Length::KIND,
        "sum of the gaps that must stay open between the coils (EN 13906-1)",
    )
    .within(0.0, 100.0, "definition: a gap is not negative")
    .first_hand()
    .by(&[pick(&["axle.spring.coiling", "axle.spring.gap_if_cold", "axle.spring.gap_if_hot"]).usual()]),
    modulus("axle.spring.elastic_modulus", "elastic modulus of the wire").or(206e9, "spring steel (EN 13906-1, from memory)"),
    modulus("axle.spring.shear_modulus", "shear modulus of the wire")
        .or(78.5e9, "hot-coiled spring steel; of cold-drawn wire it is 81.5 GPa (EN 13906-1, from memory)"),
    line("axle.spring.density", Density::KIND, "density of the wire")
        .within(
            500.0,
            25e3,
            "plausibility limit: solids of springs lie between 500 kg/m³ and 25000 kg/m³",
        )
        .or(7850.0, "steel (common practice, no source)"),
];

/// Place of the spring, and its lever from the wheel.
const AT_RIDE: &[Line] = &[
    ratio(
        "axle.spring.mount_ratio",
        "travel of the spring's moving mount over travel of the wheel, where that was measured",
    )
    .measured_on(AT_SPRING),
    line(
        "axle.spring.angle",
        crate::units::Angle::KIND,
        "between the spring and the travel that was measured at its mount",
    )
    .within(0.0, 1.5, "plausibility limit: beyond that it is a lever, not a spring")
    .measured_on(AT_SPRING),
    ratio(
        "axle.spring.motion_ratio",
        "shortening of the spring over travel of the wheel, measured along the spring",
    ).how("spring out: jack the wheel by 20 mm either side of ride height; change of the length along the spring over travel of the wheel")
    .measured_on(AT_SPRING)
    .first_hand()
    .by(&[by(&MOUNT_RATIO)]),
    length(
        "axle.spring.eye_length",
        "length of the inclined spring or its damper at ride height, between its eyes",
    )
    .measured_on(AT_SPRING)
    .first_hand(),
    line(
        "axle.spring.ratio_gradient",
        RatioPerLength::KIND,
        "change of the motion ratio along the travel of the wheel, positive where it grows in bump",
    )
    .within(-100.0, 100.0, "plausibility limit: a ratio changes slower than 100 in a metre")
    .measured_on(AT_SPRING)
    .by(&[by(&MOUNT_GRADIENT)])
    .or(0.0, "a motion ratio that does not change with travel, until it was measured"),
    // A drawn linkage says these.
    derived(
        "axle.spring.right_motion_ratio",
        Ratio::KIND,
        "motion ratio on the right of a drawn axle, which differs where a rod leads the axle sideways",
    ),
    derived("axle.spring.right_ratio_gradient", RatioPerLength::KIND, "change of that along the travel"),
    derived(
        "axle.spring.force",
        Force::KIND,
        "force in the spring at ride height, less what the gas of its damper carries",
    )
    .by(&[by(&SPRING_FORCE)]),
    derived(
        "axle.spring.axis_force",
        Force::KIND,
        "along the spring at ride height, the gas of a damper on its axis included",
    )
    .by(&[by(&AXIS_FORCE)]),
    derived(
        "axle.spring.compression",
        Length::KIND,
        "compression of the spring at ride height, from its free length",
    )
    .by(&[step("spring.static_deflection", &["axle.spring.force", "axle.spring.rate"])]),
    derived("axle.spring.ride_length", Length::KIND, "length of the spring at ride height")
        .by(&[difference_of(&["axle.spring.free_length", "axle.spring.compression"], LENGTHS)]),
    derived("axle.spring.shortest", Length::KIND, "length of the spring at its least gaps")
        .by(&[by(&SHORTEST)]),
    // A drawn linkage says these.
    derived(
        "axle.spring.seat_offset",
        Length::KIND,
        "length between the eyes of the coil-over, less the length between its spring seats",
    ),
    derived(
        "axle.spring.right_seat_offset",
        Length::KIND,
        "length between the eyes of the right coil-over, less the length between its spring seats, whose spring carries by its own motion ratio",
    ),
    derived(
        "axle.spring.shortest_between_eyes",
        Length::KIND,
        "length between the eyes where the spring has its least gaps",
    )
    .by(&[sum_of(&["axle.spring.shortest", "axle.spring.seat_offset"], BETWEEN_EYES)]),
    derived(
        "axle.spring.bump_end",
        Length::KIND,
        "travel of the wheel at which the spring has its least gaps",
    ),
];

/// Rates and frequencies.
const RATES: &[Line] = &[
    rate("axle.wheel_rate", "tangent rate at the wheel at ride height, without the tyre")
        .measured_on(SPRUNG)
        .by(&[
            step(
                "spring.wheel_tangent_rate",
                &[
                    "axle.spring.rate",
                    "axle.spring.motion_ratio",
                    "axle.spring.axis_force",
                    "axle.spring.ratio_gradient",
                ],
            ),
            // An assumed gradient still tells that much: a ratio that changes by a tenth over 100 mm adds a quarter where the springs give
            // 250 mm under the weight. Common practice, no source.
            step(
                "spring.wheel_tangent_rate",
                &[
                    "axle.spring.rate",
                    "axle.spring.motion_ratio",
                    "axle.spring.axis_force",
                    "?axle.spring.ratio_gradient",
                ],
            )
            .near(0.25),
        ]),
    derived(
        "axle.right_wheel_rate",
        LinearStiffness::KIND,
        "tangent rate at the right wheel of a drawn axle whose sides may differ",
    )
    .by(&[by(&RIGHT_RATE)]),
    derived(
        "axle.ride_rate",
        LinearStiffness::KIND,
        "rate between body and ground: wheel rate and tyre in series",
    )
    .by(&[step("spring.ride_rate", &["axle.wheel_rate", "axle.tyre.rate"])]),
    derived(
        "axle.natural_frequency",
        Frequency::KIND,
        "natural frequency, undamped, of the sprung mass on the wheel rate",
    )
    .by(&[step("spring.natural_frequency", &["axle.wheel_rate", "axle.sprung_mass"])]),
    derived(
        "axle.ride_frequency",
        Frequency::KIND,
        "natural frequency, undamped, of the sprung mass on the ride rate",
    )
    .by(&[step("spring.natural_frequency", &["axle.ride_rate", "axle.sprung_mass"])]),
    derived(
        "axle.frequency_of_worse_side",
        Frequency::KIND,
        "natural frequency of the side with less room in its band",
    )
    .by(&[by(&WORSE_FREQUENCY)]),
    derived(
        "vehicle.frequency_ratio_of_worse_sides",
        Ratio::KIND,
        "natural frequency of the rear over that of the front, of the sides with the least room in the band",
    )
    .by(&[by(&WORSE_FREQUENCY_RATIO)]),
    derived("vehicle.frequency_ratio", Ratio::KIND, "natural frequency of the rear over that of the front")
        .by(&[quotient_of(
            &["rear.natural_frequency", "front.natural_frequency"],
            "definition: a ratio of two frequencies",
        )]),
];

/// The damper.
const DAMPER: &[Line] = &[
    damping(
        "axle.damper.rate",
        "rate of one damper, bump and rebound averaged by energy at the working velocity, gas force taken off",
    ).how("the maker's chart or a damper dynamometer at 0.1 to 0.3 m/s"),
    length("axle.damper.open_length", "length of the damper between its eyes, fully open").how("rule between the eyes, fully open"),
    length("axle.damper.closed_length", "length of the damper between its eyes, fully closed").how("rule between the eyes, fully closed"),
    // A drawn linkage says both ends.
    derived(
        "axle.damper.droop_end",
        Length::KIND,
        "travel of the wheel at which the damper is open, negative in droop",
    ),
    derived("axle.damper.bump_end", Length::KIND, "travel of the wheel at which the damper is closed"),
    length(
        "axle.damper.stroke",
        "stroke of the damper, fully open less fully closed, without bump rubbers on its rod",
    ).how("rule on the rod, fully open less fully closed")
    .first_hand()
    .by(&[difference_of(&["axle.damper.open_length", "axle.damper.closed_length"], LENGTHS)]),
    damping(
        "axle.damper.rate_softest",
        "rate of one adjustable damper at its softest setting, measured like its rate",
    ),
    damping(
        "axle.damper.rate_firmest",
        "rate of one adjustable damper at its firmest setting, measured like its rate",
    ),
    choice(
        "axle.damper.mounting",
        Mounting::WORDS,
        "place of the damper: in the spring or apart from it",
    ),
    line("axle.damper.gas_force", Force::KIND, "force with which the gas opens the damper at ride height; none where there is no gas").how("push the rod in on a bathroom scale to ride height; read while it rests")
        .within(0.0, 1e5, "plausibility limit: dampers push with less than 100 kN")
        .if_none(0.0),
    ratio("axle.damper.mount_ratio", "travel of the moving mount of a damper that stands apart over travel of the wheel, where that was measured")
        .measured_on(&["axle.damper.mounting"]),
    line("axle.damper.angle", crate::units::Angle::KIND, "between the damper and the travel that was measured at its mount")
        .within(0.0, 1.5, "plausibility limit: beyond that it is a lever, not a damper")
        .measured_on(&["axle.damper.mounting"]),
    ratio("axle.damper.motion_ratio", "shortening of the damper over travel of the wheel, measured along the damper").how("as for the spring, along the damper")
        .measured_on(&["axle.damper.mounting"])
        .by(&[by(&DAMPER_MOUNT_RATIO), by(&ONE_AXIS)]),
    derived(
        "axle.damper.wheel_travel",
        Length::KIND,
        "travel of the wheel from the open to the closed damper",
    )
    .by(&[by(&DAMPER_TRAVEL)]),
];

const TOLD_STOP: &str = "definition: either of them tells of the stop";

/// Remaining travel, and the load of the spring at its shortest.
const TRAVEL_REMAINING: &[Line] = &[
    length(
        "axle.bump_stop_travel",
        "travel of the wheel from full droop until the bump stop is touched; none where there is no stop",
    ).how("springs out, jack the wheel from full droop until the stop touches; rule at the wheel centre")
    .measured_on(DAMPERS)
    .if_none(f64::INFINITY)
    .left_out_is_none(),
    line(
        "axle.bump_clearance",
        Length::KIND,
        "height above each spring's seat to its bump stop, or to what it hits first, at ride height; a coil's seat counts as rising with the wheel",
    ).how("rule between seat and stop with the vehicle laden at ride height")
    .within(0.0, 10.0, "definition: a clearance at ride height; plausibility limit: at most 10 m")
    .measured_on(&["axle.spring"])
    .left_out_is_none(),
    derived("axle.stop_told", Length::KIND, "travel or clearance of the bump stop as it is written, without end where there is none")
        .by(&[same(&["axle.bump_stop_travel"], TOLD_STOP), same(&["axle.bump_clearance"], TOLD_STOP)]),
    derived("axle.droop_remaining", Length::KIND, "sag: travel of the wheel from ride height to full droop").by(
        &[
            by(&DROOP_REMAINING),
            negative_of(&["axle.damper.droop_end"], DRAWN),
        ],
    ),
    derived(
        "axle.coil_travel",
        Length::KIND,
        "travel of the wheel in bump until the coils reach their least gaps",
    )
    .by(&[
        same(&["axle.spring.bump_end"], DRAWN),
        by(&COIL_TRAVEL),
    ]),
    derived("axle.bump_remaining", Length::KIND, "travel of the wheel in bump until something ends it").by(&[
        by(&BUMP_REMAINING),
    ]),
    line("axle.bump_stop_compression", Length::KIND, "travel of the wheel from the touch of its bump stop until that gives no more").how("press the stop in a vice or on scales until it gives no more")
        .within(0.0, 10.0, "definition: a stop gives way upward; plausibility limit: at most 10 m")
        .if_none(0.0),
    derived("axle.bump_beyond_stop", Length::KIND, "travel of the wheel in bump until the damper is closed or the coils reach their least gaps").by(&[
        by(&BEYOND_STOP),
    ]),
    derived("axle.bump_compressed", Length::KIND, "travel of the wheel in bump with its stop compressed: as far as bump_stop_compression says, otherwise until the damper is closed or the coils reach their least gaps").by(&[
        by(&BUMP_COMPRESSED),
    ]),
    clearance("axle.joint_bump_clearance", "travel of the wheel in bump, from ride height, until a joint is at its limit; none where no joint is before the stop").how("springs out, jack the wheel from ride height until a joint is at its limit"),
    clearance("axle.hose_bump_clearance", "travel of the wheel in bump, from ride height, until a hose, cable or shaft is at its limit; none if none is before the stop").how("springs out, jack the wheel from ride height until a hose, cable or shaft is tight or rubs"),
    clearance("axle.tyre_clearance", "travel of the wheel in bump, from ride height, until a tyre touches, at any lock; none where none does before the stop").how("springs out, jack the wheel from ride height at both locks until a tyre touches")
        .measured_on(&["axle.spring", "axle.tyre"]),
    clearance("axle.joint_droop_clearance", "travel of the wheel in droop, from ride height, until a joint is at its limit; none where no joint is before the stop").how("lower the wheel from ride height until a joint is at its limit"),
    clearance("axle.hose_droop_clearance", "travel of the wheel in droop, from ride height, until a hose, cable or shaft is at its limit; none if none is before the stop").how("lower the wheel from ride height until a hose, cable or shaft is tight"),
    side_travel("front.side_travel", "travel by which one front wheel stands further in bump, and the other in droop, than the mean")
        .by(&[by(&FRONT_SIDES), by(&FRONT_HEAVIER)]),
    side_travel("rear.side_travel", "travel by which one rear wheel stands further in bump, and the other in droop, than the mean")
        .by(&[by(&REAR_SIDES), by(&REAR_HEAVIER)]),
    // A drawn linkage says both.
    derived("axle.linkage_droop", Length::KIND, "travel in droop at which the linkage itself locks, the least from lock to lock"),
    derived("axle.linkage_bump", Length::KIND, "travel in bump at which the linkage itself locks, the least from lock to lock"),
    derived("axle.linkage_told", Length::KIND, "known where the range of a drawn linkage is, or where none is drawn"),
    derived("axle.bump_clear", Length::KIND, "travel of the worse wheel in bump until spring, damper, stop, linkage, joint, hose or tyre ends it")
        .by(&[by(&BUMP_CLEAR)]),
    derived("axle.droop_clear", Length::KIND, "travel of the worse wheel in droop until damper, linkage, joint or hose ends it")
        .by(&[by(&DROOP_CLEAR)]),
    derived(
        "axle.spring.bind_margin",
        Length::KIND,
        "remaining shortening of the spring with the damper closed, its least gaps kept",
    )
    .by(&[by(&BIND)]),
    derived("axle.spring.captive_margin", Length::KIND, "compression of the spring at full droop")
        .by(&[by(&CAPTIVE)]),
    derived(
        "axle.spring.largest_compression",
        Length::KIND,
        "compression of the spring at its least gaps, from its free length",
    )
    .by(&[by(&COMPRESSION)]),
    derived("axle.spring.largest_force", Force::KIND, "force of the spring at its least gaps").by(&[by(&LARGEST_FORCE)]),
    derived(
        "axle.spring.stress",
        Stress::KIND,
        "shear in the wire of a coil at its least gaps; bending of leaves at full bump or under the drive torque, the greater",
    )
    .by(&[by(&STRESS)]),
];

/// Stability of the spring's shape.
const SHAPE: &[Line] = &[
    derived("axle.spring.surge_frequency", Frequency::KIND, "frequency of the spring itself: it should lie far above that of the wheel").by(&[step(
        "spring.surge_frequency",
        &["axle.spring.wire_diameter", "axle.spring.mean_diameter", "axle.spring.active_coils", "axle.spring.shear_modulus", "axle.spring.density"],
    )]),
    derived("axle.spring.stored_energy", Energy::KIND, "force of the spring at its least gaps")
        .by(&[step("spring.stored_energy", &["axle.spring.rate", "axle.spring.largest_compression"])]),
    choice("axle.spring.guide", &["none", "rod_or_sleeve"], "guide against buckling"),
    line("axle.spring.end_fixity", Ratio::KIND, "fixity of the ends: 0.5 both on flat parallel seats, 0.707 one on a flat seat and one pivoted, 1 both pivoted, 2 one free").how("look at both seats")
        .within(0.5, 2.0, "Shigley, Table 10-2: from both ends on flat seats to one end free"),
    derived("axle.spring.buckles_if_free", Length::KIND, "deflection at which an unguided spring buckles; its length where it never does").by(&[by(&BUCKLING)]),
    derived("axle.spring.guided_deflection", Length::KIND, "deflection of a guided spring: all of its length").by(&[same(&["axle.spring.free_length"], "definition: a guide keeps the spring straight")]),
    derived("axle.spring.buckling_deflection", Length::KIND, "deflection at which the spring buckles, from its free length")
        .by(&[pick(&["axle.spring.guide", "axle.spring.buckles_if_free", "axle.spring.guided_deflection"])]),
];

/// Damping of the body.
const DAMPING: &[Line] = &[
    derived("axle.damper.at_wheel", Damping::KIND, "damping at the wheel")
        .by(&[step("spring.wheel_damping", &["axle.damper.rate", "axle.damper.motion_ratio"])]),
    derived("axle.damping_ratio", Ratio::KIND, "damping ratio of the sprung mass on the wheel rate").by(&[
        step("spring.damping_ratio", &["axle.damper.at_wheel", "axle.wheel_rate", "axle.sprung_mass"]),
    ]),
    derived(
        "axle.damping_of_worse_side",
        Ratio::KIND,
        "damping ratio of the side with less room in its band",
    )
    .by(&[by(&WORSE_DAMPING)]),
    derived(
        "axle.damper.rate_of_worse_side",
        Damping::KIND,
        "rate for the wanted damping ratio on the side with less room in the range of its damper",
    )
    .by(&[by(&WORSE_DAMPER_RATE)]),
    derived(
        "axle.critical_damping",
        Damping::KIND,
        "damping at the wheel beyond which the body does not swing",
    )
    .by(&[step("spring.critical_damping", &["axle.wheel_rate", "axle.sprung_mass"])]),
    derived(
        "axle.damped_frequency",
        Frequency::KIND,
        "frequency of the sprung mass on the wheel rate, with its damper",
    )
    .by(&[step("spring.damped_frequency", &["axle.natural_frequency", "axle.damping_ratio"])]),
    derived("axle.damper.rate_wanted", Damping::KIND, "rate of one damper for the wanted damping ratio").by(
        &[step(
            "spring.damper_rate_for_ratio",
            &["wanted.damping", "axle.wheel_rate", "axle.sprung_mass", "axle.damper.motion_ratio"],
        )],
    ),
    derived("axle.damper.rate_low", Damping::KIND, "rate of one damper for the lowest wanted damping ratio")
        .by(&[step(
            "spring.damper_rate_for_ratio",
            &["wanted.damping_low", "axle.wheel_rate", "axle.sprung_mass", "axle.damper.motion_ratio"],
        )]),
    derived(
        "axle.damper.rate_high",
        Damping::KIND,
        "rate of one damper for the highest wanted damping ratio",
    )
    .by(&[step(
        "spring.damper_rate_for_ratio",
        &["wanted.damping_high", "axle.wheel_rate", "axle.sprung_mass", "axle.damper.motion_ratio"],
    )]),
];

/// Lines under `wanted`.
const WANTED: &[Line] = &[
    line("wanted.damping", Ratio::KIND, "damping ratio to which an adjustable damper is to be set")
        .within(0.0, 3.0, "plausibility limit: ratios lie below 3")
        .by(&[mean_of(
            &["wanted.damping_low", "wanted.damping_high"],
            "definition: the middle of the band that is wanted",
        )
        .usual()]),
    line(
        "wanted.damper_margin",
        Damping::KIND,
        "wanted margin of the wanted rate inside the range of its damper",
    )
    .margin(1e7)
    .or(0.0, "no margin beyond the range itself"),
    band("axle.wanted.frequency_low", "least natural frequency that is wanted").how("common practice, no source: 1.0 to 1.5 Hz for comfort, 1.5 to 2.3 Hz for sport"),
    band("axle.wanted.frequency_high", "highest wanted natural frequency"),
    line("wanted.frequency_margin", Frequency::KIND, "wanted margin of a frequency inside its band")
        .margin(1000.0)
        .or(0.0, "no margin beyond the band itself"),
    line("wanted.frequency_ratio_low", Ratio::KIND, "least natural frequency of the rear over the front")
        .within(0.01, 3.0, "plausibility limit: above 3 it is a percentage")
        .or(
            1.0,
            "common practice, no source: a rear that is quicker than the front pitches less after a bump",
        ),
    line("wanted.frequency_ratio_high", Ratio::KIND, "highest wanted ratio of natural frequencies, rear over front")
        .within(0.01, 3.0, "plausibility limit: above 3 it is a percentage")
        .or(1.3, "common practice, no source"),
    line("wanted.ratio_margin", Ratio::KIND, "wanted margin of a ratio inside its band")
        .margin(10.0)
        .or(0.0, "no margin beyond the band itself"),
    line("wanted.damping_low", Ratio::KIND, "least damping ratio that is wanted")
        .within(0.0, 3.0, "plausibility limit: ratios lie below 3")
        .or(0.2, "common practice, no source"),
    line("wanted.damping_high", Ratio::KIND, "highest wanted damping ratio")
        .within(0.0, 3.0, "plausibility limit: ratios lie below 3")
        .or(0.45, "common practice, no source"),
    wanted("wanted.bump", "travel of the wheel that is wanted in bump"),
    wanted("wanted.droop", "travel of the wheel that is wanted in droop"),
    derived("wanted.counted_bump", Length::KIND, "wanted travel in bump, or the usual one")
        .by(&[same(&["wanted.bump"], "definition: the written wish")])
        .or(0.06, "common practice, no source: 60 mm"),
    derived("wanted.counted_droop", Length::KIND, "wanted travel in droop, or the usual one")
        .by(&[same(&["wanted.droop"], "definition: the written wish")])
        .or(0.05, "common practice, no source: 50 mm"),
    derived("axle.wanted_bump", Length::KIND, "travel that is wanted in bump, where it is told what else may end it")
        .by(&[by(&BUMP_TOLD)])
        .or(f64::INFINITY, "write joint_bump_clearance, hose_bump_clearance and tyre_clearance of the axle; \"none\" is for one that ends no travel. Write bump_stop_travel or bump_clearance for the bump stop. Weigh both wheels, or write heavier_wheel or side_travel. A drawn linkage also needs rack_travel and bushes. Until then, travel in bump is no better than tight"),
    derived("axle.wanted_droop", Length::KIND, "travel that is wanted in droop, where it is told what else may end it")
        .by(&[by(&DROOP_TOLD)])
        .or(f64::INFINITY, "write joint_droop_clearance, hose_droop_clearance and damper.gas_force of the axle; \"none\" is for one that is not there. Weigh both wheels, or write heavier_wheel or side_travel. A drawn linkage also needs rack_travel and bushes. Until then, travel in droop is no better than tight"),
    wanted(
        "wanted.spring_margin",
        "margin that is wanted along the spring: before coil bind, and of preload at full droop",
    )
    .or(0.003, "common practice, no source: 3 mm"),
    line("wanted.spring_strength", Ratio::KIND, "margin of the stress that a spring bears over its stress")
        .within(1.0, 100.0, "definition: below 1 a part is short, not tight")
        .or(1.1, "common practice, no source"),
    derived(
        "axle.wanted_spring_strength",
        Ratio::KIND,
        "margin of the stress of a spring that is wanted; not known while something is missing that could raise the stress",
    )
    .by(&[same(&["wanted.spring_strength"], "definition: a coil bears no more than its least gaps let come")]),
    derived(
        "axle.wanted.wheel_rate_low",
        LinearStiffness::KIND,
        "wheel rate for the least natural frequency that is wanted",
    )
    .by(&[step("spring.tangent_rate_for_frequency", &["axle.wanted.frequency_low", "axle.sprung_mass"])]),
    derived(
        "axle.wanted.wheel_rate_high",
        LinearStiffness::KIND,
        "wheel rate for the highest wanted natural frequency",
    )
    .by(&[step("spring.tangent_rate_for_frequency", &["axle.wanted.frequency_high", "axle.sprung_mass"])]),
];

const LINES: usize = SPRING.len()
    + AT_RIDE.len()
    + RATES.len()
    + DAMPER.len()
    + TRAVEL_REMAINING.len()
    + SHAPE.len()
    + DAMPING.len()
    + WANTED.len();

/// A coil spring.
pub(crate) const COIL: About = About::parts(&[
    "axle.spring.free_length",
    "axle.spring.solid_length",
    "axle.spring.wire_diameter",
    "axle.spring.mean_diameter",
    "axle.spring.active_coils",
]);
/// A damper that can be set.
const ADJUSTABLE: [About; 2] =
    [About::parts(&["axle.damper.rate_softest"]), About::parts(&["axle.damper.rate_firmest"])];

/// A spring.
const SPRING_PART: &[&str] = &[
    "axle.spring.rate",
    "axle.spring.free_length",
    "axle.spring.solid_length",
    "axle.spring.wire_diameter",
    "axle.spring.mean_diameter",
    "axle.spring.allowed_stress",
    "axle.spring.active_coils",
    "axle.spring.coiling",
    "axle.spring.minimum_gap",
    "axle.spring.elastic_modulus",
    "axle.spring.shear_modulus",
    "axle.spring.density",
];

/// A damper.
const DAMPER_PART: &[&str] = &[
    "axle.damper.rate",
    "axle.damper.open_length",
    "axle.damper.closed_length",
    "axle.damper.stroke",
    "axle.damper.rate_softest",
    "axle.damper.rate_firmest",
    "axle.damper.gas_force",
];

/// Lines and findings of the sheet on springs and dampers.
pub const SHEET: Section = Section {
    lines: &joined::<_, LINES>(&[SPRING, AT_RIDE, RATES, DAMPER, TRAVEL_REMAINING, SHAPE, DAMPING, WANTED]),
    findings: &[
        Finding {
            path: "axle.frequency",
            question: "Does the body move at the frequency that is wanted?",
            margin: Margin::Band {
                value: "axle.frequency_of_worse_side",
                low: "axle.wanted.frequency_low",
                high: "axle.wanted.frequency_high",
            },
            wanted: "wanted.frequency_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "vehicle.frequency_pair",
            question: "Is the rear quicker than the front, but not by much?",
            margin: Margin::Band {
                value: "vehicle.frequency_ratio_of_worse_sides",
                low: "wanted.frequency_ratio_low",
                high: "wanted.frequency_ratio_high",
            },
            wanted: "wanted.ratio_margin",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.damping",
            question: "Does the damper suit spring and mass?",
            margin: Margin::Band {
                value: "axle.damping_of_worse_side",
                low: "wanted.damping_low",
                high: "wanted.damping_high",
            },
            wanted: "wanted.ratio_margin",
            rests_on: &[],
            about: &[About::parts(&["axle.damper"])],
            caution: "",
        },
        Finding {
            path: "axle.damper_range",
            question: "Can the damper be set to the damping that is wanted?",
            margin: Margin::Band {
                value: "axle.damper.rate_of_worse_side",
                low: "axle.damper.rate_softest",
                high: "axle.damper.rate_firmest",
            },
            wanted: "wanted.damper_margin",
            rests_on: &[],
            about: &ADJUSTABLE,
            caution: "",
        },
        Finding {
            path: "axle.bump",
            question: "Is there travel remaining in bump?",
            margin: Margin::Remaining { value: "axle.bump_clear" },
            wanted: "axle.wanted_bump",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.droop",
            question: "Is there travel remaining in droop?",
            margin: Margin::Remaining { value: "axle.droop_clear" },
            wanted: "axle.wanted_droop",
            rests_on: &[],
            about: &[],
            caution: "",
        },
        Finding {
            path: "axle.coil_bind",
            question: "Does the damper stop before the coils bind?",
            margin: Margin::Remaining { value: "axle.spring.bind_margin" },
            wanted: "wanted.spring_margin",
            rests_on: &[],
            about: &[COIL],
            caution: BOUND,
        },
        Finding {
            path: "axle.captive",
            question: "Does the spring stay captive at full droop?",
            margin: Margin::Remaining { value: "axle.spring.captive_margin" },
            wanted: "wanted.spring_margin",
            rests_on: &[],
            about: &[COIL],
            caution: LOOSE,
        },
        Finding {
            path: "axle.buckling",
            question: "Does the spring stay straight down to its least gaps?",
            margin: Margin::AtMost {
                value: "axle.spring.largest_compression",
                most: "axle.spring.buckling_deflection",
            },
            wanted: "wanted.spring_margin",
            rests_on: &[],
            about: &[COIL],
            caution: LOOSE,
        },
        Finding {
            path: "axle.spring_strength",
            question: "Does the spring bear the worst that comes to it?",
            margin: Margin::Ratio { capacity: "axle.spring.allowed_stress", demand: "axle.spring.stress" },
            wanted: "axle.wanted_spring_strength",
            rests_on: &[],
            about: &[],
            caution: LOOSE,
        },
    ],
    models: &[model! {
        "axle.corner" "spring.Corner" Corner in "axle.spring"
        takes {
            rate, free_length, solid_length, minimum_gap, motion_ratio, sprung_mass = "axle.sprung_mass",
            droop_length, damper_stroke = "axle.damper.stroke", damper_mounting = "axle.damper.mounting",
            gas_force = "axle.damper.gas_force", bump_stop_travel = "axle.bump_stop_travel",
            bump_clearance = "axle.bump_clearance",
            joint_bump_clearance = "axle.joint_bump_clearance", hose_bump_clearance = "axle.hose_bump_clearance",
            tyre_clearance = "axle.tyre_clearance", joint_droop_clearance = "axle.joint_droop_clearance",
            hose_droop_clearance = "axle.hose_droop_clearance",
        }
        needs { damper_motion_ratio = "axle.damper.motion_ratio" }
    }],
    renamed: &[
        renamed("axle.bump_left", "axle.bump_remaining"),
        renamed("axle.droop_left", "axle.droop_remaining"),
        renamed("axle.spring.greatest_compression", "axle.spring.largest_compression"),
        renamed("axle.spring.greatest_force", "axle.spring.largest_force"),
    ],
    parts: &[SPRING_PART, DAMPER_PART],
    ..Section::EMPTY
};
