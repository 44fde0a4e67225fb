//! Masses on springs and dampers over a road, linear: the modes, the response and the exact motion of every car here.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::matrix::{Eliminate, Square};
use crate::base::stop::go_on;
use crate::ride::road::course::{Course, Piece};
use crate::{Error, Result, cannot};
use core::array::from_fn;
use nalgebra::{Complex, SMatrix, SVector};

/// `m q'' + C q' + K q = k_t z_r + c_t z_r'`: first the coordinates of the body, then the height of each wheel.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::ride) struct Linear<const N: usize, const W: usize> {
    mass: SVector<f64, N>,
    stiffness: SMatrix<f64, N, N>,
    damping: SMatrix<f64, N, N>,
    tyres: [Tyre; W],
}

/// Rate and damping of a tyre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::ride) struct Tyre {
    pub(in crate::ride) rate: f64,
    pub(in crate::ride) damping: f64,
}

/// One natural mode.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::ride) struct Mode<const N: usize> {
    /// Modulus of the roots.
    pub(in crate::ride) angular_velocity: f64,
    pub(in crate::ride) damping_ratio: f64,
    /// Share of the kinetic energy in each coordinate.
    pub(in crate::ride) shares: [f64; N],
}

/// State at a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::ride) struct Instant<const N: usize, const W: usize> {
    pub(in crate::ride) time: f64,
    pub(in crate::ride) road: [f64; W],
    pub(in crate::ride) place: SVector<f64, N>,
    /// Acceleration of the body's coordinates; that of the wheels is not needed.
    pub(in crate::ride) acceleration: SVector<f64, N>,
    pub(in crate::ride) tyre_load: [f64; W],
}

impl<const N: usize, const W: usize> Linear<N, W> {
    /// Masses on their tyres, without springs between them.
    pub(in crate::ride) fn new(mass: [f64; N], tyres: [Tyre; W]) -> Self {
        let (mut stiffness, mut damping) = (SMatrix::zeros(), SMatrix::zeros());
        for (wheel, tyre) in tyres.iter().enumerate() {
            let i = N - W + wheel;
            stiffness[(i, i)] = tyre.rate;
            damping[(i, i)] = tyre.damping;
        }
        Self { mass: SVector::from(mass), stiffness, damping, tyres }
    }

    /// Adds a spring and a damper whose compression is `travel` times the coordinates.
    pub(in crate::ride) fn with(mut self, travel: &SVector<f64, N>, rate: f64, damping: f64) -> Self {
        let square = travel * travel.transpose();
        self.stiffness += square * rate;
        self.damping += square * damping;
        self
    }

    /// An angular velocity that no mode exceeds by much.
    fn fastest(&self) -> f64 {
        (0..N).map(|i| self.stiffness[(i, i)] / self.mass[i]).fold(0.0, f64::max).sqrt()
    }

    /// Angular velocities of possible resonances: those of each coordinate with all others held.
    pub(in crate::ride) fn resonances(&self) -> [f64; N] {
        from_fn(|i| (self.stiffness[(i, i)] / self.mass[i]).sqrt())
    }

    /// Natural modes, the slowest first: eigenvalues of the state matrix; `S` is twice the number of coordinates.
    pub(in crate::ride) fn modes<const S: usize>(&self) -> Result<Vec<Mode<N>>>
    where
        SMatrix<f64, S, S>: Square,
        SMatrix<Complex<f64>, N, N>: Eliminate<N, 1>,
    {
        // Coordinates times the root of their mass, and time in units of `1 / fastest`, so that all entries are near 1.
        let (fastest, root) = (self.fastest(), self.mass.map(f64::sqrt));
        let scaled = |matrix: &SMatrix<f64, N, N>, by: f64| {
            SMatrix::<f64, N, N>::from_fn(|i, j| matrix[(i, j)] / (root[i] * root[j] * by))
        };
        let (stiffness, damping) =
            (scaled(&self.stiffness, fastest * fastest), scaled(&self.damping, fastest));
        let mut state = SMatrix::<f64, S, S>::zeros();
        for i in 0..N {
            state[(i, N + i)] = 1.0;
            for j in 0..N {
                state[(N + i, j)] = -stiffness[(i, j)];
                state[(N + i, N + j)] = -damping[(i, j)];
            }
        }
        let found = state.eigenvalues().ok_or_else(no_modes)?;
        let is_damped = damping.iter().any(|entry| *entry != 0.0);
        let swings = |root: &Complex<f64>| root.im.abs() > 1e-7 * root.norm();
        let mut pairs: Vec<(Complex<f64>, Complex<f64>)> = found
            .iter()
            .filter(|root| swings(root) && root.im > 0.0)
            .map(|root| (*root, root.conj()))
            .collect();
        let still: Vec<Complex<f64>> = found.iter().filter(|root| !swings(root)).copied().collect();
        match still[..] {
            [] => {}
            [one, other] => pairs.push((one, other)),
            _ => {
                return Err(cannot!(
                    "two modes have no frequency of their own: they are damped so much that neither swings"
                ));
            }
        }
        let mut modes: Vec<Mode<N>> = pairs
            .iter()
            .map(|(one, other)| {
                let modulus = (one * other).norm().sqrt();
                // A damper only takes energy, and without one no mode loses any: what the eigenvalues show beyond that is rounding.
                let decays = is_damped && (one + other).re < 0.0;
                Mode {
                    angular_velocity: modulus * fastest,
                    damping_ratio: if decays { -(one + other).re / (2.0 * modulus) } else { 0.0 },
                    shares: shares(&stiffness, &damping, *one),
                }
            })
            .collect();
        modes.sort_by(|a, b| a.angular_velocity.total_cmp(&b.angular_velocity));
        Ok(modes)
    }

