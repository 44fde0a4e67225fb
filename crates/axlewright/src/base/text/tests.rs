use super::print::QUOTED;
use super::unit::*;
use super::*;
use crate::Error;
use crate::units;
use crate::units::{KINDS, Kind};
use proptest::prelude::*;

fn kind(name: &str) -> &'static Kind {
    Kind::named(name).unwrap()
}

/// Reads, and says value in the written unit, unit and kind.
fn seen(text: &str) -> (f64, &'static str, &'static str) {
    let reading = read(text).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!(reading.tolerance, None, "{text}");
    (reading.si, reading.unit.name, reading.kind.name)
}

/// The sentence of a refusal; the text must be refused.
fn refused(text: &str, wanted: Option<&str>) -> String {
    let outcome = match wanted {
        None => read(text),
        Some(name) => read_as(text, kind(name)),
    };
    match outcome {
        Err(error @ Error::Text { .. }) => error.to_string(),
        other => panic!("{text:?} gave {other:?}"),
    }
}

/// Every text, the number that the unit's factor then takes, the unit's name, the kind.
const READ: &[(&str, f64, &str, &str)] = &[
    ("225 lbf/in", 225.0, "lbf_in", "LinearStiffness"),
    ("225lbf/in", 225.0, "lbf_in", "LinearStiffness"),
    ("225 lb/in", 225.0, "lbf_in", "LinearStiffness"),
    ("225 lb per in", 225.0, "lbf_in", "LinearStiffness"),
    ("225 LBS/IN.", 225.0, "lbf_in", "LinearStiffness"),
    ("225 lbf_in", 225.0, "lbf_in", "LinearStiffness"),
    ("225 lb/\"", 225.0, "lbf_in", "LinearStiffness"),
    ("5 kgf/mm", 5.0, "kgf_mm", "LinearStiffness"),
    ("-12 mm", -12.0, "mm", "Length"),
    ("\u{2212}12\u{a0}mm", -12.0, "mm", "Length"),
    ("+3.5e-3 m", 3.5e-3, "m", "Length"),
    ("3 MM", 3.0, "mm", "Length"),
    (".5 in.", 0.5, "inch", "Length"),
    ("3 1/2 in", 3.5, "inch", "Length"),
    ("3-1/2 in", 3.5, "inch", "Length"),
    ("3½ in", 3.5, "inch", "Length"),
    ("3 ½ in", 3.5, "inch", "Length"),
    ("½\"", 0.5, "inch", "Length"),
    ("-3 1/2 in", -3.5, "inch", "Length"),
    ("1/2\"", 0.5, "inch", "Length"),
    ("1/2″", 0.5, "inch", "Length"),
    ("1/3 in", 1.0 / 3.0, "inch", "Length"),
    ("2'6\"", 30.0, "inch", "Length"),
    ("2′6″", 30.0, "inch", "Length"),
    ("2’ 6”", 30.0, "inch", "Length"),
    ("2'6''", 30.0, "inch", "Length"),
    ("2'-6\"", 30.0, "inch", "Length"),
    ("2' 6 1/2\"", 30.5, "inch", "Length"),
    ("2 ft 6 in", 30.0, "inch", "Length"),
    ("2 ft. 6 in.", 30.0, "inch", "Length"),
    ("2 FT 6 IN", 30.0, "inch", "Length"),
    ("-2 ft 6 in", -30.0, "inch", "Length"),
    ("-0' 6\"", -6.0, "inch", "Length"),
    ("2'", 2.0, "ft", "Length"),
    ("1/4 mile", 0.25, "mile", "Length"),
    ("3 in²", 3.0, "in2", "Area"),
    ("3 in^2", 3.0, "in2", "Area"),
    ("3 in2", 3.0, "in2", "Area"),
    ("3 sq. in.", 3.0, "in2", "Area"),
    ("350 cu in", 350.0, "in3", "Volume"),
    ("12 US gal", 12.0, "gal_us", "Volume"),
    ("9.81 m/s^2", 9.81, "m_s2", "Acceleration"),
    ("9.81 m/s²", 9.81, "m_s2", "Acceleration"),
    ("1.2 g0", 1.2, "gn", "Acceleration"),
    ("20 g", 20.0, "g", "Mass"),
    ("1,250 lbf", 1250.0, "lbf", "Force"),
    ("1,250,000 N", 1.25e6, "N", "Force"),
    ("1\u{202f}250\u{2009}000 N", 1.25e6, "N", "Force"),
    ("1,250.5 N", 1250.5, "N", "Force"),
    ("12.5 psi gauge", 12.5, "psi_gauge", "GaugePressure"),
    ("15 psig", 15.0, "psi_gauge", "GaugePressure"),
    ("15 PSI Gauge", 15.0, "psi_gauge", "GaugePressure"),
    ("101.325 kPa (a)", 101.325, "kPa_absolute", "AbsolutePressure"),
    ("14.7 psia", 14.7, "psi_absolute", "AbsolutePressure"),
    ("78.5 GPa", 78.5, "GPa", "Stress"),
    ("250 MPa", 250.0, "MPa", "Stress"),
    ("250 MPA", 250.0, "MPa", "Stress"),
    ("11.5e6 psi difference", 11.5e6, "psi", "Stress"),
    ("70 °F", 70.0, "degF", "Temperature"),
    ("70 degF", 70.0, "degF", "Temperature"),
    ("70℉", 70.0, "degF", "Temperature"),
    ("21 °C", 21.0, "degC", "Temperature"),
    ("10 K", 10.0, "K", "Temperature"),
    ("18 delta_degF", 18.0, "delta_degF", "TemperatureDifference"),
    ("18 Δ°F", 18.0, "delta_degF", "TemperatureDifference"),
    ("1.3 Hz", 1.3, "Hz", "Frequency"),
    ("3000 rpm", 3000.0, "rpm", "AngularVelocity"),
    ("3000 1/min", 3000.0, "rpm", "AngularVelocity"),
    ("500 1/km", 500.0, "rev_km", "TurnsPerDistance"),
    ("65 mph", 65.0, "mph", "Velocity"),
    ("100 km/h", 100.0, "km_h", "Velocity"),
    ("100 KM/H", 100.0, "km_h", "Velocity"),
    ("80 ft-lb", 80.0, "ft_lbf", "Torque"),
    ("80 ft lb", 80.0, "ft_lbf", "Torque"),
    ("80 ft.-lb.", 80.0, "ft_lbf", "Torque"),
    ("80 lb-ft", 80.0, "ft_lbf", "Torque"),
    ("5 N m", 5.0, "Nm", "Torque"),
    ("5 Nm", 5.0, "Nm", "Torque"),
    ("5 N·m", 5.0, "Nm", "Torque"),
    ("5 N⋅m", 5.0, "Nm", "Torque"),
    ("5 N*m", 5.0, "Nm", "Torque"),
    ("5 N.m", 5.0, "Nm", "Torque"),
    ("5 N-m", 5.0, "Nm", "Torque"),
    ("120 mechanical hp", 120.0, "hp_mechanical", "Power"),
    ("120 PS", 120.0, "hp_metric", "Power"),
    ("50 %", 50.0, "percent", "Ratio"),
    ("50%", 50.0, "percent", "Ratio"),
    ("0.75", 0.75, "one", "Ratio"),
    ("1", 1.0, "one", "Ratio"),
    ("-1", -1.0, "one", "Ratio"),
    ("1/2", 0.5, "one", "Ratio"),
    ("4.10:1", 4.10, "one", "Ratio"),
    ("3.73 to 1", 3.73, "one", "Ratio"),
    ("41:10", 4.1, "one", "Ratio"),
    ("  \t612 kg \r\n", 612.0, "kg", "Mass"),
];

