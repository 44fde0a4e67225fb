//! Makes the kernels and models of the Python module.

fn main() -> Result<(), Box<dyn std::error::Error>> {
    // Both shared libraries take hypot from the core: see the package `linking`.
    let target = |name: &str| std::env::var(format!("CARGO_CFG_TARGET_{name}")).unwrap_or_default();
    let known = ["x86_64", "aarch64"].contains(&target("ARCH").as_str());
    if (target("OS").as_str(), target("ENV").as_str(), known) == ("linux", "gnu", true) {
        println!("cargo::rustc-cdylib-link-arg=-Wl,--defsym=hypot=axlewright_hypot");
    }
    println!("cargo::rerun-if-changed=build.rs");
    surface::build(surface::native::source)
}
