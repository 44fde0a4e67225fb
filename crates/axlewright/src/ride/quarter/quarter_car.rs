#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use crate::base::document::{Model, Value};
use crate::base::numeric::hypot;
use crate::base::table::{Filling, Table, record};
use crate::ride::OnRoad;
use crate::ride::road::course::{Course, Road};
use crate::ride::road::on_road::{BandOfWaves, comfort, felt};
use crate::ride::solution::integral::integral;
use crate::ride::solution::linear::{Linear, Tyre, no_modes};
use crate::ride::solution::response::{Motion, table};
use crate::units::{
    Acceleration, Damping, Force, Frequency, Length, LinearStiffness, Mass, Ratio, RoadRoughness,
    STANDARD_GRAVITY, Time, Velocity, angular_velocity, frequency,
};
use crate::{Result, valid};
use nalgebra::{Complex, SVector};

/// A wheel with its share of the body on a road: two masses, linear.
///
/// # Formula
/// `m_s z_s'' = k (z_u - z_s) + c (z_u' - z_s')`; `m_u z_u'' = k_t (z_r - z_u) + c_t (z_r' - z_u') - m_s z_s''`
///
/// # Fields
/// - `sprung_mass` — `m_s`, share of the body's mass on this wheel
/// - `unsprung_mass` — `m_u`, unsprung mass of the wheel
/// - `wheel_rate` — `k`, rate of the suspension at the wheel, without tyre
/// - `wheel_damping` — `c`, damping at the wheel: rate of the damper times the square of its motion ratio
/// - `tyre_rate` — `k_t`, vertical rate of the tyre at its pressure and load
/// - `tyre_damping` — `c_t`, damping of the tyre; 0 if missing
///
/// # Valid for
/// Small motions: no stop is touched. The tyre stays on the ground; a tyre that would lift pulls instead. The damper is the same in bump and rebound. The tyre touches the road
/// at one point: it does not bridge waves shorter than its contact patch. Roads in the time domain: heights within 10 m (1 km in a profile), lengths of 1 mm to 10 km, speeds of 10 mm/s
/// to 200 m/s, up to 100000 s in steps of 1 µs to 100 s, a million rows at the most.
///
/// # Source
/// Newton's law for both masses; Gillespie, Fundamentals of Vehicle Dynamics, chapter 5 (from memory); checked against SciPy and python-control
///
/// # Caution
/// A tyre with a varying load holds the road less. The ride measured on a seat decides, not this result. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct QuarterCar {
    /// Sprung mass on this wheel.
    pub sprung_mass: Value<Mass>,
    /// Unsprung mass of the wheel.
    pub unsprung_mass: Value<Mass>,
    /// Wheel rate of the suspension.
    pub wheel_rate: Value<LinearStiffness>,
    /// Damping at the wheel.
    pub wheel_damping: Value<Damping>,
    /// Vertical rate of the tyre.
    pub tyre_rate: Value<LinearStiffness>,
    /// Damping of the tyre; 0 if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tyre_damping: Option<Value<Damping>>,
}

record! {
    /// The two modes of a quarter car.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct QuarterModes {
        /// Lower natural frequency without damping.
        pub body_undamped_frequency: Frequency,
        /// Higher natural frequency without damping: wheel hop.
        pub hop_undamped_frequency: Frequency,
        /// Natural frequency of the lower mode with damping, the modulus of its roots.
        pub body_frequency: Frequency,
        /// Damping ratio of the lower mode; above 1 it does not oscillate.
        pub body_damping_ratio: Ratio,
        /// Natural frequency of the higher mode with damping.
        pub hop_frequency: Frequency,
        /// Damping ratio of the higher mode.
        pub hop_damping_ratio: Ratio,
    }
}

