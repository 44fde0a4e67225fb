//! Results of a wheel on its linkage, for every independent suspension.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it; a chunk is never empty"
)]

use super::linkage::{Body, Pose};
use super::prepared::{PreparedLinkage, Upper, in_range, locked};
use super::range::Reach;
use crate::base::table::{Filling, Table, record};
use crate::suspension::TravelRange;
use crate::suspension::kinematics::slope::{BUMP, centre};
use crate::suspension::kinematics::vector::{Scalar, Two, Vector};
use crate::suspension::parts::{Axle, BrakePlace, JointLimits};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, Torque};
use crate::{Result, valid};

record! {
    /// The wheel at one travel and rack travel; a result that is not known is not a number.
    #[derive(Debug, Clone, PartialEq)]
    pub struct WheelPosition {
        /// Wheel centre, forward in the body's axes.
        pub wheel_x: Length,
        /// Wheel centre, to the left.
        pub wheel_y: Length,
        /// Wheel centre, up.
        pub wheel_z: Length,
        /// Half track: from the vehicle's centre plane to the contact point, which lies a loaded radius from the wheel's centre in the wheel's plane.
        pub half_track: Length,
        /// Change of the half track from ride height.
        pub half_track_change: Length,
        /// Movement of the wheel centre from ride height, positive for a longer wheelbase.
        pub wheelbase_change: Length,
        /// Camber, positive with the top of the wheel outboard.
        pub camber: Angle,
        /// Change of camber over 25 mm of bump, at the slope here.
        pub camber_change: Angle,
        /// Toe of this wheel, positive with its front inboard.
        pub toe: Angle,
        /// Change of toe over 25 mm of bump, at the slope that it has here.
        pub bump_steer: Angle,
        /// Caster, positive with the upper end of the steering axis to the rear.
        pub caster: Angle,
        /// Kingpin inclination, positive with the upper end of the steering axis inboard.
        pub kingpin_inclination: Angle,
        /// Distance from the steering axis outboard to the contact point, at the ground, across the wheel's plane.
        pub scrub_radius: Length,
        /// Distance from the contact point forward to the steering axis, at the ground, in the wheel's plane.
        pub mechanical_trail: Length,
        /// Instant centre of the upright in front view, in the transverse plane through the contact point, to the left; infinite if there is none.
        pub front_view_centre_y: Length,
        /// Height of the front-view instant centre above the ground under this wheel; infinite with its place, unless the path is level.
        pub front_view_centre_height: Length,
        /// Height of the roll centre above the ground: the line from contact point to instant centre meets the centre plane there. It holds while the other wheel is the mirror image of this one.
        pub roll_centre_height: Length,
        /// Instant centre of the upright in side view with the brake held, forward; infinite if there is none.
        pub side_view_centre_x: Length,
        /// Height of the side-view instant centre above the ground; infinite with its place, unless the path is level.
        pub side_view_centre_height: Length,
        /// Forward lean of the contact point's path in bump, with the brake held.
        pub side_view_angle: Angle,
        /// Forward lean of the path of the wheel's centre in bump.
        pub wheel_path_angle: Angle,
        /// Anti-dive of a front axle, or anti-lift of a rear axle, in braking; 100 % cancels all pitch at that axle.
        pub brake_anti_pitch: Ratio,
        /// Anti-squat of a rear axle, or anti-lift of a front axle, in drive; 100 % cancels all pitch at that axle.
        pub drive_anti_pitch: Ratio,
        /// Length between the eyes of the coil-over.
        pub eye_length: Length,
        /// Shortening of the spring over wheel travel.
        pub motion_ratio: Ratio,
        /// Motion ratio of the damper; it differs from the coil's if the coil has seats of its own.
        pub damper_motion_ratio: Ratio,
        /// Length of the spring between its seats.
        pub spring_length: Length,
        /// Force in the coil, compression positive; zero if the coil is loose.
        pub spring_force: Force,
        /// Force of coil, gas and torsion bar at the wheel, `F r`.
        pub wheel_force: Force,
        /// Tangent rate at the wheel of coil, gas and torsion bar, with the term of the changing motion ratio; anti-roll bar and tyre are not included.
        pub wheel_rate: LinearStiffness,
        /// Compression of the spring from its free length.
        pub spring_used: Length,
        /// Until it is solid, along itself.
        pub spring_remaining: Length,
        /// Used stroke of the damper, from fully open.
        pub damper_used: Length,
        /// Remaining stroke of the damper, to fully closed; negative past its end.
        pub damper_remaining: Length,
        /// Torque in the torsion bar, positive if it carries the vehicle.
        pub torsion_bar_torque: Torque,
        /// Turn of the bar's lever from ride height, positive as in bump.
        pub bar_angle: Angle,
        /// Travel of the end of the bar's lever along its arc over wheel travel.
        pub bar_motion_ratio: Ratio,
        /// Lean of the upper ball joint, or of the top mount, from ride height.
        pub upper_joint_angle: Angle,
        /// Lean of the lower ball joint from ride height.
        pub lower_ball_angle: Angle,
        /// Angle of the outer joint of the tie rod, its stud beside the steering axis.
        pub tie_rod_outer_angle: Angle,
        /// Turn of the tie rod relative to the rack, from ride height.
        pub tie_rod_inner_angle: Angle,
        /// Remaining angle until the first joint with a given limit reaches it.
        pub joint_remaining: Angle,
        /// Name of that joint.
        pub first_joint: String,
        /// Number of joints without a given limit: `joint_remaining` does not count them.
        pub joints_without_limit: i64,
    }
    lent pub(super) Found<'a>;
    each wheel_position;
}

