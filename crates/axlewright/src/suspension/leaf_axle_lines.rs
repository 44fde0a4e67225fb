//! A live axle on leaf springs on the build sheet: its springs and dampers as lines, and what follows from them.

use super::double_wishbone_lines::{SOURCE, coordinate, point_lines};
use super::inputs::Wheels;
use super::leaf_axle::locked;
use super::linkage_stages::{Range, TravelEnds, travelled};
use super::live_axle_lines::{APART, BESIDE_LEAVES};
use super::parts::refused;
use super::wheel_position::BUMP;
use super::{Axle, AxleBar, AxleDamper, LeafAxle, LeafForm, LeafSpring, Leaves, Point, Wheel};
use crate::Result;
use crate::base::document::{Stated, Value};
use crate::base::section::{
    Line, Rule, by, choice, derived, fields, gives, greatest_of, joined, line, rule, same,
};
use crate::units::{
    Angle, Force, Length, LinearStiffness, Mass, Quantity, Ratio, RotationalStiffness, STANDARD_GRAVITY,
    Stress, Torque,
};

const fn length(path: &'static str, meaning: &'static str) -> Line {
    line(path, Length::KIND, meaning).above(
        0.0,
        10.0,
        "common practice, no source: no leaf spring is 10 m long",
    )
}

const fn count(path: &'static str, meaning: &'static str) -> Line {
    line(path, Ratio::KIND, meaning).within(
        0.0,
        100.0,
        "definition: a number of leaves; common practice, no source: at most 100",
    )
}

const PLACED: [Line; 12] = joined(&[
    &point_lines!("axle.leaf.fixed_eye", "eye of the leaf spring on the body"),
    &point_lines!("axle.leaf.shackle_eye", "eye of the leaf spring on its shackle, at ride height"),
    &point_lines!("axle.leaf.shackle_pivot", "pivot of the shackle on the body"),
    &point_lines!(
        "axle.leaf.seat",
        "where the centre bolt crosses the main leaf, at ride height; of the spring's points the one whose place to the side counts"
    ),
]);

const SPRING: [Line; 10] = [
    line(
        "axle.leaf.seat_angle",
        Angle::KIND,
        "of the seat at ride height, positive with its front up; level where it is left out",
    )
    .within(-0.5, 0.5, "common practice, no source: seats stand level within 29 deg"),
    line(
        "axle.leaf.clamped_length",
        Length::KIND,
        "of the spring that the seat holds stiff, over both halves",
    )
    .within(0.0, 10.0, "definition: a length; common practice, no source: at most 10 m"),
    line(
        "axle.leaf.eye_offset",
        Length::KIND,
        "of the eyes' centres above the middle of the main leaf; nothing where it is left out",
    )
    .within(-0.2, 0.2, "common practice, no source: eyes stand within 200 mm of their leaf"),
    choice(
        "axle.leaf.form",
        LeafForm::WORDS,
        "a stepped pack or a tapered leaf; a single leaf or all leaves full length",
    ),
    line("axle.leaf.load", Force::KIND, "carried by one leaf spring at ride height")
        .within(1.0, 1e8, "common practice, no source: springs of road vehicles carry between 1 N and 100 MN")
        .by(&[by(&WEIGHT)]),
    length("axle.leaf.width", "of every leaf"),
    length("axle.leaf.thickness", "of every leaf"),
    count("axle.leaf.full_length_leaves", "leaves that reach from eye to eye"),
    count("axle.leaf.graduated_leaves", "leaves that get shorter step by step"),
    line(
        "axle.leaf.bump_clearance",
        Length::KIND,
        "above each spring's seat to its bump stop, or to what it hits first, at ride height",
    )
    .within(
        0.0,
        10.0,
        "definition: a clearance at ride height; common practice, no source: at most 10 m",
    ),
];

const DAMPER_EYES: [Line; 6] = joined(&[
    &point_lines!("axle.damper.body_eye", "eye on the body of a damper that stands apart on a live axle"),
    &point_lines!("axle.damper.axle_eye", "its eye on the axle, at ride height"),
]);

