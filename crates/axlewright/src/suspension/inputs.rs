//! Parts of suspensions as inputs of the build sheet's rules, under the keys that its lines have.

use super::*;
use crate::base::section::{fields, words};
use crate::units::Length;
use crate::{Error, Result};

words!(Axle { Front = "front", Rear = "rear" });
words!(Carrier { LowerArm = "lower_arm", UpperArm = "upper_arm", Upright = "upright" });
words!(Fitted { Pair = "pair", Single = "single" });
words!(Mount { Body = "body", Axle = "axle" });
words!(LeafForm { UniformStrength = "uniform_strength", UniformSection = "uniform_section" });
words!(BrakePlace { Outboard = "outboard", Inboard = "inboard" });

fields!(Point { x, y, z });
fields!(At { x, y, z });
fields!(Arm { front_pivot, rear_pivot, ball_joint });
fields!(TieRod { inner, outer });
// Its radius is that of the tyre: a rule that stands on the ground takes it from there.
fields!(Wheel { centre, camber, toe; loaded_radius });
fields!(CoilOver { body_eye, lower_eye, carried_by; spring, spring_seats, damper });
fields!(StrutLeg { top_mount, lower_end; spring, spring_seats, damper });
fields!(AntiRollBar { link_eye, lever_end, lever_pivot, carried_by });
fields!(JointLimits { upper_ball, top_mount, lower_ball, tie_rod_outer, tie_rod_inner });
fields!(LateralRod { body, axle, body_bush, axle_bush; body_limit, axle_limit });
fields!(WattRod { crank, outer, crank_bush, outer_bush; crank_limit, outer_limit });
fields!(WattLinkage { carried_by, pivot, upper_rod, lower_rod });
fields!(AxleCoilOver { body_eye, axle_eye; spring, damper });
fields!(AxleBar { link_eye, lever_end, lever_pivot, bearings });
fields!(AxleDamper { body_eye, axle_eye, open_length, closed_length });
fields!(Leaves { elastic_modulus, leaf_width, leaf_thickness, full_length_leaves, graduated_leaves });
fields!(CoilSpring { rate, free_length, solid_length, seat_offset });
fields!(SpringSeats { body, lower, carried_by });
fields!(Damper { open_length, closed_length, gas_force });
fields!(TorsionBar { turned_by, rate, torque });
fields!(Braking { axle_share, centre_of_gravity_height, wheelbase, place });
fields!(Driving { axle_share });

fields!(TieRodBegun { inner = "inner.y", outer = "outer.y" });

// The linkage itself; a rule names what hangs on it.
fields!(DoubleWishbone {
    upper_arm, lower_arm, tie_rod, wheel;
    axle, coil_over, torsion_bar, anti_roll_bar, braking, driving, joint_limits
});
fields!(Strut {
    lower_arm, tie_rod, wheel, leg;
    axle, torsion_bar, anti_roll_bar, braking, driving, joint_limits
});

/// Point as bare lengths, which are copied at no cost.
#[derive(Debug, Clone, Copy)]
pub(super) struct At {
    pub(super) x: Length,
    pub(super) y: Length,
    pub(super) z: Length,
}

impl At {
    pub(super) fn point(self) -> Point {
        Point::new(self.x, self.y, self.z)
    }
}

/// Tie rod of which anything is drawn.
pub(super) struct TieRodBegun {
    pub(super) inner: Option<Length>,
    pub(super) outer: Option<Length>,
}

const STEERED: &str = "how drag link and tie rod turn the wheels of a live axle as it moves is not computed: write what was measured on the vehicle, toe_out_over_travel, \
                       toe_in_over_travel, roll_steer_least and roll_steer_most of the axle";

/// Refuses the own motion of a live axle for that of its wheels where these are steered.
pub(super) fn not_steered(rack_travel: Option<Length>, tie_rod: &TieRodBegun) -> Result<()> {
    if tie_rod.inner.is_some() || tie_rod.outer.is_some() {
        return Err(Error::document("tie_rod", STEERED));
    }
    match rack_travel {
        Some(rack) if rack.si() > 0.0 => Err(Error::document("rack_travel", STEERED)),
        Some(_) => Ok(()),
        None => Err(Error::Missing {
            argument: "rack_travel",
            why: "whether a live front axle is steered is not known",
        }),
    }
}

/// Independent wheels, or both on one axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Wheels {
    /// Each by itself.
    Independent,
    /// Both on one axle.
    LiveAxle,
}
words!(Wheels { Independent = "independent", LiveAxle = "live_axle" });

/// Type of the suspension of an axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Suspension {
    /// Two arms, one above the other.
    DoubleWishbone,
    /// One arm and a strut.
    Strut,
    /// A live axle on links.
    LiveAxleOnLinks,
    /// A live axle on leaf springs, which alone lead it.
    LiveAxleOnLeafSprings,
}
words!(Suspension {
    DoubleWishbone = "double_wishbone",
    Strut = "strut",
    LiveAxleOnLinks = "live_axle_on_links",
    LiveAxleOnLeafSprings = "live_axle_on_leaf_springs",
});
