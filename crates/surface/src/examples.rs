//! The Rust example in the docs of a function or a method as Python: the same calls with keywords, and the same printed results.

use crate::{Api, Content, Entry, Field, Function, Model, Shape};
use std::collections::{BTreeMap, BTreeSet};
use syn::punctuated::Punctuated;
use syn::{Expr, Lit, Pat, Stmt, Token};

/// Letters of the longest line.
const WIDTH: usize = 96;

/// Value of an expression in Python.
#[derive(Clone)]
enum Value {
    /// Text of an expression, and the model that it is.
    Text(String, Option<String>),
    /// A call or a mapping: its beginning, its parts, its end, and the model that it is.
    Parts(String, Vec<String>, &'static str, Option<String>),
    /// Elements of a list or a tuple.
    List(Vec<Value>),
    /// A closure: its arguments and its body.
    Closure(Vec<String>, Box<Expr>),
    /// Nothing is written.
    Nothing,
}

impl Value {
    fn text(&self) -> Option<String> {
        Some(match self {
            Value::Text(text, _) => text.clone(),
            Value::Parts(begin, parts, end, _) => format!("{begin}{}{end}", parts.join(", ")),
            Value::List(all) => {
                format!("[{}]", all.iter().map(Value::text).collect::<Option<Vec<_>>>()?.join(", "))
            }
            Value::Closure(..) | Value::Nothing => return None,
        })
    }

    fn model(&self) -> Option<&str> {
        match self {
            Value::Text(_, model) | Value::Parts(_, _, _, model) => model.as_deref(),
            _ => None,
        }
    }
}

/// Names and values that are known while an example is read.
struct Reader<'a> {
    api: &'a Api,
    system: &'a str,
    names: BTreeMap<String, Value>,
    modules: BTreeSet<String>,
    units: BTreeSet<String>,
}

/// The lines of the example, for a docstring; nothing if no printed result of it has a form in Python.
pub fn python(api: &Api, of: &Function) -> Option<Vec<String>> {
    let code = of.docs.example.split("```").nth(1)?;
    let code = code.lines().filter(|line| !line.starts_with("# ")).collect::<Vec<_>>().join("\n");
    let block: syn::Block = syn::parse_str(&format!("{{{code}\n}}")).ok()?;
    let mut reader = Reader {
        api,
        system: &of.system,
        names: BTreeMap::new(),
        modules: BTreeSet::new(),
        units: BTreeSet::new(),
    };
    let (mut lines, mut shown) = (Vec::new(), false);
    for statement in &block.stmts {
        match statement {
            Stmt::Local(local) => {
                lines.extend(reader.bound(&local.pat, &local.init.as_ref()?.expr).unwrap_or_default())
            }
            Stmt::Macro(of) if of.mac.path.is_ident("assert_eq") => {
                if let Some(made) = reader.compared(&of.mac) {
                    lines.extend(made);
                    shown = true;
                }
            }
            _ => {}
        }
    }
    let list = |names: &BTreeSet<String>| names.iter().cloned().collect::<Vec<_>>();
    let mut out = statement("from axlewright import ", &list(&reader.modules), "");
    if !reader.units.is_empty() {
        out.extend(statement("from axlewright.units import ", &list(&reader.units), ""));
    }
    out.extend(lines);
    shown.then_some(out)
}

/// A statement of parts, on one line or on several.
fn statement(begin: &str, parts: &[String], end: &str) -> Vec<String> {
    let whole = format!(">>> {begin}{}{end}", parts.join(", "));
    if whole.lines().all(|line| line.chars().count() <= WIDTH) || parts.is_empty() {
        return whole
            .lines()
            .enumerate()
            .map(|(at, line)| if at == 0 { line.into() } else { format!("... {line}").trim_end().into() })
            .collect();
    }
    let (open, close) = if end.is_empty() { ("(", ")") } else { ("", end) };
    let mut lines = vec![format!(">>> {begin}{open}")];
    lines.extend(broken(parts, 4).iter().map(|line| format!("... {line}")));
    lines.push(format!("... {close}"));
    lines
}

