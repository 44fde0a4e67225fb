use crate::Result;
use crate::base::document::Model;
use crate::units::RoadRoughness;

/// A road of a class of ISO 8608.
///
/// # Formula
/// `G = 16e-6 m^3 * 4^i`, the geometric mean of the class, with `i = 0` for `a` to 7 for `h`
///
/// # Fields
/// - `road_class` — `a` to `h`: `a` as smooth as a new motorway, `c` a worn country road, `e` and beyond tracks
///
/// # Valid for
/// Roads in the sense of ISO 8608; what the classes look like is common practice, no source.
///
/// # Source
/// ISO 8608:2016, annex C, table of classes by displacement density at 0.1 cycles/m (from memory)
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RoadSurface {
    /// Class by ISO 8608.
    pub road_class: RoadClass,
}

/// Road classes by ISO 8608.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum RoadClass {
    /// 16e-6 m³.
    A,
    /// 64e-6 m³.
    B,
    /// 256e-6 m³.
    C,
    /// 1024e-6 m³.
    D,
    /// 4096e-6 m³.
    E,
    /// 16384e-6 m³.
    F,
    /// 65536e-6 m³.
    G,
    /// 262144e-6 m³.
    H,
}

impl crate::base::Sealed for RoadSurface {}
impl Model for RoadSurface {
    fn check(&self) -> Result<()> {
        Ok(())
    }
}

impl RoadSurface {
    /// Roughness of the class: the geometric mean of its limits.
    ///
    /// # Returns
    /// One-sided density of the height at 0.1 cycles a metre; a road of the class lies between half and twice that.
    ///
    /// # Example
    /// ```
    /// use axlewright::{ride::*, units::*};
    /// let country_road = RoadSurface { road_class: RoadClass::C };
    /// assert_eq!(country_road.roughness()?.in_::<cm3_cycle>(), 256.0);
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn roughness(&self) -> Result<RoadRoughness> {
        Ok(RoadRoughness::from_si(16e-6 * 4_f64.powi(self.road_class as i32)))
    }
}
