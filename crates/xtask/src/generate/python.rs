//! The committed half of the Python package: for each system a stub for type checkers and editors, and the few lines of its module. The members
//! of the module are made at import, from the tables of the native module.

use super::{File, MARK};
use crate::features::between;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use surface::{Api, Content, Entry, Field, Function, Kind, Model, Output, Shape, System};

const PACKAGE: &str = "bindings/python/axlewright";

pub fn files(api: &Api, root: &Path) -> Result<Vec<File>, String> {
    let mut files = vec![
        File { path: format!("{PACKAGE}/units.pyi"), text: units(api) },
        File { path: format!("{PACKAGE}/kinds.pyi"), text: kinds(api) },
    ];
    let mut with_functions = Vec::new();
    for system in &api.systems {
        let path = format!("{PACKAGE}/{}", system.name);
        files.push(File { path: format!("{path}.py"), text: module(&system.title(), "fill") });
        files.push(File { path: format!("{path}.pyi"), text: stub(api, system)? });
        let functions: Vec<&Function> = api.functions.iter().filter(|of| of.system == system.name).collect();
        if !functions.is_empty() {
            let path = format!("{PACKAGE}/si/{}", system.name);
            let title = format!("{}, as ufuncs in coherent SI", system.title());
            files.push(File { path: format!("{path}.py"), text: module(&title, "fill_si") });
            files.push(File { path: format!("{path}.pyi"), text: ufuncs(&title, &functions) });
            with_functions.push(system);
        }
    }
    let all: Vec<&System> = api.systems.iter().collect();
    for (title, package, folder, systems) in [
        ("The systems of the vehicle", "axlewright", PACKAGE.to_owned(), &all),
        ("The systems that have functions", "axlewright.si", format!("{PACKAGE}/si"), &with_functions),
    ] {
        files.push(File { path: format!("{folder}/generated.py"), text: list(title, systems) });
        let path = format!("{folder}/__init__.py");
        let now = std::fs::read_to_string(root.join(&path)).map_err(|error| format!("{path}: {error}"))?;
        files.push(File { text: between(&now, "    #", &imports(package, systems))?, path });
    }
    Ok(files)
}

fn module(title: &str, fill: &str) -> String {
    format!("\"\"\"{title}. {MARK}\"\"\"\n\nfrom axlewright._system import {fill}\n\n{fill}(globals())\n")
}

/// The systems as names that a package exports again, for type checkers.
fn imports(package: &str, systems: &[&System]) -> String {
    systems.iter().map(|system| format!("    from {package} import {0} as {0}\n", system.name)).collect()
}

fn list(title: &str, systems: &[&System]) -> String {
    let names: String = systems.iter().map(|system| format!("\"{}\",", system.name)).collect();
    format!("\"\"\"{title}. {MARK}\"\"\"\n\nSYSTEMS = ({names})\n")
}

fn units(api: &Api) -> String {
    let mut out = format!(
        "\"\"\"Units: `300 * lbf_in`, `lbf_in([250, 300])`, `degF(70)`. {MARK}\"\"\"\n\n\
         from typing import Final\n\nfrom axlewright import kinds\nfrom axlewright._native import _OwnZero, Unit\n\n{}",
        exported(api.kinds.iter().flat_map(|kind| &kind.units).map(|unit| &unit.name)),
    );
    for kind in &api.kinds {
        out.push_str(&format!("\n# {}\n", kind.words));
        for unit in &kind.units {
            let zero = if unit.offset == 0.0 { "" } else { ", _OwnZero" };
            out.push_str(&format!("{}: Final[Unit[kinds.{}{zero}]]\n", unit.name, kind.name));
        }
    }
    out
}

/// Kinds whose values are points on a scale: two of them do not add. The tests of the package hold them against its arithmetic.
const POINTS: [&str; 2] = ["AbsolutePressure", "Temperature"];

