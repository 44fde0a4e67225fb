//! Travel of a wheel on its spring and damper: what uses it up, and what remains. The corner and the build sheet share these rules.

#[cfg(feature = "sheet")]
use crate::units::LinearStiffness;
use crate::units::{Force, Length, Mass, Ratio, RatioPerLength, STANDARD_GRAVITY};
use crate::{Error, Result};

/// Place of a damper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Mounting {
    /// On one axis with the spring.
    CoilOver,
    /// Apart from the spring.
    Apart,
}

/// Sprung mass on an inclined or levered spring, and the gas of its damper, which carries a part of it.
pub(in crate::spring) struct Carried {
    pub(in crate::spring) sprung_mass: Mass,
    pub(in crate::spring) motion_ratio: Ratio,
    /// Force with which the gas opens the damper; none where it is not known.
    pub(in crate::spring) gas_force: Option<Force>,
    pub(in crate::spring) damper_motion_ratio: Option<Ratio>,
}

impl Carried {
    /// Force in the spring at ride height.
    pub(in crate::spring) fn force(&self) -> Result<Force> {
        let carried = self.sprung_mass.si() * STANDARD_GRAVITY / self.motion_ratio.si();
        let gas = self.gas_force.map_or(0.0, Force::si);
        if gas == 0.0 {
            return Ok(Force::from_si(carried));
        }
        let why = "the gas of a damper carries by the motion ratio of the damper";
        let ratio =
            self.damper_motion_ratio.ok_or(Error::Missing { argument: "damper_motion_ratio", why })?;
        Ok(Force::from_si(carried - gas * ratio.si() / self.motion_ratio.si()))
    }

    /// Force along the axis of the spring at ride height: of a coil-over, spring and gas together.
    #[cfg(feature = "sheet")]
    pub(in crate::spring) fn on_axis(&self) -> Result<Force> {
        Carried { gas_force: None, ..*self }.force()
    }
}

/// Motion ratio at ride height, and its change along the travel of the wheel; nothing where that is not known.
#[derive(Clone, Copy)]
pub(in crate::spring) struct Lever {
    pub(in crate::spring) motion_ratio: Ratio,
    pub(in crate::spring) ratio_gradient: Option<RatioPerLength>,
}

impl Lever {
    fn gradient(&self) -> f64 {
        self.ratio_gradient.map_or(0.0, |gradient| gradient.si())
    }

    /// Shortening of the spring from ride height to this travel of the wheel: `r z + r' z^2 / 2`.
    pub(in crate::spring) fn shortening(&self, travel: Length) -> Length {
        let (ratio, travel) = (self.motion_ratio.si(), travel.si());
        Length::from_si((ratio + 0.5 * self.gradient() * travel) * travel)
    }

    /// Travel of the wheel from ride height that shortens the spring by so much; negative where that lengthens it. In bump no more than the travel
    /// at which the ratio has fallen to nothing.
    pub(in crate::spring) fn travel(&self, shortening: Length) -> Result<Length> {
        let (ratio, gradient) = (self.motion_ratio.si(), self.gradient());
        if gradient == 0.0 {
            return Ok(shortening / self.motion_ratio);
        }
        let square = ratio * ratio + 2.0 * gradient * shortening.si();
        if square < 0.0 {
            return match shortening.si() > 0.0 {
                true => Ok(Length::from_si(-ratio / gradient)),
                false => Err(Error::document("ratio_gradient", NO_LEVER)),
            };
        }
        Ok(Length::from_si(2.0 * shortening.si() / (ratio + square.sqrt())))
    }
}

const NO_LEVER: &str =
    "the motion ratio falls to nothing before the spring has that length: measure it over the whole travel";

/// Two lengths of a spring, the first of them at ride height, and its motion ratio.
pub(in crate::spring) struct AtWheel {
    pub(in crate::spring) longer: Length,
    pub(in crate::spring) shorter: Length,
    pub(in crate::spring) lever: Lever,
}

