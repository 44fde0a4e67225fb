use super::change;
use super::forces::{TyreLoad, WheelForces};
use super::in_roll::WheelsInRoll;
use super::prepared::{Changing, Independent, Mounting, Parts, PreparedLinkage, Upper};
use super::wheel_position::WheelPosition;
use crate::Result;
use crate::base::document::{Model, Prepare, Stated};
use crate::base::table::Table;
use crate::suspension::TravelRange;
use crate::suspension::parts::{
    AntiRollBar, Arm, Axle, Braking, CoilOver, Driving, JointLimits, TieRod, TorsionBar, Wheel,
};
use crate::units::{Angle, Force, Length};

/// A double wishbone with rack steering, drawn point by point: where the wheel stands over travel and rack travel, and what the spring does there.
///
/// # Formula
/// distances between joined points are kept; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`; roll centre `y_c (dy/dz)` and anti-dive
/// `s (dx/dz) l / h` of the contact point held in the upright; with inboard brakes, and in drive, the latter of the wheel's centre
///
/// # Fields
/// - `axle` — `front` or `rear`; it sets the direction in which the wheelbase grows, and whether braking causes dive or lift
/// - `upper_arm` — `front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright
/// - `lower_arm` — `front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright
/// - `tie_rod` — `inner` on the rack in its middle, `outer` on the steering arm; on an unsteered wheel, the rod that holds its toe
/// - `wheel` — wheel at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the ground
/// - `coil_over` — `body_eye`, `lower_eye`, the part that it is `carried_by` (`lower_arm`, `upper_arm` or `upright`); `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset`: length between the eyes minus length between the seats); `damper` (`open_length`, `closed_length` between the eyes, `gas_force`); `spring_seats`, if the coil is not on the damper (`body`, `lower`, `carried_by`)
/// - `torsion_bar` — bar along the axis of an arm: `turned_by` (`lower_arm` or `upper_arm`), `rate`, and `torque` at ride height, positive if it carries the vehicle
/// - `anti_roll_bar` — left end of the bar: `link_eye` of the drop link, the part that it is `carried_by`, `lever_end` of the bar, `lever_pivot`, any point of the bar's axis along y
/// - `braking` — data of the brakes: `axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`; `place` of the brakes, `outboard` (the default) or `inboard`
/// - `driving` — `axle_share` of the tractive force, through half shafts from a final drive on the body; `braking` gives height and wheelbase
/// - `joint_limits` — allowed lean from ride height of the joints `upper_ball`, `lower_ball`, `tie_rod_outer`, `tie_rod_inner`
///
/// # Valid for
/// The left wheel, with all points at ride height in the body's axes (x forward, y left, z up). Arms turn about the line of their pivots, links are rigid, and the rack lies along y.
/// Camber and toe at ride height are those of `wheel`; the points do not change them. Set the joints straight at ride height: lean counts from there.
/// A result whose inputs are missing is not a number. The model neglects bushes, compliance of the tyre, and friction.
///
/// # Source
/// Vector kinematics of rigid bodies; virtual work; W. F. Milliken, D. L. Milliken, *Race Car Vehicle Dynamics* (1995), chapter 17, anti features of outboard and inboard torque (from memory); terms: ISO 8855 and SAE J670 (from memory)
///
/// # Caution
/// A failed steering or suspension part can kill, and a compressed spring stores enough energy to kill. Check clearance and joints on the vehicle over the whole
/// travel and lock before it moves. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DoubleWishbone {
    /// End of the vehicle.
    pub axle: Axle,
    /// Upper arm.
    pub upper_arm: Arm,
    /// Lower arm.
    pub lower_arm: Arm,
    /// Tie rod from the rack to the steering arm.
    pub tie_rod: TieRod,
    /// Left wheel, at ride height.
    pub wheel: Wheel,
    /// Spring and damper.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub coil_over: Stated<CoilOver>,
    /// Torsion bar along the axis of an arm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub torsion_bar: Stated<TorsionBar>,
    /// Left end of the anti-roll bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub anti_roll_bar: Stated<AntiRollBar>,
    /// Share and place of the brakes, for anti-pitch in braking.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub braking: Option<Braking>,
    /// Share of the tractive force, for anti-pitch in drive.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub driving: Option<Driving>,
    /// Limits on the lean of the joints.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub joint_limits: Option<JointLimits>,
}