fn kinds(api: &Api) -> String {
    let names: Vec<String> = api.kinds.iter().map(|kind| kind.name.clone()).collect();
    let own = ["Additive".to_owned(), "Kind".to_owned()];
    let mut out = format!(
        "\"\"\"Kinds of quantity, for annotations: `Quantity[Mass]`. {MARK}\"\"\"\n\n{}\n\
         class Kind:\n    \"\"\"A kind of quantity; there are no objects of it.\"\"\"\n\n\
         class Additive(Kind):\n    \"\"\"A kind whose quantities add and scale.\"\"\"\n",
        exported(names.iter().chain(&own)),
    );
    for kind in &api.kinds {
        let base = if POINTS.contains(&kind.name.as_str()) { "Kind" } else { "Additive" };
        out.push_str(&format!("\nclass {}({base}):\n    \"\"\"{}.\"\"\"\n", kind.name, capital(&kind.words)));
    }
    out
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

/// `__all__`, a name a line.
fn exported<'a>(names: impl Iterator<Item = &'a String>) -> String {
    let names: BTreeSet<&String> = names.collect();
    let lines: String = names.iter().map(|name| format!("    \"{name}\",\n")).collect();
    format!("__all__ = [\n{lines}]\n")
}

fn ufuncs(title: &str, functions: &[&Function]) -> String {
    let lines: String = functions.iter().map(|of| format!("{}: Final[np.ufunc]\n", of.name)).collect();
    format!(
        "\"\"\"{title}. {MARK}\"\"\"\n\nfrom typing import Final\n\nimport numpy as np\n\n{}\n{lines}",
        exported(functions.iter().map(|of| &of.name))
    )
}

/// Names that a stub uses of other modules, and the tables in the documents of its models.
#[derive(Default)]
struct Uses {
    names: BTreeSet<(&'static str, &'static str)>,
    entries: BTreeMap<String, String>,
    systems: BTreeSet<String>,
}

