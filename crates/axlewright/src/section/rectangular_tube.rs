use super::SectionProperties;
use super::figures::{Bending, Pair, Shape, Torsion, Wall, or_zero};
use crate::base::document::{Model, Value};
use crate::material::StockGauge;
use crate::units::Length;
use crate::{Result, cannot, valid};
use core::f64::consts::PI;

/// A square or rectangular tube, as bought or rusted, with or without holes.
///
/// # Formula
/// Outer rounded rectangle less the inner one, less the holes; torsion `J = p t^3 / 3 + 4 A_m^2 t / p`, `W_t = J / (t + 2 A_m / p)` with `A_m` enclosed by the centre line of the wall and its length `p`; `A_v = 2 I t / Q`
///
/// # Fields
/// - `width` — `B`, outside width as bought, along y
/// - `height` — `H`, outside height as bought, along z
/// - `wall` — `t`, wall thickness; or `gauge` in its place
/// - `gauge` — gauge `number` and `stock`, in place of `wall`: a number without its stock is refused
/// - `corner_radius` — `R`, outside radius of the corners as bought; 0 for a sharp corner. Measure it: formed tube has between 1.6 and 3 walls (EN 10219-2, ASTM A500, from memory)
/// - `lost_outside` — wall lost to rust, uniform, from the outside; none if left out
/// - `lost_inside` — wall lost to rust, uniform, from the inside; none if left out
/// - `side_hole` — diameter of a hole through both sides, along y, at middle height; none if left out
/// - `top_hole` — diameter of a hole through top and bottom, along z, at middle width; none if left out
///
/// # Valid for
/// Origin at the centre. Torsion constant and shear centre are those beside the holes. Shear areas count the share of the side that a hole leaves (common practice, no source). At the edge of a hole the stress is about three times as high. The torsion constant of a sharp-cornered 100 x 50 x 3 tube is 1.7 % below a finite-element solution.
///
/// # Source
/// Closed forms; torsion: EN 10219-2 annex (from memory), the Bredt formula and the wall by itself
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RectangularTube {
    /// Outside width as bought, along y.
    pub width: Value<Length>,
    /// Outside height as bought, along z.
    pub height: Value<Length>,
    /// Wall thickness.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall: Option<Value<Length>>,
    /// Gauge of the stock, in place of the wall.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<StockGauge>,
    /// Outside radius of the corners as bought.
    pub corner_radius: Value<Length>,
    /// Uniform loss of wall from the outside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Uniform loss of wall from the inside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_inside: Option<Value<Length>>,
    /// Diameter of a hole through both sides, at middle height; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub side_hole: Option<Value<Length>>,
    /// Diameter of a hole through top and bottom, at middle width; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub top_hole: Option<Value<Length>>,
}

