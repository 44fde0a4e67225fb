//! The findings of the demo sheet equal the typed functions and the models, called one by one with what the sheet says.
//!
//! A finding and a model agree to the last bit if they add in one order; if the model adds in another order (`CapTest`), to
//! 1e-12 of the pressures, and the verdict is the same.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::base::text::read_as;
use axlewright::cooling::{CapTest, Coolant, Liquid};
use axlewright::sheet::{Answer, Assessment, Sheet};
use axlewright::spring::Corner;
use axlewright::tyre::Tyre;
use axlewright::units::*;
use axlewright::{Value, Verdict, air, cooling, driveline, engine, fluid, mass, spring, tyre};
use axlewright_tests::sheets::{DUNLIN, exact};
use std::path::Path;

struct Dunlin {
    sheet: Sheet,
    on: Assessment,
}

impl Dunlin {
    fn new() -> Dunlin {
        let sheet = Sheet::from_text(&exact(DUNLIN)).unwrap();
        let on = sheet.assess();
        Dunlin { sheet, on }
    }

    /// A quantity that is written, read by the core's parser of text alone.
    fn of<Q: Quantity>(&self, path: &str) -> Q {
        let text = self.sheet.get(path).unwrap().unwrap_or_else(|| panic!("{path} is not written"));
        Q::from_si(read_as(&text, Q::KIND).unwrap().si)
    }

    fn value<Q: Quantity>(&self, path: &str) -> Value<Q> {
        Value::new(self.of(path))
    }

    fn answer(&self, path: &str) -> &Answer {
        self.on.answer(path).unwrap_or_else(|| panic!("{path}"))
    }

    /// The finding has this value and margin, to the bit, and this verdict.
    #[track_caller]
    fn same<V: Quantity, M: Quantity>(&self, path: &str, value: V, margin: M, verdict: Verdict) {
        let answer = self.answer(path);
        assert_eq!((answer.kind.name, answer.margin_kind.name), (V::KIND.name, M::KIND.name), "{path}");
        assert_eq!(answer.value.to_bits(), value.si().to_bits(), "{path}: {} {}", answer.value, value.si());
        assert_eq!(
            answer.margin.to_bits(),
            margin.si().to_bits(),
            "{path}: {} {}",
            answer.margin,
            margin.si()
        );
        assert_eq!(answer.verdict, verdict, "{path}");
    }
}

fn ratio(si: f64) -> Ratio {
    Ratio::from_si(si)
}

#[test]
fn loads_are_those_of_the_weight_distribution() {
    let van = Dunlin::new();
    let [one, two, three, four]: [Mass; 4] = ["left_front", "right_front", "left_rear", "right_rear"]
        .map(|wheel| van.of(&format!("scales.{wheel}")));
    let on = mass::weight_distribution(
        one,
        two,
        three,
        four,
        van.of("vehicle.wheelbase"),
        van.of("front.track"),
        van.of("rear.track"),
    )
    .unwrap();
    let wanted = ratio(1.05);
    let load = |path: &str, rating: Mass, of: Mass| {
        van.same(path, of, rating / of, Verdict::of_ratio(rating / of, wanted));
    };
    load("front.load", van.of("front.mass_rating"), on.front_axle_mass);
    load("rear.load", van.of("rear.mass_rating"), on.rear_axle_mass);
    load("vehicle.load", van.of("vehicle.mass_rating"), on.total_mass);
    for (axle, heavier) in [("front", one), ("rear", four)] {
        let tyre = Tyre::new(&van.sheet.get(&format!("{axle}.tyre.size")).unwrap().unwrap()).unwrap();
        // Nothing is written of its pressure and its service.
        let margin = tyre.single_load().unwrap() / heavier;
        van.same(&format!("{axle}.tyre_load"), heavier, margin, Verdict::Tight);
        let (rated, speed): (_, Velocity) = (tyre.rated_speed().unwrap(), van.of("use.peak_speed"));
        let verdict = Verdict::of_ratio(rated / speed, ratio(van.answer("front.tyre_speed").wanted));
        van.same(&format!("{axle}.tyre_speed"), speed, rated / speed, verdict);
    }
    let before = Tyre::new(&van.sheet.get("speedometer.tyre_size").unwrap().unwrap()).unwrap();
    let before = before.rolling(Length::from_si(0.0)).unwrap().rolling_radius;
    let error = tyre::speedometer_error(before, van.of("rear.tyre.effective_radius")).unwrap();
    van.same("speedometer.reading", error, error, Verdict::of_difference(error, ratio(0.0)));
    let (low, high) = (ratio(0.49), ratio(0.51));
    let inside = (on.diagonal_share.si() - low.si()).min(high.si() - on.diagonal_share.si());
    let verdict = Verdict::of_place(on.diagonal_share, (low, high), ratio(0.0));
    van.same("vehicle.diagonal", on.diagonal_share, ratio(inside), verdict);
    for (path, si) in
        [("vehicle.front_share", on.front_share.si()), ("vehicle.left_share", on.left_share.si())]
    {
        assert_eq!(van.on.value(path).unwrap().unwrap().to_bits(), si.to_bits(), "{path}");
    }
}

