//! Which readings a change makes void: choosing a part drops what was measured on it, a sweep what was measured of the line.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict;
use axlewright::base::section::Class;
use axlewright::sheet::{Axis, Chosen, PriceList, Requirement, Sheet, choose};
use axlewright_tests::assessed::read;
use std::collections::BTreeSet;

/// One part that writes these lines.
fn list(lines: &[(&str, &str)]) -> PriceList {
    let head: String = lines.iter().map(|(path, _)| format!(",{path}")).collect();
    let row: String = lines.iter().map(|(_, text)| format!(",{text}")).collect();
    PriceList::from_csv(&format!("part,kind,cost{head}\nnew,part,10{row}\n")).unwrap()
}

fn chosen(sheet: &Sheet, lines: &[(&str, &str)], requirements: &[&str]) -> axlewright::Result<Chosen> {
    let requirements: Vec<Requirement> =
        requirements.iter().map(|text| Requirement::parse(text).unwrap()).collect();
    choose(sheet, &list(lines), &requirements, 10, &mut |_| true)
}

fn dropped(sheet: &Sheet, lines: &[(&str, &str)]) -> Vec<&'static str> {
    chosen(sheet, lines, &[]).unwrap().dropped
}

fn swept(sheet: &Sheet, path: &str, text: &str) -> Vec<&'static str> {
    let axis = Axis::texts(path, &[text]).unwrap();
    let mut dropped = sheet.what_if(vec![axis], false, &["vehicle.mass"]).unwrap().dropped().to_vec();
    dropped.sort_unstable();
    dropped
}

/// Every line of the demo sheets that is measured, judged by hand: a reading of the vehicle as a whole, or of a part.
#[test]
fn readings_of_the_demo_sheets_are_those_that_a_shop_takes() {
    let mut readings = BTreeSet::new();
    for name in ["dunlin", "dunlin_measured", "dray", "wagtail"] {
        let sheet = read(name);
        for path in sheet.paths() {
            let class = axlewright::sheet::lines()
                .find(|(_, line, _)| *line == path.split('[').next().unwrap())
                .and_then(|(_, _, line)| line.class);
            let point = path.ends_with(".x") || path.ends_with(".y") || path.ends_with(".z");
            if let Some(Class::Measurement(parts)) = class {
                let path = path.trim_start_matches("front.").trim_start_matches("rear.");
                if !point {
                    readings.insert((path.to_owned(), parts.is_empty()));
                }
            } else {
                assert!(!point, "{path}");
            }
        }
    }
    let of = |part: bool| -> Vec<&str> {
        readings.iter().filter(|(_, whole)| *whole != part).map(|(path, _)| path.as_str()).collect()
    };
    assert_eq!(of(true), ON_A_PART);
    assert_eq!(of(false), ON_THE_VEHICLE);
}

const ON_A_PART: &[&str] = &[
    "anti_roll_bar.motion_ratio",
    "bump_clearance",
    "bump_stop_travel",
    "cap.holding_pressure",
    "cap.opening_pressure",
    "cap.vacuum_opening",
    "damper.motion_ratio",
    "engine.boost_pressure",
    "engine.inlet_temperature",
    "header.air_volume",
    "hose_bump_clearance",
    "hose_droop_clearance",
    "joint_bump_clearance",
    "joint_droop_clearance",
    "leak_test.coolant_volume",
    "leak_test.gas_volume",
    "leak_test.gauge_pressure",
    "leak_test.later_gauge_pressure",
    "leak_test.later_temperature",
    "leak_test.temperature",
    "roll_centre_height",
    "speedometer.effective_radius",
    "spring.droop_length",
    "spring.motion_ratio",
    "spring_base",
    "track",
    "tyre.effective_radius",
    "tyre.pressure",
    "tyre_clearance",
    "vehicle.wheelbase",
];
const ON_THE_VEHICLE: &[&str] = &[
    "coolant.fill_temperature",
    "coolant.hottest",
    "coolant.mean_temperature",
    "coolant.pump_inlet_temperature",
    "coolant.suction_loss",
    "coolant.volume",
    "grip.driven_load",
    "header.air_temperature",
    "leaf.clamped_length",
    "scales.left_front",
    "scales.left_rear",
    "scales.right_front",
    "scales.right_rear",
    "unsprung_mass",
    "vehicle.centre_of_gravity_height",
    "wheel.camber",
    "wheel.toe",
];