/// Everything that is measured of it.
pub(super) const MEASURED: [Line; 28] = joined(&[&PLACED, &SPRING, &DAMPER_EYES]);

/// What follows of it alone.
pub(super) const FOLLOWING: [Line; 12] = [
    derived("axle.leaf.rate", LinearStiffness::KIND, "of the leaf spring alone, by its leaves").by(&[by(&RATE)]),
    derived("axle.leaf.wheel_rate", LinearStiffness::KIND, "tangent rate at the wheel, with what shackles and eyes make of the spring's rate")
        .by(&[gives(&AT_RIDE, "wheel_rate")]),
    derived("axle.leaf.wind_up_rate", RotationalStiffness::KIND, "of both springs against a turn of the axle about its own axis")
        .by(&[gives(&AT_RIDE, "wind_up_rate")]),
    derived("axle.leaf.shackle_opening", Angle::KIND, "between the shackle and the line of the eyes, at ride height").by(&[gives(&AT_RIDE, "shackle_opening")]),
    derived("axle.leaf.damper_ratio", Ratio::KIND, "shortening of the damper over heave of the axle").by(&[by(&DAMPER_RATIO)]),
    derived("axle.leaf.stop_end", Length::KIND, "heave at which the seats touch their bump stops").by(&[by(&STOP)]),
    derived("axle.leaf.shackle_left", Angle::KIND, "that the shackles stay out of line with their springs at full bump and full droop, the lesser")
        .by(&[gives(&OVER_TRAVEL, "shackle_left")]),
    derived("axle.leaf.bump_stress", Stress::KIND, "bending stress of the full-length leaves at full bump").by(&[by(&BUMP_STRESS)]),
    derived("axle.leaf.stress", Stress::KIND, "the greater of the stresses at full bump and under the drive torque, where that is known").by(&[
        greatest_of(&["axle.leaf.bump_stress", "axle.leaf.wound_stress"], GREATEST),
        same(&["axle.leaf.bump_stress"], GREATEST),
    ]),
    line("front.drive_torque", Torque::KIND, DRIVE_TORQUE)
        .within(0.0, 1e6, "common practice, no source: no axle of a road vehicle bears 1 MN·m")
        .by(&[by(&FRONT_DRIVES).usual(), by(&FRONT_HOLDS).usual()]),
    line("rear.drive_torque", Torque::KIND, DRIVE_TORQUE)
        .within(0.0, 1e6, "common practice, no source: no axle of a road vehicle bears 1 MN·m")
        .by(&[by(&REAR_DRIVES).usual(), by(&REAR_HOLDS).usual()]),
    derived("axle.leaf.wound_stress", Stress::KIND, "bending stress of the full-length leaves at ride height under the drive torque, forward or in reverse")
        .by(&[by(&WOUND_STRESS)]),
];

const GREATEST: &str = "definition: the greatest counts";
const DRIVE_TORQUE: &str = "greatest steady one at both wheels of the axle together, which winds its housing up; a dropped clutch gives more; 0 N·m where the axle is not driven";
const NOT_DRIVEN: &str =
    "driveline.driven is the other axle: write drive_torque, 0 N·m where this one is not driven too";

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

const DRIVES: &str = "min(T, T_g) of the driven axle";
const GEARED: &str = "balance of power through a geared train, see driveline.TorquePath";
const HOLDS: &str = "T_g of the driven axle";
const MOMENTS: &str = "balance of moments at the wheel";
const FRONT_DRIVES: Rule = rule! {
    "driveline" Drive::in_front, Drive
    takes { driven }
    needs { output_torque = "final_drive.output_torque" }
    uses { grip_torque = "grip.torque" }
    says DRIVES, GEARED; lacking NOT_DRIVEN
};
const REAR_DRIVES: Rule = rule! {
    "driveline" Drive::at_rear, Drive
    takes { driven }
    needs { output_torque = "final_drive.output_torque" }
    uses { grip_torque = "grip.torque" }
    says DRIVES, GEARED; lacking NOT_DRIVEN
};
/// What the tyres hold, where nothing is known of the engine.
const FRONT_HOLDS: Rule = rule! {
    "driveline" Drive::in_front, Drive
    takes { driven }
    needs { grip_torque = "grip.torque" }
    says HOLDS, MOMENTS; lacking NOT_DRIVEN
};
const REAR_HOLDS: Rule = rule! {
    "driveline" Drive::at_rear, Drive
    takes { driven }
    needs { grip_torque = "grip.torque" }
    says HOLDS, MOMENTS; lacking NOT_DRIVEN
};

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

