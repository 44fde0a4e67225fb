//! Parts of a live axle, besides those that all linkages share: links, lateral rod, Watt linkage, coil-overs, anti-roll bar, pinion.

use crate::base::document::Value;
use crate::base::numeric::hypot;
use crate::suspension::parts::{CoilSpring, Damper, Point, within};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio};
use crate::{Error, Result, valid};
use std::borrow::Cow;

/// Number of one link: a pair or a single one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Fitted {
    /// Two: the one that is drawn, on the left, and its mirror image on the right.
    Pair,
    /// One, as it is drawn.
    Single,
}

/// Carrier of a bell crank's pivot or of an anti-roll bar's bearings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Mount {
    /// The body.
    Body,
    /// The axle.
    Axle,
}

/// A link along the vehicle, from the body to the axle.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `name`, `fitted`, `body`, `axle` and, where they are known, `body_bush`, `axle_bush`, `body_limit` and `axle_limit`"
    )
)]
pub struct AxleLink {
    /// Name of the link.
    pub name: String,
    /// As a pair, drawn on the left, or as a single one.
    pub fitted: Fitted,
    /// End on the body.
    pub body: Point,
    /// End on the axle.
    pub axle: Point,
    /// Stiffness along the link of the bush in the body end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_bush: Option<Value<LinearStiffness>>,
    /// Stiffness along the link of the bush in the axle end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub axle_bush: Option<Value<LinearStiffness>>,
    /// Largest allowed lean of the joint in the body end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_limit: Option<Value<Angle>>,
    /// Largest allowed lean of the joint in the axle end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub axle_limit: Option<Value<Angle>>,
}

/// Links along the vehicle, from the body to the axle, which are spoken of by their place: upper or lower.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `fitted`, `body`, `axle` and, where they are known, `body_bush`, `axle_bush`, `body_limit` and `axle_limit`"
    )
)]
pub struct NamedLink {
    /// As a pair, drawn on the left, or as a single one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fitted: Option<Fitted>,
    /// End on the body.
    pub body: Point,
    /// End on the axle.
    pub axle: Point,
    /// Stiffness along the link of the bush in the body end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_bush: Option<Value<LinearStiffness>>,
    /// Stiffness along the link of the bush in the axle end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub axle_bush: Option<Value<LinearStiffness>>,
    /// Largest allowed lean of the joint in the body end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_limit: Option<Value<Angle>>,
    /// Largest allowed lean of the joint in the axle end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub axle_limit: Option<Value<Angle>>,
}

/// A rod across the vehicle, from the body to the axle.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `body`, `axle` and, where they are known, `body_bush`, `axle_bush`, `body_limit` and `axle_limit`"
    )
)]
pub struct LateralRod {
    /// End on the body.
    pub body: Point,
    /// End on the axle.
    pub axle: Point,
    /// Stiffness along the rod of the bush in the body end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_bush: Option<Value<LinearStiffness>>,
    /// Stiffness along the rod of the bush in the axle end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub axle_bush: Option<Value<LinearStiffness>>,
    /// Largest allowed lean of the joint in the body end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub body_limit: Option<Value<Angle>>,
    /// Largest allowed lean of the joint in the axle end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub axle_limit: Option<Value<Angle>>,
}

/// A rod of a Watt linkage, from an end of the bell crank to the body or the axle, whichever does not carry the crank.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `crank`, `outer` and, where they are known, `crank_bush`, `outer_bush`, `crank_limit` and `outer_limit`"
    )
)]
pub struct WattRod {
    /// End on the bell crank.
    pub crank: Point,
    /// Other end.
    pub outer: Point,
    /// Stiffness along the rod of the bush in the end on the crank; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub crank_bush: Option<Value<LinearStiffness>>,
    /// Stiffness along the rod of the bush in the other end; rigid if it is not given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub outer_bush: Option<Value<LinearStiffness>>,
    /// Largest allowed lean of the joint in the end on the crank, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub crank_limit: Option<Value<Angle>>,
    /// Largest allowed lean of the joint in the other end, from ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub outer_limit: Option<Value<Angle>>,
}

/// Two rods across the vehicle on a bell crank that turns about an axis along x.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `carried_by`, `pivot`, `upper_rod` and `lower_rod`")
)]
pub struct WattLinkage {
    /// Carrier of the pivot.
    pub carried_by: Mount,
    /// Pivot of the bell crank.
    pub pivot: Point,
    /// On the upper end of the crank.
    pub upper_rod: WattRod,
    /// On the lower end of the crank.
    pub lower_rod: WattRod,
}

