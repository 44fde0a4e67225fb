//! Dampers: rates, ratios, curves and settings.

mod adjustable_damper;
mod critical_damping;
mod damped_frequency;
mod damper_curve;
mod damper_rate_for_ratio;
mod damping_ratio;
mod wheel_damping;

pub use adjustable_damper::{AdjustableDamper, DamperSetting, SettingChoice};
pub use critical_damping::critical_damping;
pub use damped_frequency::damped_frequency;
#[cfg(feature = "ride")]
pub(crate) use damper_curve::ROD_SPEED;
pub use damper_curve::{DamperCurve, DamperPoint, DampingAt};
pub use damper_rate_for_ratio::damper_rate_for_ratio;
pub use damping_ratio::damping_ratio;
pub use wheel_damping::wheel_damping;
