use super::*;
use crate::base::text;
use proptest::prelude::*;

fn one_in_si(kind: &str, name: &str) -> f64 {
    Kind::named(kind).unwrap().unit(name).unwrap().to_si(1.0)
}

/// Kind, unit, one unit in SI to all digits that exist or seventeen of them. The definitions (inch, pound, standard
/// gravity, International Table Btu, gallons) are those of NIST SP 811 (2008) Appendix B and NIST Handbook 44
/// Appendix C, written from memory; the other numbers follow from them by exact rational arithmetic
/// (an independent script), rounded once.
#[allow(clippy::excessive_precision)] // the digits are those of the exact decimals
const DEFINITIONS: &[(&str, &str, f64)] = &[
    ("Length", "inch", 0.0254),                             // exact, SP 811 B.8
    ("Length", "ft", 0.3048),                               // exact, SP 811 B.8
    ("Length", "mile", 1609.344),                           // 5280 ft, exact, SP 811 B.8
    ("Area", "in2", 0.000_645_16),                          // in²
    ("Area", "ft2", 0.092_903_04),                          // ft²
    ("Volume", "in3", 0.000_016_387_064),                   // in³
    ("Volume", "gal_us", 0.003_785_411_784),                // 231 in³, Handbook 44 App. C
    ("Volume", "qt_us", 0.000_946_352_946),                 // a quarter of it
    ("Volume", "gal_imp", 0.004_546_09),                    // 4.546 09 L, exact, SP 811 B.8
    ("Mass", "lb", 0.453_592_37),                           // exact, SP 811 B.8
    ("Mass", "oz", 0.028_349_523_125),                      // lb / 16
    ("Mass", "ton_short", 907.184_74),                      // 2000 lb, Handbook 44 App. C
    ("Mass", "ton_long", 1_016.046_908_8),                  // 2240 lb, Handbook 44 App. C
    ("Velocity", "km_h", 1.0 / 3.6),                        // exact
    ("Velocity", "mph", 0.447_04),                          // mile / h, exact, SP 811 B.8
    ("Velocity", "ft_s", 0.3048),                           // exact
    ("Velocity", "ft_min", 0.00508),                        // exact
    ("Acceleration", "gn", 9.806_65),                       // exact, SP 811 B.8 (3rd CGPM, 1901)
    ("Acceleration", "ft_s2", 0.3048),                      // exact
    ("Force", "lbf", 4.448_221_615_260_5),                  // lb g0, exact
    ("Force", "kgf", 9.806_65),                             // kg g0, exact
    ("Torque", "ft_lbf", 1.355_817_948_331_400_4),          // ft lbf
    ("Torque", "in_lbf", 0.112_984_829_027_616_7),          // in lbf
    ("Torque", "kgf_m", 9.806_65),                          // kgf m
    ("Energy", "Btu", 1_055.055_852_62),                    // Btu_IT, exact, SP 811 B.8
    ("Energy", "kWh", 3.6e6),                               // exact
    ("Power", "hp_mechanical", 745.699_871_582_270_22),     // 550 ft lbf/s, SP 811 B.8
    ("Power", "hp_metric", 735.498_75),                     // 75 kgf m/s, exact, SP 811 B.8
    ("Power", "Btu_min", 17.584_264_210_333_333),           // Btu_IT / 60 s
    ("LinearStiffness", "lbf_in", 175.126_835_246_476_4),   // lbf / in
    ("LinearStiffness", "lbf_ft", 14.593_902_937_206_364),  // lbf / ft
    ("LinearStiffness", "kgf_mm", 9_806.65),                // exact
    ("Damping", "lbf_s_in", 175.126_835_246_476_4),         // lbf s / in
    ("MomentOfInertia", "lb_ft2", 0.042_140_110_093_804_8), // lb ft², exact
    ("SecondMoment", "in4", 4.162_314_256e-7),              // in⁴, exact
    ("SectionModulus", "in3_modulus", 0.000_016_387_064),   // in³, exact
    ("WarpingConstant", "in6", 2.685_358_665_400_96e-10),   // in⁶, exact
    ("RoadRoughness", "in3_cycle", 0.000_016_387_064),      // in³, exact
    ("TurnsPerDistance", "rev_mile", 1.0 / 1609.344),       // one turn a mile
    ("Density", "lb_ft3", 16.018_463_373_960_14),           // lb / ft³
    ("Density", "lb_in3", 27_679.904_710_203_122),          // lb / in³
    ("Stress", "psi", 6_894.757_293_168_361_3),             // lbf / in²
    ("Stress", "ksi", 6_894_757.293_168_361),               // 1000 psi
    ("Stress", "Mpsi", 6_894_757_293.168_361),              // 1e6 psi
    ("AbsolutePressure", "psi_absolute", 6_894.757_293_168_361_3),
    ("GaugePressure", "psi_gauge", 6_894.757_293_168_361_3),
    // Btu_IT / (lb °F), exact, and poise, exact: SP 811 B.8; Btu_IT / (h ft °F).
    ("SpecificHeat", "Btu_lbF", 4_186.8),
    ("DynamicViscosity", "cP", 0.001),
    ("DynamicViscosity", "lb_ft_s", 1.488_163_943_569_553_7),
    ("ThermalConductivity", "Btu_hftF", 1.730_734_666_371_391_2),
    ("ThermalConductivity", "Btu_in_hft2F", 0.144_227_888_864_282_6),
    ("ThermalExpansion", "per_degF", 1.8), // exact, SP 811 B.8
    ("ThermalExpansion", "ppm_degF", 1.8e-6),
    ("AbsolutePressure", "atm_absolute", 101_325.0), // standard atmosphere, exact, SP 811 B.8
    ("AbsolutePressure", "inHg_absolute", 3_386.389), // inch of mercury, conventional, SP 811 B.8
    ("GaugePressure", "inHg_gauge", 3_386.389),      // as absolute
    ("TemperatureDifference", "delta_degF", 5.0 / 9.0), // exact, SP 811 B.8
    ("Angle", "deg", 0.017_453_292_519_943_295),     // pi / 180
    ("AngularVelocity", "rpm", 0.104_719_755_119_659_77), // 2 pi / 60
    ("MomentOfInertia", "lb_ft2", 0.042_140_110_093_804_8), // lb ft², exact
    ("RollGradient", "deg_gn", 0.001_779_740_535_243_258), // pi / 180 / g0
    ("RotationalStiffness", "Nm_deg", 57.295_779_513_082_32), // 180 / pi
];

