use super::torque_curve::CurvePoint;
use super::{CurveBand, CurvePeaks, TorqueCurve};
use crate::Result;
use crate::base::document::Model;
use crate::base::section::rule::Whole;
use crate::base::section::{
    About, Finding, Line, Margin, Rule, Section, choice, derived, fields, gives, joined, line, model, pick,
    renamed, rule, step,
};
use crate::units::{
    AngularVelocity, GaugePressure, Kind, Length, Power, Quantity, Ratio, Stress, Temperature, Torque,
    Velocity, Volume,
};

/// Most points that a torque curve may have.
const POINTS: usize = 24;

const fn speed(path: &'static str, meaning: &'static str) -> Line {
    line(path, AngularVelocity::KIND, meaning).above(
        0.0,
        10e3,
        "plausibility limit: engines turn slower than 95 000 rpm",
    )
}

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(0.0, 10.0, "plausibility limit: cylinders are smaller than 10 m")
}

/// A torque curve as written; it is known once it has two points.
pub(crate) struct Written {
    pub(crate) points: Vec<Whole<CurvePoint>>,
    #[allow(dead_code, reason = "a curve has two points")]
    pub(crate) second: CurvePoint,
    share: Ratio,
    /// Engine speed at which its torque is asked for.
    pub(crate) at: AngularVelocity,
}

fields!(CurvePoint { engine_speed, torque });
fields!(TorqueCurve { points });
fields!(Written { points, second, share, at });

impl Written {
    fn curve(&self) -> Result<TorqueCurve> {
        let mut points = Vec::new();
        for (place, point) in self.points.iter().enumerate() {
            points.extend(point.drawn(&format!("engine.curve[{place}]"))?.cloned());
        }
        TorqueCurve { points }.checked()
    }
    fn peaks(&self) -> Result<CurvePeaks> {
        self.curve()?.peaks()
    }
    fn band(&self) -> Result<CurveBand> {
        self.curve()?.torque_band(self.share)
    }
    pub(crate) fn torque(&self) -> Result<Torque> {
        self.curve()?.torque(self.at)
    }
}

const PEAKS: Rule = rule! {
    "engine" Written::peaks, Written
    takes { points = "engine.curve[*]", second = "engine.curve[1]" }
    gives CurvePeaks { peak_torque, peak_torque_speed, peak_power, peak_power_speed }
    says "peak torque and peak power of the curve, and their speeds", CURVE
};
const BAND: Rule = rule! {
    "engine" Written::band, Written
    takes { share = "engine.band_share", points = "engine.curve[*]", second = "engine.curve[1]" }
    gives CurveBand { lowest_speed, highest_speed }
    says "lowest and highest speed around the peak with that share of the peak torque", CURVE
};

pub(crate) const CURVE: &str =
    "monotone cubic through the points (Fritsch and Carlson 1980), see engine.TorqueCurve";

/// The torque curve and the lines that follow from it.
const TORQUE: &[Line] = &[
    speed("engine.curve[].engine_speed", "engine speed at a point of the torque curve, slowest first")
        .list(POINTS),
    line("engine.curve[].torque", Torque::KIND, "torque at the crankshaft there")
        .above(0.0, 1e6, "plausibility limit: no engine gives 1 MN·m")
        .list(POINTS),
    line("engine.peak_torque", Torque::KIND, "peak torque at the crankshaft")
        .how("data sheet or dynamometer, at the crankshaft")
        .above(0.0, 1e6, "plausibility limit: no engine gives 1 MN·m")
        .first_hand()
        .by(&[gives(&PEAKS, "peak_torque")]),
    speed("engine.peak_torque_speed", "engine speed at peak torque")
        .first_hand()
        .by(&[gives(&PEAKS, "peak_torque_speed")]),
    line("engine.peak_power", Power::KIND, "peak power at the crankshaft")
        .above(0.0, 1e8, "plausibility limit: no engine gives 100 MW")
        .first_hand()
        .by(&[gives(&PEAKS, "peak_power")]),
    speed("engine.peak_power_speed", "engine speed at peak power")
        .first_hand()
        .by(&[gives(&PEAKS, "peak_power_speed")]),
    line("engine.band_share", Ratio::KIND, "share of the peak torque at which an engine still pulls well")
        .in_units("percent", "percent")
        .above(0.0, 1.0, "definition: a share of the peak"),
    speed("engine.band_low", "lowest engine speed at which it pulls well")
        .by(&[gives(&BAND, "lowest_speed")]),
    speed("engine.band_high", "highest engine speed at which it pulls well")
        .by(&[gives(&BAND, "highest_speed")]),
    derived(
        "engine.cruise_torque",
        Torque::KIND,
        "full-load torque at the crankshaft at the cruise speed in top gear",
    ),
];

/// Speed of a piston: engine builders write it in m/s and ft/min, unlike that of a road.
const PISTON_SPEED: &Kind = &Kind { metric: "m_s", us: "ft_min", ..*Velocity::KIND };

