use super::axle_wheel::AxleWheel;
use super::vehicle::{Place, Vehicle};
use crate::base::document::{Model, Value};
use crate::base::numeric::hypot;
use crate::base::table::{Table, record};
use crate::ride::road::course::Road;
use crate::ride::road::on_road::{BandOfWaves, VehicleOnRoad};
use crate::ride::{dynamic_index, flat_ride_cycles};
use crate::units::{
    AngularVelocity, Frequency, Length, LinearStiffness, Mass, MomentOfInertia, Ratio, RoadRoughness,
    STANDARD_GRAVITY, Time, Velocity, frequency,
};
use crate::{Result, valid};

/// A body that bounces and pitches on both axles, which drive over the same road one after the other: four degrees of freedom, linear.
///
/// # Formula
/// Height of the body at a place `x` in front of its centre: `z - x u`, with pitch `u` positive nose down. `m_s z'' = sum of F`, `I u'' = -a F_f + b F_r`
/// with `F = k (z_u - z_x) + c (z_u' - z_x')` of both wheels of an axle; `m_u z_u'' = k_t (z_r - z_u) + c_t (z_r' - z_u') - F`; the rear meets the road later by `(a + b) / v`
///
/// # Fields
/// - `sprung_mass` — `m_s`, mass of the whole body
/// - `pitch_inertia` — `I`, pitch inertia of the sprung mass about the lateral axis through its centre
/// - `front_distance` — `a`, distance from the centre of the sprung mass to the front axle
/// - `rear_distance` — `b`, distance from the centre of the sprung mass to the rear axle
/// - `front` — one front wheel: `unsprung_mass` (`m_u`), `wheel_rate` (`k`, without tyre), `wheel_damping` (`c`, rate of the damper times the square of its motion ratio), `tyre_rate` (`k_t`), `tyre_damping` (`c_t`, 0 if missing)
/// - `rear` — one rear wheel, with the same fields
/// - `seat_forward` — `x`, distance of the seat in front of the centre of the sprung mass, negative behind it; 0 if missing
///
/// # Valid for
/// Small motions: no stop is touched. The tyres stay on the ground; a tyre that would lift pulls instead. Both tracks follow one road profile. Tyres touch the road at one point. Roads in the time domain as for
/// `ride.QuarterCar`.
///
/// # Source
/// Newton's law; Gillespie, Fundamentals of Vehicle Dynamics, chapter 5 (from memory); checked against SciPy
///
/// # Caution
/// A tyre with a varying load holds the road less. The ride measured on a seat decides, not this result. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct HalfCar {
    /// Sprung mass of the whole body.
    pub sprung_mass: Value<Mass>,
    /// Pitch inertia of the sprung mass about the lateral axis through its centre.
    pub pitch_inertia: Value<MomentOfInertia>,
    /// Distance from the centre of the sprung mass to the front axle.
    pub front_distance: Value<Length>,
    /// Distance from the centre of the sprung mass to the rear axle.
    pub rear_distance: Value<Length>,
    /// One front wheel.
    pub front: AxleWheel,
    /// One rear wheel.
    pub rear: AxleWheel,
    /// Distance of the seat in front of the centre of the sprung mass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seat_forward: Option<Value<Length>>,
}

record! {
    /// The two modes in which a body swings on its axles.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct BodyModes {
        /// Frequency of the mode with the more distant centre.
        pub bounce_frequency: Frequency,
        /// Centre of bounce, in front of the centre of mass, negative behind it; infinite for pure bounce.
        pub bounce_centre: Length,
        /// Frequency of the mode with the nearer centre.
        pub pitch_frequency: Frequency,
        /// Centre of pitch, in front of the centre of mass, negative behind it.
        pub pitch_centre: Length,
        /// Square of the radius of gyration over the product of the distances.
        pub dynamic_index: Ratio,
    }
}

record! {
    /// Motion of front and rear one after the other over a bump.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct FlatRide {
        /// Frequency of the body's share on the front axle.
        pub front_frequency: Frequency,
        /// Frequency of the body's share on the rear axle; if it is no higher than the front's, the ride is never flat and the call is refused.
        pub rear_frequency: Frequency,
        /// Rear frequency over front frequency.
        pub frequency_ratio: Ratio,
        /// Cycles of the front from the bump until both ends move together; one to one and a half is a flat ride.
        pub cycles: Ratio,
    }
}

