//! Before and after: blocks, shackles, ride height, an axle moved, spacers.

use super::model::{LEAST, LeafAxle, LeafRate};
use super::pose::Pose;
use super::prepared::PreparedLeafAxle;
use crate::base::document::{Model, Prepare, Stated, Value};
use crate::base::table::{Filling, Table};
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::live_axle::parts::{Mount, Strut};
use crate::units::{Angle, Force, Length};
use crate::{Error, Result, cannot, valid};

impl LeafAxle {
    /// A block between spring and seat, or one taken out: the body is raised or lowered, the springs as they are.
    ///
    /// # Parameters
    /// - `thickness` — thickness of an added block, negative if a block is removed; it raises the body if the spring lies above the axle, and lowers it if it lies below
    /// - `heave` — heave of the axle, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`. The body's axes stay with the body: the axle moves in them. The seats of a coil are set so that it carries what it carried.
    pub fn seat_block(&self, thickness: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { thickness: (-1) <= .. <= 1 ; "plausibility limit: no block is 1 m thick"; }
        let seat = self.leaf.seat.z.quantity - self.wheel.centre.z.quantity;
        let rise = thickness.si().copysign(thickness.si() * seat.si());
        let mut after = self.clone();
        after.carry(vector(0.0, 0.0, -rise));
        self.settled(after, heave)
    }

    /// Shackles of another length; springs and coils together carry what they carried.
    ///
    /// # Parameters
    /// - `longer` — increase in length, negative if they get shorter
    /// - `heave` — heave of the axle, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`; changes are relative to the ride height before.
    pub fn shackle_change(&self, longer: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { longer: (-1) <= .. <= 1 ; "plausibility limit: no shackle is 1 m longer"; }
        let before = self.prepare()?;
        let carried = before.rest.energy.first[0];
        let mut after = before.clone();
        after.spring.shackle_length += longer.si();
        let least = Length::from_si(LEAST - before.spring.shackle_length);
        if after.spring.shackle_length < LEAST {
            return Err(cannot!(longer >= least; "leaves no shackle"));
        }
        after.settle().map_err(|end| cannot!(longer; "cannot be fitted: {}", end.sentence()))?;
        let mut standing = 0.0;
        let mut settled = false;
        for _ in 0..50 {
            let on = after
                .pose(standing, 0.0)
                .map_err(|end| cannot!(longer; "cannot be fitted: {}", end.sentence()))?;
            let excess = on.energy.first[0] - carried;
            let step = excess / on.axle_rate();
            standing -= step.clamp(-0.02, 0.02);
            settled = step.abs() < 1e-12;
            if settled {
                break;
            }
        }
        if !settled {
            return Err(cannot!(longer; "leaves no height at which the springs carry their load"));
        }
        let mut model = self.clone();
        model.raise(-standing);
        let after = PreparedLeafAxle { model: &model, ..after };
        compared(&before, &after, standing, heave)
    }

    /// The body raised or lowered by springs of another arch: they carry their load at the new height.
    ///
    /// # Parameters
    /// - `rise` — height by which the body is raised, negative if it is lowered
    /// - `heave` — heave of the axle, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`; changes are relative to the ride height before. The seats of a coil are set so that it carries what it carried.
    pub fn ride_height_change(&self, rise: Length, heave: &[Length]) -> Result<Table> {
        self.check()?;
        valid! { rise: (-10) <= .. <= 10 ; "plausibility limit: no body is raised by 10 m"; }
        let before = self.prepare()?;
        let standing = before.pose(-rise.si(), 0.0).map_err(|_| before.beyond(-rise, Angle::from_si(0.0)))?;
        let mut model = self.clone();
        model.raise(rise.si());
        model.reseat(&before.rest, &standing);
        let mut after = PreparedLeafAxle { model: &model, ..before.clone() };
        let here = [-rise.si(), 0.0, standing.pitch];
        let springs = after.springs(here, standing.bends_at(here));
        let (stance, springs) = springs.map_err(|end| Error::document("leaf", end.sentence()))?;
        after.load(&after.stand(here, &stance, springs, 0.0))?;
        after.settle().map_err(|end| Error::document("leaf", end.sentence()))?;
        compared(&before, &after, -rise.si(), heave)
    }

