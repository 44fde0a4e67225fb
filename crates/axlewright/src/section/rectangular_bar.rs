use super::SectionProperties;
use super::figures::{Bending, Composite, Pair, Patch, Shape, or_zero, solid_rectangle};
use crate::base::document::{Model, Value};
use crate::units::Length;
use crate::{Result, cannot, valid};

/// A rectangular bar or flat plate, as bought or rusted, with or without a hole.
///
/// # Formula
/// `A = b h`, `I_y = b h^3 / 12`, `W = b h^2 / 6`, `Z = b h^2 / 4`, `A_v = 2 A / 3`, all less the hole; torsion by the series of Saint-Venant
///
/// # Fields
/// - `width` — `b`, width as bought, along y
/// - `height` — `h`, height as bought, along z
/// - `lost_outside` — metal lost to rust, uniform, from each of the four faces; none if left out
/// - `hole` — diameter of a hole through the whole width, along y, at middle height; none if left out
///
/// # Valid for
/// Origin at the centre, sharp edges. Torsion constant and shear centre are those beside the hole. The shear areas are two thirds of what the hole leaves (common practice, no source). At the edge of the hole the stress is about three times as high. A thin plate in compression may buckle before these numbers matter.
///
/// # Source
/// Closed forms; torsion: Saint-Venant, as in Timoshenko and Goodier, Theory of Elasticity (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RectangularBar {
    /// Width as bought, along y.
    pub width: Value<Length>,
    /// Height as bought, along z.
    pub height: Value<Length>,
    /// Uniform loss from each face; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Diameter of a hole through the width, at middle height; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub hole: Option<Value<Length>>,
}

impl crate::base::Sealed for RectangularBar {}
impl Model for RectangularBar {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl RectangularBar {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. Warping of a solid section is left out.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let bar = RectangularBar {
    ///     width: Value::parse("20 mm")?, height: Value::parse("40 mm")?, lost_outside: None, hole: None,
    /// }.checked()?;
    /// assert_eq!(format!("{:.3} cm⁴", bar.properties()?.torsion_constant.in_::<cm4>()), "7.318 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let (width, height, lost_outside, hole) =
            (self.width.quantity, self.height.quantity, or_zero(&self.lost_outside), or_zero(&self.hole));
        valid! {
            width: 1e-4 <= .. <= 10 ; "plausibility limit: no bar is narrower than 0.1 mm or wider than 10 m";
            height: 1e-4 <= .. <= 10 ; "plausibility limit: no bar is lower than 0.1 mm or higher than 10 m";
            lost_outside: 0 <= .. <= 10 ; "definition: a loss is not negative";
            hole: 0 <= .. <= 10 ; "definition: a diameter is not negative";
        }
        let half = if height < width { height / 2.0 } else { width / 2.0 };
        if lost_outside >= half {
            return Err(cannot!(lost_outside < half, width, height; "leaves nothing of the bar"));
        }
        let (b, h) = (width.si() - 2.0 * lost_outside.si(), height.si() - 2.0 * lost_outside.si());
        let remains = Length::from_si(h);
        if hole >= remains {
            return Err(cannot!(hole < remains, height; "leaves nothing of the height"));
        }
        let mut metal = Composite::default();
        if hole.si() > 0.0 {
            for side in [1.0, -1.0] {
                let (near, far) = (side * hole.si() / 2.0, side * h / 2.0);
                metal.patches.push(Patch::metal(-b / 2.0, b / 2.0, near.min(far), near.max(far)));
            }
        } else {
            metal.patches.push(Patch::metal(-b / 2.0, b / 2.0, -h / 2.0, h / 2.0));
        }
        let net = metal.bending();
        let past_hole = Pair { y: net.area / 1.5, z: (b * h / 1.5) * (1.0 - hole.si() / h) };
        Ok(Shape {
            form: "solid",
            bending: Bending { shear_area: past_hole, ..net },
            torsion: solid_rectangle(b, h),
            shear_centre: Pair::ZERO,
            warping: f64::NAN,
        })
    }
}