impl AtWheel {
    /// Travel of the wheel from the longer to the shorter one.
    pub(in crate::spring) fn travel(&self) -> Result<Length> {
        self.lever.travel(self.longer - self.shorter)
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

    /// Travel up to the closed damper or the least gaps of the coils: a bump stop gives way until then, at most.
    #[cfg(feature = "sheet")]
    pub(in crate::spring) fn beyond_stop(&self) -> Result<Length> {
        Bump { bump_stop_travel: None, bump_clearance: None, ..*self }.remaining()
    }

    /// Remaining travel, and what ends it. A body that stands at full droop, its spring too strong to sag, has no more than all of the travel.
    pub(super) fn first(&self) -> (Length, Ends) {
        let (coils, sag) =
            (self.coil_travel.si() + self.droop_remaining.si().min(0.0), self.droop_remaining.si().max(0.0));
        let stop = self.bump_stop_travel.map(|stop| (stop.si() - sag, Ends::BumpStop));
        let rise = self.motion_ratio.map_or(1.0, |ratio| ratio.si().max(1.0));
        // A wheel that stands on its open damper stands above ride height.
        let above = self.droop_remaining.si().min(0.0);
        let clear = self.bump_clearance.map(|clear| (clear.si() / rise + above, Ends::BumpStop));
        let others =
            [(self.damper_travel.si() - sag, Ends::DamperClosed)].into_iter().chain(stop).chain(clear);
        let (remaining, end) = others
            .fold((coils, Ends::CoilBind), |least, other| if other.0 < least.0 { other } else { least });
        (Length::from_si(remaining), end)
    }
}

/// A bump stop, and what ends the travel behind it.
#[cfg(feature = "sheet")]
pub(in crate::spring) struct StopCompressed {
    pub(in crate::spring) bump_remaining: Length,
    /// Travel at which the damper is closed or the coils have their least gaps.
    pub(in crate::spring) bump_beyond_stop: Length,
    /// Travel of the wheel from the touch of the stop until nothing more gives.
    pub(in crate::spring) bump_stop_compression: Option<Length>,
}

#[cfg(feature = "sheet")]
impl StopCompressed {
    /// Travel with the stop compressed: as far as it is told to give, otherwise as far as anything does. An axle that stands in its stop has no travel.
    pub(in crate::spring) fn travel(&self) -> Result<Length> {
        if self.bump_remaining.si() < 0.0 {
            return Ok(self.bump_remaining);
        }
        let stop = self.bump_stop_compression.map(|gives| self.bump_remaining + gives);
        Ok(stop.filter(|stop| *stop < self.bump_beyond_stop).unwrap_or(self.bump_beyond_stop))
    }
}

/// Both wheels of an axle by their scales.
#[cfg(feature = "sheet")]
pub(in crate::spring) struct Sides {
    pub(in crate::spring) left: Mass,
    pub(in crate::spring) right: Mass,
    pub(in crate::spring) wheel_rate: LinearStiffness,
    /// Wheel rate on the right, if the sides differ.
    pub(in crate::spring) right_wheel_rate: Option<LinearStiffness>,
}

#[cfg(feature = "sheet")]
impl Sides {
    /// Travel by which one wheel stands further in bump, and the other further in droop, than the mean of both.
    pub(in crate::spring) fn travel(&self) -> Result<Length> {
        let off = (self.left - self.right).si().abs() / 2.0;
        let softer = self.right_wheel_rate.map_or(f64::INFINITY, |rate| rate.si()).min(self.wheel_rate.si());
        Ok(Length::from_si(off * STANDARD_GRAVITY / softer))
    }
}

/// An axle and the scale of its heavier wheel.
#[cfg(feature = "sheet")]
pub(in crate::spring) struct HeavierSide {
    pub(in crate::spring) axle_mass: Mass,
    pub(in crate::spring) heavier_wheel: Mass,
    pub(in crate::spring) wheel_rate: LinearStiffness,
}

#[cfg(feature = "sheet")]
impl HeavierSide {
    /// Travel by which the heavier wheel stands further in bump than the mean of both.
    pub(in crate::spring) fn travel(&self) -> Result<Length> {
        let off = self.heavier_wheel - self.axle_mass / 2.0;
        if off.si() < 0.0 {
            return Err(Error::document("heavier_wheel", NOT_HEAVIER));
        }
        Ok(Length::from_si(off.si() * STANDARD_GRAVITY / self.wheel_rate.si()))
    }
}

#[cfg(feature = "sheet")]
const NOT_HEAVIER: &str = "the heavier wheel of an axle carries at least half of its mass";

/// Ends of the travel of an axle's worse wheel in bump.
pub(in crate::spring) struct BumpClear {
    pub(in crate::spring) bump_remaining: Length,
    /// From ride height down to full droop; negative where a preload holds the wheel on the open damper.
    pub(in crate::spring) droop_remaining: Option<Length>,
    /// Travel at which a drawn linkage locks.
    pub(in crate::spring) linkage_bump: Option<Length>,
    pub(in crate::spring) joint_bump_clearance: Option<Length>,
    pub(in crate::spring) hose_bump_clearance: Option<Length>,
    pub(in crate::spring) tyre_clearance: Option<Length>,
    pub(in crate::spring) side_travel: Option<Length>,
}

impl BumpClear {
    pub(in crate::spring) fn remaining(&self) -> Result<Length> {
        let none = Length::from_si(0.0);
        // What is told from ride height, of a wheel that stands on its open damper above it.
        let above = self.droop_remaining.filter(|droop| *droop < none).unwrap_or(none);
        let from_there = |end: Option<Length>| end.map(|end| end + above);
        let others = [self.joint_bump_clearance, self.hose_bump_clearance, self.tyre_clearance];
        let others = others.map(from_there);
        Ok(clear(self.bump_remaining, from_there(self.linkage_bump), self.side_travel, &others))
    }
}

/// Ends of the travel of an axle's worse wheel in droop.
pub(in crate::spring) struct DroopClear {
    pub(in crate::spring) droop_remaining: Length,
    /// Travel at which a drawn linkage locks.
    pub(in crate::spring) linkage_droop: Option<Length>,
    pub(in crate::spring) joint_droop_clearance: Option<Length>,
    pub(in crate::spring) hose_droop_clearance: Option<Length>,
    pub(in crate::spring) side_travel: Option<Length>,
}

impl DroopClear {
    pub(in crate::spring) fn remaining(&self) -> Result<Length> {
        let others = [self.joint_droop_clearance, self.hose_droop_clearance];
        Ok(clear(self.droop_remaining, self.linkage_droop, self.side_travel, &others))
    }
}

/// The least of them, the first two less what the worse wheel has already used.
fn clear(
    remaining: Length,
    linkage: Option<Length>,
    side_travel: Option<Length>,
    others: &[Option<Length>],
) -> Length {
    let least = linkage.filter(|linkage| *linkage < remaining).unwrap_or(remaining);
    let own = least - side_travel.unwrap_or(Length::from_si(0.0));
    others.iter().flatten().fold(own, |least, other| if *other < least { *other } else { least })
}

/// Travel that is wanted in bump, and what may end it beside spring, damper and stop.
#[cfg(feature = "sheet")]
pub(in crate::spring) struct BumpTold {
    pub(in crate::spring) wanted: Length,
    pub(in crate::spring) joint_bump_clearance: Length,
    pub(in crate::spring) hose_bump_clearance: Length,
    pub(in crate::spring) tyre_clearance: Length,
    pub(in crate::spring) side_travel: Length,
    /// Travel or clearance of the bump stop, without end where there is none.
    pub(in crate::spring) stop_told: Length,
    /// Known where a linkage that is drawn says how far it goes.
    pub(in crate::spring) linkage_told: Length,
}

#[cfg(feature = "sheet")]
impl BumpTold {
    /// Known where all of them are.
    pub(in crate::spring) fn wanted(&self) -> Result<Length> {
        Ok(self.wanted)
    }
}

/// Travel that is wanted in droop, and what may end it beside spring and damper.
#[cfg(feature = "sheet")]
pub(in crate::spring) struct DroopTold {
    pub(in crate::spring) wanted: Length,
    pub(in crate::spring) joint_droop_clearance: Length,
    pub(in crate::spring) hose_droop_clearance: Length,
    /// Gas carries a part of the weight, and leaves less droop.
    pub(in crate::spring) gas_force: Force,
    pub(in crate::spring) side_travel: Length,
    /// Known where a linkage that is drawn says how far it goes.
    pub(in crate::spring) linkage_told: Length,
}

#[cfg(feature = "sheet")]
impl DroopTold {
    /// Known where all of them are.
    pub(in crate::spring) fn wanted(&self) -> Result<Length> {
        Ok(self.wanted)
    }
}

/// Closed damper and least gaps of the coils.
pub(in crate::spring) struct Bind {
    pub(in crate::spring) droop_length: Length,
    /// Travel of the wheel from the open to the closed damper.
    pub(in crate::spring) damper_travel: Length,
    pub(in crate::spring) lever: Lever,
    /// From ride height down to full droop.
    pub(in crate::spring) droop_remaining: Option<Length>,
    pub(in crate::spring) shortest: Length,
    pub(in crate::spring) mounting: Option<Mounting>,
    pub(in crate::spring) stroke: Length,
    /// Between the eyes less between the seats, of the left and of the right coil-over where they are drawn.
    pub(in crate::spring) seat_offset: Option<Length>,
    pub(in crate::spring) right_seat_offset: Option<Length>,
}

/// By how much the seats of the right coil-over are further apart than those of the left one.
fn right_seats(left: Option<Length>, right: Option<Length>) -> Length {
    left.zip(right).map_or(Length::from_si(0.0), |(left, right)| left - right)
}

/// Spring unloaded and on its open damper.
#[cfg(feature = "sheet")]
pub(in crate::spring) struct Captive {
    pub(in crate::spring) free_length: Length,
    pub(in crate::spring) droop_length: Length,
    pub(in crate::spring) seat_offset: Option<Length>,
    pub(in crate::spring) right_seat_offset: Option<Length>,
}

#[cfg(feature = "sheet")]
impl Captive {
    /// Compression at full droop of the spring that has the less.
    pub(in crate::spring) fn margin(&self) -> Result<Length> {
        let further = right_seats(self.seat_offset, self.right_seat_offset).si().max(0.0);
        Ok(self.free_length - self.droop_length - Length::from_si(further))
    }
}

impl Bind {
    /// Length by which the spring could still shorten with the damper closed, of both sides the lesser. On a coil-over the spring shortens as the
    /// damper does.
    pub(in crate::spring) fn margin(&self) -> Result<Length> {
        let used = match self.mounting {
            Some(Mounting::CoilOver) => self.stroke,
            _ => match self.droop_remaining.filter(|_| self.lever.gradient() != 0.0) {
                Some(droop) => {
                    self.lever.shortening(self.damper_travel - droop) - self.lever.shortening(-droop)
                }
                None => self.damper_travel * self.lever.motion_ratio,
            },
        };
        let nearer = right_seats(self.seat_offset, self.right_seat_offset).si().min(0.0);
        Ok(self.droop_length - used - self.shortest + Length::from_si(nearer))
    }
}
