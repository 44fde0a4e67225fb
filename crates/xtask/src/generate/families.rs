//! Every function behind one signature and every model with its pointers, for the C tests.

use std::collections::BTreeMap;
use std::path::Path;
use surface::brief::ascii;
use surface::c::entry;
use surface::{Api, Content, Function, Model};

/// A C header, with the arguments of the first reference row that has an answer.
pub fn header(api: &Api, root: &Path) -> Result<String, String> {
    let mut out =
        String::from("/* Every function behind one signature. Made by `cargo xtask generate`. */\n\n");
    let mut list = String::new();
    for function in &api.functions {
        let rows = root.join("tests/rows").join(format!("{}.json", function.system));
        let Some(good) = arguments_of_a_row(&rows, function)? else { continue };
        let (name, family) = (entry(function), format!("{}_{}", function.system, function.name));
        let each =
            |of: &dyn Fn(usize) -> String, count: usize| (0..count).map(of).collect::<Vec<_>>().join(", ");
        let (count, outs) = (function.parameters.len(), function.results.len());
        let x = each(&|i| format!("x[{i}]"), count);
        let none = ", NULL".repeat(outs - 1);
        let every = each(&|i| format!("&out[{i}]"), outs);
        let first = if function.result_type.is_some() {
            format!("_{}", function.results[0].name)
        } else {
            String::new()
        };
        out.push_str(&format!(
            "static int32_t scalar_{family}(const double *x, double *first)\n{{\n    return {name}({x}, first{none});\n}}\n\
             static int32_t all_{family}(const double *x, double *out)\n{{\n    return {name}({x}, {every});\n}}\n\
             static double value_{family}(const double *x)\n{{\n    return {name}{first}_value({x});\n}}\n\
             static int32_t batch_{family}(size_t n, const double *const *x, double *first, int32_t *reason)\n{{\n    return {name}_n(n, {x}, first{none}, reason);\n}}\n\n"
        ));
        let good: Vec<String> = good.iter().map(|value| format!("{value:?}")).collect();
        list.push_str(&format!(
            "    {{\"{family}\", {count}, {outs}, {{{}}}, scalar_{family}, all_{family}, value_{family}, batch_{family}}},\n",
            good.join(", ")
        ));
    }
    Ok(format!("{out}static const family families[] = {{\n{list}}};\n"))
}

fn arguments_of_a_row(rows: &Path, function: &Function) -> Result<Option<Vec<f64>>, String> {
    let Ok(text) = std::fs::read_to_string(rows) else { return Ok(None) };
    let rows: Vec<serde_json::Value> =
        serde_json::from_str(&text).map_err(|error| format!("{}: {error}", rows.display()))?;
    let path = function.path();
    Ok(rows
        .iter()
        .filter(|row| row["function"] == path.as_str() && row["expected"]["error"].is_null())
        .find_map(|row| {
            function.parameters.iter().map(|p| row["inputs"][&p.name].as_f64()).collect::<Option<Vec<f64>>>()
        }))
}

/// A C header: every entry of every model with pointers that it must refuse, for the C tests. The model is made of the shortest document of its
/// reference rows; one without rows is tried without a handle alone.
pub fn models(api: &Api, root: &Path) -> Result<String, String> {
    let mut out =
        String::from("/* Every model with pointers that are refused. Made by `cargo xtask generate`. */\n\n");
    let mut calls = String::new();
    for model in &api.models {
        let name = format!("axw_{}_{}", model.system, surface::snake(&model.name));
        let document = document(&root.join("tests/rows").join(format!("{}.json", model.system)), model)?;
        let without: String =
            model.methods.iter().map(|of| Pointers::of(&name, of).without_handle()).collect();
        let with: String = model.methods.iter().map(|of| Pointers::of(&name, of).with_handle()).collect();
        let with = if document.is_some() { with } else { String::new() };
        let made = document.as_ref().map_or("AXW_DOCUMENT", |_| "AXW_OK");
        let text = document.unwrap_or_else(|| "{\"no such key\": 1}".into());
        out.push_str(&format!(
            "static void pointers_{name}(void)\n{{\n    static const char text[] = {text:?};\n    static const char *const path[] = {{\"x\"}};\n\
             \x20   {name} *model = NULL;\n    axw_table *table = NULL;\n    const double one[] = {{1.0}};\n    size_t needed = 77;\n\
             \x20   REFUSED({name}_new(NULL, &model), AXW_NULL, \"text is NULL\");\n\
             \x20   REFUSED({name}_new(text, NULL), AXW_NULL, \"out is NULL\");\n\
             \x20   REFUSED({name}_new_si(NULL, NULL, NULL, 1, &model), AXW_NULL, \"paths is NULL\");\n\
             \x20   REFUSED({name}_new_si(path, NULL, NULL, 1, &model), AXW_NULL, \"values is NULL\");\n\
             \x20   REFUSED({name}_new_si(path, one, NULL, SIZE_MAX, &model), AXW_LENGTH, \"paths has \");\n\
             \x20   REFUSED({name}_new_si(path, one, NULL, 1, NULL), AXW_NULL, \"out is NULL\");\n\
             \x20   REFUSED({name}_json(NULL, NULL, 0, &needed), AXW_NULL, \"model is NULL\");\n\
             \x20   CHECK(model == NULL && needed == 77);\n    {name}_free(NULL);\n{without}    STATUS({name}_new(text, &model), {made});\n\
             \x20   if (model != NULL) {{\n{with}    }}\n    CHECK(table == NULL && one[0] == 1.0);\n    {name}_free(model);\n}}\n\n"
        ));
        calls.push_str(&format!("    pointers_{name}();\n"));
    }
    Ok(format!("{out}static void pointers_of_models(void)\n{{\n{calls}}}\n"))
}

