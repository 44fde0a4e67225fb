//! The pressure cap: the pressure that it must hold, and its test.

mod cap_pressure;
mod cap_test;

pub use cap_pressure::{ethylene_glycol_cap_pressure, propylene_glycol_cap_pressure, water_cap_pressure};
pub use cap_test::{CapFindings, CapTest};
