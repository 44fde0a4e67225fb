//! Tyres and the speedometer.

use axlewright_tests::assessed::{assessed, lacks, value, verdict_word};

#[test]
fn a_tyre_says_what_its_marking_says_and_no_more() {
    let assessment =
        assessed("dunlin", &[("front.tyre.size", "235/70R16"), ("rear.tyre.effective_radius", "")]);
    for (finding, what) in [("front.tyre_load", "load index"), ("front.tyre_speed", "speed symbol")] {
        assert_eq!(verdict_word(&assessment, finding), "not known");
        assert!(
            lacks(&assessment, finding)
                .contains(&format!("no {what} stands after the size, as in 235/70R16 106T"))
        );
    }
    // 16 in and twice 70 % of 235 mm, times 3.05, over 2 pi.
    let radius = (16.0 * 0.0254 + 2.0 * 0.7 * 0.235) * 3.05 / core::f64::consts::TAU;
    assert!((value(&assessment, "rear.tyre.effective_radius") / radius - 1.0).abs() < 1e-15);
    // Load index 106: 950 kg, T: 190 km/h (ISO 4000-1, from memory).
    assert_eq!(value(&assessment, "rear.tyre.load_capacity"), 950.0);
    assert!((value(&assessment, "rear.tyre.rated_speed") * 3.6 - 190.0).abs() < 1e-12);
    // A diagonal tyre goes by its loaded radius, and says so where it is lacking.
    let dray = assessed("dray", &[]);
    let (free, loaded) = (value(&dray, "rear.tyre.free_radius"), value(&dray, "rear.tyre.loaded_radius"));
    assert!((value(&dray, "rear.tyre.effective_radius") - (2.0 * free + loaded) / 3.0).abs() < 1e-15);
    let dray = assessed("dray", &[("rear.tyre.rate", "")]);
    assert!(lacks(&dray, "driveline.cruise").contains("a diagonal tyre needs tyre.loaded_radius"));
}

#[test]
fn a_speedometer_is_asked_for_what_it_counts() {
    let error = |lines: &[(&str, &str)]| value(&assessed("dray", lines), "speedometer.error");
    let radius = value(&assessed("dray", &[]), "rear.tyre.effective_radius");
    assert!((error(&[]) - (0.378 * 4.78 / (radius * 4.88) - 1.0)).abs() < 1e-14);
    assert!((error(&[("speedometer.counts", "wheel")]) - (0.378 / radius - 1.0)).abs() < 1e-14);
    let lacking = assessed("dray", &[("speedometer.final_drive", "")]);
    assert!(lacks(&lacking, "speedometer.reading").contains("needs speedometer.final_drive"));
}
