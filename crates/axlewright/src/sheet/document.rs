//! A document as a tree in which every value has its line, from TOML or JSON.

use crate::{Error, Result};
use serde_json::value::RawValue;
use toml::de::{DeTable, DeValue};

/// A value and the line where it stands, counted from 1.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Spot {
    pub line: usize,
    pub value: Tree,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) enum Tree {
    Text(String),
    Number(f64),
    /// Yes, no, nothing, a date: what no line of a sheet is.
    Other(&'static str),
    List(Vec<Spot>),
    Table(Vec<(String, Spot)>),
}

impl Tree {
    /// What it is, for a refusal.
    pub fn words(&self) -> String {
        match self {
            Tree::Text(text) => format!("the text {text:?}"),
            Tree::Number(number) => format!("the number {number}"),
            Tree::Other(what) => (*what).to_owned(),
            Tree::List(_) => "a list".to_owned(),
            Tree::Table(_) => "a table".to_owned(),
        }
    }
}

/// Deepest nesting that is read.
const DEEPEST: usize = 16;

pub(super) fn refusal(line: usize, key: &str, message: String) -> Error {
    Error::Document { line, key: key.to_owned(), message }
}

/// Reads JSON (text that begins with `{`) or TOML.
pub(super) fn read(text: &str) -> Result<Spot> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let lines = &Lines::new(text);
    if !text.contains('\n') && [".toml", ".json"].iter().any(|ending| text.trim_end().ends_with(ending)) {
        return Err(refusal(0, "", "this looks like a file name: pass its text".to_owned()));
    }
    if text.trim_start().starts_with('{') {
        let whole: &RawValue = serde_json::from_str(text).map_err(|error| json_refusal(1, &error))?;
        json(lines, whole, 0)
    } else {
        let table = DeTable::parse(text).map_err(|error| {
            let line = error.span().map_or(0, |span| lines.at(span.start));
            let key = error.span().and_then(|span| text.get(span)).unwrap_or_default();
            match error.message() {
                "duplicate key" => refusal(line, "", twice(key)),
                message => refusal(line, "", message.to_owned()),
            }
        })?;
        let whole = table.into_inner();
        Ok(Spot { line: 1, value: toml_table(lines, &whole, 0)? })
    }
}

/// Where each line of a text begins.
struct Lines<'a> {
    text: &'a str,
    starts: Vec<usize>,
}

impl<'a> Lines<'a> {
    fn new(text: &'a str) -> Lines<'a> {
        let starts = core::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Lines { text, starts }
    }

    /// The line of an offset, counted from 1.
    fn at(&self, offset: usize) -> usize {
        self.starts.partition_point(|start| *start <= offset)
    }
}

fn deeper(depth: usize, line: usize) -> Result<usize> {
    if depth < DEEPEST {
        return Ok(depth + 1);
    }
    Err(refusal(line, "", format!("more than {DEEPEST} levels are no sheet")))
}

fn toml_table(lines: &Lines<'_>, table: &DeTable<'_>, depth: usize) -> Result<Tree> {
    let mut entries = Vec::new();
    for (key, value) in table.iter() {
        let line = lines.at(key.span().start);
        let value = toml_value(lines, value.get_ref(), line, depth)?;
        entries.push((key.get_ref().to_string(), Spot { line, value }));
    }
    Ok(Tree::Table(entries))
}

fn toml_value(lines: &Lines<'_>, value: &DeValue<'_>, line: usize, depth: usize) -> Result<Tree> {
    let depth = deeper(depth, line)?;
    let number = |digits: &str, radix: u32| match radix {
        10 => digits.replace('_', "").parse::<f64>().ok(),
        _ => i64::from_str_radix(&digits.replace('_', ""), radix).ok().map(|whole| whole as f64),
    };
    Ok(match value {
        DeValue::String(text) => Tree::Text(text.to_string()),
        DeValue::Integer(whole) => match number(whole.as_str(), whole.radix()) {
            Some(number) => Tree::Number(number),
            None => return Err(refusal(line, "", format!("{} is no number that fits", whole.as_str()))),
        },
        DeValue::Float(float) => match number(float.as_str(), 10) {
            Some(number) => Tree::Number(number),
            None => return Err(refusal(line, "", format!("{} is no number", float.as_str()))),
        },
        DeValue::Boolean(true) => Tree::Other("`true`"),
        DeValue::Boolean(false) => Tree::Other("`false`"),
        DeValue::Datetime(_) => Tree::Other("a date"),
        DeValue::Array(list) => {
            let spot = |item: &toml::Spanned<DeValue<'_>>| {
                let line = lines.at(item.span().start);
                Ok(Spot { line, value: toml_value(lines, item.get_ref(), line, depth)? })
            };
            Tree::List(list.iter().map(spot).collect::<Result<_>>()?)
        }
        DeValue::Table(table) => toml_table(lines, table, depth)?,
    })
}

