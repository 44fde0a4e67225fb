//! Rules of the driveline, with the lines from which each takes its inputs.
#![expect(clippy::indexing_slicing, reason = "windows of two have two")]

use super::Differential;
use super::torque::demand::{
    AtGround, Coupling, Geared, Gears, GripBounds, Judged, OneShaft, Pulling, Rated,
};
use super::torque::torque_path::Grip;
use super::torque::{RatingKind, Side};
use crate::base::error::NoSolution;
use crate::base::section::{Rule, fields, rule, words};
use crate::units::Ratio;
use crate::{Error, Result};

words!(Side { Input = "input", Output = "output" });
words!(RatingKind { Continuous = "continuous", Peak = "peak", Yield = "yield", Ultimate = "ultimate" });
words!(Differential { Open = "open", LimitedSlip = "limited_slip", Locked = "locked" });
fields!(Geared { torque, ratio, efficiency });
fields!(Coupling { engine, capacity, high_capacity, shock_factor, stall_ratio, converter_shock_factor });
fields!(Gears { peak_ratio, ratio, efficiency });
fields!(Rated {
    side,
    kind,
    rating,
    coupling_ratio,
    engine_input,
    engine_output,
    dropped_input,
    dropped_output,
    grip_input,
    grip_output,
    inertia_factor,
    strength,
    yield_strength,
    ultimate_strength,
    shock_reserve,
    capacity_reserve,
    input_reserve,
    output_reserve,
});
fields!(OneShaft { differential });
fields!(GripBounds { strength_coefficient, pull_coefficient });
fields!(Pulling { engine, grip, strength_coefficient, pull_coefficient });
fields!(AtGround { torque, loaded_radius });
fields!(Grip {
    driven_load,
    load_at_rest,
    loaded_radius,
    strength_coefficient,
    pull_coefficient,
    inertia_factor
});
fields!(Ratios { first, ratios });
fields!(LowRange { low_ratio });

/// Ratios of a gearbox, first gear to top.
struct Ratios {
    first: Ratio,
    ratios: Vec<Option<Ratio>>,
}

impl Ratios {
    fn first(&self) -> Result<Ratio> {
        self.falling().map(|_| self.first)
    }

    fn top(&self) -> Result<Ratio> {
        Ok(self.falling()?.last().copied().unwrap_or(self.first))
    }

    /// The ratios that are written; refused where they do not fall: strength is looked at in first gear, speed in top.
    fn falling(&self) -> Result<Vec<Ratio>> {
        let ratios: Vec<Ratio> = self.ratios.iter().flatten().copied().collect();
        let mut pairs = ratios.windows(2).enumerate();
        if let Some((place, pair)) = pairs.find(|(_, pair)| pair[1] >= pair[0]) {
            let refusal = NoSolution::new(
                "is not less than the ratio of the gear before it: ratios fall from first gear to top",
            );
            return Err(Error::no_solution(
                refusal.of(format!("gearbox.ratios[{}]", place + 1), pair[1]).less_than(pair[0]),
            ));
        }
        Ok(ratios)
    }
}

/// Low range of a transfer case.
struct LowRange {
    low_ratio: Ratio,
}

impl LowRange {
    /// Efficiency of a transfer case that is not there.
    fn efficiency(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(if self.low_ratio.si() == 1.0 { 1.0 } else { f64::NAN }))
    }
}

pub(super) const POWER: &str = "balance of power through a geared train, see driveline.TorquePath";
const DEMAND: &str = "the lesser of engine and grip for a continuous rating; for the others the lesser of the dropped clutch and the grip times the inertia factor; a rating of no kind counts against both";
const GEARBOX_DEMAND: &str = "on the input side the engine, or the dropped clutch for a rating that is not continuous; on the output side the lesser of that and the grip; a rating of no kind counts against both";

macro_rules! behind {
    ($torque:literal, $part:literal = $ratio:literal, $formula:literal) => {
        rule! {
            $part Geared::behind, Geared
            takes { torque = $torque, ratio = $ratio, efficiency }
            says $formula, POWER
        }
    };
}

pub(super) const GEARBOX_OUTPUT: Rule =
    behind!("driveline.input_torque", "gearbox" = "gearbox.lowest_ratio", "T (i e)");
pub(super) const GEARBOX_DROPPED: Rule =
    behind!("driveline.dropped_torque", "gearbox" = "gearbox.lowest_ratio", "T_d (i e)");
pub(super) const TRANSFER_OUTPUT: Rule =
    behind!("gearbox.output_torque", "transfer_case" = "transfer_case.lower_ratio", "T (i_t e_t)");
