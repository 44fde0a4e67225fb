//! The C entries that the attack of `bindings/c/tests/attack` calls: every one that takes text, from the header, and every method of every model.

use super::signatures;
use surface::{Api, Content, Function, Model, snake};

/// A C header with both lists.
pub fn header(api: &Api, header: &str) -> Result<String, String> {
    let texts = texts(header)?;
    let models: Vec<String> = api.models.iter().map(model).collect();
    let list: String = api
        .models
        .iter()
        .map(|of| {
            let name = entry(of);
            let count = of.methods.len();
            format!(
                "    {{\"{}.{}\", new_{name}, free_{name}, json_{name}, {count}, methods_{name}}},\n",
                of.system, of.name
            )
        })
        .collect();
    Ok(format!(
        "/* What the attack calls. Made by `cargo xtask generate`. */\n\n{texts}\n{}\nstatic const attacked_model attacked_models[] = {{\n{list}}};\n",
        models.concat()
    ))
}

fn entry(model: &Model) -> String {
    format!("axw_{}_{}", model.system, snake(&model.name))
}

/// Every entry that takes text, with its texts in one list and everything else as `attack.c` holds it.
fn texts(header: &str) -> Result<String, String> {
    let (mut held, mut calls, mut list) = (Vec::new(), String::new(), String::new());
    for (name, returned, arguments) in signatures::functions(header)? {
        let is_text = |of: &&String| of.starts_with("const char *") && !of.starts_with("const char **");
        let names: Vec<&str> = arguments.iter().filter(is_text).map(|of| own(of)).collect();
        if names.is_empty() {
            continue;
        }
        if returned != "int32_t" {
            return Err(format!(
                "{name} takes text and returns {returned}: the attack does not know how to call it"
            ));
        }
        let (mut given, mut before, mut after) = (Vec::new(), String::new(), String::new());
        let mut text = 0;
        for argument in &arguments {
            let of = argument.trim_end_matches(|c: char| c.is_ascii_alphanumeric() || c == '_').trim_end();
            let handle = of.trim_start_matches("const ").split(' ').next().unwrap_or_default();
            given.push(match of {
                "const char *" => {
                    text += 1;
                    format!("t[{}]", text - 1)
                }
                "const char *const *" => {
                    text += 1;
                    format!("&t[{}]", text - 1)
                }
                "size_t" if own(argument) == "size" => "0".into(),
                "size_t" => "1".into(),
                "double" => "1.0".into(),
                "int32_t" | "bool" => "0".into(),
                "const double *" => "&one".into(),
                "double *" => "&number".into(),
                "size_t *" => "&place".into(),
                "char *" | "axw_progress" | "void *" => "NULL".into(),
                of if of.ends_with("**") => {
                    before.push_str(&format!("    {handle} *made = NULL;\n"));
                    after.push_str(&format!("    {handle}_free(made);\n"));
                    "&made".into()
                }
                of if handle.starts_with("axw_") && of.ends_with('*') => {
                    if !held.contains(&handle.to_owned()) {
                        held.push(handle.to_owned());
                    }
                    format!("held_{handle}")
                }
                _ => return Err(format!("{name}: the attack does not know what to give for {argument}")),
            });
        }
        let used = |word: &str| given.iter().any(|of| of == word);
        for (word, line) in [
            ("&one", "static const double one = 1.0;"),
            ("&number", "double number = 0.0;"),
            ("&place", "size_t place = 0;"),
        ] {
            if used(word) {
                before.push_str(&format!("    {line}\n"));
            }
        }
        calls.push_str(&format!(
            "static int32_t text_{name}(const char *const *t)\n{{\n{before}    int32_t status = {name}({});\n{after}    return status;\n}}\n",
            given.join(", ")
        ));
        let quoted: Vec<String> = names.iter().map(|of| format!("{of:?}")).collect();
        list.push_str(&format!(
            "    {{\"{name}\", {}, {{{}}}, text_{name}}},\n",
            names.len(),
            quoted.join(", ")
        ));
    }
    let held: String = held.iter().map(|of| format!("static {of} *held_{of};\n")).collect();
    Ok(format!("{held}\n{calls}\nstatic const attacked_text attacked_texts[] = {{\n{list}}};\n"))
}

/// The name at the end of a declared argument.
fn own(argument: &str) -> &str {
    argument.rsplit([' ', '*']).next().unwrap_or_default()
}

