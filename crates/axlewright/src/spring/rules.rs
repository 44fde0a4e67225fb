//! Rules of springs and dampers on a corner, with the lines from which each takes its inputs.

use super::Corner;
use super::wheel::measured::{
    AtMount, Column, Compressed, Compression, DamperTravel, Droop, OnOneAxis, OpenDamper, Shortest, Wound,
};
use super::wheel::other_side::{
    BothAxles, BothDampers, BothDampings, BothFrequencies, BothRates, BothSprings,
};
use super::wheel::travel::{
    AtWheel, Bind, Bump, BumpClear, BumpTold, Captive, Carried, DroopClear, DroopTold, HeavierSide, Lever,
    Mounting, Sides, StopCompressed,
};
use crate::base::section::{Rule, fields, rule, words};

const STATICS: &str = "balance of virtual work at the wheel; standard gravity: 3rd CGPM";
pub(super) const LENGTHS: &str = "definition: lengths along the spring";
pub(super) const BETWEEN_EYES: &str = "definition: lengths along the coil-over, between its eyes";
const TRAVEL: &str = "definition: travel of the wheel is that of the spring over the motion ratio";

pub(super) const OPEN_DAMPER: Rule = rule! {
    "axle" OpenDamper::between_seats, OpenDamper
    takes {
        mounting = "axle.damper.mounting", open_length = "axle.damper.open_length",
        seat_offset = "axle.spring.seat_offset",
    }
    says "open damper less seat offset, of a coil-over", LENGTHS;
    lacking "a damper that stands apart needs spring.droop_length"
};
pub(super) const MOUNT_RATIO: Rule = rule! {
    "axle.spring" AtMount::motion_ratio, AtMount
    takes { mount_ratio, angle }
    says "r = r_m cos(a)", "geometry: the part of the mount's travel that lies along the spring"
};
pub(super) const MOUNT_GRADIENT: Rule = rule! {
    "axle.spring" AtMount::ratio_gradient, AtMount
    takes { mount_ratio, angle, eye_length }
    says "-(r_m sin a)^2 / L", "geometry: a spring turns about its fixed upper eye, see spring.inclined_tangent_rate"
};
pub(super) const SPRING_FORCE: Rule = rule! {
    "axle" Carried::force, Carried
    takes { sprung_mass, motion_ratio = "axle.spring.motion_ratio" }
    uses { gas_force = "axle.damper.gas_force", damper_motion_ratio = "axle.damper.motion_ratio" }
    says "F = (m g - F_g r_d) / r", STATICS
};
pub(super) const AXIS_FORCE: Rule = rule! {
    "axle" Carried::on_axis, Carried
    takes { sprung_mass, motion_ratio = "axle.spring.motion_ratio" }
    says "m g / r", STATICS
};
pub(super) const DAMPER_MOUNT_RATIO: Rule = rule! {
    "axle.damper" AtMount::motion_ratio, AtMount
    takes { mount_ratio, angle }
    says "r = r_m cos(a)", "geometry: the part of the mount's travel that lies along the damper"
};
pub(super) const ONE_AXIS: Rule = rule! {
    "axle" OnOneAxis::damper_ratio, OnOneAxis
    takes { mounting = "axle.damper.mounting", motion_ratio = "axle.spring.motion_ratio" }
    says "r_d = r on a coil-over", "definition: a coil-over has one axis";
    lacking "a damper that stands apart needs damper.motion_ratio"
};
pub(super) const DAMPER_TRAVEL: Rule = rule! {
    "axle.damper" DamperTravel::whole, DamperTravel
    takes {
        bump_end, droop_end, stroke, motion_ratio, mounting, ratio_gradient = "axle.spring.ratio_gradient",
        droop_remaining = "axle.droop_remaining",
    }
    says "z_c - z_o of the linkage; where it is not drawn h / r_d, or of a coil-over with a ratio that changes r (z_c - z_o) + r' (z_c^2 - z_o^2) / 2 = h", TRAVEL
};
pub(super) const DROOP_REMAINING: Rule = rule! {
    "axle.spring" Droop::remaining, Droop
    takes { droop_end = "axle.damper.droop_end", droop_length, ride_length, lever = "axle.spring" }
    says "z = -z_o of the linkage; r z - r' z^2 / 2 = L_d - L where it is not drawn", TRAVEL
};
pub(super) const COIL_TRAVEL: Rule = rule! {
    "axle.spring" AtWheel::travel, AtWheel
    takes { longer = "axle.spring.ride_length", shorter = "axle.spring.shortest", lever = "axle.spring" }
    says "r z + r' z^2 / 2 = L - L_c - s", TRAVEL
};
pub(super) const BUMP_REMAINING: Rule = rule! {
    "axle" Bump::remaining, Bump
    takes {
        coil_travel, damper_travel = "axle.damper.wheel_travel", droop_remaining, bump_stop_travel, bump_clearance,
        motion_ratio = "axle.spring.motion_ratio",
    }
    says "the least of (L - L_c - s) / r, h / r_d - z and, where there is a bump stop, b - z and its clearance c, c / r where r is above 1",
        "definition: remaining travel is the least of what ends it"
};
pub(super) const BEYOND_STOP: Rule = rule! {
    "axle" Bump::beyond_stop, Bump
    takes { coil_travel, damper_travel = "axle.damper.wheel_travel", droop_remaining }
    says "the lesser of (L - L_c - s) / r and h / r_d - z", "definition: a bump stop gives way until the damper is closed or the coils bind"
};
pub(super) const BUMP_COMPRESSED: Rule = rule! {
    "axle" StopCompressed::travel, StopCompressed
    takes { bump_remaining, bump_beyond_stop, bump_stop_compression }
    says "the lesser of z + c_s and the end behind the stop; that end where nobody says how far the stop gives", "definition: a bump stop gives way"
};
macro_rules! sides {
    ($axle:literal, $left:literal, $right:literal) => {
        rule! {
            $axle Sides::travel, Sides
            takes { left = $left, right = $right, wheel_rate }
            uses { right_wheel_rate }
            says "|m_l - m_r| g / (2 k), of the softer side", STATICS
        }
    };
}
pub(super) const FRONT_SIDES: Rule = sides!("front", "scales.left_front", "scales.right_front");
pub(super) const REAR_SIDES: Rule = sides!("rear", "scales.left_rear", "scales.right_rear");
const WORSE_SIDE: &str = "definition: what is wanted of an axle is wanted of both its sides";
pub(super) const RIGHT_RATE: Rule = rule! {
    "axle" BothSprings::right_wheel_rate, BothSprings
    takes {
        wheel_rate, rate = "axle.spring.rate", sprung_mass, motion_ratio = "axle.spring.motion_ratio",
        ratio_gradient = "axle.spring.ratio_gradient", right_motion_ratio = "axle.spring.right_motion_ratio",
        right_ratio_gradient = "axle.spring.right_ratio_gradient",
    }
    says "k_l (k r_r^2 + (m g / r_r) r_r') / (k r_l^2 + (m g / r_l) r_l')", STATICS
};
pub(super) const WORSE_FREQUENCY: Rule = rule! {
    "axle" BothFrequencies::worse, BothFrequencies
    takes { natural_frequency }
    uses {
        wheel_rate, right_wheel_rate, low = "axle.wanted.frequency_low", high = "axle.wanted.frequency_high",
    }
    says "the side with less room in the band", WORSE_SIDE
};
pub(super) const WORSE_FREQUENCY_RATIO: Rule = rule! {
    "vehicle" BothAxles::worse, BothAxles
    takes { ratio = "vehicle.frequency_ratio" }
    uses {
        front = "front.wheel_rate", front_right = "front.right_wheel_rate", rear = "rear.wheel_rate",
        rear_right = "rear.right_wheel_rate", low = "wanted.frequency_ratio_low", high = "wanted.frequency_ratio_high",
    }
    says "the sides with the least room in the band", WORSE_SIDE
};
/// Side with less room between two lines, of both dampers of an axle.
macro_rules! worse_damper {
    ($table:literal, $of:ident { $left:ident, $low:ident = $low_line:literal, $high:ident = $high_line:literal }, $says:literal) => {
        rule! {
            $table $of::worse, $of
            takes { $left }
            uses {
                sides.wheel_rate = "axle.wheel_rate", sides.right_wheel_rate = "axle.right_wheel_rate",
                sides.mounting = "axle.damper.mounting", sides.motion_ratio = "axle.spring.motion_ratio",
                sides.right_motion_ratio = "axle.spring.right_motion_ratio", $low = $low_line, $high = $high_line,
            }
            says $says, WORSE_SIDE
        }
    };
}
pub(super) const WORSE_DAMPING: Rule = worse_damper!(
    "axle", BothDampings { damping_ratio, low = "wanted.damping_low", high = "wanted.damping_high" },
    "the side with less room in the band"
);
pub(super) const WORSE_DAMPER_RATE: Rule = worse_damper!(
    "axle.damper",
    BothRates { rate_wanted, softest = "axle.damper.rate_softest", firmest = "axle.damper.rate_firmest" },
    "the side with less room in the range"
);
macro_rules! heavier_side {
    ($axle:literal) => {
        rule! {
            $axle HeavierSide::travel, HeavierSide
            takes { axle_mass, heavier_wheel, wheel_rate }
            says "(m_h - m_axle / 2) g / k", STATICS
        }
    };
}
pub(super) const FRONT_HEAVIER: Rule = heavier_side!("front");
pub(super) const REAR_HEAVIER: Rule = heavier_side!("rear");
const LEAST_TRAVEL: &str = "definition: remaining travel is the least of what ends it, on the worse wheel";
pub(super) const BUMP_CLEAR: Rule = rule! {
    "axle" BumpClear::remaining, BumpClear
    takes {
        bump_remaining, droop_remaining, linkage_bump, joint_bump_clearance, hose_bump_clearance, tyre_clearance,
        side_travel,
    }
    says "the least of z - z_s, joint, hose and tyre, z no more than a drawn linkage goes; less what the wheel stands above ride height", LEAST_TRAVEL
};
pub(super) const DROOP_CLEAR: Rule = rule! {
    "axle" DroopClear::remaining, DroopClear
    takes { droop_remaining, linkage_droop, joint_droop_clearance, hose_droop_clearance, side_travel }
    says "the least of z - z_s, joint and hose, z no more than a drawn linkage goes", LEAST_TRAVEL
};
pub(super) const BUMP_TOLD: Rule = rule! {
    "axle" BumpTold::wanted, BumpTold
    takes { wanted = "wanted.counted_bump", joint_bump_clearance, hose_bump_clearance, tyre_clearance, side_travel, stop_told, linkage_told }
    says "the wanted travel, where joint, hose, tyre, stop, the range of a drawn linkage and the difference of both sides are told", "definition: remaining travel is the least of what ends it"
};
pub(super) const DROOP_TOLD: Rule = rule! {
    "axle" DroopTold::wanted, DroopTold
    takes {
        wanted = "wanted.counted_droop", joint_droop_clearance, hose_droop_clearance, gas_force = "axle.damper.gas_force",
        side_travel, linkage_told,
    }
    says "the wanted travel, where joint, hose, gas, the range of a drawn linkage and the difference of both sides are told", "definition: remaining travel is the least of what ends it"
};
pub(super) const BIND: Rule = rule! {
    "axle.spring" Bind::margin, Bind
    takes {
        droop_length, damper_travel = "axle.damper.wheel_travel", lever = "axle.spring",
        droop_remaining = "axle.droop_remaining", shortest, mounting = "axle.damper.mounting",
        stroke = "axle.damper.stroke", seat_offset, right_seat_offset,
    }
    says "L_d - (h / r_d) r - (L_c + s), with what r' adds to that over the travel; L_d - h - (L_c + s) of a coil-over", LENGTHS
};
pub(super) const CAPTIVE: Rule = rule! {
    "axle.spring" Captive::margin, Captive
    takes { free_length, droop_length, seat_offset, right_seat_offset }
    says "L_0 - L_d, of the coil-over with the longer L_d", LENGTHS
};
pub(super) const SHORTEST: Rule = rule! {
    "axle.spring" Shortest::length, Shortest
    takes { solid_length, minimum_gap, wire_diameter, mean_diameter, active_coils }
    says "L_c + s; refused where L_c is less than n d", "EN 13906-1:2013 (from memory), see spring.shortest_length"
};
pub(super) const STRESS: Rule = rule! {
    "axle.spring" Wound::stress, Wound
    takes { largest_force, wire_diameter, mean_diameter, active_coils, shear_modulus, rate }
    says "spring.coil_shear_stress; not known where the wire has another rate than the one that is written",
        "A. M. Wahl, Mechanical Springs, 2nd ed. (1963), see spring.coil_shear_stress and spring.coil_rate"
};
pub(super) const COMPRESSION: Rule = rule! {
    "axle.spring" Compression::largest, Compression
    takes { free_length, shortest }
    says "L_0 - L_c - s", LENGTHS
};
pub(super) const LARGEST_FORCE: Rule = rule! {
    "axle.spring" Compressed::force, Compressed
    takes { rate, largest_compression }
    says "k (L_0 - L_c - s)", "Hooke's law; a linear spring"
};
pub(super) const BUCKLING: Rule = rule! {
    "axle.spring" Column::buckles, Column
    takes { free_length, mean_diameter, end_fixity, elastic_modulus, shear_modulus }
    says "y of spring.buckling_deflection; L_0 where the spring is too short to buckle",
        "Shigley's Mechanical Engineering Design, eq. 10-10 to 10-12 and Table 10-2; EN 13906-1:2013 has the same formula (from memory)"
};

