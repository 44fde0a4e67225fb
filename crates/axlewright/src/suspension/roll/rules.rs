//! Rules of the build sheet that hold for every axle, whatever leads it, and for both axles in a turn.

use crate::base::document::{Stated, Value};
use crate::base::section::{Rule, fields, rule};
use crate::suspension::inputs::{Suspension, Wheels};
use crate::suspension::live_axle::rules::{APART, BESIDE_LEAVES as DRAWN_BESIDE_LEAVES};
use crate::suspension::roll::roll_balance::Limits;
use crate::suspension::{Axle, Balance, Carrier, LeafForm, Mount, RollAxle, RollBalance};
use crate::units::{
    Acceleration, Angle, Force, Length, LinearStiffness, Mass, Quantity, Ratio, RotationalStiffness,
    STANDARD_GRAVITY, Torque,
};
use crate::{Error, Result};

/// Travel of a linkage and of the stops within it.
struct Travel {
    linkage_bump: Length,
    bump_remaining: Length,
    linkage_droop: Length,
    droop_remaining: Length,
}
fields!(Travel { linkage_bump, bump_remaining, linkage_droop, droop_remaining });

impl Travel {
    /// The lesser of the remaining travel of the linkage in bump and in droop.
    fn remaining(&self) -> Result<Length> {
        let (bump, droop) =
            (self.linkage_bump - self.bump_remaining, self.linkage_droop - self.droop_remaining);
        Ok(Length::from_si(bump.si().min(droop.si())))
    }
}

pub(in crate::suspension) const LINKAGE_REMAINING: Rule = rule! {
    "axle" Travel::remaining, Travel
    takes { linkage_bump, bump_remaining = "axle.bump_compressed", linkage_droop, droop_remaining }
    says "the lesser of what remains in bump, the stop compressed, and in droop", "definition: remaining travel is the least of what ends it"
};

/// Points of a linkage of which anything is drawn, and its range.
struct Drawn {
    lower_arm: Option<Length>,
    leg: Option<Length>,
    lower_links: Option<Length>,
    leaf: Option<Length>,
    linkage_bump: Option<Length>,
    linkage_droop: Option<Length>,
}
fields!(Drawn { lower_arm, leg, lower_links, leaf, linkage_bump, linkage_droop });

impl Drawn {
    /// Nothing, where the range of what is drawn is known.
    fn told(&self) -> Result<Length> {
        let points = [self.lower_arm, self.leg, self.lower_links, self.leaf];
        let drawn = points.iter().any(Option::is_some);
        if drawn && (self.linkage_bump.is_none() || self.linkage_droop.is_none()) {
            let why = "the linkage is drawn, and how far it goes is not known";
            return Err(Error::Missing { argument: "linkage_bump", why });
        }
        Ok(Length::from_si(0.0))
    }
}

pub(in crate::suspension) const RANGE_TOLD: Rule = rule! {
    "axle" Drawn::told, Drawn
    takes {
        lower_arm = "axle.lower_arm.ball_joint.x", leg = "axle.leg.lower_end.x",
        lower_links = "axle.lower_links.axle.x", leaf = "axle.leaf.fixed_eye.x", linkage_bump, linkage_droop,
    }
    says "0 m", "definition: a linkage that is drawn ends the travel where it locks"
};

/// Joints of the links of a live axle; those of the links along the vehicle all have a limit.
struct Joints {
    least_joint_remaining: Angle,
    joints_without_limit: Ratio,
    lower_body_limit: Angle,
    lower_axle_limit: Angle,
    upper_body_limit: Angle,
    upper_axle_limit: Angle,
}
fields!(Joints {
    least_joint_remaining,
    joints_without_limit,
    lower_body_limit,
    lower_axle_limit,
    upper_body_limit,
    upper_axle_limit,
});

impl Joints {
    /// Lean that the first joint has left; not known unless every joint has a limit.
    fn remaining(&self) -> Result<Angle> {
        let all = self.joints_without_limit.si() == 0.0;
        Ok(if all { self.least_joint_remaining } else { Angle::from_si(f64::NAN) })
    }
}

