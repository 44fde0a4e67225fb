use super::SectionProperties;
use super::figures::{Bending, CentreLine, Composite, Pair, Patch, Shape, Torsion, Wall, or_zero};
use crate::base::document::{Model, Value};
use crate::material::StockGauge;
use crate::units::Length;
use crate::{Result, cannot, valid};
use core::f64::consts::{FRAC_PI_2, PI};

/// A channel of one wall thickness, as bought or rusted, with or without a hole in its web.
///
/// # Formula
/// Sums over its parts, rounded corners in small steps; thin walls on the centre line for `J = sum b t^3 / 3`, `W_t = J / t`, shear centre and `C_w = sum w^2 t ds` from the sectorial coordinate `w`, without radii `e = 3 b^2 / (6 b + h)` outside the web's centre line; `A_v = I b / Q` at the worst cut
///
/// # Fields
/// - `width` — `B`, outside width of the flanges as bought, along y, from the back of the web
/// - `height` — `H`, outside height as bought, along z
/// - `wall` — `t`, wall thickness; or `gauge` in its place
/// - `gauge` — gauge `number` and `stock`, in place of `wall`: a number without its stock is refused
/// - `corner_radius` — `R`, outside radius of both bends as bought; 0 for a sharp corner, as of a rolled channel. Folded sheet has about two walls: measure it
/// - `lost_outside` — wall lost to rust, uniform, from the outside and from the edges of the toes; none if left out
/// - `lost_inside` — wall lost to rust, uniform, from the inside; none if left out
/// - `web_hole` — diameter of a hole in the web, at middle height; none if left out
///
/// # Valid for
/// Origin at the outside of the web as bought, at middle height. The flanges are parallel and as thick as the web: a channel with tapered flanges is not covered. A load that does not pass through the shear centre twists the channel; its open section resists twist hardly at all, until its ends are kept from warping. Torsion constant and shear centre are those beside the hole; the shear area along z is the share of the height that it leaves (common practice, no source). Frames of 10 gauge sheet steel: common practice, no source.
///
/// # Source
/// Closed forms of thin walls: Vlasov, as in Roark, Formulas for Stress and Strain (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Channel {
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
    /// Uniform loss from the outside and from the toes; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Uniform loss of wall from the inside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_inside: Option<Value<Length>>,
    /// Diameter of a hole in the web, at middle height; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub web_hole: Option<Value<Length>>,
}

