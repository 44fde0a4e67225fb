//! Rules of the build sheet on steer and squat: slopes at ride height, and the worse end of the travel.

use super::rules::{DRIVE_PITCH, Pitch};
use crate::Result;
use crate::base::section::{Rule, fields, rule};
use crate::suspension::inputs::Wheels;
use crate::suspension::kinematics::slope::BUMP;
use crate::units::{Angle, Length, Quantity, Ratio};

/// Wheels, and the toe that one of them gains over 25 mm of bump.
struct Toe {
    wheels: Wheels,
    bump_steer: Angle,
    track: Length,
}
fields!(Toe { wheels, bump_steer, track });

impl Toe {
    /// Steer over roll of wheels that move by themselves; not known of a live axle.
    fn roll_steer(&self) -> Result<Ratio> {
        Ok(Ratio::from_si(match self.wheels {
            Wheels::Independent => -self.bump_steer.si() / BUMP * self.track.si() / 2.0,
            Wheels::LiveAxle => f64::NAN,
        }))
    }
}

pub(in crate::suspension) const STEER_APART: Rule = rule! {
    "axle" Toe::roll_steer, Toe
    takes { wheels, bump_steer, track }
    says "-(b / 25 mm) t / 2 of independent wheels", "geometry: each wheel toes by its travel";
    lacking "a live axle needs roll_steer, or the points of what holds it"
};

/// Extremes over the travel, and the band in which they are wanted.
struct ToeInBand {
    least: Angle,
    most: Angle,
    low: Angle,
    high: Angle,
}
fields!(ToeInBand { least, most, low, high });

/// Extremes of a ratio over the travel, and the band in which they are wanted.
struct RatioInBand {
    least: Ratio,
    most: Ratio,
    low: Ratio,
    high: Ratio,
}
fields!(RatioInBand { least, most, low, high });

/// The one of two extremes with less room in its band.
fn worse<Q: Quantity>(least: Q, most: Q, low: Q, high: Q) -> Q {
    if least.si() - low.si() <= high.si() - most.si() { least } else { most }
}

impl ToeInBand {
    fn worse(&self) -> Result<Angle> {
        Ok(worse(self.least, self.most, self.low, self.high))
    }
}

impl RatioInBand {
    fn worse(&self) -> Result<Ratio> {
        Ok(worse(self.least, self.most, self.low, self.high))
    }
    /// The worse extreme of a rear axle, whose sign is the other.
    fn worse_reversed(&self) -> Result<Ratio> {
        Ok(worse(-self.most, -self.least, self.low, self.high))
    }
}

/// The slope at ride height in its band, and the extremes over the travel, which are not known where the travel leads beyond what is drawn.
struct SlopeInBand {
    slope: Ratio,
    least: Option<Ratio>,
    most: Option<Ratio>,
    low: Ratio,
    high: Ratio,
}
fields!(SlopeInBand { slope, least, most, low, high });

impl SlopeInBand {
    fn worse(&self) -> Result<Ratio> {
        let (Some(least), Some(most)) = (self.least, self.most) else { return Ok(self.slope) };
        Ok(worse(least, most, self.low, self.high))
    }
    /// The worse extreme of a rear axle, whose extremes have the other sign; its slope has the sign of the band.
    fn worse_reversed(&self) -> Result<Ratio> {
        let (Some(least), Some(most)) = (self.least, self.most) else { return Ok(self.slope) };
        Ok(worse(-most, -least, self.low, self.high))
    }
}

const WORSE: &str = "the extreme with less room in its band";
const WORSE_OR_SLOPE: &str =
    "the extreme with less room in its band; the slope at ride height where the extremes are not known";
