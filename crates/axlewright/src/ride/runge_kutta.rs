//! Motion of what is not linear: an explicit Runge-Kutta method that chooses its steps. Our own, since no event is looked for: ground and stop are part of the forces.

use crate::{Error, Result};

/// Goes from `from` to `to`: the pair of Dormand and Prince, orders 5 and 4, with the step chosen so that the estimated error stays below
/// `tolerance` of a metre or a metre a second. `step` is the one to try first, and the one that the next call should try.
///
/// Source: J. R. Dormand and P. J. Prince, J. Comput. Appl. Math. 6 (1980) 19-26 (coefficients from memory; the order is tested).
pub(super) fn advance<const N: usize>(
    mut slope: impl FnMut(f64, &[f64; N]) -> [f64; N],
    y: &mut [f64; N],
    from: f64,
    to: f64,
    step: &mut f64,
    tolerance: f64,
) -> Result<()> {
    const A: [&[f64]; 6] = [
        &[1.0 / 5.0],
        &[3.0 / 40.0, 9.0 / 40.0],
        &[44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0],
        &[19372.0 / 6561.0, -25360.0 / 2187.0, 64448.0 / 6561.0, -212.0 / 729.0],
        &[9017.0 / 3168.0, -355.0 / 33.0, 46732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18656.0],
        &[35.0 / 384.0, 0.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0],
    ];
    const C: [f64; 6] = [0.2, 0.3, 0.8, 8.0 / 9.0, 1.0, 1.0];
    const E: [f64; 7] = [
        71.0 / 57600.0,
        0.0,
        -71.0 / 16695.0,
        71.0 / 1920.0,
        -17253.0 / 339_200.0,
        22.0 / 525.0,
        -1.0 / 40.0,
    ];
    let mut t = from;
    let mut k = [[0.0; N]; 7];
    k[0] = slope(t, y);
    while t < to {
        let h = step.min(to - t);
        let mut next = *y;
        for stage in 0..6 {
            next = *y;
            for (part, k) in A[stage].iter().zip(&k) {
                next.iter_mut().zip(k).for_each(|(y, k)| *y += h * part * k);
            }
            k[stage + 1] = slope(t + C[stage] * h, &next);
        }
        let off = |i: usize| (E.iter().zip(&k).map(|(e, k)| e * k[i]).sum::<f64>() * h / tolerance).abs();
        // What is not finite (`max` would forget it) is tried again with a shorter step, like what is too far off.
        let error =
            (0..N).map(off).fold(0.0, |most: f64, off| if off > most || off.is_nan() { off } else { most });
        let error = if error.is_finite() { error } else { f64::INFINITY };
        if error > 1.0 && h < 1e-12 {
            let message = format!("the motion cannot be followed beyond {t} s: it changes too fast");
            return Err(Error::NoSolution { message });
        }
        let factor = if error > 0.0 { 0.9 * error.powf(-0.2) } else { 5.0 };
        if error <= 1.0 {
            t = if h == to - t { to } else { t + h };
            *y = next;
            k[0] = k[6];
            // A step cut short by the end says little of the next one.
            if h == *step || factor < 1.0 {
                *step = h * factor.clamp(0.2, 5.0);
            }
        } else {
            *step = h * factor.clamp(0.1, 1.0);
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A swing of ten cycles, whose end is known, within a few times what its steps were allowed.
    #[test]
    fn a_swing_comes_back_and_a_tighter_tolerance_is_nearer() {
        let off = |tolerance| {
            let (mut y, mut step) = ([1.0, 0.0], 0.1);
            let end = 10.0 * core::f64::consts::TAU;
            advance(|_, y| [y[1], -y[0]], &mut y, 0.0, end, &mut step, tolerance).unwrap();
            (y[0] - 1.0).hypot(y[1])
        };
        assert!(off(1e-10) < 1e-7 && off(1e-10) < off(1e-6) / 100.0);
    }

    #[test]
    fn what_blows_up_is_refused() {
        let (mut y, mut step) = ([1.0], 0.1);
        assert!(advance(|_, y| [y[0] * y[0]], &mut y, 0.0, 2.0, &mut step, 1e-9).is_err());
    }
}
