//! Deprecated items of the core for the names that functions, models and structs of results had before.

use surface::{Api, Content, renamed};

/// One module a system; the `mod.rs` of that system makes it public.
pub fn source(api: &Api) -> Result<String, String> {
    let mut out = format!("//! Names that items had before this version. {}\n", super::MARK);
    for system in &api.systems {
        let mut items = String::new();
        for (old, new) in renamed::items(&system.name) {
            let path = format!("crate::{}::{new}", system.name);
            items.push_str(&format!(
                "/// Former name of [`{new}`]({path}).\n#[deprecated(since = \"{}\", note = \"it is called `{new}` now\")]\n",
                env!("CARGO_PKG_VERSION")
            ));
            let function = api.functions.iter().find(|of| of.system == system.name && of.name == new);
            let Some(function) = function else {
                items.push_str(&format!("pub type {old} = {path};\n\n"));
                continue;
            };
            let kind = |content: &Content| match content {
                Content::Quantity(kind) => Ok(format!("crate::units::{kind}")),
                _ => Err(format!("{path} returns what is no quantity")),
            };
            let result = match (&function.result_type, &function.results[..]) {
                (Some(name), _) => format!("crate::{}::{name}", system.name),
                (None, [only]) => kind(&only.content)?,
                (None, _) => return Err(format!("{path} has no result")),
            };
            let parameters: String = function
                .parameters
                .iter()
                .map(|p| format!("{}: crate::units::{},", p.name, p.kind))
                .collect();
            let names: Vec<&str> = function.parameters.iter().map(|p| p.name.as_str()).collect();
            items.push_str(&format!(
                "#[inline]\npub fn {old}({parameters}) -> crate::Result<{result}> {{ {path}({}) }}\n\n",
                names.join(", ")
            ));
        }
        if !items.is_empty() {
            out.push_str(&format!(
                "\n/// Of `{0}`.\n#[cfg(feature = \"{0}\")]\npub mod {0} {{\n{items}}}\n",
                system.name
            ));
        }
    }
    Ok(out)
}
