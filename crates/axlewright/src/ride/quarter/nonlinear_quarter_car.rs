use crate::base::document::{Model, Stated, Value};
use crate::base::error::NoSolution;
use crate::base::integrator::Integrator;
use crate::base::numeric::MonotoneCubic;
use crate::base::table::{Column, Field, Table};
use crate::base::text::{DIGITS, said, said_in};
use crate::ride::road::course::{Course, Leg, Road};
use crate::ride::solution::response::{Motion, table};
use crate::spring::{BumpStop, DamperCurve, ROD_SPEED};
use crate::units::{Force, Length, LinearStiffness, Mass, Ratio, STANDARD_GRAVITY, Time, Velocity};
use crate::{Error, Result, cannot, valid};
use core::cell::Cell;

/// A wheel with its share of the body on a road, with separate bump and rebound damping, stops in bump and droop, and a tyre that can leave the ground.
///
/// # Formula
/// `m_s z_s'' = k x + r F_d(r x') + r_b F_b(r_b (x - b)) - r_e F_e(r_e (-x - e))` with the travel `x = z_u - z_s`; `m_u z_u'' = max(k_t (z_r - z_u), -W) - m_s z_s''` with the static load `W = (m_s + m_u) g`;
/// `F_d`, `F_b` and `F_e` monotone cubics through the points, gas force taken off
///
/// # Fields
/// - `sprung_mass` — `m_s`, share of the body's mass on this wheel
/// - `unsprung_mass` — `m_u`, unsprung mass of the wheel
/// - `wheel_rate` — `k`, rate of the suspension at the wheel, without tyre and bump stop
/// - `tyre_rate` — `k_t`, vertical rate of the tyre at its pressure and load
/// - `damper` — `F_d`, force curve of the damper itself, a `spring.DamperCurve`
/// - `damper_motion_ratio` — `r`, shortening of the damper over travel of the wheel
/// - `bump_stop` — with `bump_remaining` (`b`, wheel travel until it is touched), `motion_ratio` (`r_b`, compression over travel of the wheel) and `stop` (`F_b`, a `spring.BumpStop`); left out if there is no stop
/// - `droop_stop` — with `droop_remaining` (`e`, wheel travel in droop until it is touched), `motion_ratio` (`r_e`, compression over travel of the wheel) and `stop` (`F_e`, a `spring.BumpStop`); left out if there is no stop
/// - `damper_beyond_points` — `refuse` (the default), or `extend`: beyond the points, the damper's force goes straight on
///
/// # Valid for
/// A linear spring that is never loose and never coil-bound, and a damper that is fully open only where a `droop_stop` says so. Constant motion ratios, no friction, and an undamped tyre that touches the road at
/// one point. Velocities and compressions must stay within the points; otherwise the call is refused, with the time. With `extend`, the damper's force goes straight on beyond its points, by
/// the slope of the curve at its end or of the line from the point before it, whichever is steeper: a guess, which the column `damper_curve` marks. No stop is extended. The estimated error of each
/// integration step is 1 nm or 1 nm/s at the most. A motion may take a million integration steps more than it has rows and changes of the road's slope; one that needs more is refused, with what to change.
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
    /// Stop that ends droop; left out if there is none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub droop_stop: Stated<MountedDroopStop>,
    /// Force of the damper beyond its points; left out, a motion that leads there is refused.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper_beyond_points: Option<BeyondPoints>,
}

/// A damper that moves faster than its points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum BeyondPoints {
    /// The motion is refused.
    Refuse,
    /// The force goes straight on.
    Extend,
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

/// A stop in droop and its place.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `droop_remaining`, `motion_ratio` and `stop`"))]
pub struct MountedDroopStop {
    /// Wheel travel in droop from ride height until the stop is touched.
    pub droop_remaining: Value<Length>,
    /// Compression over travel of the wheel.
    pub motion_ratio: Value<Ratio>,
    /// The stop itself: the pad at the end of the damper's stroke, a strap or a stop of rubber.
    pub stop: BumpStop,
}

impl crate::base::Sealed for NonlinearQuarterCar {}
impl Model for NonlinearQuarterCar {
    fn check(&self) -> Result<()> {
        self.parts().map(drop)
    }
}

