use super::tree::{Spot, Tree};
use super::*;
use crate::Error;
use crate::base::text::Form;
use crate::cooling::{CapTest, Coolant};
use crate::driveline::TorquePath;
use crate::engine::TorqueCurve;
use crate::spring::Stack;
use crate::units::{Length, mm};

const COOLANT: &str = r#"
liquid = "ethylene_glycol"
volume_share = "50 %"

concentrate = 0.95
cap = { value = 15, unit = "psi gauge" }
altitude = "5000 ft"
hottest = "230 °F"
"#;

fn faults(text: &str) -> Faults {
    match Coolant::from_text(text).unwrap_err() {
        Error::Document(faults) => faults,
        other => panic!("{other:?}"),
    }
}

fn refused(text: &str) -> (usize, String, String) {
    let faults = faults(text);
    assert_eq!(faults.len(), 1, "{faults}");
    (faults[0].line, faults[0].key.clone(), faults[0].message.clone())
}

#[test]
fn toml_and_json_say_the_same() {
    let from_toml = Coolant::from_text(COOLANT).unwrap();
    let json = from_toml.to_json().unwrap();
    let from_json = Coolant::from_text(&json).unwrap();
    assert_eq!(from_json.to_json().unwrap(), json, "a round trip keeps every byte");
    assert_eq!(from_json.margin().unwrap(), from_toml.margin().unwrap());
}

#[test]
fn a_refusal_has_its_line_and_key() {
    let cases = [
        (COOLANT.replace("cap = {", "capp = {"), 6, "capp", "did you mean `cap`?"),
        (COOLANT.replace("\"5000 ft\"", "\"5000 lb\""), 7, "altitude", "5000 lb"),
        (COOLANT.replace("\"5000 ft\"", "5000"), 7, "altitude", "has no unit"),
        (COOLANT.replace("\"psi gauge\"", "\"psi\""), 6, "cap", "psi"),
        (COOLANT.replace("\"ethylene_glycol\"", "\"weight\""), 2, "liquid", "`water`"),
        (
            COOLANT.replace("volume_share", "strength"),
            3,
            "strength",
            "this key is gone; write `volume_share` with",
        ),
        (COOLANT.replace("liquid =", "liquid"), 2, "", ""),
    ];
    for (text, line, key, word) in cases {
        let (at, path, message) = refused(&text);
        assert_eq!(at, line, "{path}: {message}");
        assert!(path.contains(key) && message.contains(word), "{path}: {message}");
    }
    let json = faults("{\n \"liquid\": \"water\",\n \"cap\": \"15 psi\"}");
    let keys: Vec<_> = json.iter().map(|fault| (fault.line, fault.key.as_str())).collect();
    assert_eq!(keys, [(3, "cap"), (0, "hottest")], "{json}");
    let (_, key, message) = refused(&COOLANT.replace("altitude = \"5000 ft\"\n", ""));
    assert_eq!((key.as_str(), message.contains("station_pressure")), ("altitude", true));
}

/// Keys and sentences, without places.
fn said(error: Error) -> String {
    let Error::Document(faults) = error else { panic!("{error:?}") };
    faults.without_places().to_string()
}

