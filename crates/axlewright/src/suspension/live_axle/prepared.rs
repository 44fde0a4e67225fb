//! A live axle that is prepared once: its links by name, and where it stands.

use super::bar_lever::{LEAST_LEVER, Lever, drawn, mirrored};
use super::frame::{Link, X};
use super::linkage::{AxleLinkage, Free, Pose, TRIES};
use super::model::LiveAxle;
use super::parts::{Mount, WattLinkage, give};
use super::range::Stop;
use crate::base::document::Stated;
use crate::base::text::said;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::units::{Angle, Length};
use crate::{Error, Result, cannot, valid};
use std::borrow::Cow;
use std::sync::{Arc, OnceLock};

/// A joint of a link.
#[derive(Debug, Clone)]
pub(in crate::suspension) struct Joint {
    pub(super) link: usize,
    /// End of the joint: on the body, the axle or the crank.
    pub(super) end: End,
    word: &'static str,
    /// Written when it is first asked for.
    name: OnceLock<String>,
    pub(super) limit: Option<f64>,
    /// Direction of the link there at ride height.
    pub(super) drawn: Vector,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    Body,
    Axle,
    CrankOnBody,
    CrankOnAxle,
}

/// A live axle that is prepared once and asked many times: see [`Prepare`](crate::Prepare).
///
/// Its linkage is solved at ride height, and each answer starts from there.
#[derive(Debug)]
pub struct PreparedLiveAxle<'a> {
    pub(in crate::suspension) model: &'a LiveAxle,
    pub(in crate::suspension) linkage: Arc<AxleLinkage>,
    pub(in crate::suspension) names: Vec<Cow<'a, str>>,
    pub(super) joints: Vec<Joint>,
    pub(super) rod: Option<usize>,
    pub(in crate::suspension) levers: Option<[Lever; 2]>,
    pub(super) bar_sign: f64,
    /// Wheel's centre, axis and contact at ride height, from the axle's middle.
    pub(in crate::suspension) wheels: [[Vector; 2]; 2],
    pub(in crate::suspension) pinion: Vector,
}

impl LiveAxle {
    /// Prepares the axle, its linkage by this function.
    pub(super) fn ready(
        &self,
        linkage: impl FnOnce(Vec<Link>, Vector, bool) -> core::result::Result<Arc<AxleLinkage>, Free>,
    ) -> Result<PreparedLiveAxle<'_>> {
        self.check_parts()?;
        let wheel = self.wheel.centre.vector();
        let middle = vector(wheel.x, 0.0, wheel.z);
        let mut parts = Parts { middle, links: Vec::new(), names: Vec::new(), joints: Vec::new() };
        for link in self.all_links() {
            for (name, of) in link.called().into_iter().zip([drawn, mirrored]) {
                let (body, axle) = (of(link.body.vector()), of(link.axle.vector()));
                let limits = link.limits.map(|limit| limit.map(|limit| limit.quantity.si()));
                parts.add(name, body, axle, give(link.bushes), limits)?;
            }
        }
        let mut rod = None;
        if let Stated::Given(on) = &self.lateral_rod {
            rod = Some(parts.links.len());
            let limits = on.limits().map(|limit| limit.map(|limit| limit.quantity.si()));
            let (body, axle) = (on.body.vector(), on.axle.vector());
            parts.add(Cow::Borrowed("lateral rod"), body, axle, give(on.bushes()), limits)?;
        }
        if let Stated::Given(watt) = &self.watt {
            parts.add_watt(watt)?;
        }
        let linkage = linkage(parts.links, middle, self.watt.is_given()).map_err(free)?;
        let axis = self.wheel.axis();
        let levers = match &self.anti_roll_bar {
            Stated::Given(bar) => Some([Lever::new(bar, middle, drawn)?, Lever::new(bar, middle, mirrored)?]),
            Stated::None | Stated::Unknown => None,
        };
        let mut ready = PreparedLiveAxle {
            model: self,
            linkage,
            names: parts.names,
            joints: parts.joints,
            rod,
            levers,
            bar_sign: 1.0,
            wheels: [[wheel - middle, axis], [mirrored(wheel - middle), mirrored(axis)]],
            // Level where no pinion is drawn: its angle changes with the axle all the same.
            pinion: vector(self.to_nose(), 0.0, 0.0),
        };
        if let Some([left, _]) = &ready.levers
            && let Some((_, [rate, _])) = left.turn(seen(left, &ready.linkage.rest))
        {
            ready.bar_sign = 1.0_f64.copysign(rate);
        }
        if let Some(pinion) = &self.pinion {
            let (sine, cosine) = pinion.angle.quantity.si().sin_cos();
            ready.pinion = vector(self.to_nose() * cosine, 0.0, sine);
        }
        if let Stated::Given(on) = &self.coil_over
            && (on.body_eye.vector() - on.axle_eye.vector()).norm() < LEAST_LEVER
        {
            return Err(Error::document(
                "coil_over",
                "its eyes are nearer than 1 mm to each other: check the points",
            ));
        }
        Ok(ready)
    }

    /// As `prepare`; its linkage is shared by all stages that ask about it.
    #[cfg(feature = "sheet")]
    pub(super) fn shared(&self) -> Result<PreparedLiveAxle<'_>> {
        self.ready(AxleLinkage::kept)
    }
}

