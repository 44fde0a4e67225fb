//! Spring and damper as a shop measures them on the vehicle: mounts, seats, eyes, and what the linkage says where it is drawn.

use super::travel::{Lever, Mounting};
use crate::base::error::NoSolution;
use crate::spring::coil::{buckling_deflection, coil_rate, coil_shear_stress, shortest_length};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio, RatioPerLength, Stress};
use crate::{Error, Result};

/// Travel of the wheel over the whole stroke of its damper.
pub(in crate::spring) struct DamperTravel {
    /// Travel at which the linkage has closed the damper.
    pub(in crate::spring) bump_end: Option<Length>,
    /// Travel at which the linkage has opened the damper, negative.
    pub(in crate::spring) droop_end: Option<Length>,
    pub(in crate::spring) stroke: Length,
    pub(in crate::spring) motion_ratio: Ratio,
    pub(in crate::spring) mounting: Option<Mounting>,
    /// Change of the motion ratio of the spring, which is that of the damper on a coil-over.
    pub(in crate::spring) ratio_gradient: Option<RatioPerLength>,
    /// From ride height down to full droop.
    pub(in crate::spring) droop_remaining: Option<Length>,
}

impl DamperTravel {
    pub(in crate::spring) fn whole(&self) -> Result<Length> {
        let bends = self.ratio_gradient.is_some_and(|gradient| gradient.si() != 0.0);
        match (self.bump_end, self.droop_end, self.droop_remaining) {
            (Some(closed), Some(open), _) => Ok(closed - open),
            (.., Some(droop)) if bends && self.mounting == Some(Mounting::CoilOver) => {
                let lever = Lever { motion_ratio: self.motion_ratio, ratio_gradient: self.ratio_gradient };
                Ok(lever.travel(self.stroke + lever.shortening(-droop))? + droop)
            }
            _ => Ok(self.stroke / self.motion_ratio),
        }
    }
}

/// Travel of the wheel from ride height to full droop.
pub(in crate::spring) struct Droop {
    /// Travel at which the linkage has opened the damper, negative.
    pub(in crate::spring) droop_end: Option<Length>,
    pub(in crate::spring) droop_length: Length,
    pub(in crate::spring) ride_length: Length,
    pub(in crate::spring) lever: Lever,
}

impl Droop {
    pub(in crate::spring) fn remaining(&self) -> Result<Length> {
        match self.droop_end {
            Some(open) => Ok(-open),
            // From ride height the spring gets longer.
            None => Ok(-self.lever.travel(self.ride_length - self.droop_length)?),
        }
    }
}

/// Open damper of a coil-over.
pub(in crate::spring) struct OpenDamper {
    pub(in crate::spring) mounting: Mounting,
    pub(in crate::spring) open_length: Length,
    /// Part of the length between the eyes that the seats take.
    pub(in crate::spring) seat_offset: Length,
}

impl OpenDamper {
    /// Length between the seats of the spring; not known of a damper that stands apart.
    pub(in crate::spring) fn between_seats(&self) -> Result<Length> {
        Ok(match self.mounting {
            Mounting::CoilOver => self.open_length - self.seat_offset,
            Mounting::Apart => Length::from_si(f64::NAN),
        })
    }
}

/// Motion ratio of the spring, where it may be that of its damper.
pub(in crate::spring) struct OnOneAxis {
    pub(in crate::spring) mounting: Mounting,
    pub(in crate::spring) motion_ratio: Ratio,
}

impl OnOneAxis {
    /// Motion ratio of the damper; not known of one that stands apart.
    pub(in crate::spring) fn damper_ratio(&self) -> Result<Ratio> {
        Ok(match self.mounting {
            Mounting::CoilOver => self.motion_ratio,
            Mounting::Apart => Ratio::from_si(f64::NAN),
        })
    }
}

/// Spring at its least gaps, and its wire where that is known.
pub(in crate::spring) struct Shortest {
    pub(in crate::spring) solid_length: Length,
    pub(in crate::spring) minimum_gap: Length,
    pub(in crate::spring) wire_diameter: Option<Length>,
    pub(in crate::spring) mean_diameter: Option<Length>,
    pub(in crate::spring) active_coils: Option<Ratio>,
}

/// Share by which a solid length may lie below its active coils: wire is drawn to about a hundredth.
const DRAWN_WIRE: f64 = 0.01;

impl Shortest {
    /// Length at the least gaps. Refused where the active coils alone are longer than the solid length, or the wire is wider than its coil.
    pub(in crate::spring) fn length(&self) -> Result<Length> {
        if let (Some(wire), Some(coils)) = (self.wire_diameter, self.active_coils) {
            let stacked = wire * coils;
            if self.solid_length.si() < stacked.si() * (1.0 - DRAWN_WIRE) {
                let refusal = NoSolution::new(
                    "is less than the active coils are long (spring.wire_diameter times spring.active_coils)",
                );
                return Err(Error::no_solution(
                    refusal.of("spring.solid_length", self.solid_length).at_least(stacked),
                ));
            }
        }
        if let (Some(wire), Some(mean)) = (self.wire_diameter, self.mean_diameter)
            && mean <= wire
        {
            let refusal = NoSolution::new("is no more than the wire is thick (spring.wire_diameter)");
            return Err(Error::no_solution(refusal.of("spring.mean_diameter", mean).at_least(wire)));
        }
        shortest_length(self.solid_length, self.minimum_gap)
    }
}