#[test]
fn a_refusal_is_said_in_plain_words() {
    let says = |text: &str, words: &str| assert_eq!(refused(text).2, words);
    says(
        &COOLANT.replace("\"ethylene_glycol\"", "\"beer\""),
        "`beer` is not a choice; choices: `water`, `ethylene_glycol`, `propylene_glycol`",
    );
    let path = |part: &str| {
        let path = format!(r#"{{"engine_torque": "3 N·m", "parts": {part}}}"#);
        said(TorquePath::from_text(&path).unwrap_err())
    };
    assert_eq!(path("{}"), "parts: expected a list, not a table");
    assert_eq!(path("\"all\""), "parts: expected a list, not the text \"all\"");
    assert_eq!(
        path("[1]"),
        "parts[0]: expected a table with `name` and, where they are known, `ratio`, `least_ratio`, `peak_ratio`, `efficiency`, `differential`, \
         `share`, `torque_rating`, `rating_side` and `rating_kind`, not the number `1`"
    );
    assert_eq!(
        path(r#"[{"name": "gearbox", "rating": "400 N·m"}]"#),
        "parts[0].rating: this key is gone; write `torque_rating`, `rating_side` and `rating_kind`"
    );
    let grip =
        TorquePath::from_text(r#"{"engine_torque": "3 N·m", "grip": "good", "parts": [{"name": "a"}]}"#);
    assert_eq!(
        said(grip.unwrap_err()),
        "grip: expected a table with `driven_load`, `loaded_radius` and, where they are known, \
         `load_at_rest`, `strength_coefficient`, `pull_coefficient` and `inertia_factor`, not the text \"good\""
    );
    assert_eq!(path(r#"[{"name": 1.5}]"#), "parts[0].name: expected text, not the number `1.5`");
    let curve = said(TorqueCurve::from_text("points = [1]").unwrap_err());
    assert_eq!(curve, "points[0]: expected a table with `engine_speed` and `torque`, not the number `1`");
    for name in ["coolant.toml", "sheets/dunlin coolant.json"] {
        assert_eq!(refused(name).2, "this looks like a file name: pass its text");
    }
}

#[test]
fn a_table_keeps_its_unit() {
    let coolant = Coolant::from_text(COOLANT).unwrap();
    assert_eq!(coolant.cap.written.as_deref(), Some("15 psi gauge"));
}

#[test]
fn a_key_inside_a_list_is_named() {
    let text = "points = [{engine_speed = \"1000 rpm\", torque = \"200 N·m\"}, {engine_speed = \"20 Hz\", torque = \"200 N·m\"}]";
    let error = TorqueCurve::from_text(text).unwrap_err().to_string();
    assert!(error.contains("points[1].engine_speed") && error.contains("20 Hz"), "{error}");
}

#[test]
fn the_words_are_kept() {
    let value: Value<crate::units::LinearStiffness> = Value::parse("225 lb/in").unwrap();
    assert_eq!(value.written.as_deref(), Some("225 lb/in"));
    assert_eq!(serde_json::to_string(&value).unwrap(), "\"225 lb/in\"");
}

#[test]
fn no_document_brings_it_down() {
    // Seeded mutations of a good document: each is read or refused.
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    let mut next = move || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state
    };
    let (mut read, mut refusals) = (0, 0);
    for _ in 0..3000 {
        let mut bytes = COOLANT.as_bytes().to_vec();
        for _ in 0..=(next() % 3) {
            let place = (next() % bytes.len() as u64) as usize;
            match next() % 3 {
                0 => drop(bytes.remove(place)),
                1 => bytes[place] = (next() % 128) as u8,
                _ => bytes.insert(place, (next() % 128) as u8),
            }
        }
        let text = String::from_utf8_lossy(&bytes);
        if Coolant::from_text(&text).is_ok() {
            read += 1
        } else {
            refusals += 1
        }
        assert!(TorquePath::from_text(&text).is_err());
    }
    assert!(read > 20 && refusals > 1000, "{read} read, {refusals} refused");
}

const EIGHT: &str = r#"liquid = "ethlyene_glycol"
volume_share = "50 mm"
mass_fraction = [3]
concentrate = "strong"
capp = "15 psi gauge"
altitude = "9000 lb"
hottest = 230
station_pressure = ["20 delta_degF"]
"#;

#[test]
fn all_faults_are_told_at_once_in_the_order_of_the_document() {
    let found = faults(EIGHT);
    let places: Vec<_> = found.iter().map(|fault| (fault.line, fault.column, fault.key.as_str())).collect();
    let wanted = [
        (1, 10, "liquid"),
        (2, 16, "volume_share"),
        (3, 17, "mass_fraction"),
        (4, 15, "concentrate"),
        (5, 1, "capp"),
        (6, 12, "altitude"),
        (7, 11, "hottest"),
        (8, 20, "station_pressure"),
    ];
    assert_eq!(places, wanted, "{found}");
    let text = found.to_string();
    assert!(text.contains("\n    altitude = \"9000 lb\"\n               ^\n"), "{text}");
    assert!(!found.stopped);
}

#[test]
fn a_value_outside_its_range_is_told_in_its_own_unit_beside_others() {
    let text = COOLANT.replace("230 °F", "1000 °F").replace("5000 ft", "5000 lb");
    let found = faults(&text);
    assert_eq!(found.iter().map(|fault| fault.line).collect::<Vec<_>>(), [7, 8], "{found}");
    let hottest = "hottest = 1000 °F is outside its range; valid: -40 °F <= hottest <= 482 °F";
    assert!(found[1].message.starts_with(hottest), "{found}");
    assert!(found[0].message.contains("5000 lb"), "{found}");
}

#[test]
fn what_is_no_toml_does_not_hide_the_rest() {
    let text = EIGHT.replace("mass_fraction = [3]", "mass_fraction = = 3").replace("capp", "cap");
    let found = faults(&text);
    let lines: Vec<_> = found.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [1, 2, 3, 4, 6, 7, 8], "{found}");
}

#[test]
fn a_refusal_of_one_value_keeps_its_number() {
    let one = Coolant::from_text(&COOLANT.replace("5000 ft", "90000 ft")).unwrap_err();
    assert_eq!(one.number(), 1, "{one}");
    assert!(one.to_string().starts_with("line 7, column 12: altitude = 90000 ft is outside"), "{one}");
    assert_eq!(Coolant::from_text(EIGHT).unwrap_err().number(), 5);
    let short = Stack::from_text("spacers = \"none\"\nsprings = []\n").unwrap_err();
    assert_eq!(short.number(), 6, "{short}");
    assert!(short.to_string().starts_with("line 2, column 11: springs has 0 entries"), "{short}");
}

#[test]
fn the_reader_stops_after_so_many_faults() {
    let keys: String = (0..1000).map(|key| format!("key_{key} = 1\n")).collect();
    let found = faults(&keys);
    assert_eq!((found.len(), found.stopped), (MOST_FAULTS, true));
    assert!(found.to_string().ends_with("after 25 faults: there may be more"));
}

fn at<'a>(spot: &'a Spot, key: &str) -> &'a Spot {
    let Tree::Table(entries) = &spot.value else { panic!("no table") };
    entries.iter().find(|(name, _)| name == key).map(|(_, spot)| spot).unwrap()
}

#[test]
fn every_value_has_its_line_in_both_formats() {
    let toml = Document::from_text("a = 1\n[b]\nc = [\n  \"x\",\n  2.5,\n]\n").unwrap();
    let json = Document::from_text("{\n\"a\": 1,\n\"b\": {\n\"c\": [\n\"x\", 2.5]}}").unwrap();
    for (document, lines) in [(&toml, [1, 2, 3, 4, 5]), (&json, [2, 3, 4, 5, 5])] {
        let (line, tree) = (|spot: &Spot| document.source.line(spot.key_at.unwrap()), &document.root);
        let Tree::List(items) = &at(at(tree, "b"), "c").value else { panic!("no list") };
        let spots = [at(tree, "a"), at(tree, "b"), at(at(tree, "b"), "c"), &items[0], &items[1]];
        assert_eq!(spots.map(line), lines);
        assert_eq!((&items[0].value, &items[1].value), (&Tree::Text("x".to_owned()), &Tree::Number(2.5)));
    }
}

#[test]
fn what_is_no_document_is_refused_at_its_line() {
    let deep = format!("{{\"a\": {}1{}}}", "[".repeat(40), "]".repeat(40));
    for (text, line) in [
        ("a = 1\nb = \n", 2),
        ("a = 1\na = 2\n", 2),
        ("{\n\"a\": 1,\n}", 3),
        ("{\n\"a\": 1,\n\"a\": 2\n\n}", 3),
        ("{\"a\": 1} x", 1),
        ("sheet.toml", 0),
        (&deep, 1),
    ] {
        match Document::from_text(text).unwrap_err() {
            Error::Document(faults) => assert_eq!(faults[0].line, line, "{text}: {faults}"),
            other => panic!("{other:?}"),
        }
    }
}

const HELPER: &str = r#"{"name":"helper","rate":"10 N/mm","free_length":"0.1 m","solid_length":"0.03 m"}"#;

#[test]
fn a_model_without_verdicts_keeps_a_tolerance_and_writes_it_back() {
    let main = r#"{"name":"main","rate":"225 lbf/in +/- 3 %","free_length":"12 in","solid_length":"5 in ± 0.1 in sd"}"#;
    let text = format!("{{\"springs\":[{main},{HELPER}]}}");
    let stack = Stack::from_text(&text).unwrap();
    assert_eq!(stack.to_json().unwrap(), text);
    let main = &stack.springs[0];
    let rate = main.rate.tolerance().unwrap();
    assert!((rate.si / main.rate.quantity.si() - 0.03).abs() < 1e-15 && rate.form == Form::Bound);
    assert_eq!(main.solid_length.tolerance().unwrap().form, Form::StandardDeviation);
    let table =
        text.replace("\"225 lbf/in +/- 3 %\"", r#"{"value": 225, "unit": "lbf/in", "tolerance": "3 %"}"#);
    assert_eq!(Stack::from_text(&table).unwrap().to_json().unwrap(), text);
}

#[test]
fn a_tolerance_stays_with_its_value_and_changes_no_result() {
    let table = COOLANT.replace("unit = \"psi gauge\"", "unit = \"psi gauge\", tolerance = \"1 psi\"");
    let wide = Coolant::from_text(&table.replace("5000 ft", "5000 ft ± 200 ft")).unwrap();
    assert!(wide.cap.tolerance().is_some() && wide.altitude.as_ref().unwrap().tolerance().is_some());
    assert!(wide.hottest.tolerance().is_none());
    assert_eq!(wide.margin().unwrap(), Coolant::from_text(COOLANT).unwrap().margin().unwrap());
    let (line, key, _) = refused(&COOLANT.replace("5000 ft", "5000 ft ± 200 lb"));
    assert_eq!((line, key.as_str()), (7, "altitude"));
}

#[test]
fn a_key_that_was_a_wish_says_where_it_belongs() {
    let cap = "rating = \"15 psi gauge\"\ngauge_error = \"0.5 psi +/- 0.1 psi\"\n";
    assert!(CapTest::from_text(cap).unwrap().gauge_error.unwrap().tolerance().is_some());
    let told = CapTest::from_text(&format!("{cap}tight_below = \"1 psi\"\n")).unwrap_err();
    let Error::Document(faults) = told else { panic!("{told:?}") };
    let [fault] = &faults[..] else { panic!("{faults}") };
    assert_eq!((fault.line, fault.key.as_str()), (3, "tight_below"));
    assert_eq!(
        fault.message,
        "the margin that is wanted belongs on a build sheet (`wanted.cap`), not in a model; grade a margin with `Verdict::of_difference`"
    );
}

#[test]
fn a_program_fills_a_document_with_si_numbers_and_words() {
    let spring = |rate| {
        [
            ("springs[0].name", Field::Text("main")),
            ("springs[1].name", Field::Text("helper")),
            ("springs[1].rate", Field::Si(10e3)),
            ("springs[1].free_length", Field::Si(0.1)),
            ("springs[1].solid_length", Field::Si(0.03)),
            ("springs[0].rate", rate),
            ("springs[0].free_length", Field::Si(0.3)),
            ("springs[0].solid_length", Field::Si(0.12)),
            ("spacers", Field::Si(f64::NAN)),
        ]
    };
    let of = |rate| Document::from_si(spring(rate)).and_then(|document| Stack::from_document(&document));
    let stack = of(Field::Si(30e3)).unwrap();
    assert_eq!(stack.springs[0].rate.quantity.si(), 30e3);
    assert_eq!(of(Field::Text("30 N/mm")).unwrap().springs[0].rate.quantity.si(), 30e3);
    // A list of values, a list in a list, a table with nothing known.
    let tree = Document::from_si([
        ("a[0]", Field::Si(1.0)),
        ("a[1]", Field::Text("x")),
        ("b[0][0].c", Field::Si(2.0)),
        ("d.e.f", Field::Si(f64::NAN)),
    ]);
    let Tree::Table(entries) = tree.unwrap().root.value else { panic!("no table") };
    assert_eq!(entries.iter().map(|(key, _)| key.as_str()).collect::<Vec<_>>(), ["a", "b"]);
    for (fields, words) in [
        (&[("rate", Field::Si(f64::INFINITY))][..], "not a finite number"),
        (&[("a[1]", Field::Si(1.0))], "come in order: place 0"),
        (&[("a[0]", Field::Si(f64::NAN))], "cannot stay open"),
        (&[("a[x]", Field::Si(1.0))], "a whole number"),
        (&[("a..b", Field::Si(1.0))], "this is no path"),
        (&[("a", Field::Si(1.0)), ("a.b", Field::Si(1.0))], "in another way"),
        (&[("a", Field::Si(1.0)), ("a", Field::Si(1.0))], "is there twice"),
        (&[("", Field::None)], "this is no path"),
    ] {
        let error = Document::from_si(fields.iter().copied()).unwrap_err().to_string();
        assert!(error.contains(words), "{error}");
    }
    let refused = of(Field::Si(-1.0)).unwrap_err();
    assert_eq!(refused.number(), 1, "{refused}");
    assert!(refused.to_string().starts_with("springs[0] (main): rate = -1 N/m"), "{refused}");
}

#[test]
fn every_bound_is_named_and_every_echo_is_short() {
    let long = |text: &str| {
        let said = Coolant::from_text(text).unwrap_err().to_string();
        assert!(said.len() < 20_000, "{} bytes", said.len());
        said
    };
    assert!(long(&"x".repeat(MOST_BYTES + 1)).contains("at most 4000000 are read"));
    let path = "x".repeat(MOST_BYTES);
    let said = Document::from_si([(path.as_str(), Field::Si(1.0))]).unwrap_err().to_string();
    assert!(said.contains("this is no path") && said.len() < 300, "{said}");
    assert_eq!(within_bytes(MOST_BYTES as u64), Ok(()));
    assert_eq!(
        within_bytes(1_000_000_000).unwrap_err().to_string(),
        "the document has 1000000000 bytes; at most 4000000 are read: is this the right file?"
    );
    let keys: Vec<String> = (0..=MOST_VALUES).map(|key| format!("\"{key}\": 1")).collect();
    assert!(
        Document::from_text(&format!("{{{}}}", keys.join(",")))
            .unwrap_err()
            .to_string()
            .contains("100000 values")
    );
    let toml: String = (0..=MOST_VALUES).map(|key| format!("k{key} = 1\n")).collect();
    assert!(Document::from_text(&toml).unwrap_err().to_string().contains("100000 values"));
    let text = format!("liquid = \"{}\"", "w".repeat(LONGEST_TEXT + 1));
    assert!(long(&text).contains("more than 10000 characters"));
    assert!(long(&format!("liquid = \"{}\"", "w".repeat(LONGEST_TEXT))).contains("is not a choice"));
    assert!(long(&format!("{} = 1", "k".repeat(1_600_000))).contains("there is no key"));
    assert!(long(&format!("{{\"{}\": 1}}", "k".repeat(1_600_000))).contains("there is no key"));
    let marking = format!("marking = \"{}\"", "1 ".repeat(800_000));
    let tyre = crate::tyre::Tyre::from_text(&marking).unwrap_err().to_string();
    assert!(tyre.contains("more than 10000 characters") && tyre.len() < 1000, "{tyre}");
    let tyre = crate::tyre::Tyre::new(&"1 ".repeat(800_000)).unwrap_err().to_string();
    assert!(tyre.contains("more than 60 characters") && tyre.len() < 300, "{tyre}");
    let fields = (0..=MOST_VALUES).map(|_| ("a.b", Field::Si(f64::NAN)));
    assert!(Document::from_si(fields).unwrap_err().to_string().contains("100000 values"));
}

#[test]
fn none_and_nothing_are_two_things_and_both_come_back() {
    let spring = format!("{{\"springs\":[{HELPER},{HELPER}]");
    for (rest, spacers) in [
        (r#","spacers":"none"}"#, Stated::None),
        ("}", Stated::Unknown),
        (r#","spacers":"5 mm"}"#, Stated::Given(Value::parse("5 mm").unwrap())),
    ] {
        let text = format!("{spring}{rest}");
        let stack = Stack::from_text(&text).unwrap();
        assert_eq!(stack.spacers, spacers);
        assert_eq!(stack.to_json().unwrap(), text);
    }
    let wrong = Stack::from_text(&format!("{spring},\"spacers\": \"5 psi\"}}")).unwrap_err().to_string();
    assert!(wrong.contains("spacers: `5 psi`"), "{wrong}");
    let filled = [("spacers", Field::None), ("springs[0].name", Field::Text("main"))];
    let none = Document::from_si(filled).and_then(|document| Stack::from_document(&document)).unwrap_err();
    assert!(!none.to_string().contains("spacers"), "{none}");
}

#[test]
fn none_is_refused_by_name_where_there_is_always_one() {
    for (from, key) in
        [("\"230 °F\"", "hottest"), ("\"ethylene_glycol\"", "liquid"), ("\"5000 ft\"", "altitude")]
    {
        let (_, at, message) = refused(&COOLANT.replace(from, "\"none\""));
        assert_eq!(at, key);
        assert!(message.starts_with("there is always one, so `none` is not allowed here"), "{message}");
    }
}

/// As a program writes it: the refusal is the model's own, with its limits.
#[test]
fn a_number_that_is_none_is_refused_by_its_name() {
    for number in [f64::NAN, f64::INFINITY] {
        for key in ["hottest", "volume_share"] {
            let mut document = Document::from_text(COOLANT).unwrap();
            document.put(&[key.to_owned()], number, true);
            let refused = Coolant::from_document(&document).unwrap_err();
            let Error::Document(faults) = &refused else { panic!("{refused:?}") };
            assert_eq!((faults.len(), faults[0].key.as_str(), refused.number()), (1, key, 1), "{refused}");
            assert!(refused.to_string().contains(&format!("{key} = {number} is not a finite ")), "{refused}");
        }
    }
    let mut document = Document::from_text(COOLANT).unwrap();
    document.put(&["parts".to_owned(), "0".to_owned()], f64::NAN, true);
    assert_eq!(document, Document::from_text(COOLANT).unwrap(), "a place that is not there");
    document.put(&["cap".to_owned(), "value".to_owned()], f64::NAN, false);
    assert!(Coolant::from_document(&document).unwrap_err().to_string().contains("cap"));
}

#[test]
fn a_fault_keeps_no_endless_key() {
    let fault = Fault::new("k".repeat(1_000_000), "no");
    assert!(fault.key.chars().count() <= 60 && fault.to_string().len() < 100);
}

/// The written text is not compared, the tolerance is.
#[test]
fn values_are_equal_as_quantities_with_their_tolerances() {
    let value = |text: &str| serde_json::from_str::<Value<Length>>(&format!("{text:?}")).unwrap();
    assert_eq!(value("1 in"), value("25.4 mm"));
    assert_eq!(value("1 in"), Value::new(Length::of::<mm>(25.4)));
    assert_eq!(value("1 in +/- 1 mm"), value("25.4 mm +/- 0.1 cm"));
    for other in ["1.01 in", "1 in +/- 1 mm", "1 in +/- 2 mm"] {
        assert_ne!(value("1 in"), value(other));
    }
    assert_ne!(value("1 in +/- 1 mm"), value("1 in +/- 2 mm"));
}
