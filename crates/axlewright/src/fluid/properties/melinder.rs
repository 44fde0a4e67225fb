/// A property of a mix of water and glycol over mass fraction and temperature (K): a polynomial about a base point, of the third
/// degree in temperature and of the fifth in all.
pub(super) struct Surface {
    pub(super) fraction: f64,
    pub(super) temperature: f64,
    pub(super) c0: [f64; 6],
    pub(super) c1: [f64; 5],
    pub(super) c2: [f64; 4],
    pub(super) c3: [f64; 3],
}

impl Surface {
    #[inline(always)]
    pub(super) fn at(&self, mass_fraction: f64, temperature: f64) -> f64 {
        let (x, y) = (mass_fraction - self.fraction, temperature - self.temperature);
        let (c0, c1, c2, c3) = (sum(&self.c0, x), sum(&self.c1, x), sum(&self.c2, x), sum(&self.c3, x));
        c0 + y * (c1 + y * (c2 + y * c3))
    }

    /// The derivative by temperature (1/K).
    #[inline(always)]
    pub(super) fn slope(&self, mass_fraction: f64, temperature: f64) -> f64 {
        let (x, y) = (mass_fraction - self.fraction, temperature - self.temperature);
        let (c1, c2, c3) = (sum(&self.c1, x), sum(&self.c2, x), sum(&self.c3, x));
        c1 + y * (2.0 * c2 + y * 3.0 * c3)
    }
}

#[inline(always)]
fn sum(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}
