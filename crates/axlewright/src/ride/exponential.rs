//! The exponential of a small fixed-size matrix.

/// A square matrix by rows.
pub(super) type Matrix<const N: usize> = [[f64; N]; N];

/// The exponential of a matrix: scaling and squaring with the diagonal Padé approximant of degree 13.
///
/// Source: N. J. Higham, SIAM J. Matrix Anal. Appl. 26 (2005) 1179-1193, coefficients and bound; checked against SciPy's `expm`.
pub(super) fn exponential<const N: usize>(a: &Matrix<N>) -> Matrix<N> {
    const B: [f64; 14] = [
        64_764_752_532_480_000.0,
        32_382_376_266_240_000.0,
        7_771_770_303_897_600.0,
        1_187_353_796_428_800.0,
        129_060_195_264_000.0,
        10_559_470_521_600.0,
        670_442_572_800.0,
        33_522_128_640.0,
        1_323_241_920.0,
        40_840_800.0,
        960_960.0,
        16_380.0,
        182.0,
        1.0,
    ];
    const BOUND: f64 = 5.371_920_351_148_152;
    let norm = (0..N).map(|j| (0..N).map(|i| a[i][j].abs()).sum::<f64>()).fold(0.0, f64::max);
    let mut squarings = 0;
    let mut scale = 1.0;
    while norm * scale > BOUND && squarings < 1000 {
        scale *= 0.5;
        squarings += 1;
    }
    let a = map(a, |x| x * scale);
    let a2 = product(&a, &a);
    let a4 = product(&a2, &a2);
    let a6 = product(&a4, &a2);
    // Even and odd powers from `B[from]` on, six at once.
    let sum = |from: usize, with_one: bool| {
        let mut out = [[0.0; N]; N];
        for (i, row) in out.iter_mut().enumerate() {
            for (j, x) in row.iter_mut().enumerate() {
                *x = B[from + 4] * a6[i][j] + B[from + 2] * a4[i][j] + B[from] * a2[i][j];
                if with_one && i == j {
                    *x += B[from - 2];
                }
            }
        }
        out
    };
    let add = |x: &Matrix<N>, y: &Matrix<N>, sign: f64| {
        let mut out = *x;
        out.iter_mut().flatten().zip(y.iter().flatten()).for_each(|(x, y)| *x += sign * y);
        out
    };
    let odd = product(&a, &add(&product(&a6, &sum(9, false)), &sum(3, true), 1.0));
    let even = add(&product(&a6, &sum(8, false)), &sum(2, true), 1.0);
    let mut exponential = solve(add(&even, &odd, -1.0), add(&even, &odd, 1.0));
    for _ in 0..squarings {
        exponential = product(&exponential, &exponential);
    }
    exponential
}

fn map<const N: usize>(a: &Matrix<N>, f: impl Fn(f64) -> f64) -> Matrix<N> {
    let mut out = *a;
    out.iter_mut().flatten().for_each(|x| *x = f(*x));
    out
}

fn product<const N: usize>(a: &Matrix<N>, b: &Matrix<N>) -> Matrix<N> {
    let mut out = [[0.0; N]; N];
    for i in 0..N {
        for k in 0..N {
            for j in 0..N {
                out[i][j] += a[i][k] * b[k][j];
            }
        }
    }
    out
}

/// A matrix by its columns times a vector.
#[inline]
pub(super) fn times<const N: usize, const M: usize>(columns: &[[f64; N]; M], x: &[f64; M]) -> [f64; N] {
    let mut out = [0.0; N];
    for (column, x) in columns.iter().zip(x) {
        out.iter_mut().zip(column).for_each(|(y, a)| *y += a * x);
    }
    out
}

/// `x` of `a x = b`: elimination with partial pivoting.
fn solve<const N: usize>(mut a: Matrix<N>, mut b: Matrix<N>) -> Matrix<N> {
    for k in 0..N {
        let mut pivot = k;
        for i in k + 1..N {
            if a[i][k].abs() > a[pivot][k].abs() {
                pivot = i;
            }
        }
        a.swap(k, pivot);
        b.swap(k, pivot);
        for i in k + 1..N {
            let factor = a[i][k] / a[k][k];
            for j in 0..N {
                a[i][j] -= factor * a[k][j];
                b[i][j] -= factor * b[k][j];
            }
        }
    }
    for k in (0..N).rev() {
        let mut row = b[k];
        for i in k + 1..N {
            row.iter_mut().zip(&b[i]).for_each(|(x, below)| *x -= a[k][i] * below);
        }
        b[k] = row.map(|x| x / a[k][k]);
    }
    b
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Quarter car of 300 kg on 40 kg, 22 kN/m, 1.5 kN·s/m, 190 kN/m over 50 ms; printed by scipy 1.17.1 `linalg.expm`.
    #[test]
    fn agrees_with_scipy() {
        let (ms, mu, k, c, kt) = (300.0, 40.0, 22e3, 1500.0, 190e3);
        let a = [
            [0.0, 1.0, 0.0, 0.0],
            [-k / ms, -c / ms, k / ms, c / ms],
            [0.0, 0.0, 0.0, 1.0],
            [k / mu, c / mu, -(k + kt) / mu, -c / mu],
        ]
        .map(|row| row.map(|x| x * 0.05));
        for (row, wanted) in exponential(&a).iter().zip(SCIPY) {
            for (x, wanted) in row.iter().zip(wanted) {
                assert_relative_eq!(*x, *wanted, max_relative = 1e-12, epsilon = 1e-13);
            }
        }
    }

    /// Turning by any angle: a matrix whose exponential is known, and the squarings that a great one takes.
    #[test]
    fn a_turn_is_a_turn() {
        for angle in [1e-9, 0.3, 4.0, 100.0] {
            let turned = exponential(&[[0.0, -angle], [angle, 0.0]]);
            assert_relative_eq!(turned[0][0], angle.cos(), epsilon = 1e-13);
            assert_relative_eq!(turned[1][0], angle.sin(), epsilon = 1e-13);
        }
    }

    const SCIPY: &[[f64; 4]] = &[
        [0.9399672622593145, 0.04485626980118768, -0.15909573299723367, 0.0017067174206766452],
        [-2.3507652040482743, 0.7796878165287503, -5.756142544165796, 0.001183712733330417],
        [0.1279096054158371, 0.012800380655074856, -0.4517119411087135, -0.0014674628437462572],
        [-1.745799145432593, 0.00887784549997831, 8.716247653227311, -0.3326801811928546],
    ];
}