const OVER: &str = "definition: the worst place in the travel";
pub(in crate::suspension) const TOE_CHANGE: Rule = rule! {
    "axle" ToeInBand::worse, ToeInBand
    takes {
        least = "axle.toe_out_over_travel", most = "axle.toe_in_over_travel", low = "wanted.bump_steer_out",
        high = "wanted.bump_steer_in",
    }
    says WORSE, OVER
};
pub(in crate::suspension) const FRONT_ROLL_UNDERSTEER: Rule = rule! {
    "front" RatioInBand::worse, RatioInBand
    takes {
        least = "front.roll_steer_least", most = "front.roll_steer_most", low = "wanted.roll_understeer_low",
        high = "wanted.roll_understeer_high",
    }
    says WORSE, OVER
};
pub(in crate::suspension) const REAR_ROLL_UNDERSTEER: Rule = rule! {
    "rear" RatioInBand::worse_reversed, RatioInBand
    takes {
        least = "rear.roll_steer_least", most = "rear.roll_steer_most", low = "wanted.roll_understeer_low",
        high = "wanted.roll_understeer_high",
    }
    says "the extreme with less room in its band, its sign reversed", OVER
};

pub(in crate::suspension) const FRONT_ROLL_SLOPE: Rule = rule! {
    "front" SlopeInBand::worse, SlopeInBand
    takes {
        slope = "front.roll_understeer", low = "wanted.roll_understeer_low", high = "wanted.roll_understeer_high",
    }
    uses { least = "front.roll_steer_least", most = "front.roll_steer_most" }
    says WORSE_OR_SLOPE, OVER
};
pub(in crate::suspension) const REAR_ROLL_SLOPE: Rule = rule! {
    "rear" SlopeInBand::worse_reversed, SlopeInBand
    takes {
        slope = "rear.roll_understeer", low = "wanted.roll_understeer_low", high = "wanted.roll_understeer_high",
    }
    uses { least = "rear.roll_steer_least", most = "rear.roll_steer_most" }
    says WORSE_OR_SLOPE, OVER
};

/// Slope of toe at ride height, and the travel over which it is wanted.
struct Slope {
    bump_steer: Angle,
    least: Option<Angle>,
    most: Option<Angle>,
    steer_bump: Length,
    steer_droop: Length,
    low: Angle,
    high: Angle,
}
fields!(Slope { bump_steer, least, most, steer_bump, steer_droop, low, high });

impl Slope {
    /// Change of toe at the extreme with less room; of a straight curve where the extremes are not known.
    fn change(&self) -> Result<Angle> {
        if let (Some(least), Some(most)) = (self.least, self.most) {
            return Ok(worse(least, most, self.low, self.high));
        }
        let at = |travel: f64| self.bump_steer.si() / BUMP * travel;
        let ends = [at(self.steer_bump.si().max(0.0)), at(-self.steer_droop.si().max(0.0))];
        let [least, most] = [ends[0].min(ends[1]), ends[0].max(ends[1])].map(Angle::from_si);
        Ok(worse(least, most, self.low, self.high))
    }
}

pub(in crate::suspension) const TOE_BY_SLOPE: Rule = rule! {
    "axle" Slope::change, Slope
    takes { bump_steer, steer_bump, steer_droop, low = "wanted.bump_steer_out", high = "wanted.bump_steer_in" }
    uses { least = "axle.toe_out_over_travel", most = "axle.toe_in_over_travel" }
    says "the extreme with less room in its band; b z / 25 mm at the end of the travel with less room where the extremes are not known", "geometry: a curve without bend"
};

/// Wanted margin, and extremes that are known, over a travel that is not merely assumed.
struct ToeTold {
    least: Angle,
    most: Angle,
    bump: Length,
    droop: Length,
    margin: Angle,
}
fields!(ToeTold { least, most, bump, droop, margin });

impl ToeTold {
    fn margin(&self) -> Result<Angle> {
        Ok(self.margin)
    }
}

/// Wanted margin, and extremes of a ratio that are known, over a travel that is not merely assumed.
struct RatioTold {
    least: Ratio,
    most: Ratio,
    bump: Length,
    droop: Length,
    margin: Ratio,
}
fields!(RatioTold { least, most, bump, droop, margin });

