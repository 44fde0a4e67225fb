//! The native half of the Python module, as Rust source: a kernel a function, a table a model, and the list of the systems.

use crate::words::{doc_lines, flow, model_lines};
use crate::{Api, Content, Field, Function, Model, Output, Shape, examples, renamed};
use std::collections::BTreeMap;

/// A module of kernels and tables; the code that runs them is in `bindings/python/src`.
pub fn source(api: &Api) -> Result<String, String> {
    let mut out = String::from(
        "use crate::call::function_of;\nuse crate::kernel::{Class, Kernel};\nuse crate::keywords::Keyword;\n\
         use crate::model::{Arguments, Described, Field, Listed, Method, method_of};\nuse crate::system::{Function, Results, System};\n\
         use crate::ufunc::ufunc_of;\nuse axlewright::Result;\nuse axlewright::units::{self, Kind, Quantity};\nuse pyo3::prelude::*;\n\n",
    );
    let mut systems = String::new();
    for system in &api.systems {
        let functions: Vec<&Function> = api.functions.iter().filter(|of| of.system == system.name).collect();
        let models: Vec<&Model> = api.models.iter().filter(|of| of.system == system.name).collect();
        let (mut listed, mut tables) = (String::new(), String::new());
        for function in &functions {
            let name = kernel_name(function);
            let sizes = format!("{}, {}", function.parameters.len(), function.results.len());
            out.push_str(&kernel(api, &name, function)?);
            listed.push_str(&format!(
                "Function {{ name: {:?}, function: function_of::<{name}, {sizes}>, ufunc: ufunc_of::<{name}, {sizes}> }},\n",
                function.name
            ));
        }
        for model in &models {
            out.push_str(&table(api, model));
            let methods: Vec<String> = model
                .methods
                .iter()
                .map(|method| format!("method_of::<{}>", method_name(model, method)))
                .collect();
            let name = model_name(model);
            tables.push_str(&format!("Listed::new::<{name}>(&[{}]),\n", methods.join(", ")));
        }
        let methods = models.iter().flat_map(|model| &model.methods);
        let mut results = BTreeMap::new();
        for of in functions.iter().copied().chain(methods) {
            if let Some(name) = &of.result_type {
                results.entry(name.as_str()).or_insert(of);
            }
        }
        let mut classes = String::new();
        for (name, of) in results {
            let constant = class_name(&system.name, name);
            out.push_str(&format!(
                "static {constant}: Class = Class::new(\"axlewright.{}\", {name:?});\n\n",
                system.name
            ));
            let fields: String =
                of.results.iter().map(|r| format!("({:?}, {:?}),", r.name, sentence(&r.meaning))).collect();
            classes.push_str(&format!(
                "Results {{ name: {name:?}, of: {:?}, fields: &[{fields}], former: &[{}] }},\n",
                of.name,
                pairs(renamed::parts(&format!("{}.{name}", system.name)))
            ));
        }
        systems.push_str(&format!(
            "System {{ name: {:?}, results: &[{classes}], functions: &[{listed}], models: &[{tables}], entries: &[{}], former: &[{}] }},\n",
            system.name,
            entries(api, &models),
            pairs(renamed::items(&system.name)),
        ));
    }
    Ok(format!(
        "{out}/// Every system, by name.\npub static SYSTEMS: &[System] = &[{systems}];\n\n\
         /// Old and new names of the columns of tables.\npub static FORMER_COLUMNS: &[(&str, &str)] = &[{}];\n",
        pairs(renamed::columns())
    ))
}

/// The tables in the documents of models: a name, and its fields with whether they may be left out.
fn entries(api: &Api, models: &[&Model]) -> String {
    fn walk<'a>(api: &Api, fields: &'a [Field], found: &mut BTreeMap<String, &'a [Field]>) {
        for field in fields {
            if let Shape::List(entry) | Shape::Fields(entry) = &field.shape
                && found.insert(api.entry_name(entry), &entry.fields).is_none()
            {
                walk(api, &entry.fields, found);
            }
        }
    }
    let mut found = BTreeMap::new();
    models.iter().for_each(|model| walk(api, &model.fields, &mut found));
    let fields = |of: &[Field]| -> String {
        of.iter().map(|field| format!("({:?}, {}),", field.name, field.optional)).collect()
    };
    found.iter().map(|(name, of)| format!("({name:?}, &[{}]),", fields(of))).collect()
}