#[test]
fn reads_what_people_write() {
    for (text, number, unit, name) in READ {
        let si = kind(name).unit(unit).unwrap().to_si(*number);
        assert_eq!(seen(text), (si, *unit, *name), "{text}");
        assert_eq!(read_as(text, kind(name)).unwrap().si.to_bits(), si.to_bits(), "{text}");
    }
}

#[test]
fn the_wanted_kind_decides_what_the_unit_leaves_open() {
    let stress = read_as("11.5e6 psi", kind("Stress")).unwrap();
    assert_eq!((stress.unit.name, stress.si), ("psi", kind("Stress").unit("psi").unwrap().to_si(11.5e6)));
    let margin = read_as("10 K", kind("TemperatureDifference")).unwrap();
    assert_eq!((margin.unit.name, margin.si), ("delta_K", 10.0));
    let length: units::Length = parse("3 1/2 in").unwrap();
    assert_eq!(length.si(), 0.0889);
}

/// Text, expected kind if any, parts of the sentence.
const REFUSALS: &[(&str, Option<&str>, &[&str])] = &[
    ("50/50", Some("Ratio"), &["parts of a mix", "`50 %`"]),
    ("33/67", None, &["parts of a mix"]),
    ("50:50", Some("Ratio"), &["parts of a mix"]),
    ("60 : 40", Some("Ratio"), &["parts of a mix"]),
    ("2,5 mm", None, &["2,5 mm", "comma", "`2.5`", "`25`"]),
    ("1,25 lbf", None, &["1,25", "`1.25`"]),
    ("12,3456", None, &["12,3456", "`12.3456`"]),
    ("0,250 in", None, &["`0.250`"]),
    ("1.250,5 mm", None, &["two numbers", "decimal with a point"]),
    ("5", Some("Length"), &["bare number is a ratio", "length is wanted", "mm"]),
    ("3.5:1", Some("Length"), &["ratio", "length is wanted"]),
    ("15 psi", None, &["`psi gauge`", "`psi absolute`", "`psi difference`"]),
    ("1 bar", None, &["`bar gauge`", "`bar absolute`"]),
    ("15 psi", Some("GaugePressure"), &["gauge pressure is wanted", "`psi gauge` or `psi absolute`"]),
    ("15 PSI", Some("AbsolutePressure"), &["`psi gauge` or `psi absolute`"]),
    ("100 kPa", Some("AbsolutePressure"), &["`kPa gauge` or `kPa absolute`"]),
    ("29.9 inHg", None, &["`inHg gauge` or `inHg absolute`"]),
    ("15 psig", Some("AbsolutePressure"), &["is a unit of gauge pressure", "absolute pressure is wanted"]),
    ("15 psig", Some("Stress"), &["is a unit of gauge pressure"]),
    ("120 hp", Some("Power"), &["`hp`", "`mechanical hp`", "`metric hp`"]),
    ("120 HP", None, &["`mechanical hp`", "`metric hp`"]),
    ("120 bhp", None, &["`mechanical hp`", "`metric hp`"]),
    ("12 gal", None, &["`US gal`", "`imp gal`"]),
    ("2 ton", None, &["`short ton`", "`long ton`", "`t`"]),
    ("50 kn", None, &["knot", "`kN`"]),
    ("5 1/s", None, &["`Hz`", "`rad/s`"]),
    ("10 °F", Some("TemperatureDifference"), &["`delta_degF`"]),
    ("10 °C", Some("TemperatureDifference"), &["`delta_degC`"]),
    ("10 delta_degF", Some("Temperature"), &["write `degF`"]),
    ("600 lb", Some("Force"), &["unit of mass", "force is wanted", "`lbf`"]),
    ("600 kg", Some("Force"), &["`kgf`"]),
    ("1.2 g", Some("Acceleration"), &["unit of mass", "`g0`"]),
    ("5 Nm", Some("Energy"), &["unit of torque", "energy is wanted", "kJ"]),
    ("5 J", Some("Torque"), &["unit of energy", "torque is wanted", "N·m"]),
    ("3000 rpm", Some("Frequency"), &["unit of angular velocity", "frequency is wanted", "Hz"]),
    ("50 Hz", Some("AngularVelocity"), &["unit of frequency", "angular velocity is wanted", "rpm"]),
    ("NaN", None, &["finite"]),
    ("nan mm", None, &["finite"]),
    ("inf", None, &["finite"]),
    ("-Infinity mm", None, &["finite"]),
    ("1e999", None, &["too large"]),
    ("1e308 km", None, &["too large"]),
    ("1e-999 m", None, &["too small"]),
    ("", None, &["no text"]),
    (" \u{a0}", None, &["no text"]),
    ("mm", None, &["`mm` is a unit without a number"]),
    ("1/min", None, &["`1/min` is a unit without a number"]),
    ("about 3 mm", None, &["number is missing"]),
    ("3 4 mm", None, &["two numbers"]),
    ("3 mm 4", None, &["two numbers"]),
    ("3 mm 4 mm", None, &["two numbers"]),
    ("3-4 mm", None, &["two numbers"]),
    ("3 -1/2 in", None, &["two numbers"]),
    ("5 1", None, &["two numbers"]),
    ("1.2.3 mm", None, &["two numbers"]),
    ("1 250 N", None, &["two numbers", "`1250`"]),
    ("225 350 lbf/in", None, &["two numbers"]),
    ("2' 6", None, &["two numbers"]),
    ("½2 in", None, &["two numbers"]),
    ("5² mm", None, &["not a unit"]),
    ("2.5' 6\"", None, &["whole number"]),
    ("5 to 10", None, &["range"]),
    ("5 to 10 mm", None, &["range"]),
    ("4.1:1 mm", None, &["without a unit"]),
    ("4.1:0", None, &["ratio"]),
    ("1/0 in", None, &["over zero"]),
    ("3 5/2 in", None, &["smaller than one"]),
    ("5 furlong", None, &["`furlong` is not a unit known here"]),
    ("5 milimeters", None, &["did you mean `millimeters`?"]),
    (
        "5 lbf/inn",
        Some("LinearStiffness"),
        &["did you mean `lbf/in", "linear stiffness is written in", "N/mm"],
    ),
    ("5 mPa", None, &["did you mean `MPa`?"]),
    ("5 mpa", Some("Stress"), &["did you mean `MPa`?"]),
    ("5 mPa abs", Some("AbsolutePressure"), &["did you mean `MPa abs`?"]),
    ("5 nm", None, &["not a unit"]),
    ("5 Mm", None, &["not a unit"]),
    ("5 mpsi", None, &["did you mean"]),
    ("10 k", None, &["not a unit"]),
    ("2 T", None, &["did you mean `t`?"]),
    ("1.2 G", None, &["not a unit"]),
    ("5 mm-", None, &["not a unit"]),
    ("5 m\u{7}m", None, &["control character"]),
];

