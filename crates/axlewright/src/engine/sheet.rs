use super::TorqueCurve;
use crate::Result;
use crate::base::section::{Finding, Line, Margin, Section, Several, derived, line, one_of, step};
use crate::units::{AngularVelocity, Length, Power, Quantity, Torque, Velocity};

/// Most points of a torque curve.
const POINTS: usize = 24;

const fn speed(path: &'static str, meaning: &'static str) -> Line {
    line(path, AngularVelocity::KIND, meaning).above(
        0.0,
        10e3,
        "common practice, no source: engines turn slower than 95 000 rpm",
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
    source: "monotone cubic through the points (Fritsch and Carlson 1980), see engine.TorqueCurve",
    call: |points, peaks| {
        let of = curve(&points[..points.len() - 2])?.peaks()?;
        let all =
            [of.peak_torque.si(), of.peak_torque_speed.si(), of.peak_power.si(), of.peak_power_speed.si()];
        peaks[..4].copy_from_slice(&all);
        Ok(())
    },
};

/// A curve is known once it has two points.
const CURVE: &[&str] =
    &["?engine.curve[*].speed", "?engine.curve[*].torque", "engine.curve[1].speed", "engine.curve[1].torque"];

/// What the sheet says of the engine.
pub const SHEET: Section = Section {
    lines: &[
        speed("engine.curve[].speed", "engine speed of a point of the torque curve, slowest first")
            .list(POINTS),
        line("engine.curve[].torque", Torque::KIND, "torque at the crankshaft there")
            .above(0.0, 1e6, "common practice, no source: no engine gives 1 MN·m")
            .list(POINTS),
        line("engine.peak_torque", Torque::KIND, "greatest torque at the crankshaft")
            .above(0.0, 1e6, "common practice, no source: no engine gives 1 MN·m")
            .by(&[one_of(0, PEAKS, CURVE)]),
        speed("engine.peak_torque_speed", "engine speed of the greatest torque")
            .by(&[one_of(1, PEAKS, CURVE)]),
        line("engine.peak_power", Power::KIND, "greatest power at the crankshaft")
            .above(0.0, 1e8, "common practice, no source: no engine gives 100 MW")
            .by(&[one_of(2, PEAKS, CURVE)]),
        speed("engine.peak_power_speed", "engine speed of the greatest power").by(&[one_of(3, PEAKS, CURVE)]),
        speed("engine.red_line", "greatest engine speed that its maker allows"),
        line("engine.stroke", Length::KIND, "of a piston, top to bottom").above(
            0.0,
            10.0,
            "common practice, no source: strokes are shorter than 10 m",
        ),
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
    ],
    findings: &[Finding {
        path: "engine.pistons",
        question: "Do the pistons stay below the speed that they are built for?",
        margin: Margin::AtMost { value: "engine.piston_speed", most: "engine.piston_speed_limit" },
        wanted: "wanted.piston_speed",
        rests_on: &[],
        caution: "",
    }],
};
