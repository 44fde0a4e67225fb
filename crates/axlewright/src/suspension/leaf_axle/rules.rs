//! Rules of the build sheet for a live axle on leaf springs.

use crate::base::document::{Stated, Value};
use crate::base::section::{Rule, Whole, fields, rule};
use crate::suspension::independent::double_wishbone_lines::SOURCE;
use crate::suspension::independent::stages::{TravelEachWay, TravelEnds, travelled};
use crate::suspension::inputs::{At, TieRodBegun, Wheels, not_steered};
use crate::suspension::kinematics::over_travel::{
    Extremes, PathOverTravel, RollSteerOverTravel, ToeOverTravel, over_travel, steps_to, to_either_side,
};
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::live_axle::rules::{APART, BESIDE_LEAVES};
use crate::suspension::{
    Axle, AxleBar, AxleDamper, LeafAxle, LeafForm, LeafRate, LeafSpring, Leaves, Point, Wheel,
};
use crate::units::{
    Angle, Force, Length, LinearStiffness, Mass, Ratio, RotationalStiffness, STANDARD_GRAVITY, Stress, Torque,
};
use crate::{Error, Result};

/// Mass on one spring.
struct Carried {
    sprung_mass: Mass,
}
fields!(Carried { sprung_mass });

impl Carried {
    fn weight(&self) -> Result<Force> {
        Ok(Force::from_si(self.sprung_mass.si() * STANDARD_GRAVITY))
    }
}

pub(super) const WEIGHT: Rule = rule! {
    "axle" Carried::weight, Carried
    takes { sprung_mass }
    says "m g", "standard gravity: 3rd CGPM"
};

/// Leaf springs and axle as a sheet draws them.
struct OnLeaves {
    wheels: Option<Wheels>,
    /// Links, which would lead the axle too.
    lower_links: Option<Length>,
    upper_links: Option<Length>,
    wheel_x: Length,
    wheel_z: Length,
    fixed_eye: At,
    shackle_eye: At,
    shackle_pivot: At,
    seat: At,
    seat_angle: Option<Angle>,
    clamped_length: Length,
    eye_offset: Option<Length>,
    form: LeafForm,
}
fields!(OnLeaves {
    wheels, lower_links = "lower_links.body.x", upper_links = "upper_links.body.x", wheel_x = "wheel.centre.x",
    wheel_z = "wheel.centre.z", fixed_eye = "leaf.fixed_eye", shackle_eye = "leaf.shackle_eye",
    shackle_pivot = "leaf.shackle_pivot", seat = "leaf.seat", seat_angle = "leaf.seat_angle",
    clamped_length = "leaf.clamped_length", eye_offset = "leaf.eye_offset", form = "leaf.form",
});

/// Axle on its leaf springs with what a rule asks about it.
struct Sprung {
    springs: OnLeaves,
    loaded: Option<Loaded>,
    leaves: Option<Leaves>,
    ground: Option<Ground>,
    wheel_y: Option<Length>,
    damper: Option<Eyes>,
    open_length: Option<Length>,
    closed_length: Option<Length>,
    anti_roll_bar: Whole<AxleBar>,
    bump_clearance: Option<Length>,
}
fields!(Sprung {
    springs,
    loaded,
    leaves,
    ground,
    wheel_y,
    damper,
    open_length,
    closed_length,
    anti_roll_bar,
    bump_clearance,
});

/// Load and rate of one spring.
struct Loaded {
    load: Force,
    rate: LinearStiffness,
}
fields!(Loaded { load = "leaf.load", rate = "spring.rate" });

/// Wheel on the ground.
struct Ground {
    loaded_radius: Length,
    camber: Option<Angle>,
}
fields!(Ground { loaded_radius = "tyre.loaded_radius", camber = "wheel.camber" });

/// Eyes of a damper.
struct Eyes {
    body_eye: At,
    axle_eye: At,
}
fields!(Eyes { body_eye, axle_eye });

/// Rods across the vehicle, which would lead the axle too.
struct Across {
    lateral_rod: Option<Length>,
    watt: Option<Length>,
}
fields!(Across { lateral_rod = "lateral_rod.body.x", watt = "watt.pivot.x" });

