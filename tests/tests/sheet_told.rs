//! Answers to a builder: all faults of a document, trade words, new sheets, and reports that fit a page.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict;
use axlewright::base::section::Content;
use axlewright::base::text::{System, columns};
use axlewright::sheet::{
    self, Assessment, DEMOS, QUESTIONS, Report, Sheet, findings, keys, lines, offered, starter,
};
use axlewright::sheet::{Answers, TABLES, terms, terms_named};
use axlewright_tests::assessed::{demo, read, text};
use std::collections::BTreeSet;

const SHEETS: [&str; 4] = ["dunlin", "wagtail", "dray", "dunlin_measured"];

#[test]
fn a_refusal_tells_all_faults_in_the_order_of_the_text() {
    let text =
        "[zebra]\nx = 1\n[front]\ntrack = \"50 lb\"\ncaster = \"3 deg\"\n[engine]\nbore = \"3\"\n[brakes]\n";
    let said = Sheet::from_text(text).unwrap_err().to_string();
    let lines: Vec<&str> = said.lines().filter(|line| !line.starts_with(' ')).collect();
    assert_eq!(lines[0], "5 faults, in the order of the text:");
    let places: Vec<&str> = lines[1..].iter().map(|line| line.split(',').next().unwrap()).collect();
    assert_eq!(places, ["line 1", "line 4", "line 5", "line 7", "line 8"]);
    // A single fault stands alone, as before.
    let one = Sheet::from_text("[front]\ntrack = \"50 lb\"\n").unwrap_err().to_string();
    assert!(one.starts_with("line 2, column 9: front.track: `50 lb`: "), "{one}");
}

#[test]
fn several_lines_are_written_together_or_not_at_all() {
    let mut sheet = read("dunlin");
    let before = sheet.clone();
    let lines = [("front.track", Some("1.5 m")), ("front.trak", Some("2 m")), ("engine.bore", Some("3 lb"))];
    let said = sheet.set_all(lines).unwrap_err().to_string();
    assert!(
        said.starts_with("2 faults") && said.contains("front.trak") && said.contains("engine.bore"),
        "{said}"
    );
    assert_eq!(sheet, before);
    sheet.set_all([("front.track", Some("1.5 m")), ("engine.bore", None)]).unwrap();
    assert_eq!(sheet.get("front.track").unwrap().as_deref(), Some("1.5 m"));
    assert_eq!(sheet.get("engine.bore").unwrap(), None);
}

/// Every path that a sheet knows: lines, tables above them, points, findings.
fn places() -> BTreeSet<String> {
    let mut all = BTreeSet::new();
    for path in lines().map(|(_, path, _)| path).chain(findings().map(|(_, path, _)| path)) {
        let path = path.replace("[]", "");
        let ends = path.match_indices('.').map(|(at, _)| at).chain([path.len()]);
        all.extend(ends.map(|at| path[..at].to_owned()));
    }
    all
}

#[test]
fn each_trade_word_points_to_something_that_exists() {
    let places = places();
    let known = |path: &str| {
        let at_end = |end: &str| places.contains(&path.replacen("axle", end, 1));
        if path.starts_with("axle") { at_end("front") || at_end("rear") } else { places.contains(path) }
    };
    // Models are no entries of the catalogue: the compiler knows them.
    let models: Vec<String> = [
        std::any::type_name::<axlewright::mass::PartsList>(),
        std::any::type_name::<axlewright::spring::Stack>(),
    ]
    .iter()
    .map(|name| {
        let words: Vec<&str> = name.split("::").collect();
        format!("{}.{}", words[1], words[words.len() - 1])
    })
    .collect();
    let models: Vec<&str> = models.iter().map(String::as_str).collect();
    for term in terms() {
        assert!(!term.names.is_empty() && !term.says.is_empty());
        for name in term.names {
            assert_eq!(name.to_lowercase(), *name);
            assert!(terms_named(name).any(|found| found == term), "{name} does not find itself");
        }
        match term.answers {
            Answers::Sheet(paths) => {
                assert!(!paths.is_empty(), "{:?}", term.names);
                paths.iter().for_each(|path| assert!(known(path), "{path} of {:?}", term.names));
            }
            Answers::Beside(functions) => {
                for function in functions.iter().filter(|function| !models.contains(function)) {
                    axlewright::catalogue::entry(function)
                        .unwrap_or_else(|error| panic!("{function}: {error}"));
                }
            }
            Answers::NotCovered => assert!(term.says.contains("yet"), "{}", term.says),
        }
    }
    assert!(terms().count() >= 120, "{} terms", terms().count());
    let names: Vec<&str> = terms().flat_map(|term| term.names.iter().copied()).collect();
    let different: BTreeSet<&str> = names.iter().copied().collect();
    let twice: Vec<&&str> =
        different.iter().filter(|name| names.iter().filter(|other| other == name).count() > 1).collect();
    assert!(twice.is_empty(), "in two terms: {twice:?}");
}

