//! Laws that hold for every shape.

use super::*;
use crate::base::document::Value;
use crate::units::{Area, Force, Length, SecondMoment, SectionModulus, Stress};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn mm(length: f64) -> Value<Length> {
    Value::new(Length::from_si(length / 1000.0))
}

fn tube(width: f64, height: f64, wall: f64, radius: f64) -> RectangularTube {
    RectangularTube {
        width: mm(width),
        height: mm(height),
        wall: Some(mm(wall)),
        gauge: None,
        corner_radius: mm(radius),
        lost_outside: None,
        lost_inside: None,
        side_hole: None,
        top_hole: None,
    }
}

fn channel(width: f64, height: f64, wall: f64, radius: f64) -> Channel {
    Channel {
        width: mm(width),
        height: mm(height),
        wall: Some(mm(wall)),
        gauge: None,
        corner_radius: mm(radius),
        lost_outside: None,
        lost_inside: None,
        web_hole: None,
    }
}

fn link(length: f64, bow: f64, eccentricity: f64, lateral: f64, place: f64) -> Link {
    Link {
        area: Value::new(Area::from_si(214e-6)),
        net_area: Value::new(Area::from_si(214e-6)),
        second_moment: Value::new(SecondMoment::from_si(13_640e-12)),
        section_modulus: Value::new(SectionModulus::from_si(1_074e-9)),
        length: mm(length),
        elastic_modulus: Value::new(Stress::from_si(205e9)),
        yield_strength: Value::new(Stress::from_si(350e6)),
        bow: Some(mm(bow)),
        eccentricity: mm(eccentricity),
        lateral_load: Some(Value::new(Force::from_si(lateral))),
        lateral_place: Some(mm(place * length)),
    }
}

/// Results of which rust and holes leave less.
fn strengths(of: &SectionProperties) -> [f64; 6] {
    [
        of.area.si(),
        of.second_moment_y.si(),
        of.second_moment_z.si(),
        of.minor_second_moment.si(),
        of.torsion_constant.si(),
        of.shear_area_z.si(),
    ]
}

proptest! {
    #[test]
    fn a_turned_tube_has_the_same_figures_about_the_other_axis(b in 20.0f64..200.0, h in 20.0f64..200.0, t in 1.0f64..5.0, r in 0.0f64..10.0) {
        let (one, other) = (tube(b, h, t, r).properties().unwrap(), tube(h, b, t, r).properties().unwrap());
        assert_relative_eq!(one.second_moment_y.si(), other.second_moment_z.si(), max_relative = 1e-12);
        assert_relative_eq!(one.plastic_modulus_z.si(), other.plastic_modulus_y.si(), max_relative = 1e-12);
        assert_relative_eq!(one.shear_area_y.si(), other.shear_area_z.si(), max_relative = 1e-12);
        assert_relative_eq!(one.torsion_constant.si(), other.torsion_constant.si(), max_relative = 1e-12);
    }

    #[test]
    fn rust_and_holes_never_make_a_section_stronger(b in 30.0f64..100.0, h in 30.0f64..150.0, t in 1.5f64..5.0, r in 0.0f64..8.0, outside in 0.01f64..0.5, inside in 0.01f64..0.5, hole in 1.0f64..10.0) {
        let (lost_outside, lost_inside, drilled) = (Some(mm(outside)), Some(mm(inside)), Some(mm(hole)));
        let plain = tube(b, h, t, r);
        let rusted = RectangularTube { lost_outside: lost_outside.clone(), lost_inside: lost_inside.clone(), ..plain.clone() };
        let holed = RectangularTube { side_hole: drilled.clone(), top_hole: drilled.clone(), ..rusted.clone() };
        let tubes = [plain.properties(), rusted.properties(), holed.properties()];
        let plain = channel(b, h, t, r);
        let rusted = Channel { lost_outside, lost_inside, ..plain.clone() };
        let holed = Channel { web_hole: drilled, ..rusted.clone() };
        let channels = [plain.properties(), rusted.properties(), holed.properties()];
        for [whole, thinner, drilled] in [tubes, channels].map(|of| of.map(|of| strengths(&of.unwrap()))) {
            for ((whole, thinner), drilled) in whole.iter().zip(thinner).zip(drilled) {
                prop_assert!(*whole > thinner && thinner >= drilled, "{whole} {thinner} {drilled}");
            }
        }
    }

    #[test]
    fn a_channel_of_rectangles_has_the_figures_of_its_parts(b in 30.0f64..100.0, h in 30.0f64..150.0, t in 1.5f64..5.0) {
        let part = |width: f64, height: f64, y: f64, z: f64| SectionPart { width: mm(width), height: mm(height), y: mm(y), z: mm(z) };
        let parts = vec![
            part(t, h, t / 2.0, 0.0),
            part(b - t, t, (b + t) / 2.0, (h - t) / 2.0),
            part(b - t, t, (b + t) / 2.0, (t - h) / 2.0),
        ];
        let (whole, built) = (channel(b, h, t, 0.0).properties().unwrap(), BuiltUp { parts, removed: None }.properties().unwrap());
        assert_relative_eq!(whole.centroid_y.si(), built.centroid_y.si(), max_relative = 1e-9);
        assert_relative_eq!(whole.second_moment_z.si(), built.second_moment_z.si(), max_relative = 1e-9);
        assert_relative_eq!(whole.plastic_modulus_z.si(), built.plastic_modulus_z.si(), max_relative = 1e-9);
        assert_relative_eq!(whole.shear_area_z.si(), built.shear_area_z.si(), max_relative = 1e-9);
    }

    #[test]
    fn a_link_yields_at_its_critical_load(length in 200.0f64..1500.0, bow in 0.1f64..5.0, eccentricity in 0.1f64..20.0, lateral in 0.0f64..500.0, place in 0.1f64..0.9) {
        let bent = link(length, bow, eccentricity, lateral, place);
        let on = bent.capacity().unwrap();
        prop_assert!(on.critical_load <= on.bowed_load && on.bowed_load <= on.euler_load);
        prop_assert!(on.critical_load <= on.straight_load && on.straight_load <= on.euler_load);
        if on.critical_load.si() > 0.0 && on.governs != "johnson" {
            let peak = bent.peak_stress(-on.critical_load).unwrap();
            assert_relative_eq!(peak.si(), 350e6, max_relative = 1e-6);
        }
        // Another cause never helps.
        let plain = link(length, bow, 0.0, 0.0, place).capacity().unwrap();
        prop_assert!(on.critical_load <= plain.critical_load);
    }
}

#[test]
fn a_rounded_corner_tends_to_a_sharp_one() {
    let (sharp, nearly) = (channel(50.0, 100.0, 3.0, 0.0), channel(50.0, 100.0, 3.0, 1e-3));
    let [sharp, nearly] = [sharp, nearly].map(|of| strengths(&of.properties().unwrap()));
    for (sharp, nearly) in sharp.iter().zip(nearly) {
        assert_relative_eq!(*sharp, nearly, max_relative = 1e-6);
    }
}