impl crate::base::Sealed for QuarterCar {}
impl Model for QuarterCar {
    fn check(&self) -> Result<()> {
        let (sprung_mass, unsprung_mass) = (self.sprung_mass.quantity, self.unsprung_mass.quantity);
        let (wheel_rate, tyre_rate) = (self.wheel_rate.quantity, self.tyre_rate.quantity);
        let wheel_damping = self.wheel_damping.quantity;
        let tyre_damping = Damping::from_si(self.numbers().ct);
        valid! {
            sprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel carries 1000 t";
            unsprung_mass: 0.000001 <= .. <= 1000000 ; "plausibility limit: no wheel weighs 1000 t";
            wheel_rate: 1 <= .. <= 1e9 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
            wheel_damping: 0 <= .. <= 1e8 ; "definition: a damper takes energy; plausibility limit: up to 1e8 N·s/m";
            tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
            tyre_damping: 0 <= .. <= 1e8 ; "definition: a damper takes energy; plausibility limit: up to 1e8 N·s/m";
        }
        Ok(())
    }
}

/// The fields as plain numbers.
#[derive(Clone, Copy)]
struct Numbers {
    ms: f64,
    mu: f64,
    k: f64,
    c: f64,
    kt: f64,
    ct: f64,
}

/// Response to a road of one frequency, over its height.
struct Gains {
    body: Complex<f64>,
    body_acceleration: Complex<f64>,
    suspension_travel: Complex<f64>,
    tyre_load: Complex<f64>,
}

impl Numbers {
    /// `D(s) = m_s m_u s^4 + ...` from the highest power.
    fn characteristic(&self) -> [f64; 5] {
        let Numbers { ms, mu, k, c, kt, ct } = *self;
        [ms * mu, c * (ms + mu) + ct * ms, k * (ms + mu) + kt * ms + c * ct, c * kt + ct * k, k * kt]
    }

    fn gains(&self, s: Complex<f64>) -> Gains {
        let Numbers { ms, mu, k, c, kt, ct } = *self;
        let determinant = self.characteristic().iter().fold(Complex::ZERO, |sum, part| sum * s + part);
        let (suspension, tyre, s2) = (c * s + k, ct * s + kt, s * s);
        let body = suspension * tyre / determinant;
        Gains {
            body,
            body_acceleration: s2 * body,
            suspension_travel: ms * s2 * tyre / determinant,
            tyre_load: tyre * s2 * (ms * mu * s2 + (ms + mu) * suspension) / determinant,
        }
    }

    /// Both angular velocities without damping, the lower first.
    fn undamped(&self) -> (f64, f64) {
        let Numbers { ms, mu, k, kt, .. } = *self;
        let (body, tyre) = (k * (ms + mu), kt * ms);
        // The larger root of the quadratic first: the difference would cancel if the wheel is light.
        let root = hypot(body - tyre, 2.0 * ms * (k * kt).sqrt());
        let greater = (body + tyre + root) / 2.0;
        ((k * kt / greater).sqrt(), (greater / (ms * mu)).sqrt())
    }

    /// Height of the body, height of the wheel.
    fn linear(&self) -> Linear<2, 1> {
        let Numbers { ms, mu, k, c, kt, ct } = *self;
        Linear::new([ms, mu], [Tyre { rate: kt, damping: ct }]).with(&SVector::from([-1.0, 1.0]), k, c)
    }
}

record! {
    /// Amplitudes on a wave.
    struct OnWave {
        transmissibility: Ratio,
        body_acceleration: Acceleration,
        suspension_travel: Length,
        tyre_load_variation: Force,
    }
}

