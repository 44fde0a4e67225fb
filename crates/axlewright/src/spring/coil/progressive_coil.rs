use crate::base::document::{Model, Value};
use crate::base::numeric::{MonotoneCubic, root};
use crate::base::table::{Filling, Table, record};
use crate::units::{Energy, Force, Length, LinearStiffness};
use crate::{Error, Result, cannot, valid};

/// A coil whose rate changes along its deflection, through points as its maker prints or a press measures them.
///
/// # Formula
/// Piecewise cubic `F(x)` through the points with monotone slopes (Fritsch and Butland), from nothing when unloaded; rate `F'(x)`, energy the integral of `F`
///
/// # Fields
/// - `points` — points in order of deflection, each with `deflection` and `force`; if the point of zero deflection and zero force is missing, it is added
///
/// # Valid for
/// Deflections from the free length up to the last point; beyond the points nothing is known and nothing is guessed. Forces that rise from point to point. The rate between them is only as good as the points stand close: two points
/// give one rate. A coil of two rates with a corner between them is a `spring::Stack`.
///
/// # Source
/// Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; checked against SciPy's PchipInterpolator
///
/// # Caution
/// A compressed spring stores enough energy to kill: compress it with a tool made for it, and keep it captive at full droop; local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ProgressiveCoil {
    /// In order of deflection.
    pub points: Vec<CoilPoint>,
}

/// One point of a coil's curve.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `deflection` and `force`"))]
pub struct CoilPoint {
    /// From the free length.
    pub deflection: Value<Length>,
    /// At that deflection.
    pub force: Value<Force>,
}

record! {
    /// A coil at one deflection.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct CompressedCoil {
        /// Compressive.
        pub force: Force,
        /// Tangent rate there.
        pub rate: LinearStiffness,
        /// Stored from the free length.
        pub energy: Energy,
    }
}

impl crate::base::Sealed for ProgressiveCoil {}
impl Model for ProgressiveCoil {
    fn check(&self) -> Result<()> {
        self.curve().map(drop)
    }
}

impl ProgressiveCoil {
    /// Force, rate and energy at a deflection.
    ///
    /// # Parameters
    /// - `deflection` — deflection from the free length
    ///
    /// # Returns
    /// See the fields of [`CompressedCoil`].
    ///
    /// # Valid for
    /// - `0 <= deflection <= 100`
    ///
    /// Up to the last point.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Value, spring::*, units::*};
    /// let at = |deflection, force| CoilPoint { deflection: Value::new(Length::of::<mm>(deflection)), force: Value::new(Force::of::<N>(force)) };
    /// let coil = ProgressiveCoil { points: vec![at(40.0, 1000.0), at(80.0, 2300.0), at(120.0, 4200.0), at(150.0, 6200.0)] };
    /// let on = coil.at(Length::of::<mm>(80.0))?;
    /// assert_eq!(format!("{:.0} N, {:.1} N/mm", on.force.in_::<N>(), on.rate.in_::<N_mm>()), "2300 N, 38.6 N/mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at(&self, deflection: Length) -> Result<CompressedCoil> {
        valid! { deflection: 0 <= .. <= 100 ; "definition: counted from the free length; plausibility limit: no coil is 100 m long"; }
        let (curve, x) = (self.curve()?, deflection.si());
        let force = curve.at(x);
        if force.is_nan() {
            let last = Length::from_si(curve.range().1);
            return Err(cannot!(deflection <= last; "is beyond the last point of the curve"));
        }
        Ok(CompressedCoil {
            force: Force::from_si(force),
            rate: LinearStiffness::from_si(curve.slope(x)),
            energy: Energy::from_si(curve.integral(x)),
        })
    }

    /// Deflection under a force: what the coil sags under a load.
    ///
    /// # Parameters
    /// - `force` — compressive, from nothing to that of the last point
    ///
    /// # Returns
    /// Deflection from the free length.
    ///
    /// # Valid for
    /// - `0 <= force <= 100000000`
    ///
    /// A force that is more than that of the last point is refused.
    pub fn deflection_for_force(&self, force: Force) -> Result<Length> {
        valid! { force: 0 <= .. <= 1e8 ; "definition: a coil pushes; plausibility limit: with less than 100 MN"; }
        let (curve, wanted) = (self.curve()?, force.si());
        let (_, last) = curve.range();
        let most = curve.at(last);
        if wanted > most {
            let most = Force::from_si(most);
            return Err(cannot!(force <= most; "is more than that of the last point"));
        }
        root("deflection", |x| curve.at(x) - wanted, 0.0, last, 0.0).map(Length::from_si)
    }

    /// Force, rate and energy over deflections.
    ///
    /// # Parameters
    /// - `deflection` — deflection from the free length, in any order
    ///
    /// # Returns
    /// One row for each deflection: `deflection`, and the results of `at`: `...`; one beyond the points is a refused row.
    pub fn table(&self, deflection: &[Length]) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["deflection"], &[deflection.len()])?;
        for deflection in deflection {
            rows.push((*deflection,), self.at(*deflection))?;
        }
        rows.finish()
    }

    fn curve(&self) -> Result<MonotoneCubic> {
        let mut points: Vec<(f64, f64)> = vec![(0.0, 0.0)];
        for (place, point) in self.points.iter().enumerate() {
            let refused = |message: String| Error::document(format!("points[{place}]"), message);
            point.check().map_err(|error| error.within(&format!("points[{place}]")))?;
            let (x, force) = (point.deflection.quantity.si(), point.force.quantity.si());
            if place == 0 && x == 0.0 && force == 0.0 {
                continue; // there already
            }
            let (before, force_before) = points.last().copied().unwrap_or((0.0, 0.0));
            if x <= before {
                let message = "deflection: list the points in order of deflection, each once";
                return Err(refused(message.to_owned()));
            }
            if force <= force_before {
                return Err(refused("force: it is not more than at the point before".to_owned()));
            }
            points.push((x, force));
        }
        MonotoneCubic::new("points", &points)
    }
}