/// Sizes and pistons.
const PISTONS: &[Line] = &[
    speed("engine.red_line", "highest engine speed that the maker allows"),
    speed("engine.idle_speed", "engine speed at idle, in gear").how("tachometer, warm, in gear"),
    length("engine.bore", "diameter of a cylinder"),
    length("engine.stroke", "travel of a piston, top to bottom"),
    line("engine.cylinders", Ratio::KIND, "number of cylinders").within(
        1.0,
        100.0,
        "plausibility limit: engines have at most 100 cylinders",
    ),
    line("engine.displacement", Volume::KIND, "swept volume of all cylinders together")
        .above(0.0, 1e3, "plausibility limit: no engine sweeps 1000 m³")
        .by(&[step("engine.displacement", &["engine.bore", "engine.stroke", "engine.cylinders"])]),
    choice("engine.cycle", &["four_stroke", "two_stroke"], "strokes of a working cycle"),
    derived("engine.mean_pressure_if_four_stroke", Stress::KIND, "mean effective pressure at peak torque")
        .by(&[step(
            "engine.mean_effective_pressure_four_stroke",
            &["engine.peak_torque", "engine.displacement"],
        )]),
    derived("engine.mean_pressure_if_two_stroke", Stress::KIND, "mean effective pressure at peak torque").by(
        &[step("engine.mean_effective_pressure_two_stroke", &["engine.peak_torque", "engine.displacement"])],
    ),
    derived("engine.mean_pressure", Stress::KIND, "mean effective pressure at peak torque").by(&[pick(&[
        "engine.cycle",
        "engine.mean_pressure_if_four_stroke",
        "engine.mean_pressure_if_two_stroke",
    ])]),
    derived("engine.piston_speed", PISTON_SPEED, "mean speed of a piston at the red line")
        .by(&[step("engine.mean_piston_speed", &["engine.stroke", "engine.red_line"])]),
    line(
        "engine.piston_speed_limit",
        PISTON_SPEED,
        "highest mean piston speed that engine and rods are built for",
    )
    .how("ask the engine builder; it depends on rods and pistons")
    .above(0.0, 100.0, "plausibility limit: pistons move slower than 100 m/s"),
    line("wanted.piston_speed", PISTON_SPEED, "wanted margin of the mean piston speed below its limit")
        .margin(100.0)
        .or(0.0, "no margin beyond the limit itself"),
];

/// The charge behind a compressor.
const CHARGE: &[Line] = &[
    line("engine.boost_pressure", GaugePressure::KIND, "gauge reading at the outlet of the compressor")
        .within(0.0, 10e6, "plausibility limit: from none to 100 bar")
        .measured_on(ENGINE),
    line("engine.inlet_loss", Stress::KIND, "pressure lost in air filter and duct before the compressor")
        .in_units("kPa", "psi")
        .within(0.0, 15e3, "plausibility limit: a filter that loses more than 150 mbar is blocked")
        .measured_on(ENGINE)
        .or(0.0, "neglected until it is measured"),
    line("engine.inlet_temperature", Temperature::KIND, "temperature of the air before the compressor")
        .within(150.0, 500.0, "plausibility limit: engines breathe between -123 °C and 227 °C")
        .measured_on(ENGINE),
    line(
        "engine.compressor_efficiency",
        Ratio::KIND,
        "isentropic efficiency, read from the compressor's map",
    )
    .in_units("percent", "percent")
    .within(
        0.1,
        1.0,
        "definition: no compressor beats the ideal one; plausibility limit: nor has less than 10 %",
    ),
    derived(
        "engine.pressure_ratio",
        Ratio::KIND,
        "absolute pressure behind the compressor over absolute pressure before it",
    )
    .by(&[step(
        "engine.boost_pressure_ratio",
        &["engine.boost_pressure", "use.station_pressure", "engine.inlet_loss"],
    )]),
    derived(
        "engine.compressor_outlet_temperature",
        Temperature::KIND,
        "temperature of the charge at the outlet of the compressor, before a charge cooler",
    )
    .by(&[step(
        "engine.compressor_outlet_temperature",
        &["engine.inlet_temperature", "engine.pressure_ratio", "engine.compressor_efficiency"],
    )]),
];

/// Lines by which another engine is told.
const ENGINE: &[&str] = &["engine.curve", "engine.peak_torque", "engine.peak_power"];

/// Lines and findings of the sheet on the engine.
pub const SHEET: Section = Section {
    lines: &joined::<_, { TORQUE.len() + PISTONS.len() + CHARGE.len() }>(&[TORQUE, PISTONS, CHARGE]),
    findings: &[Finding {
        path: "engine.pistons",
        question: "Do the pistons stay below the speed that they are built for?",
        margin: Margin::AtMost { value: "engine.piston_speed", most: "engine.piston_speed_limit" },
        wanted: "wanted.piston_speed",
        rests_on: &[],
        about: &[About::parts(&["engine"])],
        caution: "",
    }],
    models: &[model! {
        "engine.curve" "engine.TorqueCurve" TorqueCurve in "engine.curve" takes { points = "engine.curve[*]" }
    }],
    renamed: &[
        renamed("engine.curve[].speed", "engine.curve[].engine_speed"),
        renamed("engine.charge_temperature", "engine.compressor_outlet_temperature"),
    ],
    parts: &[&[
        "engine.curve",
        "engine.peak_torque",
        "engine.peak_torque_speed",
        "engine.peak_power",
        "engine.peak_power_speed",
        "engine.band_share",
        "engine.band_low",
        "engine.band_high",
        "engine.red_line",
        "engine.idle_speed",
        "engine.bore",
        "engine.stroke",
        "engine.cylinders",
        "engine.displacement",
        "engine.cycle",
        "engine.piston_speed_limit",
    ]],
    ..Section::EMPTY
};