    /// Response of each coordinate to the road under each wheel, over the road's height, at `s`.
    pub(in crate::ride) fn gains(&self, s: Complex<f64>) -> SMatrix<Complex<f64>, N, W>
    where
        SMatrix<Complex<f64>, N, N>: Eliminate<N, W>,
    {
        let whole = SMatrix::<Complex<f64>, N, N>::from_fn(|i, j| {
            let own = if i == j { s * s * self.mass[i] } else { Complex::ZERO };
            own + s * self.damping[(i, j)] + self.stiffness[(i, j)]
        });
        let mut right = SMatrix::<Complex<f64>, N, W>::zeros();
        for wheel in 0..W {
            right[(N - W + wheel, wheel)] = self.tyre(wheel, s);
        }
        // With damping it is never singular. Without damping it is singular at a resonance, and the amplitude has no bound there.
        whole.eliminate(&right).unwrap_or_else(|| SMatrix::from_element(Complex::new(f64::INFINITY, 0.0)))
    }

    /// Complex rate of a tyre.
    pub(in crate::ride) fn tyre(&self, wheel: usize, s: Complex<f64>) -> Complex<f64> {
        s * self.tyres[wheel].damping + self.tyres[wheel].rate
    }

    /// Row after row along a course from rest, exact except for rounding; `S` is twice the number of coordinates and wheels.
    ///
    /// The states are height and slope of the road at each wheel, the coordinates, and their velocities. `c_t / m_u z_r` is taken off the velocity of the wheel, so that a step needs no
    /// impulse. Rates and velocities are divided by `fastest`.
    #[inline]
    pub(in crate::ride) fn motion<const S: usize>(
        &self,
        course: &Course<W>,
        mut row: impl FnMut(&Instant<N, W>),
    ) -> Result<()>
    where
        SMatrix<f64, S, S>: Square,
        SMatrix<Complex<f64>, N, N>: Eliminate<N, W>,
    {
        let fastest = self.fastest();
        let carried: [f64; W] = from_fn(|wheel| self.tyres[wheel].damping / self.mass[N - W + wheel]);
        let mut state = SVector::<f64, S>::zeros();
        let rest = course.rest();
        if rest != [0.0; W] {
            let still = self.gains(Complex::ZERO).map(|gain| gain.re) * SVector::from(rest);
            for i in 0..N {
                state[2 * W + i] = still[i];
            }
            for wheel in 0..W {
                state[2 * W + 2 * N - W + wheel] = -carried[wheel] * rest[wheel] / fastest;
            }
        }
        let mut known = Known::default();
        course.walk(|leg| {
            let pieces = &leg.pieces;
            let road = |at: f64| pieces.map(|piece| piece.at(at));
            let whole = leg.whole.then(|| *known.whole(self, pieces, leg.duration));
            let mut on = state;
            for (from, to) in leg.steps() {
                go_on()?;
                if leg.duration > 0.0 {
                    for (wheel, (height, rate)) in road(from).into_iter().enumerate() {
                        on[wheel] = height;
                        on[W + wheel] = rate / fastest;
                    }
                    on = match &whole {
                        Some(exponential) => exponential * on,
                        None => part(&(self.state_matrix::<S>(pieces) * leg.duration), on),
                    };
                }
                if leg.row {
                    let under = road(to);
                    let place = SVector::<f64, N>::from_fn(|i, _| on[2 * W + i]);
                    let mut velocity = SVector::<f64, N>::from_fn(|i, _| fastest * on[2 * W + N + i]);
                    for (wheel, (height, _)) in under.iter().enumerate() {
                        velocity[N - W + wheel] += carried[wheel] * height;
                    }
                    let tyre_load = from_fn(|wheel| {
                        let (height, rate) = under[wheel];
                        let (tyre, i) = (self.tyres[wheel], N - W + wheel);
                        tyre.rate * (height - place[i]) + tyre.damping * (rate - velocity[i])
                    });
                    let acceleration = SVector::<f64, N>::from_fn(|i, _| {
                        let parts = (0..N)
                            .map(|j| self.stiffness[(i, j)] * place[j] + self.damping[(i, j)] * velocity[j]);
                        if i < N - W { -parts.sum::<f64>() / self.mass[i] } else { 0.0 }
                    });
                    let road = under.map(|(height, _)| height);
                    row(&Instant { time: to, road, place, acceleration, tyre_load });
                }
            }
            state = on;
            Ok(())
        })
    }

