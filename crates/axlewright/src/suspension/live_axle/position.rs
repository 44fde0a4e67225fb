//! Results at one position of the axle: position, springs, strokes, joints, roll centre and anti-squat.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::bar_lever::{Lever, mirrored, out_of_reach};
use super::linkage::Pose;
use super::parts::{AxleCoilOver, Strut};
use super::prepared::{End, PreparedLiveAxle, seen};
use super::range::Went;
use super::twist::Twist;
use crate::base::document::{Stated, Value};
use crate::base::numeric::root;
use crate::base::table::record;
use crate::base::text::said;
use crate::suspension::TravelRange;
use crate::suspension::kinematics::clearance::clear;
use crate::suspension::kinematics::lanes::{Lanes, Vectors};
use crate::suspension::kinematics::slope::BUMP;
use crate::suspension::kinematics::slope::centre;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::parts::Axle;
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, RotationalStiffness, Torque};
use crate::{Error, Result, cannot, valid};

/// Steps on the way to an end in which a drop link is looked at.
const STEPS: u32 = 64;

record! {
    /// The axle at one heave and roll; a result that is not known is not a number.
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
        /// Change of `axle_steer` over 25 mm of bump, at the slope here.
        pub heave_steer: Angle,
        /// Change of `axle_steer` over roll, at the slope here. If it is positive, the axle steers out of the turn as the body leans: oversteer of a rear axle, understeer of a front axle.
        pub roll_steer: Ratio,
        /// Turn of the axle about its own length, positive with its front down.
        pub axle_pitch: Angle,
        /// Angle of the pinion's axis to the body's x, positive with the nose up.
        pub pinion_angle: Angle,
        /// Change of `pinion_angle` from ride height; without a pinion, that of a level pinion.
        pub pinion_angle_change: Angle,
        /// Joint on the pinion's nose, forward.
        pub pinion_x: Length,
        /// Joint on the pinion's nose, to the left.
        pub pinion_y: Length,
        /// Joint on the pinion's nose, up.
        pub pinion_z: Length,
        /// Height of the roll centre above the ground: the roll axis crosses the centre plane there, in the transverse plane through the axle's middle. Sideways it moves with `lateral_shift`.
        pub roll_centre_height: Length,
        /// Angle of the roll axis to the body's x, positive if it rises forward.
        pub roll_axis_angle: Angle,
        /// Height of the lateral rod above the ground, on the centre plane; without steer in roll, it is the height of the roll centre.
        pub lateral_rod_height: Length,
        /// Instant centre of the axle in side view, in heave, forward; infinite if there is none.
        pub side_view_centre_x: Length,
        /// Height of the side-view instant centre above the ground; infinite with its place, unless the path is level.
        pub side_view_centre_height: Length,
        /// Forward lean of the path in bump of the point midway between the contact points, held in the axle.
        pub side_view_angle: Angle,
        /// Anti-squat of a rear axle, or anti-lift of a front axle, in drive; the housing takes the torque. 100 % cancels all pitch at that axle.
        pub drive_anti_pitch: Ratio,
        /// Anti-lift of a rear axle, or anti-dive of a front axle, in braking; the housing takes the torque. 100 % cancels all pitch at that axle.
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
        /// Length between the eyes of the left coil-over.
        pub left_eye_length: Length,
        /// Shortening of the left coil-over over heave.
        pub left_motion_ratio: Ratio,
        /// Shortening of the left coil-over over the travel of the left wheel in roll; for upright springs, their base over the track.
        pub left_roll_motion_ratio: Ratio,
        /// Length between the seats of the left spring.
        pub left_spring_length: Length,
        /// Force in the coil, compression positive; zero if the coil is loose.
        pub left_spring_force: Force,
        /// Compression of the spring from its free length.
        pub left_spring_used: Length,
        /// Remaining travel of the spring until it is solid, along its axis.
        pub left_spring_remaining: Length,
        /// Used stroke of the left damper, from fully open.
        pub left_damper_used: Length,
        /// Remaining stroke of the left damper, to fully closed; negative past its end.
        pub left_damper_remaining: Length,
        /// Force of coil and gas at the left wheel in heave: their force times `left_motion_ratio`.
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
        /// Length between the eyes of the right coil-over.
        pub right_eye_length: Length,
        /// Shortening of the right coil-over over heave.
        pub right_motion_ratio: Ratio,
        /// Shortening of the right coil-over over the travel of the right wheel in roll: of upright springs their base over the track.
        pub right_roll_motion_ratio: Ratio,
        /// Length between the seats of the right spring.
        pub right_spring_length: Length,
        /// Force in the coil, compression positive; zero if the coil is loose.
        pub right_spring_force: Force,
        /// Compression of the spring from its free length.
        pub right_spring_used: Length,
        /// Remaining travel of the spring until it is solid, along its axis.
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
        pub peak_lean: Angle,
        /// Joint with that lean: its link and its end, `body`, `axle`, `crank` or `outer`.
        pub peak_lean_joint: String,
        /// Remaining angle until the first joint with a given limit reaches it.
        pub joint_remaining: Angle,
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
        /// Peak tension or compression of a link by that; not a number where no bush gives.
        pub bind_force: Force,
        /// Link that binds or, if no bush gives, the one with the largest misfit; `none` if nothing binds.
        pub bind_link: String,
        /// Moment of the binding links on the axle about its roll axis, against roll.
        pub bind_moment: Torque,
        /// Change of that over roll, at the slope that it has here.
        pub bind_roll_stiffness: RotationalStiffness,
        /// Number of joints without a given limit: `joint_remaining` does not count them.
        pub joints_without_limit: i64,
    }
    lent pub(in crate::suspension) Found<'a>;
}

