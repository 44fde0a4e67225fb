//! Matrix functions of `nalgebra` for the sizes used here. Only fixed sizes: the dynamic ones multiply differently from processor to processor.

use nalgebra::{Complex, SMatrix};

/// A real square matrix.
pub(in crate::ride) trait Square: Sized {
    /// Matrix exponential: scaling and squaring with Padé approximants.
    fn exponential(&self) -> Self;
    /// All eigenvalues, or nothing if they are not found.
    fn eigenvalues(self) -> Option<Vec<Complex<f64>>>;
}

/// A complex square matrix.
pub(in crate::ride) trait Eliminate<const N: usize, const W: usize> {
    /// Solution `x` of `a x = right`, or nothing if the matrix is singular.
    fn eliminate(self, right: &SMatrix<Complex<f64>, N, W>) -> Option<SMatrix<Complex<f64>, N, W>>;
}

macro_rules! square {
    ($($n:literal)+) => {$(
        impl Square for SMatrix<f64, $n, $n> {
            fn exponential(&self) -> Self {
                self.exp()
            }
            fn eigenvalues(self) -> Option<Vec<Complex<f64>>> {
                let schur = self.try_schur(f64::EPSILON, 10_000)?;
                Some(schur.complex_eigenvalues().iter().copied().collect())
            }
        }
    )+};
}
// States: twice 2, 4 and 7 coordinates; with two more for the road under each of 1, 2 and 4 wheels.
square!(4 8 14);
square!(6 12 22);

macro_rules! eliminate {
    ($($n:literal)+) => {$(
        impl<const W: usize> Eliminate<$n, W> for SMatrix<Complex<f64>, $n, $n> {
            fn eliminate(self, right: &SMatrix<Complex<f64>, $n, W>) -> Option<SMatrix<Complex<f64>, $n, W>> {
                self.lu().solve(right)
            }
        }
    )+};
}
eliminate!(2 4 7);

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    const SCIPY: [[f64; 4]; 4] = [
        [0.9399672622593145, 0.04485626980118768, -0.15909573299723367, 0.0017067174206766452],
        [-2.3507652040482743, 0.7796878165287503, -5.756142544165796, 0.001183712733330417],
        [0.1279096054158371, 0.012800380655074856, -0.4517119411087135, -0.0014674628437462572],
        [-1.745799145432593, 0.00887784549997831, 8.716247653227311, -0.3326801811928546],
    ];

    /// Quarter car of 300 kg on 40 kg, 22 kN/m, 1.5 kN·s/m, 190 kN/m over 50 ms; printed by scipy 1.17.1 `linalg.expm`.
    #[test]
    fn the_exponential_is_that_of_scipy() {
        let (ms, mu, k, c, kt) = (300.0, 40.0, 22e3, 1500.0, 190e3);
        let a: SMatrix<f64, 4, 4> = SMatrix::from([
            [0.0, 1.0, 0.0, 0.0],
            [-k / ms, -c / ms, k / ms, c / ms],
            [0.0, 0.0, 0.0, 1.0],
            [k / mu, c / mu, -(k + kt) / mu, -c / mu],
        ]);
        let found = (a.transpose() * 0.05).exponential();
        for (i, row) in SCIPY.iter().enumerate() {
            for (j, wanted) in row.iter().enumerate() {
                assert_relative_eq!(found[(i, j)], *wanted, max_relative = 1e-12, epsilon = 1e-13);
            }
        }
    }
}
