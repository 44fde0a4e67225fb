//! `cargo xtask test`: all checks, on all three surfaces.

use crate::install::{CLibrary, Python};
use crate::stages::{Call, Stages, cargo, target};
use crate::{demo, docs, generate, readme};
use std::path::Path;
use std::thread::ScopedJoinHandle;

pub fn run(root: &Path) -> Result<(), String> {
    let mut stages = Stages::default();
    let outcome = std::thread::scope(|scope| {
        // The packages of Python are fetched and unpacked while Rust compiles.
        let python =
            scope.spawn(|| Python::new(root, "venv-test", &["demo", "routes", "test", "docs", "callers"]));
        all(root, &mut stages, python)
    });
    stages.print();
    outcome
}

fn all(
    root: &Path,
    stages: &mut Stages,
    python: ScopedJoinHandle<'_, Result<Python, String>>,
) -> Result<(), String> {
    stages.run("format", || cargo(root).args(["fmt", "--all", "--check"]).run())?;
    stages.run("generated files in step", || generate::run(root, true))?;
    // The tests of the core run once, below, with everything switched on; the other sets of features must compile.
    stages.run("core by default, and with serde alone", || {
        let check = ["check", "--quiet", "--package", "axlewright"];
        cargo(root).args(check).run()?;
        cargo(root).args(check).args(["--features", "serde"]).run()
    })?;
    stages.run("clippy", || {
        cargo(root)
            .args(["clippy", "--quiet", "--workspace", "--all-targets", "--", "--deny", "warnings"])
            .run()
    })?;
    stages.run("each system alone", || alone(root))?;
    // One call: the features of shared dependencies are then the same, and the core is compiled once.
    stages.run("core, generator, gates and reference rows (Rust)", || {
        cargo(root)
            .args([
                "test",
                "--quiet",
                "--features",
                "axlewright/sheet",
                "--package",
                "axlewright",
                "--package",
                "surface",
                "--package",
                "xtask",
                "--package",
                "axlewright-tests",
                "--package",
                "axlewright-c",
                "--package",
                "dunlin",
            ])
            .run()
    })?;
    stages.run("documentation of the core", || {
        cargo(root)
            .args(["doc", "--quiet", "--no-deps", "--package", "axlewright", "--features", "sheet"])
            .env("RUSTDOCFLAGS", "--deny warnings")
            .run()
    })?;
    stages.run("crate as it is published", || package(root))?;
    let c = stages.run("C library", || CLibrary::install(root))?;
    stages.run("C tests", || {
        Call::new(root, "sh").args(["bindings/c/run-tests.sh"]).path(&c.prefix).path(&target(root)).run()
    })?;
    let python = stages.run("virtual environment, begun first", || {
        python.join().map_err(|_| "its thread ended with a panic".to_owned())?
    })?;
    stages.run("C library from C#, Lua and Python", || {
        let run = "bindings/c/tests/callers/run.py";
        python.python(root).args([run]).path(&c.prefix).path(&target(root).join("callers")).run()
    })?;
    stages.run("numbers of the rows by other routes", || {
        python.python(root).args(["tests/scripts/check.py"]).run()
    })?;
    stages.run("wheel", || python.install_wheel(root))?;
    stages.run("source distribution", || python.check_sdist(root))?;
    stages.run("types and stubs", || types(root, &python))?;
    stages.run("Python tests and reference rows", || {
        python
            .python(root)
            .args(["-m", "pytest", "-q", "-n", "2", "bindings/python/tests"])
            .env("AXW_LIBRARY", c.shared())
            .env("AXW_ROWS_RUST", target(root).join("tmp/rows-rust.json"))
            .env("AXW_CATALOGUE", generate::catalogue(root))
            .run()
    })?;
    let out = target(root).join("demo");
    std::fs::create_dir_all(&out).map_err(|error| error.to_string())?;
    stages.run("notebooks", || demo::notebooks(root, &python, &out).map(drop))?;
    stages.run("examples agree", || {
        c.compile(root, &python, &root.join("examples/c/estimate.c"), &out.join("estimate"))?;
        demo::agree(root, &python, &out)
    })?;
    stages.run("README examples", || readme::run(root, &python, &c))?;
    stages.run("book", || docs::build(root, &python).map(drop))
}

