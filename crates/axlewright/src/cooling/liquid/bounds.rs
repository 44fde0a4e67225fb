//! How far the mixture models may be off towards the unsafe side.
#![expect(clippy::indexing_slicing, reason = "windows of two have two")]

use super::Liquid;
use crate::Result;
use crate::units::{Ratio, TemperatureDifference};

/// By how much a mix may freeze warmer than its curve says (K), over glycol by mass. Ethylene glycol: the tables of ASHRAE (2001) against the
/// curve, see `fluid::ethylene_glycol_freezing_temperature`; from 60 % on the curve holds its value, and so does its bound.
const ETHYLENE_FREEZING: [[f64; 2]; 7] =
    [[0.0, 0.0], [0.1, 0.6], [0.3, 0.6], [0.4, 1.7], [0.5, 2.6], [0.6, 3.3], [0.63, 3.3]];
/// Propylene glycol: a second fit lies within 1.81 K, see `fluid::propylene_glycol_freezing_temperature`.
const PROPYLENE_FREEZING: [[f64; 2]; 3] = [[0.0, 0.0], [0.1, 1.81], [0.63, 1.81]];
/// By how much a mix may boil cooler than Raoult's law says (K): activity models, see `fluid::ethylene_glycol_boiling_temperature`.
const ETHYLENE_BOILING: [[f64; 2]; 5] = [[0.0, 0.0], [0.1, 0.8], [0.6, 0.8], [0.9, 1.6], [1.0, 1.6]];
/// See `fluid::propylene_glycol_boiling_temperature`.
const PROPYLENE_BOILING: [[f64; 2]; 4] = [[0.0, 0.0], [0.5, 6.1], [0.9, 20.0], [1.0, 20.0]];

/// A liquid of a strength.
pub(in crate::cooling) struct Strength {
    pub(in crate::cooling) liquid: Liquid,
    /// Glycol by mass.
    pub(in crate::cooling) mass_fraction: Ratio,
}

impl Strength {
    /// By how much it may freeze warmer than the model says.
    pub(in crate::cooling) fn freezing(&self) -> Result<TemperatureDifference> {
        Ok(match self.liquid {
            Liquid::Water => TemperatureDifference::from_si(0.0),
            Liquid::EthyleneGlycol => self.off(&ETHYLENE_FREEZING),
            Liquid::PropyleneGlycol => self.off(&PROPYLENE_FREEZING),
        })
    }

    /// By how much it may boil cooler than the model says.
    pub(in crate::cooling) fn boiling(&self) -> Result<TemperatureDifference> {
        Ok(match self.liquid {
            Liquid::Water => TemperatureDifference::from_si(0.0),
            Liquid::EthyleneGlycol => self.off(&ETHYLENE_BOILING),
            Liquid::PropyleneGlycol => self.off(&PROPYLENE_BOILING),
        })
    }

    /// Straight between the points, as far as they reach.
    fn off(&self, points: &[[f64; 2]]) -> TemperatureDifference {
        let w = self.mass_fraction.si();
        let between = points.windows(2).find(|pair| w >= pair[0][0] && w <= pair[1][0]);
        TemperatureDifference::from_si(between.map_or(f64::NAN, |pair| {
            let [[from, low], [to, high]] = [pair[0], pair[1]];
            low + (high - low) * (w - from) / (to - from)
        }))
    }
}
