use super::SectionProperties;
use super::figures::{Bending, Pair, Shape, Torsion, Wall, or_zero};
use crate::base::document::{Model, Value};
use crate::material::StockGauge;
use crate::units::Length;
use crate::{Result, cannot, valid};
use core::f64::consts::PI;

/// A round tube, as bought or rusted, with or without a hole across it.
///
/// # Formula
/// `A = pi (R^2 - r^2)`, `I = pi (R^4 - r^4) / 4`, `J = pi (R^4 - r^4) / 2`, `W_t = J / R`, `Z = 4 (R^3 - r^3) / 3`, `A_v = 2 I t / Q` with `Q = 2 (R^3 - r^3) / 3`; less the metal of the hole
///
/// # Fields
/// - `diameter` — `2 R`, outside diameter as bought
/// - `wall` — `t`, wall thickness; or `gauge` in its place
/// - `gauge` — gauge `number` and `stock`, in place of `wall`: a number without its stock is refused
/// - `lost_outside` — wall lost to rust, uniform, from the outside; none if left out
/// - `lost_inside` — wall lost to rust, uniform, from the inside; none if left out
/// - `cross_hole` — diameter of a hole drilled through both walls, along z; none if left out
///
/// # Valid for
/// Origin at the centre. A wall as thick as the radius is a solid bar. The wall is the same all around: a bent tube is thinner outside. Torsion constant and shear centre are those beside the hole. The shear area along y is the share of the diameter that the hole leaves (common practice, no source). At the edge of the hole the stress is about three times as high. Control arms of 1 1/4 in tube: common practice, no source.
///
/// # Source
/// Closed forms of the circle; Roark, Formulas for Stress and Strain (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RoundTube {
    /// Outside diameter as bought.
    pub diameter: Value<Length>,
    /// Wall thickness.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub wall: Option<Value<Length>>,
    /// Gauge of the stock, in place of the wall.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<StockGauge>,
    /// Uniform loss of wall from the outside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_outside: Option<Value<Length>>,
    /// Uniform loss of wall from the inside; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lost_inside: Option<Value<Length>>,
    /// Diameter of a hole through both walls, along z; none if left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cross_hole: Option<Value<Length>>,
}

impl crate::base::Sealed for RoundTube {}
impl Model for RoundTube {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl RoundTube {
    /// Properties of the section, net of holes and of lost wall.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`]. The least shear area and moduli of a tube with a hole are about y; turn the tube to match.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let arm = RoundTube {
    ///     diameter: Value::parse("1.25 in")?, wall: Some(Value::parse("0.12 in")?), gauge: None,
    ///     lost_outside: None, lost_inside: None, cross_hole: None,
    /// }.checked()?;
    /// let on = arm.properties()?;
    /// assert_eq!(format!("{:.3} in², {:.4} in⁴", on.area.in_::<in2>(), on.second_moment_y.in_::<in4>()), "0.426 in², 0.0688 in⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let diameter = self.diameter.quantity;
        valid! { diameter: 1e-4 <= .. <= 10 ; "plausibility limit: no member is thinner than 0.1 mm or thicker than 10 m"; }
        let bought = Wall::of(&self.wall, &self.gauge, &self.lost_outside, &self.lost_inside)?;
        let (wall, half) = (Length::from_si(bought.bought), diameter / 2.0);
        if wall > half {
            return Err(cannot!(wall <= half, diameter; "is more than half of the diameter"));
        }
        let outer = half.si() - bought.outside;
        round(diameter, outer, outer - bought.remains, or_zero(&self.cross_hole))
    }
}

/// A ring of an outer and an inner radius, or a disc, with a hole along z.
pub(super) fn round(diameter: Length, outer: f64, inner: f64, cross_hole: Length) -> Result<Shape> {
    // A wall as thick as the radius leaves rounding only.
    let inner = if inner > 1e-9 * outer { inner } else { 0.0 };
    valid! { cross_hole: 0 <= .. <= 10 ; "definition: a diameter is not negative"; }
    let widest = Length::from_si(2.0 * if inner > 0.0 { inner } else { outer });
    if cross_hole >= widest {
        return Err(cannot!(cross_hole < widest, diameter; "leaves no tube beside it"));
    }
    let half = cross_hole.si() / 2.0;
    let net = |of: fn(f64, f64) -> f64| of(outer, half) - if inner > 0.0 { of(inner, half) } else { 0.0 };
    let ring = |power: i32| outer.powi(power) - inner.powi(power);
    let area = PI * ring(2) - 2.0 * net(slot_area);
    let second = Pair {
        y: PI / 4.0 * ring(4) - 2.0 / 3.0 * net(slot_cubes),
        z: PI / 4.0 * ring(4) - 2.0 * net(slot_squares),
    };
    let edge = |radius: f64| (radius * radius - half * half).max(0.0).sqrt();
    let beside =
        |power: i32| edge(outer).powi(power) - if inner > 0.0 { edge(inner).powi(power) } else { 0.0 };
    // First moments of the upper and of the right half, and of a half without the hole.
    let whole = 2.0 / 3.0 * ring(3);
    let (upper, right) = (whole - net(slot_first), 2.0 / 3.0 * beside(3));
    // Metal at middle height, on one side.
    let middle = outer - inner.max(half);
    let past_hole = 1.0 - half / outer;
    let bending = Bending {
        area,
        centroid: Pair::ZERO,
        second,
        product: 0.0,
        elastic: Pair { y: second.y / edge(outer), z: second.z / outer },
        plastic: Pair { y: 2.0 * upper, z: 2.0 * right },
        shear_area: Pair {
            y: PI / 4.0 * ring(4) * 2.0 * ring(1) / whole * past_hole,
            z: second.y * 2.0 * middle / upper,
        },
    };
    let constant = PI / 2.0 * ring(4);
    Ok(Shape {
        form: if inner > 0.0 { "closed" } else { "solid" },
        bending,
        torsion: Torsion { constant, modulus: constant / outer },
        shear_centre: Pair::ZERO,
        warping: f64::NAN,
    })
}

/// Area of a disc within this distance of its z axis, above the y axis.
fn slot_area(radius: f64, half: f64) -> f64 {
    let chord = (radius * radius - half * half).sqrt();
    half * chord + radius * radius * (half / radius).asin()
}

/// Integral of `z` over the same.
fn slot_first(radius: f64, half: f64) -> f64 {
    half * (radius * radius - half * half / 3.0)
}

/// Integral of `y^2` over the same.
fn slot_squares(radius: f64, half: f64) -> f64 {
    let chord = (radius * radius - half * half).sqrt();
    (radius.powi(4) * (half / radius).asin() - half * chord * (radius * radius - 2.0 * half * half)) / 4.0
}

/// Three times the integral of `z^2` over the same.
fn slot_cubes(radius: f64, half: f64) -> f64 {
    let chord = (radius * radius - half * half).sqrt();
    (half * chord * (5.0 * radius * radius - 2.0 * half * half)
        + 3.0 * radius.powi(4) * (half / radius).asin())
        / 4.0
}