pub(in crate::suspension) const JOINT_REMAINING: Rule = rule! {
    "axle" Joints::remaining, Joints
    takes {
        least_joint_remaining, joints_without_limit,
        lower_body_limit = "axle.lower_links.body_limit", lower_axle_limit = "axle.lower_links.axle_limit",
        upper_body_limit = "axle.upper_links.body_limit", upper_axle_limit = "axle.upper_links.axle_limit",
    }
    says "the least of all joints of the links", SEE_LIVE;
    lacking "what holds the axle sideways has joints, too: lateral_rod or watt needs the limits of its ends"
};

/// Force along the vehicle at an axle, and the path of what it acts on.
pub(super) struct Pitch {
    /// Share of the whole force.
    pub(super) share: Ratio,
    /// Forward lean of the path in bump.
    pub(super) path_angle: Angle,
    pub(super) wheelbase: Length,
    pub(super) centre_of_gravity_height: Length,
}
fields!(Pitch { share, path_angle, wheelbase, centre_of_gravity_height });

impl Pitch {
    /// Share of the pitch that the linkage of a front axle holds.
    fn held_in_front(&self) -> Result<Ratio> {
        let (wheelbase, height) = (self.wheelbase.si(), self.centre_of_gravity_height.si());
        Ok(Ratio::from_si(self.share.si() * self.path_angle.si().tan() * wheelbase / height))
    }
    /// Share of the pitch that the linkage of a rear axle holds.
    pub(super) fn held_at_rear(&self) -> Result<Ratio> {
        Ok(-self.held_in_front()?)
    }
}

const IN_FRONT: &str = "s tan(theta) l / h";
const AT_REAR: &str = "-s tan(theta) l / h";
const BRAKE_PITCH: &str = "see suspension.DoubleWishbone and suspension.LiveAxle, brake_anti_pitch";
pub(super) const DRIVE_PITCH: &str =
    "see suspension.DoubleWishbone and suspension.LiveAxle, drive_anti_pitch";
macro_rules! pitch {
    ($held:ident, $share:literal, $path_angle:literal, $formula:ident, $source:ident) => {
        rule! {
            "vehicle" Pitch::$held, Pitch
            takes { share = $share, path_angle = $path_angle, wheelbase, centre_of_gravity_height }
            says $formula, $source
        }
    };
}
pub(in crate::suspension) const ANTI_DIVE: Rule =
    pitch!(held_in_front, "front.brake_share", "front.braked_angle", IN_FRONT, BRAKE_PITCH);
pub(in crate::suspension) const BRAKE_ANTI_LIFT: Rule =
    pitch!(held_at_rear, "rear.brake_share", "rear.braked_angle", AT_REAR, BRAKE_PITCH);
pub(in crate::suspension) const DRIVE_ANTI_LIFT: Rule =
    pitch!(held_in_front, "front.drive_share", "front.driven_angle", IN_FRONT, DRIVE_PITCH);
pub(in crate::suspension) const ANTI_SQUAT: Rule =
    pitch!(held_at_rear, "rear.drive_share", "rear.driven_angle", AT_REAR, DRIVE_PITCH);

/// Wheels, and what of a live axle is drawn.
struct Apart {
    wheels: Wheels,
    lower_links: Option<Length>,
    upper_links: Option<Length>,
    leaf_form: Option<LeafForm>,
}
fields!(Apart { wheels, lower_links, upper_links, leaf_form });

/// Nothing where each wheel moves by itself; not known of a live axle.
fn nothing<Q: Quantity>(of: &Apart) -> Result<Q> {
    let drawn = of.lower_links.is_some() || of.upper_links.is_some() || of.leaf_form.is_some();
    match of.wheels {
        Wheels::Independent if drawn => Err(Error::document("wheels", APART)),
        Wheels::Independent => Ok(Q::from_si(0.0)),
        Wheels::LiveAxle => Ok(Q::from_si(f64::NAN)),
    }
}

