//! Ten thousand seeded mutations of documents. Each carries the oracle of what was done to it: what breaks a document is refused at its
//! line, by its key and, for a slip of the pen, with the nearest key; what does not break it changes no bit of the assessment. Nothing panics.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Error;
use axlewright::base::section::{Content, Line};
use axlewright::sheet::{Assessment, Sheet};
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{DUNLIN, Node, Written, kind, quoted, steps, writable};
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};

const MUTATIONS: usize = 10_000;

/// What has to happen to a document.
enum Oracle {
    /// It is read, and its assessment is the same to the bit.
    Harmless,
    /// It is refused: on which line, by which key, with which words in the sentence.
    Refused { line: usize, key: String, words: Vec<String> },
    /// It is refused somewhere up to this line.
    Broken { last: usize },
}

struct Mutated {
    text: String,
    oracle: Oracle,
}

/// What everything is made from.
struct Case<'a> {
    random: &'a mut Random,
    json: bool,
    /// The lines of the sheet: path, text, what stands on them.
    lines: Vec<(String, String, &'static Line)>,
}

/// The literal of a line: a ratio without a unit is a number.
fn literal(text: &str, line: &Line) -> String {
    let is_number = kind(line).is_some_and(|kind| kind.name == "Ratio") && text.parse::<f64>().is_ok();
    if is_number { text.to_owned() } else { quoted(text) }
}

fn levenshtein(one: &str, two: &str) -> usize {
    let two: Vec<char> = two.chars().collect();
    let mut row: Vec<usize> = (0..=two.len()).collect();
    for (i, a) in one.chars().enumerate() {
        let mut before = row[0];
        row[0] = i + 1;
        for (j, b) in two.iter().enumerate() {
            let cost = before + usize::from(a != *b);
            before = row[j + 1];
            row[j + 1] = cost.min(row[j] + 1).min(row[j + 1] + 1);
        }
    }
    row[two.len()]
}

/// A slip of the pen: one letter more, less or another.
fn slip(word: &str, random: &mut Random) -> String {
    let mut letters: Vec<char> = word.chars().collect();
    let (at, letter) = (random.below(letters.len()), char::from(b'a' + random.below(26) as u8));
    match random.below(3) {
        0 => letters.insert(at, letter),
        1 if letters.len() > 1 => drop(letters.remove(at)),
        _ => letters[at] = letter,
    }
    letters.into_iter().collect()
}

/// A text of another kind of quantity.
fn of_another_kind(name: &str, random: &mut Random) -> &'static str {
    let all = [
        ("Mass", "5 kg"),
        ("Length", "5 mm"),
        ("Torque", "5 N·m"),
        ("Power", "5 kW"),
        ("LinearStiffness", "5 N/mm"),
        ("Velocity", "5 mph"),
        ("Temperature", "5 °C"),
        ("Mass", "5 lb +/- 1 lb"),
        ("Length", "5 1/2 in"),
    ];
    let others: Vec<&str> = all.iter().filter(|(kind, _)| *kind != name).map(|(_, text)| *text).collect();
    random.of_these::<&str>(&others)
}

