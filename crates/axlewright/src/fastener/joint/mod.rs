//! Bolted joint: forces by stiffness, slip, separation, over-tension, shear and bearing.

mod bearing;
mod bolt_shear;
mod joint_forces;
mod joints;
mod overtension;
mod slip;

pub use bearing::JointBearing;
pub use bolt_shear::BoltShear;
pub use joint_forces::{JointForces, joint_forces};
pub use joints::{ClampedPart, GripKind, Joint, ShearPlane};
pub use overtension::Overtension;
pub use slip::{JointSeparation, JointSlip};
