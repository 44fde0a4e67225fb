//! Whether the core meets a row, and whether a wrong row would be seen.

use super::run::{gates, run};
use axlewright::Result as Answer;
use axlewright_tests::rows::rows;
use axlewright_tests::{Found, Results};
use serde_json::{Value, json};

/// Why the row is not met, or the largest error over its tolerance.
pub fn judge(row: &Value, answer: &Answer<Results>) -> Result<f64, String> {
    let expected = row["expected"].as_object().unwrap();
    let results = match (expected.contains_key("error"), answer) {
        (true, Ok(results)) => return Err(format!("gives {results:?} and must be refused")),
        (true, Err(error)) => {
            let sentence = error.to_string();
            let argument = expected.get("argument").map_or("", |name| name.as_str().unwrap());
            return if sentence.contains(argument) && !sentence.is_empty() {
                Ok(0.0)
            } else {
                Err(format!("{sentence:?} does not name {argument}"))
            };
        }
        (false, Err(error)) => return Err(error.to_string()),
        (false, Ok(results)) => results,
    };
    let mut worst = 0.0_f64;
    for (name, wanted) in expected {
        let found = results.iter().find_map(|(known, found)| (known == name).then_some(found));
        match (found, wanted) {
            (Some(Found::Word(word)), Value::String(wanted)) if word == wanted => {}
            // Not known.
            (Some(Found::Number(found)), Value::Null) if found.is_nan() => {}
            (Some(Found::Number(found)), Value::Number(wanted)) => {
                let wanted = wanted.as_f64().unwrap();
                let tolerance = &row["tolerance"];
                let bound = match (&tolerance["abs"], &tolerance["rel"]) {
                    (Value::Number(abs), Value::Null) => abs.as_f64().unwrap(),
                    (Value::Null, Value::Number(rel)) => rel.as_f64().unwrap() * wanted.abs(),
                    _ => panic!("tolerance {tolerance}"),
                };
                let error = (found - wanted).abs();
                if error > bound || error.is_nan() {
                    return Err(format!(
                        "{name} = {found}, expected {wanted}: off by {error:e}, allowed {bound:e}"
                    ));
                }
                if error > 0.0 {
                    worst = worst.max(error / bound);
                }
            }
            other => return Err(format!("{name}: {other:?}")),
        }
    }
    Ok(worst)
}

#[test]
fn a_row_that_is_wrong_is_not_met() {
    let mut changed = 0;
    for mut row in rows() {
        let answer = run(&row);
        if row["expected"].get("error").is_some() {
            row["expected"] = json!({ "value": 1.0 });
            assert!(answer.is_ok() || judge(&row, &answer).is_err(), "{row}");
            continue;
        }
        for name in row["expected"].as_object().unwrap().keys().cloned().collect::<Vec<_>>() {
            let Some(wanted) = row["expected"][&name].as_f64() else { continue };
            let (abs, rel) = (row["tolerance"]["abs"].as_f64(), row["tolerance"]["rel"].as_f64());
            let away = 2.5 * abs.unwrap_or_else(|| rel.unwrap() * wanted.abs()) + 1e-9 * wanted.abs() + 1e-30;
            let before = row["expected"][&name].take();
            row["expected"][&name] = json!(wanted + away);
            let up = judge(&row, &answer).is_err();
            row["expected"][&name] = json!(wanted - away);
            let down = judge(&row, &answer).is_err();
            // A low-confidence row may be off by more than its tolerance to one side.
            assert!(up && down || !gates(&row) && (up || down), "{row}");
            row["expected"][&name] = before;
            changed += 1;
        }
    }
    assert!(changed > 0);
}
