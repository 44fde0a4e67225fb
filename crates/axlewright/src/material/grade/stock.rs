use super::grades::{Grade, Minimum, NearWeld};
use crate::base::document::{Model, Value};
use crate::base::table::record;
use crate::units::{Density, Quantity, Ratio, Stress};
use crate::{Result, cannot, valid};

/// Stock of a grade, or of numbers of its own, away from a weld or near one.
///
/// # Formula
/// Minimum strengths of the grade; within 25 mm of a weld the strength that remains there; `G = E / (2 (1 + nu))`
///
/// # Fields
/// - `grade` — what was ordered or found; `quenched`, `case_hardened`, `cast` and `unknown` have no strength here. Without a grade only your own numbers count
/// - `place` — `away_from_welds`, or `near_weld`: within 25 mm (1 in) of one
/// - `yield_strength` — minimum yield strength of your own, from a certificate or a test; in place of that of the grade
/// - `ultimate_strength` — minimum ultimate strength of your own; in place of that of the grade
/// - `near_weld_yield_strength` — yield strength near a weld, from a test of your own weld; in place of that of the grade
/// - `near_weld_ultimate_strength` — ultimate strength near a weld, from a test of your own weld; in place of that of the grade
/// - `elastic_modulus` — `E`, elastic modulus of your own; in place of that of the grade
/// - `poisson_ratio` — `nu`, ratio of Poisson of your own; in place of that of the grade
/// - `density` — density of your own; in place of that of the grade
///
/// # Valid for
/// Room temperature, static loads, stock that is neither bent, heated nor rusted. Hot-rolled and normalised carbon steel keeps its minimum near a weld. Cold-drawn tube falls to its hot-rolled strength there,
/// normalised 4130 and precipitation-hardened aluminium to the strength that is stated. What is quenched, case-hardened, cast or unknown is not known near a weld, and has only your own numbers away from it.
/// A certificate does not raise the strength near a weld. Fatigue is not covered: welds and notches set it, not the strength of the grade.
///
/// # Source
/// The standard of each grade, as the result names it (from memory); 25 mm: Aluminum Design Manual (from memory)
///
/// # Caution
/// Grades get mixed up, and welds differ: a table proves nothing about the part in your hand. Welded or repaired steering parts are not for the road. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Stock {
    /// Grade that was ordered or found.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grade: Option<Grade>,
    /// Distance from welds.
    pub place: Place,
    /// Minimum yield strength of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub yield_strength: Option<Value<Stress>>,
    /// Minimum ultimate strength of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ultimate_strength: Option<Value<Stress>>,
    /// Yield strength near a weld of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub near_weld_yield_strength: Option<Value<Stress>>,
    /// Ultimate strength near a weld of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub near_weld_ultimate_strength: Option<Value<Stress>>,
    /// Elastic modulus of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub elastic_modulus: Option<Value<Stress>>,
    /// Ratio of Poisson of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub poisson_ratio: Option<Value<Ratio>>,
    /// Density of your own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub density: Option<Value<Density>>,
}

/// Distance of a place from welds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Place {
    /// More than 25 mm from any weld.
    AwayFromWelds,
    /// Within 25 mm of a weld.
    NearWeld,
}

record! {
    /// Strength and stiffness of stock.
    #[derive(Debug, Clone, PartialEq)]
    pub struct StockStrength {
        /// Minimum yield strength; not known if nobody guarantees one.
        pub yield_strength: Stress,
        /// Minimum ultimate strength; not known if nobody guarantees one.
        pub ultimate_strength: Stress,
        /// Elastic modulus.
        pub elastic_modulus: Stress,
        /// Shear modulus, from the elastic modulus and the ratio of Poisson.
        pub shear_modulus: Stress,
        /// Ratio of Poisson.
        pub poisson_ratio: Ratio,
        /// Density.
        pub density: Density,
        /// Minimum elongation at break of the grade, away from welds.
        pub elongation: Ratio,
        /// Text on each strength that is not known, and why a strength is less than that of the grade; empty if nothing is open.
        pub open: String,
        /// Source of the numbers of the grade; empty without a grade.
        pub source: String,
    }
}

impl crate::base::Sealed for Stock {}
impl Model for Stock {
    fn check(&self) -> Result<()> {
        self.strength().map(drop)
    }
}