/// Calls of one method with each pointer that it must refuse.
struct Pointers<'a> {
    entry: String,
    method: &'a Function,
    is_wide: bool,
}

impl Pointers<'_> {
    fn of<'a>(model: &str, method: &'a Function) -> Pointers<'a> {
        let entry = format!("{model}_{}", method.name);
        Pointers { entry, method, is_wide: surface::is_wide(method) }
    }

    /// The arguments for the results; a table goes to `table`.
    fn outputs(&self, table: &str) -> Vec<String> {
        if self.is_wide {
            return vec!["&result".to_owned()];
        }
        let one = |content: &Content| match content {
            Content::Text => "NULL, 0, NULL".to_owned(),
            Content::Table => table.to_owned(),
            _ => "NULL".to_owned(),
        };
        self.method.results.iter().map(|result| one(&result.content)).collect()
    }

    fn call(&self, model: &str, list: impl Fn(&str) -> &'static str, outputs: &[String]) -> String {
        let inputs = self.method.parameters.iter().map(|p| if p.list { list(&p.name) } else { "1.0" });
        let all: Vec<&str> =
            [model].into_iter().chain(inputs).chain(outputs.iter().map(String::as_str)).collect();
        format!("{}({})", self.entry, all.join(", "))
    }

    /// A block of lines, with a struct of results if the method fills one.
    fn block(&self, lines: &[String]) -> String {
        let result = match self.is_wide {
            true => format!("        {}_result result;\n        result.size = sizeof(size_t);\n", self.entry),
            false => String::new(),
        };
        format!("    {{\n{result}{}    }}\n", lines.concat())
    }

    fn without_handle(&self) -> String {
        let call = self.call("NULL", |_| "one, 1", &self.outputs("&table"));
        self.block(&[refused(&call, "AXW_NULL", "model is NULL")])
    }

    fn with_handle(&self) -> String {
        let given = self.outputs("&table");
        let mut lines = Vec::new();
        if self.is_wide {
            let none = self.call("model", |_| "one, 1", &["NULL".to_owned()]);
            lines.push(refused(&none, "AXW_NULL", "result is NULL"));
            lines.push(refused(&self.call("model", |_| "one, 1", &given), "AXW_BUFFER", "result->size = "));
        }
        let lists = || self.method.parameters.iter().filter(|p| p.list);
        for of in lists().map(|p| p.name.as_str()).filter(|_| !self.is_wide) {
            for (list, status, words) in
                [("NULL, 1", "AXW_NULL", "is NULL"), ("one, SIZE_MAX", "AXW_LENGTH", "has ")]
            {
                let call = self.call("model", |name| if name == of { list } else { "one, 1" }, &given);
                lines.push(refused(&call, status, &format!("{of} {words}")));
            }
        }
        // Lists without values give a table without rows, wherever no other argument may be refused.
        let is_table = matches!(&self.method.results[..], [only] if only.content == Content::Table);
        if is_table && lists().count() == self.method.parameters.len() && lists().next().is_some() {
            let call = |table| self.call("model", |_| "NULL, 0", &self.outputs(table));
            lines.push(refused(&call("NULL"), "AXW_NULL", "result is NULL"));
            lines.push(format!(
                "        STATUS({}, AXW_OK);\n        CHECK(axw_table_rows(table) == 0);\n        axw_table_free(table);\n        table = NULL;\n",
                call("&table")
            ));
        }
        lines.extend(self.value());
        if lines.is_empty() { String::new() } else { self.block(&lines) }
    }

    /// The entry that returns a method's one result gives the same bits, or NaN where it is refused.
    fn value(&self) -> Option<String> {
        let [only] = &self.method.results[..] else { return None };
        let Content::Quantity(_) = only.content else { return None };
        let ending =
            if self.method.result_type.is_some() { format!("_{}", only.name) } else { String::new() };
        let inputs: String =
            self.method.parameters.iter().map(|p| if p.list { ", one, 1" } else { ", 1.0" }).collect();
        let entry = &self.entry;
        Some(format!(
            "        double wanted = UNTOUCHED;\n        int32_t status = {entry}(model{inputs}, &wanted);\n\
             \x20       double value = {entry}{ending}_value(model{inputs});\n        if (status == AXW_OK) {{\n            SAME(value, wanted);\n        }} else {{\n            CHECK(value != value);\n        }}\n\
             \x20       value = {entry}{ending}_value(NULL{inputs});\n        CHECK(value != value);\n        check_message(\"model is NULL\", \"{entry}{ending}_value\", __FILE__, __LINE__);\n"
        ))
    }
}

