use crate::Result;
use crate::base::section::{Finding, Line, Margin, Section, choice, derived, line, own, step};
use crate::units::{
    AbsolutePressure, GaugePressure, Quantity, Ratio, Stress, Temperature, TemperatureDifference,
};

const LIQUIDS: &[&str] = &["water", "ethylene_glycol", "propylene_glycol"];

const fn gauge(path: &'static str, meaning: &'static str) -> Line {
    line(path, GaugePressure::KIND, meaning).within(
        -110e3,
        2e6,
        "common practice, no source: from no air at all to ten times any cap",
    )
}

const fn spread(path: &'static str, meaning: &'static str) -> Line {
    line(path, Stress::KIND, meaning).within(0.0, 2e6, "definition: a width is not negative")
}

const fn share(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(0.0, 1.0, "definition: a share")
}

const fn warmth(path: &'static str, meaning: &'static str) -> Line {
    line(path, TemperatureDifference::KIND, meaning).within(
        0.0,
        200.0,
        "definition: a margin is not negative",
    )
}

/// The value of the liquid that is in the system.
fn of_liquid(of: &[f64]) -> Result<f64> {
    Ok(of[1 + of[0] as usize])
}

const MIX: &str =
    "a mix with glycol needs coolant.mass_fraction, or coolant.volume_share and coolant.concentrate";

fn difference(of: &[f64]) -> Result<f64> {
    Ok(of[0] - of[1])
}

fn sum(of: &[f64]) -> Result<f64> {
    Ok(of[0] + of[1])
}

fn greatest(of: &[f64]) -> Result<f64> {
    Ok(of[0].max(of[1]))
}

fn freezing_of_water(_: &[f64]) -> Result<f64> {
    Ok(273.15)
}

const LIQUID: &str = "definition: the liquid that is in the system";
const READING: &str = "definition: the gauge's whole error counts against the cap";
const HOT: &str = "Hot pressurised coolant scalds: never open a hot system, never pump it above its weakest component; local codes and the maker's \
                   instructions come first.";

