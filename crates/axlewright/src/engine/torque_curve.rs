#![expect(clippy::indexing_slicing, reason = "windows of two have two, and a curve has two points at least")]

use crate::base::document::{Model, Value};
use crate::base::numeric::{MonotoneCubic, root};
use crate::base::table::{Filling, Table, record};
use crate::units::{AngularVelocity, Power, Ratio, Torque};
use crate::{Result, cannot, valid};

/// A torque curve through points from a dynamometer or a brochure.
///
/// # Formula
/// Piecewise cubic through the points with monotone slopes (Fritsch and Butland): it never exceeds the points on either side; `P = T w`
///
/// # Fields
/// - `points` — at least two points, in order of speed, each with `engine_speed` and `torque`
///
/// # Valid for
/// Speeds from the first to the last point. A speed beyond them is refused, never extrapolated. Torques are zero or more.
///
/// # Source
/// Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; checked against SciPy's PchipInterpolator
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TorqueCurve {
    /// Points of the curve, at least two, in order of speed.
    pub points: Vec<CurvePoint>,
}

/// One point of a torque curve.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `engine_speed` and `torque`"))]
pub struct CurvePoint {
    /// Engine speed.
    pub engine_speed: Value<AngularVelocity>,
    /// Full-load torque at that speed.
    pub torque: Value<Torque>,
}

record! {
    /// Peak torque and peak power of a torque curve.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct CurvePeaks {
        /// Peak torque.
        pub peak_torque: Torque,
        /// Speed at peak torque, the lowest one if the peak is flat.
        pub peak_torque_speed: AngularVelocity,
        /// Peak power.
        pub peak_power: Power,
        /// Speed at peak power.
        pub peak_power_speed: AngularVelocity,
    }
}

record! {
    /// Speeds between which a curve stays near its peak.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct CurveBand {
        /// Lowest speed of the band.
        pub lowest_speed: AngularVelocity,
        /// Highest speed of the band.
        pub highest_speed: AngularVelocity,
    }
}

impl crate::base::Sealed for TorqueCurve {}
impl Model for TorqueCurve {
    fn check(&self) -> Result<()> {
        self.curve().map(drop)
    }
}

record! {
    /// Torque and power of the engine at a speed.
    struct Pull {
        torque: Torque,
        power: Power,
    }
}

impl TorqueCurve {
    /// A curve from pairs of speed and torque.
    pub fn new(points: &[(AngularVelocity, Torque)]) -> Result<Self> {
        let point = |(speed, torque): &(_, _)| CurvePoint {
            engine_speed: Value::new(*speed),
            torque: Value::new(*torque),
        };
        Self { points: points.iter().map(point).collect() }.checked()
    }

