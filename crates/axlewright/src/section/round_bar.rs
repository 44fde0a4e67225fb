use super::SectionProperties;
use super::figures::{Shape, or_zero};
use super::round_tube::round;
use crate::base::document::{Model, Value};
use crate::units::Length;
use crate::{Result, cannot, valid};

/// A round bar, as bought or rusted, with or without a hole across it.
///
/// # Formula
/// `A = pi R^2`, `I = pi R^4 / 4`, `J = pi R^4 / 2`, `W_t = J / R`, `Z = 4 R^3 / 3`, `A_v = 3 A / 4`; less the metal of the hole
///
/// # Fields
/// - `diameter` — `2 R`, diameter as bought; at a thread, the diameter of its root
/// - `lost_outside` — metal lost to rust, uniform, from the outside; none if left out
/// - `cross_hole` — diameter of a hole drilled across, along z; none if left out
///
/// # Valid for
/// Origin at the centre. Torsion constant and shear centre are those beside the hole. The shear area along y is the share of the diameter that the hole leaves (common practice, no source). At the edge of the hole the stress is about three times as high. A thread, a groove or a shoulder raises the stress, too.
///
/// # Source
/// Closed forms of the circle; Roark, Formulas for Stress and Strain (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RoundBar {
    /// Outside diameter as bought; at a thread, the diameter of its root.
    pub diameter: Value<Length>,
    /// Uniform loss from the outside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Diameter of a hole across the bar, along z; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cross_hole: Option<Value<Length>>,
}

impl crate::base::Sealed for RoundBar {}
impl Model for RoundBar {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl RoundBar {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. All of a bar without a hole are the same about y and z.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let bar = RoundBar { diameter: Value::parse("30 mm")?, lost_outside: None, cross_hole: None }.checked()?;
    /// assert_eq!(format!("{:.2} cm⁴", bar.properties()?.torsion_constant.in_::<cm4>()), "7.95 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let (diameter, lost_outside) = (self.diameter.quantity, or_zero(&self.lost_outside));
        valid! {
            diameter: 1e-4 <= .. <= 10 ; "plausibility limit: no member is thinner than 0.1 mm or thicker than 10 m";
            lost_outside: 0 <= .. <= 10 ; "definition: a loss is not negative";
        }
        let half = diameter / 2.0;
        if lost_outside >= half {
            return Err(cannot!(lost_outside < half, diameter; "leaves nothing of the bar"));
        }
        round(diameter, half.si() - lost_outside.si(), 0.0, or_zero(&self.cross_hole))
    }
}
