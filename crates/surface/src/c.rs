//! The C entries of every function and model, as Rust source.

use crate::brief::{Scope, comment};
use crate::{Api, Content, Function, Model, Output, Parameter, is_wide, snake};

/// A module of entries; its guards and helpers are in `bindings/c/src`.
pub fn source(api: &Api) -> Result<String, String> {
    let mut out = String::from(
        "use crate::caller::{copy, document, fill, fits, free, give, handle, list, put, room, within_memory, words};\n\
         use crate::guard::{guard, guard_call, guard_or, guard_value};\n\
         use crate::kept::{Texts, word_of};\n\
         use crate::status::Failure;\n\
         use crate::table::axw_table;\n\
         use axlewright::units::*;\nuse axlewright::{Model, Verdict};\nuse std::ffi::c_char;\n\n",
    );
    out.push_str(&version());
    for choice in &api.choices {
        // Verdicts are what the graders of `bindings/c/src/verdict.rs` give; no model has any.
        if choice.name == "Verdict" || used_in_results(api, &choice.name) {
            for (place, (_, word)) in choice.words.iter().enumerate() {
                let name = format!("AXW_{}_{}", snake(&choice.name).to_uppercase(), word.to_uppercase());
                out.push_str(&format!(
                    "/// {}: {}.\npub const {name}: i32 = {place};\n",
                    choice.name,
                    word.replace('_', " ")
                ));
            }
            let places = choice.words.iter().enumerate();
            let arms: String = places
                .map(|(place, (variant, _))| format!("{}::{variant} => {place},", choice.name))
                .collect();
            out.push_str(&format!(
                "pub(crate) fn {0}_number(of: {1}) -> i32 {{ match of {{ {arms} }} }}\n\n",
                snake(&choice.name),
                choice.name
            ));
            let words: String =
                choice.words.iter().map(|(_, word)| format!("c\"{}\",", word.replace('_', " "))).collect();
            out.push_str(&format!(
                "/// Word of a {0}, which lives as long as the program; NULL for a number that is no `AXW_{1}_...`.\n#[unsafe(no_mangle)]\n\
                 pub extern \"C\" fn axw_{0}_word({0}: i32) -> *const c_char {{ guard_or(std::ptr::null(), || word_of(\"{0}\", {0}, &[{words}])) }}\n\n",
                snake(&choice.name),
                snake(&choice.name).to_uppercase(),
            ));
        }
    }
    for function in &api.functions {
        out.push_str(&scalar(api, function)?);
        out.push_str(&batch(function)?);
        out.push_str(&values(function)?);
    }
    for model in &api.models {
        out.push_str(&model_entries(api, model)?);
    }
    Ok(out)
}

fn version() -> String {
    let parts: Vec<&str> = env!("CARGO_PKG_VERSION").split('.').collect();
    let [major, minor, patch] = parts[..] else { return String::new() };
    format!(
        "/// Version of this header: major.\npub const AXW_VERSION_MAJOR: u32 = {major};\n/// Version of this header: minor.\npub const AXW_VERSION_MINOR: u32 = {minor};\n\
         /// Version of this header: patch.\npub const AXW_VERSION_PATCH: u32 = {patch};\n\
         /// Version of this header as a number: major * 1000000 + minor * 1000 + patch.\npub const AXW_VERSION_NUMBER: u32 = AXW_VERSION_MAJOR * 1_000_000 + AXW_VERSION_MINOR * 1000 + AXW_VERSION_PATCH;\n\n"
    )
}

fn used_in_results(api: &Api, name: &str) -> bool {
    let methods = api.models.iter().flat_map(|model| &model.methods);
    api.functions
        .iter()
        .chain(methods)
        .flat_map(|f| &f.results)
        .any(|result| result.content == Content::Choice(name.to_owned()))
}

/// `axw_spring_wheel_rate`
pub fn entry(function: &Function) -> String {
    format!("axw_{}_{}", function.system, function.name)
}

fn out_name(function: &Function, output: &Output) -> String {
    if function.result_type.is_some() { output.name.clone() } else { "result".into() }
}

