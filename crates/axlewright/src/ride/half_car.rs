use super::{dynamic_index, flat_ride_cycles};
use crate::base::document::{Model, Value};
use crate::units::{
    AngularVelocity, Frequency, Length, LinearStiffness, Mass, MomentOfInertia, Quantity, Ratio, Velocity,
    frequency,
};
use crate::{Result, valid};

/// The body on both axles, that bounces and pitches.
///
/// # Formula
/// `m_s z'' + (k_f + k_r) z + (k_r b - k_f a) u = 0`, `I u'' + (k_r b - k_f a) z + (k_f a^2 + k_r b^2) u = 0` with the pitch `u` positive where the front goes down
///
/// # Fields
/// - `sprung_mass` — `m_s`, of the whole body
/// - `pitch_inertia` — `I`, of the sprung mass about the lateral axis through its centre
/// - `front_distance` — `a`, from the centre of the sprung mass to the front axle
/// - `rear_distance` — `b`, to the rear axle
/// - `front_ride_rate` — `k_f`, of both front wheels together, tyres included
/// - `rear_ride_rate` — `k_r`, of both rear wheels together, tyres included
///
/// # Valid for
/// Small motions without damping, wheels that follow the road, and rates that do not depend on braking or driving.
///
/// # Source
/// Gillespie, Fundamentals of Vehicle Dynamics, chapter 5, bounce and pitch (from memory); checked against eigenvalues of SciPy
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct HalfCar {
    /// Of the whole body.
    pub sprung_mass: Value<Mass>,
    /// Of the sprung mass about the lateral axis through its centre.
    pub pitch_inertia: Value<MomentOfInertia>,
    /// From the centre of the sprung mass to the front axle.
    pub front_distance: Value<Length>,
    /// From the centre of the sprung mass to the rear axle.
    pub rear_distance: Value<Length>,
    /// Of both front wheels together, tyres included.
    pub front_ride_rate: Value<LinearStiffness>,
    /// Of both rear wheels together, tyres included.
    pub rear_ride_rate: Value<LinearStiffness>,
}

/// The two ways in which a body swings on its axles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BodyModes {
    /// Of the mode whose centre lies outside the wheelbase.
    pub bounce_frequency: Frequency,
    /// About which the body swings, in front of its centre of mass.
    pub bounce_centre: Length,
    /// Of the mode whose centre lies nearer.
    pub pitch_frequency: Frequency,
    /// About which the body swings, in front of its centre of mass.
    pub pitch_centre: Length,
    /// Square of the radius of gyration over the product of the distances.
    pub dynamic_index: Ratio,
}

/// How front and rear follow each other over a bump.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlatRide {
    /// Of the body's share on the front axle.
    pub front_frequency: Frequency,
    /// Of the body's share on the rear axle.
    pub rear_frequency: Frequency,
    /// Rear over front.
    pub frequency_ratio: Ratio,
    /// Cycles of the front until both ends move together.
    pub cycles: Ratio,
}

impl Model for HalfCar {
    fn check(&self) -> Result<()> {
        let (sprung_mass, pitch_inertia) = (self.sprung_mass.quantity, self.pitch_inertia.quantity);
        let (front_distance, rear_distance) = (self.front_distance.quantity, self.rear_distance.quantity);
        let (front_ride_rate, rear_ride_rate) = (self.front_ride_rate.quantity, self.rear_ride_rate.quantity);
        valid! {
            sprung_mass: 0.001 <= .. <= 4000000 ; "common practice, no source: no vehicle weighs 4000 t";
            pitch_inertia: 0.001 <= .. <= 1000000000 ; "common practice, no source: no vehicle has more than 1e9 kg·m²";
            front_distance: 0.001 <= .. <= 100 ; "common practice, no source: no vehicle is 100 m long";
            rear_distance: 0.001 <= .. <= 100 ; "common practice, no source: no vehicle is 100 m long";
            front_ride_rate: 1 <= .. <= 1e9 ; "common practice, no source: rates lie between 1 N/m and 1 GN/m";
            rear_ride_rate: 1 <= .. <= 1e9 ; "common practice, no source: rates lie between 1 N/m and 1 GN/m";
        }
        Ok(())
    }
}

