use super::leak::pressure_decay::Trapped;
use super::rules::*;
use super::{CapTest, Coolant, Liquid, PressureDecay};
use crate::base::section::{
    About, Finding, Line, Margin, Renamed, Section, by, choice, derived, difference_of, joined, line, model,
    pick, renamed, same, step, sum_of,
};
use crate::units::{
    AbsolutePressure, GaugePressure, Length, Quantity, Ratio, Stress, Temperature, TemperatureDifference,
    Volume,
};

const fn gauge(path: &'static str, meaning: &'static str) -> Line {
    line(path, GaugePressure::KIND, meaning).within(
        -110e3,
        2e6,
        "plausibility limit: from no air at all to ten times any cap",
    )
}

const fn vacuum(path: &'static str, meaning: &'static str) -> Line {
    line(path, GaugePressure::KIND, meaning).within(
        -110e3,
        0.0,
        "definition: a vacuum is below the pressure of the air around, not below zero absolute",
    )
}

/// A reading or a rating of what is pumped up.
const fn pumped(path: &'static str, meaning: &'static str) -> Line {
    line(path, GaugePressure::KIND, meaning).within(
        0.0,
        2e6,
        "plausibility limit: from the pressure around to ten times any cap",
    )
}

const fn spread(path: &'static str, meaning: &'static str) -> Line {
    line(path, Stress::KIND, meaning).within(0.0, 2e6, "definition: a width is not negative")
}

const fn share(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(0.0, 1.0, "definition: a share")
}

const fn warmth(path: &'static str, meaning: &'static str) -> Line {
    line(path, TemperatureDifference::KIND, meaning).margin(200.0)
}

const fn temperature(path: &'static str, meaning: &'static str) -> Line {
    line(path, Temperature::KIND, meaning).within(
        220.0,
        500.0,
        "plausibility limit: coolants are between -53 °C and 227 °C",
    )
}

const fn volume(path: &'static str, meaning: &'static str) -> Line {
    line(path, Volume::KIND, meaning).within(
        0.0,
        1000.0,
        "plausibility limit: no vehicle carries 1000 m³ of coolant",
    )
}

/// The cap; the tester's gauge and the other parts of the system are beside it in its table.
const THE_CAP: &[&str] = &[
    "cap.rating",
    "cap.rating_tolerance",
    "cap.opening_pressure",
    "cap.holding_pressure",
    "cap.vacuum_opening",
];
/// The coolant as it is mixed.
const THE_MIX: &[&str] = &["coolant.liquid", "coolant.volume_share", "coolant.concentrate"];
/// Parts under a pressure decay test: coolant, header tank, hoses and radiator.
const THE_SYSTEM: &[&str] = &[
    "coolant.liquid",
    "coolant.volume_share",
    "coolant.concentrate",
    "coolant.mass_fraction",
    "header",
    "cap.weakest_component",
    "cap.vacuum_limit",
];

const HOT: &str = "Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; local codes and the maker's \
                   instructions come first.";
const PUMPED: &str = "Compressed gas stores far more energy than liquid at the same pressure: test cold, below the rating of the weakest component, and \
                      let the pressure off before anything is opened; local codes and the maker's instructions come first.";

const GROWTH: &[&str] =
    &["coolant.volume", "coolant.mass_fraction", "coolant.fill_temperature", "coolant.grown_temperature"];