const fn apart<Q: Quantity>() -> Rule {
    rule! {
        "axle" nothing::<Q>, Apart
        takes {
            wheels, lower_links = "axle.lower_links.body.x", upper_links = "axle.upper_links.body.x",
            leaf_form = "axle.leaf.form",
        }
        says "nothing where each wheel moves by itself", "definition: there is no axle between them"
    }
}

pub(in crate::suspension) const NO_LENGTH: Rule = apart::<Length>();
pub(in crate::suspension) const NO_ANGLE: Rule = apart::<Angle>();
pub(in crate::suspension) const NO_FORCE: Rule = apart::<Force>();

/// Motion ratio of a drawing, and the angle that was read at the mount.
struct DrawnRatio {
    drawn: Ratio,
    /// Between the spring or damper and the travel at its mount.
    angle: Angle,
}
fields!(DrawnRatio { drawn, angle });

impl DrawnRatio {
    /// Ratio at the mount that has the ratio of the drawing.
    fn mount_ratio(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(self.drawn.si() / self.angle.si().cos()))
    }
}

const MOUNTED: &str = "geometry: the part of the mount's travel that lies along the spring or damper";
pub(in crate::suspension) const SPRING_MOUNT: Rule = rule! {
    "axle.spring" DrawnRatio::mount_ratio, DrawnRatio
    takes { drawn = "axle.linkage_motion_ratio", angle }
    says "r / cos(a) of the linkage as it is drawn", MOUNTED
};
pub(in crate::suspension) const DAMPER_MOUNT: Rule = rule! {
    "axle.damper" DrawnRatio::mount_ratio, DrawnRatio
    takes { drawn = "axle.leaf.damper_ratio", angle }
    says "r / cos(a) of the axle as it is drawn", MOUNTED
};

/// Parts that one type of suspension alone has.
struct DrawnParts {
    upper_arm: Option<Length>,
    lower_arm: Option<Length>,
    leg: Option<Length>,
}
fields!(DrawnParts { upper_arm, lower_arm, leg });

impl DrawnParts {
    fn wheels(&self) -> Result<Wheels> {
        match self.upper_arm.or(self.lower_arm).or(self.leg) {
            Some(_) => Ok(Wheels::Independent),
            None => Err(Error::Missing { argument: "upper_arm", why: "nothing is drawn that says it" }),
        }
    }
}

pub(in crate::suspension) const DRAWN_WHEELS: Rule = rule! {
    "axle" DrawnParts::wheels, DrawnParts
    takes {
        upper_arm = "axle.upper_arm.ball_joint.y", lower_arm = "axle.lower_arm.ball_joint.y", leg = "axle.leg.top_mount.y",
    }
    says "independent where arms or a strut are drawn", "definition"
};

/// Share of the front axle in the braking force.
struct Braked {
    front_share: Ratio,
}
fields!(Braked { front_share });

impl Braked {
    fn rear_share(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(1.0 - self.front_share.si()))
    }
}

pub(in crate::suspension) const REAR_BRAKE_SHARE: Rule = rule! {
    "front" Braked::rear_share, Braked
    takes { front_share = "front.brake_share" }
    says "1 - s_f", "definition: both shares add to one"
};

/// Type of the suspension of an axle.
struct Chosen {
    suspension: Suspension,
}
fields!(Chosen { suspension });

impl Chosen {
    fn wheels(&self) -> Result<Wheels> {
        Ok(match self.suspension {
            Suspension::DoubleWishbone | Suspension::Strut => Wheels::Independent,
            Suspension::LiveAxleOnLinks | Suspension::LiveAxleOnLeafSprings => Wheels::LiveAxle,
        })
    }
}

pub(in crate::suspension) const WHEELS: Rule = rule! {
    "axle" Chosen::wheels, Chosen
    takes { suspension }
    says "live_axle of a suspension with a live axle, else independent", "definition"
};