fields!(OpenDamper { mounting, open_length, seat_offset });
fields!(AtMount { mount_ratio, angle, eye_length });
fields!(Carried { sprung_mass, motion_ratio, gas_force, damper_motion_ratio });
fields!(OnOneAxis { mounting, motion_ratio });
fields!(DamperTravel {
    bump_end,
    droop_end,
    stroke,
    motion_ratio,
    mounting,
    ratio_gradient,
    droop_remaining
});
fields!(Lever { motion_ratio, ratio_gradient });
fields!(Droop { droop_end, droop_length, ride_length, lever });
fields!(AtWheel { longer, shorter, lever });
fields!(Bump { coil_travel, damper_travel, droop_remaining, bump_stop_travel, bump_clearance, motion_ratio });
fields!(StopCompressed { bump_remaining, bump_beyond_stop, bump_stop_compression });
fields!(Sides { left, right, wheel_rate, right_wheel_rate });
fields!(BothSprings {
    wheel_rate,
    rate,
    sprung_mass,
    motion_ratio,
    ratio_gradient,
    right_motion_ratio,
    right_ratio_gradient
});
fields!(BothFrequencies { natural_frequency, wheel_rate, right_wheel_rate, low, high });
fields!(BothAxles { ratio, front, front_right, rear, rear_right, low, high });
fields!(BothDampers { wheel_rate, right_wheel_rate, mounting, motion_ratio, right_motion_ratio });
fields!(BothDampings { damping_ratio, sides, low, high });
fields!(BothRates { rate_wanted, sides, softest, firmest });
fields!(HeavierSide { axle_mass, heavier_wheel, wheel_rate });
fields!(BumpClear {
    bump_remaining,
    droop_remaining,
    linkage_bump,
    joint_bump_clearance,
    hose_bump_clearance,
    tyre_clearance,
    side_travel
});
fields!(DroopClear {
    droop_remaining,
    linkage_droop,
    joint_droop_clearance,
    hose_droop_clearance,
    side_travel
});
fields!(BumpTold {
    wanted,
    joint_bump_clearance,
    hose_bump_clearance,
    tyre_clearance,
    side_travel,
    stop_told,
    linkage_told
});
fields!(DroopTold {
    wanted,
    joint_droop_clearance,
    hose_droop_clearance,
    gas_force,
    side_travel,
    linkage_told
});
fields!(Bind {
    droop_length,
    damper_travel,
    lever,
    droop_remaining,
    shortest,
    mounting,
    stroke,
    seat_offset,
    right_seat_offset
});
fields!(Captive { free_length, droop_length, seat_offset, right_seat_offset });
fields!(Shortest { solid_length, minimum_gap, wire_diameter, mean_diameter, active_coils });
fields!(Wound { largest_force, wire_diameter, mean_diameter, active_coils, shear_modulus, rate });
fields!(Compression { free_length, shortest });
fields!(Compressed { rate, largest_compression });
fields!(Column { free_length, mean_diameter, end_fixity, elastic_modulus, shear_modulus });
fields!(Corner {
    rate,
    free_length,
    solid_length,
    minimum_gap,
    motion_ratio,
    sprung_mass,
    droop_length,
    damper_stroke,
    damper_motion_ratio,
    damper_mounting,
    gas_force,
    bump_stop_travel,
    bump_clearance,
    joint_bump_clearance,
    hose_bump_clearance,
    tyre_clearance,
    joint_droop_clearance,
    hose_droop_clearance,
});
words!(Mounting { CoilOver = "coil_over", Apart = "apart" });
