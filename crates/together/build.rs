//! Nothing to do: the manifest says what this package is for.

fn main() {}
