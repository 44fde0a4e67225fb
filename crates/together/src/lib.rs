//! Nothing but the features of its dependencies: see its manifest.
