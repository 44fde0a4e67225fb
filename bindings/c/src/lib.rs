//! C ABI of Axlewright: the base of every generated entry.
//!
//! Every entry returns one of the `AXW_` status numbers and writes its outputs only on success. The sentence on a failure,
//! with argument, value and limit, is kept for the calling thread until its next failure. No panic leaves this library.
#![allow(non_camel_case_types, clippy::missing_safety_doc)]

use linking as _;

// The header declares things in the order of these modules.
mod guard;
mod status;
mod version;

mod caller;
mod catalogue;
#[allow(missing_docs, reason = "the comment of a function is also that of its entries for arrays and values")]
mod entries;
mod kept;
mod sheet;
mod table;
mod text;
mod verdict;
mod work;

pub use catalogue::*;
pub use entries::*;
pub use guard::*;
pub use sheet::*;
pub use status::*;
pub use table::*;
pub use text::*;
pub use verdict::*;
pub use version::*;
pub use work::*;
