//! Grades: minimum strengths, moduli and density.

mod grades;
mod stock;

pub use grades::Grade;
pub use stock::{Place, Stock, StockStrength};
