//! The axle's points in space, as a table.

use super::prepared::PreparedLeafAxle;
use super::spring::{Bent, Half, Spring};
use crate::Result;
use crate::suspension::kinematics::jet::Jet;
use crate::suspension::kinematics::outline::Outline;
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::suspension::live_axle::bar_lever::across;
use crate::suspension::live_axle::parts::Mount;
use crate::units::{Angle, Length};

impl PreparedLeafAxle<'_> {
    pub(super) fn outline(&self, heave: Length, roll: Angle) -> Result<Outline<'static>> {
        let (model, on) = (self.model, self.reached(heave, roll)?);
        let carried = |arm: Vector| {
            let [x, y, z] = self.carried(&on, arm).map(|jet| jet.value);
            vector(x, y, z)
        };
        let (middle, wheel) = (vector(self.centre[0], 0.0, self.centre[1]), &model.wheel);
        let ends = [1.0, -1.0].map(|side| carried(vector(0.0, side * wheel.centre.y.quantity.si(), 0.0)));
        let [left, right] = ends;
        let mut outline: Outline<'static> = vec![("axle", vec![("left end", left), ("right end", right)])];
        let names = [
            ["spring left", "shackle left", "seat left", "damper left", "coil-over left", "wheel left"],
            ["spring right", "shackle right", "seat right", "damper right", "coil-over right", "wheel right"],
        ];
        for ((names, centre), (side, bent)) in
            names.into_iter().zip(ends).zip([(1.0, &on.left), (-1.0, &on.right)])
        {
            let [spring, shackle, seat, damper, coil_over, tyre] = names;
            let place = |at: Vector| vector(at.x, side * at.y, at.z);
            let across = side * 0.5 * self.base;
            let [forward, up] = self.seat;
            let on_axle = carried(vector(forward, across, up));
            let leaf = self.leaf(bent, on.pitch, [across, on_axle.y]);
            let eye = vector(bent.eye[0].value, across, bent.eye[1].value);
            let [x, z] = self.spring.pivot;
            outline.push((spring, leaf));
            outline.push((shackle, vec![("pivot", vector(x, across, z)), ("eye", eye)]));
            outline.push((seat, vec![("axle", carried(vector(0.0, across, 0.0))), ("seat", on_axle)]));
            let dampers = model.damper.iter().map(|on| (damper, &on.body_eye, &on.axle_eye));
            let coils =
                model.coil_over.as_ref().into_iter().map(|on| (coil_over, &on.body_eye, &on.axle_eye));
            for (part, body, axle) in dampers.chain(coils) {
                let (body, axle) = (place(body.vector()), place(axle.vector()));
                outline.push((part, vec![("body eye", body), ("axle eye", carried(axle - middle))]));
            }
            let axis = carried(place(wheel.axis())) - carried(Vector::default());
            let down = axis * axis.z - vector(0.0, 0.0, 1.0);
            let contact = centre + down.unit() * wheel.loaded_radius.quantity.si();
            outline.push((tyre, vec![("centre", centre), ("contact", contact)]));
        }
        if let Some(levers) = &self.levers {
            let reached = levers.each_ref().map(|lever| {
                let points = lever.points(self.seen(&on, lever).0)?;
                Some(match lever.carried_by {
                    Mount::Body => points,
                    Mount::Axle => points.map(carried),
                })
            });
            let [Some(left), Some(right)] = reached else { return Err(self.drop_link(heave, roll)) };
            outline.push(("anti-roll bar", across(left, right)));
        }
        Ok(outline)
    }

    /// The main leaf from the fixed eye to that on the shackle, which are so far to the left as the first number, the seat as the second one.
    fn leaf(&self, on: &Bent, pitch: f64, [eyes, seat]: [f64; 2]) -> Vec<(&'static str, Vector)> {
        let Spring { fixed, shackle, .. } = &self.spring;
        let angle = pitch + self.angle;
        let half = |half: &Half, bend: Jet, eye: &'static str| {
            let outline = half.outline(bend.value, angle);
            let last = outline.len() - 1;
            let point = move |(place, [forward, up, share]): (usize, [f64; 3])| {
                let name = if place == 0 {
                    "clamp"
                } else if place == last {
                    eye
                } else {
                    "leaf"
                };
                (name, vector(on.seat.value + forward, seat + share * (eyes - seat), on.height + up))
            };
            outline.into_iter().enumerate().map(point)
        };
        let before = half(fixed, on.fixed, "fixed eye").rev();
        let middle = ("seat", vector(on.seat.value, seat, on.height));
        before.chain([middle]).chain(half(shackle, on.shackle, "shackle eye")).collect()
    }
}
