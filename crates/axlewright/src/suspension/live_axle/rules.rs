//! Rules of the build sheet for a live axle on links.

use super::position::Found;
use crate::base::document::{Stated, Value};
use crate::base::section::{Rule, Whole, fields, rule};
use crate::spring::Mounting;
use crate::suspension::independent::double_wishbone_lines::SOURCE;
use crate::suspension::independent::stages::{OnDamper, TravelEachWay, TravelEnds, solid_at, travelled};
use crate::suspension::inputs::{At, TieRodBegun, Wheels, not_steered};
use crate::suspension::kinematics::over_travel::{
    Extremes, PathOverTravel, RollSteerOverTravel, ToeOverTravel, over_travel, steps_to, to_either_side,
};
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::{
    Axle, AxleBar, AxleCoilOver, Fitted, LateralRod, LeafForm, LiveAxle, NamedLink, WattLinkage, Wheel,
};
use crate::units::{
    Angle, Force, Length, LinearStiffness, Quantity, Ratio, RatioPerLength, RotationalStiffness,
};
use crate::{Error, Result, cannot};

/// Live axle on its links as a sheet draws it.
struct OnLinks {
    wheels: Option<Wheels>,
    /// Leaf springs, which would lead the axle too.
    leaf_form: Option<LeafForm>,
    centre: At,
    camber: Angle,
    toe: Angle,
    lower_links: LinkPair,
    /// A pair where it is not said.
    lower_fitted: Option<Fitted>,
    upper_links: LinkPair,
    upper_fitted: Fitted,
    lateral_rod: Whole<LateralRod>,
    watt: Whole<WattLinkage>,
}
fields!(OnLinks {
    wheels, leaf_form = "leaf.form", centre = "wheel.centre", camber = "wheel.camber", toe = "wheel.toe", lower_links, lower_fitted = "lower_links.fitted", upper_links,
    upper_fitted = "upper_links.fitted", lateral_rod, watt,
});

/// One kind of link along the vehicle.
pub(super) struct LinkPair {
    body: At,
    axle: At,
    body_bush: Option<LinearStiffness>,
    axle_bush: Option<LinearStiffness>,
}
fields!(LinkPair { body, axle, body_bush, axle_bush });

/// Live axle with what a rule asks about it.
struct Led {
    links: OnLinks,
    /// Loaded radius; not needed by results that do not depend on the ground.
    loaded_radius: Option<Length>,
    coil_over: Option<AxleCoilOver>,
    anti_roll_bar: Whole<AxleBar>,
}
fields!(Led { links, loaded_radius, coil_over, anti_roll_bar });

/// Live axle with the bushes of its links, which say where links that hold each other go.
struct Bushed {
    axle: Led,
    bushes: Bushes,
}
fields!(Bushed { axle, bushes });

struct Bushes {
    lower_links: LinkBushes,
    upper_links: LinkBushes,
    lateral_rod: LinkBushes,
    watt_upper_rod: RodBushes,
    watt_lower_rod: RodBushes,
}
fields!(Bushes {
    lower_links, upper_links, lateral_rod, watt_upper_rod = "watt.upper_rod", watt_lower_rod = "watt.lower_rod",
});

struct LinkBushes {
    body_bush: Option<LinearStiffness>,
    axle_bush: Option<LinearStiffness>,
}
fields!(LinkBushes { body_bush, axle_bush });

struct RodBushes {
    crank_bush: Option<LinearStiffness>,
    outer_bush: Option<LinearStiffness>,
}
fields!(RodBushes { crank_bush, outer_bush });

/// Live axle between its stops, and the lean that its joints allow.
struct BetweenStops {
    axle: Led,
    bushes: Bushes,
    limits: Limits,
    spring_base: Length,
    bump_remaining: Length,
    droop_remaining: Length,
}
fields!(BetweenStops { axle, bushes, limits, spring_base, bump_remaining, droop_remaining });

/// Live axle over the travel that is wanted, and its slopes at ride height: those of the drawing, or those that were read.
struct OverWanted {
    axle: Led,
    bushes: Bushes,
    rack_travel: Option<Length>,
    tie_rod: TieRodBegun,
    bump_steer: Angle,
    roll_steer: Ratio,
    bump: Length,
    droop: Length,
}
fields!(OverWanted { axle, bushes, rack_travel, tie_rod, bump_steer, roll_steer, bump = "steer_bump", droop = "steer_droop" });