/// What the sheet says of coolant and cap.
pub const SHEET: Section = Section {
    lines: &[
        choice("coolant.liquid", LIQUIDS, "what is in the system"),
        share("coolant.volume_share", "share of concentrate by volume of the parts before they are mixed"),
        share("coolant.concentrate", "glycol in the concentrate by mass"),
        share("coolant.mass_fraction", "glycol by mass of the mix").by(&[own(
            "that of the glycol, by its concentrate and volume share",
            LIQUID,
            of_liquid,
            &["coolant.liquid", "?coolant.no_glycol", "?coolant.ethylene_glycol.fraction", "?coolant.propylene_glycol.fraction"],
        ).lacking(MIX)]),
        line("coolant.no_glycol", Ratio::KIND, "glycol in water").within(0.0, 0.0, "definition: water has none").or(0.0, "water has none"),
        derived("coolant.ethylene_glycol.fraction", Ratio::KIND, "ethylene glycol by mass of the mix")
            .by(&[step("fluid.ethylene_glycol_mass_fraction", &["coolant.volume_share", "coolant.concentrate"])]),
        derived("coolant.propylene_glycol.fraction", Ratio::KIND, "propylene glycol by mass of the mix")
            .by(&[step("fluid.propylene_glycol_mass_fraction", &["coolant.volume_share", "coolant.concentrate"])]),
        line("coolant.hottest", Temperature::KIND, "temperature that the coolant reaches")
            .within(250.0, 500.0, "common practice, no source: coolants work between -23 °C and 227 °C"),
        gauge("cap.rating", "opening pressure that stands on the cap"),
        derived("cap.absolute_pressure", AbsolutePressure::KIND, "under the cap at its rating, once the system has built it")
            .by(&[step("air.absolute_pressure", &["cap.rating", "use.station_pressure"])]),
        derived("coolant.water.boiling", Temperature::KIND, "at which water boils under the cap")
            .by(&[step("fluid.water_boiling_temperature", &["cap.absolute_pressure"])]),
        derived("coolant.ethylene_glycol.boiling", Temperature::KIND, "at which the mix with ethylene glycol begins to boil under the cap").by(&[step(
            "fluid.ethylene_glycol_boiling_temperature",
            &["cap.absolute_pressure", "coolant.mass_fraction"],
        )]),
        derived("coolant.propylene_glycol.boiling", Temperature::KIND, "at which the mix with propylene glycol begins to boil under the cap").by(&[step(
            "fluid.propylene_glycol_boiling_temperature",
            &["cap.absolute_pressure", "coolant.mass_fraction"],
        )]),
        derived("coolant.boiling_temperature", Temperature::KIND, "at which the coolant begins to boil under the cap: an upper bound").by(&[own(
            "that of the liquid",
            LIQUID,
            of_liquid,
            &["coolant.liquid", "coolant.water.boiling", "?coolant.ethylene_glycol.boiling", "?coolant.propylene_glycol.boiling"],
        ).lacking(MIX)]),
        derived("coolant.water.freezing", Temperature::KIND, "at which water freezes").by(&[own(
            "273.15 K",
            "definition: ice point at atmospheric pressure",
            freezing_of_water,
            &["coolant.liquid"],
        )]),
        derived("coolant.ethylene_glycol.freezing", Temperature::KIND, "at which the mix with ethylene glycol begins to freeze")
            .by(&[step("fluid.ethylene_glycol_freezing_temperature", &["coolant.mass_fraction"])]),
        derived("coolant.propylene_glycol.freezing", Temperature::KIND, "at which the mix with propylene glycol begins to freeze")
            .by(&[step("fluid.propylene_glycol_freezing_temperature", &["coolant.mass_fraction"])]),
        derived("coolant.freezing_temperature", Temperature::KIND, "at which the coolant begins to freeze").by(&[own(
            "that of the liquid",
            LIQUID,
            of_liquid,
            &["coolant.liquid", "coolant.water.freezing", "?coolant.ethylene_glycol.freezing", "?coolant.propylene_glycol.freezing"],
        ).lacking(MIX)]),
        spread("cap.gauge_error", "greatest error of the tester's gauge"),
        spread("cap.rating_tolerance", "how far from its rating the cap may open or hold"),
        gauge("cap.opening_pressure", "reading at which the cap opens"),
        gauge("cap.holding_pressure", "reading that the cap keeps"),
        gauge("cap.weakest_component", "pressure that the weakest part of the system bears"),
        gauge("cap.vacuum_opening", "reading, below nothing, at which the vacuum valve opens"),
        gauge("cap.vacuum_limit", "lowest pressure, below nothing, that the hoses bear"),
        derived("cap.holds_at_least", GaugePressure::KIND, "what the cap surely keeps")
            .by(&[own("p_h - e", READING, difference, &["cap.holding_pressure", "cap.gauge_error"])]),
        derived("cap.least_holding", GaugePressure::KIND, "what it has to keep")
            .by(&[own("p_r - t", READING, difference, &["cap.rating", "cap.rating_tolerance"])]),
        derived("cap.opens_at_most", GaugePressure::KIND, "where the cap surely opens")
            .by(&[own("p_o + e", READING, sum, &["cap.opening_pressure", "cap.gauge_error"])]),
        derived("cap.greatest_opening", GaugePressure::KIND, "where it has to open")
            .by(&[own("p_r + t", READING, sum, &["cap.rating", "cap.rating_tolerance"])]),
        derived("cap.greatest_pressure", GaugePressure::KIND, "that the cap lets come: as it opens, or as its rating says")
            .by(&[own("max(p_o + e, p_r)", READING, greatest, &["cap.opens_at_most", "cap.rating"])]),
        derived("cap.vacuum_opens_at_least", GaugePressure::KIND, "where the vacuum valve surely opens")
            .by(&[own("p_v - e", READING, difference, &["cap.vacuum_opening", "cap.gauge_error"])]),
        warmth("wanted.boiling", "how far below boiling the coolant is wanted")
            .or(10.0, "common practice, no source: hot spots are hotter than the gauge, and the pump's inlet has less pressure"),
        warmth("wanted.freezing", "how far below the coldest air the coolant is wanted to freeze").or(3.0, "common practice, no source"),
        spread("wanted.cap", "margin of pressure that is wanted of a cap").or(0.0, "nothing beyond its tolerance"),
    ],
    findings: &[
        Finding {
            path: "coolant.boiling",
            question: "Does the coolant stay below boiling?",
            margin: Margin::AtLeast { value: "coolant.boiling_temperature", least: "coolant.hottest" },
            wanted: "wanted.boiling",
            rests_on: &[],
            caution: HOT,
        },
        Finding {
            path: "coolant.freezing",
            question: "Does the coolant stay liquid in the coldest air?",
            margin: Margin::AtMost { value: "coolant.freezing_temperature", most: "use.coldest_air" },
            wanted: "wanted.freezing",
            rests_on: &[],
            caution: "",
        },
        Finding {
            path: "cap.holds",
            question: "Does the cap hold its pressure?",
            margin: Margin::AtLeast { value: "cap.holds_at_least", least: "cap.least_holding" },
            wanted: "wanted.cap",
            rests_on: &[],
            caution: HOT,
        },
        Finding {
            path: "cap.opens",
            question: "Does the cap open in time?",
            margin: Margin::AtMost { value: "cap.opens_at_most", most: "cap.greatest_opening" },
            wanted: "wanted.cap",
            rests_on: &[],
            caution: HOT,
        },
        Finding {
            path: "cap.weakest",
            question: "Does the weakest part of the system bear what the cap lets come?",
            margin: Margin::AtMost { value: "cap.greatest_pressure", most: "cap.weakest_component" },
            wanted: "wanted.cap",
            rests_on: &[],
            caution: HOT,
        },
        Finding {
            path: "cap.vacuum",
            question: "Does the vacuum valve open before the hoses collapse?",
            margin: Margin::AtLeast { value: "cap.vacuum_opens_at_least", least: "cap.vacuum_limit" },
            wanted: "wanted.cap",
            rests_on: &[],
            caution: "",
        },
    ],
};
