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
//! What is read has one meaning; what could have two is refused and the choices are named.
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
//! | `50 % ± 2 %`, `50 % ± 2`, `70 °F ± 3 %`, `612 kg ± 2` | refused: of what? |
//!
//! Case-sensitive spellings go first, the printed symbol before others where several kinds share one. Numbers are
//! rounded correctly by the standard library. Absolute zero and other limits are the functions' business.

use super::error::{Error, Result};
use super::units::{KINDS, Kind, Quantity, Unit};
use std::sync::LazyLock;

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

/// How far a quantity may be from its value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance {
    /// Half the width of the band, or the standard deviation, in the coherent SI unit of the kind; that of a
    /// temperature is a difference in kelvins.
    pub si: f64,
    /// Which of the two.
    pub form: Form,
}

/// What a tolerance says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// The value lies within plus or minus this: `± 2 kg`.
    Bound,
    /// The value scatters with this standard deviation: `± 2 kg sd`.
    StandardDeviation,
}

/// The units that a shop prints.
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

/// Reads a quantity of the kind that is wanted, and refuses any other kind.
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

/// The unit that a text names, of the kind that is wanted if there is one. No text at all is the unit of a ratio.
pub fn unit(text: &str, kind: Option<&'static Kind>) -> Result<(&'static Kind, &'static Unit)> {
    let tidied = if text.trim().is_empty() { Ok(String::new()) } else { tidy(text) };
    tidied.and_then(|tidied| unit_named(&tidied, kind)).map_err(|message| refusal(text, message))
}

/// The quantity in the shop's unit, to four significant digits: `225 lbf/in`. Digits are not grouped.
pub fn print(si: f64, kind: &'static Kind, system: System) -> String {
    let name = match system {
        System::Metric => kind.metric,
        System::Us => kind.us,
    };
    let (value, symbol) = match kind.unit(name) {
        Some(unit) => (unit.from_si(si), unit.symbol),
        None => (si, kind.si),
    };
    join(rounded(value, 4) + 0.0, symbol) // adding zero drops the sign of a negative zero
}

/// The quantity in a unit, by the shortest number that reads back to the same bits; in the coherent SI unit where no
/// number in that unit does (measured: one random value in twelve, but none that was written in that unit). What is
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

/// The number with so many significant digits.
fn rounded(value: f64, digits: usize) -> f64 {
    format!("{value:.*e}", digits.saturating_sub(1)).parse().unwrap_or(value)
}

/// Number and symbol; an exponent outside 0.0001 to 10 000 000 only.
fn join(number: f64, symbol: &str) -> String {
    let ordinary = number == 0.0 || (1e-4..1e7).contains(&number.abs());
    let digits = if ordinary { format!("{number}") } else { format!("{number:e}") };
    if symbol.is_empty() { digits } else { format!("{digits} {symbol}") }
}

// ---- Text --------------------------------------------------------------------------------------------------------

/// An answer, or the message of a refusal that has yet to be given the whole text.
type Told<T> = core::result::Result<T, String>;

/// Characters in the longest text that is looked at.
const LONGEST: usize = 120;
/// Characters in the longest text that is quoted.
const QUOTED: usize = 60;

fn refusal(text: &str, message: String) -> Error {
    Error::Text { text: clip(text), message }
}

/// Text fit for a message: short, and without what a terminal could obey.
fn clip(text: &str) -> String {
    let shown = |c: char| if c.escape_debug().count() > 2 { '\u{FFFD}' } else { c };
    let mut clipped: String = text.trim().chars().take(QUOTED).map(shown).collect();
    if text.trim().chars().nth(QUOTED).is_some() {
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

/// One character for each of the many that people and keyboards use for the same thing.
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

// ---- Quantities --------------------------------------------------------------------------------------------------

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
            "a tolerance of a value in % does not say of what; write both as ratios, `0.50 +/- 0.02`".into(),
        );
    }
    let si = in_range(unit.to_si(value.number), value.number != 0.0 && unit.offset == 0.0)?;
    let tolerance = match spread {
        None => None,
        Some((spread, form)) => Some(Tolerance { si: tolerance(&spread, kind, si)?, form }),
    };
    Ok(Reading { si, kind, unit, tolerance })
}

/// What stands after `+/-`.
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
                "a tolerance in % of a {} does not say of what; write it as the value is written, without %",
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

