//! What the systems' sections of the build sheet say agrees with the models that say the same, and with what a builder may read into it.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

mod cooling;
mod driveline;
mod functions;
mod missing;
mod spring;
mod tyre;
