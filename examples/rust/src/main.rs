//! The Dunlin's questions, asked by another crate that imports the core.
//!
//! The Dunlin is an old forward-control van that Tern Lane Fabrication turns into a tow-capable work van. All figures are
//! invented. With `--bits` it prints the bits of each answer, so that a test can hold them against the other two surfaces.

use axlewright::base::text::{System, print};
use axlewright::cooling::Coolant;
use axlewright::driveline::{self, TorquePath};
use axlewright::engine::TorqueCurve;
use axlewright::tyre::Tyre;
use axlewright::units::*;
use axlewright::{Model, Result, Value, Verdict, mass, spring};

const COOLANT: &str = include_str!("../../sheets/dunlin_coolant.toml");
const TORQUE_PATH: &str = include_str!("../../sheets/dunlin_torque_path.toml");
const TORQUE_CURVE: &str = include_str!("../../sheets/dunlin_torque_curve.toml");

fn q<Q: Quantity>(text: &str) -> Result<Q> {
    Value::parse(text).map(|value| value.quantity)
}

fn us<Q: Quantity>(quantity: Q) -> String {
    print(quantity.si(), Q::KIND, System::Us)
}

/// One answer: what was asked, the answer in words, the function, its bits.
struct Answer(&'static str, String, &'static str, f64);

fn answers() -> Result<Vec<Answer>> {
    let mut answers = Vec::new();
    let mut say = |question, words, function, value| answers.push(Answer(question, words, function, value));

    let rate = spring::wheel_rate(q("300 lbf/in")?, q("0.62")?, q("18 deg")?)?;
    let mass = q("545 kg")?;
    let frequency = spring::natural_frequency(rate, mass)?;
    let sag = spring::static_deflection(Force::of::<N>(mass.in_::<kg>() * STANDARD_GRAVITY), rate)?;
    say("Front wheel rate", us(rate), "spring.wheel_rate", rate.si());
    say(
        "Front ride frequency",
        format!("{}; wanted 1.1 to 1.5 Hz", us(frequency)),
        "spring.natural_frequency",
        frequency.si(),
    );
    say("Front sag at the wheel", us(sag), "spring.static_deflection", sag.si());

    let rolling = Tyre::new("225/70R15C 112/110R")?.rolling(q("0 mm")?)?;
    let cruise = driveline::engine_speed(q("65 mph")?, q("0.72")?, q("4.10")?, rolling.rolling_radius)?;
    say(
        "Rolling radius of a 225/70R15C",
        us(rolling.rolling_radius),
        "tyre.rolling_radius",
        rolling.rolling_radius.si(),
    );
    say(
        "Engine speed at 65 mph in sixth",
        format!("{}; wanted at most 2400 rpm", us(cruise)),
        "driveline.engine_speed",
        cruise.si(),
    );

    let model = Coolant::from_text(COOLANT)?;
    let (coolant, untested) = (model.margin()?, model.margin_open()?.cap_open);
    let boils = us(coolant.boiling_temperature);
    say("The coolant boils at", boils, "cooling.boiling_temperature", coolant.boiling_temperature.si());
    let verdict = match Verdict::of_difference(coolant.margin, q("20 delta_degF")?) {
        Verdict::Meets if !untested.is_empty() => Verdict::Tight,
        verdict => verdict,
    };
    let margin = format!("{} ({})", us(coolant.margin), verdict.word());
    say("Margin over the hottest coolant", margin, "cooling.margin", coolant.margin.si());

    let (wheelbase, front, rear) = (q("2650 mm")?, q("1540 mm")?, q("1520 mm")?);
    let on = mass::weight_distribution(
        q("612 kg")?,
        q("598 kg")?,
        q("455 kg")?,
        q("467 kg")?,
        wheelbase,
        front,
        rear,
    )?;
    say(
        "Share of the front axle",
        format!("{:.1} %", on.front_share.in_::<percent>()),
        "mass.front_share",
        on.front_share.si(),
    );
    say(
        "Centre of gravity behind the front axle",
        us(on.behind_front_axle),
        "mass.behind_front_axle",
        on.behind_front_axle.si(),
    );

    let path = TorquePath::from_text(TORQUE_PATH)?;
    let weakest = path.weakest()?;
    let words = format!(
        "{}, margin {:.2} ({}); {} parts not known",
        weakest.part,
        weakest.margin.si(),
        Verdict::of_ratio(weakest.margin, q("1.25")?).word(),
        weakest.not_known
    );
    say("Weakest part of the driveline", words, "driveline.weakest_margin", weakest.margin.si());

    let peaks = TorqueCurve::from_text(TORQUE_CURVE)?.peaks()?;
    say(
        "Peak power",
        format!("{} at {}", us(peaks.peak_power), us(peaks.peak_power_speed)),
        "engine.peak_power",
        peaks.peak_power.si(),
    );
    Ok(answers)
}

fn main() -> Result<()> {
    let bits = std::env::args().any(|argument| argument == "--bits");
    for Answer(question, words, function, value) in answers()? {
        if bits {
            println!("{function} {:016x}", value.to_bits());
        } else {
            println!("{question:<42} {words}");
        }
    }
    if !bits {
        println!(
            "\nHot pressurised coolant scalds and a broken shaft can lock a wheel: local codes and licensed practice decide."
        );
    }
    Ok(())
}
