//! The build sheet on the C surface: sheet, assessment, what-if and choice. Lists come as tables.

// The header declares things in the order of these modules.
mod document;

mod lines;
mod starter;

mod assess;

mod what_if;

mod choose;
mod progress;

pub use assess::*;
pub use choose::*;
pub use document::*;
pub use lines::*;
pub use progress::*;
pub use starter::*;
pub use what_if::*;
