//! Models as documents: JSON or TOML text, in which every dimensional value is text with its unit.

use super::error::Result;
use super::units::Quantity;

/// A quantity in a document: its value and how it was written.
///
/// In text it is `"225 lbf/in"` or `{ value = 225, unit = "lbf/in" }`; a pure number may stand without quotes. A tolerance is
/// refused as long as no verdict takes it into account.
#[derive(Debug, Clone, PartialEq)]
pub struct Value<Q> {
    /// The value.
    pub quantity: Q,
    /// The text as it was written, where it came from a document.
    pub written: Option<String>,
}

impl<Q: Quantity> Value<Q> {
    /// A value that was not read from text.
    pub const fn new(quantity: Q) -> Self {
        Self { quantity, written: None }
    }
    /// A value from text.
    pub fn parse(text: &str) -> Result<Self> {
        Ok(Self { quantity: super::text::parse(text)?, written: Some(text.to_owned()) })
    }
}

/// What is checked when it is built, and can be written as a document. Implemented inside this crate only.
pub trait Model: Sized + super::Sealed {
    /// Refuses what cannot be, by the name of the field.
    fn check(&self) -> Result<()>;

    /// The model, if it holds together.
    fn checked(self) -> Result<Self> {
        self.check()?;
        Ok(self)
    }

    /// Reads JSON (text that begins with `{`) or TOML, and checks it. Unknown keys are refused.
    #[cfg(feature = "serde")]
    fn from_text(text: &str) -> Result<Self>
    where
        Self: serde::de::DeserializeOwned,
    {
        decode::<Self>(text)?.checked()
    }

    /// The model as JSON, each value as it was written.
    #[cfg(feature = "serde")]
    fn to_json(&self) -> Result<String>
    where
        Self: serde::Serialize,
    {
        serde_json::to_string(self).map_err(|error| refusal(0, String::new(), error.to_string()))
    }
}

#[cfg(feature = "serde")]
use super::error::Error;

#[cfg(feature = "serde")]
fn refusal(line: usize, key: String, message: String) -> Error {
    Error::Document { line, key, message: plain(&message).unwrap_or(message) }
}

/// The sentences of serde that name its own types, in the words of whoever wrote the document.
#[cfg(feature = "serde")]
fn plain(message: &str) -> Option<String> {
    if let Some(found) = message.strip_prefix("unknown variant ") {
        let (found, choices) = found.split_once(", expected ")?;
        let choices = choices.trim_start_matches("one of ").replace(" or ", ", ");
        return Some(format!("{found} is not a choice; choices: {choices}"));
    }
    let (found, expected) = message.strip_prefix("invalid type: ")?.rsplit_once(", expected ")?;
    let found = match found.split_once(' ') {
        None if found == "map" => "a table".to_owned(),
        None if found == "sequence" => "a list".to_owned(),
        Some(("string", text)) => format!("the text {text}"),
        Some(("integer", number)) => format!("the number {number}"),
        Some(("floating", number)) => number.replace("point", "the number"),
        _ => found.to_owned(),
    };
    let expected = if expected == "a sequence" { "a list" } else { expected };
    Some(format!("expected {expected}, not {found}"))
}

#[cfg(feature = "serde")]
fn decode<T: serde::de::DeserializeOwned>(text: &str) -> Result<T> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if !text.contains('\n') && [".toml", ".json"].iter().any(|ending| text.trim_end().ends_with(ending)) {
        return Err(refusal(0, String::new(), "this looks like a file name: pass its text".to_owned()));
    }
    if text.trim_start().starts_with('{') {
        let mut json = serde_json::Deserializer::from_str(text);
        let value = serde_path_to_error::deserialize(&mut json).map_err(|error| {
            let (line, key) = (error.inner().line(), key_of(error.path()));
            let full = error.into_inner().to_string();
            // serde_json ends its sentence with the place, which stands in `line`.
            let end = full.rfind(" at line ").unwrap_or(full.len());
            refusal(line, key, full[..end].to_owned())
        })?;
        json.end().map_err(|error| refusal(error.line(), String::new(), error.to_string()))?;
        Ok(value)
    } else {
        let toml =
            toml::Deserializer::parse(text).map_err(|error| toml_refusal(text, String::new(), &error))?;
        serde_path_to_error::deserialize(toml)
            .map_err(|error| toml_refusal(text, key_of(error.path()), error.inner()))
    }
}

#[cfg(feature = "serde")]
fn key_of(path: &serde_path_to_error::Path) -> String {
    if path.iter().next().is_none() { String::new() } else { path.to_string() }
}

#[cfg(feature = "serde")]
fn toml_refusal(text: &str, key: String, error: &toml::de::Error) -> Error {
    let line = error.span().map_or(0, |span| text[..span.start.min(text.len())].matches('\n').count() + 1);
    refusal(line, key, error.message().to_owned())
}

