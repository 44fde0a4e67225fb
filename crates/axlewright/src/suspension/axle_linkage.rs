//! Motion of a rigid axle on links: Newton's method on the lengths of the links, with first and second derivatives along heave and roll.
//!
//! Coordinates of the axle: its middle; its yaw about z, its roll about the axis that yaw has turned, and its pitch about its own length, in
//! this order, so that yaw and roll are those of the line through the wheels' centres in plan and in elevation, which one can measure; of a
//! Watt linkage the turn of its crank, too. Heave of the middle and roll are prescribed. As many links as coordinates are left keep their lengths. One more link is
//! redundant: then the strain energy of the bushes is least, rigid links keep their lengths by multipliers, and where nothing in the
//! redundant set gives, the squares of the lengths by which the links miss. Source: vector kinematics of rigid bodies; virtual work.

use super::vector::{Vector, vector};
use nalgebra::{Const, DimMin, LU, SMatrix, SVector};

/// Places of the coordinates: four that are free, the crank's turn, then heave and roll.
const X: usize = 0;
const Y: usize = 1;
const YAW: usize = 2;
const PITCH: usize = 3;
const CRANK: usize = 4;
const Z: usize = 5;
const ROLL: usize = 6;
/// Four links and the two rods of a Watt linkage.
pub(super) const MOST: usize = 6;
type Coordinates = [f64; 7];

/// Below this the least singular value of the links' Jacobian leaves a motion free: sines of angles, and metres.
const LEAST: f64 = 0.001;
/// A link that must give more than this share of its length is over-extended.
const GIVE: f64 = 0.05;
/// A link with less than this share of the redundant set does not belong to it.
const PART: f64 = 1e-3;
/// Below this, in metres a radian or a metre, heave and roll leave the misfit of a redundant link as it is.
const SLACK: f64 = 1e-9;

/// Steps from one position to the next one, in metres and radians.
const STEP: f64 = 0.01;
const TURN: f64 = 0.02;

const FORWARD: Vector = vector(1.0, 0.0, 0.0);
const UP: Vector = vector(0.0, 0.0, 1.0);

/// A link: its ends at ride height, that on the axle from the axle's middle. An end on a bell crank is the crank's pivot and what stands off it.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Link {
    pub(super) axle: Vector,
    pub(super) axle_crank: Vector,
    pub(super) body: Vector,
    pub(super) body_crank: Vector,
    /// Of its bushes in series, in m/N.
    pub(super) give: f64,
}

impl Link {
    /// From the body to the axle at ride height.
    pub(super) fn drawn(&self, middle: Vector) -> Vector {
        middle + self.axle + self.axle_crank - self.body - self.body_crank
    }
}

/// Orientation of the axle, and the axes of its angles.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Frame {
    pub(super) middle: Vector,
    columns: [Vector; 3],
    roll_axis: Vector,
}

impl Frame {
    fn new(at: &Coordinates) -> Frame {
        let [(ys, yc), (ps, pc), (rs, rc)] = [at[YAW], at[PITCH], at[ROLL]].map(f64::sin_cos);
        Frame {
            middle: vector(at[X], at[Y], at[Z]),
            columns: [
                vector(yc * pc - ys * ps * rs, ys * pc + yc * ps * rs, -ps * rc),
                vector(-ys * rc, yc * rc, rs),
                vector(yc * ps + ys * pc * rs, ys * ps - yc * pc * rs, pc * rc),
            ],
            roll_axis: vector(yc, ys, 0.0),
        }
    }
    /// A direction of the axle in the body's axes.
    pub(super) fn direction(&self, here: Vector) -> Vector {
        let [a, b, c] = self.columns;
        a * here.x + b * here.y + c * here.z
    }
    /// A direction of the body in the axle's axes.
    pub(super) fn direction_here(&self, along: Vector) -> Vector {
        let [a, b, c] = self.columns;
        vector(along.dot(a), along.dot(b), along.dot(c))
    }
    fn pitch_axis(&self) -> Vector {
        self.columns[1]
    }
    /// About which a crank turns that the axle carries.
    fn crank_axis(&self) -> Vector {
        self.columns[0]
    }
}

/// A vector along a path, with its first and second derivative.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Along {
    pub(super) at: Vector,
    pub(super) rate: Vector,
    pub(super) second: Vector,
}