impl<'a> PreparedLinkage<'a> {
    /// The wheel at a travel, the rack moved by so much: see [`DoubleWishbone::at`](crate::suspension::DoubleWishbone::at).
    pub fn at(&self, travel: Length, rack_travel: Length) -> Result<WheelPosition> {
        self.pose(travel, rack_travel).map(|pose| self.position(&pose))
    }

    /// The wheel at ride height, with the rack in its middle.
    #[cfg(feature = "sheet")]
    pub(super) fn at_ride(&self) -> WheelPosition {
        self.position(&self.linkage.rest)
    }

    /// The wheel at any travel, the rack moved by so much, for one question after another.
    #[cfg(feature = "sheet")]
    pub(super) fn along(&self, rack_travel: Length) -> impl FnMut(Length) -> Result<WheelPosition> {
        let mut reach = self.linkage.reach(rack_travel.si());
        move |travel| self.reached(&mut reach, travel).map(|pose| self.position(&pose))
    }

    fn position(&self, pose: &Pose) -> WheelPosition {
        WheelPosition::from(self.results(pose).found(&self.joints()))
    }

    #[inline(always)]
    fn results<S: Scalar>(&self, pose: &Pose<S>) -> Results<S> {
        let (parts, wheel, spin) = (&self.parts, pose.wheel, pose.upright.spin);
        let (axis, contact) = self.contact(pose);
        let lift = wheel.rate.z;
        // Path of the contact point held in the upright.
        let path = pose.upright.carried(contact).rate;
        let turning = spin.cross(axis);
        let level = axis.x * axis.x + axis.y * axis.y;
        let across = level.sqrt();
        let camber_rate = -turning.z / across / lift;
        let toe_rate = (turning.x * axis.y - axis.x * turning.y) / level / lift;

        let steering = pose.steering_axis;
        let ground = pose.lower_ball + steering * ((contact.z - pose.lower_ball.z) / steering.z);
        // Along the wheel and across it: a steered wheel takes its plane with it.
        let (off, outboard_x, outboard_y) = (contact - ground, axis.x / across, axis.y / across);
        let (front_y, front_height) = centre(path.z, path.y, -spin.x);
        let (side_x, side_height) = centre(path.z, path.x, spin.y);
        let to_rear = match parts.axle {
            Axle::Front => 1.0,
            Axle::Rear => -1.0,
        };
        let (brake_anti_pitch, drive_anti_pitch) = self.anti_pitch(to_rear, path, wheel.rate);
        let angles = self.joint_angles(pose);
        let (bar_angle, bar_motion_ratio) = match (pose.bar, self.linkage.bar_lever()) {
            (Some((turned, rate)), Some(lever)) => {
                let sign = S::of(self.bar_sign);
                (turned * sign, rate * sign * S::of(lever) / lift)
            }
            _ => (S::of(f64::NAN), S::of(f64::NAN)),
        };
        let on = self.springs(pose);
        let (bump, one) = (S::of(BUMP), S::of(1.0));
        Results {
            wheel_x: wheel.at.x,
            wheel_y: wheel.at.y,
            wheel_z: wheel.at.z,
            half_track: contact.y,
            half_track_change: contact.y - S::of(self.half_track),
            wheelbase_change: (wheel.at.x - S::of(self.linkage.rest.wheel.at.x)) * S::of(to_rear),
            camber: (-axis.z).arctangent(across),
            camber_change: camber_rate * bump,
            toe: axis.x.arctangent(axis.y),
            bump_steer: toe_rate * bump,
            caster: (-steering.x).arctangent(steering.z),
            kingpin_inclination: (-steering.y).arctangent(steering.z),
            scrub_radius: off.x * outboard_x + off.y * outboard_y,
            mechanical_trail: off.y * outboard_x - off.x * outboard_y,
            front_view_centre_y: contact.y + front_y,
            front_view_centre_height: front_height,
            roll_centre_height: contact.y * path.y / path.z,
            side_view_centre_x: contact.x + side_x,
            side_view_centre_height: side_height,
            side_view_angle: (path.x / path.z).arctangent(one),
            wheel_path_angle: (wheel.rate.x / lift).arctangent(one),
            brake_anti_pitch,
            drive_anti_pitch,
            eye_length: on.eye_length,
            motion_ratio: on.motion_ratio,
            damper_motion_ratio: on.damper_motion_ratio,
            spring_length: on.spring_length,
            spring_force: on.spring_force,
            wheel_force: on.wheel_force,
            wheel_rate: on.wheel_rate,
            spring_used: on.spring_used,
            spring_remaining: on.spring_remaining,
            damper_used: on.damper_used,
            damper_remaining: on.damper_remaining,
            torsion_bar_torque: on.torsion_bar_torque,
            bar_angle,
            bar_motion_ratio,
            upper_joint_angle: angles[0],
            lower_ball_angle: angles[1],
            tie_rod_outer_angle: angles[2],
            tie_rod_inner_angle: angles[3],
            joint_remaining: S::each(angles, |angles| self.first_joint(angles).0),
            first_joint: S::each(angles, |angles| self.first_joint(angles).1),
            joints_without_limit: S::of(
                self.joint_limits().iter().filter(|limit| limit.is_none()).count() as f64
            ),
        }
    }

