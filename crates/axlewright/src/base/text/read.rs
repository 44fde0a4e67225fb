//! Quantities from text.

use super::number::{TWO_NUMBERS, in_range, number};
use super::plain::{Told, tidy};
use super::print::shortened;
use super::unit::{key, spelled, unit_named};
use crate::base::error::{Error, Result};
use crate::units::{Kind, Quantity, Unit};

/// A quantity that was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The value in the coherent SI unit of its kind.
    pub si: f64,
    /// The kind of quantity.
    pub kind: &'static Kind,
    /// The unit in which it was written.
    pub unit: &'static Unit,
    /// The tolerance, if one was written.
    pub tolerance: Option<Tolerance>,
}

/// Tolerance of a quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance {
    /// Half the width of the band, or the standard deviation, in the coherent SI unit of the kind; that of a
    /// temperature is a difference in kelvins.
    pub si: f64,
    /// Form of the tolerance.
    pub form: Form,
}

/// Forms of a tolerance.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// The value lies within plus or minus this: `± 2 kg`.
    Bound,
    /// The value scatters with this standard deviation: `± 2 kg sd`.
    StandardDeviation,
}

/// Reads a quantity whose unit says its kind.
pub fn read(text: &str) -> Result<Reading> {
    tidy(text).and_then(|tidied| quantity(&tidied, None)).map_err(|message| refusal(text, message))
}

/// Reads a quantity of the expected kind, and refuses any other kind.
pub fn read_as(text: &str, kind: &'static Kind) -> Result<Reading> {
    tidy(text).and_then(|tidied| quantity(&tidied, Some(kind))).map_err(|message| refusal(text, message))
}

/// Reads a quantity of this type; refuses a tolerance, which the type cannot hold.
pub fn parse<Q: Quantity>(text: &str) -> Result<Q> {
    value_as(text, Q::KIND).map(Q::from_si)
}

/// The value alone, in coherent SI; refuses a tolerance, which it cannot hold.
pub fn value_as(text: &str, kind: &'static Kind) -> Result<f64> {
    let reading = read_as(text, kind)?;
    match reading.tolerance {
        None => Ok(reading.si),
        Some(_) => Err(refusal(text, "a tolerance has no place here; write the value alone".into())),
    }
}

/// The unit that a text names, of the expected kind if there is one. An empty text is the unit of a ratio.
pub fn unit(text: &str, kind: Option<&'static Kind>) -> Result<(&'static Kind, &'static Unit)> {
    let tidied = if text.trim().is_empty() { Ok(String::new()) } else { tidy(text) };
    tidied.and_then(|tidied| unit_named(&tidied, kind)).map_err(|message| refusal(text, message))
}

pub(crate) fn refusal(text: &str, message: String) -> Error {
    Error::Text { text: shortened(text.trim()), message }
}

/// A number and what follows it.
struct Amount<'a> {
    number: f64,
    unit: &'a str,
}

fn quantity(text: &str, wanted: Option<&'static Kind>) -> Told<Reading> {
    let (value, spread) = match text.split_once("+/-") {
        None => (text, None),
        Some((value, spread)) => (value, Some(spread_amount(spread)?)),
    };
    let value = amount(value)?;
    let unit = match &spread {
        Some((spread, _)) if value.unit.is_empty() && !is_percent(spread.unit) => spread.unit, // `612 +/- 2 kg`
        _ => value.unit,
    };
    let (kind, unit) = unit_named(unit, wanted)?;
    if let Some((spread, _)) = &spread
        && unit.name == "percent"
        && spread.unit.is_empty()
    {
        return Err(
            "a bare tolerance beside a value in % has two meanings; write both as ratios, `0.50 +/- 0.02`"
                .into(),
        );
    }
    let si = in_range(unit.to_si(value.number), value.number != 0.0 && unit.offset == 0.0)?;
    let tolerance = match spread {
        None => None,
        Some((spread, form)) => Some(Tolerance { si: tolerance(&spread, kind, si)?, form }),
    };
    Ok(Reading { si, kind, unit, tolerance })
}

/// The number and form after `+/-`.
fn spread_amount(text: &str) -> Told<(Amount<'_>, Form)> {
    const HOW: &str =
        "write a tolerance as `+/- 2 kg` or `+/- 3 %`, or `+/- 2 kg sd` for a standard deviation";
    let (text, form) = match text.trim().strip_suffix(" sd") {
        Some(text) => (text, Form::StandardDeviation),
        None => (text.trim(), Form::Bound),
    };
    if text.starts_with(['+', '-']) {
        return Err(format!("a tolerance has no sign of its own; {HOW}"));
    }
    amount(text).map(|spread| (spread, form)).map_err(|message| format!("in the tolerance, {message}; {HOW}"))
}

