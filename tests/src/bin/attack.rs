//! Attacks one kind of target: `attack TARGET COUNT [--seed N] [--from N]`. Prints its line for the table of `cargo xtask attack`, with the peak memory in KiB
//! at the end; findings go to the error output, and make the exit code 1. `attack cases COUNT` writes the cases of the models for another surface.

use axlewright_tests::attack::{Attack, TARGETS, models};
use std::io::{BufWriter, stdout};
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let option = |name: &str| {
        let place = arguments.iter().position(|word| word == name)?;
        arguments.get(place + 1)?.parse().ok()
    };
    let attack = Attack { seed: option("--seed").unwrap_or(1), from: option("--from").unwrap_or(0) };
    let target = arguments.first().and_then(|name| TARGETS.iter().find(|target| target.name == name));
    let count = arguments.get(1).and_then(|count| count.parse().ok());
    if let (Some("cases"), Some(count)) = (arguments.first().map(String::as_str), count) {
        let written = models::write(&attack, count, &mut BufWriter::new(stdout().lock()));
        return ExitCode::from(u8::from(written.is_err()));
    }
    let (Some(target), Some(count)) = (target, count) else {
        let names: Vec<&str> = TARGETS.iter().map(|target| target.name).collect();
        eprintln!("attack TARGET COUNT [--seed N] [--from N]; targets: {}", names.join(", "));
        return ExitCode::FAILURE;
    };
    let tally = (target.run)(&attack, count);
    tally.findings.iter().for_each(|finding| eprintln!("{}, {finding}\n", target.name));
    println!("{}\t{}\t{}", target.name, tally.line(), peak());
    ExitCode::from(u8::from(!tally.findings.is_empty()))
}

/// Peak memory of this process in KiB, as the system counts it; 0 where it does not.
fn peak() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.split_whitespace().next()?.parse().ok()).unwrap_or(0)
}