/// Lines on the contents of the system.
const STRENGTH: &[Line] = &[
    choice("coolant.liquid", Liquid::WORDS, "kind of coolant in the system"),
    share("coolant.volume_share", "share of concentrate by volume of the parts before they are mixed")
        .in_units("percent", "percent")
        .how("measure what you pour, or read a refractometer"),
    share("coolant.concentrate", "glycol in the concentrate by mass")
        .in_units("percent", "percent")
        .how("the can's data sheet"),
    share("coolant.mass_fraction", "glycol by mass of the mix")
        .in_units("percent", "percent")
        .measured_on(THE_MIX)
        .by(&[pick(&[
            "coolant.liquid",
            "coolant.no_glycol",
            "coolant.ethylene_glycol.fraction",
            "coolant.propylene_glycol.fraction",
        ])]),
    line("coolant.no_glycol", Ratio::KIND, "glycol in water")
        .within(0.0, 0.0, "definition: water has none")
        .or(0.0, "water has none"),
    derived("coolant.ethylene_glycol.fraction", Ratio::KIND, "ethylene glycol by mass of the mix")
        .by(&[step("fluid.ethylene_glycol_mass_fraction", &["coolant.volume_share", "coolant.concentrate"])]),
    derived("coolant.propylene_glycol.fraction", Ratio::KIND, "propylene glycol by mass of the mix").by(&[
        step("fluid.propylene_glycol_mass_fraction", &["coolant.volume_share", "coolant.concentrate"]),
    ]),
];

/// Boiling, and the cap and the height that go with it.
const BOILING: &[Line] = &[
    line("coolant.hottest", Temperature::KIND, "temperature that the coolant reaches").how("gauge or logger on the worst climb of the year")
        .within(250.0, 500.0, "plausibility limit: coolants work between -23 °C and 227 °C")
        .measured_on(&[]),
    pumped("cap.rating", "opening pressure that stands on the cap").how("stamped on the cap"),
    derived("cap.absolute_pressure", AbsolutePressure::KIND, "absolute pressure under the cap, once the system has built the pressure that the cap keeps")
        .by(&[step("air.absolute_pressure", &["coolant.kept_pressure", "use.station_pressure"])]),
    derived("coolant.water.boiling", Temperature::KIND, "temperature at which water begins to boil under the cap")
        .by(&[step("fluid.water_boiling_temperature", &["cap.absolute_pressure"])]),
    derived("coolant.ethylene_glycol.boiling", Temperature::KIND, "temperature at which the mix with ethylene glycol begins to boil under the cap")
        .by(&[step("fluid.ethylene_glycol_boiling_temperature", &["cap.absolute_pressure", "coolant.mass_fraction"])]),
    derived("coolant.propylene_glycol.boiling", Temperature::KIND, "temperature at which the mix with propylene glycol begins to boil under the cap")
        .by(&[step("fluid.propylene_glycol_boiling_temperature", &["cap.absolute_pressure", "coolant.mass_fraction"])]),
    derived("coolant.boiling_temperature", Temperature::KIND, "temperature at which the coolant begins to boil under the cap: an upper bound").by(&[pick(&[
        "coolant.liquid",
        "coolant.water.boiling",
        "coolant.ethylene_glycol.boiling",
        "coolant.propylene_glycol.boiling",
    ])]),
    derived("coolant.boiling_bound", TemperatureDifference::KIND, "temperature by which the coolant may boil cooler than the model of the mix says").by(&[by(&BOILING_BOUND)]),
    derived("coolant.boils_at_least", Temperature::KIND, "temperature at which the coolant begins to boil, less the bound of the model")
        .by(&[difference_of(&["coolant.boiling_temperature", "coolant.boiling_bound"], "definition: the bound counts against the coolant")]),
    derived("coolant.wanted_boiling", TemperatureDifference::KIND, "margin below boiling that is wanted; without limit while the cap is not tested")
        .by(&[sum_of(&["wanted.boiling", "cap.untested"], "definition")]),
    derived("coolant.hottest_with_margin", Temperature::KIND, "the hottest coolant, the margin that is wanted, and the bound of the model")
        .by(&[sum_of(&["coolant.hottest", "wanted.boiling", "coolant.boiling_bound"], "definition: a temperature, a margin and the bound of the model")]),
    derived("coolant.hottest_with_bound", Temperature::KIND, "the hottest coolant and the bound of the model")
        .by(&[sum_of(&["coolant.hottest", "coolant.boiling_bound"], "definition: the bound counts against the coolant")]),
    derived("coolant.water.cap", GaugePressure::KIND, "least pressure of the cap that keeps water from boiling, with the margin that is wanted")
        .by(&[step("cooling.water_cap_pressure", &["coolant.hottest_with_margin", "use.station_pressure"])]),
    derived("coolant.ethylene_glycol.cap", GaugePressure::KIND, "least pressure of the cap that keeps the mix with ethylene glycol from boiling, with the margin that is wanted")
        .by(&[step("cooling.ethylene_glycol_cap_pressure", &["coolant.hottest_with_margin", "coolant.mass_fraction", "use.station_pressure"])]),
    derived("coolant.propylene_glycol.cap", GaugePressure::KIND, "least pressure of the cap that keeps the mix with propylene glycol from boiling, with the margin that is wanted")
        .by(&[step("cooling.propylene_glycol_cap_pressure", &["coolant.hottest_with_margin", "coolant.mass_fraction", "use.station_pressure"])]),
    derived("coolant.least_cap", GaugePressure::KIND, "least pressure of the cap that keeps the coolant from boiling, with the margin that is wanted").by(&[pick(&[
        "coolant.liquid",
        "coolant.water.cap",
        "coolant.ethylene_glycol.cap",
        "coolant.propylene_glycol.cap",
    ])]),
    derived("coolant.water.altitude", Length::KIND, "height above sea level from which on water boils under what the cap keeps").in_units("m", "ft")
        .by(&[step("cooling.water_boiling_altitude", &["coolant.hottest_with_bound", "coolant.kept_pressure"])]),
    derived("coolant.ethylene_glycol.altitude", Length::KIND, "height above sea level from which on the mix with ethylene glycol boils under what the cap keeps").in_units("m", "ft")
        .by(&[step("cooling.ethylene_glycol_boiling_altitude", &["coolant.hottest_with_bound", "coolant.mass_fraction", "coolant.kept_pressure"])]),
    derived("coolant.propylene_glycol.altitude", Length::KIND, "height above sea level from which on the mix with propylene glycol boils under what the cap keeps").in_units("m", "ft")
        .by(&[step("cooling.propylene_glycol_boiling_altitude", &["coolant.hottest_with_bound", "coolant.mass_fraction", "coolant.kept_pressure"])]),
    derived("coolant.boiling_altitude", Length::KIND, "height above sea level from which on the coolant boils under what the cap keeps").in_units("m", "ft").by(&[pick(&[
        "coolant.liquid",
        "coolant.water.altitude",
        "coolant.ethylene_glycol.altitude",
        "coolant.propylene_glycol.altitude",
    ])]),
    warmth("wanted.boiling", "wanted margin of the hottest coolant below boiling")
        .or(10.0, "common practice, no source: hot spots are hotter than the gauge, and the pump's inlet has less pressure"),
];

