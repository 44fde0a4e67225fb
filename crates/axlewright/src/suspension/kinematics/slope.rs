//! Readings that rest on a slope: instant centres, and changes over a stated bump.

use super::vector::Scalar;

/// Bump over which changes of camber and toe are said.
pub(in crate::suspension) const BUMP: f64 = 0.025;

/// Place of an instant centre along an axis from a point that rises by `lift` while the body turns by `turn`, and its height over that
/// point, which moves along the axis by `along`. Infinite where nothing turns.
#[inline(always)]
pub(in crate::suspension) fn centre<S: Scalar>(lift: S, along: S, turn: S) -> (S, S) {
    let place = lift / turn;
    // No slope is no height, however far away.
    let height = |[along, height]: [f64; 2]| if along == 0.0 { 0.0 } else { height };
    (place, S::each([along, -place * along / lift], height))
}
