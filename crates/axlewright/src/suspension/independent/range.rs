//! Range of a linkage: the wheel is answered only where ride height leads without a part passing its dead centre, first along the rack and
//! then along the angle of the lower arm.
//!
//! Beyond a dead centre a link may reach again, on another assembly. A few coarse steps show that most positions are far from every dead
//! centre; only the others want the range itself, which is found once for each travel of the rack.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::linkage::{CLEARANCES, COARSE, End, Linkage, Pose};
use crate::base::numeric::root;
use crate::suspension::kinematics::clearance::clear;
use crate::suspension::kinematics::vector::Two;
use core::f64::consts::PI;

/// Most coarse steps to one side.
const MOST: f64 = 8.0;
/// Fine steps of the lower arm in half a turn.
const FINE: u32 = 720;
/// Fine steps along the rack.
const ALONG: u32 = 64;

/// Angles of the lower arm in droop and in bump up to which the linkage moves, and what ends it there.
type Limits = Result<[(f64, End); 2], End>;

/// A linkage at one travel of its rack, with what is known of its range.
pub(in crate::suspension) struct Reach<'a> {
    linkage: &'a Linkage,
    pub(super) rack: f64,
    coarse: Option<Box<Coarse>>,
    limits: Option<Limits>,
}

/// Clearances at the last coarse step and at the one before it, in droop and in bump.
struct Coarse {
    before: [Two; CLEARANCES],
    last: [Two; CLEARANCES],
    steps: u32,
    /// Steps to each side that are clear.
    clear: [u32; 2],
}

impl Coarse {
    /// Along the rack at ride height; none where that is not clear.
    fn new(linkage: &Linkage, rack: f64) -> Option<Box<Coarse>> {
        let mut last = linkage.clearances(&linkage.rest, 0.0).map(Two::splat);
        if rack != 0.0 {
            let racks = Two::from([0.5 * rack, rack]);
            let moved = linkage.clearances(&linkage.pose_of(Two::default(), racks), racks);
            for (last, moved) in last.iter_mut().zip(moved) {
                let ([rest, _], [half, whole]) = (last.to_array(), moved.to_array());
                if !clear(rest, half, whole) || !clear(whole, half, rest) {
                    return None;
                }
                *last = Two::splat(whole);
            }
        }
        Some(Box::new(Coarse { before: last, last, steps: 0, clear: [0; 2] }))
    }

    /// One step further to both sides.
    fn further(&mut self, linkage: &Linkage, rack: f64) {
        let angle = COARSE * f64::from(self.steps + 1);
        let (angles, racks) = (Two::from([-angle, angle]), Two::splat(rack));
        let now = linkage.clearances(&linkage.pose_of(angles, racks), racks);
        if self.steps == 0 {
            // Before ride height is the other side.
            self.before = now.map(|now| {
                let [droop, bump] = now.to_array();
                Two::from([bump, droop])
            });
        }
        for (side, count) in self.clear.iter_mut().enumerate().filter(|(_, count)| **count == self.steps) {
            let all = self.before.iter().zip(&self.last).zip(&now);
            let mut all = all.map(|((before, last), now)| [before, last, now].map(|on| on.to_array()[side]));
            *count += u32::from(all.all(|[before, last, now]| clear(before, last, now)));
        }
        (self.before, self.last) = (self.last, now);
        self.steps += 1;
    }
}