/// Axle that the engine drives.
struct Driven {
    driven: Axle,
}
fields!(Driven { driven });

impl Driven {
    fn share_in_front(&self) -> Result<Ratio> {
        Ok(self.share_of(Axle::Front))
    }
    fn share_at_rear(&self) -> Result<Ratio> {
        Ok(self.share_of(Axle::Rear))
    }
    fn share_of(&self, axle: Axle) -> Ratio {
        Ratio::from_si(if self.driven == axle { 1.0 } else { 0.0 })
    }
}

const ONE_AXLE: &str = "common practice, no source: one axle drives on the road";
pub(in crate::suspension) const FRONT_DRIVE_SHARE: Rule = rule! {
    "driveline" Driven::share_in_front, Driven
    takes { driven }
    says "1 of the driven axle", ONE_AXLE
};
pub(in crate::suspension) const REAR_DRIVE_SHARE: Rule = rule! {
    "driveline" Driven::share_at_rear, Driven
    takes { driven }
    says "1 of the driven axle", ONE_AXLE
};

/// Drive torque of an axle: what the engine gives, and what the tyres hold.
struct Drive {
    driven: Axle,
    output_torque: Option<Torque>,
    grip_torque: Option<Torque>,
}
fields!(Drive { driven, output_torque, grip_torque });

impl Drive {
    fn in_front(&self) -> Result<Torque> {
        Ok(self.of(Axle::Front))
    }
    fn at_rear(&self) -> Result<Torque> {
        Ok(self.of(Axle::Rear))
    }
    /// The lesser of those that are known; not known of the other axle.
    fn of(&self, axle: Axle) -> Torque {
        let torques = [self.output_torque, self.grip_torque].into_iter().flatten();
        let least = torques.map(Quantity::si).fold(f64::NAN, f64::min);
        Torque::from_si(if self.driven == axle { least } else { f64::NAN })
    }
}

const NOT_DRIVEN: &str =
    "driveline.driven is the other axle: write drive_torque, 0 N·m where this one is not driven too";
const DRIVES: &str = "min(T, T_g) of the driven axle";
const GEARED: &str = "balance of power through a geared train, see driveline.TorquePath";
const HOLDS: &str = "T_g of the driven axle";
const MOMENTS: &str = "balance of moments at the wheel";
macro_rules! driving {
    ($of:ident, $formula:ident, $source:ident, $($inputs:tt)+) => {
        rule! {
            "driveline" Drive::$of, Drive
            takes { driven }
            $($inputs)+
            says $formula, $source; lacking NOT_DRIVEN
        }
    };
}
macro_rules! drives {
    ($of:ident) => {
        driving!(
            $of, DRIVES, GEARED,
            needs { output_torque = "final_drive.output_torque" }
            uses { grip_torque = "grip.torque" }
        )
    };
}
/// Grip of the tyres, if the engine is unknown.
macro_rules! holds {
    ($of:ident) => {
        driving!($of, HOLDS, MOMENTS, needs { grip_torque = "grip.torque" })
    };
}
pub(in crate::suspension) const FRONT_DRIVES: Rule = drives!(in_front);
pub(in crate::suspension) const REAR_DRIVES: Rule = drives!(at_rear);
pub(in crate::suspension) const FRONT_HOLDS: Rule = holds!(in_front);
pub(in crate::suspension) const REAR_HOLDS: Rule = holds!(at_rear);

/// Misfit of links, and the force by it where bushes give.
struct Bind {
    bind_misfit: Length,
    linkage_bind_force: Option<Force>,
}
fields!(Bind { bind_misfit, linkage_bind_force });

/// Misfit below which nothing binds.
const NO_MISFIT: Length = Length::from_si(1e-9);

impl Bind {
    /// Nothing where nothing misses; not known where no link gives.
    fn force(&self) -> Result<Force> {
        let force =
            if self.bind_misfit < NO_MISFIT { Some(Force::from_si(0.0)) } else { self.linkage_bind_force };
        Ok(force.unwrap_or(Force::from_si(f64::NAN)))
    }
}

