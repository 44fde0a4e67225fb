//! Docs of the C header: what a call needs, in C spelling and ASCII. Formula and source are in the book and in `axw_function_describe`.

use crate::words::{flow, unit};
use crate::{Api, Content, Docs, Function, Model, Output, Parameter, Range, Shape, is_wide, snake};
use std::collections::BTreeMap;

/// Names around a text: what is C, and what is only a symbol of a formula.
pub struct Scope<'a> {
    api: &'a Api,
    system: &'a str,
    model: Option<&'a Model>,
    symbols: BTreeMap<&'a str, &'a str>,
    own: Vec<&'a str>,
}

impl<'a> Scope<'a> {
    /// Names around the docs of a function, a model or a method.
    pub fn of(
        api: &'a Api,
        system: &'a str,
        model: Option<&'a Model>,
        function: Option<&'a Function>,
    ) -> Self {
        let (mut symbols, mut own) = (BTreeMap::new(), Vec::new());
        let fields = model.iter().flat_map(|model| &model.fields).map(|of| (&of.name, &of.meaning));
        let results = function.iter().flat_map(|of| &of.results).map(|of| (&of.name, &of.meaning));
        let arguments = function.iter().flat_map(|of| &of.parameters).map(|of| (&of.name, &of.meaning));
        for (name, meaning) in fields.chain(results).chain(arguments) {
            own.push(name.as_str());
            if let Some((symbol, _)) = symbol(meaning) {
                symbols.insert(symbol, name.as_str());
            }
        }
        // Fields of lists and tables, and columns of the model's other answers, have the names of functions, too.
        if let Some(model) = model {
            model.fields.iter().for_each(|field| below(&field.shape, &mut own));
            own.extend(model.methods.iter().flat_map(|of| &of.results).map(|of| of.name.as_str()));
        }
        Scope { api, system, model, symbols, own }
    }

    /// A text with symbols and paths as C names them.
    pub fn text(&self, text: &str) -> String {
        let parts = text.split('`').enumerate();
        let parts = parts.map(|(place, part)| self.named(part, place % 2 == 1));
        let joined = parts.collect::<Vec<_>>().join("`");
        ascii(&joined.replace("[`", "`").replace("`]", "`"))
    }

    /// The meaning of an argument, a result or a field, without its symbol.
    fn meaning(&self, meaning: &str) -> String {
        self.text(symbol(meaning).map_or(meaning, |(_, rest)| rest))
    }

    /// The names in a piece of text: all of them in code, elsewhere paths only.
    fn named(&self, text: &str, is_code: bool) -> String {
        let is_name = |letter: char| letter.is_ascii_alphanumeric() || letter == '_';
        let (mut out, mut rest) = (String::new(), text);
        while let Some(first) = rest.chars().next() {
            let mut end = rest.find(|letter| !is_name(letter)).unwrap_or(rest.len());
            if first.is_ascii_digit() || end == 0 {
                end = end.max(first.len_utf8());
                out.push_str(&rest[..end]);
                rest = &rest[end..];
                continue;
            }
            // A path goes on after a point or two colons.
            loop {
                let next = &rest[end..];
                let gap = if next.starts_with("::") { 2 } else { usize::from(next.starts_with('.')) };
                let after = &next[gap..];
                let more = after.find(|letter| !is_name(letter)).unwrap_or(after.len());
                if gap == 0 || more == 0 || after.starts_with(|letter: char| letter.is_ascii_digit()) {
                    break;
                }
                end += gap + more;
            }
            let name = &rest[..end];
            let is_path = name.contains(['.', ':']);
            let known = if is_code || is_path { self.name(name) } else { None };
            out.push_str(known.as_deref().unwrap_or(name));
            rest = &rest[end..];
        }
        out
    }

    /// Name in C: a symbol by its argument, a path by its entry.
    fn name(&self, name: &str) -> Option<String> {
        if let Some(name) = self.symbols.get(name) {
            return Some((*name).to_owned());
        }
        if self.own.contains(&name) {
            return None;
        }
        let parts: Vec<&str> = name.split(['.', ':']).filter(|part| !part.is_empty()).collect();
        let parts = match &parts[..] {
            ["crate", rest @ ..] | ["self" | "super", rest @ ..] => rest,
            all => all,
        };
        let is_function = |system: &str, name: &str| {
            self.api.functions.iter().any(|of| of.system == system && of.name == name)
        };
        let model = |system: &str, name: &str| {
            self.api.models.iter().find(|of| of.system == system && of.name == name)
        };
        let entry = |of: &Model| format!("axw_{}_{}", of.system, snake(&of.name));
        let method = |of: &Model, name: &str| {
            of.methods.iter().any(|method| method.name == name).then(|| format!("{}_{name}", entry(of)))
        };
        match *parts {
            [one] => {
                if let Some(of) = self.model.and_then(|of| method(of, one)) {
                    return Some(of);
                }
                if is_function(self.system, one) {
                    return Some(format!("axw_{}_{one}", self.system));
                }
                model(self.system, one).map(entry)
            }
            [first, second] => {
                if is_function(first, second) {
                    return Some(format!("axw_{first}_{second}"));
                }
                model(first, second)
                    .map(entry)
                    .or_else(|| model(self.system, first).and_then(|of| method(of, second)))
            }
            [first, second, third] => model(first, second).and_then(|of| method(of, third)),
            _ => None,
        }
    }