/// Lean that the joints of the links allow.
struct Limits {
    lower_links: LinkLimits,
    upper_links: LinkLimits,
    lateral_rod: LinkLimits,
    watt_upper_rod: RodLimits,
    watt_lower_rod: RodLimits,
}
fields!(Limits {
    lower_links, upper_links, lateral_rod, watt_upper_rod = "watt.upper_rod", watt_lower_rod = "watt.lower_rod",
});

pub(super) type Limit = Option<Angle>;

struct LinkLimits {
    body_limit: Limit,
    axle_limit: Limit,
}
fields!(LinkLimits { body_limit, axle_limit });

struct RodLimits {
    crank_limit: Limit,
    outer_limit: Limit,
}
fields!(RodLimits { crank_limit, outer_limit });

type Damped = OnDamper<Led>;
fields!(Damped { linkage, mounting, open_length, closed_length });
fields!(Sprung { linkage, shortest, seat_offset, right_seat_offset });
fields!(RightSeats { seat_offset, rate, axis_force, motion_ratio, right_motion_ratio });

/// Live axle with the springs of its coil-overs.
struct Sprung {
    linkage: Led,
    /// Between the eyes of the left coil-over where its spring has its least gaps.
    shortest: Length,
    /// Between the eyes less between the seats, on the left and on the right.
    seat_offset: Option<Length>,
    right_seat_offset: Option<Length>,
}

/// Seats of the left coil-over, and what differs on the right: both have the same length between the eyes at ride height.
struct RightSeats {
    seat_offset: Length,
    rate: LinearStiffness,
    axis_force: Force,
    motion_ratio: Ratio,
    right_motion_ratio: Ratio,
}

impl RightSeats {
    /// Between the eyes less between the seats on the right: a spring that carries less there is longer.
    fn offset(&self) -> Result<Length> {
        let right = self.axis_force.si() * self.motion_ratio.si() / self.right_motion_ratio.si();
        Ok(self.seat_offset + Length::from_si((right - self.axis_force.si()) / self.rate.si()))
    }
}

/// Seats of the right coil-over.
pub(in crate::suspension) const RIGHT_SEATS: Rule = rule! {
    "axle.spring" RightSeats::offset, RightSeats
    takes { seat_offset, rate, axis_force, motion_ratio, right_motion_ratio }
    says "o + (F r / r_r - F) / k", SOURCE
};