impl Along {
    fn cross(&self, other: &Along) -> Along {
        Along {
            at: self.at.cross(other.at),
            rate: self.rate.cross(other.at) + self.at.cross(other.rate),
            second: self.second.cross(other.at)
                + self.rate.cross(other.rate) * 2.0
                + self.at.cross(other.second),
        }
    }
    /// First and second derivative of the product.
    fn dot(&self, other: &Along) -> [f64; 2] {
        [
            self.rate.dot(other.at) + self.at.dot(other.rate),
            self.second.dot(other.at) + 2.0 * self.rate.dot(other.rate) + self.at.dot(other.second),
        ]
    }
}

/// Motion of the axle along a path in heave or in roll.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Twist {
    rates: Coordinates,
    seconds: Coordinates,
    pub(super) velocity: Vector,
    pub(super) spin: Vector,
    acceleration: Vector,
    spin_rate: Vector,
}

impl Twist {
    fn new(frame: &Frame, rates: Coordinates, seconds: Coordinates) -> Twist {
        let (pitch, roll) = (frame.pitch_axis(), frame.roll_axis);
        let turn = UP * rates[YAW] + roll * rates[ROLL];
        Twist {
            rates,
            seconds,
            velocity: vector(rates[X], rates[Y], rates[Z]),
            spin: turn + pitch * rates[PITCH],
            acceleration: vector(seconds[X], seconds[Y], seconds[Z]),
            spin_rate: UP * seconds[YAW]
                + roll * seconds[ROLL]
                + pitch * seconds[PITCH]
                + UP.cross(roll) * (rates[YAW] * rates[ROLL])
                + turn.cross(pitch) * rates[PITCH],
        }
    }
    pub(super) fn yaw_rate(&self) -> f64 {
        self.rates[YAW]
    }
    /// A point of the axle, which stands so far from its middle.
    pub(super) fn point(&self, arm: Vector) -> Along {
        let turning = turned(arm, self.spin, self.spin_rate);
        Along { at: arm, rate: self.velocity + turning.rate, second: self.acceleration + turning.second }
    }
    /// A direction of the axle.
    fn along(&self, at: Vector) -> Along {
        turned(at, self.spin, self.spin_rate)
    }
}

/// A vector that turns with a body.
fn turned(at: Vector, spin: Vector, spin_rate: Vector) -> Along {
    let rate = spin.cross(at);
    Along { at, rate, second: spin_rate.cross(at) + spin.cross(rate) }
}

/// A link where it stands now.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Held {
    /// From the axle's middle to its end there.
    pub(super) arm: Vector,
    /// The part of that which is the crank's, on the axle or on the body.
    arm_crank: Vector,
    body_crank: Vector,
    /// From the body to the axle.
    pub(super) along: Vector,
    pub(super) length: f64,
    /// By how much it is longer than drawn.
    pub(super) stretch: f64,
    /// Derivatives of its length.
    pub(super) row: Coordinates,
}

impl Held {
    fn new(link: &Link, length: f64, at: &Coordinates, frame: &Frame, cranked: bool) -> Held {
        let mut held = Held { arm: frame.direction(link.axle), ..Held::default() };
        let mut body = link.body;
        if cranked {
            let (sine, cosine) = at[CRANK].sin_cos();
            let swung = |v: Vector| vector(v.x, v.y * cosine - v.z * sine, v.y * sine + v.z * cosine);
            held.arm_crank = frame.direction(swung(link.axle_crank));
            held.body_crank = swung(link.body_crank);
            held.arm = held.arm + held.arm_crank;
            body = body + held.body_crank;
        }
        let between = frame.middle + held.arm - body;
        held.length = between.norm();
        held.stretch = held.length - length;
        let e = between * (1.0 / held.length);
        held.along = e;
        // Moment of a unit of force in the link about the axle's middle.
        let moment = held.arm.cross(e);
        let (pitch, roll) = (moment.dot(frame.pitch_axis()), moment.dot(frame.roll_axis));
        held.row = [e.x, e.y, moment.z, pitch, 0.0, e.z, roll];
        if cranked {
            let swing = frame.crank_axis().cross(held.arm_crank) - FORWARD.cross(held.body_crank);
            held.row[CRANK] = e.dot(swing);
        }
        held
    }