    fn parameter(&self, of: &Parameter) -> String {
        let list = if of.list { ", list" } else { "" };
        let range = range(&of.range);
        format!("    {} {}{range}{list}: {}", of.name, unit(&of.kind), self.meaning(&of.meaning))
    }

    fn output(&self, function: &Function, of: &Output) -> String {
        let name = if function.result_type.is_some() { of.name.as_str() } else { "result" };
        format!("    *{name} {}: {}", content(of), self.meaning(&of.meaning))
    }

    /// Docs of a function or a method.
    pub fn function(&self, function: &Function) -> Vec<String> {
        let mut lines = vec![self.text(&function.docs.summary)];
        lines.extend(function.parameters.iter().map(|of| self.parameter(of)));
        match is_wide(function) {
            true => {
                let texts = function.results.iter().any(|of| of.content == Content::Text);
                let texts = if texts { ", whose texts live until the model is freed" } else { "" };
                lines.push(format!(
                    "    *result (struct): {} results{texts}; set its `size` to `sizeof *result` first",
                    function.results.len()
                ));
            }
            false => lines.extend(function.results.iter().map(|of| self.output(function, of))),
        }
        let notes = first_sentence(&without_limits(&function.docs.valid_for));
        lines.extend((!notes.is_empty()).then(|| self.text(&notes)));
        lines.extend(self.caution(&function.docs));
        lines
    }

    /// Docs of a field of a struct of results.
    pub fn field(&self, of: &Output) -> String {
        format!("{}: {}", content(of), self.meaning(&of.meaning))
    }

    fn caution(&self, docs: &Docs) -> Option<String> {
        (!docs.caution.is_empty()).then(|| format!("Caution: {}", self.text(&docs.caution)))
    }

    /// Docs of a model, its document included.
    pub fn model(&self, model: &Model) -> Vec<String> {
        let mut lines = vec![self.text(&model.docs.summary)];
        for field in &model.fields {
            let what = match &field.shape {
                Shape::Quantity(kind) => kind.words.as_str(),
                Shape::Choice(_) => "choice",
                Shape::Text => "text",
                Shape::List(_) => "list",
                Shape::Fields(_) => "table",
            };
            let optional = match (field.may_be_none, field.optional) {
                (true, _) => ", optional, or \"none\"",
                (false, true) => ", optional",
                (false, false) => "",
            };
            lines.push(format!("    {} ({what}{optional}): {}", field.name, self.meaning(&field.meaning)));
        }
        lines.push(format!("Valid for: {}", self.text(&model.docs.valid_for)));
        lines.extend(self.caution(&model.docs));
        lines
    }
}

/// Names of the fields in lists and tables.
fn below<'a>(shape: &'a Shape, names: &mut Vec<&'a str>) {
    if let Shape::List(entry) | Shape::Fields(entry) = shape {
        for field in &entry.fields {
            names.push(field.name.as_str());
            below(&field.shape, names);
        }
    }
}

/// Symbol at the start of a meaning, and what follows it.
fn symbol(meaning: &str) -> Option<(&str, &str)> {
    let (symbol, rest) = meaning.strip_prefix('`')?.split_once('`')?;
    let is_symbol = symbol.starts_with(char::is_alphabetic)
        && symbol.chars().all(|letter| letter.is_ascii_alphanumeric() || letter == '_' || letter == '\'');
    Some((symbol, rest.strip_prefix(", ")?)).filter(|_| is_symbol)
}

/// Content of a result, in brackets.
fn content(of: &Output) -> String {
    match &of.content {
        Content::Quantity(kind) => unit(kind),
        Content::Choice(name) => format!("(`AXW_{}_...`)", snake(name).to_uppercase()),
        Content::Text => "(text)".into(),
        Content::Whole => "(count)".into(),
        Content::Table => "(table)".into(),
    }
}

