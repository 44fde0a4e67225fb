//! The linkage of a wheel that is prepared once and asked many times.

use super::linkage::{Above, Drawn, Linkage, Pose};
use super::range::Reach;
#[cfg(feature = "sheet")]
use crate::base::text::said;
use crate::suspension::kinematics::vector::{Scalar, Vector, vector};
use crate::suspension::parts::{
    AntiRollBar, Arm, Axle, Braking, Carrier, CoilSpring, Damper, Driving, JointLimits, Point, SpringSeats,
    TieRod, TorsionBar, Wheel,
};
use crate::units::Length;
use crate::{Error, Result, cannot, valid};

/// Parts of a model; both models share all of them except the upper guide of the upright.
pub(in crate::suspension) struct Parts<'a> {
    pub(super) axle: Axle,
    pub(super) lower_arm: &'a Arm,
    pub(super) upper: Upper<'a>,
    pub(super) tie_rod: &'a TieRod,
    pub(super) wheel: &'a Wheel,
    pub(super) coil_over: Option<Mounting<'a>>,
    pub(super) torsion_bar: Option<&'a TorsionBar>,
    pub(super) anti_roll_bar: Option<&'a AntiRollBar>,
    pub(super) braking: Option<&'a Braking>,
    pub(super) driving: Option<&'a Driving>,
    pub(super) joint_limits: Option<&'a JointLimits>,
}

/// Upper guide of the upright: an arm, or a strut by top mount and lower end.
#[derive(Clone, Copy)]
pub(super) enum Upper<'a> {
    Arm(&'a Arm),
    Strut(&'a Point, &'a Point),
}

/// A coil-over, or the leg of a strut: its key and the names of its ends.
pub(super) struct Mounting<'a> {
    pub(super) names: [&'static str; 3],
    pub(super) ends: [&'a Point; 2],
    pub(super) carried_by: Carrier,
    pub(super) spring: Option<&'a CoilSpring>,
    pub(super) spring_seats: Option<&'a SpringSeats>,
    pub(super) damper: Option<&'a Damper>,
}

/// Fields of a model that change when something is moved.
pub(in crate::suspension) struct Changing<'a> {
    /// Points that go along with a wheel that is moved in its arch, except arm, tie rod, wheel and bar.
    pub(super) points: Vec<&'a mut Point>,
    pub(super) lower_arm: &'a mut Arm,
    pub(super) tie_rod: &'a mut TieRod,
    pub(super) wheel: &'a mut Wheel,
    pub(super) spring: Option<&'a mut CoilSpring>,
    pub(super) torsion_bar: Option<&'a mut TorsionBar>,
    pub(super) anti_roll_bar: Option<&'a mut AntiRollBar>,
    pub(super) braking: Option<&'a mut Braking>,
}

/// A model of one wheel on its linkage.
pub(in crate::suspension) trait Independent: Clone {
    fn parts(&self) -> Parts<'_>;
    fn changing(&mut self) -> Changing<'_>;
}

/// Between the body and something that moves, in whose frame the lower end is.
#[derive(Clone, Copy)]
pub(super) struct Ends {
    pub(super) body: Vector,
    pub(super) lower: Vector,
    pub(super) carrier: Carrier,
}

/// Length between two ends, its shortening over travel, and how that changes with travel.
#[derive(Clone, Copy)]
pub(super) struct Stroke<S = f64> {
    pub(in crate::suspension) length: S,
    pub(in crate::suspension) ratio: S,
    pub(in crate::suspension) gradient: S,
}

impl Ends {
    #[inline(always)]
    pub(super) fn stroke<S: Scalar>(&self, pose: &Pose<S>) -> Stroke<S> {
        let eye = pose.body(self.carrier).point(self.lower.spread());
        let between = eye.at - self.body.spread();
        let length = between.norm();
        // First and second derivative of the length with the angle, then with travel.
        let slope = between.dot(eye.rate) / length;
        let bend = (eye.rate.square() + between.dot(eye.second) - slope * slope) / length;
        let (lift, curve) = (pose.wheel.rate.z, pose.wheel.second.z);
        Stroke { length, ratio: -slope / lift, gradient: (slope * curve / lift - bend) / (lift * lift) }
    }
}