    /// Torque at an engine speed.
    ///
    /// # Parameters
    /// - `engine_speed` — engine speed between the first and the last point
    ///
    /// # Returns
    /// The full-load torque.
    ///
    /// # Example
    /// ```
    /// use axlewright::{engine::TorqueCurve, units::*};
    /// let at = |speed, torque| (AngularVelocity::of::<rpm>(speed), Torque::of::<Nm>(torque));
    /// let curve = TorqueCurve::new(&[at(1000.0, 210.0), at(1600.0, 360.0), at(2800.0, 360.0), at(4000.0, 260.0)])?;
    /// assert_eq!(format!("{:.0} N·m", curve.torque(AngularVelocity::of::<rpm>(2000.0))?.in_::<Nm>()), "360 N·m");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn torque(&self, engine_speed: AngularVelocity) -> Result<Torque> {
        torque_at(&self.curve()?, engine_speed)
    }

    /// Power at an engine speed.
    ///
    /// # Parameters
    /// - `engine_speed` — engine speed between the first and the last point
    ///
    /// # Returns
    /// The full-load power.
    pub fn power(&self, engine_speed: AngularVelocity) -> Result<Power> {
        super::power(self.torque(engine_speed)?, engine_speed)
    }

    /// Peak torque and peak power of the curve, and their speeds.
    ///
    /// # Returns
    /// See the fields of [`CurvePeaks`].
    pub fn peaks(&self) -> Result<CurvePeaks> {
        let curve = self.curve()?;
        let (torque_speed, torque) = curve.peak();
        let (power_speed, power) = peak_power(&curve)?;
        Ok(CurvePeaks {
            peak_torque: Torque::from_si(torque),
            peak_torque_speed: AngularVelocity::from_si(torque_speed),
            peak_power: Power::from_si(power),
            peak_power_speed: AngularVelocity::from_si(power_speed),
        })
    }

    /// Speeds around the peak between which the torque stays at or above a share of it.
    ///
    /// # Formula
    /// The roots of `T(w) = q T_max` next to the peak on either side, at which the curve first falls below
    ///
    /// # Parameters
    /// - `share_of_peak` — `q`, wanted torque over peak torque
    ///
    /// # Returns
    /// - `lowest_speed` — lowest speed of the band; the first point if the torque is enough from there on
    /// - `highest_speed` — highest speed of the band; the last point if the torque is enough up to there
    ///
    /// # Valid for
    /// - `0 < share_of_peak <= 1`
    ///
    /// One band around the peak; with equal peaks, the one at the lowest speed. A second hump beyond a dip is not counted. A band that ends at the first or last
    /// point may be wider in truth, for nothing is known beyond. The engine stays in the band if the step between two gears is at most the highest speed over the
    /// lowest.
    ///
    /// # Example
    /// ```
    /// use axlewright::{engine::TorqueCurve, units::*};
    /// let at = |speed, torque| (AngularVelocity::of::<rpm>(speed), Torque::of::<Nm>(torque));
    /// let curve = TorqueCurve::new(&[at(1000.0, 210.0), at(1600.0, 360.0), at(2800.0, 360.0), at(4000.0, 260.0)])?;
    /// let band = curve.torque_band(Ratio::of::<percent>(90.0))?;
    /// assert_eq!(format!("{:.0} rpm to {:.0} rpm", band.lowest_speed.in_::<rpm>(), band.highest_speed.in_::<rpm>()), "1351 rpm to 3449 rpm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn torque_band(&self, share_of_peak: Ratio) -> Result<CurveBand> {
        valid! { share_of_peak: 0 < .. <= 1 ; "definition: a share of the peak"; }
        let curve = self.curve()?;
        // A monotone piece has its extremes at its ends only.
        let turns: Vec<f64> = curve.knots().map(|(w, _)| w).collect();
        let (peak_speed, peak) = curve.peak();
        band(|w| curve.at(w), &turns, peak_speed, share_of_peak.si() * peak)
    }

    /// Speeds around the peak between which the power stays at or above a share of it.
    ///
    /// # Formula
    /// The roots of `w T(w) = q P_max` next to the peak on either side, at which the curve first falls below
    ///
    /// # Parameters
    /// - `share_of_peak` — `q`, wanted power over peak power
    ///
    /// # Returns
    /// - `lowest_speed` — lowest speed of the band; the first point if the power is enough from there on
    /// - `highest_speed` — highest speed of the band; the last point if the power is enough up to there
    ///
    /// # Valid for
    /// - `0 < share_of_peak <= 1`
    ///
    /// One band around the peak; a second hump beyond a dip is not counted. A band that ends at the first or last point may be wider in truth,
    /// for nothing is known beyond.
    pub fn power_band(&self, share_of_peak: Ratio) -> Result<CurveBand> {
        valid! { share_of_peak: 0 < .. <= 1 ; "definition: a share of the peak"; }
        let curve = self.curve()?;
        let (peak_speed, peak) = peak_power(&curve)?;
        band(|w| w * curve.at(w), &power_turns(&curve)?, peak_speed, share_of_peak.si() * peak)
    }

    /// Torque and power over engine speeds.
    ///
    /// # Parameters
    /// - `engine_speed` — speeds, in any order
    ///
    /// # Returns
    /// One row for each speed: `engine_speed`, `torque`, `power`. A speed beyond the points is a refused row with its reason.
    pub fn table(&self, engine_speed: &[AngularVelocity]) -> Result<Table> {
        let curve = self.curve()?;
        let mut rows = Filling::over(["engine_speed"], &[engine_speed.len()])?;
        for speed in engine_speed {
            let on = torque_at(&curve, *speed)
                .and_then(|torque| Ok(Pull { torque, power: super::power(torque, *speed)? }));
            rows.push((*speed,), on)?;
        }
        rows.finish()
    }

    fn curve(&self) -> Result<MonotoneCubic> {
        let points: Vec<(f64, f64)> = self
            .points
            .iter()
            .map(|point| (point.engine_speed.quantity.si(), point.torque.quantity.si()))
            .collect();
        for (place, point) in self.points.iter().enumerate() {
            let before = place.checked_sub(1).map(|before| self.points[before].engine_speed.quantity);
            point.check(before).map_err(|error| error.within(&format!("points[{place}]")))?;
        }
        MonotoneCubic::new("points", &points)
    }
}

