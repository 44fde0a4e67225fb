#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::bar_lever::{LEAST_LEVER, Lever, across, drawn, mirrored, out_of_reach};
use super::linkage::{AxleLinkage, Free, Link, Pose, Stop, TRIES, Twist};
use super::parts::{
    AxleBar, AxleCoilOver, AxleLink, Fitted, LOWER, LateralRod, LinkDrawn, Mount, NamedLink, Pinion,
    Pitching, Strut, UPPER, WattLinkage, give,
};
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::base::table::{Filling, Table, record};
use crate::suspension::independent::wheel_position::{BUMP, TravelRange, centre};
use crate::suspension::kinematics::lanes::{Lanes, Vectors};
use crate::suspension::kinematics::outline::{Outline, outlines};
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::parts::{Axle, Wheel, refused};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, RotationalStiffness, Torque};
use crate::{Error, Result, valid};
use std::borrow::Cow;
use std::sync::{Arc, OnceLock};

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

record! {
    /// The axle at one heave and roll; what is not known is not a number.
    #[derive(Debug, Clone, PartialEq)]
    pub struct AxlePosition {
        /// Axle's middle, halfway between the wheel centres, forward in the body's axes.
        pub axle_x: Length,
        /// Movement of the axle's middle, to the left of the body's centre plane.
        pub lateral_shift: Length,
        /// Axle's middle, up.
        pub axle_z: Length,
        /// Movement of the axle's middle from ride height, positive for a longer wheelbase.
        pub wheelbase_change: Length,
        /// Turn of the axle about z, positive to the left.
        pub axle_steer: Angle,
        /// Change of that over 25 mm of bump, at the slope that it has here.
        pub heave_steer: Angle,
        /// Change of `axle_steer` over roll, at the slope that it has here; positive steers the axle out of a turn as the body leans, a rear one to oversteer, a front one to understeer.
        pub roll_steer: Ratio,
        /// Turn of the axle about its own length, positive with its front down.
        pub axle_pitch: Angle,
        /// Angle of the pinion's axis against the body's x, positive nose up.
        pub pinion_angle: Angle,
        /// Change of that angle from ride height; without a pinion that of a level one.
        pub pinion_angle_change: Angle,
        /// Joint on the pinion's nose, forward.
        pub pinion_x: Length,
        /// Joint on the pinion's nose, to the left.
        pub pinion_y: Length,
        /// Joint on the pinion's nose, up.
        pub pinion_z: Length,
        /// Above the ground, where the axis about which the axle rolls crosses the body's centre plane, in the transverse plane through the axle's middle; sideways it wanders with `lateral_shift`.
        pub roll_centre_height: Length,
        /// Angle of that axis against the body's x, positive if it rises forward.
        pub roll_axis_angle: Angle,
        /// Above the ground, of the lateral rod on the body's centre plane; without steer in roll the height of the roll centre.
        pub lateral_rod_height: Length,
        /// Instant centre of the axle in side view, in heave, forward; infinite if there is none.
        pub side_view_centre_x: Length,
        /// Height of that centre above the ground.
        pub side_view_centre_height: Length,
        /// Forward lean of the path in bump of the point midway between the contact points, held in the axle.
        pub side_view_angle: Angle,
        /// Anti-squat of a rear axle, anti-lift of a front one, under drive whose torque the housing takes, as a share of what would cancel the pitch of that axle.
        pub drive_anti_pitch: Ratio,
        /// Anti-lift of a rear axle, anti-dive of a front one, under brakes whose torque the housing takes, as a share.
        pub brake_anti_pitch: Ratio,
        /// Left wheel centre, forward.
        pub left_wheel_x: Length,
        /// Left wheel centre, to the left.
        pub left_wheel_y: Length,
        /// Left wheel centre, up.
        pub left_wheel_z: Length,
        /// Camber of the left wheel against the body, positive with its top outboard.
        pub left_camber: Angle,
        /// Toe of the left wheel, positive with its front inboard.
        pub left_toe: Angle,
        /// Between the eyes of the left coil-over.
        pub left_eye_length: Length,
        /// Shortening of the left coil-over over heave.
        pub left_motion_ratio: Ratio,
        /// Shortening of the left coil-over over the travel of the left wheel in roll: of upright springs their base over the track.
        pub left_roll_motion_ratio: Ratio,
        /// Between the seats of the left spring.
        pub left_spring_length: Length,
        /// Compressive, in the coil; nothing where it is loose.
        pub left_spring_force: Force,
        /// By how much the spring is shorter than unloaded.
        pub left_spring_used: Length,
        /// Until it is solid, along itself.
        pub left_spring_remaining: Length,
        /// Used stroke of the left damper, from fully open.
        pub left_damper_used: Length,
        /// Remaining stroke of the left damper, to fully closed; negative past its end.
        pub left_damper_remaining: Length,
        /// Force of coil and gas in heave on the left, their force times `left_motion_ratio`.
        pub left_wheel_force: Force,
        /// Tangent rate of coil and gas in heave, with the term of the changing motion ratio; without bar, tyre and links that bind.
        pub left_wheel_rate: LinearStiffness,
        /// Right wheel centre, forward.
        pub right_wheel_x: Length,
        /// Right wheel centre, to the left.
        pub right_wheel_y: Length,
        /// Right wheel centre, up.
        pub right_wheel_z: Length,
        /// Camber of the right wheel against the body, positive with its top outboard.
        pub right_camber: Angle,
        /// Toe of the right wheel, positive with its front inboard.
        pub right_toe: Angle,
        /// Between the eyes of the right coil-over.
        pub right_eye_length: Length,
        /// Shortening of the right coil-over over heave.
        pub right_motion_ratio: Ratio,
        /// Shortening of the right coil-over over the travel of the right wheel in roll: of upright springs their base over the track.
        pub right_roll_motion_ratio: Ratio,
        /// Between the seats of the right spring.
        pub right_spring_length: Length,
        /// Compressive, in the coil; nothing where it is loose.
        pub right_spring_force: Force,
        /// By how much the spring is shorter than unloaded.
        pub right_spring_used: Length,
        /// Until it is solid, along itself.
        pub right_spring_remaining: Length,
        /// Used stroke of the right damper, from fully open.
        pub right_damper_used: Length,
        /// Remaining stroke of the right damper, to fully closed; negative past its end.
        pub right_damper_remaining: Length,
        /// Force of coil and gas in heave on the right, their force times `right_motion_ratio`.
        pub right_wheel_force: Force,
        /// Tangent rate of coil and gas in heave, with the term of the changing motion ratio; without bar, tyre and links that bind.
        pub right_wheel_rate: LinearStiffness,
        /// Roll stiffness of both springs with their gas at this heave, tangent, the term of the changing lengths included; without bar, tyre and links that bind.
        pub roll_stiffness: RotationalStiffness,
        /// Mean turn of the bar's two levers from ride height, positive as in bump.
        pub bar_angle: Angle,
        /// Turn of the left lever less that of the right one.
        pub bar_twist: Angle,
        /// Travel of the levers' ends along their arcs over wheel travel, in roll.
        pub bar_motion_ratio: Ratio,
        /// Largest lean of all joints of the links, from ride height.
        pub greatest_lean: Angle,
        /// Joint with that lean: its link and its end, `body`, `axle`, `crank` or `outer`.
        pub greatest_lean_joint: String,
        /// Remaining angle until the first joint with a given limit reaches it.
        pub joint_left: Angle,
        /// Joint with that margin; `not known` without a limit.
        pub first_joint: String,
        /// By how much the lateral rod with its bushes is longer than at ride height: nothing unless it binds.
        pub lateral_rod_stretch: Length,
        /// Coordinates of the axle less the rank of the links here: two where it heaves and rolls freely, one where it does so only together.
        pub freedoms: i64,
        /// Links more than an axle that heaves and rolls leaves room for.
        pub redundant: i64,
        /// By how much the links miss each other at this heave and roll, were their joints rigid: root of the sum of the squares of their misses.
        pub bind_misfit: Length,
        /// Greatest tension or compression of a link by that; not a number where no bush gives.
        pub bind_force: Force,
        /// Link that binds or, if no bush gives, the one with the largest misfit; `none` if nothing binds.
        pub bind_link: String,
        /// Moment of the binding links on the axle about its roll axis, against roll.
        pub bind_moment: Torque,
        /// Change of that over roll, at the slope that it has here.
        pub bind_roll_stiffness: RotationalStiffness,
    }
    lent pub(super) Found<'a>;
}

/// A joint of a link.
#[derive(Debug, Clone)]
struct Joint {
    link: usize,
    /// End of the joint: on the body, the axle or the crank.
    end: End,
    word: &'static str,
    /// Written when it is first asked for.
    name: OnceLock<String>,
    limit: Option<f64>,
    /// Direction of the link there at ride height.
    drawn: Vector,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum End {
    Body,
    Axle,
    CrankOnBody,
    CrankOnAxle,
}

/// A live axle that is prepared once and asked many times: see [`Prepare`].
///
/// Its linkage is solved at ride height, and each answer starts from there.
#[derive(Debug)]
pub struct PreparedLiveAxle<'a> {
    model: &'a LiveAxle,
    linkage: Arc<AxleLinkage>,
    names: Vec<Cow<'a, str>>,
    joints: Vec<Joint>,
    rod: Option<usize>,
    levers: Option<[Lever; 2]>,
    bar_sign: f64,
    /// Wheel's centre, axis and contact at ride height, from the axle's middle.
    wheels: [[Vector; 2]; 2],
    pinion: Vector,
}

/// Both coil-overs, the left one first: length between the eyes, and its first and second derivative along heave and roll.
struct Strokes {
    eyes: Lanes<2>,
    heave: [Lanes<2>; 2],
    roll: [Lanes<2>; 2],
}