impl Uses {
    fn of(&mut self, module: &'static str, name: &'static str) -> &'static str {
        self.names.insert((module, name));
        name
    }

    fn kind(&mut self, kind: &Kind) -> String {
        format!("{}.{}", self.of("axlewright", "kinds"), kind.name)
    }

    /// One quantity, or several.
    fn taken(&mut self, kind: &Kind, several: bool) -> String {
        match (kind.name.as_str(), several) {
            ("Ratio", true) => self.of("axlewright._types", "RatiosLike").to_owned(),
            ("Ratio", false) => self.of("axlewright._types", "RatioLike").to_owned(),
            (_, several) => {
                let of =
                    self.of("axlewright._types", if several { "QuantitiesLike" } else { "QuantityLike" });
                format!("{of}[{}]", self.kind(kind))
            }
        }
    }

    fn given(&mut self, kind: &Kind, several: bool) -> String {
        match kind.name.as_str() {
            "Ratio" if several => self.of("axlewright._types", "FloatOrArray").to_owned(),
            "Ratio" => "float".to_owned(),
            _ => format!("{}[{}]", self.of("axlewright._native", "Quantity"), self.kind(kind)),
        }
    }

    fn words(&mut self, api: &Api, choice: &str, word: impl Fn(&str) -> String) -> Result<String, String> {
        let found = api.choices.iter().find(|known| known.name == choice);
        let found = found.ok_or_else(|| format!("{choice} is no choice"))?;
        let words: Vec<String> = found.words.iter().map(|(_, of)| format!("\"{}\"", word(of))).collect();
        Ok(format!("{}[{}]", self.of("typing", "Literal"), words.join(", ")))
    }

    fn result(&mut self, api: &Api, output: &Output, several: bool) -> Result<String, String> {
        Ok(match &output.content {
            Content::Quantity(kind) => self.given(kind, several),
            // A result is a word for people: spaces, not underscores.
            Content::Choice(name) => self.words(api, name, |word| word.replace('_', " "))?,
            Content::Text => "str".into(),
            Content::Whole => "int".into(),
            Content::Table => self.of("axlewright._table", "Table").to_owned(),
        })
    }

    /// A table in a document, as a typed dict of its own; where it is the document of a model, that model may stand there, too.
    fn entry(&mut self, api: &Api, entry: &Entry) -> Result<String, String> {
        let name = api.entry_name(entry);
        if !self.entries.contains_key(&name) {
            let mut out = format!("\nclass {name}({}):\n", self.of("typing", "TypedDict"));
            // Before its fields, so that an entry inside itself is not read again.
            self.entries.insert(name.clone(), String::new());
            for field in &entry.fields {
                let (taken, _) = self.field(api, field, true)?;
                let taken = match field.optional {
                    true => format!("{}[{taken} | None]", self.of("typing", "NotRequired")),
                    false => taken,
                };
                out.push_str(&format!("    {}: {taken}\n", field.name));
            }
            self.entries.insert(name.clone(), out);
        }
        match api.models.iter().find(|model| model.name == entry.name) {
            Some(model) => {
                self.systems.insert(model.system.clone());
                Ok(format!("{name} | {}.{}", model.system, model.name))
            }
            None => Ok(name),
        }
    }

    /// Types that a field of a model takes and gives back. A quantity of pint has its place where the model itself names the kind.
    fn field(&mut self, api: &Api, field: &Field, inside: bool) -> Result<(String, String), String> {
        let both = |of: String| (of.clone(), of);
        let (taken, given) = match &field.shape {
            Shape::Quantity(kind) if inside && kind.name == "Ratio" => {
                both(self.of("axlewright._types", "RatioWritten").to_owned())
            }
            Shape::Quantity(kind) if inside => {
                both(format!("{}[{}]", self.of("axlewright._types", "QuantityWritten"), self.kind(kind)))
            }
            Shape::Quantity(kind) => (self.taken(kind, false), self.given(kind, false)),
            Shape::Choice(name) => both(self.words(api, name, str::to_owned)?),
            Shape::Text => both("str".into()),
            Shape::List(entry) => {
                let sequence = self.of("collections.abc", "Sequence");
                (
                    format!("{sequence}[{}]", self.entry(api, entry)?),
                    format!("list[{}]", api.entry_name(entry)),
                )
            }
            Shape::Fields(entry) => (self.entry(api, entry)?, api.entry_name(entry)),
        };
        if !field.may_be_none {
            return Ok((taken, given));
        }
        let none = format!("{}[\"none\"]", self.of("typing", "Literal"));
        Ok((format!("{taken} | {none}"), format!("{given} | {none}")))
    }
}

fn stub(api: &Api, system: &System) -> Result<String, String> {
    let mut uses = Uses::default();
    let mut body = String::new();
    let mut classes = BTreeSet::new();
    let functions: Vec<&Function> = api.functions.iter().filter(|of| of.system == system.name).collect();
    let models: Vec<&Model> = api.models.iter().filter(|of| of.system == system.name).collect();
    let of_models = models.iter().flat_map(|model| &model.methods).map(|method| (method, false));
    for (of, several) in functions.iter().map(|function| (*function, true)).chain(of_models) {
        if let Some(name) = &of.result_type
            && classes.insert(name)
        {
            body.push_str(&format!("\nclass {name}({}):\n", uses.of("typing", "NamedTuple")));
            for result in &of.results {
                body.push_str(&format!("    {}: {}\n", result.name, uses.result(api, result, several)?));
            }
        }
    }
    for of in &functions {
        let mut arguments = arguments(of, &mut uses, true);
        arguments.push(format!("invalid: {} = \"raise\"", uses.of("axlewright._types", "Invalid")));
        body.push_str(&called(api, &mut uses, of, "", "*", &arguments, true)?);
    }
    for model in &models {
        body.push_str(&class(api, &mut uses, model)?);
    }
    let mut imports: Vec<String> = Vec::new();
    let mut last = "";
    for (module, name) in &uses.names {
        match imports.last_mut() {
            Some(line) if last == *module => line.push_str(&format!(", {name}")),
            _ => imports.push(format!("from {module} import {name}")),
        }
        last = module;
    }
    imports.extend(uses.systems.iter().map(|of| format!("from axlewright import {of}")));
    let names: Vec<&String> =
        functions.iter().map(|of| &of.name).chain(models.iter().map(|of| &of.name)).chain(classes).collect();
    if let Some(double) = uses.entries.keys().find(|name| names.contains(name)) {
        return Err(format!("{double} is both a table of a document and a name of {}", system.name));
    }
    let names = names.into_iter().chain(uses.entries.keys());
    let entries: String = uses.entries.values().map(String::as_str).collect();
    Ok(format!(
        "\"\"\"{}. {MARK}\"\"\"\n\n{}\n\n{}{entries}{body}",
        system.title(),
        imports.join("\n"),
        exported(names)
    ))
}

