//! Stages of a wheel on its linkage that the build sheet asks for, whichever linkage it is.

use super::prepared::{Independent, Parts, PreparedLinkage};
use crate::base::numeric::root;
use crate::base::section::Whole;
use crate::spring::Mounting;
use crate::suspension::kinematics::over_travel::{
    Extremes, PathOverTravel, RollSteerOverTravel, ToeOverTravel, over_travel, steps_to, to_either_side,
};
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::{AntiRollBar, JointLimits, WheelPosition};
use crate::units::{Angle, Length, Ratio, RatioPerLength};
use crate::{Result, cannot};

/// Coil-over or leg at ride height.
pub(super) struct StrokeAtRide {
    /// Shortening over travel of the wheel.
    pub(super) motion_ratio: Ratio,
    /// Change of that along the travel.
    pub(super) ratio_gradient: RatioPerLength,
    /// Between its eyes.
    pub(super) eye_length: Length,
}

/// Travel at which a part comes to its ends, negative in droop.
pub(in crate::suspension) struct TravelEnds {
    pub(in crate::suspension) droop: Length,
    pub(in crate::suspension) bump: Length,
}

/// Travel of a linkage to either side of ride height.
pub(in crate::suspension) struct TravelEachWay {
    pub(in crate::suspension) droop: Length,
    pub(in crate::suspension) bump: Length,
}

/// Linkage with its anti-roll bar, if that is drawn, and the lock of its rack.
pub(in crate::suspension) struct WithBar<M> {
    pub(in crate::suspension) linkage: M,
    pub(in crate::suspension) anti_roll_bar: Whole<AntiRollBar>,
    /// To either side, from the rack's middle to lock.
    pub(in crate::suspension) rack_travel: Length,
}

/// Linkage over the travel that is wanted, and the slope that holds at ride height.
pub(super) struct OverWanted<M> {
    pub(super) linkage: M,
    /// Change of toe over 25 mm of bump: that of the drawing, or the one that was read.
    pub(super) bump_steer: Angle,
    pub(super) bump: Length,
    pub(super) droop: Length,
}

/// Linkage while the body rolls over the wanted travel, and the slope that holds at ride height.
pub(super) struct InRoll<M> {
    pub(super) linkage: M,
    /// Slope of toe, and that of the drawing or the read one of steer over roll.
    pub(super) bump_steer: Angle,
    pub(super) roll_steer: Ratio,
    pub(super) track: Length,
    pub(super) bump: Length,
    pub(super) droop: Length,
}

/// Linkage with the tie rod at both locks, between the stops.
pub(super) struct AtLock<M> {
    pub(super) linkage: M,
    /// To either side, from the rack's middle to lock.
    pub(super) rack_travel: Length,
    pub(super) bump_remaining: Length,
    pub(super) droop_remaining: Length,
}

/// Linkage with the damper of its coil-over or leg.
pub(in crate::suspension) struct OnDamper<M> {
    pub(in crate::suspension) linkage: M,
    /// Not known of a strut: its leg is the damper.
    pub(in crate::suspension) mounting: Option<Mounting>,
    pub(in crate::suspension) open_length: Length,
    pub(in crate::suspension) closed_length: Length,
}

/// Linkage with the spring of its coil-over or leg.
pub(in crate::suspension) struct OnSpring<M> {
    pub(in crate::suspension) linkage: M,
    /// Between the eyes where the spring has its least gaps.
    pub(in crate::suspension) shortest: Length,
}

/// Linkage between its stops, and the lean that its joints allow.
pub(super) struct BetweenStops<M> {
    pub(super) linkage: M,
    pub(super) joint_limits: JointLimits,
    /// To either side, from the rack's middle to lock.
    pub(super) rack_travel: Length,
    pub(super) bump_remaining: Length,
    pub(super) droop_remaining: Length,
}

impl TravelEnds {
    pub(in crate::suspension) const UNKNOWN: TravelEnds =
        TravelEnds { droop: Length::from_si(f64::NAN), bump: Length::from_si(f64::NAN) };
}

const MIDDLE: Length = Length::from_si(0.0);

/// Wheel at ride height.
pub(super) fn at_ride<M: Independent>(linkage: &M) -> Result<WheelPosition> {
    Ok(PreparedLinkage::new(linkage.parts())?.at_ride())
}

/// Coil-over or leg at ride height.
pub(super) fn stroke<M: Independent>(linkage: &M) -> Result<StrokeAtRide> {
    let [length, motion_ratio, gradient] =
        PreparedLinkage::hanging(linkage.parts())?.stroke_at_ride().unwrap_or([f64::NAN; 3]);
    Ok(StrokeAtRide {
        motion_ratio: Ratio::from_si(motion_ratio),
        ratio_gradient: RatioPerLength::from_si(gradient),
        eye_length: Length::from_si(length),
    })
}

