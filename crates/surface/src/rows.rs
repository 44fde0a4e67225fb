//! Every function by its name, on plain numbers, for the reference rows in Rust.

use crate::{Api, Content, Function, Model, Output, Parameter};
use std::fmt::Write;

/// A list of functions.
pub fn source(api: &Api) -> Result<String, String> {
    let mut out = String::from(
        "use crate::{Entry, Found, Method, Modelled, Parameter, Tabled, quantities};\nuse axlewright::Model;\nuse axlewright::units::*;\n\n/// Every function of the core.\npub const FUNCTIONS: &[Entry] = &[\n",
    );
    for function in &api.functions {
        let names: Vec<String> = function.parameters.iter().map(|p| format!("{:?}", p.name)).collect();
        let ranges: Vec<String> = function.parameters.iter().map(range).collect();
        let results: Vec<String> = result_names(function).iter().map(|name| format!("{name:?}")).collect();
        let arguments: Vec<String> = function
            .parameters
            .iter()
            .enumerate()
            .map(|(i, p)| format!("{}::from_si(x[{i}])", p.kind))
            .collect();
        let values = match &function.result_type {
            None => "vec![on.si()]".to_owned(),
            Some(_) => {
                format!(
                    "vec![{}]",
                    function
                        .results
                        .iter()
                        .map(|r| format!("on.{}.si()", r.name))
                        .collect::<Vec<_>>()
                        .join(", ")
                )
            }
        };
        for result in &function.results {
            if !matches!(result.content, Content::Quantity(_)) {
                return Err(format!(
                    "{} returns {}, which is no quantity: make it a model",
                    function.path(),
                    result.name
                ));
            }
        }
        writeln!(
            out,
            "Entry {{ name: {:?}, parameters: &[{}], ranges: &[{}], results: &[{}], call: |x| axlewright::{}::{}({}).map(|on| {values}) }},",
            function.path(),
            names.join(", "),
            ranges.join(", "),
            results.join(", "),
            function.system,
            function.name,
            arguments.join(", "),
        )
        .map_err(|error| error.to_string())?;
    }
    out.push_str("];\n\n/// Every model of the core.\npub const MODELS: &[Modelled] = &[\n");
    api.models.iter().for_each(|of| out.push_str(&model(of)));
    out.push_str("];\n");
    Ok(out)
}

/// A model and its methods: those that give a table apart.
fn model(model: &Model) -> String {
    let read = format!("axlewright::{}::{}::from_text(document)", model.system, model.name);
    let is_table = |of: &&Function| of.results.iter().any(|result| result.content == Content::Table);
    let plain = |of: &&Function| !is_table(of) && of.parameters.iter().all(|p| !p.list);
    let results = model.methods.iter().flat_map(|of| &of.results);
    let infinite: Vec<String> =
        results.filter(|of| of.meaning.contains("infinite")).map(|of| format!("{:?}", of.name)).collect();
    let methods: String = model.methods.iter().filter(plain).map(|of| method(&read, of)).collect();
    let tables: String = model.methods.iter().filter(is_table).map(|of| table(&read, of)).collect();
    format!(
        "Modelled {{ name: \"{}.{}\", read: |document| {read}.map(drop), methods: &[{methods}], tables: &[{tables}], infinite: &[{}] }},\n",
        model.system,
        model.name,
        infinite.join(", ")
    )
}

fn table(read: &str, method: &Function) -> String {
    let each = |of: &dyn Fn(usize, &Parameter) -> String| {
        method.parameters.iter().enumerate().map(|(i, p)| of(i, p)).collect::<Vec<_>>().join(", ")
    };
    let argument = |i: usize, p: &Parameter| match p.list {
        true => format!("&quantities::<{}>(&x[{i}])", p.kind),
        false => format!("{}::from_si(x[{i}][0])", p.kind),
    };
    format!(
        "Tabled {{ name: {:?}, parameters: &[{}], call: |document, {}| {read}?.{}({}) }},",
        method.name,
        each(&|_, p| format!("({:?}, {})", p.name, p.list)),
        if method.parameters.is_empty() { "_" } else { "x" },
        method.name,
        each(&argument)
    )
}

fn method(read: &str, method: &Function) -> String {
    let names: Vec<String> = method.parameters.iter().map(|p| format!("{:?}", p.name)).collect();
    let arguments: Vec<String> =
        method.parameters.iter().enumerate().map(|(i, p)| format!("{}::from_si(x[{i}])", p.kind)).collect();
    let result = |of: &Output| {
        let (name, on) = match &method.result_type {
            None => ("value", "on".to_owned()),
            Some(_) => (of.name.as_str(), format!("on.{}", of.name)),
        };
        let found = match of.content {
            Content::Choice(_) => format!("Found::Word({on}.word().to_owned())"),
            Content::Text => format!("Found::Word({on})"),
            Content::Whole => format!("Found::Number({on} as f64)"),
            Content::Quantity(_) | Content::Table => format!("Found::Number({on}.si())"),
        };
        format!("({name:?}, {found})")
    };
    let results: Vec<String> = method.results.iter().map(result).collect();
    let x = if arguments.is_empty() { "_" } else { "x" };
    format!(
        "Method {{ name: {:?}, parameters: &[{}], call: |document, {x}| {read}?.{}({}).map(|on| vec![{}]) }},",
        method.name,
        names.join(", "),
        method.name,
        arguments.join(", "),
        results.join(", ")
    )
}

/// Kind and range of a parameter; a missing bound is infinite.
fn range(parameter: &Parameter) -> String {
    let bound =
        |of: Option<f64>, infinite: &str| of.map_or(infinite.to_owned(), |value| format!("{value:?}"));
    format!(
        "Parameter {{ name: {:?}, kind: {}::KIND, lower: {}, lower_open: {}, upper: {}, upper_open: {}, whole: {} }}",
        parameter.name,
        parameter.kind,
        bound(parameter.range.lower, "f64::NEG_INFINITY"),
        parameter.range.lower_open,
        bound(parameter.range.upper, "f64::INFINITY"),
        parameter.range.upper_open,
        parameter.range.whole,
    )
}

/// Names of the results; the only one is called `value`.
fn result_names(function: &Function) -> Vec<&str> {
    match &function.result_type {
        None => vec!["value"],
        Some(_) => function.results.iter().map(|result| result.name.as_str()).collect(),
    }
}
