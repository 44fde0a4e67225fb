//! Kernels of every function, and the models. `build.rs` makes them from the core's sources.
include!(concat!(env!("OUT_DIR"), "/generated.rs"));
