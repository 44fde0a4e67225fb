//! A model from the tree of its document, with all faults of the document.
//!
//! The model's own `Deserialize` stops at its first fault, so it runs again. A refused value is replaced by a placeholder, and a
//! missing key gets one; the next run then finds the next fault. `check` works likewise: a value outside its
//! limits is replaced by one inside. Every run adds a fault or is the last.

use super::source::Collector;
use super::stated::STATED;
use super::tree::{Document, NONE, Spot, Tree};
use super::value::ALWAYS;
use crate::base::error::{Fault, Faults, Limit, NoSolution};
use crate::base::text::{self, is_near, shortened, unknown_key};
use crate::units::Kind;
use crate::{Error, Result};
use serde::de::value::{F64Deserializer, StrDeserializer};
use serde::de::{self, DeserializeOwned, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use std::cell::RefCell;
use std::collections::{HashMap, HashSet};
use std::fmt::{self, Display};

/// Placeholder, in coherent SI, for a refused quantity.
const PLACEHOLDER: f64 = 1.0;

/// Keys that a model had.
#[derive(Clone, Copy)]
pub(super) struct Keys {
    /// Keys of a margin that is wanted, each with the line of the build sheet that says it and the rule that grades it.
    pub(super) wishes: &'static [[&'static str; 3]],
    /// Other keys, each with what says the same today.
    pub(super) former: &'static [[&'static str; 2]],
}

/// The model of a document, which passes this check. `broken` lists the parts of its text that could not be read.
pub(super) fn decode<M: DeserializeOwned>(
    document: &Document,
    broken: Vec<(usize, Error)>,
    keys: Keys,
    check: impl Fn(&M) -> Result<()>,
) -> Result<M> {
    let faults = Collector::new(&document.source, broken);
    let (is_broken, is_lost) = (faults.is_broken(), faults.is_lost());
    let run = Run {
        document,
        faults: RefCell::new(faults),
        is_broken,
        keys,
        unknown: RefCell::default(),
        instead: RefCell::default(),
        supplied: RefCell::default(),
    };
    let mut model = None;
    while !is_lost && model.is_none() && !run.faults.borrow().is_full() {
        match M::deserialize(Node { run: &run, spot: &document.root, path: Path::Root }) {
            Err(told) => {
                if run.place(told, &document.root, Path::Root).is_err() {
                    break;
                }
            }
            Ok(read) => match check(&read) {
                Ok(()) => model = Some(read),
                Err(error) => {
                    if !run.refused(error) {
                        break;
                    }
                }
            },
        }
    }
    run.faults.into_inner().finish()?;
    model.ok_or_else(|| Error::document("", "the document cannot be read"))
}

/// One document during its reading, run after run.
struct Run<'r> {
    document: &'r Document,
    faults: RefCell<Collector<'r>>,
    /// True if the text itself has faults: they may be the reason for a missing key.
    is_broken: bool,
    keys: Keys,
    /// Values with a key that the model does not have.
    unknown: RefCell<HashSet<*const Spot>>,
    /// Placeholders for refused values.
    instead: RefCell<HashMap<*const Spot, f64>>,
    /// Keys that are missing from a table.
    supplied: RefCell<HashMap<*const Spot, Vec<&'static str>>>,
}

/// Reason for the end of a run.
#[derive(Debug)]
enum Told {
    /// A fault that is noted already.
    Noted,
    Missing(&'static str),
    Wrong(String),
}

impl Run<'_> {
    fn note(&self, at: Option<usize>, fault: Fault) {
        self.faults.borrow_mut().add(at, Error::Document(Faults::from(fault)));
    }

    /// Notes why a value was refused, once, at the innermost value around it. An error if it was noted before, which would never end.
    fn place(&self, told: Told, spot: &Spot, path: Path<'_>) -> std::result::Result<Told, ()> {
        match told {
            Told::Noted => {}
            Told::Missing(key) => {
                let mut supplied = self.supplied.borrow_mut();
                let keys = supplied.entry(spot).or_default();
                if keys.contains(&key) {
                    return Err(());
                }
                keys.push(key);
                // A misspelt key is reported once.
                let misspelt = matches!(&spot.value, Tree::Table(entries) if entries.iter().any(|(name, spot)| {
                    self.unknown.borrow().contains(&std::ptr::from_ref(spot)) && is_near(name, key)
                }));
                if !self.is_broken && !misspelt {
                    let path = Path::Key(&path, key).to_string();
                    self.note(
                        spot.key_at,
                        Fault::new(path, "this key is missing, and the document needs it"),
                    );
                }
            }
            Told::Wrong(message) => {
                if self.instead.borrow_mut().insert(spot, PLACEHOLDER).is_some() {
                    return Err(());
                }
                self.note(spot.at, Fault::new(path.to_string(), message));
            }
        }
        Ok(Told::Noted)
    }

