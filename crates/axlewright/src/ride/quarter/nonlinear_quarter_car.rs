use crate::base::document::{Model, Stated, Value};
use crate::base::error::NoSolution;
use crate::base::integrator::Integrator;
use crate::base::numeric::MonotoneCubic;
use crate::base::table::Table;
use crate::base::text::said;
use crate::ride::road::course::{Course, Leg, Road};
use crate::ride::solution::response::{Motion, table};
use crate::spring::{BumpStop, DamperCurve, ROD_SPEED};
use crate::units::{Length, LinearStiffness, Mass, Ratio, STANDARD_GRAVITY, Time, Velocity};
use crate::{Error, Result, valid};
use core::cell::Cell;

/// A wheel with its share of the body on a road, with separate bump and rebound damping, a bump stop, and a tyre that can leave the ground.
///
/// # Formula
/// `m_s z_s'' = k x + r F_d(r x') + r_b F_b(r_b (x - b))` with the travel `x = z_u - z_s`; `m_u z_u'' = max(k_t (z_r - z_u), -W) - m_s z_s''` with the static load `W = (m_s + m_u) g`;
/// `F_d` and `F_b` monotone cubics through the points, gas force taken off
///
/// # Fields
/// - `sprung_mass` — `m_s`, share of the body's mass on this wheel
/// - `unsprung_mass` — `m_u`, unsprung mass of the wheel
/// - `wheel_rate` — `k`, rate of the suspension at the wheel, without tyre and bump stop
/// - `tyre_rate` — `k_t`, vertical rate of the tyre at its pressure and load
/// - `damper` — `F_d`, force curve of the damper itself, a `spring.DamperCurve`
/// - `damper_motion_ratio` — `r`, shortening of the damper over travel of the wheel
/// - `bump_stop` — with `bump_remaining` (`b`, wheel travel until it is touched), `motion_ratio` (`r_b`, compression over travel of the wheel) and `stop` (`F_b`, a `spring.BumpStop`); left out if there is no stop
///
/// # Valid for
/// A linear spring that is never loose and never coil-bound, and a damper that is never fully open. Constant motion ratios, no friction, and an undamped tyre that touches the road at
/// one point. Velocities and compressions must stay within the points; otherwise the call is refused, with the time. The estimated error of each integration step is 1 nm or 1 nm/s at the
/// most.
///
/// # Source
/// Newton's law for both masses; integrated by the pair of Dormand and Prince (1980) of the library `differential-equations`; checked against SciPy's `solve_ivp` at a tighter tolerance
///
/// # Caution
/// A wheel off the ground neither steers nor brakes. A stop that is hit hard loads its mounts far beyond the static force. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct NonlinearQuarterCar {
    /// Sprung mass on this wheel.
    pub sprung_mass: Value<Mass>,
    /// Unsprung mass of the wheel.
    pub unsprung_mass: Value<Mass>,
    /// Wheel rate of the suspension.
    pub wheel_rate: Value<LinearStiffness>,
    /// Vertical rate of the tyre.
    pub tyre_rate: Value<LinearStiffness>,
    /// Curve of the damper itself.
    pub damper: DamperCurve,
    /// Shortening of the damper over travel of the wheel.
    pub damper_motion_ratio: Value<Ratio>,
    /// Bump stop; left out if there is none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub bump_stop: Stated<MountedStop>,
}

/// A bump stop and its place.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `bump_remaining`, `motion_ratio` and `stop`"))]
pub struct MountedStop {
    /// Wheel travel from ride height until the stop is touched.
    #[cfg_attr(feature = "serde", serde(alias = "bump_left"))]
    pub bump_remaining: Value<Length>,
    /// Compression over travel of the wheel.
    pub motion_ratio: Value<Ratio>,
    /// The stop itself.
    pub stop: BumpStop,
}

impl crate::base::Sealed for NonlinearQuarterCar {}
impl Model for NonlinearQuarterCar {
    fn check(&self) -> Result<()> {
        self.parts().map(drop)
    }
}

/// The fields as plain numbers and curves.
struct Parts {
    ms: f64,
    mu: f64,
    k: f64,
    kt: f64,
    damper: MonotoneCubic,
    damper_ratio: f64,
    stop: Option<Stop>,
}

struct Stop {
    bump_remaining: f64,
    ratio: f64,
    curve: MonotoneCubic,
}

impl Stop {
    /// Force at the wheel; NaN beyond the points.
    fn force(&self, travel: f64) -> f64 {
        let compression = self.ratio * (travel - self.bump_remaining);
        if compression > 0.0 { self.ratio * self.curve.at(compression) } else { 0.0 }
    }
}

/// Forces at one instant.
struct Forces {
    stop: f64,
    suspension: f64,
    tyre: f64,
}

