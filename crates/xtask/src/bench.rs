//! `cargo xtask bench`: cost of the three surfaces beside the same work done plainly, in one table.
//!
//! A benchmark, not a test: it fails only if something cannot be built or run. Counts are instructions counted by
//! callgrind, differences of two runs, so that only the calls remain; times are medians of interleaved rounds.

use crate::install::{CLibrary, Python};
use crate::stages::{Call, Stages, cargo, target, without_paths};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// Place of the last result; committed, and a page of the book.
pub const RESULT: &str = "docs/generated.bench.json";

/// Wanted ratio; `peer / ours` is the peer's cost over ours.
enum Wanted {
    /// Equal counts.
    Same,
    /// At most this many more.
    Extra(f64),
    /// At least this many times faster.
    Faster(f64),
    /// Below a limit.
    Below(f64),
    /// Below a limit, or at most this many times the peer.
    BelowOr(f64, f64),
}

impl Wanted {
    /// Text form in the parts: `faster 1.5`, `below 1.5 or 10`.
    fn read(text: &str) -> Option<Wanted> {
        let words: Vec<&str> = text.split_whitespace().collect();
        Some(match words[..] {
            ["same"] => Wanted::Same,
            ["extra", count] => Wanted::Extra(count.parse().ok()?),
            ["faster", times] => Wanted::Faster(times.parse().ok()?),
            ["below", limit] => Wanted::Below(limit.parse().ok()?),
            ["below", limit, "or", times] => Wanted::BelowOr(limit.parse().ok()?, times.parse().ok()?),
            _ => return None,
        })
    }
    fn words(&self, unit: &str) -> String {
        match self {
            Wanted::Same => "the same".into(),
            Wanted::Extra(count) => format!("at most {count} more"),
            Wanted::Faster(times) => format!("at least {times} times"),
            Wanted::Below(limit) => format!("below {limit} {unit}"),
            Wanted::BelowOr(limit, times) => format!("below {limit} {unit}, or 1/{times} times"),
        }
    }
    fn reached(&self, ours: f64, peer: f64) -> bool {
        match self {
            Wanted::Same => ours == peer,
            Wanted::Extra(count) => ours <= peer + count,
            Wanted::Faster(times) => peer >= times * ours,
            Wanted::Below(limit) => ours < *limit,
            Wanted::BelowOr(limit, times) => ours < *limit || ours <= times * peer,
        }
    }
    /// Allowed cost over actual cost: the smallest one is the worst item.
    fn room(&self, ours: f64, peer: f64) -> f64 {
        let allowed = match self {
            Wanted::Same => peer,
            Wanted::Extra(count) => peer + count,
            Wanted::Faster(times) => peer / times,
            Wanted::Below(limit) => *limit,
            Wanted::BelowOr(limit, times) => limit.max(times * peer),
        };
        allowed / ours
    }
}

struct Row {
    item: String,
    ours: f64,
    /// Cost of the peer; NaN without a peer.
    peer: f64,
    unit: String,
    wanted: Wanted,
}

impl Row {
    /// A line of a part: item, ours, peer or nothing, unit, wanted ratio, with tabs between.
    fn read(line: &str) -> Result<Row, String> {
        let wrong = || format!("{line:?} is not a measurement");
        let [item, ours, peer, unit, wanted] =
            line.split('\t').collect::<Vec<_>>().try_into().map_err(|_| wrong())?;
        Ok(Row {
            item: item.to_owned(),
            ours: ours.parse().map_err(|_| wrong())?,
            peer: if peer.is_empty() { f64::NAN } else { peer.parse().map_err(|_| wrong())? },
            unit: unit.to_owned(),
            wanted: Wanted::read(wanted).ok_or_else(wrong)?,
        })
    }
    fn count(item: String, ours: u64, peer: u64, wanted: Wanted) -> Row {
        Row { item, ours: ours as f64, peer: peer as f64, unit: "instr.".into(), wanted }
    }
    fn json(&self) -> Value {
        let Row { item, ours, peer, unit, wanted } = self;
        json!({
            "item": item, "ours": ours, "peer": (!peer.is_nan()).then_some(peer), "unit": unit,
            "ratio": (!peer.is_nan()).then_some(peer / ours), "wanted": wanted.words(unit),
            "reached": wanted.reached(*ours, *peer), "room": wanted.room(*ours, *peer),
        })
    }
    fn print(&self) {
        let number = |x: f64| match () {
            () if x.is_nan() => "-".to_owned(),
            () if x.fract() == 0.0 => format!("{x:.0}"),
            () => format!("{x:.3}"),
        };
        let ratio = self.peer / self.ours;
        println!(
            "{:<62} {:>8} {:>8} {:<6} {:>6}  {:<28} {}",
            self.item,
            number(self.ours),
            number(self.peer),
            self.unit,
            if ratio.is_nan() { "-".to_owned() } else { format!("{ratio:.2}") },
            self.wanted.words(&self.unit),
            if self.wanted.reached(self.ours, self.peer) { "yes" } else { "NO" },
        );
    }
}

