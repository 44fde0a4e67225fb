use crate::base::document::{Model, Value};
use crate::base::error::NoSolution;
use crate::base::numeric::{MonotoneCubic, root};
use crate::base::table::{Filling, Table, record};
use crate::units::{Energy, Force, J, Length, LinearStiffness, UnitOf};
use crate::{Error, Result, cannot, valid};

/// A bump stop's force over compression through points, as its maker prints or a press measures them.
///
/// # Formula
/// Piecewise cubic `F(x)` through the points with monotone slopes (Fritsch and Butland), nothing before contact; rate `F'(x)`, energy the integral of `F`
///
/// # Fields
/// - `points` — points in order of compression, each with `compression` and `force`; if the point of zero compression and zero force is missing, it is added
///
/// # Valid for
/// Compressions up to the last point, and none before contact; beyond the points nothing is known and nothing is guessed. Forces that never fall. A slow press: rubber and foam
/// are stiffer in a fast blow, and give back less than they took.
///
/// # Source
/// Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; checked against SciPy's PchipInterpolator
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BumpStop {
    /// In order of compression.
    pub points: Vec<StopPoint>,
}

/// One point of a bump stop's curve.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `compression` and `force`"))]
pub struct StopPoint {
    /// From contact.
    pub compression: Value<Length>,
    /// At that compression.
    pub force: Value<Force>,
}

record! {
    /// A bump stop at one compression.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct Stopped {
        /// Force of the stop.
        pub force: Force,
        /// Tangent rate there.
        pub rate: LinearStiffness,
        /// Taken since contact.
        pub energy: Energy,
    }
}

impl crate::base::Sealed for BumpStop {}
impl Model for BumpStop {
    fn check(&self) -> Result<()> {
        self.curve().map(drop)
    }
}

impl BumpStop {
    /// Force, rate and energy at a compression.
    ///
    /// # Parameters
    /// - `compression` — compression from contact; below zero, the stop is not touched
    ///
    /// # Returns
    /// See the fields of [`Stopped`].
    ///
    /// # Valid for
    /// - `-100 <= compression <= 100`
    ///
    /// Up to the last point.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Value, spring::*, units::*};
    /// let at = |compression, force| StopPoint { compression: Value::new(Length::of::<mm>(compression)), force: Value::new(Force::of::<N>(force)) };
    /// let stop = BumpStop { points: vec![at(10.0, 300.0), at(20.0, 900.0), at(30.0, 2600.0), at(38.0, 7000.0)] };
    /// let on = stop.at(Length::of::<mm>(30.0))?;
    /// assert_eq!(format!("{:.0} N, {:.0} N/mm", on.force.in_::<N>(), on.rate.in_::<N_mm>()), "2600 N, 265 N/mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at(&self, compression: Length) -> Result<Stopped> {
        valid! { compression: (-100) <= .. <= 100 ; "plausibility limit: no stop is 100 m long"; }
        let (curve, x) = (self.curve()?, compression.si());
        if x < 0.0 {
            let none = Force::from_si(0.0);
            return Ok(Stopped {
                force: none,
                rate: none / Length::from_si(1.0),
                energy: Energy::from_si(0.0),
            });
        }
        let force = curve.at(x);
        if force.is_nan() {
            let last = Length::from_si(curve.range().1);
            return Err(cannot!(compression <= last; "is beyond the last point of the curve"));
        }
        Ok(Stopped {
            force: Force::from_si(force),
            rate: LinearStiffness::from_si(curve.slope(x)),
            energy: Energy::from_si(curve.integral(x)),
        })
    }

    /// Compression at which the stop has taken an energy.
    ///
    /// # Parameters
    /// - `energy` — to be taken: half the mass at the stop times the square of the velocity of contact, what the spring takes meanwhile taken off
    ///
    /// # Returns
    /// Compression from contact.
    ///
    /// # Valid for
    /// - `0 <= energy <= 1000000000`
    ///
    /// An energy that is more than the stop takes up to its last point is refused.
    pub fn compression_for_energy(&self, energy: Energy) -> Result<Length> {
        valid! { energy: 0 <= .. <= 1e9 ; "definition: a stop takes energy; plausibility limit: less than 1 GJ"; }
        let (curve, wanted) = (self.curve()?, energy.si());
        let (_, last) = curve.range();
        let most = curve.integral(last);
        if wanted > most {
            let most = Energy::from_si(most);
            let refusal = NoSolution::new("is more than the stop takes up to its last point");
            let units = [<J as UnitOf<Energy>>::UNIT];
            return Err(Error::no_solution(refusal.of("energy", energy).in_units(&units).at_most(most)));
        }
        root("compression", |x| curve.integral(x) - wanted, 0.0, last, 0.0).map(Length::from_si)
    }

    /// Force, rate and energy over compressions.
    ///
    /// # Parameters
    /// - `compression` — compressions from contact, in any order
    ///
    /// # Returns
    /// One row for each compression: `compression`, and the results of `at`: `...`; one beyond the points is a refused row.
    pub fn table(&self, compression: &[Length]) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["compression"], &[compression.len()])?;
        for compression in compression {
            rows.push((*compression,), self.at(*compression))?;
        }
        rows.finish()
    }

    pub(crate) fn curve(&self) -> Result<MonotoneCubic> {
        let mut points: Vec<(f64, f64)> = Vec::with_capacity(self.points.len() + 1);
        for (place, point) in self.points.iter().enumerate() {
            let refused = |message: String| Error::document(format!("points[{place}]"), message);
            point.check().map_err(|error| error.within(&format!("points[{place}]")))?;
            let (x, force) = (point.compression.quantity.si(), point.force.quantity.si());
            if x == 0.0 && force != 0.0 {
                return Err(refused("force: it is zero at contact".to_owned()));
            }
            let (before, force_before) = points.last().copied().unwrap_or((0.0, 0.0));
            if x != 0.0 && x <= before {
                return Err(refused(
                    "compression: list the points in order of compression, each once".to_owned(),
                ));
            }
            if force < force_before {
                return Err(refused("force: it is less than at the point before".to_owned()));
            }
            if points.is_empty() && x != 0.0 {
                points.push((0.0, 0.0));
            }
            points.push((x, force));
        }
        MonotoneCubic::new("points", &points)
    }
}

