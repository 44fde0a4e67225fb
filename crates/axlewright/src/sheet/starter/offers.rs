//! The lines that a new sheet offers, table by table.

use super::{Build, Offer};

const fn offer(table: &'static str, key: &'static str, when: fn(&Build, &str) -> bool) -> Offer {
    Offer { table, key, when }
}

fn always(_: &Build, _: &str) -> bool {
    true
}
fn coils(_: &Build, kind: &str) -> bool {
    kind != "leaf"
}
fn measured(build: &Build, kind: &str) -> bool {
    !build.is_drawn() || kind == "other"
}
fn measured_coils(build: &Build, kind: &str) -> bool {
    measured(build, kind) && coils(build, kind)
}
fn measured_live(build: &Build, kind: &str) -> bool {
    measured(build, kind) && matches!(kind, "links" | "leaf")
}
fn drawn(build: &Build, kind: &str) -> bool {
    !measured(build, kind)
}
fn wishbones(build: &Build, kind: &str) -> bool {
    drawn(build, kind) && kind == "double_wishbone"
}
fn arms(build: &Build, kind: &str) -> bool {
    drawn(build, kind) && matches!(kind, "double_wishbone" | "strut")
}
fn strut(build: &Build, kind: &str) -> bool {
    drawn(build, kind) && kind == "strut"
}
fn links(build: &Build, kind: &str) -> bool {
    drawn(build, kind) && kind == "links"
}
fn live(_: &Build, kind: &str) -> bool {
    matches!(kind, "links" | "leaf")
}
fn measured_led(build: &Build, kind: &str) -> bool {
    measured(build, kind) && kind != "other"
}
fn measured_steered(build: &Build, kind: &str) -> bool {
    measured(build, kind) && matches!(kind, "double_wishbone" | "strut")
}
fn leaves(build: &Build, kind: &str) -> bool {
    drawn(build, kind) && kind == "leaf"
}
fn lengths(build: &Build, kind: &str) -> bool {
    drawn(build, kind) && kind != "strut"
}
fn manual(build: &Build, _: &str) -> bool {
    build.word("gearbox") == "manual"
}
fn automatic(build: &Build, _: &str) -> bool {
    !manual(build, "")
}
fn shaft(build: &Build, _: &str) -> bool {
    build.word("drive") != "front"
}
fn four(build: &Build, _: &str) -> bool {
    build.word("drive") == "four"
}
fn liquid(build: &Build, _: &str) -> bool {
    build.word("cooling") != "none"
}
fn glycol(build: &Build, _: &str) -> bool {
    build.word("cooling").ends_with("glycol")
}

