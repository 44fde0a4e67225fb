use super::parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LOWER, LateralRod, LinkDrawn, NamedLink, Pinion, Pitching,
    UPPER, WattLinkage,
};
use crate::base::document::{Model, Prepare, Stated};
use crate::suspension::parts::{Axle, Wheel};
use crate::{Error, Result};
use std::borrow::Cow;

/// A live axle on links, drawn point by point: position and steer over heave and roll, and action of springs and bushes.
///
/// # Formula
/// distances between joined points are kept, or the strain energy `sum f^2 g / 2` of the bushes is least; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`;
/// roll centre where `dy/dphi = 0`; anti-pitch `s (dx/dz) l / h` of the contact points held in the axle
///
/// # Fields
/// - `axle` — `front` or `rear`; it sets the direction in which the wheelbase grows, the direction of the pinion, and the effect of drive and brakes on the body
/// - `wheel` — the left wheel at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the ground; the right one is its mirror image
/// - `lower_links` — the lower links along the vehicle: `fitted` as a `pair` (the default: drawn on the left, the mirror image added) or as a `single` link; `body` and `axle` for the ends; `body_bush` and `axle_bush` for the stiffness of the bushes along the link; `body_limit` and `axle_limit` for the lean that the ends allow
/// - `upper_links` — the upper links, with the same fields; `fitted` must be written
/// - `links` — links along the vehicle under names of their own, for an axle whose two sides differ; three or four links in all: `name`; `fitted` as a `pair` (drawn on the left, the mirror image added) or as a `single` link; `body` and `axle` for the ends; `body_bush` and `axle_bush` for the stiffness of the bushes along the link; `body_limit` and `axle_limit` for the lean that the ends allow
/// - `lateral_rod` — rod across the vehicle: `body`, `axle`, and bushes and limits of its ends as for a link
/// - `watt` — Watt linkage instead of the rod: the `pivot` of a bell crank whose axis lies along x, the part that it is `carried_by` (`axle` or `body`), and `upper_rod` and `lower_rod`, each from `crank` to `outer`
/// - `coil_over` — left coil-over, mirrored on the right: `body_eye`, `axle_eye`; its `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset`: length between the eyes minus length between the seats) and its `damper` (`open_length`, `closed_length` between the eyes, `gas_force`)
/// - `anti_roll_bar` — left end of the bar, mirrored on the right: the part that carries its bearings (`carried_by`, `body` or `axle`), `link_eye` of the drop link on the other part, `lever_end` of the bar, `lever_pivot`, any point of the bar's axis along y
/// - `pinion` — `angle` of the pinion to the body's x at ride height, positive with the nose up (a front axle's nose points to the rear), and the joint on its `nose`
/// - `pitching` — data of drive and brakes: `drive_share` and `brake_share` `s` of this axle, `centre_of_gravity_height` `h`, `wheelbase` `l`
///
/// # Valid for
/// All points at ride height in the body's axes (x forward, y left, z up, y = 0 on the centre plane). Links have fixed lengths. Bushes deflect along their link only,
/// twist and lean freely, and are not strained at ride height. Heave is the travel of the axle's middle relative to the body, positive in bump. Roll is the turn of the axle relative to the
/// body about x as in ISO 8855, positive with the left wheel in bump; if the body leans over a level axle, it turns the other way. A link that would have to stretch by more than a
/// twentieth of its length is over-extended. Links that hold each other may have several places of least strain; the axle stands where small steps from ride height lead, rolled first. If the steps lead elsewhere where the axle heaves first, the position is refused. A result whose inputs are missing is not a number. The axle is rigid; the model neglects friction and compliance of the tyre.
///
/// # Source
/// Vector kinematics of rigid bodies; virtual work; strain energy of bushes in series; terms: ISO 8855 and SAE J670 (from memory)
///
/// # Caution
/// A failed suspension part can kill, a compressed spring stores enough energy to kill, and brackets crack if links bind. Check clearance, joints and bind on the vehicle over the whole
/// travel, in roll too, before it moves. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LiveAxle {
    /// End of the vehicle.
    pub axle: Axle,
    /// Left wheel, at ride height.
    pub wheel: Wheel,
    /// Lower links along the vehicle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lower_links: Option<NamedLink>,
    /// Upper links along the vehicle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub upper_links: Option<NamedLink>,
    /// Links along the vehicle under names of their own.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub links: Vec<AxleLink>,
    /// Lateral rod across the vehicle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub lateral_rod: Stated<LateralRod>,
    /// Watt linkage across the vehicle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub watt: Stated<WattLinkage>,
    /// Left spring and damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub coil_over: Stated<AxleCoilOver>,
    /// Left end of the anti-roll bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub anti_roll_bar: Stated<AxleBar>,
    /// Direction of the pinion.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pinion: Option<Pinion>,
    /// Shares of drive and brakes, for anti-squat and anti-lift.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pitching: Option<Pitching>,
}