#[test]
fn springs_are_those_of_the_corner() {
    let van = Dunlin::new();
    let mut frequencies = Vec::new();
    for axle in ["front", "rear"] {
        let at = |rest: &str| format!("{axle}.{rest}");
        let all: [Mass; 2] = ["left", "right"].map(|side| van.of(&format!("scales.{side}_{axle}")));
        let sprung = (all[0] + all[1] - van.of::<Mass>(&at("unsprung_mass"))) / 2.0;
        let corner = Corner {
            rate: van.value(&at("spring.rate")),
            free_length: van.value(&at("spring.free_length")),
            solid_length: van.value(&at("spring.solid_length")),
            minimum_gap: van.value(&at("spring.minimum_gap")),
            motion_ratio: van.value(&at("spring.motion_ratio")),
            sprung_mass: Value::new(sprung),
            droop_length: van.value(&at("spring.droop_length")),
            damper_stroke: van.value(&at("damper.stroke")),
            damper_motion_ratio: (axle == "rear").then(|| van.value("rear.damper.motion_ratio")),
            damper_mounting: (axle == "front").then_some(spring::Mounting::CoilOver),
            gas_force: axlewright::Stated::Unknown,
            bump_clearance: None,
            bump_stop_travel: (axle == "front").then(|| van.value("front.bump_stop_travel")).into(),
            joint_bump_clearance: axlewright::Stated::Unknown,
            hose_bump_clearance: axlewright::Stated::Unknown,
            tyre_clearance: axlewright::Stated::Unknown,
            joint_droop_clearance: axlewright::Stated::Unknown,
            hose_droop_clearance: axlewright::Stated::Unknown,
        };
        let on = corner.at_ride_height().unwrap();
        let remaining = |path: &str, margin: Length, wanted| {
            let verdict = Verdict::of_difference(margin, Length::from_si(wanted));
            van.same(&at(path), margin, margin, verdict);
        };
        // The worse wheel by the scales; joint, hose and tyre are not told, so no better than tight.
        let off = (all[0] - all[1]).si().abs() / 2.0;
        let side = Length::from_si(off * STANDARD_GRAVITY / on.wheel_rate.si());
        remaining("bump", on.bump_remaining - side, f64::INFINITY);
        remaining("droop", on.sag - side, f64::INFINITY);
        remaining("coil_bind", on.bind_margin, 0.003);
        remaining("captive", on.captive_margin, 0.003);
        let (low, high): (Frequency, Frequency) =
            (van.of(&at("wanted.frequency_low")), van.of(&at("wanted.frequency_high")));
        let inside = Frequency::from_si((on.frequency - low).si().min((high - on.frequency).si()));
        let verdict = Verdict::of_place(on.frequency, (low, high), Frequency::from_si(0.0));
        van.same(&at("frequency"), on.frequency, inside, verdict);
        let line = |path: &str| van.on.value(&at(path)).unwrap().unwrap();
        assert_eq!(line("spring.force").to_bits(), on.spring_force.si().to_bits());
        assert_eq!(line("wheel_rate").to_bits(), on.wheel_rate.si().to_bits());
        let ride = spring::ride_rate(on.wheel_rate, van.of(&at("tyre.rate"))).unwrap();
        assert_eq!(line("ride_rate").to_bits(), ride.si().to_bits());
        let quicker = spring::natural_frequency(ride, sprung).unwrap();
        assert_eq!(line("ride_frequency").to_bits(), quicker.si().to_bits());
        // The front damper stands in its spring, the rear one apart.
        let damper_ratio =
            if axle == "front" { "front.spring.motion_ratio" } else { "rear.damper.motion_ratio" };
        let damping = spring::wheel_damping(van.of(&at("damper.rate")), van.of(damper_ratio)).unwrap();
        let damping = spring::damping_ratio(damping, on.wheel_rate, sprung).unwrap();
        let (low, high) = (ratio(0.2), ratio(0.45));
        let inside = (damping.si() - low.si()).min(high.si() - damping.si());
        let verdict = Verdict::of_place(damping, (low, high), ratio(0.0));
        van.same(&at("damping"), damping, ratio(inside), verdict);
        let wanted = Length::from_si(0.003);
        if axle == "front" {
            let (free, mean): (Length, Length) =
                (van.of("front.spring.free_length"), van.of("front.spring.mean_diameter"));
            let shortest =
                van.of::<Length>("front.spring.solid_length") + van.of::<Length>("front.spring.minimum_gap");
            let largest = free - shortest;
            let force = van.of::<LinearStiffness>("front.spring.rate") * largest;
            let stress =
                spring::coil_shear_stress(force, van.of("front.spring.wire_diameter"), mean).unwrap();
            let margin = van.of::<Stress>("front.spring.allowed_stress") / stress;
            van.same("front.spring_strength", stress, margin, Verdict::of_ratio(margin, ratio(1.1)));
            let moduli = ["elastic", "shear"]
                .map(|which| line(&format!("spring.{which}_modulus")))
                .map(Stress::from_si);
            let fixity = van.of("front.spring.end_fixity");
            // A spring too short to buckle never does: then its whole length is the limit.
            let most = spring::buckling_deflection(free, mean, fixity, moduli[0], moduli[1]).unwrap_or(free);
            let verdict = Verdict::of_difference(most - largest, wanted);
            van.same("front.buckling", largest, most - largest, verdict);
        } else {
            // Nothing is written of its wire and coil.
            assert_eq!(van.answer("rear.spring_strength").verdict, Verdict::NotKnown);
            assert_eq!(van.answer("rear.buckling").verdict, Verdict::NotKnown);
        }
        frequencies.push(on.frequency);
    }
    let pair = frequencies[1] / frequencies[0];
    let inside = (pair.si() - 1.0).min(1.3 - pair.si());
    let verdict = Verdict::of_place(pair, (ratio(1.0), ratio(1.3)), ratio(0.0));
    van.same("vehicle.frequency_pair", pair, ratio(inside), verdict);
    for axle in ["front", "rear"] {
        let size = Tyre::new(&van.sheet.get(&format!("{axle}.tyre.size")).unwrap().unwrap())
            .unwrap()
            .dimensions()
            .unwrap();
        let diameter = van.on.value(&format!("{axle}.tyre.free_diameter")).unwrap().unwrap();
        assert_eq!(diameter.to_bits(), size.free_diameter.si().to_bits());
    }
}

