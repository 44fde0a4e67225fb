//! Choosing against brute force: every combination of small price lists is written on the sheet and assessed, and pruning loses nothing.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Verdict;
use axlewright::sheet::{
    Assessment, Candidate, Choice, Chosen, MOST_CHOICES, PriceList, Requirement, Sheet, choose,
};
use axlewright::units::{Mass, kg};
use axlewright_tests::catalogue::Random;
use axlewright_tests::offers::{exact_dunlin, ten_kinds_of_eight_parts};
use std::collections::BTreeSet;

const LISTS: usize = 120;
/// Most combinations of one list; brute force takes its time.
const MOST: usize = 400;

/// Kinds of part, the lines that each writes, and values to draw from. Springs and tyres share a corner, gears and axle a driveline;
/// a mat changes nothing.
type Kind = (&'static str, &'static [(&'static str, &'static [&'static str])]);
const KINDS: &[Kind] = &[
    (
        "spring",
        &[
            ("front.spring.rate", &["450 lbf/in", "550 lbf/in", "600 lbf/in", "90 N/mm", "110 N/mm"]),
            ("front.spring.free_length", &["300 mm", "320 mm", "340 mm", "13 in"]),
            ("front.spring.solid_length", &["150 mm", "165 mm"]),
            ("front.spring.minimum_gap", &["10 mm", "15 mm"]),
        ],
    ),
    (
        "damper",
        &[
            ("front.damper.rate", &["5 N·s/mm", "7.5 N·s/mm", "9 N·s/mm"]),
            ("front.damper.stroke", &["80 mm", "110 mm", "140 mm"]),
        ],
    ),
    (
        "tyre",
        &[
            ("rear.tyre.size", &["215/65R16", "235/70R16"]),
            ("rear.tyre.effective_radius", &["330 mm", "352 mm", "372 mm"]),
        ],
    ),
    (
        "axle",
        &[
            ("final_drive.ratio", &["3.54", "3.91", "4.10", "4.56"]),
            ("final_drive.torque_rating", &["6000 N·m", "9500 N·m"]),
            ("final_drive.efficiency", &["96 %"]),
            ("final_drive.differential", &["limited_slip", "open"]),
        ],
    ),
    (
        "gearbox",
        &[
            ("gearbox.ratios[0]", &["4.2", "4.7", "5.1"]),
            ("gearbox.ratios[1]", &["0.8", "0.9"]),
            ("gearbox.efficiency", &["95 %", "97 %"]),
            ("gearbox.rating_side", &["input", "output"]),
            ("gearbox.torque_rating", &["400 N·m", "480 N·m"]),
            ("gearbox.rating_kind", &["continuous", "peak"]),
        ],
    ),
    ("clutch", &[("clutch.capacity", &["380 N·m", "440 N·m", "520 N·m"])]),
    ("mat", &[]),
    ("cap", &[("cap.rating", &["13 psi gauge", "15 psi gauge", "18 psi gauge"])]),
];

/// Lines of the demo van that another part of a kind makes void, judged by hand: what was measured on the old part, and what describes it.
const VOID: &[(&str, &[&str])] = &[
    ("spring", SPRING),
    ("front spring", SPRING),
    ("rear spring", &["rear.spring.free_length", "rear.spring.solid_length", "rear.spring.minimum_gap"]),
    ("damper", DAMPER),
    ("front damper", DAMPER),
    ("rear damper", &["rear.spring.droop_length", "rear.damper.stroke"]),
    ("tyre", &["rear.tyre.size", "rear.tyre.rate"]),
    (
        "axle",
        &[
            "final_drive.efficiency",
            "final_drive.differential",
            "final_drive.torque_rating",
            "final_drive.rating_side",
            "final_drive.rating_kind",
        ],
    ),
    (
        "gearbox",
        &[
            "gearbox.ratios[5]",
            "gearbox.ratios[4]",
            "gearbox.ratios[3]",
            "gearbox.ratios[2]",
            "gearbox.ratios[1]",
            "gearbox.ratios[0]",
            "gearbox.reverse_ratio",
            "gearbox.efficiency",
            "gearbox.torque_rating",
            "gearbox.rating_side",
            "gearbox.rating_kind",
        ],
    ),
    ("cap", &["cap.rating_tolerance", "cap.opening_pressure", "cap.holding_pressure", "cap.vacuum_opening"]),
    ("half shaft", &["half_shaft.rating_kind"]),
];
const SPRING: &[&str] = &[
    "front.spring.free_length",
    "front.spring.solid_length",
    "front.spring.wire_diameter",
    "front.spring.mean_diameter",
    "front.spring.active_coils",
    "front.spring.allowed_stress",
    "front.spring.minimum_gap",
];
const DAMPER: &[&str] = &["front.spring.droop_length", "front.bump_stop_travel", "front.damper.stroke"];

const ASKED: &[&str] = &[
    "1.2 Hz <= front.natural_frequency <= 1.4 Hz",
    "front.natural_frequency >= 1.3 Hz",
    "front.damping_ratio <= 0.5",
    "0.25 <= front.damping_ratio",
    "front.bump_remaining >= 50 mm",
    "front.coil_bind.verdict = tight",
    "front.damping.verdict = meets",
    "driveline.cruise_engine_speed <= 2500 rpm",
    "driveline.cruise.verdict = tight",
    "driveline.cruise.margin >= 50 rpm",
    "half_shaft.torque <= 6500 N·m",
    "margins >= 1",
    "margins >= 0.5",
    "clutch.holds.margin >= 1.2",
    "gearbox.strength.verdict = tight",
    "driveline.wheel_torque >= 6000 N·m",
    "coolant.boiling.margin >= 10 K",
    "vehicle.frequency_ratio >= 1",
    "cap.weakest.verdict = tight",
    "no finding worse",
];

/// Costs in cents and masses in grams, so that sums can be told apart exactly.
struct Priced {
    list: PriceList,
    cents: Vec<i64>,
    grams: Vec<i64>,
}

fn priced(random: &mut Random) -> Priced {
    let mut places: Vec<usize> = (0..KINDS.len()).collect();
    random.shuffle(&mut places);
    let (mut parts, mut cents, mut grams) = (vec![], vec![], vec![]);
    let few = random.once_in(3);
    for place in &places[..3 + random.below(3)] {
        let (kind, lines) = KINDS[*place];
        for number in 0..2 + random.below(4) {
            // Few prices make ties.
            let (cost, mass) = if few {
                (1010 * (1 + random.below(3) as i64), 1100 * (1 + random.below(3) as i64))
            } else {
                (1 + random.below(500_000) as i64, random.below(60_000) as i64)
            };
            cents.push(cost);
            grams.push(mass);
            parts.push(Candidate {
                part: format!("{kind} {number}"),
                kind: kind.to_owned(),
                cost: cost as f64 / 100.0,
                mass: Mass::of::<kg>(mass as f64 / 1000.0),
                lines: lines
                    .iter()
                    .map(|(path, texts)| ((*path).to_owned(), (*random.of_these(texts)).to_owned()))
                    .collect(),
            });
        }
    }
    // The parts of a kind need not stand together.
    let mut order: Vec<usize> = (0..parts.len()).collect();
    random.shuffle(&mut order);
    let (cents, grams) =
        (order.iter().map(|at| cents[*at]).collect(), order.iter().map(|at| grams[*at]).collect());
    Priced { list: PriceList { parts: order.iter().map(|at| parts[*at].clone()).collect() }, cents, grams }
}

/// The van without tolerances: choosing takes none into account, and an assessment is quicker.
fn van() -> Sheet {
    exact_dunlin().unwrap()
}

/// All combinations, a place in the list for each kind, kinds in the order of the list.
fn combinations(list: &PriceList) -> Vec<Vec<usize>> {
    let mut kinds: Vec<&str> = vec![];
    list.parts.iter().for_each(|part| {
        if !kinds.contains(&part.kind.as_str()) {
            kinds.push(&part.kind);
        }
    });
    let mut all = vec![vec![]];
    for kind in kinds {
        let of: Vec<usize> = (0..list.parts.len()).filter(|at| list.parts[*at].kind == kind).collect();
        all = all.iter().flat_map(|begun| of.iter().map(move |at| [&begun[..], &[*at]].concat())).collect();
    }
    all
}

/// The sheet with these parts, and without what was measured on the parts that they replace or describes them.
fn with_parts(sheet: &Sheet, list: &PriceList, parts: &[usize]) -> Sheet {
    let mut with = sheet.clone();
    for part in parts.iter().map(|part| &list.parts[*part]) {
        let void = VOID.iter().filter(|(kind, _)| part.kind == *kind).flat_map(|(_, paths)| *paths);
        void.for_each(|path| with.remove(path).unwrap());
        part.lines.iter().for_each(|(path, text)| with.set(path, text).unwrap());
    }
    with
}

/// Findings that are worse than they were, judged by a list of its own: a good verdict may become none that stands behind it.
fn worse(now: &Assessment, then: &Assessment) -> Vec<(&'static str, Verdict, Verdict)> {
    let order = ["meets", "tight", "not known", "short"];
    let place = |verdict: Verdict| order.iter().position(|word| *word == verdict.word()).unwrap_or(0);
    let pairs = now.answers().iter().zip(then.answers());
    pairs
        .filter(|(now, then)| place(then.verdict) > place(now.verdict))
        .map(|(now, then)| (now.path, now.verdict, then.verdict))
        .collect()
}

/// Verdict of a requirement on a sheet on which the parts are written.
fn holds(text: &str, now: &Assessment, assessed: &Assessment, cents: i64, grams: i64) -> bool {
    if text == "no finding worse" {
        return worse(now, assessed).is_empty();
    }
    let terms: Vec<&str> = text.split("<=").flat_map(|term| term.split(">=")).map(str::trim).collect();
    let number = |text: &str| text.split(' ').next().unwrap().parse::<f64>().unwrap();
    match terms[0] {
        "cost" => return cents <= (number(terms[1]) * 100.0).round() as i64,
        "mass" => return grams <= (number(terms[1]) * 1000.0).round() as i64,
        "margins" => {
            let ratios = assessed.answers().iter().filter(|answer| answer.form == "ratio");
            // What a rule lacks counts as not held; what nothing computes is not asked.
            let asked = ratios.filter(|answer| {
                let missing = assessed.missing(answer);
                missing.needs.is_empty() || !missing.refused.is_empty()
            });
            return asked.fold(true, |all, answer| all & (answer.margin >= number(terms[1])));
        }
        _ => {}
    }
    if let Some((path, word)) = text.split_once(".verdict = ") {
        let verdict = assessed.answer(path).unwrap().verdict;
        return verdict == Verdict::Meets || (word == "tight" && verdict == Verdict::Tight);
    }
    let si = |text: &str, kind| axlewright::base::text::value_as(text, kind).unwrap();
    let output = *terms.iter().find(|term| term.starts_with(|c: char| c.is_ascii_lowercase())).unwrap();
    let (value, kind) = match output.strip_suffix(".margin") {
        Some(path) => assessed.answer(path).map(|answer| (answer.margin, answer.margin_kind)).unwrap(),
        None => {
            let lines = axlewright::sheet::lines().find(|(_, path, _)| path == output).unwrap();
            let axlewright::base::section::Content::Quantity(kind) = lines.2.content else {
                panic!("{output}")
            };
            (assessed.value(output).unwrap().unwrap_or(f64::NAN), kind)
        }
    };
    let at_most = !text.contains(">=");
    match terms[..] {
        [low, _, high] => value >= si(low, kind) && value <= si(high, kind),
        [left, right] => {
            let (bound, is_high) = if left == output { (right, at_most) } else { (left, !at_most) };
            if is_high { value <= si(bound, kind) } else { value >= si(bound, kind) }
        }
        _ => panic!("{text}"),
    }
}

/// One part, or none, of each list of places; the same places in any order.
fn parts_of(choices: &[Choice]) -> BTreeSet<Vec<usize>> {
    choices.iter().map(|choice| choice.parts.clone()).collect()
}

#[test]
fn choosing_finds_what_brute_force_finds() {
    let sheet = van();
    let now = sheet.assess();
    let mut random = Random::of("choose");
    let (mut empty, mut tied, mut limited, mut lacking) = (0, 0, 0, 0);
    for number in 0..LISTS {
        let (Priced { list, cents, grams }, all) = loop {
            let priced = priced(&mut random);
            let all = combinations(&priced.list);
            if all.len() <= MOST {
                break (priced, all);
            }
        };
        let sum = |of: &[i64], parts: &[usize]| parts.iter().map(|part| of[*part]).sum::<i64>();
        let mut texts: Vec<String> = vec![];
        for _ in 0..random.below(5) {
            texts.push((*random.of_these(ASKED)).to_owned());
        }
        // Limits that some combination meets exactly.
        if random.once_in(2) {
            let at = sum(&cents, random.of_these::<Vec<usize>>(&all));
            texts.push(format!("cost <= {}.{:02}", at / 100, at % 100));
        }
        if random.once_in(2) {
            let at = sum(&grams, random.of_these::<Vec<usize>>(&all));
            texts.push(format!("mass <= {}.{:03} kg", at / 1000, at % 1000));
        }
        random.shuffle(&mut texts);
        let requirements: Vec<Requirement> =
            texts.iter().map(|text| Requirement::parse(text).unwrap()).collect();
        let outcome = choose(&sheet, &list, &requirements, usize::MAX, &mut |_| true);

        let feasible: BTreeSet<Vec<usize>> = all
            .iter()
            .filter(|parts| {
                let with = with_parts(&sheet, &list, parts);
                let (cents, grams) = (sum(&cents, parts), sum(&grams, parts));
                let assessed = with.assess();
                texts.iter().all(|text| holds(text, &now, &assessed, cents, grams))
            })
            .cloned()
            .collect();
        let what = format!("list {number}, {texts:?}");
        let chosen: Chosen = match outcome {
            Ok(chosen) => chosen,
            Err(error) => {
                // What no part changes is refused as a whole, and what is not known of any part that is chosen.
                let error = error.to_string();
                let void = VOID.iter().flat_map(|(_, paths)| *paths);
                let lacks =
                    void.filter(|path| error.contains(&format!("cannot be decided: it needs {path}")));
                lacking += usize::from(lacks.count() > 0);
                assert!(
                    error.contains("no part of the list can mend this")
                        || error.contains("cannot be decided"),
                    "{what}: {error}"
                );
                assert!(feasible.is_empty(), "{what}: {error}, but {feasible:?}");
                continue;
            }
        };
        assert_eq!(parts_of(&chosen.feasible), feasible, "{what}");
        let kinds: BTreeSet<&str> = list.parts.iter().map(|part| part.kind.as_str()).collect();
        let void = VOID.iter().filter(|(kind, _)| kinds.contains(kind)).flat_map(|(_, paths)| *paths);
        let written =
            |path: &str| list.parts.iter().any(|part| part.lines.iter().any(|(line, _)| line == path));
        let void = void.filter(|path| !written(path));
        assert_eq!(chosen.dropped.iter().collect::<BTreeSet<_>>(), void.collect(), "{what}");
        assert_eq!(chosen.feasible.len(), feasible.len(), "{what}: none twice");
        assert!(!chosen.more, "{what}");
        for choice in chosen.feasible.iter().chain(&chosen.front) {
            let exact =
                (sum(&cents, &choice.parts) as f64 / 100.0, sum(&grams, &choice.parts) as f64 / 1000.0);
            assert!(
                (choice.cost - exact.0).abs() < 1e-6 && (choice.mass.si() - exact.1).abs() < 1e-6,
                "{what}"
            );
        }

        // The front as pairs of sums: of equals it holds one.
        let points: BTreeSet<(i64, i64)> =
            feasible.iter().map(|parts| (sum(&cents, parts), sum(&grams, parts))).collect();
        let beaten =
            |of: &(i64, i64)| points.iter().any(|other| other != of && other.0 <= of.0 && other.1 <= of.1);
        let front: Vec<(i64, i64)> = points.iter().filter(|point| !beaten(point)).copied().collect();
        let found: Vec<(i64, i64)> = chosen
            .front
            .iter()
            .map(|choice| (sum(&cents, &choice.parts), sum(&grams, &choice.parts)))
            .collect();
        assert_eq!(found, front, "{what}");
        assert!(parts_of(&chosen.front).is_subset(&feasible), "{what}");
        let pair = |choice: &Option<Choice>| {
            choice.as_ref().map(|choice| (sum(&cents, &choice.parts), sum(&grams, &choice.parts)))
        };
        assert_eq!(pair(&chosen.cheapest), points.iter().min().copied(), "{what}");
        assert_eq!(
            pair(&chosen.lightest),
            points.iter().min_by_key(|(cost, mass)| (*mass, *cost)).copied(),
            "{what}"
        );

        let standing: BTreeSet<usize> = feasible.iter().flatten().copied().collect();
        let rejected: BTreeSet<usize> = chosen.rejected.iter().map(|(part, _)| *part).collect();
        let others: BTreeSet<usize> = (0..list.parts.len()).filter(|part| !standing.contains(part)).collect();
        assert_eq!(rejected, others, "{what}");
        assert!(chosen.rejected.iter().all(|(_, why)| !why.is_empty()), "{what}");
        empty += usize::from(feasible.is_empty());
        tied += usize::from(points.len() < feasible.len());
        limited += usize::from(feasible.len() > 1 && feasible.len() < all.len());
        for choice in chosen.feasible.iter().take(4).chain(&chosen.front) {
            let then = with_parts(&sheet, &list, &choice.parts).assess();
            let found: Vec<(&str, Verdict, Verdict)> =
                choice.worse.iter().map(|one| (one.finding, one.now, one.then)).collect();
            assert_eq!(found, worse(&now, &then), "{what}");
        }
        // A shorter list of combinations is the beginning of nothing else.
        if feasible.len() > 1 {
            let short = choose(&sheet, &list, &requirements, 1, &mut |_| true).unwrap();
            assert!(
                short.more && short.feasible.len() == 1 && feasible.contains(&short.feasible[0].parts),
                "{what}"
            );
            assert_eq!(short.front, chosen.front, "{what}");
        }
    }
    assert!(empty >= 10 && tied >= 10 && limited >= 30 && lacking >= 3, "{empty} {tied} {limited} {lacking}");
}

/// Each requirement binds three kinds at most, so that few of the combinations are computed; the seconds are the bench's.
#[test]
fn ten_kinds_of_eight_parts_are_chosen_without_multiplying_them() {
    let sheet = van();
    let (list, requirements) = ten_kinds_of_eight_parts().unwrap();
    let chosen = choose(&sheet, &list, &requirements, 1000, &mut |_| true).unwrap();
    assert!(chosen.evaluated < 10_000, "{}", chosen.evaluated);
    assert!(chosen.feasible.len() == 1000 && chosen.more);
    // What it names meets every requirement.
    for choice in
        chosen.front.iter().chain(&chosen.cheapest).chain(&chosen.lightest).chain(&chosen.feasible[..20])
    {
        let with = with_parts(&sheet, &list, &choice.parts);
        let mut fitted = sheet.clone();
        chosen.fit(choice, &list, &mut fitted).unwrap();
        let lines = |of: &Sheet| -> Vec<_> {
            of.paths().map(|path| (path.to_owned(), of.get(path).unwrap())).collect()
        };
        assert_eq!(lines(&fitted), lines(&with));
        let (cost, mass) = (choice.cost, choice.mass.si());
        for requirement in &requirements {
            let assessed = with.assess();
            let whole = |of: f64, times: f64| (of * times).round() as i64;
            assert!(
                holds(requirement.text(), &assessed, &assessed, whole(cost, 100.0), whole(mass, 1000.0)),
                "{requirement:?}"
            );
        }
    }
    assert_eq!(chosen.front.first(), chosen.cheapest.as_ref());
    assert_eq!(chosen.front.last(), chosen.lightest.as_ref());
}

/// Kinds of two parts each: the second is dearer by a power of two and lighter by another, so that no combination is better than another.
fn even(kinds: u32, lighter: bool) -> PriceList {
    let mut text = "part,kind,cost,mass\n".to_owned();
    for kind in 0..kinds {
        let (cost, mass) = (1_u64 << kind, 1_u64 << kind);
        let light = if lighter { 0 } else { mass };
        text += &format!("plain {kind},{kind},0,{mass} g\nlight {kind},{kind},{cost},{light} g\n");
    }
    PriceList::from_csv(&text).unwrap()
}

/// 2^30 combinations on one front would take a hundred gigabytes; 2^22 of them in a list, gigabytes.
#[test]
fn more_combinations_than_memory_holds_are_refused() {
    let sheet = Sheet::new("");
    let chosen = choose(&sheet, &even(12, true), &[], usize::MAX, &mut |_| true).unwrap();
    assert_eq!((chosen.front.len(), chosen.feasible.len(), chosen.more), (4096, 4096, false));
    let why = choose(&sheet, &even(30, true), &[], 10, &mut |_| true).unwrap_err().to_string();
    assert!(why.starts_with("too many combinations are neither dearer nor heavier"), "{why}");
    let list = even(22, false);
    let few = choose(&sheet, &list, &[], 10, &mut |_| true).unwrap();
    assert_eq!((few.front.len(), few.feasible.len(), few.more), (1, 10, true));
    let why = choose(&sheet, &list, &[], MOST_CHOICES + 1, &mut |_| true).unwrap_err().to_string();
    assert!(
        why.starts_with("limit = 1000001: more than 1000000 combinations meet the requirements"),
        "{why}"
    );
}

#[test]
fn a_line_by_two_names_and_a_part_without_its_mass_are_refused() {
    let list =
        |head: &str, row: &str| PriceList::from_csv(&format!("{head}\n{row}\n")).map(|list| list.parts.len());
    let whole = "part,kind,cost,mass,front.spring.rate";
    assert_eq!(list(whole, "soft,spring,90,4 kg,22 N/mm"), Ok(1));
    for (head, row, message) in [
        (
            "part,kind,cost,front.spring.rate,front.spring.rate",
            "soft,spring,90,22 N/mm,30 N/mm",
            "there twice",
        ),
        (
            "part,kind,cost,use.greatest_speed,use.peak_speed",
            "road,use,0,80 km/h,140 km/h",
            "by another name",
        ),
        (whole, "soft,spring,90,4 kg,22 N/mm\nlight,spring,95,,30 N/mm", "either every part"),
        (whole, "light,spring,95,,30 N/mm\nsoft,spring,90,4 kg,22 N/mm", "either every part"),
    ] {
        let refused = list(head, row).unwrap_err().to_string();
        assert!(refused.contains(message), "{refused}");
    }
    let nested = "[[parts]]\npart = \"road\"\nkind = \"use\"\ncost = 0\nuse.greatest_speed = \"80 km/h\"\nuse.peak_speed = \"140 km/h\"\n";
    assert!(PriceList::from_text(nested).unwrap_err().to_string().contains("by another name"));
    // Without any mass nothing can be required of it.
    let list = PriceList::from_csv("part,kind,cost,front.spring.rate\nsoft,spring,90,22 N/mm\n").unwrap();
    let light = Requirement::parse("mass <= 5 kg").unwrap();
    let refused = choose(&Sheet::new(""), &list, &[light], 10, &mut |_| true).unwrap_err().to_string();
    assert!(refused.contains("no part of the list has a mass"), "{refused}");
}
