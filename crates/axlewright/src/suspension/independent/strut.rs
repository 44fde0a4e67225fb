use super::in_roll::WheelsInRoll;
use super::wheel_position::{
    self, Changing, Independent, Mounting, Parts, PreparedLinkage, TravelRange, Upper, WheelPosition,
};
use crate::Result;
use crate::base::document::{Model, Prepare, Stated};
use crate::base::table::Table;
use crate::suspension::parts::{
    AntiRollBar, Arm, Axle, Braking, Carrier, Driving, JointLimits, StrutLeg, TieRod, TorsionBar, Wheel,
};
use crate::units::{Angle, Length};

/// A strut on a lower arm with rack steering, drawn point by point: where the wheel stands over travel and rack travel, and what the spring does there.
///
/// # Formula
/// distances between joined points are kept, and the strut's axis, fixed in the upright, goes through the top mount; `r = -dL/dz`; wheel rate `k r^2 + F dr/dz`; roll centre `y_c (dy/dz)` and
/// anti-dive `s (dx/dz) l / h` of the contact point held in the upright; with inboard brakes, and in drive, the latter of the wheel's centre
///
/// # Fields
/// - `axle` — `front` or `rear`: which way the wheelbase grows, and whether braking dives or lifts
/// - `lower_arm` — `front_pivot`, `rear_pivot` on the body, `ball_joint` on the upright; a link and a rod that meet at the ball joint are such an arm
/// - `leg` — `top_mount` on the body, `lower_end`, any lower point of the strut's axis on the upright: the axis need not go through the ball joint; its `spring` (`rate`, `free_length`, `solid_length` with the gaps that stay open, `seat_offset` between top mount and lower end less between the seats) and its `damper` (`open_length`, `closed_length` between top mount and lower end, `gas_force`); of a coil that leans against the axis or stands apart its `spring_seats` (`body`, `lower`, `carried_by` `upright` or `lower_arm`)
/// - `tie_rod` — `inner` on the rack in its middle, `outer` on the steering arm; of an unsteered wheel the rod that holds its toe
/// - `wheel` — at ride height: `centre`, `camber`, `toe`, and the `loaded_radius` from its centre to the ground
/// - `torsion_bar` — along the axis of the arm, `turned_by` `lower_arm`, its `rate`, and its `torque` at ride height, positive where it carries the vehicle
/// - `anti_roll_bar` — `link_eye` of the drop link and what it is `carried_by` (`lower_arm` or `upright`), `lever_end` of the bar, `lever_pivot`, any point of its axis along y
/// - `braking` — `axle_share` `s` of the braking force, `centre_of_gravity_height` `h`, `wheelbase` `l`; `place` of the brakes, `outboard` (where it is missing) or `inboard`
/// - `driving` — `axle_share` of the tractive force, by half shafts from a final drive on the body; height and wheelbase are those of `braking`
/// - `joint_limits` — lean from ride height that `top_mount`, `lower_ball`, `tie_rod_outer`, `tie_rod_inner` allow
///
/// # Valid for
/// The left wheel, all points at ride height in the body's axes (x forward, y left, z up), an arm that turns about the line of its pivots, rigid links, a rack along y. The steering axis goes from the top mount to the
/// ball joint. Camber and toe at ride height are those of the `wheel`, whatever the points are. The joints stand straight at ride height; set them so. The seat of a coil on the body does not turn with the wheel.
/// Missing inputs give results that are not a number. Neglected are bushes, compliance of the top mount, bending of the rod, friction from its side load, and compliance of the tyre.
///
/// # Source
/// Vector kinematics of rigid bodies; virtual work; W. F. Milliken, D. L. Milliken, *Race Car Vehicle Dynamics* (1995), chapter 17, anti features of outboard and inboard torque (from memory); terms: ISO 8855 and SAE J670 (from memory)
///
/// # Caution
/// Steering and suspension carry lives, and a compressed spring stores enough energy to kill: check clearance and joints on the vehicle over the whole
/// travel and lock before it moves; local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Strut {
    /// End of the vehicle.
    pub axle: Axle,
    /// The arm.
    pub lower_arm: Arm,
    /// Damper and coil, which guide the upright.
    pub leg: StrutLeg,
    /// From the rack to the steering arm.
    pub tie_rod: TieRod,
    /// At ride height.
    pub wheel: Wheel,
    /// Along the axis of the arm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub torsion_bar: Stated<TorsionBar>,
    /// One end of the bar.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub anti_roll_bar: Stated<AntiRollBar>,
    /// Braking loads.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub braking: Option<Braking>,
    /// Driving loads.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub driving: Option<Driving>,
    /// Limits on the lean of the joints.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub joint_limits: Option<JointLimits>,
}