#[test]
fn engine_clutch_and_speeds_are_those_of_their_functions() {
    let van = Dunlin::new();
    let points: Vec<(AngularVelocity, Torque)> = (0..6)
        .map(|at| {
            (
                van.of(&format!("engine.curve[{at}].engine_speed")),
                van.of(&format!("engine.curve[{at}].torque")),
            )
        })
        .collect();
    let peaks = engine::TorqueCurve::new(&points).unwrap().peaks().unwrap();
    for (path, si) in [
        ("engine.peak_torque", peaks.peak_torque.si()),
        ("engine.peak_torque_speed", peaks.peak_torque_speed.si()),
        ("engine.peak_power", peaks.peak_power.si()),
        ("engine.peak_power_speed", peaks.peak_power_speed.si()),
    ] {
        assert_eq!(van.on.value(path).unwrap().unwrap().to_bits(), si.to_bits(), "{path}");
    }
    let capacity: Torque = van.of("clutch.capacity");
    let margin = capacity / peaks.peak_torque;
    van.same("clutch.holds", peaks.peak_torque, margin, Verdict::of_ratio(margin, ratio(1.2)));

    let speed = engine::mean_piston_speed(van.of("engine.stroke"), van.of("engine.red_line")).unwrap();
    let margin = van.of::<Velocity>("engine.piston_speed_limit") - speed;
    van.same("engine.pistons", speed, margin, Verdict::of_difference(margin, Velocity::from_si(0.0)));

    let at = |speed: &str| {
        driveline::engine_speed(
            van.of(speed),
            van.of("gearbox.ratios[5]"),
            van.of("final_drive.ratio"),
            van.of("rear.tyre.effective_radius"),
        )
        .unwrap()
    };
    for (path, speed, most) in [
        ("driveline.cruise", "use.cruise_speed", "wanted.cruise_engine_speed"),
        ("driveline.red_line", "use.peak_speed", "engine.red_line"),
    ] {
        let turns = at(speed);
        let margin = van.of::<AngularVelocity>(most) - turns;
        van.same(path, turns, margin, Verdict::of_difference(margin, AngularVelocity::from_si(0.0)));
    }
    let cruise = at("use.cruise_speed");
    // The share of the peak torque at which an engine pulls well is a wish without a default.
    assert_eq!(van.answer("driveline.cruise_band").verdict, Verdict::NotKnown);
    let mut sheet = van.sheet.clone();
    sheet.set("engine.band_share", "85 %").unwrap();
    let van = Dunlin { on: sheet.assess(), sheet };
    let share: Ratio = van.of("engine.band_share");
    let band = engine::TorqueCurve::new(&points).unwrap().torque_band(share).unwrap();
    let inside = (cruise - band.lowest_speed).si().min((band.highest_speed - cruise).si());
    let (edges, none) = ((band.lowest_speed, band.highest_speed), AngularVelocity::from_si(0.0));
    let verdict = Verdict::of_place(cruise, edges, none);
    van.same("driveline.cruise_band", cruise, AngularVelocity::from_si(inside), verdict);
    let missing = van.on.missing(van.answer("driveline.crawl"));
    assert_eq!(missing.needs, ["wanted.crawl_speed"]);
}

