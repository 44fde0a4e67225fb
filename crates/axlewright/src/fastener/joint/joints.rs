use crate::base::document::{Model, Value};
use crate::base::valid::whole;
use crate::fastener::Bolt;
use crate::units::{Force, Length, Ratio, Stress};
use crate::{Error, Result, valid};

/// One bolt that clamps parts, under a pull along the bolt and a shear across it.
///
/// # Formula
/// clamp `C = F_least - F_z - (1 - n) F_x`; slip `m_f i C / V`; separation `(F_least - F_z) / ((1 - n) F_x)`; over-tension: yield over the equivalent stress of `F_b / A_s` and the twist of `F_peak`, with
/// `F_b` the greater of `F_peak + n F_x` and `F_x`; shear `1 / (V / (i a S_u A) + F_x / (1.26 S_u A_s))`; bearing `S_b d t / (e V)`
///
/// # Fields
/// - `bolt` — the bolt: its `thread` and its `grade`
/// - `external_tension` — `F_x`, pull along the bolt that opens the joint, prying counted; zero if there is none
/// - `external_shear` — `V`, force across the bolt; zero if there is none
/// - `least_preload` — `F_least`, preload of the loosest of equal bolts (see `fastener.Tightening`); without it slip and separation are not known
/// - `peak_preload` — `F_peak`, preload of the tightest of equal bolts; without it over-tension is not known
/// - `embedding_loss` — `F_z`, preload that is lost as the faces embed (see `fastener.embedding_loss`); if it is left out, none is counted, and `open` says so
/// - `grip` — way that the clamp takes through the parts: `solid`, `sleeve` (a boxed section with a crush sleeve), or `hollow` (boxed, without one: its clamp is not known); if it is left out, `open` says so
/// - `load_factor` — `n`, share of the pull that the bolt takes while the faces touch (see `fastener.joint_forces`); if it is left out, 0 counts against separation and slip, and 1 against over-tension
/// - `face_friction` — `m_f`, low bound of the friction between the clamped faces; common practice, no source: 0.1 painted or oiled, 0.15 clean steel; without it slip is not known
/// - `peak_thread_friction` — high bound of the friction in the thread, which twists the shank; if it is left out, no twist is counted, and `open` says so
/// - `shear_planes` — `i`, number of faces that slip and of planes that cut the bolt, 1 or 2; if it is left out, 1 counts
/// - `shear_plane` — part of the bolt in the shear plane: `shank` or `thread`; if it is left out, `thread` counts
/// - `parts` — the clamped parts, each with `name`, `thickness` `t`, `bearing_strength` `S_b` (at its least; near a weld, of the weakened metal) and `shear_share` `e`, its share of the shear (1 if it is left out)
///
/// # Valid for
/// Static loads of one bolt, elastic parts, faces that meet. Bounds count against the part: least preload for slip and separation, peak preload and full tightening torque for over-tension. If something is missing that
/// could still take from a margin, `open` names it: the margin is then an upper bound, no better than `tight`; a margin that cannot be computed has no number.
/// Edge distance (tear-out), prying, bending of the bolt and fatigue are not counted.
///
/// # Source
/// Shigley's Mechanical Engineering Design (joint in tension), VDI 2230 part 1 (embedding, twist), EN 1993-1-8 table 3.4 (shear, and shear with tension, without partial factors), all from memory
///
/// # Caution
/// A joint that slips or opens works loose and breaks. Bolts of brakes, steering, suspension and seat belts need the maker's grade and torque, and new lock nuts. Check the torque again after the first drive. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Joint {
    /// Bolt by its markings.
    pub bolt: Bolt,
    /// Pull along the bolt that opens the joint.
    pub external_tension: Value<Force>,
    /// Force across the bolt.
    pub external_shear: Value<Force>,
    /// Preload of the loosest of equal bolts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_preload: Option<Value<Force>>,
    /// Preload of the tightest of equal bolts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub peak_preload: Option<Value<Force>>,
    /// Preload that is lost as the faces embed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub embedding_loss: Option<Value<Force>>,
    /// Way that the clamp takes through the parts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grip: Option<GripKind>,
    /// Share of the pull that the bolt takes while the faces touch.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub load_factor: Option<Value<Ratio>>,
    /// Low bound of the friction between the clamped faces.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub face_friction: Option<Value<Ratio>>,
    /// High bound of the friction in the thread.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub peak_thread_friction: Option<Value<Ratio>>,
    /// Number of shear planes.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_planes: Option<Value<Ratio>>,
    /// Part of the bolt in the shear plane.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_plane: Option<ShearPlane>,
    /// Clamped parts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub parts: Vec<ClampedPart>,
}

