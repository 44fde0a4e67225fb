//! The C headers: one for each system, the core's, that of the build sheet, and one above them all. cbindgen makes the declarations, of the
//! hand-written sources and the entries; here they are put in order.

use super::families::documents;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use surface::brief::ascii;
use surface::{Api, Content, Function, Model, is_wide, read, rust_files, snake};

/// The header above all, which programs include.
pub const UMBRELLA: &str = "bindings/c/include/axlewright.h";

/// Folder of the others.
const FOLDER: &str = "bindings/c/include/axlewright";

/// The headers: path and text, the one above all first.
pub type Headers = Vec<(String, String)>;

/// All declarations of some headers in one text.
pub fn joined(headers: &Headers) -> String {
    headers.iter().map(|(_, text)| text.as_str()).collect()
}

/// The headers as they stand in the folder.
pub fn committed(root: &Path) -> Result<Headers, String> {
    let mut found = vec![(UMBRELLA.to_owned(), read(&root.join(UMBRELLA))?)];
    let folder = std::fs::read_dir(root.join(FOLDER)).map_err(|error| format!("{FOLDER}: {error}"))?;
    for entry in folder {
        let path = entry.map_err(|error| error.to_string())?.path();
        found.push((path.display().to_string(), read(&path)?));
    }
    Ok(found)
}

/// The headers of the sources. cbindgen reads neither `include!` nor the output of a build script: it gets a copy of the sources in which the
/// module of the entries is a plain file.
pub fn make(api: &Api, root: &Path) -> Result<Headers, String> {
    let folder = root.join("bindings/c");
    let copy = super::built(root).join("c");
    if copy.exists() {
        std::fs::remove_dir_all(&copy).map_err(|error| format!("{}: {error}", copy.display()))?;
    }
    let mut of_sheet = String::new();
    for path in rust_files(&folder.join("src"))? {
        let name = path.strip_prefix(folder.join("src")).map_err(|error| error.to_string())?;
        let text = read(&path)?;
        if name.starts_with("sheet") {
            of_sheet.push_str(&text);
        }
        super::write(&copy.join(name), &text)?;
    }
    super::write(&copy.join("entries.rs"), &surface::c::source(api)?)?;
    refuse_unguarded(&copy)?;
    let config = cbindgen::Config::from_file(folder.join("cbindgen.toml"))?;
    let builder = cbindgen::Builder::new().with_config(config).with_src(copy.join("lib.rs"));
    let bindings = builder.generate().map_err(|error| error.to_string())?;
    let mut text = Vec::new();
    bindings.write(&mut text);
    let text = String::from_utf8(text).map_err(|error| error.to_string())?;
    let text = broken(&ascii(&replace(&packed(&text), "/// @QUANTITIES@\n", &quantities(api))?));
    let documents = documents(api, root)?;
    let headers = Parts::of(&text, api, &of_sheet)?.headers(&text, &documents)?;
    for (path, text) in &headers {
        if let Some(letter) = text.chars().find(|letter| !letter.is_ascii()) {
            return Err(format!("{path} holds {letter:?}: give it an ASCII form in `surface::brief::ascii`"));
        }
    }
    Ok(headers)
}

/// Declarations of one text, each with its comment, by name and in their order.
struct Parts<'a> {
    api: &'a Api,
    declared: Vec<(String, String)>,
    of_sheet: &'a str,
}

impl<'a> Parts<'a> {
    fn of(text: &str, api: &'a Api, of_sheet: &'a str) -> Result<Self, String> {
        let mut declared = Vec::new();
        for text in declarations(text) {
            let name = declared_name(&text).ok_or_else(|| format!("cbindgen declares {text:?}"))?;
            declared.push((name.to_owned(), text));
        }
        Ok(Parts { api, declared, of_sheet })
    }

    fn take(&mut self, name: &str) -> Option<String> {
        let place = self.declared.iter().position(|(of, _)| of == name)?;
        Some(self.declared.remove(place).1)
    }

    fn taken(&mut self, name: &str) -> Result<String, String> {
        self.take(name).ok_or_else(|| format!("cbindgen declares no {name}"))
    }

    /// Everything for which the test holds, in its order, each after an empty line.
    fn all(&mut self, holds: impl Fn(&str) -> bool) -> String {
        let (found, rest) = std::mem::take(&mut self.declared).into_iter().partition(|(name, _)| holds(name));
        self.declared = rest;
        let found: Vec<(String, String)> = found;
        spaced(found.into_iter().map(|(_, text)| text))
    }

