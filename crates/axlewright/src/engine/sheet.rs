use super::TorqueCurve;
use crate::Result;
use crate::base::section::{
    Finding, Line, Margin, Section, Several, choice, derived, joined, line, one_of, own, pick, step,
};
use crate::units::{
    AngularVelocity, GaugePressure, Length, Power, Quantity, Ratio, Stress, Temperature, Torque, Velocity,
    Volume,
};

/// Most points of a torque curve.
const POINTS: usize = 24;

const fn speed(path: &'static str, meaning: &'static str) -> Line {
    line(path, AngularVelocity::KIND, meaning).above(
        0.0,
        10e3,
        "common practice, no source: engines turn slower than 95 000 rpm",
    )
}

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        10.0,
        "common practice, no source: cylinders are smaller than 10 m",
    )
}

fn curve(points: &[f64]) -> Result<TorqueCurve> {
    let (speeds, torques) = points.split_at(points.len() / 2);
    let known = speeds.iter().zip(torques).filter(|(speed, torque)| !speed.is_nan() && !torque.is_nan());
    let points: Vec<(AngularVelocity, Torque)> =
        known.map(|(speed, torque)| (AngularVelocity::from_si(*speed), Torque::from_si(*torque))).collect();
    TorqueCurve::new(&points)
}

/// Torque and its speed, power and its speed.
const PEAKS: Several = Several {
    formula: "greatest torque and greatest power of the curve, and where they are",
    source: SOURCE,
    call: |points, peaks| {
        let of = curve(&points[..points.len() - 2])?.peaks()?;
        let all =
            [of.peak_torque.si(), of.peak_torque_speed.si(), of.peak_power.si(), of.peak_power_speed.si()];
        peaks[..4].copy_from_slice(&all);
        Ok(())
    },
};

/// Lowest and highest speed of the band, by the share that comes before the curve.
const BAND: Several = Several {
    formula: "lowest and highest speed around the peak with that share of the greatest torque",
    source: SOURCE,
    call: |points, edges| {
        let band = curve(&points[1..points.len() - 2])?.torque_band(Ratio::from_si(points[0]))?;
        edges[..2].copy_from_slice(&[band.lowest_speed.si(), band.highest_speed.si()]);
        Ok(())
    },
};

/// By the speed that comes before the curve.
fn torque_at(points: &[f64]) -> Result<f64> {
    let curve = curve(&points[1..points.len() - 2])?;
    Ok(curve.torque(AngularVelocity::from_si(points[0]))?.si())
}

/// A curve is known once it has two points.
const CURVE: &[&str] =
    &["?engine.curve[*].speed", "?engine.curve[*].torque", "engine.curve[1].speed", "engine.curve[1].torque"];
const SHARE_AND_CURVE: &[&str] = &[
    "engine.band_share",
    "?engine.curve[*].speed",
    "?engine.curve[*].torque",
    "engine.curve[1].speed",
    "engine.curve[1].torque",
];

const CRUISE_AND_CURVE: &[&str] = &[
    "driveline.cruise_engine_speed",
    "?engine.curve[*].speed",
    "?engine.curve[*].torque",
    "engine.curve[1].speed",
    "engine.curve[1].torque",
];

const SOURCE: &str = "monotone cubic through the points (Fritsch and Carlson 1980), see engine.TorqueCurve";

/// The torque curve and what follows from it.
const TORQUE: &[Line] = &[
    speed("engine.curve[].speed", "engine speed of a point of the torque curve, slowest first").list(POINTS),
    line("engine.curve[].torque", Torque::KIND, "torque at the crankshaft there")
        .above(0.0, 1e6, "common practice, no source: no engine gives 1 MN·m")
        .list(POINTS),
    line("engine.peak_torque", Torque::KIND, "greatest torque at the crankshaft")
        .above(0.0, 1e6, "common practice, no source: no engine gives 1 MN·m")
        .first_hand()
        .by(&[one_of(0, PEAKS, CURVE)]),
    speed("engine.peak_torque_speed", "engine speed of the greatest torque")
        .first_hand()
        .by(&[one_of(1, PEAKS, CURVE)]),
    line("engine.peak_power", Power::KIND, "greatest power at the crankshaft")
        .above(0.0, 1e8, "common practice, no source: no engine gives 100 MW")
        .first_hand()
        .by(&[one_of(2, PEAKS, CURVE)]),
    speed("engine.peak_power_speed", "engine speed of the greatest power")
        .first_hand()
        .by(&[one_of(3, PEAKS, CURVE)]),
    line(
        "engine.band_share",
        Ratio::KIND,
        "torque over the greatest torque at which an engine still pulls well",
    )
    .above(0.0, 1.0, "definition: a share of the greatest")
    .or(0.9, "common practice, no source: nine tenths of the greatest torque"),
    speed("engine.band_low", "lowest engine speed at which it pulls well").by(&[one_of(
        0,
        BAND,
        SHARE_AND_CURVE,
    )]),
    speed("engine.band_high", "highest engine speed at which it pulls well").by(&[one_of(
        1,
        BAND,
        SHARE_AND_CURVE,
    )]),
    derived(
        "engine.cruise_torque",
        Torque::KIND,
        "greatest torque at the crankshaft at the cruise speed in top gear",
    )
    .by(&[own("T(w) of the curve", SOURCE, torque_at, CRUISE_AND_CURVE)]),
];

