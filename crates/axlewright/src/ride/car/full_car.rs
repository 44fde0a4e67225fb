use super::axle_wheel::AxleWheel;
use super::vehicle::{Place, Vehicle};
use crate::base::document::{Model, Stated, Value};
use crate::base::table::Table;
use crate::ride::road::course::Road;
use crate::ride::road::on_road::{BandOfWaves, VehicleOnRoad};
use crate::units::{
    Frequency, Length, LinearStiffness, Mass, MomentOfInertia, RoadRoughness, STANDARD_GRAVITY, Time,
    Velocity,
};
use crate::{Error, Result, valid};

/// A body that bounces, pitches and rolls on four wheels: seven degrees of freedom, linear.
///
/// # Formula
/// Height of the body at a place `x` in front of its centre and `y` to the left of it: `z - x u + y p`, with pitch `u` positive nose down and roll `p` positive left side
/// up (ISO 8855). `m_s z'' = sum of F`, `I_y u'' = -sum of x F`, `I_x p'' = sum of y F` with `F = k (z_u - z_xy) + c (z_u' - z_xy')` of each wheel and `k_b (x_1 - x_2) / 2` of the bar against the
/// travel `x_2` of the other; `m_u z_u'' = k_t (z_r - z_u) + c_t (z_r' - z_u') - F`; the rear meets the road later by `(a + b) / v`
///
/// # Fields
/// - `sprung_mass` — `m_s`, mass of the whole body
/// - `pitch_inertia` — `I_y`, pitch inertia of the sprung mass about the lateral axis through its centre
/// - `roll_inertia` — `I_x`, roll inertia of the sprung mass about the longitudinal axis through its centre
/// - `front_distance` — `a`, distance from the centre of the sprung mass to the front axle
/// - `rear_distance` — `b`, distance from the centre of the sprung mass to the rear axle
/// - `front_track` — distance between the centres of the front tyres
/// - `rear_track` — distance between the centres of the rear tyres
/// - `front` — one front wheel: `unsprung_mass` (`m_u`), `wheel_rate` (`k`, without tyre and bar), `wheel_damping` (`c`, rate of the damper times the square of its motion ratio), `tyre_rate` (`k_t`), `tyre_damping` (`c_t`, 0 if missing)
/// - `rear` — one rear wheel, with the same fields
/// - `front_bar_rate` — `k_b`, rate of the anti-roll bar at the wheel: force at each wheel over its travel, while the other wheel moves as far the opposite way. It is the rate of the bar times the square of its motion ratio in roll; left out if there is no bar
/// - `rear_bar_rate` — rate of the rear bar, measured in the same way
/// - `seat_forward` — `x`, distance of the seat in front of the centre of the sprung mass, negative behind it; 0 if missing
/// - `seat_left` — `y`, distance of the seat to the left of that centre, negative to the right; 0 if missing
///
/// # Valid for
/// Small motions: no stop is touched. The tyres stay on the ground; a tyre that would lift pulls instead. Left and right are alike, and only the bar ties the wheels of an axle together. A live axle is close
/// to that if its springs are at the track and its roll inertia is that of its mass at the wheels. The body rolls about its centre: no lateral forces, no roll centres. Tyres touch the road at
/// one point. Roads in the time domain as for `ride.QuarterCar`.
///
/// # Source
/// Newton's and Euler's laws; checked against SciPy
///
/// # Caution
/// A tyre with a varying load holds the road less. The ride measured on a seat decides, not this result. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FullCar {
    /// Sprung mass of the whole body.
    pub sprung_mass: Value<Mass>,
    /// Pitch inertia of the sprung mass about the lateral axis through its centre.
    pub pitch_inertia: Value<MomentOfInertia>,
    /// Roll inertia of the sprung mass about the longitudinal axis through its centre.
    pub roll_inertia: Value<MomentOfInertia>,
    /// Distance from the centre of the sprung mass to the front axle.
    pub front_distance: Value<Length>,
    /// Distance from the centre of the sprung mass to the rear axle.
    pub rear_distance: Value<Length>,
    /// Front track, between the tyre centres.
    pub front_track: Value<Length>,
    /// Rear track, between the tyre centres.
    pub rear_track: Value<Length>,
    /// One front wheel.
    pub front: AxleWheel,
    /// One rear wheel.
    pub rear: AxleWheel,
    /// Rate of the front anti-roll bar at the wheel, both ends against each other.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub front_bar_rate: Stated<Value<LinearStiffness>>,
    /// Rate of the rear anti-roll bar at the wheel, both ends against each other.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub rear_bar_rate: Stated<Value<LinearStiffness>>,
    /// Distance of the seat in front of the centre of the sprung mass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seat_forward: Option<Value<Length>>,
    /// Distance of the seat to the left of the centre of the sprung mass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seat_left: Option<Value<Length>>,
}