#[test]
fn refuses_what_could_mean_two_things_and_says_how_to_write_it() {
    for (text, wanted, parts) in REFUSALS {
        let sentence = refused(text, *wanted);
        for part in *parts {
            assert!(sentence.contains(part), "{text:?}: {part:?} is missing in\n{sentence}");
        }
        if !text.trim().is_empty() && !text.contains(['"', '\u{7}']) {
            assert!(sentence.contains(text), "{text:?} is not named in\n{sentence}");
        }
    }
}

#[test]
fn quotes_no_more_than_sixty_characters() {
    for text in ["9".repeat(10_000), "\u{1b}[31m".repeat(20_000), format!("5 {}", "ж".repeat(115))] {
        let Err(Error::Text { text: quoted, message }) = read(&text) else { panic!("{text} was read") };
        assert!(quoted.chars().count() <= QUOTED && !quoted.contains(char::is_control), "{quoted:?}");
        assert!(message.chars().count() < 160, "{message}");
    }
}

#[test]
fn reads_tolerances() {
    let band = |si| Some(Tolerance { si, form: Form::Bound });
    let stiffness = read("225 lbf/in +/- 3 %").unwrap();
    assert_eq!(stiffness.tolerance, band(stiffness.si * 0.03));
    assert_eq!(read("-12 mm ± 10 %").unwrap().tolerance, band(0.012 * 0.1));
    for text in ["612 kg ± 2 kg", "612 kg +/- 2 kg", "612 +/- 2 kg", "612 ±2kg", "612 kg ± 2000 g"] {
        let mass = read(text).unwrap();
        assert_eq!((mass.si, mass.tolerance), (612.0, band(2.0)), "{text}");
    }
    let scatter = Some(Tolerance { si: 2.0, form: Form::StandardDeviation });
    assert_eq!(read("612 kg ± 2 kg sd").unwrap().tolerance, scatter);
    assert_eq!(read("2'6\" ± 1/8\"").unwrap().tolerance, band(0.125 * 0.0254));
    assert_eq!(read("0.75 ± 0.02").unwrap().tolerance, band(0.02));
    for text in ["70 °F ± 9 °F", "70 ± 9 °F", "70 °F ± 5 K", "70 °F ± 9 delta_degF"] {
        let warm = read(text).unwrap();
        assert_eq!((warm.si, warm.tolerance), (read("70 °F").unwrap().si, band(5.0)), "{text}");
    }
    assert_eq!(read("100 kPa absolute ± 2 kPa").unwrap().tolerance, band(2000.0));
    for (text, part) in [
        ("612 kg ± 2", "unit of its own"),
        ("612 kg ± 2 mm", "mass is wanted"),
        ("612 kg ± -2 kg", "no sign"),
        ("612 kg ±", "in the tolerance"),
        ("612 kg ± 2 kg std", "not a unit"),
        ("612 kg ± 2 kg ± 1 kg", "two numbers"),
        ("50 % ± 2", "two meanings"),
        ("50 % ± 2 %", "no clear meaning"),
        ("225 ± 3 %", "no clear meaning"),
        ("70 °F ± 3 %", "no clear meaning"),
    ] {
        assert!(refused(text, None).contains(part), "{}", refused(text, None));
    }
    assert!(refused("225 ± 3 %", Some("LinearStiffness")).contains("bare number"));
    assert!(parse::<units::Mass>("612 kg ± 2 kg").unwrap_err().to_string().contains("tolerance"));
}

