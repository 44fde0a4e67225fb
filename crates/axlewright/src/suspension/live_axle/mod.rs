//! An axle on links, and the parts that all live axles share.

pub(super) mod bar_lever;
#[cfg(feature = "sheet")]
pub(super) mod lines;
mod linkage;
mod model;
pub(super) mod parts;
#[cfg(feature = "sheet")]
pub(super) mod rules;

pub use model::{AxlePosition, LiveAxle, PreparedLiveAxle};
pub use parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LateralRod, Mount, NamedLink, Pinion, Pitching, WattLinkage,
    WattRod,
};
