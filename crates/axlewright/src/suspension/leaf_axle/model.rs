#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::range::{Went, follow};
use super::spring::{Bent, End, Half, Spring};
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::base::table::{Filling, Table, record};
use crate::spring::{leaf_pack_rate, leaf_pack_stress};
use crate::suspension::kinematics::jet::Jet;
#[cfg(feature = "sheet")]
use crate::suspension::kinematics::kept::Kept;
use crate::suspension::kinematics::outline::{Outline, outlines};
use crate::suspension::kinematics::solved::solved;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::live_axle::bar_lever::{Lever, across, drawn, mirrored, out_of_reach};
use crate::suspension::live_axle::parts::{AxleBar, AxleCoilOver, Mount, Strut};
use crate::suspension::parts::{Axle, Braking, Point, Wheel, refused, within};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, RotationalStiffness, Stress, Torque};
use crate::{Error, Result, valid};

/// A live axle on two leaf springs, drawn point by point: where it stands over heave and roll, how it steers, tilts and winds up, and what the springs do there.
///
/// # Formula
/// each half keeps its length and bends in the shape of a cantilever; the pitch `theta` is that of least energy `U`; load `dU/dz`, axle rate `U_zz - U_zt^2 / U_tt`,
/// roll stiffness `U_rr - U_rt^2 / U_tt`, wind-up rate `U_tt`; anti-squat `s (dx/dz) l / h` of the contact point held in the axle
///
/// # Fields
/// - `axle` — `front` or `rear`: which way the wheelbase grows, and which way the pinion points
/// - `wheel` — the left one at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the ground; the right one is its mirror image
/// - `leaf` — the left leaf spring at ride height, without its axle's torque: `fixed_eye` on the body, `shackle_eye` on the spring, `shackle_pivot` on the body, `seat`, where the centre bolt crosses the main leaf; `seat_angle`, positive with its front up; `clamped_length`, held stiff by the seat over both halves; `eye_offset` of the eyes' centres above the main leaf; `form`, `uniform_strength` (a stepped pack or a tapered leaf) or `uniform_section` (a single leaf, or all leaves full length); `load` that it carries itself, while the wheel carries it and what the coil takes; the `leaves` of which its rate follows (`elastic_modulus`, `leaf_width`, `leaf_thickness`, `full_length_leaves`, `graduated_leaves`)
/// - `spring` — the `rate` of that spring alone, where it is known: it goes before the leaves
/// - `damper` — the left one: `body_eye`, `axle_eye`, and, where they are known, `open_length` and `closed_length` between the eyes
/// - `coil_over` — a helper coil beside the leaf, the left one, mirrored: `body_eye`, `axle_eye`; its `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset` between the eyes less between the seats) and, where there is no `damper` beside it, its own (`open_length`, `closed_length` between the eyes, `gas_force`)
/// - `anti_roll_bar` — its left end, mirrored: what carries its bearings (`carried_by`, `body` or `axle`), `link_eye` of the drop link on the other of the two, `lever_end` of the bar, `lever_pivot`, any point of its axis along y
/// - `bump_clearance` — above each spring seat to its bump stop, at ride height
/// - `pinion_angle` — at ride height, against the body's axis, positive with its nose up
/// - `braking` — `axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`
/// - `drive_share` — share of the driving force that this axle has; it wants `braking` for the height and the wheelbase
///
/// # Valid for
/// Two springs alike, mirror images of each other, that stand parallel to the vehicle's centre plane: of their points only the seat's `y` counts. The rate is that of the spring alone, its eyes free to move apart and its seat free to turn, as a
/// spring tester finds it; what shackle and eyes make of it on the vehicle is a result. At ride height each half is an arc. What is drawn is the ride height with everything fitted: a coil that turns the axle there is held by the leaves. Heave is that of the axle's middle. Left out: the twist of the leaves in roll, which adds to the roll stiffness; bushes and
/// their give, friction between leaves, which makes small movements stiffer; leaves that part beyond their free shape; the give of the springs sideways. The roll centre has low confidence: with eyes that cannot turn it lies up to 68 mm lower at an arch of 75 mm. What is missing gives results that are not a number.
///
/// # Source
/// Beam theory of a cantilever with its curvature in one shape, exact for large slopes; virtual work. The eye's way is that of SAE HS-788's equivalent link of 3/4 of the half (uniform strength; from memory). Roll centre where the line between the
/// spring's eyes passes the axle: Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 7 (from memory)
///
/// # Caution
/// A leaf spring under load stores enough energy to kill, and a broken main leaf lets the axle go. Wound up by drive or brake it can hop and break; check shackles, shafts and brake hoses over the whole travel before the vehicle moves. Local codes and
/// licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "Written"))]
pub struct LeafAxle {
    /// End of the vehicle.
    pub axle: Axle,
    /// The left one at ride height.
    pub wheel: Wheel,
    /// Left leaf spring, at ride height.
    pub leaf: LeafSpring,
    /// Rate of that spring alone; where it is not known its leaves give it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring: Option<LeafRate>,
    /// The left one at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper: Option<AxleDamper>,
    /// A helper coil, the left one at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub coil_over: Stated<AxleCoilOver>,
    /// The left end of the bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub anti_roll_bar: Stated<AxleBar>,
    /// Above each spring seat to its bump stop, at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bump_clearance: Option<Value<Length>>,
    /// At ride height, positive with its nose up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pinion_angle: Option<Value<Angle>>,
    /// Braking loads.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub braking: Option<Braking>,
    /// Share of the whole driving force at this axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub drive_share: Option<Value<Ratio>>,
}

/// An axle in the form of its document: the table `spring` may hold the whole leaf spring, too.
#[cfg(feature = "serde")]
#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    axle: Axle,
    wheel: Wheel,
    #[serde(default)]
    leaf: Option<LeafSpring>,
    #[serde(default)]
    spring: Option<WrittenSpring>,
    #[serde(default)]
    damper: Option<AxleDamper>,
    #[serde(default)]
    coil_over: Stated<AxleCoilOver>,
    #[serde(default)]
    anti_roll_bar: Stated<AxleBar>,
    #[serde(default)]
    bump_clearance: Option<Value<Length>>,
    #[serde(default)]
    pinion_angle: Option<Value<Angle>>,
    #[serde(default)]
    braking: Option<Braking>,
    #[serde(default)]
    drive_share: Option<Value<Ratio>>,
}

/// The table `spring`: a rate, or a whole leaf spring under the old name of its table.
#[cfg(feature = "serde")]
#[derive(Default, serde::Deserialize)]
#[serde(deny_unknown_fields, expecting = "a table with `rate`")]
struct WrittenSpring {
    #[serde(default)]
    rate: Option<Value<LinearStiffness>>,
    #[serde(default)]
    fixed_eye: Option<Point>,
    #[serde(default)]
    shackle_eye: Option<Point>,
    #[serde(default)]
    shackle_pivot: Option<Point>,
    #[serde(default)]
    seat: Option<Point>,
    #[serde(default)]
    seat_angle: Option<Value<Angle>>,
    #[serde(default)]
    clamped_length: Option<Value<Length>>,
    #[serde(default)]
    eye_offset: Option<Value<Length>>,
    #[serde(default)]
    form: Option<LeafForm>,
    #[serde(default)]
    load: Option<Value<Force>>,
    #[serde(default)]
    leaves: Option<Leaves>,
}

#[cfg(feature = "serde")]
impl TryFrom<Written> for LeafAxle {
    type Error = String;

    fn try_from(on: Written) -> core::result::Result<LeafAxle, String> {
        let spring = on.spring.unwrap_or_default();
        let rate = spring.rate.clone();
        let leaf = match (on.leaf, spring.of_leaves()) {
            (Some(leaf), None) => leaf,
            (Some(_), Some(key)) => {
                return Err(format!("`spring.{key}` is now `leaf.{key}`: leave the old one out"));
            }
            (None, Some(_)) => spring.leaf()?,
            (None, None) => {
                return Err("the table `leaf` is missing: the points of the left leaf spring".to_owned());
            }
        };
        Ok(LeafAxle {
            axle: on.axle,
            wheel: on.wheel,
            leaf,
            spring: rate.map(|rate| LeafRate { rate }),
            damper: on.damper,
            coil_over: on.coil_over,
            anti_roll_bar: on.anti_roll_bar,
            bump_clearance: on.bump_clearance,
            pinion_angle: on.pinion_angle,
            braking: on.braking,
            drive_share: on.drive_share,
        })
    }
}

#[cfg(feature = "serde")]
impl WrittenSpring {
    /// First key of a leaf spring that is written here.
    fn of_leaves(&self) -> Option<&'static str> {
        let keys = [
            ("fixed_eye", self.fixed_eye.is_some()),
            ("shackle_eye", self.shackle_eye.is_some()),
            ("shackle_pivot", self.shackle_pivot.is_some()),
            ("seat", self.seat.is_some()),
            ("seat_angle", self.seat_angle.is_some()),
            ("clamped_length", self.clamped_length.is_some()),
            ("eye_offset", self.eye_offset.is_some()),
            ("form", self.form.is_some()),
            ("load", self.load.is_some()),
            ("leaves", self.leaves.is_some()),
        ];
        keys.into_iter().find(|(_, there)| *there).map(|(key, _)| key)
    }

    fn leaf(self) -> core::result::Result<LeafSpring, String> {
        fn there<T>(key: &str, of: Option<T>) -> core::result::Result<T, String> {
            of.ok_or_else(|| format!("`leaf.{key}` is missing; `spring` is the old name of the table `leaf`"))
        }
        Ok(LeafSpring {
            fixed_eye: there("fixed_eye", self.fixed_eye)?,
            shackle_eye: there("shackle_eye", self.shackle_eye)?,
            shackle_pivot: there("shackle_pivot", self.shackle_pivot)?,
            seat: there("seat", self.seat)?,
            seat_angle: self.seat_angle,
            clamped_length: there("clamped_length", self.clamped_length)?,
            eye_offset: self.eye_offset,
            form: there("form", self.form)?,
            load: there("load", self.load)?,
            leaves: self.leaves,
        })
    }
}

/// Distribution of bending strength along a spring's halves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum LeafForm {
    /// A stepped pack or a tapered leaf.
    UniformStrength,
    /// A single leaf, or all leaves full length.
    UniformSection,
}

/// A semi-elliptic leaf spring at ride height.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `fixed_eye`, `shackle_eye`, `shackle_pivot`, `seat`, `clamped_length`, `form`, `load` and, where they are known, `seat_angle`, `eye_offset` and `leaves`"
    )
)]
pub struct LeafSpring {
    /// On the body.
    pub fixed_eye: Point,
    /// On the spring.
    pub shackle_eye: Point,
    /// On the body.
    pub shackle_pivot: Point,
    /// Seat: the point at which the centre bolt crosses the main leaf.
    pub seat: Point,
    /// Positive with its front up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seat_angle: Option<Value<Angle>>,
    /// Held stiff by the seat, over both halves.
    pub clamped_length: Value<Length>,
    /// Height of the eyes' centres above the middle of the main leaf.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub eye_offset: Option<Value<Length>>,
    /// Distribution of its bending strength.
    pub form: LeafForm,
    /// Load at ride height.
    pub load: Value<Force>,
    /// Leaves of the spring.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub leaves: Option<Leaves>,
}

/// Rate of a leaf spring.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `rate`"))]
pub struct LeafRate {
    /// Rate of the spring alone, load over deflection at the seat.
    pub rate: Value<LinearStiffness>,
}

/// The leaves of a spring.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `elastic_modulus`, `leaf_width`, `leaf_thickness`, `full_length_leaves` and `graduated_leaves`"
    )
)]
pub struct Leaves {
    /// Elastic modulus of the steel.
    pub elastic_modulus: Value<Stress>,
    /// Width of every leaf.
    pub leaf_width: Value<Length>,
    /// Thickness of every leaf.
    pub leaf_thickness: Value<Length>,
    /// Number of leaves from eye to eye.
    pub full_length_leaves: Value<Ratio>,
    /// Number of leaves that get shorter step by step.
    pub graduated_leaves: Value<Ratio>,
}

/// A damper between the body and the axle.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(
    feature = "serde",
    serde(
        expecting = "a table with `body_eye`, `axle_eye` and, where they are known, `open_length` and `closed_length`"
    )
)]
pub struct AxleDamper {
    /// On the body.
    pub body_eye: Point,
    /// On the axle.
    pub axle_eye: Point,
    /// Length between the eyes, fully open.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub open_length: Option<Value<Length>>,
    /// Length between the eyes, fully closed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub closed_length: Option<Value<Length>>,
}

record! {
    /// The axle at one heave and roll; what is not known is not a number.
    #[derive(Debug, Clone, PartialEq)]
    pub struct LeafAxlePosition {
        /// Left wheel centre, forward in the body's axes.
        pub left_wheel_x: Length,
        /// Left wheel centre, to the left.
        pub left_wheel_y: Length,
        /// Left wheel centre, up.
        pub left_wheel_z: Length,
        /// Right wheel centre, forward.
        pub right_wheel_x: Length,
        /// Right wheel centre, to the left.
        pub right_wheel_y: Length,
        /// Right wheel centre, up.
        pub right_wheel_z: Length,
        /// Movement of the axle's middle from ride height, positive for a longer wheelbase.
        pub wheelbase_change: Length,
        /// Turn of the axle against the body, positive to the left.
        pub axle_steer: Angle,
        /// Change of that over roll: of a rear axle negative is roll understeer, of a front one positive.
        pub roll_steer: Ratio,
        /// Movement of the axle's middle against the body, to the left: the axle leans about the roll centre.
        pub lateral_shift: Length,
        /// Against the body's axis, positive with its nose up.
        pub pinion_angle: Angle,
        /// Change of that angle from ride height; known without it.
        pub pinion_angle_change: Angle,
        /// Above the ground, where the line between the spring's eyes passes the axle, which holds the body sideways.
        pub roll_centre_height: Length,
        /// Instant centre of the axle in side view, with the wheels held by drive or brake, forward; infinite if there is none.
        pub side_view_centre_x: Length,
        /// Height of that centre above the ground.
        pub side_view_centre_height: Length,
        /// Forward lean of the contact point's path in bump.
        pub side_view_angle: Angle,
        /// The anti-dive of a front axle, the anti-lift of a rear one, as a share of what would cancel the pitch of that axle.
        pub brake_anti_pitch: Ratio,
        /// The anti-lift of a front axle, the anti-squat of a rear one; the housing takes the torque of the wheels.
        pub drive_anti_pitch: Ratio,
        /// Tangent rate of one wheel in heave, half the axle's, leaf and coil together, with what shackles and eyes make of it.
        pub wheel_rate: LinearStiffness,
        /// Tangent stiffness of both springs and coils in roll with the axle's middle kept, without twist, bar and tyres.
        pub roll_stiffness: RotationalStiffness,
        /// Tangent stiffness of both springs and coils against the axle's pitch with its heave kept.
        pub wind_up_rate: RotationalStiffness,
        /// Vertical, of the left leaf spring at its seat, its own; what a coil pulls along the vehicle the leaf beside it takes.
        pub left_spring_load: Force,
        /// Load of the right spring.
        pub right_spring_load: Force,
        /// Greatest of the left spring, in the full-length leaves at the seat.
        pub left_leaf_stress: Stress,
        /// Stress in the right leaf.
        pub right_leaf_stress: Stress,
        /// Angle of the left shackle from upright, positive with the spring's eye away from the fixed eye.
        pub left_shackle_angle: Angle,
        /// Angle of the right shackle from upright.
        pub right_shackle_angle: Angle,
        /// Between the left shackle and the line of the eyes: at nothing or half a turn it is in line and turns over.
        pub left_shackle_opening: Angle,
        /// Opening of the right shackle.
        pub right_shackle_opening: Angle,
        /// Between the eyes of the left coil-over.
        pub left_eye_length: Length,
        /// Shortening of the left coil-over over heave.
        pub left_motion_ratio: Ratio,
        /// Shortening of the left coil-over over the travel of the left wheel in roll: of upright coils their base over the track.
        pub left_roll_motion_ratio: Ratio,
        /// Between the seats of the left coil.
        pub left_coil_length: Length,
        /// Compressive, in the left coil; nothing where it is loose.
        pub left_coil_force: Force,
        /// By how much the left coil is shorter than unloaded.
        pub left_coil_used: Length,
        /// Until the left coil is solid, along itself.
        pub left_coil_remaining: Length,
        /// Force of leaf, coil and gas on the left: the change of their energy over heave. The wheel carries it and the axle's own weight; without roll it is the load of the leaf and the vertical force of the coil-over.
        pub left_wheel_force: Force,
        /// Between the eyes of the right coil-over.
        pub right_eye_length: Length,
        /// Shortening of the right coil-over over heave.
        pub right_motion_ratio: Ratio,
        /// Shortening of the right coil-over over the travel of the right wheel in roll.
        pub right_roll_motion_ratio: Ratio,
        /// Between the seats of the right coil.
        pub right_coil_length: Length,
        /// Compressive, in the right coil; nothing where it is loose.
        pub right_coil_force: Force,
        /// By how much the right coil is shorter than unloaded.
        pub right_coil_used: Length,
        /// Until the right coil is solid, along itself.
        pub right_coil_remaining: Length,
        /// Force of leaf, coil and gas on the right: the change of their energy over heave.
        pub right_wheel_force: Force,
        /// Mean turn of the bar's two levers from ride height, positive as in bump.
        pub bar_angle: Angle,
        /// Turn of the left lever less that of the right one.
        pub bar_twist: Angle,
        /// Travel of the levers' ends along their arcs over wheel travel, in roll.
        pub bar_motion_ratio: Ratio,
        /// Shortening of the left damper over heave, be it that beside the coil or that of the coil-over.
        pub damper_motion_ratio: Ratio,
        /// Used stroke of the left damper, from fully open.
        pub left_damper_used: Length,
        /// Remaining stroke of the left damper, to fully closed; negative past its end.
        pub left_damper_remaining: Length,
        /// Used stroke of the right damper, from fully open.
        pub right_damper_used: Length,
        /// Remaining stroke of the right damper, to fully closed.
        pub right_damper_remaining: Length,
        /// Above the left seat to its bump stop, vertical; negative where the stop is pressed.
        pub left_bump_remaining: Length,
        /// Remaining bump at the right seat.
        pub right_bump_remaining: Length,
    }
}