    /// Notes a refusal by `check`; true if another run may find more.
    fn refused(&self, error: Error) -> bool {
        let fault = match error {
            Error::Document(faults) => match faults.first() {
                Some(fault) => fault.clone(),
                None => return false,
            },
            other => Fault { message: other.to_string(), cause: Some(Box::new(other)), ..Fault::default() },
        };
        let (around, whole) = self.reached(&fault.key);
        let cause = fault.cause.as_deref().cloned();
        let Some(Error::OutOfRange { limit, value, kind }) = cause else {
            // A relation between values means nothing with a placeholder among them.
            if self.faults.borrow().is_empty() {
                match cause {
                    Some(Error::Length { argument, .. }) => {
                        let list = around.named(argument, &|_| true);
                        self.note(list.unwrap_or(around).at, fault);
                    }
                    Some(Error::NoSolution(refusal)) => self.note_unsolved(around, fault, &refusal),
                    _ => self.note(around.at, fault),
                }
            }
            return false;
        };
        let found =
            around.named(limit.argument, &|spot| self.si(spot, kind).is_some_and(|si| same(si, value)));
        let found = found.filter(|_| whole);
        let Some(spot) = found else {
            if self.faults.borrow().is_empty() {
                self.note(around.at, fault);
            }
            return false;
        };
        let is_new = self.instead.borrow_mut().insert(spot, inside(limit)).is_none();
        if is_new {
            let message = match &spot.value {
                Tree::Text(text) => outside(limit, text, kind),
                _ => None,
            };
            let key = if fault.key.is_empty() { limit.argument.to_owned() } else { fault.key.clone() };
            let message = message.unwrap_or(fault.message);
            self.note(spot.at, Fault { key, message, cause: fault.cause, ..Fault::default() });
        }
        is_new || value == PLACEHOLDER
    }

    /// Notes that values have no answer, at the first of them, which is said in the unit in which it was written.
    fn note_unsolved(&self, around: &Spot, fault: Fault, refusal: &NoSolution) {
        let written = refusal.arguments.first().and_then(|first| {
            let name = first.name.rsplit('.').next().unwrap_or(&first.name);
            let spot = around.named(name, &|spot| self.si(spot, first.kind) == Some(first.value))?;
            let unit = match &spot.value {
                Tree::Text(text) => text::read_as(text, first.kind).ok().map(|reading| reading.unit),
                _ => None,
            };
            Some((&first.name, spot, unit))
        });
        match written {
            Some((name, spot, unit)) => {
                let key = if fault.key.is_empty() { name.to_string() } else { fault.key.clone() };
                self.note(spot.at, Fault { key, message: refusal.sentence(unit), ..fault });
            }
            None => self.note(around.at, fault),
        }
    }

    /// Innermost value that exists on a path; true if it is the end of the path. Text in brackets after a space is a
    /// name for people.
    fn reached(&self, path: &str) -> (&Spot, bool) {
        let mut spot = &self.document.root;
        for step in path.split_inclusive([')', ' ']).next().unwrap_or("").trim().split(['.', '[']) {
            let step = step.trim_end_matches(']');
            let next = match &spot.value {
                Tree::Table(entries) => entries.iter().find(|(key, _)| key == step).map(|(_, spot)| spot),
                Tree::List(items) => step.parse::<usize>().ok().and_then(|place| items.get(place)),
                _ => None,
            };
            match next {
                Some(next) => spot = next,
                None => return (spot, step.is_empty()),
            }
        }
        (spot, true)
    }

    /// The quantity that a value was read as.
    fn si(&self, spot: &Spot, kind: &'static Kind) -> Option<f64> {
        if let Some(si) = self.instead.borrow().get(&std::ptr::from_ref(spot)) {
            return Some(*si);
        }
        match &spot.value {
            Tree::Text(text) => text::read_as(text, kind).ok().map(|reading| reading.si),
            Tree::Number(number) | Tree::Si(number) => Some(*number),
            _ => None,
        }
    }
}

