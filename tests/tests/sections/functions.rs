//! Lines beside the functions behind them.

use axlewright_tests::assessed::{assessed, value};

/// Inputs of one kind may stand in a wrong order without a word: here each is put in by its name.
#[test]
fn lines_are_what_the_functions_give_of_the_lines_they_name() {
    let steps = [
        (
            "dunlin",
            "header.least_air_volume",
            "cooling.header_air_volume",
            &[
                ("expansion_volume", "coolant.expansion_volume"),
                ("fill_pressure", "header.fill_pressure"),
                ("cap_pressure", "cap.holds_at_least"),
                ("vapour_pressure", "header.vapour_pressure"),
                ("fill_temperature", "coolant.fill_temperature"),
                ("air_temperature", "header.air_temperature"),
                ("station_pressure", "use.station_pressure"),
            ][..],
        ),
        (
            "dunlin",
            "coolant.expansion_volume",
            "cooling.ethylene_glycol_expansion_volume",
            &[
                ("coolant_volume", "coolant.volume"),
                ("mass_fraction", "coolant.mass_fraction"),
                ("temperature", "coolant.fill_temperature"),
                ("later_temperature", "coolant.mean_temperature"),
            ],
        ),
        (
            "dray",
            "leak_test.tight_pressure",
            "cooling.pressure_decay_tight_pressure",
            &[
                ("gauge_pressure", "leak_test.gauge_pressure"),
                ("temperature", "leak_test.temperature"),
                ("later_temperature", "leak_test.later_temperature"),
                ("station_pressure", "use.station_pressure"),
            ],
        ),
        (
            "wagtail",
            "coolant.pump_inlet_margin",
            "cooling.propylene_glycol_pump_inlet_margin",
            &[
                ("temperature", "coolant.pump_inlet_temperature"),
                ("mass_fraction", "coolant.mass_fraction"),
                ("header_pressure", "cap.holds_at_least"),
                ("suction_loss", "coolant.suction_loss"),
                ("station_pressure", "use.station_pressure"),
            ],
        ),
        (
            "dray",
            "coolant.boiling_altitude",
            "cooling.water_boiling_altitude",
            &[("temperature", "coolant.hottest"), ("cap_pressure", "coolant.header_pressure")],
        ),
        (
            "wagtail",
            "speedometer.error",
            "tyre.speedometer_error",
            &[
                ("rolling_radius_before", "speedometer.effective_radius"),
                ("rolling_radius_after", "rear.tyre.effective_radius"),
            ],
        ),
        (
            "dray",
            "speedometer.error",
            "tyre.speedometer_error_at_shaft",
            &[
                ("rolling_radius_before", "speedometer.effective_radius"),
                ("rolling_radius_after", "rear.tyre.effective_radius"),
                ("final_drive_before", "speedometer.final_drive"),
                ("final_drive_after", "final_drive.ratio"),
            ],
        ),
        (
            "dray",
            "driveline.crawl_speed",
            "driveline.crawl_speed",
            &[
                ("engine_speed", "engine.idle_speed"),
                ("first_gear_ratio", "gearbox.ratios[0]"),
                ("transfer_case_ratio", "transfer_case.low_ratio"),
                ("final_drive", "final_drive.ratio"),
                ("rolling_radius", "rear.tyre.effective_radius"),
            ],
        ),
        (
            "dunlin",
            "final_drive.for_cruise",
            "driveline.final_drive_for_cruise",
            &[
                ("road_speed", "use.cruise_speed"),
                ("engine_speed", "wanted.cruise_engine_speed"),
                ("gear_ratio", "gearbox.top_ratio"),
                ("rolling_radius", "rear.tyre.effective_radius"),
            ],
        ),
        (
            "dray",
            "gearbox.first_for_crawl",
            "driveline.first_gear_for_crawl",
            &[
                ("crawl_ratio", "wanted.crawl_ratio"),
                ("transfer_case_ratio", "transfer_case.low_ratio"),
                ("final_drive", "final_drive.ratio"),
            ],
        ),
        (
            "dunlin",
            "engine.mean_pressure",
            "engine.mean_effective_pressure_four_stroke",
            &[("torque", "engine.peak_torque"), ("displacement", "engine.displacement")],
        ),
        (
            "dunlin",
            "engine.displacement",
            "engine.displacement",
            &[("bore", "engine.bore"), ("stroke", "engine.stroke"), ("cylinders", "engine.cylinders")],
        ),
        (
            "dunlin",
            "engine.compressor_outlet_temperature",
            "engine.compressor_outlet_temperature",
            &[
                ("inlet_temperature", "engine.inlet_temperature"),
                ("pressure_ratio", "engine.pressure_ratio"),
                ("isentropic_efficiency", "engine.compressor_efficiency"),
            ],
        ),
        (
            "wagtail",
            "front.spring.surge_frequency",
            "spring.surge_frequency",
            &[
                ("wire_diameter", "front.spring.wire_diameter"),
                ("mean_diameter", "front.spring.mean_diameter"),
                ("active_coils", "front.spring.active_coils"),
                ("shear_modulus", "front.spring.shear_modulus"),
                ("density", "front.spring.density"),
            ],
        ),
        (
            "wagtail",
            "rear.damper.rate_low",
            "spring.damper_rate_for_ratio",
            &[
                ("damping_ratio", "wanted.damping_low"),
                ("tangent_rate", "rear.wheel_rate"),
                ("sprung_mass", "rear.sprung_mass"),
                ("damper_motion_ratio", "rear.spring.motion_ratio"),
            ],
        ),
        (
            "wagtail",
            "rear.damped_frequency",
            "spring.damped_frequency",
            &[("undamped_frequency", "rear.natural_frequency"), ("damping_ratio", "rear.damping_ratio")],
        ),
        (
            "dunlin",
            "rear.tyre.loaded_radius",
            "tyre.loaded_radius",
            &[
                ("free_diameter", "rear.tyre.free_diameter"),
                ("tyre_load", "rear.tyre.load"),
                ("tyre_rate", "rear.tyre.rate"),
            ],
        ),
    ];
    for (name, line, function, inputs) in steps {
        let assessment = assessed(name, &[]);
        let entry = axlewright::catalogue::entry(function).unwrap();
        let input = |parameter: &&str| {
            let (_, line) =
                inputs.iter().find(|(named, _)| named == parameter).unwrap_or_else(|| panic!("{parameter}"));
            value(&assessment, line)
        };
        let arguments: Vec<f64> = entry.inputs.iter().map(|taken| input(&taken.name)).collect();
        let mut result = [f64::NAN];
        (entry.call)(&arguments, &mut result).unwrap_or_else(|error| panic!("{name} {line}: {error}"));
        assert_eq!(value(&assessment, line).to_bits(), result[0].to_bits(), "{name} {line}");
    }
}
