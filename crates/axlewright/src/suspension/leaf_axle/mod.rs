//! An axle on leaf springs.

#[cfg(feature = "sheet")]
pub(super) mod lines;
mod model;
mod range;
#[cfg(feature = "sheet")]
pub(super) mod rules;
mod spring;

pub use model::{
    AxleDamper, HeaveRange, LeafAxle, LeafAxlePosition, LeafForm, LeafRate, LeafSpring, Leaves,
    PreparedLeafAxle, WindUp,
};
