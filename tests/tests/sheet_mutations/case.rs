//! A document to mutate, and its oracle.

use axlewright::base::section::Line;
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{Node, Written, kind, quoted, steps};

/// Expected outcome for a document.
pub enum Oracle {
    /// It is read, and its assessment is the same to the bit.
    Harmless,
    /// It is refused: on which line, by which key, with which words in the sentence.
    Refused { line: usize, key: String, words: Vec<String> },
    /// It is refused somewhere up to this line.
    Broken { last: usize },
}

pub struct Mutated {
    pub text: String,
    pub oracle: Oracle,
}

/// Documents from which all cases are made.
pub struct Case<'a> {
    pub random: &'a mut Random,
    pub json: bool,
    /// The lines of the sheet: path, text, what stands on them.
    pub lines: Vec<(String, String, &'static Line)>,
}

/// The literal of a line: a ratio without a unit is a number.
pub fn literal(text: &str, line: &Line) -> String {
    let is_number = kind(line).is_some_and(|kind| kind.name == "Ratio") && text.parse::<f64>().is_ok();
    if is_number { text.to_owned() } else { quoted(text) }
}

/// A slip of the pen: one letter more, less or another.
pub fn slip(word: &str, random: &mut Random) -> String {
    let mut letters: Vec<char> = word.chars().collect();
    let (at, letter) = (random.below(letters.len()), char::from(b'a' + random.below(26) as u8));
    match random.below(3) {
        0 => letters.insert(at, letter),
        1 if letters.len() > 1 => drop(letters.remove(at)),
        _ => letters[at] = letter,
    }
    letters.into_iter().collect()
}

impl Case<'_> {
    pub fn node(&self) -> Node {
        let lines = self.lines.iter().map(|(path, text, line)| (path.as_str(), literal(text, line)));
        let head = [("version", "1".to_owned()), ("name", quoted("Dunlin"))];
        Node::of(head.into_iter().chain(lines))
    }

    pub fn write(&self, node: &Node) -> Written {
        if self.json { node.json() } else { node.toml() }
    }

    /// A line, of those that this accepts.
    pub fn any(&mut self, accepts: impl Fn(&Line) -> bool) -> Option<(String, String, &'static Line)> {
        let all: Vec<_> = self.lines.iter().filter(|(_, _, line)| accepts(line)).cloned().collect();
        (!all.is_empty()).then(|| self.random.of_these(&all).clone())
    }

    /// A document that is refused at the line of this path.
    pub fn refused(&self, node: &Node, path: &str, words: &[&str]) -> Mutated {
        let written = self.write(node);
        let oracle = Oracle::Refused {
            line: written.lines[path],
            key: path.to_owned(),
            words: words.iter().map(|word| (*word).to_owned()).collect(),
        };
        Mutated { text: written.text, oracle }
    }

    /// The document with another literal on a line, which is refused there.
    pub fn with(&self, path: &str, literal: String, words: &[&str]) -> Mutated {
        let mut node = self.node();
        node.put(&steps(path), Node::Leaf(literal));
        self.refused(&node, path, words)
    }

    /// The document with another literal on a line, which the parser of the format refuses there: it knows no keys.
    pub fn unparsed(&self, path: &str, literal: String) -> Mutated {
        let mut mutated = self.with(path, literal, &[]);
        if let Oracle::Refused { key, .. } = &mut mutated.oracle {
            key.clear();
        }
        mutated
    }
}
