//! Rating of a part: the side on which it counts, and what it holds for.

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
