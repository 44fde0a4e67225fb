//! The features of the core's systems are what its sources import: neither more nor less. They follow from the folders of the systems, as do
//! their modules in `lib.rs`.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use surface::{LAYERS, imports, read, rust_files};

type Names = BTreeSet<String>;

/// Marks around the generated part of a file that is otherwise written by hand.
const BEGIN: &str =
    "Written by `cargo xtask generate`, from the folders of the systems and what they import.";
const END: &str = "Written by hand again.";

/// Features of a manifest, each with the features that it enables.
fn features(manifest: &str) -> BTreeMap<String, Names> {
    let text = manifest.split_once("\n[features]\n").map_or("", |(_, text)| text);
    let lines = text.lines().take_while(|line| !line.starts_with('[')).filter(|line| !line.starts_with('#'));
    lines
        .filter_map(|line| line.split_once(" = ["))
        .map(|(name, list)| {
            (name.to_owned(), list.split('"').skip(1).step_by(2).map(str::to_owned).collect())
        })
        .collect()
}

/// A feature, with all that it enables in the end.
#[cfg(test)]
fn with_all_below(features: &BTreeMap<String, Names>, name: &str) -> Names {
    let below = features.get(name).into_iter().flatten().flat_map(|name| with_all_below(features, name));
    below.chain([name.to_owned()]).collect()
}

/// Code of the examples in the docs of a file.
#[cfg(test)]
fn examples(text: &str) -> Vec<String> {
    let mut blocks: Vec<String> = Vec::new();
    let mut inside = false;
    for line in text.lines().map(str::trim_start) {
        let Some(line) = line.strip_prefix("///").or(line.strip_prefix("//!")) else {
            inside = false;
            continue;
        };
        let line = line.trim_start();
        if line.starts_with("```") {
            inside = !inside;
            if inside {
                blocks.push(String::new());
            }
        } else if let Some(block) = blocks.last_mut().filter(|_| inside) {
            block.push_str(line.strip_prefix("# ").unwrap_or(line));
            block.push('\n');
        }
    }
    blocks
}

/// Every file of a folder and its subfolders, except the sections of the build sheet, which come with all systems.
fn sources(folder: &Path) -> Result<Vec<String>, String> {
    let files = rust_files(folder)?.into_iter().filter(|path| !path.ends_with("sheet.rs"));
    files.map(|path| read(&path)).collect()
}

/// Features that a feature should enable by its code.
fn enabled(files: &[String], own: &str, systems: &Names, packages: &Names) -> Result<Names, String> {
    let mut enables = Names::new();
    for text in files {
        let (mut below, mut roots) = (Names::new(), Names::new());
        let tokens = text.parse().map_err(|error| format!("a source of {own}: {error}"))?;
        imports(tokens, "crate", &mut below, &mut roots);
        enables.extend(below.into_iter().filter(|name| systems.contains(name) && name != own));
        let is_used = |package: &&String| roots.contains(&package.replace('-', "_"));
        enables.extend(packages.iter().filter(is_used).map(|package| format!("dep:{package}")));
        if text.contains("base::integrator") {
            enables.insert("integrator".to_owned());
        }
    }
    Ok(enables)
}

/// The systems that the examples of these files name.
#[cfg(test)]
fn shown(files: &[String], systems: &Names) -> Names {
    let mut shown = Names::new();
    for example in files.iter().flat_map(|text| examples(text)) {
        if let Ok(tokens) = example.parse() {
            imports(tokens, "axlewright", &mut shown, &mut Names::new());
        }
    }
    shown.into_iter().filter(|name| systems.contains(name)).collect()
}

/// Optional packages that systems may use: those of documents and of the sheet come with their own features.
fn packages(manifest: &str) -> Names {
    let features = features(manifest);
    let of_documents: Names =
        ["serde", "sheet"].iter().filter_map(|name| features.get(*name)).flatten().cloned().collect();
    let optional = manifest.lines().filter(|line| line.contains("optional = true"));
    optional
        .filter_map(|line| line.split_once(" = "))
        .map(|(name, _)| name.to_owned())
        .filter(|name| !of_documents.contains(&format!("dep:{name}")))
        .collect()
}

