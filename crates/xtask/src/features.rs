//! The features of the core's systems are what its sources import: neither more nor less.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use surface::imports;

type Names = BTreeSet<String>;

/// The features of a manifest, each with what it enables.
fn features(manifest: &str) -> BTreeMap<String, Names> {
    let text = manifest.split_once("\n[features]\n").unwrap().1;
    let lines = text.lines().take_while(|line| !line.starts_with('[')).filter(|line| !line.starts_with('#'));
    lines
        .filter_map(|line| line.split_once(" = ["))
        .map(|(name, list)| {
            (name.to_owned(), list.split('"').skip(1).step_by(2).map(str::to_owned).collect())
        })
        .collect()
}

/// A feature, and all that it enables in the end.
fn with_all_below(features: &BTreeMap<String, Names>, name: &str) -> Names {
    let below = features.get(name).into_iter().flatten().flat_map(|name| with_all_below(features, name));
    below.chain([name.to_owned()]).collect()
}

/// The code of the examples in the docs of a file.
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

/// Every file of a folder and of those below it, but for the sections of the build sheet, which come with all systems.
fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if entry.is_dir() {
            found.extend(sources(&entry));
        } else if !entry.ends_with("sheet.rs") {
            found.push(entry);
        }
    }
    found
}

/// What a feature should enable by its code, and the systems that its examples name.
fn wanted(files: &[String], own: &str, systems: &Names, packages: &Names) -> (Names, Names) {
    let (mut enables, mut shown) = (Names::new(), Names::new());
    for text in files {
        let (mut below, mut roots) = (Names::new(), Names::new());
        imports(text.parse().unwrap(), "crate", &mut below, &mut roots);
        enables.extend(below.into_iter().filter(|name| systems.contains(name) && name != own));
        let is_used = |package: &&String| roots.contains(&package.replace('-', "_"));
        enables.extend(packages.iter().filter(is_used).map(|package| format!("dep:{package}")));
        if text.contains("base::integrator") {
            enables.insert("integrator".to_owned());
        }
        for example in examples(text) {
            if let Ok(tokens) = example.parse() {
                imports(tokens, "axlewright", &mut shown, &mut Names::new());
            }
        }
    }
    (enables, shown.into_iter().filter(|name| systems.contains(name)).collect())
}

fn read(paths: &[PathBuf]) -> Vec<String> {
    paths.iter().map(|path| std::fs::read_to_string(path).unwrap()).collect()
}

#[test]
fn each_system_enables_what_its_sources_import() {
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../axlewright");
    let features = features(&std::fs::read_to_string(core.join("Cargo.toml")).unwrap());
    let library = std::fs::read_to_string(core.join("src/lib.rs")).unwrap();
    let systems = &features["systems"];
    assert_eq!(features["default"], Names::from(["systems".to_owned()]));
    let folders = std::fs::read_dir(core.join("src")).unwrap().map(|entry| entry.unwrap().path());
    let folders = folders.filter(|path| path.is_dir()).map(|path| path.file_name().unwrap().to_owned());
    let folders: Names = folders.map(|name| name.into_string().unwrap()).collect();
    let others = ["base", "catalogue", "sheet"].map(str::to_owned);
    assert_eq!(
        folders,
        systems.iter().cloned().chain(others).collect(),
        "folders, and the feature `systems`"
    );
    // Packages that systems use; those of documents and of the sheet come with their own features.
    let of_documents = ["serde", "sheet"].map(|name| &features[name]);
    let packages =
        features.values().flatten().filter(|name| of_documents.iter().all(|of| !of.contains(*name)));
    let packages: Names = packages.filter_map(|name| name.strip_prefix("dep:").map(str::to_owned)).collect();
    for system in systems {
        let files = read(&sources(&core.join("src").join(system)));
        let (enables, shown) = wanted(&files, system, systems, &packages);
        assert_eq!(features[system], enables, "the feature `{system}`, and what src/{system} imports");
        let there = with_all_below(&features, system);
        assert!(
            shown.is_subset(&there),
            "examples of `{system}` name {shown:?}; its feature brings {there:?}"
        );
        let module = format!("#[cfg(feature = \"{system}\")]\npub mod {system};\n");
        assert!(library.contains(&module), "lib.rs lacks {module:?}");
    }
    let (enables, _) = wanted(&read(&[core.join("src/base/integrator.rs")]), "", systems, &packages);
    assert_eq!(features["integrator"], enables, "the feature `integrator`");
}

#[test]
fn imports_are_seen_wherever_they_stand() {
    let names = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect::<Names>();
    let (systems, packages) = (names(&["air", "fluid", "spring", "mass"]), names(&["a-package", "other"]));
    let code = "use crate::{\n    Result,\n    air::{deep, fluid},\n};\n// crate::mass::x\nfn f() { valid! { x: crate::spring::rate() } }\n\
                use a_package::mass;\n/// ```\n/// use axlewright::{fluid, units::*};\n/// # axlewright::mass::x();\n/// ```\nfn g() { x.other::<u8>(); }";
    let (enables, shown) = wanted(&[code.to_owned()], "own", &systems, &packages);
    assert_eq!(enables, names(&["air", "spring", "dep:a-package"]));
    assert_eq!(shown, names(&["fluid", "mass"]));
    let list = features(
        "\n[features]\n# air = []\na = [\"b\"]\nb = [\"dep:c\"]\nd = []\n\n[dependencies]\ne = [\"f\"]\n",
    );
    assert_eq!(list.len(), 3);
    assert_eq!(with_all_below(&list, "a"), names(&["a", "b", "dep:c"]));
}