#[test]
fn the_list_of_tables_is_the_sheet() {
    let mut wanted = BTreeSet::new();
    for (_, path, _) in
        lines().filter(|(_, _, line)| line.written && !matches!(line.content, Content::Marking(_)))
    {
        let path = path.replacen("rear.", "axle.", 1).replacen("front.", "axle.", 1);
        let path = path.split('[').next().unwrap();
        let words: Vec<&str> = path.split('.').collect();
        let top = if words[0] == "axle" && words.len() > 2 {
            format!("axle.{}", words[1])
        } else {
            words[0].to_owned()
        };
        wanted.insert(top);
    }
    let listed: BTreeSet<String> = TABLES.iter().map(|table| table.path.to_owned()).collect();
    assert_eq!(listed, wanted);
}

#[test]
fn an_unknown_table_or_key_is_answered_in_trade_words() {
    let said = |text: &str| Sheet::from_text(text).unwrap_err().to_string();
    let brakes = said("[brakes]\nrotor = 3\n");
    assert!(
        brakes.contains("this version has no table `brakes`: braking is not covered yet; tables: `use`"),
        "{brakes}"
    );
    let bar = said("[rear]\ntrack_bar = \"3 in\"\n");
    assert!(bar.contains("there is no key `track_bar` here: see `rear.lateral_rod`"), "{bar}");
    let caster = said("[front]\ncaster = \"3 deg\"\n");
    assert!(caster.contains("computed and never written: caster follows from the drawn arms"), "{caster}");
    // A slip of the pen is still one.
    let slip = said("[front.spring]\nrat = \"3 N/mm\"\n");
    assert!(slip.contains("there is no key `rat`; did you mean `rate`? Keys here: "), "{slip}");
}

#[test]
fn keys_finds_lines_by_any_name() {
    for (word, line) in [
        ("panhard rod", "front.lateral_rod.body"),
        ("Track Bar", "front.lateral_rod.body"),
        ("shocks", "front.damper.rate"),
        ("sway bar", "front.anti_roll_bar.rate"),
        ("antifreeze", "coolant.liquid"),
        ("radiator cap", "cap.rating"),
        ("front.tyre", "front.tyre.size"),
        ("prop shaft", "propeller_shaft.torque_rating"),
    ] {
        let told = keys(Some(word), System::Us, 80);
        assert!(told.lines().any(|found| found == line), "{word}: {told}");
    }
    assert!(keys(Some("welding"), System::Us, 80).contains("not covered yet"));
    assert!(keys(Some("qzxqzx"), System::Us, 80).starts_with("nothing here is called `qzxqzx`"));
    let tables = keys(None, System::Us, 80);
    TABLES.iter().for_each(|table| assert!(tables.contains(&table.path.replacen("axle", "front", 1))));
    for width in [20, 60, 80, 120] {
        for term in terms() {
            fits(&keys(Some(term.names[0]), System::Us, width), width);
        }
    }
}

fn fits(text: &str, width: usize) {
    let wide = text.lines().find(|line| columns(line) > width);
    assert!(wide.is_none(), "{width}: {wide:?}");
}