/// Parts on lines: several on one where they fit, one of a long list or mapping on lines of its own.
fn broken(parts: &[String], indent: usize) -> Vec<String> {
    let room = WIDTH - 4;
    let mut lines: Vec<String> = Vec::new();
    let mut is_open = false;
    for part in parts {
        let length = part.chars().count() + 2;
        match lines.last_mut() {
            Some(last) if is_open && last.chars().count() + length <= room => {
                last.push_str(&format!(" {part},"))
            }
            _ if indent + length <= room => {
                lines.push(format!("{:indent$}{part},", ""));
                is_open = true;
            }
            _ => {
                is_open = false;
                match part.find(['[', '{']) {
                    Some(at) if part.ends_with([']', '}']) => {
                        lines.push(format!("{:indent$}{}", "", &part[..=at]));
                        lines.extend(broken(&inside(&part[at + 1..part.len() - 1]), indent + 4));
                        lines.push(format!("{:indent$}{},", "", &part[part.len() - 1..]));
                    }
                    _ => lines.push(format!("{:indent$}{part},", "")),
                }
            }
        }
    }
    lines
}

/// The parts of a list: those between commas outside of brackets and quotes.
fn inside(text: &str) -> Vec<String> {
    let (mut parts, mut depth, mut quoted) = (vec![String::new()], 0, false);
    for letter in text.chars() {
        match letter {
            '"' => quoted = !quoted,
            '[' | '{' | '(' if !quoted => depth += 1,
            ']' | '}' | ')' if !quoted => depth -= 1,
            ',' if !quoted && depth == 0 => {
                parts.push(String::new());
                continue;
            }
            _ => {}
        }
        if let Some(part) = parts.last_mut() {
            part.push(letter);
        }
    }
    parts.iter().map(|part| part.trim().to_owned()).filter(|part| !part.is_empty()).collect()
}

/// `4.10` as `4.1`, `300.0` as `300`.
fn number(digits: &str) -> String {
    let digits = digits.replace('_', "");
    match digits.split_once('.') {
        Some((whole, rest)) if rest.trim_end_matches('0').is_empty() => whole.to_owned(),
        Some((whole, rest)) => format!("{whole}.{}", rest.trim_end_matches('0')),
        None => digits,
    }
}

