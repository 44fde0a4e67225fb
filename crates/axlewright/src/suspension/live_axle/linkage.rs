//! Motion of a rigid axle on links: Newton's method on the lengths of the links, with first and second derivatives along heave and roll.
//!
//! Coordinates of the axle: its middle; its yaw about z, its roll about the axis that yaw has turned, and its pitch about its own length, in
//! this order, so that yaw and roll are those of the line through the wheels' centres in plan and in elevation, which one can measure; of a
//! Watt linkage the turn of its crank, too. Heave of the middle and roll are prescribed. As many links as coordinates are left keep their lengths. One more link is
//! redundant: then the strain energy of the bushes is least, rigid links keep their lengths by multipliers, and where nothing in the
//! redundant set gives, the squares of the lengths by which the links miss. Source: vector kinematics of rigid bodies; virtual work.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::frame::{
    COORDINATES, CRANK, Coordinates, Each, Frame, Link, Links, MOST, PITCH, ROLL, X, Y, YAW, Z,
};
use super::held::{Bends, Held, Wrench};
use super::twist::{Paths, Twist};
#[cfg(feature = "sheet")]
use crate::suspension::kinematics::kept::{Kept, Places};
use crate::suspension::kinematics::lanes::Lanes;
use crate::suspension::kinematics::solved::solved;
use crate::suspension::kinematics::vector::Vector;
use core::array::from_fn;
use nalgebra::{Const, DimMin, SMatrix, SVector};
#[cfg(feature = "sheet")]
use std::sync::Arc;
use std::sync::OnceLock;

/// Below this the least singular value of the links' Jacobian leaves a motion free: sines of angles, and metres.
const LEAST: f64 = 0.001;

/// A link that must give more than this share of its length is over-extended.
pub(super) const GIVE: f64 = 0.05;

/// A link with less than this share of the redundant set does not belong to it.
const PART: f64 = 1e-3;

/// A step with the matrix of an earlier place that is not so much shorter than the one before asks for a new matrix.
const SHORTER: f64 = 0.05;

/// Remaining correction, in metres and radians, below which the links are in place.
const CLOSE: f64 = 1e-14;

/// Below this, in metres a radian or a metre, heave and roll leave the misfit of a redundant link as it is.
pub(super) const SLACK: f64 = 1e-9;

/// Steps about ride height by which the series is found, in metres and radians.
const STEP: f64 = 0.01;

pub(in crate::suspension) const TURN: f64 = 0.02;

/// Longest step in heave from one position to the next one; in roll it is `TURN`.
pub(super) const STRIDE: f64 = 0.04;

/// Heave and roll that no axle reaches.
pub(in crate::suspension) const FAR: f64 = 10.0;

pub(super) const MOST_ROLL: f64 = 1.4;

/// A step that misses the trapezoid of its slopes by more, in metres and radians, is too long or leads to another assembly.
pub(in crate::suspension) const MISSED: f64 = 0.001;

/// Positions that are tried on one way at the most.
pub(in crate::suspension) const TRIES: u32 = 1000;

/// The axle where it stands now.
#[derive(Debug, Clone, Copy)]
pub(in crate::suspension) struct Pose {
    pub(in crate::suspension) at: Coordinates,
    pub(super) frame: Frame,
    pub(super) held: Held,
    /// Tension of the links, in units of the largest stiffness; and the derivatives along heave and roll.
    pub(in crate::suspension) forces: Each,
    pub(in crate::suspension) force_rates: [Each; 2],
    /// Derivative along roll of their moment about the roll axis.
    pub(super) moment_rate: f64,
    pub(super) heave: Twist,
    pub(super) roll: Twist,
    /// Sign of the determinant.
    pub(in crate::suspension) sign: f64,
}

impl Pose {
    pub(super) fn yaw(&self) -> f64 {
        self.at[YAW]
    }

    pub(super) fn pitch(&self) -> f64 {
        self.at[PITCH]
    }
}

