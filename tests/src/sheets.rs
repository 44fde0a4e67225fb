//! Build sheets for the tests: documents leaf by leaf, written as TOML or JSON by code that is not the core's, and random values.

use crate::catalogue::Random;
use axlewright::base::section::{Content, Line};
use axlewright::sheet;
use axlewright::units::{Kind, Unit};
use std::collections::BTreeMap;

/// The demo sheet of the van.
pub const DUNLIN: &str = include_str!("../../examples/sheets/dunlin.toml");

/// A document without its tolerances: a model knows the values alone.
pub fn exact(document: &str) -> String {
    let mut lines = Vec::new();
    for line in document.lines() {
        let quoted = line
            .split('"')
            .map(|part| part.split(" +/-").next().unwrap_or(part).split(" ±").next().unwrap_or(part));
        lines.push(quoted.collect::<Vec<_>>().join("\""));
    }
    lines.join("\n")
}

impl Random {
    /// A whole number below `end`.
    pub fn below(&mut self, end: usize) -> usize {
        ((self.share() * end as f64) as usize).min(end.saturating_sub(1))
    }
    /// One of these.
    pub fn of_these<'a, T>(&mut self, from: &'a [T]) -> &'a T {
        &from[self.below(from.len())]
    }
    /// True once in so many times.
    pub fn once_in(&mut self, times: usize) -> bool {
        self.below(times) == 0
    }
    /// Another order.
    pub fn shuffle<T>(&mut self, all: &mut [T]) {
        for last in (1..all.len()).rev() {
            all.swap(last, self.below(last + 1));
        }
    }
}

/// A document as a tree; a leaf is a literal that TOML and JSON both read.
#[derive(Debug, Clone, PartialEq)]
pub enum Node {
    /// A literal: `"225 lbf/in"`, `4.1`.
    Leaf(String),
    /// Keys and what stands on them.
    Table(Vec<(String, Node)>),
    /// Places, counted from 0.
    List(Vec<Node>),
}

/// A document as text, and the line of every key and place, counted from 1, by its path.
#[derive(Debug, Clone)]
pub struct Written {
    /// The text.
    pub text: String,
    /// `front.spring.rate` and so on; tables too.
    pub lines: BTreeMap<String, usize>,
    /// How far the ends of lines are counted, and how many there are.
    counted: (usize, usize),
}

impl Written {
    fn new() -> Written {
        Written { text: String::new(), lines: BTreeMap::new(), counted: (0, 0) }
    }

    /// The line that is being written.
    fn line(&mut self) -> usize {
        self.counted.1 += self.text[self.counted.0..].matches('\n').count();
        self.counted.0 = self.text.len();
        self.counted.1 + 1
    }
}

/// Text in quotes, as both formats read it.
pub fn quoted(text: &str) -> String {
    serde_json::Value::from(text).to_string()
}

/// The steps of a path: `gearbox.ratios[2]` is `gearbox`, `ratios`, `2`.
pub fn steps(path: &str) -> Vec<String> {
    path.replace('[', ".").replace(']', "").split('.').map(str::to_owned).collect()
}

fn joined(folder: &str, key: &str) -> String {
    if folder.is_empty() { key.to_owned() } else { format!("{folder}.{key}") }
}

impl Node {
    /// An empty table.
    pub fn new() -> Node {
        Node::Table(vec![])
    }

