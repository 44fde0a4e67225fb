//! The base of every system: units and their text, errors, validity, tables, verdicts, numeric helpers.
// Unused items are checked with all systems: one system alone does not use all shared items.
#![cfg_attr(not(feature = "systems"), allow(dead_code, unused_imports, unused_macros))]

pub mod document;
pub mod error;
#[cfg(feature = "integrator")]
pub(crate) mod integrator;
mod limit;
mod no_solution;
pub mod numeric;
#[cfg(feature = "sheet")]
pub mod section;
pub mod stop;
pub mod table;
pub mod text;
pub mod units;
pub mod valid;
pub mod verdict;
pub mod work;

/// Keeps a public trait to the types of this crate.
mod sealed {
    pub trait Sealed {}
}
pub(crate) use sealed::Sealed;