/// Freezing.
const FREEZING: &[Line] = &[
    line("coolant.water.freezing", Temperature::KIND, "temperature at which water freezes")
        .within(273.15, 273.15, "definition: ice point at atmospheric pressure")
        .or(273.15, "ice point at atmospheric pressure"),
    derived(
        "coolant.ethylene_glycol.freezing",
        Temperature::KIND,
        "temperature at which the mix with ethylene glycol begins to freeze",
    )
    .by(&[step("fluid.ethylene_glycol_freezing_temperature", &["coolant.mass_fraction"])]),
    derived(
        "coolant.propylene_glycol.freezing",
        Temperature::KIND,
        "temperature at which the mix with propylene glycol begins to freeze",
    )
    .by(&[step("fluid.propylene_glycol_freezing_temperature", &["coolant.mass_fraction"])]),
    derived(
        "coolant.freezing_temperature",
        Temperature::KIND,
        "temperature at which the coolant begins to freeze",
    )
    .by(&[pick(&[
        "coolant.liquid",
        "coolant.water.freezing",
        "coolant.ethylene_glycol.freezing",
        "coolant.propylene_glycol.freezing",
    ])]),
    derived(
        "coolant.freezing_bound",
        TemperatureDifference::KIND,
        "temperature by which the coolant may freeze warmer than the model of the mix says",
    )
    .by(&[by(&FREEZING_BOUND)]),
    derived(
        "coolant.freezes_at_most",
        Temperature::KIND,
        "temperature at which the coolant begins to freeze, and the bound of the model",
    )
    .by(&[sum_of(
        &["coolant.freezing_temperature", "coolant.freezing_bound"],
        "definition: the bound counts against the coolant",
    )]),
    warmth("wanted.freezing", "wanted margin of the freezing point below the coldest air")
        .or(3.0, "common practice, no source"),
];

