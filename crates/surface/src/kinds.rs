//! Kinds of quantity and their units, from the tokens of `quantities! { ... }` in `base`.

use crate::ranges::{constants, evaluate};
use crate::sources::{parse, rust_files};
use crate::{Fallible, KindOf};
use std::collections::BTreeMap;
use std::path::Path;
use std::rc::Rc;
use syn::parse::{Parse, ParseStream};
use syn::{Attribute, Expr, Ident, LitStr, Token, braced, bracketed, parenthesized};

/// A kind of quantity.
#[derive(Debug, PartialEq)]
pub struct Kind {
    /// Name of the Rust type: `LinearStiffness`.
    pub name: String,
    /// Name in words: `linear stiffness`.
    pub words: String,
    /// Symbol of the coherent SI unit.
    pub si: String,
    /// Name of the unit that a metric shop prints.
    pub metric: String,
    /// Name of the unit that a US shop prints.
    pub us: String,
    /// Units, the first one coherent SI.
    pub units: Vec<Unit>,
}

/// A unit: `si = (value + offset) * numerator / denominator`.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// Short name in Rust and Python: `lbf_in`.
    pub name: String,
    /// Printed symbol: `lbf/in`.
    pub symbol: String,
    /// Other spellings.
    pub spellings: Vec<String>,
    /// Numerator of the exact factor.
    pub numerator: f64,
    /// Denominator of the exact factor.
    pub denominator: f64,
    /// Number that is added before scaling.
    pub offset: f64,
}

impl Kind {
    /// The symbols of the units: `N, kN, lbf or kgf`.
    pub fn symbols(&self) -> String {
        let shown =
            self.units.iter().map(|unit| if unit.symbol.is_empty() { "no unit" } else { &unit.symbol });
        let shown: Vec<&str> = shown.collect();
        match shown.split_last() {
            Some((last, others)) if !others.is_empty() => format!("{} or {last}", others.join(", ")),
            _ => shown.concat(),
        }
    }
}

/// Every kind that the files of a folder declare.
pub(crate) fn read(folder: &Path) -> Fallible<Vec<KindOf>> {
    let mut kinds = Vec::new();
    let mut known = BTreeMap::new();
    for path in rust_files(folder)? {
        let file = parse(&path)?;
        known.extend(constants(&file));
        for item in &file.items {
            let syn::Item::Macro(item) = item else { continue };
            if !item.mac.path.is_ident("quantities") {
                continue;
            }
            let place = |error: String| format!("{}: {error}", path.display());
            let declared: Declared = item
                .mac
                .parse_body()
                .map_err(|error| place(format!("line {}: {error}", error.span().start().line)))?;
            for kind in declared.0 {
                kinds.push(KindOf(Rc::new(kind.build(&known).map_err(place)?)));
            }
        }
    }
    match kinds.is_empty() {
        true => Err(format!("{} holds no `quantities! {{ ... }}`", folder.display())),
        false => Ok(kinds),
    }
}

/// The body of the macro.
struct Declared(Vec<DeclaredKind>);

struct DeclaredKind {
    name: Ident,
    words: LitStr,
    si: LitStr,
    metric: Ident,
    us: Ident,
    units: Vec<DeclaredUnit>,
}

struct DeclaredUnit {
    name: Ident,
    symbol: LitStr,
    spellings: Vec<LitStr>,
    numerator: Expr,
    denominator: Expr,
    offset: Option<Expr>,
}

impl Parse for Declared {
    fn parse(input: ParseStream<'_>) -> syn::Result<Self> {
        let mut kinds = Vec::new();
        while !input.is_empty() {
            kinds.push(input.parse()?);
        }
        Ok(Declared(kinds))
    }
}

impl Parse for DeclaredKind {
    /// `/// docs` `Force "force" [dimension] "N" metric N us lbf { units }`
    fn parse(input: ParseStream<'_>) -> syn::Result<Self> {
        input.call(Attribute::parse_outer)?;
        let (name, words) = (input.parse()?, input.parse()?);
        let dimension;
        bracketed!(dimension in input);
        dimension.parse::<proc_macro2::TokenStream>()?;
        let si = input.parse()?;
        keyword(input, "metric")?;
        let metric = input.parse()?;
        keyword(input, "us")?;
        let us = input.parse()?;
        let body;
        braced!(body in input);
        let mut units = Vec::new();
        while !body.is_empty() {
            units.push(body.parse()?);
        }
        Ok(DeclaredKind { name, words, si, metric, us, units })
    }
}

