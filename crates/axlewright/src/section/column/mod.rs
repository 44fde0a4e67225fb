//! Columns and links between two joints.

mod bowed_column_load;
mod euler_load;
mod link;
mod secant_stress;
mod straight_column_load;

pub use bowed_column_load::bowed_column_load;
pub use euler_load::euler_load;
pub use link::{Link, LinkCapacity};
pub use secant_stress::secant_stress;
pub use straight_column_load::straight_column_load;