impl Independent for Strut {
    fn parts(&self) -> Parts<'_> {
        let leg = &self.leg;
        Parts {
            axle: self.axle,
            lower_arm: &self.lower_arm,
            upper: Upper::Strut(&leg.top_mount, &leg.lower_end),
            tie_rod: &self.tie_rod,
            wheel: &self.wheel,
            coil_over: Some(Mounting {
                names: ["leg", "top_mount", "lower_end"],
                ends: [&leg.top_mount, &leg.lower_end],
                carried_by: Carrier::Upright,
                spring: leg.spring.as_ref(),
                spring_seats: leg.spring_seats.as_ref(),
                damper: leg.damper.as_ref(),
            }),
            torsion_bar: self.torsion_bar.as_ref(),
            anti_roll_bar: self.anti_roll_bar.as_ref(),
            braking: self.braking.as_ref(),
            driving: self.driving.as_ref(),
            joint_limits: self.joint_limits.as_ref(),
        }
    }

    fn changing(&mut self) -> Changing<'_> {
        let leg = &mut self.leg;
        let mut points = vec![&mut leg.top_mount, &mut leg.lower_end];
        if let Some(seats) = &mut leg.spring_seats {
            points.extend([&mut seats.body, &mut seats.lower]);
        }
        Changing {
            points,
            lower_arm: &mut self.lower_arm,
            tie_rod: &mut self.tie_rod,
            wheel: &mut self.wheel,
            spring: leg.spring.as_mut(),
            torsion_bar: self.torsion_bar.as_mut(),
            anti_roll_bar: self.anti_roll_bar.as_mut(),
            braking: self.braking.as_mut(),
        }
    }
}

impl crate::base::Sealed for Strut {}
impl Model for Strut {
    fn check(&self) -> Result<()> {
        self.prepare().map(drop)
    }
}
impl Prepare for Strut {
    type Prepared<'a> = PreparedLinkage<'a>;

    fn prepare(&self) -> Result<PreparedLinkage<'_>> {
        PreparedLinkage::new(self.parts())
    }
}

