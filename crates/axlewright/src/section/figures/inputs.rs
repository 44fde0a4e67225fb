use crate::base::document::Value;
use crate::material::StockGauge;
use crate::units::Length;
use crate::{Error, Result, cannot, valid};

/// A wall as it was bought, and what rust has left of it.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Wall {
    /// Wall as bought.
    pub(in super::super) bought: f64,
    /// Loss from the outside.
    pub(in super::super) outside: f64,
    /// Loss from the inside.
    pub(in super::super) inside: f64,
    /// Wall that remains.
    pub(in super::super) remains: f64,
}

/// Loss of wall or diameter of a hole; none if it is not written.
pub(in super::super) fn or_zero(length: &Option<Value<Length>>) -> Length {
    length.as_ref().map_or(Length::from_si(0.0), |length| length.quantity)
}

impl Wall {
    /// The wall from a thickness or a gauge of a named stock, less what was lost.
    pub(in super::super) fn of(
        wall: &Option<Value<Length>>,
        gauge: &Option<StockGauge>,
        lost_outside: &Option<Value<Length>>,
        lost_inside: &Option<Value<Length>>,
    ) -> Result<Wall> {
        let wall = match (wall, gauge) {
            (Some(wall), None) => wall.quantity,
            (None, Some(gauge)) => gauge.thickness().map_err(|error| error.within("gauge"))?,
            (None, None) => return Err(Error::document("wall", "give wall, or gauge with its stock")),
            (Some(_), Some(_)) => return Err(Error::document("gauge", "give wall or gauge, not both")),
        };
        let (lost_outside, lost_inside) = (or_zero(lost_outside), or_zero(lost_inside));
        valid! {
            wall: 1e-4 <= .. <= 1 ; "plausibility limit: no structural wall is thinner than 0.1 mm or thicker than 1 m";
            lost_outside: 0 <= .. <= 1 ; "definition: a loss is not negative";
            lost_inside: 0 <= .. <= 1 ; "definition: a loss is not negative";
        }
        let (bought, outside, inside) = (wall.si(), lost_outside.si(), lost_inside.si());
        let remains = bought - outside - inside;
        if remains <= 0.0 {
            let lost = lost_outside + lost_inside;
            return Err(cannot!(wall > lost, lost_outside, lost_inside; "is rusted through"));
        }
        Ok(Wall { bought, outside, inside, remains })
    }
}