impl CurvePoint {
    /// Refuses a point with impossible values, or one that is not faster than the point before.
    fn check(&self, before: Option<AngularVelocity>) -> Result<()> {
        let (engine_speed, torque) = (self.engine_speed.quantity, self.torque.quantity);
        valid! {
            engine_speed: 0 <= .. ; "definition: a speed of rotation without direction";
            torque: 0 <= .. ; "definition: at full load the engine drives";
        }
        if let Some(engine_speed_before) = before {
            valid! { engine_speed > engine_speed_before ; "the points are in order of speed, none twice"; }
        }
        Ok(())
    }
}

fn torque_at(curve: &MonotoneCubic, engine_speed: AngularVelocity) -> Result<Torque> {
    let torque = curve.at(engine_speed.si());
    if torque.is_nan() {
        let (first, last) = curve.range();
        let (first, last) = (AngularVelocity::from_si(first), AngularVelocity::from_si(last));
        return Err(cannot!(first <= engine_speed <= last; "is outside the points of the curve"));
    }
    Ok(Torque::from_si(torque))
}

/// Speeds at which `T w` may have an extreme, in order: the points, and the zeros of its slope `T + w T'` between two points.
fn power_turns(curve: &MonotoneCubic) -> Result<Vec<f64>> {
    const PARTS: u32 = 16;
    let slope = |w: f64| curve.at(w) + w * curve.slope(w);
    let knots: Vec<f64> = curve.knots().map(|(w, _)| w).collect();
    let mut turns = vec![knots[0]];
    for pair in knots.windows(2) {
        let step = (pair[1] - pair[0]) / f64::from(PARTS);
        for part in 0..PARTS {
            let (a, b) =
                (pair[0] + step * f64::from(part), (pair[0] + step * f64::from(part + 1)).min(pair[1]));
            if (slope(a) > 0.0) != (slope(b) > 0.0) {
                turns.push(root("speed at which the power turns", slope, a, b, 0.0)?);
            }
        }
        turns.push(pair[1]);
    }
    Ok(turns)
}

/// Peak power `T w`, with its speed.
fn peak_power(curve: &MonotoneCubic) -> Result<(f64, f64)> {
    let mut best = (0.0, f64::NEG_INFINITY);
    for w in power_turns(curve)? {
        let power = curve.at(w) * w;
        if power > best.1 {
            best = (w, power);
        }
    }
    Ok(best)
}

