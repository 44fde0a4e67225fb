//! Rules of caps and of the pressure decay test, with the lines from which each takes its inputs.

use super::{CapTest, PressureDecay};
use crate::base::section::{Rule, rule};

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
    says "the cap's rating, an upper bound, or the reading that it keeps less the gauge's error, if that is less", READING
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
const GAS: &str = "ideal gas law; growth of the coolant: see fluid; a reading condemns without the gauge's error, and clears only with it";