    /// Second derivatives of its length.
    fn bends(&self, frame: &Frame, cranked: bool) -> [Coordinates; 7] {
        let (e, row, over) = (self.along, &self.row, 1.0 / self.length);
        let mut bends = [[0.0; 7]; 7];
        let mut set = |j: usize, k: usize, bend: f64| (bends[j][k], bends[k][j]) = (bend, bend);
        let shifts = [(X, e.x), (Y, e.y), (Z, e.z)];
        for (j, (shift, part)) in shifts.into_iter().enumerate() {
            for (k, (other, on)) in shifts.into_iter().enumerate().skip(j) {
                set(shift, other, (f64::from(u8::from(j == k)) - part * on) * over);
            }
        }
        // Each angle turns about an axis that the ones before it turn; the crank comes last.
        let turns = [(YAW, UP), (ROLL, frame.roll_axis), (PITCH, frame.pitch_axis())];
        let columns = turns.map(|(_, axis)| axis.cross(self.arm));
        for (place, ((turn, axis), column)) in turns.into_iter().zip(columns).enumerate() {
            for (shift, along) in [(X, column.x), (Y, column.y), (Z, column.z)] {
                set(shift, turn, (along - row[shift] * row[turn]) * over);
            }
            let across = e.cross(axis);
            for ((inner, _), other) in turns.into_iter().zip(columns).skip(place) {
                set(turn, inner, (column.dot(other) - row[turn] * row[inner]) * over + across.dot(other));
            }
        }
        if cranked {
            let axis = frame.crank_axis();
            let on_axle = axis.cross(self.arm_crank);
            let column = on_axle - FORWARD.cross(self.body_crank);
            let bend = |of: Vector, place: usize| (of.dot(column) - row[place] * row[CRANK]) * over;
            for (shift, along) in [(X, column.x), (Y, column.y), (Z, column.z)] {
                set(shift, CRANK, (along - row[shift] * row[CRANK]) * over);
            }
            for ((turn, axis), column) in turns.into_iter().zip(columns) {
                set(turn, CRANK, bend(column, turn) + e.cross(axis).dot(on_axle));
            }
            let swing = e.cross(axis).dot(on_axle) - e.cross(FORWARD).dot(FORWARD.cross(self.body_crank));
            set(CRANK, CRANK, bend(column, CRANK) + swing);
        }
        bends
    }

    /// Its arm and the vector between its ends along a path.
    fn moving(&self, twist: &Twist, frame: &Frame, cranked: bool) -> (Along, Along, Along) {
        let mut arm = twist.along(self.arm);
        let mut crank = Along::default();
        let between = self.along * self.length;
        let (mut velocity, mut acceleration) = (twist.velocity, twist.acceleration);
        if cranked {
            let axis = twist.along(frame.crank_axis());
            let (turn, second) = (twist.rates[CRANK], twist.seconds[CRANK]);
            let spin = twist.spin + axis.at * turn;
            let spin_rate = twist.spin_rate + axis.rate * turn + axis.at * second;
            crank = turned(self.arm_crank, spin, spin_rate);
            let rigid = twist.along(self.arm - self.arm_crank);
            arm = Along { at: self.arm, rate: rigid.rate + crank.rate, second: rigid.second + crank.second };
            let on_body = turned(self.body_crank, FORWARD * turn, FORWARD * second);
            velocity = velocity - on_body.rate;
            acceleration = acceleration - on_body.second;
        }
        let between = Along { at: between, rate: velocity + arm.rate, second: acceleration + arm.second };
        (arm, crank, between)
    }

    /// First and second derivative of its length along a path.
    fn lengthening(&self, between: &Along) -> [f64; 2] {
        let rate = self.along.dot(between.rate);
        let bend = (between.rate.square() - rate * rate) / self.length;
        [rate, bend + self.along.dot(between.second)]
    }

    /// First and second derivative of its row along a path.
    fn row_rates(&self, twist: &Twist, frame: &Frame, cranked: bool) -> [[f64; 2]; 7] {
        let (arm, crank, between) = self.moving(twist, frame, cranked);
        let [rate, second] = self.lengthening(&between);
        let mut e = Along { at: self.along, ..Along::default() };
        e.rate = (between.rate - e.at * rate) * (1.0 / self.length);
        e.second = (between.second - e.at * second - e.rate * (2.0 * rate)) * (1.0 / self.length);
        let moment = arm.cross(&e);
        let pitch = twist.along(frame.pitch_axis());
        let roll = turned(frame.roll_axis, UP * twist.rates[YAW], UP * twist.seconds[YAW]);
        let mut rows = [
            [e.rate.x, e.second.x],
            [e.rate.y, e.second.y],
            [moment.rate.z, moment.second.z],
            pitch.dot(&moment),
            [0.0; 2],
            [e.rate.z, e.second.z],
            roll.dot(&moment),
        ];
        if cranked {
            let [a, b] = e.dot(&twist.along(frame.crank_axis()).cross(&crank));
            let (turn, second) = (FORWARD * twist.rates[CRANK], FORWARD * twist.seconds[CRANK]);
            let forward = Along { at: FORWARD, ..Along::default() };
            let [c, d] = e.dot(&forward.cross(&turned(self.body_crank, turn, second)));
            rows[CRANK] = [a - c, b - d];
        }
        rows
    }
}