impl crate::base::Sealed for HalfCar {}
impl Model for HalfCar {
    fn check(&self) -> Result<()> {
        let (sprung_mass, pitch_inertia) = (self.sprung_mass.quantity, self.pitch_inertia.quantity);
        let (front_distance, rear_distance) = (self.front_distance.quantity, self.rear_distance.quantity);
        let seat_forward = Length::from_si(self.seat().forward);
        valid! {
            sprung_mass: 0.001 <= .. <= 4000000 ; "plausibility limit: no vehicle weighs 4000 t";
            pitch_inertia: 0.001 <= .. <= 1000000000 ; "plausibility limit: no vehicle has more than 1e9 kg·m²";
            front_distance: 0.001 <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
            rear_distance: 0.001 <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
            seat_forward: (-100) <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
        }
        self.front.check("front")?;
        self.rear.check("rear")
    }
}

const NAMES: [&str; 6] = [
    "front_road_height",
    "front_suspension_travel",
    "front_tyre_load_variation",
    "rear_road_height",
    "rear_suspension_travel",
    "rear_tyre_load_variation",
];

impl HalfCar {
    /// The natural modes, the slowest first.
    ///
    /// # Formula
    /// Eigenvalues of the state matrix: a pair has `w = sqrt(s_1 s_2)`, `zeta = -(s_1 + s_2) / (2 w)`; shares of the kinetic energy `m_i |q_i|^2` of its eigenvector
    ///
    /// # Returns
    /// One row for each mode: `mode` (named for its largest part: `bounce`, `pitch`, `front wheels`, `rear wheels`), `frequency` (natural, the modulus of its roots), `damping_ratio`, and the shares of the
    /// kinetic energy `bounce_share`, `pitch_share`, `front_share`, `rear_share`. A mode with a damping ratio above 1 does not oscillate; two such modes are refused.
    pub fn modes(&self) -> Result<Table> {
        self.check()?;
        self.vehicle().modes::<8>()
    }