/// Content of `cargo package`: the sources, the examples, the README and the licences, and no link that leads out of it.
fn package(root: &Path) -> Result<(), String> {
    let list =
        cargo(root).args(["package", "--package", "axlewright", "--list", "--allow-dirty"]).output()?;
    let files: Vec<&str> = list.lines().collect();
    for wanted in ["Cargo.toml", "LICENSE-APACHE", "LICENSE-MIT", "README.md", "src/lib.rs"] {
        if !files.contains(&wanted) {
            return Err(format!("the crate as it is published lacks {wanted}"));
        }
    }
    let is_known =
        |file: &&str| file.starts_with("src/") || file.starts_with("examples/") || !file.contains('/');
    if let Some(other) = files.iter().find(|file| !is_known(file)) {
        return Err(format!("the crate as it is published holds {other}"));
    }
    included(&root.join("crates/axlewright"), &files)?;
    for page in ["crates/axlewright/README.md", "bindings/python/README.md"] {
        let text = surface::read(&root.join(page))?;
        if let Some((_, link)) = text.split_once("](") {
            let link = link.split(')').next().unwrap_or_default();
            return Err(format!("{page} links to {link}, which is not in the package"));
        }
    }
    Ok(())
}

/// Every file that a source of the crate includes is in the package, so that its unit tests compile there, too.
fn included(folder: &Path, files: &[&str]) -> Result<(), String> {
    for file in files.iter().filter(|file| file.ends_with(".rs")) {
        let source = surface::read(&folder.join(file))?;
        for call in source.split("include_str!(\"").skip(1) {
            let name = call.split('"').next().unwrap_or_default();
            let beside = Path::new(file).with_file_name(name).display().to_string();
            if !files.contains(&beside.as_str()) {
                return Err(format!("{file} includes {name}, which is not in the crate as it is published"));
            }
        }
    }
    Ok(())
}

/// Each system compiles with its own feature alone, with its unit tests and without a warning.
fn alone(root: &Path) -> Result<(), String> {
    for system in surface::Api::read(&surface::core_sources())?.systems {
        cargo(root)
            .args(["clippy", "--quiet", "--package", "axlewright", "--all-targets"])
            .args(["--no-default-features", "--features", &system.name, "--", "--deny", "warnings"])
            .run()
            .map_err(|error| format!("{} alone: {error}", system.name))?;
    }
    Ok(())
}

/// The facade type-checks, the stub of the native module is true, and two checkers flag a user's wrong calls and no right one; the script of right
/// ones runs, too.
fn types(root: &Path, python: &Python) -> Result<(), String> {
    let config = root.join("bindings/python/pyproject.toml");
    let elsewhere = target(root).join("types");
    std::fs::create_dir_all(&elsewhere).map_err(|error| error.to_string())?;
    python
        .python(root)
        .dir(&elsewhere)
        .args(["-m", "mypy", "--config-file"])
        .path(&config)
        .args(["-p", "axlewright"])
        .run()?;
    python
        .python(root)
        .dir(&elsewhere)
        .args(["-m", "mypy.stubtest", "--mypy-config-file"])
        .path(&config)
        .args(["axlewright"])
        .run()?;
    let typed = root.join("bindings/python/tests/typed");
    python
        .python(root)
        .dir(&elsewhere)
        .path(&typed.join("check.py"))
        .env("PYRIGHT_PYTHON_IGNORE_WARNINGS", "1")
        .run()?;
    python.python(root).dir(&elsewhere).path(&typed.join("right.py")).output().map(drop)
}
