//! The C header, made by cbindgen of the hand-written sources and the entries.

use std::collections::BTreeSet;
use std::path::Path;
use surface::{Api, read, rust_files};

/// The header. cbindgen reads neither `include!` nor the output of a build script: it gets a copy of the sources in which the module of the
/// entries is a plain file.
pub fn text(api: &Api, root: &Path) -> Result<String, String> {
    let folder = root.join("bindings/c");
    let copy = super::built(root).join("c");
    if copy.exists() {
        std::fs::remove_dir_all(&copy).map_err(|error| format!("{}: {error}", copy.display()))?;
    }
    for path in rust_files(&folder.join("src"))? {
        let name = path.strip_prefix(folder.join("src")).map_err(|error| error.to_string())?;
        super::write(&copy.join(name), &read(&path)?)?;
    }
    super::write(&copy.join("entries.rs"), &surface::c::source(api)?)?;
    refuse_unguarded(&copy)?;
    let config = cbindgen::Config::from_file(folder.join("cbindgen.toml"))?;
    let builder = cbindgen::Builder::new().with_config(config).with_src(copy.join("lib.rs"));
    let bindings = builder.generate().map_err(|error| error.to_string())?;
    let mut text = Vec::new();
    bindings.write(&mut text);
    let text = String::from_utf8(text).map_err(|error| error.to_string())?;
    let include = "#include <stdint.h>\n";
    let version = env!("CARGO_PKG_VERSION");
    let version =
        format!("{include}\n/// Version of this header as text.\n#define AXW_VERSION \"{version}\"\n");
    let text = replace(&text, include, &version)?;
    let text = replace(&packed(&text), "/// @QUANTITIES@\n", &quantities(api))?;
    with_former_names(&text, api)
}

/// The header with a macro for each name that an entry or a type had before.
fn with_former_names(header: &str, api: &Api) -> Result<String, String> {
    let functions: BTreeSet<String> = api
        .functions
        .iter()
        .flat_map(|of| ["", "_n", "_value"].map(|end| format!("{}{end}", surface::c::entry(of))))
        .collect();
    let is_part = |letter: char| letter == '_' || letter.is_ascii_alphanumeric();
    let names: BTreeSet<&str> =
        header.split(|letter: char| !is_part(letter)).filter(|name| name.starts_with("axw_")).collect();
    let mut macros = BTreeSet::new();
    for [system, old, new] in surface::renamed::ITEMS {
        let [old, new] = [old, new].map(|name| format!("axw_{system}_{}", surface::snake(name)));
        for name in &names {
            // Entries of a model begin with its name; so may functions, which have names of their own.
            let Some(rest) = name.strip_prefix(new.as_str()) else { continue };
            let is_own = match functions.contains(&new) {
                true => ["", "_n", "_value"].contains(&rest),
                false => (rest.is_empty() || rest.starts_with('_')) && !functions.contains(*name),
            };
            if is_own {
                macros.insert(format!("#define {old}{rest} {name}\n"));
            }
        }
    }
    let macros: String = macros.into_iter().collect();
    let end = "#endif  /* AXLEWRIGHT_H */";
    replace(
        header,
        end,
        &format!("/* Names of the version before this one, which go with the next one. */\n{macros}\n{end}"),
    )
}

/// The header with as many arguments of an entry on a line as fit.
fn packed(header: &str) -> String {
    const WIDTH: usize = 110;
    let mut out = String::with_capacity(header.len());
    let mut column = 0;
    let mut is_open = false;
    for line in header.lines() {
        let goes_on = is_open;
        is_open = line.ends_with(',');
        let text = if goes_on { line.trim_start() } else { line };
        if goes_on && column + 1 + text.len() <= WIDTH {
            out.push(' ');
            column += 1 + text.len();
        } else {
            let indent = if goes_on { "    " } else { "" };
            out.push_str(if out.is_empty() { "" } else { "\n" });
            out.push_str(indent);
            column = indent.len() + text.len();
        }
        out.push_str(text);
        is_open &= goes_on || line.starts_with(char::is_alphabetic);
    }
    out + "\n"
}