/// Forces of the links against each other.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Way {
    /// As many links as free coordinates.
    Exact,
    /// One link is redundant: weights of those that give, over the largest one, none of rigid links, which are named. The largest stiffness,
    /// where there are bushes in the redundant set.
    Compliant { weights: Each, rigid: Vec<usize>, stiffness: Option<f64> },
}

/// A linkage, prepared.
#[derive(Debug)]
pub(in crate::suspension) struct AxleLinkage {
    pub(super) links: Vec<Link>,
    pub(in crate::suspension) lanes: Links,
    pub(in crate::suspension) middle: Vector,
    pub(super) cranked: bool,
    pub(super) way: Way,
    /// The redundant set at ride height.
    pub(in crate::suspension) stress: Each,
    pub(super) rest: Pose,
    /// Found when a position is first asked for: what is asked at ride height or for the ends of travel does without.
    pub(super) series: OnceLock<Series>,
    /// Positions that the stages of a sheet share.
    #[cfg(feature = "sheet")]
    pub(super) places: Option<Places<Box<Pose>>>,
}

/// The coordinates about ride height by powers of heave, and each of those by powers of roll: up to the fourth order, but without one of
/// the two times the cube of the other. Only a first guess stands on them.
pub(super) type Series = [[Lanes<COORDINATES>; ORDER + 1]; ORDER + 1];

const ORDER: usize = 4;

/// Freedom at ride height that should not be there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::suspension) enum Free {
    Forward,
    Sideways,
    Yaw,
    Pitch,
    Crank,
}

#[cfg(feature = "sheet")]
thread_local! {
    static KEPT: Kept<AxleLinkage> = const { Kept::new() };
}

impl AxleLinkage {
    /// The linkage of `new`, prepared once for all stages that ask about it.
    #[cfg(feature = "sheet")]
    pub(super) fn kept(links: Vec<Link>, middle: Vector, cranked: bool) -> Result<Arc<AxleLinkage>, Free> {
        let mut numbers = Vec::with_capacity(4 + 13 * links.len());
        numbers.extend([middle.x, middle.y, middle.z, if cranked { 1.0 } else { 0.0 }]);
        for on in &links {
            let ends = [on.axle, on.axle_crank, on.body, on.body_crank];
            numbers.extend(ends.into_iter().flat_map(|end| [end.x, end.y, end.z]));
            numbers.push(on.give);
        }
        let shared = |linkage| AxleLinkage { places: Some(Places::new()), ..linkage };
        KEPT.with(|kept| kept.part(&numbers, || AxleLinkage::new(links, middle, cranked).map(shared)))
    }

    /// The linkage of these links, which must be as many as the axle needs or one more, about the axle's middle; what they leave free is refused.
    pub(super) fn new(links: Vec<Link>, middle: Vector, cranked: bool) -> Result<AxleLinkage, Free> {
        let mut at = [0.0; 7];
        (at[X], at[Y], at[Z]) = (middle.x, middle.y, middle.z);
        let frame = Frame::new(&at, (0.0, 1.0), cranked);
        let lanes = Links::new(&links, middle);
        let rest = Pose {
            at,
            frame,
            held: Held::new(&lanes, &frame),
            forces: Each::ZERO,
            force_rates: [Each::ZERO; 2],
            moment_rate: 0.0,
            heave: Twist::default(),
            roll: Twist::default(),
            sign: 0.0,
        };
        let mut linkage = AxleLinkage {
            links,
            lanes,
            middle,
            cranked,
            way: Way::Exact,
            stress: Each::ZERO,
            rest,
            series: OnceLock::new(),
            #[cfg(feature = "sheet")]
            places: None,
        };
        linkage.judge()?;
        linkage.rest = *linkage.solve(at, Each::ZERO).ok_or(Free::Forward)?;
        Ok(linkage)
    }

