//! Units as people write them: the unit and kind that a text names, and the message if it names none or two.

use super::number::TWO_NUMBERS;
use super::plain::{Told, plain};
use super::print::shortened;
use crate::units::{KINDS, Kind, Unit};
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// One way to write a unit.
pub(super) struct Spelling {
    /// Form for comparison.
    pub(super) key: String,
    /// Form for display.
    pub(super) written: &'static str,
    pub(super) form: Written,
    pub(super) kind: &'static Kind,
    pub(super) unit: &'static Unit,
}

#[derive(PartialEq)]
pub(super) enum Written {
    Symbol,
    Word,
    Code,
}

pub(super) static SPELLINGS: LazyLock<Vec<Spelling>> = LazyLock::new(|| {
    let mut all = Vec::new();
    for &kind in KINDS {
        for unit in kind.units {
            let mut add =
                |written, form| all.push(Spelling { key: key(&plain(written)), written, form, kind, unit });
            add(unit.symbol, Written::Symbol);
            unit.spellings.iter().for_each(|written| add(written, Written::Word));
            add(unit.name, Written::Code);
        }
    }
    all
});

/// The spellings with this key, in the order of [`SPELLINGS`].
pub(super) fn spelled(key: &str) -> &'static [&'static Spelling] {
    static BY_KEY: LazyLock<BTreeMap<&str, Vec<&Spelling>>> = LazyLock::new(|| {
        let mut all = BTreeMap::<&str, Vec<&Spelling>>::new();
        for spelling in SPELLINGS.iter() {
            all.entry(&spelling.key).or_default().push(spelling);
        }
        all
    });
    BY_KEY.get(key).map_or(&[], Vec::as_slice)
}

/// Words that name several units, or a unit that is easily taken for another: never guessed.
pub(super) const REFUSED: &[(&[&str], &str)] = &[
    (
        &["hp", "bhp", "whp", "mhp", "horsepower", "brake·horsepower", "brake·hp"],
        "is one of two: write `mechanical hp` (550 ft·lbf/s) or `metric hp` (75 kgf·m/s)",
    ),
    (
        &["gal", "gals", "gallon", "gallons"],
        "is one of two: write `US gal` (231 in³) or `imp gal` (4.54609 L)",
    ),
    (
        &["qt", "qts", "quart", "quarts"],
        "is one of two: write `US qt`, or an imperial quart as 0.25 `imp gal`",
    ),
    (&["ton", "tons"], "is one of three: write `short ton` (2000 lb), `long ton` (2240 lb) or `t` (1000 kg)"),
    (&["kn"], "may be a knot: write `kN` for a force, `km/h` or `mph` for a speed"),
    (&["1/s"], "is one of two: write `Hz` for cycles, `rad/s` for an angular velocity"),
];

/// Units that stand for their neighbour: the unit's name, the expected kind, the unit to write.
pub(super) const CROSSINGS: &[(&str, &str, &str)] = &[
    ("lb", "Force", "lbf"),
    ("kg", "Force", "kgf"),
    ("lbf", "Mass", "lb"),
    ("kgf", "Mass", "kg"),
    ("g", "Acceleration", "g0"),
    ("degC", "TemperatureDifference", "delta_degC"),
    ("degF", "TemperatureDifference", "delta_degF"),
    ("degR", "TemperatureDifference", "delta_degF"),
    ("delta_K", "Temperature", "K"),
    ("delta_degC", "Temperature", "degC"),
    ("delta_degF", "Temperature", "degF"),
];

/// Text of a unit in the one form for comparison: `ft-lb`, `ft lb` and `ft·lb` are `ft·lb`.
pub(super) fn key(text: &str) -> String {
    let text = replaced(text, "**", "^");
    let mut out = String::with_capacity(text.len());
    let mut gap = ' '; // what separates from the character before: nothing, a space or dot, a sign of multiplication
    let mut left = text.trim_start().chars();
    while let Some(c) = left.next() {
        match c {
            ' ' | '.' if gap == ' ' => gap = '.',
            ' ' | '.' => {}
            '·' | '*' | '-' => gap = '·',
            '^' if left.as_str().starts_with(|c: char| c.is_ascii_digit()) => {}
            c => {
                let tight = "/()".contains(c) || out.ends_with(['/', '(', ')']);
                if !out.is_empty() && (gap == '·' || (gap == '.' && !tight)) {
                    out.push('·');
                }
                gap = ' ';
                out.push(c);
            }
        }
    }
    if gap == '·' {
        out.push('·');
    }
    replaced(&out, "·per·", "/").into_owned()
}

