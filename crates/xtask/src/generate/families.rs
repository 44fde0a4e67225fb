//! Every function behind one signature, for the C tests.

use std::path::Path;
use surface::c::entry;
use surface::{Api, Function};

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