impl crate::base::Sealed for RectangularTube {}
impl Model for RectangularTube {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl RectangularTube {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. Warping of a closed section is left out: it is stiffer for it.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let rail = RectangularTube {
    ///     width: Value::parse("50 mm")?, height: Value::parse("100 mm")?, wall: Some(Value::parse("3 mm")?), gauge: None,
    ///     corner_radius: Value::parse("6 mm")?, lost_outside: None, lost_inside: None, side_hole: None, top_hole: None,
    /// }.checked()?;
    /// let on = rail.properties()?;
    /// assert_eq!(format!("{:.1} cm⁴, {:.1} cm⁴", on.second_moment_y.in_::<cm4>(), on.torsion_constant.in_::<cm4>()), "106.5 cm⁴, 88.6 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let (width, height, corner_radius) =
            (self.width.quantity, self.height.quantity, self.corner_radius.quantity);
        valid! {
            width: 1e-3 <= .. <= 10 ; "plausibility limit: no tube is narrower than 1 mm or wider than 10 m";
            height: 1e-3 <= .. <= 10 ; "plausibility limit: no tube is lower than 1 mm or higher than 10 m";
            corner_radius: 0 <= .. <= 5 ; "definition: a radius is not negative";
        }
        let bought = Wall::of(&self.wall, &self.gauge, &self.lost_outside, &self.lost_inside)?;
        let (wall, half) =
            (Length::from_si(bought.bought), if height < width { height / 2.0 } else { width / 2.0 });
        if wall >= half {
            return Err(cannot!(wall < half, width, height; "is more than half of the narrower side"));
        }
        if corner_radius > half {
            return Err(
                cannot!(corner_radius <= half, width, height; "is more than half of the narrower side"),
            );
        }
        let (wall, loss) = (bought.remains, bought.outside);
        let (b, h) = (width.si() - 2.0 * loss, height.si() - 2.0 * loss);
        let radius = (corner_radius.si() - loss).max(0.0);
        let inner_radius = (corner_radius.si() - bought.bought).max(0.0) + bought.inside;
        let (side_hole, top_hole) = (or_zero(&self.side_hole), or_zero(&self.top_hole));
        let (side, top) = (
            Length::from_si(h - 2.0 * radius.max(wall + inner_radius)),
            Length::from_si(b - 2.0 * radius.max(wall + inner_radius)),
        );
        valid! {
            side_hole: 0 <= .. <= 10 ; "definition: a diameter is not negative";
            top_hole: 0 <= .. <= 10 ; "definition: a diameter is not negative";
        }
        if side_hole > side {
            return Err(cannot!(side_hole <= side, height; "does not fit between the corners of a side"));
        }
        if top_hole > top {
            return Err(cannot!(top_hole <= top, width; "does not fit between the corners of the top"));
        }
        let outer = (Half::of(b, h, radius), Half::of(h, b, radius));
        let (bi, hi) = (b - 2.0 * wall, h - 2.0 * wall);
        let inner = (Half::of(bi, hi, inner_radius), Half::of(hi, bi, inner_radius));
        let (ds, dt) = (side_hole.si(), top_hole.si());
        let walls = (outer.0.less(&inner.0), outer.1.less(&inner.1));
        let (y, z) = (walls.0.less(&drilled(wall, h, ds, dt)), walls.1.less(&drilled(wall, b, dt, ds)));
        // Shear along z passes the holes in the sides; those in top and bottom only take from the moments.
        let (past_sides, past_top) =
            (walls.0.less(&drilled(wall, h, 0.0, dt)), walls.1.less(&drilled(wall, b, 0.0, ds)));
        let sheared =
            |half: &Half, hole: f64, side: f64| half.second * 2.0 * wall / half.first * (1.0 - hole / side);
        let second = Pair { y: y.second, z: z.second };
        let bending = Bending {
            area: y.area,
            centroid: Pair::ZERO,
            second,
            product: 0.0,
            elastic: Pair { y: 2.0 * second.y / h, z: 2.0 * second.z / b },
            plastic: Pair { y: 2.0 * y.first, z: 2.0 * z.first },
            shear_area: Pair { y: sheared(&past_top, dt, b), z: sheared(&past_sides, ds, h) },
        };
        let mean_radius = (radius + inner_radius) / 2.0;
        let (across, up) = (b - wall, h - wall);
        let around = 2.0 * (across + up) - 2.0 * mean_radius * (4.0 - PI);
        let enclosed = across * up - mean_radius * mean_radius * (4.0 - PI);
        let bredt = 4.0 * enclosed * enclosed * wall / around;
        let constant = around * wall.powi(3) / 3.0 + bredt;
        Ok(Shape {
            form: "closed",
            bending,
            torsion: Torsion { constant, modulus: constant / (wall + 2.0 * enclosed / around) },
            shear_centre: Pair::ZERO,
            warping: f64::NAN,
        })
    }
}

/// Area, second moment about the middle, and first moment of the upper half, of a figure that is symmetric about both axes.
struct Half {
    area: f64,
    second: f64,
    first: f64,
}

impl Half {
    /// A rectangle with rounded corners.
    fn of(width: f64, height: f64, radius: f64) -> Half {
        // The metal that a rounded corner lacks, about the height of its centre.
        let lacks = (
            (1.0 - PI / 4.0) * radius.powi(2),
            radius.powi(3) / 6.0,
            (1.0 / 3.0 - PI / 16.0) * radius.powi(4),
        );
        let centre = height / 2.0 - radius;
        Half {
            area: width * height - 4.0 * lacks.0,
            second: width * height.powi(3) / 12.0
                - 4.0 * (centre * centre * lacks.0 + 2.0 * centre * lacks.1 + lacks.2),
            first: width * height * height / 8.0 - 2.0 * (centre * lacks.0 + lacks.1),
        }
    }

    fn less(&self, other: &Half) -> Half {
        Half {
            area: self.area - other.area,
            second: self.second - other.second,
            first: self.first - other.first,
        }
    }
}

/// Metal of a hole through both sides and of one through top and bottom.
fn drilled(wall: f64, height: f64, side: f64, top: f64) -> Half {
    let (outside, inside) = (height / 2.0, height / 2.0 - wall);
    Half {
        area: 2.0 * wall * (side + top),
        second: 2.0 * (wall * side.powi(3) / 12.0 + top * (outside.powi(3) - inside.powi(3)) / 3.0),
        first: wall * side * side / 4.0 + top * (outside * outside - inside * inside) / 2.0,
    }
}