/// Integration steps of a motion at the most, beside one for each row and each change of the road's slope.
const MOST_STEPS: u64 = 1_000_000;

/// A rate faster than this, in radians a second, is that of no ordinary wheel, and makes the steps of a motion short.
const FAST: f64 = 3000.0;

/// The fields as plain numbers and curves.
struct Parts {
    ms: f64,
    mu: f64,
    k: f64,
    kt: f64,
    damper: MonotoneCubic,
    damper_ratio: f64,
    /// Slopes with which the damper's curve goes straight on before its first and after its last point.
    extended: Option<[f64; 2]>,
    bump: Option<Stop>,
    droop: Option<Stop>,
}

struct Stop {
    remaining: f64,
    ratio: f64,
    curve: MonotoneCubic,
}

impl Stop {
    /// Force at the wheel, at a travel towards the stop; NaN beyond the points.
    fn force(&self, travel: f64) -> f64 {
        let compression = self.ratio * (travel - self.remaining);
        if compression > 0.0 { self.ratio * self.curve.at(compression) } else { 0.0 }
    }
}

/// Forces at one instant.
struct Forces {
    bump_stop: f64,
    droop_stop: f64,
    spring_damper: f64,
    suspension: f64,
    tyre: f64,
}

/// Greatest forces so far, static loads included; the least one of spring and damper; and true once the damper was beyond its points.
#[derive(Debug, Clone, Copy)]
struct Peaks {
    tyre: f64,
    spring_damper: f64,
    spring_damper_least: f64,
    bump_stop: f64,
    droop_stop: f64,
    beyond: bool,
}

impl Peaks {
    const NONE: Peaks = Peaks {
        tyre: f64::NEG_INFINITY,
        spring_damper: f64::NEG_INFINITY,
        spring_damper_least: f64::INFINITY,
        bump_stop: 0.0,
        droop_stop: 0.0,
        beyond: false,
    };

    fn with(self, on: &Forces, parts: &Parts, beyond: bool) -> Peaks {
        let spring_damper = on.spring_damper + parts.ms * STANDARD_GRAVITY;
        Peaks {
            tyre: self.tyre.max(on.tyre + parts.weight()),
            spring_damper: self.spring_damper.max(spring_damper),
            spring_damper_least: self.spring_damper_least.min(spring_damper),
            bump_stop: self.bump_stop.max(on.bump_stop),
            droop_stop: self.droop_stop.max(on.droop_stop),
            beyond: self.beyond || beyond,
        }
    }
}

/// Columns of forces, a value a row.
#[derive(Default)]
struct ForceRows {
    bump_stop: Vec<f64>,
    droop_stop: Vec<f64>,
    spring_damper: Vec<f64>,
    peaks: Vec<Peaks>,
}

impl ForceRows {
    fn push(&mut self, on: &Forces, parts: &Parts, peaks: Peaks) {
        self.bump_stop.push(on.bump_stop);
        self.droop_stop.push(on.droop_stop);
        self.spring_damper.push(on.spring_damper + parts.ms * STANDARD_GRAVITY);
        self.peaks.push(peaks);
    }

    fn columns(self) -> Vec<Column> {
        let peaks = |name: &'static str, of: fn(&Peaks) -> f64| {
            Force::column(name).with(self.peaks.iter().map(of).collect())
        };
        let mut curve = <&str>::column("damper_curve");
        let words = self.peaks.iter().map(|peaks| if peaks.beyond { &"extended" } else { &"measured" });
        <&str>::fill(&mut curve.values, words);
        vec![
            Force::column("bump_stop_force").with(self.bump_stop),
            Force::column("droop_stop_force").with(self.droop_stop),
            Force::column("spring_damper_force").with(self.spring_damper),
            peaks("peak_tyre_load", |peaks| peaks.tyre),
            peaks("peak_spring_damper_force", |peaks| peaks.spring_damper),
            peaks("least_spring_damper_force", |peaks| peaks.spring_damper_least),
            peaks("peak_bump_stop_force", |peaks| peaks.bump_stop),
            peaks("peak_droop_stop_force", |peaks| peaks.droop_stop),
            curve,
        ]
    }
}