#[test]
fn coolant_and_cap_are_those_of_their_models() {
    let van = Dunlin::new();
    // The model's altitude and the sheet's are the same height over the sea.
    let station =
        air::standard_pressure(air::geopotential_altitude(van.of("use.altitude")).unwrap()).unwrap();
    assert_eq!(van.on.value("use.station_pressure").unwrap().unwrap().to_bits(), station.si().to_bits());
    let surely = GaugePressure::from_si(
        van.of::<GaugePressure>("cap.holding_pressure").si() - van.of::<Stress>("cap.gauge_error").si(),
    );
    let coolant = Coolant {
        liquid: Liquid::EthyleneGlycol,
        volume_share: Some(van.value("coolant.volume_share")),
        concentrate: Some(van.value("coolant.concentrate")),
        mass_fraction: None,
        cap: Value::new(surely),
        cap_holds: Some(Value::new(surely)),
        altitude: Some(van.value("use.altitude")),
        station_pressure: None,
        hottest: van.value("coolant.hottest"),
    };
    let on = coolant.margin().unwrap();
    let verdict = Verdict::of_difference(on.margin, TemperatureDifference::from_si(10.0));
    // The bounds of the mixture models: 0.8 K of boiling; of freezing 1.7 K at 40 % and 2.6 K at 50 %.
    let boils = Temperature::from_si(on.boiling_temperature.si() - 0.8);
    van.same("coolant.boiling", boils, on.margin, verdict);
    let line = |path: &str| van.on.value(path).unwrap().unwrap().to_bits();
    assert_eq!(line("coolant.mass_fraction"), on.mass_fraction.si().to_bits());
    assert_eq!(line("cap.absolute_pressure"), on.absolute_pressure.si().to_bits());
    let direct = fluid::ethylene_glycol_freezing_temperature(on.mass_fraction).unwrap();
    let freezing = coolant.freezing_temperature().unwrap();
    assert_eq!(direct.si().to_bits(), freezing.si().to_bits());
    let bound = 1.7 + (2.6 - 1.7) * (on.mass_fraction.si() - 0.4) / (0.5 - 0.4);
    let freezing = Temperature::from_si(freezing.si() + bound);
    let margin =
        TemperatureDifference::from_si(van.of::<Temperature>("use.coldest_air").si() - freezing.si());
    let verdict = Verdict::of_difference(margin, TemperatureDifference::from_si(3.0));
    van.same("coolant.freezing", freezing, margin, verdict);

    let [fill, mean, air]: [Temperature; 3] =
        ["coolant.fill_temperature", "coolant.mean_temperature", "header.air_temperature"]
            .map(|path| van.of(path));
    let grown =
        cooling::ethylene_glycol_expansion_volume(van.of("coolant.volume"), on.mass_fraction, fill, mean)
            .unwrap();
    let vapour = fluid::ethylene_glycol_boiling_pressure(air, on.mass_fraction).unwrap();
    let closed = GaugePressure::from_si(0.0);
    let least = cooling::header_air_volume(grown, closed, surely, vapour, fill, air, station).unwrap();
    let has: Volume = van.of("header.air_volume");
    van.same("header.air", has, has - least, Verdict::of_difference(has - least, Volume::from_si(0.0)));

    let (begun, ended): (Temperature, Temperature) =
        (van.of("leak_test.temperature"), van.of("leak_test.later_temperature"));
    let growth = fluid::ethylene_glycol_expansion(on.mass_fraction, begun, ended).unwrap();
    let pumped: GaugePressure = van.of("leak_test.gauge_pressure");
    let still = cooling::pressure_decay_tight_pressure_over_coolant(
        pumped,
        van.of("leak_test.gas_volume"),
        van.of("leak_test.coolant_volume"),
        growth,
        begun,
        ended,
        station,
    )
    .unwrap();
    let read: GaugePressure = van.of("leak_test.later_gauge_pressure");
    let (allowed, error): (Stress, Stress) = (van.of("leak_test.allowed_loss"), van.of("cap.gauge_error"));
    let least = cooling::pressure_decay_least_pressure(pumped, still, allowed, error, station).unwrap();
    let margin = Stress::from_si(read.si() - least.si());
    van.same("leak_test.tight", read, margin, Verdict::of_difference(margin, Stress::from_si(0.0)));
    assert_eq!(van.answer("coolant.pump_inlet").verdict, Verdict::NotKnown);

    let test = CapTest {
        rating: Some(van.value("cap.rating")),
        opening_pressure: Some(van.value("cap.opening_pressure")),
        holding_pressure: Some(van.value("cap.holding_pressure")),
        gauge_error: Some(van.value("cap.gauge_error")),
        rating_tolerance: Some(van.value("cap.rating_tolerance")),
        weakest_component: Some(van.value("cap.weakest_component")),
        vacuum_opening: Some(van.value("cap.vacuum_opening")),
        vacuum_limit: Some(van.value("cap.vacuum_limit")),
    };
    let found = test.findings().unwrap();
    for (path, margin) in [
        ("cap.holds", found.holding_margin),
        ("cap.opens", found.opening_margin),
        ("cap.weakest", found.component_margin),
        ("cap.vacuum", found.vacuum_margin),
    ] {
        let verdict = Verdict::of_difference(margin, Stress::from_si(0.0));
        let answer = van.answer(path);
        assert!(
            (answer.margin - margin.si()).abs() <= 1e-12 * 2e5,
            "{path}: {} {}",
            answer.margin,
            margin.si()
        );
        assert_eq!(answer.verdict, verdict, "{path}");
    }
}