/// A cap on the tester.
const CAP: &[Line] = &[
    spread(
        "cap.gauge_error",
        "largest error of the tester's gauge, in the cap test and in the pressure decay test",
    ).in_units("kPa", "psi").how("the tester's data sheet, or against a known gauge"),
    spread(
        "cap.rating_tolerance",
        "tolerance of the pressure at which the cap opens or holds, about its rating",
    ).in_units("kPa", "psi").how("the cap's data sheet"),
    pumped("cap.opening_pressure", "reading at which the cap opens").how("cap tester: pump until it opens").measured_on(THE_CAP),
    pumped("cap.holding_pressure", "reading that the cap keeps").how("cap tester: the reading that stands a minute later").measured_on(THE_CAP),
    pumped("cap.weakest_component", "pressure that the weakest part of the system bears").how("the lowest rating of hoses, heater, radiator and tank"),
    vacuum("cap.vacuum_opening", "reading, below zero, at which the vacuum valve opens").measured_on(THE_CAP),
    vacuum("cap.vacuum_limit", "lowest pressure, below zero, that the hoses bear"),
    derived("cap.holds_at_least", GaugePressure::KIND, "pressure that the cap surely keeps")
        .by(&[by(&HOLDS), by(&HOLDS_BY_OPENING)]),
    derived("cap.keeps_at_most", GaugePressure::KIND, "highest pressure that may stand under the cap by its test; nothing without a cap")
        .by(&[by(&KEEPS_AT_MOST), by(&KEEPS_AT_MOST_BY_OPENING)])
        .if_none(0.0),
    derived("cap.tested_pressure", GaugePressure::KIND, "pressure that the cap surely keeps by a whole test")
        .by(&[by(&TESTED_PRESSURE)]),
    derived("cap.untested", TemperatureDifference::KIND, "temperature that is added to a margin of boiling: nothing for a cap that was tested")
        .by(&[by(&TESTED)])
        .or(f64::INFINITY, "write cap.holding_pressure with cap.rating, cap.rating_tolerance and cap.gauge_error: an untested cap keeps its rating less its tolerance at most, and boiling is no better than tight")
        .if_none(0.0),
    derived("cap.untested_air", Volume::KIND, "volume that is added to the air that is wanted: nothing for a cap that was tested")
        .by(&[by(&TESTED_AIR)])
        .or(f64::INFINITY, "write cap.holding_pressure with cap.rating, cap.rating_tolerance and cap.gauge_error: an untested cap keeps its rating less its tolerance at most, and the header tank is no better than tight")
        .if_none(0.0),
    derived("cap.least_holding", GaugePressure::KIND, "pressure that the cap has to keep")
        .by(&[by(&HAS_TO_HOLD)]),
    derived("cap.opens_at_most", GaugePressure::KIND, "pressure at which the cap has surely opened")
        .by(&[by(&OPENS), by(&OPENS_BY_HOLDING)]),
    derived("cap.largest_opening", GaugePressure::KIND, "pressure at which the cap has to open")
        .by(&[by(&HAS_TO_OPEN)]),
    derived(
        "cap.peak_pressure",
        GaugePressure::KIND,
        "highest pressure under the cap: its opening pressure or its rating",
    )
    .by(&[by(&LETS_COME)]),
    derived(
        "cap.vacuum_opens_at_least",
        GaugePressure::KIND,
        "pressure at which the vacuum valve has surely opened",
    )
    .by(&[by(&VACUUM)]),
    spread("wanted.cap", "margin of pressure that is wanted of a cap and of a pressure decay test").in_units("kPa", "psi")
        .or(0.0, "no margin beyond its tolerance"),
];

