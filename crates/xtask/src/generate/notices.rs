//! Licences beside what is given away, and the notices of the packages that are linked into it: from the dependency graph and the sources of
//! the packages themselves.

use super::File;
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;
use surface::read;

/// Target whose packages count.
const TARGET: &str = "x86_64-unknown-linux-gnu";

/// The licence texts of the root, beside each of these manifests.
const LICENSED: [&str; 2] = ["bindings/python", "crates/axlewright"];

/// Notices: the file, the package, and what it is in words.
const NOTICES: [(&str, &str, &str); 2] = [
    ("bindings/c/generated.notices.txt", "axlewright-c", "the C library"),
    ("bindings/python/generated.notices.txt", "axlewright-python", "the Python module"),
];

/// All files of this kind.
pub fn files(root: &Path) -> Result<Vec<File>, String> {
    let mut files = Vec::new();
    for name in ["LICENSE-MIT", "LICENSE-APACHE"] {
        let text = read(&root.join(name))?;
        files.extend(LICENSED.map(|folder| File { path: format!("{folder}/{name}"), text: text.clone() }));
    }
    let packages = packages(root)?;
    for (path, package, words) in NOTICES {
        files.push(File { path: path.into(), text: notices(root, package, words, &packages)? });
    }
    Ok(files)
}

/// A package of the lock file.
struct Package {
    license: String,
    folder: String,
}

fn cargo(root: &Path, arguments: &[&str]) -> Result<String, String> {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".into());
    let done = Command::new(cargo)
        .args(arguments)
        .current_dir(root)
        .output()
        .map_err(|error| format!("cargo: {error}"))?;
    if !done.status.success() {
        return Err(format!(
            "cargo {} ended with {}: {}",
            arguments.join(" "),
            done.status,
            String::from_utf8_lossy(&done.stderr)
        ));
    }
    String::from_utf8(done.stdout).map_err(|error| error.to_string())
}

/// Every package by its name and version.
fn packages(root: &Path) -> Result<BTreeMap<String, Package>, String> {
    let text = cargo(root, &["metadata", "--format-version", "1", "--locked", "--filter-platform", TARGET])?;
    let all: Value = serde_json::from_str(&text).map_err(|error| error.to_string())?;
    let word = |of: &Value, key: &str| of[key].as_str().unwrap_or_default().to_owned();
    let list = all["packages"].as_array().cloned().unwrap_or_default();
    let one = |of: &Value| {
        let manifest = word(of, "manifest_path");
        let folder = Path::new(&manifest).parent().unwrap_or(root).display().to_string();
        (
            format!("{} {}", word(of, "name"), word(of, "version")),
            Package { license: word(of, "license"), folder },
        )
    };
    Ok(list.iter().map(one).collect())
}

/// Names and versions of the packages that are linked in, without those of this repository.
fn linked(root: &Path, package: &str) -> Result<Vec<String>, String> {
    let edges = "normal,no-proc-macro";
    let command =
        ["tree", "--locked", "--package", package, "--edges", edges, "--target", TARGET, "--prefix", "none"];
    let mut found: Vec<String> = cargo(root, &command)?
        .lines()
        .filter(|line| !line.is_empty() && !line.contains("(/"))
        .filter_map(|line| {
            let mut words = line.split(' ');
            Some(format!("{} {}", words.next()?, words.next()?.strip_prefix('v')?))
        })
        .collect();
    found.sort();
    found.dedup();
    Ok(found)
}

/// One text of a licence and the packages under it.
fn notices(
    root: &Path,
    package: &str,
    words: &str,
    packages: &BTreeMap<String, Package>,
) -> Result<String, String> {
    let linked = linked(root, package)?;
    let mut list = String::new();
    // Each text stands once, under the names of all its packages.
    let mut texts: Vec<(String, Vec<String>)> = Vec::new();
    let mut under = |text: String, name: &str| match texts.iter_mut().find(|(known, _)| *known == text) {
        Some((_, names)) => names.push(name.to_owned()),
        None => texts.push((text, vec![name.to_owned()])),
    };
    for name in &linked {
        let of =
            packages.get(name).ok_or_else(|| format!("{name} is not among the packages of the lock file"))?;
        list.push_str(&format!("    {name}: {}\n", of.license));
        let found = licences(Path::new(&of.folder), &of.license)?;
        if found.is_empty() {
            list.push_str("        (its package holds no text of the licence)\n");
        }
        found.into_iter().for_each(|text| under(text, name));
    }
    under(RUST.into(), "the standard library of Rust");
    let texts: String = texts
        .iter()
        .map(|(text, names)| format!("{}\n{}\n\n{text}\n\n", "=".repeat(78), names.join(", ")))
        .collect();
    Ok(format!(
        "{}\n\nPackages of others that are linked into {words}, and their licences. Axlewright itself is licensed under MIT or\n\
         Apache-2.0, at your choice: see LICENSE-MIT and LICENSE-APACHE. Where a package gives a choice that includes MIT,\n\
         its MIT text stands here. The list is that of {TARGET}.\n\n{list}    the standard library of Rust: MIT OR Apache-2.0\n\n{texts}",
        super::MARK
    ))
}

/// The texts of a package: that of the MIT licence if it may be chosen, all of them otherwise.
fn licences(folder: &Path, expression: &str) -> Result<Vec<String>, String> {
    let entries = std::fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut names: Vec<String> =
        entries.filter_map(|entry| entry.ok()?.file_name().into_string().ok()).collect();
    names.sort();
    let upper = |name: &String| name.to_uppercase();
    names.retain(|name| {
        ["LICENSE", "LICENCE", "COPYING", "NOTICE", "UNLICENSE"].iter().any(|of| upper(name).starts_with(of))
            && folder.join(name).is_file()
    });
    let is_mit = |name: &String| upper(name).contains("MIT");
    if expression.contains("MIT") && names.iter().any(is_mit) {
        names.retain(|name| is_mit(name) || upper(name).starts_with("NOTICE"));
    }
    names.iter().map(|name| read(&folder.join(name)).map(|text| tidy(&text))).collect()
}

/// A text without a carriage return, white space at the ends of lines, or empty lines around it.
fn tidy(text: &str) -> String {
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    lines.join("\n").trim_matches('\n').to_owned()
}

/// Notice of the standard library (its MIT text, from memory).
const RUST: &str = "\
Copyright (c) The Rust Project Contributors

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the \"Software\"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED \"AS IS\", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_choice_that_includes_mit_gives_that_text() {
        let folder = std::env::temp_dir().join(format!("axlewright-notices-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        for (name, text) in
            [("LICENSE-APACHE", "apache"), ("LICENSE-MIT", "mit  \r\nline\n\n"), ("README", "no")]
        {
            std::fs::write(folder.join(name), text).unwrap();
        }
        assert_eq!(licences(&folder, "MIT OR Apache-2.0").unwrap(), ["mit\nline"]);
        assert_eq!(licences(&folder, "Apache-2.0").unwrap().len(), 2);
        std::fs::remove_dir_all(&folder).unwrap();
    }
}
