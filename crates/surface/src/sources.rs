//! The core's files, parsed, and the readings that several places share.

use crate::docs::doc_text;
use crate::{Choice, Fallible, snake};
use std::path::{Path, PathBuf};
use syn::{Item, Type, Visibility};

/// Folders of the core's sources that are not a system of the vehicle.
pub const NOT_A_SYSTEM: &[&str] = &["base", "catalogue", "sheet"];

/// Sources of one system, parsed. Files of subfolders count as files of the system's own folder.
pub struct Sources {
    pub name: String,
    pub files: Vec<(PathBuf, syn::File)>,
    folder: PathBuf,
}

impl Sources {
    /// Every system, by name.
    pub fn systems(core: &Path) -> Fallible<Vec<Sources>> {
        let mut systems = Vec::new();
        for folder in sorted(core)?.into_iter().filter(|path| path.is_dir()) {
            let name = file_name(&folder);
            if !NOT_A_SYSTEM.contains(&name.as_str()) {
                // In the order of the files' names, so that nothing generated depends on the folder in which a file stands.
                let mut paths = rust_files(&folder)?;
                paths.sort_by_key(|path| file_name(path));
                let files = paths.into_iter().map(|path| Ok((path.clone(), parse(&path)?)));
                systems.push(Sources { name, files: files.collect::<Fallible<_>>()?, folder });
            }
        }
        Ok(systems)
    }

    /// Coverage of the system, from its own `mod.rs`.
    pub fn doc(&self) -> Fallible<String> {
        let doc = doc_text(&self.root()?.attrs);
        if doc.trim().is_empty() {
            return Err(format!("{}/mod.rs does not say what the system covers", self.name));
        }
        Ok(doc)
    }

    /// True if its own folder holds a file of this name.
    pub fn holds(&self, file: &str) -> bool {
        self.files.iter().any(|(path, _)| *path == self.folder.join(file))
    }

    /// True if a `mod.rs` of its folders makes a name public.
    pub fn exports(&self, name: &str) -> bool {
        fn holds(tree: &syn::UseTree, name: &str) -> bool {
            match tree {
                syn::UseTree::Path(path) => holds(&path.tree, name),
                syn::UseTree::Group(group) => group.items.iter().any(|item| holds(item, name)),
                syn::UseTree::Name(item) => item.ident == name,
                _ => false,
            }
        }
        let roots = self.files.iter().filter(|(path, _)| path.ends_with("mod.rs"));
        roots
            .flat_map(|(_, root)| &root.items)
            .any(|item| matches!(item, Item::Use(item) if is_public(&item.vis) && holds(&item.tree, name)))
    }

    fn root(&self) -> Fallible<&syn::File> {
        let path = self.folder.join("mod.rs");
        let found = self.files.iter().find(|(of, _)| *of == path);
        found.map(|(_, file)| file).ok_or_else(|| format!("{} is missing", path.display()))
    }
}

/// A parsed file, or the place of its fault. A struct in `record!` is among its items.
pub fn parse(path: &Path) -> Fallible<syn::File> {
    let place = |error: syn::Error| format!("{}:{}: {error}", path.display(), error.span().start().line);
    let mut file = syn::parse_file(&read(path)?).map_err(place)?;
    for item in &mut file.items {
        if let Item::Macro(of) = item
            && of.mac.path.is_ident("record")
        {
            *item = of.mac.parse_body_with(record).map_err(place)?;
        }
    }
    Ok(file)
}

/// The struct that `record!` declares; the options after it concern the core alone.
fn record(body: syn::parse::ParseStream<'_>) -> syn::Result<Item> {
    let mut declared = body.parse::<syn::ItemStruct>()?;
    body.parse::<proc_macro2::TokenStream>()?;
    declared.attrs.push(syn::parse_quote!(#[record]));
    Ok(Item::Struct(declared))
}

/// Refuses a column of a model's own record that no method of the file names in its docs.
pub fn columns_are_named(file: &syn::File) -> Fallible<()> {
    let mut said = String::new();
    for item in &file.items {
        let Item::Impl(of) = item else { continue };
        for item in &of.items {
            if let syn::ImplItem::Fn(method) = item {
                said.push_str(&doc_text(&method.attrs));
            }
        }
    }
    if !file.items.iter().any(|item| matches!(item, Item::Impl(item) if is_model(item))) {
        return Ok(());
    }
    for item in &file.items {
        let Item::Struct(of) = item else { continue };
        if is_public(&of.vis) || !of.attrs.iter().any(|attribute| attribute.path().is_ident("record")) {
            continue;
        }
        for name in of.fields.iter().filter_map(|field| field.ident.as_ref()) {
            if !said.contains(&format!("`{name}`")) {
                return Err(format!("no `# Returns` names `{name}`, a column by {}", of.ident));
            }
        }
    }
    Ok(())
}

/// Text of a file; a refusal names it.
pub fn read(path: &Path) -> Fallible<String> {
    std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))
}

/// Rust files of a folder and its subfolders, sorted: the files of a folder come before its subfolders.
pub fn rust_files(folder: &Path) -> Fallible<Vec<PathBuf>> {
    let (folders, mut files): (Vec<_>, Vec<_>) = sorted(folder)?.into_iter().partition(|path| path.is_dir());
    files.retain(|path| path.extension().is_some_and(|ending| ending == "rs"));
    for folder in folders {
        files.extend(rust_files(&folder)?);
    }
    Ok(files)
}

fn sorted(folder: &Path) -> Fallible<Vec<PathBuf>> {
    let entries = std::fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut paths: Vec<PathBuf> = entries.filter_map(|entry| Some(entry.ok()?.path())).collect();
    paths.sort();
    Ok(paths)
}

fn file_name(path: &Path) -> String {
    path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default()
}

pub fn is_public(visibility: &Visibility) -> bool {
    matches!(visibility, Visibility::Public(_))
}

pub fn is_model(item: &syn::ItemImpl) -> bool {
    item.trait_.as_ref().is_some_and(|(path, _)| path.is_ident("Model"))
}

/// The name of a type that is a single name.
pub fn type_name(of: &Type) -> Fallible<String> {
    match of {
        Type::Path(path) if path.path.segments.len() == 1 && path.path.segments[0].arguments.is_none() => {
            Ok(path.path.segments[0].ident.to_string())
        }
        _ => Err("a type that is no single name".into()),
    }
}

/// `Q` of `Value<Q>`.
pub fn generic_argument<'a>(of: &'a Type, wrapper: &str) -> Option<&'a Type> {
    let Type::Path(path) = of else { return None };
    let segment = path.path.segments.last()?;
    if segment.ident != wrapper {
        return None;
    }
    let syn::PathArguments::AngleBracketed(arguments) = &segment.arguments else { return None };
    match arguments.args.first()? {
        syn::GenericArgument::Type(inner) => Some(inner),
        _ => None,
    }
}

/// The public enums of a file that have no data.
pub fn choices(file: &syn::File) -> impl Iterator<Item = Choice> {
    file.items.iter().filter_map(|item| {
        let Item::Enum(item) = item else { return None };
        let plain = is_public(&item.vis) && item.variants.iter().all(|variant| variant.fields.is_empty());
        plain.then(|| Choice {
            name: item.ident.to_string(),
            words: item
                .variants
                .iter()
                .map(|v| v.ident.to_string())
                .map(|v| (v.clone(), snake(&v)))
                .collect(),
        })
    })
}