impl Parse for DeclaredUnit {
    /// `lbf_in "lbf/in" ["lb/in"] (numerator) / (denominator) + offset;`
    fn parse(input: ParseStream<'_>) -> syn::Result<Self> {
        let (name, symbol) = (input.parse()?, input.parse()?);
        let listed;
        bracketed!(listed in input);
        let spellings = listed.parse_terminated(<LitStr as Parse>::parse, Token![,])?.into_iter().collect();
        let numerator = in_parentheses(input)?;
        input.parse::<Token![/]>()?;
        let denominator = in_parentheses(input)?;
        let offset = if input.peek(Token![+]) {
            input.parse::<Token![+]>()?;
            Some(input.parse()?)
        } else {
            None
        };
        input.parse::<Token![;]>()?;
        Ok(DeclaredUnit { name, symbol, spellings, numerator, denominator, offset })
    }
}

fn keyword(input: ParseStream<'_>, wanted: &str) -> syn::Result<()> {
    let found: Ident = input.parse()?;
    if found == wanted { Ok(()) } else { Err(syn::Error::new(found.span(), format!("expected `{wanted}`"))) }
}

fn in_parentheses(input: ParseStream<'_>) -> syn::Result<Expr> {
    let inner;
    parenthesized!(inner in input);
    inner.parse()
}

impl DeclaredKind {
    fn build(self, known: &BTreeMap<String, f64>) -> Fallible<Kind> {
        let name = self.name.to_string();
        let units: Vec<Unit> =
            self.units.into_iter().map(|unit| unit.build(known)).collect::<Fallible<_>>()?;
        for shop in [&self.metric, &self.us] {
            if !units.iter().any(|unit| *shop == unit.name) {
                return Err(format!("{name} is printed in {shop}, which is none of its units"));
            }
        }
        Ok(Kind {
            name,
            words: self.words.value(),
            si: self.si.value(),
            metric: self.metric.to_string(),
            us: self.us.to_string(),
            units,
        })
    }
}

impl DeclaredUnit {
    fn build(self, known: &BTreeMap<String, f64>) -> Fallible<Unit> {
        let name = self.name.to_string();
        let number = |of: &Expr| {
            evaluate(of, known)
                .ok_or_else(|| format!("the factor of the unit {name} is not a number that is known here"))
        };
        Ok(Unit {
            symbol: self.symbol.value(),
            spellings: self.spellings.iter().map(LitStr::value).collect(),
            numerator: number(&self.numerator)?,
            denominator: number(&self.denominator)?,
            offset: self.offset.as_ref().map_or(Ok(0.0), number)?,
            name,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn declared(text: &str) -> Result<Vec<Kind>, String> {
        let declared: Declared = syn::parse_str(text).map_err(|error| error.to_string())?;
        let known = BTreeMap::from([("TURN".to_owned(), std::f64::consts::TAU)]);
        declared.0.into_iter().map(|kind| kind.build(&known)).collect()
    }

    #[test]
    fn a_kind_is_read_with_its_units() {
        let text = r#"/// Doc.
            Angle "angle" [Z0, Z0; dyn Rotation] "rad" metric deg us deg {
                rad "rad" ["radian", "radians"] (1.0) / (1.0);
                deg "°" [] (TURN) / (180.0 * 2.0);
                odd "odd" [] (5.0) / (9.0) + -32.0;
            }"#;
        let kinds = declared(text).unwrap();
        let [angle] = &kinds[..] else { panic!("{kinds:?}") };
        assert_eq!((angle.name.as_str(), angle.words.as_str(), angle.si.as_str()), ("Angle", "angle", "rad"));
        assert_eq!(angle.symbols(), "rad, ° or odd");
        assert_eq!(angle.units[0].spellings, ["radian", "radians"]);
        assert_eq!(angle.units[1].numerator / angle.units[1].denominator, std::f64::consts::TAU / 360.0);
        assert_eq!(angle.units[2].offset, -32.0);
    }

    #[test]
    fn what_is_not_understood_is_refused() {
        for (text, word) in [
            (
                r#"Angle "angle" [Z0] "rad" metric rad eu rad { rad "rad" [] (1.0) / (1.0); }"#,
                "expected `us`",
            ),
            (
                r#"Angle "angle" [Z0] "rad" metric deg us rad { rad "rad" [] (1.0) / (1.0); }"#,
                "printed in deg",
            ),
            (r#"Angle "angle" [Z0] "rad" metric rad us rad { rad "rad" [] (f(1.0)) / (1.0); }"#, "unit rad"),
        ] {
            let refusal = declared(text).unwrap_err();
            assert!(refusal.contains(word), "{refusal}");
        }
    }
}
