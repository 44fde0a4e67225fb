//! Version of the library, and whether it serves a program.
use crate::entries::AXW_VERSION_NUMBER;
use crate::guard::guard_or;
use std::ffi::c_char;

/// Version of the loaded library, as text that lives as long as the program: "1.2.3". The macro `AXW_VERSION` is the version
/// of the header.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version() -> *const c_char {
    guard_or(std::ptr::null(), || concat!(env!("CARGO_PKG_VERSION"), "\0").as_ptr().cast())
}

/// Version of the loaded library, as a number: major * 1000000 + minor * 1000 + patch.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version_number() -> u32 {
    guard_or(0, || AXW_VERSION_NUMBER)
}

/// True if the loaded library keeps the ABI of the header that the program was compiled with: pass
/// `AXW_VERSION_NUMBER`.
#[unsafe(no_mangle)]
pub extern "C" fn axw_version_fits(header: u32) -> bool {
    guard_or(false, || fits_abi(header, AXW_VERSION_NUMBER))
}

/// True if a library of one version serves a program compiled with the header of another. The major versions are equal, and while
/// they are 0 the minor ones too; the header is not newer than the library.
const fn fits_abi(header: u32, library: u32) -> bool {
    const MAJOR: u32 = 1_000_000;
    const MINOR: u32 = 1000;
    let step = if library < MAJOR { MINOR } else { MAJOR };
    header / step == library / step && header <= library
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_abi_is_kept_within_a_minor_version_of_0_and_within_a_major_one_after_it() {
        for (header, library, fits) in [
            (1_000, 1_000, true),
            (1_000, 1_003, true),
            (1_003, 1_000, false),
            (1_000, 2_000, false),
            (1_000, 1_000_000, false), // 0.1 is not 1.0
            (1_000_000, 1_000, false),
            (1_000_000, 1_004_002, true),
            (1_004_002, 1_004_001, false),
            (1_004_002, 2_000_000, false),
        ] {
            assert_eq!(fits_abi(header, library), fits, "{header} {library}");
        }
    }
}
