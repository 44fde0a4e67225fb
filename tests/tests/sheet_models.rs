//! Models that a sheet holds give the numbers of its findings, to the last bit.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::cooling::{CapTest, Coolant, PressureDecay};
use axlewright::driveline::TorquePath;
use axlewright::engine::TorqueCurve;
use axlewright::ride::QuarterCar;
use axlewright::sheet::{Assessment, Sheet};
use axlewright::spring::Corner;
use axlewright::suspension::{DoubleWishbone, LeafAxle, LiveAxle, Strut};
use axlewright::units::{Angle, Length, Quantity, Ratio};
use axlewright::{Model, Verdict};
use axlewright_tests::assessed::{demo, text, value};
use axlewright_tests::axles::Held;
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::exact;

/// True if both numbers are equal, or both are not known.
#[track_caller]
fn same(of: &str, sheet: f64, model: f64) {
    let same = sheet.to_bits() == model.to_bits() || sheet.is_nan() && model.is_nan();
    assert!(same, "{of}: {sheet} on the sheet, {model} of the model");
}

#[track_caller]
fn answers(on: &Assessment, finding: &str, margin: f64, verdict: Verdict) {
    let answer = on.answer(finding).unwrap();
    same(finding, answer.margin, margin);
    // Lines that contradict each other hold a verdict of the sheet down.
    if on.doubts(answer).is_empty() {
        assert_eq!(answer.verdict, verdict, "{finding}");
    }
}

/// The verdict of a model's margin by what the sheet wants of it.
#[track_caller]
fn graded<Q: Quantity>(on: &Assessment, finding: &str, margin: Q) {
    let wanted = Q::from_si(on.answer(finding).unwrap().wanted);
    answers(on, finding, margin.si(), Verdict::of_difference(margin, wanted));
}