/// The core's call on plain numbers.
fn call(function: &Function, value: impl Fn(&Parameter) -> String) -> String {
    let arguments: Vec<String> =
        function.parameters.iter().map(|p| format!("{}::from_si({})", p.kind, value(p))).collect();
    format!("axlewright::{}::{}({})", function.system, function.name, arguments.join(", "))
}

fn value_of(function: &Function, output: &Output, on: &str) -> String {
    if function.result_type.is_some() { format!("{on}.{}.si()", output.name) } else { format!("{on}.si()") }
}

fn scalar(api: &Api, function: &Function) -> Result<String, String> {
    let inputs: String = function.parameters.iter().map(|p| format!("{}: f64, ", p.name)).collect();
    let outputs: String =
        function.results.iter().map(|r| format!("{}: *mut f64, ", out_name(function, r))).collect();
    let puts: String = function
        .results
        .iter()
        .map(|r| format!("put({}, {});", out_name(function, r), value_of(function, r, "on")))
        .collect();
    Ok(format!(
        "{}#[unsafe(no_mangle)]\npub unsafe extern \"C\" fn {}({inputs}{outputs}) -> i32 {{ guard_call(move || {}, |on| unsafe {{ {puts} }}) }}\n\n",
        comment(&Scope::of(api, &function.system, None, Some(function)).function(function)),
        entry(function),
        call(function, |p| p.name.clone()),
    ))
}

fn batch(function: &Function) -> Result<String, String> {
    let name = entry(function);
    let inputs: String = function.parameters.iter().map(|p| format!("{}: *const f64, ", p.name)).collect();
    let outputs: String =
        function.results.iter().map(|r| format!("{}: *mut f64, ", out_name(function, r))).collect();
    let checks: String = function
        .parameters
        .iter()
        .map(|p| format!("if n > 0 && {0}.is_null() {{ return Err(Failure::Null(\"{0}\")); }}\n", p.name))
        .collect();
    let write = |value: &dyn Fn(&Output) -> String| -> String {
        function
            .results
            .iter()
            .map(|r| {
                format!("if !{0}.is_null() {{ {0}.add(i).write({1}); }}\n", out_name(function, r), value(r))
            })
            .collect()
    };
    let good = write(&|r: &Output| value_of(function, r, "on"));
    let bad = write(&|_: &Output| "f64::NAN".to_owned());
    Ok(format!(
        "#[unsafe(no_mangle)]\npub unsafe extern \"C\" fn {name}_n(n: usize, {inputs}{outputs}reason: *mut i32) -> i32 {{ guard(|| {{\n\
         {checks}within_memory::<f64>(\"n\", n)?;\nlet mut refused: Option<(usize, usize, axlewright::Error)> = None;\n\
         for i in 0..n {{ unsafe {{ let status = match {} {{\n\
         Ok(on) => {{ {good} 0 }}\n\
         Err(error) => {{ {bad} let number = error.number(); refused = match refused {{ None => Some((1, i, error)), Some((count, first, kept)) => Some((count + 1, first, kept)) }}; number }}\n\
         }}; if !reason.is_null() {{ reason.add(i).write(status); }} }} }}\n\
         match refused {{ None => Ok(()), Some((refused, first, error)) => Err(Failure::Rows {{ refused, first, error }}) }}\n}}) }}\n\n",
        call(function, |p| format!("*{}.add(i)", p.name)),
    ))
}

fn values(function: &Function) -> Result<String, String> {
    let inputs: String = function.parameters.iter().map(|p| format!("{}: f64, ", p.name)).collect();
    let mut out = String::new();
    for result in &function.results {
        let Content::Quantity(_) = &result.content else { continue };
        out.push_str(&format!(
            "#[unsafe(no_mangle)]\npub extern \"C\" fn {name}{ending}_value({inputs}) -> f64 {{ guard_value(|| {call}.map(|on| {value})) }}\n\n",
            name = entry(function),
            ending = value_ending(function, result),
            call = call(function, |p| p.name.clone()),
            value = value_of(function, result, "on"),
        ));
    }
    Ok(out)
}

/// Part between the name of an entry and `_value`.
fn value_ending(function: &Function, result: &Output) -> String {
    if function.result_type.is_some() { format!("_{}", result.name) } else { String::new() }
}

