use super::tightening_torque::{force, lever};
use crate::base::document::{Model, Value};
use crate::base::table::record;
use crate::fastener::Bolt;
use crate::units::{Force, Length, Ratio, Torque};
use crate::{Error, Result, cannot, valid};

/// Tightening of a bolt: least and peak preload by the way it is tightened, the friction and the lubricant.
///
/// # Formula
/// from a torque `F = T / l` with the lever `l = P / (2 pi) + m_t d_2 / (2 cos 30°) + m_h D_m / 2`, or `K d`; `F_mean` at the middle of the friction bounds; least preload: the lesser of `F_mean (1 - s)` and
/// `0.96 F` at the highest friction; peak preload: the greater of `F_mean (1 + s)` and `1.04 F` at the lowest; from a known preload `F_mean (1 -+ s)`
///
/// # Fields
/// - `bolt` — the bolt: its `thread` and its `grade`
/// - `method` — way of tightening: `torque_wrench` (`s` 30 %), `angle` or `yield_controlled` (`s` 17 %, from a preload that is known), `by_hand` or `impact` (the preload is not known); left out: not known
/// - `torque` — torque at the wrench, less the prevailing torque of a lock nut
/// - `preload` — in place of the torque: the preload that the method aims at
/// - `scatter` — `s`, share by which the preload of equal bolts scatters, in place of the method's
/// - `lubricant` — state of thread and head, in place of measured friction: `dry` (friction 0.14 to 0.35), `oiled` (0.08 to 0.16), `anti_seize` (0.04 to 0.16)
/// - `least_thread_friction` — low bound of the friction in the thread
/// - `peak_thread_friction` — high bound of the friction in the thread
/// - `least_head_friction` — low bound of the friction under the turned head or nut
/// - `peak_head_friction` — high bound of the friction under the turned head or nut
/// - `head_friction_diameter` — `D_m`, mean diameter of the face that rubs under the turned head or nut; wanted beside friction or lubricant
/// - `least_nut_factor` — in place of friction: low bound of the nut factor `K`
/// - `peak_nut_factor` — in place of friction: high bound of the nut factor `K`
///
/// # Valid for
/// A 60 degree thread of one start, tightened once in good condition. Friction comes from one of three sources: bounds of both frictions, bounds of the nut factor, or the lubricant.
/// If the preload cannot be known, it has no number, and `open` says what is missing.
///
/// # Source
/// VDI 2230 part 1: tightening factors 1.4 (angle, yield) and up to 2 (torque wrench), friction classes A and B (anti-seize), B (oiled), C and D (dry); torque wrench within 4 % by ISO 6789; all from memory
///
/// # Caution
/// Lubricant that the torque was not meant for, anti-seize above all, raises the preload until the bolt yields. A bolt that was tightened past yield is replaced. The maker's tightening comes first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Tightening {
    /// Bolt by its markings.
    pub bolt: Bolt,
    /// Way of tightening.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub method: Option<TighteningMethod>,
    /// Torque at the wrench.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub torque: Option<Value<Torque>>,
    /// Preload that the method aims at.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub preload: Option<Value<Force>>,
    /// Share by which the preload scatters.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub scatter: Option<Value<Ratio>>,
    /// State of thread and head.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lubricant: Option<Lubricant>,
    /// Low bound of the friction in the thread.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_thread_friction: Option<Value<Ratio>>,
    /// High bound of the friction in the thread.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub peak_thread_friction: Option<Value<Ratio>>,
    /// Low bound of the friction under the head.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_head_friction: Option<Value<Ratio>>,
    /// High bound of the friction under the head.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub peak_head_friction: Option<Value<Ratio>>,
    /// Mean diameter of the face that rubs under the head.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub head_friction_diameter: Option<Value<Length>>,
    /// Low bound of the nut factor.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub least_nut_factor: Option<Value<Ratio>>,
    /// High bound of the nut factor.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub peak_nut_factor: Option<Value<Ratio>>,
}

/// Way of tightening a bolt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum TighteningMethod {
    /// To a torque, with a torque wrench.
    TorqueWrench,
    /// By an angle after the faces touch.
    Angle,
    /// Until the bolt begins to yield.
    YieldControlled,
    /// By feel.
    ByHand,
    /// With an impact wrench.
    Impact,
}

/// State of thread and head.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Lubricant {
    /// Clean and without oil.
    Dry,
    /// Oiled, or coated as delivered.
    Oiled,
    /// Greased with a paste against seizing.
    AntiSeize,
}

