//! Both wheels of an axle with independent wheels while the body rolls on them: where the ground cuts the paths of the two contact points.

use super::linkage::Body;
use super::prepared::PreparedLinkage;
use super::range::Reaches;
use crate::base::table::{Filling, Table, record};
use crate::suspension::kinematics::vector::{Vector, vector};
use crate::units::{Angle, Length, Ratio};
use crate::{Result, cannot, valid};

record! {
    /// An axle with its body rolled and heaved.
    #[derive(Debug, Clone, PartialEq)]
    pub struct WheelsInRoll {
        /// Travel of the left wheel's centre against the body, positive in bump.
        pub left_travel: Length,
        /// Travel of the right wheel's centre.
        pub right_travel: Length,
        /// Camber of the left wheel against the ground, positive with the top outboard.
        pub left_camber: Angle,
        /// Camber of the right wheel against the ground.
        pub right_camber: Angle,
        /// Toe of the left wheel against the ground, positive with its front inboard.
        pub left_toe: Angle,
        /// Toe of the right wheel against the ground.
        pub right_toe: Angle,
        /// Between the contact points, along the ground.
        pub track: Length,
        /// dy/dz of the left contact patch relative to the ground: the jacking force is this share of the lateral force.
        pub left_slope: Ratio,
        /// Slope of the right contact point's path.
        pub right_slope: Ratio,
        /// Roll centre, from the body's centre plane to the left along the ground: the meeting point of the normals to both paths; for display, loads follow from the slopes. Infinite if the normals are parallel, not a number if both lie in the ground.
        pub roll_centre_y: Length,
        /// Height of the roll centre above the ground; infinite with its place.
        pub roll_centre_height: Length,
    }
}

/// The left wheel at a travel: its centre, its axis and the upright that carries both.
struct Standing {
    centre: Vector,
    axis: Vector,
    upright: Body,
}

/// One wheel on the rolled ground, in that ground's axes, outboard positive.
struct Side {
    travel: f64,
    camber: f64,
    toe: f64,
    outboard: f64,
    slope: f64,
}

/// A left wheel on the ground that stands at `ground` under the centre plane and leans by `roll`; `standing` gives the wheel at a travel.
fn side(
    mut standing: impl FnMut(f64) -> Result<Standing>,
    radius: f64,
    ground: f64,
    roll: f64,
    start: f64,
) -> Result<Side> {
    let (sine, cosine) = roll.sin_cos();
    let (up, outboard) = (vector(0.0, sine, cosine), vector(0.0, cosine, -sine));
    let origin = vector(0.0, 0.0, ground);
    let mut travel = start;
    // The contact point is the lowest one of its wheel, so that its height changes as if it were held in the upright: Newton's slope is exact.
    for _ in 0..30 {
        let Standing { centre, axis, upright } = standing(travel)?;
        let down = axis * axis.dot(up) - up;
        let contact = centre + down.unit() * radius;
        let path = upright.carried(contact).rate;
        let lift = upright.carried(centre).rate.z;
        let off = (contact - origin).dot(up);
        let step = off * lift / path.dot(up);
        if off.abs() < 1e-13 || step.abs() < 1e-15 * (1.0 + travel.abs()) {
            return Ok(Side {
                travel,
                camber: -axis.dot(up).clamp(-1.0, 1.0).asin(),
                toe: axis.x.atan2(axis.dot(outboard)),
                outboard: (contact - origin).dot(outboard),
                slope: path.dot(outboard) / path.dot(up),
            });
        }
        travel -= step;
    }
    let roll = Angle::from_si(roll);
    Err(cannot!(roll; "leaves the wheel without ground near this travel"))
}

impl PreparedLinkage<'_> {
    /// Both wheels; the right one is the mirror image of the left.
    pub(super) fn in_roll(&self, heave: Length, roll: Angle, rack_travel: Length) -> Result<WheelsInRoll> {
        self.rolled(&mut Reaches::new(&self.linkage), heave, roll, rack_travel)
    }

    fn rolled(
        &self,
        reaches: &mut Reaches<'_>,
        heave: Length,
        roll: Angle,
        rack_travel: Length,
    ) -> Result<WheelsInRoll> {
        valid! {
            heave: (-10) <= .. <= 10 ; "plausibility limit: no body heaves by 10 m";
            roll: (-0.8) <= .. <= 0.8 ; "plausibility limit: past 45 deg a vehicle lies on its side";
            rack_travel: (-10) <= .. <= 10 ; "plausibility limit: no rack moves 10 m";
        }
        let (heave, roll, rack) = (heave.si(), roll.si(), rack_travel.si());
        let radius = self.parts.wheel.loaded_radius.quantity.si();
        let ground = self.contact(&self.linkage.rest).1.z + heave;
        let mut one = |to_left: f64| {
            let reach = reaches.with(to_left * rack);
            let standing = |travel: f64| {
                let pose = self.reached(reach, Length::from_si(travel))?;
                Ok(Standing { centre: pose.wheel.at, axis: self.contact(&pose).0, upright: pose.upright })
            };
            let start = heave - to_left * self.half_track * roll.tan();
            side(standing, radius, ground, to_left * roll, start)
        };
        let (left, right) = (one(1.0)?, one(-1.0)?);
        let (roll_centre_y, roll_centre_height) = crossing(&left, &right);
        let (length, angle) = (Length::from_si, Angle::from_si);
        Ok(WheelsInRoll {
            left_travel: length(left.travel),
            right_travel: length(right.travel),
            left_camber: angle(left.camber),
            right_camber: angle(right.camber),
            left_toe: angle(left.toe),
            right_toe: angle(right.toe),
            track: length(left.outboard + right.outboard),
            left_slope: Ratio::from_si(left.slope),
            right_slope: Ratio::from_si(right.slope),
            roll_centre_y: length(roll_centre_y),
            roll_centre_height: length(roll_centre_height),
        })
    }

    pub(super) fn roll_table(
        &self,
        heave: &[Length],
        roll: &[Angle],
        rack_travel: &[Length],
    ) -> Result<Table> {
        let names = ["heave", "roll", "rack_travel"];
        let mut rows = Filling::over(names, &[heave.len(), roll.len(), rack_travel.len()])?;
        let mut reaches = Reaches::new(&self.linkage);
        for (heave, roll) in heave.iter().flat_map(|heave| roll.iter().map(move |roll| (*heave, *roll))) {
            for rack in rack_travel {
                rows.push((heave, roll, *rack), self.rolled(&mut reaches, heave, roll, *rack))?;
            }
        }
        rows.finish()
    }
}

/// Intersection of the normals to the two contact paths: `(y - y_l) s_l + h = 0` and `(y + y_r) s_r = h`; infinite if they are parallel.
fn crossing(left: &Side, right: &Side) -> (f64, f64) {
    let lateral = (left.outboard * left.slope - right.outboard * right.slope) / (left.slope + right.slope);
    let height = if left.slope == 0.0 { 0.0 } else { (left.outboard - lateral) * left.slope };
    (lateral, height)
}
