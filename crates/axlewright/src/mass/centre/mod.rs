//! The centre of gravity, and the sprung mass.

mod raised_axle;
mod raised_axle_height;
mod raised_axle_height_over_tyres;
mod sprung_centre;
mod sprung_mass;

pub use raised_axle::{CentreHeight, LiftAt, RaisedAxle, Suspension};
pub use raised_axle_height::raised_axle_height;
pub use raised_axle_height_over_tyres::raised_axle_height_over_tyres;
pub use sprung_centre::{SprungCentre, sprung_centre};
pub use sprung_mass::sprung_mass;
