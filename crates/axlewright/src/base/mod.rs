//! What every system stands on: units and their text, errors, validity, tables, verdicts, numeric helpers.
pub mod document;
pub mod error;
pub(crate) mod integrator;
pub mod numeric;
#[cfg(feature = "sheet")]
pub mod section;
pub mod table;
pub mod text;
pub mod units;
pub mod valid;
pub mod verdict;
pub mod work;