    /// Work of the tyre's force along its path in bump, for braking and for drive, over that of the load that it transfers. The
    /// contact point goes with the upright where that takes the torque, otherwise the force acts at the wheel's centre.
    #[inline(always)]
    fn anti_pitch<S: Scalar>(&self, to_rear: f64, contact: Vector<S>, centre: Vector<S>) -> (S, S) {
        let Some(braking) = self.parts.braking else { return (S::of(f64::NAN), S::of(f64::NAN)) };
        let levers = (braking.wheelbase.quantity / braking.centre_of_gravity_height.quantity).si();
        let of = |share: Ratio, path: Vector<S>| S::of(to_rear * share.si() * levers) * path.x / path.z;
        let held = match braking.place {
            Some(BrakePlace::Inboard) => centre,
            Some(BrakePlace::Outboard) | None => contact,
        };
        let driving = self.parts.driving.map_or(S::of(f64::NAN), |on| of(on.axle_share.quantity, centre));
        (of(braking.axle_share.quantity, held), driving)
    }

    /// Upper joint and lower ball joint, outer and inner joint of the tie rod: lean from ride height.
    #[inline(always)]
    fn joint_angles<S: Scalar>(&self, pose: &Pose<S>) -> [S; 4] {
        let rod = pose.tie_rod.unit();
        let lean = |body: &Body<S>, [on_arm, on_upright]: [Vector; 2]| {
            body.direction(on_arm.spread()).angle(pose.upright.direction(on_upright.spread()))
        };
        let stud = pose.upright.direction(self.lower[1].spread());
        let outer = S::each([rod.dot(stud)], |[sine]| sine.clamp(-1.0, 1.0)).arcsine();
        let outer = S::each([outer], |[lean]| (lean - self.rod_lean).abs());
        let upper = lean(&pose.upper_arm, self.upper);
        [upper, lean(&pose.lower_arm, self.lower), outer, rod.angle(self.rod.spread())]
    }

    /// Remaining angle of the first joint at its limit, and its place among [`PreparedLinkage::joints`].
    fn first_joint(&self, angles: [f64; 4]) -> (f64, f64) {
        let limits = self.joint_limits();
        let mut first = (f64::NAN, limits.len());
        for (place, (limit, angle)) in limits.into_iter().zip(angles).enumerate() {
            if let Some(limit) = limit
                && (first.0.is_nan() || limit - angle < first.0)
            {
                first = (limit - angle, place);
            }
        }
        (first.0, first.1 as f64)
    }

    /// Limits of the joints, in the order of their angles.
    fn joint_limits(&self) -> [Option<f64>; 4] {
        self.parts.joint_limits.map_or([None; 4], JointLimits::each)
    }