    /// Matrix of the motion over a road of these pieces.
    fn state_matrix<const S: usize>(&self, pieces: &[Piece; W]) -> SMatrix<f64, S, S> {
        let fastest = self.fastest();
        let mut matrix = SMatrix::<f64, S, S>::zeros();
        let (place, speed) = (2 * W, 2 * W + N);
        for (wheel, piece) in pieces.iter().enumerate() {
            matrix[(wheel, W + wheel)] = fastest;
            matrix[(W + wheel, wheel)] = -piece.stiffness / fastest;
        }
        for i in 0..N {
            let inertia = self.mass[i] * fastest;
            matrix[(place + i, speed + i)] = fastest;
            for j in 0..N {
                matrix[(speed + i, place + j)] = -self.stiffness[(i, j)] / inertia;
                matrix[(speed + i, speed + j)] = -self.damping[(i, j)] * fastest / inertia;
            }
            for (wheel, tyre) in self.tyres.iter().enumerate() {
                let own = N - W + wheel;
                let carried = tyre.damping / self.mass[own];
                matrix[(speed + i, wheel)] = -self.damping[(i, own)] * carried / inertia;
                if i == own {
                    matrix[(place + i, wheel)] = carried;
                    matrix[(speed + i, wheel)] += tyre.rate / inertia;
                }
            }
        }
        matrix
    }
}

pub(in crate::ride) fn no_modes() -> Error {
    cannot!("the modes are not found: the eigenvalues do not settle")
}

/// Kinetic energy of each coordinate in a mode: the null vector of the pencil at its root.
fn shares<const N: usize>(
    stiffness: &SMatrix<f64, N, N>,
    damping: &SMatrix<f64, N, N>,
    root: Complex<f64>,
) -> [f64; N]
where
    SMatrix<Complex<f64>, N, N>: Eliminate<N, 1>,
{
    // Beside the root, not at it, to avoid a division by zero.
    let s = root * (1.0 + 1e-9);
    let pencil = || {
        SMatrix::<Complex<f64>, N, N>::from_fn(|i, j| {
            let own = if i == j { s * s } else { Complex::ZERO };
            own + s * damping[(i, j)] + stiffness[(i, j)]
        })
    };
    // An irregular vector, so that no mode is orthogonal to it.
    let mut shape = SMatrix::<Complex<f64>, N, 1>::from_fn(|i, _| Complex::new(1.0, 0.37 * (i * i) as f64));
    for _ in 0..3 {
        if let Some(next) = pencil().eliminate(&shape) {
            let size = next.iter().map(Complex::norm_sqr).sum::<f64>().sqrt();
            if size.is_finite() && size > 0.0 {
                shape = next.map(|x| x / size);
            }
        }
    }
    let whole: f64 = shape.iter().map(Complex::norm_sqr).sum();
    from_fn(|i| shape[i].norm_sqr() / whole)
}

/// Exponentials of a whole time step, kept for reuse, by the curvature of the road under each wheel.
struct Known<const W: usize, const S: usize>(Vec<([f64; W], SMatrix<f64, S, S>)>);

impl<const W: usize, const S: usize> Default for Known<W, S> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<const W: usize, const S: usize> Known<W, S>
where
    SMatrix<f64, S, S>: Square,
{
    fn whole<const N: usize>(
        &mut self,
        car: &Linear<N, W>,
        pieces: &[Piece; W],
        duration: f64,
    ) -> &SMatrix<f64, S, S> {
        let stiffness = pieces.map(|piece| piece.stiffness);
        let place = self.0.iter().position(|on| on.0 == stiffness).unwrap_or_else(|| {
            self.0.push((stiffness, (car.state_matrix::<S>(pieces) * duration).exponential()));
            self.0.len() - 1
        });
        &self.0[place].1
    }
}

/// A part of a step, used once: the series of the exponential applied to the state, if the part is short.
fn part<const S: usize>(matrix: &SMatrix<f64, S, S>, mut state: SVector<f64, S>) -> SVector<f64, S>
where
    SMatrix<f64, S, S>: Square,
{
    let size = (0..S).map(|j| matrix.column(j).iter().map(|x| x.abs()).sum()).fold(0.0, f64::max);
    if size < 40.0 {
        series(matrix, size, &mut state);
        return state;
    }
    matrix.exponential() * state
}

/// `exp(matrix) state`, in parts whose matrix is below 1.
fn series<const S: usize>(matrix: &SMatrix<f64, S, S>, size: f64, state: &mut SVector<f64, S>) {
    let parts = size.ceil().max(1.0);
    for _ in 0..parts as usize {
        let mut term = *state;
        for power in 1..=18 {
            term = matrix * term / (parts * f64::from(power));
            *state += term;
        }
    }
}
