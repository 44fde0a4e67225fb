//! The axle in balance on its springs at a heave and roll, and the range in which it is.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::pose::{Pose, Stance};
use super::prepared::PreparedLeafAxle;
use super::range::{Went, follow};
use super::spring::{Bent, End};
use crate::base::document::Stated;
use crate::suspension::kinematics::jet::Jet;
use crate::suspension::kinematics::solved::solved;
use crate::suspension::kinematics::vector::vector;
use crate::suspension::live_axle::parts::{AxleCoilOver, Strut};
use crate::suspension::parts::Point;
use crate::units::{Angle, Length};
use crate::{Error, Result, cannot, valid};

/// Accuracy, in metres, of the end of an axle's motion.
pub(super) const FINE: f64 = 1e-8;

/// Positions that are tried on one way at the most.
const TRIES: u32 = 1000;

/// A step of the pitch that is shorter is left out.
const SETTLED: f64 = 1e-12;

pub(super) fn locked(roll: Angle, end: End) -> Error {
    let why = end.sentence();
    match end {
        End::GivenUp => cannot!(roll; "is not decided: {why}"),
        _ => cannot!(roll; "cannot be reached at ride height: {why}"),
    }
}

/// Energy and force of a coil-over with this length between its eyes.
fn stored(coil_over: &AxleCoilOver, eyes: Jet) -> (Jet, f64) {
    let strut = Strut::of(coil_over, eyes.value);
    let (energy, force, rate) = match &coil_over.spring {
        Some(_) => (0.5 * strut.coil.si() * strut.used.si(), strut.force, strut.rate),
        None => (0.0, strut.gas, 0.0),
    };
    (eyes.chain([energy - strut.gas * eyes.value, -force, rate]), force)
}

pub(super) fn norm([x, y, z]: [Jet; 3]) -> Jet {
    (x.square() + y.square() + z.square()).root()
}

