//! Models as documents: JSON or TOML text, in which every dimensional value is text with its unit.

#[cfg(feature = "serde")]
mod decode;
mod fault;
mod stated;
#[cfg(feature = "serde")]
mod tree;
#[cfg(feature = "serde")]
mod value;

#[cfg(feature = "sheet")]
pub(crate) use fault::{Collector, Source};
pub use fault::{Fault, Faults, MOST_FAULTS};
pub use stated::Stated;
#[cfg(feature = "serde")]
pub use tree::{DEEPEST, Document, Field, LONGEST_TEXT, MOST_BYTES, MOST_VALUES};
#[cfg(feature = "sheet")]
pub(crate) use tree::{NONE, Spot, Tree, sized, too_many};
#[cfg(feature = "sheet")]
pub(crate) use value::{PARTS, bare, wanted};

use super::error::Result;
use super::text::Tolerance;
use super::units::Quantity;

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

impl<Q: Quantity> Value<Q> {
    /// A value that was not read from text.
    pub const fn new(quantity: Q) -> Self {
        Self { quantity, written: None, tolerance: None }
    }
    /// A value from text; a tolerance is refused.
    pub fn parse(text: &str) -> Result<Self> {
        Ok(Self { quantity: super::text::parse(text)?, written: Some(text.to_owned()), tolerance: None })
    }
    /// A value from the text of a document, with its tolerance.
    #[cfg(feature = "serde")]
    fn read(text: &str) -> Result<Self> {
        let reading = super::text::read_as(text, Q::KIND)?;
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

/// A type that is checked when it is built and can be written as a document. Implemented inside this crate only.
pub trait Model: Sized + super::Sealed {
    /// Keys that this model had for a margin that is wanted, each with the line of the build sheet that says it and the rule that grades it.
    #[doc(hidden)]
    const WISHES: &'static [[&'static str; 3]] = &[];

    /// Keys that this model had, each with what says the same today; for what no alias can say.
    #[doc(hidden)]
    const FORMER: &'static [[&'static str; 2]] = &[];

    /// Refuses impossible values, by the name of the field.
    fn check(&self) -> Result<()>;

    /// The model, if its check passes.
    fn checked(self) -> Result<Self> {
        self.check()?;
        Ok(self)
    }

    /// Reads JSON (text that begins with `{`) or TOML, and checks it. Unknown keys are refused; a refusal lists all faults.
    #[cfg(feature = "serde")]
    fn from_text(text: &str) -> Result<Self>
    where
        Self: serde::de::DeserializeOwned,
    {
        let (document, broken) = Document::read(text)?;
        decode::decode(&document, broken)
    }

    /// The model of a document that was read before, or that a program filled.
    #[cfg(feature = "serde")]
    fn from_document(document: &Document) -> Result<Self>
    where
        Self: serde::de::DeserializeOwned,
    {
        decode::decode(document, vec![])
    }

    /// The model as JSON, each value as it was written.
    #[cfg(feature = "serde")]
    fn to_json(&self) -> Result<String>
    where
        Self: serde::Serialize,
    {
        serde_json::to_string(self).map_err(|error| crate::Error::document("", error.to_string()))
    }
}

/// A model that is prepared once and asked many times.
///
/// Each method of a model checks its parts and prepares it anew. A caller who asks for many positions one by one prepares it first: the answers
/// are the same to the last bit.
pub trait Prepare: Model {
    /// The model, checked and ready to be asked.
    type Prepared<'a>
    where
        Self: 'a;

    /// Checks the model and prepares it.
    fn prepare(&self) -> Result<Self::Prepared<'_>>;
}

#[cfg(test)]
#[cfg(all(
    feature = "serde",
    feature = "cooling",
    feature = "driveline",
    feature = "engine",
    feature = "spring",
    feature = "tyre"
))]
mod tests;