impl Case<'_> {
    fn node(&self) -> Node {
        let lines = self.lines.iter().map(|(path, text, line)| (path.as_str(), literal(text, line)));
        let head = [("version", "1".to_owned()), ("name", quoted("Dunlin"))];
        Node::of(head.into_iter().chain(lines))
    }

    fn write(&self, node: &Node) -> Written {
        if self.json { node.json() } else { node.toml() }
    }

    /// A line, of those that this accepts.
    fn any(&mut self, accepts: impl Fn(&Line) -> bool) -> Option<(String, String, &'static Line)> {
        let all: Vec<_> = self.lines.iter().filter(|(_, _, line)| accepts(line)).cloned().collect();
        (!all.is_empty()).then(|| self.random.of_these(&all).clone())
    }

    /// The document with another literal on a line, which is refused there.
    fn with(&self, path: &str, literal: String, words: &[&str]) -> Mutated {
        let mut node = self.node();
        node.put(&steps(path), Node::Leaf(literal));
        let written = self.write(&node);
        let oracle = Oracle::Refused {
            line: written.lines[path],
            key: path.to_owned(),
            words: words.iter().map(|word| (*word).to_owned()).collect(),
        };
        Mutated { text: written.text, oracle }
    }

    /// One key renamed.
    fn renamed(&mut self) -> Option<Mutated> {
        let mut node = self.node();
        let mut tables = Vec::new();
        node.tables("", &mut tables);
        let folder = self.random.of_these(&tables).clone();
        let at = if folder.is_empty() { Some(&mut node) } else { node.at(&steps(&folder)) };
        let Some(Node::Table(entries)) = at else { panic!("{folder} is no table") };
        if entries.is_empty() {
            return None;
        }
        let place = self.random.below(entries.len());
        let old = entries[place].0.clone();
        let new = slip(&old, self.random);
        let path = if folder.is_empty() { new.clone() } else { format!("{folder}.{new}") };
        let all = writable();
        let known = |path: &str| {
            ["version", "name", "notes"].contains(&path)
                || all.iter().any(|(known, _)| {
                    known
                        .strip_prefix(path)
                        .is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
                })
        };
        if new.is_empty() || known(&path) {
            return None;
        }
        entries[place].0 = new.clone();
        let written = self.write(&node);
        let oracle = Oracle::Refused {
            line: written.lines[&path],
            key: path,
            words: vec![format!("nearest {new} {old}")],
        };
        Some(Mutated { text: written.text, oracle })
    }

    fn breaking(&mut self, what: &str) -> Option<Mutated> {
        let is_quantity = |line: &Line| kind(line).is_some();
        match what {
            "typo in a key" => self.renamed(),
            "wrong kind of unit" => {
                let (path, _, line) = self.any(is_quantity)?;
                let text = of_another_kind(kind(line)?.name, self.random);
                Some(self.with(&path, quoted(text), &[text]))
            }
            "bare number" => {
                let (path, _, _) = self.any(|line| kind(line).is_some_and(|kind| kind.name != "Ratio"))?;
                let number = *self.random.of_these(&["12", "0.5", "-3", "1e3"]);
                Some(self.with(&path, number.to_owned(), &["has no unit"]))
            }
            "out of range" => {
                let (path, _, line) = self.any(|line| is_quantity(line) && line.range.upper < f64::MAX)?;
                let range = line.range;
                let below = range.lower - 0.01 - range.lower.abs() * 0.01;
                let beyond = range.upper + 0.01 + range.upper.abs() * 0.01;
                let value = match self.random.below(3) {
                    0 if range.lower_open => range.lower,
                    1 => below,
                    _ => beyond,
                };
                let text = format!("{value} {}", kind(line)?.units[0].symbol);
                Some(self.with(
                    &path,
                    quoted(text.trim_end()),
                    &["outside its range", "valid:", range.source],
                ))
            }
            "unknown choice" => {
                let (path, text, line) = self.any(|line| matches!(line.content, Content::Choice(_)))?;
                let Content::Choice(words) = line.content else { return None };
                let wrong = slip(&text, self.random);
                let oracle = format!(
                    "choices: {}",
                    words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
                );
                (!words.contains(&wrong.as_str()))
                    .then(|| self.with(&path, quoted(&wrong), &[&wrong, &oracle]))
            }
            "unreadable marking" => {
                let (path, _, _) = self.any(|line| matches!(line.content, Content::Marking(_)))?;
                let wrong =
                    *self.random.of_these(&["235/70", "", "a tyre", "235/70R", "70R16", "999999/70R16"]);
                Some(self.with(&path, quoted(wrong), &[]))
            }
            "no quantity" => {
                let (path, _, _) = self.any(is_quantity)?;
                let wrong = *self.random.of_these(&[
                    "",
                    " ",
                    "soon",
                    "5 furlongs",
                    "2,5 mm",
                    "NaN",
                    "inf mm",
                    "3 to 5 mm",
                    "1e999 kg",
                    "±",
                    "5 mm\u{1}",
                    "5 m\u{0}m",
                    "12 kg +/-",
                    "\u{202e}5 mm",
                ]);
                Some(self.with(&path, quoted(wrong), &[]))
            }
            "wrong type" => {
                let (path, _, line) = self.any(|_| true)?;
                let ratio = kind(line).is_some_and(|kind| kind.name == "Ratio");
                let wrong = *self.random.of_these(&[
                    "true",
                    "false",
                    "[]",
                    "[1, 2]",
                    if ratio { "true" } else { "17" },
                ]);
                let other = if self.json { "null" } else { "1979-05-27" };
                let wrong = if self.random.once_in(4) { other } else { wrong };
                Some(self.with(&path, wrong.to_owned(), &[]))
            }
            "table of a quantity gone wrong" => {
                let (path, _, _) = self.any(is_quantity)?;
                let pairs = *self.random.of_these(&[
                    &[("vlaue", "5"), ("unit", "\"mm\"")][..],
                    &[("value", "5")],
                    &[("unit", "\"mm\"")],
                    &[("value", "\"5\""), ("unit", "\"mm\"")],
                    &[("value", "5"), ("unit", "\"furlong\"")],
                    &[("value", "5"), ("unit", "\"mm\""), ("tolerance", "2")],
                    &[],
                ]);
                let sign = if self.json { ":" } else { " =" };
                let key = |key: &str| if self.json { quoted(key) } else { key.to_owned() };
                let pairs: Vec<String> = pairs.iter().map(|(k, v)| format!("{}{sign} {v}", key(k))).collect();
                Some(self.with(&path, format!("{{ {} }}", pairs.join(", ")), &[]))
            }
            "scalar for a table or list" => {
                let mut node = self.node();
                let paths = [
                    "front",
                    "front.spring",
                    "engine",
                    "engine.curve",
                    "gearbox.ratios",
                    "engine.curve[0]",
                    "wanted",
                ];
                let path = *self.random.of_these(&paths);
                let wrong = *self.random.of_these(&["5", "\"5 mm\"", "true"]);
                node.at(&steps(path))?;
                node.put(&steps(path), Node::Leaf(wrong.to_owned()));
                let written = self.write(&node);
                let oracle = Oracle::Refused {
                    line: written.lines[path],
                    key: path.to_owned(),
                    words: vec!["expected".to_owned()],
                };
                Some(Mutated { text: written.text, oracle })
            }
            "table for a list, list for a table" => {
                let mut node = self.node();
                let (path, wrong) = *self.random.of_these(&[
                    ("gearbox.ratios", Node::Table as fn(_) -> _),
                    ("engine.curve", Node::Table as fn(_) -> _),
                ]);
                let (path, wrong) = match self.random.once_in(2) {
                    true => (path, wrong(vec![("first".to_owned(), Node::Leaf("1".to_owned()))])),
                    false => ("front.spring", Node::List(vec![Node::Leaf("1".to_owned())])),
                };
                node.at(&steps(path))?;
                node.put(&steps(path), wrong);
                let written = self.write(&node);
                let oracle = Oracle::Refused {
                    line: written.lines[path],
                    key: path.to_owned(),
                    words: vec!["expected".to_owned()],
                };
                Some(Mutated { text: written.text, oracle })
            }
            "unknown table" => {
                let mut node = self.node();
                let word =
                    *self.random.of_these(&["sunroof", "ashtray", "notes2", "x", "Front", "front ", "", "é"]);
                let folder = *self.random.of_these(&["", "front", "rear.spring", "engine"]);
                let mut at: Vec<String> = if folder.is_empty() { vec![] } else { steps(folder) };
                at.push(word.to_owned());
                let inner = if self.random.once_in(2) {
                    Node::Table(vec![("size".to_owned(), Node::Leaf("\"5 mm\"".to_owned()))])
                } else {
                    Node::Leaf("\"5 mm\"".to_owned())
                };
                node.put(&at, inner);
                let path = at.join(".");
                let written = self.write(&node);
                let line = written.lines[&path];
                Some(Mutated {
                    text: written.text,
                    oracle: Oracle::Refused { line, key: path, words: vec![] },
                })
            }
            "path as a key" => {
                let (path, text, line) = self.any(|_| true)?;
                let node = self.node();
                let Node::Table(mut entries) = node else { return None };
                let (folder, key) = path.rsplit_once('.')?;
                let key = if self.random.once_in(2) { path.clone() } else { format!("{folder}.{key}") };
                entries.insert(0, (key.clone(), Node::Leaf(literal(&text, line))));
                let written = self.write(&Node::Table(entries));
                let oracle = Oracle::Refused { line: if self.json { 2 } else { 1 }, key, words: vec![] };
                Some(Mutated { text: written.text, oracle })
            }
            "line that is never written" => {
                let never: Vec<String> = axlewright::sheet::lines()
                    .filter(|(_, path, line)| !line.written && !path.contains("[]"))
                    .map(|(_, path, _)| path)
                    .collect();
                let path = self.random.of_these(&never).clone();
                Some(self.with(&path, "\"5 mm\"".to_owned(), &[])).filter(|_| {
                    // A table above it that no line may be written in is refused first.
                    let (folder, _) = path.rsplit_once('.').unwrap();
                    writable().iter().any(|(known, _)| known.starts_with(&format!("{folder}.")))
                })
            }
            "duplicate key" => {
                let (path, text, line) = self.any(|line| line.places == 1)?;
                let written = self.write(&self.node());
                let at = written.lines[&path];
                let (_, key) = path.rsplit_once('.')?;
                let literal = literal(&text, line);
                let again = if self.json {
                    format!("  {}: {literal},", quoted(key))
                } else {
                    format!("{key} = {literal}")
                };
                let mut all: Vec<&str> = written.text.split('\n').collect();
                // TOML is refused at the second, JSON too: the same line doubled.
                all.insert(at - 1, &again);
                let oracle =
                    Oracle::Refused { line: at + 1, key: String::new(), words: vec![key.to_owned()] };
                Some(Mutated { text: all.join("\n"), oracle })
            }
            "list too long" => {
                let (list, most, item) = if self.random.once_in(2) {
                    ("gearbox.ratios", 12, Node::Leaf("1.5".to_owned()))
                } else {
                    let point = [("speed", "\"900 rpm\""), ("torque", "\"90 N·m\"")];
                    let pairs = point.map(|(key, text)| (key.to_owned(), Node::Leaf(text.to_owned())));
                    ("engine.curve", 24, Node::Table(pairs.to_vec()))
                };
                let mut node = self.node();
                let many = most + 1 + self.random.below(100);
                node.put(&steps(list), Node::List(vec![item; many]));
                let written = self.write(&node);
                let line = written.lines[&format!("{list}[{most}]")];
                let words = vec![format!("at most {most} entries")];
                Some(Mutated {
                    text: written.text,
                    oracle: Oracle::Refused { line, key: list.to_owned(), words },
                })
            }
            "control character" => {
                let (path, text, _) = self.any(is_quantity)?;
                let control = *self.random.of_these(&['\u{0}', '\u{1}', '\u{8}', '\u{b}', '\u{1f}']);
                let mut mutated = self.with(&path, format!("\"{text}{control}\""), &[]);
                // The parser of the format refuses it, which knows no keys.
                if let Oracle::Refused { key, .. } = &mut mutated.oracle {
                    key.clear();
                }
                Some(mutated)
            }
            "nested without end" => {
                let (path, _, _) = self.any(|_| true)?;
                let depth = *self.random.of_these(&[17, 40, 90, 130, 1000, 20_000]);
                let (open, close) = match (self.random.below(2), self.json) {
                    (0, _) => ("[", "]"),
                    (_, true) => ("{\"a\": ", "}"),
                    (_, false) => ("{ a = ", " }"),
                };
                let mut mutated =
                    self.with(&path, format!("{}1{}", open.repeat(depth), close.repeat(depth)), &[]);
                if let Oracle::Refused { key, .. } = &mut mutated.oracle {
                    key.clear();
                }
                Some(mutated)
            }
            "no number" => {
                let (path, _, _) = self.any(|line| kind(line).is_some_and(|kind| kind.name == "Ratio"))?;
                let wrong: &[&str] = match self.json {
                    true => &["NaN", "Infinity", "1e999", "01", "+1", ".5", "0x10"],
                    false => &[
                        "nan",
                        "inf",
                        "-inf",
                        "1e999",
                        "0x7fffffffffffffff",
                        "01",
                        ".5",
                        "99999999999999999999",
                    ],
                };
                let wrong = *self.random.of_these(wrong);
                let mut mutated = self.with(&path, wrong.to_owned(), &[]);
                if let Oracle::Refused { key, .. } = &mut mutated.oracle {
                    key.clear();
                }
                Some(mutated)
            }
            "text cut off" => {
                let written = self.write(&self.node());
                let ends: Vec<usize> = written.text.char_indices().map(|(at, _)| at).collect();
                let end = ends[self.random.below(ends.len())];
                let text = written.text[..end].to_owned();
                let last = text.matches('\n').count() + 1;
                // A TOML document that ends after a line is a shorter document; one that ends within text is none.
                let open = text.rsplit('\n').next().unwrap().matches('"').count() % 2 == 1;
                (self.json || open).then_some(Mutated { text, oracle: Oracle::Broken { last } })
            }
            "version of another library" => {
                let wrong = *self.random.of_these(&["2", "0", "\"1\"", "1.5", "true"]);
                Some(self.with("version", wrong.to_owned(), &["reads version 1"]))
            }
            "name that is no text" => {
                let wrong = *self.random.of_these(&["5", "true", "[\"a\"]"]);
                Some(self.with("name", wrong.to_owned(), &["expected text"]))
            }
            "no table" if self.json => {
                let text = *self.random.of_these(&["{", "{]", "{\"a\"}", "{} {}", "{\"a\": 1,}", "{'a': 1}"]);
                Some(Mutated { text: text.to_owned(), oracle: Oracle::Broken { last: 1 } })
            }
            "no table" => {
                let text = *self.random.of_these(&[
                    "5",
                    "[1, 2]\n",
                    "= 5",
                    "a",
                    "\"x\"",
                    "[front\n",
                    "a = \"",
                    "[[front]]\n",
                    "\u{0}",
                ]);
                Some(Mutated { text: text.to_owned(), oracle: Oracle::Broken { last: 2 } })
            }
            other => panic!("{other}"),
        }
    }

    fn harmless(&mut self, what: &str) -> Option<Mutated> {
        let mut node = self.node();
        let text = match what {
            "another order" => {
                node.shuffle(self.random);
                self.write(&node).text
            }
            "white space" => {
                let text = self.write(&node).text;
                let mut out = String::new();
                for line in text.lines() {
                    let indent = *self.random.of_these(&["", " ", "\t", "      "]);
                    let after = *self.random.of_these(&["", " ", "\t", "\n", "\n\n"]);
                    out.push_str(&format!("{indent}{line}{after}\n"));
                }
                out
            }
            "comments" if !self.json => {
                let text = self.write(&node).text;
                let comment =
                    |random: &mut Random| *random.of_these(&["", " # invented", "# [x] = \"5 mm\""]);
                text.lines().map(|line| format!("{line}{}\n", comment(self.random))).collect()
            }
            "other line ends" => self.write(&node).text.replace('\n', "\r\n"),
            "byte order mark" => format!("\u{feff}{}", self.write(&node).text),
            "all on one line" if self.json => self.write(&node).text.replace('\n', " "),
            "number written otherwise" => {
                for (path, text, line) in self.lines.clone() {
                    let number: String =
                        text.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
                    let Some(value) = number.parse::<f64>().ok().filter(|_| kind(line).is_some()) else {
                        continue;
                    };
                    if text.contains(',') || text[number.len()..].starts_with(['/', ':']) {
                        continue;
                    }
                    let decimals = number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
                    let again = match self.random.below(3) {
                        0 => format!("{value:.*}", decimals + 1 + self.random.below(4)),
                        1 => format!("{value:e}"),
                        _ => number.clone(),
                    };
                    let again = text.replacen(&number, &again, 1);
                    node.put(&steps(&path), Node::Leaf(literal(&again, line)));
                }
                self.write(&node).text
            }
            "ratio as text" => {
                for (path, text, line) in self.lines.clone() {
                    if kind(line).is_some_and(|kind| kind.name == "Ratio") && self.random.once_in(2) {
                        node.put(&steps(&path), Node::Leaf(quoted(&text)));
                    }
                }
                self.write(&node).text
            }
            "unit spelled otherwise" => {
                for (path, text, line) in self.lines.clone() {
                    let Some(kind) = kind(line).filter(|_| !text.contains("+/-")) else { continue };
                    let Some((number, symbol)) = text.trim().split_once(' ') else { continue };
                    let is = |unit: &&axlewright::units::Unit| {
                        unit.symbol == symbol || unit.spellings.contains(&symbol) || unit.name == symbol
                    };
                    let Some(unit) = kind.units.iter().find(is) else { panic!("{path}: {text}") };
                    let spellings = [&[unit.symbol, unit.name][..], unit.spellings].concat();
                    let spelling = *self.random.of_these(&spellings);
                    node.put(&steps(&path), Node::Leaf(quoted(&format!("{number} {spelling}"))));
                }
                self.write(&node).text
            }
            "quantity as a table" => {
                for (path, text, line) in self.lines.clone() {
                    let Some((number, rest)) = text.trim().split_once(' ') else { continue };
                    if kind(line).is_none() || number.parse::<f64>().is_err() || self.random.once_in(2) {
                        continue;
                    }
                    let (unit, tolerance) = rest.split_once(" +/- ").unwrap_or((rest, ""));
                    let mut pairs = vec![("value", number.to_owned()), ("unit", quoted(unit))];
                    if unit.starts_with("+/-") {
                        continue;
                    }
                    if !tolerance.is_empty() {
                        pairs.push(("tolerance", quoted(tolerance)));
                    }
                    self.random.shuffle(&mut pairs);
                    let sign = if self.json { ":" } else { " =" };
                    let key = |key: &str| if self.json { quoted(key) } else { key.to_owned() };
                    let pairs: Vec<String> =
                        pairs.iter().map(|(k, v)| format!("{}{sign} {v}", key(k))).collect();
                    node.put(&steps(&path), Node::Leaf(format!("{{ {} }}", pairs.join(", "))));
                }
                self.write(&node).text
            }
            "keys in quotes" => {
                let text = self.write(&node).text;
                if self.json {
                    text.replace("\"front\"", "\"fron\\u0074\"").replace("\"rate\"", "\"\\u0072ate\"")
                } else {
                    text.replace("\nrate =", "\n\"rate\" =")
                        .replace("[front.spring]", "[\"front\" . 'spring']")
                }
            }
            "keys with dots" if !self.json => {
                self.lines
                    .iter()
                    .filter(|(path, _, _)| !path.contains('['))
                    .fold(String::from("version = 1\nname = \"Dunlin\"\n"), |out, (path, text, line)| {
                        format!("{out}{path} = {}\n", literal(text, line))
                    })
                    + &{
                        let lists = self.lines.iter().filter(|(path, _, _)| path.contains('['));
                        let node =
                            Node::of(lists.map(|(path, text, line)| (path.as_str(), literal(text, line))));
                        // Headings of tables that were opened by dots would be refused, so the lists are dotted too.
                        let Node::Table(tables) = node else { return None };
                        let mut out = String::new();
                        for (folder, inner) in tables {
                            let text = inner.toml().text;
                            for (at, line) in text.lines().enumerate() {
                                let opens = line.ends_with("= [");
                                out.push_str(&if opens {
                                    format!("{folder}.{line}\n")
                                } else {
                                    format!("{line}\n")
                                });
                                assert!(at > 0 || opens, "{text}");
                            }
                        }
                        out
                    }
            }
            "literal strings" if !self.json => {
                let text = self.write(&node).text;
                if text.contains('\\') { return None } else { text.replace('"', "'") }
            }
            "another name" => {
                let name = *self.random.of_these(&[
                    "",
                    "Dunlin \u{1F69A}\n\t\"second\" \\ build",
                    "x = 5",
                    "\u{7f}\u{85}",
                ]);
                node.put(&steps("name"), Node::Leaf(quoted(name).replace('\u{7f}', "\\u007f")));
                node.put(&steps("notes"), Node::Leaf(quoted("as weighed")));
                self.write(&node).text
            }
            "without a version" => {
                let Node::Table(entries) = &mut node else { return None };
                entries.retain(|(key, _)| key != "version" && key != "name");
                self.write(&node).text
            }
            "version with a point" => {
                node.put(&steps("version"), Node::Leaf("1.0".to_owned()));
                self.write(&node).text
            }
            _ => return None,
        };
        Some(Mutated { text, oracle: Oracle::Harmless })
    }
}

