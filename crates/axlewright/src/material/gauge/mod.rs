//! Gauge numbers: each kind of stock has its own.

mod aluminium_gauge_thickness;
mod sheet_steel_gauge_thickness;
mod stainless_gauge_thickness;
mod stock_gauge;
mod tube_gauge_thickness;

pub use aluminium_gauge_thickness::aluminium_gauge_thickness;
pub use sheet_steel_gauge_thickness::sheet_steel_gauge_thickness;
pub use stainless_gauge_thickness::stainless_gauge_thickness;
pub use stock_gauge::{GaugedStock, StockGauge};
pub use tube_gauge_thickness::tube_gauge_thickness;

use crate::units::{Length, Ratio};
use crate::{Result, cannot};

/// Thickness from a table of ten-thousandths of an inch, whose first row has this number.
fn listed(first: u32, ten_thousandths: &[u16], number: Ratio) -> Result<Length> {
    // The caller has refused all but whole numbers of the table.
    let row = (number.si() - f64::from(first)) as usize;
    match ten_thousandths.get(row) {
        Some(thickness) => Ok(Length::from_si(f64::from(*thickness) * 254.0 / 1e8)),
        None => Err(cannot!(number; "is not in the table")),
    }
}
