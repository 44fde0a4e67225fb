//! A document as a tree in which every value has its place, from TOML, from JSON, or from numbers in coherent SI.
#![expect(clippy::string_slice, reason = "cut beside a character of one byte that was found there")]

use super::source::{Collector, Source};
use crate::base::error::MOST_FAULTS;
use crate::base::text::shortened;
use crate::{Error, Result};
use serde_json::value::RawValue;
use std::collections::{HashMap, HashSet};
use toml::de::{DeTable, DeValue};

/// Most bytes of a document. [`within_bytes`] refuses a longer one before it is read.
pub const MOST_BYTES: usize = 4_000_000;
/// Most values, tables and lists in a document.
pub const MOST_VALUES: usize = 100_000;
/// Characters in the longest text on one key.
pub const LONGEST_TEXT: usize = 10_000;
/// Deepest nesting.
pub const DEEPEST: usize = 32;

/// A document that was read, before a model or a sheet takes it.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    pub(crate) source: Source,
    pub(crate) root: Spot,
}

/// Value that a program writes on one key of a document.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Field<'a> {
    /// A quantity in coherent SI, or a count. NaN means not known: the key is left out.
    Si(f64),
    /// A word, a name, a marking, or a quantity with its unit.
    Text(&'a str),
    /// There is no such part.
    None,
}

/// A value and its place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Spot {
    /// Offset of the key, or of the value in a list.
    pub key_at: Option<usize>,
    /// Offset of the value.
    pub at: Option<usize>,
    pub value: Tree,
}

#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Tree {
    Text(String),
    Number(f64),
    /// A number in coherent SI, whatever the key.
    Si(f64),
    /// A boolean, null or a date: no key takes these.
    Other(&'static str),
    List(Vec<Spot>),
    Table(Vec<(String, Spot)>),
}

/// Text that declares that there is no such part.
pub(crate) const NONE: &str = "none";

impl Tree {
    /// Words for it in a refusal.
    pub fn words(&self) -> String {
        match self {
            Tree::Text(text) => format!("the text {:?}", shortened(text)),
            Tree::Number(number) | Tree::Si(number) => format!("the number `{number}`"),
            Tree::Other(what) => (*what).to_owned(),
            Tree::List(_) => "a list".to_owned(),
            Tree::Table(_) => "a table".to_owned(),
        }
    }
}

impl Spot {
    /// A value without a place.
    pub fn of(value: Tree) -> Spot {
        Spot { key_at: None, at: None, value }
    }
}

impl Document {
    /// Reads JSON (text that begins with `{`) or TOML.
    pub fn from_text(text: &str) -> Result<Document> {
        let (document, broken) = Document::read(text)?;
        Collector::new(&document.source, broken).finish()?;
        Ok(document)
    }

    /// Puts a number on a place that is there already, also one that is not finite: the model refuses it by its name. The steps of a path are keys, and
    /// places of a list from 0. A number in coherent SI stands on a key of any kind, a plain one on a pure number.
    pub fn put(&mut self, path: &[String], number: f64, is_si: bool) {
        let place = path.iter().try_fold(&mut self.root, |spot, step| match &mut spot.value {
            Tree::Table(entries) => entries.iter_mut().find(|(key, _)| key == step).map(|(_, spot)| spot),
            Tree::List(items) => step.parse::<usize>().ok().and_then(|place| items.get_mut(place)),
            _ => None,
        });
        if let Some(spot) = place {
            spot.value = if is_si { Tree::Si(number) } else { Tree::Number(number) };
        }
    }

    /// Reads as much of a text as possible, and returns the faults.
    pub(crate) fn read(text: &str) -> Result<(Document, Vec<(usize, Error)>)> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        sized(text)?;
        if !text.contains('\n') && [".toml", ".json"].iter().any(|ending| text.trim_end().ends_with(ending)) {
            return Err(Error::document("", "this looks like a file name: pass its text"));
        }
        let source = Source::new(text);
        let mut reader = Reader { text, faults: vec![], values: 0 };
        let root = if text.trim_start().starts_with('{') { reader.json_text() } else { reader.toml_text() };
        let (root, faults) = (root, reader.faults);
        Ok((Document { source, root }, faults))
    }

    /// A document from paths and values, such as `front.spring.rate` or `parts[0].ratio`. The places of a list come in
    /// order. A table with nothing known is left out.
    ///
    /// ```
    /// use axlewright::base::document::{Document, Field, Model};
    /// use axlewright::{cooling::Coolant, units::Quantity};
    /// let coolant = Document::from_si([
    ///     ("liquid", Field::Text("water")), ("cap", Field::Text("15 psi gauge")), ("altitude", Field::Si(0.0)),
    ///     ("station_pressure", Field::Si(f64::NAN)), // not known
    ///     ("hottest", Field::Si(370.0)),
    /// ])?;
    /// assert_eq!(Coolant::from_document(&coolant)?.hottest.quantity.si(), 370.0);
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn from_si<'a>(fields: impl IntoIterator<Item = (&'a str, Field<'a>)>) -> Result<Document> {
        let source = Source::default();
        let mut collector = Collector::new(&source, vec![]);
        let mut root = Branch::default();
        for (count, (path, field)) in fields.into_iter().enumerate() {
            if count >= MOST_VALUES {
                collector.add(None, Error::document("", too_many()));
                break;
            }
            if let Err(message) = root.put(path, field) {
                collector.add(None, Error::document(shortened(path), message));
            }
            if collector.is_full() {
                break;
            }
        }
        collector.finish()?;
        Ok(Document { source, root: Spot::of(root.table()) })
    }
}

