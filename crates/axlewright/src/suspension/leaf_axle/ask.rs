//! Questions to an axle on leaf springs, each answered by the axle as it is prepared.

use super::model::LeafAxle;
use super::position::{LeafAxlePosition, WindUp};
use super::prepared::PreparedLeafAxle;
use crate::Result;
use crate::base::document::Prepare;
use crate::base::table::{Filling, Table};
use crate::suspension::TravelRange;
use crate::suspension::kinematics::outline::outlines;
use crate::units::{Angle, Length, Torque};

impl Prepare for LeafAxle {
    type Prepared<'a> = PreparedLeafAxle<'a>;

    fn prepare(&self) -> Result<PreparedLeafAxle<'_>> {
        self.ready(|ready| ready.settled())
    }
}

impl LeafAxle {
    /// The axle at a heave and roll: position, steer, pinion, springs, shackles, roll centre, anti-squat and remaining strokes.
    ///
    /// # Parameters
    /// - `heave` — `z`, travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — `r`, roll angle of the axle relative to the body, about x; positive with the left wheel in bump
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
    /// - `heave` — travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    ///
    /// # Returns
    /// One row for each heave and roll: `heave`, `roll`, and the results of `at`: `...`.
    pub fn table(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        let mut rows = Filling::over(["heave", "roll"], &[heave.len(), roll.len()])?;
        for heave in heave {
            for roll in roll {
                rows.push((*heave, *roll), ready.at(*heave, *roll))?;
            }
        }
        rows.finish()
    }

    /// Positions of all joints and the bent shape of the springs, part by part, to draw the axle or to measure clearances.
    ///
    /// # Parameters
    /// - `heave` — travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    ///
    /// # Returns
    /// One row for each heave, roll and point, with the points of a part in the order in which a line joins them: `heave`, `roll`, `part` (`axle`, `spring left`, `shackle left`, `seat left`, `damper left`, `coil-over left`, `wheel left`, the same of the right side, and `anti-roll bar`), `point`,
    /// and its place `x`, `y`, `z` in the body's axes. The main leaf goes from the `fixed eye` through `leaf`, `clamp` and `seat` to the `shackle eye`; sideways it is drawn from the eyes, which stay in their plane, evenly to its seat. A seat stands on the axle's own line, above or below it.
    pub fn points(&self, heave: &[Length], roll: &[Angle]) -> Result<Table> {
        let ready = self.prepare()?;
        outlines(["heave", "roll"], (heave, roll), |heave, roll| ready.outline(heave, roll))
    }

    /// Travel of the springs in droop and bump until a shackle lines up with its spring, or a drop link of the bar with its lever; damper, bump stop, coil and the leaves' strength may end it earlier.
    ///
    /// # Parameters
    /// - `roll` — roll angle of the axle relative to the body, about x; positive with the left wheel in bump
    ///
    /// # Returns
    /// - `droop` — lowest heave, negative
    /// - `droop_end` — what ends it: `shackle`, `half to the fixed eye`, `half to the shackle`, `axle's pitch` or `anti-roll bar`
    /// - `bump` — highest heave
    /// - `bump_end` — what ends it, by the same names
    pub fn travel_range(&self, roll: Angle) -> Result<TravelRange> {
        self.prepare()?.travel_range(roll)
    }

    /// Wind-up of the axle in its springs under drive or brake, at constant heave.
    ///
    /// # Parameters
    /// - `heave` — travel of the axle's middle relative to the body, from ride height; positive in bump
    /// - `torque` — torque of both wheels together, positive in forward drive, negative in braking; the force at the ground is this torque over the loaded radius
    ///
    /// # Returns
    /// See the fields of [`WindUp`].
    pub fn wind_up(&self, heave: Length, torque: Torque) -> Result<WindUp> {
        self.prepare()?.wind_up(heave, torque)
    }
}
