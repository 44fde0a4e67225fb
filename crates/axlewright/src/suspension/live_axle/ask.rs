//! Questions to a live axle, each answered by the axle as it is prepared.

use super::forces::AxleLoad;
use super::linkage::AxleLinkage;
use super::model::LiveAxle;
use super::position::{AxlePosition, Found};
use super::prepared::PreparedLiveAxle;
use crate::Result;
use crate::base::document::Prepare;
use crate::base::table::{Filling, Table};
use crate::suspension::TravelRange;
use crate::suspension::kinematics::outline::outlines;
use crate::units::{Angle, Force, Length, Torque};
use std::sync::Arc;

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
    /// - `heave` — `z`, travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — `phi`, roll angle of the axle relative to the body, about x; positive with the left wheel in bump
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
    /// - `heave` — travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    ///
    /// # Returns
    /// One row for each heave and roll: `heave`, `roll`, and the results of `at`: `...`.
    pub fn table(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        let mut rows = Filling::over(["heave", "roll"], &[heave.len(), roll.len()])?;
        let mut on = Found::unknown();
        for heave in heave {
            for roll in roll {
                rows.push((*heave, *roll), ready.find(*heave, *roll, &mut on).map(|()| on))?;
            }
        }
        rows.finish()
    }

    /// Forces in every link, rod and coil-over while the ground acts on both tyres at a heave and roll.
    ///
    /// # Parameters
    /// - `heave` — travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    /// - `left_longitudinal_force` — force of the ground on the left tyre along the body's x, positive forward: drive; braking is negative
    /// - `right_longitudinal_force` — force of the ground on the right tyre along the body's x
    /// - `longitudinal_height` — height above the ground at which both act: zero in drive and braking, whose torque the housing takes; the wheel's centre if the wheel rolls freely; the edge of a kerb
    /// - `left_lateral_force` — force of the ground on the left tyre along the body's y, positive to the left
    /// - `right_lateral_force` — force of the ground on the right tyre along the body's y, positive to the left
    /// - `lateral_height` — height above the ground at which both act: zero on the road, the edge of a kerb
    /// - `left_vertical_force` — force of the ground on the left tyre along the body's z, positive up, without its share of the axle's own weight
    /// - `right_vertical_force` — force of the ground on the right tyre along the body's z, without its share of the axle's own weight
    /// - `drop_link_force` — force in the left drop link of the anti-roll bar, tension positive; the right one has its opposite; zero without a bar
    /// - `shaft_torque` — torque of the propeller shaft on the pinion about its axis, positive about its forward direction: it moves load from one wheel to the other
    ///
    /// # Returns
    /// One row for each part: `heave`, `roll`, `part` (each link by its name, of a pair with `left` or `right` after it, `lateral rod`, `upper rod` and `lower rod` of a Watt linkage, `coil-over left`,
    /// `coil-over right`), `tension` (compression is negative), and its force on the body `body_x`, `body_y`, `body_z`. A rod at a bell crank on the body pulls on the crank; its pivot carries both rods.
    ///
    /// Heave and roll are given, so the coil-overs take what the balance leaves: coil, gas, damper and stop together. Where a link is redundant, the strain energy of the bushes is least, and links that bind at
    /// this heave and roll pull without any load. If none of the redundant links has a bush, what they share is not known. The axle and its links have no mass here, and the axle does not move in its bushes.
    #[expect(
        clippy::too_many_arguments,
        reason = "three forces of the ground on each tyre, two heights, bar and shaft"
    )]
    pub fn forces(
        &self,
        heave: Length,
        roll: Angle,
        left_longitudinal_force: Force,
        right_longitudinal_force: Force,
        longitudinal_height: Length,
        left_lateral_force: Force,
        right_lateral_force: Force,
        lateral_height: Length,
        left_vertical_force: Force,
        right_vertical_force: Force,
        drop_link_force: Force,
        shaft_torque: Torque,
    ) -> Result<Table> {
        let on = AxleLoad {
            left_longitudinal_force,
            right_longitudinal_force,
            longitudinal_height,
            left_lateral_force,
            right_lateral_force,
            lateral_height,
            left_vertical_force,
            right_vertical_force,
            drop_link_force,
            shaft_torque,
        };
        self.prepare()?.forces(heave, roll, on)
    }

    /// Positions of all joints, part by part, to draw the axle or to measure clearances.
    ///
    /// # Parameters
    /// - `heave` — travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    ///
    /// # Returns
    /// One row for each heave, roll and point, with the points of a part in the order in which a line joins them: `heave`, `roll`, `part` (`axle`, each link by its name, of a pair with `left` or `right` after it, `lateral rod`,
    /// `upper rod`, `lower rod` and `bell crank` of a Watt linkage, `coil-over left`, `coil-over right`, `anti-roll bar`, `pinion` where its nose is given, `wheel left`, `wheel right`), `point`, and its place `x`, `y`, `z` in the body's axes.
    pub fn points(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        outlines(["heave", "roll"], (heave, roll), |heave, roll| ready.outline(heave, roll))
    }

    /// Travel of the linkage in droop and bump before a link is over-extended or a drop link of the bar lines up with its lever; damper, spring and joints may end it earlier.
    ///
    /// # Parameters
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    ///
    /// # Returns
    /// - `droop` — lowest heave, negative
    /// - `droop_end` — the link that ends it, or `anti-roll bar`
    /// - `bump` — highest heave
    /// - `bump_end` — the link that ends it, or `anti-roll bar`
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        self.prepare()?.travel_range(roll)
    }
}