/// Refuses a document of more than [`MOST_BYTES`] bytes. Every reader of text asks it first; a program may ask it of a file's size, before it
/// takes the memory for the text.
pub fn within_bytes(bytes: u64) -> Result<()> {
    if bytes <= MOST_BYTES as u64 {
        return Ok(());
    }
    let message =
        format!("the document has {bytes} bytes; at most {MOST_BYTES} are read: is this the right file?");
    Err(Error::document("", message))
}

/// Refuses a text that is too long to be a document.
pub(crate) fn sized(text: &str) -> Result<()> {
    within_bytes(text.len() as u64)
}

pub(crate) fn too_many() -> String {
    format!("the document has more than {MOST_VALUES} values, the most that are read")
}

/// A table or a list while a program fills it.
#[derive(Default)]
struct Branch {
    places: HashMap<String, usize>,
    entries: Vec<(String, Grown)>,
}

enum Grown {
    Leaf(Tree),
    Table(Branch),
    /// Keys of a list are the places `0`, `1` ...
    List(Branch),
}

impl Branch {
    fn put(&mut self, path: &str, field: Field<'_>) -> core::result::Result<(), String> {
        if path.len() > LONGEST_TEXT {
            return Err(no_path());
        }
        let leaf = match field {
            Field::Si(si) if si.is_infinite() => {
                return Err(format!("{si} is not a finite number; NaN says not known"));
            }
            Field::Si(si) => (!si.is_nan()).then_some(Tree::Si(si)),
            Field::Text(text) if text.chars().nth(LONGEST_TEXT).is_some() => return Err(too_long()),
            Field::Text(text) => Some(Tree::Text(text.to_owned())),
            Field::None => Some(Tree::Text(NONE.to_owned())),
        };
        if path.matches(['.', '[']).count() >= DEEPEST {
            return Err(too_deep());
        }
        self.grow(path, leaf)
    }

    fn grow(&mut self, path: &str, leaf: Option<Tree>) -> core::result::Result<(), String> {
        let end = path.find(['.', '[', ']']).unwrap_or(path.len());
        let (key, rest) = path.split_at(end);
        if key.is_empty() {
            return Err(no_path());
        }
        self.at(key, rest, leaf)
    }

    /// Writes a value on a key, or on the rest of the path below it.
    fn at(&mut self, key: &str, rest: &str, leaf: Option<Tree>) -> core::result::Result<(), String> {
        const TWO_WAYS: &str = "another path uses this key in another way: as a value, a table or a list";
        let known = self.places.get(key).copied();
        if rest.is_empty() {
            let Some(leaf) = leaf else { return Ok(()) };
            return match known {
                Some(_) => Err(twice()),
                None => {
                    self.push(key, Grown::Leaf(leaf));
                    Ok(())
                }
            };
        }
        if let Some(rest) = rest.strip_prefix('.') {
            let place = known.unwrap_or_else(|| self.push(key, Grown::Table(Branch::default())));
            return match self.entries.get_mut(place) {
                Some((_, Grown::Table(table))) => table.grow(rest, leaf),
                _ => Err(TWO_WAYS.to_owned()),
            };
        }
        let place = known.unwrap_or_else(|| self.push(key, Grown::List(Branch::default())));
        let Some((_, Grown::List(list))) = self.entries.get_mut(place) else {
            return Err(TWO_WAYS.to_owned());
        };
        let (number, rest) = rest.strip_prefix('[').and_then(|rest| rest.split_once(']')).unwrap_or_default();
        match number.parse::<usize>() {
            Ok(number) if number > list.entries.len() => {
                Err(format!("the places of a list come in order: place {} is not there", list.entries.len()))
            }
            Ok(_) if rest.is_empty() && leaf.is_none() => {
                Err("a place of a list cannot stay open".to_owned())
            }
            Ok(number) => list.at(&number.to_string(), rest, leaf),
            Err(_) => Err("a place of a list is a whole number, as in `parts[0]`".to_owned()),
        }
    }