impl Parts {
    /// Force of the curve; NaN beyond its end.
    fn forces(&self, road: f64, state: &[f64; 4]) -> Forces {
        let [body, body_velocity, wheel, wheel_velocity] = *state;
        let travel = wheel - body;
        let stop = self.stop.as_ref().map_or(0.0, |stop| stop.force(travel));
        let damper = self.damper_ratio * self.damper.at(self.damper_ratio * (wheel_velocity - body_velocity));
        let suspension = self.k * travel + damper + stop;
        let tyre = (self.kt * (road - wheel)).max(-(self.ms + self.mu) * STANDARD_GRAVITY);
        Forces { stop, suspension, tyre }
    }

    fn slope(&self, road: f64, state: &[f64; 4]) -> [f64; 4] {
        let on = self.forces(road, state);
        [state[1], on.suspension / self.ms, state[3], (on.tyre - on.suspension) / self.mu]
    }

    /// The curve that ends at this state.
    fn beyond(&self, time: f64, state: &[f64; 4]) -> Option<Error> {
        let (velocity, travel) = (self.damper_ratio * (state[3] - state[1]), state[2] - state[0]);
        let near = said(Time::from_si(time));
        if self.damper.at(velocity).is_nan() {
            let refusal =
                NoSolution::new(format!("is beyond the points, near {near}: measure the damper faster"));
            let refusal = refusal.of("damper.velocity", Velocity::from_si(velocity)).in_units(&ROD_SPEED);
            return Some(Error::no_solution(refusal));
        }
        let stop = self.stop.as_ref().filter(|stop| stop.force(travel).is_nan())?;
        let compression = Length::from_si(stop.ratio * (travel - stop.bump_remaining));
        let refusal = NoSolution::new(format!("is beyond the points, near {near}: measure the stop further"));
        Some(Error::no_solution(refusal.of("bump_stop.compression", compression)))
    }
}

impl NonlinearQuarterCar {
    /// Motion after a step of the road.
    ///
    /// # Parameters
    /// - `height` — height of the step, negative for a step down
    /// - `duration` — time to compute
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0: `time`, `road_height`, `body_displacement`, `wheel_displacement`, `suspension_travel`, `body_acceleration`,
    /// `tyre_load_variation`, `bump_stop_force`.
    pub fn step(&self, height: Length, duration: Time, time_step: Time) -> Result<Table> {
        self.along(Road::step(height)?, duration, time_step)
    }