impl Independent for DoubleWishbone {
    fn parts(&self) -> Parts<'_> {
        Parts {
            axle: self.axle,
            lower_arm: &self.lower_arm,
            upper: Upper::Arm(&self.upper_arm),
            tie_rod: &self.tie_rod,
            wheel: &self.wheel,
            coil_over: self.coil_over.as_ref().map(|on| Mounting {
                names: ["coil_over", "body_eye", "lower_eye"],
                ends: [&on.body_eye, &on.lower_eye],
                carried_by: on.carried_by,
                spring: on.spring.as_ref(),
                spring_seats: on.spring_seats.as_ref(),
                damper: on.damper.as_ref(),
            }),
            torsion_bar: self.torsion_bar.as_ref(),
            anti_roll_bar: self.anti_roll_bar.as_ref(),
            braking: self.braking.as_ref(),
            driving: self.driving.as_ref(),
            joint_limits: self.joint_limits.as_ref(),
        }
    }

    fn changing(&mut self) -> Changing<'_> {
        let arm = &mut self.upper_arm;
        let mut points = vec![&mut arm.front_pivot, &mut arm.rear_pivot, &mut arm.ball_joint];
        let mut spring = None;
        if let Stated::Given(on) = &mut self.coil_over {
            points.push(&mut on.lower_eye);
            points.extend(on.spring_seats.as_mut().map(|seats| &mut seats.lower));
            spring = on.spring.as_mut();
        }
        Changing {
            points,
            lower_arm: &mut self.lower_arm,
            tie_rod: &mut self.tie_rod,
            wheel: &mut self.wheel,
            spring,
            torsion_bar: self.torsion_bar.as_mut(),
            anti_roll_bar: self.anti_roll_bar.as_mut(),
            braking: self.braking.as_mut(),
        }
    }
}

impl crate::base::Sealed for DoubleWishbone {}
impl Model for DoubleWishbone {
    fn check(&self) -> Result<()> {
        self.prepare().map(drop)
    }
}
impl Prepare for DoubleWishbone {
    type Prepared<'a> = PreparedLinkage<'a>;

    fn prepare(&self) -> Result<PreparedLinkage<'_>> {
        PreparedLinkage::new(self.parts())
    }
}