impl Reader<'_> {
    /// `let name = value;`
    fn bound(&mut self, pattern: &Pat, value: &Expr) -> Option<Vec<String>> {
        let value = self.value(value)?;
        let pattern = match pattern {
            Pat::Type(typed) => &*typed.pat,
            other => other,
        };
        match (pattern, value) {
            (Pat::Ident(name), closure @ Value::Closure(..)) => {
                self.names.insert(name.ident.to_string(), closure);
                Some(Vec::new())
            }
            (Pat::Ident(name), value) => {
                let name = name.ident.to_string();
                let model = value.model().map(str::to_owned);
                let lines = match &value {
                    Value::Parts(begin, parts, end, _) => statement(&format!("{name} = {begin}"), parts, end),
                    other => statement(&format!("{name} = {}", other.text()?), &[], ""),
                };
                self.names.insert(name.clone(), Value::Text(name, model));
                Some(lines)
            }
            (Pat::Tuple(names), Value::List(values)) => {
                let mut made = Vec::new();
                for pattern in &names.elems {
                    let Pat::Ident(name) = pattern else { return None };
                    let name = name.ident.to_string();
                    self.names.insert(name.clone(), Value::Text(name.clone(), None));
                    made.push(name);
                }
                let values = values.iter().map(Value::text).collect::<Option<Vec<_>>>()?;
                Some(statement(&format!("{} = {}", made.join(", "), values.join(", ")), &[], ""))
            }
            _ => None,
        }
    }

    /// `assert_eq!(format!("{:.1} mm", x), "3.0 mm")`, `assert_eq!(x, "word")`
    fn compared(&mut self, of: &syn::Macro) -> Option<Vec<String>> {
        let sides = of.parse_body_with(Punctuated::<Expr, Token![,]>::parse_terminated).ok()?;
        let [shown, Expr::Lit(result)] = &sides.iter().collect::<Vec<_>>()[..] else { return None };
        let result = match &result.lit {
            Lit::Str(words) => format!("'{}'", words.value()),
            Lit::Float(digits) => digits.base10_digits().to_owned(),
            _ => return None,
        };
        let asked = match shown {
            Expr::Macro(of) if of.mac.path.is_ident("format") => self.format(&of.mac)?,
            other => self.value(other)?.text()?,
        };
        Some(vec![format!(">>> {asked}"), result])
    }

    /// `format!("{:.1} mm", sag.in_::<mm>())` as `f"{sag.to(mm):.1f} mm"`
    fn format(&mut self, of: &syn::Macro) -> Option<String> {
        let arguments = of.parse_body_with(Punctuated::<Expr, Token![,]>::parse_terminated).ok()?;
        let mut arguments = arguments.iter();
        let Expr::Lit(syn::ExprLit { lit: Lit::Str(form), .. }) = arguments.next()? else { return None };
        let form = form.value();
        let mut out = String::new();
        let mut rest = form.as_str();
        while let Some((before, after)) = rest.split_once('{') {
            let (form, after) = after.split_once('}')?;
            let value = self.value(arguments.next()?)?.text()?;
            let form = match form {
                "" => String::new(),
                digits => format!(":{}f", digits.strip_prefix(':')?),
            };
            out.push_str(&format!("{before}{{{value}{form}}}"));
            rest = after;
        }
        Some(format!("f\"{out}{rest}\""))
    }

    fn plain(text: impl Into<String>) -> Option<Value> {
        Some(Value::Text(text.into(), None))
    }

    fn value(&mut self, of: &Expr) -> Option<Value> {
        match of {
            Expr::Try(of) => self.value(&of.expr),
            Expr::Paren(of) => self.value(&of.expr),
            Expr::Reference(of) => self.value(&of.expr),
            Expr::Lit(of) => match &of.lit {
                Lit::Float(digits) => Self::plain(number(digits.base10_digits())),
                Lit::Int(digits) => Self::plain(digits.base10_digits()),
                Lit::Str(words) if words.value().contains('\n') => {
                    Self::plain(format!("'''{}'''", words.value().replace("\n    ", "\n")))
                }
                Lit::Str(words) => Self::plain(format!("\"{}\"", words.value())),
                _ => None,
            },
            Expr::Unary(syn::ExprUnary { op: syn::UnOp::Neg(_), expr, .. }) => {
                Self::plain(format!("-{}", self.value(expr)?.text()?))
            }
            Expr::Binary(of) => {
                let sign = match of.op {
                    syn::BinOp::Mul(_) => "*",
                    syn::BinOp::Div(_) => "/",
                    syn::BinOp::Add(_) => "+",
                    syn::BinOp::Sub(_) => "-",
                    _ => return None,
                };
                let (left, right) = (self.value(&of.left)?.text()?, self.value(&of.right)?.text()?);
                Self::plain(format!("{left} {sign} {right}"))
            }
            Expr::Array(of) => {
                of.elems.iter().map(|one| self.value(one)).collect::<Option<_>>().map(Value::List)
            }
            Expr::Tuple(of) => {
                of.elems.iter().map(|one| self.value(one)).collect::<Option<_>>().map(Value::List)
            }
            Expr::Macro(of) if of.mac.path.is_ident("vec") => {
                let all = of.mac.parse_body_with(Punctuated::<Expr, Token![,]>::parse_terminated).ok()?;
                all.iter().map(|one| self.value(one)).collect::<Option<_>>().map(Value::List)
            }
            Expr::Closure(of) => {
                let names = of.inputs.iter().map(|input| match input {
                    Pat::Ident(name) => Some(name.ident.to_string()),
                    Pat::Type(syn::PatType { pat, .. }) => match &**pat {
                        Pat::Ident(name) => Some(name.ident.to_string()),
                        _ => None,
                    },
                    _ => None,
                });
                Some(Value::Closure(names.collect::<Option<_>>()?, of.body.clone()))
            }
            Expr::Block(of) => match &of.block.stmts[..] {
                [Stmt::Expr(only, None)] => self.value(only),
                _ => None,
            },
            Expr::Path(of) => self.path(&of.path),
            Expr::Field(of) => {
                let syn::Member::Named(name) = &of.member else { return None };
                Self::plain(format!("{}.{name}", self.value(&of.base)?.text()?))
            }
            Expr::Struct(of) if of.rest.is_none() => {
                let name = of.path.segments.last()?.ident.to_string();
                let mut fields = Vec::new();
                for field in &of.fields {
                    let syn::Member::Named(member) = &field.member else { return None };
                    fields.push((member.to_string(), self.value(&field.expr)?));
                }
                self.built(&name, fields)
            }
            Expr::Index(of) => {
                Self::plain(format!("{}[{}]", self.value(&of.expr)?.text()?, self.value(&of.index)?.text()?))
            }
            Expr::Call(of) => self.call(of),
            Expr::MethodCall(of) => self.method(of),
            _ => None,
        }
    }

    /// A name, a word of a choice, or nothing.
    fn path(&mut self, path: &syn::Path) -> Option<Value> {
        let last = path.segments.last()?.ident.to_string();
        let Some(before) = path.segments.iter().rev().nth(1) else {
            return match last.as_str() {
                "None" => Some(Value::Nothing),
                name => self.names.get(name).cloned(),
            };
        };
        let owner = before.ident.to_string();
        match (owner.as_str(), last.as_str()) {
            ("Stated", "Unknown") => Some(Value::Nothing),
            ("Stated", "None") => Self::plain("\"none\""),
            _ => {
                let choice =
                    self.api.choices.iter().find(|choice| choice.name == owner && owner != "Verdict")?;
                let (_, word) = choice.words.iter().find(|(variant, _)| *variant == last)?;
                Self::plain(format!("\"{word}\""))
            }
        }
    }

    /// A model, or a table of its document.
    fn built(&mut self, name: &str, fields: Vec<(String, Value)>) -> Option<Value> {
        let written = fields.into_iter().filter(|(_, value)| !matches!(value, Value::Nothing));
        let written: Vec<(String, Value)> = written.collect();
        if let Some(model) =
            self.api.models.iter().find(|model| model.system == self.system && model.name == name)
        {
            self.modules.insert(model.system.clone());
            let parts = written.iter().map(|(name, value)| Some(format!("{name}={}", value.text()?)));
            let begin = format!("{}.{name}(", model.system);
            return Some(Value::Parts(begin, parts.collect::<Option<_>>()?, ")", Some(name.to_owned())));
        }
        let parts = written.iter().map(|(name, value)| Some(format!("\"{name}\": {}", value.text()?)));
        Self::plain(format!("{{{}}}", parts.collect::<Option<Vec<_>>>()?.join(", ")))
    }

    fn call(&mut self, of: &syn::ExprCall) -> Option<Value> {
        let Expr::Path(path) = &*of.func else { return None };
        let segments: Vec<String> = path.path.segments.iter().map(|one| one.ident.to_string()).collect();
        let names: Vec<&str> = segments.iter().map(String::as_str).collect();
        match &names[..] {
            ["Some" | "Ok"] | [.., "Value", "new" | "parse"] | [.., "Stated", "Given"] | ["Ok", ..] => {
                self.value(of.args.first()?)
            }
            // The column of a table holds quantities.
            [_, "from_si"] => self.value(of.args.first()?),
            [kind, "of"] => {
                let syn::PathArguments::AngleBracketed(units) = &path.path.segments.last()?.arguments else {
                    return None;
                };
                let syn::GenericArgument::Type(syn::Type::Path(unit)) = units.args.first()? else {
                    return None;
                };
                let unit = unit.path.get_ident()?.to_string();
                let number = self.value(of.args.first()?)?.text()?;
                self.quantity(kind, &unit, &number)
            }
            ["absolute"] => {
                // The crossing of `units` has a function of its name in Python.
                let called = self.api.functions.iter().find(|of| of.path() == "air.absolute_pressure")?;
                let parts = self.keywords(called, &of.args)?;
                self.modules.insert("air".to_owned());
                Some(Value::Parts("air.absolute_pressure(".to_owned(), parts, ")", None))
            }
            [closure] => {
                let Some(Value::Closure(arguments, body)) = self.names.get(*closure).cloned() else {
                    return None;
                };
                let given = of.args.iter().map(|one| self.value(one)).collect::<Option<Vec<_>>>()?;
                self.inside(&arguments, given, &body)
            }
            [name, "new"] => {
                let given = of.args.iter().map(|one| self.value(one)).collect::<Option<Vec<_>>>()?;
                let fields = self.fields_of(name)?;
                let made = fields
                    .iter()
                    .zip(given)
                    .map(|(field, value)| Some((field.name.clone(), entries(field, value)?)));
                let made = made.collect::<Option<Vec<_>>>()?;
                self.built(name, made)
            }
            [name, "from_text"] => {
                let model = self
                    .api
                    .models
                    .iter()
                    .find(|model| model.system == self.system && model.name == *name)?;
                self.modules.insert(model.system.clone());
                let text = self.value(of.args.first()?)?.text()?;
                Some(Value::Text(
                    format!("{}.{name}.from_text({text})", model.system),
                    Some((*name).to_owned()),
                ))
            }
            [system, name] => {
                let called = self.api.functions.iter().find(|of| of.system == *system && of.name == *name)?;
                let parts = self.keywords(called, &of.args)?;
                self.modules.insert((*system).to_owned());
                Some(Value::Parts(format!("{system}.{name}("), parts, ")", None))
            }
            _ => None,
        }
    }

    fn keywords(&mut self, called: &Function, given: &Punctuated<Expr, Token![,]>) -> Option<Vec<String>> {
        let named = called.parameters.iter().zip(given);
        named
            .map(|(parameter, given)| Some(format!("{}={}", parameter.name, self.value(given)?.text()?)))
            .collect()
    }

    fn quantity(&mut self, kind: &str, unit: &str, number: &str) -> Option<Value> {
        let found = self.api.kind(kind)?.units.iter().find(|known| known.name == unit)?;
        if kind == "Ratio" && unit == "one" {
            return Self::plain(number);
        }
        self.units.insert(unit.to_owned());
        Self::plain(if found.offset == 0.0 {
            format!("{number} * {unit}")
        } else {
            format!("{unit}({number})")
        })
    }

    /// The body of a closure with its arguments.
    fn inside(&mut self, arguments: &[String], given: Vec<Value>, body: &Expr) -> Option<Value> {
        let outside = self.names.clone();
        self.names.extend(arguments.iter().cloned().zip(given));
        let made = self.value(body);
        self.names = outside;
        made
    }

    fn method(&mut self, of: &syn::ExprMethodCall) -> Option<Value> {
        let name = of.method.to_string();
        match name.as_str() {
            "checked" | "to_owned" | "to_string" | "to_vec" | "clone" => return self.value(&of.receiver),
            "unwrap" | "unwrap_or_default" => return self.value(&of.receiver),
            "numbers" => {
                let (table, column) =
                    (self.value(&of.receiver)?.text()?, self.value(of.args.first()?)?.text()?);
                return Self::plain(format!("{table}[{}]", column.replace('"', "'")));
            }
            "in_" => {
                let value = self.value(&of.receiver)?.text()?;
                let syn::GenericArgument::Type(syn::Type::Path(unit)) =
                    of.turbofish.as_ref()?.args.first()?
                else {
                    return None;
                };
                let unit = unit.path.get_ident()?.to_string();
                let kind =
                    self.api.kinds.iter().find(|kind| kind.units.iter().any(|known| known.name == unit))?;
                // A ratio is a plain number.
                return Self::plain(match (kind.name.as_str(), unit.as_str()) {
                    ("Ratio", "one") => value,
                    ("Ratio", "percent") => format!("100 * {value}"),
                    ("Ratio", _) => return None,
                    _ => {
                        self.units.insert(unit.clone());
                        format!("{value}.to({unit})")
                    }
                });
            }
            "si" => {
                let Expr::Field(field) = &*of.receiver else { return None };
                let syn::Member::Named(result) = &field.member else { return None };
                let mut results =
                    self.api.models.iter().flat_map(|model| &model.methods).flat_map(|of| &of.results);
                let is_ratio = results.any(|known| {
                    *result == known.name
                        && matches!(&known.content, Content::Quantity(kind) if kind.name == "Ratio")
                });
                return if is_ratio { self.value(&of.receiver) } else { None };
            }
            "map" => {
                let (Value::List(all), Value::Closure(arguments, body)) =
                    (self.value(&of.receiver)?, self.value(of.args.first()?)?)
                else {
                    return None;
                };
                let each = all.into_iter().map(|one| self.inside(&arguments, vec![one], &body));
                return each.collect::<Option<_>>().map(Value::List);
            }
            _ => {}
        }
        let receiver = self.value(&of.receiver)?;
        let model = receiver.model()?.to_owned();
        let model = self.api.models.iter().find(|of| of.system == self.system && of.name == model)?;
        let method = model.methods.iter().find(|method| method.name == name)?;
        let parts = self.keywords(method, &of.args)?;
        Some(Value::Parts(format!("{}.{name}(", receiver.text()?), parts, ")", None))
    }

    /// Fields of a model, or of a table in the document of one.
    fn fields_of(&self, name: &str) -> Option<Vec<Field>> {
        fn below<'a>(fields: &'a [Field], name: &str) -> Option<&'a Entry> {
            fields.iter().find_map(|field| match &field.shape {
                Shape::List(entry) | Shape::Fields(entry) if entry.name == name => Some(entry),
                Shape::List(entry) | Shape::Fields(entry) => below(&entry.fields, name),
                _ => None,
            })
        }
        let own = |model: &&Model| model.system == self.system;
        if let Some(model) = self.api.models.iter().filter(own).find(|model| model.name == name) {
            return Some(model.fields.clone());
        }
        self.api
            .models
            .iter()
            .filter(own)
            .find_map(|model| below(&model.fields, name))
            .map(|entry| entry.fields.clone())
    }
}

