use super::shear_area::cut;
use super::tolerance::Worst;
use crate::base::document::{Model, Stated, Value};
use crate::base::table::record;
use crate::fastener::Bolt;
use crate::units::{Force, Length, Ratio, Stress};
use crate::{Result, cannot, valid};

/// Engaged length of a bolt in a tapped part, weld nut or nut: whether the bolt breaks before a thread strips.
///
/// # Formula
/// bolt at its strongest `F_u = 1.2 S_u A_s`; thread of the bolt `0.897 c 0.6 S_u A_e`, of the part `0.897 c S_p A_i`, with the shear areas `A_e` and `A_i` of a 6g bolt in a 6H hole at the worst ends of
/// their tolerances; `c = 1` in a thick part, `-(w / d)^2 + 3.8 w / d - 2.61` in a wall of width `w` below `1.9 d`; margin = the lesser over `F_u`; least engagement = `l / margin`
///
/// # Fields
/// - `bolt` — the bolt: its `thread` and its `grade`
/// - `engagement` — `l`, length on which full threads meet: thickness of the part less its chamfers, at most that of the bolt's end
/// - `shear_strength` — `S_p`, shear strength of the tapped part, at its least and at its temperature; common practice, no source: 0.6 of the tensile strength of steel, 0.55 of aluminium. Near a weld it is that of the weakened metal
/// - `wall_width` — `w`, width across flats of the nut or boss; `"none"` if the part is thick all around (at least half a diameter of wall)
///
/// # Valid for
/// Steel bolts, tapped threads of the usual class (6H, 2B), no insert of wire. If the shear strength or the wall is not written, the margin is an upper bound, and `open` says what is missing: it is then no better than `tight`.
///
/// # Source
/// FED-STD-H28/2 (shear areas), ISO 965-1 (tolerances), E. M. Alexander (1977) and VDI 2230 part 1 (spreading of the wall `c`, bending of the threads 0.897, strongest bolt 1.2 times the least strength), all from memory
///
/// # Caution
/// A thread that strips gives no warning: the bolt should break first. A weld nut carries no more than its welds and its sheet. Aluminium threads that were opened often need a steel insert. Local codes and licensed practice come first.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ThreadEngagement {
    /// Bolt by its markings.
    pub bolt: Bolt,
    /// Length on which full threads meet.
    pub engagement: Value<Length>,
    /// Shear strength of the tapped part.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub shear_strength: Option<Value<Stress>>,
    /// Width across flats of the nut or boss.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Stated::is_unknown"))]
    pub wall_width: Stated<Value<Length>>,
}

record! {
    /// Strength of an engaged thread.
    #[derive(Debug, Clone, PartialEq)]
    pub struct EngagementStrength {
        /// Load at which the strongest bolt of its grade breaks.
        pub bolt_breaks: Force,
        /// Load at which the thread of the weakest bolt of its grade strips.
        pub bolt_strips: Force,
        /// Load at which the thread of the part strips.
        pub part_strips: Force,
        /// Stripping load over the load that breaks the bolt.
        pub margin: Ratio,
        /// Thread that strips first.
        pub strips_first: String,
        /// Least engagement at which the bolt breaks first.
        pub least_engagement: Length,
        /// Missing facts that could still take from the margin; empty if none is missing.
        pub open: String,
    }
}

/// Strongest bolt over the least tensile strength; bending of the threads; shear over tensile strength of a bolt. VDI 2230, from memory.
const STRONGEST: f64 = 1.2;
const BENDING: f64 = 0.897;
const SHEAR: f64 = 0.6;

impl crate::base::Sealed for ThreadEngagement {}
impl Model for ThreadEngagement {
    fn check(&self) -> Result<()> {
        let (thread, _) = self.bolt.read().map_err(|error| error.within("bolt"))?;
        let engagement = self.engagement.quantity;
        let shear_strength = self.shear_strength.as_ref().map_or(Stress::from_si(1e8), |on| on.quantity);
        let wall_width = self.wall_width.as_ref().map_or(thread.diameter * 2.0, |on| on.quantity);
        valid! {
            engagement: 0.0001 <= .. <= 1 ; "plausibility limit: threads meet on 0.1 mm to 1 m";
            shear_strength: 1e6 <= .. <= 2e9 ; "plausibility limit: metals shear between 1 MPa and 2 GPa";
            wall_width: 0.001 <= .. <= 1 ; "plausibility limit: walls are between 1 mm and 1 m wide";
        }
        let least = thread.diameter * THINNEST;
        if wall_width < least {
            return Err(
                cannot!(wall_width >= least; "is too thin: such a wall spreads and lets the thread go"),
            );
        }
        Ok(())
    }
}

