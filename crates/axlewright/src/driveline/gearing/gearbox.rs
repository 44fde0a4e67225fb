#![expect(
    clippy::indexing_slicing,
    reason = "windows of two have two, and a gearbox without gears is refused before"
)]

use crate::base::document::{Model, Value};
use crate::base::table::{Filling, Table, record};
use crate::driveline::{
    engine_speed, engine_speed_after_shift, final_drive_for_cruise, gear_step, road_speed,
};
use crate::units::{AngularVelocity, Length, Ratio, Velocity, rpm};
use crate::{Error, Result, cannot, valid};

/// A gearbox in a vehicle: engine speed in each gear, and the gear and axle for a cruise.
///
/// # Formula
/// `v = w r / (i_t i_g i_f)`; step `i_1 / i_2`; after a shift `w_2 = w_r i_2 / i_1`; cruise `w = v i_t i_g i_f / r`, margin = `w_r / w`; axle for a cruise `i_f = w r / (v i_t i_g)`
///
/// # Fields
/// - `gears` — forward gears from first to top, each with its `ratio` `i_g`, input over output speed
/// - `final_drive` — `i_f`, propeller-shaft speed over wheel speed
/// - `ranges` — ranges of the transfer case, each with `name` and `ratio` `i_t`, the road range among them; left out without a transfer case
/// - `rolling_radius` — `r`, effective rolling radius: distance per turn over 2 pi
/// - `red_line` — `w_r`, highest speed of the engine
///
/// # Valid for
/// Ratios fall from each gear to the next, and tyre, clutch and converter do not slip. The range with the least ratio is the one for the road. Steps are the same in all ranges; the
/// cruise is computed in the road range. Two limits are not checked: the pull of the engine in the gear, and the highest shaft speed of axle and shaft. List reverse and a creeper separately.
///
/// # Source
/// Kinematics of gears and of rolling; ISO 8855 for the term effective rolling radius (from memory)
///
/// # Caution
/// A shift down above the speed that the next lower gear reaches at the red line overspeeds the engine and can lock the driven wheels. Tyres, shafts and local codes have speed limits of their own.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Gearbox {
    /// Forward gears from first to top.
    pub gears: Vec<Gear>,
    /// Propeller-shaft speed over wheel speed.
    pub final_drive: Value<Ratio>,
    /// Ranges of the transfer case.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ranges: Option<Vec<TransferRange>>,
    /// Effective rolling radius.
    pub rolling_radius: Value<Length>,
    /// Highest speed of the engine.
    pub red_line: Value<AngularVelocity>,
}

/// One gear of a gearbox.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `ratio`"))]
pub struct Gear {
    /// Input over output speed.
    pub ratio: Value<Ratio>,
}

/// One range of a transfer case.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `name` and `ratio`"))]
pub struct TransferRange {
    /// Name of the range.
    pub name: String,
    /// Input over output speed.
    pub ratio: Value<Ratio>,
}

record! {
    /// Adjacent gears with the largest step.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct LargestGap {
        /// Number of the lower gear, from 1; the lower pair if two are alike.
        pub gear_before: i64,
        /// Number of the higher gear.
        pub gear_after: i64,
        /// Ratio of the lower over that of the higher.
        pub step: Ratio,
        /// Engine speed after a shift between them at the red line.
        pub engine_speed_after_shift: AngularVelocity,
    }
}

record! {
    /// Gear and axle for a cruise.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct CruiseChoice {
        /// Number of the gear, from 1, whose engine speed comes nearest with the present axle, as a ratio; the higher one of two equal ones.
        pub gear: i64,
        /// Engine speed with the present axle; it may be above the red line if every gear is too short.
        pub engine_speed_in_gear: AngularVelocity,
        /// Axle ratio with which that gear gives the wanted engine speed.
        pub final_drive: Ratio,
        /// Axle ratio with which top gear gives it.
        pub final_drive_in_top: Ratio,
    }
}

