//! A body on the wheels of two axles, which meet the same road one after the other: the common part of `HalfCar` and `FullCar`.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use crate::base::table::{Column, Field, Filling, Table};
use crate::ride::road::course::{Course, Road, delay};
use crate::ride::road::on_road::{BandOfWaves, VehicleOnRoad, comfort, felt};
use crate::ride::road::track_coherence::track_coherence;
use crate::ride::solution::integral::integral;
use crate::ride::solution::linear::{Instant, Linear, Tyre};
use crate::ride::solution::matrix::{Eliminate, Square};
use crate::units::{
    Acceleration, Angle, AngularVelocity, Force, Frequency, Length, Ratio, STANDARD_GRAVITY, Time, Velocity,
    angular_velocity, frequency,
};
use crate::{Result, valid};
use nalgebra::{Complex, SMatrix, SVector};

/// A place on the body, which gives its height from heave, pitch and roll.
pub(super) struct Place {
    /// Distance in front of the centre of mass.
    pub(super) forward: f64,
    /// Distance to the left of it.
    pub(super) left: f64,
}

/// Masses, rates and damping at one wheel, or at both of an axle.
#[derive(Clone, Copy)]
pub(super) struct Corner {
    pub(super) unsprung_mass: f64,
    pub(super) wheel_rate: f64,
    pub(super) wheel_damping: f64,
    pub(super) tyre: Tyre,
}

/// `N` coordinates, the body's first, and `W` wheels: the front ones, then the rear ones, left before right.
pub(super) struct Vehicle<const N: usize, const W: usize> {
    pub(super) linear: Linear<N, W>,
    /// Travel of each wheel against the body, in bump.
    travel: [SVector<f64, N>; W],
    seat: SVector<f64, N>,
    static_load: [f64; W],
    wheelbase: f64,
    names: &'static [&'static str],
}

