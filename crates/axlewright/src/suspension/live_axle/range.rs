//! Travel range of an axle, and the parts that end it.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::frame::{Each, MOST, PITCH, ROLL, YAW, Z};
use super::linkage::{AxleLinkage, FAR, GIVE, MISSED, MOST_ROLL, Pose, STRIDE, Series, TRIES, TURN, Way};

/// A position that misses the trapezoid of the slopes there and at ride height by no more, in metres and radians, is taken as it is.
const NEAR: f64 = 0.003;

/// Two solutions that are no farther apart, in metres and radians, are one place.
const SAME: f64 = 1e-9;

/// Two solutions that are farther apart, in metres and radians, are two places.
const OTHER: f64 = 1e-6;

/// Largest difference between the free coordinates of two positions.
fn apart(one: &Pose, other: &Pose) -> f64 {
    (0..5).fold(0.0, |most, place| most.max((one.at[place] - other.at[place]).abs()))
}

/// End of a way of the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Went {
    /// The whole way was gone.
    Whole,
    /// The axle goes no further.
    Ended,
    /// `TRIES` positions were tried.
    GivenUp,
}

/// End of the axle's travel or roll.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stop {
    /// Heave or roll.
    pub(super) place: f64,
    /// The link that is nearest to being over-extended there.
    pub(super) link: usize,
    /// True if the search was given up there.
    pub(super) given_up: bool,
}

impl AxleLinkage {
    /// The axle at this heave and roll, where it is got quickly from ride height.
    fn near(&self, heave: f64, roll: f64) -> Option<Box<Pose>> {
        self.near_by(self.series.get_or_init(|| self.expanded()), heave, roll)
    }

    /// The body, reached by a series.
    pub(super) fn near_by(&self, series: &Series, heave: f64, roll: f64) -> Option<Box<Pose>> {
        let (rest, start) = (&self.rest, self.guess(series, heave, roll));
        let forces = rest.force_rates[0] * heave + rest.force_rates[1] * roll;
        let pose = self.solve(start, forces)?;
        let off = (0..5).fold(0.0, |most: f64, place| most.max((pose.at[place] - start[place]).abs()));
        (off < 0.02 && self.follows(&pose)).then_some(pose)
    }

    /// True if a position is of the same assembly as ride height, and none of its angles has turned over.
    fn follows(&self, pose: &Pose) -> bool {
        pose.sign == self.rest.sign && pose.at[PITCH].abs() < 1.4 && pose.at[YAW].abs() < 1.4
    }

    /// From one position to the next one, a small step further.
    fn further(&self, from: &Pose, heave: f64, roll: f64) -> Option<Box<Pose>> {
        let (dh, dr) = (self.middle.z + heave - from.at[Z], roll - from.at[ROLL]);
        let along = |on: &Pose, place: usize| dh * on.heave.rates[place] + dr * on.roll.rates[place];
        let mut start = from.at;
        for (place, start) in start.iter_mut().enumerate().take(5) {
            *start += along(from, place);
        }
        (start[Z], start[ROLL]) = (self.middle.z + heave, roll);
        let pose = self.solve(start, from.forces)?;
        // The way there, and by how much the slopes at its two ends miss it.
        let far = (0..5).any(|place| {
            let way = pose.at[place] - from.at[place];
            let missed = way - 0.5 * (along(from, place) + along(&pose, place));
            (pose.at[place] - start[place]).abs() > 0.05 || missed.abs() > MISSED
        });
        (!far && self.follows(&pose)).then_some(pose)
    }

    /// From one position straight towards a heave and roll, as far as the axle goes.
    ///
    /// A step that leads astray is halved, and doubled again after two that do not: a tight bend does not slow down what follows.
    pub(super) fn towards(&self, from: &Pose, heave: f64, roll: f64) -> (Box<Pose>, Went) {
        let (heave_from, roll_from) = (from.at[Z] - self.middle.z, from.at[ROLL]);
        let steps = ((heave - heave_from).abs() / STRIDE).max((roll - roll_from).abs() / TURN).max(1.0);
        let (mut pose, mut share, whole) = (Box::new(*from), 0.0, 1.0 / steps);
        let (mut step, mut longer) = (whole, whole);
        for _ in 0..TRIES {
            if share >= 1.0 {
                return (pose, Went::Whole);
            }
            if step <= 1e-7 * whole {
                return (pose, Went::Ended);
            }
            let next = f64::min(share + step, 1.0);
            let (heave, roll) = if next < 1.0 {
                (heave_from + (heave - heave_from) * next, roll_from + (roll - roll_from) * next)
            } else {
                (heave, roll)
            };
            match self.further(&pose, heave, roll) {
                Some(on) => (pose, share, step, longer) = (on, next, longer, whole.min(2.0 * longer)),
                None => (step, longer) = (0.5 * step, 0.5 * step),
            }
        }
        (pose, Went::GivenUp)
    }

