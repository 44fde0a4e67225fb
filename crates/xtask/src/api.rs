//! The public surface of the core, as its sources state it: functions, models, results and choices, with their docs.
//!
//! Whatever this file does not understand it refuses by name: an unknown type, a missing heading, an undocumented parameter.

use axlewright::units::Kind;
use proc_macro2::{TokenStream, TokenTree};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Not;
use std::path::{Path, PathBuf};
use syn::{FnArg, ImplItem, Item, Pat, ReturnType, Type, Visibility};

/// Folders of the core's sources that are no system of the vehicle.
const NOT_A_SYSTEM: &[&str] = &["base", "catalogue", "sheet"];

/// Systems by layer; each imports downward only.
pub const LAYERS: &[&[&str]] = &[
    &["air", "fluid", "material"],
    &["tyre", "spring", "engine", "mass", "fastener"],
    &["suspension", "driveline", "brake", "steering", "cooling", "frame"],
    &["ride", "performance"],
    &["catalogue"], // generated: every function as data
    &["sheet"],
];

/// The whole surface.
#[derive(Debug, Default, Serialize)]
pub struct Api {
    pub functions: Vec<Function>,
    pub models: Vec<Model>,
    pub choices: Vec<Choice>,
    pub systems: Vec<System>,
}

/// A folder of the core.
#[derive(Debug, Serialize)]
pub struct System {
    pub name: String,
    pub doc: String,
    /// Whether it has a section of the build sheet.
    pub has_section: bool,
}

/// The docs of one item, by heading.
#[derive(Debug, Clone, Default, Serialize)]
pub struct Docs {
    pub summary: String,
    pub formula: String,
    pub returns: String,
    pub valid_for: String,
    pub source: String,
    pub caution: String,
    pub example: String,
    pub revision: u32,
}

/// One argument.
#[derive(Debug, Clone, Serialize)]
pub struct Parameter {
    pub name: String,
    pub kind: String,
    /// A list of quantities rather than one.
    pub list: bool,
    pub meaning: String,
    /// The limit as people write it, where the function states one.
    pub limit: Option<String>,
    /// The same in numbers.
    pub range: Range,
}

/// What a parameter may be, in coherent SI; the catalogue leaves out what is absent or false.
#[derive(Debug, Clone, Default, Serialize)]
pub struct Range {
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower: Option<f64>,
    #[serde(skip_serializing_if = "Not::not")]
    pub lower_open: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upper: Option<f64>,
    #[serde(skip_serializing_if = "Not::not")]
    pub upper_open: bool,
    /// The parameter that it must exceed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub exceeds: Option<String>,
    /// A count.
    #[serde(skip_serializing_if = "Not::not")]
    pub whole: bool,
}

/// What one result is made of.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "type", content = "of", rename_all = "snake_case")]
pub enum Content {
    Quantity(String),
    Choice(String),
    Text,
    Whole,
    Table,
}

/// One result.
#[derive(Debug, Clone, Serialize)]
pub struct Output {
    pub name: String,
    #[serde(flatten)]
    pub content: Content,
    pub meaning: String,
}

/// A function or a method.
#[derive(Debug, Clone, Serialize)]
pub struct Function {
    pub system: String,
    pub name: String,
    #[serde(flatten)]
    pub docs: Docs,
    pub parameters: Vec<Parameter>,
    /// Name of the struct that holds several results.
    pub result_type: Option<String>,
    pub results: Vec<Output>,
}

/// What one field of a model is.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "type", content = "of", rename_all = "snake_case")]
pub enum Shape {
    Quantity(String),
    Choice(String),
    Text,
    /// A list of tables with fields of their own.
    List(Vec<Field>),
    /// A table with fields of its own.
    Fields(Vec<Field>),
}

/// One field of a model.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Field {
    pub name: String,
    pub optional: bool,
    #[serde(flatten)]
    pub shape: Shape,
    pub meaning: String,
}

/// A model and its methods.
#[derive(Debug, Clone, Serialize)]
pub struct Model {
    pub system: String,
    pub name: String,
    #[serde(flatten)]
    pub docs: Docs,
    pub fields: Vec<Field>,
    pub methods: Vec<Function>,
}

/// A closed list of words.
#[derive(Debug, Clone, Serialize)]
pub struct Choice {
    pub name: String,
    /// Rust variant and the word that stands for it in text.
    pub words: Vec<(String, String)>,
}

impl Function {
    /// `spring.wheel_rate`
    pub fn path(&self) -> String {
        format!("{}.{}", self.system, self.name)
    }
}

