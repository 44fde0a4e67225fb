//! Rules of caps and of the pressure decay test, with the lines from which each takes its inputs.

use super::leak::pressure_decay::Trapped;
use super::liquid::bounds::Strength;
use super::{CapTest, PressureDecay};
use crate::base::error::NoSolution;
use crate::base::section::{Rule, fields, rule};
use crate::units::{GaugePressure, Stress, Temperature, TemperatureDifference, Volume};
use crate::{Error, Result};

fields!(Strength { liquid, mass_fraction });
fields!(Grown { mean_temperature, growth_limit });
fields!(UnderCap { header_pressure, rating, keeps_at_most, holds_at_least });
fields!(Trial { trapped });
fields!(Pumped { gauge_pressure, later_gauge_pressure, gauge_error, weakest_component });

/// Pressure that a tested cap surely holds, and what it has to hold is known.
fn tested(cap: &CapTest) -> Result<GaugePressure> {
    cap.least_holding()?;
    cap.holds_at_least()
}

/// True if a cap was tested for what it holds.
fn is_tested(cap: &CapTest) -> bool {
    tested(cap).is_ok()
}

/// Addition to the margin wanted of boiling: nothing for a cap that was tested.
fn boiling_untested(cap: &CapTest) -> Result<TemperatureDifference> {
    Ok(TemperatureDifference::from_si(if is_tested(cap) { 0.0 } else { f64::INFINITY }))
}

/// Addition to the air that is wanted in the header tank: nothing for a cap that was tested.
fn air_untested(cap: &CapTest) -> Result<Volume> {
    Ok(Volume::from_si(if is_tested(cap) { 0.0 } else { f64::INFINITY }))
}

/// A coolant that has warmed.
struct Grown {
    mean_temperature: Temperature,
    growth_limit: Temperature,
}

impl Grown {
    /// Its temperature; refused above the limit.
    fn temperature(&self) -> Result<Temperature> {
        if self.mean_temperature > self.growth_limit {
            let refusal = NoSolution::new("is more than growth is computed for");
            return Err(Error::no_solution(
                refusal.of("coolant.mean_temperature", self.mean_temperature).at_most(self.growth_limit),
            ));
        }
        Ok(self.mean_temperature)
    }
}

pub(super) const GROWN: Rule = rule! {
    "coolant" Grown::temperature, Grown
    needs { mean_temperature, growth_limit }
    says "T_m up to T_e", "definition: a limit of the model"
};

/// Pressure under a cap.
struct UnderCap {
    header_pressure: GaugePressure,
    rating: Option<GaugePressure>,
    keeps_at_most: Option<GaugePressure>,
    /// Pressure that the tested cap surely keeps, the gauge's error taken off.
    holds_at_least: Option<GaugePressure>,
}

impl UnderCap {
    /// The pressure, no more than the tested cap surely keeps; refused above the cap's rating.
    fn kept(&self) -> Result<GaugePressure> {
        match self.rating {
            Some(rating) if self.header_pressure > rating => {
                let refusal =
                    NoSolution::new("is more than the rating of the cap: no cap is sure to keep it");
                Err(Error::no_solution(
                    refusal.of("coolant.header_pressure", self.header_pressure).at_most(rating),
                ))
            }
            _ => {
                let surely = self.holds_at_least.map(|least| least.si().max(0.0));
                let most = [self.keeps_at_most.map(GaugePressure::si), surely];
                let least = most.into_iter().flatten().fold(self.header_pressure.si(), f64::min);
                Ok(GaugePressure::from_si(least))
            }
        }
    }
}

/// Contents of a system under a pressure decay test.
struct Trial {
    trapped: Trapped,
}

impl Trial {
    /// Most coolant that it holds: none beside gas alone, otherwise not known.
    fn coolant(&self) -> Result<Volume> {
        Ok(Volume::from_si(if self.trapped == Trapped::Gas { 0.0 } else { f64::NAN }))
    }
}