/// Names that a link may not have: the other parts of `points` and of the refusals, and the word for no link at all.
const OTHER_PARTS: [&str; 14] = [
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
    /// - `bump` — greatest heave
    /// - `bump_end` — the link that ends it
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        self.prepare()?.travel_range(roll)
    }

    /// The axle moved under its body: wheels, axle ends of links, rods, coil-overs and drop links, and what the axle carries are moved; what is on the body stays.
    ///
    /// # Parameters
    /// - `forward` — by how much
    /// - `up` — by how much, against the body, which then stands so much lower
    /// - `heave` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`. The links are set to their new length at ride height,
    /// where the pinion points as it did, and the springs' seats are set so that they carry the load that they carried.
    pub fn axle_move(&self, forward: Length, up: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! {
            forward: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
            up: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
        }
        let by = vector(forward.si(), 0.0, up.si());
        let mut after = self.clone();
        let mut on_axle = vec![&mut after.wheel.centre];
        for link in [&mut after.lower_links, &mut after.upper_links].into_iter().flatten() {
            on_axle.push(&mut link.axle);
        }
        on_axle.extend(after.links.iter_mut().map(|link| &mut link.axle));
        on_axle.extend(after.lateral_rod.as_mut().into_iter().map(|rod| &mut rod.axle));
        on_axle.extend(after.coil_over.as_mut().into_iter().map(|coil_over| &mut coil_over.axle_eye));
        on_axle.extend(after.pinion.iter_mut().filter_map(|pinion| pinion.nose.as_mut()));
        if let Stated::Given(watt) = &mut after.watt {
            let (upper, lower) = (&mut watt.upper_rod, &mut watt.lower_rod);
            match watt.carried_by {
                Mount::Axle => on_axle.extend([&mut watt.pivot, &mut upper.crank, &mut lower.crank]),
                Mount::Body => on_axle.extend([&mut upper.outer, &mut lower.outer]),
            }
        }
        if let Stated::Given(bar) = &mut after.anti_roll_bar {
            match bar.bearings {
                Mount::Axle => on_axle.extend([&mut bar.lever_end, &mut bar.lever_pivot]),
                Mount::Body => on_axle.push(&mut bar.link_eye),
            }
        }
        for point in on_axle {
            *point = point.moved(by);
        }
        after.raise(-up.si());
        self.compared(after, Length::from_si(0.0), heave)
    }

    /// The body raised or lowered on its springs, the linkage as it is.
    ///
    /// # Parameters
    /// - `rise` — of the body above the ground, negative where it is lowered
    /// - `heave` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`; changes are against the ride height before. The springs' seats are
    /// set so that they carry the load that they carried.
    pub fn ride_height_change(&self, rise: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { rise: (-10) <= .. <= 10 ; "plausibility limit: no body is raised by 10 m"; }
        let mut after = self.clone();
        after.raise(rise.si());
        self.compared(after, -rise, heave)
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
        // The axle's middle stays: the links hang on it.
        let by = self.wheel.axis() * outward.si();
        after.wheel.centre = after.wheel.centre.moved(vector(0.0, by.y, 0.0));
        self.compared(after, Length::from_si(0.0), heave)
    }

    /// The rows of two models; the second one stands at another heave.
    fn compared(&self, mut after: LiveAxle, standing: Length, heave: &[Length]) -> Result<Table> {
        let before = self.prepare()?;
        let (none, level) = (Length::from_si(0.0), Angle::from_si(0.0));
        let load = self.at(none, level)?.left_wheel_force;
        let changed = after.at(standing, level)?;
        if let Stated::Given(coil_over) = &mut after.coil_over
            && let Some(spring) = &mut coil_over.spring
        {
            let gas = coil_over.damper.as_ref().and_then(|damper| damper.gas_force.as_ref());
            let gas = gas.map_or(Force::from_si(0.0), |gas| gas.quantity);
            let force = load / changed.left_motion_ratio - gas;
            let length = spring.free_length.quantity - force / spring.rate.quantity;
            spring.seat_offset = Value::new(changed.left_eye_length - length);
        }
        let after = after.prepare()?;
        let mut rows = Filling::over(["state", "heave"], &[2, heave.len()])?;
        let mut on = Found::unknown();
        for heave in heave {
            for (state, ready, from) in [("before", &before, none), ("after", &after, standing)] {
                rows.push((state, *heave), ready.find(from + *heave, level, &mut on).map(|()| on));
            }
        }
        Ok(rows.finish())
    }

    /// The centre of gravity raised.
    fn raise(&mut self, by: f64) {
        if let Some(pitching) = &mut self.pitching {
            let height = &mut pitching.centre_of_gravity_height;
            *height = Value::new(height.quantity + Length::from_si(by));
        }
    }

    /// Refuses parts that cannot be, each by itself.
    fn check_parts(&self) -> Result<()> {
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
                return Err(refused(&link.key(), message));
            }
            let others: Vec<Cow<'_, str>> = before().flat_map(LinkDrawn::called).collect();
            let taken = |name: &Cow<'_, str>| OTHER_PARTS.contains(&&**name) || others.contains(name);
            if let Some(name) = link.called().into_iter().find(taken) {
                let message =
                    format!("name: {name} is the name of another part: give the link one of its own");
                return Err(refused(&link.key(), message));
            }
        }
        let count: usize = links.iter().map(|link| if link.fitted == Fitted::Pair { 2 } else { 1 }).sum();
        if !(3..=4).contains(&count) {
            let message = format!("{count} links, each of a pair counted: three or four are wanted");
            return Err(refused("links", message));
        }
        if self.lateral_rod.is_given() && self.watt.is_given() {
            let message = "a lateral rod holds the axle sideways already: give one of the two";
            return Err(refused("watt", message.to_owned()));
        }
        if count == 3 && !self.lateral_rod.is_given() && !self.watt.is_given() {
            let message =
                "three links do not hold the axle sideways: add a lateral_rod or a watt, or a fourth link";
            return Err(refused("links", message.to_owned()));
        }
        self.lateral_rod.as_ref().map_or(Ok(()), LateralRod::check)?;
        self.watt.as_ref().map_or(Ok(()), WattLinkage::check)?;
        self.coil_over.as_ref().map_or(Ok(()), AxleCoilOver::check)?;
        self.anti_roll_bar.as_ref().map_or(Ok(()), AxleBar::check)?;
        self.pinion.as_ref().map_or(Ok(()), Pinion::check)?;
        self.pitching.as_ref().map_or(Ok(()), Pitching::check)
    }

    /// All links along the vehicle: the lower ones, the upper ones, then those under names of their own.
    fn all_links(&self) -> Vec<LinkDrawn<'_>> {
        let named = [(LOWER, &self.lower_links), (UPPER, &self.upper_links)];
        let named = named.into_iter().filter_map(|(name, link)| Some(link.as_ref()?.drawn(name)));
        named.chain(self.links.iter().enumerate().map(|(place, link)| link.drawn(place))).collect()
    }

    /// Prepares the axle, its linkage by this function.
    fn ready(
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
            pinion: vector(1.0, 0.0, 0.0),
        };
        if let Some([left, _]) = &ready.levers
            && let Some((_, [rate, _])) = left.turn(seen(left, &ready.linkage.rest))
        {
            ready.bar_sign = 1.0_f64.copysign(rate);
        }
        if let Some(pinion) = &self.pinion {
            let (sine, cosine) = pinion.angle.quantity.si().sin_cos();
            ready.pinion = vector(cosine, 0.0, sine);
        }
        if let Stated::Given(on) = &self.coil_over
            && (on.body_eye.vector() - on.axle_eye.vector()).norm() < LEAST_LEVER
        {
            return Err(refused("coil_over", "its eyes are nearer than 1 mm".to_owned()));
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
fn seen(lever: &Lever, pose: &Pose) -> (Vector, [Vector; 2]) {
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
        Free::Crank => "the rods hold the bell crank of the watt in no place: they are in line with its ends",
    };
    refused(if free == Free::Crank { "watt" } else { "links" }, message.to_owned())
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
            return Err(refused(&name, "it is shorter than 1 mm".to_owned()));
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
    /// The axle at a heave and roll: see [`LiveAxle::at`].
    pub fn at(&self, heave: Length, roll: Angle) -> Result<AxlePosition> {
        self.found(heave, roll).map(AxlePosition::from)
    }

    fn name(&self, link: usize) -> &str {
        self.names.get(link).map_or("", |name| &**name)
    }

    fn joint<'a>(&'a self, joint: &'a Joint) -> &'a str {
        joint.name.get_or_init(|| format!("{} {}", self.name(joint.link), joint.word))
    }

    /// Travel of the linkage in droop and bump: see [`LiveAxle::travel_range`].
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        valid! { roll: (-1) <= .. <= 1 ; "plausibility limit: no axle rolls by 57 deg"; }
        let [droop, bump] = self.linkage.range(roll.si()).ok_or_else(|| self.locked(roll))?;
        if let Some(stop) = [droop, bump].into_iter().find(|stop| stop.given_up) {
            let (place, why) = (stop.place * 1e3, self.why(&stop));
            let message =
                format!("roll = {} deg: heave ends at {place:.1} mm, {why}", roll.si().to_degrees());
            return Err(Error::NoSolution { message });
        }
        Ok(TravelRange {
            droop: Length::from_si(droop.place),
            droop_end: self.name(droop.link).to_owned(),
            bump: Length::from_si(bump.place),
            bump_end: self.name(bump.link).to_owned(),
        })
    }

    fn pose(&self, heave: Length, roll: Angle) -> Result<Box<Pose>> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no axle travels 10 m";
            roll: (-1) <= .. <= 1 ; "plausibility limit: no axle rolls by 57 deg";
        }
        self.linkage.at(heave.si(), roll.si()).ok_or_else(|| self.beyond(heave, roll))
    }

    /// Everything at a heave and roll; what is not known stays as it is.
    fn find<'a>(&'a self, heave: Length, roll: Angle, on: &mut Found<'a>) -> Result<()> {
        let pose = self.pose(heave, roll)?;
        self.results(&pose, on).ok_or_else(|| self.drop_link(heave, roll))
    }

    /// Everything at a heave and roll, its words lent.
    pub(super) fn found(&self, heave: Length, roll: Angle) -> Result<Found<'_>> {
        let mut on = Found::unknown();
        self.find(heave, roll, &mut on)?;
        Ok(on)
    }

    fn outline(&self, heave: Length, roll: Angle) -> Result<Outline<'_>> {
        let (model, pose) = (self.model, self.pose(heave, roll)?);
        let (middle, rest) = (pose.frame.middle, self.linkage.rest.frame.middle);
        let carried = |drawn: Vector| middle + pose.frame.direction(drawn - rest);
        let wheels = [0, 1].map(|place| self.wheel(&pose, place));
        let [[left, ..], [right, ..]] = wheels;
        let mut outline: Outline<'_> = vec![("axle", vec![("left end", left), ("right end", right)])];

        // The rods of a Watt linkage come last.
        let links = self.names.len() - model.watt.as_ref().map_or(0, |watt| watt.rods().len());
        let ends = |link: usize| {
            let (held, axle) = (&pose.held, middle + pose.held.arm.lane(link));
            [axle - held.along.lane(link) * held.length.0[link], axle]
        };
        for (link, name) in self.names.iter().take(links).enumerate() {
            let [body, axle] = ends(link);
            outline.push((name, vec![("body", body), ("axle", axle)]));
        }
        if let Stated::Given(watt) = &model.watt {
            let pivot = watt.pivot.vector();
            let (pivot, crank) = match watt.carried_by {
                Mount::Body => (pivot, 0),
                Mount::Axle => (carried(pivot), 1),
            };
            let mut levers = vec![("pivot", pivot)];
            for (place, (name, end)) in
                [("upper rod", "upper end"), ("lower rod", "lower end")].into_iter().enumerate()
            {
                let rod = ends(links + place);
                outline.push((name, vec![("crank", rod[crank]), ("outer", rod[1 - crank])]));
                levers.insert(2 * place, (end, rod[crank]));
            }
            outline.push(("bell crank", levers));
        }
        if let Stated::Given(on) = &model.coil_over {
            let (body, axle) = (on.body_eye.vector(), on.axle_eye.vector());
            for (name, side) in
                [("coil-over left", drawn as fn(Vector) -> Vector), ("coil-over right", mirrored)]
            {
                outline.push((name, vec![("body eye", side(body)), ("axle eye", carried(side(axle)))]));
            }
        }
        if let Some(levers) = &self.levers {
            let reached = levers.each_ref().map(|lever| {
                let points = lever.points(seen(lever, &pose).0)?;
                Some(match lever.carried_by {
                    Mount::Body => points,
                    Mount::Axle => points.map(|point| middle + pose.frame.direction(point)),
                })
            });
            let [Some(left), Some(right)] = reached else { return Err(self.drop_link(heave, roll)) };
            outline.push(("anti-roll bar", across(left, right)));
        }
        if let Some(nose) = model.pinion.as_ref().and_then(|pinion| pinion.nose.as_ref()) {
            let (nose, axis) = (carried(nose.vector()), pose.frame.direction(self.pinion));
            // Point of its axis nearest to the axle's middle.
            let foot = nose - axis * axis.dot(nose - middle);
            outline.push(("pinion", vec![("foot", foot), ("nose", nose)]));
        }
        for (name, [centre, _, contact]) in ["wheel left", "wheel right"].into_iter().zip(wheels) {
            outline.push((name, vec![("centre", centre), ("contact", contact)]));
        }
        Ok(outline)
    }

    /// Reason why the linkage does not reach this position, and the travel that it has.
    fn beyond(&self, heave: Length, roll: Angle) -> Error {
        let Some([droop, bump]) = self.linkage.range(roll.si()) else {
            return self.locked(roll);
        };
        let [heave_mm, droop_mm, bump_mm] = [heave.si(), droop.place, bump.place].map(|on| on * 1e3);
        let end = if heave.si() < 0.0 { &droop } else { &bump };
        let message = format!(
            "heave = {heave_mm} mm is beyond the linkage with roll = {} deg: it goes from {droop_mm:.1} mm ({}) to {bump_mm:.1} mm ({}), {}",
            roll.si().to_degrees(),
            self.name(droop.link),
            self.name(bump.link),
            self.why(end),
        );
        Error::NoSolution { message }
    }

    fn locked(&self, roll: Angle) -> Error {
        let [low, high] = self.linkage.roll_range();
        let message = format!(
            "roll = {} deg: the linkage is locked at ride height; it rolls there from {:.2} deg ({}) to {:.2} deg ({}), {}",
            roll.si().to_degrees(),
            low.place.to_degrees(),
            self.name(low.link),
            high.place.to_degrees(),
            self.name(high.link),
            self.why(if roll.si() < 0.0 { &low } else { &high }),
        );
        Error::NoSolution { message }
    }

    /// Reason why the axle stops.
    fn why(&self, stop: &Stop) -> String {
        let link = self.name(stop.link);
        if stop.given_up {
            return format!(
                "where the search was given up after {TRIES} positions: check the points of {link}"
            );
        }
        format!("where {link} is over-extended")
    }

    /// The bar does not go along.
    fn drop_link(&self, heave: Length, roll: Angle) -> Error {
        out_of_reach(heave, roll, |heave, roll| {
            self.linkage
                .at(heave.si(), roll.si())
                .is_some_and(|pose| self.results(&pose, &mut Found::unknown()).is_some())
        })
    }

    /// Everything at a position; none where the bar's drop links do not reach.
    fn results<'a>(&'a self, pose: &Pose, on: &mut Found<'a>) -> Option<()> {
        let (model, frame, heave, roll) = (self.model, &pose.frame, &pose.heave, &pose.roll);
        let (length, angle, ratio) = (Length::from_si, Angle::from_si, Ratio::from_si);
        let to_rear = match model.axle {
            Axle::Front => 1.0,
            Axle::Rear => -1.0,
        };
        let middle = frame.middle;
        let rest = self.linkage.rest.frame.middle;
        (on.axle_x, on.lateral_shift, on.axle_z) = (length(middle.x), length(middle.y), length(middle.z));
        on.wheelbase_change = length((middle.x - rest.x) * to_rear);
        (on.axle_steer, on.axle_pitch) = (angle(pose.yaw()), angle(pose.pitch()));
        on.heave_steer = angle(heave.yaw_rate() * BUMP);
        on.roll_steer = ratio(roll.yaw_rate());
        self.pinion(pose, on);

        let contacts = self.wheels(pose, on);
        let [left, right] = contacts;
        let under = 0.5 * (left.z + right.z);
        // Rolling so that what is on the centre plane does not rise.
        let heaving = middle.y * roll.spin.x / (1.0 - middle.y * heave.spin.x);
        let sideways = roll.velocity.y + heave.velocity.y * heaving;
        let turn = roll.spin + heave.spin * heaving;
        on.roll_centre_height = length(middle.z + sideways / turn.x - under);
        on.roll_axis_angle = angle((turn.z / turn.x).atan());
        if let Some(rod) = self.rod {
            let (end, along) = (middle + pose.held.arm.lane(rod), pose.held.along.lane(rod));
            on.lateral_rod_height = length(end.z - end.y * along.z / along.y - under);
            on.lateral_rod_stretch = length(pose.held.stretch.0[rod]);
        }

        let contact = (left + right) * 0.5;
        let path = heave.point(contact - middle).rate;
        let (side_x, side_height) = centre(path.z, path.x, heave.spin.y);
        on.side_view_centre_x = length(contact.x + side_x);
        on.side_view_centre_height = length(side_height);
        on.side_view_angle = angle((path.x / path.z).atan());
        if let Some(pitching) = &model.pitching {
            let levers = pitching.wheelbase.quantity / pitching.centre_of_gravity_height.quantity;
            let share = |share: &Option<Value<Ratio>>| {
                share.as_ref().map_or(f64::NAN, |share| (share.quantity * levers).si())
            };
            let slope = to_rear * path.x / path.z;
            on.drive_anti_pitch = ratio(share(&pitching.drive_share) * slope);
            on.brake_anti_pitch = ratio(share(&pitching.brake_share) * slope);
        }
        self.springs(pose, on);
        self.bar(pose, on)?;
        self.joints(pose, on);

        let bind = self.linkage.bind(pose)?;
        (on.freedoms, on.redundant) = (bind.freedoms, i64::try_from(self.linkage.redundant()).unwrap_or(0));
        on.bind_misfit = length(bind.misfit);
        on.bind_force = Force::from_si(bind.force);
        on.bind_link = bind.link.map_or("none", |link| self.name(link));
        on.bind_moment = Torque::from_si(bind.moment);
        on.bind_roll_stiffness = RotationalStiffness::from_si(bind.stiffness);
        Some(())
    }

    fn pinion(&self, pose: &Pose, on: &mut Found<'_>) {
        let pinion = self.model.pinion.as_ref();
        let axis = pose.frame.direction(self.pinion);
        let angle = (axis.z / (axis.x * axis.x + axis.y * axis.y).sqrt()).atan();
        let drawn = pinion.map_or(Angle::from_si(0.0), |pinion| pinion.angle.quantity);
        on.pinion_angle_change = Angle::from_si(angle) - drawn;
        let Some(pinion) = pinion else { return };
        on.pinion_angle = Angle::from_si(angle);
        if let Some(nose) = &pinion.nose {
            let nose =
                pose.frame.middle + pose.frame.direction(nose.vector() - self.linkage.rest.frame.middle);
            (on.pinion_x, on.pinion_y, on.pinion_z) =
                (Length::from_si(nose.x), Length::from_si(nose.y), Length::from_si(nose.z));
        }
    }

    /// The left (0) or the right wheel: centre, axis and contact point.
    fn wheel(&self, pose: &Pose, place: usize) -> [Vector; 3] {
        let [arm, axis] = self.wheels[place];
        let (at, axis) = (pose.frame.middle + pose.frame.direction(arm), pose.frame.direction(axis));
        let down = axis * axis.z - vector(0.0, 0.0, 1.0);
        [at, axis, at + down.unit() * self.model.wheel.loaded_radius.quantity.si()]
    }

    /// Both wheels; their contact points.
    fn wheels(&self, pose: &Pose, on: &mut Found<'_>) -> [Vector; 2] {
        let mut contacts = [Vector::default(); 2];
        for (place, contact) in contacts.iter_mut().enumerate() {
            let [at, axis, ground] = self.wheel(pose, place);
            *contact = ground;
            let outward = if place == 0 { axis.y } else { -axis.y };
            let camber = Angle::from_si((-axis.z / (axis.x * axis.x + axis.y * axis.y).sqrt()).atan());
            let toe = Angle::from_si(axis.x.atan2(outward));
            let (x, y, z) = (Length::from_si(at.x), Length::from_si(at.y), Length::from_si(at.z));
            if place == 0 {
                (on.left_wheel_x, on.left_wheel_y, on.left_wheel_z) = (x, y, z);
                (on.left_camber, on.left_toe) = (camber, toe);
            } else {
                (on.right_wheel_x, on.right_wheel_y, on.right_wheel_z) = (x, y, z);
                (on.right_camber, on.right_toe) = (camber, toe);
            }
        }
        contacts
    }

    /// Length, motion ratio and its gradient of the left coil-over at ride height, without roll, and the base of both in roll.
    #[cfg(feature = "sheet")]
    pub(super) fn stroke_at_ride(&self) -> Option<[f64; 4]> {
        let coil_over = self.model.coil_over.as_ref()?;
        let Strokes { eyes, heave, roll } = self.strokes(coil_over, &self.linkage.rest);
        let [slope, bend] = heave.map(|on| on.0[0]);
        Some([eyes.0[0], -slope, -bend, 2.0 * roll[0].0[0] / slope])
    }

    /// Heave without roll at which the eyes of the coil-over are so far apart.
    #[cfg(feature = "sheet")]
    pub(super) fn heave_for(&self, length: f64) -> Result<f64> {
        let Stated::Given(coil_over) = &self.model.coil_over else { return Ok(f64::NAN) };
        let mut heave = 0.0;
        for _ in 0..20 {
            let Some(pose) = self.linkage.at(heave, 0.0) else { break };
            let Strokes { eyes, heave: strokes, .. } = self.strokes(coil_over, &pose);
            let (off, [slope, bend]) = (eyes.0[0] - length, strokes.map(|on| on.0[0]));
            if off.abs() <= 1e-12 {
                return Ok(heave);
            }
            heave -= 2.0 * off * slope / (2.0 * slope * slope - off * bend); // Halley's step
        }
        let message = format!(
            "the linkage does not bring the eyes of the coil-over {:.1} mm apart; at ride height they are {:.1} mm apart",
            length * 1e3,
            self.strokes(coil_over, &self.linkage.rest).eyes.0[0] * 1e3
        );
        Err(Error::NoSolution { message })
    }

    #[inline]
    fn strokes(&self, coil_over: &AxleCoilOver, pose: &Pose) -> Strokes {
        let rest = self.linkage.rest.frame.middle;
        let both = |at: Vector| Vectors::<2>::of(|side| if side == 0 { at } else { mirrored(at) });
        let arms = pose.frame.directions(both(coil_over.axle_eye.vector() - rest));
        let between = Vectors::all(pose.frame.middle) + arms - both(coil_over.body_eye.vector());
        let eyes = between.dot(between).map(f64::sqrt);
        let over = eyes.map(|eyes| 1.0 / eyes);
        let along = |twist: &Twist| {
            let eye = twist.points(arms);
            let slope = between.dot(eye.rate) * over;
            [slope, (eye.rate.square() + between.dot(eye.second) - slope * slope) * over]
        };
        Strokes { eyes, heave: along(&pose.heave), roll: along(&pose.roll) }
    }

    fn springs(&self, pose: &Pose, on: &mut Found<'_>) {
        let Stated::Given(coil_over) = &self.model.coil_over else { return };
        let mut stiffness = 0.0;
        let strokes = self.strokes(coil_over, pose);
        for place in [0, 1] {
            let eyes = strokes.eyes.0[place];
            let [heave, roll] =
                [strokes.heave, strokes.roll].map(|[slope, bend]| (slope.0[place], bend.0[place]));
            let wheel = pose.frame.direction(self.wheels[place][0]);
            let spring = Strut::of(coil_over, eyes);
            let rate = |(slope, bend): (f64, f64)| spring.rate * slope * slope - spring.force * bend;
            stiffness += rate(roll);
            let (length, ratio) = (Length::from_si, Ratio::from_si);
            let motion_ratio = ratio(-heave.0);
            let roll_motion_ratio = ratio(-roll.0 / pose.roll.point(wheel).rate.z);
            let (wheel_force, wheel_rate) =
                (Force::from_si(-spring.force * heave.0), LinearStiffness::from_si(rate(heave)));
            if place == 0 {
                on.left_eye_length = length(eyes);
                (on.left_motion_ratio, on.left_roll_motion_ratio) = (motion_ratio, roll_motion_ratio);
                (on.left_spring_length, on.left_spring_force) = (spring.length, spring.coil);
                (on.left_spring_used, on.left_spring_remaining) = (spring.used, spring.remaining);
                (on.left_damper_used, on.left_damper_remaining) =
                    (spring.damper_used, spring.damper_remaining);
                (on.left_wheel_force, on.left_wheel_rate) = (wheel_force, wheel_rate);
            } else {
                on.right_eye_length = length(eyes);
                (on.right_motion_ratio, on.right_roll_motion_ratio) = (motion_ratio, roll_motion_ratio);
                (on.right_spring_length, on.right_spring_force) = (spring.length, spring.coil);
                (on.right_spring_used, on.right_spring_remaining) = (spring.used, spring.remaining);
                (on.right_damper_used, on.right_damper_remaining) =
                    (spring.damper_used, spring.damper_remaining);
                (on.right_wheel_force, on.right_wheel_rate) = (wheel_force, wheel_rate);
            }
        }
        on.roll_stiffness = RotationalStiffness::from_si(stiffness);
    }

    fn bar(&self, pose: &Pose, on: &mut Found<'_>) -> Option<()> {
        let Some([left, right]) = &self.levers else { return Some(()) };
        let (left_turn, left_rates) = left.turn(seen(left, pose))?;
        let (right_turn, right_rates) = right.turn(seen(right, pose))?;
        let [up, down] = self.wheels.map(|[arm, _]| pose.roll.point(pose.frame.direction(arm)).rate.z);
        let sign = self.bar_sign;
        on.bar_angle = Angle::from_si(0.5 * sign * (left_turn + right_turn));
        on.bar_twist = Angle::from_si(sign * (left_turn - right_turn));
        let travel = sign * (left_rates[1] - right_rates[1]) * left.hinge.radius;
        on.bar_motion_ratio = Ratio::from_si(travel / (up - down));
        Some(())
    }

    /// Lean of the joints from ride height.
    fn joints<'a>(&'a self, pose: &Pose, on: &mut Found<'a>) {
        // Unit vectors: the distance between them stands for their angle.
        let (mut greatest, mut most) = (-1.0, None);
        let (mut left, mut first) = (f64::NAN, None);
        for joint in &self.joints {
            let held = pose.held.along.lane(joint.link);
            let along = match joint.end {
                End::Body => held,
                End::Axle => pose.frame.direction_here(held),
                End::CrankOnBody => pose.frame.crank_at_rest(held),
                End::CrankOnAxle => pose.frame.crank_at_rest(pose.frame.direction_here(held)),
            };
            let apart = (along - joint.drawn).square();
            if apart > greatest {
                (greatest, most) = (apart, Some(joint));
            }
            if let Some(limit) = joint.limit {
                let here = limit - lean(apart);
                if left.is_nan() || here < left {
                    (left, first) = (here, Some(joint));
                }
            }
        }
        on.greatest_lean = Angle::from_si(lean(greatest));
        on.greatest_lean_joint = most.map_or("", |joint| self.joint(joint));
        on.joint_left = Angle::from_si(left);
        on.first_joint = first.map_or("not known", |joint| self.joint(joint));
    }
}

