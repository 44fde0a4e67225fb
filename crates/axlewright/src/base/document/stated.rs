//! What a document says of a part that a vehicle may not have.

/// A part, or what is known of it: given, that there is none, or nothing.
///
/// In a document a part that there is stands as its table or value, `"none"` says that there is none, and a key that is left out says
/// nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Stated<T> {
    /// The part is there.
    Given(T),
    /// There is no such part.
    None,
    /// Nothing is said of it.
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

    /// The part, if it is there, to be changed.
    pub const fn as_mut(&mut self) -> Option<&mut T> {
        match self {
            Stated::Given(part) => Some(part),
            Stated::None | Stated::Unknown => None,
        }
    }

    /// Whether the part is there.
    pub const fn is_given(&self) -> bool {
        matches!(self, Stated::Given(_))
    }

    /// Whether nothing is said of it.
    pub const fn is_unknown(&self) -> bool {
        matches!(self, Stated::Unknown)
    }

    /// Another part in its place, if it is there.
    pub fn map<U>(self, other: impl FnOnce(T) -> U) -> Stated<U> {
        match self {
            Stated::Given(part) => Stated::Given(other(part)),
            Stated::None => Stated::None,
            Stated::Unknown => Stated::Unknown,
        }
    }
}

/// What is not there is not known.
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

    /// The name by which the reader of documents knows what may be none.
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
        /// There is none.
        fn visit_unit<E: de::Error>(self) -> Result<Stated<T>, E> {
            Ok(Stated::None)
        }
        /// Nothing is said.
        fn visit_none<E: de::Error>(self) -> Result<Stated<T>, E> {
            Ok(Stated::Unknown)
        }
    }
}

#[cfg(feature = "serde")]
pub(super) use text::STATED;
