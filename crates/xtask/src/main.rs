//! The project's own commands.

mod attack;
mod bench;
mod check;
mod demo;
mod docs;
mod features;
#[cfg(test)]
mod gates;
mod generate;
mod install;
mod readme;
mod stages;
mod test;

use std::path::PathBuf;
use std::process::ExitCode;

const USAGE: &str = "cargo xtask demo | test | check SYSTEM | generate [--check] | bench | attack | docs";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..");
    let root = root.canonicalize().unwrap_or(root);
    let outcome = match words[..] {
        ["demo"] => demo::run(&root),
        ["bench"] => bench::run(&root),
        ["attack", ..] => attack::run(&root, &words[1..]),
        ["docs"] => docs::run(&root),
        ["check", system] => check::run(&root, system),
        ["test"] => test::run(&root),
        ["generate"] => generate::run(&root, false),
        ["generate", "--check"] => generate::run(&root, true),
        _ => Err(format!("usage: {USAGE}")),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}
