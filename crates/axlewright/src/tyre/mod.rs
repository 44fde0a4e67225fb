//! Tyres and wheels: what the marking on the wall says.
//!
//! Symbols: `S` section width (m), `A` aspect ratio (section height over section width) (no unit), `d` rim diameter (m), `D` free
//! diameter (m), `C` rolling circumference (m).

mod size;

pub use size::{Dimensions, Rolling, Tyre};