#[cfg(feature = "serde")]
mod value {
    use super::Value;
    use crate::base::text;
    use crate::units::{Kind, Quantity};
    use serde::de::{self, Deserialize, Deserializer, MapAccess, Visitor};
    use serde::ser::{Serialize, Serializer};
    use std::marker::PhantomData;

    impl<Q: Quantity> Serialize for Value<Q> {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            match &self.written {
                Some(written) => serializer.serialize_str(written),
                None => {
                    serializer.serialize_str(&text::print_in(self.quantity.si(), Q::KIND, &Q::KIND.units[0]))
                }
            }
        }
    }

    impl<'de, Q: Quantity> Deserialize<'de> for Value<Q> {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            deserializer.deserialize_any(ValueVisitor(PhantomData))
        }
    }

    struct ValueVisitor<Q>(PhantomData<Q>);

    fn bare<E: de::Error>(kind: &Kind, number: f64) -> E {
        E::custom(format!("{number} has no unit; a {} is text with {}", kind.words, text::symbols(kind)))
    }

    impl<'de, Q: Quantity> Visitor<'de> for ValueVisitor<Q> {
        type Value = Value<Q>;

        fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
            let unit = Q::KIND.unit(Q::KIND.metric).map_or("", |unit| unit.symbol);
            write!(f, "a {} as text with its unit, such as \"1 {unit}\"", Q::KIND.words)
        }
        fn visit_str<E: de::Error>(self, text: &str) -> Result<Value<Q>, E> {
            Value::parse(text).map_err(E::custom)
        }
        fn visit_f64<E: de::Error>(self, number: f64) -> Result<Value<Q>, E> {
            if Q::KIND.name == "Ratio" {
                Ok(Value::new(Q::from_si(number)))
            } else {
                Err(bare(Q::KIND, number))
            }
        }
        fn visit_i64<E: de::Error>(self, number: i64) -> Result<Value<Q>, E> {
            self.visit_f64(number as f64)
        }
        fn visit_u64<E: de::Error>(self, number: u64) -> Result<Value<Q>, E> {
            self.visit_f64(number as f64)
        }
        fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Value<Q>, A::Error> {
            let (mut value, mut unit) = (None::<f64>, None::<String>);
            while let Some(key) = map.next_key::<String>()? {
                match key.as_str() {
                    "value" => value = Some(map.next_value()?),
                    "unit" => unit = Some(map.next_value()?),
                    _ => return Err(de::Error::unknown_field(&key, &["value", "unit"])),
                }
            }
            let value = value.ok_or_else(|| de::Error::missing_field("value"))?;
            let unit = unit.ok_or_else(|| de::Error::missing_field("unit"))?;
            let (_, unit) = text::unit(&unit, Some(Q::KIND)).map_err(de::Error::custom)?;
            let si = unit.to_si(value);
            Ok(Value { quantity: Q::from_si(si), written: Some(text::print_in(si, Q::KIND, unit)) })
        }
    }
}

#[cfg(test)]
#[cfg(all(feature = "serde", feature = "cooling", feature = "driveline", feature = "engine"))]
mod tests {
    use super::*;
    use crate::cooling::Coolant;
    use crate::driveline::TorquePath;
    use crate::engine::TorqueCurve;

    const COOLANT: &str = r#"
liquid = "ethylene_glycol"
strength = "50 %"
strength_by = "volume"
concentrate = 0.95
cap = { value = 15, unit = "psi gauge" }
altitude = "5000 ft"
hottest_coolant = "230 °F"
tight_below = "20 delta_degF"
"#;