impl crate::base::Sealed for Gearbox {}
impl Model for Gearbox {
    fn check(&self) -> Result<()> {
        if self.gears.is_empty() {
            return Err(Error::Length { argument: "gears", length: 0, wanted: "it needs at least one gear" });
        }
        if self.ranges.as_ref().is_some_and(Vec::is_empty) {
            return Err(Error::Length {
                argument: "ranges",
                length: 0,
                wanted: "leave it out without a transfer case",
            });
        }
        let (final_drive, rolling_radius, red_line) =
            (self.final_drive.quantity, self.rolling_radius.quantity, self.red_line.quantity);
        valid! {
            final_drive: 0.1 <= .. <= 30 ; "plausibility limit: an axle with its hubs lies between 0.1 and 30; 410 is 4.10 without its point";
            rolling_radius: 0.001 <= .. <= 100 ; "plausibility limit: wheels lie between 1 mm and 100 m";
            red_line: 1 <= .. <= 100e3 ; "plausibility limit: an engine turns between 10 rpm and 950,000 rpm";
        }
        for (place, gear) in self.gears.iter().enumerate() {
            let before = place.checked_sub(1).map(|before| self.gears[before].ratio.quantity);
            gear.check(before).map_err(|error| error.within(&format!("gears[{place}]")))?;
        }
        for (place, range) in self.ranges.iter().flatten().enumerate() {
            range
                .check(&self.gears)
                .map_err(|error| error.within(&format!("ranges[{place}] ({})", range.name)))?;
        }
        Ok(())
    }
}

record! {
    /// A gear at the red line.
    struct InGear {
        ratio: Ratio,
        overall_ratio: Ratio,
        red_line_speed: Velocity,
        speed_per_1000_rpm: Velocity,
        step: Ratio,
        engine_speed_after_shift: AngularVelocity,
    }
}

record! {
    /// A gear at a road speed.
    struct AtSpeed {
        engine_speed: AngularVelocity,
        margin: Ratio,
    }
}