fn model_entries(api: &Api, model: &Model) -> Result<String, String> {
    let name = format!("axw_{}_{}", model.system, snake(&model.name));
    let core = format!("axlewright::{}::{}", model.system, model.name);
    let keeps_texts = model
        .methods
        .iter()
        .any(|method| is_wide(method) && method.results.iter().any(|result| result.content == Content::Text));
    let (texts, no_texts) = if keeps_texts { (", Texts", ", Texts::default()") } else { ("", "") };
    let mut out = format!(
        "{}pub struct {name}({core}{texts});\nconst _: fn() = || {{ fn shared<T: Send + Sync>() {{}} shared::<{name}>() }};\n\n\
         /// `_new` reads JSON or TOML text, `_new_si` named values in coherent SI; both check the model. `{name}_free`\n/// frees it, NULL included, and `_json` writes it as JSON text.\n#[unsafe(no_mangle)]\n\
         pub unsafe extern \"C\" fn {name}_new(text: *const c_char, out: *mut *mut {name}) -> i32 {{ guard(|| unsafe {{\n\
         give(\"out\", out, || Ok(Box::new({name}({core}::from_text(words(\"text\", text)?)?{no_texts}))))\n}}) }}\n\n\
         #[unsafe(no_mangle)]\n\
         pub unsafe extern \"C\" fn {name}_new_si(paths: *const *const c_char, values: *const f64, texts: *const *const c_char, count: usize, out: *mut *mut {name}) -> i32 {{ guard(|| unsafe {{\n\
         give(\"out\", out, || Ok(Box::new({name}({core}::from_document(&document(paths, values, texts, count)?)?{no_texts}))))\n}}) }}\n\n\
         #[unsafe(no_mangle)]\npub unsafe extern \"C\" fn {name}_free(handle: *mut {name}) {{ guard_or((), || unsafe {{ free(handle) }}) }}\n\n\
         #[unsafe(no_mangle)]\n\
         pub unsafe extern \"C\" fn {name}_json(model: *const {name}, buffer: *mut c_char, size: usize, needed: *mut usize) -> i32 {{ guard(|| {{\n\
         let text = unsafe {{ handle(\"model\", model) }}?.0.to_json()?;\nfits(\"buffer\", &text, buffer, size)?;\n\
         unsafe {{ copy(&text, buffer, size); put(needed, text.len() + 1); }}\nOk(())\n}}) }}\n\n",
        comment(&Scope::of(api, &model.system, Some(model), None).model(model)),
    );
    for method in &model.methods {
        let scope = Scope::of(api, &model.system, Some(model), Some(method));
        out.push_str(&method_entry(&scope, &name, method)?);
    }
    Ok(out)
}

fn method_entry(scope: &Scope, model: &str, method: &Function) -> Result<String, String> {
    let entry = format!("{model}_{}", method.name);
    let mut inputs = String::new();
    let mut lets = String::new();
    let mut arguments = Vec::new();
    for Parameter { name, kind, list, .. } in &method.parameters {
        if *list {
            inputs.push_str(&format!("{name}: *const f64, {name}_count: usize, "));
            lets.push_str(&format!(
                "let {name}: &[{kind}] = unsafe {{ list(\"{name}\", {name}.cast(), {name}_count) }}?;\n"
            ));
            arguments.push(name.clone());
        } else {
            inputs.push_str(&format!("{name}: f64, "));
            arguments.push(format!("{kind}::from_si({name})"));
        }
    }
    let Outputs { before, declared, ready, give } =
        if is_wide(method) { struct_output(scope, &entry, method)? } else { pointer_outputs(method)? };
    let core = format!("model.0.{}({})", method.name, arguments.join(", "));
    let value = match &method.results[..] {
        [only] if matches!(only.content, Content::Quantity(_)) => format!(
            "#[unsafe(no_mangle)]\npub unsafe extern \"C\" fn {entry}{}_value(model: *const {model}, {inputs}) -> f64 {{ guard_value(|| {{\n\
             let model = unsafe {{ handle(\"model\", model) }}?;\n{lets}let on = {core}?;\nOk::<f64, Failure>({})\n}}) }}\n\n",
            value_ending(method, only),
            value_of(method, only, "on"),
        ),
        _ => String::new(),
    };
    Ok(format!(
        "{before}{}#[unsafe(no_mangle)]\npub unsafe extern \"C\" fn {entry}(model: *const {model}, {inputs}{declared}) -> i32 {{ guard(|| {{\n\
         let model = unsafe {{ handle(\"model\", model) }}?;\n{ready}{lets}let on = {core}?;\n{give}\nOk(())\n}}) }}\n\n{value}",
        comment(&scope.function(method)),
    ))
}