/// Holds every model that the sheet has against the findings of the sheet; how many there are.
fn hold(sheet: &Sheet) -> usize {
    // The sheet counts tolerances; the model has the values alone.
    let sheet = &Sheet::from_text(&exact(&sheet.to_toml())).unwrap();
    let on = sheet.assess();
    let assessed = &on;
    let mut held = 0;
    let coolant = sheet.model("coolant").map(|model| model.read::<Coolant>());
    if let Ok(Err(refused)) = &coolant {
        // The model refuses what the sheet doubts or does not know.
        let answer = on.answer("coolant.boiling").unwrap();
        assert!(answer.margin.is_nan() || !on.doubts(answer).is_empty(), "{refused}");
    }
    if let Ok(Ok(coolant)) = coolant {
        let found = coolant.margin().unwrap();
        same("coolant.mass_fraction", value(&on, "coolant.mass_fraction"), found.mass_fraction.si());
        same("cap.absolute_pressure", value(&on, "cap.absolute_pressure"), found.absolute_pressure.si());
        let boils = found.boiling_temperature.si();
        same("coolant.boiling_temperature", value(&on, "coolant.boiling_temperature"), boils);
        graded(&on, "coolant.boiling", found.margin);
        let freezes = coolant.freezing_temperature().unwrap().si();
        same("coolant.freezing_temperature", value(&on, "coolant.freezing_temperature"), freezes);
        held += 1;
    }
    let cap = sheet.model("cap").map(|model| (model.read::<CapTest>(), model));
    if let Ok((Err(refused), _)) = &cap {
        // The model refuses readings that cannot be: none of them clears the cap.
        for path in ["cap.holds", "cap.opens"] {
            assert_ne!(on.answer(path).unwrap().verdict, Verdict::Meets, "{path}: {refused}");
        }
    }
    if let Ok((Ok(read), model)) = cap {
        let other = CapTest::from_text(&model.to_json()).unwrap();
        assert_eq!(format!("{:?}", read.findings()), format!("{:?}", other.findings()));
        let cap = read.findings().unwrap();
        graded(&on, "cap.holds", cap.holding_margin);
        graded(&on, "cap.opens", cap.opening_margin);
        graded(&on, "cap.weakest", cap.component_margin);
        graded(&on, "cap.vacuum", cap.vacuum_margin);
        held += 1;
    }
    if let Ok(model) = sheet.model("leak_test") {
        let test = model.read::<PressureDecay>().unwrap().findings().unwrap();
        same("leak_test.tight_pressure", value(&on, "leak_test.tight_pressure"), test.tight_pressure.si());
        same("leak_test.least_pressure", value(&on, "leak_test.least_pressure"), test.least_pressure.si());
        graded(&on, "leak_test.tight", test.margin);
        held += 1;
    }
    let path = sheet.model("torque_path").map(|model| model.read::<TorquePath>());
    if let Ok(Err(refused)) = &path {
        // A mean of grip above its high bound: the path is refused, and the sheet knows no grip.
        assert!(value(&on, "grip.high_coefficient").is_nan(), "{refused}");
    }
    if let Ok(Ok(path)) = path {
        let table = path.parts_table().unwrap();
        let margins = table.numbers("margin").unwrap();
        for (row, margin) in margins.iter().enumerate() {
            let part = table.word("part", row).unwrap();
            if part != "transfer_case" {
                let finding = format!("{part}.strength");
                let wanted = Ratio::from_si(on.answer(&finding).unwrap().wanted);
                answers(&on, &finding, *margin, Verdict::of_ratio(Ratio::from_si(*margin), wanted));
            }
        }
        let (torque, force) = path
            .pull()
            .map_or((f64::NAN, f64::NAN), |pull| (pull.wheel_torque.si(), pull.tractive_force.si()));
        same("driveline.pull_torque", value(&on, "driveline.pull_torque"), torque);
        same("driveline.tractive_force", value(&on, "driveline.tractive_force"), force);
        held += 1;
    }
    // A curve of one point is refused by both.
    if let Ok(curve) = sheet.model("engine.curve").and_then(|model| model.read::<TorqueCurve>()) {
        let peaks = curve.peaks().unwrap();
        for (line, of) in
            [("engine.peak_torque", peaks.peak_torque.si()), ("engine.peak_power", peaks.peak_power.si())]
        {
            // A peak that is written stands beside the curve.
            if sheet.get(line).unwrap().is_none() {
                same(line, value(&on, line), of);
            }
        }
        held += 1;
    }
    for axle in ["front", "rear"] {
        let at_ride = (Length::from_si(0.0), Length::from_si(0.0));
        if let Ok(model) = sheet.model(&format!("{axle}.suspension")) {
            let live = Held { sheet, on: &on, axle };
            let steer = match model.model {
                "suspension.LiveAxle" => {
                    live.links(&model);
                    None
                }
                "suspension.LeafAxle" => {
                    live.leaves(&model);
                    None
                }
                "suspension.Strut" => Some(model.read::<Strut>().unwrap().at(at_ride.0, at_ride.1)),
                _ => Some(model.read::<DoubleWishbone>().unwrap().at(at_ride.0, at_ride.1)),
            };
            if let Some(on) = steer {
                same(axle, value(assessed, &format!("{axle}.bump_steer")), on.unwrap().bump_steer.si());
            }
            held += 1;
        }
        let line = |name: &str| format!("{axle}.{name}");
        if let Ok(model) = sheet.model(&line("quarter_car")) {
            let car = model.read::<QuarterCar>().unwrap();
            same(&line("sprung_mass"), value(&on, &line("sprung_mass")), car.sprung_mass.quantity.si());
            held += 1;
        }
        // The corner has one motion ratio over all of the travel: a drawn linkage says more.
        let drawn = !value(&on, &line("linkage_motion_ratio")).is_nan()
            || !value(&on, &line("leaf.rate")).is_nan()
            || value(&on, &line("spring.ratio_gradient")) != 0.0;
        if let Ok(model) = sheet.model(&line("corner"))
            && !drawn
        {
            let corner = model.read::<Corner>().unwrap().at_ride_height().unwrap();
            same(&line("spring.force"), value(&on, &line("spring.force")), corner.spring_force.si());
            same(&line("droop_remaining"), value(&on, &line("droop_remaining")), corner.sag.si());
            same(&line("bump_remaining"), value(&on, &line("bump_remaining")), corner.bump_remaining.si());
            same(&line("wheel_rate"), value(&on, &line("wheel_rate")), corner.wheel_rate.si());
            // The findings count the worse wheel, joint, hose and tyre, too.
            // Not known, or no more than what remains.
            let more = |path: &str, remaining: f64| value(&on, &line(path)) > remaining;
            assert!(!more("bump_clear", corner.bump_remaining.si()) && !more("droop_clear", corner.sag.si()));
            graded(&on, &line("coil_bind"), corner.bind_margin);
            graded(&on, &line("captive"), corner.captive_margin);
            held += 1;
        }
    }
    held
}

