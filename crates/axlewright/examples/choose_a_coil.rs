//! Which coil of a catalogue suits the front of a van: ride frequency, sag and remaining bump travel of each.
//!
//!     cargo run --example choose_a_coil
//!
//! The figures are invented.

use axlewright::spring;
use axlewright::units::*;
use axlewright::{Error, Result};

fn main() -> Result<()> {
    let sprung = Mass::of::<kg>(545.0); // one front corner, from the scales
    let motion_ratio = Ratio::of::<one>(0.62);
    let angle = Angle::of::<deg>(0.0); // the ratio was measured along the spring
    let load = Force::of::<N>(sprung.in_::<kg>() * STANDARD_GRAVITY);
    let wanted = Frequency::of::<Hz>(1.1)..Frequency::of::<Hz>(1.4);

    println!("{:>10}  {:>12}  {:>9}  {:>9}", "coil", "wheel rate", "frequency", "sag");
    for coil in [300.0, 350.0, 400.0, 450.0, 500.0, 550.0].map(LinearStiffness::of::<lbf_in>) {
        let rate = spring::wheel_rate(coil, motion_ratio, angle)?;
        let frequency = spring::natural_frequency(rate, sprung)?;
        let sag = spring::static_deflection(load, rate)?;
        let mark = if wanted.contains(&frequency) { "  suits" } else { "" };
        println!("{coil:>#10.0}  {rate:>12.1}  {frequency:>9.2}  {sag:>9.0}{mark}");
    }

    // An inverted ratio is refused, with the reason.
    let refused = spring::wheel_rate(LinearStiffness::of::<lbf_in>(450.0), Ratio::of::<one>(1.61), angle);
    assert!(matches!(refused, Err(Error::OutOfRange { .. })));
    println!("\n{}", refused.err().map_or(String::new(), |error| error.to_string()));
    Ok(())
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_runs() {
        super::main().unwrap();
    }
}