type Fallible<T> = Result<T, String>;

/// Sources of one system, parsed.
struct Sources {
    system: String,
    files: Vec<(PathBuf, syn::File)>,
}

impl Api {
    /// Reads the core's sources.
    pub fn read(root: &Path) -> Fallible<Api> {
        let source = root.join("crates/axlewright/src");
        let mut systems = Vec::new();
        for entry in sorted(&source)? {
            let name = file_name(&entry);
            if entry.is_dir() && !NOT_A_SYSTEM.contains(&name.as_str()) {
                let mut files = Vec::new();
                for path in sorted(&entry)? {
                    let text = read(&path)?;
                    let parsed =
                        syn::parse_file(&text).map_err(|error| format!("{}: {error}", path.display()))?;
                    files.push((path, parsed));
                }
                systems.push(Sources { system: name, files });
            }
        }
        let verdict = source.join("base/verdict.rs");
        let verdict =
            syn::parse_file(&read(&verdict)?).map_err(|error| format!("{}: {error}", verdict.display()))?;
        let mut api = Api::default();
        api.choices.extend(verdict.items.iter().filter_map(choice).filter(|choice| choice.name == "Verdict"));
        for sources in &systems {
            check_layers(sources)?;
            let doc = sources.files.iter().find(|(path, _)| path.ends_with("mod.rs"));
            let doc = doc.map(|(_, file)| doc_text(&file.attrs)).unwrap_or_default();
            if doc.trim().is_empty() {
                return Err(format!("{}/mod.rs does not say what the system covers", sources.system));
            }
            let has_section = sources.files.iter().any(|(path, _)| path.ends_with("sheet.rs"));
            api.systems.push(System { name: sources.system.clone(), doc, has_section });
            api.choices
                .extend(sources.files.iter().flat_map(|(_, file)| file.items.iter().filter_map(choice)));
        }
        for sources in &systems {
            api.read_system(sources, &systems)?;
        }
        api.refuse_doubles()?;
        Ok(api)
    }

    fn read_system(&mut self, sources: &Sources, systems: &[Sources]) -> Fallible<()> {
        for (path, file) in &sources.files {
            // A model may have a part from another system; one of its own goes before one of the same name.
            let structs: BTreeMap<String, &syn::ItemStruct> = systems
                .iter()
                .chain([sources])
                .flat_map(|sources| &sources.files)
                .flat_map(|(_, file)| &file.items)
                .filter_map(|item| match item {
                    Item::Struct(item) if is_public(&item.vis) => Some((item.ident.to_string(), item)),
                    _ => None,
                })
                .collect();
            let consts = constants(file);
            for item in &file.items {
                let place = |error: String| format!("{}: {error}", path.display());
                match item {
                    Item::Fn(item) if is_public(&item.vis) => {
                        let function = self
                            .function(&sources.system, &item.sig, &item.attrs, &item.block, &structs, &consts)
                            .map_err(place)?;
                        for (heading, text) in
                            [("Formula", &function.docs.formula), ("Source", &function.docs.source)]
                        {
                            if text.is_empty() {
                                return Err(place(format!("{} has no `# {heading}`", function.name)));
                            }
                        }
                        if function.docs.example.is_empty() {
                            return Err(place(format!("{} has no `# Example`", function.name)));
                        }
                        if function.parameters.len() > 8
                            || function.results.len() > 8
                            || function.results.len() + function.parameters.len() > 32
                        {
                            return Err(place(format!(
                                "{} has too many arguments: make it a model",
                                function.name
                            )));
                        }
                        if !is_exported(sources, &function.name) {
                            return Err(place(format!(
                                "{} is not public: {}/mod.rs lacks its `pub use`",
                                function.name, sources.system
                            )));
                        }
                        self.functions.push(function);
                    }
                    Item::Impl(item) if is_model(item) => {
                        let name = type_name(&item.self_ty).map_err(place)?;
                        let model = self.model(sources, &name, &structs).map_err(place)?;
                        self.models.push(model);
                    }
                    _ => {}
                }
            }
        }
        Ok(())
    }