/// Angle between unit vectors whose ends are this far apart, squared.
fn lean(apart: f64) -> f64 {
    2.0 * (0.5 * apart.max(0.0).sqrt()).min(1.0).asin()
}

#[cfg(test)]
mod tests {
    use super::super::parts::WattRod;
    use super::*;
    use crate::base::table::tests::{alone, difference};
    use crate::suspension::kinematics::outline::read;
    use crate::suspension::parts::{CoilSpring, Damper, Point};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn value(metres: f64) -> Value<Length> {
        Value::new(Length::from_si(metres))
    }
    fn metres(value: f64) -> Length {
        Length::from_si(value)
    }
    fn rad(value: f64) -> Angle {
        Angle::from_si(value)
    }
    fn point([x, y, z]: [f64; 3]) -> Point {
        Point::new(metres(x), metres(y), metres(z))
    }
    fn bush(stiffness: f64) -> Option<Value<LinearStiffness>> {
        (stiffness > 0.0).then(|| Value::new(LinearStiffness::from_si(stiffness)))
    }
    fn link(name: &str, fitted: Fitted, body: [f64; 3], axle: [f64; 3]) -> AxleLink {
        AxleLink {
            name: name.to_owned(),
            fitted,
            body: point(body),
            axle: point(axle),
            body_bush: None,
            axle_bush: None,
            body_limit: None,
            axle_limit: None,
        }
    }
    fn rod(body: [f64; 3], axle: [f64; 3]) -> LateralRod {
        LateralRod {
            body: point(body),
            axle: point(axle),
            body_bush: None,
            axle_bush: None,
            body_limit: None,
            axle_limit: None,
        }
    }
    fn straight(links: Vec<AxleLink>, lateral_rod: Option<LateralRod>) -> LiveAxle {
        LiveAxle {
            axle: Axle::Rear,
            wheel: Wheel {
                centre: point([0.0, 0.75, 0.32]),
                camber: Value::new(rad(0.0)),
                toe: Value::new(rad(0.0)),
                loaded_radius: value(0.33),
            },
            lower_links: None,
            upper_links: None,
            links,
            lateral_rod: Stated::from(lateral_rod),
            watt: Stated::Unknown,
            coil_over: Stated::Unknown,
            anti_roll_bar: Stated::Unknown,
            pinion: Some(Pinion { angle: Value::new(rad(0.0)), nose: Some(point([0.25, 0.0, 0.32])) }),
            pitching: Some(Pitching {
                drive_share: Some(Value::new(Ratio::from_si(1.0))),
                brake_share: Some(Value::new(Ratio::from_si(0.4))),
                centre_of_gravity_height: value(0.54),
                wheelbase: value(2.6),
            }),
        }
    }