/// The arguments of a function, which takes one quantity or several in each place, or of a method, which takes one where it does not ask for several.
fn arguments(of: &Function, uses: &mut Uses, several: bool) -> Vec<String> {
    of.parameters.iter().map(|p| format!("{}: {}", p.name, uses.taken(&p.kind, several || p.list))).collect()
}

/// A function or a method.
fn called(
    api: &Api,
    uses: &mut Uses,
    of: &Function,
    indent: &str,
    first: &str,
    arguments: &[String],
    several: bool,
) -> Result<String, String> {
    let result = match &of.result_type {
        Some(name) => name.clone(),
        None => uses.result(api, &of.results[0], several)?,
    };
    let arguments: String = arguments.iter().map(|argument| format!(", {argument}")).collect();
    Ok(format!(
        "\n{indent}def {}({first}{arguments}) -> {result}:\n{indent}    \"\"\"{}\"\"\"\n",
        of.name,
        summary(&of.docs.summary)
    ))
}

fn class(api: &Api, uses: &mut Uses, model: &Model) -> Result<String, String> {
    let mut out = format!(
        "\nclass {}({}):\n    \"\"\"{}\"\"\"\n\n",
        model.name,
        uses.of("axlewright._model", "Model"),
        summary(&model.docs.summary)
    );
    let (optional, required): (Vec<&Field>, Vec<&Field>) =
        model.fields.iter().partition(|field| field.optional);
    let (mut arguments, mut document) = (String::new(), String::new());
    for field in required.iter().chain(&optional) {
        let (taken, _) = uses.field(api, field, false)?;
        let none = if field.optional { " | None" } else { "" };
        let left_out = if field.optional { " = None" } else { "" };
        arguments.push_str(&format!(", {}: {taken}{none}{left_out}", field.name));
        document.push_str(&format!("    {}: {taken} | None\n", field.name));
    }
    let fields = format!("_{}Fields", model.name);
    let head = format!("\nclass {fields}({}, total=False):\n{document}", uses.of("typing", "TypedDict"));
    out.insert_str(0, &head);
    out.push_str(&format!("    def __init__(self, *{arguments}) -> None: ...\n"));
    let (this, unpack) = (uses.of("typing", "Self"), uses.of("typing", "Unpack"));
    out.push_str(&format!("    def replace(self, **fields: {unpack}[{fields}]) -> {this}: ...\n"));
    for field in &model.fields {
        let (_, given) = uses.field(api, field, false)?;
        let none = if field.optional { " | None" } else { "" };
        out.push_str(&format!("    @property\n    def {}(self) -> {given}{none}: ...\n", field.name));
    }
    for method in &model.methods {
        let first = if method.parameters.is_empty() { "self" } else { "self, *" };
        let arguments = self::arguments(method, uses, false);
        out.push_str(&called(api, uses, method, "    ", first, &arguments, false)?);
    }
    Ok(out)
}

/// One line of a docstring.
fn summary(text: &str) -> String {
    text.replace('\\', "\\\\").replace("\"\"\"", "'''")
}
