//! A random road and the comfort on it.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it; windows of two have two"
)]

use crate::Result;
use crate::base::table::record;
use crate::ride::{road_displacement_density, wk_weighting};
use crate::units::{
    Acceleration, AngularVelocity, Force, Frequency, Length, Quantity, Ratio, RoadRoughness, Time, Velocity,
    frequency,
};

record! {
    /// RMS values of a quarter car on a random road.
    #[derive(Debug, Clone, PartialEq)]
    pub struct OnRoad {
        /// RMS acceleration of the body.
        pub body_acceleration: Acceleration,
        /// RMS acceleration of the body, weighted with Wk.
        pub weighted_acceleration: Acceleration,
        /// Comfort words for that acceleration on a seat, joined by `to` if two overlap.
        pub comfort: String,
        /// RMS of suspension travel.
        pub suspension_travel: Length,
        /// RMS variation of the tyre load; infinite without a shortest wave if the tyre has damping.
        pub tyre_load_variation: Force,
        /// RMS variation of the tyre load over the static load; near one third, the wheel lifts now and then.
        pub tyre_load_share: Ratio,
    }
}

record! {
    /// RMS values of a vehicle on a random road, left and right alike.
    #[derive(Debug, Clone, PartialEq)]
    pub struct VehicleOnRoad {
        /// RMS acceleration of the body at its centre of mass, upwards.
        pub body_acceleration: Acceleration,
        /// RMS acceleration of the body at the seat, upwards.
        pub seat_acceleration: Acceleration,
        /// RMS acceleration at the seat, weighted with Wk.
        pub weighted_acceleration: Acceleration,
        /// Comfort words for that acceleration, joined by `to` if two overlap.
        pub comfort: String,
        /// RMS of suspension travel, front.
        pub front_suspension_travel: Length,
        /// RMS of suspension travel, rear.
        pub rear_suspension_travel: Length,
        /// RMS variation of the tyre load, front.
        pub front_tyre_load_variation: Force,
        /// RMS variation of the tyre load, rear.
        pub rear_tyre_load_variation: Force,
        /// Variation of the front tyre load over the static load; near one third, the wheels lift now and then.
        pub front_tyre_load_share: Ratio,
        /// Variation of the rear tyre load over the static load.
        pub rear_tyre_load_share: Ratio,
    }
}

/// Words of ISO 2631-1:1997, C.2.3 (from memory), with their ranges of weighted acceleration; the ranges overlap.
const COMFORT: [(&str, f64, f64); 6] = [
    ("not uncomfortable", 0.0, 0.315),
    ("a little uncomfortable", 0.315, 0.63),
    ("fairly uncomfortable", 0.5, 1.0),
    ("uncomfortable", 0.8, 1.6),
    ("very uncomfortable", 1.25, 2.5),
    ("extremely uncomfortable", 2.0, f64::INFINITY),
];

/// Comfort words for a weighted acceleration, joined by `to` if two overlap.
pub(in crate::ride) fn comfort(weighted: f64) -> String {
    let words: Vec<&str> = COMFORT
        .iter()
        .filter(|(_, lower, upper)| (*lower..*upper).contains(&weighted))
        .map(|(words, ..)| *words)
        .collect();
    words.join(" to ")
}

/// Wk at a frequency, which must not be too high.
pub(in crate::ride) fn felt(hertz: f64) -> f64 {
    wk_weighting(Frequency::from_si(hertz)).map_or(f64::NAN, Quantity::si)
}

/// Waves of a road as a vehicle meets them.
pub(in crate::ride) struct BandOfWaves {
    pub(in crate::ride) speed: Velocity,
    /// `G_d(n) / v` at one cycle a second; `G(f) df = G(1 Hz) / f^2 df = G(1 Hz) / f d(ln f)`.
    pub(in crate::ride) at_one_hertz: f64,
    /// Ends of the integration intervals, as logarithms of frequencies.
    ends: Vec<f64>,
}

impl BandOfWaves {
    /// Waves of a road of waviness 2 at a speed; the integral is cut at resonances.
    pub(in crate::ride) fn new(
        roughness: RoadRoughness,
        speed: Velocity,
        shortest_wave: Length,
        longest_wave: Length,
        resonances: impl IntoIterator<Item = f64>,
    ) -> Result<Self> {
        let at_one_hertz =
            road_displacement_density(roughness, speed * Time::from_si(1.0))?.si() / speed.si();
        let passing = |wave: Length| Frequency::from_raw(speed.raw() / wave).si().ln();
        let (first, last) = (passing(longest_wave), passing(shortest_wave));
        let inside = resonances
            .into_iter()
            .map(|resonance| frequency(AngularVelocity::from_si(resonance)).si().ln())
            .filter(|at| (first..last).contains(at));
        let mut ends = vec![first];
        ends.extend(inside);
        ends.push(last);
        ends.sort_by(f64::total_cmp);
        Ok(Self { speed, at_one_hertz, ends })
    }

    /// Sum of the integrals over all intervals.
    pub(in crate::ride) fn integral<const M: usize>(&self, of: impl Fn(f64, f64) -> [f64; M]) -> [f64; M] {
        let mut sums = [0.0; M];
        for pair in self.ends.windows(2) {
            sums.iter_mut().zip(of(pair[0], pair[1])).for_each(|(sum, part)| *sum += part);
        }
        sums
    }
}
