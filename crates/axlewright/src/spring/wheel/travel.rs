//! Travel of a wheel on its spring and damper: what uses it up, and what remains. The corner and the build sheet share these rules.

use crate::Result;
use crate::units::{Force, Length, Mass, Ratio, STANDARD_GRAVITY};

/// Place of a damper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Mounting {
    /// On one axis with the spring.
    CoilOver,
    /// Apart from the spring.
    Apart,
}

/// Sprung mass on an inclined or levered spring.
pub(in crate::spring) struct Carried {
    pub(in crate::spring) sprung_mass: Mass,
    pub(in crate::spring) motion_ratio: Ratio,
}

impl Carried {
    /// Force in the spring at ride height.
    pub(in crate::spring) fn force(&self) -> Result<Force> {
        Ok(Force::from_si(self.sprung_mass.si() * STANDARD_GRAVITY / self.motion_ratio.si()))
    }
}

/// Two lengths of a spring, and its motion ratio.
pub(in crate::spring) struct AtWheel {
    pub(in crate::spring) longer: Length,
    pub(in crate::spring) shorter: Length,
    pub(in crate::spring) motion_ratio: Ratio,
}

impl AtWheel {
    /// Travel of the wheel between both lengths.
    pub(in crate::spring) fn travel(&self) -> Result<Length> {
        Ok((self.longer - self.shorter) / self.motion_ratio)
    }
}

/// End of the travel in bump.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ends {
    CoilBind,
    DamperClosed,
    BumpStop,
}

impl Ends {
    pub(super) const fn word(self) -> &'static str {
        match self {
            Ends::CoilBind => "coil bind",
            Ends::DamperClosed => "damper closed",
            Ends::BumpStop => "bump stop",
        }
    }
}

/// Travel of a wheel in bump until something ends it.
pub(in crate::spring) struct Bump {
    /// From ride height, until the coils have their least gaps.
    pub(in crate::spring) coil_travel: Length,
    /// From full droop, until the damper is closed.
    pub(in crate::spring) damper_travel: Length,
    /// From ride height down to full droop; negative where a preload holds the wheel on the open damper.
    pub(in crate::spring) droop_remaining: Length,
    /// From full droop, until the bump stop is touched.
    pub(in crate::spring) bump_stop_travel: Option<Length>,
    /// From ride height, until a seat touches its bump stop.
    pub(in crate::spring) bump_clearance: Option<Length>,
    /// Motion ratio of the spring: if it is above 1, the seat rises by this times the wheel travel, otherwise at most by the wheel travel.
    pub(in crate::spring) motion_ratio: Option<Ratio>,
}

impl Bump {
    #[cfg(feature = "sheet")]
    pub(in crate::spring) fn remaining(&self) -> Result<Length> {
        Ok(self.first().0)
    }

    /// Remaining travel, and what ends it. A body that stands at full droop, its spring too strong to sag, has no more than all of the travel.
    pub(super) fn first(&self) -> (Length, Ends) {
        let (coils, sag) =
            (self.coil_travel.si() + self.droop_remaining.si().min(0.0), self.droop_remaining.si().max(0.0));
        let stop = self.bump_stop_travel.map(|stop| (stop.si() - sag, Ends::BumpStop));
        let rise = self.motion_ratio.map_or(1.0, |ratio| ratio.si().max(1.0));
        let clear = self.bump_clearance.map(|clear| (clear.si() / rise, Ends::BumpStop));
        let others =
            [(self.damper_travel.si() - sag, Ends::DamperClosed)].into_iter().chain(stop).chain(clear);
        let (remaining, end) = others
            .fold((coils, Ends::CoilBind), |least, other| if other.0 < least.0 { other } else { least });
        (Length::from_si(remaining), end)
    }
}

/// Closed damper and least gaps of the coils.
pub(in crate::spring) struct Bind {
    pub(in crate::spring) droop_length: Length,
    /// Travel of the wheel from the open to the closed damper.
    pub(in crate::spring) damper_travel: Length,
    pub(in crate::spring) motion_ratio: Ratio,
    pub(in crate::spring) shortest: Length,
    pub(in crate::spring) mounting: Option<Mounting>,
    pub(in crate::spring) stroke: Length,
}

impl Bind {
    /// Length by which the spring could still shorten with the damper closed. On a coil-over the spring shortens as the damper does.
    pub(in crate::spring) fn margin(&self) -> Result<Length> {
        let used = match self.mounting {
            Some(Mounting::CoilOver) => self.stroke,
            _ => self.damper_travel * self.motion_ratio,
        };
        Ok(self.droop_length - used - self.shortest)
    }
}
