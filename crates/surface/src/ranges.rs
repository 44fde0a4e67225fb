//! Ranges that the first `valid!` of a function enforces.

use crate::{Fallible, Range};
use proc_macro2::{TokenStream, TokenTree};
use std::collections::BTreeMap;

/// Named numbers of a file, and those of the standard library that limits and units use.
pub fn constants(file: &syn::File) -> BTreeMap<String, f64> {
    use std::f64::consts::{FRAC_PI_2, PI, TAU};
    let known = [("FRAC_PI_2", FRAC_PI_2), ("PI", PI), ("TAU", TAU)];
    let mut known = BTreeMap::from(known.map(|(name, value)| (name.to_owned(), value)));
    for item in &file.items {
        match item {
            syn::Item::Const(item) => {
                if let Some(value) = evaluate(&item.expr, &known) {
                    known.insert(item.ident.to_string(), value);
                }
            }
            syn::Item::Use(item) => renamed(&item.tree, &mut known),
            _ => {}
        }
    }
    known
}

/// `use core::f64::consts::TAU as TURN;`
fn renamed(tree: &syn::UseTree, known: &mut BTreeMap<String, f64>) {
    match tree {
        syn::UseTree::Path(path) => renamed(&path.tree, known),
        syn::UseTree::Group(group) => group.items.iter().for_each(|item| renamed(item, known)),
        syn::UseTree::Rename(item) => {
            if let Some(value) = known.get(&item.ident.to_string()).copied() {
                known.insert(item.rename.to_string(), value);
            }
        }
        _ => {}
    }
}

fn literal_value(literal: &syn::Lit) -> Option<f64> {
    match literal {
        syn::Lit::Int(number) => number.base10_parse().ok(),
        syn::Lit::Float(number) => number.base10_parse().ok(),
        _ => None,
    }
}

/// One line of `valid!`.
#[derive(Default)]
pub struct Limit {
    pub argument: String,
    /// Text in the usual notation.
    pub text: String,
    lower: Option<(f64, bool)>,
    upper: Option<(f64, bool)>,
    exceeds: Option<String>,
}

impl Limit {
    /// Narrows a range by this limit.
    pub fn narrow(&self, range: &mut Range) {
        if let Some((value, open)) = self.lower {
            (range.lower, range.lower_open) = (Some(value), open);
        }
        if let Some((value, open)) = self.upper {
            (range.upper, range.upper_open) = (Some(value), open);
        }
        range.exceeds.extend(self.exceeds.clone());
    }
}

/// Limits that the first `valid!` of a function enforces.
pub fn limits(block: &syn::Block, known: &BTreeMap<String, f64>) -> Fallible<Vec<Limit>> {
    let Some(syn::Stmt::Macro(statement)) = block.stmts.first() else { return Ok(Vec::new()) };
    if !statement.mac.path.is_ident("valid") {
        return Ok(Vec::new());
    }
    let tokens: Vec<TokenTree> = statement.mac.tokens.clone().into_iter().collect();
    let mut limits = Vec::new();
    for entry in tokens.split(|token| is_punct(token, ';')).collect::<Vec<_>>().chunks(2) {
        let [entry, _source] = entry else { continue };
        let [TokenTree::Ident(argument), rest @ ..] = entry else { continue };
        limits.push(limit(&argument.to_string(), rest, known)?);
    }
    Ok(limits)
}

/// True if the function calls `whole("studs", studs)?` for an argument.
pub fn is_whole(block: &syn::Block, argument: &str) -> bool {
    block.stmts.iter().any(|statement| {
        if let syn::Stmt::Expr(syn::Expr::Try(tried), _) = statement
            && let syn::Expr::Call(call) = &*tried.expr
            && let syn::Expr::Path(called) = &*call.func
            && let Some(syn::Expr::Path(of)) = call.args.last()
        {
            called.path.segments.last().is_some_and(|name| name.ident == "whole")
                && of.path.is_ident(argument)
        } else {
            false
        }
    })
}