record! {
    /// Travel of the springs from ride height.
    #[derive(Debug, Clone, PartialEq)]
    pub struct HeaveRange {
        /// Least heave, negative.
        pub droop: Length,
        /// End of droop: `shackle`, `half to the fixed eye`, `half to the shackle` or `axle's pitch`.
        pub droop_end: String,
        /// Greatest heave.
        pub bump: Length,
        /// End of bump.
        pub bump_end: String,
    }
}

record! {
    /// The axle under a torque about its own axis.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct WindUp {
        /// Turn of the housing by the torque, positive with the pinion's nose up.
        pub wind_up_angle: Angle,
        /// With that and the heave, positive with its nose up.
        pub pinion_angle: Angle,
        /// Tangent stiffness of both springs and coils against the axle's pitch, there.
        pub wind_up_rate: RotationalStiffness,
        /// Movement of the axle's middle by the torque alone.
        pub wheelbase_change: Length,
        /// Vertical, of each leaf spring, which the torque changes with the heave kept.
        pub spring_load: Force,
        /// Greatest, in the full-length leaves at the seat, load and torque together.
        pub leaf_stress: Stress,
    }
}

/// A live axle on leaf springs that is prepared once and asked many times: see [`Prepare`].
///
/// The springs are settled at ride height, and each answer starts from there.
#[derive(Debug, Clone)]
pub struct PreparedLeafAxle<'a> {
    model: &'a LeafAxle,
    pub(super) spring: Spring,
    /// Axle's middle at ride height, forward and up.
    centre: [f64; 2],
    /// Seat from the axle's middle.
    seat: [f64; 2],
    pub(super) angle: f64,
    base: f64,
    /// From the wheel's centre down to the ground.
    drop: f64,
    levers: Option<[Lever; 2]>,
    bar_sign: f64,
    /// The axle at ride height, from which every search starts.
    rest: Pose,
}

/// Axle at the seats of its springs: height of its middle, sines and cosines of its lean and of its pitch, the way from its middle to
/// a seat, forward and up, and the heights of the seats, the left one first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stance {
    z: Jet,
    lean: [Jet; 2],
    tilt: [Jet; 2],
    forward: Jet,
    up: Jet,
    pub(super) seats: [Jet; 2],
}

/// The axle at one heave, roll and pitch, with derivatives by these three.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Pose {
    pub(super) heave: f64,
    pub(super) roll: f64,
    pub(super) pitch: f64,
    /// Change of the pitch with heave and with roll.
    pitch_rates: [f64; 2],
    pub(super) energy: Jet,
    pub(super) left: Bent,
    pub(super) right: Bent,
    /// The left and the right coil-over: energy, length between the eyes, cosine of its lean, vertical force.
    coils: [Jet; 2],
    eyes: [Jet; 2],
    uprights: [f64; 2],
    lifts: [f64; 2],
    /// Turn to the left.
    steer: Jet,
    /// Position of the axle's middle.
    x: Jet,
    y: Jet,
    z: Jet,
    /// Line between the eyes, at the axle.
    line: Jet,
    /// Sine and cosine of the axle's lean against the body, positive with its left up.
    lean: [Jet; 2],
    /// Tilt of its pitch.
    tilt: [Jet; 2],
}

impl Pose {
    /// The pitch at another heave and roll, nearly.
    fn pitch_at(&self, heave: f64, roll: f64) -> f64 {
        let [by_heave, by_roll] = self.pitch_rates;
        self.pitch + by_heave * (heave - self.heave) + by_roll * (roll - self.roll)
    }
    /// The bends of both springs at another heave, roll and pitch, nearly.
    fn bends_at(&self, [heave, roll, pitch]: [f64; 3]) -> [[f64; 2]; 2] {
        let by = [heave - self.heave, roll - self.roll, pitch - self.pitch];
        [self.left.ahead(by), self.right.ahead(by)]
    }
    /// Change with heave, the pitch following.
    fn by_heave(&self, of: Jet) -> f64 {
        let [heave, _, pitch] = of.first;
        heave + pitch * self.pitch_rates[0]
    }
    /// Tangent rate of both springs in heave, the pitch following.
    fn axle_rate(&self) -> f64 {
        let [heave, _, turn, _, _, pitch] = self.energy.second;
        heave - turn * turn / pitch
    }
    /// Change with roll, the pitch following.
    fn by_roll(&self, of: Jet) -> f64 {
        let [_, roll, pitch] = of.first;
        roll + pitch * self.pitch_rates[1]
    }
}

/// Springs that carry their load at ride height, and how the axle stands on them there.
#[derive(Debug, Clone, Copy)]
struct Settled {
    spring: Spring,
    rest: Pose,
}

#[cfg(feature = "sheet")]
thread_local! {
    static KEPT: Kept<Settled> = const { Kept::new() };
}

impl crate::base::Sealed for LeafAxle {}
impl Model for LeafAxle {
    fn check(&self) -> Result<()> {
        self.prepare().map(drop)
    }
}
impl Prepare for LeafAxle {
    type Prepared<'a> = PreparedLeafAxle<'a>;

    fn prepare(&self) -> Result<PreparedLeafAxle<'_>> {
        self.ready(|ready| ready.settled())
    }
}

impl LeafAxle {
    /// The axle at a heave and roll: position, steer, pinion, springs, shackles, roll centre, anti-squat and what is left of the strokes.
    ///
    /// # Parameters
    /// - `heave` — `z`, of the axle's middle against the body from ride height, positive in bump
    /// - `roll` — `r`, of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// See the fields of [`LeafAxlePosition`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, suspension::LeafAxle, units::*};
    /// # #[cfg(feature = "serde")] {
    /// let dray = LeafAxle::from_text(r#"
    ///     axle = "rear"
    ///     [wheel]
    ///     centre = { x = "-3300 mm", y = "810 mm", z = "390 mm" }
    ///     camber = "0 deg"
    ///     toe = "0 deg"
    ///     loaded_radius = "380 mm"
    ///     [leaf]
    ///     fixed_eye = { x = "-2660 mm", y = "520 mm", z = "460 mm" }
    ///     shackle_eye = { x = "-4010 mm", y = "520 mm", z = "550 mm" }
    ///     shackle_pivot = { x = "-3985 mm", y = "520 mm", z = "670 mm" }
    ///     seat = { x = "-3300 mm", y = "520 mm", z = "475 mm" }
    ///     clamped_length = "140 mm"
    ///     form = "uniform_strength"
    ///     load = "9.8 kN"
    ///     [spring]
    ///     rate = "110 N/mm"
    /// "#)?;
    /// let on = dray.at(Length::of::<mm>(40.0), Angle::of::<deg>(3.0))?;
    /// assert_eq!(format!("{:.2} deg of steer", on.axle_steer.in_::<deg>()), "-0.38 deg of steer");
    /// assert!(dray.at(Length::of::<mm>(900.0), Angle::of::<deg>(0.0)).is_err()); // says what ends it, and where
    /// # }
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at(&self, heave: Length, roll: Angle) -> Result<LeafAxlePosition> {
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
        for heave in heave {
            for roll in roll {
                rows.push((*heave, *roll), ready.at(*heave, *roll));
            }
        }
        Ok(rows.finish())
    }

    /// The joints in space, part by part, and the springs as they are bent: to draw the axle, or to measure clearance from.
    ///
    /// # Parameters
    /// - `heave` — of the axle's middle against the body from ride height, positive in bump
    /// - `roll` — of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// One row a heave, roll and point, the points of a part in the order in which a line joins them: `heave`, `roll`, `part` (`axle`, `spring left`, `shackle left`, `seat left`, `damper left`, `coil-over left`, `wheel left`, the same of the right side, and `anti-roll bar`), `point`,
    /// and its place `x`, `y`, `z` in the body's axes. The main leaf goes from the `fixed eye` through `leaf`, `clamp` and `seat` to the `shackle eye`; sideways it is drawn from the eyes, which stay in their plane, evenly to its seat. A seat stands on the axle's own line, above or below it.
    pub fn points(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        outlines(["heave", "roll"], (heave, roll), |heave, roll| ready.outline(heave, roll))
    }

    /// Travel of the springs in droop and bump before a shackle is in line; damper, bump stop, coil, bar and the leaves' strength may end it earlier.
    ///
    /// # Parameters
    /// - `roll` — of the axle against the body about x, positive with the left wheel in bump
    ///
    /// # Returns
    /// See the fields of [`HeaveRange`].
    pub fn travel_range(&self, roll: Angle) -> Result<HeaveRange> {
        self.prepare()?.travel_range(roll)
    }

    /// The axle wound up in its springs by drive or brake, its heave kept.
    ///
    /// # Parameters
    /// - `heave` — of the axle's middle against the body from ride height, positive in bump
    /// - `torque` — of both wheels together, positive driving forward, negative braking; their force at the ground is it over the loaded radius
    ///
    /// # Returns
    /// See the fields of [`WindUp`].
    pub fn wind_up(&self, heave: Length, torque: Torque) -> Result<WindUp> {
        self.prepare()?.wind_up(heave, torque)
    }

    /// A block between spring and seat, or one taken out: the body is raised or lowered, the springs as they are.
    ///
    /// # Parameters
    /// - `thickness` — of the block put in, negative of one taken out: it raises the body where the spring lies above the axle, and lowers it where it lies below
    /// - `heave` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`. The body's axes stay with the body: the axle moves in them. The seats of a coil are set so that it carries what it carried.
    pub fn seat_block(&self, thickness: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { thickness: (-1) <= .. <= 1 ; "plausibility limit: no block is 1 m thick"; }
        let seat = self.leaf.seat.z.quantity - self.wheel.centre.z.quantity;
        let rise = thickness.si().copysign(thickness.si() * seat.si());
        let mut after = self.clone();
        after.carry(vector(0.0, 0.0, -rise));
        self.settled(after, heave)
    }

    /// Shackles of another length; springs and coils together carry what they carried.
    ///
    /// # Parameters
    /// - `longer` — by how much, negative where they are shorter
    /// - `heave` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`; changes are against the ride height before.
    pub fn shackle_change(&self, longer: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { longer: (-1) <= .. <= 1 ; "plausibility limit: no shackle is 1 m longer"; }
        let before = self.prepare()?;
        let carried = before.rest.energy.first[0];
        let mut after = before.clone();
        after.spring.shackle_length += longer.si();
        let wrong = |why: &str| {
            let message = format!("longer = {} mm: {why}", longer.si() * 1e3);
            Error::NoSolution { message }
        };
        if after.spring.shackle_length < LEAST {
            return Err(wrong("no shackle is left"));
        }
        after.settle().map_err(|end| wrong(end.sentence()))?;
        let mut standing = 0.0;
        let mut settled = false;
        for _ in 0..50 {
            let on = after.pose(standing, 0.0).map_err(|end| wrong(end.sentence()))?;
            let excess = on.energy.first[0] - carried;
            let step = excess / on.axle_rate();
            standing -= step.clamp(-0.02, 0.02);
            settled = step.abs() < 1e-12;
            if settled {
                break;
            }
        }
        if !settled {
            return Err(wrong("the springs carry their load nowhere"));
        }
        let mut model = self.clone();
        model.raise(-standing);
        let after = PreparedLeafAxle { model: &model, ..after };
        compared(&before, &after, standing, heave)
    }

    /// The body raised or lowered by springs of another arch: they carry their load at the new height.
    ///
    /// # Parameters
    /// - `rise` — of the body above the ground, negative where it is lowered
    /// - `heave` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`; changes are against the ride height before. The seats of a coil are set so that it carries what it carried.
    pub fn ride_height_change(&self, rise: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { rise: (-10) <= .. <= 10 ; "plausibility limit: no body is raised by 10 m"; }
        let before = self.prepare()?;
        let standing = before.pose(-rise.si(), 0.0).map_err(|_| before.beyond(-rise, Angle::from_si(0.0)))?;
        let mut model = self.clone();
        model.raise(rise.si());
        model.reseat(&before.rest, &standing);
        let mut after = PreparedLeafAxle { model: &model, ..before.clone() };
        let here = [-rise.si(), 0.0, standing.pitch];
        let springs = after.springs(here, standing.bends_at(here));
        let (stance, springs) = springs.map_err(|end| refused("leaf", end.sentence().to_owned()))?;
        after.load(&after.stand(here, &stance, springs, 0.0))?;
        after.settle().map_err(|end| refused("leaf", end.sentence().to_owned()))?;
        compared(&before, &after, -rise.si(), heave)
    }

    /// The axle moved under its body: along its springs, whose seats come to another place of them, or up and down on blocks; wheels, seats and what the axle carries are moved, what is on the body stays.
    ///
    /// # Parameters
    /// - `forward` — by how much; one half of each spring gets shorter by it, the other one longer
    /// - `up` — by how much, against the body, which then stands so much lower: the seats stay at their height, blocks between them and the axle make it up
    /// - `heave` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`. Kept are the eyes, the shackles and the height of the seats at ride height, the length that is clamped, the load of each spring and its bending strength `B`, with which a
    /// half of the length `L` has the rate `B / L^3` at its end. The seat is free to turn in a spring tester, so that a half carries the share `c` of the other's lever in both; hence the spring's rate is `B / (c_f^2 L_f^3 + c_s^2 L_s^3)`, of halves to the fixed eye and to the shackle, and a given one
    /// changes as that; `leaves` stay as they are. The main leaf keeps its length but for what the arcs want. The pinion points as it did, and the seats of a coil are set so that it carries what it carried.
    pub fn axle_move(&self, forward: Length, up: Length, heave: &[Length]) -> Result<Table> {
        let before = self.prepare()?;
        valid! {
            forward: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
            up: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
        }
        let mut after = self.clone();
        after.carry(vector(forward.si(), 0.0, up.si()));
        after.leaf.seat = after.leaf.seat.moved(vector(forward.si(), 0.0, 0.0));
        if let Some(LeafRate { rate }) = &self.spring {
            // Compliance depends on geometry only, so the old rate may stay.
            let rate = rate.quantity * (before.ease() / after.prepare()?.ease());
            after.spring = Some(LeafRate { rate: Value::new(rate) });
        }
        self.settled(after, heave)
    }

