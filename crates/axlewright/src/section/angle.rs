use super::SectionProperties;
use super::figures::{Bending, Composite, Pair, Patch, Shape, Torsion, Wall};
use crate::base::document::{Model, Value};
use crate::material::StockGauge;
use crate::units::Length;
use crate::{Result, cannot, valid};
use core::f64::consts::FRAC_PI_2;

/// An angle of one wall thickness, as bought or rusted.
///
/// # Formula
/// Sums over its parts, a rounded corner in small steps; thin walls on the centre line for `J = sum b t^3 / 3`, `W_t = J / t`, the shear centre where the legs meet, `C_w = t^3 (a^3 + b^3) / 36`, and the flow of shear under unsymmetric bending
///
/// # Fields
/// - `width` — `B`, outside width of the leg along y, as bought
/// - `height` — `H`, outside height of the leg along z, as bought
/// - `wall` — `t`, wall thickness; or `gauge` in its place
/// - `gauge` — gauge `number` and `stock`, in place of `wall`: a number without its stock is refused
/// - `corner_radius` — `R`, outside radius of the heel as bought; 0 for a sharp corner, as of a rolled angle
/// - `lost_outside` — wall lost to rust, uniform, from the outside and from the edges of the toes; none if left out
/// - `lost_inside` — wall lost to rust, uniform, from the inside; none if left out
///
/// # Valid for
/// Origin at the heel as bought, legs along y and z. Under a load along z the angle bends sideways, too: the section moduli count that. The fillet of a rolled angle adds a little and is left out. Bolted by one leg, an angle bears less: the load is off its centroid.
///
/// # Source
/// Closed forms of thin walls, as in Roark, Formulas for Stress and Strain (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct AngleSection {
    /// Outside width of the leg along y, as bought.
    pub width: Value<Length>,
    /// Outside height of the leg along z, as bought.
    pub height: Value<Length>,
    /// Wall thickness.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall: Option<Value<Length>>,
    /// Gauge of the stock, in place of the wall.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<StockGauge>,
    /// Outside radius of the heel as bought.
    pub corner_radius: Value<Length>,
    /// Uniform loss from the outside and from the toes; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Uniform loss of wall from the inside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_inside: Option<Value<Length>>,
}

impl crate::base::Sealed for AngleSection {}
impl Model for AngleSection {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl AngleSection {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. The ends are free to warp.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let angle = AngleSection {
    ///     width: Value::parse("50 mm")?, height: Value::parse("50 mm")?, wall: Some(Value::parse("5 mm")?), gauge: None,
    ///     corner_radius: Value::parse("0 mm")?, lost_outside: None, lost_inside: None,
    /// }.checked()?;
    /// let on = angle.properties()?;
    /// assert_eq!(format!("{:.1} mm, {:.2} cm⁴", on.centroid_y.in_::<mm>(), on.minor_second_moment.in_::<cm4>()), "14.3 mm, 4.59 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let (width, height, corner_radius) =
            (self.width.quantity, self.height.quantity, self.corner_radius.quantity);
        valid! {
            width: 1e-3 <= .. <= 10 ; "plausibility limit: no leg is shorter than 1 mm or longer than 10 m";
            height: 1e-3 <= .. <= 10 ; "plausibility limit: no leg is shorter than 1 mm or longer than 10 m";
            corner_radius: 0 <= .. <= 5 ; "definition: a radius is not negative";
        }
        let bought = Wall::of(&self.wall, &self.gauge, &self.lost_outside, &self.lost_inside)?;
        let (wall, shorter) = (Length::from_si(bought.bought), if height < width { height } else { width });
        let half = shorter / 2.0;
        if wall >= half {
            return Err(cannot!(wall < half, width, height; "is more than half of the shorter leg"));
        }
        let (t, loss) = (bought.remains, bought.outside);
        let radius = (corner_radius.si() - loss).max(0.0);
        let longest = Length::from_si(shorter.si() - loss);
        if corner_radius >= longest || shorter.si() - 2.0 * loss <= t {
            return Err(cannot!(corner_radius < longest, width, height; "leaves no leg beyond the bend"));
        }
        let (right, top) = (width.si() - loss, height.si() - loss);
        let corner = radius.max(t);
        let mut metal = Composite::default();
        let mut add = |left: f64, right: f64, low: f64, high: f64| {
            if right > left && high > low {
                metal.patches.push(Patch::metal(left, right, low, high));
            }
        };
        add(loss + radius, right, loss, loss + t);
        add(loss, loss + t, loss + corner, top);
        // A bend that is sharp inside.
        add(loss, loss + radius, loss + radius, loss + corner);
        if radius > 0.0 {
            let centre = Pair { y: loss + radius, z: loss + radius };
            metal.quarter_ring(centre, radius, (radius - t).max(0.0), Pair { y: -1.0, z: -1.0 });
        }
        let plain = metal.bending();
        let line = loss + t / 2.0;
        let shear_area = legs_sheared(&plain, Pair { y: right, z: top }, line, t);
        let legs = [right - line, top - line];
        let mean_radius = (radius - t / 2.0).max(0.0);
        let along = legs.iter().sum::<f64>() - mean_radius * (2.0 - FRAC_PI_2);
        Ok(Shape {
            form: "open",
            bending: Bending { shear_area, ..plain },
            torsion: Torsion::open(&[(along, t)]),
            shear_centre: Pair { y: line, z: line },
            warping: t.powi(3) * legs.iter().map(|leg| leg.powi(3)).sum::<f64>() / 36.0,
        })
    }
}

/// Force along each axis over its peak shear stress: the flow of shear from each toe to the heel under unsymmetric bending.
fn legs_sheared(bending: &Bending, toe: Pair, line: f64, wall: f64) -> Pair {
    let Bending { centroid, second, product, .. } = *bending;
    let both = second.y * second.z - product * product;
    // Flow at a distance from the toe of a leg, whose stress changes as `along` and stays as `across`: its peak on the leg.
    let leg = |along: f64, from: f64, across: f64, at: f64, length: f64| {
        let flow = |way: f64| wall * (along * (from * way - way * way / 2.0) + across * at * way);
        let turn = if along == 0.0 { length } else { (from + across * at / along).clamp(0.0, length) };
        flow(turn).abs().max(flow(length).abs())
    };
    let peak = |by_z: f64, by_y: f64| {
        let upright = leg(by_z, toe.z - centroid.z, by_y, line - centroid.y, toe.z - line);
        let flat = leg(by_y, toe.y - centroid.y, by_z, line - centroid.z, toe.y - line);
        upright.max(flat)
    };
    let [along_y, along_z] = [peak(-product / both, second.y / both), peak(second.z / both, -product / both)];
    Pair { y: wall / along_y, z: wall / along_z }
}
