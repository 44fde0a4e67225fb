//! Several bolts together: a group in a plane, and the studs of a wheel.

mod bolt_group;
mod sharing;
mod wheel_studs;

pub use bolt_group::{BoltGroup, PlacedBolt, TippingEdge, WorstBolts};
pub use wheel_studs::{StudClamp, StudSlip, WheelStuds};