    /// The axle moved under its body: along its springs, whose seats come to another place of them, or up and down on blocks; wheels, seats and what the axle carries are moved, what is on the body stays.
    ///
    /// # Parameters
    /// - `forward` — displacement forward; one half of each spring gets shorter by it, the other half longer
    /// - `up` — displacement up relative to the body; the body then stands lower by this much: the seats stay at their height, blocks between them and the axle make it up
    /// - `heave` — heave of the axle, from the ride height of each state
    ///
    /// # Returns
    /// Two rows for each heave, without roll: `state` (`before` or `after`), `heave`, and the results of `at`. Kept are the eyes, the shackles and the height of the seats at ride height, the length that is clamped, the load of each spring and its bending strength `B`, with which a
    /// half of the length `L` has the rate `B / L^3` at its end. The seat is free to turn in a spring tester, so that a half carries the share `c` of the other's lever in both; hence the spring's rate is `B / (c_f^2 L_f^3 + c_s^2 L_s^3)`, of halves to the fixed eye and to the shackle, and a given one
    /// changes as that; `leaves` stay as they are. The main leaf keeps its length but for what the arcs want. The pinion points as it did, and the seats of a coil are set so that it carries what it carried.
    pub fn axle_move(&self, forward: Length, up: Length, heave: &[Length]) -> Result<Table> {
        let before = self.prepare()?;
        valid! {
            forward: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
            up: (-10) <= .. <= 10 ; "plausibility limit: no axle is moved by 10 m";
        }
        let mut after = self.clone();
        after.carry(vector(forward.si(), 0.0, up.si()));
        after.leaf.seat = after.leaf.seat.moved(vector(forward.si(), 0.0, 0.0));
        if let Some(LeafRate { rate }) = &self.spring {
            // Compliance depends on geometry only, so the old rate may stay.
            let rate = rate.quantity * (before.ease() / after.prepare()?.ease());
            after.spring = Some(LeafRate { rate: Value::new(rate) });
        }
        self.settled(after, heave)
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
        // The axle's middle stays: the springs hold it.
        let by = self.wheel.axis() * outward.si();
        after.wheel.centre = after.wheel.centre.moved(vector(0.0, by.y, 0.0));
        self.settled(after, heave)
    }

    /// Moves the parts that the axle carries along with it, except the seats of its springs.
    fn carry(&mut self, by: Vector) {
        let mut on_axle = vec![&mut self.wheel.centre];
        on_axle.extend(self.damper.iter_mut().map(|damper| &mut damper.axle_eye));
        on_axle.extend(self.coil_over.as_mut().into_iter().map(|coil_over| &mut coil_over.axle_eye));
        if let Stated::Given(bar) = &mut self.anti_roll_bar {
            match bar.bearings {
                Mount::Axle => on_axle.extend([&mut bar.lever_end, &mut bar.lever_pivot]),
                Mount::Body => on_axle.push(&mut bar.link_eye),
            }
        }
        for point in on_axle {
            *point = point.moved(by);
        }
        let longer = Length::from_si(self.to_rear() * by.x);
        if let Some(braking) = &mut self.braking {
            braking.wheelbase = Value::new(braking.wheelbase.quantity + longer);
        }
        self.raise(-by.z);
    }

    /// The rows of this axle and of a changed one at its own ride height, whose coil is set to carry what it carried.
    fn settled(&self, mut after: LeafAxle, heave: &[Length]) -> Result<Table> {
        let before = self.prepare()?;
        let drawn = after.prepare()?.rest;
        after.reseat(&before.rest, &drawn);
        compared(&before, &after.prepare()?, 0.0, heave)
    }

    /// The seats of a coil set so that it carries here what it carried before; a loose one keeps its gap.
    fn reseat(&mut self, before: &Pose, here: &Pose) {
        let Stated::Given(coil_over) = &mut self.coil_over else { return };
        let strut = Strut::of(coil_over, before.eyes[0].value);
        let Some(spring) = &mut coil_over.spring else { return };
        let mut length = strut.length;
        if strut.coil.si() > 0.0 {
            let force = before.lifts[0] / here.uprights[0] - strut.gas;
            length = spring.free_length.quantity - Force::from_si(force) / spring.rate.quantity;
        }
        spring.seat_offset = Value::new(Length::from_si(here.eyes[0].value) - length);
    }

    /// The centre of gravity raised.
    fn raise(&mut self, by: f64) {
        if let Some(braking) = &mut self.braking {
            let height = &mut braking.centre_of_gravity_height;
            *height = Value::new(height.quantity + Length::from_si(by));
        }
    }
}

/// The rows of two axles without roll; the second one stands at another heave.
fn compared(
    before: &PreparedLeafAxle<'_>,
    after: &PreparedLeafAxle<'_>,
    standing: f64,
    heave: &[Length],
) -> Result<Table> {
    let none = Angle::from_si(0.0);
    let mut rows = Filling::over(["state", "heave"], &[2, heave.len()])?;
    for heave in heave {
        for (state, ready, from) in [("before", before, 0.0), ("after", after, standing)] {
            rows.push((state, *heave), ready.at(Length::from_si(from) + *heave, none))?;
        }
    }
    rows.finish()
}