/// What the links do about each other.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Way {
    /// As many links as free coordinates.
    Exact,
    /// One link is redundant: weights of those that give, over the greatest one; none of a rigid link. The greatest stiffness, where there
    /// are bushes in the redundant set.
    Compliant { weights: [Option<f64>; MOST], stiffness: Option<f64> },
}

/// The axle where it stands now.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pose {
    at: Coordinates,
    pub(super) frame: Frame,
    pub(super) held: [Held; MOST],
    /// Tension of the links, in units of the greatest stiffness; and the derivatives along heave and roll.
    forces: [f64; MOST],
    force_rates: [[f64; MOST]; 2],
    pub(super) heave: Twist,
    pub(super) roll: Twist,
    /// Of the determinant.
    sign: f64,
}

impl Pose {
    pub(super) fn yaw(&self) -> f64 {
        self.at[YAW]
    }
    pub(super) fn pitch(&self) -> f64 {
        self.at[PITCH]
    }
    pub(super) fn crank(&self) -> f64 {
        self.at[CRANK]
    }
}

/// A redundant link that binds.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Bind {
    pub(super) freedoms: i64,
    /// Length by which the links miss each other.
    pub(super) misfit: f64,
    /// The greatest tension or compression, and of which link; of rigid links only which one misses most.
    pub(super) force: f64,
    pub(super) link: Option<usize>,
    pub(super) moment: f64,
    pub(super) stiffness: f64,
}

/// A linkage, prepared.
#[derive(Debug, Clone)]
pub(super) struct AxleLinkage {
    pub(super) links: Vec<Link>,
    lengths: [f64; MOST],
    middle: Vector,
    cranked: bool,
    way: Way,
    /// The redundant set at ride height.
    stress: [f64; MOST],
    pub(super) rest: Pose,
    mixed: Coordinates,
}

/// What is free at ride height that should not be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Free {
    Forward,
    Sideways,
    Yaw,
    Pitch,
    Crank,
}

impl AxleLinkage {
    /// The linkage of these links, which must be as many as the axle needs or one more, about the axle's middle; what they leave free is refused.
    pub(super) fn new(links: Vec<Link>, middle: Vector, cranked: bool) -> Result<AxleLinkage, Free> {
        let mut at = [0.0; 7];
        (at[X], at[Y], at[Z]) = (middle.x, middle.y, middle.z);
        let frame = Frame::new(&at);
        let mut lengths = [0.0; MOST];
        for (length, link) in lengths.iter_mut().zip(&links) {
            *length = link.drawn(middle).norm();
        }
        let rest = Pose {
            at,
            frame,
            held: [Held::default(); MOST],
            forces: [0.0; MOST],
            force_rates: [[0.0; MOST]; 2],
            heave: Twist::default(),
            roll: Twist::default(),
            sign: 0.0,
        };
        let mut linkage = AxleLinkage {
            links,
            lengths,
            middle,
            cranked,
            way: Way::Exact,
            stress: [0.0; MOST],
            rest,
            mixed: [0.0; 7],
        };
        linkage.rest.held = linkage.held(&at, &frame);
        linkage.judge()?;
        linkage.rest = linkage.solve(at, [0.0; MOST]).ok_or(Free::Forward)?;
        // How the rates in roll change with heave: only a first guess stands on it.
        let (step, roll) = (1e-4, |pose: Pose| pose.roll.rates);
        if let (Some(low), Some(high)) =
            (linkage.near(-step, 0.0).map(roll), linkage.near(step, 0.0).map(roll))
        {
            for place in 0..5 {
                linkage.mixed[place] = (high[place] - low[place]) / (2.0 * step);
            }
        }
        Ok(linkage)
    }

    fn free(&self) -> usize {
        if self.cranked { 5 } else { 4 }
    }
    /// Links more than heave and roll leave room for.
    pub(super) fn redundant(&self) -> usize {
        self.links.len() - self.free()
    }
    /// The greatest stiffness, where bushes of the redundant set give.
    fn scale(&self) -> Option<f64> {
        match self.way {
            Way::Exact => Some(0.0),
            Way::Compliant { stiffness, .. } => stiffness,
        }
    }