#[test]
fn another_part_loses_what_was_measured_on_the_old_one() {
    let sheet = read("dunlin");
    // The droop length is that of the open damper, whichever spring stands on it. The rest describes the old spring.
    let spring = [("front.spring.rate", "600 lbf/in"), ("front.spring.free_length", "310 mm")];
    let old =
        ["solid_length", "wire_diameter", "mean_diameter", "allowed_stress", "active_coils", "minimum_gap"];
    let old = old.map(|line| format!("front.spring.{line}"));
    assert_eq!(dropped(&sheet, &spring), old);
    let damper = [("front.damper.rate", "8 N·s/mm")];
    assert_eq!(
        dropped(&sheet, &damper),
        ["front.spring.droop_length", "front.damper.stroke", "front.bump_stop_travel"]
    );
    let cap = ["cap.rating_tolerance", "cap.opening_pressure", "cap.holding_pressure", "cap.vacuum_opening"];
    assert_eq!(dropped(&sheet, &[("cap.rating", "16 psi gauge")]), cap);
    // A reading that the list gives for the new part counts; those of the old one do not.
    assert_eq!(
        dropped(&sheet, &[("cap.rating", "16 psi gauge"), ("cap.holding_pressure", "14 psi gauge")]),
        ["cap.rating_tolerance", "cap.opening_pressure", "cap.vacuum_opening"]
    );
    // A hose is no cap: its vacuum limit and pressure stand in the same table. The pressure decay test was taken with the old one.
    let hose = dropped(&sheet, &[("cap.weakest_component", "25 psi gauge")]);
    assert!(hose.iter().all(|path| path.starts_with("leak_test.")) && hose.len() == 6, "{hose:?}");
    assert_eq!(
        dropped(&sheet, &[("front.tyre.size", "225/65R16C 112T")]),
        ["front.tyre.rate", "front.tyre.effective_radius"]
    );
    let mut counted = read("dunlin");
    counted.remove("rear.tyre.effective_radius").unwrap();
    counted.set("rear.tyre.rolling_turns", "452 rev/km").unwrap();
    assert_eq!(
        dropped(&counted, &[("rear.tyre.size", "225/65R16C 112T")]),
        ["rear.tyre.rate", "rear.tyre.rolling_turns"]
    );
    // Neither is a wish, a rating or a reading of another part.
    assert_eq!(dropped(&sheet, &[("clutch.capacity", "500 N·m")]), Vec::<&str>::new());
    assert_eq!(dropped(&sheet, &[("front.wanted.frequency_low", "1.1 Hz")]), Vec::<&str>::new());
}

#[test]
fn what_rested_on_a_dropped_reading_is_computed_or_not_known() {
    let sheet = read("dunlin");
    let speed = |sheet: &Sheet| sheet.assess().value("rear.tyre.effective_radius").unwrap().unwrap();
    let mut fitted = sheet.clone();
    fitted.fit(&[("rear.tyre.size", "245/75R16 111T")]).unwrap();
    // 3.05 D / 2 pi of the new marking, D = 16 in + 2 * 0.75 * 245 mm.
    let of_marking = 3.05 * (16.0 * 0.0254 + 2.0 * 0.75 * 0.245) / (2.0 * std::f64::consts::PI);
    assert!((speed(&fitted) - of_marking).abs() < 1e-3 * of_marking, "{} {of_marking}", speed(&fitted));
    assert!((speed(&sheet) - 0.352).abs() < 1e-12);
    // The readings of the tested cap would hold a finding at `tight`; the new cap was never on the tester.
    let verdict = |sheet: &Sheet, path: &str| sheet.assess().answer(path).unwrap().verdict;
    let mut cap = sheet.clone();
    let readings = cap.fit(&[("cap.rating", "16 psi gauge")]).unwrap();
    assert_eq!(
        readings,
        ["cap.rating_tolerance", "cap.opening_pressure", "cap.holding_pressure", "cap.vacuum_opening"]
    );
    for path in ["cap.holds", "cap.opens", "cap.vacuum"] {
        assert_ne!(verdict(&sheet, path), Verdict::NotKnown, "{path}");
        assert_eq!(verdict(&cap, path), Verdict::NotKnown, "{path}");
        let Err(error) =
            chosen(&sheet, &[("cap.rating", "16 psi gauge")], &[&format!("{path}.verdict = tight")])
        else {
            panic!("{path}")
        };
        assert!(error.to_string().contains("cannot be decided: it needs cap."), "{error}");
    }
    // Once it is measured again, nothing is said of it any more.
    assert!(cap.remarks().iter().any(|remark| remark.starts_with("cap.holding_pressure was measured")));
    cap.set("cap.holding_pressure", "15 psi gauge").unwrap();
    assert!(!cap.remarks().iter().any(|remark| remark.starts_with("cap.holding_pressure")));
}