fn report(width: usize) -> Report {
    Report { width, ..Report::default() }
}

#[test]
fn a_report_fits_its_page() {
    for name in SHEETS {
        let on = read(name).assess();
        for width in [20, 60, 80, 120] {
            for (all, colour) in [(false, true), (true, false)] {
                fits(&on.report(&Report { all, colour, ..report(width) }), width);
            }
            fits(
                &Assessment::side_by_side(&[("A", &on), ("B", &Sheet::new("").assess())], &report(width)),
                width,
            );
        }
        fits(&on.report(&Report { work: true, ..report(80) }), 80);
        fits(&on.report(&Report { work: true, ..report(20) }), 20);
        for answer in on.answers().iter().step_by(7) {
            fits(&on.report_on(answer.path, &report(60)).unwrap(), 60);
        }
    }
}

#[test]
fn the_summary_counts_and_names() {
    let on = read("dunlin").assess();
    let page = on.report(&report(400));
    let lines: Vec<&str> = page.lines().collect();
    let count = |verdict: Verdict| on.answers().iter().filter(|answer| answer.verdict == verdict).count();
    let wanted = format!(
        "{} of 77 findings meet, {} short, {} tight, {} not known.",
        count(Verdict::Meets),
        count(Verdict::Short),
        count(Verdict::Tight),
        count(Verdict::NotKnown)
    );
    assert_eq!(lines[3], wanted);
    assert!(
        lines[4].starts_with("Short: speedometer.reading, half_shaft.strength")
            && lines[4].contains(" Tight: ")
    );
    assert!(lines[5].starts_with("Measure next: "));
    // Each caution is there once.
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for answer in
        on.answers().iter().filter(|answer| answer.is_safety() && answer.verdict != Verdict::NotKnown)
    {
        assert_eq!(page.matches(answer.caution).count(), 1, "{}", answer.path);
    }
    assert!(page.find(" SAFETY ").unwrap() < page.find(" SPRINGS, DAMPERS").unwrap());
}

/// The lines to measure next answer the findings that they name.
#[test]
fn the_next_measurement_answers_what_it_says() {
    let on = read("dunlin").assess();
    for next in on.measure_next() {
        for path in &next.answers {
            let missing = on.missing(on.answer(path).unwrap());
            assert!(!missing.needs.is_empty() && missing.needs.iter().all(|line| next.lines.contains(line)));
        }
    }
    let road = on.measure_next().into_iter().find(|next| next.lines == ["use.road"]).unwrap();
    assert_eq!(road.answers, ["front.road_holding", "rear.road_holding"]);
    let after = demo("dunlin", &[("use.road", "c")]).assess();
    assert!(road.answers.iter().all(|path| after.answer(path).unwrap().verdict != Verdict::NotKnown));
}

#[test]
fn a_finding_without_limit_shows_its_value() {
    let sheet = demo("dunlin", &[("front.wanted.frequency_low", ""), ("wanted.cruise_engine_speed", "")]);
    let on = sheet.assess();
    let page = on.report(&report(100));
    for (finding, said) in [
        ("front.frequency", "1.26 Hz; needs wanted.frequency_low"),
        ("driveline.cruise ", "2683 rpm; needs wanted.cruise_engine_speed"),
    ] {
        let line =
            page.lines().find(|line| line.contains(finding) && line.starts_with("  not known")).unwrap();
        assert!(line.contains(said), "{line}");
    }
    let all = on.report(&Report { all: true, ..report(100) });
    assert!(
        all.contains("  front.natural_frequency = 1.26 Hz\n")
            && all.contains("  engine.piston_speed = 14.3 m/s\n")
    );
    assert!(!all.contains(" inf ") && !all.contains("NaN") && !all.contains("delta "));
}

/// The verdict stands on the margin at the worst end of the tolerances: a row says that where it decides.
#[test]
fn a_tolerance_that_decides_is_said() {
    let page = read("dunlin").assess().report(&report(80));
    let at = page
        .lines()
        .position(|line| line.starts_with("  short") && line.contains("vehicle.flat_ride"))
        .unwrap();
    let row: String = page.lines().skip(at).take(2).collect();
    assert!(row.contains("at worst"), "{row}");
}