#[test]
fn every_spelling_of_every_unit_reads() {
    for &kind in KINDS {
        for unit in kind.units {
            for written in unit.spellings.iter().chain([&unit.symbol, &unit.name]) {
                let (of, found) = super::unit(written, Some(kind)).unwrap_or_else(|error| panic!("{error}"));
                assert_eq!((of.name, found.name), (kind.name, unit.name), "{written}");
                if *written != "1" {
                    let reading = read_as(&format!("2 {written}"), kind).unwrap();
                    assert_eq!((reading.unit.name, reading.si), (unit.name, unit.to_si(2.0)), "{written}");
                }
            }
        }
    }
}

/// No spelling names two units except `K`: a temperature, or a difference if that is expected.
#[test]
fn spellings_are_unique() {
    let mut shared = Vec::new();
    for (at, a) in SPELLINGS.iter().enumerate() {
        for b in SPELLINGS.iter().skip(at + 1) {
            if a.key == b.key && a.unit.name != b.unit.name {
                shared.push((a.written, a.unit.name, b.unit.name));
            }
        }
    }
    shared.dedup();
    assert_eq!(shared, [("K", "K", "delta_K")]);
}

/// Every symbol says its kind by itself, but these four.
#[test]
fn symbols_say_their_kind() {
    let mut open = Vec::new();
    for &kind in KINDS {
        for unit in kind.units {
            match read(&format!("2 {}", unit.symbol)) {
                Ok(reading) => assert_eq!((reading.kind.name, reading.unit.name), (kind.name, unit.name)),
                Err(error) => {
                    assert!(error.to_string().contains("gauge`") && error.to_string().contains("absolute`"));
                    open.push(unit.symbol);
                }
            }
        }
    }
    assert_eq!(open, ["Pa", "kPa", "bar", "psi"]);
}

