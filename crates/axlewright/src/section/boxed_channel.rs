use super::SectionProperties;
use super::channel::Folded;
use super::figures::{Bending, Pair, Patch, Shape, Torsion, Wall};
use crate::base::document::{Model, Value};
use crate::material::StockGauge;
use crate::units::Length;
use crate::{Result, cannot, valid};
use core::f64::consts::PI;

/// A channel that is boxed by a plate over its toes, as bought or rusted.
///
/// # Formula
/// Sums over its parts, rounded corners in small steps; thin walls on the centre line for the Bredt formula `J = 4 A_m^2 / sum(s / t)`, `W_t = 2 A_m t` of the thinnest wall, and for the flow of shear, which gives the shear centre
///
/// # Fields
/// - `width` — `B`, outside width of the flanges as bought, along y, from the back of the web
/// - `height` — `H`, outside height as bought, along z
/// - `wall` — `t`, wall thickness; or `gauge` in its place
/// - `gauge` — gauge `number` and `stock`, in place of `wall`: a number without its stock is refused
/// - `corner_radius` — `R`, outside radius of both bends as bought; 0 for a sharp corner, as of a rolled channel. Folded sheet has about two walls: measure it
/// - `plate` — thickness of the plate over the toes, which is as high as the channel
/// - `lost_outside` — wall and plate lost to rust, uniform, from the outside; none if left out
/// - `lost_inside` — wall and plate lost to rust, uniform, from the inside; none if left out
///
/// # Valid for
/// Origin at the outside of the web as bought, at middle height. The seams are welded all along: with stitches between gaps the section is neither closed nor open, and no number here holds. A boxed rail traps water: drain it and protect it inside.
///
/// # Source
/// Bredt; shear flow of a closed thin-walled section, as in Roark, Formulas for Stress and Strain (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BoxedChannel {
    /// Outside width of the flanges as bought, along y, from the back of the web.
    pub width: Value<Length>,
    /// Outside height as bought, along z.
    pub height: Value<Length>,
    /// Wall thickness.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall: Option<Value<Length>>,
    /// Gauge of the stock, in place of the wall.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<StockGauge>,
    /// Outside radius of both bends as bought.
    pub corner_radius: Value<Length>,
    /// Thickness of the plate over the toes.
    pub plate: Value<Length>,
    /// Uniform loss of wall and plate from the outside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Uniform loss of wall and plate from the inside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_inside: Option<Value<Length>>,
}

impl crate::base::Sealed for BoxedChannel {}
impl Model for BoxedChannel {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl BoxedChannel {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. Warping of a closed section is left out: it is stiffer for it.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let rail = BoxedChannel {
    ///     width: Value::parse("50 mm")?, height: Value::parse("100 mm")?, wall: Some(Value::parse("3 mm")?), gauge: None,
    ///     corner_radius: Value::parse("0 mm")?, plate: Value::parse("3 mm")?, lost_outside: None, lost_inside: None,
    /// }.checked()?;
    /// let on = rail.properties()?;
    /// assert_eq!(format!("{:.1} cm⁴", on.torsion_constant.in_::<cm4>()), "96.0 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let plate = self.plate.quantity;
        valid! { plate: 1e-4 <= .. <= 1 ; "plausibility limit: no plate is thinner than 0.1 mm or thicker than 1 m"; }
        let wall = Wall::of(&self.wall, &self.gauge, &self.lost_outside, &self.lost_inside)?;
        let folded =
            Folded::of(self.width.quantity, self.height.quantity, self.corner_radius.quantity, wall)?;
        let lost = Length::from_si(wall.outside + wall.inside);
        if plate <= lost {
            return Err(cannot!(plate > lost; "is rusted through"));
        }
        let (near, far) = (folded.toe + wall.inside, folded.toe + plate.si() - wall.outside);
        let (mut metal, _) = folded.metal();
        // The flanges reach the plate, whose inside has rusted between them.
        let half = folded.height / 2.0;
        for side in [1.0, -1.0] {
            let (inner, outer) = (side * (half - wall.remains), side * half);
            if near > folded.toe {
                metal.patches.push(Patch::metal(folded.toe, near, inner.min(outer), inner.max(outer)));
            }
        }
        metal.patches.push(Patch::metal(near, far, -half, half));
        let cell = Cell {
            left: folded.back + wall.remains / 2.0,
            b: (near + far) / 2.0 - folded.back - wall.remains / 2.0,
            h: folded.height - wall.remains,
            wall: wall.remains,
            plate: far - near,
            mean_radius: (folded.radius - wall.remains / 2.0).max(0.0),
        };
        let plain = metal.bending();
        let (shear_area, shear_centre) = cell.sheared(plain.second.y);
        let bending = Bending { shear_area: Pair { z: shear_area, ..plain.shear_area }, ..plain };
        Ok(Shape {
            form: "closed",
            bending,
            torsion: cell.torsion(),
            shear_centre: Pair { y: shear_centre, z: 0.0 },
            warping: f64::NAN,
        })
    }
}

/// The centre line of a boxed channel.
struct Cell {
    /// Place of the web.
    left: f64,
    /// From web to plate.
    b: f64,
    /// From flange to flange.
    h: f64,
    /// Wall of web and flanges.
    wall: f64,
    plate: f64,
    /// Mean radius of both bends.
    mean_radius: f64,
}

impl Cell {
    /// Lengths over thicknesses, all around.
    fn around(&self) -> f64 {
        self.h / self.wall + 2.0 * self.b / self.wall + self.h / self.plate
    }

    fn torsion(&self) -> Torsion {
        let enclosed = self.b * self.h - 2.0 * (1.0 - PI / 4.0) * self.mean_radius.powi(2);
        Torsion {
            constant: 4.0 * enclosed * enclosed / self.around(),
            modulus: 2.0 * enclosed * self.wall.min(self.plate),
        }
    }

    /// Force along z over its peak shear stress, and the place of the shear centre: the flow of a force that does not twist the cell.
    fn sheared(&self, second_moment: f64) -> (f64, f64) {
        let Cell { b, h, wall, plate, .. } = *self;
        let thin = (wall + plate) * h.powi(3) / 12.0 + wall * b * h * h / 2.0;
        let each = 1.0 / thin;
        // First moment of the upper half, and the flow at middle height of web and plate.
        let first = wall * h * h / 8.0 + wall * b * h / 2.0 + plate * h * h / 8.0;
        let web = each * (h * h * b / 4.0 + h * b * b / 2.0 + first * h / plate) / self.around();
        let other = each * first - web;
        let on_plate = other * h - each * plate * h.powi(3) / 24.0;
        let on_flange = (web - each * wall * h * h / 8.0) * b - each * wall * h * b * b / 4.0;
        let peak = (web / wall).max(other / plate);
        (second_moment / (peak * thin), self.left + on_plate * b - on_flange * h)
    }
}
