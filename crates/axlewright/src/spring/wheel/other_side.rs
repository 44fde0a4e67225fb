//! The right side of an axle whose sides differ, and the side that has less room in a band. A lateral rod leads an axle sideways as it heaves,
//! so that one coil-over leans with it and the other against it.

use super::travel::Mounting;
use crate::Result;
use crate::units::{
    Damping, Frequency, LinearStiffness, Mass, Quantity, Ratio, RatioPerLength, STANDARD_GRAVITY,
};

/// Both springs of an axle: rate at the left wheel, and what differs on the right.
pub(in crate::spring) struct BothSprings {
    pub(in crate::spring) wheel_rate: LinearStiffness,
    pub(in crate::spring) rate: LinearStiffness,
    pub(in crate::spring) sprung_mass: Mass,
    pub(in crate::spring) motion_ratio: Ratio,
    pub(in crate::spring) ratio_gradient: RatioPerLength,
    pub(in crate::spring) right_motion_ratio: Ratio,
    pub(in crate::spring) right_ratio_gradient: RatioPerLength,
}

impl BothSprings {
    /// Rate at the right wheel: as that at the left one, drawn or read, by the rates that the springs have there.
    pub(in crate::spring) fn right_wheel_rate(&self) -> Result<LinearStiffness> {
        let at = |ratio: Ratio, gradient: RatioPerLength| {
            let force = self.sprung_mass.si() * STANDARD_GRAVITY / ratio.si();
            self.rate.si() * ratio.si() * ratio.si() + force * gradient.si()
        };
        let (left, right) = (
            at(self.motion_ratio, self.ratio_gradient),
            at(self.right_motion_ratio, self.right_ratio_gradient),
        );
        Ok(LinearStiffness::from_si(self.wheel_rate.si() * (right / left)))
    }
}

/// The one of several values that has the least room in a band; the first where no edge is known.
fn least_room<Q: Quantity>(values: impl IntoIterator<Item = f64>, low: Option<Q>, high: Option<Q>) -> Q {
    let room = |value: f64| {
        let below = low.as_ref().map_or(f64::INFINITY, |low| value - low.si());
        below.min(high.as_ref().map_or(f64::INFINITY, |high| high.si() - value))
    };
    let worse = |worst: f64, next: f64| if room(next) < room(worst) { next } else { worst };
    Q::from_si(values.into_iter().reduce(worse).unwrap_or(f64::NAN))
}

/// Rate at the right wheel over that at the left one; 1 where they are alike.
fn by_rate(left: Option<LinearStiffness>, right: Option<LinearStiffness>) -> f64 {
    left.zip(right).map_or(1.0, |(left, right)| right.si() / left.si())
}

/// Natural frequency of the left side, and the rates of both.
pub(in crate::spring) struct BothFrequencies {
    pub(in crate::spring) natural_frequency: Frequency,
    pub(in crate::spring) wheel_rate: Option<LinearStiffness>,
    pub(in crate::spring) right_wheel_rate: Option<LinearStiffness>,
    pub(in crate::spring) low: Option<Frequency>,
    pub(in crate::spring) high: Option<Frequency>,
}

impl BothFrequencies {
    pub(in crate::spring) fn worse(&self) -> Result<Frequency> {
        let left = self.natural_frequency.si();
        let right = left * by_rate(self.wheel_rate, self.right_wheel_rate).sqrt();
        Ok(least_room([left, right], self.low, self.high))
    }
}

/// Natural frequencies of the left sides, rear over front, and the rates of both axles.
pub(in crate::spring) struct BothAxles {
    pub(in crate::spring) ratio: Ratio,
    pub(in crate::spring) front: Option<LinearStiffness>,
    pub(in crate::spring) front_right: Option<LinearStiffness>,
    pub(in crate::spring) rear: Option<LinearStiffness>,
    pub(in crate::spring) rear_right: Option<LinearStiffness>,
    pub(in crate::spring) low: Option<Ratio>,
    pub(in crate::spring) high: Option<Ratio>,
}

impl BothAxles {
    pub(in crate::spring) fn worse(&self) -> Result<Ratio> {
        let front = by_rate(self.front, self.front_right).sqrt();
        let rear = by_rate(self.rear, self.rear_right).sqrt();
        let left = self.ratio.si();
        Ok(least_room([left, left * rear, left / front, left * rear / front], self.low, self.high))
    }
}

/// Dampers of both sides of an axle, and the wheel rates beside them.
pub(in crate::spring) struct BothDampers {
    pub(in crate::spring) wheel_rate: Option<LinearStiffness>,
    pub(in crate::spring) right_wheel_rate: Option<LinearStiffness>,
    pub(in crate::spring) mounting: Option<Mounting>,
    pub(in crate::spring) motion_ratio: Option<Ratio>,
    pub(in crate::spring) right_motion_ratio: Option<Ratio>,
}

