use super::linkage::AxleLinkage;
use super::parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LOWER, LateralRod, LinkDrawn, NamedLink, Pinion, Pitching,
    UPPER, WattLinkage,
};
use super::position::AxlePosition;
use super::position::Found;
use super::prepared::{OTHER_PARTS, PreparedLiveAxle};
use crate::base::document::{Model, Prepare, Stated};
use crate::base::table::{Filling, Table};
use crate::suspension::independent::wheel_position::TravelRange;
use crate::suspension::kinematics::outline::outlines;
use crate::suspension::parts::{Axle, Wheel};
use crate::units::{Angle, Length};
use crate::{Error, Result};
use std::borrow::Cow;
use std::sync::Arc;

/// A rigid axle on links, drawn point by point: where it stands over heave and roll, how it steers, and what springs and bushes do there.
///
/// # Formula
/// distances between joined points are kept, or the strain energy `sum f^2 g / 2` of the bushes is least; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`;
/// roll centre where `dy/dphi = 0`; anti-pitch `s (dx/dz) l / h` of the contact points held in the axle
///
/// # Fields
/// - `axle` — `front` or `rear`: which way the wheelbase grows, and what driving and braking do to the body
/// - `wheel` — the left wheel at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the ground; the right one is its mirror image
/// - `lower_links` — the lower links along the vehicle: `fitted` as a `pair` (drawn on the left, the mirror image added; where it is not said) or as a `single` one, `body` and `axle` for their ends, the stiffness of the bushes in them, `body_bush` and `axle_bush`, along the link, and the lean that they allow, `body_limit` and `axle_limit`
/// - `upper_links` — the upper links, with the same fields; `fitted` must be said
/// - `links` — links along the vehicle under names of their own, for an axle whose two sides differ; three or four links in all: `name`, `fitted` as a `pair` (drawn on the left, the mirror image added) or as a `single` one, `body` and `axle` for its ends, the stiffness of the bushes in them, `body_bush` and `axle_bush`, along the link, and the lean that they allow, `body_limit` and `axle_limit`
/// - `lateral_rod` — across the vehicle: `body`, `axle`, and the same of its ends
/// - `watt` — instead of that: the `pivot` of a bell crank whose axis lies along x, what it is `carried_by` (`axle` or `body`), and `upper_rod` and `lower_rod`, each from `crank` to `outer`
/// - `coil_over` — the left one, mirrored: `body_eye`, `axle_eye`; its `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset` between the eyes less between the seats) and its `damper` (`open_length`, `closed_length` between the eyes, `gas_force`)
/// - `anti_roll_bar` — its left end, mirrored: what carries its bearings (`carried_by`, `body` or `axle`), `link_eye` of the drop link on the other of the two, `lever_end` of the bar, `lever_pivot`, any point of its axis along y
/// - `pinion` — its `angle` against the body's x at ride height, positive with its nose up, and the joint on its `nose`
/// - `pitching` — what driving and braking ask: `drive_share` and `brake_share` `s` of this axle, `centre_of_gravity_height` `h`, `wheelbase` `l`
///
/// # Valid for
/// All points at ride height in the body's axes (x forward, y left, z up, y = 0 on the centre plane), links of fixed length, bushes that give along their link only and
/// twist and lean freely, nothing strained at ride height. Heave is that of the axle's middle against the body, positive in bump; roll that of the axle against the
/// body about x as ISO 8855 counts turns, positive with the left wheel in bump: a body that leans by that much over a level axle rolls the other way. A link that would have to give more than a
/// twentieth of its length is over-extended. What is missing gives results that are not a number. The axle is rigid; friction and the tyre's give are left aside.
///
/// # Source
/// Vector kinematics of rigid bodies; virtual work; strain energy of bushes in series; terms: ISO 8855 and SAE J670 (from memory)
///
/// # Caution
/// Suspension carries lives, a compressed spring stores enough energy to kill, and brackets of links that bind crack: check clearance, joints and bind on the vehicle over the whole
/// travel, in roll too, before it moves; local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LiveAxle {
    /// End of the vehicle.
    pub axle: Axle,
    /// The left one, at ride height.
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
    /// Across the vehicle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub lateral_rod: Stated<LateralRod>,
    /// Across the vehicle, too.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub watt: Stated<WattLinkage>,
    /// Spring and damper, the left ones.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub coil_over: Stated<AxleCoilOver>,
    /// The left end of the bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub anti_roll_bar: Stated<AxleBar>,
    /// Direction of the pinion.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pinion: Option<Pinion>,
    /// Driving and braking loads.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pitching: Option<Pitching>,
}

impl crate::base::Sealed for LiveAxle {}

impl Model for LiveAxle {
    fn check(&self) -> Result<()> {
        self.prepare().map(|_| ())
    }
}

impl Prepare for LiveAxle {
    type Prepared<'a> = PreparedLiveAxle<'a>;

    fn prepare(&self) -> Result<PreparedLiveAxle<'_>> {
        self.ready(|links, middle, cranked| AxleLinkage::new(links, middle, cranked).map(Arc::new))
    }
}