    fn held(&self, at: &Coordinates, frame: &Frame) -> [Held; MOST] {
        let mut held = [Held::default(); MOST];
        for ((held, link), length) in held.iter_mut().zip(&self.links).zip(self.lengths) {
            *held = Held::new(link, length, at, frame, self.cranked);
        }
        held
    }

    /// Whether the links hold what they must, and what they do about each other.
    fn judge(&mut self) -> Result<(), Free> {
        let mut rows = SMatrix::<f64, MOST, 5>::zeros();
        for (place, held) in self.rest.held.iter().enumerate().take(self.links.len()) {
            for free in 0..self.free() {
                rows[(place, free)] = held.row[free];
            }
        }
        if !self.cranked {
            rows[(MOST - 1, CRANK)] = 1.0;
        }
        let parts = rows.svd(true, true);
        let (Some(left), Some(right)) = (parts.u, parts.v_t) else { return Err(Free::Forward) };
        let least = parts.singular_values.imin();
        if parts.singular_values[least] < LEAST {
            let free = right.row(least).iamax_full().1;
            return Err([Free::Forward, Free::Sideways, Free::Yaw, Free::Pitch, Free::Crank][free.min(4)]);
        }
        if self.redundant() == 0 {
            return Ok(());
        }
        // What is left of the links beside the columns: forces that hold each other.
        let beside = SMatrix::<f64, MOST, MOST>::identity() - left * left.transpose();
        let place = beside.diagonal().imax();
        let stress = beside.column(place).normalize();
        self.stress.copy_from_slice(stress.as_slice());
        let gives = |place: usize| self.links.get(place).is_some_and(|link| link.give > 0.0);
        self.way = if (0..MOST).any(|place| gives(place) && self.stress[place].abs() > PART) {
            let stiffest = self.links.iter().filter(|link| link.give > 0.0).map(|link| 1.0 / link.give);
            let stiffness = stiffest.fold(0.0, f64::max);
            let mut weights = [None; MOST];
            for (weight, link) in weights.iter_mut().zip(&self.links) {
                *weight = (link.give > 0.0).then(|| 1.0 / (link.give * stiffness));
            }
            Way::Compliant { weights, stiffness: Some(stiffness) }
        } else {
            Way::Compliant { weights: [Some(1.0); MOST], stiffness: None }
        };
        Ok(())
    }

    /// Newton's method from these coordinates and multipliers of the rigid links.
    fn solve(&self, start: Coordinates, multipliers: [f64; MOST]) -> Option<Pose> {
        let rigid = match &self.way {
            Way::Exact => 0,
            Way::Compliant { weights, .. } => {
                weights.iter().take(self.links.len()).filter(|weight| weight.is_none()).count()
            }
        };
        match (self.free(), rigid) {
            (4, 0) => self.newton::<4>(start, multipliers),
            (5, 0) => self.newton::<5>(start, multipliers),
            _ => self.newton::<10>(start, multipliers),
        }
    }

    /// Matrix of the unknowns, what is wrong with them now, and what heave and roll do to that.
    #[allow(clippy::type_complexity, reason = "one square and three columns")]
    fn system<const N: usize>(
        &self,
        frame: &Frame,
        held: &[Held; MOST],
        forces: &mut [f64; MOST],
    ) -> (SMatrix<f64, N, N>, [SVector<f64, N>; 3]) {
        let (free, count) = (self.free(), self.links.len());
        let mut matrix = SMatrix::<f64, N, N>::zeros();
        let mut columns = [SVector::<f64, N>::zeros(); 3];
        match &self.way {
            Way::Exact => {
                for (place, held) in held.iter().enumerate().take(count) {
                    for j in 0..free {
                        matrix[(place, j)] = held.row[j];
                    }
                    for (column, wrong) in columns.iter_mut().zip([held.stretch, held.row[Z], held.row[ROLL]])
                    {
                        column[place] = wrong;
                    }
                }
            }
            Way::Compliant { weights, .. } => {
                let mut next = free;
                for (place, held) in held.iter().enumerate().take(count) {
                    let weight = weights[place];
                    if let Some(weight) = weight {
                        forces[place] = weight * held.stretch;
                    } else {
                        for j in 0..free {
                            (matrix[(j, next)], matrix[(next, j)]) = (held.row[j], held.row[j]);
                        }
                        for (column, wrong) in
                            columns.iter_mut().zip([held.stretch, held.row[Z], held.row[ROLL]])
                        {
                            column[next] = wrong;
                        }
                        next += 1;
                    }
                    let (weight, force) = (weight.unwrap_or(0.0), forces[place]);
                    let bends = if force == 0.0 { [[0.0; 7]; 7] } else { held.bends(frame, self.cranked) };
                    for j in 0..free {
                        for k in 0..free {
                            matrix[(j, k)] += weight * held.row[j] * held.row[k] + force * bends[j][k];
                        }
                        columns[0][j] += force * held.row[j];
                        for (column, given) in [(1, Z), (2, ROLL)] {
                            columns[column][j] +=
                                weight * held.row[j] * held.row[given] + force * bends[j][given];
                        }
                    }
                }
                for empty in next..N {
                    matrix[(empty, empty)] = 1.0;
                }
            }
        }
        (matrix, columns)
    }