pub(in crate::suspension) const BIND_FORCE: Rule = rule! {
    "axle" Bind::force, Bind
    takes { bind_misfit, linkage_bind_force }
    says "f; nothing where nothing misses", SEE_LIVE;
    lacking "its links bind, and none of them gives: write the stiffness of their bushes, such as lower_links.body_bush"
};

/// Leaf springs, and what else may lead their axle.
struct Beside {
    form: LeafForm,
    wheels: Option<Wheels>,
    lower_links: Option<Length>,
    upper_links: Option<Length>,
    lateral_rod: Option<Length>,
    watt: Option<Length>,
}
fields!(Beside { form, wheels, lower_links, upper_links, lateral_rod, watt });

impl Beside {
    /// Parts drawn beside leaf springs are refused; no drawing says nothing.
    fn force(&self) -> Result<Force> {
        if self.wheels == Some(Wheels::Independent) {
            return Err(Error::document("wheels", APART));
        }
        let others = [self.lower_links, self.upper_links, self.lateral_rod, self.watt];
        if others.iter().any(Option::is_some) {
            return Err(Error::document("leaf", DRAWN_BESIDE_LEAVES));
        }
        Ok(Force::from_si(f64::NAN))
    }
}

pub(in crate::suspension) const BESIDE_LEAVES: Rule = rule! {
    "axle" Beside::force, Beside
    takes {
        form = "axle.leaf.form", wheels, lower_links = "axle.lower_links.body.x",
        upper_links = "axle.upper_links.body.x", lateral_rod = "axle.lateral_rod.body.x", watt = "axle.watt.pivot.x",
    }
    says "not known on leaf springs", "definition: links may lead the axle beside them";
    lacking "leaf springs need bind_force, or suspension = live_axle_on_leaf_springs where they alone lead the axle"
};

/// Force of links that bind, and the one that they bear.
struct Borne {
    bind_force: Force,
    allowed_link_force: Option<Force>,
}
fields!(Borne { bind_force, allowed_link_force });

impl Borne {
    /// Nothing where nothing binds.
    fn share(&self) -> Result<Ratio> {
        let force = self.bind_force.si();
        if force == 0.0 {
            return Ok(Ratio::from_si(0.0));
        }
        let why = "links that bind need allowed_link_force";
        let allowed =
            self.allowed_link_force.ok_or(Error::Missing { argument: "allowed_link_force", why })?;
        Ok(Ratio::from_si(force / allowed.si()))
    }
}

pub(in crate::suspension) const BIND_SHARE: Rule = rule! {
    "axle" Borne::share, Borne
    takes { bind_force, allowed_link_force }
    says "f / f_a; nothing where nothing binds", "definition: demand over capacity"
};

/// Anti-roll bar at its ends.
struct Bar {
    rate: LinearStiffness,
    motion_ratio: Option<Ratio>,
    link_eye: Begun,
    lever_end: Begun,
    lever_pivot: Begun,
    carried_by: Option<Carrier>,
    bearings: Option<Mount>,
}
fields!(Bar { rate, motion_ratio, link_eye, lever_end, lever_pivot, carried_by, bearings });

/// Point of which any coordinate may be written.
struct Begun {
    x: Option<Length>,
    y: Option<Length>,
    z: Option<Length>,
}
fields!(Begun { x, y, z });

const DRAWN_BAR: &str = "it says that there is no bar, but a bar is drawn: one of the two is wrong; take its points, carried_by and bearings out, or write its rate";

impl Bar {
    fn is_drawn(&self) -> bool {
        let points = [&self.link_eye, &self.lever_end, &self.lever_pivot];
        self.carried_by.is_some()
            || self.bearings.is_some()
            || points.iter().any(|on| on.x.or(on.y).or(on.z).is_some())
    }