/// Form of a method's results.
struct Outputs {
    /// Text before the entry.
    before: String,
    /// Parameters of the entry.
    declared: String,
    /// Statements before the call that makes `on`, and those after it.
    ready: String,
    give: String,
}

/// One pointer a result; a text has its buffer.
fn pointer_outputs(method: &Function) -> Result<Outputs, String> {
    let (mut declared, mut fit, mut puts) = (String::new(), String::new(), String::new());
    for output in &method.results {
        let name = out_name(method, output);
        let value = if method.result_type.is_some() { format!("on.{}", output.name) } else { "on".into() };
        match &output.content {
            Content::Quantity(_) => {
                declared.push_str(&format!("{name}: *mut f64, "));
                puts.push_str(&format!("put({name}, {value}.si());"));
            }
            Content::Whole => {
                declared.push_str(&format!("{name}: *mut i64, "));
                puts.push_str(&format!("put({name}, {value});"));
            }
            Content::Choice(choice) => {
                declared.push_str(&format!("{name}: *mut i32, "));
                puts.push_str(&format!("put({name}, {}_number({value}));", snake(choice)));
            }
            Content::Text => {
                declared.push_str(&format!(
                    "{name}: *mut c_char, {name}_size: usize, {name}_needed: *mut usize, "
                ));
                fit.push_str(&format!("fits(\"{name}\", &{value}, {name}, {name}_size)?;"));
                puts.push_str(&format!(
                    "copy(&{value}, {name}, {name}_size); put({name}_needed, {value}.len() + 1);"
                ));
            }
            Content::Table => {
                declared.push_str(&format!("{name}: *mut *mut axw_table, "));
                fit.push_str(&format!("if {name}.is_null() {{ return Err(Failure::Null(\"{name}\")); }}\n"));
                puts.push_str(&format!("put({name}, Box::into_raw(axw_table::new({value})));"));
            }
        }
    }
    Ok(Outputs {
        before: String::new(),
        declared,
        ready: String::new(),
        give: format!("{fit}\nunsafe {{ {puts} }}"),
    })
}

/// One struct of all results, filled up to the size that the caller gives.
fn struct_output(scope: &Scope, entry: &str, method: &Function) -> Result<Outputs, String> {
    let name = format!("{entry}_result");
    let (mut fields, mut values) = (String::new(), String::new());
    for output in &method.results {
        let Output { name: field, content, .. } = output;
        let (of, value) = match content {
            Content::Quantity(_) => ("f64", format!("on.{field}.si()")),
            Content::Whole => ("i64", format!("on.{field}")),
            Content::Choice(choice) => ("i32", format!("{}_number(on.{field})", snake(choice))),
            Content::Text => ("*const c_char", format!("model.1.keep(&on.{field})")),
            Content::Table => {
                return Err(format!(
                    "{entry} returns the table {field} among numbers: make it a method of its own"
                ));
            }
        };
        let doc = comment(&[scope.field(output)]);
        fields.push_str(&format!("{doc}pub {field}: {of},\n"));
        values.push_str(&format!("{field}: {value},"));
    }
    Ok(Outputs {
        before: format!(
            "/// Results of `{entry}`.\n#[repr(C)]\n#[derive(Clone, Copy)]\npub struct {name} {{\n\
             /// Bytes of this struct as the caller has it: `sizeof`.\npub size: usize,\n{fields}}}\n\n"
        ),
        declared: format!("result: *mut {name}, "),
        ready: "let size = unsafe { room(\"result\", result) }?;\n".into(),
        give: format!("let filled = {name} {{ size, {values} }};\nunsafe {{ fill(result, &filled, size) }};"),
    })
}
