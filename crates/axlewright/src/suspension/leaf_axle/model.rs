use crate::base::document::{Model, Prepare, Stated, Value};
use crate::suspension::kinematics::vector::vector;
use crate::suspension::live_axle::bar_lever::{Lever, drawn, mirrored};
use crate::suspension::live_axle::parts::{AxleBar, AxleCoilOver};
use crate::suspension::parts::{Axle, Braking, Point, Wheel, within};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, Stress};
use crate::{Error, Result, valid};

/// A live axle on two leaf springs, drawn point by point: where it stands over heave and roll, how it steers, tilts and winds up, and what the springs do there.
///
/// # Formula
/// each half keeps its length and bends in the shape of a cantilever; the pitch `theta` is that of least energy `U`; load `dU/dz`, axle rate `U_zz - U_zt^2 / U_tt`,
/// roll stiffness `U_rr - U_rt^2 / U_tt`, wind-up rate `U_tt`; anti-squat `s (dx/dz) l / h` of the contact point held in the axle
///
/// # Fields
/// - `axle` — `front` or `rear`; it sets the direction in which the wheelbase grows, and the direction of the pinion
/// - `wheel` — left wheel at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the ground; the right wheel is its mirror image
/// - `leaf` — the left leaf spring at ride height, without its axle's torque: `fixed_eye` on the body, `shackle_eye` on the spring, `shackle_pivot` on the body, `seat`, where the centre bolt crosses the main leaf; `seat_angle`, positive with its front up; `clamped_length`, held stiff by the seat over both halves; `eye_offset` of the eyes' centres above the main leaf; `form`, `uniform_strength` (a stepped pack or a tapered leaf) or `uniform_section` (a single leaf, or all leaves full length); `load` that the leaf itself carries, without the load of the coil; the `leaves` from which its rate follows (`elastic_modulus`, `leaf_width`, `leaf_thickness`, `full_length_leaves`, `graduated_leaves`)
/// - `spring` — the `rate` of the leaf spring alone, if it is known; it has priority over the leaves
/// - `damper` — left damper: `body_eye`, `axle_eye`, and, if they are known, `open_length` and `closed_length` between the eyes
/// - `coil_over` — left helper coil beside the leaf, mirrored on the right: `body_eye`, `axle_eye`; its `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset`: length between the eyes minus length between the seats) and, where there is no `damper` beside it, its own (`open_length`, `closed_length` between the eyes, `gas_force`)
/// - `anti_roll_bar` — left end of the bar, mirrored on the right: the part that carries its bearings (`carried_by`, `body` or `axle`), `link_eye` of the drop link on the other part, `lever_end` of the bar, `lever_pivot`, any point of the bar's axis along y
/// - `bump_clearance` — clearance above each spring seat to its bump stop, at ride height
/// - `pinion_angle` — angle of the pinion to the body's axis at ride height, positive with the nose up
/// - `braking` — data of the brakes: `axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`
/// - `drive_share` — share of the driving force at this axle; height and wheelbase come from `braking`
///
/// # Valid for
/// Two equal springs, mirror images of each other, parallel to the vehicle's centre plane; of their `y` coordinates, only that of the seat counts. The rate is that of the spring alone, with eyes free to move apart and a seat free to turn, as on a
/// spring tester; the effect of shackle and eyes on the vehicle is a result. At ride height each half is an arc. The drawing shows the ride height with all parts fitted, and the leaves hold the moment of a helper coil there. Heave is the travel of the axle's middle. Left out: the twist of the leaves in roll, which adds to the roll stiffness; compliance
/// of bushes; friction between leaves, which makes small movements stiffer; leaves that separate beyond their free shape; sideways compliance of the springs. The roll centre has low confidence: with eyes that cannot turn, it lies up to 68 mm lower at an arch of 75 mm. A result whose inputs are missing is not a number.
///
/// # Source
/// Beam theory of a cantilever with its curvature in one shape, exact for large slopes; virtual work. The eye's way is that of SAE HS-788's equivalent link of 3/4 of the half (uniform strength; from memory). Roll centre where the line between the
/// spring's eyes passes the axle: Gillespie, Fundamentals of Vehicle Dynamics (1992), ch. 7 (from memory)
///
/// # Caution
/// A leaf spring under load stores enough energy to kill, and a broken main leaf no longer locates the axle. A spring that is wound up by drive or brake can hop and break. Check shackles, shafts and brake hoses over the whole travel before the vehicle moves. Local codes and
/// licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "super::written::Written")
)]
pub struct LeafAxle {
    /// End of the vehicle.
    pub axle: Axle,
    /// Left wheel, at ride height.
    pub wheel: Wheel,
    /// Left leaf spring, at ride height.
    pub leaf: LeafSpring,
    /// Rate of the leaf spring alone; if it is not known, it follows from the leaves.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub spring: Option<LeafRate>,
    /// Left damper, at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub damper: Option<AxleDamper>,
    /// Left helper coil, at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub coil_over: Stated<AxleCoilOver>,
    /// Left end of the anti-roll bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub anti_roll_bar: Stated<AxleBar>,
    /// Clearance above each spring seat to its bump stop, at ride height.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bump_clearance: Option<Value<Length>>,
    /// Angle of the pinion at ride height, positive with the nose up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pinion_angle: Option<Value<Angle>>,
    /// Share of the brakes, for anti-pitch in braking.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub braking: Option<Braking>,
    /// Share of the whole driving force at this axle.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub drive_share: Option<Value<Ratio>>,
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
    /// Fixed eye, on the body.
    pub fixed_eye: Point,
    /// Eye at the shackle, on the spring.
    pub shackle_eye: Point,
    /// Pivot of the shackle, on the body.
    pub shackle_pivot: Point,
    /// Seat: the point at which the centre bolt crosses the main leaf.
    pub seat: Point,
    /// Angle of the seat, positive with its front up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seat_angle: Option<Value<Angle>>,
    /// Length that the seat clamps, over both halves.
    pub clamped_length: Value<Length>,
    /// Height of the eyes' centres above the middle of the main leaf.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub eye_offset: Option<Value<Length>>,
    /// Distribution of its bending strength.
    pub form: LeafForm,
    /// Load of the leaf itself at ride height.
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
    /// Eye on the body.
    pub body_eye: Point,
    /// Eye on the axle.
    pub axle_eye: Point,
    /// Length between the eyes, fully open.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub open_length: Option<Value<Length>>,
    /// Length between the eyes, fully closed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub closed_length: Option<Value<Length>>,
}

