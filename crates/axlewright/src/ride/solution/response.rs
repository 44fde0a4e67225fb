//! Response of a quarter car, column by column.

use crate::base::table::{Column, Field, Table};
use crate::units::{Acceleration, Force, Length, Time};

/// The columns, a value a row.
#[derive(Debug, Default)]
pub(in crate::ride) struct Motion {
    time: Vec<f64>,
    road: Vec<f64>,
    body: Vec<f64>,
    wheel: Vec<f64>,
    travel: Vec<f64>,
    body_acceleration: Vec<f64>,
    tyre_load_variation: Vec<f64>,
}

impl Motion {
    pub(in crate::ride) fn with_capacity(rows: usize) -> Self {
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

    /// Adds a row; body and wheel are heights.
    #[inline]
    pub(in crate::ride) fn push(
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

/// Rows as a table, with more columns of the same length.
pub(in crate::ride) fn table(motion: Motion, more: Vec<Column>) -> Table {
    let rows = motion.time.len();
    let mut columns = vec![
        Time::column("time").with(motion.time),
        Length::column("road_height").with(motion.road),
        Length::column("body_displacement").with(motion.body),
        Length::column("wheel_displacement").with(motion.wheel),
        Length::column("suspension_travel").with(motion.travel),
        Acceleration::column("body_acceleration").with(motion.body_acceleration),
        Force::column("tyre_load_variation").with(motion.tyre_load_variation),
    ];
    columns.extend(more);
    Table::of(columns, rows, Vec::new())
}