    #[allow(clippy::too_many_arguments)]
    fn function(
        &self,
        system: &str,
        signature: &syn::Signature,
        attributes: &[syn::Attribute],
        block: &syn::Block,
        structs: &BTreeMap<String, &syn::ItemStruct>,
        consts: &BTreeMap<String, f64>,
    ) -> Fallible<Function> {
        let name = signature.ident.to_string();
        let place = |error: String| format!("{name}: {error}");
        let text = doc_text(attributes);
        let sections = sections(&text);
        let docs = docs(&text, &sections).map_err(place)?;
        let limits = limits(block, consts).map_err(place)?;
        let meanings = bullets(sections.get("Parameters").map_or("", String::as_str));
        let mut parameters = Vec::new();
        for argument in &signature.inputs {
            let FnArg::Typed(argument) = argument else { continue };
            let Pat::Ident(ident) = &*argument.pat else {
                return Err(place("an argument without a name".into()));
            };
            let argument_name = ident.ident.to_string();
            let (kind, list) = match &*argument.ty {
                Type::Reference(reference) => match &*reference.elem {
                    Type::Slice(slice) => (type_name(&slice.elem).map_err(place)?, true),
                    _ => {
                        return Err(place(format!(
                            "{argument_name} is neither a quantity nor a list of them"
                        )));
                    }
                },
                other => (type_name(other).map_err(place)?, false),
            };
            if Kind::named(&kind).is_none() {
                return Err(place(format!("{argument_name} has the type {kind}, which is no quantity")));
            }
            let meaning = meanings
                .iter()
                .find(|(name, _)| *name == argument_name)
                .map(|(_, meaning)| meaning.clone())
                .ok_or_else(|| place(format!("`{argument_name}` is not described under `# Parameters`")))?;
            let of_this = || limits.iter().filter(|limit| limit.argument == argument_name);
            let own: Vec<&str> = of_this().map(|limit| limit.text.as_str()).collect();
            if !limits.is_empty() && own.iter().all(|limit| limit.contains(" > ")) {
                return Err(place(format!("`{argument_name}` has no range of its own in `valid!`")));
            }
            let limit = (!own.is_empty()).then(|| own.join(", "));
            let mut range = Range { whole: is_whole(block, &argument_name), ..Range::default() };
            for limit in of_this() {
                limit.narrow(&mut range);
            }
            parameters.push(Parameter { name: argument_name, kind, list, meaning, limit, range });
        }
        if parameters.len() != meanings.len() {
            return Err(place("`# Parameters` describes something that is no argument".into()));
        }
        let stated: Vec<String> = sections
            .get("Valid for")
            .map_or("", String::as_str)
            .lines()
            .filter_map(|line| line.trim().strip_prefix("- `")?.strip_suffix('`').map(str::to_owned))
            .collect();
        let enforced: Vec<String> = limits.iter().map(|limit| limit.text.clone()).collect();
        if sections.contains_key("Valid for") && stated != enforced {
            return Err(place(format!("`# Valid for` states {stated:?}, `valid!` enforces {enforced:?}")));
        }
        let (result_type, results) = self
            .results(&signature.output, &name, sections.get("Returns").map_or("", String::as_str), structs)
            .map_err(place)?;
        Ok(Function { system: system.to_owned(), name: name.clone(), docs, parameters, result_type, results })
    }

    fn results(
        &self,
        output: &ReturnType,
        name: &str,
        returns: &str,
        structs: &BTreeMap<String, &syn::ItemStruct>,
    ) -> Fallible<(Option<String>, Vec<Output>)> {
        if returns.is_empty() {
            return Err("no `# Returns`".into());
        }
        let ReturnType::Type(_, output) = output else { return Err("returns nothing".into()) };
        let inner = generic_argument(output, "Result").ok_or("does not return Result<...>")?;
        let type_of = type_name(inner)?;
        if let Some(content) = self.content(&type_of) {
            return Ok((None, vec![Output { name: name.to_owned(), content, meaning: one_line(returns) }]));
        }
        let item = structs
            .get(&type_of)
            .ok_or_else(|| format!("returns {type_of}, which is no quantity and no struct of this system"))?;
        let meanings = bullets(returns);
        let mut results = Vec::new();
        for field in &item.fields {
            let field_name = field.ident.as_ref().map(ToString::to_string).unwrap_or_default();
            let type_of = type_name(&field.ty)?;
            let content =
                self.content(&type_of).ok_or_else(|| format!("{field_name} has the type {type_of}"))?;
            let meaning = meanings
                .iter()
                .find(|(name, _)| *name == field_name)
                .map(|(_, meaning)| meaning.clone())
                .ok_or_else(|| format!("`{field_name}` is not described under `# Returns`"))?;
            results.push(Output { name: field_name, content, meaning });
        }
        Ok((Some(type_of), results))
    }