    /// Names of the joints, and the word for none of them.
    fn joints(&self) -> [&'static str; 5] {
        let upper = match self.parts.upper {
            Upper::Arm(_) => "upper ball joint",
            Upper::Strut(..) => "top mount",
        };
        [upper, "lower ball joint", "tie rod outer joint", "tie rod inner joint", "not known"]
    }

    /// Force of coil, damper and torsion bar; a missing one is not a number.
    #[inline(always)]
    pub(super) fn springs<S: Scalar>(&self, pose: &Pose<S>) -> Springs<S> {
        let mut on = Springs::default();
        // Sum of all that pushes the wheel down: force, and rate.
        let (mut force, mut rate, mut sprung) = (S::default(), S::default(), false);
        if let (Some(mounting), Some(eyes)) = (&self.parts.coil_over, self.eyes) {
            let damper_stroke = eyes.stroke(pose);
            let stroke = self.seats.map_or(damper_stroke, |seats| seats.stroke(pose));
            on.eye_length = damper_stroke.length;
            on.motion_ratio = stroke.ratio;
            on.damper_motion_ratio = damper_stroke.ratio;
            if let Some(damper) = mounting.damper {
                on.damper_used = S::of(damper.open_length.quantity.si()) - on.eye_length;
                on.damper_remaining = on.eye_length - S::of(damper.closed_length.quantity.si());
                let gas = S::of(damper.gas().si());
                force = force + gas * damper_stroke.ratio;
                rate = rate + gas * damper_stroke.gradient;
            }
            if let Some(spring) = mounting.spring {
                sprung = true;
                on.spring_length = stroke.length - S::of(spring.seat_offset.quantity.si());
                on.spring_used = S::of(spring.free_length.quantity.si()) - on.spring_length;
                on.spring_remaining = on.spring_length - S::of(spring.solid_length.quantity.si());
                let stiff = spring.rate.quantity.si();
                let coil_rate = S::each([on.spring_used], |[used]| if used > 0.0 { stiff } else { 0.0 });
                on.spring_force = coil_rate * on.spring_used;
                force = force + on.spring_force * stroke.ratio;
                rate = rate + (coil_rate * stroke.ratio * stroke.ratio + on.spring_force * stroke.gradient);
            }
        }
        if let Some(bar) = self.parts.torsion_bar {
            sprung = true;
            let [turn, slope, bend] = pose.body(bar.turned_by).turned(self.linkage.rest.body(bar.turned_by));
            let (lift, curve) = (pose.wheel.rate.z, pose.wheel.second.z);
            let twist_rate = S::of(bar.rate.quantity.si());
            on.torsion_bar_torque = S::of(bar.torque.quantity.si()) + twist_rate * turn;
            on.torsion_bar_ratio = slope / lift;
            force = force + on.torsion_bar_torque * on.torsion_bar_ratio;
            rate = rate
                + (twist_rate * on.torsion_bar_ratio * on.torsion_bar_ratio
                    + on.torsion_bar_torque * (bend - slope * curve / lift) / (lift * lift));
        }
        if sprung {
            (on.wheel_force, on.wheel_rate) = (force, rate);
        }
        on
    }