impl PreparedLeafAxle<'_> {
    /// The springs with the axle at this heave, roll and pitch, from bends that are near, and how it stands on them.
    pub(super) fn springs(
        &self,
        state: [f64; 3],
        near: [[f64; 2]; 2],
    ) -> core::result::Result<(Stance, [Bent; 2]), End> {
        solved();
        let [heave, roll, pitch] = Jet::variables(state);
        let stance = self.stance(heave, [roll.sine(), roll.cosine()], pitch);
        let angle = pitch + self.angle;
        let left = self.spring.at(stance.seats[0], angle, near[0])?;
        let right = if roll.value == 0.0 {
            left.mirrored()
        } else {
            self.spring.at(stance.seats[1], angle, near[1])?
        };
        Ok((stance, [left, right]))
    }

    /// The energy of springs and coils, less the work of a force forward at the ground.
    pub(super) fn energy(&self, state: [f64; 3], stance: &Stance, springs: &[Bent; 2], traction: f64) -> Jet {
        if traction == 0.0 && !self.model.coil_over.is_given() {
            return self.spring.energy(&springs[0]) + self.spring.energy(&springs[1]);
        }
        self.stand(state, stance, *springs, traction).energy
    }

    /// Position of the axle at the seats of its springs.
    pub(super) fn stance(&self, heave: Jet, lean: [Jet; 2], pitch: Jet) -> Stance {
        let tilt = [pitch.sine(), pitch.cosine()];
        let [along, over] = self.seat;
        let [sine, cosine] = lean;
        let forward = tilt[1] * along - tilt[0] * over;
        let up = tilt[0] * along + tilt[1] * over;
        let z = heave + self.centre[1];
        let seats = [0.5, -0.5].map(|side| z + sine * (side * self.base) + cosine * up);
        Stance { z, lean, tilt, forward, up, seats }
    }

    /// The axle on both springs as they are bent.
    pub(super) fn stand(
        &self,
        [heave, roll, pitch]: [f64; 3],
        stance: &Stance,
        [left, right]: [Bent; 2],
        traction: f64,
    ) -> Pose {
        let Stance { z, lean, tilt, forward, up, .. } = *stance;
        let [sine, cosine] = lean;
        let steer = ((right.seat - left.seat) * (cosine * self.base).inverse()).arcsine();
        let x = (left.seat + right.seat) * 0.5 - steer.cosine() * forward - steer.sine() * sine * up;
        let [eye_x, eye_z] = [(left.eye[0] + right.eye[0]) * 0.5, (left.eye[1] + right.eye[1]) * 0.5];
        let [fixed_x, fixed_z] = self.spring.fixed_eye;
        let line = (x + -fixed_x) * (eye_x + -fixed_x).inverse() * (eye_z + -fixed_z) + fixed_z;
        let y = sine * cosine.inverse() * (line - z);
        let mut on =
            Pose { heave, roll, pitch, left, right, steer, x, y, z, line, lean, tilt, ..Pose::default() };
        if let Stated::Given(coil_over) = &self.model.coil_over {
            for (place, side) in [1.0, -1.0].into_iter().enumerate() {
                let apart = self.apart(&on, &coil_over.body_eye, &coil_over.axle_eye, side);
                let eyes = norm(apart);
                let (energy, force) = stored(coil_over, eyes);
                let upright = -apart[2].value / eyes.value;
                (on.coils[place], on.eyes[place]) = (energy, eyes);
                (on.uprights[place], on.lifts[place]) = (upright, force * upright);
            }
        }
        self.charge(&mut on, traction);
        on
    }

    /// The energy of springs and coils, less the work of a force forward at the ground, and how the pitch follows from it.
    pub(super) fn charge(&self, on: &mut Pose, traction: f64) {
        for bent in [&mut on.left, &mut on.right] {
            bent.energy = self.spring.energy(bent);
        }
        on.energy = on.left.energy + on.right.energy;
        if traction != 0.0 {
            let [.., pitch] = Jet::variables([on.heave, on.roll, on.pitch]);
            on.energy = on.energy - (on.x + pitch * self.drop) * traction;
        }
        if self.model.coil_over.is_given() {
            on.energy = on.energy + on.coils[0] + on.coils[1];
        }
        let [_, _, zt, _, rt, tt] = on.energy.second;
        on.pitch_rates = [-zt / tt, -rt / tt];
    }

    /// The axle with the pitch that balances it, from a position that is near and a first guess of the pitch.
    pub(super) fn balance(
        &self,
        from: &Pose,
        [heave, roll, guess]: [f64; 3],
        traction: f64,
    ) -> core::result::Result<Pose, End> {
        self.balance_near([heave, roll, guess], from.bends_at([heave, roll, guess]), traction)
    }

    /// This balance, started from bends that are near.
    pub(super) fn balance_near(
        &self,
        [heave, roll, mut pitch]: [f64; 3],
        near: [[f64; 2]; 2],
        traction: f64,
    ) -> core::result::Result<Pose, End> {
        let (mut stance, mut springs) = self.springs([heave, roll, pitch], near)?;
        for _ in 0..30 {
            let energy = self.energy([heave, roll, pitch], &stance, &springs, traction);
            let (turn, stiffness) = (energy.first[2], energy.second[5]);
            if stiffness.is_nan() || stiffness <= 0.0 {
                return Err(End::Pitch);
            }
            let mut step = (-turn / stiffness).clamp(-0.1, 0.1);
            if step.abs() < SETTLED && springs.iter().all(|spring| spring.exact) {
                return Ok(self.stand([heave, roll, pitch], &stance, springs, traction));
            }
            let there = |step: f64| {
                self.springs(
                    [heave, roll, pitch + step],
                    springs.map(|spring| spring.ahead([0.0, 0.0, step])),
                )
            };
            let mut next = there(step);
            while next.is_err() && step.abs() > 1e-4 {
                step *= 0.5;
                next = there(step);
            }
            (stance, springs) = next?;
            pitch += step;
        }
        Err(End::Pitch)
    }

    /// The axle at a heave and roll: at once from ride height, otherwise step by step.
    pub(super) fn pose(&self, heave: f64, roll: f64) -> core::result::Result<Pose, End> {
        let rest = &self.rest;
        if [heave, roll] == [0.0; 2] && rest.energy.first[2].abs() < SETTLED * rest.energy.second[5] {
            return Ok(*rest);
        }
        self.balance(rest, [heave, roll, rest.pitch_at(heave, roll)], 0.0).or_else(|_| {
            let (on, _, end) = self.walk(heave, roll, FINE)?;
            end.map_or(on.ok_or(End::GivenUp), Err)
        })
    }

    /// The axle as far towards a heave as it goes, to so many metres: how it stands there, the heave, and what ends it before.
    fn walk(
        &self,
        heave: f64,
        roll: f64,
        fine: f64,
    ) -> core::result::Result<(Option<Pose>, f64, Option<End>), End> {
        let rest = &self.rest;
        let on = self.balance(rest, [0.0, roll, rest.pitch_at(0.0, roll)], 0.0)?;
        match follow(self, &on, heave, fine) {
            Some(Went::There(on)) => Ok((Some(*on), heave, None)),
            Some(Went::Ended(place, end)) => Ok((None, place, Some(end))),
            None => self.step_by_step(on, heave, fine),
        }
    }

    /// This balance in steps of the heave: slow near the end, for bends of a half that do not lead there.
    #[inline(never)]
    fn step_by_step(
        &self,
        mut on: Pose,
        heave: f64,
        fine: f64,
    ) -> core::result::Result<(Option<Pose>, f64, Option<End>), End> {
        let roll = on.roll;
        let whole = self.spring.fixed.lever() + self.spring.shackle.lever();
        let longest = whole / 64.0;
        // A step that fails is halved, and doubled again after two that do not.
        let (mut good, mut step, mut longer, mut end) = (0.0, longest, longest, None);
        for _ in 0..TRIES {
            if good == heave || step <= fine {
                return Ok((Some(on), good, end.filter(|_| good != heave)));
            }
            let to = if (heave - good).abs() <= step { heave } else { good + step.copysign(heave) };
            // The pitch on its tangent, or further: near the end there is no axle with the pitch from before.
            let turn = on.pitch_rates[0] * (to - good);
            let there = |times: f64| self.balance(&on, [to, roll, on.pitch + times * turn], 0.0);
            match there(1.0).or_else(|_| there(2.0)) {
                Ok(next) => (on, good, step, longer) = (next, to, longer, longest.min(2.0 * longer)),
                Err(found) => (step, longer, end) = (0.5 * step, 0.5 * step, Some(found)),
            }
        }
        Err(End::GivenUp)
    }

    /// Least and largest heave, and what ends them.
    pub(super) fn range(&self, roll: f64, fine: f64) -> core::result::Result<[(f64, End); 2], End> {
        let whole = self.spring.fixed.lever() + self.spring.shackle.lever();
        let (droop, bump) = (self.walk(-whole, roll, fine)?, self.walk(whole, roll, fine)?);
        Ok([droop, bump].map(|(_, heave, end)| (heave, end.unwrap_or(End::FixedHalf))))
    }

    /// Reason why the springs do not reach this position, and the travel that they have.
    pub(super) fn beyond(&self, heave: Length, roll: Angle) -> Error {
        let [(droop, droop_end), (bump, bump_end)] = match self.range(roll.si(), FINE) {
            Ok(range) => range,
            Err(end) => return locked(roll, end),
        };
        let end = if heave.si() < 0.0 { droop_end } else { bump_end };
        let ([droop, bump], why) = ([droop, bump].map(Length::from_si), end.sentence());
        cannot!(droop <= heave <= bump, roll; "cannot be reached: {why}")
    }

    /// The axle where it is asked for.
    pub(super) fn reached(&self, heave: Length, roll: Angle) -> Result<Pose> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no wheel travels 10 m";
            roll: (-0.5) <= .. <= 0.5 ; "plausibility limit: no axle leans 29 deg against its body";
        }
        let solve = || self.pose(heave.si(), roll.si()).map_err(|_| self.beyond(heave, roll));
        #[cfg(feature = "sheet")]
        if let Some(places) = &self.places {
            return places.at([heave.si(), roll.si()], solve);
        }
        solve()
    }

    /// From a point of the body to one of the axle, both on the left (1) or the right (-1).
    pub(super) fn apart(&self, on: &Pose, body: &Point, axle: &Point, side: f64) -> [Jet; 3] {
        let (body, axle) = (body.vector(), axle.vector());
        let arm = vector(axle.x - self.centre[0], side * axle.y, axle.z - self.centre[1]);
        let [x, y, z] = self.carried(on, arm);
        [x + -body.x, y + -side * body.y, z + -body.z]
    }
}
