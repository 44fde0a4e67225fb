//! Torque that counts against a rating: the torque path and the build sheet share these rules.

use super::rating::{RatingKind, Side, Wanted};
use crate::base::document::Stated;
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

/// Ratios to which a part can be shifted, as far as they are known.
pub(in crate::driveline) struct Gears {
    /// Highest of them, reverse and low range among them.
    pub(in crate::driveline) peak_ratio: Option<Ratio>,
    /// Any of them.
    pub(in crate::driveline) ratio: Option<Ratio>,
    pub(in crate::driveline) efficiency: Option<Ratio>,
}

impl Gears {
    /// Highest ratio: 1 where nothing says that there are gears. What loses power has gears.
    pub(in crate::driveline) fn peak(&self) -> Result<Ratio> {
        let straight =
            self.ratio.is_none() && self.efficiency.is_none_or(|efficiency| efficiency.si() == 1.0);
        let one = straight.then_some(Ratio::from_si(1.0));
        self.peak_ratio.or(one).ok_or(missing("peak_ratio", "the highest ratio of the part is not known"))
    }

    /// Factor on the margin that is wanted behind the part: 1 where its highest ratio is known, otherwise infinite.
    pub(in crate::driveline) fn reserve(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.peak().is_ok() { 1.0 } else { f64::INFINITY }))
    }
}

/// Engine, and what couples it to the gearbox: a clutch or a torque converter.
pub(in crate::driveline) struct Coupling {
    pub(in crate::driveline) engine: Option<Torque>,
    /// Torque that the clutch surely holds: hot, worn in.
    pub(in crate::driveline) capacity: Option<Torque>,
    /// Torque that the clutch holds at most: cold, new.
    pub(in crate::driveline) high_capacity: Option<Torque>,
    /// Factor of a dropped clutch.
    pub(in crate::driveline) shock_factor: Option<Ratio>,
    /// Torque at the turbine over the engine's, at stall; none where there is no converter.
    pub(in crate::driveline) stall_ratio: Stated<Ratio>,
    /// Factor of a converter with which a gear is engaged.
    pub(in crate::driveline) converter_shock_factor: Option<Ratio>,
}

impl Coupling {
    fn is_clutch(&self) -> bool {
        self.capacity.is_some() || self.high_capacity.is_some() || self.shock_factor.is_some()
    }

    /// Torque behind clutch or converter over that of the engine. Not known as long as neither is written.
    pub(in crate::driveline) fn ratio(&self) -> Result<Ratio> {
        match self.stall_ratio {
            Stated::Given(ratio) => Ok(ratio),
            Stated::None => Ok(Ratio::from_si(1.0)),
            Stated::Unknown if self.is_clutch() => Ok(Ratio::from_si(1.0)),
            Stated::Unknown => Err(missing("stall_ratio", COUPLED)),
        }
    }

    /// Torque behind clutch or converter that the engine gives; as long as neither is written, that of a clutch, which is the lesser.
    pub(in crate::driveline) fn torque(&self) -> Result<Torque> {
        let engine = self.engine.ok_or(missing("engine", "the engine's torque is not known"))?;
        Ok(engine * self.ratio().map_or(1.0, Ratio::si))
    }

    /// Torque behind a dropped clutch, or a converter with which a gear is engaged: what holds at most, times the shock factor.
    pub(in crate::driveline) fn dropped(&self) -> Result<Torque> {
        let greater = |a: Option<Torque>, b: Option<Torque>| match (a, b) {
            (Some(a), Some(b)) => Some(if a < b { b } else { a }),
            (a, b) => a.or(b),
        };
        let capacity = greater(self.capacity, self.high_capacity);
        let clutch = capacity.zip(self.shock_factor).map(|(capacity, factor)| capacity * factor.si());
        let converter = match (self.stall_ratio, self.converter_shock_factor) {
            (Stated::Given(_), Some(factor)) => Some(self.torque()? * factor.si()),
            _ => None,
        };
        let only_one = self.is_clutch() != matches!(self.stall_ratio, Stated::Given(_));
        match (clutch, converter) {
            (Some(_), Some(_)) => Ok(greater(clutch, converter).unwrap_or(Torque::from_si(f64::NAN))),
            (Some(one), None) | (None, Some(one)) if only_one => Ok(one),
            _ if matches!(self.stall_ratio, Stated::Given(_)) && self.converter_shock_factor.is_none() => {
                Err(missing(
                    "converter_shock_factor",
                    "no shock factor is given of a gear that is engaged behind the converter",
                ))
            }
            _ if capacity.is_none() => Err(missing("capacity", "no clutch_capacity is given")),
            _ => Err(missing("shock_factor", "no shock_factor is given")),
        }
    }