impl crate::base::Sealed for FullCar {}
impl Model for FullCar {
    fn check(&self) -> Result<()> {
        let (sprung_mass, pitch_inertia) = (self.sprung_mass.quantity, self.pitch_inertia.quantity);
        let roll_inertia = self.roll_inertia.quantity;
        let (front_distance, rear_distance) = (self.front_distance.quantity, self.rear_distance.quantity);
        let (front_track, rear_track) = (self.front_track.quantity, self.rear_track.quantity);
        let [front_bar_rate, rear_bar_rate] = self.bars().map(LinearStiffness::from_si);
        let seat = self.seat();
        let (seat_forward, seat_left) = (Length::from_si(seat.forward), Length::from_si(seat.left));
        valid! {
            sprung_mass: 0.001 <= .. <= 4000000 ; "plausibility limit: no vehicle weighs 4000 t";
            pitch_inertia: 0.001 <= .. <= 1000000000 ; "plausibility limit: no vehicle has more than 1e9 kg·m²";
            roll_inertia: 0.001 <= .. <= 1000000000 ; "plausibility limit: no vehicle has more than 1e9 kg·m²";
            front_distance: 0.001 <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
            rear_distance: 0.001 <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
            front_track: 0.01 <= .. <= 100 ; "plausibility limit: tracks lie between 10 mm and 100 m";
            rear_track: 0.01 <= .. <= 100 ; "plausibility limit: tracks lie between 10 mm and 100 m";
            front_bar_rate: 0 <= .. <= 1e9 ; "definition: a bar resists; plausibility limit: up to 1 GN/m";
            rear_bar_rate: 0 <= .. <= 1e9 ; "definition: a bar resists; plausibility limit: up to 1 GN/m";
            seat_forward: (-100) <= .. <= 100 ; "plausibility limit: no vehicle is 100 m long";
            seat_left: (-100) <= .. <= 100 ; "plausibility limit: no vehicle is 100 m wide";
        }
        self.front.check("front")?;
        self.rear.check("rear")
    }
}

const NAMES: [&str; 12] = [
    "front_left_road_height",
    "front_left_suspension_travel",
    "front_left_tyre_load_variation",
    "front_right_road_height",
    "front_right_suspension_travel",
    "front_right_tyre_load_variation",
    "rear_left_road_height",
    "rear_left_suspension_travel",
    "rear_left_tyre_load_variation",
    "rear_right_road_height",
    "rear_right_suspension_travel",
    "rear_right_tyre_load_variation",
];

impl FullCar {
    /// The natural modes, the slowest first.
    ///
    /// # Formula
    /// Eigenvalues of the state matrix: a pair has `w = sqrt(s_1 s_2)`, `zeta = -(s_1 + s_2) / (2 w)`; shares of the kinetic energy `m_i |q_i|^2` of its eigenvector
    ///
    /// # Returns
    /// One row for each mode: `mode` (named for its largest part: `bounce`, `pitch`, `roll`, `front wheels`, `rear wheels`), `frequency` (natural, the modulus of its roots), `damping_ratio`, and the shares of the
    /// kinetic energy `bounce_share`, `pitch_share`, `roll_share`, `front_share`, `rear_share`. A mode with a damping ratio above 1 does not oscillate; two such modes are refused.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, ride::FullCar, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let van = FullCar::from_text(r#"
    ///     sprung_mass = "2100 kg"
    ///     pitch_inertia = "3900 kg·m²"
    ///     roll_inertia = "900 kg·m²"
    ///     front_distance = "1.2 m"
    ///     rear_distance = "1.7 m"
    ///     front_track = "1.54 m"
    ///     rear_track = "1.52 m"
    ///     front_bar_rate = "12 N/mm"
    ///     [front]
    ///     unsprung_mass = "62 kg"
    ///     wheel_rate = "38 N/mm"
    ///     wheel_damping = "2900 N·s/m"
    ///     tyre_rate = "260 N/mm"
    ///     [rear]
    ///     unsprung_mass = "75 kg"
    ///     wheel_rate = "40 N/mm"
    ///     wheel_damping = "2900 N·s/m"
    ///     tyre_rate = "260 N/mm"
    /// "#)?;
    /// let modes = van.modes()?;
    /// let frequencies = modes.numbers("frequency").unwrap_or_default();
    /// assert_eq!(format!("bounce {:.2} Hz", Frequency::from_si(frequencies[0]).in_::<Hz>()), "bounce 1.21 Hz");
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn modes(&self) -> Result<Table> {
        self.check()?;
        self.vehicle().modes::<14>()
    }

