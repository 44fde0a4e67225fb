//! Functions: public, documented, of quantities.

use crate::docs::{bullets, doc_text, docs, meaning, not_described, one_line, sections};
use crate::ranges::{constants, is_whole, limits};
use crate::sources::{Sources, columns_are_named, generic_argument, is_model, is_public, type_name};
use crate::{Api, Content, Fallible, Function, Output, Parameter, Range};
use std::collections::BTreeMap;
use syn::{FnArg, Item, Pat, ReturnType, Type};

impl Api {
    /// Reads the functions and models of one system.
    pub(crate) fn read_system(&mut self, sources: &Sources, systems: &[Sources]) -> Fallible<()> {
        let mut faults = Vec::new();
        for (path, file) in &sources.files {
            // A model may have a part from another system; a struct of its own comes before one with the same name.
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
            let place = |error: String| format!("{}: {error}", path.display());
            faults.extend(columns_are_named(file).err().map(place));
            let items = file.items.iter();
            faults.extend(
                items.filter_map(|item| self.read_item(sources, item, &structs, &consts).err()).map(place),
            );
        }
        if faults.is_empty() { Ok(()) } else { Err(faults.join("\n")) }
    }

    /// Reads an item, if it is a function or a model.
    fn read_item(
        &mut self,
        sources: &Sources,
        item: &Item,
        structs: &BTreeMap<String, &syn::ItemStruct>,
        consts: &BTreeMap<String, f64>,
    ) -> Fallible<()> {
        match item {
            Item::Fn(item) if is_public(&item.vis) => {
                let function =
                    self.function(&sources.name, &item.sig, &item.attrs, &item.block, structs, consts)?;
                let docs = &function.docs;
                for (heading, text) in
                    [("Formula", &docs.formula), ("Source", &docs.source), ("Example", &docs.example)]
                {
                    if text.is_empty() {
                        return Err(format!("{} has no `# {heading}`", function.name));
                    }
                }
                if function.parameters.len() > 8
                    || function.results.len() > 8
                    || function.results.len() + function.parameters.len() > 32
                {
                    return Err(format!("{} has too many arguments: make it a model", function.name));
                }
                if !sources.exports(&function.name) {
                    return Err(format!(
                        "{} is not public: the mod.rs of its folder lacks its `pub use`",
                        function.name
                    ));
                }
                self.functions.push(function);
            }
            Item::Impl(item) if is_model(item) => {
                let name = type_name(&item.self_ty)?;
                let model = self.model(sources, &name, structs)?;
                if !sources.exports(&name) {
                    return Err(format!(
                        "{name} is not public: the mod.rs of its folder lacks its `pub use`"
                    ));
                }
                self.models.push(model);
            }
            _ => {}
        }
        Ok(())
    }

    #[allow(clippy::too_many_arguments)]
    /// Reads a function or a method.
    pub(crate) fn function(
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
            let kind = self.kind(&kind).cloned().ok_or_else(|| {
                place(format!(
                    "{argument_name} has the type {kind}, which is not a quantity; `base/units/kinds.rs` lists them"
                ))
            })?;
            let meaning = meanings
                .iter()
                .find(|(name, _)| *name == argument_name)
                .map(|(_, meaning)| meaning.clone())
                .ok_or_else(|| place(not_described(&argument_name, "Parameters")))?;
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
        let is_argument = |name: &String| parameters.iter().any(|parameter| parameter.name == *name);
        if let Some((name, _)) = meanings.iter().find(|(name, _)| !is_argument(name)) {
            return Err(place(format!("`# Parameters` describes `{name}`, which is not an argument")));
        }
        let stated: Vec<String> = sections
            .get("Valid for")
            .map_or("", String::as_str)
            .lines()
            .filter_map(|line| line.trim().strip_prefix("- `")?.strip_suffix('`').map(str::to_owned))
            .collect();
        let enforced: Vec<String> = limits.iter().map(|limit| limit.text.clone()).collect();
        if sections.contains_key("Valid for") && stated != enforced {
            return Err(place(format!(
                "`# Valid for` states {stated:?}, `valid!` enforces {enforced:?}: `cargo xtask generate` writes it"
            )));
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
        let item = structs.get(&type_of).ok_or_else(|| {
            format!("returns {type_of}, which is neither a quantity nor a struct of this system")
        })?;
        let meanings = bullets(returns);
        let mut results = Vec::new();
        for field in &item.fields {
            let field_name = field.ident.as_ref().map(ToString::to_string).unwrap_or_default();
            let type_of = type_name(&field.ty)?;
            let content =
                self.content(&type_of).ok_or_else(|| format!("{field_name} has the type {type_of}"))?;
            let meaning = match meanings.iter().find(|(name, _)| *name == field_name) {
                Some((_, meaning)) => meaning.clone(),
                None => meaning(&field.attrs),
            };
            if meaning.is_empty() {
                return Err(format!("`{field_name}` of {type_of} is not described"));
            }
            results.push(Output { name: field_name, content, meaning });
        }
        if let Some((name, _)) =
            meanings.iter().find(|(name, _)| results.iter().all(|result| result.name != *name))
        {
            return Err(format!("`# Returns` describes `{name}`, which is not a result"));
        }
        Ok((Some(type_of), results))
    }

    fn content(&self, name: &str) -> Option<Content> {
        Some(match name {
            "Table" => Content::Table,
            "String" => Content::Text,
            "i64" => Content::Whole,
            _ => match self.kind(name) {
                Some(kind) => Content::Quantity(kind.clone()),
                None if self.is_choice(name) => Content::Choice(name.to_owned()),
                None => return None,
            },
        })
    }
}
