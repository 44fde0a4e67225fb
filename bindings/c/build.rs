//! Makes the C entries of the core's functions and models, and gives the shared library its SONAME: for 0.x the ABI changes with the
//! minor version.

use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let part = |name: &str| std::env::var(format!("CARGO_PKG_VERSION_{name}")).unwrap_or_default();
    let (major, minor) = (part("MAJOR"), part("MINOR"));
    let abi = if major == "0" { format!("{major}.{minor}") } else { major };
    if std::env::var("CARGO_CFG_TARGET_OS").as_deref() == Ok("linux") {
        println!("cargo::rustc-cdylib-link-arg=-Wl,-soname,libaxlewright.so.{abi}");
    }
    // Both shared libraries take hypot from the core: see the package `linking`.
    let target = |name: &str| std::env::var(format!("CARGO_CFG_TARGET_{name}")).unwrap_or_default();
    let known = ["x86_64", "aarch64"].contains(&target("ARCH").as_str());
    if (target("OS").as_str(), target("ENV").as_str(), known) == ("linux", "gnu", true) {
        println!("cargo::rustc-cdylib-link-arg=-Wl,--defsym=hypot=axlewright_hypot");
    }
    println!("cargo::rerun-if-changed=build.rs");
    surface::build(surface::c::source)
}