#[test]
fn a_report_speaks_the_units_of_the_sheet() {
    let on = read("dunlin").assess();
    let page = on.report(&report(100));
    assert!(page.contains("14.3 m/s, 0.75 m/s below 15 m/s"), "{page}");
    assert!(page.contains("psi gauge") && page.contains(" mm left"));
    let us = on.report(&Report { system: Some(System::Us), ..report(100) });
    assert!(
        us.contains("ft/min") && us.contains(" in left") && us.contains("°F above") && !us.contains("delta")
    );
    let boiling = us.lines().find(|line| line.contains("coolant.boiling ")).unwrap();
    assert!(boiling.contains("251.9 °F, 21.9 °F above 230 °F"), "{boiling}");
}

#[test]
fn a_finding_is_found_by_its_beginning() {
    let on = read("dunlin").assess();
    let one = on.report_on("front.coil_bind", &report(80)).unwrap();
    assert!(one.starts_with("front.coil_bind: meets\n") && one.contains("work:") && one.contains("CAUTION"));
    let all = on.report_on("coil_bind", &report(80)).unwrap();
    assert!(all.contains("front.coil_bind: ") && all.contains("rear.coil_bind: "));
    assert!(on.report_on("cap", &report(80)).unwrap().contains("cap.vacuum: "));
    let missing = on.report_on("vehicle.tip", &report(80)).unwrap();
    assert!(
        missing.contains("vehicle.centre_of_gravity_height: height of the centre of gravity"),
        "{missing}"
    );
    let none = on.report_on("front.coilbind", &report(80)).unwrap_err().to_string();
    assert!(none.contains("did you mean `front.coil_bind`?"), "{none}");
    on.report_on("", &report(80)).unwrap_err();
}

#[test]
fn tables_of_findings_hold_them_all() {
    let on = read("dunlin").assess();
    let csv = on.to_csv(&report(80));
    // A text beside the findings has no verdict.
    let (notes, rows): (Vec<&str>, Vec<&str>) = csv.lines().partition(|line| line.contains(",,,,,,,,"));
    assert_eq!(rows.len(), on.answers().len() + 1);
    assert!(csv.starts_with("finding,verdict,value,limit,margin,at worst,wanted,missing,note\n"));
    assert!(notes.iter().any(|note| note.contains("TO WRITE")));
    // A cell with a comma stands in quotes.
    assert!(csv.contains(",\"vehicle.centre_of_gravity_height, "), "{csv}");
    let markdown = on.to_markdown(&report(80));
    assert_eq!(markdown.lines().filter(|line| line.starts_with("| ")).count(), on.answers().len() + 1);
}

#[test]
fn a_report_tells_both_sides_and_why_a_doubted_finding_is_dim() {
    let on = read("dunlin_measured").assess();
    let text = on.report(&report(80));
    assert!(text.contains("\nLEFT AND RIGHT differ\n"), "{text}");
    assert!(text.contains("  rear.wheel_rate: left 60.9, right 61.5 N/mm\n"), "{text}");
    assert!(on.to_markdown(&report(80)).contains("\n- rear.wheel_rate: left 60.9"));
    assert!(!read("dunlin").assess().report(&report(80)).contains("LEFT AND RIGHT"));
    // A written total that the scales contradict: what rests on it says so, in every form.
    let mut sheet = read("dunlin");
    sheet.set("vehicle.mass", "2700 kg").unwrap();
    let on = sheet.assess();
    assert!(!on.contradictions().is_empty());
    let dim = on.answers().iter().find(|one| one.verdict == Verdict::Tight && !on.doubts(one).is_empty());
    let dim = dim.unwrap().path;
    let text = on.report(&report(120));
    let row = text.lines().find(|line| line.contains(&format!("tight      {dim} "))).unwrap();
    assert!(row.contains("CONTRADICTED"), "{row}");
    for export in [on.to_csv(&report(80)), on.to_markdown(&report(80))] {
        for head in ["CONTRADICTED, so that", "TO WRITE, before", "ASSUMED, because", "CAUTION"] {
            assert!(export.contains(head), "{head}: {export}");
        }
    }
}

