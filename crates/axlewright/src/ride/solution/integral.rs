//! Integrals over frequency.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays of a size that the type fixes, and places that run below it"
)]

/// Integral of several functions at once: the pair of Gauss and Kronrod of 7 and 15 points, halved until it no longer changes.
///
/// Source: R. Piessens et al., QUADPACK (1983), rule `qk15`; checked against Lyapunov solutions of SciPy.
pub(in crate::ride) fn integral<const N: usize>(
    f: &impl Fn(f64) -> [f64; N],
    from: f64,
    to: f64,
    tolerance: f64,
) -> [f64; N] {
    halved(f, from, to, tolerance, &[0.0; N], 40)
}

fn halved<const N: usize>(
    f: &impl Fn(f64) -> [f64; N],
    from: f64,
    to: f64,
    tolerance: f64,
    whole: &[f64; N],
    left: u32,
) -> [f64; N] {
    const NODES: [f64; 8] = [
        0.991_455_371_120_812_6,
        0.949_107_912_342_758_5,
        0.864_864_423_359_769_1,
        0.741_531_185_599_394_4,
        0.586_087_235_467_691_1,
        0.405_845_151_377_397_2,
        0.207_784_955_007_898_47,
        0.0,
    ];
    const KRONROD: [f64; 8] = [
        0.022_935_322_010_529_224,
        0.063_092_092_629_978_55,
        0.104_790_010_322_250_18,
        0.140_653_259_715_525_92,
        0.169_004_726_639_267_9,
        0.190_350_578_064_785_4,
        0.204_432_940_075_298_9,
        0.209_482_141_084_727_82,
    ];
    // Weights of every second node.
    const GAUSS: [f64; 4] =
        [0.129_484_966_168_869_7, 0.279_705_391_489_276_64, 0.381_830_050_505_118_9, 0.417_959_183_673_469_4];
    let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
    let (mut fine, mut coarse) = ([0.0; N], [0.0; N]);
    for (i, node) in NODES.iter().enumerate() {
        for side in if *node == 0.0 { &[1.0][..] } else { &[-1.0, 1.0] } {
            let values = f(middle + side * half * node);
            for j in 0..N {
                fine[j] += half * KRONROD[i] * values[j];
                if i % 2 == 1 {
                    coarse[j] += half * GAUSS[i / 2] * values[j];
                }
            }
        }
    }
    // A small part of the whole needs no relative accuracy of its own.
    let whole: [f64; N] = core::array::from_fn(|j| whole[j].max(fine[j].abs()));
    let settled = (0..N).all(|j| (fine[j] - coarse[j]).abs() <= tolerance * whole[j]);
    if settled || left == 0 {
        return fine;
    }
    let mut sum = halved(f, from, middle, tolerance, &whole, left - 1);
    let upper = halved(f, middle, to, tolerance, &whole, left - 1);
    sum.iter_mut().zip(upper).for_each(|(a, b)| *a += b);
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn known_integrals() {
        let found = integral(&|x: f64| [x.exp(), 1.0 / (1e-6 + x * x), 1.0], -1.0, 1.0, 1e-9);
        assert_relative_eq!(found[0], 1_f64.exp() - (-1_f64).exp(), max_relative = 1e-13);
        assert_relative_eq!(found[1], 2e3 * 1e3_f64.atan(), max_relative = 1e-12);
        assert_relative_eq!(found[2], 2.0, max_relative = 1e-14);
    }
}
