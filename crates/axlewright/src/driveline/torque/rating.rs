//! Rating of a part: the side on which it counts, and what it holds for.

use crate::units::Ratio;

/// Side of a part on which its rating counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Side {
    /// The input side.
    Input,
    /// The output side.
    Output,
}

/// Kind of a rating.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum RatingKind {
    /// For the part's life.
    Continuous,
    /// For a moment.
    Peak,
    /// Before it stays bent.
    Yield,
    /// Before it breaks.
    Ultimate,
}

/// Margins that are wanted of ratings, by their kind: those of a build sheet, or the usual ones.
#[derive(Debug, Clone, Copy)]
pub(in crate::driveline) struct Wanted {
    pub(in crate::driveline) strength: Ratio,
    pub(in crate::driveline) yield_strength: Ratio,
    pub(in crate::driveline) ultimate_strength: Ratio,
}

impl Wanted {
    /// Margins if none is written: common practice, no source.
    pub(in crate::driveline) const USUAL: [f64; 3] = [1.25, 1.5, 3.0];

    pub(super) fn usual() -> Wanted {
        let [strength, yield_strength, ultimate_strength] = Wanted::USUAL.map(Ratio::of::<crate::units::one>);
        Wanted { strength, yield_strength, ultimate_strength }
    }

    /// Wanted of a rating of this kind. One that does not say its kind may be of any.
    pub(super) fn of(&self, kind: Option<RatingKind>) -> Ratio {
        let greater = |a: Ratio, b: Ratio| if a < b { b } else { a };
        let yields = greater(self.strength, self.yield_strength);
        let breaks = greater(self.strength, self.ultimate_strength);
        match kind {
            Some(RatingKind::Continuous | RatingKind::Peak) => self.strength,
            Some(RatingKind::Yield) => yields,
            Some(RatingKind::Ultimate) => breaks,
            None => greater(yields, breaks),
        }
    }
}
