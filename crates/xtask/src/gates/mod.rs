//! Rules of the sources, checked by the tests.

mod generator;

use std::path::{Path, PathBuf};
use std::process::Command;
use surface::Api;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Tracked and new files below a folder, with their text.
fn files(folder: &str) -> Vec<(String, String)> {
    let listed = Command::new("git")
        .args(["ls-files", "--cached", "--others", "--exclude-standard", folder])
        .current_dir(root())
        .output()
        .unwrap();
    let listed = String::from_utf8(listed.stdout).unwrap();
    let files: Vec<(String, String)> = listed
        .lines()
        .filter_map(|path| Some((path.to_owned(), std::fs::read_to_string(root().join(path)).ok()?)))
        .collect();
    assert!(!files.is_empty(), "git lists nothing below {folder}");
    files
}

/// Lines of code, without comments and without the tests beside it.
fn code(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let end = text.find("#[cfg(test)]").unwrap_or(text.len());
    text[..end]
        .lines()
        .enumerate()
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
        .map(|(n, line)| (n + 1, line))
}

/// Places in the core where a line of code holds one of these words.
fn hits(words: &[&str], allowed: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for (path, text) in files("crates/axlewright/src") {
        if path.ends_with("/tests.rs")
            || path.contains("/tests/")
            || allowed.iter().any(|part| path.contains(part))
        {
            continue;
        }
        for (number, line) in code(&text) {
            if words.iter().any(|word| line.contains(word)) {
                found.push(format!("{path}:{number}: {}", line.trim()));
            }
        }
    }
    found
}

#[test]
fn only_one_folder_touches_uom() {
    assert_eq!(hits(&["uom::", "uom as"], &["base/units/"]), Vec::<String>::new());
}

/// The compiler's lints see what a search for words does not: `cargo xtask test` runs clippy, and the core denies them. No module
/// switches one off; only indexing may be expected, with the reason that fixes the bounds.
#[test]
fn the_core_denies_panics() {
    let root_file = std::fs::read_to_string(root().join("crates/axlewright/src/lib.rs")).unwrap();
    let denied = [
        "expect_used",
        "indexing_slicing",
        "panic",
        "string_slice",
        "todo",
        "unimplemented",
        "unreachable",
        "unwrap_used",
    ];
    for lint in denied {
        assert!(root_file.contains(&format!("clippy::{lint}")), "the core does not deny clippy::{lint}");
    }
    for (path, text) in files("crates/axlewright/src") {
        if path.ends_with("/tests.rs") || path.contains("/tests/") || path.ends_with("src/lib.rs") {
            continue;
        }
        let squeezed: String = code(&text).map(|(_, line)| line.trim()).collect();
        for lint in denied.map(|lint| format!("clippy::{lint}")) {
            for (at, _) in squeezed.match_indices(&lint) {
                let (before, after) = (&squeezed[..at], &squeezed[at + lint.len()..]);
                let indexes = lint.ends_with("indexing_slicing") || lint.ends_with("string_slice");
                let reasoned = before.ends_with("expect(")
                    && after.trim_start_matches([',', ' ']).starts_with("reason = ");
                assert!(indexes && reasoned, "{path} switches off {lint}");
            }
        }
    }
}

#[test]
fn the_core_knows_no_input_or_output() {
    assert_eq!(hits(&["std::fs", "std::net", "std::env", "println!", "std::io"], &[]), Vec::<String>::new());
}

/// No kind becomes another by `into`: it is not used for anything outside of text. (That it would not compile between our
/// kinds, the examples of `base/units/mod.rs` show.)
#[test]
fn kinds_cross_by_named_functions_only() {
    assert_eq!(hits(&[".into()"], &["base/text/", "base/no_solution.rs"]), Vec::<String>::new());
}

#[test]
fn formula_files_are_private() {
    for (path, text) in files("crates/axlewright/src") {
        let is_system = path.ends_with("/mod.rs") && !path.ends_with("base/mod.rs");
        if is_system {
            let public: Vec<(usize, &str)> =
                code(&text).filter(|(_, line)| line.trim_start().starts_with("pub mod ")).collect();
            assert!(public.is_empty(), "{path}: {public:?}");
        }
    }
}

/// The guards of both bindings need panics that unwind: their own tests make them panic, and no profile may abort instead.
#[test]
fn no_profile_aborts() {
    let manifest = std::fs::read_to_string(root().join("Cargo.toml")).unwrap().replace(' ', "");
    let release = manifest.split_once("[profile.release]").unwrap().1.split("\n[").next().unwrap();
    assert!(release.contains("panic=\"unwind\""), "{release}");
    for (path, text) in files(".").iter().filter(|(path, _)| path.ends_with(".toml")) {
        assert!(!text.replace(' ', "").contains("panic=\"abort\""), "{path} aborts");
    }
}