record! {
    /// Bounds of the preload.
    #[derive(Debug, Clone, PartialEq)]
    pub struct PreloadBounds {
        /// Preload of the loosest of equal bolts.
        pub least_preload: Force,
        /// Preload at the middle of the friction.
        pub mean_preload: Force,
        /// Preload of the tightest of equal bolts.
        pub peak_preload: Force,
        /// Peak preload over the proof load.
        pub peak_over_proof: Ratio,
        /// Warning if the peak preload is above the proof load; empty if not.
        pub above_proof: String,
        /// Missing facts without which the preload is not known; empty if none is missing.
        pub open: String,
    }
}

record! {
    /// Torque that keeps the peak preload at a share of the proof load.
    #[derive(Debug, Clone, Copy, PartialEq)]
    pub struct TorqueChoice {
        /// Torque at the wrench.
        pub torque: Torque,
        /// Preload of the loosest of equal bolts.
        pub least_preload: Force,
        /// Preload of the tightest of equal bolts.
        pub peak_preload: Force,
    }
}

/// Share by which a torque wrench may be wrong: ISO 6789, from memory.
const WRENCH: f64 = 0.04;

/// Levers of the torque at the lowest, the middle and the highest friction.
struct Levers {
    low: Length,
    middle: Length,
    high: Length,
}

/// Least, mean and peak preload.
struct Bounds([Force; 3]);

/// A known answer, or what is missing.
type Known<T> = core::result::Result<T, &'static str>;

const ABOVE: &str = "the peak preload is above the proof load: lower the torque, narrow the friction, or take a stronger bolt";

impl Lubricant {
    /// Bounds of the friction: classes of VDI 2230, from memory.
    const fn friction(self) -> (f64, f64) {
        match self {
            Lubricant::Dry => (0.14, 0.35),
            Lubricant::Oiled => (0.08, 0.16),
            Lubricant::AntiSeize => (0.04, 0.16),
        }
    }
}

/// Quantity of an optional value, or another one.
fn or<Q: Copy>(value: &Option<Value<Q>>, other: Q) -> Q {
    value.as_ref().map_or(other, |value| value.quantity)
}

impl crate::base::Sealed for Tightening {}
impl Model for Tightening {
    fn check(&self) -> Result<()> {
        let (thread, _) = self.bolt.read().map_err(|error| error.within("bolt"))?;
        let half = Ratio::from_si(0.5);
        let (torque, preload) =
            (or(&self.torque, Torque::from_si(0.0)), or(&self.preload, Force::from_si(0.0)));
        let scatter = or(&self.scatter, half);
        let (least_thread_friction, peak_thread_friction) =
            (or(&self.least_thread_friction, half), or(&self.peak_thread_friction, half));
        let (least_head_friction, peak_head_friction) =
            (or(&self.least_head_friction, half), or(&self.peak_head_friction, half));
        let (least_nut_factor, peak_nut_factor) =
            (or(&self.least_nut_factor, half), or(&self.peak_nut_factor, half));
        let head_friction_diameter = or(&self.head_friction_diameter, thread.diameter * 2.0);
        valid! {
            torque: 0 <= .. <= 1e6 ; "definition: it tightens; plausibility limit: at most 1 MN·m";
            preload: 0 <= .. <= 1e8 ; "definition: a bolt is in tension; plausibility limit: at most 100 MN";
            scatter: 0 <= .. < 1 ; "definition: a share of the preload; write 30 % or 0.3";
            least_thread_friction: 0.01 <= .. <= 1 ; "plausibility limit: bolts rub with 0.01 to 1";
            peak_thread_friction: 0.01 <= .. <= 1 ; "plausibility limit: bolts rub with 0.01 to 1";
            least_head_friction: 0.01 <= .. <= 1 ; "plausibility limit: bolts rub with 0.01 to 1";
            peak_head_friction: 0.01 <= .. <= 1 ; "plausibility limit: bolts rub with 0.01 to 1";
            head_friction_diameter: 0.001 <= .. <= 0.5 ; "plausibility limit: heads are between 1 mm and 500 mm wide";
            least_nut_factor: 0.02 <= .. <= 1 ; "plausibility limit: nut factors lie between 0.02 and 1";
            peak_nut_factor: 0.02 <= .. <= 1 ; "plausibility limit: nut factors lie between 0.02 and 1";
        }
        let pairs = [
            ("thread_friction", &self.least_thread_friction, &self.peak_thread_friction),
            ("head_friction", &self.least_head_friction, &self.peak_head_friction),
            ("nut_factor", &self.least_nut_factor, &self.peak_nut_factor),
        ];
        for (name, least, peak) in pairs {
            match (least, peak) {
                (Some(least), Some(peak)) if least.quantity > peak.quantity => {
                    return Err(Error::document(
                        format!("least_{name}"),
                        format!("it is above peak_{name}: the low bound comes first"),
                    ));
                }
                (Some(_), None) => {
                    return Err(Error::document(format!("peak_{name}"), "give both bounds, or none"));
                }
                (None, Some(_)) => {
                    return Err(Error::document(format!("least_{name}"), "give both bounds, or none"));
                }
                _ => {}
            }
        }
        if self.least_thread_friction.is_some() != self.least_head_friction.is_some() {
            let message = "friction counts in the thread and under the head: give the bounds of both";
            let missing = match self.least_head_friction {
                None => "least_head_friction",
                Some(_) => "least_thread_friction",
            };
            return Err(Error::document(missing, message));
        }
        let sources =
            [self.least_thread_friction.is_some(), self.least_nut_factor.is_some(), self.lubricant.is_some()];
        if sources.iter().filter(|given| **given).count() > 1 {
            return Err(Error::document(
                if self.lubricant.is_some() { "lubricant" } else { "least_nut_factor" },
                "give one of friction, nut factor and lubricant: friction that was measured dry does not hold with a lubricant",
            ));
        }
        if self.torque.is_some() && self.preload.is_some() {
            return Err(Error::document("preload", "give torque or preload, not both"));
        }
        if head_friction_diameter <= thread.diameter {
            let diameter = thread.diameter;
            return Err(cannot!(head_friction_diameter > diameter; "is not beside the hole"));
        }
        Ok(())
    }
}

