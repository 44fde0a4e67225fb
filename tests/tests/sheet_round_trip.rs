//! Random sheets through TOML and JSON and back: the same sheet, the same bytes.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::sheet::Sheet;
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{DUNLIN, text, writable};
use proptest::prelude::*;
use serde_json::Value;

/// A random part of the lines, by their places among all that may be written, with random values.
fn sheet(name: &str, notes: &str, some: &[usize], seed: u64) -> Sheet {
    let all = writable();
    let mut random = Random::of(&seed.to_string());
    let head = serde_json::json!({ "version": 1, "name": name, "notes": notes });
    let mut sheet = Sheet::from_text(&head.to_string()).unwrap();
    for (path, line) in some.iter().map(|at| &all[*at]) {
        let text = text(line, &mut random);
        if let Err(error) = sheet.set(path, &text) {
            // The places of a list come in order; nothing else is refused.
            assert!(
                error.to_string().contains("the places of a list come in order"),
                "{path} = {text}: {error}"
            );
        }
    }
    sheet
}

/// The leaves of a JSON document, by their paths.
fn leaves(path: &str, value: &Value, found: &mut Vec<(String, String)>) {
    match value {
        Value::Object(table) => table.iter().for_each(|(key, inner)| {
            leaves(&if path.is_empty() { key.clone() } else { format!("{path}.{key}") }, inner, found);
        }),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(at, inner)| leaves(&format!("{path}[{at}]"), inner, found));
        }
        Value::String(text) => found.push((path.to_owned(), text.clone())),
        Value::Number(number) => found.push((path.to_owned(), number.as_f64().unwrap().to_string())),
        other => panic!("{other}"),
    }
}