    fn headers(mut self, text: &str, documents: &BTreeMap<String, String>) -> Result<Headers, String> {
        let api = self.api;
        let choices = choices(api);
        let former = former(&self.declared, api);
        let (mut systems, mut index) = (Vec::new(), String::new());
        for system in &api.systems {
            let name = system.name.as_str();
            let functions: Vec<&Function> = api.functions.iter().filter(|of| of.system == name).collect();
            let models: Vec<&Model> = api.models.iter().filter(|of| of.system == name).collect();
            if functions.is_empty() && models.is_empty() {
                continue;
            }
            let mut body = String::new();
            for (choice, _) in choices.iter().filter(|(_, of)| of.as_deref() == Some(name)) {
                let start = format!("AXW_{}_", choice.to_uppercase());
                let word = format!("axw_{choice}_word");
                body.push_str(&self.all(|of| of.starts_with(&start) || of == word));
            }
            for function in &functions {
                body.push_str(&self.function(function)?);
            }
            for model in &models {
                let document = documents.get(&format!("{name}.{}", model.name));
                let document = document.ok_or_else(|| {
                    format!(
                        "{}.{} has no reference row whose document the header could show",
                        name, model.name
                    )
                })?;
                body.push_str(&self.model(model, document)?);
            }
            let old: String =
                former.iter().filter(|(of, _)| of == name).map(|(_, line)| line.as_str()).collect();
            let old = match old.is_empty() {
                true => String::new(),
                false => format!(
                    "\n/* Names of the version before this one, which go with the next one. */\n{old}"
                ),
            };
            let whole_title = ascii(&system.title());
            let list = |heading: &str, names: Vec<String>| match names.is_empty() {
                true => String::new(),
                false => format!(" *\n * {heading}\n{}", wrapped(&names.join(", "))),
            };
            let names = functions.iter().map(|of| surface::c::entry(of)).collect();
            let of_models = models.iter().map(|of| format!("axw_{name}_{}", snake(&of.name))).collect();
            let lists = list("Functions", names) + &list("Models", of_models);
            let counts = match models.len() {
                0 => format!("{} functions", functions.len()),
                1 => format!("{} functions and 1 model", functions.len()),
                more => format!("{} functions and {more} models", functions.len()),
            };
            let title = whole_title.split_once(": ").map_or(whole_title.as_str(), |(_, rest)| rest);
            let line = format!("{counts}: {title}");
            let (first, second) = broken_in_two(&line, 88);
            index.push_str(&format!(" *   {:<25} {first}\n", format!("axlewright/{name}.h")));
            if !second.is_empty() {
                index.push_str(&format!(" *   {:<25}   {second}\n", ""));
            }
            systems.push(header(name, &whole_title, &lists, &body, &old));
        }
        let of_sheet = self.of_sheet;
        let is_of_sheet = |name: &str| {
            ["fn", "struct", "type", "const"].iter().any(|word| {
                let place = of_sheet
                    .find(&format!("pub {word} {name}"))
                    .or_else(|| of_sheet.find(&format!("extern \"C\" {word} {name}")));
                place.is_some()
            })
        };
        let sheet = self.all(is_of_sheet);
        let core = self.all(|_| true);
        let version = format!(
            "/// Version of this header as text.\n#define AXW_VERSION \"{}\"\n",
            env!("CARGO_PKG_VERSION")
        );
        let core = header(
            "core",
            "Statuses, version, units, tables, verdicts, and the catalogue: what every other header needs",
            "",
            &format!("\n{version}{core}"),
            "",
        );
        let sheet =
            header("sheet", "The build sheet: its assessment, what-if and choice of parts", "", &sheet, "");
        let (conventions, _) = text.split_once(" */\n").ok_or("cbindgen.toml has no header")?;
        let names = ["core".to_owned()]
            .into_iter()
            .chain(systems.iter().map(|(path, _)| stem(path)))
            .chain(["sheet".to_owned()]);
        let includes: String = names.map(|name| format!("#include \"axlewright/{name}.h\"\n")).collect();
        let umbrella = format!(
            "{}\n *\n * {} */\n\n#ifndef AXLEWRIGHT_H\n#define AXLEWRIGHT_H\n\n{includes}\n#endif  /* AXLEWRIGHT_H */\n",
            replace(conventions, " * @INDEX@", index.trim_end())?,
            super::MARK
        );
        let mut headers = vec![(UMBRELLA.to_owned(), umbrella), core];
        headers.extend(systems);
        headers.push(sheet);
        Ok(headers)
    }

    /// A function: on numbers, on arrays, and its values alone.
    fn function(&mut self, function: &Function) -> Result<String, String> {
        let name = surface::c::entry(function);
        let mut text = format!("\n{}", self.taken(&name)?);
        text.push_str(&self.taken(&format!("{name}_n"))?);
        text.push_str(&self.values(&name, function));
        Ok(text)
    }

