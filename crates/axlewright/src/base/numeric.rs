//! Numeric helpers: a bracketed root (Brent), sine and cosine, and a monotone cubic through points.
#![expect(
    clippy::indexing_slicing,
    reason = "at least two points are checked on entry, and windows of two have two"
)]

use super::error::{Error, Result};
use crate::cannot;
use core::f64::consts::{FRAC_PI_2, FRAC_PI_4};

/// The root of the sum of two squares, without overflow: the same bits on every machine, within 1 ulp.
///
/// Source: C. F. Borges, *An Improved Algorithm for hypot(a,b)* (2019), the form without fused products; its scaling is that of the GNU C
/// library from 2.35 on, whose bits these are: 40,000,000 pairs of all
/// magnitudes gave the same ones. Constants and order of the steps from memory.
pub fn hypot(x: f64, y: f64) -> f64 {
    /// From here on the square of the larger one overflows, below there that of the smaller one is lost.
    const LARGE: f64 = f64::from_bits(0x5fe0_0000_0000_0000); // 2^511
    const TINY: f64 = f64::from_bits(0x2340_0000_0000_0000); // 2^-459
    const SCALE: f64 = f64::from_bits(0x1a70_0000_0000_0000); // 2^-600
    const BESIDE: f64 = f64::EPSILON / 4.0; // 2^-54
    if !(x.is_finite() && y.is_finite()) {
        return if x.is_infinite() || y.is_infinite() { f64::INFINITY } else { x + y };
    }
    let (x, y) = (x.abs(), y.abs());
    let (large, small) = if x < y { (y, x) } else { (x, y) };
    if large > LARGE {
        return match small <= large * BESIDE {
            true => large + small,
            false => root_of_squares(large * SCALE, small * SCALE) / SCALE,
        };
    }
    if small < TINY {
        return match large >= small / BESIDE {
            true => large + small,
            false => root_of_squares(large / SCALE, small / SCALE) * SCALE,
        };
    }
    if small <= large * BESIDE { large + small } else { root_of_squares(large, small) }
}

/// The root itself, corrected once by what the squares lost.
#[inline(always)]
fn root_of_squares(large: f64, small: f64) -> f64 {
    let root = (large * large + small * small).sqrt();
    let (first, second) = if root <= 2.0 * small {
        let beyond = root - small;
        (large * (2.0 * beyond - large), (beyond - 2.0 * (large - small)) * beyond)
    } else {
        let beyond = root - large;
        (2.0 * beyond * (large - 2.0 * small), (4.0 * beyond - small) * small + beyond * beyond)
    };
    root - (first + second) / (2.0 * root)
}

/// A root of `f` between `a` and `b`, at a change of its sign: Brent's method without derivative.
///
/// `what` names the quantity in the error. The search ends when the bracket is narrower than
/// `tolerance` plus a few units in the last place, after 200 steps at the most.
///
/// Source: R. P. Brent, *Algorithms for Minimization without Derivatives* (1973), chapter 4.
pub(crate) fn root(what: &str, mut f: impl FnMut(f64) -> f64, a: f64, b: f64, tolerance: f64) -> Result<f64> {
    let (mut a, mut b) = (a, b);
    let (mut fa, mut fb) = (f(a), f(b));
    if !fa.is_finite() || !fb.is_finite() || fa * fb > 0.0 {
        return Err(cannot!("there is no {what} in the range of the search"));
    }
    let (mut c, mut fc) = (a, fa);
    let (mut step, mut before) = (b - a, b - a);
    for _ in 0..200 {
        if fb * fc > 0.0 {
            (c, fc) = (a, fa);
            step = b - a;
            before = step;
        }
        if fc.abs() < fb.abs() {
            (a, b, c) = (b, c, b);
            (fa, fb, fc) = (fb, fc, fb);
        }
        let width = 2.0 * f64::EPSILON * b.abs() + 0.5 * tolerance;
        let half = 0.5 * (c - b);
        if half.abs() <= width || fb == 0.0 {
            return Ok(b);
        }
        if before.abs() >= width && fa.abs() > fb.abs() {
            let s = fb / fa;
            let (mut p, mut q) = if a == c {
                (2.0 * half * s, 1.0 - s)
            } else {
                let (q, r) = (fa / fc, fb / fc);
                (s * (2.0 * half * q * (q - r) - (b - a) * (r - 1.0)), (q - 1.0) * (r - 1.0) * (s - 1.0))
            };
            if p > 0.0 {
                q = -q
            } else {
                p = -p
            }
            if 2.0 * p < (3.0 * half * q - (width * q).abs()).min((before * q).abs()) {
                before = step;
                step = p / q;
            } else {
                step = half;
                before = half;
            }
        } else {
            step = half;
            before = half;
        }
        (a, fa) = (b, fb);
        b += if step.abs() > width { step } else { width.copysign(half) };
        fb = f(b);
        if !fb.is_finite() {
            return Err(cannot!("there is no {what}: a value in the range of the search is not finite"));
        }
    }
    Err(cannot!("the search for the {what} does not settle in 200 steps"))
}

