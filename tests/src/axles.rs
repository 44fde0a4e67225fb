//! Live axles of a sheet beside their models: each stage of the sheet against the model with what that stage takes.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic, its helpers too")]

use crate::assessed::value;
use axlewright::sheet::{Assessment, Sheet, SheetModel};
use axlewright::suspension::{
    AxlePosition, LeafAxle, LeafAxlePosition, LiveAxle, PreparedLeafAxle, PreparedLiveAxle,
};
use axlewright::units::{Angle, Length, Torque};
use axlewright::{Model, Prepare, Stated};
use std::f64::consts::PI;

const NAN: f64 = f64::NAN;
/// Bump over which steer is told.
const BUMP: f64 = 0.025;

/// Sheet, its assessment and the axle that is held.
pub struct Held<'a> {
    /// Sheet.
    pub sheet: &'a Sheet,
    /// Its assessment.
    pub on: &'a Assessment,
    /// End of the vehicle: `rear`.
    pub axle: &'a str,
}

/// True if the document leaves out a bush of a drawn link or rod.
fn lacks_a_bush(of: &LiveAxle) -> bool {
    let links = of.lower_links.iter().chain(&of.upper_links).map(|on| [&on.body_bush, &on.axle_bush]);
    let rod = of.lateral_rod.as_ref().into_iter().map(|on| [&on.body_bush, &on.axle_bush]);
    let watt = of.watt.as_ref().into_iter().flat_map(|on| [&on.upper_rod, &on.lower_rod]);
    let rods = watt.map(|on| [&on.crank_bush, &on.outer_bush]);
    links.chain(rod).chain(rods).flatten().any(Option::is_none)
}