    /// The series: rates and second derivatives at ride height, and how those change to either side of it.
    pub(super) fn expanded(&self) -> Series {
        let (heave, roll) = (&self.rest.heave, &self.rest.roll);
        let mut first = [[Lanes::ZERO; ORDER + 1]; ORDER + 1];
        first[0] =
            [self.rest.at, roll.rates, roll.seconds, [0.0; COORDINATES], [0.0; COORDINATES]].map(Lanes);
        first[0][2] = first[0][2] * 0.5;
        (first[1][0], first[2][0]) = (Lanes(heave.rates), Lanes(heave.seconds) * 0.5);
        let near = |heave: f64, roll: f64| self.near_by(&first, heave, roll);
        // First derivative and half the second one of what the axle does there.
        let changes = |[low, high]: &[Box<Pose>; 2], step: f64, of: fn(&Pose) -> Coordinates| {
            let [low, rest, high] = [low, &self.rest, high].map(|pose| Lanes(of(pose)));
            [(high - low) * (0.5 / step), (low + high - rest * 2.0) * (0.5 / (step * step))]
        };
        let mut series = first;
        if let (Some(low), Some(high)) = (near(-STEP, 0.0), near(STEP, 0.0)) {
            let sides = [low, high];
            let [third, fourth] = changes(&sides, STEP, |pose| pose.heave.seconds);
            (series[3][0], series[4][0]) = (third * (1.0 / 6.0), fourth * (1.0 / 12.0));
            [series[1][1], series[2][1]] = changes(&sides, STEP, |pose| pose.roll.rates);
            [series[1][2], series[2][2]] =
                changes(&sides, STEP, |pose| pose.roll.seconds).map(|change| change * 0.5);
        }
        if let (Some(low), Some(high)) = (near(0.0, -TURN), near(0.0, TURN)) {
            let [third, fourth] = changes(&[low, high], TURN, |pose| pose.roll.seconds);
            (series[0][3], series[0][4]) = (third * (1.0 / 6.0), fourth * (1.0 / 12.0));
        }
        series
    }

    /// Approximate position of the axle at this heave and roll.
    pub(super) fn guess(&self, series: &Series, heave: f64, roll: f64) -> Coordinates {
        let mut at = Lanes::ZERO;
        for (order, terms) in series.iter().enumerate().rev() {
            let terms = terms.iter().take(ORDER + 1 - order).rev();
            at = at * heave + terms.fold(Lanes::ZERO, |sum, term| sum * roll + *term);
        }
        (at.0[Z], at.0[ROLL]) = (self.rest.at[Z] + heave, roll);
        at.0
    }

    fn free(&self) -> usize {
        if self.cranked { 5 } else { 4 }
    }

    /// Links more than heave and roll leave room for.
    pub(super) fn redundant(&self) -> usize {
        self.links.len() - self.free()
    }

    /// The largest stiffness, where bushes of the redundant set give.
    pub(super) fn scale(&self) -> Option<f64> {
        match self.way {
            Way::Exact => Some(0.0),
            Way::Compliant { stiffness, .. } => stiffness,
        }
    }

    /// Derivatives of the links' lengths by the free coordinates; that of a crank that is not there is one of its own.
    pub(super) fn rows(&self, pose: &Pose) -> SMatrix<f64, MOST, 5> {
        let mut rows = SMatrix::<f64, MOST, 5>::zeros();
        for place in 0..self.links.len() {
            for free in 0..self.free() {
                rows[(place, free)] = pose.held.row[free].0[place];
            }
        }
        if !self.cranked {
            rows[(MOST - 1, CRANK)] = 1.0;
        }
        rows
    }