/// Share by which the slopes of both sides may differ by rounding.
#[cfg(feature = "sheet")]
const ALIKE: f64 = 1e-12;

/// Both coil-overs, the left one first: length between the eyes, and its first and second derivative along heave and roll.
struct Strokes {
    eyes: Lanes<2>,
    heave: [Lanes<2>; 2],
    roll: [Lanes<2>; 2],
}

impl PreparedLiveAxle<'_> {
    /// The axle at a heave and roll: see [`LiveAxle::at`](crate::suspension::LiveAxle::at).
    pub fn at(&self, heave: Length, roll: Angle) -> Result<AxlePosition> {
        self.found(heave, roll).map(AxlePosition::from)
    }

    /// Travel of the linkage in droop and bump: see [`LiveAxle::travel_range`](crate::suspension::LiveAxle::travel_range).
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        valid! { roll: (-1) <= .. <= 1 ; "plausibility limit: no axle rolls by 57 deg"; }
        let [droop, bump] = self.linkage.range(roll.si()).ok_or_else(|| self.locked(roll))?;
        if let Some(stop) = [droop, bump].into_iter().find(|stop| stop.given_up) {
            let (place, why) = (said(Length::from_si(stop.place)), self.why(&stop));
            return Err(cannot!(roll; "ends heave at {place}: {why}"));
        }
        let [droop, bump] = [droop, bump].map(|stop| match self.bar_end(stop.place, roll.si()) {
            Some(place) => (Length::from_si(place), "anti-roll bar".to_owned()),
            None => (Length::from_si(stop.place), self.name(stop.link).to_owned()),
        });
        if [&droop, &bump].iter().all(|(place, _)| place.si() == 0.0) {
            return Err(self.drop_link(Length::from_si(0.0), roll));
        }
        Ok(TravelRange { droop: droop.0, droop_end: droop.1, bump: bump.0, bump_end: bump.1 })
    }

    /// Heave on the way to an end at which a drop link of the bar lines up with its lever; none if it goes along, or where there is no bar.
    fn bar_end(&self, end: f64, roll: f64) -> Option<f64> {
        let levers = self.levers.as_ref()?;
        let goes = |pose: &Pose| levers.iter().all(|lever| lever.turn(seen(lever, pose)).is_some());
        let mut pose = self.linkage.at(0.0, roll)?;
        if !goes(&pose) {
            return Some(0.0);
        }
        let (clear, on) = self.bar_clear(levers, &pose, end, roll);
        pose = on;
        let (mut good, mut bad) = (end * f64::from(clear) / f64::from(STEPS), None);
        let step = |from: &Pose, heave: f64| {
            let (pose, went) = self.linkage.towards(from, heave, roll);
            (went == Went::Whole).then_some(pose)
        };
        for place in clear + 1..=STEPS {
            let heave = end * f64::from(place) / f64::from(STEPS);
            let next = step(&pose, heave)?;
            if !goes(&next) {
                bad = Some(heave);
                break;
            }
            (pose, good) = (next, heave);
        }
        let reserve = |heave: f64| {
            let pose = step(&pose, heave)?;
            levers.iter().map(|lever| lever.clearance(seen(lever, &pose).0)).reduce(f64::min)
        };
        let found =
            root("heave", |heave| reserve(heave).unwrap_or(f64::NAN), good, bad?, 0.0).unwrap_or(good);
        let near = [0.0, 1e-14, 1e-13, 1e-12].map(|back: f64| found - back.copysign(end));
        near.into_iter().find(|heave| step(&pose, *heave).is_some_and(|on| goes(&on))).or(Some(good))
    }

    /// Fine steps to an end over which coarse ones show that both drop links stay clear of their dead centres, and the axle there.
    fn bar_clear(&self, levers: &[Lever; 2], from: &Pose, end: f64, roll: f64) -> (u32, Box<Pose>) {
        const COARSE: u32 = 8;
        let mut poses = vec![Box::new(*from)];
        for step in 1..=STEPS / COARSE {
            let heave = end * f64::from(step * COARSE) / f64::from(STEPS);
            let (pose, went) = self.linkage.towards(&poses[poses.len() - 1], heave, roll);
            if went != Went::Whole {
                break;
            }
            poses.push(pose);
        }
        let clearances = |lever: &Lever| poses.iter().map(|on| lever.clearance(seen(lever, on).0)).collect();
        let both: [Vec<f64>; 2] = levers.each_ref().map(clearances);
        let stays = |step: usize| {
            // Before ride height stands the step beyond the first one.
            let before = if step == 1 { [2, 1, 0] } else { [step - 2, step - 1, step] };
            poses.len() > 2 && both.iter().all(|on| clear(on[before[0]], on[before[1]], on[before[2]]))
        };
        let steps = (1..poses.len()).take_while(|step| stays(*step)).count();
        (steps as u32 * COARSE, poses.swap_remove(steps))
    }

    /// Everything at a heave and roll; what is not known stays as it is.
    pub(super) fn find<'a>(&'a self, heave: Length, roll: Angle, on: &mut Found<'a>) -> Result<()> {
        let pose = self.pose(heave, roll)?;
        self.results(&pose, on).ok_or_else(|| self.drop_link(heave, roll))
    }

    /// Everything at a heave and roll, its words lent.
    pub(in crate::suspension) fn found(&self, heave: Length, roll: Angle) -> Result<Found<'_>> {
        let mut on = Found::unknown();
        self.find(heave, roll, &mut on)?;
        Ok(on)
    }

    /// The bar does not go along.
    pub(super) fn drop_link(&self, heave: Length, roll: Angle) -> Error {
        out_of_reach(heave, roll, |heave, roll| {
            self.linkage
                .at(heave.si(), roll.si())
                .is_some_and(|pose| self.results(&pose, &mut Found::unknown()).is_some())
        })
    }

    /// Everything at a position; none where the bar's drop links do not reach.
    pub(super) fn results<'a>(&'a self, pose: &Pose, on: &mut Found<'a>) -> Option<()> {
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
    pub(super) fn wheel(&self, pose: &Pose, place: usize) -> [Vector; 3] {
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

    /// Length of the coil-overs at ride height, motion ratio and its gradient on the left and on the right, and the base of both in roll, on
    /// which springs of the left ratio have the mean of both stiffnesses.
    #[cfg(feature = "sheet")]
    pub(super) fn stroke_at_ride(&self) -> Option<[f64; 6]> {
        let coil_over = self.model.coil_over.as_ref()?;
        let Strokes { eyes, heave, roll } = self.strokes(coil_over, &self.linkage.rest);
        let [slope, bend] = heave.map(|on| on.0[0]);
        let [left, right] = roll[0].0;
        let alike = |one: f64, other: f64| (one - other).abs() <= ALIKE * one.abs();
        let base = 2.0 * left / slope;
        if alike(slope, heave[0].0[1]) && alike(left, -right) {
            return Some([eyes.0[0], -slope, -bend, -slope, -bend, base]);
        }
        let mean = (0.5 * (left * left + right * right)).sqrt();
        Some([eyes.0[0], -slope, -bend, -heave[0].0[1], -heave[1].0[1], (2.0 * mean / slope).abs()])
    }

    /// Tangent stiffness in roll at ride height of both coil-overs of this rate about the roll centre, that on the left under this force on
    /// its axis and both under the same load: as the body rolls about its roll centre, the axle heaves a little.
    #[cfg(feature = "sheet")]
    pub(super) fn stiffness_about_roll_centre(&self, rate: f64, left_force: f64) -> Option<f64> {
        let pose = &self.linkage.rest;
        let Strokes { heave, roll, .. } = self.strokes(self.model.coil_over.as_ref()?, pose);
        let [left, right] = heave[0].0;
        let forces = [left_force, left_force * left / right];
        let springs: f64 =
            [0, 1].map(|side| rate * roll[0].0[side].powi(2) - forces[side] * roll[1].0[side]).iter().sum();
        let above = pose.roll.velocity.y / pose.roll.spin.x;
        Some(springs - 2.0 * left_force * left * above)
    }

    /// Heave without roll at which the eyes of the left (0) or the right coil-over are so far apart.
    #[cfg(feature = "sheet")]
    pub(super) fn heave_for(&self, length: f64, side: usize) -> Result<f64> {
        let Stated::Given(coil_over) = &self.model.coil_over else { return Ok(f64::NAN) };
        let mut heave = 0.0;
        for _ in 0..20 {
            let Some(pose) = self.linkage.at(heave, 0.0) else { break };
            let Strokes { eyes, heave: strokes, .. } = self.strokes(coil_over, &pose);
            let (off, [slope, bend]) = (eyes.0[side] - length, strokes.map(|on| on.0[side]));
            if off.abs() <= 1e-12 {
                return Ok(heave);
            }
            heave -= 2.0 * off * slope / (2.0 * slope * slope - off * bend); // Halley's step
        }
        let [length, drawn] = [length, self.strokes(coil_over, &self.linkage.rest).eyes.0[side]]
            .map(|on| said(Length::from_si(on)));
        Err(cannot!(
            "the linkage does not bring the eyes of the coil-over {length} apart; at ride height they are {drawn} apart"
        ))
    }

    /// Length between the eyes of the left (0) or the right coil-over at a heave without roll; none beyond the linkage or without a coil-over.
    #[cfg(feature = "sheet")]
    pub(super) fn eyes_at(&self, heave: Length, side: usize) -> Option<Length> {
        let coil_over = self.model.coil_over.as_ref()?;
        let pose = self.linkage.at(heave.si(), 0.0)?;
        Some(Length::from_si(self.strokes(coil_over, &pose).eyes.0[side]))
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
        let (mut peak, mut most) = (-1.0, None);
        let (mut remaining, mut first) = (f64::NAN, None);
        for joint in &self.joints {
            let held = pose.held.along.lane(joint.link);
            let along = match joint.end {
                End::Body => held,
                End::Axle => pose.frame.direction_here(held),
                End::CrankOnBody => pose.frame.crank_at_rest(held),
                End::CrankOnAxle => pose.frame.crank_at_rest(pose.frame.direction_here(held)),
            };
            let apart = (along - joint.drawn).square();
            if apart > peak {
                (peak, most) = (apart, Some(joint));
            }
            if let Some(limit) = joint.limit {
                let here = limit - lean(apart);
                if remaining.is_nan() || here < remaining {
                    (remaining, first) = (here, Some(joint));
                }
            }
        }
        on.peak_lean = Angle::from_si(lean(peak));
        on.peak_lean_joint = most.map_or("", |joint| self.joint(joint));
        on.joint_remaining = Angle::from_si(remaining);
        on.first_joint = first.map_or("not known", |joint| self.joint(joint));
        let without_limit = self.joints.iter().filter(|joint| joint.limit.is_none()).count();
        on.joints_without_limit = i64::try_from(without_limit).unwrap_or(i64::MAX);
    }
}

/// Angle between unit vectors whose ends are this far apart, squared.
fn lean(apart: f64) -> f64 {
    2.0 * (0.5 * apart.max(0.0).sqrt()).min(1.0).asin()
}
