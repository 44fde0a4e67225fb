//! Quantities as text, read and printed as people in a shop write them: `225 lbf/in`, `3 1/2 in`, `12 psi gauge`.
//!
//! ```
//! use axlewright::base::text::{System, parse, print, read};
//! use axlewright::units::{LinearStiffness, Quantity};
//! let rate: LinearStiffness = parse("225 lb/in").unwrap();
//! assert_eq!(print(rate.si(), LinearStiffness::KIND, System::Us), "225 lbf/in");
//! assert!(read("2,5 mm").unwrap_err().to_string().contains("write `2.5`"));
//! ```
//!
//! A text with one meaning is read; a text with two possible meanings is refused, with both named.
//!
//! | written | read as |
//! |---|---|
//! | `1,250 lbf`, `1,250,000 N` | thousands, in groups of three digits; a narrow no-break or thin space does the same |
//! | `2,5 mm`, `1,25 lbf`, `0,250 in` | refused: a decimal comma, or thousands gone wrong |
//! | `1 250 N`, `3-4 mm`, `3 to 5 mm` | refused: two numbers, as when two columns were pasted together; a range |
//! | `3 1/2 in`, `3-1/2 in`, `3½ in` | whole + numerator / denominator; the fraction of a mixed number is below one |
//! | `2'6"`, `2' 6 1/2"`, `2 ft 6 in` | feet and inches (below twelve); its unit is the inch |
//! | `0.75`, `1/2`, `50 %`, `4.10:1`, `3.73 to 1` | a ratio; a bare number is nothing else (`5 to 10` is refused: a range?) |
//! | `3:73`, `1:3.73` | refused: turned around, or a point is missing |
//! | `N m`, `N·m`, `N*m`, `N-m`, `N.m`, `Nm` | one unit; so are `in²`, `in^2`, `in2`, and `lb per in`, `lb/in` |
//! | `lbf_in`, `delta_degF`, `psi_gauge` | the unit's name in code, exactly |
//! | `MPA`, `Lbf/In` | other case, if it names one unit; never where case has a meaning: `mPa`, `nm`, `k`, `T`, `G` |
//! | `10 K` | a temperature; a temperature difference if that is wanted |
//! | `10 °C`, `10 °F` | a temperature, never a difference: that is `delta_degC`, `delta_degF` |
//! | `psi`, `kPa`, `Pa`, `bar` | a stress or pressure difference if that is wanted; else refused: gauge or absolute? |
//! | `psi difference` | a stress or pressure difference, whatever is wanted |
//! | `hp`, `bhp`, `gal`, `qt`, `ton`, `kn`, `1/s` | refused, naming the choices |
//! | `lb` | a mass, not a force (`lbf`); in `lb/in` and `ft-lb` it is a pound-force |
//! | `g` | gram; standard gravity is `g0` |
//! | `225 lbf/in +/- 3 %`, `612 kg ± 2 kg`, `612 ± 2 kg` | a bound: half the width of the band. The share is of the value's size |
//! | `612 kg ± 2 kg sd` | a standard deviation: `sd` at the end, the only way to say it |
//! | `70 °F ± 2 °F`, `15 psi gauge ± 1 psi` | a tolerance is a difference, and may be written in units of one |
//! | `50 % ± 2 %`, `50 % ± 2`, `70 °F ± 3 %`, `612 kg ± 2` | refused: a share of what? |
//!
//! Case-sensitive spellings come first, and the printed symbol comes first if several kinds share one. Numbers are
//! rounded correctly by the standard library. Absolute zero and other limits are left to the functions.

#[cfg(feature = "serde")]
mod near;
mod number;
mod plain;
mod print;
mod read;
mod unit;
#[cfg(feature = "sheet")]
mod wrap;

#[cfg(feature = "serde")]
pub use near::did_you_mean;
#[cfg(feature = "sheet")]
pub(crate) use near::nearest;
#[cfg(feature = "serde")]
pub(crate) use near::{is_near, unknown_key};
#[cfg(feature = "serde")]
pub(crate) use print::is_hidden;
#[cfg(feature = "serde")]
pub(crate) use print::print_as;
pub(crate) use print::{DIGITS, digits_apart, in_shop_units, print_si_to, said, said_in, shop_units};
pub use print::{
    QUOTED, System, print, print_fixed, print_in, print_in_first, print_si, printable, shortened,
};
pub use read::{Form, Reading, Tolerance, parse, read, read_as, unit, value_as};
pub(crate) use read::{is_two_parts, no_share, refusal};
pub(crate) use unit::distance;
pub use unit::symbols;
#[cfg(feature = "sheet")]
#[cfg(feature = "sheet")]
pub use wrap::{columns, wrapped};

#[cfg(test)]
mod tests;