struct OnGround {
    axle: Sprung,
    across: Across,
}
fields!(OnGround { axle, across });

struct BetweenStops {
    axle: Sprung,
    across: Across,
    bump_remaining: Length,
    droop_remaining: Length,
}
fields!(BetweenStops { axle, across, bump_remaining, droop_remaining });

/// Axle over the travel that is wanted, and its slopes at ride height: those of the drawing, or those that were read.
struct OverWanted {
    axle: Sprung,
    across: Across,
    rack_travel: Option<Length>,
    tie_rod: TieRodBegun,
    bump_steer: Angle,
    roll_steer: Ratio,
    bump: Length,
    droop: Length,
}
fields!(OverWanted { axle, across, rack_travel, tie_rod, bump_steer, roll_steer, bump = "steer_bump", droop = "steer_droop" });

/// Limits of the bump travel of an axle on leaf springs.
struct Ends {
    stop_end: Length,
    damper_end: Length,
    /// From full droop, until the bump stop is touched.
    bump_stop_travel: Option<Length>,
    droop_remaining: Length,
}
fields!(Ends { stop_end, damper_end, bump_stop_travel, droop_remaining });

/// Damper of an axle on drawn leaf springs.
struct OnDamper {
    fixed_eye: Length,
    damper_end: Length,
}
fields!(OnDamper { fixed_eye, damper_end });

impl OnDamper {
    /// Travel at which it is closed: the stops give way until then.
    fn closed(&self) -> Result<Length> {
        Ok(if self.fixed_eye.si().is_nan() { self.fixed_eye } else { self.damper_end })
    }
}

struct UnderTorque {
    axle: Sprung,
    drive_torque: Torque,
}
fields!(UnderTorque { axle, drive_torque });

