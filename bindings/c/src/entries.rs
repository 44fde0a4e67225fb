//! The entries of every function and model. `build.rs` makes them of the core's sources.
include!(concat!(env!("OUT_DIR"), "/generated.rs"));