/// A model's document stands on a sheet under its own keys; an old key is read with a remark.
#[test]
fn a_coolant_pastes_into_a_sheet() {
    let mix = "liquid = \"ethylene_glycol\"\nvolume_share = \"50 %\"\nconcentrate = \"95 %\"\nhottest = \"230 °F\"\n";
    let text = format!("{mix}cap = \"13 psi gauge\"\nstation_pressure = \"84 kPa absolute\"\n");
    let made = Coolant::from_text(&text).unwrap();
    let around = "version = 1\n[use]\nstation_pressure = \"84 kPa absolute\"\n[coolant]\n";
    for (keys, remarks) in [
        (format!("{mix}header_pressure = \"13 psi gauge\"\n"), vec![]),
        (
            format!("{}cap = \"13 psi gauge\"\n", mix.replace("hottest", "hottest_coolant")),
            vec![
                "coolant.cap is now coolant.header_pressure",
                "coolant.hottest_coolant is now coolant.hottest",
            ],
        ),
    ] {
        let sheet = Sheet::from_text(&format!("{around}{keys}")).unwrap();
        assert_eq!(sheet.remarks(), remarks);
        let model = sheet.model("coolant").unwrap();
        let elsewhere: Vec<_> =
            model.elsewhere.iter().map(|of| (of.field.as_str(), of.line, of.origin)).collect();
        assert_eq!(
            elsewhere,
            [
                ("cap", "coolant.kept_pressure", "computed"),
                ("mass_fraction", "coolant.mass_fraction", "computed"),
                ("station_pressure", "use.station_pressure", "written")
            ]
        );
        let read = model.read::<Coolant>().unwrap();
        assert_eq!(format!("{:?}", read.margin()), format!("{:?}", made.margin()));
        assert!(hold(&sheet) > 0);
    }
}

/// A coil-over has one axis, though the ratio that was read at its damper says otherwise: one margin before the coils bind, through both doors.
#[test]
fn a_damper_with_a_ratio_of_its_own_is_mounted_alike_through_both_doors() {
    let mut margins = Vec::new();
    for mounting in ["coil_over", "apart"] {
        for ratio in ["0.45", "0.6", "0.8"] {
            let sheet =
                demo("dunlin", &[("front.damper.mounting", mounting), ("front.damper.motion_ratio", ratio)]);
            assert!(hold(&sheet) > 0);
            let corner = sheet.model("front.corner").unwrap().read::<Corner>().unwrap();
            let margin = corner.at_ride_height().unwrap().bind_margin.si();
            same(mounting, sheet.assess().answer("front.coil_bind").unwrap().margin, margin);
            margins.push(margin);
        }
    }
    assert!(margins[0] == margins[2] && margins[3] < margins[4] && margins[4] < margins[5], "{margins:?}");
}

/// Each written line in turn is changed by up to a fifth, left out, or said to be none.
#[test]
fn both_doors_give_the_same_numbers_and_verdicts() {
    let mut random = Random::of("models");
    let mut held = 0;
    for name in ["dunlin", "dunlin_measured", "wagtail", "dray"] {
        let sheet = demo(name, &[]);
        for path in ["coolant", "torque_path"] {
            assert!(sheet.model(path).is_ok(), "{name} holds no {path}");
        }
        held += hold(&sheet);
        // Of the sheets with drawn axles only the lines of the live axle change: each assessment of them takes long.
        let drawn = !["dunlin", "wagtail"].contains(&name);
        let paths: Vec<&str> = sheet.paths().filter(|path| !drawn || path.starts_with("rear.")).collect();
        for path in paths {
            let mut other = sheet.clone();
            if random.once_in(3) {
                // The places of a list come in order.
                if other.remove(path).is_err() || random.once_in(2) && other.set(path, "none").is_err() {
                    continue;
                }
            } else {
                let Some(si) =
                    sheet.assess().value(path).unwrap().filter(|_| Sheet::kind(path).unwrap().is_some())
                else {
                    continue;
                };
                // Points of a drawn axle move by little: further out no linkage holds together.
                let by = if drawn { 0.02 } else { 0.2 };
                if other.set_si(path, si * (1.0 - by + 2.0 * by * random.share())).is_err() {
                    continue;
                }
            }
            held += hold(&other);
        }
        assert!(held > 0, "{name} holds no model");
    }
    assert!(held > 500, "{held} models held");
}

/// Stages of an axle on the sheet, each by one of its lines.
type Stages = [(&'static str, &'static str)];

