//! The committed half of the Python package: for each system a stub for type checkers and editors, and the few lines of its module. The members
//! of the module are made at import, from the tables of the native module.

use super::{File, MARK};
use std::collections::BTreeSet;
use surface::{Api, Content, Field, Function, Kind, Model, Output, Shape, System};

const PACKAGE: &str = "bindings/python/axlewright";

pub fn files(api: &Api) -> Result<Vec<File>, String> {
    let mut files = vec![File { path: format!("{PACKAGE}/units.pyi"), text: units(api) }];
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
    let text = list("The systems of the vehicle", "axlewright", &all);
    files.push(File { path: format!("{PACKAGE}/generated.py"), text });
    let text = list("The systems that have functions", "axlewright.si", &with_functions);
    files.push(File { path: format!("{PACKAGE}/si/generated.py"), text });
    Ok(files)
}

fn module(title: &str, fill: &str) -> String {
    format!("\"\"\"{title}. {MARK}\"\"\"\n\nfrom axlewright._system import {fill}\n\n{fill}(globals())\n")
}

fn list(title: &str, package: &str, systems: &[&System]) -> String {
    let names: String = systems.iter().map(|system| format!("\"{}\",", system.name)).collect();
    let imports: String =
        systems.iter().map(|system| format!("    from {package} import {0} as {0}\n", system.name)).collect();
    format!(
        "\"\"\"{title}. {MARK}\"\"\"\n\nfrom typing import TYPE_CHECKING\n\nSYSTEMS = ({names})\n\nif TYPE_CHECKING:\n{imports}",
    )
}

