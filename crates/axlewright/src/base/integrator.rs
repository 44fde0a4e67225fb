//! Motion by a library that chooses its steps, with events: a gear shift, a finish line, a thermostat.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::error::{Error, Result};
use super::numeric;
use super::stop::go_on;
use crate::cannot;
use crate::units::Time;
use differential_equations::methods::{DormandPrince, ExplicitRungeKutta, Ordinary};
use differential_equations::ode::{ODE, OrdinaryNumericalMethod};
use differential_equations::status::Status;

/// The pair of Dormand and Prince, orders 5 and 4.
type Pair<const N: usize> = ExplicitRungeKutta<Ordinary, DormandPrince, f64, [f64; N], 5, 7, 7>;

/// A motion in steps. Each row and each event is the end of a step: the library's interpolation (0.7.0) within a step is an order too inaccurate.
pub(crate) struct Integrator<const N: usize>(Pair<N>, Steps);

/// Steps that may still be tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Steps(u64);

/// Least share of a step: the library refuses steps ten times shorter.
const LEAST_PART: f64 = 1e-13;

/// State that a motion has reached.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Reached<const N: usize, const E: usize> {
    pub(crate) time: f64,
    pub(crate) state: [f64; N],
    /// The surfaces that the state has passed; none at the end of the time.
    pub(crate) passed: [bool; E],
}

struct Motion<F>(F);

impl<const N: usize, F: Fn(f64, &[f64; N]) -> [f64; N]> ODE<f64, [f64; N]> for Motion<F> {
    fn diff(&self, time: f64, state: &[f64; N], slope: &mut [f64; N]) {
        *slope = self.0(time, state);
    }
}

impl<const N: usize> Integrator<N> {
    /// `tolerance` bounds the estimated error of each step in each part of the state; `step` is the first to try.
    pub(crate) fn new(step: f64, tolerance: f64) -> Self {
        // The library bounds the root mean square. One part alone may exceed it by the root of the number of parts.
        Self(pair(step, tolerance / (N as f64).sqrt()), Steps(u64::MAX))
    }

    /// This motion with so many steps to try at the most: then `advance` refuses, and `is_spent` tells why. Steps are counted, not seconds,
    /// so every machine refuses the same motions.
    pub(crate) fn within_steps(mut self, most: u64) -> Self {
        self.1 = Steps(most);
        self
    }

    /// Allows so many steps more.
    pub(crate) fn grant(&mut self, more: u64) {
        self.1 = Steps(self.1.0.saturating_add(more));
    }

    /// Time that is reached.
    pub(crate) fn time(&self) -> f64 {
        self.0.t()
    }

    /// True once all steps are tried.
    pub(crate) fn is_spent(&self) -> bool {
        self.1 == Steps(0)
    }

