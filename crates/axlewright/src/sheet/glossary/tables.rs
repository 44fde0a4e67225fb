//! The tables of a build sheet, a line each.

/// A table and its content.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TableOf {
    /// Its path; `axle` stands for `front` and `rear`.
    pub path: &'static str,
    /// Content of the table.
    pub holds: &'static str,
}

const fn table(path: &'static str, holds: &'static str) -> TableOf {
    TableOf { path, holds }
}

/// Every table of a sheet, in the order in which a shop fills it.
pub const TABLES: &[TableOf] = &[
    table("use", "where and how fast the vehicle works: altitude, air, speeds, road"),
    table("scales", "scale readings of the four wheels, laden as it will be"),
    table("vehicle", "wheelbase, centre of gravity, mass rating"),
    table("axle", "one end of the vehicle: kind of suspension, track, masses, travel, clearances"),
    table("axle.tyre", "tyre: marking, pressures, rate, radius"),
    table("axle.wheel", "wheel centre, camber and toe at ride height"),
    table("axle.spring", "spring: rate, lengths, wire, motion ratio"),
    table("axle.damper", "damper (shock absorber): rate, stroke, lengths, mounting"),
    table("axle.coil_over", "eyes of the coil-over, drawn"),
    table("axle.anti_roll_bar", "anti-roll bar: rate, motion ratio, or drawn levers"),
    table("axle.upper_arm", "upper wishbone, drawn: pivots and ball joint"),
    table("axle.lower_arm", "lower wishbone, drawn: pivots and ball joint"),
    table("axle.tie_rod", "tie rod or toe link, drawn: inner and outer end"),
    table("axle.leg", "strut leg, drawn: top mount and lower end"),
    table("axle.lower_links", "lower links of a live axle, drawn"),
    table("axle.upper_links", "upper links of a live axle, drawn"),
    table("axle.lateral_rod", "lateral rod of a live axle, drawn"),
    table("axle.watt", "Watt linkage of a live axle, drawn"),
    table("axle.leaf", "leaf spring of a live axle, drawn: eyes, shackle, seat, leaves"),
    table("axle.joint_limits", "lean that each joint of the linkage allows"),
    table("axle.wanted", "frequencies that are wanted at this end"),
    table("engine", "torque, speeds, bore and stroke, boost"),
    table("clutch", "capacity of the clutch, or its clamp load and facings"),
    table("converter", "torque converter"),
    table("gearbox", "gear ratios, efficiency, torque rating"),
    table("transfer_case", "low range"),
    table("propeller_shaft", "rating of the propeller shaft"),
    table("final_drive", "axle ratio, differential, rating"),
    table("half_shaft", "rating of the half shafts"),
    table("driveline", "driven axle, rolling radius"),
    table("grip", "grip of the driven wheels, for what the shafts must bear"),
    table("speedometer", "tyre or axle ratio with which the speedometer was right"),
    table("coolant", "coolant: liquid, strength, temperatures, volume"),
    table("cap", "pressure cap: rating and its readings on a tester"),
    table("header", "header tank: air above the coolant"),
    table("leak_test", "pressure decay test of the cooling system"),
    table("wanted", "limits and margins that the builder wants"),
];

/// The tables of the document itself, with the axles written out.
pub(super) fn top() -> impl Iterator<Item = &'static str> {
    TABLES
        .iter()
        .filter(|table| !table.path.contains('.'))
        .flat_map(|table| match table.path {
            "axle" => ["front", "rear"].as_slice(),
            _ => std::slice::from_ref(&table.path),
        })
        .copied()
}
