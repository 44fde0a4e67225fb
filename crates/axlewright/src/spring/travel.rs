//! Travel of a wheel on its spring and damper: what uses it up, and what is left. The corner and the build sheet share these rules.

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
pub(super) struct Carried {
    pub(super) sprung_mass: Mass,
    pub(super) motion_ratio: Ratio,
}

impl Carried {
    /// Force in the spring at ride height.
    pub(super) fn force(&self) -> Result<Force> {
        Ok(Force::from_si(self.sprung_mass.si() * STANDARD_GRAVITY / self.motion_ratio.si()))
    }
}

/// Two lengths of a spring, and its motion ratio.
pub(super) struct AtWheel {
    pub(super) longer: Length,
    pub(super) shorter: Length,
    pub(super) motion_ratio: Ratio,
}

impl AtWheel {
    /// Travel of the wheel between both lengths.
    pub(super) fn travel(&self) -> Result<Length> {
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
pub(super) struct Bump {
    /// From ride height, until the coils have their least gaps.
    pub(super) coil_travel: Length,
    /// From full droop, until the damper is closed.
    pub(super) damper_travel: Length,
    /// From ride height down to full droop; negative where a preload holds the wheel on the open damper.
    pub(super) droop_left: Length,
    /// From full droop, until the bump stop is touched.
    pub(super) bump_stop_travel: Option<Length>,
}

impl Bump {
    #[cfg(feature = "sheet")]
    pub(super) fn left(&self) -> Result<Length> {
        Ok(self.first().0)
    }

    /// Travel left, and what ends it. A body that stands at full droop, its spring too strong to sag, has no more than all of the travel.
    pub(super) fn first(&self) -> (Length, Ends) {
        let (coils, sag) =
            (self.coil_travel.si() + self.droop_left.si().min(0.0), self.droop_left.si().max(0.0));
        let stop = self.bump_stop_travel.map(|stop| (stop.si() - sag, Ends::BumpStop));
        let others = [(self.damper_travel.si() - sag, Ends::DamperClosed)].into_iter().chain(stop);
        let (left, end) = others
            .fold((coils, Ends::CoilBind), |least, other| if other.0 < least.0 { other } else { least });
        (Length::from_si(left), end)
    }
}

/// Closed damper and least gaps of the coils.
pub(super) struct Bind {
    pub(super) droop_length: Length,
    /// Travel of the wheel from the open to the closed damper.
    pub(super) damper_travel: Length,
    pub(super) motion_ratio: Ratio,
    pub(super) shortest: Length,
    pub(super) mounting: Option<Mounting>,
    pub(super) stroke: Length,
}

impl Bind {
    /// Length by which the spring could still shorten with the damper closed. On a coil-over the spring shortens as the damper does.
    pub(super) fn margin(&self) -> Result<Length> {
        let used = match self.mounting {
            Some(Mounting::CoilOver) => self.stroke,
            _ => self.damper_travel * self.motion_ratio,
        };
        Ok(self.droop_length - used - self.shortest)
    }
}