    /// The links that are rigid beside others that give, in the order of their multipliers.
    fn rigid(&self) -> impl Iterator<Item = usize> {
        let weights = match self.way {
            Way::Exact => [Some(1.0); MOST],
            Way::Compliant { weights, .. } => weights,
        };
        (0..self.links.len()).filter(move |place| weights[*place].is_none())
    }

    fn newton<const N: usize>(&self, start: Coordinates, multipliers: [f64; MOST]) -> Option<Pose>
    where
        Const<N>: DimMin<Const<N>, Output = Const<N>>,
    {
        let (mut at, mut forces) = (start, multipliers);
        let mut last = f64::INFINITY;
        for _ in 0..12 {
            let frame = Frame::new(&at);
            let held = self.held(&at, &frame);
            let (matrix, columns) = self.system::<N>(&frame, &held, &mut forces);
            let factors = matrix.lu();
            if last < 1e-7 {
                return self.pose(at, frame, held, forces, &factors, &columns);
            }
            let mut step = columns[0];
            if !factors.solve_mut(&mut step) {
                return None;
            }
            for j in 0..self.free() {
                at[j] -= step[j];
            }
            for (next, place) in self.rigid().enumerate() {
                forces[place] -= step[self.free() + next];
            }
            last = step.iter().take(self.free()).fold(0.0, |most: f64, on| most.max(on.abs()));
            if last.is_nan() || last > 0.5 {
                return None;
            }
        }
        None
    }

    /// What moves, and how, where the links are in balance.
    fn pose<const N: usize>(
        &self,
        at: Coordinates,
        frame: Frame,
        held: [Held; MOST],
        forces: [f64; MOST],
        factors: &LU<f64, Const<N>, Const<N>>,
        columns: &[SVector<f64, N>; 3],
    ) -> Option<Pose>
    where
        Const<N>: DimMin<Const<N>, Output = Const<N>>,
    {
        if held.iter().zip(self.lengths).any(|(held, length)| held.stretch.abs() > GIVE * length) {
            return None; // over-extended
        }
        let mut pose = Pose {
            at,
            frame,
            held,
            forces,
            force_rates: [[0.0; MOST]; 2],
            heave: Twist::default(),
            roll: Twist::default(),
            sign: factors.determinant().signum(),
        };
        for (path, given) in [(0, Z), (1, ROLL)] {
            let first = factors.solve(&-columns[path + 1])?;
            let mut rates = [0.0; 7];
            rates[given] = 1.0;
            for j in 0..self.free() {
                rates[j] = first[j];
            }
            let (second, force_rates) = self.second(&pose, factors, rates, &first)?;
            let mut seconds = [0.0; 7];
            for j in 0..self.free() {
                seconds[j] = second[j];
            }
            let twist = Twist::new(&frame, rates, seconds);
            pose.force_rates[path] = force_rates;
            if path == 0 {
                pose.heave = twist;
            } else {
                pose.roll = twist;
            }
        }
        Some(pose)
    }

    /// Second derivatives of the unknowns along a path, and the first ones of the forces.
    fn second<const N: usize>(
        &self,
        pose: &Pose,
        factors: &LU<f64, Const<N>, Const<N>>,
        rates: Coordinates,
        first: &SVector<f64, N>,
    ) -> Option<(SVector<f64, N>, [f64; MOST])>
    where
        Const<N>: DimMin<Const<N>, Output = Const<N>>,
    {
        let (free, frame) = (self.free(), &pose.frame);
        let twist = Twist::new(frame, rates, [0.0; 7]);
        let mut wrong = SVector::<f64, N>::zeros();
        let mut force_rates = [0.0; MOST];
        let held = pose.held.iter().enumerate().take(self.links.len());
        match &self.way {
            Way::Exact => {
                for (place, held) in held {
                    let [_, second] = held.lengthening(&held.moving(&twist, frame, self.cranked).2);
                    wrong[place] = second;
                }
            }
            Way::Compliant { weights, .. } => {
                let mut next = free;
                for (place, held) in held {
                    let [rate, second] = held.lengthening(&held.moving(&twist, frame, self.cranked).2);
                    let mut force_second = 0.0;
                    if let Some(weight) = weights[place] {
                        force_rates[place] = weight * rate;
                        force_second = weight * second;
                    } else {
                        wrong[next] = second;
                        force_rates[place] = first[next];
                        next += 1;
                    }
                    let rows = held.row_rates(&twist, frame, self.cranked);
                    for j in 0..free {
                        wrong[j] += force_second * held.row[j]
                            + 2.0 * force_rates[place] * rows[j][0]
                            + pose.forces[place] * rows[j][1];
                    }
                }
            }
        }
        Some((factors.solve(&-wrong)?, force_rates))
    }

