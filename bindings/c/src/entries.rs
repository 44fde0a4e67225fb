//! Entries of every function and model. `build.rs` makes them from the core's sources.
include!(concat!(env!("OUT_DIR"), "/generated.rs"));