fn json_refusal(first: usize, error: &serde_json::Error) -> Error {
    let full = error.to_string();
    let end = full.rfind(" at line ").unwrap_or(full.len());
    refusal(first + error.line().max(1) - 1, "", full[..end].to_owned())
}

fn twice(key: &str) -> String {
    format!("`{key}` stands twice")
}

/// The pairs of a JSON object in their order.
struct Pairs<'a>(Vec<(String, &'a RawValue)>);

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
                let mut pairs: Vec<(String, &'de RawValue)> = Vec::new();
                while let Some((key, value)) = map.next_entry::<String, &'de RawValue>()? {
                    pairs.push((key, value));
                }
                Ok(Pairs(pairs))
            }
        }
        deserializer.deserialize_map(Visitor)
    }
}

fn json(lines: &Lines<'_>, raw: &RawValue, depth: usize) -> Result<Spot> {
    let own = raw.get();
    let line = lines.at((own.as_ptr() as usize).saturating_sub(lines.text.as_ptr() as usize));
    let depth = deeper(depth, line)?;
    let wrong = |error: serde_json::Error| json_refusal(line, &error);
    let value = match own.as_bytes().first() {
        Some(b'{') => {
            let pairs: Pairs<'_> = serde_json::from_str(own).map_err(wrong)?;
            let mut entries: Vec<(String, Spot)> = Vec::with_capacity(pairs.0.len());
            for (key, value) in pairs.0 {
                let spot = json(lines, value, depth)?;
                if entries.iter().any(|(known, _)| *known == key) {
                    return Err(refusal(spot.line, "", twice(&key)));
                }
                entries.push((key, spot));
            }
            Tree::Table(entries)
        }
        Some(b'[') => {
            let items: Vec<&RawValue> = serde_json::from_str(own).map_err(wrong)?;
            Tree::List(items.into_iter().map(|item| json(lines, item, depth)).collect::<Result<_>>()?)
        }
        Some(b'"') => Tree::Text(serde_json::from_str(own).map_err(wrong)?),
        Some(b't') => Tree::Other("`true`"),
        Some(b'f') => Tree::Other("`false`"),
        Some(b'n') => Tree::Other("`null`"),
        _ => Tree::Number(serde_json::from_str(own).map_err(wrong)?),
    };
    Ok(Spot { line, value })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at<'a>(spot: &'a Spot, key: &str) -> &'a Spot {
        let Tree::Table(entries) = &spot.value else { panic!("no table") };
        entries.iter().find(|(name, _)| name == key).map(|(_, spot)| spot).unwrap()
    }

    #[test]
    fn every_value_has_its_line_in_both_formats() {
        let toml = read("a = 1\n[b]\nc = [\n  \"x\",\n  2.5,\n]\n").unwrap();
        let json = read("{\n\"a\": 1,\n\"b\": {\n\"c\": [\n\"x\", 2.5]}}").unwrap();
        for (tree, lines) in [(&toml, [1, 2, 3, 4, 5]), (&json, [2, 3, 4, 5, 5])] {
            let Tree::List(items) = &at(at(tree, "b"), "c").value else { panic!("no list") };
            let found = [
                at(tree, "a").line,
                at(tree, "b").line,
                at(at(tree, "b"), "c").line,
                items[0].line,
                items[1].line,
            ];
            assert_eq!(found, lines);
            assert_eq!((&items[0].value, &items[1].value), (&Tree::Text("x".to_owned()), &Tree::Number(2.5)));
        }
    }

    #[test]
    fn what_is_no_document_is_refused_at_its_line() {
        let deep = format!("{{\"a\": {}1{}}}", "[".repeat(40), "]".repeat(40));
        for (text, line) in [
            ("a = 1\nb = \n", 2),
            ("a = 1\na = 2\n", 2),
            ("{\n\"a\": 1,\n}", 3),
            ("{\n\"a\": 1,\n\"a\": 2\n\n}", 3),
            ("{\"a\": 1} x", 1),
            ("sheet.toml", 0),
            (&deep, 1),
        ] {
            match read(text).unwrap_err() {
                Error::Document { line: at, message, .. } => assert_eq!(at, line, "{text}: {message}"),
                other => panic!("{other:?}"),
            }
        }
    }
}
