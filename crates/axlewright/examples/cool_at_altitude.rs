//! Boiling margin of a coolant over caps and altitudes, as a table; the model is read from text.
//!
//!     cargo run --features serde --example cool_at_altitude
//!
//! The figures are invented. Hot pressurised coolant scalds: never open a hot system.

use axlewright::cooling::Coolant;
use axlewright::units::*;
use axlewright::{Model, Result};

const COOLANT: &str = r#"
liquid = "ethylene_glycol"
volume_share = "50 %"
concentrate = "95 %"
cap = "13 psi gauge"
cap_holds = "12 psi gauge"
altitude = "5000 ft"
hottest = "108 °C"
"#;

fn main() -> Result<()> {
    let coolant = Coolant::from_text(COOLANT)?;
    let on = coolant.margin()?;
    println!("boils at {:#.0}, margin {:#.0}", on.boiling_temperature, on.margin);

    let caps = [7.0, 13.0, 16.0].map(GaugePressure::of::<psi_gauge>);
    let altitudes = [0.0, 5000.0, 10000.0].map(Length::of::<ft>);
    let table = coolant.margin_table(&caps, &altitudes, &[Ratio::of::<percent>(50.0)])?;
    for (row, margin) in table.numbers("margin").unwrap_or_default().iter().enumerate() {
        let at = |column: &str| table.numbers(column).and_then(|of| of.get(row)).copied().unwrap_or(f64::NAN);
        let (cap, altitude) = (GaugePressure::from_si(at("cap")), Length::from_si(at("altitude")));
        println!("{:>4.0} psi at {:>6.0} ft: {margin:.0} K", cap.in_::<psi_gauge>(), altitude.in_::<ft>());
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_runs() {
        super::main().unwrap();
    }
}