/// The kind of the difference of two, where it is another one.
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
    if text.parse::<f64>().is_err() && !text.is_empty() && is_unit(&key(text)) {
        return Err(format!(
            "`{0}` is a unit without a number; write one before it, like `12 {0}`",
            clip(text)
        ));
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

fn is_unit(key: &str) -> bool {
    SPELLINGS.iter().any(|spelling| spelling.key == key)
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

// ---- Numbers -----------------------------------------------------------------------------------------------------

const TWO_NUMBERS: &str = "there are two numbers where one is wanted; write one number and its unit, a decimal with \
     a point, thousands as `1,250` or `1250`";

/// A signed decimal, fraction or mixed number, and the text after it.
fn number(text: &str) -> Told<(f64, &str)> {
    let (negative, body) = match text.strip_prefix('-') {
        Some(body) => (true, body),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let (digits, rest) = body.split_at(decimal_length(body.as_bytes()));
    if !digits.contains(|c: char| c.is_ascii_digit()) {
        return Err(no_number(body));
    }
    let value = decimal(digits)?;
    let whole = digits.bytes().all(|b| b.is_ascii_digit() || b == b',');
    let (value, rest) = if whole { with_fraction(value, rest)? } else { (value, rest) };
    Ok((if negative { -value } else { value }, rest))
}

fn no_number(text: &str) -> String {
    let word = text.to_ascii_lowercase();
    if word.starts_with("nan") || word.starts_with("inf") {
        "only a finite number is a quantity; write it like `225 lbf/in`".into()
    } else {
        "a number is missing at the start; write it like `225 lbf/in`".into()
    }
}

/// How many bytes of the text are digits, thousands commas, a point with digits, an exponent with digits.
fn decimal_length(text: &[u8]) -> usize {
    let digits = |from: usize| text.iter().skip(from).take_while(|b| b.is_ascii_digit()).count();
    let mut end = text.iter().take_while(|b| b.is_ascii_digit() || **b == b',').count();
    if text.get(end) == Some(&b'.') {
        end += 1 + digits(end + 1);
    }
    if matches!(text.get(end), Some(b'e' | b'E')) {
        let sign = usize::from(matches!(text.get(end + 1), Some(b'+' | b'-')));
        match digits(end + 1 + sign) {
            0 => {}
            exponent => end += 1 + sign + exponent,
        }
    }
    end
}

fn decimal(digits: &str) -> Told<f64> {
    let plain = digits.replace(',', "");
    let whole = digits.split(['.', 'e', 'E']).next().unwrap_or("");
    let mut groups = whole.split(',');
    let first = groups.next().unwrap_or("");
    let mut rest = groups.peekable();
    if rest.peek().is_some() {
        let grouped = (1..=3).contains(&first.len()) && !first.starts_with('0') && rest.all(|g| g.len() == 3);
        if !grouped {
            return Err(format!(
                "the comma in `{}` may be decimal or part thousands; write `{}` or `{plain}` (thousands go in groups \
                 of three, `1,250`)",
                clip(digits),
                plain_decimal(digits)
            ));
        }
    }
    let value: f64 = plain.parse().map_err(|_| format!("`{}` is not a number", clip(digits)))?;
    let mantissa = plain.split(['e', 'E']).next().unwrap_or("");
    in_range(value, mantissa.contains(|c: char| matches!(c, '1'..='9')))
}

/// The text if its last comma was a decimal comma.
fn plain_decimal(digits: &str) -> String {
    match digits.rsplit_once(',') {
        Some((whole, part)) if !part.contains('.') => format!("{}.{part}", whole.replace(',', "")),
        _ => digits.replace(',', ""),
    }
}

/// A whole number with what makes it a fraction (`1` `/2`) or a mixed number (`3` ` 1/2`), if that follows.
fn with_fraction(whole: f64, rest: &str) -> Told<(f64, &str)> {
    if let Some((denominator, rest)) = rest.strip_prefix('/').and_then(integer) {
        return Ok((quotient(whole, denominator)?, rest));
    }
    let after = if rest.starts_with(' ') { Some(rest.trim_start()) } else { rest.strip_prefix('-') };
    if let Some((numerator, after)) = after.and_then(integer)
        && let Some((denominator, rest)) = after.strip_prefix('/').and_then(integer)
    {
        let part = quotient(numerator, denominator)?;
        if part >= 1.0 {
            return Err("the fraction of a mixed number is smaller than one, like `3 1/2`".into());
        }
        return Ok((whole + part, rest));
    }
    Ok((whole, rest))
}

fn integer(text: &str) -> Option<(f64, &str)> {
    let (digits, rest) = text.split_at(text.bytes().take_while(u8::is_ascii_digit).count());
    Some((digits.parse().ok()?, rest))
}

fn quotient(numerator: f64, denominator: f64) -> Told<f64> {
    if denominator == 0.0 { Err("a fraction is over zero".into()) } else { Ok(numerator / denominator) }
}

// ---- Units -------------------------------------------------------------------------------------------------------

/// One way to write a unit.
struct Spelling {
    /// How it is compared.
    key: String,
    /// How it is shown.
    written: &'static str,
    form: Written,
    kind: &'static Kind,
    unit: &'static Unit,
}

#[derive(PartialEq)]
enum Written {
    Symbol,
    Word,
    Code,
}

static SPELLINGS: LazyLock<Vec<Spelling>> = LazyLock::new(|| {
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

/// Words that name several units, or one that is easily taken for another: never guessed.
const REFUSED: &[(&[&str], &str)] = &[
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

/// Where a unit stands for its neighbour: the unit's name, the kind that is wanted, what to write.
const CROSSINGS: &[(&str, &str, &str)] = &[
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

/// A unit's text in the one form in which it is compared: `ft-lb`, `ft lb` and `ft·lb` are `ft·lb`.
fn key(text: &str) -> String {
    let text = text.replace("**", "^");
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
    out.replace("·per·", "/")
}

/// The unit of a tidied text.
fn unit_named(text: &str, wanted: Option<&'static Kind>) -> Told<(&'static Kind, &'static Unit)> {
    let key = key(text);
    let mut found: Vec<&Spelling> = SPELLINGS.iter().filter(|s| s.key == key).collect();
    if found.is_empty() {
        if let Some((_, advice)) =
            REFUSED.iter().find(|(words, _)| words.contains(&&*key.to_ascii_lowercase()))
        {
            return Err(format!("`{}` {advice}", clip(text)));
        }
        if let Some(advice) = gauge_or_absolute(&key) {
            return Err(advice);
        }
        found = in_other_case(&key);
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

/// Where no kind is wanted: a symbol goes before other spellings, and a bare pressure says too little.
fn of_any_kind(text: &str, found: &[&Spelling]) -> Told<(&'static Kind, &'static Unit)> {
    let symbols: Vec<&Spelling> = found.iter().copied().filter(|s| s.form == Written::Symbol).collect();
    let found = if symbols.is_empty() { found } else { &symbols };
    let Some(first) = found.first() else { return Err(unknown(text, None)) };
    if let Some(other) = found.iter().find(|s| s.kind != first.kind) {
        return Err(format!(
            "`{}` may be {} or {}; say which is wanted, or write `{}` or `{}`",
            clip(text),
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

/// The symbols that say of which zero a pressure in this unit is counted.
fn pressures(key: &str) -> Vec<&'static str> {
    let ends = [format!("{key}·gauge"), format!("{key}·absolute")];
    ends.iter().filter_map(|end| SPELLINGS.iter().find(|s| s.key == *end)).map(|s| s.written).collect()
}

/// The choice to name where a pressure is bare, if it is one.
fn gauge_or_absolute(key: &str) -> Option<String> {
    let choices = pressures(key);
    let written: Vec<String> = choices.iter().map(|choice| format!("`{choice}`")).collect();
    (!choices.is_empty()).then(|| {
        format!("`{key}` alone does not say whether gauge or absolute; write {}", written.join(" or "))
    })
}

fn of_another_kind(text: &str, found: &Spelling, wanted: &Kind) -> String {
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
        clip(text),
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

fn unknown(text: &str, wanted: Option<&Kind>) -> String {
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
    let mut message = format!("`{}` is not a unit known here", clip(text));
    // Of a short unit one letter makes another unit: `mil` and `mile`, `N/cm` and `N/m`.
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

/// Edits between two spellings: two for a letter, one for its case.
fn distance(a: &str, b: &str) -> usize {
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
fn in_other_case(key: &str) -> Vec<&'static Spelling> {
    let found: Vec<&Spelling> =
        SPELLINGS.iter().filter(|s| s.key.eq_ignore_ascii_case(key) && case_is_free(key, &s.key)).collect();
    let one_unit = found.iter().all(|s| found.first().is_some_and(|first| s.unit.name == first.unit.name));
    if one_unit { found } else { Vec::new() }
}

/// Whether a text may stand for a spelling that differs from it in case: not a single letter (`k`, `T`, `G`, `M`),
/// not what SI reads as another unit (`mPa`, `nm`, `Mm`), not a small m for mega.
fn case_is_free(key: &str, spelling: &str) -> bool {
    const BREAKS: [char; 4] = ['·', '/', '(', ')'];
    key.chars().count() > 1
        && key.split(BREAKS).zip(spelling.split(BREAKS)).all(|(atom, meant)| {
            atom == meant || !(is_prefixed_si(atom) || (atom.starts_with('m') && meant.starts_with('M')))
        })
}

/// Whether this is an SI prefix and an SI symbol: `mPa`, `nm`.
fn is_prefixed_si(atom: &str) -> bool {
    let symbol =
        atom.trim_end_matches(|c: char| c.is_ascii_digit()).strip_prefix(|c| "fpnumcdhkMGT".contains(c));
    matches!(symbol, Some("m" | "g" | "s" | "N" | "Pa" | "J" | "W" | "K" | "Hz" | "L" | "l" | "bar" | "rad"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units;
    use proptest::prelude::*;

    fn kind(name: &str) -> &'static Kind {
        Kind::named(name).unwrap()
    }

    /// Reads, and says value in the written unit, unit and kind.
    fn seen(text: &str) -> (f64, &'static str, &'static str) {
        let reading = read(text).unwrap_or_else(|error| panic!("{error}"));
        assert_eq!(reading.tolerance, None, "{text}");
        (reading.si, reading.unit.name, reading.kind.name)
    }

    /// The sentence of a refusal, where it must be refused.
    fn refused(text: &str, wanted: Option<&str>) -> String {
        let outcome = match wanted {
            None => read(text),
            Some(name) => read_as(text, kind(name)),
        };
        match outcome {
            Err(error @ Error::Text { .. }) => error.to_string(),
            other => panic!("{text:?} gave {other:?}"),
        }
    }

    /// Every text, the number that the unit's factor then takes, the unit's name, the kind.
    const READ: &[(&str, f64, &str, &str)] = &[
        ("225 lbf/in", 225.0, "lbf_in", "LinearStiffness"),
        ("225lbf/in", 225.0, "lbf_in", "LinearStiffness"),
        ("225 lb/in", 225.0, "lbf_in", "LinearStiffness"),
        ("225 lb per in", 225.0, "lbf_in", "LinearStiffness"),
        ("225 LBS/IN.", 225.0, "lbf_in", "LinearStiffness"),
        ("225 lbf_in", 225.0, "lbf_in", "LinearStiffness"),
        ("225 lb/\"", 225.0, "lbf_in", "LinearStiffness"),
        ("5 kgf/mm", 5.0, "kgf_mm", "LinearStiffness"),
        ("-12 mm", -12.0, "mm", "Length"),
        ("\u{2212}12\u{a0}mm", -12.0, "mm", "Length"),
        ("+3.5e-3 m", 3.5e-3, "m", "Length"),
        ("3 MM", 3.0, "mm", "Length"),
        (".5 in.", 0.5, "inch", "Length"),
        ("3 1/2 in", 3.5, "inch", "Length"),
        ("3-1/2 in", 3.5, "inch", "Length"),
        ("3½ in", 3.5, "inch", "Length"),
        ("3 ½ in", 3.5, "inch", "Length"),
        ("½\"", 0.5, "inch", "Length"),
        ("-3 1/2 in", -3.5, "inch", "Length"),
        ("1/2\"", 0.5, "inch", "Length"),
        ("1/2″", 0.5, "inch", "Length"),
        ("1/3 in", 1.0 / 3.0, "inch", "Length"),
        ("2'6\"", 30.0, "inch", "Length"),
        ("2′6″", 30.0, "inch", "Length"),
        ("2’ 6”", 30.0, "inch", "Length"),
        ("2'6''", 30.0, "inch", "Length"),
        ("2'-6\"", 30.0, "inch", "Length"),
        ("2' 6 1/2\"", 30.5, "inch", "Length"),
        ("2 ft 6 in", 30.0, "inch", "Length"),
        ("2 ft. 6 in.", 30.0, "inch", "Length"),
        ("2 FT 6 IN", 30.0, "inch", "Length"),
        ("-2 ft 6 in", -30.0, "inch", "Length"),
        ("-0' 6\"", -6.0, "inch", "Length"),
        ("2'", 2.0, "ft", "Length"),
        ("1/4 mile", 0.25, "mile", "Length"),
        ("3 in²", 3.0, "in2", "Area"),
        ("3 in^2", 3.0, "in2", "Area"),
        ("3 in2", 3.0, "in2", "Area"),
        ("3 sq. in.", 3.0, "in2", "Area"),
        ("350 cu in", 350.0, "in3", "Volume"),
        ("12 US gal", 12.0, "gal_us", "Volume"),
        ("9.81 m/s^2", 9.81, "m_s2", "Acceleration"),
        ("9.81 m/s²", 9.81, "m_s2", "Acceleration"),
        ("1.2 g0", 1.2, "gn", "Acceleration"),
        ("20 g", 20.0, "g", "Mass"),
        ("1,250 lbf", 1250.0, "lbf", "Force"),
        ("1,250,000 N", 1.25e6, "N", "Force"),
        ("1\u{202f}250\u{2009}000 N", 1.25e6, "N", "Force"),
        ("1,250.5 N", 1250.5, "N", "Force"),
        ("12.5 psi gauge", 12.5, "psi_gauge", "GaugePressure"),
        ("15 psig", 15.0, "psi_gauge", "GaugePressure"),
        ("15 PSI Gauge", 15.0, "psi_gauge", "GaugePressure"),
        ("101.325 kPa (a)", 101.325, "kPa_absolute", "AbsolutePressure"),
        ("14.7 psia", 14.7, "psi_absolute", "AbsolutePressure"),
        ("78.5 GPa", 78.5, "GPa", "Stress"),
        ("250 MPa", 250.0, "MPa", "Stress"),
        ("250 MPA", 250.0, "MPa", "Stress"),
        ("11.5e6 psi difference", 11.5e6, "psi", "Stress"),
        ("70 °F", 70.0, "degF", "Temperature"),
        ("70 degF", 70.0, "degF", "Temperature"),
        ("70℉", 70.0, "degF", "Temperature"),
        ("21 °C", 21.0, "degC", "Temperature"),
        ("10 K", 10.0, "K", "Temperature"),
        ("18 delta_degF", 18.0, "delta_degF", "TemperatureDifference"),
        ("18 Δ°F", 18.0, "delta_degF", "TemperatureDifference"),
        ("1.3 Hz", 1.3, "Hz", "Frequency"),
        ("3000 rpm", 3000.0, "rpm", "AngularVelocity"),
        ("3000 1/min", 3000.0, "rpm", "AngularVelocity"),
        ("500 1/km", 500.0, "rev_km", "TurnsPerDistance"),
        ("65 mph", 65.0, "mph", "Velocity"),
        ("100 km/h", 100.0, "km_h", "Velocity"),
        ("100 KM/H", 100.0, "km_h", "Velocity"),
        ("80 ft-lb", 80.0, "ft_lbf", "Torque"),
        ("80 ft lb", 80.0, "ft_lbf", "Torque"),
        ("80 ft.-lb.", 80.0, "ft_lbf", "Torque"),
        ("80 lb-ft", 80.0, "ft_lbf", "Torque"),
        ("5 N m", 5.0, "Nm", "Torque"),
        ("5 Nm", 5.0, "Nm", "Torque"),
        ("5 N·m", 5.0, "Nm", "Torque"),
        ("5 N⋅m", 5.0, "Nm", "Torque"),
        ("5 N*m", 5.0, "Nm", "Torque"),
        ("5 N.m", 5.0, "Nm", "Torque"),
        ("5 N-m", 5.0, "Nm", "Torque"),
        ("120 mechanical hp", 120.0, "hp_mechanical", "Power"),
        ("120 PS", 120.0, "hp_metric", "Power"),
        ("50 %", 50.0, "percent", "Ratio"),
        ("50%", 50.0, "percent", "Ratio"),
        ("0.75", 0.75, "one", "Ratio"),
        ("1", 1.0, "one", "Ratio"),
        ("-1", -1.0, "one", "Ratio"),
        ("1/2", 0.5, "one", "Ratio"),
        ("4.10:1", 4.10, "one", "Ratio"),
        ("3.73 to 1", 3.73, "one", "Ratio"),
        ("41:10", 4.1, "one", "Ratio"),
        ("  \t612 kg \r\n", 612.0, "kg", "Mass"),
    ];

    #[test]
    fn reads_what_people_write() {
        for (text, number, unit, name) in READ {
            let si = kind(name).unit(unit).unwrap().to_si(*number);
            assert_eq!(seen(text), (si, *unit, *name), "{text}");
            assert_eq!(read_as(text, kind(name)).unwrap().si.to_bits(), si.to_bits(), "{text}");
        }
    }

    #[test]
    fn the_wanted_kind_decides_what_the_unit_leaves_open() {
        let stress = read_as("11.5e6 psi", kind("Stress")).unwrap();
        assert_eq!((stress.unit.name, stress.si), ("psi", kind("Stress").unit("psi").unwrap().to_si(11.5e6)));
        let margin = read_as("10 K", kind("TemperatureDifference")).unwrap();
        assert_eq!((margin.unit.name, margin.si), ("delta_K", 10.0));
        let length: units::Length = parse("3 1/2 in").unwrap();
        assert_eq!(length.si(), 0.0889);
    }

    /// Text, kind wanted if any, parts of the sentence.
    const REFUSALS: &[(&str, Option<&str>, &[&str])] = &[
        ("2,5 mm", None, &["2,5 mm", "comma", "`2.5`", "`25`"]),
        ("1,25 lbf", None, &["1,25", "`1.25`"]),
        ("12,3456", None, &["12,3456", "`12.3456`"]),
        ("0,250 in", None, &["`0.250`"]),
        ("1.250,5 mm", None, &["two numbers", "decimal with a point"]),
        ("5", Some("Length"), &["bare number is a ratio", "length is wanted", "mm"]),
        ("3.5:1", Some("Length"), &["ratio", "length is wanted"]),
        ("15 psi", None, &["`psi gauge`", "`psi absolute`", "`psi difference`"]),
        ("1 bar", None, &["`bar gauge`", "`bar absolute`"]),
        ("15 psi", Some("GaugePressure"), &["gauge pressure is wanted", "`psi gauge` or `psi absolute`"]),
        ("15 PSI", Some("AbsolutePressure"), &["`psi gauge` or `psi absolute`"]),
        ("100 kPa", Some("AbsolutePressure"), &["`kPa gauge` or `kPa absolute`"]),
        ("29.9 inHg", None, &["`inHg gauge` or `inHg absolute`"]),
        (
            "15 psig",
            Some("AbsolutePressure"),
            &["is a unit of gauge pressure", "absolute pressure is wanted"],
        ),
        ("15 psig", Some("Stress"), &["is a unit of gauge pressure"]),
        ("120 hp", Some("Power"), &["`hp`", "`mechanical hp`", "`metric hp`"]),
        ("120 HP", None, &["`mechanical hp`", "`metric hp`"]),
        ("120 bhp", None, &["`mechanical hp`", "`metric hp`"]),
        ("12 gal", None, &["`US gal`", "`imp gal`"]),
        ("2 ton", None, &["`short ton`", "`long ton`", "`t`"]),
        ("50 kn", None, &["knot", "`kN`"]),
        ("5 1/s", None, &["`Hz`", "`rad/s`"]),
        ("10 °F", Some("TemperatureDifference"), &["`delta_degF`"]),
        ("10 °C", Some("TemperatureDifference"), &["`delta_degC`"]),
        ("10 delta_degF", Some("Temperature"), &["write `degF`"]),
        ("600 lb", Some("Force"), &["unit of mass", "force is wanted", "`lbf`"]),
        ("600 kg", Some("Force"), &["`kgf`"]),
        ("1.2 g", Some("Acceleration"), &["unit of mass", "`g0`"]),
        ("5 Nm", Some("Energy"), &["unit of torque", "energy is wanted", "kJ"]),
        ("5 J", Some("Torque"), &["unit of energy", "torque is wanted", "N·m"]),
        ("3000 rpm", Some("Frequency"), &["unit of angular velocity", "frequency is wanted", "Hz"]),
        ("50 Hz", Some("AngularVelocity"), &["unit of frequency", "angular velocity is wanted", "rpm"]),
        ("NaN", None, &["finite"]),
        ("nan mm", None, &["finite"]),
        ("inf", None, &["finite"]),
        ("-Infinity mm", None, &["finite"]),
        ("1e999", None, &["too large"]),
        ("1e308 km", None, &["too large"]),
        ("1e-999 m", None, &["too small"]),
        ("", None, &["no text"]),
        (" \u{a0}", None, &["no text"]),
        ("mm", None, &["`mm` is a unit without a number"]),
        ("1/min", None, &["`1/min` is a unit without a number"]),
        ("about 3 mm", None, &["number is missing"]),
        ("3 4 mm", None, &["two numbers"]),
        ("3 mm 4", None, &["two numbers"]),
        ("3 mm 4 mm", None, &["two numbers"]),
        ("3-4 mm", None, &["two numbers"]),
        ("3 -1/2 in", None, &["two numbers"]),
        ("5 1", None, &["two numbers"]),
        ("1.2.3 mm", None, &["two numbers"]),
        ("1 250 N", None, &["two numbers", "`1250`"]),
        ("225 350 lbf/in", None, &["two numbers"]),
        ("2' 6", None, &["two numbers"]),
        ("½2 in", None, &["two numbers"]),
        ("5² mm", None, &["not a unit"]),
        ("2.5' 6\"", None, &["whole number"]),
        ("5 to 10", None, &["range"]),
        ("5 to 10 mm", None, &["range"]),
        ("4.1:1 mm", None, &["without a unit"]),
        ("4.1:0", None, &["ratio"]),
        ("1/0 in", None, &["over zero"]),
        ("3 5/2 in", None, &["smaller than one"]),
        ("5 furlong", None, &["`furlong` is not a unit known here"]),
        ("5 milimeters", None, &["did you mean `millimeters`?"]),
        (
            "5 lbf/inn",
            Some("LinearStiffness"),
            &["did you mean `lbf/in", "linear stiffness is written in", "N/mm"],
        ),
        ("5 mPa", None, &["did you mean `MPa`?"]),
        ("5 mpa", Some("Stress"), &["did you mean `MPa`?"]),
        ("5 mPa abs", Some("AbsolutePressure"), &["did you mean `MPa abs`?"]),
        ("5 nm", None, &["not a unit"]),
        ("5 Mm", None, &["not a unit"]),
        ("5 mpsi", None, &["did you mean"]),
        ("10 k", None, &["not a unit"]),
        ("2 T", None, &["did you mean `t`?"]),
        ("1.2 G", None, &["not a unit"]),
        ("5 mm-", None, &["not a unit"]),
        ("5 m\u{7}m", None, &["control character"]),
    ];

    #[test]
    fn refuses_what_could_mean_two_things_and_says_how_to_write_it() {
        for (text, wanted, parts) in REFUSALS {
            let sentence = refused(text, *wanted);
            for part in *parts {
                assert!(sentence.contains(part), "{text:?}: {part:?} is missing in\n{sentence}");
            }
            if !text.trim().is_empty() && !text.contains(['"', '\u{7}']) {
                assert!(sentence.contains(text), "{text:?} is not named in\n{sentence}");
            }
        }
    }

    #[test]
    fn quotes_no_more_than_sixty_characters() {
        for text in ["9".repeat(10_000), "\u{1b}[31m".repeat(20_000), format!("5 {}", "ж".repeat(115))] {
            let Err(Error::Text { text: quoted, message }) = read(&text) else { panic!("{text} was read") };
            assert!(quoted.chars().count() <= QUOTED && !quoted.contains(char::is_control), "{quoted:?}");
            assert!(message.chars().count() < 160, "{message}");
        }
    }

    #[test]
    fn reads_tolerances() {
        let band = |si| Some(Tolerance { si, form: Form::Bound });
        let stiffness = read("225 lbf/in +/- 3 %").unwrap();
        assert_eq!(stiffness.tolerance, band(stiffness.si * 0.03));
        assert_eq!(read("-12 mm ± 10 %").unwrap().tolerance, band(0.012 * 0.1));
        for text in ["612 kg ± 2 kg", "612 kg +/- 2 kg", "612 +/- 2 kg", "612 ±2kg", "612 kg ± 2000 g"] {
            let mass = read(text).unwrap();
            assert_eq!((mass.si, mass.tolerance), (612.0, band(2.0)), "{text}");
        }
        let scatter = Some(Tolerance { si: 2.0, form: Form::StandardDeviation });
        assert_eq!(read("612 kg ± 2 kg sd").unwrap().tolerance, scatter);
        assert_eq!(read("2'6\" ± 1/8\"").unwrap().tolerance, band(0.125 * 0.0254));
        assert_eq!(read("0.75 ± 0.02").unwrap().tolerance, band(0.02));
        for text in ["70 °F ± 9 °F", "70 ± 9 °F", "70 °F ± 5 K", "70 °F ± 9 delta_degF"] {
            let warm = read(text).unwrap();
            assert_eq!((warm.si, warm.tolerance), (read("70 °F").unwrap().si, band(5.0)), "{text}");
        }
        assert_eq!(read("100 kPa absolute ± 2 kPa").unwrap().tolerance, band(2000.0));
        for (text, part) in [
            ("612 kg ± 2", "unit of its own"),
            ("612 kg ± 2 mm", "mass is wanted"),
            ("612 kg ± -2 kg", "no sign"),
            ("612 kg ±", "in the tolerance"),
            ("612 kg ± 2 kg std", "not a unit"),
            ("612 kg ± 2 kg ± 1 kg", "two numbers"),
            ("50 % ± 2 %", "of what"),
            ("225 ± 3 %", "of what"),
            ("70 °F ± 3 %", "of what"),
        ] {
            assert!(refused(text, None).contains(part), "{}", refused(text, None));
        }
        assert!(refused("225 ± 3 %", Some("LinearStiffness")).contains("bare number"));
        assert!(parse::<units::Mass>("612 kg ± 2 kg").unwrap_err().to_string().contains("tolerance"));
    }

    #[test]
    fn every_spelling_of_every_unit_reads() {
        for &kind in KINDS {
            for unit in kind.units {
                for written in unit.spellings.iter().chain([&unit.symbol, &unit.name]) {
                    let (of, found) =
                        super::unit(written, Some(kind)).unwrap_or_else(|error| panic!("{error}"));
                    assert_eq!((of.name, found.name), (kind.name, unit.name), "{written}");
                    if *written != "1" {
                        let reading = read_as(&format!("2 {written}"), kind).unwrap();
                        assert_eq!(
                            (reading.unit.name, reading.si),
                            (unit.name, unit.to_si(2.0)),
                            "{written}"
                        );
                    }
                }
            }
        }
    }

    /// No spelling names two units, but `K`: a temperature, or a difference where that is wanted.
    #[test]
    fn spellings_are_unique() {
        let mut shared = Vec::new();
        for (at, a) in SPELLINGS.iter().enumerate() {
            for b in SPELLINGS.iter().skip(at + 1) {
                if a.key == b.key && a.unit.name != b.unit.name {
                    shared.push((a.written, a.unit.name, b.unit.name));
                }
            }
        }
        shared.dedup();
        assert_eq!(shared, [("K", "K", "delta_K")]);
    }

    /// Every symbol says its kind by itself, but these four.
    #[test]
    fn symbols_say_their_kind() {
        let mut open = Vec::new();
        for &kind in KINDS {
            for unit in kind.units {
                match read(&format!("2 {}", unit.symbol)) {
                    Ok(reading) => assert_eq!((reading.kind.name, reading.unit.name), (kind.name, unit.name)),
                    Err(error) => {
                        assert!(
                            error.to_string().contains("gauge`") && error.to_string().contains("absolute`")
                        );
                        open.push(unit.symbol);
                    }
                }
            }
        }
        assert_eq!(open, ["Pa", "kPa", "bar", "psi"]);
    }

    #[test]
    fn refused_words_and_crossings_are_of_the_tables() {
        for (words, _) in REFUSED {
            for word in *words {
                assert!(!is_unit(word) && key(word) == *word, "{word}");
            }
        }
        for (unit, wanted, write) in CROSSINGS {
            assert!(KINDS.iter().any(|kind| kind.name != *wanted && kind.unit(unit).is_some()), "{unit}");
            assert!(super::unit(write, Some(kind(wanted))).is_ok(), "{write}");
        }
    }

    #[test]
    fn names_units() {
        assert_eq!(super::unit("", None).unwrap().1.name, "one");
        assert_eq!(super::unit(" ft-lb ", None).unwrap().1.name, "ft_lbf");
        assert!(super::unit("", Some(kind("Length"))).unwrap_err().to_string().contains("bare number"));
        assert!(super::unit("5 mm", None).is_err());
        assert!(super::unit("mm 5", None).is_err());
    }

    #[test]
    fn prints_as_a_shop_does() {
        let us = |text: &str| {
            let reading = read(text).unwrap();
            print(reading.si, reading.kind, System::Us)
        };
        let metric = |text: &str| {
            let reading = read(text).unwrap();
            print(reading.si, reading.kind, System::Metric)
        };
        assert_eq!(us("225 lb/in"), "225 lbf/in");
        assert_eq!(metric("225 lb/in"), "39.4 N/mm");
        assert_eq!(metric("225.5 lb/in"), "39.49 N/mm");
        assert_eq!(us("1.3 Hz"), "1.3 Hz");
        assert_eq!(us("1/3"), "0.3333");
        assert_eq!(us("2'6\""), "30 in");
        assert_eq!(metric("1,250 N"), "1250 N");
        assert_eq!(metric("12,345.6 N"), "12350 N");
        assert_eq!(metric("1.25e9 N"), "1.25e9 N");
        assert_eq!(metric("0.00001 mm"), "1e-5 mm");
        assert_eq!(metric("70 °F"), "21.11 °C");
        assert_eq!(us("21 °C"), "69.8 °F");
        assert_eq!(us("80 N·m"), "59 ft·lbf");
        assert_eq!(metric("-0 mm"), "0 mm");
        assert_eq!(us("15 psig"), "15 psi gauge");
        assert_eq!(print(f64::NAN, kind("Length"), System::Us), "NaN in");
        for kind in KINDS {
            assert!(kind.unit(kind.metric).is_some() && kind.unit(kind.us).is_some(), "{}", kind.name);
            assert!(
                kind.units[0].symbol == kind.si
                    || kind.si == "1"
                    || kind.name.ends_with("Pressure")
                    || kind.si == "K"
            );
        }
    }

    #[test]
    fn prints_the_shortest_number_that_reads_back() {
        let in_unit = |si, of: &str, unit: &str| print_in(si, kind(of), kind(of).unit(unit).unwrap());
        assert_eq!(in_unit(0.0889, "Length", "inch"), "3.5 in");
        assert_eq!(in_unit(0.0127, "Length", "mm"), "12.7 mm");
        assert_eq!(in_unit(read("70 °F").unwrap().si, "Temperature", "degF"), "70 °F");
        assert_eq!(in_unit(0.1 + 0.2, "Ratio", "one"), "0.30000000000000004");
        assert_eq!(in_unit(-0.0, "Length", "mm"), "-0 mm");
        assert_eq!(in_unit(1e-300, "Temperature", "degC"), "1e-300 K");
        assert_eq!(in_unit(5e-324, "Length", "km"), "5e-324 m");
        for (text, of) in [("-356543.5825624346 ksi", "Stress"), ("-0.5877212075618018 mph", "Velocity")] {
            let Reading { si, kind, unit, .. } = read_as(text, kind(of)).unwrap(); // found with a neighbour only
            assert_eq!(read_as(&print_in(si, kind, unit), kind).map(|r| (r.si, r.unit)), Ok((si, unit)));
        }
    }

    fn pieces() -> impl Strategy<Value = String> {
        let pieces = vec![
            "1",
            "25",
            "250",
            "0",
            ".",
            ",",
            "-",
            "+",
            "/",
            " ",
            "e",
            "'",
            "\"",
            "±",
            "+/-",
            "%",
            ":",
            "to ",
            "in",
            "ft",
            "lb",
            "lbf",
            "N",
            "m",
            "°",
            "F",
            "K",
            "½",
            "²",
            "^",
            "*",
            "·",
            "(",
            ")",
            "psi",
            "gauge",
            "sd",
            "hp",
            "\u{2009}",
            "\u{a0}",
            "Δ",
            "9999999999",
            "e999",
            "e-400",
            "1/min",
            "_",
            "𝛑",
            "\0",
        ];
        prop::collection::vec(prop::sample::select(pieces), 0..14).prop_map(|parts| parts.concat())
    }

    proptest! {
        #[test]
        fn printed_text_reads_back_to_the_same_bits(
            si in prop_oneof![
                prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL | prop::num::f64::ZERO, -1e6..1e6, -1.0..1.0
            ]
        ) {
            for &kind in KINDS {
                for unit in kind.units {
                    let text = print_in(si, kind, unit);
                    let reading = read_as(&text, kind).map_err(|error| TestCaseError::fail(error.to_string()))?;
                    prop_assert_eq!(reading.si.to_bits(), si.to_bits(), "{} {}", text, kind.name);
                }
            }
        }

        #[test]
        fn what_was_written_in_a_unit_is_printed_in_it(number in prop_oneof![-1e6..1e6, -1.0..1.0, -1e30..1e30]) {
            for unit in KINDS.iter().flat_map(|kind| kind.units) {
                let kind = KINDS.iter().find(|kind| kind.unit(unit.name).is_some()).unwrap();
                let si = unit.to_si(number);
                prop_assert_eq!(read_as(&print_in(si, kind, unit), kind).unwrap().unit.name, unit.name);
            }
        }

        #[test]
        fn rounded_text_reads_back_to_four_digits(si in prop_oneof![-1e9..1e9, -1.0..1.0]) {
            for &kind in KINDS {
                for system in [System::Metric, System::Us] {
                    let text = print(si, kind, system);
                    let reading = read_as(&text, kind).map_err(|error| TestCaseError::fail(error.to_string()))?;
                    let (value, written) = (reading.unit.from_si(si), reading.unit.from_si(reading.si));
                    prop_assert!((value - written).abs() <= 5.01e-4 * value.abs(), "{} for {}", text, value);
                }
            }
        }

        #[test]
        fn nothing_panics_and_what_is_read_is_finite(text in prop_oneof![any::<String>(), pieces(), "\\PC{0,200}"]) {
            for outcome in [read(&text), read_as(&text, kind("Length")), read_as(&text, kind("GaugePressure"))] {
                match outcome {
                    Ok(reading) => prop_assert!(reading.si.is_finite() && reading.tolerance.is_none_or(|t| t.si >= 0.0)),
                    Err(error) => prop_assert_eq!(error.number(), 4),
                }
            }
            let _ = super::unit(&text, None);
        }

        #[test]
        fn grouping_and_spacing_do_not_change_the_value(
            number in 0_u64..1_000_000_000_000, decimals in "(\\.[0-9]{1,6})?", before in "[ \u{a0}\t]{0,3}",
            between in "[ \u{a0}\u{2009}]{0,3}", separator in "[,\u{2009}\u{202f}]",
        ) {
            let digits = number.to_string();
            let mut grouped = String::new();
            for (at, digit) in digits.chars().enumerate() {
                if at > 0 && (digits.len() - at).is_multiple_of(3) {
                    grouped.push_str(&separator);
                }
                grouped.push(digit);
            }
            let bare = read(&format!("{digits}{decimals}N")).unwrap();
            let spaced = read(&format!("{before}{grouped}{decimals}{between}N{before}")).unwrap();
            prop_assert_eq!(bare, spaced);
            prop_assert_eq!(bare.si, format!("{digits}{decimals}").parse::<f64>().unwrap());
        }

        #[test]
        fn mixed_numbers_are_whole_plus_fraction(whole in 0_u32..1000, numerator in 0_u32..64, more in 1_u32..64) {
            let denominator = numerator + more;
            let value = f64::from(whole) + f64::from(numerator) / f64::from(denominator);
            for joint in [" ", "-", "\u{a0}"] {
                let text = format!("{whole}{joint}{numerator}/{denominator}");
                prop_assert_eq!(read(&text).unwrap().si, value);
                prop_assert_eq!(read(&format!("-{text}")).unwrap().si, -value);
            }
        }
    }
}