#[test]
fn factors_follow_from_their_definitions() {
    for (kind, name, definition) in DEFINITIONS {
        let found = one_in_si(kind, name);
        let ulp = definition.next_up() - definition;
        assert!((found - definition).abs() <= ulp, "{name}: {found:e} is not {definition:e}");
    }
}

#[test]
fn units_of_one_kind_agree_with_each_other() {
    let pairs = [
        ("Length", "ft", "inch", 12.0),                        // Handbook 44 App. C
        ("Length", "mile", "ft", 5280.0),                      // Handbook 44 App. C
        ("Volume", "gal_us", "in3", 231.0),                    // Handbook 44 App. C
        ("Volume", "gal_us", "qt_us", 4.0),                    // Handbook 44 App. C
        ("Mass", "lb", "oz", 16.0),                            // Handbook 44 App. C
        ("Torque", "ft_lbf", "in_lbf", 12.0),                  // from ft and in
        ("LinearStiffness", "lbf_in", "lbf_ft", 12.0),         // from ft and in
        ("Density", "lb_in3", "lb_ft3", 1728.0),               // from ft and in
        ("Velocity", "ft_s", "in_s", 12.0),                    // from ft and in
        ("TurnsPerDistance", "rev_km", "rev_mile", 1.609_344), // from mile and km
        ("RotationalStiffness", "ft_lbf_deg", "Nm_deg", 1.355_817_948_331_400_4), // from ft lbf
        // From kilo, milli, and the foot of twelve inches.
        ("SpecificHeat", "kJ_kgK", "J_kgK", 1000.0),
        ("DynamicViscosity", "Pa_s", "mPa_s", 1000.0),
        ("ThermalConductivity", "Btu_hftF", "Btu_in_hft2F", 12.0),
        ("ThermalExpansion", "per_K", "ppm_K", 1e6),
    ];
    for (kind, one, other, ratio) in pairs {
        let found = one_in_si(kind, one) / one_in_si(kind, other);
        assert!((found / ratio - 1.0).abs() <= 2.0 * f64::EPSILON, "{one} / {other} = {found}");
    }
}

