//! The kernels of every function, and the models. `build.rs` makes them of the core's sources.
include!(concat!(env!("OUT_DIR"), "/generated.rs"));