fn goes_round(sheet: &Sheet) {
    let (toml, json) = (sheet.to_toml(), sheet.to_json());
    let from_toml = Sheet::from_text(&toml).unwrap_or_else(|error| panic!("{error}\n{toml}"));
    let from_json = Sheet::from_text(&json).unwrap_or_else(|error| panic!("{error}\n{json}"));
    assert_eq!(&from_toml, sheet, "{toml}");
    assert_eq!(&from_json, sheet, "{json}");
    assert_eq!((from_toml.to_toml(), from_toml.to_json()), (toml, json.clone()));
    assert_eq!(from_json.hash(), sheet.hash());
    // What stands in the document is what the sheet says of itself, line by line.
    let mut found = Vec::new();
    leaves("", &serde_json::from_str(&json).unwrap(), &mut found);
    found.retain(|(path, _)| !["version", "name", "notes"].contains(&path.as_str()));
    let mut own: Vec<(String, String)> =
        sheet.paths().map(|path| (path.to_owned(), sheet.get(path).unwrap().unwrap())).collect();
    found.sort();
    own.sort();
    assert_eq!(found, own);
    // A line out and in again.
    if let Some((path, text)) = own.last() {
        let mut changed = sheet.clone();
        if changed.remove(path).is_ok() {
            assert_ne!(&changed, sheet);
            assert_ne!(changed.hash(), sheet.hash());
            changed.set(path, text).unwrap();
            assert_eq!(&changed, sheet);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn a_random_sheet_is_the_same_after_a_round_trip(
        name in any::<String>(),
        notes in "[ -~]{0,40}|\\PC{0,10}|[\\x00-\\x1f\"\\\\\u{7f}\u{85}\u{feff}]{1,8}",
        some in prop::sample::subsequence((0..writable().len()).collect::<Vec<_>>(), 0..90),
        seed in any::<u64>(),
    ) {
        goes_round(&sheet(&name, &notes, &some, seed));
    }
}

#[test]
fn the_whole_of_every_list_and_line_goes_round() {
    let all: Vec<usize> = (0..writable().len()).collect();
    for seed in 0..20 {
        goes_round(&sheet("all", "", &all, seed));
    }
    goes_round(&Sheet::new(""));
    goes_round(&Sheet::from_text(DUNLIN).unwrap());
}

/// The text of a tiny ratio is long, but it is the number that was written.
#[test]
fn a_tiny_ratio_is_read_from_its_own_text() {
    let path = "clutch.high_friction";
    let mut sheet = Sheet::new("");
    for number in [1e-30, 1.25e-29, 0.3] {
        sheet.set_si(path, number).unwrap();
        let text = sheet.get(path).unwrap().unwrap();
        sheet.set(path, &text).unwrap();
        let again = sheet.get(path).unwrap().unwrap();
        sheet.set(path, &again).unwrap();
        assert_eq!(sheet.assess().value(path), Ok(Some(number)));
        goes_round(&sheet);
    }
}

#[test]
fn none_is_kept_on_a_line_and_on_a_table() {
    let text = "version = 1\n\n[front]\nanti_roll_bar = \"none\"\n\n[rear]\nbump_stop_travel = \"none\"\n";
    let sheet = Sheet::from_text(text).unwrap();
    assert_eq!(sheet.to_toml(), text);
    goes_round(&sheet);
    assert_eq!(sheet.get("front.anti_roll_bar").unwrap().as_deref(), Some("none"));
    let mut by_hand = Sheet::new("");
    by_hand.set("front.anti_roll_bar", "none").unwrap();
    by_hand.set("rear.bump_stop_travel", "none").unwrap();
    assert_eq!(by_hand, sheet);
    by_hand.set("rear.bump_stop_travel", "60 mm").unwrap();
    by_hand.remove("front.anti_roll_bar").unwrap();
    assert_eq!(by_hand.to_toml(), "version = 1\n\n[rear]\nbump_stop_travel = \"60 mm\"\n");
    // Of a part that no question is about it counts as missing, and the reason is told.
    let on = Sheet::from_text("front.bump_stop_travel = \"none\"\nfront.tyre = \"none\"").unwrap().assess();
    assert!(on.answers().iter().all(|answer| answer.verdict == axlewright::Verdict::NotKnown));
    let said = "the sheet says that there is no front.tyre, which still counts as missing";
    assert!(on.answers().iter().any(|answer| on.missing_text(answer).contains(said)));
}

#[test]
fn none_is_refused_where_it_says_nothing() {
    for (path, words) in [
        ("gearbox.ratios[0]", "not on a list or in one"),
        ("gearbox.ratios", "not on a list or in one"),
        ("front.natural_frequency", "is never written"),
        ("front.nothing", "there is no key `nothing`"),
    ] {
        let error = Sheet::new("").set(path, "none").unwrap_err().to_string();
        assert!(error.contains(words), "{path}: {error}");
    }
    let refused = |text: &str| Sheet::from_text(text).unwrap_err().to_string();
    assert!(refused("version = \"none\"").contains("version 1 of a sheet"));
    assert!(
        refused("[gearbox]\nratios = \"none\"").contains("line 2, column 10: gearbox.ratios: `none` stands")
    );
    let mut sheet = Sheet::new("");
    sheet.set("front.spring.rate", "30 N/mm").unwrap();
    let error = sheet.set("front.spring", "none").unwrap_err().to_string();
    assert!(error.contains("front.spring.rate is written: take it out first"), "{error}");
    sheet.set("rear.spring", "none").unwrap();
    let error = sheet.set("rear.spring.rate", "30 N/mm").unwrap_err().to_string();
    assert!(error.contains("there is no `rear.spring`: take that out first"), "{error}");
}

#[test]
fn a_sheet_tells_all_its_faults_in_the_order_of_the_document() {
    let text = "version = 2\nname = 3\n[front.spring]\nrate = \"225 lbf/inn\"\nrat = \"225 lbf/in\"\nfree_length = 9\n\
                guide = \"nome\"\n[gearbox]\nratios = [4.7, \"2 mm\"]\n[brakez]\nx = 1\n";
    let error = Sheet::from_text(text).unwrap_err();
    let axlewright::Error::Document(faults) = &error else { panic!("{error:?}") };
    let places: Vec<_> = faults.iter().map(|fault| (fault.line, fault.column, fault.key.as_str())).collect();
    let wanted = [
        (1, 11, "version"),
        (2, 8, "name"),
        (4, 8, "front.spring.rate"),
        (5, 1, "front.spring.rat"),
        (6, 15, "front.spring.free_length"),
        (7, 9, "front.spring.guide"),
        (9, 16, "gearbox.ratios[1]"),
        (10, 2, "brakez"),
    ];
    assert_eq!(places, wanted, "{error}");
    let json = Sheet::from_text("{\"front\": {\"spring\": {\"rate\": 3,\n\"rat\": 4}}, \"brakez\": {}}")
        .unwrap_err();
    let axlewright::Error::Document(faults) = &json else { panic!("{json:?}") };
    let places: Vec<_> = faults.iter().map(|fault| (fault.line, fault.column, fault.key.as_str())).collect();
    assert_eq!(
        places,
        [(1, 31, "front.spring.rate"), (2, 1, "front.spring.rat"), (2, 13, "brakez")],
        "{json}"
    );
}
