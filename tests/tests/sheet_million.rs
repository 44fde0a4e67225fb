//! A million rows of a sweep, each beside the single functions on its own four numbers: the same bits.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use axlewright::sheet::{Axis, Sheet};
use axlewright::units::*;
use axlewright::{air, driveline, fluid, spring};

const ROWS: usize = 1_000_000;

fn spread(low: f64, high: f64, step: usize) -> Vec<f64> {
    (0..ROWS).map(|row| low + (high - low) * ((row * step % ROWS) as f64 / ROWS as f64)).collect()
}

#[test]
fn a_million_rows_equal_the_single_functions_bit_for_bit() {
    let sheet = Sheet::from_text(include_str!("../../examples/sheets/dunlin.toml")).unwrap();
    let known = sheet.assess();
    let value = |path: &str| known.value(path).unwrap().unwrap();
    let (rates, ratios) = (spread(7e4, 1.2e5, 7919), spread(0.5, 0.7, 104_729));
    // The cap of the van keeps 89.6 kPa by a gauge that may read 3.4 kPa too much.
    let (axles, caps) = (spread(3.0, 5.0, 1_299_709), spread(5e4, 8.6e4, 15_485_863));
    let axes = [
        ("front.spring.rate", &rates),
        ("front.spring.motion_ratio", &ratios),
        ("final_drive.ratio", &axles),
        ("coolant.header_pressure", &caps),
    ];
    let axes = axes.iter().map(|(path, values)| Axis::numbers(path, values).unwrap()).collect();
    let outputs = [
        "front.wheel_rate",
        "front.ride_rate",
        "front.natural_frequency",
        "front.spring.compression",
        "front.damping_ratio",
        "driveline.cruise_engine_speed",
        "cap.absolute_pressure",
        "coolant.water.boiling",
    ];
    let table = sheet.what_if(axes, true, &outputs).unwrap().whole().unwrap();
    assert_eq!((table.rows(), table.refused().len()), (ROWS, 0));
    let columns = outputs.map(|path| table.numbers(path).unwrap());

    let mass = Mass::from_si(value("front.sprung_mass"));
    let gradient = RatioPerLength::from_si(value("front.spring.ratio_gradient"));
    let (tyre, damper) =
        (LinearStiffness::from_si(value("front.tyre.rate")), Damping::from_si(value("front.damper.rate")));
    let (cruise, top) =
        (Velocity::from_si(value("use.cruise_speed")), Ratio::from_si(value("gearbox.top_ratio")));
    let radius = Length::from_si(value("driveline.effective_radius"));
    let station = AbsolutePressure::from_si(value("use.station_pressure"));
    for row in 0..ROWS {
        let (rate, ratio) = (LinearStiffness::from_si(rates[row]), Ratio::from_si(ratios[row]));
        let force = Force::from_si(mass.si() * STANDARD_GRAVITY / ratio.si());
        let wheel = spring::wheel_tangent_rate(rate, ratio, force, gradient).unwrap();
        let at_wheel = spring::wheel_damping(damper, ratio).unwrap();
        let cap = air::absolute_pressure(GaugePressure::from_si(caps[row]), station).unwrap();
        let axle = Ratio::from_si(axles[row]);
        let single = [
            wheel.si(),
            spring::ride_rate(wheel, tyre).unwrap().si(),
            spring::natural_frequency(wheel, mass).unwrap().si(),
            spring::static_deflection(force, rate).unwrap().si(),
            spring::damping_ratio(at_wheel, wheel, mass).unwrap().si(),
            driveline::engine_speed(cruise, top, axle, radius).unwrap().si(),
            cap.si(),
            fluid::water_boiling_temperature(cap).unwrap().si(),
        ];
        for ((column, single), path) in columns.iter().zip(single).zip(outputs) {
            assert_eq!(column[row].to_bits(), single.to_bits(), "{path} in row {row}");
        }
    }
}