impl Held<'_> {
    fn value(&self, line: &str) -> f64 {
        value(self.on, &format!("{}.{line}", self.axle))
    }

    /// The line has this number to the last bit, or neither is known. A line that is written stands beside the model.
    fn same(&self, line: &str, model: f64) {
        let path = format!("{}.{line}", self.axle);
        if self.sheet.get(&path).is_ok_and(|written| written.is_some()) {
            return;
        }
        let on = self.value(line);
        let same = on.to_bits() == model.to_bits() || on.is_nan() && model.is_nan();
        assert!(same, "{path}: {on} on the sheet, {model} of the model");
    }

    /// Holds the axle on links.
    pub fn links(&self, of: &SheetModel) {
        let Ok(read) = of.read::<LiveAxle>() else {
            // A part that is only begun, or one that cannot be, is refused by both.
            let read = |line: &str| self.same(line, NAN);
            return ["freedoms", "linkage_motion_ratio", "linkage_bump", "bind_misfit"]
                .into_iter()
                .for_each(read);
        };
        assert_eq!(LiveAxle::from_text(&of.to_json()).unwrap(), read);
        let alone = LiveAxle { coil_over: Stated::Unknown, anti_roll_bar: Stated::Unknown, ..read.clone() };
        let ready = alone.prepare().unwrap();
        let ride = at(&ready, 0.0, 0.0);
        // The sheet asks for each bush of links that hold each other; a document of the model says "rigid" by leaving it out.
        let redundant = ride.as_ref().is_some_and(|on| on.redundant > 0);
        let asks = redundant && lacks_a_bush(&read);
        let of = |value: fn(&AxlePosition) -> f64| ride.as_ref().filter(|_| !asks).map_or(NAN, value);
        self.same("bump_steer", of(|on| -on.heave_steer.si()));
        self.same("roll_steer", of(|on| on.roll_steer.si()));
        self.same("roll_centre_height", of(|on| on.roll_centre_height.si()));
        self.same("side_view_angle", of(|on| on.side_view_angle.si()));
        self.same("freedoms", ride.as_ref().map_or(NAN, |on| on.freedoms as f64));
        self.same("redundant_links", ride.as_ref().map_or(NAN, |on| on.redundant as f64));
        self.same("bind_roll_stiffness", of(|on| on.bind_roll_stiffness.si()));
        let hung = LiveAxle { anti_roll_bar: Stated::Unknown, ..read.clone() };
        let coil = hung.prepare().ok().and_then(|ready| at(&ready, 0.0, 0.0));
        self.same("linkage_motion_ratio", coil.as_ref().map_or(NAN, |on| on.left_motion_ratio.si()));
        self.same("linkage_eye_length", coil.as_ref().map_or(NAN, |on| on.left_eye_length.si()));
        let barred = LiveAxle { coil_over: Stated::Unknown, ..read.clone() };
        let barred = barred.prepare().ok();
        // A drop link may end the travel; a bar that is only begun may have one.
        let drawn = ["bearings", "link_eye", "lever_end", "lever_pivot"]
            .map(|part| format!("{}.anti_roll_bar.{part}", self.axle));
        let begun = !matches!(read.anti_roll_bar, Stated::Given(_))
            && self.sheet.paths().any(|path| drawn.iter().any(|part| path.starts_with(part.as_str())));
        let range = barred.as_ref().and_then(|ready| ready.travel_range(Angle::from_si(0.0)).ok());
        let range = range.filter(|_| !asks && !begun);
        self.same("linkage_droop", range.as_ref().map_or(NAN, |on| -on.droop.si()));
        self.same("linkage_bump", range.as_ref().map_or(NAN, |on| on.bump.si()));
        let bar = barred.and_then(|ready| at(&ready, 0.0, 0.0));
        self.same("anti_roll_bar.motion_ratio", bar.map_or(NAN, |on| on.bar_motion_ratio.si()));
        self.over_travel(&ready, asks);
    }

    /// Full bump, full droop and half way, upright; then crossed.
    fn over_travel(&self, ready: &PreparedLiveAxle<'_>, asks: bool) {
        let [bump, droop, base] =
            ["bump_compressed", "droop_remaining", "spring_base"].map(|line| self.value(line));
        let (sine, crossed) = ((bump + droop) / base, 0.5 * (bump - droop));
        let allowed = bump >= 0.0 && droop >= 0.0 && sine.abs() <= 0.8 && !asks;
        let roll = if allowed { sine.asin() } else { NAN };
        let upright = [bump, -droop, 0.5 * bump, -0.5 * droop].map(|heave| at(ready, heave, 0.0));
        let ends = [roll, -roll].map(|roll| at(ready, crossed, roll));
        let all: Option<Vec<AxlePosition>> = upright.into_iter().chain(ends).collect();
        let all = all.filter(|_| allowed).unwrap_or_default();
        let most = |places: &[usize], of: fn(&AxlePosition) -> f64| {
            let each = places.iter().map(|place| all.get(*place).map_or(NAN, of).abs());
            each.fold(0.0, |most: f64, on| if on.is_nan() || on > most { on } else { most })
        };
        let (upright, ends) = ([0, 1, 2, 3], [0, 1, 4, 5]);
        self.same("lateral_shift", most(&upright, |on| on.lateral_shift.si()));
        self.same("pinion_angle_change", most(&upright, |on| on.pinion_angle_change.si()));
        self.same("bind_misfit", most(&ends, |on| on.bind_misfit.si()));
        self.same("linkage_bind_force", most(&ends, |on| on.bind_force.si()));
        self.same("cross_roll", if all.is_empty() { NAN } else { roll });
        let remaining = ends.iter().filter_map(|place| all.get(*place)).map(|on| on.joint_remaining.si());
        self.same("least_joint_remaining", remaining.fold(NAN, f64::min));
    }

    /// Holds the axle on leaf springs.
    pub fn leaves(&self, of: &SheetModel) {
        let Ok(read) = of.read::<LeafAxle>() else {
            // Half a leaf cannot be: the model is refused as a whole, and the sheet does not know what rests on the leaves.
            return ["leaf.rate", "leaf.bump_stress"].into_iter().for_each(|line| self.same(line, NAN));
        };
        assert_eq!(LeafAxle::from_text(&of.to_json()).unwrap(), read);
        let mut alone = read.clone();
        (alone.damper, alone.anti_roll_bar, alone.bump_clearance) = (None, Stated::Unknown, None);
        alone.leaf.leaves = None;
        let ready = alone.prepare().ok();
        let upright = |heave: f64| ready.as_ref().and_then(|ready| on_leaves(ready, heave));
        let (ride, bumped) = (upright(0.0), upright(BUMP));
        // Both heights are one stage.
        let both = ride.as_ref().zip(bumped.as_ref());
        let [rate, roll] =
            [both.map(|(on, _)| on.wheel_rate.si()), both.map(|(on, _)| on.roll_stiffness.si())].map(known);
        self.same("leaf.wheel_rate", rate);
        self.same("spring_base", (2.0 * roll / rate).sqrt());
        self.same("roll_steer", known(both.map(|(on, _)| on.roll_steer.si())));
        self.same("leaf.wind_up_rate", known(both.map(|(on, _)| on.wind_up_rate.si())));
        self.same("leaf.shackle_opening", known(both.map(|(on, _)| on.left_shackle_opening.si())));
        self.same("bump_steer", known(both.map(|(on, bumped)| (on.axle_steer - bumped.axle_steer).si())));
        self.same("roll_centre_height", known(ride.as_ref().map(|on| on.roll_centre_height.si())));
        self.same("side_view_angle", known(ride.as_ref().map(|on| on.side_view_angle.si())));
        let damped = LeafAxle { damper: read.damper.clone(), ..alone.clone() };
        let damped = damped.prepare().ok().and_then(|ready| on_leaves(&ready, 0.0));
        self.same("leaf.damper_ratio", known(damped.map(|on| on.damper_motion_ratio.si())));

        let [bump, droop] = ["bump_compressed", "droop_remaining"].map(|line| self.value(line));
        let travels = bump >= 0.0 && droop >= 0.0;
        let ends = [upright(bump), upright(-droop)];
        let ends = ends.into_iter().collect::<Option<Vec<_>>>().filter(|_| travels);
        let most = |of: fn(&LeafAxlePosition) -> f64| {
            known(ends.as_ref().map(|ends| ends.iter().map(of).fold(0.0, |most: f64, on| most.max(on.abs()))))
        };
        self.same("pinion_angle_change", most(|on| on.pinion_angle_change.si()));
        self.same("lateral_shift", most(|on| on.lateral_shift.si()));
        let out_of_line = |on: &LeafAxlePosition| {
            let opening = on.left_shackle_opening.si();
            opening.min(PI - opening)
        };
        let remaining = ends.as_ref().map(|ends| ends.iter().map(out_of_line).fold(f64::INFINITY, f64::min));
        self.same("leaf.shackle_remaining", known(remaining));
        let torque = self.value("drive_torque");
        let wound = |ready: &PreparedLeafAxle<'_>, torque: f64| {
            ready.wind_up(Length::from_si(0.0), Torque::from_si(torque)).ok().filter(|_| !torque.is_nan())
        };
        self.same(
            "wind_up_angle",
            known(ready.as_ref().and_then(|ready| Some(wound(ready, torque)?.wind_up_angle.si()))),
        );
        let stressed = LeafAxle { leaf: read.leaf.clone(), ..alone.clone() };
        let stressed = stressed.prepare().ok();
        let full = stressed.as_ref().filter(|_| bump >= 0.0).and_then(|ready| on_leaves(ready, bump));
        self.same("leaf.bump_stress", known(full.map(|on| on.left_leaf_stress.si())));
        let stress =
            |torque: f64| stressed.as_ref().and_then(|ready| Some(wound(ready, torque)?.leaf_stress.si()));
        let stress = stress(torque).zip(stress(-torque)).map(|(one, other)| other.max(one.max(NAN)));
        self.same("leaf.wound_stress", known(stress));
    }
}

fn known(of: Option<f64>) -> f64 {
    of.unwrap_or(NAN)
}

fn at(ready: &PreparedLiveAxle<'_>, heave: f64, roll: f64) -> Option<AxlePosition> {
    ready.at(Length::from_si(heave), Angle::from_si(roll)).ok()
}

fn on_leaves(ready: &PreparedLeafAxle<'_>, heave: f64) -> Option<LeafAxlePosition> {
    ready.at(Length::from_si(heave), Angle::from_si(0.0)).ok()
}