    fn refused(text: &str) -> (usize, String, String) {
        match Coolant::from_text(text).unwrap_err() {
            Error::Document { line, key, message } => (line, key, message),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn toml_and_json_say_the_same() {
        let from_toml = Coolant::from_text(COOLANT).unwrap();
        let json = from_toml.to_json().unwrap();
        let from_json = Coolant::from_text(&json).unwrap();
        assert_eq!(from_json.to_json().unwrap(), json, "a round trip keeps every byte");
        assert_eq!(from_json.margin().unwrap(), from_toml.margin().unwrap());
    }

    #[test]
    fn a_refusal_has_its_line_and_key() {
        let cases = [
            (COOLANT.replace("cap = {", "capp = {"), 6, "capp", "unknown field"),
            (COOLANT.replace("\"5000 ft\"", "\"5000 lb\""), 7, "altitude", "5000 lb"),
            (COOLANT.replace("\"5000 ft\"", "5000"), 7, "altitude", "has no unit"),
            (COOLANT.replace("\"psi gauge\"", "\"psi\""), 6, "cap", "psi"),
            (COOLANT.replace("\"volume\"", "\"weight\""), 4, "strength_by", "`mass`"),
            (COOLANT.replace("liquid =", "liquid"), 2, "", ""),
        ];
        for (text, line, key, word) in cases {
            let (at, path, message) = refused(&text);
            assert_eq!(at, line, "{path}: {message}");
            assert!(path.contains(key) && message.contains(word), "{path}: {message}");
        }
        let (line, _, message) = refused("{\n \"liquid\": \"water\",\n \"cap\": \"15 psi\"}");
        assert_eq!(line, 3, "{message}");
        let (_, key, message) = refused(&COOLANT.replace("altitude = \"5000 ft\"\n", ""));
        assert_eq!((key.as_str(), message.contains("station_pressure")), ("altitude", true));
    }

    #[test]
    fn a_refusal_is_said_in_plain_words() {
        let says = |text: &str, words: &str| assert_eq!(refused(text).2, words);
        says(
            &COOLANT.replace("\"ethylene_glycol\"", "\"beer\""),
            "`beer` is not a choice; choices: `water`, `ethylene_glycol`, `propylene_glycol`",
        );
        says(
            &COOLANT.replace("\"volume\"", "\"weight\""),
            "`weight` is not a choice; choices: `mass`, `volume`",
        );
        let path = |part: &str| {
            let path = format!(r#"{{"engine_torque": "3 N·m", "tight_below": 1.25, "parts": {part}}}"#);
            TorquePath::from_text(&path).unwrap_err().to_string().replace("line 1: ", "")
        };
        assert_eq!(path("{}"), "parts: expected a list, not a table");
        assert_eq!(path("\"all\""), "parts: expected a list, not the text \"all\"");
        assert_eq!(
            path("[1]"),
            "parts[0]: expected a table with `name` and, where they are known, `ratio`, `efficiency`, \
             `differential`, `share` and `rating`, not the number `1`"
        );
        assert_eq!(
            path(r#"[{"name": "gearbox", "rating": "400 N·m"}]"#),
            "parts[0].rating: expected a table with `torque` and, where they are known, `side` and `kind`, not the text \
             \"400 N·m\""
        );
        assert_eq!(path(r#"[{"name": 1.5}]"#), "parts[0].name: expected a string, not the number `1.5`");
        let curve = TorqueCurve::from_text("points = [1, 2]").unwrap_err().to_string();
        assert_eq!(
            curve,
            "line 1: points[0]: expected a table with `engine_speed` and `torque`, not the number `1`"
        );
        for name in ["coolant.toml", "sheets/dunlin coolant.json"] {
            assert_eq!(refused(name).2, "this looks like a file name: pass its text");
        }
    }

    #[test]
    fn a_table_keeps_its_unit() {
        let coolant = Coolant::from_text(COOLANT).unwrap();
        assert_eq!(coolant.cap.written.as_deref(), Some("15 psi gauge"));
    }

    #[test]
    fn a_key_inside_a_list_is_named() {
        let text = "points = [{engine_speed = \"1000 rpm\", torque = \"200 N·m\"}, {engine_speed = \"20 Hz\", torque = \"200 N·m\"}]";
        let error = TorqueCurve::from_text(text).unwrap_err().to_string();
        assert!(error.contains("points[1].engine_speed") && error.contains("20 Hz"), "{error}");
    }

    #[test]
    fn the_words_are_kept_and_a_tolerance_is_refused() {
        let value: Value<crate::units::LinearStiffness> = Value::parse("225 lb/in").unwrap();
        assert_eq!(value.written.as_deref(), Some("225 lb/in"));
        assert_eq!(serde_json::to_string(&value).unwrap(), "\"225 lb/in\"");
        let (line, key, message) = refused(&COOLANT.replace("\"5000 ft\"", "\"5000 ft ± 200 ft\""));
        assert_eq!((line, key.as_str()), (7, "altitude"));
        assert!(message.contains("tolerance"), "{message}");
    }

    #[test]
    fn no_document_brings_it_down() {
        // Seeded mutations of a good document: each is read or refused.
        let mut state = 0x9e37_79b9_7f4a_7c15_u64;
        let mut next = move || {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            state
        };
        let (mut read, mut refusals) = (0, 0);
        for _ in 0..3000 {
            let mut bytes = COOLANT.as_bytes().to_vec();
            for _ in 0..=(next() % 3) {
                let place = (next() % bytes.len() as u64) as usize;
                match next() % 3 {
                    0 => drop(bytes.remove(place)),
                    1 => bytes[place] = (next() % 128) as u8,
                    _ => bytes.insert(place, (next() % 128) as u8),
                }
            }
            let text = String::from_utf8_lossy(&bytes);
            if Coolant::from_text(&text).is_ok() {
                read += 1
            } else {
                refusals += 1
            }
            assert!(TorquePath::from_text(&text).is_err());
        }
        assert!(read > 20 && refusals > 1000, "{read} read, {refusals} refused");
    }
}