/// The conventional inch of mercury is 25.4 times the conventional millimetre, 133.3224 Pa (SP 811 B.8; its digits
/// 133.322 387 415 from memory), rounded to seven digits.
#[test]
fn inch_of_mercury_is_the_conventional_one() {
    assert!((one_in_si("AbsolutePressure", "inHg_absolute") - 25.4 * 133.322_387_415).abs() < 0.0005);
}

/// Fixed points of the scales: NIST SP 811 B.8, t/°C = T/K - 273.15, t/°F = T/°R - 459.67, T/K = (T/°R)/1.8.
#[test]
fn temperatures_meet_their_fixed_points() {
    let si = |name: &str, value: f64| Kind::named("Temperature").unwrap().unit(name).unwrap().to_si(value);
    for (celsius, fahrenheit) in [(0.0, 32.0), (100.0, 212.0), (-40.0, -40.0), (37.0, 98.6), (20.0, 68.0)] {
        assert!((si("degC", celsius) - si("degF", fahrenheit)).abs() < 2e-13, "{celsius} °C");
    }
    assert_eq!(si("degC", 0.0), 273.15);
    assert_eq!(si("degF", -459.67), 0.0);
    assert_eq!(si("degR", 1.8), 1.0);
    assert_eq!(one_in_si("TemperatureDifference", "delta_degC"), 1.0);
}

#[test]
fn first_units_are_coherent_and_names_belong_to_one_kind() {
    let mut names = std::collections::BTreeSet::new();
    for kind in KINDS {
        let first = &kind.units[0];
        assert_eq!((first.numerator, first.denominator, first.offset), (1.0, 1.0, 0.0), "{}", kind.name);
        for unit in kind.units {
            assert!(names.insert(unit.name), "{} twice", unit.name);
            assert!((unit.from_si(unit.to_si(3.5)) / 3.5 - 1.0).abs() < 1e-13, "{}", unit.name);
        }
        assert!(kind.unit(kind.metric).is_some() && kind.unit(kind.us).is_some(), "{}", kind.name);
    }
}

/// A quantity is the `f64` inside, also in an array.
#[test]
fn a_quantity_is_as_large_as_its_number() {
    assert_eq!((size_of::<Force>(), align_of::<Force>()), (size_of::<f64>(), align_of::<f64>()));
}

#[test]
fn constants_are_quantities() {
    const RATE: LinearStiffness = LinearStiffness::of::<lbf_in>(225.0);
    const TRAVEL: Length = Length::from_si(0.0508);
    const IN_SHOP: f64 = TRAVEL.in_::<mm>();
    assert_eq!((RATE.si().to_bits(), IN_SHOP), ((225.0 * POUND_FORCE / INCH).to_bits(), 50.8));
    assert_eq!(RATE, text::parse("225 lbf/in").unwrap());
}