    fn content(&self, name: &str) -> Option<Content> {
        Some(match name {
            "Table" => Content::Table,
            "String" => Content::Text,
            "i64" => Content::Whole,
            name if Kind::named(name).is_some() => Content::Quantity(name.to_owned()),
            name if self.choices.iter().any(|choice| choice.name == name) => Content::Choice(name.to_owned()),
            _ => return None,
        })
    }

    fn model(
        &self,
        sources: &Sources,
        name: &str,
        structs: &BTreeMap<String, &syn::ItemStruct>,
    ) -> Fallible<Model> {
        let item = structs.get(name).ok_or_else(|| format!("{name} is not public"))?;
        let text = doc_text(&item.attrs);
        let sections = sections(&text);
        let docs = docs(&text, &sections)?;
        for heading in ["Formula", "Fields", "Valid for", "Source"] {
            if !sections.contains_key(heading) {
                return Err(format!("{name} has no `# {heading}`"));
            }
        }
        let described = bullets(&sections["Fields"]);
        let fields = self.fields(item, structs)?;
        for field in &fields {
            if !described.iter().any(|(name, _)| *name == field.name) {
                return Err(format!("`{}` of {name} is not described under `# Fields`", field.name));
            }
        }
        let fields: Vec<Field> = fields
            .into_iter()
            .map(|mut field| {
                if let Some((_, meaning)) = described.iter().find(|(name, _)| *name == field.name) {
                    field.meaning.clone_from(meaning);
                }
                field
            })
            .collect();
        let mut methods = Vec::new();
        for (_, file) in &sources.files {
            for item in &file.items {
                let Item::Impl(item) = item else { continue };
                if item.trait_.is_some() || type_name(&item.self_ty).ok().as_deref() != Some(name) {
                    continue;
                }
                for item in &item.items {
                    let ImplItem::Fn(method) = item else { continue };
                    if is_public(&method.vis) && method.sig.receiver().is_some() {
                        let consts = constants(file);
                        methods.push(self.function(
                            &sources.system,
                            &method.sig,
                            &method.attrs,
                            &method.block,
                            structs,
                            &consts,
                        )?);
                    }
                }
            }
        }
        for method in &methods {
            if fields.iter().any(|field: &Field| field.name == method.name) {
                return Err(format!("{name} has a field and a method called {}", method.name));
            }
        }
        Ok(Model { system: sources.system.clone(), name: name.to_owned(), docs, fields, methods })
    }

    fn fields(
        &self,
        item: &syn::ItemStruct,
        structs: &BTreeMap<String, &syn::ItemStruct>,
    ) -> Fallible<Vec<Field>> {
        let mut fields = Vec::new();
        for field in &item.fields {
            let name = field.ident.as_ref().map(ToString::to_string).unwrap_or_default();
            let (optional, inner) = match generic_argument(&field.ty, "Option") {
                Some(inner) => (true, inner),
                None => (false, &field.ty),
            };
            let shape = if let Some(quantity) = generic_argument(inner, "Value") {
                Shape::Quantity(type_name(quantity)?)
            } else if let Some(entry) = generic_argument(inner, "Vec") {
                let entry = type_name(entry)?;
                let entry = structs.get(&entry).ok_or_else(|| format!("{name}: a list of {entry}"))?;
                Shape::List(self.fields(entry, structs)?)
            } else {
                match type_name(inner)?.as_str() {
                    "String" => Shape::Text,
                    choice if self.choices.iter().any(|known| known.name == choice) => {
                        Shape::Choice(choice.to_owned())
                    }
                    other => {
                        let entry =
                            structs.get(other).ok_or_else(|| format!("{name} has the type {other}"))?;
                        Shape::Fields(self.fields(entry, structs)?)
                    }
                }
            };
            let meaning = one_line(&doc_text(&field.attrs));
            fields.push(Field { name, optional, shape, meaning });
        }
        Ok(fields)
    }

    fn refuse_doubles(&self) -> Fallible<()> {
        let mut seen = BTreeSet::new();
        let names = self.functions.iter().map(Function::path);
        let models = self.models.iter().map(|model| format!("{}.{}", model.system, snake(&model.name)));
        for name in names.chain(models) {
            let last = name.rsplit('.').next().unwrap_or_default();
            if ["_n", "_value", "_new", "_free", "_result"].iter().any(|ending| last.ends_with(ending)) {
                return Err(format!("{name} ends like a name that the C surface reserves"));
            }
            if !seen.insert(name.clone()) {
                return Err(format!("{name} is there twice"));
            }
        }
        Ok(())
    }
}