    /// Checks that the links hold the axle, and determines their forces against each other.
    fn judge(&mut self) -> Result<(), Free> {
        let parts = self.rows(&self.rest).svd(true, true);
        let (Some(left), Some(right)) = (parts.u, parts.v_t) else { return Err(Free::Forward) };
        let least = parts.singular_values.imin();
        if parts.singular_values[least] < LEAST {
            let free = right.row(least).iamax_full().1;
            return Err([Free::Forward, Free::Sideways, Free::Yaw, Free::Pitch, Free::Crank][free.min(4)]);
        }
        if self.redundant() == 0 {
            return Ok(());
        }
        // Remainder of the links beside the columns: forces that hold each other.
        let beside = SMatrix::<f64, MOST, MOST>::identity() - left * left.transpose();
        let place = beside.diagonal().imax();
        let stress = beside.column(place).normalize();
        self.stress.0.copy_from_slice(stress.as_slice());
        let gives = |place: usize| self.links.get(place).is_some_and(|link| link.give > 0.0);
        self.way = if (0..MOST).any(|place| gives(place) && self.stress.0[place].abs() > PART) {
            let stiffest = self.links.iter().filter(|link| link.give > 0.0).map(|link| 1.0 / link.give);
            let stiffness = stiffest.fold(0.0, f64::max);
            let mut weights = Each::ZERO;
            for (weight, link) in weights.0.iter_mut().zip(&self.links).filter(|(_, link)| link.give > 0.0) {
                *weight = 1.0 / (link.give * stiffness);
            }
            let rigid = (0..self.links.len()).filter(|place| !gives(*place)).collect();
            Way::Compliant { weights, rigid, stiffness: Some(stiffness) }
        } else {
            let mut weights = Each::ZERO;
            weights.0[..self.links.len()].fill(1.0);
            Way::Compliant { weights, rigid: Vec::new(), stiffness: None }
        };
        Ok(())
    }

    /// Newton's method from these coordinates and multipliers of the rigid links.
    #[inline]
    pub(super) fn solve(&self, start: Coordinates, multipliers: Each) -> Option<Box<Pose>> {
        match (self.free(), self.rigid().len()) {
            (4, 0) => self.newton::<4>(start, multipliers),
            (5, 0) => self.newton::<5>(start, multipliers),
            _ => self.newton::<10>(start, multipliers),
        }
    }

    /// The links that are rigid beside others that give, in the order of their multipliers.
    fn rigid(&self) -> &[usize] {
        match &self.way {
            Way::Exact => &[],
            Way::Compliant { rigid, .. } => rigid,
        }
    }

    /// Matrix of the unknowns, and what heave and roll do to them.
    #[inline]
    fn system<const N: usize>(
        &self,
        frame: &Frame,
        held: &Held,
        forces: &Each,
    ) -> (SMatrix<f64, N, N>, [SVector<f64, N>; 2]) {
        let row = &held.row;
        let Way::Compliant { weights, rigid, .. } = &self.way else {
            return (
                SMatrix::from_fn(|place, j| row[j].0[place]),
                [Z, ROLL].map(|given| SVector::from_fn(|place, _| row[given].0[place])),
            );
        };
        let mut matrix = SMatrix::<f64, N, N>::zeros();
        let mut columns = [SVector::<f64, N>::zeros(); 2];
        let free = self.among::<N>();
        let over = Lanes(from_fn(|place| forces.0[place] / held.length.0[place]));
        let bends = Bends::new(held, frame, over).whole(frame);
        // Difference between the length's own second derivative and that of half its square.
        let weights = *weights - over;
        for j in 0..free {
            let weighted = weights * row[j];
            for k in 0..=j {
                let on = weighted.dot(row[k]) + bends[j][k];
                (matrix[(j, k)], matrix[(k, j)]) = (on, on);
            }
            columns[0][j] = weighted.dot(row[Z]) + bends[j][Z];
            columns[1][j] = weighted.dot(row[ROLL]) + bends[j][ROLL];
        }
        for (next, place) in (free..).zip(rigid) {
            for j in 0..free {
                let on = row[j].0[*place];
                (matrix[(next, j)], matrix[(j, next)]) = (on, on);
            }
            (columns[0][next], columns[1][next]) = (row[Z].0[*place], row[ROLL].0[*place]);
        }
        for empty in free + rigid.len()..N {
            matrix[(empty, empty)] = 1.0;
        }
        (matrix, columns)
    }

    /// Forces of the links that give.
    #[inline(always)]
    fn give(&self, held: &Held, forces: &mut Each) {
        if let Way::Compliant { weights, rigid, .. } = &self.way {
            let mut now = *weights * held.stretch;
            for place in rigid {
                now.0[*place] = forces.0[*place];
            }
            *forces = now;
        }
    }