/// Slopes with which a curve goes straight on at its two ends: of the curve there, or of the line to the next point, whichever is steeper.
fn straight_on(curve: &MonotoneCubic) -> [f64; 2] {
    let slope = |end: Option<(f64, f64)>, next: Option<(f64, f64)>| match (end, next) {
        (Some((x, y)), Some((other, value))) => curve.slope(x).max((y - value) / (x - other)),
        _ => f64::NAN,
    };
    let (mut knots, last) = (curve.knots(), curve.range().1);
    let first = slope(knots.next(), knots.next());
    let before = curve.knots().take_while(|(x, _)| *x < last).last();
    [first, slope(curve.knots().last(), before)]
}

impl Parts {
    /// Static load of the tyre.
    fn weight(&self) -> f64 {
        (self.ms + self.mu) * STANDARD_GRAVITY
    }

    /// Velocity of the damper.
    fn damper_velocity(&self, state: &[f64; 4]) -> f64 {
        self.damper_ratio * (state[3] - state[1])
    }

    /// True where the damper moves faster than its points.
    fn is_beyond(&self, state: &[f64; 4]) -> bool {
        let (first, last) = self.damper.range();
        !(first..=last).contains(&self.damper_velocity(state))
    }

    /// Force of the damper; NaN beyond the points where the curve is not extended.
    fn damper_force(&self, velocity: f64) -> f64 {
        let (first, last) = self.damper.range();
        match self.extended {
            Some([slope, _]) if velocity < first => self.damper.at(first) + slope * (velocity - first),
            Some([_, slope]) if velocity > last => self.damper.at(last) + slope * (velocity - last),
            _ => self.damper.at(velocity),
        }
    }

    /// Force of the curves; NaN beyond their ends.
    fn forces(&self, road: f64, state: &[f64; 4]) -> Forces {
        let [body, body_velocity, wheel, wheel_velocity] = *state;
        let travel = wheel - body;
        let bump_stop = self.bump.as_ref().map_or(0.0, |stop| stop.force(travel));
        let droop_stop = self.droop.as_ref().map_or(0.0, |stop| stop.force(-travel));
        let damper =
            self.damper_ratio * self.damper_force(self.damper_ratio * (wheel_velocity - body_velocity));
        let spring_damper = self.k * travel + damper;
        let suspension = spring_damper + bump_stop - droop_stop;
        let tyre = (self.kt * (road - wheel)).max(-self.weight());
        Forces { bump_stop, droop_stop, spring_damper, suspension, tyre }
    }

    fn slope(&self, road: f64, state: &[f64; 4]) -> [f64; 4] {
        let on = self.forces(road, state);
        [state[1], on.suspension / self.ms, state[3], (on.tyre - on.suspension) / self.mu]
    }

    /// The curve that ends at this state.
    fn beyond(&self, time: f64, state: &[f64; 4]) -> Option<Error> {
        let (velocity, travel) = (self.damper_velocity(state), state[2] - state[0]);
        let near = said(Time::from_si(time));
        if self.damper_force(velocity).is_nan() {
            let refusal = NoSolution::new(format!(
                "is beyond the points, near {near}: measure the damper faster, or write damper_beyond_points = \"extend\" for a force that goes straight on"
            ));
            let refusal = refusal.of("damper.velocity", Velocity::from_si(velocity)).in_units(&ROD_SPEED);
            return Some(Error::no_solution(refusal));
        }
        let ends =
            [("bump_stop.compression", &self.bump, travel), ("droop_stop.compression", &self.droop, -travel)];
        ends.into_iter().find_map(|(name, stop, travel)| {
            let stop = stop.as_ref().filter(|stop| stop.force(travel).is_nan())?;
            let compression = Length::from_si(stop.ratio * (travel - stop.remaining));
            let refusal =
                NoSolution::new(format!("is beyond the points, near {near}: measure the stop further"));
            Some(Error::no_solution(refusal.of(name, compression)))
        })
    }

