//! Stages of a longer command, with their times.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

/// Stages so far.
#[derive(Default)]
pub struct Stages {
    done: Vec<(String, Duration)>,
}

impl Stages {
    /// Runs a stage and keeps its time; the first failure ends the command.
    pub fn run<T>(&mut self, name: &str, stage: impl FnOnce() -> Result<T, String>) -> Result<T, String> {
        eprintln!("\n== {name}");
        let start = Instant::now();
        let outcome = stage();
        self.done.push((name.to_owned(), start.elapsed()));
        outcome.map_err(|error| format!("{name}: {error}"))
    }

    /// Prints a table of seconds per stage.
    pub fn print(&self) {
        println!("\n{:<44} {:>8}", "stage", "seconds");
        for (name, time) in &self.done {
            println!("{name:<44} {:>8.1}", time.as_secs_f64());
        }
        let total: Duration = self.done.iter().map(|(_, time)| *time).sum();
        println!("{:<44} {:>8.1}", "all", total.as_secs_f64());
    }
}

/// A command of the project, in its root.
pub struct Call(Command, String);

impl Call {
    pub fn new(root: &Path, program: impl AsRef<Path>) -> Call {
        let program = program.as_ref();
        let mut command = Command::new(program);
        command.current_dir(root);
        Call(command, program.display().to_string())
    }
    pub fn args<'a>(mut self, arguments: impl IntoIterator<Item = &'a str>) -> Call {
        for argument in arguments {
            self.0.arg(argument);
            self.1.push(' ');
            self.1.push_str(argument);
        }
        self
    }
    pub fn path(mut self, argument: &Path) -> Call {
        self.0.arg(argument);
        self.1.push_str(&format!(" {}", argument.display()));
        self
    }
    pub fn env(mut self, name: &str, value: impl AsRef<std::ffi::OsStr>) -> Call {
        self.0.env(name, value);
        self
    }
    pub fn dir(mut self, folder: &Path) -> Call {
        self.0.current_dir(folder);
        self
    }
    /// Runs it; its output goes to ours.
    pub fn run(mut self) -> Result<(), String> {
        let status = self.0.status().map_err(|error| format!("{}: {error}", self.1))?;
        if status.success() { Ok(()) } else { Err(format!("{} ended with {status}", self.1)) }
    }
    /// Runs it and returns its output.
    pub fn output(mut self) -> Result<String, String> {
        let output = self.0.output().map_err(|error| format!("{}: {error}", self.1))?;
        if !output.status.success() {
            return Err(format!(
                "{} ended with {}: {}",
                self.1,
                output.status,
                String::from_utf8_lossy(&output.stderr)
            ));
        }
        String::from_utf8(output.stdout).map_err(|error| format!("{}: {error}", self.1))
    }
    /// Runs it with any exit code, and returns that code and its output.
    pub fn any_output(mut self) -> Result<(i32, String), String> {
        let output = self.0.output().map_err(|error| format!("{}: {error}", self.1))?;
        let text = String::from_utf8(output.stdout).map_err(|error| format!("{}: {error}", self.1))?;
        eprint!("{}", String::from_utf8_lossy(&output.stderr));
        Ok((output.status.code().unwrap_or(-1), text))
    }
}

/// Cargo, as it was called.
pub fn cargo(root: &Path) -> Call {
    Call::new(root, std::env::var_os("CARGO").map_or_else(|| PathBuf::from("cargo"), PathBuf::from))
}

/// Settings of a build that is given away: it holds no path of this machine, so that two folders give the same bytes. All release builds
/// here have them, as cargo compiles everything again where they differ.
pub fn without_paths(root: &Path, call: Call) -> Call {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| std::env::home_dir().map(|home| home.join(".cargo"))).unwrap_or_default();
    // Below the registry, the first folder is named for a host.
    let sources = std::fs::read_dir(home.join("registry/src")).into_iter().flatten().flatten();
    let mut flags = std::env::var("RUSTFLAGS").unwrap_or_default();
    for (from, to) in [(root.to_path_buf(), "axlewright")]
        .into_iter()
        .chain(sources.map(|source| (source.path(), "packages")))
    {
        flags.push_str(&format!(" --remap-path-prefix={}={to}", from.display()));
    }
    call.env("RUSTFLAGS", flags.trim_start())
}

/// The folder into which cargo builds.
pub fn target(root: &Path) -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), |folder| root.join(folder))
}