pub fn run(root: &Path) -> Result<(), String> {
    let mut stages = Stages::default();
    let out = target(root).join("bench");
    std::fs::create_dir_all(&out).map_err(|error| error.to_string())?;
    let python = stages
        .run("virtual environment", || Python::new(root, "venv-test", &["demo", "routes", "test", "docs"]))?;
    stages.run("wheel", || python.install_wheel(root))?;
    let c = stages.run("C library", || CLibrary::install(root))?;
    let calls = stages.run("C calls", || compile_calls(root, &python, &c, &out))?;
    let speed = target(root).join("release/speed");
    stages.run("Rust loops", || {
        without_paths(root, cargo(root))
            .args(["build", "--quiet", "--release", "--package", "axlewright-tests", "--bins"])
            .run()
    })?;
    let valgrind = Call::new(root, "valgrind").args(["--version"]).output().ok();
    let mut rows = Vec::new();
    if valgrind.is_some() {
        stages.run("counts (Rust)", || count_rust(root, &speed, &mut rows))?;
        stages.run("counts (C)", || count_c(root, &calls, &mut rows))?;
    }
    let load = std::fs::read_to_string("/proc/loadavg").unwrap_or_default();
    let load: Option<f64> = load.split_whitespace().next().and_then(|load| load.parse().ok());
    let sheet =
        stages.run("times (build sheet)", || Call::new(root, target(root).join("release/sheet")).output())?;
    let times = stages.run("times (Python)", || {
        python.python(root).args(["bindings/python/benches/bench.py"]).path(&speed).output()
    })?;
    let many = stages.run("times (build sheet, Python)", || {
        python.python(root).args(["bindings/python/benches/sheet.py"]).output()
    })?;
    let ride = stages
        .run("times (ride)", || python.python(root).args(["bindings/python/benches/ride.py"]).output())?;
    let linkage = stages.run("times (suspension)", || {
        let program = target(root).join("release/suspension");
        python.python(root).args(["bindings/python/benches/suspension.py"]).path(&program).output()
    })?;
    let axle = stages.run("times (live axle)", || {
        python.python(root).args(["bindings/python/benches/live_axle.py"]).output()
    })?;
    for line in [&sheet, &many, &linkage, &axle, &ride, &times].into_iter().flat_map(|part| part.lines()) {
        rows.push(Row::read(line)?);
    }
    stages.print();
    let machine = machine(root, &python, valgrind.as_deref())?;
    println!("\nMachine: {machine}");
    println!(
        "\n{:<62} {:>8} {:>8} {:<6} {:>6}  {:<28} reached",
        "item", "ours", "peer", "", "ratio", "wanted"
    );
    if valgrind.is_none() {
        println!("instruction counts: valgrind not found");
    }
    rows.iter().for_each(Row::print);
    let reached = rows.iter().filter(|row| row.wanted.reached(row.ours, row.peer)).count();
    println!("\n{reached} of {} reached; a ratio is the peer's cost over ours", rows.len());
    write(root, &rows, &machine, load)
}

/// The result, for the book.
fn write(root: &Path, rows: &[Row], machine: &str, load: Option<f64>) -> Result<(), String> {
    let room = |row: &&Row| row.wanted.room(row.ours, row.peer);
    let worst = rows.iter().min_by(|a, b| room(a).total_cmp(&room(b))).map(|row| &row.item);
    let date = Call::new(root, "date").args(["+%Y-%m-%d"]).output()?;
    let items: Vec<Value> = rows.iter().map(Row::json).collect();
    let result =
        json!({ "date": date.trim(), "machine": machine, "load": load, "worst": worst, "items": items });
    let text = serde_json::to_string_pretty(&result).map_err(|error| error.to_string())?;
    std::fs::write(root.join(RESULT), text + "\n").map_err(|error| format!("{RESULT}: {error}"))
}