impl RatioTold {
    fn margin(&self) -> Result<Ratio> {
        Ok(self.margin)
    }
}

const TOLD: &str =
    "the margin that is wanted, where both extremes over the travel are known, and the travel itself";
pub(in crate::suspension) const TOE_MARGIN: Rule = rule! {
    "axle" ToeTold::margin, ToeTold
    takes { least = "axle.toe_out_over_travel", most = "axle.toe_in_over_travel", bump = "axle.told_bump", droop = "axle.told_droop", margin = "wanted.bump_steer_margin" }
    says TOLD, OVER
};
pub(in crate::suspension) const ROLL_STEER_MARGIN: Rule = rule! {
    "axle" RatioTold::margin, RatioTold
    takes { least = "axle.roll_steer_least", most = "axle.roll_steer_most", bump = "axle.told_bump", droop = "axle.told_droop", margin = "wanted.ratio_margin" }
    says TOLD, OVER
};
pub(in crate::suspension) const SQUAT_MARGIN: Rule = rule! {
    "rear" RatioTold::margin, RatioTold
    takes { least = "rear.anti_squat_least", most = "rear.anti_squat_most", bump = "rear.told_bump", droop = "rear.told_droop", margin = "wanted.ratio_margin" }
    says TOLD, OVER
};

/// Share of the squat that is held over the travel: as at ride height, drawn or read, and further by what the path leans elsewhere.
struct SquatOverTravel {
    pitch: Pitch,
    at_ride: Ratio,
    path_least: Angle,
    path_most: Angle,
}
fields!(SquatOverTravel { pitch, at_ride, path_least, path_most });

/// Extremes of that.
struct SquatExtremes {
    least: Ratio,
    most: Ratio,
}

impl SquatOverTravel {
    fn extremes(&self) -> Result<SquatExtremes> {
        let read = self.at_ride.si() - self.pitch.held_at_rear()?.si();
        let of = |path_angle: Angle| -> Result<f64> {
            let Pitch { share, wheelbase, centre_of_gravity_height, .. } = self.pitch;
            Ok(Pitch { share, path_angle, wheelbase, centre_of_gravity_height }.held_at_rear()?.si() + read)
        };
        let (one, other) = (of(self.path_least)?, of(self.path_most)?);
        Ok(SquatExtremes { least: Ratio::from_si(one.min(other)), most: Ratio::from_si(one.max(other)) })
    }
}

pub(in crate::suspension) const SQUAT_EXTREMES: Rule = rule! {
    "rear" SquatOverTravel::extremes, SquatOverTravel
    takes {
        pitch.share = "rear.drive_share", pitch.path_angle = "rear.driven_angle", pitch.wheelbase = "vehicle.wheelbase",
        pitch.centre_of_gravity_height = "vehicle.centre_of_gravity_height", at_ride = "rear.anti_squat",
        path_least = "rear.path_angle_least", path_most = "rear.path_angle_most",
    }
    gives SquatExtremes { least, most }
    says "-s tan(theta) l / h at both extremes of the path", DRIVE_PITCH
};
pub(in crate::suspension) const SQUAT_SLOPE: Rule = rule! {
    "rear" SlopeInBand::worse, SlopeInBand
    takes { slope = "rear.anti_squat", low = "wanted.anti_squat_low", high = "wanted.anti_squat_high" }
    uses { least = "rear.anti_squat_least", most = "rear.anti_squat_most" }
    says WORSE_OR_SLOPE, OVER
};
pub(in crate::suspension) const SQUAT: Rule = rule! {
    "rear" RatioInBand::worse, RatioInBand
    takes {
        least = "rear.anti_squat_least", most = "rear.anti_squat_most", low = "wanted.anti_squat_low",
        high = "wanted.anti_squat_high",
    }
    says WORSE, OVER
};
