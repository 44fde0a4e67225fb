//! Torque that counts against a rating: the torque path and the build sheet share these rules.

use super::rating::{RatingKind, Side};
#[cfg(feature = "sheet")]
use crate::driveline::Differential;
use crate::units::{Force, Length, Ratio, Torque};
use crate::{Error, Result, cannot};

/// Cause that bounds a torque.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Bound {
    /// The engine gives no more.
    Engine,
    /// The clutch, dropped, passes on no more.
    Clutch,
    /// The tyres hold no more.
    Grip,
}

impl Bound {
    pub(super) const fn word(self) -> &'static str {
        match self {
            Bound::Engine => "engine",
            Bound::Clutch => "clutch",
            Bound::Grip => "grip",
        }
    }
}

/// Torque before a part, and what the part makes of it.
pub(in crate::driveline) struct Geared {
    pub(in crate::driveline) torque: Torque,
    pub(in crate::driveline) ratio: Ratio,
    pub(in crate::driveline) efficiency: Ratio,
}

impl Geared {
    /// Torque behind the part.
    pub(in crate::driveline) fn behind(&self) -> Result<Torque> {
        Ok(self.torque * (self.ratio.si() * self.efficiency.si()))
    }
}

/// Rating of a part, and the torques on both of its sides. A torque that is missing is not known; grip that is missing holds nothing down.
pub(in crate::driveline) struct Rated {
    pub(in crate::driveline) side: Option<Side>,
    pub(in crate::driveline) kind: Option<RatingKind>,
    pub(in crate::driveline) rating: Option<Torque>,
    pub(in crate::driveline) engine_input: Option<Torque>,
    pub(in crate::driveline) engine_output: Option<Torque>,
    pub(in crate::driveline) dropped_input: Option<Torque>,
    pub(in crate::driveline) dropped_output: Option<Torque>,
    pub(in crate::driveline) grip_input: Option<Torque>,
    pub(in crate::driveline) grip_output: Option<Torque>,
    pub(in crate::driveline) inertia_factor: Option<Ratio>,
}

impl Rated {
    #[cfg(feature = "sheet")]
    pub(in crate::driveline) fn demand(&self) -> Result<Torque> {
        Ok(self.governing()?.0)
    }

    /// Torque on the rated side, and what bounds it. A continuous rating is held against the steady torque, the other kinds against that of a
    /// dropped clutch. What breaks under the steady torque is no better off when the clutch is dropped.
    pub(super) fn governing(&self) -> Result<(Torque, Bound)> {
        let kind = self.kind.ok_or(missing("kind", "the rating does not say its kind"))?;
        let (engine, dropped, grip) = self.on_rated_side()?;
        let bounded = |torque: Torque, cause, grip: Option<Torque>| match grip {
            Some(grip) if grip < torque => (grip, Bound::Grip),
            _ => (torque, cause),
        };
        let steady = bounded(engine, Bound::Engine, grip);
        if kind == RatingKind::Continuous {
            return Ok(steady);
        }
        let grip = grip.zip(self.inertia_factor).map(|(grip, factor)| grip * factor.si());
        match (dropped, grip) {
            // A clutch that slips under the engine relieves no part.
            (Some(dropped), grip) if dropped < engine => Ok(bounded(engine, Bound::Engine, grip)),
            (Some(dropped), grip) => Ok(bounded(dropped, Bound::Clutch, grip)),
            (None, Some(grip)) => Ok((grip, Bound::Grip)),
            (None, None) if self.rating.is_some_and(|rating| steady.0 > rating) => Ok(steady),
            (None, None) => Err(missing("dropped_input", DROPPED)),
        }
    }

    /// Torques of engine, dropped clutch and grip on the rated side.
    fn on_rated_side(&self) -> Result<(Torque, Option<Torque>, Option<Torque>)> {
        let side = match self.side {
            Some(side) => side,
            None if self.engine_input == self.engine_output => Side::Input,
            None => return Err(missing("side", "the rating does not say its side")),
        };
        let (argument, engine, dropped, grip) = match side {
            Side::Input => ("engine_input", self.engine_input, self.dropped_input, self.grip_input),
            Side::Output => ("engine_output", self.engine_output, self.dropped_output, self.grip_output),
        };
        Ok((engine.ok_or(missing(argument, "the torque on the rated side is not known"))?, dropped, grip))
    }
}

const DROPPED: &str = "a rating that is not continuous is held against a dropped clutch, which needs clutch.capacity and clutch.shock_factor, or the grip with grip.inertia_factor";

/// Differential before a half shaft.
#[cfg(feature = "sheet")]
pub(in crate::driveline) struct OneShaft {
    pub(in crate::driveline) differential: Differential,
}

#[cfg(feature = "sheet")]
impl OneShaft {
    /// Share of the axle's torque and grip that one shaft may carry.
    pub(in crate::driveline) fn share(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(self.differential.shaft_share()))
    }
}

/// Two coefficients of grip.
pub(in crate::driveline) struct GripBounds {
    /// High bound, for what a part must bear.
    pub(in crate::driveline) strength_coefficient: Ratio,
    /// Mean, for what the vehicle gets to the ground.
    pub(in crate::driveline) pull_coefficient: Option<Ratio>,
}

impl GripBounds {
    /// High bound of grip; refused below the mean.
    pub(in crate::driveline) fn high(&self) -> Result<Ratio> {
        match self.pull_coefficient {
            Some(mean) if mean > self.strength_coefficient => {
                let strength_coefficient = self.strength_coefficient;
                Err(cannot!(
                    strength_coefficient >= mean;
                    "is less than pull_coefficient: strength takes the high bound of grip, and pull takes the mean"
                ))
            }
            _ => Ok(self.strength_coefficient),
        }
    }
}

/// Torque at the driven wheels together.
pub(in crate::driveline) struct Pulling {
    pub(in crate::driveline) engine: Torque,
    pub(in crate::driveline) grip: Torque,
    /// High bound of grip.
    pub(in crate::driveline) strength_coefficient: Option<Ratio>,
    /// Mean of grip.
    pub(in crate::driveline) pull_coefficient: Option<Ratio>,
}

impl Pulling {
    #[cfg(feature = "sheet")]
    pub(in crate::driveline) fn torque(&self) -> Result<Torque> {
        Ok(self.bounded()?.0)
    }

    /// The lesser of what the engine gives and what the tyres hold.
    pub(super) fn bounded(&self) -> Result<(Torque, Bound)> {
        if let Some(strength_coefficient) = self.strength_coefficient {
            GripBounds { strength_coefficient, pull_coefficient: self.pull_coefficient }.high()?;
        }
        Ok(if self.grip < self.engine { (self.grip, Bound::Grip) } else { (self.engine, Bound::Engine) })
    }
}

/// Torque on a wheel of a loaded radius.
pub(in crate::driveline) struct AtGround {
    pub(in crate::driveline) torque: Torque,
    pub(in crate::driveline) loaded_radius: Length,
}

impl AtGround {
    pub(in crate::driveline) fn force(&self) -> Result<Force> {
        Ok(Force::from_si(self.torque.si() / self.loaded_radius.si()))
    }
}

fn missing(argument: &'static str, why: &'static str) -> Error {
    Error::Missing { argument, why }
}
