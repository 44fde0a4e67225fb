//! Outside reference rows, run through the core; and what keeps the surfaces in step.

pub mod assessed;
pub mod attack;
pub mod axles;
pub mod catalogue;
pub mod offers;
pub mod rows;
pub mod sheets;

use axlewright::Table;
use axlewright::units::{Kind, Quantity};
pub use dispatch::{FUNCTIONS, MODELS};

/// Every function and model by its name. `build.rs` makes the list of the core's sources, with bounds as plain numbers.
#[allow(clippy::approx_constant)]
mod dispatch {
    include!(concat!(env!("OUT_DIR"), "/generated.rs"));
}

/// A parameter and what it may be, in coherent SI.
#[derive(Debug)]
pub struct Parameter {
    /// Its name.
    pub name: &'static str,
    /// Its kind of quantity.
    pub kind: &'static Kind,
    /// No less than this.
    pub lower: f64,
    /// True if that is itself too little.
    pub lower_open: bool,
    /// No more than this.
    pub upper: f64,
    /// True if that is itself too much.
    pub upper_open: bool,
    /// A count.
    pub whole: bool,
}

/// One function of the core, callable by its name.
#[derive(Debug)]
pub struct Entry {
    /// `spring.wheel_rate`
    pub name: &'static str,
    /// Names of its arguments, in order.
    pub parameters: &'static [&'static str],
    /// Kinds and ranges of its arguments, in order.
    pub ranges: &'static [Parameter],
    /// Names of its results, in order; the only one is called `value`.
    pub results: &'static [&'static str],
    /// The call, in coherent SI.
    pub call: fn(&[f64]) -> axlewright::Result<Vec<f64>>,
}

/// A result of a row.
#[derive(Debug)]
pub enum Found {
    /// A number in coherent SI, or a whole one.
    Number(f64),
    /// A word.
    Word(String),
}

/// Results by name; the only one is called `value`.
pub type Results = Vec<(&'static str, Found)>;

/// One model of the core, with its methods: those that give a table apart.
#[derive(Debug)]
pub struct Modelled {
    /// `spring.Stack`
    pub name: &'static str,
    /// Reads and checks a document.
    pub read: fn(&str) -> axlewright::Result<()>,
    /// Its methods that take no lists and give no table.
    pub methods: &'static [Method],
    /// Its methods that give a table.
    pub tables: &'static [Tabled],
    /// Results whose meaning says that they may be infinite.
    pub infinite: &'static [&'static str],
}

/// One method of a model, callable by its name.
#[derive(Debug)]
pub struct Method {
    /// `under_load`
    pub name: &'static str,
    /// Names of its arguments, in order.
    pub parameters: &'static [&'static str],
    /// The call on a document, in coherent SI.
    pub call: fn(&str, &[f64]) -> axlewright::Result<Results>,
}

/// One method of a model that gives a table, callable by its name.
#[derive(Debug)]
pub struct Tabled {
    /// `table`
    pub name: &'static str,
    /// Names of its arguments, in order; true for a list.
    pub parameters: &'static [(&'static str, bool)],
    /// The call on a document, in coherent SI; one value for an argument that is no list.
    pub call: fn(&str, &[Vec<f64>]) -> axlewright::Result<Table>,
}

/// Quantities of one kind, from coherent SI.
pub fn quantities<Q: Quantity>(si: &[f64]) -> Vec<Q> {
    si.iter().copied().map(Q::from_si).collect()
}