    /// Residuals of the unknowns with the links held.
    #[inline(always)]
    fn wrong<const N: usize>(&self, held: &Held, forces: &Each) -> SVector<f64, N> {
        let rigid = match &self.way {
            Way::Exact => return SVector::from_fn(|place, _| held.stretch.0[place]),
            Way::Compliant { rigid, .. } => rigid,
        };
        let free = self.among::<N>();
        let mut wrong = SVector::<f64, N>::zeros();
        for j in 0..free {
            wrong[j] = forces.dot(held.row[j]);
        }
        for (next, place) in (free..).zip(rigid) {
            wrong[next] = held.stretch.0[*place];
        }
        wrong
    }

    /// Residuals at another place, with the forces of the links that give there.
    #[inline(always)]
    fn wrong_at<const N: usize>(&self, frame: &Frame, forces: &mut Each) -> SVector<f64, N> {
        if self.way == Way::Exact {
            // Their lengths suffice.
            let between = frame.ends(&self.lanes).between;
            let stretch = between.dot(between).map(f64::sqrt) - self.lanes.length;
            return SVector::from_fn(|place, _| stretch.0[place]);
        }
        let held = Held::new(&self.lanes, frame);
        self.give(&held, forces);
        self.wrong(&held, forces)
    }

    /// Free coordinates among so many unknowns.
    #[inline]
    fn among<const N: usize>(&self) -> usize {
        if N <= 5 { N } else { self.free() }
    }

    /// A matrix is kept for as long as steps with it become quickly shorter.
    fn newton<const N: usize>(&self, start: Coordinates, multipliers: Each) -> Option<Box<Pose>>
    where
        Const<N>: DimMin<Const<N>, Output = Const<N>>,
    {
        let (mut at, mut forces, mut close) = (start, multipliers, false);
        let mut pose = Box::new(self.rest);
        let rolled = start[ROLL].sin_cos();
        // Four unknowns leave no place for a crank; so nothing about one is compiled for them.
        let cranked = N != 4 && self.cranked;
        for _ in 0..12 {
            let frame = Frame::new(&at, rolled, cranked);
            pose.held = Held::new(&self.lanes, &frame);
            let held = &pose.held;
            self.give(held, &mut forces);
            let (matrix, columns) = self.system::<N>(&frame, held, &forces);
            let (inverse, sign) = inverse(&matrix)?;
            if close {
                (pose.at, pose.frame, pose.forces, pose.sign) = (at, frame, forces, sign);
                return self.moves(&mut pose, &frame, &inverse, &columns).then_some(pose);
            }
            let mut wrong = self.wrong::<N>(held, &forces);
            let mut last = 2.0;
            loop {
                solved();
                let step = inverse * wrong;
                let size: f64 = step.iter().map(|on| on.abs()).sum();
                if size.is_nan() || size > 0.5 {
                    return None;
                }
                for j in 0..self.among::<N>() {
                    at[j] -= step[j];
                }
                for (next, place) in (self.among::<N>()..).zip(self.rigid()) {
                    forces.0[*place] -= step[next];
                }
                // Steps with one matrix become shorter by twice what the first two say.
                close = 2.0 * size * size < CLOSE * last;
                if close || size > SHORTER * last {
                    break;
                }
                last = size;
                wrong = self.wrong_at(&Frame::new(&at, rolled, cranked), &mut forces);
            }
        }
        None
    }

    /// Motion of the axle with the links in balance; false if one of them is over-extended.
    #[inline]
    fn moves<const N: usize>(
        &self,
        pose: &mut Pose,
        frame: &Frame,
        inverse: &SMatrix<f64, N, N>,
        columns: &[SVector<f64, N>; 2],
    ) -> bool {
        let most = self.lanes.length * GIVE;
        let mut stretches = pose.held.stretch.0.iter().zip(most.0).take(self.links.len());
        if stretches.any(|(on, most)| on.abs() > most) {
            return false;
        }
        for (path, given) in [(0, Z), (1, ROLL)] {
            let first = -(inverse * columns[path]);
            let mut rates = [0.0; COORDINATES];
            rates[given] = 1.0;
            for j in 0..self.among::<N>() {
                rates[j] = first[j];
            }
            let twist = Twist::new(frame, rates);
            let (wrong, force_rates, moment_rate) =
                self.second((frame, &pose.held, &pose.forces), &twist, &first);
            let second = -(inverse * wrong);
            let mut seconds = [0.0; COORDINATES];
            for j in 0..self.among::<N>() {
                seconds[j] = second[j];
            }
            let twist = twist.bent(frame, seconds);
            pose.force_rates[path] = force_rates;
            if path == 0 {
                pose.heave = twist;
            } else {
                (pose.roll, pose.moment_rate) = (twist, moment_rate);
            }
        }
        true
    }