pub(super) const TRANSFER_DROPPED: Rule =
    behind!("gearbox.dropped_output", "transfer_case" = "transfer_case.lower_ratio", "T_d (i_t e_t)");
pub(super) const FINAL_OUTPUT: Rule =
    behind!("transfer_case.output_torque", "final_drive" = "final_drive.ratio", "T (i_a e_a)");
pub(super) const FINAL_DROPPED: Rule =
    behind!("transfer_case.dropped_output", "final_drive" = "final_drive.ratio", "T_d (i_a e_a)");

pub(super) const FIRST_RATIO: Rule = rule! {
    "gearbox" Ratios::first, Ratios
    takes { first = "gearbox.ratios[0]", ratios = "gearbox.ratios[*]" }
    says "first of the ratios", "definition"
};
pub(super) const TOP_RATIO: Rule = rule! {
    "gearbox" Ratios::top, Ratios
    takes { first = "gearbox.ratios[0]", ratios = "gearbox.ratios[*]" }
    says "last of the ratios", "definition"
};
pub(super) const NO_LOW_RANGE: Rule = rule! {
    "transfer_case" LowRange::efficiency, LowRange
    takes { low_ratio = "transfer_case.lower_ratio" }
    says "1 where there is no transfer case", "definition";
    lacking "a low range needs transfer_case.efficiency"
};
/// Rule on the clutch or converter between engine and gearbox.
macro_rules! coupling {
    ($function:path, $says:literal) => {
        rule! {
            "clutch" $function, Coupling
            takes {
                engine = "engine.peak_torque", capacity, high_capacity, shock_factor,
                stall_ratio = "converter.stall_ratio", converter_shock_factor = "converter.shock_factor",
            }
            says $says, COUPLED
        }
    };
}
const COUPLED: &str = "definition: a clutch passes the torque on, a converter at stall multiplies it; suddenly applied load (Shigley's Mechanical Engineering Design, from memory)";

pub(super) const COUPLING_RATIO: Rule =
    coupling!(Coupling::ratio, "1 behind a clutch, r_s behind a converter");
pub(super) const INPUT_TORQUE: Rule = coupling!(Coupling::torque, "T, or T r_s behind a converter");
pub(super) const DROPPED_TORQUE: Rule =
    coupling!(Coupling::dropped, "T_c s with the clutch's highest capacity that is known, or T r_s s");
pub(super) const SHOCK: Rule =
    coupling!(Coupling::shock, "s of clutch or converter, the greater one where there are both");
const TOLD: &str = "definition: a margin is enough only if nothing that raises the torque is missing";

pub(super) const HIGH_CAPACITY_TOLD: Rule = rule! {
    "clutch" Coupling::reserve, Coupling
    needs { high_capacity }
    says "1", TOLD
};
pub(super) const STALL_TOLD: Rule = rule! {
    "clutch" Coupling::reserve, Coupling
    takes { capacity }
    needs { converter_shock_factor = "converter.shock_factor" }
    says "1 where there is no clutch", TOLD
};
/// The lines of which each makes the shock known.
macro_rules! shock_told {
    (takes { $($taken:ident $(= $taken_path:literal)?),+ } needs { $($needed:ident $(= $needed_path:literal)?),+ }) => {
        rule! {
            "clutch" Coupling::shock_reserve, Coupling
            takes { engine = "engine.peak_torque", $($taken $(= $taken_path)?),+ }
            needs { $($needed $(= $needed_path)?),+ }
            says "1 where the torque of a dropped clutch, or of a converter with which a gear is engaged, is known", TOLD
        }
    };
}
pub(super) const SHOCK_TOLD: Rule = shock_told! {
    takes { high_capacity, stall_ratio = "converter.stall_ratio", converter_shock_factor = "converter.shock_factor" }
    needs { capacity, shock_factor }
};
pub(super) const HIGH_SHOCK_TOLD: Rule = shock_told! {
    takes { stall_ratio = "converter.stall_ratio", converter_shock_factor = "converter.shock_factor" }
    needs { high_capacity, shock_factor }
};
pub(super) const CONVERTER_SHOCK_TOLD: Rule = shock_told! {
    takes { capacity, high_capacity, shock_factor, stall_ratio = "converter.stall_ratio" }
    needs { converter_shock_factor = "converter.shock_factor" }
};
pub(super) const REVERSE_TOLD: Rule = rule! {
    "gearbox" Gears::reserve, Gears
    needs { peak_ratio }
    says "1", TOLD
};
pub(super) const RANGE_TOLD: Rule = rule! {
    "transfer_case" Gears::reserve, Gears
    takes { peak_ratio = "transfer_case.low_ratio", efficiency }
    says "1 where the low range is known, or where there is no transfer case", TOLD
};
pub(super) const STRAIGHT: Rule = rule! {
    "transfer_case" Gears::peak, Gears
    needs { efficiency }
    says "1 where there is no transfer case", TOLD
};
pub(super) const SHARE: Rule = rule! {
    "final_drive" OneShaft::share, OneShaft
    takes { differential }
    says "half each if open, all of it if limited-slip or locked",
        "balance of moments, see driveline.axle_shaft_torque_open and _locked: a locked axle may stand on one wheel"
};
pub(super) const HIGH_GRIP: Rule = rule! {
    "grip" GripBounds::high, GripBounds
    takes { strength_coefficient, pull_coefficient }
    says "m_high >= m", "definition: a high bound is not below the mean"
};
pub(super) const PULL: Rule = rule! {
    "grip" Pulling::torque, Pulling
    takes { engine = "final_drive.output_torque", grip = "grip.pull_torque", strength_coefficient, pull_coefficient }
    says "min(T, m F r_l)", POWER
};
pub(super) const TRACTION: Rule = rule! {
    "driveline" AtGround::force, AtGround
    takes { torque = "driveline.pull_torque", loaded_radius = "grip.loaded_radius" }
    says "T / r_l", "balance of moments at the wheel"
};

