//! What a quarter car did, row by row.

use crate::base::table::{Column, Table, Values};
use crate::units::{Acceleration, Force, Length, Quantity, Time};
use std::borrow::Cow;

/// One row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moment {
    pub(super) time: f64,
    pub(super) road: f64,
    pub(super) body: f64,
    pub(super) wheel: f64,
    pub(super) body_acceleration: f64,
    pub(super) tyre_load_variation: f64,
    /// Left out of the table of a car that has no stop.
    pub(super) bump_stop_force: f64,
}

/// One column; a function of its own for each, so that it becomes a plain loop.
fn column<Q: Quantity>(moments: &[Moment], name: &'static str, of: impl Fn(&Moment) -> f64) -> Column {
    let values = Values::F64(moments.iter().map(of).collect());
    Column { name: Cow::Borrowed(name), kind: Some(Q::KIND), values }
}

/// The rows as a table, with the force of the stop where there may be one.
pub(super) fn table(moments: &[Moment], with_stop: bool) -> Table {
    let mut columns = vec![
        column::<Time>(moments, "time", |on| on.time),
        column::<Length>(moments, "road_height", |on| on.road),
        column::<Length>(moments, "body_displacement", |on| on.body),
        column::<Length>(moments, "wheel_displacement", |on| on.wheel),
        column::<Length>(moments, "suspension_travel", |on| on.wheel - on.body),
        column::<Acceleration>(moments, "body_acceleration", |on| on.body_acceleration),
        column::<Force>(moments, "tyre_load_variation", |on| on.tyre_load_variation),
    ];
    if with_stop {
        columns.push(column::<Force>(moments, "bump_stop_force", |on| on.bump_stop_force));
    }
    Table::of(columns, moments.len(), Vec::new())
}