impl Tightening {
    /// Bounds of the preload after tightening, before the faces embed.
    ///
    /// # Returns
    /// See the fields of [`PreloadBounds`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Value, fastener::*, units::*};
    /// let tightening = Tightening {
    ///     bolt: Bolt::new("M10", "8.8")?, method: Some(TighteningMethod::TorqueWrench),
    ///     torque: Some(Value::parse("45 N·m")?), preload: None, scatter: None, lubricant: Some(Lubricant::Oiled),
    ///     least_thread_friction: None, peak_thread_friction: None, least_head_friction: None, peak_head_friction: None,
    ///     head_friction_diameter: Some(Value::parse("13 mm")?), least_nut_factor: None, peak_nut_factor: None,
    /// }.checked()?;
    /// let on = tightening.preload_bounds()?;
    /// assert_eq!(format!("{:.1} to {:.1} kN", on.least_preload.in_::<kN>(), on.peak_preload.in_::<kN>()), "19.2 to 39.8 kN");
    /// assert!(on.above_proof.starts_with("the peak preload is above the proof load"));
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn preload_bounds(&self) -> Result<PreloadBounds> {
        self.check()?;
        let proof_load = self.bolt.loads()?.proof_load;
        Ok(match self.bounds()? {
            Ok(Bounds([least_preload, mean_preload, peak_preload])) => PreloadBounds {
                least_preload,
                mean_preload,
                peak_preload,
                peak_over_proof: peak_preload / proof_load,
                above_proof: if peak_preload > proof_load { ABOVE } else { "" }.to_owned(),
                open: String::new(),
            },
            Err(open) => {
                let unknown = Force::from_si(f64::NAN);
                PreloadBounds {
                    least_preload: unknown,
                    mean_preload: unknown,
                    peak_preload: unknown,
                    peak_over_proof: Ratio::from_si(f64::NAN),
                    above_proof: String::new(),
                    open: open.to_owned(),
                }
            }
        })
    }

    /// Torque at which the peak preload reaches a share of the proof load.
    ///
    /// # Parameters
    /// - `proof_share` — wanted share of the proof load, at most 1
    ///
    /// # Returns
    /// The torque, and the preload that it surely gives.
    pub fn torque_for(&self, proof_share: Ratio) -> Result<TorqueChoice> {
        valid! { proof_share: 0 < .. <= 1 ; "definition: above the proof load a bolt stays stretched"; }
        self.check()?;
        if self.method != Some(TighteningMethod::TorqueWrench) {
            let why = "a torque is set with a torque wrench: write method = torque_wrench";
            return Err(Error::Missing { argument: "method", why });
        }
        let levers = self.levers()?.map_err(|why| Error::Missing { argument: "lubricant", why })?;
        let one = Torque::from_si(1.0);
        let Bounds([least, _, peak]) = self.by_torque(one, &levers);
        let wanted = self.bolt.loads()?.proof_load * proof_share;
        let times = wanted / peak;
        Ok(TorqueChoice { torque: one * times, least_preload: least * times, peak_preload: wanted })
    }