    /// The entries of a function that return a number.
    fn values(&mut self, name: &str, function: &Function) -> String {
        let endings = function.results.iter().map(|of| format!("_{}", of.name)).chain([String::new()]);
        let names: Vec<String> = endings.map(|ending| format!("{name}{ending}_value")).collect();
        names.iter().filter_map(|name| self.take(name)).collect()
    }

    /// A model, its document and its methods, each with its struct of results.
    fn model(&mut self, model: &Model, document: &str) -> Result<String, String> {
        let name = format!("axw_{}_{}", model.system, snake(&model.name));
        let handle = self.taken(&name)?;
        let declared = format!("typedef struct {name} {name};\n");
        let shown: String =
            document_lines(document).iter().map(|line| format!("{DOCUMENT_LINE}{line}\n")).collect();
        let mut text =
            format!("\n{}", replace(&handle, &declared, &format!("{DOCUMENT}\n{shown}{declared}"))?);
        text.push('\n');
        for end in ["new", "new_si", "json", "free"] {
            text.push_str(&self.taken(&format!("{name}_{end}"))?);
        }
        for method in &model.methods {
            let entry = format!("{name}_{}", method.name);
            if is_wide(method) {
                text.push_str(&format!("\n{}", self.taken(&format!("{entry}_result"))?));
            }
            text.push_str(&format!("\n{}", self.taken(&entry)?));
            text.push_str(&self.values(&entry, method));
        }
        Ok(text)
    }
}

/// Declarations, each after an empty line; constants in a row stand together.
fn spaced(declared: impl Iterator<Item = String>) -> String {
    let is_constant = |text: &str| text.lines().last().is_some_and(|line| line.starts_with("#define"));
    let (mut out, mut before) = (String::new(), false);
    for text in declared {
        let now = is_constant(&text);
        if !(now && before) {
            out.push('\n');
        }
        out.push_str(&text);
        before = now;
    }
    out
}

/// Long lines of comments, broken at a space; the line below a long one goes on with it.
fn broken(text: &str) -> String {
    const WIDTH: usize = 110;
    const LONG: usize = 101;
    let mut lines: Vec<String> = Vec::new();
    let mut goes_on = false;
    for line in text.lines() {
        let is_prose = line.starts_with("/// ") && !line.starts_with("///  ");
        match lines.last_mut() {
            Some(last) if goes_on && is_prose => last.push_str(&line[3..]),
            _ => lines.push(line.to_owned()),
        }
        goes_on = is_prose && line.len() > LONG;
    }
    let mut out = String::with_capacity(text.len());
    for line in &lines {
        let mut rest = line.as_str();
        while let Some(place) = rest.get(..WIDTH).and_then(|start| start.rfind(' ')) {
            if !line.starts_with("/// ") || rest.len() <= WIDTH || place < 5 {
                break;
            }
            out.push_str(&rest[..place]);
            out.push('\n');
            rest = &rest[place + 1..];
            out.push_str("/// ");
        }
        out.push_str(rest);
        out.push('\n');
    }
    out
}

/// One header below the one above all: path and text.
fn header(name: &str, title: &str, lists: &str, body: &str, after: &str) -> (String, String) {
    let guard = format!("AXLEWRIGHT_{}_H", name.to_uppercase());
    let includes = match name {
        "core" => "#include <stdbool.h>\n#include <stddef.h>\n#include <stdint.h>",
        _ => "#include \"core.h\"",
    };
    let text = format!(
        "/* {title}.\n * The rules of all entries stand in axlewright.h.\n * {}\n{lists} */\n\n#ifndef {guard}\n#define {guard}\n\n{includes}\n\n\
         #ifdef __cplusplus\nextern \"C\" {{\n#endif  // __cplusplus\n{body}\n#ifdef __cplusplus\n}}  // extern \"C\"\n#endif  // __cplusplus\n{after}\n#endif  /* {guard} */\n",
        super::MARK,
    );
    (format!("{FOLDER}/{name}.h"), text)
}

fn stem(path: &str) -> String {
    let name = path.rsplit('/').next().unwrap_or_default();
    name.trim_end_matches(".h").to_owned()
}

/// A text on two lines, the first one filled.
fn broken_in_two(text: &str, width: usize) -> (&str, &str) {
    let place = text.get(..width).filter(|_| text.len() > width).and_then(|start| start.rfind(' '));
    place.map_or((text, ""), |place| (&text[..place], &text[place + 1..]))
}

/// A paragraph inside a block comment.
fn wrapped(text: &str) -> String {
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.len() + word.len() < 100 => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(format!(" {word}")),
        }
    }
    lines.iter().map(|line| format!(" *  {line}\n")).collect()
}

