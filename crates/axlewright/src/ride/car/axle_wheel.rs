use super::vehicle::Corner;
use crate::base::document::Value;
use crate::ride::solution::linear::Tyre;
use crate::units::{Damping, LinearStiffness, Mass};
use crate::{Result, valid};

/// Masses, rates and damping at one wheel of an axle, left and right alike.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `unsprung_mass`, `wheel_rate`, `wheel_damping`, `tyre_rate` and, if known, `tyre_damping`"
    )
)]
pub struct AxleWheel {
    /// Unsprung mass of one wheel.
    pub unsprung_mass: Value<Mass>,
    /// Wheel rate of the suspension at one wheel, without the tyre.
    pub wheel_rate: Value<LinearStiffness>,
    /// Damping rate at one wheel.
    pub wheel_damping: Value<Damping>,
    /// Vertical rate of one tyre.
    pub tyre_rate: Value<LinearStiffness>,
    /// Damping of one tyre; 0 if missing.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tyre_damping: Option<Value<Damping>>,
}

impl AxleWheel {
    /// Refuses impossible values, by the name of the axle and the field.
    pub(super) fn check(&self, axle: &str) -> Result<()> {
        self.ranges().map_err(|error| error.within(axle))
    }

    fn ranges(&self) -> Result<()> {
        let unsprung_mass = self.unsprung_mass.quantity;
        let (wheel_rate, tyre_rate) = (self.wheel_rate.quantity, self.tyre_rate.quantity);
        let wheel_damping = self.wheel_damping.quantity;
        let tyre_damping = Damping::from_si(self.corner(1.0).tyre.damping);
        valid! {
            unsprung_mass: 0.001 <= .. <= 1000000 ; "plausibility limit: no wheel weighs 1000 t";
            wheel_rate: 1 <= .. <= 1e9 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
            wheel_damping: 0 <= .. <= 1e8 ; "definition: a damper takes energy; plausibility limit: up to 1e8 N·s/m";
            tyre_rate: 1 <= .. <= 1e9 ; "plausibility limit: rates lie between 1 N/m and 1 GN/m";
            tyre_damping: 0 <= .. <= 1e8 ; "definition: a damper takes energy; plausibility limit: up to 1e8 N·s/m";
        }
        Ok(())
    }

    /// This many such wheels together.
    pub(super) fn corner(&self, wheels: f64) -> Corner {
        Corner {
            unsprung_mass: wheels * self.unsprung_mass.quantity.si(),
            wheel_rate: wheels * self.wheel_rate.quantity.si(),
            wheel_damping: wheels * self.wheel_damping.quantity.si(),
            tyre: Tyre {
                rate: wheels * self.tyre_rate.quantity.si(),
                damping: wheels * self.tyre_damping.as_ref().map_or(0.0, |on| on.quantity.si()),
            },
        }
    }

    /// Wheel rate and tyre rate in series.
    pub(super) fn ride_rate(&self) -> Result<LinearStiffness> {
        crate::spring::ride_rate(self.wheel_rate.quantity, self.tyre_rate.quantity)
    }
}