const ON_LINKS: &Stages = &[
    ("at ride height", "rear.roll_steer"),
    ("coil-over", "rear.linkage_motion_ratio"),
    ("bar", "rear.anti_roll_bar.motion_ratio"),
    ("range", "rear.linkage_bump"),
];
const ON_LEAVES: &Stages = &[
    ("at ride height", "rear.leaf.wheel_rate"),
    ("on the ground", "rear.roll_centre_height"),
    ("damper", "rear.leaf.damper_ratio"),
    ("ends of the damper", "rear.damper.bump_end"),
    ("stop", "rear.leaf.stop_end"),
    ("range", "rear.linkage_bump"),
];

/// Takes each line of the rear axle out in turn: stages that it fills are not known, the others keep their bits, and the model goes along.
fn each_in_turn(name: &str, stages: &Stages, fills: &[(&str, &[&str])]) {
    let whole = demo(name, &[]);
    let before = whole.assess();
    let mut taken = 0;
    for path in whole.paths() {
        let fill = |(part, _): &&(&str, &[&str])| {
            path.strip_prefix("rear.")
                .and_then(|path| path.strip_prefix(part))
                .is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
        };
        let Some((_, lost)) = fills.iter().find(fill) else { continue };
        let mut without = whole.clone();
        without.remove(path).unwrap();
        let after = without.assess();
        for (stage, line) in stages {
            let (was, is) = (value(&before, line), value(&after, line));
            assert!(!was.is_nan(), "{line}");
            if lost.contains(stage) {
                assert!(is.is_nan(), "{path} taken out: {stage} is {is}");
            } else {
                assert_eq!(is.to_bits(), was.to_bits(), "{path} taken out: {stage}");
            }
        }
        hold(&without);
        taken += 1;
    }
    assert!(taken > 30, "{taken} lines taken out of {name}");
}

#[test]
fn a_stage_of_an_axle_on_links_is_lost_with_what_it_takes() {
    let all = &["at ride height", "coil-over", "bar", "range"];
    each_in_turn(
        "dunlin_measured",
        ON_LINKS,
        &[
            ("wheel", all),
            ("lower_links.body", all),
            ("lower_links.axle", all),
            ("upper_links.fitted", all),
            ("upper_links.body", all),
            ("upper_links.axle", all),
            ("lateral_rod.body", all),
            ("lateral_rod.axle", all),
            ("lower_links.body_limit", &[]),
            ("upper_links.axle_limit", &[]),
            ("lateral_rod.body_limit", &[]),
            ("coil_over", &["coil-over"]),
            ("anti_roll_bar.bearings", &["bar", "range"]),
            ("anti_roll_bar.link_eye", &["bar", "range"]),
            ("anti_roll_bar.lever_end", &["bar", "range"]),
            ("anti_roll_bar.lever_pivot", &["bar", "range"]),
            ("tyre.size", &["at ride height"]),
        ],
    );
}

#[test]
fn a_stage_of_an_axle_on_leaf_springs_is_lost_with_what_it_takes() {
    let all = &["at ride height", "on the ground", "damper", "ends of the damper", "stop", "range"];
    each_in_turn(
        "dray",
        ON_LEAVES,
        &[
            ("wheel.centre.x", all),
            ("wheel.centre.z", all),
            ("wheel.centre.y", &[]),
            ("wheel.camber", &[]),
            ("wheel.toe", &[]),
            ("leaf.fixed_eye.x", all),
            ("leaf.fixed_eye.y", &[]),
            ("leaf.fixed_eye.z", all),
            ("leaf.shackle_eye.x", all),
            ("leaf.shackle_eye.y", &[]),
            ("leaf.shackle_eye.z", all),
            ("leaf.shackle_pivot.x", all),
            ("leaf.shackle_pivot.y", &[]),
            ("leaf.shackle_pivot.z", all),
            ("leaf.seat", all),
            ("leaf.clamped_length", all),
            ("leaf.form", all),
            ("leaf.leaves", &[]),
            ("damper.body_eye", &["damper", "ends of the damper"]),
            ("damper.axle_eye", &["damper", "ends of the damper"]),
            ("damper.open_length", &["ends of the damper"]),
            ("damper.closed_length", &["ends of the damper"]),
            ("bump_clearance", &["stop"]),
            ("tyre.size", &["on the ground"]),
        ],
    );
}

