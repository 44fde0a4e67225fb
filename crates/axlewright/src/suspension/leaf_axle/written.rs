//! The two documents of a leaf axle that are read as one.

use super::model::{AxleDamper, LeafAxle, LeafForm, LeafRate, LeafSpring, Leaves};
use crate::base::document::{Stated, Value};
use crate::suspension::live_axle::parts::{AxleBar, AxleCoilOver};
use crate::suspension::parts::{Axle, Braking, Point, Wheel};
use crate::units::{Angle, Force, Length, LinearStiffness, Ratio};

/// An axle in the form of its document: the table `spring` may hold the whole leaf spring, too.
#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Written {
    axle: Axle,
    wheel: Wheel,
    #[serde(default)]
    leaf: Option<LeafSpring>,
    #[serde(default)]
    spring: Option<WrittenSpring>,
    #[serde(default)]
    damper: Option<AxleDamper>,
    #[serde(default)]
    coil_over: Stated<AxleCoilOver>,
    #[serde(default)]
    anti_roll_bar: Stated<AxleBar>,
    #[serde(default)]
    bump_clearance: Option<Value<Length>>,
    #[serde(default)]
    pinion_angle: Option<Value<Angle>>,
    #[serde(default)]
    braking: Option<Braking>,
    #[serde(default)]
    drive_share: Option<Value<Ratio>>,
}

/// The table `spring`: a rate, or a whole leaf spring under the old name of its table.
#[derive(Default, serde::Deserialize)]
#[serde(deny_unknown_fields, expecting = "a table with `rate`")]
struct WrittenSpring {
    #[serde(default)]
    rate: Option<Value<LinearStiffness>>,
    #[serde(default)]
    fixed_eye: Option<Point>,
    #[serde(default)]
    shackle_eye: Option<Point>,
    #[serde(default)]
    shackle_pivot: Option<Point>,
    #[serde(default)]
    seat: Option<Point>,
    #[serde(default)]
    seat_angle: Option<Value<Angle>>,
    #[serde(default)]
    clamped_length: Option<Value<Length>>,
    #[serde(default)]
    eye_offset: Option<Value<Length>>,
    #[serde(default)]
    form: Option<LeafForm>,
    #[serde(default)]
    load: Option<Value<Force>>,
    #[serde(default)]
    leaves: Option<Leaves>,
}

impl TryFrom<Written> for LeafAxle {
    type Error = String;

    fn try_from(on: Written) -> core::result::Result<LeafAxle, String> {
        let spring = on.spring.unwrap_or_default();
        let rate = spring.rate.clone();
        let leaf = match (on.leaf, spring.of_leaves()) {
            (Some(leaf), None) => leaf,
            (Some(_), Some(key)) => {
                return Err(format!("`spring.{key}` is now `leaf.{key}`: leave the old one out"));
            }
            (None, Some(_)) => spring.leaf()?,
            (None, None) => {
                return Err("the table `leaf` is missing: the points of the left leaf spring".to_owned());
            }
        };
        Ok(LeafAxle {
            axle: on.axle,
            wheel: on.wheel,
            leaf,
            spring: rate.map(|rate| LeafRate { rate }),
            damper: on.damper,
            coil_over: on.coil_over,
            anti_roll_bar: on.anti_roll_bar,
            bump_clearance: on.bump_clearance,
            pinion_angle: on.pinion_angle,
            braking: on.braking,
            drive_share: on.drive_share,
        })
    }
}

impl WrittenSpring {
    /// First key of a leaf spring that is written here.
    fn of_leaves(&self) -> Option<&'static str> {
        let keys = [
            ("fixed_eye", self.fixed_eye.is_some()),
            ("shackle_eye", self.shackle_eye.is_some()),
            ("shackle_pivot", self.shackle_pivot.is_some()),
            ("seat", self.seat.is_some()),
            ("seat_angle", self.seat_angle.is_some()),
            ("clamped_length", self.clamped_length.is_some()),
            ("eye_offset", self.eye_offset.is_some()),
            ("form", self.form.is_some()),
            ("load", self.load.is_some()),
            ("leaves", self.leaves.is_some()),
        ];
        keys.into_iter().find(|(_, there)| *there).map(|(key, _)| key)
    }

    fn leaf(self) -> core::result::Result<LeafSpring, String> {
        fn there<T>(key: &str, of: Option<T>) -> core::result::Result<T, String> {
            of.ok_or_else(|| format!("`leaf.{key}` is missing; `spring` is the old name of the table `leaf`"))
        }
        Ok(LeafSpring {
            fixed_eye: there("fixed_eye", self.fixed_eye)?,
            shackle_eye: there("shackle_eye", self.shackle_eye)?,
            shackle_pivot: there("shackle_pivot", self.shackle_pivot)?,
            seat: there("seat", self.seat)?,
            seat_angle: self.seat_angle,
            clamped_length: there("clamped_length", self.clamped_length)?,
            eye_offset: self.eye_offset,
            form: there("form", self.form)?,
            load: there("load", self.load)?,
            leaves: self.leaves,
        })
    }
}
