//! Statement of a document on a part that a vehicle may lack.

/// A part, or the knowledge of it: given, declared absent, or unknown.
///
/// In a document, a given part is written as its table or value. `"none"` declares that there is no such part. A key that is left out
/// leaves the part unknown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stated<T> {
    /// The part is there.
    Given(T),
    /// There is no such part.
    None,
    /// The part is unknown.
    #[default]
    Unknown,
}

impl<T> Stated<T> {
    /// The part, if it is there.
    pub const fn as_ref(&self) -> Option<&T> {
        match self {
            Stated::Given(part) => Some(part),
            Stated::None | Stated::Unknown => None,
        }
    }

    /// The part for a change, if it is there.
    pub const fn as_mut(&mut self) -> Option<&mut T> {
        match self {
            Stated::Given(part) => Some(part),
            Stated::None | Stated::Unknown => None,
        }
    }

    /// True if the part is there.
    pub const fn is_given(&self) -> bool {
        matches!(self, Stated::Given(_))
    }

    /// True if the part is unknown.
    pub const fn is_unknown(&self) -> bool {
        matches!(self, Stated::Unknown)
    }

    /// Another part in place of this one, if it is there.
    pub fn map<U>(self, other: impl FnOnce(T) -> U) -> Stated<U> {
        match self {
            Stated::Given(part) => Stated::Given(other(part)),
            Stated::None => Stated::None,
            Stated::Unknown => Stated::Unknown,
        }
    }
}

/// A missing part is unknown.
impl<T> From<Option<T>> for Stated<T> {
    fn from(part: Option<T>) -> Stated<T> {
        part.map_or(Stated::Unknown, Stated::Given)
    }
}

#[cfg(feature = "serde")]
mod text {
    use super::Stated;
    use crate::base::document::tree::NONE;
    use serde::de::{self, Deserialize, Deserializer, Visitor};
    use serde::ser::{Serialize, Serializer};
    use std::marker::PhantomData;

    /// Name by which the reader of documents recognises a part that may be `none`.
    pub(in crate::base::document) const STATED: &str = "Stated";

    impl<T: Serialize> Serialize for Stated<T> {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            match self {
                Stated::Given(part) => part.serialize(serializer),
                Stated::None => serializer.serialize_str(NONE),
                Stated::Unknown => serializer.serialize_none(),
            }
        }
    }

    impl<'de, T: Deserialize<'de>> Deserialize<'de> for Stated<T> {
        fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
            deserializer.deserialize_newtype_struct(STATED, StatedVisitor(PhantomData))
        }
    }

    struct StatedVisitor<T>(PhantomData<T>);

    impl<'de, T: Deserialize<'de>> Visitor<'de> for StatedVisitor<T> {
        type Value = Stated<T>;

        fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
            f.write_str("a part, or \"none\"")
        }
        fn visit_newtype_struct<D: Deserializer<'de>>(self, deserializer: D) -> Result<Stated<T>, D::Error> {
            T::deserialize(deserializer).map(Stated::Given)
        }
        /// The part is declared absent.
        fn visit_unit<E: de::Error>(self) -> Result<Stated<T>, E> {
            Ok(Stated::None)
        }
        /// The part is unknown.
        fn visit_none<E: de::Error>(self) -> Result<Stated<T>, E> {
            Ok(Stated::Unknown)
        }
    }
}

#[cfg(feature = "serde")]
pub(super) use text::STATED;
