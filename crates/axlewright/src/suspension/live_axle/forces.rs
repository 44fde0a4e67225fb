//! Forces in the links, rods and coil-overs of a live axle while loads act on its tyres and its pinion.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::bar_lever::mirrored;
use super::frame::{CRANK, MOST};
use super::linkage::{Pose, Way};
use super::parts::Mount;
use super::prepared::{PreparedLiveAxle, seen};
use crate::base::document::Stated;
use crate::base::table::{Filling, Table, record};
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::units::{Angle, Force, Length, Torque};
use crate::{Error, Result, cannot, valid};
use nalgebra::{SMatrix, SVector};

record! {
    /// Force in a part between axle and body.
    struct PartForce<'a> {
        part: &'a str,
        tension: Force,
        body_x: Force,
        body_y: Force,
        body_z: Force,
    }
}

/// Forces of the ground on both tyres, of the bar and of the propeller shaft.
#[derive(Clone, Copy)]
pub(super) struct AxleLoad {
    pub(super) left_longitudinal_force: Force,
    pub(super) right_longitudinal_force: Force,
    pub(super) longitudinal_height: Length,
    pub(super) left_lateral_force: Force,
    pub(super) right_lateral_force: Force,
    pub(super) lateral_height: Length,
    pub(super) left_vertical_force: Force,
    pub(super) right_vertical_force: Force,
    pub(super) drop_link_force: Force,
    pub(super) shaft_torque: Torque,
}

/// Unknown tensions: of the links, then of both coil-overs.
const PARTS: usize = MOST + 2;
/// Equations: three forces and three moments on the axle, and the moment on a bell crank.
const EQUATIONS: usize = 7;
const ALL: usize = PARTS + EQUATIONS;

/// Share of a unit of strain that leaves a part undecided.
const UNDECIDED: f64 = 1e-9;

type Balance = SVector<f64, EQUATIONS>;

/// Name of a part, as `points` has it.
fn called(name: &str) -> &str {
    match name {
        "watt.upper_rod" => "upper rod",
        "watt.lower_rod" => "lower rod",
        name => name,
    }
}

/// Force and moment about the axle's middle of a force at a point that is so far from it.
fn acting(arm: Vector, force: Vector) -> Balance {
    let moment = arm.cross(force);
    Balance::from([force.x, force.y, force.z, moment.x, moment.y, moment.z, 0.0])
}

impl AxleLoad {
    fn check(&self) -> Result<()> {
        let (left_longitudinal_force, right_longitudinal_force, longitudinal_height) =
            (self.left_longitudinal_force, self.right_longitudinal_force, self.longitudinal_height);
        let (left_lateral_force, right_lateral_force, lateral_height) =
            (self.left_lateral_force, self.right_lateral_force, self.lateral_height);
        let (left_vertical_force, right_vertical_force) =
            (self.left_vertical_force, self.right_vertical_force);
        let (drop_link_force, shaft_torque) = (self.drop_link_force, self.shaft_torque);
        valid! {
            left_longitudinal_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            right_longitudinal_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            longitudinal_height: 0 <= .. <= 10 ; "definition: a height above the ground; plausibility limit: at most 10 m";
            left_lateral_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            right_lateral_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            lateral_height: 0 <= .. <= 10 ; "definition: a height above the ground; plausibility limit: at most 10 m";
            left_vertical_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            right_vertical_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no wheel bears 100 MN";
            drop_link_force: (-1e8) <= .. <= 1e8 ; "plausibility limit: no link bears 100 MN";
            shaft_torque: (-1e7) <= .. <= 1e7 ; "plausibility limit: no shaft bears 10 MN·m";
        }
        Ok(())
    }
}