const WEIGHT: Rule = rule! {
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
    wheel_x: Value<Length>,
    wheel_z: Value<Length>,
    fixed_eye: Beside,
    shackle_eye: Beside,
    shackle_pivot: Beside,
    seat: Point,
    seat_angle: Option<Value<Angle>>,
    clamped_length: Value<Length>,
    eye_offset: Option<Value<Length>>,
    form: LeafForm,
}
fields!(OnLeaves {
    wheels, lower_links = "lower_links.body.x", upper_links = "upper_links.body.x", wheel_x = "wheel.centre.x",
    wheel_z = "wheel.centre.z", fixed_eye = "leaf.fixed_eye", shackle_eye = "leaf.shackle_eye",
    shackle_pivot = "leaf.shackle_pivot", seat = "leaf.seat", seat_angle = "leaf.seat_angle",
    clamped_length = "leaf.clamped_length", eye_offset = "leaf.eye_offset", form = "leaf.form",
});

/// Point of a spring, beside its seat where nothing else is written.
struct Beside {
    x: Value<Length>,
    y: Option<Value<Length>>,
    z: Value<Length>,
}
fields!(Beside { x, y, z });

fields!(Leaves {
    elastic_modulus = "spring.elastic_modulus", leaf_width = "leaf.width", leaf_thickness = "leaf.thickness",
    full_length_leaves = "leaf.full_length_leaves", graduated_leaves = "leaf.graduated_leaves",
});

/// Axle on its leaf springs with what a rule asks about it.
struct Sprung {
    springs: OnLeaves,
    /// 1 N where nothing asks for it.
    load: Option<Value<Force>>,
    rate: Option<Value<LinearStiffness>>,
    leaves: Option<Leaves>,
    /// What does not stand on the ground does not ask.
    loaded_radius: Option<Value<Length>>,
    camber: Option<Value<Angle>>,
    wheel_y: Option<Value<Length>>,
    damper: Option<Eyes>,
    open_length: Option<Value<Length>>,
    closed_length: Option<Value<Length>>,
    anti_roll_bar: Option<AxleBar>,
    bump_clearance: Option<Value<Length>>,
}
fields!(Sprung {
    springs,
    load,
    rate,
    leaves,
    loaded_radius,
    camber,
    wheel_y,
    damper,
    open_length,
    closed_length,
    anti_roll_bar,
    bump_clearance,
});

/// Eyes of a damper.
struct Eyes {
    body_eye: Point,
    axle_eye: Point,
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
    bump_left: Length,
    droop_left: Length,
}
fields!(BetweenStops { axle, across, bump_left, droop_left });

struct UnderTorque {
    axle: Sprung,
    drive_torque: Torque,
}
fields!(UnderTorque { axle, drive_torque });

