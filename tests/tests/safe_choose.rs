//! A chosen part takes nothing from the part that it replaces: what describes the old one is not known of the new one.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict;
use axlewright::sheet::{PriceList, Requirement, Sheet, choose};
use axlewright_tests::assessed::{demo, verdict};

type Lines<'a> = [(&'a str, &'a str)];

fn fitted(sheet: &Sheet, lines: &Lines<'_>) -> (Sheet, Vec<&'static str>) {
    let mut sheet = sheet.clone();
    let dropped = sheet.fit(lines).unwrap();
    (sheet, dropped)
}

/// A driveline whose axle is rated on its output, continuous.
fn van() -> Sheet {
    demo(
        "dunlin",
        &[("clutch.shock_factor", "2"), ("clutch.high_capacity", "560 N·m"), ("transfer_case", "none")],
    )
}

/// Before: the rating of the new gear set counted on the output and as continuous, as that of the old one, and met.
#[test]
fn a_gear_set_does_not_keep_side_and_kind_of_the_old_rating() {
    let axle = "final_drive.strength";
    let with = |lines: &Lines<'_>| {
        let (sheet, dropped) = fitted(&van(), lines);
        (verdict(&sheet.assess(), axle), dropped)
    };
    let new = [("final_drive.ratio", "4.10"), ("final_drive.torque_rating", "9500 N·m")];
    let (word, dropped) = with(&new);
    assert_eq!(word, Verdict::NotKnown);
    for line in ["efficiency", "differential", "rating_side", "rating_kind"] {
        assert!(dropped.contains(&format!("final_drive.{line}").as_str()), "{line}: {dropped:?}");
    }
    // A rating alone, and a ratio alone.
    assert_eq!(with(&new[1..]).0, Verdict::NotKnown);
    assert_eq!(with(&new[..1]).0, Verdict::NotKnown);
    // The control: the list says all of the new axle.
    let whole = [
        ("final_drive.efficiency", "96 %"),
        ("final_drive.differential", "limited_slip"),
        ("final_drive.rating_side", "output"),
        ("final_drive.rating_kind", "continuous"),
    ];
    let (word, dropped) = with(&[&new[..], &whole[..]].concat());
    assert_eq!((word, dropped.len()), (Verdict::Meets, 0));
}

/// Before: a spring of a list was held against block length, gaps and wire of the old one.
#[test]
fn a_spring_does_not_keep_the_block_length_of_the_old_one() {
    let sheet = van();
    assert_eq!(verdict(&sheet.assess(), "front.coil_bind"), Verdict::Meets);
    let rate = ("front.spring.rate", "600 lbf/in");
    let length = ("front.spring.free_length", "310 mm");
    let block = ("front.spring.solid_length", "170 mm");
    for lines in [&[rate][..], &[rate, length], &[rate, length, block]] {
        let (sheet, dropped) = fitted(&sheet, lines);
        assert_eq!(verdict(&sheet.assess(), "front.coil_bind"), Verdict::NotKnown, "{lines:?}");
        assert!(
            dropped.contains(&"front.spring.minimum_gap") && dropped.contains(&"front.spring.wire_diameter")
        );
        assert!(sheet.remarks().iter().any(|remark| remark.contains("describes a part that was replaced")));
    }
    let whole =
        [rate, length, ("front.spring.solid_length", "150 mm"), ("front.spring.minimum_gap", "15 mm")];
    assert_eq!(verdict(&fitted(&sheet, &whole).0.assess(), "front.coil_bind"), Verdict::Meets);
}

/// Before: four gears of a list stood beside the fifth and sixth of the old gearbox, and an engine kept the red line of the old one.
#[test]
fn gearbox_engine_damper_and_tyre_keep_nothing_of_the_old_ones() {
    let sheet = van();
    let known = |lines: &Lines<'_>, line: &str| fitted(&sheet, lines).0.assess().value(line).unwrap();
    let gears = [("gearbox.ratios[0]", "4.2"), ("gearbox.ratios[1]", "1.4")];
    assert_eq!(known(&gears, "gearbox.top_ratio"), Some(1.4));
    assert_eq!(known(&gears, "gearbox.torque_rating"), None);
    assert_eq!(known(&[("engine.peak_torque", "500 N·m")], "engine.red_line"), None);
    assert_eq!(known(&[("rear.damper.rate", "4 N·s/mm")], "rear.damper.stroke"), None);
    let tyre = [("rear.tyre.load_capacity", "900 kg"), ("rear.tyre.effective_radius", "340 mm")];
    assert_eq!(known(&tyre, "rear.tyre.size"), None);
    // The control: what is no part of it stays.
    assert_eq!(known(&gears, "final_drive.ratio"), Some(4.1));
    assert!(known(&[("rear.damper.rate", "4 N·s/mm")], "rear.spring.rate").is_some());
}

/// Clearances from ride height were measured on the old spring or tyre.
#[test]
fn a_clearance_does_not_outlive_spring_or_tyre() {
    let sheet = demo("dunlin_measured", &[("front.tyre_clearance", "90 mm")]);
    let dropped = |lines: &Lines<'_>| fitted(&sheet, lines).1;
    assert!(dropped(&[("front.tyre.size", "245/75R16 111T")]).contains(&"front.tyre_clearance"));
    let spring = dropped(&[("front.spring.rate", "600 lbf/in")]);
    for line in ["tyre_clearance", "joint_bump_clearance", "hose_bump_clearance", "joint_droop_clearance"] {
        assert!(spring.contains(&format!("front.{line}").as_str()), "{line}: {spring:?}");
    }
    assert!(!dropped(&[("rear.tyre.size", "245/75R16 111T")]).contains(&"front.tyre_clearance"));
    // A missing line is then not taken for none.
    let (bare, _) = fitted(&sheet, &[("front.tyre.size", "245/75R16 111T")]);
    assert_eq!(verdict(&bare.assess(), "front.bump"), Verdict::NotKnown);
    assert_eq!(verdict(&sheet.assess(), "front.bump"), Verdict::Meets);
}

/// A requirement is not met by a line of the old part.
#[test]
fn choosing_does_not_meet_a_requirement_with_the_old_part() {
    let choice = |head: &str, row: &str| {
        let list = PriceList::from_csv(&format!("part,kind,cost,{head}\nnew,axle,10,{row}\n")).unwrap();
        let wanted = [Requirement::parse("final_drive.strength.verdict = meets").unwrap()];
        choose(&van(), &list, &wanted, 10, &mut |_| true).map(|chosen| chosen.feasible.len())
    };
    let bare = choice("final_drive.ratio,final_drive.torque_rating", "4.10,9500 N·m");
    assert!(bare.unwrap_err().to_string().contains("cannot be decided: it needs final_drive."));
    let half =
        choice("final_drive.ratio,final_drive.torque_rating,final_drive.efficiency", "4.10,9500 N·m,96 %");
    assert!(half.is_err());
    let head = "final_drive.ratio,final_drive.torque_rating,final_drive.efficiency,final_drive.rating_side,final_drive.rating_kind";
    assert_eq!(choice(head, "4.10,9500 N·m,96 %,output,continuous"), Ok(1));
}
