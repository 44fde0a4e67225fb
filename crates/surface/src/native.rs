//! The native half of the Python module: kernels of every function, and the models, as Rust source.

use crate::words::doc_lines;
use crate::{Api, Content, Function, Output};

/// `SpringWheelRate`
fn kernel_name(function: &Function) -> String {
    let upper = |word: &str| word[..1].to_uppercase() + &word[1..];
    format!("{}{}", upper(&function.system), function.name.split('_').map(upper).collect::<String>())
}

/// A module of kernels and models; beside it stands what runs them, in `bindings/python/src`.
pub fn source(api: &Api) -> Result<String, String> {
    let mut out = String::from(
        "use crate::call::Kernels;\nuse crate::ufunc::Kernel;\nuse axlewright::Result;\nuse axlewright::units::{self, Kind, Quantity};\nuse pyo3::PyResult;\n\n",
    );
    let mut register =
        String::from("/// Adds everything.\npub fn register(kernels: &Kernels<'_>) -> PyResult<()> {\n");
    for function in &api.functions {
        let (inputs, outputs) = (function.parameters.len(), function.results.len());
        let name = kernel_name(function);
        let kinds = |pairs: Vec<(&str, &str)>| -> String {
            pairs.iter().map(|(name, kind)| format!("({name:?}, units::{kind}::KIND),")).collect()
        };
        let parameters =
            kinds(function.parameters.iter().map(|p| (p.name.as_str(), p.kind.name.as_str())).collect());
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
        let arguments: Vec<String> = (0..inputs).map(|i| format!("Quantity::from_si(x[{i}])")).collect();
        out.push_str(&format!(
            "struct {name};\n\nimpl Kernel<{inputs}, {outputs}> for {name} {{\nconst NAME: &'static str = {:?};\nconst DOC: &'static str = {:?};\n\
             const PARAMETERS: [(&'static str, &'static Kind); {inputs}] = [{parameters}];\n\
             const RESULTS: [(&'static str, &'static Kind); {outputs}] = [{}];\n#[inline(always)]\n\
             fn call(x: [f64; {inputs}]) -> Result<[f64; {outputs}]> {{ let on = axlewright::{}::{}({})?; Ok([{}]) }}\n}}\n\n",
            function.path(),
            doc_lines(function, true).join("\n"),
            kinds(results),
            function.system,
            function.name,
            arguments.join(", "),
            values.join(", "),
        ));
        register.push_str(&format!("kernels.add::<{name}, {inputs}, {outputs}>()?;\n"));
    }
    for model in &api.models {
        let path = format!("{}.{}", model.system, model.name);
        let core = format!("axlewright::{}::{}", model.system, model.name);
        register.push_str(&format!("kernels.model::<{core}>(\"{path}\", \"{path}.to_json\")?;\n"));
        for method in &model.methods {
            register.push_str(&native_method(&core, &path, method));
        }
    }
    out.push_str(&register);
    out.push_str("Ok(())\n}\n");
    Ok(out)
}

fn native_method(core: &str, path: &str, method: &Function) -> String {
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
        _ => {
            let parts: Vec<String> =
                method.results.iter().map(|r| give(r, &format!("on.{}", r.name))).collect();
            format!("call.parts([{}])", parts.join(", "))
        }
    };
    format!(
        "kernels.method::<{core}>(\"{path}.{}\", |model, call| {{ {lets} let on = call.answer(model.{}({}))?; {result} }})?;\n",
        method.name,
        method.name,
        arguments.join(", ")
    )
}