/// Rate of the spring alone.
const RATE: Rule = rule! {
    "axle" Sprung::own_rate, Sprung
    takes { springs = "axle" }
    needs { leaves = "axle" }
    says "suspension.LeafAxle of its leaves, see spring.leaf_pack_rate", SOURCE
};
pub(super) const AT_RIDE: Rule = rule! {
    "axle" Sprung::at_ride, Sprung
    takes { springs = "axle" }
    needs { load = "axle.leaf.load", rate = "axle.spring.rate" }
    gives AtRide { wheel_rate, roll_steer, spring_base, wind_up_rate, bump_steer, shackle_opening }
    says "suspension.LeafAxle at ride height", SOURCE
};
pub(super) const ON_GROUND: Rule = rule! {
    "axle" OnGround::at_ride, OnGround
    takes { axle.springs = "axle", across = "axle" }
    needs { axle.load = "axle.leaf.load", axle.rate = "axle.spring.rate", axle.loaded_radius = "axle.tyre.loaded_radius" }
    uses { axle.camber = "axle.wheel.camber" }
    gives InstantAxes { roll_centre_height, side_view_angle }
    says "suspension.LeafAxle on the ground at ride height", SOURCE
};
const DAMPER_RATIO: Rule = rule! {
    "axle" Sprung::damper_ratio, Sprung
    takes { springs = "axle" }
    needs { load = "axle.leaf.load", rate = "axle.spring.rate", damper }
    says "suspension.LeafAxle at ride height: r_d = -dL/dz", SOURCE
};
/// In roll, which asks for no load.
pub(super) const BAR_RATIO: Rule = rule! {
    "axle" Sprung::bar_motion_ratio, Sprung
    takes { springs = "axle" }
    needs { wheel_y = "axle.wheel.centre.y", anti_roll_bar }
    says "suspension.LeafAxle at ride height: travel of the levers' ends over travel of the wheels, in roll", SOURCE
};
pub(super) const DAMPER: Rule = rule! {
    "axle.damper" Sprung::damper_ends, Sprung
    takes { springs = "axle" }
    needs { load = "axle.leaf.load", rate = "axle.spring.rate", damper = "axle.damper", open_length, closed_length }
    gives TravelEnds { droop, bump }
    says "suspension.LeafAxle: heave z where L(z) is the length of the damper", SOURCE
};
const STOP: Rule = rule! {
    "axle" Sprung::stop, Sprung
    takes { springs = "axle" }
    needs { load = "axle.leaf.load", rate = "axle.spring.rate", bump_clearance = "axle.leaf.bump_clearance" }
    says "suspension.LeafAxle: heave z where left_bump_remaining is nothing", SOURCE
};
pub(super) const RANGE: Rule = rule! {
    "axle" Sprung::range, Sprung
    takes { springs = "axle" }
    needs { load = "axle.leaf.load", rate = "axle.spring.rate" }
    gives Range { droop, bump }
    says "suspension.LeafAxle.travel_range, to 0.01 mm", SOURCE
};
pub(super) const OVER_TRAVEL: Rule = rule! {
    "axle" BetweenStops::over_travel, BetweenStops
    takes { axle.springs = "axle", across = "axle", bump_left, droop_left }
    needs { axle.load = "axle.leaf.load", axle.rate = "axle.spring.rate" }
    gives OverTravel { pinion_angle_change, shackle_left, lateral_shift }
    says "suspension.LeafAxle at full bump and droop, the worse of both", SOURCE
};
const BUMP_STRESS: Rule = rule! {
    "axle" BetweenStops::bump_stress, BetweenStops
    takes { axle.springs = "axle", bump_left }
    needs { axle.load = "axle.leaf.load", axle.rate = "axle.spring.rate", axle.leaves = "axle" }
    says "suspension.LeafAxle at full bump: left_leaf_stress", SOURCE
};
/// Turn of the housing at ride height.
pub(super) const WIND_UP: Rule = rule! {
    "axle" UnderTorque::wind_up_angle, UnderTorque
    takes { axle.springs = "axle", drive_torque }
    needs { axle.load = "axle.leaf.load", axle.rate = "axle.spring.rate", axle.loaded_radius = "axle.tyre.loaded_radius" }
    uses { axle.camber = "axle.wheel.camber" }
    says "suspension.LeafAxle.wind_up at ride height", SOURCE
};
const WOUND_STRESS: Rule = rule! {
    "axle" UnderTorque::leaf_stress, UnderTorque
    takes { axle.springs = "axle", drive_torque }
    needs {
        axle.load = "axle.leaf.load", axle.rate = "axle.spring.rate", axle.loaded_radius = "axle.tyre.loaded_radius",
        axle.leaves = "axle",
    }
    uses { axle.camber = "axle.wheel.camber" }
    says "suspension.LeafAxle.wind_up at ride height, torque forward and in reverse: the greater leaf_stress", SOURCE
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
    shackle_left: Angle,
    lateral_shift: Length,
}