fn upper(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

/// `SpringWheelRate`
fn kernel_name(function: &Function) -> String {
    format!("{}{}", upper(&function.system), function.name.split('_').map(upper).collect::<String>())
}

/// `ModelSpringStack`
fn model_name(model: &Model) -> String {
    format!("Model{}{}", upper(&model.system), model.name)
}

/// `ModelSpringStackAtLength`
fn method_name(model: &Model, method: &Function) -> String {
    format!("{}{}", model_name(model), method.name.split('_').map(upper).collect::<String>())
}

/// `SPRING_STOPPED`
fn class_name(system: &str, name: &str) -> String {
    format!("{}_{}", system, crate::snake(name)).to_uppercase()
}

/// A meaning as a sentence of its own.
fn sentence(meaning: &str) -> String {
    format!("{}.", upper(meaning).trim_end_matches('.'))
}

/// An argument of a function or a method, with the name that it had before.
fn keyword(owner: &str, name: &str, optional: bool) -> String {
    let former = renamed::parts(owner).find(|(_, new)| *new == name).map(|(old, _)| old);
    format!("Keyword {{ name: {name:?}, optional: {optional}, former: {former:?} }},")
}

/// Pairs of an old and a new name.
fn pairs(of: impl Iterator<Item = (&'static str, &'static str)>) -> String {
    of.map(|(old, new)| format!("({old:?}, {new:?}),")).collect()
}

/// Text for `help`: the signature in Python's notation, and the docs. A method begins with `$self`.
fn signed(name: &str, this: Option<&str>, keywords: &[String], lines: &[String], example: &str) -> String {
    let star = (!keywords.is_empty()).then_some("*");
    let all: Vec<&str> = this.into_iter().chain(star).chain(keywords.iter().map(String::as_str)).collect();
    format!("{name}({})\n--\n\n{}{example}", all.join(", "), flow(lines).join("\n"))
}

/// The example of a function as the end of a docstring.
fn example(api: &Api, function: &Function) -> String {
    let Some(lines) = examples::python(api, function) else { return String::new() };
    let lines: Vec<String> = lines.iter().map(|line| format!("\n    {line}")).collect();
    format!("\n\nExample{}\n", lines.concat())
}

fn kernel(api: &Api, name: &str, function: &Function) -> Result<String, String> {
    let (inputs, outputs) = (function.parameters.len(), function.results.len());
    let kinds = |pairs: Vec<(&str, &str)>| -> String {
        pairs.iter().map(|(name, kind)| format!("({name:?}, units::{kind}::KIND),")).collect()
    };
    let parameters: Vec<(&str, &str)> =
        function.parameters.iter().map(|p| (p.name.as_str(), p.kind.name.as_str())).collect();
    let mut results = Vec::new();
    let mut values = Vec::new();
    for result in &function.results {
        let Content::Quantity(kind) = &result.content else {
            return Err(format!(
                "{} returns {}, which is no quantity: make it a model",
                function.path(),
                result.name
            ));
        };
        results.push((result.name.as_str(), kind.name.as_str()));
        values.push(if function.result_type.is_some() {
            format!("on.{}.si()", result.name)
        } else {
            "on.si()".into()
        });
    }
    let mut lines = doc_lines(function, false);
    lines.extend([
        String::new(),
        "A value outside the range raises `DomainError`, which says where in an array; with `invalid=\"nan\"` it gives NaN.".into(),
    ]);
    let names = function.parameters.iter().map(|p| p.name.clone());
    let front = signed(
        &function.name,
        None,
        &names.chain(["invalid='raise'".into()]).collect::<Vec<_>>(),
        &lines,
        &example(api, function),
    );
    let keywords: String =
        function.parameters.iter().map(|p| keyword(&function.path(), &p.name, false)).collect();
    let class = match &function.result_type {
        Some(class) => format!(
            "fn class() -> Option<&'static Class> {{ Some(&{}) }}\n",
            class_name(&function.system, class)
        ),
        None => String::new(),
    };
    let arguments: Vec<String> = (0..inputs).map(|i| format!("Quantity::from_si(x[{i}])")).collect();
    Ok(format!(
        "struct {name};\n\nimpl Kernel<{inputs}, {outputs}> for {name} {{\nconst NAME: &'static str = {:?};\nconst DOC: &'static str = {:?};\n\
         const FRONT: &'static str = {front:?};\nconst KEYWORDS: &'static [Keyword] = &[{keywords}{}];\n\
         const PARAMETERS: [(&'static str, &'static Kind); {inputs}] = [{}];\n\
         const RESULTS: [(&'static str, &'static Kind); {outputs}] = [{}];\n{class}#[inline(always)]\n\
         fn call(x: [f64; {inputs}]) -> Result<[f64; {outputs}]> {{ let on = axlewright::{}::{}({})?; Ok([{}]) }}\n}}\n\n",
        function.path(),
        doc_lines(function, true).join("\n"),
        keyword("", "invalid", true),
        kinds(parameters),
        kinds(results),
        function.system,
        function.name,
        arguments.join(", "),
        values.join(", "),
    ))
}

fn table(api: &Api, model: &Model) -> String {
    let name = model_name(model);
    let core = format!("axlewright::{}::{}", model.system, model.name);
    let kind = |field: &Field| match &field.shape {
        Shape::Quantity(kind) => format!("Some(units::{kind}::KIND)"),
        _ => "None".to_owned(),
    };
    let fields: String = model
        .fields
        .iter()
        .map(|field| {
            format!(
                "Field {{ name: {:?}, kind: {}, doc: {:?} }},",
                field.name,
                kind(field),
                flow(&[sentence(&field.meaning)]).join("\n")
            )
        })
        .collect();
    // Required ones come first in a signature.
    let (optional, required): (Vec<&Field>, Vec<&Field>) =
        model.fields.iter().partition(|field| field.optional);
    let arguments: Vec<String> = required
        .iter()
        .map(|field| field.name.clone())
        .chain(optional.iter().map(|field| format!("{}=None", field.name)))
        .collect();
    let owner = format!("{}.{}", model.system, model.name);
    let keywords: String =
        model.fields.iter().map(|field| keyword(&owner, &field.name, field.optional)).collect();
    let mut out = format!(
        "struct {name};\n\nimpl Described for {name} {{\ntype Model = {core};\nconst NAME: &'static str = \"{}.{}\";\nconst DOC: &'static str = {:?};\n\
         const INIT: &'static str = {:?};\nconst FIELDS: &'static [Field] = &[{fields}];\nconst KEYWORDS: &'static [Keyword] = &[{keywords}];\n}}\n\n",
        model.system,
        model.name,
        format!(
            "{}{}",
            flow(&model_lines(model)).join("\n"),
            model.methods.iter().map(|of| example(api, of)).find(|of| !of.is_empty()).unwrap_or_default()
        ),
        signed("__init__", Some("$self, /"), &arguments, &[], ""),
    );
    for method in &model.methods {
        out.push_str(&native_method(api, model, &core, method));
    }
    out
}

/// True for a method that may work for long: a table, and every answer of a system that solves a linkage or follows a motion. Others answer within a
/// few microseconds.
fn is_long(model: &Model, method: &Function) -> bool {
    let table = method.results.iter().any(|result| matches!(result.content, Content::Table));
    table || ["ride", "suspension"].contains(&model.system.as_str())
}

fn native_method(api: &Api, model: &Model, core: &str, method: &Function) -> String {
    let mut lets = String::new();
    let mut arguments = Vec::new();
    for (place, p) in method.parameters.iter().enumerate() {
        let name = &p.name;
        let take = if p.list { "quantities" } else { "quantity" };
        lets.push_str(&format!("let {name} = call.{take}::<units::{}>({place}, \"{name}\")?;\n", p.kind));
        arguments.push(if p.list { format!("&{name}") } else { name.clone() });
    }
    let give = |output: &Output, value: &str| match &output.content {
        Content::Quantity(_) => format!("call.give({value})?"),
        Content::Choice(_) => format!("call.word({value}.word())"),
        Content::Text => format!("call.word(&{value})"),
        Content::Whole => format!("call.count({value})"),
        Content::Table => format!("call.table({value})?"),
    };
    let result = match (&method.result_type, &method.results[..]) {
        (None, [only]) => {
            let given = give(only, "on");
            given.strip_suffix('?').map_or_else(|| format!("Ok({given})"), str::to_owned)
        }
        (class, _) => {
            let parts: Vec<String> =
                method.results.iter().map(|r| give(r, &format!("on.{}", r.name))).collect();
            let class = class_name(&model.system, class.as_deref().unwrap_or_default());
            format!("call.parts(&{class}, [{}])", parts.join(", "))
        }
    };
    let question = format!("model.{}({})", method.name, arguments.join(", "));
    let ask = if is_long(model, method) { "worked" } else { "answer" };
    let answer = format!("call.{ask}(|| {question})?");
    let names: Vec<String> = method.parameters.iter().map(|p| p.name.clone()).collect();
    let keywords: String = names.iter().map(|name| keyword("", name, false)).collect();
    format!(
        "struct {0};\n\nimpl Method for {0} {{\ntype Model = {core};\nconst NAME: &'static str = \"{1}.{2}.{3}\";\nconst DOC: &'static str = {4:?};\n\
         const KEYWORDS: &'static [Keyword] = &[{keywords}];\nfn call(model: &{core}, call: &Arguments<'_, '_>) -> PyResult<Py<PyAny>> {{\n\
         {lets}let on = {answer};\n{result}\n}}\n}}\n\n",
        method_name(model, method),
        model.system,
        model.name,
        method.name,
        signed(&method.name, Some("$self, /"), &names, &doc_lines(method, false), &example(api, method)),
    )
}