    /// Lower and upper link, body and axle; lateral rod, body and axle.
    type Points = [[f64; 3]; 6];
    const FOUR: Points = [
        [0.56, 0.42, 0.3],
        [0.02, 0.46, 0.235],
        [0.42, 0.36, 0.425],
        [-0.02, 0.38, 0.455],
        [-0.1, 0.46, 0.36],
        [-0.1, -0.5, 0.335],
    ];
    const PARALLEL: Points = [
        [0.55, 0.42, 0.22],
        [0.0, 0.42, 0.22],
        [0.55, 0.42, 0.42],
        [0.0, 0.42, 0.42],
        [-0.1, 0.48, 0.32],
        [-0.1, -0.48, 0.32],
    ];
    /// Upper links that spread from the axle's middle to the body.
    const ANGLED: Points = [
        [0.56, 0.42, 0.3],
        [0.02, 0.46, 0.235],
        [0.42, 0.42, 0.43],
        [0.03, 0.09, 0.47],
        [-0.1, 0.46, 0.36],
        [-0.1, -0.5, 0.335],
    ];

    fn coil_over() -> AxleCoilOver {
        AxleCoilOver {
            body_eye: point([0.05, 0.4, 0.72]),
            axle_eye: point([-0.05, 0.5, 0.27]),
            spring: Some(CoilSpring {
                rate: Value::new(LinearStiffness::from_si(40_000.0)),
                free_length: value(0.40),
                solid_length: value(0.15),
                seat_offset: value(0.17),
            }),
            damper: Some(Damper {
                open_length: value(0.60),
                closed_length: value(0.36),
                gas_force: Some(Value::new(Force::from_si(150.0))),
            }),
        }
    }
    fn bar(bearings: Mount) -> AxleBar {
        match bearings {
            Mount::Body => AxleBar {
                bearings,
                link_eye: point([0.06, 0.5, 0.3]),
                lever_end: point([0.05, 0.5, 0.44]),
                lever_pivot: point([0.27, 0.4, 0.45]),
            },
            Mount::Axle => AxleBar {
                bearings,
                link_eye: point([0.26, 0.48, 0.47]),
                lever_end: point([0.25, 0.5, 0.31]),
                lever_pivot: point([0.05, 0.5, 0.3]),
            },
        }
    }

