//! Unit-safe vehicle-engineering functions for one-off vehicle builders.
//!
//! Every formula is one typed, documented function in the folder of its system; a *model* takes what is richer than a few
//! quantities (lists, curves, choices), and a *table* is what a model returns over a grid. C and Python follow from this
//! crate by generation.
//!
//! Systems stand on layers and import downward only: `base` < `air` `fluid` < `tyre` `spring` `engine` `mass` < `suspension`
//! `driveline` `cooling` < `ride` < `catalogue`.
//!
//! # Features
//! Each system is a feature of its name and brings along the systems that it uses. By default all systems are there, as
//! functions and models. `default-features = false, features = ["spring"]` is the springs alone, with `uom` and the two
//! packages below it. Opt-in are `serde`, models as JSON and TOML text, and `sheet`, the build sheet with all systems and `serde`.
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

#[cfg(feature = "air")]
pub mod air;
#[cfg(feature = "fluid")]
pub mod fluid;

#[cfg(feature = "engine")]
pub mod engine;
#[cfg(feature = "mass")]
pub mod mass;
#[cfg(feature = "spring")]
pub mod spring;
#[cfg(feature = "tyre")]
pub mod tyre;

#[cfg(feature = "cooling")]
pub mod cooling;
#[cfg(feature = "driveline")]
pub mod driveline;
#[cfg(feature = "suspension")]
pub mod suspension;

#[cfg(feature = "ride")]
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
