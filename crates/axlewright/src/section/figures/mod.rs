//! Figures of a section, and what every shape shares.

mod composite;
mod inputs;
mod shape;
mod thin_wall;
mod torsion;

pub(super) use composite::{Composite, Patch};
pub(super) use inputs::{Wall, or_zero};
pub use shape::SectionProperties;
pub(super) use shape::{Bending, Pair, Shape};
pub(super) use thin_wall::CentreLine;
pub(super) use torsion::{Torsion, solid_rectangle};
