//! An axle on links, and the parts that all live axles share.

mod ask;
pub(super) mod bar_lever;
mod bind;
mod change;
mod forces;
mod frame;
mod held;
#[cfg(feature = "sheet")]
pub(super) mod lines;
mod linkage;
mod model;
mod outline;
pub(super) mod parts;
mod position;
mod prepared;
mod range;
#[cfg(feature = "sheet")]
pub(super) mod rules;
#[cfg(test)]
mod tests;
mod twist;

pub use model::LiveAxle;
pub use parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LateralRod, Mount, NamedLink, Pinion, Pitching, WattLinkage,
    WattRod,
};
pub use position::AxlePosition;
pub use prepared::PreparedLiveAxle;