    fn four(p: Points) -> LiveAxle {
        let links = vec![link("lower", Fitted::Pair, p[0], p[1]), link("upper", Fitted::Pair, p[2], p[3])];
        let mut model = straight(links, Some(rod(p[4], p[5])));
        model.coil_over = Stated::Given(coil_over());
        model
    }
    fn angled(p: Points) -> LiveAxle {
        let mut model = four(p);
        model.lateral_rod = Stated::Unknown;
        model
    }
    /// Two lower links, one upper one, a rod: nothing is redundant.
    fn three(p: Points) -> LiveAxle {
        let mut model = four(p);
        let [x, _, z] = p[2];
        let [u, _, w] = p[3];
        model.links[1] = link("upper", Fitted::Single, [x, 0.1, z], [u, 0.12, w]);
        model
    }
    fn watt(p: Points, carried_by: Mount, middle: f64) -> LiveAxle {
        let mut model = three(p);
        model.lateral_rod = Stated::Unknown;
        let rod = |crank, outer| WattRod {
            crank: point(crank),
            outer: point(outer),
            crank_bush: None,
            outer_bush: None,
            crank_limit: None,
            outer_limit: None,
        };
        model.watt = Stated::Given(WattLinkage {
            carried_by,
            pivot: point([-0.1, 0.0, middle]),
            upper_rod: rod([-0.1, 0.0, middle + 0.08], [-0.1, -0.45, middle + 0.08]),
            lower_rod: rod([-0.1, 0.0, middle - 0.08], [-0.1, 0.45, middle - 0.08]),
        });
        model
    }
    fn bushed(mut model: LiveAxle, stiffness: [f64; 3]) -> LiveAxle {
        for (link, stiffness) in model.links.iter_mut().zip(stiffness) {
            link.body_bush = bush(stiffness);
        }
        if let Stated::Given(rod) = &mut model.lateral_rod {
            rod.axle_bush = bush(stiffness[2]);
        }
        if let Stated::Given(watt) = &mut model.watt {
            watt.upper_rod.outer_bush = bush(stiffness[2]);
            watt.lower_rod.crank_bush = bush(stiffness[2]);
        }
        model
    }
    fn shifted(mut points: Points, shifts: &[f64]) -> Points {
        for (place, shift) in shifts.iter().enumerate() {
            points[place / 3][place % 3] += shift;
        }
        points
    }

    fn mirror_image(model: &LiveAxle) -> LiveAxle {
        let mut other = model.clone();
        let flip = |point: &mut Point| point.y = Value::new(-point.y.quantity);
        for link in other.links.iter_mut().filter(|link| link.fitted == Fitted::Single) {
            flip(&mut link.body);
            flip(&mut link.axle);
        }
        if let Stated::Given(rod) = &mut other.lateral_rod {
            flip(&mut rod.body);
            flip(&mut rod.axle);
        }
        if let Stated::Given(watt) = &mut other.watt {
            flip(&mut watt.pivot);
            for rod in [&mut watt.upper_rod, &mut watt.lower_rod] {
                flip(&mut rod.crank);
                flip(&mut rod.outer);
            }
        }
        other
    }

    fn several(shifts: &[f64], which: usize) -> LiveAxle {
        let points = shifted(FOUR, shifts);
        match which {
            0 => three(points),
            1 => angled(shifted(ANGLED, shifts)),
            2 => bushed(four(points), [3e6, 8e6, 5e6]),
            3 => bushed(four(points), [0.0, 6e6, 2e6]),
            4 => watt(points, Mount::Axle, points[4][2]),
            _ => watt(points, Mount::Body, points[5][2]),
        }
    }

    #[test]
    fn at_ride_height_the_axle_stands_as_drawn() {
        for model in [
            four(FOUR),
            four(PARALLEL),
            angled(ANGLED),
            three(FOUR),
            watt(FOUR, Mount::Axle, 0.32),
            bushed(four(FOUR), [1e7; 3]),
        ] {
            let on = model.at(metres(0.0), rad(0.0)).unwrap();
            for (found, wanted) in [
                (on.axle_x.si(), 0.0),
                (on.lateral_shift.si(), 0.0),
                (on.axle_z.si(), 0.32),
                (on.axle_pitch.si(), 0.0),
                (on.axle_steer.si(), 0.0),
                (on.left_wheel_y.si(), 0.75),
                (on.right_wheel_y.si(), -0.75),
                (on.left_camber.si(), 0.0),
                (on.greatest_lean.si(), 0.0),
                (on.bind_misfit.si(), 0.0),
            ] {
                assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
            }
        }
    }

    /// Positions of a parallel and of a converging four-link with a rod, by `least_squares` of scipy on the distances and a second, constructive
    /// solution (independent scripts outside the project; residual below 1e-12 m): heave, roll; forward, to the left; pitch of the x axis, yaw in degrees.
    #[test]
    fn one_freedom_leads_where_another_solution_finds_the_axle() {
        let found = [
            (
                -0.075,
                0.11291582687359795,
                0.009233762868823827,
                0.005640358447929442,
                -3.3161032061066407,
                -0.025113940780995502,
                0.3935235104750594,
                0.544423763099742,
            ),
            (
                -0.05,
                0.05347559253561524,
                0.004848815432576958,
                0.0029574553390683263,
                -2.284453882133586,
                -0.0169019754829285,
                0.38180473636566425,
                0.5203321059605777,
            ),
            (
                0.075,
                0.01403493239038676,
                0.002273063532333303,
                0.0013545772073674022,
                4.079892141312968,
                -0.012801841372188552,
                0.3223296141744029,
                0.3978345200162429,
            ),
        ];
        // Whatever gives: at this roll nothing binds.
        for model in [four(FOUR), bushed(four(FOUR), [4e6, 6e6, 9e6]), bushed(four(FOUR), [0.0, 6e6, 0.0])] {
            for (heave, roll, forward, left, pitch, yaw, rod, eyes) in found {
                let on = model.at(metres(heave), rad(f64::to_radians(roll))).unwrap();
                for (found, wanted, within) in [
                    (on.axle_x.si(), forward, 1e-9),
                    (on.lateral_shift.si(), left, 1e-9),
                    (-on.pinion_angle.si().to_degrees(), pitch, 1e-6),
                    (on.axle_steer.si().to_degrees(), yaw, 1e-6),
                    (on.lateral_rod_height.si(), rod, 1e-6),
                    (on.left_eye_length.si(), eyes, 1e-8),
                    (on.bind_misfit.si(), 0.0, 1e-9),
                ] {
                    assert!((found - wanted).abs() < within, "{heave}: {found} {wanted}");
                }
                assert_eq!((on.freedoms, on.redundant), (1, 1));
            }
        }
        // The instant centre in side view and the anti-squat at ride height, by drawing lines; a level rod, which binds less in heave.
        let mut level = FOUR;
        level[5][2] = level[4][2];
        let on = four(level).at(metres(0.0), rad(0.0)).unwrap();
        assert_relative_eq!(on.side_view_centre_x.si(), 1.1723214285714285, max_relative = 1e-9);
        assert_relative_eq!(on.side_view_centre_height.si() - 0.01, 0.37370535714285713, max_relative = 1e-9);
        assert_relative_eq!(on.drive_anti_pitch.si(), 1.575907590759076, max_relative = 1e-9);
    }

    /// Results of the same scripts: five parallel and equal links leave two freedoms, and fit in roll, too.
    #[test]
    fn parallel_and_equal_links_leave_two_freedoms() {
        let model = four(PARALLEL);
        for (heave, roll, forward, left, pitch) in [
            (0.0, 0.0, 0.0, 0.0, 0.0),
            (-0.075, 0.0, 0.005145607275278767, 0.0029480041681285312, 0.0),
            (0.075, 0.0, 0.005145607275278798, 0.002948004168128458, 0.0),
            (0.0, 0.05, 0.0004237932034257648, -0.00029998466373076446, 0.0015630857221185363),
            (0.0, 0.1, 0.0016970610124784735, -0.001199755190816329, 0.012516146392402764),
        ] {
            let on = model.at(metres(heave), rad(roll)).unwrap();
            assert!(
                (on.axle_x.si() - forward).abs() < 1e-9 && (on.lateral_shift.si() - left).abs() < 1e-9,
                "{on:?}"
            );
            assert!(
                (on.pinion_angle.si().to_degrees() + pitch).abs() < 1e-6 && on.bind_misfit.si() < 1e-9,
                "{on:?}"
            );
            assert!(on.axle_steer.si().abs() < 1e-6 || roll != 0.0);
            // Once the rod has pitched a rolled axle a little, the next bit of heave binds.
            assert_eq!((on.freedoms, on.redundant), (if roll == 0.0 { 2 } else { 1 }, 1));
        }
    }

    /// A rod swings on its arc and leads the roll centre: the height where it crosses the centre plane (textbooks; W. F. Milliken, D. L. Milliken,
    /// *Race Car Vehicle Dynamics* (1995), chapter 17, from memory).
    #[test]
    fn a_lateral_rod_swings_on_its_arc_and_leads_the_roll_centre() {
        let model = four(PARALLEL);
        for heave in [-0.08, -0.02, 0.03, 0.09] {
            let on = model.at(metres(heave), rad(0.0)).unwrap();
            let arc = 0.96 - f64::sqrt(0.96 * 0.96 - heave * heave - on.axle_x.si() * on.axle_x.si());
            assert_relative_eq!(on.lateral_shift.si(), arc, max_relative = 1e-10);
            // Parallel links neither steer nor turn the axle.
            assert!(on.axle_steer.si().abs() < 1e-13 && on.axle_pitch.si().abs() < 1e-13);
            let carried = (on.axle_x.si() - 0.55).hypot(heave).hypot(arc);
            assert_relative_eq!(carried, 0.55, max_relative = 1e-12);
        }
        // A rod in the plane of the axle, so that steer in roll does not touch it.
        let mut points = FOUR;
        (points[4], points[5]) = ([0.0, 0.46, 0.38], [0.0, -0.5, 0.3]);
        for model in [three(points), bushed(three(points), [1e6; 3])] {
            for heave in [-0.05, 0.0, 0.04] {
                let on = model.at(metres(heave), rad(0.0)).unwrap();
                // Beside ride height the rod leaves the transverse plane.
                let within = if heave == 0.0 { 1e-9 } else { 3e-3 };
                assert_relative_eq!(
                    on.roll_centre_height.si(),
                    on.lateral_rod_height.si(),
                    max_relative = within
                );
            }
        }
    }

