//! Engine speed at a cruise for each axle ratio and tyre that a yard has, and the crawl in first gear.
//!
//!     cargo run --example gear_a_cruise
//!
//! The figures are invented.

use axlewright::units::*;
use axlewright::{Result, driveline, tyre};

fn main() -> Result<()> {
    let cruise = Velocity::of::<mph>(65.0);
    let (first, top) = (Ratio::of::<one>(4.02), Ratio::of::<one>(0.72));
    let idle = AngularVelocity::of::<rpm>(750.0);
    let axles = [3.55, 3.73, 4.10, 4.56].map(Ratio::of::<one>);
    // Free diameter and loaded radius of two tyres, as measured.
    let tyres = [("225/70R15", 696.0, 323.0), ("235/85R16", 806.0, 372.0)];

    for (name, free, loaded) in tyres {
        let radius = tyre::rolling_radius(Length::of::<mm>(free), Length::of::<mm>(loaded))?;
        println!("{name}: rolling radius {radius:.0}");
        for axle in axles {
            let speed = driveline::engine_speed(cruise, top, axle, radius)?;
            let crawl = driveline::road_speed(idle, first, axle, radius)?;
            println!("  {:.2}: {speed:.0} at {cruise:#.0}, {crawl:#.1} at idle in first", axle.in_::<one>());
        }
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