    /// Share by which the preload of equal bolts scatters; the method's from memory.
    fn scatter(&self) -> Known<f64> {
        let by_method = match self.method {
            Some(TighteningMethod::TorqueWrench) => 0.30,
            Some(TighteningMethod::Angle | TighteningMethod::YieldControlled) => 0.17,
            Some(TighteningMethod::ByHand) => {
                return Err("a bolt tightened by hand has no known preload: tighten it with a torque wrench");
            }
            Some(TighteningMethod::Impact) => {
                return Err(
                    "a bolt tightened with an impact wrench has no known preload: tighten it with a torque wrench",
                );
            }
            None => return Err("write method, such as torque_wrench"),
        };
        Ok(self.scatter.as_ref().map_or(by_method, |scatter| scatter.quantity.si()))
    }

    fn bounds(&self) -> Result<Known<Bounds>> {
        let scatter = match self.scatter() {
            Ok(scatter) => scatter,
            Err(open) => return Ok(Err(open)),
        };
        if let Some(preload) = &self.preload {
            let mean = preload.quantity;
            return Ok(Ok(Bounds([mean * (1.0 - scatter), mean, mean * (1.0 + scatter)])));
        }
        let torque = match (&self.torque, self.method) {
            (Some(torque), Some(TighteningMethod::TorqueWrench)) => torque.quantity,
            (_, Some(TighteningMethod::TorqueWrench)) => {
                return Ok(Err("write torque, or the preload that is aimed at"));
            }
            _ => return Ok(Err("write the preload that the method aims at: a torque does not give it")),
        };
        Ok(self.levers()?.map(|levers| self.by_torque(torque, &levers)))
    }

    /// Bounds of the preload by a torque.
    fn by_torque(&self, torque: Torque, levers: &Levers) -> Bounds {
        let scatter = self.scatter().unwrap_or(0.0);
        let mean = force(torque, levers.middle);
        let (loose, tight) = (force(torque, levers.high), force(torque, levers.low));
        Bounds([
            (mean * (1.0 - scatter)).min(loose * (1.0 - WRENCH)),
            mean,
            (mean * (1.0 + scatter)).max(tight * (1.0 + WRENCH)),
        ])
    }

