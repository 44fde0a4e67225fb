//! Quantities as fields of documents: text with the unit, which reads back to the same bits.

use super::{Kind, Quantity};
use crate::base::text;
use core::{fmt, marker::PhantomData};
use serde::de::{Deserializer, Error, Unexpected, Visitor};
use serde::ser::{Error as _, Serializer};

/// Text of a value in coherent SI; refuses a value that is not finite, for no text can hold it.
pub(super) fn write<S: Serializer>(si: f64, kind: &'static Kind, serializer: S) -> Result<S::Ok, S::Error> {
    if !si.is_finite() {
        return Err(S::Error::custom(format!("{si} {}: a {} in a document is finite", kind.si, kind.words)));
    }
    serializer.serialize_str(&text::print_in_first(si, kind))
}

/// A quantity from text with its unit; a ratio from a bare number, too.
pub(super) fn read<'de, Q: Quantity, D: Deserializer<'de>>(deserializer: D) -> Result<Q, D::Error> {
    deserializer.deserialize_any(Reader(PhantomData))
}

struct Reader<Q>(PhantomData<Q>);

impl<Q: Quantity> Visitor<'_> for Reader<Q> {
    type Value = Q;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = Q::KIND.unit(Q::KIND.metric).map_or("", |unit| unit.symbol);
        write!(f, "a {} as text with its unit, such as \"1 {unit}\"", Q::KIND.words)
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Q, E> {
        text::parse(text).map_err(E::custom)
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<Q, E> {
        match Q::KIND.name {
            "Ratio" if number.is_finite() => Ok(Q::from_si(number)),
            _ => Err(E::invalid_type(Unexpected::Float(number), &self)),
        }
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<Q, E> {
        self.visit_f64(number as f64)
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<Q, E> {
        self.visit_f64(number as f64)
    }
}