    /// The document of these lines.
    pub fn of<'a>(lines: impl Iterator<Item = (&'a str, String)>) -> Node {
        let mut root = Node::new();
        for (path, literal) in lines {
            root.put(&steps(path), Node::Leaf(literal));
        }
        root
    }

    /// Puts a node at a path, and makes what stands above it. The places of a list come in order.
    pub fn put(&mut self, steps: &[String], node: Node) {
        let Some((first, rest)) = steps.split_first() else {
            *self = node;
            return;
        };
        let fresh = || match rest.first() {
            Some(next) if next.parse::<usize>().is_ok() => Node::List(vec![]),
            _ => Node::new(),
        };
        match self {
            Node::List(items) => {
                let place: usize = first.parse().unwrap_or(0);
                while items.len() <= place {
                    items.push(fresh());
                }
                items[place].put(rest, node);
            }
            Node::Table(entries) => match entries.iter().position(|(key, _)| key == first) {
                Some(at) => entries[at].1.put(rest, node),
                None => {
                    let mut inner = fresh();
                    inner.put(rest, node);
                    entries.push((first.clone(), inner));
                }
            },
            Node::Leaf(_) => *self = node,
        }
    }

    /// The node at a path.
    pub fn at(&mut self, steps: &[String]) -> Option<&mut Node> {
        let Some((first, rest)) = steps.split_first() else { return Some(self) };
        match self {
            Node::List(items) => items.get_mut(first.parse::<usize>().ok()?)?.at(rest),
            Node::Table(entries) => entries.iter_mut().find(|(key, _)| key == first)?.1.at(rest),
            Node::Leaf(_) => None,
        }
    }

    /// The paths of its tables, itself included.
    pub fn tables(&self, path: &str, found: &mut Vec<String>) {
        match self {
            Node::Leaf(_) => {}
            Node::Table(entries) => {
                found.push(path.to_owned());
                entries.iter().for_each(|(key, node)| node.tables(&joined(path, key), found));
            }
            Node::List(items) => {
                items.iter().enumerate().for_each(|(at, node)| node.tables(&format!("{path}[{at}]"), found));
            }
        }
    }

    /// Another order of the keys everywhere; the order of places has a meaning.
    pub fn shuffle(&mut self, random: &mut Random) {
        match self {
            Node::Leaf(_) => {}
            Node::Table(entries) => {
                random.shuffle(entries);
                entries.iter_mut().for_each(|(_, node)| node.shuffle(random));
            }
            Node::List(items) => items.iter_mut().for_each(|node| node.shuffle(random)),
        }
    }

    /// As JSON, a key a line.
    pub fn json(&self) -> Written {
        let mut written = Written::new();
        self.json_into("", 0, &mut written);
        written.text.push('\n');
        written
    }

    fn json_into(&self, path: &str, depth: usize, out: &mut Written) {
        let indent = |depth: usize| "  ".repeat(depth);
        let (ends, items): (_, Vec<(String, String, &Node)>) = match self {
            Node::Leaf(literal) => {
                out.text.push_str(literal);
                return;
            }
            Node::Table(entries) => {
                let of = |(key, node)| (joined(path, key), format!("{}: ", quoted(key)), node);
                ("{}", entries.iter().map(|(key, node)| of((key, node))).collect())
            }
            Node::List(items) => {
                let of = |(at, node)| (format!("{path}[{at}]"), String::new(), node);
                ("[]", items.iter().enumerate().map(of).collect())
            }
        };
        out.text.push_str(&ends[..1]);
        let last = items.len();
        for (at, (path, key, node)) in items.into_iter().enumerate() {
            out.text.push_str(&format!("\n{}{key}", indent(depth + 1)));
            let here = out.line();
            out.lines.entry(path.clone()).or_insert(here);
            node.json_into(&path, depth + 1, out);
            out.text.push_str(if at + 1 < last { "," } else { "\n" });
        }
        if last > 0 {
            out.text.push_str(&indent(depth));
        }
        out.text.push_str(&ends[1..]);
    }

    /// As TOML, a key or a place of a list a line.
    pub fn toml(&self) -> Written {
        let mut written = Written::new();
        self.toml_into("", &mut written);
        written
    }

    fn toml_into(&self, folder: &str, out: &mut Written) {
        let Node::Table(entries) = self else { return };
        for (key, node) in entries {
            let path = joined(folder, key);
            match node {
                Node::Table(_) => continue,
                Node::Leaf(literal) => {
                    let here = out.line();
                    out.lines.entry(path).or_insert(here);
                    out.text.push_str(&format!("{} = {literal}\n", toml_key(key)));
                }
                Node::List(items) => {
                    let here = out.line();
                    out.lines.entry(path.clone()).or_insert(here);
                    out.text.push_str(&format!("{} = [\n", toml_key(key)));
                    for (at, item) in items.iter().enumerate() {
                        let place = format!("{path}[{at}]");
                        let here = out.line();
                        out.lines.insert(place.clone(), here);
                        if let Node::Table(entries) = item {
                            out.lines.extend(entries.iter().map(|(key, _)| (joined(&place, key), here)));
                        }
                        out.text.push_str(&format!("    {},\n", item.inline()));
                    }
                    out.text.push_str("]\n");
                }
            }
        }
        for (key, node) in entries {
            let path = joined(folder, key);
            if let Node::Table(inner) = node {
                let heading = out.line() + 1;
                out.lines.entry(path.clone()).or_insert(heading);
                // A table of nothing but tables needs no heading of its own.
                if inner.is_empty() || inner.iter().any(|(_, node)| !matches!(node, Node::Table(_))) {
                    let words: Vec<String> = split(&path).iter().map(|key| toml_key(key)).collect();
                    out.text.push_str(&format!("\n[{}]\n", words.join(".")));
                }
                node.toml_into(&path, out);
            }
        }
    }

    /// As TOML on one line.
    fn inline(&self) -> String {
        match self {
            Node::Leaf(literal) => literal.clone(),
            Node::List(items) => {
                format!("[{}]", items.iter().map(Node::inline).collect::<Vec<_>>().join(", "))
            }
            Node::Table(entries) => {
                let pairs =
                    entries.iter().map(|(key, node)| format!("{} = {}", toml_key(key), node.inline()));
                format!("{{ {} }}", pairs.collect::<Vec<_>>().join(", "))
            }
        }
    }
}

