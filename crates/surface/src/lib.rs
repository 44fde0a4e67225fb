//! Public surface of the core, read from its sources: kinds of quantity, functions, models, results and choices, with their
//! docs. The core is never linked, so this still works after a change of its names.
//!
//! Unknown items are refused by name: an unknown type, a missing heading, an undocumented parameter.

pub mod brief;
pub mod c;
pub mod examples;
pub mod native;
pub mod renamed;
pub mod rows;
pub mod words;

mod docs;
mod functions;
mod kinds;
mod layers;
mod limits;
mod models;
mod ranges;
mod sources;

pub use docs::one_line;
pub use kinds::{Kind, Unit};
pub use layers::{LAYERS, imports};
pub use limits::with_limits;
pub use sources::{NOT_A_SYSTEM, read, rust_files};

use sources::Sources;
use std::collections::BTreeSet;
use std::error::Error;
use std::fmt::{Display, Formatter};
use std::ops::Deref;
use std::path::{Path, PathBuf};
use std::rc::Rc;

/// The whole surface.
#[derive(Debug, Default)]
pub struct Api {
    /// Kinds of quantity, in the order of the sources.
    pub kinds: Vec<KindOf>,
    /// Functions, by system and file.
    pub functions: Vec<Function>,
    /// Models, by system and file.
    pub models: Vec<Model>,
    /// Closed lists of words.
    pub choices: Vec<Choice>,
    /// Folders of the core, by name.
    pub systems: Vec<System>,
}

/// A kind of quantity, shared by everything of that kind. It is written as its name.
#[derive(Debug, Clone, PartialEq)]
pub struct KindOf(Rc<Kind>);

impl Deref for KindOf {
    type Target = Kind;
    fn deref(&self) -> &Kind {
        &self.0
    }
}

impl Display for KindOf {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.name.as_str())
    }
}

/// A folder of the core.
#[derive(Debug)]
pub struct System {
    /// Name of the folder.
    pub name: String,
    /// Docs of its `mod.rs`.
    pub doc: String,
    /// True if it has a section of the build sheet.
    pub has_section: bool,
}

/// The docs of one item, by heading.
#[derive(Debug, Clone, Default)]
pub struct Docs {
    /// First paragraph: one sentence.
    pub summary: String,
    /// Formula, with symbols between backticks.
    pub formula: String,
    /// Meaning of the results.
    pub returns: String,
    /// Limits and conditions.
    pub valid_for: String,
    /// Origin of the formula.
    pub source: String,
    /// Hazard, if there is one.
    pub caution: String,
    /// Example in Rust.
    pub example: String,
    /// Number that rises when a published coefficient changes.
    pub revision: u32,
}

/// One argument.
#[derive(Debug, Clone)]
pub struct Parameter {
    /// Its name.
    pub name: String,
    /// Its kind of quantity.
    pub kind: KindOf,
    /// A list of quantities rather than one.
    pub list: bool,
    /// Meaning, from the docs.
    pub meaning: String,
    /// The limit in the usual notation, if the function states one.
    pub limit: Option<String>,
    /// The limit in numbers.
    pub range: Range,
}

/// Range of a parameter, in coherent SI.
#[derive(Debug, Clone, Default)]
pub struct Range {
    /// Lower bound.
    pub lower: Option<f64>,
    /// True if the lower bound itself is refused.
    pub lower_open: bool,
    /// Upper bound.
    pub upper: Option<f64>,
    /// True if the upper bound itself is refused.
    pub upper_open: bool,
    /// Parameters that it must exceed.
    pub exceeds: Vec<String>,
    /// True for a count.
    pub whole: bool,
}

/// Content of one result.
#[derive(Debug, Clone, PartialEq)]
pub enum Content {
    /// A quantity of this kind.
    Quantity(KindOf),
    /// A word of this choice.
    Choice(String),
    /// Free text.
    Text,
    /// A whole number.
    Whole,
    /// A table.
    Table,
}

/// One result.
#[derive(Debug, Clone)]
pub struct Output {
    /// Its name.
    pub name: String,
    /// Content.
    pub content: Content,
    /// Meaning, from the docs.
    pub meaning: String,
}

/// A function or a method.
#[derive(Debug, Clone)]
pub struct Function {
    /// Name of its system.
    pub system: String,
    /// Its own name.
    pub name: String,
    /// Its docs.
    pub docs: Docs,
    /// Its arguments, in order.
    pub parameters: Vec<Parameter>,
    /// Name of the struct that holds several results.
    pub result_type: Option<String>,
    /// Its results, in order.
    pub results: Vec<Output>,
}

/// Shape of one field of a model.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A quantity of this kind.
    Quantity(KindOf),
    /// A word of this choice.
    Choice(String),
    /// Free text.
    Text,
    /// A list of tables with fields of their own.
    List(Entry),
    /// A table with fields of its own.
    Fields(Entry),
}

/// A table in the document of a model, with fields of its own.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Name of its struct.
    pub name: String,
    /// Its fields, in order.
    pub fields: Vec<Field>,
}

/// One field of a model.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// Its name.
    pub name: String,
    /// True if it may be missing.
    pub optional: bool,
    /// True if a document may declare it `none`.
    pub may_be_none: bool,
    /// Shape of the field.
    pub shape: Shape,
    /// Meaning, from the docs.
    pub meaning: String,
}

