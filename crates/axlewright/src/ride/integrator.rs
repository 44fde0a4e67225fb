//! Motion of what is not linear, by a library that chooses its steps. No event is looked for: ground and stop are part of the forces.

use crate::{Error, Result};
use differential_equations::methods::{DormandPrince, ExplicitRungeKutta, Ordinary};
use differential_equations::ode::{ODE, OrdinaryNumericalMethod};
use differential_equations::status::Status;

/// The pair of Dormand and Prince, orders 5 and 4. Each row is the end of a step: what the library (0.7.0) interpolates within one is an order worse than it should be.
pub(super) struct Integrator<const N: usize>(
    ExplicitRungeKutta<Ordinary, DormandPrince, f64, [f64; N], 5, 7, 7>,
);

struct Motion<F>(F);

impl<const N: usize, F: Fn(f64, &[f64; N]) -> [f64; N]> ODE<f64, [f64; N]> for Motion<F> {
    fn diff(&self, time: f64, state: &[f64; N], slope: &mut [f64; N]) {
        *slope = self.0(time, state);
    }
}

impl<const N: usize> Integrator<N> {
    /// Each step is off by `tolerance` in each part of the state at the most, as it estimates itself; `step` is the one to try first.
    pub(super) fn new(step: f64, tolerance: f64) -> Self {
        // The library holds the root mean square, which one part alone exceeds by the root of their number.
        let each = tolerance / (N as f64).sqrt();
        Self(ExplicitRungeKutta::dopri5().rtol(0.0).atol(each).h0(step).max_steps(usize::MAX))
    }

    /// Begins at a time; again where the slope jumps, with the step that was reached.
    pub(super) fn start(
        &mut self,
        slope: impl Fn(f64, &[f64; N]) -> [f64; N],
        time: f64,
        state: &[f64; N],
    ) -> Result<()> {
        let step = self.0.h();
        self.0.init(&Motion(slope), time, f64::INFINITY, state).map_err(|_| lost(time))?;
        if step > 0.0 {
            self.0.set_h(step);
        }
        Ok(())
    }

    /// The state at a later time.
    pub(super) fn advance(
        &mut self,
        slope: impl Fn(f64, &[f64; N]) -> [f64; N],
        to: f64,
    ) -> Result<[f64; N]> {
        let motion = Motion(slope);
        while self.0.t() < to {
            let (time, step) = (self.0.t(), self.0.h());
            let last = step >= to - time;
            if last {
                self.0.set_h(to - time);
            }
            self.0.step(&motion).map_err(|_| lost(time))?;
            if matches!(self.0.status(), Status::RejectedStep) {
                if self.0.h() < 1e-12 {
                    return Err(lost(time));
                }
            } else if last {
                // A step cut short by the end says little of the next one.
                self.0.set_h(step.max(self.0.h()));
                break;
            }
        }
        Ok(*self.0.y())
    }
}

fn lost(time: f64) -> Error {
    Error::NoSolution {
        message: format!("the motion cannot be followed beyond {time} s: it changes too fast"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A swing of ten cycles, whose end is known, within a few times what its steps were allowed.
    #[test]
    fn a_swing_comes_back_and_a_tighter_tolerance_is_nearer() {
        let off = |tolerance| {
            let swing = |_: f64, y: &[f64; 2]| [y[1], -y[0]];
            let mut integrator = Integrator::new(0.1, tolerance);
            integrator.start(swing, 0.0, &[1.0, 0.0]).unwrap();
            let y = integrator.advance(swing, 10.0 * core::f64::consts::TAU).unwrap();
            (y[0] - 1.0).hypot(y[1])
        };
        assert!(off(1e-10) < 1e-7 && off(1e-10) < off(1e-6) / 100.0);
    }

    /// Rows do not change what is found beyond what the steps are allowed, nor does a new start.
    #[test]
    fn rows_and_a_new_start_are_the_same_motion() {
        let swing = |_: f64, y: &[f64; 2]| [y[1], -y[0]];
        let mut integrator = Integrator::new(0.1, 1e-10);
        let mut y = [1.0, 0.0];
        integrator.start(swing, 0.0, &y).unwrap();
        assert_eq!(integrator.advance(swing, 0.0).unwrap(), y);
        for row in 1..=100 {
            let time = f64::from(row) * 0.01;
            y = integrator.advance(swing, time).unwrap();
            assert!((y[0] - time.cos()).abs() < 1e-9 && (y[1] + time.sin()).abs() < 1e-9);
            if row == 50 {
                integrator.start(swing, time, &y).unwrap();
            }
        }
    }

    #[test]
    fn what_blows_up_or_is_no_number_is_refused() {
        let grows = |_: f64, y: &[f64; 1]| [y[0] * y[0]];
        let mut integrator = Integrator::new(0.1, 1e-9);
        integrator.start(grows, 0.0, &[1.0]).unwrap();
        let said = integrator.advance(grows, 2.0).unwrap_err().to_string();
        assert!(said.contains("beyond 0.99999") && said.ends_with("it changes too fast"), "{said}");
        let nothing = |_: f64, _: &[f64; 1]| [f64::NAN];
        let mut integrator = Integrator::new(0.1, 1e-9);
        integrator.start(nothing, 0.0, &[1.0]).unwrap();
        assert!(integrator.advance(nothing, 2.0).is_err());
    }
}