#[test]
fn refused_words_and_crossings_are_of_the_tables() {
    for (words, _) in REFUSED {
        for word in *words {
            assert!(spelled(word).is_empty() && key(word) == *word, "{word}");
        }
    }
    for (unit, wanted, write) in CROSSINGS {
        assert!(KINDS.iter().any(|kind| kind.name != *wanted && kind.unit(unit).is_some()), "{unit}");
        assert!(super::unit(write, Some(kind(wanted))).is_ok(), "{write}");
    }
}

#[test]
fn names_units() {
    assert_eq!(super::unit("", None).unwrap().1.name, "one");
    assert_eq!(super::unit(" ft-lb ", None).unwrap().1.name, "ft_lbf");
    assert!(super::unit("", Some(kind("Length"))).unwrap_err().to_string().contains("bare number"));
    assert!(super::unit("5 mm", None).is_err());
    assert!(super::unit("mm 5", None).is_err());
}

#[test]
fn prints_as_a_shop_does() {
    let us = |text: &str| {
        let reading = read(text).unwrap();
        print(reading.si, reading.kind, System::Us)
    };
    let metric = |text: &str| {
        let reading = read(text).unwrap();
        print(reading.si, reading.kind, System::Metric)
    };
    assert_eq!(us("225 lb/in"), "225 lbf/in");
    assert_eq!(metric("225 lb/in"), "39.4 N/mm");
    assert_eq!(metric("225.5 lb/in"), "39.49 N/mm");
    assert_eq!(us("1.3 Hz"), "1.3 Hz");
    assert_eq!(us("1/3"), "0.3333");
    assert_eq!(us("2'6\""), "30 in");
    assert_eq!(metric("1,250 N"), "1250 N");
    assert_eq!(metric("12,345.6 N"), "12350 N");
    assert_eq!(metric("1.25e9 N"), "1.25e9 N");
    assert_eq!(metric("0.00001 mm"), "1e-5 mm");
    assert_eq!(metric("70 °F"), "21.11 °C");
    assert_eq!(us("21 °C"), "69.8 °F");
    assert_eq!(us("80 N·m"), "59 ft·lbf");
    assert_eq!(metric("-0 mm"), "0 mm");
    assert_eq!(us("15 psig"), "15 psi gauge");
    assert_eq!(print(f64::NAN, kind("Length"), System::Us), "NaN in");
    for kind in KINDS {
        assert!(kind.unit(kind.metric).is_some() && kind.unit(kind.us).is_some(), "{}", kind.name);
        assert!(
            kind.units[0].symbol == kind.si
                || kind.si == "1"
                || kind.name.ends_with("Pressure")
                || kind.name == "SectionModulus"
                || kind.si == "K"
        );
    }
}

