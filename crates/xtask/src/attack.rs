//! `cargo xtask attack`: a seeded, bounded attack on the whole library, in release; one table of what each target withstood.
//!
//! Each target is a run of its own of the program `attack` of the tests, so that its peak memory is its own; C is attacked through the
//! installed library, on the lists that the generator builds, and Python through the installed wheel.

use crate::generate;
use crate::install::{CLibrary, Python};
use crate::stages::{Call, Stages, cargo, target, without_paths};
use std::path::Path;

/// Table of the last long run; committed, and a part of the book.
pub const RESULT: &str = "docs/generated.attack.md";

/// Targets with what is counted, their counts by default, and those of `--long`.
const TARGETS: [(&str, &str, u64, u64); 9] = [
    ("functions", "calls", 2_000_000, 50_000_000),
    ("models", "calls a model", 600, 100_000),
    ("sheets", "sheets", 150, 100_000),
    ("lists", "price lists", 150, 10_000),
    ("requirements", "requirements", 20_000, 200_000),
    ("drawings", "drawings a linkage", 500, 100_000),
    ("texts", "texts", 20_000, 1_000_000),
    (C, "calls an entry", 1_000, 100_000),
    (PYTHON, "calls a function", 20, 2_000),
];
/// The target that is attacked through the C library.
const C: &str = "c";
/// The target that is attacked through the Python package.
const PYTHON: &str = "python";

const USAGE: &str = "cargo xtask attack [--long] [--seed N] [--TARGET COUNT ...] [--date TEXT --out FILE]";

/// Arguments of the command.
#[derive(Debug, PartialEq)]
struct Wanted {
    seed: u64,
    counts: Vec<u64>,
    date: String,
    out: Option<String>,
}

impl Wanted {
    fn read(words: &[&str]) -> Result<Wanted, String> {
        let mut of =
            Wanted { seed: 1, counts: TARGETS.map(|on| on.2).to_vec(), date: String::new(), out: None };
        let mut words = words.iter().copied();
        while let Some(word) = words.next() {
            if word == "--long" {
                of.counts = TARGETS.map(|on| on.3).to_vec();
                continue;
            }
            let value = words.next().ok_or_else(|| format!("{word} needs a value; usage: {USAGE}"))?;
            let number = || value.parse::<u64>().map_err(|_| format!("{word} {value}: no number"));
            let place = TARGETS.iter().position(|(name, ..)| word.strip_prefix("--") == Some(name));
            match (word, place) {
                ("--seed", _) => of.seed = number()?,
                ("--date", _) => of.date = value.to_owned(),
                ("--out", _) => of.out = Some(value.to_owned()),
                (_, Some(place)) => of.counts[place] = number()?,
                _ => {
                    let names = TARGETS.map(|(name, ..)| name).join(", ");
                    return Err(format!("{word} is unknown; usage: {USAGE}; targets: {names}"));
                }
            }
        }
        match (&of.out, of.date.is_empty()) {
            (Some(_), true) => Err("--out needs --date: the page says when its numbers were taken".into()),
            _ => Ok(of),
        }
    }
}

/// One target of the table.
struct Row {
    what: String,
    /// Calls, answered, refused, crashes, broken invariants, the first finding, peak memory in KiB.
    cells: Vec<String>,
}

impl Row {
    fn read(line: &str, count: u64, counts: &str) -> Result<Row, String> {
        let cells: Vec<String> = line.trim_end().split('\t').map(str::to_owned).collect();
        match &cells[..] {
            [name, rest @ ..] if rest.len() == 7 => {
                Ok(Row { what: format!("{name}: {count} {counts}"), cells: rest.to_vec() })
            }
            _ => Err(format!("{line:?} is no line of the table")),
        }
    }

    fn markdown(&self) -> String {
        let memory =
            self.cells[6].parse::<f64>().map_or("unknown".into(), |kib| format!("{:.0} MB", kib / 1024.0));
        format!("| {} | {} | {memory} |\n", self.what, self.cells[..6].join(" | "))
    }
}

