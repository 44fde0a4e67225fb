//! A sweep equals `set` and `assess`, row by row and bit for bit: any lines, any order of rows, any threads.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use axlewright::Table;
use axlewright::base::table::Values;
use axlewright::sheet::{Axis, Sheet, WhatIf};
use axlewright_tests::catalogue::Random;
use axlewright_tests::sheets::{DUNLIN, kind, text, writable};
use std::ops::Range;

fn dunlin() -> Sheet {
    Sheet::from_text(DUNLIN).unwrap()
}

fn rows(of: &WhatIf, range: Range<usize>, threads: usize) -> Table {
    of.table(range, Some(threads), &mut |_| true).unwrap().unwrap()
}

/// A table as bits, so that NaN equals NaN.
fn bits(of: &Table) -> Vec<(String, Vec<u64>)> {
    let columns = of.columns().iter();
    columns
        .map(|column| {
            let bits = match &column.values {
                Values::F64(values) => values.iter().map(|value| value.to_bits()).collect(),
                Values::Category { codes, .. } => codes.iter().map(|code| *code as u64).collect(),
                Values::I64(values) => values.iter().map(|value| *value as u64).collect(),
            };
            (column.name.to_string(), bits)
        })
        .collect()
}

/// Lines that change together, and the texts to which they change.
type Texts = (Vec<String>, Vec<Vec<String>>);

/// A row by `set` and `assess` equals the row of the table.
fn same_as_set(
    sheet: &Sheet,
    axes: &[Texts],
    places: &[usize],
    outputs: &[String],
    (table, dropped): (&Table, &[&str]),
    row: usize,
) {
    let mut with = sheet.clone();
    dropped.iter().for_each(|path| with.remove(path).unwrap());
    for ((paths, texts), place) in axes.iter().zip(places) {
        for (path, text) in paths.iter().zip(&texts[*place]) {
            with.set(path, text).unwrap_or_else(|error| panic!("{path} = {text}: {error}"));
        }
    }
    let assessed = with.assess();
    for output in outputs {
        let what = || {
            format!(
                "row {row}, {output}, {:?}",
                axes.iter().zip(places).map(|((paths, texts), at)| (paths, &texts[*at])).collect::<Vec<_>>()
            )
        };
        let finding = output.rsplit_once('.').and_then(|(path, last)| Some((assessed.answer(path)?, last)));
        let expected = match finding {
            Some((answer, "verdict")) => {
                assert_eq!(table.word(output, row), Some(answer.verdict.word()), "{}", what());
                continue;
            }
            Some((answer, "margin")) => answer.margin,
            Some((answer, "value")) => answer.value,
            _ => assessed.value(output).unwrap().unwrap_or(f64::NAN),
        };
        let found = table.numbers(output).unwrap()[row];
        assert!(
            found.to_bits() == expected.to_bits() || (found.is_nan() && expected.is_nan()),
            "{}: {found} {expected}",
            what()
        );
    }
}

/// Any output: every line that is a quantity, and three of every finding.
fn all_outputs() -> Vec<String> {
    let lines =
        axlewright::sheet::lines().filter(|(_, path, line)| kind(line).is_some() && !path.contains("[]"));
    let findings = axlewright::sheet::findings()
        .flat_map(|(_, path, _)| ["value", "margin", "verdict"].map(|last| format!("{path}.{last}")));
    lines.map(|(_, path, _)| path).chain(findings).collect()
}

fn axis(texts: &Texts) -> Axis {
    let paths: Vec<&str> = texts.0.iter().map(String::as_str).collect();
    let rows: Vec<Vec<&str>> = texts.1.iter().map(|row| row.iter().map(String::as_str).collect()).collect();
    Axis::entries(&paths, &rows).unwrap()
}

