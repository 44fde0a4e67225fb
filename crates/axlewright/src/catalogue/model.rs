//! A model as data: its fields and its methods.

use crate::base::work::Slot;
use crate::units::Kind;

/// One model of the core.
#[derive(Debug)]
pub struct OfModel {
    /// `spring.Corner`
    pub path: &'static str,
    /// Summary in one sentence.
    pub summary: &'static str,
    /// The formula; symbols and equations between backticks.
    pub formula: &'static str,
    /// Conditions.
    pub valid_for: &'static str,
    /// Source of the formula.
    pub source: &'static str,
    /// Caution for work that can hurt someone; empty without one.
    pub caution: &'static str,
    /// Its fields, in order.
    pub fields: &'static [Field],
    /// Its methods, in order.
    pub methods: &'static [Method],
}

/// One field of a model.
#[derive(Debug)]
pub struct Field {
    /// Its key in a document.
    pub name: &'static str,
    /// Content.
    pub content: FieldContent,
    /// True if it may be missing.
    pub optional: bool,
    /// True if a document may declare it `none`.
    pub may_be_none: bool,
    /// Meaning.
    pub meaning: &'static str,
}

/// Content of a field.
#[derive(Debug)]
pub enum FieldContent {
    /// A quantity of this kind.
    Quantity(&'static Kind),
    /// One of a few words.
    Choice(&'static [&'static str]),
    /// Free text.
    Text,
    /// A list of tables with these fields.
    List(&'static [Field]),
    /// A table with these fields.
    Table(&'static [Field]),
}

/// One method of a model.
#[derive(Debug)]
pub struct Method {
    /// `at_ride_height`
    pub name: &'static str,
    /// Its result, in one sentence.
    pub summary: &'static str,
    /// Its arguments, in order; true for a list.
    pub inputs: &'static [(Slot, bool)],
    /// Its results, in order.
    pub outputs: &'static [Output],
}

/// One result of a method.
#[derive(Debug)]
pub struct Output {
    /// `bump_remaining`
    pub name: &'static str,
    /// Content.
    pub content: Content,
    /// Meaning.
    pub meaning: &'static str,
}

/// Content of a result.
#[derive(Debug)]
pub enum Content {
    /// A quantity of this kind.
    Quantity(&'static Kind),
    /// One of a few words.
    Choice(&'static [&'static str]),
    /// Free text.
    Text,
    /// A whole number.
    Whole,
    /// A table.
    Table,
}