/// Every finding is named in one of the tests above, or said to be not known; none is left out.
#[test]
fn every_finding_of_the_van_is_accounted_for() {
    let van = Dunlin::new();
    // `sections` holds parts and crawling against the torque path, to the bit.
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests");
    let mut files =
        ["sheet_findings.rs", "sheet_leaf.rs", "safe_suspension.rs"].map(|name| folder.join(name)).to_vec();
    for name in ["sections", "sheet_suspension"] {
        files.extend(std::fs::read_dir(folder.join(name)).unwrap().map(|file| file.unwrap().path()));
    }
    let source: String = files.iter().map(|file| std::fs::read_to_string(file).unwrap()).collect();
    for answer in van.on.answers() {
        let rest = answer.path.trim_start_matches("front.").trim_start_matches("rear.");
        let part = answer.path.trim_end_matches(".strength");
        assert!(
            [answer.path, rest, part].iter().any(|name| source.contains(&format!("{name}\""))),
            "{0} is checked against nothing: call its function or model in a test of this file, as in `van.same(\"{0}\", ...)`; if the \
             van's sheet does not reach it, say so by `assert_eq!(van.answer(\"{0}\").verdict, Verdict::NotKnown)`",
            answer.path
        );
    }
    // A sheet for a demonstration shows all that a finding can say.
    for verdict in [Verdict::Meets, Verdict::Tight, Verdict::NotKnown] {
        assert!(van.on.answers().iter().any(|answer| answer.verdict == verdict), "{verdict:?}");
    }
}
