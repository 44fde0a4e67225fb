//! Extremes of what a linkage does over its travel, for the build sheet.

use crate::Result;
use crate::units::{Angle, Length, Quantity, Ratio};

/// Steps to full bump and to full droop at which a linkage is asked.
const STEPS: u32 = 8;

/// Steer of a linkage over its travel, and what its slope at ride height does not say.
pub(in crate::suspension) struct ToeOverTravel {
    /// Change of toe from ride height: the most toe-out.
    pub(in crate::suspension) toe_least: Angle,
    /// The most toe-in.
    pub(in crate::suspension) toe_most: Angle,
    /// Mean change of toe over 25 mm of bump and 25 mm of droop: nothing for a straight line.
    pub(in crate::suspension) bend: Angle,
}

/// Steer over roll while the body leans as far as the travel lets it.
pub(in crate::suspension) struct RollSteerOverTravel {
    pub(in crate::suspension) roll_steer_least: Ratio,
    pub(in crate::suspension) roll_steer_most: Ratio,
}

/// Forward lean of the path of what the drive pushes, over the travel.
pub(in crate::suspension) struct PathOverTravel {
    pub(in crate::suspension) path_least: Angle,
    pub(in crate::suspension) path_most: Angle,
}

/// Least and largest of numbers; not a number as soon as one of them is not.
#[derive(Debug, Clone, Copy)]
pub(in crate::suspension) struct Extremes {
    pub(in crate::suspension) least: f64,
    pub(in crate::suspension) most: f64,
}

impl Extremes {
    pub(in crate::suspension) const fn at(value: f64) -> Extremes {
        Extremes { least: value, most: value }
    }

    pub(in crate::suspension) fn with(self, value: f64) -> Extremes {
        if self.least.is_nan() || value.is_nan() {
            return Extremes::at(f64::NAN);
        }
        Extremes { least: self.least.min(value), most: self.most.max(value) }
    }

    /// Extremes over even steps: a peak between two of them counts as that of the parabola through its neighbours.
    fn over(steps: impl Iterator<Item = f64> + Clone) -> Extremes {
        let first = Extremes::at(steps.clone().next().unwrap_or(f64::NAN));
        let mut all = steps.clone().fold(first, Extremes::with);
        let neighbours = steps.clone().skip(1).zip(steps.clone().skip(2));
        for (before, (here, after)) in steps.zip(neighbours) {
            let bend = before - 2.0 * here + after;
            let peak = here - (after - before) * (after - before) / (8.0 * bend);
            if (here - before) * (after - here) < 0.0 && peak.is_finite() {
                all = all.with(peak);
            }
        }
        all
    }

    pub(in crate::suspension) fn moved(self, by: f64) -> Extremes {
        Extremes { least: self.least + by, most: self.most + by }
    }

    /// Both to either side.
    pub(in crate::suspension) fn mirrored(self) -> Extremes {
        self.with(-self.least).with(-self.most)
    }

    pub(in crate::suspension) fn quantities<Q: Quantity>(self) -> [Q; 2] {
        [Q::from_si(self.least), Q::from_si(self.most)]
    }
}

/// Extremes of what is asked at even steps from ride height to full bump and to full droop. A stop at ride height, or beyond it, leaves ride height.
pub(in crate::suspension) fn over_travel(
    bump: Length,
    droop: Length,
    mut ask: impl FnMut(f64) -> Result<f64>,
) -> Result<Extremes> {
    let at_ride = ask(0.0)?;
    let mut all = Extremes::at(at_ride);
    for end in [bump.si().max(0.0), -droop.si().max(0.0)] {
        if end == 0.0 {
            continue;
        }
        let mut values = Vec::with_capacity(STEPS as usize + 1);
        values.push(at_ride);
        for step in 1..=STEPS {
            values.push(ask(end * f64::from(step) / f64::from(STEPS))?);
        }
        let side = Extremes::over(values.iter().copied());
        all = all.with(side.least).with(side.most);
    }
    Ok(all)
}

/// The lesser of both travels, as far as one wheel rises while the other falls.
pub(in crate::suspension) fn to_either_side(bump: Length, droop: Length) -> f64 {
    bump.si().min(droop.si()).max(0.0)
}

/// Travels to one side, in even steps.
pub(in crate::suspension) fn steps_to(end: f64) -> impl Iterator<Item = f64> {
    let steps = if end > 0.0 { STEPS } else { 0 };
    (1..=steps).map(move |step| end * f64::from(step) / f64::from(STEPS))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_peak_between_two_steps_counts() {
        // 1 - (z - 0.013)^2 over 0.1 m to either side: the peak lies between two steps.
        let of = |z: f64| Ok(1.0 - (z - 0.013) * (z - 0.013));
        let found = over_travel(Length::from_si(0.1), Length::from_si(0.1), of).unwrap();
        assert!((found.most - 1.0).abs() < 1e-12, "{found:?}");
        assert!((found.least - (1.0 - 0.113 * 0.113)).abs() < 1e-12, "{found:?}");
        // What is not known anywhere is not known.
        let lost = over_travel(Length::from_si(0.1), Length::from_si(0.1), |z| {
            Ok(if z < -0.09 { f64::NAN } else { z })
        });
        assert!(lost.unwrap().least.is_nan());
    }
}