    /// Begins at a time; call again after a jump of the slope, with the step that was reached.
    pub(crate) fn start(
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

    /// The state at a later time, or at the first instant at which a surface is above zero.
    ///
    /// A surface that is above zero at the beginning ends the motion there, so the next call needs other surfaces or the same ones reversed. A surface that is above
    /// zero only within a step is missed. The state at the event is the end of a step of its own, as accurate as a row, and the surface is above zero there.
    pub(crate) fn advance<const E: usize>(
        &mut self,
        slope: impl Fn(f64, &[f64; N]) -> [f64; N],
        surfaces: impl Fn(f64, &[f64; N]) -> [f64; E],
        to: f64,
    ) -> Result<Reached<N, E>> {
        let motion = Motion(slope);
        let mut at = reached(&surfaces, self.0.t(), *self.0.y());
        while !at.passed.contains(&true) && to - at.time > LEAST_PART * self.0.h() {
            go_on()?;
            let step = self.0.h();
            let last = step >= to - at.time;
            if self.is_spent() {
                return Err(lost(at.time));
            }
            self.1 = Steps(self.1.0 - 1);
            if last {
                self.0.set_h(to - at.time);
            }
            self.0.step(&motion).map_err(|_| lost(at.time))?;
            if matches!(self.0.status(), Status::RejectedStep) {
                if self.0.h() < 1e-12 {
                    return Err(lost(at.time));
                }
                continue;
            }
            let end = reached(&surfaces, if last { to } else { self.0.t() }, *self.0.y());
            if last {
                // A step that the end cuts short says little about the next one.
                self.0.set_h(step.max(self.0.h()));
            }
            if end.passed.contains(&true) {
                at = Self::first(&motion, &surfaces, at, end)?;
                self.start(&motion.0, at.time, &at.state)?;
            } else {
                at = end;
            }
        }
        Ok(at)
    }

    /// The first instant within a step at which a surface is above zero.
    fn first<const E: usize>(
        motion: &Motion<impl Fn(f64, &[f64; N]) -> [f64; N]>,
        surfaces: &impl Fn(f64, &[f64; N]) -> [f64; E],
        from: Reached<N, E>,
        mut end: Reached<N, E>,
    ) -> Result<Reached<N, E>> {
        // Parts of an accepted step, so none is refused.
        let mut parts = pair(end.time - from.time, f64::MAX);
        let mut part = |step: f64| -> Result<Reached<N, E>> {
            parts.init(motion, from.time, f64::INFINITY, &from.state).map_err(|_| lost(from.time))?;
            parts.set_h(step);
            parts.step(motion).map_err(|_| lost(from.time))?;
            Ok(reached(surfaces, from.time + step, *parts.y()))
        };
        for surface in 0..E {
            // If an earlier surface has ended the step, this one may not be passed any more.
            if !end.passed[surface] {
                continue;
            }
            let value = |at: &Reached<N, E>| surfaces(at.time, &at.state)[surface];
            let whole = end.time - from.time;
            let of_part = |step: f64| match step {
                0.0 => value(&from).min(-f64::MIN_POSITIVE),
                _ if step == whole => value(&end),
                _ => part(step).map_or(f64::NAN, |at| value(&at)),
            };
            let mut step = numeric::root("event", of_part, 0.0, whole, 0.0)?.max(LEAST_PART * whole);
            // The root may lie one rounding error before the surface.
            let mut ahead = f64::EPSILON * from.time.abs().max(whole);
            while step < whole {
                let at = part(step)?;
                if at.passed[surface] {
                    end = at;
                    break;
                }
                step += ahead;
                ahead *= 2.0;
            }
        }
        Ok(end)
    }
}

fn pair<const N: usize>(step: f64, tolerance: f64) -> Pair<N> {
    Pair::dopri5().rtol(0.0).atol(tolerance).h0(step).max_steps(usize::MAX)
}

fn reached<const N: usize, const E: usize>(
    surfaces: impl Fn(f64, &[f64; N]) -> [f64; E],
    time: f64,
    state: [f64; N],
) -> Reached<N, E> {
    let passed = surfaces(time, &state).map(|value| value > 0.0);
    Reached { time, state, passed }
}

fn lost(time: f64) -> Error {
    let time = Time::from_si(time);
    cannot!(time; "is as far as the motion can be followed: it changes too fast")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn swing(_: f64, y: &[f64; 2]) -> [f64; 2] {
        [y[1], -y[0]]
    }

    fn nothing<const N: usize>(_: f64, _: &[f64; N]) -> [f64; 0] {
        []
    }

    /// Ten cycles of an oscillation with a known end: the error is within a few times the tolerance of its steps.
    #[test]
    fn a_swing_comes_back_and_a_tighter_tolerance_is_nearer() {
        let off = |tolerance| {
            let mut integrator = Integrator::new(0.1, tolerance);
            integrator.start(swing, 0.0, &[1.0, 0.0]).unwrap();
            let y = integrator.advance(swing, nothing, 10.0 * core::f64::consts::TAU).unwrap().state;
            (y[0] - 1.0).hypot(y[1])
        };
        assert!(off(1e-10) < 1e-7 && off(1e-10) < off(1e-6) / 100.0);
    }

    /// Rows change the result by no more than the tolerance of the steps, nor does a restart.
    #[test]
    fn rows_and_a_new_start_are_the_same_motion() {
        let mut integrator = Integrator::new(0.1, 1e-10);
        let mut y = [1.0, 0.0];
        integrator.start(swing, 0.0, &y).unwrap();
        assert_eq!(integrator.advance(swing, nothing, 0.0).unwrap().state, y);
        for row in 1..=100 {
            let time = f64::from(row) * 0.01;
            y = integrator.advance(swing, nothing, time).unwrap().state;
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
        let error = integrator.advance(grows, nothing, 2.0).unwrap_err();
        let Error::NoSolution(refusal) = &error else { panic!("{error}") };
        assert!((0.99999..1.0).contains(&refusal.arguments[0].value), "{refusal:?}");
        let said = error.to_string();
        assert!(said.starts_with("time = 1 s ") && said.ends_with("it changes too fast"), "{said}");
        let no_number = |_: f64, _: &[f64; 1]| [f64::NAN];
        let mut integrator = Integrator::new(0.1, 1e-9);
        integrator.start(no_number, 0.0, &[1.0]).unwrap();
        assert!(integrator.advance(no_number, nothing, 2.0).is_err());
    }

    /// Steps are counted, the refused ones too: as many as suffice change no bit, and with one less the motion ends before its end.
    #[test]
    fn a_motion_ends_with_its_steps() {
        let run = |most: u64| {
            let mut integrator = Integrator::new(0.1, 1e-9).within_steps(most);
            integrator.start(swing, 0.0, &[1.0, 0.0]).unwrap();
            let end = integrator.advance(swing, nothing, 10.0);
            (end.map(|end| end.state), integrator.is_spent())
        };
        let free = run(u64::MAX).0.unwrap();
        let needed = (1..1000).find(|most| run(*most).0.is_ok()).unwrap();
        assert!(needed > 50 && run(needed) == (Ok(free), true) && run(needed + 1) == (Ok(free), false));
        assert!(run(needed - 1).1 && run(needed - 1).0.unwrap_err().to_string().starts_with("time = "));
    }

    /// A body under a constant pull `F` and a drag `c v^2`. The pull falls at each of three speeds, after 0.3 s without any, and the run ends at a distance.
    /// The speed is a hyperbolic tangent of the time, so every event is known.
    #[test]
    fn shifts_and_a_finish_line_are_met_where_they_are() {
        let (m, c, finish, gap): (f64, f64, f64, f64) = (1500.0, 0.45, 1000.0, 0.3);
        let gears: [(f64, f64); 4] =
            [(9000.0, 15.0), (5500.0, 26.0), (3600.0, 38.0), (2500.0, f64::INFINITY)];
        let mut integrator = Integrator::new(1e-3, 1e-9);
        let (mut at, mut exact) =
            (Reached { time: 0.0, state: [0.0, 0.0], passed: [false; 2] }, [0.0, 0.0, 0.0]);
        let near = |at: &Reached<2, 2>, exact: [f64; 3]| {
            let found = [at.time, at.state[0], at.state[1]];
            assert!(
                found.iter().zip(exact).all(|(found, exact)| (found - exact).abs() < 1e-8),
                "{found:?} {exact:?}"
            );
        };
        for (pull, shift) in gears {
            let [time, distance, speed] = exact;
            let run = |_: f64, y: &[f64; 2]| [y[1], (pull - c * y[1] * y[1]) / m];
            integrator.start(run, at.time, &at.state).unwrap();
            at = integrator.advance(run, |_, y| [y[1] - shift, y[0] - finish], 100.0).unwrap();
            let most = (pull / c).sqrt();
            let over = |v: f64| m / (2.0 * c) * ((pull - c * speed * speed) / (pull - c * v * v)).ln();
            let until = |v: f64| m / (c * most) * ((v / most).atanh() - (speed / most).atanh());
            if shift.is_finite() {
                assert_eq!(at.passed, [true, false]);
                assert!(at.state[1] > shift && at.state[1] < shift + 1e-13);
                exact = [time + until(shift), distance + over(shift), shift];
                near(&at, exact);
                let rolls = |_: f64, y: &[f64; 2]| [y[1], -c * y[1] * y[1] / m];
                integrator.start(rolls, at.time, &at.state).unwrap();
                at = integrator.advance(rolls, |_, y| [0.0, y[0] - finish], at.time + gap).unwrap();
                let slower = 1.0 + c * shift * gap / m;
                exact = [exact[0] + gap, exact[1] + m / c * slower.ln(), shift / slower];
            } else {
                assert_eq!(at.passed, [false, true]);
                let left = (-2.0 * c * (finish - distance) / m).exp();
                let last = (most * most - (most * most - speed * speed) * left).sqrt();
                exact = [time + until(last), finish, last];
            }
            near(&at, exact);
        }
    }

    /// A mass with a constant heat input that loses more heat while a thermostat is open. It rises and falls by exponentials, 140 times in an hour.
    #[test]
    fn a_thermostat_opens_and_closes_when_it_should() {
        let (capacity, heat, air): (f64, f64, f64) = (60e3, 12e3, 30.0);
        let mut integrator = Integrator::new(1e-3, 1e-9);
        let mut at = Reached { time: 0.0, state: [70.0], passed: [false] };
        let (mut exact, mut from, mut open, mut events) = (0.0, 70.0, false, 0);
        loop {
            let loss: f64 = if open { 400.0 } else { 60.0 };
            let slope = |_: f64, y: &[f64; 1]| [(heat - loss * (y[0] - air)) / capacity];
            integrator.start(slope, at.time, &at.state).unwrap();
            at = integrator
                .advance(slope, |_, y| [if open { 86.0 - y[0] } else { y[0] - 90.0 }], 3600.0)
                .unwrap();
            let (end, to) = (air + heat / loss, if open { 86.0 } else { 90.0 });
            if at.passed == [false] {
                let left = (-(3600.0 - exact) * loss / capacity).exp();
                assert!((at.state[0] - (end + (from - end) * left)).abs() < 1e-8);
                break;
            }
            exact += capacity / loss * ((end - from) / (end - to)).ln();
            assert!((at.time - exact).abs() < 2e-8, "{} {exact}", at.time);
            (from, open, events) = (to, !open, events + 1);
        }
        assert_eq!(events, 140);
    }

    /// Two surfaces in one step: the nearer one ends the motion, in either order; both end it if they coincide.
    #[test]
    fn the_first_of_several_surfaces_counts_and_none_is_lost() {
        let line = |_: f64, _: &[f64; 1]| [1.0];
        for (surfaces, time, passed) in [
            ([0.5, 0.25, 2.0], 0.25, [false, true, false]),
            ([0.25, 0.5, 0.25], 0.25, [true, false, true]),
            ([0.0, 0.5, 2.0], 0.0, [true, false, false]),
        ] {
            let mut integrator = Integrator::new(1.0, 1e-9);
            integrator.start(line, 0.0, &[0.0]).unwrap();
            let beyond = |_: f64, y: &[f64; 1]| surfaces.map(|place| y[0] - place);
            let at = integrator.advance(line, beyond, 1.0).unwrap();
            assert!((at.time - time).abs() < 1e-12 && at.passed == passed, "{at:?}");
            // The same surface is met again at once; the reversed one is not.
            assert_eq!(integrator.advance(line, beyond, 1.0).unwrap(), at);
            let back = integrator.advance(line, |_, y| [surfaces[0].min(surfaces[1]) - y[0]], 1.0).unwrap();
            assert!(back.time == 1.0 && (back.state[0] - 1.0).abs() < 1e-12 && back.passed == [false]);
        }
    }
}
