//! Models: types that are checked when they are built and can be written as a document.

#[cfg(feature = "serde")]
use super::decode::{Keys, decode};
#[cfg(feature = "serde")]
use super::tree::Document;
#[cfg(feature = "serde")]
use crate::Error;
use crate::base::error::Result;

/// A type that is checked when it is built and can be written as a document. Implemented inside this crate only.
pub trait Model: Sized + crate::base::Sealed {
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
        decode(&document, broken, Keys { wishes: Self::WISHES, former: Self::FORMER }, Self::check)
    }

    /// The model of a document that was read before, or that a program filled.
    #[cfg(feature = "serde")]
    fn from_document(document: &Document) -> Result<Self>
    where
        Self: serde::de::DeserializeOwned,
    {
        decode(document, vec![], Keys { wishes: Self::WISHES, former: Self::FORMER }, Self::check)
    }

    /// The model as JSON, each value as it was written.
    #[cfg(feature = "serde")]
    fn to_json(&self) -> Result<String>
    where
        Self: serde::Serialize,
    {
        serde_json::to_string(self).map_err(|error| Error::document("", error))
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