impl Default for Node {
    fn default() -> Self {
        Node::new()
    }
}

fn split(path: &str) -> Vec<&str> {
    path.split('.').collect()
}

fn toml_key(key: &str) -> String {
    let bare = !key.is_empty() && key.chars().all(|c| c.is_ascii_alphanumeric() || "_-".contains(c));
    if bare { key.to_owned() } else { quoted(key) }
}

/// Every line that may be written, the places of a list written out.
pub fn writable() -> Vec<(String, &'static Line)> {
    let written = sheet::lines().filter(|(_, _, line)| line.written);
    written
        .flat_map(|(_, path, line)| {
            (0..line.places).map(move |at| (path.replace("[]", &format!("[{at}]")), line))
        })
        .collect()
}

/// The kind of a line that is a quantity.
pub fn kind(line: &Line) -> Option<&'static Kind> {
    match line.content {
        Content::Quantity(kind) => Some(kind),
        _ => None,
    }
}

/// A value inside the range of a line, in coherent SI; small ones more often where the range is wide.
pub fn value(line: &Line, random: &mut Random) -> f64 {
    let low = line.range.lower.max(-1e6);
    let high = line.range.upper.min(f64::max(1e6, 20.0 * low));
    let share = 0.001 + 0.998 * random.share();
    low + (high - low) * share.powi(if random.once_in(2) { 1 } else { 4 })
}

/// That value in one of the units of its kind, in one of its spellings.
pub fn with_unit(si: f64, unit: &Unit, random: &mut Random) -> String {
    let spelling = match unit.spellings {
        _ if unit.symbol.is_empty() => "",
        [] => unit.symbol,
        spellings if random.once_in(2) => random.of_these(spellings),
        _ => unit.symbol,
    };
    format!("{} {spelling}", unit.from_si(si)).trim_end().to_owned()
}

/// A text for a line: a random value in a random unit, now and then with a tolerance; a choice; a marking.
pub fn text(line: &Line, random: &mut Random) -> String {
    match line.content {
        Content::Choice(words) => (*random.of_these(words)).to_owned(),
        Content::Marking(_) => {
            let (width, aspect, rim) =
                (155 + 10 * random.below(18), 30 + 5 * random.below(11), 13 + random.below(10));
            format!("{width}/{aspect}R{rim}")
        }
        Content::Quantity(kind) => {
            let unit = random.of_these(kind.units);
            let si = value(line, random);
            let text = with_unit(si, unit, random);
            if !random.once_in(3) || (kind.name == "Ratio" && !unit.symbol.is_empty()) {
                return text;
            }
            // Of a quantity on a scale with an offset too, a tolerance is a number of steps of that scale.
            let tolerance = (unit.from_si(si) - unit.from_si(0.0)).abs() * 0.05 * random.share();
            let sd = if random.once_in(3) { " sd" } else { "" };
            let sign = if random.once_in(2) { "±" } else { "+/-" };
            format!("{text} {sign} {tolerance} {}{sd}", unit.symbol).replace("  ", " ").trim_end().to_owned()
        }
    }
}