/// Steer, instant axes, and how many ways the axle can move.
pub(in crate::suspension) const AT_RIDE: Rule = rule! {
    "axle" Bushed::at_ride, Bushed
    takes { axle.links = "axle", bushes = "axle" }
    needs { axle.loaded_radius = "axle.tyre.loaded_radius" }
    gives AtRide { bump_steer, roll_steer, roll_centre_height, side_view_angle, bind_roll_stiffness }
    says "suspension.LiveAxle at ride height", SOURCE
};
/// How many ways the axle can move, whatever its bushes are.
pub(in crate::suspension) const FREE: Rule = rule! {
    "axle" Led::free, Led
    takes { links = "axle" }
    gives Freedoms { freedoms, redundant }
    says "suspension.LiveAxle at ride height", SOURCE
};
pub(in crate::suspension) const COIL_OVER: Rule = rule! {
    "axle" Led::stroke, Led
    takes { links = "axle" }
    needs { coil_over }
    gives Stroke { motion_ratio, ratio_gradient, right_motion_ratio, right_ratio_gradient, eye_length, spring_base }
    says "suspension.LiveAxle at ride height: r = -dL/dz; base of the mean of both sides, sqrt(2 (q_l^2 + q_r^2)) / r_l with q = dL/dphi", SOURCE
};
/// Base of the springs in roll under their load.
pub(in crate::suspension) const STIFFNESS_BASE: Rule = rule! {
    "axle" Loaded::stiffness_base, Loaded
    takes {
        linkage.links = "axle", rate = "axle.spring.rate", axis_force = "axle.spring.axis_force", wheel_rate, spring_base,
    }
    needs { linkage.coil_over = "axle.coil_over" }
    says "sqrt(2 K / k) with the roll stiffness K of both coil-overs of suspension.LiveAxle at ride height, under their load and about the roll centre", SOURCE
};
/// Motion ratio on the right: as on the left, drawn or read, by the two of the drawing.
pub(in crate::suspension) const RIGHT_RATIO: Rule = rule! {
    "axle" BothRatios::right, BothRatios
    takes {
        motion_ratio = "axle.spring.motion_ratio", left = "axle.linkage_motion_ratio",
        right = "axle.linkage_right_motion_ratio",
    }
    says "r r_r / r_l of suspension.LiveAxle at ride height", SOURCE
};
pub(in crate::suspension) const BAR_RATIO: Rule = rule! {
    "axle" Led::bar_motion_ratio, Led
    takes { links = "axle" }
    needs { anti_roll_bar }
    says "suspension.LiveAxle at ride height: travel of the levers' ends over travel of the wheels, in roll", SOURCE
};
/// Travel of the linkage before a link is over-extended.
pub(in crate::suspension) const RANGE: Rule = rule! {
    "axle" Bushed::range, Bushed
    takes { axle.links = "axle", bushes = "axle" }
    uses { axle.anti_roll_bar = "axle.anti_roll_bar" }
    gives TravelEachWay { droop, bump }
    says "suspension.LiveAxle.travel_range", SOURCE
};
pub(in crate::suspension) const DAMPER: Rule = rule! {
    "axle.damper" Damped::ends, Damped
    takes { linkage.links = "axle", open_length, closed_length }
    needs { linkage.coil_over = "axle.coil_over", mounting }
    gives TravelEnds { droop, bump }
    says "suspension.LiveAxle: heave z where L(z) is the length of the damper", SOURCE
};
pub(in crate::suspension) const SPRING: Rule = rule! {
    "axle.spring" Sprung::end, Sprung
    takes {
        linkage.links = "axle", shortest = "axle.spring.shortest_between_eyes", seat_offset, right_seat_offset,
    }
    needs { linkage.coil_over = "axle.coil_over" }
    says "suspension.LiveAxle: heave z where L(z) is the least length, or where the linkage locks before", SOURCE
};
pub(in crate::suspension) const OVER_TRAVEL: Rule = rule! {
    "axle" BetweenStops::over_travel, BetweenStops
    takes { axle.links = "axle", bushes = "axle", limits = "axle", spring_base, bump_remaining = "axle.bump_compressed", droop_remaining }
    gives OverTravel {
        lateral_shift, pinion_angle_change, bind_misfit, bind_force, joint_remaining, crossed_roll, joints_without_limit,
    }
    says "suspension.LiveAxle at full bump b and droop d, half way, and crossed: heave (b - d) / 2, sin(roll) = (b + d) / base to either side", SOURCE
};

