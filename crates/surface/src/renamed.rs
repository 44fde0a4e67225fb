//! Names that the surface had before this version, written once. Their aliases follow on every surface: deprecated items in Rust, macros in
//! the C header, and names in Python that warn. Old lines of the build sheet stand in the sections of their systems.

use crate::{Api, Fallible};
use std::collections::BTreeSet;

/// A system, the old name of its function, model or struct of results, and the new one.
pub const ITEMS: &[[&str; 3]] = &[
    ["cooling", "LeakDown", "PressureDecay"],
    ["cooling", "LeakDownFindings", "PressureDecayFindings"],
    ["cooling", "leak_down_least_pressure", "pressure_decay_least_pressure"],
    ["cooling", "leak_down_pressure", "pressure_decay_tight_pressure"],
    ["cooling", "leak_down_pressure_over_coolant", "pressure_decay_tight_pressure_over_coolant"],
    ["engine", "charge_temperature", "compressor_outlet_temperature"],
    ["mass", "raised_axle_height", "centre_of_gravity_height_by_tilt"],
    ["mass", "raised_axle_height_over_tyres", "centre_of_gravity_height_by_tilt_over_tyres"],
    ["suspension", "HeaveRange", "TravelRange"],
];

/// A function or a struct of results, the old name of an argument or a result, and the new one.
pub const PARTS: &[[&str; 3]] = &[
    ["cooling.CapFindings", "greatest_opening", "largest_opening"],
    ["cooling.CapFindings", "greatest_pressure", "peak_pressure"],
    ["cooling.PressureDecayFindings", "greatest_loss", "largest_loss"],
    ["mass.CentreHeight", "greatest_error", "largest_error"],
    ["mass.centre_of_gravity_height_by_tilt", "raised_mass", "tilted_mass"],
    ["mass.centre_of_gravity_height_by_tilt_over_tyres", "lower_tyre_rate", "lower_axle_tyre_rate"],
    ["mass.centre_of_gravity_height_by_tilt_over_tyres", "raised_mass", "tilted_mass"],
    ["mass.centre_of_gravity_height_by_tilt_over_tyres", "raised_tyre_rate", "raised_axle_tyre_rate"],
    ["spring.AtRideHeight", "bump_left", "bump_remaining"],
    ["spring.static_deflection", "tangent_rate", "rate"],
    ["suspension.AxlePosition", "greatest_lean", "peak_lean"],
    ["suspension.AxlePosition", "greatest_lean_joint", "peak_lean_joint"],
    ["suspension.AxlePosition", "joint_left", "joint_remaining"],
    ["suspension.WheelPosition", "damper_left", "damper_remaining"],
    ["suspension.WheelPosition", "joint_left", "joint_remaining"],
    ["suspension.WheelPosition", "spring_left", "spring_remaining"],
    ["tyre.WheelChangeFindings", "arch_left", "arch_remaining"],
    ["tyre.WheelChangeFindings", "inner_left", "inner_remaining"],
    ["tyre.WheelChangeFindings", "outer_left", "outer_remaining"],
];

/// Old and new names of the items of a system.
pub fn items(system: &str) -> impl Iterator<Item = (&'static str, &'static str)> {
    ITEMS.iter().filter(move |[of, ..]| *of == system).map(|[_, old, new]| (*old, *new))
}

/// Old and new names of the arguments of a function, or of the results in a struct: `spring.static_deflection`.
pub fn parts(owner: &str) -> impl Iterator<Item = (&'static str, &'static str)> {
    PARTS.iter().filter(move |[of, ..]| *of == owner).map(|[_, old, new]| (*old, *new))
}

/// Old and new names of the columns of tables: those of the results.
pub fn columns() -> impl Iterator<Item = (&'static str, &'static str)> {
    let is_struct = |owner: &str| owner.contains(|letter: char| letter.is_ascii_uppercase());
    let pairs: BTreeSet<_> =
        PARTS.iter().filter(|[of, ..]| is_struct(of)).map(|[_, old, new]| (*old, *new)).collect();
    pairs.into_iter()
}

/// Refuses a new name that is not there, and an old one that is.
pub fn check(api: &Api) -> Fallible<()> {
    let methods = api.models.iter().flat_map(|model| &model.methods);
    let (mut items, mut parts) = (BTreeSet::new(), BTreeSet::new());
    items.extend(api.models.iter().map(|model| format!("{}.{}", model.system, model.name)));
    for function in &api.functions {
        items.insert(function.path());
        parts.extend(function.parameters.iter().map(|p| format!("{}.{}", function.path(), p.name)));
    }
    for of in api.functions.iter().chain(methods) {
        if let Some(name) = &of.result_type {
            let owner = format!("{}.{name}", of.system);
            parts.extend(of.results.iter().map(|result| format!("{owner}.{}", result.name)));
            items.insert(owner);
        }
    }
    for (known, list) in [(&items, ITEMS), (&parts, PARTS)] {
        for [owner, old, new] in list {
            if !known.contains(&format!("{owner}.{new}")) {
                return Err(format!("{owner}.{old} was renamed to {new}, which is not there"));
            }
            if known.contains(&format!("{owner}.{old}")) {
                return Err(format!("{owner}.{old} was renamed to {new}, and is there all the same"));
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_name_is_there_and_an_old_one_is_not() {
        let mut api = Api::read(&crate::core_sources()).unwrap();
        check(&api).unwrap();
        let place = api.functions.iter().position(|of| of.path() == "spring.static_deflection").unwrap();
        let mut refused = |name: &str| {
            api.functions[place].parameters[1].name = name.to_owned();
            check(&api).unwrap_err()
        };
        assert!(
            refused("other")
                .contains("spring.static_deflection.tangent_rate was renamed to rate, which is not")
        );
        let mut twice = Api::read(&crate::core_sources()).unwrap();
        let mut old = twice.functions[place].clone();
        old.name = "leak_down_pressure".to_owned();
        old.system = "cooling".to_owned();
        twice.functions.push(old);
        assert!(check(&twice).unwrap_err().contains("and is there all the same"));
    }
}