    /// Rate at the wheels; nothing where there is no bar.
    fn wheel_rate(&self) -> Result<LinearStiffness> {
        let rate = self.rate.si();
        if rate == 0.0 {
            if self.is_drawn() {
                return Err(Error::document("anti_roll_bar.rate", DRAWN_BAR));
            }
            return Ok(self.rate);
        }
        let why = "a bar needs anti_roll_bar.motion_ratio, or the points of its drop link and lever";
        let ratio = self.motion_ratio.ok_or(Error::Missing { argument: "motion_ratio", why })?.si();
        Ok(LinearStiffness::from_si(rate * ratio * ratio))
    }
}

pub(in crate::suspension) const BAR_WHEEL_RATE: Rule = rule! {
    "axle.anti_roll_bar" Bar::wheel_rate, Bar
    takes { rate, motion_ratio, link_eye, lever_end, lever_pivot, carried_by, bearings }
    says "k r^2; nothing where there is no bar", "balance of virtual work"
};

fields!(RollAxle {
    track, roll_centre_height, unsprung_mass, unsprung_height, spring_rate = "wheel_rate", spring_base = "roll_base",
    tyre_rate = "tyre.rate", bar_rate = "anti_roll_bar.wheel_rate";
    bar_motion_ratio
});
fields!(RollBalance {
    sprung_mass, sprung_height, behind_front_axle = "sprung_behind_front_axle", wheelbase;
    front, rear
});

/// Both axles in a turn, and the links of each that bind.
struct WithBinding {
    balance: RollBalance,
    front: Binding,
    rear: Binding,
}
fields!(WithBinding { balance, front, rear });

/// Links of a live axle that may bind in roll.
struct Binding {
    freedoms: Option<Ratio>,
    bind_roll_stiffness: Option<RotationalStiffness>,
}
fields!(Binding { freedoms, bind_roll_stiffness });

const RIGID: &str = "links that bind and have no bush that gives hold the axle in roll as far as their brackets do: write the stiffness of their bushes, such as \
                     lower_links.body_bush";

impl Binding {
    /// The axle with its links beside its bar, as which they work: `K = k t^2 / 2`.
    fn on(&self, axle: &RollAxle) -> Result<RollAxle> {
        let bind = match (self.freedoms, self.bind_roll_stiffness) {
            (Some(freedoms), None) if freedoms.si() == 1.0 => {
                return Err(Error::document("bind_roll_stiffness", RIGID));
            }
            (_, None) => 0.0,
            (_, Some(stiffness)) => {
                let track = axle.track.quantity.si();
                2.0 * stiffness.si() / (track * track)
            }
        };
        let bar = axle.bar_rate.as_ref().map_or(f64::NAN, |rate| rate.quantity.si());
        Ok(RollAxle {
            bar_rate: Stated::Given(Value::new(LinearStiffness::from_si(bar + bind))),
            bar_motion_ratio: Some(Value::new(Ratio::from_si(1.0))),
            ..axle.clone()
        })
    }
}

impl WithBinding {
    fn balance(&self) -> Result<Balance> {
        self.model()?.balance()
    }

    /// The balance with links that bind beside the bars.
    fn model(&self) -> Result<RollBalance> {
        let (front, rear) = (self.front.on(&self.balance.front)?, self.rear.on(&self.balance.rear)?);
        Ok(RollBalance { front, rear, ..self.balance.clone() })
    }
}

pub(in crate::suspension) const BALANCE: Rule = rule! {
    "vehicle" WithBinding::balance, WithBinding
    takes { balance = "vehicle", front = "front", rear = "rear" }
    needs { balance.front = "front", balance.rear = "rear" }
    gives Balance {
        roll_gradient, front_suspension_stiffness, rear_suspension_stiffness, front_share, share_over_weight,
    }
    says "suspension.RollBalance", "equilibrium of body and axles; Milliken and Milliken (1995), Dixon (1996), from memory"
};