/// Lines that every rating takes.
macro_rules! rated {
    (
        $table:literal, $formula:expr, $output_reserve:literal, $input_reserve:literal;
        $($taken:ident = $taken_path:literal),+; $($needed:ident = $needed_path:literal),+
    ) => {
        rule! {
            $table Rated::judged, Rated
            takes {
                coupling_ratio = "driveline.coupling_ratio", inertia_factor = "grip.inertia_factor",
                strength = "wanted.strength", yield_strength = "wanted.yield_strength",
                ultimate_strength = "wanted.ultimate_strength", shock_reserve = "driveline.shock_reserve",
                capacity_reserve = "clutch.capacity_reserve", input_reserve = $input_reserve,
                output_reserve = $output_reserve, $($taken = $taken_path),+
            }
            needs { $($needed = $needed_path),+ }
            gives Judged { demand, wanted }
            says $formula, POWER
        }
    };
}

/// The gearbox: an input rating counts in every gear, so that grip never relieves it; an output rating in the lowest gear.
pub(super) const ON_GEARBOX: Rule = rated!(
    "gearbox", GEARBOX_DEMAND, "gearbox.reverse_reserve", "gearbox.no_reserve";
    rating = "gearbox.torque_rating", kind = "gearbox.rating_kind",
    dropped_input = "driveline.dropped_torque", dropped_output = "gearbox.dropped_output",
    grip_output = "gearbox.grip_output";
    side = "gearbox.rating_side", engine_input = "driveline.input_torque",
    engine_output = "gearbox.output_torque"
);
pub(super) const ON_FINAL_DRIVE: Rule = rated!(
    "final_drive", DEMAND, "driveline.gear_reserve", "driveline.gear_reserve";
    rating = "final_drive.torque_rating", kind = "final_drive.rating_kind",
    dropped_input = "transfer_case.dropped_output", dropped_output = "final_drive.dropped_output",
    grip_input = "final_drive.grip_input", grip_output = "grip.torque";
    side = "final_drive.rating_side", engine_input = "transfer_case.output_torque",
    engine_output = "final_drive.output_torque"
);
/// A shaft: one torque comes in and goes out.
macro_rules! on_shaft {
    ($rating:literal, $kind:literal, $torque:literal, $dropped:literal, $grip:literal) => {
        rated!(
            "grip", DEMAND, "driveline.gear_reserve", "driveline.gear_reserve";
            rating = $rating, kind = $kind, dropped_input = $dropped, dropped_output = $dropped,
            grip_input = $grip;
            engine_input = $torque, engine_output = $torque
        )
    };
}
pub(super) const ON_PROPELLER_SHAFT: Rule = on_shaft!(
    "propeller_shaft.torque_rating",
    "propeller_shaft.rating_kind",
    "transfer_case.output_torque",
    "transfer_case.dropped_output",
    "final_drive.grip_input"
);
pub(super) const ON_HALF_SHAFT: Rule = on_shaft!(
    "half_shaft.torque_rating",
    "half_shaft.rating_kind",
    "half_shaft.torque",
    "half_shaft.dropped_torque",
    "half_shaft.grip"
);
