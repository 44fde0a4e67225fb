use super::*;
use crate::units::{Length, Quantity, Ratio, mm};
use crate::{Error, cannot};

record! {
    /// A joint of a linkage.
    #[derive(Debug, Clone, PartialEq)]
    struct Joint {
        rise: Length,
        turn: i64,
        name: String,
    }
    lent Seen<'a>;
    each joint;
}

record! {
    /// A joint held against a limit.
    #[derive(Debug, Clone, PartialEq)]
    struct Held {
        rise: Length,
        bound: String,
    }
}

/// Rows of two blocks and a few more, every seventh of them refused.
const ROWS: usize = 67;

fn too_far(row: usize) -> Error {
    cannot!("row {row} is too far")
}

fn seen(row: usize) -> crate::Result<Seen<'static>> {
    let name = if row < 40 { "upper" } else { "lower" };
    let found = Seen { rise: Length::of::<mm>(-0.5 * row as f64), turn: row as i64, name };
    if row % 7 == 3 { Err(too_far(row)) } else { Ok(found) }
}

fn filled<R: Record>(row: impl Fn(usize) -> crate::Result<R>) -> Table {
    let mut rows = Filling::over(["state", "travel"], &[ROWS]).unwrap();
    for place in 0..ROWS {
        rows.push(("before", Length::from_si(place as f64)), row(place)).unwrap();
    }
    rows.finish().unwrap()
}

#[test]
fn rows_stand_in_order_across_blocks_and_refusals() {
    let table = filled(seen);
    let names: Vec<&str> = table.columns().iter().map(|column| &*column.name).collect();
    assert_eq!(names, ["state", "travel", "rise", "turn", "name"]);
    let kinds: Vec<_> = table.columns().iter().map(|column| column.kind).collect();
    assert_eq!(kinds, [None, Some(Length::KIND), Some(Length::KIND), None, None]);
    let Some(Values::I64(turns)) = table.column("turn").map(|column| &column.values) else { panic!("turn") };
    assert_eq!((table.rows(), turns.len()), (ROWS, ROWS));
    for (row, turn) in turns.iter().enumerate() {
        assert_eq!(
            (table.word("state", row), table.numbers("travel").unwrap()[row]),
            (Some("before"), row as f64)
        );
        let rise = table.numbers("rise").unwrap()[row];
        match seen(row) {
            Ok(on) => {
                assert_eq!((rise, *turn, table.word("name", row)), (on.rise.si(), on.turn, Some(on.name)));
                assert_eq!(table.reason(row), None);
            }
            Err(reason) => {
                assert!(rise.is_nan());
                assert_eq!((*turn, table.word("name", row)), (0, None));
                assert_eq!(table.reason(row), Some(&reason));
            }
        }
    }
    assert_eq!(table.refused().len(), (0..ROWS).filter(|row| row % 7 == 3).count());
}

/// Difference between a row and that of another table with the same columns, with numbers compared bit by bit.
pub(crate) fn difference(one: (&Table, usize), other: (&Table, usize)) -> Option<String> {
    let [(one, at), (other, place)] = [one, other];
    let cell = |column: &Column, row: usize| match &column.values {
        Values::F64(numbers) if numbers[row].is_nan() => "not known".to_owned(),
        Values::F64(numbers) => format!("{:?} ({:016x})", numbers[row], numbers[row].to_bits()),
        Values::I64(numbers) => numbers[row].to_string(),
        Values::Category { codes, labels } => {
            format!("{:?}", usize::try_from(codes[row]).ok().map(|code| &labels[code]))
        }
    };
    let columns = one.columns().iter().zip(other.columns()).find_map(|(one, other)| {
        let [found, wanted] = [cell(one, at), cell(other, place)];
        let same = (&one.name, one.kind, &found) == (&other.name, other.kind, &wanted);
        (!same).then(|| format!("{} {found}, {} {wanted}", one.name, other.name))
    });
    let [found, wanted] = [one.columns().len(), other.columns().len()];
    let count = (found != wanted).then(|| format!("{found} columns, {wanted} columns"));
    let [found, wanted] = [one.reason(at), other.reason(place)].map(|reason| reason.map(Error::to_string));
    let reason = (found != wanted).then(|| format!("{found:?}, {wanted:?}"));
    columns.or(count).or(reason)
}

/// The row that a result makes alone.
pub(crate) fn alone<I: Inputs, R: Record>(names: I::Names, inputs: I, results: crate::Result<R>) -> Table {
    let mut rows = Filling::over(names, &[1]).unwrap();
    rows.push(inputs, results).unwrap();
    rows.finish().unwrap()
}

#[test]
fn a_lent_record_gives_the_rows_of_its_own() {
    let (lent, own) = (filled(seen), filled(|row| seen(row).map(Joint::from)));
    assert_eq!((lent.rows(), own.rows()), (ROWS, ROWS));
    for row in 0..ROWS {
        assert_eq!(difference((&lent, row), (&own, row)), None);
        let alone = alone(["state", "travel"], ("before", Length::from_si(row as f64)), seen(row));
        assert_eq!(difference((&lent, row), (&alone, 0)), None);
        let other = difference((&lent, row), (&own, (row + 1) % ROWS));
        assert!(other.is_some_and(|why| why.starts_with("travel")));
    }
    assert_eq!(Seen::unknown().name, "");
    assert!(Seen::unknown().rise.si().is_nan());
}