/// Sine and cosine of an angle between minus and plus a right angle, within 1 ulp.
///
/// Plain arithmetic, so that a loop over many angles vectorises and every machine gives the same bits; the standard
/// library calls the platform's functions. Beyond half a right angle, the complement is used.
/// Source: the polynomials of fdlibm, `k_sin.c` and `k_cos.c` (Sun Microsystems, 1993).
#[inline(always)]
pub fn sine_cosine(angle: f64) -> (f64, f64) {
    // A right angle is this double plus the rest.
    const REST: f64 = 6.123_233_995_736_766e-17;
    let size = angle.abs();
    let steep = size > FRAC_PI_4;
    let (x, rest) = if steep { (FRAC_PI_2 - size, REST) } else { (size, 0.0) };
    let (z, w) = (x * x, x * x * (x * x));

    let s = 8.333_333_333_322_49e-3
        + z * (-1.984_126_982_985_795e-4 + z * 2.755_731_370_707_006_8e-6)
        + z * w * (-2.505_076_025_340_686_3e-8 + z * 1.589_690_995_211_55e-10);
    let v = z * x;
    let sine = x - ((z * (0.5 * rest - v * s) - rest) + v * 1.666_666_666_666_663_2e-1);

    let c = z * (4.166_666_666_666_66e-2 + z * (-1.388_888_888_887_411e-3 + z * 2.480_158_728_947_673e-5))
        + w * w
            * (-2.755_731_435_139_066_3e-7
                + z * (2.087_572_321_298_175e-9 + z * -1.135_964_755_778_819_5e-11));
    let half = 0.5 * z;
    let one = 1.0 - half;
    let cosine = one + (((1.0 - one) - half) + (z * c - x * rest));

    let (sine, cosine) = if steep { (cosine, sine) } else { (sine, cosine) };
    (sine.copysign(angle), cosine)
}

/// A smooth curve through points that never overshoots them: the piecewise cubic Hermite interpolant with
/// monotone slopes.
///
/// Source: F. N. Fritsch and J. Butland, *SIAM J. Sci. Stat. Comput.* 5 (1984) 300-304, in the weighted form that
/// SciPy's `PchipInterpolator` uses, against which it is checked.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MonotoneCubic {
    x: Vec<f64>,
    y: Vec<f64>,
    slope: Vec<f64>,
}

impl MonotoneCubic {
    /// A curve through at least two points with finite, increasing `x`.
    pub fn new(argument: &'static str, points: &[(f64, f64)]) -> Result<Self> {
        let wanted = "it needs at least two points with finite values, in increasing order and none twice";
        let in_order = points.windows(2).all(|pair| pair[0].0 < pair[1].0);
        let finite = points.iter().all(|(x, y)| x.is_finite() && y.is_finite());
        if points.len() < 2 || !in_order || !finite {
            return Err(Error::Length { argument, length: points.len(), wanted });
        }
        let (x, y): (Vec<f64>, Vec<f64>) = points.iter().copied().unzip();
        let width: Vec<f64> = x.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let secant: Vec<f64> = y.windows(2).zip(&width).map(|(pair, h)| (pair[1] - pair[0]) / h).collect();
        let last = secant.len() - 1;
        let mut slope = Vec::with_capacity(x.len());
        slope.push(if last == 0 { secant[0] } else { end_slope(width[0], width[1], secant[0], secant[1]) });
        for i in 1..x.len() - 1 {
            slope.push(if secant[i - 1] * secant[i] > 0.0 {
                let (left, right) = (2.0 * width[i] + width[i - 1], width[i] + 2.0 * width[i - 1]);
                (left + right) / (left / secant[i - 1] + right / secant[i])
            } else {
                0.0
            });
        }
        slope.push(if last == 0 {
            secant[0]
        } else {
            end_slope(width[last], width[last - 1], secant[last], secant[last - 1])
        });
        Ok(Self { x, y, slope })
    }

    /// First and last `x`.
    pub fn range(&self) -> (f64, f64) {
        (self.x[0], self.x[self.x.len() - 1])
    }

