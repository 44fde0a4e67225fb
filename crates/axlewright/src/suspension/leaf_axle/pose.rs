//! The axle where it stands, and how that changes with heave, roll and pitch.

use super::spring::Bent;
use crate::suspension::kinematics::jet::Jet;

/// Axle at the seats of its springs: height of its middle, sines and cosines of its lean and of its pitch, the way from its middle to
/// a seat, forward and up, and the heights of the seats, the left one first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stance {
    pub(super) z: Jet,
    pub(super) lean: [Jet; 2],
    pub(super) tilt: [Jet; 2],
    pub(super) forward: Jet,
    pub(super) up: Jet,
    pub(super) seats: [Jet; 2],
}

/// The axle at one heave, roll and pitch, with derivatives by these three.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::suspension) struct Pose {
    pub(super) heave: f64,
    pub(super) roll: f64,
    pub(super) pitch: f64,
    /// Change of the pitch with heave and with roll.
    pub(in crate::suspension) pitch_rates: [f64; 2],
    pub(super) energy: Jet,
    pub(super) left: Bent,
    pub(super) right: Bent,
    /// The left and the right coil-over: energy, length between the eyes, cosine of its lean, vertical force.
    pub(in crate::suspension) coils: [Jet; 2],
    pub(in crate::suspension) eyes: [Jet; 2],
    pub(super) uprights: [f64; 2],
    pub(in crate::suspension) lifts: [f64; 2],
    /// Turn to the left.
    pub(in crate::suspension) steer: Jet,
    /// Position of the axle's middle.
    pub(in crate::suspension) x: Jet,
    pub(in crate::suspension) y: Jet,
    pub(in crate::suspension) z: Jet,
    /// Line between the eyes, at the axle.
    pub(super) line: Jet,
    /// Sine and cosine of the axle's lean against the body, positive with its left up.
    pub(in crate::suspension) lean: [Jet; 2],
    /// Tilt of its pitch.
    pub(in crate::suspension) tilt: [Jet; 2],
}

impl Pose {
    /// The pitch at another heave and roll, nearly.
    pub(super) fn pitch_at(&self, heave: f64, roll: f64) -> f64 {
        let [by_heave, by_roll] = self.pitch_rates;
        self.pitch + by_heave * (heave - self.heave) + by_roll * (roll - self.roll)
    }

    /// The bends of both springs at another heave, roll and pitch, nearly.
    pub(super) fn bends_at(&self, [heave, roll, pitch]: [f64; 3]) -> [[f64; 2]; 2] {
        let by = [heave - self.heave, roll - self.roll, pitch - self.pitch];
        [self.left.ahead(by), self.right.ahead(by)]
    }

    /// Change with heave, the pitch following.
    pub(in crate::suspension) fn by_heave(&self, of: Jet) -> f64 {
        let [heave, _, pitch] = of.first;
        heave + pitch * self.pitch_rates[0]
    }

    /// Tangent rate of both springs in heave, the pitch following.
    pub(super) fn axle_rate(&self) -> f64 {
        let [heave, _, turn, _, _, pitch] = self.energy.second;
        heave - turn * turn / pitch
    }

    /// Change with roll, the pitch following.
    pub(super) fn by_roll(&self, of: Jet) -> f64 {
        let [_, roll, pitch] = of.first;
        roll + pitch * self.pitch_rates[1]
    }
}
