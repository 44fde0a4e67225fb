use super::geometry::Geometry;
use super::marking;
use crate::Result;
use crate::base::document::Model;
use crate::base::table::record;
use crate::base::text::refusal;
use crate::units::{Area, Length};

/// A thread by its marking: `M10`, `M10x1.25`, `3/8-16 UNC`, `3/8-24`, `#10-32`.
///
/// # Formula
/// `H = sqrt(3) / 2 P`; `d_2 = d - 3/4 H`; `d_3 = d - 17/12 H`; `D_1 = d - 5/4 H`; `A_s = pi / 4 (d - 13/12 H)^2` metric, `pi / 4 (d - 9/8 H)^2` unified
///
/// # Fields
/// - `marking` — the thread as drawings write it; a metric size without pitch has the coarse one, an inch size needs its threads per inch or its series
///
/// # Valid for
/// Metric threads from M1.6 to M39 with a pitch of ISO 261, and unified threads from #2 to 1-1/2 in. A class of tolerance may follow (`-6g`, `-2A`).
/// An inch thread that is neither UNC nor UNF needs its series too, as in `1-14 UNS`. Sizes are basic ones, without tolerance.
///
/// # Source
/// ISO 68-1 and ISO 724 (profile and basic diameters), ISO 261 (sizes and pitches), ISO 898-1 (stress area), ASME B1.1 (unified threads), all from memory
///
/// # Caution
/// M10x1.25 and 3/8-24 start in each other's nuts and then strip. Try each thread by hand before it carries a load.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Thread {
    /// Thread as drawings write it.
    pub marking: String,
}

record! {
    /// Basic dimensions of a thread.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct ThreadDimensions {
        /// Nominal diameter.
        pub diameter: Length,
        /// Distance from thread to thread.
        pub pitch: Length,
        /// Pitch diameter, of bolt and nut.
        pub pitch_diameter: Length,
        /// Root diameter of the bolt's thread.
        pub root_diameter: Length,
        /// Minor diameter of the tapped thread.
        pub minor_diameter: Length,
        /// Stress area of the bolt.
        pub stress_area: Area,
    }
}

impl crate::base::Sealed for Thread {}
impl Model for Thread {
    fn check(&self) -> Result<()> {
        read(&self.marking).map(drop)
    }
}

/// The thread of a marking.
pub(in crate::fastener) fn read(marking: &str) -> Result<Geometry> {
    marking::read(marking).map_err(|message| refusal(marking, message))
}

impl Thread {
    /// A thread from its marking.
    pub fn new(marking: &str) -> Result<Self> {
        Self { marking: marking.to_owned() }.checked()
    }

    /// Basic dimensions of the thread.
    ///
    /// # Returns
    /// See the fields of [`ThreadDimensions`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{fastener::Thread, units::*};
    /// let on = Thread::new("M10x1.25")?.dimensions()?;
    /// assert_eq!(format!("{:.3} mm, {:.1} mm²", on.pitch_diameter.in_::<mm>(), on.stress_area.in_::<mm2>()), "9.188 mm, 61.2 mm²");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn dimensions(&self) -> Result<ThreadDimensions> {
        let thread = read(&self.marking)?;
        Ok(ThreadDimensions {
            diameter: thread.diameter,
            pitch: thread.pitch,
            pitch_diameter: thread.pitch_diameter(),
            root_diameter: thread.root_diameter(),
            minor_diameter: thread.minor_diameter(),
            stress_area: thread.stress_area(),
        })
    }
}