impl Spot {
    /// The value of this key in a table, or in one of the tables in it.
    fn named(&self, key: &str, is_meant: &dyn Fn(&Spot) -> bool) -> Option<&Spot> {
        match &self.value {
            Tree::Table(entries) => entries
                .iter()
                .find_map(|(name, spot)| (name == key && is_meant(spot)).then_some(spot))
                .or_else(|| entries.iter().find_map(|(_, spot)| spot.named(key, is_meant))),
            Tree::List(items) => items.iter().find_map(|item| item.named(key, is_meant)),
            _ => None,
        }
    }
}

/// True for one number, and for two that are none.
fn same(one: f64, other: f64) -> bool {
    one == other || one.is_nan() && other.is_nan()
}

/// A value inside the limits.
fn inside(limit: &Limit) -> f64 {
    let (lower, upper) = (limit.lower, limit.upper);
    match (lower.is_finite(), upper.is_finite()) {
        (true, true) => lower + (upper - lower) / 2.0,
        (true, false) => lower + lower.abs().max(1.0),
        (false, true) => upper - upper.abs().max(1.0),
        (false, false) => PLACEHOLDER,
    }
}

/// A value outside its limits, both as the value was written.
fn outside(limit: &Limit, written: &str, kind: &'static Kind) -> Option<String> {
    let reading = text::read_as(written, kind).ok()?;
    let (unit, limit) = (reading.unit, limit.missed_by(reading.si));
    let bound = |si: f64| if si == 0.0 { "0".to_owned() } else { text::print_as(si, unit) };
    let less = |open: bool| if open { "<" } else { "<=" };
    let mut valid = limit.argument.to_owned();
    if limit.lower > f64::NEG_INFINITY {
        valid = format!("{} {} {valid}", bound(limit.lower), less(limit.lower_open));
    }
    if limit.upper < f64::INFINITY {
        valid = format!("{valid} {} {}", less(limit.upper_open), bound(limit.upper));
    }
    let (argument, written) = (limit.argument, shortened(written));
    Some(format!("{argument} = {written} is outside its range; valid: {valid} ({})", limit.source))
}

/// Place of a value, for the key of a fault.
#[derive(Clone, Copy)]
enum Path<'a> {
    Root,
    Key(&'a Path<'a>, &'a str),
    Place(&'a Path<'a>, usize),
}

impl Display for Path<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Path::Root => Ok(()),
            Path::Key(Path::Root, key) => f.write_str(&shortened(key)),
            Path::Key(around, key) => write!(f, "{around}.{}", shortened(key)),
            Path::Place(around, place) => write!(f, "{around}[{place}]"),
        }
    }
}

impl Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Told::Noted => Ok(()),
            Told::Missing(key) => f.write_str(key),
            Told::Wrong(message) => f.write_str(message),
        }
    }
}

impl std::error::Error for Told {}

impl de::Error for Told {
    fn custom<T: Display>(message: T) -> Told {
        Told::Wrong(message.to_string())
    }
    fn missing_field(field: &'static str) -> Told {
        Told::Missing(field)
    }
    fn unknown_field(field: &str, known: &'static [&'static str]) -> Told {
        Told::Wrong(unknown_key(field, known.iter().copied()))
    }
    fn unknown_variant(word: &str, known: &'static [&'static str]) -> Told {
        Told::Wrong(format!("`{}` is not a choice; choices: {}", shortened(word), listed(known)))
    }
    fn invalid_type(found: de::Unexpected<'_>, expected: &dyn de::Expected) -> Told {
        let found = match found {
            de::Unexpected::Str(NONE) => return Told::Wrong(ALWAYS.to_owned()),
            de::Unexpected::Str(text) => format!("the text {:?}", shortened(text)),
            de::Unexpected::Signed(number) => format!("the number `{number}`"),
            de::Unexpected::Float(number) => format!("the number `{number}`"),
            de::Unexpected::Seq => "a list".to_owned(),
            de::Unexpected::Map => "a table".to_owned(),
            de::Unexpected::Other(words) => words.to_owned(),
            other => other.to_string(),
        };
        let expected = expected.to_string();
        let expected = match expected.as_str() {
            "a sequence" => "a list",
            "a string" | "string or map" => "text",
            other => other,
        };
        Told::Wrong(format!("expected {expected}, not {found}"))
    }
}

