//! Leaf packs: rate and stress.

mod leaf_pack_rate;
mod leaf_pack_stress;

pub use leaf_pack_rate::leaf_pack_rate;
pub use leaf_pack_stress::{LeafPackStress, leaf_pack_stress};
