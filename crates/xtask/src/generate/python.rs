//! The Python binding: kernels and models of the native module, and the typed facade modules that people import.

use super::File;
use std::collections::BTreeSet;
use surface::words::{doc_lines, flow, model_lines};
use surface::{Api, Choice, Content, Field, Function, Kind, Model, Output, Shape, snake};

const PACKAGE: &str = "bindings/python/axlewright";
/// What makes the folder of a generated module importable: its names, said again for type checkers.
fn init(path: &str, module: &str) -> File {
    let names = module
        .split_once("__all__ = [")
        .and_then(|(_, rest)| rest.split_once(']'))
        .map_or("", |(names, _)| names);
    let names: Vec<&str> = names.split(',').map(str::trim).filter(|name| !name.is_empty()).collect();
    let imports: String = names.iter().map(|name| format!("    {},\n", name.trim_matches('"'))).collect();
    let all: String = names.iter().map(|name| format!("    {name},\n")).collect();
    let text = format!("from .generated import (\n    __doc__,\n{imports})\n\n__all__ = [\n{all}]\n");
    File { path: format!("{path}/__init__.py"), text }
}

pub fn files(api: &Api) -> Result<Vec<File>, String> {
    let mut files = vec![
        init(&format!("{PACKAGE}/units"), &units(api)),
        File { path: format!("{PACKAGE}/units/generated.py"), text: units(api) },
    ];
    let (mut systems, mut with_functions) = (Vec::new(), Vec::new());
    for system in &api.systems {
        let name = &system.name;
        let title = system.doc.lines().next().unwrap_or_default().trim_end_matches('.');
        let functions: Vec<&Function> = api.functions.iter().filter(|f| f.system == *name).collect();
        let models: Vec<&Model> = api.models.iter().filter(|m| m.system == *name).collect();
        let module = facade(api, title, &functions, &models)?;
        files.push(init(&format!("{PACKAGE}/{name}"), &module));
        files.push(File { path: format!("{PACKAGE}/{name}/generated.py"), text: module });
        systems.push(name.as_str());
        if !functions.is_empty() {
            let module = ufuncs(title, &functions);
            files.push(init(&format!("{PACKAGE}/si/{name}"), &module));
            files.push(File { path: format!("{PACKAGE}/si/{name}/generated.py"), text: module });
            with_functions.push(name.as_str());
        }
    }
    files.push(File {
        path: format!("{PACKAGE}/generated.py"),
        text: list("The systems of the vehicle", "axlewright", &systems),
    });
    files.push(File {
        path: format!("{PACKAGE}/si/generated.py"),
        text: list("The systems that have functions", "axlewright.si", &with_functions),
    });
    Ok(files)
}

fn units(api: &Api) -> String {
    let mut out = String::from(
        "\"\"\"Units: `300 * lbf_in`, `[250, 300] * lbf_in`, `degF(70)`. Generated; do not edit.\"\"\"\n\n\
         from typing import Final\n\nfrom axlewright._native import UNITS as _UNITS, Unit\n\n__all__ = [\n",
    );
    for unit in api.kinds.iter().flat_map(|kind| &kind.units) {
        out.push_str(&format!("    \"{}\",\n", unit.name));
    }
    out.push_str("]\n");
    for kind in &api.kinds {
        let words = kind.words[..1].to_uppercase() + &kind.words[1..];
        out.push_str(&format!("\n# {words}\n"));
        for unit in &kind.units {
            out.push_str(&format!("{0}: Final[Unit] = _UNITS[\"{0}\"]\n", unit.name));
        }
    }
    out
}

fn list(title: &str, package: &str, systems: &[&str]) -> String {
    let names: Vec<String> = systems.iter().map(|name| format!("\"{name}\"")).collect();
    let imports: String =
        systems.iter().map(|name| format!("    from {package} import {name} as {name}\n")).collect();
    format!(
        "\"\"\"{title}. Generated; do not edit.\"\"\"\n\nfrom typing import TYPE_CHECKING\n\nSYSTEMS = ({},)\n\nif TYPE_CHECKING:\n{imports}",
        names.join(", ")
    )
}

fn ufuncs(title: &str, functions: &[&Function]) -> String {
    let names: Vec<String> = functions.iter().map(|f| format!("\"{}\"", f.name)).collect();
    let lines: String = functions
        .iter()
        .map(|f| format!("{}: Final[np.ufunc] = _ufuncs[\"{}\"]\n", f.name, f.path()))
        .collect();
    format!(
        "\"\"\"{title}, as ufuncs in coherent SI. Generated; do not edit.\"\"\"\n\nfrom typing import Final\n\nimport numpy as np\n\n\
         from axlewright._native import ufuncs as _ufuncs\n\n__all__ = [{}]\n\n{lines}",
        names.join(", ")
    )
}

/// A docstring, indented.
fn docstring(lines: &[String], indent: &str) -> String {
    let mut text = String::new();
    for (place, line) in flow(lines).into_iter().enumerate() {
        if !line.is_empty() && place > 0 {
            text.push_str(indent);
        }
        text.push_str(&line.replace('\\', "\\\\").replace("\"\"\"", "'''"));
        text.push('\n');
    }
    let text = text.trim_end();
    if text.contains('\n') {
        format!("{indent}\"\"\"{text}\n{indent}\"\"\"\n")
    } else {
        format!("{indent}\"\"\"{text}\"\"\"\n")
    }
}

