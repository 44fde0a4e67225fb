//! Fluids: water, and its mixtures with glycol.
//!
//! Symbols: `p` absolute pressure (Pa), `T` temperature (K), `w` mass fraction of glycol (no unit), `x_w` and `x_g` mole fractions of
//! water and glycol (no unit), `d` density (kg/m³), `c` specific heat (J/(kg·K)), `mu` dynamic viscosity (Pa·s), `k` thermal
//! conductivity (W/(m·K)), `a` thermal expansion coefficient (1/K), `f` share by volume and `s` share by mass (no unit).
//!
//! Boiling means the bubble point of water and pure glycol, without inhibitors. The cap and the cooling system are left out here
//! (see `cooling`).

mod boiling;
mod properties;
mod strength;

pub use boiling::*;
pub use properties::*;
pub use strength::*;