/// The inlet of the pump.
const PUMP: &[Line] = &[
    temperature("coolant.pump_inlet_temperature", "temperature of the coolant at the inlet of the pump").measured_on(&[]),
    line("coolant.suction_loss", Stress::KIND, "fall of pressure from the cap to the inlet of the pump at its full speed, as measured; a head of coolant above it counts against it").in_units("kPa", "psi")
        .within(-50e3, 350e3, "plausibility limit: from 5 m of coolant above the pump to a whole cap lost")
        .measured_on(&[]),
    gauge("coolant.header_pressure", "gauge pressure where the cap sits, once the system has built it").measured_on(THE_CAP).by(&[
        by(&BUILT).usual(),
        same(&["cap.holds_at_least"], READING).usual(),
        same(&["cap.keeps_at_most"], READING).at_most(1.0),
    ]),
    derived("coolant.kept_pressure", GaugePressure::KIND, "gauge pressure where the cap sits, no more than the cap keeps by its test and by its rating").by(&[by(&KEPT)]),
    derived("coolant.water.pump_inlet", TemperatureDifference::KIND, "boiling margin of water at the inlet of the pump")
        .by(&[step("cooling.water_pump_inlet_margin", &["coolant.pump_inlet_temperature", "coolant.kept_pressure", "coolant.suction_loss", "use.station_pressure"])]),
    derived("coolant.ethylene_glycol.pump_inlet", TemperatureDifference::KIND, "boiling margin of the mix with ethylene glycol at the inlet of the pump")
        .by(&[step("cooling.ethylene_glycol_pump_inlet_margin", &["coolant.pump_inlet_temperature", "coolant.mass_fraction", "coolant.kept_pressure", "coolant.suction_loss", "use.station_pressure"])]),
    derived("coolant.propylene_glycol.pump_inlet", TemperatureDifference::KIND, "boiling margin of the mix with propylene glycol at the inlet of the pump")
        .by(&[step("cooling.propylene_glycol_pump_inlet_margin", &["coolant.pump_inlet_temperature", "coolant.mass_fraction", "coolant.kept_pressure", "coolant.suction_loss", "use.station_pressure"])]),
    derived("coolant.pump_inlet_margin", TemperatureDifference::KIND, "boiling margin of the coolant at the inlet of the pump").by(&[pick(&[
        "coolant.liquid",
        "coolant.water.pump_inlet",
        "coolant.ethylene_glycol.pump_inlet",
        "coolant.propylene_glycol.pump_inlet",
    ])]),
    derived("coolant.least_pump_inlet_margin", TemperatureDifference::KIND, "boiling margin of the coolant at the inlet of the pump, less the bound of the model")
        .by(&[difference_of(&["coolant.pump_inlet_margin", "coolant.boiling_bound"], "definition: the bound counts against the coolant")]),
    derived("coolant.wanted_pump_inlet", TemperatureDifference::KIND, "margin at the inlet of the pump that is wanted; without limit while the cap is not tested")
        .by(&[sum_of(&["wanted.pump_inlet", "cap.untested"], "definition")]),
    warmth("wanted.pump_inlet", "wanted boiling margin at the inlet of the pump")
        .or(5.0, "common practice, no source: the vanes lower the pressure further"),
];