/// Which typing names a module uses.
#[derive(Default)]
struct Uses {
    typing: BTreeSet<&'static str>,
    types: BTreeSet<&'static str>,
    package: BTreeSet<&'static str>,
}

impl Uses {
    fn taken(&mut self, kind: &Kind) -> &'static str {
        let name = if kind.name == "Ratio" { "RatioLike" } else { "QuantityLike" };
        self.types.insert(name);
        name
    }
    fn given(&mut self, kind: &Kind) -> &'static str {
        if kind.name == "Ratio" {
            self.types.insert("Ratio");
            "Ratio"
        } else {
            self.package.insert("Quantity");
            "Quantity"
        }
    }
    fn words(&mut self, words: impl Iterator<Item = String>) -> String {
        self.typing.insert("Literal");
        format!("Literal[{}]", words.map(|word| format!("\"{word}\"")).collect::<Vec<_>>().join(", "))
    }
    fn output(&mut self, api: &Api, output: &Output) -> Result<String, String> {
        Ok(match &output.content {
            Content::Quantity(kind) => self.given(kind).to_owned(),
            // A result is a word for people: spaces, not underscores.
            Content::Choice(name) => {
                self.words(find_choice(api, name)?.words.iter().map(|(_, word)| word.replace('_', " ")))
            }
            Content::Text => "str".into(),
            Content::Whole => "int".into(),
            Content::Table => {
                self.package.insert("Table");
                "Table".into()
            }
        })
    }
    fn field(&mut self, api: &Api, field: &Field) -> Result<String, String> {
        Ok(match &field.shape {
            Shape::Quantity(kind) => self.taken(kind).to_owned(),
            Shape::Choice(name) => {
                self.words(find_choice(api, name)?.words.iter().map(|(_, word)| word.clone()))
            }
            Shape::Text => "str".into(),
            Shape::List(_) => {
                self.typing.insert("Any");
                "Sequence[Mapping[str, Any]]".into()
            }
            Shape::Fields(_) => {
                self.typing.insert("Any");
                "Mapping[str, Any]".into()
            }
        })
    }
}

fn find_choice<'a>(api: &'a Api, name: &str) -> Result<&'a Choice, String> {
    api.choices.iter().find(|choice| choice.name == name).ok_or_else(|| format!("{name} is no choice"))
}

fn facade(api: &Api, title: &str, functions: &[&Function], models: &[&Model]) -> Result<String, String> {
    let mut uses = Uses::default();
    let mut names = BTreeSet::new();
    let (mut handles, mut classes, mut body) = (String::new(), String::new(), String::new());
    let methods = models.iter().flat_map(|model| &model.methods);
    for function in functions.iter().copied().chain(methods) {
        if let Some(name) = &function.result_type
            && names.insert(name.clone())
        {
            classes.push_str(&result_class(api, &mut uses, name, function)?);
        }
    }
    for function in functions {
        names.insert(function.name.clone());
        handles.push_str(&format!("_{} = _functions[\"{}\"]\n", function.name, function.path()));
        body.push_str(&front(api, &mut uses, function)?);
    }
    for model in models {
        names.insert(model.name.clone());
        for method in &model.methods {
            handles.push_str(&format!(
                "_{}_{} = _functions[\"{}.{}.{}\"]\n",
                snake(&model.name),
                method.name,
                model.system,
                model.name,
                method.name
            ));
        }
        body.push_str(&class(api, &mut uses, model)?);
    }
    let all: Vec<String> = names.iter().map(|name| format!("\"{name}\"")).collect();
    let typing: Vec<&str> = std::iter::once("TYPE_CHECKING").chain(uses.typing.iter().copied()).collect();
    let mut head = format!(
        "\"\"\"{title}. Generated; do not edit.\"\"\"\n\nfrom __future__ import annotations\n\nfrom typing import {}\n\n",
        typing.join(", ")
    );
    if !models.is_empty() {
        head.push_str("from axlewright._model import Model\n");
    }
    head.push_str("from axlewright._native import functions as _functions\n\nif TYPE_CHECKING:\n");
    let abstracts: Vec<&str> =
        ["Mapping", "Sequence"].into_iter().filter(|name| body.contains(&format!("{name}["))).collect();
    if !abstracts.is_empty() {
        head.push_str(&format!("    from collections.abc import {}\n\n", abstracts.join(", ")));
    }
    let join = |names: &BTreeSet<&str>| names.iter().copied().collect::<Vec<_>>().join(", ");
    for (module, names) in [("axlewright", &uses.package), ("axlewright._types", &uses.types)] {
        if !names.is_empty() {
            head.push_str(&format!("    from {module} import {}\n", join(names)));
        }
    }
    Ok(format!("{head}\n__all__ = [{}]\n\n{handles}{classes}{body}", all.join(", ")))
}