    /// Residuals of the second derivatives of the unknowns along a path if these were zero; the first derivatives of the forces and of their moment about the roll axis.
    #[inline]
    fn second<const N: usize>(
        &self,
        (frame, held, forces): (&Frame, &Held, &Each),
        twist: &Twist,
        first: &SVector<f64, N>,
    ) -> (SVector<f64, N>, Each, f64) {
        let on = held.moving(twist, frame);
        let [rate, second] = held.lengthening(&on.between);
        let Way::Compliant { weights, rigid, .. } = &self.way else {
            return (SVector::from_fn(|place, _| second.0[place]), Each::ZERO, 0.0);
        };
        let free = self.among::<N>();
        let mut wrong = SVector::<f64, N>::zeros();
        let (mut force_rate, force_second) = (*weights * rate, *weights * second);
        for (next, place) in (free..).zip(rigid) {
            force_rate.0[*place] = first[next];
            wrong[next] = second.0[*place];
        }
        let (e, force, over) = (held.along, *forces, held.length.map(|length| 1.0 / length));
        let e_rate = (on.between.rate - e * rate) * over;
        let e_second = (on.between.second - e * second - e_rate * (rate * 2.0)) * over;
        let forces = Paths {
            at: e * force,
            rate: e * force_rate + e_rate * force,
            second: e * force_second + e_rate * (force_rate * 2.0) + e_second * force,
        };
        let (seconds, moment_rate) = Wrench::new(&forces, &on, frame.crank.is_some()).on(twist, frame);
        for j in 0..free {
            wrong[j] = seconds[j];
        }
        (wrong, force_rate, moment_rate)
    }
}

/// The inverse, and the sign of the determinant; none of a singular matrix.
#[inline]
pub(super) fn inverse<const N: usize>(matrix: &SMatrix<f64, N, N>) -> Option<(SMatrix<f64, N, N>, f64)>
where
    Const<N>: DimMin<Const<N>, Output = Const<N>>,
{
    if N != 4 {
        return Some((matrix.try_inverse()?, matrix.determinant().signum()));
    }
    // By the minors of two rows: a third of the work of the cofactors.
    let m: [[f64; 4]; 4] = from_fn(|row| from_fn(|column| matrix[(row, column)]));
    let minors = |[a, b, c, d]: [f64; 4], [e, f, g, h]: [f64; 4]| {
        [a * f - b * e, a * g - c * e, a * h - d * e, b * g - c * f, b * h - d * f, c * h - d * g]
    };
    let (upper, lower) = (minors(m[0], m[1]), minors(m[2], m[3]));
    let whole = upper[0] * lower[5] - upper[1] * lower[4] + upper[2] * lower[3] + upper[3] * lower[2]
        - upper[4] * lower[1]
        + upper[5] * lower[0];
    if whole == 0.0 {
        return None;
    }
    // The cofactors of a row, from the row that stands beside it and the minors of the other two.
    let cofactors = |[a, b, c, d]: [f64; 4], on: [f64; 6], over: f64| {
        [
            (b * on[5] - c * on[4] + d * on[3]) * over,
            (c * on[2] - a * on[5] - d * on[1]) * over,
            (a * on[4] - b * on[2] + d * on[0]) * over,
            (b * on[1] - a * on[3] - c * on[0]) * over,
        ]
    };
    let over = 1.0 / whole;
    let columns = [
        cofactors(m[1], lower, over),
        cofactors(m[0], lower, -over),
        cofactors(m[3], upper, over),
        cofactors(m[2], upper, -over),
    ];
    Some((SMatrix::from_fn(|row, column| columns[column][row]), whole.signum()))
}