    /// Levers of the torque, by nut factor, friction or lubricant.
    fn levers(&self) -> Result<Known<Levers>> {
        let (thread, _) = self.bolt.read()?;
        let half = |a: Ratio, b: Ratio| (a + b) * 0.5;
        if let (Some(least), Some(peak)) = (&self.least_nut_factor, &self.peak_nut_factor) {
            let of = |factor: Ratio| factor * thread.diameter;
            let (least, peak) = (least.quantity, peak.quantity);
            return Ok(Ok(Levers { low: of(least), middle: of(half(least, peak)), high: of(peak) }));
        }
        let bounds = |least: &Option<Value<Ratio>>, peak: &Option<Value<Ratio>>| match (least, peak) {
            (Some(least), Some(peak)) => Some((least.quantity, peak.quantity)),
            _ => None,
        };
        let measured = bounds(&self.least_thread_friction, &self.peak_thread_friction)
            .zip(bounds(&self.least_head_friction, &self.peak_head_friction));
        let by_lubricant = self.lubricant.map(|lubricant| {
            let (least, peak) = lubricant.friction();
            (Ratio::from_si(least), Ratio::from_si(peak))
        });
        let Some((in_thread, under_head)) = measured.or(by_lubricant.map(|both| (both, both))) else {
            return Ok(Err("write the bounds of friction or nut factor, or lubricant"));
        };
        let Some(width) = &self.head_friction_diameter else {
            return Ok(Err("write head_friction_diameter"));
        };
        let of = |thread_friction, head_friction| {
            lever(thread.diameter, thread.pitch, thread_friction, head_friction, width.quantity)
        };
        Ok(Ok(Levers {
            low: of(in_thread.0, under_head.0),
            middle: of(half(in_thread.0, in_thread.1), half(under_head.0, under_head.1)),
            high: of(in_thread.1, under_head.1),
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{N, Nm, kN, mm};

    fn wrench(lubricant: Option<Lubricant>) -> Tightening {
        Tightening {
            bolt: Bolt::new("M10", "8.8").unwrap(),
            method: Some(TighteningMethod::TorqueWrench),
            torque: Some(Value::new(Torque::of::<Nm>(40.0))),
            preload: None,
            scatter: None,
            lubricant,
            least_thread_friction: None,
            peak_thread_friction: None,
            least_head_friction: None,
            peak_head_friction: None,
            head_friction_diameter: Some(Value::new(Length::of::<mm>(13.0))),
            least_nut_factor: None,
            peak_nut_factor: None,
        }
    }

    #[test]
    fn a_lubricant_raises_the_preload_at_the_same_torque() {
        let [dry, oiled, greased] = [Lubricant::Dry, Lubricant::Oiled, Lubricant::AntiSeize]
            .map(|lubricant| wrench(Some(lubricant)).preload_bounds().unwrap());
        assert!(dry.peak_preload < oiled.peak_preload && oiled.peak_preload < greased.peak_preload);
        assert!(dry.mean_preload < oiled.mean_preload && oiled.mean_preload < greased.mean_preload);
        assert!(dry.above_proof.is_empty() && !greased.above_proof.is_empty());
    }

    #[test]
    fn what_is_not_known_has_no_number() {
        let known = wrench(Some(Lubricant::Dry));
        let preload = Some(Value::new(Force::of::<kN>(20.0)));
        for (open, tightening) in [
            ("write method", Tightening { method: None, ..known.clone() }),
            ("by hand", Tightening { method: Some(TighteningMethod::ByHand), ..known.clone() }),
            ("impact", Tightening { method: Some(TighteningMethod::Impact), ..known.clone() }),
            ("aims at", Tightening { method: Some(TighteningMethod::Angle), ..known.clone() }),
            ("write torque", Tightening { torque: None, ..known.clone() }),
            ("write the bounds", wrench(None)),
            ("head_friction_diameter", Tightening { head_friction_diameter: None, ..known.clone() }),
        ] {
            let on = tightening.preload_bounds().unwrap();
            assert!(on.open.contains(open), "{open}: {}", on.open);
            assert!(on.least_preload.si().is_nan() && on.peak_preload.si().is_nan(), "{open}");
        }
        let angle =
            Tightening { method: Some(TighteningMethod::Angle), torque: None, preload, ..known.clone() };
        let on = angle.preload_bounds().unwrap();
        assert!((on.least_preload.in_::<N>() - 16600.0).abs() < 1e-9, "{on:?}");
        // A torque cannot be chosen for a method that does not measure it.
        assert!(angle.torque_for(Ratio::from_si(0.9)).is_err());
        assert!(wrench(None).torque_for(Ratio::from_si(0.9)).is_err());
    }

    #[test]
    fn contradictions_are_refused_by_name() {
        let ratio = |value| Some(Value::new(Ratio::from_si(value)));
        let bare = wrench(None);
        for (key, tightening) in [
            ("peak_thread_friction", Tightening { least_thread_friction: ratio(0.1), ..bare.clone() }),
            ("least_nut_factor", Tightening { peak_nut_factor: ratio(0.2), ..bare.clone() }),
            (
                "least_nut_factor: it is above",
                Tightening { least_nut_factor: ratio(0.2), peak_nut_factor: ratio(0.1), ..bare.clone() },
            ),
            (
                "least_head_friction",
                Tightening {
                    least_thread_friction: ratio(0.1),
                    peak_thread_friction: ratio(0.2),
                    ..bare.clone()
                },
            ),
            (
                "lubricant",
                Tightening {
                    least_nut_factor: ratio(0.1),
                    peak_nut_factor: ratio(0.2),
                    lubricant: Some(Lubricant::Dry),
                    ..bare.clone()
                },
            ),
            ("preload", Tightening { preload: Some(Value::new(Force::of::<kN>(20.0))), ..bare.clone() }),
            (
                "head_friction_diameter",
                Tightening {
                    head_friction_diameter: Some(Value::new(Length::of::<mm>(9.0))),
                    ..bare.clone()
                },
            ),
            ("bolt: grade", Tightening { bolt: Bolt { thread: "M10".into(), grade: None }, ..bare.clone() }),
        ] {
            let message = tightening.check().unwrap_err().to_string();
            assert!(message.contains(key), "{key}: {message}");
        }
    }

    #[test]
    fn the_chosen_torque_reaches_the_share_at_its_peak() {
        for lubricant in [Lubricant::Dry, Lubricant::Oiled, Lubricant::AntiSeize] {
            let tightening = Tightening { torque: None, ..wrench(Some(lubricant)) };
            let choice = tightening.torque_for(Ratio::from_si(0.9)).unwrap();
            let with = Tightening { torque: Some(Value::new(choice.torque)), ..tightening };
            let on = with.preload_bounds().unwrap();
            assert!((on.peak_over_proof.si() - 0.9).abs() < 1e-12, "{on:?}");
            assert!(((on.least_preload / choice.least_preload).si() - 1.0).abs() < 1e-12);
        }
    }
}
