use core::f64::consts::PI;

/// Coherence of two tracks of an isotropic road of waviness 2: `x K_1(x)` with `x = 2 pi n t`, from waves a track `t`. 1 for long waves, 0 for short ones.
///
/// `K_1(x)` is the integral of `exp(-x cosh(u)) cosh(u)` over `u` from 0, by the trapezoidal rule, whose error falls as `exp(-pi^2 / step)`.
///
/// Source: Dodds and Robson, J. Sound and Vibration 31 (1973) 175-183 (from memory): the road is equally rough in every direction, and the cross-spectrum follows from the spectrum; checked
/// against SciPy's `k1` and by a quadrature over the directions of the waves.
pub(in crate::ride) fn track_coherence(tracks_over_wave: f64) -> f64 {
    const STEP: f64 = 0.125;
    let x = 2.0 * PI * tracks_over_wave;
    if x == 0.0 {
        return 1.0;
    }
    let mut sum = (-x).exp() / 2.0;
    for i in 1..1000 {
        let cosh = (STEP * f64::from(i)).cosh();
        let term = (-x * cosh).exp() * cosh;
        sum += term;
        if term < 1e-17 * sum || x * cosh > 745.0 {
            break;
        }
    }
    x * sum * STEP
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// `x * scipy.special.k1(x)`, scipy 1.17.1.
    #[test]
    fn is_that_of_scipy() {
        for (x, wanted) in SCIPY {
            assert_relative_eq!(track_coherence(x / (2.0 * PI)), *wanted, max_relative = 1e-12);
        }
        assert_eq!(track_coherence(0.0), 1.0);
    }

    const SCIPY: &[(f64, f64)] = &[
        (0.001, 0.9999962381560855),
        (0.05, 0.9954837162941254),
        (0.3, 0.9167976100371975),
        (1.0, 0.6019072301972346),
        (4.0, 0.04993399554907371),
        (20.0, 1.1766115939114077e-08),
    ];
}