/// Quantities that text can be read as, a line each.
fn quantities(api: &Api) -> String {
    api.kinds.iter().map(|kind| format!("///     {kind}: {}\n", kind.symbols())).collect()
}

/// Replaces a text that occurs once.
fn replace(text: &str, old: &str, new: &str) -> Result<String, String> {
    match text.matches(old).count() {
        1 => Ok(text.replacen(old, new, 1)),
        count => Err(format!("{old:?} is {count} times in the header, not once")),
    }
}

/// Checks that every `extern "C"` function of the C surface is an exported entry of ours, with one call of a guard as its whole body. No panic
/// passes a guard, and no entry is forgotten.
fn refuse_unguarded(folder: &Path) -> Result<(), String> {
    for path in rust_files(folder)? {
        let unguarded = unguarded(&read(&path)?).map_err(|error| format!("{}: {error}", path.display()))?;
        if !unguarded.is_empty() {
            return Err(format!(
                "{}: the body of an entry is one call of a guard, but not that of {}",
                path.display(),
                unguarded.join(", ")
            ));
        }
    }
    Ok(())
}

/// Names of the entries in a source file that a panic could leave.
fn unguarded(source: &str) -> Result<Vec<String>, syn::Error> {
    let mut found = Vec::new();
    collect_unguarded(&syn::parse_file(source)?.items, &mut found);
    Ok(found)
}

fn collect_unguarded(items: &[syn::Item], found: &mut Vec<String>) {
    for item in items {
        match item {
            syn::Item::Mod(module)
                if !module.attrs.iter().any(|attribute| attribute.path().is_ident("cfg")) =>
            {
                collect_unguarded(module.content.as_ref().map_or(&[], |(_, items)| items), found);
            }
            syn::Item::Fn(function) if function.sig.abi.is_some() && !is_guarded(function) => {
                found.push(function.sig.ident.to_string())
            }
            _ => {}
        }
    }
}

fn is_guarded(function: &syn::ItemFn) -> bool {
    const GUARDS: [&str; 4] = ["guard", "guard_call", "guard_value", "guard_or"];
    let [syn::Stmt::Expr(syn::Expr::Call(call), _)] = &function.block.stmts[..] else { return false };
    let syn::Expr::Path(called) = &*call.func else { return false };
    let exported = function.attrs.iter().any(|attribute| attribute.path().is_ident("unsafe"));
    exported
        && function.sig.ident.to_string().starts_with("axw_")
        && GUARDS.iter().any(|guard| called.path.is_ident(guard))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arguments_of_an_entry_share_lines() {
        let long = "a".repeat(90);
        let header = format!(
            "/// One,\n/// two.\nint32_t axw_x(double {long},\n              double b,\n              double c);\n\n#define A 1\n"
        );
        let packed = packed(&header);
        assert_eq!(
            packed,
            format!(
                "/// One,\n/// two.\nint32_t axw_x(double {long},\n    double b, double c);\n\n#define A 1\n"
            )
        );
        assert_eq!(
            super::packed("double b(double a,\n         double b);\n"),
            "double b(double a, double b);\n"
        );
    }

    #[test]
    fn an_entry_without_a_guard_is_found() {
        let entry = |body: &str| {
            unguarded(&format!("#[unsafe(no_mangle)]\npub extern \"C\" fn axw_x(n: i32) -> i32 {{ {body} }}"))
                .unwrap()
        };
        assert_eq!(entry("guard(|| Ok(()))"), [""; 0]);
        assert_eq!(entry("guard_or(0, || n);"), [""; 0]);
        for body in [
            "n",
            "n; guard(|| Ok(()))",
            "other(|| Ok(()))",
            "guard(|| Ok(())) + 1",
            "let s = guard(|| Ok(())); s",
        ] {
            assert_eq!(entry(body), ["axw_x"], "{body}");
        }
        assert_eq!(
            unguarded("pub extern \"C\" fn axw_x() { guard(|| Ok(())) }").unwrap(),
            ["axw_x"],
            "not exported"
        );
        assert_eq!(unguarded("mod inner { extern \"C\" fn axw_x() {} }").unwrap(), ["axw_x"], "nested");
        assert_eq!(unguarded("pub fn inner() { panic!() }").unwrap(), [""; 0], "not an entry");
    }
}
