//! A random road, and how it feels.

use super::{road_displacement_density, wk_weighting};
use crate::Result;
use crate::base::table::record;
use crate::units::{
    Acceleration, AngularVelocity, Force, Frequency, Length, Quantity, Ratio, RoadRoughness, Time, Velocity,
    frequency,
};

record! {
    /// A quarter car on a random road, root mean squares.
    #[derive(Debug, Clone, PartialEq)]
    pub struct OnRoad {
        /// Of the body.
        pub body_acceleration: Acceleration,
        /// Of the body, weighted with Wk.
        pub weighted_acceleration: Acceleration,
        /// Words for that acceleration on a seat, joined by `to` where two overlap.
        pub comfort: String,
        /// Of the wheel against the body.
        pub suspension_travel: Length,
        /// Of the tyre's load about its static one; without bound for ever shorter waves where the tyre has damping.
        pub tyre_load_variation: Force,
        /// That over the static load; near a third the wheel begins to leave the road, as the threefold comes now and then.
        pub tyre_load_share: Ratio,
    }
}

record! {
    /// A vehicle on a random road, root mean squares; left and right wheel have the same.
    #[derive(Debug, Clone, PartialEq)]
    pub struct VehicleOnRoad {
        /// Of the body at its centre of mass, upwards.
        pub body_acceleration: Acceleration,
        /// Of the body at the seat, upwards.
        pub seat_acceleration: Acceleration,
        /// At the seat, weighted with Wk.
        pub weighted_acceleration: Acceleration,
        /// Words for that acceleration, joined by `to` where two overlap.
        pub comfort: String,
        /// Of a front wheel against the body.
        pub front_suspension_travel: Length,
        /// Of a rear wheel.
        pub rear_suspension_travel: Length,
        /// Of the load of a front tyre about its static one.
        pub front_tyre_load_variation: Force,
        /// Of the load of a rear tyre about its static one.
        pub rear_tyre_load_variation: Force,
        /// That over the static load; near a third the wheels begin to leave the road, as the threefold comes now and then.
        pub front_tyre_load_share: Ratio,
        /// The same of the rear.
        pub rear_tyre_load_share: Ratio,
    }
}

/// Words of ISO 2631-1:1997, C.2.3 (from memory), with the weighted accelerations to which they belong; they overlap.
const COMFORT: [(&str, f64, f64); 6] = [
    ("not uncomfortable", 0.0, 0.315),
    ("a little uncomfortable", 0.315, 0.63),
    ("fairly uncomfortable", 0.5, 1.0),
    ("uncomfortable", 0.8, 1.6),
    ("very uncomfortable", 1.25, 2.5),
    ("extremely uncomfortable", 2.0, f64::INFINITY),
];

/// What people call a weighted acceleration, joined by `to` where two words overlap.
pub(super) fn comfort(weighted: f64) -> String {
    let words: Vec<&str> = COMFORT
        .iter()
        .filter(|(_, lower, upper)| (*lower..*upper).contains(&weighted))
        .map(|(words, ..)| *words)
        .collect();
    words.join(" to ")
}

/// Wk at a frequency that is none too high.
pub(super) fn felt(hertz: f64) -> f64 {
    wk_weighting(Frequency::from_si(hertz)).map_or(f64::NAN, Quantity::si)
}

/// The waves of a road as a vehicle meets them.
pub(super) struct BandOfWaves {
    pub(super) speed: Velocity,
    /// `G_d(n) / v` at one cycle a second; `G(f) df = G(1 Hz) / f^2 df = G(1 Hz) / f d(ln f)`.
    pub(super) at_one_hertz: f64,
    /// Ends of the pieces over which is integrated, logarithms of frequencies.
    ends: Vec<f64>,
}

impl BandOfWaves {
    /// Waves of a road of waviness 2 at a speed; the integral is cut at resonances.
    pub(super) fn new(
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

    /// The sum of the integrals over all pieces.
    pub(super) fn integral<const M: usize>(&self, of: impl Fn(f64, f64) -> [f64; M]) -> [f64; M] {
        let mut sums = [0.0; M];
        for pair in self.ends.windows(2) {
            sums.iter_mut().zip(of(pair[0], pair[1])).for_each(|(sum, part)| *sum += part);
        }
        sums
    }
}