    /// Frequencies of bounce and pitch, and the points about which the body swings, without damping, on wheels that follow the road.
    ///
    /// # Formula
    /// With the ride rates `k_f` and `k_r` of both wheels of an axle, tyres in series, `A = (k_f + k_r) / m_s`, `B = (k_r b - k_f a) / m_s`, `C = (k_f a^2 + k_r b^2) / I`, `j^2 = I / m_s`:
    /// `w^2 = (A + C) / 2 +- sqrt(((A - C) / 2)^2 + B^2 / j^2)`; centre `x = B / (w^2 - A)` in front of the centre of mass, and `x_1 x_2 = -j^2`
    ///
    /// # Returns
    /// See the fields of [`BodyModes`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, ride::*, units::*};
    /// let wheel = |mass: &str, rate: &str| Ok::<_, axlewright::Error>(AxleWheel {
    ///     unsprung_mass: Value::parse(mass)?, wheel_rate: Value::parse(rate)?, wheel_damping: Value::parse("2900 N·s/m")?,
    ///     tyre_rate: Value::parse("260 N/mm")?, tyre_damping: None,
    /// });
    /// let van = HalfCar {
    ///     sprung_mass: Value::parse("2100 kg")?, pitch_inertia: Value::parse("3900 kg·m²")?, front_distance: Value::parse("1.2 m")?,
    ///     rear_distance: Value::parse("1.7 m")?, front: wheel("62 kg", "38 N/mm")?, rear: wheel("75 kg", "40 N/mm")?, seat_forward: None,
    /// }.checked()?;
    /// let modes = van.bounce_and_pitch()?;
    /// assert_eq!(format!("{:.2} and {:.2} Hz", modes.bounce_frequency.in_::<Hz>(), modes.pitch_frequency.in_::<Hz>()), "1.19 and 1.47 Hz");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn bounce_and_pitch(&self) -> Result<BodyModes> {
        self.check()?;
        let (mass, inertia) = (self.sprung_mass.quantity.si(), self.pitch_inertia.quantity.si());
        let (a, b) = (self.front_distance.quantity.si(), self.rear_distance.quantity.si());
        let (front, rear) = (2.0 * self.front.ride_rate()?.si(), 2.0 * self.rear.ride_rate()?.si());
        let (bounce, pitch) = ((front + rear) / mass, (front * a * a + rear * b * b) / inertia);
        let coupling = (rear * b - front * a) / mass;
        let gyration2 = inertia / mass;
        // A rotation of the symmetric matrix: the smaller its angle, the more a mode keeps its name.
        let half = (bounce - pitch) / 2.0;
        let spread = hypot(half, coupling / gyration2.sqrt());
        let sign = if half < 0.0 { -1.0 } else { 1.0 };
        let mean = (bounce + pitch) / 2.0;
        // The smaller one is the product of both over the larger, so that nothing cancels.
        let product = front * rear * (a + b) * (a + b) / (mass * inertia);
        let of = |sign: f64| if sign > 0.0 { mean + spread } else { product / (mean + spread) };
        // Centre of the mode nearer to pitch: x = B / (w_pitch^2 - A), in which both terms have the same sign.
        let away = -(half + sign * spread);
        let pitch_centre = if coupling == 0.0 { 0.0 } else { coupling / away };
        let bounce_centre = if coupling == 0.0 { f64::INFINITY } else { -gyration2 / pitch_centre };
        let hertz = |square: f64| frequency(AngularVelocity::from_si(square.sqrt()));
        Ok(BodyModes {
            bounce_frequency: hertz(of(sign)),
            bounce_centre: Length::from_si(bounce_centre),
            pitch_frequency: hertz(of(-sign)),
            pitch_centre: Length::from_si(pitch_centre),
            dynamic_index: dynamic_index(
                self.pitch_inertia.quantity,
                self.sprung_mass.quantity,
                self.front_distance.quantity,
                self.rear_distance.quantity,
            )?,
        })
    }

    /// Flat ride: cycles after which the rear catches up with the front after a bump.
    ///
    /// # Formula
    /// `f_f = sqrt(k_f / m_f) / (2 pi)` with `m_f = m_s b / (a + b)` on both wheels, tyres in series, the rear likewise; cycles `n = f_f f_r t / (f_r - f_f)` with `t = (a + b) / v`
    ///
    /// # Parameters
    /// - `speed` — `v`, speed of the vehicle
    ///
    /// # Returns
    /// See the fields of [`FlatRide`].
    ///
    /// # Source
    /// Common practice after Olley (Gillespie, Fundamentals of Vehicle Dynamics, chapter 5; Milliken, Chassis Design; from memory)
    pub fn flat_ride(&self, speed: Velocity) -> Result<FlatRide> {
        self.check()?;
        let (front, rear) = (self.front_distance.quantity, self.rear_distance.quantity);
        let wheelbase = front + rear;
        let swings = |rate: LinearStiffness, other: Length| {
            crate::spring::natural_frequency(rate, self.sprung_mass.quantity * (other / wheelbase))
        };
        let front_frequency = swings(self.front.ride_rate()? * 2.0, rear)?;
        let rear_frequency = swings(self.rear.ride_rate()? * 2.0, front)?;
        Ok(FlatRide {
            front_frequency,
            rear_frequency,
            frequency_ratio: rear_frequency / front_frequency,
            cycles: flat_ride_cycles(front_frequency, rear_frequency, wheelbase, speed)?,
        })
    }
    /// Amplitudes on sine waves under all wheels, met later by the rear ones.
    ///
    /// # Parameters
    /// - `amplitude` — amplitude of the road: half the height from trough to crest, up to 10 m
    /// - `speed` — speed of the vehicle, which sets the delay of the rear wheels
    /// - `frequency` — frequency at which the wheels meet the waves, speed over wavelength, each up to 1 kHz
    ///
    /// # Returns
    /// One row for each frequency: `frequency`, `body_displacement` (of the centre of mass), `pitch`, `seat_acceleration`; `front_suspension_travel` and `front_tyre_load_variation` (both wheels of the
    /// axle), `rear_suspension_travel` and `rear_tyre_load_variation`.
    pub fn frequency_response(
        &self,
        amplitude: Length,
        speed: Velocity,
        frequency: &[Frequency],
    ) -> Result<Table> {
        self.check()?;
        self.vehicle().response(amplitude, speed, frequency, [1.0; 2])
    }

    /// RMS values on a random road, and the comfort at the seat.
    ///
    /// # Formula
    /// `x^2 = integral of |H(f)|^2 G_d(f / v) / v df` with the rear axle later by `(a + b) / v`, for the weighted acceleration `|H W_k|^2`
    ///
    /// # Parameters
    /// - `roughness` — `G`, one-sided density of the road's height at 0.1 cycles a metre
    /// - `speed` — `v`, speed of the vehicle
    /// - `shortest_wave` — shortest wave of the road that the tyre does not bridge; ISO 8608 gives its classes down to 0.35 m
    /// - `longest_wave` — longest wave of the road; ISO 8608 gives its classes up to 91 m
    ///
    /// # Returns
    /// See the fields of [`VehicleOnRoad`]. For this model:
    /// - `front_tyre_load_variation` — variation of the load of both front tyres together, about the static load
    /// - `rear_tyre_load_variation` — variation of the load of both rear tyres together, about the static load
    ///
    /// # Valid for
    /// - `0 <= roughness <= 1`
    /// - `0.01 <= speed <= 200`
    /// - `0.01 <= shortest_wave <= 1000`
    /// - `0.1 <= longest_wave <= 100000`
    /// - `longest_wave > shortest_wave`
    ///
    /// A road of waviness 2, the same under left and right.
    ///
    /// # Source
    /// ISO 8608:2016 (road), ISO 8041-1:2017 (Wk), ISO 2631-1:1997 C.2.3 (words), all from memory; quadrature checked against Lyapunov solutions of SciPy
    pub fn on_road(
        &self,
        roughness: RoadRoughness,
        speed: Velocity,
        shortest_wave: Length,
        longest_wave: Length,
    ) -> Result<VehicleOnRoad> {
        valid! {
            roughness: 0 <= .. <= 1 ; "definition: a density is not negative; plausibility limit: the roughest class of ISO 8608 has a quarter of a cubic metre";
            speed: 0.01 <= .. <= 200 ; "plausibility limit: vehicles drive between 10 mm/s and 200 m/s";
            shortest_wave: 0.01 <= .. <= 1000 ; "plausibility limit: no tyre feels waves of 10 mm";
            longest_wave: 0.1 <= .. <= 100000 ; "plausibility limit: waves of 100 km shake no one";
            longest_wave > shortest_wave ; "definition: a band has a lower and an upper end";
        }
        self.check()?;
        let vehicle = self.vehicle();
        let resonances = vehicle.linear.resonances();
        let band = BandOfWaves::new(roughness, speed, shortest_wave, longest_wave, resonances)?;
        vehicle.on_road(&band, 0.0)
    }

    /// Motion after a step of the road, met later by the rear wheels.
    ///
    /// # Parameters
    /// - `height` — height of the step, negative for a step down
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the step under the front wheels
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0: `time`, `body_displacement` (of the centre of mass), `pitch` (positive nose down), `seat_acceleration`; for the front axle `front_road_height`,
    /// `front_suspension_travel` and `front_tyre_load_variation` (both wheels), for the rear `rear_road_height`, `rear_suspension_travel`, `rear_tyre_load_variation`; exact at every row.
    pub fn step(&self, height: Length, speed: Velocity, duration: Time, time_step: Time) -> Result<Table> {
        self.along(&Road::step(height)?, speed, duration, time_step)
    }

    /// Motion up a ramp that ends on a plain, such as a bevelled kerb.
    ///
    /// # Parameters
    /// - `height` — height of the plain, negative for a ramp down
    /// - `length` — length of the ramp along the road
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the foot of the ramp under the front wheels
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
        self.along(&Road::ramp(height, length, speed)?, speed, duration, time_step)
    }

    /// Motion over a half-sine bump.
    ///
    /// # Parameters
    /// - `height` — height of the bump, negative for a hole
    /// - `length` — length of the bump along the road, half a wave
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the beginning of the bump under the front wheels
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
        self.along(&Road::half_sine(height, length, speed)?, speed, duration, time_step)
    }

    /// Motion over a measured profile, straight from point to point.
    ///
    /// # Parameters
    /// - `speed` — speed of the vehicle
    /// - `time_step` — time from row to row
    /// - `distance` — along the road, at least two in increasing order
    /// - `height` — height of the road at each distance; before they reach the first distance, all wheels rest on the first height
    ///
    /// # Returns
    /// One row for each time step while the front wheels go from the first distance to the last, as after a step; exact at every row for the road of straight lines.
    pub fn profile(
        &self,
        speed: Velocity,
        time_step: Time,
        distance: &[Length],
        height: &[Length],
    ) -> Result<Table> {
        let (road, duration) = Road::profile(speed, distance, height)?;
        self.along(&road, speed, duration, time_step)
    }

    fn along(&self, road: &Road, speed: Velocity, duration: Time, time_step: Time) -> Result<Table> {
        self.check()?;
        let vehicle = self.vehicle();
        let course = vehicle.course(core::slice::from_ref(road), speed, duration, time_step)?;
        vehicle.along::<12>(&course)
    }

    fn seat(&self) -> Place {
        Place { forward: self.seat_forward.as_ref().map_or(0.0, |on| on.quantity.si()), left: 0.0 }
    }

    /// Both wheels of an axle as one.
    fn vehicle(&self) -> Vehicle<4, 2> {
        let (a, b) = (self.front_distance.quantity.si(), self.rear_distance.quantity.si());
        let (mass, inertia) = (self.sprung_mass.quantity.si(), self.pitch_inertia.quantity.si());
        let place = |forward| Place { forward, left: 0.0 };
        let wheels = [(place(a), self.front.corner(2.0)), (place(-b), self.rear.corner(2.0))];
        let weight = mass * STANDARD_GRAVITY / (a + b);
        Vehicle::new(&[mass, inertia], wheels, [weight * b, weight * a], &self.seat(), &NAMES)
    }
}