impl crate::base::Sealed for Channel {}
impl Model for Channel {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl Channel {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. The ends are free to warp; held ends make it stiffer, by the warping constant.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let rail = Channel {
    ///     width: Value::parse("50 mm")?, height: Value::parse("100 mm")?, wall: Some(Value::parse("3 mm")?), gauge: None,
    ///     corner_radius: Value::parse("0 mm")?, lost_outside: None, lost_inside: None, web_hole: None,
    /// }.checked()?;
    /// let on = rail.properties()?;
    /// assert_eq!(format!("{:.1} mm, {:.3} cm⁴", on.shear_centre_y.in_::<mm>(), on.torsion_constant.in_::<cm4>()), "-16.7 mm, 0.175 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let web_hole = or_zero(&self.web_hole);
        let wall = Wall::of(&self.wall, &self.gauge, &self.lost_outside, &self.lost_inside)?;
        let mut folded =
            Folded::of(self.width.quantity, self.height.quantity, self.corner_radius.quantity, wall)?;
        folded.toe -= wall.outside;
        let t = wall.remains;
        let (mut metal, flat) = folded.metal();
        let flat = Length::from_si(flat);
        valid! { web_hole: 0 <= .. <= 10 ; "definition: a diameter is not negative"; }
        if web_hole > flat {
            return Err(cannot!(web_hole <= flat; "does not fit between the corners of the web"));
        }
        let whole = metal.bending();
        if web_hole.si() > 0.0 {
            let half = web_hole.si() / 2.0;
            metal.patches.push(Patch::metal(folded.back, folded.back + t, -half, half).gone());
        }
        let line = folded.centre_line();
        let (shear_centre, warping) = line.warping(t);
        // A hole in the web takes its share of the height from the shear along z.
        let past_hole =
            Pair { z: whole.shear_area.z * (1.0 - web_hole.si() / folded.height), ..whole.shear_area };
        Ok(Shape {
            form: "open",
            bending: Bending { shear_area: past_hole, ..metal.bending() },
            torsion: Torsion::open(&[(line.length(), t)]),
            shear_centre: Pair { y: shear_centre.y, z: 0.0 },
            warping,
        })
    }
}

/// A folded channel of which rust may have taken its share: what a channel and a boxed one have in common.
pub(super) struct Folded {
    /// Outside of the web.
    pub(super) back: f64,
    /// Edge of the flanges.
    pub(super) toe: f64,
    /// Outside height.
    pub(super) height: f64,
    /// Outside radius of the bends.
    pub(super) radius: f64,
    wall: f64,
}

impl Folded {
    pub(super) fn of(width: Length, height: Length, corner_radius: Length, wall: Wall) -> Result<Folded> {
        valid! {
            width: 1e-3 <= .. <= 10 ; "plausibility limit: no channel is narrower than 1 mm or wider than 10 m";
            height: 1e-3 <= .. <= 10 ; "plausibility limit: no channel is lower than 1 mm or higher than 10 m";
            corner_radius: 0 <= .. <= 5 ; "definition: a radius is not negative";
        }
        let (bought, half) = (wall, height / 2.0);
        let wall = Length::from_si(bought.bought);
        if wall >= half {
            return Err(cannot!(wall < half, height; "is more than half of the height"));
        }
        if wall >= width {
            return Err(cannot!(wall < width; "leaves no flange"));
        }
        if corner_radius > half {
            return Err(cannot!(corner_radius <= half, height; "is more than half of the height"));
        }
        if corner_radius > width {
            return Err(cannot!(corner_radius <= width; "is more than the width of the flanges"));
        }
        let folded = Folded {
            back: bought.outside,
            toe: width.si(),
            height: height.si() - 2.0 * bought.outside,
            radius: (corner_radius.si() - bought.outside).max(0.0),
            wall: bought.remains,
        };
        let (lost, flange) = (Length::from_si(bought.outside), width / 2.0);
        if folded.toe - bought.outside <= folded.back + folded.radius.max(folded.wall) {
            return Err(
                cannot!(lost < flange, width, corner_radius; "of wall leaves no flange beyond the bend"),
            );
        }
        Ok(folded)
    }

    /// The centre line from toe to toe.
    fn centre_line(&self) -> CentreLine {
        let web = self.back + self.wall / 2.0;
        let (flange, mean_radius) = ((self.height - self.wall) / 2.0, self.radius - self.wall / 2.0);
        let mut line = CentreLine::default();
        line.to(self.toe, flange);
        if mean_radius > 0.0 {
            let (y, z) = (web + mean_radius, flange - mean_radius);
            line.bend(Pair { y, z }, mean_radius, FRAC_PI_2);
            line.bend(Pair { y, z: -z }, mean_radius, PI);
        } else {
            line.to(web, flange);
            line.to(web, -flange);
        }
        line.to(self.toe, -flange);
        line
    }

    /// Web, flanges and bends, and the height of the web between the bends.
    pub(super) fn metal(&self) -> (Composite, f64) {
        let Folded { back, toe, height, radius, wall } = *self;
        let mut metal = Composite::default();
        let corner = radius.max(wall);
        let flat = height / 2.0 - corner;
        let mut add = |left: f64, right: f64, low: f64, high: f64| {
            if right > left && high > low {
                metal.patches.push(Patch::metal(left, right, low, high));
            }
        };
        add(back, back + wall, -flat, flat);
        for side in [1.0, -1.0] {
            let mut at = |left: f64, right: f64, inner: f64, outer: f64| {
                let (one, other) = (side * inner, side * outer);
                add(left, right, one.min(other), one.max(other));
            };
            at(back + radius, toe, height / 2.0 - wall, height / 2.0);
            // A bend that is sharp inside.
            at(back, back + radius, flat, height / 2.0 - radius);
        }
        if radius > 0.0 {
            for side in [1.0, -1.0] {
                let centre = Pair { y: back + radius, z: side * (height / 2.0 - radius) };
                metal.quarter_ring(centre, radius, (radius - wall).max(0.0), Pair { y: -1.0, z: side });
            }
        }
        (metal, 2.0 * flat)
    }
}