    /// The axle at this heave and roll, where it is got quickly from ride height.
    fn near(&self, heave: f64, roll: f64) -> Option<Pose> {
        let rest = &self.rest;
        let mut start = rest.at;
        for (place, start) in start.iter_mut().enumerate().take(5) {
            let (h, r) = (&rest.heave, &rest.roll);
            *start += heave * (h.rates[place] + 0.5 * heave * h.seconds[place])
                + roll * (r.rates[place] + 0.5 * roll * r.seconds[place] + heave * self.mixed[place]);
        }
        (start[Z], start[ROLL]) = (rest.at[Z] + heave, roll);
        let mut forces = [0.0; MOST];
        for (place, force) in forces.iter_mut().enumerate() {
            *force = heave * rest.force_rates[0][place] + roll * rest.force_rates[1][place];
        }
        let pose = self.solve(start, forces)?;
        let off = (0..5).fold(0.0, |most: f64, place| most.max((pose.at[place] - start[place]).abs()));
        (off < 0.02 && self.follows(&pose)).then_some(pose)
    }

    /// Whether a position is of the same assembly as ride height, and none of its angles has turned over.
    fn follows(&self, pose: &Pose) -> bool {
        pose.sign == self.rest.sign && pose.at[PITCH].abs() < 1.4 && pose.at[YAW].abs() < 1.4
    }

    /// From one position to the next one, a small step further.
    fn further(&self, from: &Pose, heave: f64, roll: f64) -> Option<Pose> {
        let (dh, dr) = (self.middle.z + heave - from.at[Z], roll - from.at[ROLL]);
        let mut start = from.at;
        for (start, (up, turn)) in start.iter_mut().zip(from.heave.rates.iter().zip(from.roll.rates)).take(5)
        {
            *start += dh * up + dr * turn;
        }
        (start[Z], start[ROLL]) = (self.middle.z + heave, roll);
        let pose = self.solve(start, from.forces)?;
        let off = (0..5).fold(0.0, |most: f64, place| most.max((pose.at[place] - start[place]).abs()));
        (off < 0.05 && self.follows(&pose)).then_some(pose)
    }

    /// From one position straight towards a heave and roll, in at least so many steps: how much of the way, and where.
    fn towards(&self, from: &Pose, heave: f64, roll: f64, steps: f64) -> (f64, Pose) {
        let (heave_from, roll_from) = (from.at[Z] - self.middle.z, from.at[ROLL]);
        let (mut pose, mut share, mut step) = (*from, 0.0, 1.0 / steps);
        let least = 1e-7 * step;
        while step > least && share < 1.0 {
            let next = f64::min(share + step, 1.0);
            let (heave, roll) = if next < 1.0 {
                (heave_from + (heave - heave_from) * next, roll_from + (roll - roll_from) * next)
            } else {
                (heave, roll)
            };
            match self.further(&pose, heave, roll) {
                Some(on) => (pose, share) = (on, next),
                None => step *= 0.5,
            }
        }
        (share, pose)
    }

    /// The axle at this heave and roll; none beyond its range.
    pub(super) fn at(&self, heave: f64, roll: f64) -> Option<Pose> {
        self.near(heave, roll).or_else(|| {
            let steps = (heave.abs() / STEP).max(roll.abs() / TURN).ceil().max(1.0);
            let (share, pose) = self.towards(&self.rest, heave, roll, steps);
            (share >= 1.0).then_some(pose)
        })
    }

