//! A leaf axle that is prepared once: its springs settled under their load at ride height.

#[cfg(feature = "sheet")]
use super::model::Leaves;
use super::model::{LEAST, LeafAxle, LeafForm, LeafRate, wrong};
use super::pose::Pose;
use super::spring::{End, Half, Spring};
#[cfg(feature = "sheet")]
use crate::base::document::Prepare;
use crate::base::numeric::hypot;
use crate::spring::leaf_pack_rate;
#[cfg(feature = "sheet")]
use crate::suspension::kinematics::kept::{Kept, Places};
use crate::suspension::live_axle::bar_lever::Lever;
use crate::units::Length;
#[cfg(feature = "sheet")]
use crate::units::LinearStiffness;
use crate::{Error, Result};
#[cfg(feature = "sheet")]
use std::sync::Arc;

/// A live axle on leaf springs that is prepared once and asked many times: see [`Prepare`](crate::Prepare).
///
/// The springs are settled at ride height, and each answer starts from there.
#[derive(Debug, Clone)]
pub struct PreparedLeafAxle<'a> {
    pub(in crate::suspension) model: &'a LeafAxle,
    pub(super) spring: Spring,
    /// Axle's middle at ride height, forward and up.
    pub(in crate::suspension) centre: [f64; 2],
    /// Seat from the axle's middle.
    pub(in crate::suspension) seat: [f64; 2],
    pub(super) angle: f64,
    pub(in crate::suspension) base: f64,
    /// From the wheel's centre down to the ground.
    pub(in crate::suspension) drop: f64,
    pub(in crate::suspension) levers: Option<[Lever; 2]>,
    pub(super) bar_sign: f64,
    /// The axle at ride height, from which every search starts.
    pub(in crate::suspension) rest: Pose,
    /// Positions that the stages of a sheet share.
    #[cfg(feature = "sheet")]
    pub(super) places: Option<Arc<Places<Pose>>>,
}

/// Springs that carry their load at ride height, and how the axle stands on them there.
#[derive(Debug, Clone, Copy)]
pub(super) struct Settled {
    spring: Spring,
    rest: Pose,
}

#[cfg(feature = "sheet")]
thread_local! {
    static KEPT: Kept<(Settled, Arc<Places<Pose>>)> = const { Kept::new() };
}

impl LeafAxle {
    /// Prepares the axle, its springs settled by this function.
    pub(super) fn ready(
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
        if hypot(eye[0] - pivot[0], eye[1] - pivot[1]) < LEAST {
            return Err(wrong("shackle_pivot", "it is nearer than 1 mm to the eye: there is no shackle"));
        }
        let spring = Spring::new(halves, fixed_eye, pivot, eye, angle).ok_or_else(|| {
            wrong("shackle_pivot", "the shackle lines up with the spring at ride height and locks it")
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
            #[cfg(feature = "sheet")]
            places: None,
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
            Err(Error::document("leaf", End::Pitch.sentence()))
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
            let prepare = || ready.settled().map(|settled| (settled, Arc::new(Places::new())));
            let kept = KEPT.with(|kept| kept.part(&numbers, prepare))?;
            ready.places = Some(Arc::clone(&kept.1));
            Ok(kept.0)
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
}

impl PreparedLeafAxle<'_> {
    /// Deflection of the seat, free to turn, under its load over that load, for halves of the rate `1 / length^3`: each carries in
    /// proportion to the other's lever.
    pub(super) fn ease(&self) -> f64 {
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
    pub(super) fn load(&mut self, on: &Pose) -> Result<()> {
        // As its seat goes up it runs along the vehicle as well, against the pull of a coil that leans.
        let load = self.model.leaf.load.quantity.si() - (on.coils[0].first[0] - on.lifts[0]);
        let torque = on.coils[0].first[2];
        let on = &on.left;
        let ([fixed, _, fixed_turn], [shackle, _, shackle_turn]) = (on.fixed.first, on.shackle.first);
        let all = fixed * shackle_turn - shackle * fixed_turn;
        let (over, turned) = (load / all, torque / all);
        if !over.is_finite() || !turned.is_finite() {
            return Err(Error::document(
                "leaf",
                "its load turns the axle, however its halves bend: check the points",
            ));
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
    pub(super) fn settled(&mut self) -> Result<Settled> {
        self.stiffen()?;
        self.settle().map_err(|end| Error::document("leaf", end.sentence()))?;
        let mut rest = self.rest;
        self.load(&rest)?;
        self.charge(&mut rest, 0.0);
        Ok(Settled { spring: self.spring, rest })
    }

    /// Finds the axle at ride height.
    pub(super) fn settle(&mut self) -> core::result::Result<(), End> {
        let (mut stance, mut springs) = self.springs([0.0; 3], [[0.0; 2]; 2])?;
        if !springs[0].exact {
            (stance, springs) = self.springs([0.0; 3], springs.map(|spring| spring.ahead([0.0; 3])))?;
        }
        self.rest = self.stand([0.0; 3], &stance, springs, 0.0);
        Ok(())
    }
}