const BREAKING: [&str; 22] = [
    "typo in a key",
    "wrong kind of unit",
    "bare number",
    "out of range",
    "unknown choice",
    "unreadable marking",
    "no quantity",
    "wrong type",
    "table of a quantity gone wrong",
    "scalar for a table or list",
    "table for a list, list for a table",
    "unknown table",
    "path as a key",
    "line that is never written",
    "duplicate key",
    "list too long",
    "control character",
    "nested without end",
    "no number",
    "text cut off",
    "version of another library",
    "name that is no text",
];
const HARMLESS: [&str; 16] = [
    "another order",
    "white space",
    "comments",
    "other line ends",
    "byte order mark",
    "all on one line",
    "number written otherwise",
    "ratio as text",
    "unit spelled otherwise",
    "quantity as a table",
    "keys in quotes",
    "keys with dots",
    "literal strings",
    "another name",
    "without a version",
    "version with a point",
];

/// Every number and verdict of an assessment, to the bit.
fn bits(of: &Assessment) -> Vec<([u64; 6], &'static str)> {
    let answers = of.answers().iter();
    answers
        .map(|answer| {
            let numbers =
                [answer.value, answer.low, answer.high, answer.margin, answer.wanted, answer.uncertainty];
            (numbers.map(f64::to_bits), answer.verdict.word())
        })
        .collect()
}

