//! Cooling system: how far the coolant is from boiling.
//!
//! A cap's rating is a gauge pressure; the ambient is the *station* pressure, not the one that a weather report reduces to sea
//! level. Left out here: flow, heat and radiator.

mod coolant;

pub use coolant::{BoilingMargin, Coolant, Liquid, StrengthBy};