    /// Spacers behind both wheels, or wheels of another offset.
    ///
    /// # Parameters
    /// - `outward` — thickness of a spacer, or by how much the new offset is less
    /// - `heave` — from ride height
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`.
    pub fn spacer(&self, outward: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { outward: (-1) <= .. <= 1 ; "plausibility limit: no spacer is 1 m thick"; }
        let mut after = self.clone();
        // The axle's middle stays: the springs hold it.
        let by = self.wheel.axis() * outward.si();
        after.wheel.centre = after.wheel.centre.moved(vector(0.0, by.y, 0.0));
        self.settled(after, heave)
    }

    /// Moves the parts that the axle carries along with it, except the seats of its springs.
    fn carry(&mut self, by: Vector) {
        let mut on_axle = vec![&mut self.wheel.centre];
        on_axle.extend(self.damper.iter_mut().map(|damper| &mut damper.axle_eye));
        on_axle.extend(self.coil_over.as_mut().into_iter().map(|coil_over| &mut coil_over.axle_eye));
        if let Stated::Given(bar) = &mut self.anti_roll_bar {
            match bar.bearings {
                Mount::Axle => on_axle.extend([&mut bar.lever_end, &mut bar.lever_pivot]),
                Mount::Body => on_axle.push(&mut bar.link_eye),
            }
        }
        for point in on_axle {
            *point = point.moved(by);
        }
        self.raise(-by.z);
    }

    /// The rows of this axle and of a changed one at its own ride height, whose coil is set to carry what it carried.
    fn settled(&self, mut after: LeafAxle, heave: &[Length]) -> Result<Table> {
        let before = self.prepare()?;
        let drawn = after.prepare()?.rest;
        after.reseat(&before.rest, &drawn);
        compared(&before, &after.prepare()?, 0.0, heave)
    }

    /// The seats of a coil set so that it carries here what it carried before; a loose one keeps its gap.
    fn reseat(&mut self, before: &Pose, here: &Pose) {
        let Stated::Given(coil_over) = &mut self.coil_over else { return };
        let strut = Strut::of(coil_over, before.eyes[0].value);
        let Some(spring) = &mut coil_over.spring else { return };
        let mut length = strut.length;
        if strut.coil.si() > 0.0 {
            let force = before.lifts[0] / here.uprights[0] - strut.gas;
            length = spring.free_length.quantity - Force::from_si(force) / spring.rate.quantity;
        }
        spring.seat_offset = Value::new(Length::from_si(here.eyes[0].value) - length);
    }

    /// The centre of gravity raised.
    fn raise(&mut self, by: f64) {
        if let Some(braking) = &mut self.braking {
            let height = &mut braking.centre_of_gravity_height;
            *height = Value::new(height.quantity + Length::from_si(by));
        }
    }
    /// 1 where the wheelbase grows forward.
    fn to_rear(&self) -> f64 {
        match self.axle {
            Axle::Front => 1.0,
            Axle::Rear => -1.0,
        }
    }
    /// Turn of the pinion's nose at this pitch of the axle: a front axle's points to the rear.
    fn nose_up(&self, pitch: f64) -> f64 {
        -self.to_rear() * pitch
    }
    fn pinion(&self, change: f64) -> Angle {
        let drawn = self.pinion_angle.as_ref().map_or(f64::NAN, |angle| angle.quantity.si());
        Angle::from_si(drawn + change)
    }

    /// Prepares the axle, its springs settled by this function.
    fn ready(
        &self,
        settled: impl FnOnce(&mut PreparedLeafAxle<'_>) -> Result<Settled>,
    ) -> Result<PreparedLeafAxle<'_>> {
        self.wheel.check()?;
        if let Some(braking) = &self.braking {
            braking.check()?;
            braking.check_on_axle()?;
        }
        self.check_rest()?;
        if let Some(damper) = &self.damper {
            damper.check()?;
        }
        self.check_coil_over()?;
        let levers = self.levers()?;
        let drawn = &self.leaf;
        drawn.check()?;
        self.check_rate()?;
        let [fixed_eye, eye, pivot, seat] =
            [&drawn.fixed_eye, &drawn.shackle_eye, &drawn.shackle_pivot, &drawn.seat]
                .map(|point| [point.x.quantity.si(), point.z.quantity.si()]);
        let angle = drawn.seat_angle.as_ref().map_or(0.0, |angle| angle.quantity.si());
        let offset = drawn.eye_offset.as_ref().map_or(0.0, |offset| offset.quantity.si());
        let clamped = 0.5 * drawn.clamped_length.quantity.si();
        let fading = match drawn.form {
            LeafForm::UniformStrength => 0.0,
            LeafForm::UniformSection => 1.0,
        };
        let forward = (fixed_eye[0] - seat[0]).signum();
        if (eye[0] - seat[0]) * forward >= 0.0 {
            return Err(wrong("seat", "it must lie between the eyes, forward and rearward"));
        }
        let (sine, cosine) = angle.sin_cos();
        let half = |name: &'static str, end: [f64; 2], outward: f64| {
            let [x, z] = [end[0] - seat[0], end[1] - seat[1]];
            let along = [outward * (x * cosine + z * sine), z * cosine - x * sine];
            let half = Half::new(outward, along, clamped, offset, fading);
            if along[0] - clamped < 0.01 || along[1].abs() > along[0] || half.slope().abs() > 1.0 {
                let why = "from the seat it must reach at least 10 mm beyond the clamp, within 45 deg of it, on an arc that ends within 57 deg";
                return Err(wrong(name, why));
            }
            Ok(half)
        };
        let halves = [half("fixed_eye", fixed_eye, forward)?, half("shackle_eye", eye, -forward)?];
        if (eye[0] - pivot[0]).hypot(eye[1] - pivot[1]) < LEAST {
            return Err(wrong("shackle_pivot", "it is nearer than 1 mm to the eye: there is no shackle"));
        }
        let spring = Spring::new(halves, fixed_eye, pivot, eye, angle).ok_or_else(|| {
            wrong("shackle_pivot", "the shackle is in line with the spring at ride height: locked")
        })?;
        let (x, z) = (self.wheel.centre.x.quantity.si(), self.wheel.centre.z.quantity.si());
        let mut ready = PreparedLeafAxle {
            model: self,
            spring,
            centre: [x, z],
            seat: [seat[0] - x, seat[1] - z],
            angle,
            base: 2.0 * drawn.seat.y.quantity.si(),
            drop: self.wheel.loaded_radius.quantity.si() * self.wheel.camber.quantity.si().cos(),
            levers,
            bar_sign: 1.0,
            rest: Pose::default(),
        };
        let Settled { spring, rest } = settled(&mut ready)?;
        (ready.spring, ready.rest) = (spring, rest);
        ready.stress(&rest.left)?;
        if let Some([left, _]) = &ready.levers
            && let Some((_, [rate, _])) = left.turn(ready.seen(&rest, left))
        {
            ready.bar_sign = 1.0_f64.copysign(rate);
        }
        if rest.energy.second[5] > 0.0 {
            Ok(ready)
        } else {
            Err(refused("leaf", End::Pitch.sentence().to_owned()))
        }
    }

    /// As `prepare`; its settled springs are shared by all stages that ask about them.
    #[cfg(feature = "sheet")]
    pub(super) fn shared(&self) -> Result<PreparedLeafAxle<'_>> {
        if self.coil_over.is_given() {
            return self.prepare();
        }
        self.ready(|ready| {
            let numbers = self.settling();
            KEPT.with(|kept| kept.part(&numbers, || ready.settled())).map(|settled| *settled)
        })
    }

    /// Every number on which the settled springs rest, where there is no coil beside them.
    #[cfg(feature = "sheet")]
    fn settling(&self) -> [f64; 22] {
        let leaf = &self.leaf;
        let [fixed, eye, pivot, seat, wheel] =
            [&leaf.fixed_eye, &leaf.shackle_eye, &leaf.shackle_pivot, &leaf.seat, &self.wheel.centre]
                .map(|point| [point.x.quantity.si(), point.z.quantity.si()]);
        let rate = self.spring.as_ref().map(|spring| spring.rate.quantity.si());
        let of_leaves =
            |of: fn(&Leaves) -> f64| leaf.leaves.as_ref().filter(|_| rate.is_none()).map_or(f64::NAN, of);
        [
            fixed[0],
            fixed[1],
            eye[0],
            eye[1],
            pivot[0],
            pivot[1],
            seat[0],
            seat[1],
            wheel[0],
            wheel[1],
            leaf.seat.y.quantity.si(),
            leaf.seat_angle.as_ref().map_or(0.0, |angle| angle.quantity.si()),
            leaf.clamped_length.quantity.si(),
            leaf.eye_offset.as_ref().map_or(0.0, |offset| offset.quantity.si()),
            if leaf.form == LeafForm::UniformSection { 1.0 } else { 0.0 },
            leaf.load.quantity.si(),
            rate.unwrap_or(f64::NAN),
            of_leaves(|leaves| leaves.elastic_modulus.quantity.si()),
            of_leaves(|leaves| leaves.leaf_width.quantity.si()),
            of_leaves(|leaves| leaves.leaf_thickness.quantity.si()),
            of_leaves(|leaves| leaves.full_length_leaves.quantity.si()),
            of_leaves(|leaves| leaves.graduated_leaves.quantity.si()),
        ]
    }

    /// Refuses a spring without a rate and without leaves of which it would follow.
    fn check_rate(&self) -> Result<()> {
        let Some(LeafRate { rate }) = &self.spring else {
            return match &self.leaf.leaves {
                Some(_) => Ok(()),
                None => Err(refused(
                    "spring.rate",
                    "missing, and no `leaf.leaves` of which it would follow".to_owned(),
                )),
            };
        };
        let rate = rate.quantity;
        within(
            || "spring".to_owned(),
            || {
                valid! { rate: 1 <= .. <= 1e9 ; "plausibility limit: springs lie between 1 N/m and 1 GN/m"; }
                Ok(())
            },
        )
    }

    /// Refuses a helper coil that cannot be.
    fn check_coil_over(&self) -> Result<()> {
        let Stated::Given(coil_over) = &self.coil_over else { return Ok(()) };
        coil_over.check()?;
        if (coil_over.body_eye.vector() - coil_over.axle_eye.vector()).norm() < LEAST {
            return Err(refused("coil_over", "its eyes are nearer than 1 mm".to_owned()));
        }
        if coil_over.damper.is_some() && self.damper.is_some() {
            let message = "there is a `damper` beside it already: give one of the two";
            return Err(refused("coil_over.damper", message.to_owned()));
        }
        Ok(())
    }

    /// Both levers of the bar.
    fn levers(&self) -> Result<Option<[Lever; 2]>> {
        let Stated::Given(bar) = &self.anti_roll_bar else { return Ok(None) };
        bar.check()?;
        let centre = self.wheel.centre.vector();
        let middle = vector(centre.x, 0.0, centre.z);
        Ok(Some([Lever::new(bar, middle, drawn)?, Lever::new(bar, middle, mirrored)?]))
    }

    /// Checks of the whole axle, beyond its parts.
    fn check_rest(&self) -> Result<()> {
        let bump_clearance = self.bump_clearance.as_ref().map_or(Length::from_si(0.0), |on| on.quantity);
        let pinion_angle = self.pinion_angle.as_ref().map_or(Angle::from_si(0.0), |on| on.quantity);
        let drive_share = self.drive_share.as_ref().map_or(Ratio::from_si(0.0), |on| on.quantity);
        valid! {
            bump_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height; plausibility limit: at most 10 m";
            pinion_angle: (-0.8) <= .. <= 0.8 ; "plausibility limit: pinions point forward within 45 deg";
            drive_share: 0 <= .. <= 1 ; "definition: a share of the whole driving force";
        }
        if self.drive_share.is_some() && self.braking.is_none() {
            let message = "it wants `braking`: the centre of gravity's height and the wheelbase".to_owned();
            return Err(refused("drive_share", message));
        }
        Ok(())
    }
}

/// Accuracy, in metres, of the end of an axle's motion.
const FINE: f64 = 1e-8;
/// Positions that are tried on one way at the most.
const TRIES: u32 = 1000;
/// A step of the pitch that is shorter is left out.
const SETTLED: f64 = 1e-12;
/// Shorter than this a lever is none.
const LEAST: f64 = 0.001;

fn wrong(point: &str, why: &str) -> Error {
    refused(&format!("leaf.{point}"), why.to_owned())
}

pub(super) fn locked(roll: Angle, end: End) -> Error {
    let (roll, why) = (roll.si(), end.sentence());
    let message = match end {
        End::GivenUp => format!("roll = {roll} rad: {why}"),
        _ => format!("roll = {roll} rad: the springs do not go there at ride height, {why}"),
    };
    Error::NoSolution { message }
}

/// Energy and force of a coil-over with this length between its eyes.
fn stored(coil_over: &AxleCoilOver, eyes: Jet) -> (Jet, f64) {
    let strut = Strut::of(coil_over, eyes.value);
    let (energy, force, rate) = match &coil_over.spring {
        Some(_) => (0.5 * strut.coil.si() * strut.used.si(), strut.force, strut.rate),
        None => (0.0, strut.gas, 0.0),
    };
    (eyes.chain([energy - strut.gas * eyes.value, -force, rate]), force)
}

fn norm([x, y, z]: [Jet; 3]) -> Jet {
    (x.square() + y.square() + z.square()).root()
}

/// The rows of two axles without roll; the second one stands at another heave.
fn compared(
    before: &PreparedLeafAxle<'_>,
    after: &PreparedLeafAxle<'_>,
    standing: f64,
    heave: &[Length],
) -> Result<Table> {
    let none = Angle::from_si(0.0);
    let mut rows = Filling::over(["state", "heave"], &[2, heave.len()])?;
    for heave in heave {
        for (state, ready, from) in [("before", before, 0.0), ("after", after, standing)] {
            rows.push((state, *heave), ready.at(Length::from_si(from) + *heave, none));
        }
    }
    Ok(rows.finish())
}

impl LeafSpring {
    fn check(&self) -> Result<()> {
        for (name, point) in [
            ("fixed_eye", &self.fixed_eye),
            ("shackle_eye", &self.shackle_eye),
            ("shackle_pivot", &self.shackle_pivot),
            ("seat", &self.seat),
        ] {
            point.check("leaf", name)?;
        }
        let seat_angle = self.seat_angle.as_ref().map_or(Angle::from_si(0.0), |on| on.quantity);
        let eye_offset = self.eye_offset.as_ref().map_or(Length::from_si(0.0), |on| on.quantity);
        let (clamped_length, load) = (self.clamped_length.quantity, self.load.quantity);
        within(
            || "leaf".to_owned(),
            || {
                valid! {
                    seat_angle: (-0.5) <= .. <= 0.5 ; "plausibility limit: seats stand level within 29 deg";
                    clamped_length: 0 <= .. <= 10 ; "definition: a length; plausibility limit: at most 10 m";
                    eye_offset: (-0.2) <= .. <= 0.2 ; "plausibility limit: eyes stand within 200 mm of their leaf";
                    load: 1 <= .. <= 1e8 ; "plausibility limit: springs of road vehicles carry between 1 N and 100 MN";
                }
                Ok(())
            },
        )?;
        if self.seat.y.quantity.si() >= 0.01 {
            Ok(())
        } else {
            Err(wrong("seat", "a left spring is wanted: y is 10 mm or more"))
        }
    }
}

impl AxleDamper {
    fn check(&self) -> Result<()> {
        self.body_eye.check("damper", "body_eye")?;
        self.axle_eye.check("damper", "axle_eye")?;
        within(
            || "damper".to_owned(),
            || {
                let [open, closed] =
                    [&self.open_length, &self.closed_length].map(|on| on.as_ref().map(|on| on.quantity));
                // A missing length stands on the other's right side.
                let closed_length = closed.or(open.map(|open| open * 0.5)).unwrap_or(Length::from_si(1.0));
                let open_length = open.unwrap_or(closed_length * 2.0);
                valid! {
                    open_length: 0.0001 <= .. <= 100 ; "plausibility limit: dampers are between 0.1 mm and 100 m long";
                    closed_length: 0.0001 <= .. <= 100 ; "plausibility limit: dampers are between 0.1 mm and 100 m long";
                    open_length > closed_length ; "definition: a damper has a stroke";
                }
                Ok(())
            },
        )?;
        if (self.body_eye.vector() - self.axle_eye.vector()).norm() < LEAST {
            return Err(refused("damper", "its eyes are nearer than 1 mm".to_owned()));
        }
        Ok(())
    }
}

impl PreparedLeafAxle<'_> {
    /// Deflection of the seat, free to turn, under its load over that load, for halves of the rate `1 / length^3`: each carries in
    /// proportion to the other's lever.
    fn ease(&self) -> f64 {
        let Spring { fixed, shackle, .. } = &self.spring;
        let whole = fixed.lever() + shackle.lever();
        let share = |half: &Half, other: &Half| {
            let carried = other.lever() / whole;
            carried * carried * half.length * half.length * half.length
        };
        share(fixed, shackle) + share(shackle, fixed)
    }

    /// Rate of the spring alone, as a spring tester measures it.
    #[cfg(feature = "sheet")]
    pub(super) fn rate(&self) -> LinearStiffness {
        let half = &self.spring.fixed;
        let strength = half.stiffness * half.length / (half.centroid() * half.centroid());
        LinearStiffness::from_si(strength / self.ease())
    }

    /// The stiffness of both halves from the rate of the spring: halves of one strength.
    fn stiffen(&mut self) -> Result<()> {
        let (drawn, ease) = (&self.model.leaf, self.ease());
        let spring = &mut self.spring;
        let [a, b] = [spring.fixed.length, spring.shackle.length];
        let strength = if let Some(LeafRate { rate }) = &self.model.spring {
            rate.quantity.si() * ease
        } else if let Some(leaves) = &drawn.leaves {
            // A symmetric spring of the same span.
            let rate = leaf_pack_rate(
                leaves.elastic_modulus.quantity,
                leaves.leaf_width.quantity,
                leaves.leaf_thickness.quantity,
                Length::from_si(a + b),
                leaves.full_length_leaves.quantity,
                leaves.graduated_leaves.quantity,
            );
            let rate = rate.map_err(|error| wrong("leaves", &error.to_string()))?;
            rate.si() * (a + b) * (a + b) * (a + b) / 16.0
        } else {
            f64::NAN
        };
        for half in [&mut spring.fixed, &mut spring.shackle] {
            half.stiffness = strength * half.centroid() * half.centroid() / half.length;
        }
        Ok(())
    }

    /// The load set so that a spring carries it here without a torque about the axle but what its coil makes.
    fn load(&mut self, on: &Pose) -> Result<()> {
        // As its seat goes up it runs along the vehicle as well, against the pull of a coil that leans.
        let load = self.model.leaf.load.quantity.si() - (on.coils[0].first[0] - on.lifts[0]);
        let torque = on.coils[0].first[2];
        let on = &on.left;
        let ([fixed, _, fixed_turn], [shackle, _, shackle_turn]) = (on.fixed.first, on.shackle.first);
        let all = fixed * shackle_turn - shackle * fixed_turn;
        let (over, turned) = (load / all, torque / all);
        if !over.is_finite() || !turned.is_finite() {
            return Err(refused("leaf", "its load turns the axle, whatever the halves do".to_owned()));
        }
        let Spring { fixed, shackle, .. } = &mut self.spring;
        let moments = [
            shackle_turn * over + on.shackle.first[0] * turned,
            -fixed_turn * over - on.fixed.first[0] * turned,
        ];
        fixed.loaded = moments[0] / fixed.stiffness - on.fixed.value;
        shackle.loaded = moments[1] / shackle.stiffness - on.shackle.value;
        Ok(())
    }

    /// Springs that carry their load at ride height, and how the axle stands on them there.
    fn settled(&mut self) -> Result<Settled> {
        self.stiffen()?;
        self.settle().map_err(|end| refused("leaf", end.sentence().to_owned()))?;
        let mut rest = self.rest;
        self.load(&rest)?;
        self.charge(&mut rest, 0.0);
        Ok(Settled { spring: self.spring, rest })
    }

    /// Finds the axle at ride height.
    fn settle(&mut self) -> core::result::Result<(), End> {
        let (mut stance, mut springs) = self.springs([0.0; 3], [[0.0; 2]; 2])?;
        if !springs[0].exact {
            (stance, springs) = self.springs([0.0; 3], springs.map(|spring| spring.ahead([0.0; 3])))?;
        }
        self.rest = self.stand([0.0; 3], &stance, springs, 0.0);
        Ok(())
    }

    /// The springs with the axle at this heave, roll and pitch, from bends that are near, and how it stands on them.
    fn springs(
        &self,
        state: [f64; 3],
        near: [[f64; 2]; 2],
    ) -> core::result::Result<(Stance, [Bent; 2]), End> {
        solved();
        let [heave, roll, pitch] = Jet::variables(state);
        let stance = self.stance(heave, [roll.sine(), roll.cosine()], pitch);
        let angle = pitch + self.angle;
        let left = self.spring.at(stance.seats[0], angle, near[0])?;
        let right = if roll.value == 0.0 {
            left.mirrored()
        } else {
            self.spring.at(stance.seats[1], angle, near[1])?
        };
        Ok((stance, [left, right]))
    }

    /// The energy of springs and coils, less the work of a force forward at the ground.
    pub(super) fn energy(&self, state: [f64; 3], stance: &Stance, springs: &[Bent; 2], traction: f64) -> Jet {
        if traction == 0.0 && !self.model.coil_over.is_given() {
            return self.spring.energy(&springs[0]) + self.spring.energy(&springs[1]);
        }
        self.stand(state, stance, *springs, traction).energy
    }

    /// Position of the axle at the seats of its springs.
    pub(super) fn stance(&self, heave: Jet, lean: [Jet; 2], pitch: Jet) -> Stance {
        let tilt = [pitch.sine(), pitch.cosine()];
        let [along, over] = self.seat;
        let [sine, cosine] = lean;
        let forward = tilt[1] * along - tilt[0] * over;
        let up = tilt[0] * along + tilt[1] * over;
        let z = heave + self.centre[1];
        let seats = [0.5, -0.5].map(|side| z + sine * (side * self.base) + cosine * up);
        Stance { z, lean, tilt, forward, up, seats }
    }

    /// The axle on both springs as they are bent.
    fn stand(
        &self,
        [heave, roll, pitch]: [f64; 3],
        stance: &Stance,
        [left, right]: [Bent; 2],
        traction: f64,
    ) -> Pose {
        let Stance { z, lean, tilt, forward, up, .. } = *stance;
        let [sine, cosine] = lean;
        let steer = ((right.seat - left.seat) * (cosine * self.base).inverse()).arcsine();
        let x = (left.seat + right.seat) * 0.5 - steer.cosine() * forward - steer.sine() * sine * up;
        let [eye_x, eye_z] = [(left.eye[0] + right.eye[0]) * 0.5, (left.eye[1] + right.eye[1]) * 0.5];
        let [fixed_x, fixed_z] = self.spring.fixed_eye;
        let line = (x + -fixed_x) * (eye_x + -fixed_x).inverse() * (eye_z + -fixed_z) + fixed_z;
        let y = sine * cosine.inverse() * (line - z);
        let mut on =
            Pose { heave, roll, pitch, left, right, steer, x, y, z, line, lean, tilt, ..Pose::default() };
        if let Stated::Given(coil_over) = &self.model.coil_over {
            for (place, side) in [1.0, -1.0].into_iter().enumerate() {
                let apart = self.apart(&on, &coil_over.body_eye, &coil_over.axle_eye, side);
                let eyes = norm(apart);
                let (energy, force) = stored(coil_over, eyes);
                let upright = -apart[2].value / eyes.value;
                (on.coils[place], on.eyes[place]) = (energy, eyes);
                (on.uprights[place], on.lifts[place]) = (upright, force * upright);
            }
        }
        self.charge(&mut on, traction);
        on
    }

    /// The energy of springs and coils, less the work of a force forward at the ground, and how the pitch follows from it.
    fn charge(&self, on: &mut Pose, traction: f64) {
        for bent in [&mut on.left, &mut on.right] {
            bent.energy = self.spring.energy(bent);
        }
        on.energy = on.left.energy + on.right.energy;
        if traction != 0.0 {
            let [.., pitch] = Jet::variables([on.heave, on.roll, on.pitch]);
            on.energy = on.energy - (on.x + pitch * self.drop) * traction;
        }
        if self.model.coil_over.is_given() {
            on.energy = on.energy + on.coils[0] + on.coils[1];
        }
        let [_, _, zt, _, rt, tt] = on.energy.second;
        on.pitch_rates = [-zt / tt, -rt / tt];
    }

    /// The axle with the pitch that balances it, from a position that is near and a first guess of the pitch.
    fn balance(
        &self,
        from: &Pose,
        [heave, roll, guess]: [f64; 3],
        traction: f64,
    ) -> core::result::Result<Pose, End> {
        self.balance_near([heave, roll, guess], from.bends_at([heave, roll, guess]), traction)
    }

    /// This balance, started from bends that are near.
    pub(super) fn balance_near(
        &self,
        [heave, roll, mut pitch]: [f64; 3],
        near: [[f64; 2]; 2],
        traction: f64,
    ) -> core::result::Result<Pose, End> {
        let (mut stance, mut springs) = self.springs([heave, roll, pitch], near)?;
        for _ in 0..30 {
            let energy = self.energy([heave, roll, pitch], &stance, &springs, traction);
            let (turn, stiffness) = (energy.first[2], energy.second[5]);
            if stiffness.is_nan() || stiffness <= 0.0 {
                return Err(End::Pitch);
            }
            let mut step = (-turn / stiffness).clamp(-0.1, 0.1);
            if step.abs() < SETTLED && springs.iter().all(|spring| spring.exact) {
                return Ok(self.stand([heave, roll, pitch], &stance, springs, traction));
            }
            let there = |step: f64| {
                self.springs(
                    [heave, roll, pitch + step],
                    springs.map(|spring| spring.ahead([0.0, 0.0, step])),
                )
            };
            let mut next = there(step);
            while next.is_err() && step.abs() > 1e-4 {
                step *= 0.5;
                next = there(step);
            }
            (stance, springs) = next?;
            pitch += step;
        }
        Err(End::Pitch)
    }

    /// The axle at a heave and roll: at once from ride height, otherwise step by step.
    fn pose(&self, heave: f64, roll: f64) -> core::result::Result<Pose, End> {
        let rest = &self.rest;
        if [heave, roll] == [0.0; 2] && rest.energy.first[2].abs() < SETTLED * rest.energy.second[5] {
            return Ok(*rest);
        }
        self.balance(rest, [heave, roll, rest.pitch_at(heave, roll)], 0.0).or_else(|_| {
            let (on, _, end) = self.walk(heave, roll, FINE)?;
            end.map_or(on.ok_or(End::GivenUp), Err)
        })
    }

    /// The axle as far towards a heave as it goes, to so many metres: how it stands there, the heave, and what ends it before.
    fn walk(
        &self,
        heave: f64,
        roll: f64,
        fine: f64,
    ) -> core::result::Result<(Option<Pose>, f64, Option<End>), End> {
        let rest = &self.rest;
        let on = self.balance(rest, [0.0, roll, rest.pitch_at(0.0, roll)], 0.0)?;
        match follow(self, &on, heave, fine) {
            Some(Went::There(on)) => Ok((Some(*on), heave, None)),
            Some(Went::Ended(place, end)) => Ok((None, place, Some(end))),
            None => self.step_by_step(on, heave, fine),
        }
    }

    /// This balance in steps of the heave: slow near the end, for bends of a half that do not lead there.
    #[inline(never)]
    fn step_by_step(
        &self,
        mut on: Pose,
        heave: f64,
        fine: f64,
    ) -> core::result::Result<(Option<Pose>, f64, Option<End>), End> {
        let roll = on.roll;
        let whole = self.spring.fixed.lever() + self.spring.shackle.lever();
        let longest = whole / 64.0;
        // A step that fails is halved, and doubled again after two that do not.
        let (mut good, mut step, mut longer, mut end) = (0.0, longest, longest, None);
        for _ in 0..TRIES {
            if good == heave || step <= fine {
                return Ok((Some(on), good, end.filter(|_| good != heave)));
            }
            let to = if (heave - good).abs() <= step { heave } else { good + step.copysign(heave) };
            // The pitch on its tangent, or further: near the end there is no axle with the pitch from before.
            let turn = on.pitch_rates[0] * (to - good);
            let there = |times: f64| self.balance(&on, [to, roll, on.pitch + times * turn], 0.0);
            match there(1.0).or_else(|_| there(2.0)) {
                Ok(next) => (on, good, step, longer) = (next, to, longer, longest.min(2.0 * longer)),
                Err(found) => (step, longer, end) = (0.5 * step, 0.5 * step, Some(found)),
            }
        }
        Err(End::GivenUp)
    }

    /// Least and greatest heave, and what ends them.
    pub(super) fn range(&self, roll: f64, fine: f64) -> core::result::Result<[(f64, End); 2], End> {
        let whole = self.spring.fixed.lever() + self.spring.shackle.lever();
        let (droop, bump) = (self.walk(-whole, roll, fine)?, self.walk(whole, roll, fine)?);
        Ok([droop, bump].map(|(_, heave, end)| (heave, end.unwrap_or(End::FixedHalf))))
    }

    /// Reason why the springs do not reach this position, and the travel that they have.
    fn beyond(&self, heave: Length, roll: Angle) -> Error {
        let [(droop, droop_end), (bump, bump_end)] = match self.range(roll.si(), FINE) {
            Ok(range) => range,
            Err(end) => return locked(roll, end),
        };
        let end = if heave.si() < 0.0 { droop_end } else { bump_end };
        let [heave, droop, bump] = [heave.si(), droop, bump].map(|on| on * 1e3);
        let message = format!(
            "heave = {heave} mm is beyond the springs with roll = {} rad: they go from {droop:.1} mm ({}) to {bump:.1} mm ({}), where {}",
            roll.si(),
            droop_end.word(),
            bump_end.word(),
            end.sentence()
        );
        Error::NoSolution { message }
    }

    /// The axle where it is asked for.
    fn reached(&self, heave: Length, roll: Angle) -> Result<Pose> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no wheel travels 10 m";
            roll: (-0.5) <= .. <= 0.5 ; "plausibility limit: no axle leans 29 deg against its body";
        }
        self.pose(heave.si(), roll.si()).map_err(|_| self.beyond(heave, roll))
    }

    /// Travel of the springs in droop and bump: see [`LeafAxle::travel_range`].
    pub fn travel_range(&self, roll: Angle) -> Result<HeaveRange> {
        valid! { roll: (-0.5) <= .. <= 0.5 ; "plausibility limit: no axle leans 29 deg against its body"; }
        let [(droop, droop_end), (bump, bump_end)] =
            self.range(roll.si(), FINE).map_err(|end| locked(roll, end))?;
        Ok(HeaveRange {
            droop: Length::from_si(droop),
            droop_end: droop_end.word().to_owned(),
            bump: Length::from_si(bump),
            bump_end: bump_end.word().to_owned(),
        })
    }

    /// The axle at a heave and roll: see [`LeafAxle::at`].
    pub fn at(&self, heave: Length, roll: Angle) -> Result<LeafAxlePosition> {
        let on = self.reached(heave, roll)?;
        let bar = self.bar(&on).ok_or_else(|| self.drop_link(heave, roll))?;
        self.results(&on, bar)
    }

    fn outline(&self, heave: Length, roll: Angle) -> Result<Outline<'static>> {
        let (model, on) = (self.model, self.reached(heave, roll)?);
        let carried = |arm: Vector| {
            let [x, y, z] = self.carried(&on, arm).map(|jet| jet.value);
            vector(x, y, z)
        };
        let (middle, wheel) = (vector(self.centre[0], 0.0, self.centre[1]), &model.wheel);
        let ends = [1.0, -1.0].map(|side| carried(vector(0.0, side * wheel.centre.y.quantity.si(), 0.0)));
        let [left, right] = ends;
        let mut outline: Outline<'static> = vec![("axle", vec![("left end", left), ("right end", right)])];
        let names = [
            ["spring left", "shackle left", "seat left", "damper left", "coil-over left", "wheel left"],
            ["spring right", "shackle right", "seat right", "damper right", "coil-over right", "wheel right"],
        ];
        for ((names, centre), (side, bent)) in
            names.into_iter().zip(ends).zip([(1.0, &on.left), (-1.0, &on.right)])
        {
            let [spring, shackle, seat, damper, coil_over, tyre] = names;
            let place = |at: Vector| vector(at.x, side * at.y, at.z);
            let across = side * 0.5 * self.base;
            let [forward, up] = self.seat;
            let on_axle = carried(vector(forward, across, up));
            let leaf = self.leaf(bent, on.pitch, [across, on_axle.y]);
            let eye = vector(bent.eye[0].value, across, bent.eye[1].value);
            let [x, z] = self.spring.pivot;
            outline.push((spring, leaf));
            outline.push((shackle, vec![("pivot", vector(x, across, z)), ("eye", eye)]));
            outline.push((seat, vec![("axle", carried(vector(0.0, across, 0.0))), ("seat", on_axle)]));
            let dampers = model.damper.iter().map(|on| (damper, &on.body_eye, &on.axle_eye));
            let coils =
                model.coil_over.as_ref().into_iter().map(|on| (coil_over, &on.body_eye, &on.axle_eye));
            for (part, body, axle) in dampers.chain(coils) {
                let (body, axle) = (place(body.vector()), place(axle.vector()));
                outline.push((part, vec![("body eye", body), ("axle eye", carried(axle - middle))]));
            }
            let axis = carried(place(wheel.axis())) - carried(Vector::default());
            let down = axis * axis.z - vector(0.0, 0.0, 1.0);
            let contact = centre + down.unit() * wheel.loaded_radius.quantity.si();
            outline.push((tyre, vec![("centre", centre), ("contact", contact)]));
        }
        if let Some(levers) = &self.levers {
            let reached = levers.each_ref().map(|lever| {
                let points = lever.points(self.seen(&on, lever).0)?;
                Some(match lever.carried_by {
                    Mount::Body => points,
                    Mount::Axle => points.map(carried),
                })
            });
            let [Some(left), Some(right)] = reached else { return Err(self.drop_link(heave, roll)) };
            outline.push(("anti-roll bar", across(left, right)));
        }
        Ok(outline)
    }

    /// The main leaf from the fixed eye to that on the shackle, which are so far to the left as the first number, the seat as the second one.
    fn leaf(&self, on: &Bent, pitch: f64, [eyes, seat]: [f64; 2]) -> Vec<(&'static str, Vector)> {
        let Spring { fixed, shackle, .. } = &self.spring;
        let angle = pitch + self.angle;
        let half = |half: &Half, bend: Jet, eye: &'static str| {
            let outline = half.outline(bend.value, angle);
            let last = outline.len() - 1;
            let point = move |(place, [forward, up, share]): (usize, [f64; 3])| {
                let name = if place == 0 {
                    "clamp"
                } else if place == last {
                    eye
                } else {
                    "leaf"
                };
                (name, vector(on.seat.value + forward, seat + share * (eyes - seat), on.height + up))
            };
            outline.into_iter().enumerate().map(point)
        };
        let before = half(fixed, on.fixed, "fixed eye").rev();
        let middle = ("seat", vector(on.seat.value, seat, on.height));
        before.chain([middle]).chain(half(shackle, on.shackle, "shackle eye")).collect()
    }

    /// The axle wound up by a torque: see [`LeafAxle::wind_up`].
    pub fn wind_up(&self, heave: Length, torque: Torque) -> Result<WindUp> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no wheel travels 10 m";
            torque: (-1e6) <= .. <= 1e6 ; "plausibility limit: no axle of a road vehicle bears 1 MN·m";
        }
        let none = Angle::from_si(0.0);
        let before = self.pose(heave.si(), 0.0).map_err(|_| self.beyond(heave, none))?;
        let traction = torque.si() / self.drop;
        let on = self.balance(&before, [heave.si(), 0.0, before.pitch], traction).map_err(|end| {
            let message =
                format!("torque = {} N·m is more than the springs bear: {}", torque.si(), end.sentence());
            Error::NoSolution { message }
        })?;
        let model = self.model;
        Ok(WindUp {
            wind_up_angle: Angle::from_si(model.nose_up(on.pitch - before.pitch)),
            pinion_angle: model.pinion(model.nose_up(on.pitch)),
            wind_up_rate: RotationalStiffness::from_si(on.energy.second[5]),
            wheelbase_change: Length::from_si(model.to_rear() * (on.x.value - before.x.value)),
            spring_load: Force::from_si(0.5 * on.energy.first[0] - on.lifts[0]),
            leaf_stress: self.stress(&on.left)?,
        })
    }

    /// The heave without roll at which this is nothing.
    #[cfg(feature = "sheet")]
    fn heave_where(&self, of: impl Fn(&Pose) -> Jet) -> Option<f64> {
        let (mut heave, mut on) = (0.0, self.rest);
        for _ in 0..30 {
            let off = of(&on);
            let step = (off.value / on.by_heave(off)).clamp(-0.1, 0.1);
            heave -= step;
            // A step leaves an error of its square, over the metres in which the slope changes.
            if step.abs() < 1e-7 {
                return Some(heave);
            }
            let next = self.balance(&on, [heave, 0.0, on.pitch_at(heave, 0.0)], 0.0);
            on = next.or_else(|_| self.pose(heave, 0.0)).ok()?;
        }
        None
    }

    /// The heave at which the dampers have this length.
    #[cfg(feature = "sheet")]
    pub(super) fn heave_for_damper(&self, length: Length) -> Result<Length> {
        let Some(damper) = &self.model.damper else { return Ok(Length::from_si(f64::NAN)) };
        let between = |on: &Pose| self.damper_length(on, damper, 1.0);
        let found = self.heave_where(|on| between(on) + -length.si());
        found.map(Length::from_si).ok_or_else(|| {
            let drawn = (damper.body_eye.vector() - damper.axle_eye.vector()).norm();
            let [length, drawn] = [length.si(), drawn].map(|on| on * 1e3);
            let message = format!(
                "the springs do not bring the eyes of the damper {length:.1} mm apart; at ride height they are {drawn:.1} mm apart"
            );
            Error::NoSolution { message }
        })
    }

    /// The heave at which the seats touch their bump stops.
    #[cfg(feature = "sheet")]
    pub(super) fn heave_for_stop(&self) -> Result<Length> {
        let Some(clearance) = &self.model.bump_clearance else { return Ok(Length::from_si(f64::NAN)) };
        let clearance = clearance.quantity.si();
        let [along, over] = self.seat;
        let risen = |on: &Pose| on.z + on.tilt[0] * along + on.tilt[1] * over + -(self.centre[1] + over);
        self.heave_where(|on| risen(on) + -clearance).map(Length::from_si).ok_or_else(|| {
            let message = format!("the springs do not bring their seats up by {:.1} mm", clearance * 1e3);
            Error::NoSolution { message }
        })
    }

    /// Greatest stress of a spring, in its full-length leaves.
    fn stress(&self, on: &Bent) -> Result<Stress> {
        let Some(leaves) = &self.model.leaf.leaves else { return Ok(Stress::from_si(f64::NAN)) };
        let Spring { fixed, shackle, .. } = &self.spring;
        let [moment, other] = [(fixed, on.fixed), (shackle, on.shackle)]
            .map(|(half, bend)| half.clamp_moment(bend.value).abs());
        let span = fixed.length + shackle.length;
        // A load at the middle of the span bends the clamp by a quarter of both.
        let load = Force::from_si(4.0 * moment.max(other) / span);
        let stress = leaf_pack_stress(
            load,
            leaves.leaf_width.quantity,
            leaves.leaf_thickness.quantity,
            Length::from_si(span),
            leaves.full_length_leaves.quantity,
            leaves.graduated_leaves.quantity,
        );
        stress.map(|on| on.full_length_stress).map_err(|error| wrong("leaves", &error.to_string()))
    }

    /// Angles of a shackle: from upright, and against the line of the eyes.
    fn shackle(&self, on: &Bent) -> [Angle; 2] {
        let Spring { pivot, fixed_eye, .. } = self.spring;
        let drawn = &self.model.leaf;
        let hanging = (drawn.shackle_pivot.z.quantity - drawn.shackle_eye.z.quantity).si().signum();
        let [x, z] = [on.eye[0].value, on.eye[1].value];
        let to_eye = vector(x - pivot[0], 0.0, z - pivot[1]);
        let chord = vector(x - fixed_eye[0], 0.0, z - fixed_eye[1]);
        let away = 1.0_f64.copysign(chord.x);
        [(away * to_eye.x).atan2(-hanging * to_eye.z), chord.angle(to_eye)].map(Angle::from_si)
    }

    /// A point of the axle, which stands so far from its middle, in the body's axes.
    fn carried(&self, on: &Pose, arm: Vector) -> [Jet; 3] {
        let [sine, cosine] = on.lean;
        let forward = on.tilt[1] * arm.x - on.tilt[0] * arm.z;
        let up = on.tilt[0] * arm.x + on.tilt[1] * arm.z;
        let left = cosine * arm.y - sine * up;
        let x = on.x + on.steer.cosine() * forward - on.steer.sine() * left;
        let y = on.y + on.steer.sine() * forward + on.steer.cosine() * left;
        [x, y, on.z + sine * arm.y + cosine * up]
    }

    /// Position of an eye of a drop link relative to the bar's carrier, and its derivatives along heave and roll.
    fn seen(&self, on: &Pose, lever: &Lever) -> (Vector, [Vector; 2]) {
        let eye = lever.eye;
        let place = match lever.carried_by {
            Mount::Body => self.carried(on, eye),
            Mount::Axle => {
                let ([x, y, z], [sine, cosine], [tilt, level]) =
                    ([-on.x + eye.x, -on.y + eye.y, -on.z + eye.z], on.lean, on.tilt);
                let (turn, ahead) = (on.steer.sine(), on.steer.cosine());
                let (forward, left) = (ahead * x + turn * y, ahead * y - turn * x);
                let up = cosine * z - sine * left;
                [level * forward + tilt * up, cosine * left + sine * z, level * up - tilt * forward]
            }
        };
        let of = |each: &dyn Fn(Jet) -> f64| {
            let [x, y, z] = place.map(each);
            vector(x, y, z)
        };
        (of(&|jet| jet.value), [of(&|jet| on.by_heave(jet)), of(&|jet| on.by_roll(jet))])
    }

    /// Angle, twist and motion ratio of the bar; not numbers without one, none where a drop link does not reach.
    fn bar(&self, on: &Pose) -> Option<[f64; 3]> {
        let Some([left, right]) = &self.levers else { return Some([f64::NAN; 3]) };
        let (left_turn, left_rates) = left.turn(self.seen(on, left))?;
        let (right_turn, right_rates) = right.turn(self.seen(on, right))?;
        let (sign, radius) = (self.bar_sign, left.hinge.radius);
        let travel = 2.0 * on.lean[1].value * self.model.wheel.centre.y.quantity.si();
        Some([
            0.5 * sign * (left_turn + right_turn),
            sign * (left_turn - right_turn),
            sign * (left_rates[1] - right_rates[1]) * radius / travel,
        ])
    }

    /// Refusal for a position that the bar cannot reach.
    fn drop_link(&self, heave: Length, roll: Angle) -> Error {
        out_of_reach(heave, roll, |heave, roll| {
            self.pose(heave.si(), roll.si()).is_ok_and(|on| self.bar(&on).is_some())
        })
    }

    /// Motion ratios in heave and in roll of the coil-over on the left (0) or the right (1), and what it does.
    fn coil(&self, on: &Pose, place: usize) -> ([Ratio; 2], Strut) {
        let Stated::Given(coil_over) = &self.model.coil_over else {
            return ([Ratio::from_si(f64::NAN); 2], Strut::unknown());
        };
        let eyes = on.eyes[place];
        let out = [1.0, -1.0][place] * self.model.wheel.centre.y.quantity.si();
        let ratios = [-on.by_heave(eyes), -on.by_roll(eyes) / (on.lean[1].value * out)];
        (ratios.map(Ratio::from_si), Strut::of(coil_over, eyes.value))
    }

    /// Between the eyes of the damper on the left (0) or the right (1), and its lengths fully open and fully closed.
    fn damper(&self, on: &Pose, place: usize) -> Option<(Jet, [Length; 2])> {
        if let Some(damper) = &self.model.damper {
            let between = self.damper_length(on, damper, [1.0, -1.0][place]);
            let ends = [&damper.open_length, &damper.closed_length];
            let unknown = Length::from_si(f64::NAN);
            return Some((between, ends.map(|end| end.as_ref().map_or(unknown, |end| end.quantity))));
        }
        let damper = self.model.coil_over.as_ref()?.damper.as_ref()?;
        Some((on.eyes[place], [damper.open_length.quantity, damper.closed_length.quantity]))
    }

    /// Between the eyes of the damper on the left (1) or the right (-1).
    fn damper_length(&self, on: &Pose, damper: &AxleDamper, side: f64) -> Jet {
        norm(self.apart(on, &damper.body_eye, &damper.axle_eye, side))
    }

    /// From a point of the body to one of the axle, both on the left (1) or the right (-1).
    fn apart(&self, on: &Pose, body: &Point, axle: &Point, side: f64) -> [Jet; 3] {
        let (body, axle) = (body.vector(), axle.vector());
        let arm = vector(axle.x - self.centre[0], side * axle.y, axle.z - self.centre[1]);
        let [x, y, z] = self.carried(on, arm);
        [x + -body.x, y + -side * body.y, z + -body.z]
    }

    fn results(
        &self,
        on: &Pose,
        [bar_angle, bar_twist, bar_motion_ratio]: [f64; 3],
    ) -> Result<LeafAxlePosition> {
        let model = self.model;
        let (length, angle, ratio) = (Length::from_si, Angle::from_si, Ratio::from_si);
        let [left_wheel, right_wheel] = [1.0, -1.0].map(|side| {
            let out = side * model.wheel.centre.y.quantity.si();
            let (sine, cosine) = on.steer.value.sin_cos();
            let across = on.lean[1].value * out;
            vector(
                on.x.value - sine * across,
                on.y.value + cosine * across,
                on.z.value + on.lean[0].value * out,
            )
        });
        // Path of the contact point held in the axle.
        let path = on.by_heave(on.x) + self.drop * on.pitch_rates[0];
        let turn = on.pitch_rates[0];
        let levers = model.braking.as_ref().map_or(f64::NAN, |braking| {
            (braking.wheelbase.quantity / braking.centre_of_gravity_height.quantity).si()
        });
        let brake_share = model.braking.as_ref().map_or(f64::NAN, |on| on.axle_share.quantity.si());
        let drive_share = model.drive_share.as_ref().map_or(f64::NAN, |share| share.quantity.si());
        let anti = model.to_rear() * levers * path;
        let [_, _, _, rr, rt, tt] = on.energy.second;
        let [left_shackle, right_shackle] = [&on.left, &on.right].map(|bent| self.shackle(bent));
        let [left_damper, right_damper] = [0, 1].map(|place| match self.damper(on, place) {
            Some((between, [open, closed])) => {
                let now = length(between.value);
                (open - now, now - closed, -on.by_heave(between))
            }
            None => (length(f64::NAN), length(f64::NAN), f64::NAN),
        });
        let [(left_ratios, left_coil), (right_ratios, right_coil)] = [0, 1].map(|place| self.coil(on, place));
        let spring_load = |bent: &Bent, place: usize| {
            Force::from_si(bent.energy.first[0] + (on.coils[place].first[0] - on.lifts[place]))
        };
        let wheel_force = |bent: &Bent, place: usize| {
            Force::from_si(on.by_heave(bent.energy) + on.by_heave(on.coils[place]))
        };
        let clearance = model.bump_clearance.as_ref().map_or(f64::NAN, |on| on.quantity.si());
        let seat = self.centre[1] + self.seat[1];
        let change = model.nose_up(on.pitch);
        Ok(LeafAxlePosition {
            left_wheel_x: length(left_wheel.x),
            left_wheel_y: length(left_wheel.y),
            left_wheel_z: length(left_wheel.z),
            right_wheel_x: length(right_wheel.x),
            right_wheel_y: length(right_wheel.y),
            right_wheel_z: length(right_wheel.z),
            wheelbase_change: length(model.to_rear() * (on.x.value - self.centre[0])),
            axle_steer: angle(on.steer.value),
            roll_steer: ratio(on.by_roll(on.steer)),
            lateral_shift: length(on.y.value),
            pinion_angle: model.pinion(change),
            pinion_angle_change: angle(change),
            roll_centre_height: length(on.line.value - on.z.value + self.drop),
            side_view_centre_x: length(on.x.value - 1.0 / turn),
            side_view_centre_height: length(if path == 0.0 { 0.0 } else { path / turn }),
            side_view_angle: angle(path.atan()),
            brake_anti_pitch: ratio(anti * brake_share),
            drive_anti_pitch: ratio(anti * drive_share),
            wheel_rate: LinearStiffness::from_si(0.5 * on.axle_rate()),
            roll_stiffness: RotationalStiffness::from_si(rr - rt * rt / tt),
            wind_up_rate: RotationalStiffness::from_si(tt),
            left_spring_load: spring_load(&on.left, 0),
            right_spring_load: spring_load(&on.right, 1),
            left_leaf_stress: self.stress(&on.left)?,
            right_leaf_stress: self.stress(&on.right)?,
            left_shackle_angle: left_shackle[0],
            right_shackle_angle: right_shackle[0],
            left_shackle_opening: left_shackle[1],
            right_shackle_opening: right_shackle[1],
            left_eye_length: left_coil.eyes,
            left_motion_ratio: left_ratios[0],
            left_roll_motion_ratio: left_ratios[1],
            left_coil_length: left_coil.length,
            left_coil_force: left_coil.coil,
            left_coil_used: left_coil.used,
            left_coil_remaining: left_coil.remaining,
            left_wheel_force: wheel_force(&on.left, 0),
            right_eye_length: right_coil.eyes,
            right_motion_ratio: right_ratios[0],
            right_roll_motion_ratio: right_ratios[1],
            right_coil_length: right_coil.length,
            right_coil_force: right_coil.coil,
            right_coil_used: right_coil.used,
            right_coil_remaining: right_coil.remaining,
            right_wheel_force: wheel_force(&on.right, 1),
            bar_angle: angle(bar_angle),
            bar_twist: angle(bar_twist),
            bar_motion_ratio: ratio(bar_motion_ratio),
            damper_motion_ratio: ratio(left_damper.2),
            left_damper_used: left_damper.0,
            left_damper_remaining: left_damper.1,
            right_damper_used: right_damper.0,
            right_damper_remaining: right_damper.1,
            left_bump_remaining: length(clearance + seat - on.left.height),
            right_bump_remaining: length(clearance + seat - on.right.height),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::suspension::kinematics::outline::read;
    use crate::suspension::live_axle_roll_stiffness;
    use crate::suspension::parts::{BrakePlace, CoilSpring, Damper};
    use crate::units::{deg, mm};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn metres(value: f64) -> Length {
        Length::from_si(value)
    }
    fn radians(value: f64) -> Angle {
        Angle::from_si(value)
    }
    fn length(value: f64) -> Value<Length> {
        Value::new(metres(value))
    }
    fn point([x, z]: [f64; 2], y: f64) -> Point {
        Point::new(metres(x), metres(y), metres(z))
    }

    /// Fixed eye, eye on the shackle, shackle's pivot, seat; forward and up.
    type Points = [[f64; 2]; 4];
    const ARCHED: Points = [[0.64, 0.545], [-0.71, 0.555], [-0.685, 0.67], [0.0, 0.475]];
    /// Flat and symmetric, its shackle upright.
    const FLAT: Points = [[0.65, 0.5], [-0.65, 0.5], [-0.65, 0.6], [0.0, 0.5]];

    fn axle([fixed, eye, pivot, seat]: Points) -> LeafAxle {
        LeafAxle {
            axle: Axle::Rear,
            wheel: Wheel {
                centre: Point::new(metres(0.0), metres(0.81), metres(0.39)),
                camber: Value::new(radians(0.0)),
                toe: Value::new(radians(0.0)),
                loaded_radius: length(0.38),
            },
            leaf: LeafSpring {
                fixed_eye: point(fixed, 0.52),
                shackle_eye: point(eye, 0.52),
                shackle_pivot: point(pivot, 0.52),
                seat: point(seat, 0.52),
                seat_angle: None,
                clamped_length: length(0.14),
                eye_offset: None,
                form: LeafForm::UniformStrength,
                load: Value::new(Force::from_si(9800.0)),
                leaves: Some(leaves()),
            },
            spring: Some(LeafRate { rate: Value::new(LinearStiffness::from_si(110_000.0)) }),
            damper: Some(AxleDamper {
                body_eye: Point::new(metres(0.15), metres(0.4), metres(0.8)),
                axle_eye: Point::new(metres(-0.06), metres(0.45), metres(0.3)),
                open_length: Some(length(0.68)),
                closed_length: Some(length(0.42)),
            }),
            coil_over: Stated::Unknown,
            anti_roll_bar: Stated::Unknown,
            bump_clearance: Some(length(0.09)),
            pinion_angle: Some(Value::new(Angle::of::<deg>(3.0))),
            braking: Some(Braking {
                axle_share: Value::new(Ratio::from_si(0.4)),
                centre_of_gravity_height: length(1.1),
                wheelbase: length(3.3),
                place: None,
            }),
            drive_share: Some(Value::new(Ratio::from_si(1.0))),
        }
    }

    fn leaves() -> Leaves {
        Leaves {
            elastic_modulus: Value::new(Stress::from_si(206e9)),
            leaf_width: length(0.07),
            leaf_thickness: length(0.009),
            full_length_leaves: Value::new(Ratio::from_si(2.0)),
            graduated_leaves: Value::new(Ratio::from_si(5.0)),
        }
    }

    fn place([x, y, z]: [f64; 3]) -> Point {
        Point::new(metres(x), metres(y), metres(z))
    }
    fn coil() -> CoilSpring {
        CoilSpring {
            rate: Value::new(LinearStiffness::from_si(30_000.0)),
            free_length: length(0.35),
            solid_length: length(0.15),
            seat_offset: length(0.15),
        }
    }
    fn bar(bearings: Mount) -> AxleBar {
        match bearings {
            Mount::Body => AxleBar {
                bearings,
                link_eye: place([-0.06, 0.45, 0.36]),
                lever_end: place([-0.07, 0.46, 0.52]),
                lever_pivot: place([0.15, 0.35, 0.53]),
            },
            Mount::Axle => AxleBar {
                bearings,
                link_eye: place([0.2, 0.45, 0.62]),
                lever_end: place([0.19, 0.47, 0.42]),
                lever_pivot: place([-0.02, 0.47, 0.41]),
            },
        }
    }
    /// With a helper coil that leans, off the axle's middle, and a bar.
    fn helped(mount: Mount) -> LeafAxle {
        let mut model = axle(ARCHED);
        model.damper = None;
        model.coil_over = Stated::Given(AxleCoilOver {
            body_eye: place([0.05, 0.42, 0.85]),
            axle_eye: place([-0.04, 0.5, 0.45]),
            spring: Some(coil()),
            damper: Some(Damper {
                open_length: length(0.55),
                closed_length: length(0.3),
                gas_force: Some(Value::new(Force::from_si(150.0))),
            }),
        });
        model.anti_roll_bar = Stated::Given(bar(mount));
        model
    }

    /// Hardly loaded, so that only stiffness counts.
    fn flat(form: LeafForm) -> LeafAxle {
        let mut model = axle(FLAT);
        model.leaf.form = form;
        model.leaf.load = Value::new(Force::from_si(1.0));
        model
    }

    #[test]
    fn at_ride_height_the_axle_stands_as_drawn() {
        let model = axle(ARCHED);
        let on = model.at(metres(0.0), radians(0.0)).unwrap();
        for (found, drawn) in [
            (on.left_wheel_x.si(), 0.0),
            (on.left_wheel_y.si(), 0.81),
            (on.left_wheel_z.si(), 0.39),
            (on.right_wheel_y.si(), -0.81),
            (on.axle_steer.si(), 0.0),
            (on.lateral_shift.si(), 0.0),
            (on.pinion_angle_change.si(), 0.0),
            (on.pinion_angle.in_::<deg>(), 3.0),
            (on.left_bump_remaining.si(), 0.09),
        ] {
            assert!((found - drawn).abs() < 1e-12, "{found} {drawn}");
        }
        assert_relative_eq!(on.left_spring_load.si(), 9800.0, max_relative = 1e-10);
        // The line of the eyes at the axle, by similar triangles.
        let line = 0.545 + 0.01 * 0.64 / 1.35;
        assert_relative_eq!(on.roll_centre_height.si(), line - 0.01, max_relative = 1e-12);
        let leans = (0.025_f64 / 0.115).atan();
        assert_relative_eq!(on.left_shackle_angle.si(), leans, max_relative = 1e-12);
        assert_relative_eq!(on.right_shackle_opening.si(), on.left_shackle_opening.si());
    }

    /// Flat, symmetric, the shackle upright: rate, spring base and wind-up by hand, the path by the equivalent link of 3/4 or 5/6 of the half.
    #[test]
    fn a_flat_spring_is_that_of_the_handbooks() {
        for (form, link) in [(LeafForm::UniformStrength, 0.75), (LeafForm::UniformSection, 5.0 / 6.0)] {
            let model = flat(form);
            let on = model.at(metres(0.0), radians(0.0)).unwrap();
            assert_relative_eq!(on.wheel_rate.si(), 110_000.0, max_relative = 1e-4);
            let roll = live_axle_roll_stiffness(LinearStiffness::from_si(110_000.0), metres(1.04)).unwrap();
            assert_relative_eq!(on.roll_stiffness.si(), roll.si(), max_relative = 1e-4);
            // K = k_a a^2 + k_b b^2 of each spring, its halves as stiff as half the spring, on levers of 650 mm.
            let wind_up = 2.0 * 110_000.0 * 0.65 * 0.65;
            assert_relative_eq!(on.wind_up_rate.si(), wind_up, max_relative = 1e-4);
            // Half of 1300 mm less the clamp of 140 mm.
            let h = 1e-3;
            let bump = model.at(metres(h), radians(0.0)).unwrap();
            let droop = model.at(metres(-h), radians(0.0)).unwrap();
            let bend = -(bump.wheelbase_change + droop.wheelbase_change).si() / (h * h);
            assert_relative_eq!(bend, 1.0 / (link * 0.58), max_relative = 1e-3);
        }
    }

    /// Upright coils and drop links above the axle of a flat spring: rates add, bases and levers are read off the drawing.
    #[test]
    fn an_upright_helper_counts_with_its_base_and_a_bar_with_that_of_its_links() {
        let mut model = flat(LeafForm::UniformStrength);
        model.damper = None;
        model.coil_over = Stated::Given(AxleCoilOver {
            body_eye: place([0.0, 0.4, 0.85]),
            axle_eye: place([0.0, 0.4, 0.45]),
            spring: Some(CoilSpring { seat_offset: length(0.06), ..coil() }),
            damper: None,
        });
        model.anti_roll_bar = Stated::Given(AxleBar {
            bearings: Mount::Body,
            link_eye: place([0.0, 0.6, 0.39]),
            lever_end: place([0.0, 0.6, 0.55]),
            lever_pivot: place([0.2, 0.3, 0.55]),
        });
        let on = model.at(metres(0.0), radians(0.0)).unwrap();
        // 10 mm of the coil are used.
        assert_relative_eq!(on.left_coil_force.si(), 300.0, max_relative = 1e-9);
        assert_relative_eq!(on.left_wheel_force.si(), 301.0, max_relative = 1e-9);
        assert_relative_eq!(on.left_spring_load.si(), 1.0, max_relative = 1e-9);
        assert_relative_eq!(on.wheel_rate.si(), 140_000.0, max_relative = 1e-4);
        assert_relative_eq!(on.left_motion_ratio.si(), 1.0, max_relative = 1e-12);
        assert_relative_eq!(on.right_roll_motion_ratio.si(), 0.4 / 0.81, max_relative = 1e-9);
        let roll = |rate: f64, base: f64| {
            live_axle_roll_stiffness(LinearStiffness::from_si(rate), metres(base)).unwrap().si()
        };
        // A loaded coil gives way: its eye on the axle, 60 mm above the middle, comes down by that and goes sideways, 50 mm below the line of the eyes.
        let way = 0.06 + 0.05 * 0.05 / 0.4;
        let wanted = roll(110_000.0, 1.04) + roll(30_000.0, 0.8) - 2.0 * 300.0 * way;
        assert_relative_eq!(on.roll_stiffness.si(), wanted, max_relative = 1e-5);
        assert_relative_eq!(on.bar_motion_ratio.si(), 0.6 / 0.81, max_relative = 1e-9);
        assert!(on.bar_angle.si().abs() < 1e-15 && on.bar_twist.si().abs() < 1e-15);
        // Both levers of 200 mm turn alike in heave, and against each other in roll.
        let h = 1e-4;
        let up = model.at(metres(h), radians(0.0)).unwrap();
        assert_relative_eq!(up.bar_angle.si() * 0.2, h, max_relative = 1e-3);
        let left_up = model.at(metres(0.0), radians(h)).unwrap();
        assert_relative_eq!(left_up.bar_twist.si() * 0.2, 2.0 * 0.6 * h, max_relative = 1e-3);
        assert!(left_up.bar_angle.si().abs() < 1e-7);
    }

    /// The drawing is the ride height with the coil fitted: the leaf carries its own load, the wheel both.
    #[test]
    fn at_ride_height_the_leaves_hold_what_a_coil_turns() {
        for mount in [Mount::Body, Mount::Axle] {
            let model = helped(mount);
            let on = model.at(metres(0.0), radians(0.0)).unwrap();
            assert!(on.pinion_angle_change.si().abs() < 1e-12 && on.wheelbase_change.si().abs() < 1e-12);
            assert_relative_eq!(on.left_spring_load.si(), 9800.0, max_relative = 1e-10);
            let eyes = vector(0.09, -0.08, 0.4).norm();
            assert_relative_eq!(on.left_eye_length.si(), eyes, max_relative = 1e-12);
            let force = 30_000.0 * (0.35 - (eyes - 0.15));
            assert_relative_eq!(on.right_coil_force.si(), force, max_relative = 1e-12);
            assert_relative_eq!(on.left_damper_used.si(), 0.55 - eyes, max_relative = 1e-12);
            assert_relative_eq!(on.damper_motion_ratio.si(), on.left_motion_ratio.si());
            // By hand: 400 mm of it upright.
            let carried = 9800.0 + (force + 150.0) * 0.4 / eyes;
            assert_relative_eq!(on.left_wheel_force.si(), carried, max_relative = 1e-9);
            assert_relative_eq!(on.right_wheel_force.si(), carried, max_relative = 1e-9);
            // Wound up by nothing, the leaf carries the same.
            let wound = model.wind_up(metres(0.0), Torque::from_si(0.0)).unwrap();
            assert_relative_eq!(wound.spring_load.si(), 9800.0, max_relative = 1e-9);
            let bare = axle(ARCHED).at(metres(0.0), radians(0.0)).unwrap();
            assert!(on.wheel_rate > bare.wheel_rate && on.wind_up_rate != bare.wind_up_rate);
            assert!(bare.bar_twist.si().is_nan() && bare.left_coil_force.si().is_nan());
            assert_relative_eq!(bare.left_wheel_force.si(), bare.left_spring_load.si());
        }
    }

    /// A gas spring alone, and a coil that is still loose.
    #[test]
    fn what_does_not_press_does_not_carry() {
        let bare = axle(ARCHED).at(metres(0.02), radians(0.01)).unwrap();
        let mut loose = helped(Mount::Body);
        let coil_over = loose.coil_over.as_mut().unwrap();
        coil_over.damper = None;
        coil_over.spring.as_mut().unwrap().seat_offset = length(0.0);
        let on = loose.at(metres(0.02), radians(0.01)).unwrap();
        assert_relative_eq!(on.wheel_rate.si(), bare.wheel_rate.si(), max_relative = 1e-12);
        assert_relative_eq!(on.left_wheel_force.si(), bare.left_wheel_force.si(), max_relative = 1e-12);
        assert!(on.left_coil_force.si() == 0.0 && on.left_coil_used.si() < 0.0);
        let mut gas = helped(Mount::Body);
        gas.coil_over.as_mut().unwrap().spring = None;
        let on = gas.at(metres(0.0), radians(0.0)).unwrap();
        assert!(on.left_coil_force.si().is_nan());
        assert!(on.left_wheel_force.si() > 9900.0 && on.left_wheel_force.si() < 9950.0);
    }

    /// For a spring clamped off its middle, the rate is that of a beam on two supports, `k = 3 E I l / (a^2 b^2)`, shared as leaf_pack_rate gives it for a symmetric one.
    #[test]
    fn a_rate_follows_from_its_leaves() {
        let mut model = flat(LeafForm::UniformStrength);
        model.spring = None;
        let rate = |span: f64| {
            let on = leaves();
            let (full, steps) = (on.full_length_leaves.quantity, on.graduated_leaves.quantity);
            leaf_pack_rate(
                on.elastic_modulus.quantity,
                on.leaf_width.quantity,
                on.leaf_thickness.quantity,
                metres(span),
                full,
                steps,
            )
            .unwrap()
            .si()
        };
        let on = model.at(metres(0.0), radians(0.0)).unwrap();
        assert_relative_eq!(on.wheel_rate.si(), rate(1.16), max_relative = 1e-4);
        // Half of the load of 1 N, 580 mm from the clamp.
        let moment = 0.5 * 0.58;
        let stress = 18.0 * moment / (0.07 * 0.009 * 0.009 * 16.0);
        assert_relative_eq!(on.left_leaf_stress.si(), stress, max_relative = 1e-6);

        model.leaf.clamped_length = length(0.0);
        model.leaf.seat = point([0.15, 0.5], 0.52);
        model.wheel.centre = Point::new(metres(0.15), metres(0.81), metres(0.39));
        let on = model.at(metres(0.0), radians(0.0)).unwrap();
        let (a, b, l) = (0.5_f64, 0.8_f64, 1.3_f64);
        let wanted = rate(l) * l.powi(4) / (16.0 * a * a * b * b);
        assert_relative_eq!(on.wheel_rate.si(), wanted, max_relative = 1e-4);
    }

    /// A drive torque lifts a rear axle's nose, a brake torque lowers it, the rate is torque over angle.
    #[test]
    fn torque_winds_the_axle_up() {
        let model = axle(ARCHED);
        let wound = |torque: f64| model.wind_up(metres(0.0), Torque::from_si(torque)).unwrap();
        let (drive, brake, none) = (wound(2000.0), wound(-2000.0), wound(0.0));
        assert!(drive.wind_up_angle.in_::<deg>() > 0.5 && brake.wind_up_angle.in_::<deg>() < -0.5);
        assert_relative_eq!(drive.pinion_angle.si(), drive.wind_up_angle.si() + 3_f64.to_radians());
        let small = 0.5 * (wound(1.0).wind_up_angle - wound(-1.0).wind_up_angle).si();
        // The force at the ground works on the way of the axle as well, which turns about a place above its middle.
        let along = model.prepare().unwrap().rest.x.first[2];
        assert_relative_eq!(small * none.wind_up_rate.si(), 1.0 + along / 0.38, max_relative = 1e-6);
        assert_relative_eq!(none.spring_load.si(), 9800.0, max_relative = 1e-10);
        assert!(drive.leaf_stress > none.leaf_stress && brake.leaf_stress > none.leaf_stress);
        let mut front = model.clone();
        front.axle = Axle::Front;
        let turned = front.wind_up(metres(0.0), Torque::from_si(2000.0)).unwrap().wind_up_angle;
        assert_relative_eq!(turned.si(), -drive.wind_up_angle.si());
        assert!(model.wind_up(metres(0.0), Torque::from_si(9e5)).is_err());
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let far = |place: usize, to: [f64; 2]| {
            let mut points = ARCHED;
            points[place] = to;
            axle(points)
        };
        let mut bare = axle(ARCHED);
        (bare.spring, bare.leaf.leaves) = (None, None);
        let mut driven = axle(ARCHED);
        driven.braking = None;
        let mut inboard = axle(ARCHED);
        inboard.braking.as_mut().unwrap().place = Some(BrakePlace::Inboard);
        let mut right = axle(ARCHED);
        right.leaf.seat.y = length(-0.52);
        let mut twice = helped(Mount::Body);
        twice.damper = axle(ARCHED).damper;
        let mut short = helped(Mount::Body);
        short.coil_over.as_mut().unwrap().axle_eye = short.coil_over.as_ref().unwrap().body_eye.clone();
        let mut locked = helped(Mount::Axle);
        locked.anti_roll_bar.as_mut().unwrap().lever_pivot = place([0.184, 0.47, 0.3]);
        let mut bent = helped(Mount::Axle);
        bent.anti_roll_bar.as_mut().unwrap().lever_end = place([-0.02, 0.4, 0.4101]);
        let mut light = axle(ARCHED);
        light.leaf.load = Value::new(Force::from_si(0.0));
        for (wrong, key) in [
            (far(0, [f64::NAN, 0.5]), "leaf.fixed_eye: x = NaN"),
            (far(3, [0.7, 0.475]), "leaf.seat: it must lie between"),
            (far(0, [0.07, 0.48]), "leaf.fixed_eye: from the seat"),
            (far(2, ARCHED[1]), "leaf.shackle_pivot: it is nearer"),
            (far(2, [-0.81, 0.57]), "leaf.shackle_pivot: the shackle is in line"),
            (bare, "spring.rate: missing"),
            (driven, "drive_share: it wants `braking`"),
            (inboard, "braking.place: a live axle carries its brakes"),
            (right, "leaf.seat: a left spring"),
            (twice, "coil_over.damper: there is a `damper` beside it"),
            (short, "coil_over: its eyes are nearer"),
            (locked, "anti_roll_bar: its drop link is in line"),
            (bent, "anti_roll_bar.lever_end: it is nearer"),
            (light, "leaf: load = 0 N"),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(key), "{message}");
            assert!(
                wrong.at(metres(0.0), radians(0.0)).is_err() && wrong.travel_range(radians(0.0)).is_err()
            );
        }
    }

    #[test]
    fn where_a_drop_link_does_not_reach_it_says_so() {
        let mut model = helped(Mount::Body);
        model.anti_roll_bar.as_mut().unwrap().lever_pivot = place([-0.02, 0.4, 0.53]);
        let message = model.at(metres(0.1), radians(0.0)).unwrap_err().to_string();
        assert!(message.contains("drop link of the anti_roll_bar"), "{message}");
        let points = model.points(&[metres(0.1)], &[radians(0.0)]).unwrap();
        assert_eq!(points.reason(0).unwrap().to_string(), message);
    }

    #[test]
    fn beyond_its_range_the_refusal_says_what_ends_it_and_where() {
        let mut seen = Vec::new();
        let mut short = ARCHED;
        short[2] = [-0.69, 0.61];
        for points in [ARCHED, FLAT, short] {
            let model = axle(points);
            for roll in [-0.05, 0.0, 0.05] {
                let range = model.travel_range(radians(roll)).unwrap();
                for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                    assert!(model.at(metres(limit * (1.0 - 1e-6)), radians(roll)).is_ok());
                    let message =
                        model.at(metres(limit * (1.0 + 1e-6)), radians(roll)).unwrap_err().to_string();
                    assert!(
                        message.contains(&end) && message.contains(&format!("{:.1}", limit * 1e3)),
                        "{message}"
                    );
                    seen.push(end);
                }
            }
        }
        assert!(seen.iter().any(|end| end == "shackle"), "{seen:?}");
    }

    #[test]
    fn a_table_keeps_the_reason_of_a_refused_row_and_equals_single_calls() {
        let model = axle(ARCHED);
        let table = model.table(&[-0.03, 0.05, 0.9].map(metres), &[-0.02, 0.0].map(radians)).unwrap();
        assert_eq!(table.rows(), 6);
        assert!(table.reason(4).is_some() && table.numbers("axle_steer").unwrap()[4].is_nan());
        let one = model.at(metres(0.05), radians(-0.02)).unwrap();
        for (name, value) in [
            ("axle_steer", one.axle_steer.si()),
            ("wheel_rate", one.wheel_rate.si()),
            ("right_bump_remaining", one.right_bump_remaining.si()),
        ] {
            assert_eq!(table.numbers(name).unwrap()[2].to_bits(), value.to_bits(), "{name}");
        }
    }

    /// Both forms, with and without what a spring need not have.
    fn drawable() -> [LeafAxle; 3] {
        let mut bent = axle(ARCHED);
        bent.leaf.form = LeafForm::UniformSection;
        bent.leaf.eye_offset = Some(length(0.02));
        bent.leaf.seat_angle = Some(Value::new(radians(0.03)));
        bent.wheel.camber = Value::new(radians(-0.02));
        [axle(ARCHED), axle(FLAT), bent]
    }

    #[test]
    fn at_ride_height_the_points_are_those_that_were_given() {
        for model in drawable() {
            let points = read::points(&model.points(&[metres(0.0)], &[radians(0.0)]).unwrap());
            let (spring, damper) = (&model.leaf, model.damper.as_ref().unwrap());
            for (part, point, at) in [
                ("axle", "left end", &model.wheel.centre),
                ("wheel left", "centre", &model.wheel.centre),
                ("spring left", "fixed eye", &spring.fixed_eye),
                ("spring left", "shackle eye", &spring.shackle_eye),
                ("spring left", "seat", &spring.seat),
                ("seat left", "seat", &spring.seat),
                ("shackle left", "pivot", &spring.shackle_pivot),
                ("shackle left", "eye", &spring.shackle_eye),
                ("damper left", "body eye", &damper.body_eye),
                ("damper left", "axle eye", &damper.axle_eye),
            ] {
                let drawn = at.vector();
                let other =
                    read::place(&points, &part.replace("left", "right"), &point.replace("left", "right"));
                assert!((read::place(&points, part, point) - drawn).norm() < 1e-9, "{part}, {point}");
                assert!((other - vector(drawn.x, -drawn.y, drawn.z)).norm() < 1e-9, "{part}, {point}");
            }
            let down =
                read::place(&points, "wheel left", "centre") - read::place(&points, "wheel left", "contact");
            let camber = model.wheel.camber.quantity.si();
            assert!((down - vector(0.0, camber.sin(), camber.cos()) * 0.38).norm() < 1e-12);
        }
    }

    /// Length of a drawn leaf in side view: of an arc exactly, from its chords and the angles between them.
    fn arc(leaf: &[Vector]) -> f64 {
        let chords: Vec<Vector> =
            leaf.windows(2).map(|on| on[1] - on[0]).map(|on| vector(on.x, 0.0, on.z)).collect();
        let turn = chords.windows(2).map(|on| on[0].angle(on[1])).sum::<f64>() / (chords.len() - 1) as f64;
        let over = if turn < 1e-6 { 1.0 } else { 0.5 * turn / (0.5 * turn).sin() };
        chords.iter().map(|on| on.norm() * over).sum()
    }

    /// Shackles and what the axle carries keep their lengths, and so does each half of a leaf.
    #[test]
    fn what_is_rigid_keeps_its_length_and_a_leaf_is_only_bent() {
        for (which, model) in drawable().into_iter().enumerate() {
            let spring = model.prepare().unwrap().spring;
            let rest = read::points(&model.points(&[metres(0.0)], &[radians(0.0)]).unwrap());
            for (heave, roll) in [(-0.06, 0.0), (0.07, 0.0), (0.02, 0.05), (-0.03, -0.04)] {
                let points = read::points(&model.points(&[metres(heave)], &[radians(roll)]).unwrap());
                let on = model.at(metres(heave), radians(roll)).unwrap();
                let wheel = vector(on.right_wheel_x.si(), on.right_wheel_y.si(), on.right_wheel_z.si());
                assert!((read::place(&points, "wheel right", "centre") - wheel).norm() < 1e-12);
                let between = |points: &[(String, String, Vector)], [a, b]: [(&str, &str); 2]| {
                    (read::place(points, a.0, a.1) - read::place(points, b.0, b.1)).norm()
                };
                for (side, used) in [("left", on.left_damper_used), ("right", on.right_damper_used)] {
                    let of = |part: &str| format!("{part} {side}");
                    let [spring_part, shackle, seat, damper, tyre] =
                        ["spring", "shackle", "seat", "damper", "wheel"].map(of);
                    let rigid = [
                        [(&*shackle, "pivot"), (&*shackle, "eye")],
                        [(&*seat, "axle"), (&*seat, "seat")],
                        [(&*tyre, "centre"), (&*tyre, "contact")],
                        [("axle", "left end"), ("axle", "right end")],
                        [("axle", "left end"), (&*seat, "seat")],
                        [("axle", "right end"), (&*seat, "seat")],
                        [("axle", "left end"), (&*damper, "axle eye")],
                        [(&*seat, "seat"), (&*damper, "axle eye")],
                    ];
                    for pair in rigid {
                        let (found, kept) = (between(&points, pair), between(&rest, pair));
                        assert!((found - kept).abs() < 1e-9, "{pair:?}: {found} {kept}");
                    }
                    for [a, b] in [
                        [(&*spring_part, "seat"), (&*seat, "seat")],
                        [(&*spring_part, "shackle eye"), (&*shackle, "eye")],
                    ] {
                        assert!(
                            (read::place(&points, a.0, a.1) - read::place(&points, b.0, b.1)).norm() < 1e-9,
                            "{a:?}"
                        );
                    }
                    let fixed = [(&*spring_part, "fixed eye"), (&*shackle, "pivot")];
                    for (part, point) in fixed {
                        assert!(
                            (read::place(&points, part, point) - read::place(&rest, part, point)).norm()
                                < 1e-9
                        );
                    }
                    assert!(
                        (0.68 - used.si() - between(&points, [(&damper, "body eye"), (&damper, "axle eye")]))
                            .abs()
                            < 1e-12
                    );
                    let leaf: Vec<_> = points.iter().filter(|on| on.0 == spring_part).collect();
                    let clamps: Vec<_> = leaf
                        .iter()
                        .enumerate()
                        .filter(|(_, on)| on.1 == "clamp")
                        .map(|(place, _)| place)
                        .collect();
                    let [a, b] = clamps[..] else { panic!("{clamps:?}") };
                    let places: Vec<_> = leaf.iter().map(|on| on.2).collect();
                    // Without the eyes, which stand off the leaf.
                    for (half, leaf) in
                        [(spring.fixed, &places[1..=a]), (spring.shackle, &places[b..places.len() - 1])]
                    {
                        // The arcs of a leaf with fading curvature are not alike.
                        let within = if which == 2 { 2e-5 } else { 1e-9 };
                        assert!((arc(leaf) - half.length).abs() < within, "{} {}", arc(leaf), half.length);
                    }
                }
            }
        }
    }

    /// Eyes where they are drawn; levers and drop links of one length; the image of the other side in the other roll.
    #[test]
    fn coils_and_bar_are_drawn_where_they_stand() {
        for mount in [Mount::Body, Mount::Axle] {
            let model = helped(mount);
            let (coil_over, bar) = (model.coil_over.as_ref().unwrap(), bar(mount));
            let points = |heave: f64, roll: f64| {
                read::points(&model.points(&[metres(heave)], &[radians(roll)]).unwrap())
            };
            let rest = points(0.0, 0.0);
            for (part, point, drawn) in [
                ("coil-over left", "body eye", &coil_over.body_eye),
                ("coil-over left", "axle eye", &coil_over.axle_eye),
                ("anti-roll bar", "left link eye", &bar.link_eye),
                ("anti-roll bar", "left lever end", &bar.lever_end),
            ] {
                assert!((read::place(&rest, part, point) - drawn.vector()).norm() < 1e-9, "{point}");
            }
            for (heave, roll) in [(-0.05, 0.0), (0.05, 0.04), (0.02, -0.05)] {
                let (here, image) = (points(heave, roll), read::mirrored(&points(heave, -roll)));
                let on = model.at(metres(heave), radians(roll)).unwrap();
                let of = |points: &[(String, String, Vector)], part: &str, [a, b]: [&str; 2]| {
                    (read::place(points, part, a) - read::place(points, part, b)).norm()
                };
                for (side, eyes) in [("left", on.left_eye_length), ("right", on.right_eye_length)] {
                    let found = of(&here, &format!("coil-over {side}"), ["body eye", "axle eye"]);
                    assert!((found - eyes.si()).abs() < 1e-12);
                    let names = ["link eye", "lever end", "lever pivot"].map(|on| format!("{side} {on}"));
                    for pair in [[&*names[0], &*names[1]], [&*names[1], &*names[2]]] {
                        let (found, kept) =
                            (of(&here, "anti-roll bar", pair), of(&rest, "anti-roll bar", pair));
                        assert!((found - kept).abs() < 1e-9, "{pair:?}: {found} {kept}");
                    }
                    let eye = read::place(&here, "anti-roll bar", &names[0]);
                    assert!((eye - read::place(&image, "anti-roll bar", &names[0])).norm() < 1e-9);
                }
                let pivots = ["left lever pivot", "right lever pivot"];
                let kept = of(&rest, "anti-roll bar", pivots);
                assert!((of(&here, "anti-roll bar", pivots) - kept).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn the_points_in_the_other_roll_are_those_of_the_other_side() {
        for model in drawable() {
            let points = |roll: f64| read::points(&model.points(&[metres(0.03)], &[radians(roll)]).unwrap());
            let (points, image) = (points(0.04), read::mirrored(&points(-0.04)));
            assert_eq!(points.len(), image.len());
            // Parts come left before right, those of a part in their order.
            for (part, ..) in &points {
                let of = |points: &[(String, String, Vector)]| {
                    points
                        .iter()
                        .filter(|on| on.0 == *part)
                        .map(|on| (on.1.clone(), on.2))
                        .collect::<Vec<_>>()
                };
                let (here, mut there) = (of(&points), of(&image));
                if part == "axle" {
                    there.reverse();
                }
                for ((name, at), (other, image)) in here.iter().zip(&there) {
                    assert_eq!(name, other);
                    assert!((*at - *image).norm() < 1e-9, "{part}, {name}");
                }
            }
        }
    }

    #[test]
    fn where_the_springs_do_not_go_their_points_say_why() {
        let table = axle(ARCHED).points(&[0.0, 0.9].map(metres), &[radians(0.0)]).unwrap();
        let last = table.rows() - 1;
        assert!(table.word("part", last).is_none() && table.word("part", last - 1).is_some());
        assert!(table.reason(last).unwrap().to_string().contains("is beyond the springs"));
    }

    /// The spring above its axle: a block raises the body, and the spring does not know.
    #[test]
    fn a_block_moves_the_axle_and_not_the_spring() {
        let model = axle(ARCHED);
        let table = model.seat_block(Length::of::<mm>(50.0), &[0.0, 0.03].map(metres)).unwrap();
        let of = |name: &str| table.numbers(name).unwrap().to_vec();
        assert!((of("left_wheel_z")[1] - of("left_wheel_z")[0] + 0.05).abs() < 1e-12);
        assert!((of("roll_centre_height")[1] - of("roll_centre_height")[0] - 0.05).abs() < 1e-12);
        for name in ["left_spring_load", "left_shackle_angle", "left_bump_remaining"] {
            assert!((of(name)[1] - of(name)[0]).abs() < 1e-9, "{name}");
        }
        assert!((of("left_damper_used")[0] - of("left_damper_used")[1]).abs() > 0.04);
        let mut below = model.clone();
        below.leaf.seat.z = length(0.305);
        below.leaf.fixed_eye.z = length(0.375);
        below.leaf.shackle_eye.z = length(0.385);
        below.leaf.shackle_pivot.z = length(0.5);
        let table = below.seat_block(Length::of::<mm>(50.0), &[metres(0.0)]).unwrap();
        let heights = table.numbers("left_wheel_z").unwrap();
        assert!((heights[1] - heights[0] - 0.05).abs() < 1e-12);
    }

    /// For a flat spring without a clamp, the rate is that of a beam on two supports, `k = 3 E I l / (a^2 b^2)`.
    #[test]
    fn an_axle_moved_along_its_springs_stands_on_a_beam_with_other_arms() {
        let mut model = flat(LeafForm::UniformStrength);
        model.leaf.clamped_length = length(0.0);
        let (a, b) = (0.65, 0.65);
        let table = model.axle_move(metres(0.15), metres(0.0), &[0.0, 0.01].map(metres)).unwrap();
        let of = |name: &str| table.numbers(name).unwrap().to_vec();
        let (c, d): (f64, f64) = (a - 0.15, b + 0.15);
        assert_relative_eq!(of("wheel_rate")[0], 110_000.0, max_relative = 1e-4);
        let wanted = 110_000.0 * (a * b / (c * d)) * (a * b / (c * d));
        assert_relative_eq!(of("wheel_rate")[1], wanted, max_relative = 1e-4);
        assert!((of("left_wheel_x")[1] - 0.15).abs() < 1e-12 && (of("left_wheel_z")[1] - 0.39).abs() < 1e-12);
        // Its leaves give the same.
        model.spring = None;
        let table = model.axle_move(metres(0.15), metres(0.0), &[metres(0.0)]).unwrap();
        let rates = table.numbers("wheel_rate").unwrap();
        assert_relative_eq!(rates[1] / rates[0], wanted / 110_000.0, max_relative = 1e-4);
    }

    /// Eyes, shackle, load and what the coil carries are kept; a part of it that the axle carries goes along.
    #[test]
    fn a_moved_axle_keeps_what_it_says() {
        for mount in [Mount::Body, Mount::Axle] {
            let model = helped(mount);
            let table = model.axle_move(metres(-0.03), metres(0.02), &[0.0, 0.03].map(metres)).unwrap();
            let of = |name: &str| table.numbers(name).unwrap().to_vec();
            for name in ["left_spring_load", "left_shackle_angle", "left_bump_remaining", "left_wheel_force"]
            {
                assert_relative_eq!(of(name)[0], of(name)[1], max_relative = 1e-9);
            }
            for name in ["bar_angle", "pinion_angle_change", "wheelbase_change"] {
                assert!(of(name)[1].abs() < 1e-12, "{name}");
            }
            assert!(
                (of("left_wheel_x")[1] + 0.03).abs() < 1e-12 && (of("left_wheel_z")[1] - 0.41).abs() < 1e-12
            );
            let eyes = vector(0.12, -0.08, 0.38).norm();
            assert_relative_eq!(of("left_eye_length")[1], eyes, max_relative = 1e-12);
            assert!(of("side_view_angle")[0] != of("side_view_angle")[1]);
        }
        // Up and down it stands on blocks.
        let model = helped(Mount::Body);
        let heave = [-0.02, 0.0, 0.03].map(metres);
        let block = model.seat_block(metres(0.04), &heave).unwrap();
        let moved = model.axle_move(metres(0.0), metres(-0.04), &heave).unwrap();
        for name in ["left_wheel_z", "left_spring_load", "left_wheel_force", "bar_angle", "drive_anti_pitch"]
        {
            for (a, b) in block.numbers(name).unwrap().iter().zip(moved.numbers(name).unwrap()) {
                assert!((a - b).abs() < 1e-9 * (1.0 + a.abs()), "{name}: {a} {b}");
            }
        }
        let gone = model.axle_move(metres(0.7), metres(0.0), &[]).unwrap_err().to_string();
        assert!(gone.starts_with("leaf.seat: it must lie between"), "{gone}");
    }

    #[test]
    fn a_spacer_moves_the_wheels_and_not_the_axle() {
        let model = helped(Mount::Body);
        let table = model.spacer(metres(0.025), &[0.0, 0.04].map(metres)).unwrap();
        let of = |name: &str| table.numbers(name).unwrap().to_vec();
        assert!(
            (of("left_wheel_y")[1] - 0.835).abs() < 1e-12 && (of("right_wheel_y")[3] + 0.835).abs() < 1e-12
        );
        assert_relative_eq!(
            of("left_roll_motion_ratio")[1] / of("left_roll_motion_ratio")[0],
            0.81 / 0.835,
            max_relative = 1e-12
        );
        assert_relative_eq!(
            of("bar_motion_ratio")[3] / of("bar_motion_ratio")[2],
            0.81 / 0.835,
            max_relative = 1e-12
        );
        for name in ["wheel_rate", "roll_stiffness", "left_wheel_force", "roll_centre_height"] {
            assert_relative_eq!(of(name)[0], of(name)[1], max_relative = 1e-12);
        }
    }

    /// With a coil beside the leaf, too, all that is changed stands where it carries what it carried.
    #[test]
    fn changes_keep_what_leaf_and_coil_carry() {
        let (model, heave) = (helped(Mount::Body), [metres(0.0)]);
        let mut seen = Vec::new();
        for table in [
            model.seat_block(metres(0.05), &heave).unwrap(),
            model.ride_height_change(metres(-0.03), &heave).unwrap(),
            model.shackle_change(metres(0.04), &heave).unwrap(),
        ] {
            let of = |name: &str| table.numbers(name).unwrap().to_vec();
            assert_relative_eq!(of("left_wheel_force")[0], of("left_wheel_force")[1], max_relative = 1e-9);
            seen.push((of("left_spring_load")[1] / 9800.0 - 1.0).abs());
        }
        // On other shackles the body is raised and the coil carries less, so the leaf more.
        assert!(seen[0] < 1e-9 && seen[1] < 1e-9 && seen[2] > 1e-3, "{seen:?}");
        // A loose coil keeps its gap.
        let mut loose = model;
        loose.coil_over.as_mut().unwrap().spring.as_mut().unwrap().seat_offset = length(0.05);
        let table = loose.ride_height_change(metres(-0.03), &heave).unwrap();
        let used = table.numbers("left_coil_used").unwrap();
        assert!(used[0] < -0.01 && (used[0] - used[1]).abs() < 1e-12, "{used:?}");
    }

    #[test]
    fn longer_shackles_raise_the_body_by_about_half_and_keep_the_load() {
        let table = axle(ARCHED).shackle_change(Length::of::<mm>(40.0), &[0.0, 0.02].map(metres)).unwrap();
        let of = |name: &str| table.numbers(name).unwrap().to_vec();
        assert_relative_eq!(of("left_spring_load")[1], of("left_spring_load")[0], max_relative = 1e-9);
        let rise = of("left_wheel_z")[0] - of("left_wheel_z")[1];
        // The seat is near the middle between the eyes, of which one is lowered.
        assert!(rise > 0.014 && rise < 0.024, "{rise}");
        // The axle is turned about the fixed eye with its nose up.
        assert!(of("pinion_angle_change")[1] > 0.005);
        let gone = axle(ARCHED).shackle_change(Length::of::<mm>(-200.0), &[]).unwrap_err().to_string();
        assert!(gone.starts_with("longer = -200 mm: no shackle"), "{gone}");
    }

    #[test]
    fn a_lowered_body_stands_in_bump() {
        let model = axle(ARCHED);
        let table = model.ride_height_change(Length::of::<mm>(-30.0), &[0.0, 0.01].map(metres)).unwrap();
        let bump = model.at(metres(0.03), radians(0.0)).unwrap();
        for (name, value) in [
            ("pinion_angle", bump.pinion_angle.si()),
            ("wheelbase_change", bump.wheelbase_change.si()),
            ("roll_centre_height", bump.roll_centre_height.si()),
            ("left_shackle_angle", bump.left_shackle_angle.si()),
            ("left_bump_remaining", bump.left_bump_remaining.si()),
        ] {
            assert_relative_eq!(table.numbers(name).unwrap()[1], value, max_relative = 1e-9);
        }
        // The seat's height changes a little with the axle's pitch.
        assert_relative_eq!(bump.left_bump_remaining.si(), 0.06, max_relative = 1e-4);
        let load = table.numbers("left_spring_load").unwrap();
        assert_relative_eq!(load[1], load[0], max_relative = 1e-9);
        assert!(load[2] > load[0] && load[3] > load[1]);
    }

    fn shifted(shifts: &[f64]) -> LeafAxle {
        let mut points = ARCHED;
        for (place, shift) in shifts.iter().enumerate() {
            points[place / 2][place % 2] += shift;
        }
        axle(points)
    }

    proptest! {
        /// Energy against loads and rates, positions against slopes.
        #[test]
        fn rates_are_derivatives(
            shifts in prop::collection::vec(-0.02..0.02, 8), heave in -0.05..0.06, roll in -0.05..0.05,
            form in prop::sample::select(vec![LeafForm::UniformStrength, LeafForm::UniformSection]),
            offset in -0.02..0.04, angle in -0.05..0.05, help in prop::sample::select(vec![None, Some(Mount::Body), Some(Mount::Axle)]),
        ) {
            let mut model = shifted(&shifts);
            if let Some(mount) = help {
                let helped = helped(mount);
                (model.damper, model.coil_over, model.anti_roll_bar) = (None, helped.coil_over, helped.anti_roll_bar);
            }
            model.leaf.form = form;
            model.leaf.eye_offset = Some(length(offset));
            model.leaf.seat_angle = Some(Value::new(radians(angle)));
            let Ok(ready) = model.prepare() else { return Ok(()) };
            // Central differences: short, since their own error grows where a shackle nears the end of its way.
            let h = 2e-5;
            let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
            let on = ready.at(metres(heave), radians(roll)).unwrap();

            let at = |by: f64| (ready.pose(heave + by, roll).unwrap(), ready.at(metres(heave + by), radians(roll)).unwrap());
            let ((low, below), (high, above)) = (at(-h), at(h));
            let load = (high.energy.value - low.energy.value) / (2.0 * h);
            prop_assert!(near(load, (on.left_wheel_force + on.right_wheel_force).si(), 0.05 + 1e-4 * load.abs()), "{load}");
            let rate = (high.energy.first[0] - low.energy.first[0]) / (2.0 * h);
            prop_assert!(near(0.5 * rate, on.wheel_rate.si(), 2.0 + 1e-4 * rate.abs()), "{rate} {:?}", on.wheel_rate);
            let path = (high.x.value - low.x.value + 0.38 * (high.pitch - low.pitch)) / (2.0 * h);
            prop_assert!(near(path.atan(), on.side_view_angle.si(), 1e-6));
            let damper = (above.left_damper_used - below.left_damper_used).si() / (2.0 * h);
            prop_assert!(near(damper, on.damper_motion_ratio.si(), 1e-6), "{damper} {:?}", on.damper_motion_ratio);
            if help.is_some() {
                let slope = |of: fn(&LeafAxlePosition) -> f64| (of(&above) - of(&below)) / (2.0 * h);
                prop_assert!(near(slope(|on| -on.left_eye_length.si()), on.left_motion_ratio.si(), 1e-6));
                prop_assert!(near(slope(|on| -on.right_eye_length.si()), on.right_motion_ratio.si(), 1e-6));
                // Virtual work of each side, its coil's energy from what is said of it.
                let work = |on: &LeafAxlePosition, pose: &Pose| {
                    [(pose.left, on.left_coil_used, on.left_eye_length), (pose.right, on.right_coil_used, on.right_eye_length)]
                        .map(|(leaf, used, eyes)| leaf.energy.value + 15_000.0 * used.si() * used.si() - 150.0 * eyes.si())
                };
                let (less, more) = (work(&below, &low), work(&above, &high));
                for (side, force) in [on.left_wheel_force.si(), on.right_wheel_force.si()].into_iter().enumerate() {
                    let found = (more[side] - less[side]) / (2.0 * h);
                    prop_assert!(near(found, force, 0.05 + 1e-4 * force.abs()), "{found} {force}");
                }
            }
            // The instant centre: the contact point moves about it.
            let (forward, up) = (on.left_wheel_x.si().midpoint(on.right_wheel_x.si()) - on.side_view_centre_x.si(), on.side_view_centre_height.si());
            prop_assert!(near(up, forward * path, 1e-4 * forward.abs()), "{up} {forward} {path}");

            let at = |by: f64| (ready.pose(heave, roll + by).unwrap(), ready.at(metres(heave), radians(roll + by)).unwrap());
            let ((low, below), (high, above)) = (at(-h), at(h));
            let stiffness = (high.energy.first[1] - low.energy.first[1]) / (2.0 * h);
            prop_assert!(near(stiffness, on.roll_stiffness.si(), 1.0 + 1e-4 * stiffness.abs()), "{stiffness} {:?}", on.roll_stiffness);
            let steer = (above.axle_steer - below.axle_steer).si() / (2.0 * h);
            prop_assert!(near(steer, on.roll_steer.si(), 1e-6));
            if let Some(mount) = help {
                let slope = |of: fn(&LeafAxlePosition) -> f64| (of(&above) - of(&below)) / (2.0 * h);
                for (eyes, travel, ratio) in [
                    (slope(|on| on.left_eye_length.si()), slope(|on| on.left_wheel_z.si()), on.left_roll_motion_ratio.si()),
                    (slope(|on| on.right_eye_length.si()), slope(|on| on.right_wheel_z.si()), on.right_roll_motion_ratio.si()),
                ] {
                    prop_assert!(near(eyes, -ratio * travel, 1e-6), "{eyes} {travel} {ratio}");
                }
                let lever = if mount == Mount::Axle { 0.21_f64.hypot(0.01) } else { 0.22_f64.hypot(0.01) };
                let travel = slope(|on| on.left_wheel_z.si() - on.right_wheel_z.si());
                let turned = slope(|on| on.bar_twist.si()) * lever;
                prop_assert!(near(turned, on.bar_motion_ratio.si() * travel, 1e-5), "{turned}");
            }
            // No torque about the axle is left.
            prop_assert!(ready.pose(heave, roll).unwrap().energy.first[2].abs() < 1e-3);
        }

        /// Leaves keep their ends on the body, the shackle its length, both on both sides.
        #[test]
        fn the_springs_stay_where_they_are_bolted(shifts in prop::collection::vec(-0.02..0.02, 8), heave in -0.06..0.08, roll in -0.06..0.06) {
            let model = shifted(&shifts);
            let Ok(ready) = model.prepare() else { return Ok(()) };
            let Ok(on) = ready.pose(heave, roll) else { return Ok(()) };
            let spring = &ready.spring;
            for bent in [on.left, on.right] {
                let away = (bent.eye[0].value - spring.pivot[0]).hypot(bent.eye[1].value - spring.pivot[1]);
                prop_assert!((away - spring.shackle_length).abs() < 1e-12);
            }
            // The seats, which the axle carries, are where the springs have them.
            let (steer, lean, pitch) = (on.steer.value, roll, on.pitch);
            for (side, bent) in [(1.0, on.left), (-1.0, on.right)] {
                let [along, over] = ready.seat;
                let (forward, up) = (along * pitch.cos() - over * pitch.sin(), along * pitch.sin() + over * pitch.cos());
                let left = lean.cos() * side * 0.52 - lean.sin() * up;
                let x = on.x.value + steer.cos() * forward - steer.sin() * left;
                let z = on.z.value + lean.sin() * side * 0.52 + lean.cos() * up;
                prop_assert!((x - bent.seat.value).abs() < 1e-12 && (z - bent.height).abs() < 1e-12);
            }
        }

        /// Right for left with the other roll; front for rear with the other steer.
        #[test]
        fn a_mirror_image_moves_as_one(heave in -0.06..0.08, roll in -0.06..0.06, help in prop::sample::select(vec![None, Some(Mount::Body), Some(Mount::Axle)])) {
            let model = help.map_or_else(|| axle(ARCHED), helped);
            // Values unknown in one are unknown in the other.
            let apart = |a: f64, b: f64| if a.is_nan() && b.is_nan() { 0.0 } else { (a - b).abs() };
            let one = model.at(metres(heave), radians(roll)).unwrap();
            let other = model.at(metres(heave), radians(-roll)).unwrap();
            for (a, b) in [
                (one.left_wheel_x.si(), other.right_wheel_x.si()), (one.left_wheel_y.si(), -other.right_wheel_y.si()),
                (one.left_wheel_z.si(), other.right_wheel_z.si()), (one.axle_steer.si(), -other.axle_steer.si()),
                (one.pinion_angle.si(), other.pinion_angle.si()), (one.lateral_shift.si(), -other.lateral_shift.si()),
                (one.left_shackle_angle.si(), other.right_shackle_angle.si()), (one.left_damper_remaining.si(), other.right_damper_remaining.si()),
                (one.left_eye_length.si(), other.right_eye_length.si()), (one.left_motion_ratio.si(), other.right_motion_ratio.si()),
                (one.left_roll_motion_ratio.si(), other.right_roll_motion_ratio.si()), (one.left_coil_used.si(), other.right_coil_used.si()),
                (one.bar_angle.si(), other.bar_angle.si()), (one.bar_twist.si(), -other.bar_twist.si()), (one.bar_motion_ratio.si(), other.bar_motion_ratio.si()),
            ] {
                prop_assert!(apart(a, b) < 1e-11, "{a} {b}");
            }
            prop_assert!((one.left_spring_load - other.right_spring_load).si().abs() < 1e-5);
            prop_assert!((one.left_wheel_force - other.right_wheel_force).si().abs() < 1e-5);

            let mut turned = axle(ARCHED.map(|[x, z]| [-x, z]));
            turned.axle = Axle::Front;
            if let Some(mount) = help {
                let back = |point: &Point| place([-point.x.quantity.si(), point.y.quantity.si(), point.z.quantity.si()]);
                let helped = helped(mount);
                turned.damper = None;
                turned.coil_over = helped.coil_over.map(|on| AxleCoilOver { body_eye: back(&on.body_eye), axle_eye: back(&on.axle_eye), ..on });
                turned.anti_roll_bar = helped.anti_roll_bar.map(|on| AxleBar {
                    link_eye: back(&on.link_eye), lever_end: back(&on.lever_end), lever_pivot: back(&on.lever_pivot), ..on
                });
            }
            if let Some(damper) = &mut turned.damper {
                (damper.body_eye.x, damper.axle_eye.x) = (length(-0.15), length(0.06));
            }
            let front = turned.at(metres(heave), radians(roll)).unwrap();
            for (a, b) in [
                (one.left_wheel_x.si(), -front.left_wheel_x.si()), (one.axle_steer.si(), -front.axle_steer.si()),
                (one.pinion_angle.si(), front.pinion_angle.si()), (one.wheelbase_change.si(), front.wheelbase_change.si()),
                (one.brake_anti_pitch.si(), front.brake_anti_pitch.si()), (one.left_damper_remaining.si(), front.left_damper_remaining.si()),
                (one.left_bump_remaining.si(), front.left_bump_remaining.si()), (one.right_shackle_angle.si(), front.right_shackle_angle.si()),
                (one.right_eye_length.si(), front.right_eye_length.si()), (one.bar_twist.si(), front.bar_twist.si()),
            ] {
                prop_assert!(apart(a, b) < 1e-11, "{a} {b}");
            }
        }
    }
}