impl Gearbox {
    /// Ratio, speeds and step of every gear, in every range.
    ///
    /// # Returns
    /// One row for each range and gear: `range` (empty without a transfer case), `gear`, `ratio`, `overall_ratio` (through range and axle), `red_line_speed` (of the road), `speed_per_1000_rpm`,
    /// `step` to the next gear and `engine_speed_after_shift` into it at the red line; these two are not numbers in top gear.
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, driveline::*, units::*};
    /// let gearbox = Gearbox {
    ///     gears: [4.0, 2.0, 1.0].map(|ratio| Gear { ratio: Value::new(Ratio::of::<one>(ratio)) }).to_vec(),
    ///     final_drive: Value::new(Ratio::of::<one>(4.0)), ranges: None,
    ///     rolling_radius: Value::parse("0.35 m")?, red_line: Value::parse("4200 rpm")?,
    /// }.checked()?;
    /// let table = gearbox.gears_table()?;
    /// let after = table.numbers("engine_speed_after_shift").unwrap_or_default();
    /// assert_eq!(format!("{:.0} rpm", AngularVelocity::from_si(after[0]).in_::<rpm>()), "2100 rpm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn gears_table(&self) -> Result<Table> {
        self.check()?;
        let mut rows = Filling::over(["range", "gear"], &[self.ranges().len(), self.gears.len()])?;
        let (final_drive, radius) = (self.final_drive.quantity, self.rolling_radius.quantity);
        for (name, range) in self.ranges() {
            for (place, gear) in self.gears.iter().enumerate() {
                let through = range * gear.ratio.quantity;
                let (step, after) = match self.gears.get(place + 1) {
                    Some(next) => self.shift(gear, next)?,
                    None => (Ratio::from_si(f64::NAN), AngularVelocity::from_si(f64::NAN)),
                };
                let on = InGear {
                    ratio: gear.ratio.quantity,
                    overall_ratio: through * final_drive,
                    red_line_speed: road_speed(self.red_line.quantity, through, final_drive, radius)?,
                    speed_per_1000_rpm: road_speed(
                        AngularVelocity::of::<rpm>(1000.0),
                        through,
                        final_drive,
                        radius,
                    )?,
                    step,
                    engine_speed_after_shift: after,
                };
                rows.push((name, place as i64 + 1), Ok(on))?;
            }
        }
        rows.finish()
    }

    /// Engine speed in every range and gear over road speeds.
    ///
    /// # Parameters
    /// - `road_speed` — speeds of the vehicle
    ///
    /// # Returns
    /// One row for each range, gear and speed: `range` (empty without a transfer case), `gear`, `road_speed`, `engine_speed` and `margin` (red line over engine speed):
    /// below 1 the gear does not reach that speed below the red line.
    pub fn table(&self, road_speed: &[Velocity]) -> Result<Table> {
        self.check()?;
        let lists = [self.ranges().len(), self.gears.len(), road_speed.len()];
        let mut rows = Filling::over(["range", "gear", "road_speed"], &lists)?;
        for (name, range) in self.ranges() {
            for (place, gear) in self.gears.iter().enumerate() {
                for speed in road_speed {
                    let on = self.cruise(*speed, range * gear.ratio.quantity).map(|engine_speed| {
                        let margin = self.red_line.quantity / engine_speed;
                        AtSpeed { engine_speed, margin }
                    });
                    rows.push((name, place as i64 + 1, *speed), on)?;
                }
            }
        }
        rows.finish()
    }

    /// Adjacent gears with the largest step.
    ///
    /// # Returns
    /// See the fields of [`LargestGap`].
    pub fn largest_gap(&self) -> Result<LargestGap> {
        self.check()?;
        let mut largest: Option<LargestGap> = None;
        for (place, pair) in self.gears.windows(2).enumerate() {
            let (step, engine_speed_after_shift) = self.shift(&pair[0], &pair[1])?;
            if largest.is_none_or(|largest| step > largest.step) {
                let gear_before = place as i64 + 1;
                largest = Some(LargestGap {
                    gear_before,
                    gear_after: gear_before + 1,
                    step,
                    engine_speed_after_shift,
                });
            }
        }
        largest.ok_or_else(|| cannot!("no gap: gears has one gear only; list at least two"))
    }

    /// Gear and axle ratio for a wanted cruise, in the range for the road.
    ///
    /// # Parameters
    /// - `road_speed` — speed of the cruise
    /// - `engine_speed` — wanted engine speed at the cruise, at most the red line
    ///
    /// # Returns
    /// See the fields of [`CruiseChoice`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, driveline::*, units::*};
    /// let gearbox = Gearbox {
    ///     gears: [4.7, 2.5, 1.5, 1.0, 0.84].map(|ratio| Gear { ratio: Value::new(Ratio::of::<one>(ratio)) }).to_vec(),
    ///     final_drive: Value::new(Ratio::of::<one>(4.10)), ranges: None,
    ///     rolling_radius: Value::parse("348 mm")?, red_line: Value::parse("4500 rpm")?,
    /// }.checked()?;
    /// let cruise = gearbox.for_cruise(Velocity::of::<km_h>(100.0), AngularVelocity::of::<rpm>(2400.0))?;
    /// assert_eq!(format!("{}: {:.0} rpm", cruise.gear, cruise.engine_speed_in_gear.in_::<rpm>()), "5: 2625 rpm");
    /// assert_eq!(format!("{:.2}", cruise.final_drive.in_::<one>()), "3.75");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn for_cruise(&self, road_speed: Velocity, engine_speed: AngularVelocity) -> Result<CruiseChoice> {
        valid! {
            road_speed: 0.001 <= .. <= 200 ; "plausibility limit: a cruise lies between 1 mm/s and 200 m/s";
            engine_speed: 0.001 <= .. <= 100e3 ; "plausibility limit: an engine turns between 0.01 rpm and 950,000 rpm";
        }
        self.check()?;
        let red_line = self.red_line.quantity;
        if engine_speed > red_line {
            return Err(cannot!(engine_speed <= red_line; "is above red_line: no gear holds this cruise"));
        }
        let range =
            self.ranges().into_iter().map(|(_, ratio)| ratio).reduce(|a, b| if b < a { b } else { a });
        let range = range.unwrap_or(Ratio::from_si(1.0));
        let axle = |ratio: Ratio| {
            final_drive_for_cruise(road_speed, engine_speed, range * ratio, self.rolling_radius.quantity)
        };
        let mut nearest = (f64::INFINITY, 0, self.gears[0].ratio.quantity, engine_speed);
        for (place, gear) in self.gears.iter().enumerate() {
            let ratio = gear.ratio.quantity;
            let turns = self.cruise(road_speed, range * ratio)?;
            let off = (turns / engine_speed).si().ln().abs();
            if off <= nearest.0 {
                nearest = (off, place as i64 + 1, ratio, turns);
            }
        }
        let (_, gear, ratio, turns) = nearest;
        let top = self.gears[self.gears.len() - 1].ratio.quantity;
        Ok(CruiseChoice {
            gear,
            engine_speed_in_gear: turns,
            final_drive: axle(ratio)?,
            final_drive_in_top: axle(top)?,
        })
    }

    /// Step between two gears, and the engine speed after a shift between them at the red line.
    fn shift(&self, before: &Gear, after: &Gear) -> Result<(Ratio, AngularVelocity)> {
        let (before, after) = (before.ratio.quantity, after.ratio.quantity);
        Ok((gear_step(before, after)?, engine_speed_after_shift(self.red_line.quantity, before, after)?))
    }

    fn cruise(&self, road_speed: Velocity, through: Ratio) -> Result<AngularVelocity> {
        valid! { road_speed: 0.001 <= .. <= 200 ; "plausibility limit: a cruise lies between 1 mm/s and 200 m/s"; }
        engine_speed(road_speed, through, self.final_drive.quantity, self.rolling_radius.quantity)
    }

    /// Name and ratio of every range; without a transfer case, one range of ratio 1 without a name.
    fn ranges(&self) -> Vec<(&str, Ratio)> {
        match &self.ranges {
            None => vec![("", Ratio::from_si(1.0))],
            Some(ranges) => ranges.iter().map(|range| (range.name.as_str(), range.ratio.quantity)).collect(),
        }
    }
}