/// A range as it stands behind a unit.
fn range(range: &Range) -> String {
    let number = |value: f64| {
        use std::f64::consts::{FRAC_PI_2, PI, TAU};
        let known = [(FRAC_PI_2, "pi/2"), (PI, "pi"), (TAU, "2 pi"), (-FRAC_PI_2, "-pi/2"), (-PI, "-pi")];
        let known = known.iter().find(|(of, _)| *of == value);
        let is_plain = value == 0.0 || (1e-4..1e6).contains(&value.abs());
        let written = if is_plain { value.to_string() } else { format!("{value:e}") };
        known.map_or(written, |(_, words)| (*words).to_owned())
    };
    let mut said = Vec::new();
    said.extend(range.whole.then(|| "whole".to_owned()));
    match (range.lower, range.upper, range.lower_open || range.upper_open) {
        (Some(lower), Some(upper), false) => said.push(format!("{} to {}", number(lower), number(upper))),
        (lower, upper, _) => {
            let sign = |sign: &str, is_open: bool| format!("{sign}{}", if is_open { "" } else { "=" });
            said.extend(lower.map(|of| format!("{} {}", sign(">", range.lower_open), number(of))));
            said.extend(upper.map(|of| format!("{} {}", sign("<", range.upper_open), number(of))));
        }
    }
    said.extend(range.exceeds.iter().map(|of| format!("> {of}")));
    if said.is_empty() { String::new() } else { format!(" {}", said.join(", ")) }
}

/// The conditions of a text without its list of limits.
fn without_limits(valid_for: &str) -> String {
    let is_limit = |line: &&str| line.starts_with("- `");
    let lines: Vec<&str> = valid_for.lines().filter(|line| !is_limit(line)).collect();
    lines.join(" ").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The first sentence of a text.
fn first_sentence(text: &str) -> String {
    let end = text.match_indices(". ").find(|(place, _)| {
        let after = text[place + 2..].chars().next();
        after.is_some_and(|letter| letter.is_uppercase() || letter == '`')
    });
    end.map_or(text, |(place, _)| &text[..=place]).to_owned()
}

/// A text in ASCII, with units as the library reads them too.
pub fn ascii(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '°' if matches!(letters.peek(), Some('C' | 'F' | 'R')) => out.push_str("deg"),
            '°' => out.push_str(" deg"),
            '·' | '×' => out.push('*'),
            '²' => out.push_str("^2"),
            '³' => out.push_str("^3"),
            '⁴' => out.push_str("^4"),
            '⁶' => out.push_str("^6"),
            'µ' => out.push('u'),
            '±' => out.push_str("+/-"),
            '—' | '–' => out.push('-'),
            'Ç' => out.push('C'),
            'ä' => out.push_str("ae"),
            'ö' => out.push_str("oe"),
            'ü' => out.push_str("ue"),
            other => out.push(other),
        }
    }
    out
}

/// Lines of a comment.
pub fn comment(lines: &[String]) -> String {
    flow(lines).iter().map(|line| format!("/// {line}").trim_end().to_owned() + "\n").collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sentence_ends_before_a_capital_letter() {
        assert_eq!(first_sentence("Steel, e.g. of springs. More."), "Steel, e.g. of springs.");
        assert_eq!(first_sentence("One sentence alone"), "One sentence alone");
        assert_eq!(first_sentence("Up to 0.5 m. `x` is left out."), "Up to 0.5 m.");
    }

    #[test]
    fn limits_leave_the_conditions() {
        assert_eq!(without_limits("- `0 < load`\n- `travel finite`\n\nSmall\ntravel."), "Small travel.");
    }

    #[test]
    fn a_range_names_its_ends() {
        let of = |lower, upper, exceeds: &[&str]| {
            let exceeds = exceeds.iter().map(|name| (*name).to_owned()).collect();
            range(&Range { lower, upper, lower_open: true, exceeds, ..Range::default() })
        };
        assert_eq!(of(Some(0.0), Some(1.5), &[]), " > 0, <= 1.5");
        assert_eq!(of(None, Some(std::f64::consts::PI), &["wire"]), " <= pi, > wire");
        assert_eq!(of(None, None, &[]), "");
    }

    #[test]
    fn a_meaning_begins_with_its_symbol_or_not() {
        assert_eq!(symbol("`k_w`, rate at the wheel"), Some(("k_w", "rate at the wheel")));
        assert_eq!(symbol("`water` or `glycol`"), None);
        assert_eq!(symbol("`mass`, `volume`"), Some(("mass", "`volume`")));
    }

    #[test]
    fn units_in_ascii_are_read_too() {
        assert_eq!(ascii("15 °C, 3 N·m, 2 kg·m², 5°, 1 µm"), "15 degC, 3 N*m, 2 kg*m^2, 5 deg, 1 um");
    }
}