impl StopPoint {
    fn check(&self) -> Result<()> {
        let (compression, force) = (self.compression.quantity, self.force.quantity);
        valid! {
            compression: 0 <= .. <= 10 ; "definition: counted from contact; plausibility limit: no stop is 10 m long";
            force: 0 <= .. <= 1e8 ; "definition: a stop pushes; plausibility limit: with less than 100 MN";
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn stop(points: &[(f64, f64)]) -> BumpStop {
        let point = |(x, force): &(f64, f64)| StopPoint {
            compression: Value::new(Length::from_si(*x)),
            force: Value::new(Force::from_si(*force)),
        };
        BumpStop { points: points.iter().map(point).collect() }
    }

    #[test]
    fn a_linear_stop_is_a_spring() {
        let linear = stop(&[(0.01, 500.0), (0.02, 1000.0), (0.04, 2000.0)]);
        let on = linear.at(Length::from_si(0.03)).unwrap();
        assert_relative_eq!(on.force.si(), 1500.0, max_relative = 1e-12);
        assert_relative_eq!(on.rate.si(), 50e3, max_relative = 1e-12);
        assert_relative_eq!(on.energy.si(), 22.5, max_relative = 1e-12);
        assert_eq!(linear.at(Length::from_si(-0.01)).unwrap().force.si(), 0.0);
    }

    #[test]
    fn what_is_no_stop_is_named() {
        let refused = |points: &[(f64, f64)]| stop(points).check().unwrap_err().to_string();
        assert!(refused(&[]).starts_with("points"));
        assert!(refused(&[(0.0, 5.0), (0.1, 6.0)]).starts_with("points[0]: force"));
        assert!(refused(&[(0.1, 5.0), (0.1, 6.0)]).starts_with("points[1]: compression"));
        assert!(refused(&[(0.1, 5.0), (0.2, 4.0)]).starts_with("points[1]: force"));
        assert!(refused(&[(f64::NAN, 5.0)]).starts_with("points[0]: compression"));
        let two = stop(&[(0.0, 0.0), (0.02, 100.0)]);
        assert!(two.at(Length::from_si(0.03)).unwrap_err().to_string().starts_with("compression = 30 mm"));
        assert!(
            two.compression_for_energy(Energy::from_si(2.0))
                .unwrap_err()
                .to_string()
                .starts_with("energy = 2")
        );
        assert_eq!(two.table(&[0.01, 0.03].map(Length::from_si)).unwrap().refused().len(), 1);
    }

    proptest! {
        #[test]
        fn energy_and_compression_are_inverse(share in 0.001f64..1.0) {
            let rubber = stop(&[(0.01, 300.0), (0.02, 900.0), (0.03, 2600.0), (0.038, 7000.0)]);
            let x = 0.038 * share;
            let energy = rubber.at(Length::from_si(x)).unwrap().energy;
            prop_assert!((rubber.compression_for_energy(energy).unwrap().si() - x).abs() < 1e-9);
        }
    }
}