#[test]
fn random_sweeps_equal_set_and_assess() {
    let mut random = Random::of("what-if");
    let all = writable();
    let outputs = all_outputs();
    for sweep in 0..120 {
        // Now and then from a sheet on which little is written.
        let mut sheet = dunlin();
        if random.once_in(2) {
            for path in sheet.paths().collect::<Vec<_>>().into_iter().rev() {
                if !random.once_in(3) && !path.contains('[') {
                    sheet.remove(path).unwrap();
                }
            }
        }
        let written: Vec<String> = sheet.paths().map(str::to_owned).collect();
        let mut paths: Vec<usize> = (0..all.len()).collect();
        random.shuffle(&mut paths);
        // Choices and markings are few among the lines, and matter most; a place of a list is one that is written.
        paths.retain(|at| !all[*at].0.contains('[') || written.contains(&all[*at].0));
        paths.sort_by_cached_key(|at| kind(all[*at].1).is_some() && !random.once_in(20));
        let mut take = paths.into_iter();
        let side_by_side = random.once_in(3);
        let length = 1 + random.below(7);
        let axes: Vec<Texts> = (0..1 + random.below(3))
            .map(|_| {
                let of: Vec<usize> = take.by_ref().take(1 + random.below(3)).collect();
                let count = if side_by_side { length } else { 1 + random.below(6) };
                let row = |random: &mut Random| of.iter().map(|at| text(all[*at].1, random)).collect();
                (
                    of.iter().map(|at| all[*at].0.clone()).collect(),
                    (0..count).map(|_| row(&mut random)).collect(),
                )
            })
            .collect();
        let chosen: Vec<String> = (0..12).map(|_| random.of_these::<String>(&outputs).clone()).collect();
        let mut chosen = chosen;
        chosen.sort();
        chosen.dedup();
        let names: Vec<&str> = chosen.iter().map(String::as_str).collect();
        let sweep_of = sheet.what_if(axes.iter().map(axis).collect(), side_by_side, &names).unwrap();
        let table = sweep_of.whole().unwrap();
        let count = if side_by_side { length } else { axes.iter().map(|(_, rows)| rows.len()).product() };
        assert_eq!((sweep_of.rows(), table.rows()), (count, count), "sweep {sweep}");
        let some = (0..count.min(12)).map(|_| random.below(count)).collect::<Vec<_>>();
        for row in some {
            let mut rest = row;
            let mut places = vec![row; axes.len()];
            if !side_by_side {
                // The last axis is the fastest.
                for at in (0..axes.len()).rev() {
                    places[at] = rest % axes[at].1.len();
                    rest /= axes[at].1.len();
                }
            }
            same_as_set(&sheet, &axes, &places, &chosen, (&table, sweep_of.dropped()), row);
        }
    }
}

/// Four lines over many values: blocks, threads and pieces.
fn large() -> (Vec<Texts>, WhatIf, Vec<String>) {
    let span = |path: &str, from: f64, step: f64, unit: &str, count: usize| -> Texts {
        (
            vec![path.to_owned()],
            (0..count).map(|at| vec![format!("{} {unit}", from + step * at as f64)]).collect(),
        )
    };
    let axes = vec![
        span("front.spring.rate", 400.0, 15.0, "lbf/in", 9),
        (
            vec!["rear.tyre.size".to_owned(), "rear.tyre.effective_radius".to_owned()],
            ["215/65R16 340", "235/70R16 352", "245/75R16 372"]
                .iter()
                .map(|entry| {
                    entry.split(' ').zip(["", " mm"]).map(|(text, unit)| format!("{text}{unit}")).collect()
                })
                .collect(),
        ),
        (
            vec!["gearbox.rating_kind".to_owned()],
            ["continuous", "peak", "yield"].map(|word| vec![word.to_owned()]).to_vec(),
        ),
        span("front.damper.stroke", 70.0, 1.0, "mm", 67),
    ];
    let outputs: Vec<String> = all_outputs()
        .into_iter()
        .filter(|path| {
            path.ends_with(".margin")
                || path.ends_with(".verdict")
                || path.contains("bump")
                || path.contains("tyre")
        })
        .collect();
    let names: Vec<&str> = outputs.iter().map(String::as_str).collect();
    let sweep = dunlin().what_if(axes.iter().map(axis).collect(), false, &names).unwrap();
    assert_eq!(sweep.rows(), 9 * 3 * 3 * 67);
    (axes, sweep, outputs)
}