impl Strut {
    /// The wheel at a travel and rack travel: alignment, instant centres, spring, stroke and joints.
    ///
    /// # Parameters
    /// - `travel` — `z`, of the wheel's centre against the body from ride height, positive in bump
    /// - `rack_travel` — `y_r`, from the rack's middle, positive to the left
    ///
    /// # Returns
    /// See the fields of [`WheelPosition`]. For this model:
    /// - `eye_length` — from the top mount to the lower end of the leg
    /// - `upper_joint_angle` — lean of the strut's axis from ride height, at the top mount
    /// - `lower_ball_angle` — lean of the lower ball joint from ride height, its stud along the steering axis there
    /// - `first_joint` — which joint that is: `top mount`, `lower ball joint`, `tie rod outer joint` or `tie rod inner joint`; otherwise `not known`
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, suspension::*, units::*};
    /// let at = |x: f64, y: f64, z: f64| Point::new(Length::of::<mm>(x), Length::of::<mm>(y), Length::of::<mm>(z));
    /// let wagtail = Strut {
    ///     axle: Axle::Rear,
    ///     lower_arm: Arm { front_pivot: at(190.0, 300.0, 226.0), rear_pivot: at(-190.0, 310.0, 196.0), ball_joint: at(5.0, 640.0, 185.0) },
    ///     leg: StrutLeg { top_mount: at(-20.0, 540.0, 720.0), lower_end: at(-5.0, 615.0, 300.0), spring: None, spring_seats: None, damper: None },
    ///     tie_rod: TieRod { inner: at(-150.0, 330.0, 244.0), outer: at(-145.0, 640.0, 225.0) },
    ///     wheel: Wheel {
    ///         centre: at(0.0, 700.0, 290.0), camber: Value::new(Angle::of::<deg>(-1.0)), toe: Value::new(Angle::of::<deg>(0.15)),
    ///         loaded_radius: Value::new(Length::of::<mm>(283.0)),
    ///     },
    ///     torsion_bar: Stated::Unknown, anti_roll_bar: Stated::Unknown, braking: None, driving: None, joint_limits: None,
    /// }.checked()?;
    /// let bump = wagtail.at(Length::of::<mm>(40.0), Length::of::<mm>(0.0))?;
    /// assert_eq!(format!("{:.2} deg", bump.camber.in_::<deg>()), "-1.86 deg");
    /// assert!(wagtail.at(Length::of::<mm>(600.0), Length::of::<mm>(0.0)).is_err()); // says which link ends it, and where
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn at(&self, travel: Length, rack_travel: Length) -> Result<WheelPosition> {
        self.prepare()?.at(travel, rack_travel)
    }

    /// The wheel over travel and rack travel.
    ///
    /// # Parameters
    /// - `travel` — of the wheel's centre against the body from ride height, positive in bump
    /// - `rack_travel` — from the rack's middle, positive to the left
    ///
    /// # Returns
    /// One row a travel and rack travel: `travel`, `rack_travel`, and the results of `at`: `...`.
    pub fn table(&self, travel: &[Length], rack_travel: &[Length]) -> Result<Table> {
        self.prepare()?.table(travel, rack_travel)
    }

    /// Both wheels on level ground while the body rolls and heaves over them; the right wheel is the mirror image of this one.
    ///
    /// # Parameters
    /// - `heave` — of the ground under the body's centre plane against the body from ride height, positive in bump
    /// - `roll` — of the body against the ground, about x, positive with its left side up, as in a left turn
    /// - `rack_travel` — from the rack's middle, positive to the left
    ///
    /// # Returns
    /// See the fields of [`WheelsInRoll`].
    pub fn in_roll(&self, heave: Length, roll: Angle, rack_travel: Length) -> Result<WheelsInRoll> {
        self.prepare()?.in_roll(heave, roll, rack_travel)
    }

    /// Both wheels over heave, roll and rack travel.
    ///
    /// # Parameters
    /// - `heave` — of the ground under the body's centre plane against the body from ride height, positive in bump
    /// - `roll` — of the body against the ground, about x, positive with its left side up
    /// - `rack_travel` — from the rack's middle, positive to the left
    ///
    /// # Returns
    /// One row a heave, roll and rack travel: `heave`, `roll`, `rack_travel`, and the results of `in_roll`: `...`.
    pub fn roll_table(&self, heave: &[Length], roll: &[Angle], rack_travel: &[Length]) -> Result<Table> {
        self.prepare()?.roll_table(heave, roll, rack_travel)
    }

    /// The joints in space, part by part: to draw the linkage, or to measure clearance from.
    ///
    /// # Parameters
    /// - `travel` — of the wheel's centre against the body from ride height, positive in bump
    /// - `rack_travel` — from the rack's middle, positive to the left
    ///
    /// # Returns
    /// One row a travel, rack travel and point, the points of a part in the order in which a line joins them: `travel`, `rack_travel`, `part` (`lower arm`, `upright`, `tie rod`, `leg`, `coil`
    /// where it has seats of its own, `anti-roll bar`, `wheel`), `point`, and its place `x`, `y`, `z` in the body's axes.
    pub fn points(&self, travel: &[Length], rack_travel: &[Length]) -> Result<Table> {
        self.prepare()?.points(travel, rack_travel)
    }

    /// Travel of the linkage in droop and bump before a link is in line with the part that it turns; damper, spring and joints may end it earlier.
    ///
    /// # Parameters
    /// - `rack_travel` — from the rack's middle, positive to the left
    ///
    /// # Returns
    /// - `droop` — least travel, negative
    /// - `droop_end` — what ends it: `strut`, `lower arm`, `tie rod` or `drop link`
    /// - `bump` — greatest travel
    /// - `bump_end` — what ends it
    pub fn travel_range(&self, rack_travel: Length) -> Result<TravelRange> {
        self.prepare()?.travel_range(rack_travel)
    }

    /// The wheel moved in its arch: the arm with its pivots, the leg with its top mount and the seats of its coil, upright, wheel and what they carry are moved; rack and anti-roll bar stay.
    ///
    /// # Parameters
    /// - `forward` — by how much
    /// - `outboard` — by how much
    /// - `up` — by how much, against the body, which then stands so much lower
    /// - `travel` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a travel, with the rack in its middle: `state` (`before` or `after`), `travel`, and the results of `at`. The tie rod and the drop link are set to their new length at ride height,
    /// camber and toe are there what they were, and the spring's seat (without a coil the torsion bar) is set so that it carries the wheel load that it carried.
    pub fn arch_move(
        &self,
        forward: Length,
        outboard: Length,
        up: Length,
        travel: &[Length],
    ) -> Result<Table> {
        wheel_position::arch_move(self, forward, outboard, up, travel)
    }

    /// The body raised or lowered on its springs, the linkage as it is.
    ///
    /// # Parameters
    /// - `rise` — of the body above the ground, negative where it is lowered
    /// - `travel` — from the ride height of each
    ///
    /// # Returns
    /// Two rows a travel, with the rack in its middle: `state` (`before` or `after`), `travel`, and the results of `at`; changes are against the ride height before. Toe is as the rods leave it, and the
    /// spring's seat (without a coil the torsion bar) is set so that it carries the wheel load that it carried.
    pub fn ride_height_change(&self, rise: Length, travel: &[Length]) -> Result<Table> {
        wheel_position::ride_height_change(self, rise, travel)
    }

    /// A spacer behind the wheel, or a wheel of another offset.
    ///
    /// # Parameters
    /// - `outward` — thickness of the spacer, or by how much the new offset is less
    /// - `travel` — from ride height
    ///
    /// # Returns
    /// Two rows a travel, with the rack in its middle: `state` (`before` or `after`), `travel`, and the results of `at`. The spring's seat (without a coil the torsion bar) is set so that it carries the wheel load that it carried.
    pub fn spacer(&self, outward: Length, travel: &[Length]) -> Result<Table> {
        wheel_position::spacer(self, outward, travel)
    }
}