impl Stock {
    /// Strength, stiffness and density of the stock.
    ///
    /// # Returns
    /// See the fields of [`StockStrength`]. A number that nobody guarantees is not known; `open` names it.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, material::*, units::*};
    /// let tube = Stock {
    ///     grade: Some(Grade::A513Grade1020Drawn), place: Place::NearWeld, yield_strength: None, ultimate_strength: None,
    ///     near_weld_yield_strength: None, near_weld_ultimate_strength: None, elastic_modulus: None, poisson_ratio: None, density: None,
    /// }.checked()?;
    /// assert_eq!(format!("{:.0} ksi", tube.strength()?.yield_strength.in_::<ksi>()), "38 ksi");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn strength(&self) -> Result<StockStrength> {
        let grade = self.grade.map(Grade::minimum);
        let own = self.own()?;
        let of_grade = |of: fn(&Minimum) -> f64| grade.as_ref().map_or(f64::NAN, of);
        let either = |own: Option<f64>, of: fn(&Minimum) -> f64| own.unwrap_or_else(|| of_grade(of));
        let away = (
            either(own.yields, |grade| grade.yields * 1e6),
            either(own.ultimate, |grade| grade.ultimate * 1e6),
        );
        let mut open = Vec::new();
        let (yields, ultimate) = match self.place {
            Place::AwayFromWelds => away,
            Place::NearWeld => {
                let near = match grade.map_or(NearWeld::NotKnown, |grade| grade.near_weld) {
                    // A certificate does not raise what a weld leaves, but a weaker stock stays weak.
                    NearWeld::Unchanged => (
                        least(away.0, of_grade(|grade| grade.yields * 1e6)),
                        least(away.1, of_grade(|grade| grade.ultimate * 1e6)),
                    ),
                    NearWeld::Falls(yields, ultimate, why) => {
                        open.push(why.to_owned());
                        (least(away.0, yields * 1e6), least(away.1, ultimate * 1e6))
                    }
                    NearWeld::NotKnown => (f64::NAN, f64::NAN),
                };
                (own.near_weld_yields.unwrap_or(near.0), own.near_weld_ultimate.unwrap_or(near.1))
            }
        };
        let elastic = either(own.elastic, |grade| grade.elastic * 1e9);
        let poisson = either(own.poisson, |grade| grade.poisson);
        let density = either(own.density, |grade| grade.density);
        let near = if self.place == Place::NearWeld { " near a weld" } else { "" };
        for (value, name) in [
            (yields, format!("yield strength{near} is not known")),
            (ultimate, format!("ultimate strength{near} is not known")),
            (elastic, "elastic modulus is not known".to_owned()),
            (poisson, "ratio of Poisson is not known".to_owned()),
            (density, "density is not known".to_owned()),
        ] {
            if value.is_nan() {
                open.push(name);
            }
        }
        Ok(StockStrength {
            yield_strength: Stress::from_si(yields),
            ultimate_strength: Stress::from_si(ultimate),
            elastic_modulus: Stress::from_si(elastic),
            shear_modulus: Stress::from_si(elastic / (2.0 * (1.0 + poisson))),
            poisson_ratio: Ratio::from_si(poisson),
            density: Density::from_si(density),
            elongation: Ratio::from_si(of_grade(|grade| grade.elongation) / 100.0),
            open: open.join("; "),
            source: grade.map_or_else(String::new, |grade| grade.source.to_owned()),
        })
    }

    /// The numbers of the owner, inside what such numbers can be.
    fn own(&self) -> Result<Own> {
        for strength in [&self.yield_strength, &self.near_weld_yield_strength].into_iter().flatten() {
            let yield_strength = strength.quantity;
            valid! { yield_strength: 1e6 <= .. <= 3e9 ; "plausibility limit: no structural metal yields below 1 MPa or above 3 GPa"; }
        }
        for strength in [&self.ultimate_strength, &self.near_weld_ultimate_strength].into_iter().flatten() {
            let ultimate_strength = strength.quantity;
            valid! { ultimate_strength: 1e6 <= .. <= 4e9 ; "plausibility limit: no structural metal breaks below 1 MPa or above 4 GPa"; }
        }
        for (yields, breaks) in [
            (&self.yield_strength, &self.ultimate_strength),
            (&self.near_weld_yield_strength, &self.near_weld_ultimate_strength),
        ] {
            if let (Some(yields), Some(breaks)) = (yields, breaks) {
                let (yield_strength, ultimate_strength) = (yields.quantity, breaks.quantity);
                if yield_strength > ultimate_strength {
                    return Err(
                        cannot!(yield_strength <= ultimate_strength; "is more than the ultimate strength"),
                    );
                }
            }
        }
        if let Some(modulus) = &self.elastic_modulus {
            let elastic_modulus = modulus.quantity;
            valid! { elastic_modulus: 1e9 <= .. <= 1e12 ; "plausibility limit: structural metals lie between 1 GPa and 1000 GPa"; }
        }
        if let Some(ratio) = &self.poisson_ratio {
            let poisson_ratio = ratio.quantity;
            valid! { poisson_ratio: 0 <= .. <= 0.5 ; "definition: a solid keeps its volume at 0.5"; }
        }
        if let Some(mass) = &self.density {
            let density = mass.quantity;
            valid! { density: 500 <= .. <= 25000 ; "plausibility limit: structural metals lie between 500 kg/m3 and 25000 kg/m3"; }
        }
        Ok(Own {
            yields: si(&self.yield_strength),
            ultimate: si(&self.ultimate_strength),
            near_weld_yields: si(&self.near_weld_yield_strength),
            near_weld_ultimate: si(&self.near_weld_ultimate_strength),
            elastic: si(&self.elastic_modulus),
            poisson: si(&self.poisson_ratio),
            density: si(&self.density),
        })
    }
}

