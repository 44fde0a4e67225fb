//! Text from any keyboard in one plain form.

/// A result, or the message of a refusal without the whole text yet.
pub(super) type Told<T> = core::result::Result<T, String>;

/// Characters in the longest text that is looked at.
const LONGEST: usize = 120;
pub(super) fn tidy(text: &str) -> Told<String> {
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
pub(super) fn plain(text: &str) -> String {
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
            '⁴' => out.push_str("^4"),
            '⁶' => out.push_str("^6"),
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
