//! The measured Dunlin once it is right: every line that is asked is written, and every finding meets with all tolerances counted against it.
//! A sheet that never says `meets` would be of no use.

use axlewright::Verdict;
use axlewright_tests::assessed::demo;

/// What the measured Dunlin lacks, each with the value that was there before; nothing where the line was not written.
/// All figures are invented; the geometry was found by search.
const MENDED: &[(&str, &str, &str)] = &[
    ("speedometer.tyre_size", "235/70R16", "205/75R16"),
    // Lines that the demo leaves open.
    ("rear.spring.guide", "rod_or_sleeve", ""),
    ("rear.spring.wire_diameter", "16 mm", ""),
    ("rear.spring.mean_diameter", "100 mm", ""),
    ("rear.spring.allowed_stress", "1150 MPa", ""),
    ("rear.damper.rate_softest", "2 N·s/mm", ""),
    ("rear.damper.rate_firmest", "8 N·s/mm", ""),
    ("grip.strength_coefficient", "0.8", ""),
    ("grip.pull_coefficient", "0.8", ""),
    ("front.tyre.load_sensitivity", "0.02", ""),
    ("front.tyre.sensitivity_load", "6 kN", ""),
    ("rear.tyre.load_sensitivity", "0.02", ""),
    ("rear.tyre.sensitivity_load", "6 kN", ""),
    ("clutch.shock_factor", "1.6", ""),
    ("clutch.high_capacity", "560 N·m", ""),
    ("engine.band_share", "0.9", ""),
    ("wanted.crawl_speed", "7 km/h", ""),
    ("wanted.ride_acceleration", "1.8 m/s2", ""),
    ("coolant.pump_inlet_temperature", "95 °C", ""),
    ("coolant.suction_loss", "3 kPa", ""),
    // Parts that were too weak, or the wrong ones.
    ("gearbox.torque_rating", "520 N·m", "400 N·m"),
    ("propeller_shaft.torque_rating", "5500 N·m", "2000 N·m"),
    ("final_drive.ratio", "3.73", "4.10"),
    ("half_shaft.torque_rating", "22000 N·m", "3600 N·m"),
    ("cap.holding_pressure", "15 psi gauge", "13 psi gauge"),
    ("header.air_volume", "3 L", "1.2 L"),
    ("leak_test.later_gauge_pressure", "13.9 psi gauge", "13.2 psi gauge"),
    ("leak_test.allowed_loss", "1 psi", "0.5 psi"),
    // Setting up, and measuring more closely.
    ("front.tie_rod.inner.y", "344 mm", "355 mm"),
    ("front.tie_rod.inner.z", "292 mm", "300 mm"),
    ("front.anti_roll_bar.rate", "200 N/mm +/- 5 %", "120 N/mm +/- 10 %"),
    ("front.spring.rate", "550 lbf/in +/- 1 %", "550 lbf/in +/- 3 %"),
    ("rear.spring.rate", "318 lbf/in +/- 1 %", "330 lbf/in +/- 3 %"),
    ("rear.damper.open_length", "562 mm", "570 mm"),
    ("rear.bump_stop_compression", "2 mm", "15 mm"),
    ("front.unsprung_mass", "110 kg +/- 3 kg", "110 kg +/- 10 kg"),
    ("vehicle.centre_of_gravity_height", "660 mm +/- 10 mm", "760 mm +/- 20 mm"),
    ("rear.lower_links.body.z", "266 mm", "310 mm"),
    ("rear.upper_links.body.z", "440 mm", "445 mm"),
    ("rear.upper_links.body.x", "-2220 mm", "-2200 mm"),
];

/// Questions that this vehicle does not raise.
const DO_NOT_APPLY: [&str; 6] =
    ["rear.toggle", "front.bind", "front.sideways", "front.pinion", "front.wind_up", "rear.wind_up"];

fn lines(back: &str) -> Vec<(&'static str, &'static str)> {
    MENDED
        .iter()
        .filter_map(|(path, mended, before)| match *path == back {
            true => Some((*path, *before)).filter(|(_, before)| !before.is_empty()),
            false => Some((*path, *mended)),
        })
        .collect()
}

#[test]
fn every_finding_of_a_dunlin_that_is_right_meets() {
    let assessment = demo("dunlin_measured", &lines("")).assess();
    let others = assessment.answers().iter().filter(|answer| answer.verdict != Verdict::Meets);
    let others: Vec<_> = others.map(|answer| (answer.path, answer.verdict)).collect();
    assert_eq!(others, DO_NOT_APPLY.map(|path| (path, Verdict::DoesNotApply)));
    assert_eq!(assessment.answers().len(), 71 + DO_NOT_APPLY.len());
    assert!(assessment.contradictions().is_empty());
}

#[test]
fn each_fault_alone_is_found() {
    let missed: Vec<&str> = MENDED
        .iter()
        .map(|(path, ..)| *path)
        .filter(|path| {
            let answers = demo("dunlin_measured", &lines(path)).assess();
            answers
                .answers()
                .iter()
                .all(|answer| matches!(answer.verdict, Verdict::Meets | Verdict::DoesNotApply))
        })
        .collect();
    assert_eq!(missed, [""; 0], "written back alone, these lines still meet");
}