fn listed(known: &[&str]) -> String {
    let all: Vec<String> = known.iter().map(|word| format!("`{word}`")).collect();
    all.join(", ")
}

/// A value of the tree, in the form that serde asks for.
#[derive(Clone, Copy)]
struct Node<'a, 'r> {
    run: &'a Run<'r>,
    spot: &'a Spot,
    path: Path<'a>,
}

impl Node<'_, '_> {
    fn instead(&self) -> Option<Stand> {
        self.run.instead.borrow().get(&std::ptr::from_ref(self.spot)).map(|si| Stand(*si))
    }

    /// The value itself; for a table these keys, or all if none are named.
    fn give<'de, V: Visitor<'de>>(
        self,
        visitor: V,
        fields: &'static [&'static str],
    ) -> std::result::Result<V::Value, Told> {
        match &self.spot.value {
            Tree::Text(text) => visitor.visit_str(text),
            Tree::Number(number) => visitor.visit_f64(*number),
            Tree::Si(si) => visitor.visit_newtype_struct(F64Deserializer::<Told>::new(*si)),
            Tree::Other(words) => {
                Err(de::Error::invalid_type(de::Unexpected::Other(words), &visitor as &dyn de::Expected))
            }
            Tree::List(items) => visitor.visit_seq(Items { node: self, items: items.iter().enumerate() }),
            Tree::Table(entries) => {
                let supplied = self.run.supplied.borrow().get(&std::ptr::from_ref(self.spot)).cloned();
                let supplied = supplied.unwrap_or_default().into_iter();
                visitor.visit_map(Entries {
                    node: self,
                    fields,
                    entries: entries.iter(),
                    supplied,
                    value: None,
                })
            }
        }
    }

    fn read<'de, T: DeserializeSeed<'de>>(self, seed: T) -> std::result::Result<T::Value, Told> {
        seed.deserialize(self)
            .map_err(|told| self.run.place(told, self.spot, self.path).unwrap_or(Told::Noted))
    }
}

impl<'de> Deserializer<'de> for Node<'_, '_> {
    type Error = Told;

