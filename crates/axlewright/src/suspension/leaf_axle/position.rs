//! Results at one position of the axle: position, springs, shackles, strokes, roll centre and wind-up.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::balance::{FINE, locked, norm};
use super::model::{AxleDamper, wrong};
use super::pose::Pose;
use super::prepared::PreparedLeafAxle;
use super::spring::{Bent, Spring};
use crate::base::document::Stated;
use crate::base::table::record;
#[cfg(feature = "sheet")]
use crate::base::text::said;
use crate::spring::leaf_pack_stress;
use crate::suspension::TravelRange;
use crate::suspension::kinematics::jet::Jet;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::live_axle::bar_lever::{Lever, out_of_reach};
use crate::suspension::live_axle::parts::{Mount, Strut};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, RotationalStiffness, Stress, Torque};
use crate::{Error, Result, cannot, valid};

record! {
    /// The axle at one heave and roll; a result that is not known is not a number.
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
        /// Turn of the axle relative to the body, positive to the left.
        pub axle_steer: Angle,
        /// Change of `axle_steer` over roll; understeer is negative for a rear axle, positive for a front axle.
        pub roll_steer: Ratio,
        /// Movement of the axle's middle relative to the body, to the left: the axle rolls about the roll centre.
        pub lateral_shift: Length,
        /// Angle of the pinion to the body's axis, positive with the nose up.
        pub pinion_angle: Angle,
        /// Change of the pinion angle from ride height; known even if the angle is not.
        pub pinion_angle_change: Angle,
        /// Height of the roll centre above the ground: the line between the spring's eyes passes the axle there.
        pub roll_centre_height: Length,
        /// Instant centre of the axle in side view, with the wheels held by drive or brake, forward; infinite if there is none.
        pub side_view_centre_x: Length,
        /// Height of the side-view instant centre above the ground; infinite with its place, unless the path is level.
        pub side_view_centre_height: Length,
        /// Forward lean of the contact point's path in bump.
        pub side_view_angle: Angle,
        /// Anti-dive of a front axle, or anti-lift of a rear axle, in braking; 100 % cancels all pitch at that axle.
        pub brake_anti_pitch: Ratio,
        /// Anti-lift of a front axle, or anti-squat of a rear axle, in drive; the housing takes the torque of the wheels.
        pub drive_anti_pitch: Ratio,
        /// Tangent rate of one wheel in heave, half that of the axle: leaf and coil together, with the effect of shackles and eyes.
        pub wheel_rate: LinearStiffness,
        /// Tangent stiffness of both springs and coils in roll, with the axle's middle held; without twist, bar and tyres.
        pub roll_stiffness: RotationalStiffness,
        /// Tangent stiffness of both springs and coils in pitch of the axle, at constant heave.
        pub wind_up_rate: RotationalStiffness,
        /// Vertical load of the left leaf spring itself, at its seat; the leaf also takes the force of a coil along the vehicle.
        pub left_spring_load: Force,
        /// Load of the right spring.
        pub right_spring_load: Force,
        /// Peak of the left spring, in the full-length leaves at the seat.
        pub left_leaf_stress: Stress,
        /// Stress in the right leaf.
        pub right_leaf_stress: Stress,
        /// Angle of the left shackle from upright, positive with the spring's eye away from the fixed eye.
        pub left_shackle_angle: Angle,
        /// Angle of the right shackle from upright.
        pub right_shackle_angle: Angle,
        /// Angle between the left shackle and the line of the eyes; at zero or half a turn, the shackle lines up and turns over.
        pub left_shackle_opening: Angle,
        /// Opening of the right shackle.
        pub right_shackle_opening: Angle,
        /// Length between the eyes of the left coil-over.
        pub left_eye_length: Length,
        /// Shortening of the left coil-over over heave.
        pub left_motion_ratio: Ratio,
        /// Shortening of the left coil-over over the travel of the left wheel in roll; for upright coils, their base over the track.
        pub left_roll_motion_ratio: Ratio,
        /// Length between the seats of the left coil.
        pub left_coil_length: Length,
        /// Force in the left coil, compression positive; zero if the coil is loose.
        pub left_coil_force: Force,
        /// Compression of the left coil from its free length.
        pub left_coil_used: Length,
        /// Remaining travel of the left coil until it is solid, along its axis.
        pub left_coil_remaining: Length,
        /// Force of leaf, coil and gas on the left: the change of their energy over heave. The wheel carries this force and the axle's own weight. Without roll, it is the load of the leaf plus the vertical force of the coil-over.
        pub left_wheel_force: Force,
        /// Length between the eyes of the right coil-over.
        pub right_eye_length: Length,
        /// Shortening of the right coil-over over heave.
        pub right_motion_ratio: Ratio,
        /// Shortening of the right coil-over over the travel of the right wheel in roll.
        pub right_roll_motion_ratio: Ratio,
        /// Length between the seats of the right coil.
        pub right_coil_length: Length,
        /// Force in the right coil, compression positive; zero if the coil is loose.
        pub right_coil_force: Force,
        /// Compression of the right coil from its free length.
        pub right_coil_used: Length,
        /// Remaining travel of the right coil until it is solid, along its axis.
        pub right_coil_remaining: Length,
        /// Force of leaf, coil and gas on the right: the change of their energy over heave.
        pub right_wheel_force: Force,
        /// Mean turn of the bar's two levers from ride height, positive as in bump.
        pub bar_angle: Angle,
        /// Turn of the left lever minus that of the right lever.
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
        /// Peak, in the full-length leaves at the seat, load and torque together.
        pub leaf_stress: Stress,
    }
}