/// The eye of a drop link from what carries the bar, and its derivatives along heave and roll.
pub(super) fn seen(lever: &Lever, pose: &Pose) -> (Vector, [Vector; 2]) {
    let frame = &pose.frame;
    let (twists, eye) = ([&pose.heave, &pose.roll], lever.eye);
    match lever.carried_by {
        Mount::Body => {
            let arm = frame.direction(eye);
            (frame.middle + arm, twists.map(|twist| twist.point(arm).rate))
        }
        Mount::Axle => {
            let arm = eye - frame.middle;
            let rates = twists.map(|twist| frame.direction_here(-twist.point(arm).rate));
            (frame.direction_here(arm), rates)
        }
    }
}

/// Reason why the links do not make a linkage.
fn free(free: Free) -> Error {
    let message = match free {
        Free::Forward => "nothing holds the axle along the vehicle: no link leads forward or rearward",
        Free::Sideways => {
            "all links lie in parallel planes along the vehicle and nothing holds the axle sideways: add a lateral_rod or a watt, or stand two of the links at an angle"
        }
        Free::Yaw => "nothing keeps the axle from steering: its links meet in one line or run into one point",
        Free::Pitch => {
            "nothing keeps the axle from turning about its own length: set links above and below one another"
        }
        Free::Crank => "the rods do not hold the bell crank of the watt: they line up with its ends",
    };
    Error::document(if free == Free::Crank { "watt" } else { "links" }, message)
}

/// The links with their names and joints as they are gathered.
struct Parts<'a> {
    middle: Vector,
    links: Vec<Link>,
    names: Vec<Cow<'a, str>>,
    joints: Vec<Joint>,
}

