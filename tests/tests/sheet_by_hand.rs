//! A sheet worked on paper: every number derived below from published formulas, digit by digit, and held against the assessment.
//! The figures of the sheet are invented. Standard gravity is 9.80665 m/s² (3rd CGPM, 1901); 1 rpm = 2π/60 rad/s.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict::{self, Meets, NotKnown, Short, Tight};
use axlewright::sheet::{Assessment, Sheet};

/// Finding, value and margin as printed on paper in coherent SI, and half a unit in their last place.
#[track_caller]
fn is(on: &Assessment, path: &str, value: (f64, f64), margin: (f64, f64), verdict: Verdict) {
    let answer = on.answer(path).unwrap();
    assert!((answer.value - value.0).abs() <= value.1, "{path}: {} {value:?}", answer.value);
    assert!((answer.margin - margin.0).abs() <= margin.1, "{path}: margin {} {margin:?}", answer.margin);
    assert_eq!(answer.verdict, verdict, "{path}");
}

#[test]
fn a_roadster_worked_on_paper() {
    let sheet = Sheet::from_text(include_str!("sheet_by_hand.toml")).unwrap();
    let on = sheet.assess();

    // Statics: masses add up. Front 160 + 150 = 310 kg, rear 170 + 180 = 350 kg, all 660 kg.
    // 310 / 310 = 1, which holds but is below the 1.05 that is assumed; 400 / 350 = 1.142857; 700 / 660 = 1.060606.
    is(&on, "front.load", (310.0, 1e-9), (1.0, 1e-12), Tight);
    is(&on, "rear.load", (350.0, 1e-9), (1.142_857, 5e-7), Meets);
    is(&on, "vehicle.load", (660.0, 1e-9), (1.060_606, 5e-7), Meets);
    // The heavier rear wheel has 180 kg on a tyre for 170: 170 / 180 = 0.944444.
    is(&on, "rear.tyre_load", (180.0, 1e-9), (0.944_444, 5e-7), Short);
    // Diagonal: right front and left rear over all, (150 + 170) / 660 = 0.484848, below 0.49 by 0.005152.
    is(&on, "vehicle.diagonal", (0.484_848, 5e-7), (-0.005_152, 5e-7), Short);

    // One front wheel carries (310 - 60) / 2 = 125 kg. The spring stands upright on its mount: r = 0.8 cos 0 = 0.8.
    // Virtual work: F = m g / r = 125 * 9.80665 / 0.8 = 1225.83125 / 0.8 = 1532.289063 N.
    // Hooke: x = F / k = 1532.289063 / 20000 = 0.0766145 m. L = 0.25 - 0.0766145 = 0.1733855 m.
    // Sag z = (L_d - L) / r = (0.245 - 0.1733855) / 0.8 = 0.0716145 / 0.8 = 0.0895181 m.
    // The lighter wheel carries 5 kg less than the mean: 5 * 9.80665 / 12800 = 0.0038307 m less; 0.0895180 - 0.0038307 = 0.0856873 m.
    is(&on, "front.droop", (0.085_687_3, 5e-8), (0.085_687_3, 5e-8), Meets);
    // Bump ends with the coils, (L - L_c - s) / r = (0.1733855 - 0.13) / 0.8 = 0.0542319 m, or with the damper,
    // h / r - z = 0.1 / 0.8 - 0.0895181 = 0.0354819 m: the damper, and below the 60 mm that are assumed.
    // The heavier wheel stands 0.0038307 m further in bump: 0.0316512 m.
    is(&on, "front.bump", (0.031_651_2, 5e-8), (0.031_651_2, 5e-8), Tight);
    // With the damper closed the spring is L_d - (h / r) r = 0.245 - 0.1 = 0.145 m long, 15 mm above its 0.13.
    is(&on, "front.coil_bind", (0.015, 1e-9), (0.015, 1e-9), Meets);
    // At full droop it is compressed by 0.25 - 0.245 = 5 mm; 3 mm are assumed to be wanted.
    is(&on, "front.captive", (0.005, 1e-9), (0.005, 1e-9), Meets);
    // Rate at the wheel k r² = 20000 * 0.64 = 12800 N/m; f = √(12800 / 125) / 2π = √102.4 / 6.2831853 = 10.1192885 / 6.2831853
    // = 1.6105348 Hz (textbook oscillator), above the upper edge by 0.0105348.
    is(&on, "front.frequency", (1.610_535, 5e-7), (-0.010_535, 5e-7), Short);
    // Damping: 1500 * 0.64 = 960 N·s/m at the wheel; critical 2 √(k m) = 2 √(12800 * 125) = 2 * 1264.911064 = 2529.822128;
    // 960 / 2529.822128 = 0.3794733; in 0.2 to 0.45 with 0.0705267 above.
    is(&on, "front.damping", (0.379_473_3, 5e-8), (0.070_526_7, 5e-8), Meets);
    // Wire: F_max = k (L_0 - L_c - s) = 20000 * 0.12 = 2400 N; index C = 70 / 10 = 7.
    // Wahl (A. M. Wahl, Mechanical Springs, 2nd ed. 1963): (4C - 1) / (4C - 4) + 0.615 / C = 27/24 + 0.0878571 = 1.2128571.
    // τ = K 8 F D / (π d³) = 1.2128571 * 8 * 2400 * 0.07 / (π 1e-6) = 1.2128571 * 1344 / 3.1415927e-6 = 1630.08 / 3.1415927e-6
    // = 518.8706 MPa; 800 / 518.8706 = 1.541810.
    is(&on, "front.spring_strength", (518.870_6e6, 500.0), (1.541_810, 5e-7), Meets);

    // Engine: mean piston speed 2 s n = 2 * 0.08 * 100 = 16 m/s; 20 - 16 = 4.
    is(&on, "engine.pistons", (16.0, 1e-9), (4.0, 1e-9), Meets);
    // Clutch: 165 / 150 = 1.1, below the 1.2 that is assumed.
    is(&on, "clutch.holds", (150.0, 1e-9), (1.1, 1e-12), Tight);
    // Gearbox, at its input and continuous: 220 / 150 = 1.466667.
    is(&on, "gearbox.strength", (150.0, 1e-9), (1.466_667, 5e-7), Meets);
    // Axle, at its output and continuous: 150 * 3.5 * 0.96 * 4 * 0.95 = 504 * 3.8 = 1915.2 N·m; 1500 / 1915.2 = 0.783208.
    is(&on, "final_drive.strength", (1915.2, 1e-9), (0.783_208, 5e-7), Short);
    // Half shaft, yield: a dropped clutch gives 2 * 165 = 330 N·m; 330 * 3.5 * 0.96 * 4 * 0.95 = 1108.8 * 3.8 = 4213.44, half of
    // it behind an open differential: 2106.72 N·m; 2500 / 2106.72 = 1.186679, below 1.25.
    is(&on, "half_shaft.strength", (2106.72, 1e-9), (1.186_679, 5e-7), Tight);
    // Nothing is said of a propeller shaft.
    assert_eq!(on.answer("propeller_shaft.strength").unwrap().verdict, NotKnown);
    // Speed: v / r i = (100 / 3.6) / 0.29 * 1 * 4 = 27.7777778 / 0.29 * 4 = 383.1417625 rad/s = 3658.734 rpm; of 3500 rpm
    // = 366.5191429 rad/s that is 16.6226196 rad/s too many.
    is(&on, "driveline.cruise", (383.141_762, 5e-7), (-16.622_620, 1e-6), Short);

    // Cap: it opens at 104 + 2 = 106 kPa at most, and has to by 100 + 5 = 105: short by 1 kPa. The weakest part bears 110: 4 remain.
    is(&on, "cap.opens", (106e3, 1e-6), (-1e3, 1e-6), Short);
    is(&on, "cap.weakest", (106e3, 1e-6), (4e3, 1e-6), Meets);
    // What it holds was not read.
    let holds = on.answer("cap.holds").unwrap();
    let (line, why) = on.missing(holds).refused.remove(0);
    assert_eq!((holds.verdict, line), (NotKnown, "cap.holds_at_least"));
    assert!(why.contains("write cap.holding_pressure"), "{why}");
    assert!(holds.is_safety() && holds.severity() == 1);
    assert_eq!(on.severity(), 2);

    // What was assumed, and nothing that was written.
    let assumed: Vec<&str> = on.assumed().iter().map(|one| one.path).collect();
    for path in
        ["wanted.load", "wanted.counted_bump", "wanted.counted_droop", "wanted.strength", "wanted.clutch"]
    {
        assert!(assumed.contains(&path), "{path}");
    }
    assert!(!assumed.iter().any(|path| matches!(sheet.get(path), Ok(Some(_)))));
}