fn units(api: &Api) -> String {
    let mut out = format!(
        "\"\"\"Units: `300 * lbf_in`, `[250, 300] * lbf_in`, `degF(70)`. {MARK}\"\"\"\n\n\
         from typing import Final\n\nfrom axlewright._native import Unit\n\n{}",
        exported(api.kinds.iter().flat_map(|kind| &kind.units).map(|unit| &unit.name)),
    );
    for kind in &api.kinds {
        out.push_str(&format!("\n# {}\n", kind.words));
        for unit in &kind.units {
            out.push_str(&format!("{}: Final[Unit]\n", unit.name));
        }
    }
    out
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

/// Names that a stub uses of other modules.
#[derive(Default)]
struct Uses(BTreeSet<(&'static str, &'static str)>);

impl Uses {
    fn of(&mut self, module: &'static str, name: &'static str) -> &'static str {
        self.0.insert((module, name));
        name
    }

    fn taken(&mut self, kind: &Kind) -> String {
        self.of("axlewright._types", if kind.name == "Ratio" { "RatioLike" } else { "QuantityLike" })
            .to_owned()
    }

    fn given(&mut self, kind: &Kind) -> String {
        match kind.name.as_str() {
            "Ratio" => self.of("axlewright._types", "Ratio").to_owned(),
            _ => self.of("axlewright._native", "Quantity").to_owned(),
        }
    }

    fn words(&mut self, api: &Api, choice: &str, word: impl Fn(&str) -> String) -> Result<String, String> {
        let found = api.choices.iter().find(|known| known.name == choice);
        let found = found.ok_or_else(|| format!("{choice} is no choice"))?;
        let words: Vec<String> = found.words.iter().map(|(_, of)| format!("\"{}\"", word(of))).collect();
        Ok(format!("{}[{}]", self.of("typing", "Literal"), words.join(", ")))
    }

    fn result(&mut self, api: &Api, output: &Output) -> Result<String, String> {
        Ok(match &output.content {
            Content::Quantity(kind) => self.given(kind),
            // A result is a word for people: spaces, not underscores.
            Content::Choice(name) => self.words(api, name, |word| word.replace('_', " "))?,
            Content::Text => "str".into(),
            Content::Whole => "int".into(),
            Content::Table => self.of("axlewright._table", "Table").to_owned(),
        })
    }

    /// Types that a field takes and gives back.
    fn field(&mut self, api: &Api, field: &Field) -> Result<(String, String), String> {
        let both = |of: String| (of.clone(), of);
        let (taken, given) = match &field.shape {
            Shape::Quantity(kind) => (self.taken(kind), self.given(kind)),
            Shape::Choice(name) => both(self.words(api, name, str::to_owned)?),
            Shape::Text => both("str".into()),
            Shape::List(_) => {
                let any = self.of("typing", "Any");
                let (sequence, mapping) =
                    (self.of("collections.abc", "Sequence"), self.of("collections.abc", "Mapping"));
                (format!("{sequence}[{mapping}[str, {any}]]"), format!("list[dict[str, {any}]]"))
            }
            Shape::Fields(_) => {
                let any = self.of("typing", "Any");
                let mapping = self.of("collections.abc", "Mapping");
                (format!("{mapping}[str, {any}]"), format!("dict[str, {any}]"))
            }
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
    for of in functions.iter().copied().chain(models.iter().flat_map(|model| &model.methods)) {
        if let Some(name) = &of.result_type
            && classes.insert(name)
        {
            body.push_str(&format!("\nclass {name}({}):\n", uses.of("typing", "NamedTuple")));
            for result in &of.results {
                body.push_str(&format!("    {}: {}\n", result.name, uses.result(api, result)?));
            }
        }
    }
    for of in &functions {
        let mut arguments = arguments(of, &mut uses);
        arguments.push(format!("invalid: {} = \"raise\"", uses.of("axlewright._types", "Invalid")));
        body.push_str(&called(api, &mut uses, of, "", "*", &arguments)?);
    }
    for model in &models {
        body.push_str(&class(api, &mut uses, model)?);
    }
    let mut imports: Vec<String> = Vec::new();
    let mut last = "";
    for (module, name) in &uses.0 {
        match imports.last_mut() {
            Some(line) if last == *module => line.push_str(&format!(", {name}")),
            _ => imports.push(format!("from {module} import {name}")),
        }
        last = module;
    }
    let names = functions.iter().map(|of| &of.name).chain(models.iter().map(|of| &of.name)).chain(classes);
    Ok(format!(
        "\"\"\"{}. {MARK}\"\"\"\n\n{}\n\n{}{body}",
        system.title(),
        imports.join("\n"),
        exported(names)
    ))
}

fn arguments(of: &Function, uses: &mut Uses) -> Vec<String> {
    of.parameters.iter().map(|p| format!("{}: {}", p.name, uses.taken(&p.kind))).collect()
}

/// A function or a method.
fn called(
    api: &Api,
    uses: &mut Uses,
    of: &Function,
    indent: &str,
    first: &str,
    arguments: &[String],
) -> Result<String, String> {
    let result = match &of.result_type {
        Some(name) => name.clone(),
        None => uses.result(api, &of.results[0])?,
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
    let mut arguments = String::new();
    for field in required.iter().chain(&optional) {
        let (taken, _) = uses.field(api, field)?;
        let none = if field.optional { " | None = None" } else { "" };
        arguments.push_str(&format!(", {}: {taken}{none}", field.name));
    }
    out.push_str(&format!("    def __init__(self, *{arguments}) -> None: ...\n"));
    for field in &model.fields {
        let (_, given) = uses.field(api, field)?;
        let none = if field.optional { " | None" } else { "" };
        out.push_str(&format!("    @property\n    def {}(self) -> {given}{none}: ...\n", field.name));
    }
    for method in &model.methods {
        let first = if method.parameters.is_empty() { "self" } else { "self, *" };
        let arguments = self::arguments(method, uses);
        out.push_str(&called(api, uses, method, "    ", first, &arguments)?);
    }
    Ok(out)
}

/// One line of a docstring.
fn summary(text: &str) -> String {
    text.replace('\\', "\\\\").replace("\"\"\"", "'''")
}
