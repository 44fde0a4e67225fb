//! Every function by its name, on plain numbers: what the reference rows are run through in Rust.

use crate::{Api, Content, Function, Parameter};
use std::fmt::Write;

/// A list of functions.
pub fn source(api: &Api) -> Result<String, String> {
    let mut out = String::from(
        "use crate::{Entry, Parameter};\nuse axlewright::units::*;\n\n/// Every function of the core.\npub const FUNCTIONS: &[Entry] = &[\n",
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
    out.push_str("];\n");
    Ok(out)
}

/// Kind and range of a parameter; a missing bound is infinite.
fn range(parameter: &Parameter) -> String {
    let bound =
        |of: Option<f64>, infinite: &str| of.map_or(infinite.to_owned(), |value| format!("{value:?}"));
    format!(
        "Parameter {{ name: {:?}, kind: {}::KIND, lower: {}, upper: {}, whole: {} }}",
        parameter.name,
        parameter.kind,
        bound(parameter.range.lower, "f64::NEG_INFINITY"),
        bound(parameter.range.upper, "f64::INFINITY"),
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