impl QuarterCar {
    /// Natural frequencies and damping ratios.
    ///
    /// # Formula
    /// Roots of `m_s m_u s^4 + (c (m_s + m_u) + c_t m_s) s^3 + (k (m_s + m_u) + k_t m_s + c c_t) s^2 + (c k_t + c_t k) s + k k_t`: a pair has
    /// `w = sqrt(s_1 s_2)`, `zeta = -(s_1 + s_2) / (2 w)`
    ///
    /// # Returns
    /// See the fields of [`QuarterModes`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, ride::*, units::*};
    /// let corner = QuarterCar {
    ///     sprung_mass: Value::parse("545 kg")?, unsprung_mass: Value::parse("62 kg")?, wheel_rate: Value::parse("34 N/mm")?,
    ///     wheel_damping: Value::parse("2900 N·s/m")?, tyre_rate: Value::parse("260 N/mm")?, tyre_damping: None,
    /// }.checked()?;
    /// let modes = corner.modes()?;
    /// assert_eq!(format!("{:.2} and {:.1} Hz", modes.body_undamped_frequency.in_::<Hz>(), modes.hop_undamped_frequency.in_::<Hz>()), "1.18 and 11.0 Hz");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn modes(&self) -> Result<QuarterModes> {
        self.check()?;
        let car = self.numbers();
        let hertz = |w: f64| frequency(crate::units::AngularVelocity::from_si(w));
        let (body, hop) = car.undamped();
        let modes = car.linear().modes::<4>()?;
        let [lower, upper] = modes[..] else { return Err(no_modes()) };
        Ok(QuarterModes {
            body_undamped_frequency: hertz(body),
            hop_undamped_frequency: hertz(hop),
            body_frequency: hertz(lower.angular_velocity),
            body_damping_ratio: Ratio::from_si(lower.damping_ratio),
            hop_frequency: hertz(upper.angular_velocity),
            hop_damping_ratio: Ratio::from_si(upper.damping_ratio),
        })
    }

    /// Amplitudes on a sine road, over frequencies.
    ///
    /// # Formula
    /// With `s = 2 pi i f` and `D` the polynomial of the modes: `z_s / z_r = (c s + k) (c_t s + k_t) / D`, travel `m_s s^2 (c_t s + k_t) / D`, tyre load
    /// `(c_t s + k_t) s^2 (m_s m_u s^2 + (m_s + m_u) (c s + k)) / D`
    ///
    /// # Parameters
    /// - `amplitude` — amplitude of the road: half the height from trough to crest, up to 10 m
    /// - `frequency` — frequency at which the wheel meets the waves, speed over wavelength, each up to 1 MHz
    ///
    /// # Returns
    /// One row for each frequency: `frequency`, `transmissibility` (body over road), `body_acceleration`, `suspension_travel`, `tyre_load_variation`.
    pub fn frequency_response(&self, amplitude: Length, frequency: &[Frequency]) -> Result<Table> {
        within_ten_metres(amplitude)?;
        self.check()?;
        let car = self.numbers();
        let mut rows = Filling::over(["frequency"], &[frequency.len()])?;
        for frequency in frequency.iter().copied() {
            let on = up_to_a_megahertz(frequency).map(|()| {
                let on = car.gains(Complex::new(0.0, angular_velocity(frequency).si()));
                let of = |gain: Complex<f64>| amplitude.si() * gain.norm();
                OnWave {
                    transmissibility: Ratio::from_si(on.body.norm()),
                    body_acceleration: Acceleration::from_si(of(on.body_acceleration)),
                    suspension_travel: Length::from_si(of(on.suspension_travel)),
                    tyre_load_variation: Force::from_si(of(on.tyre_load)),
                }
            });
            rows.push((frequency,), on)?;
        }
        rows.finish()
    }

    /// RMS values on a random road, and the comfort.
    ///
    /// # Formula
    /// `x^2 = integral of |H(f)|^2 G_d(f / v) / v df`, for the weighted acceleration `|H W_k|^2`, between the frequencies `v / lambda` of both waves
    ///
    /// # Parameters
    /// - `roughness` — `G`, one-sided density of the road's height at 0.1 cycles a metre
    /// - `speed` — `v`, speed of the vehicle
    /// - `shortest_wave` — shortest wave of the road that the tyre does not bridge; ISO 8608 gives its classes down to 0.35 m
    /// - `longest_wave` — longest wave of the road; ISO 8608 gives its classes up to 91 m
    ///
    /// # Returns
    /// See the fields of [`OnRoad`].
    ///
    /// # Valid for
    /// - `0 <= roughness <= 1`
    /// - `0.01 <= speed <= 200`
    /// - `0.000000001 <= shortest_wave <= 1000000000`
    /// - `0.001 <= longest_wave <= 1000000000`
    /// - `longest_wave > shortest_wave`
    ///
    /// A road of waviness 2. The words are meant for the vibration on a seat; here the floor over the wheel stands in for the seat.
    ///
    /// # Source
    /// ISO 8608:2016 (road), ISO 8041-1:2017 (Wk), ISO 2631-1:1997 C.2.3 (words), all from memory; quadrature checked against Lyapunov solutions of SciPy
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, ride::*, units::*};
    /// let corner = QuarterCar {
    ///     sprung_mass: Value::parse("545 kg")?, unsprung_mass: Value::parse("62 kg")?, wheel_rate: Value::parse("34 N/mm")?,
    ///     wheel_damping: Value::parse("2900 N·s/m")?, tyre_rate: Value::parse("260 N/mm")?, tyre_damping: None,
    /// }.checked()?;
    /// let road = RoadSurface { road_class: RoadClass::B }.roughness()?;
    /// let on = corner.on_road(road, Velocity::of::<km_h>(80.0), Length::of::<m>(0.35), Length::of::<m>(91.0))?;
    /// assert_eq!(format!("{:.2} m/s², {}", on.weighted_acceleration.in_::<m_s2>(), on.comfort), "0.58 m/s², a little uncomfortable to fairly uncomfortable");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn on_road(
        &self,
        roughness: RoadRoughness,
        speed: Velocity,
        shortest_wave: Length,
        longest_wave: Length,
    ) -> Result<OnRoad> {
        valid! {
            roughness: 0 <= .. <= 1 ; "definition: a density is not negative; plausibility limit: the roughest class of ISO 8608 has a quarter of a cubic metre";
            speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s";
            shortest_wave: 0.000000001 <= .. <= 1000000000 ; "plausibility limit: waves lie between 1 nm and 1e9 m";
            longest_wave: 0.001 <= .. <= 1000000000 ; "plausibility limit: waves lie between 1 mm and 1e9 m";
            longest_wave > shortest_wave ; "definition: a band has a lower and an upper end";
        }
        self.check()?;
        let car = self.numbers();
        let (body, hop) = car.undamped();
        let band = BandOfWaves::new(roughness, speed, shortest_wave, longest_wave, [body, hop])?;
        let squares = |logarithm: f64| {
            let hertz = logarithm.exp();
            let on = car.gains(Complex::new(0.0, angular_velocity(Frequency::from_si(hertz)).si()));
            [on.body_acceleration, on.body_acceleration * felt(hertz), on.suspension_travel, on.tyre_load]
                .map(|gain| gain.norm_sqr() * (band.at_one_hertz / hertz))
        };
        let [body, weighted, travel, load] =
            band.integral(|from, to| integral(&squares, from, to, 1e-9)).map(f64::sqrt);
        Ok(OnRoad {
            body_acceleration: Acceleration::from_si(body),
            weighted_acceleration: Acceleration::from_si(weighted),
            comfort: comfort(weighted),
            suspension_travel: Length::from_si(travel),
            tyre_load_variation: Force::from_si(load),
            tyre_load_share: Ratio::from_si(load / ((car.ms + car.mu) * STANDARD_GRAVITY)),
        })
    }

    /// Motion after a step of the road.
    ///
    /// # Parameters
    /// - `height` — height of the step, negative for a step down
    /// - `duration` — time to compute
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0: `time`, `road_height`, `body_displacement`, `wheel_displacement`, `suspension_travel`, `body_acceleration`,
    /// `tyre_load_variation`; exact at every row.
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
    /// One row for each time step from 0, as after a step; exact at every row.
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
    /// One row for each time step from 0, as after a step; exact at every row.
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
    /// One row for each time step from the first distance to the last, as after a step; exact at every row for the road of straight lines.
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
        self.check()?;
        let course = Course::new([road], duration, time_step)?;
        let mut motion = Motion::with_capacity(course.rows());
        self.numbers().linear().motion::<6>(&course, |on| {
            motion.push(on.time, on.road[0], [on.place[0], on.place[1]], on.acceleration[0], on.tyre_load[0]);
        })?;
        Ok(table(motion, Vec::new()))
    }

    fn numbers(&self) -> Numbers {
        Numbers {
            ms: self.sprung_mass.quantity.si(),
            mu: self.unsprung_mass.quantity.si(),
            k: self.wheel_rate.quantity.si(),
            c: self.wheel_damping.quantity.si(),
            kt: self.tyre_rate.quantity.si(),
            ct: self.tyre_damping.as_ref().map_or(0.0, |on| on.quantity.si()),
        }
    }
}

