//! Tyres and wheels: marking on the wall, load capacity, loaded and rolling radius, place of the wheel, and the effect of a change
//! on the speedometer.
//!
//! Symbols: `S` section width (m), `A` aspect ratio (section height over section width) (no unit), `d` rim diameter (m), `D` free
//! diameter (m), `C` rolling circumference (m), `r` effective rolling and `r_l` loaded radius (m), `k` vertical rate (N/m), `F` load (N), `n` load index or turns
//! along a distance, `w` rim width (m), `o` offset, positive if the mounting face lies
//! towards the outside of the vehicle (m), `e` error of the speedometer, positive if it reads too much (no unit).

mod bolt_circle_diameter;
mod load_capacity;
mod loaded_radius;
mod rolling_radius;
#[cfg(feature = "sheet")]
mod sheet;
mod size;
mod speedometer;
mod track_change;
mod wheel_backspacing;
mod wheel_change;

pub use bolt_circle_diameter::bolt_circle_diameter;
pub use load_capacity::load_capacity;
pub use loaded_radius::loaded_radius;
pub use rolling_radius::{rolling_radius, rolling_radius_from_turns, rolling_turns};
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
#[cfg(feature = "sheet")]
pub(crate) use sheet::STANDS;
pub use size::{Dimensions, Rolling, Tyre};
pub use speedometer::{speedometer_error, speedometer_error_at_shaft, true_speed};
pub use track_change::track_change;
pub use wheel_backspacing::{wheel_backspacing, wheel_offset};
pub use wheel_change::{FittedWheel, WheelChange, WheelChangeFindings};
