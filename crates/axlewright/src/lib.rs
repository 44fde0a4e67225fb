//! Unit-safe vehicle-engineering functions for one-off vehicle builders.
//!
//! Every formula is one typed, documented function in the folder of its system; a *model* takes what is richer than a few
//! quantities (lists, curves, choices), and a *table* is what a model returns over a grid. C and Python follow from this
//! crate by generation.
//!
//! Systems stand on layers and import downward only: `base` < `air` `fluid` < `tyre` `spring` `engine` `mass` < `suspension`
//! `driveline` `cooling` < `ride` < `catalogue`.
//!
//! # Reading the compiler
//! The types are dimensions, so the compiler speaks of exponents where two kinds are mixed:
//! - "expected `Z0`, found `PInt<...>`" or "expected `PInt<...>`, found `NInt<...>`": another dimension, such as a force where a
//!   stiffness is wanted. The order of the exponents is length, mass, time, current, temperature.
//! - "expected trait `RotationKind`, found trait `Kind`": the same dimension and another kind, such as an energy where a torque is
//!   wanted. The crossings are the named functions of [`units`]: [`units::torque`], [`units::absolute`],
//!   [`units::angular_velocity`] and so on.
//! - "`mm` is not a unit of this quantity": the unit after `of::<...>` belongs to another kind.
//! - A bare number where a ratio is wanted: `Ratio::of::<one>(0.62)`; `.into()`, which the compiler may propose, gives nothing here.
//!
//! A quantity is printed with its unit by `base::text::print(q.si(), Q::KIND, System::Us)`, or as a number in a unit by
//! `q.in_::<lbf_in>()`.
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
pub mod suspension;

pub mod ride;

pub mod catalogue;
#[cfg(feature = "sheet")]
pub mod sheet;

pub use base::document::{Model, Value};
pub use base::error::{Error, Result};
pub use base::table::Table;
pub use base::units;
pub use base::verdict::Verdict;
pub use base::work::Work;