#[test]
fn a_large_sweep_is_the_same_on_any_threads_in_any_pieces_and_row_by_row() {
    let (axes, sweep, outputs) = large();
    let whole = rows(&sweep, 0..sweep.rows(), 1);
    assert!(whole.refused().is_empty());
    let expected = bits(&whole);
    for threads in [2, 5, 64] {
        assert_eq!(bits(&rows(&sweep, 0..sweep.rows(), threads)), expected, "{threads} threads");
    }
    let mut random = Random::of("pieces");
    for _ in 0..40 {
        let start = random.below(sweep.rows());
        let end = (start + *random.of_these(&[0, 1, 2, 1023, 1024, 1025, 6151])).min(sweep.rows());
        let piece = bits(&rows(&sweep, start..end, *random.of_these(&[1, 2, 5])));
        for ((name, piece), (_, whole)) in piece.iter().zip(&expected) {
            assert_eq!(piece[..], whole[start..end], "{name}, rows {start}..{end}");
        }
    }
    for _ in 0..250 {
        let row = random.below(sweep.rows());
        let places = [row / (67 * 9), row / (67 * 3) % 3, row / 67 % 3, row % 67];
        same_as_set(&dunlin(), &axes, &places, &outputs, (&whole, sweep.dropped()), row);
    }
    assert!(sweep.table(0..sweep.rows() + 1, None, &mut |_| true).is_err());
}

/// An hour of work, positions of a linkage: it cannot be over before it is asked.
fn long() -> WhatIf {
    let measured = Sheet::from_text(include_str!("../../examples/sheets/dunlin_measured.toml")).unwrap();
    let axes = vec![
        Axis::range("front.tie_rod.inner.y", "350 mm", "360 mm", 6000).unwrap(),
        Axis::range("front.tie_rod.inner.z", "295 mm", "305 mm", 5000).unwrap(),
    ];
    measured.what_if(axes, false, &["front.bump_steer_band.verdict"]).unwrap()
}

#[test]
fn a_sweep_stops_when_it_is_told_to() {
    let sweep = long();
    for threads in [1, 3] {
        let mut told = Vec::new();
        let stopped = sweep.table(0..sweep.rows(), Some(threads), &mut |done| {
            told.push(done);
            false
        });
        assert_eq!(stopped.unwrap(), None);
        assert!(told.len() == 1 && told[0] < sweep.rows(), "{told:?}");
    }
}

#[test]
fn a_sweep_tells_how_far_it_is() {
    let (_, sweep, _) = large();
    // More rows than are worth a thread, and so few that the workers may be done before the first question.
    for rows in [5000, sweep.rows()] {
        for threads in [1, 3] {
            let mut told = Vec::new();
            let through = sweep.table(0..rows, Some(threads), &mut |done| {
                told.push(done);
                true
            });
            assert_eq!(through.unwrap().unwrap().rows(), rows);
            assert!(told.windows(2).all(|pair| pair[0] <= pair[1]) && *told.last().unwrap() <= rows);
        }
    }
}

#[test]
fn an_axis_may_have_one_value_or_none() {
    let one = Axis::texts("front.spring.rate", &["500 lbf/in"]).unwrap();
    let none = Axis::texts("rear.spring.rate", &[]).unwrap();
    assert!(none.is_empty() && one.len() == 1);
    let sheet = dunlin();
    let only = sheet.what_if(vec![one.clone()], false, &[]).unwrap().whole().unwrap();
    let texts = (vec!["front.spring.rate".to_owned()], vec![vec!["500 lbf/in".to_owned()]]);
    let outputs: Vec<String> = only
        .columns()
        .iter()
        .map(|column| column.name.to_string())
        .filter(|name| name != "front.spring.rate")
        .collect();
    assert!(only.rows() == 1 && outputs.len() == 2 * axlewright::sheet::findings().count());
    same_as_set(&sheet, &[texts], &[0], &outputs, (&only, &[]), 0);
    let empty = sheet.what_if(vec![one.clone(), none.clone()], false, &["front.bump.margin"]).unwrap();
    let table = empty.whole().unwrap();
    assert_eq!((empty.rows(), table.rows(), table.columns().len()), (0, 0, 3));
    assert!(sheet.what_if(vec![one.clone(), none], true, &[]).is_err());
    // A place of a list that `set` would refuse is refused, unless another axis writes the one before it.
    let place = |at: usize| Axis::texts(&format!("gearbox.ratios[{at}]"), &[["0.8", "0.7"][at - 6]]).unwrap();
    let gap = sheet.what_if(vec![place(7)], false, &[]).err().unwrap().to_string();
    assert!(gap.contains("gearbox.ratios[6] is not written"), "{gap}");
    let both =
        sheet.what_if(vec![place(7), place(6)], false, &["gearbox.top_ratio"]).unwrap().whole().unwrap();
    assert_eq!(both.numbers("gearbox.top_ratio").unwrap(), &[0.7]);
    // Without an axis the sheet itself is the only row.
    let still = sheet.what_if(vec![], false, &["front.bump.margin"]).unwrap().whole().unwrap();
    assert_eq!(
        still.numbers("front.bump.margin").unwrap(),
        &[sheet.assess().answer("front.bump").unwrap().margin]
    );
    let twice = sheet.what_if(vec![one.clone(), one], false, &[]).err().unwrap().to_string();
    assert!(twice.contains("front.spring.rate") && twice.contains("two axes"), "{twice}");
}