    fn push(&mut self, key: &str, grown: Grown) -> usize {
        let place = self.entries.len();
        self.places.insert(key.to_owned(), place);
        self.entries.push((key.to_owned(), grown));
        place
    }

    fn table(self) -> Tree {
        let grown = |(key, grown)| {
            let value = match grown {
                Grown::Leaf(leaf) => leaf,
                Grown::Table(branch) if branch.is_open() => return None,
                Grown::Table(branch) => branch.table(),
                Grown::List(branch) => branch.list(),
            };
            Some((key, Spot::of(value)))
        };
        Tree::Table(self.entries.into_iter().filter_map(grown).collect())
    }

    fn list(self) -> Tree {
        let grown = |(_, grown)| match grown {
            Grown::Leaf(leaf) => Spot::of(leaf),
            Grown::Table(branch) => Spot::of(branch.table()),
            Grown::List(branch) => Spot::of(branch.list()),
        };
        Tree::List(self.entries.into_iter().map(grown).collect())
    }

    /// True if nothing in it is known.
    fn is_open(&self) -> bool {
        self.entries.iter().all(|(_, grown)| matches!(grown, Grown::Table(branch) if branch.is_open()))
    }
}

fn too_deep() -> String {
    format!("the document is nested more than {DEEPEST} levels deep, the most that are read")
}

fn no_path() -> String {
    "this is no path; write one like `front.spring.rate` or `parts[0].ratio`".to_owned()
}

pub(crate) fn too_long() -> String {
    format!("the text has more than {LONGEST_TEXT} characters, the most that are read")
}

fn twice() -> String {
    "this key is there twice; remove one of them".to_owned()
}

/// Reads text and keeps its faults.
struct Reader<'a> {
    text: &'a str,
    faults: Vec<(usize, Error)>,
    values: usize,
}