/// Motion ratio of the anti-roll bar at ride height.
pub(super) fn bar_motion_ratio<M: Independent>(linkage: &M) -> Result<Ratio> {
    Ok(PreparedLinkage::hanging(linkage.parts())?.at_ride().bar_motion_ratio)
}

impl<M: Independent> WithBar<M> {
    /// Travel at which the linkage itself locks, the drop link of its bar too: the least with the rack in its middle, half way and at both locks.
    /// No travel where the linkage does not reach a lock at ride height.
    pub(super) fn range(&self) -> Result<TravelEachWay> {
        let anti_roll_bar = self.anti_roll_bar.drawn("anti_roll_bar")?;
        let on = PreparedLinkage::hanging(Parts { anti_roll_bar, ..self.linkage.parts() })?;
        let (mut droop, mut bump) = (f64::INFINITY, f64::INFINITY);
        for rack in racks(self.rack_travel) {
            let (down, up) = match on.travel_range(rack) {
                Ok(range) => (-range.droop.si(), range.bump.si()),
                Err(refused) if rack == MIDDLE => return Err(refused),
                Err(_) => (0.0, 0.0),
            };
            (droop, bump) = (droop.min(down), bump.min(up));
        }
        Ok(TravelEachWay { droop: Length::from_si(droop), bump: Length::from_si(bump) })
    }
}

/// Travels of the rack at which a linkage is asked: its middle, and where it is steered, half way and at lock to either side.
fn racks(rack_travel: Length) -> Vec<Length> {
    let half = Length::from_si(0.5 * rack_travel.si());
    let all = [MIDDLE, half, -half, rack_travel, -rack_travel];
    if rack_travel == MIDDLE { vec![MIDDLE] } else { all.to_vec() }
}

impl<M: Independent> OverWanted<M> {
    /// Change of toe from ride height over the travel. A slope that was read turns the drawn curve about ride height: its bend stays.
    pub(super) fn toe(&self) -> Result<ToeOverTravel> {
        let ready = PreparedLinkage::hanging(self.linkage.parts())?;
        let at_ride = ready.at_ride();
        let (rest, read) = (at_ride.toe.si(), (self.bump_steer - at_ride.bump_steer).si() / BUMP);
        let mut along = ready.along(MIDDLE);
        let mut drawn = |travel: f64| Ok(along(Length::from_si(travel))?.toe.si() - rest);
        let all = over_travel(self.bump, self.droop, |travel| Ok(drawn(travel)? + read * travel))?;
        let [toe_least, toe_most] = all.quantities();
        Ok(ToeOverTravel { toe_least, toe_most, bend: Angle::from_si(0.5 * (drawn(BUMP)? + drawn(-BUMP)?)) })
    }

    /// Lean of the path of the wheel's centre over the travel.
    pub(super) fn path(&self) -> Result<PathOverTravel> {
        let ready = PreparedLinkage::hanging(self.linkage.parts())?;
        let mut along = ready.along(MIDDLE);
        let at = |travel: f64| Ok(along(Length::from_si(travel))?.wheel_path_angle.si());
        let [path_least, path_most] = over_travel(self.bump, self.droop, at)?.quantities();
        Ok(PathOverTravel { path_least, path_most })
    }
}

impl<M: Independent> InRoll<M> {
    /// Steer over roll with one wheel as far in bump as the other is in droop.
    pub(super) fn steer(&self) -> Result<RollSteerOverTravel> {
        let ready = PreparedLinkage::hanging(self.linkage.parts())?;
        let at_ride = ready.at_ride();
        let lever = self.track.si() / 2.0;
        let slope = -self.bump_steer.si() / BUMP * lever;
        let read = (self.bump_steer - at_ride.bump_steer).si() / BUMP;
        let mut along = ready.along(MIDDLE);
        let mut toe =
            |travel: f64| -> Result<f64> { Ok(along(Length::from_si(travel))?.toe.si() + read * travel) };
        let mut all = Extremes::at(slope);
        for travel in steps_to(to_either_side(self.bump, self.droop)) {
            all = all.with(-(toe(travel)? - toe(-travel)?) / (2.0 * travel) * lever);
        }
        let [roll_steer_least, roll_steer_most] = all.moved(self.roll_steer.si() - slope).quantities();
        Ok(RollSteerOverTravel { roll_steer_least, roll_steer_most })
    }
}

impl<M: Independent> AtLock<M> {
    /// Least angle between tie rod and steering arm at ride height and at both stops, with the rack in its middle, half way and at both locks.
    /// A lock that is not reached gives a negative angle: that of the rack's middle, times the share of the lock that is not reached.
    pub(super) fn toggle_angle(&self) -> Result<Angle> {
        let [bump, droop] = travelled(self.bump_remaining, self.droop_remaining)?;
        let ready = PreparedLinkage::hanging(self.linkage.parts())?;
        let at_ride = ready.linkage.toggle_angle(&ready.linkage.rest, 0.0);
        let mut least = at_ride;
        for rack in racks(self.rack_travel) {
            let mut reach = ready.linkage.reach(rack.si());
            for travel in [MIDDLE, bump, -droop] {
                least = least.min(match ready.reached(&mut reach, travel) {
                    Ok(pose) => ready.linkage.toggle_angle(&pose, rack.si()),
                    Err(refused) if rack == MIDDLE => return Err(refused),
                    Err(_) => -at_ride * (1.0 - reached(|share| ready.pose(travel, rack * share).is_ok())),
                });
            }
        }
        Ok(Angle::from_si(least))
    }
}