/// A document of a model, pasted into the table of its axle, gives the sheet from which it came; old keys give it, too, with a remark.
#[test]
fn the_document_of_an_axle_pastes_into_its_table() {
    for (name, kept) in [("dunlin_measured", "rear.tyre.loaded_radius"), ("dray", "rear.spring.rate")] {
        let sheet = demo(name, &[]);
        let model = sheet.model("rear.suspension").unwrap();
        let mut pasted =
            Sheet::from_text(&format!("{{\"version\": 1, \"rear\": {}}}", model.to_json())).unwrap();
        let (before, after) = (sheet.assess(), pasted.assess());
        same(kept, value(&before, kept), value(&after, kept));
        for line in ["rear.roll_steer", "rear.roll_centre_height", "rear.linkage_bump"] {
            same(line, value(&before, line), value(&after, line));
        }
        assert_eq!(pasted.remarks(), ["rear.wheel.loaded_radius is now rear.tyre.loaded_radius"]);
        pasted.remove("rear.wheel.centre.x").unwrap();
        assert!(pasted.model("rear.suspension").is_err());
        let other_end = format!("{{\"version\": 1, \"front\": {}}}", model.to_json());
        let refused = Sheet::from_text(&other_end).unwrap_err().to_string();
        assert!(refused.contains("front.axle: this is the table `front`"), "{refused}");
    }
    let elsewhere = demo("dunlin_measured", &[]).model("rear.suspension").unwrap().elsewhere;
    let of: Vec<(&str, &str)> = elsewhere.iter().map(|on| (on.field.as_str(), on.line)).collect();
    assert_eq!(of, [("wheel.loaded_radius", "rear.tyre.loaded_radius")]);
}

#[test]
fn old_keys_of_both_axles_are_read() {
    let dray = text("dray");
    let old = dray
        .replace("bump_clearance = \"85 mm +/- 5 mm\"\n", "")
        .replace("leaves = { leaf_width = \"70 mm\", leaf_thickness = \"9 mm\", full_length_leaves = 2, graduated_leaves = 4 }", "width = \"70 mm\"\nthickness = \"9 mm\"\nfull_length_leaves = 2\ngraduated_leaves = 4\nbump_clearance = \"85 mm +/- 5 mm\"");
    assert_ne!(old, dray);
    let sheet = Sheet::from_text(&old).unwrap();
    assert_eq!(sheet.remarks().len(), 5, "{:?}", sheet.remarks());
    assert!(sheet.remarks().contains(&"rear.leaf.bump_clearance is now rear.bump_clearance".to_owned()));
    let said = |sheet: &Sheet| {
        let mut said: serde_json::Value = serde_json::from_str(&sheet.assess().to_json()).unwrap();
        said.as_object_mut().unwrap().remove("remarks");
        said
    };
    assert!(said(&sheet) == said(&demo("dray", &[])), "the same assessment");

    let axle = text("dray_rear_axle");
    let old = axle
        .replace("\n[spring]\nrate = \"110 N/mm\"\n", "")
        .replace("[leaf]\n", "[spring]\nrate = \"110 N/mm\"\n");
    assert_ne!(old, axle);
    assert_eq!(LeafAxle::from_text(&old).unwrap(), LeafAxle::from_text(&axle).unwrap());
    let both = axle.replace("[spring]\n", "[spring]\nform = \"uniform_strength\"\n");
    let refused = LeafAxle::from_text(&both).unwrap_err().to_string();
    assert!(refused.contains("`spring.form` is now `leaf.form`"), "{refused}");

    let links = text("dunlin_rear_axle");
    let old = links.replace("bearings = ", "carried_by = ");
    assert_eq!(LiveAxle::from_text(&old).unwrap(), LiveAxle::from_text(&links).unwrap());
    // The eye of a coil-over under the key of a double wishbone.
    let measured = text("dunlin_measured");
    let old = Sheet::from_text(&measured.replace("axle_eye = ", "lower_eye = ")).unwrap();
    let line = "rear.linkage_motion_ratio";
    same(line, value(&old.assess(), line), value(&demo("dunlin_measured", &[]).assess(), line));
}

/// Lower and upper links under their keys, or as a list under names of their own.
#[test]
fn links_are_the_same_under_their_keys_and_in_a_list() {
    let list = text("dunlin_rear_axle");
    let keys = list
        .replace("[[links]]\nname = \"lower\"\n", "[lower_links]\n")
        .replace("[[links]]\nname = \"upper\"\n", "[upper_links]\n");
    let [list, keys] = [list, keys].map(|text| LiveAxle::from_text(&text).unwrap());
    assert!(list.links.len() == 2 && keys.links.is_empty() && keys.lower_links.is_some());
    let (heave, roll) =
        ([Length::from_si(-0.03), Length::from_si(0.05)], [Angle::from_si(0.0), Angle::from_si(0.04)]);
    let [list, keys] = [list, keys].map(|axle| axle.table(&heave, &roll).unwrap());
    assert_eq!(format!("{list:?}"), format!("{keys:?}"));
}