/// A document as lines of a comment, broken between its keys.
fn document_lines(document: &str) -> Vec<String> {
    const WIDTH: usize = 88;
    let mut lines = vec![String::new()];
    for piece in document.split_inclusive(", ") {
        match lines.last_mut() {
            Some(line) if line.is_empty() || line.len() + piece.trim_end().len() <= WIDTH => {
                line.push_str(piece)
            }
            _ => lines.push(piece.to_owned()),
        }
    }
    lines.iter().map(|line| line.trim_end().to_owned()).collect()
}

/// Line above the example document of a model, and indent of its lines.
const DOCUMENT: &str = "/// Example document:";
const DOCUMENT_LINE: &str = "///     ";

/// The example documents of the headers, by the name of the model.
pub fn examples(headers: &Headers) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (_, text) in headers {
        for part in text.split(&format!("{DOCUMENT}\n")).skip(1) {
            let lines: Vec<&str> = part.lines().map_while(|line| line.strip_prefix(DOCUMENT_LINE)).collect();
            let declared = part.lines().nth(lines.len()).and_then(declared_name).unwrap_or_default();
            found.push((declared.to_owned(), lines.join(" ")));
        }
    }
    found
}

/// Declarations of a header as cbindgen writes it, each with the comment above it.
fn declarations(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut open = String::new();
    let mut depth = 0;
    let body = text.split("#include <stdint.h>\n").nth(1).unwrap_or(text);
    let mut cpp = false;
    for line in body.lines() {
        if let Some(directive) = line.strip_prefix('#').filter(|of| !of.starts_with("define")) {
            cpp = directive.starts_with("ifdef __cplusplus");
            continue;
        }
        if cpp || line.is_empty() && open.is_empty() {
            continue;
        }
        open.push_str(line);
        open.push('\n');
        let is_comment = line.trim_start().starts_with("//");
        if is_comment {
            continue;
        }
        depth += line.matches('{').count();
        depth -= line.matches('}').count().min(depth);
        if line.starts_with("#define") || depth == 0 && line.ends_with(';') {
            found.push(std::mem::take(&mut open));
        }
    }
    found
}

/// Name of what a text declares.
fn declared_name(text: &str) -> Option<&str> {
    let code: Vec<&str> = text.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
    let is_name = |letter: char| letter == '_' || letter.is_ascii_alphanumeric();
    let first = code.first()?;
    if let Some(rest) = first.strip_prefix("#define ") {
        return rest.split_whitespace().next();
    }
    // A type has its name last, a function and the type of one before the first bracket that closes or opens it.
    let before = match first.strip_prefix("typedef ") {
        Some(rest) if rest.contains("(*") => rest.split_once("(*")?.1.split_once(')')?.0,
        Some(_) => code.last()?.trim_end_matches(';'),
        None => first.split_once('(')?.0,
    };
    before.rsplit(|letter| !is_name(letter)).next()
}

/// Words of C for each choice that has any, with its system if it belongs to one.
fn choices(api: &Api) -> Vec<(String, Option<String>)> {
    let systems = |name: &str| -> BTreeSet<&str> {
        let of_methods =
            api.models.iter().flat_map(|of| of.methods.iter().map(move |method| (&of.system, method)));
        let of_functions = api.functions.iter().map(|of| (&of.system, of));
        let gives =
            |of: &Function| of.results.iter().any(|of| of.content == Content::Choice(name.to_owned()));
        of_methods
            .chain(of_functions)
            .filter(|(_, of)| gives(of))
            .map(|(system, _)| system.as_str())
            .collect()
    };
    let of = |name: &str| {
        let systems = systems(name);
        let one = systems.first().filter(|_| systems.len() == 1 && name != "Verdict");
        (snake(name), one.map(|system| (*system).to_owned()))
    };
    api.choices.iter().map(|choice| of(&choice.name)).collect()
}

/// A macro for each name that an entry or a type had before, with its system.
fn former(declared: &[(String, String)], api: &Api) -> BTreeSet<(String, String)> {
    let functions: BTreeSet<String> = api
        .functions
        .iter()
        .flat_map(|of| ["", "_n", "_value"].map(|end| format!("{}{end}", surface::c::entry(of))))
        .collect();
    let mut macros = BTreeSet::new();
    for [system, old, new] in surface::renamed::ITEMS {
        let [old, new] = [old, new].map(|name| format!("axw_{system}_{}", surface::snake(name)));
        for (name, _) in declared {
            // Entries of a model begin with its name; so may functions, which have names of their own.
            let Some(rest) = name.strip_prefix(new.as_str()) else { continue };
            let is_own = match functions.contains(&new) {
                true => ["", "_n", "_value"].contains(&rest),
                false => (rest.is_empty() || rest.starts_with('_')) && !functions.contains(name),
            };
            if is_own {
                macros.insert(((*system).to_owned(), format!("#define {old}{rest} {name}\n")));
            }
        }
    }
    macros
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