#[test]
fn prints_the_shortest_number_that_reads_back() {
    let in_unit = |si, of: &str, unit: &str| print_in(si, kind(of), kind(of).unit(unit).unwrap());
    assert_eq!(in_unit(0.0889, "Length", "inch"), "3.5 in");
    assert_eq!(in_unit(0.0127, "Length", "mm"), "12.7 mm");
    assert_eq!(in_unit(read("70 °F").unwrap().si, "Temperature", "degF"), "70 °F");
    assert_eq!(in_unit(0.1 + 0.2, "Ratio", "one"), "0.30000000000000004");
    assert_eq!(in_unit(-0.0, "Length", "mm"), "-0 mm");
    assert_eq!(in_unit(1e-300, "Temperature", "degC"), "1e-300 K");
    assert_eq!(in_unit(5e-324, "Length", "km"), "5e-324 m");
    for (text, of) in [("-356543.5825624346 ksi", "Stress"), ("-0.5877212075618018 mph", "Velocity")] {
        let Reading { si, kind, unit, .. } = read_as(text, kind(of)).unwrap(); // found with a neighbour only
        assert_eq!(read_as(&print_in(si, kind, unit), kind).map(|r| (r.si, r.unit)), Ok((si, unit)));
    }
}

fn pieces() -> impl Strategy<Value = String> {
    let pieces = vec![
        "1",
        "25",
        "250",
        "0",
        ".",
        ",",
        "-",
        "+",
        "/",
        " ",
        "e",
        "'",
        "\"",
        "±",
        "+/-",
        "%",
        ":",
        "to ",
        "in",
        "ft",
        "lb",
        "lbf",
        "N",
        "m",
        "°",
        "F",
        "K",
        "½",
        "²",
        "^",
        "*",
        "·",
        "(",
        ")",
        "psi",
        "gauge",
        "sd",
        "hp",
        "\u{2009}",
        "\u{a0}",
        "Δ",
        "9999999999",
        "e999",
        "e-400",
        "1/min",
        "_",
        "𝛑",
        "\0",
    ];
    prop::collection::vec(prop::sample::select(pieces), 0..14).prop_map(|parts| parts.concat())
}