impl Reader<'_> {
    fn fault(&mut self, at: usize, key: &str, message: impl ToString) {
        if self.faults.len() < MOST_FAULTS {
            self.faults.push((at, Error::document(shortened(key), message)));
        }
    }

    /// True if one more value may be read at this depth.
    fn may_go_on(&mut self, at: usize, depth: usize) -> bool {
        self.values += 1;
        if depth > DEEPEST {
            self.fault(at, "", too_deep());
        }
        if self.values == MOST_VALUES + 1 {
            self.fault(at, "", too_many());
        }
        depth <= DEEPEST && self.values <= MOST_VALUES
    }

    fn words(&mut self, at: usize, key: &str, text: String) -> Tree {
        if text.len() > LONGEST_TEXT && text.chars().nth(LONGEST_TEXT).is_some() {
            self.fault(at, key, too_long());
            return Tree::Other("a text that is too long");
        }
        Tree::Text(text)
    }

    fn toml_text(&mut self) -> Spot {
        let (table, errors) = DeTable::parse_recoverable(self.text);
        for error in errors.into_iter().take(MOST_FAULTS) {
            let span = error.span().unwrap_or(0..0);
            match error.message() {
                "duplicate key" => {
                    let key = self.text.get(span.clone()).unwrap_or_default().to_owned();
                    self.fault(span.start, &key, twice());
                }
                message => self.fault(span.start, "", format!("this is not TOML: {message}")),
            }
        }
        Spot::of(self.toml_table(table.get_ref(), 0))
    }

    fn toml_table(&mut self, table: &DeTable<'_>, depth: usize) -> Tree {
        let mut keys: Vec<_> = table.iter().collect();
        keys.sort_by_key(|(key, _)| key.span().start);
        let mut entries = Vec::with_capacity(keys.len());
        for (key, value) in keys {
            let key_at = key.span().start;
            // A table begins at its first key, and unreadable text has no place of its own.
            let own = value.span();
            let at = if value.get_ref().is_table() || own.is_empty() { key_at } else { own.start };
            let value = self.toml_value(value.get_ref(), key.get_ref(), at, depth + 1);
            entries.push((key.get_ref().to_string(), Spot { key_at: Some(key_at), at: Some(at), value }));
        }
        Tree::Table(entries)
    }

    fn toml_value(&mut self, value: &DeValue<'_>, key: &str, at: usize, depth: usize) -> Tree {
        if !self.may_go_on(at, depth) {
            return Tree::Other("a value that was not read");
        }
        let number = |digits: &str, radix: u32| match radix {
            10 => digits.replace('_', "").parse::<f64>().ok().filter(|number| number.is_finite()),
            _ => i64::from_str_radix(&digits.replace('_', ""), radix).ok().map(|whole| whole as f64),
        };
        let (digits, radix) = match value {
            DeValue::String(text) => return self.words(at, key, text.to_string()),
            DeValue::Integer(whole) => (whole.as_str(), whole.radix()),
            DeValue::Float(float) => (float.as_str(), 10),
            DeValue::Boolean(true) => return Tree::Other("`true`"),
            DeValue::Boolean(false) => return Tree::Other("`false`"),
            DeValue::Datetime(_) => return Tree::Other("a date"),
            DeValue::Array(list) => {
                let mut spots = Vec::with_capacity(list.len());
                for item in list.iter() {
                    let at = item.span().start;
                    let value = self.toml_value(item.get_ref(), key, at, depth + 1);
                    spots.push(Spot { key_at: Some(at), at: Some(at), value });
                }
                return Tree::List(spots);
            }
            DeValue::Table(table) => return self.toml_table(table, depth),
        };
        match number(digits, radix) {
            Some(number) => Tree::Number(number),
            None => {
                let message = format!("{} is no finite number", shortened(digits));
                self.fault(at, key, message);
                Tree::Other("a number that is not finite")
            }
        }
    }

    /// The offset of a part of the text.
    fn offset(&self, part: &str) -> usize {
        (part.as_ptr() as usize).saturating_sub(self.text.as_ptr() as usize)
    }

    fn json_text(&mut self) -> Spot {
        let text = self.text;
        match serde_json::from_str::<&RawValue>(text) {
            Ok(whole) => Spot::of(self.json(whole, "", 0)),
            Err(error) => {
                self.json_fault(text, 0, &error);
                Spot::of(Tree::Table(vec![]))
            }
        }
    }

    /// A fault of JSON in a part of the text; serde_json ends its sentence with the place.
    fn json_fault(&mut self, part: &str, start: usize, error: &serde_json::Error) {
        let before =
            part.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum::<usize>();
        let mut at = (before + error.column().saturating_sub(1)).min(part.len());
        while !part.is_char_boundary(at) {
            at -= 1;
        }
        let full = error.to_string();
        let end = full.rfind(" at line ").unwrap_or(full.len());
        self.fault(start + at, "", format!("this is not JSON: {}", &full[..end]));
    }

    fn json(&mut self, raw: &RawValue, key: &str, depth: usize) -> Tree {
        let own = raw.get();
        let at = self.offset(own);
        if !self.may_go_on(at, depth) {
            return Tree::Other("a value that was not read");
        }
        let read = match own.as_bytes().first() {
            Some(b'{') => serde_json::from_str(own).map(|pairs| self.json_table(pairs, depth)),
            Some(b'[') => serde_json::from_str(own).map(|items: Vec<&RawValue>| {
                let spot = |item: &RawValue| {
                    let at = Some(self.offset(item.get()));
                    Spot { key_at: at, at, value: self.json(item, key, depth + 1) }
                };
                Tree::List(items.into_iter().map(spot).collect())
            }),
            Some(b'"') => serde_json::from_str(own).map(|text| self.words(at, key, text)),
            Some(b't') => Ok(Tree::Other("`true`")),
            Some(b'f') => Ok(Tree::Other("`false`")),
            Some(b'n') => Ok(Tree::Other("`null`")),
            _ => serde_json::from_str(own).map(Tree::Number),
        };
        read.unwrap_or_else(|error| {
            self.json_fault(own, at, &error);
            Tree::Other("a value that cannot be read")
        })
    }

    fn json_table(&mut self, Pairs(pairs): Pairs<'_>, depth: usize) -> Tree {
        let mut entries = Vec::with_capacity(pairs.len());
        let mut known = HashSet::with_capacity(pairs.len());
        for (key, value) in pairs {
            let (key_at, at) = (self.offset(key.get()), self.offset(value.get()));
            let name: String = serde_json::from_str(key.get()).unwrap_or_default();
            if !known.insert(name.clone()) {
                self.fault(key_at, &name, twice());
                continue;
            }
            let value = self.json(value, &name, depth + 1);
            entries.push((name, Spot { key_at: Some(key_at), at: Some(at), value }));
            if self.values > MOST_VALUES {
                break;
            }
        }
        Tree::Table(entries)
    }
}

/// Pairs of a JSON object in their order, not yet read.
struct Pairs<'a>(Vec<(&'a RawValue, &'a RawValue)>);

impl<'de> serde::Deserialize<'de> for Pairs<'de> {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> std::result::Result<Self, D::Error> {
        struct Visitor;
        impl<'de> serde::de::Visitor<'de> for Visitor {
            type Value = Pairs<'de>;
            fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str("a table")
            }
            fn visit_map<A: serde::de::MapAccess<'de>>(
                self,
                mut map: A,
            ) -> std::result::Result<Pairs<'de>, A::Error> {
                let mut pairs = Vec::new();
                while let Some(pair) = map.next_entry()? {
                    pairs.push(pair);
                }
                Ok(Pairs(pairs))
            }
        }
        deserializer.deserialize_map(Visitor)
    }
}