/// The core's manifest and library with the systems that have a folder, lowest layer first: their features and modules.
pub fn files(core: &Path, systems: &[&str]) -> Result<[(&'static str, String); 2], String> {
    let manifest = read(&core.join("Cargo.toml"))?;
    let (names, packages) = (systems.iter().map(|name| (*name).to_owned()).collect(), packages(&manifest));
    let mut written = format!("systems = {systems:?}\n");
    for system in systems {
        let enables = enabled(&sources(&core.join("src").join(system))?, system, &names, &packages)?;
        // Systems first, then packages.
        let (of_packages, mut list): (Vec<&String>, Vec<&String>) =
            enables.iter().partition(|name| name.starts_with("dep:"));
        list.extend(of_packages);
        written.push_str(&format!("{system} = {list:?}\n"));
    }
    let mut modules = String::new();
    for layer in LAYERS {
        let mut layer: Vec<&str> = layer.iter().copied().filter(|name| systems.contains(name)).collect();
        layer.sort_unstable();
        let lines = layer.iter().map(|name| format!("#[cfg(feature = \"{name}\")]\npub mod {name};\n"));
        let lines: String = lines.collect();
        if !lines.is_empty() {
            modules.push_str(&format!("{lines}\n"));
        }
    }
    let library = read(&core.join("src/lib.rs"))?;
    Ok([
        ("Cargo.toml", between(&manifest, "#", &written)?),
        ("src/lib.rs", between(&library, "//", modules.trim_end())?),
    ])
}

/// A text with what stands between its marks replaced.
pub(crate) fn between(text: &str, comment: &str, new: &str) -> Result<String, String> {
    let [begin, end] = [BEGIN, END].map(|mark| format!("{comment} {mark}\n"));
    let parts = text.split_once(&begin).and_then(|(before, rest)| Some((before, rest.split_once(&end)?.1)));
    let (before, after) = parts.ok_or_else(|| format!("there is no {begin:?} with {end:?} after it"))?;
    Ok(format!("{before}{begin}{}\n{end}{after}", new.trim_end()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn core() -> std::path::PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../axlewright")
    }

    #[test]
    fn each_system_with_a_folder_is_a_feature_and_a_default() {
        let manifest = read(&core().join("Cargo.toml")).unwrap();
        let features = features(&manifest);
        assert_eq!(features["default"], Names::from(["systems".to_owned()]));
        let folders = std::fs::read_dir(core().join("src")).unwrap().map(|entry| entry.unwrap().path());
        let folders = folders.filter(|path| path.is_dir()).map(|path| path.file_name().unwrap().to_owned());
        let folders: Names = folders.map(|name| name.into_string().unwrap()).collect();
        let others = ["base", "catalogue", "sheet"].map(str::to_owned);
        let systems = &features["systems"];
        assert_eq!(folders, systems.iter().cloned().chain(others).collect());
        for system in systems {
            let files = sources(&core().join("src").join(system)).unwrap();
            let (shown, there) = (shown(&files, systems), with_all_below(&features, system));
            assert!(
                shown.is_subset(&there),
                "examples of `{system}` name {shown:?}; its feature brings {there:?}"
            );
        }
        let integrator = [read(&core().join("src/base/integrator.rs")).unwrap()];
        let enables = enabled(&integrator, "", systems, &packages(&manifest)).unwrap();
        assert_eq!(features["integrator"], enables, "the feature `integrator`");
    }

    /// The committed part follows from the folders. The text around it stays, and a file without its marks is refused.
    #[test]
    fn features_and_modules_follow_from_the_folders() {
        let systems: Vec<String> =
            features(&read(&core().join("Cargo.toml")).unwrap())["systems"].iter().cloned().collect();
        let by_layer =
            LAYERS.iter().copied().flatten().filter(|name| systems.iter().any(|system| system == *name));
        let by_layer: Vec<&str> = by_layer.copied().collect();
        for (path, text) in files(&core(), &by_layer).unwrap() {
            assert_eq!(text, read(&core().join(path)).unwrap(), "{path}: run `cargo xtask generate`");
        }
        let fewer = files(&core(), &by_layer[1..]).unwrap();
        let gone = [format!("\n{} = [", by_layer[0]), format!("\npub mod {};", by_layer[0])];
        assert!(fewer.iter().zip(&gone).all(|((_, text), gone)| !text.contains(gone)), "{fewer:?}");
        let marked = format!("a\n# {BEGIN}\nBEFORE\n# {END}\nb\n");
        assert_eq!(between(&marked, "#", "new").unwrap(), marked.replace("BEFORE", "new"));
        assert!(between(&marked.replace(END, ""), "#", "new").is_err());
    }

    #[test]
    fn imports_are_seen_wherever_they_stand() {
        let names = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect::<Names>();
        let (systems, packages) =
            (names(&["air", "fluid", "spring", "mass"]), names(&["a-package", "other"]));
        let code = "use crate::{\n    Result,\n    air::{deep, fluid},\n};\n// crate::mass::x\nfn f() { valid! { x: crate::spring::rate() } }\n\
                    use a_package::mass;\n/// ```\n/// use axlewright::{fluid, units::*};\n/// # axlewright::mass::x();\n/// ```\nfn g() { x.other::<u8>(); }";
        let files = [code.to_owned()];
        let (enables, shown) =
            (enabled(&files, "own", &systems, &packages).unwrap(), shown(&files, &systems));
        assert_eq!(enables, names(&["air", "spring", "dep:a-package"]));
        assert_eq!(shown, names(&["fluid", "mass"]));
        let list = features(
            "\n[features]\n# air = []\na = [\"b\"]\nb = [\"dep:c\"]\nd = []\n\n[dependencies]\ne = [\"f\"]\n",
        );
        assert_eq!(list.len(), 3);
        assert_eq!(with_all_below(&list, "a"), names(&["a", "b", "dep:c"]));
    }
}