#[test]
fn printed_in_the_unit_of_the_shop() {
    let rate = LinearStiffness::of::<lbf_in>(225.0);
    assert_eq!(
        format!("{rate}|{rate:.1}|{rate:#}|{rate:#.2}"),
        "39.4 N/mm|39.4 N/mm|225 lbf/in|225.00 lbf/in"
    );
    assert_eq!(format!("{rate:>12}|{rate:<12}|{rate:^12.0}|"), "   39.4 N/mm|39.4 N/mm   |  39 N/mm   |");
    assert_eq!(format!("{:?}", Length::of::<mm>(35.5)), "Length(0.0355 m)");
    let nothing = Length::of::<mm>(-0.01);
    assert_eq!((format!("{nothing}"), format!("{nothing:.1}")), ("-0.01 mm".to_owned(), "0.0 mm".to_owned()));
    let ratio = Ratio::of::<one>(4.1);
    assert_eq!(format!("{ratio}|{ratio:.2}|{ratio:?}"), "4.1|4.10|Ratio(4.1 1)");
    assert_eq!(
        format!("{:.1}|{:#}", Temperature::of::<degC>(20.0), Temperature::of::<degC>(20.0)),
        "20.0 °C|68 °F"
    );
}

/// `parse` is the reader of `base::text`, with all its refusals.
#[test]
fn parsed_by_our_reader() {
    assert_eq!("225 lb/in".parse(), Ok(LinearStiffness::of::<lbf_in>(225.0)));
    assert_eq!("3 1/2 in".parse(), Ok(Length::of::<inch>(3.5)));
    assert_eq!("1 psi".parse::<Stress>().unwrap().si().to_bits(), Stress::of::<psi>(1.0).si().to_bits());
    for (told, refusal) in [
        ("long", "1 ton".parse::<Mass>().unwrap_err()),
        ("gauge", "15 psi".parse::<GaugePressure>().unwrap_err()),
        ("absolute", "15 psi".parse::<AbsolutePressure>().unwrap_err()),
        ("metric", "150 hp".parse::<Power>().unwrap_err()),
        ("lbf", "900 lb".parse::<Force>().unwrap_err()),
        ("tolerance", "900 lbf +/- 3 %".parse::<Force>().unwrap_err()),
    ] {
        assert!(refusal.to_string().contains(told), "{refusal}");
    }
}

/// Every line of the table, by independent arithmetic on one number a side.
#[test]
fn products_and_their_inverses() {
    let (rate, travel) = (LinearStiffness::from_si(30e3), Length::from_si(0.05));
    let load: Force = rate * travel;
    assert_eq!((load.si(), travel * rate, load / travel, load / rate), (1500.0, load, rate, travel));
    assert_eq!((travel * travel).si(), 0.05 * 0.05);
    assert_eq!(Area::from_si(9.0).sqrt(), Length::from_si(3.0));
    assert_eq!(Area::from_si(2.0) * Length::from_si(3.0), Volume::from_si(6.0));
    assert_eq!(Mass::from_si(2.0) * Acceleration::from_si(3.0), Force::from_si(6.0));
    assert_eq!(Stress::from_si(2.0) * Area::from_si(3.0), Force::from_si(6.0));
    assert_eq!(Force::from_si(6.0) / Area::from_si(3.0), Stress::from_si(2.0));
    assert_eq!(Torque::from_si(2.0) * AngularVelocity::from_si(3.0), Power::from_si(6.0));
    assert_eq!(RotationalStiffness::from_si(2.0) * Angle::from_si(3.0), Torque::from_si(6.0));
    assert_eq!(Frequency::from_si(2.0) * Time::from_si(3.0), Ratio::from_si(6.0));
    assert_eq!(rate / rate, Ratio::from_si(1.0));
    assert_eq!(2.0 * rate * Ratio::from_si(0.5), rate);
}

