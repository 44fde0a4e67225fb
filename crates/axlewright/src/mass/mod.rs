//! Mass and balance.
//!
//! Axes as ISO 8855: x forward, y left. Symbols: `m_1` ... `m_4` readings of the four scales (kg), `l` wheelbase (m), `b_f`
//! and `b_r` track (m).

mod weight_distribution;

pub use weight_distribution::{WeightDistribution, weight_distribution};
