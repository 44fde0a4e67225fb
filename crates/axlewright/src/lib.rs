//! Unit-safe vehicle-engineering functions for one-off vehicle builders.
//!
//! Before anything is ordered or welded, a small shop must know whether a combination of parts will ride, handle, pull, hold, stay cool
//! and stop, by what margin, and how the answer changes with another part. Every answer here names its formula, its limits and its source.
//!
//! - A **function** takes quantities and returns them: [`spring::wheel_rate`]. It refuses what its formula does not cover, and says why.
//! - A **model** takes what is richer than a few quantities (lists, curves, choices): [`spring::Corner`], [`engine::TorqueCurve`].
//! - A **table** is what a model returns over a grid: a [`Table`] of columns with units, and a reason for each refused row.
//! - The **build sheet** holds a whole vehicle as one text, and judges it: `sheet`, with the feature of that name.
//!
//! C and Python follow from this crate by generation, and give the same bits.
//!
//! # Quantities
//! Each kind of quantity is a type of [`units`], and a bare number is none: `Mass::of::<kg>(545.0)`. A torque is no energy, and a gauge
//! pressure is no absolute one.
//!
//! ```
//! use axlewright::units::*;
//! let rate: LinearStiffness = "225 lbf/in".parse()?;           // from text
//! assert_eq!(format!("{:.2}", rate.in_::<N_mm>()), "39.40"); // as a number in a unit
//! assert_eq!(format!("{rate:.1}"), "39.4 N/mm");               // as a metric shop prints it
//! assert_eq!(format!("{rate:#.0}"), "225 lbf/in");             // as a US shop does
//! assert_eq!(format!("{:.1}", rate.si()), "39403.5");          // in coherent SI
//! assert!("225 lbf".parse::<LinearStiffness>().is_err());      // another kind
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! # One example a system
//! ## Springs and dampers: [`spring`]
#![cfg_attr(feature = "spring", doc = "```")]
#![cfg_attr(not(feature = "spring"), doc = "```ignore")]
//! use axlewright::{spring, units::*};
//! let rate = spring::wheel_rate(LinearStiffness::of::<lbf_in>(300.0), Ratio::of::<one>(0.62), Angle::of::<deg>(18.0))?;
//! let frequency = spring::natural_frequency(rate, Mass::of::<kg>(545.0))?;
//! assert_eq!(format!("{rate:#.1}, {frequency:.2}"), "104.3 lbf/in, 0.92 Hz");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Tyres and wheels: [`tyre`]
#![cfg_attr(feature = "tyre", doc = "```")]
#![cfg_attr(not(feature = "tyre"), doc = "```ignore")]
//! use axlewright::{tyre, units::*};
//! let radius = tyre::rolling_radius(Length::of::<mm>(696.0), Length::of::<mm>(323.0))?;
//! assert_eq!(format!("{radius:.1}"), "339.7 mm");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Engine: [`engine`]
#![cfg_attr(feature = "engine", doc = "```")]
#![cfg_attr(not(feature = "engine"), doc = "```ignore")]
//! use axlewright::{engine, units::*};
//! let power = engine::power(Torque::of::<ft_lbf>(295.0), AngularVelocity::of::<rpm>(4500.0))?;
//! assert_eq!(format!("{:.0} hp", power.in_::<hp_mechanical>()), "253 hp");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Driveline: [`driveline`]
#![cfg_attr(feature = "driveline", doc = "```")]
#![cfg_attr(not(feature = "driveline"), doc = "```ignore")]
//! use axlewright::{driveline, units::*};
//! let speed = driveline::engine_speed(
//!     Velocity::of::<mph>(65.0), Ratio::of::<one>(0.72), Ratio::of::<one>(4.10), Length::of::<mm>(340.0),
//! )?;
//! assert_eq!(format!("{speed:.0}"), "2409 rpm");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Mass and balance: [`mass`]
#![cfg_attr(feature = "mass", doc = "```")]
#![cfg_attr(not(feature = "mass"), doc = "```ignore")]
//! use axlewright::{mass, units::*};
//! let [lf, rf, lr, rr] = [612.0, 598.0, 455.0, 467.0].map(Mass::of::<kg>); // four scales
//! let [wheelbase, front, rear] = [2650.0, 1540.0, 1520.0].map(Length::of::<mm>);
//! let on = mass::weight_distribution(lf, rf, lr, rr, wheelbase, front, rear)?;
//! assert_eq!(format!("{:.1} % front", on.front_share.in_::<percent>()), "56.8 % front");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Materials: [`material`]
#![cfg_attr(feature = "material", doc = "```")]
#![cfg_attr(not(feature = "material"), doc = "```ignore")]
//! use axlewright::{material, units::*};
//! let number = Ratio::of::<one>(10.0); // sheet steel and tube have different gauges
//! let (sheet, tube) = (material::sheet_steel_gauge_thickness(number)?, material::tube_gauge_thickness(number)?);
//! assert_eq!(format!("{sheet:.3}, {tube:.3}"), "3.416 mm, 3.404 mm");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Sections and links: [`section`]
#![cfg_attr(feature = "section", doc = "```")]
#![cfg_attr(not(feature = "section"), doc = "```ignore")]
//! use axlewright::{Value, section::*, units::*};
//! let arm = RoundTube {
//!     diameter: Value::parse("1.25 in")?, wall: Some(Value::parse("0.12 in")?), gauge: None,
//!     lost_outside: None, lost_inside: None, cross_hole: None,
//! }.properties()?;
//! let buckles = euler_load(Stress::of::<GPa>(200.0), arm.minor_second_moment, Length::of::<mm>(900.0))?;
//! assert_eq!(format!("{buckles:.0}"), "69747 N");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Suspension: [`suspension`]
#![cfg_attr(feature = "suspension", doc = "```")]
#![cfg_attr(not(feature = "suspension"), doc = "```ignore")]
//! use axlewright::{suspension, units::*};
//! let rate = LinearStiffness::of::<N_mm>(28.0);
//! let axle = suspension::independent_roll_stiffness(rate, Length::of::<mm>(1480.0))?;
//! assert_eq!(format!("{axle:.0}"), "535 N·m/deg");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Ride: [`ride`]
#![cfg_attr(feature = "ride", doc = "```")]
#![cfg_attr(not(feature = "ride"), doc = "```ignore")]
//! use axlewright::{ride, units::*};
//! let damping = ride::damping_for_least_body_acceleration(
//!     Mass::of::<kg>(300.0), Mass::of::<kg>(40.0), LinearStiffness::of::<N_mm>(22.0), LinearStiffness::of::<N_mm>(190.0),
//! )?;
//! assert_eq!(format!("{damping:.0}"), "931 N·s/m");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Air: [`air`]
#![cfg_attr(feature = "air", doc = "```")]
#![cfg_attr(not(feature = "air"), doc = "```ignore")]
//! use axlewright::{air, units::*};
//! // A hot day at 5,000 ft: how thin is the air for the engine and the radiator?
//! let density = air::moist_density(
//!     AbsolutePressure::of::<hPa_absolute>(843.07), Temperature::of::<degC>(30.0), AbsolutePressure::of::<hPa_absolute>(15.0),
//! )?;
//! assert_eq!(format!("{:.0} ft", air::density_altitude(density)?.in_::<ft>()), "8019 ft");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Fluids: [`fluid`]
#![cfg_attr(feature = "fluid", doc = "```")]
#![cfg_attr(not(feature = "fluid"), doc = "```ignore")]
//! use axlewright::{fluid, units::*};
//! let half = fluid::ethylene_glycol_mass_fraction(Ratio::of::<percent>(50.0), Ratio::of::<percent>(95.0))?;
//! let freezes = fluid::ethylene_glycol_freezing_temperature(half)?;
//! assert_eq!(format!("{freezes:.0}"), "-36 °C");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! ## Cooling: [`cooling`]
#![cfg_attr(feature = "cooling", doc = "```")]
#![cfg_attr(not(feature = "cooling"), doc = "```ignore")]
//! use axlewright::{cooling, units::*};
//! // 118 °C is the hottest coolant and 10 K the margin: which cap does half and half want at 5,000 ft?
//! let cap = cooling::ethylene_glycol_cap_pressure(
//!     Temperature::of::<degC>(128.0), Ratio::of::<percent>(52.0), AbsolutePressure::of::<kPa_absolute>(84.3),
//! )?;
//! assert_eq!(format!("{cap:#.1}"), "16.1 psi gauge");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! # A model, and its document
//! With the feature `serde`, a model is read from JSON or TOML text with units, and is checked when it is read.
#![cfg_attr(all(feature = "serde", feature = "cooling"), doc = "```")]
#![cfg_attr(not(all(feature = "serde", feature = "cooling")), doc = "```ignore")]
//! use axlewright::{Model, cooling::Coolant};
//! let coolant = Coolant::from_text(
//!     r#"{ "liquid": "ethylene_glycol", "volume_share": "50 %", "concentrate": "95 %", "cap": "13 psi gauge",
//!          "cap_holds": "12 psi gauge", "altitude": "5000 ft", "hottest": "108 °C" }"#,
//! )?;
//! let margin = coolant.margin()?.margin;
//! assert_eq!(format!("{margin:.0}"), "14 delta K");
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! # A build sheet
//! With the feature `sheet`, one text holds the measurements, ratings and parts of a vehicle; see the module `sheet`.
#![cfg_attr(feature = "sheet", doc = "```")]
#![cfg_attr(not(feature = "sheet"), doc = "```ignore")]
//! use axlewright::{Verdict, sheet::Sheet};
//! let van = Sheet::from_text(
//!     "version = 1
//!      [front]
//!      sprung_mass = '545 kg'
//!      [front.spring]
//!      rate = '550 lbf/in +/- 3 %'
//!      motion_ratio = 0.6
//!      [front.wanted]
//!      frequency_low = '1.2 Hz'
//!      frequency_high = '1.5 Hz'",
//! )?;
//! let assessment = van.assess();
//! let frequency = assessment.answers().iter().find(|answer| answer.path == "front.frequency").expect("it is asked");
//! assert_eq!((frequency.verdict, format!("{:.2} Hz", frequency.value)), (Verdict::Meets, "1.27 Hz".into()));
//! # Ok::<(), axlewright::Error>(())
//! ```
//!
//! # Features
//! | feature | brings | default |
//! |---|---|---|
//! | a system by its name, such as `spring` | its functions and models, and the systems that it uses | yes |
//! | `systems` | all of them | yes |
//! | `serde` | models as JSON and TOML text; records, tables, verdicts and assessments are `Serialize` | no |
//! | `sheet` | the build sheet, with all systems and `serde` | no |
//!
//! `default-features = false, features = ["spring"]` is the springs alone, with `uom` and the packages below it.
//! Systems stand on layers and import downward only. The modules below stand in that order.
//!
//! Serialized, a quantity is text with its SI unit, such as `"0.112 m"`, in a model's document and in the record of a result. In a table
//! it is a number in coherent SI, and the column has the unit. A number that is not known is null there. A verdict in a record is its
//! word; an assessment has the form of `sheet::Assessment::to_json`, with numbers in coherent SI beside their units.
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
#![cfg_attr(docsrs, feature(doc_cfg))]
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
#[cfg(feature = "material")]
pub mod material;

#[cfg(feature = "bracket")]
pub mod bracket;
#[cfg(feature = "engine")]
pub mod engine;
#[cfg(feature = "fastener")]
pub mod fastener;
#[cfg(feature = "mass")]
pub mod mass;
#[cfg(feature = "section")]
pub mod section;
#[cfg(feature = "spring")]
pub mod spring;
#[cfg(feature = "tyre")]
pub mod tyre;
#[cfg(feature = "weld")]
pub mod weld;

#[cfg(feature = "driveline")]
pub mod driveline;
#[cfg(feature = "suspension")]
pub mod suspension;

#[cfg(feature = "cooling")]
pub mod cooling;

#[cfg(feature = "ride")]
pub mod ride;

#[cfg(feature = "loads")]
pub mod loads;
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
