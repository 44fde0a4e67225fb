//! Unit-safe vehicle-engineering functions for one-off vehicle builders.
//!
//! Every formula is one typed, documented function in the folder of its system; a *model* takes what is richer than a few
//! quantities (lists, curves, choices), and a *table* is what a model returns over a grid. C and Python follow from this
//! crate by generation.
//!
//! Systems stand on layers and import downward only. The modules in this file stand in that order.
//!
//! # Features
//! Each system is a feature of its name and brings along the systems that it uses. By default all systems are there, as
//! functions and models. `default-features = false, features = ["spring"]` is the springs alone, with `uom` and the two
//! packages below it. Opt-in are `serde`, models as JSON and TOML text, and `sheet`, the build sheet with all systems and `serde`.
//!
//! # Reading the compiler
//! Each kind of quantity is a type, and the compiler names both kinds where two are mixed:
//! - "expected `LinearStiffness`, found `Force`": another kind is wanted. The crossings between kinds are the named functions of
//!   [`units`]: [`units::torque`], [`units::absolute`], [`units::angular_velocity`] and so on.
//! - "cannot multiply `Force` by `Length`": the product has no kind, or two of them. Name it ([`units::torque`],
//!   [`units::energy`]), or let `uom` check the dimension: `Energy::from_raw(force.raw() * length)`.
//! - "`mm` is not a unit of `LinearStiffness`": the unit after `of::<...>` belongs to another kind.
//! - "expected `Ratio`, found floating-point number": a bare number; write `Ratio::of::<one>(0.62)`.
//! - "expected `PInt<...>`, found `Z0`": the raw quantity in a `from_raw` has another dimension. The order of the exponents is
//!   length, mass, time, current, temperature.
//!
//! A quantity prints with its unit: `{}` in that of a metric shop, `{:#}` in that of a US shop, `{:.1}` with one digit after the
//! point. `q.in_::<lbf_in>()` is the number in a unit, and `"225 lbf/in".parse::<LinearStiffness>()` reads one.
#![forbid(unsafe_code)]
// No panic in the core outside its tests. A module that indexes says what fixes its bounds.
#![cfg_attr(
    not(test),
    deny(
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic,
        clippy::string_slice,
        clippy::todo,
        clippy::unimplemented,
        clippy::unreachable,
        clippy::unwrap_used
    )
)]

pub mod base;

// Written by `cargo xtask generate`, from the folders of the systems and what they import.
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

#[cfg(feature = "driveline")]
pub mod driveline;
#[cfg(feature = "suspension")]
pub mod suspension;

#[cfg(feature = "cooling")]
pub mod cooling;

#[cfg(feature = "ride")]
pub mod ride;
// Written by hand again.

pub mod catalogue;
#[path = "generated.renamed.rs"]
mod renamed;
#[cfg(feature = "sheet")]
pub mod sheet;

pub use base::document::{Model, Prepare, Stated, Value};
pub use base::error::{Error, Result};
pub use base::table::Table;
pub use base::units;
pub use base::verdict::Verdict;
pub use base::work::Work;