/// The left one of two springs on their dampers, between the body and the axle; the right one is its mirror image.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `body_eye`, `axle_eye` and, where they are known, `spring` and `damper`"
    )
)]
pub struct AxleCoilOver {
    /// On the body.
    pub body_eye: Point,
    /// On the axle.
    pub axle_eye: Point,
    /// The coil.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring: Option<CoilSpring>,
    /// The damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper: Option<Damper>,
}

/// The left end of an anti-roll bar that turns about an axis along y, on its drop link; the right one is its mirror image.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(expecting = "a table with `bearings`, `link_eye`, `lever_end` and `lever_pivot`")
)]
pub struct AxleBar {
    /// Carrier of the bar's bearings.
    #[cfg_attr(feature = "serde", serde(alias = "carried_by"))]
    pub bearings: Mount,
    /// Eye of the drop link, on the body or the axle, whichever does not carry the bar.
    pub link_eye: Point,
    /// End of the bar's lever, at the drop link.
    pub lever_end: Point,
    /// Any point of the axis about which the bar turns.
    pub lever_pivot: Point,
}

/// Direction of the axle's pinion.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `angle` and, where it is known, `nose`"))]
pub struct Pinion {
    /// Angle of its axis at ride height against the body's x, positive nose up.
    pub angle: Value<Angle>,
    /// The centre of the joint on its nose.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub nose: Option<Point>,
}

/// Driving and braking loads of the axle; its housing takes the torque of both.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `centre_of_gravity_height`, `wheelbase` and, where they are known, `drive_share` and `brake_share`"
    )
)]
pub struct Pitching {
    /// Share of the whole driving force at this axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub drive_share: Option<Value<Ratio>>,
    /// Share of the whole braking force at this axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub brake_share: Option<Value<Ratio>>,
    /// Above the ground, of the vehicle at ride height.
    pub centre_of_gravity_height: Value<Length>,
    /// Wheelbase of the vehicle.
    pub wheelbase: Value<Length>,
}

/// State of a coil-over at a length between its eyes.
pub(in crate::suspension) struct Strut {
    /// Between the eyes.
    pub(in crate::suspension) eyes: Length,
    /// Rate of the coil along its axis; zero when it is loose.
    pub(in crate::suspension) rate: f64,
    /// Force of the damper's gas.
    pub(in crate::suspension) gas: f64,
    /// Force of coil and gas.
    pub(in crate::suspension) force: f64,
    pub(in crate::suspension) length: Length,
    pub(in crate::suspension) coil: Force,
    pub(in crate::suspension) used: Length,
    pub(in crate::suspension) remaining: Length,
    pub(super) damper_used: Length,
    pub(super) damper_remaining: Length,
}

impl Strut {
    /// Nothing known.
    pub(in crate::suspension) fn unknown() -> Strut {
        let unknown = Length::from_si(f64::NAN);
        Strut {
            eyes: unknown,
            rate: f64::NAN,
            gas: 0.0,
            force: f64::NAN,
            length: unknown,
            coil: Force::from_si(f64::NAN),
            used: unknown,
            remaining: unknown,
            damper_used: unknown,
            damper_remaining: unknown,
        }
    }

    pub(in crate::suspension) fn of(coil_over: &AxleCoilOver, eyes: f64) -> Strut {
        let eyes = Length::from_si(eyes);
        let mut on = Strut { eyes, ..Strut::unknown() };
        if let Some(damper) = &coil_over.damper {
            on.damper_used = damper.open_length.quantity - eyes;
            on.damper_remaining = eyes - damper.closed_length.quantity;
            on.gas = damper.gas_force.as_ref().map_or(0.0, |gas| gas.quantity.si());
        }
        if let Some(spring) = &coil_over.spring {
            on.length = eyes - spring.seat_offset.quantity;
            on.used = spring.free_length.quantity - on.length;
            on.remaining = on.length - spring.solid_length.quantity;
            on.rate = if on.used.si() > 0.0 { spring.rate.quantity.si() } else { 0.0 };
            let coil = on.rate * on.used.si();
            on.coil = Force::from_si(coil);
            on.force = coil + on.gas;
        }
        on
    }
}

type Bush<'a> = Option<&'a Value<LinearStiffness>>;
type Lean<'a> = Option<&'a Value<Angle>>;