/// Sizes and pistons.
const PISTONS: &[Line] = &[
    speed("engine.red_line", "greatest engine speed that its maker allows"),
    speed("engine.idle_speed", "engine speed at idle, in gear"),
    length("engine.bore", "of a cylinder"),
    length("engine.stroke", "of a piston, top to bottom"),
    line("engine.cylinders", Ratio::KIND, "how many there are").within(
        1.0,
        100.0,
        "common practice, no source: engines have at most 100 cylinders",
    ),
    line("engine.displacement", Volume::KIND, "swept volume of all cylinders together")
        .above(0.0, 1e3, "common practice, no source: no engine sweeps 1000 m³")
        .by(&[step("engine.displacement", &["engine.bore", "engine.stroke", "engine.cylinders"])]),
    choice("engine.cycle", &["four_stroke", "two_stroke"], "strokes of a working cycle"),
    derived(
        "engine.mean_pressure_if_four_stroke",
        Stress::KIND,
        "mean effective pressure at the greatest torque",
    )
    .by(&[step(
        "engine.mean_effective_pressure_four_stroke",
        &["engine.peak_torque", "engine.displacement"],
    )]),
    derived(
        "engine.mean_pressure_if_two_stroke",
        Stress::KIND,
        "mean effective pressure at the greatest torque",
    )
    .by(&[step("engine.mean_effective_pressure_two_stroke", &["engine.peak_torque", "engine.displacement"])]),
    derived("engine.mean_pressure", Stress::KIND, "mean effective pressure at the greatest torque").by(&[
        pick(&["engine.cycle", "engine.mean_pressure_if_four_stroke", "engine.mean_pressure_if_two_stroke"]),
    ]),
    derived("engine.piston_speed", Velocity::KIND, "mean speed of a piston at the red line")
        .by(&[step("engine.mean_piston_speed", &["engine.stroke", "engine.red_line"])]),
    line(
        "engine.piston_speed_limit",
        Velocity::KIND,
        "greatest mean speed of a piston that engine and rods are built for",
    )
    .above(0.0, 100.0, "common practice, no source: pistons move slower than 100 m/s"),
    line("wanted.piston_speed", Velocity::KIND, "how far below its limit the piston's speed is wanted")
        .within(0.0, 100.0, "definition: a margin is not negative")
        .or(0.0, "nothing beyond the limit itself"),
];

/// The charge behind a compressor.
const CHARGE: &[Line] = &[
    line("engine.boost_pressure", GaugePressure::KIND, "gauge reading at the outlet of the compressor")
        .within(0.0, 10e6, "common practice, no source: from none to 100 bar"),
    line("engine.inlet_loss", Stress::KIND, "pressure lost in air filter and duct before the compressor")
        .within(0.0, 15e3, "common practice, no source: a filter that loses more than 150 mbar is blocked")
        .or(0.0, "neglected until it was measured"),
    line("engine.inlet_temperature", Temperature::KIND, "of the air before the compressor").within(
        150.0,
        500.0,
        "common practice, no source: engines breathe between -123 °C and 227 °C",
    ),
    line(
        "engine.compressor_efficiency",
        Ratio::KIND,
        "isentropic efficiency, read from the compressor's map",
    )
    .within(
        0.1,
        1.0,
        "definition: no compressor beats the ideal one; common practice, no source: nor has less than 10 %",
    ),
    derived(
        "engine.pressure_ratio",
        Ratio::KIND,
        "absolute pressure behind the compressor over that before it",
    )
    .by(&[step(
        "engine.boost_pressure_ratio",
        &["engine.boost_pressure", "use.station_pressure", "engine.inlet_loss"],
    )]),
    derived("engine.charge_temperature", Temperature::KIND, "behind the compressor, before a charge cooler")
        .by(&[step(
            "engine.charge_temperature",
            &["engine.inlet_temperature", "engine.pressure_ratio", "engine.compressor_efficiency"],
        )]),
];

/// What the sheet says of the engine.
pub const SHEET: Section = Section {
    lines: &joined::<{ TORQUE.len() + PISTONS.len() + CHARGE.len() }>(&[TORQUE, PISTONS, CHARGE]),
    findings: &[Finding {
        path: "engine.pistons",
        question: "Do the pistons stay below the speed that they are built for?",
        margin: Margin::AtMost { value: "engine.piston_speed", most: "engine.piston_speed_limit" },
        wanted: "wanted.piston_speed",
        rests_on: &[],
        caution: "",
    }],
};
