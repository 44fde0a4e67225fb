//! What a quarter car did, row by row.

use crate::base::table::{Cell, Rows};
use crate::units::{Acceleration, Force, Length, Quantity, Time};

/// One row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moment {
    pub(super) time: f64,
    pub(super) road: f64,
    pub(super) body: f64,
    pub(super) wheel: f64,
    pub(super) body_acceleration: f64,
    pub(super) tyre_load_variation: f64,
}

impl Moment {
    pub(super) fn columns() -> Rows {
        Rows::new()
            .quantity::<Time>("time")
            .quantity::<Length>("road_height")
            .quantity::<Length>("body_displacement")
            .quantity::<Length>("wheel_displacement")
            .quantity::<Length>("suspension_travel")
            .quantity::<Acceleration>("body_acceleration")
            .quantity::<Force>("tyre_load_variation")
    }
    pub(super) fn cells(&self) -> [Cell<'static>; 6] {
        [
            Cell::Number(self.road),
            Cell::Number(self.body),
            Cell::Number(self.wheel),
            Cell::Number(self.wheel - self.body),
            Cell::Number(self.body_acceleration),
            Cell::Number(self.tyre_load_variation),
        ]
    }
    pub(super) fn time(&self) -> Cell<'static> {
        Cell::from(Time::from_si(self.time))
    }
}
