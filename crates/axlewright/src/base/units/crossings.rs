//! Crossings between kinds: named functions, because plain arithmetic does not say which kind is meant.

use super::*;
use core::f64::consts::TAU;

/// Absolute pressure of a gauge reading at this ambient (station) pressure.
#[inline]
pub fn absolute(reading: GaugePressure, ambient: AbsolutePressure) -> AbsolutePressure {
    AbsolutePressure::from_si(reading.si() + ambient.si())
}

/// Gauge reading of an absolute pressure at this ambient (station) pressure.
#[inline]
pub fn gauge(pressure: AbsolutePressure, ambient: AbsolutePressure) -> GaugePressure {
    GaugePressure::from_si(pressure.si() - ambient.si())
}

/// Excess of the first absolute pressure over the second.
#[inline]
pub fn pressure_difference(pressure: AbsolutePressure, from: AbsolutePressure) -> Stress {
    Stress::from_si(pressure.si() - from.si())
}

/// The first absolute pressure over the second.
#[inline]
pub fn pressure_ratio(pressure: AbsolutePressure, over: AbsolutePressure) -> Ratio {
    Ratio::from_si(pressure.si() / over.si())
}

/// Torque of a force on a lever arm square to it.
#[inline]
pub fn torque(force: Force, lever: Length) -> Torque {
    Torque::from_si(force.si() * lever.si())
}

/// Energy that a constant force gives along a travel in its own direction.
#[inline]
pub fn energy(force: Force, travel: Length) -> Energy {
    Energy::from_si(force.si() * travel.si())
}

/// Force of a gauge pressure on an area with the ambient pressure on its other side. For a pressure difference use
/// the product, `Stress * Area`.
#[inline]
pub fn gauge_force(pressure: GaugePressure, area: Area) -> Force {
    Force::from_si(pressure.si() * area.si())
}

/// Gauge pressure that gives a force on an area with the ambient pressure on its other side. The pressure difference is
/// the quotient, `Force / Area`.
#[inline]
pub fn gauge_from_force(force: Force, area: Area) -> GaugePressure {
    GaugePressure::from_si(force.si() / area.si())
}

/// Excess of the first temperature over the second.
#[inline]
pub fn temperature_difference(temperature: Temperature, from: Temperature) -> TemperatureDifference {
    TemperatureDifference::from_si(temperature.si() - from.si())
}

/// Angular velocity of one turn a cycle.
#[inline]
pub fn angular_velocity(frequency: Frequency) -> AngularVelocity {
    AngularVelocity::from_si(frequency.si() * TAU)
}

/// Cycles per time of one cycle a turn.
#[inline]
pub fn frequency(angular_velocity: AngularVelocity) -> Frequency {
    Frequency::from_si(angular_velocity.si() / TAU)
}