    /// Reason why a motion takes so many steps: the fastest of its rates, or its length.
    fn spent(&self, time: f64) -> Error {
        let over = 1.0 / self.ms + 1.0 / self.mu;
        // Rate of the steepest part of the damper, and its place.
        let mut steepest = (0.0, [0.0; 2]);
        for ((from, low), (to, high)) in self.damper.knots().zip(self.damper.knots().skip(1)) {
            let rate = self.damper_ratio * self.damper_ratio * (high - low) / (to - from) * over;
            if rate > steepest.0 {
                steepest = (rate, [from, to]);
            }
        }
        let stiffest = |stop: &Option<Stop>| {
            let Some(Stop { ratio, curve, .. }) = stop else { return 0.0 };
            let knots = curve.knots().zip(curve.knots().skip(1));
            let most = knots.map(|((x, low), (to, high))| (high - low) / (to - x)).fold(0.0, f64::max);
            (ratio * ratio * most * over).sqrt()
        };
        let between = said_in(steepest.1, &ROD_SPEED, DIGITS);
        let most = MOST_STEPS;
        let rates = [
            (
                steepest.0,
                format!(
                    "the force of the damper rises too steeply between {between}: leave out a point there"
                ),
            ),
            ((self.kt / self.mu).sqrt(), "tyre_rate is too high for this unsprung_mass".to_owned()),
            ((self.k * over).sqrt(), "wheel_rate is too high for these masses".to_owned()),
            (
                stiffest(&self.bump),
                "the force of the bump_stop rises too steeply between two points".to_owned(),
            ),
            (
                stiffest(&self.droop),
                "the force of the droop_stop rises too steeply between two points".to_owned(),
            ),
        ];
        let (_, why) = rates.into_iter().filter(|(rate, _)| *rate > FAST).fold(
            (0.0, "compute a shorter time, or less of the profile".to_owned()),
            |most, next| {
                if next.0 > most.0 { next } else { most }
            },
        );
        let time = Time::from_si(time);
        cannot!(time; "is as far as {most} integration steps lead: {why}")
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
    /// `tyre_load_variation`, and at the wheel: `bump_stop_force`, `droop_stop_force`, and `spring_damper_force`, which is the static load of the body plus the forces of spring and damper, negative where they pull the body down.
    /// The largest since time 0, static loads included, at the end of each integration step: `peak_tyre_load`, `peak_spring_damper_force`, `peak_bump_stop_force`, `peak_droop_stop_force`; the least: `least_spring_damper_force`.
    /// `damper_curve` is `measured`, or `extended` once the damper has been faster than its points. The last row holds for the whole motion.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, ride::NonlinearQuarterCar, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let corner = NonlinearQuarterCar::from_text(r#"
    ///     sprung_mass = "545 kg"
    ///     unsprung_mass = "62 kg"
    ///     wheel_rate = "34 N/mm"
    ///     tyre_rate = "260 N/mm"
    ///     damper_motion_ratio = 0.8
    ///     [damper]
    ///     gas_force = "150 N"
    ///     points = [
    ///         { velocity = "-1.5 m/s", force = "-3600 N" },
    ///         { velocity = "-0.2 m/s", force = "-1100 N" },
    ///         { velocity = "0.2 m/s", force = "800 N" },
    ///         { velocity = "1.5 m/s", force = "2100 N" },
    ///     ]
    /// "#)?;
    /// let rows = corner.step(Length::of::<mm>(15.0), Time::of::<s>(0.5), Time::of::<s>(0.25))?;
    /// let peaks = rows.numbers("peak_tyre_load").unwrap_or_default();
    /// assert_eq!(format!("{:.1} kN", Force::from_si(peaks[2]).in_::<kN>()), "9.9 kN");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
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
        let mut force_rows = ForceRows::default();
        let [rest] = course.rest();
        let mut state = [rest, 0.0, rest, 0.0];
        let mut integrator = Integrator::new(1e-4, TOLERANCE).within_steps(MOST_STEPS);
        let peaks = Cell::new(Peaks::NONE);
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
            // Sees the end of each step; ends none.
            let seen = |time: f64, state: &[f64; 4]| {
                let on = parts.forces(piece.at(time).0, state);
                peaks.set(peaks.get().with(&on, &parts, parts.is_beyond(state)));
                []
            };
            integrator.start(slope, from, &state)?;
            for (begin, to) in leg.steps() {
                fault.set(None);
                integrator.grant(1);
                let reached = integrator.advance(slope, seen, to).map_err(|error| {
                    if integrator.is_spent() {
                        return parts.spent(integrator.time().max(begin));
                    }
                    fault.get().and_then(|(time, state)| parts.beyond(time, &state)).unwrap_or(error)
                })?;
                state = reached.state;
                if row {
                    let road = piece.at(to).0;
                    let on = parts.forces(road, &state);
                    motion.push(to, road, [state[0], state[2]], on.suspension / parts.ms, on.tyre);
                    force_rows.push(&on, &parts, peaks.get());
                }
            }
            Ok(())
        })?;
        Ok(table(motion, force_rows.columns()))
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
        let bump = self.bump_stop.as_ref().map(|stop| {
            stop.checked_places()?;
            Ok(Stop {
                remaining: stop.bump_remaining.quantity.si(),
                ratio: stop.motion_ratio.quantity.si(),
                curve: stop.stop.curve().map_err(|error| within("bump_stop.stop", error))?,
            })
        });
        let droop = self.droop_stop.as_ref().map(|stop| {
            stop.checked_places().map_err(|error| within("droop_stop", error))?;
            Ok(Stop {
                remaining: stop.droop_remaining.quantity.si(),
                ratio: stop.motion_ratio.quantity.si(),
                curve: stop.stop.curve().map_err(|error| within("droop_stop.stop", error))?,
            })
        });
        let damper = self.damper.curve().map_err(|error| within("damper", error))?;
        let extend = self.damper_beyond_points == Some(BeyondPoints::Extend);
        Ok(Parts {
            ms: sprung_mass.si(),
            mu: unsprung_mass.si(),
            k: wheel_rate.si(),
            kt: tyre_rate.si(),
            extended: extend.then(|| straight_on(&damper)),
            damper,
            damper_ratio: damper_motion_ratio.si(),
            bump: bump.transpose()?,
            droop: droop.transpose()?,
        })
    }
}