/// Largest share of something that is reached, where none of it is.
fn reached(is: impl Fn(Ratio) -> bool) -> f64 {
    let (mut good, mut bad) = (0.0, 1.0);
    for _ in 0..30 {
        let middle = 0.5 * (good + bad);
        if is(Ratio::from_si(middle)) { good = middle } else { bad = middle }
    }
    good
}

impl<M: Independent> OnDamper<M> {
    /// Travel at which the damper is open, and at which it is closed; not known of one that stands apart.
    pub(super) fn ends(&self) -> Result<TravelEnds> {
        if self.mounting == Some(Mounting::Apart) {
            return Ok(TravelEnds::UNKNOWN);
        }
        let ready = PreparedLinkage::hanging(self.linkage.parts())?;
        Ok(TravelEnds {
            droop: ready.travel_for(self.open_length)?,
            bump: ready.travel_for(self.closed_length)?,
        })
    }
}

impl<M: Independent> OnSpring<M> {
    /// Travel at which the spring has its least gaps, or at which the linkage locks before that.
    pub(super) fn end(&self) -> Result<Length> {
        let ready = PreparedLinkage::hanging(self.linkage.parts())?;
        let found = ready.travel_for(self.shortest);
        let range = || ready.travel_range(MIDDLE).map(|on| [on.droop, on.bump]);
        solid_at(self.shortest, found, range, |travel| ready.eyes_at(travel))
    }
}

/// Steps to full bump at which the length between the eyes is asked for.
const STEPS: u32 = 64;

/// Travel at which the eyes are this far apart, where a search `found` it. Of a spring that is solid at ride height it is never above nothing:
/// the droop of the linkage, where even that does not free it. Where no travel up to full bump makes it solid, it is the bump of the linkage.
pub(in crate::suspension) fn solid_at(
    shortest: Length,
    found: Result<Length>,
    range: impl FnOnce() -> Result<[Length; 2]>,
    eyes_at: impl Fn(Length) -> Option<Length>,
) -> Result<Length> {
    let spare =
        |travel: f64| eyes_at(Length::from_si(travel)).map_or(f64::NAN, |eyes| (eyes - shortest).si());
    let at_ride = spare(0.0);
    if at_ride.is_nan() {
        return found;
    }
    if let Ok(travel) = found {
        return Ok(if at_ride > 0.0 { travel } else { Length::from_si(travel.si().min(0.0)) });
    }
    let [droop, bump] = range()?;
    if at_ride <= 0.0 {
        return Ok(droop);
    }
    let mut before = 0.0;
    for step in 1..STEPS {
        let travel = bump.si() * f64::from(step) / f64::from(STEPS);
        let remaining = spare(travel);
        if remaining.is_nan() {
            return found;
        }
        if remaining <= 0.0 {
            return root("travel", spare, before, travel, 0.0).map(Length::from_si);
        }
        before = travel;
    }
    Ok(bump)
}

impl<M: Independent> BetweenStops<M> {
    /// Remaining lean of the first joint at both ends of the travel, with the rack in its middle and at both ends.
    pub(super) fn joint_remaining(&self) -> Result<Angle> {
        let [bump, droop] = travelled(self.bump_remaining, self.droop_remaining)?;
        let ready = PreparedLinkage::hanging(Parts {
            joint_limits: Some(&self.joint_limits),
            ..self.linkage.parts()
        })?;
        let racks = [MIDDLE, self.rack_travel, -self.rack_travel];
        let racks = if self.rack_travel == MIDDLE { &racks[..1] } else { &racks };
        let mut least = f64::INFINITY;
        for rack in racks {
            let mut along = ready.along(*rack);
            for travel in [bump, -droop] {
                least = least.min(along(travel)?.joint_remaining.si());
            }
        }
        Ok(Angle::from_si(least))
    }
}

/// Travel in bump and in droop, unless there is none.
pub(in crate::suspension) fn travelled(bump: Length, droop: Length) -> Result<[Length; 2]> {
    let (up, down) = (bump.si(), droop.si());
    if up < 0.0 || down < 0.0 {
        let (bump_remaining, droop_remaining, none) = (bump, droop, Length::from_si(0.0));
        return Err(match up < 0.0 {
            true => cannot!(bump_remaining >= none; "puts ride height beyond the bump stop"),
            false => cannot!(droop_remaining >= none; "puts ride height beyond the droop stop"),
        });
    }
    Ok([bump, droop])
}