pub fn run(root: &Path, words: &[&str]) -> Result<(), String> {
    let wanted = Wanted::read(words)?;
    let mut stages = Stages::default();
    stages.run("build", || {
        let package = ["build", "--quiet", "--release", "--package", "axlewright-tests", "--bin", "attack"];
        without_paths(root, cargo(root)).args(package).run()
    })?;
    let mut rows = Vec::new();
    for ((name, counts, ..), count) in TARGETS.iter().zip(&wanted.counts).filter(|(_, count)| **count > 0) {
        let (seed, number) = (wanted.seed.to_string(), count.to_string());
        let text = stages.run(name, || match *name {
            C => c(root, &number, &seed),
            PYTHON => python(root, &number, &seed),
            name => {
                let program = target(root).join("release/attack");
                Call::new(root, program).args([name, &number, "--seed", &seed]).any_output()
            }
        });
        rows.push(Row::read(&text?.1, *count, counts)?);
        // After each target, so that a long run that is stopped leaves what it did.
        if let Some(out) = &wanted.out {
            let table = table(&rows, wanted.seed, &wanted.date);
            std::fs::write(root.join(out), table).map_err(|error| format!("{out}: {error}"))?;
        }
    }
    stages.print();
    println!("\n{}", table(&rows, wanted.seed, &wanted.date));
    let failed = rows.iter().filter(|row| row.cells[3] != "0" || row.cells[4] != "0").count();
    if failed == 0 { Ok(()) } else { Err(format!("{failed} targets did not withstand the attack")) }
}

fn table(rows: &[Row], seed: u64, date: &str) -> String {
    let date = if date.is_empty() { String::new() } else { format!("Run on {date}. ") };
    let rows: String = rows.iter().map(Row::markdown).collect();
    format!(
        "{date}Seed {seed}.\n\n| target | calls | answered | refused | crashes | broken invariants | first finding | peak memory |\n\
         |---|---|---|---|---|---|---|---|\n{rows}"
    )
}

/// The C library under attack: exit code and line. The program `attack` prints the documents of the models.
fn c(root: &Path, count: &str, seed: &str) -> Result<(i32, String), String> {
    let library = CLibrary::install(root)?;
    generate::built_again(root)?;
    let (program, lib) = (target(root).join("attack-c"), library.prefix.join("lib"));
    Call::new(root, std::env::var("CC").unwrap_or_else(|_| "cc".into()))
        .args(["-std=c99", "-O2", "-Wall", "-Wextra", "-Werror"])
        .args([format!("-I{}", library.prefix.join("include").display()).as_str()])
        .args([format!("-I{}", target(root).join("generated").display()).as_str(), "-o"])
        .path(&program)
        .args(["bindings/c/tests/attack/attack.c"])
        .args([format!("-L{}", lib.display()).as_str(), format!("-Wl,-rpath,{}", lib.display()).as_str()])
        .args(["-laxlewright", "-lm"])
        .run()?;
    let cases = format!("{} {count} --seed {seed}", cases(root));
    Call::new(root, program).args([count, seed, &cases]).any_output()
}

/// The command that prints the cases of the models, for a shell.
fn cases(root: &Path) -> String {
    format!("'{}' cases", target(root).join("release/attack").display())
}

/// The Python package under attack: exit code and line.
fn python(root: &Path, count: &str, seed: &str) -> Result<(i32, String), String> {
    let python = Python::new(root, "venv-test", &["demo", "routes", "test", "docs"])?;
    python.install_wheel(root)?;
    let library = CLibrary::install(root)?;
    generate::built_again(root)?;
    let script = ["bindings/python/tests/attack.py", count, seed];
    let call = python.python(root).env("AXW_CATALOGUE", generate::catalogue(root)).args(script);
    call.path(&library.shared()).args([cases(root).as_str()]).any_output()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_and_seed_are_read() {
        let wanted = Wanted::read(&["--seed", "7", "--c", "0", "--sheets", "12"]).unwrap();
        assert_eq!((wanted.seed, wanted.counts[2], wanted.counts[7]), (7, 12, 0));
        assert_eq!(Wanted::read(&["--long"]).unwrap().counts[0], 50_000_000);
        for wrong in [&["--seed"][..], &["--seed", "x"], &["--brakes", "1"], &["--out", "a.md"]] {
            assert!(Wanted::read(wrong).is_err(), "{wrong:?}");
        }
    }

    #[test]
    fn a_line_becomes_a_row() {
        let row = Row::read("texts\t9\t5\t4\t0\t0\tnone\t2048\n", 3, "texts").unwrap();
        assert_eq!(row.markdown(), "| texts: 3 texts | 9 | 5 | 4 | 0 | 0 | none | 2 MB |\n");
        assert!(Row::read("texts\t9", 3, "texts").is_err());
    }
}
