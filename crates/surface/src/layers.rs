//! Layers of the core: systems import downward only.

use crate::Fallible;
use crate::sources::{Sources, read};
use proc_macro2::{TokenStream, TokenTree};
use std::collections::BTreeSet;

/// Systems by layer; each imports downward only.
pub const LAYERS: &[&[&str]] = &[
    &["air", "fluid", "material"],
    &["tyre", "spring", "engine", "mass", "section", "fastener", "weld", "bracket"],
    &["suspension", "driveline"],
    &["steering", "brake", "frame", "cooling"],
    &["ride", "performance"],
    &["loads", "handling", "heat"],
    &["catalogue"], // generated: every function as data
    &["sheet"],
];

/// Refuses an import that does not lead downward, wherever in the code it stands.
pub(crate) fn check(sources: &Sources) -> Fallible<()> {
    let layer = |name: &str| LAYERS.iter().position(|layer| layer.contains(&name));
    let own = layer(&sources.name).ok_or_else(|| {
        format!("{} is on no layer: give it its place in crates/surface/src/layers.rs", sources.name)
    })?;
    for (path, _) in &sources.files {
        let tokens =
            read(path)?.parse::<TokenStream>().map_err(|error| format!("{}: {error}", path.display()))?;
        let mut imported = BTreeSet::new();
        imports(tokens, "crate", &mut imported, &mut BTreeSet::new());
        let crosses = |other: &&String| **other != sources.name && layer(other) >= Some(own);
        if let Some(other) = imported.iter().find(crosses) {
            return Err(format!(
                "{}: {} imports {other}, which does not stand below it",
                path.display(),
                sources.name
            ));
        }
    }
    Ok(())
}

/// Names that stand directly below a root in code, in `root::name` and in `root::{name, ...}`, and those of other roots of paths.
pub fn imports(tokens: TokenStream, root: &str, below: &mut BTreeSet<String>, roots: &mut BTreeSet<String>) {
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    let is_colons = |at: usize| {
        let colon =
            |token: Option<&TokenTree>| matches!(token, Some(TokenTree::Punct(p)) if p.as_char() == ':');
        colon(tokens.get(at)) && colon(tokens.get(at + 1))
    };
    // A path goes on with a name or a list, a call with types in angle brackets does not.
    let is_root = |at: usize| {
        let goes_on = !matches!(tokens.get(at + 3), Some(TokenTree::Punct(_)));
        is_colons(at + 1) && goes_on && (at < 2 || !is_colons(at - 2))
    };
    for (place, token) in tokens.iter().enumerate() {
        match token {
            TokenTree::Ident(name) if is_root(place) => {
                roots.insert(name.to_string());
                if name == root {
                    below.extend(first_names(tokens.get(place + 3)));
                }
            }
            TokenTree::Group(group) => imports(group.stream(), root, below, roots),
            _ => {}
        }
    }
}

/// A name, or the first name of each entry of a list in braces.
fn first_names(token: Option<&TokenTree>) -> Vec<String> {
    match token {
        Some(TokenTree::Ident(name)) => vec![name.to_string()],
        Some(TokenTree::Group(group)) => {
            let tokens: Vec<TokenTree> = group.stream().into_iter().collect();
            let comma = |token: &TokenTree| matches!(token, TokenTree::Punct(p) if p.as_char() == ',');
            tokens.split(comma).filter_map(|entry| Some(entry.first()?.to_string())).collect()
        }
        _ => Vec::new(),
    }
}