/// A tolerance in the coherent SI unit: a share of the value, or a difference in a unit of the kind.
fn tolerance(spread: &Amount, kind: &'static Kind, value: f64) -> Told<f64> {
    let difference = difference_of(kind);
    if is_percent(spread.unit) {
        if kind.name == "Ratio" || kind.name == "Temperature" {
            return Err(format!(
                "a tolerance in % of a {} has no clear meaning; write it in the value's unit, without %",
                kind.words
            ));
        }
        return in_range(value.abs() * (spread.number / 100.0), spread.number != 0.0 && value != 0.0);
    }
    if spread.unit.is_empty() && kind.name != "Ratio" {
        return Err("the tolerance needs a unit of its own, or %".into());
    }
    let (_, unit) = unit_named(spread.unit, Some(kind)).or_else(|message| match difference {
        Some(difference) => unit_named(spread.unit, Some(difference)).map_err(|_| message),
        None => Err(message),
    })?;
    in_range(spread.number * unit.numerator / unit.denominator, spread.number != 0.0)
}

/// Kind of the difference of two values, if it is another kind.
fn difference_of(kind: &Kind) -> Option<&'static Kind> {
    match kind.name {
        "Temperature" => Kind::named("TemperatureDifference"),
        "AbsolutePressure" | "GaugePressure" => Kind::named("Stress"),
        _ => None,
    }
}

fn is_percent(unit: &str) -> bool {
    matches!(key(unit).as_str(), "%" | "percent" | "pct")
}

fn amount(text: &str) -> Told<Amount<'_>> {
    let text = text.trim();
    if text.parse::<f64>().is_err() && !text.is_empty() && !spelled(&key(text)).is_empty() {
        return Err(format!(
            "`{0}` is a unit without a number; write one before it, like `12 {0}`",
            shortened(text)
        ));
    }
    if is_parts_of_a_hundred(text) {
        return Err("it writes the parts of a mix; write the share of one of them, like `50 %`".into());
    }
    let (number, rest) = number(text)?;
    let rest = rest.trim();
    if let Some(number) = ratio_of_two(number, rest)? {
        return Ok(Amount { number, unit: "" });
    }
    if let Some(number) = feet_and_inches(number, rest)? {
        return Ok(Amount { number, unit: "in" });
    }
    if key(rest) == "1" {
        return Err(TWO_NUMBERS.into());
    }
    Ok(Amount { number, unit: rest })
}

/// `1:1`, `1 to 1`: two parts. Their quotient is a gear, but no share of a whole: a mix of 1:1 is 50 % of each.
pub(crate) fn is_two_parts(text: &str) -> bool {
    let parts = text.split_once(':').or_else(|| text.split_once(" to "));
    let number = |text: &str| text.trim().parse::<f64>().is_ok();
    parts.is_some_and(|(first, second)| number(first) && number(second))
}

/// Why two parts are no share.
pub(crate) fn no_share(text: &str) -> String {
    format!(
        "`{}` writes two parts, not the share of one in the whole; write that share, like `50 %`",
        shortened(text)
    )
}

/// `50/50`, `33:67`: both parts of a mix, in per cent. Neither their quotient nor their ratio is a share.
fn is_parts_of_a_hundred(text: &str) -> bool {
    let parts = text.split_once(['/', ':']).map(|(first, second)| [first, second].map(str::trim));
    parts.is_some_and(|parts| {
        let [first, second] = parts.map(|part| part.parse::<f64>().unwrap_or(f64::NAN));
        first > 1.0 && second > 1.0 && first + second == 100.0
    })
}

/// `4.10:1`, `3.73 to 1`.
fn ratio_of_two(first: f64, rest: &str) -> Told<Option<f64>> {
    let (second, range) = match (rest.strip_prefix(':'), rest.strip_prefix("to ")) {
        (Some(second), _) => (second, false),
        (None, Some(second)) => (second, true),
        (None, None) => return Ok(None),
    };
    let (second, rest) = number(second.trim())?;
    if second <= 0.0 || !rest.is_empty() || (range && second != 1.0) {
        return Err(
            "`:` and `to 1` write a ratio, like `4.10:1` or `3.73 to 1`, without a unit; a range of values \
             is not one quantity"
                .into(),
        );
    }
    if second != 1.0 && first < second {
        return Err(
            "it is turned around, or a decimal point is missing; write `3.73:1`, or the number itself".into(),
        );
    }
    Ok(Some(first / second))
}

/// `2' 6 1/2"`, `2 ft 6 in`, in inches.
fn feet_and_inches(feet: f64, rest: &str) -> Told<Option<f64>> {
    let lower = rest.to_ascii_lowercase();
    let Some(foot) = ["'", "feet", "foot", "ft"].iter().find(|foot| lower.starts_with(**foot)) else {
        return Ok(None);
    };
    let after = rest.split_at(foot.len()).1;
    let after = after.trim_start_matches('.').trim_start();
    let after = after.strip_prefix('-').unwrap_or(after).trim_start();
    if !after.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
        return Ok(None);
    }
    let (inches, unit) = number(after)?;
    if !matches!(key(unit).to_ascii_lowercase().as_str(), "\"" | "in" | "inch" | "inches") {
        return Ok(None);
    }
    if inches >= 12.0 {
        return Err("inches after feet are fewer than twelve, like `2' 6\"`".into());
    }
    if feet.fract() != 0.0 {
        return Err("feet before inches are a whole number, like `2' 6\"`".into());
    }
    Ok(Some((feet.abs() * 12.0 + inches).copysign(feet)))
}