impl<const N: usize, const W: usize> Vehicle<N, W> {
    /// From the masses of the body's coordinates, the places and the corners of the wheels.
    pub(super) fn new(
        body: &[f64],
        wheels: [(Place, Corner); W],
        body_load: [f64; W],
        seat: &Place,
        names: &'static [&'static str],
    ) -> Self {
        // Pitch is positive nose down, roll is positive left side up.
        let height = |place: &Place| {
            let mut arm = SVector::<f64, N>::zeros();
            for (i, part) in [1.0, -place.forward, place.left].into_iter().take(N - W).enumerate() {
                arm[i] = part;
            }
            arm
        };
        let mass = core::array::from_fn(|i| match i.checked_sub(N - W) {
            None => body[i],
            Some(wheel) => wheels[wheel].1.unsprung_mass,
        });
        let travel: [SVector<f64, N>; W] = core::array::from_fn(|wheel| {
            let mut travel = -height(&wheels[wheel].0);
            travel[N - W + wheel] = 1.0;
            travel
        });
        let free = Linear::new(mass, core::array::from_fn(|wheel| wheels[wheel].1.tyre));
        let linear = wheels.iter().zip(&travel).fold(free, |linear, ((_, corner), travel)| {
            linear.with(travel, corner.wheel_rate, corner.wheel_damping)
        });
        let static_load =
            core::array::from_fn(|wheel| body_load[wheel] + wheels[wheel].1.unsprung_mass * STANDARD_GRAVITY);
        let wheelbase = wheels[0].0.forward - wheels[W - 1].0.forward;
        Self { linear, travel, seat: height(seat), static_load, wheelbase, names }
    }

    /// Adds an anti-roll bar between two wheels, by its rate at the wheels when they travel against each other.
    pub(super) fn with_bar(mut self, left: usize, right: usize, rate: f64) -> Self {
        let twist = self.travel[left] - self.travel[right];
        self.linear = self.linear.with(&twist, rate / 2.0, 0.0);
        self
    }

    /// Roads of the wheels: those of the front axle, and the same later for the rear axle.
    pub(super) fn course(
        &self,
        front: &[Road],
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Course<W>> {
        let late = delay(self.wheelbase, speed)?;
        let roads = core::array::from_fn(|wheel| {
            let side = &front[wheel % front.len()];
            if wheel < W / 2 { side.clone() } else { side.later(late) }
        });
        Course::new(roads, duration, time_step)
    }

    /// One row for each mode, the slowest first.
    pub(super) fn modes<const S: usize>(&self) -> Result<Table>
    where
        SMatrix<f64, S, S>: Square,
        SMatrix<Complex<f64>, N, N>: Eliminate<N, 1>,
    {
        let parts: &[(&str, &str)] = if N - W == 2 {
            &[("bounce", "bounce_share"), ("pitch", "pitch_share")]
        } else {
            &[("bounce", "bounce_share"), ("pitch", "pitch_share"), ("roll", "roll_share")]
        };
        let wheels = [("front wheels", "front_share"), ("rear wheels", "rear_share")];
        let named = || parts.iter().chain(&wheels);
        let mut columns = vec![Frequency::column("frequency"), Ratio::column("damping_ratio")];
        columns.extend(named().map(|(_, share)| Ratio::column(share)));
        let modes = self.linear.modes::<S>()?;
        let mut rows = Filling::with(["mode"], columns, &[modes.len()])?;
        for mode in modes {
            let (body, wheel) = mode.shares.split_at(N - W);
            let (front, rear) = wheel.split_at(W / 2);
            let mut shares = body.to_vec();
            shares.extend([front.iter().sum::<f64>(), rear.iter().sum()]);
            let most = shares.iter().zip(named()).max_by(|a, b| a.0.total_cmp(b.0));
            let word = most.map_or("", |(_, (word, _))| *word);
            let mut numbers =
                vec![frequency(AngularVelocity::from_si(mode.angular_velocity)).si(), mode.damping_ratio];
            numbers.extend(shares);
            rows.push((word,), Ok(numbers))?;
        }
        rows.finish()
    }

    /// Response to a wave that each wheel meets with its `sign`, the rear ones later, over the height of the wave.
    fn wave(
        &self,
        gains: &SMatrix<Complex<f64>, N, W>,
        s: Complex<f64>,
        late: f64,
        signs: [f64; W],
    ) -> Wave<N, W> {
        let road = SVector::<Complex<f64>, W>::from_fn(|wheel, _| {
            let delayed = if wheel < W / 2 { Complex::ONE } else { (-s * late).exp() };
            delayed * signs[wheel]
        });
        let place = gains * road;
        let along =
            |arm: &SVector<f64, N>| arm.iter().zip(&place).map(|(arm, at)| at * arm).sum::<Complex<f64>>();
        Wave {
            seat: s * s * along(&self.seat),
            centre: s * s * place[0],
            travel: core::array::from_fn(|wheel| along(&self.travel[wheel])),
            tyre_load: core::array::from_fn(|wheel| {
                self.linear.tyre(wheel, s) * (road[wheel] - place[N - W + wheel])
            }),
            place,
        }
    }

    /// Amplitudes over frequencies on waves with these signs.
    pub(super) fn response(
        &self,
        amplitude: Length,
        speed: Velocity,
        frequency: &[Frequency],
        signs: [f64; W],
    ) -> Result<Table>
    where
        SMatrix<Complex<f64>, N, N>: Eliminate<N, W>,
    {
        valid! { amplitude: 0 <= .. <= 10 ; "definition: an amplitude is not negative; plausibility limit: nobody drives over 10 m"; }
        let late = delay(self.wheelbase, speed)?;
        let mut columns: Vec<Column> = self.body_columns().collect();
        columns.extend(
            self.columns().flat_map(|(_, travel, load)| [Length::column(travel), Force::column(load)]),
        );
        let mut rows = Filling::with(["frequency"], columns, &[frequency.len()])?;
        for frequency in frequency.iter().copied() {
            let numbers = up_to_a_kilohertz(frequency).map(|()| {
                let s = swinging(frequency.si());
                let on = self.wave(&self.linear.gains(s), s, late, signs);
                let of = |gain: &Complex<f64>| amplitude.si() * gain.norm();
                let mut numbers: Vec<f64> = on.place.iter().take(N - W).map(of).collect();
                numbers.push(of(&on.seat));
                for (travel, load) in on.travel.iter().zip(&on.tyre_load) {
                    numbers.extend([of(travel), of(load)]);
                }
                numbers
            });
            rows.push((frequency,), numbers)?;
        }
        rows.finish()
    }

    /// RMS values on a random road; `track` is zero if both tracks are one.
    pub(super) fn on_road(&self, band: &BandOfWaves, track: f64) -> Result<VehicleOnRoad>
    where
        SMatrix<Complex<f64>, N, N>: Eliminate<N, W>,
    {
        let (late, speed) = (delay(self.wheelbase, band.speed)?, band.speed.si());
        let (rear, both) = (W - 1, W == 2);
        let squares = |logarithm: f64| {
            let hertz = logarithm.exp();
            let density = band.at_one_hertz / hertz;
            let alike = track_coherence(hertz / speed * track);
            let weight = felt(hertz);
            let mut sums = [0.0; 7];
            let mut add = |wave: &Wave<N, W>, density: f64| {
                let gains = [
                    wave.centre,
                    wave.seat,
                    wave.seat * weight,
                    wave.travel[0],
                    wave.travel[rear],
                    wave.tyre_load[0],
                    wave.tyre_load[rear],
                ];
                sums.iter_mut().zip(gains).for_each(|(sum, gain)| *sum += gain.norm_sqr() * density);
            };
            let s = swinging(hertz);
            let gains = self.linear.gains(s);
            add(&self.wave(&gains, s, late, [1.0; W]), density * (1.0 + alike) / 2.0);
            if !both {
                // Left up with right down.
                let against = core::array::from_fn(|wheel| if wheel % 2 == 0 { 1.0 } else { -1.0 });
                add(&self.wave(&gains, s, late, against), density * (1.0 - alike) / 2.0);
            }
            sums
        };
        let sums = band.integral(|from, to| integral(&squares, from, to, 1e-9));
        let [centre, seat, weighted, front_travel, rear_travel, front_load, rear_load] = sums.map(f64::sqrt);
        Ok(VehicleOnRoad {
            body_acceleration: Acceleration::from_si(centre),
            seat_acceleration: Acceleration::from_si(seat),
            weighted_acceleration: Acceleration::from_si(weighted),
            comfort: comfort(weighted),
            front_suspension_travel: Length::from_si(front_travel),
            rear_suspension_travel: Length::from_si(rear_travel),
            front_tyre_load_variation: Force::from_si(front_load),
            rear_tyre_load_variation: Force::from_si(rear_load),
            front_tyre_load_share: Ratio::from_si(front_load / self.static_load[0]),
            rear_tyre_load_share: Ratio::from_si(rear_load / self.static_load[rear]),
        })
    }

    /// The motion along a course, a row a time step.
    pub(super) fn along<const S: usize>(&self, course: &Course<W>) -> Result<Table>
    where
        SMatrix<f64, S, S>: Square,
        SMatrix<Complex<f64>, N, N>: Eliminate<N, W>,
    {
        let mut columns: Vec<Vec<f64>> =
            (0..2 + N - W + 3 * W).map(|_| Vec::with_capacity(course.rows())).collect();
        self.linear.motion::<S>(course, |on: &Instant<N, W>| {
            let wheels = (0..W)
                .flat_map(|wheel| [on.road[wheel], self.travel[wheel].dot(&on.place), on.tyre_load[wheel]]);
            let body = on.place.iter().take(N - W).copied();
            let seat = self.seat.dot(&on.acceleration);
            let cells = [on.time].into_iter().chain(body).chain([seat]).chain(wheels);
            columns.iter_mut().zip(cells).for_each(|(column, cell)| column.push(cell));
        })?;
        let mut names = vec![Time::column("time")];
        names.extend(self.body_columns());
        names.extend(self.columns().flat_map(|(road, travel, load)| {
            [Length::column(road), Length::column(travel), Force::column(load)]
        }));
        let columns = names.into_iter().zip(columns).map(|(column, numbers)| column.with(numbers));
        Ok(Table::of(columns.collect(), course.rows(), Vec::new()))
    }

    /// Columns of the body's motion.
    fn body_columns(&self) -> impl Iterator<Item = Column> {
        let angles = ["pitch", "roll"].into_iter().take(N - W - 1).map(Angle::column);
        [Length::column("body_displacement")]
            .into_iter()
            .chain(angles)
            .chain([Acceleration::column("seat_acceleration")])
    }

    /// Names of the columns of each wheel: road height, travel, tyre load.
    fn columns(&self) -> impl Iterator<Item = (&'static str, &'static str, &'static str)> {
        self.names.chunks_exact(3).map(|names| (names[0], names[1], names[2]))
    }
}

/// Complex amplitudes over the height of a wave.
struct Wave<const N: usize, const W: usize> {
    place: SVector<Complex<f64>, N>,
    centre: Complex<f64>,
    seat: Complex<f64>,
    travel: [Complex<f64>; W],
    tyre_load: [Complex<f64>; W],
}

/// `2 pi i f`.
fn swinging(hertz: f64) -> Complex<f64> {
    Complex::new(0.0, angular_velocity(Frequency::from_si(hertz)).si())
}

fn up_to_a_kilohertz(frequency: Frequency) -> Result<()> {
    valid! { frequency: 0 <= .. <= 1000 ; "definition: a frequency is not negative; plausibility limit: above 1 kHz it is a typing error"; }
    Ok(())
}