fn refused(call: &str, status: &str, words: &str) -> String {
    format!("        REFUSED({call}, {status}, \"{words}\");\n")
}

/// A document of the reference rows for each model, to be shown: of those without long numbers the longest of up to 400 characters,
/// or the shortest.
pub fn documents(api: &Api, root: &Path) -> Result<BTreeMap<String, String>, String> {
    const LONG: usize = 400;
    let without_row: serde_json::Value =
        serde_json::from_str(&surface::read(&root.join("tests/documents.json"))?)
            .map_err(|error| format!("tests/documents.json: {error}"))?;
    let mut found = BTreeMap::new();
    for model in &api.models {
        // The first method answers the document that is shown, if any row has it.
        let rows = root.join("tests/rows").join(format!("{}.json", model.system));
        let first = model.methods.first().map(|method| method.name.as_str());
        let mut all = answered(&rows, model, first)?;
        if all.is_empty() {
            all = answered(&rows, model, None)?;
        }
        let without_row = without_row.get(format!("{}.{}", model.system, model.name));
        all.extend(without_row.map(serde_json::Value::to_string));
        let is_rough = |text: &String| text.split(|c: char| !c.is_ascii_digit()).any(|run| run.len() > 6);
        let shown =
            all.iter().filter(|text| !is_rough(text) && text.len() <= LONG).max_by_key(|text| text.len());
        let shown = shown.or_else(|| all.iter().min_by_key(|text| (is_rough(text), text.len())));
        if let Some(text) = shown {
            found.insert(format!("{}.{}", model.system, model.name), ascii(&spaced(text)));
        }
    }
    Ok(found)
}

/// JSON with a space behind each comma and colon.
fn spaced(json: &str) -> String {
    let (mut out, mut is_text) = (String::new(), false);
    for letter in json.chars() {
        is_text ^= letter == '"';
        out.push(letter);
        if !is_text && [',', ':'].contains(&letter) {
            out.push(' ');
        }
    }
    out
}

/// A C header: the example document of each model, as the C headers show it. The first method that takes nothing answers it.
pub fn examples(api: &Api, documents: &[(String, String)]) -> String {
    let mut out = String::from("/* Example documents of the headers. Made by `cargo xtask generate`. */\n\n");
    for (name, text) in documents {
        let is_own =
            |model: &&Model| format!("axw_{}_{}", model.system, surface::snake(&model.name)) == *name;
        let model = api.models.iter().find(is_own);
        let method = model.and_then(|model| model.methods.first()).filter(|of| of.parameters.is_empty());
        let call = method.map_or(String::new(), |method| {
            let of = Pointers::of(name, method);
            let lines = of.block(&[format!(
                "        STATUS({}, AXW_OK);\n",
                of.call("model", |_| "NULL, 0", &of.outputs("&table"))
            )]);
            lines.replace("result.size = sizeof(size_t)", "result.size = sizeof result")
        });
        out.push_str(&format!(
            "static void example_{name}(void)\n{{\n    {name} *model = NULL;\n    axw_table *table = NULL;\n    char again[8192];\n\
             \x20   STATUS({name}_new({text:?}, &model), AXW_OK);\n    CHECK(model != NULL);\n\
             \x20   STATUS({name}_json(model, again, sizeof again, NULL), AXW_OK);\n{call}    axw_table_free(table);\n    {name}_free(model);\n}}\n\n"
        ));
    }
    let calls: String = documents.iter().map(|(name, _)| format!("    example_{name}();\n")).collect();
    format!("{out}static void examples_of_models(void)\n{{\n{calls}}}\n")
}

/// The shortest document among the rows of a model that it answers.
fn document(rows: &Path, model: &Model) -> Result<Option<String>, String> {
    Ok(answered(rows, model, None)?.into_iter().min_by_key(String::len))
}

/// Documents of the rows of a model that it answers, by any method or by one.
fn answered(rows: &Path, model: &Model, method: Option<&str>) -> Result<Vec<String>, String> {
    let Ok(text) = std::fs::read_to_string(rows) else { return Ok(Vec::new()) };
    let rows: Vec<serde_json::Value> =
        serde_json::from_str(&text).map_err(|error| format!("{}: {error}", rows.display()))?;
    let name = format!("{}.{}", model.system, model.name);
    let answered =
        rows.iter().filter(|row| row["model"] == name.as_str() && row["expected"]["error"].is_null());
    let answered = answered.filter(|row| method.is_none_or(|name| row["method"] == name));
    Ok(answered.map(|row| row["inputs"].to_string()).collect())
}
