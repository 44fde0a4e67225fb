//! Mutations that break nothing.

use super::case::{Case, Mutated, Oracle, literal};
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{Node, kind, quoted, steps};

pub const HARMLESS: [&str; 16] = [
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

impl Case<'_> {
    pub fn harmless(&mut self, what: &str) -> Option<Mutated> {
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