/// A closed header tank.
const HEADER: &[Line] = &[
    volume("coolant.volume", "volume of the whole fill, cold").how("measure what you pour into the empty system").measured_on(&[]),
    temperature("coolant.fill_temperature", "temperature at which the system was filled and closed")
        .measured_on(&[]),
    temperature("coolant.mean_temperature", "mean temperature of the hot coolant over the system")
        .measured_on(&[]),
    line("coolant.growth_limit", Temperature::KIND, "temperature up to which the growth of water and mixes is computed")
        .within(273.15, 398.15, "Melinder (IIR 2010): data to 100 °C, carried on to 125 °C")
        .or(398.15, "Melinder (IIR 2010): the data end at 100 °C; growth above it is extrapolated up to here, and may be too little for propylene glycol"),
    derived("coolant.grown_temperature", Temperature::KIND, "mean temperature of the hot coolant, within what growth is computed for")
        .by(&[by(&GROWN)]),
    derived(
        "coolant.ethylene_glycol.growth",
        Volume::KIND,
        "growth of water, or of the mix with ethylene glycol, up to its hot temperature",
    )
    .by(&[step("cooling.ethylene_glycol_expansion_volume", GROWTH)]),
    derived(
        "coolant.propylene_glycol.growth",
        Volume::KIND,
        "growth of the mix with propylene glycol up to its hot temperature",
    )
    .by(&[step("cooling.propylene_glycol_expansion_volume", GROWTH)]),
    derived("coolant.expansion_volume", Volume::KIND, "growth of the fill; water is a mix without glycol")
        .by(&[pick(&[
            "coolant.liquid",
            "coolant.ethylene_glycol.growth",
            "coolant.ethylene_glycol.growth",
            "coolant.propylene_glycol.growth",
        ])]),
    gauge("header.fill_pressure", "gauge pressure in the tank when it was closed cold")
        .measured_on(&[])
        .or(0.0, "it was closed at the pressure around"),
    temperature(
        "header.air_temperature",
        "temperature of the air above the hot coolant, and of that coolant",
    )
    .measured_on(&[]),
    derived("coolant.water.vapour", AbsolutePressure::KIND, "pressure of the vapour above water in the tank")
        .by(&[step("fluid.water_saturation_pressure", &["header.air_temperature"])]),
    derived(
        "coolant.ethylene_glycol.vapour",
        AbsolutePressure::KIND,
        "pressure of the vapour above the mix with ethylene glycol in the tank",
    )
    .by(&[step(
        "fluid.ethylene_glycol_boiling_pressure",
        &["header.air_temperature", "coolant.mass_fraction"],
    )]),
    derived(
        "coolant.propylene_glycol.vapour",
        AbsolutePressure::KIND,
        "pressure of the vapour above the mix with propylene glycol in the tank",
    )
    .by(&[step(
        "fluid.propylene_glycol_boiling_pressure",
        &["header.air_temperature", "coolant.mass_fraction"],
    )]),
    derived(
        "header.vapour_pressure",
        AbsolutePressure::KIND,
        "vapour pressure of the hot coolant in the tank",
    )
    .by(&[pick(&[
        "coolant.liquid",
        "coolant.water.vapour",
        "coolant.ethylene_glycol.vapour",
        "coolant.propylene_glycol.vapour",
    ])]),
    volume("header.air_volume", "air above the cold coolant in a closed header tank").how("fill the cold tank to the top from a measuring jug")
        .measured_on(&["coolant.volume"]),
    derived(
        "header.least_air_volume",
        Volume::KIND,
        "air that the tank needs so that the cap stays shut when the coolant has grown",
    )
    .by(&[step(
        "cooling.header_air_volume",
        &[
            "coolant.expansion_volume",
            "header.fill_pressure",
            "coolant.kept_pressure",
            "header.vapour_pressure",
            "coolant.fill_temperature",
            "header.air_temperature",
            "use.station_pressure",
        ],
    )]),
    derived(
        "header.wanted_air",
        Volume::KIND,
        "air that is wanted beyond its need; without limit while the cap is not tested",
    )
    .by(&[sum_of(&["wanted.header_air", "cap.untested_air"], "definition")]),
    volume("wanted.header_air", "air that is wanted in the header tank beyond what it needs")
        .or(0.0, "no margin beyond its need"),
];