/// A double wishbone or a strut that is prepared once and asked many times: see [`Prepare`](crate::Prepare).
///
/// The linkage is solved at ride height, its coordinates in the frames of what carries them; each answer starts from there.
pub struct PreparedLinkage<'a> {
    pub(super) parts: Parts<'a>,
    pub(in crate::suspension) linkage: Linkage,
    /// Axis of the wheel, in the upright's frame.
    axis: Vector,
    /// Eyes of the coil-over, and seats of a separate coil.
    pub(super) eyes: Option<Ends>,
    pub(super) seats: Option<Ends>,
    /// Pin of the upper joint in the frames of upper arm and upright, stud of the lower one in those of lower arm and upright.
    pub(super) upper: [Vector; 2],
    pub(in crate::suspension) lower: [Vector; 2],
    /// Sine of the tie rod's lean against the steering axis, and its direction.
    pub(super) rod_lean: f64,
    pub(super) rod: Vector,
    pub(super) bar_sign: f64,
    pub(super) half_track: f64,
}

pub(super) fn in_range(travel: Length, rack_travel: Length) -> Result<()> {
    valid! {
        travel: (-10) <= .. <= 10 ; "plausibility limit: no wheel travels 10 m";
        rack_travel: (-10) <= .. <= 10 ; "plausibility limit: no rack moves 10 m";
    }
    Ok(())
}

/// Reason why the linkage does not reach this position, and the travel that it has.
fn beyond(reach: &mut Reach<'_>, travel: Length) -> Error {
    let rack_travel = Length::from_si(reach.rack);
    let [(droop, droop_end), (bump, bump_end)] = match reach.range() {
        Ok(range) => range,
        Err(end) => return locked(rack_travel, end.sentence()),
    };
    let end = if travel.si() < 0.0 { droop_end } else { bump_end };
    let ([droop, bump], why) = ([droop, bump].map(Length::from_si), end.sentence());
    cannot!(droop <= travel <= bump, rack_travel; "cannot be reached: {why}")
}

pub(super) fn locked(rack_travel: Length, why: &str) -> Error {
    cannot!(rack_travel; "cannot be reached at ride height: {why}")
}

impl Parts<'_> {
    fn check(&self, wheel: fn(&Wheel) -> Result<()>) -> Result<()> {
        let arm = |name: &str, arm: &Arm| {
            arm.front_pivot.check(name, "front_pivot")?;
            arm.rear_pivot.check(name, "rear_pivot")?;
            arm.ball_joint.check(name, "ball_joint")
        };
        if let Upper::Arm(upper) = self.upper {
            arm("upper_arm", upper)?;
        }
        arm("lower_arm", self.lower_arm)?;
        if let Some(on) = &self.coil_over {
            on.check()?;
        }
        self.tie_rod.inner.check("tie_rod", "inner")?;
        self.tie_rod.outer.check("tie_rod", "outer")?;
        wheel(self.wheel)?;
        self.torsion_bar.map_or(Ok(()), TorsionBar::check)?;
        self.braking.map_or(Ok(()), Braking::check)?;
        self.driving.map_or(Ok(()), Driving::check)?;
        self.joint_limits.map_or(Ok(()), JointLimits::check)?;
        if self.driving.is_some() && self.braking.is_none() {
            let message = "it needs `braking`: the height of the centre of gravity and the wheelbase";
            return Err(Error::document("driving", message));
        }
        if let Some(bar) = self.anti_roll_bar {
            bar.link_eye.check("anti_roll_bar", "link_eye")?;
            bar.lever_end.check("anti_roll_bar", "lever_end")?;
            bar.lever_pivot.check("anti_roll_bar", "lever_pivot")?;
        }
        self.check_kind()
    }

    /// Refuses parts of the other kind of suspension.
    fn check_kind(&self) -> Result<()> {
        let limits = self.joint_limits;
        if let Upper::Arm(_) = self.upper {
            return match limits.and_then(|on| on.top_mount.as_ref()) {
                Some(_) => Err(Error::document("joint_limits.top_mount", "a double wishbone has none")),
                None => Ok(()),
            };
        }
        if limits.is_some_and(|on| on.upper_ball.is_some()) {
            return Err(Error::document("joint_limits.upper_ball", "a strut has a `top_mount`"));
        }
        let seats = self.coil_over.as_ref().and_then(|on| on.spring_seats);
        for (key, carrier) in [
            ("leg.spring_seats.carried_by", seats.map(|on| on.carried_by)),
            ("torsion_bar.turned_by", self.torsion_bar.map(|on| on.turned_by)),
            ("anti_roll_bar.carried_by", self.anti_roll_bar.map(|on| on.carried_by)),
        ] {
            if carrier == Some(Carrier::UpperArm) {
                return Err(Error::document(key, "a strut has no upper arm"));
            }
        }
        Ok(())
    }
}

