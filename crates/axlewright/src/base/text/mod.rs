//! Quantities as text, read and printed as people in a shop write them: `225 lbf/in`, `3 1/2 in`, `12 psi gauge`.
//!
//! ```
//! use axlewright::base::text::{System, parse, print, read};
//! use axlewright::units::{LinearStiffness, Quantity};
//! let rate: LinearStiffness = parse("225 lb/in").unwrap();
//! assert_eq!(print(rate.si(), LinearStiffness::KIND, System::Us), "225 lbf/in");
//! assert!(read("2,5 mm").unwrap_err().to_string().contains("write `2.5`"));
//! ```
//!
//! A text with one meaning is read; a text with two possible meanings is refused, with both named.
//!
//! | written | read as |
//! |---|---|
//! | `1,250 lbf`, `1,250,000 N` | thousands, in groups of three digits; a narrow no-break or thin space does the same |
//! | `2,5 mm`, `1,25 lbf`, `0,250 in` | refused: a decimal comma, or thousands gone wrong |
//! | `1 250 N`, `3-4 mm`, `3 to 5 mm` | refused: two numbers, as when two columns were pasted together; a range |
//! | `3 1/2 in`, `3-1/2 in`, `3½ in` | whole + numerator / denominator; the fraction of a mixed number is below one |
//! | `2'6"`, `2' 6 1/2"`, `2 ft 6 in` | feet and inches (below twelve); its unit is the inch |
//! | `0.75`, `1/2`, `50 %`, `4.10:1`, `3.73 to 1` | a ratio; a bare number is nothing else (`5 to 10` is refused: a range?) |
//! | `3:73`, `1:3.73` | refused: turned around, or a point is missing |
//! | `N m`, `N·m`, `N*m`, `N-m`, `N.m`, `Nm` | one unit; so are `in²`, `in^2`, `in2`, and `lb per in`, `lb/in` |
//! | `lbf_in`, `delta_degF`, `psi_gauge` | the unit's name in code, exactly |
//! | `MPA`, `Lbf/In` | other case, if it names one unit; never where case has a meaning: `mPa`, `nm`, `k`, `T`, `G` |
//! | `10 K` | a temperature; a temperature difference if that is wanted |
//! | `10 °C`, `10 °F` | a temperature, never a difference: that is `delta_degC`, `delta_degF` |
//! | `psi`, `kPa`, `Pa`, `bar` | a stress or pressure difference if that is wanted; else refused: gauge or absolute? |
//! | `psi difference` | a stress or pressure difference, whatever is wanted |
//! | `hp`, `bhp`, `gal`, `qt`, `ton`, `kn`, `1/s` | refused, naming the choices |
//! | `lb` | a mass, not a force (`lbf`); in `lb/in` and `ft-lb` it is a pound-force |
//! | `g` | gram; standard gravity is `g0` |
//! | `225 lbf/in +/- 3 %`, `612 kg ± 2 kg`, `612 ± 2 kg` | a bound: half the width of the band. The share is of the value's size |
//! | `612 kg ± 2 kg sd` | a standard deviation: `sd` at the end, the only way to say it |
//! | `70 °F ± 2 °F`, `15 psi gauge ± 1 psi` | a tolerance is a difference, and may be written in units of one |
//! | `50 % ± 2 %`, `50 % ± 2`, `70 °F ± 3 %`, `612 kg ± 2` | refused: a share of what? |
//!
//! Case-sensitive spellings come first, and the printed symbol comes first if several kinds share one. Numbers are
//! rounded correctly by the standard library. Absolute zero and other limits are left to the functions.

use super::error::{Error, Result};
use super::units::{Kind, Quantity, Unit};
use number::{TWO_NUMBERS, number};
use unit::{key, spelled, unit_named};

#[cfg(feature = "serde")]
mod near;
mod number;
mod unit;

#[cfg(feature = "sheet")]
pub(crate) use near::{did_you_mean, nearest};
#[cfg(feature = "serde")]
pub(crate) use near::{is_near, unknown_key};
pub(crate) use unit::distance;

pub use unit::symbols;

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

/// Unit systems of a shop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum System {
    /// Millimetres, newtons, kilopascals.
    Metric,
    /// Inches, pounds-force, pounds per square inch.
    Us,
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

/// The quantity in the shop's unit, to four significant digits: `225 lbf/in`. Digits are not grouped.
pub fn print(si: f64, kind: &'static Kind, system: System) -> String {
    let (value, symbol) = in_shop(si, kind, system);
    join(rounded(value, 4) + 0.0, symbol) // adding zero drops the sign of a negative zero
}

/// The quantity in the shop's unit, with this many digits after the point: `225.0 lbf/in`.
pub fn print_fixed(si: f64, kind: &'static Kind, system: System, digits: usize) -> String {
    let (value, symbol) = in_shop(si, kind, system);
    let number = format!("{value:.digits$}");
    let zero = number.starts_with('-') && !number.contains(|c: char| c.is_ascii_digit() && c != '0');
    let number = if zero { number.trim_start_matches('-') } else { &number };
    if symbol.is_empty() { number.to_owned() } else { format!("{number} {symbol}") }
}

/// The value in the shop's unit, and the unit's symbol.
fn in_shop(si: f64, kind: &'static Kind, system: System) -> (f64, &'static str) {
    let name = match system {
        System::Metric => kind.metric,
        System::Us => kind.us,
    };
    match kind.unit(name) {
        Some(unit) => (unit.from_si(si), unit.symbol),
        None => (si, kind.si),
    }
}

