//! Models as documents: JSON or TOML text, in which every dimensional value is text with its unit.

#[cfg(feature = "serde")]
mod decode;
mod model;
#[cfg(feature = "serde")]
mod source;
mod stated;
#[cfg(feature = "serde")]
mod tree;
mod value;

pub use super::error::{Fault, Faults, MOST_FAULTS};
pub use model::{Model, Prepare};
#[cfg(feature = "sheet")]
pub(crate) use source::{Collector, Source};
pub use stated::Stated;
#[cfg(feature = "serde")]
pub use tree::{DEEPEST, Document, Field, LONGEST_TEXT, MOST_BYTES, MOST_VALUES, within_bytes};
#[cfg(feature = "sheet")]
pub(crate) use tree::{NONE, Spot, Tree, sized, too_long, too_many};
pub use value::Value;
#[cfg(feature = "sheet")]
pub(crate) use value::{PARTS, bare, wanted};

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