/// Lines in the order of their tables.
pub(super) const OFFERS: &[Offer] = &[
    offer("use", "altitude", always),
    offer("use", "coldest_air", liquid),
    offer("use", "cruise_speed", always),
    offer("use", "peak_speed", always),
    offer("use", "road", always),
    offer("scales", "left_front", always),
    offer("scales", "right_front", always),
    offer("scales", "left_rear", always),
    offer("scales", "right_rear", always),
    offer("vehicle", "wheelbase", always),
    offer("vehicle", "mass_rating", always),
    offer("vehicle", "centre_of_gravity_height", always),
    offer("axle", "track", always),
    offer("axle", "unsprung_mass", always),
    offer("axle", "mass_rating", always),
    offer("axle", "roll_centre_height", measured),
    offer("axle", "spring_base", measured_live),
    offer("axle", "bump_clearance", always),
    offer("axle", "bump_stop_travel", always),
    offer("axle", "tyre_clearance", always),
    offer("axle", "joint_bump_clearance", always),
    offer("axle", "hose_bump_clearance", always),
    offer("axle", "joint_droop_clearance", always),
    offer("axle", "hose_droop_clearance", always),
    offer("axle", "rack_travel", arms),
    offer("axle", "joint_remaining", measured_led),
    offer("axle", "linkage_remaining", measured_led),
    offer("axle", "toggle_angle", measured_steered),
    offer("axle", "bind_force", measured_live),
    offer("axle", "wind_up_angle", measured_live),
    offer("axle", "lateral_shift", measured_live),
    offer("axle", "pinion_angle_change", measured_live),
    offer("axle", "allowed_link_force", live),
    offer("axle.tyre", "size", always),
    offer("axle.tyre", "pressure", always),
    offer("axle.tyre", "rated_pressure", always),
    offer("axle.tyre", "service", always),
    offer("axle.tyre", "rate", always),
    offer("axle.wheel", "centre", drawn),
    offer("axle.wheel", "camber", drawn),
    offer("axle.wheel", "toe", drawn),
    offer("axle.spring", "rate", always),
    offer("axle.spring", "motion_ratio", measured),
    offer("axle.spring", "free_length", coils),
    offer("axle.spring", "solid_length", coils),
    offer("axle.spring", "minimum_gap", coils),
    offer("axle.spring", "droop_length", measured_coils),
    offer("axle.spring", "wire_diameter", coils),
    offer("axle.spring", "mean_diameter", coils),
    offer("axle.spring", "active_coils", coils),
    offer("axle.spring", "coiling", coils),
    offer("axle.spring", "allowed_stress", always),
    offer("axle.spring", "guide", coils),
    offer("axle.spring", "end_fixity", coils),
    offer("axle.damper", "rate", always),
    offer("axle.damper", "mounting", measured_coils),
    offer("axle.damper", "stroke", measured),
    offer("axle.damper", "motion_ratio", measured),
    offer("axle.damper", "open_length", drawn),
    offer("axle.damper", "closed_length", drawn),
    offer("axle.damper", "gas_force", always),
    offer("axle.coil_over", "body_eye", lengths_of_coil),
    offer("axle.coil_over", "lower_eye", wishbones),
    offer("axle.coil_over", "carried_by", wishbones),
    offer("axle.coil_over", "axle_eye", links),
    offer("axle.anti_roll_bar", "rate", always),
    offer("axle.anti_roll_bar", "motion_ratio", always),
    offer("axle.upper_arm", "front_pivot", wishbones),
    offer("axle.upper_arm", "rear_pivot", wishbones),
    offer("axle.upper_arm", "ball_joint", wishbones),
    offer("axle.lower_arm", "front_pivot", arms),
    offer("axle.lower_arm", "rear_pivot", arms),
    offer("axle.lower_arm", "ball_joint", arms),
    offer("axle.tie_rod", "inner", arms),
    offer("axle.tie_rod", "outer", arms),
    offer("axle.leg", "top_mount", strut),
    offer("axle.leg", "lower_end", strut),
    offer("axle.lower_links", "body", links),
    offer("axle.lower_links", "axle", links),
    offer("axle.upper_links", "body", links),
    offer("axle.upper_links", "axle", links),
    offer("axle.upper_links", "fitted", links),
    offer("axle.lateral_rod", "body", links),
    offer("axle.lateral_rod", "axle", links),
    offer("axle.leaf", "fixed_eye", leaves),
    offer("axle.leaf", "shackle_eye", leaves),
    offer("axle.leaf", "shackle_pivot", leaves),
    offer("axle.leaf", "seat", leaves),
    offer("axle.leaf", "clamped_length", leaves),
    offer("axle.leaf", "form", leaves),
    offer("axle.damper", "body_eye", leaves),
    offer("axle.damper", "axle_eye", leaves),
    offer("axle.joint_limits", "upper_ball", wishbones),
    offer("axle.joint_limits", "top_mount", strut),
    offer("axle.joint_limits", "lower_ball", arms),
    offer("axle.joint_limits", "tie_rod_inner", arms),
    offer("axle.joint_limits", "tie_rod_outer", arms),
    offer("axle.wanted", "frequency_low", always),
    offer("axle.wanted", "frequency_high", always),
    offer("engine", "peak_torque", always),
    offer("engine", "red_line", always),
    offer("engine", "idle_speed", always),
    offer("engine", "bore", always),
    offer("engine", "stroke", always),
    offer("engine", "cylinders", always),
    offer("engine", "cycle", always),
    offer("engine", "piston_speed_limit", always),
    offer("clutch", "capacity", manual),
    offer("clutch", "high_capacity", manual),
    offer("clutch", "shock_factor", manual),
    offer("converter", "stall_ratio", automatic),
    offer("gearbox", "ratios", always),
    offer("gearbox", "reverse_ratio", always),
    offer("gearbox", "efficiency", always),
    offer("gearbox", "torque_rating", always),
    offer("gearbox", "rating_side", always),
    offer("gearbox", "rating_kind", always),
    offer("transfer_case", "low_ratio", four),
    offer("transfer_case", "efficiency", four),
    offer("propeller_shaft", "torque_rating", shaft),
    offer("propeller_shaft", "rating_kind", shaft),
    offer("final_drive", "ratio", always),
    offer("final_drive", "efficiency", always),
    offer("final_drive", "differential", always),
    offer("final_drive", "torque_rating", always),
    offer("final_drive", "rating_side", always),
    offer("final_drive", "rating_kind", always),
    offer("half_shaft", "torque_rating", always),
    offer("half_shaft", "rating_kind", always),
    offer("grip", "driven_load", always),
    offer("grip", "strength_coefficient", always),
    offer("grip", "pull_coefficient", always),
    offer("grip", "inertia_factor", always),
    offer("speedometer", "tyre_size", always),
    offer("speedometer", "counts", always),
    offer("coolant", "hottest", liquid),
    offer("coolant", "volume_share", glycol),
    offer("coolant", "concentrate", glycol),
    offer("coolant", "volume", liquid),
    offer("coolant", "fill_temperature", liquid),
    offer("coolant", "mean_temperature", liquid),
    offer("coolant", "suction_loss", liquid),
    offer("cap", "rating", liquid),
    offer("cap", "opening_pressure", liquid),
    offer("cap", "holding_pressure", liquid),
    offer("cap", "gauge_error", liquid),
    offer("cap", "rating_tolerance", liquid),
    offer("cap", "weakest_component", liquid),
    offer("header", "air_volume", liquid),
    offer("header", "air_temperature", liquid),
    offer("leak_test", "trapped", liquid),
    offer("leak_test", "gauge_pressure", liquid),
    offer("leak_test", "later_gauge_pressure", liquid),
    offer("leak_test", "temperature", liquid),
    offer("leak_test", "later_temperature", liquid),
    offer("leak_test", "gas_volume", liquid),
    offer("leak_test", "coolant_volume", liquid),
    offer("wanted", "cruise_engine_speed", always),
    offer("wanted", "roll_gradient", always),
    offer("wanted", "crawl_speed", four),
];

fn lengths_of_coil(build: &Build, kind: &str) -> bool {
    lengths(build, kind) && coils(build, kind)
}