/// A list of tuples as tables with the names of their fields.
fn entries(field: &Field, value: Value) -> Option<Value> {
    let (Shape::List(entry), Value::List(all)) = (&field.shape, &value) else { return Some(value) };
    let table = |one: &Value| match one {
        Value::List(parts) => {
            let named = entry.fields.iter().zip(parts);
            let named = named.map(|(field, value)| Some(format!("\"{}\": {}", field.name, value.text()?)));
            Some(Value::Text(format!("{{{}}}", named.collect::<Option<Vec<_>>>()?.join(", ")), None))
        }
        other => Some(other.clone()),
    };
    all.iter().map(table).collect::<Option<_>>().map(Value::List)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_function_and_every_model_has_an_example_in_python() {
        let api = Api::read(&crate::core_sources()).unwrap();
        let mut lacking: Vec<String> = Vec::new();
        for function in &api.functions {
            match python(&api, function) {
                Some(lines) => {
                    assert!(
                        lines.iter().all(|line| line.chars().count() <= WIDTH + 4),
                        "{}: {lines:?}",
                        function.path()
                    )
                }
                None => lacking.push(function.path()),
            }
        }
        for model in &api.models {
            if model.methods.iter().all(|method| python(&api, method).is_none()) {
                lacking.push(format!("{}.{}", model.system, model.name));
            }
        }
        assert!(lacking.is_empty(), "{}", lacking.join("\n"));
    }
}
