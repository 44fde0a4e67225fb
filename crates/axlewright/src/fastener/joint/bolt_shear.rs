use super::joints::{Joint, ShearPlane};
use crate::Result;
use crate::base::document::Model;
use crate::base::table::record;
use crate::fastener::thread::circle;
use crate::units::{Area, Force, Ratio};

record! {
    /// Bolt in shear, if the faces slip and the bolt bears on its holes.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct BoltShear {
        /// Area of the bolt in one shear plane.
        pub area: Area,
        /// Shear at which the bolt breaks, all planes together, without a pull.
        pub shear_capacity: Force,
        /// Pull at which the bolt breaks, without a shear.
        pub tension_capacity: Force,
        /// Factor on both forces at which the bolt breaks; not known without a force.
        pub margin: Ratio,
    }
}

/// Shear over tensile strength of the shank; tension that breaks the bolt over its tensile load, alone and beside a shear. EN 1993-1-8 table 3.4, from memory.
const SHANK: f64 = 0.6;
const TENSION: f64 = 0.9;
const BESIDE: f64 = 1.4;

impl Joint {
    /// Shear of the bolt, with the pull, after the faces have slipped.
    ///
    /// # Returns
    /// See the fields of [`BoltShear`].
    pub fn bolt_shear(&self) -> Result<BoltShear> {
        self.check()?;
        let (thread, strength) = self.bolt.read()?;
        let (area, share) = match self.shear_plane {
            Some(ShearPlane::Shank) => (circle(thread.diameter), SHANK),
            Some(ShearPlane::Thread) | None => (thread.stress_area(), strength.thread_shear),
        };
        let shear_capacity = strength.tensile * area * (share * self.planes());
        let tension_capacity = strength.tensile * thread.stress_area() * TENSION;
        let (shear, tension) = (self.external_shear.quantity, self.external_tension.quantity);
        let beside = shear / shear_capacity + tension / (tension_capacity * BESIDE);
        let used = beside.max(tension / tension_capacity).si();
        let margin = Ratio::from_si(if used > 0.0 { 1.0 / used } else { f64::NAN });
        Ok(BoltShear { area, shear_capacity, tension_capacity, margin })
    }
}
