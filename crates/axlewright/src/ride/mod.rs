//! Ride: a wheel and its share of the body on a road, the body on both axles, and on four wheels.
//!
//! Heights are positive upwards and measured from rest. Suspension travel is positive in bump; the variation of the tyre load is positive for more load. A road is a height
//! over distance; its roughness is the one-sided spectral density at 0.1 cycles a metre (ISO 8608).
//!
//! Symbols: `m_s` sprung and `m_u` unsprung mass of one wheel (kg), `k` wheel rate and `k_t` tyre rate (N/m), `c` damping at the wheel and `c_t` in the
//! tyre (N·s/m), `z_s`, `z_u`, `z_r` height of body, wheel and road (m), `f` frequency (Hz), `n` spatial frequency (cycles/m), `G` roughness (m³), `v` speed (m/s).
//!
//! Pitch is positive nose down, roll is positive left side up (ISO 8855: x forward, y left, z up). The rear wheels meet the road of the front ones later, exactly by wheelbase
//! over speed. There is one road under both tracks, or two. A random road is equally rough in every direction, which gives the coherence of the tracks.
//!
//! Left out here: seats and engine mounts, friction, roll centres and lateral forces, live axles as bodies of their own, tyres that bridge short waves.

mod car;
mod quarter;
mod road;
#[cfg(feature = "sheet")]
mod sheet;
mod solution;

pub use car::*;
pub use quarter::*;
pub use road::*;
#[cfg(feature = "sheet")]
pub use sheet::SHEET;
