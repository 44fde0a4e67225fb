//! `cargo xtask demo`: the main job on the Dunlin, on all three surfaces, from nothing but Rust, a C compiler and Python.

use crate::install::{CLibrary, Python, rust_example};
use crate::stages::{Call, Stages, target};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

pub fn run(root: &Path) -> Result<(), String> {
    let mut stages = Stages::default();
    let out = target(root).join("demo");
    std::fs::create_dir_all(&out).map_err(|error| error.to_string())?;
    let python = stages.run("virtual environment", || Python::new(root, "venv-demo", &["demo"]))?;
    stages.run("wheel", || python.install_wheel(root))?;
    let c = stages.run("C library", || CLibrary::install(root))?;
    stages.run("estimate (C)", || estimate(root, &python, &c, &out))?;
    stages.run("answers (Rust)", || Call::new(root, rust_example(root)?).run())?;
    let pages = stages.run("notebooks (Python)", || notebooks(root, &python, &out))?;
    stages.run("the three agree to the last bit", || agree(root, &python, &out))?;
    stages.print();
    for page in pages {
        println!("\nThe pictures and the answers: {}", page.display());
    }
    Ok(())
}

/// Compiles the estimating program, prices the Dunlin's quote, and chooses parts for its build sheet.
fn estimate(root: &Path, python: &Python, c: &CLibrary, out: &Path) -> Result<(), String> {
    let program = out.join("estimate");
    c.compile(root, python, &root.join("examples/c/estimate.c"), &program)?;
    let quote = Call::new(root, &program).path(&root.join("examples/c/dunlin_quote.csv")).any_output()?;
    let parts = Call::new(root, &program)
        .path(&root.join("examples/sheets/dunlin.toml"))
        .path(&root.join("examples/sheets/tern_lane_prices.csv"))
        .args([
            "1.2 Hz <= front.natural_frequency <= 1.5 Hz",
            "driveline.cruise.verdict = tight",
            "cost <= 1500",
        ])
        .any_output()?;
    for (name, (code, text)) in [("estimate.txt", quote), ("parts.txt", parts)] {
        println!("{text}");
        std::fs::write(out.join(name), text).map_err(|error| error.to_string())?;
        // 0: all findings meet; 1: some finding is tight, short or not known, as intended in the Dunlin's first quote.
        if code > 1 {
            return Err(format!("{name}: the estimate ended with {code}"));
        }
    }
    Ok(())
}

/// Notebooks: four questions on single parts, the motion of the wheels, the ride of the van, and the whole van from the first weighing to the parts.
const NOTEBOOKS: [&str; 4] = ["what_if", "linkages", "ride", "build_sheet"];

/// Executes the notebooks and makes pages of them. Their imports and data go beside them, so that they run again from there.
pub fn notebooks(root: &Path, python: &Python, out: &Path) -> Result<Vec<PathBuf>, String> {
    let sheets = target(root).join("sheets");
    std::fs::create_dir_all(&sheets).map_err(|error| error.to_string())?;
    for (from, to, endings) in
        [("examples/python", out, &["py"][..]), ("examples/sheets", &sheets, &["toml", "csv"])]
    {
        for file in std::fs::read_dir(root.join(from)).map_err(|error| error.to_string())? {
            let path = file.map_err(|error| error.to_string())?.path();
            let name = path.file_name().ok_or("a file without a name")?;
            if path.extension().is_some_and(|found| endings.iter().any(|ending| found == *ending)) {
                std::fs::copy(&path, to.join(name))
                    .map_err(|error| format!("{}: {error}", path.display()))?;
            }
        }
    }
    NOTEBOOKS.iter().map(|name| notebook(root, python, out, name)).collect()
}

fn notebook(root: &Path, python: &Python, out: &Path, name: &str) -> Result<PathBuf, String> {
    let (notebook, page) = (out.join(format!("{name}.ipynb")), out.join(format!("{name}.html")));
    python
        .tool(root, "jupytext")
        .args(["--quiet", "--to", "ipynb", "--output"])
        .path(&notebook)
        .path(&root.join(format!("examples/python/{name}.py")))
        .run()?;
    python
        .python(root)
        .args(["-m", "nbconvert", "--log-level=ERROR", "--execute", "--to", "html", "--embed-images"])
        .args(["--HTMLExporter.mathjax_url=", "--HTMLExporter.require_js_url="])
        // A busy machine is no error: a kernel may take any time to start and to print.
        .args(["--ExecutePreprocessor.startup_timeout=86400", "--ExecutePreprocessor.iopub_timeout=86400"])
        // The page shows questions, parameters and answers; the code of a picture is in the notebook.
        .args(["--TagRemovePreprocessor.enabled=True", "--TagRemovePreprocessor.remove_input_tags=drawing"])
        .path(&notebook)
        .env("AXLEWRIGHT_PICTURES", out)
        .run()?;
    Ok(page)
}

/// Every call that two of the three examples share has the same bits.
pub fn agree(root: &Path, python: &Python, out: &Path) -> Result<(), String> {
    let (_, from_c) = Call::new(root, out.join("estimate"))
        .args(["--bits"])
        .path(&root.join("examples/c/dunlin_quote.csv"))
        .any_output()?;
    let from_rust = Call::new(root, rust_example(root)?).args(["--bits"]).output()?;
    let from_python = python.python(root).args(["examples/python/dunlin.py", "--bits"]).output()?;
    let [c, rust, python] = [&from_c, &from_rust, &from_python].map(|text| bits(text));
    if rust.len() < 8 {
        return Err(format!("the examples show only {} calls", rust.len()));
    }
    for (name, value) in &rust {
        for (surface, other) in [("C", &c), ("Python", &python)] {
            match other.get(name) {
                Some(same) if same == value => {}
                Some(other) => return Err(format!("{name}: Rust {value}, {surface} {other}")),
                None => return Err(format!("{name} is missing in {surface}")),
            }
        }
    }
    println!("{} calls have the same bits in Rust, C and Python", rust.len());
    Ok(())
}

fn bits(text: &str) -> BTreeMap<String, String> {
    let pair =
        |line: &str| line.split_once(' ').map(|(name, bits)| (name.to_owned(), bits.trim().to_owned()));
    text.lines().filter_map(pair).collect()
}