/// Load sensitivity of the tyres of an axle: share of the coefficient of grip that is lost between no load and this load.
struct Sensitivity {
    load_sensitivity: Ratio,
    sensitivity_load: Force,
}
fields!(Sensitivity { load_sensitivity, sensitivity_load });

/// Both axles at the grip of their tyres.
struct AtTheLimit {
    turning: WithBinding,
    grip: Ratio,
    front: Sensitivity,
    rear: Sensitivity,
}
fields!(AtTheLimit { turning, grip, front, rear });

/// Share of grip that each axle loses to its load and to the transfer.
struct GripLost {
    front: Ratio,
    rear: Ratio,
}

impl Sensitivity {
    /// Loss of an axle whose wheels carry the mean load less and more the transfer, by a coefficient that falls with the load in a straight line.
    fn lost(&self, mean: f64, transfer: f64) -> Ratio {
        let uneven = transfer / mean;
        let here = self.load_sensitivity.si() * mean / self.sensitivity_load.si();
        Ratio::from_si(here * (1.0 + uneven * uneven))
    }
}

impl AtTheLimit {
    /// At the lateral acceleration that the mean of grip gives; refused where a wheel lifts before.
    fn lost(&self) -> Result<GripLost> {
        let turn = self.turning.model()?.in_turn(Acceleration::from_si(self.grip.si() * STANDARD_GRAVITY))?;
        let of = |sensitivity: &Sensitivity, inner: Force, transfer: Force| {
            sensitivity.lost((inner + transfer).si(), transfer.si())
        };
        Ok(GripLost {
            front: of(&self.front, turn.front_inner_load, turn.front_load_transfer),
            rear: of(&self.rear, turn.rear_inner_load, turn.rear_load_transfer),
        })
    }
}

pub(in crate::suspension) const GRIP_LOST: Rule = rule! {
    "vehicle" AtTheLimit::lost, AtTheLimit
    takes {
        turning.balance = "vehicle", turning.front = "front", turning.rear = "rear", grip = "grip.pull_coefficient",
        front = "front.tyre", rear = "rear.tyre",
    }
    needs { turning.balance.front = "front", turning.balance.rear = "rear" }
    gives GripLost { front, rear }
    says "e F (1 + (T / F)^2) / F_e of each axle: F mean load of its wheels, T load transfer at the mean of grip, e the sensitivity at F_e",
        "a coefficient of grip that falls with the load in a straight line; Milliken and Milliken (1995), from memory"
};

/// Travel that the worse wheel of an axle has.
struct Stops {
    bump_clear: Length,
    droop_clear: Length,
}
fields!(Stops { bump_clear, droop_clear });

/// All four wheels on their scales.
struct Scales {
    left_front: Mass,
    right_front: Mass,
    left_rear: Mass,
    right_rear: Mass,
}
fields!(Scales { left_front, right_front, left_rear, right_rear });

impl Scales {
    /// Shares of the load of each axle on its left wheel.
    fn left_shares(&self) -> [f64; 2] {
        let share = |left: Mass, right: Mass| left.si() / (left + right).si();
        [share(self.left_front, self.right_front), share(self.left_rear, self.right_rear)]
    }
}

/// Both axles in a turn, up to where they no longer stand.
struct UpToTheLimit {
    turning: WithBinding,
    front: Stops,
    rear: Stops,
    scales: Scales,
}
fields!(UpToTheLimit { turning, front, rear, scales });

impl UpToTheLimit {
    fn limits(&self) -> Result<Limits> {
        let least = |stops: &Stops| stops.bump_clear.si().min(stops.droop_clear.si());
        let left = self.scales.left_shares();
        let inner = [left, left.map(|share| 1.0 - share)];
        self.turning.model()?.limits([least(&self.front), least(&self.rear)], inner)
    }
}