pub(super) const NO_COOLANT: Rule = rule! {
    "leak_test" Trial::coolant, Trial
    takes { trapped }
    says "0 m³ where gas alone is trapped", "definition: gas alone is no coolant"
};

/// A system that was pumped up.
struct Pumped {
    gauge_pressure: GaugePressure,
    later_gauge_pressure: Option<GaugePressure>,
    gauge_error: Option<Stress>,
    weakest_component: Option<GaugePressure>,
}

impl Pumped {
    /// Highest pressure that it may have seen: the higher reading and the gauge's error. Without that error only a reading that is too much already.
    fn at_most(&self) -> Result<GaugePressure> {
        let later = self.later_gauge_pressure.unwrap_or(self.gauge_pressure);
        let reading = if self.gauge_pressure < later { later } else { self.gauge_pressure };
        match (self.gauge_error, self.weakest_component) {
            (Some(error), _) => Ok(GaugePressure::from_si(reading.si() + error.si())),
            (None, Some(weakest)) if reading > weakest => Ok(reading),
            _ => Err(Error::Missing {
                argument: "gauge_error",
                why: "the reading clears the system only with the gauge's error",
            }),
        }
    }
}

const KEEPS: &str = "definition: no more stands under a cap than it was seen to keep, or than it opens at";
pub(super) const READING: &str = "definition: the gauge's whole error counts against the cap";

pub(super) const HOLDS: Rule = rule! {
    "cap" CapTest::holds_at_least, CapTest
    needs { holding_pressure }
    uses { rating, rating_tolerance, gauge_error, opening_pressure }
    says "p_h - e", READING
};
pub(super) const HOLDS_BY_OPENING: Rule = rule! {
    "cap" CapTest::holds_at_least, CapTest
    needs { opening_pressure }
    uses { rating, rating_tolerance, gauge_error }
    says "p_o - e where that is too low already", READING
};
pub(super) const HAS_TO_HOLD: Rule = rule! {
    "cap" CapTest::least_holding, CapTest
    needs { rating, rating_tolerance }
    says "p_r - t", READING
};
pub(super) const OPENS: Rule = rule! {
    "cap" CapTest::opens_at_most, CapTest
    needs { opening_pressure }
    uses { rating, rating_tolerance, gauge_error, holding_pressure }
    says "p_o + e", READING
};
pub(super) const OPENS_BY_HOLDING: Rule = rule! {
    "cap" CapTest::opens_at_most, CapTest
    needs { holding_pressure }
    uses { rating, rating_tolerance, gauge_error }
    says "p_h + e where that is too high already", READING
};
pub(super) const HAS_TO_OPEN: Rule = rule! {
    "cap" CapTest::largest_opening, CapTest
    needs { rating, rating_tolerance }
    says "p_r + t", READING
};
pub(super) const LETS_COME: Rule = rule! {
    "cap" CapTest::peak_pressure, CapTest
    needs { rating }
    uses { opening_pressure, holding_pressure, gauge_error, weakest_component }
    says "max(p_o + e, p_r); max(p_h + e, p_r) where that is too much already", READING
};
pub(super) const VACUUM: Rule = rule! {
    "cap" CapTest::vacuum_opens_at_least, CapTest
    needs { vacuum_opening, gauge_error }
    says "p_v - e", READING
};
pub(super) const BUILT: Rule = rule! {
    "cap" CapTest::header_pressure, CapTest
    needs { rating }
    uses { rating_tolerance, gauge_error, holding_pressure, opening_pressure }
    says "the reading that the cap keeps less the gauge's error, and no more than its rating; untested its rating less its tolerance, and no more than it opens at", READING
};
pub(super) const TESTED_PRESSURE: Rule = rule! {
    "cap" tested, CapTest
    needs { holding_pressure, gauge_error, rating, rating_tolerance }
    uses { opening_pressure }
    says "p_h - e, once rating and tolerance say what it has to hold", READING
};
pub(super) const TESTED: Rule = rule! {
    "cap" boiling_untested, CapTest
    needs { holding_pressure, gauge_error, rating, rating_tolerance }
    uses { opening_pressure }
    says "0 K", READING
};
pub(super) const TESTED_AIR: Rule = rule! {
    "cap" air_untested, CapTest
    needs { holding_pressure, gauge_error, rating, rating_tolerance }
    uses { opening_pressure }
    says "0 m³", READING
};
pub(super) const KEPT: Rule = rule! {
    "coolant" UnderCap::kept, UnderCap
    takes {
        header_pressure, rating = "cap.rating", keeps_at_most = "cap.keeps_at_most",
        holds_at_least = "cap.holds_at_least",
    }
    says "min(p, p_k, p_h - e), p <= p_r", "definition: no more stands under a cap than it keeps, and a cap opens at its rating"
};
pub(super) const KEEPS_AT_MOST: Rule = rule! {
    "cap" CapTest::keeps_at_most, CapTest
    needs { holding_pressure }
    uses { opening_pressure, gauge_error }
    says "min(p_h, p_o + e)", KEEPS
};
pub(super) const KEEPS_AT_MOST_BY_OPENING: Rule = rule! {
    "cap" CapTest::keeps_at_most, CapTest
    needs { opening_pressure }
    uses { gauge_error }
    says "p_o + e", KEEPS
};
pub(super) const BOILING_BOUND: Rule = rule! {
    "coolant" Strength::boiling, Strength
    takes { liquid, mass_fraction }
    says "straight between 0 K at 0 %, 0.8 K from 10 % to 60 % and 1.6 K from 90 % (ethylene glycol); 0 K at 0 %, 6.1 K at 50 % and 20 K from 90 % (propylene glycol)", MODELS
};
pub(super) const FREEZING_BOUND: Rule = rule! {
    "coolant" Strength::freezing, Strength
    takes { liquid, mass_fraction }
    says "straight between 0 K at 0 %, 0.6 K from 10 % to 30 %, 1.7 K at 40 %, 2.6 K at 50 % and 3.3 K at 60 % (ethylene glycol); 1.81 K from 10 % (propylene glycol)", MODELS
};
const MODELS: &str =
    "gap between the mixture model and others, see the functions of fluid on freezing and boiling";
