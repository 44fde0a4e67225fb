//! Basic profile of a 60 degree thread (ISO 68-1, the same in ASME B1.1): diameters that follow from diameter and pitch.

use crate::units::{Area, Length};
use core::f64::consts::PI;

/// Height of the sharp triangle over the pitch: `sqrt(3) / 2`.
pub(in crate::fastener) const HEIGHT: f64 = 0.866_025_403_784_438_6;

/// Tangent and cosine of half the flank angle, 30 degrees.
pub(in crate::fastener) const TAN_30: f64 = 0.577_350_269_189_625_8;
pub(in crate::fastener) const COS_30: f64 = HEIGHT;

/// Stress diameter of a metric thread: diameter less this share of the height (ISO 898-1: mean of `d_2` and `d_3`).
const METRIC_STRESS: f64 = 13.0 / 12.0;
/// Stress diameter of a unified thread: diameter less this share of the height (ASME B1.1: `0.9743 P`).
const UNIFIED_STRESS: f64 = 9.0 / 8.0;

/// Series of a thread: it decides the stress area.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::fastener) enum Series {
    Metric,
    Unified,
}

/// Diameter and pitch of a thread, and what follows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::fastener) struct Geometry {
    pub(in crate::fastener) series: Series,
    pub(in crate::fastener) diameter: Length,
    pub(in crate::fastener) pitch: Length,
}

impl Geometry {
    pub(in crate::fastener) fn pitch_diameter(&self) -> Length {
        pitch_diameter(self.diameter, self.pitch)
    }

    /// Root of the bolt's thread: `d - 17/12 H`.
    pub(in crate::fastener) fn root_diameter(&self) -> Length {
        self.diameter - self.pitch * (HEIGHT * 17.0 / 12.0)
    }

    /// Minor diameter of the tapped thread: `d - 5/4 H`.
    pub(in crate::fastener) fn minor_diameter(&self) -> Length {
        self.diameter - self.pitch * (HEIGHT * 5.0 / 4.0)
    }

    /// Diameter of the circle that has the stress area.
    pub(in crate::fastener) fn stress_diameter(&self) -> Length {
        let share = match self.series {
            Series::Metric => METRIC_STRESS,
            Series::Unified => UNIFIED_STRESS,
        };
        self.diameter - self.pitch * (HEIGHT * share)
    }

    pub(in crate::fastener) fn stress_area(&self) -> Area {
        circle(self.stress_diameter())
    }
}

/// Pitch diameter: `d - 3/4 H`.
pub(in crate::fastener) fn pitch_diameter(diameter: Length, pitch: Length) -> Length {
    diameter - pitch * (HEIGHT * 0.75)
}

/// Area of a circle.
pub(in crate::fastener) fn circle(diameter: Length) -> Area {
    diameter * diameter * (PI / 4.0)
}