/// Way that the clamp takes through the parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum GripKind {
    /// Solid from head to nut.
    Solid,
    /// A boxed section with a crush sleeve around the bolt.
    Sleeve,
    /// A boxed section without a crush sleeve.
    Hollow,
}

/// Part of the bolt in the shear plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum ShearPlane {
    /// The shank, of the nominal diameter.
    Shank,
    /// The thread.
    Thread,
}

/// One of the clamped parts.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `name` and, where they are known, `thickness`, `bearing_strength` and `shear_share`"
    )
)]
pub struct ClampedPart {
    /// Name of the part.
    pub name: String,
    /// Thickness of the part under the bolt.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub thickness: Option<Value<Length>>,
    /// Pressure of the bolt that the hole bears.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bearing_strength: Option<Value<Stress>>,
    /// Share of the shear that the part takes.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_share: Option<Value<Ratio>>,
}

impl crate::base::Sealed for Joint {}
impl Model for Joint {
    fn check(&self) -> Result<()> {
        self.bolt.read().map_err(|error| error.within("bolt"))?;
        let none = Force::from_si(0.0);
        let (external_tension, external_shear) =
            (self.external_tension.quantity, self.external_shear.quantity);
        let (least_preload, peak_preload) = (of(&self.least_preload, none), of(&self.peak_preload, none));
        let embedding_loss = of(&self.embedding_loss, none);
        let half = Ratio::from_si(0.5);
        let load_factor = of(&self.load_factor, half);
        let (face_friction, peak_thread_friction) =
            (of(&self.face_friction, half), of(&self.peak_thread_friction, half));
        let shear_planes = of(&self.shear_planes, Ratio::from_si(1.0));
        valid! {
            external_tension: 0 <= .. <= 1e8 ; "definition: it opens the joint; write 0 N for a force that closes it; plausibility limit: at most 100 MN";
            external_shear: 0 <= .. <= 1e8 ; "definition: the size of the force; plausibility limit: at most 100 MN";
            least_preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
            peak_preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
            embedding_loss: 0 <= .. <= 1e8 ; "definition: a loss; plausibility limit: at most 100 MN";
            load_factor: 0 < .. < 1 ; "definition: a share of the pull";
            face_friction: 0 < .. <= 1 ; "plausibility limit: clamped faces rub with less than 1";
            peak_thread_friction: 0 <= .. <= 1 ; "plausibility limit: threads rub with less than 1";
            shear_planes: 1 <= .. <= 2 ; "definition: a bolt is cut once or twice";
        }
        whole("shear_planes", shear_planes)?;
        if self.least_preload.is_some() && self.peak_preload.is_some() && least_preload > peak_preload {
            return Err(Error::document(
                "least_preload",
                "it is above peak_preload: the low bound comes first",
            ));
        }
        for (place, part) in self.parts.iter().enumerate() {
            part.check().map_err(|error| error.within(&format!("parts[{place}] ({})", part.name)))?;
        }
        Ok(())
    }
}

impl ClampedPart {
    fn check(&self) -> Result<()> {
        let thickness = of(&self.thickness, Length::from_si(0.001));
        let bearing_strength = of(&self.bearing_strength, Stress::from_si(1e8));
        let shear_share = of(&self.shear_share, Ratio::from_si(1.0));
        valid! {
            thickness: 0.0001 <= .. <= 1 ; "plausibility limit: parts are between 0.1 mm and 1 m thick";
            bearing_strength: 1e6 <= .. <= 5e9 ; "plausibility limit: metals bear between 1 MPa and 5 GPa";
            shear_share: 0 < .. <= 1 ; "definition: a share of the shear";
        }
        Ok(())
    }
}

/// Quantity of an optional value, or another one.
pub(super) fn of<Q: Copy>(value: &Option<Value<Q>>, other: Q) -> Q {
    value.as_ref().map_or(other, |value| value.quantity)
}

impl Joint {
    /// Shear planes; one if their number is not written.
    pub(super) fn planes(&self) -> f64 {
        of(&self.shear_planes, Ratio::from_si(1.0)).si()
    }
}

/// The texts that hold, one after the other.
pub(super) fn joined<const N: usize>(facts: [(bool, &str); N]) -> String {
    let open: Vec<&str> = facts.into_iter().filter_map(|(open, text)| open.then_some(text)).collect();
    open.join("; ")
}

/// Margin against a demand; not known without a demand.
pub(super) fn margin(capacity: Force, demand: Force) -> Ratio {
    if demand.si() > 0.0 { capacity / demand } else { Ratio::from_si(f64::NAN) }
}