    /// A straight and level Watt linkage leads its pivot on a straight line: shift and roll centre are those of the pivot.
    #[test]
    fn a_watt_linkage_leads_its_pivot() {
        for carried_by in [Mount::Axle, Mount::Body] {
            let model = watt(FOUR, carried_by, 0.3);
            let rest = model.at(metres(0.0), rad(0.0)).unwrap();
            // The pivot stands 0.1 m behind the axle and swings a little as the axle steers in roll.
            let swing = 0.1 * rest.roll_steer.si();
            assert_relative_eq!(rest.roll_centre_height.si() - 0.01 * 0.0, 0.31 + swing, max_relative = 1e-9);
            let rod = four(FOUR).at(metres(0.06), rad(0.0)).unwrap();
            let on = model.at(metres(0.06), rad(0.0)).unwrap();
            assert!(
                on.lateral_shift.si().abs() < 0.2 * rod.lateral_shift.si().abs(),
                "{}",
                on.lateral_shift.si()
            );
            assert_eq!((on.freedoms, on.redundant), (2, 0));
        }
        let mut over = watt(FOUR, Mount::Axle, 0.3);
        over.links = four(FOUR).links;
        let on = bushed(over, [5e6; 3]).at(metres(0.03), rad(0.05)).unwrap();
        assert!(on.redundant == 1 && on.freedoms == 1 && on.bind_force.si() > 1.0);
    }

    /// Anti-squat as the share of the line from the contact point to the height of the centre of gravity over the other axle
    /// (T. D. Gillespie, *Fundamentals of Vehicle Dynamics* (1992), chapter 7; from memory).
    #[test]
    fn anti_squat_is_read_off_the_line_to_the_centre_of_gravity() {
        for upper in [0.38, 0.41, 0.45] {
            let mut points = FOUR;
            (points[2][2], points[5][2]) = (upper, points[4][2]);
            let on = four(points).at(metres(0.0), rad(0.0)).unwrap();
            let slope = on.side_view_centre_height.si() / on.side_view_centre_x.si();
            assert_relative_eq!(on.drive_anti_pitch.si(), slope / (0.54 / 2.6), max_relative = 1e-10);
            assert_relative_eq!(
                on.brake_anti_pitch.si(),
                0.4 * on.drive_anti_pitch.si(),
                max_relative = 1e-12
            );
            let line = |at: f64, from: [f64; 3], to: [f64; 3]| {
                from[2] + (at - from[0]) * (to[2] - from[2]) / (to[0] - from[0])
            };
            let x = on.side_view_centre_x.si();
            let crossing = line(x, points[0], points[1]);
            assert_relative_eq!(crossing, line(x, points[2], points[3]), max_relative = 1e-9);
            assert_relative_eq!(crossing + 0.01, on.side_view_centre_height.si(), max_relative = 1e-9);
        }
    }

    /// With one stiffness in every link the bushes give where rigid links miss, and by as much as the force over the stiffness.
    #[test]
    fn misfit_at_rigid_joints_is_bush_force_over_stiffness() {
        for (model, heave, roll) in
            [(four(FOUR), 0.05, 0.06), (four(FOUR), -0.03, -0.04), (four(ANGLED), 0.02, 0.03)]
        {
            let rigid = model.at(metres(heave), rad(roll)).unwrap();
            assert!(
                rigid.bind_force.si().is_nan()
                    && rigid.bind_moment.si().is_nan()
                    && rigid.bind_roll_stiffness.si().is_nan()
            );
            assert!(rigid.bind_misfit.si() > 1e-5, "{}", rigid.bind_misfit.si());
            for stiffness in [1e6, 8e6] {
                let model = bushed(model.clone(), [stiffness; 3]);
                let on = model.at(metres(heave), rad(roll)).unwrap();
                assert_relative_eq!(on.bind_misfit.si(), rigid.bind_misfit.si(), max_relative = 1e-9);
                assert_relative_eq!(
                    on.lateral_shift.si(),
                    rigid.lateral_shift.si(),
                    max_relative = 1e-9,
                    epsilon = 1e-12
                );
                assert_eq!(on.bind_link, rigid.bind_link);
                let ready = model.prepare().unwrap();
                let pose = ready.linkage.at(heave, roll).unwrap();
                let stretches = &pose.held.stretch.0[..ready.linkage.links.len()];
                let missed: f64 = stretches.iter().map(|stretch| stretch * stretch).sum();
                assert_relative_eq!(missed.sqrt(), rigid.bind_misfit.si(), max_relative = 1e-9);
                let most = stretches.iter().fold(0.0, |most: f64, stretch| most.max(stretch.abs()));
                assert_relative_eq!(on.bind_force.si() / stiffness, most, max_relative = 1e-9);
            }
        }
    }

    #[test]
    fn rigid_links_beside_bushes_keep_their_length() {
        let model = bushed(four(FOUR), [0.0, 3e6, 0.0]);
        let ready = model.prepare().unwrap();
        let pose = ready.linkage.at(0.04, 0.05).unwrap();
        for (place, stretch) in pose.held.stretch.0.iter().enumerate().take(5) {
            assert_eq!(stretch.abs() < 1e-12, ready.linkage.links[place].give == 0.0, "{place} {}", stretch);
        }
        // As stiff bushes in their place do, nearly.
        let (on, near) = (
            model.at(metres(0.04), rad(0.05)).unwrap(),
            bushed(four(FOUR), [1e11, 3e6, 1e11]).at(metres(0.04), rad(0.05)).unwrap(),
        );
        assert_relative_eq!(on.bind_force.si(), near.bind_force.si(), max_relative = 1e-3);
        assert_relative_eq!(on.bind_roll_stiffness.si(), near.bind_roll_stiffness.si(), max_relative = 1e-3);
    }

    /// Every axle with a bar on the body and on itself.
    fn drawable() -> impl Iterator<Item = LiveAxle> {
        (0..12).map(|which| {
            let mut model = several(&[0.0; 18], which / 2);
            model.coil_over = Stated::Given(coil_over());
            model.anti_roll_bar = Stated::Given(bar([Mount::Body, Mount::Axle][which % 2]));
            model.wheel.camber = Value::new(rad(-0.02));
            model
        })
    }

    #[test]
    fn at_ride_height_the_points_are_those_that_were_given() {
        for model in drawable() {
            let points = read::points(&model.points(&[metres(0.0)], &[rad(0.0)]).unwrap());
            let mut given = vec![
                ("axle".to_owned(), "left end", &model.wheel.centre, true),
                ("wheel left".to_owned(), "centre", &model.wheel.centre, true),
            ];
            for link in &model.links {
                let pair = link.fitted == Fitted::Pair;
                let name = if pair { format!("{} left", link.name) } else { link.name.clone() };
                given.push((name.clone(), "body", &link.body, pair));
                given.push((name, "axle", &link.axle, pair));
            }
            let single = |part: &str, point, at| (part.to_owned(), point, at, false);
            if let Stated::Given(rod) = &model.lateral_rod {
                given.extend([
                    single("lateral rod", "body", &rod.body),
                    single("lateral rod", "axle", &rod.axle),
                ]);
            }
            if let Stated::Given(watt) = &model.watt {
                for (name, end, rod) in
                    [("upper rod", "upper end", &watt.upper_rod), ("lower rod", "lower end", &watt.lower_rod)]
                {
                    given.extend([
                        single(name, "crank", &rod.crank),
                        single(name, "outer", &rod.outer),
                        single("bell crank", end, &rod.crank),
                    ]);
                }
                given.push(single("bell crank", "pivot", &watt.pivot));
            }
            let (coil_over, bar) = (model.coil_over.as_ref().unwrap(), model.anti_roll_bar.as_ref().unwrap());
            given.push(("coil-over left".to_owned(), "body eye", &coil_over.body_eye, true));
            given.push(("coil-over left".to_owned(), "axle eye", &coil_over.axle_eye, true));
            given.push(("anti-roll bar".to_owned(), "left link eye", &bar.link_eye, true));
            given.push(("anti-roll bar".to_owned(), "left lever end", &bar.lever_end, true));
            given.push(single("pinion", "nose", model.pinion.as_ref().unwrap().nose.as_ref().unwrap()));
            let mut said = given.len();
            for (part, point, at, pair) in given {
                let (drawn, other) = (at.vector(), mirrored(at.vector()));
                assert!((read::place(&points, &part, point) - drawn).norm() < 1e-12, "{part}, {point}");
                if pair {
                    let (part, point) = (part.replace("left", "right"), point.replace("left", "right"));
                    assert!((read::place(&points, &part, &point) - other).norm() < 1e-12, "{part}, {point}");
                    said += 1;
                }
            }
            // Points that were not given: contact points, the bar's levers on it, the pinion's foot.
            assert_eq!(points.len(), said + 2 + 2 + 1);
            let (foot, pivot) =
                (read::place(&points, "anti-roll bar", "left lever pivot"), bar.lever_pivot.vector());
            assert!((foot.x - pivot.x).hypot(foot.z - pivot.z) < 1e-12);
            let (nose, foot) =
                (read::place(&points, "pinion", "nose"), read::place(&points, "pinion", "foot"));
            assert!((nose - foot - vector(0.25, 0.0, 0.0)).norm() < 1e-12);
        }
    }

