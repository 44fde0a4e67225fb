//! Mass and balance.
//!
//! Axes as ISO 8855: x forward, y left. Symbols: `m_1` ... `m_4` readings of the four scales (kg), `l` wheelbase (m), `b_f`
//! and `b_r` track (m).

#[cfg(feature = "sheet")]
mod sheet;
mod weight_distribution;

#[cfg(feature = "sheet")]
pub use sheet::SHEET;
pub use weight_distribution::{WeightDistribution, weight_distribution};
