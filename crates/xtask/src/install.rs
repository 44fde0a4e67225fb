//! Builds the parts that a user installs: the Python wheel in a virtual environment of our own, and the C library under a prefix.

use crate::stages::{Call, cargo, target, without_paths};
use std::path::{Path, PathBuf};

/// A virtual environment below the target folder.
pub struct Python {
    folder: PathBuf,
}

impl Python {
    /// Makes the environment `name` and installs the packages in the requirements files of `bindings/python/requirements`.
    pub fn new(root: &Path, name: &str, requirements: &[&str]) -> Result<Python, String> {
        let folder = target(root).join(name);
        let environment = Python { folder };
        let files: Vec<PathBuf> = requirements
            .iter()
            .map(|file| root.join("bindings/python/requirements").join(format!("{file}.txt")))
            .collect();
        let mut wanted = String::new();
        for file in &files {
            wanted.push_str(
                &std::fs::read_to_string(file).map_err(|error| format!("{}: {error}", file.display()))?,
            );
        }
        let stamp = environment.folder.join("installed.txt");
        if std::fs::read_to_string(&stamp).is_ok_and(|done| done == wanted) {
            return Ok(environment);
        }
        if environment.folder.exists() {
            std::fs::remove_dir_all(&environment.folder).map_err(|error| error.to_string())?;
        }
        let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".into());
        let version = Call::new(root, &python)
            .args(["-c", "import sys; print(sys.version_info >= (3, 11))"])
            .output()?;
        if version.trim() != "True" {
            return Err(format!("{python} is older than Python 3.11; set PYTHON to a newer one"));
        }
        Call::new(root, &python).args(["-m", "venv"]).path(&environment.folder).run()?;
        let mut install =
            environment.python(root).args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check"]);
        for file in &files {
            install = install.args(["-r"]).path(file);
        }
        install.run()?;
        std::fs::write(&stamp, wanted).map_err(|error| error.to_string())?;
        Ok(environment)
    }

    /// The interpreter.
    pub fn python(&self, root: &Path) -> Call {
        self.tool(root, "python")
    }

    /// A program of the environment.
    pub fn tool(&self, root: &Path, name: &str) -> Call {
        let path = std::env::var_os("PATH").unwrap_or_default();
        let mut folders = vec![self.folder.join("bin")];
        folders.extend(std::env::split_paths(&path));
        let joined = std::env::join_paths(folders).unwrap_or(path);
        Call::new(root, self.folder.join("bin").join(name))
            .env("PATH", joined)
            .env("VIRTUAL_ENV", &self.folder)
    }

    /// Builds the wheel and installs it.
    pub fn install_wheel(&self, root: &Path) -> Result<PathBuf, String> {
        let out = target(root).join("wheels");
        if out.exists() {
            std::fs::remove_dir_all(&out).map_err(|error| error.to_string())?;
        }
        without_paths(root, self.tool(root, "maturin"))
            .args(["build", "--release", "--quiet", "--manifest-path", "bindings/python/Cargo.toml", "--out"])
            .path(&out)
            .run()?;
        let mut wheels = std::fs::read_dir(&out).map_err(|error| error.to_string())?;
        let wheel = wheels.next().ok_or("maturin built no wheel")?.map_err(|error| error.to_string())?.path();
        let home = std::env::home_dir().unwrap_or_else(|| root.to_path_buf());
        self.python(root)
            .args(["bindings/python/check_wheel.py"])
            .path(&wheel)
            .path(root)
            .path(&home.join(""))
            .run()?;
        self.python(root)
            .args([
                "-m",
                "pip",
                "install",
                "--quiet",
                "--disable-pip-version-check",
                "--force-reinstall",
                "--no-deps",
            ])
            .path(&wheel)
            .run()?;
        Ok(wheel)
    }

    /// Makes the source distribution, and holds that it has what the module is built from.
    pub fn check_sdist(&self, root: &Path) -> Result<(), String> {
        let out = target(root).join("sdist");
        if out.exists() {
            std::fs::remove_dir_all(&out).map_err(|error| error.to_string())?;
        }
        self.tool(root, "maturin")
            .args(["sdist", "--manifest-path", "bindings/python/Cargo.toml", "--out"])
            .path(&out)
            .run()?;
        let mut made = std::fs::read_dir(&out).map_err(|error| error.to_string())?;
        let sdist = made.next().ok_or("maturin made no source distribution")?;
        let sdist = sdist.map_err(|error| error.to_string())?.path();
        self.python(root).args(["bindings/python/check_sdist.py"]).path(&sdist).path(root).run()
    }
}

/// Builds the Rust example and returns its program.
pub fn rust_example(root: &Path) -> Result<PathBuf, String> {
    release(root)?;
    Ok(target(root).join("release/dunlin"))
}

/// Builds the C library and the Rust example. In one call with `together` the features of shared dependencies are those of the wheel, and the
/// core is compiled once for all three.
fn release(root: &Path) -> Result<(), String> {
    let packages = ["axlewright-c", "dunlin", "together"].map(|name| ["--package", name]);
    without_paths(root, cargo(root))
        .args(["build", "--quiet", "--release"])
        .args(packages.into_iter().flatten())
        .run()
}

/// The C library, installed under a prefix.
pub struct CLibrary {
    pub prefix: PathBuf,
}

impl CLibrary {
    /// Builds the library and installs it below the target folder.
    pub fn install(root: &Path) -> Result<CLibrary, String> {
        release(root)?;
        let prefix = target(root).join("prefix");
        Call::new(root, "sh")
            .args(["bindings/c/install.sh", "--prefix"])
            .path(&prefix)
            .args(["--target-dir"])
            .path(&target(root))
            .run()?;
        Ok(CLibrary { prefix })
    }

    /// Flags from pkg-config: that of the machine, or that of the environment if the machine has none.
    pub fn flags(&self, root: &Path, python: &Python, wanted: &[&str]) -> Result<Vec<String>, String> {
        let on_machine = std::process::Command::new("pkg-config")
            .arg("--version")
            .output()
            .is_ok_and(|o| o.status.success());
        let call = if on_machine { Call::new(root, "pkg-config") } else { python.tool(root, "pkgconf") };
        let text = call
            .env("PKG_CONFIG_PATH", self.prefix.join("lib/pkgconfig"))
            .args(wanted.iter().copied())
            .args(["axlewright"])
            .output()?;
        Ok(text.split_whitespace().map(str::to_owned).collect())
    }

    /// Compiles and links one C source through pkg-config.
    pub fn compile(&self, root: &Path, python: &Python, source: &Path, program: &Path) -> Result<(), String> {
        let flags = self.flags(root, python, &["--cflags", "--libs"])?;
        let compiler = std::env::var("CC").unwrap_or_else(|_| "cc".into());
        Call::new(root, compiler)
            .args(["-std=c99", "-O2", "-Wall", "-Wextra", "-Werror", "-o"])
            .path(program)
            .path(source)
            .args(flags.iter().map(String::as_str))
            .args([format!("-Wl,-rpath,{}", self.prefix.join("lib").display()).as_str(), "-lm"])
            .run()
    }

    /// The shared library itself.
    pub fn shared(&self) -> PathBuf {
        self.prefix.join("lib/libaxlewright.so")
    }
}