fn result_class(api: &Api, uses: &mut Uses, name: &str, function: &Function) -> Result<String, String> {
    uses.typing.insert("NamedTuple");
    let mut out =
        format!("\n\nclass {name}(NamedTuple):\n    \"\"\"Results of `{}`.\"\"\"\n\n", function.name);
    for result in &function.results {
        out.push_str(&format!("    {}: {}\n", result.name, uses.output(api, result)?));
        let meaning = result.meaning[..1].to_uppercase() + &result.meaning[1..];
        out.push_str(&docstring(&[format!("{}.", meaning.trim_end_matches('.'))], "    "));
    }
    Ok(out)
}

fn front(api: &Api, uses: &mut Uses, function: &Function) -> Result<String, String> {
    uses.types.insert("Invalid");
    let parameters: String =
        function.parameters.iter().map(|p| format!("    {}: {},\n", p.name, uses.taken(&p.kind))).collect();
    let arguments: Vec<&str> =
        function.parameters.iter().map(|p| p.name.as_str()).chain(["invalid"]).collect();
    let call = format!("_{}({})", function.name, arguments.join(", "));
    let (result, statement) = match &function.result_type {
        Some(name) => (name.clone(), format!("    return {name}(*{call})\n")),
        None => {
            let result = uses.output(api, &function.results[0])?;
            let ignore = if result == "Ratio" { "" } else { "  # type: ignore[no-any-return]" };
            (result, format!("    return {call}{ignore}\n"))
        }
    };
    let mut lines = doc_lines(function, false);
    lines.extend([
        String::new(),
        "A value outside the range raises `DomainError`, which says where in an array; with `invalid=\"nan\"` it gives NaN.".into(),
    ]);
    Ok(format!(
        "\n\ndef {}(\n    *,\n{parameters}    invalid: Invalid = \"raise\",\n) -> {result}:\n{}{statement}",
        function.name,
        docstring(&lines, "    ")
    ))
}

fn class(api: &Api, uses: &mut Uses, model: &Model) -> Result<String, String> {
    let mut parameters = String::new();
    for field in model.fields.iter().filter(|field| !field.optional) {
        parameters.push_str(&format!("        {}: {},\n", field.name, uses.field(api, field)?));
    }
    for field in model.fields.iter().filter(|field| field.optional) {
        parameters.push_str(&format!("        {}: {} | None = None,\n", field.name, uses.field(api, field)?));
    }
    let fields: String =
        model.fields.iter().map(|field| format!("            {0}={0},\n", field.name)).collect();
    let kinds: Vec<String> = model
        .fields
        .iter()
        .filter_map(|field| match &field.shape {
            Shape::Quantity(kind) => Some(format!("\"{}\": \"{kind}\"", field.name)),
            _ => None,
        })
        .collect();
    let mut out = format!(
        "\n\nclass {0}(Model):\n{1}\n    __slots__ = ()\n    _name = \"{2}.{0}\"\n    _kinds = {{{3}}}\n\n    def __init__(\n        self,\n        *,\n{parameters}    ) -> None:\n        self._build(\n{fields}        )\n",
        model.name,
        docstring(&model_lines(model), "    "),
        model.system,
        kinds.join(", "),
    );
    for field in &model.fields {
        let kind = match &field.shape {
            Shape::Quantity(kind) => format!(", \"{kind}\""),
            _ => String::new(),
        };
        let given = match &field.shape {
            Shape::Quantity(kind) => uses.given(kind).to_owned(),
            Shape::List(_) => "list[dict[str, Any]]".into(),
            Shape::Fields(_) => "dict[str, Any]".into(),
            _ => uses.field(api, field)?,
        };
        let optional = if field.optional { " | None" } else { "" };
        let ignore = if given == "Ratio" { "" } else { "  # type: ignore[no-any-return]" };
        let meaning = field.meaning[..1].to_uppercase() + &field.meaning[1..];
        out.push_str(&format!(
            "\n    @property\n    def {0}(self) -> {given}{optional}:\n{1}        return self._read(\"{0}\"{kind}){ignore}\n",
            field.name,
            docstring(&[format!("{}.", meaning.trim_end_matches('.'))], "        "),
        ));
    }
    for method in &model.methods {
        let mut head = String::from("self");
        if !method.parameters.is_empty() {
            head.push_str(", *");
        }
        let mut arguments = vec!["self._handle".to_owned()];
        for p in &method.parameters {
            head.push_str(&format!(", {}: {}", p.name, uses.taken(&p.kind)));
            arguments.push(p.name.clone());
        }
        let call = format!("_{}_{}({})", snake(&model.name), method.name, arguments.join(", "));
        let (result, statement) = match &method.result_type {
            Some(name) => (name.clone(), format!("        return {name}(*{call})\n")),
            None => {
                let result = uses.output(api, &method.results[0])?;
                let ignore = if result == "Ratio" { "" } else { "  # type: ignore[no-any-return]" };
                (result, format!("        return {call}{ignore}\n"))
            }
        };
        out.push_str(&format!(
            "\n    def {}({head}) -> {result}:\n{}{statement}",
            method.name,
            docstring(&doc_lines(method, false), "        ")
        ));
    }
    Ok(out)
}
