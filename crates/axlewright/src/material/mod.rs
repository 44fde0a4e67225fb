//! Materials: what a shop buys by grade, and how thick a gauge number is.
//!
//! Symbols: `N` gauge number (no unit), `t` thickness (m), `E` elastic and `G` shear modulus (Pa), `nu` ratio of Poisson (no unit).
//!
//! Strengths here are those of a standard, at room temperature and without fatigue. Left out here: hardness, toughness, fatigue, and
//! strength when hot.

mod gauge;
mod grade;

pub use gauge::*;
pub use grade::*;