    /// Amplitudes on sine waves that are the same under left and right, met later by the rear wheels: the body bounces and pitches.
    ///
    /// # Parameters
    /// - `amplitude` — amplitude of the road: half the height from trough to crest, up to 10 m
    /// - `speed` — speed of the vehicle, which sets the delay of the rear wheels
    /// - `frequency` — frequency at which the wheels meet the waves, speed over wavelength, each up to 1 kHz
    ///
    /// # Returns
    /// One row for each frequency: `frequency`, `body_displacement` (of the centre of mass), `pitch`, `roll`, `seat_acceleration`; of each wheel the travel and the variation of the tyre's load, as
    /// `front_left_suspension_travel` and `front_left_tyre_load_variation`.
    pub fn frequency_response(
        &self,
        amplitude: Length,
        speed: Velocity,
        frequency: &[Frequency],
    ) -> Result<Table> {
        self.check()?;
        self.vehicle().response(amplitude, speed, frequency, [1.0; 4])
    }

    /// Amplitudes on sine waves with crests under the left wheels and troughs under the right ones: the body rolls.
    ///
    /// # Parameters
    /// - `amplitude` — amplitude of the road under each side, up to 10 m
    /// - `speed` — speed of the vehicle, which sets the delay of the rear wheels
    /// - `frequency` — frequency at which the wheels meet the waves, speed over wavelength, each up to 1 kHz
    ///
    /// # Returns
    /// One row for each frequency, as for the frequency response.
    pub fn roll_response(
        &self,
        amplitude: Length,
        speed: Velocity,
        frequency: &[Frequency],
    ) -> Result<Table> {
        self.check()?;
        self.vehicle().response(amplitude, speed, frequency, [1.0, -1.0, 1.0, -1.0])
    }