fn within_ten_metres(amplitude: Length) -> Result<()> {
    valid! { amplitude: 0 <= .. <= 10 ; "definition: an amplitude is not negative; plausibility limit: nobody drives over 10 m"; }
    Ok(())
}

fn up_to_a_megahertz(frequency: Frequency) -> Result<()> {
    valid! { frequency: 0 <= .. <= 1000000 ; "definition: a frequency is not negative; plausibility limit: above 1 MHz it is a typing error"; }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Hz, km_h, m, mm, s};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn car(ms: f64, mu: f64, k: f64, c: f64, kt: f64, ct: f64) -> QuarterCar {
        QuarterCar {
            sprung_mass: Value::new(Mass::from_si(ms)),
            unsprung_mass: Value::new(Mass::from_si(mu)),
            wheel_rate: Value::new(LinearStiffness::from_si(k)),
            wheel_damping: Value::new(Damping::from_si(c)),
            tyre_rate: Value::new(LinearStiffness::from_si(kt)),
            tyre_damping: (ct > 0.0).then(|| Value::new(Damping::from_si(ct))),
        }
    }

    fn ours() -> QuarterCar {
        car(300.0, 40.0, 22e3, 1500.0, 190e3, 60.0)
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        for (name, wrong) in [
            ("sprung_mass", car(0.0, 40.0, 22e3, 1500.0, 190e3, 0.0)),
            ("sprung_mass", car(-1.0, 40.0, 22e3, 1500.0, 190e3, 0.0)),
            ("unsprung_mass", car(300.0, 0.0, 22e3, 1500.0, 190e3, 0.0)),
            ("wheel_rate", car(300.0, 40.0, f64::NAN, 1500.0, 190e3, 0.0)),
            ("wheel_damping", car(300.0, 40.0, 22e3, -1.0, 190e3, 0.0)),
            ("tyre_rate", car(300.0, 40.0, 22e3, 1500.0, 0.0, 0.0)),
            ("tyre_damping", car(300.0, 40.0, 22e3, 1500.0, 190e3, 1e9)),
        ] {
            assert!(wrong.modes().unwrap_err().to_string().starts_with(name), "{name}");
        }
    }

    /// Without a damper, eigenvalues have a real part of rounding, of either sign.
    #[test]
    fn a_mode_without_damping_has_the_ratio_zero_and_none_has_less() {
        for share in 0..200 {
            let (mass, rate) = (200.0 + f64::from(share), 15e3 + 137.0 * f64::from(share));
            let modes = |c, ct| car(mass, 31.0, rate, c, 190e3, ct).modes().unwrap();
            let ratios = |of: QuarterModes| [of.body_damping_ratio.si(), of.hop_damping_ratio.si()];
            assert_eq!(ratios(modes(0.0, 0.0)).map(f64::to_bits), [0, 0], "{mass} kg, {rate} N/m");
            for damped in [modes(1e-12, 0.0), modes(0.0, 1e-12), modes(1500.0, 0.0)] {
                assert!(ratios(damped).iter().all(|ratio| *ratio >= 0.0), "{mass} kg, {rate} N/m");
            }
        }
    }

    #[test]
    fn a_mode_that_does_not_swing_has_a_ratio_above_one_and_two_have_none() {
        let modes = car(300.0, 40.0, 22e3, 8000.0, 190e3, 0.0).modes().unwrap();
        assert!(modes.hop_damping_ratio.si() > 1.0 || modes.body_damping_ratio.si() > 1.0);
        let both = car(300.0, 40.0, 22e3, 1e6, 190e3, 1e6).modes();
        assert!(both.unwrap_err().to_string().contains("neither swings"));
    }

    /// A slow road moves body and wheel with it; the comfort words at the edges of their bands.
    #[test]
    fn limits_and_words() {
        let table =
            ours().frequency_response(Length::of::<mm>(1.0), &[0.0, 1e-3, -1.0].map(Frequency::of::<Hz>));
        let table = table.unwrap();
        assert_eq!(table.numbers("transmissibility").unwrap()[0], 1.0);
        assert_relative_eq!(table.numbers("transmissibility").unwrap()[1], 1.0, max_relative = 1e-5);
        assert!(table.reason(2).is_some());
        assert_eq!(comfort(0.3), "not uncomfortable");
        assert_eq!(comfort(0.55), "a little uncomfortable to fairly uncomfortable");
        assert_eq!(comfort(3.0), "extremely uncomfortable");
    }

    /// One road given in three ways gives the same motion, also with damping in the tyre.
    #[test]
    fn a_ramp_is_a_profile_and_a_short_one_a_step() {
        let (speed, end, step) = (Velocity::of::<km_h>(36.0), Time::of::<s>(1.0), Time::of::<s>(0.007));
        let (height, length) = (Length::of::<mm>(60.0), Length::of::<m>(0.5));
        let ramp = ours().ramp(height, length, speed, end, step).unwrap();
        let nothing = Length::from_si(0.0);
        let distances = [nothing, length, Length::of::<m>(10.0)];
        let profile = ours().profile(speed, step, &distances, &[nothing, height, height]).unwrap();
        let names = [
            "road_height",
            "body_displacement",
            "wheel_displacement",
            "body_acceleration",
            "tyre_load_variation",
        ];
        for name in names {
            let (one, other) = (ramp.numbers(name).unwrap(), profile.numbers(name).unwrap());
            let size = one.iter().fold(0.0_f64, |size, x| size.max(x.abs()));
            assert_eq!(one.len(), other.len());
            for (a, b) in one.iter().zip(other) {
                assert!((a - b).abs() < 1e-10 * size, "{name}: {a} {b}");
            }
        }
        let steep = ours().ramp(height, Length::of::<mm>(1.0), Velocity::from_si(200.0), end, step).unwrap();
        let sudden = ours().step(height, end, step).unwrap();
        let (a, b) =
            (steep.numbers("body_displacement").unwrap(), sudden.numbers("body_displacement").unwrap());
        for (a, b) in a.iter().zip(b).skip(1) {
            assert!((a - b).abs() < 1e-5, "{a} {b}");
        }
    }

    proptest! {
        /// Sum and product of the roots are those of the polynomial, and damping never raises a frequency above the undamped one.
        #[test]
        fn modes_multiply_to_what_the_rates_say(ms in 50.0f64..3000.0, mu in 5.0f64..300.0, k in 5e3f64..3e5, zeta in 0.01f64..0.9, kt in 1e5f64..1e6) {
            let c = 2.0 * zeta * (k * ms).sqrt();
            let modes = car(ms, mu, k, c, kt, 0.0).modes().unwrap();
            let w = |f: Frequency| angular_velocity(f).si();
            let product = w(modes.body_frequency) * w(modes.hop_frequency);
            prop_assert!((product / (k * kt / (ms * mu)).sqrt() - 1.0).abs() < 1e-9);
            let undamped = w(modes.body_undamped_frequency) * w(modes.hop_undamped_frequency);
            prop_assert!((product / undamped - 1.0).abs() < 1e-9);
            let sum = 2.0 * (w(modes.body_frequency) * modes.body_damping_ratio.si() + w(modes.hop_frequency) * modes.hop_damping_ratio.si());
            prop_assert!((sum / (c * (ms + mu) / (ms * mu)) - 1.0).abs() < 1e-8);
        }
    }
}