    /// The axle carries what is on it; what is rigid keeps its length, and a link on bushes has the length that its forces give it.
    #[test]
    fn what_is_rigid_keeps_its_length_and_links_have_that_of_the_model() {
        let on_axle = |part: &str, point: &str, model: &LiveAxle| match (part, point) {
            ("axle" | "pinion", _) | (_, "axle eye" | "axle" | "centre") => true,
            ("bell crank", "pivot") => model.watt.as_ref().unwrap().carried_by == Mount::Axle,
            ("anti-roll bar", "left lever pivot") => {
                model.anti_roll_bar.as_ref().unwrap().bearings == Mount::Axle
            }
            ("anti-roll bar", "right link eye") => {
                model.anti_roll_bar.as_ref().unwrap().bearings == Mount::Body
            }
            _ => false,
        };
        for model in drawable() {
            let ready = model.prepare().unwrap();
            let rest = read::points(&model.points(&[metres(0.0)], &[rad(0.0)]).unwrap());
            for (heave, roll) in [(-0.06, 0.0), (0.05, 0.0), (0.02, 0.05), (-0.03, -0.04)] {
                let points = read::points(&model.points(&[metres(heave)], &[rad(roll)]).unwrap());
                let pose = ready.linkage.at(heave, roll).unwrap();
                let on = model.at(metres(heave), rad(roll)).unwrap();
                let centre = read::place(&points, "wheel right", "centre");
                let wheel = vector(on.right_wheel_x.si(), on.right_wheel_y.si(), on.right_wheel_z.si());
                assert!((centre - wheel).norm() < 1e-12);
                let eyes = read::place(&points, "coil-over left", "body eye")
                    - read::place(&points, "coil-over left", "axle eye");
                assert!((eyes.norm() - on.left_eye_length.si()).abs() < 1e-12);
                for (place, (part, point, at)) in points.iter().enumerate() {
                    let (left, right) =
                        (read::place(&points, "axle", "left end"), read::place(&points, "axle", "right end"));
                    let drawn = rest[place].2;
                    if on_axle(part, point, &model) {
                        let (a, b) =
                            (read::place(&rest, "axle", "left end"), read::place(&rest, "axle", "right end"));
                        let off = (
                            (*at - left).norm() - (drawn - a).norm(),
                            (*at - right).norm() - (drawn - b).norm(),
                        );
                        assert!(off.0.abs() < 1e-9 && off.1.abs() < 1e-9, "{part}, {point}: {off:?}");
                    }
                    let Some((before, ..)) =
                        place.checked_sub(1).map(|place| &points[place]).filter(|on| on.0 == *part)
                    else {
                        continue;
                    };
                    let found = (*at - points[place - 1].2).norm();
                    let kept = (drawn - rest[place - 1].2).norm();
                    let name = match part.as_str() {
                        "upper rod" => "watt.upper_rod",
                        "lower rod" => "watt.lower_rod",
                        other => other,
                    };
                    if before.starts_with("coil-over") {
                        assert!((found - kept).abs() > 1e-3, "{part}");
                    } else if let Some(link) = ready.names.iter().position(|link| link == name) {
                        let stretch = pose.held.stretch.0[link];
                        assert!((found - kept - stretch).abs() < 1e-9, "{part}: {found} {kept} {stretch}");
                        assert!(ready.linkage.redundant() > 0 || stretch.abs() < 1e-9);
                    } else {
                        assert!((found - kept).abs() < 1e-9, "{part}, {point}: {found} {kept}");
                    }
                }
            }
        }
    }

    #[test]
    fn the_points_of_a_mirror_image_are_those_of_the_other_side() {
        for model in drawable() {
            let points = |model: &LiveAxle, roll: f64| {
                read::points(&model.points(&[metres(0.03)], &[rad(roll)]).unwrap())
            };
            let image = read::mirrored(&points(&mirror_image(&model), -0.04));
            let points = points(&model, 0.04);
            assert_eq!(points.len(), image.len());
            for (part, point, at) in &points {
                let away = (read::place(&image, part, point) - *at).norm();
                assert!(away < 1e-9, "{part}, {point}: {away}");
            }
        }
    }

    #[test]
    fn where_the_axle_does_not_go_its_points_say_why() {
        let mut model = four(FOUR);
        let table = model.points(&[0.0, 0.9].map(metres), &[0.0, 0.02].map(rad)).unwrap();
        let last = table.rows() - 1;
        assert!(table.word("part", last).is_none() && table.word("part", last - 2).is_some());
        assert!(table.reason(last).unwrap().to_string().contains("is over-extended"));
        assert_eq!(["heave", "roll"].map(|name| table.numbers(name).unwrap()[last]), [0.9, 0.02]);
        model.anti_roll_bar =
            Stated::Given(AxleBar { lever_pivot: point([0.09, 0.4, 0.45]), ..bar(Mount::Body) });
        let short = model.points(&[metres(0.14)], &[rad(0.0)]).unwrap();
        assert!(short.reason(0).unwrap().to_string().contains("drop link of the anti_roll_bar"));
    }