impl Gear {
    fn check(&self, before: Option<Ratio>) -> Result<()> {
        let ratio = self.ratio.quantity;
        valid! { ratio: 0.1 <= .. <= 30 ; "plausibility limit: a gear lies between 0.1 and 30; 410 is 4.10 without its point"; }
        if let Some(before) = before {
            valid! { before > ratio ; "gears are listed from first to top, and each has a lower ratio than the one before it"; }
        }
        Ok(())
    }
}

impl TransferRange {
    fn check(&self, gears: &[Gear]) -> Result<()> {
        let ratio = self.ratio.quantity;
        valid! { ratio: 0.1 <= .. <= 30 ; "plausibility limit: a range of a transfer case lies between 0.1 and 30"; }
        for gear in gears {
            let ratio_with_gear = ratio * gear.ratio.quantity;
            valid! { ratio_with_gear: 0.001 <= .. <= 1000 ; "plausibility limit: no gear behind a transfer case lies outside 0.001 to 1000"; }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{km_h, one};
    use approx::assert_relative_eq;

    fn ratio(value: f64) -> Value<Ratio> {
        Value::new(Ratio::of::<one>(value))
    }

    /// Round numbers: 1 m of radius, an axle of 4 and 400 rad/s.
    fn gearbox(gears: &[f64]) -> Gearbox {
        Gearbox {
            gears: gears.iter().map(|gear| Gear { ratio: ratio(*gear) }).collect(),
            final_drive: ratio(4.0),
            ranges: None,
            rolling_radius: Value::new(Length::from_si(1.0)),
            red_line: Value::new(AngularVelocity::from_si(400.0)),
        }
    }

    fn range(name: &str, value: f64) -> TransferRange {
        TransferRange { name: name.to_owned(), ratio: ratio(value) }
    }

    #[test]
    fn a_gearbox_worked_by_hand() {
        // 400 / (5 * 4), / (2 * 4), / (1 * 4) m/s; after the shifts 400 * 2/5 and 400 * 1/2 rad/s.
        let table = gearbox(&[5.0, 2.0, 1.0]).gears_table().unwrap();
        for (column, wanted) in [
            ("overall_ratio", [20.0, 8.0, 4.0]),
            ("red_line_speed", [20.0, 50.0, 100.0]),
            ("step", [2.5, 2.0, f64::NAN]),
            ("engine_speed_after_shift", [160.0, 200.0, f64::NAN]),
        ] {
            let found = table.numbers(column).unwrap();
            for (found, wanted) in found.iter().zip(wanted) {
                assert!((found - wanted).abs() < 1e-12 || found.is_nan() && wanted.is_nan(), "{column}");
            }
        }
        let gap = gearbox(&[5.0, 2.0, 1.0]).largest_gap().unwrap();
        assert_eq!((gap.gear_before, gap.gear_after, gap.step.si()), (1, 2, 2.5));
        assert!(gearbox(&[5.0]).largest_gap().unwrap_err().to_string().contains("one gear"));
    }

    #[test]
    fn a_range_multiplies_every_gear_and_the_road_range_is_for_the_cruise() {
        let plain = gearbox(&[5.0, 2.0, 1.0]);
        let ranges = Some(vec![range("low", 2.5), range("high", 1.0)]);
        let two = Gearbox { ranges, ..plain.clone() };
        let speeds = [plain.gears_table().unwrap(), two.gears_table().unwrap()]
            .map(|table| table.numbers("red_line_speed").unwrap().to_vec());
        assert_eq!(speeds[1].len(), 6);
        for gear in 0..3 {
            assert_relative_eq!(speeds[1][gear] * 2.5, speeds[0][gear]);
            assert_relative_eq!(speeds[1][gear + 3], speeds[0][gear]);
        }
        let cruise = (Velocity::from_si(40.0), AngularVelocity::from_si(200.0));
        assert_eq!(plain.for_cruise(cruise.0, cruise.1), two.for_cruise(cruise.0, cruise.1));
    }

    #[test]
    fn the_nearest_gear_is_nearest_as_a_ratio_and_its_axle_fits() {
        // 40 m/s: 800, 320 and 160 rad/s; 226 is nearer to 160 (1.4125) than to 320 (1.416).
        let box_ = gearbox(&[5.0, 2.0, 1.0]);
        let at = |wanted| box_.for_cruise(Velocity::from_si(40.0), AngularVelocity::from_si(wanted)).unwrap();
        assert_eq!((at(226.0).gear, at(227.0).gear), (3, 2));
        assert_relative_eq!(at(227.0).engine_speed_in_gear.si(), 320.0);
        assert_relative_eq!(at(227.0).final_drive.si(), 4.0 * 227.0 / 320.0, max_relative = 1e-14);
        assert_relative_eq!(at(227.0).final_drive_in_top.si(), 4.0 * 227.0 / 160.0, max_relative = 1e-14);
        let above = box_.for_cruise(Velocity::from_si(40.0), AngularVelocity::from_si(401.0)).unwrap_err();
        assert!(above.to_string().contains("red_line"), "{above}");
    }

    #[test]
    fn a_gear_that_does_not_reach_the_speed_is_short() {
        let speeds = [180.0, 1e5].map(Velocity::of::<km_h>);
        let table = gearbox(&[5.0, 2.0, 1.0]).table(&speeds).unwrap();
        let margin = table.numbers("margin").unwrap();
        assert!(margin[0] < 1.0 && margin[2] >= 1.0);
        assert_relative_eq!(margin[4], 2.0, max_relative = 1e-14);
        assert!(table.reason(1).is_some_and(|error| error.to_string().starts_with("road_speed")));
    }

    #[test]
    fn what_cannot_be_is_refused_by_name() {
        let full = gearbox(&[5.0, 2.0, 1.0]);
        assert!(full.check().is_ok());
        for (name, wrong) in [
            ("gears", gearbox(&[])),
            ("gears[1]: before = 5", gearbox(&[5.0, 5.0])),
            ("gears[0]: ratio", gearbox(&[f64::NAN])),
            ("final_drive", Gearbox { final_drive: ratio(0.0), ..full.clone() }),
            ("ranges", Gearbox { ranges: Some(vec![]), ..full.clone() }),
            (
                "ranges[1] (b): ratio = ",
                Gearbox { ranges: Some(vec![range("a", 1.0), range("b", -1.0)]), ..full.clone() },
            ),
            ("ranges[0] (a): ratio = 40", Gearbox { ranges: Some(vec![range("a", 40.0)]), ..full.clone() }),
            (
                "rolling_radius",
                Gearbox { rolling_radius: Value::new(Length::from_si(1e300)), ..full.clone() },
            ),
            (
                "red_line",
                Gearbox { red_line: Value::new(AngularVelocity::from_si(f64::INFINITY)), ..full.clone() },
            ),
        ] {
            let message = wrong.check().unwrap_err().to_string();
            assert!(message.starts_with(name), "{message}");
            assert!(wrong.gears_table().is_err() && wrong.largest_gap().is_err());
        }
    }
}