impl PreparedLiveAxle<'_> {
    /// The forces at a heave and roll: see [`LiveAxle::forces`](crate::suspension::LiveAxle::forces).
    pub(super) fn forces(&self, heave: Length, roll: Angle, on: AxleLoad) -> Result<Table> {
        on.check()?;
        let Stated::Given(coil_over) = &self.model.coil_over else {
            let message = "nothing carries the axle: write it with its eyes";
            return Err(Error::document("coil_over", message));
        };
        let pose = self.pose(heave, roll)?;
        let middle = pose.frame.middle;
        let drawn =
            [coil_over.body_eye.vector(), coil_over.axle_eye.vector() - self.linkage.rest.frame.middle];
        let mut columns = [Balance::zeros(); PARTS];
        // From the body to the axle, a unit long.
        let mut along = [Vector::default(); PARTS];
        let links = self.names.len();
        for link in 0..links {
            along[link] = pose.held.along.lane(link);
            columns[link] = acting(pose.held.arm.lane(link), -along[link]);
            columns[link][6] = -pose.held.row[CRANK].0[link];
        }
        for (side, [body, axle]) in [drawn, drawn.map(mirrored)].into_iter().enumerate() {
            let arm = pose.frame.direction(axle);
            along[MOST + side] = (middle + arm - body).unit();
            columns[MOST + side] = acting(arm, -along[MOST + side]);
        }
        let loads = self.loads(&pose, on, heave, roll)?;
        let tension = self.tensions(&pose, &columns, loads).ok_or_else(
            || cannot!(heave, roll; "leaves the axle without balance: links and coil-overs do not hold it"),
        )?;
        let names = self.names.iter().map(|name| called(name)).enumerate();
        let names = names.chain([(MOST, "coil-over left"), (MOST + 1, "coil-over right")]);
        let mut rows = Filling::over(["heave", "roll"], &[1, 1, PARTS])?;
        for (place, part) in names {
            let [x, y, z] = {
                let on = along[place] * tension[place];
                [on.x, on.y, on.z].map(Force::from_si)
            };
            let tension = Force::from_si(tension[place]);
            rows.push((heave, roll), Ok(PartForce { part, tension, body_x: x, body_y: y, body_z: z }))?;
        }
        rows.finish()
    }

    /// Loads on the axle besides its links and coil-overs.
    fn loads(&self, pose: &Pose, on: AxleLoad, heave: Length, roll: Angle) -> Result<Balance> {
        let mut loads = Balance::zeros();
        let forces = [
            [on.left_longitudinal_force, on.left_lateral_force, on.left_vertical_force],
            [on.right_longitudinal_force, on.right_lateral_force, on.right_vertical_force],
        ];
        for (place, forces) in forces.into_iter().enumerate() {
            let [x, y, z] = forces.map(Force::si);
            let [centre, _, contact] = self.wheel(pose, place);
            let up = centre - contact;
            let arm = |height: Length| contact + up * (height.si() / up.z) - pose.frame.middle;
            loads += acting(arm(on.longitudinal_height), vector(x, 0.0, 0.0));
            loads += acting(arm(on.lateral_height), vector(0.0, y, 0.0));
            loads += acting(arm(Length::from_si(0.0)), vector(0.0, 0.0, z));
        }
        let turned = pose.frame.direction(self.pinion) * (self.model.to_nose() * on.shaft_torque.si());
        loads += Balance::from([0.0, 0.0, 0.0, turned.x, turned.y, turned.z, 0.0]);
        let drop_link_force = on.drop_link_force;
        match &self.levers {
            None if drop_link_force.si() == 0.0 => {}
            None => return Err(cannot!(drop_link_force; "has no drop link: draw `anti_roll_bar`")),
            Some(levers) => {
                for (lever, pull) in levers.iter().zip([drop_link_force.si(), -drop_link_force.si()]) {
                    let points = lever.points(seen(lever, pose).0);
                    let [eye, end, _] = points.ok_or_else(|| self.drop_link(heave, roll))?;
                    let force = (end - eye).unit() * pull;
                    loads += match lever.carried_by {
                        Mount::Body => acting(eye - pose.frame.middle, force),
                        Mount::Axle => {
                            let turned = |at: Vector| pose.frame.direction(at);
                            acting(turned(end), turned(-force))
                        }
                    };
                }
            }
        }
        Ok(loads)
    }

    /// Tension of every part in balance with the loads, with the least strain energy of the bushes where a link is redundant. What no bush decides is
    /// not a number. None if the parts do not hold the axle.
    fn tensions(
        &self,
        pose: &Pose,
        columns: &[Balance; PARTS],
        loads: Balance,
    ) -> Option<SVector<f64, PARTS>> {
        let linkage = &self.linkage;
        let mut left = SMatrix::<f64, ALL, ALL>::zeros();
        let mut bound = SVector::<f64, PARTS>::zeros();
        let (gives, stiffness) = match &linkage.way {
            Way::Exact => (false, None),
            Way::Compliant { stiffness, .. } => (true, *stiffness),
        };
        for (part, column) in columns.iter().enumerate() {
            if *column == Balance::zeros() {
                left[(part, part)] = 1.0;
            }
            if let (true, Some(link)) = (gives, linkage.links.get(part)) {
                left[(part, part)] = stiffness.map_or(1.0, |stiffness| link.give * stiffness);
                bound[part] = stiffness.unwrap_or(0.0) * pose.forces.0[part];
            }
            for row in 0..EQUATIONS {
                left[(PARTS + row, part)] = column[row];
                left[(part, PARTS + row)] = column[row];
            }
        }
        if !linkage.cranked {
            left[(ALL - 1, ALL - 1)] = 1.0;
        }
        // Links that bind pull on the axle without any load.
        let mut right = -loads;
        for (column, force) in columns.iter().zip(&bound) {
            right -= column * *force;
        }
        let solver = left.lu();
        let solved = |parts: SVector<f64, PARTS>, balance: Balance| {
            let mut all = SVector::<f64, ALL>::zeros();
            all.fixed_rows_mut::<PARTS>(0).copy_from(&parts);
            all.fixed_rows_mut::<EQUATIONS>(PARTS).copy_from(&balance);
            let found = solver.solve(&all)?;
            Some(found.fixed_rows::<PARTS>(0).into_owned())
        };
        let mut tension = solved(SVector::zeros(), right)? + bound;
        if gives && stiffness.is_none() {
            // Parts that a force of the redundant link against the others reaches.
            let mut strain = SVector::<f64, PARTS>::zeros();
            strain[linkage.stress.0.iter().enumerate().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))?.0] =
                1.0;
            let held = solved(strain, Balance::zeros())?;
            for (tension, held) in tension.iter_mut().zip(&held) {
                if held.abs() > UNDECIDED {
                    *tension = f64::NAN;
                }
            }
        }
        Some(tension)
    }
}