    #[test]
    fn no_link_has_the_name_of_another_part() {
        let named = |name: &str, fitted: Fitted| {
            let mut model = three(FOUR);
            model.links[1].name = name.to_owned();
            model.links[1].fitted = fitted;
            model
        };
        let drawn =
            LiveAxle { anti_roll_bar: Stated::Given(bar(Mount::Body)), ..watt(FOUR, Mount::Body, 0.32) };
        for model in [&drawn, &three(FOUR)] {
            let table = model.points(&[metres(0.0)], &[rad(0.0)]).unwrap();
            let own = ["lower left", "lower right", "upper"];
            let parts = (0..table.rows()).filter_map(|row| table.word("part", row));
            assert!(parts.filter(|part| !own.contains(part)).all(|part| OTHER_PARTS.contains(&part)));
        }
        for name in OTHER_PARTS.into_iter().chain(["lower left", "lower right"]) {
            let message = named(name, Fitted::Single).check().unwrap_err().to_string();
            assert_eq!(
                message,
                format!("links[1]: name: {name} is the name of another part: give the link one of its own")
            );
        }
        for name in ["wheel", "coil-over"] {
            let message = named(name, Fitted::Pair).check().unwrap_err().to_string();
            assert!(message.starts_with(&format!("links[1]: name: {name} left is the name")), "{message}");
            assert!(named(name, Fitted::Single).check().is_ok());
        }
        assert!(named("axle", Fitted::Pair).check().is_ok());
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let with = |change: &dyn Fn(&mut LiveAxle)| {
            let mut model = four(FOUR);
            change(&mut model);
            model
        };
        let nan = point([f64::NAN, 0.0, 0.0]);
        for (wrong, key) in [
            (with(&|on| on.links[1].axle = nan.clone()), "links[1].axle: x = NaN"),
            (with(&|on| on.links[1].name = "lower".to_owned()), "links[1]: name: two links are called lower"),
            (with(&|on| on.links[0].name = " ".to_owned()), "links[0]: name is empty"),
            (with(&|on| on.links[0].axle = point([0.0, -0.4, 0.2])), "links[0]: axle: a pair"),
            (
                with(&|on| on.links[0].body_bush = Some(Value::new(LinearStiffness::from_si(0.5)))),
                "links[0].body_bush: stiffness = 0.5",
            ),
            (
                with(&|on| {
                    on.links.pop();
                }),
                "links: 2 links",
            ),
            (
                with(&|on| {
                    on.links[1].fitted = Fitted::Single;
                    on.lateral_rod = Stated::Unknown;
                }),
                "links: three links do not hold the axle sideways",
            ),
            (with(&|on| on.watt = watt(FOUR, Mount::Axle, 0.3).watt), "watt: a lateral rod holds"),
            (with(&|on| on.links[0].body = on.links[0].axle.clone()), "lower left: it is shorter than 1 mm"),
            (
                with(&|on| {
                    on.coil_over = Stated::Given(AxleCoilOver { axle_eye: nan.clone(), ..coil_over() })
                }),
                "coil_over.axle_eye: x = NaN",
            ),
            (
                with(&|on| {
                    on.anti_roll_bar =
                        Stated::Given(AxleBar { lever_end: point([0.27, 0.4, 0.45]), ..bar(Mount::Body) })
                }),
                "anti_roll_bar.lever_end",
            ),
            (
                angled(PARALLEL),
                "links: all links lie in parallel planes along the vehicle and nothing holds the axle sideways",
            ),
            (
                with(&|on| {
                    on.links[1].body = point([0.56, 0.42, 0.3]);
                    on.links[1].axle = point([0.02, 0.46, 0.235]);
                }),
                "links: nothing keeps the axle from turning about its own length",
            ),
            (
                LiveAxle {
                    lateral_rod: Stated::Given(rod([0.3, 0.4, 0.3], [-0.2, 0.4, 0.3])),
                    ..four(PARALLEL)
                },
                "links: all links lie in parallel planes",
            ),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(key), "{message}");
            assert!(wrong.at(metres(0.0), rad(0.0)).is_err() && wrong.travel_range(rad(0.0)).is_err());
        }
    }

    #[test]
    fn beyond_its_range_the_refusal_says_which_link_and_how_far() {
        for model in [
            angled(ANGLED),
            three(FOUR),
            watt(FOUR, Mount::Body, 0.32),
            four(FOUR),
            bushed(four(FOUR), [5e6; 3]),
        ] {
            for roll in [0.0, 0.05] {
                let range = model.travel_range(rad(roll)).unwrap();
                assert!(range.droop.si() < -0.15 && range.bump.si() > 0.15, "{range:?}");
                for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                    assert!(model.at(metres(limit * (1.0 - 1e-3)), rad(roll)).is_ok(), "{limit}");
                    let message = model.at(metres(limit * (1.0 + 1e-3)), rad(roll)).unwrap_err().to_string();
                    assert!(
                        message.contains(&format!("where {end} is over-extended"))
                            && message.contains(&format!("{:.1}", limit * 1e3)),
                        "{message}"
                    );
                }
            }
        }
        for (roll, side) in [(-0.95, "-54.4"), (0.95, "54.4")] {
            let message = four(FOUR).at(metres(0.0), rad(roll)).unwrap_err().to_string();
            assert!(
                message.starts_with(&format!("roll = {side}")) && message.contains("over-extended"),
                "{message}"
            );
        }
        // A drop link that is too short for the travel.
        let mut model = four(FOUR);
        model.anti_roll_bar =
            Stated::Given(AxleBar { lever_pivot: point([0.09, 0.4, 0.45]), ..bar(Mount::Body) });
        let message = model.at(metres(0.14), rad(0.0)).unwrap_err().to_string();
        assert!(
            message.contains("drop link of the anti_roll_bar") && message.contains(" mm and "),
            "{message}"
        );
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(16))]

        /// A row of a table is what the model says alone, to the bit, whatever the rows before it found or refused.
        #[test]
        fn a_row_is_the_position_alone_to_the_bit(
            shifts in prop::collection::vec(-0.02..0.02, 18), which in 0..6_usize, fitted in prop::collection::vec(any::<bool>(), 8),
            rows in prop::collection::vec((-0.1..0.1_f64, -0.15..0.15_f64, 0..12_usize), 4),
        ) {
            let mut model = several(&shifts, which);
            if !fitted[0] {
                model.coil_over = Stated::Unknown;
            } else if let Stated::Given(on) = &mut model.coil_over {
                if !fitted[1] {
                    on.spring = None;
                }
                if !fitted[2] {
                    on.damper = None;
                }
            }
            if fitted[3] {
                model.anti_roll_bar = Stated::Given(bar(if fitted[4] { Mount::Axle } else { Mount::Body }));
            }
            if !fitted[5] {
                model.pinion = None;
            }
            if !fitted[6] {
                model.pitching = None;
            }
            if fitted[7] {
                model.links[1].axle_limit = Some(Value::new(rad(0.1)));
            }
            let wild = |on: f64, kind: usize| match kind {
                0 => f64::NAN,
                1 => 11.0,
                2 => 0.9,
                _ => on,
            };
            let heaves: Vec<Length> = rows.iter().map(|(heave, _, kind)| metres(wild(*heave, *kind))).collect();
            let rolls: Vec<Angle> = rows.iter().map(|(_, roll, kind)| rad(wild(*roll, *kind * 5 % 12))).collect();
            let Ok(table) = model.table(&heaves, &rolls) else { return Ok(()) };
            let (ready, mut row) = (model.prepare().unwrap(), 0);
            for heave in &heaves {
                for roll in &rolls {
                    let alone = alone(["heave", "roll"], (*heave, *roll), ready.at(*heave, *roll));
                    prop_assert_eq!(difference((&table, row), (&alone, 0)), None);
                    row += 1;
                }
            }
        }
    }

    proptest! {
        /// Links keep their length to 1e-12 m where nothing is redundant; otherwise the forces of the bushes are in balance.
        #[test]
        fn links_keep_their_length_or_are_in_balance(
            shifts in prop::collection::vec(-0.02..0.02, 18), heave in -0.09..0.09, roll in -0.1..0.1, which in 0..6_usize,
        ) {
            let model = several(&shifts, which);
            let Ok(ready) = model.prepare() else { return Ok(()) };
            let Some(pose) = ready.linkage.at(heave, roll) else { return Ok(()) };
            let links = &ready.linkage.links;
            let middle = pose.frame.middle;
            prop_assert!((middle.z - 0.32 - heave).abs() < 1e-15);
            let across = pose.frame.direction(vector(0.0, 1.0, 0.0));
            prop_assert!((across.z.asin() - roll).abs() < 1e-12, "{} {roll}", across.z.asin());
            let mut balance = [0.0; 4];
            let stretches = &pose.held.stretch.0[..links.len()];
            for (lane, (link, stretch)) in links.iter().zip(stretches).enumerate() {
                if link.axle_crank == Vector::default() && link.body_crank == Vector::default() {
                    let again = (middle + pose.frame.direction(link.axle) - link.body).norm();
                    prop_assert!((again - pose.held.length.0[lane]).abs() < 1e-14);
                }
                let force = stretch / if link.give > 0.0 { link.give } else { 1.0 };
                for (sum, row) in balance.iter_mut().zip(pose.held.row) {
                    *sum += force * row.0[lane];
                }
                if ready.linkage.redundant() == 0 {
                    prop_assert!(stretch.abs() < 1e-12, "{}", stretch);
                }
            }
            if which == 3 {
                for (link, stretch) in links.iter().zip(stretches).filter(|(link, _)| link.give == 0.0) {
                    prop_assert!(stretch.abs() < 1e-12, "{} {}", stretch, link.give);
                }
            } else if ready.linkage.redundant() == 1 {
                let most = stretches.iter().map(|stretch| stretch.abs()).fold(0.0, f64::max);
                let scale = most * links.iter().map(|link| if link.give > 0.0 { 1.0 / link.give } else { 1.0 }).fold(0.0, f64::max);
                prop_assert!(balance.iter().all(|sum| sum.abs() < 1e-7 * scale + 1e-6), "{balance:?} {scale}");
            }
        }

        /// Analytic derivatives against differences of positions; energy against forces and rates in heave and in roll.
        #[test]
        fn rates_are_derivatives(
            shifts in prop::collection::vec(-0.015..0.015, 18), heave in -0.06..0.06, roll in -0.07..0.07, which in 0..6_usize, mount in any::<bool>(),
        ) {
            let mut model = several(&shifts, which);
            model.anti_roll_bar = Stated::Given(bar(if mount { Mount::Axle } else { Mount::Body }));
            let at = |z: f64, phi: f64| model.at(metres(z), rad(phi));
            let h = 1e-4;
            let (Ok(on), Ok(low), Ok(high), Ok(right), Ok(left)) =
                (at(heave, roll), at(heave - h, roll), at(heave + h, roll), at(heave, roll - h), at(heave, roll + h)) else { return Ok(()) };
            let up = |of: fn(&AxlePosition) -> f64| (of(&high) - of(&low)) / (2.0 * h);
            let turn = |of: fn(&AxlePosition) -> f64| (of(&left) - of(&right)) / (2.0 * h);
            let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
            prop_assert!(near(up(|on| on.axle_steer.si()) * BUMP, on.heave_steer.si(), 1e-7));
            prop_assert!(near(turn(|on| on.axle_steer.si()), on.roll_steer.si(), 1e-6));
            prop_assert!(near(up(|on| on.left_eye_length.si()), -on.left_motion_ratio.si(), 1e-6));
            prop_assert!(near(up(|on| on.right_eye_length.si()), -on.right_motion_ratio.si(), 1e-6));
            let travel = turn(|on| on.left_wheel_z.si());
            prop_assert!(near(turn(|on| on.left_eye_length.si()), -on.left_roll_motion_ratio.si() * travel, 1e-6));
            let travel = travel - turn(|on| on.right_wheel_z.si());
            let lever = if mount { 0.2_f64.hypot(0.01) } else { 0.22_f64.hypot(0.01) };
            prop_assert!(near(turn(|on| on.bar_twist.si()) * lever, on.bar_motion_ratio.si() * travel, 1e-5));
            // Virtual work: the energy of coils and gas, and the wheel's forces and rates.
            let energy = |on: &AxlePosition| {
                [(on.left_spring_used.si(), on.left_eye_length.si()), (on.right_spring_used.si(), on.right_eye_length.si())]
                    .iter().map(|(used, eyes)| 20_000.0 * used * used - 150.0 * eyes).sum::<f64>()
            };
            let force = on.left_wheel_force.si() + on.right_wheel_force.si();
            prop_assert!(near((energy(&high) - energy(&low)) / (2.0 * h), force, 0.01), "{force}");
            prop_assert!(near(up(|on| on.left_wheel_force.si()), on.left_wheel_rate.si(), 2.0));
            prop_assert!(near(up(|on| on.right_wheel_force.si()), on.right_wheel_rate.si(), 2.0));
            // The moment of the springs about the roll axis: base over track is in the ratio.
            let moment = |on: &AxlePosition, track: [f64; 2]| {
                let forces = [(on.left_wheel_force.si() / on.left_motion_ratio.si(), on.left_roll_motion_ratio.si(), track[0]),
                    (on.right_wheel_force.si() / on.right_motion_ratio.si(), on.right_roll_motion_ratio.si(), track[1])];
                forces.iter().map(|(force, ratio, travel)| force * ratio * travel).sum::<f64>()
            };
            let tracks = |on: &AxlePosition| {
                // Height of the wheels' centres over roll: their level distance from the axle's middle.
                let (y, x) = (on.left_wheel_y.si() - on.right_wheel_y.si(), on.left_wheel_x.si() - on.right_wheel_x.si());
                [0.5 * y.hypot(x), -0.5 * y.hypot(x)]
            };
            let stiffness = (moment(&left, tracks(&left)) - moment(&right, tracks(&right))) / (2.0 * h);
            prop_assert!(near(stiffness, on.roll_stiffness.si(), 2.0), "{stiffness} {}", on.roll_stiffness.si());
            // The moment of links that bind, and its slope.
            if on.bind_force.si().is_finite() {
                let slope = turn(|on| on.bind_moment.si());
                let size = 1e-4 * (1.0 + slope.abs()) + 1e-3 * on.bind_moment.si().abs();
                prop_assert!(near(slope, on.bind_roll_stiffness.si(), size), "{slope} {}", on.bind_roll_stiffness.si());
            }
            // The contact points, held in the axle, move as their path says.
            let path = |on: &AxlePosition| (on.axle_x.si(), on.pinion_x.si(), on.pinion_z.si());
            let ((a, nose, height), (b, other, lower)) = (path(&high), path(&low));
            prop_assert!((a - b).is_finite() && (nose - other).is_finite() && (height - lower).is_finite());
        }

        /// Rigid links that are compatible keep their length to the ends of travel and roll.
        #[test]
        fn links_keep_their_length_to_the_ends_of_travel(
            shifts in prop::collection::vec(-0.05..0.05, 18), nearness in 0.0..10.0_f64, up in any::<bool>(), roll in -0.7..0.7_f64, which in 0..6_usize,
        ) {
            let model = several(&shifts, which);
            let Ok(ready) = model.prepare() else { return Ok(()) };
            let Some([low, high]) = ready.linkage.range(roll) else { return Ok(()) };
            let heave = if up { high } else { low }.place * (1.0 - 10.0_f64.powf(-nearness));
            let Some(pose) = ready.linkage.at(heave, roll) else { return Ok(()) };
            let rigid = ready.linkage.redundant() == 0;
            for (link, stretch) in ready.linkage.links.iter().zip(pose.held.stretch.0) {
                prop_assert!(stretch.abs() < 1e-10 || !rigid && (which != 3 || link.give > 0.0), "{}", stretch);
            }
        }

        /// Left and right exchanged: shift, steer and roll change their sign.
        #[test]
        fn a_mirror_image_moves_as_one(shifts in prop::collection::vec(-0.02..0.02, 18), heave in -0.07..0.07, roll in -0.08..0.08, which in 0..6_usize) {
            let model = several(&shifts, which);
            let other = mirror_image(&model);
            let (Ok(one), Ok(two)) = (model.at(metres(heave), rad(roll)), other.at(metres(heave), rad(-roll))) else { return Ok(()) };
            for (a, b) in [
                (one.axle_x, two.axle_x), (one.lateral_shift, -two.lateral_shift), (one.left_eye_length, two.right_eye_length),
                (one.roll_centre_height, two.roll_centre_height), (one.left_wheel_y, -two.right_wheel_y), (one.bind_misfit, two.bind_misfit),
            ] {
                prop_assert!((a - b).si().abs() < 1e-9, "{a:?} {b:?}");
            }
            for (a, b) in [(one.axle_steer, -two.axle_steer), (one.axle_pitch, two.axle_pitch), (one.left_camber, two.right_camber), (one.left_toe, two.right_toe)] {
                prop_assert!((a - b).si().abs() < 1e-9, "{a:?} {b:?}");
            }
            prop_assert!((one.roll_steer.si() - two.roll_steer.si()).abs() < 1e-7);
            prop_assert!((one.roll_stiffness.si() - two.roll_stiffness.si()).abs() < 1e-2);
        }
    }
}