#[test]
fn a_value_that_the_line_does_not_allow_refuses_its_rows_and_no_other() {
    let sheet = dunlin();
    let values = [0.185, f64::NAN, -0.01, 200.0, 0.150, f64::INFINITY];
    // A bump stop may be missing: a refused one is not the same as none.
    let stops = Axis::numbers("front.bump_stop_travel", &values).unwrap();
    let strokes = Axis::numbers("front.damper.stroke", &[0.11, 101.0, 0.12]).unwrap();
    let sweep = sheet
        .what_if(
            vec![stops, strokes],
            false,
            &["front.bump_remaining", "front.bump.verdict", "front.coil_bind.margin"],
        )
        .unwrap();
    let table = sweep.whole().unwrap();
    for row in 0..18 {
        let (stop, stroke) = (values[row / 3], [0.11, 101.0, 0.12][row % 3]);
        let allowed = stop > 0.0 && stop <= 100.0 && stroke <= 100.0;
        assert_eq!(table.numbers("front.bump_stop_travel").unwrap()[row].to_bits(), stop.to_bits());
        assert_eq!(table.reason(row).is_none(), allowed, "row {row}");
        let mut with = sheet.clone();
        let set = with
            .set("front.bump_stop_travel", &format!("{stop} m"))
            .and_then(|()| with.set("front.damper.stroke", &format!("{stroke} m")));
        assert_eq!(set.is_ok(), allowed, "row {row}");
        let remaining = table.numbers("front.bump_remaining").unwrap()[row];
        let bind = table.numbers("front.coil_bind.margin").unwrap()[row];
        if allowed {
            let assessed = with.assess();
            assert_eq!(
                remaining.to_bits(),
                assessed.value("front.bump_remaining").unwrap().unwrap().to_bits(),
                "row {row}"
            );
            assert_eq!(
                bind.to_bits(),
                assessed.answer("front.coil_bind").unwrap().margin.to_bits(),
                "row {row}"
            );
        } else {
            // The coils do not ask for the stop.
            assert!(remaining.is_nan(), "row {row}: {remaining} beside {:?}", table.reason(row));
            assert_eq!(bind.is_nan(), stroke > 100.0, "row {row}");
            assert_eq!(table.word("front.bump.verdict", row), Some("not known"), "row {row}");
        }
    }
    let reason = table.reason(1).unwrap().to_string();
    assert!(
        reason.contains("front.damper.stroke") && reason.contains("101000 mm") && reason.contains("valid"),
        "{reason}"
    );
    assert!(table.reason(6).unwrap().to_string().contains("front.bump_stop_travel"));
    // A call that is refused: no curve falls back, and the outputs that do not rest on it keep their values.
    let speeds = Axis::texts("engine.curve[0].engine_speed", &["1000 rpm", "1400 rpm"]).unwrap();
    let table = sheet
        .what_if(vec![speeds], false, &["engine.peak_torque", "front.bump.margin"])
        .unwrap()
        .whole()
        .unwrap();
    assert!(table.reason(0).is_none() && table.reason(1).is_some());
    assert!(table.numbers("engine.peak_torque").unwrap()[1].is_nan());
    assert!(!table.numbers("front.bump.margin").unwrap()[1].is_nan());
}

#[test]
fn what_is_known_in_no_row_says_what_it_needs() {
    let mut sheet = dunlin();
    sheet.remove("front.spring.rate").unwrap();
    let axis = Axis::range("front.damper.rate", "5 N·s/mm", "9 N·s/mm", 5).unwrap();
    let sweep = sheet.what_if(vec![axis], false, &["front.damping.verdict", "rear.damping.verdict"]).unwrap();
    let [(name, why)] = sweep.not_known() else { panic!("{:?}", sweep.not_known()) };
    assert_eq!(name, "front.damping.verdict");
    assert!(why.contains("needs front.spring.rate"), "{why}");
    let table = sweep.whole().unwrap();
    assert!((0..5).all(|row| table.word("front.damping.verdict", row) == Some("not known")));
    // The ends of a range are the texts themselves, to the bit.
    let rates = table.numbers("front.damper.rate").unwrap();
    assert_eq!((rates[0], rates[2], rates[4]), (5000.0, 7000.0, 9000.0));
    for (wrong, say) in [
        ("front.damper.rat", "front.damper.rate"),
        ("front.bump.margn", "front.bump.margin"),
        ("gearbox.rating_kind", "no quantity"),
    ] {
        let error = sheet.what_if(vec![], false, &[wrong]).err().unwrap().to_string();
        assert!(error.contains(wrong) && error.contains(say), "{error}");
    }
}