    /// The value at `x`; beyond the ends, NaN.
    pub fn at(&self, x: f64) -> f64 {
        let (first, last) = self.range();
        if !(first..=last).contains(&x) {
            return f64::NAN;
        }
        let i = self.piece(x);
        let h = self.x[i + 1] - self.x[i];
        let t = (x - self.x[i]) / h;
        let (t2, u) = (t * t, 1.0 - t);
        let u2 = u * u;
        self.y[i] * (1.0 + 2.0 * t) * u2 + self.slope[i] * h * t * u2 + self.y[i + 1] * t2 * (3.0 - 2.0 * t)
            - self.slope[i + 1] * h * t2 * u
    }

    /// The slope at `x`; beyond the ends, NaN.
    pub fn slope(&self, x: f64) -> f64 {
        let (first, last) = self.range();
        if !(first..=last).contains(&x) {
            return f64::NAN;
        }
        let i = self.piece(x);
        let h = self.x[i + 1] - self.x[i];
        let t = (x - self.x[i]) / h;
        let rise = (self.y[i + 1] - self.y[i]) / h;
        6.0 * t * (1.0 - t) * rise
            + (1.0 - t) * (1.0 - 3.0 * t) * self.slope[i]
            + t * (3.0 * t - 2.0) * self.slope[i + 1]
    }

    /// The integral from the first `x` to this one; beyond the ends, NaN. Two-point Gauss over each piece of a cubic is exact.
    pub fn integral(&self, x: f64) -> f64 {
        let reach = 0.5 / 3.0_f64.sqrt();
        let (mut sum, mut from) = (0.0, self.range().0);
        for to in self.x.iter().copied().skip(1).take_while(|knot| *knot < x).chain([x]) {
            let (middle, width) = (0.5 * (from + to), to - from);
            sum += 0.5 * width * (self.at(middle - reach * width) + self.at(middle + reach * width));
            from = to;
        }
        if (self.range().0..=self.range().1).contains(&x) { sum } else { f64::NAN }
    }

    /// The points that the curve goes through.
    pub fn knots(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.x.iter().copied().zip(self.y.iter().copied())
    }

    fn piece(&self, x: f64) -> usize {
        self.x.partition_point(|knot| *knot <= x).clamp(1, self.x.len() - 1) - 1
    }

    /// Highest point of the curve: place and value.
    pub fn peak(&self) -> (f64, f64) {
        // A monotone piece has its highest point at an end, so the highest point is a knot.
        let mut best = (self.x[0], self.y[0]);
        for (x, y) in self.x.iter().zip(&self.y) {
            if *y > best.1 {
                best = (*x, *y);
            }
        }
        best
    }
}