impl DoubleWishbone {
    /// The wheel at a travel and rack travel: alignment, instant centres, spring, stroke and joints.
    ///
    /// # Parameters
    /// - `travel` — `z`, travel of the wheel's centre relative to the body, from ride height; positive in bump
    /// - `rack_travel` — `y_r`, displacement of the rack from its middle, positive to the left
    ///
    /// # Returns
    /// See the fields of [`WheelPosition`]. For this model:
    /// - `eye_length` — length between the eyes of the coil-over
    /// - `upper_joint_angle` — lean of the upper ball joint from ride height, its stud along the steering axis
    /// - `lower_ball_angle` — lean of the lower ball joint from ride height, its stud along the steering axis
    /// - `first_joint` — name of the joint that reaches its limit first: `upper ball joint`, `lower ball joint`, `tie rod outer joint` or `tie rod inner joint`; otherwise `not known`
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, suspension::*, units::*};
    /// let at = |x: f64, y: f64, z: f64| Point::new(Length::of::<mm>(x), Length::of::<mm>(y), Length::of::<mm>(z));
    /// let dunlin = DoubleWishbone {
    ///     axle: Axle::Front,
    ///     upper_arm: Arm { front_pivot: at(150.0, 470.0, 560.0), rear_pivot: at(-150.0, 470.0, 550.0), ball_joint: at(-15.0, 690.0, 575.0) },
    ///     lower_arm: Arm { front_pivot: at(190.0, 330.0, 265.0), rear_pivot: at(-190.0, 330.0, 255.0), ball_joint: at(10.0, 725.0, 240.0) },
    ///     tie_rod: TieRod { inner: at(-140.0, 355.0, 300.0), outer: at(-140.0, 700.0, 280.0) },
    ///     wheel: Wheel {
    ///         centre: at(0.0, 770.0, 345.0), camber: Value::new(Angle::of::<deg>(-0.5)), toe: Value::new(Angle::of::<deg>(0.1)),
    ///         loaded_radius: Value::new(Length::of::<mm>(335.0)),
    ///     },
    ///     coil_over: Stated::Unknown, torsion_bar: Stated::Unknown, anti_roll_bar: Stated::Unknown, braking: None, driving: None, joint_limits: None,
    /// }.checked()?;
    /// let bump = dunlin.at(Length::of::<mm>(40.0), Length::of::<mm>(0.0))?;
    /// assert_eq!(format!("{:.2} deg", bump.camber.in_::<deg>()), "-1.74 deg");
    /// assert!(dunlin.at(Length::of::<mm>(600.0), Length::of::<mm>(0.0)).is_err()); // says which link ends it, and where
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at(&self, travel: Length, rack_travel: Length) -> Result<WheelPosition> {
        self.prepare()?.at(travel, rack_travel)
    }

    /// The wheel over travel and rack travel.
    ///
    /// # Parameters
    /// - `travel` — travel of the wheel's centre relative to the body, from ride height; positive in bump
    /// - `rack_travel` — displacement of the rack from its middle, positive to the left
    ///
    /// # Returns
    /// One row for each travel and rack travel: `travel`, `rack_travel`, and the results of `at`: `...`.
    pub fn table(&self, travel: &[Length], rack_travel: &[Length]) -> Result<Table> {
        self.prepare()?.table(travel, rack_travel)
    }

    /// Both wheels on level ground while the body rolls and heaves; the right wheel is the mirror image of the left one.
    ///
    /// # Parameters
    /// - `heave` — rise of the ground at the body's centre plane relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the body relative to the ground, about x; positive with the left side up, as in a left turn
    /// - `rack_travel` — displacement of the rack from its middle, positive to the left
    ///
    /// # Returns
    /// See the fields of [`WheelsInRoll`].
    pub fn in_roll(&self, heave: Length, roll: Angle, rack_travel: Length) -> Result<WheelsInRoll> {
        self.prepare()?.in_roll(heave, roll, rack_travel)
    }

    /// Both wheels over heave, roll and rack travel.
    ///
    /// # Parameters
    /// - `heave` — rise of the ground at the body's centre plane relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the body relative to the ground, about x; positive with the left side up
    /// - `rack_travel` — displacement of the rack from its middle, positive to the left
    ///
    /// # Returns
    /// One row for each heave, roll and rack travel: `heave`, `roll`, `rack_travel`, and the results of `in_roll`: `...`.
    pub fn roll_table(&self, heave: &[Length], roll: &[Angle], rack_travel: &[Length]) -> Result<Table> {
        self.prepare()?.roll_table(heave, roll, rack_travel)
    }

    /// Forces in every part of the linkage while the ground acts on the tyre at a travel and rack travel.
    ///
    /// # Parameters
    /// - `travel` — travel of the wheel's centre relative to the body, from ride height; positive in bump
    /// - `rack_travel` — displacement of the rack from its middle, positive to the left
    /// - `longitudinal_force` — force of the ground on the tyre along the body's x, positive forward: drive; braking is negative
    /// - `longitudinal_height` — height above the ground at which it acts: zero with an outboard brake; the wheel's centre if the wheel rolls freely, or is driven or braked through a half shaft; the edge of a kerb
    /// - `lateral_force` — force of the ground on the tyre along the body's y, positive to the left: outboard
    /// - `lateral_height` — height above the ground at which it acts: zero on the road, the edge of a kerb
    /// - `vertical_force` — force of the ground on the tyre along the body's z, positive up, without the weight of wheel and upright
    /// - `drop_link_force` — force in the drop link of the anti-roll bar, tension positive; zero without a bar
    ///
    /// # Returns
    /// See the fields of [`WheelForces`].
    ///
    /// The travel is given, so the coil-over takes what the balance leaves: coil, gas, damper and stop together. A coil on seats of its own, and a torsion bar
    /// beside a coil-over, have the force that their rate gives at this travel. The legs of an arm share the force along its axis as a truss of straight legs.
    /// A spring or drop link between the ends of an arm adds a force along that axis, which is halved: count it in full at either pivot. Masses of arms, upright and wheel, friction and bushes are neglected.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, suspension::*, units::*};
    /// let at = |x: f64, y: f64, z: f64| Point::new(Length::of::<mm>(x), Length::of::<mm>(y), Length::of::<mm>(z));
    /// let dunlin = DoubleWishbone {
    ///     axle: Axle::Front,
    ///     upper_arm: Arm { front_pivot: at(150.0, 470.0, 560.0), rear_pivot: at(-150.0, 470.0, 550.0), ball_joint: at(-15.0, 690.0, 575.0) },
    ///     lower_arm: Arm { front_pivot: at(190.0, 330.0, 265.0), rear_pivot: at(-190.0, 330.0, 255.0), ball_joint: at(10.0, 725.0, 240.0) },
    ///     tie_rod: TieRod { inner: at(-140.0, 355.0, 300.0), outer: at(-140.0, 700.0, 280.0) },
    ///     wheel: Wheel {
    ///         centre: at(0.0, 770.0, 345.0), camber: Value::new(Angle::of::<deg>(-0.5)), toe: Value::new(Angle::of::<deg>(0.1)),
    ///         loaded_radius: Value::new(Length::of::<mm>(335.0)),
    ///     },
    ///     coil_over: Stated::Given(CoilOver {
    ///         body_eye: at(0.0, 480.0, 640.0), lower_eye: at(0.0, 580.0, 270.0), carried_by: Carrier::LowerArm, spring: None, spring_seats: None, damper: None,
    ///     }),
    ///     torsion_bar: Stated::None, anti_roll_bar: Stated::None, braking: None, driving: None, joint_limits: None,
    /// }.checked()?;
    /// let zero = Length::of::<mm>(0.0);
    /// let braking = dunlin.forces(zero, zero, Force::of::<N>(-5000.0), zero, Force::of::<N>(0.0), zero, Force::of::<N>(6000.0), Force::of::<N>(0.0))?;
    /// assert_eq!(format!("{:.2} kN", braking.upper_joint_x.in_::<kN>()), "3.59 kN");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    #[expect(
        clippy::too_many_arguments,
        reason = "three forces of the ground, two heights, a link and two travels"
    )]
    pub fn forces(
        &self,
        travel: Length,
        rack_travel: Length,
        longitudinal_force: Force,
        longitudinal_height: Length,
        lateral_force: Force,
        lateral_height: Length,
        vertical_force: Force,
        drop_link_force: Force,
    ) -> Result<WheelForces> {
        let on = TyreLoad {
            longitudinal_force,
            longitudinal_height,
            lateral_force,
            lateral_height,
            vertical_force,
            drop_link_force,
        };
        self.prepare()?.forces(travel, rack_travel, on)
    }

    /// Positions of all joints, part by part, to draw the linkage or to measure clearances.
    ///
    /// # Parameters
    /// - `travel` — travel of the wheel's centre relative to the body, from ride height; positive in bump
    /// - `rack_travel` — displacement of the rack from its middle, positive to the left
    ///
    /// # Returns
    /// One row for each travel, rack travel and point, with the points of a part in the order in which a line joins them: `travel`, `rack_travel`, `part` (`upper arm`, `lower arm`, `upright`, `tie rod`,
    /// `coil-over`, `coil` where it has seats of its own, `anti-roll bar`, `wheel`), `point`, and its place `x`, `y`, `z` in the body's axes.
    pub fn points(&self, travel: &[Length], rack_travel: &[Length]) -> Result<Table> {
        self.prepare()?.points(travel, rack_travel)
    }

    /// Travel of the linkage in droop and bump until a link lines up with the part that it turns; damper, spring and joints may end it earlier.
    ///
    /// # Parameters
    /// - `rack_travel` — displacement of the rack from its middle, positive to the left
    ///
    /// # Returns
    /// - `droop` — least travel, negative
    /// - `droop_end` — what ends it: `upper arm`, `lower arm`, `tie rod` or `drop link`
    /// - `bump` — largest travel
    /// - `bump_end` — what ends it
    pub fn travel_range(&self, rack_travel: Length) -> Result<TravelRange> {
        self.prepare()?.travel_range(rack_travel)
    }

    /// The wheel moved in its arch: arms with their pivots, upright, wheel and all parts on the arms move; rack, upper eye of the coil-over and anti-roll bar stay.
    ///
    /// # Parameters
    /// - `forward` — displacement forward, negative to the rear
    /// - `outboard` — displacement outboard, negative inboard
    /// - `up` — displacement up relative to the body; the body then stands lower by this much
    /// - `travel` — travel of the wheel, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each travel, with the rack in its middle: `state` (`before` or `after`), `travel`, and the results of `at`. The tie rod and the drop link are set to their new length at ride height.
    /// Camber and toe at ride height stay the same. The spring seat (without a coil, the torsion bar) is set so that the wheel load stays the same.
    pub fn arch_move(
        &self,
        forward: Length,
        outboard: Length,
        up: Length,
        travel: &[Length],
    ) -> Result<Table> {
        change::arch_move(self, forward, outboard, up, travel)
    }

    /// The body raised or lowered on its springs; the linkage is not changed.
    ///
    /// # Parameters
    /// - `rise` — height by which the body is raised, negative if it is lowered
    /// - `travel` — travel of the wheel, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each travel, with the rack in its middle: `state` (`before` or `after`), `travel`, and the results of `at`; changes are relative to the ride height before. Toe is not set again.
    /// The spring seat (without a coil, the torsion bar) is set so that the wheel load stays the same.
    pub fn ride_height_change(&self, rise: Length, travel: &[Length]) -> Result<Table> {
        change::ride_height_change(self, rise, travel)
    }

    /// A spacer behind the wheel, or a wheel of another offset.
    ///
    /// # Parameters
    /// - `outward` — thickness of the spacer, or the reduction of the offset
    /// - `travel` — travel of the wheel, from ride height
    ///
    /// # Returns
    /// Two rows for each travel, with the rack in its middle: `state` (`before` or `after`), `travel`, and the results of `at`. The spring seat (without a coil, the torsion bar) is set so that the wheel load stays the same.
    pub fn spacer(&self, outward: Length, travel: &[Length]) -> Result<Table> {
        change::spacer(self, outward, travel)
    }
}

#[cfg(test)]
mod tests;