/// Stiffness of springs that hold the axle upright by themselves.
const STIFF: LinearStiffness = LinearStiffness::from_si(1e5);

/// Accuracy in metres with which the end of the springs' travel is found: finer would only take longer.
const FINE: f64 = 1e-5;

const LEVEL: Angle = Angle::from_si(0.0);
const RIDE: Length = Length::from_si(0.0);

/// Refuses what else leads the axle.
fn alone(others: [Option<Length>; 2]) -> Result<()> {
    match others {
        [None, None] => Ok(()),
        _ => Err(refused("leaf", BESIDE_LEAVES.to_owned())),
    }
}

impl Across {
    fn nothing(&self) -> Result<()> {
        alone([self.lateral_rod, self.watt])
    }
}

impl OnLeaves {
    fn point(&self, of: &Beside) -> Point {
        let y = of.y.as_ref().unwrap_or(&self.seat.y);
        Point { x: of.x.clone(), y: y.clone(), z: of.z.clone() }
    }
}

impl Sprung {
    fn model(&self) -> Result<LeafAxle> {
        let on = &self.springs;
        if on.wheels == Some(Wheels::Independent) {
            return Err(refused("wheels", APART.to_owned()));
        }
        alone([on.lower_links, on.upper_links])?;
        let metres = |length| Value::new(Length::from_si(length));
        let wheel_y = self.wheel_y.as_ref().unwrap_or(&on.seat.y);
        Ok(LeafAxle {
            axle: Axle::Rear,
            wheel: Wheel {
                centre: Point { x: on.wheel_x.clone(), y: wheel_y.clone(), z: on.wheel_z.clone() },
                camber: self.camber.clone().unwrap_or(Value::new(LEVEL)),
                toe: Value::new(LEVEL),
                loaded_radius: self.loaded_radius.clone().unwrap_or(metres(1.0)),
            },
            spring: LeafSpring {
                fixed_eye: on.point(&on.fixed_eye),
                shackle_eye: on.point(&on.shackle_eye),
                shackle_pivot: on.point(&on.shackle_pivot),
                seat: on.seat.clone(),
                seat_angle: on.seat_angle.clone(),
                clamped_length: on.clamped_length.clone(),
                eye_offset: on.eye_offset.clone(),
                form: on.form,
                load: self.load.clone().unwrap_or(Value::new(Force::from_si(1.0))),
                rate: self.rate.clone(),
                leaves: self.leaves.clone(),
            },
            // The ratio of a damper is the same whatever its stroke.
            damper: self.damper.as_ref().map(|eyes| AxleDamper {
                body_eye: eyes.body_eye.clone(),
                axle_eye: eyes.axle_eye.clone(),
                open_length: self.open_length.clone().unwrap_or(metres(2.0)),
                closed_length: self.closed_length.clone().unwrap_or(metres(1.0)),
            }),
            coil_over: Stated::Unknown,
            anti_roll_bar: self.anti_roll_bar.clone().map_or(Stated::Unknown, Stated::Given),
            bump_clearance: self.bump_clearance.clone(),
            pinion_angle: None,
            braking: None,
            drive_share: None,
        })
    }

    fn own_rate(&self) -> Result<LinearStiffness> {
        Ok(self.model()?.ready()?.rate())
    }

    fn at_ride(&self) -> Result<AtRide> {
        let model = self.model()?;
        let ready = model.ready()?;
        let on = ready.at(RIDE, LEVEL)?;
        // Of springs of the wheel rate `k` on the base `t` the roll stiffness is `k t^2 / 2`.
        let base = (2.0 * on.roll_stiffness.si() / on.wheel_rate.si()).sqrt();
        let in_bump = ready.at(Length::from_si(BUMP), LEVEL)?;
        Ok(AtRide {
            wheel_rate: on.wheel_rate,
            roll_steer: on.roll_steer,
            spring_base: Length::from_si(base),
            wind_up_rate: on.wind_up_rate,
            // Of the left wheel, which toes out where its axle steers to the left.
            bump_steer: on.axle_steer - in_bump.axle_steer,
            shackle_opening: on.left_shackle_opening,
        })
    }