    /// Motion up a ramp that ends on a plain, such as a bevelled kerb.
    ///
    /// # Parameters
    /// - `height` — height of the plain, negative for a ramp down
    /// - `length` — length of the ramp along the road
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the foot of the ramp
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0, as after a step.
    pub fn ramp(
        &self,
        height: Length,
        length: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Table> {
        self.along(Road::ramp(height, length, speed)?, duration, time_step)
    }

    /// Motion over a half-sine bump.
    ///
    /// # Parameters
    /// - `height` — height of the bump, negative for a hole
    /// - `length` — length of the bump along the road, half a wave
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the beginning of the bump
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0, as after a step.
    pub fn half_sine(
        &self,
        height: Length,
        length: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Table> {
        self.along(Road::half_sine(height, length, speed)?, duration, time_step)
    }

    /// Motion over a measured profile, straight from point to point.
    ///
    /// # Parameters
    /// - `speed` — speed of the vehicle
    /// - `time_step` — time from row to row
    /// - `distance` — along the road, at least two in increasing order
    /// - `height` — height of the road at each distance; before the first distance, the wheel rests on the first height
    ///
    /// # Returns
    /// One row for each time step from the first distance to the last, as after a step.
    pub fn profile(
        &self,
        speed: Velocity,
        time_step: Time,
        distance: &[Length],
        height: &[Length],
    ) -> Result<Table> {
        let (road, duration) = Road::profile(speed, distance, height)?;
        self.along(road, duration, time_step)
    }

    fn along(&self, road: Road, duration: Time, time_step: Time) -> Result<Table> {
        const TOLERANCE: f64 = 1e-9;
        let parts = self.parts()?;
        let course = Course::new([road], duration, time_step)?;
        let mut motion = Motion::with_capacity(course.rows());
        let mut bump_stop_force = Vec::with_capacity(course.rows());
        let [rest] = course.rest();
        let mut state = [rest, 0.0, rest, 0.0];
        let mut integrator = Integrator::new(1e-4, TOLERANCE);
        course.walk(|leg| {
            let Leg { pieces: [piece], from, row, .. } = *leg;
            let fault = Cell::new(None);
            let slope = |time: f64, state: &[f64; 4]| {
                let slope = parts.slope(piece.at(time).0, state);
                if slope[1].is_nan() && state.iter().all(|part| part.is_finite()) {
                    fault.set(Some((time, *state)));
                }
                slope
            };
            integrator.start(slope, from, &state)?;
            for (_, to) in leg.steps() {
                fault.set(None);
                let reached = integrator.advance(slope, |_, _| [], to).map_err(|error| {
                    fault.get().and_then(|(time, state)| parts.beyond(time, &state)).unwrap_or(error)
                })?;
                state = reached.state;
                if row {
                    let road = piece.at(to).0;
                    let on = parts.forces(road, &state);
                    motion.push(to, road, [state[0], state[2]], on.suspension / parts.ms, on.tyre);
                    bump_stop_force.push(on.stop);
                }
            }
            Ok(())
        })?;
        Ok(table(motion, Some(bump_stop_force)))
    }

    fn parts(&self) -> Result<Parts> {
        let (sprung_mass, unsprung_mass) = (self.sprung_mass.quantity, self.unsprung_mass.quantity);
        let (wheel_rate, tyre_rate) = (self.wheel_rate.quantity, self.tyre_rate.quantity);
        let damper_motion_ratio = self.damper_motion_ratio.quantity;
        valid! {
            sprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel carries 1000 t";
            unsprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel weighs 1000 t";
            wheel_rate: 1 <= .. <= 1e9 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
            tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
            damper_motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
        }
        let within = |key: &str, error: Error| error.within(key);
        let stop = self.bump_stop.as_ref().map(|stop| {
            stop.checked_places()?;
            let curve = stop.stop.curve().map_err(|error| within("bump_stop.stop", error))?;
            Ok(Stop {
                bump_remaining: stop.bump_remaining.quantity.si(),
                ratio: stop.motion_ratio.quantity.si(),
                curve,
            })
        });
        Ok(Parts {
            ms: sprung_mass.si(),
            mu: unsprung_mass.si(),
            k: wheel_rate.si(),
            kt: tyre_rate.si(),
            damper: self.damper.curve().map_err(|error| within("damper", error))?,
            damper_ratio: damper_motion_ratio.si(),
            stop: stop.transpose()?,
        })
    }
}

impl MountedStop {
    fn checked_places(&self) -> Result<()> {
        let (bump_remaining, motion_ratio) = (self.bump_remaining.quantity, self.motion_ratio.quantity);
        valid! {
            bump_remaining: 0 <= .. <= 10 ; "definition: at ride height the stop is not touched";
            motion_ratio: 0.01 <= .. <= 1.5 ; "plausibility limit: above 1.5 it is a percentage or an inverted ratio";
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ride::QuarterCar;
    use crate::spring::{DamperPoint, StopPoint};
    use crate::units::{Damping, Force, mm, s};

    fn point(velocity: f64, force: f64) -> DamperPoint {
        DamperPoint {
            velocity: Value::new(Velocity::from_si(velocity)),
            force: Value::new(Force::from_si(force)),
        }
    }

    /// A stop from its remaining travel and its points.
    fn car(points: Vec<DamperPoint>, stop: Option<(f64, &[(f64, f64)])>) -> NonlinearQuarterCar {
        let stop_point = |(compression, force): &(f64, f64)| StopPoint {
            compression: Value::new(Length::from_si(*compression)),
            force: Value::new(Force::from_si(*force)),
        };
        NonlinearQuarterCar {
            sprung_mass: Value::new(Mass::from_si(300.0)),
            unsprung_mass: Value::new(Mass::from_si(40.0)),
            wheel_rate: Value::new(LinearStiffness::from_si(22e3)),
            tyre_rate: Value::new(LinearStiffness::from_si(190e3)),
            damper: DamperCurve { gas_force: Value::new(Force::from_si(0.0)), points },
            damper_motion_ratio: Value::new(Ratio::from_si(1.0)),
            bump_stop: Stated::from(stop).map(|(bump_remaining, points)| MountedStop {
                bump_remaining: Value::new(Length::from_si(bump_remaining)),
                motion_ratio: Value::new(Ratio::from_si(1.0)),
                stop: BumpStop { points: points.iter().map(stop_point).collect() },
            }),
        }
    }

    /// One wheel over other levers gives equal motions: a damper at half the travel with four times the rate and gas in it, a stop at half the travel.
    #[test]
    fn levers_and_gas_change_nothing_of_what_the_wheel_feels() {
        let straight = vec![point(-6.0, -9000.0), point(-0.2, -800.0), point(6.0, 4000.0)];
        let stop: &[(f64, f64)] = &[(0.02, 2000.0), (0.2, 90e3)];
        let direct = car(straight, Some((0.03, stop)));
        let gas = 180.0;
        let levered = [(-3.0, -18000.0), (-0.1, -1600.0), (3.0, 8000.0)].map(|(v, f)| point(v, f + gas));
        let mut other = car(levered.to_vec(), Some((0.03, &[(0.01, 4000.0), (0.1, 180e3)])));
        other.damper.gas_force = Value::new(Force::from_si(gas));
        other.damper_motion_ratio = Value::new(Ratio::from_si(0.5));
        if let Stated::Given(stop) = &mut other.bump_stop {
            stop.motion_ratio = Value::new(Ratio::from_si(0.5));
        }
        let (height, end, step) = (Length::of::<mm>(90.0), Time::of::<s>(1.0), Time::of::<s>(0.01));
        let (a, b) = (direct.step(height, end, step).unwrap(), other.step(height, end, step).unwrap());
        assert!(a.numbers("bump_stop_force").unwrap().iter().any(|force| *force > 100.0));
        for name in ["body_displacement", "wheel_displacement", "bump_stop_force"] {
            for (a, b) in a.numbers(name).unwrap().iter().zip(b.numbers(name).unwrap()) {
                assert!((a - b).abs() < 1e-6 * a.abs().max(1.0), "{name}: {a} {b}");
            }
        }
    }

    /// With a straight damper and a small step, the motion is the exact one of the linear model.
    #[test]
    fn a_straight_damper_is_the_linear_model() {
        let bent = car(vec![point(-5.0, -7500.0), point(5.0, 7500.0)], None);
        let straight = QuarterCar {
            sprung_mass: bent.sprung_mass.clone(),
            unsprung_mass: bent.unsprung_mass.clone(),
            wheel_rate: bent.wheel_rate.clone(),
            wheel_damping: Value::new(Damping::from_si(1500.0)),
            tyre_rate: bent.tyre_rate.clone(),
            tyre_damping: None,
        };
        let (height, end, step) = (Length::of::<mm>(10.0), Time::of::<s>(2.0), Time::of::<s>(0.005));
        let (bent, straight) =
            (bent.step(height, end, step).unwrap(), straight.step(height, end, step).unwrap());
        let (a, b) =
            (bent.numbers("body_displacement").unwrap(), straight.numbers("body_displacement").unwrap());
        assert_eq!(a.len(), 401);
        for (a, b) in a.iter().zip(b) {
            assert!((a - b).abs() < 2e-8, "{a} {b}");
        }
    }

    #[test]
    fn a_tyre_does_not_pull_and_a_stop_is_felt_only_beyond_its_gap() {
        let (end, step) = (Time::of::<s>(1.0), Time::of::<s>(0.002));
        let damper = || vec![point(-6.0, -9000.0), point(6.0, 4000.0)];
        let stop: &[(f64, f64)] = &[(0.02, 2000.0), (0.2, 90e3)];
        let stopped = car(damper(), Some((0.03, stop))).step(Length::of::<mm>(120.0), end, step).unwrap();
        let (force, travel) =
            (stopped.numbers("bump_stop_force").unwrap(), stopped.numbers("suspension_travel").unwrap());
        assert!(force.iter().any(|force| *force > 100.0));
        assert!(force.iter().zip(travel).all(|(force, travel)| (*force > 0.0) == (*travel > 0.03)));
        let weight = 340.0 * STANDARD_GRAVITY;
        let down = car(damper(), None).step(Length::of::<mm>(-120.0), end, step).unwrap();
        let load = down.numbers("tyre_load_variation").unwrap();
        assert!(load.iter().all(|load| *load >= -weight) && load[0] == -weight);
    }

    #[test]
    fn what_is_beyond_a_curve_or_no_curve_is_refused_by_name() {
        let (end, step) = (Time::of::<s>(1.0), Time::of::<s>(0.01));
        let said =
            |car: &NonlinearQuarterCar| car.step(Length::of::<mm>(80.0), end, step).unwrap_err().to_string();
        let slow = car(vec![point(-0.2, -900.0), point(0.2, 400.0)], None);
        assert!(said(&slow).starts_with("damper"), "{}", said(&slow));
        let damper = || vec![point(-6.0, -9000.0), point(6.0, 4000.0)];
        let thin: &[(f64, f64)] = &[(0.001, 10.0)];
        let through = car(damper(), Some((0.01, thin)));
        assert!(said(&through).starts_with("bump_stop"), "{}", said(&through));
        for (name, wrong) in [
            ("damper", car(vec![point(0.2, 400.0)], None)),
            ("damper", car(vec![point(-0.2, 400.0), point(0.2, 400.0)], None)),
            ("bump_stop.stop", car(damper(), Some((0.01, &[(0.01, -1.0)])))),
            ("bump_remaining", car(damper(), Some((-0.01, thin)))),
        ] {
            assert!(said(&wrong).starts_with(name), "{}", said(&wrong));
        }
    }
}