proptest! {
    #[test]
    fn printed_text_reads_back_to_the_same_bits(
        si in prop_oneof![
            prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL | prop::num::f64::ZERO, -1e6..1e6, -1.0..1.0
        ]
    ) {
        for &kind in KINDS {
            for unit in kind.units {
                let text = print_in(si, kind, unit);
                let reading = read_as(&text, kind).map_err(|error| TestCaseError::fail(error.to_string()))?;
                prop_assert_eq!(reading.si.to_bits(), si.to_bits(), "{} {}", text, kind.name);
            }
        }
    }

    #[test]
    fn what_was_written_in_a_unit_is_printed_in_it(number in prop_oneof![-1e6..1e6, -1.0..1.0, -1e30..1e30]) {
        for unit in KINDS.iter().flat_map(|kind| kind.units) {
            let kind = KINDS.iter().find(|kind| kind.unit(unit.name).is_some()).unwrap();
            let si = unit.to_si(number);
            prop_assert_eq!(read_as(&print_in(si, kind, unit), kind).unwrap().unit.name, unit.name);
        }
    }

    #[test]
    fn rounded_text_reads_back_to_four_digits(si in prop_oneof![-1e9..1e9, -1.0..1.0]) {
        for &kind in KINDS {
            for system in [System::Metric, System::Us] {
                let text = print(si, kind, system);
                let reading = read_as(&text, kind).map_err(|error| TestCaseError::fail(error.to_string()))?;
                let (value, written) = (reading.unit.from_si(si), reading.unit.from_si(reading.si));
                prop_assert!((value - written).abs() <= 5.01e-4 * value.abs(), "{} for {}", text, value);
            }
        }
    }

    #[test]
    fn nothing_panics_and_what_is_read_is_finite(text in prop_oneof![any::<String>(), pieces(), "\\PC{0,200}"]) {
        for outcome in [read(&text), read_as(&text, kind("Length")), read_as(&text, kind("GaugePressure"))] {
            match outcome {
                Ok(reading) => prop_assert!(reading.si.is_finite() && reading.tolerance.is_none_or(|t| t.si >= 0.0)),
                Err(error) => prop_assert_eq!(error.number(), 4),
            }
        }
        let _ = super::unit(&text, None);
    }

    #[test]
    fn grouping_and_spacing_do_not_change_the_value(
        number in 0_u64..1_000_000_000_000, decimals in "(\\.[0-9]{1,6})?", before in "[ \u{a0}\t]{0,3}",
        between in "[ \u{a0}\u{2009}]{0,3}", separator in "[,\u{2009}\u{202f}]",
    ) {
        let digits = number.to_string();
        let mut grouped = String::new();
        for (at, digit) in digits.chars().enumerate() {
            if at > 0 && (digits.len() - at).is_multiple_of(3) {
                grouped.push_str(&separator);
            }
            grouped.push(digit);
        }
        let bare = read(&format!("{digits}{decimals}N")).unwrap();
        let spaced = read(&format!("{before}{grouped}{decimals}{between}N{before}")).unwrap();
        prop_assert_eq!(bare, spaced);
        prop_assert_eq!(bare.si, format!("{digits}{decimals}").parse::<f64>().unwrap());
    }

    #[test]
    fn mixed_numbers_are_whole_plus_fraction(whole in 0_u32..1000, numerator in 0_u32..64, more in 1_u32..64) {
        let denominator = numerator + more;
        let value = f64::from(whole) + f64::from(numerator) / f64::from(denominator);
        for joint in [" ", "-", "\u{a0}"] {
            let text = format!("{whole}{joint}{numerator}/{denominator}");
            prop_assert_eq!(read(&text).unwrap().si, value);
            prop_assert_eq!(read(&format!("-{text}")).unwrap().si, -value);
        }
    }
}

#[test]
fn what_somebody_else_wrote_is_printed_short_and_plain() {
    use super::{QUOTED, printable, shortened};
    assert_eq!(printable("Dünlin 2\u{a0}½ \\ \"x\""), "Dünlin 2\u{a0}½ \\ \"x\"");
    assert_eq!(
        printable("\u{1b}[2J\u{9b}A\u{7f}\r\n\t\u{202e}\u{2028}\u{feff}"),
        r"\x1b[2J\x9bA\x7f\r\n\t\u{202e}\u{2028}\u{feff}"
    );
    let fits = "é".repeat(QUOTED);
    assert_eq!(shortened(&fits), fits);
    assert_eq!(shortened(&format!("{fits}x")), format!("{}…", "é".repeat(QUOTED - 1)));
    assert_eq!(shortened("a\u{1b}b"), r"a\x1bb");
}