/// The oldest Rust that is claimed is the one that these tests run on.
#[test]
fn the_claimed_rust_is_tested() {
    let compiler = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let output = Command::new(compiler).arg("--version").output().unwrap();
    let version = String::from_utf8(output.stdout).unwrap();
    let claimed = env!("CARGO_PKG_RUST_VERSION");
    assert!(
        version.starts_with(&format!("rustc {claimed}.")),
        "rust-version claims {claimed}, and this is {}: test on that one, or claim this one",
        version.trim()
    );
    let readme = std::fs::read_to_string(root().join("README.md")).unwrap();
    assert!(readme.contains(&format!("Rust {claimed}")), "README.md does not name Rust {claimed}");
}

/// Places that cannot follow the version by themselves.
#[test]
fn the_pages_name_this_version() {
    let (major, minor) = (env!("CARGO_PKG_VERSION_MAJOR"), env!("CARGO_PKG_VERSION_MINOR"));
    let abi = if major == "0" { format!("{major}.{minor}") } else { major.to_owned() };
    let page = std::fs::read_to_string(root().join("docs/c.md")).unwrap();
    for named in
        [format!("libaxlewright.so.{abi}:"), format!("find_package(axlewright {major}.{minor} REQUIRED)")]
    {
        assert!(page.contains(&named), "docs/c.md does not hold {named}");
    }
    let changes = std::fs::read_to_string(root().join("docs/changelog.md")).unwrap();
    let newest = changes.lines().find_map(|line| line.strip_prefix("## ")).unwrap();
    assert!(newest.starts_with(env!("CARGO_PKG_VERSION")), "the changelog begins with {newest}");
}

/// The numbers of refusals never change: programs hold them.
#[test]
fn error_numbers_are_frozen() {
    let frozen = [
        ("AXW_OK", 0),
        ("AXW_OUT_OF_RANGE", 1),
        ("AXW_CONTRADICTION", 2),
        ("AXW_NO_SOLUTION", 3),
        ("AXW_TEXT", 4),
        ("AXW_DOCUMENT", 5),
        ("AXW_LENGTH", 6),
        ("AXW_NULL", 100),
        ("AXW_BUFFER", 101),
        ("AXW_UTF8", 102),
        ("AXW_NOT_THERE", 103),
        ("AXW_ROWS", 104),
        ("AXW_STOPPED", 105),
        ("AXW_FAULT", 199),
        ("AXW_VERDICT_MEETS", 0),
        ("AXW_VERDICT_TIGHT", 1),
        ("AXW_VERDICT_SHORT", 2),
        ("AXW_VERDICT_NOT_KNOWN", 3),
    ];
    let header = std::fs::read_to_string(root().join("bindings/c/include/axlewright/core.h")).unwrap();
    for (name, number) in frozen {
        assert!(header.contains(&format!("#define {name} {number}\n")), "{name} is no longer {number}");
    }
}

#[test]
fn nothing_names_a_registry_or_a_machine() {
    let words = ["crates", "pypi", "npmjs", "pythonhosted"]
        .map(|name| [format!("{name}.io/"), format!("{name}.org/"), format!("{name}.com/")]);
    let home = std::env::var("HOME").unwrap_or_default() + "/";
    for (path, text) in files(".") {
        if path.ends_with("Cargo.lock") {
            continue;
        }
        for word in words.iter().flatten().map(String::as_str).chain([home.as_str()]) {
            assert!(word.len() < 3 || !text.contains(word), "{path} names {word}");
        }
    }
}

#[test]
fn every_system_has_its_page_in_the_book() {
    let api = Api::read(&surface::core_sources()).unwrap();
    let drawings = std::fs::read_to_string(root().join("docs/book/drawings.py")).unwrap();
    let mut pages: Vec<String> = files("docs/systems").into_iter().map(|(path, _)| path).collect();
    for system in &api.systems {
        let name = format!("docs/{}", crate::docs::page_of(&system.name));
        assert!(pages.contains(&name), "{} lacks its page: {name}", system.name);
        pages.retain(|page| *page != name);
        let text = std::fs::read_to_string(root().join(&name)).unwrap();
        let drawing = format!("](/drawings/{}.svg)", system.name);
        for part in [
            &drawing,
            "\n## What it answers\n",
            "\n$$",
            "\n## Example\n",
            "```{code-cell}\n",
            "\n## What it leaves out\n",
        ] {
            assert!(text.contains(part), "{name} lacks {part:?}");
        }
        let drawn = format!("\ndef {}() -> Sheet:", system.name);
        assert!(drawings.contains(&drawn), "docs/book/drawings.py draws nothing for {}", system.name);
    }
    assert!(pages.is_empty(), "pages of no system: {pages:?}");
}

/// After a change of the core's names the generator still compiles: it reads sources only.
#[test]
fn the_generator_does_not_link_the_core() {
    for name in ["surface", "xtask"] {
        let manifest = std::fs::read_to_string(root().join(format!("crates/{name}/Cargo.toml"))).unwrap();
        let links = manifest.lines().filter(|line| line.starts_with("axlewright"));
        assert_eq!(links.collect::<Vec<_>>(), [""; 0], "{name}");
    }
}