pub(super) const PUMPED_AT_MOST: Rule = rule! {
    "leak_test" Pumped::at_most, Pumped
    takes {
        gauge_pressure, later_gauge_pressure, gauge_error = "cap.gauge_error",
        weakest_component = "cap.weakest_component",
    }
    says "max(p_1, p_2) + e; without e where that is too much already", READING
};

pub(super) const TIGHT: Rule = rule! {
    "leak_test" PressureDecay::tight_pressure, PressureDecay
    needs {
        trapped, gauge_pressure, temperature, later_temperature,
        station_pressure = "use.station_pressure",
    }
    uses {
        gas_volume, coolant_volume, liquid = "coolant.liquid",
        mass_fraction = "coolant.mass_fraction",
    }
    says "p_t = (p_1 + p_a) T_2 / T_1 - p_a, over coolant as cooling.pressure_decay_tight_pressure_over_coolant", GAS
};
pub(super) const PROVEN: Rule = rule! {
    "leak_test" PressureDecay::least_pressure, PressureDecay
    needs {
        trapped, gauge_pressure, temperature, later_temperature,
        station_pressure = "use.station_pressure", allowed_loss,
    }
    uses {
        gauge_error = "cap.gauge_error", later_gauge_pressure,
        gas_volume, coolant_volume, liquid = "coolant.liquid",
        mass_fraction = "coolant.mass_fraction",
    }
    says "cooling.pressure_decay_least_pressure; p_t - l where the later reading is below it already", GAS
};
const GAS: &str = "ideal gas law; vapour of damp gas that warms: fluid.water_saturation_pressure; growth of the coolant: see fluid; a reading condemns without the gauge's error, and clears only with it";
