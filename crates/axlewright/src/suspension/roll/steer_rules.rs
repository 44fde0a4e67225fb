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

/// The one of two extremes with less room in its band.
fn worse<Q: Quantity>(least: Q, most: Q, low: Q, high: Q) -> Q {
    if least.si() - low.si() <= high.si() - most.si() { least } else { most }
}

/// Extremes over the travel, and the band in which they are wanted.
macro_rules! in_band {
    ($name:ident, $kind:ty) => {
        struct $name {
            least: $kind,
            most: $kind,
            low: $kind,
            high: $kind,
        }
        fields!($name { least, most, low, high });

        impl $name {
            fn worse(&self) -> Result<$kind> {
                Ok(worse(self.least, self.most, self.low, self.high))
            }
        }
    };
}
in_band!(ToeInBand, Angle);
in_band!(RatioInBand, Ratio);

impl RatioInBand {
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

/// Extremes of a ratio over the travel in a band: the worse of them, with or without the slope at ride height.
macro_rules! ratio_over_travel {
    ($table:literal, $worse:ident, $least:literal to $most:literal in $low:literal to $high:literal, $says:expr) => {
        rule! {
            $table RatioInBand::$worse, RatioInBand
            takes { least = $least, most = $most, low = $low, high = $high }
            says $says, OVER
        }
    };
    ($table:literal, $worse:ident, $slope:literal or $least:literal to $most:literal in $low:literal to $high:literal) => {
        rule! {
            $table SlopeInBand::$worse, SlopeInBand
            takes { slope = $slope, low = $low, high = $high }
            uses { least = $least, most = $most }
            says WORSE_OR_SLOPE, OVER
        }
    };
}
pub(in crate::suspension) const FRONT_ROLL_UNDERSTEER: Rule = ratio_over_travel!(
    "front", worse, "front.roll_steer_least" to "front.roll_steer_most"
    in "wanted.roll_understeer_low" to "wanted.roll_understeer_high", WORSE
);
pub(in crate::suspension) const REAR_ROLL_UNDERSTEER: Rule = ratio_over_travel!(
    "rear", worse_reversed, "rear.roll_steer_least" to "rear.roll_steer_most"
    in "wanted.roll_understeer_low" to "wanted.roll_understeer_high",
    "the extreme with less room in its band, its sign reversed"
);
pub(in crate::suspension) const SQUAT: Rule = ratio_over_travel!(
    "rear", worse, "rear.anti_squat_least" to "rear.anti_squat_most"
    in "wanted.anti_squat_low" to "wanted.anti_squat_high", WORSE
);
pub(in crate::suspension) const FRONT_ROLL_SLOPE: Rule = ratio_over_travel!(
    "front", worse, "front.roll_understeer" or "front.roll_steer_least" to "front.roll_steer_most"
    in "wanted.roll_understeer_low" to "wanted.roll_understeer_high"
);
pub(in crate::suspension) const REAR_ROLL_SLOPE: Rule = ratio_over_travel!(
    "rear", worse_reversed, "rear.roll_understeer" or "rear.roll_steer_least" to "rear.roll_steer_most"
    in "wanted.roll_understeer_low" to "wanted.roll_understeer_high"
);
pub(in crate::suspension) const SQUAT_SLOPE: Rule = ratio_over_travel!(
    "rear", worse, "rear.anti_squat" or "rear.anti_squat_least" to "rear.anti_squat_most"
    in "wanted.anti_squat_low" to "wanted.anti_squat_high"
);

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
macro_rules! told {
    ($name:ident, $kind:ty) => {
        struct $name {
            least: $kind,
            most: $kind,
            bump: Length,
            droop: Length,
            margin: $kind,
        }
        fields!($name { least, most, bump, droop, margin });

        impl $name {
            fn margin(&self) -> Result<$kind> {
                Ok(self.margin)
            }
        }
    };
    ($table:literal, $name:ident, $least:literal to $most:literal over $bump:literal, $droop:literal, $margin:literal) => {
        rule! {
            $table $name::margin, $name
            takes { least = $least, most = $most, bump = $bump, droop = $droop, margin = $margin }
            says "the margin that is wanted, where both extremes over the travel are known, and the travel itself", OVER
        }
    };
}
told!(ToeTold, Angle);
told!(RatioTold, Ratio);
pub(in crate::suspension) const TOE_MARGIN: Rule = told!(
    "axle", ToeTold, "axle.toe_out_over_travel" to "axle.toe_in_over_travel"
    over "axle.told_bump", "axle.told_droop", "wanted.bump_steer_margin"
);
pub(in crate::suspension) const ROLL_STEER_MARGIN: Rule = told!(
    "axle", RatioTold, "axle.roll_steer_least" to "axle.roll_steer_most"
    over "axle.told_bump", "axle.told_droop", "wanted.ratio_margin"
);
pub(in crate::suspension) const SQUAT_MARGIN: Rule = told!(
    "rear", RatioTold, "rear.anti_squat_least" to "rear.anti_squat_most"
    over "rear.told_bump", "rear.told_droop", "wanted.ratio_margin"
);

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
