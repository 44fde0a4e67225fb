//! A quantity in a document: text with its unit, a table of value and unit, or a number in coherent SI from a program.

use crate::base::error::Result;
use crate::base::text::{self, Tolerance};
use crate::units::Quantity;

/// A quantity in a document: its value, how it was written, and its tolerance.
///
/// In text it is `"225 lbf/in"`, `"225 lbf/in +/- 3 %"` or `{ value = 225, unit = "lbf/in", tolerance = "3 %" }`; a pure number may
/// stand without quotes. A tolerance comes from a document alone, and stays with it. Models compute with the value alone and give no
/// verdicts; the build sheet counts the tolerance.
///
/// Two values are equal if quantity and tolerance are: `"1 in"` is `"25.4 mm"`.
#[derive(Debug, Clone)]
#[must_use]
pub struct Value<Q> {
    /// The value.
    pub quantity: Q,
    /// Text as it was written, if it came from a document.
    pub written: Option<String>,
    tolerance: Option<Tolerance>,
}

impl Value<crate::units::Ratio> {
    /// Refuses a share of a whole that was written as two parts: `1:1`.
    pub(crate) fn share(&self, key: &'static str) -> Result<()> {
        match &self.written {
            Some(written) if text::is_two_parts(written) => {
                Err(crate::Error::document(key, text::no_share(written)))
            }
            _ => Ok(()),
        }
    }
}

impl<Q: Quantity> Value<Q> {
    /// A value that was not read from text.
    pub const fn new(quantity: Q) -> Self {
        Self { quantity, written: None, tolerance: None }
    }
    /// A value from text; a tolerance is refused.
    pub fn parse(text: &str) -> Result<Self> {
        Ok(Self { quantity: text::parse(text)?, written: Some(text.to_owned()), tolerance: None })
    }
    /// A value from the text of a document, with its tolerance.
    #[cfg(feature = "serde")]
    fn read(text: &str) -> Result<Self> {
        let reading = text::read_as(text, Q::KIND)?;
        let (quantity, written) = (Q::from_si(reading.si), Some(text.to_owned()));
        Ok(Self { quantity, written, tolerance: reading.tolerance })
    }
}

impl<Q: PartialEq> PartialEq for Value<Q> {
    fn eq(&self, other: &Self) -> bool {
        (&self.quantity, self.tolerance) == (&other.quantity, other.tolerance)
    }
}

impl<Q> Value<Q> {
    /// Tolerance of the quantity, if the document gives one.
    pub const fn tolerance(&self) -> Option<Tolerance> {
        self.tolerance
    }
}

#[cfg(feature = "serde")]
mod serde {
    use super::Value;
    use crate::base::document::tree::NONE;
    use crate::base::text;
    use crate::units::{Kind, Quantity};
    use ::serde::de::{self, Deserialize, Deserializer, MapAccess, Visitor};
    use ::serde::ser::{Serialize, Serializer};
    use std::marker::PhantomData;

    impl<Q: Quantity> Serialize for Value<Q> {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            match &self.written {
                Some(written) => serializer.serialize_str(written),
                None => serializer.serialize_str(&text::print_in_first(self.quantity.si(), Q::KIND)),
            }
        }
    }

    impl<'de, Q: Quantity> Deserialize<'de> for Value<Q> {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            deserializer.deserialize_any(ValueVisitor(PhantomData))
        }
    }

    struct ValueVisitor<Q>(PhantomData<Q>);

    /// Message for a number without a unit.
    pub(crate) fn bare(kind: &Kind, number: f64) -> String {
        format!("{number} has no unit; a {} is text with {}", kind.words, text::symbols(kind))
    }

    /// Words for an expected quantity.
    pub(crate) fn wanted(kind: &Kind) -> String {
        let unit = kind.unit(kind.metric).map_or("", |unit| unit.symbol);
        format!("a {} as text with its unit, such as \"1 {unit}\"", kind.words)
    }

    /// Message for "none" on a part that every vehicle has.
    pub(crate) const ALWAYS: &str =
        "there is always one, so `none` is not allowed here; if it is not known, leave the key out";

    /// Message for a table that is not a quantity.
    pub(crate) const PARTS: &str = "a quantity as a table has `value` and `unit`, and may have `tolerance`";

    impl<'de, Q: Quantity> Visitor<'de> for ValueVisitor<Q> {
        type Value = Value<Q>;

        fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
            f.write_str(&wanted(Q::KIND))
        }
        fn visit_str<E: de::Error>(self, text: &str) -> Result<Value<Q>, E> {
            if text == NONE {
                return Err(E::custom(ALWAYS));
            }
            Value::read(text).map_err(E::custom)
        }
        fn visit_f64<E: de::Error>(self, number: f64) -> Result<Value<Q>, E> {
            if Q::KIND.name == "Ratio" {
                Ok(Value::new(Q::from_si(number)))
            } else {
                Err(E::custom(bare(Q::KIND, number)))
            }
        }
        fn visit_i64<E: de::Error>(self, number: i64) -> Result<Value<Q>, E> {
            self.visit_f64(number as f64)
        }
        fn visit_u64<E: de::Error>(self, number: u64) -> Result<Value<Q>, E> {
            self.visit_f64(number as f64)
        }
        /// A number in coherent SI: only the reader of documents gives it so.
        fn visit_newtype_struct<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value<Q>, D::Error> {
            f64::deserialize(deserializer).map(|si| Value::new(Q::from_si(si)))
        }
        fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Value<Q>, A::Error> {
            let (mut value, mut unit, mut tolerance) = (None::<f64>, None::<String>, None::<String>);
            while let Some(key) = map.next_key::<String>()? {
                match key.as_str() {
                    "value" => value = Some(map.next_value()?),
                    "unit" => unit = Some(map.next_value()?),
                    "tolerance" => tolerance = Some(map.next_value()?),
                    _ => return Err(de::Error::unknown_field(&key, &["value", "unit", "tolerance"])),
                }
            }
            let (Some(value), Some(unit)) = (value, unit) else {
                return Err(de::Error::custom(PARTS));
            };
            if let Some(tolerance) = tolerance {
                return Value::read(&format!("{value} {unit} +/- {tolerance}")).map_err(de::Error::custom);
            }
            let (_, unit) = text::unit(&unit, Some(Q::KIND)).map_err(de::Error::custom)?;
            let si = unit.to_si(value);
            let written = Some(text::print_in(si, Q::KIND, unit));
            Ok(Value { quantity: Q::from_si(si), written, tolerance: None })
        }
    }
}

#[cfg(feature = "serde")]
pub(super) use serde::ALWAYS;
#[cfg(feature = "sheet")]
pub(crate) use serde::{PARTS, bare, wanted};