impl LiveAxle {
    /// The axle at a heave and roll: position and steer, instant axes, both wheels, springs, stroke, joints and bind.
    ///
    /// # Parameters
    /// - `heave` — `z`, of the axle's middle against the body from ride height, positive in bump
    /// - `roll` — `phi`, of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// See the fields of [`AxlePosition`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, suspension::*, units::*};
    /// let at = |x: f64, y: f64, z: f64| Point::new(Length::of::<mm>(x), Length::of::<mm>(y), Length::of::<mm>(z));
    /// let link = |body, axle| NamedLink {
    ///     fitted: Some(Fitted::Pair), body, axle,
    ///     body_bush: Some(Value::new(LinearStiffness::of::<kN_m>(9000.0))), axle_bush: Some(Value::new(LinearStiffness::of::<kN_m>(9000.0))),
    ///     body_limit: None, axle_limit: None,
    /// };
    /// let dunlin = LiveAxle {
    ///     axle: Axle::Rear,
    ///     wheel: Wheel {
    ///         centre: at(-2650.0, 760.0, 345.0), camber: Value::new(Angle::of::<deg>(0.0)), toe: Value::new(Angle::of::<deg>(0.0)),
    ///         loaded_radius: Value::new(Length::of::<mm>(335.0)),
    ///     },
    ///     lower_links: Some(link(at(-2090.0, 430.0, 310.0), at(-2630.0, 470.0, 265.0))),
    ///     upper_links: Some(link(at(-2200.0, 360.0, 445.0), at(-2660.0, 390.0, 480.0))),
    ///     links: vec![],
    ///     lateral_rod: Stated::Given(LateralRod {
    ///         body: at(-2760.0, 470.0, 390.0), axle: at(-2760.0, -500.0, 370.0),
    ///         body_bush: None, axle_bush: None, body_limit: None, axle_limit: None,
    ///     }),
    ///     watt: Stated::Unknown, coil_over: Stated::Unknown, anti_roll_bar: Stated::Unknown, pinion: None, pitching: None,
    /// }.checked()?;
    /// let leaning = dunlin.at(Length::of::<mm>(0.0), Angle::of::<deg>(3.0))?;
    /// assert_eq!(format!("{:.0} mm, {:.2}", leaning.roll_centre_height.in_::<mm>(), leaning.roll_steer.si()), "359 mm, 0.02");
    /// assert!(leaning.freedoms == 1 && leaning.bind_force > Force::of::<N>(100.0)); // the bushes must give
    /// assert!(dunlin.at(Length::of::<mm>(600.0), Angle::of::<deg>(0.0)).is_err()); // says which link ends it, and where
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at(&self, heave: Length, roll: Angle) -> Result<AxlePosition> {
        self.prepare()?.at(heave, roll)
    }

    /// The axle over heave and roll.
    ///
    /// # Parameters
    /// - `heave` — of the axle's middle against the body from ride height, positive in bump
    /// - `roll` — of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// One row a heave and roll: `heave`, `roll`, and the results of `at`: `...`.
    pub fn table(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        let mut rows = Filling::over(["heave", "roll"], &[heave.len(), roll.len()])?;
        let mut on = Found::unknown();
        for heave in heave {
            for roll in roll {
                rows.push((*heave, *roll), ready.find(*heave, *roll, &mut on).map(|()| on));
            }
        }
        Ok(rows.finish())
    }

    /// The joints in space, part by part: to draw the axle, or to measure clearance from.
    ///
    /// # Parameters
    /// - `heave` — of the axle's middle against the body from ride height, positive in bump
    /// - `roll` — of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// One row a heave, roll and point, the points of a part in the order in which a line joins them: `heave`, `roll`, `part` (`axle`, each link by its name, of a pair with `left` or `right` after it, `lateral rod`,
    /// `upper rod`, `lower rod` and `bell crank` of a Watt linkage, `coil-over left`, `coil-over right`, `anti-roll bar`, `pinion` where its nose is given, `wheel left`, `wheel right`), `point`, and its place `x`, `y`, `z` in the body's axes.
    pub fn points(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        outlines(["heave", "roll"], (heave, roll), |heave, roll| ready.outline(heave, roll))
    }

    /// Travel of the linkage in droop and bump before a link is over-extended; bar, damper, spring and joints may end it earlier.
    ///
    /// # Parameters
    /// - `roll` — of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// - `droop` — least heave, negative
    /// - `droop_end` — the link that ends it
    /// - `bump` — largest heave
    /// - `bump_end` — the link that ends it
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        self.prepare()?.travel_range(roll)
    }

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

    /// All links along the vehicle: the lower ones, the upper ones, then those under names of their own.
    pub(super) fn all_links(&self) -> Vec<LinkDrawn<'_>> {
        let named = [(LOWER, &self.lower_links), (UPPER, &self.upper_links)];
        let named = named.into_iter().filter_map(|(name, link)| Some(link.as_ref()?.drawn(name)));
        named.chain(self.links.iter().enumerate().map(|(place, link)| link.drawn(place))).collect()
    }
}
