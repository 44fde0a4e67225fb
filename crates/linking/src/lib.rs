//! `hypot` for everything inside a shared library of ours. glibc 2.35 gave the function a new version, and packages that the core uses call it:
//! a library built there would not load on glibc 2.34. The core's own function has the same bits.
//!
//! The build script of a library asks for it: `cargo::rustc-cdylib-link-arg=-Wl,--defsym=hypot=axlewright_hypot`.

#[cfg(all(target_os = "linux", target_env = "gnu", any(target_arch = "x86_64", target_arch = "aarch64")))]
mod own {
    extern "C" fn hypot(x: f64, y: f64) -> f64 {
        axlewright::base::numeric::hypot(x, y)
    }

    // A hidden symbol: a library exports what Rust marks as exported, and this must stay inside.
    #[cfg(target_arch = "x86_64")]
    core::arch::global_asm!(
        ".globl axlewright_hypot",
        ".hidden axlewright_hypot",
        ".type axlewright_hypot, @function",
        "axlewright_hypot:",
        "jmp {}",
        sym hypot,
    );
    #[cfg(target_arch = "aarch64")]
    core::arch::global_asm!(
        ".globl axlewright_hypot",
        ".hidden axlewright_hypot",
        ".type axlewright_hypot, @function",
        "axlewright_hypot:",
        "b {}",
        sym hypot,
    );
}