    /// The factor that counts of what there is: of clutch or converter, or the greater one where there are both.
    #[cfg(feature = "sheet")]
    pub(in crate::driveline) fn shock(&self) -> Result<Ratio> {
        let is_converter = matches!(self.stall_ratio, Stated::Given(_));
        let has_capacity = self.capacity.is_some() || self.high_capacity.is_some();
        if is_converter && self.is_clutch() && !has_capacity {
            return Err(missing("capacity", "a shock factor of a clutch is given, and no capacity"));
        }
        let lacks = |argument| missing(argument, "the factor is that of what there is, clutch or converter");
        let clutch = || self.shock_factor.ok_or(lacks("shock_factor"));
        let converter = || self.converter_shock_factor.ok_or(lacks("converter_shock_factor"));
        match (has_capacity, is_converter) {
            (true, true) => {
                let (clutch, converter) = (clutch()?, converter()?);
                Ok(if clutch < converter { converter } else { clutch })
            }
            (false, true) => converter(),
            _ => clutch(),
        }
    }

    /// True if no clutch can pass on more than its capacity here says.
    pub(in crate::driveline) fn is_bounded(&self) -> bool {
        self.high_capacity.is_some() || self.capacity.is_none()
    }

    /// 1 where the torque of a dropped clutch or of an engaged gear is known, otherwise infinite.
    #[cfg(feature = "sheet")]
    pub(in crate::driveline) fn shock_reserve(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.dropped().is_ok() { 1.0 } else { f64::INFINITY }))
    }

    /// 1 where no clutch can pass on more than is counted, otherwise infinite.
    #[cfg(feature = "sheet")]
    pub(in crate::driveline) fn reserve(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.is_bounded() { 1.0 } else { f64::INFINITY }))
    }
}

/// Rating of a part, and the torques on both of its sides. A torque that is missing is not known; grip that is missing holds nothing down.
pub(in crate::driveline) struct Rated {
    pub(in crate::driveline) side: Option<Side>,
    pub(in crate::driveline) kind: Option<RatingKind>,
    pub(in crate::driveline) rating: Option<Torque>,
    /// Torque behind clutch or converter over that of the engine; not known as long as neither is written.
    pub(in crate::driveline) coupling_ratio: Option<Ratio>,
    pub(in crate::driveline) engine_input: Option<Torque>,
    pub(in crate::driveline) engine_output: Option<Torque>,
    pub(in crate::driveline) dropped_input: Option<Torque>,
    pub(in crate::driveline) dropped_output: Option<Torque>,
    pub(in crate::driveline) grip_input: Option<Torque>,
    pub(in crate::driveline) grip_output: Option<Torque>,
    pub(in crate::driveline) inertia_factor: Option<Ratio>,
    /// Margins wanted of each kind.
    pub(in crate::driveline) strength: Ratio,
    pub(in crate::driveline) yield_strength: Ratio,
    pub(in crate::driveline) ultimate_strength: Ratio,
    /// 1 where the shock is known, otherwise infinite: no margin is enough.
    pub(in crate::driveline) shock_reserve: Ratio,
    /// 1 where the capacity of the clutch is its highest, otherwise infinite.
    pub(in crate::driveline) capacity_reserve: Ratio,
    /// 1 where every gear and range before the input is known, otherwise infinite.
    pub(in crate::driveline) input_reserve: Ratio,
    /// 1 where every gear and range before the output is known, otherwise infinite.
    pub(in crate::driveline) output_reserve: Ratio,
}

/// A rating held against its torque.
#[cfg(feature = "sheet")]
pub(in crate::driveline) struct Judged {
    /// Torque on the rated side, shock included where it counts.
    pub(in crate::driveline) demand: Torque,
    /// Margin that is wanted; infinite while something is missing that could raise the torque.
    pub(in crate::driveline) wanted: Ratio,
}

/// Unwritten line that could still raise the torque of a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Open {
    Nothing,
    Shock,
    Capacity,
    Gear,
}

