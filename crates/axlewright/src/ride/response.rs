//! What a quarter car did, column by column.

use crate::base::table::{Column, Table, Values};
use crate::units::{Acceleration, Force, Kind, Length, Quantity, Time};
use std::borrow::Cow;

/// The columns, a value a row.
#[derive(Debug, Default)]
pub(super) struct Motion {
    time: Vec<f64>,
    road: Vec<f64>,
    body: Vec<f64>,
    wheel: Vec<f64>,
    travel: Vec<f64>,
    body_acceleration: Vec<f64>,
    tyre_load_variation: Vec<f64>,
}

impl Motion {
    pub(super) fn with_capacity(rows: usize) -> Self {
        let column = || Vec::with_capacity(rows);
        Self {
            time: column(),
            road: column(),
            body: column(),
            wheel: column(),
            travel: column(),
            body_acceleration: column(),
            tyre_load_variation: column(),
        }
    }

    /// Adds a row: body and wheel are heights.
    #[inline]
    pub(super) fn push(
        &mut self,
        time: f64,
        road: f64,
        [body, wheel]: [f64; 2],
        body_acceleration: f64,
        tyre_load_variation: f64,
    ) {
        self.time.push(time);
        self.road.push(road);
        self.body.push(body);
        self.wheel.push(wheel);
        self.travel.push(wheel - body);
        self.body_acceleration.push(body_acceleration);
        self.tyre_load_variation.push(tyre_load_variation);
    }
}

/// The rows as a table, with the force of the stop where there may be one.
pub(super) fn table(motion: Motion, bump_stop_force: Option<Vec<f64>>) -> Table {
    let rows = motion.time.len();
    let column = |name: &'static str, kind: &'static Kind, values: Vec<f64>| Column {
        name: Cow::Borrowed(name),
        kind: Some(kind),
        values: Values::F64(values),
    };
    let mut columns = vec![
        column("time", Time::KIND, motion.time),
        column("road_height", Length::KIND, motion.road),
        column("body_displacement", Length::KIND, motion.body),
        column("wheel_displacement", Length::KIND, motion.wheel),
        column("suspension_travel", Length::KIND, motion.travel),
        column("body_acceleration", Acceleration::KIND, motion.body_acceleration),
        column("tyre_load_variation", Force::KIND, motion.tyre_load_variation),
    ];
    columns.extend(bump_stop_force.map(|force| column("bump_stop_force", Force::KIND, force)));
    Table::of(columns, rows, Vec::new())
}
