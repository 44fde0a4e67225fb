//! Valid documents, gone wrong: keys dropped, doubled, retyped, numbers out of range, text without end.

use crate::catalogue::Random;
use crate::sheets::quoted;
use serde_json::{Value, json};

/// Texts for any key.
const TEXTS: [&str; 16] = [
    "none",
    "",
    " ",
    "NaN",
    "inf",
    "-1",
    "1e999",
    "0 mm",
    "5 furlong",
    "5 mm +/- 3 mm",
    "50 %",
    "1:1",
    "rear",
    "\u{0}",
    "\u{202e}5 mm",
    "±",
];

/// JSON pointers of everything below a value.
fn places(of: &Value, path: &str, found: &mut Vec<String>) {
    let mut below = |key: &str, value: &Value| {
        let path = format!("{path}/{}", key.replace('~', "~0").replace('/', "~1"));
        places(value, &path, found);
        found.push(path);
    };
    match of {
        Value::Object(table) => table.iter().for_each(|(key, value)| below(key, value)),
        Value::Array(list) => list.iter().enumerate().for_each(|(at, value)| below(&at.to_string(), value)),
        _ => {}
    }
}

/// Makes one change somewhere in a document.
pub fn change(document: &mut Value, random: &mut Random) {
    let mut found = Vec::new();
    places(document, "", &mut found);
    if found.is_empty() {
        return;
    }
    let path = random.of_these::<String>(&found).clone();
    let Some((folder, key)) = path.rsplit_once('/') else { return };
    let other = document.pointer(random.of_these::<String>(&found)).cloned().unwrap_or_default();
    let Some(parent) = document.pointer_mut(folder) else { return };
    match (random.below(8), parent) {
        (0, Value::Object(table)) => drop(table.remove(key)),
        (0, Value::Array(list)) => drop(list.pop()),
        (1, Value::Object(table)) => drop(table.insert(format!("{key}{}", random.below(3)), other)),
        (1, Value::Array(list)) => list.push(other),
        (2, Value::Array(list)) => random.shuffle(list),
        (_, parent) => {
            let Some(value) = parent.pointer_mut(&format!("/{key}")) else { return };
            *value = changed(value, other, random);
        }
    }
}

/// Another value in place of one: mostly of its own sort.
fn changed(value: &Value, other: Value, random: &mut Random) -> Value {
    match (value, random.below(10)) {
        (_, 0) => other,
        (_, 1) => json!(*random.of_these(&TEXTS)),
        (_, 2) => random
            .of_these(&[json!(null), json!(true), json!([]), json!({}), json!(17), json!([[1]])])
            .clone(),
        (Value::String(text), _) => json!(with_number(text, random)),
        (Value::Number(number), _) => json!(number.as_f64().map(|x| random.near(x))),
        (value, _) => value.clone(),
    }
}

/// A quantity with another number; another text as it stands.
fn with_number(text: &str, random: &mut Random) -> String {
    let end = text.find(|c: char| !c.is_ascii_digit() && !"+-.".contains(c)).unwrap_or(text.len());
    let (number, rest) = text.split_at(end);
    let Ok(number) = number.parse::<f64>() else { return text.to_owned() };
    let number = match random.below(6) {
        0 => random.any_number(),
        1 => 0.0,
        _ => random.near(number),
    };
    format!("{number:?}{rest}")
}

/// A text with damage to its bytes: cut off, a line doubled or lost, letters changed, nested or prolonged.
pub fn damaged(text: &str, random: &mut Random) -> String {
    let mut letters: Vec<char> = text.chars().collect();
    if letters.is_empty() {
        return "\u{0}".to_owned();
    }
    let at = random.below(letters.len());
    match random.below(8) {
        0 => letters.truncate(at),
        1 => {
            let mut lines: Vec<&str> = text.split('\n').collect();
            lines.insert(random.below(lines.len()), *random.of_these(&lines.clone()));
            return lines.join("\n");
        }
        2 => drop(letters.drain(at..(at + 1 + random.below(40)).min(letters.len()))),
        3 => {
            let strange =
                ['\u{0}', '\u{7f}', '\u{feff}', '\u{202e}', '"', '\\', '[', '{', '=', ':', ',', 'e', '-'];
            letters[at] = *random.of_these(&strange);
        }
        4 => letters.swap(at, text.chars().count() / 2),
        5 => {
            let depth = *random.of_these(&[20, 33, 200, 5000]);
            let (open, close) = *random.of_these(&[("[", "]"), ("{\"a\":", "}"), ("{a=", "}")]);
            letters.splice(at..at, format!("{}1{}", open.repeat(depth), close.repeat(depth)).chars());
        }
        6 => drop(letters.splice(at..at, std::iter::repeat_n('9', *random.of_these(&[20, 400, 20_000])))),
        _ => drop(letters.splice(at..at, quoted(random.of_these::<&str>(&TEXTS)).chars())),
    }
    letters.into_iter().collect()
}

/// Numbers in a text.
pub fn numbers(text: &str) -> impl Iterator<Item = f64> {
    text.split(|c: char| !c.is_ascii_digit() && !"+-.eE".contains(c)).filter_map(|word| word.parse().ok())
}
