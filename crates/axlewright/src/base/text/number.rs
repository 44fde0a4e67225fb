//! Numbers as people write them: thousands, fractions, mixed numbers.

use super::plain::Told;
use super::print::shortened;

pub(super) const TWO_NUMBERS: &str = "there are two numbers where one is wanted; write one number and its unit, a decimal with \
     a point, thousands as `1,250` or `1250`";

/// A signed decimal, fraction or mixed number, and the text after it.
pub(super) fn number(text: &str) -> Told<(f64, &str)> {
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

pub(super) fn no_number(text: &str) -> String {
    let word = text.to_ascii_lowercase();
    if word.starts_with("nan") || word.starts_with("inf") {
        "only a finite number is a quantity; write it like `225 lbf/in`".into()
    } else {
        "a number is missing at the start; write it like `225 lbf/in`".into()
    }
}

/// Number of bytes that are digits, thousands commas, a point with digits, an exponent with digits.
pub(super) fn decimal_length(text: &[u8]) -> usize {
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

pub(super) fn decimal(digits: &str) -> Told<f64> {
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
                shortened(digits),
                plain_decimal(digits)
            ));
        }
    }
    let value: f64 = plain.parse().map_err(|_| format!("`{}` is not a number", shortened(digits)))?;
    let mantissa = plain.split(['e', 'E']).next().unwrap_or("");
    in_range(value, mantissa.contains(|c: char| matches!(c, '1'..='9')))
}

/// The text with its last comma read as a decimal comma.
pub(super) fn plain_decimal(digits: &str) -> String {
    match digits.rsplit_once(',') {
        Some((whole, part)) if !part.contains('.') => format!("{}.{part}", whole.replace(',', "")),
        _ => digits.replace(',', ""),
    }
}

/// A whole number with the rest of a fraction (`1` `/2`) or of a mixed number (`3` ` 1/2`), if that follows.
pub(super) fn with_fraction(whole: f64, rest: &str) -> Told<(f64, &str)> {
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

pub(super) fn integer(text: &str) -> Option<(f64, &str)> {
    let (digits, rest) = text.split_at(text.bytes().take_while(u8::is_ascii_digit).count());
    Some((digits.parse().ok()?, rest))
}

pub(super) fn quotient(numerator: f64, denominator: f64) -> Told<f64> {
    if denominator == 0.0 { Err("a fraction is over zero".into()) } else { Ok(numerator / denominator) }
}

/// Refuses a number that a unit makes too large, or too small to be told from zero.
pub(super) fn in_range(value: f64, other_than_zero: bool) -> Told<f64> {
    if !value.is_finite() {
        return Err("the number is too large to compute with".into());
    }
    if value == 0.0 && other_than_zero {
        return Err("the number is too small to be told from zero; write 0".into());
    }
    Ok(value)
}