#[test]
fn two_records_stand_beside_each_other() {
    let held = |row: usize| Held {
        rise: Length::from_si(row as f64),
        bound: ["engine", "grip"][row % 2].to_owned(),
    };
    let both = filled(|row| Ok((seen(row)?, held(row))));
    let names: Vec<&str> = both.columns().iter().map(|column| &*column.name).collect();
    assert_eq!(names, ["state", "travel", "rise", "turn", "name", "rise", "bound"]);
    let first = filled(seen);
    for row in 0..ROWS {
        let (known, kept) = (seen(row).is_ok(), first.columns().len());
        let columns = both.columns()[..kept].to_vec();
        let one = Table::of(columns, ROWS, both.refused().to_vec());
        assert_eq!(difference((&one, row), (&first, row)), None);
        assert_eq!(both.word("bound", row), known.then(|| ["engine", "grip"][row % 2]));
    }
}

#[test]
fn numbers_fill_columns_that_only_the_model_knows() {
    let columns = vec![Length::column("rise"), Ratio::column("share")];
    let mut rows = Filling::with(["travel"], columns, &[2]).unwrap();
    rows.push((Length::from_si(0.1),), Ok(vec![1.5, 0.25])).unwrap();
    rows.push((Length::from_si(0.2),), Err(too_far(1))).unwrap();
    let table = rows.finish().unwrap();
    assert_eq!(table.numbers("travel"), Some(&[0.1, 0.2][..]));
    let [rise, share] = ["rise", "share"].map(|name| table.numbers(name).unwrap());
    assert_eq!((rise[0], share[0]), (1.5, 0.25));
    assert!(rise[1].is_nan() && share[1].is_nan());
    assert_eq!(table.reason(1), Some(&too_far(1)));
}

#[test]
fn every_field_is_handed_on_in_order() {
    macro_rules! named {
        ($($field:ident: $kind:ident,)+) => { [$((stringify!($field), stringify!($kind))),+] };
    }
    assert_eq!(joint!(named), [("rise", "Length"), ("turn", "i64"), ("name", "String")]);
}

/// 8 bytes of each number and 4 of a word a row: 214 748 364 rows fill 4 GiB but for 16 bytes.
#[test]
fn a_table_that_is_too_large_is_refused_before_it_is_made() {
    let over = |lists: &[usize]| Filling::<(Length,), Held>::over(["travel"], lists).map(drop);
    assert_eq!(within_memory(&[214_748_364], 20, ""), Ok(214_748_364));
    for (lists, by) in [
        (&[214_748_365][..], "a table of 214748365 rows of 20 bytes each takes 4.0 GiB"),
        (&[20_000, 20_000], "a table of 400000000 rows (20000 x 20000) of 20 bytes each takes 7.5 GiB"),
        (&[usize::MAX, usize::MAX, usize::MAX], "a table of 340282366920938463463374607431768211455 rows"),
    ] {
        let refusal = over(lists).unwrap_err().to_string();
        assert!(refusal.starts_with(by), "{refusal}");
        assert!(refusal.contains("one table at most 4 GiB: ask for fewer values at a time"), "{refusal}");
    }
    // Without values there are no rows, even with other lists.
    assert_eq!(over(&[0, usize::MAX, usize::MAX]), Ok(()));
}

/// Reasons take more memory than the numbers of a row: their number has a bound of its own.
#[test]
fn a_table_with_too_many_refused_rows_is_refused() {
    let over = |refused: usize| {
        let mut rows = Filling::over(["turn"], &[9]).unwrap();
        rows.most_refused = 4;
        for row in 0..9 {
            let held = Held { rise: Length::from_si(0.5), bound: "grip".to_owned() };
            rows.push((row as i64,), if row < refused { Err(too_far(row)) } else { Ok(held) }).unwrap();
        }
        rows.finish()
    };
    assert_eq!(over(4).unwrap().refused().len(), 4);
    assert_eq!(
        over(5).unwrap_err().to_string(),
        "more than 4 of 9 rows are refused (the first is row 0: row 0 is too far), and one table keeps the reasons of at most 4: \
         ask for fewer values at a time"
    );
}

#[cfg(feature = "serde")]
#[test]
fn results_and_tables_are_serialized_with_their_units() {
    let held = |rise, bound: &str| Held { rise: Length::from_si(rise), bound: bound.to_owned() };
    let json = |on: &Held| serde_json::to_string(on).unwrap();
    assert_eq!(json(&held(0.0125, "engine")), r#"{"rise":"0.0125 m","bound":"engine"}"#);
    assert_eq!(json(&held(f64::NAN, "grip")), r#"{"rise":null,"bound":"grip"}"#);
    assert_eq!(json(&held(f64::INFINITY, "grip")), r#"{"rise":"inf m","bound":"grip"}"#);
    let on = Joint { rise: Length::from_si(1.0), turn: 3, name: "upper".to_owned() };
    assert_eq!(serde_json::to_string(&on).unwrap(), r#"{"rise":"1 m","turn":3,"name":"upper"}"#);

    let mut rows = Filling::over(["turn"], &[2]).unwrap();
    rows.push((1_i64,), Ok(held(0.5, "grip"))).unwrap();
    rows.push((2_i64,), Err(too_far(1))).unwrap();
    assert_eq!(
        serde_json::to_string(&rows.finish().unwrap()).unwrap(),
        concat!(
            r#"{"columns":[{"name":"turn","values":[1,2]},{"name":"rise","unit":"m","values":[0.5,null]},"#,
            r#"{"name":"bound","values":["grip",null]}],"refused":[{"row":1,"reason":"row 1 is too far"}]}"#
        )
    );
}
