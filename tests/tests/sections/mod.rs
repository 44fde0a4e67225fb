//! The systems' sections of the build sheet agree with the models that answer the same questions.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

mod cooling;
mod driveline;
mod functions;
mod missing;
mod spring;
mod tyre;