pub(in crate::suspension) const LIMITS: Rule = rule! {
    "vehicle" UpToTheLimit::limits, UpToTheLimit
    takes {
        turning.balance = "vehicle", turning.front = "front", turning.rear = "rear", front = "front", rear = "rear",
        scales = "scales",
    }
    needs { turning.balance.front = "front", turning.balance.rear = "rear" }
    gives Limits { stop, lift, tip }
    says "stop: travel over lean; lift: the load of an axle's inner wheel over its transfer, all further moment on an axle in its stops; tip: the rest of the weight's moment, the body on one axle; each turned to the worse side",
        "balance of moments about the ground, each bound on the low side"
};

/// Margin that is wanted of a lean, and the travel that is wanted of both axles: without limit where it is not told what may end it.
struct StopsTold {
    margin: Ratio,
    front_bump: Length,
    front_droop: Length,
    rear_bump: Length,
    rear_droop: Length,
}
fields!(StopsTold { margin, front_bump, front_droop, rear_bump, rear_droop });

impl StopsTold {
    /// Without limit where a stop may stand nearer than the ones that are known.
    fn margin(&self) -> Result<Ratio> {
        let travels = [self.front_bump, self.front_droop, self.rear_bump, self.rear_droop];
        let told = travels.iter().all(|travel| travel.si().is_finite());
        Ok(if told { self.margin } else { Ratio::from_si(f64::INFINITY) })
    }
}

macro_rules! stops_told {
    ($margin:literal) => {
        rule! {
            "vehicle" StopsTold::margin, StopsTold
            takes {
                margin = $margin, front_bump = "front.wanted_bump", front_droop = "front.wanted_droop",
                rear_bump = "rear.wanted_bump", rear_droop = "rear.wanted_droop",
            }
            says "the margin that is wanted, where it is told what ends the travel of both axles", "definition: a stop that is not told may stand nearer"
        }
    };
}
pub(in crate::suspension) const ROLL_STOPS_TOLD: Rule = stops_told!("wanted.roll_stops");
pub(in crate::suspension) const WHEEL_LIFT_TOLD: Rule = stops_told!("wanted.wheel_lift");
pub(in crate::suspension) const TIP_TOLD: Rule = stops_told!("wanted.tip");

/// High bound of grip.
struct HighGrip {
    grip: Ratio,
}
fields!(HighGrip { grip });

impl HighGrip {
    fn acceleration(&self) -> Result<Acceleration> {
        Ok(Acceleration::from_si(self.grip.si() * STANDARD_GRAVITY))
    }
}

pub(in crate::suspension) const HIGHEST_GRIP: Rule = rule! {
    "grip" HighGrip::acceleration, HighGrip
    takes { grip = "grip.high_coefficient" }
    says "m g", "Coulomb friction at its high bound; standard gravity: 3rd CGPM"
};

const SEE_LIVE: &str = "see suspension.LiveAxle";

#[cfg(test)]
mod tests {
    use super::*;

    /// Equal tyres, 44 % of the weight in front, and a transfer of 0.3 of the weight: neutral where the front takes 55.2 % of it, by hand
    /// `0.44 (1 + (0.1656 / 0.22)^2) = 0.56 (1 + (0.1344 / 0.28)^2)`; with 56 % in front it is the other way round.
    #[test]
    fn equal_tyres_are_neutral_where_the_lighter_axle_takes_more() {
        let tyre =
            Sensitivity { load_sensitivity: Ratio::from_si(0.1), sensitivity_load: Force::from_si(1.0) };
        let balance = |weight: f64, share: f64| {
            let front = tyre.lost(weight / 2.0, 0.3 * share);
            (front - tyre.lost((1.0 - weight) / 2.0, 0.3 * (1.0 - share))).si()
        };
        for (weight, share) in [(0.44, 0.552), (0.56, 0.448), (0.5, 0.5)] {
            assert!(balance(weight, share).abs() < 1e-4, "{weight} {share}: {}", balance(weight, share));
            // The share of the weight alone would call this neutral.
            assert!(weight == 0.5 || balance(weight, weight).abs() > 0.005);
        }
        assert!(balance(0.5, 0.6) > 0.0 && balance(0.5, 0.4) < 0.0);
    }
}
