use super::{
    aluminium_gauge_thickness, sheet_steel_gauge_thickness, stainless_gauge_thickness, tube_gauge_thickness,
};
use crate::base::document::{Model, Value};
use crate::base::valid::whole;
use crate::units::{Length, Ratio, mm};
use crate::{Error, Result, valid};

/// A gauge number of a kind of stock, and its thickness.
///
/// # Formula
/// `t = t(N)`, from the table of the kind of stock
///
/// # Fields
/// - `number` — `N`, gauge number, a whole one
/// - `stock` — kind of stock: `sheet_steel`, `tube`, `aluminium` or `stainless_sheet`; without it the number is refused, for it means another thickness in each
///
/// # Valid for
/// Numbers that the table of the stock has. The thickness is the nominal one: measure the stock.
///
/// # Source
/// Manufacturers' Standard Gauge, Birmingham wire gauge, Brown & Sharpe gauge, US Standard Gauge (from memory); see the functions of this system
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `number` and `stock`"))]
pub struct StockGauge {
    /// Gauge number.
    pub number: Value<Ratio>,
    /// Kind of stock.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stock: Option<GaugedStock>,
}

/// Kind of stock that is ordered by gauge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum GaugedStock {
    /// Uncoated sheet of carbon steel.
    SheetSteel,
    /// Steel tube, round or shaped.
    Tube,
    /// Sheet of aluminium.
    Aluminium,
    /// Sheet of stainless steel.
    StainlessSheet,
}

impl GaugedStock {
    /// All kinds, with their words in a sentence.
    const ALL: [(GaugedStock, &'static str); 4] = [
        (GaugedStock::SheetSteel, "sheet steel"),
        (GaugedStock::Tube, "tube"),
        (GaugedStock::Aluminium, "aluminium"),
        (GaugedStock::StainlessSheet, "stainless sheet"),
    ];

    fn thickness(self, number: Ratio) -> Result<Length> {
        match self {
            GaugedStock::SheetSteel => sheet_steel_gauge_thickness(number),
            GaugedStock::Tube => tube_gauge_thickness(number),
            GaugedStock::Aluminium => aluminium_gauge_thickness(number),
            GaugedStock::StainlessSheet => stainless_gauge_thickness(number),
        }
    }
}

impl crate::base::Sealed for StockGauge {}
impl Model for StockGauge {
    fn check(&self) -> Result<()> {
        self.thickness().map(drop)
    }
}

impl StockGauge {
    /// Thickness of the stock.
    ///
    /// # Returns
    /// The nominal thickness of that number in that kind of stock.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Value, material::*, units::*};
    /// let rail = StockGauge { number: Value::new(Ratio::of::<one>(10.0)), stock: Some(GaugedStock::SheetSteel) };
    /// assert_eq!(format!("{:.3} mm", rail.thickness()?.in_::<mm>()), "3.416 mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn thickness(&self) -> Result<Length> {
        let number = self.number.quantity;
        valid! { number: 0 <= .. <= 36 ; "the tables of the gauges have no other numbers"; }
        whole("number", number)?;
        let Some(stock) = self.stock else {
            let kinds = GaugedStock::ALL.iter().filter_map(|(stock, words)| {
                let thickness = stock.thickness(number).ok()?;
                Some(format!("{:.3} mm in {words}", thickness.in_::<mm>()))
            });
            let kinds: Vec<String> = kinds.collect();
            let message = format!("say which stock: {} is {}", number.si(), kinds.join(", "));
            return Err(Error::document("stock", message));
        };
        stock.thickness(number)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gauge(number: f64, stock: Option<GaugedStock>) -> StockGauge {
        StockGauge { number: Value::new(Ratio::from_si(number)), stock }
    }

    #[test]
    fn a_number_without_its_stock_is_refused_with_every_thickness() {
        let said = gauge(10.0, None).check().unwrap_err().to_string();
        assert_eq!(
            said,
            "stock: say which stock: 10 is 3.416 mm in sheet steel, 3.404 mm in tube, 2.588 mm in aluminium, 3.572 mm in stainless sheet"
        );
        // A number that only some tables have names only those.
        let said = gauge(1.0, None).check().unwrap_err().to_string();
        assert_eq!(said, "stock: say which stock: 1 is 7.620 mm in tube, 7.348 mm in aluminium");
    }

    #[test]
    fn a_greater_number_is_thinner() {
        for (stock, words) in GaugedStock::ALL {
            let all: Vec<f64> = (0..=36)
                .filter_map(|number| gauge(f64::from(number), Some(stock)).thickness().ok())
                .map(Length::si)
                .collect();
            assert!(all.len() >= 28, "{words}");
            assert!(all.is_sorted_by(|thicker, thinner| thicker > thinner), "{words}");
        }
    }
}