impl Open {
    pub(super) const fn why(self) -> &'static str {
        match self {
            Open::Nothing => "",
            Open::Shock => "the shock of a dropped clutch is not known",
            Open::Capacity => "the highest capacity of the clutch is not known",
            Open::Gear => "a gear or a range is not known",
        }
    }
}

impl Rated {
    #[cfg(feature = "sheet")]
    pub(in crate::driveline) fn judged(&self) -> Result<Judged> {
        let (demand, _, open) = self.governing()?;
        Ok(Judged { demand, wanted: self.wanted(open) })
    }

    /// Margin that is wanted: that of the kind of the rating, or infinite while something is open.
    pub(super) fn wanted(&self, open: Open) -> Ratio {
        let Rated { strength, yield_strength, ultimate_strength, .. } = *self;
        let reserve = match open {
            Open::Nothing => 1.0,
            Open::Shock => self.shock_reserve.si().max(self.capacity_reserve.si()),
            Open::Capacity => self.capacity_reserve.si(),
            Open::Gear => self.input_reserve.si().max(self.output_reserve.si()),
        };
        Wanted { strength, yield_strength, ultimate_strength }.of(self.kind) * reserve
    }

    /// Torque on the rated side, what bounds it, and what could still raise it. A continuous rating is held against the steady torque, the other kinds
    /// against that of a dropped clutch; one of no kind against both. What breaks under the steady torque is no better off when the clutch is dropped.
    pub(super) fn governing(&self) -> Result<(Torque, Bound, Open)> {
        let (engine, dropped, grip, gears) = self.on_rated_side()?;
        let bounded = |torque: Torque, cause, grip: Option<Torque>| match grip {
            Some(grip) if grip < torque => (grip, Bound::Grip),
            _ => (torque, cause),
        };
        let steady = bounded(engine, Bound::Engine, grip);
        let condemned = self.rating.is_some_and(|rating| steady.0 > rating);
        let with_inertia = grip.zip(self.inertia_factor).map(|(grip, factor)| grip * factor.si());
        let shock = match (dropped, with_inertia) {
            // A clutch that slips under the engine relieves no part.
            (Some(dropped), grip) if dropped < engine => Some(bounded(engine, Bound::Engine, grip)),
            (Some(dropped), grip) => Some(bounded(dropped, Bound::Clutch, grip)),
            (None, Some(grip)) => Some((grip, Bound::Grip)),
            (None, None) => None,
        };
        let counts_shock = self.kind != Some(RatingKind::Continuous);
        let (demand, bound) = match shock {
            Some(shock) if counts_shock => shock,
            None if counts_shock && self.kind.is_some() && !condemned => {
                return Err(missing("dropped_input", DROPPED));
            }
            _ => steady,
        };
        if self.coupling_ratio.is_none()
            && bound != Bound::Grip
            && !self.rating.is_some_and(|rating| demand > rating)
        {
            return Err(missing("coupling_ratio", COUPLED));
        }
        let open = match shock {
            None => Open::Shock,
            Some((_, shock)) if shock != Bound::Grip && counts_shock && self.capacity_reserve.si() > 1.0 => {
                Open::Capacity
            }
            _ if bound != Bound::Grip && gears.si() > 1.0 => Open::Gear,
            _ => Open::Nothing,
        };
        Ok((demand, bound, open))
    }

    /// Torques of engine, dropped clutch and grip on the rated side, and the reserve for gears that are not known.
    fn on_rated_side(&self) -> Result<(Torque, Option<Torque>, Option<Torque>, Ratio)> {
        let side = match self.side {
            Some(side) => side,
            None if self.engine_input == self.engine_output => Side::Input,
            None => return Err(missing("side", "the rating does not say its side")),
        };
        let (argument, engine, dropped, grip, gears) = match side {
            Side::Input => {
                ("engine_input", self.engine_input, self.dropped_input, self.grip_input, self.input_reserve)
            }
            Side::Output => (
                "engine_output",
                self.engine_output,
                self.dropped_output,
                self.grip_output,
                self.output_reserve,
            ),
        };
        Ok((
            engine.ok_or(missing(argument, "the torque on the rated side is not known"))?,
            dropped,
            grip,
            gears,
        ))
    }
}

const DROPPED: &str = "a rating that is not continuous is held against a dropped clutch, which needs clutch.capacity and clutch.shock_factor, or the grip with grip.inertia_factor";
const COUPLED: &str =
    "neither a clutch nor a torque converter is given, and a converter multiplies the engine's torque";

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
