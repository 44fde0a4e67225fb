//! Coarse steps of a linkage that stay clear of a dead centre.

/// Least clearance along a coarse step: the square of a sine.
const LEAST: f64 = 0.03;

/// True if the parabola through three clearances at even steps stays clear between the last two, even with four times its curvature.
pub(in crate::suspension) fn clear(before: f64, last: f64, now: f64) -> bool {
    last.min(now) - 0.5 * (before - 2.0 * last + now).abs() > LEAST
}