/// A model and its methods.
#[derive(Debug, Clone)]
pub struct Model {
    /// Name of its system.
    pub system: String,
    /// Its own name.
    pub name: String,
    /// Its docs.
    pub docs: Docs,
    /// Its fields, in order.
    pub fields: Vec<Field>,
    /// Its public methods.
    pub methods: Vec<Function>,
}

/// With more results than this, C gives them in a struct rather than through pointers.
const MOST_POINTERS: usize = 8;

/// True if C gives the results of a method in one struct.
pub fn is_wide(method: &Function) -> bool {
    method.results.len() > MOST_POINTERS
}

/// A closed list of words.
#[derive(Debug, Clone)]
pub struct Choice {
    /// Name of the enum.
    pub name: String,
    /// Rust variant and the word that stands for it in text.
    pub words: Vec<(String, String)>,
}

/// A result, or the reason for the refusal of the sources.
pub type Fallible<T> = Result<T, String>;

impl System {
    /// Coverage of the system, in a line without a full stop.
    pub fn title(&self) -> String {
        self.doc.lines().next().unwrap_or_default().trim_end_matches('.').to_owned()
    }
}

impl Function {
    /// `spring.wheel_rate`
    pub fn path(&self) -> String {
        format!("{}.{}", self.system, self.name)
    }
}

/// Sources of the core in this repository, or beside this crate in a source distribution.
pub fn core_sources() -> PathBuf {
    let own = Path::new(env!("CARGO_MANIFEST_DIR"));
    own.parent().unwrap_or(own).join("axlewright/src")
}

/// A whole build script: writes `generated.rs`, made from the core's sources, into the build folder. It runs again after a change of a
/// source of the core.
pub fn build(make: impl Fn(&Api) -> Fallible<String>) -> Result<(), Box<dyn Error>> {
    let core = core_sources();
    println!("cargo::rerun-if-changed={}", core.display());
    let out = std::env::var_os("OUT_DIR").ok_or("OUT_DIR is not set: this runs in a build script")?;
    std::fs::write(Path::new(&out).join("generated.rs"), make(&Api::read(&core)?)?)?;
    Ok(())
}

impl Api {
    /// Reads the core's sources.
    pub fn read(core: &Path) -> Fallible<Api> {
        let systems = Sources::systems(core)?;
        let mut api = Api { kinds: kinds::read(&core.join("base"))?, ..Api::default() };
        let verdict = sources::parse(&core.join("base/verdict.rs"))?;
        api.choices.extend(sources::choices(&verdict).filter(|choice| choice.name == "Verdict"));
        for system in &systems {
            layers::check(system)?;
            api.systems.push(System {
                name: system.name.clone(),
                doc: system.doc()?,
                has_section: system.holds("sheet.rs"),
            });
            api.choices.extend(system.files.iter().flat_map(|(_, file)| sources::choices(file)));
        }
        let faults: Vec<String> =
            systems.iter().filter_map(|system| api.read_system(system, &systems).err()).collect();
        if !faults.is_empty() {
            return Err(faults.join("\n"));
        }
        api.refuse_doubles()?;
        let items = systems.iter().flat_map(|system| &system.files).flat_map(|(_, file)| &file.items);
        let tables = items.filter_map(|item| match item {
            syn::Item::Struct(of) if matches!(of.vis, syn::Visibility::Public(_)) => {
                Some(of.ident.to_string())
            }
            _ => None,
        });
        // A field is read by the name of its type alone.
        if let Some(double) = tables.into_iter().find(|name| api.is_choice(name)) {
            return Err(format!("{double} is a struct and an enum: give one of them another name"));
        }
        Ok(api)
    }

    /// The kind of this name.
    pub fn kind(&self, name: &str) -> Option<&KindOf> {
        self.kinds.iter().find(|kind| kind.name == name)
    }

    /// Name of a table in the documents of models, as a type: a model that stands in another one keeps its own name.
    pub fn entry_name(&self, entry: &Entry) -> String {
        let is_model = self.models.iter().any(|model| model.name == entry.name);
        format!("{}{}", entry.name, if is_model { "Document" } else { "" })
    }

    fn is_choice(&self, name: &str) -> bool {
        self.choices.iter().any(|choice| choice.name == name)
    }

    fn refuse_doubles(&self) -> Fallible<()> {
        // Words of a choice are numbered in C by its name alone.
        let mut choices = BTreeSet::new();
        if let Some(double) = self.choices.iter().find(|choice| !choices.insert(&choice.name)) {
            return Err(format!(
                "the enum {0} is there twice, and C names its words AXW_{1}_... without the system: give one another name",
                double.name,
                snake(&double.name).to_uppercase()
            ));
        }
        let mut seen = BTreeSet::new();
        let names = self.functions.iter().map(Function::path);
        let models = self.models.iter().map(|model| format!("{}.{}", model.system, snake(&model.name)));
        for name in names.chain(models) {
            let last = name.rsplit('.').next().unwrap_or_default();
            if ["_n", "_value", "_new", "_si", "_free", "_result"].iter().any(|ending| last.ends_with(ending))
            {
                return Err(format!("{name} ends like a name that the C surface reserves"));
            }
            if !seen.insert(name.clone()) {
                return Err(format!("{name} is there twice"));
            }
        }
        Ok(())
    }
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
