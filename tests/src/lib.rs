//! Outside reference rows, run through the core; and what keeps the surfaces in step.

pub mod assessed;
pub mod catalogue;
mod generated;
pub mod offers;
pub mod rows;
pub mod sheets;
pub use generated::FUNCTIONS;

/// One function of the core, callable by its name.
#[derive(Debug)]
pub struct Entry {
    /// `spring.wheel_rate`
    pub name: &'static str,
    /// Names of its arguments, in order.
    pub parameters: &'static [&'static str],
    /// Names of its results, in order; the only one is called `value`.
    pub results: &'static [&'static str],
    /// The call, in coherent SI.
    pub call: fn(&[f64]) -> axlewright::Result<Vec<f64>>,
}