#[cfg(test)]
mod tests {
    use super::super::linkage::{Above, Drawn, Linkage};
    use super::super::wheel_position::{BUMP, table_equals_single_calls};
    use super::*;
    use crate::base::document::Value;
    use crate::suspension::kinematics::vector::vector;
    use crate::suspension::parts::{BrakePlace, CoilSpring, Damper, Point, SpringSeats};
    use crate::units::{Angle, Force, LinearStiffness, Ratio, RotationalStiffness, Torque, deg, mm};
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    fn length(value: f64) -> Value<Length> {
        Value::new(metres(value))
    }
    fn metres(value: f64) -> Length {
        Length::from_si(value)
    }
    fn point([x, y, z]: [f64; 3]) -> Point {
        Point::new(metres(x), metres(y), metres(z))
    }

    /// Arm, top mount and lower end, tie rod, wheel; invented.
    type Points = [[f64; 3]; 8];
    const FRONT: Points = [
        [0.2, 0.33, 0.21],
        [-0.2, 0.32, 0.2],
        [0.012, 0.7, 0.185],
        [-0.03, 0.56, 0.76],
        [0.004, 0.655, 0.33],
        [-0.13, 0.34, 0.25],
        [-0.135, 0.685, 0.24],
        [0.0, 0.76, 0.31],
    ];

    fn strut(p: Points) -> Strut {
        Strut {
            axle: Axle::Front,
            lower_arm: Arm { front_pivot: point(p[0]), rear_pivot: point(p[1]), ball_joint: point(p[2]) },
            leg: StrutLeg {
                top_mount: point(p[3]),
                lower_end: point(p[4]),
                spring: Some(CoilSpring {
                    rate: Value::new(LinearStiffness::from_si(30_000.0)),
                    free_length: length(0.36),
                    solid_length: length(0.12),
                    seat_offset: length(0.21),
                }),
                spring_seats: None,
                damper: Some(Damper {
                    open_length: length(0.52),
                    closed_length: length(0.34),
                    gas_force: Some(Value::new(Force::from_si(150.0))),
                }),
            },
            tie_rod: TieRod { inner: point(p[5]), outer: point(p[6]) },
            wheel: Wheel {
                centre: point(p[7]),
                camber: Value::new(Angle::of::<deg>(-0.75)),
                toe: Value::new(Angle::of::<deg>(0.1)),
                loaded_radius: length(0.3),
            },
            torsion_bar: Stated::Given(TorsionBar {
                turned_by: Carrier::LowerArm,
                rate: Value::new(RotationalStiffness::from_si(1800.0)),
                torque: Value::new(Torque::from_si(200.0)),
            }),
            anti_roll_bar: Stated::Given(AntiRollBar {
                link_eye: point([0.03, 0.64, 0.36]),
                carried_by: Carrier::Upright,
                lever_end: point([0.04, 0.63, 0.2]),
                lever_pivot: point([0.28, 0.4, 0.2]),
            }),
            braking: Some(Braking {
                axle_share: Value::new(Ratio::from_si(0.65)),
                centre_of_gravity_height: length(0.52),
                wheelbase: length(2.55),
                place: None,
            }),
            driving: Some(Driving { axle_share: Value::new(Ratio::from_si(1.0)) }),
            joint_limits: None,
        }
    }

    fn moved(shifts: &[f64]) -> Points {
        let mut points = FRONT;
        for (place, shift) in shifts.iter().enumerate() {
            points[place / 3][place % 3] += shift;
        }
        points
    }

    fn linkage(p: &Strut) -> core::result::Result<Linkage, (&'static str, &'static str)> {
        let drawn = Drawn {
            lower_ball: p.lower_arm.ball_joint.vector(),
            upper_ball: p.leg.top_mount.vector(),
            inner: p.tie_rod.inner.vector(),
            outer: p.tie_rod.outer.vector(),
            wheel: p.wheel.centre.vector(),
        };
        Linkage::new(&p.lower_arm, &Above::Strut(p.leg.lower_end.vector()), &drawn)
    }

    #[test]
    fn at_ride_height_the_wheel_stands_as_drawn() {
        let on = strut(FRONT).at(metres(0.0), metres(0.0)).unwrap();
        assert_relative_eq!(on.camber.in_::<deg>(), -0.75, max_relative = 1e-13);
        assert_relative_eq!(on.toe.in_::<deg>(), 0.1, max_relative = 1e-12);
        for (found, drawn) in
            [(on.wheel_x, 0.0), (on.wheel_y, 0.76), (on.wheel_z, 0.31), (on.half_track_change, 0.0)]
        {
            assert!((found.si() - drawn).abs() < 1e-15, "{found:?}");
        }
        assert!(on.upper_joint_angle.si() < 1e-7 && on.lower_ball_angle.si() < 1e-7);
        assert_relative_eq!(on.torsion_bar_torque.si(), 200.0, max_relative = 1e-12);
        // The steering axis goes from the ball joint to the top mount.
        assert_relative_eq!(on.caster.si().tan(), 0.042 / 0.575, max_relative = 1e-12);
        assert_relative_eq!(on.kingpin_inclination.si().tan(), 0.14 / 0.575, max_relative = 1e-12);
    }