impl crate::base::Sealed for LeafAxle {}
impl Model for LeafAxle {
    fn check(&self) -> Result<()> {
        self.prepare().map(drop)
    }
}

impl LeafAxle {
    /// 1 where the wheelbase grows forward.
    pub(super) fn to_rear(&self) -> f64 {
        match self.axle {
            Axle::Front => 1.0,
            Axle::Rear => -1.0,
        }
    }

    /// Turn of the pinion's nose at this pitch of the axle: a front axle's points to the rear.
    pub(super) fn nose_up(&self, pitch: f64) -> f64 {
        -self.to_rear() * pitch
    }

    pub(super) fn pinion(&self, change: f64) -> Angle {
        let drawn = self.pinion_angle.as_ref().map_or(f64::NAN, |angle| angle.quantity.si());
        Angle::from_si(drawn + change)
    }

    /// Refuses a spring without a rate and without leaves of which it would follow.
    pub(in crate::suspension) fn check_rate(&self) -> Result<()> {
        let Some(LeafRate { rate }) = &self.spring else {
            return match &self.leaf.leaves {
                Some(_) => Ok(()),
                None => Err(Error::document(
                    "spring.rate",
                    "missing: write it, or the `leaf.leaves` from which it follows",
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
    pub(super) fn check_coil_over(&self) -> Result<()> {
        let Stated::Given(coil_over) = &self.coil_over else { return Ok(()) };
        coil_over.check()?;
        if (coil_over.body_eye.vector() - coil_over.axle_eye.vector()).norm() < LEAST {
            return Err(Error::document(
                "coil_over",
                "its eyes are nearer than 1 mm to each other: check the points",
            ));
        }
        if coil_over.damper.is_some() && self.damper.is_some() {
            let message = "there is a `damper` beside it already: give one of the two";
            return Err(Error::document("coil_over.damper", message));
        }
        Ok(())
    }

    /// Both levers of the bar.
    pub(super) fn levers(&self) -> Result<Option<[Lever; 2]>> {
        let Stated::Given(bar) = &self.anti_roll_bar else { return Ok(None) };
        bar.check()?;
        let centre = self.wheel.centre.vector();
        let middle = vector(centre.x, 0.0, centre.z);
        Ok(Some([Lever::new(bar, middle, drawn)?, Lever::new(bar, middle, mirrored)?]))
    }

    /// Checks of the whole axle, beyond its parts.
    pub(super) fn check_rest(&self) -> Result<()> {
        let bump_clearance = self.bump_clearance.as_ref().map_or(Length::from_si(0.0), |on| on.quantity);
        let pinion_angle = self.pinion_angle.as_ref().map_or(Angle::from_si(0.0), |on| on.quantity);
        let drive_share = self.drive_share.as_ref().map_or(Ratio::from_si(0.0), |on| on.quantity);
        valid! {
            bump_clearance: 0 <= .. <= 10 ; "definition: a clearance at ride height; plausibility limit: at most 10 m";
            pinion_angle: (-0.8) <= .. <= 0.8 ; "plausibility limit: pinions point forward within 45 deg";
            drive_share: 0 <= .. <= 1 ; "definition: a share of the whole driving force";
        }
        if self.drive_share.is_some() && self.braking.is_none() {
            let message =
                "it needs `braking`: the height of the centre of gravity and the wheelbase".to_owned();
            return Err(Error::document("drive_share", message));
        }
        Ok(())
    }
}

/// Shorter than this a lever is none.
pub(super) const LEAST: f64 = 0.001;

pub(in crate::suspension) fn wrong(point: &str, why: &str) -> Error {
    Error::document(format!("leaf.{point}"), why)
}

impl LeafSpring {
    pub(super) fn check(&self) -> Result<()> {
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
    pub(super) fn check(&self) -> Result<()> {
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
            return Err(Error::document(
                "damper",
                "its eyes are nearer than 1 mm to each other: check the points",
            ));
        }
        Ok(())
    }
}