/// What is wrong with the outcome, if anything.
fn judged(mutated: &Mutated, expected: &[([u64; 6], &str)]) -> Result<(), String> {
    let read = catch_unwind(AssertUnwindSafe(|| Sheet::from_text(&mutated.text)));
    let read = read.map_err(|_| "it panics".to_owned())?;
    let refusal = |error: Error| match error {
        Error::Document(faults) => Ok((faults[0].line, faults[0].key.clone(), faults[0].message.clone())),
        other => Err(format!("another refusal: {other:?}")),
    };
    match (&mutated.oracle, read) {
        (Oracle::Harmless, Err(error)) => Err(format!("refused: {error}")),
        (Oracle::Harmless, Ok(sheet)) => {
            let assessment =
                catch_unwind(AssertUnwindSafe(|| sheet.assess())).map_err(|_| "assess panics")?;
            if bits(&assessment) == expected { Ok(()) } else { Err("another assessment".to_owned()) }
        }
        (_, Ok(_)) => Err("not refused".to_owned()),
        (Oracle::Broken { last }, Err(error)) => {
            let (line, _, message) = refusal(error)?;
            let good = (1..=*last).contains(&line) && !message.is_empty();
            if good { Ok(()) } else { Err(format!("line {line}, not one up to {last}: {message}")) }
        }
        (Oracle::Refused { line, key, words }, Err(error)) => {
            let said = error.to_string();
            let (at, named, message) = refusal(error)?;
            if at != *line {
                return Err(format!("line {at}, not {line}: {said}"));
            }
            if !key.is_empty() && named != *key {
                return Err(format!("key `{named}`, not `{key}`: {said}"));
            }
            for word in words {
                if let Some(pair) = word.strip_prefix("nearest ") {
                    let (slip, meant) = pair.split_once(' ').unwrap();
                    let near = message.split("did you mean `").nth(1).and_then(|rest| rest.split('`').next());
                    let near = near.ok_or_else(|| format!("no nearest key: {said}"))?;
                    // Another key may be as near as the one that was meant; none that is farther will do.
                    if near != meant && levenshtein(near, slip) > levenshtein(meant, slip) {
                        return Err(format!("`{near}` for `{slip}`, not `{meant}`: {said}"));
                    }
                } else if !said.contains(word.as_str()) {
                    return Err(format!("does not say `{word}`: {said}"));
                }
            }
            Ok(())
        }
    }
}