/// The readings of the four wheels bring the diagonal to the edge of its band, but for the rounding of the computer.
#[test]
fn what_lies_on_a_limit_is_said_to_lie_there() {
    for name in SHEETS {
        let on = read(name).assess();
        for system in [System::Metric, System::Us] {
            let text = on.report(&Report { system: Some(system), ..report(80) });
            assert!(!text.contains("e-6") && !text.contains("e-7"), "{name}: {text}");
        }
        for answer in on.answers() {
            for one in on.sensitivity(answer) {
                assert!(one.margin_change.is_nan() || one.margin_change.abs() > 1e-12 * answer.margin.abs());
            }
        }
    }
}

#[test]
fn every_point_says_how_it_is_measured() {
    for path in ["front.lower_arm.ball_joint", "camber", "toe", "clamped_length"] {
        assert!(keys(Some(path), System::Metric, 80).contains("how: "), "{path}");
    }
    let text = starter("Lark", &[("front", "strut"), ("rear", "leaf")]).unwrap();
    for line in ["[leak_test]", "#suction_loss", "#wind_up_angle", "#joint_remaining", "#linkage_remaining"] {
        assert!(text.contains(line), "{line}: {text}");
    }
    assert!(!starter("Lark", &[("cooling", "none")]).unwrap().contains("leak_test"));
}

#[test]
fn a_new_sheet_is_read_and_offers_real_lines() {
    let known: BTreeSet<String> = lines().map(|(_, path, _)| path.replace("[]", "")).collect();
    for path in offered() {
        let is_point = ["x", "y", "z"].iter().all(|axis| known.contains(&format!("{path}.{axis}")));
        assert!(known.contains(&path) || is_point, "{path} is offered and is no line");
    }
    let fronts = QUESTIONS[0].choices.iter().map(|(word, _)| *word);
    for front in fronts {
        for (points, drive, gearbox, cooling, units) in [
            ("no", "rear", "manual", "ethylene_glycol", "metric"),
            ("yes", "front", "automatic", "none", "us"),
            ("yes", "four", "manual", "water", "us"),
        ] {
            let answers = [
                ("front", front),
                ("rear", front),
                ("points", points),
                ("drive", drive),
                ("gearbox", gearbox),
                ("cooling", cooling),
                ("units", units),
                ("towing", "yes"),
            ];
            let text = starter("Lark", &answers).unwrap();
            let fresh = Sheet::from_text(&text).unwrap_or_else(|error| panic!("{error}\n{text}"));
            let on = fresh.assess();
            assert!(
                on.contradictions().is_empty()
                    && on.answers().iter().all(|one| one.verdict != Verdict::Short)
            );
            // Each line to fill in is a line of the sheet, and its blank is taken for no value.
            let filled: String = text
                .lines()
                .map(|line| line.strip_prefix('#').filter(|line| !line.starts_with(' ')).unwrap_or(line))
                .map(|line| format!("{line}\n"))
                .collect();
            let said = Sheet::from_text(&filled).unwrap_err().to_string();
            assert!(
                said.contains("___") && !said.contains("there is no key") && !said.contains("not TOML"),
                "{said}"
            );
        }
    }
    let wrong = starter("", &[("frontt", "strut")]).unwrap_err().to_string();
    assert!(wrong.contains("did you mean `front`?"), "{wrong}");
    assert!(starter("", &[("front", "twist")]).unwrap_err().to_string().contains("answers: double_wishbone"));
}

#[test]
fn the_demo_sheets_that_the_library_carries_are_those_of_the_examples() {
    for (name, carried) in DEMOS {
        assert_eq!(*carried, text(name));
    }
    assert_eq!(sheet::DEMOS.len(), 3);
}
