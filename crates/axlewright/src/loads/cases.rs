//! The cases, and their factors.

use crate::base::document::Value;
use crate::units::Ratio;

/// A load case.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum LoadCase {
    /// Standing, laden as weighed.
    Standing,
    /// Both wheels of an axle over a bump at speed.
    Bump,
    /// Braking in forward travel, with all the grip that there is.
    Braking,
    /// Braking in reverse.
    BrakingInReverse,
    /// A right turn, with all the grip that there is: the left wheels are the outer ones.
    Cornering,
    /// A right turn and braking together.
    CorneringAndBraking,
    /// A start with the driven wheels at their grip.
    Launch,
    /// A start in reverse with the driven wheels at their grip.
    ReverseLaunch,
    /// A wheel in a pothole: up and to the rear.
    Pothole,
    /// A wheel sideways against a kerb.
    Kerb,
}

impl LoadCase {
    pub(super) const ALL: [LoadCase; 10] = [
        LoadCase::Standing,
        LoadCase::Bump,
        LoadCase::Braking,
        LoadCase::BrakingInReverse,
        LoadCase::Cornering,
        LoadCase::CorneringAndBraking,
        LoadCase::Launch,
        LoadCase::ReverseLaunch,
        LoadCase::Pothole,
        LoadCase::Kerb,
    ];

    pub(super) const fn word(self) -> &'static str {
        match self {
            LoadCase::Standing => "standing",
            LoadCase::Bump => "bump",
            LoadCase::Braking => "braking",
            LoadCase::BrakingInReverse => "braking_in_reverse",
            LoadCase::Cornering => "cornering",
            LoadCase::CorneringAndBraking => "cornering_and_braking",
            LoadCase::Launch => "launch",
            LoadCase::ReverseLaunch => "reverse_launch",
            LoadCase::Pothole => "pothole",
            LoadCase::Kerb => "kerb",
        }
    }

    /// Factor that counts if none is written. Common practice, no source: three times the standing load over a bump and in a pothole, twice it sideways at
    /// a kerb, half as much again as the grip gives in a manoeuvre.
    pub(super) const fn usual_factor(self) -> f64 {
        match self {
            LoadCase::Standing => 1.0,
            LoadCase::Bump | LoadCase::Pothole => 3.0,
            LoadCase::Kerb => 2.0,
            _ => 1.5,
        }
    }
}

/// Factor of a case that replaces the usual one.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "serde", serde(expecting = "a table with `case` and `factor`"))]
pub struct CaseFactor {
    /// Case.
    pub case: LoadCase,
    /// Factor on its forces.
    pub factor: Value<Ratio>,
}