/// The quantity in a unit, to four significant digits.
#[cfg(feature = "serde")]
pub(crate) fn print_as(si: f64, unit: &Unit) -> String {
    join(rounded(unit.from_si(si), 4) + 0.0, unit.symbol)
}

/// The quantity in the coherent SI unit, to six significant digits.
pub fn print_si(si: f64, kind: &'static Kind) -> String {
    join(rounded(si, 6) + 0.0, kind.units.first().map_or(kind.si, |coherent| coherent.symbol))
}

/// The quantity in a unit, by the shortest number that reads back to the same bits. If no number in that unit does, it is in the coherent SI
/// unit (measured: one random value in twelve, but none that was written in that unit). A value that is
/// not finite is printed as `NaN` or `inf`, which nobody reads back.
pub fn print_in(si: f64, kind: &'static Kind, unit: &'static Unit) -> String {
    let near = unit.from_si(si);
    let neighbours = [near.next_up(), near.next_down()]; // the way here was rounded too
    let same = |number: &f64| unit.to_si(*number).to_bits() == si.to_bits();
    match (1..=17).map(|digits| rounded(near, digits)).chain(neighbours).find(same) {
        Some(number) => join(number, unit.symbol),
        None => join(si, kind.units.first().map_or(kind.si, |coherent| coherent.symbol)),
    }
}

/// Prints a quantity in the first unit of its kind, as [`print_in`] does.
pub fn print_in_first(si: f64, kind: &'static Kind) -> String {
    kind.units.first().map_or_else(|| join(si, kind.si), |unit| print_in(si, kind, unit))
}

/// The number with this many significant digits.
fn rounded(value: f64, digits: usize) -> f64 {
    format!("{value:.*e}", digits.saturating_sub(1)).parse().unwrap_or(value)
}

/// Number and symbol; an exponent outside 0.0001 to 10 000 000 only.
fn join(number: f64, symbol: &str) -> String {
    let ordinary = number == 0.0 || (1e-4..1e7).contains(&number.abs());
    let digits = if ordinary { format!("{number}") } else { format!("{number:e}") };
    if symbol.is_empty() { digits } else { format!("{digits} {symbol}") }
}

// Normalisation of a text, from any keyboard.

/// A result, or the message of a refusal without the whole text yet.
type Told<T> = core::result::Result<T, String>;

/// Characters in the longest text that is looked at.
const LONGEST: usize = 120;
/// Characters in the longest text that is quoted.
const QUOTED: usize = 60;

pub(crate) fn refusal(text: &str, message: String) -> Error {
    Error::Text { text: shortened(text.trim()), message }
}

/// Text for a message: short, and without control characters for a terminal.
pub(crate) fn shortened(text: &str) -> String {
    let shown = |c: char| if c.escape_debug().count() > 2 { '\u{FFFD}' } else { c };
    let mut clipped: String = text.chars().take(QUOTED).map(shown).collect();
    if text.chars().nth(QUOTED).is_some() {
        clipped.pop();
        clipped.push('…');
    }
    clipped
}

fn tidy(text: &str) -> Told<String> {
    let text = text.trim();
    if text.is_empty() {
        return Err("there is no text; write a number and its unit, like `225 lbf/in`".into());
    }
    if text.chars().nth(LONGEST).is_some() {
        return Err(format!("more than {LONGEST} characters are no quantity; write it like `225 lbf/in`"));
    }
    if text.chars().any(char::is_control) {
        return Err("a control character stands in the text; write it like `225 lbf/in`".into());
    }
    Ok(plain(text))
}

/// One character for each group of characters that people and keyboards use with one meaning.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut left = text.chars();
    while let Some(c) = left.next() {
        match c {
            '\u{2009}' | '\u{202F}' if between_thousands(&out, left.as_str()) => out.push(','),
            c if c.is_whitespace() => out.push(' '),
            '\u{2010}'..='\u{2013}' | '\u{2212}' => out.push('-'),
            '⋅' | '∙' | '•' | '‧' | '×' => out.push('·'),
            '⁄' | '∕' => out.push('/'),
            '′' | '’' | 'ʹ' => out.push('\''),
            '″' | '”' | 'ʺ' => out.push('"'),
            'º' | '˚' => out.push('°'),
            '℃' => out.push_str("°C"),
            '℉' => out.push_str("°F"),
            '∆' => out.push('Δ'),
            '²' => out.push_str("^2"),
            '³' => out.push_str("^3"),
            '±' => out.push_str("+/-"),
            c => match vulgar_fraction(c) {
                Some(fraction) => out.extend([" ", fraction, " "]),
                None => out.push(c),
            },
        }
    }
    out.replace("''", "\"").trim().into()
}

fn between_thousands(before: &str, after: &str) -> bool {
    let digits = after.bytes().take_while(u8::is_ascii_digit).count();
    let over = after.get(digits..).unwrap_or("").trim_start().starts_with(['/', '⁄', '∕']); // a mixed number
    before.ends_with(|c: char| c.is_ascii_digit()) && digits == 3 && !over
}

fn vulgar_fraction(c: char) -> Option<&'static str> {
    Some(match c {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅓' => "1/3",
        '⅔' => "2/3",
        _ => return None,
    })
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

fn in_range(value: f64, other_than_zero: bool) -> Told<f64> {
    if !value.is_finite() {
        return Err("the number is too large to compute with".into());
    }
    if value == 0.0 && other_than_zero {
        return Err("the number is too small to be told from zero; write 0".into());
    }
    Ok(value)
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

#[cfg(test)]
mod tests;
