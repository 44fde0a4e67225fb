//! An axle on leaf springs.

mod ask;
mod balance;
mod change;
#[cfg(feature = "sheet")]
pub(super) mod lines;
mod model;
mod outline;
mod pose;
mod position;
mod prepared;
mod range;
#[cfg(feature = "sheet")]
pub(super) mod rules;
mod spring;
#[cfg(test)]
mod tests;
#[cfg(feature = "serde")]
mod written;

pub use model::{AxleDamper, LeafAxle, LeafForm, LeafRate, LeafSpring, Leaves};
pub use position::{LeafAxlePosition, WindUp};
pub use prepared::PreparedLeafAxle;