/// Numbers of the owner in coherent SI.
struct Own {
    yields: Option<f64>,
    ultimate: Option<f64>,
    near_weld_yields: Option<f64>,
    near_weld_ultimate: Option<f64>,
    elastic: Option<f64>,
    poisson: Option<f64>,
    density: Option<f64>,
}

fn si<Q: Quantity>(value: &Option<Value<Q>>) -> Option<f64> {
    value.as_ref().map(|value| value.quantity.si())
}

/// The lesser of two strengths; not known if one of them is not.
fn least(one: f64, other: f64) -> f64 {
    if one.is_nan() || other.is_nan() { f64::NAN } else { one.min(other) }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLAIN: Stock = Stock {
        grade: None,
        place: Place::NearWeld,
        yield_strength: None,
        ultimate_strength: None,
        near_weld_yield_strength: None,
        near_weld_ultimate_strength: None,
        elastic_modulus: None,
        poisson_ratio: None,
        density: None,
    };

    fn mega(value: f64) -> Option<Value<Stress>> {
        Some(Value::new(Stress::from_si(value * 1e6)))
    }

    #[test]
    fn what_nobody_guarantees_is_not_known() {
        for grade in [Grade::Quenched, Grade::CaseHardened, Grade::Cast, Grade::Unknown] {
            for place in [Place::AwayFromWelds, Place::NearWeld] {
                let on = Stock { grade: Some(grade), place, ..PLAIN }.strength().unwrap();
                assert!(on.yield_strength.si().is_nan() && on.ultimate_strength.si().is_nan(), "{grade:?}");
                assert!(on.open.contains("yield strength"), "{}", on.open);
            }
            // A test of the steel says nothing of its weld.
            let tested = Stock { grade: Some(grade), yield_strength: mega(900.0), ..PLAIN };
            assert!(tested.strength().unwrap().yield_strength.si().is_nan());
            let away = Stock { place: Place::AwayFromWelds, ..tested };
            assert_eq!(away.strength().unwrap().yield_strength.si(), 900e6);
        }
        let nothing = PLAIN.strength().unwrap();
        assert!(nothing.density.si().is_nan() && nothing.open.contains("density"), "{}", nothing.open);
    }

    #[test]
    fn a_weld_never_makes_stock_stronger() {
        let weak = Stock { grade: Some(Grade::S355), yield_strength: mega(300.0), ..PLAIN };
        assert_eq!(weak.strength().unwrap().yield_strength.si(), 300e6);
        let strong = Stock { yield_strength: mega(420.0), ..weak };
        assert_eq!(strong.strength().unwrap().yield_strength.si(), 355e6);
        let tested = Stock { near_weld_yield_strength: mega(320.0), ..strong };
        assert_eq!(tested.strength().unwrap().yield_strength.si(), 320e6);
        let soft = Stock { grade: Some(Grade::Aluminium6061T6), ..PLAIN }.strength().unwrap();
        assert_eq!((soft.yield_strength.si(), soft.ultimate_strength.si()), (105e6, 165e6));
        assert!(soft.open.contains("aluminium"), "{}", soft.open);
    }

    #[test]
    fn a_yield_above_the_ultimate_is_refused() {
        let wrong = Stock { yield_strength: mega(500.0), ultimate_strength: mega(400.0), ..PLAIN };
        assert!(wrong.check().unwrap_err().to_string().starts_with("yield_strength"));
    }
}