impl<'a> Parts<'a> {
    fn push(
        &mut self,
        name: Cow<'a, str>,
        link: Link,
        ends: [(End, &'static str, Option<f64>); 2],
    ) -> Result<()> {
        let along = link.drawn(self.middle);
        if along.norm() < LEAST_LEVER {
            return Err(Error::document(&name, "it is shorter than 1 mm: check its points"));
        }
        for (end, word, limit) in ends {
            let (link, name, drawn) = (self.links.len(), OnceLock::new(), along.unit());
            self.joints.push(Joint { link, end, word, name, limit, drawn });
        }
        self.links.push(link);
        self.names.push(name);
        Ok(())
    }

    fn add(
        &mut self,
        name: Cow<'a, str>,
        body: Vector,
        axle: Vector,
        give: f64,
        limits: [Option<f64>; 2],
    ) -> Result<()> {
        let link = Link { body, axle: axle - self.middle, give, ..Link::default() };
        self.push(name, link, [(End::Body, "body", limits[0]), (End::Axle, "axle", limits[1])])
    }

    fn add_watt(&mut self, watt: &WattLinkage) -> Result<()> {
        let pivot = watt.pivot.vector();
        for (name, rod) in watt.rods() {
            let (arm, outer) = (rod.crank.vector() - pivot, rod.outer.vector());
            let limits = rod.limits().map(|limit| limit.map(|limit| limit.quantity.si()));
            let give = give(rod.bushes());
            let (link, crank, end) = match watt.carried_by {
                Mount::Axle => {
                    let axle = pivot - self.middle;
                    (
                        Link { axle, axle_crank: arm, body: outer, give, ..Link::default() },
                        End::CrankOnAxle,
                        End::Body,
                    )
                }
                Mount::Body => {
                    let axle = outer - self.middle;
                    (
                        Link { axle, body: pivot, body_crank: arm, give, ..Link::default() },
                        End::CrankOnBody,
                        End::Axle,
                    )
                }
            };
            self.push(Cow::Borrowed(name), link, [(crank, "crank", limits[0]), (end, "outer", limits[1])])?;
        }
        Ok(())
    }
}

impl PreparedLiveAxle<'_> {
    pub(super) fn name(&self, link: usize) -> &str {
        self.names.get(link).map_or("", |name| &**name)
    }

    pub(in crate::suspension) fn joint<'a>(&'a self, joint: &'a Joint) -> &'a str {
        joint.name.get_or_init(|| format!("{} {}", self.name(joint.link), joint.word))
    }

    pub(super) fn pose(&self, heave: Length, roll: Angle) -> Result<Box<Pose>> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no axle travels 10 m";
            roll: (-1) <= .. <= 1 ; "plausibility limit: no axle rolls by 57 deg";
        }
        let solve = || self.linkage.at(heave.si(), roll.si()).ok_or_else(|| self.beyond(heave, roll));
        #[cfg(feature = "sheet")]
        if let Some(places) = &self.linkage.places {
            return places.at([heave.si(), roll.si()], solve);
        }
        solve()
    }

    /// Reason why the linkage does not reach this position, and the travel that it has; or that it reaches two.
    pub(super) fn beyond(&self, heave: Length, roll: Angle) -> Error {
        let one = self.linkage.rolled_first(heave.si(), roll.si());
        let other = one.as_ref().and_then(|one| self.linkage.other_place(one, heave.si(), roll.si()));
        if let (Some(one), Some(other)) = (one, other) {
            let turned = said(Angle::from_si((one.pitch() - other.pitch()).abs()));
            let moved = said(Length::from_si((one.at[X] - other.at[X]).abs()));
            return cannot!(
                heave, roll;
                "leads to two places of the axle, {turned} in pinion angle and {moved} along the vehicle apart: that which it reaches rolled first and that which it reaches heaved first; the links hold it loosely there: move their points"
            );
        }
        let Some([droop, bump]) = self.linkage.range(roll.si()) else {
            return self.locked(roll);
        };
        let why = self.why(if heave.si() < 0.0 { &droop } else { &bump });
        let [droop, bump] = [droop, bump].map(|stop| Length::from_si(stop.place));
        cannot!(droop <= heave <= bump, roll; "cannot be reached: {why}")
    }

    pub(super) fn locked(&self, roll: Angle) -> Error {
        let [low, high] = self.linkage.roll_range();
        let why = self.why(if roll.si() < 0.0 { &low } else { &high });
        let [low, high] = [low, high].map(|stop| Angle::from_si(stop.place));
        cannot!(low <= roll <= high; "cannot be reached at ride height: {why}")
    }

    /// Reason why the axle stops.
    pub(super) fn why(&self, stop: &Stop) -> String {
        let link = self.name(stop.link);
        if stop.given_up {
            return format!("the search was given up after {TRIES} positions; check the points of {link}");
        }
        format!("{link} is over-extended")
    }
}
