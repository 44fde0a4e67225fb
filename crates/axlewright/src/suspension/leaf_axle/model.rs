use super::position::{HeaveRange, LeafAxlePosition, WindUp};
use super::prepared::PreparedLeafAxle;
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::base::table::{Filling, Table};
use crate::suspension::kinematics::outline::outlines;
use crate::suspension::kinematics::vector::vector;
use crate::suspension::live_axle::bar_lever::{Lever, drawn, mirrored};
use crate::suspension::live_axle::parts::{AxleBar, AxleCoilOver};
use crate::suspension::parts::{Axle, Braking, Point, Wheel, within};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, Stress, Torque};
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
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "super::written::Written")
)]
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
    /// The axle at a heave and roll: position, steer, pinion, springs, shackles, roll centre, anti-squat and what remains of the strokes.
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