    /// The axle at this heave and roll; none beyond its range, and none where there are two places for it.
    pub(super) fn at(&self, heave: f64, roll: f64) -> Option<Box<Pose>> {
        let pose = self.rolled_first(heave, roll)?;
        self.other_place(&pose, heave, roll).is_none().then_some(pose)
    }

    /// The axle at this heave and roll, rolled at ride height first; none beyond its range.
    ///
    /// Links that hold each other often have a second place of least strain. The one that counts is that to which small steps lead from ride height.
    pub(super) fn rolled_first(&self, heave: f64, roll: f64) -> Option<Box<Pose>> {
        if [heave, roll] == [0.0; 2] {
            return Some(Box::new(self.rest));
        }
        let led = |pose: &Pose| self.is_eased(pose, heave) || self.at(0.0, roll).is_some();
        let steps = || {
            let from = if heave == 0.0 { Box::new(self.rest) } else { self.at(0.0, roll)? };
            let (pose, went) = self.towards(&from, heave, roll);
            (went == Went::Whole).then_some(pose)
        };
        match self.near(heave, roll).filter(|pose| led(pose)) {
            Some(pose) if self.bends_little(&pose) => Some(pose),
            // Where both are one place, that of the series keeps its last digits.
            Some(pose) => steps().map(|on| if apart(&on, &pose) < SAME { pose } else { on }),
            None => steps(),
        }
    }

    /// The place to which small steps lead if the axle heaves first and rolls then, if that is another one.
    pub(super) fn other_place(&self, pose: &Pose, heave: f64, roll: f64) -> Option<Box<Pose>> {
        if self.way == Way::Exact || heave == 0.0 || roll == 0.0 || self.bends_little(pose) {
            return None;
        }
        let (heaved, went) = self.towards(&self.rest, heave, 0.0);
        if went != Went::Whole {
            return None;
        }
        let (other, went) = self.towards(&heaved, heave, roll);
        (went == Went::Whole && apart(&other, pose) > OTHER).then_some(other)
    }

    /// True if the slopes at ride height and at a position agree with the way between them.
    fn bends_little(&self, to: &Pose) -> bool {
        let from = &self.rest;
        let (dh, dr) = (to.at[Z] - from.at[Z], to.at[ROLL] - from.at[ROLL]);
        let along = |on: &Pose, place: usize| dh * on.heave.rates[place] + dr * on.roll.rates[place];
        (0..5).all(|place| {
            let way = to.at[place] - from.at[place];
            (way - 0.5 * (along(from, place) + along(to, place))).abs() <= NEAR
        })
    }

    /// True if no link is close to being over-extended here nor, by its slope in heave, at the point where the axle rolls at ride height.
    fn is_eased(&self, pose: &Pose, heave: f64) -> bool {
        if self.way == Way::Exact || heave == 0.0 {
            return true;
        }
        let rows = pose.held.row.iter().zip(pose.heave.rates);
        let slope = rows.fold(Each::ZERO, |sum, (row, rate)| sum + *row * rate);
        let (here, there) = (pose.held.stretch, pose.held.stretch - slope * heave);
        let most = self.lanes.length * (0.5 * GIVE);
        (0..self.links.len()).all(|link| here.0[link].abs().max(there.0[link].abs()) < most.0[link])
    }

    /// The link that is nearest to being over-extended: of rigid ones that with most of the forces that hold each other, otherwise the most strained one.
    fn worst(&self, pose: &Pose) -> usize {
        let mut shares = [0.0; MOST];
        let stretches = pose.held.stretch.0.iter().zip(self.lanes.length.0).take(self.links.len());
        for (share, (stretch, length)) in shares.iter_mut().zip(stretches) {
            *share = stretch.abs() / length.max(1e-3);
        }
        if shares.iter().all(|share| *share < 0.1 * GIVE) {
            let parts = self.rows(pose).svd(true, false);
            if let Some(left) = parts.u {
                let least = left.column(parts.singular_values.imin()).into_owned();
                shares.copy_from_slice(least.abs().as_slice());
            }
        }
        let count = self.links.len();
        (0..count).fold(0, |most, place| if shares[place] > shares[most] + 1e-9 { place } else { most })
    }

    /// Least and largest heave at this roll; none where the axle does not roll so far at ride height.
    pub(super) fn range(&self, roll: f64) -> Option<[Stop; 2]> {
        let from = self.at(0.0, roll)?;
        Some([-FAR, FAR].map(|heave| {
            let (pose, went) = self.towards(&from, heave, roll);
            self.stop(&pose, pose.at[Z] - self.middle.z, went)
        }))
    }

    /// Least and largest roll at ride height.
    pub(super) fn roll_range(&self) -> [Stop; 2] {
        [-MOST_ROLL, MOST_ROLL].map(|roll| {
            let (pose, went) = self.towards(&self.rest, 0.0, roll);
            self.stop(&pose, pose.at[ROLL], went)
        })
    }

    fn stop(&self, pose: &Pose, place: f64, went: Went) -> Stop {
        Stop { place, link: self.worst(pose), given_up: went == Went::GivenUp }
    }
}