    /// A quantity: every other type is asked for by its own method.
    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        match self.instead() {
            Some(stand) => stand.deserialize_any(visitor),
            None => self.give(visitor, &[]),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        if self.instead().is_some() { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    /// A part that a document may declare as `none`.
    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> std::result::Result<V::Value, Told> {
        match (self.instead(), &self.spot.value) {
            (Some(_), _) => visitor.visit_none(),
            (None, Tree::Text(text)) if name == STATED && text == NONE => visitor.visit_unit(),
            _ => visitor.visit_newtype_struct(self),
        }
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        match (self.instead(), &self.spot.value) {
            (Some(_), _) => visitor.visit_str(""),
            (None, Tree::Si(si)) => visitor.visit_f64(*si),
            (None, _) => self.deserialize_any(visitor),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        self.deserialize_str(visitor)
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        match (self.instead(), &self.spot.value) {
            (Some(Stand(si)), _) => visitor.visit_f64(si),
            (None, Tree::Si(si)) => visitor.visit_f64(*si),
            (None, _) => self.deserialize_any(visitor),
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        match self.instead() {
            Some(stand) => stand.deserialize_seq(visitor),
            None => self.deserialize_any(visitor),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> std::result::Result<V::Value, Told> {
        if let Some(stand) = self.instead() {
            return stand.deserialize_struct(name, fields, visitor);
        }
        // An unknown key is noted here, so that the run goes on.
        if let Tree::Table(entries) = &self.spot.value {
            for (key, spot) in entries.iter().filter(|(key, _)| !fields.contains(&key.as_str())) {
                if self.run.faults.borrow().is_full() {
                    break;
                }
                if self.run.unknown.borrow_mut().insert(spot) {
                    let path = Path::Key(&self.path, key).to_string();
                    let wish = self.run.keys.wishes.iter().find(|[old, ..]| path == *old);
                    let message = match wish {
                        Some([_, "", rule]) => format!(
                            "the margin that is wanted does not belong in a model; grade a margin with `Verdict::{rule}`"
                        ),
                        Some([_, line, rule]) => format!(
                            "the margin that is wanted belongs on a build sheet (`{line}`), not in a model; grade a margin with `Verdict::{rule}`"
                        ),
                        None => match self.run.keys.former.iter().find(|[old, _]| key == old) {
                            Some([_, new]) => format!("this key is gone; write {new}"),
                            None => unknown_key(key, fields.iter().copied()),
                        },
                    };
                    self.run.note(spot.key_at, Fault::new(path, message));
                }
            }
        }
        self.give(visitor, fields)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> std::result::Result<V::Value, Told> {
        match (self.instead(), &self.spot.value) {
            (Some(stand), _) => stand.deserialize_enum(name, variants, visitor),
            (None, Tree::Text(text)) if text == NONE && !variants.contains(&NONE) => {
                Err(Told::Wrong(ALWAYS.to_owned()))
            }
            (None, Tree::Text(text)) => visitor.visit_enum(StrDeserializer::<Told>::new(text)),
            (None, other) => {
                Err(Told::Wrong(format!("expected one of {}, not {}", listed(variants), other.words())))
            }
        }
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 char bytes byte_buf unit unit_struct tuple
        tuple_struct map identifier ignored_any
    }
}

/// Entries of a table, followed by the missing keys.
struct Entries<'a, 'r> {
    node: Node<'a, 'r>,
    fields: &'static [&'static str],
    entries: std::slice::Iter<'a, (String, Spot)>,
    supplied: std::vec::IntoIter<&'static str>,
    value: Option<(&'a str, &'a Spot)>,
}

impl<'de> MapAccess<'de> for Entries<'_, '_> {
    type Error = Told;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> std::result::Result<Option<K::Value>, Told> {
        let fields = self.fields;
        let entry = self.entries.find(|(key, _)| fields.is_empty() || fields.contains(&key.as_str()));
        self.value = entry.map(|(key, spot)| (key.as_str(), spot));
        let key = self.value.map(|(key, _)| key).or_else(|| self.supplied.next());
        key.map(|key| seed.deserialize(StrDeserializer::<Told>::new(key))).transpose()
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> std::result::Result<V::Value, Told> {
        let Some((key, spot)) = self.value else { return seed.deserialize(Stand(PLACEHOLDER)) };
        Node { run: self.node.run, spot, path: Path::Key(&self.node.path, key) }.read(seed)
    }
}

/// The places of a list.
struct Items<'a, 'r> {
    node: Node<'a, 'r>,
    items: std::iter::Enumerate<std::slice::Iter<'a, Spot>>,
}

impl<'de> SeqAccess<'de> for Items<'_, '_> {
    type Error = Told;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> std::result::Result<Option<T::Value>, Told> {
        let Some((place, spot)) = self.items.next() else { return Ok(None) };
        Node { run: self.node.run, spot, path: Path::Place(&self.node.path, place) }.read(seed).map(Some)
    }
}

/// Placeholder for a refused or missing value, of any type.
#[derive(Clone, Copy)]
struct Stand(f64);

impl<'de> Deserializer<'de> for Stand {
    type Error = Told;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        visitor.visit_newtype_struct(F64Deserializer::<Told>::new(self.0))
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        visitor.visit_f64(self.0)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        visitor.visit_str("")
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        visitor.visit_str("")
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        visitor.visit_none()
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> std::result::Result<V::Value, Told> {
        visitor
            .visit_seq(de::value::SeqDeserializer::<std::iter::Empty<Stand>, Told>::new(std::iter::empty()))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        visitor: V,
    ) -> std::result::Result<V::Value, Told> {
        visitor.visit_none()
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> std::result::Result<V::Value, Told> {
        let pairs = fields.iter().map(|field| (*field, self));
        visitor.visit_map(de::value::MapDeserializer::<_, Told>::new(pairs))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> std::result::Result<V::Value, Told> {
        visitor.visit_enum(StrDeserializer::<Told>::new(variants.first().unwrap_or(&"")))
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 char bytes byte_buf unit unit_struct tuple
        tuple_struct map identifier ignored_any
    }
}

impl de::IntoDeserializer<'_, Told> for Stand {
    type Deserializer = Stand;
    fn into_deserializer(self) -> Stand {
        self
    }
}