/// Names that a link may not have: the other parts of `points` and of the refusals, and the word for no link at all.
pub(super) const OTHER_PARTS: [&str; 14] = [
    "axle",
    "lateral rod",
    "upper rod",
    "lower rod",
    "bell crank",
    "coil-over left",
    "coil-over right",
    "anti-roll bar",
    "pinion",
    "wheel left",
    "wheel right",
    "watt.upper_rod",
    "watt.lower_rod",
    "none",
];

impl crate::base::Sealed for LiveAxle {}

impl Model for LiveAxle {
    fn check(&self) -> Result<()> {
        self.prepare().map(|_| ())
    }
}

impl LiveAxle {
    /// Refuses parts that cannot be, each by itself.
    pub(super) fn check_parts(&self) -> Result<()> {
        self.wheel.check()?;
        let links = self.all_links();
        for (place, link) in links.iter().enumerate() {
            link.check()?;
            // Lower and upper links have names that no other part has; a name of its own may be taken.
            if !link.is_named() {
                continue;
            }
            let before = || links.iter().take(place);
            if before().any(|other| other.name == link.name) {
                let message = format!("name: two links are called {}", link.name);
                return Err(Error::document(link.key(), message));
            }
            let others: Vec<Cow<'_, str>> = before().flat_map(LinkDrawn::called).collect();
            let taken = |name: &Cow<'_, str>| OTHER_PARTS.contains(&&**name) || others.contains(name);
            if let Some(name) = link.called().into_iter().find(taken) {
                let message =
                    format!("name: {name} is the name of another part: give the link one of its own");
                return Err(Error::document(link.key(), message));
            }
        }
        let count: usize = links.iter().map(|link| if link.fitted == Fitted::Pair { 2 } else { 1 }).sum();
        if !(3..=4).contains(&count) {
            let message = format!("{count} links, a pair counted as two: draw three or four");
            return Err(Error::document("links", message));
        }
        if self.lateral_rod.is_given() && self.watt.is_given() {
            let message = "a lateral rod holds the axle sideways already: give one of the two";
            return Err(Error::document("watt", message));
        }
        if count == 3 && !self.lateral_rod.is_given() && !self.watt.is_given() {
            let message =
                "three links do not hold the axle sideways: add a lateral_rod or a watt, or a fourth link";
            return Err(Error::document("links", message));
        }
        self.lateral_rod.as_ref().map_or(Ok(()), LateralRod::check)?;
        self.watt.as_ref().map_or(Ok(()), WattLinkage::check)?;
        self.coil_over.as_ref().map_or(Ok(()), AxleCoilOver::check)?;
        self.anti_roll_bar.as_ref().map_or(Ok(()), AxleBar::check)?;
        self.pinion.as_ref().map_or(Ok(()), Pinion::check)?;
        self.pitching.as_ref().map_or(Ok(()), Pitching::check)
    }

    /// Direction of the pinion's nose along x: a front axle's points to the rear.
    pub(super) fn to_nose(&self) -> f64 {
        match self.axle {
            Axle::Front => -1.0,
            Axle::Rear => 1.0,
        }
    }

    /// All links along the vehicle: the lower ones, the upper ones, then those under names of their own.
    pub(super) fn all_links(&self) -> Vec<LinkDrawn<'_>> {
        let named = [(LOWER, &self.lower_links), (UPPER, &self.upper_links)];
        let named = named.into_iter().filter_map(|(name, link)| Some(link.as_ref()?.drawn(name)));
        named.chain(self.links.iter().enumerate().map(|(place, link)| link.drawn(place))).collect()
    }
}
