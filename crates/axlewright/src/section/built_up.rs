use super::SectionProperties;
use super::figures::{Bending, Composite, Pair, Patch, Shape, Torsion, solid_rectangle};
use crate::base::document::{Model, Value};
use crate::units::Length;
use crate::{Error, Result, valid};

/// A section that is built up of rectangles, some of which may be removed.
///
/// # Formula
/// Sums over the rectangles with the parallel axis theorem; torsion `J = sum J_i`, each rectangle by itself, by the series of Saint-Venant; `A_v = I b / Q` at the worst cut
///
/// # Fields
/// - `parts` — rectangles of metal: `width` along y, `height` along z, and the place of the centre, `y` and `z`
/// - `removed` — rectangles that are taken away, such as holes and cut-outs: each lies in the metal
///
/// # Valid for
/// Origin and axes are your own: y across, z up. No two parts overlap. The parts are joined so that they bend as one. Torsion counts each part by itself: a lower bound of the stiffness, also where the
/// parts close a box. With parts removed, torsion and shear areas are not known. Shear centre and warping constant are not known. Shear areas are known if the section is symmetric about one of its axes; they hold for loads through the shear centre.
///
/// # Source
/// Definitions, parallel axis theorem; torsion: Saint-Venant, as in Timoshenko and Goodier, Theory of Elasticity (from memory)
///
/// # Caution
/// A frame, an arm or a link that fails can kill: this gives numbers, not approval. Have safety parts checked by a licensed engineer; local codes come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BuiltUp {
    /// Rectangles of metal.
    pub parts: Vec<SectionPart>,
    /// Rectangles that are taken away.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub removed: Option<Vec<SectionPart>>,
}

/// A rectangle of a section.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `width`, `height`, `y` and `z`"))]
pub struct SectionPart {
    /// Width, along y.
    pub width: Value<Length>,
    /// Height, along z.
    pub height: Value<Length>,
    /// Place of its centre, along y.
    pub y: Value<Length>,
    /// Place of its centre, along z.
    pub z: Value<Length>,
}

/// Rectangles that a section may have.
const MOST_PARTS: usize = 200;
/// Share of the smaller rectangle that two may share by rounding.
const TOUCH: f64 = 1e-9;

impl SectionPart {
    fn patch(&self) -> Result<Patch> {
        let (width, height, y, z) =
            (self.width.quantity, self.height.quantity, self.y.quantity, self.z.quantity);
        valid! {
            width: 1e-4 <= .. <= 10 ; "plausibility limit: no part is narrower than 0.1 mm or wider than 10 m";
            height: 1e-4 <= .. <= 10 ; "plausibility limit: no part is lower than 0.1 mm or higher than 10 m";
            y: (-10) <= .. <= 10 ; "plausibility limit: no section reaches 10 m from its origin";
            z: (-10) <= .. <= 10 ; "plausibility limit: no section reaches 10 m from its origin";
        }
        let (half_width, half_height) = (width.si() / 2.0, height.si() / 2.0);
        Ok(Patch::metal(y.si() - half_width, y.si() + half_width, z.si() - half_height, z.si() + half_height))
    }
}

impl crate::base::Sealed for BuiltUp {}
impl Model for BuiltUp {
    fn check(&self) -> Result<()> {
        self.shape().map(drop)
    }
}

impl BuiltUp {
    /// Properties of the section, net of the parts that are removed.
    ///
    /// # Returns
    /// See the fields of [`SectionProperties`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, section::*, units::*};
    /// let part = |width, height, z| -> Result<SectionPart, axlewright::Error> {
    ///     Ok(SectionPart { width: Value::parse(width)?, height: Value::parse(height)?, y: Value::parse("0 mm")?, z: Value::parse(z)? })
    /// };
    /// let beam = BuiltUp {
    ///     parts: vec![part("60 mm", "6 mm", "47 mm")?, part("6 mm", "88 mm", "0 mm")?, part("60 mm", "6 mm", "-47 mm")?],
    ///     removed: None,
    /// }.checked()?;
    /// assert_eq!(format!("{:.1} cm⁴", beam.properties()?.second_moment_y.in_::<cm4>()), "193.3 cm⁴");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn properties(&self) -> Result<SectionProperties> {
        self.shape().map(Shape::properties)
    }

    fn shape(&self) -> Result<Shape> {
        let parts = patches("parts", &self.parts)?;
        let removed = patches("removed", self.removed.as_deref().unwrap_or_default())?;
        if parts.is_empty() {
            return Err(Error::document("parts", "a section has one part at least"));
        }
        for (place, gone) in removed.iter().enumerate() {
            let metal: f64 = parts.iter().map(|part| part.shared(gone)).sum();
            let whole = gone.width() * gone.height();
            if metal < whole * (1.0 - TOUCH) {
                let message = format!("{:.3} % of it lies outside the metal", 100.0 * (1.0 - metal / whole));
                return Err(Error::document(format!("removed[{place}]"), message));
            }
        }
        let torsion = if removed.is_empty() {
            let each: Vec<Torsion> =
                parts.iter().map(|part| solid_rectangle(part.width(), part.height())).collect();
            Torsion::side_by_side(&each)
        } else {
            Torsion { constant: f64::NAN, modulus: f64::NAN }
        };
        let mut metal = Composite { patches: parts };
        metal.patches.extend(removed.into_iter().map(Patch::gone));
        let plain = metal.bending();
        // A cut through a part that is removed would not say how the shear passes it.
        let shear_area =
            if metal.patches.iter().all(|patch| patch.sign > 0.0) { plain.shear_area } else { Pair::UNKNOWN };
        let bending = Bending { shear_area, ..plain };
        if bending.area <= 0.0 || bending.second.y <= 0.0 || bending.second.z <= 0.0 {
            return Err(Error::document("removed", "nothing remains of the section"));
        }
        Ok(Shape { form: "parts", bending, torsion, shear_centre: Pair::UNKNOWN, warping: f64::NAN })
    }
}

/// The rectangles of a list, none of which overlap.
fn patches(list: &'static str, parts: &[SectionPart]) -> Result<Vec<Patch>> {
    if parts.len() > MOST_PARTS {
        return Err(Error::document(
            list,
            format!("a section has at most {MOST_PARTS} rectangles in each list"),
        ));
    }
    let mut all: Vec<Patch> = Vec::with_capacity(parts.len());
    for (place, part) in parts.iter().enumerate() {
        let patch = part.patch().map_err(|error| error.within(&format!("{list}[{place}]")))?;
        let area = patch.width() * patch.height();
        for (other, before) in all.iter().enumerate() {
            if patch.shared(before) > TOUCH * area.min(before.width() * before.height()) {
                let message = format!("it overlaps {list}[{other}]; let them touch only");
                return Err(Error::document(format!("{list}[{place}]"), message));
            }
        }
        all.push(patch);
    }
    Ok(all)
}
