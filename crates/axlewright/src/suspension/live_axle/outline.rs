//! The axle's points in space, as a table.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

use super::bar_lever::{across, drawn, mirrored};
use super::parts::Mount;
use super::prepared::{PreparedLiveAxle, seen};
use crate::Result;
use crate::base::document::Stated;
use crate::suspension::kinematics::outline::Outline;
use crate::suspension::kinematics::vector::Vector;
use crate::units::{Angle, Length};

impl PreparedLiveAxle<'_> {
    pub(super) fn outline(&self, heave: Length, roll: Angle) -> Result<Outline<'_>> {
        let (model, pose) = (self.model, self.pose(heave, roll)?);
        let (middle, rest) = (pose.frame.middle, self.linkage.rest.frame.middle);
        let carried = |drawn: Vector| middle + pose.frame.direction(drawn - rest);
        let wheels = [0, 1].map(|place| self.wheel(&pose, place));
        let [[left, ..], [right, ..]] = wheels;
        let mut outline: Outline<'_> = vec![("axle", vec![("left end", left), ("right end", right)])];

        // The rods of a Watt linkage come last.
        let links = self.names.len() - model.watt.as_ref().map_or(0, |watt| watt.rods().len());
        let ends = |link: usize| {
            let (held, axle) = (&pose.held, middle + pose.held.arm.lane(link));
            [axle - held.along.lane(link) * held.length.0[link], axle]
        };
        for (link, name) in self.names.iter().take(links).enumerate() {
            let [body, axle] = ends(link);
            outline.push((name, vec![("body", body), ("axle", axle)]));
        }
        if let Stated::Given(watt) = &model.watt {
            let pivot = watt.pivot.vector();
            let (pivot, crank) = match watt.carried_by {
                Mount::Body => (pivot, 0),
                Mount::Axle => (carried(pivot), 1),
            };
            let mut levers = vec![("pivot", pivot)];
            for (place, (name, end)) in
                [("upper rod", "upper end"), ("lower rod", "lower end")].into_iter().enumerate()
            {
                let rod = ends(links + place);
                outline.push((name, vec![("crank", rod[crank]), ("outer", rod[1 - crank])]));
                levers.insert(2 * place, (end, rod[crank]));
            }
            outline.push(("bell crank", levers));
        }
        if let Stated::Given(on) = &model.coil_over {
            let (body, axle) = (on.body_eye.vector(), on.axle_eye.vector());
            for (name, side) in
                [("coil-over left", drawn as fn(Vector) -> Vector), ("coil-over right", mirrored)]
            {
                outline.push((name, vec![("body eye", side(body)), ("axle eye", carried(side(axle)))]));
            }
        }
        if let Some(levers) = &self.levers {
            let reached = levers.each_ref().map(|lever| {
                let points = lever.points(seen(lever, &pose).0)?;
                Some(match lever.carried_by {
                    Mount::Body => points,
                    Mount::Axle => points.map(|point| middle + pose.frame.direction(point)),
                })
            });
            let [Some(left), Some(right)] = reached else { return Err(self.drop_link(heave, roll)) };
            outline.push(("anti-roll bar", across(left, right)));
        }
        if let Some(nose) = model.pinion.as_ref().and_then(|pinion| pinion.nose.as_ref()) {
            let (nose, axis) = (carried(nose.vector()), pose.frame.direction(self.pinion));
            // Point of its axis nearest to the axle's middle.
            let foot = nose - axis * axis.dot(nose - middle);
            outline.push(("pinion", vec![("foot", foot), ("nose", nose)]));
        }
        for (name, [centre, _, contact]) in ["wheel left", "wheel right"].into_iter().zip(wheels) {
            outline.push((name, vec![("centre", centre), ("contact", contact)]));
        }
        Ok(outline)
    }
}
