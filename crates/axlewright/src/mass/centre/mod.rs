//! The centre of gravity, and the sprung mass.

mod centre_of_gravity_height_by_tilt;
mod centre_of_gravity_height_by_tilt_over_tyres;
mod raised_axle;
mod sprung_centre;
mod sprung_mass;

pub use centre_of_gravity_height_by_tilt::centre_of_gravity_height_by_tilt;
pub use centre_of_gravity_height_by_tilt_over_tyres::centre_of_gravity_height_by_tilt_over_tyres;
pub use raised_axle::{CentreHeight, LiftAt, RaisedAxle, Suspension};
pub use sprung_centre::{SprungCentre, sprung_centre};
pub use sprung_mass::sprung_mass;
