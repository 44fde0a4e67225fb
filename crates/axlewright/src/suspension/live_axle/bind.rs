//! Forces in links that bind.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::frame::{Each, ROLL, Z};
use super::linkage::{AxleLinkage, Pose, SLACK, inverse};
use crate::suspension::kinematics::lanes::Lanes;
use core::array::from_fn;
use nalgebra::{Const, DimMin, SMatrix, SVector};

/// A redundant link that binds.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Bind {
    pub(super) freedoms: i64,
    /// Length by which the links miss each other.
    pub(super) misfit: f64,
    /// The largest tension or compression, and of which link; of rigid links only which one misses most.
    pub(super) force: f64,
    pub(super) link: Option<usize>,
    pub(super) moment: f64,
    pub(super) stiffness: f64,
}

impl AxleLinkage {
    /// Effect of a redundant link here.
    pub(super) fn bind(&self, pose: &Pose) -> Option<Bind> {
        if self.redundant() == 0 {
            return Some(Bind { freedoms: 2, ..Bind::default() });
        }
        let stress = if self.cranked { self.stress::<5>(pose) } else { self.stress::<4>(pose) }?;
        let held = &pose.held;
        let misfit = stress.dot(held.stretch).abs();
        // In balance with heave and roll, too: one rank less.
        let loose = stress.dot(held.row[Z]).abs().max(stress.dot(held.row[ROLL]).abs()) < SLACK;
        let scale = self.scale().unwrap_or(f64::NAN);
        let sizes = if scale.is_nan() { held.stretch } else { pose.forces }.map(f64::abs).0;
        let link = (1..self.links.len()).fold(0, |most, at| if sizes[at] > sizes[most] { at } else { most });
        Some(Bind {
            freedoms: if loose { 2 } else { 1 },
            misfit,
            force: sizes[link] * scale,
            link: (misfit > 1e-12).then_some(link),
            moment: pose.forces.dot(held.row[ROLL]) * scale,
            stiffness: pose.moment_rate * scale,
        })
    }

    /// Forces of the links that hold each other, as a unit vector: that of ride height without what the coordinates take of it.
    fn stress<const N: usize>(&self, pose: &Pose) -> Option<Each>
    where
        Const<N>: DimMin<Const<N>, Output = Const<N>>,
    {
        let row = &pose.held.row;
        let held = Lanes(from_fn(|place| if place < self.links.len() { 1.0 } else { 0.0 }));
        let square = SMatrix::<f64, N, N>::from_fn(|j, k| (row[j] * held).dot(row[k]));
        let part = SVector::<f64, N>::from_fn(|j, _| row[j].dot(self.stress));
        let taken = inverse(&square)?.0 * part;
        let mut stress = self.stress;
        for (row, taken) in row.iter().zip(&taken) {
            stress = stress - *row * held * *taken;
        }
        let size = stress.dot(stress).sqrt();
        Some(stress.map(|on| on / size))
    }
}
