//! Tools of all linkages: vectors, derivatives, the Newton iteration, and the table of points.

pub(super) mod jet;
#[cfg(feature = "sheet")]
pub(super) mod kept;
pub(super) mod lanes;
pub(super) mod outline;
pub(super) mod slope;
pub(super) mod solved;
pub(super) mod vector;