/// Speeds at which `f` first falls below a level on either side of its peak; if it never does, the first and last turn. `f` is monotone between turns.
fn band(f: impl Fn(f64) -> f64, turns: &[f64], peak: f64, level: f64) -> Result<CurveBand> {
    let edge =
        |inside: f64, turn: f64| root("speed at the edge of the band", |w| f(w) - level, inside, turn, 0.0);
    let (mut lowest, mut highest) = (peak, peak);
    for turn in turns.iter().rev().filter(|turn| **turn < peak) {
        if f(*turn) < level {
            lowest = edge(lowest, *turn)?;
            break;
        }
        lowest = *turn;
    }
    for turn in turns.iter().filter(|turn| **turn > peak) {
        if f(*turn) < level {
            highest = edge(highest, *turn)?;
            break;
        }
        highest = *turn;
    }
    Ok(CurveBand {
        lowest_speed: AngularVelocity::from_si(lowest),
        highest_speed: AngularVelocity::from_si(highest),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Nm, kW, rpm};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn curve(points: &[(f64, f64)]) -> Result<TorqueCurve> {
        let points: Vec<_> =
            points.iter().map(|(w, t)| (AngularVelocity::of::<rpm>(*w), Torque::of::<Nm>(*t))).collect();
        TorqueCurve::new(&points)
    }

    #[test]
    fn a_falling_line_has_its_peak_power_at_half_of_its_end() {
        // T = 300 (1 - w / 6000 rpm): P is a parabola with its top at 3000 rpm.
        let peaks = curve(&[(0.0, 300.0), (2000.0, 200.0), (6000.0, 0.0)]).unwrap().peaks().unwrap();
        assert_relative_eq!(peaks.peak_power_speed.in_::<rpm>(), 3000.0, max_relative = 1e-6);
        assert_relative_eq!(
            peaks.peak_power.in_::<kW>(),
            0.15 * 3000.0 * core::f64::consts::TAU / 60.0,
            max_relative = 1e-9
        );
        assert_eq!(peaks.peak_torque.in_::<Nm>(), 300.0);
    }

    #[test]
    fn a_peak_on_the_edge_of_a_search_step_is_found() {
        // T = 3 - w / 2 in SI: P = 3 w - w^2 / 2 peaks, 4.5 W, at 3 rad/s.
        for points in [&[(0.0, 3.0), (6.0, 0.0)][..], &[(0.0, 3.0), (2.0, 2.0), (6.0, 0.0)]] {
            let points: Vec<_> =
                points.iter().map(|(w, t)| (AngularVelocity::from_si(*w), Torque::from_si(*t))).collect();
            let peaks = TorqueCurve::new(&points).unwrap().peaks().unwrap();
            assert_relative_eq!(peaks.peak_power.si(), 4.5, max_relative = 1e-12);
            assert_relative_eq!(peaks.peak_power_speed.si(), 3.0, max_relative = 1e-6);
        }
    }

    #[test]
    fn refuses_what_is_no_curve() {
        for points in [
            &[][..],
            &[(1000.0, 100.0)],
            &[(1000.0, 1.0), (3000.0, 1.0), (2000.0, 1.0)],
            &[(1000.0, 1.0), (2000.0, f64::NAN)],
            &[(1000.0, -1.0), (2000.0, 1.0)],
        ] {
            let refused = curve(points);
            let message = refused.err().map(|error| error.to_string()).unwrap_or_default();
            assert!(message.starts_with("points"), "{points:?}: {message}");
        }
    }

    #[test]
    fn beyond_the_points_nothing_is_guessed() {
        let curve = curve(&[(1000.0, 100.0), (3000.0, 120.0)]).unwrap();
        let message = curve.torque(AngularVelocity::of::<rpm>(3001.0)).unwrap_err().to_string();
        assert!(message.contains("3001 rpm") && message.contains("1000 rpm to 3000 rpm"), "{message}");
        assert!(curve.torque(AngularVelocity::of::<rpm>(f64::NAN)).is_err());
        let table =
            curve.table(&[AngularVelocity::of::<rpm>(900.0), AngularVelocity::of::<rpm>(1000.0)]).unwrap();
        assert!(table.reason(0).is_some() && table.reason(1).is_none());
        assert_eq!(table.numbers("torque").unwrap()[1], 100.0);
    }

    #[test]
    fn bands_of_curves_worked_by_hand() {
        // T = 300 (1 - w / 6000 rpm), from 1000 rpm on: 60 % of 250 N·m at 3000 rpm; 75 % of the peak power at half its speed, 3000 rpm, to either side.
        let line = curve(&[(1000.0, 250.0), (2000.0, 200.0), (6000.0, 0.0)]).unwrap();
        let torque = line.torque_band(Ratio::from_si(0.6)).unwrap();
        assert_relative_eq!(torque.lowest_speed.in_::<rpm>(), 1000.0, max_relative = 1e-14);
        assert_relative_eq!(torque.highest_speed.in_::<rpm>(), 3000.0, max_relative = 1e-12);
        let power = line.power_band(Ratio::from_si(0.75)).unwrap();
        assert_relative_eq!(power.lowest_speed.in_::<rpm>(), 1500.0, max_relative = 1e-12);
        assert_relative_eq!(power.highest_speed.in_::<rpm>(), 4500.0, max_relative = 1e-12);
    }

    #[test]
    fn a_dip_ends_the_band_and_a_flat_top_is_all_of_it() {
        let humps =
            curve(&[(1000.0, 100.0), (2000.0, 300.0), (3000.0, 200.0), (4000.0, 290.0), (5000.0, 100.0)]);
        let band = humps.unwrap().torque_band(Ratio::from_si(0.9)).unwrap();
        assert!(band.highest_speed.in_::<rpm>() < 3000.0);
        let flat = curve(&[(1000.0, 210.0), (1600.0, 360.0), (2800.0, 360.0), (4000.0, 260.0)]).unwrap();
        let top = flat.torque_band(Ratio::from_si(1.0)).unwrap();
        let within = |speed: AngularVelocity, wanted| {
            assert_relative_eq!(speed.in_::<rpm>(), wanted, max_relative = 1e-14)
        };
        within(top.lowest_speed, 1600.0);
        within(top.highest_speed, 2800.0);
        for share in [0.0, 1.1, f64::NAN] {
            assert!(
                flat.power_band(Ratio::from_si(share)).unwrap_err().to_string().contains("share_of_peak")
            );
        }
    }

    proptest! {
        #[test]
        fn inside_the_band_it_is_enough_and_just_outside_not(torques in prop::collection::vec(50.0f64..400.0, 3..9), share in 0.3f64..0.99) {
            let points: Vec<_> = torques.iter().enumerate().map(|(i, t)| (1000.0 + 700.0 * i as f64, *t)).collect();
            let curve = curve(&points).unwrap();
            let peaks = curve.peaks().unwrap();
            let (torque, power) = (curve.torque_band(Ratio::from_si(share)).unwrap(), curve.power_band(Ratio::from_si(share)).unwrap());
            for i in 0..=50 {
                let along = |band: CurveBand| AngularVelocity::from_si(
                    (band.lowest_speed.si() + (band.highest_speed.si() - band.lowest_speed.si()) * f64::from(i) / 50.0).min(band.highest_speed.si()));
                prop_assert!(curve.torque(along(torque)).unwrap().si() >= share * peaks.peak_torque.si() * (1.0 - 1e-12));
                prop_assert!(curve.power(along(power)).unwrap().si() >= share * peaks.peak_power.si() * (1.0 - 1e-12));
            }
            let (first, last) = (points[0].0, points[points.len() - 1].0);
            for speed in [torque.lowest_speed.in_::<rpm>() * (1.0 - 1e-9), torque.highest_speed.in_::<rpm>() * (1.0 + 1e-9)] {
                if speed > first && speed < last {
                    prop_assert!(curve.torque(AngularVelocity::of::<rpm>(speed)).unwrap().si() < share * peaks.peak_torque.si());
                }
            }
        }
    }
}