/// Give of two bushes in series along their link, in m/N; nothing where both ends are rigid.
pub(super) fn give(bushes: [Bush<'_>; 2]) -> f64 {
    bushes.into_iter().flatten().map(|bush| 1.0 / bush.quantity.si()).sum()
}

/// Refuses bushes and limits that cannot be, under the key of their end.
fn ends(key: &str, names: [&str; 2], bushes: [Bush<'_>; 2], limits: [Lean<'_>; 2]) -> Result<()> {
    for ((name, bush), limit) in names.into_iter().zip(bushes).zip(limits) {
        let stiffness = bush.map_or(LinearStiffness::from_si(1.0), |bush| bush.quantity);
        let lean = limit.map_or(Angle::from_si(0.0), |limit| limit.quantity);
        within(
            || format!("{key}.{name}_bush"),
            || {
                valid! { stiffness: 1 <= .. <= 1e12 ; "plausibility limit: bushes lie between 1 N/m and 1 TN/m; leave out what is rigid"; }
                Ok(())
            },
        )?;
        within(
            || format!("{key}.{name}_limit"),
            || {
                valid! { lean: 0 <= .. <= 1.6 ; "plausibility limit: no joint leans more than a right angle"; }
                Ok(())
            },
        )?;
    }
    Ok(())
}

/// Names of the links that have a key of their own.
pub(super) const LOWER: &str = "lower";
pub(super) const UPPER: &str = "upper";

/// A link along the vehicle as it is drawn, whichever key it has.
pub(super) struct LinkDrawn<'a> {
    pub(super) name: &'a str,
    /// Place among the links under names of their own; none of lower and upper links.
    place: Option<usize>,
    pub(super) fitted: Fitted,
    /// Whether it is said how many there are, where that must be.
    is_told: bool,
    pub(super) body: &'a Point,
    pub(super) axle: &'a Point,
    pub(super) bushes: [Bush<'a>; 2],
    pub(super) limits: [Lean<'a>; 2],
}

impl NamedLink {
    pub(super) fn drawn<'a>(&'a self, name: &'a str) -> LinkDrawn<'a> {
        LinkDrawn {
            name,
            place: None,
            fitted: self.fitted.unwrap_or(Fitted::Pair),
            is_told: self.fitted.is_some() || name == LOWER,
            body: &self.body,
            axle: &self.axle,
            bushes: [self.body_bush.as_ref(), self.axle_bush.as_ref()],
            limits: [self.body_limit.as_ref(), self.axle_limit.as_ref()],
        }
    }
}

impl AxleLink {
    pub(super) fn drawn(&self, place: usize) -> LinkDrawn<'_> {
        LinkDrawn {
            name: &self.name,
            place: Some(place),
            fitted: self.fitted,
            is_told: true,
            body: &self.body,
            axle: &self.axle,
            bushes: [self.body_bush.as_ref(), self.axle_bush.as_ref()],
            limits: [self.body_limit.as_ref(), self.axle_limit.as_ref()],
        }
    }
}

impl<'a> LinkDrawn<'a> {
    /// Key of its table.
    pub(super) fn key(&self) -> Cow<'static, str> {
        match (self.place, self.name) {
            (Some(place), _) => Cow::Owned(format!("links[{place}]")),
            (None, LOWER) => Cow::Borrowed("lower_links"),
            (None, _) => Cow::Borrowed("upper_links"),
        }
    }
    /// Whether it has a name of its own.
    pub(super) fn is_named(&self) -> bool {
        self.place.is_some()
    }
    /// Names of the links; of a pair the left one, then the right one.
    pub(super) fn called(&self) -> Vec<Cow<'a, str>> {
        match (self.fitted, self.name) {
            (Fitted::Single, name) => vec![Cow::Borrowed(name)],
            (Fitted::Pair, LOWER) => vec![Cow::Borrowed("lower left"), Cow::Borrowed("lower right")],
            (Fitted::Pair, UPPER) => vec![Cow::Borrowed("upper left"), Cow::Borrowed("upper right")],
            (Fitted::Pair, name) => {
                ["left", "right"].map(|side| Cow::Owned(format!("{name} {side}"))).to_vec()
            }
        }
    }
    pub(super) fn check(&self) -> Result<()> {
        let key = self.key();
        if self.name.trim().is_empty() {
            return Err(Error::document(&key, "name is empty: give the link a name"));
        }
        if !self.is_told {
            let message =
                "fitted: say `pair` for two links, the drawn one and its mirror image, or `single` for one";
            return Err(Error::document(&key, message));
        }
        self.body.check(&key, "body")?;
        self.axle.check(&key, "axle")?;
        if self.fitted == Fitted::Pair && self.axle.y.quantity.si() <= 0.0 {
            let message = "axle: a pair is drawn on the left: give it y greater than 0, or say fitted = \"single\" for one link";
            return Err(Error::document(&key, message));
        }
        ends(&key, ["body", "axle"], self.bushes, self.limits)
    }
}

