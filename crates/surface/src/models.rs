//! Models: structs that implement `Model`, with their fields and public methods.

use crate::docs::{bullets, doc_text, docs, meaning, one_line, sections};
use crate::ranges::constants;
use crate::sources::{Sources, generic_argument, is_public, type_name};
use crate::{Api, Entry, Fallible, Field, Function, Model, Shape};
use std::collections::BTreeMap;
use syn::{ImplItem, Item};

impl Api {
    /// Reads a model.
    pub(crate) fn model(
        &self,
        sources: &Sources,
        name: &str,
        structs: &BTreeMap<String, &syn::ItemStruct>,
    ) -> Fallible<Model> {
        let item = structs.get(name).ok_or_else(|| format!("{name} is not public"))?;
        let text = doc_text(&item.attrs);
        let sections = sections(&text);
        let docs = docs(&text, &sections)?;
        for heading in ["Formula", "Valid for", "Source"] {
            if !sections.contains_key(heading) {
                return Err(format!("{name} has no `# {heading}`"));
            }
        }
        // The doc comment of a field is its meaning, unless the model's docs say more.
        let described = bullets(sections.get("Fields").map_or("", String::as_str));
        let mut fields = self.fields(item, structs)?;
        for (field, of) in fields.iter_mut().zip(&item.fields) {
            field.meaning = match described.iter().find(|(name, _)| *name == field.name) {
                Some((_, said)) => said.clone(),
                None => meaning(&of.attrs),
            };
            if field.meaning.is_empty() {
                return Err(format!(
                    "`{}` of {name} has no doc comment and no line under `# Fields`",
                    field.name
                ));
            }
        }
        if let Some((other, _)) =
            described.iter().find(|(name, _)| fields.iter().all(|field| field.name != *name))
        {
            return Err(format!("`# Fields` of {name} describes `{other}`, which is not a field"));
        }
        let mut methods = Vec::new();
        // The methods beside the struct come first, wherever the others stand.
        let declares =
            |file: &syn::File| file.items.iter().any(|of| matches!(of, Item::Struct(of) if of.ident == name));
        let mut files: Vec<_> = sources.files.iter().collect();
        files.sort_by_key(|(_, file)| !declares(file));
        for (_, file) in files {
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
                            &sources.name,
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
        name_columns(&mut methods)?;
        for method in &methods {
            if fields.iter().any(|field: &Field| field.name == method.name) {
                return Err(format!("{name} has a field and a method called {}", method.name));
            }
        }
        Ok(Model { system: sources.name.clone(), name: name.to_owned(), docs, fields, methods })
    }

    fn fields(
        &self,
        item: &syn::ItemStruct,
        structs: &BTreeMap<String, &syn::ItemStruct>,
    ) -> Fallible<Vec<Field>> {
        let mut fields = Vec::new();
        for field in &item.fields {
            let name = field.ident.as_ref().map(ToString::to_string).unwrap_or_default();
            let place = |error: String| format!("{name}: {error}");
            let stated = generic_argument(&field.ty, "Stated");
            let may_be_none = stated.is_some();
            let (optional, inner) = match stated.or_else(|| generic_argument(&field.ty, "Option")) {
                Some(inner) => (true, inner),
                // A list may be left out if it is empty then.
                None => {
                    (generic_argument(&field.ty, "Vec").is_some() && has_default(&field.attrs), &field.ty)
                }
            };
            let shape = self.shape(inner, structs).map_err(place)?;
            let meaning = one_line(&doc_text(&field.attrs));
            fields.push(Field { name, optional, may_be_none, shape, meaning });
        }
        Ok(fields)
    }

    /// Shape of a field by its type: each possible form is one line here.
    fn shape(&self, of: &syn::Type, structs: &BTreeMap<String, &syn::ItemStruct>) -> Fallible<Shape> {
        let of_struct = |name: &str| match structs.get(name) {
            Some(item) => Ok(Entry { name: name.to_owned(), fields: self.fields(item, structs)? }),
            None => Err(format!("{name} is no quantity, choice or struct")),
        };
        if let Some(quantity) = generic_argument(of, "Value") {
            let name = type_name(quantity)?;
            let kind = self.kind(&name).ok_or_else(|| format!("{name} is no quantity"))?;
            return Ok(Shape::Quantity(kind.clone()));
        }
        if let Some(entry) = generic_argument(of, "Vec") {
            return Ok(Shape::List(of_struct(&type_name(entry)?)?));
        }
        Ok(match type_name(of)?.as_str() {
            "String" => Shape::Text,
            choice if self.is_choice(choice) => Shape::Choice(choice.to_owned()),
            other => Shape::Fields(of_struct(other)?),
        })
    }
}

/// Whether a document may leave a field out: `serde(default)` stands before it.
fn has_default(attributes: &[syn::Attribute]) -> bool {
    attributes.iter().any(|attribute| match &attribute.meta {
        syn::Meta::List(list) => {
            let words = list.tokens.to_string();
            words.contains("serde") && words.contains("default")
        }
        _ => false,
    })
}

/// Names the columns of a table for "the results of `at`: `...`", from the results of that method.
fn name_columns(methods: &mut [Function]) -> Fallible<()> {
    const LIST: &str = "`: `...`";
    for place in 0..methods.len() {
        let Some((before, after)) = methods[place].docs.returns.split_once(LIST) else { continue };
        let of = before.rsplit('`').next().unwrap_or_default();
        let results = methods.iter().find(|method| method.name == of).map(|method| &method.results);
        let results = results.ok_or_else(|| {
            format!("{}: `# Returns` names `{of}`, which is no method", methods[place].name)
        })?;
        let names: Vec<String> = results.iter().map(|result| format!("`{}`", result.name)).collect();
        let returns = format!("{before}`: {}{after}", names.join(", "));
        let method = &mut methods[place];
        if let [table] = &mut method.results[..] {
            table.meaning = one_line(&returns);
        }
        method.docs.returns = returns;
    }
    Ok(())
}