    fn damper_ratio(&self) -> Result<Ratio> {
        Ok(self.model()?.ready()?.at(RIDE, LEVEL)?.damper_motion_ratio)
    }

    fn bar_motion_ratio(&self) -> Result<Ratio> {
        let mut model = self.model()?;
        model.spring.rate = Some(Value::new(STIFF));
        let on = model.ready()?.at(RIDE, LEVEL)?;
        Ok(on.bar_motion_ratio)
    }

    /// Heave at which the damper is open, and at which it is closed.
    fn damper_ends(&self) -> Result<TravelEnds> {
        let model = self.model()?;
        let Some(damper) = &model.damper else { return Ok(TravelEnds::UNKNOWN) };
        let ready = model.ready()?;
        Ok(TravelEnds {
            droop: ready.heave_for_damper(damper.open_length.quantity)?,
            bump: ready.heave_for_damper(damper.closed_length.quantity)?,
        })
    }

    /// Heave at which the seats touch their bump stops.
    fn stop(&self) -> Result<Length> {
        self.model()?.ready()?.heave_for_stop()
    }

    /// Heave in droop and bump up to which the springs go.
    fn range(&self) -> Result<Range> {
        let range = self.model()?.ready()?.range(0.0, FINE);
        let [(droop, _), (bump, _)] = range.map_err(|end| locked(LEVEL, end))?;
        Ok(Range { droop: Length::from_si(-droop), bump: Length::from_si(bump) })
    }
}

impl OnGround {
    fn at_ride(&self) -> Result<InstantAxes> {
        self.across.nothing()?;
        let on = self.axle.model()?.ready()?.at(RIDE, LEVEL)?;
        Ok(InstantAxes { roll_centre_height: on.roll_centre_height, side_view_angle: on.side_view_angle })
    }
}

impl BetweenStops {
    fn over_travel(&self) -> Result<OverTravel> {
        self.across.nothing()?;
        let [bump, droop] = travelled(self.bump_left, self.droop_left)?;
        let model = self.axle.model()?;
        let ready = model.ready()?;
        let (mut change, mut left, mut shift) = (0.0_f64, f64::INFINITY, 0.0_f64);
        for heave in [bump, -droop] {
            let on = ready.at(heave, LEVEL)?;
            let opening = on.left_shackle_opening.si();
            change = change.max(on.pinion_angle_change.si().abs());
            shift = shift.max(on.lateral_shift.si().abs());
            left = left.min(opening).min(core::f64::consts::PI - opening);
        }
        Ok(OverTravel {
            pinion_angle_change: Angle::from_si(change),
            shackle_left: Angle::from_si(left),
            lateral_shift: Length::from_si(shift),
        })
    }

    /// Stress of the leaves at full bump, whatever the droop.
    fn bump_stress(&self) -> Result<Stress> {
        let [bump, _] = travelled(self.bump_left, RIDE)?;
        Ok(self.axle.model()?.ready()?.at(bump, LEVEL)?.left_leaf_stress)
    }
}

impl UnderTorque {
    fn wind_up_angle(&self) -> Result<Angle> {
        Ok(self.axle.model()?.ready()?.wind_up(RIDE, self.drive_torque)?.wind_up_angle)
    }

    fn leaf_stress(&self) -> Result<Stress> {
        let model = self.axle.model()?;
        let ready = model.ready()?;
        let mut greatest = f64::NAN;
        for torque in [self.drive_torque, -self.drive_torque] {
            greatest = ready.wind_up(RIDE, torque)?.leaf_stress.si().max(greatest);
        }
        Ok(Stress::from_si(greatest))
    }
}