    /// RMS values on a random road, and the comfort at the seat.
    ///
    /// # Formula
    /// `x^2 = integral of |H(f)|^2 G_d(f / v) / v df` with the rear axle later by `(a + b) / v`, for the weighted acceleration `|H W_k|^2`; the coherence of left and right is `x K_1(x)` with `x = 2 pi n t`, `t` the mean of both tracks
    ///
    /// # Parameters
    /// - `roughness` — `G`, one-sided density of the road's height at 0.1 cycles a metre
    /// - `speed` — `v`, speed of the vehicle
    /// - `shortest_wave` — shortest wave of the road that the tyre does not bridge; ISO 8608 gives its classes down to 0.35 m
    /// - `longest_wave` — longest wave of the road; ISO 8608 gives its classes up to 91 m
    ///
    /// # Returns
    /// See the fields of [`VehicleOnRoad`]. For this model:
    /// - `front_tyre_load_variation` — variation of the load of one front tyre, about the static load
    /// - `rear_tyre_load_variation` — variation of the load of one rear tyre, about the static load
    ///
    /// # Valid for
    /// - `0 <= roughness <= 1`
    /// - `0.01 <= speed <= 200`
    /// - `0.01 <= shortest_wave <= 1000`
    /// - `0.1 <= longest_wave <= 100000`
    /// - `longest_wave > shortest_wave`
    ///
    /// A road of waviness 2 that is equally rough in every direction: long waves are the same under left and right, short ones are not. Front and rear follow in the same tracks.
    ///
    /// # Source
    /// ISO 8608:2016 (road), ISO 8041-1:2017 (Wk), ISO 2631-1:1997 C.2.3 (words), all from memory; Dodds and Robson, J. Sound and Vibration 31 (1973) 175-183 (coherence of the tracks, from memory); quadrature checked against Lyapunov solutions of SciPy
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
        let track = (self.front_track.quantity + self.rear_track.quantity).si() / 2.0;
        vehicle.on_road(&band, track)
    }

    /// Motion after a step of the road under one or both sides, met later by the rear wheels.
    ///
    /// # Parameters
    /// - `left_height` — height of the step under the left wheels, negative for a step down, 0 for no step
    /// - `right_height` — under the right wheels
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the step under the front wheels
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0: `time`, `body_displacement` (of the centre of mass), `pitch` (positive nose down), `roll` (positive left side up), `seat_acceleration`; for each wheel
    /// road height, travel in bump and variation of the tyre load, as `front_left_road_height`, `front_left_suspension_travel`, `front_left_tyre_load_variation`; exact at every row.
    pub fn step(
        &self,
        left_height: Length,
        right_height: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Table> {
        self.along(&both(left_height, right_height, Road::step)?, speed, duration, time_step)
    }

    /// Motion up a ramp that ends on a plain, under one or both sides, such as a bevelled kerb.
    ///
    /// # Parameters
    /// - `left_height` — height of the plain under the left wheels, negative for a ramp down, 0 for no ramp
    /// - `right_height` — under the right wheels
    /// - `length` — length of the ramp along the road
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the foot of the ramp under the front wheels
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0, as after a step; exact at every row.
    pub fn ramp(
        &self,
        left_height: Length,
        right_height: Length,
        length: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Table> {
        let sides = both(left_height, right_height, |height| Road::ramp(height, length, speed))?;
        self.along(&sides, speed, duration, time_step)
    }

    /// Motion over a half-sine bump, under one or both sides.
    ///
    /// # Parameters
    /// - `left_height` — height of the bump under the left wheels, negative for a hole, 0 for no bump
    /// - `right_height` — under the right wheels
    /// - `length` — length of the bump along the road, half a wave
    /// - `speed` — speed of the vehicle
    /// - `duration` — time to compute, from the beginning of the bump under the front wheels
    /// - `time_step` — time from row to row
    ///
    /// # Returns
    /// One row for each time step from 0, as after a step; exact at every row.
    pub fn half_sine(
        &self,
        left_height: Length,
        right_height: Length,
        length: Length,
        speed: Velocity,
        duration: Time,
        time_step: Time,
    ) -> Result<Table> {
        let sides = both(left_height, right_height, |height| Road::half_sine(height, length, speed))?;
        self.along(&sides, speed, duration, time_step)
    }

    /// Motion over measured profiles of both tracks, straight from point to point.
    ///
    /// # Parameters
    /// - `speed` — speed of the vehicle
    /// - `time_step` — time from row to row
    /// - `distance` — along the road, at least two in increasing order
    /// - `left_height` — height of the road under the left wheels at each distance; before they reach the first distance, all wheels rest on the first height
    /// - `right_height` — under the right wheels
    ///
    /// # Returns
    /// One row for each time step while the front wheels go from the first distance to the last, as after a step; exact at every row for the road of straight lines.
    pub fn profile(
        &self,
        speed: Velocity,
        time_step: Time,
        distance: &[Length],
        left_height: &[Length],
        right_height: &[Length],
    ) -> Result<Table> {
        let (left, duration) = side(speed, distance, "left_height", left_height)?;
        let (right, _) = side(speed, distance, "right_height", right_height)?;
        self.along(&[left, right], speed, duration, time_step)
    }

    fn along(&self, sides: &[Road; 2], speed: Velocity, duration: Time, time_step: Time) -> Result<Table> {
        self.check()?;
        let vehicle = self.vehicle();
        let course = vehicle.course(sides, speed, duration, time_step)?;
        vehicle.along::<22>(&course)
    }

    fn seat(&self) -> Place {
        let [forward, left] =
            [&self.seat_forward, &self.seat_left].map(|on| on.as_ref().map_or(0.0, |on| on.quantity.si()));
        Place { forward, left }
    }

    fn bars(&self) -> [f64; 2] {
        [&self.front_bar_rate, &self.rear_bar_rate].map(|on| on.as_ref().map_or(0.0, |on| on.quantity.si()))
    }

    fn vehicle(&self) -> Vehicle<7, 4> {
        let (a, b) = (self.front_distance.quantity.si(), self.rear_distance.quantity.si());
        let mass = self.sprung_mass.quantity.si();
        let body = [mass, self.pitch_inertia.quantity.si(), self.roll_inertia.quantity.si()];
        let (front, rear) = (self.front_track.quantity.si() / 2.0, self.rear_track.quantity.si() / 2.0);
        let wheel = |forward, left, wheel: &AxleWheel| (Place { forward, left }, wheel.corner(1.0));
        let wheels = [
            wheel(a, front, &self.front),
            wheel(a, -front, &self.front),
            wheel(-b, rear, &self.rear),
            wheel(-b, -rear, &self.rear),
        ];
        let weight = mass * STANDARD_GRAVITY / (2.0 * (a + b));
        let loads = [weight * b, weight * b, weight * a, weight * a];
        let [front_bar, rear_bar] = self.bars();
        Vehicle::new(&body, wheels, loads, &self.seat(), &NAMES)
            .with_bar(0, 1, front_bar)
            .with_bar(2, 3, rear_bar)
    }
}

/// Roads of the left and the right wheels; a height that is refused has its own name.
fn both(
    left_height: Length,
    right_height: Length,
    road: impl Fn(Length) -> Result<Road>,
) -> Result<[Road; 2]> {
    valid! {
        left_height: (-10) <= .. <= 10 ; "plausibility limit: nobody drives over 10 m";
        right_height: (-10) <= .. <= 10 ; "plausibility limit: nobody drives over 10 m";
    }
    Ok([road(left_height)?, road(right_height)?])
}

/// One road by the name of its heights.
fn side(speed: Velocity, distance: &[Length], name: &'static str, height: &[Length]) -> Result<(Road, Time)> {
    Road::profile(speed, distance, height).map_err(|error| match error {
        Error::Length { argument: "height", length, wanted } => {
            Error::Length { argument: name, length, wanted }
        }
        other => other,
    })
}
