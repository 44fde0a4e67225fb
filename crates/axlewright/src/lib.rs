//! Unit-safe vehicle-engineering functions for one-off vehicle builders.
//!
//! Every formula is one typed, documented function in the folder of its system; a *model* takes what is richer than a few
//! quantities (lists, curves, choices), and a *table* is what a model returns over a grid. C and Python follow from this
//! crate by generation.
//!
//! Systems stand on layers and import downward only: `base` < `air` `fluid` < `tyre` `spring` `engine` `mass` < `driveline`
//! `cooling`.
#![forbid(unsafe_code)]

pub mod base;

pub mod air;
pub mod fluid;

pub mod engine;
pub mod mass;
pub mod spring;
pub mod tyre;

pub mod cooling;
pub mod driveline;

pub use base::document::{Model, Value};
pub use base::error::{Error, Result};
pub use base::table::Table;
pub use base::units;
pub use base::verdict::Verdict;