/// The calling program, and the handwritten functions in a shared library of their own, so that both sides of the
/// comparison go through the linkage table in the same way.
fn compile_calls(root: &Path, python: &Python, c: &CLibrary, out: &Path) -> Result<PathBuf, String> {
    let compiler = || Call::new(root, std::env::var("CC").unwrap_or_else(|_| "cc".into()));
    let sources = root.join("tests/benches");
    let (by_hand, program) = (out.join("libchecked.so"), out.join("calls"));
    compiler()
        .args(["-std=c99", "-O2", "-Wall", "-Wextra", "-Werror", "-fPIC", "-shared", "-o"])
        .path(&by_hand)
        .path(&sources.join("checked.c"))
        .args(["-lm"])
        .run()?;
    let flags = c.flags(root, python, &["--cflags", "--libs"])?;
    let paths =
        [out.to_owned(), c.prefix.join("lib")].map(|folder| format!("-Wl,-rpath,{}", folder.display()));
    compiler()
        .args(["-std=c99", "-O2", "-Wall", "-Wextra", "-Werror", "-o"])
        .path(&program)
        .path(&sources.join("calls.c"))
        .path(&by_hand)
        .args(flags.iter().chain(&paths).map(String::as_str))
        .run()?;
    Ok(program)
}

fn count_rust(root: &Path, speed: &Path, rows: &mut Vec<Row>) -> Result<(), String> {
    for line in Call::new(root, speed).args(["cases"]).output()?.lines() {
        let (case, functions) = line.split_once(' ').ok_or("a case without its number of functions")?;
        let [typed, plain] = ["typed", "plain"].map(|which| per_call(root, speed, case, which));
        let merged = if functions == "one" { ", one symbol" } else { "" };
        rows.push(Row::count(format!("Rust {case}, f64{merged}"), typed?, plain?, Wanted::Same));
    }
    Ok(())
}

fn count_c(root: &Path, calls: &Path, rows: &mut Vec<Row>) -> Result<(), String> {
    for case in Call::new(root, calls).output()?.lines() {
        let [library, by_hand] = ["library", "by_hand"].map(|which| per_call(root, calls, case, which));
        rows.push(Row::count(format!("C {case}, C by hand"), library?, by_hand?, Wanted::Extra(3.0)));
    }
    Ok(())
}

/// Instructions of one call, its loop included: a thousand more calls cost a thousand times that.
fn per_call(root: &Path, program: &Path, case: &str, which: &str) -> Result<u64, String> {
    let count = |calls: &str| {
        let text = Call::new(root, "valgrind")
            .args(["--tool=callgrind", "--callgrind-out-file=/dev/null", "--log-fd=1"])
            .path(program)
            .args(if program.ends_with("speed") { &["count"][..] } else { &[] }.iter().copied())
            .args([case, which, calls])
            .output()?;
        let collected = text.lines().find_map(|line| line.split_once("Collected :"));
        let number = collected.and_then(|(_, number)| number.trim().parse::<u64>().ok());
        number.ok_or_else(|| format!("callgrind counted nothing: {text}"))
    };
    Ok((count("2000")? - count("1000")? + 500) / 1000)
}

/// Machine and versions of the numbers.
fn machine(root: &Path, python: &Python, valgrind: Option<&str>) -> Result<String, String> {
    let first = |call: Call| call.output().map(|text| text.lines().next().unwrap_or_default().to_owned());
    let cpuinfo = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let model = cpuinfo.lines().find_map(|line| line.strip_prefix("model name")).unwrap_or("unknown");
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let versions = python
        .python(root)
        .args([
            "-c",
            "import sys, numpy; print('Python', sys.version.split()[0], 'NumPy', numpy.__version__)",
        ])
        .output()?;
    Ok(format!(
        "{}, {cores} cores; {}; {}; {}; {}",
        model.trim_matches([':', ' ', '\t']),
        first(Call::new(root, "rustc").args(["--version"]))?,
        first(Call::new(root, std::env::var("CC").unwrap_or_else(|_| "cc".into())).args(["--version"]))?,
        versions.trim(),
        valgrind.map_or("valgrind not found", str::trim),
    ))
}