    /// An arm about an axis along x, and the axis of the strut in the same transverse plane as the ball joint: the instant centre lies where the
    /// line of the arm meets the line through the top mount square to the strut, the axis of which may miss the ball joint
    /// (W. F. Milliken, D. L. Milliken, *Race Car Vehicle Dynamics* (1995), chapter 17; from memory).
    #[test]
    fn front_view_centres_are_those_of_the_drawing_board() {
        let points = [
            [0.18, 0.33, 0.21],
            [-0.18, 0.33, 0.21],
            [0.0, 0.7, 0.185],
            [0.0, 0.56, 0.76],
            [0.0, 0.655, 0.33],
            [-0.13, 0.34, 0.25],
            [-0.13, 0.685, 0.24],
            [0.0, 0.76, 0.31],
        ];
        let mut model = strut(points);
        (model.wheel.toe, model.wheel.camber) =
            (Value::new(Angle::from_si(0.0)), Value::new(Angle::from_si(0.0)));
        let on = model.at(metres(0.0), metres(0.0)).unwrap();
        // z = 0.21 - (y - 0.33) 0.025 / 0.37, and z = 0.76 + (y - 0.56) 0.095 / 0.43.
        let (lower, upper) = (-0.025 / 0.37, 0.095 / 0.43);
        let y = (0.21 - 0.76 - lower * 0.33 + upper * 0.56) / (upper - lower);
        let (z, ground) = (0.76 + (y - 0.56) * upper, 0.31 - 0.3);
        assert_relative_eq!(on.front_view_centre_y.si(), y, max_relative = 1e-12);
        assert_relative_eq!(on.front_view_centre_height.si(), z - ground, max_relative = 1e-12);
        let roll_centre = (z - ground) * 0.76 / (0.76 - y);
        assert_relative_eq!(on.roll_centre_height.si(), roll_centre, max_relative = 1e-12);
        assert_relative_eq!(on.camber_change.si(), -BUMP / (0.76 - y), max_relative = 1e-12);
    }

