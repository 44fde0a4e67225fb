//! Mutations that break a document.

use super::case::{Case, Mutated, Oracle, literal, slip};
use axlewright::base::section::{Content, Line};
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{Node, kind, quoted, steps, writable};

pub const BREAKING: [&str; 22] = [
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
    /// One key renamed.
    pub fn renamed(&mut self) -> Option<Mutated> {
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
        Some(self.refused(&node, &path, &[&format!("nearest {new} {old}")]))
    }

    pub fn breaking(&mut self, what: &str) -> Option<Mutated> {
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
                Some(self.refused(&node, path, &["expected"]))
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
                Some(self.refused(&node, path, &["expected"]))
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
                Some(self.refused(&node, &at.join("."), &[]))
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
                Some(self.unparsed(&path, format!("\"{text}{control}\"")))
            }
            "nested without end" => {
                let (path, _, _) = self.any(|_| true)?;
                let depth = *self.random.of_these(&[17, 40, 90, 130, 1000, 20_000]);
                let (open, close) = match (self.random.below(2), self.json) {
                    (0, _) => ("[", "]"),
                    (_, true) => ("{\"a\": ", "}"),
                    (_, false) => ("{ a = ", " }"),
                };
                Some(self.unparsed(&path, format!("{}1{}", open.repeat(depth), close.repeat(depth))))
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
                Some(self.unparsed(&path, wrong.to_owned()))
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
}