fn is_punct(token: &TokenTree, wanted: char) -> bool {
    matches!(token, TokenTree::Punct(punct) if punct.as_char() == wanted)
}

fn limit(argument: &str, tokens: &[TokenTree], known: &BTreeMap<String, f64>) -> Fallible<Limit> {
    let mut limit = Limit { argument: argument.to_owned(), ..Limit::default() };
    if let [first, TokenTree::Ident(other)] = tokens
        && is_punct(first, '>')
    {
        limit.text = format!("{argument} > {other}");
        limit.exceeds = Some(other.to_string());
        return Ok(limit);
    }
    let text: String = tokens.iter().skip(1).map(ToString::to_string).collect();
    let (low, high) = text.split_once("..").ok_or_else(|| format!("{argument}: a limit without `..`"))?;
    if low.is_empty() && high.is_empty() {
        limit.text = format!("{argument} finite");
        return Ok(limit);
    }
    let bound = |text: &str| -> Fallible<f64> {
        let tokens: TokenStream = text.parse().map_err(|_| format!("{argument}: {text}"))?;
        let expression: syn::Expr = syn::parse2(tokens).map_err(|_| format!("{argument}: {text}"))?;
        evaluate(&expression, known)
            .ok_or_else(|| format!("{argument}: the bound {text} is not a number that is known here"))
    };
    if !low.is_empty() {
        let (value, sign) = low
            .strip_suffix("<=")
            .map(|v| (v, "<="))
            .or(low.strip_suffix('<').map(|v| (v, "<")))
            .ok_or("a bound without < or <=")?;
        let value = bound(value)?;
        limit.lower = Some((value, sign == "<"));
        limit.text.push_str(&format!("{value} {sign} "));
    }
    limit.text.push_str(argument);
    if !high.is_empty() {
        let (value, sign) = high
            .strip_prefix("<=")
            .map(|v| (v, "<="))
            .or(high.strip_prefix('<').map(|v| (v, "<")))
            .ok_or("a bound without < or <=")?;
        let value = bound(value)?;
        limit.upper = Some((value, sign == "<"));
        limit.text.push_str(&format!(" {sign} {value}"));
    }
    Ok(limit)
}

/// The value of an expression of literals and named numbers, computed as Rust computes it.
pub fn evaluate(expression: &syn::Expr, known: &BTreeMap<String, f64>) -> Option<f64> {
    match expression {
        syn::Expr::Lit(literal) => literal_value(&literal.lit),
        syn::Expr::Paren(inner) => evaluate(&inner.expr, known),
        syn::Expr::Group(inner) => evaluate(&inner.expr, known),
        syn::Expr::Unary(unary) if matches!(unary.op, syn::UnOp::Neg(_)) => {
            Some(-evaluate(&unary.expr, known)?)
        }
        syn::Expr::Binary(binary) => {
            let (left, right) = (evaluate(&binary.left, known)?, evaluate(&binary.right, known)?);
            match binary.op {
                syn::BinOp::Add(_) => Some(left + right),
                syn::BinOp::Sub(_) => Some(left - right),
                syn::BinOp::Mul(_) => Some(left * right),
                syn::BinOp::Div(_) => Some(left / right),
                _ => None,
            }
        }
        syn::Expr::Path(path) => known.get(&path.path.segments.last()?.ident.to_string()).copied(),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_argument_keeps_each_relation_beside_its_own_bounds() {
        let block: syn::Block = syn::parse_str(
            "{ valid! { outer: 0 < .. <= 2 ; \"one\"; outer > inner ; \"two\"; outer > wire ; \"three\"; inner: .. ; \"four\"; } }",
        )
        .unwrap();
        let mut range = Range::default();
        for limit in
            limits(&block, &BTreeMap::new()).unwrap().iter().filter(|limit| limit.argument == "outer")
        {
            limit.narrow(&mut range);
        }
        assert_eq!((range.lower, range.lower_open, range.upper), (Some(0.0), true, Some(2.0)));
        assert_eq!(range.exceeds, ["inner", "wire"]);
    }
}