/// Rate of the spring alone.
pub(super) const RATE: Rule = rule! {
    "axle" Sprung::own_rate, Sprung
    takes { springs = "axle" }
    needs { leaves = "axle.leaf.leaves" }
    says "suspension.LeafAxle of its leaves, see spring.leaf_pack_rate", SOURCE
};
pub(in crate::suspension) const AT_RIDE: Rule = rule! {
    "axle" Sprung::at_ride, Sprung
    takes { springs = "axle" }
    needs { loaded = "axle" }
    gives AtRide { wheel_rate, roll_steer, spring_base, wind_up_rate, bump_steer, shackle_opening }
    says "suspension.LeafAxle at ride height", SOURCE
};
pub(in crate::suspension) const ON_GROUND: Rule = rule! {
    "axle" OnGround::at_ride, OnGround
    takes { axle.springs = "axle", across = "axle" }
    needs { axle.loaded = "axle", axle.ground = "axle" }
    gives InstantAxes { roll_centre_height, side_view_angle }
    says "suspension.LeafAxle on the ground at ride height", SOURCE
};
pub(super) const DAMPER_RATIO: Rule = rule! {
    "axle" Sprung::damper_ratio, Sprung
    takes { springs = "axle" }
    needs { loaded = "axle", damper }
    says "suspension.LeafAxle at ride height: r_d = -dL/dz", SOURCE
};
/// In roll, which asks for no load.
pub(in crate::suspension) const BAR_RATIO: Rule = rule! {
    "axle" Sprung::bar_motion_ratio, Sprung
    takes { springs = "axle" }
    needs { wheel_y = "axle.wheel.centre.y", anti_roll_bar }
    says "suspension.LeafAxle at ride height: travel of the levers' ends over travel of the wheels, in roll", SOURCE
};
pub(in crate::suspension) const DAMPER: Rule = rule! {
    "axle.damper" Sprung::damper_ends, Sprung
    takes { springs = "axle" }
    needs { loaded = "axle", damper = "axle.damper", open_length, closed_length }
    gives TravelEnds { droop, bump }
    says "suspension.LeafAxle: heave z where L(z) is the length of the damper", SOURCE
};
pub(super) const STOP: Rule = rule! {
    "axle" Sprung::stop, Sprung
    takes { springs = "axle" }
    needs { loaded = "axle", bump_clearance }
    says "suspension.LeafAxle: heave z where left_bump_remaining is nothing", SOURCE
};
pub(in crate::suspension) const BUMP_REMAINING: Rule = rule! {
    "axle" Ends::remaining, Ends
    takes {
        stop_end = "axle.leaf.stop_end", damper_end = "axle.damper.bump_end", bump_stop_travel, droop_remaining,
    }
    says "the least of both ends and, where it is written, b - z",
        "definition: remaining travel is the least of what ends it"
};
pub(in crate::suspension) const BEYOND_STOP: Rule = rule! {
    "axle" OnDamper::closed, OnDamper
    takes { fixed_eye = "axle.leaf.fixed_eye.x", damper_end = "axle.damper.bump_end" }
    says "the closed damper", "definition: a bump stop gives way until the damper is closed"
};
/// Travel of the springs before a shackle or a drop link of the bar lines up.
pub(in crate::suspension) const RANGE: Rule = rule! {
    "axle" Sprung::range, Sprung
    takes { springs = "axle" }
    needs { loaded = "axle" }
    uses { anti_roll_bar = "axle.anti_roll_bar" }
    gives TravelEachWay { droop, bump }
    says "suspension.LeafAxle.travel_range, to 0.01 mm", SOURCE
};
pub(in crate::suspension) const OVER_TRAVEL: Rule = rule! {
    "axle" BetweenStops::over_travel, BetweenStops
    takes { axle.springs = "axle", across = "axle", bump_remaining = "axle.bump_compressed", droop_remaining }
    needs { axle.loaded = "axle" }
    gives OverTravel { pinion_angle_change, shackle_remaining, lateral_shift }
    says "suspension.LeafAxle at full bump and droop, the worse of both", SOURCE
};
pub(in crate::suspension) const TOE: Rule = rule! {
    "axle" OverWanted::toe, OverWanted
    takes { axle.springs = "axle", rack_travel, tie_rod, bump_steer, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    needs { axle.loaded = "axle" }
    gives ToeOverTravel { toe_least, toe_most, bend }
    says "suspension.LeafAxle over the travel that is wanted: change of axle_steer, which one wheel has as toe-in and the other as toe-out", SOURCE
};
pub(in crate::suspension) const ROLL_STEER: Rule = rule! {
    "axle" OverWanted::roll_steer, OverWanted
    takes { axle.springs = "axle", rack_travel, tie_rod, roll_steer, bump = "axle.steer_bump", droop = "axle.steer_droop" }
    needs { axle.loaded = "axle", axle.wheel_y = "axle.wheel.centre.y" }
    gives RollSteerOverTravel { roll_steer_least, roll_steer_most }
    says "suspension.LeafAxle rolled until one wheel is z in bump and the other z in droop: change of axle_steer over roll", SOURCE
};
pub(in crate::suspension) const PATH: Rule = rule! {
    "axle" OverWanted::path, OverWanted
    takes { axle.springs = "axle", across = "axle", bump = "axle.steer_bump", droop = "axle.steer_droop" }
    needs { axle.loaded = "axle", axle.ground = "axle" }
    gives PathOverTravel { path_least, path_most }
    says "suspension.LeafAxle over the travel that is wanted: side_view_angle", SOURCE
};
pub(super) const BUMP_STRESS: Rule = rule! {
    "axle" BetweenStops::bump_stress, BetweenStops
    takes { axle.springs = "axle", bump_remaining = "axle.bump_compressed" }
    needs { axle.loaded = "axle", axle.leaves = "axle.leaf.leaves" }
    says "suspension.LeafAxle at full bump: left_leaf_stress", SOURCE
};
/// Turn of the housing at ride height.
pub(in crate::suspension) const WIND_UP: Rule = rule! {
    "axle" UnderTorque::wind_up_angle, UnderTorque
    takes { axle.springs = "axle", drive_torque }
    needs { axle.loaded = "axle", axle.ground = "axle" }
    says "suspension.LeafAxle.wind_up at ride height", SOURCE
};
pub(super) const WOUND_STRESS: Rule = rule! {
    "axle" UnderTorque::leaf_stress, UnderTorque
    takes { axle.springs = "axle", drive_torque }
    needs { axle.loaded = "axle", axle.ground = "axle", axle.leaves = "axle.leaf.leaves" }
    says "suspension.LeafAxle.wind_up at ride height, torque forward and in reverse: the greater leaf_stress", SOURCE
};

/// Margin that is wanted of leaves, and their stress under the drive torque.
struct WoundTold {
    #[allow(dead_code, reason = "it says that there are leaves")]
    form: LeafForm,
    wound_stress: Option<Stress>,
    margin: Ratio,
}
fields!(WoundTold { form, wound_stress, margin });

impl WoundTold {
    /// Not known where that stress is not: it may be the greater one.
    fn margin(&self) -> Result<Ratio> {
        Ok(if self.wound_stress.is_some() { self.margin } else { Ratio::from_si(f64::NAN) })
    }
}

pub(in crate::suspension) const WOUND_TOLD: Rule = rule! {
    "axle.leaf" WoundTold::margin, WoundTold
    takes { form, wound_stress, margin = "wanted.spring_strength" }
    says "the margin that is wanted, where the stress under the drive torque is known", "definition: the largest counts";
    lacking "the drive torque bends the leaves, too: write drive_torque of the axle, 0 N·m where it is not driven"
};

/// Axle at ride height.
struct AtRide {
    wheel_rate: LinearStiffness,
    roll_steer: Ratio,
    /// Base on which springs of the wheel rate have the axle's roll stiffness.
    spring_base: Length,
    wind_up_rate: RotationalStiffness,
    bump_steer: Angle,
    shackle_opening: Angle,
}

/// Axes of roll and pitch over the ground.
struct InstantAxes {
    roll_centre_height: Length,
    side_view_angle: Angle,
}

/// Axle at full bump and full droop, the worse of both.
struct OverTravel {
    pinion_angle_change: Angle,
    /// Until the shackles are in line with their springs.
    shackle_remaining: Angle,
    lateral_shift: Length,
}

/// Stiffness of springs that hold the axle upright by themselves.
const STIFF: LinearStiffness = LinearStiffness::from_si(1e5);

/// Accuracy in metres with which the end of the springs' travel is found: finer would only take longer.
const FINE: f64 = 1e-5;

const LEVEL: Angle = Angle::from_si(0.0);
const RIDE: Length = Length::from_si(0.0);
const ONE: Length = Length::from_si(1.0);

/// Refuses what else leads the axle.
fn alone(others: [Option<Length>; 2]) -> Result<()> {
    match others {
        [None, None] => Ok(()),
        _ => Err(Error::document("leaf", BESIDE_LEAVES)),
    }
}

impl Across {
    fn nothing(&self) -> Result<()> {
        alone([self.lateral_rod, self.watt])
    }
}

impl Sprung {
    /// The axle. Where nothing asks for it a spring carries 1 N, and the wheel has a radius of 1 m.
    fn model(&self) -> Result<LeafAxle> {
        let on = &self.springs;
        if on.wheels == Some(Wheels::Independent) {
            return Err(Error::document("wheels", APART));
        }
        alone([on.lower_links, on.upper_links])?;
        let (loaded, ground) = (self.loaded.as_ref(), self.ground.as_ref());
        let wheel_y = self.wheel_y.unwrap_or(on.seat.y);
        Ok(LeafAxle {
            axle: Axle::Rear,
            wheel: Wheel {
                centre: Point::new(on.wheel_x, wheel_y, on.wheel_z),
                camber: Value::new(ground.and_then(|on| on.camber).unwrap_or(LEVEL)),
                toe: Value::new(LEVEL),
                loaded_radius: Value::new(ground.map_or(ONE, |on| on.loaded_radius)),
            },
            leaf: LeafSpring {
                fixed_eye: on.fixed_eye.point(),
                shackle_eye: on.shackle_eye.point(),
                shackle_pivot: on.shackle_pivot.point(),
                seat: on.seat.point(),
                seat_angle: on.seat_angle.map(Value::new),
                clamped_length: Value::new(on.clamped_length),
                eye_offset: on.eye_offset.map(Value::new),
                form: on.form,
                load: Value::new(loaded.map_or(Force::from_si(1.0), |on| on.load)),
                leaves: self.leaves.clone(),
            },
            spring: loaded.map(|on| LeafRate { rate: Value::new(on.rate) }),
            damper: self.damper.as_ref().map(|eyes| AxleDamper {
                body_eye: eyes.body_eye.point(),
                axle_eye: eyes.axle_eye.point(),
                open_length: self.open_length.map(Value::new),
                closed_length: self.closed_length.map(Value::new),
            }),
            coil_over: Stated::Unknown,
            anti_roll_bar: Stated::from(self.anti_roll_bar.drawn("anti_roll_bar")?.cloned()),
            bump_clearance: self.bump_clearance.map(Value::new),
            pinion_angle: None,
            braking: None,
            drive_share: None,
        })
    }

    fn own_rate(&self) -> Result<LinearStiffness> {
        Ok(self.model()?.shared()?.rate())
    }

    fn at_ride(&self) -> Result<AtRide> {
        let model = self.model()?;
        let ready = model.shared()?;
        let on = ready.at(RIDE, LEVEL)?;
        // Springs of the wheel rate `k` on the base `t` have the roll stiffness `k t^2 / 2`.
        let base = (2.0 * on.roll_stiffness.si() / on.wheel_rate.si()).sqrt();
        let in_bump = ready.at(Length::from_si(BUMP), LEVEL)?;
        Ok(AtRide {
            wheel_rate: on.wheel_rate,
            roll_steer: on.roll_steer,
            spring_base: Length::from_si(base),
            wind_up_rate: on.wind_up_rate,
            // The left wheel toes out if its axle steers to the left.
            bump_steer: on.axle_steer - in_bump.axle_steer,
            shackle_opening: on.left_shackle_opening,
        })
    }

    fn damper_ratio(&self) -> Result<Ratio> {
        Ok(self.model()?.shared()?.at(RIDE, LEVEL)?.damper_motion_ratio)
    }

    fn bar_motion_ratio(&self) -> Result<Ratio> {
        let mut model = self.model()?;
        model.spring = Some(LeafRate { rate: Value::new(STIFF) });
        let on = model.shared()?.at(RIDE, LEVEL)?;
        Ok(on.bar_motion_ratio)
    }

    /// Heave at which the damper is open, and at which it is closed.
    fn damper_ends(&self) -> Result<TravelEnds> {
        let (Some(open), Some(closed)) = (self.open_length, self.closed_length) else {
            return Ok(TravelEnds::UNKNOWN);
        };
        let model = self.model()?;
        let ready = model.shared()?;
        Ok(TravelEnds { droop: ready.heave_for_damper(open)?, bump: ready.heave_for_damper(closed)? })
    }

    /// Heave at which the seats touch their bump stops.
    fn stop(&self) -> Result<Length> {
        self.model()?.shared()?.heave_for_stop()
    }

    /// Heave in droop and bump up to which the springs and the drop links of a bar go.
    fn range(&self) -> Result<TravelEachWay> {
        let model = self.model()?;
        let on = model.shared()?.travel(LEVEL, FINE)?;
        Ok(TravelEachWay { droop: -on.droop, bump: on.bump })
    }
}

impl Ends {
    /// The least of them; an axle that stands at full droop has no more than all of the travel.
    fn remaining(&self) -> Result<Length> {
        let stop = self
            .bump_stop_travel
            .map_or(f64::INFINITY, |stop| stop.si() - self.droop_remaining.si().max(0.0));
        Ok(Length::from_si(self.stop_end.si().min(self.damper_end.si()).min(stop)))
    }
}

impl OnGround {
    fn at_ride(&self) -> Result<InstantAxes> {
        self.across.nothing()?;
        let on = self.axle.model()?.shared()?.at(RIDE, LEVEL)?;
        Ok(InstantAxes { roll_centre_height: on.roll_centre_height, side_view_angle: on.side_view_angle })
    }
}

impl OverWanted {
    /// Change of steer from ride height over the travel: toe-in of one wheel and toe-out of the other. A slope that was read turns the curve.
    fn toe(&self) -> Result<ToeOverTravel> {
        not_steered(self.rack_travel, &self.tie_rod)?;
        let model = self.axle.model()?;
        let ready = model.shared()?;
        let steer =
            |heave: f64| -> Result<f64> { Ok(ready.at(Length::from_si(heave), LEVEL)?.axle_steer.si()) };
        let (rest, bumped) = (steer(0.0)?, steer(BUMP)?);
        let read = (self.bump_steer.si() - (rest - bumped)) / BUMP;
        let all = over_travel(self.bump, self.droop, |heave| Ok(rest - steer(heave)? + read * heave))?;
        let [toe_least, toe_most] = all.mirrored().quantities();
        let bend = rest - 0.5 * (bumped + steer(-BUMP)?);
        Ok(ToeOverTravel { toe_least, toe_most, bend: Angle::from_si(bend) })
    }

    /// Steer over roll as far as the travel lets the axle roll at the height at which it stands: to both sides alike, as both springs are alike.
    fn roll_steer(&self) -> Result<RollSteerOverTravel> {
        not_steered(self.rack_travel, &self.tie_rod)?;
        let model = self.axle.model()?;
        let ready = model.shared()?;
        let at_ride = ready.at(RIDE, LEVEL)?;
        let (rest, slope) = (at_ride.axle_steer.si(), at_ride.roll_steer.si());
        let half_track = self.axle.wheel_y.map_or(f64::NAN, |y| y.si());
        let mut all = Extremes::at(slope);
        for travel in steps_to(to_either_side(self.bump, self.droop)) {
            let roll = (travel / half_track).asin();
            all = all.with((ready.at(RIDE, Angle::from_si(roll))?.axle_steer.si() - rest) / roll);
        }
        let [roll_steer_least, roll_steer_most] = all.moved(self.roll_steer.si() - slope).quantities();
        Ok(RollSteerOverTravel { roll_steer_least, roll_steer_most })
    }

    /// Lean of the path of the contact points over the travel.
    fn path(&self) -> Result<PathOverTravel> {
        self.across.nothing()?;
        let model = self.axle.model()?;
        let ready = model.shared()?;
        let at = |heave: f64| Ok(ready.at(Length::from_si(heave), LEVEL)?.side_view_angle.si());
        let [path_least, path_most] = over_travel(self.bump, self.droop, at)?.quantities();
        Ok(PathOverTravel { path_least, path_most })
    }
}

impl BetweenStops {
    fn over_travel(&self) -> Result<OverTravel> {
        self.across.nothing()?;
        let [bump, droop] = travelled(self.bump_remaining, self.droop_remaining)?;
        let model = self.axle.model()?;
        let ready = model.shared()?;
        let (mut change, mut remaining, mut shift) = (0.0_f64, f64::INFINITY, 0.0_f64);
        for heave in [bump, -droop] {
            let on = ready.at(heave, LEVEL)?;
            let opening = on.left_shackle_opening.si();
            change = change.max(on.pinion_angle_change.si().abs());
            shift = shift.max(on.lateral_shift.si().abs());
            remaining = remaining.min(opening).min(core::f64::consts::PI - opening);
        }
        Ok(OverTravel {
            pinion_angle_change: Angle::from_si(change),
            shackle_remaining: Angle::from_si(remaining),
            lateral_shift: Length::from_si(shift),
        })
    }

    /// Stress of the leaves at full bump, whatever the droop.
    fn bump_stress(&self) -> Result<Stress> {
        let [bump, _] = travelled(self.bump_remaining, RIDE)?;
        Ok(self.axle.model()?.shared()?.at(bump, LEVEL)?.left_leaf_stress)
    }
}

impl UnderTorque {
    fn wind_up_angle(&self) -> Result<Angle> {
        Ok(self.axle.model()?.shared()?.wind_up(RIDE, self.drive_torque)?.wind_up_angle)
    }

    fn leaf_stress(&self) -> Result<Stress> {
        let model = self.axle.model()?;
        let ready = model.shared()?;
        let mut peak = f64::NAN;
        for torque in [self.drive_torque, -self.drive_torque] {
            peak = ready.wind_up(RIDE, torque)?.leaf_stress.si().max(peak);
        }
        Ok(Stress::from_si(peak))
    }
}