/// A text with one part replaced by another; most texts do not even have its first character.
fn replaced<'a>(text: &'a str, part: &str, other: &str) -> Cow<'a, str> {
    if part.starts_with(|first: char| text.contains(first)) {
        Cow::Owned(text.replace(part, other))
    } else {
        Cow::Borrowed(text)
    }
}

/// The unit of a tidied text.
pub(super) fn unit_named(text: &str, wanted: Option<&'static Kind>) -> Told<(&'static Kind, &'static Unit)> {
    let key = key(text);
    let mut found = Cow::Borrowed(spelled(&key));
    if found.is_empty() {
        if let Some((_, advice)) =
            REFUSED.iter().find(|(words, _)| words.contains(&&*key.to_ascii_lowercase()))
        {
            return Err(format!("`{}` {advice}", shortened(text)));
        }
        if let Some(advice) = gauge_or_absolute(&key) {
            return Err(advice);
        }
        found = Cow::Owned(in_other_case(&key));
    }
    match (found.first(), wanted) {
        (None, _) => Err(unknown(text, wanted)),
        (Some(first), Some(wanted)) => match found.iter().find(|s| s.kind == wanted) {
            Some(spelling) => Ok((spelling.kind, spelling.unit)),
            None => Err(of_another_kind(text, first, wanted)),
        },
        (Some(_), None) => of_any_kind(text, &found),
    }
}

/// Without an expected kind: a symbol comes before other spellings, and a bare pressure is refused.
pub(super) fn of_any_kind(text: &str, found: &[&Spelling]) -> Told<(&'static Kind, &'static Unit)> {
    let symbols: Vec<&Spelling> = found.iter().copied().filter(|s| s.form == Written::Symbol).collect();
    let found = if symbols.is_empty() { found } else { &symbols };
    let Some(first) = found.first() else { return Err(unknown(text, None)) };
    if let Some(other) = found.iter().find(|s| s.kind != first.kind) {
        return Err(format!(
            "`{}` may be {} or {}; say which is wanted, or write `{}` or `{}`",
            shortened(text),
            first.kind.words,
            other.kind.words,
            first.unit.name,
            other.unit.name
        ));
    }
    let symbol = first.unit.symbol;
    if first.kind.name == "Stress" && !first.key.ends_with("difference") && pressures(symbol).len() == 2 {
        let advice = gauge_or_absolute(symbol).unwrap_or_default();
        return Err(format!(
            "{advice}; or `{symbol} difference` for a stress or a difference of two pressures"
        ));
    }
    Ok((first.kind, first.unit))
}

/// Symbols that say from which zero a pressure in this unit is counted.
pub(super) fn pressures(key: &str) -> Vec<&'static str> {
    let ends = [format!("{key}·gauge"), format!("{key}·absolute")];
    ends.iter().filter_map(|end| spelled(end).first()).map(|s| s.written).collect()
}

/// Message for a bare pressure, with the choices.
pub(super) fn gauge_or_absolute(key: &str) -> Option<String> {
    let choices = pressures(key);
    let written: Vec<String> = choices.iter().map(|choice| format!("`{choice}`")).collect();
    (!choices.is_empty()).then(|| {
        format!("`{key}` alone does not say whether gauge or absolute; write {}", written.join(" or "))
    })
}

pub(super) fn of_another_kind(text: &str, found: &Spelling, wanted: &Kind) -> String {
    if found.key.is_empty() {
        return format!(
            "a bare number is a ratio, and {} is wanted here; write its unit after it: {}",
            wanted.words,
            symbols(wanted)
        );
    }
    let crossing = CROSSINGS.iter().find(|(unit, kind, _)| *unit == found.unit.name && *kind == wanted.name);
    let bare = if found.kind.name == "Stress" && wanted.name.ends_with("Pressure") {
        gauge_or_absolute(found.unit.symbol)
    } else {
        None
    };
    let advice = match (crossing, bare) {
        (Some((_, _, write)), _) => format!("write `{write}`"),
        (None, Some(bare)) => bare,
        (None, None) => format!("write {}", symbols(wanted)),
    };
    format!(
        "`{}` is a unit of {}, and {} is wanted here; {advice}",
        shortened(text),
        found.kind.words,
        wanted.words
    )
}