impl PreparedLeafAxle<'_> {
    /// Travel of the springs in droop and bump: see [`LeafAxle::travel_range`](crate::suspension::LeafAxle::travel_range).
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        valid! { roll: (-0.5) <= .. <= 0.5 ; "plausibility limit: no axle leans 29 deg against its body"; }
        self.travel(roll, FINE)
    }

    /// As `travel_range`, the ends of the springs to this many metres.
    pub(super) fn travel(&self, roll: Angle, fine: f64) -> Result<TravelRange> {
        let ends = self.range(roll.si(), fine).map_err(|end| locked(roll, end))?;
        let [droop, bump] = ends.map(|(place, end)| match self.bar_end(place, roll.si()) {
            Some(place) => (Length::from_si(place), "anti-roll bar".to_owned()),
            None => (Length::from_si(place), end.word().to_owned()),
        });
        if [&droop, &bump].iter().all(|(place, _)| place.si() == 0.0) {
            return Err(self.drop_link(Length::from_si(0.0), roll));
        }
        Ok(TravelRange { droop: droop.0, droop_end: droop.1, bump: bump.0, bump_end: bump.1 })
    }

    /// Heave on the way to an end at which a drop link of the bar lines up with its lever; none if it goes along, or where there is no bar.
    fn bar_end(&self, end: f64, roll: f64) -> Option<f64> {
        const STEPS: u32 = 64;
        self.levers.as_ref()?;
        // Where the springs themselves do not go, no drop link ends the way.
        let goes = |heave: f64| self.pose(heave, roll).map_or(true, |on| self.bar(&on).is_some());
        if !goes(0.0) {
            return Some(0.0);
        }
        let at = |place: u32| end * f64::from(place) / f64::from(STEPS);
        let first = (1..=STEPS).find(|place| !goes(at(*place)))?;
        let (mut good, mut bad) = (at(first - 1), at(first));
        for _ in 0..40 {
            let middle = 0.5 * (good + bad);
            if goes(middle) { good = middle } else { bad = middle }
        }
        Some(good)
    }

    /// The axle at a heave and roll: see [`LeafAxle::at`](crate::suspension::LeafAxle::at).
    pub fn at(&self, heave: Length, roll: Angle) -> Result<LeafAxlePosition> {
        let on = self.reached(heave, roll)?;
        let bar = self.bar(&on).ok_or_else(|| self.drop_link(heave, roll))?;
        self.results(&on, bar)
    }

    /// The axle wound up by a torque: see [`LeafAxle::wind_up`](crate::suspension::LeafAxle::wind_up).
    pub fn wind_up(&self, heave: Length, torque: Torque) -> Result<WindUp> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no wheel travels 10 m";
            torque: (-1e6) <= .. <= 1e6 ; "plausibility limit: no axle of a road vehicle bears 1 MN·m";
        }
        let none = Angle::from_si(0.0);
        let before = self.pose(heave.si(), 0.0).map_err(|_| self.beyond(heave, none))?;
        let traction = torque.si() / self.drop;
        let on = self
            .balance(&before, [heave.si(), 0.0, before.pitch], traction)
            .map_err(|end| cannot!(torque; "is more than the springs bear: {}", end.sentence()))?;
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
            let (length, drawn) = (said(length), said(Length::from_si(drawn)));
            cannot!("the springs do not bring the eyes of the damper {length} apart; at ride height they are {drawn} apart")
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
            let bump_clearance = said(Length::from_si(clearance));
            cannot!("the springs do not reach the bump stop: their seats do not rise by bump_clearance = {bump_clearance}")
        })
    }

    /// Peak stress of a spring, in its full-length leaves.
    pub(super) fn stress(&self, on: &Bent) -> Result<Stress> {
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
    pub(super) fn carried(&self, on: &Pose, arm: Vector) -> [Jet; 3] {
        let [sine, cosine] = on.lean;
        let forward = on.tilt[1] * arm.x - on.tilt[0] * arm.z;
        let up = on.tilt[0] * arm.x + on.tilt[1] * arm.z;
        let left = cosine * arm.y - sine * up;
        let x = on.x + on.steer.cosine() * forward - on.steer.sine() * left;
        let y = on.y + on.steer.sine() * forward + on.steer.cosine() * left;
        [x, y, on.z + sine * arm.y + cosine * up]
    }

    /// Position of an eye of a drop link relative to the bar's carrier, and its derivatives along heave and roll.
    pub(super) fn seen(&self, on: &Pose, lever: &Lever) -> (Vector, [Vector; 2]) {
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
    pub(super) fn drop_link(&self, heave: Length, roll: Angle) -> Error {
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
