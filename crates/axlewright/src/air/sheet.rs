use crate::base::section::{Section, derived, line, step};
use crate::units::{AbsolutePressure, Density, Length, Quantity, Temperature};

/// Lines of the sheet on the air.
pub const SHEET: Section = Section {
    lines: &[
        line("use.altitude", Length::KIND, "height above sea level where the vehicle works, as on a map").in_units("m", "ft").how("read it off a map, or off a phone's barometer after setting it")
            .within(
                -500.0,
                8000.0,
                "plausibility limit: roads lie between 500 m below and 8000 m above sea level",
            ),
        line(
            "use.geopotential_altitude",
            Length::KIND,
            "geopotential altitude, the scale on which the standard atmosphere is tabulated",
        ).in_units("m", "ft")
        .within(
            -500.0,
            8000.0,
            "plausibility limit: roads lie between 500 m below and 8000 m above sea level",
        )
        .by(&[step("air.geopotential_altitude", &["use.altitude"])]),
        line(
            "use.altimeter_setting",
            AbsolutePressure::KIND,
            "pressure that a weather report gives, reduced to sea level",
        )
        .within(85e3, 110e3, "plausibility limit: pressures at sea level that were ever reported")
        .measured_on(&[]),
        line(
            "use.station_pressure",
            AbsolutePressure::KIND,
            "pressure of the air as measured there, not reduced to sea level",
        )
        .within(20e3, 110e3, "plausibility limit: pressures where roads lie")
        // A reading belongs to its place and day.
        .measured_on(&["use.altitude", "use.geopotential_altitude", "use.altimeter_setting"])
        .by(&[
            step(
                "air.station_pressure_from_altimeter_setting",
                &["use.altimeter_setting", "use.geopotential_altitude"],
            ),
            // Weather changes it by less. A larger difference means a pressure reduced to sea level.
            step("air.standard_pressure", &["use.geopotential_altitude"]).about(6e3),
        ]),
        derived(
            "use.pressure_altitude",
            Length::KIND,
            "height at which the standard atmosphere has that pressure",
        ).in_units("m", "ft")
        .by(&[step("air.pressure_altitude", &["use.station_pressure"])]),
        line("use.air_temperature", Temperature::KIND, "temperature of the air in which the vehicle works").within(
            200.0,
            330.0,
            "plausibility limit: temperatures that people live in",
        ),
        line(
            "use.vapour_pressure",
            AbsolutePressure::KIND,
            "partial pressure of the water vapour in that air",
        )
        .within(0.0, 20e3, "plausibility limit: air that people breathe holds less vapour"),
        derived("use.air_density", Density::KIND, "density of that air").by(&[step(
            "air.moist_density",
            &["use.station_pressure", "use.air_temperature", "use.vapour_pressure"],
        )]),
        derived(
            "use.density_altitude",
            Length::KIND,
            "height at which the standard atmosphere has that density: the engine breathes as if it were there",
        ).in_units("m", "ft")
        .by(&[step("air.density_altitude", &["use.air_density"])]),
        line("use.coldest_air", Temperature::KIND, "lowest temperature of the air in which the vehicle stands").within(
            200.0,
            330.0,
            "plausibility limit: temperatures that people live in",
        ),
    ],
    findings: &[],
    ..Section::EMPTY
};