pub(in crate::suspension) const TOE: Rule = rule! {
    "axle" OverWanted::toe, OverWanted
    takes { axle.links = "axle", bushes = "axle", rack_travel, tie_rod, bump_steer, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives ToeOverTravel { toe_least, toe_most, bend }
    says "suspension.LiveAxle over the travel that is wanted: change of axle_steer, which one wheel has as toe-in and the other as toe-out", SOURCE
};
pub(in crate::suspension) const ROLL_STEER: Rule = rule! {
    "axle" OverWanted::roll_steer, OverWanted
    takes { axle.links = "axle", bushes = "axle", rack_travel, tie_rod, roll_steer, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    gives RollSteerOverTravel { roll_steer_least, roll_steer_most }
    says "suspension.LiveAxle rolled until one wheel is z in bump and the other z in droop: change of axle_steer over roll", SOURCE
};
pub(in crate::suspension) const PATH: Rule = rule! {
    "axle" OverWanted::path, OverWanted
    takes { axle.links = "axle", bushes = "axle", bump = "axle.steer_bump", droop = "axle.steer_droop" }
    needs { axle.loaded_radius = "axle.tyre.loaded_radius" }
    gives PathOverTravel { path_least, path_most }
    says "suspension.LiveAxle over the travel that is wanted: side_view_angle", SOURCE
};

/// Live axle at ride height.
struct AtRide {
    bump_steer: Angle,
    roll_steer: Ratio,
    roll_centre_height: Length,
    side_view_angle: Angle,
    bind_roll_stiffness: RotationalStiffness,
}

/// Freedoms of a live axle at ride height, and its links beyond need.
struct Freedoms {
    freedoms: Ratio,
    redundant: Ratio,
}

/// Springs of a live axle with their forces, and the rate that they have at the wheels.
struct Loaded {
    linkage: Led,
    rate: LinearStiffness,
    axis_force: Force,
    wheel_rate: LinearStiffness,
    spring_base: Length,
}
fields!(Loaded { linkage, rate, axis_force, wheel_rate, spring_base });

impl Loaded {
    /// Base on which springs of the wheel rate have the axle's roll stiffness: as the spring base, drawn or read, by the two of the drawing.
    fn stiffness_base(&self) -> Result<Length> {
        let model = self.linkage.model()?;
        let ready = model.shared()?;
        let stiffness = ready.stiffness_about_roll_centre(self.rate.si(), self.axis_force.si());
        let [.., drawn] = ready.stroke_at_ride().unwrap_or([f64::NAN; 6]);
        let base = (2.0 * stiffness.unwrap_or(f64::NAN) / self.wheel_rate.si()).sqrt();
        Ok(Length::from_si(self.spring_base.si() * (base / drawn)))
    }
}

/// Motion ratio that counts on the left, and those of both sides of the drawing.
struct BothRatios {
    motion_ratio: Ratio,
    left: Ratio,
    right: Ratio,
}
fields!(BothRatios { motion_ratio, left, right });

impl BothRatios {
    fn right(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(self.motion_ratio.si() * (self.right.si() / self.left.si())))
    }
}

/// Coil-overs of a live axle at ride height.
struct Stroke {
    /// In heave, on the left.
    motion_ratio: Ratio,
    ratio_gradient: RatioPerLength,
    right_motion_ratio: Ratio,
    right_ratio_gradient: RatioPerLength,
    eye_length: Length,
    /// On which both coil-overs work in roll.
    spring_base: Length,
}

/// Live axle between full droop and full bump, and crossed: one side at its bump stop, the other fully drooped.
struct OverTravel {
    lateral_shift: Length,
    pinion_angle_change: Angle,
    bind_misfit: Length,
    bind_force: Force,
    joint_remaining: Angle,
    crossed_roll: Angle,
    joints_without_limit: Ratio,
}

const UPRIGHT: Angle = Angle::from_si(0.0);
const RIDE: Length = Length::from_si(0.0);

impl LinkPair {
    fn link(&self, fitted: Option<Fitted>) -> NamedLink {
        NamedLink {
            fitted,
            body: self.body.point(),
            axle: self.axle.point(),
            body_bush: self.body_bush.map(Value::new),
            axle_bush: self.axle_bush.map(Value::new),
            body_limit: None,
            axle_limit: None,
        }
    }
}

impl Led {
    fn model(&self) -> Result<LiveAxle> {
        let on = &self.links;
        if on.wheels == Some(Wheels::Independent) {
            return Err(Error::document("wheels", APART));
        }
        if on.leaf_form.is_some() {
            return Err(Error::document("leaf", BESIDE_LEAVES));
        }
        Ok(LiveAxle {
            axle: Axle::Front,
            wheel: Wheel {
                centre: on.centre.point(),
                camber: Value::new(on.camber),
                toe: Value::new(on.toe),
                loaded_radius: Value::new(self.loaded_radius.unwrap_or(Length::from_si(1.0))),
            },
            lower_links: Some(on.lower_links.link(on.lower_fitted)),
            upper_links: Some(on.upper_links.link(Some(on.upper_fitted))),
            links: Vec::new(),
            lateral_rod: Stated::from(on.lateral_rod.drawn("lateral_rod")?.cloned()),
            watt: Stated::from(on.watt.drawn("watt")?.cloned()),
            coil_over: Stated::from(self.coil_over.clone()),
            anti_roll_bar: Stated::from(self.anti_roll_bar.drawn("anti_roll_bar")?.cloned()),
            pinion: None,
            pitching: None,
        })
    }

    fn free(&self) -> Result<Freedoms> {
        let model = self.model()?;
        let ready = model.shared()?;
        let on = ready.found(RIDE, UPRIGHT)?;
        let [freedoms, redundant] = [on.freedoms, on.redundant].map(|on| Ratio::from_si(on as f64));
        Ok(Freedoms { freedoms, redundant })
    }

    fn stroke(&self) -> Result<Stroke> {
        let [length, motion_ratio, gradient, right_ratio, right_gradient, base] =
            self.model()?.shared()?.stroke_at_ride().unwrap_or([f64::NAN; 6]);
        Ok(Stroke {
            motion_ratio: Ratio::from_si(motion_ratio),
            ratio_gradient: RatioPerLength::from_si(gradient),
            right_motion_ratio: Ratio::from_si(right_ratio),
            right_ratio_gradient: RatioPerLength::from_si(right_gradient),
            eye_length: Length::from_si(length),
            spring_base: Length::from_si(base),
        })
    }

    fn bar_motion_ratio(&self) -> Result<Ratio> {
        let model = self.model()?;
        let ready = model.shared()?;
        Ok(ready.found(RIDE, UPRIGHT)?.bar_motion_ratio)
    }
}

impl Bushes {
    /// Refuses links that hold each other while the bush of any end of them is not known: it says which of them gives way.
    fn known(&self, model: &LiveAxle, redundant: usize) -> Result<()> {
        let links = |on: &LinkBushes| [on.body_bush, on.axle_bush];
        let rods = |on: &RodBushes| [on.crank_bush, on.outer_bush];
        let (link, rod) = (["body_bush", "axle_bush"], ["crank_bush", "outer_bush"]);
        let all = [
            ("lower_links", model.lower_links.is_some(), link, links(&self.lower_links)),
            ("upper_links", model.upper_links.is_some(), link, links(&self.upper_links)),
            ("lateral_rod", model.lateral_rod.is_given(), link, links(&self.lateral_rod)),
            ("watt.upper_rod", model.watt.is_given(), rod, rods(&self.watt_upper_rod)),
            ("watt.lower_rod", model.watt.is_given(), rod, rods(&self.watt_lower_rod)),
        ];
        for (part, drawn, names, bushes) in all {
            for (name, bush) in names.into_iter().zip(bushes) {
                if redundant > 0 && drawn && bush.is_none() {
                    return Err(Error::document(format!("{part}.{name}"), HELD));
                }
            }
        }
        Ok(())
    }
}

impl Bushed {
    fn at_ride(&self) -> Result<AtRide> {
        let model = self.axle.model()?;
        let ready = model.shared()?;
        self.bushes.known(&model, ready.linkage.redundant())?;
        let on = ready.found(RIDE, UPRIGHT)?;
        Ok(AtRide {
            // The left wheel toes out if its axle steers to the left.
            bump_steer: -on.heave_steer,
            roll_steer: on.roll_steer,
            roll_centre_height: on.roll_centre_height,
            side_view_angle: on.side_view_angle,
            bind_roll_stiffness: on.bind_roll_stiffness,
        })
    }

    fn range(&self) -> Result<TravelEachWay> {
        let model = self.axle.model()?;
        let ready = model.shared()?;
        self.bushes.known(&model, ready.linkage.redundant())?;
        let on = ready.travel_range(UPRIGHT)?;
        Ok(TravelEachWay { droop: -on.droop, bump: on.bump })
    }
}

impl OverWanted {
    /// Change of steer from ride height over the travel: toe-in of one wheel and toe-out of the other. A slope that was read turns the curve.
    fn toe(&self) -> Result<ToeOverTravel> {
        not_steered(self.rack_travel, &self.tie_rod)?;
        let model = self.axle.model()?;
        let ready = model.shared()?;
        self.bushes.known(&model, ready.linkage.redundant())?;
        let at_ride = ready.found(RIDE, UPRIGHT)?;
        let (rest, read) = (at_ride.axle_steer.si(), (self.bump_steer + at_ride.heave_steer).si() / BUMP);
        let drawn = |heave: f64| Ok(rest - ready.found(Length::from_si(heave), UPRIGHT)?.axle_steer.si());
        let all = over_travel(self.bump, self.droop, |heave| Ok(drawn(heave)? + read * heave))?;
        let [toe_least, toe_most] = all.mirrored().quantities();
        Ok(ToeOverTravel { toe_least, toe_most, bend: Angle::from_si(0.5 * (drawn(BUMP)? + drawn(-BUMP)?)) })
    }

    /// Steer over roll, to either side, as far as the travel lets the axle roll at the height at which it stands.
    fn roll_steer(&self) -> Result<RollSteerOverTravel> {
        not_steered(self.rack_travel, &self.tie_rod)?;
        let model = self.axle.model()?;
        let ready = model.shared()?;
        self.bushes.known(&model, ready.linkage.redundant())?;
        let at_ride = ready.found(RIDE, UPRIGHT)?;
        let (rest, slope) = (at_ride.axle_steer.si(), at_ride.roll_steer.si());
        let mut all = Extremes::at(slope);
        let half_track = self.axle.links.centre.y.si();
        for travel in steps_to(to_either_side(self.bump, self.droop)) {
            let roll = (travel / half_track).min(CROSSED).asin();
            for roll in [roll, -roll] {
                all = all.with((ready.found(RIDE, Angle::from_si(roll))?.axle_steer.si() - rest) / roll);
            }
        }
        let [roll_steer_least, roll_steer_most] = all.moved(self.roll_steer.si() - slope).quantities();
        Ok(RollSteerOverTravel { roll_steer_least, roll_steer_most })
    }

    /// Lean of the path of the contact points over the travel.
    fn path(&self) -> Result<PathOverTravel> {
        let model = self.axle.model()?;
        let ready = model.shared()?;
        self.bushes.known(&model, ready.linkage.redundant())?;
        let at = |heave: f64| Ok(ready.found(Length::from_si(heave), UPRIGHT)?.side_view_angle.si());
        let [path_least, path_most] = over_travel(self.bump, self.droop, at)?.quantities();
        Ok(PathOverTravel { path_least, path_most })
    }
}

impl OnDamper<Led> {
    /// Heave at which the first damper of both coil-overs is open, and at which the first is closed; not known of one that stands apart.
    fn ends(&self) -> Result<TravelEnds> {
        if self.mounting == Some(Mounting::Apart) {
            return Ok(TravelEnds::UNKNOWN);
        }
        let model = self.linkage.model()?;
        let ready = model.shared()?;
        let both = |length: Length| -> Result<[f64; 2]> {
            Ok([ready.heave_for(length.si(), 0)?, ready.heave_for(length.si(), 1)?])
        };
        let ([one, other], [up, down]) = (both(self.open_length)?, both(self.closed_length)?);
        Ok(TravelEnds { droop: Length::from_si(one.max(other)), bump: Length::from_si(up.min(down)) })
    }
}

impl Sprung {
    /// Heave at which the first spring of both sides has its least gaps, or at which the linkage locks before that.
    fn end(&self) -> Result<Length> {
        let model = self.linkage.model()?;
        let ready = model.shared()?;
        let offsets = self.seat_offset.zip(self.right_seat_offset);
        let right = offsets.map_or(self.shortest, |(left, right)| self.shortest + (right - left));
        let end = |side: usize| {
            let shortest = if side == 0 { self.shortest } else { right };
            let found = ready.heave_for(shortest.si(), side).map(Length::from_si);
            let range = || ready.travel_range(UPRIGHT).map(|on| [on.droop, on.bump]);
            solid_at(shortest, found, range, |heave| ready.eyes_at(heave, side))
        };
        let (left, right) = (end(0)?, end(1)?);
        Ok(if right < left { right } else { left })
    }
}

impl Limits {
    /// Puts the limits on the joints; how many kinds of joint have none.
    fn on(&self, model: &mut LiveAxle) -> usize {
        let mut limits = Vec::with_capacity(8);
        let links =
            [(&mut model.lower_links, &self.lower_links), (&mut model.upper_links, &self.upper_links)];
        for (link, on) in links.into_iter().filter_map(|(link, on)| Some((link.as_mut()?, on))) {
            (link.body_limit, link.axle_limit) =
                (on.body_limit.map(Value::new), on.axle_limit.map(Value::new));
            limits.extend([on.body_limit, on.axle_limit]);
        }
        if let Stated::Given(rod) = &mut model.lateral_rod {
            let on = &self.lateral_rod;
            (rod.body_limit, rod.axle_limit) = (on.body_limit.map(Value::new), on.axle_limit.map(Value::new));
            limits.extend([on.body_limit, on.axle_limit]);
        }
        if let Stated::Given(watt) = &mut model.watt {
            let rods =
                [(&mut watt.upper_rod, &self.watt_upper_rod), (&mut watt.lower_rod, &self.watt_lower_rod)];
            for (rod, on) in rods {
                (rod.crank_limit, rod.outer_limit) =
                    (on.crank_limit.map(Value::new), on.outer_limit.map(Value::new));
                limits.extend([on.crank_limit, on.outer_limit]);
            }
        }
        limits.into_iter().filter(|limit| limit.is_none()).count()
    }
}

impl BetweenStops {
    fn over_travel(&self) -> Result<OverTravel> {
        let mut model = self.axle.model()?;
        let unlimited = self.limits.on(&mut model);
        let [bump, droop] = travelled(self.bump_remaining, self.droop_remaining)?.map(Quantity::si);
        let base = self.spring_base.si();
        let sine = (bump + droop) / base;
        if sine.abs() > CROSSED {
            let (bump_remaining, droop_remaining, spring_base) =
                (self.bump_remaining, self.droop_remaining, self.spring_base);
            return Err(
                cannot!(bump_remaining, droop_remaining, spring_base; "stands the axle on end, crossed between the stops"),
            );
        }
        let ready = model.shared()?;
        self.bushes.known(&model, ready.linkage.redundant())?;
        let at = |heave: f64, roll: f64| ready.found(Length::from_si(heave), Angle::from_si(roll));
        let (crossed, roll) = (0.5 * (bump - droop), sine.asin());
        let upright = [at(bump, 0.0)?, at(-droop, 0.0)?, at(0.5 * bump, 0.0)?, at(-0.5 * droop, 0.0)?];
        let ends = [&upright[0], &upright[1], &at(crossed, roll)?, &at(crossed, -roll)?];
        let heaved = upright.each_ref();
        // Without a limit this is not a number in all of them.
        let least = ends.iter().map(|on| on.joint_remaining.si()).fold(f64::NAN, f64::min);
        Ok(OverTravel {
            lateral_shift: most(&heaved, |on| on.lateral_shift),
            pinion_angle_change: most(&heaved, |on| on.pinion_angle_change),
            bind_misfit: most(&ends, |on| on.bind_misfit),
            bind_force: most(&ends, |on| on.bind_force),
            joint_remaining: Angle::from_si(least),
            crossed_roll: Angle::from_si(roll),
            joints_without_limit: Ratio::from_si(unlimited as f64),
        })
    }
}

/// Largest of them to either side.
fn most<Q: Quantity>(on: &[&Found<'_>], of: fn(&Found<'_>) -> Q) -> Q {
    // `max` would drop a NaN.
    let each = on.iter().map(|on| of(on).si().abs());
    Q::from_si(each.fold(0.0, |most: f64, on| if on.is_nan() || on > most { on } else { most }))
}

/// Message where both are drawn.
pub(in crate::suspension) const BESIDE_LEAVES: &str = "leaf springs lead an axle as links and rods do, both are drawn, and what they do to each other is not computed: write what was \
                                        measured of them together, such as bind_force and joint_remaining";
/// Message where wheels that move by themselves have an axle between them.
pub(in crate::suspension) const APART: &str = "they are written as independent, but links or leaf springs of a live axle are drawn: one of the two is wrong";

/// Message where the bush of a link that others hold is not known.
const HELD: &str = "it is not written, and the links hold each other: write the stiffness of their bushes, 1 GN/m for an end that is rigid";

/// Sine of the roll beyond which no axle is asked about.
const CROSSED: f64 = 0.8;