/// Whether the system's `mod.rs` makes a name public.
fn is_exported(sources: &Sources, name: &str) -> bool {
    fn holds(tree: &syn::UseTree, name: &str) -> bool {
        match tree {
            syn::UseTree::Path(path) => holds(&path.tree, name),
            syn::UseTree::Group(group) => group.items.iter().any(|item| holds(item, name)),
            syn::UseTree::Name(item) => item.ident == name,
            _ => false,
        }
    }
    sources
        .files
        .iter()
        .filter(|(path, _)| path.ends_with("mod.rs"))
        .flat_map(|(_, file)| &file.items)
        .any(|item| matches!(item, Item::Use(item) if is_public(&item.vis) && holds(&item.tree, name)))
}

/// `TorquePath` to `torque_path`.
pub fn snake(name: &str) -> String {
    let mut out = String::new();
    for (place, letter) in name.chars().enumerate() {
        if letter.is_ascii_uppercase() && place > 0 {
            out.push('_');
        }
        out.push(letter.to_ascii_lowercase());
    }
    out
}

/// Collapses white space, for a place that has but one line.
pub fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn read(path: &Path) -> Fallible<String> {
    std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))
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

fn is_public(visibility: &Visibility) -> bool {
    matches!(visibility, Visibility::Public(_))
}

fn is_model(item: &syn::ItemImpl) -> bool {
    item.trait_.as_ref().is_some_and(|(_, path, _)| path.is_ident("Model"))
}

fn type_name(of: &Type) -> Fallible<String> {
    match of {
        Type::Path(path) if path.path.segments.len() == 1 && path.path.segments[0].arguments.is_none() => {
            Ok(path.path.segments[0].ident.to_string())
        }
        _ => Err("a type that is no single name".into()),
    }
}

fn generic_argument<'a>(of: &'a Type, wrapper: &str) -> Option<&'a Type> {
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

fn choice(item: &Item) -> Option<Choice> {
    let Item::Enum(item) = item else { return None };
    let plain = is_public(&item.vis) && item.variants.iter().all(|variant| variant.fields.is_empty());
    plain.then(|| Choice {
        name: item.ident.to_string(),
        words: item.variants.iter().map(|v| v.ident.to_string()).map(|v| (v.clone(), snake(&v))).collect(),
    })
}

fn doc_text(attributes: &[syn::Attribute]) -> String {
    let mut text = String::new();
    for attribute in attributes.iter().filter(|attribute| attribute.path().is_ident("doc")) {
        if let syn::Meta::NameValue(syn::MetaNameValue { value: syn::Expr::Lit(literal), .. }) =
            &attribute.meta
            && let syn::Lit::Str(line) = &literal.lit
        {
            let line = line.value();
            text.push_str(line.strip_prefix(' ').unwrap_or(&line));
            text.push('\n');
        }
    }
    text
}

/// Text by heading; the summary stands under the empty one.
fn sections(text: &str) -> BTreeMap<String, String> {
    let mut sections = BTreeMap::new();
    let (mut heading, mut fenced) = (String::new(), false);
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            fenced = !fenced;
        }
        match line.strip_prefix("# ") {
            Some(next) if !fenced => heading = next.trim().to_owned(),
            _ => {
                let section: &mut String = sections.entry(heading.clone()).or_default();
                section.push_str(line);
                section.push('\n');
            }
        }
    }
    sections.into_iter().map(|(heading, text): (String, String)| (heading, text.trim().to_owned())).collect()
}

const HEADINGS: &[&str] = &[
    "",
    "Formula",
    "Parameters",
    "Fields",
    "Returns",
    "Valid for",
    "Source",
    "Errors",
    "Example",
    "Caution",
    "Revision",
];

fn docs(text: &str, sections: &BTreeMap<String, String>) -> Fallible<Docs> {
    if let Some(unknown) = sections.keys().find(|heading| !HEADINGS.contains(&heading.as_str())) {
        return Err(format!("unknown heading `# {unknown}`"));
    }
    let get = |heading: &str| sections.get(heading).cloned().unwrap_or_default();
    let summary = text.lines().take_while(|line| !line.trim().is_empty()).collect::<Vec<_>>().join(" ");
    if summary.is_empty() || !summary.ends_with('.') {
        return Err("no summary that ends with a full stop".into());
    }
    let revision = match sections.get("Revision") {
        Some(number) => number.parse().map_err(|_| format!("revision {number:?} is no number"))?,
        None => 1,
    };
    Ok(Docs {
        summary,
        formula: get("Formula"),
        returns: get("Returns"),
        valid_for: get("Valid for"),
        source: one_line(&get("Source")),
        caution: one_line(&get("Caution")),
        example: get("Example"),
        revision,
    })
}

