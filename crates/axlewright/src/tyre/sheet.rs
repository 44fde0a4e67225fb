use super::Tyre;
use crate::Result;
use crate::base::section::{Finding, Line, Margin, Section, line, marking, own, part};
use crate::units::{Length, LinearStiffness, Mass, Quantity};

fn decode(text: &str) -> Result<Vec<f64>> {
    let size = Tyre::new(text)?.dimensions()?;
    Ok(vec![size.free_diameter.si(), size.section_width.si()])
}

fn half(of: &[f64]) -> Result<f64> {
    Ok(of[0] / 2.0)
}

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        10.0,
        "common practice, no source: tyres are smaller than 10 m",
    )
}

/// What the sheet says of tyres and wheels.
pub const SHEET: Section = Section {
    lines: &[
        marking("axle.tyre.size", decode, "size marking on the tyre's wall, such as 235/70R16"),
        length("axle.tyre.free_diameter", "of the tyre, inflated and not loaded")
            .by(&[part(0, &["axle.tyre.size"])]),
        length("axle.tyre.section_width", "of the tyre").by(&[part(1, &["axle.tyre.size"])]),
        length("axle.tyre.free_radius", "of the tyre, inflated and not loaded").by(&[own(
            "r_0 = D / 2",
            "definition: half the diameter",
            half,
            &["axle.tyre.free_diameter"],
        )]),
        length("axle.tyre.loaded_radius", "from the wheel's centre to the ground, loaded: force acts on it"),
        length("axle.tyre.effective_radius", "distance that a turn rolls, over a turn: speed goes by it"),
        line("axle.tyre.rate", LinearStiffness::KIND, "vertical rate of the tyre at its pressure and load")
            .within(1.0, 1e9, "common practice, no source: rates lie between 1 N/m and 1 GN/m"),
        line(
            "axle.tyre.load_capacity",
            Mass::KIND,
            "load that one tyre carries at its pressure, as its load index or its maker says",
        )
        .above(0.0, 1e6, "common practice, no source: no tyre carries 1000 t"),
    ],
    findings: &[Finding {
        path: "axle.tyre_load",
        question: "Does the tyre carry the heavier wheel of its axle?",
        margin: Margin::Ratio { capacity: "axle.tyre.load_capacity", demand: "axle.heavier_wheel" },
        wanted: "wanted.load",
        rests_on: &[],
        caution: "An overloaded tyre overheats and bursts; load and pressure tables of its maker and local codes come first.",
    }],
};