#[test]
fn a_breaking_mutation_is_refused_at_its_line_and_a_harmless_one_changes_nothing() {
    let mut whole = Sheet::from_text(DUNLIN).unwrap();
    // An assessment is the quicker the fewer tolerances there are: a few will do.
    for path in whole.paths().skip(8).collect::<Vec<_>>() {
        let text = whole.get(path).unwrap().unwrap();
        if !path.starts_with("rear.") {
            whole.set(path, text.split(" +/- ").next().unwrap()).unwrap();
        }
    }
    let all: BTreeMap<String, &'static Line> = writable().into_iter().collect();
    let lines: Vec<(String, String, &'static Line)> =
        whole.paths().map(|path| (path.to_owned(), whole.get(path).unwrap().unwrap(), all[path])).collect();
    let mut random = Random::of("mutations");
    let mut counts: BTreeMap<(bool, &str), usize> = BTreeMap::new();
    let (mut done, mut wrong) = (0, Vec::new());
    let of_whole = bits(&whole.assess());
    while done < MUTATIONS {
        // Some sheets are shorter than the whole one; the places of a list stay.
        let keep = *random.of_these(&[1, 3, 10]);
        let mut short = lines.clone();
        short.retain(|(path, _, _)| path.contains('[') || keep == 1 || !random.once_in(keep));
        random.shuffle(&mut short);
        short.sort_by_key(|(path, _, _)| {
            path.contains('[').then(|| lines.iter().position(|(known, _, _)| known == path))
        });
        let json = random.once_in(2);
        let mut case = Case { random: &mut random, json, lines: short };
        let (what, mutated) = if case.random.once_in(8) {
            let what = *case.random.of_these(&HARMLESS);
            (what, case.harmless(what))
        } else if case.random.once_in(40) {
            ("no table", case.breaking("no table"))
        } else {
            let what = *case.random.of_these(&BREAKING);
            (what, case.breaking(what))
        };
        let Some(mutated) = mutated else { continue };
        let expected = if case.lines.len() == lines.len() {
            of_whole.clone()
        } else if matches!(mutated.oracle, Oracle::Harmless) {
            let plain = Sheet::from_text(&case.write(&case.node()).text).unwrap();
            bits(&plain.assess())
        } else {
            vec![]
        };
        done += 1;
        *counts.entry((json, what)).or_default() += 1;
        if let Err(why) = judged(&mutated, &expected) {
            wrong.push((format!("{what}, {}: {why}", if json { "JSON" } else { "TOML" }), mutated.text));
        }
    }
    let format_only = ["comments", "all on one line", "keys with dots", "literal strings"];
    for what in BREAKING.iter().chain(&HARMLESS).chain(&["no table"]) {
        for json in [false, true] {
            let count = counts.get(&(json, what)).copied().unwrap_or(0);
            assert!(count >= 20 || format_only.contains(what), "{what} was done {count} times");
        }
    }
    let mut of_each: BTreeMap<String, usize> = BTreeMap::new();
    for (why, _) in &wrong {
        *of_each.entry(why.split(": ").next().unwrap().to_owned()).or_default() += 1;
    }
    let mut shown: Vec<&String> = wrong.iter().map(|(why, _)| why).collect();
    shown.sort();
    shown
        .dedup_by_key(|why| why.split(": ").take(2).collect::<String>().chars().take(60).collect::<String>());
    let shown: Vec<String> = shown.iter().take(60).map(|why| why.chars().take(300).collect()).collect();
    assert!(wrong.is_empty(), "{} of {done}: {of_each:#?}\n{}", wrong.len(), shown.join("\n"));
}