    /// A vertical strut on a level arm that only swings fore and aft, seen from the side: the centre lies on the line square to the strut at the
    /// top mount. Anti-dive by the angle of the line from contact point or wheel centre to it (Milliken, chapter 17; from memory).
    #[test]
    fn side_view_centres_are_those_of_the_drawing_board() {
        // The arm's axis is along y in side view: it trails. The top mount leans rearward.
        let points = [
            [-0.45, 0.9, 0.25],
            [-0.45, 0.5, 0.25],
            [0.02, 0.7, 0.2],
            [-0.06, 0.7, 0.76],
            [0.01, 0.7, 0.27],
            [-0.1, 0.35, 0.3],
            [-0.1, 0.6, 0.3],
            [0.0, 0.7, 0.31],
        ];
        let mut model = strut(points);
        (model.torsion_bar, model.anti_roll_bar) = (Stated::Unknown, Stated::Unknown);
        (model.wheel.toe, model.wheel.camber) =
            (Value::new(Angle::from_si(0.0)), Value::new(Angle::from_si(0.0)));
        let outboard = model.at(metres(0.0), metres(0.0)).unwrap();
        // z = 0.25 - (x + 0.45) 0.05 / 0.47, and square to the strut's (-0.07, 0.49): z = 0.76 + (x + 0.06) 0.07 / 0.49.
        let (lower, upper) = (-0.05 / 0.47, 0.07 / 0.49);
        let x = (0.25 - 0.76 + lower * 0.45 - upper * 0.06) / (upper - lower);
        let z = 0.76 + (x + 0.06) * upper;
        assert_relative_eq!(outboard.side_view_centre_x.si(), x, max_relative = 1e-10);
        assert_relative_eq!(outboard.side_view_centre_height.si(), z - 0.01, max_relative = 1e-10);
        // Behind a front wheel and above the ground it holds the nose up; in drive the height over the wheel centre counts.
        let (share, levers) = (0.65, 2.55 / 0.52);
        assert_relative_eq!(
            outboard.brake_anti_pitch.si(),
            share * levers * (z - 0.01) / -x,
            max_relative = 1e-10
        );
        assert_relative_eq!(outboard.drive_anti_pitch.si(), levers * (z - 0.31) / -x, max_relative = 1e-10);
        if let Some(braking) = &mut model.braking {
            braking.place = Some(BrakePlace::Inboard);
        }
        let inboard = model.at(metres(0.0), metres(0.0)).unwrap();
        assert_relative_eq!(
            inboard.brake_anti_pitch.si(),
            share * levers * (z - 0.31) / -x,
            max_relative = 1e-10
        );
        // This linkage at the other end of the vehicle lifts instead of holding.
        model.axle = Axle::Rear;
        let rear = model.at(metres(0.0), metres(0.0)).unwrap();
        assert_eq!(rear.brake_anti_pitch.si(), -inboard.brake_anti_pitch.si());
        assert_eq!(rear.drive_anti_pitch.si(), -inboard.drive_anti_pitch.si());
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let far = |place: usize, to: [f64; 3]| {
            let mut points = FRONT;
            points[place] = to;
            strut(points)
        };
        let mut on_arm = strut(FRONT);
        if let Stated::Given(bar) = &mut on_arm.anti_roll_bar {
            bar.carried_by = Carrier::UpperArm;
        }
        let mut undriven = strut(FRONT);
        undriven.braking = None;
        let mut twisted = strut(FRONT);
        if let Stated::Given(bar) = &mut twisted.torsion_bar {
            bar.turned_by = Carrier::Upright;
        }
        for (wrong, key) in [
            (far(7, [f64::NAN, 0.78, 0.32]), "wheel.centre: x = NaN"),
            (far(3, [0.0, 0.5, 0.2]), "leg.top_mount: it must stand above"),
            (far(4, FRONT[3]), "leg: its ends are nearer"),
            (far(4, [0.0, 0.14, 0.66]), "leg: its axis leans"),
            (far(6, FRONT[2]), "tie_rod.outer"),
            (on_arm, "anti_roll_bar.carried_by: a strut has no upper arm"),
            (twisted, "torsion_bar.turned_by"),
            (undriven, "driving: centre_of_gravity_height"),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(key), "{message}");
            assert!(wrong.at(metres(0.0), metres(0.0)).is_err() && wrong.travel_range(metres(0.0)).is_err());
        }
    }

    #[test]
    fn beyond_its_range_the_refusal_says_which_link_and_how_far() {
        let mut model = strut(FRONT);
        model.anti_roll_bar = Stated::Unknown;
        for rack in [-0.03, 0.0, 0.03] {
            let range = model.travel_range(metres(rack)).unwrap();
            for (limit, end) in [(range.droop.si(), range.droop_end), (range.bump.si(), range.bump_end)] {
                assert!(model.at(metres(limit * (1.0 - 1e-6)), metres(rack)).is_ok());
                let message = model.at(metres(limit * (1.0 + 1e-6)), metres(rack)).unwrap_err().to_string();
                assert!(
                    message.contains(&end) && message.contains(&format!("{:.1}", limit * 1e3)),
                    "{message}"
                );
            }
        }
        let message = model.at(metres(0.0), metres(0.6)).unwrap_err().to_string();
        assert!(message.contains("tie rod"), "{message}");
    }

    #[test]
    fn changes_keep_the_load_on_coil_or_torsion_bar() {
        let on = |model: &Strut| {
            let travel = [0.0, 0.02].map(metres);
            [
                model.arch_move(metres(0.01), metres(0.015), metres(0.01), &travel).unwrap(),
                model.ride_height_change(Length::of::<mm>(-25.0), &travel).unwrap(),
                model.spacer(Length::of::<mm>(15.0), &travel).unwrap(),
            ]
        };
        let both = strut(FRONT);
        let mut twisted = strut(FRONT);
        twisted.leg.spring = None;
        for model in [&both, &twisted] {
            for table in on(model) {
                let force = table.numbers("wheel_force").unwrap();
                assert_relative_eq!(force[1], force[0], max_relative = 1e-12);
                assert!(force[3] > force[1]);
            }
        }
        // Moved as a whole but for rack and bar, its axes stand as they stood.
        let [arch, lowered, _] = on(&both);
        for name in ["caster", "kingpin_inclination", "eye_length", "camber"] {
            let of = arch.numbers(name).unwrap();
            assert_relative_eq!(of[1], of[0], max_relative = 1e-10);
        }
        let bump = both.at(metres(0.025), metres(0.0)).unwrap();
        assert_relative_eq!(lowered.numbers("camber").unwrap()[1], bump.camber.si(), max_relative = 1e-12);
    }

    #[test]
    fn the_first_joint_at_its_limit_is_named() {
        let mut model = strut(FRONT);
        let limit = |degrees: f64| Some(Value::new(Angle::of::<deg>(degrees)));
        model.joint_limits = Some(JointLimits {
            upper_ball: None,
            top_mount: limit(3.0),
            lower_ball: limit(20.0),
            tie_rod_outer: None,
            tie_rod_inner: None,
        });
        let on = model.at(metres(0.06), metres(0.0)).unwrap();
        assert_eq!(on.first_joint, "top mount");
        assert_relative_eq!(
            on.joint_left.si(),
            (Angle::of::<deg>(3.0) - on.upper_joint_angle).si(),
            max_relative = 1e-12
        );
        if let Some(limits) = &mut model.joint_limits {
            limits.upper_ball = limit(20.0);
        }
        assert!(model.check().unwrap_err().to_string().starts_with("joint_limits.upper_ball"));
    }

    #[test]
    fn in_roll_it_mirrors_itself_and_its_points_keep_their_distances() {
        let model = strut(FRONT);
        let none = metres(0.0);
        let (rest, level) =
            (model.at(none, none).unwrap(), model.in_roll(none, Angle::from_si(0.0), none).unwrap());
        assert_relative_eq!(
            level.roll_centre_height.si(),
            rest.roll_centre_height.si(),
            max_relative = 1e-10
        );
        let [one, other] = [0.03, -0.03].map(|roll| model.in_roll(none, Angle::from_si(roll), none).unwrap());
        assert_relative_eq!(one.left_camber.si(), other.right_camber.si(), max_relative = 1e-10);
        assert_relative_eq!(one.roll_centre_y.si(), -other.roll_centre_y.si(), max_relative = 1e-9);

        let table = model.points(&[metres(0.0), metres(0.04)], &[none]).unwrap();
        let points = table.rows() / 2;
        let at = |row: usize| {
            let [x, y, z] = ["x", "y", "z"].map(|name| table.numbers(name).unwrap()[row]);
            vector(x, y, z)
        };
        for row in points + 1..2 * points {
            let part = table.word("part", row).unwrap();
            if table.word("part", row - 1) == Some(part) && !["leg", "coil"].contains(&part) {
                let [moved, kept] = [row, row - points].map(|row| (at(row) - at(row - 1)).norm());
                assert!((moved - kept).abs() < 1e-10, "{part}: {moved}, {kept}");
            }
        }
    }

    #[test]
    fn a_table_equals_single_calls() {
        let model = strut(FRONT);
        let table = model.table(&[-0.03, 0.05, 0.9].map(metres), &[-0.02, 0.0].map(metres)).unwrap();
        assert_eq!(table.rows(), 6);
        assert!(table.reason(4).is_some() && table.numbers("toe").unwrap()[4].is_nan());
        let one = model.at(metres(0.05), metres(-0.02)).unwrap();
        for (name, value) in [("toe", one.toe.si()), ("wheel_rate", one.wheel_rate.si())] {
            assert_eq!(table.numbers(name).unwrap()[2].to_bits(), value.to_bits());
        }
    }

    proptest! {
        #[test]
        fn a_table_has_the_bits_of_single_calls(
            shifts in prop::collection::vec(-0.02..0.02, 24), travel in prop::collection::vec(-0.2..0.2, 1..7),
            rack in prop::collection::vec(-0.06..0.06, 1..3),
        ) {
            let model = strut(moved(&shifts));
            prop_assume!(model.check().is_ok());
            let of = |values: &[f64]| values.iter().copied().map(metres).collect::<Vec<_>>();
            table_equals_single_calls(&model, &of(&[&travel[..], &[0.0, 11.0]].concat()), &of(&rack));
        }

        #[test]
        fn links_keep_their_length_and_the_axis_its_mount(
            shifts in prop::collection::vec(-0.02..0.02, 24), travel in -0.09..0.09, rack in -0.04..0.04, through in any::<bool>(),
        ) {
            let mut points = moved(&shifts);
            if through { // the strut's axis goes through the ball joint
                points[4] = [0, 1, 2].map(|i| points[2][i] + 0.25 * (points[3][i] - points[2][i]));
            }
            let Ok(linkage) = linkage(&strut(points)) else { return Ok(()) };
            let Some(pose) = linkage.at(travel, rack) else { return Ok(()) };
            let at = |place: usize| vector(points[place][0], points[place][1], points[place][2]);
            let upright = |place: usize| pose.upright.point(linkage.here(Carrier::Upright, at(place))).at;
            let inner = at(5) + vector(0.0, rack, 0.0);
            for (now, was) in [
                (upright(2) - at(0), at(2) - at(0)), (upright(2) - at(1), at(2) - at(1)), (upright(6) - inner, at(6) - at(5)),
                (upright(6) - upright(2), at(6) - at(2)), (upright(4) - upright(6), at(4) - at(6)), (upright(7) - upright(4), at(7) - at(4)),
            ] {
                prop_assert!((now.norm() - was.norm()).abs() < 1e-12);
            }
            // The top mount lies on the line through the lower end along what was the strut's axis.
            let along = pose.upright.direction(linkage.direction_here(Carrier::Upright, (at(3) - at(4)).unit()));
            prop_assert!((at(3) - upright(4)).cross(along).norm() < 1e-12);
            prop_assert!((upright(7).z - points[7][2] - travel).abs() < 1e-12);
            let ball = pose.lower_arm.point(linkage.here(Carrier::LowerArm, at(2))).at;
            prop_assert!((ball - upright(2)).norm() < 1e-12);
        }

        /// Analytic derivatives against differences of positions; energy against forces and rates at the wheel.
        #[test]
        fn rates_are_derivatives(
            shifts in prop::collection::vec(-0.015..0.015, 24), travel in -0.05..0.05, rack in -0.02..0.02,
            carrier in prop::sample::select(vec![None, Some(Carrier::LowerArm), Some(Carrier::Upright)]),
        ) {
            let mut model = strut(moved(&shifts));
            model.leg.spring_seats = carrier.map(|carried_by| SpringSeats {
                body: point([-0.02, 0.56, 0.7]), lower: point([0.02, 0.63, 0.42]), carried_by,
            });
            let at = |z: f64| model.at(metres(z), metres(rack));
            let h = 2e-4;
            let (Ok(low), Ok(on), Ok(high)) = (at(travel - h), at(travel), at(travel + h)) else { return Ok(()) };
            let slope = |of: fn(&WheelPosition) -> f64| (of(&high) - of(&low)) / (2.0 * h);
            let near = |found: f64, wanted: f64, size: f64| (found - wanted).abs() < size;
            prop_assert!(near(slope(|on| on.eye_length.si()), -on.damper_motion_ratio.si(), 1e-6));
            prop_assert!(near(slope(|on| on.spring_length.si()), -on.motion_ratio.si(), 1e-6));
            prop_assert!(near(slope(|on| on.camber.si()) * BUMP, on.camber_change.si(), 1e-7));
            prop_assert!(near(slope(|on| on.toe.si()) * BUMP, on.bump_steer.si(), 1e-7));
            prop_assert!(near(slope(|on| on.bar_angle.si()) * 0.24, on.bar_motion_ratio.si(), 1e-5));
            prop_assert!(near(slope(|on| on.wheel_x.si()), on.wheel_path_angle.si().tan(), 1e-6));
            // Energy of coil, gas and torsion bar: its first derivative is the wheel's force, its second the wheel rate.
            let energy = |on: &WheelPosition| {
                let (used, torque) = (on.spring_used.si().max(0.0), on.torsion_bar_torque.si());
                0.5 * 30_000.0 * used * used - 150.0 * on.eye_length.si() + 0.5 * torque * torque / 1800.0
            };
            let force = (energy(&high) - energy(&low)) / (2.0 * h);
            prop_assert!(near(force, on.wheel_force.si(), 0.01), "{force} {:?}", on.wheel_force);
            // Not across the corner at which the coil comes loose.
            prop_assume!(on.spring_used.si().abs() > 1e-3);
            let rate = slope(|on| on.wheel_force.si());
            prop_assert!(near(rate, on.wheel_rate.si(), 1.0), "{rate} {:?}", on.wheel_rate);
        }

        /// Front and rear exchanged: toe and caster change their sign, camber and track do not.
        #[test]
        fn a_mirror_image_moves_as_one(travel in -0.06..0.06, rack in -0.02..0.02) {
            let mut mirrored = strut(FRONT.map(|[x, y, z]| [-x, y, z]));
            mirrored.wheel.toe = Value::new(Angle::of::<deg>(-0.1));
            let mut plain = strut(FRONT);
            (plain.anti_roll_bar, mirrored.anti_roll_bar) = (Stated::Unknown, Stated::Unknown);
            let one = plain.at(metres(travel), metres(rack)).unwrap();
            let other = mirrored.at(metres(travel), metres(rack)).unwrap();
            for (a, b) in [
                (one.camber.si(), other.camber.si()), (one.toe.si(), -other.toe.si()), (one.caster.si(), -other.caster.si()),
                (one.half_track.si(), other.half_track.si()), (one.mechanical_trail.si(), -other.mechanical_trail.si()),
                (one.roll_centre_height.si(), other.roll_centre_height.si()), (one.brake_anti_pitch.si(), -other.brake_anti_pitch.si()),
                (one.drive_anti_pitch.si(), -other.drive_anti_pitch.si()),
            ] {
                prop_assert!((a - b).abs() < 1e-12, "{a} {b}");
            }
            // The wheel's forces, to the last places of their kilonewtons.
            prop_assert!((one.wheel_force.si() - other.wheel_force.si()).abs() < 1e-8);
            // The right wheel: every y changes its sign, the rack's travel too.
            let linkage = linkage(&strut(FRONT.map(|[x, y, z]| [x, -y, z]))).unwrap();
            let pose = linkage.at(travel, -rack).unwrap();
            prop_assert!((pose.wheel.at.y + one.wheel_y.si()).abs() < 1e-12);
            prop_assert!((pose.steering_axis.x / pose.steering_axis.z + one.caster.si().tan()).abs() < 1e-12);
        }
    }
}
