//! Suspension, roll and ride on the build sheet agree with the models, bit for bit, and lines that contradict each other are said.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

mod contradictions;
mod linkage;
mod live_axle;
mod roll_and_ride;