impl MountedDroopStop {
    fn checked_places(&self) -> Result<()> {
        let (droop_remaining, motion_ratio) = (self.droop_remaining.quantity, self.motion_ratio.quantity);
        valid! {
            droop_remaining: 0 <= .. <= 10 ; "definition: at ride height the stop is not touched";
            motion_ratio: 0.01 <= .. <= 3 ; "plausibility limit: motion ratios lie between 0.01 and 3";
        }
        Ok(())
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
    use crate::units::{Damping, mm, s};

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
            droop_stop: Stated::Unknown,
            damper_beyond_points: None,
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

    fn last(table: &Table, column: &str) -> f64 {
        *table.numbers(column).unwrap().last().unwrap()
    }

    fn drop_stop(remaining: f64, points: &[(f64, f64)]) -> Stated<MountedDroopStop> {
        let point = |(compression, force): &(f64, f64)| StopPoint {
            compression: Value::new(Length::from_si(*compression)),
            force: Value::new(Force::from_si(*force)),
        };
        Stated::Given(MountedDroopStop {
            droop_remaining: Value::new(Length::from_si(remaining)),
            motion_ratio: Value::new(Ratio::from_si(1.0)),
            stop: BumpStop { points: points.iter().map(point).collect() },
        })
    }

    /// A straight damper that is measured to 0.2 m/s and extended is the one that is measured to 6 m/s; a motion within the points keeps its bits.
    #[test]
    fn a_damper_goes_straight_on_only_on_request_and_says_so() {
        let (end, step) = (Time::of::<s>(1.0), Time::of::<s>(0.005));
        let short = car(vec![point(-0.2, -300.0), point(0.2, 300.0)], None);
        let long = car(vec![point(-6.0, -9000.0), point(6.0, 9000.0)], None);
        for height in [80.0, -60.0, 45.0].map(Length::of::<mm>) {
            let said = short.step(height, end, step).unwrap_err().to_string();
            assert!(said.starts_with("damper.velocity") && said.contains("damper_beyond_points"), "{said}");
            let refuse =
                NonlinearQuarterCar { damper_beyond_points: Some(BeyondPoints::Refuse), ..short.clone() };
            assert_eq!(refuse.step(height, end, step).unwrap_err().to_string(), said);
            let extend =
                NonlinearQuarterCar { damper_beyond_points: Some(BeyondPoints::Extend), ..short.clone() };
            let (found, wanted) =
                (extend.step(height, end, step).unwrap(), long.step(height, end, step).unwrap());
            assert_eq!(
                (found.word("damper_curve", 200), wanted.word("damper_curve", 200)),
                (Some("extended"), Some("measured"))
            );
            assert_eq!(found.word("damper_curve", 0), Some("measured"));
            for name in
                ["body_displacement", "wheel_displacement", "peak_tyre_load", "least_spring_damper_force"]
            {
                for (a, b) in found.numbers(name).unwrap().iter().zip(wanted.numbers(name).unwrap()) {
                    assert!((a - b).abs() < 2e-6 * a.abs().max(0.01), "{name}: {a} {b}");
                }
            }
        }
        let small = Length::of::<mm>(2.0);
        let extend =
            NonlinearQuarterCar { damper_beyond_points: Some(BeyondPoints::Extend), ..short.clone() };
        assert_eq!(extend.step(small, end, step).unwrap(), short.step(small, end, step).unwrap());
    }

    /// The steeper of the curve's own slope at its end and of the line from the point before: no force comes out too low by the choice of one of them.
    #[test]
    fn a_bent_damper_goes_on_with_the_steeper_slope() {
        for (points, wanted) in [
            (vec![(-0.1, -100.0), (0.1, 300.0), (0.3, 400.0)], [1000.0, 500.0]),
            (vec![(-0.4, -4000.0), (-0.1, -300.0), (0.1, 300.0)], [37e3 / 3.0, 3000.0]),
        ] {
            let points = points.into_iter().map(|(velocity, force)| point(velocity, force)).collect();
            let found = straight_on(
                &DamperCurve { gas_force: Value::new(Force::from_si(0.0)), points }.curve().unwrap(),
            );
            let steeper = found
                .iter()
                .zip(wanted)
                .all(|(found, wanted)| *found >= wanted - 1e-9 && *found < 2.0 * wanted);
            assert!(steeper, "{found:?}");
        }
    }

    #[test]
    fn a_stop_in_droop_is_felt_beyond_its_gap_and_ends_droop() {
        let (end, step) = (Time::of::<s>(1.0), Time::of::<s>(0.002));
        let damper = || vec![point(-6.0, -9000.0), point(6.0, 4000.0)];
        let free = car(damper(), None);
        let strap: &[(f64, f64)] = &[(0.01, 3000.0), (0.05, 40e3)];
        for (height, gap) in [(-120.0, 0.03), (-80.0, 0.0), (-150.0, 0.05)] {
            let stopped = NonlinearQuarterCar { droop_stop: drop_stop(gap, strap), ..free.clone() };
            let height = Length::of::<mm>(height);
            let (stopped, free) =
                (stopped.step(height, end, step).unwrap(), free.step(height, end, step).unwrap());
            let least = |table: &Table| {
                table.numbers("suspension_travel").unwrap().iter().copied().fold(0.0, f64::min)
            };
            assert!(
                least(&stopped) > least(&free) && least(&free) < -gap,
                "{} {}",
                least(&stopped),
                least(&free)
            );
            let (force, travel) =
                (stopped.numbers("droop_stop_force").unwrap(), stopped.numbers("suspension_travel").unwrap());
            assert!(force.iter().zip(travel).all(|(force, travel)| (*force > 0.0) == (*travel < -gap)));
            // At the rows no force is above the peaks, which are found between them, too; nor far below.
            let most = force.iter().copied().fold(0.0, f64::max);
            let peak = last(&stopped, "peak_droop_stop_force");
            assert!(most > 100.0 && peak >= most && peak < 1.05 * most, "{peak} {most}");
            assert_eq!(
                (last(&free, "peak_droop_stop_force"), last(&free, "peak_bump_stop_force")),
                (0.0, 0.0)
            );
        }
        let torn = NonlinearQuarterCar { droop_stop: drop_stop(0.01, &[(0.001, 10.0)]), ..free.clone() };
        let said = torn.step(Length::of::<mm>(-120.0), end, step).unwrap_err().to_string();
        assert!(said.starts_with("droop_stop.compression"), "{said}");
        let wrong = NonlinearQuarterCar { droop_stop: drop_stop(-0.01, strap), ..free };
        let said = wrong.check().unwrap_err().to_string();
        assert!(said.starts_with("droop_stop: droop_remaining"), "{said}");
    }

    /// At rest on a plain all forces are the static ones; a sudden step of the road gives the tyre its rate times the height at once.
    #[test]
    fn peaks_are_forces_with_the_static_loads() {
        let (end, step) = (Time::of::<s>(0.5), Time::of::<s>(0.1));
        let car = car(vec![point(-6.0, -9000.0), point(6.0, 4000.0)], None);
        let rest = car.step(Length::of::<mm>(0.0), end, step).unwrap();
        let (body, whole) = (300.0 * STANDARD_GRAVITY, 340.0 * STANDARD_GRAVITY);
        assert_eq!(last(&rest, "peak_tyre_load"), whole);
        assert_eq!(
            [last(&rest, "peak_spring_damper_force"), last(&rest, "least_spring_damper_force")],
            [body; 2]
        );
        for height in [0.01, 0.03] {
            let table = car.step(Length::from_si(height), end, step).unwrap();
            assert!((last(&table, "peak_tyre_load") - whole - 190e3 * height).abs() < 1e-9);
            let (peak, least) =
                (last(&table, "peak_spring_damper_force"), last(&table, "least_spring_damper_force"));
            let on = table.numbers("spring_damper_force").unwrap();
            assert!(on.iter().all(|force| (least..=peak).contains(force)) && peak > body && least < body);
            assert_eq!(table.numbers("peak_tyre_load").unwrap()[0], last(&table, "peak_tyre_load"));
        }
    }

    /// Work is bounded by steps, not by the clock, and the refusal names what makes them many.
    #[test]
    fn too_many_steps_are_refused_with_what_to_change() {
        let ordinary = || vec![point(-6.0, -9000.0), point(6.0, 4000.0)];
        let said = |car: &NonlinearQuarterCar, end: f64| {
            let table = car.step(Length::of::<mm>(40.0), Time::from_si(end), Time::from_si(0.1 * end));
            table.map_or_else(|error| error.to_string(), |table| format!("{} rows", table.rows()))
        };
        let near_rest = |velocity: f64| {
            let points = [(-6.0, -9000.0), (-velocity, -600.0), (velocity, 600.0), (6.0, 4000.0)];
            car(points.map(|(velocity, force)| point(velocity, force)).to_vec(), None)
        };
        let stiff = said(&near_rest(1e-8), 0.5);
        assert!(
            stiff.contains("1000000 integration steps") && stiff.contains("damper rises too steeply between"),
            "{stiff}"
        );
        // What the others say once their steps are spent.
        let why = |car: &NonlinearQuarterCar| car.parts().unwrap().spent(7.0).to_string();
        let long = why(&car(ordinary(), None));
        assert!(long.starts_with("time = 7 s") && long.contains("compute a shorter time"), "{long}");
        let mut hard = car(vec![point(-6.0, -60.0), point(6.0, 60.0)], None);
        hard.tyre_rate = Value::new(LinearStiffness::from_si(1e9));
        hard.unsprung_mass = Value::new(Mass::from_si(0.001));
        assert!(why(&hard).contains("tyre_rate is too high"), "{}", why(&hard));
        let block = car(ordinary(), Some((0.01, &[(1e-6, 9000.0)])));
        assert!(why(&block).contains("bump_stop rises too steeply"), "{}", why(&block));
        // A damper of the shop, with a point at 1 mm/s, for half a minute.
        assert_eq!(said(&near_rest(1e-3), 30.0), "11 rows");
    }
}