impl Mounting<'_> {
    fn check(&self) -> Result<()> {
        let ([part, above, below], [body, lower]) = (self.names, self.ends);
        body.check(part, above)?;
        lower.check(part, below)?;
        self.spring.map_or(Ok(()), |spring| spring.check(part))?;
        self.damper.map_or(Ok(()), |damper| damper.check(part))?;
        let apart = |key: &str, a: &Point, b: &Point| {
            if (a.vector() - b.vector()).norm() < 0.001 {
                return Err(Error::document(
                    key,
                    "its ends are nearer than 1 mm to each other: check the points",
                ));
            }
            Ok(())
        };
        if let Some(seats) = self.spring_seats {
            let key = format!("{part}.spring_seats");
            seats.body.check(&key, "body")?;
            seats.lower.check(&key, "lower")?;
            apart(&key, &seats.body, &seats.lower)?;
        }
        apart(part, body, lower)
    }
}

impl<'a> PreparedLinkage<'a> {
    pub(in crate::suspension) fn new(parts: Parts<'a>) -> Result<PreparedLinkage<'a>> {
        PreparedLinkage::with(parts, Wheel::check)
    }

    /// These results off the ground: wheel radius and loads on it are unknown.
    #[cfg(feature = "sheet")]
    pub(super) fn hanging(parts: Parts<'a>) -> Result<PreparedLinkage<'a>> {
        PreparedLinkage::with(parts, Wheel::check_hanging)
    }

    fn with(parts: Parts<'a>, wheel: fn(&Wheel) -> Result<()>) -> Result<PreparedLinkage<'a>> {
        parts.check(wheel)?;
        let (above, top) = match parts.upper {
            Upper::Arm(arm) => (Above::Arm(arm), &arm.ball_joint),
            Upper::Strut(top, low) => (Above::Strut(low.vector()), top),
        };
        let drawn = Drawn {
            lower_ball: parts.lower_arm.ball_joint.vector(),
            upper_ball: top.vector(),
            inner: parts.tie_rod.inner.vector(),
            outer: parts.tie_rod.outer.vector(),
            wheel: parts.wheel.centre.vector(),
        };
        let fault = |(key, message): (&str, &str)| Error::document(key, message);
        let mut linkage = Linkage::new(parts.lower_arm, &above, &drawn).map_err(fault)?;
        if let Some(bar) = parts.anti_roll_bar {
            let (eye, end, pivot) = (bar.link_eye.vector(), bar.lever_end.vector(), bar.lever_pivot.vector());
            linkage = linkage.with_bar(eye, bar.carried_by, end, pivot).map_err(fault)?;
        }
        let ends = |body: &Point, lower: &Point, carrier: Carrier| Ends {
            body: body.vector(),
            lower: linkage.here(carrier, lower.vector()),
            carrier,
        };
        let mounting = parts.coil_over.as_ref();
        let eyes = mounting.map(|on| ends(on.ends[0], on.ends[1], on.carried_by));
        let seats = mounting.and_then(|on| on.spring_seats);
        let seats = seats.map(|on| ends(&on.body, &on.lower, on.carried_by));
        let rest = &linkage.rest;
        let rod = rest.tie_rod.unit();
        let (pin, stud) = (linkage.upper_pin(rest), rest.steering_axis);
        let mut ready = PreparedLinkage {
            axis: linkage.direction_here(Carrier::Upright, parts.wheel.axis()),
            eyes,
            seats,
            upper: [Carrier::UpperArm, Carrier::Upright].map(|on| linkage.direction_here(on, pin)),
            lower: [Carrier::LowerArm, Carrier::Upright].map(|on| linkage.direction_here(on, stud)),
            rod_lean: rod.dot(stud).clamp(-1.0, 1.0).arcsine(),
            rod,
            bar_sign: rest.bar.map_or(1.0, |(_, rate)| 1.0_f64.copysign(rate)),
            half_track: 0.0,
            linkage,
            parts,
        };
        ready.half_track = ready.contact(&ready.linkage.rest).1.y;
        Ok(ready)
    }

    /// Axis of the wheel and its contact point.
    #[inline(always)]
    pub(super) fn contact<S: Scalar>(&self, pose: &Pose<S>) -> (Vector<S>, Vector<S>) {
        let axis = pose.upright.direction(self.axis.spread());
        let down = axis * axis.z - vector(S::default(), S::default(), S::of(1.0));
        (axis, pose.wheel.at + down.unit() * S::of(self.parts.wheel.loaded_radius.quantity.si()))
    }

    /// Spring at ride height: length between its eyes, motion ratio, and the change of that with travel; none without a coil-over.
    #[cfg(feature = "sheet")]
    pub(super) fn stroke_at_ride(&self) -> Option<[f64; 3]> {
        let eyes = self.eyes?;
        let stroke = self.seats.unwrap_or(eyes).stroke(&self.linkage.rest);
        Some([eyes.stroke(&self.linkage.rest).length, stroke.ratio, stroke.gradient])
    }

    /// Travel at which the eyes of the coil-over are this far apart, with the rack in its middle; none without a coil-over.
    #[cfg(feature = "sheet")]
    pub(super) fn travel_for(&self, length: Length) -> Result<Length> {
        let length = length.si();
        let Some(eyes) = self.eyes else { return Ok(Length::from_si(f64::NAN)) };
        let mut travel = 0.0;
        for _ in 0..20 {
            let Some(pose) = self.linkage.at(travel, 0.0) else { break };
            let stroke = eyes.stroke(&pose);
            let off = stroke.length - length;
            if off.abs() <= 1e-12 {
                return Ok(Length::from_si(travel));
            }
            // Halley's step, with `d(off)/dz = -r`.
            travel += 2.0 * off * stroke.ratio / (2.0 * stroke.ratio * stroke.ratio + off * stroke.gradient);
        }
        let [length, drawn] =
            [length, eyes.stroke(&self.linkage.rest).length].map(|on| said(Length::from_si(on)));
        Err(cannot!(
            "the linkage does not bring the eyes of the coil-over {length} apart; at ride height they are {drawn} apart"
        ))
    }

    /// Length between the eyes of the coil-over at a travel, with the rack in its middle; none beyond the linkage or without a coil-over.
    #[cfg(feature = "sheet")]
    pub(super) fn eyes_at(&self, travel: Length) -> Option<Length> {
        let pose = self.linkage.at(travel.si(), 0.0)?;
        Some(Length::from_si(self.eyes?.stroke(&pose).length))
    }

    pub(super) fn pose(&self, travel: Length, rack_travel: Length) -> Result<Pose> {
        self.reached(&mut self.linkage.reach(rack_travel.si()), travel)
    }

    /// This position with the known part of the range at this travel of the rack.
    pub(super) fn reached(&self, reach: &mut Reach<'_>, travel: Length) -> Result<Pose> {
        in_range(travel, Length::from_si(reach.rack))?;
        reach.at(travel.si()).ok_or_else(|| beyond(reach, travel))
    }
}