/// A range takes no memory, however long it is: only the rows that are asked for are computed.
#[test]
fn a_range_is_computed_row_by_row() {
    const LONG: usize = 1_000_000_000_000_000_000;
    let sheet = dunlin();
    let long = Axis::range("front.tyre.rate", "200 N/mm", "250 N/mm", LONG).unwrap();
    let of = sheet.what_if(vec![long], false, &["front.ride_rate"]).unwrap();
    assert_eq!(of.rows(), LONG);
    for from in [0, LONG / 2, LONG - 3] {
        let table = rows(&of, from..from + 3, 1);
        for (row, value) in table.numbers("front.tyre.rate").unwrap().iter().enumerate() {
            let wanted = 2e5 + 5e4 * ((from + row) as f64 / (LONG - 1) as f64);
            assert_eq!(value.to_bits(), wanted.to_bits(), "{}", from + row);
        }
    }
    assert_eq!(rows(&of, LONG - 3..LONG, 1).numbers("front.tyre.rate").unwrap()[2], 25e4);

    // Beside the same numbers one by one, in a grid and side by side, up and down, across blocks.
    let (count, from, to) = (4999, 2e5, 3e5 / 7.0);
    let ends = [format!("{from} N/m"), format!("{to} N/m")];
    let number = |at: usize| {
        if at + 1 == count { to } else { from + (to - from) * (at as f64 / (count - 1) as f64) }
    };
    let numbers: Vec<f64> = (0..count).map(number).collect();
    let one_by_one = || Axis::numbers("front.tyre.rate", &numbers).unwrap();
    let range = || Axis::range("front.tyre.rate", &ends[0], &ends[1], count).unwrap();
    let other = || Axis::texts("front.spring.motion_ratio", &["0.55", "0.6", "0.65"]).unwrap();
    let outputs = ["front.ride_rate", "front.frequency.verdict"];
    for axes in [
        [vec![range()], vec![one_by_one()]],
        [vec![range(), other()], vec![one_by_one(), other()]],
        [vec![other(), range()], vec![other(), one_by_one()]],
    ] {
        let [range, listed] = axes.map(|axes| sheet.what_if(axes, false, &outputs).unwrap());
        for part in [0..range.rows(), 777..777 + 2500] {
            assert_eq!(bits(&rows(&range, part.clone(), 2)), bits(&rows(&listed, part, 1)));
        }
    }
    let masses = || Axis::range("front.sprung_mass", "300 kg", "400 kg", count).unwrap();
    let [range, listed] =
        [range(), one_by_one()].map(|axis| sheet.what_if(vec![axis, masses()], true, &outputs).unwrap());
    assert_eq!(bits(&range.whole().unwrap()), bits(&listed.whole().unwrap()));
}

/// Two columns of 8 bytes: 16 GB are refused before they are allocated, with the way to the rows.
#[test]
fn a_table_that_is_too_large_is_refused_with_the_way_to_its_rows() {
    let sheet = dunlin();
    let span = |count| Axis::range("front.tyre.rate", "200 N/mm", "250 N/mm", count).unwrap();
    let of = sheet.what_if(vec![span(1_000_000_000)], false, &["front.ride_rate"]).unwrap();
    let refusal = of.whole().unwrap_err().to_string();
    assert!(
        refusal.starts_with(
            "a table of 1000000000 rows of 16 bytes each takes 14.9 GiB, and one table at most 4 GiB: "
        ) && refusal.contains("`WhatIf::table`")
            && refusal.contains("`batches`"),
        "{refusal}"
    );
    for side_by_side in [false, true] {
        let all = sheet.what_if(vec![span(usize::MAX)], side_by_side, &[]);
        assert!(all.err().unwrap().to_string().contains("more rows than a machine can count"));
    }
}