impl CoilPoint {
    fn check(&self) -> Result<()> {
        let (deflection, force) = (self.deflection.quantity, self.force.quantity);
        valid! {
            deflection: 0 <= .. <= 100 ; "definition: counted from the free length; plausibility limit: no coil is 100 m long";
            force: 0 <= .. <= 1e8 ; "definition: a coil pushes; plausibility limit: with less than 100 MN";
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn coil(points: &[(f64, f64)]) -> ProgressiveCoil {
        let point = |(x, force): &(f64, f64)| CoilPoint {
            deflection: Value::new(Length::from_si(*x)),
            force: Value::new(Force::from_si(*force)),
        };
        ProgressiveCoil { points: points.iter().map(point).collect() }
    }

    const PROGRESSIVE: [(f64, f64); 4] = [(0.04, 1000.0), (0.08, 2300.0), (0.12, 4200.0), (0.15, 6200.0)];

    #[test]
    fn one_rate_is_a_plain_coil() {
        let plain = coil(&[(0.1, 3000.0)]);
        let on = plain.at(Length::from_si(0.04)).unwrap();
        assert_relative_eq!(on.force.si(), 1200.0, max_relative = 1e-12);
        assert_relative_eq!(on.rate.si(), 30e3, max_relative = 1e-12);
        assert_relative_eq!(on.energy.si(), 24.0, max_relative = 1e-12);
        assert_eq!(plain.at(Length::from_si(0.0)).unwrap().energy.si(), 0.0);
        assert_eq!(plain, coil(&[(0.1, 3000.0)]));
        let begun = coil(&[(0.0, 0.0), (0.1, 3000.0)]);
        assert_eq!(begun.at(Length::from_si(0.04)).unwrap(), on);
    }

    #[test]
    fn what_is_no_coil_is_named() {
        let refused = |points: &[(f64, f64)]| coil(points).check().unwrap_err().to_string();
        assert!(refused(&[]).starts_with("points"));
        assert!(refused(&[(0.0, 0.0)]).starts_with("points"));
        assert!(refused(&[(0.0, 5.0), (0.1, 6.0)]).starts_with("points[0]: deflection"));
        assert!(refused(&[(0.1, 5.0), (0.1, 6.0)]).starts_with("points[1]: deflection"));
        assert!(refused(&[(0.1, 5.0), (0.2, 5.0)]).starts_with("points[1]: force"));
        assert!(refused(&[(f64::NAN, 5.0)]).starts_with("points[0]: deflection"));
        let coil = coil(&PROGRESSIVE);
        let beyond = coil.at(Length::from_si(0.16)).unwrap_err().to_string();
        assert_eq!(
            beyond,
            "deflection = 160 mm (6.299 in) is beyond the last point of the curve; allowed: at most 150 mm (5.906 in)"
        );
        assert!(
            coil.deflection_for_force(Force::from_si(6201.0)).unwrap_err().to_string().starts_with("force")
        );
        assert_eq!(coil.table(&[0.01, 0.16].map(Length::from_si)).unwrap().refused().len(), 1);
    }

    proptest! {
        #[test]
        fn force_and_deflection_are_inverse_and_energy_is_their_area(share in 0.01f64..0.99) {
            let coil = coil(&PROGRESSIVE);
            let (x, h) = (0.15 * share, 1e-5);
            let at = |x: f64| coil.at(Length::from_si(x)).unwrap();
            let on = at(x);
            prop_assert!((coil.deflection_for_force(on.force).unwrap().si() - x).abs() < 1e-12);
            let (low, high) = (at(x - h), at(x + h));
            prop_assert!(((high.energy.si() - low.energy.si()) / (2.0 * h) / on.force.si() - 1.0).abs() < 1e-4);
            prop_assert!(((high.force.si() - low.force.si()) / (2.0 * h) / on.rate.si() - 1.0).abs() < 1e-2);
        }
    }
}