impl BothDampers {
    /// Damping ratio of the right side over that of the left one, by the same damper. A damper that stands apart counts as alike on both.
    fn right_over_left(&self) -> f64 {
        let ratios = self.motion_ratio.zip(self.right_motion_ratio);
        let levers = match self.mounting {
            Some(Mounting::CoilOver) => ratios.map_or(1.0, |(left, right)| right.si() / left.si()),
            _ => 1.0,
        };
        levers * levers / by_rate(self.wheel_rate, self.right_wheel_rate).sqrt()
    }
}

/// Damping ratio of the left side, and its band.
pub(in crate::spring) struct BothDampings {
    pub(in crate::spring) damping_ratio: Ratio,
    pub(in crate::spring) sides: BothDampers,
    pub(in crate::spring) low: Option<Ratio>,
    pub(in crate::spring) high: Option<Ratio>,
}

impl BothDampings {
    pub(in crate::spring) fn worse(&self) -> Result<Ratio> {
        let left = self.damping_ratio.si();
        Ok(least_room([left, left * self.sides.right_over_left()], self.low, self.high))
    }
}

/// Rate of the left damper for the wanted damping ratio, and the range of the damper.
pub(in crate::spring) struct BothRates {
    pub(in crate::spring) rate_wanted: Damping,
    pub(in crate::spring) sides: BothDampers,
    pub(in crate::spring) softest: Option<Damping>,
    pub(in crate::spring) firmest: Option<Damping>,
}

impl BothRates {
    pub(in crate::spring) fn worse(&self) -> Result<Damping> {
        let left = self.rate_wanted.si();
        Ok(least_room([left, left / self.sides.right_over_left()], self.softest, self.firmest))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spring::{damping_ratio, natural_frequency, wheel_damping, wheel_tangent_rate};
    use crate::units::Force;

    /// The right side by the functions themselves, and the worse of both by hand.
    #[test]
    fn the_worse_side_is_that_of_the_functions() {
        let (rate, mass) = (LinearStiffness::from_si(40e3), Mass::from_si(320.0));
        let sides =
            [(1.0135, 0.2), (1.026, -0.4)].map(|(r, g)| (Ratio::from_si(r), RatioPerLength::from_si(g)));
        let wheel = sides.map(|(ratio, gradient)| {
            let force = Force::from_si(mass.si() * STANDARD_GRAVITY / ratio.si());
            wheel_tangent_rate(rate, ratio, force, gradient).unwrap()
        });
        let [(left, left_gradient), (right, right_gradient)] = sides;
        let both = BothSprings {
            wheel_rate: wheel[0],
            rate,
            sprung_mass: mass,
            motion_ratio: left,
            ratio_gradient: left_gradient,
            right_motion_ratio: right,
            right_ratio_gradient: right_gradient,
        };
        let found = both.right_wheel_rate().unwrap();
        assert!((found.si() / wheel[1].si() - 1.0).abs() < 1e-14);
        let frequencies = wheel.map(|rate| natural_frequency(rate, mass).unwrap());
        let judged = |low: f64, high: f64, right: Option<LinearStiffness>| {
            let (low, high) = (Some(Frequency::from_si(low)), Some(Frequency::from_si(high)));
            let all = BothFrequencies {
                natural_frequency: frequencies[0],
                wheel_rate: Some(wheel[0]),
                right_wheel_rate: right,
                low,
                high,
            };
            all.worse().unwrap().si()
        };
        let [low, high] = frequencies.map(|frequency| frequency.si());
        let [low, high] = [low.min(high), low.max(high)];
        // Near its upper edge the quicker side is judged, near the lower one the slower; alone the left one.
        assert!((judged(0.1, high + 0.001, Some(found)) - high).abs() < 1e-12);
        assert!((judged(low - 0.001, 9.0, Some(found)) - low).abs() < 1e-12);
        assert_eq!(judged(0.1, 0.2, None), frequencies[0].si());
        let damper = Damping::from_si(2000.0);
        let ratios = [0, 1].map(|side| {
            let at_wheel = wheel_damping(damper, sides[side].0).unwrap();
            damping_ratio(at_wheel, wheel[side], mass).unwrap().si()
        });
        let on = |mounting: Mounting| BothDampers {
            wheel_rate: Some(wheel[0]),
            right_wheel_rate: Some(found),
            mounting: Some(mounting),
            motion_ratio: Some(left),
            right_motion_ratio: Some(right),
        };
        assert!((on(Mounting::CoilOver).right_over_left() / (ratios[1] / ratios[0]) - 1.0).abs() < 1e-14);
        assert!(
            on(Mounting::Apart).right_over_left() == (wheel[0].si() / found.si()).sqrt()
                || (on(Mounting::Apart).right_over_left() - (wheel[0].si() / found.si()).sqrt()).abs()
                    < 1e-14
        );
    }
}
