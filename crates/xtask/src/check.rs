//! `cargo xtask check SYSTEM`: what a formula, a model or a new system must meet, without the bindings and the book.

use crate::generate;
use crate::install::Python;
use crate::stages::{Stages, cargo};
use std::path::Path;
use surface::Api;

/// Tests that take every function and model from the catalogue, its rows and its claims.
const TESTS: [&str; 6] =
    ["rows::", "claims::", "unit_invariance::", "sections::", "sheet_findings::", "demo_sheets::"];

pub fn run(root: &Path, system: &str) -> Result<(), String> {
    let mut stages = Stages::default();
    let outcome = all(root, system, &mut stages);
    stages.print();
    outcome
}

fn all(root: &Path, system: &str, stages: &mut Stages) -> Result<(), String> {
    stages.run("generated files", || generate::run(root, false))?;
    let systems = Api::read(&surface::core_sources())?.systems;
    if !systems.iter().any(|of| of.name == system) {
        let names: Vec<&str> = systems.iter().map(|of| of.name.as_str()).collect();
        return Err(format!("there is no system {system}; there are {}", names.join(", ")));
    }
    stages.run("format", || cargo(root).args(["fmt", "--all"]).run())?;
    stages.run("system alone, with its examples", || {
        cargo(root)
            .args(["test", "--quiet", "--package", "axlewright", "--no-default-features"])
            .args(["--features", system])
            .run()
    })?;
    stages.run("gates", || {
        cargo(root).args(["test", "--quiet", "--package", "surface", "--package", "xtask"]).run()
    })?;
    stages.run("rows, claims and the build sheet", || {
        cargo(root)
            .args([
                "test",
                "--quiet",
                "--no-fail-fast",
                "--package",
                "axlewright-tests",
                "--test",
                "all",
                "--",
            ])
            .args(TESTS)
            .run()
    })?;
    let python = stages.run("virtual environment", || Python::new(root, "venv-routes", &["routes"]))?;
    stages.run("numbers of the rows by other routes", || {
        python.python(root).args(["tests/scripts/check.py", system]).run()
    })
}