/// Lines such as: - `name` — meaning.
fn bullets(text: &str) -> Vec<(String, String)> {
    let bullet = |line: &str| {
        let (name, meaning) = line.strip_prefix("- `")?.split_once("` — ")?;
        Some((name.to_owned(), meaning.trim().to_owned()))
    };
    text.lines().filter_map(bullet).collect()
}

/// Named numbers of a file, and those of the standard library that limits use.
fn constants(file: &syn::File) -> BTreeMap<String, f64> {
    use std::f64::consts::{FRAC_PI_2, PI};
    let mut known = BTreeMap::from([("FRAC_PI_2".to_owned(), FRAC_PI_2), ("PI".to_owned(), PI)]);
    for item in &file.items {
        if let Item::Const(item) = item
            && let syn::Expr::Lit(literal) = &*item.expr
            && let Some(value) = literal_value(&literal.lit)
        {
            known.insert(item.ident.to_string(), value);
        }
    }
    known
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
struct Limit {
    argument: String,
    /// As people write it.
    text: String,
    lower: Option<(f64, bool)>,
    upper: Option<(f64, bool)>,
    exceeds: Option<String>,
}

impl Limit {
    fn narrow(&self, range: &mut Range) {
        if let Some((value, open)) = self.lower {
            (range.lower, range.lower_open) = (Some(value), open);
        }
        if let Some((value, open)) = self.upper {
            (range.upper, range.upper_open) = (Some(value), open);
        }
        if self.exceeds.is_some() {
            range.exceeds.clone_from(&self.exceeds);
        }
    }
}

/// What the first `valid!` of a function enforces.
fn limits(block: &syn::Block, consts: &BTreeMap<String, f64>) -> Fallible<Vec<Limit>> {
    let Some(syn::Stmt::Macro(statement)) = block.stmts.first() else { return Ok(Vec::new()) };
    if !statement.mac.path.is_ident("valid") {
        return Ok(Vec::new());
    }
    let tokens: Vec<TokenTree> = statement.mac.tokens.clone().into_iter().collect();
    let mut limits = Vec::new();
    for entry in tokens.split(|token| is_punct(token, ';')).collect::<Vec<_>>().chunks(2) {
        let [entry, _source] = entry else { continue };
        let [TokenTree::Ident(argument), rest @ ..] = entry else { continue };
        limits.push(limit(&argument.to_string(), rest, consts)?);
    }
    Ok(limits)
}

/// Whether the function says `whole("studs", studs)?` of an argument.
fn is_whole(block: &syn::Block, argument: &str) -> bool {
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

fn limit(argument: &str, tokens: &[TokenTree], consts: &BTreeMap<String, f64>) -> Fallible<Limit> {
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
        evaluate(&expression, consts)
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

fn evaluate(expression: &syn::Expr, consts: &BTreeMap<String, f64>) -> Option<f64> {
    match expression {
        syn::Expr::Lit(literal) => literal_value(&literal.lit),
        syn::Expr::Paren(inner) => evaluate(&inner.expr, consts),
        syn::Expr::Unary(unary) if matches!(unary.op, syn::UnOp::Neg(_)) => {
            Some(-evaluate(&unary.expr, consts)?)
        }
        syn::Expr::Path(path) => consts.get(&path.path.get_ident()?.to_string()).copied(),
        _ => None,
    }
}

/// Systems import downward only.
fn check_layers(sources: &Sources) -> Fallible<()> {
    let layer = |name: &str| LAYERS.iter().position(|layer| layer.contains(&name));
    let own = layer(&sources.system).ok_or_else(|| format!("{} stands on no layer", sources.system))?;
    for (path, _) in &sources.files {
        let text = read(path)?;
        let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
        for line in code {
            for other in LAYERS.iter().flat_map(|layer| layer.iter()) {
                let imports = line.contains(&format!("crate::{other}::"))
                    || line.trim_start().starts_with("use crate::{")
                        && line.split(['{', ',', '}', ' ']).any(|word| word == *other);
                if imports && *other != sources.system && layer(other) >= Some(own) {
                    return Err(format!(
                        "{}: {} imports {other}, which does not stand below it",
                        path.display(),
                        sources.system
                    ));
                }
            }
        }
    }
    Ok(())
}