/// One line, with a different number on each side, so that a wrong crossing is seen.
#[test]
fn crossings_are_named() {
    let (force, lever) = (Force::from_si(200.0), Length::from_si(0.25));
    assert_eq!((torque(force, lever), energy(force, lever)), (Torque::from_si(50.0), Energy::from_si(50.0)));
    let (pressure, area) = (GaugePressure::of::<psi_gauge>(15.0), Area::of::<in2>(4.0));
    // 15 lbf/in² on 4 in² is 60 lbf, by the definition of the pound per square inch.
    assert!((gauge_force(pressure, area).in_::<lbf>() - 60.0).abs() < 1e-12);
    assert!((gauge_from_force(Force::of::<lbf>(60.0), area).in_::<psi_gauge>() - 15.0).abs() < 1e-12);
    let (a, b) = (AbsolutePressure::from_si(3e5), AbsolutePressure::from_si(1e5));
    assert_eq!((gauge(a, b).si(), absolute(gauge(a, b), b)), (2e5, a));
    assert_eq!((pressure_difference(a, b).si(), pressure_ratio(a, b).si()), (2e5, 3.0));
    let (warm, cold) = (Temperature::of::<degC>(90.0), Temperature::of::<degC>(20.0));
    assert_eq!(cold + temperature_difference(warm, cold), warm);
    assert_eq!(frequency(angular_velocity(Frequency::from_si(3.0))), Frequency::from_si(3.0));
}

proptest! {
    /// Text and `uom` give every number back to the last bit, other than NaN.
    #[test]
    fn there_and_back(bits in any::<u64>()) {
        let number = f64::from_bits(bits);
        prop_assume!(!number.is_nan());
        let stress = Stress::from_si(number);
        prop_assert_eq!(Stress::from_raw(stress.raw()).si().to_bits(), bits);
        if number.is_normal() {
            let written = text::print_in(number, Stress::KIND, &Stress::KIND.units[0]);
            prop_assert_eq!(written.parse::<Stress>().unwrap().si().to_bits(), bits);
        }
    }
}

#[cfg(feature = "serde")]
mod documents {
    use super::*;

    #[derive(Debug, PartialEq, ::serde::Serialize, ::serde::Deserialize)]
    struct Corner {
        rate: LinearStiffness,
        motion_ratio: Ratio,
        ambient: AbsolutePressure,
    }

    #[test]
    fn a_document_gives_the_same_bits_back() {
        for scale in [1.0, 1.0 / 3.0, 1e-7] {
            let corner = Corner {
                rate: LinearStiffness::of::<lbf_in>(225.0 * scale),
                motion_ratio: Ratio::from_si(0.62 * scale),
                ambient: AbsolutePressure::of::<inHg_absolute>(29.92 * scale),
            };
            assert_eq!(
                serde_json::from_str::<Corner>(&serde_json::to_string(&corner).unwrap()).unwrap(),
                corner
            );
        }
        let written = serde_json::to_string(&LinearStiffness::from_si(30e3)).unwrap();
        assert_eq!(written, "\"30000 N/m\"");
    }

    #[test]
    fn a_document_is_read_as_text_is() {
        let read = |rate: &str, ambient: &str| {
            let text = format!("rate = {rate}\nmotion_ratio = 0.62\nambient = {ambient}\n");
            toml::from_str::<Corner>(&text).map_err(|error| error.to_string())
        };
        let corner = read("\"225 lb/in\"", "\"29.92 inHg absolute\"").unwrap();
        assert_eq!(corner.rate, LinearStiffness::of::<lbf_in>(225.0));
        for (rate, ambient, told) in [
            ("225", "\"1 atm\"", "linear stiffness as text with its unit"),
            ("\"225 mm\"", "\"1 atm\"", "mm"),
            ("\"225 lb/in\"", "\"14.7 psi\"", "absolute"),
        ] {
            let refusal = read(rate, ambient).unwrap_err();
            assert!(refusal.contains(told), "{refusal}");
        }
    }

    #[test]
    fn what_is_not_finite_is_not_written() {
        for number in [f64::NAN, f64::INFINITY] {
            assert!(
                serde_json::to_string(&Length::from_si(number)).unwrap_err().to_string().contains("length")
            );
        }
    }
}