/// A pressure decay test.
const LEAK_TEST: &[Line] = &[
    choice(
        "leak_test.trapped",
        Trapped::WORDS,
        "contents of the system: air alone, or coolant with air trapped above; a system full of liquid gives no result",
    ),
    gauge("leak_test.gauge_pressure", "gauge reading at the start").measured_on(THE_SYSTEM),
    gauge("leak_test.later_gauge_pressure", "gauge reading at the end").measured_on(THE_SYSTEM),
    temperature("leak_test.temperature", "temperature of the air at the start").measured_on(THE_SYSTEM),
    temperature("leak_test.later_temperature", "temperature of the air at the end").measured_on(THE_SYSTEM),
    volume(
        "leak_test.gas_volume",
        "volume of all the air trapped in the system and in the tester at the start",
    )
    .measured_on(THE_SYSTEM),
    volume("leak_test.coolant_volume", "volume of the coolant in the system at the start")
        .measured_on(THE_SYSTEM)
        .by(&[by(&NO_COOLANT).at_most(1.0).about(1e-6)]),
    derived(
        "leak_test.pumped_at_most",
        GaugePressure::KIND,
        "highest pressure that the system may have seen: the higher reading and the gauge's error",
    )
    .by(&[by(&PUMPED_AT_MOST)]),
    derived(
        "leak_test.tight_pressure",
        GaugePressure::KIND,
        "reading at the end that temperature alone accounts for, the gas dry",
    )
    .by(&[by(&TIGHT)]),
    spread("leak_test.allowed_loss", "fall of pressure that is allowed beyond what temperature accounts for").in_units("kPa", "psi")
        .wish()
        .or(0.0, "a tight system keeps its pressure"),
    derived(
        "leak_test.least_pressure",
        GaugePressure::KIND,
        "lowest reading at the end that proves the system tight, the vapour of damp gas and the gauge's error in both readings counted",
    )
    .by(&[by(&PROVEN)]),
];

const LINES: usize =
    STRENGTH.len() + BOILING.len() + FREEZING.len() + CAP.len() + PUMP.len() + HEADER.len() + LEAK_TEST.len();

const COOLANT: About = About::parts(&["coolant"]);