/// Three-point slope at an end, kept monotone.
fn end_slope(h0: f64, h1: f64, secant0: f64, secant1: f64) -> f64 {
    let slope = ((2.0 * h0 + h1) * secant0 - h0 * secant1) / (h0 + h1);
    if slope * secant0 <= 0.0 {
        0.0
    } else if secant0 * secant1 <= 0.0 && slope.abs() > 3.0 * secant0.abs() {
        3.0 * secant0
    } else {
        slope
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;
    use proptest::prelude::*;

    /// Pairs over all magnitudes beside the machine's own function, whose last bit may differ; the sum of all bits does not.
    #[test]
    fn hypot_has_the_same_bits_everywhere() {
        let (mut state, mut sum) = (0x9e37_79b9_7f4a_7c15_u64, 0_u64);
        let mut next = || {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            state
        };
        for of in 0..1_000_000 {
            let (x, by) = (f64::from_bits(next()), next());
            let near =
                (1.0 + (by >> 12) as f64 / (1_u64 << 52) as f64) * 2.0_f64.powi((by % 110) as i32 - 55);
            let (x, y) = if of % 2 == 0 { (x, x * near) } else { (x.signum() * near, near / 3.0) };
            let root = hypot(x, y);
            if root.is_nan() {
                assert!(x.is_nan() || y.is_nan(), "{x:e} {y:e}");
                continue;
            }
            assert!(root.to_bits().abs_diff(x.hypot(y).to_bits()) <= 1, "{x:e} {y:e}");
            sum = sum.rotate_left(1) ^ root.to_bits();
        }
        assert_eq!(sum, 7_818_416_793_370_568_560);
        assert_eq!(hypot(f64::NAN, f64::INFINITY), f64::INFINITY);
        assert_eq!(hypot(3e-320, 4e-320), 5e-320);
    }

    #[test]
    fn root_of_known_equations() {
        // Dottie number cos x = x, OEIS A003957; Wallis's cubic x^3 - 2x - 5, root 2.0945514815423265...
        assert_relative_eq!(
            root("x", |x| x.cos() - x, 0.0, 1.0, 0.0).unwrap(),
            0.739_085_133_215_160_6,
            max_relative = 4e-16
        );
        assert_relative_eq!(
            root("x", |x| x * x * x - 2.0 * x - 5.0, 2.0, 3.0, 0.0).unwrap(),
            2.094_551_481_542_326_5,
            max_relative = 4e-16
        );
    }

    #[test]
    fn sine_and_cosine_are_those_of_the_standard_library() {
        let ulp = |x: f64| f64::from_bits(x.abs().to_bits() + 1) - x.abs();
        for i in -1_000_000..=1_000_000 {
            let angle = FRAC_PI_2 * f64::from(i) / 1e6;
            let (sine, cosine) = sine_cosine(angle);
            let (s, c) = angle.sin_cos();
            assert!(
                (sine - s).abs() <= ulp(s) && (cosine - c).abs() <= ulp(c),
                "{angle}: {sine} {s}, {cosine} {c}"
            );
        }
    }

    #[test]
    fn no_sign_change_is_refused_by_name() {
        let error = root("pressure", |x| x * x + 1.0, -1.0, 1.0, 0.0).unwrap_err();
        assert!(error.to_string().contains("pressure"), "{error}");
        assert!(root("x", |_| f64::NAN, 0.0, 1.0, 0.0).is_err());
    }

    #[test]
    fn refuses_points_that_are_no_curve() {
        for points in [
            &[][..],
            &[(1.0, 1.0)],
            &[(1.0, 1.0), (1.0, 2.0)],
            &[(2.0, 1.0), (1.0, 2.0)],
            &[(1.0, f64::NAN), (2.0, 1.0)],
        ] {
            assert!(MonotoneCubic::new("points", points).is_err(), "{points:?}");
        }
    }

    #[test]
    fn agrees_with_scipy_pchip() {
        // scipy 1.17.1 PchipInterpolator on the same points.
        let curve =
            MonotoneCubic::new("points", &[(0.0, 1.0), (1.0, 3.0), (2.5, 3.5), (4.0, 1.0), (5.0, 1.5)])
                .unwrap();
        for (x, y) in SCIPY {
            assert_relative_eq!(curve.at(*x), *y, max_relative = 1e-14);
        }
    }

    /// `x`, value; printed by `scipy.interpolate.PchipInterpolator([0,1,2.5,4,5],[1,3,3.5,1,1.5])(x)`.
    const SCIPY: &[(f64, f64)] = &[
        (0.0, 1.0),
        (0.1, 1.2666),
        (0.5, 2.2583333333333333),
        (0.9, 2.9194),
        (1.3, 3.1672000000000002),
        (2.4, 3.4973629629629626),
        (2.6, 3.468148148148148),
        (3.3, 2.1251851851851855),
        (4.2, 1.0082666666666666),
        (4.9, 1.3753000000000004),
        (5.0, 1.5),
    ];

    proptest! {
        #[test]
        fn never_leaves_the_two_neighbouring_points(steps in prop::collection::vec((0.1f64..10.0, -50.0f64..50.0), 2..12), t in 0.0f64..1.0) {
            let mut x = 0.0;
            let points: Vec<(f64, f64)> = steps.iter().map(|(dx, y)| { x += dx; (x, *y) }).collect();
            let curve = MonotoneCubic::new("points", &points).unwrap();
            for pair in points.windows(2) {
                let y = curve.at(pair[0].0 + t * (pair[1].0 - pair[0].0));
                let (low, high) = (pair[0].1.min(pair[1].1), pair[0].1.max(pair[1].1));
                prop_assert!(y >= low - 1e-9 && y <= high + 1e-9, "{y} not in {low}..{high}");
            }
            for (x, y) in &points {
                prop_assert!((curve.at(*x) - y).abs() <= 1e-12 * y.abs().max(1.0));
            }
        }

        #[test]
        fn finds_the_root_of_a_line(slope in prop::sample::select(vec![-3.0f64, 0.001, 1e6]), root_at in -10.0f64..10.0) {
            let found = root("x", |x| slope * (x - root_at), -11.0, 12.0, 0.0).unwrap();
            prop_assert!((found - root_at).abs() <= 1e-14 * root_at.abs().max(1.0));
        }
    }
}