/// A bump stop whose place was measured from the droop of the old damper is still there: without it there would seem to be more travel.
#[test]
fn a_bump_stop_is_not_forgotten_with_the_damper() {
    let sheet = read("dunlin_measured");
    let remaining = |sheet: &Sheet| sheet.assess().value("front.bump_remaining").unwrap();
    assert!(remaining(&sheet).is_some());
    let mut without = sheet.clone();
    without.remove("front.bump_stop_travel").unwrap();
    assert!(remaining(&without).is_some(), "left out, no stop is counted");
    let damper = [("front.damper.open_length", "515 mm"), ("front.damper.closed_length", "405 mm")];
    let mut fitted = sheet.clone();
    assert!(fitted.fit(&damper).unwrap().contains(&"front.bump_stop_travel"));
    let assessed = fitted.assess();
    assert_eq!(assessed.value("front.bump_remaining").unwrap(), None);
    let bump = assessed.answer("front.bump").unwrap();
    assert_eq!(bump.verdict, Verdict::NotKnown);
    assert!(
        assessed.missing_text(bump).contains("front.bump_stop_travel"),
        "{}",
        assessed.missing_text(bump)
    );
    let Err(error) = chosen(&sheet, &damper, &["front.bump_remaining >= 50 mm"]) else { panic!() };
    assert!(error.to_string().contains("it needs front.bump_stop_travel"), "{error}");
    // A saved sheet remembers it, in both forms.
    for text in [fitted.to_toml(), fitted.to_json()] {
        assert!(text.contains("measure_again"), "{text}");
        let read = Sheet::from_text(&text).unwrap();
        assert_eq!((&read, read.remarks()), (&fitted, fitted.remarks()));
        assert_eq!(remaining(&read), None);
    }
    let measured = fitted.to_toml().replace("[front]\n", "[front]\nbump_stop_travel = \"170 mm\"\n");
    let measured = Sheet::from_text(&measured).unwrap();
    let again = |remark: &String| remark.starts_with("front.bump_stop_travel");
    assert!(!measured.remarks().iter().any(again) && remaining(&measured).is_some());
    for (list, why) in [
        (r#"["front.bump_stop"]"#, "there is no such line; did you mean"),
        ("[1]", "expected the path of a line"),
        (r#""front.bump_stop_travel""#, "expected a list of lines"),
    ] {
        let refused = Sheet::from_text(&format!("measure_again = {list}")).unwrap_err().to_string();
        assert!(refused.contains(why), "{refused}");
    }
    fitted.set("front.bump_stop_travel", "none").unwrap();
    assert!(remaining(&fitted).is_some(), "the sheet says that there is none");
}

#[test]
fn a_sweep_loses_what_was_measured_of_its_line_and_nothing_else() {
    let sheet = read("dunlin");
    for (path, text) in [
        ("cap.rating", "16 psi gauge"),
        ("front.spring.rate", "600 lbf/in"),
        ("front.damper.stroke", "120 mm"),
        ("scales.left_front", "600 kg"),
        ("front.tyre.rate", "230 N/mm"),
        ("coolant.hottest", "220 °F"),
        ("rear.spring.motion_ratio", "0.8"),
        ("clutch.capacity", "500 N·m"),
    ] {
        assert_eq!(swept(&sheet, path, text), Vec::<&str>::new(), "{path}");
    }
    let with = |path: &str, text: &str| {
        let mut sheet = read("dunlin");
        sheet.set(path, text).unwrap();
        sheet
    };
    let place = with("use.station_pressure", "84 kPa abs");
    assert_eq!(swept(&place, "use.altitude", "2000 m"), ["use.station_pressure"]);
    let sum = with("front.axle_mass", "1210 kg");
    assert_eq!(swept(&sum, "scales.left_front", "600 kg"), ["front.axle_mass"]);
    assert_eq!(swept(&sum, "scales.left_rear", "600 kg"), ["front.axle_mass"]);
    // Behind a reading that goes stands another: the sprung mass was weighed by way of the axle.
    let mut both = sum;
    both.set("front.sprung_mass", "550 kg").unwrap();
    assert_eq!(swept(&both, "scales.left_front", "600 kg"), ["front.axle_mass", "front.sprung_mass"]);
    let jacked = with("front.wheel_rate", "36 N/mm");
    assert_eq!(swept(&jacked, "front.spring.rate", "600 lbf/in"), ["front.wheel_rate"]);
    assert_eq!(swept(&jacked, "front.spring.solid_length", "160 mm"), Vec::<&str>::new());
    let built = with("coolant.header_pressure", "14 psi gauge");
    assert_eq!(swept(&built, "cap.rating", "16 psi gauge"), ["coolant.header_pressure"]);
    // A marking names another tyre: counted turns do not follow from it, and are of the old one.
    let mut counted = with("rear.tyre.rolling_turns", "452 rev/km");
    counted.remove("rear.tyre.effective_radius").unwrap();
    assert_eq!(
        swept(&counted, "rear.tyre.size", "225/65R16C 112T"),
        ["rear.tyre.rate", "rear.tyre.rolling_turns"]
    );
    // A reading that is swept itself is not dropped.
    assert_eq!(swept(&place, "use.station_pressure", "80 kPa abs"), Vec::<&str>::new());
}

#[test]
fn a_swept_row_computes_what_it_dropped() {
    let mut sheet = read("dunlin");
    sheet.set("use.station_pressure", "84 kPa abs").unwrap();
    let axis = Axis::texts("use.altitude", &["0 m", "2000 m"]).unwrap();
    let table = sheet.what_if(vec![axis], false, &["use.station_pressure"]).unwrap().whole().unwrap();
    let pressures = table.numbers("use.station_pressure").unwrap();
    // US Standard Atmosphere 1976, table I: 101325 Pa and, at 2000 m, 79501 Pa.
    assert!((pressures[0] - 101_325.0).abs() < 1.0 && (pressures[1] - 79_501.0).abs() < 2.0, "{pressures:?}");
}

/// Two tyres of the same price, one as large as the old one was by its counted radius, one a tenth smaller.
const TYRES: &str =
    "part,kind,cost,rear.tyre.size\nlarge,tyre,100,245/75R16 111T\nsmall,tyre,90,195/65R15 95T\n";

#[test]
fn a_chosen_tyre_moves_the_speedometer() {
    let sheet = read("dunlin");
    let reading = |sheet: &Sheet| *sheet.assess().answer("speedometer.reading").unwrap();
    let small = sheet.clone();
    let mut small = small;
    assert_eq!(
        small.fit(&[("rear.tyre.size", "195/65R15 95T")]).unwrap(),
        ["rear.tyre.rate", "rear.tyre.effective_radius"]
    );
    // On the old reading, 352 mm, it would read as before; on the new radius it reads more by the quotient of both.
    let new = 3.05 * (15.0 * 0.0254 + 2.0 * 0.65 * 0.195) / (2.0 * std::f64::consts::PI);
    let (before, after) = (reading(&sheet).value, reading(&small).value);
    assert!(((1.0 + after) / (1.0 + before) - 0.352 / new).abs() < 1e-9, "{before} {after}");
    // The other way round a speedometer that was right for the small tyre reads too little on the large one.
    let mut right = sheet;
    right.set("speedometer.tyre_size", "195/65R15").unwrap();
    right.fit(&[("rear.tyre.size", "245/75R16 111T")]).unwrap();
    assert_eq!(reading(&right).verdict, Verdict::Short);
    assert!(reading(&right).value < -0.1, "{}", reading(&right).value);
}

#[test]
fn no_finding_worse_keeps_what_is_good() {
    let mut sheet = read("dunlin");
    sheet.set("speedometer.tyre_size", "195/65R15").unwrap();
    sheet.fit(&[("rear.tyre.size", "195/65R15 95T")]).unwrap();
    sheet.set("wanted.speedometer", "0").unwrap();
    assert_eq!(sheet.assess().answer("speedometer.reading").unwrap().verdict, Verdict::Meets);
    let list = PriceList::from_csv(TYRES).unwrap();
    let choose =
        |requirements: &[Requirement]| choose(&sheet, &list, requirements, 10, &mut |_| true).unwrap();
    let free = choose(&[]);
    assert_eq!(free.feasible.len(), 2);
    let large = free.feasible.iter().find(|choice| choice.parts == [0]).unwrap();
    assert!(large.worse.iter().any(|one| one.text() == "speedometer.reading: short, meets now"), "{large:?}");
    // The part that the sheet has already makes nothing worse.
    let small = free.feasible.iter().find(|choice| choice.parts == [1]).unwrap();
    assert_eq!(small.worse, []);
    for text in ["no finding worse", " no  finding worse "] {
        let held = choose(&[Requirement::parse(text).unwrap()]);
        assert_eq!(held.feasible.iter().map(|choice| &choice.parts).collect::<Vec<_>>(), [&[1]]);
        assert!(held.rejected[0].1.contains("now; required: no finding worse"), "{:?}", held.rejected);
    }
    assert!(
        free.to_json(&list).contains(r#"{"finding":"speedometer.reading","now":"meets","then":"short"}"#)
    );
    // A finding that is lost with a reading is worse, too: the new cap was never on the tester.
    let cap = [("cap.rating", "16 psi gauge")];
    let untested = chosen(&read("dunlin"), &cap, &[]).unwrap();
    let lost: Vec<&str> = untested.front[0].worse.iter().map(|one| one.finding).collect();
    assert!(lost.contains(&"cap.vacuum"), "{lost:?}");
    let refused = chosen(&read("dunlin"), &cap, &["no finding worse"]).unwrap_err().to_string();
    assert!(refused.contains("not known, meets now; required: no finding worse"), "{refused}");
    assert!(refused.contains("It needs cap.") && refused.contains("require `no finding short`"), "{refused}");
    // A finding that gets lost is told, and excludes nothing.
    let held = chosen(&read("dunlin"), &cap, &["no finding short"]).unwrap();
    assert!(held.front[0].worse.iter().any(|one| one.finding == "cap.vacuum"));
}

#[test]
fn lines_refuse_what_no_vehicle_has() {
    let refused = |path: &str, text: &str, part: &str| {
        let error = read("dunlin").set(path, text).unwrap_err().to_string();
        assert!(error.contains(part), "{error}");
    };
    for text in ["410", "39.1", "0.05"] {
        refused("final_drive.ratio", text, "plausibility limit: gears and axles lie between 0.1 and 30");
    }
    for text in ["650 mph", "1000 km/h", "290 m/s"] {
        refused("use.cruise_speed", text, "no road vehicle is faster than 200 m/s");
        refused("use.peak_speed", text, "no road vehicle is faster than 200 m/s");
    }
    for text in ["1.61", "2", "60"] {
        refused("front.spring.motion_ratio", text, "above 1.5 it is a percentage or an inverted ratio");
    }
    for text in ["1:1", "1 to 1", "3.0:1"] {
        refused("coolant.volume_share", text, "writes two parts, not the share of one in the whole");
        refused("gearbox.efficiency", text, "writes two parts");
    }
    let mut sheet = read("dunlin");
    for (path, text) in [
        ("final_drive.ratio", "4.10:1"),
        ("final_drive.ratio", "22"),
        ("use.peak_speed", "250 mph"),
        ("front.spring.motion_ratio", "1.2"),
        ("coolant.volume_share", "50 %"),
        ("coolant.volume_share", "1/2"),
        ("transfer_case.low_ratio", "1:1"),
    ] {
        sheet.set(path, text).unwrap_or_else(|error| panic!("{path} = {text}: {error}"));
    }
}

#[test]
fn a_wanted_margin_without_limit_is_null_and_says_what_to_write() {
    let sheet = read("dunlin");
    let json: serde_json::Value = serde_json::from_str(&sheet.assess().to_json()).unwrap();
    let findings = json["findings"].as_array().unwrap();
    let of = |path: &str| findings.iter().find(|finding| finding["finding"] == path).unwrap();
    let bump = of("front.bump");
    assert!(bump["wanted"].is_null(), "{bump}");
    let write = bump["write"].as_array().unwrap();
    assert!(
        write.len() == 1 && write[0].as_str().unwrap().starts_with("write joint_bump_clearance"),
        "{bump}"
    );
    let frequency = of("front.frequency");
    assert!(frequency["wanted"].is_number() && frequency["write"].is_null(), "{frequency}");
    for finding in findings {
        let open = finding["wanted"].is_null();
        let told = finding["write"].as_array().is_some_and(|write| !write.is_empty());
        assert!(open || !told, "{finding}");
        assert!(told || !open || finding["margin"].is_null(), "{finding}");
    }
    // As text, and the control: told of, it has a limit again.
    let text = axlewright::base::text::print(
        f64::INFINITY,
        axlewright::units::Kind::named("Length").unwrap(),
        axlewright::base::text::System::Us,
    );
    assert_eq!(text, "no limit");
    let mut told = sheet;
    for line in ["joint_bump_clearance", "hose_bump_clearance", "tyre_clearance"] {
        told.set(&format!("front.{line}"), "none").unwrap();
    }
    let told = told.assess();
    let bump = told.answer("front.bump").unwrap();
    assert!(bump.wanted.is_finite() && told.to_write(bump).is_empty());
}
