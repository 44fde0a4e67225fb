//! Before and after: the axle moved, another ride height, spacers.

use super::model::LiveAxle;
use super::parts::Mount;
use super::position::Found;
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::base::table::{Filling, Table};
use crate::suspension::kinematics::vector::vector;
use crate::units::{Angle, Force, Length};
use crate::{Result, valid};

impl LiveAxle {
    /// The axle moved under its body: wheels, axle ends of links, rods, coil-overs and drop links, and what the axle carries are moved; what is on the body stays.
    ///
    /// # Parameters
    /// - `forward` — displacement forward, negative to the rear
    /// - `up` — displacement up relative to the body; the body then stands lower by this much
    /// - `heave` — heave of the axle, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`. The links are set to their new length at ride height,
    /// where the pinion points as it did, and the springs' seats are set so that they carry the load that they carried.
    pub fn axle_move(&self, forward: Length, up: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! {
            forward: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
            up: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
        }
        let by = vector(forward.si(), 0.0, up.si());
        let mut after = self.clone();
        let mut on_axle = vec![&mut after.wheel.centre];
        for link in [&mut after.lower_links, &mut after.upper_links].into_iter().flatten() {
            on_axle.push(&mut link.axle);
        }
        on_axle.extend(after.links.iter_mut().map(|link| &mut link.axle));
        on_axle.extend(after.lateral_rod.as_mut().into_iter().map(|rod| &mut rod.axle));
        on_axle.extend(after.coil_over.as_mut().into_iter().map(|coil_over| &mut coil_over.axle_eye));
        on_axle.extend(after.pinion.iter_mut().filter_map(|pinion| pinion.nose.as_mut()));
        if let Stated::Given(watt) = &mut after.watt {
            let (upper, lower) = (&mut watt.upper_rod, &mut watt.lower_rod);
            match watt.carried_by {
                Mount::Axle => on_axle.extend([&mut watt.pivot, &mut upper.crank, &mut lower.crank]),
                Mount::Body => on_axle.extend([&mut upper.outer, &mut lower.outer]),
            }
        }
        if let Stated::Given(bar) = &mut after.anti_roll_bar {
            match bar.bearings {
                Mount::Axle => on_axle.extend([&mut bar.lever_end, &mut bar.lever_pivot]),
                Mount::Body => on_axle.push(&mut bar.link_eye),
            }
        }
        for point in on_axle {
            *point = point.moved(by);
        }
        after.raise(-up.si());
        if let Some(pitching) = &mut after.pitching {
            // The nose points to the other axle.
            let longer = -self.to_nose() * forward.si();
            pitching.wheelbase = Value::new(pitching.wheelbase.quantity + Length::from_si(longer));
        }
        self.compared(after, Length::from_si(0.0), heave)
    }

    /// The body raised or lowered on its springs; the linkage is not changed.
    ///
    /// # Parameters
    /// - `rise` — height by which the body is raised, negative if it is lowered
    /// - `heave` — heave of the axle, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`; changes are relative to the ride height before. The springs' seats are
    /// set so that they carry the load that they carried.
    pub fn ride_height_change(&self, rise: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { rise: (-10) <= .. <= 10 ; "plausibility limit: no body is raised by 10 m"; }
        let mut after = self.clone();
        after.raise(rise.si());
        self.compared(after, -rise, heave)
    }

    /// Spacers behind both wheels, or wheels of another offset.
    ///
    /// # Parameters
    /// - `outward` — thickness of a spacer, or by how much the new offset is less
    /// - `heave` — heave of the axle, from ride height
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`.
    pub fn spacer(&self, outward: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { outward: (-1) <= .. <= 1 ; "plausibility limit: no spacer is 1 m thick"; }
        let mut after = self.clone();
        // The axle's middle stays: the links hang on it.
        let by = self.wheel.axis() * outward.si();
        after.wheel.centre = after.wheel.centre.moved(vector(0.0, by.y, 0.0));
        self.compared(after, Length::from_si(0.0), heave)
    }

    /// The rows of two models; the second one stands at another heave.
    fn compared(&self, mut after: LiveAxle, standing: Length, heave: &[Length]) -> Result<Table> {
        let before = self.prepare()?;
        let (none, level) = (Length::from_si(0.0), Angle::from_si(0.0));
        let load = self.at(none, level)?.left_wheel_force;
        let changed = after.at(standing, level)?;
        if let Stated::Given(coil_over) = &mut after.coil_over
            && let Some(spring) = &mut coil_over.spring
        {
            let gas = coil_over.damper.as_ref().and_then(|damper| damper.gas_force.as_ref());
            let gas = gas.map_or(Force::from_si(0.0), |gas| gas.quantity);
            let force = load / changed.left_motion_ratio - gas;
            let length = spring.free_length.quantity - force / spring.rate.quantity;
            spring.seat_offset = Value::new(changed.left_eye_length - length);
        }
        let after = after.prepare()?;
        let mut rows = Filling::over(["state", "heave"], &[2, heave.len()])?;
        let mut on = Found::unknown();
        for heave in heave {
            for (state, ready, from) in [("before", &before, none), ("after", &after, standing)] {
                rows.push((state, *heave), ready.find(from + *heave, level, &mut on).map(|()| on))?;
            }
        }
        rows.finish()
    }

    /// The centre of gravity raised.
    fn raise(&mut self, by: f64) {
        if let Some(pitching) = &mut self.pitching {
            let height = &mut pitching.centre_of_gravity_height;
            *height = Value::new(height.quantity + Length::from_si(by));
        }
    }
}