    pub(super) fn row_at(&self, reach: &mut Reach<'_>, travel: Length) -> Result<Found<'static>> {
        self.reached(reach, travel).map(|pose| self.results(&pose).found(&self.joints()))
    }

    pub(in crate::suspension) fn table(&self, travel: &[Length], rack_travel: &[Length]) -> Result<Table> {
        let mut rows = Filling::over(["travel", "rack_travel"], &[travel.len(), rack_travel.len()])?;
        let states: Vec<[Length; 2]> =
            travel.iter().flat_map(|travel| rack_travel.iter().map(move |rack| [*travel, *rack])).collect();
        let joints = self.joints();
        let mut reaches: Vec<Reach<'_>> =
            rack_travel.iter().map(|rack| self.linkage.reach(rack.si())).collect();
        for (chunk, pair) in states.chunks(2).enumerate() {
            // Two at once; what is not found so is found, or refused, alone.
            let [first, second] = [pair[0], pair[pair.len() - 1]];
            let [travel, rack] = [0, 1].map(|input| Two::from([first[input].si(), second[input].si()]));
            let (pose, angle, there) = self.linkage.near(travel, rack);
            let (both, angle, there) = (self.results(&pose), angle.to_array(), there.to_array());
            for (place, [travel, rack]) in pair.iter().enumerate() {
                let reach = &mut reaches[(2 * chunk + place) % rack_travel.len()];
                let near = there[place] == 1.0 && in_range(*travel, *rack).is_ok();
                let found = near && reach.holds(angle[place]);
                let row =
                    if found { Ok(both.one(place).found(&joints)) } else { self.row_at(reach, *travel) };
                rows.push((*travel, *rack), row)?;
                if states.len() == rack_travel.len() {
                    // No other row has this travel of the rack.
                    *reach = self.linkage.reach(rack.si());
                }
            }
        }
        rows.finish()
    }

    /// Travel of the linkage in droop and bump: see [`DoubleWishbone::travel_range`](crate::suspension::DoubleWishbone::travel_range).
    pub fn travel_range(&self, rack_travel: Length) -> Result<TravelRange> {
        valid! { rack_travel: (-10) <= .. <= 10 ; "plausibility limit: no rack moves 10 m"; }
        let [(droop, droop_end), (bump, bump_end)] = self
            .linkage
            .reach(rack_travel.si())
            .range()
            .map_err(|end| locked(rack_travel, end.sentence()))?;
        Ok(TravelRange {
            droop: Length::from_si(droop),
            droop_end: droop_end.word().to_owned(),
            bump: Length::from_si(bump),
            bump_end: bump_end.word().to_owned(),
        })
    }
}

/// Forces of the springs at one position, in SI.
pub(super) struct Springs<S = f64> {
    eye_length: S,
    pub(super) motion_ratio: S,
    damper_motion_ratio: S,
    pub(super) spring_length: S,
    pub(super) spring_force: S,
    pub(in crate::suspension) wheel_force: S,
    wheel_rate: S,
    spring_used: S,
    spring_remaining: S,
    damper_used: S,
    damper_remaining: S,
    pub(super) torsion_bar_torque: S,
    pub(super) torsion_bar_ratio: S,
}

impl<S: Scalar> Default for Springs<S> {
    fn default() -> Springs<S> {
        let unknown = S::of(f64::NAN);
        Springs {
            eye_length: unknown,
            motion_ratio: unknown,
            damper_motion_ratio: unknown,
            spring_length: unknown,
            spring_force: unknown,
            wheel_force: unknown,
            wheel_rate: unknown,
            spring_used: unknown,
            spring_remaining: unknown,
            damper_used: unknown,
            damper_remaining: unknown,
            torsion_bar_torque: unknown,
            torsion_bar_ratio: unknown,
        }
    }
}

/// Results for a position in SI, for one or for two at once; a joint is its place among [`PreparedLinkage::joints`], and a number of joints is whole.
macro_rules! results {
    (@found $si:expr, $joints:ident, String) => { $joints[$si as usize] };
    (@found $si:expr, $joints:ident, i64) => { $si as i64 };
    (@found $si:expr, $joints:ident, $kind:ident) => { $kind::from_si($si) };
    ($($name:ident: $kind:ident,)+) => {
        struct Results<S> {
            $($name: S,)+
        }

        impl Results<f64> {
            #[inline(always)]
            fn found<'a>(&self, joints: &[&'a str; 5]) -> Found<'a> {
                Found { $($name: results!(@found self.$name, joints, $kind)),+ }
            }
        }

        impl Results<Two> {
            #[inline(always)]
            fn one(&self, place: usize) -> Results<f64> {
                Results { $($name: self.$name.to_array()[place],)+ }
            }
        }
    };
}

wheel_position!(results);

/// Every number of a table has the bits that it has alone, and every refused row its reason.
#[cfg(test)]
pub(in crate::suspension) fn table_equals_single_calls(
    model: &impl super::prepared::Independent,
    travel: &[Length],
    rack_travel: &[Length],
) {
    use crate::base::table::tests::{alone, difference};
    let ready = PreparedLinkage::new(model.parts()).unwrap();
    let table = ready.table(travel, rack_travel).unwrap();
    let states = travel.iter().flat_map(|travel| rack_travel.iter().map(move |rack| (*travel, *rack)));
    for (row, (travel, rack)) in states.enumerate() {
        let [first, second] = ["travel", "rack_travel"].map(|name| table.numbers(name).unwrap()[row]);
        assert_eq!((first, second), (travel.si(), rack.si()));
        let found = ready.row_at(&mut ready.linkage.reach(rack.si()), travel);
        let alone = alone(["travel", "rack_travel"], (travel, rack), found);
        assert_eq!(difference((&table, row), (&alone, 0)), None, "{travel:?} {rack:?}");
    }
}