/// Load on a coil of this wire, and the rate that is written.
pub(in crate::spring) struct Wound {
    pub(in crate::spring) largest_force: Force,
    pub(in crate::spring) wire_diameter: Length,
    pub(in crate::spring) mean_diameter: Length,
    pub(in crate::spring) active_coils: Option<Ratio>,
    pub(in crate::spring) shear_modulus: Option<Stress>,
    pub(in crate::spring) rate: Option<LinearStiffness>,
}

/// Share by which a written rate may differ from that of its wire: 4 % each for the modulus and for a hundredth of wire diameter, 3 % for a
/// hundredth of mean diameter, and the rest for the coils at the ends. Common practice, no source.
const WIRE_RATE: f64 = 0.15;

const OTHER_WIRE: &str = "rate of the spring differs by more than 15 % from the rate of its wire (wire_diameter, mean_diameter, active_coils, shear_modulus): one of them is wrong, \
                          or stands for another spring";

impl Wound {
    /// Shear at that load. Not known where wire and coils have another rate than the one that is written, by which the load was found.
    pub(in crate::spring) fn stress(&self) -> Result<Stress> {
        if let (Some(coils), Some(modulus), Some(rate)) = (self.active_coils, self.shear_modulus, self.rate) {
            let wound = coil_rate(self.wire_diameter, self.mean_diameter, coils, modulus)?;
            if (rate - wound).si().abs() > WIRE_RATE * wound.si() {
                return Err(Error::Missing { argument: "wire_diameter", why: OTHER_WIRE });
            }
        }
        coil_shear_stress(self.largest_force, self.wire_diameter, self.mean_diameter)
    }
}

/// Spring unloaded and with its least gaps.
pub(in crate::spring) struct Compression {
    pub(in crate::spring) free_length: Length,
    pub(in crate::spring) shortest: Length,
}

impl Compression {
    /// Length by which the spring can be compressed at all.
    pub(in crate::spring) fn largest(&self) -> Result<Length> {
        let (free, shortest) = (self.free_length.si(), self.shortest.si());
        if shortest > free {
            let refusal = NoSolution::new(
                "is less than the solid length with its least gaps (spring.solid_length, spring.minimum_gap)",
            );
            return Err(Error::no_solution(
                refusal.of("spring.free_length", self.free_length).at_least(self.shortest),
            ));
        }
        Ok(self.free_length - self.shortest)
    }
}

/// Linear spring at its least gaps.
pub(in crate::spring) struct Compressed {
    pub(in crate::spring) rate: LinearStiffness,
    pub(in crate::spring) largest_compression: Length,
}

impl Compressed {
    pub(in crate::spring) fn force(&self) -> Result<Force> {
        Ok(self.rate * self.largest_compression)
    }
}

/// Travel that was measured at a spring's mount.
pub(in crate::spring) struct AtMount {
    pub(in crate::spring) mount_ratio: Ratio,
    /// Between the spring and that travel.
    pub(in crate::spring) angle: Angle,
    /// Between the eyes of the spring.
    pub(in crate::spring) eye_length: Option<Length>,
}

impl AtMount {
    /// Motion ratio: the part of the mount's travel that lies along the spring.
    pub(in crate::spring) fn motion_ratio(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(self.mount_ratio.si() * self.angle.si().cos()))
    }

    /// Change of the motion ratio along the travel, the upper eye fixed and the lower one moving straight. Nothing where the spring is not inclined.
    pub(in crate::spring) fn ratio_gradient(&self) -> Result<RatioPerLength> {
        let across = self.mount_ratio.si() * self.angle.si().sin();
        match self.eye_length {
            _ if across == 0.0 => Ok(RatioPerLength::from_si(0.0)),
            Some(length) => Ok(RatioPerLength::from_si(-across * across / length.si())),
            None => Err(Error::Missing {
                argument: "eye_length",
                why: "an inclined spring turns as it travels; spring.ratio_gradient as measured would do, too",
            }),
        }
    }
}

/// Free spring under a load along its axis.
pub(in crate::spring) struct Column {
    pub(in crate::spring) free_length: Length,
    pub(in crate::spring) mean_diameter: Length,
    pub(in crate::spring) end_fixity: Ratio,
    pub(in crate::spring) elastic_modulus: Stress,
    pub(in crate::spring) shear_modulus: Stress,
}

impl Column {
    /// Deflection at which it buckles; its whole length where it is too short to buckle.
    pub(in crate::spring) fn buckles(&self) -> Result<Length> {
        let (elastic, shear) = (self.elastic_modulus, self.shear_modulus);
        match buckling_deflection(self.free_length, self.mean_diameter, self.end_fixity, elastic, shear) {
            Err(Error::NoSolution { .. }) if elastic.si() >= 2.0 * shear.si() => Ok(self.free_length),
            other => other,
        }
    }
}