/// Width of a wall over the diameter: least that the formula covers, and from where it is thick.
const THINNEST: f64 = 1.4;
const THICK: f64 = 1.9;

impl ThreadEngagement {
    /// Strength of the engaged thread against the strongest bolt.
    ///
    /// # Returns
    /// See the fields of [`EngagementStrength`].
    ///
    /// # Example
    /// ```
    /// use axlewright::{Model, Stated, Value, fastener::*, units::*};
    /// let hub = ThreadEngagement {
    ///     bolt: Bolt::new("M10", "8.8")?, engagement: Value::parse("15 mm")?,
    ///     shear_strength: Some(Value::parse("170 MPa")?), wall_width: Stated::None,
    /// }.checked()?;
    /// let on = hub.strength()?;
    /// assert_eq!(format!("{:.2}, {}", on.margin.in_::<one>(), on.strips_first), "0.89, tapped part");
    /// assert_eq!(format!("{:.0} mm", on.least_engagement.in_::<mm>()), "17 mm");
    /// # Ok::<(), axlewright::Error>(())
    /// ```
    pub fn strength(&self) -> Result<EngagementStrength> {
        self.check()?;
        let (thread, strength) = self.bolt.read()?;
        let (worst, length) = (Worst::of(&thread), self.engagement.quantity);
        let wall = self.wall_width.as_ref().map_or(1.0, |on| spreading((on.quantity / thread.diameter).si()));
        let external =
            cut(worst.internal_minor, worst.external_pitch - worst.internal_minor, thread.pitch, length);
        let internal = cut(worst.external, worst.external - worst.internal_pitch, thread.pitch, length);
        let bolt_breaks = strength.tensile * thread.stress_area() * STRONGEST;
        let bolt_strips = strength.tensile * external * (SHEAR * BENDING * wall);
        let part = self.shear_strength.as_ref().map(|on| on.quantity * internal * (BENDING * wall));
        let (weaker, strips_first) = match part {
            Some(part) if part < bolt_strips => (part, "tapped part"),
            _ => (bolt_strips, "bolt"),
        };
        let margin = weaker / bolt_breaks;
        let missing: Vec<&str> = [
            (part.is_none(), "write shear_strength of the tapped part"),
            (self.wall_width.is_unknown(), "write wall_width, or \"none\" if the part is thick all around"),
        ]
        .into_iter()
        .filter_map(|(missing, what)| missing.then_some(what))
        .collect();
        Ok(EngagementStrength {
            bolt_breaks,
            bolt_strips,
            part_strips: part.unwrap_or(Force::from_si(f64::NAN)),
            margin,
            strips_first: strips_first.to_owned(),
            least_engagement: length / margin,
            open: missing.join("; "),
        })
    }
}

/// Share of the strength that a wall of this width over the diameter keeps as it spreads.
fn spreading(width: f64) -> f64 {
    if width >= THICK { 1.0 } else { 3.8 * width - width * width - 2.61 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{MPa, mm};

    fn hub(engagement: f64) -> ThreadEngagement {
        ThreadEngagement {
            bolt: Bolt::new("M10", "8.8").unwrap(),
            engagement: Value::new(Length::of::<mm>(engagement)),
            shear_strength: Some(Value::new(Stress::of::<MPa>(170.0))),
            wall_width: Stated::None,
        }
    }

    #[test]
    fn at_the_least_engagement_the_bolt_breaks_just_first() {
        let least = hub(15.0).strength().unwrap().least_engagement;
        let on = hub(least.in_::<mm>()).strength().unwrap();
        assert!((on.margin.si() - 1.0).abs() < 1e-12, "{on:?}");
    }

    #[test]
    fn what_is_missing_is_said_and_never_helps() {
        let full = hub(15.0);
        for (says, one) in [
            ("shear_strength", ThreadEngagement { shear_strength: None, ..full.clone() }),
            ("wall_width", ThreadEngagement { wall_width: Stated::Unknown, ..full.clone() }),
        ] {
            let on = one.strength().unwrap();
            assert!(on.open.contains(says) && on.margin >= full.strength().unwrap().margin, "{on:?}");
        }
        assert_eq!(full.strength().unwrap().open, "");
        let thin = |width| ThreadEngagement {
            wall_width: Stated::Given(Value::new(Length::of::<mm>(width))),
            ..full.clone()
        };
        let ratio = thin(16.0).strength().unwrap().margin / full.strength().unwrap().margin;
        assert!((ratio.si() - 0.91).abs() < 1e-12, "{ratio:?}");
        assert!((thin(19.0).strength().unwrap().margin / full.strength().unwrap().margin).si() == 1.0);
        let refused = thin(13.9).check().unwrap_err().to_string();
        assert!(refused.starts_with("wall_width = 13.9 mm"), "{refused}");
    }
}