/// Lines and findings of the sheet on coolant, cap and header tank.
pub const SHEET: Section = Section {
    lines: &joined::<_, LINES>(&[STRENGTH, BOILING, FREEZING, CAP, PUMP, HEADER, LEAK_TEST]),
    findings: &[
        Finding {
            path: "coolant.boiling",
            question: "Does the coolant stay below boiling?",
            margin: Margin::AtLeast { value: "coolant.boils_at_least", least: "coolant.hottest" },
            wanted: "coolant.wanted_boiling",
            rests_on: &[],
            about: &[COOLANT],
            caution: HOT,
        },
        Finding {
            path: "coolant.freezing",
            question: "Does the coolant stay liquid in the coldest air?",
            margin: Margin::AtMost { value: "coolant.freezes_at_most", most: "use.coldest_air" },
            wanted: "wanted.freezing",
            rests_on: &[],
            about: &[COOLANT],
            caution: "",
        },
        Finding {
            path: "cap.holds",
            question: "Does the cap hold its pressure?",
            margin: Margin::AtLeast { value: "cap.holds_at_least", least: "cap.least_holding" },
            wanted: "wanted.cap",
            rests_on: &[],
            about: &[COOLANT, About::parts(&["cap"])],
            caution: HOT,
        },
        Finding {
            path: "cap.opens",
            question: "Does the cap open in time?",
            margin: Margin::AtMost { value: "cap.opens_at_most", most: "cap.largest_opening" },
            wanted: "wanted.cap",
            rests_on: &[],
            about: &[COOLANT, About::parts(&["cap"])],
            caution: HOT,
        },
        Finding {
            path: "cap.weakest",
            question: "Does the weakest part of the system bear what the cap lets come?",
            margin: Margin::AtMost { value: "cap.peak_pressure", most: "cap.weakest_component" },
            wanted: "wanted.cap",
            rests_on: &[],
            about: &[COOLANT],
            caution: HOT,
        },
        Finding {
            path: "cap.vacuum",
            question: "Does the vacuum valve open before the hoses collapse?",
            margin: Margin::AtLeast { value: "cap.vacuum_opens_at_least", least: "cap.vacuum_limit" },
            wanted: "wanted.cap",
            rests_on: &[],
            about: &[COOLANT, About::parts(&["cap"])],
            caution: "",
        },
        Finding {
            path: "coolant.pump_inlet",
            question: "Does the coolant stay below boiling at the inlet of the pump?",
            margin: Margin::Remaining { value: "coolant.least_pump_inlet_margin" },
            wanted: "coolant.wanted_pump_inlet",
            rests_on: &[],
            about: &[COOLANT],
            caution: HOT,
        },
        Finding {
            path: "header.air",
            question: "Does the header tank hold air enough for the coolant to grow into?",
            margin: Margin::AtLeast { value: "header.air_volume", least: "header.least_air_volume" },
            wanted: "header.wanted_air",
            rests_on: &[],
            about: &[COOLANT, About::parts(&["header"])],
            caution: HOT,
        },
        Finding {
            path: "leak_test.pumped",
            question: "Was it pumped no higher in the pressure decay test than its weakest part bears?",
            margin: Margin::AtMost { value: "leak_test.pumped_at_most", most: "cap.weakest_component" },
            wanted: "wanted.cap",
            rests_on: &[],
            about: &[COOLANT],
            caution: PUMPED,
        },
        Finding {
            path: "leak_test.tight",
            question: "Did the system hold its pressure in the pressure decay test?",
            margin: Margin::AtLeast {
                value: "leak_test.later_gauge_pressure",
                least: "leak_test.least_pressure",
            },
            wanted: "wanted.cap",
            rests_on: &[],
            about: &[COOLANT],
            caution: PUMPED,
        },
    ],
    models: &[
        model! {
            "coolant" "cooling.Coolant" Coolant in "coolant"
            takes {
                liquid, volume_share, concentrate, cap = "coolant.kept_pressure",
                cap_holds = "cap.tested_pressure", hottest,
            }
            needs { mass_fraction, station_pressure = "use.station_pressure" }
        },
        model! {
            "cap" "cooling.CapTest" CapTest in "cap"
            takes {
                rating, opening_pressure, holding_pressure, gauge_error, rating_tolerance, weakest_component,
                vacuum_opening, vacuum_limit,
            }
        },
        model! {
            "leak_test" "cooling.PressureDecay" PressureDecay in "leak_test"
            takes {
                trapped, gauge_pressure, later_gauge_pressure, temperature, later_temperature,
                station_pressure = "use.station_pressure", gauge_error = "cap.gauge_error", allowed_loss,
                gas_volume, coolant_volume, liquid = "coolant.liquid",
                mass_fraction = "coolant.mass_fraction",
            }
        },
    ],
    renamed: &[
        renamed("cap.greatest_opening", "cap.largest_opening"),
        renamed("cap.greatest_pressure", "cap.peak_pressure"),
        renamed("coolant.cap", "coolant.header_pressure"),
        renamed("coolant.hottest_coolant", "coolant.hottest"),
        Renamed {
            old: "leak_test.of",
            new: "leak_test.trapped",
            words: &[("air", "gas"), ("coolant_and_air", "gas_over_coolant")],
        },
        renamed("leak_test.pressure", "leak_test.gauge_pressure"),
        renamed("leak_test.later_pressure", "leak_test.later_gauge_pressure"),
        renamed("leak_test.air_volume", "leak_test.gas_volume"),
        renamed("leak_test.allowed_fall", "leak_test.allowed_loss"),
    ],
    parts: &[&["cap.rating", "cap.rating_tolerance"], &["coolant.liquid", "coolant.concentrate"]],
    ..Section::EMPTY
};