impl<'a> Reach<'a> {
    pub(super) fn new(linkage: &'a Linkage, rack: f64) -> Reach<'a> {
        Reach { linkage, rack, coarse: None, limits: None }
    }

    /// True if coarse steps up to this angle are clear of every dead centre; otherwise it is not known.
    fn is_clear(&mut self, angle: f64) -> bool {
        let wanted = (angle.abs() / COARSE).ceil();
        if self.coarse.is_none() {
            self.coarse = Coarse::new(self.linkage, self.rack);
        }
        let Some(coarse) = self.coarse.as_mut().filter(|_| wanted <= MOST) else { return false };
        let side = usize::from(angle > 0.0);
        while f64::from(coarse.steps) < wanted && coarse.clear[side] == coarse.steps {
            coarse.further(self.linkage, self.rack);
        }
        f64::from(coarse.clear[side]) >= wanted
    }

    /// True if ride height leads to this angle of the lower arm.
    pub(super) fn holds(&mut self, angle: f64) -> bool {
        self.is_clear(angle) || self.limits().is_ok_and(|[(low, _), (high, _)]| (low..=high).contains(&angle))
    }

    fn limits(&mut self) -> Limits {
        if let Some(limits) = self.limits {
            return limits;
        }
        for side in [-1.0, 1.0] {
            self.is_clear(side * MOST * COARSE);
        }
        let clear = self.coarse.as_ref().map(|coarse| coarse.clear.map(|steps| f64::from(steps) * COARSE));
        *self.limits.insert(self.linkage.limits(self.rack, clear))
    }

    /// Least and largest wheel travel of the linkage, and what ends it there.
    pub(in crate::suspension) fn range(&mut self) -> Result<[(f64, End); 2], End> {
        let (linkage, rack) = (self.linkage, self.rack);
        let height = |angle: f64| linkage.pose(angle, rack).map_or(f64::NAN, |pose| pose.wheel.at.z);
        Ok(self.limits()?.map(|(angle, end)| (height(angle) - linkage.rest.wheel.at.z, end)))
    }

    /// The linkage with its wheel this far up; none beyond its range.
    pub(in crate::suspension) fn at(&mut self, travel: f64) -> Option<Pose> {
        let (linkage, rack) = (self.linkage, self.rack);
        let (pose, angle, there) = linkage.near(travel, rack);
        if there == 1.0 && self.holds(angle) {
            return Some(pose);
        }
        let [(low, _), (high, _)] = self.limits().ok()?;
        let target = linkage.rest.wheel.at.z + travel;
        let off = |angle: f64| linkage.pose(angle, rack).map_or(f64::NAN, |pose| pose.wheel.at.z - target);
        linkage.pose(root("angle", off, low, high, 0.0).ok()?, rack).ok()
    }
}

/// A linkage at the last few travels of its rack, so that no range is found twice.
pub(super) struct Reaches<'a> {
    linkage: &'a Linkage,
    known: Vec<Reach<'a>>,
    next: usize,
}

/// Travels of the rack that are kept.
const KEPT: usize = 8;

impl<'a> Reaches<'a> {
    pub(super) fn new(linkage: &'a Linkage) -> Reaches<'a> {
        Reaches { linkage, known: Vec::new(), next: 0 }
    }

    /// The linkage at this travel of its rack.
    pub(super) fn with(&mut self, rack: f64) -> &mut Reach<'a> {
        let place = self.known.iter().position(|reach| reach.rack == rack).unwrap_or_else(|| {
            let (place, reach) = (self.next % KEPT, self.linkage.reach(rack));
            self.next += 1;
            match self.known.get_mut(place) {
                Some(kept) => *kept = reach,
                None => self.known.push(reach),
            }
            place
        });
        &mut self.known[place]
    }
}

impl Linkage {
    /// The linkage at one travel of its rack.
    pub(in crate::suspension) fn reach(&self, rack: f64) -> Reach<'_> {
        Reach::new(self, rack)
    }

    /// The linkage with its wheel this far up; none beyond its range.
    #[cfg(any(test, feature = "sheet"))]
    pub(super) fn at(&self, travel: f64, rack: f64) -> Option<Pose> {
        self.reach(rack).at(travel)
    }

    /// Reason why the linkage does not move on here.
    fn fault(&self, angle: f64, rack: f64) -> Option<End> {
        match self.pose(angle, rack) {
            Err(end) => Some(end),
            Ok(pose) if pose.wheel.rate.z > 0.0 => None,
            Ok(_) => Some(End::LowerArm),
        }
    }

    /// Angles between which the linkage moves, and what ends it there; the rack's travel may lock it altogether. Fine steps begin where the
    /// coarse ones, in droop and in bump, are no longer clear; without any, they begin with the rack.
    fn limits(&self, rack: f64, clear: Option<[f64; 2]>) -> Limits {
        let along = match clear {
            Some(_) => 0,
            None if rack == 0.0 => 1,
            None => ALONG,
        };
        for step in 1..=along {
            if let Some(end) = self.fault(0.0, rack * f64::from(step) / f64::from(along)) {
                return Err(end);
            }
        }
        let [droop, bump] = clear.unwrap_or_default();
        Ok([(-1.0, droop), (1.0, bump)].map(|(to, clear)| {
            let (mut good, mut bad, mut end) = (0.0, to * PI, End::LowerArm);
            let clear = (clear / PI * f64::from(FINE)).floor() as u32;
            for step in clear.max(1)..=FINE {
                let angle = to * PI * f64::from(step) / f64::from(FINE);
                if let Some(found) = self.fault(angle, rack) {
                    (bad, end) = (angle, found);
                    break;
                }
                good = angle;
            }
            for _ in 0..60 {
                let middle = 0.5 * (good + bad);
                if middle == good || middle == bad {
                    break;
                }
                match self.fault(middle, rack) {
                    Some(found) => (bad, end) = (middle, found),
                    None => good = middle,
                }
            }
            (good, end)
        }))
    }
}