impl HalfCar {
    /// Frequencies of bounce and pitch, and the points about which the body swings.
    ///
    /// # Formula
    /// With `A = (k_f + k_r) / m_s`, `B = (k_r b - k_f a) / m_s`, `C = (k_f a^2 + k_r b^2) / I`, `j^2 = I / m_s`:
    /// `w^2 = (A + C) / 2 +- sqrt(((A - C) / 2)^2 + B^2 / j^2)`; centre `x = B / (w^2 - A)` in front of the centre of mass, and `x_1 x_2 = -j^2`
    ///
    /// # Returns
    /// - `bounce_frequency` — of the mode whose centre lies farther away
    /// - `bounce_centre` — in front of the centre of mass, negative behind it; infinite where the body only bounces
    /// - `pitch_frequency` — of the mode whose centre lies nearer
    /// - `pitch_centre` — in front of the centre of mass, negative behind it
    /// - `dynamic_index` — square of the radius of gyration over the product of the distances
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, ride::*, units::*};
    /// let van = HalfCar {
    ///     sprung_mass: Value::parse("2100 kg")?, pitch_inertia: Value::parse("3900 kg·m²")?, front_distance: Value::parse("1.2 m")?,
    ///     rear_distance: Value::parse("1.7 m")?, front_ride_rate: Value::parse("66 N/mm")?, rear_ride_rate: Value::parse("70 N/mm")?,
    /// }.checked()?;
    /// let modes = van.modes()?;
    /// assert_eq!(format!("{:.2} and {:.2} Hz", modes.bounce_frequency.in_::<Hz>(), modes.pitch_frequency.in_::<Hz>()), "1.19 and 1.47 Hz");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn modes(&self) -> Result<BodyModes> {
        self.check()?;
        let (mass, inertia) = (self.sprung_mass.quantity.si(), self.pitch_inertia.quantity.si());
        let (a, b) = (self.front_distance.quantity.si(), self.rear_distance.quantity.si());
        let (front, rear) = (self.front_ride_rate.quantity.si(), self.rear_ride_rate.quantity.si());
        let (bounce, pitch) = ((front + rear) / mass, (front * a * a + rear * b * b) / inertia);
        let coupling = (rear * b - front * a) / mass;
        let gyration2 = inertia / mass;
        // A rotation of the symmetric matrix; the nearer it turns, the more a mode keeps its name.
        let half = (bounce - pitch) / 2.0;
        let spread = half.hypot(coupling / gyration2.sqrt());
        let sign = if half < 0.0 { -1.0 } else { 1.0 };
        let mean = (bounce + pitch) / 2.0;
        // The lesser of the two as the product of both over the greater, so that nothing cancels.
        let product = front * rear * (a + b) * (a + b) / (mass * inertia);
        let of = |sign: f64| if sign > 0.0 { mean + spread } else { product / (mean + spread) };
        // Centre of the mode that is nearer to pitch: x = B / (w_pitch^2 - A), where both terms have the same sign.
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

    /// Whether the rear catches up with the front after a bump.
    ///
    /// # Formula
    /// `f_f = sqrt(k_f / m_f) / (2 pi)` with `m_f = m_s b / (a + b)`, the rear likewise; cycles `n = f_f f_r t / (f_r - f_f)` with `t = (a + b) / v`
    ///
    /// # Parameters
    /// - `speed` — `v`, of the vehicle
    ///
    /// # Returns
    /// - `front_frequency` — of the body's share on the front axle
    /// - `rear_frequency` — of the body's share on the rear axle; where it is no greater than that of the front the ride is never flat, and refused
    /// - `frequency_ratio` — rear over front
    /// - `cycles` — of the front since it met the bump, until both ends move together; about one to one and a half is a flat ride
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
        let front_frequency = swings(self.front_ride_rate.quantity, rear)?;
        let rear_frequency = swings(self.rear_ride_rate.quantity, front)?;
        Ok(FlatRide {
            front_frequency,
            rear_frequency,
            frequency_ratio: rear_frequency / front_frequency,
            cycles: flat_ride_cycles(front_frequency, rear_frequency, wheelbase, speed)?,
        })
    }
}