    /// The link that is nearest to being over-extended: of rigid ones that with most of the forces that hold each other, otherwise the most strained one.
    fn worst(&self, pose: &Pose) -> usize {
        let mut shares = [0.0; MOST];
        for ((share, held), length) in shares.iter_mut().zip(&pose.held).zip(self.lengths) {
            *share = held.stretch.abs() / length.max(1e-3);
        }
        if shares.iter().all(|share| *share < 0.1 * GIVE) {
            let mut rows = SMatrix::<f64, MOST, 5>::zeros();
            for (place, held) in pose.held.iter().enumerate().take(self.links.len()) {
                for free in 0..self.free() {
                    rows[(place, free)] = held.row[free];
                }
            }
            if !self.cranked {
                rows[(MOST - 1, CRANK)] = 1.0;
            }
            let parts = rows.svd(true, false);
            if let Some(left) = parts.u {
                let least = left.column(parts.singular_values.imin()).into_owned();
                shares.copy_from_slice(least.abs().as_slice());
            }
        }
        let count = self.links.len();
        (0..count).fold(0, |most, place| if shares[place] > shares[most] + 1e-9 { place } else { most })
    }

    /// Least and greatest heave at this roll, and which link ends it there; none where the axle does not roll so far at ride height.
    pub(super) fn range(&self, roll: f64) -> Option<[(f64, usize); 2]> {
        let from = self.at(0.0, roll)?;
        // Greater steps than on the way to a position: each one that leads astray is halved.
        Some([-250.0, 250.0].map(|steps: f64| {
            let (_, pose) = self.towards(&from, steps * 4.0 * STEP, roll, steps.abs());
            (pose.at[Z] - self.middle.z, self.worst(&pose))
        }))
    }
    /// Least and greatest roll at ride height, and which link ends it there.
    pub(super) fn roll_range(&self) -> [(f64, usize); 2] {
        [-70.0, 70.0].map(|steps: f64| {
            let (_, pose) = self.towards(&self.rest, 0.0, steps * TURN, steps.abs());
            (pose.at[ROLL], self.worst(&pose))
        })
    }

    /// What a redundant link does here.
    pub(super) fn bind(&self, pose: &Pose) -> Option<Bind> {
        if self.redundant() == 0 {
            return Some(Bind { freedoms: 2, ..Bind::default() });
        }
        let stress = if self.cranked { self.stress::<5>(pose) } else { self.stress::<4>(pose) }?;
        let sum = |of: &dyn Fn(&Held) -> f64| -> f64 {
            stress.iter().zip(&pose.held).map(|(stress, held)| stress * of(held)).sum()
        };
        let misfit = sum(&|held| held.stretch).abs();
        // In balance with heave and roll, too: one rank less.
        let loose = sum(&|held| held.row[Z]).abs().max(sum(&|held| held.row[ROLL]).abs()) < SLACK;
        let scale = self.scale().unwrap_or(f64::NAN);
        let size =
            |place: usize| if scale.is_nan() { pose.held[place].stretch } else { pose.forces[place] }.abs();
        let link = (1..self.links.len()).fold(0, |most, at| if size(at) > size(most) { at } else { most });
        let (mut moment, mut stiffness) = (0.0, 0.0);
        for place in 0..self.links.len() {
            let (held, force) = (&pose.held[place], pose.forces[place]);
            moment += force * held.row[ROLL];
            stiffness += pose.force_rates[1][place] * held.row[ROLL];
            if force != 0.0 {
                let bends = held.bends(&pose.frame, self.cranked)[ROLL];
                let change: f64 = bends.iter().zip(pose.roll.rates).map(|(bend, rate)| bend * rate).sum();
                stiffness += force * change;
            }
        }
        Some(Bind {
            freedoms: if loose { 2 } else { 1 },
            misfit,
            force: size(link) * scale,
            link: (misfit > 1e-12).then_some(link),
            moment: moment * scale,
            stiffness: stiffness * scale,
        })
    }

    /// Forces of the links that hold each other, as a unit vector: that of ride height without what the coordinates take of it.
    fn stress<const N: usize>(&self, pose: &Pose) -> Option<[f64; MOST]>
    where
        Const<N>: DimMin<Const<N>, Output = Const<N>>,
    {
        let mut square = SMatrix::<f64, N, N>::zeros();
        let mut part = SVector::<f64, N>::zeros();
        for (held, stress) in pose.held.iter().zip(self.stress) {
            let row = SVector::<f64, N>::from_iterator(held.row);
            square += row * row.transpose();
            part += row * stress;
        }
        let taken = square.lu().solve(&part)?;
        let mut stress = self.stress;
        for (stress, held) in stress.iter_mut().zip(&pose.held) {
            for j in 0..N {
                *stress -= held.row[j] * taken[j];
            }
        }
        let size = stress.iter().map(|on| on * on).sum::<f64>().sqrt();
        Some(stress.map(|on| on / size))
    }
}