/// The symbols of a kind: `N, kN, lbf or kgf`.
pub fn symbols(kind: &Kind) -> String {
    let shown: Vec<&str> =
        kind.units.iter().map(|unit| if unit.symbol.is_empty() { "no unit" } else { unit.symbol }).collect();
    match shown.split_last() {
        Some((last, others)) if !others.is_empty() => format!("{} or {last}", others.join(", ")),
        _ => shown.concat(),
    }
}

pub(super) fn unknown(text: &str, wanted: Option<&Kind>) -> String {
    let apart = |c: char| matches!(c, ' ' | '-' | '+' | '.' | ',');
    let mut before = ' ';
    for c in text.chars() {
        if c.is_ascii_digit() && apart(before) {
            return TWO_NUMBERS.into();
        }
        before = c;
    }
    let key = key(text);
    let near = SPELLINGS
        .iter()
        .filter(|s| s.form != Written::Code && wanted.is_none_or(|kind| s.kind == kind))
        .map(|s| (distance(&key, &s.key), s))
        .min_by_key(|(distance, _)| *distance);
    let length = key.chars().count();
    let mut message = format!("`{}` is not a unit known here", shortened(text));
    // One changed letter turns a short unit into another: `mil` and `mile`, `N/cm` and `N/m`.
    if let Some((distance, near)) = near
        && (key.eq_ignore_ascii_case(&near.key) || length >= 6 && distance <= 2 * (length / 4))
    {
        message += &format!("; did you mean `{}`?", near.written);
    }
    if let Some(kind) = wanted {
        message += &format!("; {} is written in {}", kind.words, symbols(kind));
    }
    message
}

/// Edit distance between two spellings: two for a letter, one for its case.
pub(crate) fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).map(|j| 2 * j).collect();
    for (i, x) in a.chars().enumerate() {
        let mut next = vec![2 * (i + 1)];
        let mut left = 2 * (i + 1);
        for (y, pair) in b.iter().zip(row.windows(2)) {
            let change = if x == *y { 0 } else { 2 - usize::from(x.eq_ignore_ascii_case(y)) };
            if let [diagonal, above] = pair {
                left = (diagonal + change).min(above + 2).min(left + 2);
            }
            next.push(left);
        }
        row = next;
    }
    row.last().copied().unwrap_or(0)
}

/// Spellings that differ in case only, if they are all of one unit and the case had no meaning.
pub(super) fn in_other_case(key: &str) -> Vec<&'static Spelling> {
    let found: Vec<&Spelling> =
        SPELLINGS.iter().filter(|s| s.key.eq_ignore_ascii_case(key) && case_is_free(key, &s.key)).collect();
    let one_unit = found.iter().all(|s| found.first().is_some_and(|first| s.unit.name == first.unit.name));
    if one_unit { found } else { Vec::new() }
}

/// True if a text may stand for a spelling that differs from it in case: not a single letter (`k`, `T`, `G`, `M`),
/// not the spelling of another unit in SI (`mPa`, `nm`, `Mm`), not a small m for mega.
pub(super) fn case_is_free(key: &str, spelling: &str) -> bool {
    const BREAKS: [char; 4] = ['·', '/', '(', ')'];
    key.chars().count() > 1
        && key.split(BREAKS).zip(spelling.split(BREAKS)).all(|(atom, meant)| {
            atom == meant || !(is_prefixed_si(atom) || (atom.starts_with('m') && meant.starts_with('M')))
        })
}

/// True for an SI prefix with an SI symbol: `mPa`, `nm`.
pub(super) fn is_prefixed_si(atom: &str) -> bool {
    let symbol =
        atom.trim_end_matches(|c: char| c.is_ascii_digit()).strip_prefix(|c| "fpnumcdhkMGT".contains(c));
    matches!(symbol, Some("m" | "g" | "s" | "N" | "Pa" | "J" | "W" | "K" | "Hz" | "L" | "l" | "bar" | "rad"))
}