impl LateralRod {
    pub(super) fn bushes(&self) -> [Bush<'_>; 2] {
        [self.body_bush.as_ref(), self.axle_bush.as_ref()]
    }
    pub(super) fn limits(&self) -> [Lean<'_>; 2] {
        [self.body_limit.as_ref(), self.axle_limit.as_ref()]
    }
    pub(super) fn check(&self) -> Result<()> {
        self.body.check("lateral_rod", "body")?;
        self.axle.check("lateral_rod", "axle")?;
        ends("lateral_rod", ["body", "axle"], self.bushes(), self.limits())
    }
}

impl WattRod {
    pub(super) fn bushes(&self) -> [Bush<'_>; 2] {
        [self.crank_bush.as_ref(), self.outer_bush.as_ref()]
    }
    pub(super) fn limits(&self) -> [Lean<'_>; 2] {
        [self.crank_limit.as_ref(), self.outer_limit.as_ref()]
    }
    fn check(&self, key: &str) -> Result<()> {
        self.crank.check(key, "crank")?;
        self.outer.check(key, "outer")?;
        ends(key, ["crank", "outer"], self.bushes(), self.limits())
    }
}

impl WattLinkage {
    pub(super) fn rods(&self) -> [(&'static str, &WattRod); 2] {
        [("watt.upper_rod", &self.upper_rod), ("watt.lower_rod", &self.lower_rod)]
    }
    pub(super) fn check(&self) -> Result<()> {
        self.pivot.check("watt", "pivot")?;
        for (key, rod) in self.rods() {
            rod.check(key)?;
            let lever = rod.crank.vector() - self.pivot.vector();
            if hypot(lever.y, lever.z) < 0.001 {
                let message =
                    "crank: it is nearer than 1 mm to the axis of the bell crank, so it has no lever";
                return Err(Error::document(key, message));
            }
        }
        Ok(())
    }
}

impl AxleCoilOver {
    pub(in crate::suspension) fn check(&self) -> Result<()> {
        self.body_eye.check("coil_over", "body_eye")?;
        self.axle_eye.check("coil_over", "axle_eye")?;
        self.spring.as_ref().map_or(Ok(()), |spring| spring.check("coil_over"))?;
        self.damper.as_ref().map_or(Ok(()), |damper| damper.check("coil_over"))
    }
}

impl AxleBar {
    pub(in crate::suspension) fn check(&self) -> Result<()> {
        self.link_eye.check("anti_roll_bar", "link_eye")?;
        self.lever_end.check("anti_roll_bar", "lever_end")?;
        self.lever_pivot.check("anti_roll_bar", "lever_pivot")
    }
}

impl Pinion {
    pub(super) fn check(&self) -> Result<()> {
        if let Some(nose) = &self.nose {
            nose.check("pinion", "nose")?;
        }
        within(
            || "pinion".to_owned(),
            || {
                let angle = self.angle.quantity;
                valid! { angle: (-0.8) <= .. <= 0.8 ; "plausibility limit: pinions point forward within 45 deg"; }
                Ok(())
            },
        )
    }
}

impl Pitching {
    pub(super) fn check(&self) -> Result<()> {
        let of =
            |share: &Option<Value<Ratio>>| share.as_ref().map_or(Ratio::from_si(0.0), |share| share.quantity);
        within(
            || "pitching".to_owned(),
            || {
                let (drive_share, brake_share) = (of(&self.drive_share), of(&self.brake_share));
                let (centre_of_gravity_height, wheelbase) =
                    (self.centre_of_gravity_height.quantity, self.wheelbase.quantity);
                valid! {
                    drive_share: 0 <= .. <= 1 ; "definition: a share of the whole driving force";
                    brake_share: 0 <= .. <= 1 ; "definition: a share of the whole braking force";
                    centre_of_gravity_height: 0.01 <= .. <= 100 ; "plausibility limit: between 10 mm and 100 m above the ground";
                    wheelbase: 0.01 <= .. <= 100 ; "plausibility limit: between 10 mm and 100 m";
                }
                Ok(())
            },
        )
    }
}