/// A model with its methods, each with its arguments in lists; its numbers go to `out`, where a word or a text leaves its place as it is.
fn model(of: &Model) -> String {
    let name = entry(of);
    let mut list = String::new();
    let methods: String = of
        .methods
        .iter()
        .map(|method| {
            let is_table = method.results.iter().any(|result| result.content == Content::Table);
            let lists: Vec<&str> = method.parameters.iter().map(|p| if p.list { "1" } else { "0" }).collect();
            let lists = if lists.is_empty() { "0".to_owned() } else { lists.join(", ") };
            let (own, results) = (&method.name, if is_table { 0 } else { method.results.len() });
            list.push_str(&format!(
                "    {{\"{own}\", {}, {{{lists}}}, {results}, call_{name}_{own}}},\n",
                method.parameters.len()
            ));
            call(&name, method)
        })
        .collect();
    format!(
        "static int32_t new_{name}(const char *text, void **out)\n{{\n    {name} *made = NULL;\n    int32_t status = {name}_new(text, &made);\n    *out = made;\n    return status;\n}}\n\
         static void free_{name}(void *model)\n{{\n    {name}_free(({name} *)model);\n}}\n\
         static int32_t json_{name}(const void *model, char *buffer, size_t size, size_t *needed)\n{{\n    return {name}_json((const {name} *)model, buffer, size, needed);\n}}\n\
         {methods}static const attacked_method methods_{name}[] = {{\n{list}}};\n\n"
    )
}

fn call(model: &str, method: &Function) -> String {
    let mut given = vec![format!("(const {model} *)model")];
    for (place, parameter) in method.parameters.iter().enumerate() {
        given.push(if parameter.list { format!("x[{place}], n[{place}]") } else { format!("x[{place}][0]") });
    }
    let own = format!("{model}_{}", method.name);
    let (mut before, mut after) = (String::new(), String::new());
    let numbers = |of: &dyn Fn(usize, &str, &str) -> Option<String>| -> String {
        let each = method.results.iter().enumerate().filter_map(|(place, result)| {
            let line = match result.content {
                Content::Quantity(_) => of(place, &result.name, ""),
                Content::Whole => of(place, &result.name, "(double)"),
                _ => None,
            };
            line.map(|line| format!("    {line}\n"))
        });
        each.collect()
    };
    if surface::is_wide(method) {
        before = format!(
            "    {own}_result result;\n    memset(&result, WAS, sizeof result);\n    result.size = sizeof result;\n"
        );
        given.push("&result".into());
        after = numbers(&|place, name, cast| Some(format!("out[{place}] = {cast}result.{name};")));
        after = format!(
            "    if (status != AXW_OK) {{\n        return is_as_it_was(&result, sizeof result) ? status : TOUCHED;\n    }}\n{after}"
        );
    } else {
        let mut words = 0;
        for (place, result) in method.results.iter().enumerate() {
            given.push(match result.content {
                Content::Quantity(_) => format!("&out[{place}]"),
                Content::Whole => {
                    before.push_str(&format!("    int64_t whole_{place} = WHOLE_WAS;\n"));
                    after.push_str(&format!(
                        "    if (status == AXW_OK) {{\n        out[{place}] = (double)whole_{place};\n    }} else if (whole_{place} != WHOLE_WAS) {{\n        return TOUCHED;\n    }}\n"
                    ));
                    format!("&whole_{place}")
                }
                Content::Choice(_) => {
                    before.push_str(&format!("    int32_t choice_{place} = CHOICE_WAS;\n"));
                    after.push_str(&format!(
                        "    if ((status == AXW_OK) == (choice_{place} == CHOICE_WAS)) {{\n        return TOUCHED;\n    }}\n"
                    ));
                    format!("&choice_{place}")
                }
                Content::Text => {
                    words += 1;
                    format!("held_text[{0}], sizeof held_text[{0}], &held_size[{0}]", words - 1)
                }
                Content::Table => "table".into(),
            });
        }
    }
    let unused: String =
        ["x", "n", "out", "table"].iter().map(|name| format!("    (void){name};\n")).collect();
    format!(
        "static int32_t call_{own}(const void *model, const double *const *x, const size_t *n, double *out, axw_table **table)\n{{\n{before}{unused}\
         \x20   int32_t status = {own}({});\n{after}    return status;\n}}\n",
        given.join(", ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_entry_gets_its_texts_and_something_for_everything_else() {
        let made = texts(
            "typedef struct axw_x axw_x;\nint32_t axw_x_set(axw_x *x, const char *path, const char *const *values, size_t count, double *si);\n\
             int32_t axw_x_new(const char *text, axw_x **x);\nint32_t axw_x_json(const axw_x *x, char *buffer, size_t size, size_t *needed);\n",
        )
        .unwrap();
        assert!(made.contains("int32_t status = axw_x_set(held_axw_x, t[0], &t[1], 1, &number);"), "{made}");
        assert!(made.contains("    axw_x_free(made);\n"), "{made}");
        assert!(made.contains("{\"axw_x_set\", 2, {\"path\", \"values\"}, text_axw_x_set},"), "{made}");
        assert!(!made.contains("axw_x_json"), "an output buffer is no text that it takes: {made}");
        assert!(texts("int32_t axw_y(const char *text, float of);").unwrap_err().contains("float of"));
    }
}
